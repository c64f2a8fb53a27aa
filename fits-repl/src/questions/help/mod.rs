//! Help, by topic.

pub(crate) mod answered;
pub(crate) mod shown;

use nom::{Parser, branch::alt, character::complete::char, combinator::value};

use crate::{
    help,
    query::Spot,
    questions::{help::answered::HelpAnswer, prelude::*},
};

/// Its clauses.
pub(crate) const CLAUSES: &[Clause] =
    &[Clause::new("help", "a topic or a word", "what can be typed")];

/// Its help.
pub(crate) const HELP: &[HelpTopic] = &[
    HelpTopic {
        topic: "help",
        also: &[],
        lines: &["Type a size and how it fits; the answer says what to cut to."],
        examples: &[
            ("20mm H7/g6", "what to cut both parts to, and how"),
            ("20mm H7 = 20.013mm", "a reading: cut more, good or over"),
            ("20mm H7/g6, hole = 20.013mm", "the shaft to suit a hole already measured"),
            ("bore 20mm H7 from 19.6mm", "pass by pass from where the bore is now"),
            ("help pairs", "more on a topic"),
        ],
    },
    HelpTopic {
        topic: "program",
        also: &["json", "batch", "exit"],
        lines: &[
            "fits                opens the prompt; Ctrl-C clears the line, Ctrl-D leaves",
            "fits QUERY          answers once; --json as one JSON object, --svg a picture",
            "fits batch          reads a query a line, writes a JSON object a line, or with",
            "                    --csv COLUMNS a table; --alone: each line stands for itself",
            "fits schema         describes the JSON; fits --help has all options and files",
            "fits man, fits completions SHELL: the man page, and what a shell completes",
            "Exit status: 0 answered; 1 a reading is out of limits; 2 not understood;",
            "3 a file or the machine failed. --color never or NO_COLOR turns colour off.",
            "--crib FILE and --log FILE name the tools and the pass log, in any of these.",
        ],
        examples: &[("20mm H7/g6", "as fits 20mm H7/g6")],
    },
];

/// `help`, with the topic and its place.
#[derive(Clone, Debug)]
pub struct Topic(pub Option<Spot<String>>);

/// A line that begins with `help` or `?`.
pub(crate) fn read(input: &str, total: usize) -> Option<Parsed<'_, Query>> {
    let (rest, ()) = alt((keyword("help"), value((), char('?')))).parse(input).ok()?;
    let topic = rest.trim_start();
    let typed = topic.trim_end();
    let at = total - topic.len()..total - topic.len() + typed.len();
    let topic = (!typed.is_empty()).then(|| Spot { value: typed.to_owned(), at });
    Some(Ok(("", Query::Help(Topic(topic)))))
}

impl Question for Topic {
    fn answer(&self, session: &Session) -> Result<Answer, Problem> {
        Ok(session.in_force(None))
    }

    fn carry_out(&self, _: &mut Session, _: &str) -> Result<Answer, Problem> {
        help::about(self.0.as_ref()).map(Answer::Help)
    }
}

impl Answered for HelpAnswer {
    fn show(&self, text: &Text, out: &mut String) {
        text.help(out, self);
    }
}
