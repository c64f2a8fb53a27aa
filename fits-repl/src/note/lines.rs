//! A line of a note: its cells, its date, its marks.

use fits_core::size::Unit;

use super::token::{Kind, Token, tokens};

/// The cells of a line with their places, and what parts them.
pub(super) fn cells(line: &str) -> (char, Vec<(usize, &str)>) {
    let count = |c: char| line.matches(c).count();
    if line.contains('\t') && line.trim().contains('\t') {
        return ('\t', split(line, '\t'));
    }
    if count('|') >= 2 {
        return (
            '|',
            split(line.trim_end().trim_end_matches('|'), '|')
                .into_iter()
                .skip(usize::from(line.trim_start().starts_with('|')))
                .collect(),
        );
    }
    if count(';') >= 2 {
        return (';', split(line, ';'));
    }
    if count(',') >= 3 && !line.contains(", ") {
        return (',', split(line, ','));
    }
    let mut found = Vec::new();
    let mut start = 0;
    let bytes = line.as_bytes();
    let mut at = 0;
    while at < bytes.len() {
        if bytes[at..].starts_with(b"  ") {
            let end = at + bytes[at..].iter().take_while(|b| **b == b' ').count();
            if at > start {
                found.push((start, &line[start..at]));
            }
            (start, at) = (end, end);
        } else {
            at += 1;
        }
    }
    if start < line.len() {
        found.push((start, &line[start..]));
    }
    (' ', found)
}

fn split(line: &str, sign: char) -> Vec<(usize, &str)> {
    let mut at = 0;
    line.split(sign)
        .map(|cell| {
            let start = at + (cell.len() - cell.trim_start().len());
            at += cell.len() + sign.len_utf8();
            (start, cell.trim())
        })
        .collect()
}

/// What a column holds.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Column {
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

/// The columns of a header row, with where each begins.
pub(super) fn header(line: &str) -> Option<(char, Vec<(usize, Column)>)> {
    let (sign, cells) = cells(line);
    let columns: Vec<_> = cells.iter().map(|(at, cell)| (*at, column(cell))).collect();
    let known = columns.iter().filter(|(_, column)| column.is_some()).count();
    let has_size = columns.iter().any(|(_, column)| *column == Some(Column::Size));
    (known >= 3 && has_size && !line.contains(|c: char| c.is_ascii_digit())).then(|| {
        (
            sign,
            columns.into_iter().map(|(at, column)| (at, column.unwrap_or(Column::Notes))).collect(),
        )
    })
}

/// The words of a header; shorter forms are their beginnings, or their letters
/// in order with vowels left out: `ft`, `mtl`, `q`.
#[rustfmt::skip]
const HEADERS: &[(Column, &[&str])] = &[
    (Column::Part, &["part", "item", "name", "piece", "component", "parts"]),
    (Column::Feature, &["feature", "where", "surface", "what", "place", "detail", "location", "ft"]),
    (Column::Size, &["size", "nominal", "dimension", "diameter", "basic", "drawing", "dwg", "drg", "sizes",
        "nom. size", "nominal size"]),
    (Column::Unit, &["unit", "units"]),
    (Column::Limits, &["limits", "tolerance", "deviation", "limit"]),
    (Column::Length, &["length", "long", "lg"]),
    (Column::Fit, &["fit", "class", "type", "fit type", "fits"]),
    (Column::Mate, &["with", "w/", "mate", "mates", "mates with", "goes with", "to", "in/on", "mating part",
        "mating", "against", "on/in", "goes in", "into"]),
    (Column::Reading, &["actual", "act", "reading", "read", "measured", "mic", "as made", "got", "readings", "is",
        "came out", "as cut"]),
    (Column::Done, &["done", "ok", "status", "made", "tick", "\u{2713}"]),
    (Column::Material, &["material", "mat'l", "mtl", "stuff", "stock"]),
    (Column::Count, &["qty", "quantity", "no", "no.", "count", "off", "number"]),
    (Column::Notes, &["notes", "note", "remarks", "comments", "remark"]),
];

fn column(cell: &str) -> Option<Column> {
    let word = cell.trim().trim_matches(['*', '.', ':', '_']).to_lowercase();
    let find = |is: &dyn Fn(&str) -> bool| {
        HEADERS
            .iter()
            .find(|(_, words)| words.iter().any(|word| is(word)))
            .map(|(column, _)| *column)
    };
    let short = |full: &str| {
        let mut rest = full.chars();
        full.starts_with(&word)
            || full.chars().next() == word.chars().next()
                && word.len() > 2
                && word.chars().all(|c| rest.any(|one| one == c))
    };
    let is_word = word.len() < 6 && word.chars().all(|c| c.is_ascii_alphabetic());
    find(&|full| full == word).or_else(|| find(&short).filter(|_| !word.is_empty() && is_word))
}

/// The unit that a line says for all that follows; the first of its clauses
/// that says one counts: `no unit is inches, the bought parts are in mm`.
pub(super) fn unit_line(line: &str) -> Option<Unit> {
    unit_said(line).or_else(|| {
        let mut clauses = line.split([',', ';', '.']).filter(|clause| !clause.trim().is_empty());
        let first = unit_said(clauses.next()?)?;
        (!tokens(line, 0).iter().any(|token| matches!(token.kind, Kind::Num(_)))).then_some(first)
    })
}

fn unit_said(line: &str) -> Option<Unit> {
    let found = tokens(line, 0);
    let lower = line.to_lowercase();
    let has_size = found.iter().any(|token| match &token.kind {
        Kind::Num(num) if lower.contains("unless") || lower.contains("general") => {
            !num.is_inch_shaped() && !num.is_whole()
        }
        Kind::Num(num) => !num.is_whole() || num.unit.is_some(),
        Kind::Dims(_) | Kind::Range(..) | Kind::Thread(_) => true,
        _ => false,
    });
    if has_size {
        return None;
    }
    let words: Vec<&str> = found.iter().filter_map(Token::word).collect();
    let says = |list: &[&str]| words.iter().any(|word| list.contains(word));
    let metric = says(&["mm", "millimetres", "millimeters", "metric"]);
    let inch = says(&["inch", "inches", "imperial"]) || says(&["in"]) && words.len() <= 3;
    let about = says(&[
        "all",
        "dimensions",
        "dims",
        "sizes",
        "units",
        "unit",
        "everything",
        "unless",
        "otherwise",
    ]);
    let alone = words.len() <= 3
        || line.to_lowercase().contains("(inch")
        || line.to_lowercase().contains("(mm");
    match (metric, inch) {
        (true, false) if about || alone => Some(Unit::Millimetre),
        (false, true) if about || alone => Some(Unit::Inch),
        _ => None,
    }
}

const MONTHS: &[&str] =
    &["jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec"];
const DAYS: &[&str] = &["mon", "tue", "wed", "thu", "fri", "sat", "sun"];

/// The date at a line's beginning, and where the rest begins; `dated` where
/// the note has dates elsewhere, so that `11/16` may be one.
#[allow(clippy::too_many_lines, reason = "one kind of words after another, each short")]
pub(super) fn date(line: &str, dated: bool) -> Option<(String, usize)> {
    let trimmed = line.trim_start();
    let mut at = line.len() - trimmed.len();
    let mut rest = trimmed;
    let word = |text: &str| -> String {
        text.chars().take_while(char::is_ascii_alphabetic).collect::<String>().to_lowercase()
    };
    let first = word(rest);
    let is_head = matches!(
        first.as_str(),
        "meas" | "measured" | "readings" | "reading" | "actual" | "actuals"
    );
    let is_day = first.len() >= 3
        && DAYS.iter().any(|day| first.starts_with(day))
        && (first.len() == 3 || first.ends_with("day"));
    if is_head || is_day {
        let skip = rest[first.len()..].len()
            - rest[first.len()..].trim_start_matches(['.', ',', ':', ' ']).len();
        at += first.len() + skip;
        rest = &line[at..];
        if !rest.starts_with(|c: char| c.is_ascii_digit())
            && (is_day || line[..at].trim_end().ends_with(':'))
        {
            return Some((line[..at].trim().to_owned(), at));
        }
    }
    let digits = |text: &str| text.bytes().take_while(u8::is_ascii_digit).count();
    let one = digits(rest);
    let finish = |length: usize| {
        let end = at + length;
        let tail = &line[end..];
        let skip = tail.len() - tail.trim_start_matches([' ', ':', ',', '.', '-']).len();
        let tail_is_word = skip > 0 || tail.is_empty();
        tail_is_word.then(|| (line[at..end].trim_end_matches('.').to_owned(), end + skip))
    };
    let month = |text: &str| {
        let word = word(text);
        (word.len() >= 3 && MONTHS.iter().any(|month| word.starts_with(month)) && word.len() != 4
            || word == "sept"
            || word == "june"
            || word == "july")
            .then_some(word.len())
    };
    if one == 0 {
        // `Oct 14`, `March 12th`.
        let length = month(rest)?;
        let after = rest[length..].trim_start_matches(['.', ' ']);
        let day = digits(after);
        if !(1..=2).contains(&day) {
            return None;
        }
        let suffix = ["st", "nd", "rd", "th"].iter().any(|end| after[day..].starts_with(end));
        return finish(rest.len() - after.len() + day + 2 * usize::from(suffix));
    }
    let value =
        |from: usize, length: usize| rest[from..from + length].parse::<u32>().unwrap_or(999);
    if one == 4
        && rest[4..].starts_with('-')
        && digits(&rest[5..]) == 2
        && rest[7..].starts_with('-')
    {
        return finish(10.min(rest.len()));
    }
    if one > 2 {
        return None;
    }
    let after = &rest[one..];
    for sign in ['/', '.', '-'] {
        let Some(next) = after.strip_prefix(sign) else { continue };
        let two = digits(next);
        if !(1..=2).contains(&two) {
            return None;
        }
        let (top, bottom) = (value(0, one), value(one + 1, two));
        if top > 31 || bottom > 31 || top == 0 || bottom == 0 {
            return None;
        }
        let more = next[two..].strip_prefix(sign);
        let year = more.map_or(0, digits);
        match sign {
            '/' => {
                let fraction = matches!(bottom, 2 | 4 | 8 | 16) && top < bottom && top % 2 == 1;
                if year == 0
                    && (fraction && !dated || next[two..].starts_with(['"', '-', 'm', 'i', 'x']))
                {
                    return None;
                }
                return finish(one + 1 + two + if year > 0 { year + 1 } else { 0 });
            }
            '.' if more.is_some() => return finish(one + 1 + two + 1 + year),
            '-' if year >= 2 => return finish(one + 1 + two + 1 + year),
            // `11-2  BORES`, but not `1-5 acme`.
            '-' if year == 0 && next[two..].starts_with([' ', ':']) => {
                let word = word(next[two..].trim_start_matches([' ', ':']));
                let form = [
                    "acme", "unc", "unf", "nc", "nf", "whit", "bsw", "tpi", "x", "in", "mm", "inch",
                ]
                .contains(&word.as_str());
                return if form || word.is_empty() { None } else { finish(one + 1 + two) };
            }
            _ => return None,
        }
    }
    let spaced = after.trim_start_matches([' ', '.']).trim_start();
    let suffix = ["st", "nd", "rd", "th"].iter().any(|end| after.starts_with(end));
    let spaced = if suffix { after[2..].trim_start() } else { spaced };
    let length = month(spaced)?;
    finish(rest.len() - spaced.len() + length)
}

/// The mark of a task at a line's beginning, `- [x]`, `*`, `1)`: is it done,
/// and where the rest begins.
pub(super) fn bullet(line: &str) -> (bool, usize) {
    let mut rest = line.trim_start();
    let mut done = false;
    for _ in 0..2 {
        for sign in ["- ", "* ", "+ ", "\u{2022}", "\u{2022} ", "o ", "> ", "\u{2013} "] {
            if let Some(after) = rest.strip_prefix(sign) {
                rest = after.trim_start();
                break;
            }
        }
        for (sign, is_done) in [
            ("[x]", true),
            ("[X]", true),
            ("[ ]", false),
            ("[]", false),
            ("\u{2713}", true),
            ("\u{2611}", true),
            ("\u{2610}", false),
        ] {
            if let Some(after) = rest.strip_prefix(sign) {
                (rest, done) = (after.trim_start(), is_done);
                break;
            }
        }
        let digits = rest.bytes().take_while(u8::is_ascii_digit).count();
        if (1..=2).contains(&digits) && rest[digits..].starts_with(") ") {
            rest = rest[digits + 2..].trim_start();
        }
    }
    (done, line.len() - rest.len())
}
