//! What the words of one clause are: features, parts, fits, mates, sizes.

use std::ops::Range;

use fits_core::{job::whole::SizeKind, shop::words::Word, size::Unit};

use super::{
    led, named, owner,
    phrases::{self, feature_phrase, length_between, text_of},
};
use crate::note::{
    Line,
    lexicon::{self, feature, inwardness, leads_to_mate, says_measured, stem, surely_measured},
    names::is_instance,
    token::{Kind, Num, Token},
    told::Told,
};

/// A piece of a clause.
#[derive(Clone, Debug)]
pub(in crate::note) enum Item {
    /// A feature, with the part that its words name, or a mate that they hint at.
    Feature {
        name: String,
        side: SizeKind,
        part: Option<usize>,
        mate: Option<String>,
    },
    /// The part spoken of.
    Part(usize),
    Fit(String, Option<Word>),
    /// The other part: its name, and the part if it is known.
    Mate {
        name: String,
        part: Option<usize>,
        is_sure: bool,
    },
    /// The mate's own feature, named behind it: `in the yoke hole`.
    MateFeature(String, SizeKind),
    /// A size of the mate.
    OfMate(Kind),
    Size(Kind),
    Class(String),
    Off(Num, Num),
    /// Measured; surely so.
    Reads(bool),
    Not,
    /// `stock`: the size is of what it is made from.
    Stock,
    Same,
    AllRound,
    Most,
    /// `in place`, `pressed`.
    InPlace,
    Old,
    /// A word that says nothing here.
    Loose(String),
}

/// An item and its place in the line.
pub(in crate::note) type Placed = (Item, Range<usize>);

pub(in crate::note) fn items(told: &Told, tokens: &[Token], line: &Line) -> Vec<Placed> {
    let mut out: Vec<Placed> = Vec::new();
    let mut at = 0;
    while at < tokens.len() {
        let (item, taken) = item(told, tokens, at, line, &mut out);
        let place = tokens[at].at.start..tokens[(at + taken).min(tokens.len()) - 1].at.end;
        out.extend(item.map(|item| (item, place)));
        at += taken.max(1);
    }
    named::seats_by_class(&mut out);
    out
}

#[allow(clippy::too_many_lines, reason = "one kind of words after another, each short")]
pub(super) fn item(
    told: &Told,
    tokens: &[Token],
    at: usize,
    line: &Line,
    out: &mut Vec<Placed>,
) -> (Option<Item>, usize) {
    let rest = &tokens[at..];
    let words: Vec<&str> = rest.iter().take(4).map_while(Token::word).collect();
    match &rest[0].kind {
        Kind::Class(class) => return (Some(Item::Class(class.clone())), 1),
        Kind::Off(low, high) => return (Some(Item::Off(low.clone(), high.clone())), 1),
        Kind::Sign('=') => return (Some(Item::Reads(true)), 1),
        Kind::Sign('>') if led::sized_mate(told, &rest[1..], line).is_some() => {
            let (more, taken) = led::sized_mate(told, &rest[1..], line).unwrap_or_default();
            out.extend(more);
            return (None, 1 + taken);
        }
        // `-> got .7488`: what came of it.
        Kind::Sign('>')
            if rest.get(1).is_some_and(|next| {
                matches!(next.kind, Kind::Num(_) | Kind::Range(..))
                    || next.word().is_some_and(surely_measured)
            }) =>
        {
            return (Some(Item::Reads(true)), 1);
        }
        Kind::Sign('>') => {
            return match led::mate_name(told, &rest[1..], line) {
                Some((name, part, taken)) => {
                    (Some(Item::Mate { name, part, is_sure: true }), taken + 1)
                }
                None => (None, 1),
            };
        }
        Kind::Sign(_) | Kind::Count(_) => return (None, 1),
        Kind::Num(_) | Kind::Range(..) | Kind::Dims(_) | Kind::Thread(_) => {
            let of_mate =
                matches!(out.last(), Some((Item::Mate { .. } | Item::MateFeature(..), _)));
            // `runs in the bush 1 1/2 thou clear`: how it is to go there.
            let is_amount = |kind: &Kind| {
                matches!(kind, Kind::Num(num) | Kind::Range(_, num)
                    if matches!(num.unit, Some(Unit::Thou | Unit::Tenth | Unit::Micrometre)))
            };
            let of_mate = of_mate && !across_flats(&rest[1..]) && !is_amount(&rest[0].kind);
            let kind = rest[0].kind.clone();
            return (Some(if of_mate { Item::OfMate(kind) } else { Item::Size(kind) }), 1);
        }
        // The depths of a keyway, as drawings mark them.
        Kind::Code(word) if matches!(word.as_str(), "t1" | "t2") => {
            let name = format!("depth {word}");
            return (
                Some(Item::Feature { name, side: SizeKind::Length, part: None, mate: None }),
                1,
            );
        }
        // `.7483 LH`, after `journals`.
        Kind::Word(word)
            if is_instance(&stem(word))
                && word != "a"
                && matches!(out.last(), Some((Item::Size(_), _)))
                && line.feature.is_some()
                && !out.iter().any(|(item, _)| matches!(item, Item::Feature { .. })) =>
        {
            return (phrases::instance(told, word, line), 1);
        }
        Kind::Code(word) if word.len() <= 2 => return (Some(Item::Loose(word.clone())), 1),
        Kind::Word(_) | Kind::Code(_) => {}
    }
    let word = words.first().copied().unwrap_or_default();
    if across_flats(rest) {
        let named = out.iter().any(|(item, _)| matches!(item, Item::Feature { .. }));
        let name = "flats".to_owned();
        let flats = Item::Feature { name, side: SizeKind::Other, part: None, mate: None };
        return (Some(if named { Item::Loose("flats".into()) } else { flats }), 3);
    }
    // `on washer .125 thick`: the size is of what is named behind it.
    if let Some((Item::OfMate(_), _)) = out.last()
        && let Some((name, side @ SizeKind::Length, taken)) = feature_phrase(rest)
    {
        let place = rest[0].at.clone();
        out.insert(out.len() - 1, (Item::MateFeature(name, side), place));
        return (None, taken);
    }
    if matches!(out.last(), Some((Item::Mate { .. }, _)))
        && let Some((name, side, taken)) = led::mates_own(told, rest, out, line)
    {
        return (Some(Item::MateFeature(name, side)), taken);
    }
    if let Some((item, taken)) = named::named(told, tokens, at, line, out) {
        return (Some(item), taken);
    }
    if let Some((item, taken)) = phrases::phrase(&words) {
        return (Some(item), taken);
    }
    if let Some((name, side, taken)) = length_between(rest) {
        return (Some(Item::Feature { name, side, part: None, mate: None }), taken);
    }
    // `R .7497`, after `journal L`.
    if out.is_empty()
        && is_instance(&stem(word))
        // `A 2 mm cross hole`
        && (word != "a" || rest.len() < 3)
        && rest.get(1).is_some_and(|next| {
            matches!(next.kind, Kind::Num(_) | Kind::Sign('='))
                || next.word().is_some_and(says_measured)
        })
        && let Some(one) = phrases::instance(told, word, line)
    {
        return (Some(one), 1);
    }
    if let Some((feature, taken)) = told.feature_anywhere(rest)
        && named::is_in_reach(told, feature, rest.get(taken), line)
        && (line.subject.is_none()
            || line.date.is_some()
            || line.reads
            || line.subject == Some(told.job.features[feature].part))
    {
        let one = &told.job.features[feature];
        return (
            Some(Item::Feature {
                name: one.name.clone(),
                side: one.side,
                part: Some(one.part),
                mate: None,
            }),
            taken,
        );
    }
    // A part, or a feature that is called by one.
    let known = told.part_at(rest).map(|(part, taken)| (Some(part), taken));
    let named = known.or_else(|| told.names.part_phrase(rest).map(|taken| (None, taken)));
    // `2 lg` is a length, `lg bush` a part.
    let is_long = word == "lg" && at > 0 && matches!(tokens[at - 1].kind, Kind::Num(_));
    let named = named.filter(|_| !is_long);
    let is_fit_word = lexicon::fit(&words).is_some();
    // A part of its own that the note has not named yet: `shldr screw` beside the screw.
    if let Some((None, taken)) = named
        && taken > 1
        && out.is_empty()
        && !(is_fit_word && rest[0].at.len() < word.len())
        && feature_phrase(&rest[taken..]).is_none()
    {
        let form = rest[taken - 1].word().filter(|word| named::is_tube(word)).unwrap_or_default();
        return (Some(Item::Loose(form.to_owned())), taken);
    }
    if let Some((part, taken)) = named
        && !(is_fit_word && taken == 1)
    {
        let after = &rest[taken..];
        let own = feature(word).is_some() && inwardness(word).is_some() && taken == 1;
        // `3/16 spring pin`: the pin's own size, and that of its hole.
        if let Some((Item::Size(kind @ Kind::Num(_)), at)) = out.last().cloned()
            && out.len() == 1
            && line.subject.is_some()
            && line.subject != part
            && rest[..taken].last().and_then(Token::word).is_some_and(|word| {
                matches!(stem(word).as_str(), "pin" | "dowel" | "key" | "screw" | "bolt")
            })
            && line.subject.is_none_or(|part| {
                told.inwardness(part) < 3 || told.features_of(part).next().is_some()
            })
            && feature_phrase(&rest[taken..]).is_none()
            && !matches!(rest.get(taken).map(|next| &next.kind), Some(Kind::Num(_)))
        {
            out.pop();
            let said: Vec<String> = rest[..taken].iter().map(text_of).collect();
            let place = rest[0].at.start..rest[taken - 1].at.end;
            // `3/16 key` of a shaft: its keyway.
            let is_key = said.last().is_some_and(|word| stem(word) == "key");
            let (name, side) =
                if is_key { ("keyway", SizeKind::Other) } else { ("pin hole", SizeKind::Hole) };
            out.push((
                Item::Feature {
                    name: name.to_owned(),
                    side,
                    part: None,
                    mate: Some(said.join(" ")),
                },
                place,
            ));
            out.push((Item::Size(kind), at));
            return (None, taken);
        }
        if let Some((name, side, more)) = feature_phrase(after)
            && !own
        {
            let said: Vec<String> = rest[..taken].iter().map(text_of).collect();
            let said = said.join(" ");
            if phrases::is_modifier(told, line, part, rest, taken, &name, side) {
                let is_end = name.starts_with("end");
                let mate = (!is_end && !matches!(side, SizeKind::Length | SizeKind::Other))
                    .then(|| said.clone());
                let item = Item::Feature { name: format!("{said} {name}"), side, part: None, mate };
                return (Some(item), taken + more);
            }
            if let Some(part) = part {
                return (
                    Some(Item::Feature { name, side, part: Some(part), mate: None }),
                    taken + more,
                );
            }
        }
        if let (Some(part), false) = (part, own) {
            return (Some(Item::Part(part)), taken);
        }
    }
    if word == "clearance" && matches!(rest.get(1).map(|next| &next.kind), Some(Kind::Num(_))) {
        let name = "clearance hole".to_owned();
        return (Some(Item::Feature { name, side: SizeKind::Hole, part: None, mate: None }), 1);
    }
    if is_fit_word && let Some((taken, fit)) = lexicon::fit(&words) {
        let said = words[..taken].join(" ");
        let leads = words.get(1).is_some_and(|next| leads_to_mate(next));
        let is_noun = feature(word).is_some_and(|_| taken == 1 && word != "turned" && !leads);
        if !is_noun {
            // `match screw`, `follows screw`.
            let matches = lexicon::matches_mate(&said);
            if let Some((name, part, more)) =
                matches.then(|| led::mate_name(told, &rest[taken..], line)).flatten()
            {
                let place = rest[0].at.start..rest[taken - 1].at.end;
                out.push((Item::Fit(said, fit), place));
                return (Some(Item::Mate { name, part, is_sure: true }), taken + more);
            }
            // `press bushing`, `PF ring pin`: the mate with no word between; `press
            // screw` may be a name.
            let after = &rest[taken..];
            let short = rest[0].at.len() < word.len();
            // `clear 1/2 bolts`: a size of the mate with no word between.
            if !out.is_empty()
                && let Some((more, used)) = led::sized_mate(told, after, line)
            {
                let place = rest[0].at.start..rest[taken - 1].at.end;
                out.push((Item::Fit(said, fit), place));
                out.extend(more);
                return (None, taken + used);
            }
            if let Some((name, part, more)) = led::mate_name(told, after, line)
                && line.subject.is_some()
                && part != line.subject
                && (part.is_some() || short)
                && after.get(more).is_none_or(|next| {
                    matches!(next.kind, Kind::Sign(_)) || feature_phrase(&after[more..]).is_some()
                })
            {
                let place = rest[0].at.start..rest[taken - 1].at.end;
                out.push((Item::Fit(said, fit), place));
                return (Some(Item::Mate { name, part, is_sure: true }), taken + more);
            }
            return (Some(Item::Fit(said, fit)), taken);
        }
    }
    let meets = || {
        let other = told.part_at(&rest[1..]);
        let named = || {
            let article = rest.get(1).and_then(Token::word) == Some("the");
            article && told.names.part_phrase(&rest[2..]).is_some()
        };
        lexicon::meets_mate(word)
            && other.map_or_else(named, |(part, _)| line.subject != Some(part))
    };
    if leads_to_mate(word) || word == "/" || meets() {
        return led::led_mate(told, rest, word, line, out);
    }
    // `5/8 ends, tight in the plates`, not `bore 5/8 both ends`.
    if word == "ends"
        && let [(Item::Size(Kind::Num(_)), _)] = out.as_slice()
    {
        let name = word.to_owned();
        return (Some(Item::Feature { name, side: SizeKind::Shaft, part: None, mate: None }), 1);
    }
    if let Some((name, side, taken)) = feature_phrase(rest) {
        // `pivot hole, bored true 1.000`: what was done to it.
        let waits = word == "bored" && owner::hole_waits(&told.job, line);
        // `turned seat to 24.965`
        let names_next = word == "turned"
            && rest.get(1).and_then(Token::word).is_some_and(|next| feature(next).is_some());
        let verb = matches!(word, "turned" | "bored" | "reamed" | "tapped")
            && (waits
                || names_next
                || out.iter().any(|(item, _)| matches!(item, Item::Feature { .. })));
        if verb {
            return (Some(Item::Loose(word.to_owned())), 1);
        }
        // Words before it belong to its name.
        let mut name = name;
        while let Some((Item::Loose(before), _)) = out.last() {
            if before.len() < 3
                || lexicon::is_small(before)
                || lexicon::is_material(before)
                || says_measured(before)
            {
                break;
            }
            name = format!("{before} {name}");
            out.pop();
        }
        // `end of the crank shaft`
        let behind = &rest[taken..];
        let article = usize::from(behind.get(1).and_then(Token::word) == Some("the"));
        let of = (behind.first().and_then(Token::word) == Some("of"))
            .then(|| told.part_at(&behind[1 + article..]))
            .flatten();
        let more = of.map_or(0, |(_, more)| 1 + article + more);
        let part = of.map(|(part, _)| part);
        return (Some(Item::Feature { name, side, part, mate: None }), taken + more);
    }
    // `ream 1/4 for a dowel`: a hole.
    let by_size =
        |token: Option<&Token>| token.is_some_and(|token| matches!(token.kind, Kind::Num(_)));
    let has_hole = matches!(out.last(), Some((Item::Feature { side: SizeKind::Hole, .. }, _)));
    // `broke the 1/2 drill`: a tool.
    let of_tool = || {
        let article = at.checked_sub(2).and_then(|before| tokens[before].word());
        line.date.is_some() || article.is_some_and(|word| matches!(word, "the" | "a" | "my"))
    };
    if matches!(word, "drill" | "drills" | "reamer" | "tap" | "bit" | "cutter")
        && rest.get(1).and_then(Token::word) != Some("rod")
        && matches!(out.last(), Some((Item::Size(Kind::Num(_)), _)))
        && !out.iter().any(|(item, _)| matches!(item, Item::Feature { .. }))
        && of_tool()
    {
        out.pop();
        return (Some(Item::Loose(word.to_owned())), 1);
    }
    // `no 3/16 in the tin`
    if word == "no"
        && matches!(rest.get(1).map(|next| &next.kind), Some(Kind::Num(num))
            if num.is_inch_shaped() || num.unit.is_some())
    {
        return (Some(Item::Loose(word.to_owned())), 2);
    }
    if matches!(word, "ream" | "reamed" | "rm" | "drill" | "drilled")
        && !has_hole
        && !line.asks
        && !owner::hole_waits(&told.job, line)
        && (by_size(rest.get(1)) && line.date.is_none()
            || matches!(out.last(), Some((Item::Size(_), _)))
                // `crank hole 3/4 reamed` has said it.
                && !out.iter().any(|(item, _)| matches!(item, Item::Feature { side: SizeKind::Hole, .. }))
                && rest.get(1).and_then(Token::word) != Some("rod"))
    {
        let name = "hole".to_owned();
        return (Some(Item::Feature { name, side: SizeKind::Hole, part: None, mate: None }), 1);
    }
    if says_measured(word) {
        return (Some(Item::Reads(surely_measured(word))), 1);
    }
    if word == "same" || word == "ditto" || word == "do" {
        return (Some(Item::Same), 1);
    }
    (Some(Item::Loose(text_of(&rest[0]))), 1)
}

/// `1/2 a/f`: the size of a square or of a hexagon.
pub(super) fn across_flats(behind: &[Token]) -> bool {
    matches!(behind, [a, slash, f, ..]
        if a.word() == Some("a") && slash.is_sign('/') && f.word() == Some("f"))
}
