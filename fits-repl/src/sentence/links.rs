//! The lengths of a stack as they are said.

use crate::sentence::{
    roles::assign,
    sizes::deviations_text,
    stack::{Link, SEVERAL},
    token::{Num, System, Token},
    view::View,
};

/// `shoulder 1.000 washers 2 x .062 hub .865`: each number with its part; the
/// part without one is the one to make.
#[allow(clippy::too_many_lines, reason = "one rule after another, each short")]
pub(crate) fn named_links(
    view: &View,
    system: System,
    skip: &[usize],
) -> Option<(Vec<Link>, Option<usize>)> {
    let is_name = |at: usize| matches!(view.kind_at(at), Some("gap" | "part"));
    let mut skip = skip.to_vec();
    let mut times: Vec<(usize, u32)> = Vec::new();
    for (at, item) in view.items.iter().enumerate() {
        match &item.token {
            // `washers, 2 off .060`
            Token::Number(num) if view.said(at + 1) == "off" && few(num).is_some() => {
                skip.push(at);
                times.extend(few(num).map(|count| (at, count)));
            }
            // `2 thrust washers .120`
            Token::Number(num) if is_name(at + 1) && few(num).is_some() => {
                let follows = view
                    .items
                    .iter()
                    .skip(at + 2)
                    .find(|item| !matches!(item.token, Token::Word { kind: "small", .. }));
                let lone = view.numbers().filter(|(place, _)| !skip.contains(place)).count();
                if matches!(follows.map(|item| &item.token), Some(Token::Number(_))) && lone > 2 {
                    skip.push(at);
                    times.extend(few(num).map(|count| (at, count)));
                }
            }
            Token::Times(count) => times.push((at, *count)),
            Token::Word { kind: "count", name } => times.push((at, name.parse().ok()?)),
            // `two washers .060 each`: of each of the two.
            Token::Word { kind: "doubled", .. } if view.said(at) == "each" && !times.is_empty() => {
            }
            Token::Word { kind: "doubled", .. } => times.push((at, 2)),
            _ => {}
        }
    }
    // Names side by side are one part.
    let mut items = view.items.clone();
    for at in (0..items.len()).rev() {
        if is_name(at) && is_name(at + 1) {
            let name = items[at].token.clone();
            if let (Token::Word { kind: "gap", .. }, Some(next)) = (name, items.get_mut(at + 1))
                && let Token::Word { kind, .. } = &mut next.token
                && view
                    .items
                    .iter()
                    .filter(|item| matches!(item.token, Token::Word { kind: "gap", .. }))
                    .count()
                    == 1
            {
                *kind = "gap";
            }
            items[at].token = Token::Word { name: "-", kind: "small" };
        }
    }
    let joined = View { items, text: view.text.clone() };
    let mut roles = assign(&joined, &["gap", "part"], &skip, system)?;
    if !roles.free.is_empty() {
        return None;
    }
    roles.taken.sort_by_key(|taken| taken.at);
    let mut links = Vec::new();
    let mut used = 0;
    for taken in &roles.taken {
        // `2.000 apart +/- .003`
        let mut after = taken.at + 1;
        while matches!(view.kind_at(after), Some("small")) {
            after += 1;
        }
        let is_deviation =
            matches!(view.items.get(after).map(|item| &item.token), Some(Token::Deviations { .. }));
        let after = if is_deviation { after } else { taken.at + 1 };
        let deviations = match view.items.get(after).map(|item| &item.token) {
            Some(Token::Deviations { upper, lower, is_both }) => Some((upper, lower, *is_both)),
            Some(Token::Times(_)) => match view.items.get(taken.at + 2).map(|item| &item.token) {
                Some(Token::Deviations { upper, lower, is_both }) => Some((upper, lower, *is_both)),
                _ => None,
            },
            _ => None,
        };
        let deviations = match deviations {
            Some((upper, lower, is_both)) => {
                let size = taken.num.plain(system);
                let text = deviations_text(&taken.num, upper, lower, is_both, system);
                Some(text.strip_prefix(&size)?.to_owned())
            }
            None => None,
        };
        // A count stands between the part's ends, or just outside them.
        let (low, high) = (taken.at.min(taken.word), taken.at.max(taken.word));
        let mut count = 1;
        for (at, many) in &times {
            let between = view.items[(*at + 1).min(low)..low]
                .iter()
                .any(|item| matches!(item.token, Token::Number(_)));
            let near = (*at + 2 >= low
                && *at < low
                && !between
                && !matches!(
                    view.items.get(low.wrapping_sub(1)).map(|item| &item.token),
                    Some(Token::Break)
                ))
                || (*at >= low && *at <= high)
                || (*at > high
                    && *at <= high + 3
                    // `tube 17, two washers 1.4`: of what is named next.
                    && !is_name(*at + 1)
                    && view.items[high + 1..*at].iter().all(|item| {
                        matches!(
                            item.token,
                            Token::Deviations { .. } | Token::Word { kind: "small", .. }
                        )
                    }));
            if near {
                if count != 1 {
                    return None;
                }
                count = *many;
                used += 1;
            }
        }
        if taken.by == "gap" && count > 1 && !view.said(taken.word).ends_with('s') {
            return None;
        }
        links.push(Link {
            name: if taken.by == "gap" { "gap" } else { "part" },
            num: taken.num.clone(),
            deviations,
            times: count,
            is_gap: taken.by == "gap",
            is_plus: view.tokens().any(|token| matches!(token, Token::Plus)),
            is_several: count == 1
                && taken.by == "part"
                && SEVERAL.contains(&&*view.said(taken.word)),
        });
    }
    let is_deviation = |token: &Token| matches!(token, Token::Deviations { .. });
    if used != times.len()
        || view.count(is_deviation) != links.iter().filter(|link| link.deviations.is_some()).count()
    {
        return None;
    }
    let names: Vec<usize> = (0..joined.items.len())
        .filter(|at| matches!(joined.items[*at].token, Token::Word { kind: "gap" | "part", .. }))
        .collect();
    let idle: Vec<usize> =
        names.into_iter().filter(|at| !roles.taken.iter().any(|taken| taken.word == *at)).collect();
    match idle[..] {
        [] => Some((links, None)),
        [one] => Some((links, Some(one))),
        _ => None,
    }
}

/// `1.500 less 1.375 less .031`: numbers and signs alone.
pub(crate) fn plain_links(view: &View, system: System, skip: &[usize]) -> Option<Vec<Link>> {
    let mut links: Vec<Link> = Vec::new();
    let mut times = 1;
    let mut is_plus = true;
    for (at, item) in view.items.iter().enumerate() {
        match &item.token {
            Token::Number(_) if skip.contains(&at) => {}
            // `less 2 washers .120`
            Token::Number(num)
                if num.places == 0
                    && num.unit.is_none()
                    && (2.0..=6.0).contains(&num.value)
                    && matches!(view.kind_at(at + 1), Some("part")) =>
            {
                times = num.text.parse().ok()?;
            }
            Token::Number(num) => {
                links.push(Link {
                    name: "",
                    num: num.clone(),
                    deviations: None,
                    times,
                    is_gap: false,
                    is_plus,
                    is_several: false,
                });
                times = 1;
            }
            Token::Times(count) => {
                match (view.items.get(at + 1).map(|item| &item.token), links.last_mut()) {
                    (Some(Token::Number(_)), _) => times = *count,
                    (_, Some(last)) if last.times == 1 => last.times = *count,
                    _ => return None,
                }
            }
            Token::Word { kind: "doubled", .. } if view.said(at) == "each" => {}
            Token::Word { kind: "count" | "doubled", .. } | Token::Span(..) => return None,
            Token::Word { kind: "less", .. } | Token::Minus => is_plus = false,
            Token::Plus => is_plus = true,
            Token::Deviations { upper, lower, is_both } => {
                let last = links.last_mut()?;
                let text = deviations_text(&last.num, upper, lower, *is_both, system);
                let size = last.num.plain(system);
                last.deviations = Some(text.strip_prefix(&size)?.to_owned());
            }
            _ => {}
        }
    }
    Some(links)
}

/// A few of a part: a bare whole number from two to six.
pub(super) fn few(num: &Num) -> Option<u32> {
    let is_whole = num.places == 0 && !num.is_fraction && num.unit.is_none();
    num.text.parse().ok().filter(|count| is_whole && (2..=6).contains(count))
}
