//! What a line's figures are in, where that is not said.

use crate::{
    answer::Answer,
    problem::Problem,
    query::{Expression, Query, Units},
    sentence,
    session::{
        Session,
        phrase::{has_fit, lone_deviations},
    },
    words,
};

impl Session {
    /// A plain query with a bare number that a person may have meant in the
    /// other unit: the sentence weighs it.
    pub(super) fn is_doubtful(&self, query: &Query) -> bool {
        let Some(size) = query.question().size() else { return false };
        let Expression::Number(number, None) = &size.value else { return false };
        let Ok(value) = number.of(fits_core::size::Unit::Millimetre) else { return false };
        let value = value.millimetres();
        if matches!(query, Query::Size(_)) {
            // It is shown in both units; or a bearing's number.
            return value >= 600.0;
        }
        match self.units_chosen.then_some(self.units) {
            Some(Units::Inches) => value >= 12.0,
            Some(Units::Millimetres) => value < 1.5 && has_fit(query).is_some(),
            None => {
                has_fit(query).is_some_and(|is_iso| !is_iso && value <= 5.0)
                    || matches!(query, Query::Drill(_)) && value <= 13.0
            }
        }
    }

    /// A plain query with its bare numbers as inches and as millimetres: those of
    /// the two that are answered.
    fn in_both_units(&self, line: &str) -> Vec<String> {
        let Some(end) = words::read(line)
            .ok()
            .as_ref()
            .and_then(|query| query.question().size())
            .map(|size| size.at.end)
        else {
            return Vec::new();
        };
        let as_unit = |(unit, other): (&str, Units)| {
            // Where bare numbers are the other unit, each of them is refused, and
            // mended in turn.
            let mut trial = self.whether();
            trial.take_units(other);
            let (size, rest) = line.split_at(end);
            // `.002h3`: the class is no part of the unit.
            let is_glued = rest.starts_with(|c: char| c.is_ascii_alphabetic());
            let typed = format!("{size}{unit}{}{rest}", if is_glued { " " } else { "" });
            match trial.ask(&typed) {
                Ok(_) => Some(typed),
                // Plainly: the units are said now, so none are asked about again.
                Err(problem) => {
                    trial.fully_mended(problem.mended(&typed)?, &problem.advice, Self::ask)
                }
            }
        };
        [("in", Units::Millimetres), ("mm", Units::Inches)]
            .into_iter()
            .filter_map(as_unit)
            .collect()
    }

    /// `3/4 mm`: a vulgar fraction is inches, and a millimetre is written in decimals.
    pub(super) fn fraction_of_a_millimetre(&self, line: &str) -> Option<Problem> {
        let (at, _) = sentence::fractions_of_a_millimetre(line).next()?;
        // All of them one way, so that none is left to ask about.
        let with = |is_inch: bool| {
            let sizes = sentence::fractions_of_a_millimetre(line).map(|(at, decimal)| {
                let fraction = || line[at.clone()].trim_end_matches(|c: char| !c.is_ascii_digit());
                let inches = || format!("{}in", fraction());
                (at.clone(), if is_inch { inches() } else { format!("{decimal}mm") })
            });
            let typed = sentence::replaced(line, sizes);
            self.understood_as(&typed).ok()
        };
        let choices: Vec<String> = [true, false].into_iter().filter_map(with).collect();
        (choices.len() == 2).then(|| {
            Problem::new("a fraction is of an inch, and millimetres are in decimals", at)
                .choose(choices)
        })
    }

    /// The plain query that a line is understood as, were it typed.
    fn understood_as(&self, typed: &str) -> Result<String, Problem> {
        let mut trial = self.whether();
        trial.understand(typed)?;
        Ok(trial.read_as.take().unwrap_or_else(|| typed.to_owned()))
    }

    /// `25.00 +0.02`: to one side, or to both?
    pub(super) fn which_deviation(&self, line: &str) -> Option<Problem> {
        let [one, both] = lone_deviations(line)?;
        let read = |typed: &str| self.understood_as(typed).ok();
        let choices = vec![read(&one)?, read(&both)?];
        let why = "one deviation stands alone: to that side, or to both?";
        Some(Problem::new(why, 0..line.len()).choose(choices))
    }

    /// `24,985` where bare numbers are millimetres: a decimal comma, asked about
    /// where the line has an answer as a list too.
    pub(super) fn with_decimal_points(&mut self, line: &str) -> Option<Result<Answer, Problem>> {
        if !self.units_chosen || self.units == Units::Inches {
            return None;
        }
        let (point, list) = sentence::decimal_commas(line)?;
        let read = |typed: &str| self.understood_as(typed);
        let of_point = match read(&point) {
            Ok(plain) => plain,
            Err(asked) if !asked.choices.is_empty() => {
                return Some(Err(Problem { at: 0..line.len(), ..asked }));
            }
            // As a list it stands as it was typed.
            Err(_) if list.is_some_and(|list| read(&list).is_ok()) => return None,
            Err(_) => return Some(self.ask(line)),
        };
        if let Some(Ok(of_list)) = list.as_deref().map(read)
            && of_list != of_point
        {
            let why = "a decimal comma, or two sizes?";
            let asked = Problem::new(why, 0..line.len()).choose(vec![of_point, of_list]);
            return Some(Err(asked));
        }
        let answer = self.understand_as_typed(&point);
        if answer.is_ok() {
            self.read_as.get_or_insert(point);
        }
        Some(answer)
    }

    /// The question back, where both have an answer.
    pub(super) fn which_unit(&self, line: &str) -> Option<Problem> {
        let choices = self.in_both_units(line);
        (choices.len() == 2).then(|| {
            Problem::new("inches or millimetres is not said", 0..line.len()).choose(choices)
        })
    }

    /// A plain query whose bare numbers are doubtful, and which no phrase
    /// settles: it is asked which unit they are in; where one of the two has no
    /// answer, the other is the way out.
    pub(super) fn ask_unit(&mut self, line: &str) -> Result<Answer, Problem> {
        if let Some(asked) = self.which_unit(line) {
            return Err(asked);
        }
        self.ask(line).map_err(|problem| match self.in_both_units(line).pop() {
            Some(other) if !problem.is_failure => {
                problem.advise("in the other unit").fix(0..line.len(), other)
            }
            _ => problem,
        })
    }
}
