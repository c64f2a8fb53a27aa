//! What to dial next, from what was dialled and read so far.
//!
//! The model: a pass changes the diameter by cut factor × dialled + offset,
//! and by what passes scatter; a reading is off by the instrument's bias, the
//! same each time, and by what its readings scatter. From stated priors the
//! state is brought up to date after each pass and reading ([`Adviser`]); the
//! next step is chosen by dynamic programming. A pass that misses by far is
//! taken for a slip before it is taken for the tool.

mod ahead;
mod entries;
mod figures;
mod kinds;
mod learn;
mod next;
mod scales;
mod settings;
mod slip;
mod state;
pub mod story;

pub use learn::{FinishedPass, learn};
pub use next::{Action, Because, Next};
pub use settings::{Settings, Split, TOP_SLIDE_DEGREES};
pub use story::Story;

pub use self::figures::{Estimate, Observed, Prior, Remark, Surprise};
use self::{ahead::Shared, kinds::Kinds, slip::Slip, state::State};
use crate::{
    error::Error,
    size::{Length, Limits},
    speech::say,
    standards::{instruments::Uncertainty, iso286::Feature},
};

/// Keeps up with a pass log and says what to dial next.
///
/// It has no clock and no chance in it: the same entries give the same
/// advice, so that undoing is replaying all but the last.
///
/// ```
/// use fits_core::{Length, standards::{instruments::Uncertainty, iso286::{Class, Feature}}};
/// use fits_core::shop::adviser::{Action, Adviser, Prior, Settings};
/// let class: Class = "H7".parse()?;
/// let limits = class.limits(Length::from_millimetres(20)?)?;
/// let um = Length::from_micrometres;
/// let prior = Prior {
///     gain: 0.97, gain_sd: 0.04, offset: Length::ZERO, offset_sd: um(6)?, scatter: um(2)?,
/// };
/// let gauge = Uncertainty { repeat: um(2)?, bias: um(2)? };
/// let mut adviser = Adviser::new(
///     limits, Feature::Hole, "19.6mm".parse()?, prior, gauge, Settings::default(),
/// )?;
/// let first = adviser.next();
/// assert_eq!(first.action, Action::Cut);
/// assert!(first.measuring); // the tool's spring is not known yet
/// adviser.cut("0.30mm".parse()?, &["19.885mm".parse()?])?;
/// assert!(adviser.estimate()?.gain < 0.97);
/// assert_eq!((adviser.surprise(), adviser.story(), adviser.slips()), (None, None, 0));
/// assert_eq!(adviser.settings(), &Settings::default());
/// // What the tool takes is not yet told apart from what was expected of it.
/// assert_eq!(adviser.remark(), None);
/// assert_eq!(adviser.limits(), limits);
/// # Ok::<(), fits_core::Error>(())
/// ```
#[derive(Clone, Debug, PartialEq)]
pub struct Adviser {
    limits: Limits,
    feature: Feature,
    prior: Prior,
    instrument: Uncertainty,
    /// The instrument that was in hand before, and may be again.
    put_down: Option<Uncertainty>,
    settings: Settings,
    kinds: Kinds,
    /// All kinds as one.
    state: State,
    /// What the last cut was set to, for a spring pass after it.
    last: f64,
    /// Dialled and taken since: is the tool's way known from this log?
    cuts: u32,
    surprise: Option<Surprise>,
    story: Option<Story>,
    /// Passes in a row that surprised.
    slips: u32,
    /// Measured passes that took what was to be expected.
    agreed: u32,
    /// A pass slipped, and no two passes agreed since.
    doubted: bool,
    /// The last slip, until a pass after it decides what it was.
    slip: Option<Slip>,
    /// A pass was made since the last reading.
    unread: bool,
    /// What lies ahead near size.
    ahead: Shared,
}

impl Adviser {
    /// Before the first pass; `start` is read with the same instrument.
    ///
    /// # Errors
    /// A figure that has no sense, or out of range.
    ///
    /// ```
    /// use fits_core::shop::adviser::{Adviser, Prior, Settings};
    /// use fits_core::standards::{instruments::Uncertainty, iso286::{Class, Feature}};
    /// let hole = "H7".parse::<Class>()?.limits("20mm".parse()?)?;
    /// let gauge = Uncertainty { repeat: "2um".parse()?, bias: "2um".parse()? };
    /// let usual = Prior::usual(Feature::Hole, None, None);
    /// let start = "19.6mm".parse()?;
    /// let adviser = Adviser::new(hole, Feature::Hole, start, usual, gauge, Settings::default())?;
    /// assert_eq!(adviser.slips(), 0);
    /// // A risk of 2 has no sense.
    /// let settings = Settings::default().risk(2.0);
    /// assert!(Adviser::new(hole, Feature::Hole, start, usual, gauge, settings).is_err());
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn new(
        limits: Limits,
        feature: Feature,
        start: Length,
        prior: Prior,
        instrument: Uncertainty,
        settings: Settings,
    ) -> Result<Self, Error> {
        check(&prior, instrument, &settings)?;
        let start = progress(limits, feature, start)?;
        let kinds = Kinds::new(start, &prior, instrument);
        Ok(Self {
            limits,
            feature,
            prior,
            instrument,
            put_down: None,
            settings,
            kinds,
            state: kinds.together(),
            last: 0.0,
            cuts: 0,
            surprise: None,
            story: None,
            slips: 0,
            agreed: 0,
            doubted: false,
            slip: None,
            unread: false,
            ahead: Shared::default(),
        })
    }

    /// From here on it is read with this instrument, and the advice counts on
    /// it. What the one before is off by is kept for when it is taken up again;
    /// a third one's takes its place. Two with the same figures count as one.
    ///
    /// # Errors
    /// A standard deviation below 0. The adviser is then as it was.
    ///
    /// ```
    /// use fits_core::{Length, shop::adviser::{Action, Adviser, Prior, Settings}};
    /// use fits_core::standards::{instruments::Uncertainty, iso286::{Class, Feature}};
    /// let um = Length::from_micrometres;
    /// let hole = "H7".parse::<Class>()?.limits("20mm".parse()?)?;
    /// let prior = Prior {
    ///     gain: 0.97, gain_sd: 0.04, offset: Length::ZERO, offset_sd: um(6)?, scatter: um(2)?,
    /// };
    /// let caliper = Uncertainty { repeat: um(15)?, bias: um(10)? };
    /// let start = "19.6mm".parse()?;
    /// let mut adviser = Adviser::new(hole, Feature::Hole, start, prior, caliper, Settings::default())?;
    /// adviser.take_up(Uncertainty { repeat: um(2)?, bias: um(1)? })?;
    /// assert_eq!(adviser.next().action, Action::Cut);
    /// assert!(adviser.take_up(Uncertainty { repeat: um(-2)?, bias: um(1)? }).is_err());
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn take_up(&mut self, instrument: Uncertainty) -> Result<(), Error> {
        check(&self.prior, instrument, &self.settings)?;
        if instrument == self.instrument {
            return Ok(());
        }
        let is_new = self.put_down != Some(instrument);
        let change = |state: State| {
            if is_new { state.beside(instrument).exchanged() } else { state.exchanged() }
        };
        self.kinds = self.kinds.changed(&change);
        self.state = change(self.state);
        self.slip = self.slip.map(|slip| slip.changed(&change));
        self.put_down = Some(std::mem::replace(&mut self.instrument, instrument));
        self.ahead = Shared::default();
        Ok(())
    }

    /// What is believed now.
    ///
    /// # Errors
    /// Out of range.
    pub fn estimate(&self) -> Result<Estimate, Error> {
        let State { mean, spread } = self.state;
        let [_, gain, offset, ..] = mean;
        let sd = |at: f64| libm::sqrt(at.max(0.0));
        let (size, half) = (self.state.size(), self.half());
        Ok(Estimate {
            size: self.at(size.mean)?,
            size_sd: Length::nearest_micrometres(size.sd)?,
            gain,
            gain_sd: sd(spread[1][1]),
            offset: Length::nearest_micrometres(offset)?,
            offset_sd: Length::nearest_micrometres(sd(spread[2][2]))?,
            good: size.between(-half, half),
            over: size.above(half),
            under: size.below(-half),
        })
    }

    /// The last reading, where it lies more than four standard deviations
    /// from what was expected, and the pass before it did not miss alike: a
    /// slip of hand, dial, backlash or reading until a second pass agrees.
    pub const fn surprise(&self) -> Option<Surprise> {
        self.surprise
    }

    /// The last reading was looked at again and stands: it is not asked for
    /// once more. What is believed of the tool stays as it is.
    ///
    /// ```
    /// use fits_core::shop::adviser::{Adviser, Prior, Settings};
    /// use fits_core::standards::{instruments::Uncertainty, iso286::{Class, Feature}};
    /// let hole = "H7".parse::<Class>()?.limits("20mm".parse()?)?;
    /// let gauge = Uncertainty { repeat: "2um".parse()?, bias: "2um".parse()? };
    /// let usual = Prior::usual(Feature::Hole, None, None);
    /// let start = "19.6mm".parse()?;
    /// let mut adviser = Adviser::new(hole, Feature::Hole, start, usual, gauge, Settings::default())?;
    /// // The dial was turned the wrong way: nothing came off.
    /// adviser.cut("0.2mm".parse()?, &["19.6mm".parse()?])?;
    /// assert!(adviser.surprise().is_some());
    /// adviser.confirm();
    /// assert_eq!(adviser.surprise(), None);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub const fn confirm(&mut self) {
        self.surprise = None;
    }

    /// What explains the last surprise; nothing where nothing surprised, or
    /// where no story explains it: then the reading is to be asked about.
    pub const fn story(&self) -> Option<Story> {
        self.story
    }

    /// How many passes in a row surprised, up to now. After three the advice is
    /// to stop and check the machine, until a pass does as expected.
    pub const fn slips(&self) -> u32 {
        self.slips
    }

    /// What the advice keeps to.
    pub const fn settings(&self) -> &Settings {
        &self.settings
    }

    /// The limits that the part is to end in.
    pub const fn limits(&self) -> Limits {
        self.limits
    }

    /// What the tool does beside what it is set to, once this log has shown
    /// it: nothing before the first cut, nothing after a slip until two passes
    /// agree, and nothing where the next step is not a cut or the dial would be
    /// set alike.
    pub fn remark(&self) -> Option<Remark> {
        if self.doubted {
            return None;
        }
        let next = self.next();
        let dial = next.dial.filter(|dial| dial.is_positive() && self.cuts > 0)?;
        let set = dial.in_micrometres();
        let [_, gain, offset, ..] = self.state.mean;
        let spread = &self.state.spread;
        let takes = gain * set + offset;
        let variance = set * set * spread[1][1] + spread[2][2] + 2.0 * set * spread[1][2];
        let step = self.settings.step;
        let not = next::on_step(takes, step.in_micrometres())
            .and_then(|steps| step.checked_mul(steps).ok())?;
        (not != dial).then_some(Remark {
            by: takes / set - 1.0,
            by_sd: libm::sqrt(variance.max(0.0)) / set,
            dial,
            not,
        })
    }

    /// Half the tolerance.
    fn half(&self) -> f64 {
        self.limits.tolerance().in_micrometres() / 2.0
    }

    /// The size so far past the middle of the limits.
    fn at(&self, progress: f64) -> Result<Length, Error> {
        let off = Length::nearest_micrometres(progress)?;
        match self.feature {
            Feature::Hole => self.limits.middle().checked_add(off),
            Feature::Shaft => self.limits.middle().checked_sub(off),
        }
    }
}

/// How far a size is past the middle of the limits, in the way the tool moves
/// it: below 0 while there is metal to take off.
fn progress(limits: Limits, feature: Feature, size: Length) -> Result<f64, Error> {
    if !size.is_positive() {
        return Err(Error::not_listed(
            say!("{} is not a size of a part", size),
            "give what was read",
        ));
    }
    let off = size.checked_sub(limits.middle())?.in_micrometres();
    Ok(match feature {
        Feature::Hole => off,
        Feature::Shaft => -off,
    })
}

fn check(prior: &Prior, instrument: Uncertainty, settings: &Settings) -> Result<(), Error> {
    let refused = |what: &'static str, advice: &str| Err(Error::not_listed(what, advice));
    if !(0.1..=2.0).contains(&prior.gain) || !(0.0..=1.0).contains(&prior.gain_sd) {
        return refused("the cut factor has no sense", "it is near 1, give or take less than 1");
    }
    if [prior.offset_sd, prior.scatter, instrument.repeat, instrument.bias]
        .iter()
        .any(|length| length.is_negative())
    {
        return refused("a standard deviation is less than 0", "give it without a sign");
    }
    settings.check()
}
