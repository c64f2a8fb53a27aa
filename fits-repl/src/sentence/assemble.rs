//! A joint's question: what it holds and takes, and which fit reaches it.

use crate::sentence::{
    Said,
    bought::HOLDS,
    bushing::{bush_by_metal, bushing_metals},
    distinct,
    joint::{HOLDERS, Joint, goes_in_bushing, is_joint, joint},
    roles::assign,
    sizes::{Fit, fit_of, is_nominal, metals, nominal_of},
    token::{Num, System, Token},
    tools::trimmed,
    view::View,
};

/// Words that a joint is told by.
const KINDS: [&str; 11] = [
    "fit",
    "material",
    "hub",
    "shaft",
    "hole",
    "bushing",
    "role",
    "head",
    "state",
    "tightness",
    "reads",
];

/// A split hub is clamped: a closed ring's figures are not its own. Nothing where none is
/// said.
#[allow(clippy::option_option, reason = "no split hub, and one that is not understood")]
fn split_hub(view: &View, system: System) -> Option<Option<Said>> {
    let is_split = |at: usize| view.said(at) == "split" && view.kind_at(at + 1) == Some("hub");
    let at = (0..view.items.len()).find(|at| is_split(*at))?;
    let mut items = view.items.clone();
    items.remove(at);
    let closed = pressed(&View { items, text: view.text.clone() }, system);
    Some(closed.map(|closed| {
        let queries = closed.queries();
        let is_shrunk = |query: &str| query.ends_with("shrink");
        let shrunk = queries.iter().filter(|query| !is_shrunk(query));
        let shrunk: Vec<String> = shrunk.map(|query| format!("{query}, shrink")).collect();
        let why = "a split hub is clamped and holds otherwise; these are of a closed one";
        Said::ask(why, distinct([queries, shrunk].concat()))
    }))
}

/// Pressed or shrunk together.
pub(crate) fn assemble(view: &View, system: System) -> Option<Said> {
    let said = split_hub(view, system).unwrap_or_else(|| pressed(view, system))?;
    Some(in_inches_too(view, system, said))
}

/// `30mm shaft .0012 over`: nobody speaks of tenths of a micrometre, so it may be inches.
fn in_inches_too(view: &View, system: System, said: Said) -> Said {
    let is_doubtful = |num: &Num| {
        system == System::Millimetres && num.unit.is_none() && num.places > 3 && num.value < 0.02
    };
    let Some((_, num)) = view.numbers().find(|(_, num)| is_doubtful(num)) else { return said };
    let (metric, inches) =
        (format!("interference {}mm", num.text), format!("interference {}in", num.text));
    let queries = said.clone().queries();
    if !queries.iter().any(|query| query.contains(&metric)) {
        return said;
    }
    let in_inches: Vec<String> =
        queries.iter().map(|query| query.replace(&metric, &inches)).collect();
    Said::ask("an interference so small may be of an inch", distinct([in_inches, queries].concat()))
}

fn pressed(view: &View, system: System) -> Option<Said> {
    view.only(&KINDS, is_joint)?;
    if view.words("head").any(|head| {
        !matches!(head, "force" | "hold" | "split" | "heat" | "closein" | "interf" | "press")
    }) {
        return None;
    }
    // `turn 11.98 from 12.4, finish 0.1`: cut, not pressed.
    let first = view.text.split_whitespace().next().unwrap_or_default().to_lowercase();
    if matches!(&*first, "turn" | "turning" | "bore" | "boring") && view.types(&["from"]) {
        return None;
    }
    // Its inside and outside are the inner part's own: the hub has no size.
    if bush_by_metal(view).is_some() {
        return None;
    }
    // A bushing's own sizes without a question about its press are not a joint.
    let largest = view.numbers().map(|(_, num)| num.mm(system)).fold(0.0, f64::max);
    let is_pressed = view.says("state", "press") || view.says("fit", "press");
    let is_tight = || is_pressed && view.numbers().any(|(_, num)| num.mm(system) < largest / 60.0);
    if view.has("bushing") && !view.has("head") && !view.has("tightness") && !is_tight() {
        return None;
    }
    let slips = |at: usize| matches!(&*view.said(at), "slip" | "slips" | "slipping");
    let holds =
        view.says("head", "hold") || view.tokens().any(|token| matches!(token, Token::Torque(_)));
    let kept: Vec<_> = view
        .items
        .iter()
        .enumerate()
        .filter(|(at, item)| {
            !(holds && slips(*at) && matches!(item.token, Token::Word { kind: "fit", .. }))
        })
        .map(|(_, item)| item.clone())
        .collect();
    let view = &View { items: kept, text: view.text.clone() };
    let view = &with_own_bore(view);
    // `press` as a verb beside a class says nothing more.
    let has_class =
        view.tokens().any(|token| matches!(token, Token::Pair(_) | Token::InchClass(_)));
    let kept: Vec<_> = view
        .items
        .iter()
        .filter(|item| {
            !(has_class
                && matches!(item.token, Token::Word { kind: "fit", name: "press" | "shrink" }))
        })
        .cloned()
        .collect();
    // `shrink 2in FN3 …` is an order; `how much does it shrink` asks.
    let shrinks = view.says("fit", "shrink") || view.text.trim_start().starts_with("shrink ");
    let view = &View { items: kept, text: view.text.clone() };
    let fit = fit_of(view);
    if fit.is_none()
        && view.tokens().any(|token| {
            matches!(token, Token::Pair(_) | Token::InchClass(_))
                || matches!(token, Token::Word { kind: "fit", .. })
        })
    {
        return None;
    }
    if matches!(fit, Some(Fit::Hole(_) | Fit::Shaft(_))) {
        return None;
    }
    // A fit and a question of force or heat, and no hub said: which hub?
    let sizes = view.numbers().count();
    if let (Some(fit), 1, false, false) = (&fit, sizes, view.has("role"), view.has("bushing"))
        && let Some((_, num)) = view.numbers().next()
        && view.has("head")
        && is_nominal(num, system)
    {
        let (hub, shaft) = metals(view)?;
        let size = num.plain(system);
        let joint = format!(
            "assemble {size} {}, hub {} od {}, shaft {}",
            fit.text(),
            hub.unwrap_or("steel"),
            num.times(2.0).plain(system),
            shaft.unwrap_or("steel")
        );
        return Some(Said::ask(
            "the hub is not said: so, or the sizes alone",
            vec![joint, format!("{size} {}", fit.text())],
        ));
    }
    if view.has("bushing")
        && view.has("shaft")
        && view.says("role", "od")
        && !view.says("role", "id")
    {
        return bushing_on_shaft(view, system);
    }
    // A plug that slides or is tapped into a tube is a matter of sizes.
    let is_loose = matches!(fit, Some(Fit::Word(word)) if !HOLDS.contains(&word));
    if is_loose && !view.has("head") && view.types(&["tube", "tubing", "pipe"]) {
        return None;
    }
    let joint = joint(view, system)?;
    if let Some(asked) = sleeve_alone(view, &joint, system) {
        return Some(asked);
    }
    if view.has("bushing") && joint.od.is_none() && joint.wall.is_none() {
        let said = unsaid_housing(view, joint.clone(), fit.as_ref(), system, shrinks)?;
        return with_load(view, &joint, fit.as_ref(), system, shrinks, said);
    }
    let said = compose(view, &joint, fit.as_ref(), system, shrinks)?;
    let said = plate(view, &joint, fit.as_ref(), system, shrinks).unwrap_or(said);
    with_load(view, &joint, fit.as_ref(), system, shrinks, said)
}

fn is_load(token: &Token) -> bool {
    matches!(token, Token::Torque(_) | Token::Force(_))
}

/// The one torque or force that is said.
fn load(view: &View) -> Option<String> {
    view.one(|token| match token {
        Token::Torque(text) | Token::Force(text) => Some(text.clone()),
        _ => None,
    })
}

/// The joint with the load that is said beside it: `will FN2 hold 50 ft lb`.
fn with_load(
    view: &View,
    joint: &Joint,
    fit: Option<&Fit>,
    system: System,
    shrinks: bool,
    said: Said,
) -> Option<Said> {
    let Some(load) = load(view) else { return (view.count(is_load) == 0).then_some(said) };
    // `only got a 12 ton press, will it go`: what it takes, or what goes in so.
    if view.tokens().any(|token| matches!(token, Token::Force(_))) && !view.says("head", "hold") {
        let size = joint.plug.as_ref().or(joint.bore.as_ref())?.plain(system);
        let mut choices = said.queries();
        choices.push(format!("pick {size} press under {load}{}", joint.parts(view, system)?));
        let why =
            format!("the force it takes, to be compared with {load}, or fits that take no more?");
        return Some(Said::ask(why, choices));
    }
    // What it holds goes by its length.
    let holds = format!(", holds {load}");
    if joint.long.is_some() {
        return Some(said.and_so(&holds));
    }
    let size = joint.plug.as_ref().or(joint.bore.as_ref())?;
    let mut choices = Vec::new();
    for times in [1.0, 1.5] {
        let long = Joint { long: Some(size.times(times)), ..joint.clone() };
        let said = compose(view, &long, fit, system, shrinks)?;
        choices.extend(said.and_so(&holds).queries());
    }
    Some(Said::ask("what it holds goes by its length, which is not said", choices))
}

/// `bush 32 od 25 bore pressed in`: the bush's own bore, which takes no part in the press.
fn with_own_bore(view: &View) -> View {
    let mut items = view.items.clone();
    let is_own = view.has("bushing")
        && view.says("role", "od")
        && !view.says("role", "id")
        && !view.has("shaft");
    for (at, item) in items.iter_mut().enumerate() {
        let of_number = [at.checked_sub(1), Some(at + 1)]
            .into_iter()
            .flatten()
            .any(|at| matches!(view.items.get(at).map(|item| &item.token), Some(Token::Number(_))));
        if is_own && of_number && view.said(at) == "bore" {
            item.token = Token::Word { name: "id", kind: "role" };
        }
    }
    View { items, text: view.text.clone() }
}

/// `sleeve 2.000 od 1.875 id, .003 tight`: on a pin, or in a housing?
fn sleeve_alone(view: &View, joint: &Joint, system: System) -> Option<Said> {
    let (Some(inside), Some(outside), Some(tight)) = (&joint.bore, &joint.od, &joint.tight) else {
        return None;
    };
    if !view.types(&["sleeve", "liner"])
        || view.has("shaft")
        || view.has("bushing")
        || view.words("hub").any(|name| name != "ring")
    {
        return None;
    }
    let metal = joint.hub.unwrap_or("steel");
    let (id, od, tight) = (inside.plain(system), outside.plain(system), tight.plain(system));
    let around = outside.times(2.0).plain(system);
    let choices = vec![
        format!("assemble {id} interference {tight}, hub {metal} od {od}, shaft steel"),
        format!("assemble {od} interference {tight}, hub steel od {around}, shaft {metal} id {id}"),
    ];
    Some(Said::ask("a sleeve goes on a pin, or into a housing: which is not said", choices))
}

/// A thin housing or a thick one: the press goes by it.
fn unsaid_housing(
    view: &View,
    mut joint: Joint,
    fit: Option<&Fit>,
    system: System,
    shrinks: bool,
) -> Option<Said> {
    let size = joint.plug.clone().or_else(|| joint.bore.clone())?;
    let mut choices = Vec::new();
    for times in [2.0, 3.0] {
        joint.od = Some(size.times(times));
        choices.extend(compose(view, &joint, fit, system, shrinks)?.queries());
    }
    Some(Said::ask("the outside of its housing is not said", choices))
}

/// `3/8 press in 2 plate`: a plate's number is its thickness as often as a size across.
fn plate(
    view: &View,
    joint: &Joint,
    fit: Option<&Fit>,
    system: System,
    shrinks: bool,
) -> Option<Said> {
    let (Some(across), None, Some(size)) = (&joint.od, &joint.long, &joint.plug) else {
        return None;
    };
    if !view.types(&["plate", "plates"]) || view.has("role") {
        return None;
    }
    let wide = Num { value: size.value * 4.0, text: trimmed(size.value * 4.0), ..size.clone() };
    let thick = Joint { od: Some(wide), long: Some(across.clone()), ..joint.clone() };
    let lines = [joint, &thick].into_iter().filter_map(|joint| {
        match compose(view, joint, fit, system, shrinks)? {
            Said::Plain(lines) => Some(lines.join(" ; ")),
            Said::Ask { .. } => None,
        }
    });
    let across = across.plain(system);
    let why = format!("{across} across about the hole, or a wide plate so thick, is not said");
    Some(Said::ask(why, lines.collect()))
}

pub(crate) fn compose(
    view: &View,
    joint: &Joint,
    fit: Option<&Fit>,
    system: System,
    shrinks: bool,
) -> Option<Said> {
    let parts = joint.parts(view, system)?;
    let head = match (&joint.bore, &joint.plug, &joint.tight) {
        (Some(bore), Some(plug), None) if (bore.mm(system) - plug.mm(system)).abs() > 1e-9 => {
            // As they measure.
            if fit.as_ref().is_some_and(|fit| !matches!(fit, Fit::Word(_)))
                || (bore.mm(system) - plug.mm(system)).abs() > 0.02 * bore.mm(system)
            {
                return None;
            }
            let nominal = if is_nominal(bore, system) {
                bore.plain(system)
            } else if is_nominal(plug, system) {
                plug.plain(system)
            } else {
                nominal_of(bore, system)?
            };
            format!("{nominal} = {}/{}", bore.plain(system), plug.plain(system))
        }
        (bore, plug, tight) => {
            // Two sizes beside a tightness: which of them is pressed?
            if let (Some(bore), Some(plug)) = (bore, plug)
                && bore.by_size(plug, system).is_ne()
            {
                return None;
            }
            let size = plug.as_ref().or(bore.as_ref())?;
            match (tight, &fit) {
                (
                    Some(tight),
                    None | Some(Fit::Word("press" | "shrink" | "light press" | "heavy press")),
                ) => {
                    if tight.mm(system) > size.mm(system) / 40.0 {
                        return None;
                    }
                    format!("{} interference {}", size.plain(system), tight.plain(system))
                }
                (None, Some(fit @ (Fit::Word(_) | Fit::Pair(_) | Fit::Inch(_)))) => {
                    format!("{} {}", size.plain(system), fit.text())
                }
                (None, None)
                    if view.has("state") && view.says("state", "press")
                        || view.says("head", "press") =>
                {
                    format!("{} press", size.plain(system))
                }
                _ => return None,
            }
        }
    };
    let heat = shrinks || view.says("head", "heat");
    let shrink = if heat && !head.ends_with("shrink") { ", shrink" } else { "" };
    let film = match (view.says("state", "oil"), view.says("state", "dry")) {
        (true, false) => ", oil",
        (false, true) => ", dry",
        (false, false) => "",
        (true, true) => return None,
    };
    Some(Said::plain(format!("assemble {head}{parts}{shrink}{film}")))
}

/// A bushing's outside and the shaft's size, its own bore not said.
pub(crate) fn bushing_on_shaft(view: &View, system: System) -> Option<Said> {
    let roles = assign(view, HOLDERS, &[], system)?;
    let (shaft, od) = (roles.num("shaft")?, roles.num("od")?);
    let (hub, bush) = bushing_metals(view)?;
    let tight = roles.num("tightness").or(roles.free.first().map(|(_, num, _)| num))?;
    let (hub, bush) = (hub.unwrap_or("steel"), bush.unwrap_or("bronze"));
    let (shaft, outside) = (shaft.plain(system), od.plain(system));
    let tight_in = tight.plain(system);
    // It may be the pin that is pressed.
    let pressed = goes_in_bushing(view).then(|| {
        format!("assemble {shaft} interference {tight_in}, hub {bush} od {outside}, shaft steel")
    });
    let choices = pressed.into_iter().chain([
        format!("bushing {shaft} od {outside} long {outside}, hub {hub}, bronze, shaft {shaft}"),
        format!(
            "assemble {outside} interference {tight_in}, hub {hub} od {}, shaft {bush} id {shaft}",
            od.times(2.0).plain(system)
        ),
    ]);
    Some(Said::ask("the bushing's own bore is not said", choices.collect()))
}

/// The fit that holds so much, or the tightest that the hub stands.
pub(crate) fn pick_press(view: &View, system: System) -> Option<Said> {
    view.only(&KINDS, is_joint)?;
    if view.has("reads") {
        return None;
    }
    let torque = load(view);
    let safe = view.says("head", "safe");
    if view
        .words("head")
        .any(|head| !matches!(head, "hold" | "safe" | "whatfit" | "interf" | "split" | "press"))
    {
        return None;
    }
    if view.words("fit").any(|fit| fit != "press")
        || view.tokens().any(|token| matches!(token, Token::Pair(_) | Token::InchClass(_)))
    {
        return None;
    }
    let joint = joint(view, system)?;
    if joint.tight.is_some() {
        return None;
    }
    let size = match (&joint.plug, &joint.bore) {
        (Some(plug), Some(bore)) if (plug.mm(system) - bore.mm(system)).abs() > 1e-9 => {
            return None;
        }
        (Some(size), _) | (None, Some(size)) => size.clone(),
        _ => return None,
    };
    let parts = joint.parts(view, system)?;
    let is_force = view.tokens().any(|token| matches!(token, Token::Force(_)));
    // `press … under 6 tons` is what the press gives, whatever it is to hold.
    let under = ["under", "less than", "no more than", "at most", "up to"];
    let is_limit = is_force && view.types(&under);
    if is_limit && view.types(&["hold", "holds", "to hold", "must hold", "that holds"]) {
        return None;
    }
    match torque {
        Some(force) if is_limit && !safe => {
            Some(Said::plain(format!("pick {} press under {force}{parts}", size.plain(system))))
        }
        // What a press gives, where nothing is said to be held.
        Some(force) if is_force && !safe && !view.says("head", "hold") => {
            Some(Said::plain(format!("pick {} press under {force}{parts}", size.plain(system))))
        }
        Some(torque) if !safe => {
            Some(Said::plain(format!("pick {} holds {torque}{parts}", size.plain(system))))
        }
        None if safe => Some(Said::plain(format!("pick {} hub safe{parts}", size.plain(system)))),
        _ => None,
    }
}
