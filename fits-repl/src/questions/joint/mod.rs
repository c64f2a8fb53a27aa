//! Parts pressed or shrunk together: `assemble 20 H7/s6, hub steel od 40 long 25`.

pub(crate) mod answered;
pub(crate) mod asked;
pub(crate) mod at_work;
pub(crate) mod body_reader;
pub(crate) mod figures;
pub(crate) mod held;
pub(crate) mod known;
pub(crate) mod pick_shown;
pub(crate) mod picked;
pub(crate) mod reader;
pub(crate) mod reasons;
pub(crate) mod refused;
pub(crate) mod resolved;
pub(crate) mod shown;
pub(crate) mod tightness;
pub(crate) mod wish_reader;

use self::{
    asked::{GripText, JointText},
    figures::{AssemblyAnswer, PickGripAnswer},
};
use crate::questions::prelude::*;

/// Its clauses.
pub(crate) const CLAUSES: &[Clause] = &[
    Clause::new("assemble", "SIZE", "parts pressed or shrunk together"),
    Clause::new("hub", "a material", "what the outer part is made of").inside(),
    Clause::free("sleeve", "a material", "a sleeve between hub and shaft"),
    Clause::free("wall", "SIZE", "the wall of the part named before it"),
    Clause::free("id", "SIZE", "the bore of the part named before it"),
    Clause::free("interference", "SIZE or A..B", "the interference on the diameter"),
    Clause::free("friction", "N or A..B", "friction at the joint"),
    Clause::free("shrink", "", "joined by heat or cold"),
    Clause::free("holds", "TORQUE or FORCE", "what the joint must hold"),
    Clause::free("under", "FORCE", "what the press may give"),
    Clause::free("safe", "", "nothing may yield"),
];

/// Its help.
pub(crate) const HELP: &[HelpTopic] = &[HelpTopic {
    topic: "assemble",
    also: &[
        "assembly",
        "shrink",
        "material",
        "materials",
        "friction",
        "heat",
        "sleeve",
        "joint",
        "joints",
    ],
    lines: &[
        "Parts pressed or shrunk: press force, what it holds, whether it keeps, heat.",
        "hub and shaft MATERIAL, or e, nu, yield, alpha; hub od or wall; shaft id; long.",
        "sleeve MATERIAL od SIZE CLASSES stands between. dry, oil, degreased; friction N;",
        "rz SIZE roughness; shrink; clearance SIZE, within TIME for heat; blind; warm",
        "TEMP the grip at work; with INSTRUMENT or \u{b1}SIZE after a reading. Interference",
        "is on the diameter; say `interference 0.015 on radius` if yours is not. holds",
        "TORQUE, or a FORCE along the axis, says whether it does.",
        "Force, pressure, torque, heat: N kN lbf tons, MPa GPa psi ksi, Nm lbf-ft, C F.",
    ],
    examples: &[
        ("assemble 20mm H7/s6, hub aluminium od 40mm long 25mm, shaft steel", "by classes"),
        ("assemble 3/4in press, hub steel od 1.5in long 1in oil", "by a word, oiled"),
        ("assemble 3/4in = 0.7500in/0.7512in, hub steel wall 1/8in", "measured: hole/shaft"),
        ("assemble 30mm interference 0.035mm, hub e 110GPa nu 0.28 od 62mm", "by figures"),
        ("assemble 20mm H7/s6, hub steel od 40mm, shaft bronze id 14mm", "a bush closes"),
    ],
}];

/// A line that begins with `assemble`; `pick` is read with the other picks.
pub(crate) fn read(input: &str, total: usize) -> Option<Parsed<'_, Query>> {
    keyword("assemble")(input).ok().map(|(rest, ())| reader::assemble(rest, total))
}

impl Question for JointText {
    fn size(&self) -> Option<&Size> {
        Some(&self.head.size)
    }

    fn answer(&self, session: &Session) -> Result<Answer, Problem> {
        session.assemble(self)
    }
}

impl Question for GripText {
    fn size(&self) -> Option<&Size> {
        self.joint.size()
    }

    fn answer(&self, session: &Session) -> Result<Answer, Problem> {
        session.pick_grip(&self.joint, &self.wishes)
    }
}

impl Answered for AssemblyAnswer {
    fn show(&self, text: &Text, out: &mut String) {
        text.assembly(out, self);
    }

    fn reasons(&self, units: Units) -> Vec<Reason> {
        reasons::of_assembly(units, self)
    }
}

impl Answered for PickGripAnswer {
    fn show(&self, text: &Text, out: &mut String) {
        text.pick_grip(out, self);
    }

    fn reasons(&self, _: Units) -> Vec<Reason> {
        reasons::of_grip(self)
    }

    fn unconfirmed(&self) -> Option<String> {
        (!self.unconfirmed.is_empty()).then(|| self.unconfirmed.join(", "))
    }
}
