//! Answers: what a query means, in exact lengths, written as JSON by serde.
//!
//! Every length is written in millimetres under a name ending `_mm`: an
//! integer divided once by a power of ten, so the number is exact as printed.

mod asked;
mod assembly;
mod bushing;
mod measuring;
mod shop;
mod stack;
mod threads;
mod warm;

use std::borrow::Cow;

use fits_core::{
    Basis, Kind, Length, Limits,
    shop::{Reading, Verdict},
    source::Known,
    standards::iso286::Feature,
};
use serde::{Serialize, Serializer};

pub use self::asked::{
    CandidateFigures, DrillAnswer, GeneralAnswer, GradeAnswer, HelpAnswer, KeywayAnswer,
    KeywayFigures, NamedDrill, PickAnswer, SeatAnswer, SeatFigures, SettingsAnswer, WhyAnswer,
};
pub use self::assembly::{
    AssemblyAnswer, AtWorkFigures, BodyFigures, BothFigures, GripFigures, LeadInFigures,
    LighterFigures, MinMax, PickGripAnswer, PlasticFigures, WallPoint,
};
pub use self::bushing::{
    BushingAnswer, BushingPart, InServiceFigures, PressureFigures, ShaftFigures, SuitedFigures,
};
pub use self::measuring::{
    AlignAnswer, FormFigures, MeasuredReading, RehearsalAnswer, StrategyFigures, TaperedFigures,
    WarmFigures,
};
pub use self::shop::{
    CribAnswer, CribReaming, EntryFigures, InForce, LogFigures, LogsAnswer, NextFigures, OpenedLog,
    OwnDrillFigures, OwnReamer, PassLogAnswer, PinFigures, PinsFigures, RemarkFigures,
    StoryFigures,
};
pub use self::stack::{
    Ends, LastPartFigures, LinkFigures, QuantileFigures, SimulatedFigures, StackAnswer,
};
pub use self::threads::{
    AdvisedFigures, BlankFigures, BoreFigures, ClearanceHoleAnswer, ClearanceHoleFigures,
    DrillName, FeedFigures, FormTapFigures, KeptFigures, OverWiresAnswer, PlayFigures,
    ReliefFigures, SideFigures, TapAnswer, TapFigures, TaperFigures, ThreadAnswer, ThreadName,
    ThreadPassFigures, ThreadPassesAnswer, WiresAnswer,
};
pub use self::warm::{AtFigures, DampFigures, WarmAnswer, WarmPart};
use crate::query::Dial;

/// A length in JSON: millimetres.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Mm(pub Length);

impl From<Length> for Mm {
    fn from(length: Length) -> Self {
        Self(length)
    }
}

impl Serialize for Mm {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.serialize_f64(self.0.millimetres())
    }
}

/// A chance to six places: what is beyond them is noise.
fn six_places<S: Serializer>(
    chance: &(impl Copy + Into<Option<f64>>),
    serializer: S,
) -> Result<S::Ok, S::Error> {
    let chance: Option<f64> = (*chance).into();
    chance.map(|chance| (chance * 1e6).round() / 1e6).serialize(serializer)
}

/// What a query was answered with.
#[derive(Clone, Debug, Serialize)]
#[serde(tag = "answer", rename_all = "snake_case")]
pub enum Answer {
    /// A size alone.
    Size(SizeAnswer),
    /// One feature.
    Feature(Box<FeatureAnswer>),
    /// A pair.
    Fit(Box<FitAnswer>),
    /// A reading of one feature.
    Reading(Box<ReadingAnswer>),
    /// A reading of both parts of a pair.
    PairReading(Box<PairReadingAnswer>),
    /// A reamer and its pre-drill.
    Ream(Box<ReamAnswer>),
    /// Boring or turning passes.
    Passes(Box<PassesAnswer>),
    /// The general tolerance of an untoleranced size.
    General(GeneralAnswer),
    /// A standard tolerance.
    Grade(GradeAnswer),
    /// The key and keyways of a shaft.
    Keyway(Box<KeywayAnswer>),
    /// Standard classes for a wanted clearance.
    Pick(PickAnswer),
    /// Parts pressed or shrunk together.
    Assembly(Box<AssemblyAnswer>),
    /// Standard classes by what a joint must do.
    PickGrip(PickGripAnswer),
    /// The nearest drills.
    Drill(DrillAnswer),
    /// Classes for a rolling bearing's seat.
    Seat(SeatAnswer),
    /// The tailstock.
    Align(Box<AlignAnswer>),
    /// The odds before cutting.
    Rehearsal(Box<RehearsalAnswer>),
    /// A thread.
    Thread(Box<ThreadAnswer>),
    /// Drills for a tap.
    Tap(Box<TapAnswer>),
    /// Holes that a screw passes.
    ClearanceHole(Box<ClearanceHoleAnswer>),
    /// The size over three wires.
    Wires(Box<WiresAnswer>),
    /// A reading over wires.
    OverWires(Box<OverWiresAnswer>),
    /// How to cut a thread.
    ThreadPasses(Box<ThreadPassesAnswer>),
    /// The play that parts end to end leave.
    Stack(Box<StackAnswer>),
    /// A pair away from 20 °C.
    FitWarm(Box<WarmAnswer>),
    /// A bushing, its housing and its shaft.
    BushingFit(Box<BushingAnswer>),
    /// A pass log.
    PassLog(Box<PassLogAnswer>),
    /// The pass logs there are.
    Logs(LogsAnswer),
    /// The crib.
    Crib(Box<CribAnswer>),
    /// The settings in force.
    Settings(Box<InForce>),
    /// Where the figures of an answer come from.
    Why(WhyAnswer),
    /// Help.
    Help(HelpAnswer),
}

impl Answer {
    /// What in an answer comes from memory alone, for the line that says so.
    pub fn unconfirmed(&self) -> Option<String> {
        let of = |features: &[&FeatureAnswer]| {
            let doubtful = features.iter().filter(|part| part.known.is_unconfirmed());
            let mut names: Vec<&str> = doubtful.map(|part| part.class.as_str()).collect();
            names.dedup();
            (!names.is_empty()).then(|| format!("the limits of {}", names.join(" and ")))
        };
        match self {
            Self::Feature(feature) => of(&[feature]),
            // What suits a part in hand goes by the fit that the word named.
            Self::Fit(fit) => of(&[&fit.hole, &fit.shaft])
                .or_else(|| fit.known.is_unconfirmed().then(|| "this fit".to_owned())),
            Self::Reading(reading) => of(&[&reading.feature]),
            Self::PairReading(pair) => of(&[&pair.hole.feature, &pair.shaft.feature]),
            Self::Rehearsal(odds) => of(&[&odds.feature]),
            Self::Ream(ream) => of(&[&ream.hole]),
            Self::Passes(passes) => of(&[&passes.feature]),
            Self::Keyway(keyway) => {
                keyway.key.known.is_unconfirmed().then(|| "this key or its keyways".to_owned())
            }
            Self::Seat(seat) => {
                let doubtful = seat.seats.iter().find(|seat| seat.known.is_unconfirmed());
                doubtful.map(|seat| format!("the seat {}", seat.class))
            }
            Self::BushingFit(bushing) => {
                bushing.known.is_unconfirmed().then(|| bushing.unconfirmed.clone())
            }
            Self::Assembly(joint) => {
                joint.known.is_unconfirmed().then(|| joint.unconfirmed.join(", "))
            }
            _ => {
                let (_, reasons) = self.thread_reasons()?;
                let mut figures: Vec<&str> = Vec::new();
                for reason in reasons.iter().filter(|reason| reason.known.is_unconfirmed()) {
                    if !figures.contains(&reason.figure.as_str()) {
                        figures.push(&reason.figure);
                    }
                }
                // `why` names them all.
                let more = figures.len().saturating_sub(3);
                figures.truncate(3);
                let more = if more > 0 { format!(" and {more} more") } else { String::new() };
                (!figures.is_empty()).then(|| format!("{}{more}", figures.join(", ")))
            }
        }
    }

    /// The name of a thread's answer and why its figures are what they are.
    pub fn thread_reasons(&self) -> Option<(&ThreadName, &[fits_core::source::Reason])> {
        Some(match self {
            Self::Thread(it) => (&it.name, &it.reasons),
            Self::Tap(it) => (&it.name, &it.reasons),
            Self::ClearanceHole(it) => (&it.name, &it.reasons),
            Self::Wires(it) => (&it.name, &it.reasons),
            Self::OverWires(it) => (&it.wires.name, &it.wires.reasons),
            Self::ThreadPasses(it) => (&it.name, &it.reasons),
            _ => return None,
        })
    }

    pub(crate) fn thread_mut(
        &mut self,
    ) -> Option<(&mut ThreadName, &mut Vec<fits_core::source::Reason>)> {
        Some(match self {
            Self::Thread(it) => (&mut it.name, &mut it.reasons),
            Self::Tap(it) => (&mut it.name, &mut it.reasons),
            Self::ClearanceHole(it) => (&mut it.name, &mut it.reasons),
            Self::Wires(it) => (&mut it.name, &mut it.reasons),
            Self::OverWires(it) => (&mut it.wires.name, &mut it.wires.reasons),
            Self::ThreadPasses(it) => (&mut it.name, &mut it.reasons),
            _ => return None,
        })
    }
}

/// A size alone.
#[derive(Clone, Debug, Serialize)]
pub struct SizeAnswer {
    /// The size, exactly.
    pub size_mm: Mm,
    /// The thread that a bare fraction may mean, as a query.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub thread: Option<String>,
    /// Where it is near the size of the part whose log is open: the entry that
    /// it may be meant for. Nothing is entered.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub log_entry: Option<String>,
}

/// One feature: limits and aim, and where they come from.
#[derive(Clone, Debug, Serialize)]
pub struct FeatureAnswer {
    /// The limits, for rendering.
    #[serde(skip)]
    pub limits: Limits,
    /// Hole or shaft; `None` where a feature was given by bare limits.
    pub kind: Option<Feature>,
    /// Nominal size.
    pub nominal_mm: Mm,
    /// The class, or how the limits were given.
    pub class: String,
    /// Least good size.
    pub lower_mm: Mm,
    /// Greatest good size.
    pub upper_mm: Mm,
    /// The one size to cut for.
    pub aim_mm: Mm,
    /// The limits' source.
    pub source: &'static str,
    /// How the limits are known: the worst of what went into them.
    pub known: Known,
    /// The grade held, as `IT7`; the coarsest within where no class was given.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub grade: Option<String>,
    /// Processes that commonly hold it.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub processes: Vec<&'static str>,
    /// Gauge pins of the crib that judge the hole.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub pins: Option<Box<PinsFigures>>,
    /// For a bought-in part: does it vary by maker?
    #[serde(skip_serializing_if = "Option::is_none")]
    pub mic_yours: Option<bool>,
    /// What else to know of a bought-in part.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub notes: Vec<String>,
    /// The reamer, for a hole asked for alone.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub ream: Option<ReamFigures>,
    /// Why it is not reamed, for a hole asked for alone.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub not_reamed: Option<String>,
    /// Boring passes, for a hole asked for alone.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub bore: Option<PassFigures>,
    /// Turning passes, for a shaft asked for alone.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub turn: Option<PassFigures>,
    /// What to be careful of.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub cautions: Vec<&'static str>,
}

/// Least, greatest and aimed-at clearance; interference is below nought.
#[derive(Clone, Copy, Debug, Serialize)]
pub struct ClearanceFigures {
    /// Least.
    pub min_mm: Mm,
    /// Greatest.
    pub max_mm: Mm,
    /// With both parts at their aims.
    pub aim_mm: Mm,
}

/// A pair.
#[derive(Clone, Debug, Serialize)]
pub struct FitAnswer {
    /// Nominal size.
    pub nominal_mm: Mm,
    /// Clearance, transition or interference.
    pub kind: Kind,
    /// Hole-basis, shaft-basis, both or neither.
    pub basis: Basis,
    /// The hole.
    pub hole: FeatureAnswer,
    /// The shaft.
    pub shaft: FeatureAnswer,
    /// The clearance.
    pub clearance: ClearanceFigures,
    /// How it is known: no better than either part.
    pub known: Known,
    /// For a transition fit, the chance of clearance.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub chance_of_clearance: Option<ChanceFigures>,
    /// One part measured, the other one's limits follow it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub measured: Option<MeasuredFigures>,
    /// One part in hand, the other one's limits follow it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub in_hand: Option<Feature>,
    /// The shop word that chose the classes, and its neighbours.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub choice: Option<Box<ChoiceFigures>>,
    /// How a pair whose limits were given stands to the word beside it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub held_to: Option<HeldTo>,
    /// What to know of a bought-in part, and of what was said of the parts.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub notes: Vec<String>,
    /// The reamer; `null` where the hole is not reamed.
    pub ream: Option<ReamFigures>,
    /// Why it is not.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub not_reamed: Option<String>,
    /// The boring passes; `null` where none can be planned.
    pub bore: Option<PassFigures>,
    /// What to be careful of.
    pub cautions: Vec<&'static str>,
}

/// How a pair whose limits were given stands to a shop's word.
#[derive(Clone, Copy, Debug, Serialize)]
pub struct HeldTo {
    /// The word.
    pub word: &'static str,
    /// Every such pair is inside the word's own range.
    pub agrees: bool,
    /// The word whose fit is nearest.
    pub nearest: &'static str,
    /// The word's least clearance at this size; interference is below nought.
    pub least_mm: Mm,
    /// Its most.
    pub most_mm: Mm,
}

/// The chance of clearance in a transition fit.
#[derive(Clone, Copy, Debug, Serialize)]
pub struct ChanceFigures {
    /// Sizes spread evenly between the limits.
    #[serde(serialize_with = "six_places")]
    pub even: f64,
    /// Sizes normal about the middle, the limits at three standard deviations.
    #[serde(serialize_with = "six_places")]
    pub normal: f64,
}

/// What a shop word chose, and why.
#[derive(Clone, Debug, Serialize)]
pub struct ChoiceFigures {
    /// The word, as the table has it.
    pub word: &'static str,
    /// The class or classes it took.
    pub class: String,
    /// Why.
    pub reason: &'static str,
    /// Where that is written.
    pub source: &'static str,
    /// How it is known.
    pub known: Known,
    /// The circumstance that changed the word's usual class.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub changed_by: Option<&'static str>,
    /// The next looser word and its class.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub looser: Option<NeighbourFigures>,
    /// The next tighter word and its class.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub tighter: Option<NeighbourFigures>,
    /// The class is a start: pressure, stress and force want working out.
    pub work_it_out: bool,
}

/// A neighbouring choice.
#[derive(Clone, Debug, Serialize)]
pub struct NeighbourFigures {
    /// The word.
    pub word: &'static str,
    /// Its class or classes.
    pub class: String,
}

/// The part that was measured first.
#[derive(Clone, Debug, Serialize)]
pub struct MeasuredFigures {
    /// Which.
    pub part: Feature,
    /// What it measures.
    pub size_mm: Mm,
    /// What its own limits say of it.
    pub verdict: Verdict,
}

/// A reamer and the drill before it.
#[derive(Clone, Debug, Serialize)]
pub struct ReamFigures {
    /// Smallest reamer.
    pub reamer_min_mm: Mm,
    /// Largest reamer.
    pub reamer_max_mm: Mm,
    /// Least stock to leave on the diameter.
    pub stock_min_mm: Mm,
    /// Most.
    pub stock_max_mm: Mm,
    /// Where the hole should be before the reamer, by drill or by boring.
    pub before_mm: Mm,
    /// The pre-drill to prefer; `null` where none leaves fitting stock.
    pub drill: Option<DrillFigures>,
    /// The one of the other system, if it leaves fitting stock too.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub other_drill: Option<DrillFigures>,
    /// What the crib has for it, where there is a crib.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub crib: Option<Box<CribReaming>>,
    /// Inch reamers off the shelf that suit the hole; recalled sizes.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub inch_reamers: Vec<ReamerFigures>,
}

/// A reamer off the shelf and what a new one measures, as recalled.
#[derive(Clone, Debug, Serialize)]
pub struct ReamerFigures {
    /// What it is sold as.
    pub name: String,
    /// The least a new one measures.
    pub min_mm: Mm,
    /// The most.
    pub max_mm: Mm,
}

/// A drill before a reamer.
#[derive(Clone, Copy, Debug, Serialize)]
pub struct DrillFigures {
    /// Its name.
    pub name: &'static str,
    /// Its diameter.
    pub mm: Mm,
    /// The stock it leaves.
    pub leaves_mm: Mm,
}

/// Passes to a size.
#[derive(Clone, Debug, Serialize)]
pub struct PassFigures {
    /// The passes in order.
    pub passes: Vec<PassFigure>,
    /// The size at the start of the cutting; `null` where it is not known.
    pub start_mm: Option<Mm>,
    /// The size to end at.
    pub aim_mm: Mm,
    /// Is the drill in the crib? `null` where there is no crib or no drill.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub drill_in_crib: Option<bool>,
    /// The drill that would be chosen of all, where the crib has another.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub rather_drill: Option<&'static str>,
}

/// One pass.
#[derive(Clone, Debug, Serialize)]
pub struct PassFigure {
    /// Its name.
    pub name: &'static str,
    /// The size after it.
    pub to_mm: Mm,
    /// What to dial, on a dial that reads as set; `null` for a drill and for
    /// a first cut from an unknown size.
    pub dial_mm: Option<Mm>,
    /// The drill's name.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub drill: Option<Cow<'static, str>>,
}

/// A reading of one feature.
#[derive(Clone, Debug, Serialize)]
pub struct ReadingAnswer {
    /// The feature.
    #[serde(flatten)]
    pub feature: FeatureAnswer,
    /// The judged reading.
    #[serde(flatten)]
    pub reading: ReadingFigures,
}

/// A reading judged.
#[derive(Clone, Debug, Serialize)]
pub struct ReadingFigures {
    /// What was read.
    pub reading_mm: Mm,
    /// The reading's expanded uncertainty, k = 2; `null` where no instrument
    /// was named.
    pub uncertainty_mm: Option<Mm>,
    /// Cut more, good or over.
    pub verdict: Verdict,
    /// Metal still to come off to the aim, on the diameter; below nought when
    /// past it.
    pub to_go_mm: Mm,
    /// To the limit met first.
    pub to_first_limit_mm: Mm,
    /// To the limit that must not be passed.
    pub to_last_limit_mm: Mm,
    /// The chance that the part is good; `null` where no instrument was named.
    #[serde(serialize_with = "six_places")]
    pub probability_good: Option<f64>,
    /// What is known beside, where more than one reading, an instrument or a
    /// temperature was given.
    #[serde(flatten, skip_serializing_if = "Option::is_none")]
    pub measured: Option<Box<MeasuredReading>>,
}

impl ReadingFigures {
    /// The size at 20 °C, as far as it is known.
    pub fn at_20(&self) -> Length {
        self.measured.as_ref().map_or(self.reading_mm.0, |measured| measured.size_at_20_mm.0)
    }

    /// From the judgement of a size.
    pub fn new(size: Length, reading: Reading) -> Self {
        Self {
            reading_mm: Mm(size),
            uncertainty_mm: None,
            verdict: reading.verdict,
            to_go_mm: Mm(reading.to_aim),
            to_first_limit_mm: Mm(reading.to_first_limit),
            to_last_limit_mm: Mm(reading.to_last_limit),
            probability_good: None,
            measured: None,
        }
    }
}

/// A measured pair.
#[derive(Clone, Debug, Serialize)]
pub struct PairReadingAnswer {
    /// Nominal size.
    pub nominal_mm: Mm,
    /// The hole.
    pub hole: ReadingAnswer,
    /// The shaft.
    pub shaft: ReadingAnswer,
    /// The fit's own range.
    pub clearance: ClearanceFigures,
    /// The pair's actual clearance.
    pub actual_clearance_mm: Mm,
    /// Is it within the fit's range?
    pub within: bool,
    /// What to be careful of.
    pub cautions: Vec<&'static str>,
}

/// A reamer asked for by itself.
#[derive(Clone, Debug, Serialize)]
pub struct ReamAnswer {
    /// The hole.
    pub hole: FeatureAnswer,
    /// The reamer.
    #[serde(flatten)]
    pub ream: ReamFigures,
}

/// Passes asked for by themselves.
#[derive(Clone, Debug, Serialize)]
pub struct PassesAnswer {
    /// `bore` or `turn`.
    pub work: &'static str,
    /// How the dial reads.
    pub dial: Dial,
    /// The passes.
    #[serde(flatten)]
    pub plan: PassFigures,
    /// The feature.
    pub feature: FeatureAnswer,
    /// What to dial first, where the work is measured.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub next: Option<NextFigures>,
    /// The pass log that was opened for it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub log: Option<OpenedLog>,
    /// A log was to be kept in a file and is not; a note says why.
    #[serde(skip)]
    pub is_not_logged: bool,
    /// What else to know.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub notes: Vec<String>,
    /// What to be careful of.
    pub cautions: Vec<&'static str>,
}

impl Answer {
    /// Was a log to be kept in a file, and is not?
    pub fn is_not_logged(&self) -> bool {
        matches!(self, Self::Passes(passes) if passes.is_not_logged)
    }

    /// Does it hold a reading that is outside its limits?
    pub fn is_out_of_limits(&self) -> bool {
        match self {
            Self::Reading(answer) => answer.reading.verdict != Verdict::Good,
            Self::PairReading(answer) => {
                !answer.within
                    || [&answer.hole, &answer.shaft]
                        .iter()
                        .any(|part| part.reading.verdict != Verdict::Good)
            }
            Self::OverWires(answer) => answer.verdict != Verdict::Good,
            Self::PassLog(answer) => answer.is_finished_badly(),
            Self::Fit(answer) => {
                answer.measured.as_ref().is_some_and(|measured| measured.verdict != Verdict::Good)
                    || answer.held_to.is_some_and(|held| !held.agrees)
            }
            _ => false,
        }
    }
}
