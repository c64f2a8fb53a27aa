//! Standard tolerances, read.

use nom::bytes::complete::take_while;

use crate::{
    query::{Query, Size, Spot},
    words::{
        fault::{Parsed, fatal_fix},
        keywords::{nothing_more, space, span},
    },
};

/// `SIZE grade N`: a standard tolerance.
#[derive(Clone, Debug)]
pub struct Grade {
    /// The size.
    pub size: Size,
    /// The grade, as typed.
    pub grade: Spot<String>,
}

/// `SIZE grade N`.
pub(crate) fn grade(input: &str, total: usize, size: Size) -> Parsed<'_, Query> {
    let (input, _) = space(input)?;
    let (rest, number) = take_while(|c: char| c.is_ascii_alphanumeric())(input)?;
    if number.is_empty() {
        return fatal_fix(
            input,
            0,
            "the number is missing after `grade`",
            "as in `3/4in grade 8`",
            Some((0, " 8".into())),
        );
    }
    let grade = Spot { value: number.to_owned(), at: span(total, input, rest) };
    nothing_more(rest, Query::Grade(Grade { size, grade }))
}
