//! The settings as a file: TOML. Read when the prompt opens, written when a
//! setting is typed there. A damaged file is said and left as it is.

use std::{io, path::PathBuf};

use fits_core::Length;
use toml_edit::{Document, DocumentMut, Item};

use crate::{
    files::{alone, line_of, replace, shown, text_of},
    query::{Dial, Machine, Units},
};

/// How one machine's dials read; nothing where it was not told.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(crate) struct Dials {
    pub(crate) dial: Option<Dial>,
    pub(crate) graduation: Option<Length>,
    pub(crate) dial_turn: Option<Length>,
}

/// What is remembered; nothing where it was never set.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct Kept {
    pub(crate) units: Option<Units>,
    pub(crate) dial: Option<Dial>,
    pub(crate) graduation: Option<Length>,
    pub(crate) dial_turn: Option<Length>,
    pub(crate) least_chip: Option<Length>,
    pub(crate) risk: Option<f64>,
    pub(crate) machine: Option<Machine>,
    pub(crate) boring_head: Dials,
    pub(crate) top_slide: Option<Length>,
    /// For bores and for shafts; both from the key that files had before.
    pub(crate) instrument: [Option<String>; 2],
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
    const TEXTS: [&str; 15] = [
        "units",
        "dial",
        "graduation",
        "dial_turn",
        "boring_head_dial",
        "boring_head_graduation",
        "boring_head_dial_turn",
        "least_chip",
        "top_slide",
        "machine",
        "risk",
        "instrument",
        "instrument_bores",
        "instrument_shafts",
        "material",
    ];
    let Some(text) = item.as_str() else { return !TEXTS.contains(&key) };
    let length = || text.parse::<Length>().ok().filter(|length| length.is_positive());
    let dial = || match text {
        "diameter" => Some(Dial::Diameter),
        "radius" => Some(Dial::Radius),
        _ => None,
    };
    let head = &mut kept.boring_head;
    let [bores, shafts] = &mut kept.instrument;
    let name = || Some(text.to_owned());
    match key {
        "units" => put(
            &mut kept.units,
            match text {
                "mm" => Some(Units::Millimetres),
                "in" => Some(Units::Inches),
                _ => None,
            },
        ),
        "dial" => put(&mut kept.dial, dial()),
        "graduation" => put(&mut kept.graduation, length()),
        "dial_turn" => put(&mut kept.dial_turn, length()),
        "boring_head_dial" => put(&mut head.dial, dial()),
        "boring_head_graduation" => put(&mut head.graduation, length()),
        "boring_head_dial_turn" => put(&mut head.dial_turn, length()),
        "least_chip" => put(&mut kept.least_chip, length()),
        "top_slide" => put(&mut kept.top_slide, length()),
        "machine" => put(&mut kept.machine, Machine::named(text)),
        "risk" => {
            let risk = text.parse::<f64>().ok();
            put(&mut kept.risk, risk.filter(|risk| *risk > 0.0 && *risk < 1.0))
        }
        // One for both, as files had it before.
        "instrument" => {
            for place in [bores, shafts] {
                *place = place.take().or_else(name);
            }
            true
        }
        "instrument_bores" => put(bores, name()),
        "instrument_shafts" => put(shafts, name()),
        "material" => put(&mut kept.material, name()),
        _ => true,
    }
}

/// Puts what was read to its place; false where nothing was.
fn put<T>(place: &mut Option<T>, value: Option<T>) -> bool {
    let is_read = value.is_some();
    *place = value;
    is_read
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
