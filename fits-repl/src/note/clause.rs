//! A clause of a note: which size is whose, and what goes into what.

use std::ops::Range;

use fits_core::{
    job::whole::{FitSaid, Side, State},
    size::Unit,
};

use super::{
    Line, Reader,
    items::Item,
    lexicon::{is_material, is_stock},
    token::{Kind, Num, Token},
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

    /// `7/8 hole, top roll`, `bore 22, 608 each side`: a part alone in its clause
    /// is the mate of the feature before it.
    fn names_mate(&mut self, clause: &[Token], line: &mut Line) -> bool {
        let Some(feature) = line.feature else { return false };
        let one = &self.job.features[feature];
        let goes = one.line == line.number
            && one.nominal.is_some()
            && (one.side.surface().is_some() || one.side == Side::Thread);
        let code = || {
            let is_number = |code: &str| code.len() > 2 && code.starts_with(char::is_numeric);
            matches!(&clause[0].kind, Kind::Code(code) if is_number(code)).then_some(1)
        };
        let (part, taken) = match self.part_at(clause) {
            Some((part, taken)) => (Some(part), taken),
            None => match code().or_else(|| self.part_phrase(clause)) {
                Some(taken) => (None, taken),
                None => return false,
            },
        };
        let says_more = |token: &Token| match &token.kind {
            Kind::Word(word) => {
                !matches!(word.as_str(), "each" | "both" | "side" | "sides" | "end" | "ends")
            }
            kind => !matches!(kind, Kind::Count(_)),
        };
        if !goes
            || clause[taken..].iter().any(says_more)
            || part == Some(one.part)
            || self.wanted.iter().any(|want| want.line == line.number && want.feature == feature)
        {
            return false;
        }
        let at = clause[0].at.start..clause[taken - 1].at.end;
        let said: Vec<String> = clause[..taken].iter().map(super::items::text_of).collect();
        let name = part.map_or_else(|| said.join(" "), |part| self.job.parts[part].name.clone());
        let mut mate = Some((name, part, at, true));
        self.finish_mate(line, &mut mate, Some(feature), &mut FitSaid::default(), None);
        true
    }

    /// `bore 36 H7, bush pressed in`: another part with its fit, and no size.
    fn goes_here(
        &mut self,
        tokens: &[Token],
        items: &[(Item, Range<usize>)],
        line: &mut Line,
    ) -> bool {
        let own = |item: &Item| {
            matches!(
                item,
                Item::Size(_) | Item::Mate { .. } | Item::OfMate(_) | Item::Feature { .. }
            )
        };
        let (Some(feature), false) = (line.feature, items.iter().any(|(item, _)| own(item))) else {
            return false;
        };
        let known = self.part_at(tokens).map(|(part, taken)| (Some(part), taken));
        let Some((part, taken)) =
            known.or_else(|| self.part_phrase(tokens).map(|taken| (None, taken)))
        else {
            return false;
        };
        let one = &self.job.features[feature];
        let fit = items.iter().find_map(|(item, _)| match item {
            Item::Fit(words, word) => Some((words.clone(), *word)),
            Item::InPlace => Some(("press".to_owned(), super::lexicon::fit(&["press"])?.1)),
            _ => None,
        });
        let goes = one.line == line.number
            && one.nominal.is_some()
            && part != Some(one.part)
            && Some(one.part) == line.subject
            && (one.side.surface().is_some() || one.side == Side::Thread);
        let (true, Some((words, word))) = (goes, fit) else { return false };
        let mut fit = FitSaid { words, word, clearance: None };
        let said: Vec<String> = tokens[..taken].iter().map(super::items::text_of).collect();
        let at = tokens[0].at.start..tokens[taken - 1].at.end;
        let mut mate = Some((said.join(" "), part, at, true));
        self.finish_mate(line, &mut mate, Some(feature), &mut fit, None);
        true
    }

    /// One clause; does it say that what follows was measured?
    #[allow(clippy::too_many_lines, reason = "one kind of words after another, each short")]
    fn clause(&mut self, tokens: &[Token], line: &mut Line, sign: char) -> bool {
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

    /// `9 lg not 10`: a size that is no finer than the one it stands for is wanted.
    fn corrects(&self, items: &[(Item, Range<usize>)], at: usize, line: &Line) -> bool {
        let Item::Size(Kind::Num(num)) = &items[at].0 else { return false };
        let behind = items[at + 1..]
            .iter()
            .skip_while(|(item, _)| matches!(item, Item::Loose(_) | Item::Feature { .. }));
        let items: Vec<&Item> = behind.take(2).map(|(item, _)| item).collect();
        !self.is_fine(num, line)
            && matches!(items.as_slice(), [Item::Not, Item::Size(Kind::Num(was))] if was.places >= num.places)
    }

    /// The feature of the part spoken of that has the size behind `not`.
    fn instead_of(
        &self,
        items: &[(Item, Range<usize>)],
        at: usize,
        part: Option<usize>,
        line: &Line,
    ) -> Option<usize> {
        let mut behind =
            items[at + 1..].iter().skip_while(|(item, _)| matches!(item, Item::Loose(_)));
        let (Some((Item::Not, _)), Some((Item::Size(Kind::Num(was)), _))) =
            (behind.next(), behind.next())
        else {
            return None;
        };
        let was = self.length(was, line.unit)?;
        let has = |(_, one): &(usize, &fits_core::job::whole::Feature)| {
            one.nominal.as_ref().and_then(fits_core::job::whole::Nominal::size) == Some(was)
        };
        self.features_of(part?).find(has).map(|(at, _)| at)
    }

    /// Words that name no part and no feature, right before a size, name what it
    /// is of: `flange 24 x 3`, `tail 1/2 dia`. A diameter behind another feature
    /// says how its size is meant.
    fn nouns(
        &self,
        items: &mut Vec<(Item, Range<usize>)>,
        tokens: &[Token],
        line: &Line,
        reads: bool,
    ) {
        let waits = line.feature.is_some_and(|at| {
            let one = &self.job.features[at];
            one.line == line.number && one.nominal.is_none() && one.side.surface().is_some()
        });
        let is_dia =
            |item: &Item| matches!(item, Item::Feature { name, part: None, .. } if name == "dia");
        let is_surface = |item: &Item| {
            matches!(item, Item::Feature { side: Side::Hole | Side::Shaft, .. }) && !is_dia(item)
        };
        let is_one = |item: &Item| matches!(item, Item::Size(_));
        let other = items.iter().any(|(item, _)| is_surface(item));
        for at in positions(items, is_dia) {
            let before = items[..at].iter().rev().position(|(item, _)| is_surface(item));
            let means = before.is_some_and(|back| {
                items[at - back..at].iter().filter(|(item, _)| is_one(item)).count() < 2
            }) || items.get(at + 1).is_some_and(|(item, _)| is_surface(item))
                && !items.get(at + 2).is_some_and(|(item, _)| is_one(item));
            if means || waits {
                items[at].0 = Item::Loose("dia".into());
            }
        }
        let Some(at) = items.iter().position(|(item, _)| !matches!(item, Item::Loose(_))) else {
            return;
        };
        let is_size = matches!(items[at].0, Item::Size(Kind::Num(_) | Kind::Dims(_)));
        let words: Vec<&str> = tokens.iter().map_while(Token::word).collect();
        let is_noun = |word: &&str| super::lexicon::is_noun(word);
        if !is_size || at == 0 || words.len() != at || reads || waits || line.subject.is_none() {
            return;
        }
        let named = words.last().is_some_and(is_noun)
            && words.iter().all(|word| is_noun(word) || super::lexicon::is_adjective(word))
            && words.len() < 4;
        if !named || other || self.is_stock_size(items, at, line, true) {
            return;
        }
        let side = match items.get(at + 1) {
            Some((item, _)) if is_dia(item) => Side::Shaft,
            Some((Item::Feature { side, .. }, _)) => *side,
            _ => Side::Other,
        };
        let name = words.join(" ");
        let place = tokens[0].at.start..tokens[at - 1].at.end;
        items.splice(..at, [(Item::Feature { name, side, part: None, mate: None }, place)]);
        if matches!(items.get(2), Some((item, _)) if is_dia(item)) {
            items.remove(2);
        }
    }

    /// `1.4301` beside the name of a part: nobody writes four decimals of a
    /// millimetre.
    fn is_steel_number(&self, kind: &Kind, line: &Line) -> bool {
        let Kind::Num(num) = kind else { return false };
        let metric = self.unit_of(num, line.unit).0 == Unit::Millimetre;
        metric && num.unit.is_none() && num.places == 4 && num.value() < 4.0 && line.declares
    }

    /// Written finer than a drawing is: four decimals of an inch, two of a millimetre.
    pub(super) fn is_fine(&self, num: &Num, line: &Line) -> bool {
        let metric = self.unit_of(num, line.unit).0 == Unit::Millimetre;
        num.places >= if metric { 2 } else { 4 }
    }

    /// `3 tenths over`: a reading by what it is off from the one size wanted.
    fn is_off_size(
        &mut self,
        items: &[(Item, Range<usize>)],
        at: usize,
        num: &Num,
        feature: usize,
        line: &mut Line,
    ) -> bool {
        let Some((Item::Loose(word), _)) = items.get(at + 1) else { return false };
        let small = matches!(num.unit, Some(Unit::Thou | Unit::Tenth | Unit::Micrometre));
        let over = matches!(word.as_str(), "over" | "up" | "big" | "oversize" | "large" | "proud");
        let under = matches!(word.as_str(), "under" | "down" | "small" | "undersize" | "shy");
        let nominal = self.job.features[feature]
            .nominal
            .as_ref()
            .and_then(fits_core::job::whole::Nominal::size);
        let (Some(nominal), Some(off), true) =
            (nominal, num.length(Unit::Inch), small && (over || under))
        else {
            return false;
        };
        let size = if over { nominal.checked_add(off) } else { nominal.checked_sub(off) };
        let Ok(size) = size else { return false };
        self.put_reading(line, feature, size, num.at.clone());
        true
    }

    /// `journal, inboard: same`: the size of the one before it, or of another part's.
    fn same_as_before(&mut self, line: &mut Line, of: Option<usize>) {
        let Some(feature) = line.feature.filter(|at| self.job.features[*at].nominal.is_none())
        else {
            return;
        };
        let one = &self.job.features[feature];
        let (part, side) = (of.unwrap_or(one.part), one.side);
        let head = self.names[feature].first().cloned().unwrap_or_default();
        let called = of.and_then(|of| self.feature_called(of, &head, Some(side)));
        let before = called.or_else(|| {
            self.job.features[..feature].iter().rposition(|other| {
                other.part == part && other.side == side && other.nominal.is_some()
            })
        });
        if let Some(before) = before {
            let before_one = self.job.features[before].clone();
            if let Some(nominal) = before_one.nominal {
                self.size(line, feature, nominal, (before_one.unit, before_one.unit_from));
            }
            self.job.features[feature].class = before_one.class;
            let want = self
                .wanted
                .iter()
                .find(|want| want.feature == before)
                .map(|want| (want.name.clone(), want.part, want.at.clone(), want.fit.clone()));
            if let Some((name, part, at, mut fit)) = want {
                self.finish_mate(
                    line,
                    &mut Some((name, part, at, true)),
                    Some(feature),
                    &mut fit,
                    None,
                );
            }
        }
    }

    /// A clause may begin with a part that the note has not named yet: `nut bronze`.
    fn opens_part(&mut self, tokens: &[Token], line: &mut Line, sign: char) -> bool {
        let leads = |word: &str| matches!(word, "w" | "with" | "the" | "new" | "make" | "and");
        let stuff = tokens
            .iter()
            .take_while(|token| line.declares && token.word().is_some_and(is_material))
            .count();
        let stuff =
            if tokens.get(stuff).and_then(Token::word).is_some_and(leads) { stuff } else { 0 };
        let skip = stuff
            + tokens[stuff..]
                .iter()
                .take_while(|token| {
                    token.word().is_some_and(leads) || matches!(token.kind, Kind::Count(_))
                })
                .count();
        let rest = &tokens[skip..];
        let Some(mut taken) = self.part_phrase(rest) else { return false };
        if super::lexicon::fit(&[rest[0].word().unwrap_or_default()]).is_some() && taken == 1 {
            return false;
        }
        let named = || rest[..taken].iter().filter_map(Token::word);
        let is_form = named().last().is_some_and(is_stock);
        if line.declares && (is_form || named().all(is_material)) {
            return false;
        }
        if let Some((name, side, _)) = super::items::feature_phrase(&rest[taken..]) {
            let known = self.part_at(&rest[..taken]).map(|(part, _)| part);
            if self.is_modifier(line, known, rest, taken, &name, side) {
                return false;
            }
        }
        let next = rest.get(taken);
        // `hub hole .625` under the arm: which of its holes.
        if taken == 1
            && line.subject.is_some()
            && !line.reads
            && next.and_then(Token::word).is_some_and(|word| {
                super::lexicon::feature(word).is_some()
                    && !super::lexicon::is_work(word)
                    && !matches!(super::lexicon::stem(word).as_str(), "od" | "id")
            })
            && self.part_at(&rest[..taken]).is_none()
        {
            return false;
        }
        let begins = matches!(sign, '^' | '.') && has_size(tokens);
        let opens = begins
            || next.is_some_and(|token| {
                matches!(
                    token.kind,
                    Kind::Num(_) | Kind::Thread(_) | Kind::Dims(_) | Kind::Count(_)
                ) || token.word().is_some_and(|word| {
                    matches!(word, "is" | "are")
                        || is_material(word)
                        || super::lexicon::fit(&[word]).is_some()
                        || super::lexicon::feature(word).is_some()
                })
            })
            || skip > 0
                && tokens[skip - 1].word() != Some("the")
                && is_material(rest[0].word().unwrap_or_default());
        let is_feature =
            super::lexicon::feature(rest[taken - 1].word().unwrap_or_default()).is_some();
        if !opens || is_feature || sign == '(' {
            return false;
        }
        let name: Vec<String> = rest[..taken].iter().map(super::items::text_of).collect();
        taken = taken.min(rest.len());
        let part = self.part_named(&name.join(" "), line.number);
        self.describe(part, &rest[taken..]);
        let stuff = rest[0].word().unwrap_or_default().to_owned();
        if taken > 1 && is_material(&stuff) && self.job.parts[part].material.is_none() {
            self.job.parts[part].material = Some(stuff);
        }
        self.touch(part);
        self.block.push(part);
        line.subject = Some(part);
        line.feature = None;
        true
    }

    /// Is a part of a kind that is listed by bore, outside and length?
    fn is_listed(&self, part: usize) -> bool {
        self.stems[part].iter().any(|word| {
            matches!(
                word.as_str(),
                "bush" | "bearing" | "sleeve" | "liner" | "washer" | "collar" | "spacer" | "key"
            )
        })
    }

    /// `1/4 plate`, `3/4 crs`: what a part is made from, no size of it.
    fn is_stock_size(
        &self,
        items: &[(Item, Range<usize>)],
        at: usize,
        line: &Line,
        owned: bool,
    ) -> bool {
        let Some((Item::Loose(word), _)) = items.get(at + 1) else { return false };
        if !owned && is_tube(word) && matches!(items[at].0, Item::Size(Kind::Num(_))) {
            return false;
        }
        // `7/8 x 1-1/8 x 1 sintered`: a bush is listed by three.
        let three = matches!(&items[at].0, Item::Size(Kind::Dims(all)) if all.len() == 3);
        if three && line.subject.is_some_and(|part| self.is_listed(part)) {
            return false;
        }
        if matches!(items[at].0, Item::Size(Kind::Dims(_)))
            && matches!(word.as_str(), "flat" | "plate" | "bar" | "sheet" | "angle")
        {
            return true;
        }
        if !(is_stock(word) || is_material(word) && !owned)
            || owned
                && !matches!(word.as_str(), "flat" | "plate" | "bar" | "crs" | "stock" | "sheet")
        {
            return false;
        }
        // Ground stock is used as it comes.
        if matches!(word.as_str(), "ground" | "pgb") {
            return false;
        }
        // A pin is used as the rod comes, and so is a bar that is said to fit.
        let comes = |part: usize| {
            let is_rod = matches!(word.as_str(), "drill" | "silver");
            self.stems[part]
                .iter()
                .any(|word| matches!(word.as_str(), "pin" | "dowel" | "axle" | "peg"))
                || self.inwardness(part) >= 2 && (is_rod || line.fit_ahead)
        };
        !line.subject.is_some_and(comes)
    }

    /// `1.5 to 2 thou` beside a fit: how loose or tight, no size.
    fn is_amount(&self, kind: &Kind, line: &Line, has_fit: bool, owned: bool) -> bool {
        let (low, high) = match kind {
            Kind::Num(num) => (num, num),
            Kind::Range(low, high) => (low, high),
            _ => return false,
        };
        let thou = matches!(high.unit, Some(Unit::Thou | Unit::Tenth | Unit::Micrometre));
        let length_said =
            line.feature.is_some_and(|feature| self.job.features[feature].side == Side::Length);
        if owned && !(thou && !length_said && has_fit) {
            return false;
        }
        let small =
            |num: &Num| self.length(num, line.unit).is_some_and(|size| size.millimetres() < 1.3);
        thou && (line.feature.is_some() || has_fit) && !length_said
            || has_fit
                && small(low)
                && small(high)
                && (line.feature.is_some() || !line.declares && high.places > 0)
    }

    fn amount(&self, kind: &Kind, fit: &mut FitSaid, twice: bool, line: &Line) {
        let (low, high) = match kind {
            Kind::Num(num) => (num.clone(), num.clone()),
            Kind::Range(low, high) => (low.clone(), high.clone()),
            _ => return,
        };
        let times = if twice { 2 } else { 1 };
        let size = |num: &Num| self.length(num, line.unit)?.checked_mul(times).ok();
        let (Some(low), Some(high)) = (size(&low), size(&high)) else { return };
        fit.clearance = fits_core::Limits::new(low.min(high), low.max(high)).ok();
    }
}

/// The one size of a clause that has words of no weight beside it.
fn lone_size(tokens: &[Token]) -> Option<&Num> {
    let mut found = tokens.iter().filter_map(|token| match &token.kind {
        Kind::Num(num) => Some(num),
        _ => None,
    });
    let plain = |token: &Token| match &token.kind {
        Kind::Num(_) => true,
        Kind::Word(word) => {
            super::lexicon::is_adjective(word) || matches!(word.as_str(), "one" | "another" | "and")
        }
        _ => false,
    };
    found.next().filter(|_| found.next().is_none() && tokens.iter().all(plain))
}

/// `.3735 meas`: said behind the size.
fn is_measured_behind(tokens: &[Token]) -> bool {
    let size = tokens.iter().rposition(|token| matches!(token.kind, Kind::Num(_)));
    let word = tokens.last().and_then(Token::word);
    size.is_some_and(|at| at + 2 == tokens.len())
        && word.is_some_and(super::lexicon::surely_measured)
}

fn is_tube(word: &str) -> bool {
    matches!(word, "tube" | "tubing" | "pipe")
}

fn positions(items: &[(Item, Range<usize>)], is: impl Fn(&Item) -> bool) -> Vec<usize> {
    items.iter().enumerate().filter(|(_, (item, _))| is(item)).map(|(at, _)| at).collect()
}

fn class_after(items: &[(Item, Range<usize>)], at: usize) -> Option<String> {
    items
        .get(at + 1..)?
        .iter()
        .take(2)
        .find_map(|(item, _)| match item {
            Item::Class(class) => Some(class.clone()),
            _ => None,
        })
        .filter(|_| matches!(items.get(at + 1), Some((Item::Class(_) | Item::Off(..), _))))
}

fn off_after(items: &[(Item, Range<usize>)], at: usize) -> Option<(Num, Num)> {
    items.get(at + 1..)?.iter().take(2).find_map(|(item, _)| match item {
        Item::Off(low, high) => Some((low.clone(), high.clone())),
        _ => None,
    })
}

fn is_after_size(items: &[(Item, Range<usize>)], at: usize) -> bool {
    at > 0 && matches!(items[at - 1].0, Item::Size(_) | Item::OfMate(_))
}

/// `18 H7 -> 18.005`: what stands before the arrow is wanted.
fn before_read(items: &[(Item, Range<usize>)], at: usize, line: &Line) -> bool {
    let reads = items[at..].iter().position(|(item, _)| matches!(item, Item::Reads(true)));
    let is_size = |(item, _): &(Item, Range<usize>)| matches!(item, Item::Size(Kind::Num(_)));
    !line.reads && reads.is_some_and(|reads| items[at + reads..].iter().any(is_size))
}

/// Does `not` or `instead of` stand right before a size?
fn is_denied(items: &[(Item, Range<usize>)], at: usize) -> bool {
    let before = items[..at].iter().rev().map(|(item, _)| item);
    before
        .take_while(|item| matches!(item, Item::Not | Item::Loose(_)))
        .any(|item| matches!(item, Item::Not))
}

/// Behind `not`, a second size is what holds.
fn is_correction(items: &[(Item, Range<usize>)], at: usize) -> bool {
    items[..at].iter().any(|(item, _)| matches!(item, Item::Size(_)))
}

fn is_bare_size(tokens: &[Token]) -> bool {
    has_size(tokens)
        && tokens.iter().all(|token| {
            matches!(
                token.kind,
                Kind::Num(_) | Kind::Dims(_) | Kind::Class(_) | Kind::Off(..) | Kind::Sign(_)
            )
        })
}

pub(super) fn has_size(tokens: &[Token]) -> bool {
    tokens.iter().any(|token| {
        matches!(token.kind, Kind::Num(_) | Kind::Dims(_) | Kind::Range(..) | Kind::Thread(_))
    })
}

/// `ok` or `done` at the end.
fn is_tick(found: &[Token]) -> bool {
    found
        .iter()
        .rev()
        .find_map(Token::word)
        .is_some_and(|word| matches!(word, "ok" | "done" | "okay"))
        || found.iter().any(|token| token.is_sign('\u{2713}') || token.is_sign('\u{2714}'))
}

/// The clauses with the sign before each.
fn clauses(found: &[Token]) -> Vec<(char, &[Token])> {
    let mut out = Vec::new();
    let mut start = 0;
    let mut sign = '^';
    for (at, token) in found.iter().enumerate() {
        let spaced_dash = token.is_sign('-');
        // `journal, inboard: same`: the mark belongs to the name.
        let marks = token.is_sign(',')
            && at > start
            && found
                .get(at + 1)
                .and_then(Token::word)
                .is_some_and(|word| super::names::is_instance(&super::lexicon::stem(word)))
            && found.get(at + 2).is_some_and(|next| next.is_sign(':') || next.is_sign('='));
        if marks {
            continue;
        }
        let breaks = match token.kind {
            Kind::Sign(c @ (',' | ';' | ':' | '(' | ')' | '|' | '\t' | '!' | '+')) => Some(c),
            Kind::Sign('.') => Some('.'),
            Kind::Sign('?') => Some('?'),
            Kind::Sign('-') if spaced_dash => Some('-'),
            // `.9995 and the housing 1.2510`: each has its own.
            Kind::Word(ref word)
                if word == "and" && has_size(&found[start..at]) && has_size(&found[at..]) =>
            {
                Some(' ')
            }
            _ => None,
        };
        if let Some(next) = breaks {
            if at > start {
                out.push((sign, &found[start..at]));
            }
            (start, sign) = (at + 1, next);
        } else if at > start
            && token.at.start >= found[at - 1].at.end + 2
            && !matches!(found[at - 1].kind, Kind::Sign(_))
        {
            out.push((sign, &found[start..at]));
            (start, sign) = (at, ' ');
        }
    }
    if start < found.len() {
        out.push((sign, &found[start..]));
    }
    out
}
