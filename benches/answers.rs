//! Text to answer, answer to JSON, and the two with a line about them as
//! batch does. Each bench checks its answer once before it measures.

use std::hint::black_box;

use criterion::{Criterion, Throughput, criterion_group, criterion_main};
use fits_repl::{answer::Answer, batch, render::json, session::Session};

fn text_to_answer(criterion: &mut Criterion) {
    let mut session = Session::new();
    let Ok(Answer::Fit(fit)) = session.evaluate("20 H7/g6") else { panic!("a fit") };
    assert_eq!(fit.clearance.max_mm.0.to_string(), "0.041 mm");
    for query in ["20 H7/g6", "3/4in H7/k6", "20 H7 = 20.013", "bore 20 H7 from 19.6"] {
        criterion.bench_function(&format!("text to answer: {query}"), |bencher| {
            bencher.iter(|| session.evaluate(black_box(query)));
        });
    }
}

fn answer_to_json(criterion: &mut Criterion) {
    let answer = Session::new().evaluate("20 H7/g6");
    let mut out = Vec::with_capacity(4096);
    json::object(&mut out, None, "20 H7/g6", &answer);
    assert!(out.starts_with(b"{\"query\":\"20 H7/g6\",\"answer\":\"fit\",\"nominal_mm\":20.0"));
    criterion.bench_function("answer to JSON: 20 H7/g6", |bencher| {
        bencher.iter(|| {
            out.clear();
            json::object(&mut out, None, "20 H7/g6", black_box(&answer));
        });
    });
}

fn batch_lines(criterion: &mut Criterion) {
    let input = "20 H7/g6\n3/4in H7/k6\n50 H8/f7\n".repeat(1000);
    let mut group = criterion.benchmark_group("batch");
    group.throughput(Throughput::Elements(3000));
    group.bench_function("3000 pairs", |bencher| {
        bencher.iter(|| {
            batch::run(black_box(input.as_bytes()), std::io::sink(), &mut Session::new(), &[])
        });
    });
    group.finish();
}

criterion_group!(benches, text_to_answer, answer_to_json, batch_lines);
criterion_main!(benches);
