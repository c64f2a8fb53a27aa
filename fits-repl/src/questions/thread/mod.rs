//! Threads: limits, tap drills, clearance holes, wires and passes.

pub(crate) mod answered;
pub(crate) mod asked;
pub(crate) mod figures;
pub(crate) mod led;
pub(crate) mod reader;
pub(crate) mod shown;

use self::{
    asked::ThreadQuery,
    figures::{
        ClearanceHoleAnswer, OverWiresAnswer, TapAnswer, ThreadAnswer, ThreadPassesAnswer,
        WiresAnswer,
    },
};
use fits_core::{shop::Verdict, source::Reason};

use crate::{
    answer::{Answer, ThreadName},
    problem::Problem,
    query::Units,
    questions::{Answered, Question, help::answered::HelpAnswer},
    render::text::Text,
    session::Session,
};

/// The words that its lines begin with or hold.
pub(crate) const WORDS: &[&str] = &[];

/// Its help.
pub(crate) const HELP: &[HelpAnswer] = &[];

impl Question for ThreadQuery {
    /// A thread is thought of in the system of its name.
    fn typed_in(&self, _: &Session) -> Units {
        if self.thread.value.form.is_inch() { Units::Inches } else { Units::Millimetres }
    }

    fn answer(&self, session: &Session) -> Result<Answer, Problem> {
        session.thread(self)
    }

    fn reasons(&self, session: &Session, answer: &Answer) -> Result<Vec<Reason>, Problem> {
        let _ = session;
        Ok(answer.thread_reasons().unwrap_or_default().to_vec())
    }
}

impl Answered for ThreadAnswer {
    fn show(&self, text: &Text, out: &mut String) {
        text.thread(out, self);
    }

    fn unconfirmed(&self) -> Option<String> {
        recalled_of(&self.reasons)
    }
}

impl Answered for TapAnswer {
    fn show(&self, text: &Text, out: &mut String) {
        text.tap(out, self);
    }

    fn unconfirmed(&self) -> Option<String> {
        recalled_of(&self.reasons)
    }
}

impl Answered for ClearanceHoleAnswer {
    fn show(&self, text: &Text, out: &mut String) {
        text.clearance_holes(out, self);
    }

    fn unconfirmed(&self) -> Option<String> {
        recalled_of(&self.reasons)
    }
}

impl Answered for WiresAnswer {
    fn show(&self, text: &Text, out: &mut String) {
        text.wires(out, self);
    }

    fn unconfirmed(&self) -> Option<String> {
        recalled_of(&self.reasons)
    }
}

impl Answered for OverWiresAnswer {
    fn show(&self, text: &Text, out: &mut String) {
        text.over_wires(out, self);
    }

    fn unconfirmed(&self) -> Option<String> {
        recalled_of(&self.wires.reasons)
    }

    fn is_out_of_limits(&self) -> bool {
        self.verdict != Verdict::Good
    }
}

impl Answered for ThreadPassesAnswer {
    fn show(&self, text: &Text, out: &mut String) {
        text.thread_passes(out, self);
    }

    fn unconfirmed(&self) -> Option<String> {
        recalled_of(&self.reasons)
    }
}

/// What of a thread's figures comes from memory alone, the first three by name.
fn recalled_of(reasons: &[Reason]) -> Option<String> {
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

impl Answer {
    /// Why a thread's figures are what they are.
    fn thread_reasons(&self) -> Option<&[Reason]> {
        Some(match self {
            Self::Thread(it) => &it.reasons,
            Self::Tap(it) => &it.reasons,
            Self::ClearanceHole(it) => &it.reasons,
            Self::Wires(it) => &it.reasons,
            Self::OverWires(it) => &it.wires.reasons,
            Self::ThreadPasses(it) => &it.reasons,
            _ => return None,
        })
    }

    /// The name in a thread's answer, and why its figures are what they are.
    fn thread_mut(&mut self) -> Option<(&mut ThreadName, &[Reason])> {
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
