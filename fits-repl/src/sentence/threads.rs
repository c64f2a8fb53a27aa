//! Threads: limits, wires, passes.

use fits_core::standards::thread::{Series, Thread};

use crate::{query::Query, words};

use crate::sentence::{
    Said,
    token::{Num, System, Token},
    tools::trimmed,
    view::View,
};

/// The one thread that is named, with its series and its pitch where they are
/// said apart; a pitch that contradicts it is none.
pub(crate) fn thread_of(view: &View) -> Option<String> {
    let mut name = view.one(|token| match token {
        Token::Thread { name, .. } => Some(name.clone()),
        _ => None,
    })?;
    if let Some(series) = view.word("series") {
        if view.words("series").any(|other| other != series) {
            return None;
        }
        if !name.contains(series) {
            name = format!("{name} {series}");
            name.parse::<Thread>().ok()?;
        }
    }
    // `3/8-24 coarse`: one of the two is wrong.
    let is_coarse = name.parse::<Thread>().ok()?.series() == Series::Coarse;
    let names_pitch = name.contains(['-', 'x']);
    if view.says("state", "coarse") && !is_coarse
        || view.says("state", "fine") && is_coarse && names_pitch
    {
        return None;
    }
    let pitch = view.one(|token| match token {
        Token::PerInch(text) => Some(text.clone()),
        _ => None,
    });
    if view.count(|token| matches!(token, Token::PerInch(_))) > 0 {
        let pitch = pitch?;
        let (size, rest) = name.split_once([' ', '-']).unwrap_or((&name, ""));
        let with =
            if rest.starts_with(&pitch) { name.clone() } else { format!("{size}-{pitch} {rest}") };
        let (a, b): (Thread, Thread) = (name.parse().ok()?, with.parse().ok()?);
        if a.triangle_height() != b.triangle_height() {
            return None;
        }
    }
    Some(name)
}

/// A thread alone as a plain query: `8-8` would be a sum.
pub(crate) fn thread_alone(name: &str) -> String {
    match words::read(name) {
        Ok(Query::Thread(_)) => name.to_owned(),
        _ => format!("thread {name}"),
    }
}

/// The class, or a nut's and a screw's said in either order.
#[allow(clippy::option_option, reason = "several classes are not none")]
pub(crate) fn class_of(view: &View) -> Option<Option<String>> {
    let classes: Vec<_> = view
        .tokens()
        .filter_map(|token| match token {
            Token::ThreadClass(name) => Some(name),
            _ => None,
        })
        .collect();
    match classes[..] {
        [] => Some(None),
        [class] => Some(Some(class.clone())),
        [a, b] if !a.contains('/') && !b.contains('/') && is_nut(a) != is_nut(b) => {
            let (nut, screw) = if is_nut(a) { (a, b) } else { (b, a) };
            Some(Some(format!("{nut}/{screw}")))
        }
        _ => None,
    }
}

/// `H` classes and `B` are nuts'.
pub(crate) fn is_nut(class: &str) -> bool {
    class.ends_with(['B', 'H', 'G']) && !class.ends_with("2G")
}

pub(crate) fn is_own(token: &Token) -> bool {
    matches!(
        token,
        Token::Thread { .. }
            | Token::ThreadClass(_)
            | Token::PerInch(_)
            | Token::Word { kind: "series", .. }
    )
}

/// A thread, its limits.
pub(crate) fn thread(view: &View, _: System) -> Option<Said> {
    view.only(&["head", "state", "mate", "shaft", "hole", "hub", "unit", "series"], |token| {
        is_own(token) || matches!(token, Token::Number(_) | Token::AnsiClass(_))
    })?;
    if view.has("hole") {
        return None;
    }
    // `class 3`: of the screw or of the nut?
    if let Some(class) = view.one(|token| match token {
        Token::AnsiClass(class @ 1..=3) => Some(*class),
        _ => None,
    }) {
        let name = thread_of(view)?;
        let each = [format!("{class}B/{class}A"), format!("{class}A"), format!("{class}B")];
        let each = each.map(|class| format!("{name} {class}"));
        return Some(Said::ask("the screw's class or the nut's is not said", each.to_vec()));
    }
    if view.count(|token| matches!(token, Token::AnsiClass(_))) > 0 {
        return None;
    }
    if let Some(said) = pipe(view) {
        return Some(said);
    }
    if let Some(names) = view.one(|token| match token {
        Token::Thread { name, .. } if name.contains('|') => Some(name.clone()),
        _ => None,
    }) {
        return Some(Said::ask(
            "the pitch contradicts the name",
            names.split('|').map(str::to_owned).collect(),
        ));
    }
    let name = fine_or(view, thread_of(view)?)?;
    let name = match name {
        Ok(name) => name,
        Err(said) => return Some(said),
    };
    let name = if view.says("state", "left hand") { format!("{name} LH") } else { name };
    let class = class_of(view)?;
    if view.words("head").any(|head| !matches!(head, "thread" | "pitchd" | "blank")) {
        return None;
    }
    if view.says("head", "blank") && class.as_deref().is_some_and(is_nut) {
        return None;
    }
    let nut = view.says("state", "nutbore");
    let bolt = view.says("state", "bolt") || view.has("shaft");
    let mates = view.has("mate");
    match &class {
        Some(class) if nut && bolt || mates => {
            // The mate of a class: the other part.
            let other = if is_nut(class) {
                other_class(class, 'A', 'g')
            } else {
                other_class(class, 'B', 'H')
            }?;
            if mates && !(nut || bolt) || (nut != is_nut(class)) {
                return Some(Said::plain(format!("{name} {other}")));
            }
            None
        }
        Some(class) => {
            if (nut && !is_nut(class) && !name.contains("Acme")) || (bolt && is_nut(class)) {
                return None;
            }
            let side = if name.contains("Acme") && bolt {
                " screw"
            } else if name.contains("Acme") && nut {
                " nut"
            } else {
                ""
            };
            Some(Said::plain(format!("{name} {class}{side}")))
        }
        // `the screw is …, what's the minor for the nut`
        None if nut && bolt && view.says("head", "pitchd") => {
            let each = ["", " nut", " screw"].map(|side| format!("{name}{side}"));
            Some(Said::ask("the screw's size or the nut's is not said", each.to_vec()))
        }
        None if nut && bolt => Some(Said::plain(thread_alone(&name))),
        None if nut => Some(Said::plain(format!("{name} nut"))),
        None if bolt && !view.has("head") && view.types(&["sizes", "its", "dimensions"]) => {
            Some(Said::ask(
                "the screw alone, or screw and nut?",
                vec![thread_alone(&name), format!("{name} screw")],
            ))
        }
        None if view.says("head", "blank") || bolt => Some(Said::plain(format!("{name} screw"))),
        None => Some(Said::plain(thread_alone(&name))),
    }
}

/// `1/2 pipe thread`: which standard?
pub(crate) fn pipe(view: &View) -> Option<Said> {
    if !view.says("state", "pipe") || view.count(|token| matches!(token, Token::Thread { .. })) > 0
    {
        return None;
    }
    let mut numbers = view.numbers();
    let (_, num) = numbers.next()?;
    if numbers.next().is_some() || !(num.is_fraction || num.places == 0) {
        return None;
    }
    let text = &num.text;
    // R is a screw: its taper nut is Rc.
    let (tap, taper) = if view.says("head", "tap") { (" tap", "Rc") } else { ("", "R") };
    Some(Said::ask(
        "which pipe thread is not said",
        vec![format!("{text} NPT{tap}"), format!("G{text}{tap}"), format!("{taper}{text}{tap}")],
    ))
}

/// `M12 fine`: one of its fine pitches, asked where there are several. A pitch
/// said apart is taken.
#[allow(clippy::type_complexity, reason = "a name, or a question back")]
pub(crate) fn fine_or(view: &View, name: String) -> Option<Result<String, Said>> {
    let pitch = view.numbers().map(|(_, num)| num).collect::<Vec<_>>();
    let is_bare_metric = name.starts_with('M') && !name.contains('x');
    match pitch[..] {
        [] => {}
        [pitch]
            if is_bare_metric
                && (view.types(&["pitch", "mm pitch", "with"]) || follows_its_thread(view)) =>
        {
            let name = format!("{name}x{}", pitch.text);
            name.parse::<Thread>().ok()?;
            return Some(Ok(name));
        }
        _ => return None,
    }
    if !view.says("state", "fine") || !is_bare_metric {
        return Some(Ok(name));
    }
    let is_tap = view.says("head", "tap") || view.says("head", "drill");
    let tail = if is_tap { " tap" } else { "" };
    // ISO 261: the fine pitches, the common one first.
    let pitches: &[&str] = match &*name {
        "M6" => &["0.75"],
        "M8" => &["1", "0.75"],
        "M10" => &["1.25", "1"],
        "M12" => &["1.25", "1.5"],
        "M14" => &["1.5", "1.25"],
        "M16" => &["1.5", "1"],
        "M18" | "M20" | "M22" => &["1.5", "2"],
        "M24" | "M27" | "M30" => &["2", "1.5"],
        _ => return None,
    };
    match pitches {
        [one] => Some(Ok(format!("{name}x{one}"))),
        many => Some(Err(Said::ask(
            "the fine pitch is not said",
            many.iter().map(|pitch| format!("{name}x{pitch}{tail}")).collect(),
        ))),
    }
}

/// `M20 2.5`: the pitch stands after the size.
fn follows_its_thread(view: &View) -> bool {
    view.items.windows(2).any(|pair| {
        matches!((&pair[0].token, &pair[1].token), (Token::Thread { .. }, Token::Number(num))
            if num.unit.is_none() && num.value <= 6.0 && !num.is_fraction)
    })
}

pub(crate) fn other_class(class: &str, unified: char, metric: char) -> Option<String> {
    let digit = class.chars().next()?;
    let last = class.chars().last()?;
    Some(if matches!(last, 'A' | 'B') { format!("{digit}{unified}") } else { format!("6{metric}") })
}

/// Over three wires.
pub(crate) fn wires(view: &View, system: System) -> Option<Said> {
    view.only(&["head", "reads", "shaft", "hub", "series"], |token| {
        is_own(token) || matches!(token, Token::Number(_))
    })?;
    if view.words("head").any(|head| !matches!(head, "wires" | "pdq"))
        || !view.says("head", "wires")
    {
        return None;
    }
    let measures = (0..view.items.len()).any(|at| {
        matches!(view.items[at].token, Token::Word { kind: "head", .. })
            && ["wire", "over", "measur", "mic"].iter().any(|word| view.said(at).contains(word))
    });
    if !measures {
        return None;
    }
    let name = thread_of(view)?;
    let class = class_of(view)?.map_or_else(String::new, |class| format!(" {class}"));
    let numbers: Vec<_> = view.numbers().map(|(_, num)| num).collect();
    // A wire that touches the flanks: about half a pitch, and less than one.
    let pitch = name.parse::<Thread>().ok()?.pitch().millimetres();
    let is_wire = |num: &Num| (0.45 * pitch..0.9 * pitch).contains(&num.mm(system));
    if numbers.iter().any(|num| num.mm(system) < 1.5 * pitch && !is_wire(num)) {
        return None;
    }
    match numbers[..] {
        [] => Some(Said::plain(format!("{name}{class} wires"))),
        [wire] if is_wire(wire) => {
            Some(Said::plain(format!("{name}{class} wires {}", wire.plain(system))))
        }
        [over] => Some(Said::plain(format!("{name}{class} over {}", over.plain(system)))),
        [a, b] => {
            let (over, wire) = if is_wire(a) && !is_wire(b) {
                (b, a)
            } else if is_wire(b) && !is_wire(a) {
                (a, b)
            } else {
                return None;
            };
            Some(Said::plain(format!(
                "{name}{class} over {} wire {}",
                over.plain(system),
                wire.plain(system)
            )))
        }
        _ => None,
    }
}

/// A thread cut on the lathe.
pub(crate) fn cut(view: &View, _: System) -> Option<Said> {
    view.only(&["head", "state", "shaft", "hole", "hub", "series"], |token| {
        is_own(token) || matches!(token, Token::Angle(_) | Token::Temperature(_) | Token::Number(_))
    })?;
    if view.words("head").any(|head| !matches!(head, "feed" | "compound"))
        || !view.has("head")
        || view.text.contains("cut it to")
    {
        return None;
    }
    let name = thread_of(view)?;
    // `M12 depth`: of its thread, or of the hole?
    if view.words("head").count() == 1
        && view.types(&["depth", "deep"])
        && !name.contains(['-', 'x'])
    {
        return Some(Said::ask(
            "of the thread as it is cut, or its sizes?",
            vec![format!("{name} cut"), thread_alone(&name)],
        ));
    }
    let class = class_of(view)?;
    let nut = view.says("state", "inside") || class.as_deref().is_some_and(is_nut);
    if class.is_some() && nut != class.as_deref().is_some_and(is_nut) {
        return None;
    }
    let class = class.map_or_else(String::new, |class| format!(" {class}"));
    let inside = if view.says("state", "inside") { " inside" } else { "" };
    let straight = if view.says("state", "straight") { " straight" } else { "" };
    let angle = view.one(|token| match token {
        Token::Angle(text) => Some(text.clone()),
        Token::Number(num) if num.unit.is_none() || num.is_fraction => Some(trimmed(num.value)),
        _ => None,
    });
    if view.numbers().count() > 0 && angle.is_none() {
        return None;
    }
    let compound = match angle {
        Some(angle) => {
            let value: f64 = angle.parse().ok()?;
            if !(20.0..=35.0).contains(&value) || !straight.is_empty() {
                return None;
            }
            format!(" compound {angle}")
        }
        None => String::new(),
    };
    // `single pt 1-12 shaft nut thread`: the nut's own, or the one it goes on?
    if !inside.is_empty() && view.has("shaft") && view.types(&["nut"]) && class.is_empty() {
        let each = ["", inside].map(|inside| format!("{name} cut{inside}{straight}{compound}"));
        return Some(Said::ask(
            "the shaft's thread or the nut's? Their depths differ",
            each.into(),
        ));
    }
    Some(Said::plain(format!("{name}{class} cut{inside}{straight}{compound}")))
}

/// `drill for an M8 thread insert`.
pub(crate) fn insert(view: &View, _: System) -> Option<Said> {
    view.only(&["head", "hole", "material", "series"], is_own)?;
    let name = thread_of(view).filter(|_| view.says("head", "insert"))?;
    Some(Said::plain(format!("insert {name}")))
}
