//! Reamers, drills, sizes and sums, settings, help.

use std::fmt::Write as _;

use crate::sentence::{
    Said,
    sizes::{Fit, fit_of, is_nominal},
    token::{Num, System, Token},
    tube::inside,
    view::{Item, View},
};

/// The reamer for a hole.
pub(crate) fn ream(view: &View, system: System) -> Option<Said> {
    if view.has("cuts") {
        return reamer_cut(view, system);
    }
    // What the pin is of does not change the reamer; over or under by how much would.
    let is_pins = view.numbers().count() == 2
        && view.types(&["silver steel", "drill rod", "ground stock", "bright bar"]);
    if view.types(&["oversize", "undersize"]) {
        return None;
    }
    let kinds: &[&str] = &["head", "fit", "hole", "shaft", "hub", "material"];
    view.only(if is_pins { kinds } else { &kinds[..5] }, |token| {
        matches!(
            token,
            Token::Number(_)
                | Token::Hole(_)
                | Token::Shaft(_)
                | Token::Pair(_)
                | Token::InchClass(_)
        )
    })?;
    if !view.says("head", "ream")
        || view.words("head").any(|head| !matches!(head, "ream" | "drill"))
    {
        return None;
    }
    let mut numbers = view.numbers();
    let (_, size) = numbers.next()?;
    if let Some((_, other)) = numbers.next()
        && (other.mm(system) - size.mm(system)).abs() > 1e-9
    {
        return None;
    }
    if !is_nominal(size, system) {
        return None;
    }
    let fit = match fit_of(view) {
        // A reamer makes holes: `h7` is typed without its capital; m6 is a pin's.
        Some(Fit::Shaft(class))
            if class.starts_with('h') && !view.types(&["dowel", "dowel pin"]) =>
        {
            class.to_ascii_uppercase()
        }
        Some(Fit::Shaft(_)) => return None,
        // A dowel comes to its own limits: the hole for it differs.
        Some(Fit::Word(word)) if view.types(&["dowel", "dowel pin"]) => {
            let size = size.plain(system);
            let choices = vec![format!("dowel {size}, {word}"), format!("ream {size} {word}")];
            return Some(Said::ask("for a dowel as it comes, or for a pin that is cut?", choices));
        }
        Some(fit) => fit.text().to_owned(),
        // A reamer with no class said makes H7.
        None => "H7".to_owned(),
    };
    Some(Said::plain(format!("ream {} {fit}", size.plain(system))))
}

/// A reamer by its size, what it cut, what it measures, and the pin in hand: each
/// number is what was named before it.
fn reamer_cut(view: &View, system: System) -> Option<Said> {
    view.only(&["head", "hole", "shaft", "cuts", "measures"], |token| {
        matches!(token, Token::Number(_))
    })?;
    if view.words("head").any(|head| head != "ream") || !view.has("head") {
        return None;
    }
    let (mut size, mut hole, mut pin, mut own) = (None, None, None, None);
    // The part spoken of, and whether the next number is its own.
    let mut of = "size";
    for item in &view.items {
        match &item.token {
            Token::Word { kind: "head", .. } => of = if size.is_none() { "size" } else { "reamer" },
            Token::Word { kind: "cuts" | "hole", .. } => of = "hole",
            Token::Word { kind: "shaft", .. } => of = "pin",
            Token::Word { kind: "measures", .. } if of == "size" && size.is_some() => of = "reamer",
            Token::Number(num) => {
                let slot = match of {
                    _ if size.is_none() && is_nominal(num, system) => &mut size,
                    "hole" => &mut hole,
                    "pin" => &mut pin,
                    "reamer" => &mut own,
                    _ => return None,
                };
                if slot.replace(num).is_some() {
                    return None;
                }
            }
            _ => {}
        }
    }
    let (size, hole) = (size?, hole?);
    let near = |num: &Num| (num.mm(system) - size.mm(system)).abs() < 0.02 * size.mm(system);
    if ![Some(hole), pin, own].into_iter().flatten().all(near) {
        return None;
    }
    let mut plain = format!("reamer {} cut {}", size.plain(system), hole.plain(system));
    for (word, num) in [("measures", own), ("pin", pin)] {
        if let Some(num) = num {
            let _ = write!(plain, ", {word} {}", num.plain(system));
        }
    }
    Some(Said::plain(plain))
}

/// A drill by its name, or the nearest to a size.
pub(crate) fn drill(view: &View, system: System) -> Option<Said> {
    view.only(&["head", "hole", "unit"], |token| {
        matches!(token, Token::Number(_) | Token::Gauge(_))
    })?;
    if let Some(gauge) = view.one(|token| match token {
        Token::Gauge(name) => Some(name.clone()),
        _ => None,
    }) {
        if view.numbers().next().is_some() || !view.has("head") && view.has("hole") {
            return (view.has("hole")
                && !view.has("head")
                && view.numbers().next().is_none()
                && gauge.starts_with('#'))
            .then(|| {
                Said::ask(
                    "a drill's size or a screw's is not said",
                    vec![format!("drill {gauge}"), format!("{gauge} clearance")],
                )
            });
        }
        let is_screw = matches!(
            &*gauge,
            "#0" | "#1" | "#2" | "#3" | "#4" | "#5" | "#6" | "#8" | "#10" | "#12"
        );
        if !view.has("head") && view.has("asking") && gauge.starts_with('#') {
            // No screw is a #29.
            if !is_screw {
                return Some(Said::plain(format!("drill {gauge}")));
            }
            return Some(Said::ask(
                "a drill or a screw is not said",
                vec![format!("drill {gauge}"), format!("{gauge} clearance")],
            ));
        }
        let is_drill = view.has("head") || gauge.starts_with("letter") && !view.has("unit");
        return is_drill.then(|| Said::plain(format!("drill {gauge}")));
    }
    if !view.has("head") || view.has("hole") {
        return None;
    }
    let mut numbers = view.numbers();
    let (_, size) = numbers.next()?;
    if numbers.next().is_some() {
        return None;
    }
    let whole = size.unit.is_none() && size.places == 0 && !size.is_fraction && size.value <= 80.0;
    if whole && size.value <= 13.0 {
        let text = &size.text;
        return Some(Said::ask(
            "a number drill or millimetres is not said",
            vec![format!("drill {text}mm"), format!("drill #{text}")],
        ));
    }
    // `what do I drill for 3/8`: to pass a screw, or to be tapped?
    if size.is_fraction
        && view.has("asking")
        && view.says("connector", "for")
        && !view.types(&["closest", "nearest", "next"])
    {
        let text = &size.text;
        return Some(Said::ask(
            "what the hole is for is not said",
            vec![
                format!("{text} clearance"),
                format!("thread {text} tap"),
                format!("drill {text}in"),
            ],
        ));
    }
    Some(Said::plain(format!("drill {}", size.plain(system))))
}

/// `from 26.4 to 25, how much on the dial`: what is left, by how the dial reads.
fn to_dial(view: &View, system: System) -> Option<Said> {
    view.only(&["dial", "job"], |token| matches!(token, Token::Number(_)))?;
    let numbers: Vec<_> = view.numbers().map(|(_, num)| num).collect();
    if let [left] = numbers[..] {
        return view.has("job").then(|| by_dial(view, left.plain(system)))?;
    }
    let [a, b] = numbers[..] else { return None };
    let (small, large) = if a.mm(system) < b.mm(system) { (a, b) } else { (b, a) };
    if large.mm(system) > 1.5 * small.mm(system) {
        return None;
    }
    by_dial(view, format!("{} - {}", large.plain(system), small.plain(system)))
}

/// What is left on the diameter, or half of it, by what the dial is said to read.
fn by_dial(view: &View, left: String) -> Option<Said> {
    match (view.says("dial", "radius"), view.says("dial", "diameter")) {
        (true, false) => Some(Said::plain(format!("({left})/2"))),
        (false, true) => Some(Said::plain(left)),
        (false, false) => Some(Said::ask(
            "a dial that reads the diameter, or one that reads the radius?",
            vec![left.clone(), format!("({left})/2")],
        )),
        (true, true) => None,
    }
}

/// A length in both units, a difference, a sum.
pub(crate) fn size(view: &View, system: System) -> Option<Said> {
    if view.has("dial") {
        return to_dial(view, system);
    }
    if view.has("role") {
        return inside(view, system);
    }
    if view.has("spread") {
        return spread(view, system);
    }
    if view.has("left") {
        return left(view, system);
    }
    // `what is 0.3937 in mm`; `I have 0.3937` is of a part.
    let is_of_a_part = |at: usize| {
        matches!(view.kind_at(at), Some("start"))
            && !matches!(&*view.said(at), "is" | "its" | "it's" | "it is")
    };
    if (0..view.items.len()).any(is_of_a_part) {
        return None;
    }
    view.only(&["unit", "less", "more", "half", "start"], |token| {
        matches!(
            token,
            Token::Number(_) | Token::Plus | Token::Minus | Token::Gauge(_) | Token::PerInch(_)
        )
    })?;
    // `is .7505 good`: against what is not said.
    // `fit for 10 mm`: which is not said.
    // `I use a .0001 mic`: of the gauge.
    let not_asked = ["good", "ok", "right", "correct", "fit", "fit for", "fits", "use", "using"];
    if view.types(&not_asked) {
        return None;
    }
    if let Some(pitch) = view.one(|token| match token {
        Token::PerInch(text) => Some(text.clone()),
        _ => None,
    }) {
        return (view.numbers().next().is_none()).then(|| Said::plain(format!("(1in)/{pitch}")));
    }
    if let Some(gauge) = view.one(|token| match token {
        Token::Gauge(name) => Some(name.clone()),
        _ => None,
    }) {
        return (view.numbers().next().is_none() && view.has("unit")).then(|| Said::plain(gauge));
    }
    let wanted = view.word("unit");
    // `thou 15 in mm`: a unit before its figure, or two, is said of something.
    let is_unit = |item: &Item| matches!(item.token, Token::Word { kind: "unit", .. });
    let is_led = view
        .items
        .windows(2)
        .any(|pair| is_unit(&pair[0]) && matches!(pair[1].token, Token::Number(_)));
    if is_led || view.items.iter().filter(|item| is_unit(item)).count() > 1 {
        return None;
    }
    let mut text = String::new();
    let mut numbers = 0;
    let mut expects = true;
    for item in &view.items {
        match &item.token {
            Token::Number(num) if expects => {
                numbers += 1;
                expects = false;
                // A bare number to be converted is in the unit that it is not wanted in.
                let bare_in = match wanted {
                    Some("mm" | "um") if view.numbers().count() == 1 => System::Inches,
                    Some("inch" | "thou") if view.numbers().count() == 1 => System::Millimetres,
                    _ => system,
                };
                text.push_str(&num.plain(bare_in));
            }
            Token::Plus | Token::Word { kind: "more", .. } if !expects => {
                text.push_str(" + ");
                expects = true;
            }
            Token::Minus | Token::Word { kind: "less", .. } if !expects => {
                text.push_str(" - ");
                expects = true;
            }
            Token::Word {
                kind: "unit" | "small" | "asking" | "connector" | "half" | "start",
                ..
            }
            | Token::Break => {}
            _ => return None,
        }
    }
    if view.has("half") {
        return (numbers == 1 && !expects && wanted.is_none())
            .then(|| Said::plain(format!("({text})/2")));
    }
    let alone = numbers == 1 && view.items.len() == 1;
    (numbers > 0
        && !expects
        && (numbers > 1
            || wanted.is_some()
            || alone
            || view.says("small", "-")
            || view.has("asking")))
    .then(|| Said::plain(text))
}

/// `I have .780 and want .750, how much to take off`: the one less the other.
fn left(view: &View, system: System) -> Option<Said> {
    view.only(&["left", "start", "wish"], |token| matches!(token, Token::Number(_)))?;
    let numbers: Vec<&Num> = view.numbers().map(|(_, num)| num).collect();
    let [a, b] = numbers[..] else { return None };
    let (large, small) = if a.mm(system) > b.mm(system) { (a, b) } else { (b, a) };
    // So little of it is a cut, not a size.
    let is_near = small.mm(system) > 0.5 * large.mm(system);
    is_near.then(|| Said::plain(format!("{} - {}", large.plain(system), small.plain(system))))
}

/// `readings 1.0002 1.0005 1.0003, spread`: the largest less the smallest.
fn spread(view: &View, system: System) -> Option<Said> {
    view.only(&["spread"], |token| matches!(token, Token::Number(_)))?;
    let mut sizes: Vec<&Num> = view.numbers().map(|(_, num)| num).collect();
    sizes.sort_by(|a, b| a.by_size(b, system));
    let (smallest, largest) = (sizes.first()?, sizes.last()?);
    let is_one_part = largest.mm(system) < 1.01 * smallest.mm(system);
    let apart = format!("{} - {}", largest.plain(system), smallest.plain(system));
    let all: Vec<String> = sizes.iter().map(|num| num.plain(system)).collect();
    let mean = format!("({})/{}", all.join(" + "), all.len());
    if view.words("spread").all(|word| word == "mean") {
        return (sizes.len() > 1 && is_one_part).then(|| Said::plain(mean));
    }
    (sizes.len() > 1 && is_one_part)
        .then(|| Said::ask("the widest apart, or their mean?", vec![apart, mean]))
}

/// Where the last answer's figures come from.
pub(crate) fn why(view: &View, _: System) -> Option<Said> {
    view.only(&["head"], |_| false)?;
    (view.words("head").count() == 1).then(|| Said::plain("why"))
}

/// Help on a topic.
pub(crate) fn help(view: &View, _: System) -> Option<Said> {
    view.only(&["head", "topic"], |_| false)?;
    if !view.says("head", "help") || view.words("head").any(|head| head != "help") {
        return None;
    }
    let mut topics = view.words("topic");
    let topic = topics.next();
    if topics.any(|other| Some(other) != topic) {
        return None;
    }
    Some(Said::plain(topic.map_or_else(|| "help".to_owned(), |topic| format!("help {topic}"))))
}

pub(crate) fn trimmed(value: f64) -> String {
    trimmed_to(5, value)
}

/// With so many decimals at most.
pub(crate) fn trimmed_to(places: usize, value: f64) -> String {
    let text = format!("{value:.places$}");
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
}
