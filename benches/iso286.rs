//! How long the answers of ISO 286 take.
//!
//! Each bench asserts its answer once before it measures. Aims on a usual
//! machine: 25 ns for the limits of a class, 60 ns for a pair.

use std::hint::black_box;

use criterion::{Criterion, criterion_group, criterion_main};
use fits_core::{
    Fit, Kind, Length,
    shop::Ream,
    standards::iso286::{Class, standard_tolerance},
};

fn millimetres(count: i64) -> Length {
    Length::from_millimetres(count).expect("in range")
}

fn class(name: &str) -> Class {
    name.parse().expect("a class")
}

fn shown(length: Length) -> String {
    length.to_string()
}

fn limits(c: &mut Criterion) {
    for (nominal, name, lower, upper) in [
        (20, "H7", "20 mm", "20.021 mm"),
        (20, "g6", "19.98 mm", "19.993 mm"),
        (20, "P7", "19.965 mm", "19.986 mm"),
        (3150, "js6", "3149.9325 mm", "3150.0675 mm"),
    ] {
        let (nominal, class) = (millimetres(nominal), class(name));
        let limits = class.limits(nominal).expect("defined");
        assert_eq!(
            (shown(limits.lower()), shown(limits.upper())),
            (lower.to_owned(), upper.to_owned())
        );
        c.bench_function(&format!("limits of {name} at {nominal}"), |b| {
            b.iter(|| black_box(class).limits(black_box(nominal)));
        });
    }
    let (grade, nominal) = (class("H7").grade, millimetres(20));
    assert_eq!(standard_tolerance(grade, nominal).map(shown).as_deref(), Ok("0.021 mm"));
    c.bench_function("standard tolerance IT7 at 20 mm", |b| {
        b.iter(|| standard_tolerance(black_box(grade), black_box(nominal)));
    });
}

fn pairs(c: &mut Criterion) {
    let (nominal, hole) = (millimetres(20), class("H7"));
    let of = |shaft: Class| Fit::of_classes(black_box(nominal), black_box(hole), black_box(shaft));

    let loose = class("g6");
    let fit = of(loose).expect("a fit");
    assert_eq!(
        (fit.kind(), shown(fit.clearance().lower()), shown(fit.clearance().upper())),
        (Kind::Clearance, "0.007 mm".into(), "0.041 mm".into())
    );
    c.bench_function("pair 20 H7/g6", |b| b.iter(|| of(loose)));

    let transition = class("k6");
    let fit = of(transition).expect("a fit");
    assert_eq!(fit.kind(), Kind::Transition);
    // Hole 0 to 21 um, shaft 2 to 15 um: tight in a triangle of 15 by 13 um
    // less its corner of 2 by 2 um.
    let tight = f64::from(15 * 15 - 2 * 2) / f64::from(2 * 21 * 13);
    assert!((fit.chance_of_clearance().even - (1.0 - tight)).abs() < 1e-9);
    c.bench_function("pair 20 H7/k6 with its chance of clearance", |b| {
        b.iter(|| of(transition).map(|fit| fit.chance_of_clearance()));
    });

    assert_eq!("H7".parse(), Ok(hole));
    c.bench_function("reading H7", |b| {
        b.iter(|| black_box("H7").parse::<Class>());
    });
}

fn refusals(c: &mut Criterion) {
    let (nominal, a11) = (Length::from_micrometres(800).expect("in range"), class("A11"));
    let error = a11.limits(nominal).expect_err("not defined");
    assert_eq!(error.instead(), Some(class("C11")));
    c.bench_function("refusal of A11 at 0.8 mm, with what to take instead", |b| {
        b.iter(|| black_box(a11).limits(black_box(nominal)));
    });
}

fn reaming(c: &mut Criterion) {
    let hole = class("H7").limits(millimetres(20)).expect("defined");
    let ream = Ream::of(hole).expect("reamed");
    // DIN 1420, H7 over 18 to 30 mm: 9 to 17 um above nominal.
    assert_eq!(
        (shown(ream.reamer.lower()), shown(ream.reamer.upper())),
        ("20.009 mm".into(), "20.017 mm".into())
    );
    c.bench_function("ream plan of 20 H7", |b| {
        b.iter(|| Ream::of(black_box(hole)));
    });
}

criterion_group!(benches, limits, pairs, refusals, reaming);
criterion_main!(benches);
