//! Answers about what a shop keeps: pass logs and the crib.

use fits_core::{Limits, job::LogState, source::Reason, standards::iso286::Feature};
use schemars::JsonSchema;
use serde::Serialize;

use crate::{
    answer::{Mm, six_places},
    query::{Dial, Machine},
};

/// A pass log: what to do next, then what was done.
#[derive(Clone, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
pub struct PassLogAnswer {
    /// The limits, for rendering.
    #[serde(skip)]
    pub limits: Limits,
    /// The log's name; `null` where it is kept in memory only.
    #[serde(rename = "log_name")]
    pub log: Option<String>,
    /// Open, done or scrap.
    pub state: LogState,
    /// A hole is bored, a shaft is turned.
    pub kind: Feature,
    /// Nominal size.
    pub nominal_mm: Mm,
    /// The class, or how the limits were given.
    pub class: String,
    /// Least good size.
    pub lower_mm: Mm,
    /// Greatest good size.
    pub upper_mm: Mm,
    /// What it measured at the start.
    pub start_mm: Mm,
    /// The step of the dial, as a change of diameter.
    pub step_mm: Mm,
    /// The instrument.
    pub instrument: String,
    /// The expanded uncertainty of one of its readings, k = 2.
    pub reading_uncertainty_mm: Mm,
    /// Everything entered, in order; a reading after a cut stands with it.
    pub entries: Vec<EntryFigures>,
    /// The best estimate of the size; `null` where a lost line left it unknown.
    pub size_mm: Option<Mm>,
    /// Its standard deviation.
    pub size_sd_mm: Option<Mm>,
    /// The chance that it is inside its limits now.
    #[serde(serialize_with = "six_places")]
    pub probability_good: Option<f64>,
    /// The change of diameter for each unit dialled, as far as it is known.
    pub cut_factor: Option<f64>,
    /// What probably happened, where the last reading was not to be expected.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub story: Option<StoryFigures>,
    /// What the tool does beside what it is set to, once that shows.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub remark: Option<RemarkFigures>,
    /// How the places of the last readings differ, where there were several.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[serde(rename = "form_error")]
    pub form: Option<FormOfPlaces>,
    /// How many finished logs the expectations come from.
    pub learned_from: usize,
    /// What to do next; `null` once the log is closed.
    pub next: Option<NextFigures>,
    /// What else to know.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub notes: Vec<String>,
    /// Where the figures of the advice come from.
    #[serde(skip)]
    pub reasons: Vec<Reason>,
    /// What to be careful of.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub cautions: Vec<&'static str>,
}

/// One entry of a log.
#[derive(Clone, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
pub struct EntryFigures {
    /// `cut`, `spring`, `read`, `undo`, `done`, `scrap`, `lost`.
    pub entry: &'static str,
    /// The change of diameter dialled.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub dial_mm: Option<Mm>,
    /// What was read after it, at 20 °C: of several places the one that decides.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub reading_mm: Option<Mm>,
    /// Each place, where there was more than one reading or the part was warm.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub places: Vec<EntryPlace>,
    /// How warm the part was, where that was said.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub at_c: Option<f64>,
    /// The material that its growth was worked out for.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub material: Option<String>,
    /// What it was read with, where that was not the log's instrument.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub instrument: Option<String>,
    /// It was taken back.
    #[serde(skip_serializing_if = "std::ops::Not::not")]
    pub undone: bool,
}

/// What was read at one place.
#[derive(Clone, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
pub struct EntryPlace {
    /// Its name, where one was said.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub place: Option<String>,
    /// The readings, at 20 °C.
    pub readings_mm: Vec<Mm>,
    /// As the instrument showed them, where the part was warm.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub shown_mm: Vec<Mm>,
}

/// How the places of the last readings differ.
#[derive(Clone, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
pub struct FormOfPlaces {
    /// `taper`, `bell mouth`, `barrel`, `out of round`, `unlike`; `none` where
    /// the instrument scatters as much.
    pub shape: &'static str,
    /// From the smallest place to the largest.
    pub difference_mm: Mm,
    /// More than the instrument scatters.
    pub real: bool,
    /// The place that decides: where most is off.
    pub decides: String,
    /// The same in words, in the units that are shown.
    pub says: String,
    /// What to do about it.
    pub to_do: String,
}

/// What to do next.
#[derive(Clone, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
pub struct NextFigures {
    /// `cut`, `read again`, `stop` or `scrap`.
    pub action: &'static str,
    /// For a cut, the change of diameter to dial; zero is a spring pass.
    pub dial_mm: Option<Mm>,
    /// What to dial on the top slide instead, as its travel, where it is set over.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub top_slide_mm: Option<Mm>,
    /// The size to expect after it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub expect_mm: Option<Mm>,
    /// A cut that stops short on purpose: measure after it.
    pub measuring: bool,
    /// How often to measure after it; zero where nothing is to be measured.
    pub readings: u32,
    /// Why it is not a cut, where that is not plain.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub reason: Option<&'static str>,
    /// The chance of ending inside the limits by this way.
    #[serde(serialize_with = "six_places")]
    pub probability_good: Option<f64>,
    /// The chance that this step oversteps the last limit.
    #[serde(serialize_with = "six_places")]
    pub probability_over: Option<f64>,
}

/// What probably happened at a reading that was not to be expected.
#[derive(Clone, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
pub struct StoryFigures {
    /// Its name: `whole turn`, `dial reads radius`, `dial reads diameter`,
    /// `hardly moved`, `backlash`, `gauge`, `decimal point`, `other unit`.
    #[serde(rename = "name")]
    pub story: &'static str,
    /// The same with its figures, in the units that are shown.
    pub says: String,
    /// What to look at, and the reading to take.
    pub check: &'static str,
}

/// What the tool does beside what it is set to.
#[derive(Clone, Copy, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
pub struct RemarkFigures {
    /// Of what is dialled, how much more it takes; below 0 for less.
    pub share_over_dial: f64,
    /// What to dial.
    pub dial_mm: Mm,
    /// What one would dial of a tool that takes what it is set to.
    pub plain_dial_mm: Mm,
}

/// The logs there are, the last written first.
#[derive(Clone, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
pub struct LogsAnswer {
    /// The one that is open here.
    pub open: Option<String>,
    /// All of them.
    pub logs: Vec<LogFigures>,
    /// What else to know.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub notes: Vec<String>,
}

/// One log of the list.
#[derive(Clone, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
pub struct LogFigures {
    /// Its name.
    pub name: String,
    /// Open, done or scrap.
    pub state: LogState,
    /// How many entries stand.
    #[serde(rename = "entry_count")]
    pub entries: usize,
    /// The last reading.
    pub reading_mm: Mm,
}

/// The log that a plan opened.
#[derive(Clone, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
pub struct OpenedLog {
    /// Its name; `null` where it is kept in memory only.
    pub name: Option<String>,
    /// The step of the dial, as a change of diameter.
    pub step_mm: Mm,
    /// How many finished logs the expectations come from.
    pub learned_from: usize,
}

/// How the dials of the machine read that is not in force.
#[derive(Clone, Copy, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
pub struct OtherMachine {
    /// Which.
    pub machine: Machine,
    /// What its dial reads.
    pub dial: Dial,
    /// Its division.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub graduation_mm: Option<Mm>,
    /// What a whole turn of it reads.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub dial_turn_mm: Option<Mm>,
}

impl PassLogAnswer {
    /// Is it finished, and not inside its limits as far as is known?
    pub fn is_finished_badly(&self) -> bool {
        match self.state {
            LogState::Open => false,
            LogState::Scrap => true,
            LogState::Done => self.probability_good.is_none_or(|good| good < 0.5),
        }
    }
}
