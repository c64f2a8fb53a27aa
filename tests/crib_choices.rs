//! Which tool of the crib serves.

use fits_core::{
    Length,
    job::{Crib, DrillSeries, DrillSet, OwnDrill, Reamer},
    shop::Ream,
    standards::iso286::Class,
};

fn size(text: &str) -> Length {
    text.parse().expect(text)
}

fn reamer(marked: &str, cuts: Option<&str>) -> Reamer {
    Reamer { size: size(marked), cuts: cuts.map(size) }
}

#[test]
fn a_reamer_lands_by_what_it_cuts_or_by_the_rule() {
    let class: Class = "H7".parse().expect("a class");
    let ream = Ream::of(class.limits(size("20 mm")).expect("limits")).expect("a reamer");
    let mut crib = Crib::default();
    crib.reamer = vec![
        reamer("20 mm", Some("20.025 mm")),
        reamer("20 mm", None),
        reamer("0.787 in", Some("20.004 mm")),
        reamer("20 mm", Some("20.012 mm")),
        reamer("20.019 mm", None),
    ];
    let landed: Vec<_> = crib.reamers_for(&ream).iter().map(|found| found.reamer).collect();
    assert_eq!(landed, [crib.reamer[3], crib.reamer[2], crib.reamer[1]]);
    assert_eq!(crib.nearest_reamer(ream.hole), Some(crib.reamer[3]));
}

#[test]
fn drills_are_listed_once_in_order() {
    let set = |series, from, to, step: Option<&str>| DrillSet {
        series,
        from: Some(size(from)),
        to: Some(size(to)),
        step: step.map(size),
    };
    let mut crib = Crib::default();
    crib.drill = vec![
        OwnDrill { size: size("8.5 mm"), called: None },
        OwnDrill { size: size("19.6 mm"), called: None },
    ];
    crib.drills = vec![
        set(DrillSeries::Metric, "8 mm", "9 mm", Some("0.5 mm")),
        set(DrillSeries::Fraction, "1/4 in", "5/16 in", None),
        set(DrillSeries::Letter, "0.25 in", "0.26 in", None),
        set(DrillSeries::Metric, "9 mm", "8 mm", Some("0.5 mm")),
    ];
    let names: Vec<String> = crib.drills().iter().map(OwnDrill::name).collect();
    assert_eq!(
        names,
        [
            "1/4 in", "E", "F", "17/64 in", "9/32 in", "19/64 in", "5/16 in", "8 mm", "8.5 mm",
            "9 mm", "19.6 mm"
        ]
    );
}

#[test]
fn the_drill_before_the_reamer_comes_out_of_the_crib() {
    let class: Class = "H7".parse().expect("a class");
    let ream = Ream::of(class.limits(size("20 mm")).expect("limits")).expect("a reamer");
    let own = |sizes: &[&str]| {
        let drill = |text: &&str| OwnDrill { size: size(text), called: None };
        let mut crib = Crib::default();
        crib.drill = sizes.iter().map(drill).collect();
        crib
    };
    // The standard choice is 19.75 mm.
    let (drill, leaves) =
        own(&["19.6 mm", "19.9 mm", "19 mm"]).pre_drill(&ream).expect("in range").expect("one");
    assert_eq!((drill.size, leaves), (size("19.6 mm"), size("0.4 mm")));
    assert_eq!(own(&["19.9 mm", "18 mm"]).pre_drill(&ream).expect("in range"), None);
}
