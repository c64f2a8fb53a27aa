//! What goes into what, found when the whole note is read.

mod found;
mod settled;
mod sleeved;

use std::collections::HashMap;

use fits_core::{
    Length,
    job::whole::{FitSaid, Job, Mate, NominalSize, PartFeature, SizeKind},
};

use super::{
    lexicon::{feature, inwardness, stem, stems},
    told::Told,
    wants::Wanted,
};

/// The joints while they are found.
#[derive(Default)]
pub(super) struct Joints {
    /// The mates of each feature.
    mated: HashMap<usize, Vec<usize>>,
    /// The first part of each stuff.
    made_of: HashMap<String, usize>,
}

/// Finds all mates, and says of both what is said of one.
pub(super) fn settle(told: &mut Told, mut wanted: Vec<Wanted>) {
    let mut joints = Joints::default();
    for (part, of) in told.job.parts.iter().enumerate().rev() {
        let of = of.material.as_deref().and_then(|of| stems(of).pop());
        joints.made_of.extend(of.map(|of| (of, part)));
    }
    wanted.sort_by_key(|wanted| (wanted.name.is_empty(), wanted.fit.words.is_empty()));
    for want in &wanted {
        joints.pair(told, want);
    }
    found::named_after(&mut joints, told);
    sleeved::sleeved(&mut joints, told);
    settled::outgrown(&mut joints, told, &wanted);
    settled::threads(&mut joints, told);
    settled::both_ways(&mut told.job);
    settled::matching(&joints, told, &wanted);
    told.job.said.sort_by_key(|said| said.line);
    told.job.remarks.sort_by_key(|remark| remark.line);
}

/// `outside 1-3/8, must match the rollers`: as large as they, and no joint.
fn is_only_alike(told: &Told, want: &Wanted, part: usize, size: Option<Length>) -> bool {
    let other = match told.job.features[want.feature].side {
        SizeKind::Shaft => SizeKind::Hole,
        SizeKind::Hole => SizeKind::Shaft,
        _ => return false,
    };
    let is_there = |size| {
        let near = told.nearest(part, Some(other), size);
        near.is_some_and(|at| told.is_near(at, size))
    };
    want.matches && want.to.is_none() && size.is_some_and(|size| !is_there(size))
}

impl Joints {
    /// A mate of a line, a hole and a shaft.
    fn add_mate(
        &mut self,
        job: &mut Job,
        (line, hole, shaft): (usize, usize, usize),
        fit: FitSaid,
        called: Option<String>,
    ) -> usize {
        job.mates.push(Mate { line, hole, shaft, fit, called });
        self.key(job);
        job.mates.len() - 1
    }

    /// Makes the last mate known by either of its features.
    fn key(&mut self, job: &Job) {
        let Some(mate) = job.mates.last() else { return };
        for feature in [mate.hole, mate.shaft] {
            self.mated.entry(feature).or_default().push(job.mates.len() - 1);
        }
    }

    /// The mates of a feature.
    pub(super) fn mates_at(&self, feature: usize) -> &[usize] {
        self.mated.get(&feature).map_or(&[], Vec::as_slice)
    }

    pub(super) fn pair(&mut self, told: &mut Told, want: &Wanted) {
        let one = told.job.features[want.feature].clone();
        // What its own line said: a later one may have changed it.
        let said = told.job.said.get(want.said).and_then(|said| said.nominal.as_ref());
        let size = said.or(one.nominal.as_ref()).and_then(NominalSize::size);
        let other_side = match one.side {
            SizeKind::Hole => SizeKind::Shaft,
            SizeKind::Shaft => SizeKind::Hole,
            side => side,
        };
        if let Some(to) = found::whole_name(told, want, other_side, size) {
            return self.join(&mut told.job, want, to);
        }
        let split =
            found::split_name(told, want, other_side).or_else(|| found::named_below(told, want));
        let want = split.as_ref().unwrap_or(want);
        let part = if want.name.is_empty() {
            // Only a fit: whoever is the same size and waits.
            if let Some(at) = self.mates_at(want.feature).first().copied() {
                let mate = &mut told.job.mates[at];
                if mate.fit.words.is_empty() {
                    mate.fit = want.fit.clone();
                }
                return;
            }
            if let Some(only) =
                size.and_then(|size| self.only_waiting(told, &one, other_side, size))
            {
                self.join(&mut told.job, want, only);
            }
            return;
        } else {
            let found = want
                .part
                .or_else(|| found::part_of(self, told, &want.name, one.part, other_side, size));
            // `jrnl A` names the feature itself.
            let said = stems(&want.name);
            let named = told.names.feature_exactly(&said.join(" ")).filter(|at| {
                let other = &told.job.features[*at];
                other.side == other_side && other.part != one.part
            });
            if let (Some(to), true) =
                (named, found.is_none_or(|part| told.names.parts[part] != said))
            {
                return self.join(&mut told.job, want, to);
            }
            match found {
                Some(part) => found::of_several(told, part, &want.name, &one.name),
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
                    told.new_part(&name, want.line)
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
            .find(|at| told.job.features[told.job.mates[*at].other(want.feature)].part == part);
        if let Some(existing) = existing {
            let mate = &mut told.job.mates[existing];
            if mate.fit.words.is_empty() {
                mate.fit = want.fit.clone();
            }
            told.job.said[want.said].mate.get_or_insert(existing);
            return;
        }
        if is_only_alike(told, want, part, size) {
            let words = format!("{} {}", want.fit.words, want.name);
            return told.remark(want.line, &words, Some(one.part));
        }
        let to = want
            .to
            .filter(|to| {
                let side = told.job.features[*to].side;
                side == other_side
                    || side == SizeKind::Other && one.side == SizeKind::Shaft
                    || side == SizeKind::Thread && one.side == SizeKind::Hole
            })
            .unwrap_or_else(|| found::mate_feature(self, told, part, want, other_side, size));
        let called = (stems(&want.name) != told.names.parts[part]).then(|| want.name.clone());
        let (hole, shaft) = if one.side == SizeKind::Shaft
            || one.side == SizeKind::Thread && told.inwardness(one.part) >= told.inwardness(part)
        {
            (to, want.feature)
        } else {
            (want.feature, to)
        };
        let made = self.add_mate(&mut told.job, (want.line, hole, shaft), want.fit.clone(), called);
        told.job.said[want.said].mate.get_or_insert(made);
    }

    /// Of the features that wait for a mate the only one of such a size on that side.
    pub(super) fn only_waiting(
        &self,
        told: &Told,
        one: &PartFeature,
        side: SizeKind,
        size: Length,
    ) -> Option<usize> {
        side.surface()?;
        let mut all = (0..told.job.features.len()).filter(|at| {
            let other = &told.job.features[*at];
            other.side == side
                && other.part != one.part
                && told.is_in_reach(*at, size)
                && self.mates_at(*at).is_empty()
        });
        all.next().filter(|_| all.next().is_none())
    }

    /// A mate of two features that are known.
    pub(super) fn join(&mut self, job: &mut Job, want: &Wanted, to: usize) {
        let outer = job.features[want.feature].side == SizeKind::Shaft;
        let (hole, shaft) = if outer { (to, want.feature) } else { (want.feature, to) };
        let found = self.mates_at(hole).iter().copied().find(|at| job.mates[*at].shaft == shaft);
        let at = found.unwrap_or_else(|| {
            self.add_mate(job, (want.line, hole, shaft), want.fit.clone(), None)
        });
        job.said[want.said].mate = Some(at);
    }
}
