//! Threads as people write them: what is read, what is left alone, and what
//! is refused with its place and the next step.

use fits_core::{
    Length,
    standards::thread::{
        Class, Designation, Form, Nominal, Pitch, Side, Thread, scan, scan_expected,
    },
};

#[track_caller]
fn read(text: &str) -> (Designation, usize) {
    scan(text)
        .unwrap_or_else(|| panic!("{text} is not a thread"))
        .unwrap_or_else(|error| panic!("{text}: {error}"))
}

#[track_caller]
fn is(text: &str, name: &str) {
    let (designation, taken) = read(text);
    assert_eq!(taken, text.len(), "{text}");
    let thread = designation.resolve().unwrap_or_else(|error| panic!("{text}: {error}"));
    assert_eq!(written(&designation, &thread), name, "{text}");
}

fn written(designation: &Designation, thread: &Thread) -> String {
    let class = |side| designation.class(side).map(|class| class.value);
    thread.designation(class(Side::External), class(Side::Internal))
}

#[test]
fn threads_are_read_as_people_write_them() {
    for (text, name) in [
        ("M10", "M10x1.5"),
        ("M10x1.25", "M10x1.25"),
        ("m10x1.25", "M10x1.25"),
        ("M10X1.25-6g", "M10x1.25-6g"),
        ("M10 x 1.25", "M10x1.25"),
        ("M10\u{d7}1.25", "M10x1.25"),
        ("M10-1.5", "M10x1.5"),
        ("M10-6g", "M10x1.5-6g"),
        ("M10 6H/6g", "M10x1.5-6H/6g"),
        ("M10 5g6g", "M10x1.5-5g6g"),
        ("M10x1.25 LH", "M10x1.25-LH"),
        ("M10x1.25 left hand 6g", "M10x1.25-6g-LH"),
        ("M10x3P1.5", "M10xPh3P1.5"),
        ("M10xPh3P1.5-6H-LH", "M10xPh3P1.5-6H-LH"),
        ("M10x1.5 2 starts", "M10xPh3P1.5"),
        ("3/8-24", "3/8-24 UNF"),
        ("3/8-24 UNF-2A", "3/8-24 UNF-2A"),
        ("3/8-24 UNF 2A", "3/8-24 UNF-2A"),
        ("3/8-24-2A", "3/8-24 UNF-2A"),
        ("3/8-24 2B/2A", "3/8-24 UNF-2B/2A"),
        ("3/8-24 2A/2B", "3/8-24 UNF-2B/2A"),
        ("3/8-24UNF", "3/8-24 UNF"),
        ("3/8 UNF", "3/8-24 UNF"),
        ("3/8-UNF", "3/8-24 UNF"),
        ("1-1/8-7", "1-1/8-7 UNC"),
        ("1 1/8-7", "1-1/8-7 UNC"),
        ("1-1/2 UNC", "1-1/2-6 UNC"),
        ("1-8", "1-8 UNC"),
        ("1in-8", "1-8 UNC"),
        ("1\"-8", "1-8 UNC"),
        ("3/8in UNF", "3/8-24 UNF"),
        ("2-4.5", "2-4.5 UNC"),
        ("2-4-1/2", "2-4.5 UNC"),
        ("#10-32", "10-32 UNF"),
        ("10-32 UNF", "10-32 UNF"),
        ("10-32", "10-32 UNF"),
        ("1-64", "1-64 UNC"),
        ("1-20", "1-20 UNEF"),
        ("0-80", "0-80 UNF"),
        ("0.375-24 UNF", "0.375-24 UNF"),
        (".375-24", "0.375-24 UNF"),
        ("1/4-19", "1/4-19 UNS"),
        ("5/8-16 UN", "5/8-16 UN"),
        ("1-8 UN", "1-8 UNC"),
        ("1/4-20 UNRC-2A", "1/4-20 UNRC-2A"),
        ("3/4-16 2 starts LH", "3/4-16 UNF-LH 2 starts"),
    ] {
        is(text, name);
    }
}

#[test]
fn other_systems_are_read_and_told_apart() {
    for (text, form) in [
        ("Tr20x4", Form::Trapezoidal),
        ("Tr40x14P7 LH 7H/7e", Form::Trapezoidal),
        ("TR40x14(P7)", Form::Trapezoidal),
        ("1/2-10 Acme 2G", Form::Acme),
        ("1/2-10 ACME-2G", Form::Acme),
        ("1/2-10 stub acme", Form::StubAcme),
        ("1/2 BSW", Form::Whitworth),
        ("1/4-26 BSF", Form::Whitworth),
        ("1/4-26 BSF close", Form::Whitworth),
        ("2BA", Form::Ba),
        ("2 BA", Form::Ba),
        ("2 BA normal", Form::Ba),
        ("G1/2", Form::PipeParallel),
        ("G1/2 A", Form::PipeParallel),
        ("G 1-1/4", Form::PipeParallel),
        ("R1/2", Form::PipeR),
        ("Rp1/2", Form::PipeRp),
        ("Rc1/2", Form::PipeRc),
        ("1/2-14 NPT", Form::Npt),
        ("1/2 NPT", Form::Npt),
        ("1-11-1/2 NPT", Form::Npt),
        ("1-1/4-11.5 NPT", Form::Npt),
    ] {
        let (designation, taken) = read(text);
        assert_eq!((designation.form, taken), (form, text.len()), "{text}");
    }
    let (tr, _) = read("Tr40x14P7 LH 7H/7e");
    assert_eq!((tr.starts, tr.left), (2, true));
    assert_eq!(
        tr.class(Side::Internal).map(|class| class.value.to_string()).as_deref(),
        Some("7H")
    );
    let (acme, _) = read("1/2-10 Acme 2G");
    assert_eq!(acme.class(Side::Internal), acme.class(Side::External));
    let (npt, _) = read("1-11-1/2 NPT");
    assert_eq!(npt.pitch.map(|pitch| pitch.value.figure()).as_deref(), Some("11.5"));
}

#[test]
fn a_pitch_said_in_the_other_unit_is_the_same_thread() {
    let eight = Pitch::of("3.175mm".parse().expect("a size")).expect("a pitch");
    let one = Nominal::Fraction { whole: 1, numerator: 0, denominator: 1 };
    let thread = Thread::unified(one, eight).expect("a thread");
    assert_eq!(thread.to_string(), "1-8 UNC");
    let ten = Length::from_millimetres(10).expect("a size");
    let thread = Thread::metric(ten, Pitch::per_inch(254, 15).expect("a pitch")).expect("a thread");
    assert_eq!(thread.to_string(), "M10x1.5");
}

#[test]
fn what_follows_a_thread_is_left() {
    for (text, taken) in [
        ("M10 tap 70%", 3),
        ("3/8-24 tap #8", 6),
        ("3/8-24 3A wires 0.024in", 9),
        ("M10x1.25 cut", 8),
        ("M10, hub aluminium", 3),
        ("M10 6mm", 3),
        ("M10 2 wires", 3),
        ("1/2-10 Acme from 3/4in", 11),
    ] {
        assert_eq!(read(text).1, taken, "{text}");
    }
}

#[test]
fn what_is_no_thread_is_left_alone() {
    for text in [
        "",
        "20 H7",
        "20",
        "3/8",
        "3/8in",
        "3/4in h6",
        "3/4in - 15 thou",
        "1-1/2in",
        "1-1/2",
        "1-1/2 in",
        "0.7500..0.7505",
        "0.75-0.02",
        "20-5",
        "20.5-3",
        "5.5-2.1",
        "5.5-2",
        "3/4-1/64",
        "3/8-24,5",
        "0,375-24",
        "#7",
        "# 7",
        "m6 dowel pin 6mm",
        "M6 dowel pin 6mm",
        "m6",
        "m6 pin",
        "RC4",
        "ream 20 H7",
        "turn",
        "Mx",
        "M",
        "Tr",
        "20 bore",
        "20 slip",
        "20 push",
        "1/2 slip",
        "1/2 stub",
        "3/8-24mm",
        "12.5 general m",
        "M10mm",
        "2 tenths",
        "10 thou",
        "7 A",
        "20 u6",
        "20 n6",
        "3/8-24%",
        "letter F",
        "20 +0.02/-0.01",
        "1 1/2",
        "3/8-",
        "3/8-x",
        "3//8",
        "1-1/8",
        "1-1/8in-7x",
    ] {
        assert!(scan(text).is_none(), "{text:?}: {:?}", scan(text));
    }
}

#[test]
fn a_bare_size_takes_the_coarse_pitch_and_says_so() {
    for (text, name) in [
        ("M10", "M10x1.5"),
        ("m10", "M10x1.5"),
        ("3/8", "3/8-16 UNC"),
        ("#10", "10-24 UNC"),
        ("1", "1-8 UNC"),
    ] {
        let (designation, taken) = scan_expected(text).expect("a thread").expect(text);
        assert_eq!(taken, text.len());
        let thread = designation.resolve().expect(text);
        assert_eq!((thread.to_string().as_str(), thread.is_pitch_assumed()), (name, true));
        assert!(thread.reasons()[0].rule.to_string().starts_with("no pitch was given"), "{text}");
    }
    assert!(!read("3/8 UNF").0.resolve().expect("listed").is_pitch_assumed());
}

/// Message, bytes at fault and advice.
#[track_caller]
fn refused(text: &str) -> (String, Option<std::ops::Range<usize>>, String) {
    let found = scan(text).unwrap_or_else(|| panic!("{text} is not a thread"));
    let error = found
        .and_then(|(designation, _)| {
            let thread = designation.resolve()?;
            let class = |side| designation.class(side).map(|class| class.value);
            thread.external(class(Side::External))?;
            thread.internal(class(Side::Internal))
        })
        .expect_err(text);
    (error.to_string(), error.span(), error.advice())
}

/// Text, message, bytes at fault and advice.
type Broken = (&'static str, &'static str, (usize, usize), &'static str);

const BROKEN: &[Broken] = &[
    (
        "M10x",
        "the pitch is missing after the x",
        (4, 4),
        "M10 is listed with pitch 1.5 (coarse), 1.25, 1, 0.75",
    ),
    (
        "M10xfine",
        "the pitch is missing after the x",
        (4, 8),
        "M10 is listed with pitch 1.5 (coarse), 1.25, 1, 0.75",
    ),
    (
        "M10x20",
        "a pitch of 20 mm leaves no core in M10",
        (4, 6),
        "M10 is listed with pitch 1.5 (coarse), 1.25, 1, 0.75",
    ),
    ("M72", "M72 has no coarse pitch", (1, 3), "M72 is listed with pitch 6, 4, 3, 2, 1.5"),
    (
        "M10x1.25-",
        "a class, `LH` or `2 starts` belongs after the dash",
        (9, 9),
        "put a space before what is not part of the thread",
    ),
    (
        "M10x4P1.5",
        "a lead of 4 mm is not a whole number of pitches of 1.5 mm",
        (4, 9),
        "the lead is the pitch times the starts, from 1 to 20",
    ),
    (
        "M10x3P1.5 3 starts",
        "lead and pitch make 2 starts, not 3",
        (10, 18),
        "give either lead and pitch or the starts",
    ),
    (
        "M10 6H/",
        "a class is missing after the /",
        (7, 7),
        "write the nut's class and the screw's, as `M10 6H/6g`",
    ),
    (
        "M10 6g 6H",
        "the class was given already: 6g",
        (7, 9),
        "write a pair with a stroke, as `M10 6H/6g`",
    ),
    (
        "M10 6g/4h",
        "6g and 4h are both external classes",
        (7, 9),
        "give one for the nut and one for the screw",
    ),
    ("M10 6A", "no internal metric thread has class 6A", (4, 6), "the usual one is 6H"),
    (
        "M10 6d",
        "the deviations of position d (ISO 965-1:2013) are not held here",
        (4, 6),
        "the nearest is 6e, the usual one 6g",
    ),
    (
        "M10 5g",
        "no grade 5 for the crest diameter of external threads: 4, 6, 8",
        (4, 6),
        "the nearest is 5g6g, the usual one 6g",
    ),
    (
        "3/8-240",
        "240 tpi is finer than any Unified thread",
        (4, 7),
        "listed: `3/8-16` UNC, `3/8-24` UNF, `3/8-32` UNEF",
    ),
    (
        "3/8-3",
        "a pitch of 3 tpi leaves no core in 3/8 in",
        (4, 5),
        "listed: `3/8-16` UNC, `3/8-24` UNF, `3/8-32` UNEF",
    ),
    (
        "3/8-24 UNC",
        "3/8-24 is UNF, not UNC",
        (7, 10),
        "listed: `3/8-16` UNC, `3/8-24` UNF, `3/8-32` UNEF",
    ),
    (
        "1/4-19 UNF",
        "1/4-19 is in no series",
        (7, 10),
        "listed: `1/4-20` UNC, `1/4-28` UNF, `1/4-32` UNEF, or of its own: `1/4-19 UNS`",
    ),
    (
        "#13-20",
        "there is no screw size #13: #0 to #6, #8, #10 and #12",
        (0, 3),
        "write other sizes in inches, as `1/4-20`",
    ),
    ("1/16 UNF", "1/16 is not listed in UNF", (0, 4), "give the turns per inch, as `1/16-64`"),
    (
        "3/8-24 6g",
        "a Unified thread has no class 6g",
        (7, 9),
        "screws take 2A (1A, 3A), nuts 2B (1B, 3B)",
    ),
    ("3/8-24 4A", "no external Unified thread has class 4A", (7, 9), "the nearest is 3A"),
    (
        "1/4-20 UNRC-2B",
        "UNR is a screw's form: its nut is UN",
        (12, 14),
        "leave out the R for the nut",
    ),
];

#[test]
fn broken_threads_name_the_fault_its_place_and_the_next_step() {
    for (text, message, (start, end), advice) in BROKEN {
        let wanted = ((*message).to_owned(), Some(*start..*end), (*advice).to_owned());
        assert_eq!(refused(text), wanted, "{text}");
        // What stands between backquotes works as it stands.
        for (at, offered) in advice.split('`').enumerate() {
            if at % 2 == 1 && offered.contains(|c: char| c.is_ascii_digit()) && offered.len() > 3 {
                let is_class = Class::read(offered).is_some();
                assert!(
                    is_class || offered == "2 starts" || offered.parse::<Thread>().is_ok(),
                    "{offered}"
                );
            }
        }
    }
}
