//! The unit of a bare number: as a line of the note says it, or as its numbers look.

use fits_core::{Length, job::whole::UnitFrom, size::Unit};

use super::{
    Line,
    token::{Kind, Num, tokens},
};

pub(super) struct Units {
    /// The unit that a line gives for all that follows, and that line.
    pub(super) said: Option<(Unit, usize)>,
    /// What bare numbers most likely are.
    likely: Unit,
}

impl Units {
    /// What most numbers of a note look like.
    pub(super) fn of(text: &str) -> Self {
        let mut votes = (0_usize, 0_usize);
        for token in text.lines().take(400).flat_map(|line| tokens(line, 0)) {
            let all: &[Num] = match &token.kind {
                Kind::Num(num) => std::slice::from_ref(num),
                Kind::Dims(all) => all,
                _ => &[],
            };
            for num in all {
                match num.unit {
                    Some(Unit::Millimetre) => votes.1 += 1,
                    Some(_) => votes.0 += 1,
                    None if num.is_inch_shaped() => votes.0 += 1,
                    None if num.places == 0 && num.over > 15 => votes.1 += 1,
                    None => {}
                }
            }
        }
        let likely = if votes.0 >= votes.1 { Unit::Inch } else { Unit::Millimetre };
        Self { said: None, likely }
    }

    /// The unit of the note.
    pub(super) fn of_note(&self) -> Unit {
        self.said.map_or(self.likely, |(unit, _)| unit)
    }

    /// The unit of a bare number, and how it is known.
    pub(super) fn unit_of(&self, num: &Num, row: Option<Unit>) -> (Unit, UnitFrom) {
        // `.5906 (15mm)`: three decimals of a note in inches are inches.
        let note = self.of_note();
        let is_inch = num.is_inch_shaped() || note == Unit::Inch && num.places > 2;
        if let Some(unit) = num.unit.or(row.filter(|row| !(is_inch && *row == Unit::Millimetre))) {
            return (unit, UnitFrom::Written);
        }
        if num.is_inch_shaped() && self.said.is_none_or(|(unit, _)| unit == Unit::Millimetre) {
            return (Unit::Inch, UnitFrom::Context);
        }
        match self.said {
            Some((unit, line)) => (unit, UnitFrom::Line(line)),
            None => (self.likely, UnitFrom::Context),
        }
    }

    /// May a bare number be in either unit, in a note of millimetres that has parts in
    /// inches? Nobody writes three decimals of a few millimetres.
    pub(super) fn is_open_unit(&self, num: &Num) -> bool {
        let metric = self.of_note() == Unit::Millimetre;
        metric && num.unit.is_none() && !num.is_inch_shaped() && num.places > 2 && num.value() < 8.0
    }

    pub(super) fn length(&self, num: &Num, row: Option<Unit>) -> Option<Length> {
        num.length(self.unit_of(num, row).0)
    }

    /// `1.4301` beside the name of a part: nobody writes four decimals of a
    /// millimetre.
    pub(super) fn is_steel_number(&self, kind: &Kind, line: &Line) -> bool {
        let Kind::Num(num) = kind else { return false };
        let metric = self.unit_of(num, line.unit).0 == Unit::Millimetre;
        metric && num.unit.is_none() && num.places == 4 && num.value() < 4.0 && line.declares
    }

    /// Written finer than a drawing is: four decimals of an inch, two of a millimetre.
    pub(super) fn is_fine(&self, num: &Num, line: &Line) -> bool {
        let metric = self.unit_of(num, line.unit).0 == Unit::Millimetre;
        num.places >= if metric { 2 } else { 4 }
    }
}
