//! A named thread through tapping, wires and single-point cutting, against
//! published figures.

use fits_core::{
    Length,
    shop::{
        infeed::{DialReads, How, Infeed, Slide, ThreadCut},
        tap::{Advice, Bit, Drive, Minor, TapHole, Wanted, Work},
        wires::{Method, WireThread},
    },
    standards::{
        drills::Series,
        thread::{Form, Side, Thread},
    },
};

fn thread(name: &str) -> Thread {
    name.parse().unwrap_or_else(|error| panic!("{name}: {error}"))
}

fn inches(length: Length) -> f64 {
    length.millimetres() / 25.4
}

#[test]
fn charts_drills_come_out_of_the_name() {
    let inch = Bit::standard(&[Series::Number, Series::Letter, Series::Fraction]);
    let metric = Bit::standard(&[Series::Metric]);
    let advice = Advice::of(Work::General, Drive::Power);
    // Machinery's Handbook, 31st ed., p. 2168, table 4 (1/4-20: 0.2010;
    // 3/8-16: 0.3125; 1/2-13: 0.4219), and the internal metric thread table's
    // tap drills.
    for (name, drill) in [
        ("1/4-20", "#7"),
        ("3/8-16", "5/16 in"),
        ("1/2-13", "27/64 in"),
        ("M10", "8.5 mm"),
        ("M10x1", "9 mm"),
        ("M12x1.5", "10.5 mm"),
    ] {
        let thread = thread(name);
        let hole = TapHole::of_thread(&thread, None).unwrap();
        let drills = if thread.form() == Form::Metric { &metric } else { &inch };
        let found = hole.choose(drills, Wanted::usual(thread.form(), advice)).unwrap();
        assert_eq!(found.best.bit.name, drill, "{name}");
        assert_eq!(found.best.minor, Some(Minor::Kept), "{name}");
    }
}

#[test]
fn every_listed_thread_has_a_drill_and_a_wire() {
    let drills = Bit::standard(&[Series::Number, Series::Letter, Series::Fraction, Series::Metric]);
    let advice = Advice::of(Work::General, Drive::Power);
    let how = How::new(Slide::Compound { degrees: 29.5 }, DialReads::Diameter, Length::THOU);
    let names = [
        "#0-80", "#1-64", "#2-56", "#3-48", "#4-40", "#5-40", "#6-32", "#8-32", "#10-24", "#10-32",
        "#12-24", "1/4-20", "1/4-28", "5/16-18", "3/8-16", "3/8-24", "7/16-14", "1/2-13",
        "9/16-12", "5/8-11", "3/4-10", "7/8-9", "1-8", "1-1/4-7", "1-1/2-6", "2-4.5", "M1.6", "M2",
        "M2.5", "M3", "M4", "M5", "M6", "M8", "M8x1", "M10", "M12", "M16", "M20", "M24", "M30",
        "M36", "M42",
    ];
    for name in names {
        let thread = thread(name);
        let screw = thread.external(None).unwrap_or_else(|error| panic!("{name}: {error}"));
        let measured = WireThread::of_thread(&thread, &screw).unwrap();
        let wire = measured.best_wire().unwrap();
        let over = measured.over(wire).unwrap_or_else(|error| panic!("{name}: {error}"));
        // A fastening thread of one start: the lead does not matter.
        assert!(over.usable.contains(wire), "{name}");
        assert!((over.exact.millimetres() - over.plain.millimetres()).abs() < 0.0055, "{name}");
        let cut = ThreadCut::of_thread(&thread, &screw, None).unwrap();
        let plan = Infeed::plan(cut, how).unwrap_or_else(|error| panic!("{name}: {error}"));
        assert!(plan.root.is_positive() && plan.root < screw.pitch.min.unwrap(), "{name}");
        let nut = thread.internal(None).unwrap();
        let inside = ThreadCut::of_thread(&thread, &nut, None).unwrap();
        let inside = Infeed::plan(inside, how).unwrap();
        assert!(inside.root >= thread.major(), "{name}: {} is under the major", inside.root);
        // Numbers under #1 have no drill that keeps the class by itself.
        if thread.major() > "2.4mm".parse().unwrap() {
            let hole = TapHole::of_thread(&thread, None).unwrap();
            let found = hole.choose(&drills, Wanted::Advised(advice)).unwrap();
            assert_eq!(found.best.minor, Some(Minor::Kept), "{name}: {:?}", found.best);
        }
    }
}

#[test]
fn a_finer_question_is_refused() {
    let screw = thread("M10").external(None).unwrap();
    let nut = thread("M10").internal(None).unwrap();
    let error = WireThread::of_thread(&thread("M10"), &nut).unwrap_err();
    assert_eq!(error.to_string(), "wires measure the screw, not the nut");
    assert_eq!(screw.side, Side::External);
    let class = fits_core::standards::thread::Class::of(9, 'Z');
    assert!(TapHole::of_thread(&thread("M10"), Some(class)).is_err());
}

#[test]
fn the_lead_is_taken_from_the_starts() {
    // Six starts on a fastening form: far from the plain figure.
    let one = thread("M10x1.5");
    let many = thread("M10x9P1.5");
    let sizes = one.external(None).unwrap();
    let plain = WireThread::of_thread(&one, &sizes).unwrap();
    let error = WireThread::of_thread(&many, &sizes);
    let wire: Length = "0.9mm".parse().unwrap();
    match error.and_then(|steep| steep.over(wire)) {
        Ok(steep) => {
            assert_eq!(steep.method, Method::Exact);
            assert!(steep.over > plain.over(wire).unwrap().over);
        }
        Err(error) => panic!("{error}: {}", error.advice()),
    }
    // 1/2-13: plain formula over 0.045 in.
    let half = thread("1/2-13");
    let limits = half.external(None).unwrap();
    let found = WireThread::of_thread(&half, &limits).unwrap().over("0.045in".parse().unwrap());
    let e = inches(limits.pitch.max.unwrap()) / 2.0 + inches(limits.pitch.min.unwrap()) / 2.0;
    let wanted = e + 3.0 * 0.045 - 0.866_025_404 / 13.0;
    assert!((inches(found.unwrap().over) - wanted).abs() < 1e-6);
}
