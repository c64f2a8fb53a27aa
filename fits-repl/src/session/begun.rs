//! Work that is told line by line while its limits, or its beginning, are still asked.

use fits_core::size::Size;

use crate::{
    answer::Answer,
    problem::{Choices, Problem},
    query::Dial,
    sentence::{self, Said, Setting},
    session::Session,
    words,
};

/// What was told of it so far.
#[derive(Clone, Debug)]
pub(crate) struct Begun {
    /// Plans that do not say where the work is, one of which is meant: `turn 0.750in h7`.
    plans: Vec<String>,
    /// Where the work began.
    start: Option<String>,
    /// What was done since, as plain entries.
    entries: Vec<String>,
    /// What is not said.
    why: String,
}

impl Begun {
    /// Of a question back whose choices are all plans, from one start or from none yet.
    fn asked(problem: &Problem) -> Option<Self> {
        let parted = problem.choices.iter().map(|choice| {
            let is_plan = choice.starts_with("turn ") || choice.starts_with("bore ");
            let (plan, start) = match choice.split_once(" from ") {
                Some((plan, start)) => (plan, Some(start)),
                None => (&**choice, None),
            };
            is_plan.then_some((plan, start))
        });
        let parted: Vec<_> = parted.collect::<Option<_>>()?;
        let (_, start) = *parted.first()?;
        parted.iter().all(|(_, other)| *other == start).then(|| Self {
            plans: parted.iter().map(|(plan, _)| (*plan).to_owned()).collect(),
            start: start.map(str::to_owned),
            entries: Vec::new(),
            why: problem.message.clone(),
        })
    }

    /// The lines that come to each of the plans.
    fn chains(&self) -> Vec<String> {
        let Some(start) = &self.start else { return self.plans.clone() };
        let chain = |plan: &String| {
            let done = self.entries.iter().map(|entry| format!(" ; {entry}"));
            done.fold(format!("{plan} from {start}"), |chain, entry| chain + &entry)
        };
        self.plans.iter().map(chain).collect()
    }
}

impl Session {
    /// Answers a line; where the line before was asked back, this one may go on with it.
    pub(super) fn understand_or_go_on(&mut self, line: &str) -> Result<Answer, Problem> {
        let before = self.begun.take().filter(|_| !self.setting().log_is_open);
        if let Some(before) = &before
            && let Some(answer) = self.gone_on(before.clone(), line)
        {
            return answer;
        }
        let answer = self.understand(line);
        if let Err(problem) = &answer
            && !self.alone
            && self.begun.is_none()
        {
            // A line that is not understood takes nothing back.
            self.begun = Begun::asked(problem).or(before.filter(|_| problem.choices.is_empty()));
        }
        answer
    }

    /// The plan that a part's reading may begin, to go on with if a cut follows.
    pub(super) fn may_begin(&mut self, plan: &str, start: &str, why: &str) {
        if self.trying {
            return;
        }
        self.begun = Some(Begun {
            plans: vec![plan.to_owned()],
            start: Some(start.to_owned()),
            entries: Vec::new(),
            why: why.to_owned(),
        });
    }

    /// Where the work is, or what was done to it: asked with all that was told before, or
    /// answered where a cut settles what was asked.
    fn gone_on(&mut self, mut begun: Begun, line: &str) -> Option<Result<Answer, Problem>> {
        if begun.start.is_none() {
            match self.begins_at(&begun.plans, line) {
                Some(start) => begun.start = Some(start),
                None => self.begins_with_a_cut(&mut begun, self.entries_of(line)?)?,
            }
        } else {
            begun.entries.extend(self.entries_of(line)?);
        }
        let is_settled = begun.plans.len() == 1;
        if is_settled && !begun.entries.iter().any(|entry| entry.starts_with("cut ")) {
            return None;
        }
        if is_settled {
            let chain = begun.chains().pop()?;
            let lines: Vec<String> = chain.split(" ; ").map(str::to_owned).collect();
            return match self.whether().told(&lines) {
                Ok(()) => self.answered(line, Said::Plain(lines), Vec::new()),
                Err(problem) => Some(Err(Problem::new(
                    format!("{}, read as `{chain}`", problem.message),
                    0..line.len(),
                )
                .advise(problem.advice))),
            };
        }
        let mut choices = self.working(begun.chains());
        // An entry that is doubted may be what was done all the same.
        if choices.is_empty()
            && let Some(last) = begun.entries.last_mut()
        {
            last.push_str(" sure");
            choices = self.working(begun.chains());
        }
        let asked = Problem::new(begun.why.clone(), 0..line.len());
        self.begun = Some(begun);
        (choices.len() > 1).then(|| Err(asked.choose(choices)))
    }

    /// Each line after the other, as far as they are answered.
    fn told(&mut self, lines: &[String]) -> Result<(), Problem> {
        lines.iter().try_for_each(|line| self.ask(line).map(drop))
    }

    /// Where the work of one of these plans is, if a line says that and nothing more.
    fn begins_at(&self, plans: &[String], line: &str) -> Option<String> {
        let first = plans.first()?;
        self.start_behind(first, line).or_else(|| self.only_reading(line))
    }

    /// `dialled .020 got .9102` behind an aim: the work began so much before its first
    /// reading, and is the one that still has metal to take off.
    fn begins_with_a_cut(&self, begun: &mut Begun, entries: Vec<String>) -> Option<()> {
        let cut = entries.first()?;
        let (dialled, read) = cut.strip_prefix("cut ")?.split_once(" = ")?;
        let size = |text: &str| text.split_whitespace().next()?.parse::<Size>().ok();
        let (dialled, read) = (dialled.parse::<Size>().ok()?.length(), size(read)?);
        let off = match self.dial {
            Dial::Diameter => dialled,
            Dial::Radius => dialled.checked_add(dialled).ok()?,
        };
        let is_turned = |plan: &String| plan.starts_with("turn ");
        begun.plans.retain(|plan| {
            let aim = plan.split(' ').nth(1).and_then(size).map(Size::length);
            aim.is_some_and(
                |aim| if is_turned(plan) { read.length() > aim } else { read.length() < aim },
            )
        });
        let first = begun.plans.first()?;
        let read_at = read.length();
        let start =
            if is_turned(first) { read_at.checked_add(off) } else { read_at.checked_sub(off) };
        begun.start = Some(Size::new(start.ok()?, read.unit()).to_string().replace(' ', ""));
        begun.entries = entries;
        Some(())
    }

    /// The plain entries that a line comes to beside an open log.
    fn entries_of(&self, line: &str) -> Option<Vec<String>> {
        let setting = Setting { log_is_open: true, ..self.setting() };
        let is_plain = |line: &str| words::is_entry(line) || line == "log";
        match sentence::read(line, setting) {
            Some(Said::Plain(lines)) => lines.iter().all(|line| is_plain(line)).then_some(lines),
            Some(Said::Ask { .. }) => None,
            None => is_plain(line.trim()).then(|| vec![line.trim().to_owned()]),
        }
    }

    /// Plain queries with semicolons between them: all of them or none, and the last one's
    /// answer.
    pub(super) fn as_chain(&mut self, line: &str) -> Option<Result<Answer, Problem>> {
        if !line.contains(" ; ") {
            return None;
        }
        let parts: Vec<&str> = line.split(" ; ").collect();
        if !parts.iter().all(|part| words::read(part).is_ok()) {
            return None;
        }
        let mut from = 0;
        let mut trial = self.whether();
        for part in &parts {
            if let Err(mut problem) = trial.understand_as_typed(part) {
                // What would mend one of them is no mending of the line.
                problem.at = problem.at.start + from..problem.at.end + from;
                problem.fix = None;
                return Some(Err(Problem { choices: Choices::default(), ..problem }));
            }
            from += part.len() + " ; ".len();
        }
        let mut read_as = Vec::new();
        let mut answer = None;
        for part in &parts {
            self.read_as = None;
            answer = Some(self.understand_as_typed(part));
            read_as.push(self.read_as.take().unwrap_or_else(|| (*part).trim().to_owned()));
            if matches!(answer, Some(Err(_))) {
                return answer;
            }
        }
        self.read_as = Some(read_as.join(" ; ")).filter(|plain| plain != line.trim());
        answer
    }
}
