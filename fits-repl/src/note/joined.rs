//! What several tokens say together: ranges, `A x B`, counts.

use fits_core::{job::whole::Side, size::Unit};

use super::token::{Kind, Num, Token};

/// Puts together what several tokens say: ranges, `A x B`, counts.
#[allow(clippy::too_many_lines, reason = "one kind of tokens after another, each short")]
pub(super) fn joined(found: Vec<Token>) -> Vec<Token> {
    let mut out: Vec<Token> = Vec::with_capacity(found.len());
    let mut found = found.into_iter().peekable();
    while let Some(token) = found.next() {
        let depth = out.len();
        match &token.kind {
            Kind::Num(next) if depth > 1 && is_times(out.last()) => {
                out.pop();
                // `18 o.d. x 12 i.d.`: each has its own word.
                let named =
                    found.peek().and_then(Token::word).and_then(super::lexicon::feature).is_some();
                times(&mut out, next.clone(), &token, named);
            }
            // `.7485 / .7480`: two limits.
            Kind::Num(high) if is_limits(&out, high) => {
                out.pop();
                if let Some(Token { kind, at }) = out.last_mut()
                    && let Kind::Num(one) = kind
                {
                    at.end = token.at.end;
                    *kind = Kind::Range(one.clone(), high.clone());
                }
            }
            Kind::Num(high) if is_range(&out) => {
                while !matches!(out.last().map(|last| &last.kind), Some(Kind::Num(_)) | None) {
                    out.pop();
                }
                if let Some(Token { kind, at }) = out.last_mut()
                    && let Kind::Num(low) = kind
                {
                    at.end = token.at.end;
                    let low = Num { unit: low.unit.or(high.unit), ..low.clone() };
                    *kind = Kind::Range(low, high.clone());
                }
            }
            Kind::Word(word)
                if matches!(
                    word.as_str(),
                    "off"
                        | "pcs"
                        | "pc"
                        | "pieces"
                        | "reqd"
                        | "plcs"
                        | "places"
                        | "ea"
                        | "each"
                        | "needed"
                        | "required"
                ) && matches!(out.last().map(|last| &last.kind), Some(Kind::Num(num)) if num.is_whole() && num.unit.is_none() && num.over < 1000) =>
            {
                if let Some(Token { kind, at }) = out.last_mut()
                    && let Kind::Num(num) = kind
                {
                    at.end = token.at.end;
                    *kind = Kind::Count(u32::try_from(num.over).unwrap_or(1));
                }
            }
            // `2 @ .050`, `qty 2`.
            Kind::Sign('@') if matches!(out.last().map(|last| &last.kind), Some(Kind::Num(num)) if num.is_whole() && num.unit.is_none()) =>
            {
                counted(&mut out);
            }
            Kind::Num(num)
                if num.is_whole()
                    && num.over < 1000
                    && out
                        .last()
                        .is_some_and(|last| matches!(last.word(), Some("qty" | "quantity"))) =>
            {
                let count = u32::try_from(num.over).unwrap_or(1);
                if let Some(last) = out.last_mut() {
                    *last = Token { kind: Kind::Count(count), at: last.at.start..token.at.end };
                }
            }
            Kind::Sign(')')
                if depth > 1
                    && out[depth - 2].is_sign('(')
                    && matches!(&out[depth - 1].kind, Kind::Num(num) if num.is_whole() && num.unit.is_none() && num.over < 100) =>
            {
                let Some(Token { kind: Kind::Num(num), .. }) = out.pop() else { continue };
                if let Some(last) = out.last_mut() {
                    let count = u32::try_from(num.over).unwrap_or(1);
                    *last = Token { kind: Kind::Count(count), at: last.at.start..token.at.end };
                }
            }
            _ => out.push(token),
        }
    }
    // `16/22/15`: bore, outside, length.
    let mut at = 0;
    while at + 4 < out.len() {
        let [a, one, b, two, c] = &out[at..at + 5] else { break };
        if let (Kind::Num(inside), Kind::Num(outside), Kind::Num(long)) =
            (&a.kind, &b.kind, &c.kind)
            && one.is_sign('/')
            && two.is_sign('/')
            && inside.value() < outside.value()
            && c.at.end - a.at.start < 24
        {
            let all = vec![inside.clone(), outside.clone(), long.clone()];
            let place = a.at.start..c.at.end;
            out.splice(at..at + 5, [Token { kind: Kind::Dims(all), at: place }]);
        }
        at += 1;
    }
    // `all 3 at 1.2490`.
    for at in 1..out.len() {
        let all = matches!(out[at - 1].word(), Some("all" | "make" | "need" | "have"));
        if let Kind::Num(num) = &out[at].kind
            && all
            && num.is_whole()
            && num.unit.is_none()
            && num.over <= 24
        {
            out[at].kind = Kind::Count(u32::try_from(num.over).unwrap_or(1));
        }
    }
    // `38 w`: so wide.
    for at in 1..out.len() {
        let alone =
            out.get(at + 1).is_none_or(|next| next.word().is_none() || is_times(Some(next)));
        if out[at].word() == Some("w") && matches!(out[at - 1].kind, Kind::Num(_)) && alone {
            out[at].kind = Kind::Word("wide".into());
        }
    }
    super::spoken::spoken(&mut out);
    teeth(&mut out);
    on_a_circle(&mut out);
    summed(&mut out);
    for at in 0..out.len() {
        if is_no_size(&out, at)
            && let Kind::Num(num) = &out[at].kind
        {
            let count = u32::try_from(num.over / num.under).unwrap_or(1);
            out[at].kind = Kind::Count(count);
        }
        many(&mut out, at);
        // `8x M8`, `8x / M4`
        let is_count = matches!(&out[at].kind, Kind::Num(num) if num.is_whole() && num.over < 25);
        if is_count
            && out.get(at + 1).is_some_and(|next| next.word() == Some("x"))
            && matches!(
                out.get(at + 2).map(|next| &next.kind),
                Some(Kind::Thread(_) | Kind::Sign(_)) | None
            )
        {
            counted(&mut out[..=at]);
            out[at + 1].kind = Kind::Sign(' ');
        }
    }
    // `2 thrust washers`.
    for at in 0..out.len() {
        let is_count = matches!(&out[at].kind, Kind::Num(num) if num.is_whole() && num.unit.is_none() && (2..=12).contains(&num.over));
        let after_size =
            at > 0 && matches!(out[at - 1].kind, Kind::Num(_) | Kind::Dims(_) | Kind::Class(_));
        let plural = |token: Option<&Token>| {
            token.and_then(Token::word).is_some_and(|word| {
                word.ends_with('s')
                    && (super::lexicon::inwardness(word).is_some()
                        || super::lexicon::feature(word).is_some_and(|side| side != Side::Length))
            })
        };
        if is_count
            && !after_size
            && (plural(out.get(at + 1))
                // `2 #10-24 screws`
                || matches!(out.get(at + 1).map(|next| &next.kind), Some(Kind::Thread(_)))
                    && plural(out.get(at + 2))
                || out.get(at + 1).and_then(Token::word).is_some_and(|word| {
                    word != "x" && super::lexicon::feature(word) != Some(Side::Length)
                }) && plural(out.get(at + 2)))
            && let Kind::Num(num) = &out[at].kind
        {
            out[at].kind = Kind::Count(u32::try_from(num.over).unwrap_or(1));
        }
    }
    out
}

/// `1-1/4 plus 2 thou`: one size. `7/16 - 1 thou press` may be how tight it is.
fn summed(out: &mut Vec<Token>) {
    // Nobody writes three decimals of a millimetre and adds thousandths of an inch.
    let is_inch = |size: &Num| match size.unit {
        Some(unit) => unit == Unit::Inch,
        None => size.is_inch_shaped() || size.places > 2,
    };
    let mut at = 0;
    while at + 2 < out.len() {
        // `3/4 OD plus 2 thou`: the word for what it is of may stand between.
        let named = out[at + 1].word().and_then(super::lexicon::feature).is_some();
        let sign = at + 1 + usize::from(named);
        let plus = out[sign].is_sign('+') || out[sign].word() == Some("plus");
        if let (Kind::Num(size), Some(Kind::Num(off))) =
            (&out[at].kind, out.get(sign + 1).map(|next| &next.kind))
            && plus
            && is_inch(size)
            && let Some(parts) = match off.unit {
                Some(Unit::Thou) => Some(1000),
                Some(Unit::Tenth) => Some(10_000),
                _ => None,
            }
        {
            let under = off.under * parts;
            let over = size.over * under + off.over * size.under;
            let unit = Some(Unit::Inch);
            let sum = Num { over, under: size.under * under, unit, ..size.clone() };
            if !named {
                out[at].at.end = out[sign + 1].at.end;
            }
            out[at].kind = Kind::Num(sum);
            out.drain(sign..sign + 2);
        }
        at += 1;
    }
}

/// `28 tooth`, `60T`, `15-tooth`: how many teeth; neither a size nor how many to make.
fn teeth(out: &mut Vec<Token>) {
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

/// `5.5 x 4 on 50 pcd`: how many holes stand on the circle.
fn on_a_circle(out: &mut [Token]) {
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

/// Is a number an angle, a count, a weight, a time, or what a sheet goes by?
pub(super) fn is_no_size(found: &[Token], at: usize) -> bool {
    #[rustfmt::skip]
    const BEHIND: &[&str] = &[
        "deg", "degree", "degrees", "rpm", "lb", "lbs", "kg", "ton", "tons", "hp", "dp",
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
        Kind::Word(word) => super::lexicon::feature(word)
            .is_some_and(|side| matches!(side, Side::Hole | Side::Thread | Side::Other)),
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
                    super::lexicon::feature(word).is_some_and(|side| side != Side::Length)
                        || matches!(word, "pressed" | "in" | "is" | "came" | "now")
                })
        });
    let is_before = |token: &Token| {
        token
            .word()
            .is_some_and(|word| matches!(word, "ra" | "rz" | "loctite" | "en" | "iso" | "din"))
            || token.is_sign('$')
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
                    || super::lexicon::feature(word).is_some_and(|side| side != Side::Length))
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

/// Puts the next of `3/4 x 1 x 1` to what stands before the sign; `6 m6 x 30`
/// keeps its class behind.
pub(super) fn times(out: &mut Vec<Token>, next: Num, token: &Token, named: bool) {
    let class = matches!(out.last().map(|last| &last.kind), Some(Kind::Class(_)));
    let class = if class { out.pop() } else { None };
    // `20/26x20`: inside, outside, length.
    if let [
        ..,
        Token { kind: Kind::Num(inside), at: first },
        sign,
        Token { kind: Kind::Num(outside), .. },
    ] = out.as_slice()
        && sign.is_sign('/')
        && inside.value() < outside.value()
    {
        let all = vec![inside.clone(), outside.clone(), next];
        let at = first.start..token.at.end;
        out.truncate(out.len() - 3);
        out.push(Token { kind: Kind::Dims(all), at });
        return;
    }
    if let Some(Token { kind: kind @ (Kind::Num(_) | Kind::Dims(_)), at }) = out.last_mut() {
        if class.is_none() {
            at.end = token.at.end;
        }
        let mut all = match std::mem::replace(kind, Kind::Sign(' ')) {
            Kind::Num(first) => vec![first],
            Kind::Dims(all) => all,
            _ => Vec::new(),
        };
        // `80mm x 6`: so is the second.
        let before = all.last().and_then(|one| one.unit);
        // `7/8" x 20 s.w.g.`: a whole number behind inches may be anything.
        let before = before.filter(|unit| *unit == Unit::Millimetre && !next.is_inch_shaped());
        let next = Num { unit: next.unit.or(before), ..next };
        // `12 x 26 x 9 mm`: the unit stands once, behind the last.
        for one in all.iter_mut().filter(|one| !one.is_inch_shaped()) {
            one.unit = one.unit.or(next.unit);
        }
        all.push(next);
        *kind = Kind::Dims(all);
    } else {
        // `3/8-16 x 2`, `1-3/8 dia x 3`: so long; a metric screw in millimetres.
        let at = token.at.clone();
        let mut next = next;
        if matches!(out.last(), Some(Token { kind: Kind::Thread(name), .. }) if name.starts_with('M'))
            && !next.is_inch_shaped()
        {
            next.unit = next.unit.or(Some(Unit::Millimetre));
        }
        out.push(Token { kind: Kind::Num(next), at: at.clone() });
        if !named {
            out.push(Token { kind: Kind::Word("long".into()), at: at.end..at.end });
        }
    }
    out.extend(class);
}

/// Two sizes with a slash between that differ by less than a hundredth.
pub(super) fn is_limits(out: &[Token], next: &Num) -> bool {
    let [.., Token { kind: Kind::Num(one), .. }, sign] = out else { return false };
    let (one, next, places) = (one.value(), next.value(), one.places.min(next.places));
    sign.is_sign('/') && places >= 2 && (one - next).abs() < 0.01 * one
}

pub(super) fn is_times(token: Option<&Token>) -> bool {
    token.is_some_and(|token| {
        matches!(&token.kind, Kind::Word(word) if word == "x" || word == "by")
            || matches!(token.kind, Kind::Sign('\u{d7}' | '*'))
    })
}

/// Does a range go on: a number, then a dash, dots or `to`?
pub(super) fn is_range(out: &[Token]) -> bool {
    match out {
        [.., Token { kind: Kind::Num(low), .. }, sign] => {
            let dash = sign.is_sign('-') && low.places > 0 || sign.is_sign('\u{2026}');
            dash || (sign.word() == Some("to") && !low.vulgar)
                || (sign.is_sign('-')
                    && sign.at.len() == 1
                    && low.is_whole()
                    && low.at.end == sign.at.start)
        }
        [.., Token { kind: Kind::Num(_), .. }, first, second] => {
            first.is_sign('.') && second.is_sign('.')
        }
        _ => false,
    }
}
