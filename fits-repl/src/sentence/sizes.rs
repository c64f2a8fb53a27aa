//! Nominal sizes, limits, fits and metals, as every question takes them.

use crate::sentence::{
    token::{Num, System, Token, Unit},
    view::View,
};

/// The nouns of a shaft and a hole.
pub(crate) const NOUNS: &[&str] = &["hole", "shaft", "hub", "bushing"];

/// Nominal, not measured: a fraction, whole or half millimetres, a multiple of
/// 1/64 in or, from an inch up, of 0.05 in.
pub(crate) fn is_nominal(num: &Num, system: System) -> bool {
    if num.is_fraction {
        return true;
    }
    let near = |value: f64, step: f64| ((value / step).round() * step - value).abs() < 0.000_06;
    let mm = num.mm(system);
    let inch = mm / 25.4;
    let is_inch =
        matches!(num.unit, Some(Unit::Inch)) || (num.unit.is_none() && system == System::Inches);
    if is_inch {
        near(inch, 1.0 / 64.0)
            || (inch >= 1.0 && near(inch, 0.05))
            || near(inch, 0.1)
            || near(inch, 0.125)
    } else {
        near(mm, 0.5)
    }
}

/// The nominal size that a measured one belongs to.
pub(crate) fn nominal_of(num: &Num, system: System) -> Option<String> {
    let mm = num.mm(system);
    let is_inch =
        matches!(num.unit, Some(Unit::Inch)) || (num.unit.is_none() && system == System::Inches);
    if is_inch {
        let sixteenths = (mm / 25.4 * 16.0).round();
        let off = (sixteenths / 16.0 - mm / 25.4).abs();
        if off > 0.006 || sixteenths < 1.0 {
            return None;
        }
        #[allow(
            clippy::cast_possible_truncation,
            clippy::cast_sign_loss,
            reason = "a few hundred at most"
        )]
        let count = sixteenths as u32;
        Some(format!("{}in", sixteenth(count)))
    } else {
        let whole = mm.round();
        ((whole - mm).abs() <= 0.15 && whole >= 1.0).then(|| format!("{whole}mm"))
    }
}

pub(crate) fn sixteenth(count: u32) -> String {
    let (whole, mut rest, mut of) = (count / 16, count % 16, 16);
    while rest > 0 && rest.is_multiple_of(2) {
        rest /= 2;
        of /= 2;
    }
    match (whole, rest) {
        (whole, 0) => whole.to_string(),
        (0, rest) => format!("{rest}/{of}"),
        (whole, rest) => format!("{whole}-{rest}/{of}"),
    }
}

/// A fit: a word, a pair, a class of B4.1.
#[derive(Clone, PartialEq)]
pub(crate) enum Fit {
    Word(&'static str),
    Pair(String),
    Inch(String),
    Hole(String),
    Shaft(String),
}

impl Fit {
    pub(crate) fn text(&self) -> &str {
        match self {
            Self::Word(name) => name,
            Self::Pair(name) | Self::Inch(name) | Self::Hole(name) | Self::Shaft(name) => name,
        }
    }
}

/// The one fit that is said; none and two are none.
pub(crate) fn fit_of(view: &View) -> Option<Fit> {
    if each_has_its_size(view) {
        return None;
    }
    let mut found: Option<Fit> = None;
    for item in &view.items {
        let fit = match &item.token {
            Token::Word { name, kind: "fit" } => Fit::Word(name),
            Token::Pair(name) => Fit::Pair(name.clone()),
            Token::InchClass(name) => Fit::Inch(name.clone()),
            Token::Hole(name) => Fit::Hole(name.clone()),
            Token::Shaft(name) => Fit::Shaft(name.clone()),
            _ => continue,
        };
        match &found {
            None => found = Some(fit),
            Some(known) if *known == fit => {}
            // `LN2 1in press`: the word says what the class is.
            Some(Fit::Inch(class)) if matches!(fit, Fit::Word(word) if says(word, class)) => {}
            Some(Fit::Word(word)) if matches!(&fit, Fit::Inch(class) if says(word, class)) => {
                found = Some(fit);
            }
            // `loose running H11 c11`
            Some(Fit::Pair(pair)) if matches!(fit, Fit::Word(word) if says_pair(word, pair)) => {}
            Some(Fit::Word(word)) if matches!(&fit, Fit::Pair(pair) if says_pair(word, pair)) => {
                found = Some(fit);
            }
            // A hole's class and a shaft's, apart in the line.
            Some(Fit::Hole(hole)) if let Fit::Shaft(shaft) = &fit => {
                found = Some(Fit::Pair(format!("{hole}/{shaft}")));
            }
            Some(Fit::Shaft(shaft)) if let Fit::Hole(hole) = &fit => {
                found = Some(Fit::Pair(format!("{hole}/{shaft}")));
            }
            Some(_) => return None,
        }
    }
    found
}

/// `hole 40 H7 with shaft 40 n6`: a class of each part, behind a size of its own.
fn each_has_its_size(view: &View) -> bool {
    let behind_a_size = |is: fn(&Token) -> bool| {
        view.items
            .windows(2)
            .any(|two| matches!(two[0].token, Token::Number(_)) && is(&two[1].token))
    };
    behind_a_size(|token| matches!(token, Token::Hole(_)))
        && behind_a_size(|token| matches!(token, Token::Shaft(_)))
}

/// Does a fit word say the kind of a class of B4.1: one that runs, or one that grips?
fn says(word: &str, class: &str) -> bool {
    match class.get(..2) {
        Some("RC") => word.contains("running"),
        Some("LN" | "FN") => word.contains("press") || matches!(word, "drive" | "shrink"),
        _ => false,
    }
}

/// The same of a hole-basis pair: its shaft runs, slides or grips.
pub(crate) fn says_pair(word: &str, pair: &str) -> bool {
    let Some(shaft) = pair.strip_prefix('H').and_then(|pair| pair.split_once('/')) else {
        return false;
    };
    match shaft.1.trim_end_matches(|c: char| c.is_ascii_digit()) {
        "a" | "b" | "c" | "d" | "e" | "f" => word.contains("running"),
        "g" | "h" => matches!(word, "sliding" | "slip" | "snug"),
        "p" | "r" | "s" | "t" | "u" => word.contains("press") || matches!(word, "drive" | "shrink"),
        _ => false,
    }
}

pub(crate) fn is_fit(token: &Token) -> bool {
    matches!(
        token,
        Token::Number(_) | Token::Pair(_) | Token::InchClass(_) | Token::Hole(_) | Token::Shaft(_)
    )
}

/// `0.750in +0in/-0.001in`, `0.7500in..0.7505in`: the one size with limits.
pub(crate) fn limits(view: &View, system: System) -> Option<String> {
    let mut found = None;
    for (at, item) in view.items.iter().enumerate() {
        let text = match &item.token {
            Token::Deviations { upper, lower, is_both } => {
                let Token::Number(num) = &view.items.get(at.checked_sub(1)?)?.token else {
                    return None;
                };
                deviations_text(num, upper, lower, *is_both, system)
            }
            Token::Span(low, high) => {
                if low.mm(system) >= high.mm(system) || high.mm(system) > 1.05 * low.mm(system) {
                    return None;
                }
                span_text(low, high, system)
            }
            _ => continue,
        };
        if found.replace(text).is_some() {
            return None;
        }
    }
    found
}

/// A unit that only one end has is both ends'.
pub(super) fn span_text(low: &Num, high: &Num, system: System) -> String {
    let unit = high.unit.or(low.unit);
    let give = |num: &Num| Num { unit: num.unit.or(unit), ..num.clone() }.plain(system);
    format!("{}..{}", give(low), give(high))
}

pub(crate) fn deviations_text(
    num: &Num,
    upper: &Num,
    lower: &Num,
    is_both: bool,
    system: System,
) -> String {
    // Deviations are in the unit of their size unless one of their own is written.
    let unit = upper.unit.or(lower.unit).or(num.unit);
    let give = |deviation: &Num| {
        let text = Num { unit: deviation.unit.or(unit), ..deviation.clone() }.plain(system);
        let sign = if deviation.is_negative { "-" } else { "+" };
        (text, sign)
    };
    let size = num.plain(system);
    let (above, above_sign) = give(upper);
    if is_both {
        return format!("{size} \u{b1}{above}");
    }
    let (below, below_sign) = give(lower);
    let below_sign = if lower.value == 0.0 { "-" } else { below_sign };
    format!("{size} {above_sign}{above}/{below_sign}{below}")
}

/// The size that limits are about, in millimetres.
pub(crate) fn limited_size(view: &View, system: System) -> Option<f64> {
    view.items.iter().enumerate().find_map(|(at, item)| match &item.token {
        Token::Span(low, _) => Some(low.mm(system)),
        Token::Deviations { .. } => match &view.items.get(at.checked_sub(1)?)?.token {
            Token::Number(num) => Some(num.mm(system)),
            _ => None,
        },
        _ => None,
    })
}

/// The place of a number that a limits token uses.
pub(crate) fn limit_places(view: &View) -> Vec<usize> {
    view.items
        .iter()
        .enumerate()
        .filter(|(_, item)| matches!(item.token, Token::Deviations { .. }))
        .filter_map(|(at, _)| at.checked_sub(1))
        .collect()
}

/// The metals of the hole's part and of the shaft's.
pub(crate) fn metals(view: &View) -> Option<(Option<&'static str>, Option<&'static str>)> {
    let (mut hole, mut shaft): (Option<&'static str>, Option<&'static str>) = (None, None);
    let mut loose = Vec::new();
    let has_shaft = view.has("shaft");
    let has_hole = view.has("hub") || view.has("hole");
    for (at, item) in view.items.iter().enumerate() {
        let Token::Word { name, kind: "material" } = item.token else { continue };
        let around = |step: isize| {
            let mut place = at;
            for _ in 0..4 {
                place = place.checked_add_signed(step)?;
                match &view.items.get(place)?.token {
                    Token::Word { kind: kind @ ("shaft" | "hub" | "hole" | "bushing"), .. } => {
                        return Some(*kind);
                    }
                    Token::Word { kind: "bar", .. } => return Some("shaft"),
                    Token::Word { kind: "small" | "role" | "state" | "reads" | "fit", .. }
                    | Token::Number(_)
                    | Token::Times(_) => {}
                    _ => return None,
                }
            }
            None
        };
        let before = at.checked_sub(1).and_then(|at| view.items.get(at)).map(|item| &item.token);
        let after_in = matches!(before, Some(Token::Word { kind: "connector", name: "in" }));
        let next = match view.items.get(at + 1).map(|item| &item.token) {
            Some(Token::Word { kind: kind @ ("shaft" | "hub" | "hole" | "bushing"), .. }) => {
                Some(*kind)
            }
            Some(Token::Word { kind: "bar", .. }) => Some("shaft"),
            _ => None,
        };
        let owner = next.or(after_in.then_some("hub")).or_else(|| around(1)).or_else(|| around(-1));
        let slot = match owner {
            Some("hub" | "hole") => &mut hole,
            Some("bushing") if has_shaft && !has_hole => &mut hole,
            Some("shaft" | "bushing") => &mut shaft,
            _ => {
                loose.push(name);
                continue;
            }
        };
        if slot.is_some_and(|known| known != name) {
            // `brass sleeve in cast iron`: what it goes into is the hub, and the other is its own.
            if after_in {
                loose.extend(hole.replace(name));
                continue;
            }
            loose.push(name);
            continue;
        }
        *slot = Some(name);
    }
    match (&loose[..], hole, shaft) {
        // One metal said of the whole joint.
        (&[one], None, None) => (hole, shaft) = (Some(one), Some(one)),
        (&[a, b], None, None) if a == b => (hole, shaft) = (Some(a), Some(b)),
        (&[pin, hub], None, None)
            if view.types(&["in", "into", "inside"]) && !view.types(&["on", "onto"]) =>
        {
            (hole, shaft) = (Some(hub), Some(pin));
        }
        (&[hub, pin], None, None) if view.types(&["on", "onto"]) => {
            (hole, shaft) = (Some(hub), Some(pin));
        }
        ([], ..) => {}
        (&[one], Some(_), None) => shaft = Some(one),
        (&[one], None, Some(_)) => hole = Some(one),
        (&[one], Some(a), Some(b)) if one == a && a == b => {}
        _ => return None,
    }
    Some((hole, shaft))
}
