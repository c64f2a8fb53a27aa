//! Relief grooves: every thread that is cut names one. Where GB/T 3-1997 (which
//! adopts ISO 3508 and ISO 4755) lists none it is by a rule from the pitch, and the
//! rule is held here to the rows that it does list.

use fits_checks::{listed_threads, mm, rows};
use fits_core::{
    shop::infeed::Relief,
    source::Known,
    standards::{
        iso286::Feature,
        thread::{Side, Thread},
    },
};
use fits_repl::{
    answer::{Answer, ThreadPassesAnswer},
    session::Session,
};

fn cut(query: &str) -> ThreadPassesAnswer {
    match Session::new().evaluate(query) {
        Ok(Answer::ThreadPasses(answer)) => *answer,
        other => panic!("{query}: {other:?}"),
    }
}

#[test]
fn the_rule_is_near_every_row_that_the_table_has() {
    let mut seen = 0;
    for row in rows("data/threads/runout.csv") {
        let figure = |column: &str| row.get::<f64>(column);
        if row.text("g1").is_empty() {
            continue;
        }
        let pitch = figure("pitch");
        // Basic diameters: the root of a screw is 1.2269 P under the major, of a nut the major.
        let (feature, root) = match row.text("thread") {
            "external" => (Feature::Shaft, 100.0 - 1.2269 * pitch),
            _ => (Feature::Hole, 100.0),
        };
        let rule = Relief::by_rule(feature, mm(pitch), mm(root)).unwrap();
        let (width, diameter) = (rule.width.millimetres(), rule.diameter.millimetres());
        let [low, high] = match feature {
            Feature::Shaft => [figure("g1"), figure("g2")],
            Feature::Hole => [figure("g2"), figure("g1")],
        };
        assert!((low - 0.001..=high + 0.001).contains(&width), "{row}: {width}");
        let off = match feature {
            Feature::Shaft => 100.0 - diameter,
            Feature::Hole => diameter - 100.0,
        };
        assert!((off - figure("off")).abs() < 0.1 * pitch + 0.45, "{row}: {off}");
        assert!((rule.runout.millimetres() / figure("x") - 1.0).abs() < 0.06, "{row}");
        seen += 1;
    }
    assert_eq!(seen, 23 + 18);
}

#[test]
fn every_thread_that_is_cut_has_a_groove_clear_of_its_root() {
    let mut by_rule = 0;
    let more = [
        "Tr40x7",
        "Tr100x12",
        "3/4-6 Acme",
        "1/2-10 Acme",
        "1/2-10 Stub Acme",
        "G1/2",
        "G1",
        "Rp1/2",
        "4-4",
    ];
    for name in listed_threads().iter().map(String::as_str).chain(more) {
        let thread: Thread = name.parse().unwrap();
        for side in [Side::External, Side::Internal] {
            if !thread.form().has_side(side) {
                continue;
            }
            let word = if side == Side::External { "outside" } else { "inside" };
            let answer = cut(&format!("{name} cut {word}"));
            let (relief, root) = (answer.relief, answer.root_mm.0);
            let limits = thread.sizes(side, None, None).unwrap();
            let groove = relief.groove_diameter_mm.0;
            match side {
                Side::External => {
                    assert!(groove < root, "{name}: {groove} over the root {root}");
                    assert!(limits.minor.min.is_none_or(|least| groove < least), "{name}");
                }
                Side::Internal => {
                    assert!(groove > root, "{name}: {groove} under the root {root}");
                    assert!(limits.major.max.is_none_or(|most| groove > most), "{name}");
                }
            }
            assert!(relief.groove_width_mm.0 > thread.pitch().nearest(), "{name}");
            let is_rule = relief.known == Known::Practice;
            let is_sixty = (thread.form().included_angle_degrees() - 60.0).abs() < 1e-9;
            assert!(is_rule || is_sixty, "{name}");
            if is_rule {
                by_rule += 1;
                // Not a neck: a relief leaves what carries.
                let core = thread.basic_minor_diameter().millimetres();
                let is_thin = side == Side::External && groove.millimetres() < 0.8 * core - 0.1;
                assert!(!is_thin, "{name}: {groove}, core {core}");
                assert_eq!(answer.name.known.worst(Known::Practice), answer.name.known, "{name}");
            }
        }
    }
    assert!(by_rule > 150, "{by_rule}");
}
