//! The questions that can be asked: a folder each, and the one list of them.
//!
//! In a folder, `asked` is what was typed and how it is read, `answered` what it
//! means, `shown` the answer in words. The list below makes [`Query`], [`Answer`]
//! and all that goes from one to the other.

pub(crate) mod align;
pub(crate) mod bearing;
pub(crate) mod block;
pub(crate) mod bushing;
pub(crate) mod by_mic;
pub(crate) mod clean_up;
pub(crate) mod crib;
pub(crate) mod drill;
pub(crate) mod general;
pub(crate) mod grade;
pub(crate) mod hardware;
pub(crate) mod help;
pub(crate) mod job;
pub(crate) mod joint;
pub(crate) mod keyway;
pub(crate) mod log;
pub(crate) mod part;
pub(crate) mod pick;
pub(crate) mod reamer;
pub(crate) mod rehearse;
pub(crate) mod rescue;
pub(crate) mod seat;
pub(crate) mod service;
pub(crate) mod settings;
pub(crate) mod share;
pub(crate) mod size;
pub(crate) mod stack;
pub(crate) mod thread;
pub(crate) mod weight;
pub(crate) mod why;

use fits_core::source::{Known, Reason};
use schemars::JsonSchema;
use serde::Serialize;

use crate::{
    problem::Problem,
    query::{Size, Units},
    questions::part::mates::thought_in,
    render::text::Text,
    session::Session,
    words::{clause::Clause, fault::Parsed},
};

/// What every question's own `mod` needs.
mod prelude {
    pub(crate) use fits_core::source::Reason;

    pub(crate) use super::{
        Answered, Question, help::answered::HelpTopic, part::mates::thought_in,
        why::answered::between,
    };
    pub(crate) use crate::{
        answer::Answer,
        problem::Problem,
        query::{Query, Size, Units},
        render::text::Text,
        session::Session,
        words::{clause::Clause, fault::Parsed, keywords::keyword},
    };
}

/// What was typed, as a question.
pub(crate) trait Question {
    /// The size that it is about.
    fn size(&self) -> Option<&Size> {
        None
    }

    /// The units that its sizes are typed in; those in force for bare ones.
    fn typed_in(&self, session: &Session) -> Units {
        self.size().map_or(session.units, |size| thought_in(size, session.units))
    }

    /// What it comes to. Nothing is changed by it.
    fn answer(&self, session: &Session) -> Result<Answer, Problem>;

    /// Does it leave the answers of other lines as they are, and need none?
    fn stands_alone(&self) -> bool {
        true
    }

    /// Answers it, and does what it orders; `line` is what was typed.
    fn carry_out(&self, session: &mut Session, line: &str) -> Result<Answer, Problem> {
        let answer = self.answer(session)?;
        session.remember(line);
        Ok(answer)
    }
}

impl<T: Question> Question for Box<T> {
    fn size(&self) -> Option<&Size> {
        (**self).size()
    }
    fn typed_in(&self, session: &Session) -> Units {
        (**self).typed_in(session)
    }
    fn answer(&self, session: &Session) -> Result<Answer, Problem> {
        (**self).answer(session)
    }
    fn stands_alone(&self) -> bool {
        (**self).stands_alone()
    }
    fn carry_out(&self, session: &mut Session, line: &str) -> Result<Answer, Problem> {
        (**self).carry_out(session, line)
    }
}

/// Of names with how each is known those that are recalled, every one once.
pub(crate) fn recalled_names<T: PartialEq>(named: impl IntoIterator<Item = (T, Known)>) -> Vec<T> {
    let mut names = Vec::new();
    for (name, known) in named {
        if known.is_unconfirmed() && !names.contains(&name) {
            names.push(name);
        }
    }
    names
}

/// The same in words, where there is any.
pub(crate) fn recalled<'a>(
    what: &str,
    named: impl Iterator<Item = (&'a str, Known)>,
) -> Option<String> {
    let names = recalled_names(named);
    (!names.is_empty()).then(|| format!("{what} {}", names.join(", ")))
}

/// What a question was answered with.
pub(crate) trait Answered {
    /// Its words.
    fn show(&self, text: &Text, out: &mut String);

    /// Why its figures are what they are; a reason that is put in words at once
    /// is in `units`.
    fn reasons(&self, units: Units) -> Vec<Reason> {
        let _ = units;
        Vec::new()
    }

    /// What in it comes from memory alone, for the line that says so.
    fn unconfirmed(&self) -> Option<String> {
        None
    }

    /// Does it hold a reading that is outside its limits?
    fn is_out_of_limits(&self) -> bool {
        false
    }
}

impl<T: Answered> Answered for Box<T> {
    fn show(&self, text: &Text, out: &mut String) {
        (**self).show(text, out);
    }
    fn reasons(&self, units: Units) -> Vec<Reason> {
        (**self).reasons(units)
    }
    fn unconfirmed(&self) -> Option<String> {
        (**self).unconfirmed()
    }
    fn is_out_of_limits(&self) -> bool {
        (**self).is_out_of_limits()
    }
}

/// Reads a line that begins as a question of its own does: the line, and how
/// many bytes the whole line has.
type Read = fn(&str, usize) -> Option<Parsed<'_, Query>>;

macro_rules! questions {
    ($($module:ident: $($(#[$doc:meta])* $asked:ident($typed:ty)),+
        => [$($answer:ident($figures:ty)),+] $(read by $read:path)?;)+) => {
        /// One line, read.
        #[derive(Clone, Debug)]
        #[non_exhaustive]
        pub enum Query {
            $($($(#[$doc])* $asked($typed),)+)+
        }

        impl Query {
            /// The question it is.
            pub(crate) fn question(&self) -> &dyn Question {
                match self {
                    $($(Self::$asked(typed) => typed,)+)+
                }
            }

            /// What its lines begin with and hold.
            #[cfg_attr(
                not(feature = "command"),
                allow(dead_code, reason = "for completion at the prompt")
            )]
            pub(crate) const fn clauses(&self) -> &'static [Clause] {
                match self {
                    $($(Self::$asked(_) => $module::CLAUSES,)+)+
                }
            }
        }

        /// What a query was answered with.
        #[derive(Clone, Debug, JsonSchema, Serialize)]
        #[serde(tag = "answer", rename_all = "snake_case")]
        #[allow(missing_docs, reason = "what each holds says what it is")]
        #[non_exhaustive]
        pub enum Answer {
            $($($answer($figures),)+)+
        }

        impl Answer {
            fn answered(&self) -> &dyn Answered {
                match self {
                    $($(Self::$answer(figures) => figures,)+)+
                }
            }
        }

        /// How lines are read that begin with a word of their own.
        pub(crate) const READERS: &[Read] = &[$($($read,)?)+];

        /// The clauses of each question: what its lines begin with and hold.
        pub(crate) const CLAUSES: &[&[Clause]] = &[$($module::CLAUSES,)+];

        /// The help of each question.
        pub(crate) const HELP: &[&[help::answered::HelpTopic]] = &[$($module::HELP,)+];
    };
}

// In this order lines are tried, and words are looked up.
questions! {
    thread:
        /// A thread and what is asked of it.
        Thread(Box<thread::asked::ThreadQuery>) => [Thread(Box<thread::figures::ThreadAnswer>),
        Tap(Box<thread::figures::TapAnswer>), ClearanceHole(Box<thread::figures::ClearanceHoleAnswer>),
        Wires(Box<thread::figures::WiresAnswer>), OverWires(Box<thread::figures::OverWiresAnswer>),
        ThreadPasses(Box<thread::pass_figures::ThreadPassesAnswer>)] read by thread::led::led;
    help:
        /// `help`, with the topic and its place.
        Help(help::Topic) => [Help(help::answered::HelpAnswer)] read by help::read;
    why:
        /// `why`, of the last answer or of the query after it.
        Why(why::Why) => [Why(why::answered::WhyAnswer)] read by why::read;
    settings:
        /// A setting, with the new value if there is one.
        Setting(settings::asked::Setting) => [Settings(Box<settings::answered::InForce>)] read by settings::asked::read;
    crib:
        /// A question about the crib, or a change of it.
        Crib(crib::asked::CribQuery) => [Crib(Box<crib::figures::CribAnswer>)] read by crib::read;
    hardware:
        /// A ring, a pin, a Woodruff key, a plug or an O-ring, and what is cut for it.
        Hardware(Box<hardware::HardwareText>) => [Hardware(Box<hardware::HardwareAnswer>)] read by hardware::read;
    log:
        /// An entry of the pass log, or a question about it.
        Log(crate::query::Spot<log::asked::LogQuery>) => [PassLog(Box<log::figures::PassLogAnswer>),
        Logs(log::figures::LogsAnswer)] read by log::reader::log;
    job:
        /// A whole job out of a note.
        Job(job::asked::JobQuery) => [Job(Box<job::answered::JobAnswer>)] read by job::read;
    drill:
        /// `drill SIZE`: the nearest drills.
        Drill(drill::asked::DrillFor) => [Drill(drill::answered::DrillAnswer)] read by drill::asked::read;
    keyway:
        /// `keyway for SIZE`: the key and keyways of a shaft.
        Keyway(Box<keyway::asked::KeywayFor>) => [Keyway(Box<keyway::answered::KeywayAnswer>)] read by keyway::asked::read;
    joint:
        /// `assemble SIZE`: parts pressed or shrunk together.
        Assemble(Box<joint::asked::JointText>),
        /// `pick SIZE holds TORQUE`: classes by what a joint must do.
        PickGrip(Box<joint::asked::GripText>) => [Assembly(Box<joint::figures::AssemblyAnswer>), PickGrip(Box<joint::figures::PickGripAnswer>)] read by joint::read;
    pick:
        /// `pick SIZE clearance A..B`: classes that give it.
        Pick(pick::asked::Pick) => [Pick(pick::answered::PickAnswer)] read by pick::asked::read;
    reamer:
        /// `reamer SIZE cut SIZE`: what a reamer cut, and what to do.
        ReamerCut(Box<reamer::ReamerCutOf>) => [ReamerCut(Box<reamer::ReamerCutAnswer>)] read by reamer::read;
    block:
        /// `title block SIZE`: an untoleranced inch size.
        TitleBlock(Box<block::BlockOf>) => [TitleBlock(Box<block::TitleBlockAnswer>)] read by block::read;
    bearing:
        /// `bearing NUMBER`: a ball bearing and the seats of its rings.
        Bearing(Box<bearing::BearingOf>) => [Bearing(Box<bearing::BearingAnswer>)] read by bearing::read;
    seat:
        /// `seat shaft SIZE LOAD`: the class for a rolling bearing's seat.
        Seat(seat::asked::Seat) => [Seat(seat::answered::SeatAnswer)] read by seat::asked::read;
    bushing:
        /// `bushing SIZE od SIZE`: a bushing, its housing and its shaft.
        Bushing(Box<bushing::asked::BushingText>) => [BushingFit(Box<bushing::figures::BushingAnswer>), BushingInPlace(Box<bushing::figures::BushingInPlaceAnswer>)] read by bushing::read;
    stack:
        /// `stack LINK LINK`: the play that parts end to end leave.
        Stack(Box<stack::asked::StackText>) => [Stack(Box<stack::figures::StackAnswer>)] read by stack::read;
    align:
        /// `align A B over L`: the tailstock.
        Align(Box<align::asked::Align>) => [Align(Box<align::answered::AlignAnswer>)] read by align::asked::read;
    rehearse:
        /// `rehearse` a part: the odds before cutting.
        Rehearse(rehearse::reader::Rehearse) => [Rehearsal(Box<rehearse::figures::RehearsalAnswer>)] read by rehearse::reader::read;
    weight:
        /// `weight SECTION MATERIAL long SIZE`: what stock weighs.
        Weight(Box<weight::WeightOf>) => [Weight(weight::WeightAnswer)] read by weight::read;
    rescue:
        /// `rescue PART SIZE should be SIZE`: the ways out.
        Rescue(Box<rescue::RescueOf>) => [Rescue(Box<rescue::RescueAnswer>)] read by rescue::read;
    clean_up:
        /// `clean up SIZE SIZE`: the least bore that cleans up.
        CleanUp(Box<clean_up::CleanUpOf>) => [CleanUp(Box<clean_up::CleanUpAnswer>)] read by clean_up::read;
    by_mic:
        /// `thread SIZE N tpi`: which thread it is; `insert THREAD`.
        ByMic(Box<by_mic::ByMic>) => [ThreadsByMic(Box<by_mic::ThreadsByMicAnswer>),
        SquareThread(by_mic::SquareThreadAnswer), Insert(by_mic::InsertAnswer)] read by by_mic::read;
    service:
        /// `piston SIZE`, `hinge SIZE` and the like: running clearance by service.
        Service(Box<service::ServiceOf>) => [Runs(Box<service::RunsAnswer>),
        Printed(service::PrintedAnswer)] read by service::read;
    share:
        /// `share TORQUE, shaft SIZE`: what each of several holders takes.
        Share(Box<share::ShareOf>) => [Share(Box<share::ShareAnswer>)] read by share::read;
    general:
        /// `SIZE general CLASS`: an untoleranced size.
        General(general::asked::General) => [General(general::answered::GeneralAnswer)];
    grade:
        /// `SIZE grade N`: a standard tolerance.
        Grade(grade::asked::Grade) => [Grade(grade::answered::GradeAnswer)];
    size:
        /// A size alone.
        Size(crate::query::Size) => [Size(size::answered::SizeAnswer)];
    part:
        /// A feature or a pair.
        Part(Box<part::asked::Part>) => [Feature(Box<part::figures::FeatureAnswer>),
        Fit(Box<part::figures::FitAnswer>), Reading(Box<part::figures::ReadingAnswer>),
        PairReading(Box<part::figures::PairReadingAnswer>), Ream(Box<part::tool_figures::ReamAnswer>),
        Passes(Box<part::tool_figures::PassesAnswer>), FitWarm(Box<part::warm_figures::WarmAnswer>)];
}

impl Answer {
    /// What in an answer comes from memory alone, for the line that says so.
    pub fn unconfirmed(&self) -> Option<String> {
        self.answered().unconfirmed()
    }

    /// Why its figures are what they are.
    pub(crate) fn reasons(&self, units: Units) -> Vec<Reason> {
        self.answered().reasons(units)
    }

    /// Does it hold a reading that is outside its limits?
    pub fn is_out_of_limits(&self) -> bool {
        self.answered().is_out_of_limits()
    }

    /// Was a log to be kept in a file, and is not?
    pub fn is_not_logged(&self) -> bool {
        matches!(self, Self::Passes(passes) if passes.is_not_logged)
    }

    /// Its words.
    pub(crate) fn show(&self, text: &Text, out: &mut String) {
        self.answered().show(text, out);
    }
}
