//! No figure rests on a page without a name or on a program: sources name a
//! standard, a handbook, a maker's table, a rule, or say that they are recalled.

use std::{fs, path::Path};

/// Words that no source may hold.
const VAGUE: [&str; 7] =
    ["web page", "webpage", "homework", "help", "source code", "library", "upload"];

/// Tables whose sources are still to be put right.
const TO_DO: [&str; 8] = [
    "materials.csv",
    "shop_words.csv",
    "friction.csv",
    "swelling.csv",
    "assembly",
    "iso2768",
    "holemaking",
    "material_names.csv",
];

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
        if TO_DO.iter().any(|name| under.starts_with(name)) {
            continue;
        }
        read += 1;
        for (at, line) in fs::read_to_string(&path).unwrap().lines().enumerate() {
            let line = line.to_lowercase();
            for word in VAGUE {
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
    assert!(read > 15, "only {read} tables were read");
}
