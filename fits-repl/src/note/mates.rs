//! What goes into what: named by part alone, found when all is read.

use std::ops::Range;

use fits_core::{
    Length,
    job::whole::{Feature, FitSaid, Mate, Nominal, Side},
};

use super::{
    Line, Reader, Wanted,
    kinds::is_numbered,
    lexicon::{feature, inwardness, matches_mate, stem, stems},
};

/// A mate as it is said: its name, the part, the place, and whether it surely is one.
pub(super) type Named = Option<(String, Option<usize>, Range<usize>, bool)>;

impl Reader {
    /// A mate, found again by either of its features.
    pub(super) fn add_mate(&mut self, mate: Mate) {
        for feature in [mate.hole, mate.shaft] {
            self.mated.entry(feature).or_default().push(self.job.mates.len());
        }
        self.job.mates.push(mate);
    }

    /// The mates of a feature.
    pub(super) fn mates_at(&self, feature: usize) -> &[usize] {
        self.mated.get(&feature).map_or(&[], Vec::as_slice)
    }

    /// The mates that a line asks for, the last first.
    pub(super) fn wanted_on(&self, line: usize) -> impl Iterator<Item = &Wanted> {
        self.wanted.iter().rev().take_while(move |want| want.line == line)
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
        if let Some(want) = self.wanted.last_mut() {
            want.hinted = true;
        }
    }

    #[allow(clippy::too_many_arguments, reason = "all of it is said in one breath")]
    pub(super) fn want(
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
            hinted: false,
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
            .map(|from| self.side_towards(from, part, &name, line))
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
        // `tapped 5/16-18, for the retaining screws`: the thread takes them. A screw is
        // not bored for the shaft that it holds.
        let is_screw =
            |word: &String| ["screw", "bolt", "stud"].iter().any(|end| word.ends_with(end));
        let mut from = from;
        let one = &self.job.features[from];
        let is_held = one.side == Side::Shaft && self.inwardness(one.part) > 1;
        if (is_held || one.side == Side::Other)
            && fit.words.is_empty()
            && stems(&name).last().is_some_and(is_screw)
        {
            let thread = self.features_of(one.part).find(|(at, other)| {
                other.side == Side::Thread && self.said_here(line, *at).is_some()
            });
            let Some((thread, _)) = thread else {
                return self.remark(line.number, &name, line.subject);
            };
            from = thread;
        }
        let here = self.wanted.iter_mut().rev().take_while(|wanted| wanted.line == line.number);
        let is_short = |wanted: &Wanted| {
            let (long, short) = (stems(&wanted.name), stems(&name));
            part.is_none() && short.len() < long.len() && long.ends_with(&short)
        };
        if let Some(wanted) = here.into_iter().find(|wanted| {
            let same = wanted.name.is_empty()
                || wanted.part.is_some() && wanted.part == part
                || stems(&wanted.name) == stems(&name)
                || !wanted.hinted && is_short(wanted);
            wanted.feature == from && wanted.fit.words.is_empty() && (wanted.hinted || same)
        }) {
            // `takes the drive peg. Peg pressed in`
            if !wanted.hinted && is_short(wanted) {
                wanted.fit = fit;
                return;
            }
            // A fit said here, or a name better than the hint.
            (wanted.name, wanted.part, wanted.to, wanted.fit) = (name, part, to, fit);
            return;
        }
        self.want(line, from, &name, part, to, fit, at);
    }

    /// `seal 22 x 40 x 7 in cover`: of all that a line lists it is the outside that
    /// goes in a housing.
    fn side_towards(&self, from: usize, mate: Option<usize>, name: &str, line: &Line) -> usize {
        let one = &self.job.features[from];
        let inner = mate.map_or_else(
            || stems(name).iter().rev().find_map(|word| inwardness(word)).unwrap_or(0),
            |mate| self.inwardness(mate),
        );
        let is_here = one.line == line.number && one.side == Side::Hole;
        let outside = || {
            let all = self.features_of(one.part);
            all.filter(|(_, other)| other.line == one.line && other.side == Side::Shaft)
                .find(|(_, other)| other.at == one.at)
        };
        let is_listed = self.is_listed(one.part) || is_numbered(&self.stems[one.part]);
        let goes_in = is_here && is_listed && inner < self.inwardness(one.part);
        match outside().filter(|_| goes_in) {
            Some((outside, _)) => outside,
            None => from,
        }
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
        self.outgrown(&wanted);
        self.threads();
        self.both_ways();
        self.matching(&wanted);
        self.job.said.sort_by_key(|said| said.line);
        self.job.remarks.sort_by_key(|remark| remark.line);
    }

    pub(super) fn pair(&mut self, want: &Wanted) {
        let one = self.job.features[want.feature].clone();
        // What its own line said: a later one may have changed it.
        let said = self.job.said.get(want.said).and_then(|said| said.nominal.as_ref());
        let size = said.or(one.nominal.as_ref()).and_then(Nominal::size);
        let other_side = match one.side {
            Side::Hole => Side::Shaft,
            Side::Shaft => Side::Hole,
            side => side,
        };
        let split = self.split_name(want, other_side).or_else(|| self.named_below(want));
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
            if let Some(only) = size.and_then(|size| self.only_waiting(&one, other_side, size)) {
                self.join(want, only);
            }
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
            self.job.said[want.said].mate.get_or_insert(existing);
            return;
        }
        if self.is_only_alike(want, part, size) {
            let words = format!("{} {}", want.fit.words, want.name);
            return self.remark(want.line, &words, Some(one.part));
        }
        let to = want
            .to
            .filter(|to| {
                let side = self.job.features[*to].side;
                side == other_side || side == Side::Other && one.side == Side::Shaft
            })
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
        let made = self.job.mates.len() - 1;
        self.job.said[want.said].mate.get_or_insert(made);
    }

    /// Of the features that wait for a mate the only one of such a size on that side.
    fn only_waiting(&self, one: &Feature, side: Side, size: Length) -> Option<usize> {
        side.surface()?;
        let mut all = (0..self.job.features.len()).filter(|at| {
            let other = &self.job.features[*at];
            other.side == side
                && other.part != one.part
                && self.is_in_reach(*at, size)
                && self.mates_at(*at).is_empty()
        });
        all.next().filter(|_| all.next().is_none())
    }

    /// `outside 1-3/8, must match the rollers`: as large as they, and no joint.
    fn is_only_alike(&self, want: &Wanted, part: usize, size: Option<Length>) -> bool {
        let other = match self.job.features[want.feature].side {
            Side::Shaft => Side::Hole,
            Side::Hole => Side::Shaft,
            _ => return false,
        };
        let is_there = |size| {
            let near = self.nearest(part, Some(other), size);
            near.is_some_and(|at| self.is_near(at, size))
        };
        want.matches && want.to.is_none() && size.is_some_and(|size| !is_there(size))
    }

    /// A mate of two features that are known.
    pub(super) fn join(&mut self, want: &Wanted, to: usize) {
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
}
