//! A clause of a note: which size is whose, and what goes into what.

use std::ops::Range;

use fits_core::{
    job::whole::{FitSaid, Side, State},
    size::Unit,
};

use super::{
    Line, Reader,
    items::Item,
    parted::{
        before_read, class_after, clauses, has_size, is_after_size, is_bare_size, is_correction,
        is_denied, is_measured_behind, is_tick, off_after,
    },
    token::{Kind, Token},
    whose::{is_tube, lone_size, positions},
};

impl Reader {
    /// The clauses of a text, one after another.
    pub(super) fn text(&mut self, raw: &str, from: usize, line: &mut Line) {
        let found = self.spelled(&raw[from.min(raw.len())..], from);
        if line.number > 0 && is_tick(&found) {
            line.done = true;
        }
        if raw.trim_end().ends_with('?') || raw.contains("? ") {
            let text = raw.trim().to_owned();
            self.job.questions.push(fits_core::job::whole::Question {
                line: line.number,
                at: raw.len() - raw.trim_start().len()..raw.trim_end().len(),
                text,
                answer: None,
                by_writer: true,
            });
        }
        let says_fit =
            |token: &Token| token.word().is_some_and(|word| super::lexicon::fit(&[word]).is_some());
        line.fit_ahead = found.iter().any(says_fit);
        let clauses = clauses(&found);
        let mut at = 0;
        let mut keeps = false;
        while at < clauses.len() {
            let mut clause = clauses[at].1.to_vec();
            // `Ø18 k6, gear seat`: the size waits for its feature.
            if is_bare_size(&clause)
                && let Some((sign, next)) = clauses.get(at + 1)
                && *sign == ','
                && !has_size(next)
                && next.first().is_some_and(|token| token.word().is_some())
                && !matches!(clause[0].kind, Kind::Thread(_))
                && self
                    .items(next, line)
                    .iter()
                    .any(|(item, _)| matches!(item, Item::Feature { .. }))
            {
                clause.extend(next.iter().cloned());
                at += 1;
            }
            // `is 5, not 6`
            if let Some((',', next)) = clauses.get(at + 1)
                && has_size(&clause)
                && has_size(next)
                && next[0].word() == Some("not")
            {
                clause.extend(next.iter().cloned());
                at += 1;
            }
            // `Length: 9-3/4`: a feature and its size.
            if let Some((':', next)) = clauses.get(at + 1)
                && !has_size(&clause)
                && next.first().is_some_and(|token| has_size(std::slice::from_ref(token)))
                && clause.last().and_then(Token::word).and_then(super::lexicon::feature)
                    == Some(Side::Length)
            {
                clause.extend(next.iter().cloned());
                at += 1;
            }
            let gap = clauses[at].0 == ' ';
            let reads = line.reads;
            line.reads |= keeps && gap;
            // `end frames - 3/4 plate, 2`: how many.
            if let ([Token { kind: Kind::Num(num), .. }], Some(part), None, true, ',') =
                (clause.as_slice(), line.subject, line.feature, line.declares, clauses[at].0)
                && num.is_whole()
                && num.unit.is_none()
                && num.over <= 24
                && self.job.parts[part].count.is_none()
            {
                self.job.parts[part].count = u32::try_from(num.over).ok();
                at += 1;
                continue;
            }
            if clauses[at].0 == ',' && self.names_mate(&clause, line) {
                at += 1;
                continue;
            }
            keeps = self.clause(&clause, line, clauses[at].0);
            line.reads = reads;
            at += 1;
        }
    }

    /// One clause; does it say that what follows was measured?
    #[allow(clippy::too_many_lines, reason = "one kind of words after another, each short")]
    pub(super) fn clause(&mut self, tokens: &[Token], line: &mut Line, sign: char) -> bool {
        // `(17x35x10)` behind a bought part, or `(6003)` behind its seat.
        if sign == '('
            && let [Token { kind, at }] = tokens
        {
            let named = line.mate_name.take();
            let part = line.mate_part.or_else(|| {
                named
                    .filter(|_| matches!(kind, Kind::Dims(_)))
                    .map(|name| self.part_named(&name, line.number))
            });
            if let (Kind::Dims(_), Some(part)) = (kind, part) {
                line.mate_part = Some(part);
                self.of_mate(line, part, kind, at, None);
                return false;
            }
            if let (Kind::Code(code), Some(feature)) = (kind, line.feature)
                && code.len() >= 3
                && super::lexicon::stems(&self.job.features[feature].name)
                    .iter()
                    .any(|word| matches!(word.as_str(), "bearing" | "seat"))
            {
                let part = self.part_named(&code.to_uppercase(), line.number);
                line.mate_part = Some(part);
                let mut fit = FitSaid::default();
                let name = code.to_uppercase();
                if let Some(want) = self
                    .wanted
                    .iter_mut()
                    .find(|want| want.feature == feature && want.line == line.number)
                {
                    (want.name, want.part) = (name, Some(part));
                    return false;
                }
                self.finish_mate(
                    line,
                    &mut Some((name, Some(part), at.clone(), true)),
                    Some(feature),
                    &mut fit,
                    None,
                );
                return false;
            }
        }
        // `journal, outboard: 3/4`: which of several, then its size.
        if let ([Token { kind: Kind::Word(word), .. }], Some(feature)) = (tokens, line.feature)
            && super::names::is_instance(&super::lexicon::stem(word))
            && self.job.features[feature].line == line.number
            && self.job.features[feature].nominal.is_none()
        {
            self.rename(feature, word);
            return false;
        }
        if let ([Token { kind: Kind::Num(num), .. }, rest @ ..], Some(feature)) =
            (tokens, line.feature)
            && (!self.prose || line.reads)
            && self.job.features[feature].side != Side::Thread
            && self.job.features[feature].nominal.is_none()
            && self.job.features[feature].readings.is_empty()
            && self.job.features[feature].line == line.number
            && rest.iter().all(|token| matches!(token.kind, Kind::Class(_) | Kind::Off(..)))
            && let Some(size) = self.length(num, line.unit)
        {
            let from = self.unit_of(num, line.unit);
            self.size(line, feature, fits_core::job::whole::Nominal::Size(size), from);
            if let Some(Token { kind: Kind::Class(class), .. }) = rest.first() {
                self.job.features[feature].class = Some(class.clone());
            }
            return false;
        }
        // `1.3780 (35mm)`: the same size in the other unit.
        if let ([Token { kind: Kind::Num(num), .. }], Some(feature)) = (tokens, line.feature)
            && num.unit.is_some()
            && let Some(size) = self.length(num, None)
            && self.job.features[feature].unit != num.unit.unwrap_or(Unit::Inch)
            && self.is_near(feature, size)
        {
            return false;
        }
        // `(bought, .3117)`, `other .7530`: nearly a size of this line, so what it
        // came out at.
        if let (Some(num), Some(feature)) = (lone_size(tokens), line.feature)
            && (num.places >= 3 || line.reads && num.places > 1)
            && let Some(size) = self.length(num, line.unit)
        {
            let part = self.job.features[feature].part;
            let near = self.features_of(part).map(|(at, _)| at).find(|at| {
                let one = &self.job.features[*at];
                let read = one.readings.last().map(|reading| reading.size);
                one.side.surface().is_some()
                    && (self.is_near(*at, size)
                        && one.nominal.as_ref().and_then(fits_core::job::whole::Nominal::size)
                            != Some(size)
                        || read.is_some_and(|read| {
                            (read.millimetres() - size.millimetres()).abs() < 0.3
                        }))
            });
            if let Some(near) = near {
                self.reading(line, near, num);
                return false;
            }
        }
        let mut items = self.items(tokens, line);
        // `Ø17 = 17.004`: a feature named by its size.
        if let [(Item::Size(Kind::Num(num)), _), (Item::Reads(true), _), (Item::Size(_), _), ..] =
            items.as_slice()
            && let Some(size) = self.length(num, line.unit)
        {
            let named = |one: &fits_core::job::whole::Feature| {
                one.nominal.as_ref().and_then(fits_core::job::whole::Nominal::size) == Some(size)
            };
            line.feature = self.job.features.iter().position(named).or(line.feature);
        }
        // `is 1.2525`, `bored in place, 25.02 mm`: to a figure that nobody wishes for.
        let says_so = line.state == State::InPlace
            || items.iter().any(|(item, _)| matches!(item, Item::Reads(_) | Item::InPlace));
        // `t1 = 3.5` may be what is wanted, `mikes 3.5` is not.
        line.by_word =
            items.iter().any(|(item, place)| matches!(item, Item::Reads(true)) && place.len() > 1);
        let mut reads = line.reads
            || is_measured_behind(tokens)
            || says_so
                && items.iter().any(|(item, _)| {
                    matches!(item, Item::Size(Kind::Num(num)) if self.is_fine(num, line))
                });
        let same = items.iter().position(|(item, _)| matches!(item, Item::Same));
        if same.is_some() {
            self.same_as_before(line, None);
        }
        let negated = items.iter().find_map(|(item, _)| match item {
            Item::Not => Some(true),
            Item::Size(_) => Some(false),
            _ => None,
        }) == Some(true);
        if items.iter().any(|(item, _)| matches!(item, Item::InPlace)) {
            line.state = State::InPlace;
        }
        if self.goes_here(tokens, &items, line) {
            return false;
        }
        let mut opened = false;
        if let Some((Item::Part(part), _)) =
            items.iter().find(|(item, _)| !matches!(item, Item::Loose(_)))
            && !items
                .iter()
                .take_while(|(item, _)| matches!(item, Item::Loose(_)))
                .any(|(item, _)| matches!(item, Item::Loose(word) if super::lexicon::leads_to_mate(word)))
        {
            if line.subject != Some(*part) {
                line.feature = None;
            }
            (line.subject, line.named) = (Some(*part), true);
        } else if let (Some(Item::Part(part)), true) = (
            items.iter().map(|(item, _)| item.clone()).find(|item| matches!(item, Item::Part(_))),
            line.subject.is_none() || sign == '.',
        ) {
            line.subject = Some(part);
        } else {
            let before = line.subject;
            // `crank journals .9992`: a feature that is known is of its part.
            let known = items.iter().find(|(item, _)| !matches!(item, Item::Loose(_)));
            opened = !matches!(known, Some((Item::Feature { part: Some(_), .. }, _)))
                && self.opens_part(tokens, line, sign);
            // `grip spins on it`: on what was spoken of before.
            line.named |= opened;
            if opened && before != line.subject {
                line.before = before;
                items = self.items(tokens, line);
            }
        }
        // `ream to 1.001` is what is wanted.
        let works_to = tokens.windows(3).any(|found| {
            found[0].word().is_some_and(super::lexicon::works_to)
                && found[1].word() == Some("to")
                && matches!(found[2].kind, Kind::Num(_))
        });
        if works_to && line.date.is_none() {
            reads = false;
        }
        self.nouns(&mut items, tokens, line, reads);
        let features: Vec<usize> = positions(&items, |item| matches!(item, Item::Feature { .. }));
        let sizes: Vec<usize> = positions(&items, |item| matches!(item, Item::Size(_)));
        let mut of: Vec<Option<usize>> = vec![None; items.len()];
        let mut seen: Vec<Option<usize>> = vec![None; items.len()];
        let mut others = Vec::new();
        for &size in &sizes {
            let before = features.iter().rev().find(|feature| **feature < size).copied();
            let next = features.iter().find(|feature| **feature > size).copied();
            let next = next.filter(|next| !sizes.iter().any(|other| *other > size && other < next));
            let taken = |feature: usize| of.contains(&Some(feature));
            // `.5 thick` reads from the size on, whatever stands before it.
            let is_length = |at: usize| {
                at == size + 1 && matches!(items[at].0, Item::Feature { side: Side::Length, .. })
            };
            of[size] = match (before, next) {
                (Some(before), Some(next))
                    if taken(before)
                        || is_length(next)
                            && (before > 0 && matches!(items[before - 1].0, Item::Size(_))
                                || !matches!(
                                    &items[before].0,
                                    Item::Feature { side: Side::Length, .. }
                                )) =>
                {
                    Some(next)
                }
                // `bolt holes .281 on 3.000`: the second is of something else.
                (Some(before), _) if taken(before) && !reads => {
                    others.push(size);
                    None
                }
                (Some(before), _) => Some(before),
                (None, next) => next,
            };
        }
        let is_plain = opened
            || matches!(sign, '^' | ':')
            || line.declares && line.found == 0
            || items
                .iter()
                .any(|(item, _)| matches!(item, Item::Part(_) | Item::Mate { .. } | Item::Fit(..)));
        let has_fit = items.iter().any(|(item, _)| matches!(item, Item::Fit(..)));
        line.fits |= has_fit;
        let mut fit = FitSaid::default();
        let mut twice = items.iter().any(|(item, _)| matches!(item, Item::AllRound));
        let most = items.iter().any(|(item, _)| matches!(item, Item::Most));
        let mut last: Option<usize> = None;
        let mut mate: Option<(String, Option<usize>, Range<usize>, bool)> = None;
        let mut mate_to = None;
        let mut own_of_mate: Option<usize> = None;
        let mut skip_material = false;
        for (at, (item, place)) in items.iter().enumerate() {
            match item {
                Item::Reads(sure) => {
                    // `is` is a reading only where the size is one by its shape.
                    reads |= *sure;
                }
                // `stock 1-1/4`, not `1.000 ground stock 22 long`.
                Item::Stock => skip_material = sizes.first().is_none_or(|first| at < *first),
                Item::Fit(words, word) => {
                    // `on a 1/4 dowel driven in the cheek`: it is the dowel that is.
                    if let (Some(to), true) = (mate_to, mate.is_some()) {
                        self.finish_mate(line, &mut mate, last, &mut fit, mate_to.take());
                        last = Some(to);
                    }
                    if !fit.words.is_empty() {
                        fit.words.push_str(", ");
                    }
                    fit.words.push_str(words);
                    fit.word = fit.word.or(*word);
                }
                Item::Feature { .. } => {
                    let has_size = of.contains(&Some(at));
                    if !has_size || sizes.is_empty() {
                        let feature = self.item_feature(item, place, line, None, !has_size);
                        seen[at] = feature;
                        last = feature.or(last);
                        line.feature = feature.or(line.feature);
                    }
                }
                Item::Size(kind) => {
                    // `.9035 not .902`, `instead of the .125`, `1.5 or 2?`
                    let is_other = at > 0
                        && line.asks
                        && matches!(&items[at - 1].0, Item::Loose(word) if word == "or");
                    if sizes.first() != Some(&at) && (is_other || is_denied(&items, at)) {
                        continue;
                    }
                    let is_stocked = skip_material
                        || self.is_steel_number(kind, line)
                        || self.is_stock_size(&items, at, line, of[at].is_some());
                    if is_stocked || negated && of[at].is_some() && !is_correction(&items, at) {
                        if negated && let Some(owner) = of[at] {
                            last = self
                                .item_feature(&items[owner].0, &items[owner].1, line, None, false)
                                .or(last);
                            line.feature = last.or(line.feature);
                            line.corrects = last;
                        }
                        skip_material = false;
                        continue;
                    }
                    if self.is_amount(
                        kind,
                        line,
                        has_fit || line.fits || !features.is_empty() && sign == ',',
                        of[at].is_some(),
                    ) {
                        self.amount(kind, &mut fit, twice, line);
                        twice = false;
                        continue;
                    }
                    if let (Some(feature), Kind::Num(num)) = (line.corrects, kind)
                        && let Some(size) = self.length(num, line.unit)
                    {
                        let from = self.unit_of(num, line.unit);
                        self.size(line, feature, fits_core::job::whole::Nominal::Size(size), from);
                        line.corrects = None;
                        continue;
                    }
                    // `3/4 tube`: a tube is used as it comes.
                    let comes = of[at].is_none()
                        && !reads
                        && matches!(items.get(at + 1), Some((Item::Loose(word), _)) if is_tube(word));
                    if let (true, Some(part), Kind::Num(num)) = (comes, line.subject, kind)
                        && let Some(size) = self.length(num, line.unit)
                    {
                        let feature = self.feature(line, part, "od", Side::Shaft, place.clone());
                        let from = self.unit_of(num, line.unit);
                        self.size(line, feature, fits_core::job::whole::Nominal::Size(size), from);
                        last = last.or(Some(feature));
                        continue;
                    }
                    // `7/16 not 1/2`: the size that was is known.
                    let said = of[at].and_then(|owner| match items[owner].0 {
                        Item::Feature { part, .. } => part,
                        _ => None,
                    });
                    if let Some(was) = self.instead_of(&items, at, said.or(line.subject), line)
                        && let Kind::Num(num) = kind
                        && !reads
                        && let Some(size) = self.length(num, line.unit)
                    {
                        let from = self.unit_of(num, line.unit);
                        self.size(line, was, fits_core::job::whole::Nominal::Size(size), from);
                        last = Some(was);
                        continue;
                    }
                    // A size behind its feature's name: `keyway  3/16 x 3/32`, `journal: .750`.
                    let waits = line.feature.filter(|feature| {
                        let one = &self.job.features[*feature];
                        one.line == line.number && one.nominal.is_none() && one.readings.is_empty()
                    });
                    let is_role = of[at].is_some_and(|owner| matches!(&items[owner].0, Item::Feature { side: Side::Length, name, .. } if matches!(name.as_str(), "lg" | "long" | "length")));
                    let owner = if waits.is_some()
                        && (of[at].is_none() || is_role && matches!(kind, Kind::Dims(_)))
                        && matches!(sign, ' ' | ':' | '^' | ',' | '-')
                    {
                        Some(waits)
                    } else if is_role && matches!(kind, Kind::Dims(_)) {
                        Some(None)
                    } else {
                        of[at].map(|owner| {
                            seen[owner].or_else(|| {
                                let found = self.item_feature(
                                    &items[owner].0,
                                    &items[owner].1,
                                    line,
                                    Some(kind),
                                    false,
                                );
                                seen[owner] = found;
                                found
                            })
                        })
                    };
                    // `3 tenths over`: over the size that is wanted.
                    if let (Kind::Num(num), Some(Some(feature))) = (kind, owner)
                        && self.is_off_size(&items, at, num, feature, line)
                    {
                        last = Some(feature);
                        continue;
                    }
                    let owner_said = of[at].is_some();
                    if others.contains(&at)
                        && let Kind::Num(num) = kind
                        && !last
                            .zip(self.length(num, line.unit))
                            .is_some_and(|(last, size)| self.is_near(last, size))
                    {
                        let given = super::sizes::Given::plain(kind, place);
                        self.ask_size(line, &given);
                        continue;
                    }
                    let owner = if others.contains(&at) { Some(last) } else { owner };
                    let class = class_after(&items, at);
                    let mate_name = items.iter().skip(at).find_map(|(item, _)| match item {
                        Item::Mate { name, .. } => Some(name.clone()),
                        _ => None,
                    });
                    let given = super::sizes::Given {
                        kind,
                        place,
                        owner: owner.flatten(),
                        owner_said,
                        class,
                        reads: reads
                            && !negated
                            && !before_read(&items, at, line)
                            && !self.corrects(&items, at, line),
                        works_to: works_to && line.date.is_none(),
                        most,
                        mate: mate_name.as_deref(),
                        has_fit,
                        off: off_after(&items, at),
                        is_plain: is_plain || class_after(&items, at).is_some(),
                    };
                    if let Some(feature) = self.give(line, &given) {
                        last = Some(feature);
                    }
                }
                Item::Mate { name, part, is_sure } if (mate.is_none() || *is_sure) => {
                    // One clause, two mates: `press in housing, runs on it` are two clauses.
                    self.finish_mate(line, &mut mate, last, &mut fit, mate_to.take());
                    mate = Some((name.clone(), *part, place.clone(), *is_sure));
                    line.mate_name = Some(name.clone());
                    line.mate_part = *part;
                }
                Item::MateFeature(name, side) => {
                    own_of_mate = None;
                    if let Some((mate, part, _, sure)) = &mut mate {
                        let id = part.unwrap_or_else(|| self.part_named(mate, line.number));
                        (*part, *sure) = (Some(id), true);
                        line.mate_part = Some(id);
                        // One of another size is not the one meant.
                        let size = items.get(at + 1).and_then(|(item, _)| match item {
                            Item::OfMate(Kind::Num(num)) => self.length(num, line.unit),
                            _ => None,
                        });
                        let found = self.feature_called(id, name, Some(*side)).filter(|found| {
                            self.job.features[*found].nominal.is_none()
                                || size.is_none_or(|size| self.is_near(*found, size))
                        });
                        let found = found
                            .unwrap_or_else(|| self.feature(line, id, name, *side, place.clone()));
                        own_of_mate = Some(found);
                        mate_to = side.surface().map(|_| found).or(mate_to);
                    }
                }
                Item::OfMate(Kind::Num(num)) if own_of_mate.is_some() => {
                    if let (Some(to), Some(size)) = (own_of_mate, self.length(num, line.unit)) {
                        let kept = line.feature;
                        if reads {
                            self.reading(line, to, num);
                        } else {
                            let from = self.unit_of(num, line.unit);
                            self.size(line, to, fits_core::job::whole::Nominal::Size(size), from);
                        }
                        line.feature = kept.or(line.feature);
                    }
                }
                Item::OfMate(kind) => {
                    if let Some((name, part, _, sure)) = &mut mate {
                        let id = part.unwrap_or_else(|| self.part_named(name, line.number));
                        *part = Some(id);
                        *sure = true;
                        line.mate_part = Some(id);
                        // A key lies in a joint: it is no mate of a diameter.
                        let is_key = self.stems[id].iter().any(|word| word == "key");
                        if last.is_none() && is_key {
                            self.of_mate(line, id, kind, place, None);
                            mate = None;
                            continue;
                        }
                        if last.is_none() {
                            last = self.implied_side(line, id, kind);
                        }
                        let class = class_after(&items, at);
                        mate_to = self.of_mate(line, id, kind, place, class.as_deref());
                    }
                }
                Item::Class(class) if !is_after_size(&items, at) => {
                    self.lone_class(class, &mut mate, last, line, place);
                }
                Item::Part(part) if last.is_some() && features.len() == 1 && sizes.len() <= 1 => {
                    let feature = last.filter(|at| {
                        self.job.features[*at].side == Side::Length
                            && self.job.features[*at].readings.is_empty()
                    });
                    if let Some(feature) = feature {
                        self.move_to(feature, *part);
                    }
                }
                Item::Same if line.subject.is_some() => {}
                _ => {}
            }
        }
        // `thread 1.5 long in the base`: it is the thread that goes in.
        let is_length = |reader: &Self, at: usize| reader.job.features[at].side == Side::Length;
        let last = match last {
            Some(at) if mate.is_some() && is_length(self, at) => seen
                .iter()
                .flatten()
                .rev()
                .copied()
                .chain(line.role_of)
                .find(|at| {
                    !is_length(self, *at) && Some(self.job.features[*at].part) == line.subject
                })
                .or(last),
            _ => last,
        };
        let from = last.or_else(|| {
            line.feature.filter(|feature| {
                Some(self.job.features[*feature].part) == line.subject || line.subject.is_none()
            })
        });
        // `journal same as bottom roll`.
        let as_of = same.and_then(|at| {
            items[at..].iter().find_map(|(item, _)| match item {
                Item::Part(part) if Some(*part) != line.subject => Some(*part),
                _ => None,
            })
        });
        if as_of.is_some() {
            self.same_as_before(line, as_of);
        }
        if mate.is_some() {
            self.finish_mate(line, &mut mate, from, &mut fit, mate_to);
        } else if (has_fit || fit.clearance.is_some())
            && let Some(feature) = from
        {
            self.fit_alone(line, feature, fit);
        }
        reads
    }
}
