//! The words, numbers and signs of a note, each with its place.
//!
//! What a number is is seen by its shape: a size, a thread, a count, a bearing
//! or material number. Whose size it is is not known here.

use std::ops::Range;

use fits_core::{
    Length,
    job::whole::Side,
    size::{Number, Unit},
    standards::{b41, iso286},
};

/// A number as written.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Num {
    pub(super) over: i128,
    pub(super) under: i128,
    pub(super) unit: Option<Unit>,
    /// `3/4`.
    pub(super) vulgar: bool,
    /// `.750`.
    pub(super) leading_point: bool,
    /// Decimals written.
    pub(super) places: usize,
    pub(super) at: Range<usize>,
}

impl Num {
    /// A fraction or a leading point is inches by itself.
    pub(super) const fn is_inch_shaped(&self) -> bool {
        self.vulgar || self.leading_point
    }

    pub(super) fn length(&self, bare: Unit) -> Option<Length> {
        let unit = self.unit.unwrap_or(bare);
        Number::from_ratio(self.over, self.under).ok()?.of(unit).ok()
    }

    #[allow(clippy::cast_precision_loss, reason = "only compared roughly")]
    pub(super) fn value(&self) -> f64 {
        self.over as f64 / self.under as f64
    }

    pub(super) const fn is_whole(&self) -> bool {
        self.under == 1 && self.places == 0
    }
}

/// One token of a note.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Kind {
    /// A word, in small letters.
    Word(String),
    /// A bearing or material number, or a mark on a drawing.
    Code(String),
    /// A size.
    Num(Num),
    /// `.010-.020`, `5 to 10 thou`.
    Range(Num, Num),
    /// `3/4 x 1 x 1`.
    Dims(Vec<Num>),
    /// `5/16-18`.
    Thread(String),
    /// `f7`, `RC4`, `6g`.
    Class(String),
    /// `+0.1/0`: lower, upper.
    Off(Num, Num),
    /// `(2)`.
    Count(u32),
    /// `,` `;` `.` `:` `-` `(` `)` `/` `?` `=` `>` for an arrow, `"`.
    Sign(char),
}

/// A token and its place in the line.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Token {
    pub(super) kind: Kind,
    pub(super) at: Range<usize>,
}

impl Token {
    pub(super) fn word(&self) -> Option<&str> {
        match &self.kind {
            Kind::Word(word) => Some(word),
            _ => None,
        }
    }

    pub(super) fn is_sign(&self, sign: char) -> bool {
        self.kind == Kind::Sign(sign)
    }
}

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

/// The tokens of a text that starts at a byte of its line.
pub(super) fn tokens(text: &str, from: usize) -> Vec<Token> {
    let mut scan = Scan { text, at: 0, found: Vec::new(), from, sign: None };
    while scan.at < text.len() {
        scan.one();
    }
    joined(scan.found)
}

struct Scan<'a> {
    text: &'a str,
    at: usize,
    from: usize,
    found: Vec<Token>,
    /// Where a diameter sign before the next number stands.
    sign: Option<usize>,
}

impl<'a> Scan<'a> {
    fn rest(&self) -> &'a str {
        self.text.get(self.at..).unwrap_or_default()
    }

    fn put(&mut self, kind: Kind, length: usize) {
        let start = self.sign.take().unwrap_or(self.at);
        let at = self.from + start..self.from + self.at + length;
        self.at += length.max(1);
        self.found.push(Token { kind, at });
    }

    fn after_number(&self) -> bool {
        matches!(
            self.found.last().map(|token| &token.kind),
            Some(Kind::Num(_) | Kind::Dims(_) | Kind::Class(_))
        )
    }

    /// Behind a size, or behind the word that says what it is of: `1-3/8 dia`.
    fn after_size(&self) -> bool {
        match self.found.as_slice() {
            [.., Token { kind: Kind::Num(_), .. }, Token { kind: Kind::Word(word), .. }] => {
                super::lexicon::feature(word).is_some()
            }
            [.., Token { kind: Kind::Thread(_), .. }] => true,
            _ => self.after_number(),
        }
    }

    fn one(&mut self) {
        let rest = self.rest();
        let Some(first) = rest.chars().next() else { return };
        let glued = self.at > 0
            && self.text[..self.at].ends_with(|c: char| c.is_alphanumeric())
            && self.found.last().is_some_and(|last| last.at.end == self.from + self.at)
            && !matches!(self.found.last().map(|last| &last.kind), Some(Kind::Num(_)));
        let times = matches!(first, 'x' | 'X' | '\u{d7}') && !glued && self.after_size();
        let goes_on =
            rest[first.len_utf8()..].trim_start_matches([' ', '\u{d8}', '\u{2300}', '\u{f8}']);
        if times && goes_on.starts_with(|c: char| c.is_ascii_digit() || c == '.') {
            self.put(Kind::Word("x".into()), first.len_utf8());
        } else if first.is_whitespace() || matches!(first, '\u{2300}' | '\u{d8}' | '\u{f8}') {
            if !first.is_whitespace() {
                self.sign = Some(self.at);
            }
            self.at += first.len_utf8();
        } else if first.is_alphabetic() && !matches!(first, 'M' | 'T') {
            match ["od", "id"].into_iter().find(|side| is_slashed(rest, side) && !glued) {
                Some(side) => {
                    let stop = rest[1..].starts_with('.') && rest[3..].starts_with('.');
                    self.put(Kind::Word(side.into()), 3 + usize::from(stop));
                }
                None => self.word(rest),
            }
        } else if let Some(length) = super::lines::calendar(rest).filter(|_| !glued) {
            self.put(Kind::Sign(';'), length);
        } else if let Some((thread, length)) =
            thread(rest).or_else(|| of_series(rest)).filter(|_| !glued)
        {
            self.put(Kind::Thread(thread), length);
        } else if let Some((off, length)) = self.after_number().then(|| deviations(rest)).flatten()
        {
            self.put(off, length);
        } else if let Some((code, length)) = code(rest) {
            self.put(code, length);
        } else if let Some((mut num, length)) = number(rest) {
            num.at = self.from + self.at..self.from + self.at + length;
            self.put(Kind::Num(num), length);
        } else if first.is_alphabetic() || first == '#' {
            self.word(rest);
        } else {
            for arrow in ["->", "=>", "\u{2192}", "--", "\u{2013}", "\u{2014}"] {
                if rest.starts_with(arrow) {
                    let is_arrow = !arrow.starts_with('-') || arrow == "->";
                    let sign = if is_arrow
                        && arrow.len() < 4
                        && !arrow.starts_with(['\u{2013}', '\u{2014}'])
                    {
                        '>'
                    } else {
                        '-'
                    };
                    return self.put(Kind::Sign(sign), arrow.len());
                }
            }
            self.put(Kind::Sign(first), first.len_utf8());
        }
    }

    fn word(&mut self, rest: &str) {
        let length = rest
            .char_indices()
            .find(|(at, c)| {
                !(c.is_alphanumeric()
                    || *c == '\''
                    || *c == '#'
                    || (*c == '-' && rest[at + 1..].starts_with(char::is_alphanumeric)))
            })
            .map_or(rest.len(), |(at, _)| at);
        let word = rest[..length].trim_end_matches('\'');
        let has_digit = word.contains(|c: char| c.is_ascii_digit());
        let count = word.strip_prefix(['x', 'X']).and_then(|count| count.parse::<u32>().ok());
        if let Some(count) = count.filter(|_| !self.after_number()) {
            return self.put(Kind::Count(count), word.len());
        }
        if let Some(class) = self.class(word) {
            return self.put(Kind::Class(class), word.len());
        }
        let word = if word.is_empty() { &rest[..length] } else { word };
        if has_digit && word.len() > 1 {
            self.put(Kind::Code(word.to_lowercase()), word.len());
        } else {
            self.put(Kind::Word(word.to_lowercase()), word.len());
        }
    }

    /// A tolerance class. A capital one that is also the beginning of another
    /// mark, as R12, counts only behind a size.
    fn class(&self, word: &str) -> Option<String> {
        if let Some((hole, shaft)) = word.split_once('/') {
            return (self.class(hole).is_some() && self.class(shaft).is_some())
                .then(|| word.to_owned());
        }
        let letters = word.trim_end_matches(|c: char| c.is_ascii_digit());
        let grade: u32 = word.get(letters.len()..)?.parse().ok()?;
        if word.parse::<b41::Class>().is_ok() {
            return Some(word.to_uppercase());
        }
        if !(3..=13).contains(&grade) || word.parse::<iso286::Class>().is_err() {
            return None;
        }
        let common = ["D", "E", "F", "G", "H", "JS", "J", "K", "N", "P"].contains(&letters);
        let small = letters.starts_with(|c: char| c.is_ascii_lowercase());
        (small || common || self.after_number()).then(|| word.to_owned())
    }
}

/// `o/d`, `i.d.`
fn is_slashed(text: &str, side: &str) -> bool {
    let (written, side) = (text.as_bytes(), side.as_bytes());
    let [first, b'/' | b'.', last, ..] = written else { return false };
    first.eq_ignore_ascii_case(&side[0])
        && last.eq_ignore_ascii_case(&side[1])
        && !text[3..].starts_with(char::is_alphanumeric)
}

/// `5/8" BSF`: a series alone has one pitch for a size.
fn of_series(text: &str) -> Option<(String, usize)> {
    const SERIES: &[&str] = &["bsf", "bsw", "whit", "whitworth", "unc", "unf", "bsp", "npt", "ba"];
    let (size, length) = number(text)?;
    let is_size = size.vulgar || size.is_whole() && size.over < 20;
    let tail = text[length..].trim_start();
    let form: String = tail.chars().take_while(char::is_ascii_alphabetic).collect();
    if !is_size
        || size.unit == Some(Unit::Millimetre)
        || !SERIES.contains(&form.to_lowercase().as_str())
    {
        return None;
    }
    let end = text.len() - tail.len() + form.len();
    let name = text[..length].trim_end_matches(['"', ' ']).trim_end_matches("in").trim();
    Some((format!("{} {}", name.replace(' ', "-"), form.to_uppercase()), end))
}

/// `M12`, `Tr24x5`, `5/16-18`, `1-1/4 - 5 acme`.
fn thread(text: &str) -> Option<(String, usize)> {
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
    let pitch = digits(from);
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

/// A bearing's or a material's number, or a thread's class as `6g`.
fn code(text: &str) -> Option<(Kind, usize)> {
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
    if tail == "s" && digits == 4 && is_number_of_a_thing(&word[..digits]) {
        return Some((Kind::Code(word[..digits].to_owned()), end));
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
fn is_number_of_a_thing(digits: &str) -> bool {
    const METALS: &[&str] = &["303", "304", "316", "416", "440", "660", "841", "863", "932", "954"];
    const BEARINGS: &[&str] =
        &["607", "608", "609", "623", "624", "625", "626", "627", "628", "629", "688", "698"];
    digits.len() >= 4 && !digits.ends_with("00")
        || METALS.contains(&digits)
        || BEARINGS.contains(&digits)
}

/// A fraction of one letter, and where the rest begins.
fn letter(text: &str, from: usize) -> Option<(i128, i128, usize)> {
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
        (is_binary && bytes.get(end).is_none_or(|b| *b != b'.')).then_some((over, under, end))
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
        let joined = text[whole..].starts_with(['-', ' ']);
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
fn deviations(text: &str) -> Option<(Kind, usize)> {
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

/// Puts together what several tokens say: ranges, `A x B`, counts.
#[allow(clippy::too_many_lines, reason = "one kind of tokens after another, each short")]
fn joined(found: Vec<Token>) -> Vec<Token> {
    let mut out: Vec<Token> = Vec::with_capacity(found.len());
    let mut found = found.into_iter().peekable();
    while let Some(token) = found.next() {
        let depth = out.len();
        match &token.kind {
            Kind::Num(next) if depth > 1 && is_times(out.last()) => {
                out.pop();
                // `18 o.d. x 12 i.d.`: each has its own word.
                let named =
                    found.peek().and_then(Token::word).and_then(super::lexicon::feature).is_some();
                times(&mut out, next.clone(), &token, named);
            }
            // `.7485 / .7480`: two limits.
            Kind::Num(high) if is_limits(&out, high) => {
                out.pop();
                if let Some(Token { kind, at }) = out.last_mut()
                    && let Kind::Num(one) = kind
                {
                    at.end = token.at.end;
                    *kind = Kind::Range(one.clone(), high.clone());
                }
            }
            Kind::Num(high) if is_range(&out) => {
                while !matches!(out.last().map(|last| &last.kind), Some(Kind::Num(_)) | None) {
                    out.pop();
                }
                if let Some(Token { kind, at }) = out.last_mut()
                    && let Kind::Num(low) = kind
                {
                    at.end = token.at.end;
                    let low = Num { unit: low.unit.or(high.unit), ..low.clone() };
                    *kind = Kind::Range(low, high.clone());
                }
            }
            Kind::Word(word)
                if matches!(
                    word.as_str(),
                    "off" | "pcs" | "pc" | "pieces" | "reqd" | "plcs" | "places" | "ea" | "each"
                ) && matches!(out.last().map(|last| &last.kind), Some(Kind::Num(num)) if num.is_whole() && num.unit.is_none() && num.over < 1000) =>
            {
                if let Some(Token { kind, at }) = out.last_mut()
                    && let Kind::Num(num) = kind
                {
                    at.end = token.at.end;
                    *kind = Kind::Count(u32::try_from(num.over).unwrap_or(1));
                }
            }
            // `2 @ .050`, `qty 2`.
            Kind::Sign('@') if matches!(out.last().map(|last| &last.kind), Some(Kind::Num(num)) if num.is_whole() && num.unit.is_none()) =>
            {
                counted(&mut out);
            }
            Kind::Num(num)
                if num.is_whole()
                    && num.over < 1000
                    && out
                        .last()
                        .is_some_and(|last| matches!(last.word(), Some("qty" | "quantity"))) =>
            {
                let count = u32::try_from(num.over).unwrap_or(1);
                if let Some(last) = out.last_mut() {
                    *last = Token { kind: Kind::Count(count), at: last.at.start..token.at.end };
                }
            }
            Kind::Sign(')')
                if depth > 1
                    && out[depth - 2].is_sign('(')
                    && matches!(&out[depth - 1].kind, Kind::Num(num) if num.is_whole() && num.unit.is_none() && num.over < 100) =>
            {
                let Some(Token { kind: Kind::Num(num), .. }) = out.pop() else { continue };
                if let Some(last) = out.last_mut() {
                    let count = u32::try_from(num.over).unwrap_or(1);
                    *last = Token { kind: Kind::Count(count), at: last.at.start..token.at.end };
                }
            }
            _ => out.push(token),
        }
    }
    // `16/22/15`: bore, outside, length.
    let mut at = 0;
    while at + 4 < out.len() {
        let [a, one, b, two, c] = &out[at..at + 5] else { break };
        if let (Kind::Num(inside), Kind::Num(outside), Kind::Num(long)) =
            (&a.kind, &b.kind, &c.kind)
            && one.is_sign('/')
            && two.is_sign('/')
            && inside.value() < outside.value()
            && c.at.end - a.at.start < 24
        {
            let all = vec![inside.clone(), outside.clone(), long.clone()];
            let place = a.at.start..c.at.end;
            out.splice(at..at + 5, [Token { kind: Kind::Dims(all), at: place }]);
        }
        at += 1;
    }
    // `all 3 at 1.2490`.
    for at in 1..out.len() {
        let all = matches!(out[at - 1].word(), Some("all" | "make" | "need" | "have"));
        if let Kind::Num(num) = &out[at].kind
            && all
            && num.is_whole()
            && num.unit.is_none()
            && num.over <= 24
        {
            out[at].kind = Kind::Count(u32::try_from(num.over).unwrap_or(1));
        }
    }
    // `38 w`: so wide.
    for at in 1..out.len() {
        let alone =
            out.get(at + 1).is_none_or(|next| next.word().is_none() || is_times(Some(next)));
        if out[at].word() == Some("w") && matches!(out[at - 1].kind, Kind::Num(_)) && alone {
            out[at].kind = Kind::Word("wide".into());
        }
    }
    for at in 0..out.len() {
        if is_no_size(&out, at)
            && let Kind::Num(num) = &out[at].kind
        {
            let count = u32::try_from(num.over / num.under).unwrap_or(1);
            out[at].kind = Kind::Count(count);
        }
        many(&mut out, at);
        // `8x M8`
        let is_count = matches!(&out[at].kind, Kind::Num(num) if num.is_whole() && num.over < 25);
        if is_count
            && out.get(at + 1).is_some_and(|next| next.word() == Some("x"))
            && matches!(out.get(at + 2).map(|next| &next.kind), Some(Kind::Thread(_)))
        {
            counted(&mut out[..=at]);
            out[at + 1].kind = Kind::Sign(' ');
        }
    }
    // `2 thrust washers`.
    for at in 0..out.len() {
        let is_count = matches!(&out[at].kind, Kind::Num(num) if num.is_whole() && num.unit.is_none() && (2..=12).contains(&num.over));
        let after_size =
            at > 0 && matches!(out[at - 1].kind, Kind::Num(_) | Kind::Dims(_) | Kind::Class(_));
        let plural = |token: Option<&Token>| {
            token.and_then(Token::word).is_some_and(|word| {
                word.ends_with('s')
                    && (super::lexicon::inwardness(word).is_some()
                        || super::lexicon::feature(word).is_some_and(|side| side != Side::Length))
            })
        };
        if is_count
            && !after_size
            && (plural(out.get(at + 1))
                // `2 #10-24 screws`
                || matches!(out.get(at + 1).map(|next| &next.kind), Some(Kind::Thread(_)))
                    && plural(out.get(at + 2))
                || out.get(at + 1).and_then(Token::word).is_some_and(|word| {
                    word != "x" && super::lexicon::feature(word) != Some(Side::Length)
                }) && plural(out.get(at + 2)))
            && let Kind::Num(num) = &out[at].kind
        {
            out[at].kind = Kind::Count(u32::try_from(num.over).unwrap_or(1));
        }
    }
    out
}

/// Is a number an angle, a count, a weight, a time, or what a sheet goes by?
fn is_no_size(found: &[Token], at: usize) -> bool {
    #[rustfmt::skip]
    const BEHIND: &[&str] = &[
        "deg", "degree", "degrees", "rpm", "lb", "lbs", "kg", "ton", "tons", "hp", "teeth", "tooth", "dp",
        "percent", "hour", "hours", "hrs", "mins", "minutes", "day", "days", "week", "weeks", "psi",
        "flute", "flutes", "start", "starts", "turns", "passes", "jaw", "bucks", "pounds", "am", "pm", "st",
        "nd", "rd", "th", "times",
    ];
    #[rustfmt::skip]
    const BEFORE: &[&str] = &[
        "no", "page", "sheet", "dwg", "drg", "drawing", "rev", "step", "op", "item", "pos", "fig", "job",
        "lot", "year", "$",
    ];
    let Kind::Num(num) = &found[at].kind else { return false };
    let behind = found.get(at + 1);
    // `20 wide 25 dp`: so deep, not a pitch.
    let is_depth = at > 0
        && (matches!(found[at - 1].kind, Kind::Num(_))
            || found[at - 1].word().is_some_and(|word| super::lexicon::feature(word).is_some()));
    let is_behind = |token: &Token| {
        token.word().is_some_and(|word| BEHIND.contains(&word) && !(word == "dp" && is_depth))
            || matches!(token.kind, Kind::Sign('%' | '\u{b0}'))
    };
    let before = at.checked_sub(1).map(|before| &found[before]);
    // `bush 1: id`, `roller 2 bore`: which of several.
    let of_several = num.is_whole()
        && num.over < 10
        && before
            .and_then(Token::word)
            .is_some_and(|word| !word.ends_with('s') && super::lexicon::inwardness(word).is_some())
        && behind.is_some_and(|token| {
            token.is_sign(':')
                || token.word().is_some_and(|word| {
                    super::lexicon::feature(word).is_some_and(|side| side != Side::Length)
                        || matches!(word, "pressed" | "in" | "is" | "came" | "now")
                })
        });
    let is_before = |token: &Token| {
        token
            .word()
            .is_some_and(|word| matches!(word, "ra" | "rz" | "loctite" | "en" | "iso" | "din"))
            || token.is_sign('$')
            || num.is_whole() && token.word().is_some_and(|word| BEFORE.contains(&word))
    };
    num.unit.is_none()
        && (of_several || behind.is_some_and(is_behind) || before.is_some_and(is_before))
}

/// `2 x 3/8 dowels`, `2x 3/8`: how many of a size.
fn many(found: &mut Vec<Token>, at: usize) {
    let Kind::Dims(all) = &found[at].kind else { return };
    let [first, rest @ ..] = all.as_slice() else { return };
    let counts = first.is_whole() && first.unit.is_none() && (2..=12).contains(&first.over);
    let plural = found.get(at + 1).and_then(Token::word).is_some_and(|word| {
        word.ends_with('s')
            && (super::lexicon::inwardness(word).is_some()
                || super::lexicon::feature(word).is_some_and(|side| side != Side::Length))
    });
    let [second, more @ ..] = rest else { return };
    if !(counts && plural && (second.vulgar || second.places > 0 || second.unit.is_some())) {
        return;
    }
    let count = u32::try_from(first.over).unwrap_or(1);
    let kind = if more.is_empty() { Kind::Num(second.clone()) } else { Kind::Dims(rest.to_vec()) };
    let (place, start) = (found[at].at.clone(), second.at.start);
    found[at] = Token { kind: Kind::Count(count), at: place.start..place.start + 1 };
    found.insert(at + 1, Token { kind, at: start..place.end });
}

/// The number at the end is a count.
fn counted(out: &mut [Token]) {
    if let Some(Token { kind, .. }) = out.last_mut()
        && let Kind::Num(num) = kind
    {
        *kind = Kind::Count(u32::try_from(num.over).unwrap_or(1));
    }
}

/// Puts the next of `3/4 x 1 x 1` to what stands before the sign; `6 m6 x 30`
/// keeps its class behind.
fn times(out: &mut Vec<Token>, next: Num, token: &Token, named: bool) {
    let class = matches!(out.last().map(|last| &last.kind), Some(Kind::Class(_)));
    let class = if class { out.pop() } else { None };
    // `20/26x20`: inside, outside, length.
    if let [
        ..,
        Token { kind: Kind::Num(inside), at: first },
        sign,
        Token { kind: Kind::Num(outside), .. },
    ] = out.as_slice()
        && sign.is_sign('/')
        && inside.value() < outside.value()
    {
        let all = vec![inside.clone(), outside.clone(), next];
        let at = first.start..token.at.end;
        out.truncate(out.len() - 3);
        out.push(Token { kind: Kind::Dims(all), at });
        return;
    }
    if let Some(Token { kind: kind @ (Kind::Num(_) | Kind::Dims(_)), at }) = out.last_mut() {
        if class.is_none() {
            at.end = token.at.end;
        }
        let mut all = match std::mem::replace(kind, Kind::Sign(' ')) {
            Kind::Num(first) => vec![first],
            Kind::Dims(all) => all,
            _ => Vec::new(),
        };
        all.push(next);
        *kind = Kind::Dims(all);
    } else {
        // `3/8-16 x 2`, `1-3/8 dia x 3`: so long.
        let at = token.at.clone();
        out.push(Token { kind: Kind::Num(next), at: at.clone() });
        if !named {
            out.push(Token { kind: Kind::Word("long".into()), at: at.end..at.end });
        }
    }
    out.extend(class);
}

/// Two sizes with a slash between that differ by less than a hundredth.
fn is_limits(out: &[Token], next: &Num) -> bool {
    let [.., Token { kind: Kind::Num(one), .. }, sign] = out else { return false };
    let (one, next, places) = (one.value(), next.value(), one.places.min(next.places));
    sign.is_sign('/') && places >= 2 && (one - next).abs() < 0.01 * one
}

fn is_times(token: Option<&Token>) -> bool {
    token.is_some_and(|token| {
        matches!(&token.kind, Kind::Word(word) if word == "x" || word == "by")
            || matches!(token.kind, Kind::Sign('\u{d7}' | '*'))
    })
}

/// Does a range go on: a number, then a dash, dots or `to`?
fn is_range(out: &[Token]) -> bool {
    match out {
        [.., Token { kind: Kind::Num(low), .. }, sign] => {
            let dash = sign.is_sign('-') && low.places > 0 || sign.is_sign('\u{2026}');
            dash || (sign.word() == Some("to") && !low.vulgar)
                || (sign.is_sign('-')
                    && sign.at.len() == 1
                    && low.is_whole()
                    && low.at.end == sign.at.start)
        }
        [.., Token { kind: Kind::Num(_), .. }, first, second] => {
            first.is_sign('.') && second.is_sign('.')
        }
        _ => false,
    }
}
