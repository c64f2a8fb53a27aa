//! Numbers, threads, marks and deviations by their shape.

use fits_core::{
    Length,
    job::whole::SizeKind,
    size::Unit,
    standards::{
        iso286,
        thread::{Pitch, Series, Thread},
    },
};

use super::token::{Kind, Num};

/// What may follow a thread's figures.
const FORMS: &[&str] = &[
    "acme",
    "unc",
    "unf",
    "unef",
    "un",
    "uns",
    "whit",
    "whitworth",
    "bsw",
    "bsf",
    "bsp",
    "npt",
    "tpi",
    "nc",
    "nf",
    "stub",
    "square",
    "trapezoidal",
];

/// Machine screws by number and pitch, with no sign before the number.
#[rustfmt::skip]
const SCREWS: &[&str] = &[
    "0-80", "1-64", "1-72", "2-56", "2-64", "3-48", "3-56", "4-40", "4-48", "5-40", "5-44", "6-32",
    "6-40", "8-32", "8-36", "10-24", "10-32", "12-24", "12-28",
];

/// Series whose pitch goes by the size.
const SERIES: &[&str] = &["bsf", "bsw", "whit", "whitworth", "unc", "unf", "bsp", "npt", "ba"];

/// Is it the name of such a series?
pub(super) fn is_series(word: &str) -> bool {
    SERIES.contains(&word)
}

/// `5/8" BSF`: a series alone has one pitch for a size.
pub(super) fn of_series(text: &str) -> Option<(String, usize)> {
    let (size, length) = number(text)?;
    let is_size = size.vulgar || size.is_whole() && size.over < 20;
    let tail = text[length..].trim_start();
    let form: String = tail.chars().take_while(char::is_ascii_alphabetic).collect();
    if !is_size || size.unit == Some(Unit::Millimetre) || !is_series(&form.to_lowercase()) {
        return None;
    }
    let end = text.len() - tail.len() + form.len();
    let name = text[..length].trim_end_matches(['"', ' ']).trim_end_matches("in").trim();
    Some((format!("{} {}", name.replace(' ', "-"), form.to_uppercase()), end))
}

/// `M12`, `Tr24x5`, `5/16-18`, `1-1/4 - 5 acme`.
pub(super) fn thread(text: &str) -> Option<(String, usize)> {
    let ends = |end: usize| !text[end..].starts_with(|c: char| c.is_alphanumeric());
    let bytes = text.as_bytes();
    let digits = |from: usize| {
        bytes[from.min(bytes.len())..]
            .iter()
            .take_while(|b| b.is_ascii_digit() || **b == b'.')
            .count()
    };
    let head = if text.starts_with('M') {
        1
    } else if text.starts_with("Tr") {
        2
    } else {
        0
    };
    if head > 0 && digits(head) > 0 {
        let mut end = head + digits(head);
        let times = text[end..].chars().next().filter(|c| matches!(c, 'x' | 'X' | '\u{d7}'));
        if let Some(times) = times {
            let pitch = digits(end + times.len_utf8());
            if pitch > 0 {
                end += times.len_utf8() + pitch;
            }
        }
        if times.is_none()
            && let Some((pitch, length)) = spaced_pitch(&text[1..end], &text[end..])
        {
            return Some((format!("{}x{pitch}", &text[..end]), end + length));
        }
        let text = text[..end].trim_end_matches('.');
        return ends(end).then(|| (text.replace(['X', '\u{d7}'], "x"), text.len()));
    }
    let (size, length) = if let Some(screw) = text.strip_prefix('#') {
        let digits = screw.bytes().take_while(u8::is_ascii_digit).count();
        (None, (digits > 0).then_some(digits + 1)?)
    } else {
        let (num, length) = number(text)?;
        (Some(num), length)
    };
    if size.as_ref().is_some_and(|size| size.unit.is_some() || size.places > 0) {
        return None;
    }
    let after = &text[length..];
    let spaces = after.len() - after.trim_start().len();
    let dashed = after[spaces..].strip_prefix('-')?;
    let more = dashed.len() - dashed.trim_start().len();
    let from = length + spaces + 1 + more;
    // `tapped 5/16-18.`: the full stop is the sentence's.
    let pitch = text[from..from + digits(from)].trim_end_matches('.').len();
    if pitch == 0 || pitch > 2 || text[from..from + pitch].contains('.') || !ends(from + pitch) {
        return None;
    }
    if text[from + pitch..].starts_with(['/', '"']) {
        return None;
    }
    let tail = &text[from + pitch..];
    let form: String = tail.trim_start().chars().take_while(char::is_ascii_alphabetic).collect();
    let has_form = FORMS.contains(&form.to_lowercase().as_str());
    // `10-32`: a machine screw by its number.
    let numbered = spaces == 0 && more == 0 && SCREWS.contains(&&text[..from + pitch]);
    let fraction = size.as_ref().is_none_or(|size| size.vulgar);
    if !(has_form || numbered || fraction && spaces == 0 && more == 0) {
        return None;
    }
    let end = if has_form {
        from + pitch + (tail.len() - tail.trim_start().len()) + form.len()
    } else {
        from + pitch
    };
    let name = text[..length].trim().replace(' ', "-");
    let form = if has_form { format!(" {form}") } else { String::new() };
    Some((format!("{name}-{}{form}", &text[from..from + pitch]), end))
}

/// `M20 x 1`: a pitch that the standard lists for the size, and nothing that says it is
/// a length; with how far it goes.
fn spaced_pitch<'a>(size: &str, behind: &'a str) -> Option<(&'a str, usize)> {
    let pitch = behind.trim_start().strip_prefix(['x', 'X', '\u{d7}'])?.trim_start();
    let digits = pitch.bytes().take_while(|b| b.is_ascii_digit() || *b == b'.').count();
    let tail = &pitch[digits..];
    let pitch = pitch[..digits].trim_end_matches('.');
    let next: String = tail.trim_start().chars().take_while(char::is_ascii_alphabetic).collect();
    let is_length = super::lexicon::feature(&next.to_lowercase()) == Some(SizeKind::Length);
    if is_length || tail.starts_with(|c: char| c.is_alphanumeric() || c == '/') {
        return None;
    }
    let mm = |text: &str| format!("{text}mm").parse::<Length>().ok();
    let thread = Thread::metric(mm(size)?, Pitch::of(mm(pitch)?).ok()?).ok()?;
    matches!(thread.series(), Series::Coarse | Series::Fine)
        .then(|| (pitch, behind.len() - tail.len() - (digits - pitch.len())))
}

/// A bearing's or a material's number, or a thread's class as `6g`.
pub(super) fn code(text: &str) -> Option<(Kind, usize)> {
    let end = text
        .char_indices()
        .find(|(at, c)| {
            !(c.is_alphanumeric()
                || (*c == '-' && text[at + 1..].starts_with(char::is_alphanumeric)))
        })
        .map_or(text.len(), |(at, _)| at);
    let word = &text[..end];
    let digits = word.bytes().take_while(u8::is_ascii_digit).count();
    if digits == 0
        || text[end..].starts_with(['/', '"'])
        || text[end..].starts_with('.') && text[end + 1..].starts_with(|c: char| c.is_ascii_digit())
    {
        return None;
    }
    let tail = &word[digits..];
    if tail.len() == 1 && digits == 1 && tail.contains(['g', 'h', 'e', 'G', 'H', 'A', 'B']) {
        return Some((Kind::Class(word.to_owned()), end));
    }
    // `the 6202s` are several.
    if tail == "s" && is_number_of_a_thing(&word[..digits]) {
        return Some((Kind::Code(word[..digits].to_owned()), end));
    }
    // `the 6200 bearings`: no size, whatever the number is.
    let next: String =
        text[end..].trim_start().chars().take_while(char::is_ascii_alphabetic).collect();
    if digits >= 3 && tail.is_empty() && super::lexicon::stem(&next.to_lowercase()) == "bearing" {
        return Some((Kind::Code(word.to_owned()), end));
    }
    if digits >= 3
        && (tail.is_empty() || tail.starts_with('-'))
        && is_number_of_a_thing(&word[..digits])
    {
        let unit = Unit::scan(text[end..].trim_start()).is_some();
        return (!unit).then(|| (Kind::Code(word.to_lowercase()), end));
    }
    // `42CrMo4`, but not `20H7`, `16mm`, `6x25`.
    let letters: String = tail.chars().take_while(|c| c.is_alphabetic()).collect();
    let is_x = letters.eq_ignore_ascii_case("x");
    let units = ["mm", "in", "inch", "thou", "tenths", "um", "cm", "pcs", "off", "deg"];
    let known = is_x
        || units.contains(&letters.to_lowercase().as_str())
        || tail.parse::<iso286::Class>().is_ok();
    let leaded = letters.eq_ignore_ascii_case("l") && digits == 2 && tail.len() == 3;
    ((letters.len() >= 2 || leaded) && !known && tail.contains(|c: char| c.is_ascii_digit()))
        .then(|| (Kind::Code(word.to_lowercase()), end))
}

/// Whole numbers that name a bearing or a metal, as `6203` and `4140`.
pub(super) fn is_number_of_a_thing(digits: &str) -> bool {
    const METALS: &[&str] = &["303", "304", "316", "416", "440", "660", "841", "863", "932", "954"];
    const BEARINGS: &[&str] =
        &["607", "608", "609", "623", "624", "625", "626", "627", "628", "629", "688", "698"];
    digits.len() >= 4 && !digits.ends_with("00")
        || METALS.contains(&digits)
        || BEARINGS.contains(&digits)
}

/// A fraction of one letter, and where the rest begins.
pub(super) fn letter(text: &str, from: usize) -> Option<(i128, i128, usize)> {
    let letter = text.get(from..)?.chars().next()?;
    let (over, under) = match letter {
        '\u{bd}' => (1, 2),
        '\u{bc}' => (1, 4),
        '\u{be}' => (3, 4),
        '\u{215b}' => (1, 8),
        '\u{215c}' => (3, 8),
        '\u{215d}' => (5, 8),
        '\u{215e}' => (7, 8),
        _ => return None,
    };
    Some((over, under, from + letter.len_utf8()))
}

/// A number with its unit: `14-1/2`, `.750`, `19,97 mm`, `1"`.
pub(super) fn number(text: &str) -> Option<(Num, usize)> {
    let bytes = text.as_bytes();
    let count = |from: usize| {
        bytes[from.min(bytes.len())..].iter().take_while(|b| b.is_ascii_digit()).count()
    };
    let value = |from: usize, length: usize| text[from..from + length].parse::<i128>().ok();
    let fraction = |from: usize| -> Option<(i128, i128, usize)> {
        if let Some(found) = letter(text, from) {
            return Some(found);
        }
        let top = count(from);
        if top == 0 || top > 3 || bytes.get(from + top) != Some(&b'/') {
            return None;
        }
        let bottom = count(from + top + 1);
        let end = from + top + 1 + bottom;
        let (over, under) = (value(from, top)?, value(from + top + 1, bottom)?);
        let is_binary = matches!(under, 2 | 4 | 8 | 16 | 32 | 64) && over < under && over > 0;
        // A full stop behind it ends the sentence, unless more digits follow.
        let goes_on = bytes.get(end) == Some(&b'.') && count(end + 1) > 0;
        // `12/16x20` of a bush: inside and outside, which no fraction of an inch is.
        let behind = text[end..].trim_start_matches(' ');
        let is_bush = over % 2 == 0
            && behind.strip_prefix(['x', 'X', '\u{d7}']).is_some_and(|rest| {
                rest.trim_start_matches(' ').starts_with(|c: char| c.is_ascii_digit())
            });
        (is_binary && !goes_on && !is_bush).then_some((over, under, end))
    };
    let whole = count(0);
    if whole > 9 {
        return None;
    }
    let mut num = Num {
        over: 0,
        under: 1,
        unit: None,
        vulgar: false,
        leading_point: false,
        places: 0,
        at: 0..0,
    };
    let mut end;
    if let Some((over, under, stop)) = fraction(0) {
        (num.over, num.under, num.vulgar, end) = (over, under, true, stop);
    } else if whole > 0 {
        end = whole;
        num.over = value(0, whole)?;
        // `2.1/4`, with a full stop between, as the British write it.
        let joined = text[whole..].starts_with(['-', ' ', '.']);
        let after = if joined { fraction(whole + 1) } else { letter(text, whole) };
        if let Some((over, under, stop)) = after {
            (num.over, num.under) = (num.over * under + over, under);
            (num.vulgar, end) = (true, stop);
        } else if matches!(bytes.get(whole), Some(b'.' | b','))
            && count(whole + 1) > 0
            && count(whole + 1) < 8
        {
            let comma = bytes[whole] == b',';
            let places = count(whole + 1);
            let goes_on = matches!(bytes.get(whole + 1 + places), Some(b'.' | b','))
                && count(whole + 2 + places) > 0;
            if !(comma && (places > 3 || goes_on)) {
                num.under = 10_i128.pow(u32::try_from(places).ok()?);
                num.over = num.over * num.under + value(whole + 1, places)?;
                (num.places, end) = (places, whole + 1 + places);
            }
        }
    } else if bytes.first() == Some(&b'.') && (1..8).contains(&count(1)) {
        let places = count(1);
        num.under = 10_i128.pow(u32::try_from(places).ok()?);
        num.over = value(1, places)?;
        (num.places, num.leading_point, end) = (places, true, 1 + places);
    } else {
        return None;
    }
    let spaced = text[end..].trim_start();
    let gap = text.len() - end - spaced.len();
    if let Some((unit, length)) = Unit::scan(spaced) {
        let word = spaced[..length].to_lowercase();
        let after = spaced[length..].trim_start();
        // `3/4 in roller`: there it is the preposition.
        let is_preposition = word == "in"
            && gap > 0
            && after.starts_with(char::is_alphabetic)
            && !after.starts_with("x ");
        let quote = word.starts_with(['"', '\'', '\u{2033}', '\u{201c}', '\u{201d}']);
        let known = matches!(
            unit,
            Unit::Millimetre
                | Unit::Inch
                | Unit::Thou
                | Unit::Tenth
                | Unit::Micrometre
                | Unit::Centimetre
        ) && word != "m";
        if known && !is_preposition && !(quote && gap > 0) {
            num.unit = Some(unit);
            end += gap + length;
        }
    }
    Some((num, end))
}

/// `±0.1`, `+0.1/0`, `0/-0.1`, `+.002 -0`.
pub(super) fn deviations(text: &str) -> Option<(Kind, usize)> {
    let signed = |text: &str| -> Option<(Num, usize)> {
        let sign = text.chars().next()?;
        let minus = matches!(sign, '-' | '\u{2212}');
        let skip = if minus || sign == '+' { sign.len_utf8() } else { 0 };
        let (mut num, length) = number(&text[skip..])?;
        if skip == 0 && num.over != 0 {
            return None;
        }
        if minus {
            num.over = -num.over;
        }
        Some((num, skip + length))
    };
    for both in ["\u{b1}", "+/-", "+-"] {
        if let Some(rest) = text.strip_prefix(both) {
            let skip = rest.len() - rest.trim_start().len();
            let (num, length) = number(rest.trim_start())?;
            let low = Num { over: -num.over, ..num.clone() };
            return Some((Kind::Off(low, num), both.len() + skip + length));
        }
    }
    let (first, length) = signed(text)?;
    let rest = text[length..].trim_start_matches([' ', '/']);
    let gap = text.len() - length - rest.len();
    if gap == 0 {
        return None;
    }
    let (second, more) = signed(rest)?;
    let (low, high) =
        if first.value() <= second.value() { (first, second) } else { (second, first) };
    Some((Kind::Off(low, high), length + gap + more))
}
