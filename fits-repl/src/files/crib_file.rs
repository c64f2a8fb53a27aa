//! The crib as a file: TOML that a person may write by hand. What is not
//! understood stays in it, comments too; an entry that cannot be read is said
//! with its line and left out; a file with a fault is never written.

use std::{io, path::PathBuf};

use fits_core::{Length, job::Crib};
use serde::de::{DeserializeOwned, IntoDeserializer as _};
use toml_edit::{ArrayOfTables, Document, DocumentMut, InlineTable, Item, Table, Value};

use crate::files::{alone, line_of, replace, shown, text_of};

/// The version of the format that this one writes.
const VERSION: i64 = 1;

/// Every kind of entry and its keys.
const KINDS: &[(&str, &[&str])] = &[
    ("drill", &["size", "called"]),
    ("drills", &["set", "from", "to", "step"]),
    ("reamer", &["size", "cuts"]),
    ("tap", &["thread"]),
    ("pin", &["size"]),
    ("bar", &["bore", "reach"]),
    ("instrument", &["name", "repeat", "bias"]),
    ("material", &["name", "modulus_gpa", "poisson", "expansion_um_per_m_k", "yield_mpa"]),
];

/// The crib and the file it stands in.
#[derive(Clone, Debug, Default)]
pub(crate) struct CribFile {
    /// `None`: it is kept in memory only.
    path: Option<PathBuf>,
    text: String,
    crib: Crib,
    /// Why it is not written to, where it is damaged.
    damage: Option<String>,
}

impl CribFile {
    /// The crib of a file, empty where there is none, and what was wrong.
    pub(crate) fn load(path: PathBuf) -> (Self, Vec<String>) {
        let mut file = Self { path: Some(path), ..Self::default() };
        let notes = file.read();
        (file, notes)
    }

    /// The tools.
    pub(crate) fn crib(&self) -> &Crib {
        &self.crib
    }

    /// The file's name.
    pub(crate) fn path(&self) -> Option<String> {
        self.path.as_deref().map(shown)
    }

    /// The same tools, where nothing is written.
    pub(crate) fn on_trial(&self) -> Self {
        Self { path: None, ..self.clone() }
    }

    /// Reads the file anew.
    fn read(&mut self) -> Vec<String> {
        let Some(path) = &self.path else { return Vec::new() };
        match text_of(path) {
            Ok(text) => {
                self.text = text.unwrap_or_default();
                let read = read(&self.text);
                self.crib = read.crib;
                let name = shown(path);
                let notes: Vec<String> =
                    read.notes.into_iter().map(|note| format!("{name}: {note}")).collect();
                self.damage = read
                    .is_damaged
                    .then(|| format!("{name} is damaged: mend it first; {}", notes.join("; ")));
                notes
            }
            Err(error) => {
                let note = format!("{}: {error}", shown(path));
                self.damage = Some(note.clone());
                vec![note]
            }
        }
    }

    /// Adds an entry and has it on disk.
    ///
    /// # Errors
    /// The file is damaged or cannot be written; it is as it was.
    pub(crate) fn add(&mut self, kind: &str, fields: Vec<(&str, Value)>) -> io::Result<()> {
        self.edit(|document| {
            let mut table = Table::new();
            for (key, value) in fields {
                table.insert(key, Item::Value(value));
            }
            match document.get_mut(kind) {
                None => {
                    let mut list = ArrayOfTables::new();
                    list.push(table);
                    document.insert(kind, Item::ArrayOfTables(list));
                    true
                }
                Some(Item::ArrayOfTables(list)) => {
                    list.push(table);
                    true
                }
                Some(Item::Value(Value::Array(list))) => {
                    list.push(Value::InlineTable(table.into_inline_table()));
                    true
                }
                Some(_) => false,
            }
        })
    }

    /// Takes an entry out, the first of its kind is number nought.
    ///
    /// # Errors
    /// As for [`CribFile::add`], or it changed on disk since.
    pub(crate) fn remove(&mut self, kind: &str, number: usize) -> io::Result<()> {
        let before = self.crib.clone();
        self.edit_checked(
            |crib| *crib == before,
            |document| match document.get_mut(kind) {
                Some(Item::ArrayOfTables(list)) if number < list.len() => {
                    list.remove(number);
                    if list.is_empty() {
                        document.remove(kind);
                    }
                    true
                }
                Some(Item::Value(Value::Array(list))) if number < list.len() => {
                    list.remove(number);
                    true
                }
                _ => false,
            },
        )
    }

    fn edit(&mut self, change: impl FnOnce(&mut DocumentMut) -> bool) -> io::Result<()> {
        self.edit_checked(|_| true, change)
    }

    fn edit_checked(
        &mut self,
        is_expected: impl FnOnce(&Crib) -> bool,
        change: impl FnOnce(&mut DocumentMut) -> bool,
    ) -> io::Result<()> {
        match self.path.clone() {
            Some(path) => alone(&path, || self.edit_alone(is_expected, change)),
            None => self.edit_alone(is_expected, change),
        }
    }

    fn edit_alone(
        &mut self,
        is_expected: impl FnOnce(&Crib) -> bool,
        change: impl FnOnce(&mut DocumentMut) -> bool,
    ) -> io::Result<()> {
        // Another program or a person may have written it since.
        self.read();
        if let Some(damage) = &self.damage {
            return Err(io::Error::other(damage.clone()));
        }
        if !is_expected(&self.crib) {
            return Err(io::Error::other("the crib has changed since: look at `crib` again"));
        }
        let mut document: DocumentMut = self.text.parse().map_err(io::Error::other)?;
        if document.get("version").is_none() {
            document.insert("version", toml_edit::value(VERSION));
        }
        if !change(&mut document) {
            return Err(io::Error::other("the crib's file holds something else under that name"));
        }
        let text = document.to_string();
        // What stands at the top speaks of the whole file, not of the entry
        // under it.
        let top = header(&self.text);
        let text = if text.starts_with(top) { text } else { format!("{top}{text}") };
        if let Some(path) = &self.path {
            replace(path, &text).map_err(|error| {
                io::Error::new(error.kind(), format!("{}: {error}", shown(path)))
            })?;
        }
        self.crib = read(&text).crib;
        self.text = text;
        Ok(())
    }
}

/// The comments at the top of a crib: up to its first blank line, or all that
/// stand there.
fn header(text: &str) -> &str {
    let mut end = 0;
    for line in text.split_inclusive('\n') {
        match line.trim_start().bytes().next() {
            None if end > 0 => return text.get(..end + line.len()).unwrap_or_default(),
            None | Some(b'#') => end += line.len(),
            Some(_) => break,
        }
    }
    text.get(..end).unwrap_or_default()
}

struct Read {
    crib: Crib,
    notes: Vec<String>,
    is_damaged: bool,
}

/// Reads a crib's text; what cannot be read is left out and said.
fn read(text: &str) -> Read {
    let mut notes = Vec::new();
    let mut left_out = text.to_owned();
    let document = loop {
        match Document::parse(left_out.clone()) {
            Ok(document) => break document,
            Err(error) => {
                let at = error.span().map_or(0, |span| span.start);
                let line = line_of(text, at);
                let first = error.message().lines().next().unwrap_or_default();
                notes.push(format!("line {line} cannot be read ({first}): its entry is left out"));
                if !blank_block(&mut left_out, at) {
                    return Read { crib: Crib::default(), notes, is_damaged: true };
                }
            }
        }
    };
    let mut reader = Reader { text, document: &document, notes, is_damaged: false };
    let positive = |size: Length| size.is_positive();
    let mut crib = Crib::default();
    crib.drill = reader.list("drill", |drill: &fits_core::job::OwnDrill| positive(drill.size));
    crib.drills = reader.list("drills", |set: &fits_core::job::DrillSet| !set.drills().is_empty());
    crib.reamer = reader.list("reamer", |reamer: &fits_core::job::Reamer| {
        positive(reamer.size) && reamer.cuts.is_none_or(positive)
    });
    crib.tap = reader.list("tap", |_: &fits_core::job::Tap| true);
    crib.pin = reader.list("pin", |pin: &fits_core::job::GaugePin| positive(pin.size));
    crib.bar = reader.list("bar", |bar: &fits_core::job::Bar| positive(bar.bore));
    crib.instrument = reader.list("instrument", |own: &fits_core::job::OwnInstrument| {
        positive(own.repeat) && own.bias.is_none_or(|bias| !bias.is_negative())
    });
    crib.material = reader.list("material", |_: &fits_core::job::OwnMaterial| true);
    reader.unknown();
    let Reader { notes, is_damaged, .. } = reader;
    let is_damaged = is_damaged || left_out != text;
    Read { crib, notes, is_damaged }
}

struct Reader<'a> {
    text: &'a str,
    document: &'a Document<String>,
    notes: Vec<String>,
    is_damaged: bool,
}

impl Reader<'_> {
    /// The entries of a kind that can be read and can be.
    fn list<T: DeserializeOwned>(&mut self, kind: &str, is_sound: impl Fn(&T) -> bool) -> Vec<T> {
        let Some(item) = self.document.get(kind) else { return Vec::new() };
        let Some(entries) = tables(item) else {
            let line = line_of(self.text, item.span().map_or(0, |span| span.start));
            self.left_out(line, &format!("`{kind}` is not a list of entries"));
            return Vec::new();
        };
        let mut list = Vec::new();
        for (at, table) in entries {
            let line = line_of(self.text, at);
            self.unknown_keys(kind, line, &table);
            match T::deserialize(Value::InlineTable(table).into_deserializer()) {
                Ok(entry) if is_sound(&entry) => list.push(entry),
                Ok(_) => self.left_out(line, &format!("a {kind} cannot have this size")),
                Err(error) => {
                    let message = error.message().lines().next().unwrap_or_default().to_owned();
                    self.left_out(line, &message);
                }
            }
        }
        list
    }

    fn left_out(&mut self, line: usize, why: &str) {
        self.is_damaged = true;
        self.notes.push(format!("line {line} cannot be read ({why}): its entry is left out"));
    }

    fn unknown_keys(&mut self, kind: &str, line: usize, table: &InlineTable) {
        let known = KINDS.iter().find(|(name, _)| *name == kind).map_or(&[][..], |(_, keys)| keys);
        for (key, _) in table {
            if !known.contains(&key) {
                self.notes.push(format!(
                    "line {line}: `{key}` is not understood in a {kind}; it is kept"
                ));
            }
        }
    }

    /// What stands at the top of the file and is none of ours.
    fn unknown(&mut self) {
        for (key, item) in self.document.iter() {
            if key == "version" {
                if item.as_integer().is_none_or(|version| version > VERSION) {
                    self.notes
                        .push("it was written by a later fits; what is understood is used".into());
                }
            } else if !KINDS.iter().any(|(name, _)| *name == key) {
                self.notes.push(format!("`{key}` is not understood; it is kept"));
            }
        }
    }
}

/// The entries of a list, each with its place.
fn tables(item: &Item) -> Option<Vec<(usize, InlineTable)>> {
    let start = |span: Option<std::ops::Range<usize>>| span.map_or(0, |span| span.start);
    match item {
        Item::ArrayOfTables(list) => Some(
            list.iter()
                .map(|table| (start(table.span()), table.clone().into_inline_table()))
                .collect(),
        ),
        Item::Value(Value::Array(list)) => list
            .iter()
            .map(|value| Some((start(value.span()), value.as_inline_table()?.clone())))
            .collect(),
        _ => None,
    }
}

/// Blanks the entry about a byte, from its heading to the next one; false
/// where nothing is left to blank.
fn blank_block(text: &mut String, at: usize) -> bool {
    let starts: Vec<usize> = std::iter::once(0)
        .chain(text.match_indices('\n').map(|(at, _)| at + 1))
        .filter(|start| {
            *start == 0 || text[*start..].trim_start_matches([' ', '\t']).starts_with('[')
        })
        .collect();
    let after = starts.partition_point(|start| *start <= at);
    let from = starts.get(after.saturating_sub(1)).copied().unwrap_or(0);
    let to = starts.get(after).copied().unwrap_or(text.len());
    // As many bytes: the places of later faults count in the text as it was.
    let blanked: String =
        text[from..to].bytes().map(|byte| if byte == b'\n' { '\n' } else { ' ' }).collect();
    if blanked == text[from..to] {
        return false;
    }
    text.replace_range(from..to, &blanked);
    true
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_damaged_entry_leaves_the_others() {
        let text = "# mine\nversion = 1\n\n[[reamer]]\nsize = \"20 mm\"\ncuts = \"20.01 mm\"\n\n\
                    [[reamer]]\nsize = = 3\n\n[[reamer]]\nsize = \"a lot\"\n\n[[drill]]\n\
                    size = \"8.5 mm\"\nshelf = 3\n\n[box]\nleft = true\n";
        let read = read(text);
        assert_eq!(read.crib.reamer.len(), 1);
        assert_eq!(read.crib.drill.len(), 1);
        assert!(read.is_damaged);
        let notes = read.notes.join("\n");
        for said in
            ["line 9 cannot be read", "line 11 cannot be read", "`shelf` is not", "`box` is"]
        {
            assert!(notes.contains(said), "{said}: {notes}");
        }
    }

    #[test]
    fn adding_and_removing_keeps_the_rest_of_the_text() {
        let folder = std::env::temp_dir();
        let mut file = CribFile {
            text: "# my drawer\n[[reamer]] # from the old lathe\nsize = \"20 mm\"\nmaker = \"?\"\n"
                .into(),
            ..CribFile::default()
        };
        assert!(folder.is_absolute());
        file.add("drill", vec![("size", "8.5 mm".into())]).expect("added");
        file.add("drill", vec![("size", "9 mm".into())]).expect("added");
        file.remove("drill", 0).expect("removed");
        assert_eq!(file.crib().drill.len(), 1);
        for kept in ["# my drawer", "# from the old lathe", "maker = \"?\"", "version = 1", "9 mm"]
        {
            assert!(file.text.contains(kept), "{kept}: {}", file.text);
        }
        assert!(file.remove("drill", 5).is_err());
    }
}
