//! Threads, keys and matching parts, when the whole note is read.

use fits_core::job::whole::{FitSaid, Mate, Nominal, Side};

use super::{Reader, Wanted, record::in_reach};

impl Reader {
    /// A hub that went on the shaft and was bored out for a sleeve goes on the sleeve
    /// alone: its new size is out of reach of the shaft's.
    pub(super) fn outgrown(&mut self, wanted: &[Wanted]) {
        let size = |at: usize| self.job.features[at].nominal.as_ref().and_then(Nominal::size);
        // The later joint that takes the place of one, by either of its ends.
        let later = |mate: &Mate| {
            [mate.hole, mate.shaft].into_iter().find_map(|at| {
                let (one, other) = (&self.job.features[at], size(mate.other(at))?);
                let was = |(_, was): &(usize, Nominal)| {
                    was.size().is_some_and(|was| in_reach(was, other))
                };
                if self.is_in_reach(at, other) || !one.earlier.iter().any(was) {
                    return None;
                }
                let all = self.mates_at(at).iter().map(|at| &self.job.mates[*at]);
                all.filter(|next| next.line > mate.line)
                    .find(|next| size(next.other(at)).is_some_and(|of| self.is_in_reach(at, of)))
                    .map(|next| next.line)
            })
        };
        let ends: Vec<Option<usize>> = self.job.mates.iter().map(later).collect();
        if ends.iter().all(Option::is_none) {
            return;
        }
        let (mut kept, mut to) = (Vec::new(), Vec::new());
        for (mate, end) in std::mem::take(&mut self.job.mates).into_iter().zip(ends) {
            to.push(end.is_none().then_some(kept.len()));
            let Some(line) = end else {
                kept.push(mate);
                continue;
            };
            let names = [mate.hole, mate.shaft].map(|at| self.job.full_name(at));
            let text = format!("the {} has outgrown its joint with the {}", names[0], names[1]);
            let at = wanted.iter().find(|want| want.line == line).map(|want| want.at.clone());
            let answer = "it is left out; write it with its sizes if it still holds";
            self.ask(line, at.unwrap_or_default(), text, Some(answer.into()));
        }
        for said in &mut self.job.said {
            said.mate = said.mate.and_then(|mate| to[mate]);
        }
        self.mated.clear();
        for mate in kept {
            self.add_mate(mate);
        }
    }

    /// A screw and a nut of one thread go together.
    pub(super) fn threads(&mut self) {
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
            let joined = |key: &usize| {
                self.mates_at(keyway).iter().any(|at| self.job.mates[*at].other(keyway) == *key)
            };
            if let Some(key) = key.filter(|key| one.nominal.is_some() && !joined(key)) {
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
    pub(super) fn both_ways(&mut self) {
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
    pub(super) fn matching(&mut self, wanted: &[Wanted]) {
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
