//! A reading against its limits; a pair at another temperature.

use fits_core::{Length, standards::iso286::Class};

use crate::sentence::{
    Said,
    roles::assign,
    several::{Whose, whose},
    sizes::{
        Fit, fit_of, is_fit, is_nominal, limit_places, limited_size, limits, metals, nominal_of,
    },
    token::{Num, System, Token, Unit},
    tools::trimmed,
    view::View,
};

/// A reading against a class or limits.
#[allow(clippy::too_many_lines, reason = "one rule after another, each short")]
pub(crate) fn reading(view: &View, system: System) -> Option<Said> {
    view.only(
        &[
            "hole",
            "shaft",
            "hub",
            "head",
            "reads",
            "start",
            "instrument",
            "material",
            "should",
            "bushing",
            "heated",
        ],
        |token| {
            matches!(
                token,
                Token::Number(_)
                    | Token::Hole(_)
                    | Token::Shaft(_)
                    | Token::Deviations { .. }
                    | Token::Span(..)
                    | Token::Temperature(_)
                    | Token::Angle(_)
            )
        },
    )?;
    if view.words("head").any(|head| !matches!(head, "ok" | "left")) || view.has("should") {
        return None;
    }
    // `25 bore rusty, reads 25.02`: what was read is rust.
    if view.types(&["rusty", "rusted", "dirty", "muddy", "crusty"]) {
        return None;
    }
    // `80.02 one way, more the other`: one figure is half of what was read.
    let nominal = usize::from(view.classes().next().is_some());
    if view.types(&["the other", "other"]) && view.numbers().count() < 2 + nominal {
        return None;
    }
    let is_hole = view.has("hole") || view.has("hub");
    let is_shaft = view.has("shaft");
    if let Some(said) = spoken_limits(view, system) {
        return Some(said);
    }
    let skip = limit_places(view);
    let numbers: Vec<_> = view.numbers().filter(|(at, _)| !skip.contains(at)).collect();
    let instrument = match (view.word("instrument"), view.words("instrument").count()) {
        (Some(name), 1) => format!(" with {name}"),
        (None, _) => String::new(),
        _ => return None,
    };
    // `45 degrees` of a warm part, where millimetres are spoken.
    let is_metric = system == System::Millimetres;
    let temperature = match view.one(|token| match token {
        Token::Temperature(text) => Some(text.clone()),
        Token::Angle(text) if is_metric => Some(format!("{text}C")),
        _ => None,
    }) {
        None if view.count(|token| matches!(token, Token::Angle(_))) > 0 => return None,
        Some(text) => {
            let material = view.word("material").filter(|_| view.words("material").count() == 1)?;
            let feature = if is_hole { "hole" } else { "shaft" };
            format!(" at {text}, {feature} {material}")
        }
        None if view.has("material") || view.has("heated") => return None,
        None => String::new(),
    };
    let near = |size: f64, reading: f64| (size - reading).abs() <= 0.05 * size;
    if system == System::Inches
        && let Some(metric) = metric_class(view)
    {
        return reading(&metric, system);
    }
    if let Some(said) = unsaid_reading(view, system) {
        return Some(said);
    }
    let target = if let Some(text) = limits(view, system) {
        if view.tokens().any(|token| matches!(token, Token::Hole(_) | Token::Shaft(_))) {
            return None;
        }
        let [(_, reading)] = numbers[..] else { return None };
        let size = limited_size(view, system)?;
        if !near(size, reading.mm(system)) {
            return None;
        }
        let tail = format!("{text} = {}{instrument}{temperature}", reading.plain(system));
        if is_hole == is_shaft {
            return Some(Said::ask(
                "hole or shaft is not said",
                vec![format!("hole {tail}"), format!("shaft {tail}")],
            ));
        }
        return Some(Said::plain(format!("{} {tail}", if is_hole { "hole" } else { "shaft" })));
    } else {
        match fit_of(view)? {
            Fit::Hole(class) if !is_shaft => class,
            Fit::Shaft(class) if !is_hole => class,
            _ => return None,
        }
    };
    // Several readings, and the size beside its class.
    let mut numbers = numbers;
    if numbers.len() > 2
        && let Some(class_at) = view
            .items
            .iter()
            .position(|item| matches!(item.token, Token::Hole(_) | Token::Shaft(_)))
        && let Some(own) = numbers.iter().position(|(at, _)| at + 1 == class_at)
    {
        let size = numbers.remove(own);
        numbers.insert(0, size);
    }
    let [(a, x), (b, y), ..] = numbers[..] else { return None };
    let more: Vec<_> = numbers.iter().skip(2).collect();
    // The nominal number stands beside the class; the reading is the other.
    let class_at = view
        .items
        .iter()
        .position(|item| matches!(item.token, Token::Hole(_) | Token::Shaft(_)))?;
    let verb = |at: usize| {
        at.checked_sub(1).is_some_and(|before| matches!(view.kind_at(before), Some("reads")))
    };
    let beside = |at: usize| at + 1 == class_at || at == class_at + 1;
    let (size, reading) = match (is_nominal(x, system), is_nominal(y, system)) {
        (true, false) => (x, y),
        (false, true) => (y, x),
        _ if verb(b) && !verb(a) => (x, y),
        _ if verb(a) && !verb(b) => (y, x),
        _ if a + 1 == class_at && b > class_at => (x, y),
        _ if beside(b) && !beside(a) => (y, x),
        _ => return None,
    };
    if !near(size.mm(system), reading.mm(system)) || size == reading && !view.has("reads") {
        return None;
    }
    // Several readings after one verb; two verbs are two stories.
    if !more.is_empty() && view.words("reads").count() > 1 {
        return None;
    }
    let mut all = vec![reading];
    for (_, other) in more {
        if !near(reading.mm(system), other.mm(system))
            || is_nominal(other, system) && !is_nominal(reading, system)
        {
            return None;
        }
        all.push(other);
    }
    let joined = |by: &str| all.iter().map(|num| num.plain(system)).collect::<Vec<_>>().join(by);
    let readings = match whose(view, &all, system) {
        Whose::OnePlace => joined(" "),
        Whose::Places => joined("/"),
        Whose::Unsaid => {
            let of = |by| {
                format!("{} {target} = {}{instrument}{temperature}", size.plain(system), joined(by))
            };
            let why = "readings of several places, or of one place measured again?";
            return Some(Said::ask(why, vec![of("/"), of(" ")]));
        }
    };
    let plain = |readings: &str| {
        format!("{} {target} = {readings}{instrument}{temperature}", size.plain(system))
    };
    if view.says("reads", "beyond")
        && let Some(of_limit) = beyond_the_limit(size, reading, &target, system)
    {
        let choices = vec![plain(&readings), plain(&of_limit)];
        return Some(Said::ask("beyond the nominal size, or beyond the limit?", choices));
    }
    // A cut to go to is another question where nothing reads and a verb cuts.
    Some(Said::plain(plain(&readings)))
}

/// `0.02 over 20 H7`: what it reads where it is so much beyond the limit and not beyond
/// the nominal size; none where the two are one.
fn beyond_the_limit(size: &Num, reading: &Num, class: &str, system: System) -> Option<String> {
    let length = |num: &Num| num.plain(system).parse::<Length>().ok();
    let (nominal, read) = (length(size)?, length(reading)?);
    let limits = class.parse::<Class>().ok()?.limits(nominal).ok()?;
    let limit = if read > nominal { limits.upper() } else { limits.lower() };
    let sum = limit.checked_add(read.checked_sub(nominal).ok()?).ok()?;
    let said = if size.plain(system).ends_with("in") {
        format!("{}in", trimmed(sum.millimetres() / 25.4))
    } else {
        format!("{}mm", trimmed(sum.millimetres()))
    };
    (limit != nominal).then_some(said)
}

/// `30 h6 shaft at 1.1809`: whole millimetres by their class, read in inches.
fn metric_class(view: &View) -> Option<View> {
    let numbers: Vec<_> = view.numbers().collect();
    let [(a, x), (b, y)] = numbers[..] else { return None };
    let pairs = [(a, x, y), (b, y, x)];
    let (at, ..) = pairs.into_iter().find(|(_, size, read)| {
        let whole = size.unit.is_none() && size.places == 0 && !size.is_fraction;
        let inches = read.unit.is_none() && read.places > 2;
        whole && inches && (read.value * 25.4 - size.value).abs() < 0.01 * size.value
    })?;
    let mut metric = View { items: view.items.clone(), text: view.text.clone() };
    for item in &mut metric.items {
        if let Token::Number(num) = &mut item.token {
            num.unit = Some(Unit::Inch);
        }
    }
    if let Token::Number(num) = &mut metric.items[at].token {
        num.unit = Some(Unit::Millimetre);
    }
    Some(metric)
}

/// `bore reads .7503, good?`: by which class? `3/4 H7 shaft mics .7496`: of which part?
fn unsaid_reading(view: &View, system: System) -> Option<Said> {
    let is_hole = view.has("hole") || view.has("hub");
    let is_shaft = view.has("shaft");
    let wants = ["want", "wants", "wanted", "need", "needs", "needed", "drawing", "target"];
    let is_read = view.has("reads") || view.types(&wants);
    if !is_read || view.has("material") || view.has("instrument") {
        return None;
    }
    let numbers: Vec<_> = view.numbers().map(|(_, num)| num).collect();
    // A class's case says which part it is of, where no noun does.
    let is_of = |fit: &Fit| match fit {
        Fit::Hole(_) => !is_shaft,
        _ => !is_hole,
    };
    match (&numbers[..], fit_of(view)) {
        // `bore clocks 30.025, wants H7`
        ([reading], Some(fit @ (Fit::Hole(_) | Fit::Shaft(_))))
            if is_of(&fit)
                && !is_nominal(reading, system)
                && reading.places > 2 - usize::from(system == System::Millimetres) =>
        {
            let size = nominal_of(reading, system)?;
            let text = fit.text();
            // `.7488` may be 3/4 in as well as 19 mm.
            let mm = reading.mm(system);
            let other = match system {
                System::Inches => 1.0,
                System::Millimetres => 25.4 / 16.0,
            };
            let is_other = (mm - (mm / other).round() * other).abs() < 0.04;
            (!is_other).then(|| Said::plain(format!("{size} {text} = {}", reading.plain(system))))
        }
        _ if is_hole == is_shaft || !view.has("reads") => None,
        ([reading], None) if view.says("head", "ok") && limits(view, system).is_none() => {
            let size = nominal_of(reading, system)?;
            let reading = reading.plain(system);
            let classes = if is_hole { ["H7", "H8"] } else { ["h6", "g6"] };
            Some(Said::ask(
                "its class is not said",
                classes.map(|class| format!("{size} {class} = {reading}")).to_vec(),
            ))
        }
        ([size, reading], Some(fit @ (Fit::Hole(_) | Fit::Shaft(_))))
            if matches!(fit, Fit::Hole(_)) != is_hole
                && (size.mm(system) - reading.mm(system)).abs() < 0.02 * size.mm(system) =>
        {
            let is_turned = is_nominal(reading, system) && !is_nominal(size, system);
            let (size, reading) = if is_turned { (reading, size) } else { (size, reading) };
            let (size, reading, class) = (size.plain(system), reading.plain(system), fit.text());
            let turned =
                if is_hole { class.to_ascii_uppercase() } else { class.to_ascii_lowercase() };
            Some(Said::ask(
                "the class is the other part's",
                vec![format!("{size} {turned} = {reading}"), format!("{size} {class} = {reading}")],
            ))
        }
        _ => None,
    }
}

/// `shaft limits are .7485 to .7490 and mine is .7493`; `bore .8741 limits .8750 .8755`.
pub(crate) fn spoken_limits(view: &View, system: System) -> Option<Said> {
    let is_limits = |at: usize| {
        ["limits", "between", "limits are", "supposed to be", "should be", "meant to be"]
            .contains(&&*view.said(at))
    };
    let limits_at = (0..view.items.len()).find(|at| is_limits(*at));
    if view.count(|token| !matches!(token, Token::Number(_) | Token::Break | Token::Word { .. }))
        > 0
    {
        return None;
    }
    let numbers: Vec<_> = view.numbers().collect();
    let joined = |a: usize, b: usize| {
        b == a + 1 || b == a + 2 && ["to", "and", "-"].contains(&&*view.said(a + 1))
    };
    let near = |x: &Num, y: &Num| (x.mm(system) - y.mm(system)).abs() <= 0.02 * y.mm(system);
    let measured =
        |at: usize| at.checked_sub(1).is_some_and(|at| matches!(view.kind_at(at), Some("reads")));
    let (one, other, reading) = match numbers[..] {
        [(a, low), (b, high), (at, reading)]
            if joined(a, b) && (limits_at.is_some_and(|at| at < a) || measured(at)) =>
        {
            (low, high, reading)
        }
        [(_, reading), (a, low), (b, high)]
            if joined(a, b) && limits_at.is_some_and(|at| at + 1 == a) =>
        {
            (low, high, reading)
        }
        _ => return None,
    };
    // Largest metal first, as a drawing may have them.
    let (low, high) = if one.mm(system) < other.mm(system) { (one, other) } else { (other, one) };
    if low.mm(system) >= high.mm(system)
        || !near(high, low)
        || (reading.mm(system) - low.mm(system)).abs() > 0.05 * low.mm(system)
    {
        return None;
    }
    let tail = format!("{}..{} = {}", low.plain(system), high.plain(system), reading.plain(system));
    match (view.has("hole") || view.has("hub"), view.has("shaft")) {
        (true, false) => Some(Said::plain(format!("hole {tail}"))),
        (false, true) => Some(Said::plain(format!("shaft {tail}"))),
        _ => Some(Said::ask(
            "hole or shaft is not said",
            vec![format!("hole {tail}"), format!("shaft {tail}")],
        )),
    }
}

/// The temperature that is said, or the range from one to another: `Some(None)` for none,
/// nothing where two are no range.
#[allow(clippy::option_option, reason = "none said, and not understood")]
fn temperatures_of(view: &View) -> Option<Option<String>> {
    let all: Vec<(usize, &String)> = view
        .items
        .iter()
        .enumerate()
        .filter_map(|(at, item)| match &item.token {
            Token::Temperature(text) => Some((at, text)),
            _ => None,
        })
        .collect();
    match all[..] {
        [(_, one)] => Some(Some(one.clone())),
        // `0F to 120F`
        [(a, low), (b, high)] if b == a + 2 && matches!(&*view.said(a + 1), "to" | "and" | "-") => {
            Some(Some(format!("{low}..{high}")))
        }
        [] => Some(None),
        _ => None,
    }
}

/// `hole 60.05 aluminum, shaft 60.00 steel, clearance at -25C`: both as they measure.
fn warm_pair(view: &View, system: System) -> Option<Said> {
    let temperature = temperatures_of(view)??;
    let roles = assign(view, &["hole", "shaft", "hub"], &[], system)?;
    let hole = roles.num("hole").or_else(|| roles.num("hub"))?;
    let shaft = roles.num("shaft")?;
    let near = (hole.mm(system) - shaft.mm(system)).abs() < 0.03 * hole.mm(system);
    if view.numbers().count() != 2 || !near || view.has("bushing") {
        return None;
    }
    let (of_hole, of_shaft) = metals(view)?;
    let (hole, shaft) = (hole.plain(system), shaft.plain(system));
    Some(Said::plain(format!(
        "hole {hole}, shaft {shaft} warm {temperature}, hole {}, shaft {}",
        of_hole?, of_shaft?
    )))
}

/// A pair at another temperature.
pub(crate) fn warm(view: &View, system: System) -> Option<Said> {
    view.only(
        &["fit", "material", "hole", "shaft", "hub", "bushing", "head", "state", "reads"],
        |token| is_fit(token) || matches!(token, Token::Temperature(_) | Token::Angle(_)),
    )?;
    if view.words("head").any(|head| !matches!(head, "warm" | "clearance")) {
        return None;
    }
    let Some(fit) = fit_of(view) else { return warm_pair(view, system) };
    if matches!(fit, Fit::Hole(_) | Fit::Shaft(_)) {
        return None;
    }
    let numbers: Vec<_> = view.numbers().collect();
    let degrees = view.one(|token| match token {
        Token::Angle(text) => Some(text.clone()),
        _ => None,
    });
    let temperature = temperatures_of(view)?;
    let after_at = |at: usize| {
        at.checked_sub(1).is_some_and(|at| matches!(&*view.said(at), "at" | "to" | "up to"))
    };
    let (size, temperatures) = match (&numbers[..], temperature, degrees) {
        ([(_, size)], Some(text), None) => (*size, vec![text]),
        ([(_, size)], None, Some(text)) => (*size, vec![format!("{text}C"), format!("{text}F")]),
        // `at 90`: of which scale?
        ([(_, size), (at, bare)], None, None)
            if after_at(*at) && bare.unit.is_none() && bare.places == 0 =>
        {
            (*size, vec![format!("{}C", bare.text), format!("{}F", bare.text)])
        }
        _ => return None,
    };
    let (hole, shaft) = metals(view)?;
    let (hole, shaft) = (hole?, shaft?);
    if temperatures.len() > 1 {
        let choices = temperatures.iter().map(|temperature| {
            format!(
                "{} {} warm {temperature}, hole {hole}, shaft {shaft}",
                size.plain(system),
                fit.text()
            )
        });
        let metric = system == System::Millimetres
            && view.count(|token| matches!(token, Token::Angle(_))) > 0;
        if !metric {
            return Some(Said::ask("Celsius or Fahrenheit is not said", choices.collect()));
        }
    }
    let temperature = temperatures.into_iter().next()?;
    Some(Said::plain(format!(
        "{} {} warm {temperature}, hole {hole}, shaft {shaft}",
        size.plain(system),
        fit.text()
    )))
}
