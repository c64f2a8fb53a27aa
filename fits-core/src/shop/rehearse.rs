//! A simulated machinist: the odds before cutting.
//!
//! In each run a machine is drawn (cut factor, offset, the instrument's bias),
//! and every strategy works the same part on it with the same luck. A part is
//! judged by its true size, whatever it reads; one that the adviser gives up is
//! scrapped all the same.

mod kinds;

use rand_xoshiro::{
    Xoshiro256PlusPlus,
    rand_core::{Rng as _, SeedableRng as _},
};

pub use self::kinds::{Fault, Strategy};
use super::adviser::{Action, Adviser, Prior, Settings};
use crate::{
    error::Error,
    size::{Length, Limits},
    standards::{instruments::Uncertainty, iso286::Feature},
};

/// The part and the machine of a rehearsal.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[expect(
    clippy::exhaustive_structs,
    reason = "it is built whole: what is new must be said by whoever builds one"
)]
pub struct RehearsedPart {
    /// The limits to end in.
    pub limits: Limits,
    /// Hole or shaft.
    pub feature: Feature,
    /// What the part reads before the first pass.
    pub start: Length,
    /// Where machines are drawn from; the adviser knows it.
    pub machine: Prior,
    /// What is measured with.
    pub instrument: Uncertainty,
    /// What can be dialled, and the adviser's limit of risk.
    pub settings: Settings,
}

/// How a strategy fared; shares are of all runs.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct Odds {
    /// Which.
    pub strategy: Strategy,
    /// Ended inside the limits.
    pub good: f64,
    /// Ended with too much off, or was given up.
    pub over: f64,
    /// Ended with metal left.
    pub under: f64,
    /// Passes, on average.
    pub passes: f64,
    /// Readings, on average, the first one not counted.
    pub readings: f64,
}

/// A rehearsal under way: run it as often as wanted.
///
/// ```
/// use fits_core::{Length, standards::iso286::{Class, Feature}};
/// use fits_core::shop::adviser::{Prior, Settings};
/// use fits_core::standards::instruments::Uncertainty;
/// use fits_core::shop::rehearse::{Fault, Rehearsal, Strategy, RehearsedPart};
/// let um = Length::from_micrometres;
/// let class: Class = "H7".parse()?;
/// let work = RehearsedPart {
///     limits: class.limits(Length::from_millimetres(20)?)?,
///     feature: Feature::Hole,
///     start: "19.6mm".parse()?,
///     machine: Prior {
///         gain: 0.97, gain_sd: 0.04, offset: Length::ZERO, offset_sd: um(6)?, scatter: um(2)?,
///     },
///     instrument: Uncertainty { repeat: um(2)?, bias: Length::ZERO },
///     settings: Settings::default(),
/// };
/// let mut rehearsal = Rehearsal::new(work, 1)?;
/// for _ in 0..100 {
///     rehearsal.run()?;
/// }
/// let [_, halve, adviser] = rehearsal.odds();
/// assert_eq!(adviser.strategy, Strategy::Adviser);
/// assert!(adviser.over < halve.over);
/// // A tool that takes too little asks for more passes.
/// let mut light = Rehearsal::new(work, 1)?.with_fault(Some(Fault::LightTool));
/// for _ in 0..100 {
///     light.run()?;
/// }
/// assert!(light.odds()[0].passes > rehearsal.odds()[0].passes);
/// assert_eq!(rehearsal.runs(), 100);
/// # Ok::<(), fits_core::Error>(())
/// ```
#[derive(Clone, Debug)]
pub struct Rehearsal {
    work: RehearsedPart,
    adviser: Adviser,
    fault: Option<Fault>,
    seed: u64,
    runs: u64,
    tallies: [Tally; 3],
}

#[derive(Clone, Copy, Debug, Default)]
struct Tally {
    good: u64,
    over: u64,
    under: u64,
    passes: u64,
    readings: u64,
}

/// A strategy that is not done by then stops where it is.
const MOST_STEPS: u64 = 60;

impl Rehearsal {
    /// Before the first run. The same seed gives the same runs.
    ///
    /// # Errors
    /// Figures that [`Adviser::new`] refuses, or a start that is not short of
    /// the limits.
    ///
    /// ```
    /// use fits_core::shop::{adviser::{Prior, Settings}, rehearse::{Rehearsal, RehearsedPart}};
    /// use fits_core::standards::{instruments::Uncertainty, iso286::{Class, Feature}};
    /// let work = RehearsedPart {
    ///     limits: "H7".parse::<Class>()?.limits("20mm".parse()?)?,
    ///     feature: Feature::Hole,
    ///     start: "19.6mm".parse()?,
    ///     machine: Prior::usual(Feature::Hole, None, None),
    ///     instrument: Uncertainty { repeat: "2um".parse()?, bias: "0um".parse()? },
    ///     settings: Settings::default(),
    /// };
    /// let (mut one, mut other) = (Rehearsal::new(work, 7)?, Rehearsal::new(work, 7)?);
    /// one.run()?;
    /// other.run()?;
    /// assert_eq!(one.odds(), other.odds());
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn new(work: RehearsedPart, seed: u64) -> Result<Self, Error> {
        let RehearsedPart { limits, feature, start, machine, instrument, settings } = work;
        let adviser = Adviser::new(limits, feature, start, machine, instrument, settings)?;
        super::passes::metal_left(feature, limits, start)?;
        Ok(Self { work, adviser, fault: None, seed, runs: 0, tallies: Default::default() })
    }

    /// With something that goes wrong in every run.
    ///
    /// ```
    /// use fits_core::shop::{adviser::{Prior, Settings}, rehearse::{Fault, Rehearsal, RehearsedPart}};
    /// use fits_core::standards::{instruments::Uncertainty, iso286::{Class, Feature}};
    /// let work = RehearsedPart {
    ///     limits: "H7".parse::<Class>()?.limits("20mm".parse()?)?,
    ///     feature: Feature::Hole,
    ///     start: "19.6mm".parse()?,
    ///     machine: Prior::usual(Feature::Hole, None, None),
    ///     instrument: Uncertainty { repeat: "2um".parse()?, bias: "0um".parse()? },
    ///     settings: Settings::default(),
    /// };
    /// // It is told by the gauge what is not so.
    /// let mut biased = Rehearsal::new(work, 1)?.with_fault(Some(Fault::BiasedGauge));
    /// for _ in 0..50 {
    ///     biased.run()?;
    /// }
    /// assert!(biased.odds().iter().all(|odds| odds.good < 1.0));
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    #[must_use]
    pub fn with_fault(self, fault: Option<Fault>) -> Self {
        Self { fault, ..self }
    }

    /// One more run of each strategy.
    ///
    /// # Errors
    /// A size out of range.
    pub fn run(&mut self) -> Result<(), Error> {
        for (strategy, tally) in Strategy::ALL.into_iter().zip(&mut self.tallies) {
            let mut shop = Shop::new(&self.work, self.fault, self.seed, self.runs);
            let given_up = match strategy {
                Strategy::Whole => shop.plain(false).map(|()| false)?,
                Strategy::Halve => shop.plain(true).map(|()| false)?,
                Strategy::Adviser => shop.advised(self.adviser.clone())?,
            };
            let half = self.work.limits.tolerance().in_micrometres() / 2.0;
            if given_up || shop.size > half {
                tally.over += 1;
            } else if shop.size < -half {
                tally.under += 1;
            } else {
                tally.good += 1;
            }
            tally.passes += shop.passes;
            tally.readings += shop.readings;
        }
        self.runs += 1;
        Ok(())
    }

    /// How often it has run.
    pub const fn runs(&self) -> u64 {
        self.runs
    }

    /// How the strategies fared so far.
    pub fn odds(&self) -> [Odds; 3] {
        #[allow(clippy::cast_precision_loss, reason = "counts of runs are small")]
        let share = |count: u64| count as f64 / self.runs.max(1) as f64;
        let [whole, halve, adviser] = self.tallies;
        let odds = |strategy, tally: Tally| Odds {
            strategy,
            good: share(tally.good),
            over: share(tally.over),
            under: share(tally.under),
            passes: share(tally.passes),
            readings: share(tally.readings),
        };
        [
            odds(Strategy::Whole, whole),
            odds(Strategy::Halve, halve),
            odds(Strategy::Adviser, adviser),
        ]
    }
}

/// A machine and a part in one run. Sizes are counted in micrometres from the
/// middle of the limits, in the way the tool moves them.
struct Shop<'a> {
    work: &'a RehearsedPart,
    fault: Option<Fault>,
    luck: Luck,
    gain: f64,
    offset: f64,
    bias: f64,
    size: f64,
    passes: u64,
    readings: u64,
}

impl<'a> Shop<'a> {
    fn new(work: &'a RehearsedPart, fault: Option<Fault>, seed: u64, run: u64) -> Self {
        let mut luck = Luck::new(seed, run);
        let RehearsedPart { machine, instrument, .. } = work;
        let usual = machine.gain + machine.gain_sd * luck.draw();
        let gain = if fault == Some(Fault::LightTool) { 0.8 } else { usual };
        let offset =
            machine.offset.in_micrometres() + machine.offset_sd.in_micrometres() * luck.draw();
        let (own, repeat) = (instrument.bias.in_micrometres(), instrument.repeat.in_micrometres());
        let usual = own * luck.draw();
        let bias = if fault == Some(Fault::BiasedGauge) { 3.0 * own + 2.0 * repeat } else { usual };
        let scatter = repeat * luck.draw();
        let left = work.start.tenth_nanometres() - work.limits.middle().tenth_nanometres();
        let left = Length::from_tenth_nanometres(left).in_micrometres();
        let read = if work.feature == Feature::Hole { left } else { -left };
        Self {
            work,
            fault,
            luck,
            gain,
            offset,
            bias,
            size: read - bias - scatter,
            passes: 0,
            readings: 0,
        }
    }

    fn cut(&mut self, dialled: f64) {
        let Settings { step, dial_turn, .. } = self.work.settings;
        // A part of a division is set as well as eye or top slide allow.
        let setting = self.work.settings.setting(self.work.limits.tolerance());
        let division = step.in_micrometres();
        let split = libm::fmod(dialled / division + 1e-6, 1.0) > 1e-3;
        let set = if split { dialled + setting * self.luck.draw() } else { dialled };
        let took = self.gain * set + self.offset + self.scattered();
        let short = match self.fault.filter(|_| self.passes == 0) {
            Some(Fault::ShortTurn) => dial_turn.map_or(100.0, Length::in_micrometres),
            Some(Fault::Backlash) => 80.0,
            _ => 0.0,
        };
        self.size += if short > 0.0 { (took - short).max(0.0) } else { took };
        self.passes += 1;
    }

    /// What one pass scatters.
    fn scattered(&mut self) -> f64 {
        let times = if self.fault == Some(Fault::Rough) { 4.0 } else { 1.0 };
        times * self.work.machine.scatter.in_micrometres() * self.luck.draw()
    }

    /// Takes off any part of what the last cut left standing.
    fn spring(&mut self, last: f64) {
        let scatter = self.scattered();
        let left = (last - self.gain * last - self.offset).max(0.0);
        self.size += left * self.luck.even() + scatter;
        self.passes += 1;
    }

    fn read(&mut self) -> f64 {
        self.readings += 1;
        self.size + self.bias + self.work.instrument.repeat.in_micrometres() * self.luck.draw()
    }

    /// Dials what is left, or half of it first, until it reads good or over.
    fn plain(&mut self, mut halve: bool) -> Result<(), Error> {
        let half = self.work.limits.tolerance().in_micrometres() / 2.0;
        let step = self.work.settings.step.in_micrometres();
        let most = self.work.settings.most_cut.in_micrometres();
        // The start has been read: it is what the work says it is.
        let off = self.work.start.checked_sub(self.work.limits.middle())?.in_micrometres();
        let mut read = if self.work.feature == Feature::Hole { off } else { -off };
        while self.passes < MOST_STEPS && read < -half {
            let wanted = if halve { -read / 2.0 } else { -read };
            // Roughing, where a pass does not take so much, is not a half.
            halve = halve && wanted > most;
            self.cut(libm::round(wanted.min(most) / step).max(1.0) * step);
            read = self.read();
        }
        Ok(())
    }

    /// Does what the adviser says. Was the part given up?
    fn advised(&mut self, mut adviser: Adviser) -> Result<bool, Error> {
        let (limits, feature) = (self.work.limits, self.work.feature);
        let read = |shop: &mut Self, times: u32| -> Result<Vec<Length>, Error> {
            let one = |_| {
                let off = Length::nearest_micrometres(shop.read())?;
                match feature {
                    Feature::Hole => limits.middle().checked_add(off),
                    Feature::Shaft => limits.middle().checked_sub(off),
                }
            };
            (0..times).map(one).collect()
        };
        let mut last = 0.0;
        while self.passes + self.readings < 2 * MOST_STEPS {
            let next = adviser.next();
            match (next.action, next.dial) {
                (Action::Cut, Some(dial)) if dial.is_positive() => {
                    last = dial.in_micrometres();
                    self.cut(last);
                    adviser.cut(dial, &read(self, next.readings)?)?;
                }
                (Action::Cut, _) => {
                    self.spring(last);
                    adviser.spring(&read(self, next.readings)?)?;
                }
                (Action::ReadAgain, _) => adviser.read(&read(self, next.readings)?)?,
                (Action::Stop, _) => return Ok(false),
                (Action::Scrap, _) => return Ok(true),
            }
        }
        Ok(false)
    }
}

/// Numbers that look drawn: xoshiro256++ (D. Blackman and S. Vigna, ACM Trans.
/// Math. Softw. 47, 2021), a stream of its own for each run.
struct Luck {
    source: Xoshiro256PlusPlus,
    /// Normal numbers come in twos.
    kept: Option<f64>,
}

impl Luck {
    fn new(seed: u64, run: u64) -> Self {
        // An odd factor keeps the runs of near seeds apart.
        let start = seed.wrapping_mul(0x9e37_79b9_7f4a_7c15).wrapping_add(run);
        Self { source: Xoshiro256PlusPlus::seed_from_u64(start), kept: None }
    }

    /// Even between 0 and 1.
    fn even(&mut self) -> f64 {
        #[allow(clippy::cast_precision_loss, reason = "53 bits")]
        let bits = (self.source.next_u64() >> 11) as f64;
        bits / 9_007_199_254_740_992.0
    }

    /// Standard normal (Box and Muller, Ann. Math. Stat. 29, 1958).
    fn draw(&mut self) -> f64 {
        if let Some(kept) = self.kept.take() {
            return kept;
        }
        // Never the logarithm of zero.
        let radius = libm::sqrt(-2.0 * libm::log(1.0 - self.even()));
        let angle = 2.0 * core::f64::consts::PI * self.even();
        self.kept = Some(radius * libm::sin(angle));
        radius * libm::cos(angle)
    }
}
