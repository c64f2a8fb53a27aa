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
use crate::{query::Spot, questions::prelude::*};

/// Its clauses.
pub(crate) const CLAUSES: &[Clause] = &[
    Clause::new("cut", "SIZE = SIZE", "what was dialled and read"),
    Clause::new("done", "", "the part is finished"),
    Clause::new("log", "list, open or leave", "the pass log"),
    Clause::new("read", "SIZE", "read again"),
    Clause::new("scrap", "", "it is scrap"),
    Clause::new("spring", "= SIZE", "a pass without infeed"),
    Clause::new("undo", "", "takes the last entry back"),
    Clause::free("sure", "", "enters what was doubted"),
];

/// Its help.
pub(crate) const HELP: &[HelpTopic] = &[HelpTopic {
    topic: "log",
    also: &["cut", "spring", "read", "undo", "done", "scrap", "logs"],
    lines: &[
        "A plan that says where the work is opens a pass log: enter what you dial and",
        "read, and it says what to dial next, and the odds. Each entry is on disk before",
        "it is answered; an entry that cannot be is asked about: `sure` after it stands.",
        "`log list` names them, `log open` and a name goes back to one, `log leave` out.",
        "Finished logs teach what to expect of your lathe. Dials as the dial is set.",
    ],
    examples: &[
        ("bore 20mm H7 from 19.6mm with bore gauge", "the plan, and a log"),
        ("cut 0.2mm = 19.79mm", "dialled and read"),
        ("read 19.792mm", "read again"),
        ("read 19.790mm front 19.794mm back", "two places, or 19.790 / 19.794"),
        ("read 19.795mm at 25C steel", "a warm part, brought to 20 °C"),
        ("read 19.795mm with telescoping gauge", "by another gauge, this once"),
        ("cut 0.1mm", "dialled, not measured"),
        ("spring = 19.888mm", "a pass without infeed, and what was read"),
        ("undo", "the last entry is taken back"),
        ("log", "the note so far"),
        ("scrap", "or `done`: it is closed"),
    ],
}];

impl Question for Spot<LogQuery> {
    fn stands_alone(&self) -> bool {
        false
    }

    fn typed_in(&self, session: &Session) -> Units {
        session.log_in(&self.value)
    }

    fn answer(&self, session: &Session) -> Result<Answer, Problem> {
        session.log_as_it_stands(&self.at)
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

    fn reasons(&self, _: Units) -> Vec<Reason> {
        self.reasons.clone()
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
