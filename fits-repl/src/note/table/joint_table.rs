//! A table with a joint a row: the hole's part and size, the shaft's part and size, the
//! fit, what was measured of each.

use fits_core::job::whole::{FitSaid, NominalSize, SizeKind, UnitFrom};

use super::{cell::is_ditto, header::under, mates::fit_of_cell};
use crate::note::{
    Line,
    joint_rows::{joint_names, joint_side, side_names},
    lexicon::{feature, inwardness, stem, stems},
    lines::cells,
    token::{Kind, Num, Token, tokens},
    told::Told,
    wants::Wants,
};

/// What a column of such a table holds: of the hole, of the shaft, or of both.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Holds {
    Part(Side),
    Size(Side),
    Reading(Side),
    Fit,
    Number,
    Else,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Side {
    Hole,
    Shaft,
    Both,
}

/// The columns of a table of joints.
#[derive(Clone, Debug)]
pub(super) struct JointTable {
    sign: char,
    columns: Vec<(usize, Holds)>,
    /// The cells of the row above, for a ditto.
    above: Vec<String>,
}

/// A side of a joint: its part, its feature where the cell names one, and the place.
type Named = (usize, Option<(String, SizeKind)>);

impl JointTable {
    /// The columns by the words of a header and what stands under them: it names a part
    /// with the hole and one with the shaft.
    pub(super) fn of_header(line: &str, below: &[&str]) -> Option<Self> {
        let (sign, heads) = cells(line);
        if heads.len() < 3 || line.contains(|c: char| c.is_ascii_digit()) {
            return None;
        }
        let starts: Vec<usize> = heads.iter().map(|(at, _)| *at).collect();
        let rows: Vec<_> = below
            .iter()
            .take_while(|row| !row.trim().is_empty())
            .filter(|row| row.contains(|c: char| c.is_alphanumeric()))
            .map(|row| under(row, sign, &starts).1)
            .collect();
        let held = |index: usize| -> Vec<&str> {
            rows.iter()
                .filter_map(|row| row.iter().find(|(at, ..)| *at == index))
                .map(|(_, _, cell)| *cell)
                .filter(|cell| !cell.is_empty() && *cell != "-")
                .collect()
        };
        let mut columns: Vec<(usize, Holds)> = Vec::new();
        for (index, (at, head)) in heads.iter().enumerate() {
            columns.push((*at, holds(head, &held(index))));
        }
        // A joint that names both parts in one cell has one size for both.
        let has = |holds: Holds| columns.iter().any(|(_, one)| *one == holds);
        let parts = has(Holds::Part(Side::Hole)) && has(Holds::Part(Side::Shaft))
            || has(Holds::Part(Side::Both));
        let sized = columns.iter().any(|(_, one)| matches!(one, Holds::Size(_)));
        (parts && sized && rows.len() > 1).then_some(Self { sign, columns, above: Vec::new() })
    }

    /// A row of it; false where the line is none.
    pub(super) fn row(
        &mut self,
        told: &mut Told,
        wants: &mut Wants,
        line: &mut Line,
        raw: &str,
    ) -> bool {
        let starts: Vec<usize> = self.columns.iter().map(|(at, _)| *at).collect();
        let (sign, found) = under(raw, self.sign, &starts);
        if sign != self.sign || found.len() < 3 {
            return false;
        }
        let mut all: Vec<(usize, String)> = starts.iter().map(|at| (*at, String::new())).collect();
        for (index, at, cell) in found {
            if let Some(place) = all.get_mut(index) {
                *place = (at, cell.to_owned());
            }
        }
        for (index, (_, cell)) in all.iter_mut().enumerate() {
            if is_ditto(cell) {
                *cell = self.above.get(index).cloned().unwrap_or_default();
            }
        }
        self.above = all.iter().map(|(_, cell)| cell.clone()).collect();
        self.joint(told, wants, line, &all)
    }

    /// The cell of a column.
    fn cell<'a>(&self, all: &'a [(usize, String)], holds: Holds) -> Option<(usize, &'a str)> {
        let index = self.columns.iter().position(|(_, one)| *one == holds)?;
        all.get(index).map(|(at, cell)| (*at, cell.as_str())).filter(|(_, cell)| !cell.is_empty())
    }

    fn joint(
        &self,
        told: &mut Told,
        wants: &mut Wants,
        line: &mut Line,
        all: &[(usize, String)],
    ) -> bool {
        let named = self
            .cell(all, Holds::Part(Side::Hole))
            .zip(self.cell(all, Holds::Part(Side::Shaft)))
            .or_else(|| {
                let (at, cell) = self.cell(all, Holds::Part(Side::Both))?;
                let (one, other) = joint_names(cell)?;
                // `pin in lever`, `roller on pin`; else the inner of the two is the shaft.
                let rank = |name: &str| {
                    stems(name).iter().rev().find_map(|word| inwardness(word)).unwrap_or(0)
                };
                let says = |words: &[&str]| words.iter().any(|word| cell.contains(word));
                let is_led =
                    says(&[" in ", " into "]) || !says(&[" on "]) && rank(one) >= rank(other);
                let (shaft, hole) = if is_led { (one, other) } else { (other, one) };
                Some(((at, hole), (at, shaft)))
            });
        let Some((hole_cell, shaft_cell)) = named else { return false };
        let (hole, hole_rest) = part_of(told, hole_cell, line.number, SizeKind::Hole);
        let (shaft, shaft_rest) = part_of(told, shaft_cell, line.number, SizeKind::Shaft);
        let size = |side: Side, rest: &[Token]| -> Vec<Token> {
            let own = self.cell(all, Holds::Size(side));
            let own = own.or_else(|| self.cell(all, Holds::Size(Side::Both)));
            let said = own.map(|(at, cell)| tokens(cell, at)).unwrap_or_default();
            // `dowel 6 m6` beside `6`: what the cell of the size leaves open.
            let has = |is: fn(&Kind) -> bool| said.iter().any(|token| is(&token.kind));
            let is_size = |kind: &Kind| matches!(kind, Kind::Num(_) | Kind::Thread(_));
            let is_class = |kind: &Kind| matches!(kind, Kind::Class(_));
            let open = |token: &Token| match &token.kind {
                Kind::Class(_) => (!has(is_class)).then(|| token.clone()),
                Kind::Dims(all) if !has(is_size) => {
                    Some(Token { kind: Kind::Num(all.first()?.clone()), at: token.at.clone() })
                }
                kind => (is_size(kind) && !has(is_size)).then(|| token.clone()),
            };
            let open: Vec<Token> = rest.iter().filter_map(open).collect();
            [said.clone(), open].concat()
        };
        let sizes = [size(Side::Hole, &hole_rest), size(Side::Shaft, &shaft_rest)];
        let is_thread =
            |found: &Vec<Token>| found.iter().any(|token| matches!(token.kind, Kind::Thread(_)));
        let threaded = sizes.iter().any(is_thread);
        let (hole_name, shaft_name) = side_names(told, &shaft, &hole, threaded);
        let side = |side| if threaded { SizeKind::Thread } else { side };
        let features = [
            (hole.0, hole_name, side(SizeKind::Hole), &sizes[0], hole_cell),
            (shaft.0, shaft_name, side(SizeKind::Shaft), &sizes[1], shaft_cell),
        ]
        .map(|(part, name, side, sizes, (at, cell))| {
            let other = if part == hole.0 { shaft.0 } else { hole.0 };
            let name = free_name(told, (part, other), &name, side, sizes, line);
            let feature = told.feature(line, part, &name, side, at..at + cell.len());
            told.say(line, feature);
            give_size(told, line, feature, sizes);
            feature
        });
        // `dowel 6 m6 x 20`: how long it is.
        for (part, rest) in [(hole.0, &hole_rest), (shaft.0, &shaft_rest)] {
            let dims = rest.iter().find_map(|token| match &token.kind {
                Kind::Dims(all) => Some((all.last()?, &token.at)),
                _ => None,
            });
            if let Some((num, at)) = dims {
                told.sized(line, part, ("length", SizeKind::Length), num, at);
            }
        }
        for (index, (_, holds)) in self.columns.iter().enumerate() {
            if *holds == Holds::Else && !all[index].1.is_empty() {
                told.remark(line.number, &all[index].1, Some(hole.0));
            }
        }
        self.readings(told, line, all, features);
        let fit = self.cell(all, Holds::Fit).map(|(_, cell)| fit_of_cell(cell));
        mated(told, wants, line, features, &fit.unwrap_or_default());
        true
    }

    /// `47.011 / 46.995`, `- / 25.003`, or a column each.
    fn readings(
        &self,
        told: &mut Told,
        line: &mut Line,
        all: &[(usize, String)],
        [hole, shaft]: [usize; 2],
    ) {
        let first = |at: usize, text: &str| -> Option<Num> {
            tokens(text, at).into_iter().find_map(|token| match token.kind {
                Kind::Num(num) => Some(num),
                _ => None,
            })
        };
        for (side, feature) in [(Side::Hole, hole), (Side::Shaft, shaft)] {
            if let Some((at, cell)) = self.cell(all, Holds::Reading(side))
                && let Some(num) = first(at, cell)
            {
                told.reading(line, feature, &num);
            }
        }
        let Some((at, cell)) = self.cell(all, Holds::Reading(Side::Both)) else { return };
        match cell.split_once(" /").or_else(|| cell.split_once("/ ")) {
            Some((one, other)) => {
                let behind = at + cell.len() - other.len();
                for (feature, at, text) in [(hole, at, one), (shaft, behind, other)] {
                    if let Some(num) = first(at, text) {
                        told.reading(line, feature, &num);
                    }
                }
            }
            None => {
                if let Some(num) = first(at, cell) {
                    told.ask_measured(line, &num);
                }
            }
        }
    }
}

/// What a column holds, by the words of its head and by what stands in it.
fn holds(head: &str, held: &[&str]) -> Holds {
    let head = head.to_lowercase();
    let words: Vec<String> = head
        .split(|c: char| !c.is_alphanumeric())
        .filter(|word| !word.is_empty())
        .map(stem)
        .collect();
    let says = |list: &[&str]| words.iter().any(|word| list.contains(&word.as_str()));
    let of_hole = says(&["hole", "bore", "outer", "female", "hub", "h"]);
    let of_shaft = says(&["shaft", "pin", "inner", "male", "s"]);
    let side = match (of_hole, of_shaft) {
        (true, false) => Side::Hole,
        (false, true) => Side::Shaft,
        _ => Side::Both,
    };
    let most = |is: &dyn Fn(&[Token]) -> bool| {
        let count = held.iter().filter(|cell| is(&tokens(cell, 0))).count();
        !held.is_empty() && count * 2 > held.len()
    };
    let is_sized = most(&|found| {
        matches!(
            found.first().map(|token| &token.kind),
            Some(Kind::Num(_) | Kind::Thread(_) | Kind::Dims(_))
        )
    });
    if says(&["fit", "class", "how"]) {
        Holds::Fit
    } else if says(&["measured", "actual", "read", "reading", "mic", "got", "made"]) {
        Holds::Reading(side)
    } else if is_sized {
        let is_named = of_hole || of_shaft;
        let is_size = says(&["size", "nominal", "dia", "diameter", "\u{f8}", "basic"]);
        match side {
            Side::Both if !is_size || is_named => Holds::Number,
            side => Holds::Size(side),
        }
    } else if of_hole != of_shaft {
        Holds::Part(side)
    } else if says(&["joint"]) && held.iter().filter(|cell| joint_names(cell).is_some()).count() > 1
    {
        Holds::Part(Side::Both)
    } else {
        Holds::Else
    }
}

/// The part that a cell names, with what stands behind its name: `dowel 6 m6 x 20`.
fn part_of(
    told: &mut Told,
    (at, cell): (usize, &str),
    line: usize,
    side: SizeKind,
) -> (Named, Vec<Token>) {
    let found = tokens(cell, at);
    let is_name = |token: &Token| matches!(token.kind, Kind::Word(_) | Kind::Code(_));
    let end = found.iter().position(|token| !is_name(token)).unwrap_or(found.len());
    let cut = found.get(end).filter(|_| end > 0).map_or(cell.len(), |token| token.at.start - at);
    let name = cell[..cut].trim();
    let rest = if end > 0 { found[end..].to_vec() } else { Vec::new() };
    // `6005 outer`: the ring of a bearing by its place.
    for (ring, own) in [("outer", "outside"), ("inner", "bore")] {
        let name = name.strip_suffix(" ring").unwrap_or(name);
        if let Some(bearing) = name.strip_suffix(ring).map(str::trim).filter(|it| !it.is_empty()) {
            let part = joint_side(told, bearing, line).0;
            told.job.parts[part].bought = true;
            let own = if feature(own).is_some() { own } else { ring };
            return ((part, Some((own.to_owned(), side))), rest);
        }
    }
    (joint_side(told, name, line), rest)
}

/// A name of a feature that no other size of its part bears: `od`, else `wheel seat`.
fn free_name(
    told: &Told,
    (part, other): (usize, usize),
    name: &str,
    side: SizeKind,
    sizes: &[Token],
    line: &Line,
) -> String {
    let said = stems(name);
    let size = sizes.iter().find_map(|token| match &token.kind {
        Kind::Num(num) => told.units.length(num, line.unit),
        _ => None,
    });
    let is_other = |name: &[String]| {
        told.features_of(part).any(|(at, one)| {
            one.side == side && told.names.features[at] == name && one.size() != size
        })
    };
    if !is_other(&said) {
        return name.to_owned();
    }
    let other = told.job.parts[other].name.split_whitespace().last().unwrap_or_default();
    let what = if side == SizeKind::Shaft { "seat" } else { "hole" };
    let by_other = format!("{other} {what}");
    let counted = (2..100).map(|count| format!("{by_other} {count}"));
    let mut names = std::iter::once(by_other.clone()).chain(counted);
    names.find(|name| !is_other(&stems(name))).unwrap_or(by_other)
}

/// `47 H7`, `25 j5`, `M16`, `20 +0.1/0`: the size of one side.
fn give_size(told: &mut Told, line: &mut Line, feature: usize, sizes: &[Token]) {
    for token in sizes {
        match &token.kind {
            Kind::Num(num) if told.job.features[feature].nominal.is_none() => {
                told.size_num(line, feature, num);
            }
            Kind::Thread(name) => {
                let from = (told.job.features[feature].unit, UnitFrom::Written);
                told.size(line, feature, NominalSize::Thread(name.clone()), from);
            }
            Kind::Class(class) => told.job.features[feature].class = Some(class.clone()),
            _ => {}
        }
    }
}

/// Both features of a joint want each other.
fn mated(
    told: &mut Told,
    wants: &mut Wants,
    line: &mut Line,
    [hole, shaft]: [usize; 2],
    fit: &FitSaid,
) {
    for (own, other) in [(shaft, hole), (hole, shaft)] {
        let part = told.job.features[other].part;
        let name = told.job.parts[part].name.clone();
        let place = told.job.features[other].at.clone();
        wants.finish_mate(
            told,
            line,
            &mut Some((name, Some(part), place, true)),
            Some(own),
            &mut fit.clone(),
            Some(other),
        );
    }
}
