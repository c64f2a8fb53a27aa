//! A joint a row, with dots between: `pin / frame ..... 3/8 ..... drive`.

use fits_core::{
    job::whole::{FitSaid, NominalSize, SizeKind},
    size::Unit,
};

use super::{
    Line,
    lexicon::{self, feature, inwardness, is_material, stem, stems},
    sizes::{self, Given},
    token::{Kind, Num, Token, tokens},
    told::Told,
    units::Units,
    wants::Wants,
};

/// What stands between the dots of a row, with its places.
pub(super) fn cells(raw: &str) -> Vec<(usize, &str)> {
    let mut cells: Vec<(usize, &str)> = Vec::new();
    let mut start = 0;
    for piece in raw.split("...") {
        let text = piece.trim_matches(['.', ' ', '\u{2026}']);
        if !text.is_empty() {
            cells.push((start + piece.find(text).unwrap_or(0), text));
        }
        start += piece.len() + 3;
    }
    cells
}

/// A heading over joints that says how they go together: `PRESS`, `Running fits`.
pub(super) fn fit_heading(raw: &str) -> Option<String> {
    let words: Vec<String> = raw
        .trim()
        .trim_end_matches(':')
        .split(' ')
        .map(str::to_lowercase)
        .filter(|word| word != "fits" && word != "fit")
        .collect();
    let words: Vec<&str> = words.iter().map(String::as_str).collect();
    let (taken, word) = lexicon::fit(&words)?;
    (taken == words.len() && word.is_some() && !raw.contains(|c: char| c.is_ascii_digit()))
        .then(|| words.join(" "))
}

/// Is a note parted by such headings?
pub(super) fn has_fit_headings(text: &str) -> bool {
    text.lines()
        .filter(|line| !line.starts_with([' ', '\t']) && fit_heading(line).is_some())
        .count()
        > 1
}

/// `crank pin in crank arm - 5/16, loctite too` under such a heading: a joint, with both
/// names before the dash; how it goes together unless the row says so itself.
pub(super) fn row_under(
    told: &mut Told,
    wants: &mut Wants,
    line: &mut Line,
    raw: &str,
    heading: &str,
) -> bool {
    // `  - pin in arm - 5/16`: a bullet is no dash.
    let start = raw.len() - raw.trim_start_matches([' ', '\t', '-', '*']).len();
    let Some(dash) = raw[start..].find(" - ").map(|at| start + at) else { return false };
    let Some((shaft, hole)) = named_sides(&raw[start..dash]) else { return false };
    let found = tokens(&raw[dash + 3..], dash + 3);
    let is_sized = found.first().is_some_and(|first| matches!(first.kind, Kind::Num(_)));
    if !is_sized {
        return false;
    }
    let bare = |name: &str| -> String {
        let kept = name.split(' ').filter(|word| !(word.starts_with('(') || word.contains('+')));
        kept.collect::<Vec<_>>().join(" ")
    };
    let (shaft, hole) =
        (joint_side(told, &bare(shaft), line.number), joint_side(told, &bare(hole), line.number));
    // What stands in brackets is of a part by itself: `(12 x 28 x 8)`.
    let end = found.iter().position(|token| token.is_sign('(')).unwrap_or(found.len());
    let mut said: Vec<Token> = found[..end].to_vec();
    let has_fit = said.iter().any(|token| {
        token.word().is_some_and(|word| lexicon::fit(&[word]).is_some_and(|(_, fit)| fit.is_some()))
    });
    if !has_fit {
        let at = dash..dash;
        let words = heading.split(' ');
        said.extend(words.map(|word| Token { kind: Kind::Word(word.to_owned()), at: at.clone() }));
    }
    joint(told, wants, line, &said, &shaft, &hole);
    if end < found.len() || raw.contains('?') {
        told.remark(line.number, raw, Some(hole.0));
    }
    true
}

/// `pin in lever`, `roller on pin`: what goes in, and what it goes in.
fn named_sides(text: &str) -> Option<(&str, &str)> {
    let parted = |sign: &str| text.split_once(sign).map(|(a, b)| (a.trim(), b.trim()));
    let named = |text: &str| !text.is_empty() && text.split_whitespace().count() < 6;
    let sides = parted(" in ")
        .or_else(|| parted(" into "))
        .or_else(|| parted(" on ").map(|(hole, shaft)| (shaft, hole)))?;
    (named(sides.0) && named(sides.1)).then_some(sides)
}

/// A joint of two things, with what stands behind their names in the line.
pub(super) fn joint_row(
    told: &mut Told,
    wants: &mut Wants,
    line: &mut Line,
    (one, other): (&str, &str),
    (raw, start): (&str, usize),
) {
    let (one, other) = (joint_side(told, one, line.number), joint_side(told, other, line.number));
    let inner = |told: &Told, side: &(usize, Option<(String, SizeKind)>)| match &side.1 {
        Some((_, SizeKind::Shaft)) => 4,
        Some((_, SizeKind::Hole)) => -2,
        _ => told.inwardness(side.0),
    };
    let (shaft, hole) =
        if inner(told, &one) >= inner(told, &other) { (one, other) } else { (other, one) };
    let rest: String = raw[start..].chars().map(|c| if c == '.' { ' ' } else { c }).collect();
    // Points within numbers are kept.
    let rest: String = rest
        .char_indices()
        .map(|(place, c)| {
            let place = place + start;
            let near = raw.as_bytes();
            let is_point = near.get(place) == Some(&b'.')
                && near.get(place + 1).is_some_and(u8::is_ascii_digit)
                && near.get(place.wrapping_sub(1)) != Some(&b'.');
            let is_stop = near.get(place) == Some(&b'.')
                && near.get(place + 1) == Some(&b' ')
                && near.get(place.wrapping_sub(1)).is_some_and(u8::is_ascii_alphanumeric);
            if is_point {
                '.'
            } else if is_stop {
                ','
            } else {
                c
            }
        })
        .collect();
    let found = tokens(&rest, start);
    joint(told, wants, line, &found, &shaft, &hole);
    if raw.contains('(') || raw.contains('!') {
        let from = raw.find('(').unwrap_or(0);
        told.remark(line.number, &raw[from..], Some(hole.0));
    }
}

#[allow(clippy::too_many_lines, reason = "one kind of words after another, each short")]
pub(super) fn joint(
    told: &mut Told,
    wants: &mut Wants,
    line: &mut Line,
    found: &[Token],
    shaft: &(usize, Option<(String, SizeKind)>),
    hole: &(usize, Option<(String, SizeKind)>),
) {
    let place = found.first().map_or(0..0, |token| token.at.clone());
    let size = found
        .iter()
        .find(|token| matches!(token.kind, Kind::Num(_) | Kind::Dims(_) | Kind::Thread(_)));
    let threaded = matches!(size.map(|token| &token.kind), Some(Kind::Thread(_)));
    let (hole_name, shaft_name) = side_names(told, shaft, hole, threaded);
    let side = |side| if threaded { SizeKind::Thread } else { side };
    let outer = told.feature(line, shaft.0, &shaft_name, side(SizeKind::Shaft), place.clone());
    let inner = told.feature(line, hole.0, &hole_name, side(SizeKind::Hole), place.clone());
    let mut fit = FitSaid::default();
    let mut sized = false;
    for (at, token) in found.iter().enumerate() {
        match &token.kind {
            Kind::Dims(all) if !sized => {
                sized = true;
                if found.get(at + 1).and_then(Token::word) == Some("wall") {
                    line.subject = Some(hole.0);
                    if let Some(bore) =
                        sizes::give(told, wants, line, &Given::plain(&token.kind, &token.at))
                    {
                        let nominal = told.job.features[bore].nominal.clone();
                        if let Some(nominal) = nominal {
                            let from =
                                (told.job.features[bore].unit, told.job.features[bore].unit_from);
                            told.size(line, outer, nominal, from);
                        }
                    }
                } else {
                    // The whole of a bought part: a bearing on its shaft.
                    let bought = if told.inwardness(hole.0) == 1 { hole.0 } else { shaft.0 };
                    if let Some(Kind::Code(code)) =
                        at.checked_sub(1).map(|before| &found[before].kind)
                    {
                        let part = &mut told.job.parts[bought];
                        part.name = format!("{} {}", part.name, code.to_uppercase());
                        told.names.rename_part(bought, &part.name);
                    }
                    line.subject = Some(bought);
                    let own = if bought == hole.0 { inner } else { outer };
                    let given = Given::plain(&token.kind, &token.at);
                    sizes::give(told, wants, line, &Given { has_fit: true, ..given });
                    let other = if own == inner { outer } else { inner };
                    let side = told.job.features[own].side;
                    let nominal = told
                        .features_of(bought)
                        .find(|(_, one)| one.side == side && one.nominal.is_some())
                        .and_then(|(_, one)| one.nominal.clone());
                    if let Some(nominal) = nominal {
                        let from = told.units.unit_of(&all[0], line.unit);
                        told.size(line, other, nominal, from);
                    }
                    told.job.parts[bought].bought = true;
                }
            }
            Kind::Num(num) if !sized => {
                sized = true;
                if let Some(size) = told.units.length(num, line.unit) {
                    let from = told.units.unit_of(num, line.unit);
                    told.size(line, outer, NominalSize::Size(size), from);
                    told.size(line, inner, NominalSize::Size(size), from);
                }
            }
            Kind::Thread(name) if !sized => {
                sized = true;
                let from = (Unit::Inch, fits_core::job::whole::UnitFrom::Written);
                for feature in [outer, inner] {
                    told.size(line, feature, NominalSize::Thread(name.clone()), from);
                }
            }
            Kind::Thread(name) => {
                let thread =
                    told.feature(line, shaft.0, "thread", SizeKind::Thread, token.at.clone());
                told.size(
                    line,
                    thread,
                    NominalSize::Thread(name.clone()),
                    (Unit::Inch, fits_core::job::whole::UnitFrom::Written),
                );
            }
            Kind::Num(_) | Kind::Range(..) => {
                joint_amount(&told.units, line, &token.kind, found, at, &mut fit);
            }
            Kind::Class(class) if sized => {
                let (first, second) = class.split_once('/').unwrap_or((class, ""));
                for one in [first, second].into_iter().filter(|one| !one.is_empty()) {
                    let is_hole = one.starts_with(|c: char| c.is_ascii_uppercase());
                    told.job.features[if is_hole { inner } else { outer }].class =
                        Some(one.to_owned());
                }
            }
            Kind::Word(word) if word == "same" => {
                // As the row above of either part.
                let of = [outer, inner].into_iter().find_map(|at| {
                    told.job.features[at].nominal.clone().map(|nominal| (at, nominal))
                });
                let of = of.or_else(|| {
                    let last = told.last?;
                    Some((last, told.job.features[last].nominal.clone()?))
                });
                if let Some((from, nominal)) = of {
                    sized = true;
                    let from = (told.job.features[from].unit, told.job.features[from].unit_from);
                    told.size(line, outer, nominal.clone(), from);
                    told.size(line, inner, nominal, from);
                }
            }
            _ => {}
        }
    }
    let words: Vec<&str> = found.iter().filter_map(Token::word).collect();
    let mut at = 0;
    while at < words.len() {
        match lexicon::fit(&words[at..]) {
            Some((taken, word)) => {
                if !fit.words.is_empty() {
                    fit.words.push_str(", ");
                }
                fit.words.push_str(&words[at..at + taken].join(" "));
                fit.word = fit.word.or(word);
                at += taken;
            }
            None => at += 1,
        }
    }
    for (feature, other) in [(outer, hole.0), (inner, shaft.0)] {
        let name = told.job.parts[other].name.clone();
        let to = if feature == outer { inner } else { outer };
        told.say(line, feature);
        wants.finish_mate(
            told,
            line,
            &mut Some((name, Some(other), place.clone(), true)),
            Some(feature),
            &mut fit.clone(),
            Some(to),
        );
    }
}

/// What both features of a joint are called where its row does not say: the bore of a
/// body, the seat of a shaft.
pub(super) fn side_names(
    told: &Told,
    shaft: &(usize, Option<(String, SizeKind)>),
    hole: &(usize, Option<(String, SizeKind)>),
    threaded: bool,
) -> (String, String) {
    let name = |told: &Told,
                side: &(usize, Option<(String, SizeKind)>),
                default: &str,
                other: usize| match &side.1 {
        Some((name, _)) => name.clone(),
        None if threaded => "thread".to_owned(),
        None if default == "seat" => {
            let what = &told.job.parts[other].name;
            let last =
                what.split_whitespace().find(|word| inwardness(word).is_some()).unwrap_or(what);
            format!("{last} seat")
        }
        None => default.to_owned(),
    };
    let is_shaft = told.names.parts[shaft.0]
        .iter()
        .any(|word| matches!(word.as_str(), "shaft" | "crank" | "crankshaft"));
    let shaft_name = name(told, shaft, if is_shaft { "seat" } else { "od" }, hole.0);
    let is_body = told.inwardness(hole.0) < 0;
    let taken = told.feature_called(hole.0, "bore", Some(SizeKind::Hole)).is_some();
    let mut hole_name = name(told, hole, if is_body { "bore" } else { "hole" }, shaft.0);
    if hole_name == "hole" && told.inwardness(hole.0) == 1 {
        "bore".clone_into(&mut hole_name);
    }
    if hole.1.is_none() && is_body && taken && !threaded {
        let what = told.job.parts[shaft.0].name.clone();
        hole_name = format!("{} hole", what.split_whitespace().next().unwrap_or_default());
    }
    (hole_name, shaft_name)
}

pub(super) fn joint_amount(
    units: &Units,
    line: &Line,
    kind: &Kind,
    found: &[Token],
    at: usize,
    fit: &mut FitSaid,
) {
    let (low, high) = match kind {
        Kind::Num(num) => (num, num),
        Kind::Range(low, high) => (low, high),
        _ => return,
    };
    let around = found[at + 1..].iter().take(2).filter_map(Token::word).collect::<Vec<_>>();
    let times = if matches!(around.as_slice(), ["all" | "per" | "each", ..]) { 2 } else { 1 };
    let size = |num: &Num| units.length(num, line.unit)?.checked_mul(times).ok();
    if let (Some(low), Some(high), None) = (size(low), size(high), fit.clearance)
        && high.millimetres() < 2.0
    {
        fit.clearance = fits_core::Limits::new(low.min(high), low.max(high)).ok();
    }
}

/// `crank journal`: the part, and its feature where the words name one.
pub(super) fn joint_side(
    told: &mut Told,
    text: &str,
    line: usize,
) -> (usize, Option<(String, SizeKind)>) {
    let words: Vec<&str> = text.split_whitespace().collect();
    let split = words
        .iter()
        .position(|word| feature(&word.to_lowercase()).is_some())
        .filter(|at| *at > 0 && !(words.len() > at + 1 && inwardness(words[at + 1]).is_some()));
    let (name, own) = match split {
        Some(at) => (words[..at].join(" "), Some(words[at..].join(" "))),
        None => (text.to_owned(), None),
    };
    let found =
        told.part_called(&stems(&name)).filter(|(_, score)| *score >= 60).map(|(part, _)| part);
    let generic = || {
        let is_shaft = matches!(stem(name.trim()).as_str(), "shaft" | "crankshaft");
        is_shaft
            .then(|| {
                told.job
                    .features
                    .iter()
                    .find(|one| {
                        one.side == SizeKind::Shaft
                            && stems(&one.name).iter().any(|word| word == "journal")
                    })
                    .map(|one| one.part)
            })
            .flatten()
    };
    let part = found.or_else(generic);
    let part = part.unwrap_or_else(|| told.new_part(&name, line));
    let material =
        stems(&name).into_iter().find(|word| is_material(word) && inwardness(word).is_none());
    if told.job.parts[part].material.is_none() {
        told.job.parts[part].material = material;
    }
    told.names.touch(part);
    let own = own.map(|own| {
        let side = feature(&own.split_whitespace().next().unwrap_or_default().to_lowercase())
            .unwrap_or(SizeKind::Other);
        (own, side)
    });
    (part, own)
}

/// Both sides of a joint: `pin / frame`, `handwheel on shaft`.
pub(super) fn joint_names(text: &str) -> Option<(&str, &str)> {
    for sign in [" / ", " on ", " in ", " into ", " to ", " -> ", " with ", "/"] {
        if let Some((one, other)) = text.split_once(sign) {
            let (one, other) = (one.trim(), other.trim());
            let words = |text: &str| {
                !text.is_empty()
                    && text.split_whitespace().count() < 5
                    && !text.contains(|c: char| c.is_ascii_digit())
            };
            return (words(one) && words(other)).then_some((one, other));
        }
    }
    None
}

/// The dots behind a name as a colon and blanks, each byte in its place; the
/// point of `.500` stays.
pub(super) fn with_colon(raw: &str, from: usize) -> String {
    let is_dot = |c: char| matches!(c, '.' | ' ' | '\u{2026}');
    let rest = raw[from..].trim_start_matches(is_dot);
    let mut end = raw.len() - rest.len();
    if rest.starts_with(|c: char| c.is_ascii_digit()) && raw[..end].ends_with(" .") {
        end -= 1;
    }
    if end == from {
        return raw.to_owned();
    }
    let blanks = " ".repeat(end - from - 1);
    format!("{}:{blanks}{}", &raw[..from], raw[end..].replace("...", "   "))
}
