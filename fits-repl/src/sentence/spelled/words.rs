//! The words of a line, and which of them say a number.

/// A word of the line, in small letters, and where it stands.
pub(super) struct Word {
    pub(super) text: String,
    pub(super) from: usize,
    pub(super) to: usize,
    /// Nothing but a space or a hyphen parts it from the word before.
    pub(super) follows: bool,
}

const ONES: &[&str] = &[
    "zero",
    "one",
    "two",
    "three",
    "four",
    "five",
    "six",
    "seven",
    "eight",
    "nine",
    "ten",
    "eleven",
    "twelve",
    "thirteen",
    "fourteen",
    "fifteen",
    "sixteen",
    "seventeen",
    "eighteen",
    "nineteen",
];

const TENS: &[&str] =
    &["twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety"];

/// What a number in words stands before.
pub(super) const UNITS: &[&str] = &[
    "thou",
    "thous",
    "thousandths",
    "tenths",
    "tenth",
    "mm",
    "mil",
    "mils",
    "millimetre",
    "millimetres",
    "millimeter",
    "millimeters",
    "inch",
    "inches",
    "micron",
    "microns",
    "percent",
    "per",
    "degrees",
    "ba",
    "tpi",
    "tons",
    "ton",
    "pounds",
    "newton",
    "kn",
    "foot",
    "nm",
];

/// Words after a bare `half` or `quarter` that make it a size in inches.
pub(super) const SIZED: &[&str] = &[
    "key",
    "keyway",
    "keyseat",
    "whitworth",
    "whit",
    "bsp",
    "bspp",
    "bsw",
    "bsf",
    "unc",
    "unf",
    "npt",
    "bore",
    "bar",
    "shaft",
    "reamer",
    "pin",
    "hole",
    "dowel",
    "drill",
    "bolt",
    "stud",
    "by",
    "x",
    "dia",
    "diameter",
    "diam",
    "plug",
    "rod",
    "spindle",
    "square",
    "round",
    "reamed",
];

/// What an inch may follow that is a size: `key for inch shaft`.
pub(super) const LEADS: &[&str] = &[
    "by", "for", "on", "with", "a", "keyway", "keyseat", "key", "press", "sliding", "slip",
    "running", "push", "turn", "ream", "drill", "the", "tube", "tubing", "bar", "another", "my",
];

/// Words by which two numbers side by side may be a thread.
pub(super) const THREADED: &[&str] = &[
    "tap",
    "tapped",
    "tapping",
    "thread",
    "threads",
    "threaded",
    "screw",
    "bolt",
    "stud",
    "nut",
    "clearance",
    "unc",
    "unf",
];

pub(super) fn words(line: &str) -> Vec<Word> {
    let mut found: Vec<Word> = Vec::new();
    let mut at = 0;
    while at < line.len() {
        let rest = line.get(at..).unwrap_or_default();
        let long = rest
            .bytes()
            .take_while(|byte| byte.is_ascii_alphanumeric() || matches!(byte, b'\'' | b'/' | b'.'))
            .count();
        if long == 0 {
            at += rest.chars().next().map_or(1, char::len_utf8);
            continue;
        }
        let text = rest[..long].trim_end_matches('.');
        let last = found.last().map_or(0, |word| word.to);
        let gap = line.get(last..at).unwrap_or_default();
        found.push(Word {
            text: text.to_lowercase(),
            from: at,
            to: at + text.len(),
            follows: gap == "-" || !gap.is_empty() && gap.trim().is_empty(),
        });
        at += long;
    }
    found
}

pub(super) fn digit(word: &str) -> Option<u32> {
    match word {
        "oh" | "o" | "nought" | "naught" => Some(0),
        word => ONES.iter().position(|known| *known == word).and_then(|at| u32::try_from(at).ok()),
    }
}

pub(super) fn tens(word: &str) -> Option<u32> {
    TENS.iter()
        .position(|known| *known == word)
        .and_then(|at| u32::try_from(at).ok())
        .map(|at| 20 + 10 * at)
}
