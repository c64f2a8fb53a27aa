//! What several tokens say together: ranges, `A x B`, counts.

use fits_core::{job::whole::SizeKind, size::Unit};

use super::{
    counts::{by_gauge, counted, feet, is_no_size, many, on_a_circle, ratios, teeth, with_spares},
    token::{Kind, Num, Token},
};

/// Puts together what several tokens say: ranges, `A x B`, counts.
#[allow(clippy::too_many_lines, reason = "one kind of tokens after another, each short")]
pub(super) fn joined(mut found: Vec<Token>) -> Vec<Token> {
    // `1 in. x 20`: the full stop is of the unit.
    for at in (1..found.len().saturating_sub(1)).rev() {
        let is_unit = matches!(&found[at - 1].kind, Kind::Num(num) if num.unit == Some(Unit::Inch));
        if is_unit && found[at].is_sign('.') && is_times(found.get(at + 1)) {
            found.remove(at);
        }
    }
    ratios(&mut found);
    feet(&mut found);
    let mut out: Vec<Token> = Vec::with_capacity(found.len());
    let mut found = found.into_iter().peekable();
    while let Some(token) = found.next() {
        let depth = out.len();
        match &token.kind {
            Kind::Num(next) if depth > 1 && is_times(out.last()) => {
                out.pop();
                // `18 o.d. x 12 i.d.`: each has its own word.
                let side = found.peek().and_then(Token::word).and_then(super::lexicon::feature);
                // `M8 x 15 end`: so long, whatever part of the screw it is.
                let is_screw = matches!(out.last().map(|last| &last.kind), Some(Kind::Thread(_)));
                let named = side.is_some_and(|side| !is_screw || side == SizeKind::Length);
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
        // `boss 9/16 w. 3/32 cross hole`: with.
        let is_with = out.get(at + 1).is_some_and(|next| next.is_sign('.')) && at + 2 < out.len();
        if out[at].word() == Some("w")
            && !is_with
            && matches!(out[at - 1].kind, Kind::Num(_))
            && alone
        {
            out[at].kind = Kind::Word("wide".into());
        }
    }
    super::spoken::spoken(&mut out);
    with_spares(&mut out);
    teeth(&mut out);
    on_a_circle(&mut out);
    by_gauge(&mut out);
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
    let is_name = |token: Option<&Token>| {
        token.and_then(Token::word).is_some_and(|word| {
            word.len() > 2
                && !super::lexicon::is_small(word)
                && !super::lexicon::leads_to_mate(word)
                && super::lexicon::feature(word).is_none()
        })
    };
    // `2 thrust washers`.
    for at in 0..out.len() {
        // `36 holes 4 F8`: as many as there are, where their own size stands behind.
        let is_sized = matches!(out.get(at + 2).map(|next| &next.kind), Some(Kind::Num(_)));
        let most = if is_sized { 400 } else { 12 };
        let is_count = matches!(&out[at].kind, Kind::Num(num) if num.is_whole() && num.unit.is_none() && (2..=most).contains(&num.over));
        let after_size =
            at > 0 && matches!(out[at - 1].kind, Kind::Num(_) | Kind::Dims(_) | Kind::Class(_));
        let plural = |token: Option<&Token>| {
            token.and_then(Token::word).is_some_and(|word| {
                word.ends_with('s')
                    && (super::lexicon::inwardness(word).is_some()
                        || super::lexicon::feature(word)
                            .is_some_and(|side| side != SizeKind::Length))
            })
        };
        if is_count
            && !after_size
            && (plural(out.get(at + 1))
                // `2 #10-24 screws`
                || matches!(out.get(at + 1).map(|next| &next.kind), Some(Kind::Thread(_)))
                    && plural(out.get(at + 2))
                || out.get(at + 1).and_then(Token::word).is_some_and(|word| {
                    word != "x" && super::lexicon::feature(word) != Some(SizeKind::Length)
                }) && plural(out.get(at + 2))
                // `2 bat pin holes`
                || is_name(out.get(at + 1)) && is_name(out.get(at + 2)) && plural(out.get(at + 3)))
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
