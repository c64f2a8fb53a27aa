//! What stands in a cell of a table: names, marks, limits.

use fits_core::job::whole::SizeKind;

use super::header::Column;
use crate::note::{
    clause::parted::has_size,
    lexicon::{feature, is_material, stem},
    names::is_instance,
    token::{Kind, Num, Token, tokens},
};

/// `4 +0.2` in a cell of its own: the rest of the size's limits is the size.
pub(super) fn one_sided(size: &[Token]) -> Option<(Num, Num)> {
    let [Token { kind: Kind::Num(size), .. }, sign, Token { kind: Kind::Num(off), at }] = size
    else {
        return None;
    };
    let zero = Num { over: 0, under: 1, ..off.clone() };
    if sign.at.end != at.start || off.value() > size.value() / 4.0 {
        return None;
    }
    match sign.kind {
        Kind::Sign('+') => Some((zero, off.clone())),
        Kind::Sign('-') => Some((Num { over: -off.over, ..off.clone() }, zero)),
        _ => None,
    }
}

/// `Shaft (C45)`, `Flywheel (old)`: do the brackets say what it is made of or in what
/// state it is, and not which of several it is?
pub(super) fn is_aside(inside: &[Token]) -> bool {
    let mut inside = inside.iter().take_while(|token| !token.is_sign(')'));
    inside.all(|token| match &token.kind {
        Kind::Word(word) => is_material(word) || is_state(word) || word == "bought",
        Kind::Code(_) | Kind::Class(_) | Kind::Sign(',') => true,
        _ => false,
    })
}

pub(super) fn is_state(word: &str) -> bool {
    matches!(word, "old" | "new" | "existing")
}

/// As the cell above.
pub(super) fn is_ditto(cell: &str) -> bool {
    matches!(cell, "\"" | "''" | "do" | "ditto" | "\u{3003}" | "\u{201d}" | ",,")
}

/// Cells that run into the next column with one blank between: `hnd end 1`.
pub(super) fn at_columns<'a>(
    cells: &[(usize, &'a str)],
    columns: &[(usize, Column)],
) -> Vec<(usize, &'a str)> {
    let mut out = Vec::new();
    for &(at, cell) in cells {
        let inside = columns.iter().map(|(start, _)| start.wrapping_sub(at)).find(|within| {
            (1..cell.len()).contains(within)
                && cell.as_bytes()[within - 1] == b' '
                && cell[*within..]
                    .starts_with(|c: char| c.is_ascii_digit() || matches!(c, '.' | '+' | '-'))
        });
        match inside {
            Some(within) => out.extend([(at, &cell[..within]), (at + within, &cell[within..])]),
            None => out.push((at, cell)),
        }
    }
    out
}

/// `bore A,B` is two names; `arm L,R` too.
pub(super) fn each_of(name: &str) -> Vec<String> {
    let name = name.trim();
    let Some((head, marks)) = name.rsplit_once(' ') else { return vec![name.to_owned()] };
    let marks: Vec<&str> = marks.split([',', '&', '/', '+']).map(str::trim).collect();
    let all = marks.len() > 1 && marks.iter().all(|mark| is_instance(&stem(&mark.to_lowercase())));
    if all {
        marks.iter().map(|mark| format!("{head} {mark}")).collect()
    } else {
        vec![name.to_owned()]
    }
}

pub(super) fn has_words(text: &str) -> bool {
    // `1/4 sq` is what it is, and no more.
    text.split_whitespace()
        .any(|word| feature(&word.to_lowercase()).is_some() && !word.eq_ignore_ascii_case("sq"))
        || !has_size(&tokens(text, 0))
}

pub(super) fn is_mark(token: &Token) -> bool {
    matches!(&token.kind, Kind::Num(num) if num.is_whole() && num.unit.is_none() && num.over < 5)
}

/// `w x h x l`, `od x id`: what each of several sizes is of.
pub(super) fn listed_as(name: &str, is_key: bool, count: usize) -> Option<Vec<(String, SizeKind)>> {
    let across = if is_key { SizeKind::Other } else { SizeKind::Length };
    let one = |word: &str| {
        let (name, side) = match word {
            "w" | "width" | "b" => ("width", across),
            "h" | "height" => ("height", across),
            "l" | "lg" | "long" | "length" => ("length", SizeKind::Length),
            "t" | "thk" | "thick" | "thickness" => ("thickness", SizeKind::Length),
            "d" | "dia" | "od" => ("od", SizeKind::Shaft),
            "bore" | "id" => ("bore", SizeKind::Hole),
            _ => return None,
        };
        Some((name.to_owned(), side))
    };
    let name = name.to_lowercase();
    let words: Vec<&str> = name.split_whitespace().filter(|word| *word != "x").collect();
    if words.len() != count || count < 2 {
        return None;
    }
    words.into_iter().map(one).collect()
}
