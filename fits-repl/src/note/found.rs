//! The part and the feature that a mate said by its name means.

use fits_core::{
    Length,
    job::whole::{Nominal, Side},
};

use super::{
    Reader, Wanted,
    kinds::is_numbered,
    lexicon::{feature, stems},
    names::is_instance,
};

impl Reader {
    /// `Bush bore`: a mate by its part and its feature; the part alone, with the
    /// feature where it is there.
    pub(super) fn split_name(&self, want: &Wanted, side: Side) -> Option<Wanted> {
        let said = stems(&want.name);
        let whole = self.part_called(&said).is_some_and(|(_, score)| score >= 85);
        let known = |words: &[String]| {
            let Some((part, score)) = self.part_called(words).filter(|(_, score)| *score >= 70)
            else {
                // `bevel boss`: the only part whose name begins so.
                let [first] = words else { return None };
                let begins = |part: &usize| self.stems[*part].first() == Some(first);
                let all = self.keyed.get(first).map_or(&[][..], Vec::as_slice);
                let mut all = all.iter().copied().filter(begins);
                return all.next().filter(|one| all.all(|other| other == *one));
            };
            Some(if score < 85 { self.of_number(part, &want.name, words) } else { part })
        };
        if want.part.is_some() || want.to.is_some() || said.len() < 2 || whole {
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
            hinted: false,
        })
    }

    /// `pinion bush`, taken for the bushes where it was said: the note opens a part
    /// of that very name further down.
    pub(super) fn named_below(&self, want: &Wanted) -> Option<Wanted> {
        let said = stems(&want.name);
        let own = self.job.features[want.feature].part;
        // A heading over bearings that go by their number is none of them.
        let numbered = |was: usize| {
            let is_bearing = self.stems[was].last().is_some_and(|word| word == "bearing");
            let is_one = |part: &usize| is_numbered(&self.stems[*part]) && *part != own;
            let mut all = (0..self.stems.len()).filter(is_one);
            (is_bearing && !self.features_of(was).any(|(_, one)| one.nominal.is_some()))
                .then(|| all.next())
                .flatten()
        };
        let below = self.exact.get(&said.concat()).copied();
        let below = below.filter(|part| self.job.parts[*part].line > want.line);
        let part = want.part.and_then(numbered).or(below)?;
        let was = want
            .part
            .filter(|was| *was != part && (self.stems[*was] != said || below.is_none()))?;
        let sized_here = want.to.is_some_and(|to| {
            let to = &self.job.features[to];
            to.part == was && to.line == want.line && to.nominal.is_some()
        });
        (part != own && !sized_here).then(|| Wanted {
            line: want.line,
            at: want.at.clone(),
            feature: want.feature,
            name: want.name.clone(),
            part: Some(part),
            to: None,
            fit: want.fit.clone(),
            said: want.said,
            matches: want.matches,
            hinted: want.hinted,
        })
    }

    /// `the screw`, of a main screw and four cover screws: the one that is one.
    fn of_number(&self, part: usize, said: &str, words: &[String]) -> usize {
        let count = words.len();
        let is_many = |name: &str, count: usize| {
            name.split_whitespace().nth(count - 1).is_some_and(|word| word.ends_with('s'))
        };
        let many = is_many(said, count);
        let agrees = |part: &usize| {
            let name = &self.job.parts[*part].name.to_lowercase();
            is_many(name, name.split_whitespace().count().max(1)) == many
        };
        if agrees(&part) {
            return part;
        }
        let last = words.last().map_or("", String::as_str);
        let alike: Vec<usize> = self.ending(last).into_iter().filter(agrees).collect();
        if let [only] = alike.as_slice() { *only } else { part }
    }

    /// The part that a mate's name means.
    pub(super) fn part_of(
        &self,
        name: &str,
        own: usize,
        side: Side,
        size: Option<Length>,
    ) -> Option<usize> {
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
            let found = if score < 85 { self.of_number(found, name, &said) } else { found };
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
    pub(super) fn of_several(&self, part: usize, name: &str, feature: &str) -> usize {
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
    pub(super) fn mate_feature(
        &mut self,
        part: usize,
        want: &Wanted,
        side: Side,
        size: Option<Length>,
    ) -> usize {
        let busy = |reader: &Self, at: usize| !reader.mates_at(at).is_empty();
        let own = stems(&self.job.parts[self.job.features[want.feature].part].name);
        // A size that was corrected counts too: the joint may have been said before.
        let off = |reader: &Self, at: usize| {
            let one = &reader.job.features[at];
            let all = one.nominal.iter().chain(one.earlier.iter().map(|(_, was)| was));
            all.filter_map(Nominal::size)
                .zip(std::iter::repeat(size?))
                .map(|(one, other)| (one.tenth_nanometres() - other.tenth_nanometres()).abs())
                .min()
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
}
