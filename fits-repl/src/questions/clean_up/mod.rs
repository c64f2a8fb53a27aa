//! A worn, tapered or line-bored bore: `clean up 0.753in 0.757in 0.761in`.

mod answered;
mod asked;
mod shown;

use fits_core::source::Known;

use crate::questions::prelude::*;

pub(crate) use self::{
    answered::CleanUpAnswer,
    asked::{CleanUpOf, read},
};

/// Its clauses.
pub(crate) const CLAUSES: &[Clause] = &[
    Clause::free(
        "clean up",
        "readings of a bore at several places",
        "the least bore that cleans up",
    )
    .opens(),
    Clause::free("was", "a size", "what a worn bore was before the wear"),
    Clause::free("out of line", "a size", "how far places lie off one axis"),
];

/// Its help.
pub(crate) const HELP: &[HelpTopic] = &[HelpTopic {
    topic: "cleaning",
    also: &["cleanup", "clean up", "clean", "line bore", "line bored", "tapered bore", "egged"],
    lines: &[
        "Readings of a worn, tapered or egged bore at several places: the least bore",
        "that cleans up, about its own middle or the old one; the next size, or a bush.",
        "was SIZE: before the wear; should be SIZE: what a bush must bring it back to;",
        "out of line SIZE: how far a place lies off; od SIZE, bush NAME, wall SIZE.",
    ],
    examples: &[
        ("clean up 0.753in 0.757in 0.761in, should be 3/4in", "three readings"),
        ("clean up 25.02 25.3, was 25, should be 25, od 45", "worn to one side"),
    ],
}];

impl Question for CleanUpOf {
    fn typed_in(&self, session: &Session) -> Units {
        self.0.first_size().map_or(session.units, |size| thought_in(size, session.units))
    }

    fn answer(&self, session: &Session) -> Result<Answer, Problem> {
        session.clean_up(&self.0).map(|found| Answer::CleanUp(Box::new(found)))
    }
}

impl Answered for CleanUpAnswer {
    fn show(&self, text: &Text, out: &mut String) {
        text.clean_up(out, self);
    }

    fn reasons(&self, _: Units) -> Vec<Reason> {
        let rule = |figure: &str, rule: &'static str, source: &str, known| Reason {
            figure: figure.into(),
            value: "".into(),
            rule: rule.into(),
            source: source.into(),
            known,
        };
        let bush = self.bush.as_ref().map(|bush| {
            rule("bush", "its least wall", "walls for repair bushes, unconfirmed", bush.known)
        });
        let mut reasons = vec![
            rule(
                "least bore",
                "greatest reading and twice what a place lies out of line; about the old middle twice the greatest less the size before",
                "geometry: a circle in a circle",
                Known::Formula,
            ),
            rule(
                "next size",
                "64ths to 1 in, 32nds to 2, 16ths beyond; half millimetres to 20, whole beyond",
                "common practice, no source",
                Known::Practice,
            ),
        ];
        reasons.extend(bush);
        reasons
    }

    fn unconfirmed(&self) -> Option<String> {
        let bush = self.bush.as_ref()?;
        bush.known.is_unconfirmed().then(|| "the wall of a bush".into())
    }
}
