//! Joints that are pressed or shrunk, bushings, and parts end to end.

use std::fmt::Write as _;

use super::{
    Said,
    fits::{Fit, fit_of, is_nominal, metals, nominal_of},
    roles::assign,
    token::{Num, System, Token},
    view::View,
};

const HOLDERS: &[&str] = &["role", "hub", "shaft", "hole", "bushing", "tightness"];

fn is_joint(token: &Token) -> bool {
    matches!(
        token,
        Token::Number(_)
            | Token::Pair(_)
            | Token::InchClass(_)
            | Token::Torque(_)
            | Token::Force(_)
            | Token::Cross
            | Token::Hole(_)
            | Token::Shaft(_)
    )
}

/// What is said of a joint, part by part.
struct Joint {
    bore: Option<Num>,
    plug: Option<Num>,
    od: Option<Num>,
    wall: Option<Num>,
    long: Option<Num>,
    /// The bore of a bushing that is pressed in.
    bush_id: Option<Num>,
    tight: Option<Num>,
    /// The wall is that of the tube that goes in.
    wall_of_plug: bool,
    hub: Option<&'static str>,
    shaft: Option<&'static str>,
}

#[allow(clippy::too_many_lines, reason = "one rule after another: who owns which number")]
fn joint(view: &View, system: System) -> Option<Joint> {
    let roles = assign(view, HOLDERS, &[], system)?;
    let num = |by: &str| roles.num(by).cloned();
    for by in ["id", "wall", "long", "shaft", "bushing", "tightness"] {
        if roles.count(by) > 1 {
            return None;
        }
    }
    if roles.count("od") > 2 {
        return None;
    }
    // Two outsides: the hub's, and that of the part that goes in.
    let mut ods: Vec<Num> = roles
        .taken
        .iter()
        .filter(|taken| taken.by == "od")
        .map(|taken| taken.num.clone())
        .collect();
    ods.sort_by(|a, b| a.mm(system).total_cmp(&b.mm(system)));
    let (hub, shaft) = metals(view)?;
    let has_bushing = view.has("bushing");
    let mut joint = Joint {
        bore: num("hole"),
        plug: num("shaft"),
        od: ods.pop(),
        wall: num("wall"),
        long: num("long"),
        bush_id: None,
        tight: num("tightness"),
        wall_of_plug: ods.len() == 2,
        hub,
        shaft,
    };
    let mut free: Vec<Num> = roles.free.iter().map(|(_, num, _)| num.clone()).collect();
    free.extend(num("ring"));
    free.extend(num("hub"));
    if let Some(id) = num("id") {
        if has_bushing {
            joint.bush_id = Some(id);
        } else if joint.bore.is_none() {
            joint.bore = Some(id);
        } else {
            return None;
        }
    }
    if let Some(inner) = ods.pop() {
        if joint.plug.is_some() {
            return None;
        }
        joint.plug = Some(inner);
    }
    if let Some(bush) = num("bushing") {
        if joint.plug.is_some() {
            return None;
        }
        joint.plug = Some(bush);
    }
    // The smallest is the tightness.
    let largest = [&joint.bore, &joint.plug, &joint.od]
        .into_iter()
        .flatten()
        .chain(&free)
        .map(|num| num.mm(system))
        .fold(0.0, f64::max);
    if joint.tight.is_none()
        && let Some(at) = free.iter().position(|num| num.mm(system) < largest / 60.0)
    {
        joint.tight = Some(free.remove(at));
    }
    // As they measure: a figure close to the plug is the bore, and so on.
    let near = |a: &Num, b: &Num| (a.mm(system) - b.mm(system)).abs() < 0.025 * b.mm(system);
    if let Some(plug) = joint.plug.clone()
        && joint.bore.is_none()
        && let Some(at) = free.iter().position(|num| near(num, &plug))
    {
        joint.bore = Some(free.remove(at));
    }
    if let Some(bore) = joint.bore.clone()
        && joint.plug.is_none()
        && let Some(at) = free.iter().position(|num| near(num, &bore))
    {
        joint.plug = Some(free.remove(at));
    }
    if joint.bore.is_none() && joint.plug.is_none() {
        // `.3755 pin into .3745`: the first goes into the second; `on` turns it round.
        let close = (0..free.len())
            .flat_map(|a| (a + 1..free.len()).map(move |b| (a, b)))
            .find(|(a, b)| near(&free[*a], &free[*b]));
        if let Some((a, b)) = close
            && free[a] != free[b]
        {
            let into = view.types(&["in", "into", "inside"]);
            let onto = view.types(&["on", "onto", "over"]);
            if into == onto {
                return None;
            }
            let second = free.remove(b);
            let first = free.remove(a);
            (joint.plug, joint.bore) =
                if into { (Some(first), Some(second)) } else { (Some(second), Some(first)) };
        }
    }
    // What is left: the bore, and the hub's outside.
    free.sort_by(|a, b| a.mm(system).total_cmp(&b.mm(system)));
    let size =
        |joint: &Joint| joint.plug.as_ref().or(joint.bore.as_ref()).map(|num| num.mm(system));
    while let Some(number) = free.pop() {
        let mm = number.mm(system);
        let no_outside = joint.od.is_none() && joint.wall.is_none();
        let is_outside = match size(&joint) {
            Some(size) => mm > 1.05 * size,
            // Two are left: the larger one.
            None => free.len() == 1,
        };
        if no_outside && is_outside {
            joint.od = Some(number);
        } else if size(&joint).is_none() {
            joint.plug = Some(number);
        } else {
            return None;
        }
    }
    if has_bushing
        && joint.od.is_some()
        && joint.bush_id.is_some()
        && joint.plug.is_none()
        && joint.bore.is_none()
    {
        // The bushing's own outside is what is pressed.
        joint.plug = joint.od.take();
    }
    Some(joint)
}

impl Joint {
    /// The text of a joint after its fit: hub, shaft and their sizes.
    fn parts(&self, view: &View, system: System) -> Option<String> {
        let has_bushing = view.has("bushing");
        let size = self.plug.as_ref().or(self.bore.as_ref())?;
        let hub = self.hub.unwrap_or("steel");
        let shaft = self.shaft.unwrap_or(if has_bushing { "bronze" } else { "steel" });
        let mut text = format!(", hub {hub}");
        match (&self.od, &self.wall) {
            (Some(od), Some(wall)) if self.wall_of_plug => {
                let _ = wall;
                let _ = write!(text, " od {}", od.plain(system));
            }
            (Some(od), Some(wall)) => {
                let inside = od.mm(system) - 2.0 * wall.mm(system);
                if (inside - size.mm(system)).abs() > 0.02 * size.mm(system) {
                    return None;
                }
                let _ = write!(text, " wall {}", wall.plain(system));
            }
            (Some(od), None) => {
                if od.mm(system) <= 1.001 * size.mm(system) {
                    return None;
                }
                let _ = write!(text, " od {}", od.plain(system));
            }
            (None, Some(wall)) => {
                let _ = write!(text, " wall {}", wall.plain(system));
            }
            (None, None) if has_bushing => {
                let _ = write!(text, " od {}", twice(size, system));
            }
            (None, None) => return None,
        }
        if let Some(long) = &self.long {
            let _ = write!(text, " long {}", long.plain(system));
        }
        let _ = write!(text, ", shaft {shaft}");
        if let Some(wall) = self.wall.as_ref().filter(|_| self.wall_of_plug) {
            let _ = write!(text, " wall {}", wall.plain(system));
        }
        if let Some(id) = &self.bush_id {
            if id.mm(system) >= size.mm(system) {
                return None;
            }
            let _ = write!(text, " id {}", id.plain(system));
        }
        Some(text)
    }
}

/// Twice a size, as a plain query has it.
fn twice(num: &Num, system: System) -> String {
    let unit = num.plain(system);
    let unit = unit.trim_start_matches(|c: char| !c.is_ascii_alphabetic());
    let value = num.value * 2.0;
    let text = format!("{value:.5}");
    format!("{}{unit}", text.trim_end_matches('0').trim_end_matches('.'))
}

/// Pressed or shrunk together.
pub(super) fn assemble(view: &View, system: System) -> Option<Said> {
    view.only(
        &[
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
        ],
        is_joint,
    )?;
    if view.words("head").any(|head| {
        !matches!(head, "force" | "hold" | "split" | "heat" | "closein" | "interf" | "press")
    }) {
        return None;
    }
    // A bushing's own sizes without a question about its press are not a joint.
    if view.has("bushing") && !view.has("head") && !view.has("tightness") {
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
    let shrinks = view.says("fit", "shrink");
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
            twice(num, system),
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
    let joint = joint(view, system)?;
    compose(view, &joint, fit.as_ref(), system, shrinks)
}

fn compose(
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
    let shrink = if heat && !head.ends_with("shrink") && !matches!(fit, Some(Fit::Inch(_))) {
        ", shrink"
    } else {
        ""
    };
    let film = match (view.says("state", "oil"), view.says("state", "dry")) {
        (true, false) => ", oil",
        (false, true) => ", dry",
        (false, false) => "",
        (true, true) => return None,
    };
    Some(Said::plain(format!("assemble {head}{parts}{shrink}{film}")))
}

/// A bushing's outside and the shaft's size, its own bore not said.
fn bushing_on_shaft(view: &View, system: System) -> Option<Said> {
    let roles = assign(view, HOLDERS, &[], system)?;
    let (shaft, od) = (roles.num("shaft")?, roles.num("od")?);
    let (hub, bush) = bushing_metals(view)?;
    let tight = roles.num("tightness").or(roles.free.first().map(|(_, num, _)| num))?;
    let (hub, bush) = (hub.unwrap_or("steel"), bush.unwrap_or("bronze"));
    let (shaft, outside) = (shaft.plain(system), od.plain(system));
    Some(Said::ask(
        "the bushing's own bore is not said",
        vec![
            format!(
                "bushing {shaft} od {outside} long {outside}, hub {hub}, bronze, shaft {shaft}"
            ),
            format!(
                "assemble {outside} interference {}, hub {hub} od {}, shaft {bush} id {shaft}",
                tight.plain(system),
                twice(od, system)
            ),
        ],
    ))
}

/// The fit that holds so much, or the tightest that the hub stands.
pub(super) fn pick_press(view: &View, system: System) -> Option<Said> {
    view.only(
        &[
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
        ],
        is_joint,
    )?;
    let torque = view.one(|token| match token {
        Token::Torque(text) | Token::Force(text) => Some(text.clone()),
        _ => None,
    });
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
    match torque {
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

/// A bushing pressed into a housing: what is left of its bore.
#[allow(clippy::too_many_lines, reason = "one rule after another, each short")]
pub(super) fn bushing(view: &View, system: System) -> Option<Said> {
    view.only(
        &["fit", "material", "hub", "shaft", "hole", "bushing", "role", "head", "state", "reads"],
        |token| {
            matches!(
                token,
                Token::Number(_)
                    | Token::Shaft(_)
                    | Token::Times(_)
                    | Token::Cross
                    | Token::Temperature(_)
            )
        },
    )?;
    if !view.has("bushing")
        || view
            .words("head")
            .any(|head| !matches!(head, "press" | "turnto" | "closein" | "clearance" | "ream"))
    {
        return None;
    }
    let roles = assign(view, &["role", "bushing", "hub", "shaft", "hole"], &[], system)?;
    let mut sizes: Vec<Num> = roles.free.iter().map(|(_, num, _)| num.clone()).collect();
    sizes.extend(roles.num("bushing").cloned());
    let mut tail = String::new();
    // Play that is wanted: two small figures.
    let largest = view.numbers().map(|(_, num)| num.mm(system)).fold(0.0, f64::max);
    let mut small: Vec<Num> = sizes
        .iter()
        .filter(|num| {
            num.mm(system) < largest / 40.0
                || num.value < 0.2 * largest
                    && view.says("head", "clearance")
                    && num.unit.is_none()
                    && num.mm(system) < 2.0
                    && num.places > 0
                    && sizes
                        .iter()
                        .any(|other| matches!(other.unit, Some(super::token::Unit::Thou)))
        })
        .cloned()
        .collect();
    sizes.retain(|num| !small.contains(num));
    match &mut small[..] {
        [] => {}
        [low, high] if view.says("head", "clearance") => {
            low.unit = low.unit.or(high.unit);
            if low.mm(system) >= high.mm(system) {
                return None;
            }
            let _ = write!(tail, ", running {}..{}", low.plain(system), high.plain(system));
        }
        _ => return None,
    }
    let mut housing = String::new();
    let ods: Vec<_> = roles.taken.iter().filter(|taken| taken.by == "od").collect();
    let mut own: Vec<Num> = Vec::new();
    for taken in &ods {
        // The bushing's own, or the housing's: by the noun or the metal before it in its clause.
        let low = taken.at.min(taken.word);
        let start = view.items[..low]
            .iter()
            .rposition(|item| matches!(item.token, Token::Break))
            .map_or(0, |at| at + 1);
        let clause = &view.items[start..low];
        let of_hub =
            clause.iter().any(|item| matches!(item.token, Token::Word { kind: "hub", .. }))
                || (ods.len() == 2
                    && start > 0
                    && clause
                        .iter()
                        .any(|item| matches!(item.token, Token::Word { kind: "material", .. }))
                    && !clause
                        .iter()
                        .any(|item| matches!(item.token, Token::Word { kind: "bushing", .. })));
        if of_hub {
            if !housing.is_empty() {
                return None;
            }
            housing = format!(" od {}", taken.num.plain(system));
        } else {
            own.push(taken.num.clone());
        }
    }
    let mut ods = own;
    if roles.get("hub").is_some() || ods.len() > 1 {
        return None;
    }
    if let Some(class) = view.one(|token| match token {
        Token::Shaft(class) => Some(class.clone()),
        _ => None,
    }) {
        let _ = write!(tail, ", shaft {class}");
    }
    if let Some(text) = view.one(|token| match token {
        Token::Temperature(text) => Some(text.clone()),
        _ => None,
    }) {
        let _ = write!(tail, ", warm {text}");
    }
    let mut id = match (roles.num("id"), roles.num("hole")) {
        (Some(_), Some(_)) => return None,
        (id, hole) => id.or(hole).cloned(),
    };
    let mut od = ods.pop();
    let mut long = roles.num("long").cloned();
    if let Some(shaft) = roles.num("shaft") {
        match &id {
            // The shaft's size is the bushing's bore.
            None => id = Some(shaft.clone()),
            Some(bore) if (shaft.mm(system) - bore.mm(system)).abs() < 0.05 * bore.mm(system) => {
                let _ = write!(tail, ", shaft {}", shaft.plain(system));
            }
            Some(_) => return None,
        }
    }
    // `20x26x20` is bore, outside, length.
    if view.count(|token| matches!(token, Token::Cross)) > 0
        && !roles.taken.iter().any(|taken| matches!(taken.by, "od" | "id" | "hole"))
    {
        sizes = view
            .numbers()
            .map(|(_, num)| num.clone())
            .filter(|num| long.as_ref() != Some(num) && !small.contains(num))
            .collect();
        sizes.reverse();
    } else {
        sizes.sort_by(|a, b| b.mm(system).total_cmp(&a.mm(system)));
    }
    while let Some(num) = sizes.pop() {
        if id.is_none() {
            id = Some(num);
        } else if od.is_none() {
            od = Some(num);
        } else if long.is_none() && sizes.is_empty() {
            long = Some(num);
        } else {
            return None;
        }
    }
    let (id, od) = (id?, od?);
    if od.mm(system) <= id.mm(system) || od.mm(system) > 2.5 * id.mm(system) {
        return None;
    }
    let (hub, bush) = bushing_metals(view)?;
    let hub = hub?;
    let (i, o) = (id.plain(system), od.plain(system));
    let bush = match bush {
        None | Some("bearing bronze C93200") => "bronze",
        Some(name) => name,
    };
    if long.as_ref().is_some_and(|long| long.mm(system) < 0.2 * id.mm(system)) {
        return None;
    }
    let Some(long) = long else {
        return (roles.get("od").is_none()).then(|| {
            Said::ask(
                "its length is not said",
                vec![
                    format!("bushing {i} od {o} long {o}, hub {hub}{housing}, {bush}{tail}"),
                    format!("bushing {i} od {o} long {i}, hub {hub}{housing}, {bush}{tail}"),
                ],
            )
        });
    };
    let running = match view.one(|token| match token {
        Token::Word { name, kind: "fit" } if *name != "press" => Some(*name),
        _ => None,
    }) {
        Some("running") | None => "",
        Some(_) => return None,
    };
    Some(Said::plain(format!(
        "bushing {i} od {o} long {}, hub {hub}{housing}, {bush}{running}{tail}",
        long.plain(system)
    )))
}

/// The housing's metal and the bushing's.
fn bushing_metals(view: &View) -> Option<(Option<&'static str>, Option<&'static str>)> {
    let (mut hub, mut bush): (Option<&'static str>, Option<&'static str>) = (None, None);
    for name in view.words("material") {
        let is_bush = name.contains("bronze") || matches!(name, "nylon" | "acetal" | "brass");
        let slot = if is_bush { &mut bush } else { &mut hub };
        if slot.is_some_and(|known| known != name) {
            return None;
        }
        *slot = Some(name);
    }
    Some((hub, bush))
}

struct Link {
    name: &'static str,
    num: Num,
    deviations: Option<String>,
    times: u32,
    is_gap: bool,
    is_plus: bool,
}

/// Parts end to end, the play left, or the part to make.
#[allow(clippy::too_many_lines, reason = "one rule after another, each short")]
pub(super) fn stack(view: &View, system: System) -> Option<Said> {
    view.only(
        &[
            "head", "gap", "part", "less", "doubled", "count", "hub", "shaft", "bushing", "role",
            "want",
        ],
        |token| {
            matches!(
                token,
                Token::Number(_)
                    | Token::Deviations { .. }
                    | Token::Times(_)
                    | Token::Plus
                    | Token::Minus
                    | Token::Span(..)
            )
        },
    )?;
    if view.has("hub") || view.has("shaft") || view.has("bushing") || view.has("role") {
        return None;
    }
    if view.words("head").any(|head| !matches!(head, "stack" | "play" | "want" | "length")) {
        return None;
    }
    let named = view.has("gap") || view.has("part");
    let has_signs =
        view.has("less") || view.tokens().any(|token| matches!(token, Token::Minus | Token::Plus));
    let asks = view.says("head", "stack") || view.says("head", "play");
    let subtracts = has_signs && named;
    if !asks && !subtracts {
        return None;
    }
    let (wanted, skip) = wanted(view, system)?;
    let names = view
        .tokens()
        .filter(|token| matches!(token, Token::Word { kind: "gap" | "part", .. }))
        .count();
    let found = if named { named_links(view, system, &skip) } else { None };
    let (mut links, to_make) = match found {
        Some(found) => found,
        None if names <= 1 && has_signs => (plain_links(view, system, &skip)?, None),
        None => return None,
    };
    let needed = if to_make.is_some() { 1 } else { 2 };
    if links.len() < needed || to_make.is_some() != wanted.is_some() {
        return None;
    }
    let says_plus = view.tokens().any(|token| matches!(token, Token::Plus));
    let all_plus = says_plus && links.iter().all(|link| link.is_plus);
    let longest = links
        .iter()
        .enumerate()
        .max_by(|a, b| a.1.num.mm(system).total_cmp(&b.1.num.mm(system)))
        .map(|(at, _)| at)?;
    let gaps = links.iter().filter(|link| link.is_gap).count();
    let gap = match (gaps, links.iter().position(|link| link.is_gap)) {
        (1, Some(gap)) => gap,
        // Two words that can be a gap: the longest is.
        (2.., _) if links.get(longest)?.is_gap => longest,
        (0, _) if !named || names <= 1 => 0,
        _ => return None,
    };
    if gap != longest && !all_plus {
        return None;
    }
    let total: f64 = links
        .iter()
        .enumerate()
        .filter(|(at, _)| *at != gap)
        .map(|(_, link)| link.num.mm(system) * f64::from(link.times))
        .sum();
    let room = links.get(gap)?.num.mm(system);
    if to_make.is_none() && !all_plus && (total > room * 1.02 || total < 0.5 * room)
        || total >= room && to_make.is_some()
    {
        return None;
    }
    let first = links.remove(gap);
    links.insert(0, first);
    let mut text = String::from("stack ");
    for (at, link) in links.iter().enumerate() {
        if at > 0 {
            text.push_str(", ");
        }
        if !link.name.is_empty() {
            text.push_str(link.name);
            text.push(' ');
        }
        if at > 0 {
            text.push(if all_plus { '+' } else { '-' });
        }
        if link.times > 1 {
            let _ = write!(text, "{}x ", link.times);
        }
        text.push_str(&link.num.plain(system));
        if let Some(deviations) = &link.deviations {
            text.push_str(deviations);
        }
    }
    if let Some((from, to)) = wanted {
        let _ = write!(text, ", make -?, play {}..{}", from.plain(system), to.plain(system));
    }
    Some(Said::plain(text))
}

/// The play that is wanted and the places of its numbers.
#[allow(clippy::type_complexity, reason = "a range, and what it takes")]
fn wanted(view: &View, system: System) -> Option<(Option<(Num, Num)>, Vec<usize>)> {
    let is_play = |at: usize| {
        matches!(
            view.items.get(at).map(|item| &item.token),
            Some(Token::Word { kind: "head", name: "stack" | "play" })
        )
    };
    let is_want = |at: usize| {
        matches!(
            view.items.get(at).map(|item| &item.token),
            Some(
                Token::Word { kind: "head", name: "want" } | Token::Word { kind: "connector", .. }
            )
        )
    };
    let is_small = |at: usize| {
        matches!(
            view.items.get(at).map(|item| &item.token),
            Some(Token::Word { kind: "small", .. })
        )
    };
    let largest = view.numbers().map(|(_, num)| num.mm(system)).fold(0.0, f64::max);
    let beside = |from: usize, to: usize| {
        let mut after = to + 1;
        while is_small(after) {
            after += 1;
        }
        let mut before = from;
        while before > 0 && is_small(before - 1) {
            before -= 1;
        }
        is_play(after)
            || (before > 0
                && (is_play(before - 1) || (is_want(before - 1) && view.says("head", "want"))))
    };
    let numbers: Vec<(usize, &Num)> = view.numbers().collect();
    for pair in numbers.windows(2) {
        let [(a, low), (b, high)] = pair else { continue };
        let joined = *b == a + 2 && matches!(&*view.said(a + 1), "to" | "and" | "-");
        if joined && beside(*a, *b) {
            let unit = low.unit.or(high.unit);
            let (low, high) = (
                Num { unit, ..(*low).clone() },
                Num { unit: high.unit.or(unit), ..(*high).clone() },
            );
            if low.mm(system) >= high.mm(system) || high.mm(system) > largest / 20.0 {
                return None;
            }
            return Some((Some((low, high)), vec![*a, *b]));
        }
    }
    for (at, num) in &numbers {
        if num.mm(system) < largest / 20.0
            && beside(*at, *at)
            && !matches!(
                view.items.get(at + 1).map(|item| &item.token),
                Some(Token::Word { kind: "part" | "gap", .. })
            )
            && view.has("head")
        {
            let is_said = view.says("head", "want")
                || view.says("head", "length")
                || (at + 1 < view.items.len() && is_play(at + 1));
            if is_said {
                return Some((Some(((*num).clone(), (*num).clone())), vec![*at]));
            }
        }
    }
    Some((None, Vec::new()))
}

/// `shoulder 1.000 washers 2 x .062 hub .865`: each number with its part; the
/// part without one is the one to make.
#[allow(clippy::too_many_lines, reason = "one rule after another, each short")]
fn named_links(view: &View, system: System, skip: &[usize]) -> Option<(Vec<Link>, Option<usize>)> {
    let is_name = |at: usize| {
        matches!(
            view.items.get(at).map(|item| &item.token),
            Some(Token::Word { kind: "gap" | "part", .. })
        )
    };
    let mut skip = skip.to_vec();
    let mut times: Vec<(usize, u32)> = Vec::new();
    for (at, item) in view.items.iter().enumerate() {
        match &item.token {
            // `2 thrust washers .120`
            Token::Number(num)
                if is_name(at + 1)
                    && num.places == 0
                    && !num.is_fraction
                    && num.unit.is_none()
                    && (2.0..=6.0).contains(&num.value) =>
            {
                let follows = view
                    .items
                    .iter()
                    .skip(at + 2)
                    .find(|item| !matches!(item.token, Token::Word { kind: "small", .. }));
                let lone = view.numbers().filter(|(place, _)| !skip.contains(place)).count();
                if matches!(follows.map(|item| &item.token), Some(Token::Number(_))) && lone > 2 {
                    skip.push(at);
                    #[allow(
                        clippy::cast_possible_truncation,
                        clippy::cast_sign_loss,
                        reason = "two to six"
                    )]
                    times.push((at, num.value as u32));
                }
            }
            Token::Times(count) => times.push((at, *count)),
            Token::Word { kind: "count", name } => times.push((at, name.parse().ok()?)),
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
        let deviations = match view.items.get(taken.at + 1).map(|item| &item.token) {
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
                let text = super::fits::deviations_text(&taken.num, upper, lower, is_both, system);
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
        links.push(Link {
            name: if taken.by == "gap" { "gap" } else { "part" },
            num: taken.num.clone(),
            deviations,
            times: count,
            is_gap: taken.by == "gap",
            is_plus: view.tokens().any(|token| matches!(token, Token::Plus)),
        });
    }
    if used != times.len() {
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
fn plain_links(view: &View, system: System, skip: &[usize]) -> Option<Vec<Link>> {
    let mut links: Vec<Link> = Vec::new();
    let mut times = 1;
    let mut is_plus = true;
    for (at, item) in view.items.iter().enumerate() {
        match &item.token {
            Token::Number(_) if skip.contains(&at) => {}
            Token::Number(num) => {
                links.push(Link {
                    name: "",
                    num: num.clone(),
                    deviations: None,
                    times,
                    is_gap: false,
                    is_plus,
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
            Token::Word { kind: "count" | "doubled", .. } | Token::Span(..) => return None,
            Token::Word { kind: "less", .. } | Token::Minus => is_plus = false,
            Token::Plus => is_plus = true,
            Token::Deviations { upper, lower, is_both } => {
                let last = links.last_mut()?;
                let text = super::fits::deviations_text(&last.num, upper, lower, *is_both, system);
                let size = last.num.plain(system);
                last.deviations = Some(text.strip_prefix(&size)?.to_owned());
            }
            _ => {}
        }
    }
    Some(links)
}
