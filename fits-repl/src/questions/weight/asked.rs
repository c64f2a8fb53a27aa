//! What a bar or a tube weighs, read.

use nom::{Parser, branch::alt};

use crate::{
    query::{Query, Size, Spot},
    words::{
        fault::{Parsed, fatal, fatal_fix},
        keywords::{keyword, material_name, nothing_more, separator, space, span},
        sizes::{size_after, starts_size},
    },
};

/// The section of stock, as typed.
#[derive(Clone, Debug)]
pub enum Section {
    /// A round bar by its diameter.
    Round(Size),
    /// A square bar by its side.
    Square(Size),
    /// A hexagon by what it measures across its flats.
    Hex(Size),
    /// A flat by its two sides.
    Flat(Size, Size),
    /// A round tube by its outside and its wall.
    Tube(Size, Size),
}

impl Section {
    /// The size that was typed first.
    pub(crate) const fn first(&self) -> &Size {
        match self {
            Self::Round(size)
            | Self::Square(size)
            | Self::Hex(size)
            | Self::Flat(size, _)
            | Self::Tube(size, _) => size,
        }
    }

    /// How its area is worked out.
    pub(crate) const fn rule(&self) -> &'static str {
        match self {
            Self::Round(_) => "section: pi/4 of the diameter squared",
            Self::Square(_) => "section: the side squared, sharp corners",
            Self::Hex(_) => "section: 0.866 of the size across flats squared",
            Self::Flat(..) => "section: one side by the other, sharp corners",
            Self::Tube(..) => "section: pi by the wall by the outside less a wall",
        }
    }
}

/// `weight SECTION MATERIAL long SIZE`.
#[derive(Clone, Debug)]
pub struct WeightOf {
    /// Its section.
    pub section: Section,
    /// What it is made of.
    pub material: Spot<String>,
    /// How long it is.
    pub long: Size,
}

const EXAMPLE: &str = "as in `weight 1in steel long 12in`";

/// A line that begins with `weight`.
pub(crate) fn read(input: &str, total: usize) -> Option<Parsed<'_, Query>> {
    keyword("weight")(input).ok().map(|(rest, ())| weight(rest, total))
}

fn weight(input: &str, total: usize) -> Parsed<'_, Query> {
    let (input, section) = section(input, total)?;
    let (input, _) = separator(input)?;
    let (rest, value) = material_name(input)?;
    if value.is_empty() {
        return fatal_fix(
            input,
            0,
            "what it is made of is missing",
            EXAMPLE,
            (input.is_empty() || keyword("long")(input).is_ok()).then(|| (0, "steel ".into())),
        );
    }
    let material = Spot { value, at: span(total, input, rest) };
    let (rest, _) = separator(rest)?;
    let Ok((after, ())) = keyword("long")(rest) else {
        return fatal(
            rest,
            rest.trim_end().len(),
            "the length is missing: `long` and a size",
            EXAMPLE,
        );
    };
    let (after, _) = space(after)?;
    let (rest, long) = size_after(after, total, "the length is missing after `long`", EXAMPLE)?;
    nothing_more(rest, Query::Weight(Box::new(WeightOf { section, material, long })))
}

fn section(input: &str, total: usize) -> Parsed<'_, Section> {
    let (input, _) = space(input)?;
    let size = |input, missing| size_after(input, total, missing, EXAMPLE);
    let after = |words: [&'static str; 3]| {
        let [one, two, three] = words;
        let found = alt((keyword(one), keyword(two), keyword(three))).parse(input).ok()?;
        Some(found.0.trim_start())
    };
    if let Some(rest) = after(["square", "sq", "square"]) {
        let (rest, side) = size(rest, "the side is missing after `square`")?;
        return Ok((rest, Section::Square(side)));
    }
    if let Some(rest) = after(["hex", "hexagon", "hexagonal"]) {
        let (rest, flats) = size(rest, "the size across flats is missing after `hex`")?;
        return Ok((rest, Section::Hex(flats)));
    }
    if let Some(rest) = after(["flat", "plate", "strip"]) {
        let (rest, first) = size(rest, "the sides are missing")?;
        let (next, _) = space(rest)?;
        let Some(next) = next
            .strip_prefix(['x', 'X', '\u{d7}'])
            .or_else(|| keyword("by")(next).ok().map(|it| it.0))
        else {
            return fatal(
                next,
                0,
                "the second side is missing",
                "as in `weight flat 20mm x 5mm steel long 1m`",
            );
        };
        let (next, _) = space(next)?;
        let (rest, second) = size(next, "the second side is missing after x")?;
        return Ok((rest, Section::Flat(first, second)));
    }
    if let Some(rest) = after(["tube", "pipe", "tubing"]) {
        let (rest, outside) = size(rest, "the outside diameter is missing after `tube`")?;
        let (next, _) = separator(rest)?;
        let Ok((next, ())) = keyword("wall")(next) else {
            return fatal(
                next,
                0,
                "the wall is missing",
                "as in `weight tube 1in wall 0.05in aluminium long 9in`",
            );
        };
        let (next, _) = space(next)?;
        let (rest, wall) = size(next, "the wall is missing after `wall`")?;
        return Ok((rest, Section::Tube(outside, wall)));
    }
    let input = after(["round", "bar", "rod"]).unwrap_or(input);
    if !starts_size(input) {
        return fatal(
            input,
            input.trim_end().len(),
            "the section is missing after `weight`",
            "a size, or square, hex, flat, tube and theirs, as `weight 1in steel long 12in`",
        );
    }
    let (rest, size) = size(input, "the size is missing after `weight`")?;
    Ok((rest, Section::Round(size)))
}
