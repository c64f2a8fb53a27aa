//! Every drill that is named before a tap stands between one looser and one
//! tighter, in every system; a drill of the crib goes first where it is the chart's,
//! else the nearest to it inside the limits.

use fits_checks::{listed_threads, rows};
use fits_core::{
    shop::tap::{Advice, ChartDrill, Drive, TapHole, Work},
    standards::{
        drills::{Drill, Series},
        thread::{Side, Thread},
    },
};
use fits_repl::{
    answer::{Answer, TapAnswer},
    session::Session,
};

fn tap(session: &mut Session, query: &str) -> TapAnswer {
    match session.evaluate(query) {
        Ok(Answer::Tap(tap)) => *tap,
        other => panic!("{query}: {other:?}"),
    }
}

fn has_neighbours(answer: &TapAnswer, name: &str) {
    let Some(first) = &answer.first else {
        assert!(answer.bore.is_some(), "{name}");
        return;
    };
    let thread: Thread = name.parse().unwrap();
    let hole = TapHole::of_thread(&thread, None).unwrap();
    let size = first.drill.mm.0;
    let listed = || Drill::all().map(Drill::diameter);
    let leaves = |size| (0.0..=100.0).contains(&hole.percent(size)) && size < thread.major();
    let others = || answer.alternatives.iter().map(|other| other.drill.mm.0);
    if listed().any(|other| other > size && leaves(other)) {
        assert!(others().any(|other| other > size), "{name}: none looser");
    }
    if listed().any(|other| other < size && leaves(other)) {
        assert!(others().any(|other| other < size), "{name}: none tighter");
    }
}

#[test]
fn one_looser_and_one_tighter_in_every_system() {
    let mut names = listed_threads();
    for row in rows("data/threads/pipe_g.csv") {
        names.push(format!("G{}", row.text("size")));
    }
    for row in rows("data/threads/pipe_r.csv") {
        names.push(format!("Rp{}", row.text("size")));
    }
    let mut session = Session::new();
    let mut drilled = 0;
    for name in &names {
        if !name.parse::<Thread>().unwrap().form().has_side(Side::Internal) {
            continue;
        }
        let answer = tap(&mut session, &format!("{name} tap"));
        has_neighbours(&answer, name);
        drilled += usize::from(answer.first.is_some());
    }
    assert!(drilled > 300, "{drilled}");
    for material in ["stainless", "aluminium", "cast iron", "brass"] {
        for name in ["1/4-20", "1/2-13", "M10", "G1/2", "Rp1/2", "1/2 BSW", "2BA"] {
            let thread: Thread = name.parse().unwrap();
            has_neighbours(
                &tap(&mut session, &format!("{name} tap, hub {material}")),
                &thread.to_string(),
            );
        }
    }
}

#[test]
fn the_charts_drill_of_the_crib_goes_first() {
    let mut shop = Session::new();
    for line in [
        "crib add drill set number 1..60",
        "crib add drill set fraction 1/16..1/2 step 1/64",
        "crib add drill set letter A..Z",
    ] {
        shop.evaluate(line).unwrap();
    }
    let mut first = 0;
    for row in rows("data/threads/tap_chart.csv") {
        let name = format!("{}-{}", row.text("size").replace("No. ", "#"), row.text("tpi"));
        let thread: Thread = name.parse().unwrap();
        let chart = ChartDrill::of(&thread).and_then(ChartDrill::drill).unwrap();
        let owned = match chart.series() {
            Series::Number => {
                chart.name().strip_prefix('#').is_some_and(|it| it.parse::<u8>().unwrap() <= 60)
            }
            Series::Fraction => {
                let inches = chart.diameter().millimetres() / 25.4;
                (0.0624..=0.5001).contains(&inches)
            }
            Series::Letter => true,
            Series::Metric => false,
        };
        let keeps = thread.internal(None).unwrap().minor.contains(chart.diameter());
        if !owned || !keeps {
            continue;
        }
        let answer = tap(&mut shop, &format!("{name} tap"));
        let best = answer.first.clone().unwrap();
        assert_eq!(best.drill.mm.0, chart.diameter(), "{name}: {best:?}");
        assert_eq!(best.drill_in_crib, Some(true), "{name}");
        assert_eq!(best.best_drill, None, "{name}");
        has_neighbours(&answer, &name);
        first += 1;
    }
    assert!(first > 25, "{first}");
}

#[test]
fn else_the_nearest_of_the_crib_inside_the_limits_and_the_answer_says_so() {
    // 1/4-20: the chart's #7 (0.201); 2B keeps 0.196 to 0.207, so 13/64 (0.2031) and #8
    // (0.199) are inside and 7/32 is not; #8 is nearer by a hair (0.0020 against 0.0021).
    let owned = |lines: &[&str]| {
        let mut shop = Session::new();
        for line in lines {
            shop.evaluate(&format!("crib add drill {line}")).unwrap();
        }
        tap(&mut shop, "1/4-20 tap")
    };
    let answer = owned(&["13/64in", "7/32in"]);
    let first = answer.first.clone().unwrap();
    assert_eq!((first.drill_in_crib, first.best_drill.as_deref()), (Some(true), Some("#7")));
    assert!((first.drill.mm.0.millimetres() / 25.4 - 0.2031).abs() < 1e-4, "{first:?}");
    has_neighbours(&answer, "1/4-20");
    let first = owned(&["13/64in", "#8"]).first.unwrap();
    assert!((first.drill.mm.0.millimetres() / 25.4 - 0.199).abs() < 1e-6, "{first:?}");
    // None inside: the chart's drill stands, and the nearest owned is named.
    let first = owned(&["7/32in"]).first.unwrap();
    assert_eq!((&*first.drill.name, first.drill_in_crib), ("#7", Some(false)));
    assert!(first.nearest_in_crib.is_some(), "{first:?}");
}

#[test]
fn tough_metal_leans_to_fifty_to_sixty_by_hand_and_by_power() {
    for drive in [Drive::Hand, Drive::Power] {
        let advice = Advice::of(Work::ToughSteel, drive);
        assert_eq!((advice.low, advice.high), (50, 60), "{drive:?}");
    }
    let mut session = Session::new();
    for name in ["1/4-20", "1/2-13", "M10", "3/8-16"] {
        let everyday = tap(&mut session, &format!("{name} tap power")).first.unwrap();
        let tough = tap(&mut session, &format!("{name} tap power, hub stainless")).first.unwrap();
        assert!(tough.drill.mm.0 > everyday.drill.mm.0, "{name}: {}", tough.drill.name);
        assert_eq!(tough.drill_within_limits, Some(true), "{name}");
    }
}
