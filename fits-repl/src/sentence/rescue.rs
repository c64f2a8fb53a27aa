//! Parts in trouble, threads by a mic and pistons, said in the shop's words.

use fits_core::standards::iso286::Feature;

use crate::sentence::{
    Said,
    sizes::is_nominal,
    token::{Num, System, Token, Unit},
    view::View,
};

/// What a number is, by the words about it.
#[derive(Clone, Copy, PartialEq)]
enum Role {
    Reading,
    Should,
    Mate,
    Off(&'static str),
}

/// `shaft .7478 should be .7495, press`; `bearing spins in its bore 1.852 for 47 mm`.
#[allow(clippy::too_many_lines, reason = "one rule after another, each short")]
pub(crate) fn rescue(view: &View, system: System) -> Option<Said> {
    view.only(&["hole", "shaft", "fit", "should", "trouble", "off", "bearing", "plea"], |token| {
        matches!(token, Token::Number(_) | Token::Bearing(_))
    })?;
    if !(view.has("should") || view.has("off") || view.has("trouble")) {
        return None;
    }
    // Who asks for a way out has a part in trouble.
    let in_trouble = view.has("trouble") || view.has("plea");
    let nouns: Vec<(usize, &str)> = view
        .items
        .iter()
        .enumerate()
        .filter_map(|(at, item)| match item.token {
            Token::Word { kind: "hole", .. } => Some((at, "hole")),
            Token::Word { kind: "shaft", .. } => Some((at, "shaft")),
            _ => None,
        })
        .collect();
    // The part in trouble is named first; a pin after its own size is the mate.
    let (_, part) = *nouns.first()?;
    let mut roles: Vec<(Role, &Num)> = Vec::new();
    let mut next = Role::Reading;
    // `supposed to be 1.2500 1.2495`: limits, not what it should be and a reading.
    let two_limits = (0..view.items.len()).any(|at| {
        view.kind_at(at) == Some("should")
            && view.is_number(at + 1)
            && (view.is_number(at + 2)
                || view.is_number(at + 3) && matches!(&*view.said(at + 2), "to" | "and" | "-"))
    });
    if two_limits {
        return None;
    }
    for (at, item) in view.items.iter().enumerate() {
        match &item.token {
            Token::Word { kind: "should", .. } => next = Role::Should,
            Token::Word { kind: "connector", name: "for" } if view.said(at) == "for" => {
                next = Role::Mate;
            }
            Token::Number(num) => {
                let after = view.items.get(at + 1).map(|item| &item.token);
                let role = match after {
                    Some(Token::Word { kind: "off", name }) => Role::Off(name),
                    _ => next,
                };
                roles.push((role, num));
                next = Role::Reading;
            }
            _ => {}
        }
    }
    let of =
        |wanted: Role| roles.iter().filter(move |(role, _)| *role == wanted).map(|(_, num)| *num);
    let readings: Vec<&Num> = of(Role::Reading).collect();
    let should: Vec<&Num> = of(Role::Should).collect();
    let mates: Vec<&Num> = of(Role::Mate).collect();
    let off = roles.iter().find_map(|(role, num)| match role {
        Role::Off(word) => Some((*word, *num)),
        _ => None,
    });
    // `bored 3/4 to .7545, too big`: what it measures, not how much it is out.
    if let (Some((_, off)), [other], [], []) | (Some((_, off)), [], [other], []) =
        (off, &readings[..], &should[..], &mates[..])
        && off.mm(system) > 0.5 * other.mm(system)
        && view.words("fit").count() <= 1
        && nouns.iter().all(|(_, noun)| *noun == part)
    {
        let (reading, nominal) = match (is_nominal(off, system), is_nominal(other, system)) {
            (false, true) => (off, *other),
            (true, false) => (*other, off),
            _ => return None,
        };
        let fit = view.word("fit").map_or_else(String::new, |word| format!(", {word}"));
        return Some(Said::plain(format!(
            "rescue {part} {} should be {}{fit}",
            reading.plain(system),
            nominal.plain(system)
        )));
    }
    // `bored it .8760, shaft oughta be two thou under`: what was bored is the other part.
    if part == "shaft" && view.types(&["bored", "bored it", "reamed", "reamed it"]) {
        return None;
    }
    // A second part has its own size said as the mate's, or nothing is known of it.
    if nouns.iter().any(|(_, other)| *other != part) && mates.is_empty() {
        return None;
    }
    let mut words = view.words("fit");
    let word = words.next();
    if words.next().is_some() || should.len() + mates.len() > 1 {
        return None;
    }
    // `pin three tenths over .500, press it in what`: its mate is asked for.
    if word.is_some() && !in_trouble && (off.is_some() || view.has("asking")) {
        return None;
    }
    let fit = word.map_or_else(String::new, |word| format!(", {word}"));
    let list =
        |nums: &[&Num]| nums.iter().map(|num| num.plain(system)).collect::<Vec<_>>().join(" ");
    if let Some((word, off)) = off {
        let small = matches!(off.unit, Some(Unit::Thou | Unit::Tenth | Unit::Micron))
            || off.mm(system) < 2.0;
        let size = match (&readings[..], &should[..], &mates[..]) {
            ([one], [], []) | ([], [one], []) | ([], [], [one]) => *one,
            ([], [], []) if small => {
                let off = off.plain(system);
                let sizes = match system {
                    System::Inches => ["1/2in", "3/4in"],
                    System::Millimetres => ["20mm", "25mm"],
                };
                return Some(Said::ask(
                    "what size it should be is not said",
                    sizes
                        .iter()
                        .map(|size| format!("rescue {part} {off} {word} {size}{fit}"))
                        .collect(),
                ));
            }
            _ => return None,
        };
        return small.then(|| {
            Said::plain(format!(
                "rescue {part} {} {word} {}{fit}",
                off.plain(system),
                size.plain(system)
            ))
        });
    }
    if readings.is_empty() || readings.len() > 4 {
        return None;
    }
    let ball = view.one(|token| match token {
        Token::Bearing(ball) => Some(*ball),
        _ => None,
    });
    if view.has("bearing") || view.count(|token| matches!(token, Token::Bearing(_))) > 0 {
        let feature = if part == "hole" { Feature::Hole } else { Feature::Shaft };
        // A ring is metric; its bore may be read in inches.
        let (mm, ring) = match (ball, &mates[..]) {
            (Some(ball), []) => (ball.seat_size(feature).millimetres(), ball.number().to_owned()),
            (None, [ring]) if view.has("bearing") => {
                (ring.mm(System::Millimetres), ring.plain(System::Millimetres))
            }
            _ => return None,
        };
        let near = |num: &&&Num, system| (num.mm(system) - mm).abs() < 0.05 * mm;
        let each = readings.iter().map(|num| {
            [System::Inches, System::Millimetres]
                .into_iter()
                .find(|system| near(&num, *system))
                .map(|system| num.plain(system))
        });
        let each = each.collect::<Option<Vec<_>>>()?.join(" ");
        return Some(Said::plain(format!("rescue {part} {each} for bearing {ring}")));
    }
    // A part that was cut for a nominal size and a fit is suited as it is.
    if let ([one], Some(_), false) = (&should[..], word, in_trouble)
        && is_nominal(one, system)
    {
        return None;
    }
    let last = match (&should[..], &mates[..]) {
        ([one], []) => format!("should be {}", one.plain(system)),
        ([], [one]) => format!("mate {}", one.plain(system)),
        _ => return None,
    };
    Some(Said::plain(format!("rescue {part} {} {last}{fit}", list(&readings))))
}

/// Pitches that an ISO metric thread is listed with.
const METRIC: [f64; 17] =
    [0.35, 0.4, 0.45, 0.5, 0.6, 0.7, 0.75, 0.8, 1.0, 1.25, 1.5, 1.75, 2.0, 2.5, 3.0, 3.5, 4.0];

/// `thread .308 18 tpi`; `7.85 1.25`: a crest and a pitch.
pub(crate) fn by_mic(view: &View, system: System) -> Option<Said> {
    view.only(&["role"], |token| matches!(token, Token::Number(_) | Token::PerInch(_)))?;
    if view.words("role").any(|role| role != "od") {
        return None;
    }
    let turns = view.one(|token| match token {
        Token::PerInch(turns) => Some(turns.clone()),
        _ => None,
    });
    let numbers: Vec<&Num> = view.numbers().map(|(_, num)| num).collect();
    match (turns, &numbers[..]) {
        // Turns to an inch are said of inch threads.
        (Some(turns), [size]) if !size.is_fraction => {
            let system = if size.unit.is_none() && size.value >= 12.0 {
                System::Millimetres
            } else {
                System::Inches
            };
            Some(Said::plain(format!("thread {} {turns} tpi", size.plain(system))))
        }
        (None, [size, pitch]) if system == System::Millimetres => {
            let is_pitch = METRIC.iter().any(|listed| (listed - pitch.value).abs() < 1e-9);
            let is_read = size.places > 0 && size.value > 4.0 * pitch.value && size.value < 100.0;
            (is_pitch && is_read).then(|| {
                Said::plain(format!("thread {} pitch {}", size.plain(system), pitch.plain(system)))
            })
        }
        _ => None,
    }
}

/// `aluminium piston 1in in a cast iron cylinder at 150C`.
pub(crate) fn service(view: &View, system: System) -> Option<Said> {
    view.only(
        &[
            "service",
            "service-kind",
            "material",
            "service-outer",
            "plastic",
            "grip",
            "hole",
            "shaft",
            "hub",
            "bushing",
        ],
        |token| matches!(token, Token::Number(_) | Token::Temperature(_)),
    )?;
    // A wheel, a knob, a tube: what runs, and no housing; what is printed may be any.
    let is_other = view.words("hub").any(|name| name != "ring") || view.has("bushing");
    if is_other && !view.has("plastic") {
        return None;
    }
    // What is of a printer's plastic is printed.
    let head = match view.word("service") {
        Some(head) => head,
        None if view.has("plastic") && view.has("grip") && view.has("shaft") => "printed",
        None => return None,
    };
    // `piston 1in aluminium in`: what it runs in is missing.
    if view
        .items
        .last()
        .is_some_and(|item| matches!(item.token, Token::Word { kind: "connector", .. }))
    {
        return None;
    }
    if view.words("service").any(|other| other != head) {
        return None;
    }
    let mut numbers = view.numbers();
    let ((_, size), None) = (numbers.next()?, numbers.next()) else { return None };
    if head == "printed" {
        let (plastic, grip) = (view.word("plastic")?, view.word("grip")?);
        // The pin's metal changes nothing; another part's is not known here.
        let is_pins = |at: usize| {
            !matches!(view.items[at].token, Token::Word { kind: "material", .. })
                || matches!(view.kind_at(at + 1), Some("shaft"))
        };
        let is_one = view.words("plastic").count() == 1
            && !view.has("service-kind")
            && !view.has("service-outer")
            && (0..view.items.len()).all(is_pins)
            && view.words("grip").all(|other| other == grip)
            && !view.tokens().any(|token| matches!(token, Token::Temperature(_)));
        return is_one
            .then(|| Said::plain(format!("printed {plastic} {}, {grip}", size.plain(system))));
    }
    if view.has("plastic") || view.has("grip") {
        return None;
    }
    let pair = pair_of(view)?;
    let kinds: Vec<&str> = view.words("service-kind").collect();
    let kind = kinds.iter().fold(String::new(), |kind, next| kind + " " + next);
    let heat = view.one(|token| match token {
        Token::Temperature(heat) => Some(heat.clone()),
        _ => None,
    });
    if heat.is_none() && view.count(|token| matches!(token, Token::Temperature(_))) > 0 {
        return None;
    }
    let heat = heat.map_or_else(String::new, |heat| format!(" at {heat}"));
    Some(Said::plain(format!("{head} {}{pair}{kind}{heat}", size.plain(system))))
}

/// ` aluminium in cast iron`: what the inner and the outer part are made of. A metal
/// after `in`, or before the cylinder, is the outer part's; one before the piston is
/// the inner one's.
fn pair_of(view: &View) -> Option<String> {
    let near = |at: usize| view.items.get(at).map(|item| &item.token);
    let side = |at: usize| match (at.checked_sub(1).and_then(near), near(at + 1)) {
        (_, Some(Token::Word { kind: "service", .. })) => Some(false),
        // `piston ali bore 1.5`: the piston's, or the bore's.
        (Some(Token::Word { kind: "service", .. }), _) => None,
        (Some(Token::Word { kind: "connector", name: "in" }), _)
        | (_, Some(Token::Word { kind: "service-outer", .. })) => Some(true),
        _ => None,
    };
    let metals: Vec<(&str, Option<bool>)> = (0..view.items.len())
        .filter_map(|at| match near(at)? {
            Token::Word { kind: "material", name } => Some((*name, side(at))),
            _ => None,
        })
        .collect();
    Some(match metals[..] {
        [] => String::new(),
        [(outer, Some(true))] => format!(" in {outer}"),
        [(inner, _)] => format!(" {inner}"),
        [(outer, Some(true)), (inner, None | Some(false))]
        | [(outer, None), (inner, Some(false))]
        | [(inner, Some(false)), (outer, None)]
        | [(inner, Some(false) | None), (outer, Some(true))] => format!(" {inner} in {outer}"),
        _ => return None,
    })
}
