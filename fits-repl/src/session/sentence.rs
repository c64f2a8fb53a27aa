//! A line to an answer: a plain query first, else the shop's sentence.

use fits_core::{
    shop::words::Word,
    standards::{instruments::Instrument, materials::Material},
};

use crate::{
    answer::Answer,
    problem::Problem,
    query::{Expression, Query, Size, Spot, Tolerance, Units},
    questions::{drill::asked::DrillFor, rehearse::reader::Rehearse},
    sentence::{self, Said, Setting, System},
    session::{Refused, Session, not_alone},
    words,
};

impl Session {
    /// Answers a plain query, or the phrase that one can be read from.
    pub(crate) fn understand(&mut self, line: &str) -> Result<Answer, Problem> {
        let query = words::read(line);
        let is_plain = query.is_ok();
        if let Ok(query) = query
            && !self.is_doubtful(&query)
        {
            let answer = self.ask_read(line, &query);
            let Err(problem) = answer else { return answer };
            if problem.is_failure || !self.may_be_phrase(line) {
                return Err(problem);
            }
            return self.as_phrase(line).unwrap_or_else(|| {
                let words = line.split_whitespace();
                let words = words.filter(|word| word.bytes().all(|b| b.is_ascii_alphabetic()));
                let may_guess = problem.fix.is_none() && words.count() >= 5;
                Err(may_guess.then(|| self.as_guess(line)).flatten().unwrap_or(problem))
            });
        }
        // An entry, as the plain grammar has it, has its own words for what is wrong.
        if words::is_entry(line) && (!self.setting().log_is_open || is_terse(line)) {
            return self.ask(line);
        }
        let mut plainly = self.trial();
        match self.as_phrase(line) {
            Some(Ok(answer)) => {
                // Read as it stands: nothing was inferred.
                if is_plain
                    && plainly
                        .ask(line)
                        .is_ok_and(|plain| format!("{plain:?}") == format!("{answer:?}"))
                {
                    self.read_as = None;
                }
                Ok(answer)
            }
            Some(asked) => asked,
            None => self.ask(line).map_err(|problem| {
                let may_guess = !is_plain
                    && !problem.is_failure
                    && problem.fix.is_none()
                    && !words::is_entry(line);
                may_guess.then(|| self.as_guess(line)).flatten().unwrap_or(problem)
            }),
        }
    }

    /// What a phrase may mean whose words are not all understood: asked back.
    fn as_guess(&self, line: &str) -> Option<Problem> {
        let sentence::Guess { unknown, choices } = sentence::guess(line, self.setting())?;
        let choices = self.working(choices);
        let first = unknown.first()?;
        let at = line.find(&**first).map_or(0..line.len(), |at| at..at + first.len());
        let are = if unknown.len() == 1 { "is" } else { "are" };
        let unknown = unknown.join("`, `");
        (choices.len() >= 2)
            .then(|| Problem::new(format!("`{unknown}` {are} not understood"), at).choose(choices))
    }

    /// The first queries that are answered.
    fn working(&self, choices: Vec<String>) -> Vec<String> {
        let works = |choice: &String| {
            let mut trial = self.trial();
            choice.split(" ; ").all(|plain| trial.ask(plain).is_ok())
        };
        choices.into_iter().filter(works).take(4).collect()
    }

    /// A plain query with a bare number that a person may have meant in the
    /// other unit: the sentence weighs it.
    fn is_doubtful(&self, query: &Query) -> bool {
        let Some((size, is_iso)) = head(query) else { return false };
        let Expression::Number(number, None) = size.value else { return false };
        let Ok(value) = number.of(fits_core::size::Unit::Millimetre) else { return false };
        let value = value.millimetres();
        if matches!(query, Query::Size(_)) {
            return value >= 600.0;
        }
        if self.units_chosen {
            return match self.units {
                Units::Inches => value >= 12.0,
                Units::Millimetres => value < 1.5,
            };
        }
        !is_iso && value <= 5.0 || matches!(query, Query::Drill(_)) && value <= 13.0
    }

    fn setting(&self) -> Setting {
        let units = self.units_chosen.then_some(match self.units {
            Units::Inches => System::Inches,
            Units::Millimetres => System::Millimetres,
        });
        let log_is_open = self.shop.log.as_ref().is_some_and(|open| open.log.is_some());
        Setting { units, log_is_open }
    }

    /// Advice whose examples say their millimetres, where bare numbers are
    /// inches and the example would be asked about.
    pub(crate) fn in_millimetres(&self, advice: &str) -> String {
        let parts = advice.split('`').enumerate().map(|(at, part)| {
            let asked = (at % 2 == 1).then(|| self.trial().understand(part).err()).flatten();
            let choice = asked.and_then(|asked| {
                asked.choices.iter().find(|choice| choice.contains("mm")).cloned()
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

    /// The answer of a phrase, or the question back; None where it is no
    /// phrase that any question takes whole.
    fn as_phrase(&mut self, line: &str) -> Option<Result<Answer, Problem>> {
        match sentence::read(line, self.setting())? {
            Said::Plain(lines) => {
                let (last, before) = lines.split_last()?;
                let stands = |line: &String| {
                    words::read(line).is_ok_and(|query| query.question().stands_alone())
                };
                if self.alone && !lines.iter().all(stands) {
                    return Some(Err(not_alone(line)));
                }
                // All of it, or nothing. One line that is refused changes nothing.
                if !before.is_empty() {
                    let mut trial = self.trial();
                    for plain in &lines {
                        trial.ask(plain).ok()?;
                    }
                }
                let shown = self.shown;
                for plain in before {
                    self.ask(plain).ok()?;
                }
                let Ok(answer) = self.ask(last) else {
                    self.shown = shown;
                    if words::is_entry(last) {
                        self.refused = Refused::Now;
                    }
                    return None;
                };
                self.read_as = Some(lines.join(" ; ")).filter(|plain| plain != line.trim());
                Some(Ok(answer))
            }
            Said::Ask { why, choices } => {
                let choices = self.working(choices);
                (choices.len() >= 2).then(|| Err(Problem::new(why, 0..line.len()).choose(choices)))
            }
        }
    }
}

/// A figure with its unit stands in the query.
fn has_length(plain: &str) -> bool {
    plain.split_whitespace().any(|word| {
        let unit = word.trim_start_matches(|c: char| !c.is_ascii_alphabetic());
        unit.len() < word.len() && matches!(unit, "in" | "mm" | "thou")
    })
}

/// A keyword and figures alone.
fn is_terse(line: &str) -> bool {
    let units = ["in", "mm", "thou", "sure", "tenths", "um"];
    line.split_whitespace().skip(1).all(|word| {
        let bare = word.trim_start_matches(|c: char| !c.is_alphabetic());
        bare.is_empty() || units.contains(&bare)
    })
}

/// A plain query by its form, with a name that nothing here is called: the
/// words may be a phrase.
fn may_be_phrase(query: &Query) -> bool {
    let is_metal = |spot: &Option<Spot<String>>| {
        spot.as_ref().is_none_or(|name| Material::find(&name.value).is_ok())
    };
    match query {
        Query::Log(_)
        | Query::Crib(_)
        | Query::Why(_)
        | Query::Assemble(_)
        | Query::PickGrip(_)
        | Query::Bushing(_)
        | Query::Stack(_)
        | Query::Align(_) => false,
        Query::Part(part) | Query::Rehearse(Rehearse(part)) => {
            let is_word = part.word.as_ref().is_none_or(|word| Word::find(&word.value).is_ok());
            let is_instrument = part.measuring.as_ref().is_none_or(|how| {
                how.instruments.iter().all(|name| Instrument::find(&name.value).is_ok())
            });
            part.bought.is_some()
                || !(is_word
                    && is_instrument
                    && is_metal(&part.hub)
                    && is_metal(&part.shaft_material))
        }
        _ => true,
    }
}

/// The size that a query is about, and whether an ISO class goes with it.
fn head(query: &Query) -> Option<(&Size, bool)> {
    Some(match query {
        Query::Part(part) | Query::Rehearse(Rehearse(part)) => {
            let is_iso = matches!(&part.tolerance, Tolerance::Class(class) | Tolerance::Pair(class, _) if class.letters.value.len() < 2 || class.letters.value.chars().all(char::is_lowercase));
            (&part.size, is_iso)
        }
        Query::Size(size) | Query::Drill(DrillFor(size)) => (size, false),
        _ => return None,
    })
}
