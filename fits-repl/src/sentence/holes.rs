//! Tap drills, and holes that a screw passes.

use std::fmt::Write as _;

use crate::sentence::{
    Said,
    roles::assign,
    threads::{class_of, fine_or, is_own, pipe, thread_of},
    token::{Num, System, Token},
    view::View,
};

/// A tap drill.
#[allow(clippy::too_many_lines, reason = "one rule after another, each short")]
pub(crate) fn tap(view: &View, system: System) -> Option<Said> {
    view.only(
        &["head", "material", "state", "hole", "hub", "shaft", "unit", "series", "role"],
        |token| {
            is_own(token) || matches!(token, Token::Percent(_) | Token::Number(_) | Token::Gauge(_))
        },
    )?;
    if view.has("role") {
        return tapped_so_deep(view, system);
    }
    if view
        .words("head")
        .any(|head| !matches!(head, "tap" | "drill" | "percent" | "nutbore" | "ream"))
        || view.says("head", "ream")
    {
        return None;
    }
    let asks = view.says("head", "tap")
        || view.says("head", "nutbore")
        || view.says("head", "percent")
        || view.count(|token| matches!(token, Token::Percent(_))) > 0;
    let class = class_of(view)?;
    let asks = asks || view.says("state", "form");
    if let Some(said) = pipe(view) {
        return Some(said);
    }
    let name = match thread_of(view) {
        Some(name) => name,
        None if view.count(|token| matches!(token, Token::Thread { .. })) > 0 => return None,
        None => return unnamed_tap(view, asks),
    };
    let name = if view.says("state", "fine") && view.numbers().next().is_none() {
        match fine_or(view, name)? {
            Ok(name) => name,
            Err(said) => return Some(said),
        }
    } else {
        name
    };
    let name = if view.says("state", "left hand") { format!("{name} LH") } else { name };
    if class.is_some() {
        return None;
    }
    let acme = name.contains("Acme") || name.starts_with("Tr");
    if !asks
        && !(acme && (view.says("head", "drill") || view.has("hole")))
        && !view.says("head", "drill")
    {
        return None;
    }
    // The bore of a nut that is cut on the lathe goes by its limits.
    if acme
        && view.types(&["nut bore", "bore of the nut", "nut"])
        && view.has("hole") | view.types(&["nut bore"])
    {
        return Some(Said::plain(format!("{name} nut")));
    }
    let mut tail = String::new();
    if let Some(percent) = view.one(|token| match token {
        Token::Percent(text) => Some(text.clone()),
        _ => None,
    }) {
        let _ = write!(tail, " {percent}%");
    }
    let mut numbers = view.numbers();
    let in_hand = numbers.next();
    if numbers.next().is_some() {
        return None;
    }
    let gauge = view.one(|token| match token {
        Token::Gauge(text) => Some(text.clone()),
        _ => None,
    });
    match (in_hand, gauge) {
        (Some(_), Some(_)) => return None,
        (Some((_, num)), None) => {
            let drills = (0..view.items.len()).any(|at| view.said(at).contains("drill"));
            if !tail.is_empty() || !(view.has("hole") || drills || view.says("head", "percent")) {
                return None;
            }
            let _ = write!(tail, " {}", num.plain(system));
        }
        (None, Some(gauge)) => {
            let _ = write!(tail, " {gauge}");
        }
        (None, None) => {}
    }
    if view.says("state", "form") {
        tail.push_str(" form");
    }
    if view.has("state")
        && view.words("state").any(|state| {
            !matches!(state, "form" | "coarse" | "fine" | "bolt" | "nutbore" | "pipe" | "left hand")
        })
    {
        return None;
    }
    if let Some(material) = view.word("material") {
        if view.words("material").count() > 1 {
            return None;
        }
        let _ = write!(tail, ", hub {material}");
    }
    if let Some((size, pitch)) = pipe_pitch(&name) {
        return Some(Said::ask(
            "the pitch is a pipe thread's",
            vec![format!("{size} NPT tap"), format!("{size}-{pitch} tap")],
        ));
    }
    Some(Said::plain(format!("{name} tap{tail}")))
}

/// `M8 in aluminium 12 deep`: how long the thread is engaged.
fn tapped_so_deep(view: &View, system: System) -> Option<Said> {
    let roles = assign(view, &["role"], &[], system)?;
    let long = roles.get("long").filter(|_| roles.taken.len() == view.words("role").count())?;
    let kept = view.items.iter().enumerate().filter(|(at, _)| *at != long.at && *at != long.word);
    let rest =
        View { items: kept.map(|(_, item)| item.clone()).collect(), text: view.text.clone() };
    match tap(&rest, system)? {
        Said::Plain(lines) => {
            Some(Said::plain(format!("{}, long {}", lines.first()?, long.num.plain(system))))
        }
        Said::Ask { .. } => None,
    }
}

/// A screw thread with the pitch of a taper pipe thread of its size.
pub(crate) fn pipe_pitch(name: &str) -> Option<(&str, &str)> {
    let (size, pitch) = name.split_once('-')?;
    matches!((size, pitch), ("1/8", "27") | ("1/4" | "3/8", "18") | ("1/2" | "3/4", "14"))
        .then_some((size, pitch))
}

/// A tap named by a number or a size alone.
pub(crate) fn unnamed_tap(view: &View, asks: bool) -> Option<Said> {
    if !asks || view.has("material") || view.count(|token| matches!(token, Token::Percent(_))) > 0 {
        return None;
    }
    if let Some(gauge) = view.one(|token| match token {
        Token::Gauge(text) => Some(text.clone()),
        _ => None,
    }) {
        if view.numbers().next().is_some() {
            return None;
        }
        return number_taps(gauge.strip_prefix('#')?);
    }
    let mut numbers = view.numbers();
    let (_, num) = numbers.next()?;
    if numbers.next().is_some() {
        return None;
    }
    if num.unit.is_none() && num.places == 0 && !num.is_fraction {
        let text = &num.text;
        let gauge = number_taps(text);
        let mut choices = vec![format!("M{text} tap")];
        if let Some(Said::Ask { choices: more, .. }) = gauge {
            choices.extend(more);
        }
        return (choices.len() > 1).then(|| Said::ask("the thread is not named", choices));
    }
    if num.is_fraction {
        return Some(Said::ask("the pitch is not said", fraction_threads(&num.text, " tap")?));
    }
    None
}

/// The pitches of a numbered screw (ASME B1.1).
pub(crate) fn screw_pitches(number: &str) -> Option<&'static [u32]> {
    Some(match number {
        "0" => &[80],
        "1" => &[64, 72],
        "2" => &[56, 64],
        "3" => &[48, 56],
        "4" => &[40, 48],
        "5" => &[40, 44],
        "6" => &[32, 40],
        "8" => &[32, 36],
        "10" => &[24, 32],
        "12" => &[24, 28],
        _ => return None,
    })
}

pub(crate) fn number_taps(gauge: &str) -> Option<Said> {
    let pitches = screw_pitches(gauge)?;
    let choices: Vec<_> = pitches.iter().map(|pitch| format!("#{gauge}-{pitch} tap")).collect();
    (choices.len() > 1).then(|| Said::ask("the pitch is not said", choices))
}

/// The coarse thread of a size.
pub(crate) fn coarse(size: &str) -> Option<String> {
    fraction_threads(size, "")?.into_iter().next()
}

/// Coarse and fine of a size (ASME B1.1).
pub(crate) fn fraction_threads(size: &str, tail: &str) -> Option<Vec<String>> {
    let (coarse, fine) = match size {
        "1/4" => (20, 28),
        "5/16" => (18, 24),
        "3/8" => (16, 24),
        "7/16" => (14, 20),
        "1/2" => (13, 20),
        "9/16" => (12, 18),
        "5/8" => (11, 18),
        "3/4" => (10, 16),
        "7/8" => (9, 14),
        _ => return None,
    };
    Some(vec![format!("{size}-{coarse}{tail}"), format!("{size}-{fine}{tail}")])
}

/// A hole that a screw passes.
pub(crate) fn clearance(view: &View, system: System) -> Option<Said> {
    view.only(&["head", "state", "hole", "shaft", "hub", "vague", "fit", "series"], |token| {
        is_own(token) || matches!(token, Token::Number(_) | Token::Gauge(_))
    })?;
    if view.words("head").any(|head| !matches!(head, "clearance" | "drill" | "cltap"))
        || view.has("fit")
    {
        return None;
    }
    let asks = view.says("head", "clearance") || view.says("vague", "clearance");
    if class_of(view)?.is_some() {
        return None;
    }
    let kind = match (
        view.says("state", "close"),
        view.says("state", "free"),
        view.says("state", "loose"),
        view.says("state", "normal"),
    ) {
        (true, false, false, false) => Some(" close"),
        (false, true, false, false) => Some("free"),
        (false, false, true, false) => Some(" loose"),
        (false, false, false, true) => Some(" normal"),
        (false, false, false, false) => None,
        _ => return None,
    };
    let bolt = view.says("state", "bolt");
    if !asks
        && view.has("hole")
        && kind.is_none()
        && let Some(name) = thread_of(view)
    {
        return Some(Said::ask(
            "tapped, or passed by a screw, is not said",
            vec![format!("{name} tap"), format!("{name} clearance")],
        ));
    }
    let is_bolt = kind.is_some() && bolt;
    if !asks && !is_bolt {
        return None;
    }
    let name = match (
        thread_of(view),
        view.one(|token| match token {
            Token::Gauge(text) => Some(text.clone()),
            _ => None,
        }),
    ) {
        (Some(name), None) => name,
        (None, Some(gauge)) => gauge,
        (None, None) => {
            let mut numbers = view.numbers();
            let (_, num) = numbers.next()?;
            if numbers.next().is_some()
                || view.has("shaft")
                || !(bolt
                    || (0..view.items.len()).any(|at| {
                        ["hole", "drill", "bolt", "screw"]
                            .iter()
                            .any(|word| view.said(at).contains(word))
                    }))
            {
                return None;
            }
            clearance_name(num, system)?
        }
        _ => return None,
    };
    if view.says("head", "cltap") {
        return match number_taps(name.strip_prefix('#').unwrap_or_default()) {
            Some(said) => Some(said),
            None => Some(Said::ask(
                "a tap drill and a clearance drill are two holes",
                vec![format!("{name} tap"), format!("{name} clearance")],
            )),
        };
    }
    match kind {
        Some("free") => Some(Said::ask(
            "free is close on some charts and loose on others",
            vec![
                format!("{name} clearance close"),
                format!("{name} clearance loose"),
                format!("{name} clearance normal"),
            ],
        )),
        kind => Some(Said::plain(format!("{name} clearance{}", kind.unwrap_or_default()))),
    }
}

pub(crate) fn clearance_name(num: &Num, system: System) -> Option<String> {
    if num.is_fraction {
        return Some(num.text.clone());
    }
    (num.unit.is_none() && num.places == 0 && system == System::Millimetres)
        .then(|| format!("M{}", num.text))
}
