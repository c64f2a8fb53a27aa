//! A pass that misses by far is a slip of hand, dial, backlash or reading
//! before it is the tool: it tells the size and teaches nothing of the tool
//! until a second pass agrees with it.
//!
//! Until then two states are kept side by side, one for each story, and the
//! next pass decides. No order meanwhile can pass the far limit, even where
//! the tool takes the most that may be expected of it. That a slip is more
//! likely than a tool so far from its usual way is common practice, no source.

use super::{
    Adviser, Error, Length, Surprise,
    kinds::Kinds,
    progress,
    state::State,
    story::{Missed, Story},
};

/// What comes before a reading.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Pass {
    /// A change of diameter dialled.
    Cut(Length),
    /// A pass without infeed.
    Spring,
    /// Nothing.
    None,
}

/// A reading far from what was expected, and what else it may mean.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Slip {
    /// What is believed if the tool did it.
    taught: State,
    /// What is believed if the reading was wrong, until the next reading.
    unread: Option<State>,
    /// Was the tool in doubt before it?
    doubted: bool,
}

impl Slip {
    /// The same change to both.
    pub(super) fn changed(self, change: &dyn Fn(State) -> State) -> Self {
        Self { taught: change(self.taught), unread: self.unread.map(change), ..self }
    }
}

/// No tool takes a smaller share of what is dialled: passes that took less were
/// slips, even two alike (common practice, no source).
const LEAST_FACTOR: f64 = 0.6;
/// A reading further off than this is a surprise.
const SURPRISING: f64 = 4.0;
/// A pass further off than this teaches, and does not agree: a skim that took
/// nothing is no further off.
const NEARLY: f64 = 2.5;
/// So many passes have to agree after a slip.
const AGREE: u32 = 2;
/// So many standard deviations off its middle, the cut factor is the largest
/// that may be expected.
const LARGEST: f64 = 4.0;
/// A tool that did it is given so many times its miss as a standard deviation
/// of its cut factor.
const WIDER: f64 = 2.0;
/// So many standard deviations are the give of the size in an order.
const GIVE: f64 = 2.0;

/// How far a reading lies from what a state expects, in standard deviations.
fn deviations(state: &State, reading: f64, repeat: f64) -> f64 {
    let expected = state.reading(repeat);
    if expected.sd > 0.0 { (reading - expected.mean).abs() / expected.sd } else { 0.0 }
}

impl Adviser {
    /// Takes up what was read after a pass; `passed` is what the pass does to
    /// a state.
    pub(super) fn measured(
        &mut self,
        pass: Pass,
        passed: &dyn Fn(State, f64) -> State,
        readings: &[Length],
    ) -> Result<(), Error> {
        let mut sum = 0.0;
        for &reading in readings {
            sum += progress(self.limits, self.feature, reading)?;
        }
        let scatter = self.prior.scatter.in_micrometres();
        let kinds = self.kinds.passed(passed, scatter);
        let state = kinds.together();
        let slip = self.slip.map(|slip| Slip {
            taught: passed(slip.taught, kinds.scatter(scatter)),
            unread: slip.unread.filter(|_| pass == Pass::None),
            ..slip
        });
        if readings.is_empty() {
            self.believe(&kinds);
            (self.slip, self.surprise, self.story) = (slip, None, None);
            return Ok(());
        }
        #[allow(clippy::cast_precision_loss, reason = "a count of readings is small")]
        let count = readings.len() as f64;
        let (mean, repeat) =
            (sum / count, self.instrument.repeat.in_micrometres() / libm::sqrt(count));
        let off = deviations(&state, mean, repeat);
        let is_cut = matches!(pass, Pass::Cut(_));
        let fits = |state: &State| deviations(state, mean, repeat) <= SURPRISING;
        let is_surprising = off > SURPRISING;
        let is_tool = |state: &State| state.mean[1] >= LEAST_FACTOR;
        let alike = slip
            .filter(|slip| is_cut && is_surprising && fits(&slip.taught) && is_tool(&slip.taught));
        let unread = slip.and_then(|slip| slip.unread);
        let misread = slip.zip(unread).filter(|(_, unread)| is_surprising && fits(unread));
        let surprise = if is_surprising && alike.is_none() && misread.is_none() {
            let (read, expected) = (self.at(mean)?, self.at(state.reading(repeat).mean)?);
            Some(Surprise { read, expected, deviations: off })
        } else {
            None
        };
        self.story = match surprise {
            Some(surprise) => self.story_of(pass, surprise, state.reading(repeat).sd)?,
            None => None,
        };
        self.surprise = surprise;
        if is_cut {
            self.slips = if surprise.is_some() { self.slips + 1 } else { 0 };
        }
        if let Some(slip) = alike {
            self.believe(&kinds.taught(slip.taught.read(mean, repeat)));
            self.slip = None;
            self.agreed = self.agreed.max(AGREE);
            self.doubted = false;
        } else if let Some((slip, unread)) = misread {
            self.believe(&kinds.taught(unread.read_anew(mean, repeat)));
            self.slip = None;
            (self.doubted, self.slips) = (slip.doubted, 0);
        } else if surprise.is_some() {
            let base = unread.unwrap_or(state);
            let doubted = slip.filter(|_| unread.is_some()).map_or(self.doubted, |s| s.doubted);
            // A tool so far from its usual way is another one: what was
            // expected of its cut factor is widened to what was seen.
            let set =
                if let Pass::Cut(dialled) = pass { dialled.in_micrometres() } else { self.last };
            let miss = mean - base.reading(repeat).mean;
            let wider = if set > 0.0 { WIDER * miss / set } else { 0.0 };
            let taught = base.widened(set, wider).read(mean, repeat);
            self.slip = Some(Slip { taught, unread: Some(base), doubted });
            self.believe(&kinds.read_anew(mean, repeat));
            self.doubted = true;
        } else {
            self.believe(&kinds.read(mean, repeat));
            self.slip = slip.filter(|_| !is_cut).map(|slip| Slip {
                taught: slip.taught.read(mean, repeat),
                unread: None,
                ..slip
            });
            if is_cut && off > NEARLY {
                self.doubted = true;
            } else if is_cut {
                self.agree();
            }
        }
        Ok(())
    }

    fn believe(&mut self, kinds: &Kinds) {
        (self.kinds, self.state) = (*kinds, kinds.together());
    }

    fn story_of(&self, pass: Pass, surprise: Surprise, sd: f64) -> Result<Option<Story>, Error> {
        Story::of(&Missed {
            feature: self.feature,
            before: self.at(self.state.size().mean)?,
            dialled: if let Pass::Cut(dialled) = pass { Some(dialled) } else { None },
            expected: surprise.expected,
            expected_sd: Length::nearest_micrometres(sd)?,
            read: surprise.read,
            dial_turn: self.settings.dial_turn,
        })
    }

    /// A measured pass took what was to be expected.
    pub(super) const fn agree(&mut self) {
        self.agreed = self.agreed.saturating_add(1);
        if self.agreed >= AGREE {
            self.doubted = false;
        }
    }

    /// The most that may be dialled, in micrometres; nothing where the tool is
    /// known. Before the first measured pass, and after a slip until two
    /// passes agree, the largest cut factor that may be expected does not
    /// bring the part past its far limit.
    pub(super) fn most_dialled(&self) -> Option<f64> {
        if self.agreed > 0 && !self.doubted {
            return None;
        }
        let largest = |gain: f64, sd: f64| gain + LARGEST * sd;
        let of = |state: &State| largest(state.mean[1], libm::sqrt(state.spread[1][1].max(0.0)));
        let factor = largest(self.prior.gain, self.prior.gain_sd)
            .max(of(&self.state))
            .max(self.slip.map_or(1.0, |slip| of(&slip.taught)))
            .max(1.0);
        let size = self.state.size();
        let room = self.half() - size.mean - GIVE * size.sd - self.state.mean[2].max(0.0);
        Some(room / factor)
    }
}
