//! Figures that a phrase leaves open by themselves: mils, `20 in`, a fraction of a
//! foot, `seven fifty`.

use std::ops::Range;

use super::{Said, Setting, distinct, number, read, spelled, token, token::System};

/// `12 mil`: a Briton's millimetres or an American's thousandths.
#[allow(clippy::option_option, reason = "none has no mils, some none is not a phrase")]
pub(super) fn in_mils(text: &str, setting: Setting) -> Option<Option<Said>> {
    let is_mil = |word: &str| {
        let bare = word.trim_end_matches([',', '.', '?', '!', ';', ':']).to_lowercase();
        let unit = bare.trim_start_matches(|c: char| c.is_ascii_digit() || c == '.');
        matches!(unit, "mil" | "mils").then(|| word.len() - (word.len() - bare.len()) - unit.len())
    };
    let written = |unit: &str| {
        let words = text.split(' ').map(|word| match is_mil(word) {
            Some(at) => {
                let tail = word.trim_start_matches(|c: char| c != ',' && c != '?' && c != ';');
                let tail = if word.contains([',', '?', ';']) { tail } else { "" };
                format!("{}{unit}{tail}", &word[..at])
            }
            None => word.to_owned(),
        });
        words.collect::<Vec<_>>().join(" ")
    };
    text.split(' ').find_map(is_mil)?;
    let (mm, thou) = (read(&written("mm"), setting), read(&written("thou"), setting));
    Some(match (mm, thou) {
        (Some(mm), Some(thou)) if mm != thou => {
            let choices = [mm.queries(), thou.queries()].concat();
            Some(Said::ask("a mil is a millimetre to some, a thou to others", distinct(choices)))
        }
        (mm, thou) => mm.or(thou),
    })
}

/// The text with other words at some places, given in their order.
pub(crate) fn replaced(
    text: &str,
    others: impl IntoIterator<Item = (Range<usize>, String)>,
) -> String {
    let (mut out, mut from) = (String::with_capacity(text.len()), 0);
    for (at, other) in others {
        out.extend([&text[from..at.start], &other]);
        from = at.end;
    }
    out + &text[from..]
}

/// `3/4 mm`, `1-1/2mm`: where vulgar fractions are given in millimetres, and their values.
pub(crate) fn fractions_of_a_millimetre(
    text: &str,
) -> impl Iterator<Item = (Range<usize>, f64)> + '_ {
    text.match_indices('/').filter_map(|(slash, _)| {
        // `H7/g6` parts two classes.
        number::byte(text, slash + 1).filter(u8::is_ascii_digit)?;
        let is_part = |c: char| c.is_ascii_digit() || c == '-';
        let below = number::digits(text, slash + 1);
        // Most stand before an inch, a space and a class.
        let unit = number::byte(text, number::spaces(text, below));
        unit.filter(|unit| matches!(unit, b'm' | b'M' | b'-'))?;
        let start = text[..slash].trim_end_matches(is_part).len();
        let (num, end) = number::number(text, start)?;
        let is_whole = num.is_fraction && num.unit == Some(token::Unit::Millimetre);
        is_whole.then_some((start..end, num.value))
    })
}

/// A line with commas inside its numbers: as decimal points, and as a list where it may
/// be one. None where there is none, or where one is plainly no decimal comma.
pub(crate) fn decimal_commas(text: &str) -> Option<(String, Option<String>)> {
    let is_digit = |c: char| c.is_ascii_digit();
    let mut places = Vec::new();
    for (comma, _) in text.match_indices(',') {
        let (before, after) = (&text[..comma], &text[comma + 1..]);
        if !before.ends_with(is_digit) || !after.starts_with(is_digit) {
            continue;
        }
        let (whole, rest) = (before.trim_end_matches(is_digit), after.trim_start_matches(is_digit));
        let goes_on =
            rest.strip_prefix([',', '.', '/']).is_some_and(|more| more.starts_with(is_digit));
        if goes_on || whole.ends_with([',', '.', '/']) {
            return None;
        }
        places.push(comma..comma + 1);
    }
    let with = |joint: &str| replaced(text, places.iter().map(|at| (at.clone(), joint.to_owned())));
    // No size has a thousand millimetres: `19,985`, `0,02`.
    let may_part = |at: &Range<usize>| {
        let whole = text[..at.start].len() - text[..at.start].trim_end_matches(is_digit).len();
        let places = number::digits(text, at.end) - at.end;
        !(text[at.end..].starts_with('0') || places > 2 && whole > 1)
    };
    (!places.is_empty()).then(|| (with("."), places.iter().all(may_part).then(|| with(", "))))
}

/// `in a cast hub`: cast iron, or steel? The iron is the weaker.
pub(super) fn cast(text: &str, setting: Setting) -> Option<Said> {
    const PARTS: &[&str] = &[
        "hub",
        "boss",
        "housing",
        "arm",
        "lever",
        "wheel",
        "pulley",
        "gear",
        "bracket",
        "frame",
        "body",
        "block",
        "flywheel",
        "flange",
        "plate",
        "crank",
        "handwheel",
        "roller",
        "ring",
    ];
    let lower = text.to_ascii_lowercase();
    let at = lower.find("cast ").filter(|at| *at == 0 || lower[..*at].ends_with(' '))?;
    let next = lower[at + 5..].split([' ', ',', '?']).next()?;
    if !PARTS.contains(&next) {
        return None;
    }
    let of = |metal: &str| read(&replaced(text, [(at..at + 4, metal.to_owned())]), setting);
    let (iron, steel) = (of("cast iron")?.queries(), of("steel")?.queries());
    (iron != steel)
        .then(|| Said::ask("cast iron, or steel, is not said", distinct([iron, steel].concat())))
}

/// `20 in press` where bare numbers are millimetres: inches, or 20 mm that goes in?
pub(super) fn in_or_into(text: &str, setting: Setting) -> Option<Said> {
    if setting.units != Some(System::Millimetres) {
        return None;
    }
    let words: Vec<&str> = text.split(' ').collect();
    let is_doubtful = |at: usize| {
        let [size, said, next] = [at, at + 1, at + 2].map(|at| words.get(at).copied());
        let is_large = size
            .and_then(|size| size.parse::<u32>().ok())
            .is_some_and(|size| (4..1000).contains(&size));
        let goes_on = next.is_some_and(|next| next.starts_with(|c: char| c.is_ascii_alphabetic()));
        is_large && said == Some("in") && goes_on
    };
    let doubtful: Vec<usize> = (0..words.len()).filter(|at| is_doubtful(*at)).collect();
    if doubtful.is_empty() {
        return None;
    }
    // All of them one way, so that none is left to ask about.
    let with = |unit: &str| {
        let said = words.iter().enumerate().filter_map(|(at, word)| {
            if doubtful.contains(&at) {
                return Some(format!("{word}{unit}"));
            }
            let is_in = at.checked_sub(1).is_some_and(|before| doubtful.contains(&before));
            (!is_in).then(|| (*word).to_owned())
        });
        read(&said.collect::<Vec<_>>().join(" "), setting).map(Said::queries)
    };
    let choices = [with("mm")?, with("in")?].concat();
    Some(Said::ask("`in` may be inches, or what it goes into", distinct(choices)))
}

/// `bored to 20 H7, drilled 19 1/2`: a fraction is inches, but hardly of a foot and
/// more where bare numbers are millimetres.
pub(super) fn large_fraction(text: &str, setting: Setting) -> Option<Said> {
    if setting.units != Some(System::Millimetres) {
        return None;
    }
    // Where words begin.
    let starts = std::iter::once(0).chain(text.match_indices(' ').map(|(at, _)| at + 1));
    let large: Vec<_> = starts
        .filter_map(|at| {
            let (num, end) = number::number(text, at)?;
            let is_bare = text[..end].ends_with(|c: char| c.is_ascii_digit());
            (num.is_fraction && num.value >= 12.0 && is_bare).then_some((at..end, num))
        })
        .collect();
    if large.is_empty() {
        return None;
    }
    // All of them one way, so that none is left to ask about.
    let with = |is_inch: bool| {
        let sizes = large.iter().map(|(at, num)| {
            let inches = || format!("{}in", num.text);
            (at.clone(), if is_inch { inches() } else { format!("{}mm", num.value) })
        });
        read(&replaced(text, sizes), setting).map(Said::queries)
    };
    let choices = [with(false), with(true)].into_iter().flatten().flatten().collect();
    Some(Said::ask("a fraction is of an inch: so large, or millimetres?", distinct(choices)))
}

/// `seven fifty`: .750 where bare numbers are inches; else it is asked.
#[allow(clippy::option_option, reason = "some none is not a phrase")]
pub(super) fn spoken_hundreds(text: &str, setting: Setting) -> Option<Option<Said>> {
    let inches = spelled::hundreds(text, System::Inches)?;
    // What is left after one reading is no size: `seven fifty seven fifty …`.
    if spelled::hundreds(&inches, System::Inches).is_some() {
        return Some(None);
    }
    if setting.units == Some(System::Inches) {
        return Some(read(&inches, setting));
    }
    let metric = spelled::hundreds(text, System::Millimetres)?;
    let read = |text: &str| read(text, setting).map(Said::queries);
    let choices = [read(&inches), read(&metric)].into_iter().flatten().flatten().collect();
    Some(Some(Said::ask("thousandths of an inch, or millimetres?", distinct(choices))))
}
