//! Bought parts and tables: keys, bearings, pins and bar, general tolerances,
//! standard grades; and the tailstock.

use crate::sentence::{
    Said,
    roles::assign,
    sizes::{Fit, fit_of, limits},
    token::{Num, System, Token},
    vague::TAPPED,
    view::View,
};

pub(super) fn only_number(view: &View) -> Option<&Num> {
    let mut numbers = view.numbers();
    let (_, num) = numbers.next()?;
    numbers.next().is_none().then_some(num)
}

/// The key and keyways of a shaft.
pub(crate) fn keyway(view: &View, system: System) -> Option<Said> {
    let kinds = ["key", "shaft", "hole", "hub", "role"];
    view.only(&kinds, |token| matches!(token, Token::Number(_)))?;
    if !view.has("key") || view.has("hole") || view.words("role").any(|role| role != "od") {
        return None;
    }
    let wrong = [("toowide", "wide"), ("toodeep", "deep")];
    let wrong: Vec<&str> =
        wrong.iter().filter(|(word, _)| view.says("key", word)).map(|(_, cut)| *cut).collect();
    if view.numbers().count() == 2 {
        // `quarter key`: the number before the word is the key's.
        let is_key = |at: usize| matches!(view.kind_at(at + 1), Some("key"));
        let keys: Vec<_> = view.numbers().filter(|(at, _)| is_key(*at)).collect();
        let own = if let [own] = keys[..] { Some(own) } else { None };
        let skip: Vec<usize> = own.iter().map(|(at, _)| *at).collect();
        let roles = assign(view, &["shaft"], &skip, system)?;
        let ((Some((_, key)), []) | (None, [(_, key, _)])) = (own, &roles.free[..]) else {
            return None;
        };
        let shaft = roles.num("shaft")?;
        if let [cut] = wrong[..] {
            let hub = if view.types(&["hub", "and hub"]) { " hub" } else { "" };
            return Some(Said::plain(format!(
                "keyway for {}{hub} {cut} {}",
                shaft.plain(system),
                key.plain(system)
            )));
        }
        return Some(Said::ask(
            "the standard key of a shaft, or a key of that size?",
            vec![
                format!("keyway for {}", shaft.plain(system)),
                format!("inch key of bar stock {}", key.plain(system)),
            ],
        ));
    }
    if !wrong.is_empty() {
        return None;
    }
    let size = only_number(view)?;
    if !view.has("shaft") {
        let text = size.plain(system);
        return Some(Said::ask(
            "the shaft's size or the key's is not said",
            vec![
                format!("keyway for {text}"),
                format!(
                    "{} {text}",
                    if text.ends_with("mm") { "metric key" } else { "inch key of bar stock" }
                ),
            ],
        ));
    }
    Some(Said::plain(format!("keyway for {}", size.plain(system))))
}

/// ISO 2768, for sizes without a tolerance.
pub(crate) fn general(view: &View, system: System) -> Option<Said> {
    view.only(&["untoleranced", "grade", "state", "role", "block"], |token| {
        matches!(token, Token::Number(_) | Token::General(_))
    })?;
    let size = only_number(view)?.plain(system);
    let is_alone = !view.has("grade") && !view.has("state") && !view.has("role");
    if view.has("block") && is_alone && system == System::Inches && size.ends_with("in") {
        return Some(Said::plain(format!("title block {size}")));
    }
    let by_standard = view.one(|token| match token {
        Token::General(letter) => Some(*letter),
        _ => None,
    });
    let mut grades = view.words("grade");
    let by_word = grades.next();
    if grades.any(|other| Some(other) != by_word) {
        return None;
    }
    let is_named = (0..view.items.len()).any(|at| view.said(at).starts_with("general "));
    if !view.has("untoleranced") && !view.has("block") && by_standard.is_none() && !is_named {
        return None;
    }
    if view.words("role").any(|role| !matches!(role, "od" | "id" | "long"))
        || view.words("state").count() > 1
    {
        return None;
    }
    let edge = view
        .word("state")
        .filter(|edge| *edge != "length")
        .map_or_else(String::new, |edge| format!(" {edge}"));
    let letter = match (by_standard, by_word) {
        (Some(a), Some(b)) if !b.starts_with(a) => return None,
        (Some(a), _) => a.to_string(),
        (None, Some(word)) => word.to_owned(),
        (None, None) => {
            let block = size.ends_with("in").then(|| format!("title block {size}"));
            let block = block.filter(|_| edge.is_empty());
            let classes = ["m", "c", "f"].map(|class| format!("{size} general {class}{edge}"));
            return Some(Said::ask(
                "the class is not said",
                block.into_iter().chain(classes).collect(),
            ));
        }
    };
    Some(Said::plain(format!("{size} general {letter}{edge}")))
}

/// A standard tolerance.
pub(crate) fn grade(view: &View, system: System) -> Option<Said> {
    view.only(&[], |token| matches!(token, Token::Number(_) | Token::Grade(_)))?;
    let grade = view.one(|token| match token {
        Token::Grade(grade) => Some(*grade),
        _ => None,
    })?;
    let size = only_number(view)?;
    // An IT grade is ISO 286's, whatever unit the size is in.
    let is_iso = view.items.iter().any(|item| {
        matches!(item.token, Token::Grade(_)) && view.text[item.at.clone()].starts_with("IT")
    });
    let text = if is_iso && size.plain(system).ends_with("in") {
        let mm = format!("{:.7}", size.mm(system));
        format!("{}mm", mm.trim_end_matches('0').trim_end_matches('.'))
    } else {
        size.plain(system)
    };
    Some(Said::plain(format!("{text} grade {grade}")))
}

/// Words of fits that hold by interference.
pub(super) const HOLDS: [&str; 6] =
    ["light press", "drive", "press", "heavy drive", "heavy press", "shrink"];

/// A bushing that a bought pin or screw goes into is its hub.
fn in_bushing(view: &View) -> View {
    let is_pin = view.says("bought", "shoulder screw") || view.says("bought", "dowel");
    let mut items = view.items.clone();
    for item in items.iter_mut().filter(|_| is_pin) {
        if matches!(item.token, Token::Word { kind: "bushing", .. }) {
            item.token = Token::Word { name: "hub", kind: "hub" };
        }
    }
    View { items, text: view.text.clone() }
}

/// `1/2 shoulder bolt in a 1/2 H8 hole`: both by their names, of one size.
fn in_hole(view: &View, class: &str, system: System) -> Option<Said> {
    let [name] = view.words("bought").collect::<Vec<_>>()[..] else { return None };
    let sizes: Vec<String> = view.numbers().map(|(_, num)| num.plain(system)).collect();
    let is_one = sizes.iter().all(|size| *size == sizes[0]);
    let others = ["fit", "head", "material", "vague", "hub"];
    let is_plain = matches!(name, "shoulder screw" | "dowel")
        && view.has("hole")
        && view.count(|token| matches!(token, Token::Hole(_))) == 1
        && view.count(|token| matches!(token, Token::Shaft(_) | Token::Span(..))) == 0
        && !others.iter().any(|kind| view.has(kind));
    (is_plain && is_one && matches!(sizes.len(), 1 | 2))
        .then(|| Said::plain(format!("{name} {0}, hole {0} {class}", sizes[0])))
}

/// Pins and bar that are bought, alone or with a fit.
#[allow(clippy::too_many_lines, reason = "one rule after another, each short")]
pub(crate) fn bought(view: &View, system: System) -> Option<Said> {
    // `a shoulder screw turning in a bronze bushing`: what it goes into.
    let view = &in_bushing(view);
    view.only(&["bought", "fit", "hole", "shaft", "head", "material", "vague", "hub"], |token| {
        matches!(
            token,
            Token::Number(_)
                | Token::Shaft(_)
                | Token::Hole(_)
                | Token::Bearing(..)
                | Token::Span(..)
        )
    })?;
    if let Some(hole) = view.one(|token| match token {
        Token::Hole(class) => Some(class),
        _ => None,
    }) {
        return in_hole(view, hole, system);
    }
    if view.count(|token| matches!(token, Token::Span(..))) > 0 {
        return as_measured(view, system);
    }
    // `dowel in dom tube`: beside another part the tube is what holds it.
    let mut names: Vec<&str> = view.words("bought").collect();
    names.dedup();
    let is_holder = names.len() > 1 && names.contains(&"tube");
    names.retain(|name| !is_holder || *name != "tube");
    let [name] = names[..] else { return None };
    if view.words("head").any(|head| head != "ream") || view.has("vague") {
        let [vague] = view.words("vague").collect::<Vec<_>>()[..] else { return None };
        let size = only_number(view)?.plain(system);
        let is_plain = vague == "tapped" && name == "dowel" && size.ends_with("in");
        let hub = hub_of(view, is_holder)?;
        return (is_plain && !view.has("head") && !view.has("fit")).then(|| {
            let each = TAPPED.iter().map(|word| format!("dowel {size}, {word}{hub}"));
            Said::ask("how tight is not said", each.collect())
        });
    }
    let size = only_number(view)?;
    let text = size.plain(system);
    let is_m6 = view.tokens().any(|token| matches!(token, Token::Shaft(class) if class == "m6"));
    if view.tokens().any(|token| matches!(token, Token::Shaft(class) if class != "m6")) {
        return None;
    }
    let fit = match fit_of(view) {
        Some(Fit::Word(word)) => Some(word),
        Some(Fit::Shaft(_)) => None,
        Some(_) => return None,
        None => match (view.words("fit").count(), view.word("fit")) {
            (0, _) => None,
            // `m6` beside the word is the pin's own class.
            (1, word) if is_m6 => word,
            _ => return None,
        },
    };
    // `half inch silver steel in a reamed hole, is it a fit`: of which?
    let asks_fit = view.has("hole") && view.types(&["fit", "a fit", "fits"]);
    if fit.is_none()
        && asks_fit
        && !view.has("fit")
        && matches!(name, "silver steel" | "drill rod" | "silver" | "drillrod")
    {
        let bar = if name.starts_with("silver") { "silver steel" } else { "drill rod" };
        let each = ["sliding", "running", "press"].map(|word| format!("{bar} {text}, {word}"));
        return Some(Said::ask("how it is to fit is not said", each.to_vec()));
    }
    let material = hub_of(view, is_holder)?;
    let is_metric = text.ends_with("mm");
    let name = match name {
        "dowel" if is_m6 => "m6 dowel pin",
        "dowel" => "dowel",
        "drillrod" | "drill rod" => "drill rod",
        "silver" | "silver steel" => "silver steel",
        "crs" => "low-carbon cold drawn bar",
        "shoulder screw" if is_metric => "f9 metric shoulder screw",
        "shoulder screw" => "inch shoulder screw",
        "tube" if !is_metric => "tube",
        "tube outside" if is_metric => "metric drawn tube outside",
        "tube outside" => "drawn-over-mandrel tube outside",
        "tube bore" if !is_metric => "drawn-over-mandrel tube bore",
        _ => return None,
    };
    if name == "tube" {
        return either_side_of_a_tube(view, &text, fit, &material);
    }
    if name == "f9 metric shoulder screw" {
        let rest = fit.map_or(String::new(), |word| format!(", {word}{material}"));
        return Some(Said::ask(
            "metric shoulder screws are sold as f9 and as h8",
            ["f9", "h8"].map(|class| format!("{class} metric shoulder screw {text}{rest}")).into(),
        ));
    }
    if name == "low-carbon cold drawn bar" && is_metric {
        let rest = fit.map_or(String::new(), |word| format!(", {word}{material}"));
        return Some(Said::ask(
            "metric bar goes by the class it was ordered to",
            ["h9", "h10", "h11"].map(|class| format!("{class} bright bar {text}{rest}")).into(),
        ));
    }
    match (name, fit) {
        // As bought it varies by more than a press: some of it would not hold.
        ("low-carbon cold drawn bar", Some(word)) if HOLDS.contains(&word) => Some(Said::ask(
            "bar as bought varies by more than a press does: is it turned?",
            vec![format!("{text} {word}{material}"), format!("{name} {text}, {word}{material}")],
        )),
        ("dowel", None) if is_metric => Some(Said::ask(
            "kind and fit are not said",
            vec![format!("m6 dowel pin {text}, press"), format!("m6 dowel pin {text}, slip")],
        )),
        ("m6 dowel pin", None) if view.has("hole") || view.says("head", "ream") => Some(Said::ask(
            "the fit is not said",
            ["press", "slip"].map(|word| format!("{name} {text}, {word}")).to_vec(),
        )),
        ("dowel", Some(word)) if is_metric && !is_m6 => Some(Said::ask(
            "its standard is not said",
            vec![
                format!("m6 dowel pin {text}, {word}{material}"),
                format!("ASME metric dowel pin {text}, {word}{material}"),
            ],
        )),
        ("dowel", None) if view.has("hole") || view.says("head", "ream") || view.has("hub") => {
            Some(Said::ask(
                "the fit is not said",
                vec![format!("dowel {text}, press"), format!("dowel {text}, slip")],
            ))
        }
        ("inch shoulder screw", None)
            if view.has("hole") || view.says("head", "ream") || view.has("hub") =>
        {
            Some(Said::ask(
                "the fit is not said",
                vec![format!("{name} {text}, running"), format!("{name} {text}, sliding")],
            ))
        }
        (name, None) => (material.is_empty() && !view.has("head"))
            .then(|| Said::plain(format!("{name} {text}"))),
        (name, Some(word)) => Some(Said::plain(format!("{name} {text}, {word}{material}"))),
    }
}

/// `my dowels mic 6.003 to 6.005, pressed in`: what they measure, and a word.
fn as_measured(view: &View, system: System) -> Option<Said> {
    let span = limits(view, system).filter(|_| view.numbers().next().is_none())?;
    let Fit::Word(word) = fit_of(view)? else { return None };
    let is_dowel = view.has("bought") && view.words("bought").all(|name| name == "dowel");
    if !is_dowel || view.has("head") || view.has("vague") {
        return None;
    }
    Some(Said::plain(format!("dowel {span}, {word}{}", hub_of(view, false)?)))
}

/// `, hub NAME`: the metal that holds it, or the tube.
fn hub_of(view: &View, is_tube: bool) -> Option<String> {
    match (view.words("material").count(), is_tube) {
        (0, false) => Some(String::new()),
        (0, true) => Some(", hub dom".to_owned()),
        (1, false) => Some(format!(", hub {}", view.word("material")?)),
        _ => None,
    }
}

/// A tube's figure is its outside or its bore; a shaft in it, or a hub of it, is
/// another question's.
fn either_side_of_a_tube(
    view: &View,
    size: &str,
    fit: Option<&str>,
    material: &str,
) -> Option<Said> {
    let is_other = ["hole", "shaft", "hub"].iter().any(|kind| view.has(kind));
    let rest = fit.map_or(String::new(), |word| format!(", {word}{material}"));
    (!is_other).then(|| {
        Said::ask(
            "the tube's outside or its bore is not said",
            ["outside", "bore"].map(|side| format!("dom tube {side} {size}{rest}")).into(),
        )
    })
}
