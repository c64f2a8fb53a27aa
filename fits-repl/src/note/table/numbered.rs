//! Item numbers that run down the column of the parts.

use super::cell::is_ditto;
use crate::note::lexicon::{feature, stems};

/// The names of the parts in the order of their numbers: `1 Brake drum`, `2 Beam gudgeon`.
#[derive(Clone, Default)]
pub(in crate::note) struct Numbered {
    names: Vec<String>,
}

impl Numbered {
    /// The items of a column of parts; none where not every part has the next number.
    pub(super) fn of<'a>(cells: impl Iterator<Item = &'a str>) -> Self {
        let mut names: Vec<String> = Vec::new();
        for cell in cells.filter(|cell| !(cell.is_empty() || *cell == "-" || is_ditto(cell))) {
            match parted(cell) {
                Some((number, name)) if number == names.len() + 1 => names.push(name.to_owned()),
                Some((number, name)) if names.get(number - 1).is_some_and(|own| own == name) => {}
                _ => return Self::default(),
            }
        }
        Self { names: if names.len() > 1 { names } else { Vec::new() } }
    }

    /// The name of the part of a number.
    pub(in crate::note) fn name(&self, number: usize) -> Option<&str> {
        self.names.get(number.checked_sub(1)?).map(String::as_str)
    }

    /// The number of a cell and the name behind it.
    pub(super) fn own<'a>(&self, cell: &'a str) -> Option<(usize, &'a str)> {
        parted(cell).filter(|(number, name)| self.name(*number) == Some(name))
    }

    /// `4 bore`, `1 + 2`, `7 / pivot pin`: the names that a cell says, if it says one by
    /// its number or leads it with `same`.
    pub(super) fn named(&self, cell: &str) -> Option<Vec<String>> {
        if self.names.is_empty() {
            return None;
        }
        let mut by_number = false;
        let names = cell
            .split(['+', '&', ',', '/'])
            .map(|piece| {
                let piece = piece.trim();
                let full = self.full(piece);
                by_number |= full.is_some();
                full.unwrap_or_else(|| piece.to_owned())
            })
            .collect();
        by_number.then_some(names)
    }

    /// `4 bore` is the bore of the fourth; `8 rope` is none of the eighth.
    fn full(&self, piece: &str) -> Option<String> {
        let piece =
            ["item ", "no ", "#"].iter().find_map(|lead| piece.strip_prefix(lead)).unwrap_or(piece);
        let digits = piece.bytes().take_while(u8::is_ascii_digit).count();
        let name = self.name(piece[..digits].parse().ok()?)?;
        let rest = &piece[digits..];
        let last = rest.split_whitespace().last().unwrap_or_default().to_lowercase();
        let own = stems(name);
        let is_said = stems(rest).iter().all(|word| own.contains(word));
        (rest.is_empty() || rest.starts_with(' ') && (is_said || feature(&last).is_some()))
            .then(|| if is_said { name.to_owned() } else { format!("{name}{rest}") })
    }
}

/// `1 Brake drum`, `2. Beam gudgeon`: a number and a name.
fn parted(cell: &str) -> Option<(usize, &str)> {
    let digits = cell.bytes().take_while(u8::is_ascii_digit).count();
    let rest = &cell[digits..];
    let name = rest.strip_prefix(['.', ')', ':']).unwrap_or(rest);
    let number = cell[..digits].parse().ok().filter(|number| *number > 0)?;
    let is_name = name.starts_with(' ') && name.trim_start().starts_with(char::is_alphabetic);
    is_name.then(|| (number, name.trim_start()))
}
