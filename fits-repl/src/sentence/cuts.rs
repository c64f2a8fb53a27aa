//! At the machine: plans and logs, odds, reamers, drills, sizes, settings.

use super::{
    Said,
    fits::{Fit, fit_of, is_nominal, limit_places, limits},
    roles::assign,
    token::{Num, System, Token, Unit},
    view::View,
};

/// Bore or turn, from where the work is now.
pub(super) fn plan(view: &View, system: System) -> Option<Said> {
    job(view, system, false)
}

/// The odds of hitting a size.
pub(super) fn rehearse(view: &View, system: System) -> Option<Said> {
    job(view, system, true)
}

struct Work {
    verb: &'static str,
    is_said: bool,
}

#[allow(clippy::too_many_lines, reason = "one rule after another, each short")]
fn job(view: &View, system: System, is_rehearsal: bool) -> Option<Said> {
    view.only(
        &[
            "head",
            "start",
            "reads",
            "fit",
            "hole",
            "shaft",
            "hub",
            "bushing",
            "instrument",
            "material",
            "target",
            "role",
        ],
        |token| {
            matches!(
                token,
                Token::Number(_)
                    | Token::Deviations { .. }
                    | Token::Span(..)
                    | Token::Hole(_)
                    | Token::Shaft(_)
                    | Token::Pair(_)
                    | Token::InchClass(_)
            )
        },
    )?;
    let mut verb: Option<&'static str> = None;
    let mut dial = None;
    let mut odds = false;
    let mut left = false;
    let mut heads = 0;
    for head in view.words("head") {
        heads += 1;
        match head {
            "bore" | "turn" | "turnto" => {
                let is = if head == "bore" { "bore" } else { "turn" };
                if verb.is_some_and(|known| known != is) {
                    return None;
                }
                verb = Some(is);
            }
            "odds" => odds = true,
            "allow" => left = true,
            "passes" | "suit" => {}
            "dial" | "dial diameter" => dial = Some("diameter"),
            "dial radius" => dial = Some("radius"),
            _ => return None,
        }
    }
    if odds != is_rehearsal {
        return None;
    }
    if left {
        return still_left(view, system, verb);
    }
    if view.words("role").any(|role| !matches!(role, "od" | "id")) {
        return None;
    }
    let is_hole = view.has("hole") || view.has("hub") || view.says("role", "id");
    let is_shaft = view.has("shaft") || view.says("role", "od");
    let skip = limit_places(view);
    let toleranced = limits(view, system);
    let fit = fit_of(view);
    if fit.is_some() && toleranced.is_some() {
        return None;
    }
    let numbers: Vec<(usize, &Num)> = view.numbers().filter(|(at, _)| !skip.contains(at)).collect();
    let near_start = |at: usize| {
        let word = |place: Option<usize>| {
            place
                .and_then(|place| view.items.get(place))
                .is_some_and(|item| matches!(item.token, Token::Word { kind: "start", .. }))
        };
        word(at.checked_sub(1))
            || view.items.get(at + 1).is_some_and(
                |item| matches!(item.token, Token::Word { kind: "start", name } if name != "from"),
            )
    };
    // The finished size, and where the work is.
    let (target, start): (Option<&Num>, &Num) = match (&toleranced, &numbers[..]) {
        (Some(_), [(_, start)]) => (None, start),
        (None, [(a, x), (b, y)]) => {
            let class_at = view.items.iter().position(|item| {
                matches!(
                    item.token,
                    Token::Hole(_)
                        | Token::Shaft(_)
                        | Token::Pair(_)
                        | Token::InchClass(_)
                        | Token::Word { kind: "fit", .. }
                )
            });
            let first_starts = near_start(*a)
                && !(near_start(*b)
                    && b.abs_diff(*a) > 1
                    && matches!(
                        view.items.get(b.wrapping_sub(1)).map(|item| &item.token),
                        Some(Token::Word { kind: "start", .. })
                    ));
            let second_starts = matches!(
                view.items.get(b.wrapping_sub(1)).map(|item| &item.token),
                Some(Token::Word { kind: "start", .. })
            ) || (near_start(*b) && !first_starts);
            match (first_starts, second_starts) {
                (true, false) => (Some(y), x),
                (false, true) => (Some(x), y),
                _ => {
                    // The class stands beside the finished size.
                    let class_at = class_at?;
                    let gap = |at: usize| {
                        if at < class_at { (class_at - at) * 2 } else { (at - class_at) * 2 + 1 }
                    };
                    if gap(*a) < gap(*b) { (Some(x), y) } else { (Some(y), x) }
                }
            }
        }
        _ => return None,
    };
    let target_mm = match target {
        Some(num) => num.mm(system),
        None => view
            .tokens()
            .find_map(|token| match token {
                Token::Span(low, _) => Some(low.mm(system)),
                _ => None,
            })
            .or_else(|| {
                skip.first().and_then(|at| match &view.items.get(*at)?.token {
                    Token::Number(num) => Some(num.mm(system)),
                    _ => None,
                })
            })?,
    };
    let start_mm = start.mm(system);
    let bigger = start_mm > target_mm;
    // Which work: said, or taken from what the class or the noun can only be.
    let by_class = match &fit {
        Some(Fit::Hole(_)) => Some("bore"),
        Some(Fit::Shaft(_)) => Some("turn"),
        _ => None,
    };
    let owner = assign(view, &["hole", "shaft"], &skip, system).and_then(|roles| {
        roles
            .taken
            .iter()
            .find(|taken| taken.num == *start)
            .map(|taken| (taken.by, taken.is_measured))
    });
    let by_noun = match (owner, is_hole, is_shaft) {
        (Some(("hole", _)), ..) | (None, true, false) => Some("bore"),
        (Some(("shaft", _)), ..) | (None, false, true) => Some("turn"),
        _ => None,
    };
    if verb.is_none()
        && (view.says("head", "suit")
            || view.has("asking") && view.has("shaft") && view.has("hole"))
    {
        return None;
    }
    // What a part reads is judged, where nothing says that it is still to be cut.
    if verb.is_none() && !is_rehearsal && !view.has("start") && view.has("reads") {
        return None;
    }
    // The part that is there is not the one to cut.
    if let (Some(verb), Some((owner, true))) = (verb, owner)
        && (verb == "bore") != (owner == "hole")
    {
        return None;
    }
    // `I bored it …, what's the shaft now?` asks for the other part.
    if verb.is_none() && view.text.to_lowercase().contains("what's the") {
        return None;
    }
    let starts = view.has("start") || view.says("connector", "target");
    // `25 g6, at 25.2, how much to take off` is a reading.
    if verb.is_none()
        && !view.says("head", "passes")
        && !is_rehearsal
        && view.types(&["how much", "how much to take off", "much"])
    {
        return None;
    }
    let work = match verb.or(by_class) {
        Some(is) => Work { verb: is, is_said: verb.is_some() },
        None if starts || is_rehearsal => match (by_noun, &fit) {
            (Some(is), _) => Work { verb: is, is_said: false },
            // Only a shaft can be over its size and still to be cut.
            (None, Some(Fit::Word(_) | Fit::Inch(_) | Fit::Pair(_))) if bigger => {
                Work { verb: "turn", is_said: false }
            }
            _ => return None,
        },
        None => return None,
    };
    // A noun alone starts nothing: two sizes and a class are two parts.
    if verb.is_none() && !is_rehearsal && is_hole && is_shaft && !view.has("start") {
        return None;
    }
    if heads == 0 && !starts {
        return None;
    }
    if verb.is_some() && by_class.is_some() && verb != by_class {
        return None;
    }
    // Bored from below, turned from above, and not from nothing.
    let is_bore = work.verb == "bore";
    if is_bore == bigger
        || (start_mm - target_mm).abs() < 1e-9
        || start_mm < 0.2 * target_mm
        || start_mm > 3.0 * target_mm
    {
        return None;
    }
    let instrument = match (view.word("instrument"), view.words("instrument").count()) {
        (Some(name), 1) => format!(" with {name}"),
        (None, _) => String::new(),
        _ => return None,
    };
    let feature = if is_bore { "hole" } else { "shaft" };
    let material = match view.word("material") {
        Some(name) if view.words("material").count() == 1 => format!(", {feature} {name}"),
        Some(_) => return None,
        None => String::new(),
    };
    let from = start.plain(system);
    let lead = if is_rehearsal { "rehearse" } else { work.verb };
    let head = match (&toleranced, &fit, target) {
        (Some(text), None, None) => format!("{lead} {feature} {text}"),
        (None, Some(fit), Some(num)) => {
            let size = num.plain(system);
            let mate = if is_bore {
                view.has("shaft") || view.has("bushing")
            } else {
                view.has("hole") || view.has("bushing")
            };
            let is_measured = !is_nominal(num, system);
            let own_class = matches!(fit, Fit::Hole(_) | Fit::Shaft(_));
            if own_class {
                if is_measured && !num.is_fraction && num.places > 2 {
                    return None;
                }
                format!("{lead} {size} {}", fit.text())
            } else if is_measured || (view.says("head", "suit") && mate) {
                if !mate && !view.has("bushing") || is_rehearsal || !matches!(fit, Fit::Word(_)) {
                    return None;
                }
                // The mate as it measures; what it is made of is the mate's.
                let mate = if is_bore { "shaft" } else { "hole" };
                let material = match view.word("material") {
                    Some(name) => format!(", {mate} {name}"),
                    None => String::new(),
                };
                return Some(with_dial(
                    dial,
                    format!(
                        "{} {mate} {size}, {} from {from}{instrument}{material}",
                        work.verb,
                        fit.text()
                    ),
                ));
            } else {
                format!("{lead} {size} {}", fit.text())
            }
        }
        (None, None, Some(num)) => {
            // `bore 3/4 from .735`: to what fit?
            if !work.is_said || !view.has("start") || is_rehearsal || !is_nominal(num, system) {
                return None;
            }
            let size = num.plain(system);
            let choices = ["sliding", "press"]
                .iter()
                .map(|word| format!("{} {size} {word} from {from}{instrument}", work.verb));
            return Some(Said::ask("how it is to fit is not said", choices.collect()));
        }
        _ => return None,
    };
    if is_rehearsal && instrument.is_empty() {
        let names: &[&str] = if is_bore {
            &["bore gauge", "telescoping gauge"]
        } else {
            &["micrometer", "calliper"]
        };
        let choices = names.iter().map(|name| format!("{head} from {from} with {name}{material}"));
        return Some(Said::ask("what it is measured with is not said", choices.collect()));
    }
    Some(with_dial(dial, format!("{head} from {from}{instrument}{material}")))
}

/// `turn 1.000 g6, .012 to go`: off the diameter, or on each side?
fn still_left(view: &View, system: System, verb: Option<&'static str>) -> Option<Said> {
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

/// The dial's setting first, then the job.
fn with_dial(dial: Option<&str>, query: String) -> Said {
    let mut lines: Vec<String> = dial.map(|dial| format!("dial {dial}")).into_iter().collect();
    lines.push(query);
    Said::Plain(lines)
}

/// The reamer for a hole.
pub(super) fn ream(view: &View, system: System) -> Option<Said> {
    view.only(&["head", "fit", "hole"], |token| {
        matches!(token, Token::Number(_) | Token::Hole(_) | Token::Pair(_) | Token::InchClass(_))
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
        Some(Fit::Shaft(_)) => return None,
        Some(fit) => fit.text().to_owned(),
        // A reamer with no class said makes H7.
        None => "H7".to_owned(),
    };
    Some(Said::plain(format!("ream {} {fit}", size.plain(system))))
}

/// A drill by its name, or the nearest to a size.
pub(super) fn drill(view: &View, system: System) -> Option<Said> {
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
        if !view.has("head") && view.has("asking") && gauge.starts_with('#') {
            return Some(Said::ask(
                "a drill or a screw is not said",
                vec![format!("drill {gauge}"), format!("{gauge} clearance")],
            ));
        }
        return view.has("head").then(|| Said::plain(format!("drill {gauge}")));
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

/// A length in both units, a difference, a sum.
pub(super) fn size(view: &View, system: System) -> Option<Said> {
    view.only(&["unit", "less", "more", "half"], |token| {
        matches!(
            token,
            Token::Number(_) | Token::Plus | Token::Minus | Token::Gauge(_) | Token::PerInch(_)
        )
    })?;
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
            Token::Word { kind: "unit" | "small" | "asking" | "connector" | "half", .. }
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

/// How the dials read, what bare numbers are, the gauge in use.
pub(super) fn settings(view: &View, system: System) -> Option<Said> {
    view.only(&["head", "unit", "instrument", "role"], |token| matches!(token, Token::Number(_)))?;
    let mut lines = Vec::new();
    let reads = view.words("head").find_map(|head| match head {
        "dial diameter" => Some("diameter"),
        "dial radius" => Some("radius"),
        _ => None,
    });
    if view
        .words("head")
        .any(|head| !matches!(head, "dial" | "dial diameter" | "dial radius" | "remember"))
    {
        return None;
    }
    if let Some(reads) = reads {
        lines.push(format!("dial {reads}"));
    }
    let numbers: Vec<_> = view.numbers().map(|(_, num)| num).collect();
    let graduation = match numbers[..] {
        [] => None,
        [num] if view.says("role", "division") || view.says("head", "dial") => Some(num),
        _ => return None,
    };
    if let Some(num) = graduation {
        if num.mm(system) > 0.5 || reads.is_none() && !view.says("role", "division") {
            return None;
        }
        lines.push(format!("dial graduation {}", num.plain(system)));
    }
    match (view.word("unit"), view.words("unit").count()) {
        (Some(unit), 1) if lines.is_empty() => match unit {
            "inch" => lines.push("units in".into()),
            "mm" => lines.push("units mm".into()),
            _ => return None,
        },
        (None, _) => {}
        _ => return None,
    }
    if let Some(instrument) = view.word("instrument") {
        // A setting is changed where that is said, not by a name alone.
        let is_asked = view.text.to_lowercase().split(' ').any(|word| {
            [
                "measure",
                "use",
                "using",
                "set",
                "remember",
                "always",
                "default",
                "instrument",
                "keep",
            ]
            .contains(&word)
        });
        if view.words("instrument").count() > 1 || !is_asked {
            return None;
        }
        lines.push(format!("instrument {instrument}"));
    }
    (!lines.is_empty()).then_some(Said::Plain(lines))
}

/// Where the last answer's figures come from.
pub(super) fn why(view: &View, _: System) -> Option<Said> {
    view.only(&["head"], |_| false)?;
    (view.words("head").count() == 1).then(|| Said::plain("why"))
}

/// Help on a topic.
pub(super) fn help(view: &View, _: System) -> Option<Said> {
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

pub(super) fn trimmed(value: f64) -> String {
    let text = format!("{value:.5}");
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
}

/// An entry of the log as it is being said.
#[derive(Default)]
struct Spoken {
    mode: &'static str,
    dialled: Option<Num>,
    readings: Vec<Num>,
    /// Numbers before any verb.
    loose: Vec<Num>,
    is_off: bool,
}

/// Nobody dials whole inches: two and more are thou.
fn is_thou(num: &Num, system: System) -> bool {
    num.unit.is_none()
        && system == System::Inches
        && num.value >= 2.0
        && num.places == 0
        && !num.is_fraction
}

fn dialled(num: &Num, system: System) -> String {
    if is_thou(num, system) {
        Num { unit: Some(Unit::Thou), ..num.clone() }.plain(system)
    } else {
        num.plain(system)
    }
}

fn dialled_mm(num: &Num, system: System) -> f64 {
    if is_thou(num, system) { num.value * 0.0254 } else { num.mm(system) }
}

impl Spoken {
    /// A pass with its reading: what comes next is another.
    fn is_whole(&self) -> bool {
        !self.readings.is_empty()
    }

    /// `took 0.2 off`: the diameter, or each side?
    fn each_side(&self, system: System) -> Option<Vec<String>> {
        let dial = self
            .dialled
            .as_ref()
            .filter(|_| self.mode == "cut" && self.is_off && self.readings.is_empty())?;
        let twice =
            Num { value: dial.value * 2.0, text: trimmed(dial.value * 2.0), ..dial.clone() };
        Some(vec![
            format!("cut {}", dialled(dial, system)),
            format!("cut {}", dialled(&twice, system)),
        ])
    }

    /// The plain entries of what was said so far.
    fn flush(
        &mut self,
        system: System,
        lines: &mut Vec<String>,
        first: &mut Option<(Num, Num)>,
    ) -> Option<()> {
        let mut said = std::mem::take(self);
        if said.dialled.is_none() && matches!(said.mode, "again" | "spring" | "reads") {
            let loose = std::mem::take(&mut said.loose);
            said.readings.splice(0..0, loose);
        }
        if !said.loose.is_empty() {
            return None;
        }
        let mut readings = said.readings.iter();
        match (said.mode, &said.dialled) {
            ("cut", Some(dial)) => match readings.next() {
                Some(reading) => {
                    if reading.mm(system) < 4.0 * dialled_mm(dial, system) {
                        return None;
                    }
                    first.get_or_insert_with(|| (dial.clone(), reading.clone()));
                    lines.push(format!(
                        "cut {} = {}",
                        dialled(dial, system),
                        reading.plain(system)
                    ));
                }
                None => lines.push(format!("cut {}", dialled(dial, system))),
            },
            ("spring", None) => match readings.next() {
                Some(reading) => lines.push(format!("spring = {}", reading.plain(system))),
                None => lines.push("spring".into()),
            },
            ("again" | "reads", None) => {
                if said.readings.is_empty() {
                    return None;
                }
            }
            ("", None) => {}
            _ => return None,
        }
        let near = |reading: &Num| {
            said.readings.first().is_some_and(|first| {
                (reading.mm(system) - first.mm(system)).abs() <= 0.02 * first.mm(system)
            })
        };
        for reading in readings {
            if !near(reading) {
                return None;
            }
            lines.push(format!("read {}", reading.plain(system)));
        }
        Some(())
    }
}

/// Spoken entries of the open log.
#[allow(clippy::too_many_lines, reason = "one rule after another, each short")]
pub(super) fn log(view: &View, system: System, is_open: bool) -> Option<Said> {
    view.only(&["entry", "instrument"], |token| matches!(token, Token::Number(_)))?;
    let entries: Vec<&str> = view.words("entry").collect();
    if entries.is_empty() {
        return None;
    }
    let mut lines: Vec<String> = Vec::new();
    let mut said = Spoken::default();
    let mut first: Option<(Num, Num)> = None;
    let (mut next, mut mistake, mut undo) = (false, false, false);
    let mut closing: Option<&str> = None;
    for (at, item) in view.items.iter().enumerate() {
        match &item.token {
            Token::Word { kind: "entry", name } => match *name {
                "cut" => {
                    if said.is_whole() {
                        said.flush(system, &mut lines, &mut first)?;
                    }
                    if !matches!(said.mode, "") && said.mode != "cut" {
                        return None;
                    }
                    if let Some(num) = said.loose.pop() {
                        said.dialled = Some(num);
                    }
                    said.mode = "cut";
                }
                "reads" => match said.mode {
                    "cut" if said.dialled.is_none() => return None,
                    "" if !said.loose.is_empty() => {
                        // `20 thou, mics 1.2285`
                        said.dialled = said.loose.pop();
                        said.mode = "cut";
                    }
                    "" => said.mode = "reads",
                    _ => {}
                },
                "spring" | "again" => {
                    if said.is_whole() {
                        said.flush(system, &mut lines, &mut first)?;
                    }
                    let repeats = said.mode == "spring" && *name == "again";
                    if !said.mode.is_empty() && !repeats {
                        return None;
                    }
                    if said.mode.is_empty() {
                        said.mode = name;
                    }
                }
                "in" => said.is_off |= view.said(at) == "off",
                "no reading" => {}
                "what next" => next = true,
                "undo" => undo = true,
                "mistake" => mistake = true,
                "done" => closing = Some("done"),
                "scrap" => closing = Some("scrap"),
                _ => return None,
            },
            Token::Number(num) => match said.mode {
                // `10 thou 1.2397`: dialled and read.
                "" if said.loose.len() == 1
                    && is_open
                    && num.mm(system) > 4.0 * dialled_mm(&said.loose[0], system) =>
                {
                    said.dialled = said.loose.pop();
                    said.mode = "cut";
                    said.readings.push(num.clone());
                }
                "" => said.loose.push(num.clone()),
                "cut" if said.dialled.is_none() => said.dialled = Some(num.clone()),
                _ => said.readings.push(num.clone()),
            },
            Token::Word { kind: "instrument", .. } => return None,
            _ => {}
        }
    }
    if let Some(both) = said.each_side(system) {
        return lines
            .is_empty()
            .then(|| Said::ask("off the diameter or off each side is not said", both));
    }
    said.flush(system, &mut lines, &mut first)?;
    if !is_open && lines.iter().any(|line| line.starts_with("read")) && first.is_none() {
        return None;
    }
    if undo || (mistake && lines.is_empty()) {
        if !lines.is_empty() || closing.is_some() {
            return None;
        }
        lines.push("undo".into());
    }
    if mistake && !undo && lines.first().is_some_and(|line| line != "undo") {
        return None;
    }
    if let Some(closing) = closing {
        lines.push(closing.into());
    }
    if next && closing.is_none() {
        lines.push("log".into());
    }
    if lines.is_empty() {
        return None;
    }
    if is_open {
        return Some(Said::Plain(lines));
    }
    // No job is open: which work is it? A plan for each that can be.
    let (dial, reading) = first?;
    let (unit, step) = match system {
        System::Inches => ("in", 25.4),
        System::Millimetres => ("mm", 1.0),
    };
    let (size, cut) = (reading.mm(system) / step, dialled_mm(&dial, system) / step);
    let places = if system == System::Inches { 4 } else { 3 };
    let outside = size + cut;
    let inside = size - cut;
    let room = 2.0 * cut;
    Some(Said::ask(
        "no job is open, so inside or outside is not known",
        vec![
            format!(
                "turn shaft {:.places$}{unit}..{:.places$}{unit} from {outside:.places$}{unit}",
                size - room,
                size - room + 0.001_f64.max(cut / 30.0)
            ),
            format!(
                "bore hole {:.places$}{unit}..{:.places$}{unit} from {inside:.places$}{unit}",
                size + room,
                size + room + 0.001_f64.max(cut / 30.0)
            ),
        ],
    ))
}
