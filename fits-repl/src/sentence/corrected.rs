//! A speaker who takes back what he said: `20 mm shaft, no wait make it 25`.

use std::ops::Range;

use super::{Slip, line::Line, token::Token, view::Item};

/// Words that take back what stands before them, the longest first.
const TAKES_BACK: &[&str] = &[
    "no wait make it",
    "no wait make that",
    "no sorry make it",
    "no sorry make that",
    "wait no make it",
    "hang on make it",
    "sorry make that",
    "sorry make it",
    "actually make it",
    "actually make that",
    "no make it",
    "no make that",
    "or make that",
    "scratch that make it",
    "sorry i mean",
    "sorry i meant",
    "no i mean",
    "no i meant",
    "er i mean",
    "i should say",
    "wait i mean",
    "i mean",
    "i meant",
    "no wait",
    "wait no",
    "no sorry",
    "sorry no",
    "er no",
    "um no",
    "oh no",
    "no hang on",
    "hang on no",
    "hang on",
    "hold on",
    "scratch that",
    "strike that",
    "scrub that",
    "forget that",
    "correction",
    "make that",
    "my mistake",
    "my bad",
    "oops",
    "whoops",
    "sorry",
    "nope",
    "or rather",
    "no no",
    "wait",
];

/// Of these some take nothing back where nothing of the kind was said.
const WEAK: &[&str] = &["make that", "hold on", "hang on", "wait", "sorry", "oops", "whoops"];

/// What a correction takes back: its own kind, and no other.
#[derive(Clone, Copy, PartialEq)]
enum Kind {
    Size,
    Fit,
    Thread,
    Metal,
    Part,
}

fn kind(token: &Token) -> Option<Kind> {
    Some(match token {
        Token::Number(_) => Kind::Size,
        Token::Hole(_)
        | Token::Shaft(_)
        | Token::Pair(_)
        | Token::InchClass(_)
        | Token::Word { kind: "fit", .. } => Kind::Fit,
        Token::Thread { .. } => Kind::Thread,
        Token::Word { kind: "material", .. } => Kind::Metal,
        Token::Word { kind: "hole" | "shaft", .. } => Kind::Part,
        _ => return None,
    })
}

/// The line as it is meant, with what was taken back.
pub(super) struct Corrected {
    pub(super) text: String,
    pub(super) slip: Option<Slip>,
}

/// Which small letters a text holds, a bit each.
fn letters(text: &str) -> u32 {
    let small = text.bytes().filter(u8::is_ascii_lowercase);
    small.fold(0, |found, byte| found | 1 << (byte - b'a'))
}

/// Where words that take back stand, between two words.
fn taken_back(text: &str) -> Option<Range<usize>> {
    let lower = text.to_ascii_lowercase();
    let is_edge = |c: Option<char>| c.is_none_or(|c| !c.is_alphanumeric() && c != '\'');
    let typed = letters(&lower);
    // Most lines lack some letter of each.
    TAKES_BACK.iter().filter(|words| letters(words) & !typed == 0).find_map(|words| {
        let at = lower.find(words)?;
        let end = at + words.len();
        (is_edge(lower[..at].chars().next_back()) && is_edge(lower[end..].chars().next()))
            .then_some(at..end)
    })
}

/// The line without its slips of the tongue: the later of two sizes, fits or
/// metals stands in the place of the earlier. None where it is not known which
/// of them is taken back.
pub(super) fn corrected(text: &str) -> Option<Corrected> {
    // Words that are alike side by side: `no, wait`.
    let plain = text.replace("no, ", "no ").replace("wait, ", "wait ").replace("sorry, ", "sorry ");
    let Some(at) = taken_back(&plain) else {
        return Some(Corrected { text: text.to_owned(), slip: None });
    };
    let lead = |c: char| matches!(c, ' ' | ',' | '.' | '-' | ':' | ';' | '!' | '(' | ')');
    let before = plain[..at.start].trim_end_matches(lead);
    let after = plain[at.end..].trim_start_matches(lead);
    let (said, _) = Line::new(before).gist();
    let (meant, _) = Line::new(after).gist();
    // `sorry, what is …`: nothing was said yet, or nothing more is.
    let is_said = |items: &[Item]| items.iter().any(|item| kind(&item.token).is_some());
    if !is_said(&said.items) || !is_said(&meant.items) {
        let rest = format!("{before} {after}");
        let more = corrected(rest.trim())?;
        return Some(more);
    }
    let first = meant.items.iter().find(|item| {
        !matches!(
            item.token,
            Token::Break
                | Token::Word { kind: "small" | "connector" | "asking" | "start" | "should", .. }
        )
    })?;
    let Some(of) = kind(&first.token) else {
        // `the correction over 8 in` is what a tailstock wants.
        let is_noun = plain[at.clone()].eq_ignore_ascii_case("correction");
        return is_noun.then(|| Corrected { text: text.to_owned(), slip: None });
    };
    let Some(old) = said.items.iter().rev().find(|item| kind(&item.token) == Some(of)) else {
        // `make that a press`: of the kind nothing was said, and nothing is taken back.
        let words = plain[at.clone()].to_ascii_lowercase();
        let is_weak = WEAK.contains(&&*words);
        return is_weak.then(|| corrected(&format!("{before} {after}")))?;
    };
    let more = meant.items.iter().filter(|item| kind(&item.token) == Some(of)).count();
    // `…, no wait, 1.5 od 2 long`: which of them is which is not said.
    if more > 1 && of == Kind::Size {
        return None;
    }
    let (was, mut now) = (before.get(old.at.clone())?, after.get(first.at.clone())?.to_owned());
    if let (Token::Number(old), Token::Number(new)) = (&old.token, &first.token)
        && new.unit.is_none()
        && !new.leads
        && old.unit.is_some()
        && !old.is_fraction
    {
        let unit = was.trim_start_matches(|c: char| c.is_ascii_digit() || c == '.');
        now.push_str(unit);
    }
    let rest = after.get(first.at.end..)?;
    let line = format!("{}{now}{}{rest}", &before[..old.at.start], &before[old.at.end..]);
    let slip = Slip { typed: format!("{was} … {}", &plain[at.clone()]), read: now };
    // Once a line: a second change of mind is too much to follow.
    taken_back(&line).is_none().then_some(Corrected { text: line, slip: Some(slip) })
}

#[cfg(test)]
mod tests {
    use super::corrected;

    #[test]
    fn the_later_stands() {
        for (said, meant) in [
            ("20 mm shaft, no wait make it 25, press fit", Some("25 mm shaft, press fit")),
            ("3/4 running, no sorry, sliding", Some("3/4 sliding")),
            ("bore 7/8 H7, scratch that, 15/16 from .9", None),
            ("bore 7/8 H7, scratch that, 15/16", Some("bore 15/16 H7")),
            ("sorry, what is 3/4 press", Some("what is 3/4 press")),
            ("3/4 press in brass, no i mean bronze", Some("3/4 press in bronze")),
            ("3/4 press, sorry", Some("3/4 press")),
            ("3/4 press", Some("3/4 press")),
        ] {
            assert_eq!(corrected(said).map(|it| it.text).as_deref(), meant, "{said}");
        }
    }
}
