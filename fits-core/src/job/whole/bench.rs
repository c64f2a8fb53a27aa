//! What to do at the bench: which side of a joint first and why, what cannot
//! pass, what cannot both be met, what is next.
//!
//! The order of making and the passing over are common practice, no source.

use crate::{
    error::Error,
    job::whole::{Job, Mate, NominalSize, Paired, PartFeature, SizeKind, worked::Index},
    size::{Length, Limits},
    standards::{iso286::Feature as Surface, thread},
};

/// Why one side of a joint is made first.
///
/// ```
/// use fits_core::job::whole::First;
/// assert_eq!(First::Bought.words(), "it is bought and comes as it is");
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[cfg_attr(feature = "serde", serde(rename_all = "snake_case"))]
#[non_exhaustive]
pub enum First {
    /// It is measured already.
    Measured,
    /// It is bought: it comes as it is.
    Bought,
    /// A bush is pressed in first: its bore closes in, and is measured there.
    PressedIn,
    /// The nut is cut to match the screw.
    Screw,
    /// A hole is harder to hold to a size; a shaft is turned to suit it.
    Hole,
}

impl First {
    /// Why, in words.
    pub const fn words(self) -> &'static str {
        match self {
            Self::Measured => "it is measured already",
            Self::Bought => "it is bought and comes as it is",
            Self::PressedIn => "press the bush in first and mic its bore there: it closes in",
            Self::Screw => "the nut is cut to match the screw",
            Self::Hole => "a hole is harder to hold; the shaft is turned to suit it",
        }
    }
}

/// A part that cannot reach its seat.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct Blocked {
    /// The joint.
    pub mate: usize,
    /// What stands before the seat on one side, too large to pass.
    pub before: usize,
    /// What stands behind it.
    pub behind: usize,
    /// The hole that must pass.
    pub hole: Length,
}

/// The end play that lengths leave.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct EndPlay {
    /// The length between the faces of the housings.
    pub between: usize,
    /// The length between the shoulders of the shaft.
    pub shoulders: usize,
    /// What is left.
    pub left: Length,
    /// The feature that says what is wanted, if any.
    pub wanted: Option<usize>,
    /// Is it what is wanted?
    pub is_met: Option<bool>,
}

/// A side of a joint that two joints want differently.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct Conflict {
    /// The feature.
    pub feature: usize,
    /// The two joints.
    pub mates: [usize; 2],
}

impl Job {
    /// Is a feature told apart into several that stand for themselves?
    ///
    /// ```
    /// use fits_core::{job::whole::{PartFeature, Job, Part, SizeKind}, size::Unit};
    /// let mut job = Job::default();
    /// job.parts = vec![Part::default()];
    /// // Two journals of one name are told apart behind it.
    /// job.features = vec![PartFeature::new(0, "journal", SizeKind::Shaft, Unit::Inch, None); 3];
    /// job.features[0].instances = vec![1, 2];
    /// assert!(job.is_split(0) && !job.is_split(1));
    /// ```
    pub fn is_split(&self, feature: usize) -> bool {
        self.features.get(feature).is_some_and(|feature| !feature.instances.is_empty())
    }

    fn is_bought(&self, feature: usize) -> bool {
        let part = self.features.get(feature).and_then(|feature| self.parts.get(feature.part));
        part.is_some_and(|part| part.bought)
    }

    /// The side of a joint to make first, and why.
    ///
    /// ```
    /// use fits_core::job::whole::{PartFeature, First, FitSaid, Job, Mate, NominalSize, Part, SizeKind};
    /// use fits_core::size::Unit;
    /// let size = |text: &str| text.parse().map(NominalSize::Size);
    /// let mate = Mate { line: 1, hole: 0, shaft: 1, fit: FitSaid::default(), called: None };
    /// let mut job = Job::default();
    /// job.parts = vec![Part::default(), Part::default()];
    /// job.features = vec![
    ///     PartFeature::new(0, "bore", SizeKind::Hole, Unit::Inch, size("3/4in")?),
    ///     PartFeature::new(1, "pin", SizeKind::Shaft, Unit::Inch, size("3/4in")?),
    /// ];
    /// assert!(!job.is_split(1));
    /// assert_eq!(job.first(&mate), (0, First::Hole));
    /// job.parts[1].bought = true;
    /// assert_eq!(job.first(&mate), (1, First::Bought));
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn first(&self, mate: &Mate) -> (usize, First) {
        let read = |feature: usize| {
            self.features.get(feature).is_some_and(|feature| feature.reading().is_some())
        };
        let side = self.features.get(mate.hole).map(|feature| feature.side);
        let bush = self.features.get(mate.hole).is_some_and(|hole| {
            let is_bush = self
                .parts
                .get(hole.part)
                .is_some_and(|part| part.name.to_lowercase().contains("bush"));
            is_bush && self.features.get(mate.shaft).is_some_and(|shaft| shaft.part != hole.part)
        });
        if side == Some(SizeKind::Thread) {
            return (mate.shaft, First::Screw);
        }
        match (read(mate.hole), read(mate.shaft)) {
            (true, false) => return (mate.hole, First::Measured),
            (false, true) => return (mate.shaft, First::Measured),
            _ => {}
        }
        match (self.is_bought(mate.hole), self.is_bought(mate.shaft)) {
            (_, true) => (mate.shaft, First::Bought),
            (true, false) if !bush => (mate.hole, First::Bought),
            _ if bush => (mate.hole, First::PressedIn),
            _ => (mate.hole, First::Hole),
        }
    }

    /// The largest that a feature stands in the way of a part slid along it.
    fn stands(feature: &PartFeature) -> Option<Length> {
        if let Some(reading) = feature.reading() {
            return Some(reading.size);
        }
        match feature.nominal.as_ref()? {
            NominalSize::Size(size) => Some(*size),
            NominalSize::Between(_, upper) => Some(*upper),
            NominalSize::Thread(name) => {
                let (designation, _) = thread::scan_expected(name)?.ok()?;
                Some(designation.resolve().ok()?.major())
            }
        }
    }

    /// Parts that cannot reach their seats along a shaft, from either end, with
    /// the features in the order of the note.
    pub fn blocked(&self) -> Vec<Blocked> {
        let index = Index::of(self);
        let mut found = Vec::new();
        for part in 0..self.parts.len() {
            let along: Vec<usize> = index
                .features_of(self, part)
                .filter(|(at, feature)| {
                    matches!(feature.side, SizeKind::Shaft | SizeKind::Thread)
                        && !feature.implied
                        && !self.is_split(*at)
                })
                .map(|(at, _)| at)
                .collect();
            for (place, &seat) in along.iter().enumerate() {
                let mates = index.mates_of(self, seat).filter(|(_, mate)| mate.shaft == seat);
                for (mate, joint) in mates {
                    let Some(hole) = self.features.get(joint.hole).and_then(|hole| {
                        (hole.side == SizeKind::Hole).then(|| Self::stands(hole)).flatten()
                    }) else {
                        continue;
                    };
                    let in_way = |at: &&usize| {
                        self.features
                            .get(**at)
                            .and_then(Self::stands)
                            .is_some_and(|size| size > hole)
                    };
                    let before = along[..place].iter().find(in_way);
                    let behind = along[place + 1..].iter().find(in_way);
                    if let (Some(&before), Some(&behind)) = (before, behind) {
                        found.push(Blocked { mate, before, behind, hole });
                    }
                }
            }
        }
        found
    }

    /// End play, where the note names the length between the housings' faces
    /// and the one between the shoulders.
    pub fn end_play(&self) -> Option<EndPlay> {
        let named = |words: &[&str]| {
            self.features.iter().position(|feature| {
                let name = feature.name.to_lowercase();
                feature.side == SizeKind::Length
                    && matches!(feature.nominal, Some(NominalSize::Size(_)))
                    && words.iter().any(|word| name.contains(word))
            })
        };
        let shoulders = named(&[
            "shoulders",
            "shldrs",
            "shoulder to shoulder",
            "shldr-shldr",
            "shoulder-shoulder",
            "shldr to shldr",
        ])?;
        let between = named(&[
            "inside to inside",
            "face to face",
            "face-face",
            "between bush",
            "between face",
            "gap",
            "between flange",
            "between housing",
        ])?;
        let size = |at: usize| self.features.get(at)?.nominal.as_ref()?.size();
        let read = |at: usize| {
            self.features.get(at)?.reading().map(|reading| reading.size).or_else(|| size(at))
        };
        let left = read(between)?.checked_sub(read(shoulders)?).ok()?;
        let wanted = self.features.iter().position(|feature| {
            let name = feature.name.to_lowercase();
            feature.side == SizeKind::Length
                && ["play", "float"].iter().any(|word| name.contains(word))
        });
        let is_met = wanted.and_then(|at| match self.features.get(at)?.nominal.as_ref()? {
            NominalSize::Between(lower, upper) => Some(*lower <= left && left <= *upper),
            _ => None,
        });
        Some(EndPlay { between, shoulders, left, wanted, is_met })
    }

    /// The limits that a feature is to be cut to, by all its joints.
    ///
    /// # Errors
    /// As [`Job::pair`].
    ///
    /// ```
    /// use fits_core::job::whole::{PartFeature, FitSaid, Job, Mate, NominalSize, Part, SizeKind};
    /// use fits_core::{shop::words::Word, size::Unit};
    /// let size = NominalSize::Size("20mm".parse()?);
    /// let mut job = Job::default();
    /// job.parts = vec![Part::default(), Part::default()];
    /// job.features = vec![
    ///     PartFeature::new(0, "bore", SizeKind::Hole, Unit::Millimetre, size.clone()),
    ///     PartFeature::new(1, "journal", SizeKind::Shaft, Unit::Millimetre, size),
    /// ];
    /// let mut fit = FitSaid::default();
    /// fit.word = Some(Word::find("slip")?);
    /// job.mates = vec![Mate { line: 1, hole: 0, shaft: 1, fit, called: None }];
    /// // `slip` is H7/g6 in millimetres.
    /// let (limits, mate) = job.limits(1).expect("a joint")?;
    /// assert_eq!((limits.to_string().as_str(), mate), ("19.980 to 19.993 mm", 0));
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn limits(&self, feature: usize) -> Option<Result<(Limits, usize), Error>> {
        let pairs = self.mates_of(feature).filter_map(|(at, mate)| Some((at, self.pair(mate)?)));
        self.limits_by(feature, pairs)
    }

    /// The limits of a feature by the joints that it takes part in.
    pub(super) fn limits_by(
        &self,
        feature: usize,
        pairs: impl Iterator<Item = (usize, Result<Paired, Error>)>,
    ) -> Option<Result<(Limits, usize), Error>> {
        let one = self.features.get(feature)?;
        let surface = one.side.surface()?;
        if let (Some(off), Some(nominal)) =
            (one.deviations, one.nominal.as_ref().and_then(NominalSize::size))
        {
            return Some(off.about(nominal).map(|limits| (limits, usize::MAX)));
        }
        let mut best: Option<(Limits, usize, bool)> = None;
        for (at, pair) in pairs {
            let pair = match pair {
                Err(error) => return Some(Err(error)),
                Ok(pair) => pair,
            };
            if let Some(limits) = pair.cut(surface).limits {
                let follows = pair.cut(other(surface)).in_hand.is_some();
                best = match best {
                    None => Some((limits, at, follows)),
                    // Both mates are measured: what suits both.
                    Some((before, first, true)) if follows => {
                        let lower = before.lower().max(limits.lower());
                        let upper = before.upper().min(limits.upper());
                        Limits::new(lower, upper)
                            .ok()
                            .map(|both| (both, first, true))
                            .or(Some((before, first, true)))
                    }
                    Some((_, _, false)) if follows => Some((limits, at, true)),
                    kept => kept,
                };
            }
        }
        if let Some((limits, at, _)) = best {
            return Some(Ok((limits, at)));
        }
        let class: crate::standards::iso286::Class = one.class.as_ref()?.parse().ok()?;
        let nominal = one.nominal.as_ref().and_then(NominalSize::size)?;
        Some(class.limits(nominal).map(|limits| (limits, usize::MAX)))
    }

    /// Joints that one feature cannot both meet, with what was read.
    pub fn conflicts(&self) -> Vec<Conflict> {
        let index = Index::of(self);
        let mut found = Vec::new();
        for feature in 0..self.features.len() {
            let Some(surface) = self.features[feature].side.surface() else { continue };
            // One joint alone is in no conflict.
            if index.mates_of(self, feature).nth(1).is_none() {
                continue;
            }
            let demands: Vec<(usize, Limits)> = index
                .mates_of(self, feature)
                .filter_map(|(at, mate)| {
                    let pair = self.pair(mate)?.ok()?;
                    let follows = pair.cut(other(surface)).in_hand.is_some();
                    let own = self.features[feature].reading().is_some();
                    follows.then_some(())?;
                    if own { None } else { Some((at, pair.cut(surface).limits?)) }
                })
                .collect();
            for (at, (first, one)) in demands.iter().enumerate() {
                for (second, two) in &demands[at + 1..] {
                    if one.lower() > two.upper() || two.lower() > one.upper() {
                        found.push(Conflict { feature, mates: [*first, *second] });
                    }
                }
            }
        }
        found
    }

    /// The feature to make next: not done, not read, and the side of its joint
    /// that comes first is there.
    pub fn next(&self) -> Option<usize> {
        let waits = |at: usize| {
            let feature = &self.features[at];
            !feature.done
                && feature.reading().is_none()
                && !self.is_split(at)
                && !self.is_bought(at)
                && feature.side.surface().is_some()
                && feature.nominal.is_some()
        };
        let index = Index::of(self);
        let ready = |at: usize| {
            index.mates_of(self, at).all(|(_, mate)| {
                let (first, _) = self.first(mate);
                first == at || !waits(first)
            })
        };
        let all = || (0..self.features.len()).filter(|at| waits(*at));
        let has_mate = |at: &usize| index.mates_of(self, *at).next().is_some();
        all()
            .filter(has_mate)
            .find(|at| ready(*at))
            .or_else(|| all().find(|at| ready(*at)))
            .or_else(|| all().next())
    }
}

const fn other(surface: Surface) -> Surface {
    match surface {
        Surface::Hole => Surface::Shaft,
        Surface::Shaft => Surface::Hole,
    }
}
