//! Numbers in words, as figures: `three quarter inch`, `twenty point oh two
//! five`, `one and a half thou`, `a thou under 5/8`.

use super::{
    holes::{fraction_threads, number_taps},
    number::{byte, fraction_value},
};

/// A word of the line, in small letters, and where it stands.
struct Word {
    text: String,
    from: usize,
    to: usize,
    /// Nothing but a space or a hyphen parts it from the word before.
    follows: bool,
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
const UNITS: &[&str] = &[
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
const SIZED: &[&str] = &[
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
const LEADS: &[&str] = &[
    "by", "for", "on", "with", "a", "keyway", "keyseat", "key", "press", "sliding", "slip",
    "running", "push", "turn", "ream", "drill", "the", "tube", "tubing", "bar", "another", "my",
];

/// Words by which two numbers side by side may be a thread.
const THREADED: &[&str] = &[
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

fn words(line: &str) -> Vec<Word> {
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

fn digit(word: &str) -> Option<u32> {
    match word {
        "oh" | "o" | "nought" | "naught" => Some(0),
        word => ONES.iter().position(|known| *known == word).and_then(|at| u32::try_from(at).ok()),
    }
}

fn tens(word: &str) -> Option<u32> {
    TENS.iter()
        .position(|known| *known == word)
        .and_then(|at| u32::try_from(at).ok())
        .map(|at| 20 + 10 * at)
}

struct Reader<'a> {
    words: &'a [Word],
}

impl Reader<'_> {
    fn text(&self, at: usize) -> &str {
        self.words.get(at).map_or("", |word| &*word.text)
    }

    /// The word after another with nothing between.
    fn next(&self, at: usize) -> &str {
        self.words.get(at).filter(|word| word.follows).map_or("", |word| &*word.text)
    }

    /// `twenty`, `twenty five`, `a hundred and fifty`: its value and the place after.
    fn whole(&self, at: usize) -> Option<(u32, usize)> {
        let first = match self.text(at) {
            "a" if self.next(at + 1) == "hundred" => "one",
            first => first,
        };
        let (mut value, mut end) = match (tens(first), digit(first)) {
            (Some(tens), _) => match digit(self.next(at + 1)) {
                Some(ones @ 1..=9) => (tens + ones, at + 2),
                _ => (tens, at + 1),
            },
            (None, Some(ones)) if first != "oh" && first != "o" => (ones, at + 1),
            _ => return None,
        };
        if value < 10 && self.next(end) == "hundred" {
            value *= 100;
            end += 1;
            let from = if self.next(end) == "and" { end + 1 } else { end };
            if !self.next(from).is_empty()
                && let Some((more, after)) = self.whole(from).filter(|(more, _)| *more < 100)
            {
                (value, end) = (value + more, after);
            }
        }
        Some((value, end))
    }

    /// `half`, `quarters`, `thirty seconds`: the lower figure and the place after.
    fn part(&self, at: usize) -> Option<(u32, usize)> {
        let lower = match self.next(at) {
            "half" | "halves" => 2,
            "quarter" | "quarters" => 4,
            "eighth" | "eighths" | "eights" => 8,
            "sixteenth" | "sixteenths" => 16,
            "thirtysecond" | "thirtyseconds" => 32,
            "sixtyfourth" | "sixtyfourths" => 64,
            "thirty" if matches!(self.next(at + 1), "second" | "seconds") => {
                return Some((32, at + 2));
            }
            "sixty" if matches!(self.next(at + 1), "fourth" | "fourths") => {
                return Some((64, at + 2));
            }
            _ => return None,
        };
        Some((lower, at + 1))
    }

    /// `three quarters`, `a half`, `five thirty seconds`.
    fn fraction(&self, at: usize) -> Option<(String, usize)> {
        let (upper, end) = match self.text(at) {
            "a" | "an" => (1, at + 1),
            first => match (tens(first), digit(first)) {
                // `five thirty seconds` and `twenty one thirty seconds`
                (Some(tens), _) => match digit(self.next(at + 1)) {
                    Some(ones @ 1..=9) => (tens + ones, at + 2),
                    _ => (tens, at + 1),
                },
                (None, Some(ones)) => (ones, at + 1),
                _ => return None,
            },
        };
        let (lower, end) = self.part(end)?;
        (upper > 0 && upper < lower).then(|| (format!("{upper}/{lower}"), end))
    }

    /// What follows `point`, digit by digit: `oh two five`, `seven fifty`.
    fn decimals(&self, at: usize) -> Option<(String, usize)> {
        let (mut text, mut end) = (String::new(), at);
        loop {
            let word = self.next(end);
            if let Some(ten) = tens(word) {
                let ones = digit(self.next(end + 1)).filter(|ones| (1..=9).contains(ones));
                text.push_str(&(ten + ones.unwrap_or(0)).to_string());
                end += if ones.is_some() { 2 } else { 1 };
            } else if let Some(ones) = digit(word) {
                text.push_str(&ones.to_string());
                end += 1;
            } else {
                break;
            }
        }
        (!text.is_empty() && text.len() <= 6).then_some((text, end))
    }

    /// `seven fifty`, `seven fifteen`, `seven fifty and a half thou`: so many hundreds,
    /// a half more, and the place after.
    fn hundred(&self, at: usize) -> Option<(u32, bool, usize)> {
        let first = digit(self.text(at)).filter(|first| (1..=9).contains(first))?;
        let (rest, end) = match (tens(self.next(at + 1)), digit(self.next(at + 1))) {
            (Some(tens), _) => match digit(self.next(at + 2)).filter(|ones| (1..=9).contains(ones))
            {
                Some(ones) => (tens + ones, at + 3),
                None => (tens, at + 2),
            },
            (None, Some(teen @ 10..)) => (teen, at + 2),
            _ => return None,
        };
        let is_half =
            ["and", "a", "half"].iter().zip(end..).all(|(word, at)| self.next(at) == *word);
        let end = if is_half { end + 3 } else { end };
        let end = if is_half && self.next(end) == "thou" { end + 1 } else { end };
        let goes_on = UNITS.contains(&self.next(end))
            || digit(self.next(end)).is_some()
            || tens(self.next(end)).is_some();
        (!goes_on).then_some((first * 100 + rest, is_half, end))
    }

    /// `h seven`, `capital N seven`: a class of ISO 286, and the place after it.
    fn class(&self, at: usize) -> Option<(String, usize)> {
        let case = match self.text(at) {
            "capital" | "cap" | "big" => Some(true),
            "small" | "lower" => Some(false),
            _ => None,
        };
        let letter_at = if case.is_some() { at + 1 } else { at };
        let letter = if case.is_some() { self.next(letter_at) } else { self.text(letter_at) };
        // A letter that is said alone may be a thread's or a bearing's.
        let letters = if case.is_some() { "cdefghjkmnprsuxz" } else { "cdefghknpsu" };
        let is_letter = letter.len() == 1 && letters.contains(letter);
        let next = self.next(letter_at + 1);
        let grade =
            digit(next).or_else(|| next.parse().ok()).filter(|grade| (4..=13).contains(grade))?;
        let is_spelled = digit(next).is_some() || case.is_some();
        (is_letter && is_spelled).then(|| {
            let letter =
                if case == Some(true) { letter.to_ascii_uppercase() } else { letter.to_owned() };
            (format!("{letter}{grade}"), letter_at + 2)
        })
    }

    /// A number that begins here, as figures, and the place after it.
    fn number(&self, at: usize) -> Option<(String, usize)> {
        let is_unit = |at: usize| UNITS.contains(&self.next(at));
        // `seven four seven five`: a reading, digit by digit.
        let digits = (at..).map_while(|place| {
            let word = if place == at { self.text(at) } else { self.next(place) };
            digit(word).filter(|digit| *digit < 10).or((word == "oh").then_some(0))
        });
        let digits: Vec<u32> = digits.collect();
        // `seven five one one six inch`: the last is the next number's.
        let is_next = digits.len() == 5 && UNITS.contains(&self.next(at + 5));
        let digits = &digits[..digits.len() - usize::from(is_next)];
        if (3..=5).contains(&digits.len()) && self.next(at + digits.len()) != "point" {
            let text: String = digits.iter().map(u32::to_string).collect();
            let is_bearing = matches!(self.next(at + digits.len()), "bearing" | "bearings" | "brg");
            let point = if is_bearing { "" } else { "." };
            return Some((format!("{point}{text}"), at + digits.len()));
        }
        // `sixty two oh three bearing`
        if let (Some(tens), Some(ones), "oh", Some(last)) = (
            tens(self.text(at)).filter(|tens| *tens == 60),
            digit(self.next(at + 1)).filter(|ones| *ones <= 3),
            self.next(at + 2),
            digit(self.next(at + 3)).filter(|last| *last < 10),
        ) {
            return Some((format!("{}0{last}", tens + ones), at + 4));
        }
        // `point seven five`
        if self.text(at) == "point" {
            let (text, end) = self.decimals(at + 1)?;
            return Some((format!(".{text}"), end));
        }
        // `inch and a half`, `an inch and three eighths`, `inch and 3/8`
        let inch = if matches!(self.text(at), "a" | "an" | "one") { at + 1 } else { at };
        let said = if inch == at { self.text(inch) } else { self.next(inch) };
        if said == "inch" && self.next(inch + 1) == "and" {
            let (part, end) = self.fraction(inch + 2)?;
            return Some((format!("1-{part} inch"), self.past_inch(end)));
        }
        if let Some((part, end)) = self.fraction(at)
            && self.text(at) != "a"
            && self.text(at) != "an"
        {
            return Some(self.of_inch(part, end));
        }
        if let Some((whole, end)) = self.whole(at) {
            if self.next(end) == "point"
                && let Some((text, end)) = self.decimals(end + 1)
            {
                return Some((format!("{whole}.{text}"), end));
            }
            // `one and a half thou`, `one and a quarter inch`
            let and = if matches!(self.next(end), "and") { end + 1 } else { end };
            if let Some((part, after)) = self.fraction(and)
                && (and > end || whole > 0)
                && !self.next(and).is_empty()
            {
                if matches!(self.next(after), "thou" | "tenths" | "mm" | "millimetres") {
                    let value = f64::from(whole) + fraction_value(&part);
                    return Some((format!("{value}"), after));
                }
                return Some(self.of_inch(format!("{whole}-{part}"), after));
            }
            // `one to three thou`
            let to_unit = matches!(self.next(end), "to" | "or" | "and")
                && self.whole(end + 1).is_some_and(|(_, end)| is_unit(end))
                || matches!(self.next(end), "to" | "and")
                    && self.next(end + 1).bytes().all(|byte| byte.is_ascii_digit())
                    && is_unit(end + 2);
            return (is_unit(end) || whole >= 11 || to_unit).then(|| (whole.to_string(), end));
        }
        // `half inch`, `quarter whitworth`, `half an inch`
        let text = match self.text(at) {
            "half" => "1/2",
            "quarter" => "1/4",
            _ => return None,
        };
        let after = if matches!(self.next(at + 1), "a" | "an") { at + 2 } else { at + 1 };
        if after == at + 2 && matches!(self.next(after), "thou" | "tenth" | "mm" | "millimetre") {
            let value = fraction_value(text);
            return Some((format!("{value}"), after));
        }
        match self.next(after) {
            "inch" => Some((format!("{text} inch"), after + 1)),
            "of" if matches!(self.next(after + 1), "an" | "inch") => {
                Some(self.of_inch(text.to_owned(), at + 1))
            }
            word if after == at + 1 && SIZED.contains(&word) => Some((text.to_owned(), after)),
            _ => None,
        }
    }

    /// `quarter twenty`, `five eighths eleven`, `ten thirty two`, `5/16 18`: a
    /// size and one of its own pitches.
    fn thread(&self, at: usize) -> Option<(String, usize)> {
        let (size, end) = match (self.text(at), self.fraction(at)) {
            ("half", _) => ("1/2".to_owned(), at + 1),
            ("quarter", _) => ("1/4".to_owned(), at + 1),
            (_, Some((size, end))) => (size, end),
            (text, None) if text.contains('/') => (text.to_owned(), at + 1),
            (_, None) => {
                let (size, end) = self.whole(at).filter(|(size, _)| *size <= 12)?;
                (format!("#{size}"), end)
            }
        };
        let next = self.next(end);
        let (pitch, after) = match next.parse::<u32>() {
            // `5/16 18`: a pitch in figures where a thread is spoken of.
            Ok(pitch) if self.words.iter().any(|word| THREADED.contains(&&*word.text)) => {
                (pitch, end + 1)
            }
            Ok(_) => return None,
            Err(_) if next.is_empty() => return None,
            Err(_) => self.whole(end)?,
        };
        let known = match size.strip_prefix('#') {
            Some(number) => match number_taps(number) {
                Some(super::Said::Ask { choices, .. }) => choices,
                _ => return None,
            },
            // `three quarter ten acme`: a pitch of its own.
            None if PITCHED.contains(&self.next(after)) => {
                return Some((format!("{size}-{pitch}"), after));
            }
            None => fraction_threads(&size, " tap")?,
        };
        let thread = format!("{size}-{pitch}");
        known.iter().any(|known| *known == format!("{thread} tap")).then_some((thread, after))
    }

    fn past_inch(&self, at: usize) -> usize {
        if matches!(self.next(at), "inch" | "inches") { at + 1 } else { at }
    }

    /// `3/4` and `of an inch` after it; of a thou it is not an inch.
    fn of_inch(&self, text: String, at: usize) -> (String, usize) {
        let after = match (self.next(at), self.next(at + 1), self.next(at + 2)) {
            ("of", "an", "inch") => at + 3,
            ("of" | "an", "inch", _) => at + 2,
            ("inch" | "inches", ..) => at + 1,
            ("of", "a", "thou") | ("a", "thou", _) => {
                let skip = if self.next(at) == "of" { 2 } else { 1 };
                return (format!("{}", fraction_value(&text)), at + skip);
            }
            _ => return (text, at),
        };
        (format!("{text} inch"), after)
    }
}

/// The line with its numbers in words as figures.
pub(super) fn figures(line: &str) -> String {
    let words = words(line);
    let reader = Reader { words: &words };
    let mut text = String::with_capacity(line.len());
    let (mut at, mut from) = (0, 0);
    while at < words.len() {
        if let Some((thread, after)) = reader.class(at).or_else(|| reader.thread(at)) {
            text.push_str(&line[from..words[at].from]);
            text.push_str(&thread);
            from = words[after - 1].to;
            at = after;
            continue;
        }
        let is_inch = words[at].text == "inch"
            && (at == 0 || !words[at].follows || LEADS.contains(&&*words[at - 1].text))
            && (matches!(
                reader.next(at + 1),
                "od" | "long"
                    | "id"
                    | "dia"
                    | "thick"
                    | "press"
                    | "outside"
                    | "inside"
                    | "tube"
                    | "across"
            ) || SIZED.contains(&reader.next(at + 1)))
            && !line[..words[at].from].trim_end().ends_with(|c: char| c.is_ascii_digit());
        let found = if is_inch { Some(("1 inch".into(), at + 1)) } else { reader.number(at) };
        match found {
            // `a half` after a number of its own kind is left to the reader of figures.
            Some((number, after))
                if !line[..words[at].from].trim_end().ends_with(|c: char| c.is_ascii_digit())
                    || number.len() > 3 =>
            {
                text.push_str(&line[from..words[at].from]);
                text.push_str(&number);
                from = words[after - 1].to;
                at = after;
            }
            _ => at += 1,
        }
    }
    text.push_str(&line[from..]);
    ranges(&about_a_size(&text))
}

/// Threads that may have any pitch.
const PITCHED: &[&str] = &["acme", "stub", "bsw", "bsf", "whitworth", "whit", "un", "uns", "me"];

/// The line with `seven fifty` as the figures it says, in thousandths of an inch or
/// as millimetres; none where none is said.
pub(super) fn hundreds(line: &str, system: super::System) -> Option<String> {
    let words = words(line);
    let reader = Reader { words: &words };
    let mut text = String::new();
    let (mut from, mut at) = (0, 0);
    while at < words.len() {
        let found = reader.hundred(at).filter(|_| {
            let before = line[..words[at].from].trim_end();
            reader.thread(at).is_none()
                && reader.fraction(at).is_none()
                && !before.ends_with(|c: char| c.is_ascii_digit())
                && !at.checked_sub(1).is_some_and(|before| {
                    matches!(reader.text(before), "point" | "oh" | "number" | "and")
                        || digit(reader.text(before)).is_some()
                })
        });
        let Some((value, is_half, after)) = found else {
            at += 1;
            continue;
        };
        text.push_str(&line[from..words[at].from]);
        let half = if is_half { "5" } else { "" };
        let figures = match system {
            super::System::Inches => format!(".{value}{half}"),
            super::System::Millimetres => format!("{}.{}{half}mm", value / 100, value % 100),
        };
        text.push_str(&figures);
        from = words[after - 1].to;
        at = after;
    }
    (from > 0).then(|| text + &line[from..])
}

const SERIES: &[&str] = &["bsp", "bspp", "bsw", "bsf", "whitworth", "whit", "npt", "unc", "unf"];

/// `between .7503 and .7505` as `.7503..7505`; `the collar's 20` as `the collar
/// is 20`; `1/2 inch BSP` as `1/2 BSP`.
fn ranges(line: &str) -> String {
    let words = words(line);
    let value = |word: &Word| {
        let number = word.text.trim_end_matches(|c: char| c.is_ascii_alphabetic());
        let unit = &word.text[number.len()..];
        let places = number.split_once('.').map_or(0, |(_, places)| places.len());
        (matches!(unit, "" | "in" | "mm") && places > 1)
            .then(|| number.parse::<f64>().ok().map(|value| (value, number.len())))
            .flatten()
    };
    let is_threaded = words.iter().any(|word| THREADED.contains(&&*word.text));
    let text_of = |at: usize| words.get(at).map_or("", |word| &*word.text);
    let mut text = String::with_capacity(line.len());
    let (mut from, mut at) = (0, 0);
    while let Some(word) = words.get(at) {
        let before = at.checked_sub(1).map_or("", text_of);
        // `m8 tap drill`: a thread, where a thread is spoken of.
        if is_threaded
            && line[word.from..word.to].starts_with('m')
            && word.text.len() > 1
            && word.text[1..].bytes().all(|byte| byte.is_ascii_digit())
        {
            text.push_str(&line[from..word.from]);
            text.push('M');
            from = word.from + 1;
        }
        // `1/2 inch 10 tpi acme`: size and pitch of one thread.
        let pitch = if matches!(text_of(at + 1), "inch" | "in") { at + 2 } else { at + 1 };
        let is_tpi = matches!(text_of(pitch + 1), "tpi")
            && PITCHED.iter().chain(SERIES).any(|series| text_of(pitch + 2) == *series);
        let is_number = |word: &str| {
            word.starts_with(|c: char| c.is_ascii_digit())
                && word.bytes().all(|byte| byte.is_ascii_digit() || byte == b'/')
        };
        if is_tpi && is_number(&word.text) && is_number(text_of(pitch)) {
            text.push_str(&line[from..word.to]);
            text.push('-');
            text.push_str(text_of(pitch));
            from = words[pitch + 1].to;
            at = pitch + 2;
            continue;
        }
        // `065 wall`, `65 wall`: gauge stock is called by its thou.
        let is_thin = text_of(at + 1) == "wall" && (2..=3).contains(&word.text.len());
        if is_thin && word.text.bytes().all(|byte| byte.is_ascii_digit()) {
            let shows_inches = line.contains('/') || line.contains("inch") || line.contains(" in ");
            let goes_on = line[..word.from].ends_with(['.', '/', '-']);
            if !goes_on && (word.text.starts_with('0') && word.text.len() == 3) {
                text.push_str(&line[from..word.from]);
                text.push('.');
                from = word.from;
            } else if !goes_on
                && shows_inches
                && word.text.parse().is_ok_and(|wall: u32| wall >= 20)
            {
                text.push_str(&line[from..word.to]);
                text.push_str(" thou");
                from = word.to;
            }
        }
        let bare = word.text.strip_suffix("'s");
        if let (Some((low, _)), "to" | "and", Some(next)) =
            (value(word), text_of(at + 1), words.get(at + 2))
            && let Some((high, _)) = value(next)
            && (text_of(at + 1) == "to" || before == "between")
            && before != "from"
            && low < high
            && high < 1.004 * low
            && words[at + 1].follows
            && next.follows
        {
            let start = if before == "between" { words[at - 1].from } else { word.from };
            text.push_str(&line[from..start]);
            text.push_str(&line[word.from..word.to]);
            text.push_str("..");
            text.push_str(&line[next.from..next.to]);
            from = next.to;
            at += 3;
            continue;
        }
        if let Some(bare) = bare
            && !["it", "what", "that", "there", "he", "she", "let", "where", "who", "here", "how"]
                .contains(&bare)
        {
            let is_number = text_of(at + 1).starts_with(|c: char| c.is_ascii_digit() || c == '.');
            text.push_str(&line[from..word.to - 2]);
            text.push_str(if is_number { " is" } else { "" });
            from = word.to;
        } else if word.text == "inch"
            && SERIES.contains(&text_of(at + 1))
            && before.contains(|c: char| c.is_ascii_digit())
        {
            text.push_str(&line[from..word.from]);
            from = words[at + 1].from;
        }
        at += 1;
    }
    text.push_str(&line[from..]);
    text
}

/// `2 thou over 5/8`, `a tenth under 1/2`: the size itself, in decimals.
fn about_a_size(line: &str) -> String {
    let words = words(line);
    let is_taper = words.iter().any(|word| {
        ["taper", "tail", "collar", "align", "bar", "chuck", "headstock"]
            .iter()
            .any(|lead| word.text.starts_with(lead))
    });
    let mut text = String::with_capacity(line.len());
    let (mut from, mut at) = (0, 0);
    while let Some(word) = words.get(at) {
        if let Some((size, after)) = offset(&words, at).filter(|_| !is_taper)
            && words[at + 1..after].iter().all(|word| word.follows)
            && byte(line, words[after - 1].to) != Some(b'-')
        {
            text.push_str(&line[from..word.from]);
            text.push_str(&size);
            from = words[after - 1].to;
            at = after;
        } else {
            at += 1;
        }
    }
    text.push_str(&line[from..]);
    text
}

fn offset(words: &[Word], at: usize) -> Option<(String, usize)> {
    let text = |at: usize| words.get(at).map_or("", |word| &*word.text);
    // In ten-millionths of an inch: every 64th is whole.
    let amount = match text(at) {
        "a" | "an" | "one" => 1.0,
        number if number.bytes().all(|byte| byte.is_ascii_digit() || byte == b'.') => {
            number.parse::<f64>().ok()?
        }
        _ => return None,
    };
    let step = match text(at + 1) {
        "thou" => 10_000.0,
        "tenth" | "tenths" => 1_000.0,
        _ => return None,
    };
    let (sign, next) = match (text(at + 2), text(at + 3)) {
        ("over" | "above" | "under" | "below", "size") => return None,
        ("over" | "above", _) => (1.0, at + 3),
        ("under" | "below", _) => (-1.0, at + 3),
        ("bigger" | "larger", "than") => (1.0, at + 4),
        ("smaller" | "less", "than") | ("shy", "of") => (-1.0, at + 4),
        _ => return None,
    };
    let base = text(next);
    let is_size = base.contains('/') && base.bytes().all(|b| b.is_ascii_digit() || b == b'/');
    let mut after = next + 1;
    let value = if is_size {
        fraction_value(base)
    } else if matches!(base, "a" | "an") && text(after) == "inch" {
        1.0
    } else {
        let whole: f64 = base.parse().ok()?;
        if !matches!(text(after), "inch" | "in") || whole >= 4.0 {
            return None;
        }
        whole
    };
    if matches!(text(after), "inch" | "in") {
        after += 1;
    }
    let size = value * 1e7 + sign * amount * step;
    (value > 0.0 && value < 64.0 && amount < 100.0 && size > 0.0).then(|| {
        let text = format!("{:.7}", size / 1e7);
        (format!("{}in", text.trim_end_matches('0')), after)
    })
}

#[cfg(test)]
mod tests {
    use super::figures;

    #[test]
    fn numbers_in_words() {
        for (said, figure) in [
            ("a three quarter inch hole", "a 3/4 inch hole"),
            ("inch and a quarter shaft", "1-1/4 inch shaft"),
            ("an inch and three eighths", "1-3/8 inch"),
            ("three quarters of an inch", "3/4 inch"),
            ("twenty point oh two five millimetres", "20.025 millimetres"),
            ("nought point seven five inch", "0.75 inch"),
            ("point seven fifty", ".750"),
            ("one and a half thou", "1.5 thou"),
            ("one and a quarter", "1-1/4"),
            ("half a thou", "0.5 thou"),
            ("half an inch", "1/2 inch"),
            ("twenty three thirty-seconds", "23/32"),
            ("forty millimetre bar", "40 millimetre bar"),
            ("sixty five percent", "65 percent"),
            ("six BA", "6 BA"),
            ("one to three thou", "1 to 3 thou"),
            ("quarter whitworth", "1/4 whitworth"),
            ("two thou over 5/8", "0.627in"),
            ("three tenths under half an inch", "0.4997in"),
            ("one thou under three quarter, what", "0.749in, what"),
            ("by an inch long, inch od", "by an inch long, 1 inch od"),
            ("a hundred and fifty mm", "150 mm"),
            ("between .7503 and .7505 deep", ".7503...7505 deep"),
            ("hole .7500 to .7505, now .7", "hole .7500...7505, now .7"),
            ("the collar's 20 and the tube's bore", "the collar is 20 and the tube bore"),
            ("a half inch BSP", "a 1/2 BSP"),
            ("quarter twenty tap", "1/4-20 tap"),
            ("five eights eleven", "5/8-11"),
            ("ten thirty two tap", "#10-32 tap"),
            ("5/16 18 tapped", "5/16-18 tapped"),
            ("bar 5/16 18 long", "bar 5/16 18 long"),
            // Words that are not numbers, counts, sums and tapers stay.
            ("two washers and one hub", "two washers and one hub"),
            ("half of .750", "half of .750"),
            ("test bar 3 thou over 6 in", "test bar 3 thou over 6 in"),
            ("the point is one of them", "the point is one of them"),
        ] {
            assert_eq!(figures(said), figure, "{said}");
        }
    }
}
