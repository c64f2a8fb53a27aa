//! A size alone: `3/4in - 15 thou`.

pub(crate) mod answered;

use std::fmt::Write as _;

use fits_core::{Length, source::Known};

use self::answered::SizeAnswer;
use crate::{
    answer::Mm,
    query::Size,
    questions::{prelude::*, thread::answered::of_size},
    render::text::lines::wrapped,
};

/// Its clauses.
pub(crate) const CLAUSES: &[Clause] = &[];

/// Its help.
pub(crate) const HELP: &[HelpTopic] = &[HelpTopic {
    topic: "sizes",
    also: &[],
    lines: &[
        "A bare number takes the unit in the prompt. Units: mm, cm, m, um, in, \", ft,",
        "thou, tenths (of a thou), uin. Fractions as 3/4in and 1-1/2in.",
        "Drill gauges: #7, letter F.",
        "A size may be a small sum; alone on a line it is answered in both units.",
        "Kept exactly to 0.1 nm; 1/256 in and other finer fractions are rounded.",
    ],
    examples: &[
        ("3/4in", "in both units"),
        ("3/4in - 15 thou", "a sum: spaces about the sign"),
        ("(25.4 + 0.02)/2", "brackets, a plain number to divide by"),
        ("#7", "a number drill"),
    ],
}];

/// JSON numbers name lengths exactly up to this (2^53 counts of 0.1 nm).
const LONGEST: Length = Length::from_tenth_nanometres(1 << 53);

impl Question for Size {
    fn size(&self) -> Option<&Size> {
        Some(self)
    }

    fn answer(&self, session: &Session) -> Result<Answer, Problem> {
        let length = session.length(self)?;
        if length > LONGEST || length.checked_neg().is_ok_and(|length| length > LONGEST) {
            return Err(Problem::new("the size is longer than 900 km", self.at.clone())
                .advise("as in `3/4in - 15 thou`"));
        }
        let thread = of_size(self);
        Ok(Answer::Size(SizeAnswer { size_mm: Mm(length), thread, log_entry: None }))
    }

    fn carry_out(&self, session: &mut Session, line: &str) -> Result<Answer, Problem> {
        let mut answer = self.answer(session)?;
        if let Answer::Size(size) = &mut answer {
            let is_near = session.is_near_log(size.size_mm.0);
            size.log_entry = is_near.then(|| format!("read {}", line.trim()));
        }
        session.remember(line);
        Ok(answer)
    }
}

impl Answered for SizeAnswer {
    fn reasons(&self, _: Units) -> Vec<Reason> {
        vec![Reason {
            figure: "size".into(),
            value: self.size_mm.0.into(),
            rule: "1 in = 25.4 mm; kept as a whole count of 0.1 nm".into(),
            source: "international yard and pound agreement, 1959".into(),
            known: Known::Formula,
        }]
    }

    fn show(&self, text: &Text, out: &mut String) {
        let _ = writeln!(out, "{}", text.both_exact(self.size_mm.0));
        if let Some(thread) = &self.thread {
            let _ = writeln!(out, "  the thread is `{thread}`");
        }
        if let Some(entry) = &self.log_entry {
            let said = format!("nothing is entered in the open log; `{entry}` enters it");
            wrapped(out, "  ", &said);
        }
    }
}
