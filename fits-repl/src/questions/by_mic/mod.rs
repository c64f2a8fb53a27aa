//! Threads by what a micrometer reads, square threads and wire inserts: `thread
//! 0.308in 18 tpi`, `thread square 1in 5 tpi`, `insert M8`.

mod answered;
mod asked;
mod shown;

use fits_core::source::Known;

use self::answered::ByMicFigures;
use crate::questions::prelude::*;

pub(crate) use self::{
    answered::{InsertAnswer, SquareThreadAnswer, ThreadsByMicAnswer},
    asked::{ByMic, read},
};

/// Its clauses.
pub(crate) const CLAUSES: &[Clause] = &[
    Clause::free("thread", "a size and a pitch, as 18 tpi or pitch 1.25mm", "which thread it is")
        .opens(),
    Clause::free("insert", "a thread", "the hole for a wire insert").opens(),
    Clause::free("tpi", "after a number", "turns of a thread to an inch"),
    Clause::free("square", "a size and a pitch", "a square thread of an old machine").opens(),
];

/// Its help.
pub(crate) const HELP: &[HelpTopic] = &[HelpTopic {
    topic: "by-mic",
    also: &[
        "unknown thread",
        "thread by mic",
        "which thread",
        "insert",
        "wire insert",
        "square thread",
        "tpi",
    ],
    lines: &[
        "A thread known by its outside and its pitch: what it may be, with what a new",
        "one measures. `nut` after the size: the bore of a nut was read. `square`: a",
        "square thread, which no standard limits. insert THREAD: drill and tap sizes.",
    ],
    examples: &[
        ("thread 0.308in 18 tpi", "worn or turned, it may be a 5/16-18"),
        ("thread 7.85mm pitch 1.25mm", "an M8"),
        ("thread nut 0.27in 18 tpi", "by the bore of the nut"),
        ("thread square 1in 5 tpi", "an old vice's screw"),
        ("insert M8", "the hole for a wire insert"),
    ],
}];

impl Question for ByMic {
    fn typed_in(&self, session: &Session) -> Units {
        match self {
            Self::Read { said, .. } => {
                let by_size = || said.first_size().map(|size| thought_in(size, session.units));
                // Turns to an inch are said of inch threads.
                if said.has("tpi") && !answered::says_millimetres(said) {
                    Units::Inches
                } else {
                    by_size().unwrap_or(session.units)
                }
            }
            Self::Insert(designation) => {
                if designation.value.form.is_inch() {
                    Units::Inches
                } else {
                    Units::Millimetres
                }
            }
        }
    }

    fn answer(&self, session: &Session) -> Result<Answer, Problem> {
        match self {
            Self::Read { said, at, .. } if said.has("square") => {
                session.square_thread(said, at).map(Answer::SquareThread)
            }
            Self::Read { said, at, .. } => {
                session.by_mic(said, at).map(|found| Answer::ThreadsByMic(Box::new(found)))
            }
            Self::Insert(designation) => Session::insert(designation).map(Answer::Insert),
        }
    }
}

impl Answered for ThreadsByMicAnswer {
    fn show(&self, text: &Text, out: &mut String) {
        text.threads_by_mic(out, self);
    }

    fn reasons(&self, _: Units) -> Vec<Reason> {
        let reason = |thread: &ByMicFigures| Reason {
            figure: thread.name.clone(),
            value: between(thread.crest_min_mm.0, thread.crest_max_mm.0),
            rule: "what the crest of a new one of the usual class measures".into(),
            source: thread.system.into(),
            known: thread.known,
        };
        self.threads.iter().map(reason).collect()
    }

    fn unconfirmed(&self) -> Option<String> {
        crate::questions::recalled(
            "figures of",
            self.threads.iter().map(|thread| (thread.name.as_str(), thread.known)),
        )
    }
}

impl Answered for SquareThreadAnswer {
    fn show(&self, text: &Text, out: &mut String) {
        text.square_thread(out, self);
    }

    fn reasons(&self, _: Units) -> Vec<Reason> {
        vec![Reason {
            figure: "square thread".into(),
            value: self.minor_mm.0.into(),
            rule: "depth and width half the pitch".into(),
            source: "the form; no standard gives limits".into(),
            known: Known::Formula,
        }]
    }
}

impl Answered for InsertAnswer {
    fn show(&self, text: &Text, out: &mut String) {
        text.insert(out, self);
    }

    fn reasons(&self, _: Units) -> Vec<Reason> {
        vec![Reason {
            figure: "insert's hole".into(),
            value: between(self.bore_min_mm.0, self.bore_max_mm.0),
            rule: "D + 0.2165 P, and the nut's own tolerance of the minor diameter; the tap's pitch diameter D + 0.6495 P".into(),
            source: "wire thread inserts: the thread's pitch diameter and 1.299 P, unconfirmed; a forming-tap maker's minor diameters lie inside".into(),
            known: self.known,
        }]
    }

    fn unconfirmed(&self) -> Option<String> {
        self.known.is_unconfirmed().then(|| "the form of a wire insert's tap".into())
    }
}
