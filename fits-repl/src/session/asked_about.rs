//! A line whose end only says which of the answer's figures is wanted.

use crate::{answer::Answer, problem::Problem, sentence, session::Session};

impl Session {
    /// The answer of a line without such an end, where it tells what the end asks.
    pub(super) fn without_what_it_asks(&mut self, line: &str) -> Option<Result<Answer, Problem>> {
        let (rest, read) = sentence::ends(line).into_iter().find_map(|(rest, wanted)| {
            let tells = |answer: &Answer| wanted.is_told_by(answer);
            match self.whether().understand_as_typed(&rest) {
                Ok(answer) => tells(&answer).then_some((rest, None)),
                Err(problem) => {
                    let works = |choice: &String| {
                        self.whether().understand(choice).is_ok_and(|answer| tells(&answer))
                    };
                    let is_asked = problem.choices.len() > 1 && problem.choices.iter().all(works);
                    is_asked.then_some((rest, Some(problem)))
                }
            }
        })?;
        if let Some(problem) = read {
            return Some(Err(Problem { at: 0..line.len(), ..problem }));
        }
        let answer = self.understand_as_typed(&rest);
        if answer.is_ok() {
            self.read_as.get_or_insert(rest);
        }
        Some(answer)
    }
}
