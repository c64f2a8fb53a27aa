//! The words, numbers and signs of a note, each with its place.
//!
//! What a number is is seen by its shape: a size, a thread, a count, a bearing
//! or material number. Whose size it is is not known here.

use std::ops::Range;

use fits_core::{
    Length,
    size::{Number, Unit},
    standards::{b41, iso286},
};

use super::{
    joined::joined,
    numbers::{code, deviations, number, of_series, thread},
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
        } else if let Some(length) = super::dates::calendar(rest).filter(|_| !glued) {
            self.put(Kind::Sign(';'), length);
        } else if let Some((thread, length)) =
            thread(rest).or_else(|| of_series(rest)).filter(|_| !glued)
        {
            self.put(Kind::Thread(thread), length);
        } else if let Some((off, length)) =
            self.after_number().then(|| deviations(rest).or_else(|| self.one_sided(rest))).flatten()
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

    /// `.6250 -.0005`: down from the size; a sign that touches a number far smaller.
    fn one_sided(&self, rest: &str) -> Option<(Kind, usize)> {
        let Kind::Num(size) = &self.found.last()?.kind else { return None };
        let text = rest.strip_prefix(['+', '-'])?;
        let (num, length) = number(text)?;
        let zero = Num { over: 0, under: 1, ..num.clone() };
        let is_off = num.places > 0
            && num.value() < 0.02 * size.value()
            && self.text[..self.at].ends_with(' ');
        is_off.then(|| {
            let off = if rest.starts_with('-') {
                Kind::Off(Num { over: -num.over, ..num }, zero)
            } else {
                Kind::Off(zero, num)
            };
            (off, length + 1)
        })
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
        // `blocks w/ bush 3/4 x 1`, not `nut w/ washer`, which lies beside it.
        if word == "w" && rest[1..].starts_with("/ ") {
            let name = rest[2..].split([',', '.', ';']).next().unwrap_or_default();
            if !name.to_lowercase().contains("washer") {
                return self.put(Kind::Word("with".into()), 2);
            }
        }
        let has_digit = word.contains(|c: char| c.is_ascii_digit());
        let count = word.strip_prefix(['x', 'X']).and_then(|count| count.parse::<u32>().ok());
        if let Some(count) = count.filter(|_| !self.after_number()) {
            return self.put(Kind::Count(count), word.len());
        }
        if let Some(class) = self.class(word) {
            return self.put(Kind::Class(class), word.len());
        }
        let word = if word.is_empty() { &rest[..length] } else { word };
        if let Some(full) = self.cut_short(word) {
            return self.put(Kind::Word(full), word.len() + 1);
        }
        if has_digit && word.len() > 1 {
            self.put(Kind::Code(word.to_lowercase()), word.len());
        } else {
            let said = match word.to_lowercase() {
                short if matches!(short.as_str(), "shd" | "sh'd") => "should".to_owned(),
                said => said,
            };
            self.put(Kind::Word(said), word.len());
        }
    }

    /// `brg. seat`, `pin. bore` at the beginning: the full stop cuts a word short and
    /// ends no sentence. No pin has a seat, a bore or teeth: it is a pinion's.
    fn cut_short(&self, word: &str) -> Option<String> {
        let behind = self.rest().get(word.len()..)?.strip_prefix(". ")?;
        let next: String = behind.chars().take_while(|c| c.is_alphanumeric()).collect();
        if word == "pin" && self.found.is_empty() {
            let is_tooth = next.trim_end_matches('T').parse::<u32>().is_ok() && next.ends_with('T');
            let is_pinion = is_tooth || matches!(next.as_str(), "seat" | "bore" | "shft" | "shaft");
            return is_pinion.then(|| format!("{word}."));
        }
        let is_short = super::lexicon::spelled(&word.to_lowercase()).is_some();
        (is_short && next.starts_with(|c: char| c.is_ascii_lowercase() || c.is_ascii_digit()))
            .then(|| word.to_lowercase())
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
