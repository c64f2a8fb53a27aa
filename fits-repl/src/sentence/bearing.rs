//! Rolling bearings: a seat by its load, or a ball bearing by its number.

use fits_core::{Length, speech::Figure, standards::bought::Ball};

use crate::sentence::{
    Said,
    bought::only_number,
    token::{Num, System, Token},
    view::View,
};

impl View {
    /// `25x52x15 bearing`: by its bore, outside and width, as by its number.
    pub(super) fn settle_bearing(&mut self) {
        let sizes: Vec<(usize, &Num)> = self.numbers().collect();
        let [(at, bore), (_, outside), (last, width)] = sizes[..] else { return };
        let is_cross = |at: usize| self.items[at].token == Token::Cross;
        if last != at + 4 || !is_cross(at + 1) || !is_cross(at + 3) || !self.has("bought") {
            return;
        }
        let ball = SYSTEMS.into_iter().find_map(|system| {
            let is = |num: &Num, own: Length| (num.mm(system) - own.millimetres()).abs() < 0.001;
            Ball::all().find(|ball| {
                is(bore, ball.bore())
                    && is(outside, ball.outside())
                    && (is(width, ball.width(false)) || is(width, ball.width(true)))
            })
        });
        if let Some(ball) = ball {
            self.items[at].at.end = self.items[last].at.end;
            self.items[at].token = Token::Bearing(ball);
            self.items.drain(at + 1..=last);
        }
    }
}

/// `6310 shaft seat k5`: the class is said, and the bearing gives the size.
fn by_class(view: &View) -> Option<Said> {
    let ball = view.one(|token| match token {
        Token::Bearing(ball) => Some(*ball),
        _ => None,
    })?;
    let (is_hole, class) = view.one(|token| match token {
        Token::Hole(class) => Some((true, class)),
        Token::Shaft(class) => Some((false, class)),
        _ => None,
    })?;
    view.only(&["bought", "hub", "shaft", "hole", "ring", "role"], |token| {
        matches!(token, Token::Bearing(_) | Token::Hole(_) | Token::Shaft(_))
    })?;
    let is_other = if is_hole {
        view.has("shaft") || view.says("ring", "inner") || view.says("role", "id")
    } else {
        view.has("hub") || view.has("hole") || view.says("ring", "outer") || view.says("role", "od")
    };
    let size = if is_hole { ball.outside() } else { ball.bore() };
    let size = Figure::from(size).said_in(ball.unit()).replace(' ', "");
    (!is_other).then(|| Said::plain(format!("{size} {class}")))
}

/// A rolling bearing's seat.
#[allow(clippy::too_many_lines, reason = "one rule after another, each short")]
pub(crate) fn bearing(view: &View, system: System) -> Option<Said> {
    if let Some(seat) = by_class(view) {
        return Some(seat);
    }
    view.only(
        &[
            "bought", "hub", "shaft", "hole", "load", "ring", "head", "fit", "reads", "start",
            "role", "vague", "material",
        ],
        |token| matches!(token, Token::Number(_) | Token::Bearing(..)),
    )?;
    let ball = view.one(|token| match token {
        Token::Bearing(ball) => Some(*ball),
        _ => None,
    });
    if view.has("material") {
        return numbered(view, ball?);
    }
    // Which part turns is said: both seats, where not one of them is asked for.
    if view.has("load")
        && !view.types(&["seat"])
        && let Some(said @ Said::Plain(_)) = ball.and_then(|ball| numbered(view, ball))
    {
        return Some(said);
    }
    let number = ball.map(|ball| {
        let said = |size: Length| Figure::from(size).said_in(ball.unit()).replace(' ', "");
        (said(ball.bore()), said(ball.outside()))
    });
    let is_named = (0..view.items.len()).any(|at| {
        matches!(view.items[at].token, Token::Word { kind: "bought", .. })
            && !matches!(&*view.said(at), "fit" | "for a")
    });
    if !is_named && number.is_none() && !view.has("ring") {
        return None;
    }
    if let (Some(word), None, Some(num)) = (view.word("fit"), &number, only_number(view))
        && !view.has("start")
        && view.words("fit").count() == 1
    {
        // A bearing's seat goes by its load, not by a word.
        let text = num.plain(system);
        let place = if view.has("hub")
            || view.has("hole")
            || view.says("role", "od")
            || view.says("ring", "outer")
        {
            "housing"
        } else if view.has("shaft") || view.says("ring", "inner") {
            "shaft"
        } else {
            return None;
        };
        let part = if place == "housing" { "shaft" } else { "hole" };
        return Some(Said::ask(
            "a bearing's seat goes by its load",
            vec![
                format!("seat {place} {text} stands slides"),
                format!("seat {place} {text} turns normal"),
                format!("{part} {text}, {word}"),
            ],
        ));
    }
    // A seat as it measures, beside its bearing's number.
    let has_seat =
        (view.has("hub") || view.has("hole") || view.has("shaft")) && !view.types(&["seat"]);
    if let Some(ball) =
        ball.filter(|_| (view.has("reads") || has_seat) && view.numbers().next().is_some())
    {
        return numbered(view, ball);
    }
    if view.has("reads") && ball.is_none() {
        return measured_seat(view, system);
    }
    if view.has("fit")
        || view.has("reads")
        || view.has("start")
        || view.has("vague")
        || view.words("head").any(|head| !matches!(head, "bore" | "bgc" | "bgsmall" | "ream"))
    {
        return None;
    }
    let says_bore = view.says("head", "bgc");
    let outer = view.has("hub")
        || view.has("hole")
        || view.says("ring", "outer")
        || view.says("role", "od");
    let inner = view.has("shaft") || view.says("ring", "inner") || view.says("role", "id");
    if outer && inner && !(view.has("ring")) {
        return numbered(view, ball?);
    }
    // Which ring turns may be told of either ring.
    let (mut turns, mut stands) = (false, false);
    for (at, item) in view.items.iter().enumerate() {
        let Token::Word { kind: "load", name } = item.token else { continue };
        let said = view.said(at);
        let (of_inner, of_outer) = sides(&said);
        let of_other = if inner && !outer { of_outer } else { of_inner && outer && !inner };
        let own = !of_other;
        match (name, own) {
            ("turns", true) | ("stands", false) => turns = true,
            ("stands", true) | ("turns", false) => stands = true,
            _ => {}
        }
    }
    let load = if view.says("load", "heavy") {
        Some("heavy")
    } else if view.says("load", "light") {
        Some("light")
    } else if view.says("load", "normal") {
        Some("normal")
    } else {
        None
    };
    let slides = view.says("load", "slides");
    let bare = match ball {
        None => Some(only_number(view)?),
        // A size beside the number is its own.
        Some(ball) => {
            view.numbers().all(|(_, num)| is_own(num, ball, system)).then_some(())?;
            None
        }
    };
    let size = |is_outer: bool| match (&number, bare) {
        (Some((bore, od)), _) => Some(if is_outer { od.clone() } else { bore.clone() }),
        (None, Some(num)) => Some(num.plain(system)),
        _ => None,
    };
    // What the part itself comes as.
    if !turns && !stands && load.is_none() && !slides {
        let typed = view.text.to_lowercase();
        let types = |word: &str| typed.split([' ', ',']).any(|typed| typed == word);
        // `608 bearing bore and od limits`: its own two sizes, or those of its seats.
        if let Some(ball) = ball
            && types("od")
            && types("bore")
            && ["and", "both", "&"].into_iter().any(types)
        {
            let own =
                [format!("bearing bore {}", size(false)?), format!("bearing od {}", size(true)?)];
            let seats =
                ["shaft", "housing"].map(|part| format!("bearing {}, {part} turns", ball.number()));
            return Some(Said::ask("one size, or its seats?", [own, seats].concat()));
        }
        if view.types(&["od limits", "od limits on"]) {
            return Some(Said::plain(format!("bearing od {}", size(true)?)));
        }
        if view.types(&["bore limits"]) {
            return Some(Said::plain(format!("bearing bore {}", size(false)?)));
        }
        if says_bore && view.says("role", "od") {
            return Some(Said::plain(format!("bearing od {}", size(true)?)));
        }
        if says_bore {
            return Some(Said::plain(format!("bearing bore {}", size(false)?)));
        }
        if (view.says("role", "od") || view.says("ring", "outer") || view.says("role", "id"))
            && !view.has("hub")
            && !view.has("shaft")
        {
            return Some(Said::plain(if view.says("role", "id") {
                format!("bearing bore {}", size(false)?)
            } else {
                format!("bearing od {}", size(true)?)
            }));
        }
        let (shaft, housing) = (size(false)?, size(true)?);
        let inner_choices = vec![
            format!("seat shaft {shaft} turns normal"),
            format!("seat shaft {shaft} stands slides"),
            format!("seat shaft {shaft} turns light"),
        ];
        let outer_choices = vec![
            format!("seat housing {housing} stands slides"),
            format!("seat housing {housing} turns normal"),
        ];
        if let Some(ball) = ball {
            return numbered(view, ball);
        }
        let mut choices = match (outer, inner) {
            (true, false) => outer_choices,
            (false, true) => inner_choices,
            _ => return None,
        };
        choices.push(if outer {
            format!("bearing od {housing}")
        } else {
            format!("bearing bore {shaft}")
        });
        return Some(Said::ask("which ring turns is not said", choices));
    }
    if let Some(ball) = ball.filter(|_| outer == inner) {
        return numbered(view, ball);
    }
    if turns == stands || (outer == inner) {
        return None;
    }
    let place = if outer { "housing" } else { "shaft" };
    let size = size(outer)?;
    // Which ring turns is told of the other ring: the load is the other way.
    let said_of_other = (inner && !view.says("ring", "inner") && view.says("ring", "outer"))
        || (outer && !view.says("ring", "outer") && view.says("ring", "inner"));
    if said_of_other {
        return None;
    }
    if stands && !slides {
        return Some(Said::ask(
            "a ring that stands still may slide or not",
            vec![
                format!("seat {place} {size} stands slides"),
                format!("seat {place} {size} turns normal"),
            ],
        ));
    }
    // How much it carries decides the class: all of them for a bearing of the list.
    if turns && load.is_none() {
        let asked = || {
            let choices = ["normal", "light", "heavy"]
                .map(|load| format!("seat {place} {size} turns {load}"));
            Said::ask("how much it carries is not said", choices.to_vec())
        };
        return ball.and_then(|ball| numbered(view, ball)).or_else(|| Some(asked()));
    }
    let load = if turns {
        format!("turns {}", load?)
    } else if slides {
        "stands slides".to_owned()
    } else {
        return None;
    };
    Some(Said::plain(format!("seat {place} {size} {load}")))
}

const SYSTEMS: [System; 2] = [System::Millimetres, System::Inches];

/// Is a size the bore or the outside of the bearing itself?
fn is_own(num: &Num, ball: Ball, system: System) -> bool {
    let is = |own: Length| (num.mm(system) - own.millimetres()).abs() < 0.000_5;
    is(ball.bore()) || is(ball.outside())
}

/// Does what is said of a load name the shaft's side, and the housing's?
fn sides(said: &str) -> (bool, bool) {
    let names = |words: &[&str]| words.iter().any(|word| said.contains(word));
    (
        names(&["inner", "shaft", "axle", "spindle", "crank"]),
        names(&["outer", "housing", "wheel", "hub", "roller", "pulley"]),
    )
}

/// `shaft 25mm bearing seat mikes .9848`: a bearing by its bore or outside, and its seat
/// as it measures.
fn measured_seat(view: &View, system: System) -> Option<Said> {
    let numbers: Vec<(usize, &Num)> = view.numbers().collect();
    let [(_, size), (at, reading)] = numbers[..] else { return None };
    // `25 mm … .9848`: a bearing in millimetres, a micrometer in inches.
    let is_near = |of: System| (size.mm(system) - reading.mm(of)).abs() < 0.01 * size.mm(system);
    let read_in = std::iter::once(system).chain(SYSTEMS).find(|of| is_near(*of))?;
    let lead = view.lead(at, &["small"])?;
    let is_read = matches!(view.items[lead].token, Token::Word { kind: "reads", .. });
    let is_other = ["fit", "start", "vague", "load"].iter().any(|kind| view.has(kind));
    if !is_read || is_other || view.has("head") {
        return None;
    }
    let outer = view.says("role", "od") || view.has("hub") || view.has("hole");
    let (ring, part) = match (outer, view.has("shaft") || view.says("role", "id")) {
        (true, false) => ("od", "hole"),
        (false, true) => ("bore", "shaft"),
        _ => return None,
    };
    let (size, reading) = (size.plain(system), reading.plain(read_in));
    Some(Said::plain(format!("bearing {ring} {size}, {part} = {reading}")))
}

/// Both seats of a ball bearing by its number: which part turns, how hard it is
/// loaded, what the housing is made of.
fn numbered(view: &View, ball: Ball) -> Option<Said> {
    let mut plain = format!("bearing {}", ball.number());
    let own = [ball.bore(), ball.outside()].map(Length::millimetres);
    // A seat as it measures is told by the ring that it is near.
    let mut seats = String::new();
    for (_, num) in view.numbers() {
        if SYSTEMS.iter().any(|system| is_own(num, ball, *system)) {
            continue;
        }
        let near = |system: System| {
            let of = |own: f64| (num.mm(system) - own).abs() < 0.01 * own;
            let part = if of(own[0]) { "shaft" } else { "housing" };
            (of(own[0]) || of(own[1])).then(|| format!(", {part} {}", num.plain(system)))
        };
        seats += &SYSTEMS.into_iter().find_map(near)?;
    }
    if ["fit", "start", "vague"].iter().any(|kind| view.has(kind))
        || view.has("reads") && seats.is_empty() && view.numbers().count() > 0
        || view.words("head").any(|head| !matches!(head, "bore" | "bgc" | "bgsmall" | "ream"))
        // An open bearing, not a hole to open out.
        || view.types(&["open"])
    {
        return None;
    }
    match view.words("material").collect::<Vec<_>>()[..] {
        [] => {}
        // The shaft's metal changes no figure, and it is not said whose this is.
        [_] if view.has("shaft") && !view.has("hub") && !view.has("hole") => return None,
        [material] => plain = format!("{plain}, housing {material}"),
        _ => return None,
    }
    let mut turning = Vec::new();
    for (at, item) in view.items.iter().enumerate() {
        let Token::Word { kind: "load", name } = item.token else { continue };
        if matches!(name, "light" | "normal" | "heavy") {
            continue;
        }
        let said = view.said(at);
        // A ring that spins in its seat is in trouble, and is no load.
        let is_ring = at.checked_sub(1).is_some_and(|before| {
            matches!(
                view.items[before].token,
                Token::Bearing(_) | Token::Word { kind: "bought", .. }
            )
        });
        if is_ring && said.starts_with("spin") {
            return None;
        }
        let (mut of_shaft, mut of_housing) = sides(&said);
        if !of_shaft && !of_housing {
            // `the crank turns`, `spins on a fixed pin`: the part beside the word.
            let part = |at: usize| match view.items.get(at)?.token {
                Token::Word { kind: "shaft", .. } => Some(true),
                Token::Word { kind: "hub", .. } => Some(view.said(at) == "crank"),
                Token::Word { kind: "hole", .. } => Some(false),
                _ => None,
            };
            let is_clause =
                |at: &usize| view.items.get(*at).is_some_and(|item| item.token != Token::Break);
            let before = (0..at).rev().take_while(is_clause).take(3).find_map(part);
            let after = (at + 1..at + 4).take_while(is_clause).find_map(part);
            let leads = matches!(&*said, "fixed" | "stationary" | "still");
            let is_shaft = if leads { after.or(before) } else { before.or(after) }?;
            (of_shaft, of_housing) = (is_shaft, !is_shaft);
        }
        let is_shaft = match (name, of_shaft, of_housing) {
            ("turns", true, false) | ("stands", false, true) => true,
            ("turns", false, true) | ("stands", true, false) => false,
            _ => return None,
        };
        turning.push(is_shaft);
    }
    turning.dedup();
    let mut duties =
        view.words("load").filter(|name| matches!(*name, "light" | "normal" | "heavy"));
    let duty = duties.next().map_or_else(String::new, |duty| format!(", {duty}"));
    if duties.next().is_some() {
        return None;
    }
    let turns = |part: &str| format!("{plain}, {part} turns{duty}{seats}");
    match turning[..] {
        [] => Some(Said::ask(
            "which of its rings turns is not said: their seats differ",
            vec![turns("shaft"), turns("housing"), format!("{plain}{duty}{seats}")],
        )),
        [true] => Some(Said::plain(turns("shaft"))),
        [false] => Some(Said::plain(turns("housing"))),
        _ => None,
    }
}
