//! Answers: what a query means, in exact lengths, written as JSON by serde.
//!
//! Every length is written in millimetres under a name ending `_mm`: an
//! integer divided once by a power of ten, so the number is exact as printed.

use fits_core::{Length, shop::Verdict, source::Known};
use serde::{Serialize, Serializer};

pub use crate::questions::{
    align::answered::{AlignAnswer, TaperedFigures},
    bushing::figures::{
        BushingAnswer, BushingPart, InServiceFigures, PressureFigures, ShaftFigures, SuitedFigures,
    },
    crib::figures::{CribAnswer, CribReaming, OwnDrillFigures, OwnReamer, PinFigures, PinsFigures},
    drill::answered::{DrillAnswer, NamedDrill},
    general::answered::GeneralAnswer,
    grade::answered::GradeAnswer,
    help::answered::HelpAnswer,
    joint::figures::{
        AssemblyAnswer, AtWorkFigures, BodyFigures, BothFigures, GripFigures, LeadInFigures,
        LighterFigures, MinMax, PickGripAnswer, PlasticFigures, WallPoint,
    },
    keyway::answered::{KeywayAnswer, KeywayFigures},
    log::figures::{
        EntryFigures, EntryPlace, FormOfPlaces, LogFigures, LogsAnswer, NextFigures, OpenedLog,
        OtherMachine, PassLogAnswer, RemarkFigures, StoryFigures,
    },
    part::{
        figures::{
            ChanceFigures, ChoiceFigures, ClearanceFigures, DrillFigures, FeatureAnswer, FitAnswer,
            HeldTo, MeasuredFigures, NeighbourFigures, PairReadingAnswer, PassFigure, PassFigures,
            PassesAnswer, ReadingAnswer, ReadingFigures, ReamAnswer, ReamFigures, ReamerFigures,
        },
        measured_figures::{FormFigures, MeasuredReading, WarmFigures},
        warm_figures::{AtFigures, DampFigures, WarmAnswer, WarmPart},
    },
    pick::answered::{CandidateFigures, PickAnswer},
    rehearse::figures::{RehearsalAnswer, StrategyFigures},
    seat::answered::{SeatAnswer, SeatFigures},
    settings::answered::{InForce, SettingsAnswer},
    size::answered::SizeAnswer,
    stack::figures::{
        Ends, LastPartFigures, LinkFigures, QuantileFigures, SimulatedFigures, StackAnswer,
    },
    thread::figures::{
        AdvisedFigures, BlankFigures, BoreFigures, ClearanceHoleAnswer, ClearanceHoleFigures,
        DrillName, FeedFigures, FormTapFigures, KeptFigures, OverWiresAnswer, PlayFigures,
        ReliefFigures, SideFigures, TapAnswer, TapFigures, TaperFigures, ThreadAnswer, ThreadName,
        ThreadPassFigures, ThreadPassesAnswer, WiresAnswer,
    },
    why::answered::WhyAnswer,
};

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
pub(crate) fn six_places<S: Serializer>(
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
        // Names with how each is known; every name once.
        let among = |what: &str, named: &mut dyn Iterator<Item = (&str, Known)>| {
            let mut names: Vec<&str> = Vec::new();
            for (name, _) in named.filter(|(_, known)| known.is_unconfirmed()) {
                if !names.contains(&name) {
                    names.push(name);
                }
            }
            (!names.is_empty()).then(|| format!("{what} {}", names.join(", ")))
        };
        match self {
            Self::General(general) => {
                general.known.is_unconfirmed().then(|| "this tolerance".to_owned())
            }
            Self::Grade(grade) => among("grade", &mut [(&*grade.grade, grade.known)].into_iter()),
            Self::Pick(pick) => among(
                "the limits of",
                &mut pick.candidates.iter().map(|it| (it.class.as_str(), it.known)),
            ),
            Self::PickGrip(grip) => {
                (!grip.unconfirmed.is_empty()).then(|| grip.unconfirmed.join(", "))
            }
            Self::Drill(drills) => among(
                "the size of drill",
                &mut [&drills.exact, &drills.under, &drills.over]
                    .into_iter()
                    .flatten()
                    .map(|drill| (drill.name, drill.known)),
            ),
            Self::Stack(stack) => among(
                "the limits of",
                &mut stack.links.iter().map(|link| (link.class.as_str(), link.known)),
            ),
            Self::FitWarm(warm) => {
                (!warm.unconfirmed.is_empty()).then(|| warm.unconfirmed.join(", "))
            }
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

    pub(crate) fn thread_mut(&mut self) -> Option<(&mut ThreadName, &[fits_core::source::Reason])> {
        Some(match self {
            Self::Thread(it) => (&mut it.name, &it.reasons),
            Self::Tap(it) => (&mut it.name, &it.reasons),
            Self::ClearanceHole(it) => (&mut it.name, &it.reasons),
            Self::Wires(it) => (&mut it.name, &it.reasons),
            Self::OverWires(it) => (&mut it.wires.name, &it.wires.reasons),
            Self::ThreadPasses(it) => (&mut it.name, &it.reasons),
            _ => return None,
        })
    }
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
