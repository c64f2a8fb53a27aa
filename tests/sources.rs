//! No figure rests on a page without a name or on a program: sources name a
//! standard, a handbook, a maker's table, a rule, or say that they are recalled.

use std::{fs, path::Path};

/// Words that no source may hold.
const VAGUE: [&str; 29] = [
    "web page",
    "web pages",
    "webpage",
    "public page",
    "page not named",
    "no page seen",
    "online",
    "internet",
    "homework",
    "solutions to",
    "help",
    "source code",
    "software",
    "dataset",
    "library",
    "upload",
    "scribd",
    "forum",
    "blog",
    "video",
    "calculator",
    "pdf",
    "supplier's table",
    "shop guide",
    "shop advice",
    "training notes",
    "one mill",
    "type appendix",
    "metals handbook article",
];

/// What is printed of a figure that no text confirms is said with one word.
const NOT_PRINTED: &str = "recalled";

fn tables(folder: &Path, found: &mut Vec<std::path::PathBuf>) {
    for entry in fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        if path.is_dir() {
            tables(&path, found);
        } else {
            found.push(path);
        }
    }
}

/// What a check row says whose page has no name: no count of outside agreement
/// takes it in.
const UNCONFIRMED: &str = "unconfirmed";

/// What is not a text: a check may not rest on it, unless it says that it is
/// unconfirmed and is left out of every count.
const NO_TEXT: [&str; 7] = [
    "program",
    "cad",
    "parts library",
    "course handout",
    "unnamed",
    "without a name",
    "dealer page",
];

/// Check files whose rows have no source: the head names the one text of all.
const ONE_TEXT: [(&str, &str); 3] = [
    ("keyseat_depth.csv", "Machinery's Handbook 31st ed. p. 2552"),
    ("oring_grooves.csv", "Columbia Engineered Rubber"),
    ("uncertain_sizes.csv", "uncertainties 3.2.3"),
];

/// Does a text hold a word or words, whole?
fn holds(text: &str, word: &str) -> bool {
    let plain: String =
        text.to_lowercase().chars().map(|c| if c.is_alphanumeric() { c } else { ' ' }).collect();
    let plain: Vec<&str> = plain.split_whitespace().collect();
    format!(" {} ", plain.join(" ")).contains(&format!(" {word} "))
}

/// The word of a line that no source may hold.
fn vague(line: &str) -> Option<&'static str> {
    let line = line.to_lowercase();
    let printed = !line.starts_with('#');
    VAGUE.into_iter().chain(printed.then_some(NOT_PRINTED)).find(|word| {
        if word.contains(' ') {
            line.contains(word)
        } else {
            line.split(|c: char| !c.is_ascii_alphanumeric()).any(|it| it == *word)
        }
    })
}

fn folder(name: &str) -> std::path::PathBuf {
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    fs::canonicalize(root.join(name))
        .or_else(|_| fs::canonicalize(root.join("..").join(name)))
        .unwrap()
}

#[test]
fn sources_are_neither_vague_nor_programs() {
    let data = folder("data");
    let mut found = Vec::new();
    tables(&data, &mut found);
    assert!(found.len() > 40, "only {} tables were read", found.len());
    for path in found {
        let under = path.strip_prefix(&data).unwrap().display().to_string();
        for (at, line) in fs::read_to_string(&path).unwrap().lines().enumerate() {
            assert_eq!(vague(line), None, "{under}:{}", at + 1);
        }
    }
}

// A check row names its text, or says that its page has no name.
#[test]
fn check_rows_name_their_source_or_say_that_they_do_not() {
    let published = folder("tests/published");
    let mut found = Vec::new();
    tables(&published, &mut found);
    let (mut named, mut unnamed) = (0, 0);
    for path in found {
        let under = path.strip_prefix(&published).unwrap().display().to_string();
        let text = fs::read_to_string(&path).unwrap();
        let head: Vec<&str> = text.lines().take_while(|line| line.starts_with('#')).collect();
        for word in NO_TEXT {
            assert!(!holds(&head.join(" "), word), "{under}: its head rests on `{word}`");
        }
        let list = fits_checks::rows(&format!("tests/published/{under}"));
        if !list[0].has("source") {
            let text = ONE_TEXT.iter().find(|(file, _)| *file == under);
            let (_, text) = text.unwrap_or_else(|| panic!("{under}: no column `source`"));
            assert!(head.join(" ").contains(text), "{under}: its head does not name its text");
        }
        for row in list.iter().filter(|row| row.has("source")) {
            let source = row.text("source");
            assert!(!source.is_empty(), "{row}: no source");
            assert_eq!(vague(source), None, "{row}: {source}");
            assert_eq!(row.is_unconfirmed(), source.contains(UNCONFIRMED), "{row}: {source}");
            let no_text = NO_TEXT.iter().find(|word| holds(source, word));
            assert!(row.is_unconfirmed() || no_text.is_none(), "{row}: {source}");
            if row.is_unconfirmed() { unnamed += 1 } else { named += 1 }
        }
    }
    // A row without a name is to be named or dropped, not added.
    assert!(named > 3_000 && unnamed <= 106, "{named} named, {unnamed} not");
}
