//! What stands at a place of the line: a number with its unit, a class, a
//! thread, a temperature… Words are the table's.

use fits_core::standards::{iso286::Class, thread::Thread};

use super::table::word_at;

/// A unit that was written.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Unit {
    Inch,
    Millimetre,
    Thou,
    Tenth,
    Micron,
}

/// What bare numbers are.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum System {
    Inches,
    Millimetres,
}

/// A number as it was written.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Num {
    /// As a plain query has it, without a unit.
    pub(super) text: String,
    /// Its value, to weigh what can be meant: figures go by the text.
    pub(super) value: f64,
    pub(super) unit: Option<Unit>,
    pub(super) is_fraction: bool,
    /// Digits after the point.
    pub(super) places: usize,
    /// It begins with a point.
    pub(super) leads: bool,
    pub(super) is_negative: bool,
}

impl Num {
    pub(super) fn mm(&self, system: System) -> f64 {
        self.value
            * match (self.unit, system) {
                (Some(Unit::Inch), _) | (None, System::Inches) => 25.4,
                (Some(Unit::Millimetre), _) | (None, System::Millimetres) => 1.0,
                (Some(Unit::Thou), _) => 0.0254,
                (Some(Unit::Tenth), _) => 0.00254,
                (Some(Unit::Micron), _) => 0.001,
            }
    }

    /// As a plain query has it, with its unit.
    pub(super) fn plain(&self, system: System) -> String {
        let unit = match (self.unit, system) {
            (Some(Unit::Inch), _) | (None, System::Inches) => "in",
            (Some(Unit::Millimetre), _) | (None, System::Millimetres) => "mm",
            (Some(Unit::Thou), _) => " thou",
            (Some(Unit::Tenth), _) => " tenths",
            (Some(Unit::Micron), _) => "um",
        };
        format!("{}{unit}", self.text)
    }
}

/// What stands at a place.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Token {
    /// A comma, a colon, a question mark, a full stop.
    Break,
    Number(Num),
    /// Deviations from the number before.
    Deviations {
        upper: Num,
        lower: Num,
        is_both: bool,
    },
    Span(Num, Num),
    Thread {
        name: String,
        is_inch: bool,
    },
    ThreadClass(String),
    Hole(String),
    Shaft(String),
    Pair(String),
    /// A class of B4.1.
    InchClass(String),
    Gauge(String),
    Percent(String),
    Temperature(String),
    Torque(String),
    Force(String),
    PerInch(String),
    Times(u32),
    Angle(String),
    /// A ball bearing by its number: bore and outside.
    Bearing(String, String),
    General(char),
    Grade(u32),
    Plus,
    Minus,
    /// Between two sizes of one part.
    Cross,
    /// `class 3`.
    AnsiClass(u32),
    Word {
        name: &'static str,
        kind: &'static str,
    },
}

fn spaces(line: &str, at: usize) -> usize {
    let rest = line.get(at..).unwrap_or_default();
    at + rest.len() - rest.trim_start_matches([' ', '\t']).len()
}

fn digits(line: &str, at: usize) -> usize {
    let rest = line.get(at..).unwrap_or_default();
    at + rest.bytes().take_while(u8::is_ascii_digit).count()
}

fn byte(line: &str, at: usize) -> Option<u8> {
    line.as_bytes().get(at).copied()
}

/// No letter or figure goes on here.
fn ends(line: &str, at: usize) -> bool {
    byte(line, at).is_none_or(|next| !next.is_ascii_alphanumeric())
}

fn power_of_two(text: &str) -> bool {
    text.parse().is_ok_and(|lower: u32| lower.is_power_of_two() && (2..=256).contains(&lower))
}

/// A vulgar fraction `a/b`, its end.
fn fraction(line: &str, at: usize) -> Option<usize> {
    let upper = digits(line, at);
    if upper == at || byte(line, upper) != Some(b'/') {
        return None;
    }
    let lower = digits(line, upper + 1);
    let (above, below) = (line.get(at..upper)?, line.get(upper + 1..lower)?);
    let (above, below): (u32, u32) = (above.parse().ok()?, below.parse().ok()?);
    (power_of_two(line.get(upper + 1..lower)?)
        && above > 0
        && above < 64 * below
        && byte(line, lower) != Some(b'.'))
    .then_some(lower)
}

fn fraction_value(text: &str) -> f64 {
    let mut parts = text.split('/').map(|part| part.parse().unwrap_or(f64::NAN));
    parts.next().unwrap_or(f64::NAN) / parts.next().unwrap_or(1.0)
}

const SPELLED: &[(&str, &str, f64)] = &[
    ("half", "1/2", 0.5),
    ("quarter", "1/4", 0.25),
    ("three quarters", "3/4", 0.75),
    ("three quarter", "3/4", 0.75),
    ("eighth", "1/8", 0.125),
    ("three eighths", "3/8", 0.375),
    ("five eighths", "5/8", 0.625),
    ("seven eighths", "7/8", 0.875),
    ("sixteenth", "1/16", 0.0625),
    ("one", "1", 1.0),
    ("two", "2", 2.0),
    ("three", "3", 3.0),
    ("four", "4", 4.0),
    ("five", "5", 5.0),
    ("six", "6", 6.0),
    ("eight", "8", 8.0),
    ("ten", "10", 10.0),
    ("twelve", "12", 12.0),
    ("twenty", "20", 20.0),
    ("thirty", "30", 30.0),
];

/// The words of a line from here: so many, small, and where they end.
fn words(line: &str, at: usize, count: usize) -> Option<(String, usize)> {
    let (mut text, mut from) = (String::new(), at);
    for _ in 0..count {
        let start = spaces(line, from);
        let start = if byte(line, start) == Some(b'-') { start + 1 } else { start };
        let (word, end) = word_at(line, start)?;
        if !text.is_empty() {
            text.push(' ');
        }
        text.push_str(&word);
        from = end;
    }
    Some((text, from))
}

/// `half inch`, `three quarters`, `a thou`, `inch and a quarter`.
fn spelled_number(line: &str, at: usize) -> Option<(Num, usize)> {
    if !byte(line, at)?.is_ascii_alphabetic() {
        return None;
    }
    let num = |text: &str, value: f64, unit: Option<Unit>| Num {
        text: text.into(),
        value,
        unit,
        is_fraction: text.contains('/'),
        places: 0,
        leads: false,
        is_negative: false,
    };
    for (lead, text, value) in [
        ("inch and a half", "1-1/2", 1.5),
        ("inch and a quarter", "1-1/4", 1.25),
        ("inch and an eighth", "1-1/8", 1.125),
        ("inch and three quarters", "1-3/4", 1.75),
    ] {
        let count = lead.split(' ').count();
        if let Some((said, end)) = words(line, at, count)
            && said == lead
        {
            return Some((num(text, value, Some(Unit::Inch)), end));
        }
    }
    let unit_after = |end: usize| unit(line, end, true);
    for (spelled, text, value) in SPELLED {
        let count = spelled.split(' ').count();
        let Some((said, end)) = words(line, at, count) else { continue };
        if said != *spelled {
            continue;
        }
        // `half a thou`, `half an inch`
        if let Some((article, after)) = words(line, end, 1)
            && (article == "a" || article == "an" || article == "of")
            && let Some((unit, after)) = unit_after(after)
        {
            return Some((num(text, *value, Some(unit)), after));
        }
        if let Some((unit, after)) = unit_after(end) {
            return Some((num(text, *value, Some(unit)), after));
        }
        if text.contains('/') && *spelled != "half" && *spelled != "quarter" {
            return Some((num(text, *value, Some(Unit::Inch)), end));
        }
        return None;
    }
    if let Some((article, after)) = words(line, at, 1)
        && (article == "a" || article == "an")
        && let Some((unit, end)) = unit_after(after)
        && matches!(unit, Unit::Thou | Unit::Tenth | Unit::Inch)
    {
        return Some((num("1", 1.0, Some(unit)), end));
    }
    None
}

/// A unit here, or after spaces. `in` after a space is for the view to judge.
fn unit(line: &str, at: usize, is_spelled: bool) -> Option<(Unit, usize)> {
    if byte(line, at) == Some(b'"') {
        return Some((Unit::Inch, at + 1));
    }
    if line.get(at..).is_some_and(|rest| rest.starts_with("''")) {
        return Some((Unit::Inch, at + 2));
    }
    let from = spaces(line, at);
    let is_glued = from == at;
    let from = if byte(line, from) == Some(b'-')
        && byte(line, from + 1).is_some_and(|next| next.is_ascii_alphabetic())
    {
        from + 1
    } else {
        from
    };
    let (word, end) = word_at(line, from)?;
    let unit = match &*word {
        "in" if is_glued => Unit::Inch,
        "inch" | "inches" | "in." | "ins" => Unit::Inch,
        "mm" | "millimetres" | "millimeters" | "millimetre" | "millimeter" | "mils_" | "mill"
        | "mils." => Unit::Millimetre,
        "thou" | "thous" | "thousandths" | "thousandth" | "mil" | "mils" => Unit::Thou,
        "tenths" | "tenth" => Unit::Tenth,
        "um" | "micron" | "microns" | "\u{b5}m" | "\u{3bc}m" => Unit::Micron,
        _ => return None,
    };
    let _ = is_spelled;
    Some((unit, end))
}

/// A number without sign, and its unit.
pub(super) fn number(line: &str, at: usize) -> Option<(Num, usize)> {
    let first = byte(line, at)?;
    let (text, value, is_fraction, places, leads, end) = if let Some(end) = fraction(line, at) {
        let text = line.get(at..end)?;
        (text.to_owned(), fraction_value(text), true, 0, false, end)
    } else if first.is_ascii_digit() || (first == b'.' && byte(line, at + 1)?.is_ascii_digit()) {
        let whole = digits(line, at);
        let dot = byte(line, whole) == Some(b'.')
            && (byte(line, whole + 1).is_some_and(|next| next.is_ascii_digit()));
        if dot {
            let end = digits(line, whole + 1);
            let written = line.get(at..end)?;
            let text = if whole == at { format!("0{written}") } else { written.to_owned() };
            let value = text.parse().ok()?;
            (text, value, false, end - whole - 1, whole == at, end)
        } else {
            // 1-1/4 and 1 1/4
            let joint = byte(line, whole);
            let more =
                matches!(joint, Some(b'-' | b' ')).then(|| fraction(line, whole + 1)).flatten();
            if let Some(end) = more {
                let part = line.get(whole + 1..end)?;
                let units: f64 = line.get(at..whole)?.parse().ok()?;
                (
                    format!("{}-{part}", line.get(at..whole)?),
                    units + fraction_value(part),
                    true,
                    0,
                    false,
                    end,
                )
            } else {
                let text = line.get(at..whole)?.to_owned();
                let value = text.parse().ok()?;
                (text, value, false, 0, false, whole)
            }
        }
    } else {
        return None;
    };
    // `1e9` is a way of writing that no shop has, and no class of 1 mm.
    if text.len() > 12
        || (matches!(byte(line, end), Some(b'e' | b'E'))
            && byte(line, end + 1)
                .is_some_and(|next| next.is_ascii_digit() || next == b'-' || next == b'+'))
    {
        return None;
    }
    let mut num = Num { text, value, unit: None, is_fraction, places, leads, is_negative: false };
    // A trailing point, as in `20.`
    let mut after = end;
    if let Some((unit, end)) = unit(line, end, false) {
        num.unit = Some(unit);
        after = end;
    } else if is_fraction {
        num.unit = Some(Unit::Inch);
    }
    Some((num, after))
}

/// A number with a sign, or nought said as `nothing` or `zero`.
fn signed(line: &str, at: usize) -> Option<(Num, usize)> {
    let sign = byte(line, at)?;
    let (is_negative, from) = match sign {
        b'+' => (false, at + 1),
        b'-' => (true, at + 1),
        _ => {
            let (word, end) = word_at(line, at)?;
            match &*word {
                "plus" => (false, end),
                "minus" => (true, end),
                _ => return None,
            }
        }
    };
    let from = spaces(line, from);
    let (mut num, end) =
        nought(line, from).or_else(|| number(line, from)).or_else(|| spelled_number(line, from))?;
    num.is_negative = is_negative;
    Some((num, end))
}

fn nought(line: &str, at: usize) -> Option<(Num, usize)> {
    let (word, end) = word_at(line, at)?;
    matches!(&*word, "nothing" | "zero" | "nought" | "naught" | "nowt").then(|| {
        let num = Num {
            text: "0".into(),
            value: 0.0,
            unit: None,
            is_fraction: false,
            places: 0,
            leads: false,
            is_negative: false,
        };
        (num, end)
    })
}

/// `+.001 -0`, `+0/-.001`, `+/- .002`, `plus nothing minus half a thou`.
fn deviations(line: &str, at: usize) -> Option<(Token, usize)> {
    let rest = line.get(at..)?;
    for both in ["+/-", "+-", "-/+", "\u{b1}", "plus or minus", "plus minus"] {
        if rest.get(..both.len()).is_some_and(|start| start.eq_ignore_ascii_case(both)) {
            let from = spaces(line, at + both.len());
            let (num, end) = number(line, from).or_else(|| spelled_number(line, from))?;
            return Some((
                Token::Deviations { upper: num.clone(), lower: num, is_both: true },
                end,
            ));
        }
    }
    let (first, end) = signed(line, at)?;
    let mut from = spaces(line, end);
    let mut slashed = false;
    if byte(line, from) == Some(b'/') {
        from = spaces(line, from + 1);
        slashed = true;
    } else if let Some((word, after)) = word_at(line, from)
        && word == "and"
    {
        from = spaces(line, after);
    }
    let (second, end) = match signed(line, from) {
        Some(second) => second,
        None if slashed => {
            let (num, end) = number(line, from)?;
            if num.value != 0.0 {
                return None;
            }
            (num, end)
        }
        None => return None,
    };
    let is_lower = |num: &Num| num.is_negative || num.value == 0.0;
    let (upper, lower) = if first.is_negative || (first.value == 0.0 && !second.is_negative) {
        (second, first)
    } else {
        (first, second)
    };
    if !is_lower(&lower) && upper.value < lower.value {
        return None;
    }
    Some((Token::Deviations { upper, lower, is_both: false }, end))
}

fn class(line: &str, at: usize) -> Option<(Token, usize)> {
    let rest = line.get(at..)?;
    let letters = rest.bytes().take_while(u8::is_ascii_alphabetic).count();
    if letters == 0 || letters > 2 {
        return None;
    }
    let upper = rest.get(..letters)?.to_ascii_uppercase();
    if matches!(&*upper, "RC" | "LC" | "LT" | "LN" | "FN") {
        let from = spaces(line, at + letters);
        let end = digits(line, from);
        let most = match &*upper {
            "RC" => 9,
            "LC" => 11,
            "LT" => 6,
            "LN" => 3,
            _ => 5,
        };
        let grade: u32 = line.get(from..end)?.parse().ok()?;
        return ((1..=most).contains(&grade) && ends(line, end))
            .then(|| (Token::InchClass(format!("{upper}{grade}")), end));
    }
    let end = digits(line, at + letters);
    // `H8f7`: the other class may follow at once.
    let goes_on = byte(line, end).is_some_and(|next| next.is_ascii_alphabetic())
        && end > at + letters
        && class(line, end).is_some();
    if !(ends(line, end) || goes_on) || end == at + letters {
        return None;
    }
    let text = line.get(at..end)?;
    let _: Class = text.parse().ok()?;
    let is_hole = text.starts_with(|c: char| c.is_ascii_uppercase());
    Some((if is_hole { Token::Hole(text.to_owned()) } else { Token::Shaft(text.to_owned()) }, end))
}

/// One class, or two as a pair: the hole first whatever came first.
fn classes(line: &str, at: usize) -> Option<(Token, usize)> {
    let (first, end) = class(line, at)?;
    if matches!(first, Token::InchClass(_)) {
        return Some((first, end));
    }
    let slash = byte(line, end) == Some(b'/');
    let from = if slash { end + 1 } else { spaces(line, end) };
    let second = class(line, from);
    let pair = match (&first, second) {
        (Token::Hole(hole), Some((Token::Shaft(shaft), end))) => Some((hole.clone(), shaft, end)),
        (Token::Shaft(shaft), Some((Token::Hole(hole), end))) => Some((hole, shaft.clone(), end)),
        // Typed without capitals: h of both is the hole's.
        (Token::Shaft(a), Some((Token::Shaft(b), end)))
            if a.starts_with('h') && !b.starts_with('h') =>
        {
            Some((a.to_ascii_uppercase(), b, end))
        }
        _ => None,
    };
    match pair {
        Some((hole, shaft, end)) => Some((Token::Pair(format!("{hole}/{shaft}")), end)),
        None if slash => None,
        None => Some((first, end)),
    }
}

const SERIES: &[&str] = &[
    "unc",
    "unf",
    "unef",
    "un",
    "uns",
    "npt",
    "bsw",
    "bsf",
    "whit",
    "whitworth",
    "bsp",
    "bspp",
    "acme",
    "stub acme",
    "me",
    "model engineer",
    "model engineers",
];

#[allow(clippy::too_many_lines, reason = "one rule after another, each short")]
fn thread(line: &str, at: usize) -> Option<(Token, usize)> {
    let first = byte(line, at)?;
    let rest = line.get(at..)?;
    let known = |name: String, end: usize| {
        let parsed: Thread = name.parse().ok()?;
        Some((Token::Thread { is_inch: parsed.form().is_inch(), name }, end))
    };
    let series = |end: usize| {
        let from = spaces(line, end);
        [2, 1].into_iter().find_map(|count| {
            let (words, end) = words(line, from, count)?;
            let word = SERIES.iter().find(|known| **known == words)?;
            Some((*word, end))
        })
    };
    if matches!(first, b'M' | b'm') && byte(line, at + 1)?.is_ascii_digit() {
        let (num, mut end) = plain_number(line, at + 1)?;
        let mut name = format!("M{num}");
        let from = spaces(line, end);
        let mut has_pitch = false;
        if let Some(times) =
            line.get(from..)?.chars().next().filter(|c| matches!(c, 'x' | 'X' | '\u{d7}' | '*'))
            && let Some((pitch, after)) = plain_number(line, spaces(line, from + times.len_utf8()))
        {
            name = format!("{name}x{pitch}");
            end = after;
            has_pitch = true;
        }
        if !ends(line, end) || (first == b'm' && !has_pitch) {
            return None;
        }
        return known(name, end);
    }
    if matches!(first, b'G' | b'R' | b'T') {
        let letters = rest.bytes().take_while(u8::is_ascii_alphabetic).count();
        let lead = rest.get(..letters)?;
        let from = spaces(line, at + letters);
        if matches!(lead, "G" | "R" | "Rp" | "Rc") {
            let end = fraction(line, from)
                .or_else(|| Some(digits(line, from)).filter(|end| *end > from))?;
            return known(format!("{lead}{}", line.get(from..end)?), end);
        }
        if matches!(lead, "Tr" | "TR") {
            let (size, end) = plain_number(line, from)?;
            let from = spaces(line, end);
            let from = match word_at(line, from) {
                Some((word, end)) if word == "by" => end,
                _ if matches!(byte(line, from)?, b'x' | b'X') => from + 1,
                _ => return None,
            };
            let (pitch, end) = plain_number(line, spaces(line, from))?;
            return known(format!("Tr{size}x{pitch}"), end);
        }
        return None;
    }
    let (from, is_number) = match first {
        b'#' => (at + 1, true),
        _ => (at, false),
    };
    if !byte(line, from)?.is_ascii_digit() {
        return None;
    }
    let whole = digits(line, from);
    let mixed =
        matches!(byte(line, whole), Some(b'-' | b' ')).then(|| fraction(line, whole + 1)).flatten();
    let size_end = fraction(line, from).or(mixed).unwrap_or(whole);
    let size = line.get(from..size_end)?.replace(' ', "-");
    // BA
    let after = spaces(line, size_end);
    if size_end == whole
        && let Some((word, end)) = word_at(line, after)
        && word == "ba"
    {
        return known(format!("{size}BA"), end);
    }
    // A pitch: `-20`, ` x 5`, ` - 20`.
    let pitch = if byte(line, size_end) == Some(b'-') {
        let end = digits(line, size_end + 1);
        let is_plain = end > size_end + 1
            && ends(line, end)
            && !matches!(byte(line, end), Some(b'/'))
            && !(byte(line, end) == Some(b'.')
                && byte(line, end + 1).is_some_and(|next| next.is_ascii_digit()));
        is_plain.then_some((size_end + 1, end))
    } else if byte(line, after).is_some_and(|next| matches!(next, b'x' | b'X')) {
        let from = spaces(line, after + 1);
        let end = digits(line, from);
        (end > from
            && ends(line, end)
            && series(end).is_some_and(|(word, _)| !matches!(word, "npt" | "bsp")))
        .then_some((from, end))
    } else if let Some((_, end)) = series(size_end) {
        // A pitch after the name: `1/2 whit 12`? It is told apart by the table.
        let (word, _) = series(size_end)?;
        let name = match word {
            "bspp" | "bsp" => format!("G{size}"),
            "whit" | "whitworth" => format!("{size} BSW"),
            _ => format!("{size} {}", word.to_uppercase()),
        };
        return known(name, end);
    } else {
        None
    };
    let (from_pitch, end) = pitch?;
    let tpi: u32 = line.get(from_pitch..end)?.parse().ok()?;
    if !(2..=100).contains(&tpi) {
        return None;
    }
    let is_gauge = is_number
        || (size_end == whole
            && size.parse::<u32>().is_ok_and(|size| {
                size <= 12 && tpi >= 24 && !(size == 1 && matches!(tpi, 24..=28))
            })
            && matches!(&*size, "0" | "1" | "2" | "3" | "4" | "5" | "6" | "8" | "10" | "12"));
    let base = if is_gauge { format!("#{size}-{tpi}") } else { format!("{size}-{tpi}") };
    if let Some((word, end)) = series(end) {
        let name = match word {
            "npt" => format!("{size} NPT"),
            "bspp" => format!("G{size}"),
            "bsw" | "whit" | "whitworth" => format!("{size}-{tpi} BSW"),
            "me" | "model engineer" | "model engineers" => format!("{size}-{tpi} Whitworth"),
            "acme" => format!("{base} Acme"),
            "stub acme" => format!("{base} Stub Acme"),
            _ => format!("{base} {}", word.to_uppercase()),
        };
        // A pitch that contradicts the name is for the question to ask about.
        if word == "npt" && npt_pitch(&size) != Some(tpi) {
            // Two names that contradict: the question asks which.
            return Some((
                Token::Thread { is_inch: true, name: format!("{base}|{size} NPT") },
                end,
            ));
        }
        return known(name, end);
    }
    known(base, end)
}

/// The pitch of a taper pipe thread (ASME B1.20.1).
fn npt_pitch(size: &str) -> Option<u32> {
    Some(match size {
        "1/16" | "1/8" => 27,
        "1/4" | "3/8" => 18,
        "1/2" | "3/4" => 14,
        _ => return None,
    })
}

/// A decimal without a unit.
fn plain_number(line: &str, at: usize) -> Option<(String, usize)> {
    let whole = digits(line, at);
    let end = if byte(line, whole) == Some(b'.')
        && byte(line, whole + 1).is_some_and(|next| next.is_ascii_digit())
    {
        digits(line, whole + 1)
    } else {
        whole
    };
    let text = line.get(at..end)?;
    (!text.is_empty())
        .then(|| (if text.starts_with('.') { format!("0{text}") } else { text.to_owned() }, end))
}

/// What a number with more than a length after it is.
fn quantity(line: &str, at: usize) -> Option<(Token, usize)> {
    let from = if byte(line, at) == Some(b'-') { at + 1 } else { at };
    let (text, end) = plain_number(line, from)?;
    let text = line.get(at..from)?.to_owned() + &text;
    if byte(line, end) == Some(b'%') {
        return Some((Token::Percent(text), end + 1));
    }
    let after = spaces(line, end);
    let is_glued = after == end;
    let gap = |at: usize| byte(line, at) == Some(b'-');
    let rest = line.get(after..)?;
    if let Some(degrees) = ["\u{b0}", "degrees", "degree", "degs", "deg"]
        .iter()
        .find(|word| rest.get(..word.len()).is_some_and(|start| start.eq_ignore_ascii_case(word)))
    {
        let after = spaces(line, after + degrees.len());
        let scale = line.get(after..).unwrap_or_default();
        for (word, letter) in [("fahrenheit", "F"), ("celsius", "C"), ("c", "C"), ("f", "F")] {
            if scale.get(..word.len()).is_some_and(|start| start.eq_ignore_ascii_case(word))
                && ends(line, after + word.len())
            {
                return Some((Token::Temperature(format!("{text}{letter}")), after + word.len()));
            }
        }
        return Some((Token::Angle(text), after));
    }
    if let Some(letter) = rest.chars().next().filter(|c| matches!(c, 'F' | 'C'))
        && ends(line, after + 1)
        && (is_glued || letter == 'F' || letter == 'C')
    {
        return Some((Token::Temperature(format!("{text}{letter}")), after + 1));
    }
    let (word, word_end) = word_at(line, after)?;
    match &*word {
        "tpi" => return Some((Token::PerInch(text), word_end)),
        "percent" => return Some((Token::Percent(text), word_end)),
        "nm" | "n\u{b7}m" => return Some((Token::Torque(format!("{text} Nm")), word_end)),
        "kn" => return Some((Token::Force(format!("{text} kN")), word_end)),
        "lbf" | "lbs" | "lb" | "pounds" if !gap(word_end) => {
            let next = word_at(line, spaces(line, word_end));
            return match next {
                Some((next, end)) if matches!(&*next, "ft" | "foot" | "feet") => {
                    Some((Token::Torque(format!("{text} lbf-ft")), end))
                }
                Some((next, end)) if matches!(&*next, "in") => {
                    Some((Token::Torque(format!("{text} lbf-in")), end))
                }
                _ => Some((Token::Force(format!("{text} lbf")), word_end)),
            };
        }
        "lbf-ft" | "lbft" => return Some((Token::Torque(format!("{text} lbf-ft")), word_end)),
        "tons" | "ton" => return Some((Token::Force(format!("{text} tons")), word_end)),
        "ft" | "foot" | "in" | "inch" | "lb" => {
            let next_at = spaces(line, if gap(word_end) { word_end + 1 } else { word_end });
            let (next, next_end) = word_at(line, next_at)?;
            let is_pound = matches!(&*next, "lb" | "lbs" | "lbf" | "pounds" | "pound");
            return match &*word {
                "ft" | "foot" if is_pound => {
                    Some((Token::Torque(format!("{text} lbf-ft")), next_end))
                }
                "in" | "inch" if is_pound => {
                    Some((Token::Torque(format!("{text} lbf-in")), next_end))
                }
                "lb" if next == "ft" => Some((Token::Torque(format!("{text} lbf-ft")), next_end)),
                "lb" if next == "in" => Some((Token::Torque(format!("{text} lbf-in")), next_end)),
                _ => None,
            };
        }
        "newton"
            if rest.get(..13).is_some_and(|start| start.eq_ignore_ascii_case("newton metres")) =>
        {
            return Some((Token::Torque(format!("{text} Nm")), after + 13));
        }
        _ => {}
    }
    None
}

fn gauge(line: &str, at: usize) -> Option<(Token, usize)> {
    let rest = line.get(at..)?;
    if rest.starts_with('#') {
        let end = digits(line, at + 1);
        return (end > at + 1 && ends(line, end))
            .then(|| (Token::Gauge(line[at..end].to_owned()), end));
    }
    let (word, end) = word_at(line, at)?;
    let end = if byte(line, end) == Some(b'.') { end + 1 } else { end };
    match &*word {
        "no" | "number" | "num" | "nr" => {
            let from = spaces(line, end);
            let end = digits(line, from);
            let value: u32 = line.get(from..end)?.parse().ok()?;
            ((1..=97).contains(&value) && ends(line, end))
                .then(|| (Token::Gauge(format!("#{value}")), end))
        }
        "letter" => {
            let from = spaces(line, end);
            let letter = line.get(from..from + 1)?;
            (letter.bytes().all(|byte| byte.is_ascii_alphabetic()) && ends(line, from + 1)).then(
                || (Token::Gauge(format!("letter {}", letter.to_ascii_uppercase())), from + 1),
            )
        }
        _ => {
            // `F drill`, `drill F`
            let letter = line.get(at..=at)?;
            let next = word_at(line, spaces(line, end)).map(|(next, _)| next);
            let before = line.get(..at)?.trim_end().to_lowercase();
            let is_drill = |word: &str| matches!(word, "drill" | "drills" | "bit");
            (word.len() == 1
                && letter.bytes().all(|byte| byte.is_ascii_uppercase() && byte != b'I')
                && (next.is_some_and(|next| is_drill(&next))
                    || before.ends_with("drill")
                    || before.ends_with("drill size")))
            .then(|| (Token::Gauge(format!("letter {letter}")), at + 1))
        }
    }
}

/// Deep-groove ball bearings of the light metric series, by number: bore and
/// outside in millimetres (ISO 15, dimension series 10, 02 and 03).
fn bearing(line: &str, at: usize) -> Option<(Token, usize)> {
    let end = digits(line, at);
    let number: u32 = line.get(at..end)?.parse().ok()?;
    let rest = line.get(end..)?;
    let suffix =
        rest.bytes().take_while(|byte| byte.is_ascii_alphanumeric() || *byte == b'-').count();
    let suffix_text = rest.get(..suffix)?.to_ascii_uppercase();
    if !(suffix == 0
        || suffix_text
            .chars()
            .all(|c| matches!(c, 'Z' | 'R' | 'S' | '2' | 'C' | '3' | '-' | 'D' | 'U')))
        || byte(line, end) == Some(b'.')
    {
        return None;
    }
    let (bore, od) = match number {
        608 => (8, 22),
        6000 => (10, 26),
        6001 => (12, 28),
        6002 => (15, 32),
        6003 => (17, 35),
        6004 => (20, 42),
        6005 => (25, 47),
        6006 => (30, 55),
        6200 => (10, 30),
        6201 => (12, 32),
        6202 => (15, 35),
        6203 => (17, 40),
        6204 => (20, 47),
        6205 => (25, 52),
        6206 => (30, 62),
        6300 => (10, 35),
        6301 => (12, 37),
        6302 => (15, 42),
        6303 => (17, 47),
        6304 => (20, 52),
        6305 => (25, 62),
        6306 => (30, 72),
        _ => return None,
    };
    let (word, _) = word_at(line, spaces(line, end + suffix)).unwrap_or_default();
    let token = Token::Bearing(format!("{bore}mm"), format!("{od}mm"));
    (number != 608 || word.starts_with('b') || word == "race").then_some((token, end + suffix))
}

/// Inch bearings of the R series (ABMA 20): bore and outside.
fn inch_bearing(line: &str, at: usize) -> Option<(Token, usize)> {
    let (word, end) = word_at(line, at)?;
    let (bore, od) = match &*word {
        "r4" => ("1/4", "5/8"),
        "r6" => ("3/8", "7/8"),
        "r8" => ("1/2", "1-1/8"),
        "r10" => ("5/8", "1-3/8"),
        "r12" => ("3/4", "1-5/8"),
        "r14" => ("7/8", "1-7/8"),
        "r16" => ("1", "2"),
        _ => return None,
    };
    let (next, _) = word_at(line, spaces(line, end))?;
    (next.starts_with("brg") || next.starts_with("bearing") || next == "ball")
        .then(|| (Token::Bearing(format!("{bore}in"), format!("{od}in")), end))
}

fn general(line: &str, at: usize) -> Option<(Token, usize)> {
    let rest = line.get(at..)?.to_ascii_lowercase();
    let lead = ["iso 2768-1", "iso 2768", "iso2768", "2768-1", "2768"]
        .iter()
        .find(|lead| rest.starts_with(**lead))?;
    let mut from = at + lead.len();
    from = spaces(line, from);
    if byte(line, from) == Some(b'-') {
        from = spaces(line, from + 1);
    }
    let (word, end) = word_at(line, from)?;
    let letter = match &*word {
        "f" | "fine" => 'f',
        "m" | "medium" | "mk" | "mh" | "ml" => 'm',
        "c" | "coarse" => 'c',
        "v" => 'v',
        _ => return None,
    };
    Some((Token::General(letter), end))
}

fn times(line: &str, at: usize) -> Option<(Token, usize)> {
    // `x2`, `2x`, `2 x` before a number; `2 off`
    if matches!(byte(line, at)?, b'x' | b'X') {
        let end = digits(line, at + 1);
        let count: u32 = line.get(at + 1..end)?.parse().ok()?;
        return (count <= 12
            && ends(line, end)
            && byte(line, end) != Some(b'.')
            && byte(line, end) != Some(b'/'))
        .then_some((Token::Times(count), end));
    }
    let end = digits(line, at);
    let count: u32 = line.get(at..end)?.parse().ok()?;
    let after = spaces(line, end);
    if matches!(byte(line, after)?, b'x' | b'X') && count <= 12 {
        let next = byte(line, spaces(line, after + 1))?;
        let is_thick = byte(line, after + 1) == Some(b' ') || next.is_ascii_digit() || next == b'.';
        // `2 x .062` and `2 x 1.5` are counts; `12 x 16` two sizes.
        let is_size = next.is_ascii_digit()
            && number(line, spaces(line, after + 1)).is_some_and(|(num, _)| {
                num.places == 0 && !num.is_fraction
                    || f64::from(count) < num.value * 1.2
                        && num.value < f64::from(count) * 3.0
                        && count > 4
            });
        return (is_thick && !is_size && (next.is_ascii_digit() || next == b'.'))
            .then_some((Token::Times(count), after + 1));
    }
    None
}

/// `class 3`: of a thread, or of a fit.
fn ansi_class(line: &str, at: usize) -> Option<(Token, usize)> {
    let (word, end) = word_at(line, at)?;
    let from = spaces(line, end);
    let end = digits(line, from);
    let class: u32 = line.get(from..end)?.parse().ok()?;
    (word == "class" && (1..=9).contains(&class) && ends(line, end))
        .then_some((Token::AnsiClass(class), end))
}

/// `20x26x20`, `12 x 16`: a cross between two sizes.
fn cross(line: &str, at: usize) -> Option<(Token, usize)> {
    let first = line.get(at..)?.chars().next()?;
    if !matches!(first, 'x' | 'X' | '\u{d7}') {
        return None;
    }
    let from = at + first.len_utf8();
    let next = byte(line, spaces(line, from))?;
    let before = line.get(..at)?.trim_end().as_bytes().last().copied()?;
    ((next.is_ascii_digit() || next == b'.')
        && (before.is_ascii_digit() || before == b'"' || before.is_ascii_alphabetic()))
    .then_some((Token::Cross, from))
}

/// What stands here that is no word, and where it ends.
pub(super) fn token_at(line: &str, at: usize) -> Option<(Token, usize)> {
    let first = byte(line, at)?;
    match first {
        b',' | b';' | b':' | b'?' | b'!' | b'(' | b')' => return Some((Token::Break, at + 1)),
        b'.' if byte(line, at + 1).is_none_or(|next| next == b' ') => {
            return Some((Token::Break, at + 1));
        }
        _ => {}
    }
    if let Some(found) = deviations(line, at) {
        return Some(found);
    }
    match first {
        b'+' => return Some((Token::Plus, at + 1)),
        b'-' if byte(line, at + 1).is_none_or(|next| next == b' ') => {
            return Some((Token::Minus, at + 1));
        }
        b'-' if byte(line, at + 1).is_some_and(|next| next.is_ascii_digit()) => {
            // A negative temperature, or a tolerance alone.
            return quantity(line, at);
        }
        _ => {}
    }
    if line.get(at..)?.starts_with('\u{2205}')
        || line.get(at..)?.starts_with('\u{d8}')
        || line.get(at..)?.starts_with('\u{2300}')
    {
        return token_at(line, spaces(line, at + line.get(at..)?.chars().next()?.len_utf8()));
    }
    // `20 x 26` are sizes, `x2` at the end of a part is a count.
    if let Some(found) = cross(line, at) {
        let is_count = line.get(at + 1..=at + 1).is_some_and(|next| next != " ")
            && line.get(..at).is_some_and(|before| before.ends_with(' '))
            && times(line, at).is_some_and(|(_, end)| matches!(line.get(end..).map(str::trim_start), Some(rest) if !rest.starts_with(['x', 'X'])));
        return if is_count { times(line, at) } else { Some(found) };
    }
    bearing(line, at)
        .or_else(|| inch_bearing(line, at))
        .or_else(|| general(line, at))
        .or_else(|| quantity(line, at))
        .or_else(|| thread(line, at))
        .or_else(|| thread_class(line, at))
        .or_else(|| classes(line, at))
        .or_else(|| gauge(line, at))
        .or_else(|| grade(line, at))
        .or_else(|| ansi_class(line, at))
        .or_else(|| span(line, at))
        .or_else(|| times(line, at))
        .or_else(|| number(line, at).map(|(num, end)| (Token::Number(num), end)))
        .or_else(|| spelled_number(line, at).map(|(num, end)| (Token::Number(num), end)))
}

fn thread_class(line: &str, at: usize) -> Option<(Token, usize)> {
    let rest = line.get(at..)?.as_bytes();
    let (digit, letter) = (*rest.first()?, *rest.get(1)?);
    let is_unified =
        matches!(digit, b'1'..=b'5') && matches!(letter.to_ascii_uppercase(), b'A' | b'B' | b'G');
    let is_metric =
        matches!(digit, b'4'..=b'8') && matches!(letter, b'g' | b'H' | b'e' | b'h' | b'f' | b'G');
    if !(is_unified || is_metric) || !ends(line, at + 2) {
        return None;
    }
    let text = if is_metric {
        line.get(at..at + 2)?.to_owned()
    } else {
        line.get(at..at + 2)?.to_ascii_uppercase()
    };
    Some((Token::ThreadClass(text), at + 2))
}

fn grade(line: &str, at: usize) -> Option<(Token, usize)> {
    let rest = line.get(at..)?;
    if !rest.starts_with("IT") {
        return None;
    }
    let end = digits(line, at + 2);
    let grade: u32 = line.get(at + 2..end)?.parse().ok()?;
    (grade <= 18 && ends(line, end)).then_some((Token::Grade(grade), end))
}

/// `.8750-.8755`, `20.00..20.05`: both ends, no spaces.
fn span(line: &str, at: usize) -> Option<(Token, usize)> {
    let (first, end) = number(line, at)?;
    let from = match line.get(end..)? {
        rest if rest.starts_with("..") => end + 2,
        rest if rest.starts_with('-') && first.places > 0 => end + 1,
        _ => return None,
    };
    if byte(line, from).is_some_and(|next| next == b' ') {
        return None;
    }
    let (second, end) = number(line, from)?;
    (second.places > 0).then_some((Token::Span(first, second), end))
}
