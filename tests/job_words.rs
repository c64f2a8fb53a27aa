//! Words and numbers of a note that are easily taken for another's size: each
//! rule on a note of its own, with the feature that is to come out of it.

use fits_checks::notes::{asked, feature, mate, mm, size};
use fits_core::{
    Length,
    job::whole::{Job, NominalSize, SizeKind},
};
use fits_repl::note;

/// Each feature of a note with its size, and no other size in it.
#[track_caller]
fn sizes(text: &str, want: &[(&str, &str)]) -> Job {
    let job = note::read(text);
    for (name, said) in want {
        assert_eq!(size(&job, name), Some(mm(said)), "{name}: {:#?}", job.features);
    }
    let sized = job.features.iter().filter(|one| {
        !one.implied && one.nominal.as_ref().is_some_and(|nominal| nominal.size().is_some())
    });
    let names: Vec<&str> = sized.map(|one| one.name.as_str()).collect();
    assert_eq!(names.len(), want.len(), "{names:?}");
    job
}

/// A full stop, a comma or a bracket ends no number.
#[test]
fn a_sign_behind_a_number_is_no_part_of_it() {
    for sign in ["", ".", ",", ";", ")", " .", ". Then paint."] {
        for (said, is) in [
            ("5/8", "0.625in"),
            ("1-3/8", "1.375in"),
            ("1 3/8", "1.375in"),
            (".625", "0.625in"),
            ("1.375", "1.375in"),
            ("3/4\"", "0.75in"),
            ("2 in", "2in"),
            ("16 mm", "16mm"),
        ] {
            let text = format!("all inches\nwheels acetal\n - Width {said}{sign}\n");
            let job = note::read(&text);
            assert_eq!(size(&job, "wheels width"), Some(mm(is)), "{text}");
            assert!(job.questions.is_empty(), "{text}{:?}", job.questions);
        }
        let text = format!("all inches\narm\n - Post hole is tapped 1/4-20{sign}\n");
        let job = note::read(&text);
        let thread = job.features.iter().find_map(|one| match &one.nominal {
            Some(NominalSize::Thread(name)) => Some(name.as_str()),
            _ => None,
        });
        assert_eq!(thread, Some("1/4-20"), "{text}");
    }
}

/// What a plate is cut from is no bore of it, whatever its finish.
#[test]
fn the_stock_of_a_part_is_no_size_of_it() {
    for stock in ["3/8 plate", "3/8 black plate", "3/8 bright bar", "1/4 scrap steel plate"] {
        let text = format!("all inches\nside plates   {stock}, 2 off\n  bush holes 1-1/4 bored\n");
        sizes(&text, &[("side plates bush holes", "1.25in")]);
    }
    sizes(
        "all inches\nhead shaft - 1-1/4 EN3 bar\n - journal 1.000\n",
        &[("head shaft journal", "1in")],
    );
}

#[test]
fn a_count_of_teeth_is_no_size_and_no_count_of_parts() {
    for teeth in ["15T", "15t", "15 tooth", "15-tooth", "15 teeth"] {
        let text = format!("all mm\npinion {teeth} bore 28 H7\n");
        let job = sizes(&text, &[("pinion bore", "28mm")]);
        assert_eq!(job.parts[0].count, None, "{text}");
        assert!(job.questions.is_empty(), "{text}{:?}", job.questions);
    }
}

/// The readings of a feature.
#[track_caller]
fn read(text: &str, name: &str) -> Vec<Length> {
    let job = note::read(text);
    job.features[feature(&job, name)].readings.iter().map(|reading| reading.size).collect()
}

#[test]
fn a_word_cut_short_by_a_full_stop_ends_no_sentence() {
    let text = "all mm\ninput shaft\n  journal 25\npin. 14T bore 28 H7\nhsg. bore 52 J7\n";
    let job = sizes(
        text,
        &[("input shaft journal", "25mm"), ("pin. bore", "28mm"), ("hsg. bore", "52mm")],
    );
    assert!(job.questions.is_empty(), "{:?}", job.questions);
    // A pin stays a pin.
    let job = note::read("all mm\nlever\n  hole 8, runs on pin\npin 8 h6\n");
    assert!(job.parts.iter().any(|part| part.name == "pin"), "{:?}", job.parts);
}

/// Three decimals beside inch sizes are inches where they are about one of them,
/// or of a part in inches; elsewhere they are asked about.
#[test]
fn a_bare_decimal_of_a_note_in_both_units_is_not_guessed() {
    let note = |line: &str| {
        format!(
            "shaft\n  seats 25 k6, 30 wide, 140 long\n  flange 60 h9\nbush 1 1/8 x 1 3/8 x 1 1/4 lg\n{line}\n"
        )
    };
    let text = note("housing\n  bush hole 1.375");
    assert_eq!(size(&note::read(&text), "housing bush hole"), Some(mm("1.375in")));
    let text = note("housing\n  dowel hole 2.125");
    assert_eq!(size(&note::read(&text), "housing dowel hole"), None);
    assert_eq!(asked(&text).as_deref(), Some("is this in inches or in mm?"));
    // With no inch size in the note it is what the note is in.
    let text = "shaft\n  seats 25 k6, 30 wide, 140 long\n  pin hole 2.125\n";
    assert_eq!(size(&note::read(text), "shaft pin hole"), Some(mm("2.125mm")));
}

#[test]
fn lines_under_a_date_are_readings_of_what_is_there() {
    let text =
        "all mm\nhub\n  bore 28 H7\n  keyway 8 P9\n\n12/4 hub bore 28.011\nkeyway cut 8.00\n";
    assert_eq!(read(text, "hub bore"), [mm("28.011mm")]);
    assert_eq!(read(text, "hub keyway"), [mm("8mm")]);
    assert_eq!(asked(text), None);
    let text = "all inches\nframe\n  hole 1-1/4\n4 May: frame hole 1.2500, other side 1.2512\n";
    assert_eq!(read(text, "frame hole"), [mm("1.25in"), mm("1.2512in")]);
    assert_eq!(note::read(text).parts.len(), 1);
    // Three fine figures are no new sizes, and a hole far off is another.
    let text = "all inches\nring\n  bore 6\n\n16/2 started\nring holes .7495 .7500 .7498\n";
    assert_eq!(asked(text).as_deref(), Some("what was measured here?"));
    let text = "all inches\nring\n  bore 6\n16/2 ring hole reamed 5/16\n";
    assert_eq!(size(&note::read(text), "ring bore"), Some(mm("6in")));
    assert!(asked(text).is_some());
    // What it wants is a size, and the class denied holds no more.
    let text = "all mm\nshaft\n  gear seat 28 h6\n12/4 shaft gear seat wants 28.025 not h6\n";
    let job = note::read(text);
    assert_eq!(size(&job, "shaft gear seat"), Some(mm("28.025mm")));
    assert_eq!(job.features[feature(&job, "shaft gear seat")].class, None);
}

#[test]
fn a_correction_finds_the_one_size_that_it_denies() {
    for (text, name, is, was) in [
        (
            "all inches\nside plates\n  7-1/4 between plates\nshaft\n  journal 1.000\nwrong above - 7-3/8 between plates not 7-1/4\n",
            "side plates between plates",
            "7.375in",
            "7.25in",
        ),
        (
            "all inches\nwheels\n  bore 5/8\n  width 5/8\nReadings\n - Correction to the wheels: width should be 9/16, not 5/8.\n",
            "wheels width",
            "0.5625in",
            "0.625in",
        ),
        (
            "all mm\nspoke\n  thickness 3\n  length 118\nspokes shortened to 116\n",
            "spoke length",
            "116mm",
            "118mm",
        ),
    ] {
        let job = note::read(text);
        assert_eq!(size(&job, name), Some(mm(is)), "{text}{:#?}", job.features);
        let earlier = &job.features[feature(&job, name)].earlier;
        assert_eq!(earlier.last().and_then(|(_, was)| was.size()), Some(mm(was)), "{text}");
    }
    // Two that could be meant: asked.
    let text = "all mm\nspoke\n  thickness 3\n  width 8\nspokes shortened to 116\n";
    assert!(asked(text).is_some());
}

#[test]
fn thousandths_beside_a_size_are_added_or_asked_about() {
    for (said, is) in [
        ("1-1/4 plus 2 thou", "1.252in"),
        ("1.250 plus 2 thou", "1.252in"),
        ("1\" + 3 tenths", "1.0003in"),
    ] {
        sizes(&format!("all inches\nbush\n  OD {said}\n"), &[("bush od", is)]);
    }
    sizes(
        "all inches\nbush\n  3/4 OD plus 2 thou, 1/2 bore\n",
        &[("bush od", "0.752in"), ("bush bore", "0.5in")],
    );
    let text = "all inches\nbush\n  bore 7/8 less 1 thou\n";
    assert_eq!(asked(text).as_deref(), Some("does this come off the size?"));
    let text = "all inches\nshims .010 & .005\n";
    assert_eq!(asked(text).as_deref(), Some("what is this a size of?"));
}

#[test]
fn a_depth_is_no_pitch_and_a_pitch_no_depth() {
    let keyed = [("shaft keyway", "8mm"), ("shaft keyway depth", "4mm")];
    sizes("all mm\nshaft\n  keyway 8 P9, 4 dp\n", &keyed);
    sizes("all inches\ngear 40 teeth, 16 dp, bore 3/4\n", &[("gear bore", "0.75in")]);
}

#[test]
fn a_first_line_that_ends_with_a_date_is_a_title() {
    let job = note::read("rake gbox 9/4\nhub\n  bore 28 H7, 140 long\n");
    assert_eq!(job.title.as_deref(), Some("rake gbox 9/4"));
    assert!(job.questions.is_empty(), "{:?}", job.questions);
    // A fraction is a size.
    let job = note::read("pin 3/4\nhub\n  bore 3/4\n");
    assert_eq!(size(&job, "pin od"), Some(mm("0.75in")));
}

#[test]
fn a_heading_over_questions_is_no_part() {
    for heading in ["Questions", "Still to do", "Notes", "Problems"] {
        let text = format!("all inches\narm\n - bore 3/4\n\n{heading}\n - harden it, 1/4 deep?\n");
        let job = note::read(&text);
        assert!(job.parts.iter().all(|part| part.name != heading), "{text}{:?}", job.parts);
        assert!(job.remarks.iter().any(|remark| remark.text == heading), "{text}");
    }
}

/// As large as others is no joint with them.
#[test]
fn a_size_that_is_to_match_others_makes_no_hole() {
    let text = "all inches\nrollers\n  body 7/8 diameter\nwheels\n  outside 1-3/8, must match the rollers\n";
    let job = note::read(text);
    assert!(job.mates.is_empty(), "{:#?}", job.mates);
    assert!(job.remarks.iter().any(|remark| remark.text == "match rollers"), "{:?}", job.remarks);
}

#[test]
fn the_holes_on_a_circle_are_counted() {
    let job = note::read("mm\n\nPlate\n  holes 5.5 x 4 on 50 pcd\n  bore 20\n");
    assert_eq!(size(&job, "Plate holes"), Some(mm("5.5mm")), "{:#?}", job.features);
    let four = mm("4mm");
    assert!(job.features.iter().all(|one| one.size() != Some(four)), "{:#?}", job.features);
}

#[test]
fn the_number_of_a_bearing_is_no_size() {
    for bearings in ["the 608 bearings", "the 608s", "a 608", "the 6200 bearings"] {
        let text = format!("all mm\nspindle\n - seats 8 h6, slide into {bearings} by hand\n");
        sizes(&text, &[("spindle seats", "8mm")]);
    }
}

#[test]
fn an_amount_of_clearance_is_no_length_of_a_part_called_large() {
    let text = "all inches\nLg bsh 2 off brz\n od .752  id 5/8\nCrk sft 5/8 bms\n jnl .6235 in lg bsh, 1-1/2 thou clr\n";
    let named = [("Lg bsh od", "0.752in"), ("Lg bsh id", "0.625in"), ("Crk sft jnl", "0.6235in")];
    let job = sizes(text, &named);
    assert!(job.questions.is_empty(), "{:?}", job.questions);
    let joint = mate(text, "Crk sft jnl");
    assert_eq!(joint.0, "Lg bsh id");
    let clearance = job.mates.iter().find_map(|mate| mate.fit.clearance).expect("the amount");
    assert_eq!(clearance.upper(), mm("0.0015in"));
    // Behind a size it is long.
    let job = note::read("all inches\nbush\n  bore 3/4, 2 lg\n");
    assert_eq!(size(&job, "bush bore length"), Some(mm("2in")));
}

#[test]
fn a_row_says_what_is_long_and_what_its_part_is_made_of() {
    let text = "all mm\nPart | Feature | Size | Fit | Goes with\n---|---|---|---|---\nShaft (C45) | flywheel seat | 28 | h7 | flywheel\n\" | keyway width | 8 | P9 | key\n\" | keyway depth | 4 +0.2 | |\nKey | w x h x l | 8 x 7 x 40 | h9 | shaft\nHousing | bore depth | 16 | |\nFlywheel (old) | hub bore | 28 | H7 | shaft\nWheel head, alu | pin spacing | 254 | ±0.2 |\n";
    let job = sizes(
        text,
        &[
            ("Shaft flywheel seat", "28mm"),
            ("Shaft keyway width", "8mm"),
            ("Shaft keyway depth", "4mm"),
            ("Key width", "8mm"),
            ("Key height", "7mm"),
            ("Key length", "40mm"),
            ("Housing bore depth", "16mm"),
            ("Flywheel hub bore", "28mm"),
            ("Wheel head pin spacing", "254mm"),
        ],
    );
    let one = |name: &str| &job.features[feature(&job, name)];
    for name in ["Shaft keyway depth", "Housing bore depth", "Wheel head pin spacing"] {
        assert_eq!(one(name).side, SizeKind::Length, "{name}");
    }
    let off = one("Shaft keyway depth").deviations.expect("limits");
    assert_eq!((off.lower(), off.upper()), (Length::ZERO, mm("0.2mm")));
    assert_eq!(mate(text, "Shaft flywheel seat").0, "Flywheel hub bore");
    assert_eq!(mate(text, "Key width").0, "Shaft keyway width");
    assert_eq!(job.parts[one("Shaft keyway width").part].material.as_deref(), Some("c45"));
    assert!(job.remarks.iter().any(|remark| remark.text == "old"), "{:?}", job.remarks);
}

/// What was done to a hole is no hole of its own, and an article no mark.
#[test]
fn work_on_a_hole_that_waits_for_its_size_is_no_other_hole() {
    sizes(
        "all inches\nframe\n    pivot hole, bored true 1.000\n    eccentric bores (2)  7/8 ream in line\n    oil hole 1/8 drill\n",
        &[
            ("frame pivot hole", "1in"),
            ("frame eccentric bores", "0.875in"),
            ("frame oil hole", "0.125in"),
        ],
    );
    sizes(
        "all mm\nspindle\n - gear seat 9\n - A 2 mm cross hole takes the drive peg.\n",
        &[("spindle gear seat", "9mm"), ("spindle cross hole", "2mm")],
    );
}

/// A date stands before it, and yet it is what is wanted from then on.
#[test]
fn a_class_beside_a_dated_size_is_a_wish() {
    let text = "all mm\nPart | Feature | Size | Fit | Goes with\n---|---|---|---|---\nShaft | flywheel seat | 28 | h7 | flywheel\n\" | head end | 24 | h6 | wheel head\nFlywheel | hub bore | 28 | H7 | shaft\n\n14.9.  flywheel hub bore is worn out -> bored to 34 H7 for a sleeve, 34.008\n14.9.  sleeve: OD 34 s6 into flywheel, bore 28 H7 on shaft\n21.9.  sleeve pressed in, bore 28.006, good\n       -> turn head end of shaft 24.02 instead of 24\n";
    let job = note::read(text);
    for (name, is, was, read) in [
        ("Flywheel hub bore", "34mm", Some("28mm"), Some("34.008mm")),
        ("sleeve od", "34mm", None, None),
        ("sleeve bore", "28mm", None, Some("28.006mm")),
        ("Shaft head end", "24.02mm", Some("24mm"), None),
    ] {
        assert_eq!(size(&job, name), Some(mm(is)), "{name}");
        let one = &job.features[feature(&job, name)];
        let earlier = one.earlier.last().and_then(|(_, was)| was.size());
        assert_eq!(earlier, was.map(mm), "{name}");
        assert_eq!(one.reading().map(|read| read.size), read.map(mm), "{name}");
    }
    // What was a joint before is none now: it is said.
    assert_eq!(mate(text, "Shaft flywheel seat").0, "sleeve bore");
    assert_eq!(mate(text, "Flywheel hub bore").0, "sleeve od");
    assert!(asked(text).is_some_and(|text| text.contains("outgrown")), "{:?}", job.questions);
}

#[test]
fn a_bore_that_was_opened_up_is_as_large_as_it_is_now() {
    let text = "all mm\nspindle\n - seat 8.98\ngear\n - Bore was 8, opened up to 8.98 for the press on the spindle.\n";
    let job = sizes(text, &[("spindle seat", "8.98mm"), ("gear bore", "8.98mm")]);
    let earlier = &job.features[feature(&job, "gear bore")].earlier;
    assert_eq!(earlier.last().and_then(|(_, was)| was.size()), Some(mm("8mm")));
    assert_eq!(mate(text, "gear bore").0, "spindle seat");
}

/// `mm.` opens a note though figures stand behind it.
#[test]
fn a_unit_alone_opens_a_note() {
    let note =
        "mm. drum has to hold 400 m of 1.5 line\n\nShaft\n  journal 5\n  key 1/8\n  pin 3/8\n";
    assert_eq!(size(&note::read(note), "Shaft journal"), Some(mm("5mm")));
}

#[test]
fn a_date_ends_at_a_tab() {
    let note = "mm\n\nShaft\n  journal 20\n\n12/9\tshaft journal\t20.01\n";
    assert_eq!(read(note, "Shaft journal"), [mm("20.01mm")]);
}

#[test]
fn the_head_of_a_column_may_be_a_question() {
    let head = "mm\n\npart | what | size | goes with | ok?\n---|---|---|---|---\n";
    let job =
        sizes(&format!("{head}shaft | journal | 20 h6 | | y\n"), &[("shaft journal", "20mm")]);
    assert!(job.features[feature(&job, "shaft journal")].done, "{:#?}", job.features);
}

/// A joint said behind a length is of the surface that is so long.
#[test]
fn a_joint_behind_a_length_is_of_what_is_so_long() {
    for said in ["20 k6 x 15 long, in the plates", "20 k6, 15 long, runs in the plates"] {
        let text = format!("all mm\nplates\n - bore 20 H7\nroller\n - journals {said}\n");
        assert_eq!(mate(&text, "roller journals").0, "plates bore", "{said}");
    }
    let text = "all mm\nplate\n - spigot 80 x 6, mounts into the stand\n";
    assert!(mate(text, "plate spigot").0.starts_with("stand"));
}

/// The word behind two sizes belongs to the second; that behind one size to that one.
#[test]
fn a_word_behind_two_sizes_is_of_the_second() {
    sizes(
        "all mm\nplate\n - hole 8 x 20 deep\nbush\n - flange 30 x 3\n - keyway 6 x 3 dp\n",
        &[
            ("plate hole", "8mm"),
            ("plate hole depth", "20mm"),
            ("bush flange", "30mm"),
            ("bush flange thickness", "3mm"),
            ("bush keyway", "6mm"),
            ("bush keyway depth", "3mm"),
        ],
    );
    sizes(
        "all mm\nplate\n - pocket 30 x 20 x 6 deep\n",
        &[("plate pocket", "30mm"), ("plate pocket width", "20mm"), ("plate pocket depth", "6mm")],
    );
    let head = "all mm\n\npart | feature | size | goes with | fit\n---|---|---|---|---\n";
    let want = [("arm fork slot", "14mm"), ("arm fork slot depth", "30mm")];
    sizes(&format!("{head}arm | fork slot | 14 wide 30 deep | |\n"), &want);
    // A thread is never a length, and a metric one has the pitches of the standard.
    let job = sizes("all mm\nhook\n - tapped M8 deep 15\n", &[("hook thread depth", "15mm")]);
    assert!(job.questions.is_empty(), "{:?}", job.questions);
    for (said, name) in [("M20 x 1", "M20x1"), ("M12 x 14", "M12")] {
        let job = note::read(&format!("all mm\nspindle\n - thread {said}\n"));
        assert_eq!(job.features[0].nominal, Some(NominalSize::Thread(name.into())));
    }
}

#[test]
fn the_circle_that_holes_stand_on_is_a_length_of_them() {
    for said in ["holes 8 on 70 pcd", "holes 8 on a 70mm pcd", "holes 8, 70 pcd"] {
        let want = [("plate holes", "8mm"), ("plate holes pcd", "70mm")];
        sizes(&format!("all mm\nplate\n - {said}\n"), &want);
    }
}

/// A square is neither a hole nor a shaft, and so is a keyway, whatever it is cut in.
#[test]
fn what_is_not_round_has_its_own_side() {
    let text = "all inches\ncrank\n - sq hole 3/8\n - boss keyway 1/8\n - grv 1/4 wide\nshaft\n - 3/8 sq x 3/4 lg\n";
    let job = note::read(text);
    for (name, is) in [("sq hole", "0.375in"), ("boss keyway", "0.125in"), ("grv", "0.25in")] {
        let at = feature(&job, &format!("crank {name}"));
        assert_eq!(job.features[at].side, SizeKind::Other, "{name}");
        assert_eq!(job.features[at].size(), Some(mm(is)), "{name}");
    }
    assert_eq!(job.features[feature(&job, "shaft sq")].side, SizeKind::Other);
}

/// What a part is made from, how much of it there is and where a figure stood before:
/// no size of a feature, and yet not lost.
#[test]
fn a_figure_that_is_no_size_is_kept_as_a_remark() {
    for (line, want) in [
        ("  bore 20 H7, cut from 3 ft of bar", &[("Base bore", "20mm")][..]),
        ("  bore 20 H7, from 10 mm plate", &[("Base bore", "20mm")]),
        ("  bar 6 ft 4", &[]),
        ("  nothing but 12mm plate", &[]),
    ] {
        let job = sizes(&format!("all mm\nBase\n{line}\n"), want);
        let kept = job.remarks.iter().any(|one| one.line == 3 && one.text == line.trim());
        assert!(kept, "{line}: {:?}", job.remarks);
    }
    // What a size, a reading, a count or a number before a name holds needs no remark.
    for line in ["  2. bore 20 H7", "  bore 20.003", "  - 4 May bore came out 20.01"] {
        let job = note::read(&format!("all mm\nBase\n{line}\n"));
        assert!(job.remarks.iter().all(|one| one.line != 3), "{line}: {:?}", job.remarks);
    }
    assert_eq!(asked("all mm\nplate 12mm\n").as_deref(), Some("what is this a size of?"));
}
