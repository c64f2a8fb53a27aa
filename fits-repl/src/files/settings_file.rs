//! The settings as a file: TOML. Read when the prompt opens, written when a
//! setting is typed there. A damaged file is said and left as it is.

use std::{io, path::PathBuf};

use fits_core::Length;
use toml_edit::{Document, DocumentMut, Item};

use super::{alone, line_of, replace, shown, text_of};
use crate::query::{Dial, Units};

/// What is remembered; nothing where it was never set.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct Kept {
    pub(crate) units: Option<Units>,
    pub(crate) dial: Option<Dial>,
    pub(crate) graduation: Option<Length>,
    pub(crate) dial_turn: Option<Length>,
    pub(crate) least_chip: Option<Length>,
    pub(crate) risk: Option<f64>,
    pub(crate) instrument: Option<String>,
    pub(crate) material: Option<String>,
}

/// The file of the settings.
#[derive(Clone, Debug)]
pub(crate) struct SettingsFile {
    path: PathBuf,
    damage: Option<String>,
}

impl SettingsFile {
    /// The settings of a file, none where there is no file, and what was
    /// wrong with it.
    pub(crate) fn load(path: PathBuf) -> (Self, Kept, Vec<String>) {
        let mut file = Self { path, damage: None };
        let name = shown(&file.path);
        match text_of(&file.path) {
            Ok(text) => {
                let (kept, notes) = read(&text.unwrap_or_default());
                let notes: Vec<String> =
                    notes.into_iter().map(|note| format!("{name}: {note}")).collect();
                file.damage = notes.first().cloned();
                (file, kept, notes)
            }
            Err(error) => {
                let note = format!("{name}: {error}: the usual settings are used");
                file.damage = Some(note.clone());
                (file, Kept::default(), vec![note])
            }
        }
    }

    /// Writes one setting.
    ///
    /// # Errors
    /// The file is damaged, or cannot be written; it is as it was.
    pub(crate) fn keep(&self, key: &str, value: Option<&str>) -> io::Result<()> {
        if let Some(damage) = &self.damage {
            return Err(io::Error::other(damage.clone()));
        }
        let named = |error: io::Error| {
            io::Error::new(error.kind(), format!("{}: {error}", shown(&self.path)))
        };
        alone(&self.path, || self.keep_alone(key, value)).map_err(named)
    }

    fn keep_alone(&self, key: &str, value: Option<&str>) -> io::Result<()> {
        let text = text_of(&self.path)?.unwrap_or_default();
        let mut document: DocumentMut = text.parse().map_err(io::Error::other)?;
        if document.get("version").is_none() {
            document.insert("version", toml_edit::value(1));
        }
        match value {
            Some(value) => document[key] = toml_edit::value(value),
            None => {
                document.remove(key);
            }
        }
        replace(&self.path, &document.to_string())
    }
}

fn read(text: &str) -> (Kept, Vec<String>) {
    let mut kept = Kept::default();
    let document = match Document::parse(text.to_owned()) {
        Ok(document) => document,
        Err(error) => {
            let line = line_of(text, error.span().map_or(0, |span| span.start));
            let first = error.message().lines().next().unwrap_or_default();
            let note = format!(
                "line {line} cannot be read ({first}): the usual settings are used, \
                 and the file is left as it is"
            );
            return (kept, vec![note]);
        }
    };
    let mut notes = Vec::new();
    for (key, item) in document.iter() {
        if !set(&mut kept, key, item) {
            let line = line_of(text, item.span().map_or(0, |span| span.start));
            notes.push(format!(
                "line {line}: `{key}` cannot be read: the usual is used, and the file is left as \
                 it is"
            ));
        }
    }
    (kept, notes)
}

/// Takes one setting over; unknown ones stay in the file and say nothing.
fn set(kept: &mut Kept, key: &str, item: &Item) -> bool {
    let text = item.as_str();
    match (key, text) {
        ("units", Some("mm")) => kept.units = Some(Units::Millimetres),
        ("units", Some("in")) => kept.units = Some(Units::Inches),
        ("dial", Some("diameter")) => kept.dial = Some(Dial::Diameter),
        ("dial", Some("radius")) => kept.dial = Some(Dial::Radius),
        ("graduation" | "dial_turn" | "least_chip", Some(text)) => match text.parse::<Length>() {
            Ok(length) if length.is_positive() => {
                let to = match key {
                    "graduation" => &mut kept.graduation,
                    "dial_turn" => &mut kept.dial_turn,
                    _ => &mut kept.least_chip,
                };
                *to = Some(length);
            }
            _ => return false,
        },
        ("risk", Some(text)) => match text.parse::<f64>() {
            Ok(risk) if risk > 0.0 && risk < 1.0 => kept.risk = Some(risk),
            _ => return false,
        },
        ("instrument", Some(name)) => kept.instrument = Some(name.to_owned()),
        ("material", Some(name)) => kept.material = Some(name.to_owned()),
        (
            "units" | "dial" | "graduation" | "dial_turn" | "least_chip" | "risk" | "instrument"
            | "material",
            _,
        ) => return false,
        _ => {}
    }
    true
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_damaged_file_says_its_line() {
        let (kept, notes) = read("units = \"in\"\ndial = \"sideways\"\n");
        assert_eq!((kept.units, kept.dial), (Some(Units::Inches), None));
        assert!(notes[0].starts_with("line 2: `dial`"), "{notes:?}");
        let (kept, notes) = read("units = \"in\"\ndial = \n");
        assert_eq!(kept, Kept::default());
        assert!(notes[0].starts_with("line 2 cannot be read"), "{notes:?}");
    }
}
