//! An answer as one SVG picture, a file of its own.

mod joint;
pub(crate) mod passes;
mod stack;
pub(crate) mod zones;

use crate::{
    answer::{Answer, SettingsAnswer},
    render::{
        Colour,
        draw::{Drawing, EDGE, WIDTH},
        text::Text,
    },
};

/// The picture of an answer, where it has one.
pub fn picture(answer: &Answer, settings: SettingsAnswer) -> Option<String> {
    let text = Text { settings, colour: Colour::Off };
    let mut drawing = drawn(answer, &text)?;
    if let Some(what) = answer.unconfirmed() {
        drawing.gap(8.0);
        let words = format!("! unconfirmed: {what}, from memory; check before you cut");
        drawing.paragraph(EDGE, WIDTH - 2.0 * EDGE, &words, true);
    }
    Some(drawing.alone())
}

/// What is drawn.
fn drawn(answer: &Answer, text: &Text) -> Option<Drawing> {
    match answer {
        Answer::Assembly(joint) => Some(joint::joint(joint, text)),
        Answer::Feature(feature) => zones::feature(feature, text),
        Answer::Fit(fit) => zones::fit(fit, text),
        Answer::Reading(reading) => zones::reading(reading, text),
        Answer::PairReading(pair) => zones::pair_reading(pair, text),
        Answer::Passes(plan) => passes::plan(plan, text),
        Answer::PassLog(log) => passes::log(log, text),
        Answer::Stack(stack) => stack::stack(stack, text),
        _ => None,
    }
}
