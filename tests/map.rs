//! The contributor's map names every question's folder and every folder of the
//! core, and no room that is gone.

use std::{collections::BTreeSet, fs};

use fits_checks::project_file;

/// The folders directly in one.
fn folders(path: &str) -> BTreeSet<String> {
    let entries = fs::read_dir(project_file(path)).expect("a folder");
    let entries = entries.map(|entry| entry.expect("an entry"));
    let folders = entries.filter(|entry| entry.path().is_dir());
    folders.map(|entry| entry.file_name().into_string().expect("text")).collect()
}

/// What stands between backquotes.
fn quoted(text: &str) -> impl Iterator<Item = &str> {
    text.split('`').skip(1).step_by(2)
}

#[test]
fn every_question_has_its_row_and_every_room_in_it_is_there() {
    const QUESTIONS: &str = "fits-repl/src/questions";
    let map = fs::read_to_string(project_file("DEVELOPERS.md")).expect("the map");
    let (_, table) = map.split_once("| question | rooms").expect("the table of questions");
    let (head, table) = table.split_once("| --- | --- |\n").expect("its rows");
    let usual: BTreeSet<&str> = quoted(head).collect();
    let mut named = BTreeSet::new();
    for row in table.lines().take_while(|line| line.starts_with('|')) {
        let [_, question, rooms, _] = row.split('|').collect::<Vec<_>>()[..] else {
            panic!("two columns: {row}")
        };
        let question = quoted(question).next().expect("a question").to_owned();
        for room in quoted(rooms) {
            let path = format!("{QUESTIONS}/{question}/{room}.rs");
            assert!(project_file(&path).exists(), "{path} is in the map and gone");
            assert!(!usual.contains(room), "{room} of {question} needs no mention");
        }
        named.insert(question);
    }
    assert_eq!(named, folders(QUESTIONS));
}

#[test]
fn every_folder_of_the_core_is_named() {
    let map = fs::read_to_string(project_file("DEVELOPERS.md")).expect("the map");
    let (map, _) = map.split_once("| question | rooms").expect("the table of questions");
    let named: BTreeSet<&str> = quoted(map).collect();
    for room in ["standards", "shop"] {
        for folder in folders(&format!("fits-core/src/{room}")) {
            assert!(named.contains(folder.as_str()), "{room}/{folder} is not in the map");
        }
    }
}
