//! Joints that are pressed or shrunk, bushings, and parts end to end.

use super::{
    Said,
    fits::{Fit, fit_of, is_nominal, metals, nominal_of},
    roles::{Roles, assign},
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
    let mut ods: Vec<Num> = roles.taken.iter().filter(|taken| taken.by == "od").map(|taken| taken.num.clone()).collect();
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
    // What is left: the bore, and the hub's outside.
    free.sort_by(|a, b| a.mm(system).total_cmp(&b.mm(system)));
    let size = |joint: &Joint| joint.plug.as_ref().or(joint.bore.as_ref()).map(|num| num.mm(system));
    while let Some(number) = free.pop() {
        let mm = number.mm(system);
        if joint.od.is_none() && joint.wall.is_none() && size(&joint).is_some_and(|size| mm > 1.05 * size) {
            joint.od = Some(number);
        } else if joint.od.is_none() && joint.wall.is_none() && size(&joint).is_none() && free.len() == 1 {
            joint.od = Some(number);
        } else if size(&joint).is_none() {
            joint.plug = Some(number);
        } else {
            return None;
        }
    }
    if has_bushing && joint.od.is_some() && joint.bush_id.is_some() && joint.plug.is_none() && joint.bore.is_none() {
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
                text.push_str(&format!(" wall {}", wall.plain(system)));
            }
            (Some(od), None) => {
                if od.mm(system) <= 1.001 * size.mm(system) {
                    return None;
                }
                text.push_str(&format!(" od {}", od.plain(system)));
            }
            (None, Some(wall)) => text.push_str(&format!(" wall {}", wall.plain(system))),
            (None, None) if has_bushing => text.push_str(&format!(" od {}", twice(size, system))),
            (None, None) => return None,
        }
        if let Some(long) = &self.long {
            text.push_str(&format!(" long {}", long.plain(system)));
        }
        text.push_str(&format!(", shaft {shaft}"));
        if let Some(id) = &self.bush_id {
            if id.mm(system) >= size.mm(system) {
                return None;
            }
            text.push_str(&format!(" id {}", id.plain(system)));
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
    view.only(&["fit", "material", "hub", "shaft", "hole", "bushing", "role", "head", "state", "tightness", "reads"], is_joint)?;
    if view.words("head").any(|head| !matches!(head, "force" | "hold" | "split" | "heat" | "closein" | "interf" | "press")) {
        return None;
    }
    // A bushing's own sizes without a question about its press are not a joint.
    if view.has("bushing") && !view.has("head") && !view.has("tightness") {
        return None;
    }
    let slips = |at: usize| matches!(&*view.said(at), "slip" | "slips" | "slipping");
    let holds = view.says("head", "hold") || view.tokens().any(|token| matches!(token, Token::Torque(_)));
    let kept: Vec<_> = view.items.iter().enumerate().filter(|(at, item)| !(holds && slips(*at) && matches!(item.token, Token::Word { kind: "fit", .. }))).map(|(_, item)| item.clone()).collect();
    let view = &View { items: kept, slips: Vec::new(), text: view.text.clone() };
    let fit = fit_of(view);
    if fit.is_none() && view.tokens().any(|token| matches!(token, Token::Pair(_) | Token::InchClass(_)) || matches!(token, Token::Word { kind: "fit", .. })) {
        return two_words(view, system);
    }
    let joint = joint(view, system)?;
    compose(view, &joint, fit, system)
}

/// A tightness in figures outranks `press`; other fits beside it contradict.
fn two_words(_: &View, _: System) -> Option<Said> {
    None
}

fn compose(view: &View, joint: &Joint, fit: Option<Fit>, system: System) -> Option<Said> {
    let parts = joint.parts(view, system)?;
    let head = match (&joint.bore, &joint.plug, &joint.tight) {
        (Some(bore), Some(plug), None) if bore.mm(system) != plug.mm(system) => {
            // As they measure.
            if fit.as_ref().is_some_and(|fit| !matches!(fit, Fit::Word(_))) || (bore.mm(system) - plug.mm(system)).abs() > 0.02 * bore.mm(system) {
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
                (Some(tight), None | Some(Fit::Word("press" | "shrink" | "light press" | "heavy press"))) => {
                    if tight.mm(system) > size.mm(system) / 40.0 {
                        return None;
                    }
                    format!("{} interference {}", size.plain(system), tight.plain(system))
                }
                (None, Some(fit @ (Fit::Word(_) | Fit::Pair(_) | Fit::Inch(_)))) => {
                    format!("{} {}", size.plain(system), fit.text())
                }
                (None, None) if view.has("state") && view.says("state", "press") || view.says("head", "press") => {
                    format!("{} press", size.plain(system))
                }
                _ => return None,
            }
        }
    };
    let heat = view.says("head", "heat") || view.says("fit", "shrink");
    let shrink = if heat && !head.ends_with("shrink") && !matches!(fit, Some(Fit::Inch(_))) { ", shrink" } else { "" };
    Some(Said::plain(format!("assemble {head}{parts}{shrink}")))
}

/// The fit that holds so much, or the tightest that the hub stands.
pub(super) fn pick_press(view: &View, system: System) -> Option<Said> {
    view.only(&["fit", "material", "hub", "shaft", "hole", "bushing", "role", "head", "state", "tightness"], is_joint)?;
    let torque = view.one(|token| match token { Token::Torque(text) | Token::Force(text) => Some(text.clone()), _ => None });
    let safe = view.says("head", "safe");
    if view.words("head").any(|head| !matches!(head, "hold" | "safe" | "whatfit" | "interf" | "split" | "press")) {
        return None;
    }
    if view.words("fit").any(|fit| fit != "press") || view.tokens().any(|token| matches!(token, Token::Pair(_) | Token::InchClass(_))) {
        return None;
    }
    let joint = joint(view, system)?;
    if joint.tight.is_some() {
        return None;
    }
    let size = match (&joint.plug, &joint.bore) {
        (Some(plug), Some(bore)) if plug.mm(system) != bore.mm(system) => return None,
        (Some(size), _) | (None, Some(size)) => size.clone(),
        _ => return None,
    };
    let parts = joint.parts(view, system)?;
    match torque {
        Some(torque) if !safe => Some(Said::plain(format!("pick {} holds {torque}{parts}", size.plain(system)))),
        None if safe => Some(Said::plain(format!("pick {} hub safe{parts}", size.plain(system)))),
        _ => None,
    }
}

/// A bushing pressed into a housing: what is left of its bore.
pub(super) fn bushing(view: &View, system: System) -> Option<Said> {
    view.only(&["fit", "material", "hub", "shaft", "hole", "bushing", "role", "head", "state", "reads"], |token| {
        matches!(token, Token::Number(_) | Token::Shaft(_) | Token::Times(_))
    })?;
    if !view.has("bushing") || view.words("head").any(|head| !matches!(head, "press" | "turnto" | "closein" | "clearance" | "ream")) {
        return None;
    }
    let roles = assign(view, &["role", "bushing", "hub", "shaft", "hole"], &[], system)?;
    let mut sizes: Vec<Num> = roles.free.iter().map(|(_, num, _)| num.clone()).collect();
    sizes.extend(roles.num("bushing").cloned());
    if roles.get("hub").is_some() {
        return None;
    }
    let mut id = match (roles.num("id"), roles.num("hole")) {
        (Some(_), Some(_)) => return None,
        (id, hole) => id.or(hole).cloned(),
    };
    let mut od = roles.num("od").cloned();
    let mut long = roles.num("long").cloned();
    if let Some(shaft) = roles.num("shaft") {
        // The shaft's size is the bushing's bore.
        if id.is_none() { id = Some(shaft.clone()) } else { return None }
    }
    sizes.sort_by(|a, b| b.mm(system).total_cmp(&a.mm(system)));
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
    let Some(long) = long else {
        return (roles.get("od").is_none()).then(|| {
            Said::ask("its length is not said", vec![
                format!("bushing {i} od {o} long {o}, hub {hub}, {bush}"),
                format!("bushing {i} od {o} long {i}, hub {hub}, {bush}"),
            ])
        });
    };
    let running = match view.one(|token| match token { Token::Word { name, kind: "fit" } if *name != "press" => Some(*name), _ => None }) {
        Some("running") | None => "",
        Some(_) => return None,
    };
    Some(Said::plain(format!("bushing {i} od {o} long {}, hub {hub}, {bush}{running}", long.plain(system))))
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
    name: Option<&'static str>,
    num: Num,
    deviations: Option<String>,
    times: u32,
    is_gap: bool,
    is_plus: bool,
}

/// Parts end to end, the play left.
pub(super) fn stack(view: &View, system: System) -> Option<Said> {
    view.only(&["head", "gap", "part", "less", "doubled", "hub", "shaft", "bushing", "role"], |token| {
        matches!(token, Token::Number(_) | Token::Deviations { .. } | Token::Times(_) | Token::Plus | Token::Minus)
    })?;
    if view.has("hub") || view.has("shaft") || view.has("bushing") || view.has("role") {
        return None;
    }
    if view.words("head").any(|head| !matches!(head, "stack" | "play")) {
        return None;
    }
    let has_signs = view.has("less") || view.tokens().any(|token| matches!(token, Token::Minus | Token::Plus));
    let named = view.has("gap") || view.has("part");
    if !view.has("head") && !(has_signs && named) {
        return None;
    }
    let links = links(view, system, true).or_else(|| links(view, system, false))?;
    if links.len() < 2 {
        return None;
    }
    let says_plus = view.tokens().any(|token| matches!(token, Token::Plus));
    let all_plus = says_plus && links.iter().all(|link| link.is_plus);
    let gap = links.iter().position(|link| link.is_gap);
    let longest = links.iter().enumerate().max_by(|a, b| a.1.num.mm(system).total_cmp(&b.1.num.mm(system))).map(|(at, _)| at)?;
    let gap = match gap {
        Some(gap) if links.iter().filter(|link| link.is_gap).count() == 1 => gap,
        Some(_) => return None,
        None if has_signs => 0,
        None => return None,
    };
    if gap != longest && !all_plus {
        return None;
    }
    let total: f64 = links.iter().enumerate().filter(|(at, _)| *at != gap).map(|(_, link)| link.num.mm(system) * f64::from(link.times)).sum();
    let room = links.get(gap)?.num.mm(system);
    if !all_plus && (total > room * 1.02 || total < 0.5 * room) {
        return None;
    }
    let mut text = String::from("stack ");
    let order = std::iter::once(gap).chain((0..links.len()).filter(|at| *at != gap));
    for (written, at) in order.enumerate() {
        let link = links.get(at)?;
        if written > 0 {
            text.push_str(", ");
        }
        if let Some(name) = link.name {
            text.push_str(name);
            text.push(' ');
        }
        if at != gap {
            text.push(if all_plus { '+' } else { '-' });
        }
        if link.times > 1 {
            text.push_str(&format!("{}x ", link.times));
        }
        text.push_str(&link.num.plain(system));
        if let Some(deviations) = &link.deviations {
            text.push_str(deviations);
        }
    }
    Some(Said::plain(text))
}

/// Each number with its name, the name before it or after it throughout.
fn links(view: &View, system: System, before: bool) -> Option<Vec<Link>> {
    let mut links: Vec<Link> = Vec::new();
    let mut name: Option<(&'static str, bool)> = None;
    let mut times = 1;
    let mut is_plus = true;
    let named = view.has("gap") || view.has("part");
    let mut pending = false;
    for (at, item) in view.items.iter().enumerate() {
        match &item.token {
            Token::Word { name: n, kind: kind @ ("gap" | "part") } => {
                let said: &'static str = if *kind == "gap" { "gap" } else { "part" };
                let _ = n;
                if before {
                    if name.is_some() && *kind == "part" { continue }
                    name = Some((said, *kind == "gap"));
                } else if let Some(last) = links.last_mut().filter(|_| pending) {
                    last.name = Some(said);
                    last.is_gap = *kind == "gap";
                    pending = false;
                } else {
                    return None;
                }
            }
            Token::Times(count) => {
                // After the size, or before it.
                match (view.items.get(at + 1).map(|item| &item.token), links.last_mut()) {
                    (Some(Token::Number(_)), _) => times = *count,
                    (_, Some(last)) if last.times == 1 => last.times = *count,
                    _ => return None,
                }
            }
            Token::Word { kind: "doubled", .. } => {
                let last = links.last_mut()?;
                if last.times != 1 { return None }
                last.times = 2;
            }
            Token::Word { kind: "less", .. } | Token::Minus => is_plus = false,
            Token::Plus => is_plus = true,
            Token::Number(num) => {
                if pending && !before {
                    return None;
                }
                let (said, is_gap) = match (before, name.take()) {
                    (true, Some((said, is_gap))) => (Some(said), is_gap),
                    (true, None) if named => return None,
                    _ => (None, false),
                };
                links.push(Link { name: said, num: num.clone(), deviations: None, times, is_gap, is_plus });
                times = 1;
                pending = named;
            }
            Token::Deviations { upper, lower, is_both } => {
                let last = links.last_mut()?;
                let text = super::fits::deviations_text(&last.num, upper, lower, *is_both, system);
                let size = last.num.plain(system);
                last.deviations = Some(text.strip_prefix(&size)?.to_owned());
            }
            _ => {}
        }
    }
    (name.is_none() && (before || !pending || !named)).then_some(links)
}

/// Nothing of a joint is a bearing's or a stack's.
pub(super) const fn _unused(_: &Roles) {}
