//! A nominal size and a fit: what to cut both parts to.

use std::fmt::Write as _;

use crate::sentence::{
    Said,
    holes::coarse,
    roles::{DIAMETER, assign},
    sizes::{Fit, NOUNS, fit_of, is_fit, is_nominal, limit_places, limits, nominal_of, says_pair},
    token::{Num, System, Token},
    tube,
    vague::{bushing_outside, turned_class, turns_though_tight, vague_fit},
    view::View,
};

/// `, hub bronze, thin tube`: circumstances of a word.
pub(crate) fn circumstances(view: &View, fit: &Fit) -> Option<String> {
    let mut text = String::new();
    let mut hub = None;
    for (at, item) in view.items.iter().enumerate() {
        if let Token::Word { name, kind: "material" } = item.token {
            // What the shaft is made of changes no word.
            let is_shaft = matches!(
                view.items.get(at + 1).map(|next| &next.token),
                Some(Token::Word { kind: "shaft", .. })
            ) && !matches!(
                at.checked_sub(1).and_then(|at| view.items.get(at)).map(|before| &before.token),
                Some(Token::Word { name: "in", .. })
            );
            if is_shaft || ["drill rod", "silver steel", "drillrod"].contains(&&*view.said(at)) {
                return None;
            }
            if hub.is_some_and(|known| known != name) {
                return None;
            }
            hub = Some(name);
        }
    }
    match (hub, fit) {
        (Some(hub), Fit::Word(_)) => {
            let _ = write!(text, ", hub {hub}");
        }
        (Some(_), _) => return None,
        (None, _) => {}
    }
    if view.says("state", "thin") {
        if !matches!(fit, Fit::Word(_)) {
            return None;
        }
        text.push_str(", thin tube");
    }
    Some(text)
}

/// A nominal size and a fit: what to cut both parts to.
#[allow(clippy::too_many_lines, reason = "one rule after another, each short")]
pub(crate) fn fit(view: &View, system: System) -> Option<Said> {
    view.only(
        &[
            "fit", "vague", "material", "state", "hole", "shaft", "hub", "bushing", "head", "role",
            "or",
        ],
        |token| {
            is_fit(token)
                || matches!(
                    token,
                    Token::Deviations { .. } | Token::Span(..) | Token::AnsiClass(_) | Token::Cross
                )
        },
    )?;
    // `old bore was .750, new one press`: the size of a part that is no more.
    if view.types(&["old"]) && view.types(&["was", "were"]) {
        return None;
    }
    // `H7/g6 with shaft basis`: the classes say another.
    let says_shaft = view.types(&["shaft basis", "shaft-basis"]);
    let says_hole = view.types(&["hole basis", "hole-basis"]);
    if let Some(Fit::Pair(pair)) = fit_of(view)
        && (says_shaft && !pair.contains("/h") || says_hole && !pair.starts_with('H'))
    {
        return None;
    }
    if says_shaft && matches!(fit_of(view), Some(Fit::Word(_) | Fit::Inch(_))) {
        return None;
    }
    // `journal 1.5, all in mm`: the bare figure is no inches.
    let is_bare = view.bare().any(|num| !num.is_fraction);
    if system == System::Inches && is_bare && view.types(&["in mm", "in metric"]) {
        return None;
    }
    // What is printed, and a piston that runs, have rules of their own.
    let is_printed = view.words("material").any(|name| matches!(name, "pla" | "petg" | "abs"));
    let runs = || fit_of(view).is_none_or(|fit| fit.text().contains("running"));
    if is_printed && view.has("shaft") || view.types(&["piston", "pistons"]) && runs() {
        return None;
    }
    if let Some(said) = tube::plug(view, system) {
        return Some(said);
    }
    // `H7 hole`, `spin` of a fit that turns: heads that say nothing more.
    if view
        .words("head")
        .any(|head| !matches!(head, "clearance" | "spin" | "whatfit" | "turn" | "bore"))
    {
        return None;
    }
    if view.says("role", "long") {
        return with_length(view, system);
    }
    if view.words("role").any(|role| !matches!(role, "od" | "id")) {
        return None;
    }
    let is_hole = view.has("hole") || view.says("role", "id");
    let is_shaft = view.has("shaft") || view.says("role", "od");
    // A toleranced feature alone.
    if let Some(limits) = limits(view, system) {
        if is_hole && is_shaft
            || fit_of(view).is_some()
            || view.has("material")
            || view.has("state")
            || view.has("vague")
            || view.has("head")
            || view.numbers().count() > limit_places(view).len()
        {
            return None;
        }
        return Some(Said::plain(match (is_hole, is_shaft) {
            (true, _) => format!("hole {limits}"),
            (_, true) => format!("shaft {limits}"),
            // A bushing or a hub has both.
            _ if view.has("hub") || view.has("bushing") => return None,
            // Without a word it is a plain query, or its units are to be asked.
            _ if view.tokens().all(|token| !matches!(token, Token::Word { .. }))
                && view.tokens().any(|token| matches!(token, Token::Span(..))) =>
            {
                return None;
            }
            _ => limits,
        }));
    }
    let is_more =
        |token: &Token| matches!(token, Token::Deviations { .. } | Token::Span(..) | Token::Cross);
    if view.count(is_more) > 0 {
        return None;
    }
    let mut numbers = view.numbers();
    let (_, num) = numbers.next()?;
    // `a 20 g6 shaft in a 20 H7 hole`: one size, said of each.
    let is_pair = matches!(fit_of(view), Some(Fit::Pair(_)));
    let mut numbers = numbers.filter(|(_, other)| !is_pair || *other != num);
    if numbers.next().is_some() || (view.has("role") && view.has("fit") && !view.has("bushing")) {
        return None;
    }
    let size = num.plain(system);
    let roles = assign(view, NOUNS, &[], system).unwrap_or_default();
    // A tube's or a ring's figure may be its bore or its outside.
    let is_tube = roles.get("ring").is_some()
        && !is_hole
        && !view.has("role")
        && view.types(&["tube", "tubing", "pipe"]);
    if view.types(&["pipe"])
        && !view.has("role")
        && let Some(Fit::Word(word)) = fit_of(view)
    {
        let choices = vec![format!("{size} {word}"), format!("shaft {size}, {word}")];
        return Some(Said::ask("a pipe's nominal size is not its outside: measure it", choices));
    }
    let vague = view.word("vague");
    if let Some(vague) = vague
        && !(vague == "clearance" && fit_of(view).is_some())
        && !matches!((vague, fit_of(view)), ("loose", Some(Fit::Pair(pair))) if says_pair("running", &pair))
    {
        if fit_of(view).is_some() || view.words("vague").any(|other| other != vague) {
            return None;
        }
        return vague_fit(vague, &size, view);
    }
    // `a running or a sliding fit`
    if view.has("or") {
        let mut words: Vec<&str> = view.words("fit").collect();
        words.dedup();
        let [a, b] = words[..] else { return None };
        let more = circumstances(view, &Fit::Word("press"))?;
        return Some(Said::ask(
            "one fit or the other is not said",
            [a, b].map(|word| format!("{size} {word}{more}")).to_vec(),
        ));
    }
    if view.has("fit") && fit_of(view).is_none() {
        // `tight slip running fit`: which of them?
        let mut words: Vec<&str> = view.words("fit").collect();
        words.sort_unstable();
        words.dedup();
        let more = circumstances(view, &Fit::Word("press"))?;
        let is_words_alone = view
            .tokens()
            .all(|token| matches!(token, Token::Number(_) | Token::Break | Token::Word { .. }));
        return (is_words_alone && words.len() > 1 && is_nominal(num, system)).then(|| {
            let each = words.iter().map(|word| format!("{size} {word}{more}"));
            Said::ask("one fit or the other is not said", each.collect())
        });
    }
    let Some(fit) = fit_of(view) else {
        if view.says("head", "clearance")
            || view.says("head", "spin")
            || view.says("state", "moving")
        {
            if roles.get("ring").is_some() {
                return Some(Said::ask(
                    "its bore or its outside is not said",
                    vec![format!("{size} running"), format!("{size} free running")],
                ));
            }
            // A part as it measures is no nominal size.
            if !is_nominal(num, system) {
                return None;
            }
            // What the parts are made of, and a thin wall, belong to the word.
            let more = circumstances(view, &Fit::Word("running"))?;
            return (is_hole || is_shaft || view.says("state", "moving"))
                .then(|| Said::plain(format!("{size} running{more}")));
        }
        let asks_which = view.types(&["fit for"]);
        let is_asked = |head| head == "whatfit" && asks_which;
        if !view.words("head").all(is_asked) || view.has("material") || view.has("state") {
            return None;
        }
        if view.has("bushing") && view.types(&["fit", "what fit", "which fit"]) {
            return Some(Said::ask(
                "a bushing's bore or its outside is not said",
                vec![format!("{size} running"), format!("{size} press")],
            ));
        }
        if let Some(class) = view.one(|token| match token {
            Token::AnsiClass(class) => Some(*class),
            _ => None,
        }) {
            let mut choices = vec![format!("{size} RC{class}")];
            if (2..=3).contains(&class) {
                choices.extend(coarse(&num.text).map(|name| format!("{name} {class}B/{class}A")));
            }
            return (choices.len() > 1)
                .then(|| Said::ask("a fit or a thread's class is not said", choices));
        }
        // A part and its size: what of it?
        if is_hole
            && !is_shaft
            && !view.has("hub")
            && view.items.len() <= 4
            && is_nominal(num, system)
        {
            return Some(Said::ask(
                "what the hole is for is not said",
                vec![format!("{size} H7"), format!("drill {size}")],
            ));
        }
        // `1/2 pin`, `1/2 pin, what fit`: nothing says which.
        // A pin by its kind comes with its own sizes.
        let lower = view.text.to_lowercase();
        let is_kind = ["clevis", "dowel", "taper", "cotter", "spring", "split", "roll pin"]
            .iter()
            .any(|kind| lower.contains(kind));
        let is_part_alone = (is_shaft || view.has("hub")) && is_nominal(num, system) && !is_kind;
        if asks_which
            || is_part_alone
            || view.types(&["fit", "fits", "what fit", "which fit"])
            || (is_hole && is_shaft)
            || (view.has("shaft") && view.has("hub"))
        {
            return Some(Said::ask(
                "how it is to fit is not said",
                ["sliding", "push", "press"].map(|word| format!("{size} {word}")).to_vec(),
            ));
        }
        return None;
    };
    let tight = ["press", "shrink", "drive", "keying", "wringing"];
    if vague == Some("clearance") && tight.iter().any(|word| fit.text().contains(word)) {
        return None;
    }
    if let Some(asked) = turns_though_tight(view, &fit, &size, &tight) {
        return Some(asked);
    }
    if is_tube && !view.has("state") {
        let word = fit.text();
        return Some(Said::ask(
            "the tube's bore or its outside is not said",
            vec![format!("{size} {word}, thin tube"), format!("shaft {size}, {word}, thin tube")],
        ));
    }
    if view.has("bushing") && matches!(fit, Fit::Word(_)) && !view.has("shaft") {
        return bushing_outside(&size, &fit, view);
    }
    // A class and the other part's name contradict: which is wrong is asked.
    // `bearing housing 52 n7`: what a shaft goes into has a bore.
    let is_bored = is_hole || view.has("hub");
    if let (Fit::Hole(class) | Fit::Shaft(class), Some(turned)) = (&fit, turned_class(&fit))
        && is_bored != is_shaft
        && is_bored != matches!(fit, Fit::Hole(_))
        && is_nominal(num, system)
        && !view.has("head")
        && !view.has("material")
        && !view.has("state")
    {
        return Some(Said::ask(
            "the class is the other part's",
            vec![format!("{size} {turned}"), format!("{size} {class}")],
        ));
    }
    // `collar inside 25.02, clearance as H7/f7`: as it measures, or the nominal size?
    if let Fit::Pair(class) | Fit::Inch(class) = &fit
        && !is_nominal(num, system)
        && num.places > 1
        && (is_hole || is_shaft || view.has("hub") || view.has("bushing"))
        && let Some(nominal) = nominal_of(num, system)
    {
        let side = |side: &str| format!("{nominal} {class}, {side} = {size}");
        return Some(Said::ask(
            "a part as it measures, or the nominal size?",
            vec![side("hole"), side("shaft"), format!("{size} {class}")],
        ));
    }
    if view.says("head", "spin") && matches!(fit, Fit::Hole(_) | Fit::Shaft(_)) {
        return None;
    }
    match &fit {
        Fit::Hole(_) if is_shaft && !is_hole => return None,
        Fit::Shaft(_) if is_hole && !is_shaft => return None,
        Fit::Shaft(_) | Fit::Hole(_) if is_hole && is_shaft => return None,
        // A named part's own figure is not the nominal of its class.
        Fit::Shaft(_) | Fit::Hole(_)
            if view.has("bushing")
                || ((is_hole || is_shaft || view.has("hub")) && !is_nominal(num, system)) =>
        {
            return None;
        }
        Fit::Word(_)
            if (view.has("bushing") && !is_hole && !is_shaft)
                || (!is_nominal(num, system) && (is_hole || is_shaft)) =>
        {
            return None;
        }
        _ => {}
    }
    if view.has("reads") {
        return None;
    }
    // A class beside the other part's name, each: one of the two is wrong.
    if let Fit::Pair(_) = fit
        && view.items.iter().enumerate().any(|(at, item)| {
            let beside = |kind: &str| [at.checked_sub(1), Some(at + 1)].into_iter().flatten().any(|near| matches!(view.items.get(near).map(|item| &item.token), Some(Token::Word { kind: k, .. }) if *k == kind));
            match item.token {
                Token::Hole(_) => beside("shaft") && !beside("hole"),
                Token::Shaft(_) => beside("hole") && !beside("shaft"),
                _ => false,
            }
        })
    {
        return None;
    }
    // `.4995 press`: measured, and of which part?
    if matches!(fit, Fit::Word(_))
        && !is_nominal(num, system)
        && !num.is_fraction
        && !is_hole
        && !is_shaft
        && !view.has("material")
    {
        let word = fit.text();
        return Some(Said::ask(
            "a measured size: of the hole or of the shaft is not said",
            vec![
                format!("hole {size}, {word}"),
                format!("shaft {size}, {word}"),
                format!("{size} {word}"),
            ],
        ));
    }
    let Some(circumstances) = circumstances(view, &fit) else {
        // A bought bar's own size is under nominal: turned, or as it comes?
        let bar = view.items.iter().enumerate().find_map(|(at, item)| match item.token {
            Token::Word { name, kind: "material" }
                if matches!(
                    view.items.get(at + 1).map(|next| &next.token),
                    Some(Token::Word { kind: "shaft", .. })
                ) =>
            {
                Some((name, view.said(at)))
            }
            _ => None,
        });
        let (_, said) = bar?;
        let bar = if ["crs", "cold rolled", "cold drawn", "cold rolled steel"].contains(&&*said) {
            // The widest class of metric bar; inch bar has its own.
            if size.ends_with("mm") { "h11 bright bar" } else { "low-carbon cold drawn bar" }
        } else if said == "drill rod" || said == "silver steel" {
            "drill rod"
        } else {
            return None;
        };
        return (view.words("material").count() == 1).then(|| {
            Said::ask(
                "a turned shaft, or the bar as it comes?",
                vec![format!("{size} {}", fit.text()), format!("{bar} {size}, {}", fit.text())],
            )
        });
    };
    let plain = format!("{size} {}{circumstances}", fit.text());
    // `what should I bore for a 1 inch shaft`: of that nominal size, or as it is.
    let bores = |at: usize| {
        let led = at.checked_sub(1).map(|before| view.said(before)).unwrap_or_default();
        matches!(&*view.said(at), "bore" | "ream") && (led == "i" || led.ends_with(" i"))
    };
    let is_asked =
        view.says("head", "bore") && view.has("asking") || (0..view.items.len()).any(bores);
    let is_hole = (0..view.items.len())
        .any(|at| matches!(view.items[at].token, Token::Word { kind: "hole", .. }) && !bores(at));
    if is_asked && is_shaft && !is_hole && matches!(fit, Fit::Word(_)) {
        let as_it_is = format!("shaft {size}, {}{circumstances}", fit.text());
        return Some(Said::ask("the size by name, or as it measures?", vec![plain, as_it_is]));
    }
    Some(Said::plain(plain))
}

/// A fit word and how long the parts are engaged.
fn with_length(view: &View, system: System) -> Option<Said> {
    let roles = assign(view, &["role", "hole", "shaft", "hub"], &[], system)?;
    let long = roles.get("long").filter(|_| view.words("role").count() == 1)?;
    let without = |number: usize| {
        let items = view.items.iter().enumerate();
        let kept = items.filter(|(at, _)| *at != number && *at != long.word);
        View { items: kept.map(|(_, item)| item.clone()).collect(), text: view.text.clone() }
    };
    let of = |number: usize, length: &Num| {
        let rest = without(number);
        if rest.numbers().count() != 1 || !matches!(fit_of(view)?, Fit::Word(_)) {
            return None;
        }
        match fit(&rest, system)? {
            Said::Plain(lines) => {
                Some(format!("{}, long {}", lines.first()?, length.plain(system)))
            }
            Said::Ask { .. } => None,
        }
    };
    let said = of(long.at, &long.num)?;
    // `pin 3/4 long 3/8`: the length stands before its word or after it.
    let number = |at: usize| match view.items.get(at).map(|item| &item.token) {
        Some(Token::Number(num)) => Some(num),
        _ => None,
    };
    let is_diameter = |at: usize| DIAMETER.contains(&&*view.said(at + 1));
    if let (Some(before), Some(after)) =
        (long.word.checked_sub(1).and_then(number), number(long.word + 1))
        && !is_diameter(long.word + 1)
    {
        let (at, length) =
            if long.at > long.word { (long.word - 1, before) } else { (long.word + 1, after) };
        return Some(Said::ask("which of the two is the length?", vec![said, of(at, length)?]));
    }
    Some(Said::plain(said))
}
