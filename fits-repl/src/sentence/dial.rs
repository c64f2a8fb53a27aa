//! What the lathe's dial counts, in whatever words, as `dial diameter` and `dial radius`.

use std::{borrow::Cow, ops::Range};

use crate::sentence::{short::words, unsure::replaced};

/// What turns the slide, in one word.
const SLIDE: &[&str] = &[
    "dial",
    "dials",
    "dial's",
    "crossfeed",
    "crossfeed's",
    "crossslide",
    "cross-feed",
    "cross-slide",
    "handwheel",
    "handwheel's",
    "hand-wheel",
    "lathe",
    "lathe's",
];

/// In two words.
const IN_TWO: &[(&str, &str)] =
    &[("cross", "feed"), ("cross", "slide"), ("boring", "head"), ("hand", "wheel")];

/// Before it.
const LEAD: &[&str] = &["my", "the", "our", "its", "with", "lathe", "and"];

/// Between it and what it counts.
const VERBS: &[&str] = &[
    "reads",
    "read",
    "reading",
    "shows",
    "showing",
    "counts",
    "counting",
    "goes",
    "works",
    "is",
    "are",
    "set",
    "marked",
    "graduated",
    "calibrated",
    "indicates",
    "tells",
    "gives",
    "measures",
    "on",
    "in",
    "by",
    "off",
    "for",
    "to",
    "the",
    "of",
    "tool",
    "slide",
    "actual",
    "true",
    "as",
];

const COUNTS: [(&str, &[&str]); 2] = [
    ("diameter", &["dia", "diameter", "diam", "diameters"]),
    ("radius", &["radius", "rad", "radii", "radial", "travel"]),
];

/// `the dial is on the diameter` as `dial diameter`.
pub(super) fn in_short(text: &str) -> Cow<'_, str> {
    let lower = text.to_ascii_lowercase();
    if !["dial", "cross", "wheel", "lathe", "boring"].iter().any(|slide| lower.contains(slide)) {
        return Cow::Borrowed(text);
    }
    let words: Vec<(usize, String)> =
        words(text).map(|(at, word)| (at, word.to_ascii_lowercase())).collect();
    match (0..words.len()).find_map(|first| counted(text, &words, first)) {
        Some((at, counts)) => {
            Cow::Owned(replaced(text, std::iter::once((at, format!("dial {counts}")))))
        }
        None => Cow::Borrowed(text),
    }
}

/// The place of a dial that stands here with what it counts.
fn counted(
    text: &str,
    words: &[(usize, String)],
    first: usize,
) -> Option<(Range<usize>, &'static str)> {
    let is =
        |at: usize, list: &[&str]| words.get(at).is_some_and(|(_, word)| list.contains(&&**word));
    // Nothing but a blank between one word and the next.
    let goes_on = |at: usize| {
        let (Some((from, word)), Some((next, _))) = (words.get(at), words.get(at + 1)) else {
            return false;
        };
        text.get(from + word.len()..*next) == Some(" ")
    };
    let of = |at: usize| {
        let counts = COUNTS.iter().find(|(_, names)| is(at, names));
        counts.map(|(counts, _)| *counts)
    };
    let mut at = first;
    // `my lathe dial`: what comes before is no slide of its own.
    while is(at, LEAD) && goes_on(at) && (!is(at, SLIDE) || is(at + 1, SLIDE)) {
        at += 1;
    }
    let is_two = |at: usize| IN_TWO.iter().any(|(a, b)| is(at, &[a]) && is(at + 1, &[b]));
    let mut slides = 0;
    while is(at, SLIDE) || is_two(at) && goes_on(at) {
        at += if is_two(at) { 2 } else { 1 };
        slides += 1;
        if !goes_on(at - 1) {
            return None;
        }
    }
    if slides == 0 {
        return None;
    }
    let verb = at;
    while is(at, VERBS) && of(at).is_none() {
        if !goes_on(at) {
            return None;
        }
        at += 1;
    }
    let counts = of(at)?;
    // The travel of a dial gauge is its own.
    if at == verb && is(at, &["travel"]) {
        return None;
    }
    // `dial reads travel ie radius`
    if is(at + 1, &["ie", "i.e", "so", "meaning"]) && of(at + 2) == Some(counts) {
        at += 2;
    }
    // `dial reads radius not diameter`
    if goes_on(at) && is(at + 1, &["not", "or", "and", "if", "isn't"]) {
        let other = of(at + 2).filter(|other| *other != counts);
        if !is(at + 1, &["not"]) || other.is_none() {
            return None;
        }
        at += 2;
    }
    let (start, _) = words.get(first)?;
    let (from, last) = words.get(at)?;
    Some((*start..from + last.len(), counts))
}

#[cfg(test)]
mod tests {
    use super::in_short;

    #[test]
    fn what_a_dial_counts_is_told_in_two_words() {
        for (said, short) in [
            ("turn 20 h7 from 22, my dial goes by radius", "turn 20 h7 from 22, dial radius"),
            ("the dial is on the diameter ", "dial diameter "),
            ("cross slide dial reads dia, 20 h7", "dial diameter, 20 h7"),
            ("Dial's in diameters", "dial diameter"),
            ("lathe dial reads actual travel", "dial radius"),
            ("dial reads radius not dia", "dial radius"),
            ("my dial reads tool travel ie radius", "dial radius"),
            ("dial is not on radius", "dial is not on radius"),
            ("dial reads dia or radius", "dial reads dia or radius"),
            ("dial, radius 20", "dial, radius 20"),
            ("dialled 20, on dia", "dialled 20, on dia"),
            ("lathe dia", "dial diameter"),
            ("dial travel 0.5", "dial travel 0.5"),
            ("cross feed", "cross feed"),
            ("dial", "dial"),
            ("", ""),
        ] {
            assert_eq!(in_short(said), short, "{said}");
        }
    }
}
