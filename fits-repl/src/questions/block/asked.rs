//! An untoleranced inch size, read: `title block 0.750in`. How it is written
//! decides, so the text is kept.

use fits_core::{size::Unit, standards::title_block::Written};

use crate::{
    query::{Expression, Query, Size, Spot},
    questions::part::mates::is_inch,
    words::{
        fault::{Parsed, fatal, fatal_fix},
        keywords::{keyword, nothing_more, space},
        sizes::size_after,
    },
};

/// `title block SIZE`.
#[derive(Clone, Debug)]
pub struct BlockOf {
    /// The size.
    pub size: Size,
    /// How it is written, and the text.
    pub written: Spot<(Written, String)>,
}

const EXAMPLE: &str = "as in `title block 0.750in` or `title block 3/8in`";

/// A line that begins with `title block`.
pub(crate) fn read(input: &str, total: usize) -> Option<Parsed<'_, Query>> {
    let (rest, ()) = keyword("title")(input).ok()?;
    let (rest, ()) = keyword("block")(rest.trim_start()).ok()?;
    Some(block(rest, total))
}

fn block(input: &str, total: usize) -> Parsed<'_, Query> {
    let (start, _) = space(input)?;
    let (rest, size) = size_after(start, total, "the size is missing", EXAMPLE)?;
    let text = start.get(..start.len() - rest.len()).unwrap_or_default().trim();
    if !matches!(size.value, Expression::Number(_, None | Some(Unit::Inch))) {
        return fatal(start, text.len(), "one size in inches, as the drawing writes it", EXAMPLE);
    }
    if is_inch(&size.value).is_none() && !text.contains('/') {
        return fatal_fix(
            start,
            text.len(),
            "is this in inches? title blocks of inch drawings go by decimals",
            "metric sizes go by ISO 2768, as `12.5mm general m`; give its unit",
            Some((text.len(), format!("{text}in"))),
        );
    }
    let Some(written) = how_written(text) else {
        return fatal(
            start,
            text.len(),
            "a whole number shows no decimals",
            "write it as the drawing does, as `title block 2.00in` or `title block 1-7/8in`",
        );
    };
    let written = Spot { value: (written, text.to_owned()), at: size.at.clone() };
    nothing_more(rest, Query::TitleBlock(Box::new(BlockOf { size, written })))
}

/// Three decimals in `.750in`; a fraction over 8 in `1-7/8`.
fn how_written(text: &str) -> Option<Written> {
    let figures = |text: &str| -> String {
        text.trim_start().chars().take_while(char::is_ascii_digit).collect()
    };
    if let Some((_, under)) = text.split_once('/') {
        return figures(under).parse().ok().filter(|under| *under > 0).map(Written::Fraction);
    }
    let (_, decimals) = text.split_once('.')?;
    let count = figures(decimals).len();
    u32::try_from(count).ok().filter(|count| *count > 0).map(Written::Decimals)
}
