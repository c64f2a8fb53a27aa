//! A part in hand, and what goes with it.

use crate::sentence::{
    Said,
    fit::circumstances,
    roles::assign,
    sizes::{Fit, NOUNS, fit_of, is_fit, is_nominal, metals, nominal_of},
    sums::by_amount,
    token::{Num, System, Token},
    view::{Item, View},
};

/// A part in hand and a fit: the other part.
#[allow(clippy::too_many_lines, reason = "one rule after another, each short")]
pub(crate) fn suit(view: &View, system: System) -> Option<Said> {
    view.only(
        &[
            "fit", "material", "state", "hole", "shaft", "hub", "bushing", "head", "reads",
            "start", "should", "bar", "role",
        ],
        |token| is_fit(token) || matches!(token, Token::Span(..)),
    )?;
    if view.words("head").any(|head| {
        !matches!(
            head,
            "suit" | "turnto" | "towhat" | "whatnow" | "whatfit" | "ream" | "clearance" | "interf"
        )
    }) {
        return None;
    }
    // `.7506, not .750`: a size is denied where another stands before it.
    let denies_more = (0..view.items.len()).any(|at| {
        let is_size = |item: &Item| matches!(item.token, Token::Number(_));
        matches!(&*view.said(at), "not" | "instead of")
            && !(view.items.get(at + 1).is_some_and(is_size)
                && view.items[..at].iter().any(is_size))
    });
    if denies_more {
        return None;
    }
    // `old shaft mics .9965, bore to suit a new one`: the new one's size is not said; nor is
    // it by what an old one was.
    let lower = view.text.to_lowercase();
    let says = |words: &[&str]| {
        let is_word = |word: &str| words.contains(&word);
        lower.split(|c: char| !c.is_alphanumeric()).any(is_word)
    };
    let is_new = ["new one", "new shaft", "new pin", "new spindle", "new journal"];
    let for_new = says(&["worn"]) && says(&["suit", "for", "fit"]);
    if for_new && is_new.iter().any(|new| lower.contains(new)) && view.numbers().count() == 1
        || says(&["old"]) && says(&["was"])
        // `worn to about 20.06`: no reading.
        || says(&["worn", "wore"]) && says(&["about", "roughly", "around", "approx"])
    {
        return None;
    }
    if fit_of(view).is_none() {
        let by_amount = assign(view, NOUNS, &[], system)
            .filter(|_| !view.has("fit"))
            .and_then(|roles| by_amount(view, &roles, system));
        return by_amount.map(Said::plain).or_else(|| unsaid_suit(view, system));
    }
    // How tight is said by the fit; a part that was spoiled has ways out of its own.
    let spoiled = || view.types(&["overbored", "i overbored", "overturned"]);
    if view.says("head", "interf") || view.says("reads", "beyond") && spoiled() {
        return None;
    }
    if let Some(span) = view.one(|token| match token {
        Token::Span(..) => Some(token.clone()),
        _ => None,
    }) {
        return spanned(view, &span, system);
    }
    let of_shaft = view.one(|token| match token {
        Token::Shaft(class) => Some(class),
        _ => None,
    });
    let fit = match fit_of(view)? {
        // The class of the part to be cut: the hole in hand is what it is.
        Fit::Shaft(class)
            if view.has("hole") && (view.has("shaft") || view.says("head", "turnto")) =>
        {
            Fit::Pair(format!("H7/{class}"))
        }
        Fit::Hole(_) | Fit::Shaft(_) => return None,
        fit => fit,
    };
    let roles = assign(view, NOUNS, &[], system)?;
    let numbers: Vec<_> = view.numbers().collect();
    if view.words("role").any(|role| !matches!(role, "od" | "id")) {
        return None;
    }
    if let Some(asked) = of_two_nouns(view, &numbers, &fit, system) {
        return Some(asked);
    }
    // A nominal size beside the measured one.
    let (in_hand, nominal): (usize, Option<&Num>) = match &numbers[..] {
        [(at, _)] => (*at, None),
        [(a, x), (b, y)] => {
            let should = view.has("should");
            let far = (x.mm(system) - y.mm(system)).abs() / x.mm(system);
            if far > 0.05 || (matches!(fit, Fit::Word(_)) && !should && far > 0.01) {
                return None;
            }
            let read = |at: usize| {
                roles.taken.iter().any(|taken| taken.at == at && taken.is_measured)
                    || roles.free.iter().any(|(place, _, measured)| *place == at && *measured)
            };
            let after_should = |at: usize| {
                at.checked_sub(1).is_some_and(|at| {
                    matches!(view.items[at].token, Token::Word { kind: "should", .. })
                })
            };
            match (is_nominal(x, system), is_nominal(y, system)) {
                (true, false) => (*b, Some(x)),
                (false, true) => (*a, Some(y)),
                (false, false) if after_should(*b) => (*a, Some(y)),
                (true, true) if read(*a) && !read(*b) => (*a, Some(y)),
                (true, true) if read(*b) && !read(*a) => (*b, Some(x)),
                _ => return None,
            }
        }
        _ => return None,
    };
    // A size of four places that another part is named for is as it measures.
    if nominal.is_some_and(|num| !num.is_fraction && num.places > 3)
        && view.has("hole")
        && view.has("shaft")
        && roles.count("hole") + roles.count("shaft") > 1
        && !view.has("should")
    {
        return None;
    }
    // `H7/s6, shaft at 30` says the nominal size.
    let only_at = (0..view.items.len()).all(|at| {
        !matches!(view.items[at].token, Token::Word { kind: "reads", .. }) || view.said(at) == "at"
    });
    if view.has("reads")
        && only_at
        && numbers.iter().all(|(_, num)| is_nominal(num, system) && num.places < 3)
    {
        return None;
    }
    let num = numbers.iter().find(|(at, _)| *at == in_hand).map(|(_, num)| *num)?;
    // `hole already at .7506, …`: the noun before the verb, whatever stands after.
    let mut before = view.items[..in_hand].iter().rev().map(|item| &item.token);
    let said_of = before
        .find(|token| {
            !matches!(token, Token::Word { kind: "small" | "reads" | "start" | "connector", .. })
        })
        .filter(|_| measured_before(view, in_hand))
        .and_then(|token| match token {
            Token::Word { kind: kind @ ("hole" | "shaft" | "hub"), .. } => Some(*kind),
            _ => None,
        });
    let owner = roles.taken.iter().find(|taken| taken.at == in_hand);
    if let (Some(of), Some(owner)) = (said_of, owner)
        && matches!((of, owner.by), ("hole" | "hub", "shaft") | ("shaft", "hole" | "hub"))
        && view.has("reads")
    {
        return None;
    }
    let is_measured = owner.is_some_and(|owner| owner.is_measured)
        || roles.free.iter().any(|(at, _, measured)| *at == in_hand && *measured);
    let names = |kind: &str| view.has(kind);
    // Which side is in hand.
    // `tube id .870, plug`: the number is its own diameter's, whoever is named after it.
    let own_role =
        view.items[..in_hand].iter().rev().map(|item| &item.token).find(|token| {
            !matches!(token, Token::Word { kind: "small" | "reads" | "connector", .. })
        });
    let turned =
        behind_its_nominal(view, in_hand, nominal, system).or_else(|| others_figure(view, in_hand));
    let side = match owner.map(|owner| owner.by) {
        _ if turned.is_some() => turned?,
        _ if matches!(own_role, Some(Token::Word { kind: "role", name: "id" })) => "hole",
        // `shaft already .7488 bore for slip`
        Some("hole" | "hub") if said_of == Some("shaft") => "shaft",
        Some("shaft") if matches!(said_of, Some("hole" | "hub")) => "hole",
        Some("hole" | "hub") => "hole",
        Some("shaft") => "shaft",
        Some("bushing") => {
            let is_pressed = view.says("state", "pressed") || view.says("state", "inplace");
            let for_shaft = view.items.iter().enumerate().any(|(at, item)| {
                matches!(item.token, Token::Word { name: "turnto", .. })
                    && ["shaft", "pin", "spindle"].iter().any(|noun| view.said(at).contains(noun))
            });
            // `old bush is .5018 in the bore, journal to run in it`: its own bore.
            let idle = |at: &usize| !matches!(view.kind_at(*at), Some("small" | "connector"));
            let own_bore = (in_hand + 1..view.items.len()).find(idle);
            // `bored the bushing 1.2512 … the shaft`: a hole by the verb alone.
            let has_other = names("hub")
                || (0..view.items.len()).any(|at| {
                    matches!(view.kind_at(at), Some("hole"))
                        && Some(at) != own_bore
                        && !matches!(
                            &*view.said(at),
                            "bored" | "reamed" | "bored the" | "reamed the"
                        )
                });
            if is_pressed || for_shaft || (names("shaft") && !has_other) {
                "hole"
            } else {
                "bushing"
            }
        }
        None if names("bar") && !names("shaft") => "shaft",
        _ if names("hole") != names("shaft") && !names("hub") && !names("bushing") => {
            // `bored it .7515, …`: the only noun.
            if names("hole") { "hole" } else { "shaft" }
        }
        _ if names("bar") => "shaft",
        // A bushing's outside goes into a hole.
        Some("role") | None if names("bushing") && view.says("role", "od") && !names("shaft") => {
            "shaft"
        }
        None if view.says("role", "od") && !names("shaft") => "shaft",
        None if view.says("role", "id") && !names("hole") => "hole",
        // `hole already reamed, mics 20.013`: the verb is of the noun before it.
        None if measured_before(view, in_hand) => {
            let mut before = view.items[..in_hand].iter().rev().map(|item| &item.token);
            match before.find_map(|token| match token {
                Token::Word { kind: kind @ ("hole" | "hub" | "shaft" | "bushing"), .. } => {
                    Some(*kind)
                }
                _ => None,
            })? {
                "shaft" => "shaft",
                "hole" | "hub" => "hole",
                _ => return None,
            }
        }
        _ => return None,
    };
    let side = if side == "bushing" && view.says("role", "od") { "shaft" } else { side };
    let wants_other = match side {
        "hole" => names("shaft") || view.says("head", "turnto"),
        _ => names("hole") || names("hub"),
    };
    let says_suit = view.says("head", "suit")
        || view.says("head", "towhat")
        || view.says("head", "whatnow")
        || view.says("head", "turnto");
    // A nominal number without a verb, a mate or `to suit` is not a part in hand.
    if nominal.is_none() && is_nominal(num, system) && !is_measured {
        return None;
    }
    if !(is_measured || says_suit || wants_other || !is_nominal(num, system)) {
        return None;
    }
    let reading = num.plain(system);
    let more = if view.has("material") && (view.has("bushing") || side == "shaft") {
        // What the part in hand is made of changes nothing: it is there.
        let (hub, _) = metals(view)?;
        hub.map_or_else(String::new, |hub| format!(", hub {hub}"))
    } else {
        circumstances(view, &fit)?
    };
    let text = match (&fit, side) {
        (Fit::Word(word), "bushing") => format!("bushing {reading}..{reading}, {word}{more}"),
        (Fit::Word(word), side) => format!("{side} {reading}, {word}{more}"),
        (_, "bushing") => return None,
        (fit, side) => {
            let nominal =
                nominal.map(|num| num.plain(system)).or_else(|| nominal_of(num, system))?;
            format!("{nominal} {}, {side} = {reading}", fit.text())
        }
    };
    // `I've got a 20 mm pin`: by name, or as it measures?
    let is_got = |at: usize| {
        !matches!(view.items[at].token, Token::Word { kind: "reads" | "start", .. })
            || ["got", "i've got", "ive got", "got a", "i get", "is", "it's", "its"]
                .contains(&&*view.said(at))
    };
    // `slip fit 27.2 post`: one decimal of a millimetre is in many a size's name.
    let may_be_named = || {
        side != "bushing"
            && reading.ends_with("mm")
            && num.places == 1
            && !is_measured
            && !view.has("head")
    };
    let is_named = || {
        is_nominal(num, system)
            && (num.places == 0 || num.is_fraction)
            && view.has("reads")
            && (0..view.items.len()).all(is_got)
    };
    if let (Fit::Word(word), None) = (&fit, nominal)
        && (may_be_named() || is_named())
    {
        let named = format!("{reading} {word}{more}");
        return Some(Said::ask("the size by name, or as it measures?", vec![named, text]));
    }
    // The preferred fits of ISO 286-1 have an H8 for shafts coarser than IT6.
    if let Some(wider) = text.contains(" H7/").then(|| text.replacen(" H7/", " H8/", 1))
        && of_shaft.is_some_and(|class| !class.ends_with(['5', '6']))
    {
        return Some(Said::ask("the hole's class is not said", vec![wider, text]));
    }
    Some(Said::plain(text))
}

/// `1.25 bore 1.2506 need shaft`: the nominal size, the part, and what it measures.
fn behind_its_nominal(
    view: &View,
    in_hand: usize,
    nominal: Option<&Num>,
    system: System,
) -> Option<&'static str> {
    let [size, noun] = [2, 1].map(|back| view.items.get(in_hand.wrapping_sub(back)));
    let of = match noun?.token {
        Token::Word { kind: "hole" | "hub", .. } => "hole",
        Token::Word { kind: "shaft", .. } => "shaft",
        _ => return None,
    };
    let Token::Number(size) = &size?.token else { return None };
    nominal.is_some_and(|nominal| nominal.by_size(size, system).is_eq()).then_some(of)
}

/// `shaft to run in .5010`, `bore to suit 15.87`: the figure is the part's that goes
/// with the one that is named. None where the figure has a noun of its own.
fn others_figure(view: &View, in_hand: usize) -> Option<&'static str> {
    let lead = view.lead(in_hand, &["small"])?;
    let noun = |at: usize| match view.kind_at(at) {
        Some("hole" | "hub") => Some("hole"),
        Some("shaft") => Some("shaft"),
        _ => None,
    };
    // A noun that follows at once is the figure's own.
    if noun(in_hand + 1).is_some() || view.has("bushing") || view.has("reads") {
        return None;
    }
    let mut nouns: Vec<&str> = (0..lead).filter_map(noun).collect();
    nouns.dedup();
    let [named] = nouns[..] else { return None };
    let said = view.said(lead);
    let goes = |words: &[&str]| words.contains(&&*said);
    let suits = goes(&["to suit", "suit", "to fit", "to match", "matching", "to go with"]);
    // `to run in` ends with it too.
    let ends =
        |words: &[&str]| said.split(' ').next_back().is_some_and(|last| words.contains(&last));
    match named {
        "shaft" if suits || ends(&["in", "into", "inside"]) => Some("hole"),
        "hole" if suits || ends(&["on", "onto", "over"]) => Some("shaft"),
        _ => None,
    }
}

/// `pin .2497 hole for light press`: one figure between two nouns is either's.
fn of_two_nouns(view: &View, numbers: &[(usize, &Num)], fit: &Fit, system: System) -> Option<Said> {
    let ([(at, num)], Fit::Word(word)) = (numbers, fit) else { return None };
    let noun = |item: &Item| match item.token {
        Token::Word { kind: kind @ ("hole" | "shaft"), .. } => Some(kind),
        _ => None,
    };
    let (before, after) = (view.items.get(at.checked_sub(1)?)?, view.items.get(at + 1)?);
    let (a, b) = (noun(before)?, noun(after)?);
    (a != b && !view.has("reads") && !view.has("material")).then(|| {
        let said = |kind| format!("{kind} {}, {word}", num.plain(system));
        Said::ask("which of the two it is the size of is not said", vec![said(a), said(b)])
    })
}

/// A reading verb stands before the number in its clause.
fn measured_before(view: &View, at: usize) -> bool {
    let before = view.items[..at].iter().rev().map(|item| &item.token);
    before
        .take_while(|token| {
            matches!(token, Token::Word { kind: "small" | "reads" | "start" | "connector", .. })
        })
        .any(|token| {
            matches!(
                token,
                Token::Word { kind: "reads", .. } | Token::Word { kind: "start", name: "now" }
            )
        })
}

/// A part that is known to lie between two figures.
fn spanned(view: &View, span: &Token, system: System) -> Option<Said> {
    let (Token::Span(low, high), Some(Fit::Word(word))) = (span, fit_of(view)) else {
        return None;
    };
    if view.numbers().next().is_some()
        // A dowel has limits of its own.
        || view.types(&["dowel", "dowels", "dowel pin"])
        || view.has("role")
        || view.has("bushing")
        || view.has("head") && !view.says("head", "suit") && !view.says("head", "turnto")
    {
        return None;
    }
    let noun = |at: &usize| match view.items[*at].token {
        Token::Word { kind: "hole" | "hub", .. } => Some("hole"),
        Token::Word { kind: "shaft", .. } => Some("shaft"),
        _ => None,
    };
    let at = view.items.iter().position(|item| item.token == *span)?;
    // The noun whose figures they are stands before them.
    let side = (0..at).rev().find_map(|at| noun(&at))?;
    let unit = high.unit.or(low.unit);
    let give = |num: &Num| Num { unit: num.unit.or(unit), ..num.clone() }.plain(system);
    let more = circumstances(view, &Fit::Word(word))?;
    (low.mm(system) < high.mm(system))
        .then(|| Said::plain(format!("{side} {}..{}, {word}{more}", give(low), give(high))))
}

/// A part in hand, and what goes with it is wanted, with no word for the fit.
pub(crate) fn unsaid_suit(view: &View, system: System) -> Option<Said> {
    if view.has("fit")
        || view.has("material")
        || view.has("state")
        || view.has("bushing")
        || view
            .count(|token| !matches!(token, Token::Number(_) | Token::Break | Token::Word { .. }))
            > 0
    {
        return None;
    }
    let roles = assign(view, NOUNS, &[], system)?;
    let asks =
        view.says("head", "whatnow") || view.says("head", "suit") || view.says("head", "turnto");
    let numbers: Vec<_> = view.numbers().collect();
    let (at, num) = match numbers[..] {
        [only] => only,
        [(a, x), (b, y)] if (x.mm(system) - y.mm(system)).abs() < 0.01 * x.mm(system) => {
            match (is_nominal(x, system), is_nominal(y, system)) {
                (true, false) => (b, y),
                (false, true) => (a, x),
                _ => return None,
            }
        }
        _ => return None,
    };
    if is_nominal(num, system) || !asks {
        return None;
    }
    let owner = roles.taken.iter().find(|taken| taken.at == at).map(|taken| taken.by);
    let side = match owner {
        Some("hole" | "hub") => "hole",
        Some("shaft") => "shaft",
        None if view.has("hole") != view.has("shaft") => {
            if view.has("hole") {
                "hole"
            } else {
                "shaft"
            }
        }
        _ => return None,
    };
    let reading = num.plain(system);
    Some(Said::ask(
        "how they are to fit is not said",
        ["sliding", "running", "press"].map(|word| format!("{side} {reading}, {word}")).to_vec(),
    ))
}
