//! What has a name with figures in it: classes, threads, gauges, bearings.

use fits_core::standards::bought::Ball;
use fits_core::standards::iso286::Class;
use fits_core::standards::thread::Thread;

use crate::sentence::{
    number::{byte, digits, ends, fraction, plain_number, spaces, words},
    table::word_at,
    token::Token,
};

pub(crate) fn class(line: &str, at: usize) -> Option<(Token, usize)> {
    let rest = line.get(at..)?;
    let letters = rest.bytes().take_while(u8::is_ascii_alphabetic).count();
    if letters == 0 || letters > 2 {
        return None;
    }
    let upper = rest.get(..letters)?.to_ascii_uppercase();
    if matches!(&*upper, "RC" | "LC" | "LT" | "LN" | "FN") {
        let from = spaces(line, at + letters);
        let from = if byte(line, from) == Some(b'-') { from + 1 } else { from };
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
    // `M7.3` is not a class of a third.
    let is_decimal = byte(line, end) == Some(b'.')
        && byte(line, end + 1).is_some_and(|next| next.is_ascii_digit());
    if !(ends(line, end) || goes_on) || is_decimal || end == at + letters {
        return None;
    }
    let text = line.get(at..end)?;
    let _: Class = text.parse().ok()?;
    let is_hole = text.starts_with(|c: char| c.is_ascii_uppercase());
    Some((if is_hole { Token::Hole(text.to_owned()) } else { Token::Shaft(text.to_owned()) }, end))
}

/// One class, or two as a pair: the hole first whatever came first.
pub(crate) fn classes(line: &str, at: usize) -> Option<(Token, usize)> {
    let (first, end) = class(line, at)?;
    if matches!(first, Token::InchClass(_)) {
        return Some((first, end));
    }
    let slash = byte(line, end) == Some(b'/');
    // `H8 over f7`
    let over = line.get(end..end + 6).is_some_and(|said| said == " over ");
    let from = match (slash, over) {
        (true, _) => end + 1,
        (false, true) => end + 6,
        _ => spaces(line, end),
    };
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

pub(crate) const SERIES: &[&str] = &[
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
pub(crate) fn thread(line: &str, at: usize) -> Option<(Token, usize)> {
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
        let times = line.get(from..)?.chars().next();
        let times = times.filter(|c| matches!(c, 'x' | 'X' | '\u{d7}' | '*'));
        let times = times
            .map(|times| from + times.len_utf8())
            .or_else(|| word_at(line, from).filter(|(word, _)| word == "by").map(|(_, end)| end));
        if let Some(times) = times
            && let Some((pitch, after)) = plain_number(line, spaces(line, times))
        {
            name = format!("{name}x{pitch}");
            end = after;
            has_pitch = true;
        }
        // A small `m8` is a class too, but where a screw or its hole is spoken of.
        let is_screw = || {
            let of_screws =
                ["tap", "drill", "clear", "thread", "screw", "bolt", "stud", "nut", "fine"];
            let has_size = line.bytes().filter(u8::is_ascii_digit).count() > end - at - 1;
            !has_size && of_screws.iter().any(|word| line.contains(word))
        };
        // `m10 6g`: a screw with its class.
        let is_classed = || {
            let next = line[spaces(line, end)..].split([' ', ',', '?']).next().unwrap_or_default();
            let is_class = matches!(next.as_bytes(), [b'3'..=b'9', b'e'..=b'h' | b'E'..=b'H']);
            is_class && !line[..at].bytes().any(|byte| byte.is_ascii_digit())
        };
        let is_small = first == b'm' && !has_pitch;
        if !ends(line, end) || (is_small && !is_screw() && !is_classed()) {
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
                // `2-24` is a thread of two inches: a wire so thin has no room for it.
                let coarsest = match size {
                    0..=3 => 40,
                    4 | 5 => 32,
                    6 | 8 => 28,
                    _ => 24,
                };
                size <= 12 && tpi >= coarsest
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
pub(crate) fn npt_pitch(size: &str) -> Option<u32> {
    Some(match size {
        "1/16" | "1/8" => 27,
        "1/4" | "3/8" => 18,
        "1/2" | "3/4" => 14,
        _ => return None,
    })
}

pub(crate) fn gauge(line: &str, at: usize) -> Option<(Token, usize)> {
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
        "letter" | "ltr" | "lttr" => {
            let from = spaces(line, end);
            let letter = line.get(from..from + 1)?;
            (letter.bytes().all(|byte| byte.is_ascii_alphabetic()) && ends(line, from + 1)).then(
                || (Token::Gauge(format!("letter {}", letter.to_ascii_uppercase())), from + 1),
            )
        }
        _ => {
            // `F drill`, `drill F`
            let letter = line.get(at..=at).filter(|_| word.len() == 1)?;
            let next = word_at(line, spaces(line, end)).map(|(next, _)| next);
            let before = line.get(..at)?.trim_end().to_lowercase();
            let is_drill = |word: &str| matches!(word, "drill" | "drills" | "bit");
            (letter.bytes().all(|byte| byte.is_ascii_uppercase() && byte != b'I')
                && (next.is_some_and(|next| is_drill(&next))
                    || before.ends_with("drill")
                    || before.ends_with("drill size")))
            .then(|| (Token::Gauge(format!("letter {letter}")), at + 1))
        }
    }
}

/// Ball bearings by number, `6203`, `6203-2RS`, `R8`. A number that is also a
/// size or a word of its own (`608`, `R8`) has the bearing said beside it.
pub(crate) fn bearing(line: &str, at: usize) -> Option<(Token, usize)> {
    let rest = line.get(at..)?;
    let letters = rest.bytes().take_while(u8::is_ascii_alphabetic).count();
    let number = letters + rest.bytes().skip(letters).take_while(u8::is_ascii_digit).count();
    let end = at
        + number
        + rest
            .bytes()
            .skip(number)
            .take_while(|byte| byte.is_ascii_alphanumeric() || *byte == b'-')
            .count();
    if number == letters || byte(line, end) == Some(b'.') || byte(line, end) == Some(b'/') {
        return None;
    }
    // `6001 2rs`: its seals in a word of their own.
    let apart = word_at(line, spaces(line, end)).and_then(|(seals, sealed)| {
        let (ball, _) = Ball::listed(&format!("{}-{seals}", line.get(at..end)?))?;
        seals.bytes().any(|byte| byte.is_ascii_alphabetic()).then_some((ball, sealed))
    });
    let is_sealed = apart.is_some();
    let (ball, end) = match apart {
        Some(found) => found,
        None => (Ball::listed(line.get(at..end)?)?.0, end),
    };
    let (word, _) = word_at(line, spaces(line, end)).unwrap_or_default();
    let before = line.get(..at)?.trim_end().to_lowercase();
    // However it is spelled: `brg`, `bearings`, `baring`.
    let is_said = is_sealed
        || word.starts_with('b') && (word.contains("ring") || word.contains("rg"))
        || matches!(&*word, "ball" | "race")
        || ["bearing", "brg"].iter().any(|said| before.ends_with(said));
    // `R8 idler, the outer turns`: no class stands beside a ring.
    let is_said = is_said
        || (letters > 0 || rest.get(..number)?.len() == 3)
            && line.to_lowercase().split(|c: char| !c.is_alphabetic()).any(|word| {
                matches!(
                    word,
                    "bearing"
                        | "bearings"
                        | "brg"
                        | "outer"
                        | "inner"
                        | "idler"
                        | "pulley"
                        | "race"
                )
            });
    // `608 housing bore`: the one figure of the line, and no shop's size.
    let is_alone = || {
        let figures = line.bytes().filter(u8::is_ascii_digit).count();
        let unit = word_at(line, spaces(line, end)).is_some_and(|(word, _)| {
            matches!(&*word, "mm" | "millimetres" | "millimeters" | "thou" | "in" | "inch")
        });
        number == 3 && letters == 0 && figures == 3 && !unit && ends(line, end)
    };
    (is_said || rest.get(..number)?.len() == 4 && letters == 0 || is_alone())
        .then_some((Token::Bearing(ball), end))
}

pub(crate) fn general(line: &str, at: usize) -> Option<(Token, usize)> {
    let rest = line.get(at..)?.as_bytes();
    let begins = |lead: &str| {
        rest.get(..lead.len()).is_some_and(|it| it.eq_ignore_ascii_case(lead.as_bytes()))
    };
    let lead =
        ["iso 2768-1", "iso 2768", "iso2768", "2768-1", "2768"].iter().find(|lead| begins(lead))?;
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

/// `2A`, `6H/6g`: the class of one side, or the nut's and the screw's.
pub(crate) fn thread_classes(line: &str, at: usize) -> Option<(Token, usize)> {
    let (first, end) = thread_class(line, at)?;
    if byte(line, end) == Some(b'/')
        && let Token::ThreadClass(first) = &first
        && let Some((Token::ThreadClass(second), end)) = thread_class(line, end + 1)
    {
        return Some((Token::ThreadClass(format!("{first}/{second}")), end));
    }
    Some((first, end))
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
