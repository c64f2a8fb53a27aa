//! Two parts as they measure, and the fits that give a wanted range.

use crate::sentence::{
    Said,
    bought::only_number,
    each_part::each_part,
    roles::{Roles, assign},
    sizes::{Fit, NOUNS, fit_of, is_nominal, nominal_of},
    token::{Num, System, Token},
    tools::trimmed,
    view::View,
};

/// Two parts as they measure: what fit they make.
#[allow(clippy::too_many_lines, reason = "one rule after another, each short")]
pub(crate) fn pair(view: &View, system: System) -> Option<Said> {
    // `id .5006 od .4989`: a bore and what goes into it.
    let mut named = View { items: view.items.clone(), text: view.text.clone() };
    let has_both = view.says("role", "id") && view.says("role", "od");
    if has_both && !view.has("hole") && !view.has("shaft") && !view.has("bushing") {
        for item in &mut named.items {
            match item.token {
                Token::Word { kind: "role", name: "id" } => {
                    item.token = Token::Word { name: "hole", kind: "hole" };
                }
                Token::Word { kind: "role", name: "od" } => {
                    item.token = Token::Word { name: "shaft", kind: "shaft" };
                }
                _ => {}
            }
        }
    }
    // `bush o.d. 1.0023`: what goes into the hole.
    if view.has("bushing") && view.words("role").all(|role| role == "od") {
        for item in &mut named.items {
            if matches!(item.token, Token::Word { kind: "role", .. }) {
                item.token = Token::Word { name: "-", kind: "small" };
            }
        }
    }
    let view = &named;
    if let Some(said) = each_part(view, system) {
        return Some(said);
    }
    view.only(
        &["hole", "shaft", "hub", "bushing", "head", "reads", "start", "fit", "material"],
        |token| {
            matches!(
                token,
                Token::Number(_) | Token::Pair(_) | Token::InchClass(_) | Token::Span(..)
            )
        },
    )?;
    if let Some(said) = between_limits(view, system) {
        return Some(said);
    }
    if view.tokens().any(|token| matches!(token, Token::Span(..))) {
        return None;
    }
    if view
        .words("head")
        .any(|head| !matches!(head, "clearance" | "interf" | "whatfit" | "suit" | "ok"))
    {
        return None;
    }
    if view.has("material") {
        return None;
    }
    let roles = assign(view, NOUNS, &[], system)?;
    let class = view.one(|token| match token {
        Token::Pair(class) | Token::InchClass(class) => Some(class),
        _ => None,
    });
    if let (3, Some(class), [(_, nominal, _)]) = (view.numbers().count(), class, &roles.free[..])
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
    // `bore 40.01 shaft 39.97, ok for H7/f7?`: the nominal size is the one both belong to.
    if let (Some(class), Some(hole), Some(shaft)) = (class, roles.num("hole"), roles.num("shaft"))
        && !(is_nominal(hole, system) && is_nominal(shaft, system))
        && let Some(nominal) = nominal_of(hole, system)
        && nominal_of(shaft, system).as_ref() == Some(&nominal)
    {
        let (hole, shaft) = (hole.plain(system), shaft.plain(system));
        return Some(Said::plain(format!("{nominal} {class} = {hole}/{shaft}")));
    }
    let one = |kinds: &[&str]| {
        let mut found = roles.taken.iter().filter(|taken| kinds.contains(&taken.by));
        let first = found.next()?;
        found.next().is_none().then_some(first)
    };
    // `shaft 34.96 in 35.00`: the figure that it goes into is a hole's.
    let goes = match &roles.free[..] {
        [(at, num, _)] if roles.taken.len() == 1 && !view.has("bushing") => {
            let lead = view.lead(*at, &["small"]);
            let next = (at + 1..view.items.len()).find(|at| view.kind_at(*at) != Some("small"));
            let said = |at: Option<usize>| at.map(|at| view.said(at)).unwrap_or_default();
            let taken = &roles.taken[0];
            let goes_on = taken.at > *at;
            match (taken.by, &*said(lead), &*said(next)) {
                ("shaft", "in" | "into" | "inside", _) => Some((num, &taken.num)),
                ("hole" | "hub", "on" | "onto" | "over", _) => Some((&taken.num, num)),
                // `.7502 in a .7495 hole`
                ("hole" | "hub", _, "in" | "into" | "inside") if goes_on => Some((&taken.num, num)),
                ("shaft", _, "on" | "onto" | "over") if goes_on => Some((num, &taken.num)),
                _ => None,
            }
        }
        _ => None,
    };
    if let Some((hole, shaft)) = goes
        && !view.has("start")
        && class.is_none()
    {
        return as_they_measure(view, hole, shaft, system);
    }
    let (hole, shaft) = match (one(&["hole", "hub"]), one(&["shaft"]), one(&["bushing"])) {
        (Some(hole), Some(shaft), None) => (hole, shaft),
        (Some(hole), None, Some(bushing)) => (hole, bushing),
        (None, Some(shaft), Some(bushing)) => (bushing, shaft),
        _ => return two_bare(view, &roles, system),
    };
    as_they_measure(view, &hole.num, &shaft.num, system)
}

/// `hole .5002-.5007, shaft .4990-.4995`: the fit of two parts by their limits.
fn between_limits(view: &View, system: System) -> Option<Said> {
    let spans: Vec<(usize, String)> = (0..view.items.len())
        .filter_map(|at| match &view.items[at].token {
            Token::Span(low, high) if low.mm(system) < high.mm(system) => {
                Some((at, format!("{}..{}", low.plain(system), high.plain(system))))
            }
            _ => None,
        })
        .collect();
    let [(a, one), (b, other)] = &spans[..] else { return None };
    let noun = |at: usize| {
        let before = view.items[..at].iter().rev().map(|item| &item.token);
        before.take_while(|token| !matches!(token, Token::Span(..))).find_map(|token| match token {
            Token::Word { kind: "hole" | "hub", .. } => Some("hole"),
            Token::Word { kind: "shaft", .. } => Some("shaft"),
            _ => None,
        })
    };
    if view.numbers().next().is_some() || view.has("fit") || view.has("material") {
        return None;
    }
    Some(Said::plain(match (noun(*a)?, noun(*b)?) {
        ("hole", "shaft") => format!("hole {one}, shaft {other}"),
        ("shaft", "hole") => format!("hole {other}, shaft {one}"),
        _ => return None,
    }))
}

/// A bought part whose limits stand in its standard, as the plain query calls it.
fn bought_kind(view: &View) -> Option<&'static str> {
    [
        ("dowel", &["dowel", "dowels", "dowel pin", "dowel pins"][..]),
        (
            "shoulder screw",
            &["shoulder screw", "shoulder screws", "shoulder bolt", "shoulder bolts"],
        ),
    ]
    .into_iter()
    .find_map(|(kind, said)| view.types(said).then_some(kind))
}

/// The fit that a hole and a shaft make.
fn as_they_measure(view: &View, hole: &Num, shaft: &Num, system: System) -> Option<Said> {
    let (a, b) = (hole.mm(system), shaft.mm(system));
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
    // `12mm hole 12.5mm shaft sliding fit`: no fit joins the two, so one is a slip.
    let is_slip = !tail.is_empty()
        && (a - b).abs() > 0.015 * a
        && is_nominal(hole, system)
        && is_nominal(shaft, system);
    // `shoulder screw 1/2 in a .5015 hole`: made smaller than its name says.
    let is_named =
        shaft.is_fraction || shaft.places <= if system == System::Inches { 3 } else { 1 };
    if let Some(kind) = bought_kind(view).filter(|_| is_named && tail.is_empty()) {
        let (hole, shaft) = (hole.plain(system), shaft.plain(system));
        return Some(Said::plain(format!("{kind} {shaft}, hole = {hole}")));
    }
    let (hole, shaft) = (hole.plain(system), shaft.plain(system));
    let pair = format!("hole {hole}, shaft {shaft}{tail}");
    if is_slip {
        let word = tail.trim_start_matches(", ");
        let choices = vec![format!("{hole} {word}"), format!("{shaft} {word}"), pair];
        return Some(Said::ask("the two sizes are too far apart for a fit: which holds?", choices));
    }
    Some(Said::plain(pair))
}

/// Two sizes and no noun: which is the hole is asked.
pub(crate) fn two_bare(view: &View, roles: &Roles, system: System) -> Option<Said> {
    let [(_, a, _), (_, b, _)] = &roles.free[..] else { return None };
    if !NOUNS.iter().all(|kind| !view.has(kind)) || view.has("fit") {
        return None;
    }
    let (x, y) = (a.mm(system), b.mm(system));
    if (x - y).abs() > 0.05 * x || (x - y).abs() < 1e-9 {
        return None;
    }
    // `mic'd at 1.3752 for 1.375 LC2`: one is the nominal size of the class.
    if let Some(Fit::Pair(class) | Fit::Inch(class)) = fit_of(view) {
        let (nominal, read) = match (is_nominal(a, system), is_nominal(b, system)) {
            (true, false) => (a, b),
            (false, true) => (b, a),
            _ => return None,
        };
        let part = |part: &str| {
            format!("{} {class}, {part} = {}", nominal.plain(system), read.plain(system))
        };
        return Some(Said::ask("hole or shaft is not said", vec![part("hole"), part("shaft")]));
    }
    let (a, b) = (a.plain(system), b.plain(system));
    // `how much to go, 31.40 to 31.75`: cut from the one to the other.
    let is_left = view.types(&["to go", "left", "how much to go", "how much left", "to come"]);
    let is_wanted = view.types(&["going to", "want", "need", "to get to", "aiming for"]);
    if is_left && (view.says("connector", "for") || is_wanted) {
        let (from, to) = (&a, &b);
        let larger = |fit: &str| format!("bore {to} {fit} from {from}");
        let smaller = |fit: &str| format!("turn {to} {fit} from {from}");
        let (plans, left) = if x < y {
            (["H7", "sliding"].map(larger), format!("{to} - {from}"))
        } else {
            (["h7", "sliding"].map(smaller), format!("{from} - {to}"))
        };
        let choices = [vec![left], plans.to_vec()].concat();
        return Some(Said::ask("what is left, or a plan? Its limits are not said", choices));
    }
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

/// A range of play or grip: the fits that give it.
pub(crate) fn pick(view: &View, system: System) -> Option<Said> {
    view.only(&["hole", "shaft", "hub", "head", "material", "vague"], |token| {
        matches!(token, Token::Number(_) | Token::Span(..) | Token::Deviations { .. })
    })?;
    if view.has("material") {
        return None;
    }
    if let Some(said) = about(view, system).or_else(|| how_much(view, system)) {
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

/// `how much grip should I leave on 1 inch`: as much as the fit that is meant gives.
fn how_much(view: &View, system: System) -> Option<Said> {
    let size = only_number(view)?;
    let is_part = NOUNS.iter().any(|kind| view.has(kind));
    let words = match (view.says("head", "clearance"), view.says("head", "interf")) {
        (true, false) if !is_part => ["sliding", "running", "free running"],
        (false, true) => ["light press", "press", "heavy press"],
        _ => return None,
    };
    let is_alone =
        view.words("head").all(|head| matches!(head, "clearance" | "interf" | "whatfit"))
            && !view.has("vague")
            && view
                .tokens()
                .all(|token| matches!(token, Token::Number(_) | Token::Break | Token::Word { .. }));
    (view.has("asking") && is_alone && is_nominal(size, system)).then(|| {
        let size = size.plain(system);
        Said::ask("how it is to fit is not said", words.map(|word| format!("{size} {word}")).into())
    })
}

/// A size and one small figure, `1 inch fit with 2 thou`: play or grip, about so much.
pub(crate) fn about(view: &View, system: System) -> Option<Said> {
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
        words("interf") || view.says("vague", "interference") || view.types(&["press"]),
    );
    let span = |factor: f64| {
        let unit = small.plain(system);
        let unit = unit
            .trim_start_matches(|c: char| c.is_ascii_digit() || c == '.' || c == '/' || c == '-');
        format!("{}{unit}", trimmed(small.value * factor))
    };
    let (low, high) = (span(0.75), span(1.25));
    let pick = |what: &str| format!("pick {} {what} {low}..{high}", size.plain(system));
    match says {
        (false, false) => Some(Said::ask(
            "play or grip is not said",
            vec![pick("clearance"), pick("interference")],
        )),
        (true, true) => None,
        // One part at its size and the other so much off, or a fit that gives about so much.
        (plays, _) => {
            let of = |sign: char| format!("{} {sign} {}", size.plain(system), small.plain(system));
            let mut choices = vec![
                of(if plays { '+' } else { '-' }),
                pick(if plays { "clearance" } else { "interference" }),
                of(if plays { '-' } else { '+' }),
            ];
            match (view.has("hole") || view.has("hub"), view.has("shaft")) {
                (true, false) => choices.swap(0, 2),
                (false, true) => {}
                _ => choices.swap(0, 1),
            }
            Some(Said::ask("which part keeps its size is not said", choices))
        }
    }
}
