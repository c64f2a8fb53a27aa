//! Threads: limits, tap drills, clearance holes, wires and passes.

pub(crate) mod answered;
pub(crate) mod asked;
pub(crate) mod figures;
pub(crate) mod led;
pub(crate) mod pass_figures;
pub(crate) mod passes_shown;
pub(crate) mod reader;
pub(crate) mod shown;

use fits_core::shop::Verdict;

use self::{
    asked::ThreadQuery,
    figures::{ClearanceHoleAnswer, OverWiresAnswer, TapAnswer, ThreadAnswer, WiresAnswer},
    pass_figures::ThreadPassesAnswer,
};
use crate::{
    answer::ThreadName,
    questions::{prelude::*, recalled_names},
};

/// Its clauses.
pub(crate) const CLAUSES: &[Clause] = &[
    Clause::free("tap", "", "drills for a tap").opens(),
    Clause::free("clearance", "", "holes that a screw passes").opens(),
    Clause::free("cut", "", "passes to cut it on the lathe").opens(),
    Clause::free("wires", "SIZE", "the size over three wires").opens(),
    Clause::free("over", "SIZE", "a reading over wires").opens(),
    Clause::free("nut", "", "the inside thread alone").opens(),
    Clause::free("screw", "", "the outside thread alone").opens(),
];

/// Its help.
pub(crate) const HELP: &[HelpTopic] = &[HelpTopic {
    topic: "threads",
    also: &["tap", "wires", "wire", "clearance", "over", "tpi", "pitch"],
    lines: &[
        "Names: M10x1.25, 3/8-24, #10-32, Tr20x4, 1/2-10 Acme 2G, 1/2 BSW, 2BA, G1/2,",
        "1/2-14 NPT; then classes, nut and screw as 6H/6g or 2B/2A, LH, 2 starts. A size",
        "with no pitch takes the coarse series. long SIZE: the length engaged. After tap:",
        "hub MATERIAL, hand, power, form. After cut: inside, straight, compound 29, nose",
        "(or radius: a round tool), flat (its width).",
        "The question may stand first (tap M10); nut or screw asks for one side.",
    ],
    examples: &[
        ("M10x1.25", "limits, blank, tap drill, depth of cut"),
        ("3/8-24 2B/2A", "a pair and its play"),
        ("thread 3/8", "a bare fraction as a thread"),
        ("M10 tap 70%", "drills for so much thread"),
        ("#2-56 tap #50", "what a drill in hand gives"),
        ("M10 clearance close", "holes that the screw passes"),
        ("3/8-24 2A wires", "the size over three wires"),
        ("3/8-24 2A over 0.3830in", "what a reading means, what to feed"),
        ("M10x1.25 cut", "on the lathe, pass by pass"),
        ("Tr20x4 cut inside straight", "a nut, fed by the cross slide"),
    ],
}];

impl Question for ThreadQuery {
    /// A thread is thought of in the system of its name.
    fn typed_in(&self, _: &Session) -> Units {
        if self.thread.value.form.is_inch() { Units::Inches } else { Units::Millimetres }
    }

    fn answer(&self, session: &Session) -> Result<Answer, Problem> {
        session.thread(self)
    }
}

impl Answered for ThreadAnswer {
    fn show(&self, text: &Text, out: &mut String) {
        text.thread(out, self);
    }

    fn reasons(&self, _: Units) -> Vec<Reason> {
        self.reasons.clone()
    }

    fn unconfirmed(&self) -> Option<String> {
        recalled_of(&self.reasons)
    }
}

impl Answered for TapAnswer {
    fn show(&self, text: &Text, out: &mut String) {
        text.tap(out, self);
    }

    fn reasons(&self, _: Units) -> Vec<Reason> {
        self.reasons.clone()
    }

    fn unconfirmed(&self) -> Option<String> {
        recalled_of(&self.reasons)
    }
}

impl Answered for ClearanceHoleAnswer {
    fn show(&self, text: &Text, out: &mut String) {
        text.clearance_holes(out, self);
    }

    fn reasons(&self, _: Units) -> Vec<Reason> {
        self.reasons.clone()
    }

    fn unconfirmed(&self) -> Option<String> {
        recalled_of(&self.reasons)
    }
}

impl Answered for WiresAnswer {
    fn show(&self, text: &Text, out: &mut String) {
        text.wires(out, self);
    }

    fn reasons(&self, _: Units) -> Vec<Reason> {
        self.reasons.clone()
    }

    fn unconfirmed(&self) -> Option<String> {
        recalled_of(&self.reasons)
    }
}

impl Answered for OverWiresAnswer {
    fn show(&self, text: &Text, out: &mut String) {
        text.over_wires(out, self);
    }

    fn reasons(&self, _: Units) -> Vec<Reason> {
        self.wires.reasons.clone()
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

    fn reasons(&self, _: Units) -> Vec<Reason> {
        self.reasons.clone()
    }

    fn unconfirmed(&self) -> Option<String> {
        recalled_of(&self.reasons)
    }
}

/// What of a thread's figures comes from memory alone, the first three by name.
fn recalled_of(reasons: &[Reason]) -> Option<String> {
    let named = reasons.iter().map(|reason| (reason.figure.as_str(), reason.known));
    let mut figures = recalled_names(named);
    // `why` names them all.
    let more = figures.len().saturating_sub(3);
    figures.truncate(3);
    let more = if more > 0 { format!(" and {more} more") } else { String::new() };
    (!figures.is_empty()).then(|| format!("{}{more}", figures.join(", ")))
}

impl Answer {
    /// The name in a thread's answer, and why its figures are what they are.
    pub fn thread_reasons(&self) -> Option<(&ThreadName, &[Reason])> {
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

    /// The name in a thread's answer, and why its figures are what they are.
    fn thread_mut(&mut self) -> Option<(&mut ThreadName, &mut Vec<Reason>)> {
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
