//! The saved inputs of the fuzzer, and what it once found, replayed.

#[path = "../fuzz/body.rs"]
mod body;

#[test]
fn the_saved_inputs_break_no_rule() {
    let folder = fits_checks::project_file("fuzz/corpus");
    let mut replayed = 0;
    for entry in std::fs::read_dir(folder).expect("the corpus") {
        let file = entry.expect("an entry").path();
        println!("{}", file.display());
        body::check(&std::fs::read(file).expect("an input"));
        replayed += 1;
    }
    assert!(replayed >= 10, "only {replayed}");
}
