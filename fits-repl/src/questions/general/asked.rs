//! General tolerances of untoleranced sizes, read.

use nom::{Parser, branch::alt, combinator::value};

use crate::{
    query::{Query, Size, Spot},
    words::{
        fault::{Parsed, fatal_fix},
        keywords::{keyword, nothing_more, separator, space, span, word},
    },
};

/// `SIZE general m`, then `radius`, `chamfer` or `angle`.
pub(crate) fn general(input: &str, total: usize, size: Size) -> Parsed<'_, Query> {
    let (input, _) = space(input)?;
    let Ok((rest, class)) = word(input) else {
        return fatal_fix(
            input,
            0,
            "the class is missing after `general`",
            "f, m, c or v",
            Some((0, " m".into())),
        );
    };
    let class = Spot { value: class.to_ascii_lowercase(), at: span(total, input, rest) };
    let (after, _) = separator(rest)?;
    let kind = alt((
        value(
            GeneralKind::BrokenEdge,
            alt((keyword("radius"), keyword("chamfer"), keyword("edge"))),
        ),
        value(GeneralKind::Angle, keyword("angle")),
    ))
    .parse(after);
    match kind {
        Ok((rest, kind)) => nothing_more(rest, Query::General(General { size, class, kind })),
        Err(_) => {
            nothing_more(rest, Query::General(General { size, class, kind: GeneralKind::Linear }))
        }
    }
}

/// An untoleranced size.
#[derive(Clone, Debug)]
pub struct General {
    /// The size.
    pub size: Size,
    /// The class, as typed.
    pub class: Spot<String>,
    /// What it is asked of.
    pub kind: GeneralKind,
}

/// What general tolerance is asked for (ISO 2768-1).
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub enum GeneralKind {
    /// A linear size.
    Linear,
    /// An external radius or a chamfer height.
    BrokenEdge,
    /// An angle, by the length of its shorter side.
    Angle,
}
