//! A job with each of its joints worked out once, for what asks of all of them.

use crate::{
    error::Error,
    job::whole::{Job, Mate, Paired, PartFeature},
    size::Limits,
};

/// The features of each part and the mates of each feature, by their indexes.
pub(super) struct Index {
    features: Vec<Vec<usize>>,
    mates: Vec<Vec<usize>>,
}

impl Index {
    pub(super) fn of(job: &Job) -> Self {
        let mut features = vec![Vec::new(); job.parts.len()];
        for (at, feature) in job.features.iter().enumerate() {
            if let Some(of_part) = features.get_mut(feature.part) {
                of_part.push(at);
            }
        }
        let mut mates = vec![Vec::new(); job.features.len()];
        for (at, mate) in job.mates.iter().enumerate() {
            for feature in [Some(mate.hole), (mate.shaft != mate.hole).then_some(mate.shaft)] {
                if let Some(of_feature) = feature.and_then(|feature| mates.get_mut(feature)) {
                    of_feature.push(at);
                }
            }
        }
        Self { features, mates }
    }

    pub(super) fn features_of<'a>(
        &'a self,
        job: &'a Job,
        part: usize,
    ) -> impl Iterator<Item = (usize, &'a PartFeature)> {
        let all = self.features.get(part).into_iter().flatten();
        all.filter_map(|at| Some((*at, job.features.get(*at)?)))
    }

    pub(super) fn mates_of<'a>(
        &'a self,
        job: &'a Job,
        feature: usize,
    ) -> impl Iterator<Item = (usize, &'a Mate)> {
        let all = self.mates.get(feature).into_iter().flatten();
        all.filter_map(|at| Some((*at, job.mates.get(*at)?)))
    }
}

/// A job as it stands, with each joint worked out: what it answers is what the job
/// itself answers, without looking through all features and mates each time.
///
/// ```
/// use fits_core::job::whole::{PartFeature, Job, Part, SizeKind};
/// use fits_core::size::Unit;
/// let mut job = Job::default();
/// job.parts = vec![Part::default()];
/// job.features = vec![PartFeature::new(0, "bore", SizeKind::Hole, Unit::Inch, None)];
/// let worked = job.worked();
/// assert_eq!(worked.features_of(0).count(), 1);
/// assert_eq!(worked.mates_of(0).count(), 0);
/// assert_eq!(worked.limits(0), job.limits(0));
/// ```
pub struct Worked<'a> {
    job: &'a Job,
    index: Index,
    pairs: Vec<Option<Result<Paired, Error>>>,
}

impl core::fmt::Debug for Worked<'_> {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        f.debug_struct("Worked").field("pairs", &self.pairs).finish_non_exhaustive()
    }
}

impl Job {
    /// Each joint worked out once.
    ///
    /// ```
    /// use fits_core::job::whole::Job;
    /// // A note that says nothing has nothing to work out.
    /// assert!(Job::default().worked().pair(0).is_none());
    /// ```
    pub fn worked(&self) -> Worked<'_> {
        let pairs = self.mates.iter().map(|mate| self.pair(mate)).collect();
        Worked { job: self, index: Index::of(self), pairs }
    }
}

impl Worked<'_> {
    /// As [`Job::features_of`].
    ///
    /// ```
    /// use fits_core::{job::whole::{PartFeature, Job, Part, SizeKind}, size::Unit};
    /// let mut job = Job::default();
    /// job.parts = vec![Part::default()];
    /// job.features = vec![PartFeature::new(0, "bore", SizeKind::Hole, Unit::Inch, None)];
    /// let worked = job.worked();
    /// assert!(worked.features_of(0).eq(job.features_of(0)));
    /// ```
    pub fn features_of(&self, part: usize) -> impl Iterator<Item = (usize, &PartFeature)> {
        self.index.features_of(self.job, part)
    }

    /// As [`Job::mates_of`].
    ///
    /// ```
    /// use fits_core::{job::whole::{PartFeature, FitSaid, Job, Mate, Part, SizeKind}, size::Unit};
    /// let mut job = Job::default();
    /// job.parts = vec![Part::default(), Part::default()];
    /// job.features = vec![
    ///     PartFeature::new(0, "bore", SizeKind::Hole, Unit::Inch, None),
    ///     PartFeature::new(1, "journal", SizeKind::Shaft, Unit::Inch, None),
    /// ];
    /// job.mates = vec![Mate { line: 1, hole: 0, shaft: 1, fit: FitSaid::default(), called: None }];
    /// let worked = job.worked();
    /// assert_eq!(worked.mates_of(1).count(), 1);
    /// ```
    pub fn mates_of(&self, feature: usize) -> impl Iterator<Item = (usize, &Mate)> {
        self.index.mates_of(self.job, feature)
    }

    /// As [`Job::pair`], of the mate of that index.
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
    /// let worked = job.worked();
    /// let joint = worked.pair(0).expect("the first mate").as_ref().expect("worked out");
    /// assert_eq!(joint.wanted.to_string(), "0.007 to 0.041 mm");
    /// assert!(worked.pair(1).is_none());
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn pair(&self, mate: usize) -> Option<&Result<Paired, Error>> {
        self.pairs.get(mate)?.as_ref()
    }

    /// As [`Job::limits`].
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
    /// let (limits, _) = job.worked().limits(1).expect("a joint")?;
    /// assert_eq!(limits.to_string(), "19.980 to 19.993 mm");
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn limits(&self, feature: usize) -> Option<Result<(Limits, usize), Error>> {
        let of = |(at, _): (usize, &Mate)| Some((at, self.pair(at)?.clone()));
        self.job.limits_by(feature, self.mates_of(feature).filter_map(of))
    }
}
