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

#[test]
fn sources_are_neither_vague_nor_programs() {
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    let data =
        fs::canonicalize(root.join("data")).or_else(|_| fs::canonicalize(root.join("../data")));
    let data = data.unwrap();
    let mut found = Vec::new();
    tables(&data, &mut found);
    let mut read = 0;
    for path in found {
        let under = path.strip_prefix(&data).unwrap().display().to_string();
        read += 1;
        for (at, line) in fs::read_to_string(&path).unwrap().lines().enumerate() {
            let line = line.to_lowercase();
            let printed = !line.starts_with('#');
            for word in VAGUE.into_iter().chain(printed.then_some(NOT_PRINTED)) {
                let words = || line.split(|c: char| !c.is_ascii_alphanumeric());
                let holds = if word.contains(' ') {
                    line.contains(word)
                } else {
                    words().any(|it| it == word)
                };
                assert!(!holds, "{under}:{}: {word}", at + 1);
            }
        }
    }
    assert!(read > 40, "only {read} tables were read");
}
