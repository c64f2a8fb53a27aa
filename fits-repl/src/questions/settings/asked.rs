//! Settings, read.

use nom::{Parser, branch::alt, combinator::value, sequence::preceded};

use crate::{
    query::{Dial, Query, Size, Spot, Units},
    words::{
        fault::{Fault, Parsed, fatal},
        keywords::{keyword, separator, shortened, space, unknown},
        sizes::size_after,
    },
};

/// A setting, with the new value if there is one.
#[derive(Clone, Debug)]
pub enum Setting {
    /// `units`.
    Units(Option<Units>),
    /// `dial`.
    Dial(Option<Dial>),
    /// `dial graduation SIZE`: the division of the dials.
    Graduation(Size),
    /// `dial turn SIZE`: what a whole turn of the dials reads.
    DialTurn(Size),
    /// `least chip SIZE`: the least cut on the diameter that does not rub.
    LeastChip(Size),
    /// `top slide SIZE`: its divisions; `top slide none`: there is none.
    TopSlide(Option<Size>),
    /// `machine`, as typed.
    Machine(Option<Spot<String>>),
    /// `risk`, as typed.
    Risk(Option<Spot<String>>),
    /// `instrument`.
    Instrument(Option<Spot<String>>),
    /// `material`.
    Material(Option<Spot<String>>),
}

/// A line that begins as a setting does.
pub(crate) fn read(input: &str, total: usize) -> Option<Parsed<'_, Query>> {
    let set = setting_read(input, total)?;
    Some(set.map(|(rest, setting)| (rest, Query::Setting(setting))))
}

fn setting_read(input: &str, total: usize) -> Option<Parsed<'_, Setting>> {
    if let Ok((rest, ())) = keyword("units")(input) {
        let choice = alt((
            value(Units::Millimetres, keyword("mm")),
            value(Units::Inches, alt((keyword("in"), keyword("inch"), keyword("inches")))),
        ));
        let read = setting(rest, choice, "units are `units mm` or `units in`");
        return Some(read.map(|(rest, units)| (rest, Setting::Units(units))));
    }
    if let Ok((rest, ())) = keyword("dial")(input) {
        if let Ok((size, ())) = preceded(space, keyword("graduation")).parse(rest) {
            return Some(graduation(size, total));
        }
        if let Ok((size, ())) = preceded(space, keyword("turn")).parse(rest) {
            return Some(turn(size, total));
        }
        let choice = alt((
            value(Dial::Diameter, keyword("diameter")),
            value(Dial::Radius, keyword("radius")),
        ));
        let read = setting(rest, choice, "dials are `dial diameter` or `dial radius`");
        return Some(read.map(|(rest, dial)| (rest, Setting::Dial(dial))));
    }
    if let Ok((rest, ())) =
        preceded(keyword("least"), preceded(space, keyword("chip"))).parse(input)
    {
        return Some(least_chip(rest, total));
    }
    if let Ok((rest, ())) = preceded(keyword("top"), preceded(space, keyword("slide"))).parse(input)
    {
        return Some(top_slide(rest, total));
    }
    if let Ok((rest, ())) = keyword("settings")(input) {
        let rest = rest.trim_start();
        return Some(match rest.trim_end().len() {
            0 => Ok(("", Setting::Units(None))),
            typed => fatal(rest, typed, "something follows", "`settings` stands alone"),
        });
    }
    for (word, query) in [
        ("instrument", Setting::Instrument as fn(Option<Spot<String>>) -> Setting),
        ("material", Setting::Material),
        ("risk", Setting::Risk),
        ("machine", Setting::Machine),
    ] {
        if let Ok((rest, ())) = keyword(word)(input) {
            let name = named(rest, total);
            return Some(Ok(("", query((!name.value.is_empty()).then_some(name)))));
        }
    }
    None
}

/// The rest of `units` or `dial`: a choice or nothing.
fn setting<'a, T>(
    input: &'a str,
    mut choice: impl Parser<&'a str, Output = T, Error = Fault>,
    advice: &str,
) -> Parsed<'a, Option<T>> {
    let (input, _) = space(input)?;
    if input.is_empty() {
        return Ok((input, None));
    }
    let Ok((rest, chosen)) = choice.parse(input) else {
        return fatal(
            input,
            input.trim_end().len(),
            format!("`{}` is not a setting", shortened(input.trim_end())),
            advice,
        );
    };
    let (rest, _) = space(rest)?;
    if !rest.is_empty() {
        return fatal(rest, rest.trim_end().len(), "something follows the setting", advice);
    }
    Ok((rest, Some(chosen)))
}

/// `dial graduation SIZE`.
fn graduation(input: &str, total: usize) -> Parsed<'_, Setting> {
    const EXAMPLE: &str = "as in `dial graduation 0.02mm`";
    let (rest, size) = only_size(input, total, "the size of a division is missing", EXAMPLE)?;
    Ok((rest, Setting::Graduation(size)))
}

/// `dial turn SIZE`.
fn turn(input: &str, total: usize) -> Parsed<'_, Setting> {
    const EXAMPLE: &str = "as in `dial turn 2mm`";
    let (rest, size) = only_size(input, total, "what a turn reads is missing", EXAMPLE)?;
    Ok((rest, Setting::DialTurn(size)))
}

/// `top slide SIZE` or `top slide none`.
fn top_slide(input: &str, total: usize) -> Parsed<'_, Setting> {
    const EXAMPLE: &str = "as in `top slide 0.02mm`, or `top slide none`";
    let (start, _) = space(input)?;
    if let Ok((rest, ())) = keyword("none")(start) {
        return Ok((rest, Setting::TopSlide(None)));
    }
    let (rest, size) = only_size(input, total, "what its dial is divided in is missing", EXAMPLE)?;
    Ok((rest, Setting::TopSlide(Some(size))))
}

/// `least chip SIZE`.
fn least_chip(input: &str, total: usize) -> Parsed<'_, Setting> {
    const EXAMPLE: &str = "as in `least chip 0.02mm`";
    let (rest, size) = only_size(input, total, "the least cut is missing", EXAMPLE)?;
    Ok((rest, Setting::LeastChip(size)))
}

/// A size, and nothing after it.
fn only_size<'a>(input: &'a str, total: usize, missing: &str, example: &str) -> Parsed<'a, Size> {
    let (input, _) = space(input)?;
    let (rest, size) = size_after(input, total, missing, example)?;
    let (rest, _) = separator(rest)?;
    if rest.is_empty() { Ok((rest, size)) } else { unknown(rest) }
}

/// The rest of a line as a name.
fn named(rest: &str, total: usize) -> Spot<String> {
    let name = rest.trim();
    let start = total - rest.trim_start().len();
    Spot { value: name.to_owned(), at: start..start + name.len() }
}
