//! Bad input: each its own message, a place, and a suggestion that works.

use fits_repl::{LONGEST_LINE, problem::Problem, session::Session};
use proptest::prelude::*;

fn problem(line: &str) -> Problem {
    match Session::new().evaluate(line) {
        Ok(answer) => panic!("`{line}` was answered: {answer:?}"),
        Err(problem) => problem,
    }
}

/// The queries between backquotes in a text.
fn quoted(text: &str) -> Vec<&str> {
    text.split('`').skip(1).step_by(2).collect()
}

#[track_caller]
fn refused(line: &str, message: &str, at: &str, hint: &str) {
    let problem = problem(line);
    assert_eq!(problem.message, message, "{line}");
    assert_eq!(line.get(problem.at.clone()), Some(at), "{line}: the place");
    assert_eq!(problem.hint(line), hint, "{line}");
    works(line, &problem);
}

/// It is understood as this plain query, and that is said.
#[track_caller]
fn read_as(line: &str, plain: &str) {
    let mut session = Session::new();
    if let Err(problem) = session.evaluate(line) {
        panic!("{line}: {}", problem.message);
    }
    assert_eq!(session.read_as(), Some(plain), "{line}");
}

/// Every query that a hint offers is answered, or is a setting or a help.
#[track_caller]
fn works(line: &str, problem: &Problem) {
    let hint = problem.hint(line);
    for query in quoted(&hint)
        .into_iter()
        .filter(|query| query.contains(' ') || query.starts_with('#') || query.contains("help"))
    {
        if let Err(again) = Session::new().evaluate(query) {
            panic!("{line}: the hint offers `{query}`, which fails: {}", again.message);
        }
    }
}

#[test]
fn assemblies() {
    for (line, message, at, hint) in [
        (
            "assemble",
            "the size of the joint is missing",
            "",
            "as in `assemble 20 H7/s6, hub aluminium od 40 long 25, shaft steel`",
        ),
        (
            "assemble 20, hub steel od 40",
            "nothing says how the parts fit",
            "",
            "give classes, a word, an interference or readings: `assemble 20 H7/s6, hub steel od 40`",
        ),
        (
            "assemble 20 H7/s6",
            "the hub's outside diameter or wall is missing",
            "",
            "give od or wall: `assemble 20 H7/s6, hub od 40mm`",
        ),
        (
            "assemble 3/4in FN2, hub steel",
            "the hub's outside diameter or wall is missing",
            "",
            "give od or wall: `assemble 3/4in FN2, hub steel od 1.5in`",
        ),
        (
            "assemble 20 H7/s6, hub aluminim od 40",
            "no material is called aluminim",
            "aluminim",
            "nearest: `assemble 20 H7/s6, hub aluminium od 40`",
        ),
        (
            "assemble 20 H7/s6, hub cheese od 40",
            "no material is called cheese",
            "cheese",
            "some of those listed: steel, stainless, cast iron, aluminium, brass, bronze, nylon, acetal",
        ),
        (
            "assemble 20 H7/s6, hub steel od 18",
            "an outside diameter of 18 mm leaves no wall about a bore of 20 mm",
            "18",
            "give an outside diameter larger than the bore",
        ),
        (
            "assemble 20 H7/s6, hub steel od 40 long 0",
            "a joint 0 mm long holds nothing",
            "0",
            "give the length in contact, as long 25",
        ),
        (
            "assemble 20 H7/s6, hub steel wall 0.04",
            "a wall of 0.04 mm is too thin for an interference of 0.048 mm",
            "0.04",
            "a wall several times as thick, or a slip fit and a retaining compound",
        ),
        (
            "assemble 20 H7/g6, hub steel od 40",
            "nothing presses: the parts are loose by 0.007 mm to 0.041 mm",
            "20 H7/g6",
            "take a tighter class, as FN1 or s6; a slip fit is held by a retaining compound, a key or a pin",
        ),
        (
            "assemble 20 = 20.02/20.01, hub steel od 40",
            "nothing presses: the parts are loose by 0.01 mm",
            "20.02/20.01",
            "take a tighter class, as FN1 or s6; a slip fit is held by a retaining compound, a key or a pin",
        ),
        (
            "assemble 20 interference 1, hub steel od 40",
            "an interference of 1 mm on 20 mm is not a press or shrink fit",
            "1",
            "those have a thousandth of the diameter or two: check the point and the unit",
        ),
    ] {
        refused(line, message, at, hint);
    }
}

#[test]
fn clauses_of_joints() {
    for (line, message, at, hint) in [
        (
            "assemble 20 H7/s6, hub steel od 40 oill",
            "`oill` is not understood",
            "oill",
            "try `assemble 20 H7/s6, hub steel od 40 oil`",
        ),
        (
            "assemble 0 interference 0.01, hub steel od 40",
            "a joint of 0 mm cannot be pressed",
            "0",
            "joints run from 0.1 mm to 20 m across",
        ),
        (
            "assemble 20 H7/s6, hub steel od 40 wall 3",
            "the hub's wall is said in two ways: by its wall the outside is 26 mm, not 40 mm",
            "3",
            "keep one of them",
        ),
        (
            "assemble 20 H7/s6, hub steel od 40 id 10",
            "the hub's bore is the size of the joint",
            "10",
            "give a bored shaft as a shaft and its id",
        ),
        (
            "assemble 20 H7/s6, hub steel od 40 alpha 12",
            "the hub has a material and figures of its own",
            "12",
            "keep the name or the figures; a yield of its own goes with either",
        ),
        (
            "assemble 20 H7/s6 interference 0.03, hub steel od 40",
            "the interference is said in two ways",
            "0.03",
            "keep one, as `assemble 20 interference 0.03, hub steel od 40`",
        ),
        (
            "assemble 20 H7/s6, hub steel od 40, within 30 C",
            "a temperature is not a time",
            "C",
            "s, min or h; as in `assemble 20 H7/s6, hub steel od 40 long 25, shaft steel, within 30 s`",
        ),
        (
            "assemble 20 H7/s6, hub steel od 40, lubricant treacle",
            "no lubricant is called treacle",
            "treacle",
            "those known: dry, oil, grease, moly, degreased",
        ),
        (
            "assemble 20 H7/s6, hub steel od 40 friction 3",
            "a coefficient of friction of 3 is not one that parts have",
            "3",
            "it lies between 0.02 and 0.4, as friction 0.12",
        ),
        (
            "assemble 20 H7/s6, hub steel od 40 rz 6.3",
            "a roughness needs its unit",
            "6.3",
            "um or uin: `assemble 20 H7/s6, hub steel od 40 rz 6.3um`",
        ),
    ] {
        refused(line, message, at, hint);
    }
}

#[test]
fn materials_of_joints_and_wishes() {
    for (line, message, at, hint) in [
        (
            "assemble 20 H7/s6, hub e 110 od 40",
            "a modulus needs its unit",
            "110",
            "GPa or Mpsi: `assemble 20 H7/s6, hub e 110GPa od 40`",
        ),
        (
            "assemble 20 H7/s6, hub e 110GPa nu 0.6 od 40",
            "Poisson's ratio 0.6 is not one a material has",
            "0.6",
            "as e 110GPa nu 0.28",
        ),
        (
            "assemble 20 H7/s6, hub steel yield 20kN od 40",
            "a force is not a pressure",
            "kN",
            "MPa, GPa, bar, psi, ksi or Mpsi; as in `assemble 30 interference 0.035, hub e 110GPa nu 0.28 od 62, shaft steel`",
        ),
        (
            "assemble 3/4in FN2, hub steel yield 300 od 1.5in",
            "this number has no unit: a pressure is in psi or MPa",
            "300",
            "give its unit: `assemble 3/4in FN2, hub steel yield 300psi od 1.5in`",
        ),
        (
            "assemble 20 H7, hub steel od 40",
            "one part alone is not assembled",
            "",
            "give both classes, as `assemble 20 H7/s6, hub steel od 40`",
        ),
        (
            "assemble 20 H7/s6, shaft steel, sleeve bronze od 26, hub steel od 50",
            "nothing says how the sleeve sits outside",
            "sleeve",
            "as `assemble 20 H7/s6, shaft steel, sleeve bronze od 26 H7/p6, hub steel od 50`",
        ),
        (
            "pick 20 holds 30 Nm, hub steel od 40",
            "force and torque go by the length in contact, and none is given",
            "20",
            "give it, as `pick 20 holds 30 Nm, hub steel od 40 long 25`",
        ),
        (
            "pick 20 holds 30MPa, hub steel od 40 long 25",
            "a pressure is not a torque",
            "MPa",
            "Nm, lbf-ft or lbf-in; as in `pick 20 holds 30 Nm, hub steel od 40 long 25`",
        ),
        (
            "pick 3/4in holds 30, hub steel od 1.5in long 1in",
            "this number has no unit: a torque is in lbf-ft or Nm",
            "30",
            "give its unit: `pick 3/4in holds 30lbf-ft, hub steel od 1.5in long 1in`",
        ),
        (
            "pick 20 holds -5 Nm, hub steel od 40 long 25",
            "what it holds and what presses it must be more than 0",
            "-5 Nm",
            "as `pick 20 holds 30 Nm, hub steel od 40 long 25`",
        ),
    ] {
        refused(line, message, at, hint);
    }
}

#[test]
fn classes() {
    refused("20 H", "the tolerance grade is missing after H", "", "give the grade: `20 H7`");
    refused("20 h", "the tolerance grade is missing after h", "", "give the grade: `20 h6`");
    refused("20 H7/", "the shaft's class is missing after the slash", "", "give both: `20 H7/g6`");
    refused(
        "20 h7/G6",
        "h7 is a shaft's class, and the hole's comes first",
        "h7",
        "say which: `20 H7/g6` or `20 G6/h7`",
    );
    refused(
        "20 H7/H7",
        "H7 and H7 are two holes",
        "H7",
        "the shaft takes the small letter: `20 H7/h7`",
    );
    refused("20 g6/h7", "g6 and h7 are two shafts", "g6", "say which: `20 G6/h7` or `20 H7/g6`");
    refused("H7/g6", "a class needs its nominal size before it", "H", "try `20 H7/g6`");
    refused(
        "20 H19",
        "there is no tolerance grade IT19",
        "19",
        "grades run from IT01, IT0, IT1 to IT18: `20 H18`",
    );
    refused(
        "20 Q7",
        "there is no fundamental deviation Q",
        "Q",
        "the letters i, l, o, q and w are not used: `20 P7`",
    );
    refused(
        "20 i6",
        "there is no fundamental deviation i",
        "i",
        "the letters i, l, o, q and w are not used: `20 h6`",
    );
    refused(
        "20 jS7",
        "jS does not name a shaft",
        "jS",
        "the shaft takes the small letter: `20 js7`",
    );
    refused(
        "0.8 A11",
        "holes A are not defined at 0.8 mm: letters A and B start above 1 mm",
        "A11",
        "the nearest that exists: `0.8 C11`",
    );
    refused(
        "20 K9",
        "holes K are not defined at 20 mm: K is tabulated up to K8 from 3 to 500 mm",
        "K9",
        "the nearest that exists: `20 K8`",
    );
    refused(
        "hole 20 g6",
        "g6 is a shaft's class, and hole was said",
        "g6",
        "say which: `hole 20 G6` or `shaft 20 g6`",
    );
    refused(
        "in H7",
        "`in` has no number before it: a class needs its size",
        "in",
        "try `3/4in H7`",
    );
}

#[test]
fn sizes() {
    refused("-20 H7", "a size of -20 mm is less than nothing", "-20", "without the sign: `20 H7`");
    for (line, size) in [("0 H7", "0"), ("3151 H7", "3151")] {
        refused(
            line,
            &format!(
                "nominal size {size} mm is outside the tables of ISO 286 (over 0 mm, up to 3150 mm)"
            ),
            size,
            "sizes over 0 mm up to 3150 mm are tabulated: `20mm H7`",
        );
    }
    refused(
        "20,5 H7/g6",
        "the comma in 20,5 can be read in two ways",
        ",",
        "`20.5` if it is a decimal point, a space after it if two things are meant; so: `20.5 H7/g6`",
    );
    refused(
        "20,013 H7",
        "the comma in 20,013 can be read in two ways",
        ",",
        "`20.013` if it is a decimal point, `20013` if it groups thousands; so: `20.013 H7`",
    );
    refused(
        "1e9 H7",
        "sizes are not written with an exponent",
        "1e9",
        "write the size out, and a space before a tolerance class, as in `20 H7`",
    );
    refused(
        "0.1234567in H7",
        "the size is finer than 0.1 nm, the smallest step kept",
        "0.1234567in",
        "an inch takes six decimals: `0.123457in H7`",
    );
    refused(
        "20 / 2in",
        "a size is not divided by a length",
        "2in",
        "divide by a plain number, as in `(25.4 + 0.02)/2`",
    );
    refused(
        "#200",
        "there is no drill #200",
        "#200",
        "number drills run from `#1` to `#107`, letter drills from `letter A` to `letter Z`",
    );
    refused("20 -", "a size is missing after the sign", "", "as in `3/4in - 15 thou`");
    refused("(20", "the closing bracket is missing", "", "as in `(25.4 + 0.02)/2`");
    refused("1/0", "a fraction over zero is not a size", "0", "write `1/2`, `3/4` or the like");
}

#[test]
fn clauses() {
    refused(
        "20 H7/g6 = 20.013",
        "one reading for two parts: which was measured?",
        "20.013",
        "name it, as `20 H7/g6, hole = 20.013`, or give both, as `20 H7/g6 = 20.013/19.985`",
    );
    refused("20 H7 fron 19", "`fron` is not understood", "fron", "try `20 H7 from 19`");
    refused("20 H7 =", "the reading is missing after =", "", "as in `20 H7 = 20.013`");
    refused(
        "bore 20 g6",
        "`bore` makes a hole, and this is a shaft",
        "bore",
        "say which: `turn 20 g6` or `bore 20 G6`",
    );
    refused(
        "bore 20 h7 from 19",
        "`bore` makes a hole, and this is a shaft",
        "bore",
        "try `bore 20 H7 from 19`",
    );
    refused(
        "bore 20 H7 from 20.1",
        "a bore of 20.1 mm is over the upper limit 20.021 mm already",
        "20.1",
        "a bore starts smaller, as `bore 20 H7 from 19.6`",
    );
    refused(
        "turn 20 g6 from 19.9",
        "a shaft of 19.9 mm is under the lower limit 19.98 mm already",
        "19.9",
        "turning starts larger, as `turn 20 g6 from 22`",
    );
    refused(
        "20 ±0.05 = 21",
        "the reading is outside the limits, and it was not said whether this is a hole or a shaft",
        "20",
        "say which: `hole 20 ±0.05 = 21`",
    );
    refused("20 H7 = 20.01 = 20.02", "this is said twice", "=", "keep one of them");
    refused("units kg", "`kg` is not a setting", "kg", "units are `units mm` or `units in`");
    refused(
        "why",
        "there is no answer yet to explain",
        "why",
        "put the query after it, as `why 20 H7/g6`",
    );
    refused("help pears", "there is no help on `pears`", "pears", "see `help`");
    refused("help pair5", "there is no help on `pair5`", "pair5", "try `help pairs`");
}

#[test]
fn words_and_parts_in_hand() {
    read_as("20 sllip", "20mm sliding");
    refused(
        "20 tight",
        "`tight` can mean push or light press or press",
        "20 tight",
        "say which: `20mm push` or `20mm light press` or `20mm press`",
    );
    read_as("slip 20", "20mm sliding");
    refused(
        "dowel 0.3in, press",
        "0.3 in is not listed as the size of a dowel: was it measured?",
        "0.3in",
        "then give it as the shaft in hand, as `shaft 0.3 in, press`",
    );
    refused(
        "hole 0.75in..19.1mm",
        "inches and millimetres are mixed in one feature",
        "19.1mm",
        "give it in one, as `hole 0.7500in..0.7505in` or `hole 20.00..20.02`",
    );
    refused(
        "20 H7/g6 slip",
        "the classes and `slip` both say the fit",
        "slip",
        "keep one of them, as `20 H7/g6` or `20 slip`",
    );
    refused(
        "20 press, hub butter",
        "`butter` is not a material that changes a fit",
        "butter",
        "steel, cast iron, aluminium, bronze, plastic or tube, as in `20 press, hub aluminium`",
    );
    refused(
        "hole 20 H7, hole 19.98",
        "two holes do not go together",
        "hole",
        "try `hole 20 H7, shaft 19.98`",
    );
    refused(
        "seat shaft 25 gently",
        "`gently` is not a way of loading a bearing here",
        "gently",
        "say one of: turns light, turns normal, turns heavy, turns shock, uncertain light, uncertain normal, uncertain heavy, uncertain shock, stands slides, stands fixed, axial; as `seat shaft 25 turns normal`",
    );
    refused("drill", "the size is missing after `drill`", "", "as in `drill 0.7031in`");
    refused(
        "drill 500",
        "no standard drill is near 500 mm",
        "500",
        "listed drills run from #107 to 3 in, as `drill 3 in`",
    );
    let found = problem("dowel 6mm, press");
    assert_eq!(
        found.hint("dowel 6mm, press"),
        "say which: `m6 dowel pin 6mm, press` or `ASME metric dowel pin 6mm, press`"
    );
    works("dowel 6mm, press", &found);
}

#[test]
fn clauses_that_say_nothing_are_not_passed_over() {
    const WORD: &str = "say how the parts fit, as `20 press, hub aluminium`";
    for (line, at) in [
        ("20 H7 long 30", "30"),
        ("20 H7, turns", "turns"),
        ("20 H7/g6, hub steel", "steel"),
        ("3/4in RC4 thin tube", "thin tube"),
    ] {
        refused(line, "this changes what a shop word chooses, and none was said", at, WORD);
    }
    refused(
        "dowel 1/4in, press, shaft = 0.2502in",
        "the shaft is the feature itself",
        "0.2502in",
        "put what it measures in its place, as `shaft 0.2502in, press`, or after =, as `20 H7 = 20.013`",
    );
    refused(
        "dowel 1/4in = 0.2502in",
        "a bought-in part is not cut to size",
        "0.2502in",
        "put what it measures in its place, as `shaft 0.2502in, press`",
    );
    refused(
        "dowel 1/4in H7",
        "a dowel comes with its own limits",
        "H7",
        "give the mate's class with the mate: `dowel 1/4in hole H7`",
    );
}

#[test]
fn stacks() {
    const LINKS: &str = "as in `stack 20 +0.05/0 -17 ±0.05 -2x 1.4 ±0.05`";
    refused("stack", "the links are missing after `stack`", "", LINKS);
    refused("stack 20", "one part alone is not a stack", "20", LINKS);
    refused("stack 101m -1", "a part of a stack is at most 100 m long", "101m", LINKS);
    refused("stack foo", "the size of `foo` is missing", "", LINKS);
    refused(
        "stack 20 19",
        "does this part add to the play or take from it?",
        "19",
        "say which: `stack 20 -19` or `stack 20 +19`",
    );
    refused(
        "stack 20 -19 plya 0.1..0.2",
        "`plya` is not understood",
        "plya",
        "try `stack 20 -19 play 0.1..0.2`",
    );
    refused(
        "stack 20 -?",
        "what play is wanted?",
        "-?",
        "say it, as `stack 20.03 -2x 1.4 -?, play 0.1..0.2`",
    );
    refused(
        "stack 20 -? -?, play 0.1..0.2",
        "two parts are still to be made",
        "-?",
        "give all but one, as `stack 20.03 -2x 1.4 -?, play 0.1..0.2`",
    );
    refused(
        "stack 20 -19, play 0.2..0.1",
        "the lower limit 0.2 mm is above the upper limit 0.1 mm",
        "0.2..0.1",
        "the smaller comes first, as in `stack 20 -16.9 -2.9, play 0.1..0.2`",
    );
    refused(
        "stack 20 -19, play 30..31",
        "the last part would be -10.5 mm long",
        "30..31",
        "no last part gives this play; as in `stack 20.03 -2x 1.4 -?, play 0.1..0.2`",
    );
    refused(
        "stack 20 H7/g6 -19",
        "a link is one part, and a pair of classes is two",
        "g6",
        "keep one of them, as `stack 20 h9 -19.8 ±0.05`",
    );
    refused(
        "stack 3/4in RC4 -0.7in",
        "an inch class is a fit of two parts, and a link is one",
        "RC4",
        "give its limits, as `stack 3/4in ±0.002in -0.7in ±0.002in`",
    );
    refused(
        "stack 0.8 A11 -0.5",
        "holes A are not defined at 0.8 mm: letters A and B start above 1 mm",
        "A11",
        "the nearest that exists: `stack 0.8 C11 -0.5`",
    );
    refused(
        "stack 3/4in -18",
        "this number has no unit: the question is in inches, bare numbers are millimetres",
        "18",
        "give its unit: `stack 3/4in -18in`",
    );
    refused(
        "stack 20 -0x 19",
        "0 is not a number of parts",
        "0",
        "two washers of 1.5 each are written `stack 20 -16.9 -2x 1.5`",
    );
    refused(
        "stack 20 -19 runs 1.5",
        "`1.5` is not a whole number",
        "1.5",
        "a whole number, as in `stack 20 ±0.1 -19.5 ±0.1, runs 1000000`",
    );
    refused(
        "stack 20 -19, runs 0",
        "0 runs of 2 parts: give 1 to 500000000 runs",
        "0",
        "as in `stack 20 ±0.1 -19.5 ±0.1, runs 1000000`",
    );
    refused("stack 20 -19, seed 1, seed 2", "this is said twice", "seed", "keep one of them");
    refused(
        "stack 20 -19, all gaussian",
        "the spread is missing after `all`",
        "",
        "uniform, triangular or normal, as `stack 20 ±0.1 -19.5 ±0.1, all normal`",
    );
    refused(
        "stack 20 ±-0.1 -19",
        "a tolerance either way has no sign of its own",
        "-0.1",
        "as in `hole 20 ±0.02`",
    );
}

#[test]
fn what_is_no_bushing() {
    const WHOLE: &str = "as in `bushing 20 od 26 long 20, hub steel od 60, bronze`";
    for (line, message, at) in [
        (
            "bushing 20 od 19 long 20, hub steel, bronze",
            "an outside diameter of 19 mm leaves no wall about a bore of 20 mm",
            "19",
        ),
        (
            "bushing 20 od 20.3 long 20, hub steel, bronze",
            "a wall of 0.1475 mm about a bore of 20.0465 mm is too thin to press in",
            "20.3",
        ),
        ("bushing 20 od 26 long 0, hub steel, bronze", "a bushing 0 mm long holds nothing", "0"),
        (
            "bushing 20 od 26 long 20, hub steel od 25, bronze",
            "a housing of 25 mm leaves no wall about a bushing of 26.0415 mm",
            "25",
        ),
        (
            "bushing 20 od 26 h9 long 20, hub steel, bronze",
            "an outside of 26 mm is loose in a housing of 26 mm",
            "26",
        ),
        (
            "bushing 20 od 26 long 20, hub steel, bronze, running -0.1..0.1",
            "a running shaft has no interference",
            "-0.1..0.1",
        ),
        (
            "bushing 20 od 26 long 20, hub steel, bronze, running 40..50",
            "a clearance of 45 mm leaves no shaft",
            "40..50",
        ),
        ("bushing 0 od 26 long 20, hub steel, bronze", "a bore cannot be 0 mm", "0"),
    ] {
        refused(line, message, at, WHOLE);
    }
    refused("bushing 20 housing H7", "the bushing's outside is missing", "", WHOLE);
}

#[test]
fn bushings() {
    const PLAY: &str =
        "as in `bushing 20 od 26 long 20, hub steel od 60, bronze, running 0.03..0.06`";
    refused(
        "bushing 20 od 26 long 20, hub steel",
        "what is the bushing made of?",
        "",
        "say it: `bushing 20 od 26 long 20, hub steel, bronze`",
    );
    refused(
        "bushing 20 od 26 long 20, bronze",
        "what is the housing made of?",
        "",
        "say it: `bushing 20 od 26 long 20, hub steel, bronze`",
    );
    refused(
        "bushing 20 od 26, hub steel, bronze",
        "how long is the bushing?",
        "",
        "say it: `bushing 20 od 26, hub steel long 20, bronze`",
    );
    refused(
        "bushing 20 od 26 long 20, hub stel, bronze",
        "no material is called stel",
        "stel",
        "nearest: `bushing 20 od 26 long 20, hub steel, bronze`",
    );
    refused(
        "bushing 20 od 26 long 20, hub steel, bronze, running spindel",
        "no service is called spindel",
        "spindel",
        "try `bushing 20 od 26 long 20, hub steel, bronze, running spindle`",
    );
    refused(
        "bushing 20 od 26 long 20, hub steel, bronze, running 0.3",
        "the greatest clearance is missing",
        "",
        PLAY,
    );
    refused(
        "bushing 20 od 26 long 20, hub steel, nylon, warm 150C",
        "nylon 66 is not run at 150 °C: its limit is 100 °C",
        "150C",
        "100 °C is 212 °F",
    );
    refused(
        "bushing 20 od 26 h7/H8 long 20, hub steel, bronze",
        "a pair of classes where one surface was meant",
        "H8",
        "give each its own, as in `bushing 20 od 26 s6 long 20, hub steel, bronze, housing H7`",
    );
    refused(
        "bushing 3/4in od 26 long 1in, hub steel, bronze",
        "this number has no unit: the question is in inches, bare numbers are millimetres",
        "26",
        "give its unit: `bushing 3/4in od 26in long 1in, hub steel, bronze`",
    );
    refused(
        "bushing 20 od 26 long 20, hub steel, bronze, shaft 21",
        "a shaft of 21 mm does not run in a bore of 20 mm",
        "21",
        "as in `bushing 20 od 26 long 20, hub steel, bronze, shaft h6`",
    );
    refused(
        "bushing 21 lined",
        "lined wrapped bushing bore 21 mm is not listed",
        "21",
        "listed near it: 20 mm",
    );
}

#[test]
fn pairs_in_the_warm() {
    const PAIR: &str = "as in `20 H7/g6 warm 60C, hole nylon, shaft steel`";
    const RANGE: &str = "as in `20 H7/g6 warm -20C..60C, hole aluminium, shaft steel`";
    refused(
        "20 H7/g6 warm 60C",
        "what is the hole made of?",
        "",
        "say it: `20 H7/g6 warm 60C, hole steel, shaft steel`",
    );
    refused(
        "20 H7/g6 warm 60C, hole nylon",
        "what is the shaft made of?",
        "",
        "say it: `20 H7/g6 warm 60C, hole nylon, shaft steel`",
    );
    read_as(
        "20 H7/g6 warm 60C, hole nilon, shaft steel",
        "20mm H7/g6 warm 60C, hole nylon, shaft steel",
    );
    refused(
        "20 H7/g6 warm 160C, hole nylon, shaft steel",
        "nylon 66 is not run at 160 °C: its limit is 100 °C",
        "160C",
        "100 °C is 212 °F",
    );
    refused(
        "20 H7/g6 warm -150C, hole steel, shaft steel",
        "the expansion of steel is not known at -150 °C",
        "-150C",
        "the figures hold from -100 °C up",
    );
    refused(
        "20 H7 warm 60C, hole nylon, shaft steel",
        "one part alone neither binds nor lets go: give the pair",
        "20",
        PAIR,
    );
    refused("20 H7/g6 warm", "the temperature is missing after `warm`", "", RANGE);
    refused("20 H7/g6 warm 20C..", "the second temperature is missing after `..`", "", RANGE);
    refused(
        "3/4in RC4 warm 60, hole steel, shaft steel",
        "this number has no unit: a temperature is in F or C",
        "60",
        "give its unit: `3/4in RC4 warm 60F, hole steel, shaft steel`",
    );
    refused(
        "ream 20 H7/g6 warm 60C, hole nylon, shaft steel",
        "a plan has no temperature: sizes hold at 20 °C",
        "ream",
        "leave it out: `20 H7/g6 warm 60C, hole nylon, shaft steel`",
    );
    refused(
        "20 H7/g6 = 20.01 warm 60C, hole nylon, shaft steel",
        "one reading for two parts: which was measured?",
        "20.01",
        "give both, as `20 H7/g6 = 20.013/19.985 warm 60C, hole nylon, shaft steel`",
    );
}

#[test]
fn a_bare_number_beside_the_other_system_is_refused() {
    const MESSAGE: &str =
        "this number has no unit: the question is in inches, bare numbers are millimetres";
    const MIXED: &str = "inches and millimetres are mixed in one feature";
    const ONE: &str = "give it in one, as `hole 0.7500in..0.7505in` or `hole 20.00..20.02`";
    refused(
        "3/4in RC4, hole = 0.7505",
        MESSAGE,
        "0.7505",
        "give its unit: `3/4in RC4, hole = 0.7505in`",
    );
    refused(
        "bore 3/4in RC4 from 0.7",
        MESSAGE,
        "0.7",
        "give its unit: `bore 3/4in RC4 from 0.7in`",
    );
    refused("1in press, long 5", MESSAGE, "5", "give its unit: `1in press, long 5in`");
    refused("hole 3/4in +0.001/-0", MIXED, "0.001", ONE);
    read_as("hole 0.7500..0.7505in", "hole 0.7500in..0.7505in");
}

#[test]
fn slips_of_writing() {
    read_as("20 H7 g6", "20mm H7/g6");
    read_as("1 1/2in", "1-1/2in");
    refused(
        "20 kg",
        "`kg` is not a word for a fit here",
        "kg",
        "words: loose running, free running, medium running, running, precision running, sliding, snug, push, wringing, tight keying, light press, drive, press, heavy drive, heavy press, shrink",
    );
    refused(
        "bearing bore 25, press",
        "a bearing's seat goes by how it is loaded, not by a word",
        "press",
        "ask for the seat, as `seat shaft 25 turns normal`",
    );
    refused(
        "dowel 1/4in, H7/m6",
        "a dowel comes with its own limits",
        "dowel",
        "give the mate's class with the mate, as `dowel 1/4in, hole H7`",
    );
    refused(
        "dowel 1/4in = 0.2502in, press",
        "a bought-in part is not cut to size",
        "0.2502in",
        "put what it measures in its place, as `shaft 0.2502in, press`",
    );
    refused(
        "shaft 20, slip = 20.01/20.02",
        "one part is in hand: its mate has one reading",
        "20.02",
        "give the mate's alone, as `shaft 0.749in, slip = 0.7496in`",
    );
    refused(
        "20 press, hub brass",
        "a press fit is for steel, and the hub is brass: work it out",
        "brass",
        "`assemble 20 H7/p6, hub brass od 40 long 20, shaft steel` does; a bushing is said as `20 press, hub brass bushing`",
    );
}

#[test]
fn inch_classes_and_questions() {
    refused(
        "3/4in grade 14",
        "there is no grade 14 in ASME B4.1: its grades run from 4 to 13",
        "14",
        "B4.1 has grades 4 to 13, as `3/4in grade 8`; `3/4in grade IT8` is ISO's",
    );
    refused(
        "20 grade 22",
        "there is no tolerance grade IT22",
        "22",
        "grades run from IT01, IT0, IT1 to IT18: `20 grade 7`",
    );
    refused(
        "3/4in RC10",
        "there is no RC10: RC runs from RC1 to RC9",
        "RC10",
        "write RC1 to RC9: `3/4in RC9`",
    );
    refused(
        "20in RC4",
        "nominal size 20 in is outside the table of RC4 in ASME B4.1 (over 0 in, up to 19.69 in)",
        "20in",
        "RC4 reaches from 0.00 to 19.69 in: `19.69in RC4`",
    );
    refused(
        "2 general v",
        "ISO 2768-1 gives class v no tolerance for lengths at 2 mm",
        "2",
        "the nearest class that has one there is c: `2 general c`",
    );
    refused(
        "pick 20 clearance 0.04..0.01",
        "the lower limit 0.04 mm is above the upper limit 0.01 mm",
        "0.04..0.01",
        "the smaller comes first, as `pick 20 clearance 0.01..0.04`",
    );
}

#[test]
fn taps_that_there_are_not() {
    refused(
        "1/2 NPT tap 75%",
        "a taper thread keeps no one percent",
        "75%",
        "its drill comes from a list: `1/2 NPT tap`",
    );
    refused(
        "M10 tap hub cast iron form",
        "grey cast iron is brittle: a forming tap needs a ductile material",
        "form",
        "cut it: `M10x1.5 tap, hub cast iron`",
    );
}

#[test]
fn threads() {
    let pitches = "M10 is listed with pitch 1.5 (coarse), 1.25, 1, 0.75";
    refused("M10x", "the pitch is missing after the x", "", pitches);
    refused("M10x20", "a pitch of 20 mm leaves no core in M10", "20", pitches);
    let listed = "listed: `3/8-16` UNC, `3/8-24` UNF, `3/8-32` UNEF";
    refused("3/8-240", "240 tpi is finer than any Unified thread", "240", listed);
    refused(
        "M10 6A",
        "no internal metric thread has class 6A",
        "6A",
        "the usual one is 6H: `M10 6H`",
    );
    refused(
        "3/8-24 2B wires",
        "2B is a class of the nut, and wires go over the screw",
        "2B",
        "name the screw's class, as `3/8-24 2A wires`",
    );
    refused(
        "3/8-24 6g",
        "a Unified thread has no class 6g",
        "6g",
        "screws take 2A (1A, 3A), nuts 2B (1B, 3B): `3/8-24 2A`",
    );
    refused(
        "G1/2 6H",
        "parallel pipe G threads have no class 6H of external thread",
        "6H",
        "screws are class A or B: `G1/2 A`",
    );
    refused(
        "M10 tap 130%",
        "130 % of thread cannot be tapped",
        "130%",
        "from 40 % to 100 %: `M10 tap 75%`",
    );
    refused(
        "3/8-24 wires 0.1in",
        "a wire of 0.1 in is too big to touch both flanks below the crests",
        "0.1in",
        "wires from 0.02233 in to 0.04338 in can be used; the best of them: `3/8-24 wires 0.02406 in`",
    );
    refused(
        "3/8-24 wires 0.001in",
        "a wire of 0.001 in sinks below the crests",
        "0.001in",
        "wires from 0.02233 in to 0.04338 in can be used; the best of them: `3/8-24 wires 0.02406 in`",
    );
    refused(
        "3/8-24 2A over 0.9in",
        "0.9 in over wires is not a size of this thread",
        "0.9in",
        "about 0.381 in is expected",
    );
    refused(
        "3/8-24 2A over 0.383",
        "this number has no unit: the question is in inches, bare numbers are millimetres",
        "0.383",
        "give its unit: `3/8-24 2A over 0.383in`",
    );
    refused(
        "M10 cut compound 40",
        "the compound at 40 degrees cuts into the other flank, which stands at 30",
        "compound 40",
        "try `M10 cut compound 29.5`",
    );
    let goes = "as in `M10 tap, hub steel`, `M10 wires 1mm` or `M10 cut straight`";
    refused("M10, hub steel", "a material goes with `tap`", "steel", goes);
    refused("M10 wires, nose 1", "the tool's nose goes with `cut`", "1", goes);
    refused(
        "M10 wires compound",
        "how the tool is fed goes with `cut` or `over`",
        "compound",
        goes,
    );
    refused("M10 tap cut", "`tap` and `cut` are two questions", "cut", "ask one at a time");
    refused("M10 tapp", "`tapp` does not go with a thread", "tapp", "try `M10 tap`");
    let drills = "from 8.0514428 mm (100 %) to under 10 mm (0 %)";
    refused("M10 tap 10", "a drill of 10 mm leaves no thread", "10", drills);
    refused("M10 tap 5", "a drill of 5 mm is too small", "5", drills);
    refused(
        "M10 tap form 90%",
        "90 % of thread cannot be formed",
        "90%",
        "from 50 % to 75 %: `M10 tap form 65%`",
    );
    refused("M10, long 0", "a length of 0 engages nothing", "0", "as in `M10, long 12`");
    refused(
        "m10",
        "a class needs its nominal size before it",
        "m",
        "a metric thread takes the capital: `M10`",
    );
}

#[test]
fn tapped_threads_and_their_materials() {
    refused(
        "R1/2 tap",
        "taper pipe R is an external thread: nothing is tapped",
        "tap",
        "its mates are Rp and Rc, as `Rp1/2 tap`",
    );
    refused(
        "M10 tap hub tinn",
        "no material is called tinn",
        "tinn",
        "some of those listed: steel, stainless, cast iron, aluminium, brass, bronze, nylon, acetal",
    );
}

#[test]
fn a_measured_bushing_is_not_taken_for_its_nominal_size() {
    refused(
        "bushing 3/4in od 1.0025in long 1in, hub steel od 2in, sintered bronze",
        "1.0025 in is not a nominal size: was it measured?",
        "1.0025in",
        "give the nominal size here; the housing for a bushing in hand is asked as `shaft 1.0025 in, press`, the shaft for its bore as `hole 1.0025 in, running`",
    );
}

#[test]
fn a_thread_in_no_list_is_computed_and_says_so() {
    let fits_repl::answer::Answer::Thread(special) =
        Session::new().evaluate("1/4-19").expect("a special thread")
    else {
        panic!("no thread")
    };
    assert_eq!(special.name.series, "in no list: computed by the formulas");
}

#[test]
fn lines_that_are_no_query() {
    refused("", "nothing was asked", "", "type a size and a class, as `20 H7/g6`, or `help`");
    refused("   ", "nothing was asked", "", "type a size and a class, as `20 H7/g6`, or `help`");
    refused("20\0 H7", "the line holds a control character (U+0000)", "\0", "without it: `20 H7`");
    let long = "20 H7 ".repeat(20_000);
    let found = problem(&long);
    assert_eq!(
        found.message,
        format!("the line is 120000 bytes long, a query has at most {LONGEST_LINE}")
    );
    assert_eq!(found.at, LONGEST_LINE..120_000);
    works(&long, &found);
    let deep = format!("{}1", "(".repeat(40));
    refused(&deep, "too many brackets in one size", "(", "as in `(25.4 + 0.02)/2`");
    assert_eq!(problem(&"-".repeat(4000)).message, "a size is missing after the sign");
    assert_eq!(problem(&"why ".repeat(1000)).message, "one `why` is enough");
}

#[test]
fn a_refused_line_leaves_the_session_as_it_was() {
    let mut session = Session::new();
    session.evaluate("units in").expect("a setting");
    session.evaluate("0.75 H7").expect("a hole");
    for line in ["20 H", "units kg", "why why"] {
        assert!(session.evaluate(line).is_err(), "{line}");
    }
    let fits_repl::answer::Answer::Why(why) = session.evaluate("why").expect("a why") else {
        panic!("no why")
    };
    assert_eq!(why.of, "0.75 H7");
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(2000))]

    #[test]
    fn no_text_panics_and_every_place_is_on_a_character(line in "\\PC{0,60}") {
        if let Err(problem) = Session::new().evaluate(&line) {
            prop_assert!(line.get(problem.at.clone()).is_some(), "{:?} in {line:?}", problem.at);
            let _ = problem.hint(&line);
        }
    }

    #[test]
    fn no_near_thread_panics(line in "(why |)(M[0-9.]{1,4}(x[0-9.P]{0,4})?|[0-9#/-]{1,6}-[0-9]{1,3}|Tr[0-9]{1,3}x[0-9]{1,2}|[0-9/]{1,4}-[0-9]{1,2} Acme|G[0-9/]{1,4}|[0-9]{1,2}BA|[0-9/]{1,4} BS[WF]|[0-9/]{1,4} NPT)( LH| 2 starts| 6H/6g| 2A| 3B| 7e| medium)?( tap| wires| cut| over| clearance)?( [0-9.]{1,5}(in|mm|%)?)?(, hub steel| straight| compound 14| inside| long 9| form| nose 0.1mm| wire 1mm){0,2}") {
        let mut session = Session::new();
        match session.evaluate(&line) {
            Err(problem) => {
                prop_assert!(line.get(problem.at.clone()).is_some(), "{:?} in {line:?}", problem.at);
                prop_assert!(!problem.message.is_empty());
            }
            Ok(answer) => {
                let mut out = Vec::new();
                fits_repl::render::json::object(&mut out, None, &line, &Ok(answer.clone()));
                prop_assert!(serde_json::from_slice::<serde_json::Value>(&out).is_ok());
                let text = fits_repl::render::text::Text { settings: session.shown(), colour: fits_repl::render::Colour::Off };
                let text = text.answer(&answer);
                prop_assert!(text.lines().all(|line| line.chars().count() <= 80), "{line}\n{text}");
                prop_assert!(line.starts_with("why") || text.lines().count() <= 24, "{line}\n{text}");
            }
        }
    }

    #[test]
    fn no_near_query_panics(line in "(bore |ream |turn |why |stack |why stack 9 -|hole |shaft |dowel |drill |pick |seat shaft |keyway for |bushing |bushing 9 od |)[-+(#.0-9/ ]{0,9}(in|mm|thou|\"|)[ ,]?(H7|g6|RC4|FN9|slip|press|hub tin|thin|long 3|shaft|clearance|general m|grade 8|H|/|\u{b1}|\\.\\.|=|from|zc18|JS01|m6| | long 9|hub steel|bronze|running 0.1\\.\\.0.2|-2x 1|warm 60C|warm -9F..200|hole nylon, shaft steel|play|runs 9|all normal|-\\?|, ){0,4}[-+.0-9/=() ]{0,9}") {
        let mut session = Session::new();
        match session.evaluate(&line) {
            Err(problem) => {
                prop_assert!(line.get(problem.at.clone()).is_some(), "{:?} in {line:?}", problem.at);
                prop_assert!(!problem.message.is_empty());
            }
            Ok(answer) => {
                let mut out = Vec::new();
                fits_repl::render::json::object(&mut out, None, &line, &Ok(answer.clone()));
                prop_assert!(serde_json::from_slice::<serde_json::Value>(&out).is_ok());
                let text = fits_repl::render::text::Text { settings: session.shown(), colour: fits_repl::render::Colour::Off };
                prop_assert!(text.answer(&answer).lines().all(|line| line.chars().count() <= 80), "{}", text.answer(&answer));
            }
        }
    }
}

#[test]
fn measuring() {
    refused(
        "20 H7 = 20.013 with bor gauge",
        "no instrument is called bor gauge",
        "bor gauge",
        "nearest: `20 H7 = 20.013 with bore gauge`",
    );
    refused(
        "20 H7 = 20.013 with",
        "the instrument is missing after `with`",
        "",
        "as in `20 H7 = 20.013 with bore gauge`",
    );
    let wrong = problem("20 H7 = 20.013 with micrometer");
    assert_eq!(wrong.message, "a micrometer does not measure holes");
    assert!(wrong.advice.contains("bore gauge"), "{wrong:?}");
    refused(
        "20 H7 with bore gauge",
        "this goes with a reading, and none is given",
        "bore gauge",
        "as in `20 H7 = 20.013 with bore gauge at 31C, hole aluminium`",
    );
}

#[test]
fn warm_readings() {
    refused(
        "20 H7 = 20.013 at 31C",
        "what a warm part is of decides how much it grows",
        "31C",
        "as in `20 H7 = 20.013 at 31C, hole aluminium`",
    );
    // A slip of typing is told, and read.
    read_as("20 H7 = 20.013 at 31C, hole aluminim", "20mm H7 = 20.013mm at 31C, hole aluminium");
    refused(
        "20 H7 = 20.013 at 900C, hole aluminium",
        "900 °C is not a temperature to measure at",
        "900C",
        "parts are measured from -60 to 300 °C",
    );
    refused(
        "3/4in H7 = 0.7503in at 113, hole aluminium",
        "this number has no unit: a temperature is in F or C",
        "113",
        "give its unit: `3/4in H7 = 0.7503in at 113F, hole aluminium`",
    );
    refused(
        "20 H7 = 20.013 room 24C, hole aluminium",
        "the part's own temperature is missing",
        "24C",
        "as in `20 H7 = 20.013 at 31C, room 24C, hole aluminium`",
    );
    refused(
        "20 H7 = 20.013 at 31C at 32C, hole aluminium",
        "this is said twice",
        "at 32C",
        "keep one of them",
    );
}

#[test]
fn readings_out_of_place() {
    refused(
        "20 H7/g6, hole = 20.013 with bore gauge",
        "the mate follows a size at 20 °C",
        "bore gauge",
        "judge the reading by itself first, as `20 H7 = 20.013 with bore gauge`",
    );
    refused(
        "20 H7 = 0.787",
        "that is the size in the other unit",
        "0.787",
        "give its unit: `20 H7 = 0.787in`",
    );
    refused(
        "20 H7/g6 = 20.013/19.985/19.986",
        "a pair has two parts, and three were read",
        "19.986",
        "the hole's readings, a slash, the shaft's, as `20 H7/g6 = 20.013 20.014/19.985`",
    );
    refused(
        "assemble 20 H7/s6 = 20.013 20.014/20.04, hub steel od 40 long 25",
        "a joint takes one reading of each part",
        "= 20.013 20.014/20.04",
        "as in `assemble 20 H7/s6 = 20.013/20.04, hub steel od 40 long 25`",
    );
    refused(
        "20 H7/g6 = 20.013/19.985 with bore gauge warm 60C, hole nylon 66, shaft steel",
        "a pair in the warm goes by single sizes at 20 °C",
        "60C",
        "as in `20 H7/g6 = 20.013/19.985 warm 60C, hole nylon 66, shaft steel`",
    );
    refused(
        "20 H7 = 20.013, runs 100",
        "this belongs to a rehearsal",
        "100",
        "as in `rehearse 20 H7 from 19.6 with bore gauge, runs 1000, seed 7`",
    );
    refused(
        "20 H7 = 20.013 20.014 -20.01",
        "a size of -20.01 mm is less than nothing",
        "-20.01",
        "without the sign: `20 H7 = 20.013 20.014 20.01`",
    );
    refused(
        "20 \u{b1}0.02 = 20.01 with bore gauge",
        "the readings are judged, and it was not said whether this is a hole or a shaft",
        "20",
        "say which: `hole 20 \u{b1}0.02 = 20.01 with bore gauge`",
    );
}

#[test]
fn tailstock() {
    refused(
        "align",
        "nothing was measured",
        "",
        "two test diameters and their distance, as `align 19.98 20.01 over 150`",
    );
    refused(
        "align 19.98 20.01",
        "the distance is missing: `over` and a length",
        "",
        "two test diameters and their distance, as `align 19.98 20.01 over 150`",
    );
    refused(
        "align 19.98 20.01 over -150",
        "a length of -150 mm has no taper",
        "19.98 20.01 over -150",
        "give a distance above 0, as 150 mm or 6 in",
    );
    refused(
        "align 0.7503 0.7511 over 6in",
        "these numbers have no unit, and the distance has one",
        "0.7503 0.7511",
        "give theirs, as `align 0.7503in 0.7511in over 6in`",
    );
    refused(
        "align 19.98 20.01 over 150 between 100",
        "the centres are further apart than what was measured between them",
        "100",
        "as in `align 19.98 20.01 over 150 between 400`",
    );
    refused(
        "align 19.98 20.01 over 150, 20 g6",
        "how long is it?",
        "20",
        "as in `align 19.98 20.01 over 150, 20 g6 long 40`",
    );
    refused(
        "align taper 1 over 200",
        "a taper is one length over another",
        "",
        "as in `align taper 1:50 over 200`",
    );
}

#[test]
fn rehearsals() {
    refused(
        "rehearse 20 H7 from 19.6",
        "what is it measured with?",
        "",
        "name it: `rehearse 20 H7 from 19.6 with bore gauge`",
    );
    refused(
        "rehearse 20 H7 with bore gauge",
        "where does the work start?",
        "",
        "as in `rehearse 20 H7 from 19.6 with bore gauge`",
    );
    refused(
        "rehearse 20 H7 from 20.1 with bore gauge",
        "a bore of 20.1 mm is over the upper limit 20.021 mm already",
        "20.1",
        "as in `rehearse 20 H7 from 19.6 with bore gauge`",
    );
    refused(
        "rehearse 20 H7/g6 from 19.6 with bore gauge",
        "this asks about one feature, and a pair was given",
        "20",
        "as in `rehearse 20 H7 from 19.6 with bore gauge`",
    );
    refused(
        "rehearse 20 H7 from 19.6 with bore gauge, runs 0",
        "a rehearsal runs from 1 to 1000000 times",
        "0",
        "try `rehearse 20 H7 from 19.6 with bore gauge, runs 1000`",
    );
    refused(
        "rehearse 20 H7 from 19.6 with bore gauge, seed x",
        "a whole number is missing here",
        "",
        "as in `rehearse 20 H7 from 19.6 with bore gauge, seed 7`",
    );
    refused("rehearse", "the size is missing", "", "as in `bore 20 H7` or `hole 20 ±0.02`");
}
