//! The Python examples do what they say, where there is a Python.

use std::process::Command;

use fits_checks::{isolate, nobody, program, project_file};

/// What an example prints; nothing where there is no Python.
fn python(name: &str, arguments: &[&str]) -> Option<String> {
    let mut command = Command::new("python3");
    isolate(&mut command, &nobody());
    command.arg(project_file(&format!("fits-repl/examples/{name}"))).arg(program()).args(arguments);
    let Ok(output) = command.output() else {
        eprintln!("skipped: there is no python3 here");
        return None;
    };
    let error = String::from_utf8_lossy(&output.stderr).into_owned();
    assert!(output.status.success(), "{name}: {error}");
    Some(String::from_utf8(output.stdout).expect("text"))
}

#[test]
fn one_batch_stays_open() {
    let Some(said) = python("ask_batch.py", &[]) else { return };
    assert_eq!(
        said.lines().collect::<Vec<_>>(),
        [
            "aim for 25.0105 mm",
            "24.610: cut more, 0.4005 mm to go",
            "24.815: cut more, 0.1955 mm to go",
            "25.004: good, 0.0065 mm to go",
            "25 H99: there is no tolerance grade IT99; grades run from IT01, IT0, IT1 to IT18: \
             `25 H18`",
        ]
    );
}

#[test]
fn a_table_of_a_csv() {
    let parts = project_file("fits-repl/examples/parts.csv");
    let Some(said) = python("table_of_csv.py", &[parts.to_str().expect("a name")]) else { return };
    let lines: Vec<&str> = said.lines().collect();
    assert_eq!(lines.len(), 4, "{said}");
    // ISO 286-2:2010: 20 H7 +21/0, 20 g6 -7/-20.
    assert_eq!(
        lines[0],
        "crank bushing: hole 20.000 mm to 20.021 mm, shaft 19.980 mm to 19.993 mm"
    );
    assert!(lines[1].starts_with("screw, top end: hole 0.7500 in to 0.7508 in"), "{said}");
    assert_eq!(lines[2], "line 4, roller pin: there is no tolerance grade IT99");
    assert!(lines[3].starts_with("tube handle: hole 1.0000 in to "), "{said}");
}
