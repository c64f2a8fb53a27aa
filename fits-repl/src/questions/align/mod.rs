//! The tailstock: `align 19.98 20.01 over 150`.

pub(crate) mod answered;
pub(crate) mod asked;
pub(crate) mod shown;

use self::{answered::AlignAnswer, asked::Align};
use fits_core::source::{Known, Reason};

use crate::{
    answer::Answer,
    problem::Problem,
    query::Units,
    questions::{Answered, Question, help::answered::HelpAnswer, why::answered::said},
    render::text::Text,
    session::Session,
};

/// The words that its lines begin with or hold.
pub(crate) const WORDS: &[&str] = &["align"];

/// Its help.
pub(crate) const HELP: &[HelpAnswer] = &[];

impl Question for Align {
    fn typed_in(&self, session: &Session) -> Units {
        session.align_in(self)
    }

    fn answer(&self, session: &Session) -> Result<Answer, Problem> {
        session.align(self)
    }

    fn reasons(&self, session: &Session, answer: &Answer) -> Result<Vec<Reason>, Problem> {
        let value = match answer {
            Answer::Align(found) => said(session.shown, found.set_over_mm.0),
            _ => String::new(),
        };
        Ok(vec![Reason {
            figure: "set-over".into(),
            value,
            rule: "half the change of diameter over the whole length between centres".into(),
            source: "US Navy, Machinery Repairman, NAVEDTRA 14345".into(),
            known: Known::Seen,
        }])
    }
}

impl Answered for AlignAnswer {
    fn show(&self, text: &Text, out: &mut String) {
        text.align(out, self);
    }
}
