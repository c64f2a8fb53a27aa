//! The queries of the help and what the fuzzer found once, typed again.

#[path = "support/any_text.rs"]
mod any_text;

use fits_checks::project_file;

#[test]
fn every_saved_query_holds() {
    let mut lines = 0;
    let mut faults = Vec::new();
    for name in ["queries.txt", "found.txt"] {
        let bytes = std::fs::read(project_file(&format!("tests/corpus/{name}"))).unwrap();
        for line in bytes.split(|byte| *byte == b'\n') {
            lines += 1;
            faults.extend(any_text::holds(line).err());
        }
    }
    assert!(faults.is_empty(), "{} faults:\n{}", faults.len(), faults.join("\n"));
    assert!(lines > 200, "only {lines} lines");
}
