//! Retaining rings, pins, Woodruff keys, plugs of square tube and O-rings: the
//! plain query takes its words in any order, so this says which number is whose.

use fits_core::{
    Length,
    standards::hardware::{RetainingRing, RingKind},
};

use crate::sentence::{
    Said,
    roles::{Roles, Taken, assign},
    token::{Num, System, Token},
    view::View,
};

/// A part by its name, with what is said of it.
pub(crate) fn hardware(view: &View, system: System) -> Option<Said> {
    let view = &with_parts(view);
    view.only(&["head", "role", "state", "material"], |token| {
        matches!(
            token,
            Token::Number(_)
                | Token::Torque(_)
                | Token::Gauge(_)
                | Token::Bearing(..)
                | Token::Cross
        )
    })?;
    let part = view.one(|token| match token {
        Token::Word { name, kind: "head" } if *name != "-" => Some(*name),
        _ => None,
    })?;
    // A bearing's number belongs to a Woodruff key alone.
    if part != "woodruff" && view.count(|token| matches!(token, Token::Bearing(..))) > 0 {
        return None;
    }
    // A number that is a name belongs to no word.
    let name = (0..view.items.len()).find_map(|at| named(view, at, part).map(|name| (at, name)));
    let mut sizes = View { items: view.items.clone(), text: view.text.clone() };
    if let Some((at, _)) = name {
        sizes.items.remove(at);
    }
    let roles = match each_before_its_size(&sizes) {
        Some(roles) => roles,
        None => assign(&sizes, &["role"], &[], system)?,
    };
    let sized = |num: &Num| num.plain(units_of(part, num, system));
    if let Some(said) = crossed(view, part, &sized) {
        return Some(said);
    }
    let mut line = part.to_owned();
    let mut add = |words: &str| {
        line.push(' ');
        line.push_str(words);
    };
    if let Some((_, name)) = &name {
        add(name);
    }
    for (_, num, _) in &roles.free {
        add(&sized(num));
    }
    if part == "retaining ring"
        && roles.taken.is_empty()
        && !view.types(&["hole", "internal", "external"])
        && let [(_, size, _)] = &roles.free[..]
    {
        let size = sized(size);
        return Some(Said::ask(
            "a shaft or a bore is not said: their rings differ",
            ["shaft", "bore"].map(|place| format!("retaining ring {size} {place}")).into(),
        ));
    }
    let roles_said = view.words("role").count();
    if roles.taken.len() != roles_said {
        // A word without a size chooses: `rod`, `piston`.
        return None;
    }
    for taken in &roles.taken {
        let by = if part == "retaining ring" && taken.by == "rod" { "shaft" } else { taken.by };
        add(&format!("{by} {}", sized(&taken.num)));
    }
    for word in view.words("state") {
        add(word);
    }
    if part == "retaining ring" && roles.taken.is_empty() && view.types(&["hole"]) {
        add("bore");
    }
    let mut torques = view.tokens().filter_map(|token| match token {
        Token::Torque(torque) => Some(torque),
        _ => None,
    });
    if let Some(torque) = torques.next() {
        add(&format!("torque {torque}"));
    }
    match (view.words("material").count(), part) {
        (0, _) => {}
        (1, "cross pin" | "square plug") => add(view.word("material")?),
        _ => return None,
    }
    if part == "o-ring"
        && let Some(said) = unsaid_ring(view, &line, name.is_none() && roles.free.is_empty())
    {
        return Some(said);
    }
    let is_whole = torques.next().is_none() && !is_listed_elsewhere(part, &roles, system);
    // Without its wall a plug may be anything.
    let is_own = part != "square plug" || roles.num("wall").is_some();
    (is_whole && is_own).then(|| Said::plain(line))
}

/// A ring's or a key's shaft by any of its names, and a ring's bore: `a 14 arbor`.
fn with_parts(view: &View) -> View {
    let is_ring = view.says("head", "retaining ring");
    let is_key = view.says("head", "woodruff");
    let mut items = view.items.clone();
    for (at, item) in items.iter_mut().enumerate() {
        let role = match item.token {
            Token::Word { kind: "hub", .. } if is_key && view.said(at) == "crank" => "shaft",
            Token::Word { kind: "shaft", .. } if is_ring || is_key => "shaft",
            Token::Word { kind: "hub", .. } if is_ring => "bore",
            _ => continue,
        };
        item.token = Token::Word { name: role, kind: "role" };
    }
    View { items, text: view.text.clone() }
}

/// `25x25x2 box section`, `taper pin 6 x 50`: sizes with a cross between them.
fn crossed(view: &View, part: &str, sized: &impl Fn(&Num) -> String) -> Option<Said> {
    if !view.tokens().any(|token| *token == Token::Cross) || view.has("role") {
        return None;
    }
    let numbers: Vec<&Num> = view.numbers().map(|(_, num)| num).collect();
    let states = view.words("state").fold(String::new(), |all, word| all + " " + word);
    let plain = match (part, &numbers[..]) {
        ("square plug", [side, other, wall]) if side.text == other.text => {
            format!("square plug {} wall {}{states}", sized(side), sized(wall))
        }
        ("square plug", [side, wall]) if wall.value < side.value / 4.0 => {
            format!("square plug {} wall {}{states}", sized(side), sized(wall))
        }
        ("taper pin" | "spring pin" | "coiled pin" | "clevis pin" | "cotter pin", [size, long])
            if view.words("state").next().is_none() =>
        {
            format!("{part} {} long {}", sized(size), sized(long))
        }
        _ => return None,
    };
    match view.words("material").count() {
        0 => Some(Said::plain(plain)),
        1 if part == "square plug" => {
            Some(Said::plain(format!("{plain} {}", view.word("material")?)))
        }
        _ => None,
    }
}

/// Where every word stands right before a size, the sizes are theirs.
fn each_before_its_size(view: &View) -> Option<Roles> {
    let mut roles = Roles::default();
    for (word, item) in view.items.iter().enumerate() {
        match &item.token {
            Token::Word { kind: "role", name } => {
                let at = word + 1;
                let Token::Number(num) = &view.items.get(at)?.token else { return None };
                roles.taken.push(Taken {
                    by: name,
                    num: num.clone(),
                    at,
                    word,
                    is_measured: false,
                });
            }
            Token::Number(num) if !roles.taken.iter().any(|taken| taken.at == word) => {
                roles.free.push((word, num.clone(), false));
            }
            _ => {}
        }
    }
    (!roles.taken.is_empty()).then_some(roles)
}

/// A ring whose section, or whether it moves, is not said.
fn unsaid_ring(view: &View, line: &str, is_unnamed: bool) -> Option<Said> {
    let is_said = ["face", "static", "moving"].iter().any(|how| view.says("state", how));
    let uses: &[&str] = if is_said { &[""] } else { &[" static", " moving"] };
    let rest = line.strip_prefix("o-ring")?;
    let sections: &[&str] = if is_unnamed { &[" 1/16in", " 1/8in"] } else { &[""] };
    let each = sections
        .iter()
        .flat_map(|section| uses.iter().map(move |how| format!("o-ring{section}{rest}{how}")));
    let choices: Vec<String> = each.collect();
    (choices.len() > 1).then(|| {
        Said::ask("its section, or whether it moves, is not said: grooves differ", choices)
    })
}

/// The name that a number is, where this part has names.
fn named(view: &View, at: usize, part: &str) -> Option<String> {
    let whole = |num: &Num| num.unit.is_none() && !num.is_fraction && num.places == 0;
    match (&view.items.get(at)?.token, part) {
        (Token::Gauge(name), "taper pin") => name.starts_with('#').then(|| name.clone()),
        (Token::Number(num), "taper pin") if whole(num) && num.value <= 14.0 => {
            Some(num.text.clone())
        }
        (Token::Number(num), "woodruff" | "o-ring") if whole(num) && num.value >= 100.0 => {
            Some(num.text.clone())
        }
        // 608 is a bearing elsewhere.
        (Token::Bearing(..), "woodruff") => Some(view.said(at)),
        _ => None,
    }
}

/// A Woodruff key is an inch part; so is an O-ring of less than some inches.
fn units_of(part: &str, num: &Num, system: System) -> System {
    match part {
        "woodruff" => System::Inches,
        "o-ring" if num.value < 6.0 => System::Inches,
        _ => system,
    }
}

/// Is a ring of this size listed in the other units alone?
fn is_listed_elsewhere(part: &str, roles: &Roles, system: System) -> bool {
    if part != "retaining ring" {
        return false;
    }
    let (num, kinds) = match (roles.num("shaft"), roles.num("bore")) {
        (Some(num), None) => (num, [RingKind::Din471, RingKind::External]),
        (None, Some(num)) => (num, [RingKind::Din472, RingKind::Internal]),
        _ => return false,
    };
    let lists = |kind: RingKind, system: System| {
        num.plain(system).parse::<Length>().is_ok_and(|on| RetainingRing::find(kind, on).is_ok())
    };
    let [metric, inch] = kinds;
    match system {
        System::Inches => !lists(inch, system) && lists(metric, System::Millimetres),
        System::Millimetres => !lists(metric, system) && lists(inch, System::Inches),
    }
}
