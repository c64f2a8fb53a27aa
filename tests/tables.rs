//! `fits batch` as a filter: tables in CSV, lines that stand for themselves, what
//! is damaged told by its line.
//!
//! The tables are read back by the `csv` crate, and checked against the JSON of
//! the same queries.

use std::{
    io::Write as _,
    process::{Output, Stdio},
};

use fits_checks::{ask, piped as run, project_file};
use fits_repl::{batch, session::Session};
use proptest::prelude::*;
use serde_json::Value;

/// The rows as a CSV reader has them, the header first.
fn rows(output: &Output) -> Vec<Vec<String>> {
    csv::ReaderBuilder::new()
        .has_headers(false)
        .from_reader(&output.stdout[..])
        .records()
        .map(|row| row.expect("a row").iter().map(str::to_owned).collect())
        .collect()
}

fn error(output: &Output) -> String {
    String::from_utf8_lossy(&output.stderr).into_owned()
}

#[test]
fn a_table_has_what_json_has() {
    let columns = [
        "line",
        "query",
        "answer",
        "nominal_mm",
        "hole.lower_mm",
        "hole.upper_mm",
        "shaft.upper_mm",
        "clearance.min_mm",
        "bore.passes.1.to_mm",
        "ream.bore_first",
        "choice.word",
        "hole.processes.0",
        "cautions",
    ];
    let queries = ["20mm H7/g6", "3/4in press", "20mm H7", "20mm H7 = 20.013mm", "10mm H7/g6"];
    let output = run(&["batch", "--csv", &columns.join(",")], queries.join("\n").as_bytes());
    let rows = rows(&output);
    assert_eq!(rows[0], columns);
    assert_eq!(rows.len(), queries.len() + 1);
    for (number, (query, row)) in (1..).zip(queries.iter().zip(&rows[1..])) {
        let mut json = ask(&mut Session::new(), query);
        json["line"] = number.into();
        for (column, cell) in columns.iter().zip(row) {
            let wanted = match json.pointer(&format!("/{}", column.replace('.', "/"))) {
                None | Some(Value::Null) => String::new(),
                Some(Value::String(text)) => text.clone(),
                Some(value) => value.to_string(),
            };
            assert_eq!(*cell, wanted, "{query}: {column}");
        }
    }
    // ISO 286-2:2010: 20 H7 +21/0, 20 g6 -7/-20.
    assert_eq!(rows[1][4..7], ["20.0", "20.021", "19.993"]);
}

#[test]
fn columns_of_the_input_are_kept() {
    let mut input = b"\xef\xbb\xbfid,Query,note\r\n".to_vec();
    input.extend_from_slice(b"1,\"20mm H7/g6, hole = 20.013mm\",\"a \"\"b\"\", c\"\r\n");
    input.extend_from_slice(b"\r\n# a comment, \"open\n   \n");
    input.extend_from_slice(b"2,\"#7\",\n\"3\",\"1\"\" H7\",\"two\nlines\"\n4,3/4\" H7,x");
    let output = run(&["batch", "--csv", "id,query,note,shaft.lower_mm,size_mm", "-"], &input);
    assert_eq!(error(&output), "");
    assert_eq!(
        rows(&output)[1..],
        [
            ["1", "20mm H7/g6, hole = 20.013mm", "a \"b\", c", "19.972", ""],
            ["2", "#7", "", "", "5.1054"],
            ["3", "1\" H7", "two\nlines", "", ""],
            ["4", "3/4\" H7", "x", "", ""],
        ]
    );
    assert_eq!(output.status.code(), Some(0));
    // Without a header each line is a query; a number drill is no comment.
    let output = run(&["batch", "--csv", "line,query,size_mm"], b"\n# drills\n#7\n#8\n");
    assert_eq!(rows(&output)[1..], [["3", "#7", "5.1054"], ["4", "#8", "5.0546"]]);
}

#[test]
fn what_is_damaged_is_told_by_its_line() {
    let mut input = b"id,query\n1,20mm H7\n2,20mm \xff H7\n3\n4,units in\n5,\"20mm\n".to_vec();
    input.extend_from_slice(b"6,20mm g6\n7,\"");
    input.extend_from_slice(&b"x".repeat(1 << 20));
    input.extend_from_slice(b"\"\n8,");
    input.extend_from_slice(&b"20mm H7 ".repeat(1000));
    input.extend_from_slice(b"\n9,cut 0.2mm = 19.7mm\n10,20mm H99\n11,20mm h6\n");
    let output = run(&["batch", "--csv", "line,id,lower_mm,error.code,error"], &input);
    let codes: Vec<(String, String)> =
        rows(&output)[1..].iter().map(|row| (row[0].clone(), row[3].clone())).collect();
    assert_eq!(
        codes,
        [
            ("2", ""),
            ("3", "not_text"),
            ("4", "not_answered"),
            ("5", "not_alone"),
            ("6", "not_answered"),
            ("7", ""),
            ("8", "too_long"),
            ("9", "too_long"),
            ("10", "not_alone"),
            ("11", "not_answered"),
            ("12", ""),
        ]
        .map(|(line, code)| (line.to_owned(), code.to_owned()))
    );
    // A damaged row is told under its own cells, not under those of the one before.
    let owners = rows(&output)[1..].iter().map(|row| row[1].clone()).collect::<Vec<_>>();
    assert_eq!(owners, (1..=11).map(|id| id.to_string()).collect::<Vec<_>>());
    assert_eq!(error(&output), "");
    assert_eq!(output.status.code(), Some(2));
    // Where no column tells it, standard error does; only a failure has a status.
    let output = run(&["batch", "--exit-zero", "--csv", "id,lower_mm"], &input);
    let told = error(&output);
    assert_eq!(told.lines().count(), 8, "{told}");
    assert!(told.contains("line 3: the line is not UTF-8 text; "), "{told}");
    assert!(told.contains("line 6: a quote is opened here and not closed; "), "{told}");
    assert_eq!(rows(&output).len(), 12);
    assert_eq!(output.status.code(), Some(0));
    let output = run(&["batch", "--exit-zero", "no such file"], b"");
    assert_eq!(output.status.code(), Some(3));
}

#[test]
fn a_quote_that_is_never_closed_takes_one_row() {
    let mut input = b"query\n\"20mm H7\n".to_vec();
    for _ in 0..20_000 {
        input.extend_from_slice(b"20mm g6\n");
    }
    let output = run(&["batch", "--csv", "line,query,error"], &input);
    let rows = rows(&output);
    assert_eq!(rows.len(), 20_002);
    assert_eq!(rows[1], ["2", "", "a quote is opened here and not closed"]);
    assert_eq!(rows[20_001], ["20002", "20mm g6", ""]);
}

#[test]
fn columns_that_are_not_there_are_told_before_a_row_is_read() {
    for (columns, said) in [
        (
            "query,hol.lower_mm",
            "no answer has the column `hol.lower_mm`: is `hole.lower_mm` meant?",
        ),
        ("supplier", "no answer has the column `supplier`: `fits schema` has every field"),
        ("query,query", "the column `query` is named twice"),
        ("query,,id", "a column has no name"),
        ("shown.hole.lowr", "no answer has the column `shown.hole.lowr`"),
    ] {
        let output = run(&["batch", "--exit-zero", "--csv", columns], b"20 H7\n");
        assert!(error(&output).contains(said), "{columns}: {}", error(&output));
        assert!(output.stdout.is_empty(), "{columns}");
        assert_eq!(output.status.code(), Some(2), "{columns}");
    }
    let output = run(&["batch", "--csv", "query,note"], b"query,note\n20mm H7,kept\n");
    assert_eq!(rows(&output)[1], ["20mm H7", "kept"]);
}

/// A program may talk to it row by row.
#[test]
fn a_row_is_answered_before_the_next_one_comes() {
    use std::io::{BufRead as _, BufReader};
    let mut child = fits_checks::fits()
        .args(["batch", "--csv", "query,lower_mm"])
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .spawn()
        .expect("it runs");
    let mut stdin = child.stdin.take().expect("a pipe");
    let mut lines = BufReader::new(child.stdout.take().expect("a pipe")).lines();
    stdin.write_all(b"20mm H7\n").expect("it is read");
    assert_eq!(lines.next().expect("a header").expect("text"), "query,lower_mm");
    assert_eq!(lines.next().expect("a row").expect("text"), "20mm H7,20.0");
    stdin.write_all(b"20mm g6\n").expect("it is read");
    assert_eq!(lines.next().expect("a row").expect("text"), "20mm g6,19.98");
    drop(stdin);
    assert_eq!(child.wait().expect("it ends").code(), Some(0));
}

#[test]
fn units_and_dial_come_from_the_command_line() {
    let answers = |arguments: &[&str]| -> Vec<Value> {
        let input = b"2 H7\nturn 20mm g6 from 22mm\n";
        let output = run(&[&["batch"], arguments].concat(), input);
        let text = String::from_utf8(output.stdout).expect("text");
        text.lines().map(|line| serde_json::from_str(line).expect("JSON")).collect()
    };
    let plain = answers(&[]);
    assert_eq!(plain[0]["nominal_mm"], 2.0);
    assert_eq!(plain[1]["dial"], "diameter");
    for units in [&["--in"][..], &["--units", "in"], &["--units=in"]] {
        assert_eq!(answers(units)[0]["nominal_mm"], 50.8, "{units:?}");
    }
    let radius = answers(&["--dial", "radius", "--mm"]);
    assert_eq!(radius[1]["dial"], "radius");
    let dialled = |answer: &Value| answer["passes"][1]["dial_mm"].as_f64().expect("a number");
    assert!((dialled(&radius[1]) * 2.0 - dialled(&plain[1])).abs() < 1e-9);
}

/// Queries of every kind, settings and entries of a log among them.
fn queries() -> Vec<String> {
    let list = |name: &str| {
        std::fs::read_to_string(project_file(&format!("tests/frozen/{name}.txt"))).expect(name)
    };
    let mut all: Vec<String> = [list("help"), list("readme"), list("phrases")]
        .iter()
        .flat_map(|text| text.lines())
        .flat_map(|line| line.split(" ; "))
        // A simulation takes long, and depends on its seed alone.
        .filter(|line| !line.contains("rehearse"))
        .map(str::to_owned)
        .collect();
    let more = ["units in", "inches", "dial radius", "undo", "why", "0.75 H7", "2 H7", "3/4 press"];
    all.extend(more.map(str::to_owned));
    all
}

/// What batch writes of each line, without the line's number.
fn answers(lines: &[&String]) -> Vec<String> {
    let input: String = lines.iter().flat_map(|line| [line.as_str(), "\n"]).collect();
    let mut session = Session::new();
    session.alone = true;
    session.keep_logs(fits_repl::session::Logs::Off).expect("no file");
    let mut out = Vec::new();
    batch::run(input.as_bytes(), &mut out, &mut session, &[]).expect("answers");
    let text = String::from_utf8(out).expect("text");
    text.lines()
        .map(|line| line.split_once(",\"query\"").expect("a number first").1.to_owned())
        .collect()
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 24, failure_persistence: None, ..ProptestConfig::default() })]

    /// A file that is split anywhere and run in any order gives the same answers.
    #[test]
    fn lines_stand_for_themselves(
        lines in proptest::sample::subsequence(queries(), 24).prop_shuffle(),
        cut in 0..24_usize,
    ) {
        let lines: Vec<&String> = lines.iter().collect();
        let (first, second) = lines.split_at(cut);
        let parts = [answers(first), answers(second)].concat();
        prop_assert_eq!(&answers(&lines), &parts);
        let turned: Vec<&String> = lines.iter().rev().copied().collect();
        let mut again = answers(&turned);
        again.reverse();
        prop_assert_eq!(&again, &parts);
        for (line, answer) in lines.iter().zip(&parts) {
            prop_assert_eq!(&answers(&[line])[0], answer, "{}", line);
        }
    }
}

/// A first line that is too long names no columns, and is told like any other.
#[test]
fn a_first_line_of_a_megabyte() {
    let mut input = b"20mm H7 ".repeat(150_000);
    input.extend_from_slice(b"\n20mm g6\n");
    let output = run(&["batch", "--csv", "line,query,lower_mm,error.code"], &input);
    let rows = rows(&output);
    assert_eq!(rows[1..], [["1", "", "", "too_long"], ["2", "20mm g6", "19.98", ""]]);
}

#[test]
fn a_first_line_that_can_mean_two_things_is_told() {
    for (input, told) in [
        ("id;query\n1;20mm H7\n", "parted by `;`: save the table with commas"),
        ("query\tid\n20mm H7\t1\n", "parted by tabs: save the table with commas"),
        ("query,Query\n20mm H7,30mm H7\n", "two columns `Query`"),
        ("id,query,id\n1,20mm H7,2\n", "two columns `id`"),
    ] {
        let output = run(&["batch", "--csv", "id,query,lower_mm"], input.as_bytes());
        assert_eq!(output.status.code(), Some(2), "{input}");
        assert!(error(&output).contains(told), "{input}: {}", error(&output));
    }
    // A column that is not asked for may stand there twice.
    let output = run(&["batch", "--csv", "query,lower_mm"], b"id,query,id\n1,20mm H7,2\n");
    assert_eq!(rows(&output)[1], ["20mm H7", "20.0"]);
}

/// A figure that an answer has is never copied from the input: limits of an earlier
/// run would stand beside a changed query.
#[test]
fn figures_come_from_the_answer_where_the_input_has_such_a_column() {
    let input = b"id,query,hole.lower_mm,error\n1,20mm H7,99,old\n2,20mm H7/g6,99,old\n";
    let output = run(&["batch", "--csv", "id,query,hole.lower_mm,error"], input);
    assert_eq!(rows(&output)[1..], [["1", "20mm H7", "", ""], ["2", "20mm H7/g6", "20.0", ""]]);
    let told = error(&output);
    assert_eq!(told.lines().count(), 2, "once for each column: {told}");
    assert!(told.contains("the column `hole.lower_mm` is the answer's"), "{told}");
    assert_eq!(output.status.code(), Some(0));
    // A word that is a person's own is kept, and what it hides is told once.
    let input = b"part,query,kind\na,20mm,x\nb,20mm H7/g6,x\nc,20mm H7/h6,x\n";
    let output = run(&["batch", "--csv", "part,kind"], input);
    assert_eq!(rows(&output)[1..], [["a", "x"], ["b", "x"], ["c", "x"]]);
    let told = "fits: line 3: the answer has a `kind` too, the column is the input's\n";
    assert_eq!(error(&output), told);
}

#[test]
fn what_is_no_text_is_told_and_not_written_as_if_it_were() {
    let input = b"id,query,note\nA\xff,20mm H7,x\nB,20mm H7,y\xff\nC,20mm g6,z\n";
    let output = run(&["batch", "--csv", "id,lower_mm,error.code,error"], input);
    let told = "the cell `id` of this row is not UTF-8 text";
    assert_eq!(
        rows(&output)[1..],
        [["A\u{fffd}", "", "not_text", told], ["B", "20.0", "", ""], ["C", "19.98", "", ""]]
    );
    assert_eq!(output.status.code(), Some(2));
    // A column's name that is no text is told, and stops only who wants it.
    let input = b"Ma\xdf,query\n1,20mm H7\n";
    let output = run(&["batch", "--csv", "query,lower_mm"], input);
    assert_eq!(rows(&output)[1], ["20mm H7", "20.0"]);
    assert!(error(&output).contains("the first line is not UTF-8 text"), "{}", error(&output));
    let output = run(&["batch", "--csv", "Ma\u{df},lower_mm"], input);
    assert_eq!(output.status.code(), Some(2));
    assert!(error(&output).contains("which is not UTF-8 text"), "{}", error(&output));
}

/// The quote of a later row is taken for the end of one that was forgotten.
#[test]
fn a_forgotten_quote_loses_its_own_row_alone() {
    for (rows_of_it, lost) in [
        (&["1,\"20mm H7,x", "2,20mm g6,x", "3,\"20mm h6\",x", "4,20mm h7,x"][..], 1),
        (&["1,20mm H7,\"x", "2,20mm g6,\"y, z\"", "3,20mm h6,x", "4,20mm h7,x"], 1),
        (&["1,20mm H7,x", "2,20mm g6,\"x", "3,20mm h6,\"3\"\" x\"", "4,20mm h7,x"], 2),
        (&["1,20mm H7,x", "2,20mm g6,x", "3,20mm h6,x", "4,\"20mm h7,x"], 4),
        (&["1,\"20mm H7,x", "2,20mm g6,x", "3,20mm h6\",x", "4,20mm h7,x"], 1),
    ] {
        for end in ["\n", "\r\n", ""] {
            let mut input = "id,query,note\n".to_owned() + &rows_of_it.join("\n") + end;
            if end == "\r\n" {
                input = input.replace("\r\n", "\n").replace('\n', "\r\n");
            }
            let output = run(&["batch", "--csv", "line,id,error"], input.as_bytes());
            let rows = rows(&output);
            assert_eq!(rows.len(), 5, "{input}: {rows:?}");
            for (at, row) in rows[1..].iter().enumerate() {
                assert_eq!(row[..2], [(at + 2).to_string(), (at + 1).to_string()], "{input}");
                let told = "a quote is opened here and not closed";
                // Row 3 of the last holds the quote that was to end there: it is told as no query.
                assert_eq!(row[2] == told, at + 1 == lost, "{input}: {row:?}");
            }
        }
    }
    // Cells over several lines, and names that hold commas, are read as ever.
    let input = "\"id, own\",query,\"note\nmore\"\n1,20mm H7,\"a\n\"\"b\"\",\nc\"\n2,20mm g6,x\n";
    let output = run(&["batch", "--csv", "line,lower_mm,error"], input.as_bytes());
    assert_eq!(rows(&output)[1..], [["3", "20.0", ""], ["6", "19.98", ""]]);
}
