//! A line to an answer: a plain query first, else the shop's sentence.

use std::fmt::Write as _;

use fits_core::standards::thread::Thread;

use crate::{
    answer::Answer,
    problem::{Code, Problem},
    query::{Dial, Query, StackText, Units},
    questions::{
        log::answered::no_log,
        stack::answered::ADDS_OR_TAKES,
        thread::asked::{ThreadAsk, ThreadQuery},
    },
    sentence::{self, Alike, Said, Setting, Slip, System},
    session::{
        Refused, Session, not_alone,
        phrase::{
            has_length, is_plain_query, is_terse, lacking, looks_like_inches, may_be_phrase,
            names_nothing, pipe_or_not, signed_both_ways, with_signs,
        },
    },
    words,
};

/// How like a known phrase one must be for what that means to be offered.
const LIKELY: f64 = 0.5;

/// The same, to come before what was found otherwise.
const VERY_LIKELY: f64 = 0.6;

impl Session {
    /// Answers a plain query, or the phrase that one can be read from, with the
    /// one word mended that is a slip of typing.
    pub(crate) fn understand(&mut self, line: &str) -> Result<Answer, Problem> {
        if let Some(answer) = self.as_chain(line) {
            return answer;
        }
        let may_start = self.awaits_start() && !is_plain_query(line);
        if may_start && let Some(started) = self.as_start(line) {
            return started;
        }
        let answer = self.understand_as_typed(line);
        let Err(problem) = &answer else { return answer };
        if !may_start && let Some(started) = self.as_start(line) {
            return started;
        }
        let is_mended = || {
            let mended = problem.mended(line);
            mended.is_some_and(|mended| {
                let again = self.whether().understand_as_typed(&mended);
                again.map_or_else(|again| !again.choices.is_empty(), |_| true)
            })
        };
        let is_settled = problem.is_failure
            || problem.kind == Code::NotAlone
            || !problem.choices.is_empty()
            || is_mended();
        if is_settled {
            return answer;
        }
        if let Some(asked) = self.which_deviation(line) {
            return Err(asked);
        }
        let plain = words::read(line);
        let is_named = matches!(plain, Ok(Query::Crib(_) | Query::Help(_)));
        if let Some((mended, slip)) = sentence::mended(line).filter(|_| !is_named)
            && self
                .whether()
                .understand_as_typed(&mended)
                .map_or_else(|again| !again.choices.is_empty(), |_| true)
        {
            self.slips.clear();
            let answer = self.understand_as_typed(&mended).map_err(|problem| {
                // Places are those of the mended line.
                let message = format!("{} ({slip})", problem.message);
                Problem { message, at: 0..line.len(), ..problem }
            });
            if answer.is_ok() {
                self.read_as.get_or_insert(mended);
                self.slips.push(slip);
            }
            return answer;
        }
        let words = line.split_whitespace();
        let words = words.filter(|word| word.bytes().all(|byte| byte.is_ascii_alphabetic()));
        let count = words.count();
        let is_plain = plain.is_ok();
        // A plain query that was refused for its figures says why: nothing is to be
        // guessed. A part alone takes any words for those of its fit.
        let is_refused = problem.kind == Code::NotAnswered
            && plain.is_ok_and(|query| !matches!(query, Query::Part(_)));
        let is_phrase = is_plain && self.may_be_phrase(line);
        // Of a comma inside a number it is said what it may be, and no half is read.
        let is_parted =
            self.units == Units::Millimetres && sentence::decimal_commas(line).is_some();
        let may_guess = !is_named
            && !is_parted
            && !words::is_entry(line)
            && !is_refused
            && (!is_plain || is_phrase && (count >= 5 || count >= 4 && sentence::says_fit(line)));
        if !is_named
            && !is_refused
            && !words::is_entry(line)
            && (!is_plain || is_phrase)
            && let Some(answered) = self.without_what_it_asks(line)
        {
            return answered;
        }
        let names_nearest = problem.advice.starts_with("nearest");
        let guess = may_guess.then(|| self.as_guess(line, names_nearest)).flatten();
        let may_lack = may_guess || !is_named && is_phrase;
        // `scratch that`, `reads .7562 now`: said of a log, and there is none.
        let of_a_log = || {
            let setting = self.setting();
            let may_be = !is_named && !is_refused && !self.alone && !setting.log_is_open;
            (may_be && sentence::is_spoken_entry(line, setting)).then(|| no_log(&(0..line.len())))
        };
        let lacks = || may_lack.then(|| lacking(line, problem)).flatten();
        match guess.or_else(of_a_log).or_else(lacks) {
            Some(problem) => Err(problem),
            None => answer,
        }
    }

    /// The same, every word as it was typed, and none passed over.
    pub(super) fn understand_as_typed(&mut self, line: &str) -> Result<Answer, Problem> {
        if let Some(asked) = self.fraction_of_a_millimetre(line) {
            return Err(asked);
        }
        let query = words::read(line);
        if query.is_err()
            && let Some(answer) = self.with_decimal_points(line)
        {
            return answer;
        }
        let is_plain = query.is_ok();
        let looks_like_inches =
            !self.units_chosen && query.as_ref().is_ok_and(|query| looks_like_inches(line, query));
        if looks_like_inches && let Some(asked) = self.which_unit(line) {
            return Err(asked);
        }
        if let Ok(Query::Thread(thread)) = &query
            && let Some(asked) =
                pipe_or_not(line, thread).or_else(|| self.which_thread(line, thread))
        {
            return Err(asked);
        }
        if let Ok(Query::Stack(stack)) = &query
            && let Some(answer) = self.as_signed(line, stack)
        {
            return answer;
        }
        if let Ok(query) = query
            && !looks_like_inches
            && !self.is_doubtful(&query)
        {
            // Its refusal, which looks for what is meant, is wanted only of what is no phrase.
            if matches!(&query, Query::Part(part) if names_nothing(part)) {
                self.shown = query.question().typed_in(self);
                return self.as_phrase(line).unwrap_or_else(|| self.ask_read(line, &query));
            }
            let answer = self.ask_read(line, &query);
            let Err(problem) = answer else { return answer };
            // Settings have names of their own, and so has a topic of one word.
            let is_topic = matches!(query, Query::Help(_)) && line.split_whitespace().count() < 3;
            if problem.is_failure || is_topic {
                return Err(problem);
            }
            if matches!(query, Query::Setting(_)) {
                // `material is brass` says more than a name.
                let is_said = line.split(' ').any(|word| matches!(word, "is" | "in" | "on"));
                let phrase = is_said.then(|| self.as_phrase(line)).flatten();
                return phrase.filter(Result::is_ok).unwrap_or(Err(problem));
            }
            if !self.may_be_phrase(line) {
                // `25g6 shaft measures 24.985` has the form of a plain query.
                let is_part = matches!(query, Query::Part(_)) && !line.contains('=');
                let may_read = is_part && !line.contains([',', '/']);
                let reads = |said: &Said| {
                    // `bore .7503, shaft .7491`: the pair that they are.
                    // `turn 30 h6 at 31.2`: where the work is, and no warm reading.
                    let is_read = |plain: &String| {
                        may_read && plain.contains(" = ")
                            || sentence::is_pair(plain)
                            || line.contains(" at ") && plain.contains(" from ")
                    };
                    matches!(said, Said::Plain(lines) if lines.iter().any(is_read))
                };
                let phrase = is_part
                    .then(|| sentence::read_with_slips(line, self.setting()))
                    .flatten()
                    .filter(|(said, _)| reads(said))
                    .and_then(|(said, slips)| self.answered(line, said, slips));
                return phrase.filter(Result::is_ok).unwrap_or(Err(problem));
            }
            return self.as_phrase(line).unwrap_or(Err(problem));
        }
        // An entry, as the plain grammar has it, has its own words for what is wrong.
        if words::is_entry(line) && is_terse(line) {
            let setting = self.setting();
            // `cut .01 reads 1.022`: its first word is a plain entry's, the rest is spoken.
            // Figures alone are held to the plain form.
            let words = line.split_whitespace().skip(1);
            let has_words = words.filter(|word| word.starts_with(char::is_alphabetic)).count() > 0;
            let is_spoken = !is_plain
                && has_words
                && setting.log_is_open
                && sentence::is_spoken_entry(line, setting);
            let spoken = is_spoken.then(|| self.as_phrase(line)).flatten();
            return spoken.unwrap_or_else(|| self.ask(line));
        }
        let plainly = is_plain.then(|| self.trial());
        match self.as_phrase(line) {
            Some(Ok(answer)) => {
                // Read as it stands: nothing was inferred.
                if plainly
                    .and_then(|mut plainly| plainly.ask(line).ok())
                    .is_some_and(|plain| format!("{plain:?}") == format!("{answer:?}"))
                {
                    self.read_as = None;
                }
                Ok(answer)
            }
            Some(asked) => asked,
            None if is_plain => self.ask_unit(line),
            None => self.ask(line),
        }
    }

    /// A stack whose parts have their signs in words, or none: answered, or asked back.
    fn as_signed(&mut self, line: &str, stack: &StackText) -> Option<Result<Answer, Problem>> {
        if let Some(signed) = with_signs(line, stack) {
            let answer = self.ask(&signed);
            if answer.is_ok() {
                self.read_as.get_or_insert(signed);
            }
            return Some(answer);
        }
        let (at, choices) = signed_both_ways(line, stack)?;
        let choices = self.working(choices);
        (choices.len() > 1).then(|| Err(Problem::new(ADDS_OR_TAKES, at).choose(choices)))
    }

    /// What a phrase may mean whose words are not all understood: asked back.
    fn as_guess(&self, line: &str, names_nearest: bool) -> Option<Problem> {
        let alike = sentence::alike(line, self.setting()).unwrap_or_default();
        let guess = sentence::guess(line, self.setting());
        self.asked_back(line, guess, &alike)
            .or_else(|| self.asked_back(line, sentence::offered(line, self.setting()), &alike))
            // A slip of a word that stands in its list is mended there.
            .or_else(|| (!names_nearest).then(|| self.asked_alike(line, &alike)).flatten())
    }

    /// What the phrases mean that are most like it: asked back.
    fn asked_alike(&self, line: &str, alike: &[Alike]) -> Option<Problem> {
        let first = alike.first().filter(|first| first.likeness >= LIKELY)?;
        let mut choices = self.working(alike.iter().map(|one| one.plain.clone()).collect());
        if choices.len() < 2 {
            choices.extend(self.working(sentence::others(&first.plain)));
        }
        choices = sentence::distinct(choices);
        choices.truncate(3);
        (choices.len() > 1).then(|| {
            let message = "this is not understood as it stands";
            Problem::new(message, 0..line.len()).choose(choices)
        })
    }

    fn asked_back(
        &self,
        line: &str,
        guess: Option<sentence::Guess>,
        alike: &[Alike],
    ) -> Option<Problem> {
        let sentence::Guess { unknown, choices } = guess?;
        let mut choices = self.working(choices);
        // What a phrase much like it means comes first.
        if let Some(first) = alike.iter().find(|one| one.likeness >= VERY_LIKELY)
            && choices.len() > 1
            && let Some(first) = self.working(vec![first.plain.clone()]).pop()
        {
            choices.retain(|choice| *choice != first);
            choices.insert(0, first);
            choices.truncate(4);
        }
        if choices.len() < 2 {
            return None;
        }
        let Some(first) = unknown.first() else {
            let message = "this is not understood as it stands";
            return Some(Problem::new(message, 0..line.len()).choose(choices));
        };
        let at = line.find(&**first).map_or(0..line.len(), |at| at..at + first.len());
        let are = if unknown.len() == 1 { "is" } else { "are" };
        let unknown = unknown.join("`, `");
        Some(Problem::new(format!("`{unknown}` {are} not understood"), at).choose(choices))
    }

    /// The first queries that are answered; of one that asks back in turn, its
    /// choices.
    pub(super) fn working(&self, choices: Vec<String>) -> Vec<String> {
        let works = |choice: &String| {
            let mut trial = self.whether();
            choice.split(" ; ").all(|plain| {
                sentence::fractions_of_a_millimetre(plain).next().is_none()
                    && trial.ask(plain).is_ok()
            })
        };
        let settled = |choice: String| match words::read(&choice) {
            Ok(Query::Thread(thread)) => pipe_or_not(&choice, &thread)
                .or_else(|| self.which_thread(&choice, &thread))
                .map_or(vec![choice], |asked| asked.choices.to_vec()),
            _ => vec![choice],
        };
        // An entry that is doubted may be what was done all the same.
        let stands = |choice: String| {
            let sure = words::is_entry(&choice).then(|| format!("{choice} sure"));
            [Some(choice), sure].into_iter().flatten().find(works)
        };
        choices.into_iter().flat_map(settled).filter_map(stands).take(4).collect()
    }

    /// `thread 10`, `3/8 tap`, `3/4 tap in`: a number alone is a screw's or millimetres, a
    /// fraction alone is coarse or fine, and a pin is tapped in.
    fn which_thread(&self, line: &str, query: &ThreadQuery) -> Option<Problem> {
        let at = query.thread.at.clone();
        let typed = line.get(at.clone())?;
        let size = typed.trim_end_matches(|c: char| !c.is_ascii_digit());
        let lower = line.trim_end_matches(['?', '.', ' ']).to_lowercase();
        let is_driven =
            [" tap in", " tap it in", " tapped in"].iter().any(|end| lower.ends_with(end));
        let is_bare =
            |text: &str| !text.is_empty() && text.bytes().all(|byte| byte.is_ascii_digit());
        // A clearance hole goes by the size alone, and a thread is said.
        let is_by_size =
            matches!(query.ask.value, ThreadAsk::Clearance) && line[..at.start].contains("thread");
        let with = |name: &str| format!("{}{name}{}", &line[..at.start], &line[at.end..]);
        let (why, choices) = if is_driven {
            let why = "a tap's hole, or a pin that is tapped in?";
            (why, vec![format!("{size} tap"), format!("{typed} tight keying")])
        } else if is_bare(typed) && !is_by_size {
            let of = |pitch: &u32| with(&format!("#{typed}-{pitch}"));
            let pitches = sentence::screw_pitches(typed)?;
            let metric = with(&format!("M{typed}"));
            let mut choices: Vec<String> = pitches.iter().map(of).chain([metric]).collect();
            if self.units_chosen && self.units == Units::Millimetres {
                choices.rotate_right(1);
            }
            // Of so many inches.
            choices.extend(typed.parse::<Thread>().map(|thread| with(&thread.to_string())));
            ("a number alone: a screw's, and of which pitch, or millimetres?", choices)
        } else if !matches!(query.ask.value, ThreadAsk::Limits | ThreadAsk::Clearance) {
            // What a coarse thread gives, a fine one gives otherwise.
            let both = sentence::fraction_threads(typed, "")?;
            ("coarse or fine is not said", both.iter().map(|name| with(name)).collect())
        } else {
            return None;
        };
        let choices = self.working(choices);
        (choices.len() > 1).then(|| Problem::new(why, at).choose(choices))
    }

    pub(super) fn setting(&self) -> Setting {
        let units = self.units_chosen.then_some(match self.units {
            Units::Inches => System::Inches,
            Units::Millimetres => System::Millimetres,
        });
        let log = self.shop.log.as_ref().and_then(|open| open.log.as_ref());
        let log_from = log.map(|log| log.opening.start.millimetres());
        Setting {
            units,
            log_is_open: log.is_some(),
            log_from,
            dial_is_radius: self.dial == Dial::Radius,
        }
    }

    /// Advice whose examples say their millimetres, where bare numbers are
    /// inches and the example would be asked about.
    pub(crate) fn in_millimetres(&self, advice: &str) -> String {
        let parts = advice.split('`').enumerate().map(|(at, part)| {
            let asked = (at % 2 == 1).then(|| self.whether().understand(part).err()).flatten();
            let choice = asked.and_then(|asked| {
                let choice = asked.choices.iter().find(|choice| choice.contains("mm")).cloned();
                choice.or_else(|| asked.mended(part).filter(|mended| mended.contains("mm")))
            });
            choice.unwrap_or_else(|| part.to_owned())
        });
        parts.collect::<Vec<_>>().join("`")
    }

    /// May a plain query that was refused be a phrase of the shop?
    fn may_be_phrase(&self, line: &str) -> bool {
        match words::read(line) {
            // Of a thread with a figure, the plain grammar knows best what is wrong.
            Ok(Query::Thread(_)) => match sentence::read(line, self.setting()) {
                Some(Said::Plain(lines)) => !lines.iter().any(|plain| {
                    has_length(plain) && matches!(words::read(plain), Ok(Query::Thread(_)))
                }),
                _ => false,
            },
            Ok(query) => may_be_phrase(&query),
            Err(_) => true,
        }
    }

    /// An entry of the log that was spoken and is refused: what is wrong is told
    /// in the words of the plain entry. Of other lines the plain grammar says it.
    fn refused_entry(&mut self, line: &str, plain: &str, problem: &Problem) -> Option<Problem> {
        if !words::is_entry(plain) || words::is_entry(line) {
            return None;
        }
        self.refused = Refused::Now;
        let message = format!("{}, read as `{plain}`", problem.message);
        Some(Problem {
            is_failure: problem.is_failure,
            ..Problem::new(message, 0..line.len()).advise(problem.hint(plain))
        })
    }

    /// The answer of a phrase, or the question back; None where it is no
    /// phrase that any question takes whole.
    fn as_phrase(&mut self, line: &str) -> Option<Result<Answer, Problem>> {
        let (said, slips) = sentence::read_with_slips(line, self.setting())?;
        self.answered(line, said, slips)
    }

    /// The answer of a phrase that was read, or the question back.
    pub(super) fn answered(
        &mut self,
        line: &str,
        said: Said,
        slips: Vec<Slip>,
    ) -> Option<Result<Answer, Problem>> {
        match said {
            Said::Plain(lines) => {
                let (last, before) = lines.split_last()?;
                if before.is_empty() && last == "log" && self.refused == Refused::Unread {
                    return Some(Err(without_the_line_before(line)));
                }
                let stands = |line: &String| {
                    words::read(line).is_ok_and(|query| query.question().stands_alone())
                };
                if self.alone && !lines.iter().all(stands) {
                    return Some(Err(not_alone(line)));
                }
                // All of it, or nothing. One line that is refused changes nothing.
                if !before.is_empty() {
                    let mut trial = self.whether();
                    for plain in &lines {
                        if let Err(problem) = trial.ask(plain) {
                            return self.refused_entry(line, plain, &problem).map(Err);
                        }
                    }
                }
                let shown = self.shown;
                for plain in before {
                    self.ask(plain).ok()?;
                }
                let answer = match self.ask(last) {
                    Ok(answer) => answer,
                    // What it comes to is asked about in turn.
                    Err(problem) if !problem.choices.is_empty() => {
                        return Some(Err(Problem { at: 0..line.len(), ..problem }));
                    }
                    Err(problem) => {
                        self.shown = shown;
                        return self.refused_entry(line, last, &problem).map(Err);
                    }
                };
                self.read_as = Some(lines.join(" ; ")).filter(|plain| plain != line.trim());
                self.slips = slips;
                Some(Ok(answer))
            }
            Said::Ask { mut why, choices } => {
                for slip in slips {
                    let _ = write!(why, " ({slip})");
                }
                let choices = self.working(choices);
                (choices.len() >= 2).then(|| Err(Problem::new(why, 0..line.len()).choose(choices)))
            }
        }
    }
}

/// `what next`, and what was cut before it was not understood: advice that leaves it out
/// spoils the part.
fn without_the_line_before(line: &str) -> Problem {
    Problem::new(
        "the line before was not entered, and the advice would leave it out",
        0..line.len(),
    )
    .kind(Code::NotAnswered)
    .advise(
        "say it again: cut, what was dialled, = and what was read; \
         or ask once more, to go on without it",
    )
}
