//! What goes into what: named by part alone, found when all is read.

use std::ops::Range;

use fits_core::{
    Length,
    job::whole::{FitSaid, Mate, Nominal, Side},
};

use super::{
    Line, Reader, Wanted,
    lexicon::{feature, inwardness, matches_mate, stem, stems},
    names::is_instance,
    token::Kind,
};

type Named = Option<(String, Option<usize>, Range<usize>, bool)>;

impl Reader {
    /// A mate, found again by either of its features.
    fn add_mate(&mut self, mate: Mate) {
        for feature in [mate.hole, mate.shaft] {
            self.mated.entry(feature).or_default().push(self.job.mates.len());
        }
        self.job.mates.push(mate);
    }

    /// The mates of a feature.
    fn mates_at(&self, feature: usize) -> &[usize] {
        self.mated.get(&feature).map_or(&[], Vec::as_slice)
    }

    /// The parts whose names end so.
    pub(super) fn ending(&self, last: &str) -> Vec<usize> {
        let all = self.keyed.get(last).map_or(&[][..], Vec::as_slice);
        all.iter()
            .copied()
            .filter(|part| self.stems[*part].last().is_some_and(|end| end == last))
            .collect()
    }

    /// A feature called by its mate: `gear seat`, `dowel hole`.
    pub(super) fn hint(&mut self, line: &mut Line, feature: usize, mate: &str, at: &Range<usize>) {
        if self.wanted.iter().any(|wanted| wanted.feature == feature) {
            return;
        }
        self.want(line, feature, mate, None, None, FitSaid::default(), at.clone());
    }

    #[allow(clippy::too_many_arguments, reason = "all of it is said in one breath")]
    fn want(
        &mut self,
        line: &mut Line,
        feature: usize,
        name: &str,
        part: Option<usize>,
        to: Option<usize>,
        fit: FitSaid,
        at: Range<usize>,
    ) {
        self.say(line, feature);
        let said = self.said_here(line, feature).unwrap_or(0);
        let matches = matches_mate(&fit.words);
        self.wanted.push(Wanted {
            line: line.number,
            at,
            feature,
            name: name.to_owned(),
            part,
            to,
            fit,
            said,
            matches,
        });
    }

    pub(super) fn finish_mate(
        &mut self,
        line: &mut Line,
        mate: &mut Named,
        from: Option<usize>,
        fit: &mut FitSaid,
        to: Option<usize>,
    ) {
        let Some((name, part, at, is_sure)) = mate.take() else { return };
        let fit = std::mem::take(fit);
        let is_sure = is_sure
            || !fit.words.is_empty()
            || from.is_some_and(|at| self.job.features[at].side != Side::Length);
        if is_sure
            && part.is_some()
            && part == line.subject
            && !fit.words.is_empty()
            && self.exact.get(&stems(&name).concat()).copied() == part
        {
            let text = format!("the {name} cannot go into itself");
            self.ask(line.number, at, text, Some("name the other part".into()));
            return;
        }
        if !is_sure || part.is_some() && part == line.subject {
            return;
        }
        if to.is_none()
            && let Some(part) = part
        {
            line.mate_part = Some(part);
        }
        let from = from
            .filter(|from| !matches!(self.job.features[*from].side, Side::Length))
            .or_else(|| {
                let subject = line.subject?;
                let inner = part.map_or_else(
                    || stems(&name).iter().rev().find_map(|word| inwardness(word)).unwrap_or(0),
                    |part| self.inwardness(part),
                );
                let own = self.inwardness(subject);
                let side =
                    if own > inner || own == inner && own > 1 { Side::Shaft } else { Side::Hole };
                let matches = fit.words.contains("match") || fit.words.contains("follow");
                let side = if matches { Side::Thread } else { side };
                let word = match side {
                    Side::Shaft => "od",
                    Side::Thread => "thread",
                    _ => "hole",
                };
                let found =
                    self.features_of(subject).find(|(_, one)| one.side == side).map(|(at, _)| at);
                let own = self.feature_called(subject, word, Some(side)).or(found);
                Some(own.unwrap_or_else(|| self.feature(line, subject, word, side, at.clone())))
            });
        let Some(from) = from else { return };
        let here = self.wanted.iter_mut().rev().take_while(|wanted| wanted.line == line.number);
        if let Some(wanted) =
            here.into_iter().find(|wanted| wanted.feature == from && wanted.fit.words.is_empty())
        {
            // A fit said here, or a name better than the hint.
            (wanted.name, wanted.part, wanted.to, wanted.fit) = (name, part, to, fit);
            return;
        }
        self.want(line, from, &name, part, to, fit, at);
    }

    /// A fit with no mate beside it: the feature's, whoever its mate is.
    pub(super) fn fit_alone(&mut self, line: &mut Line, feature: usize, fit: FitSaid) {
        if let Some(wanted) = self
            .wanted
            .iter_mut()
            .rev()
            .take_while(|wanted| wanted.line == line.number)
            .find(|wanted| wanted.feature == feature)
        {
            if wanted.fit.words.is_empty() {
                wanted.fit = fit;
            } else {
                wanted.fit.clearance = wanted.fit.clearance.or(fit.clearance);
                wanted.fit.word = wanted.fit.word.or(fit.word);
                if !fit.words.is_empty() {
                    wanted.fit.words = format!("{}, {}", wanted.fit.words, fit.words);
                }
            }
        } else if !fit.words.is_empty() && self.job.features[feature].side != Side::Length {
            // A bush under its roller is pressed into it.
            let one = &self.job.features[feature];
            let holds = self.block.contains(&one.part)
                && one.side == Side::Shaft
                && fit.word.is_some_and(|word| !word.moves());
            let current = self.current.filter(|current| holds && *current != one.part);
            let name = current.map(|part| self.job.parts[part].name.clone()).unwrap_or_default();
            self.want(line, feature, &name, current, None, fit, 0..0);
        }
    }

    /// The subject's own feature where only its mate is sized: `pawl on 1/4 dowel`.
    pub(super) fn implied_side(
        &mut self,
        line: &mut Line,
        mate: usize,
        kind: &Kind,
    ) -> Option<usize> {
        let subject = line.subject?;
        let Kind::Num(num) = kind else { return None };
        let size = self.length(num, line.unit)?;
        if let Some(near) = self.nearest(subject, None, size).filter(|at| self.is_near(*at, size)) {
            return Some(near);
        }
        let side =
            if self.inwardness(subject) > self.inwardness(mate) { Side::Shaft } else { Side::Hole };
        let name = if side == Side::Shaft { "od" } else { "hole" };
        let feature = self.feature(line, subject, name, side, num.at.clone());
        let from = self.unit_of(num, line.unit);
        self.size(line, feature, Nominal::Size(size), from);
        Some(feature)
    }

    /// A class with no size beside it: the mate's, or that of a size said before.
    pub(super) fn lone_class(
        &mut self,
        class: &str,
        mate: &mut Named,
        last: Option<usize>,
        line: &mut Line,
        place: &Range<usize>,
    ) {
        let is_hole = class.starts_with(|c: char| c.is_ascii_uppercase());
        if let (Some((name, part, _, _)), Some(last)) = (mate.as_mut(), last) {
            let own = self.job.features[last].side;
            let other = if own == Side::Shaft { Side::Hole } else { Side::Shaft };
            if (other == Side::Hole) == is_hole && own.surface().is_some() {
                let id = part.unwrap_or_else(|| self.part_named(name, line.number));
                *part = Some(id);
                let nominal = self.job.features[last].nominal.clone();
                let (unit, from) =
                    (self.job.features[last].unit, self.job.features[last].unit_from);
                let word = if other == Side::Hole { "bore" } else { "od" };
                let feature = self.feature(line, id, word, other, place.clone());
                if let Some(nominal) =
                    nominal.filter(|_| self.job.features[feature].nominal.is_none())
                {
                    self.size(line, feature, nominal, (unit, from));
                }
                self.job.features[feature].class = Some(class.to_owned());
                line.feature = Some(last);
                return;
            }
        }
        if let Some(feature) =
            last.or(line.feature).filter(|at| self.job.features[*at].class.is_none())
        {
            self.job.features[feature].class = Some(class.to_owned());
            self.say(line, feature);
        }
    }

    /// Finds all mates, and says of both what is said of one.
    pub(super) fn settle(&mut self) {
        for (part, of) in self.job.parts.iter().enumerate().rev() {
            let of = of.material.as_deref().and_then(|of| stems(of).pop());
            self.made_of.extend(of.map(|of| (of, part)));
        }
        let mut wanted = std::mem::take(&mut self.wanted);
        wanted.sort_by_key(|wanted| (wanted.name.is_empty(), wanted.fit.words.is_empty()));
        for want in &wanted {
            self.pair(want);
        }
        self.threads();
        self.both_ways();
        self.matching(&wanted);
        self.job.said.sort_by_key(|said| said.line);
    }

    fn pair(&mut self, want: &Wanted) {
        let one = self.job.features[want.feature].clone();
        let size = one.nominal.as_ref().and_then(Nominal::size);
        let other_side = match one.side {
            Side::Hole => Side::Shaft,
            Side::Shaft => Side::Hole,
            side => side,
        };
        let split = self.split_name(want, other_side);
        let want = split.as_ref().unwrap_or(want);
        let part = if want.name.is_empty() {
            // Only a fit: whoever is the same size and waits.
            if let Some(at) = self.mates_at(want.feature).first().copied() {
                let mate = &mut self.job.mates[at];
                if mate.fit.words.is_empty() {
                    mate.fit = want.fit.clone();
                }
                return;
            }
            // Of the others that wait one is of such a size.
            let waits: Vec<usize> = size.map_or_else(Vec::new, |size| {
                (0..self.job.features.len())
                    .filter(|at| {
                        let other = &self.job.features[*at];
                        other.side == other_side
                            && other.part != one.part
                            && other_side.surface().is_some()
                            && self.is_near(*at, size)
                            && self.mates_at(*at).is_empty()
                    })
                    .collect()
            });
            let [only] = waits.as_slice() else { return };
            let only = *only;
            self.join(want, only);
            return;
        } else {
            let found = want.part.or_else(|| self.part_of(&want.name, one.part, other_side, size));
            // `jrnl A` names the feature itself.
            let said = stems(&want.name);
            let named = self.by_name.get(&said.join(" ")).copied().filter(|at| {
                let other = &self.job.features[*at];
                other.side == other_side && other.part != one.part
            });
            if let (Some(to), true) = (named, found.is_none_or(|part| self.stems[part] != said)) {
                return self.join(want, to);
            }
            match found {
                Some(part) => self.of_several(part, &want.name, &one.name),
                None if stem(&want.name) == "it" => return,
                None => {
                    // `Pressing plate hole` names the plate.
                    let words: Vec<&str> = want.name.split_whitespace().collect();
                    let name = match words.as_slice() {
                        [name @ .., of, last]
                            if feature(&last.to_lowercase())
                                .is_some_and(|side| side == other_side)
                                && inwardness(&of.to_lowercase()).is_some() =>
                        {
                            [name, &[*of]].concat().join(" ")
                        }
                        _ => want.name.clone(),
                    };
                    self.new_part(&name, want.line)
                }
            }
        };
        if part == one.part && want.to.is_none() {
            return;
        }
        let existing = self
            .mates_at(want.feature)
            .iter()
            .copied()
            .find(|at| self.job.features[self.job.mates[*at].other(want.feature)].part == part);
        if let Some(existing) = existing {
            let mate = &mut self.job.mates[existing];
            if mate.fit.words.is_empty() {
                mate.fit = want.fit.clone();
            }
            self.job.said[want.said].mate = Some(existing);
            return;
        }
        let to = want
            .to
            .filter(|to| self.job.features[*to].side == other_side)
            .unwrap_or_else(|| self.mate_feature(part, want, other_side, size));
        let called = (stems(&want.name) != self.stems[part]).then(|| want.name.clone());
        let (hole, shaft) = if one.side == Side::Shaft
            || one.side == Side::Thread && self.inwardness(one.part) >= self.inwardness(part)
        {
            (to, want.feature)
        } else {
            (want.feature, to)
        };
        self.add_mate(Mate { line: want.line, hole, shaft, fit: want.fit.clone(), called });
        self.job.said[want.said].mate = Some(self.job.mates.len() - 1);
    }

    /// `Bush bore`: a mate by its part and its feature; the part alone, with the
    /// feature where it is there.
    fn split_name(&self, want: &Wanted, side: Side) -> Option<Wanted> {
        let said = stems(&want.name);
        let known = |words: &[String]| {
            self.part_called(words).filter(|(_, score)| *score >= 85).map(|(part, _)| part)
        };
        if want.part.is_some() || want.to.is_some() || said.len() < 2 || known(&said).is_some() {
            return None;
        }
        let own = self.job.features[want.feature].part;
        let (count, part) =
            (1..said.len()).rev().find_map(|count| Some((count, known(&said[..count])?)))?;
        let is_feature = said[count..].iter().any(|word| feature(word).is_some());
        let to = self.feature_called(part, &said[count..].join(" "), Some(side));
        (is_feature && part != own).then(|| Wanted {
            line: want.line,
            at: want.at.clone(),
            feature: want.feature,
            name: self.job.parts[part].name.clone(),
            part: Some(part),
            to,
            fit: want.fit.clone(),
            said: want.said,
            matches: want.matches,
        })
    }

    /// A mate of two features that are known.
    fn join(&mut self, want: &Wanted, to: usize) {
        let outer = self.job.features[want.feature].side == Side::Shaft;
        let (hole, shaft) = if outer { (to, want.feature) } else { (want.feature, to) };
        let found =
            self.mates_at(hole).iter().copied().find(|at| self.job.mates[*at].shaft == shaft);
        let at = found.unwrap_or_else(|| {
            self.add_mate(Mate {
                line: want.line,
                hole,
                shaft,
                fit: want.fit.clone(),
                called: None,
            });
            self.job.mates.len() - 1
        });
        self.job.said[want.said].mate = Some(at);
    }

    /// The part that a mate's name means.
    fn part_of(&self, name: &str, own: usize, side: Side, size: Option<Length>) -> Option<usize> {
        let said = stems(name);
        let (found, score) =
            self.part_called(&said).filter(|(part, _)| *part != own).unwrap_or_else(|| {
                // The part itself is no mate of its own: the next best.
                let last = said.last().filter(|_| said.len() == 1);
                let like = last
                    .and_then(|last| self.ending(last).into_iter().rev().find(|part| *part != own));
                like.map_or((usize::MAX, 0), |part| (part, 60))
            });
        // A bearing is the one that goes by its number.
        let numbered = |part: &usize| {
            *part != own
                && self.stems[*part]
                    .iter()
                    .any(|word| word.len() > 2 && word.starts_with(|c: char| c.is_ascii_digit()))
        };
        if score < 100
            && said.last().is_some_and(|word| word == "bearing")
            && let Some(part) = (0..self.job.parts.len()).find(numbered)
        {
            return Some(part);
        }
        if score > 0 && found < self.job.parts.len() {
            // Several bushes: the one with such a size.
            let fits = |part: usize| {
                size.is_some_and(|size| {
                    self.nearest(part, Some(side), size).is_some_and(|at| self.is_near(at, size))
                })
            };
            if score < 90 && !fits(found) {
                let last = self.stems[found].last().cloned().unwrap_or_default();
                let other = self.ending(&last).into_iter().find(|part| *part != own && fits(*part));
                return other.or(Some(found));
            }
            return Some(found);
        }
        // `in the tube`: the grip that is made of brass tube.
        if let Some(made_of) = said.last().and_then(|last| self.made_of.get(last))
            && *made_of != own
        {
            return Some(*made_of);
        }
        // `shaft`: the part that has journals or seats.
        if said.last().is_some_and(|word| matches!(word.as_str(), "shaft" | "crankshaft" | "axle"))
        {
            return (0..self.job.parts.len()).find(|part| {
                *part != own
                    && self.features_of(*part).any(|(_, feature)| {
                        stems(&feature.name)
                            .iter()
                            .any(|word| matches!(word.as_str(), "journal" | "seat"))
                    })
            });
        }
        None
    }

    /// `brgs` behind `bore A` is bearing A.
    fn of_several(&self, part: usize, name: &str, feature: &str) -> usize {
        let marks = |words: &[String]| words.iter().find(|word| is_instance(word)).cloned();
        if marks(&stems(name)).is_some() {
            return part;
        }
        let Some(mark) = marks(&stems(feature)) else { return part };
        let plain = |part: usize| {
            self.stems[part].iter().filter(|word| !is_instance(word)).cloned().collect::<Vec<_>>()
        };
        let own = plain(part);
        (0..self.job.parts.len())
            .find(|other| plain(*other) == own && self.stems[*other].contains(&mark))
            .unwrap_or(part)
    }

    /// The feature of the other part: the opposite side, the nearest size, the one that waits.
    fn mate_feature(
        &mut self,
        part: usize,
        want: &Wanted,
        side: Side,
        size: Option<Length>,
    ) -> usize {
        let busy = |reader: &Self, at: usize| !reader.mates_at(at).is_empty();
        let own = stems(&self.job.parts[self.job.features[want.feature].part].name);
        let off = |reader: &Self, at: usize| {
            let nominal = reader.job.features[at].nominal.as_ref().and_then(Nominal::size);
            nominal
                .zip(size)
                .map(|(one, other)| (one.tenth_nanometres() - other.tenth_nanometres()).abs())
        };
        // A feature that names this part, as `gear seat` for the gear.
        let named =
            |reader: &Self, at: usize| reader.names[at].iter().any(|word| own.contains(word));
        let found = self
            .features_of(part)
            .map(|(at, _)| at)
            .filter(|at| self.job.features[*at].side == side && *at != want.feature)
            .filter(|at| {
                size.is_none()
                    || off(self, *at).is_none_or(|off| {
                        self.is_near(*at, size.unwrap_or(Length::ZERO)) || off < 5_000_000
                    })
            })
            .min_by_key(|at| {
                (
                    off(self, *at).map_or(1, |off| i64::from(off > 100_000)),
                    !named(self, *at),
                    busy(self, *at),
                    off(self, *at).unwrap_or(i64::MAX),
                    *at,
                )
            });
        found.unwrap_or_else(|| {
            let word = match side {
                Side::Hole if self.inwardness(part) < 0 => "bore",
                Side::Hole => "hole",
                Side::Shaft => "od",
                Side::Thread => "thread",
                _ => "mate",
            };
            let one = self.job.features[want.feature].clone();
            let taken = self
                .features_of(part)
                .any(|(_, feature)| feature.name == word && feature.side == side);
            let name = if taken {
                format!("{word} for {}", self.job.parts[one.part].name)
            } else {
                word.to_owned()
            };
            let made = self.new_feature(want.line, part, &name, side, want.at.clone());
            let feature = &mut self.job.features[made];
            (feature.nominal, feature.unit, feature.unit_from, feature.implied) =
                (one.nominal, one.unit, one.unit_from, true);
            made
        })
    }

    /// A screw and a nut of one thread go together.
    fn threads(&mut self) {
        // A keyway and the key of its width.
        for keyway in 0..self.job.features.len() {
            let one = &self.job.features[keyway];
            if one.side != Side::Other {
                continue;
            }
            let key = (0..self.job.features.len()).find(|at| {
                let key = &self.job.features[*at];
                one.side == Side::Other
                    && one.part != key.part
                    && key.side == Side::Other
                    && key.nominal == one.nominal
                    && self.stems[key.part].iter().any(|word| word == "key")
            });
            if let Some(key) = key.filter(|_| one.nominal.is_some()) {
                self.add_mate(Mate {
                    line: one.line,
                    hole: keyway,
                    shaft: key,
                    fit: FitSaid::default(),
                    called: None,
                });
            }
        }
        let threads: Vec<usize> = (0..self.job.features.len())
            .filter(|at| self.job.features[*at].side == Side::Thread)
            .collect();
        for &nut in &threads {
            let is_nut = |reader: &Self, at: usize| {
                reader.stems[reader.job.features[at].part].iter().any(|word| word == "nut")
            };
            if !is_nut(self, nut) || !self.mates_at(nut).is_empty() {
                continue;
            }
            let same = |reader: &Self, at: usize| {
                reader.job.features[at].nominal == reader.job.features[nut].nominal
                    && reader.job.features[nut].nominal.is_some()
            };
            let screw = threads.iter().copied().find(|at| !is_nut(self, *at) && same(self, *at));
            if let Some(screw) = screw {
                let line = self.job.features[nut].line;
                self.add_mate(Mate {
                    line,
                    hole: nut,
                    shaft: screw,
                    fit: FitSaid::default(),
                    called: None,
                });
            }
        }
    }

    /// A line that says a feature says its mate too, whoever said it first.
    fn both_ways(&mut self) {
        let mut groups: Vec<usize> = (0..self.job.features.len()).collect();
        for (at, feature) in self.job.features.iter().enumerate() {
            for instance in &feature.instances {
                groups[*instance] = at;
            }
        }
        let mut of: Vec<Option<usize>> = vec![None; self.job.features.len()];
        for (at, mate) in self.job.mates.iter().enumerate() {
            of[mate.hole] = of[mate.hole].or(Some(at));
            of[mate.shaft] = of[mate.shaft].or(Some(at));
        }
        for said in &mut self.job.said {
            if said.mate.is_none() {
                said.mate = of[said.feature].or(of[groups[said.feature]]);
            }
        }
    }

    /// A thread cut to match another has its size.
    fn matching(&mut self, wanted: &[Wanted]) {
        for want in wanted.iter().filter(|want| want.matches) {
            let Some(mate) =
                self.mates_at(want.feature).first().map(|at| self.job.mates[*at].clone())
            else {
                continue;
            };
            let other = self.job.features[mate.other(want.feature)].clone();
            let one = &mut self.job.features[want.feature];
            if one.nominal.is_none() {
                (one.nominal, one.unit, one.unit_from) =
                    (other.nominal.clone(), other.unit, other.unit_from);
                self.job.said[want.said].nominal.clone_from(&other.nominal);
            }
            if other.nominal.is_none() {
                let names =
                    [want.feature, mate.other(want.feature)].map(|at| self.job.full_name(at));
                let text = format!(
                    "the {} is to match the {}, which has no size either",
                    names[0], names[1]
                );
                self.ask(
                    want.line,
                    want.at.clone(),
                    text,
                    Some("give one of the two its size".into()),
                );
            }
        }
        // What is said of a feature of no size that its mate has.
        for at in 0..self.job.mates.len() {
            let (hole, shaft) = (self.job.mates[at].hole, self.job.mates[at].shaft);
            for (one, other) in [(hole, shaft), (shaft, hole)] {
                if self.job.features[one].nominal.is_none()
                    && self.job.features[one].side == self.job.features[other].side
                {
                    let from = self.job.features[other].clone();
                    self.job.features[one].nominal = from.nominal;
                }
            }
        }
    }
}
