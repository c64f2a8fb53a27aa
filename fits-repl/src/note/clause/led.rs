//! The other part of a joint, behind `in`, `on`, `for` or an arrow.

use fits_core::job::whole::{Job, SizeKind};

use super::{
    items::{Item, Placed, across_flats},
    opened,
    phrases::{feature_phrase, text_of},
    short,
};
use crate::note::{
    Line,
    lexicon::{is_material, is_noun, is_small, leads_to_mate, stem},
    names::is_instance,
    token::{Kind, Token},
    told::Told,
};

/// A feature of another part: that part's name, the part, the feature's name, its
/// side, how many tokens name it.
type Place = (String, usize, String, SizeKind, usize);

/// A feature named right behind the mate is the mate's, where it is on the
/// other side than the one spoken of: `.875 in the yoke hole .877`.
pub(super) fn mates_own(
    told: &Told,
    rest: &[Token],
    out: &[Placed],
    line: &Line,
) -> Option<(String, SizeKind, usize)> {
    // `on the wheel shaft drum end`: the whole name of a feature that the mate has.
    if let Some((Item::Mate { part: Some(part), .. }, _)) = out.last() {
        let words: Vec<String> =
            rest.iter().take(4).map_while(|token| token.word().map(stem)).collect();
        let whole = told.features_of(*part).find_map(|(at, one)| {
            let name = &told.names.features[at];
            let is_side = one.side.surface().is_some() && name.len() > 1;
            (is_side && words.starts_with(name)).then(|| (one.name.clone(), one.side, name.len()))
        });
        if whole.is_some() {
            return whole;
        }
    }
    // `bottom end`: which of several comes before it.
    let marks = rest
        .iter()
        .take_while(|token| {
            // `x bore`: the cross bore.
            token
                .word()
                .is_some_and(|word| is_instance(&stem(word)) && word.len() > 1 || word == "x")
        })
        .count();
    let (name, side, taken) = feature_phrase(&rest[marks..])?;
    let own = out.iter().find_map(|(item, _)| match item {
        Item::Feature { side, .. } => Some(*side),
        _ => None,
    });
    let before = || {
        let one = &told.job.features[line.feature?];
        (Some(one.part) == line.subject && one.side.surface().is_some()).then_some(one.side)
    };
    let own = own.or_else(before);
    side.surface()?;
    // `rod, clears spindle bore`: the rod has none.
    let inner = || {
        side == SizeKind::Hole && line.subject.is_some_and(|subject| told.inwardness(subject) > 1)
    };
    if own == Some(side) || own.is_none() && rest.get(marks + taken).is_none() && !inner() {
        return None;
    }
    let marks: Vec<String> = rest[..marks].iter().map(text_of).collect();
    Some((format!("{} {name}", marks.join(" ")).trim().to_owned(), side, marks.len() + taken))
}

/// A name after `in`, `on`, `->`: its words, the part if known, how many tokens.
pub(super) fn mate_name(
    told: &Told,
    tokens: &[Token],
    line: &Line,
) -> Option<(String, Option<usize>, usize)> {
    let skip = tokens
        .iter()
        .take_while(|token| {
            matches!(token.kind, Kind::Count(_))
                || matches!(
                    token.word(),
                    Some(
                        "the"
                            | "a"
                            | "my"
                            | "its"
                            | "each"
                            | "both"
                            | "new"
                            | "two"
                            | "three"
                            | "four"
                            | "take"
                            | "accept"
                            | "carry"
                            | "hold"
                    )
                )
        })
        .count();
    let rest = &tokens[skip..];
    if rest.first()?.word() == Some("it") {
        let part = line.mate_part?;
        return Some((told.job.parts[part].name.clone(), Some(part), skip + 1));
    }
    if let Some(code) = bearing_code(rest) {
        let part = told.names.exactly(&code.to_lowercase());
        return Some((code, part, skip + 2));
    }
    if let Some((part, taken)) = told.part_at(rest) {
        let said: Vec<String> = rest[..taken].iter().map(text_of).collect();
        return Some((said.join(" "), Some(part), skip + taken));
    }
    if let Some((part, taken)) = short::part_in_short(&told.job.parts, rest) {
        let name = told.job.parts[part].name.clone();
        return Some((name, Some(part), skip + taken));
    }
    let taken = told
        .names
        .part_phrase(rest)
        .or_else(|| matches!(&rest.first()?.kind, Kind::Code(code) if code.len() > 2).then_some(1));
    let taken = taken.or_else(|| {
        // A thread's name may be part of it: `M8 shoulder bolt`.
        matches!(rest.first()?.kind, Kind::Thread(_))
            .then(|| told.names.part_phrase(&rest[1..]))
            .flatten()
            .map(|taken| taken + 1)
    })?;
    let said: Vec<String> = rest[..taken].iter().map(text_of).collect();
    Some((said.join(" "), None, skip + taken))
}

/// `on 2 hooks`: how many, where the part is one of several.
fn is_count(kind: &Kind) -> bool {
    matches!(kind, Kind::Num(num)
        if num.is_whole() && num.unit.is_none() && (2..=12).contains(&num.over))
}

/// A mate behind its size: `1/4 dowel`, `a 1/4-20 screw`.
pub(super) fn sized_mate(told: &Told, rest: &[Token], line: &Line) -> Option<(Vec<Placed>, usize)> {
    let article = usize::from(matches!(rest.first()?.word(), Some("a" | "an" | "the")));
    let Token { kind: kind @ (Kind::Num(_) | Kind::Dims(_) | Kind::Thread(_)), at } =
        rest.get(article)?
    else {
        return None;
    };
    let (name, part, taken) = mate_name(told, &rest[article + 1..], line)?;
    if is_count(kind) && name.ends_with('s') && part.is_some() {
        return None;
    }
    let place = rest[article + 1].at.start..rest[article + taken].at.end;
    let mate = (Item::Mate { name, part, is_sure: true }, place);
    Some((vec![mate, (Item::OfMate(kind.clone()), at.clone())], article + 1 + taken))
}

/// `8.5 clearance for M8`, `hole for the 3 mm cable`, `groove for 1/4" leather cord`: what
/// goes there, by its thread or its size.
fn for_hole(
    told: &Told,
    rest: &[Token],
    word: &str,
    line: &Line,
    out: &mut Vec<Placed>,
) -> Option<(Option<Item>, usize)> {
    if word != "for" {
        return None;
    }
    let mut features = out.iter().filter_map(|(item, _)| match item {
        Item::Feature { side, .. } => Some(*side),
        _ => None,
    });
    // `foot holes: 8.5 clearance for M8`: the hole stands before the colon.
    let of_line = line.feature.map(|at| &told.job.features[at]);
    let under_hole = of_line
        .is_some_and(|one| one.side == SizeKind::Hole && one.line == line.number)
        && features.clone().next().is_none();
    let is_hole = under_hole || features.any(|side| side == SizeKind::Hole);
    if let (Some(Token { kind: kind @ Kind::Thread(thread), at }), true) = (rest.get(1), is_hole) {
        // `hole for M6`, `hole for 5/16 bsf hex hd`: what goes through has the thread.
        let said: Vec<String> = rest[2..]
            .iter()
            .map_while(|token| token.word().filter(|word| !is_small(word) && !leads_to_mate(word)))
            .map(str::to_owned)
            .collect();
        let taken = 2 + said.len();
        let name = if said.is_empty() { thread.clone() } else { said.join(" ") };
        out.push((Item::Mate { name, part: None, is_sure: true }, at.clone()));
        return Some((Some(Item::OfMate(kind.clone())), taken));
    }
    let is_cut = matches!(out.last(), Some((Item::Feature { side: SizeKind::Other, .. }, _)));
    let (mut more, taken) = noun_of_size(&rest[1..]).filter(|_| is_hole || is_cut)?;
    // A groove is as wide as the cord that it is for.
    if let ([_, (size, _)], true) = (more.as_mut_slice(), is_cut)
        && let Item::OfMate(kind) = &*size
    {
        *size = Item::Size(kind.clone());
        more.swap(0, 1);
    }
    out.extend(more);
    Some((None, 1 + taken))
}

pub(super) fn led_mate(
    told: &Told,
    rest: &[Token],
    word: &str,
    line: &Line,
    out: &mut Vec<Placed>,
) -> (Option<Item>, usize) {
    let said_fit =
        out.iter().any(|(item, _)| matches!(item, Item::Fit(..) | Item::Class(_) | Item::InPlace));
    let in_hole =
        out.iter().any(|(item, _)| matches!(item, Item::Feature { side: SizeKind::Hole, .. }));
    let purpose = word == "for" || word == "to";
    // `it` is what the clause before spoke of.
    if matches!(rest.get(1).and_then(Token::word), Some("it" | "them")) {
        let here = out.iter().find_map(|(item, _)| match item {
            Item::Part(part) => Some(*part),
            _ => None,
        });
        let it = line
            .subject
            .filter(|part| here.is_some() && here != Some(*part))
            .or_else(|| line.before.filter(|_| here.is_some() && here == line.subject))
            .or(line.mate_part);
        if let Some(part) = it {
            let name = told.job.parts[part].name.clone();
            return (Some(Item::Mate { name, part: Some(part), is_sure: true }), 2);
        }
    }
    // `on a 1/4 dowel`: the size of the mate comes first.
    if let Some((more, taken)) = sized_mate(told, &rest[1..], line)
        && !(purpose && !said_fit && !in_hole)
    {
        out.extend(more);
        return (None, 1 + taken);
    }
    if let Some(found) = for_hole(told, rest, word, line, out) {
        return found;
    }
    if let Some(found) = place_of(told, &rest[1..], line) {
        return at_place(rest, found, out);
    }
    if let Some(found) = known_place(told, &rest[1..], line) {
        return at_place(rest, found, out);
    }
    match mate_name(told, &rest[1..], line) {
        Some((name, part, taken)) => {
            // `hole in the plugs 1/2`, `journal on the shaft`: whose it is.
            if let (Some(of), [(Item::Feature { side, part: own @ None, .. }, _)]) =
                (part, out.as_mut_slice())
                && match side {
                    SizeKind::Hole => word == "in",
                    SizeKind::Shaft => word == "on",
                    _ => word == "in" || word == "on",
                }
                && rest.iter().any(|token| matches!(token.kind, Kind::Num(_) | Kind::Thread(_)))
                && line.subject.is_none_or(|subject| told.inwardness(subject) <= 1 || subject == of)
            {
                *own = part;
                return (None, 1 + taken);
            }
            // `rod hole in the collar`, which is the collar's.
            if let (Some(of), Some((Item::Feature { part: Some(own), .. }, _))) = (part, out.last())
                && of == *own
            {
                return (None, 1 + taken);
            }
            // `end play on crank`, `bore in housing`.
            let of_length =
                matches!(out.last(), Some((Item::Feature { side: SizeKind::Length, .. }, _)));
            if let (true, Some(part)) = (of_length, part) {
                return (Some(Item::Part(part)), 1 + taken);
            }
            // `hole in the housing`, of the pin that goes there.
            let subject = line.subject.filter(|subject| {
                told.inwardness(*subject) > 1 && Some(*subject) != part && word == "in"
            });
            if let (Some(subject), Some(_)) = (subject, part)
                && let Some((Item::Feature { side, part: own @ None, mate, .. }, _)) =
                    out.last_mut()
                && matches!(side, SizeKind::Hole | SizeKind::Other)
            {
                *own = part;
                *mate = Some(told.job.parts[subject].name.clone());
                return (None, 1 + taken);
            }
            // `seat 25 k6 x 15, for 6205`: a clause of its own says whose seat it is.
            let is_whole = word == "for" && out.is_empty() && line.feature.is_some();
            // `8 slot for the guide`, not `square for crank 17`.
            let sized = rest.iter().enumerate().any(|(at, token)| {
                matches!(token.kind, Kind::Num(_)) && !across_flats(&rest[at + 1..])
            });
            let in_hole = in_hole
                || out.iter().any(|(item, _)| match item {
                    Item::Size(Kind::Thread(_)) | Item::Feature { side: SizeKind::Shaft, .. } => {
                        true
                    }
                    Item::Feature { side: SizeKind::Other, .. } => !sized,
                    _ => false,
                });
            let is_sure = said_fit || in_hole || !purpose || is_whole;
            if purpose && !is_sure {
                return (Some(Item::Loose(name)), 1 + taken);
            }
            (Some(Item::Mate { name, part, is_sure: said_fit || in_hole || is_whole }), 1 + taken)
        }
        None => match feature_led(told, &rest[1..], line).filter(|_| {
            // `22 in the bore` says what the size is of.
            !matches!(out.as_slice(), [(Item::Size(_), _)])
        }) {
            Some(found) => at_place(rest, found, out),
            None => named_later(&told.job, rest, word, line, out),
        },
    }
}

/// `goes on the eccentric`, `easy fit in the reel`: a word that ends its clause and
/// that the note tells more of further down, or never.
fn named_later(
    job: &Job,
    rest: &[Token],
    word: &str,
    line: &Line,
    out: &[Placed],
) -> (Option<Item>, usize) {
    let is_said = |item: &Item| match item {
        Item::Fit(..) => true,
        Item::Loose(verb) => matches!(verb.as_str(), "goes" | "go" | "mounts" | "mount"),
        _ => false,
    };
    // Only a hole or a shaft goes with another: `12 thick, goes in the vice`.
    let goes = out.iter().any(|(item, _)| match item {
        Item::Feature { side, .. } => side.surface().is_some(),
        _ => false,
    }) || opened::spoken_of(job, line)
        .is_some_and(|at| job.features[at].side.surface().is_some());
    let name = match rest {
        [_, the, name] if the.word() == Some("the") => name.word(),
        _ => None,
    };
    let name = name.filter(|name| {
        goes && crate::note::lexicon::is_noun(name)
            && matches!(word, "in" | "on" | "into" | "onto")
            && out.iter().any(|(item, _)| is_said(item))
    });
    match name {
        Some(name) => (Some(Item::Mate { name: name.to_owned(), part: None, is_sure: true }), 3),
        None => (Some(Item::Loose(word.to_owned())), 1),
    }
}

/// `hole for the 3 mm cable`, `groove for 1/4" leather cord`: what goes there by its
/// size, the last words of the clause.
fn noun_of_size(rest: &[Token]) -> Option<(Vec<Placed>, usize)> {
    let article = usize::from(matches!(rest.first()?.word(), Some("a" | "an" | "the")));
    let Token { kind: kind @ Kind::Num(num), at } = rest.get(article)? else { return None };
    let words: Vec<&str> = rest[article + 1..].iter().map_while(Token::word).collect();
    let (last, before) = words.split_last()?;
    let is_name = is_noun(last) && before.iter().all(|word| is_material(word) || is_noun(word));
    let is_size = !num.is_whole() || num.unit.is_some() || !last.ends_with('s');
    if !is_name || !is_size || words.len() > 3 || article + 1 + words.len() < rest.len() {
        return None;
    }
    let place = rest[article + 1].at.start..rest[rest.len() - 1].at.end;
    let mate = (Item::Mate { name: words.join(" "), part: None, is_sure: true }, place);
    Some((vec![mate, (Item::OfMate(kind.clone()), at.clone())], rest.len()))
}

/// `on the pinion end of the spindle`: a feature, then its part.
fn place_of(told: &Told, rest: &[Token], line: &Line) -> Option<Place> {
    let article = |rest: &[Token]| usize::from(rest.first().and_then(Token::word) == Some("the"));
    let skip = article(rest);
    let words: Vec<&str> = rest[skip..].iter().take(4).map_while(Token::word).collect();
    let of = words.iter().position(|word| *word == "of").filter(|of| *of > 1)?;
    let behind = skip + of + 1;
    let behind = behind + article(rest.get(behind..)?);
    let (part, taken) = told.part_at(rest.get(behind..)?)?;
    let name = words[..of].join(" ");
    let feature = told.feature_called(part, &name, None)?;
    let one = &told.job.features[feature];
    (line.subject != Some(part) && one.side.surface().is_some() && one.nominal.is_some()).then(
        || (told.job.parts[part].name.clone(), part, one.name.clone(), one.side, behind + taken),
    )
}

/// `for the fork slots`: a feature that the note has, not a part called fork.
fn known_place(told: &Told, rest: &[Token], line: &Line) -> Option<Place> {
    let found = feature_led(told, rest, line)?;
    let is_part = || mate_name(told, rest, line).is_some_and(|(_, part, _)| part.is_none());
    (found.2.contains(' ') && is_part()).then_some(found)
}

/// `on the shank`, `on that handle end`: a feature of another part by its name.
pub(super) fn feature_led(told: &Told, rest: &[Token], line: &Line) -> Option<Place> {
    let skip = rest
        .iter()
        .take_while(|token| matches!(token.word(), Some("the" | "a" | "that" | "this")))
        .count();
    let words: Vec<String> =
        rest[skip..].iter().take(4).map_while(|token| token.word().map(stem)).collect();
    (1..=words.len()).rev().find_map(|count| {
        let at = told.names.feature_exactly(&words[..count].join(" "))?;
        // Many parts have a bore.
        let alike = told.names.features.iter().filter(|name| **name == words[..count]);
        (alike.take(2).count() == 1).then_some(())?;
        let one = &told.job.features[at];
        let is_other = line.subject.is_some_and(|part| part != one.part);
        let is_side = one.side.surface().is_some() || one.side == SizeKind::Other && count > 1;
        (is_other && is_side).then(|| {
            let part = told.job.parts[one.part].name.clone();
            (part, one.part, one.name.clone(), one.side, skip + count)
        })
    })
}

/// The mate and its feature that stand behind the word that leads to them.
fn at_place(
    rest: &[Token],
    (name, part, own, side, taken): Place,
    out: &mut Vec<Placed>,
) -> (Option<Item>, usize) {
    let place = rest[0].at.start..rest[taken].at.end;
    out.push((Item::Mate { name, part: Some(part), is_sure: true }, place));
    (Some(Item::MateFeature(own, side)), 1 + taken)
}

/// `bearing 6208`: it goes by its number.
pub(super) fn bearing_code(tokens: &[Token]) -> Option<String> {
    let [name, Token { kind: Kind::Code(code), .. }, ..] = tokens else { return None };
    let numbered = code.len() > 2 && code.starts_with(|c: char| c.is_ascii_digit());
    (numbered && stem(name.word()?) == "bearing").then(|| code.to_uppercase())
}
