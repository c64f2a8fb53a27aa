//! A joint solved, a joint with a sleeve, the search by torque, and the same
//! from text. Each bench checks its answer once before it measures.

use std::hint::black_box;

use criterion::{Criterion, criterion_group, criterion_main};
use fits_checks::{exactly, mm, near};
use fits_core::{
    shop::assemble::{Compound, Joint, Ring, Wishes, grips},
    standards::materials::Material,
};
use fits_repl::{answer::Answer, session::Session};
use uom::si::{f64::Torque, pressure::megapascal, torque::newton_meter};

fn core(criterion: &mut Criterion) {
    let steel = Material::find("steel 4140").unwrap();
    let mut joint = Joint::new(mm(20.0), exactly(mm(0.03)), mm(40.0), steel, steel).unwrap();
    joint.length = Some(mm(25.0));
    let pressure = joint.solve().unwrap().pressure(0).1.get::<megapascal>();
    near(pressure, 0.375 * 207_000.0 * 0.03 / 20.0, 1e-6);
    criterion.bench_function("joint of two", |bencher| {
        bencher.iter(|| black_box(&joint).solve());
    });
    let rings = [(8.0, 10.0), (10.0, 13.0), (13.0, 25.0)].map(|(inner, outer)| Ring {
        bore: mm(2.0 * inner),
        outside: mm(2.0 * outer),
        material: steel,
    });
    criterion.bench_function("three rings", |bencher| {
        bencher.iter(|| Compound::solve(black_box(&rings), &[mm(0.03), mm(0.05)]));
    });
    let mut wishes = Wishes::default();
    wishes.holds = Some(Torque::new::<newton_meter>(30.0));
    assert!(grips(&joint, &wishes).unwrap().iter().any(|grip| grip.meets(&wishes)));
    criterion.bench_function("classes by torque", |bencher| {
        bencher.iter(|| grips(black_box(&joint), &wishes));
    });
}

fn text(criterion: &mut Criterion) {
    let query = "assemble 20 H7/s6, hub aluminium od 40 long 25, shaft steel";
    let mut session = Session::new();
    let Ok(Answer::Assembly(joint)) = session.evaluate(query) else { panic!("a joint") };
    assert!(joint.press_force_n.is_some_and(|force| force > 1e4));
    criterion.bench_function("text to answer: assemble", |bencher| {
        bencher.iter(|| session.evaluate(black_box(query)));
    });
}

criterion_group!(benches, core, text);
criterion_main!(benches);
