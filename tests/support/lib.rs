//! What the checks share: reading the data and the published rows with their
//! place, and running the program.

pub mod notes;

use fits_core::{
    Length, Limits,
    size::{Number, Unit},
    standards::thread::{Series, Thread},
};
use fits_repl::{render::json, session::Session};
use serde_json::Value;
use std::{
    collections::HashMap,
    fmt,
    io::Write as _,
    path::{Path, PathBuf},
    process::{Command, Output, Stdio},
    str::FromStr,
    sync::OnceLock,
};

/// A file of the project, named from its top folder.
pub fn project_file(name: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join(name)
}

/// One row of a CSV file, with its place for messages.
#[derive(Clone, Debug)]
pub struct Row {
    place: String,
    fields: HashMap<String, String>,
}

/// How many rows name their text: what a count of outside agreement may hold.
#[must_use]
pub fn named(rows: &[Row]) -> usize {
    rows.iter().filter(|row| !row.is_unconfirmed()).count()
}

impl fmt::Display for Row {
    /// File and line.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.place)
    }
}

impl Row {
    /// The text in a column.
    ///
    /// # Panics
    /// No such column: names file and line.
    pub fn text(&self, column: &str) -> &str {
        self.fields.get(column).unwrap_or_else(|| panic!("{self}: no column {column}"))
    }

    /// Is there such a column?
    pub fn has(&self, column: &str) -> bool {
        self.fields.contains_key(column)
    }

    /// Does its source name no text? Then it agrees with nobody: a count of rows
    /// read elsewhere leaves it out.
    pub fn is_unconfirmed(&self) -> bool {
        ["unnamed page, unconfirmed", "unconfirmed: "]
            .iter()
            .any(|mark| self.text("source").starts_with(mark))
    }

    /// The value in a column.
    ///
    /// # Panics
    /// Not such a value: names file and line.
    pub fn get<T: FromStr>(&self, column: &str) -> T {
        let text = self.text(column);
        text.parse().unwrap_or_else(|_| panic!("{self}: {column} is {text:?}"))
    }
}

impl Row {
    /// A size in this row, exactly; a sign before it or not.
    ///
    /// # Panics
    /// Not a size: names file and line.
    #[track_caller]
    pub fn length(&self, text: &str, unit: Unit) -> Length {
        let (sign, digits) = match text.strip_prefix('-') {
            Some(rest) => (-1, rest),
            None => (1, text),
        };
        match Number::scan(digits) {
            Ok(Some((number, taken))) if taken == digits.len() => number
                .of(unit)
                .and_then(|length| length.checked_mul(sign))
                .unwrap_or_else(|error| panic!("{self}: {text}: {error}")),
            other => panic!("{self}: {text:?} is not a number: {other:?}"),
        }
    }

    /// The Rust of this row's provenance, for a generated table.
    ///
    /// # Panics
    /// An unknown status, or no source: names file and line.
    pub fn provenance(&self) -> String {
        let known = match self.text("status") {
            "SEEN" => "Seen",
            "FORMULA" => "Formula",
            "MEMORY" => "Memory",
            "COMMON" => "Practice",
            other => panic!("{self}: unknown status {other}"),
        };
        assert!(!self.text("source").is_empty(), "{self}: no source");
        format!("Provenance {{ known: Known::{known}, text: {:?} }}", self.text("source"))
    }
}

/// The Rust of the lists of sources and of doubts that a generated table's
/// cells point into.
///
/// # Panics
/// There are more than a byte counts.
pub fn sources_and_doubts(sources: &[String], doubts: &[String]) -> String {
    assert!(sources.len() <= 256 && doubts.len() <= 256, "more than a byte counts");
    let list = |kind: &str, entries: &[String]| {
        let lines: String = entries.iter().flat_map(|entry| ["    ", entry, ",\n"]).collect();
        format!("pub(super) static {kind}; {}] = [\n{lines}];\n", entries.len())
    };
    let doubts: Vec<String> = doubts.iter().map(|doubt| format!("{doubt:?}")).collect();
    list("SOURCES: [Provenance", sources) + "\n" + &list("DOUBTS: [&str", &doubts)
}

/// The Rust of a length, for a generated table.
pub fn code(length: Length) -> String {
    format!("Length::from_tenth_nanometres({})", length.tenth_nanometres())
}

/// A number of millimetres as a length, to 0.1 nm.
pub fn mm(value: f64) -> Length {
    counted(value * 1e7)
}

/// A number of inches as a length, to 0.1 nm.
pub fn inches(value: f64) -> Length {
    counted(value * 254e6)
}

#[allow(clippy::cast_possible_truncation, reason = "sizes of parts: far inside the range")]
fn counted(tenth_nanometres: f64) -> Length {
    Length::from_tenth_nanometres(tenth_nanometres.round() as i64)
}

/// Limits with nothing between them.
///
/// # Panics
/// Never: the two are equal.
pub fn exactly(length: Length) -> Limits {
    Limits::new(length, length).unwrap_or_else(|error| panic!("{error}"))
}

/// Holds a figure to another, within a share of that.
///
/// # Panics
/// It is further off.
#[track_caller]
pub fn near(ours: f64, wanted: f64, share: f64) {
    assert!((ours - wanted).abs() <= share * wanted.abs(), "{ours}, wanted {wanted}");
}

/// The rows of a CSV file of the project; lines that open with `#` are
/// comments, the first other line names the columns.
///
/// # Panics
/// The file is missing or torn: names file and line.
pub fn rows(name: &str) -> Vec<Row> {
    let mut reader = csv::ReaderBuilder::new()
        .comment(Some(b'#'))
        .from_path(project_file(name))
        .unwrap_or_else(|error| panic!("{name}: {error}"));
    let columns: Vec<String> = reader
        .headers()
        .unwrap_or_else(|error| panic!("{name}: {error}"))
        .iter()
        .map(str::to_owned)
        .collect();
    reader
        .records()
        .map(|record| {
            let record = record.unwrap_or_else(|error| panic!("{name}: {error}"));
            let line = record.position().map_or(0, csv::Position::line);
            let fields = columns
                .iter()
                .cloned()
                .zip(record.iter().map(|field| field.trim().to_owned()))
                .collect();
            Row { place: format!("{name}:{line}"), fields }
        })
        .collect()
}

/// Holds a generated file of the project to what its data give, and rewrites
/// it when `FITS_REGENERATE` is set.
///
/// # Panics
/// They differ and it was not told to rewrite, or the file cannot be read.
pub fn hold_generated(name: &str, wanted: &str) {
    let path = project_file(name);
    if std::env::var_os("FITS_REGENERATE").is_some() {
        std::fs::write(&path, wanted).unwrap_or_else(|error| panic!("{name}: {error}"));
        return;
    }
    let found = std::fs::read_to_string(&path).unwrap_or_else(|error| panic!("{name}: {error}"));
    for (number, (found, wanted)) in found.lines().zip(wanted.lines()).enumerate() {
        assert_eq!(
            found,
            wanted,
            "{name}:{} differs from its data; see DEVELOPERS.md, \"Tables\"",
            number + 1
        );
    }
    assert_eq!(
        found.len(),
        wanted.len(),
        "{name} differs from its data; see DEVELOPERS.md, \"Tables\""
    );
}

/// What a session answers, as JSON.
///
/// # Panics
/// It is not JSON.
#[track_caller]
pub fn ask(session: &mut Session, query: &str) -> Value {
    let mut out = Vec::new();
    json::object(&mut out, None, query, &session.evaluate(query));
    serde_json::from_slice(&out).unwrap_or_else(|error| panic!("{query}: {error}"))
}

/// The same of a query that is answered.
///
/// # Panics
/// It is refused.
#[track_caller]
pub fn takes(session: &mut Session, query: &str) -> Value {
    let answer = ask(session, query);
    assert!(answer["error"].is_null(), "{query}: {answer}");
    answer
}

/// Runs an example of the library and returns what it prints.
///
/// # Panics
/// It does not build, or fails.
pub fn example(name: &str, arguments: &[&Path]) -> String {
    let build = escargot::CargoBuild::new()
        .manifest_path(project_file("Cargo.toml"))
        .package("fits-core")
        .example(name);
    let run = build.run().unwrap_or_else(|error| panic!("{name} does not build: {error}"));
    let output =
        run.command().args(arguments).output().unwrap_or_else(|error| panic!("{name}: {error}"));
    assert!(output.status.success(), "{name}: {}", String::from_utf8_lossy(&output.stderr));
    String::from_utf8_lossy(&output.stdout).into_owned()
}

/// The program for a person whose folders are these: the crib, the settings
/// and the logs of whoever runs the checks are out of its reach.
pub fn fits_of(home: &Path) -> Command {
    let mut command = Command::new(program());
    isolate(&mut command, home);
    command
}

/// The program for a person who keeps nothing.
pub fn fits() -> Command {
    fits_of(&nobody())
}

/// A home that is not there.
pub fn nobody() -> PathBuf {
    std::env::temp_dir().join("fits-checks-nobody")
}

/// Keeps a command away from the folders of whoever runs the checks.
pub fn isolate(command: &mut Command, home: &Path) {
    command
        .env("HOME", home)
        .env("XDG_CONFIG_HOME", home.join("config"))
        .env("XDG_DATA_HOME", home.join("data"))
        .env("APPDATA", home.join("config"))
        .env_remove("NO_COLOR");
}

/// The program, built once for all checks in the profile they run in.
///
/// # Panics
/// It does not build.
pub fn program() -> &'static Path {
    static PROGRAM: OnceLock<PathBuf> = OnceLock::new();
    PROGRAM.get_or_init(|| {
        let build = escargot::CargoBuild::new()
            .manifest_path(project_file("Cargo.toml"))
            .package("fits-repl")
            .bin("fits");
        let build = if cfg!(debug_assertions) { build } else { build.release() };
        build
            .run()
            .unwrap_or_else(|error| panic!("the program does not build: {error}"))
            .path()
            .to_owned()
    })
}

/// The name of every listed thread that is parallel, as `data/threads/` has it.
pub fn listed_threads() -> Vec<String> {
    let mut names = Vec::new();
    for row in rows("data/threads/metric_series.csv") {
        let pitches = [row.text("coarse_mm"), row.text("fine_mm")].join(" ");
        for pitch in pitches.split_whitespace() {
            names.push(format!("M{}x{pitch}", row.text("nominal_mm")));
        }
    }
    for row in rows("data/threads/unified_series.csv") {
        names.push(format!("{}-{}", row.text("size").replace("No. ", "#"), row.text("tpi")));
    }
    for row in rows("data/threads/unified_constant.csv") {
        for sixteenth in 4..=96_u32 {
            let (whole, part) = (sixteenth / 16, sixteenth % 16);
            let cut = [8, 4, 2, 1].into_iter().find(|cut| part % cut == 0).unwrap_or(1);
            let size = match (whole, part) {
                (whole, 0) => whole.to_string(),
                (0, part) => format!("{}/{}", part / cut, 16 / cut),
                (whole, part) => format!("{whole}-{}/{}", part / cut, 16 / cut),
            };
            let name = format!("{size}-{}", row.text("tpi"));
            let listed = name.parse::<Thread>().is_ok_and(|it| it.series() == Series::Constant);
            if listed {
                names.push(name);
            }
        }
    }
    for row in rows("data/threads/whitworth_sizes.csv") {
        names.push(format!("{} {}", row.text("size"), row.text("series")));
    }
    for row in rows("data/threads/ba.csv") {
        names.push(format!("{}BA", row.text("number")));
    }
    for row in rows("data/threads/trapezoidal_sizes.csv") {
        names.push(format!("Tr{}x{}", row.text("diameter_mm"), row.text("pitch_mm")));
    }
    for row in rows("data/threads/acme_sizes.csv") {
        for form in ["Acme", "stub Acme"] {
            names.push(format!("{}-{} {form}", row.text("size"), row.text("tpi")));
        }
    }
    for row in rows("data/threads/pipe_g.csv") {
        names.push(format!("G{}", row.text("size")));
    }
    for row in rows("data/threads/pipe_r.csv") {
        names.push(format!("Rp{}", row.text("size")));
    }
    names
}

/// What the program says when it is given something to read.
///
/// # Panics
/// It does not run.
pub fn piped(arguments: &[&str], input: &[u8]) -> Output {
    let mut child = fits()
        .args(arguments)
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .expect("it runs");
    let mut stdin = child.stdin.take().expect("a pipe");
    let input = input.to_vec();
    let writer = std::thread::spawn(move || {
        // It may end before all is read.
        let _ = stdin.write_all(&input);
    });
    let output = child.wait_with_output().expect("it ends");
    writer.join().expect("written");
    output
}
