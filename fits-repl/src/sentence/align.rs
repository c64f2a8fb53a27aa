//! Tapers that a lathe turns by itself, and how far to set it over.

use crate::sentence::{
    Said,
    roles::assign,
    token::{Num, System, Token},
    tools::trimmed_to,
    view::View,
};

/// Two collars: how far to move the tailstock.
pub(crate) fn align(view: &View, system: System) -> Option<Said> {
    // `.7511 tailstock`: that end.
    let mut named = View { items: view.items.clone(), text: view.text.clone() };
    for at in 1..named.items.len() {
        let after_number = matches!(named.items[at - 1].token, Token::Number(_));
        if after_number && view.says("role", "chuck") && view.said(at) == "tailstock" {
            named.items[at].token = Token::Word { name: "tailend", kind: "role" };
        }
    }
    let view = &named;
    view.only(&["head", "role", "bigger", "hub", "shaft", "per-foot"], |token| {
        matches!(token, Token::Number(_))
    })?;
    if view.words("head").any(|head| head != "tail") {
        return None;
    }
    if let Some(taper) = wanted(view, system) {
        return Some(taper);
    }
    // `in 10`: over 10, where nothing else says how far apart.
    let after_in = view.items.windows(2).position(|pair| {
        matches!(pair[0].token, Token::Word { kind: "connector", name: "in" })
            && matches!(pair[1].token, Token::Number(_))
    });
    let skip: Vec<usize> = match after_in {
        Some(at) if !view.says("role", "apart") && !view.says("role", "centres") => vec![at + 1],
        _ => Vec::new(),
    };
    let roles = assign(view, &["role"], &skip, system)?;
    let apart = match (
        skip.first().map(|at| &view.items[*at].token),
        roles.num("apart").or(roles.num("centres")),
    ) {
        (Some(Token::Number(num)), _) | (_, Some(num)) => num.clone(),
        _ => return None,
    };
    let by = |names: [&str; 1]| {
        roles.taken.iter().find(|taken| names.contains(&taken.by)).map(|taken| taken.num.clone())
    };
    let (chuck, tail) = (by(["chuck"]), by(["tailend"]));
    let free: Vec<Num> = roles.free.iter().map(|(_, num, _)| num.clone()).collect();
    let over = match roles.num("centres").filter(|_| roles.num("apart").is_some()) {
        Some(whole) if whole.mm(system) > apart.mm(system) => {
            format!("{} between {}", apart.plain(system), whole.plain(system))
        }
        Some(_) => return None,
        None => apart.plain(system),
    };
    let give = |a: &Num, b: &Num| {
        ((a.mm(system) - b.mm(system)).abs() < 0.05 * a.mm(system)).then(|| {
            Said::plain(format!("align {} {} over {over}", a.plain(system), b.plain(system)))
        })
    };
    if !view.has("bigger") {
        return match (&chuck, &tail, &free[..]) {
            (Some(chuck), None, [tail]) if view.has("role") => give(chuck, tail),
            (Some(chuck), Some(tail), []) | (None, Some(tail), [chuck]) => give(chuck, tail),
            // Which collar was at the headstock is not said.
            (None, None, [a, b]) if give(a, b).is_some() => {
                let (a, b) = (a.plain(system), b.plain(system));
                Some(Said::ask(
                    "which was at the headstock is not said",
                    vec![
                        format!("align {a} {b} over {over}"),
                        format!("align {b} {a} over {over}"),
                    ],
                ))
            }
            (None, None, [taper]) if view.says("head", "tail") && taper.mm(system) < 1.0 => {
                let (a, b) = tapered(taper, system);
                Some(Said::ask(
                    "which end is bigger is not said",
                    vec![
                        format!("align {a} {b} over {over}"),
                        format!("align {b} {a} over {over}"),
                    ],
                ))
            }
            _ => None,
        };
    }
    // `3 thou big at the tail end in 10`
    let mut bigger = view.words("bigger");
    let size = bigger.next()?;
    if bigger.next().is_some() {
        return None;
    }
    let at_tail = view.says("role", "tailend");
    let at_chuck = view.says("role", "chuck");
    if at_tail == at_chuck {
        return None;
    }
    let amount = match (&chuck, &tail, &free[..]) {
        (None, None, [num]) | (Some(num), None, []) | (None, Some(num), []) => num.clone(),
        _ => return None,
    };
    if amount.mm(system) > 2.0 {
        return None;
    }
    let (less, more) = tapered(&amount, system);
    let tail_is_big = at_tail == (size == "big");
    let (a, b) = if tail_is_big { (less, more) } else { (more, less) };
    Some(Said::plain(format!("align {a} {b} over {over}")))
}

/// `1 in 20 over 150`, `.602 per foot 9 long`, `1.25 to 1.0 over 4`: a taper that is
/// wanted.
fn wanted(view: &View, system: System) -> Option<Said> {
    if view.says("bigger", "big") && view.says("bigger", "small") {
        return by_named_ends(view, system);
    }
    // Said of two collars, which a wanted taper has none of.
    if view.has("bigger") || view.says("role", "chuck") || view.says("role", "tailend") {
        return None;
    }
    // The compound slide is set by its angle.
    let said = view.text.to_lowercase();
    if said.starts_with("taper per foot") {
        return per_foot(view, system);
    }
    if ["compound", "top slide", "topslide"].iter().any(|slide| said.contains(slide)) {
        return None;
    }
    let numbers: Vec<(usize, &Num)> = view.numbers().collect();
    let of = |at: usize| numbers.iter().position(|(place, _)| *place == at);
    let in_turn = |at: usize, words: &[&str]| words.contains(&&*view.said(at));
    let mut found = None;
    for (one, (at, num)) in numbers.iter().enumerate() {
        let after = at + 1;
        // `1/2 in per ft`
        let is_in = view.said(after) == "in";
        let is_per_foot = view.kind_at(after + usize::from(is_in)) == Some("per-foot");
        let next = of(at + 2).or_else(|| of(at + 1));
        let taper = match next {
            _ if is_per_foot => {
                let foot = if system == System::Inches { "12in" } else { "304.8mm" };
                (format!("{}:{foot}", num.plain(system)), false, vec![one])
            }
            Some(next) if num.text == "1" && num.unit.is_none() => {
                let turns = numbers[next].1;
                let is_ratio = in_turn(after, &[":", "in"])
                    && turns.unit.is_none()
                    && turns.places == 0
                    && !turns.is_fraction;
                if !is_ratio {
                    continue;
                }
                (format!("1:{}", turns.text), false, vec![one, next])
            }
            // The first two figures: more apart than two collars are.
            Some(next)
                if one == 0
                    && (view.types(&["taper", "tapers", "tapered", "taper from"])
                        || view.says("head", "tail") && in_turn(after, &["to", "down to"])) =>
            {
                let (a, b) = (num.mm(system), numbers[next].1.mm(system));
                let is_by_ends = in_turn(after, &["to", "down to", "and"]) || next == 1;
                if !is_by_ends || (a - b).abs() < 0.05 * a.max(b) || a.min(b) < 0.4 * a.max(b) {
                    continue;
                }
                let (big, small) =
                    if a > b { (*num, numbers[next].1) } else { (numbers[next].1, *num) };
                (format!("{} - {}", big.plain(system), small.plain(system)), true, vec![one, next])
            }
            _ => continue,
        };
        found = Some(taper);
        break;
    }
    // By its two ends it goes over its own length.
    let (taper, is_by_ends, used) = found?;
    let rest: Vec<(usize, &Num)> =
        (0..numbers.len()).filter(|at| !used.contains(at)).map(|at| numbers[at]).collect();
    // The whole between centres is the longer one.
    let (over, between) = match rest[..] {
        [] if !is_by_ends => (None, None),
        [(_, over)] => (Some(over), None),
        [(_, a), (_, b)]
            if view.says("role", "centres")
                || view.types(&["part", "part is", "job", "bar", "work", "shaft"]) =>
        {
            let (a, b) = if a.mm(system) < b.mm(system) { (a, b) } else { (b, a) };
            (Some(a), Some(b))
        }
        _ => return None,
    };
    let taper = match over {
        Some(over) if is_by_ends => format!("{taper}:{}", over.plain(system)),
        _ => taper,
    };
    let Some(over) = over else {
        let lengths = match system {
            System::Inches => ["4in", "8in"],
            System::Millimetres => ["100mm", "200mm"],
        };
        let choices = lengths.map(|length| format!("align taper {taper} over {length}"));
        return Some(Said::ask("the part's length is not said", choices.to_vec()));
    };
    let between =
        between.map_or_else(String::new, |whole| format!(" between {}", whole.plain(system)));
    Some(Said::plain(format!("align taper {taper} over {}{between}", over.plain(system))))
}

/// `taper per foot from .750 to .700 in 2.4`: so much to a foot.
fn per_foot(view: &View, system: System) -> Option<Said> {
    let numbers: Vec<&Num> = view.numbers().map(|(_, num)| num).collect();
    let [a, b, over] = numbers[..] else { return None };
    let (small, large) = if a.by_size(b, system).is_lt() { (a, b) } else { (b, a) };
    let same = |num: &Num| num.unit.is_none() && !num.is_fraction && system == System::Inches;
    let is_taper = over.mm(system) > large.mm(system) - small.mm(system);
    (is_taper && same(over) && large.by_size(small, system).is_gt()).then(|| {
        let (large, small) = (large.plain(system), small.plain(system));
        Said::plain(format!("({large} - {small})*12/{}", over.text))
    })
}

/// `120 long big 40 small 36`: each end by its name, and how far apart they are.
fn by_named_ends(view: &View, system: System) -> Option<Said> {
    let end = |name: &str| {
        let named = |at: &usize| matches!(view.items[*at].token, Token::Word { kind: "bigger", name: is } if is == name);
        let mut places = (0..view.items.len()).filter(named);
        let at = places.next()?;
        let number = |at: usize| view.is_number(at).then_some(at);
        let beside = number(at + 1).or_else(|| number(at.checked_sub(1)?));
        places.next().is_none().then_some(beside?)
    };
    let (big, small) = (end("big")?, end("small")?);
    let num = |at: usize| view.numbers().find(|(place, _)| *place == at).map(|(_, num)| num);
    let rest: Vec<&Num> =
        view.numbers().filter(|(at, _)| *at != big && *at != small).map(|(_, num)| num).collect();
    let ([over], big, small) = (&rest[..], num(big)?, num(small)?) else { return None };
    let over = over.plain(system);
    big.by_size(small, system).is_gt().then(|| {
        let (big, small) = (big.plain(system), small.plain(system));
        Said::plain(format!("align taper {big} - {small}:{over} over {over}"))
    })
}

/// A nominal inch, or 25 mm, and so much more.
fn tapered(amount: &Num, system: System) -> (String, String) {
    let mm = amount.mm(system);
    let is_inch = amount.plain(system).ends_with("in")
        || amount.plain(system).ends_with("thou")
        || amount.plain(system).ends_with("tenths");
    if is_inch {
        ("1in".into(), format!("{}in", trimmed_to(6, 1.0 + mm / 25.4)))
    } else {
        ("25mm".into(), format!("{}mm", trimmed_to(6, 25.0 + mm)))
    }
}
