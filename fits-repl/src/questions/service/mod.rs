//! Running clearance by service, and printed parts on pins: `piston 1in aluminium
//! in cast iron at 150C`, `printed petg hole for 8mm pin, slip`.

mod answered;
mod asked;
mod shown;

use crate::questions::prelude::*;

pub(crate) use self::{
    answered::{PrintedAnswer, RunsAnswer},
    asked::{ServiceOf, read},
};

/// Its clauses.
pub(crate) const CLAUSES: &[Clause] = &[
    Clause::free("piston", "a size, what it is made of, `in` and the cylinder", "its clearance")
        .opens(),
    Clause::free("telescope", "a size", "clearance of a tube that slides in another").opens(),
    Clause::free("hinge", "a size", "clearance of a hand-moved pivot").opens(),
    Clause::free("crank", "a size", "clearance of a crank's journal").opens(),
    Clause::free("roller", "a size", "clearance of a roller or idler on its pin").opens(),
    Clause::free("slide", "a size, and gib", "clearance of a slide").opens(),
    Clause::free("printed", "PLA, PETG or ABS, and a pin's size", "the hole to draw").opens(),
    Clause::free("ringed", "", "a piston with rings or packing"),
    Clause::free("lapped", "", "a piston without rings, lapped in"),
    Clause::free("gib", "", "a slide taken up by a gib"),
];

/// Its help.
pub(crate) const HELP: &[HelpTopic] = &[HelpTopic {
    topic: "service",
    also: &[
        "piston",
        "cylinder",
        "telescoping",
        "hinge",
        "crank",
        "roller",
        "slide",
        "gib",
        "printed",
    ],
    lines: &[
        "Running clearance by service: piston (ringed, lapped, soft ring), telescope",
        "(thin), hinge and crank (rough), roller, slide (gib). SIZE MATERIAL in MATERIAL,",
        "at T: what it grows is added, the outer part taken as still cold.",
        "printed PLA, PETG or ABS: the hole to draw for a pin, slip or press.",
    ],
    examples: &[
        ("piston 1in aluminium in cast iron at 150C", "cold clearance for a hot piston"),
        ("telescope 1in", "a tube that slides in another"),
        ("hinge 1/2in rough", "a gate, painted"),
        ("slide 2in gib", "with a gib"),
        ("printed petg hole 8mm pin, slip", "a printed roller on a pin"),
    ],
}];

impl Question for ServiceOf {
    fn typed_in(&self, session: &Session) -> Units {
        self.said.first_size().map_or(session.units, |size| thought_in(size, session.units))
    }

    fn answer(&self, session: &Session) -> Result<Answer, Problem> {
        if self.service == "printed" {
            return session.printed(&self.said).map(Answer::Printed);
        }
        session.runs(self).map(|found| Answer::Runs(Box::new(found)))
    }
}

impl Answered for RunsAnswer {
    fn show(&self, text: &Text, out: &mut String) {
        text.runs(out, self);
    }

    fn reasons(&self, _: Units) -> Vec<Reason> {
        self.reasons.clone()
    }

    fn unconfirmed(&self) -> Option<String> {
        self.known.is_unconfirmed().then(|| format!("the clearance of a {}", self.service))
    }
}

impl Answered for PrintedAnswer {
    fn show(&self, text: &Text, out: &mut String) {
        text.printed(out, self);
    }

    fn reasons(&self, _: Units) -> Vec<Reason> {
        vec![self.reason.clone()]
    }
}
