//! Inch fits and the search for a fit, each answer asserted once.

use std::hint::black_box;

use criterion::{Criterion, criterion_group, criterion_main};
use fits_core::{Length, Limits, shop::pick, standards::b41::Class};

fn length(text: &str) -> Length {
    text.parse().expect(text)
}

fn lookup(c: &mut Criterion) {
    let class: Class = "RC4".parse().expect("RC4");
    let nominal = Length::INCH;
    // Machinery's Handbook 31st ed., table 8a: 0.8 to 2.8 thou.
    let clearance = class.fit(nominal).expect("RC4 at 1 in").clearance();
    assert_eq!(clearance.lower(), length("0.0008in"));
    assert_eq!(clearance.upper(), length("0.0028in"));
    c.bench_function("b41 RC4 at 1 in", |b| {
        b.iter(|| black_box(class).fit(black_box(nominal)));
    });
    c.bench_function("b41 all classes at 1 in", |b| {
        b.iter(|| Class::all().filter_map(|class| class.fit(black_box(nominal)).ok()).count());
    });
}

fn search(c: &mut Criterion) {
    let nominal = length("20mm");
    let range =
        |lower: &str, upper: &str| Limits::new(length(lower), length(upper)).expect("limits");
    // ANSI B4.2-1978, sliding fit at 20 mm: 0.007 to 0.041.
    let sliding = range("0.007mm", "0.041mm");
    let found = pick(nominal, sliding).expect("20 mm");
    assert_eq!(found[0].classes.to_string(), "H7/g6");
    let wide = range("0mm", "1mm");
    assert!(pick(nominal, wide).expect("20 mm").len() > 500);
    let hopeless = range("0.01mm", "0.012mm");
    assert!(
        pick(nominal, hopeless).expect("20 mm").iter().all(fits_core::shop::Candidate::is_miss)
    );
    for (name, wanted) in [
        ("pick 20 mm, 7 to 41 um", sliding),
        ("pick 20 mm, 0 to 1 mm", wide),
        ("pick 20 mm, nothing fits", hopeless),
    ] {
        c.bench_function(name, |b| {
            b.iter(|| pick(black_box(nominal), black_box(wanted)));
        });
    }
}

criterion_group!(benches, lookup, search);
criterion_main!(benches);
