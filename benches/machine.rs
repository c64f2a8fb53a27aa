//! The adviser's next step, its bookkeeping, a rehearsal of a thousand parts,
//! and a verdict. Each bench checks its answer once before it measures.

use std::hint::black_box;

use criterion::{Criterion, criterion_group, criterion_main};
use fits_core::{
    Length, Limits,
    shop::{
        Verdict,
        adviser::{Action, Adviser, Prior, Settings},
        rehearse::{Rehearsal, RehearsedPart},
        verdict::{Measured, Rule},
    },
    standards::{
        instruments::Uncertainty,
        iso286::{Class, Feature},
    },
};

fn um(count: i64) -> Length {
    Length::from_micrometres(count).expect("in range")
}

fn limits() -> Limits {
    let class: Class = "H7".parse().expect("a class");
    class.limits(Length::from_millimetres(20).expect("20 mm")).expect("defined")
}

fn work() -> RehearsedPart {
    RehearsedPart {
        limits: limits(),
        feature: Feature::Hole,
        start: um(19_600),
        machine: Prior {
            gain: 0.97,
            gain_sd: 0.04,
            offset: Length::ZERO,
            offset_sd: um(6),
            scatter: um(2),
        },
        instrument: Uncertainty { repeat: um(2), bias: um(1) },
        settings: Settings::default(),
    }
}

fn adviser() -> Adviser {
    let RehearsedPart { limits, feature, start, machine, instrument, settings } = work();
    Adviser::new(limits, feature, start, machine, instrument, settings).expect("sensible")
}

fn steps(criterion: &mut Criterion) {
    let first = adviser();
    assert_eq!(first.next().action, Action::Cut);
    criterion.bench_function("adviser: the first step", |bencher| {
        bencher.iter(|| black_box(&first).next());
    });
    let mut second = adviser();
    second.cut(um(300), &[um(19_885), um(19_886)]).expect("in range");
    assert!(!second.next().measuring);
    criterion.bench_function("adviser: the next step", |bencher| {
        bencher.iter(|| black_box(&second).next());
    });
    criterion.bench_function("adviser: a cut and two readings taken up", |bencher| {
        bencher.iter(|| {
            let mut adviser = first.clone();
            adviser.cut(um(300), black_box(&[um(19_885), um(19_886)]))
        });
    });
}

fn rehearsals(criterion: &mut Criterion) {
    let run = || {
        let mut rehearsal = Rehearsal::new(work(), 1).expect("sensible");
        for _ in 0..1000 {
            rehearsal.run().expect("in range");
        }
        rehearsal.odds()
    };
    let [_, halving, adviser] = run();
    assert!(adviser.good > 0.97 && adviser.over < halving.over / 4.0);
    let mut group = criterion.benchmark_group("rehearsal");
    group.sample_size(10);
    group.bench_function("1000 parts in three ways", |bencher| bencher.iter(run));
    group.finish();
}

fn verdicts(criterion: &mut Criterion) {
    let gauge = Uncertainty { repeat: um(2), bias: um(1) };
    let judge = |readings: &[Length]| {
        Measured::of(&[readings], Some(gauge), None)
            .and_then(|measured| measured.judge(Feature::Hole, limits(), Rule::Edition2017))
            .expect("in range")
    };
    let readings = [um(20_010), um(20_011), um(20_012)];
    assert_eq!(judge(&readings).verdict, Verdict::Good);
    criterion.bench_function("verdict: three readings", |bencher| {
        bencher.iter(|| judge(black_box(&readings)));
    });
}

criterion_group!(benches, steps, rehearsals, verdicts);
criterion_main!(benches);
