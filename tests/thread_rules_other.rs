//! What holds of trapezoidal, Acme, Whitworth, BA and pipe threads whatever
//! the table: names round trip, good screws go into good nuts, tighter classes
//! lie inside looser ones, refusals say what would work, every figure says why.

use fits_checks::rows;
use fits_core::{
    Length,
    source::Known,
    standards::thread::{Class, DiameterLimits, Form, Side, Thread},
};

/// The class that a text is; none where it is empty.
#[track_caller]
fn class(text: &str) -> Option<Class> {
    (!text.is_empty()).then(|| Class::read(text).unwrap_or_else(|| panic!("{text} is not a class")))
}

/// The screws and nuts of a thread in every pair of classes that the system
/// has.
fn classes(form: Form) -> (Vec<&'static str>, Vec<&'static str>) {
    match form {
        Form::Trapezoidal => (vec!["7e", "8e", "8c", "9c"], vec!["7H", "8H", "9H"]),
        Form::Acme | Form::StubAcme => (vec!["4G", "3G", "2G"], vec!["4G", "3G", "2G"]),
        Form::Whitworth => (vec!["close", "medium", "free"], vec!["medium", "normal"]),
        Form::Ba => (vec!["close", "normal"], vec!["normal"]),
        Form::PipeParallel => (vec!["A", "B"], vec![""]),
        other => panic!("{other:?}"),
    }
}

/// Every listed thread of a data file, by its name.
fn names() -> Vec<String> {
    let mut names = Vec::new();
    for row in rows("data/threads/trapezoidal_sizes.csv") {
        names.push(format!("Tr{}x{}", row.text("diameter_mm"), row.text("pitch_mm")));
    }
    for row in rows("data/threads/acme_sizes.csv") {
        names.push(format!("{}-{} Acme", row.text("size"), row.text("tpi")));
        names.push(format!("{}-{} Stub Acme", row.text("size"), row.text("tpi")));
    }
    for row in rows("data/threads/whitworth_sizes.csv") {
        names.push(format!("{}-{} {}", row.text("size"), row.text("tpi"), row.text("series")));
    }
    names.extend((0..=16).map(|number| format!("{number} BA")));
    for row in rows("data/threads/pipe_g.csv") {
        names.push(format!("G{}", row.text("size")));
    }
    for row in rows("data/threads/pipe_r.csv") {
        names.extend(["R", "Rp", "Rc"].map(|letter| format!("{letter}{}", row.text("size"))));
    }
    for row in rows("data/threads/npt.csv") {
        names.push(format!("{} NPT", row.text("size")));
    }
    names
}

#[test]
fn every_listed_thread_is_found_by_name_and_written_back() {
    let names = names();
    assert!(names.len() > 450, "{}", names.len());
    for name in &names {
        let thread: Thread = name.parse().unwrap_or_else(|error| panic!("{name}: {error}"));
        assert_eq!(thread.to_string(), *name);
        let left = thread.left_hand().to_string();
        let read: Thread = left.parse().unwrap_or_else(|error| panic!("{left}: {error}"));
        assert!(read.is_left_hand(), "{left}");
        let Ok(two) = thread.with_starts(2) else {
            assert!(
                thread.taper().is_some() || matches!(thread.form(), Form::Ba | Form::PipeParallel),
                "{name}"
            );
            continue;
        };
        let two = two.to_string();
        let read: Thread = two.parse().unwrap_or_else(|error| panic!("{two}: {error}"));
        assert_eq!((read.starts(), read.pitch()), (2, thread.pitch()), "{two}");
    }
}

#[test]
fn no_good_screw_is_too_large_for_a_good_nut_and_classes_nest() {
    for name in names() {
        let thread: Thread = name.parse().unwrap();
        if thread.taper().is_some() {
            continue;
        }
        let (screws, nuts) = classes(thread.form());
        let mut widest: Option<Length> = None;
        for screw in screws {
            let Ok(screw_sizes) = thread.external(class(screw)) else {
                // BS 93 has one class from 11 BA.
                assert!(thread.form() == Form::Ba && screw == "close", "{name} {screw}");
                continue;
            };
            let tolerance = screw_sizes.pitch_tolerance;
            assert!(widest.is_none_or(|widest| widest <= tolerance), "{name} {screw} is finer");
            widest = Some(tolerance);
            for spread in [screw_sizes.major, screw_sizes.pitch, screw_sizes.minor] {
                assert!(
                    spread.max.zip(spread.min).is_none_or(|(max, min)| min < max),
                    "{name} {screw}"
                );
            }
            let order = [screw_sizes.minor.max, screw_sizes.pitch.max, screw_sizes.major.max];
            assert!(order.is_sorted() && order[0] < order[2], "{name} {screw}: {order:?}");
            for nut in &nuts {
                let nut_sizes = thread.internal(class(nut)).unwrap();
                for (screw_spread, nut_spread) in [
                    (screw_sizes.major, nut_sizes.major),
                    (screw_sizes.pitch, nut_sizes.pitch),
                    (screw_sizes.minor, nut_sizes.minor),
                ] {
                    let largest = screw_spread.max.expect("a largest screw");
                    let smallest = nut_spread.min.expect("a smallest nut");
                    assert!(largest <= smallest, "{name} {nut}/{screw}: {largest} in {smallest}");
                }
            }
        }
    }
}

#[test]
fn pipe_tap_drills_lie_between_the_limits_of_the_minor_diameter() {
    let mut drills = 0;
    for name in names().iter().filter(|name| name.starts_with(['G', 'R'])) {
        let thread: Thread = name.parse().unwrap();
        let Some(drill) = thread.pipe_tap_drill() else { continue };
        let minor = thread.internal(None).unwrap().minor;
        assert!(minor.contains(drill), "{name}: {drill}, minor {minor:?}");
        drills += 1;
    }
    // G, Rp and Rc: the table's column is of taper threads.
    assert_eq!(drills, 11 + 10 + 10);
}

#[test]
fn acme_classes_lie_inside_one_another() {
    for row in rows("data/threads/acme_sizes.csv") {
        let name = format!("{}-{} Acme", row.text("size"), row.text("tpi"));
        let thread: Thread = name.parse().unwrap_or_else(|error| panic!("{row}: {error}"));
        let sizes = |side, name| thread.sizes(side, class(name), None).unwrap();
        for (tight, loose) in [("4G", "3G"), ("3G", "2G")] {
            let nut = (sizes(Side::Internal, tight), sizes(Side::Internal, loose));
            assert_eq!(nut.0.pitch.min, nut.1.pitch.min, "{row}");
            assert!(nut.0.pitch.max < nut.1.pitch.max, "{row}: {tight} nut not inside {loose}");
            // A tighter screw comes nearer the basic size and spreads less.
            let screw = (sizes(Side::External, tight), sizes(Side::External, loose));
            assert!(screw.0.pitch.max > screw.1.pitch.max, "{row}");
            assert!(screw.0.pitch.min > screw.1.pitch.min, "{row}");
            assert!(screw.0.pitch_tolerance < screw.1.pitch_tolerance, "{row}");
        }
    }
}

#[test]
fn more_starts_widen_the_trapezoidal_tolerance() {
    let mut before = Length::ZERO;
    for (starts, micrometres) in [(1, 300), (2, 336), (3, 375), (4, 420), (5, 480), (6, 480)] {
        let thread: Thread = "Tr24x5".parse().unwrap();
        let sizes = thread.with_starts(starts).unwrap().external(None).unwrap();
        assert_eq!(sizes.pitch_tolerance, Length::from_micrometres(micrometres).unwrap());
        assert!(sizes.pitch_tolerance >= before);
        before = sizes.pitch_tolerance;
    }
}

#[track_caller]
fn refused(name: &str) -> (String, String) {
    let error = name.parse::<Thread>().unwrap_err();
    (error.to_string(), error.advice())
}

#[test]
fn refusals_say_what_would_work() {
    for (name, why, advice) in [
        ("Tr20", "Tr20 needs its pitch", "Tr20 is listed with pitch 2, 3, 4: `Tr20x2`"),
        (
            "G1/2 6g",
            "parallel pipe G threads have no class 6g of external thread",
            "screws are class A or B: `G1/2 A`",
        ),
        (
            "1/2 NPT 6H",
            "taper pipe NPT threads have no class 6H of external thread",
            "there is one class: `1/2 NPT`",
        ),
        (
            "Tr20x4 6g",
            "ISO 2903 has no class 6g of external trapezoidal thread",
            "screws are 7e, 8e, 8c or 9c",
        ),
        (
            "1/2-10 Acme 3C",
            "Acme threads have no class 3C here: centralizing classes are not covered",
            "general purpose classes are 2G, 3G and 4G",
        ),
        ("2 BA 2 starts", "BA threads have one start", "leave the starts out: `2 BA`"),
        ("17 BA", "there is no 17 BA", "BS 93 lists 0 to 16 BA"),
        (
            "1/2-13 BSW",
            "1/2 BSW has 12 tpi",
            "ask for `1/2 BSW`; another pitch is said with Whitworth",
        ),
        (
            "G1/3",
            "G has no size 1/3",
            "G has the pipe sizes 1/16 to 6: 1/8, 1/4, 3/8, 1/2, 3/4, 1 ...",
        ),
        ("Tr8x8", "a pitch of 8 mm leaves no core in 8", "give a finer pitch"),
        (
            "Tr8x0.01",
            "the tolerances are wider than a thread of 0.01 mm is high",
            "give a coarser pitch",
        ),
        ("1/2-3 Acme 9 starts 2G", "", ""),
        ("Tr 40x7-7e", "", ""),
    ] {
        if why.is_empty() {
            assert!(name.parse::<Thread>().is_ok(), "{name}");
        } else {
            assert_eq!(refused(name), (why.to_owned(), advice.to_owned()), "{name}");
        }
    }
    let nut = "Rp1/2".parse::<Thread>().unwrap().external(None).unwrap_err();
    assert_eq!(nut.advice(), "ask for `R1/2`");
}

/// Formulas with numbers put in by hand, where no table of limits was read.
#[test]
fn worked_by_hand() {
    let mm = |text: &str| Some(format!("{text}mm").parse::<Length>().unwrap());
    let inch = |text: &str| Some(format!("{text}in").parse::<Length>().unwrap());
    // Machinery's Handbook 31st ed., p. 2115: P 0.81; 0.20 P, 0.10 P + 0.025,
    // 0.20 P + 0.05 and room 0.025; the nut 0.12 P + 0.03 and 0.375 P.
    let thread: Thread = "2 BA".parse().unwrap();
    let screw = thread.external(None).unwrap();
    assert_eq!(screw.major, DiameterLimits { max: mm("4.675"), min: mm("4.513") });
    assert_eq!(screw.pitch, DiameterLimits { max: mm("4.190"), min: mm("4.084") });
    assert_eq!(screw.minor, DiameterLimits { max: mm("3.705"), min: mm("3.493") });
    let close = thread.external(class("close")).unwrap();
    // 0.08 P + 0.02 = 0.0848.
    assert_eq!(close.pitch, DiameterLimits { max: mm("4.215"), min: mm("4.130") });
    let nut = thread.internal(None).unwrap();
    assert_eq!(nut.pitch, DiameterLimits { max: mm("4.342"), min: mm("4.215") });
    assert_eq!(nut.minor, DiameterLimits { max: mm("4.034"), min: mm("3.73") });
    // From 11 BA on there is no room.
    let thread: Thread = "12 BA".parse().unwrap();
    assert_eq!(
        thread.external(None).unwrap().major,
        DiameterLimits { max: mm("1.3"), min: mm("1.23") }
    );
    // BS 84, recalled: T = 0.002 cbrt(0.25) + 0.003 sqrt(0.25) + 0.005
    // sqrt(0.05) = 0.00388; room 0.3 T.
    let thread: Thread = "1/4 BSW".parse().unwrap();
    let screw = thread.external(class("medium")).unwrap();
    assert_eq!(screw.major, DiameterLimits { max: inch("0.2488"), min: inch("0.2427") });
    assert_eq!(screw.pitch, DiameterLimits { max: inch("0.2168"), min: inch("0.2129") });
    let nut = thread.internal(class("normal")).unwrap();
    assert_eq!(nut.pitch, DiameterLimits { max: inch("0.2238"), min: inch("0.2180") });
    // 0.2 P + 0.007.
    assert_eq!(nut.minor, DiameterLimits { max: inch("0.2030"), min: inch("0.1860") });
    // A longer engagement widens the tolerance.
    let long = thread.sizes(Side::External, class("medium"), inch("1")).unwrap();
    assert!(long.pitch.min < screw.pitch.min && long.pitch.max < screw.pitch.max);
    // ISO 7-1, recalled: a turn of 14 to the inch either way, 1.8 mm along
    // and 0.113 mm across; the nut a turn and a quarter, 0.142 mm across.
    let thread: Thread = "R1/2".parse().unwrap();
    let taper = thread.taper().unwrap();
    assert_eq!(
        (Some(taper.external_tolerance), Some(taper.internal_tolerance)),
        (mm("1.8"), mm("2.3"))
    );
    assert_eq!((Some(taper.useful_length), taper.wrench_length), (mm("13.2"), None));
    let screw = thread.external(None).unwrap();
    assert_eq!(screw.pitch, DiameterLimits { max: mm("19.906"), min: mm("19.680") });
    let nut = "Rp1/2".parse::<Thread>().unwrap().internal(None).unwrap();
    assert_eq!(nut.pitch, DiameterLimits { max: mm("19.935"), min: mm("19.651") });
}

#[test]
fn every_figure_says_why_and_what_is_recalled() {
    let recalled = |name: &str, side| {
        let thread: Thread = name.parse().unwrap();
        let why = thread.why(side, None, None).unwrap_or_else(|error| panic!("{name}: {error}"));
        assert!(why.len() >= 4, "{name}: {} reasons", why.len());
        for reason in thread.reasons().iter().chain(&why) {
            let texts = [&reason.figure, &reason.value.to_string(), &reason.source];
            assert!(texts.iter().all(|text| !text.is_empty()), "{name}: {reason:?}");
            assert!(!reason.value.to_string().contains("00000"), "{name}: noise in {reason:?}");
        }
        why.iter().any(|reason| reason.known == Known::Memory)
    };
    for (name, side, is_recalled) in [
        ("Tr10x2", Side::External, false),
        ("Tr20x4", Side::External, false),
        ("Tr10x2", Side::Internal, false),
        ("Tr24x5", Side::External, true),
        ("Tr40x7", Side::Internal, true),
        ("1/2-10 Acme", Side::External, false),
        ("1/2-10 Stub Acme", Side::External, true),
        ("1/2 BSW", Side::External, true),
        ("1/2 BSW", Side::Internal, true),
        ("2 BA", Side::External, false),
        ("G1/2", Side::Internal, true),
        ("R1/2", Side::External, true),
        ("Rc1/2", Side::Internal, true),
        ("1/2 NPT", Side::External, false),
        ("10 NPT", Side::External, true),
    ] {
        assert_eq!(recalled(name, side), is_recalled, "{name}");
    }
    for name in names() {
        let side = if name.starts_with("Rp") || name.starts_with("Rc") {
            Side::Internal
        } else {
            Side::External
        };
        recalled(&name, side);
    }
}
