//! Numbers with their units, deviations and spans.

use crate::sentence::{
    table::word_at,
    token::{Num, Token, Unit},
};

pub(crate) fn spaces(line: &str, at: usize) -> usize {
    let rest = line.get(at..).unwrap_or_default();
    at + rest.len() - rest.trim_start_matches([' ', '\t']).len()
}

pub(crate) fn digits(line: &str, at: usize) -> usize {
    let rest = line.get(at..).unwrap_or_default();
    at + rest.bytes().take_while(u8::is_ascii_digit).count()
}

pub(crate) fn byte(line: &str, at: usize) -> Option<u8> {
    line.as_bytes().get(at).copied()
}

/// No letter or figure goes on here.
pub(crate) fn ends(line: &str, at: usize) -> bool {
    byte(line, at).is_none_or(|next| !next.is_ascii_alphanumeric())
}

pub(crate) fn power_of_two(text: &str) -> bool {
    text.parse().is_ok_and(|lower: u32| lower.is_power_of_two() && (2..=256).contains(&lower))
}

/// A vulgar fraction `a/b`, its end.
pub(crate) fn fraction(line: &str, at: usize) -> Option<usize> {
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
        && (byte(line, lower) != Some(b'.') || ends(line, lower + 1)))
    .then_some(lower)
}

pub(crate) fn fraction_value(text: &str) -> f64 {
    let mut parts = text.split('/').map(|part| part.parse().unwrap_or(f64::NAN));
    parts.next().unwrap_or(f64::NAN) / parts.next().unwrap_or(1.0)
}

pub(crate) const SPELLED: &[(&str, &str, f64)] = &[
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
pub(crate) fn words(line: &str, at: usize, count: usize) -> Option<(String, usize)> {
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
pub(crate) fn spelled_number(line: &str, at: usize) -> Option<(Num, usize)> {
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
    let (first, _) = word_at(line, at)?;
    let begins = |spelled: &str| {
        let rest = spelled.strip_prefix(&*first);
        rest.is_some_and(|rest| rest.is_empty() || rest.starts_with(' '))
    };
    for (lead, text, value) in [
        ("inch and a half", "1-1/2", 1.5),
        ("inch and a quarter", "1-1/4", 1.25),
        ("inch and an eighth", "1-1/8", 1.125),
        ("inch and three quarters", "1-3/4", 1.75),
    ]
    .into_iter()
    .filter(|(lead, ..)| begins(lead))
    {
        let count = lead.split(' ').count();
        if let Some((said, end)) = words(line, at, count)
            && said == lead
        {
            return Some((num(text, value, Some(Unit::Inch)), end));
        }
    }
    let unit_after = |end: usize| unit(line, end);
    for (spelled, text, value) in SPELLED.iter().filter(|(spelled, ..)| begins(spelled)) {
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
pub(crate) fn unit(line: &str, at: usize) -> Option<(Unit, usize)> {
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
    Some((unit, end))
}

/// A number without sign, and its unit.
pub(crate) fn number(line: &str, at: usize) -> Option<(Num, usize)> {
    let first = byte(line, at)?;
    let (text, value, is_fraction, places, leads, end) = if let Some(end) = fraction(line, at) {
        let text = line.get(at..end)?;
        (text.to_owned(), fraction_value(text), true, 0, false, end)
    } else if first.is_ascii_digit() || (first == b'.' && byte(line, at + 1)?.is_ascii_digit()) {
        let whole = digits(line, at);
        let dot = byte(line, whole) == Some(b'.')
            && (byte(line, whole + 1).is_some_and(|next| next.is_ascii_digit()))
            && (whole == at || fraction(line, whole + 1).is_none());
        if dot {
            let end = digits(line, whole + 1);
            let written = line.get(at..end)?;
            let text = if whole == at { format!("0{written}") } else { written.to_owned() };
            let value = text.parse().ok()?;
            (text, value, false, end - whole - 1, whole == at, end)
        } else {
            // 1-1/4, 1 1/4 and 1.1/4
            let joint = byte(line, whole);
            let more = matches!(joint, Some(b'-' | b' ' | b'.'))
                .then(|| fraction(line, whole + 1))
                .flatten();
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
    if let Some((unit, end)) = unit(line, end) {
        num.unit = Some(unit);
        after = end;
    } else if is_fraction {
        num.unit = Some(Unit::Inch);
    }
    Some((num, after))
}

/// A number with a sign, or nought said as `nothing` or `zero`.
pub(crate) fn signed(line: &str, at: usize) -> Option<(Num, usize)> {
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

pub(crate) fn nought(line: &str, at: usize) -> Option<(Num, usize)> {
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
pub(crate) fn deviations(line: &str, at: usize) -> Option<(Token, usize)> {
    let rest = line.get(at..)?;
    for both in ["+/-", "+-", "-/+", "\u{b1}", "plus or minus", "plus minus", "give or take", "pm "]
    {
        if rest.get(..both.len()).is_some_and(|start| start.eq_ignore_ascii_case(both)) {
            let from = spaces(line, at + both.len());
            let (num, end) = number(line, from).or_else(|| spelled_number(line, from))?;
            return Some((
                Token::Deviations { upper: num.clone(), lower: num, is_both: true },
                end,
            ));
        }
    }
    let (first, end) = signed(line, at).or_else(|| unsigned_nought(line, at))?;
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
    // `-0.02 -0.041`: the one nearer to nought is the upper.
    let is_turned = first.is_negative && second.is_negative && first.value < second.value;
    let (upper, lower) = if is_turned {
        (first, second)
    } else if first.is_negative || (first.value == 0.0 && !second.is_negative) {
        (second, first)
    } else {
        (first, second)
    };
    if !is_lower(&lower) && upper.value < lower.value {
        return None;
    }
    Some((Token::Deviations { upper, lower, is_both: false }, end))
}

/// `16 0/-0.12`: no sign stands before nothing, one does after it.
fn unsigned_nought(line: &str, at: usize) -> Option<(Num, usize)> {
    let (num, end) = number(line, at).filter(|(num, _)| num.value == 0.0)?;
    let next = spaces(line, end);
    let next = if byte(line, next) == Some(b'/') { spaces(line, next + 1) } else { next };
    matches!(byte(line, next), Some(b'+' | b'-')).then_some((num, end))
}

/// A decimal without a unit.
pub(crate) fn plain_number(line: &str, at: usize) -> Option<(String, usize)> {
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

/// `.8750-.8755`, `20.00..20.05`, `1.500/1.4995`: both ends, no spaces.
pub(crate) fn span(line: &str, at: usize) -> Option<(Token, usize)> {
    let (first, end) = number(line, at)?;
    let (from, is_slashed) = match line.get(end..)? {
        rest if rest.starts_with("..") => (end + 2, false),
        rest if rest.starts_with('-') && first.places > 0 => (end + 1, false),
        // `got .7452/.7454` is two readings.
        rest if rest.starts_with('/') && first.places > 1 && !follows_a_verb(line, at) => {
            (end + 1, true)
        }
        _ => return None,
    };
    if byte(line, from).is_some_and(|next| next == b' ') {
        return None;
    }
    let (second, end) = number(line, from)?;
    if second.places == 0 {
        return None;
    }
    // Beside a slash the larger one may stand first.
    let is_near = (first.value - second.value).abs() < 0.02 * second.value;
    match is_slashed {
        true if !is_near || second.places < 2 => None,
        true if first.value > second.value => Some((Token::Span(second, first), end)),
        _ => Some((Token::Span(first, second), end)),
    }
}

/// Does what stands before read what follows?
fn follows_a_verb(line: &str, at: usize) -> bool {
    let verbs = ["got", "reads", "read", "mics", "mikes", "measures", "gives", "now", "at"];
    let before = line.get(..at).unwrap_or_default().trim_end_matches([' ', ',', ':']);
    let last = before.rsplit([' ', ',']).next().unwrap_or_default().to_lowercase();
    verbs.contains(&&*last)
}
