//! How long the answers about threads take.
//!
//! Each bench asserts its answer once before it measures. Aims on a usual
//! machine: 1 us for a thread with all its limits from its designation, 10 ns
//! for a text that is none.

use std::hint::black_box;

use criterion::{Criterion, criterion_group, criterion_main};
use fits_core::standards::thread::{Designation, Form, Side, Sizes, scan};

fn read(text: &str) -> Designation {
    scan(text).expect("a thread").expect("whole").0
}

/// Both sides of a designation, in the classes typed or the usual ones.
fn limits(designation: &Designation) -> (Sizes, Sizes) {
    let thread = designation.resolve().expect("a thread");
    let class = |side| designation.class(side).map(|class| class.value);
    (
        thread.external(class(Side::External)).expect("a screw"),
        thread.internal(class(Side::Internal)).expect("a nut"),
    )
}

fn threads(c: &mut Criterion) {
    for (text, pitch_max, minor_min) in [
        // Limits as in tests/published.
        ("M10x1.5 6H/6g", "8.994mm", "8.376mm"),
        ("1/2-13 2B/2A", "0.4485in", "0.417in"),
        ("#10-32 2B/2A", "0.1688in", "0.156in"),
        // By the formulas of ASME B1.1, worked by hand.
        ("1/4-19", "0.2146in", "0.193in"),
    ] {
        let designation = read(text);
        let (screw, nut) = limits(&designation);
        assert_eq!(screw.pitch.max, Some(pitch_max.parse().expect("a size")), "{text}");
        assert_eq!(nut.minor.min, Some(minor_min.parse().expect("a size")), "{text}");
        c.bench_function(&format!("limits of {text}"), |b| {
            b.iter(|| limits(black_box(&designation)));
        });
    }
}

fn texts(c: &mut Criterion) {
    assert_eq!(read("3/8-24 UNF 2A").form, Form::Unified);
    c.bench_function("reading 3/8-24 UNF 2A", |b| b.iter(|| scan(black_box("3/8-24 UNF 2A"))));
    for text in ["20 H7/g6", "3/4in press", "ream 20 H7"] {
        assert!(scan(text).is_none());
        c.bench_function(&format!("leaving {text} alone"), |b| b.iter(|| scan(black_box(text))));
    }
}

criterion_group!(benches, threads, texts);
criterion_main!(benches);
