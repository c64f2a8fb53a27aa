//! Joints that are pressed or shrunk.

use std::fmt::Write as _;

use crate::sentence::{
    Said,
    bought::HOLDS,
    bushing::bushing_metals,
    roles::assign,
    sizes::{Fit, fit_of, is_nominal, metals, nominal_of},
    token::{Num, System, Token},
    tools::trimmed,
    view::View,
};

pub(crate) const HOLDERS: &[&str] = &["role", "hub", "shaft", "hole", "bushing", "tightness"];

pub(crate) fn is_joint(token: &Token) -> bool {
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
#[derive(Clone)]
pub(crate) struct Joint {
    bore: Option<Num>,
    plug: Option<Num>,
    od: Option<Num>,
    wall: Option<Num>,
    long: Option<Num>,
    /// The bore of a bushing that is pressed in.
    bush_id: Option<Num>,
    tight: Option<Num>,
    hub: Option<&'static str>,
    shaft: Option<&'static str>,
}

#[allow(clippy::too_many_lines, reason = "one rule after another: who owns which number")]
pub(crate) fn joint(view: &View, system: System) -> Option<Joint> {
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
        hub,
        shaft,
    };
    let mut free: Vec<Num> = roles.free.iter().map(|(_, num, _)| num.clone()).collect();
    free.extend(num("ring"));
    free.extend(num("hub"));
    // Tube is sold by its outside and its wall: what goes into it is as large as its bore.
    if view.types(&["tube", "tubing", "pipe"])
        && joint.bore.is_none()
        && joint.plug.is_none()
        && roles.num("id").is_none()
        && let Some(wall) = &joint.wall
    {
        // `3/4 press in tubing .065 wall`: not the tube's own.
        let beside = roles.get("ring").is_some_and(|taken| taken.at.abs_diff(taken.word) == 1);
        if joint.od.is_none() && free.len() == 1 && beside {
            joint.od = free.pop();
        }
        if let Some(od) = joint.od.as_ref().filter(|_| free.is_empty()) {
            joint.plug = Some(od.less_twice(wall, system)?);
        }
    }
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
        // `20 H7/s6 hub, bush with 14 hole in it`: the bore is the bush's own.
        if has_bushing
            && joint.plug.is_none()
            && joint.bush_id.is_none()
            && joint.od.as_ref().is_some_and(|od| od.mm(system) > 1.05 * mm)
            && joint.bore.as_ref().is_some_and(|bore| bore.mm(system) < 0.97 * mm)
        {
            joint.bush_id = joint.bore.take();
            joint.plug = Some(number);
            continue;
        }
        if no_outside && is_outside {
            joint.od = Some(number);
        } else if size(&joint).is_none() {
            joint.plug = Some(number);
        } else {
            return None;
        }
    }
    if has_bushing && joint.plug.is_none() && joint.bush_id.is_none() && joint.tight.is_none() {
        // `12 bore, 16 OD bush`: both are its own.
        joint.bush_id = joint.bore.take_if(|_| joint.od.is_some());
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
            (Some(od), Some(wall)) => {
                let inside = od.mm(system) - 2.0 * wall.mm(system);
                if (inside - size.mm(system)).abs() > 0.02 * size.mm(system) {
                    return None;
                }
                let _ = write!(text, " od {} wall {}", od.plain(system), wall.plain(system));
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
pub(crate) fn twice(num: &Num, system: System) -> String {
    let unit = num.plain(system);
    let unit = unit.trim_start_matches(|c: char| !c.is_ascii_alphabetic());
    format!("{}{unit}", trimmed(num.value * 2.0))
}

/// Pressed or shrunk together.
pub(crate) fn assemble(view: &View, system: System) -> Option<Said> {
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
    // A plug that slides or is tapped into a tube is a matter of sizes.
    let is_loose = matches!(fit, Some(Fit::Word(word)) if !HOLDS.contains(&word));
    if is_loose && !view.has("head") && view.types(&["tube", "tubing", "pipe"]) {
        return None;
    }
    let joint = joint(view, system)?;
    let said = compose(view, &joint, fit.as_ref(), system, shrinks)?;
    Some(plate(view, &joint, fit.as_ref(), system, shrinks).unwrap_or(said))
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
    let shrink =
        if heat && !head.ends_with("shrink") && (shrinks || !matches!(fit, Some(Fit::Inch(_)))) {
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
pub(crate) fn bushing_on_shaft(view: &View, system: System) -> Option<Said> {
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
pub(crate) fn pick_press(view: &View, system: System) -> Option<Said> {
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
