//! Tap drills and three wires, each answer asserted once.

use std::hint::black_box;

use criterion::{Criterion, criterion_group, criterion_main};
use fits_core::{
    Length, Limits,
    shop::{
        tap::{Advice, Bit, Drive, TapHole, Wanted, Work, full_height},
        wires::{Method, WireThread},
    },
    standards::drills::Series,
};

fn length(text: &str) -> Length {
    text.parse().expect(text)
}

fn tapping(c: &mut Criterion) {
    let pitch = length("0.05in");
    // 1/4-20 UNC 2B: #7 in every chart.
    let minor = Limits::new(length("0.196in"), length("0.207in")).expect("limits");
    let height = full_height(pitch, 30.0).expect("60 degrees");
    let hole = TapHole::new(length("1/4in"), pitch, height, Some(minor)).expect("1/4-20");
    let drills = Bit::standard(&[Series::Number, Series::Letter, Series::Fraction]);
    let wanted = Wanted::Advised(Advice::of(Work::General, Drive::Power));
    assert_eq!(hole.choose(&drills, wanted).expect("a drill").best.bit.name, "#7");
    c.bench_function("tap drill for 1/4-20", |b| {
        b.iter(|| black_box(hole).choose(black_box(&drills), wanted));
    });
}

fn wires(c: &mut Criterion) {
    // Machinery's Handbook, 31st ed., p. 2130: 1-8 over 0.090 in wires is
    // 1.0806; p. 2136: Acme at 5 degrees, M - E = 0.64311 pitch.
    let eighth = length("0.125in");
    let fine = WireThread::new(eighth, eighth, 30.0, length("0.9188in"), Length::INCH);
    let fine = fine.expect("1-8");
    let wire = length("0.09in");
    let found = fine.over(wire).expect("usable");
    assert!((found.plain.millimetres() / 25.4 - 1.0806).abs() < 0.0001);
    let diameter = length("3.6383in");
    let steep = WireThread::new(Length::INCH, Length::INCH, 14.5, diameter, length("4.1in"));
    let steep = steep.expect("5 degrees");
    let best = length("0.5145in");
    let exact = steep.over(best).expect("usable");
    assert_eq!(exact.method, Method::Exact);
    let over = (exact.over.millimetres() - diameter.millimetres()) / 25.4;
    assert!((over - 0.643_11).abs() < 0.0001, "{over}");
    c.bench_function("over wires 1-8", |b| b.iter(|| black_box(fine).over(black_box(wire))));
    c.bench_function("over wires Acme at 5 degrees", |b| {
        b.iter(|| black_box(steep).over(black_box(best)));
    });
    c.bench_function("back from wires Acme at 5 degrees", |b| {
        b.iter(|| black_box(steep).pitch_diameter_of(black_box(best), black_box(exact.over)));
    });
}

criterion_group!(benches, tapping, wires);
criterion_main!(benches);
