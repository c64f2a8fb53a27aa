//! What is said of work beside where it is: its aim alone, what is left to take off, how
//! deep each cut is.

use crate::sentence::{
    Said,
    sizes::{Fit, fit_of, is_nominal},
    token::{Num, System, Token},
    tools::trimmed,
    view::View,
};

/// `boring to 26 H7`, `turning the shaft to 1.000 +0 -.001`: where the work is is said next.
pub(super) fn aimed(
    view: &View,
    system: System,
    verb: &str,
    limits: &str,
    size: Option<&Num>,
) -> Option<Said> {
    let is_more =
        ["start", "reads", "instrument", "material", "bushing"].map(|kind| view.has(kind));
    // `bore 20 H7, for rough` asks for something else than the whole way.
    if is_more.contains(&true) || view.text.contains("rough") {
        return None;
    }
    let feature = if verb == "bore" { "hole" } else { "shaft" };
    let plan = match size {
        None => format!("{verb} {feature} {limits}"),
        Some(size) if is_nominal(size, system) => {
            format!("{verb} {} {limits}", size.plain(system))
        }
        Some(_) => return None,
    };
    Some(Said::Plain(vec![plan]))
}

/// `turn 1.000 g6, .012 to go`: off the diameter, or on each side?
pub(super) fn still_left(view: &View, system: System, verb: Option<&'static str>) -> Option<Said> {
    let numbers: Vec<_> = view.numbers().map(|(_, num)| num).collect();
    let [size, left] = numbers[..] else { return None };
    let fit = fit_of(view)?;
    let work = match (&fit, verb) {
        (Fit::Hole(_), None | Some("bore")) => "bore",
        (Fit::Shaft(_), None | Some("turn")) => "turn",
        _ => return None,
    };
    if left.mm(system) > size.mm(system) / 20.0
        || !is_nominal(size, system)
        || view.has("instrument")
        || view.has("material")
        || view.types(&["per side", "a side", "each side"])
    {
        return None;
    }
    let plain = size.plain(system);
    let unit = if plain.ends_with("mm") { ("mm", 1.0) } else { ("in", 25.4) };
    let sign = if work == "bore" { -1.0 } else { 1.0 };
    let start = |times: f64| {
        format!(
            "{}{}",
            trimmed((size.mm(system) + sign * times * left.mm(system)) / unit.1),
            unit.0
        )
    };
    Some(Said::ask(
        "off the diameter or off each side is not said",
        [1.0, 2.0]
            .map(|times| format!("{work} {plain} {} from {}", fit.text(), start(times)))
            .to_vec(),
    ))
}

/// What a plan is begun by that says no work.
const AIMS: &[&str] = &[
    "target",
    "target is",
    "target size",
    "goal",
    "goal is",
    "aim",
    "aiming for",
    "aim for",
    "going for",
    "gunning for",
    "shooting for",
    "after",
];

/// `turn to 1.250`, `target .875`, `stock 1.060, finish 1.000 in 4 passes`: work on a size
/// whose limits nobody said.
pub(super) fn without_limits(view: &View, system: System) -> Option<Said> {
    let is_said =
        |token: &Token| !matches!(token, Token::Number(_) | Token::Break | Token::Word { .. });
    let has =
        ["fit", "reads", "material", "instrument", "hub", "bushing"].map(|kind| view.has(kind));
    if has.contains(&true) || view.tokens().any(is_said) || view.says("role", "long") {
        return None;
    }
    let mut verb = None;
    for head in view.words("head") {
        let is = match head {
            "bore" => "bore",
            "turn" | "turnto" => "turn",
            "passes" => continue,
            _ => return None,
        };
        if verb.is_some_and(|known| known != is) {
            return None;
        }
        verb = Some(is);
    }
    let part = match (view.has("hole"), view.has("shaft")) {
        (true, true) => return None,
        (true, false) => Some("bore"),
        (false, true) => Some("turn"),
        (false, false) => None,
    };
    if part.is_some_and(|part| verb.is_some_and(|verb| verb != part)) {
        return None;
    }
    let work = verb.or(part);
    let numbers: Vec<&Num> = view.numbers().map(|(_, num)| num).collect();
    let classes = |verb: &str| if verb == "bore" { ["H7", "H9"] } else { ["h7", "h9"] };
    let why = "how close is not said: a class, a fit or limits";
    if let [size] = numbers[..] {
        // What is said first is the work, or that it is an aim.
        let is_said = |at: &usize| match view.kind_at(*at) {
            Some("connector") => AIMS.contains(&&*view.said(*at)),
            Some(kind) => kind != "small",
            None => view.items[*at].token != Token::Break,
        };
        let first = (0..view.items.len()).find(is_said)?;
        let is_aim = AIMS.contains(&&*view.said(first));
        let is_verb =
            matches!(view.kind_at(first), Some("head")) && view.words("head").count() == 1;
        if !(is_aim || is_verb) || view.has("asking") || view.has("start") {
            return None;
        }
        let verbs = match work {
            Some("bore") => vec!["bore"],
            Some(_) => vec!["turn"],
            None => vec!["turn", "bore"],
        };
        let size = size.plain(system);
        let plan = |verb: &str| classes(verb).map(|class| format!("{verb} {size} {class}"));
        return Some(Said::ask(why, verbs.into_iter().flat_map(plan).collect()));
    }
    // From the one size to the other: how deep a cut is, or how many, is chosen by the plan.
    let [a, b, rest @ ..] = &numbers[..] else { return None };
    let (small, large) = if a.by_size(b, system).is_lt() { (a, b) } else { (b, a) };
    let off = large.mm(system) - small.mm(system);
    // So small a figure is a play or a cut.
    if small.mm(system) < 1.0 {
        return None;
    }
    let counts = view.says("head", "passes");
    let is_more = |num: &&&Num| {
        let is_count = counts && num.places == 0 && !num.is_fraction && num.value <= 12.0;
        !is_count && num.mm(system) > off
    };
    if off <= 0.0
        || large.mm(system) > 1.6 * small.mm(system)
        || rest.iter().any(|num| is_more(&num))
    {
        return None;
    }
    let is_begun = view.has("start") || counts || view.has("each-cut") || verb.is_some();
    if !is_begun || view.has("role") {
        return None;
    }
    // Without a verb the first size is where the work is.
    let work = work.unwrap_or(if a.by_size(b, system).is_lt() { "bore" } else { "turn" });
    let (target, start) = if work == "bore" { (large, small) } else { (small, large) };
    let (target, start) = (target.plain(system), start.plain(system));
    let plans = classes(work).map(|class| format!("{work} {target} {class} from {start}"));
    let is_told = rest.iter().any(|num| num.mm(system) <= off) && !counts;
    let why = if is_told { "how close is not said, and a plan chooses its own cuts" } else { why };
    Some(Said::ask(why, plans.into()))
}

/// `bore 1.5 out to 1.75, 25 thou a pass`: a plan chooses how deep its cuts are, which is
/// said, and its limits are asked.
pub(super) fn each_cut(view: &View, system: System, verb: Option<&str>) -> Option<Said> {
    let mut numbers: Vec<&Num> = view.numbers().map(|(_, num)| num).collect();
    numbers.sort_by(|a, b| a.by_size(b, system));
    let [depth, small, large] = numbers[..] else { return None };
    let is_depth = depth.mm(system) <= large.mm(system) - small.mm(system);
    let is_cut = large.mm(system) < 1.6 * small.mm(system);
    if !is_depth || !is_cut || view.has("reads") || view.has("role") {
        return None;
    }
    let [depth, small, large] = [depth, small, large].map(|num| num.plain(system));
    let fits = match fit_of(view) {
        Some(fit) => vec![fit.text().to_owned()],
        None if verb == Some("bore") || view.has("hole") => vec!["H7".into(), "sliding".into()],
        None => vec!["h7".into(), "sliding".into()],
    };
    let plan = |fit: &String| match verb {
        Some("bore") => format!("bore {large} {fit} from {small}"),
        _ => format!("turn {small} {fit} from {large}"),
    };
    let mut choices: Vec<String> = fits.iter().map(plan).collect();
    choices.push(format!("{large} - {small}"));
    let why =
        format!("a plan chooses how deep its cuts are, {depth} or not: as these, or what is left?");
    Some(Said::ask(why, choices))
}
