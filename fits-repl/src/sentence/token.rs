//! What stands at a place of the line: a number with its unit, a class, a
//! thread, a temperature… Words are the table's.

use fits_core::standards::bought::Ball;

use crate::sentence::{
    named::{bearing, classes, gauge, general, thread, thread_classes},
    number::{byte, deviations, digits, ends, number, plain_number, spaces, span, spelled_number},
    table::word_at,
    tools::trimmed,
};

/// A unit that was written.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Unit {
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
pub(crate) struct Num {
    /// As a plain query has it, without a unit.
    pub(crate) text: String,
    /// Its value, to weigh what can be meant: figures go by the text.
    pub(crate) value: f64,
    pub(crate) unit: Option<Unit>,
    pub(crate) is_fraction: bool,
    /// Digits after the point.
    pub(crate) places: usize,
    /// It begins with a point.
    pub(crate) leads: bool,
    pub(crate) is_negative: bool,
}

impl Num {
    /// Which of two is the larger.
    pub(crate) fn by_size(&self, other: &Self, system: System) -> std::cmp::Ordering {
        self.mm(system).total_cmp(&other.mm(system))
    }

    pub(crate) fn mm(&self, system: System) -> f64 {
        self.value
            * match (self.unit, system) {
                (Some(Unit::Inch), _) | (None, System::Inches) => 25.4,
                (Some(Unit::Millimetre), _) | (None, System::Millimetres) => 1.0,
                (Some(Unit::Thou), _) => 0.0254,
                (Some(Unit::Tenth), _) => 0.00254,
                (Some(Unit::Micron), _) => 0.001,
            }
    }

    /// The bore of a tube: its outside less two walls, in the outside's unit.
    pub(crate) fn less_twice(&self, wall: &Self, system: System) -> Option<Self> {
        let share = 1.0 - 2.0 * wall.mm(system) / self.mm(system);
        let value = self.value * share;
        (share > 0.0).then(|| Self {
            text: trimmed(value),
            value,
            is_fraction: false,
            places: 3,
            ..self.clone()
        })
    }

    /// So many times as large.
    pub(crate) fn times(&self, factor: f64) -> Self {
        let value = self.value * factor;
        Self { text: trimmed(value), value, is_fraction: false, ..self.clone() }
    }

    /// As a plain query has it, with its unit.
    pub(crate) fn plain(&self, system: System) -> String {
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
pub(crate) enum Token {
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
    /// A ball bearing by its number.
    Bearing(Ball),
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

/// `minus 20 F`
fn below_zero(line: &str, at: usize) -> Option<(Token, usize)> {
    let word = "minus ";
    line.get(at..at + word.len()).filter(|start| start.eq_ignore_ascii_case(word))?;
    match quantity(line, at + word.len())? {
        (Token::Temperature(text), end) => Some((Token::Temperature(format!("-{text}")), end)),
        _ => None,
    }
}

/// What a number with more than a length after it is.
#[allow(clippy::too_many_lines, reason = "one rule after another, each short")]
pub(crate) fn quantity(line: &str, at: usize) -> Option<(Token, usize)> {
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
    // A small letter only close to its figure: `95f`.
    if let Some(letter) =
        rest.chars().next().map(|c| if is_glued { c.to_ascii_uppercase() } else { c })
        && matches!(letter, 'F' | 'C')
        && ends(line, after + 1)
    {
        return Some((Token::Temperature(format!("{text}{letter}")), after + 1));
    }
    // `120 c`, where no class can follow.
    if !is_glued
        && matches!(byte(line, after), Some(b'c' | b'f'))
        && matches!(byte(line, after + 1), None | Some(b' ' | b',' | b'?' | b'.'))
        && text.parse::<f64>().is_ok_and(|degrees| degrees >= 30.0)
        && !byte(line, spaces(line, after + 1)).is_some_and(|next| next.is_ascii_digit())
    {
        let letter = line[after..=after].to_ascii_uppercase();
        return Some((Token::Temperature(format!("{text}{letter}")), after + 1));
    }
    let (word, word_end) = word_at(line, after)?;
    for per_inch in [
        "threads per inch",
        "threads to the inch",
        "threads an inch",
        "thread per inch",
        "to the inch",
    ] {
        if rest.get(..per_inch.len()).is_some_and(|said| said.eq_ignore_ascii_case(per_inch)) {
            return Some((Token::PerInch(text), after + per_inch.len()));
        }
    }
    match &*word {
        "tpi" => return Some((Token::PerInch(text), word_end)),
        "percent" | "pct" => return Some((Token::Percent(text), word_end)),
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
        "lbf" | "lb" | "lbs" => {
            let (next, end) = word_at(line, word_end + 1)?;
            let unit = match &*next {
                "ft" | "foot" | "feet" => "lbf-ft",
                "in" | "inch" => "lbf-in",
                _ => return None,
            };
            return Some((Token::Torque(format!("{text} {unit}")), end));
        }
        "lbf-ft" | "lbft" => return Some((Token::Torque(format!("{text} lbf-ft")), word_end)),
        "tons" | "ton" => return Some((Token::Force(format!("{text} tons")), word_end)),
        "ft" | "foot" | "in" | "inch" => {
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
                _ => None,
            };
        }
        "newton" | "newtons" => {
            let (next, end) = word_at(line, spaces(line, word_end) + usize::from(gap(word_end)))?;
            if matches!(&*next, "metre" | "metres" | "meter" | "meters" | "m") {
                return Some((Token::Torque(format!("{text} Nm")), end));
            }
        }
        _ => {}
    }
    None
}

pub(crate) fn times(line: &str, at: usize) -> Option<(Token, usize)> {
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
pub(crate) fn ansi_class(line: &str, at: usize) -> Option<(Token, usize)> {
    let (word, end) = word_at(line, at)?;
    let from = spaces(line, end);
    let end = digits(line, from);
    let class: u32 = line.get(from..end)?.parse().ok()?;
    (word == "class" && (1..=9).contains(&class) && ends(line, end))
        .then_some((Token::AnsiClass(class), end))
}

/// `20x26x20`, `12 x 16`: a cross between two sizes.
pub(crate) fn cross(line: &str, at: usize) -> Option<(Token, usize)> {
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

/// What stands here that is not a word, and where it ends.
pub(crate) fn token_at(line: &str, at: usize) -> Option<(Token, usize)> {
    let first = byte(line, at)?;
    match first {
        b',' | b';' | b':' | b'?' | b'!' | b'(' | b')' => return Some((Token::Break, at + 1)),
        b'.' if byte(line, at + 1).is_none_or(|next| next == b' ') => {
            return Some((Token::Break, at + 1));
        }
        // `hole 16.02 / shaft 15.95`
        b'/' if byte(line, at + 1) == Some(b' ') && line[..at].ends_with(' ') => {
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
    if let Some(found) = below_zero(line, at) {
        return Some(found);
    }
    if line.get(at..)?.starts_with('\u{2205}')
        || line.get(at..)?.starts_with(['\u{d8}', '\u{f8}'])
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
        .or_else(|| general(line, at))
        .or_else(|| quantity(line, at))
        .or_else(|| thread(line, at))
        .or_else(|| thread_classes(line, at))
        .or_else(|| classes(line, at))
        .or_else(|| gauge(line, at))
        .or_else(|| grade(line, at))
        .or_else(|| ansi_class(line, at))
        .or_else(|| span(line, at))
        .or_else(|| times(line, at))
        .or_else(|| number(line, at).map(|(num, end)| (Token::Number(num), end)))
        .or_else(|| spelled_number(line, at).map(|(num, end)| (Token::Number(num), end)))
}

pub(crate) fn grade(line: &str, at: usize) -> Option<(Token, usize)> {
    let rest = line.get(at..)?;
    // `IT8`, `grade 8`
    let from = match word_at(line, at) {
        _ if rest.starts_with("IT") => at + 2,
        Some((word, end)) if word == "grade" => spaces(line, end),
        _ => return None,
    };
    let end = digits(line, from);
    let grade: u32 = line.get(from..end)?.parse().ok()?;
    (grade <= 18 && ends(line, end)).then_some((Token::Grade(grade), end))
}
