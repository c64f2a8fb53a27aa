//! What is said of work beside where it is: its aim alone, what is left to take off, how
//! deep each cut is.

use crate::sentence::{
    Said,
    sizes::{Fit, fit_of, is_nominal},
    token::{Num, System},
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
