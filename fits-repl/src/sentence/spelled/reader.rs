//! Words to a number, a class or a thread, from one place of a line on.

use crate::sentence::{
    holes::{fraction_threads, number_taps},
    number::fraction_value,
    spelled::{
        PITCHED,
        words::{SIZED, THREADED, UNITS, Word, digit, tens},
    },
};

pub(super) struct Reader<'a> {
    pub(super) words: &'a [Word],
}

impl Reader<'_> {
    pub(super) fn text(&self, at: usize) -> &str {
        self.words.get(at).map_or("", |word| &*word.text)
    }

    /// The word after another with nothing between.
    pub(super) fn next(&self, at: usize) -> &str {
        self.words.get(at).filter(|word| word.follows).map_or("", |word| &*word.text)
    }

    /// `twenty`, `twenty five`, `a hundred and fifty`: its value and the place after.
    pub(super) fn whole(&self, at: usize) -> Option<(u32, usize)> {
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
    pub(super) fn part(&self, at: usize) -> Option<(u32, usize)> {
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
    pub(super) fn fraction(&self, at: usize) -> Option<(String, usize)> {
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
    pub(super) fn decimals(&self, at: usize) -> Option<(String, usize)> {
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
    pub(super) fn hundred(&self, at: usize) -> Option<(u32, bool, usize)> {
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
    pub(super) fn class(&self, at: usize) -> Option<(String, usize)> {
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
    pub(super) fn number(&self, at: usize) -> Option<(String, usize)> {
        let is_unit = |at: usize| UNITS.contains(&self.next(at));
        // `a thou and a half`, `two thou and a half`
        let whole = match self.text(at) {
            "a" => Some(1),
            word => digit(word),
        };
        if let Some(whole) = whole
            && self.next(at + 1) == "thou"
            && self.next(at + 2) == "and"
            && self.next(at + 3) == "a"
            && self.next(at + 4) == "half"
        {
            return Some((format!("{whole}.5 thou"), at + 5));
        }
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
    pub(super) fn thread(&self, at: usize) -> Option<(String, usize)> {
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
                Some(crate::sentence::Said::Ask { choices, .. }) => choices,
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

    pub(super) fn past_inch(&self, at: usize) -> usize {
        if matches!(self.next(at), "inch" | "inches") { at + 1 } else { at }
    }

    /// `3/4` and `of an inch` after it; of a thou it is not an inch.
    pub(super) fn of_inch(&self, text: String, at: usize) -> (String, usize) {
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
