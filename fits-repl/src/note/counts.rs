//! Numbers that are no sizes: teeth, how many, angles, weights.

use fits_core::{job::whole::SizeKind, size::Unit};

use super::token::{Kind, Num, Token};

/// `28 tooth`, `60T`, `15-tooth`: how many teeth; neither a size nor how many to make.
pub(super) fn teeth(out: &mut Vec<Token>) {
    let mut at = 0;
    while at < out.len() {
        let of = |next: usize| out.get(next).filter(|next| next.at.end > out[at].at.end);
        let dash = usize::from(of(at + 1).is_some_and(|next| next.is_sign('-')));
        let is = |next: &Token| match next.word() {
            Some("teeth" | "tooth") => true,
            Some("t") => next.at.start == out[at].at.end,
            _ => false,
        };
        let counts =
            matches!(&out[at].kind, Kind::Num(num) if num.is_whole() && num.unit.is_none());
        if counts && of(at + 1 + dash).is_some_and(is) {
            out[at].at.end = out[at + 1 + dash].at.end;
            out[at].kind = Kind::Sign(' ');
            out.drain(at + 1..at + 2 + dash);
        }
        at += 1;
    }
}

/// Is it what such a count was put together to?
pub(super) fn is_teeth(token: &Token, raw: &str) -> bool {
    let said = raw.get(token.at.clone()).unwrap_or_default().to_lowercase();
    token.is_sign(' ') && ["t", "teeth", "tooth"].iter().any(|end| said.ends_with(end))
}

/// `5.5 x 4 on 50 pcd`: how many holes stand on the circle.
pub(super) fn on_a_circle(out: &mut [Token]) {
    let is_few = |num: &Num| num.is_whole() && num.unit.is_none() && num.over <= 24;
    for at in 1..out.len().saturating_sub(2) {
        let is_circle = out[at].word() == Some("on")
            && matches!(out[at + 1].kind, Kind::Num(_))
            && matches!(out[at + 2].word(), Some("pcd" | "pc" | "bcd" | "bc"));
        let Kind::Dims(all) = &out[at - 1].kind else { continue };
        if let ([size, count], true) = (&all[..], is_circle)
            && is_few(count)
        {
            out[at - 1].kind = Kind::Num(size.clone());
        }
    }
}

/// Is it a word for a gauge that sheet and tube go by?
pub(super) fn is_gauge(token: &Token) -> bool {
    matches!(token.word(), Some("swg" | "gauge" | "s.w.g" | "awg"))
}

/// `1" x 16 swg`: a gauge is no size.
pub(super) fn by_gauge(out: &mut Vec<Token>) {
    for at in 0..out.len().saturating_sub(1) {
        let is_gauge = is_gauge(&out[at + 1]);
        let Kind::Dims(all) = &out[at].kind else { continue };
        if let ([size, gauge], true) = (&all[..], is_gauge)
            && gauge.is_whole()
            && gauge.unit.is_none()
        {
            let (size, gauge) = (size.clone(), u32::try_from(gauge.over).unwrap_or(1));
            let place = out[at + 1].at.clone();
            out[at].kind = Kind::Num(size);
            out.insert(at + 1, Token { kind: Kind::Count(gauge), at: place });
            return;
        }
    }
}

/// Is a number an angle, a count, a weight, a time, or what a sheet goes by?
pub(super) fn is_no_size(found: &[Token], at: usize) -> bool {
    #[rustfmt::skip]
    const BEHIND: &[&str] = &[
        "deg", "degree", "degrees", "rpm", "lb", "lbs", "kg", "g", "gram", "grams", "oz", "ton", "tons", "hp", "dp",
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
    // `kwy 8 P9, 4 dp` too; a gear's is its pitch.
    let says_depth = |token: &Token| match &token.kind {
        Kind::Thread(_) => true,
        Kind::Word(word) => super::lexicon::feature(word).is_some_and(|side| {
            matches!(side, SizeKind::Hole | SizeKind::Thread | SizeKind::Other)
        }),
        _ => false,
    };
    let is_geared = |token: &Token| {
        token.kind == Kind::Sign(' ')
            || token.word().is_some_and(|word| {
                matches!(super::lexicon::stem(word).as_str(), "gear" | "pinion" | "rack")
            })
    };
    let is_depth = at > 0
        && (matches!(found[at - 1].kind, Kind::Num(_))
            || found[at - 1].word().is_some_and(|word| super::lexicon::feature(word).is_some())
            || found[..at].iter().any(says_depth) && !found.iter().any(is_geared));
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
                    super::lexicon::feature(word).is_some_and(|side| side != SizeKind::Length)
                        || matches!(word, "pressed" | "in" | "is" | "came" | "now")
                })
        });
    let is_before = |token: &Token| {
        token.word().is_some_and(|word| {
            matches!(word, "ra" | "rz" | "loctite" | "en" | "iso" | "din" | "module")
        }) || token.is_sign('$')
            || num.is_whole() && token.word().is_some_and(|word| BEFORE.contains(&word))
    };
    num.unit.is_none()
        && (of_several || behind.is_some_and(is_behind) || before.is_some_and(is_before))
}

/// `2 x 3/8 dowels`, `2x 3/8`: how many of a size.
pub(super) fn many(found: &mut Vec<Token>, at: usize) {
    let Kind::Dims(all) = &found[at].kind else { return };
    let [first, rest @ ..] = all.as_slice() else { return };
    let counts = first.is_whole() && first.unit.is_none() && (2..=12).contains(&first.over);
    // `2x 1/4 clearance holes`
    let glued = rest.first().is_some_and(|second| second.at.start > first.at.end + 1);
    let plural =
        found[at + 1..].iter().take(1 + usize::from(glued)).filter_map(Token::word).any(|word| {
            word.ends_with('s')
                && (super::lexicon::inwardness(word).is_some()
                    || super::lexicon::feature(word).is_some_and(|side| side != SizeKind::Length))
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
pub(super) fn counted(out: &mut [Token]) {
    if let Some(Token { kind, .. }) = out.last_mut()
        && let Kind::Num(num) = kind
    {
        *kind = Kind::Count(u32::try_from(num.over).unwrap_or(1));
    }
}

/// `taper 1 in 8`: how steep it is, no inch and no 8; kept as one word.
pub(super) fn ratios(found: &mut Vec<Token>) {
    let mut at = 0;
    while at + 1 < found.len() {
        let behind = found.get(at + 2).and_then(Token::word);
        let is_length =
            behind.is_some_and(|word| super::lexicon::feature(word) == Some(SizeKind::Length));
        let of = match (&found[at].kind, &found[at + 1].kind) {
            (Kind::Num(one), Kind::Num(of))
                if one.is_whole()
                    && one.over == 1
                    && one.unit == Some(Unit::Inch)
                    && one.at.len() == "1 in".len()
                    && of.is_whole()
                    && of.unit.is_none()
                    && (2..=200).contains(&of.over)
                    && !is_length =>
            {
                of.over
            }
            _ => 0,
        };
        if of > 0 {
            found[at].at.end = found[at + 1].at.end;
            found[at].kind = Kind::Word(format!("1 in {of}"));
            found.remove(at + 1);
        }
        at += 1;
    }
}

/// Such a word.
pub(super) fn is_ratio(word: &str) -> bool {
    word.starts_with("1 in ")
}

/// `(3 + 1 spare)`: so many in all.
pub(super) fn with_spares(out: &mut Vec<Token>) {
    let count = |token: &Token| match &token.kind {
        Kind::Num(num) if num.is_whole() && num.unit.is_none() && num.over < 100 => {
            u32::try_from(num.over).ok()
        }
        Kind::Count(count) => Some(*count),
        _ => None,
    };
    let mut at = 0;
    while at + 5 < out.len() {
        let [open, one, plus, more, spare, close] = &out[at..at + 6] else { break };
        let is_spare = matches!(spare.word(), Some("spare" | "spares" | "extra"));
        let is_sum = open.is_sign('(') && plus.is_sign('+') && is_spare && close.is_sign(')');
        if let (true, Some(one), Some(more)) = (is_sum, count(one), count(more)) {
            let place = open.at.start..close.at.end;
            out.splice(at..at + 6, [Token { kind: Kind::Count(one + more), at: place }]);
        }
        at += 1;
    }
}

/// `6 ft 4`, `3 foot`: how much stock there is, no size of a feature; kept as one word.
pub(super) fn feet(found: &mut Vec<Token>) {
    for at in (1..found.len()).rev() {
        let of = match &found[at - 1].kind {
            Kind::Num(num) if num.unit.is_none() => num.value(),
            _ => continue,
        };
        if !matches!(found[at].word(), Some("ft" | "foot" | "feet")) {
            continue;
        }
        let inches = match found.get(at + 1).map(|next| &next.kind) {
            Some(Kind::Num(num)) if num.unit.is_none_or(|unit| unit == Unit::Inch) => {
                Some(num.value()).filter(|inches| *inches < 12.0)
            }
            _ => None,
        };
        let last = if inches.is_some() { at + 1 } else { at };
        let text = inches.map_or_else(|| format!("{of} ft"), |more| format!("{of} ft {more}"));
        found[at - 1].at.end = found[last].at.end;
        found[at - 1].kind = Kind::Word(text);
        found.drain(at..=last);
    }
}
