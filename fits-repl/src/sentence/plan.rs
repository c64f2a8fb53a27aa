//! Bore or turn from where the work is, and the odds of it.

use crate::sentence::{
    Said,
    roles::assign,
    sizes::{Fit, fit_of, is_nominal, limit_places, limited_size, limits},
    token::{Num, System, Token},
    view::View,
    work::{aimed, each_cut, still_left, without_limits},
};

/// Bore or turn, from where the work is now.
pub(crate) fn plan(view: &View, system: System) -> Option<Said> {
    job(view, system, false).or_else(|| {
        takes_in(view)?;
        without_limits(view, system)
    })
}

/// The odds of hitting a size.
pub(crate) fn rehearse(view: &View, system: System) -> Option<Said> {
    job(view, system, true)
}

/// Nothing is said that a job does not know.
fn takes_in(view: &View) -> Option<()> {
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
            "role",
            "each-cut",
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
    )
}

#[allow(clippy::too_many_lines, reason = "one rule after another, each short")]
pub(crate) fn job(view: &View, system: System, is_rehearsal: bool) -> Option<Said> {
    takes_in(view)?;
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
            "dial diameter" | "dial radius" => {
                let counts = head.strip_prefix("dial ")?;
                if dial.is_some_and(|known| known != counts) {
                    return None;
                }
                dial = Some(counts);
            }
            _ => return None,
        }
    }
    if odds != is_rehearsal {
        return None;
    }
    if left {
        return still_left(view, system, verb);
    }
    if view.has("each-cut") || view.says("head", "passes") && view.numbers().count() == 3 {
        return each_cut(view, system, verb);
    }
    if view.words("role").any(|role| !matches!(role, "od" | "id")) {
        return None;
    }
    let is_hole = view.has("hole") || view.has("hub") || view.says("role", "id");
    let is_shaft = view.has("shaft") || view.says("role", "od");
    let skip = limit_places(view);
    let toleranced = limits(view, system);
    let fit = fit_of(view);
    // Typed without its capital: the verb says which part it is.
    let fit = match (fit, verb) {
        (Some(Fit::Shaft(class)), Some("bore")) => Some(Fit::Hole(class.to_ascii_uppercase())),
        (fit, _) => fit,
    };
    if fit.is_some() && toleranced.is_some() {
        return None;
    }
    let numbers: Vec<(usize, &Num)> = view.numbers().filter(|(at, _)| !skip.contains(at)).collect();
    let aim = match (&toleranced, &fit, &numbers[..]) {
        (Some(limits), None, []) => Some((limits.as_str(), None)),
        (None, Some(fit @ (Fit::Hole(_) | Fit::Shaft(_))), [(_, size)]) => {
            Some((fit.text(), Some(*size)))
        }
        _ => None,
    };
    // `1.250 +.001 -.000 bore` is a hole.
    let place = |is: fn(&Token) -> bool| view.items.iter().position(|item| is(&item.token));
    let is_verb = place(|token| matches!(token, Token::Word { kind: "head", .. }))
        < place(|token| matches!(token, Token::Number(_) | Token::Span(..)));
    let aims = heads == 0 && view.types(&["going for", "gunning for", "aiming for", "goal"]);
    let noun = match (is_hole, is_shaft) {
        (true, false) => Some("bore"),
        (false, true) => Some("turn"),
        _ => None,
    };
    if let Some((limits, size)) = aim
        && !is_rehearsal
        && (heads == 1 && is_verb || aims)
        && !view.has("asking")
        && let Some(verb) = verb.or(noun.filter(|_| aims))
    {
        let is_other = if verb == "bore" { is_shaft } else { is_hole };
        // `bore 20 g6` contradicts itself.
        let is_shafts = view.tokens().any(|token| matches!(token, Token::Shaft(_)));
        let is_other = is_other || (verb == "bore") == is_shafts && size.is_some();
        return (!is_other).then(|| aimed(view, system, verb, limits, size)).flatten();
    }
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
        None => limited_size(view, system)?,
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
    // A reamed hole is finished: to open it further is not what a fit word asks.
    if verb.is_none() && view.types(&["reamed", "reamed it"]) {
        return None;
    }
    // The part that is there is not the one to cut.
    if let (Some(verb), Some((owner, _))) = (verb, owner)
        && (verb == "bore") != (owner == "hole")
    {
        return None;
    }
    // `hole already at .7506, what do I turn the shaft`
    let start_at = numbers.iter().find(|(_, num)| std::ptr::eq(*num, start)).map(|(at, _)| *at)?;
    let before = view.items[..start_at].iter().rev().map(|item| &item.token);
    let is_of = before
        .take_while(|token| !matches!(token, Token::Number(_) | Token::Break))
        .take_while(|token| !matches!(token, Token::Word { kind: "start", name: "from" }))
        .find_map(|token| match token {
            Token::Word { kind: kind @ ("hole" | "shaft"), .. } => Some(*kind),
            _ => None,
        });
    if let (Some(verb), Some(part)) = (verb, is_of)
        && (verb == "bore") != (part == "hole")
        && near_start(start_at)
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
    // Bar is larger than what is made of it.
    let is_bar = || bigger && !is_hole && view.types(&["bar", "round bar", "stock", "blank"]);
    let work = match verb.or(by_class).or_else(|| is_bar().then_some("turn")) {
        Some(is) => is,
        None if starts || is_rehearsal => match (by_noun, &fit) {
            (Some(is), _) => is,
            // Only a shaft can be over its size and still to be cut.
            (None, Some(Fit::Word(_) | Fit::Inch(_) | Fit::Pair(_))) if bigger => "turn",
            // To limits from above, or from below.
            (None, None) if toleranced.is_some() && is_rehearsal => {
                if bigger {
                    "turn"
                } else {
                    "bore"
                }
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
    let is_bore = work == "bore";
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
    let lead = if is_rehearsal { "rehearse" } else { work };
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
                        work,
                        fit.text()
                    ),
                ));
            } else {
                format!("{lead} {size} {}", fit.text())
            }
        }
        (None, None, Some(num)) => {
            // `bore 3/4 from .735`: to what fit?
            if verb.is_none() || !view.has("start") || is_rehearsal || !is_nominal(num, system) {
                return None;
            }
            let size = num.plain(system);
            let choices = ["sliding", "press"]
                .iter()
                .map(|word| format!("{work} {size} {word} from {from}{instrument}"));
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
    let plan = format!("{head} from {from}{instrument}{material}");
    // `boring to 3/4 H7 and it reads .7496`: what it reads is judged, or cut on from.
    if !is_rehearsal
        && dial.is_none()
        && material.is_empty()
        && matches!(fit, Some(Fit::Hole(_) | Fit::Shaft(_)))
        && view.has("reads")
        && !view.types(&["from", "passes", "how many passes"])
        && (start_mm - target_mm).abs() < 0.004 * target_mm
    {
        let judged = format!("{} = {from}{instrument}", head.strip_prefix(lead)?.trim_start());
        return Some(Said::ask("judged as it reads, or cut on?", vec![judged, plan]));
    }
    Some(with_dial(dial, plan))
}

/// The dial's setting first, then the job.
pub(crate) fn with_dial(dial: Option<&str>, query: String) -> Said {
    let mut lines: Vec<String> = dial.map(|dial| format!("dial {dial}")).into_iter().collect();
    lines.push(query);
    Said::Plain(lines)
}
