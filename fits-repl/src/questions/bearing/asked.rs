//! A ball bearing by its number, read: `bearing 6204, shaft turns, housing
//! aluminium`.

use fits_core::standards::bought::{Ball, Duty, Turning};
use nom::Err;

use crate::{
    query::{Query, Size, Spot, Temperatures},
    questions::part::clauses::once,
    words::{
        fault::{Fault, Parsed, fatal, fatal_fix},
        keywords::{keyword, material_name, separator, shortened, space, span, words_until},
        sizes::{expression, starts_size},
        temperatures::temperatures,
    },
};

/// What is asked of a ball bearing.
#[derive(Clone, Debug)]
pub struct BearingOf {
    /// Its number, as typed.
    pub number: Spot<String>,
    /// `shaft turns` or `housing turns`.
    pub turning: Option<Spot<Turning>>,
    /// `light`, `normal`, `heavy`.
    pub duty: Option<Spot<Duty>>,
    /// `shielded` or `open`.
    pub is_closed: Option<Spot<bool>>,
    /// `housing MATERIAL`.
    pub housing: Option<Spot<String>>,
    /// `warm TEMP`.
    pub warm: Option<Temperatures>,
    /// `shaft SIZE`: what the seat on the shaft measures.
    pub shaft: Option<Size>,
    /// `housing SIZE`: what the bore of the housing measures.
    pub bore: Option<Size>,
}

const EXAMPLE: &str = "as in `bearing 6204, shaft turns, housing aluminium`";

/// A word and what it says.
const TURNS: [(&str, Turning); 10] = [
    ("shaft turns", Turning::Shaft),
    ("shaft turning", Turning::Shaft),
    ("shaft rotates", Turning::Shaft),
    ("inner ring turns", Turning::Shaft),
    ("inner turns", Turning::Shaft),
    ("housing turns", Turning::Housing),
    ("housing turning", Turning::Housing),
    ("housing rotates", Turning::Housing),
    ("outer ring turns", Turning::Housing),
    ("outer turns", Turning::Housing),
];

const CLOSED: [(&str, bool); 7] = [
    ("shielded", true),
    ("sealed", true),
    ("zz", true),
    ("rs", true),
    ("shields", true),
    ("seals", true),
    ("open", false),
];

const DUTIES: [(&str, Duty); 3] =
    [("light", Duty::Light), ("normal", Duty::Normal), ("heavy", Duty::Heavy)];

/// A line that begins with `bearing` and a number of one.
pub(crate) fn read(input: &str, total: usize) -> Option<Parsed<'_, Query>> {
    let (rest, ()) = keyword("bearing")(input).ok()?;
    let start = rest.trim_start();
    let end = start.find([' ', ',', ';']).unwrap_or(start.len());
    let (typed, after) = start.split_at(end);
    is_number(typed).then(|| bearing(start, after, typed, total))
}

/// Has it the shape of a ball bearing's number? `6203`, `625ZZ`, `R8`, `RLS6`.
pub(crate) fn is_number(typed: &str) -> bool {
    let typed = typed.to_ascii_uppercase();
    let digits = |text: &str| text.bytes().take_while(u8::is_ascii_digit).count();
    let is_metric = typed.starts_with('6') && {
        let figures = digits(&typed);
        let rest = typed.get(figures..).unwrap_or_default();
        (figures == 3 || figures == 4 || figures == 5)
            && (rest.is_empty()
                || rest.starts_with(['-', '/', 'Z', 'R', 'D', 'C']) && !rest.starts_with("CM"))
    };
    let is_inch = ["RLS", "RMS", "R"]
        .iter()
        .any(|lead| typed.strip_prefix(lead).is_some_and(|rest| matches!(digits(rest), 1 | 2)));
    is_metric || is_inch || Ball::listed(&typed).is_some()
}

fn bearing<'a>(start: &'a str, after: &'a str, typed: &str, total: usize) -> Parsed<'a, Query> {
    let mut of = BearingOf {
        number: Spot { value: typed.to_owned(), at: span(total, start, after) },
        turning: None,
        duty: None,
        is_closed: None,
        housing: None,
        warm: None,
        shaft: None,
        bore: None,
    };
    let mut input = after;
    loop {
        let (rest, _) = separator(input)?;
        if rest.is_empty() {
            return Ok((rest, Query::Bearing(Box::new(of))));
        }
        input = clause(rest, total, &mut of)?;
    }
}

/// A phrase of the list at the start of the text, and what follows it.
fn said<'a, T: Copy>(input: &'a str, list: &[(&'static str, T)]) -> Option<(&'a str, T)> {
    list.iter().find_map(|(phrase, value)| {
        let rest = phrase
            .split(' ')
            .try_fold(input, |rest, word| Some(keyword(word)(rest.trim_start()).ok()?.0))?;
        Some((rest, *value))
    })
}

fn clause<'a>(input: &'a str, total: usize, of: &mut BearingOf) -> Result<&'a str, Err<Fault>> {
    if let Some((end, turning)) = said(input, &TURNS) {
        let found = Spot { value: turning, at: span(total, input, end) };
        return Ok(once(input, end, &mut of.turning, found)?.0);
    }
    if let Some((end, duty)) = said(input, &DUTIES) {
        let found = Spot { value: duty, at: span(total, input, end) };
        let end = said(end, &[("load", ()), ("loads", ()), ("duty", ())]).map_or(end, |it| it.0);
        return Ok(once(input, end, &mut of.duty, found)?.0);
    }
    // `6203 2RS`: the count of the seals stands before it.
    let closed = input.strip_prefix('2').unwrap_or(input);
    if let Some((end, is_closed)) = said(closed, &CLOSED).or_else(|| said(closed, &[("z", true)])) {
        let found = Spot { value: is_closed, at: span(total, input, end) };
        return Ok(once(input, end, &mut of.is_closed, found)?.0);
    }
    if let Some((end, ())) = said(input, &[("seats", ()), ("seat", ())]) {
        return Ok(end);
    }
    if let Ok((after, ())) = keyword("warm")(input) {
        let (end, found) = temperatures(after, total)?;
        return Ok(once(input, end, &mut of.warm, found)?.0);
    }
    for (word, is_shaft) in [("shaft", true), ("housing", false), ("hub", false)] {
        let Ok((after, ())) = keyword(word)(input) else { continue };
        let (start, _) = space(after)?;
        let start = start.strip_prefix('=').map_or(start, str::trim_start);
        if starts_size(start) {
            let (end, size) = expression(start, total)?;
            let place = if is_shaft { &mut of.shaft } else { &mut of.bore };
            return Ok(once(input, end, place, size)?.0);
        }
        let (end, value) = material_name(start)?;
        let (_, first) = words_until(start, |_| false)?;
        if is_shaft || value.is_empty() || first.is_empty() {
            let message = format!("what stands after `{word}` does not go with it");
            let advice = "say which turns, `bearing 6204, shaft turns`, what it is made of, \
                          `bearing 6204, housing aluminium`, or what it measures, \
                          `bearing 6204, shaft 20.004mm`";
            return fatal(start, shortest(start), message, advice);
        }
        let found = Spot { value, at: span(total, start, end) };
        return Ok(once(input, end, &mut of.housing, found)?.0);
    }
    let typed = shortest(input);
    let message =
        format!("`{}` is not understood here", shortened(input.get(..typed).unwrap_or("")));
    if let Some((_, ())) = said(input, &[("turns", ()), ("rotates", ())]) {
        return fatal_fix(
            input,
            typed,
            "which part turns is not said",
            "say it",
            Some((0, "shaft ".into())),
        );
    }
    fatal(input, typed, message, EXAMPLE)
}

/// The bytes of the word that a text begins with.
fn shortest(input: &str) -> usize {
    input.find([' ', ',', ';']).unwrap_or(input.len())
}
