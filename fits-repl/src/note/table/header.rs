//! The header of a table: its columns by their words and by what stands in them.

use crate::note::{
    lines::{cells, cells_under},
    token::{Kind, Token, tokens},
};

/// What a column holds.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(in crate::note) enum Column {
    Part,
    Feature,
    Size,
    Unit,
    Limits,
    Length,
    Fit,
    Mate,
    Reading,
    Done,
    Material,
    Count,
    Notes,
}

/// The columns of a row, with where each begins, and what parts them.
pub(super) type Columns = (char, Vec<(usize, Column)>);

/// The words of a header; shorter forms are their beginnings, or their letters
/// in order with vowels left out: `ft`, `mtl`, `q`.
#[rustfmt::skip]
const HEADERS: &[(Column, &[&str])] = &[
    (Column::Part, &["part", "item", "name", "piece", "component", "parts", "bit"]),
    (Column::Feature, &["feature", "where", "surface", "what", "place", "detail", "location", "ft",
        "dim"]),
    (Column::Size, &["size", "nominal", "dimension", "diameter", "basic", "drawing", "dwg", "drg", "sizes",
        "nom. size", "nominal size"]),
    (Column::Unit, &["unit", "units"]),
    (Column::Limits, &["limits", "tolerance", "deviation", "limit"]),
    (Column::Length, &["length", "long", "lg"]),
    (Column::Fit, &["fit", "class", "type", "fit type", "fits", "how"]),
    (Column::Mate, &["with", "w/", "mate", "mates", "mates with", "goes with", "to", "in/on", "mating part",
        "mating", "against", "on/in", "goes in", "into"]),
    (Column::Reading, &["actual", "act", "reading", "read", "measured", "mic", "as made", "got", "readings", "is",
        "came out", "as cut", "found", "now", "checked"]),
    (Column::Done, &["done", "ok", "status", "made", "tick", "\u{2713}"]),
    (Column::Material, &["material", "mat'l", "mtl", "stuff", "stock", "made of", "metal"]),
    (Column::Count, &["qty", "quantity", "no", "no.", "count", "off", "number"]),
    (Column::Notes, &["notes", "note", "remarks", "comments", "remark"]),
];

/// The columns of a header row; one that its word does not tell goes by what
/// stands in it in the rows below.
pub(super) fn header(line: &str, below: &[&str]) -> Option<Columns> {
    if line.contains(|c: char| c.is_ascii_digit()) {
        return None;
    }
    let (sign, cells) = cells(line);
    let columns: Vec<_> = cells.iter().map(|(at, cell)| (*at, column(cell))).collect();
    let known = columns.iter().filter(|(_, column)| column.is_some()).count();
    if known < 2 || cells.len() < 3 {
        return None;
    }
    let starts: Vec<(usize, Column)> = cells.iter().map(|(at, _)| (*at, Column::Notes)).collect();
    let rows: Vec<Vec<(usize, &str)>> =
        below.iter().map(|row| placed(row, &(sign, starts.clone()))).collect();
    let mut all: Vec<Option<Column>> = columns.iter().map(|(_, column)| *column).collect();
    let held = |at: usize| -> Vec<&str> {
        let cells = rows.iter().flatten().filter(|(index, _)| *index == at);
        cells.map(|(_, cell)| *cell).filter(|cell| cell.len() > 1).collect()
    };
    for at in 0..all.len() {
        if all[at].is_none() {
            all[at] = by_content(&held(at)).filter(|column| !all.contains(&Some(*column)));
        }
    }
    let of = |all: &[Option<Column>], column| all.iter().position(|one| *one == Some(column));
    // Whatever its word, a column that names the parts says what goes with what.
    if let (Some(parts), None) = (of(&all, Column::Part), of(&all, Column::Mate)) {
        let names: Vec<Vec<String>> =
            held(parts).into_iter().map(crate::note::lexicon::stems).collect();
        let is_name = |cell: &&&str| {
            let said = crate::note::lexicon::stems(cell);
            names.iter().any(|name| !said.is_empty() && said.iter().all(|word| name.contains(word)))
        };
        let open = (0..all.len()).find(|at| {
            let cells = held(*at);
            all[*at].is_none_or(|column| column == Column::Notes)
                && cells.len() > 1
                && cells.iter().filter(is_name).count() * 2 > cells.len()
        });
        if let Some(open) = open {
            all[open] = Some(Column::Mate);
        }
    }
    // One whose figures are nearly those of the sizes was read.
    if let (Some(sizes), None) = (of(&all, Column::Size), of(&all, Column::Reading)) {
        let first = |cell: &str| {
            tokens(cell, 0).into_iter().find_map(|token| match token.kind {
                Kind::Num(num) => Some(num.value()),
                _ => None,
            })
        };
        let open = (0..all.len()).find(|at| {
            let pairs: Vec<(f64, f64)> = rows
                .iter()
                .filter_map(|row| {
                    let cell = |at: usize| row.iter().find(|(index, _)| *index == at);
                    first(cell(sizes)?.1).zip(first(cell(*at)?.1))
                })
                .collect();
            let near = pairs.iter().filter(|(size, read)| (read / size - 1.0).abs() < 0.02);
            all[*at].is_none() && pairs.len() > 1 && near.count() * 2 > pairs.len()
        });
        if let Some(open) = open {
            all[open] = Some(Column::Reading);
        }
    }
    let known = all.iter().flatten().count();
    let columns = starts.into_iter().zip(&all);
    (known >= 3 && all.contains(&Some(Column::Size))).then(|| {
        (sign, columns.map(|((at, _), column)| (at, column.unwrap_or(Column::Notes))).collect())
    })
}

/// The cells of a row, each with the index of its column.
pub(super) fn placed<'a>(row: &'a str, columns: &Columns) -> Vec<(usize, &'a str)> {
    let starts: Vec<usize> = columns.1.iter().map(|(start, _)| *start).collect();
    let cells = under(row, columns.0, &starts).1.into_iter();
    cells.map(|(index, _, cell)| (index, cell)).collect()
}

/// What parts the cells of a row, and the cells under columns that begin there: each with
/// the index of its column and its place.
pub(super) fn under<'a>(
    row: &'a str,
    sign: char,
    starts: &[usize],
) -> (char, Vec<(usize, usize, &'a str)>) {
    let (own, cells) = cells_under(row, starts.first().copied());
    let nearest = |at: usize| {
        let all = starts.iter().enumerate();
        all.min_by_key(|(_, start)| start.abs_diff(at)).map_or(0, |(index, _)| index)
    };
    let placed = cells.into_iter().enumerate().map(|(index, (at, cell))| {
        (if sign == ' ' { nearest(at) } else { index }, at, cell.trim())
    });
    (own, placed.collect())
}

/// The cells of one column in the rows below, down to the first line that is no row.
pub(super) fn column_of<'a>(
    column: Column,
    below: &[&'a str],
    columns: &Columns,
) -> impl Iterator<Item = &'a str> {
    let index = columns.1.iter().position(|(_, one)| *one == column);
    let has_words = |row: &&&str| row.contains(|c: char| c.is_alphanumeric());
    let rows = below.iter().take_while(|row| !row.trim().is_empty()).filter(has_words);
    let cells = rows
        .filter_map(move |row| placed(row, columns).into_iter().find(|(at, _)| Some(*at) == index));
    cells.map(|(_, cell)| cell).collect::<Vec<_>>().into_iter()
}

/// What the cells of a column are, where most are of one kind.
pub(super) fn by_content(cells: &[&str]) -> Option<Column> {
    use crate::note::lexicon::{feature, fit, is_material};
    let most = |is: &dyn Fn(&[Token]) -> bool| {
        let count = cells.iter().filter(|cell| is(&tokens(cell, 0))).count();
        cells.len() > 1 && count * 2 > cells.len()
    };
    let word = |is: &'static dyn Fn(&str) -> bool| {
        move |found: &[Token]| found.iter().filter_map(Token::word).any(is)
    };
    let fits = |found: &[Token]| {
        matches!(found.first().map(|token| &token.kind), Some(Kind::Class(_)))
            || found.first().and_then(Token::word).is_some_and(|word| fit(&[word]).is_some())
    };
    let offs = |found: &[Token]| found.iter().any(|token| matches!(token.kind, Kind::Off(..)));
    let sized = |found: &[Token]| {
        found.first().is_some_and(|token| {
            matches!(token.kind, Kind::Num(_) | Kind::Dims(_) | Kind::Range(..) | Kind::Thread(_))
        })
    };
    if most(&offs) {
        Some(Column::Limits)
    } else if most(&sized) {
        Some(Column::Size)
    } else if most(&fits) {
        Some(Column::Fit)
    } else if most(&word(&|word| feature(word).is_some())) {
        Some(Column::Feature)
    } else if most(&|found: &[Token]| {
        found.iter().any(|token| match &token.kind {
            Kind::Word(word) => is_material(word),
            kind => matches!(kind, Kind::Code(_)),
        })
    }) {
        Some(Column::Material)
    } else {
        None
    }
}

pub(in crate::note) fn column(cell: &str) -> Option<Column> {
    let word = cell.trim().trim_matches(['*', '.', ':', '_', '?']).to_lowercase();
    let find = |is: &dyn Fn(&str) -> bool| {
        let mut found =
            HEADERS.iter().filter(|(_, words)| words.iter().any(|word| is(word))).map(|(c, _)| *c);
        // `mat` may be the material or the mate: what it holds tells.
        found.next().filter(|_| found.next().is_none())
    };
    let short = |full: &str| {
        let mut rest = full.chars();
        full.starts_with(&word)
            || full.chars().next() == word.chars().next()
                && word.len() > 2
                && word.chars().all(|c| rest.any(|one| one == c))
    };
    let is_word = word.len() < 6 && word.chars().all(|c| c.is_ascii_alphabetic());
    let first = word.split_whitespace().next().unwrap_or_default();
    find(&|full| full == word)
        .or_else(|| find(&short).filter(|_| !word.is_empty() && is_word))
        .or_else(|| find(&|full| full == first))
}
