//! What may be asked of bearings, stacks, threads, and parts that are pressed or heated.

use fits_core::Length;

use crate::sentence::{
    holes::fraction_threads,
    sizes::Fit,
    threads::thread_alone,
    token::{Num, System, Token},
    view::View,
};

/// The seats of a bearing, by which part turns.
pub(super) fn of_a_bearing(view: &View) -> Option<Vec<String>> {
    let ball = view.one(|token| match token {
        Token::Bearing(ball) => Some(*ball),
        _ => None,
    })?;
    let metal = view.word("material").map_or(String::new(), |metal| format!(", housing {metal}"));
    let turns =
        |part: &str, more: &str| format!("bearing {}, {part} turns{metal}{more}", ball.number());
    let numbers: Vec<&Num> = view.numbers().map(|(_, num)| num).collect();
    let [num] = numbers[..] else {
        return numbers
            .is_empty()
            .then(|| ["shaft", "housing"].map(|part| turns(part, "")).to_vec());
    };
    // A seat as it measures, in the units in which it is near the bearing's own.
    let [od, bore] = [ball.outside(), ball.bore()].map(Length::millimetres);
    let is_near = |value: f64, of: f64| (value - of).abs() < 0.01 * of;
    [System::Millimetres, System::Inches].into_iter().find_map(|system| {
        let value = num.mm(system);
        let seat = if is_near(value, od) {
            "housing"
        } else if is_near(value, bore) {
            "shaft"
        } else {
            return None;
        };
        let reads = format!(", {seat} {}", num.plain(system));
        Some(["shaft", "housing"].map(|part| turns(part, &reads)).to_vec())
    })
}

/// A plug for a tube by its outside and its wall; a third size is its bore.
pub(super) fn of_a_tube(
    view: &View,
    numbers: &[(usize, &Num)],
    fit: Option<&Fit>,
    system: System,
) -> Option<Vec<String>> {
    let is_tube = view.types(&["tube", "tubing", "pipe", "tub"]) && !view.says("role", "id");
    let is_wall = |at: usize| {
        matches!(
            view.items.get(at).map(|item| &item.token),
            Some(Token::Word { kind: "role", name: "wall" })
        )
    };
    let after = numbers.iter().find(|(at, _)| is_wall(at + 1));
    let before = || numbers.iter().find(|(at, _)| at.checked_sub(1).is_some_and(is_wall));
    let (at, wall) = after.or_else(before).filter(|_| is_tube)?;
    let rest: Vec<&Num> =
        numbers.iter().filter(|(other, _)| other != at).map(|(_, num)| *num).collect();
    let tight = |a: &Num, b: &Num| b.mm(system) < a.mm(system) / 60.0;
    let mut by = None;
    let od = match rest[..] {
        [od] => od,
        // Pressed by so much.
        [od, grip] | [grip, od] if tight(od, grip) => {
            by = Some(format!("interference {}", grip.plain(system)));
            od
        }
        [a, b] => {
            let (od, bore) = if a.mm(system) > b.mm(system) { (a, b) } else { (b, a) };
            let inside = od.mm(system) - 2.0 * wall.mm(system);
            (inside - bore.mm(system)).abs().lt(&(0.02 * inside)).then_some(od)?
        }
        _ => return None,
    };
    let words = match fit {
        Some(Fit::Word(word)) => vec![*word],
        Some(_) => return None,
        None => vec!["press", "light press", "push"],
    };
    let (od, wall) = (od.plain(system), wall.plain(system));
    let bore = format!("{od} - 2 * {wall}");
    if let Some(by) = by {
        let hub = view.word("material").unwrap_or("steel");
        let joint = |shaft: &str| {
            format!("assemble {bore} {by}, hub {hub} od {od} wall {wall}, shaft {shaft}")
        };
        return Some(["steel", "aluminium"].map(joint).to_vec());
    }
    let each = words.iter().flat_map(|word| {
        let joint = format!("assemble {bore} {word}, hub steel od {od} wall {wall}, shaft steel");
        [format!("{bore} {word}, thin tube"), joint]
    });
    Some(each.collect())
}

/// The longest part less the others: the smallest once, or at both ends.
pub(super) fn of_a_stack(view: &View, sizes: &[&Num], system: System) -> Option<Vec<String>> {
    let mut sizes = sizes.to_vec();
    sizes.sort_by(|a, b| b.mm(system).total_cmp(&a.mm(system)));
    let (gap, parts) = sizes.split_first().filter(|_| view.says("head", "stack"))?;
    let last = parts.last()?;
    let sum = |last_times: f64| {
        parts.iter().map(|num| num.mm(system)).sum::<f64>() + (last_times - 1.0) * last.mm(system)
    };
    let with = |times: &str| {
        let less = parts.iter().map(|num| {
            let times = if std::ptr::eq(*num, *last) { times } else { "" };
            format!(", -{times}{}", num.plain(system))
        });
        format!("stack {}{}", gap.plain(system), less.collect::<String>())
    };
    let room = gap.mm(system);
    let mut all = Vec::new();
    for (times, count) in [("", 1.0), ("2x ", 2.0)] {
        if sum(count) <= room {
            all.push(with(times));
        }
    }
    Some(all)
}

/// A pitch and no thread: those of the series that have it.
pub(super) fn of_a_pitch(view: &View, sizes: &[&Num], system: System) -> Option<Vec<String>> {
    let turns = view.one(|token| match token {
        Token::PerInch(turns) => Some(turns.clone()),
        _ => None,
    })?;
    if view.tokens().any(|token| matches!(token, Token::Thread { .. })) {
        return None;
    }
    let tail = if view.has("head") { " cut" } else { "" };
    Some(match sizes {
        [] => UNIFIED
            .iter()
            .filter(|size| {
                let both = fraction_threads(size, "");
                both.is_some_and(|both| {
                    both.iter().any(|name| name.ends_with(&format!("-{turns}")))
                })
            })
            .map(|size| format!("{size}-{turns}{tail}"))
            .collect(),
        [size] if size.is_fraction || size.places == 0 => {
            let of = |series: &str| format!("{}-{turns}{series}", size.text);
            [" tap", " cut", " BSW", ""].map(of).to_vec()
        }
        [size] => vec![format!("thread {} {turns} tpi", size.plain(system))],
        _ => return None,
    })
}

/// Sizes that a coarse and a fine thread are listed for.
const UNIFIED: &[&str] = &["1/4", "5/16", "3/8", "7/16", "1/2", "9/16", "5/8", "3/4", "7/8"];

/// A size at a temperature: of which parts?
pub(super) fn of_heat(
    view: &View,
    sizes: &[&Num],
    fit: Option<&Fit>,
    system: System,
) -> Option<Vec<String>> {
    let heat = view.one(|token| match token {
        Token::Temperature(text) => Some(text.clone()),
        _ => None,
    })?;
    let [size] = sizes else { return None };
    let heats = if heat.ends_with(['C', 'F']) {
        vec![heat]
    } else {
        vec![format!("{heat}C"), format!("{heat}F")]
    };
    let metals: Vec<&str> = view.words("material").collect();
    let pairs = match metals[..] {
        [one] => vec![(one, "steel"), ("steel", one)],
        [a, b] => vec![(a, b), (b, a)],
        _ => return None,
    };
    let fits = match fit {
        Some(Fit::Hole(_) | Fit::Shaft(_)) => return None,
        Some(fit) => vec![fit.text()],
        None => vec!["running", "press"],
    };
    let mut all = Vec::new();
    for heat in &heats {
        for fit in &fits {
            for (hole, shaft) in &pairs {
                let size = size.plain(system);
                all.push(format!("{size} {fit} warm {heat}, hole {hole}, shaft {shaft}"));
            }
        }
    }
    Some(all)
}

/// Parts pressed or shrunk whose hub is not said, or whose metal.
pub(super) fn of_a_joint(
    view: &View,
    sizes: &[&Num],
    fit: Option<&Fit>,
    system: System,
) -> Option<Vec<String>> {
    let asks =
        ["force", "heat", "hold", "split", "closein"].iter().any(|head| view.says("head", head));
    let grips = matches!(fit, Some(Fit::Word(word)) if word.contains("press") || *word == "shrink");
    let is_play = view.says("head", "clearance") || view.says("vague", "clearance");
    let is_joint = (asks || grips && view.has("hub")) && !view.has("bushing") && !is_play;
    let is_long = |num: &&Num| places_of(view, num).any(|at| is_length(view, at));
    let long = sizes.iter().find(|num| is_long(num)).map(|num| num.plain(system));
    // `heat the hub, want 2 thou room`: the clearance that it is to drop on with.
    let heats = view.says("head", "heat");
    let is_room = |num: &&Num| {
        heats && is_beside(view, num, &["room", "clearance", "slack", "gap", "to", "spare"])
    };
    let room = sizes.iter().find(|num| is_room(num)).map(|num| num.plain(system));
    let sizes: Vec<&Num> =
        sizes.iter().filter(|num| !is_long(num) && !is_room(num)).copied().collect();
    let lengths = usize::from(long.is_some());
    if !is_joint || !(2..=3).contains(&(sizes.len() + lengths)) || sizes.is_empty() {
        return None;
    }
    let long = long.map_or_else(String::new, |long| format!(" long {long}"));
    let mut sizes = sizes;
    sizes.sort_by(|a, b| a.by_size(b, system));
    let largest = sizes.last()?.mm(system);
    let is_grip = |num: &Num| num.mm(system) < (largest / 60.0).min(0.6);
    let tight = is_grip(sizes[0]).then(|| sizes.remove(0).plain(system));
    let metals: Vec<&str> = view.words("material").collect();
    let (hub, shaft) = match metals[..] {
        [] => ("steel", "steel"),
        [one] => (one, "steel"),
        [hub, shaft, ..] => (hub, shaft),
    };
    let fit = match (&tight, fit) {
        (Some(tight), _) => format!("interference {tight}"),
        (None, Some(fit @ (Fit::Word(_) | Fit::Pair(_) | Fit::Inch(_)))) => fit.text().to_owned(),
        (None, None) => "press".to_owned(),
        _ => return None,
    };
    let mut heated = if heats && fit != "shrink" { ", shrink" } else { "" }.to_owned();
    if let Some(room) = room {
        heated = format!("{heated}, clearance {room}");
    }
    let of = |size: &Num, od: String, hub: &str, shaft: &str| {
        let size = size.plain(system);
        format!("assemble {size} {fit}, hub {hub} od {od}{long}, shaft {shaft}{heated}")
    };
    let parts = [(hub, shaft), (shaft, hub)];
    let mut all: Vec<String> = match sizes[..] {
        [size] => parts
            .iter()
            .flat_map(|(hub, shaft)| {
                [2.0, 3.0].map(|by| of(size, size.times(by).plain(system), hub, shaft))
            })
            .collect(),
        // No hub is ten times its bore: that is a temperature or a load.
        [size, od] if (1.05..10.0).contains(&(od.mm(system) / size.mm(system))) => {
            parts.iter().map(|(hub, shaft)| of(size, od.plain(system), hub, shaft)).collect()
        }
        _ => return None,
    };
    all.dedup();
    if let ([size, od], true) = (&sizes[..], all.len() == 1) {
        let od = od.plain(system);
        all.extend(["cast iron", "aluminium"].map(|hub| of(size, od.clone(), hub, shaft)));
    }
    Some(all)
}

/// `bushing 1.5 od 1.25 id, press 2 thou`: how it closes in, by the grip that is said.
pub(super) fn of_a_gripped_bushing(
    view: &View,
    sizes: &[&Num],
    system: System,
) -> Option<Vec<String>> {
    let [grip, id, od] = by_size(sizes, system)?;
    let is_grip = grip.mm(system) < (od.mm(system) / 60.0).min(0.3);
    let is_wall = od.mm(system) < 2.0 * id.mm(system) && od.mm(system) > 1.02 * id.mm(system);
    if !view.has("bushing") || !is_grip || !is_wall {
        return None;
    }
    let joint = format!("{} interference {}", od.plain(system), grip.plain(system));
    Some(in_usual_hubs(view, &joint, (id, od), system))
}

/// `bushing .6265 od .500 id in a .625 hole`: how it closes in, by the sizes of both.
pub(super) fn of_a_bushing_in_its_hole(
    view: &View,
    sizes: &[&Num],
    system: System,
) -> Option<Vec<String>> {
    let [id, hole, od] = by_size(sizes, system)?;
    let [inside, seat, outside] = [id, hole, od].map(|num| num.mm(system));
    let is_gripped = outside > seat && outside < 1.005 * seat && outside > 1.02 * inside;
    if !view.has("bushing") || !(view.has("hole") || view.has("hub")) || !is_gripped {
        return None;
    }
    let [hole, outside] = [hole, od].map(|num| num.plain(system));
    let joint = format!("{hole} = {hole}/{outside}");
    Some(in_usual_hubs(view, &joint, (id, od), system))
}

/// Three sizes, the smallest first.
fn by_size<'a>(sizes: &[&'a Num], system: System) -> Option<[&'a Num; 3]> {
    let mut sizes = <[&Num; 3]>::try_from(sizes).ok()?;
    sizes.sort_by(|a, b| a.by_size(b, system));
    Some(sizes)
}

/// A bushing pressed into hubs of the usual metals, twice as large as it is.
fn in_usual_hubs(view: &View, joint: &str, (id, od): (&Num, &Num), system: System) -> Vec<String> {
    let bush = view.word("material").unwrap_or("bronze");
    let (id, around) = (id.plain(system), od.times(2.0).plain(system));
    ["steel", "cast iron", "aluminium"]
        .map(|hub| format!("assemble {joint}, hub {hub} od {around}, shaft {bush} id {id}"))
        .to_vec()
}

/// Is the number said to be a length, by the word beside it, known or not?
fn is_length(view: &View, at: usize) -> bool {
    const WORDS: &[&str] = &["long", "lg", "deep", "length", "wide", "engagement"];
    let place = &view.items[at].at;
    let last = |text: &str| text.trim_end().rsplit(' ').next().is_some_and(|it| it == "length");
    WORDS.contains(&next_word(view, at)) || last(&view.text[..place.start])
}

/// The word after a number, known or not.
fn next_word(view: &View, at: usize) -> &str {
    let rest = view.text[view.items[at].at.end..].trim_start();
    rest.split([' ', ',', '?', '.']).next().unwrap_or_default()
}

/// Is the word after the number one of these?
fn is_beside(view: &View, num: &Num, words: &[&str]) -> bool {
    places_of(view, num).any(|at| words.contains(&next_word(view, at)))
}

/// Where a number stands.
fn places_of<'a>(view: &'a View, num: &'a Num) -> impl Iterator<Item = usize> + 'a {
    view.numbers().filter(move |(_, other)| *other == num).map(|(at, _)| at)
}

/// A bushing of either bronze.
pub(super) fn bushings(id: &str, od: &str, long: &str) -> Vec<String> {
    ["bronze", "sintered bronze"]
        .map(|metal| format!("bushing {id} od {od} long {long}, hub steel, {metal}"))
        .to_vec()
}

pub(super) fn of_thread(view: &View, thread: &str) -> Vec<String> {
    let ask = |tail: &str| {
        if tail.is_empty() { thread_alone(thread) } else { format!("{thread}{tail}") }
    };
    let first = if view.says("head", "clearance") {
        " clearance"
    } else if view.says("head", "tap") || view.says("head", "drill") || view.says("head", "cltap") {
        " tap"
    } else if view.says("head", "feed") {
        " cut"
    } else if view.types(&["nut", "nuts"]) {
        " nut"
    } else {
        ""
    };
    [first, "", " tap", " clearance"].map(ask).to_vec()
}
