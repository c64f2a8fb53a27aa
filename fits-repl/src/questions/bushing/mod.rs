//! A bushing, its housing and its shaft: `bushing 20 od 26 long 20, hub steel od 60`.

pub(crate) mod answered;
pub(crate) mod asked;
pub(crate) mod figures;
mod in_place_shown;
pub(crate) mod reader;
pub(crate) mod shown;

use self::{
    asked::BushingText,
    figures::{BushingAnswer, BushingInPlaceAnswer},
};
use crate::questions::prelude::*;

/// Its clauses.
pub(crate) const CLAUSES: &[Clause] = &[
    Clause::free("bushing", "SIZE and material", "a bushing, its housing and its shaft").opens(),
    Clause::free("bush", "SIZE", "the same").opens(),
    Clause::free("od", "SIZE", "the outside diameter"),
    Clause::free("housing", "SIZE or material", "what it is pressed into"),
    Clause::free("running", "A..B", "the play wanted where it runs"),
    Clause::free("rpm", "N", "how fast the shaft turns"),
];

/// Its help.
pub(crate) const HELP: &[HelpTopic] = &[HelpTopic {
    topic: "bushings",
    also: &["bush", "running", "close-in", "housing"],
    lines: &[
        "A bushing pressed into a housing closes in: the play left, the shaft to turn, or",
        "the bore to ream in place. Of bronze, sintered bronze, nylon, acetal, or lined.",
        "running A..B, or a service: general, rough, motor, spindle, fast spindle or",
        "pivot, as for rough. housing CLASS, shaft CLASS or SIZE, rpm N, warm TEMP.",
        "The end play of a flange or a thrust washer is a stack: `help stack`.",
    ],
    examples: &[
        ("bushing 20mm od 26mm long 20mm, hub steel od 60mm, bronze", "the shaft to turn"),
        ("bushing 20mm od 26mm long 20mm, hub steel, bronze, running 0.03mm..0.1mm", "play"),
        ("bushing 3/4in od 1in long 1in, hub cast iron, nylon, warm 120F", "nylon, warm"),
        ("bushing 20mm od 26mm long 20mm, hub steel, bronze, shaft h6", "the bore in place"),
        ("bushing 20mm od 26mm long 20mm, hub steel, bronze, for rough", "a hand machine"),
        ("bushing in place 0.7485in, bronze, shaft 0.7495in", "measured once pressed in"),
        ("bushing 20mm lined", "a lined one by its maker's table"),
        ("stack shaft 30.2 \u{b1}0.05, flange -2x 3 \u{b1}0.05, hub -24 \u{b1}0.05", "flanges"),
    ],
}];

/// A line that begins with `bushing` or `bush`, and goes on as a question.
pub(crate) fn read(input: &str, total: usize) -> Option<Parsed<'_, Query>> {
    let (rest, ()) = keyword("bushing")(input).or_else(|_| keyword("bush")(input)).ok()?;
    reader::is_asked(rest).then(|| reader::bushing(rest, total))
}

impl Question for BushingText {
    fn size(&self) -> Option<&Size> {
        Some(&self.bore.0)
    }

    fn answer(&self, session: &Session) -> Result<Answer, Problem> {
        session.bushing(self)
    }
}

impl Answered for BushingAnswer {
    fn show(&self, text: &Text, out: &mut String) {
        text.bushing(out, self);
    }

    fn reasons(&self, units: Units) -> Vec<Reason> {
        answered::why::of_fit(units, self)
    }

    fn unconfirmed(&self) -> Option<String> {
        self.known.is_unconfirmed().then(|| self.unconfirmed.clone())
    }
}

impl Answered for BushingInPlaceAnswer {
    fn show(&self, text: &Text, out: &mut String) {
        text.bushing_in_place(out, self);
    }

    fn reasons(&self, _: Units) -> Vec<Reason> {
        vec![answered::why::in_place(self)]
    }

    fn unconfirmed(&self) -> Option<String> {
        self.known.is_unconfirmed().then(|| "the running clearance".to_owned())
    }

    fn is_out_of_limits(&self) -> bool {
        !matches!(self.play_verdict, None | Some(fits_core::shop::bushing::RunningPlay::Good))
    }
}
