//! What the words of one clause are: features, parts, fits, mates, sizes.

use std::ops::Range;

use fits_core::{job::whole::Side, shop::words::Word};

use super::{
    Line, Reader,
    lexicon::{self, feature, inwardness, leads_to_mate, says_measured, stem, surely_measured},
    names::is_instance,
    token::{Kind, Num, Token},
};

/// A piece of a clause.
#[derive(Clone, Debug)]
pub(super) enum Item {
    /// A feature, with the part that its words name, or a mate that they hint at.
    Feature {
        name: String,
        side: Side,
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
    MateFeature(String, Side),
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
pub(super) type Placed = (Item, Range<usize>);

impl Reader {
    pub(super) fn items(&self, tokens: &[Token], line: &Line) -> Vec<(Item, Range<usize>)> {
        let mut out: Vec<(Item, Range<usize>)> = Vec::new();
        let mut at = 0;
        while at < tokens.len() {
            let (item, taken) = self.item(tokens, at, line, &mut out);
            let place = tokens[at].at.start..tokens[(at + taken).min(tokens.len()) - 1].at.end;
            out.extend(item.map(|item| (item, place)));
            at += taken.max(1);
        }
        out
    }

    #[allow(clippy::too_many_lines, reason = "one kind of words after another, each short")]
    fn item(
        &self,
        tokens: &[Token],
        at: usize,
        line: &Line,
        out: &mut Vec<(Item, Range<usize>)>,
    ) -> (Option<Item>, usize) {
        let rest = &tokens[at..];
        let words: Vec<&str> = rest.iter().take(4).map_while(Token::word).collect();
        match &rest[0].kind {
            Kind::Class(class) => return (Some(Item::Class(class.clone())), 1),
            Kind::Off(low, high) => return (Some(Item::Off(low.clone(), high.clone())), 1),
            Kind::Sign('=') => return (Some(Item::Reads(true)), 1),
            Kind::Sign('>') if self.sized_mate(&rest[1..], line).is_some() => {
                let (more, taken) = self.sized_mate(&rest[1..], line).unwrap_or_default();
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
                return match self.mate_name(&rest[1..], line) {
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
                let kind = rest[0].kind.clone();
                return (Some(if of_mate { Item::OfMate(kind) } else { Item::Size(kind) }), 1);
            }
            // The depths of a keyway, as drawings mark them.
            Kind::Code(word) if matches!(word.as_str(), "t1" | "t2") => {
                let name = format!("depth {word}");
                return (
                    Some(Item::Feature { name, side: Side::Length, part: None, mate: None }),
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
                return (self.instance(word, line), 1);
            }
            Kind::Code(word) if word.len() <= 2 => return (Some(Item::Loose(word.clone())), 1),
            Kind::Word(_) | Kind::Code(_) => {}
        }
        let word = words.first().copied().unwrap_or_default();
        // `on washer .125 thick`: the size is of what is named behind it.
        if let Some((Item::OfMate(_), _)) = out.last()
            && let Some((name, side @ Side::Length, taken)) = feature_phrase(rest)
        {
            let place = rest[0].at.clone();
            out.insert(out.len() - 1, (Item::MateFeature(name, side), place));
            return (None, taken);
        }
        if matches!(out.last(), Some((Item::Mate { .. }, _)))
            && let Some((name, side, taken)) = self.mates_own(rest, out, line)
        {
            return (Some(Item::MateFeature(name, side)), taken);
        }
        if let Some((item, taken)) = Self::phrase(&words) {
            return (Some(item), taken);
        }
        if let Some((name, side, taken)) = length_between(rest) {
            return (Some(Item::Feature { name, side, part: None, mate: None }), taken);
        }
        // `R .7497`, after `journal L`.
        if out.is_empty()
            && is_instance(&stem(word))
            && rest.get(1).is_some_and(|next| {
                matches!(next.kind, Kind::Num(_) | Kind::Sign('='))
                    || next.word().is_some_and(says_measured)
            })
            && let Some(one) = self.instance(word, line)
        {
            return (Some(one), 1);
        }
        if let Some((feature, taken)) = self.feature_anywhere(rest)
            && (line.subject.is_none()
                || line.date.is_some()
                || line.subject == Some(self.job.features[feature].part))
        {
            let one = &self.job.features[feature];
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
        let known = self.part_at(rest).map(|(part, taken)| (Some(part), taken));
        let named = known.or_else(|| self.part_phrase(rest).map(|taken| (None, taken)));
        let is_fit_word = lexicon::fit(&words).is_some();
        // A part of its own that the note has not named yet: `shldr screw` beside the screw.
        if let Some((None, taken)) = named
            && taken > 1
            && out.is_empty()
            && !(is_fit_word && rest[0].at.len() < word.len())
            && feature_phrase(&rest[taken..]).is_none()
        {
            return (Some(Item::Loose(String::new())), taken);
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
                    self.inwardness(part) < 3 || self.features_of(part).next().is_some()
                })
                && feature_phrase(&rest[taken..]).is_none()
                && !matches!(rest.get(taken).map(|next| &next.kind), Some(Kind::Num(_)))
            {
                out.pop();
                let said: Vec<String> = rest[..taken].iter().map(text_of).collect();
                let place = rest[0].at.start..rest[taken - 1].at.end;
                let name = "pin hole".to_owned();
                out.push((
                    Item::Feature {
                        name,
                        side: Side::Hole,
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
                if self.is_modifier(line, part, rest, taken, &name, side) {
                    let is_end = name.starts_with("end");
                    let mate = (!is_end && !matches!(side, Side::Length | Side::Other))
                        .then(|| said.clone());
                    let item =
                        Item::Feature { name: format!("{said} {name}"), side, part: None, mate };
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
            return (Some(Item::Feature { name, side: Side::Hole, part: None, mate: None }), 1);
        }
        if is_fit_word && let Some((taken, fit)) = lexicon::fit(&words) {
            let said = words[..taken].join(" ");
            let leads = words.get(1).is_some_and(|next| leads_to_mate(next));
            let is_noun = feature(word).is_some_and(|_| taken == 1 && word != "turned" && !leads);
            if !is_noun {
                // `match screw`, `follows screw`.
                let matches = lexicon::matches_mate(&said);
                if let Some((name, part, more)) =
                    matches.then(|| self.mate_name(&rest[taken..], line)).flatten()
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
                    && let Some((more, used)) = self.sized_mate(after, line)
                {
                    let place = rest[0].at.start..rest[taken - 1].at.end;
                    out.push((Item::Fit(said, fit), place));
                    out.extend(more);
                    return (None, taken + used);
                }
                if let Some((name, part, more)) = self.mate_name(after, line)
                    && line.subject.is_some()
                    && part != line.subject
                    && (part.is_some() || short)
                    && after.get(more).is_none_or(|next| {
                        matches!(next.kind, Kind::Sign(_))
                            || feature_phrase(&after[more..]).is_some()
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
            let other = self.part_at(&rest[1..]);
            lexicon::meets_mate(word) && other.is_some_and(|(part, _)| line.subject != Some(part))
        };
        if leads_to_mate(word) || word == "/" || meets() {
            return self.led_mate(rest, word, line, out);
        }
        if let Some((name, side, taken)) = feature_phrase(rest) {
            let verb = matches!(word, "turned" | "bored" | "reamed" | "tapped")
                && out.iter().any(|(item, _)| matches!(item, Item::Feature { .. }));
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
                .then(|| self.part_at(&behind[1 + article..]))
                .flatten();
            let more = of.map_or(0, |(_, more)| 1 + article + more);
            let part = of.map(|(part, _)| part);
            return (Some(Item::Feature { name, side, part, mate: None }), taken + more);
        }
        // `ream 1/4 for a dowel`: a hole.
        let by_size =
            |token: Option<&Token>| token.is_some_and(|token| matches!(token.kind, Kind::Num(_)));
        let has_hole = matches!(out.last(), Some((Item::Feature { side: Side::Hole, .. }, _)));
        if matches!(word, "ream" | "reamed" | "drill" | "drilled")
            && !has_hole
            && !line.asks
            && (by_size(rest.get(1)) && line.date.is_none()
                || matches!(out.last(), Some((Item::Size(_), _)))
                    && rest.get(1).and_then(Token::word) != Some("rod"))
        {
            let name = "hole".to_owned();
            return (Some(Item::Feature { name, side: Side::Hole, part: None, mate: None }), 1);
        }
        if says_measured(word) {
            return (Some(Item::Reads(surely_measured(word))), 1);
        }
        if word == "same" || word == "ditto" || word == "do" {
            return (Some(Item::Same), 1);
        }
        (Some(Item::Loose(text_of(&rest[0]))), 1)
    }

    /// A feature named right behind the mate is the mate's, where it is on the
    /// other side than the one spoken of: `.875 in the yoke hole .877`.
    fn mates_own(
        &self,
        rest: &[Token],
        out: &[Placed],
        line: &Line,
    ) -> Option<(String, Side, usize)> {
        // `bottom end`: which of several comes before it.
        let marks = rest
            .iter()
            .take_while(|token| {
                token.word().is_some_and(|word| is_instance(&stem(word)) && word.len() > 1)
            })
            .count();
        let (name, side, taken) = feature_phrase(&rest[marks..])?;
        let own = out.iter().find_map(|(item, _)| match item {
            Item::Feature { side, .. } => Some(*side),
            _ => None,
        });
        let before = || {
            let one = &self.job.features[line.feature?];
            (Some(one.part) == line.subject && one.side.surface().is_some()).then_some(one.side)
        };
        let own = own.or_else(before);
        side.surface()?;
        if own == Some(side) || own.is_none() && rest.get(marks + taken).is_none() {
            return None;
        }
        let marks: Vec<String> = rest[..marks].iter().map(text_of).collect();
        Some((format!("{} {name}", marks.join(" ")).trim().to_owned(), side, marks.len() + taken))
    }

    /// One of several alike, by its mark alone.
    fn instance(&self, word: &str, line: &Line) -> Option<Item> {
        let of_part = |at: &usize| Some(self.job.features[*at].part) == line.subject;
        let last = &self.job.features[line.feature.or(self.last_feature.filter(of_part))?];
        let head: Vec<&str> = last
            .name
            .split_whitespace()
            .filter(|word| !is_instance(&stem(&word.to_lowercase())))
            .collect();
        let name = format!("{} {}", head.join(" "), word.to_uppercase());
        Some(Item::Feature { name, side: last.side, part: Some(last.part), mate: None })
    }

    /// Phrases that say one thing.
    fn phrase(words: &[&str]) -> Option<(Item, usize)> {
        Some(match words {
            ["in", "place", ..] | ["after", "pressing", ..] | ["when", "pressed", ..] => {
                (Item::InPlace, 2)
            }
            ["all", "round" | "around", ..] | ["per" | "each", "side", ..] => (Item::AllRound, 2),
            ["installed" | "fitted" | "pressed", ..] => (Item::InPlace, 1),
            ["instead", "of", ..] | ["rather", "than", ..] => (Item::Not, 2),
            ["not", ..] => (Item::Not, 1),
            ["stock", ..] => (Item::Stock, 1),
            ["flat" | "plate" | "sheet" | "angle", ..] => (Item::Loose(words[0].to_owned()), 1),
            ["tops" | "max" | "maximum", ..] | ["at", "most", ..] => (Item::Most, 1),
            ["old", "part" | "one", ..] => (Item::Old, 2),
            ["as", "bought" | "is" | "found", ..] => (Item::Loose("as".into()), 2),
            ["each" | "both" | "either", "end" | "ends", ..] => (Item::Loose(String::new()), 2),
            ["end", "play" | "float" | "play/float" | "shake", ..]
            | ["axial", "play" | "float", ..]
            | ["side", "play", ..] => (length(&words[..2]), 2),
            ["endplay" | "endfloat" | "end-play" | "end-float" | "float", ..] => {
                (length(&words[..1]), 1)
            }
            ["over", "all", ..] => (length(&["overall"]), 2),
            ["key", "way", ..] => (
                Item::Feature { name: "keyway".into(), side: Side::Other, part: None, mate: None },
                2,
            ),
            ["cross" | "x-hole" | "cross-hole", "hole", ..] => (
                Item::Feature {
                    name: "cross hole".into(),
                    side: Side::Hole,
                    part: None,
                    mate: None,
                },
                2,
            ),
            ["x-hole" | "cross-hole" | "crosshole", ..] => (
                Item::Feature { name: words[0].into(), side: Side::Hole, part: None, mate: None },
                1,
            ),
            _ => return None,
        })
    }

    /// `gear seat` is the shaft's, `gear bore` the gear's.
    pub(super) fn is_modifier(
        &self,
        line: &Line,
        part: Option<usize>,
        rest: &[Token],
        taken: usize,
        name: &str,
        side: Side,
    ) -> bool {
        let head = stem(name.split_whitespace().next().unwrap_or_default());
        if matches!(head.as_str(), "id" | "od") || matches!(name, "bored" | "turned") {
            return false;
        }
        // `P bore .7502` of a part that has a bore.
        if line.reads
            && part.is_some_and(|part| self.feature_called(part, name, Some(side)).is_some())
        {
            return false;
        }
        let inner = |words: &[Token]| {
            words.iter().rev().find_map(|token| token.word().and_then(inwardness))
        };
        let own =
            part.map_or_else(|| inner(&rest[..taken]).unwrap_or(0), |part| self.inwardness(part));
        if head == "seat" || head == "end" && line.subject.is_some() {
            return line.subject != part || part.is_none();
        }
        let Some(subject) = line.subject else {
            return part.is_none() && side == Side::Hole && own == 3;
        };
        if Some(subject) == part {
            return false;
        }
        // A pin's hole is the hole that it goes in.
        let last = rest[..taken].last().and_then(Token::word).map(stem).unwrap_or_default();
        if side == Side::Hole
            && matches!(
                last.as_str(),
                "pin" | "dowel" | "screw" | "bolt" | "key" | "rivet" | "stud"
            )
        {
            return true;
        }
        let subject = self.inwardness(subject);
        match side {
            Side::Hole => own > subject,
            Side::Shaft => own < subject,
            // `arm slots` under the ring that has them.
            Side::Other => part.is_some() && !line.reads,
            _ => false,
        }
    }

    /// A name after `in`, `on`, `->`: its words, the part if known, how many tokens.
    fn mate_name(&self, tokens: &[Token], line: &Line) -> Option<(String, Option<usize>, usize)> {
        let skip = tokens
            .iter()
            .take_while(|token| {
                matches!(token.word(), Some("the" | "a" | "my" | "its" | "each" | "both" | "new"))
            })
            .count();
        let rest = &tokens[skip..];
        if rest.first()?.word() == Some("it") {
            let part = line.mate_part?;
            return Some((self.job.parts[part].name.clone(), Some(part), skip + 1));
        }
        if let Some((part, taken)) = self.part_at(rest) {
            let said: Vec<String> = rest[..taken].iter().map(text_of).collect();
            return Some((said.join(" "), Some(part), skip + taken));
        }
        let taken = self.part_phrase(rest).or_else(|| {
            matches!(&rest.first()?.kind, Kind::Code(code) if code.len() > 2).then_some(1)
        });
        let taken = taken.or_else(|| {
            // A thread's name may be part of it: `M8 shoulder bolt`.
            matches!(rest.first()?.kind, Kind::Thread(_))
                .then(|| self.part_phrase(&rest[1..]))
                .flatten()
                .map(|taken| taken + 1)
        })?;
        let said: Vec<String> = rest[..taken].iter().map(text_of).collect();
        Some((said.join(" "), None, skip + taken))
    }

    /// A mate behind its size: `1/4 dowel`, `a 1/4-20 screw`.
    fn sized_mate(&self, rest: &[Token], line: &Line) -> Option<(Vec<Placed>, usize)> {
        let article = usize::from(matches!(rest.first()?.word(), Some("a" | "an" | "the")));
        let Token { kind: kind @ (Kind::Num(_) | Kind::Dims(_) | Kind::Thread(_)), at } =
            rest.get(article)?
        else {
            return None;
        };
        let (name, part, taken) = self.mate_name(&rest[article + 1..], line)?;
        let place = rest[article + 1].at.start..rest[article + taken].at.end;
        let mate = (Item::Mate { name, part, is_sure: true }, place);
        Some((vec![mate, (Item::OfMate(kind.clone()), at.clone())], article + 1 + taken))
    }

    fn led_mate(
        &self,
        rest: &[Token],
        word: &str,
        line: &Line,
        out: &mut Vec<(Item, Range<usize>)>,
    ) -> (Option<Item>, usize) {
        let said_fit = out.iter().any(|(item, _)| matches!(item, Item::Fit(..) | Item::Class(_)));
        let in_hole =
            out.iter().any(|(item, _)| matches!(item, Item::Feature { side: Side::Hole, .. }));
        let purpose = word == "for" || word == "to";
        // `it` is what the clause before spoke of.
        if rest.get(1).and_then(Token::word) == Some("it") {
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
                let name = self.job.parts[part].name.clone();
                return (Some(Item::Mate { name, part: Some(part), is_sure: true }), 2);
            }
        }
        // `on a 1/4 dowel`: the size of the mate comes first.
        if let Some((more, taken)) = self.sized_mate(&rest[1..], line)
            && !(purpose && !said_fit && !in_hole)
        {
            out.extend(more);
            return (None, 1 + taken);
        }
        match self.mate_name(&rest[1..], line) {
            Some((name, part, taken)) => {
                // `hole in the plugs 1/2`, `journal on the shaft`: whose it is.
                if let (Some(of), [(Item::Feature { side, part: own @ None, .. }, _)]) =
                    (part, out.as_mut_slice())
                    && match side {
                        Side::Hole => word == "in",
                        Side::Shaft => word == "on",
                        _ => word == "in" || word == "on",
                    }
                    && rest.iter().any(|token| matches!(token.kind, Kind::Num(_) | Kind::Thread(_)))
                    && line
                        .subject
                        .is_none_or(|subject| self.inwardness(subject) <= 1 || subject == of)
                {
                    *own = part;
                    return (None, 1 + taken);
                }
                // `rod hole in the collar`, which is the collar's.
                if let (Some(of), Some((Item::Feature { part: Some(own), .. }, _))) =
                    (part, out.last())
                    && of == *own
                {
                    return (None, 1 + taken);
                }
                // `end play on crank`, `bore in housing`.
                let of_length =
                    matches!(out.last(), Some((Item::Feature { side: Side::Length, .. }, _)));
                if let (true, Some(part)) = (of_length, part) {
                    return (Some(Item::Part(part)), 1 + taken);
                }
                // `hole in the housing`, of the pin that goes there.
                let subject = line.subject.filter(|subject| {
                    self.inwardness(*subject) > 1 && Some(*subject) != part && word == "in"
                });
                if let (Some(subject), Some(_)) = (subject, part)
                    && let Some((Item::Feature { side, part: own @ None, mate, .. }, _)) =
                        out.last_mut()
                    && matches!(side, Side::Hole | Side::Other)
                {
                    *own = part;
                    *mate = Some(self.job.parts[subject].name.clone());
                    return (None, 1 + taken);
                }
                // `seat 25 k6 x 15, for 6205`: a clause of its own says whose seat it is.
                let is_whole = word == "for" && out.is_empty() && line.feature.is_some();
                let in_hole = in_hole
                    || out.iter().any(|(item, _)| {
                        matches!(
                            item,
                            Item::Size(Kind::Thread(_)) | Item::Feature { side: Side::Shaft, .. }
                        )
                    });
                let is_sure = said_fit || in_hole || !purpose || is_whole;
                if purpose && !is_sure {
                    return (Some(Item::Loose(name)), 1 + taken);
                }
                (
                    Some(Item::Mate { name, part, is_sure: said_fit || in_hole || is_whole }),
                    1 + taken,
                )
            }
            None => match self.feature_led(&rest[1..], line).filter(|_| {
                // `22 in the bore` says what the size is of.
                !matches!(out.as_slice(), [(Item::Size(_), _)])
            }) {
                Some((name, part, own, side, taken)) => {
                    let place = rest[0].at.start..rest[taken].at.end;
                    out.push((Item::Mate { name, part: Some(part), is_sure: true }, place));
                    (Some(Item::MateFeature(own, side)), 1 + taken)
                }
                None => (Some(Item::Loose(word.to_owned())), 1),
            },
        }
    }

    /// `on the shank`, `on that handle end`: a feature of another part by its
    /// name: that part's name, the part, the feature's name, its side, how many tokens.
    fn feature_led(
        &self,
        rest: &[Token],
        line: &Line,
    ) -> Option<(String, usize, String, Side, usize)> {
        let skip = rest
            .iter()
            .take_while(|token| matches!(token.word(), Some("the" | "a" | "that" | "this")))
            .count();
        let words: Vec<String> =
            rest[skip..].iter().take(4).map_while(|token| token.word().map(stem)).collect();
        (1..=words.len()).rev().find_map(|count| {
            let at = *self.by_name.get(&words[..count].join(" "))?;
            // Many parts have a bore.
            let alike = self.names.iter().filter(|name| **name == words[..count]);
            (alike.take(2).count() == 1).then_some(())?;
            let one = &self.job.features[at];
            let is_other = line.subject.is_some_and(|part| part != one.part);
            (is_other && one.side.surface().is_some()).then(|| {
                let part = self.job.parts[one.part].name.clone();
                (part, one.part, one.name.clone(), one.side, skip + count)
            })
        })
    }
}

fn length(words: &[&str]) -> Item {
    Item::Feature { name: words.join(" "), side: Side::Length, part: None, mate: None }
}

pub(super) fn text_of(token: &Token) -> String {
    match &token.kind {
        Kind::Word(word) => word.clone(),
        Kind::Code(word) => word.to_uppercase(),
        Kind::Thread(name) => name.clone(),
        Kind::Num(num) => num.over.to_string(),
        _ => String::new(),
    }
}

/// `face to face`, `shldr-shldr`, `between shoulders`.
fn length_between(rest: &[Token]) -> Option<(String, Side, usize)> {
    let word = rest.first()?.word()?;
    if let Some((one, other)) = word.split_once('-')
        && stem(one) == stem(other)
        && one.len() > 2
    {
        return Some((word.to_owned(), Side::Length, 1));
    }
    if word == "between" {
        let next = rest.get(1)?.word()?;
        let more = rest
            .get(2)
            .and_then(Token::word)
            .filter(|word| feature(word).is_some() || stem(word) == "flange" || *word == "faces");
        return Some(match more {
            Some(more) => (format!("between {next} {more}"), Side::Length, 3),
            None => (format!("between {next}"), Side::Length, 2),
        });
    }
    (1..=2).find_map(|before| {
        let [to, ..] = rest.get(before..)? else { return None };
        let last = rest.get(before - 1)?.word()?;
        let after = rest.get(before + 1)?.word()?;
        let is_pair = matches!(to.word()?, "to" | "-") && stem(last) == stem(after);
        is_pair.then(|| {
            let name: Vec<String> = rest[..before + 2].iter().map(text_of).collect();
            (name.join(" "), Side::Length, before + 2)
        })
    })
}

/// A feature's own word and what tells it from others: how many tokens.
pub(super) fn feature_phrase(rest: &[Token]) -> Option<(String, Side, usize)> {
    if let Some(found) = length_between(rest) {
        return Some(found);
    }
    let (side, skip) = match rest {
        [first, second, ..]
            if first.word().is_some_and(|word| {
                matches!(word, "boss" | "bolt" | "cross" | "taper" | "blind" | "through")
            }) && second.word().and_then(feature) == Some(Side::Hole) =>
        {
            (Side::Hole, 2)
        }
        // Those of a connecting rod.
        [first, second, ..]
            if first.word().is_some_and(|word| matches!(word, "big" | "small" | "little"))
                && second.word() == Some("end") =>
        {
            (Side::Hole, 2)
        }
        [first, ..] => (first.word().and_then(feature)?, 1),
        [] => return None,
    };
    let word = rest[0].word()?;
    // `shoulder screw` is a part.
    if matches!(
        stem(word).as_str(),
        "shoulder" | "threaded" | "body" | "boss" | "square" | "hex" | "flat"
    ) && rest
        .get(skip)
        .and_then(Token::word)
        .is_some_and(|next| inwardness(next).is_some() || next == "bar" || next == "stock")
        && skip == 1
    {
        return None;
    }
    // `pawl pivots on`: what it does.
    if lexicon::fit(&[word]).is_some()
        && rest.get(1).and_then(Token::word).is_some_and(leads_to_mate)
    {
        return None;
    }
    let mut name: Vec<String> = rest[..skip].iter().map(text_of).collect();
    let mut taken = skip;
    while let Some(next) = rest.get(taken) {
        let text = text_of(next).to_lowercase();
        let is_mark = is_instance(&stem(&text))
            && matches!(next.kind, Kind::Word(_))
            && text != "c"
            && (side != Side::Length || text.len() == 1);
        let goes_on = matches!(next.kind, Kind::Word(_))
            && taken < skip + 2
            && matches!(side, Side::Shaft | Side::Hole | Side::Other)
            && (rest.get(taken + 1).and_then(Token::word) == Some("side")
                || !lexicon::is_small(&text) && lexicon::fit(&[&text]).is_none())
            && !lexicon::is_material(&text)
            && !says_measured(&text)
            && !leads_to_mate(&text)
            && text.len() > 2
            && !matches!(
                text.as_str(),
                "same"
                    | "bought"
                    | "done"
                    | "less"
                    | "minus"
                    | "max"
                    | "min"
                    | "tops"
                    | "mics"
                    | "should"
            )
            && (matches!(text.as_str(), "side" | "end")
                || rest
                    .get(taken + 1)
                    .and_then(Token::word)
                    .is_some_and(|word| matches!(word, "side" | "end")));
        if !(is_mark || goes_on) {
            break;
        }
        name.push(text_of(next));
        taken += 1;
    }
    Some((name.join(" "), side, taken))
}
