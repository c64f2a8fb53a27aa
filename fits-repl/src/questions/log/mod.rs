//! The pass log: `cut 0.2 = 19.79`.

pub(crate) mod answered;
pub(crate) mod asked;
pub(crate) mod dial_shown;
pub(crate) mod doubts;
pub(crate) mod figures;
pub(crate) mod note;
pub(crate) mod opened;
pub(crate) mod places;
pub(crate) mod reader;
pub(crate) mod readings_reader;
pub(crate) mod shown;

use self::{
    asked::LogQuery,
    figures::{LogsAnswer, PassLogAnswer},
};
use fits_core::source::Reason;

use crate::{
    answer::Answer,
    problem::Problem,
    query::{Spot, Units},
    questions::{Answered, Question, help::answered::HelpAnswer},
    render::text::Text,
    session::Session,
};

/// The words that its lines begin with or hold.
pub(crate) const WORDS: &[&str] = &["cut", "done", "log", "read", "scrap", "spring", "undo"];

/// Its help.
pub(crate) const HELP: &[HelpAnswer] = &[];

impl Question for Spot<LogQuery> {
    fn typed_in(&self, session: &Session) -> Units {
        session.log_in(&self.value)
    }

    fn answer(&self, session: &Session) -> Result<Answer, Problem> {
        Ok(session.in_force(None))
    }

    fn reasons(&self, session: &Session, _: &Answer) -> Result<Vec<Reason>, Problem> {
        Ok(session.why_log())
    }

    fn carry_out(&self, session: &mut Session, _: &str) -> Result<Answer, Problem> {
        let answer = session.log(self)?;
        if matches!(answer, Answer::PassLog(_)) {
            // What there is to explain is the log, whatever was entered.
            session.remember("log");
        }
        Ok(answer)
    }
}

impl Answered for PassLogAnswer {
    fn show(&self, text: &Text, out: &mut String) {
        text.pass_log(out, self);
    }

    fn is_out_of_limits(&self) -> bool {
        self.is_finished_badly()
    }
}

impl Answered for LogsAnswer {
    fn show(&self, text: &Text, out: &mut String) {
        text.logs(out, self);
    }
}
