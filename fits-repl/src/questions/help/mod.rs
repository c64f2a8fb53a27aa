//! Help, by topic.

pub(crate) mod answered;
pub(crate) mod shown;

use nom::{Parser, branch::alt, character::complete::char, combinator::value};

use crate::{
    answer::Answer,
    help,
    problem::Problem,
    query::{Query, Spot},
    questions::{Answered, Question, help::answered::HelpAnswer},
    render::text::Text,
    session::Session,
    words::{fault::Parsed, keywords::keyword},
};

/// The words that its lines begin with or hold.
pub(crate) const WORDS: &[&str] = &["help"];

/// Its help.
pub(crate) const HELP: &[HelpAnswer] = &[];

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
