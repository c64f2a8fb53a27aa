//! Answers: what a query means, in exact lengths, written as JSON by serde.
//!
//! Every length is written in millimetres under a name ending `_mm`: an
//! integer divided once by a power of ten, so the number is exact as printed.

use fits_core::Length;
use schemars::{JsonSchema, Schema, SchemaGenerator, json_schema};
use serde::{Serialize, Serializer};

pub use crate::questions::{
    align::answered::{AlignAnswer, TaperedFigures},
    bearing::figures::{BearingAnswer, BearingSeat, SeatReading},
    block::answered::{BlockSet, TitleBlockAnswer},
    bushing::figures::{
        BushingAnswer, BushingInPlaceAnswer, BushingPart, InServiceFigures, PressureFigures,
        ShaftFigures, SuitedFigures,
    },
    crib::figures::{CribAnswer, CribReaming, OwnDrillFigures, OwnReamer, PinFigures, PinsFigures},
    drill::answered::{DrillAnswer, NamedDrill},
    general::answered::GeneralAnswer,
    grade::answered::GradeAnswer,
    help::answered::{HelpAnswer, HelpTopic},
    joint::figures::{
        AssemblyAnswer, AtWorkFigures, BodyFigures, BothFigures, GripFigures, LeadInFigures,
        LighterFigures, MinMax, PickGripAnswer, PlasticFigures, WallPoint,
    },
    keyway::answered::{KeywayAnswer, KeywayCut, KeywayFigures},
    log::figures::{
        EntryFigures, EntryPlace, FormOfPlaces, LogFigures, LogsAnswer, NextFigures, OpenedLog,
        OtherMachine, PassLogAnswer, RemarkFigures, StoryFigures,
    },
    part::{
        figures::{
            ChanceFigures, ChoiceFigures, ClearanceFigures, FeatureAnswer, FitAnswer, HeldTo,
            MeasuredFigures, NeighbourFigures, PairReadingAnswer, Processes, ReadingAnswer,
            ReadingFigures,
        },
        measured_figures::{FormFigures, MeasuredReading, WarmFigures},
        tool_figures::{
            DrillFigures, PassFigure, PassFigures, PassesAnswer, ReamAnswer, ReamFigures,
            ReamerFigures,
        },
        warm_figures::{AtFigures, DampFigures, WarmAnswer, WarmPart},
    },
    pick::answered::{CandidateFigures, PickAnswer},
    reamer::answered::{PinPlay, ReamerCutAnswer},
    rehearse::figures::{RehearsalAnswer, StrategyFigures},
    seat::answered::{SeatAnswer, SeatFigures},
    settings::answered::{InForce, SettingsAnswer},
    size::answered::SizeAnswer,
    stack::figures::{
        Ends, LastPartFigures, LinkFigures, QuantileFigures, SimulatedFigures, StackAnswer,
    },
    thread::figures::{
        AdvisedFigures, BlankFigures, BoreFigures, ClearanceHoleAnswer, ClearanceHoleFigures,
        DrillName, FormTapFigures, KeptFigures, OverWiresAnswer, PlayFigures, SideFigures,
        TapAnswer, TapFigures, TaperFigures, ThreadAnswer, ThreadName, WiresAnswer,
    },
    thread::pass_figures::{FeedFigures, ReliefFigures, ThreadPassFigures, ThreadPassesAnswer},
    why::answered::WhyAnswer,
};

pub use crate::questions::Answer;

/// A length in JSON: millimetres.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub struct Mm(pub Length);

impl From<Length> for Mm {
    fn from(length: Length) -> Self {
        Self(length)
    }
}

impl JsonSchema for Mm {
    fn schema_name() -> std::borrow::Cow<'static, str> {
        "Mm".into()
    }

    fn inline_schema() -> bool {
        true
    }

    fn json_schema(_: &mut SchemaGenerator) -> Schema {
        json_schema!({ "type": "number" })
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
