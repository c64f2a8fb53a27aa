//! Sizes and how they fit: both parts, one part in hand, a reading, a range.

use std::fmt::Write as _;

use super::{
    Said,
    roles::{Roles, assign},
    token::{Num, System, Token, Unit},
    view::View,
};

/// The nouns of a shaft and a hole.
const NOUNS: &[&str] = &["hole", "shaft", "hub", "bushing"];

/// Nominal, not measured: a fraction, whole or half millimetres, a multiple of
/// 1/64 in or, from an inch up, of 0.05 in.
pub(super) fn is_nominal(num: &Num, system: System) -> bool {
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
pub(super) fn nominal_of(num: &Num, system: System) -> Option<String> {
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

fn sixteenth(count: u32) -> String {
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
pub(super) enum Fit {
    Word(&'static str),
    Pair(String),
    Inch(String),
    Hole(String),
    Shaft(String),
}

impl Fit {
    pub(super) fn text(&self) -> &str {
        match self {
            Self::Word(name) => name,
            Self::Pair(name) | Self::Inch(name) | Self::Hole(name) | Self::Shaft(name) => name,
        }
    }
}

/// The one fit that is said; none and two are none.
pub(super) fn fit_of(view: &View) -> Option<Fit> {
    let mut found: Option<Fit> = None;
    let mut last = None;
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
            // A hole's class and a shaft's, apart in the line.
            Some(Fit::Hole(hole)) if let Fit::Shaft(shaft) = &fit => {
                found = Some(Fit::Pair(format!("{hole}/{shaft}")));
            }
            Some(Fit::Shaft(shaft)) if let Fit::Hole(hole) = &fit => {
                found = Some(Fit::Pair(format!("{hole}/{shaft}")));
            }
            Some(_) => return None,
        }
        last = Some(item);
    }
    let _ = last;
    found
}

fn is_fit(token: &Token) -> bool {
    matches!(
        token,
        Token::Number(_) | Token::Pair(_) | Token::InchClass(_) | Token::Hole(_) | Token::Shaft(_)
    )
}

/// `, hub bronze, thin tube`: circumstances of a word.
fn circumstances(view: &View, fit: &Fit) -> Option<String> {
    let mut text = String::new();
    let materials: Vec<_> = view.words("material").collect();
    let mut hub = None;
    for (at, item) in view.items.iter().enumerate() {
        if let Token::Word { name, kind: "material" } = item.token {
            // What the shaft is made of changes no word.
            let is_shaft = matches!(
                view.items.get(at + 1).map(|next| &next.token),
                Some(Token::Word { kind: "shaft", .. })
            ) && !matches!(
                at.checked_sub(1).and_then(|at| view.items.get(at)).map(|before| &before.token),
                Some(Token::Word { name: "in", .. })
            );
            if is_shaft || ["drill rod", "silver steel", "drillrod"].contains(&&*view.said(at)) {
                return None;
            }
            if hub.is_some_and(|known| known != name) {
                return None;
            }
            hub = Some(name);
        }
    }
    let _ = materials;
    match (hub, fit) {
        (Some(hub), Fit::Word(_)) => {
            let _ = write!(text, ", hub {hub}");
        }
        (Some(_), _) => return None,
        (None, _) => {}
    }
    if view.says("state", "thin") {
        if !matches!(fit, Fit::Word(_)) {
            return None;
        }
        text.push_str(", thin tube");
    }
    Some(text)
}

/// A nominal size and a fit: what to cut both parts to.
#[allow(clippy::too_many_lines, reason = "one rule after another, each short")]
pub(super) fn fit(view: &View, system: System) -> Option<Said> {
    view.only(
        &["fit", "vague", "material", "state", "hole", "shaft", "hub", "bushing", "head", "role"],
        |token| {
            is_fit(token)
                || matches!(token, Token::Deviations { .. } | Token::Span(..) | Token::AnsiClass(_))
        },
    )?;
    // `H7 hole`, `spin` of a fit that turns: heads that say nothing more.
    if view
        .words("head")
        .any(|head| !matches!(head, "clearance" | "spin" | "whatfit" | "turn" | "bore"))
    {
        return None;
    }
    if view.words("role").any(|role| !matches!(role, "od" | "id")) {
        return None;
    }
    let is_hole = view.has("hole") || view.says("role", "id");
    let is_shaft = view.has("shaft") || view.says("role", "od");
    // A toleranced feature alone.
    if let Some(limits) = limits(view, system) {
        if is_hole == is_shaft
            || fit_of(view).is_some()
            || view.has("material")
            || view.has("state")
            || view.has("vague")
            || view.has("head")
        {
            return None;
        }
        let feature = if is_hole { "hole" } else { "shaft" };
        return Some(Said::plain(format!("{feature} {limits}")));
    }
    if view.count(|token| matches!(token, Token::Deviations { .. } | Token::Span(..))) > 0 {
        return None;
    }
    let mut numbers = view.numbers();
    let (_, num) = numbers.next()?;
    if numbers.next().is_some() || (view.has("role") && view.has("fit") && !view.has("bushing")) {
        return None;
    }
    let size = num.plain(system);
    let roles = assign(view, NOUNS, &[], system).unwrap_or_default();
    // A tube's or a ring's figure may be its bore or its outside.
    let is_ring = roles.get("ring").is_some() && !is_hole && !is_shaft;
    let is_tube = is_ring && view.types(&["tube", "tubing", "pipe"]);
    let vague = view.word("vague");
    if let Some(vague) = vague
        && !(vague == "clearance" && fit_of(view).is_some())
    {
        if fit_of(view).is_some() || view.words("vague").any(|other| other != vague) {
            return None;
        }
        return vague_fit(vague, &size, view);
    }
    if view.has("fit") && fit_of(view).is_none() {
        return None;
    }
    let Some(fit) = fit_of(view) else {
        if view.says("head", "clearance")
            || view.says("head", "spin")
            || view.says("state", "moving")
        {
            if roles.get("ring").is_some() {
                return Some(Said::ask(
                    "its bore or its outside is not said",
                    vec![format!("{size} running"), format!("{size} free running")],
                ));
            }
            return (is_hole || is_shaft || view.says("state", "moving"))
                .then(|| Said::plain(format!("{size} running")));
        }
        if view.has("head") || view.has("material") || view.has("state") {
            return None;
        }
        if view.has("bushing") && view.types(&["fit", "what fit", "which fit"]) {
            return Some(Said::ask(
                "a bushing's bore or its outside is not said",
                vec![format!("{size} running"), format!("{size} press")],
            ));
        }
        if let Some(class) = view.one(|token| match token {
            Token::AnsiClass(class) => Some(*class),
            _ => None,
        }) {
            let mut choices = vec![format!("{size} RC{class}")];
            if (2..=3).contains(&class) {
                choices.extend(
                    super::threads::coarse(&num.text)
                        .map(|name| format!("{name} {class}B/{class}A")),
                );
            }
            return (choices.len() > 1)
                .then(|| Said::ask("a fit or a thread's class is not said", choices));
        }
        // A part and its size: what of it?
        if is_hole
            && !is_shaft
            && !view.has("hub")
            && view.items.len() <= 4
            && is_nominal(num, system)
        {
            return Some(Said::ask(
                "what the hole is for is not said",
                vec![format!("{size} H7"), format!("drill {size}")],
            ));
        }
        // `3/4 fit`: nothing says which.
        if view.types(&["fit", "fits", "what fit", "which fit"])
            || (is_hole && is_shaft)
            || (view.has("shaft") && view.has("hub"))
        {
            return Some(Said::ask(
                "how it is to fit is not said",
                ["sliding", "push", "press"].map(|word| format!("{size} {word}")).to_vec(),
            ));
        }
        return None;
    };
    let tight = ["press", "shrink", "drive", "keying", "wringing"];
    if vague == Some("clearance") && tight.iter().any(|word| fit.text().contains(word)) {
        return None;
    }
    if is_tube && !view.has("state") {
        let word = fit.text();
        return Some(Said::ask(
            "the tube's bore or its outside is not said",
            vec![format!("{size} {word}, thin tube"), format!("shaft {size}, {word}, thin tube")],
        ));
    }
    if view.has("bushing") && matches!(fit, Fit::Word(_)) && !view.has("shaft") {
        return bushing_outside(&size, &fit, view);
    }
    // A class and the other part's name contradict: which is wrong is asked.
    if let (Fit::Hole(class) | Fit::Shaft(class), Some(turned)) = (&fit, turned_class(&fit))
        && is_hole != is_shaft
        && is_hole != matches!(fit, Fit::Hole(_))
        && is_nominal(num, system)
        && !view.has("head")
        && !view.has("material")
        && !view.has("state")
    {
        return Some(Said::ask(
            "the class is the other part's",
            vec![format!("{size} {turned}"), format!("{size} {class}")],
        ));
    }
    if view.says("head", "spin") && matches!(fit, Fit::Hole(_) | Fit::Shaft(_)) {
        return None;
    }
    match &fit {
        Fit::Hole(_) if is_shaft && !is_hole => return None,
        Fit::Shaft(_) if is_hole && !is_shaft => return None,
        Fit::Shaft(_) | Fit::Hole(_) if is_hole && is_shaft => return None,
        Fit::Shaft(_) | Fit::Hole(_) if (is_hole || is_shaft) && !is_nominal(num, system) => {
            return None;
        }
        Fit::Word(_)
            if (view.has("bushing") && !is_hole && !is_shaft)
                || (!is_nominal(num, system) && (is_hole || is_shaft)) =>
        {
            return None;
        }
        _ => {}
    }
    if measured_here(view) {
        return None;
    }
    // A class beside the other part's name, each: one of the two is wrong.
    if let Fit::Pair(_) = fit
        && view.items.iter().enumerate().any(|(at, item)| {
            let beside = |kind: &str| [at.checked_sub(1), Some(at + 1)].into_iter().flatten().any(|near| matches!(view.items.get(near).map(|item| &item.token), Some(Token::Word { kind: k, .. }) if *k == kind));
            match item.token {
                Token::Hole(_) => beside("shaft") && !beside("hole"),
                Token::Shaft(_) => beside("hole") && !beside("shaft"),
                _ => false,
            }
        })
    {
        return None;
    }
    // `.4995 press`: measured, and of which part?
    if matches!(fit, Fit::Word(_))
        && !is_nominal(num, system)
        && num.places > 3
        && !is_hole
        && !is_shaft
        && !view.has("material")
    {
        let word = fit.text();
        return Some(Said::ask(
            "a measured size: of the hole or of the shaft is not said",
            vec![
                format!("hole {size}, {word}"),
                format!("shaft {size}, {word}"),
                format!("{size} {word}"),
            ],
        ));
    }
    let Some(circumstances) = circumstances(view, &fit) else {
        // A bought bar's own size is under nominal: turned, or as it comes?
        let bar = view.items.iter().enumerate().find_map(|(at, item)| match item.token {
            Token::Word { name, kind: "material" }
                if matches!(
                    view.items.get(at + 1).map(|next| &next.token),
                    Some(Token::Word { kind: "shaft", .. })
                ) =>
            {
                Some((name, view.said(at)))
            }
            _ => None,
        });
        let (_, said) = bar?;
        let bar = if ["crs", "cold rolled", "cold drawn", "cold rolled steel"].contains(&&*said) {
            "low-carbon cold drawn bar"
        } else if said == "drill rod" || said == "silver steel" {
            "drill rod"
        } else {
            return None;
        };
        return (view.words("material").count() == 1).then(|| {
            Said::ask(
                "a turned shaft, or the bar as it comes?",
                vec![format!("{size} {}", fit.text()), format!("{bar} {size}, {}", fit.text())],
            )
        });
    };
    Some(Said::plain(format!("{size} {}{circumstances}", fit.text())))
}

/// A bushing's figure with a word: bought, or turned at home.
fn bushing_outside(size: &str, fit: &Fit, view: &View) -> Option<Said> {
    let Fit::Word(word) = fit else { return None };
    if view.has("material")
        || !matches!(*word, "press" | "light press" | "push" | "sliding" | "running")
    {
        return None;
    }
    Some(Said::ask(
        "a bushing's bore or outside, and whether it is bought, is not said",
        vec![
            format!("cast bronze bushing outside {size}, {word}"),
            format!("{size} {word}"),
            format!("bushing {size}..{size}, {word}"),
        ],
    ))
}

/// `H7` for `h7` and the other way.
fn turned_class(fit: &Fit) -> Option<String> {
    match fit {
        Fit::Hole(class) => Some(class.to_ascii_lowercase()),
        Fit::Shaft(class) => Some(class.to_ascii_uppercase()),
        _ => None,
    }
}

fn measured_here(view: &View) -> bool {
    view.has("reads")
}

fn vague_fit(vague: &'static str, size: &str, view: &View) -> Option<Said> {
    let words: &[&str] = match vague {
        "tight" => &["push", "light press", "press"],
        "loose" => &["free running", "loose running", "running"],
        "interference" => &["light press", "press", "heavy press"],
        "close" | "close fit" => &["snug", "running"],
        "hand" | "hand fit" => &["sliding", "push"],
        "light fit" => &["light press", "drive"],
        "heavy fit" => &["heavy press", "press"],
        "easy" | "easy fit" => &["sliding", "free running"],
        "medium" | "medium fit" => &["medium running", "press"],
        "clearance" => &["sliding", "running", "free running"],
        _ => &["snug", "push", "light press"],
    };
    let more = circumstances(view, &Fit::Word(words.first()?))?;
    let or = words.join(" or ");
    Some(Said::ask(
        format!("`{vague}` can mean {or}"),
        words.iter().map(|word| format!("{size} {word}{more}")).collect(),
    ))
}

/// `0.750in +0in/-0.001in`, `0.7500in..0.7505in`: the one size with limits.
pub(super) fn limits(view: &View, system: System) -> Option<String> {
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
                let unit = high.unit.or(low.unit);
                let give = |num: &Num| Num { unit: num.unit.or(unit), ..num.clone() }.plain(system);
                if low.mm(system) >= high.mm(system) || high.mm(system) > 1.05 * low.mm(system) {
                    return None;
                }
                format!("{}..{}", give(low), give(high))
            }
            _ => continue,
        };
        if found.replace(text).is_some() {
            return None;
        }
    }
    found
}

pub(super) fn deviations_text(
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
    let (below, _) = give(lower);
    format!("{size} {above_sign}{above}/-{below}")
}

/// The place of a number that a limits token uses.
pub(super) fn limit_places(view: &View) -> Vec<usize> {
    view.items
        .iter()
        .enumerate()
        .filter(|(_, item)| matches!(item.token, Token::Deviations { .. }))
        .filter_map(|(at, _)| at.checked_sub(1))
        .collect()
}

/// A part in hand and a fit: the other part.
#[allow(clippy::too_many_lines, reason = "one rule after another, each short")]
pub(super) fn suit(view: &View, system: System) -> Option<Said> {
    view.only(
        &[
            "fit", "material", "state", "hole", "shaft", "hub", "bushing", "head", "reads",
            "start", "should", "bar", "role",
        ],
        is_fit,
    )?;
    if view.words("head").any(|head| {
        !matches!(head, "suit" | "turnto" | "towhat" | "whatnow" | "whatfit" | "ream" | "clearance")
    }) {
        return None;
    }
    if fit_of(view).is_none() {
        return unsaid_suit(view, system);
    }
    let fit = match fit_of(view)? {
        // The class of the part to be cut: the hole in hand is what it is.
        Fit::Shaft(class)
            if view.has("hole") && (view.has("shaft") || view.says("head", "turnto")) =>
        {
            Fit::Pair(format!("H7/{class}"))
        }
        Fit::Hole(_) | Fit::Shaft(_) => return None,
        fit => fit,
    };
    let roles = assign(view, NOUNS, &[], system)?;
    let numbers: Vec<_> = view.numbers().collect();
    if view.words("role").any(|role| !matches!(role, "od" | "id")) {
        return None;
    }
    // A nominal size beside the measured one.
    let (in_hand, nominal): (usize, Option<&Num>) = match &numbers[..] {
        [(at, _)] => (*at, None),
        [(a, x), (b, y)] => {
            let should = view.has("should");
            let far = (x.mm(system) - y.mm(system)).abs() / x.mm(system);
            if far > 0.05 || (matches!(fit, Fit::Word(_)) && !should && far > 0.01) {
                return None;
            }
            let read = |at: usize| {
                roles.taken.iter().any(|taken| taken.at == at && taken.is_measured)
                    || roles.free.iter().any(|(place, _, measured)| *place == at && *measured)
            };
            let after_should = |at: usize| {
                at.checked_sub(1).is_some_and(|at| {
                    matches!(view.items[at].token, Token::Word { kind: "should", .. })
                })
            };
            match (is_nominal(x, system), is_nominal(y, system)) {
                (true, false) => (*b, Some(x)),
                (false, true) => (*a, Some(y)),
                (false, false) if after_should(*b) => (*a, Some(y)),
                (true, true) if read(*a) && !read(*b) => (*a, Some(y)),
                (true, true) if read(*b) && !read(*a) => (*b, Some(x)),
                _ => return None,
            }
        }
        _ => return None,
    };
    let num = numbers.iter().find(|(at, _)| *at == in_hand).map(|(_, num)| *num)?;
    let owner = roles.taken.iter().find(|taken| taken.at == in_hand);
    let is_measured = owner.is_some_and(|owner| owner.is_measured)
        || roles.free.iter().any(|(at, _, measured)| *at == in_hand && *measured);
    let names = |kind: &str| view.has(kind);
    // Which side is in hand.
    let side = match owner.map(|owner| owner.by) {
        Some("hole" | "hub") => "hole",
        Some("shaft") => "shaft",
        Some("bushing") => {
            let is_pressed = view.says("state", "pressed") || view.says("state", "inplace");
            let for_shaft = view.items.iter().enumerate().any(|(at, item)| {
                matches!(item.token, Token::Word { name: "turnto", .. })
                    && ["shaft", "pin", "spindle"].iter().any(|noun| view.said(at).contains(noun))
            });
            if is_pressed || for_shaft || (names("shaft") && !names("hole") && !names("hub")) {
                "hole"
            } else {
                "bushing"
            }
        }
        None if names("bar") && !names("shaft") => "shaft",
        _ if names("hole") != names("shaft") && !names("hub") && !names("bushing") => {
            // `bored it .7515, …`: the only noun.
            if names("hole") { "hole" } else { "shaft" }
        }
        _ if names("bar") => "shaft",
        // A bushing's outside goes into a hole.
        Some("role") | None if names("bushing") && view.says("role", "od") && !names("shaft") => {
            "shaft"
        }
        None if view.says("role", "od") && !names("shaft") => "shaft",
        None if view.says("role", "id") && !names("hole") => "hole",
        _ => return None,
    };
    let side = if side == "bushing" && view.says("role", "od") { "shaft" } else { side };
    let wants_other = match side {
        "hole" => names("shaft") || view.says("head", "turnto"),
        _ => names("hole") || names("hub"),
    };
    let says_suit = view.says("head", "suit")
        || view.says("head", "towhat")
        || view.says("head", "whatnow")
        || view.says("head", "turnto");
    // A nominal number without a verb, a mate or `to suit` is no part in hand.
    if nominal.is_none() && is_nominal(num, system) && !is_measured {
        return None;
    }
    if !(is_measured || says_suit || wants_other || !is_nominal(num, system)) {
        return None;
    }
    let reading = num.plain(system);
    let more = if view.has("material") && view.has("bushing") {
        // The bushing's own metal changes nothing: it is there.
        let (hub, _) = metals(view)?;
        hub.map_or_else(String::new, |hub| format!(", hub {hub}"))
    } else {
        circumstances(view, &fit)?
    };
    let text = match (&fit, side) {
        (Fit::Word(word), "bushing") => format!("bushing {reading}..{reading}, {word}{more}"),
        (Fit::Word(word), side) => format!("{side} {reading}, {word}{more}"),
        (_, "bushing") => return None,
        (fit, side) => {
            let nominal =
                nominal.map(|num| num.plain(system)).or_else(|| nominal_of(num, system))?;
            format!("{nominal} {}, {side} = {reading}", fit.text())
        }
    };
    Some(Said::plain(text))
}

/// A part in hand, and what goes with it is wanted, with no word for the fit.
fn unsaid_suit(view: &View, system: System) -> Option<Said> {
    if view.has("fit")
        || view.has("material")
        || view.has("state")
        || view.has("bushing")
        || view
            .count(|token| !matches!(token, Token::Number(_) | Token::Break | Token::Word { .. }))
            > 0
    {
        return None;
    }
    let roles = assign(view, NOUNS, &[], system)?;
    let asks =
        view.says("head", "whatnow") || view.says("head", "suit") || view.says("head", "turnto");
    let numbers: Vec<_> = view.numbers().collect();
    let (at, num) = match numbers[..] {
        [only] => only,
        [(a, x), (b, y)] if (x.mm(system) - y.mm(system)).abs() < 0.01 * x.mm(system) => {
            match (is_nominal(x, system), is_nominal(y, system)) {
                (true, false) => (b, y),
                (false, true) => (a, x),
                _ => return None,
            }
        }
        _ => return None,
    };
    if is_nominal(num, system) || !asks {
        return None;
    }
    let owner = roles.taken.iter().find(|taken| taken.at == at).map(|taken| taken.by);
    let side = match owner {
        Some("hole" | "hub") => "hole",
        Some("shaft") => "shaft",
        None if view.has("hole") != view.has("shaft") => {
            if view.has("hole") {
                "hole"
            } else {
                "shaft"
            }
        }
        _ => return None,
    };
    let reading = num.plain(system);
    Some(Said::ask(
        "how they are to fit is not said",
        ["sliding", "running", "press"].map(|word| format!("{side} {reading}, {word}")).to_vec(),
    ))
}

/// Two parts as they measure: what fit they make.
pub(super) fn pair(view: &View, system: System) -> Option<Said> {
    view.only(
        &["hole", "shaft", "hub", "bushing", "head", "reads", "start", "fit", "material"],
        |token| matches!(token, Token::Number(_) | Token::Pair(_) | Token::InchClass(_)),
    )?;
    if view.words("head").any(|head| !matches!(head, "clearance" | "interf" | "whatfit" | "suit")) {
        return None;
    }
    if view.has("material") {
        return None;
    }
    let roles = assign(view, NOUNS, &[], system)?;
    if let (3, Some(Fit::Pair(class) | Fit::Inch(class)), [(_, nominal, _)]) =
        (view.numbers().count(), fit_of(view), &roles.free[..])
        && let (Some(hole), Some(shaft)) = (roles.num("hole"), roles.num("shaft"))
    {
        let near =
            |num: &Num| (num.mm(system) - nominal.mm(system)).abs() <= 0.02 * nominal.mm(system);
        return (near(hole) && near(shaft) && is_nominal(nominal, system)).then(|| {
            Said::plain(format!(
                "{} {class} = {}/{}",
                nominal.plain(system),
                hole.plain(system),
                shaft.plain(system)
            ))
        });
    }
    if view.numbers().count() != 2 {
        return None;
    }
    let one = |kinds: &[&str]| {
        let mut found = roles.taken.iter().filter(|taken| kinds.contains(&taken.by));
        let first = found.next()?;
        found.next().is_none().then_some(first)
    };
    let (hole, shaft) = match (one(&["hole", "hub"]), one(&["shaft"]), one(&["bushing"])) {
        (Some(hole), Some(shaft), None) => (hole, shaft),
        (Some(hole), None, Some(bushing)) => (hole, bushing),
        (None, Some(shaft), Some(bushing)) => (bushing, shaft),
        _ => return two_bare(view, &roles, system),
    };
    let (a, b) = (hole.num.mm(system), shaft.num.mm(system));
    if (a - b).abs() > 0.05 * a {
        return None;
    }
    let tail = match fit_of(view) {
        Some(Fit::Word(word)) => format!(", {word}"),
        Some(_) => return None,
        None => String::new(),
    };
    if view.has("start") || view.types(&["was", "old"]) {
        return None;
    }
    // Both of one nominal size: which fit they should have is another question.
    if (a - b).abs() < 1e-9 && tail.is_empty() {
        return None;
    }
    Some(Said::plain(format!(
        "hole {}, shaft {}{tail}",
        hole.num.plain(system),
        shaft.num.plain(system)
    )))
}

/// Two sizes and no noun: which is the hole is asked.
fn two_bare(view: &View, roles: &Roles, system: System) -> Option<Said> {
    let [(_, a, _), (_, b, _)] = &roles.free[..] else { return None };
    if !NOUNS.iter().all(|kind| !view.has(kind)) || view.has("fit") {
        return None;
    }
    let (x, y) = (a.mm(system), b.mm(system));
    if (x - y).abs() > 0.05 * x || (x - y).abs() < 1e-9 {
        return None;
    }
    let (a, b) = (a.plain(system), b.plain(system));
    let says_in =
        view.tokens().any(|token| matches!(token, Token::Word { name: "in", kind: "connector" }));
    let mut choices = vec![format!("hole {a}, shaft {b}"), format!("hole {b}, shaft {a}")];
    if says_in {
        choices = vec![format!("hole {b}, shaft = {a}"), format!("hole {a}..{b}")];
        if x > y {
            choices = vec![format!("hole {b}, shaft {a}"), format!("hole {a}, shaft {b}")];
        }
    }
    Some(Said::ask("which is the hole is not said", choices))
}

/// A reading against a class or limits.
#[allow(clippy::too_many_lines, reason = "one rule after another, each short")]
pub(super) fn reading(view: &View, system: System) -> Option<Said> {
    view.only(
        &[
            "hole",
            "shaft",
            "hub",
            "head",
            "reads",
            "start",
            "instrument",
            "material",
            "should",
            "bushing",
        ],
        |token| {
            matches!(
                token,
                Token::Number(_)
                    | Token::Hole(_)
                    | Token::Shaft(_)
                    | Token::Deviations { .. }
                    | Token::Span(..)
                    | Token::Temperature(_)
            )
        },
    )?;
    if view.words("head").any(|head| !matches!(head, "ok" | "left")) || view.has("should") {
        return None;
    }
    let is_hole = view.has("hole") || view.has("hub");
    let is_shaft = view.has("shaft");
    if let Some(said) = spoken_limits(view, system) {
        return Some(said);
    }
    let skip = limit_places(view);
    let numbers: Vec<_> = view.numbers().filter(|(at, _)| !skip.contains(at)).collect();
    let instrument = match (view.word("instrument"), view.words("instrument").count()) {
        (Some(name), 1) => format!(" with {name}"),
        (None, _) => String::new(),
        _ => return None,
    };
    let temperature = match view.one(|token| match token {
        Token::Temperature(text) => Some(text.clone()),
        _ => None,
    }) {
        Some(text) => {
            let material = view.word("material")?;
            let feature = if is_hole { "hole" } else { "shaft" };
            format!(" at {text}, {feature} {material}")
        }
        None if view.has("material") => return None,
        None => String::new(),
    };
    let near = |size: f64, reading: f64| (size - reading).abs() <= 0.05 * size;
    let target = if let Some(text) = limits(view, system) {
        if view.tokens().any(|token| matches!(token, Token::Hole(_) | Token::Shaft(_))) {
            return None;
        }
        let [(_, reading)] = numbers[..] else { return None };
        let size = view
            .tokens()
            .find_map(|token| match token {
                Token::Span(low, _) => Some(low.mm(system)),
                _ => None,
            })
            .or_else(|| {
                skip.first().and_then(|at| match &view.items.get(*at)?.token {
                    Token::Number(num) => Some(num.mm(system)),
                    _ => None,
                })
            })?;
        if !near(size, reading.mm(system)) {
            return None;
        }
        let tail = format!("{text} = {}{instrument}{temperature}", reading.plain(system));
        if is_hole == is_shaft {
            return Some(Said::ask(
                "hole or shaft is not said",
                vec![format!("hole {tail}"), format!("shaft {tail}")],
            ));
        }
        return Some(Said::plain(format!("{} {tail}", if is_hole { "hole" } else { "shaft" })));
    } else {
        match fit_of(view)? {
            Fit::Hole(class) if !is_shaft => class,
            Fit::Shaft(class) if !is_hole => class,
            _ => return None,
        }
    };
    let [(a, x), (b, y), ..] = numbers[..] else { return None };
    let more: Vec<_> = numbers.iter().skip(2).collect();
    // The nominal number stands beside the class; the reading is the other.
    let class_at = view
        .items
        .iter()
        .position(|item| matches!(item.token, Token::Hole(_) | Token::Shaft(_)))?;
    let verb = |at: usize| {
        at.checked_sub(1).is_some_and(|before| {
            matches!(
                view.items.get(before).map(|item| &item.token),
                Some(Token::Word { kind: "reads", .. })
            )
        })
    };
    let beside = |at: usize| at + 1 == class_at || at == class_at + 1;
    let (size, reading) = match (is_nominal(x, system), is_nominal(y, system)) {
        (true, false) => (x, y),
        (false, true) => (y, x),
        _ if verb(b) && !verb(a) => (x, y),
        _ if verb(a) && !verb(b) => (y, x),
        _ if a + 1 == class_at && b > class_at => (x, y),
        _ if beside(b) && !beside(a) => (y, x),
        _ => return None,
    };
    if !near(size.mm(system), reading.mm(system)) || size == reading && !view.has("reads") {
        return None;
    }
    let mut readings = reading.plain(system);
    // Several readings after one verb; two verbs are two stories.
    if !more.is_empty() && view.words("reads").count() > 1 {
        return None;
    }
    for (_, other) in more {
        if !near(reading.mm(system), other.mm(system))
            || is_nominal(other, system) && !is_nominal(reading, system)
        {
            return None;
        }
        readings.push(' ');
        readings.push_str(&other.plain(system));
    }
    // A cut to go to is another question where nothing reads and a verb cuts.
    Some(Said::plain(format!(
        "{} {target} = {readings}{instrument}{temperature}",
        size.plain(system)
    )))
}

/// `shaft limits are .7485 to .7490 and mine is .7493`.
fn spoken_limits(view: &View, system: System) -> Option<Said> {
    if !(0..view.items.len())
        .any(|at| ["limits", "between", "limits are"].contains(&&*view.said(at)))
        || view
            .count(|token| !matches!(token, Token::Number(_) | Token::Break | Token::Word { .. }))
            > 0
    {
        return None;
    }
    let numbers: Vec<_> = view.numbers().collect();
    let [(a, low), (b, high), (_, reading)] = numbers[..] else { return None };
    let joined = b == a + 2 && ["to", "and", "-"].contains(&&*view.said(a + 1));
    if !joined
        || low.mm(system) >= high.mm(system)
        || high.mm(system) > 1.02 * low.mm(system)
        || (reading.mm(system) - low.mm(system)).abs() > 0.05 * low.mm(system)
    {
        return None;
    }
    let tail = format!("{}..{} = {}", low.plain(system), high.plain(system), reading.plain(system));
    match (view.has("hole") || view.has("hub"), view.has("shaft")) {
        (true, false) => Some(Said::plain(format!("hole {tail}"))),
        (false, true) => Some(Said::plain(format!("shaft {tail}"))),
        _ => Some(Said::ask(
            "hole or shaft is not said",
            vec![format!("hole {tail}"), format!("shaft {tail}")],
        )),
    }
}

/// A range of play or grip: the fits that give it.
pub(super) fn pick(view: &View, system: System) -> Option<Said> {
    view.only(&["hole", "shaft", "hub", "head", "material", "vague"], |token| {
        matches!(token, Token::Number(_) | Token::Span(..) | Token::Deviations { .. })
    })?;
    if view.has("material") {
        return None;
    }
    if let Some(said) = about(view, system) {
        return Some(said);
    }
    let clearance = view.says("head", "clearance") || view.says("vague", "clearance");
    let grip = view.says("head", "interf") || view.says("vague", "interference");
    if clearance == grip
        || view.words("head").any(|head| !matches!(head, "clearance" | "interf" | "whatfit"))
    {
        return None;
    }
    let what = if clearance { "clearance" } else { "interference" };
    let numbers: Vec<_> = view.numbers().map(|(_, num)| num).collect();
    let spans: Vec<_> = view
        .tokens()
        .filter_map(|token| match token {
            Token::Span(a, b) => Some((a, b)),
            _ => None,
        })
        .collect();
    let (size, from, to) = match (&numbers[..], &spans[..]) {
        ([size], [(from, to)]) => (*size, *from, *to),
        ([a, b, c], []) => {
            let thou = |x: &Num, y: &Num| Num { unit: x.unit.or(y.unit), ..x.clone() }.mm(system);
            let small = |num: &Num, of: &Num| {
                // A unit of the other end goes for both.
                let other = if std::ptr::eq(of, *a) { num } else { *b };
                thou(num, other) < 0.05 * of.mm(system)
            };
            if small(a, c) && small(b, c) {
                (*c, *a, *b)
            } else if small(b, a) && small(c, a) {
                (*a, *b, *c)
            } else {
                return None;
            }
        }
        _ => return None,
    };
    let unit = to.unit.or(from.unit);
    let give = |num: &Num| Num { unit: num.unit.or(unit), ..num.clone() };
    let (from, to) = (give(from), give(to));
    if from.mm(system) >= to.mm(system) || to.mm(system) > 0.05 * size.mm(system) {
        return None;
    }
    Some(Said::plain(format!(
        "pick {} {what} {}..{}",
        size.plain(system),
        from.plain(system),
        to.plain(system)
    )))
}

/// A size and one small figure, `1 inch fit with 2 thou`: play or grip, about so much.
fn about(view: &View, system: System) -> Option<Said> {
    let numbers: Vec<_> = view.numbers().map(|(_, num)| num).collect();
    let [a, b] = numbers[..] else { return None };
    let (size, small) = if a.mm(system) > b.mm(system) { (a, b) } else { (b, a) };
    if small.mm(system) > 0.01 * size.mm(system)
        || !is_nominal(size, system)
        || view
            .count(|token| !matches!(token, Token::Number(_) | Token::Break | Token::Word { .. }))
            > 0
    {
        return None;
    }
    let words = |what: &str| view.says("head", what);
    let says = (
        words("clearance") || view.says("vague", "clearance"),
        words("interf") || view.says("vague", "interference"),
    );
    let span = |factor: f64| {
        let unit = small.plain(system);
        let unit = unit
            .trim_start_matches(|c: char| c.is_ascii_digit() || c == '.' || c == '/' || c == '-');
        format!("{}{unit}", super::cuts::trimmed(small.value * factor))
    };
    let (low, high) = (span(0.75), span(1.25));
    let pick = |what: &str| format!("pick {} {what} {low}..{high}", size.plain(system));
    match says {
        (false, false) => Some(Said::ask(
            "play or grip is not said",
            vec![pick("clearance"), pick("interference")],
        )),
        _ => None,
    }
}

/// A pair at another temperature.
pub(super) fn warm(view: &View, system: System) -> Option<Said> {
    view.only(
        &["fit", "material", "hole", "shaft", "hub", "bushing", "head", "state", "reads"],
        |token| is_fit(token) || matches!(token, Token::Temperature(_) | Token::Angle(_)),
    )?;
    if view.words("head").any(|head| !matches!(head, "warm" | "clearance")) {
        return None;
    }
    let fit = fit_of(view)?;
    if matches!(fit, Fit::Hole(_) | Fit::Shaft(_)) {
        return None;
    }
    let numbers: Vec<_> = view.numbers().collect();
    let degrees = view.one(|token| match token {
        Token::Angle(text) => Some(text.clone()),
        _ => None,
    });
    let temperature = view.one(|token| match token {
        Token::Temperature(text) => Some(text.clone()),
        _ => None,
    });
    let after_at = |at: usize| {
        at.checked_sub(1).is_some_and(|at| matches!(&*view.said(at), "at" | "to" | "up to"))
    };
    let (size, temperatures) = match (&numbers[..], temperature, degrees) {
        ([(_, size)], Some(text), None) => (*size, vec![text]),
        ([(_, size)], None, Some(text)) => (*size, vec![format!("{text}C"), format!("{text}F")]),
        // `at 90`: of which scale?
        ([(_, size), (at, bare)], None, None)
            if after_at(*at) && bare.unit.is_none() && bare.places == 0 =>
        {
            (*size, vec![format!("{}C", bare.text), format!("{}F", bare.text)])
        }
        _ => return None,
    };
    let (hole, shaft) = metals(view)?;
    let (hole, shaft) = (hole?, shaft?);
    if temperatures.len() > 1 {
        let choices = temperatures.iter().map(|temperature| {
            format!(
                "{} {} warm {temperature}, hole {hole}, shaft {shaft}",
                size.plain(system),
                fit.text()
            )
        });
        let metric = system == System::Millimetres
            && view.count(|token| matches!(token, Token::Angle(_))) > 0;
        if !metric {
            return Some(Said::ask("Celsius or Fahrenheit is not said", choices.collect()));
        }
    }
    let temperature = temperatures.into_iter().next()?;
    Some(Said::plain(format!(
        "{} {} warm {temperature}, hole {hole}, shaft {shaft}",
        size.plain(system),
        fit.text()
    )))
}

/// The metals of the hole's part and of the shaft's.
pub(super) fn metals(view: &View) -> Option<(Option<&'static str>, Option<&'static str>)> {
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
            if after_in {
                hole = Some(name);
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
