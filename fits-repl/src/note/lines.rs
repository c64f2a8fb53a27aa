//! A line of a note: its cells, its date, its marks.

use fits_core::size::Unit;

use super::token::{Kind, Token, tokens};

/// The cells of a line with their places, and what parts them.
pub(super) fn cells(line: &str) -> (char, Vec<(usize, &str)>) {
    cells_under(line, None)
}

/// The cells of a row, where the first of its header stands so far in: a bar
/// before that is an outer one, a later one ends a blank cell.
pub(super) fn cells_under(line: &str, first: Option<usize>) -> (char, Vec<(usize, &str)>) {
    let count = |c: char| line.matches(c).count();
    if line.contains('\t') && line.trim().contains('\t') {
        return ('\t', split(line, '\t'));
    }
    if count('|') >= 2 {
        return (
            '|',
            split(line.trim_end().trim_end_matches('|'), '|')
                .into_iter()
                .skip(usize::from(
                    line.trim_start().starts_with('|')
                        && first.is_none_or(|first| line.find('|').is_some_and(|bar| bar < first)),
                ))
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

/// Do bullets stand at the margin with others further in under them?
pub(super) fn is_outline(text: &str) -> bool {
    let bulleted = |line: &str| line.starts_with(['-', '*', '+', '\u{2022}', '[']);
    let lines: Vec<&str> = text.lines().filter(|line| !line.trim().is_empty()).collect();
    let nested = lines.windows(2).filter(|pair| {
        bulleted(pair[0]) && pair[1].starts_with([' ', '\t']) && bulleted(pair[1].trim_start())
    });
    nested.count() > 1 && !text.contains("\n#")
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

/// The columns of a row, with where each begins, and what parts them.
pub(super) type Columns = (char, Vec<(usize, Column)>);

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
        let names: Vec<Vec<String>> = held(parts).into_iter().map(super::lexicon::stems).collect();
        let is_name = |cell: &&&str| {
            let said = super::lexicon::stems(cell);
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
    let first = columns.1.first().map(|(at, _)| *at);
    let cells = cells_under(row, first).1.into_iter().enumerate();
    let nearest = |at: usize| {
        let all = columns.1.iter().enumerate();
        all.min_by_key(|(_, (start, _))| start.abs_diff(at)).map_or(0, |(index, _)| index)
    };
    cells
        .map(|(index, (at, cell))| {
            (if columns.0 == ' ' { nearest(at) } else { index }, cell.trim())
        })
        .collect()
}

/// What the cells of a column are, where most are of one kind.
fn by_content(cells: &[&str]) -> Option<Column> {
    use super::lexicon::{feature, fit, is_material};
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

pub(super) fn column(cell: &str) -> Option<Column> {
    let word = cell.trim().trim_matches(['*', '.', ':', '_']).to_lowercase();
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

/// The unit that a line says for all that follows; the first of its clauses
/// that says one counts: `no unit is inches, the bought parts are in mm`.
pub(super) fn unit_line(line: &str) -> Option<Unit> {
    const BREAKS: &[&str] = &[",", ";", ". ", " - ", "  ", " unless ", " except ", " but "];
    // Most lines name no unit: no time is spent on them.
    let holds = |word: &str| {
        line.as_bytes().windows(word.len()).any(|part| part.eq_ignore_ascii_case(word.as_bytes()))
    };
    let names = ["mm", "inch", "metre", "meter", "metric", "imperial"].into_iter().any(holds);
    if !(names || holds("in") && line.split_whitespace().nth(3).is_none()) {
        return None;
    }
    unit_said(line).or_else(|| {
        let mut clauses = vec![line];
        for sign in BREAKS {
            clauses = clauses.into_iter().flat_map(|clause| clause.split(sign)).collect();
        }
        // A clause with a size of its own speaks of that: `5" gauge. sizes in mm`.
        let has_size =
            |text: &str| tokens(text, 0).iter().any(|it| matches!(it.kind, Kind::Num(_)));
        clauses.retain(|clause| !clause.trim().is_empty());
        if has_size(line) {
            clauses.retain(|clause| !has_size(clause) && says_for_all(clause));
        }
        let first = clauses.first().and_then(|clause| unit_said(clause));
        first.or_else(|| {
            clauses.into_iter().skip(1).filter(|clause| says_for_all(clause)).find_map(unit_said)
        })
    })
}

/// Does a clause speak of all sizes?
fn says_for_all(line: &str) -> bool {
    const ALL: &[&str] = &[
        "all",
        "dimensions",
        "dims",
        "sizes",
        "units",
        "unit",
        "everything",
        "unless",
        "otherwise",
        "throughout",
        "everywhere",
    ];
    tokens(line, 0).iter().filter_map(Token::word).any(|word| ALL.contains(&word))
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
    let about = says_for_all(line);
    // `press in slots` has no unit.
    let says_only = |unit: &str| {
        words.len() <= 3 && words.iter().all(|word| *word == unit || says_for_all(word))
    };
    let inch = says(&["inch", "inches", "imperial"]) || says(&["in"]) && says_only("in");
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
    // `12th. Pins 11.995`
    if suffix && after[2..].starts_with(['.', ':']) {
        return finish(one + 3);
    }
    let spaced = if suffix { after[2..].trim_start() } else { spaced };
    let length = month(spaced)?;
    finish(rest.len() - spaced.len() + length)
}

/// How long a date with its year is that stands at the beginning of a text:
/// `30-9-24`, `2026-10-04`. `12/18/20` may be the sizes of a bush.
pub(super) fn calendar(text: &str) -> Option<usize> {
    let sign = text.trim_start_matches(|c: char| c.is_ascii_digit()).chars().next()?;
    if !matches!(sign, '-' | '/' | '.') {
        return None;
    }
    let end = text
        .find(|c: char| !(c.is_ascii_digit() || c == sign))
        .map_or(text.len(), |end| text[..end].trim_end_matches(sign).len());
    let parts: Vec<(usize, u32)> = text[..end]
        .split(sign)
        .map(|part| part.parse().ok().map(|value| (part.len(), value)))
        .collect::<Option<_>>()?;
    let day = |(long, value): (usize, u32)| long < 3 && (1..=31).contains(&value);
    let is_date = match *parts.as_slice() {
        [(4, _), month, last] => sign == '-' && day(month) && day(last),
        [one, other, year] => {
            let is_year = year.0 == 4 && (1900..2100).contains(&year.1)
                || year.0 == 2 && (20..40).contains(&year.1) && (sign != '/' || one.1 > other.1);
            day(one) && day(other) && (one.1 < 13 || other.1 < 13) && is_year
        }
        _ => false,
    };
    (is_date && !text[end..].starts_with(char::is_alphanumeric)).then_some(end)
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
        // `3) `, and `3. ` before a word.
        if (1..=2).contains(&digits)
            && let Some(after) = rest[digits..].strip_prefix(") ").or_else(|| {
                let after = rest[digits..].strip_prefix(". ")?;
                after.trim_start().starts_with(char::is_alphabetic).then_some(after)
            })
        {
            rest = after.trim_start();
        }
    }
    (done, line.len() - rest.len())
}
