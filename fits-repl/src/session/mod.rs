//! Queries to answers: what was typed, looked up in the core, under the
//! settings in force. One evaluate function serves the prompt, the one-shot
//! command and the line-by-line service alike.

mod asked_about;
mod begun;
pub(crate) mod gauges;
pub(crate) mod materials;
mod phrase;
pub(crate) mod quantities;
pub(crate) mod sentence;
pub(crate) mod shop;
pub(crate) mod sizes;
mod started;
mod which_unit;

use std::sync::Arc;

use crate::{
    answer::{Answer, SettingsAnswer},
    problem::{Code, Problem},
    query::{Dial, Query, Units},
    render::json::Beside,
    sentence::Slip,
    session::{
        begun::Begun,
        shop::{Kept, Shop},
    },
    words,
};

pub use crate::session::shop::Logs;

/// The settings in force, the last answer's query, and what the shop keeps.
#[derive(Debug)]
#[allow(clippy::struct_excessive_bools, reason = "each is set by itself")]
pub struct Session {
    /// What bare numbers are.
    pub units: Units,
    /// They were chosen; until then a bare number that could be either is asked about.
    pub(crate) units_chosen: bool,
    /// How the dials read.
    pub dial: Dial,
    /// The units that the last question was put in: the answer's come first.
    pub(crate) shown: Units,
    /// The other settings.
    pub(crate) kept: Arc<Kept>,
    /// The crib, the pass log and their files.
    pub(crate) shop: Shop,
    /// Called with how much of long work is done, and how much there is; says whether to go on.
    pub progress: Option<fn(u64, u64) -> bool>,
    /// Today's date, for readings that are written to a note.
    pub today: Option<fn() -> String>,
    /// Only whether a line is answered matters, not what long work comes to.
    pub(crate) trying: bool,
    /// The answer itself is thrown away: figures that decide nothing are left out.
    pub(crate) only_whether: bool,
    /// The plain query that a phrase was taken for.
    pub(crate) read_as: Option<String>,
    /// The words of the last line that were taken for slips of typing.
    pub(crate) slips: Vec<Slip>,
    /// The line before this one was an entry of the log, and was refused.
    pub(crate) refused: Refused,
    /// Work that is told while its limits are still asked.
    pub(crate) begun: Option<Begun>,
    /// Every line stands for itself: settings, the log and changes of the crib
    /// are refused, and nothing of a line is left for the next.
    pub alone: bool,
    /// JSON holds limits and aims as a person is shown them, too.
    pub tells_shown: bool,
    /// Limits and fits come with the ways to cut them.
    pub(crate) plans: bool,
    pub(crate) last: String,
    pub(crate) last_settings: SettingsAnswer,
    pub(crate) last_kept: Arc<Kept>,
}

/// Whether an entry of the log was refused.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Refused {
    Nothing,
    /// In this line, which speaks of it in the shop's words.
    Now,
    /// In the line before this one.
    Before,
    /// The line before this one had figures and was not understood, and a log is open.
    Unread,
}

impl Default for Session {
    fn default() -> Self {
        Self::new()
    }
}

impl Session {
    /// Millimetres, and dials that read the change of diameter. Nothing is
    /// read from disk and nothing is written: a pass log is kept in memory.
    pub fn new() -> Self {
        let (units, dial) = (Units::Millimetres, Dial::Diameter);
        let last_settings = SettingsAnswer { units, dial };
        Self {
            units,
            units_chosen: false,
            dial,
            shown: units,
            read_as: None,
            slips: Vec::new(),
            kept: Arc::default(),
            shop: Shop::default(),
            progress: None,
            today: None,
            trying: false,
            only_whether: false,
            refused: Refused::Nothing,
            begun: None,
            alone: false,
            tells_shown: false,
            plans: true,
            last: String::new(),
            last_settings,
            last_kept: Arc::default(),
        }
    }

    /// How the last line was read, where it was not a plain query itself: the
    /// plain queries that give the same answer, one after another.
    pub fn read_as(&self) -> Option<&str> {
        self.read_as.as_deref()
    }

    /// Bare numbers are this from here on; nothing is remembered for the next time.
    pub const fn take_units(&mut self, units: Units) {
        self.units = units;
        self.units_chosen = true;
        self.shown = units;
    }

    /// Did anybody choose inches or millimetres for bare numbers?
    pub const fn units_are_chosen(&self) -> bool {
        self.units_chosen
    }

    /// What stands beside the last line's answer in JSON.
    pub fn beside<'a>(&'a self, file_notes: &'a [String]) -> Beside<'a> {
        let shown = self.tells_shown.then_some(self.shown);
        Beside {
            read_as: self.read_as(),
            slips: &self.slips,
            units: Some(self.shown),
            shown,
            file_notes,
        }
    }

    /// The words of the last line that were taken for slips of typing.
    pub fn slips(&self) -> &[Slip] {
        &self.slips
    }

    /// A copy to try a line on, at every keystroke if need be: nothing is
    /// written, and what takes long is begun, not done.
    #[must_use]
    pub fn trial(&self) -> Self {
        Self {
            kept: Arc::clone(&self.kept),
            shop: self.shop.on_trial(),
            progress: None,
            trying: true,
            read_as: None,
            slips: Vec::new(),
            begun: None,
            last: self.last.clone(),
            last_kept: Arc::clone(&self.last_kept),
            ..*self
        }
    }

    /// A trial whose answers nobody sees: only whether there is one.
    pub(crate) fn whether(&self) -> Self {
        Self { only_whether: true, ..self.trial() }
    }

    /// The settings in force.
    pub const fn settings(&self) -> SettingsAnswer {
        SettingsAnswer { units: self.units, dial: self.dial }
    }

    /// How the last answer is shown: a question put in inches is answered in
    /// inches first, whatever bare numbers are.
    pub const fn shown(&self) -> SettingsAnswer {
        SettingsAnswer { units: self.shown, dial: self.dial }
    }

    /// Answers one line.
    ///
    /// # Errors
    /// The line is not understood, or what it asks has no answer; the session
    /// is as it was.
    ///
    /// ```
    /// use fits_repl::{answer::Answer, session::Session};
    /// let mut session = Session::new();
    /// let Ok(Answer::Fit(fit)) = session.evaluate("20 H7/g6") else { panic!("a fit") };
    /// assert_eq!(fit.clearance.min_mm.0.to_string(), "0.007 mm");
    /// let problem = session.evaluate("20 h7/G6").unwrap_err();
    /// assert_eq!(problem.at, 3..5);
    /// ```
    pub fn evaluate(&mut self, line: &str) -> Result<Answer, Problem> {
        self.read_as = None;
        if self.alone {
            self.shown = self.units;
            self.last.clear();
            self.refused = Refused::Nothing;
        }
        self.slips.clear();
        let before = self.refused;
        let answer = match self.job_reading(line) {
            Some(answer) => answer,
            None => self.understand_or_go_on(line),
        };
        self.refused = match &answer {
            Err(problem) => self.refused_now(line, problem, before),
            Ok(_) => Refused::Nothing,
        };
        answer.map_err(|problem| self.as_told(line, problem))
    }

    /// What a line that had no answer leaves for the next one.
    fn refused_now(&self, line: &str, problem: &Problem, before: Refused) -> Refused {
        let was_refused = before != Refused::Nothing;
        let has_figures = line.bytes().any(|byte| byte.is_ascii_digit());
        let is_entry = words::is_entry(line) || self.refused == Refused::Now;
        let is_read = self.refused == Refused::Now || problem.kind == Code::NotAnswered;
        if before == Refused::Unread && has_figures {
            Refused::Unread
        } else if is_entry && is_read {
            // A refused `undo` is not a refused entry: the next one takes back.
            if has_figures || !was_refused { Refused::Before } else { Refused::Nothing }
        } else if has_figures && self.setting().log_is_open {
            Refused::Unread
        } else if is_entry && !was_refused {
            Refused::Before
        } else {
            Refused::Nothing
        }
    }

    /// A problem as it is told: in the asker's units, and with what would work.
    fn as_told(&self, line: &str, mut problem: Problem) -> Problem {
        if self.shown == Units::Inches {
            problem.say_in_inches();
        }
        if problem.advice.contains('`') && self.units_chosen && self.units == Units::Inches {
            problem.advice = self.in_millimetres(&problem.advice);
        }
        // A mended line is offered only if it is answered.
        if let Some(mended) = problem.mended(line) {
            match self.fully_mended(mended.clone(), &problem.advice, Self::understand) {
                Some(whole) if whole == mended => {}
                Some(whole) => problem.fix = Some((0..line.len(), whole)),
                None => {
                    let with = problem.fix.take().map(|(_, with)| with).unwrap_or_default();
                    // `say which, as` wants what it named, `nearest` has a name.
                    if let Some(rest) = problem.advice.strip_suffix(", as") {
                        problem.advice.truncate(rest.len());
                    } else if problem.advice.starts_with("nearest") {
                        problem.advice = format!("{}: {with}", problem.advice);
                    }
                }
            }
        }
        let works = |other: &String| self.whether().understand(other).is_ok();
        match (problem.mended(line), problem.mended_otherwise(line).filter(works)) {
            (Some(one), Some(other)) if one != other => problem.choose(vec![one, other]),
            (None, Some(other)) => problem.fix(0..line.len(), other),
            _ => problem,
        }
    }

    /// A mended line that is answered: where the like is wrong again, as a
    /// second number without a unit, that is mended too.
    pub(crate) fn fully_mended(
        &self,
        mut line: String,
        advice: &str,
        ask: fn(&mut Self, &str) -> Result<Answer, Problem>,
    ) -> Option<String> {
        const ROUNDS: usize = 8;
        for _ in 0..ROUNDS {
            let Err(again) = ask(&mut self.whether(), &line) else { return Some(line) };
            if advice.is_empty() || again.advice != advice {
                return None;
            }
            line = again.mended(&line)?;
        }
        None
    }

    pub(crate) fn ask(&mut self, line: &str) -> Result<Answer, Problem> {
        let query = words::read(line)?;
        self.ask_read(line, &query)
    }

    /// The answer of a plain query that is read already.
    pub(crate) fn ask_read(&mut self, line: &str, query: &Query) -> Result<Answer, Problem> {
        if self.alone && !query.question().stands_alone() {
            return Err(not_alone(line));
        }
        self.shown = query.question().typed_in(self);
        query.question().carry_out(self, line)
    }

    /// What was answered, and under which settings, for `why`.
    pub(crate) fn remember(&mut self, line: &str) {
        self.last.clear();
        self.last.push_str(line);
        self.last_settings = self.settings();
        if !Arc::ptr_eq(&self.last_kept, &self.kept) {
            self.last_kept = Arc::clone(&self.kept);
        }
    }

    pub(crate) fn why_last(&mut self, line: &str) -> Result<Answer, Problem> {
        if self.last.is_empty() && self.shop.log.as_ref().is_some_and(|open| open.log.is_some()) {
            // A log that was taken up speaks first.
            "log".clone_into(&mut self.last);
            self.last_settings = self.settings();
        }
        if self.last.is_empty() {
            return Err(Problem::new("there is no answer yet to explain", 0..line.len())
                .advise("put the query after it, as `why 20 H7/g6`"));
        }
        let SettingsAnswer { units, dial } = self.last_settings;
        let mut then = Self { units, dial, ..Self::new() };
        let query = words::read(&self.last)?;
        then.shown = query.question().typed_in(&then);
        then.kept = Arc::clone(&self.last_kept);
        then.shop = self.shop.on_trial();
        then.why(&query, self.last.trim())
    }
}

/// Where each line stands for itself, one that does not is refused.
pub(crate) fn not_alone(line: &str) -> Problem {
    Problem::new(
        "this line does not stand for itself: it needs others or changes them",
        0..line.len(),
    )
    .advise("settings go on the command line, as --units in; see: fits batch --help")
    .kind(Code::NotAlone)
}
