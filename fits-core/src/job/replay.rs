//! A log played through the adviser: what is believed now, what the next
//! entry makes doubtful, and what a finished log teaches.

use super::{Entry, Gauge, PassLog, Seen};
use crate::{
    error::Error,
    shop::{
        adviser::{self, Adviser, FinishedPass, Prior, Settings, Story, story::Missed},
        verdict::{FormDeviation, Measured},
    },
    size::{Length, Limits},
    standards::{instruments::Uncertainty, iso286::Feature},
};

/// What makes an entry doubtful; it is asked about before it is taken.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "kebab-case"))]
#[expect(
    clippy::exhaustive_enums,
    reason = "each is told, or acted on, in its own way: a new one must not pass unseen"
)]
pub enum Doubt {
    /// The reading would fit in the other system of units.
    Unit {
        /// What was expected.
        expected: Length,
        /// Typed in inches as it should have been, or in millimetres.
        is_inch: bool,
    },
    /// The size changed and no pass lies between the readings.
    NoPass {
        /// What was expected.
        expected: Length,
        /// The reading before it.
        before: Length,
    },
    /// Metal came back: the part grew towards its bar, or the bore shrank.
    WrongWay {
        /// What was expected.
        expected: Length,
        /// The reading before it.
        before: Length,
    },
    /// The pass took far more or less than was dialled.
    Jump {
        /// What was expected.
        expected: Length,
        /// The reading before it.
        before: Length,
        /// What explains it; nothing where no story does.
        story: Option<Story>,
    },
    /// The cut is set past the last limit.
    PastLimit {
        /// How far.
        by: Length,
    },
    /// It is not inside its limits as far as is known.
    NotInLimits {
        /// The best estimate.
        size: Length,
        /// The chance that it is inside.
        good: f64,
    },
    /// It was not measured since the last pass.
    NotRead,
    /// One place is short of the limits still.
    Short {
        /// Its name, where it has one.
        place: Option<String>,
        /// Its size.
        size: Length,
    },
    /// Readings of one place differ by more than the instrument scatters.
    Scatters {
        /// By how much.
        by: Length,
    },
}

/// Readings of one place differ by so many of the instrument's deviations at
/// most; common practice, no source.
const MOST_SCATTER: i64 = 4;
/// A form takes so many tenths of the tolerance at most, to leave room to aim
/// at; common practice, no source.
const MOST_NARROWED: i128 = 7;
/// Less than this is not a slip, however fine the instrument.
const LEAST_SCATTER: Length = Length::from_tenth_nanometres(50_000);

impl PassLog {
    /// What the adviser is to keep to: what the owner sets, and steps of the
    /// log's dial. A turn that is smaller than such a step is another dial's, and
    /// a top slide is the lathe's.
    ///
    /// ```
    /// use fits_core::{job::{Opening, PassLog}, shop::adviser::Settings};
    /// use fits_core::standards::{instruments::Uncertainty, iso286::{Class, Feature}};
    /// let limits = "H7".parse::<Class>()?.limits("20mm".parse()?)?;
    /// let off = Uncertainty { repeat: "0.002mm".parse()?, bias: "0.002mm".parse()? };
    /// let (start, step) = ("19.6mm".parse()?, "0.05mm".parse()?);
    /// let log = PassLog::new(Opening::new(Feature::Hole, "H7", limits, start, step, ("gauge", off)));
    /// assert_eq!(log.settings(Settings::default()).step, step);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn settings(&self, owner: Settings) -> Settings {
        let step = self.opening.step;
        let turn = owner.dial_turn.filter(|turn| *turn >= step);
        let top_slide = owner.top_slide.filter(|_| self.opening.machine.is_none());
        owner.dial_division(step).dial_turn(turn).top_slide(top_slide)
    }

    fn instrument(&self) -> Uncertainty {
        Uncertainty { repeat: self.opening.repeat, bias: self.opening.bias }
    }

    /// What this was read with.
    fn read_with(&self, seen: Option<&Seen>) -> Uncertainty {
        match seen.and_then(|seen| seen.gauge.as_ref()) {
            Some(Gauge { repeat, bias, .. }) => Uncertainty { repeat: *repeat, bias: *bias },
            None => self.instrument(),
        }
    }

    /// The adviser after the entries that still stand; nothing where a line
    /// was lost and the size was not read since.
    ///
    /// A reading that was confirmed against what was expected is not asked for
    /// again; the adviser takes it as it takes any other.
    ///
    /// # Errors
    /// An entry that no adviser takes: the log was written by another hand.
    ///
    /// ```
    /// use fits_core::{
    ///     job::{Doubt, Entry, Opening, PassLog, Seen, VERSION},
    ///     shop::adviser::{Prior, Settings},
    ///     standards::iso286::Feature,
    /// };
    /// let opening = Opening {
    ///     version: VERSION,
    ///     feature: Feature::Hole,
    ///     nominal: "20mm".parse()?,
    ///     class: "H7".into(),
    ///     lower: "20mm".parse()?,
    ///     upper: "20.021mm".parse()?,
    ///     start: "19.6mm".parse()?,
    ///     step: "0.01mm".parse()?,
    ///     instrument: "bore gauge".into(),
    ///     repeat: "2um".parse()?,
    ///     bias: "1.5um".parse()?,
    ///     material: None,
    ///     overhang: None,
    ///     machine: None,
    /// };
    /// let mut log = PassLog::new(opening);
    /// let cut = |dial: &str, read: &str| {
    ///     let (dial, read) = (dial.parse()?, Some(read.parse()?));
    ///     Ok::<_, fits_core::Error>(Entry::Cut { dial, read, sure: false, seen: Seen::default() })
    /// };
    /// log.entries.push(cut("0.2mm", "19.79mm")?);
    /// let (prior, owner) = (Prior::usual(Feature::Hole, None, None), Settings::default());
    /// let adviser = log.adviser(prior, owner)?.expect("no line was lost");
    /// assert_eq!(adviser.settings().step, log.settings(owner).step);
    /// // Half a millimetre was taken where a tenth was dialled.
    /// let doubt = log.doubt(prior, owner, &cut("0.1mm", "20.39mm")?)?;
    /// assert!(matches!(doubt, Some(Doubt::Jump { .. })));
    /// assert_eq!(log.finished_passes()?.len(), 1);
    /// // It was read at one place.
    /// assert_eq!((log.form()?, log.short()?), (None, None));
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn adviser(&self, prior: Prior, owner: Settings) -> Result<Option<Adviser>, Error> {
        let mut adviser = Some(self.begun(self.opening.start, self.instrument(), prior, owner)?);
        for entry in self.standing() {
            adviser = match (adviser, entry) {
                (_, Entry::Lost) => None,
                (None, entry) => entry
                    .reading()
                    .map(|size| {
                        let gauge = self.read_with(entry.seen());
                        let mut begun = self.begun(size, gauge, prior, owner)?;
                        begun.take_up(self.instrument())?;
                        Ok(begun)
                    })
                    .transpose()?,
                (Some(adviser), entry) => Some(self.entered(adviser, &entry)?),
            };
        }
        Ok(adviser)
    }

    fn begun(
        &self,
        size: Length,
        instrument: Uncertainty,
        prior: Prior,
        owner: Settings,
    ) -> Result<Adviser, Error> {
        let limits = self.limits_of_deciding_place()?;
        Adviser::new(limits, self.opening.feature, size, prior, instrument, self.settings(owner))
    }

    fn entered(&self, mut adviser: Adviser, entry: &Entry) -> Result<Adviser, Error> {
        self.play(&mut adviser, entry)?;
        if let Entry::Cut { sure: true, .. }
        | Entry::Spring { sure: true, .. }
        | Entry::Read { sure: true, .. } = entry
        {
            adviser.confirm();
        }
        Ok(adviser)
    }

    /// The adviser takes up one entry, read with its own instrument.
    fn play(&self, adviser: &mut Adviser, entry: &Entry) -> Result<(), Error> {
        let readings = entry.readings(self.opening.feature);
        let entered = match entry {
            Entry::Cut { dial, .. } => adviser::Observed::Cut { dialled: *dial, readings },
            Entry::Spring { .. } => adviser::Observed::Spring { readings },
            Entry::Read { .. } => adviser::Observed::Read { readings },
            Entry::Undo | Entry::Done | Entry::Scrap | Entry::Lost => return Ok(()),
        };
        adviser.take_up(self.read_with(entry.seen()))?;
        adviser.enter(&entered)?;
        adviser.take_up(self.instrument())
    }

    /// What makes the next entry doubtful, if anything does.
    ///
    /// # Errors
    /// As [`PassLog::adviser`], or the entry is none that it takes.
    ///
    /// ```
    /// use fits_core::{job::{Doubt, Entry, Opening, PassLog, Seen}, shop::adviser::{Prior, Settings}};
    /// use fits_core::standards::{instruments::Uncertainty, iso286::{Class, Feature}};
    /// let limits = "H7".parse::<Class>()?.limits("20mm".parse()?)?;
    /// let off = Uncertainty { repeat: "0.002mm".parse()?, bias: "0.002mm".parse()? };
    /// let (start, step) = ("19.6mm".parse()?, "0.01mm".parse()?);
    /// let log = PassLog::new(Opening::new(Feature::Hole, "H7", limits, start, step, ("gauge", off)));
    /// let prior = Prior::usual(Feature::Hole, None, None);
    /// // Typed in inches where millimetres are meant.
    /// let (dial, read) = ("0.2mm".parse()?, Some("0.7795mm".parse()?));
    /// let entry = Entry::Cut { dial, read, sure: false, seen: Seen::default() };
    /// let doubt = log.doubt(prior, Settings::default(), &entry)?;
    /// assert!(matches!(doubt, Some(Doubt::Unit { is_inch: true, .. })));
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn doubt(
        &self,
        prior: Prior,
        owner: Settings,
        entry: &Entry,
    ) -> Result<Option<Doubt>, Error> {
        if let Some(by) = self.scatters(entry)? {
            return Ok(Some(Doubt::Scatters { by }));
        }
        let Some(mut adviser) = self.adviser(prior, owner)? else { return Ok(None) };
        let known = adviser.estimate()?;
        let mut passed = true;
        match entry {
            Entry::Cut { dial, read, .. } => {
                self.play(&mut adviser, entry)?;
                if read.is_none() {
                    let past = self.past_limit(known.size, *dial)?;
                    return Ok(past.is_positive().then_some(Doubt::PastLimit { by: past }));
                }
            }
            Entry::Spring { .. } => self.play(&mut adviser, entry)?,
            Entry::Read { .. } => {
                passed = !self.is_read();
                self.play(&mut adviser, entry)?;
            }
            Entry::Done if !self.is_read() => return Ok(Some(Doubt::NotRead)),
            Entry::Done if known.good < 0.5 => {
                return Ok(Some(Doubt::NotInLimits { size: known.size, good: known.good }));
            }
            Entry::Done => {
                return Ok(self.short()?.map(|(place, size)| Doubt::Short { place, size }));
            }
            _ => return Ok(None),
        }
        let (Some(surprise), Some(size)) = (adviser.surprise(), entry.reading()) else {
            return Ok(None);
        };
        let expected = surprise.expected;
        let before = self.last_reading();
        let story = match (entry, self.dialled_unread()?) {
            // Dialled in an entry of its own: it is the pass that missed, as if both were said
            // at once.
            (Entry::Read { .. }, Some(dialled)) => {
                let off = size.checked_sub(expected)?.in_micrometres().abs();
                Story::of(&Missed {
                    feature: self.opening.feature,
                    before,
                    dialled: Some(dialled),
                    expected,
                    expected_sd: Length::nearest_micrometres(off / surprise.deviations)?,
                    read: size,
                    dial_turn: owner.dial_turn,
                })?
            }
            _ => adviser.story(),
        };
        match story {
            Some(Story::OtherUnit { is_inch, .. }) => {
                return Ok(Some(Doubt::Unit { expected, is_inch }));
            }
            // Said before what the figure as typed would mean.
            Some(Story::Point { .. }) => return Ok(Some(Doubt::Jump { expected, before, story })),
            _ => {}
        }
        let came_back = match self.opening.feature {
            Feature::Hole => size < before,
            Feature::Shaft => size > before,
        };
        Ok(Some(if came_back {
            Doubt::WrongWay { expected, before }
        } else if passed {
            Doubt::Jump { expected, before, story }
        } else {
            Doubt::NoPass { expected, before }
        }))
    }

    /// What was dialled since the last reading.
    fn dialled_unread(&self) -> Result<Option<Length>, Error> {
        let mut all = None;
        for entry in self.standing().rev().take_while(|entry| entry.reading().is_none()) {
            if let Entry::Cut { dial, .. } = entry {
                all = Some(all.unwrap_or(Length::ZERO).checked_add(dial)?);
            }
        }
        Ok(all)
    }

    /// The limits that the deciding place is to end in: where the last readings
    /// tell of places that differ, so much inside the first limit that all of
    /// them come inside. A form too large for the tolerance narrows nothing.
    fn limits_of_deciding_place(&self) -> Result<Limits, Error> {
        let limits = self.opening.limits()?;
        let Some(by) = self.form()?.filter(|form| form.is_real()).map(|form| form.difference)
        else {
            return Ok(limits);
        };
        if by > limits.tolerance().checked_scale(MOST_NARROWED, 10)? {
            return Ok(limits);
        }
        match self.opening.feature {
            Feature::Hole => Limits::new(limits.lower().checked_add(by)?, limits.upper()),
            Feature::Shaft => Limits::new(limits.lower(), limits.upper().checked_sub(by)?),
        }
    }

    /// The last standing entry that was read at several places, and was the
    /// last that was read at all.
    pub fn last_places(&self) -> Option<Seen> {
        let last = self.standing().rev().find(|entry| entry.reading().is_some())?;
        last.seen().filter(|seen| seen.places.len() > 1).cloned()
    }

    /// How the places of the last readings differ; nothing where they were
    /// taken at one place.
    ///
    /// # Errors
    /// Readings that are not sizes.
    pub fn form(&self) -> Result<Option<FormDeviation>, Error> {
        let Some(seen) = self.last_places() else { return Ok(None) };
        let places: Vec<&[Length]> =
            seen.places.iter().map(|place| place.read.as_slice()).collect();
        Ok(Measured::of(&places, Some(self.read_with(Some(&seen))), None)?.form())
    }

    /// The place that the last readings leave short of the limits, where
    /// several were taken since the last pass.
    ///
    /// # Errors
    /// The limits of the log are crossed.
    pub fn short(&self) -> Result<Option<(Option<String>, Length)>, Error> {
        let limits = self.opening.limits()?;
        let seen = self.last_places().filter(|_| self.is_read());
        let Some((place, size)) = seen.as_ref().and_then(|it| it.behind(self.opening.feature))
        else {
            return Ok(None);
        };
        let is_short = match self.opening.feature {
            Feature::Hole => size < limits.lower(),
            Feature::Shaft => size > limits.upper(),
        };
        Ok(is_short.then(|| (place.place.clone(), size)))
    }

    /// By how much readings of one place differ, where no such instrument
    /// scatters so.
    fn scatters(&self, entry: &Entry) -> Result<Option<Length>, Error> {
        let repeat = self.read_with(entry.seen()).repeat;
        let most = repeat.checked_mul(MOST_SCATTER)?.max(LEAST_SCATTER);
        Ok(entry.seen().and_then(Seen::scatter).filter(|by| *by > most))
    }

    /// How far a cut is set past the last limit.
    fn past_limit(&self, size: Length, dial: Length) -> Result<Length, Error> {
        match self.opening.feature {
            Feature::Hole => size.checked_add(dial)?.checked_sub(self.opening.upper),
            Feature::Shaft => self.opening.lower.checked_sub(size.checked_sub(dial)?),
        }
    }

    /// The passes that were read before and after, for learning from.
    ///
    /// # Errors
    /// Out of range.
    pub fn finished_passes(&self) -> Result<Vec<FinishedPass>, Error> {
        let took_sd = self.opening.repeat.checked_scale(1_414_214, 1_000_000)?;
        let mut passes = Vec::new();
        let mut before = Some(self.opening.start);
        for entry in self.standing() {
            // Two instruments differ by what each is off, not by a pass alone.
            let is_own = entry.seen().is_none_or(|seen| seen.gauge.is_none());
            let read = entry.reading().filter(|_| is_own);
            match (entry, before, read) {
                (Entry::Cut { dial, sure: false, .. }, Some(from), Some(to)) => {
                    let took = match self.opening.feature {
                        Feature::Hole => to.checked_sub(from)?,
                        Feature::Shaft => from.checked_sub(to)?,
                    };
                    passes.push(FinishedPass { dialled: dial, took, took_sd });
                    before = read;
                }
                // Not measured after it: what it took alone is not known.
                (
                    Entry::Cut { .. } | Entry::Spring { .. } | Entry::Read { .. } | Entry::Lost,
                    ..,
                ) => before = read,
                (Entry::Undo | Entry::Done | Entry::Scrap, ..) => {}
            }
        }
        Ok(passes)
    }
}
