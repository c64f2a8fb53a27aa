//! General tolerances of untoleranced sizes: `20 general m`.

pub(crate) mod answered;
pub(crate) mod asked;
pub(crate) mod shown;

use self::{
    answered::{GeneralAnswer, quantity},
    asked::General,
};
use fits_core::{source::Reason, standards::iso2768::Class};

use crate::{
    answer::Answer,
    problem::Problem,
    query::Units,
    questions::{Answered, Question, help::answered::HelpAnswer, part::mates::thought_in},
    render::text::Text,
    session::Session,
};

/// The words that its lines begin with or hold.
pub(crate) const WORDS: &[&str] = &["general"];

/// Its help.
pub(crate) const HELP: &[HelpAnswer] = &[];

impl Question for General {
    fn typed_in(&self, session: &Session) -> Units {
        thought_in(&self.size, session.units)
    }

    fn answer(&self, session: &Session) -> Result<Answer, Problem> {
        session.general(&self.size, &self.class, self.kind)
    }

    fn reasons(&self, session: &Session, _: &Answer) -> Result<Vec<Reason>, Problem> {
        let nominal = session.nominal(&self.size)?;
        let class = self.class.value.parse::<Class>().ok();
        let found = class.and_then(|class| class.reasons(quantity(self.kind).0, nominal).ok());
        Ok(found.unwrap_or_default())
    }
}

impl Answered for GeneralAnswer {
    fn show(&self, text: &Text, out: &mut String) {
        text.general(out, self);
    }

    fn unconfirmed(&self) -> Option<String> {
        self.known.is_unconfirmed().then(|| "this tolerance".to_owned())
    }
}
