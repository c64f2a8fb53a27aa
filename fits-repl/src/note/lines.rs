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
            // `mm. drum has to hold 400 m`: the unit alone opens it.
            let opens = clauses.first().map_or("", |clause| clause.trim());
            let is_alone = !opens.contains(' ') && unit_said(opens).is_some();
            clauses.retain(|clause| !has_size(clause) && (is_alone || says_for_all(clause)));
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
