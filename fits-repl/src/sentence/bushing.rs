//! A bushing pressed into a housing.

use std::fmt::Write as _;

use crate::sentence::{
    Said,
    roles::assign,
    sizes::is_nominal,
    token::{Num, System, Token, Unit},
    view::View,
};

/// A bushing pressed into a housing: what is left of its bore.
#[allow(clippy::too_many_lines, reason = "one rule after another, each short")]
pub(crate) fn bushing(view: &View, system: System) -> Option<Said> {
    view.only(
        &[
            "fit", "material", "hub", "shaft", "hole", "bushing", "role", "head", "state", "reads",
            "place", "duty",
        ],
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
    let is_in_place = view.has("reads")
        && view.types(&["pressed", "pressed in", "pushed", "pushed in", "installed", "sat"]);
    if (view.has("place") || is_in_place)
        && let Some(said) = in_place(view, system)
    {
        return Some(said);
    }
    // What mics before it is pressed in comes out smaller.
    let is_bush = view.has("bushing") || bush_by_metal(view) == Some(true);
    if !is_bush
        || view.has("reads")
        || view
            .words("head")
            .any(|head| !matches!(head, "press" | "turnto" | "closein" | "clearance" | "ream"))
    {
        return None;
    }
    // `20x26x25 steel housing`: what a cross joins is the bushing's.
    let is_cross = |at: Option<usize>| {
        at.and_then(|at| view.items.get(at)).is_some_and(|item| item.token == Token::Cross)
    };
    let has_role = view.words("role").any(|role| matches!(role, "od" | "id"));
    let crossed: Vec<usize> = (0..view.items.len())
        .filter(|at| !has_role && (is_cross(at.checked_sub(1)) || is_cross(Some(at + 1))))
        // `12 x 18 x 20 long`
        .filter(|at| {
            !matches!(
                view.items.get(at + 1).map(|item| &item.token),
                Some(Token::Word { kind: "role", name: "long" })
            )
        })
        .collect();
    let roles = assign(view, &["role", "bushing", "hub", "shaft", "hole"], &crossed, system)?;
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
                    && sizes.iter().any(|other| matches!(other.unit, Some(Unit::Thou)))
        })
        .cloned()
        .collect();
    sizes.retain(|num| !small.contains(num));
    match &mut small[..] {
        [] => {}
        [low, high] if view.says("head", "clearance") || view.says("fit", "running") => {
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
    match view.words("duty").collect::<Vec<_>>()[..] {
        [] => {}
        [duty] => {
            let _ = write!(tail, ", for {duty}");
        }
        _ => return None,
    }
    let mut id = match (roles.num("id"), roles.num("hole")) {
        (Some(_), Some(_)) => return None,
        (id, hole) => id.or(hole).cloned(),
    };
    let mut od = ods.pop();
    let mut long = roles.num("long").cloned();
    let is_crossed = view.count(|token| matches!(token, Token::Cross)) > 0;
    let crossed_shaft = roles.num("shaft").filter(|_| is_crossed && id.is_none());
    if let Some(shaft) = roles.num("shaft").filter(|_| crossed_shaft.is_none()) {
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
        let long_at = roles.get("long").map(|taken| taken.at);
        sizes = view
            .numbers()
            .filter(|(at, _)| long_at != Some(*at))
            .map(|(_, num)| num.clone())
            .filter(|num| !small.contains(num))
            .filter(|num| crossed_shaft != Some(num))
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
    if let Some(shaft) = crossed_shaft {
        if (shaft.mm(system) - id.mm(system)).abs() > 0.05 * id.mm(system) {
            return None;
        }
        let _ = write!(tail, ", shaft {}", shaft.plain(system));
    }
    if od.mm(system) <= id.mm(system) || od.mm(system) > 2.5 * id.mm(system) {
        return None;
    }
    let (hub, bush) = bushing_metals(view)?;
    let (i, o) = (id.plain(system), od.plain(system));
    let bush = match bush {
        None | Some("bearing bronze C93200") => "bronze",
        Some(name) => name,
    };
    if long.as_ref().is_some_and(|long| long.mm(system) < 0.2 * id.mm(system)) {
        return None;
    }
    let Some(long) = long else {
        // `25.02 bush in a 25 bore`: no bushing has so thin a wall.
        if od.mm(system) < 1.05 * id.mm(system) {
            return None;
        }
        let one = |hub: &str, long: &str| {
            format!("bushing {i} od {o} long {long}, hub {hub}{housing}, {bush}{tail}")
        };
        return Some(match hub {
            Some(hub) => Said::ask("its length is not said", vec![one(hub, &o), one(hub, &i)]),
            None => Said::ask(
                "its length, and what it is pressed into, is not said",
                vec![
                    one("steel", &o),
                    one("steel", &i),
                    one("cast iron", &o),
                    one("aluminium", &o),
                ],
            ),
        });
    };
    let Some(hub) = hub else {
        // A bush by its three sizes: what holds it decides how far it closes in.
        return is_crossed.then(|| {
            let one = |hub: &str| {
                format!(
                    "bushing {i} od {o} long {}, hub {hub}{housing}, {bush}{tail}",
                    long.plain(system)
                )
            };
            Said::ask(
                "what it is pressed into is not said",
                ["steel", "cast iron", "aluminium"].map(one).to_vec(),
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

/// A bushing that is pressed in: what its bore measures, and a shaft.
fn in_place(view: &View, system: System) -> Option<Said> {
    let heads = |head: &str| matches!(head, "turnto" | "clearance" | "ream" | "bore" | "press");
    if !view.has("bushing")
        || view.has("hub")
        || view.has("state")
        || !view.words("head").all(heads)
        || view.words("fit").any(|fit| fit != "running")
        || view.words("role").any(|role| role != "id")
        || view
            .count(|token| !matches!(token, Token::Word { .. } | Token::Number(_) | Token::Break))
            > 0
    {
        return None;
    }
    let roles = assign(view, &["role", "bushing", "shaft", "hole"], &[], system)?;
    let shaft = roles.num("shaft").cloned();
    let mut others: Vec<Num> = view
        .numbers()
        .map(|(_, num)| num.clone())
        .filter(|num| Some(num) != shaft.as_ref())
        .collect();
    // `bushing 3/4in bore .7485 after pressing`: the bore as it measures, and what it was.
    let nominal = match &others[..] {
        [one, other] if shaft.is_none() => {
            let near = (one.mm(system) - other.mm(system)).abs() < 0.03 * other.mm(system);
            let at = usize::from(is_nominal(other, system) && !is_nominal(one, system));
            Some(others.remove(at)).filter(|_| near)
        }
        _ => None,
    };
    let bore = others.pop().filter(|_| others.is_empty())?;
    // `ream size after pressing a 3/8 bushing`: its bore before it was pressed.
    if view.says("head", "ream") && bore.is_fraction && shaft.is_none() {
        return None;
    }
    let tail = match &shaft {
        Some(shaft) if (shaft.mm(system) - bore.mm(system)).abs() < 0.03 * bore.mm(system) => {
            format!(", shaft {}", shaft.plain(system))
        }
        Some(_) => return None,
        None => String::new(),
    };
    let of = |metal: &str| format!("bushing in place {}, {metal}{tail}", bore.plain(system));
    match view.words("material").collect::<Vec<_>>()[..] {
        ["bearing bronze C93200" | "bronze"] => Some(Said::plain(of("bronze"))),
        [metal] if metal.contains("bronze") || matches!(metal, "nylon" | "acetal" | "brass") => {
            Some(Said::plain(of(metal)))
        }
        [] if nominal.is_some() => {
            let shaft = nominal.map(|num| format!(", shaft {}", num.plain(system)));
            let shaft = shaft.unwrap_or_default();
            Some(Said::ask(
                "what the bushing is of, and whether the shaft is of the nominal size, is not said",
                vec![
                    of("bronze") + &shaft,
                    of("sintered bronze") + &shaft,
                    of("bronze"),
                    of("sintered bronze"),
                ],
            ))
        }
        [] => Some(Said::ask(
            "what the bushing is made of is not said",
            vec![of("bronze"), of("sintered bronze")],
        )),
        _ => None,
    }
}

/// `oilite 1/2 id 5/8 od pressed in steel`: inside and outside stand before what it is
/// pressed into, so they are of the first metal. Is that one of bushings? Nothing where
/// they are not, or a part is named.
pub(crate) fn bush_by_metal(view: &View) -> Option<bool> {
    // `oilite 1/2 bore 5/8 od`: its bore is its inside.
    let bore = (0..view.items.len()).find(|at| view.said(*at) == "bore");
    let has_hole =
        (0..view.items.len()).any(|at| view.kind_at(at) == Some("hole") && view.said(at) != "bore");
    if has_hole || ["bushing", "hub", "shaft"].iter().any(|kind| view.has(kind)) {
        return None;
    }
    let place = |kind: &str, name: Option<&str>| {
        view.items.iter().position(|item| {
            matches!(item.token, Token::Word { kind: k, name: n } if k == kind && name.is_none_or(|name| n == name))
        })
    };
    let ends = [place("role", Some("id")).or(bore)?, place("role", Some("od"))?];
    let last = view
        .items
        .iter()
        .rposition(|item| matches!(item.token, Token::Word { kind: "material", .. }))?;
    let first = place("material", None)?;
    let before = view.said(last.checked_sub(1)?);
    let is_into = matches!(before.split(' ').next_back(), Some("in" | "into" | "inside"));
    let own_first = ends.iter().all(|end| (first..last).contains(end));
    (is_into && own_first).then(|| {
        let (_, bush) = bushing_metals(view).unwrap_or_default();
        bush.is_some_and(|bush| view.words("material").next() == Some(bush))
    })
}

/// The housing's metal and the bushing's.
pub(crate) fn bushing_metals(view: &View) -> Option<(Option<&'static str>, Option<&'static str>)> {
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
