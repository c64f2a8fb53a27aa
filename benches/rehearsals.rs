//! Rehearsals of the parts that a small shop makes: two systems, fine dials and
//! coarse ones, good gauges and poor ones. Each is checked first: as many good
//! parts, and as few scrapped, as were aimed at before the decision was written;
//! and ten thousand runs in less than five seconds, stoppable after each.

use std::{hint::black_box, time::Instant};

use criterion::{Criterion, criterion_group, criterion_main};
use fits_core::{
    Length, Limits,
    shop::{
        adviser::{Prior, Settings},
        rehearse::{Fault, Rehearsal, RehearsedPart},
    },
    standards::{
        instruments::Instrument,
        iso286::{Class, Feature},
    },
};

fn size(text: &str) -> Length {
    text.parse().expect(text)
}

struct Setting {
    name: &'static str,
    work: RehearsedPart,
    /// Shares wanted: good at least, scrapped at most.
    good: f64,
    over: f64,
}

fn setting(
    name: &'static str,
    limits: Limits,
    gauge: &str,
    dial: (&str, &str),
    (good, over): (f64, f64),
) -> Setting {
    let feature = if gauge == "micrometer" { Feature::Shaft } else { Feature::Hole };
    let (step, left) = dial;
    let start = match feature {
        Feature::Hole => limits.lower().checked_sub(size(left)),
        Feature::Shaft => limits.upper().checked_add(size(left)),
    };
    let instrument = Instrument::find(gauge).expect(gauge);
    let work = RehearsedPart {
        limits,
        feature,
        start: start.expect("in range"),
        machine: Prior {
            gain: 0.97,
            gain_sd: 0.04,
            offset: Length::ZERO,
            offset_sd: size("6um"),
            scatter: size("2um"),
        },
        instrument: instrument.uncertainty(feature, limits.middle()).expect("measures it"),
        settings: Settings::default().dial_division(size(step)),
    };
    Setting { name, work, good, over }
}

fn settings() -> [Setting; 7] {
    let class = |nominal: &str, class: &str| {
        class.parse::<Class>().expect(class).limits(size(nominal)).expect("defined")
    };
    let close = Limits::new(size("0.7500in"), size("0.7505in")).expect("limits");
    let (mm, inch) = (("0.01mm", "0.4mm"), ("1thou", "15thou"));
    [
        setting("20 H7 bore gauge", class("20mm", "H7"), "bore gauge", mm, (0.99, 0.006)),
        setting("20 H6 bore gauge", class("20mm", "H6"), "bore gauge", mm, (0.93, 0.035)),
        setting("20 H7 telescoping", class("20mm", "H7"), "telescoping gauge", mm, (0.91, 0.04)),
        setting("20 g6 micrometer", class("20mm", "g6"), "micrometer", mm, (0.92, 0.03)),
        setting("3-4 H7 bore gauge", class("0.75in", "H7"), "bore gauge", inch, (0.97, 0.015)),
        setting(
            "3-4 H7 telescoping",
            class("0.75in", "H7"),
            "telescoping gauge",
            inch,
            (0.89, 0.04),
        ),
        setting("half a thou, bore gauge", close, "bore gauge", inch, (0.86, 0.05)),
    ]
}

fn rehearsed(work: RehearsedPart, fault: Option<Fault>, runs: u32) -> Rehearsal {
    let mut rehearsal = Rehearsal::new(work, 1).expect("sensible").with_fault(fault);
    for _ in 0..runs {
        rehearsal.run().expect("in range");
    }
    rehearsal
}

fn rehearsals(criterion: &mut Criterion) {
    let mut group = criterion.benchmark_group("rehearsals");
    group.sample_size(10);
    for Setting { name, work, good, over } in settings() {
        const RUNS: u32 = 10_000;
        let begun = Instant::now();
        let [.., adviser] = rehearsed(work, None, RUNS).odds();
        let took = begun.elapsed().as_secs_f64();
        // Two and a half deviations of a count of so many.
        let give = |share: f64| 2.5 * (share * (1.0 - share) / f64::from(RUNS)).sqrt();
        assert!(adviser.good >= good - give(good), "{name}: {adviser:?}, wanted {good}");
        assert!(adviser.over <= over + give(over), "{name}: {adviser:?}, wanted {over}");
        println!("{name}: {RUNS} runs in {took:.2} s; {adviser:?}");
        assert!(took < 5.0 || cfg!(debug_assertions), "{name}: {took:.1} s");
        group.bench_function(format!("{name}, 100 parts"), |bencher| {
            bencher.iter(|| rehearsed(black_box(work), None, 100));
        });
    }
    let [first, ..] = settings();
    for fault in Fault::ALL {
        let odds = rehearsed(first.work, Some(fault), 1000).odds();
        assert!(odds[2].over <= odds[0].over, "{fault:?}: {odds:?}");
        group.bench_function(format!("{}, {}, 100 parts", first.name, fault.word()), |bencher| {
            bencher.iter(|| rehearsed(black_box(first.work), Some(fault), 100));
        });
    }
    group.finish();
}

criterion_group!(benches, rehearsals);
criterion_main!(benches);
