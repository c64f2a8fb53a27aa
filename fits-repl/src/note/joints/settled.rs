//! Threads, keys and matching parts, when the whole note is read.

use fits_core::job::whole::{FitSaid, Job, Mate, NominalSize, SizeKind};

use super::Joints;
use crate::note::{
    told::{Told, in_reach},
    wants::Wanted,
};

/// A hub that went on the shaft and was bored out for a sleeve goes on the sleeve
/// alone: its new size is out of reach of the shaft's.
pub(super) fn outgrown(joints: &mut Joints, told: &mut Told, wanted: &[Wanted]) {
    let size = |at: usize| told.job.features[at].size();
    // The later joint that takes the place of one, by either of its ends.
    let later = |mate: &Mate| {
        [mate.hole, mate.shaft].into_iter().find_map(|at| {
            let (one, other) = (&told.job.features[at], size(mate.other(at))?);
            let was = |(_, was): &(usize, NominalSize)| {
                was.size().is_some_and(|was| in_reach(was, other))
            };
            if told.is_in_reach(at, other) || !one.earlier.iter().any(was) {
                return None;
            }
            let all = joints.mates_at(at).iter().map(|at| &told.job.mates[*at]);
            all.filter(|next| next.line > mate.line)
                .find(|next| size(next.other(at)).is_some_and(|of| told.is_in_reach(at, of)))
                .map(|next| next.line)
        })
    };
    let ends: Vec<Option<usize>> = told.job.mates.iter().map(later).collect();
    if ends.iter().all(Option::is_none) {
        return;
    }
    let (mut kept, mut to) = (Vec::new(), Vec::new());
    for (mate, end) in std::mem::take(&mut told.job.mates).into_iter().zip(ends) {
        to.push(end.is_none().then_some(kept.len()));
        let Some(line) = end else {
            kept.push(mate);
            continue;
        };
        let names = [mate.hole, mate.shaft].map(|at| told.job.full_name(at));
        let text = format!("the {} has outgrown its joint with the {}", names[0], names[1]);
        let at = wanted.iter().find(|want| want.line == line).map(|want| want.at.clone());
        let answer = "it is left out; write it with its sizes if it still holds";
        told.ask(line, at.unwrap_or_default(), text, Some(answer.into()));
    }
    for said in &mut told.job.said {
        said.mate = said.mate.and_then(|mate| to[mate]);
    }
    joints.mated.clear();
    for mate in kept {
        told.job.mates.push(mate);
        joints.key(&told.job);
    }
}

/// A screw and a nut of one thread go together.
pub(super) fn threads(joints: &mut Joints, told: &mut Told) {
    // A keyway and the key of its width.
    for keyway in 0..told.job.features.len() {
        let one = &told.job.features[keyway];
        if one.side != SizeKind::Other {
            continue;
        }
        let key = (0..told.job.features.len()).find(|at| {
            let key = &told.job.features[*at];
            one.side == SizeKind::Other
                && one.part != key.part
                && key.side == SizeKind::Other
                && key.nominal == one.nominal
                && told.names.parts[key.part].iter().any(|word| word == "key")
        });
        let joined = |key: &usize| {
            joints.mates_at(keyway).iter().any(|at| told.job.mates[*at].other(keyway) == *key)
        };
        if let Some(key) = key.filter(|key| one.nominal.is_some() && !joined(key)) {
            let line = one.line;
            joints.add_mate(&mut told.job, (line, keyway, key), FitSaid::default(), None);
        }
    }
    let threads: Vec<usize> = (0..told.job.features.len())
        .filter(|at| told.job.features[*at].side == SizeKind::Thread)
        .collect();
    for &nut in &threads {
        let is_nut = |told: &Told, at: usize| {
            told.names.parts[told.job.features[at].part].iter().any(|word| word == "nut")
        };
        if !is_nut(told, nut) || !joints.mates_at(nut).is_empty() {
            continue;
        }
        let same = |told: &Told, at: usize| {
            told.job.features[at].nominal == told.job.features[nut].nominal
                && told.job.features[nut].nominal.is_some()
        };
        let screw = threads.iter().copied().find(|at| !is_nut(told, *at) && same(told, *at));
        if let Some(screw) = screw {
            let line = told.job.features[nut].line;
            joints.add_mate(&mut told.job, (line, nut, screw), FitSaid::default(), None);
        }
    }
}

/// A line that says a feature says its mate too, whoever said it first.
pub(super) fn both_ways(job: &mut Job) {
    let mut groups: Vec<usize> = (0..job.features.len()).collect();
    for (at, feature) in job.features.iter().enumerate() {
        for instance in &feature.instances {
            groups[*instance] = at;
        }
    }
    let mut of: Vec<Option<usize>> = vec![None; job.features.len()];
    for (at, mate) in job.mates.iter().enumerate() {
        of[mate.hole] = of[mate.hole].or(Some(at));
        of[mate.shaft] = of[mate.shaft].or(Some(at));
    }
    for said in &mut job.said {
        if said.mate.is_none() {
            said.mate = of[said.feature].or(of[groups[said.feature]]);
        }
    }
}

/// A thread cut to match another has its size.
pub(super) fn matching(joints: &Joints, told: &mut Told, wanted: &[Wanted]) {
    for want in wanted.iter().filter(|want| want.matches) {
        let Some(mate) =
            joints.mates_at(want.feature).first().map(|at| told.job.mates[*at].clone())
        else {
            continue;
        };
        let other = told.job.features[mate.other(want.feature)].clone();
        let one = &mut told.job.features[want.feature];
        if one.nominal.is_none() {
            (one.nominal, one.unit, one.unit_from) =
                (other.nominal.clone(), other.unit, other.unit_from);
            told.job.said[want.said].nominal.clone_from(&other.nominal);
        }
        if other.nominal.is_none() {
            let names = [want.feature, mate.other(want.feature)].map(|at| told.job.full_name(at));
            let text =
                format!("the {} is to match the {}, which has no size either", names[0], names[1]);
            told.ask(want.line, want.at.clone(), text, Some("give one of the two its size".into()));
        }
    }
    // What is said of a feature of no size that its mate has.
    for at in 0..told.job.mates.len() {
        let (hole, shaft) = (told.job.mates[at].hole, told.job.mates[at].shaft);
        for (one, other) in [(hole, shaft), (shaft, hole)] {
            if told.job.features[one].nominal.is_none()
                && told.job.features[one].side == told.job.features[other].side
            {
                let from = told.job.features[other].clone();
                told.job.features[one].nominal = from.nominal;
            }
        }
    }
}
