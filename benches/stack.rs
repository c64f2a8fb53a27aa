//! Ten million stacks of six links on two threads; the answer is checked once.

use std::hint::black_box;

use criterion::{Criterion, criterion_group, criterion_main};
use fits_core::{
    Length, Limits,
    shop::stack::{Direction, Link, Runs, Spread, Stack},
};

fn six_links() -> Stack {
    let um = |count: i64| Length::from_micrometres(count).expect("a length");
    let link = |direction, size: i64, half: i64, spread| {
        let limits = Limits::new(um(size - half), um(size + half)).expect("limits");
        Link::new(direction, limits).spread(spread)
    };
    Stack::new(vec![
        link(Direction::Adds, 40_000, 50, Spread::Normal),
        link(Direction::TakesAway, 12_000, 40, Spread::Uniform),
        link(Direction::TakesAway, 1_500, 30, Spread::Triangular),
        link(Direction::TakesAway, 1_500, 30, Spread::Triangular),
        link(Direction::TakesAway, 20_000, 20, Spread::Normal),
        link(Direction::TakesAway, 4_800, 25, Spread::Uniform),
    ])
    .expect("a stack")
}

fn ten_million(criterion: &mut Criterion) {
    let stack = six_links();
    let how = Runs { runs: 10_000_000, seed: 1, threads: 2 };
    let found = stack.simulate(how, None).expect("figures");
    let off = found.deviation.checked_sub(stack.deviation()).and_then(Length::checked_abs);
    assert!(off.is_ok_and(|off| off < Length::from_tenth_nanometres(200)), "{}", found.deviation);
    let mut group = criterion.benchmark_group("stack");
    group.sample_size(10);
    group.bench_function("10 000 000 stacks of six links, two threads", |bencher| {
        bencher.iter(|| stack.simulate(black_box(how), None));
    });
    group.bench_function("200 000 stacks of six links, two threads", |bencher| {
        let how = Runs { runs: 200_000, ..how };
        bencher.iter(|| stack.simulate(black_box(how), None));
    });
    group.finish();
}

criterion_group!(benches, ten_million);
criterion_main!(benches);
