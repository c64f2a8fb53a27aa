//! Joints that are pressed or shrunk.

use std::fmt::Write as _;

use crate::sentence::{
    roles::{Roles, assign},
    sizes::metals,
    token::{Num, System, Token},
    view::{Item, View},
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
    pub(super) bore: Option<Num>,
    pub(super) plug: Option<Num>,
    pub(super) od: Option<Num>,
    pub(super) wall: Option<Num>,
    pub(super) long: Option<Num>,
    /// The bore of a bushing that is pressed in.
    pub(super) bush_id: Option<Num>,
    pub(super) tight: Option<Num>,
    pub(super) hub: Option<&'static str>,
    pub(super) shaft: Option<&'static str>,
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
    ods.sort_by(|a, b| a.by_size(b, system));
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
    // `bush 3/8 x 1/2`: the sizes that a cross joins are the bushing's.
    let crosses = view.tokens().filter(|token| matches!(token, Token::Cross)).count();
    // One of them may be taken by the word before it: `bush 30x34`.
    let by_word = num("bushing").filter(|_| free.len() == 1 && has_own_cross(view));
    let is_crossed = has_bushing
        && crosses == 1
        && (free.len() > 1 || by_word.is_some())
        && joint.od.is_none()
        && joint.bore.is_none();
    if is_crossed {
        free.extend(by_word);
        free.sort_by(|a, b| a.by_size(b, system));
        joint.od = free.pop();
    }
    let is_own = joint.plug.is_none()
        && joint.bush_id.is_none()
        && (is_crossed || is_own_outside(view, &roles));
    if is_own {
        // The bushing's outside goes into the hub, and the other size is its bore.
        joint.plug = joint.od.take();
        joint.bush_id = joint.bore.take().or_else(|| num("bushing"));
    } else if let Some(bush) = num("bushing").filter(|_| !is_crossed) {
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
    if is_own && joint.bush_id.is_none() {
        joint.bush_id = Some(free.pop().filter(|_| free.is_empty())?);
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
    free.sort_by(|a, b| a.by_size(b, system));
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
    // `1-1/4 bushing, bore 1 in, hub 2-1/2`: a bore so far under what is pressed is the
    // bushing's own.
    if let (true, Some(plug), None) = (has_bushing, &joint.plug, &joint.bush_id) {
        let most = 0.97 * plug.mm(system);
        joint.bush_id = joint.bore.take_if(|bore| bore.mm(system) < most);
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

/// `bush 30x34`: two figures and a cross stand behind the bushing's name.
fn has_own_cross(view: &View) -> bool {
    bushing_at(view).is_some_and(|at| {
        let is_cross = view.items.get(at + 2).is_some_and(|item| item.token == Token::Cross);
        is_cross && view.is_number(at + 1) && view.is_number(at + 3)
    })
}

fn bushing_at(view: &View) -> Option<usize> {
    view.items.iter().position(|item| matches!(item.token, Token::Word { kind: "bushing", .. }))
}

/// `press a 3/8 pin in a bronze bush`: does something go into the bushing?
pub(super) fn goes_in_bushing(view: &View) -> bool {
    bushing_at(view).is_some_and(|bush| {
        let mut before = view.text[..view.items[bush].at.start].split_whitespace();
        before.any(|word| matches!(word, "in" | "into"))
    })
}

/// `bush 3/8 inside 1/2 outside`: is the outside the bushing's, and not that of what it
/// goes into?
fn is_own_outside(view: &View, roles: &Roles) -> bool {
    let Some(bush) = bushing_at(view) else { return false };
    let outside = roles.taken.iter().find(|taken| taken.by == "od");
    let Some(outside) = outside.map(|taken| taken.at.min(taken.word)) else { return false };
    let names_other =
        |item: &Item| matches!(item.token, Token::Word { kind: "hub" | "material" | "shaft", .. });
    bush < outside
        && !goes_in_bushing(view)
        && !view.items[bush + 1..outside].iter().any(names_other)
}

impl Joint {
    /// The text of a joint after its fit: hub, shaft and their sizes.
    pub(super) fn parts(&self, view: &View, system: System) -> Option<String> {
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
