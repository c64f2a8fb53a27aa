//! A worn joint that is bushed: the sleeve stands between the two that went together.

use fits_core::job::whole::SizeKind;

use super::Joints;
use crate::note::{
    told::{Told, in_reach},
    wants::Wanted,
};

/// `sleeve: 1.001 od, .875 bore`, where a hub was bored out to 1.000 and ran on a shaft of
/// 7/8: the sleeve goes in the hub, the shaft in the sleeve.
pub(super) fn sleeved(joints: &mut Joints, told: &mut Told) {
    for part in 0..told.job.parts.len() {
        let is_sleeve = told.names.parts[part]
            .last()
            .is_some_and(|word| matches!(word.as_str(), "sleeve" | "bush" | "liner"));
        let alone = |side: SizeKind| {
            let mut all = told.features_of(part).filter(|(_, one)| one.side == side);
            let found = all.next().filter(|_| all.next().is_none())?;
            joints.mates_at(found.0).is_empty().then_some(found.0)
        };
        let (true, Some(od), Some(bore)) =
            (is_sleeve, alone(SizeKind::Shaft), alone(SizeKind::Hole))
        else {
            continue;
        };
        let size = |at: usize| told.job.features[at].size();
        let line = told.job.features[od].line;
        let (Some(outside), Some(inside)) = (size(od), size(bore)) else { continue };
        let pair = told.job.mates.iter().find(|mate| {
            let hole = &told.job.features[mate.hole];
            let last = hole.readings.iter().rfind(|one| one.line <= line).map(|one| one.size);
            let is_bored = last.into_iter().chain(hole.size()).any(|is| in_reach(is, outside));
            mate.line < line
                && is_bored
                && size(mate.shaft).is_some_and(|shaft| in_reach(shaft, inside))
        });
        let Some((hole, shaft)) = pair.map(|mate| (mate.hole, mate.shaft)) else { continue };
        for (feature, to) in [(od, hole), (bore, shaft)] {
            let said = told.job.said.iter().position(|said| said.feature == feature);
            if let Some(said) = said {
                let want = Wanted { line, feature, said, ..Wanted::default() };
                joints.join(&mut told.job, &want, to);
            }
        }
    }
}
