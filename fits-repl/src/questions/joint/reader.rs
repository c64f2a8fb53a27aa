//! `assemble`: a joint and its parts; and `pick` by what a joint must hold.

use super::{
    body_reader::{ends, friction, name, of_body, part},
    wish_reader::held,
};
use fits_core::standards::iso286::Feature;
use nom::{
    Parser,
    branch::alt,
    combinator::{opt, value},
};

use crate::{
    query::{Body, Dimension, JointText, Mate, Part, Query, Size, Spot, Tolerance},
    questions::part::{
        clauses::{once, one_size},
        measured::{instruments, reading},
        reader::limits_after,
    },
    words::{
        self,
        fault::{Parsed, fatal, fatal_fix},
        keywords::{keyword, near_miss, separator, shortened, space, span, spot, word},
        quantities::quantity,
        sizes::{expression, size_after, starts_size},
    },
};

/// Words that begin a clause here, and so end a material's name.
pub(super) const CLAUSES: &[&str] = &[
    "hub",
    "shaft",
    "sleeve",
    "od",
    "id",
    "wall",
    "long",
    "e",
    "nu",
    "alpha",
    "yield",
    "interference",
    "friction",
    "rz",
    "clearance",
    "within",
    "holds",
    "shrink",
    "shrunk",
    "blind",
    "dry",
    "oil",
    "oiled",
    "grease",
    "greased",
    "moly",
    "lubricated",
    "degreased",
    "lubricant",
    "warm",
    "with",
    "on",
];

const LUBRICANTS: &[&str] =
    &["dry", "oil", "oiled", "grease", "greased", "moly", "lubricated", "degreased"];

pub(super) const EXAMPLE: &str =
    "as in `assemble 20 H7/s6, hub aluminium od 40 long 25, shaft steel`";

/// The part that sizes and figures now belong to.
#[derive(Clone, Copy, PartialEq)]
pub(super) enum Now {
    Hub,
    Shaft,
    Sleeve,
}

pub(super) fn joint(size: Size, tolerance: Tolerance) -> JointText {
    JointText {
        head: Part::new(None, None, size, tolerance),
        interference: None,
        on_radius: None,
        either: [None, None],
        instruments: Vec::new(),
        hub: Body::default(),
        shaft: Body::default(),
        sleeves: Vec::new(),
        friction: None,
        lubricant: None,
        shrink: None,
        blind: None,
        roughness: None,
        clearance: None,
        within: None,
        holds: None,
    }
}

/// After `assemble`.
pub(crate) fn assemble(input: &str, total: usize) -> Parsed<'_, Query> {
    let (input, _) = space(input)?;
    let (after, feature) = opt(spot(total, feature)).parse(input)?;
    let (after, _) = space(after)?;
    let (rest, size) = size_after(after, total, "the size of the joint is missing", EXAMPLE)?;
    let (rest, tolerance) = limits_after(rest, total)?;
    let mut joint = joint(size, tolerance.unwrap_or(Tolerance::Bare));
    joint.head.feature = feature;
    let mut now = Now::Hub;
    let mut input = rest;
    loop {
        let (rest, _) = separator(input)?;
        if rest.is_empty() {
            as_a_word(&mut joint);
            return Ok((rest, Query::Assemble(Box::new(joint))));
        }
        input = match clause(rest, total, &mut joint, &mut now)? {
            (end, true) => end,
            (_, false) => fit_word(rest, total, &mut joint)?.0,
        };
    }
}

/// `shrink` says how tight it is where nothing else does.
fn as_a_word(joint: &mut JointText) {
    let head = &joint.head;
    let is_read = head.reading.is_some() || head.hole.is_some() || head.shaft.is_some();
    let is_told = is_read || head.word.is_some() || joint.interference.is_some();
    if let Some(shrink) = &joint.shrink
        && !is_told
        && matches!(head.tolerance, Tolerance::Bare)
    {
        joint.head.word = Some(Spot { value: "shrink".to_owned(), at: shrink.at.clone() });
    }
}

/// One clause of a joint; false where none begins here.
pub(super) fn clause<'a>(
    input: &'a str,
    total: usize,
    joint: &mut JointText,
    now: &mut Now,
) -> Parsed<'a, bool> {
    if let Some(after) = input.strip_prefix('=') {
        let (end, ()) = reading(after, total, &mut joint.head, input)?;
        if joint.head.measuring.is_some() {
            return fatal(
                input,
                input.len() - end.len(),
                "a joint takes one reading of each part",
                "as in `assemble 20 H7/s6 = 20.013/20.04, hub steel od 40 long 25`",
            );
        }
        return Ok((end, true));
    }
    if let Some(end) = of_reading(input, total, joint)? {
        return Ok((end, true));
    }
    if *now == Now::Sleeve
        && let Some(sleeve) = joint.sleeves.last_mut()
        && sleeve.classes.is_none()
        && let Ok((end, Some(tolerance))) = crate::words::tolerances::tolerance(input, total)
    {
        sleeve.classes = Some(tolerance);
        return Ok((end, true));
    }
    if let Ok((after, found)) = spot(total, feature)(input)
        && let Some(end) = of_feature(after, total, joint, found)?
    {
        return Ok((end, true));
    }
    worded(input, total, joint, now)
}

/// `±SIZE` after a reading, and the shaft's reading after it: what is left, if
/// that is what stands there.
fn of_reading<'a>(
    input: &'a str,
    total: usize,
    joint: &mut JointText,
) -> Result<Option<&'a str>, nom::Err<crate::words::fault::Fault>> {
    let head = &mut joint.head;
    if let Some(after) = input.strip_prefix('/')
        && head.reading.is_some()
        && head.second_reading.is_none()
    {
        let missing = "the shaft's reading is missing after the slash";
        return one_size(input, after, total, &mut head.second_reading, missing, EXAMPLE)
            .map(|(end, ())| Some(end));
    }
    let mut signs = ["\u{b1}", "+/-", "+-"].into_iter();
    let Some(after) = signs.find_map(|sign| input.strip_prefix(sign)) else { return Ok(None) };
    let is_read = [
        head.reading.is_some() || head.hole.is_some(),
        head.second_reading.is_some() || head.shaft.is_some(),
    ];
    let [hole, shaft] = &mut joint.either;
    let slot = if is_read[1] && shaft.is_none() { shaft } else { hole };
    if is_read == [false, false] {
        return Ok(None);
    }
    let missing = "how far off the reading may be is missing after the sign";
    one_size(input, after, total, slot, missing, EXAMPLE).map(|(end, ())| Some(end))
}

/// A clause that a word opens; false where none does.
fn worded<'a>(
    input: &'a str,
    total: usize,
    joint: &mut JointText,
    now: &mut Now,
) -> Parsed<'a, bool> {
    let Ok((after, typed)) = word(input) else {
        return Ok((input, false));
    };
    let typed = typed.to_ascii_lowercase();
    if !CLAUSES.contains(&typed.as_str()) {
        return Ok((input, false));
    }
    let at = span(total, input, after);
    let (start, _) = space(after)?;
    let done = |(end, ()): (&'a str, ())| (end, true);
    match typed.as_str() {
        "hub" | "shaft" | "sleeve" => {
            *now = match typed.as_str() {
                "hub" => Now::Hub,
                "shaft" => Now::Shaft,
                _ => Now::Sleeve,
            };
            return part(start, total, joint, *now, at).map(done);
        }
        "long" => {
            let missing = "the length is missing after `long`";
            return one_size(input, after, total, &mut joint.head.long, missing, EXAMPLE).map(done);
        }
        "clearance" => {
            let missing = "the play is missing after `clearance`";
            return one_size(input, after, total, &mut joint.clearance, missing, EXAMPLE).map(done);
        }
        "interference" => {
            let missing = "the interference is missing";
            let (end, found) = ends(start, total, "..", missing)?;
            let sleeve = joint.sleeves.last_mut().filter(|_| *now == Now::Sleeve);
            let slot = sleeve.map_or(&mut joint.interference, |sleeve| &mut sleeve.interference);
            return once(input, end, slot, found).map(done);
        }
        "on" => return on(input, start, total, joint).map(done),
        "with" => {
            let mut found = crate::query::Measuring::default();
            let (end, ()) = instruments(after, total, &mut found)?;
            joint.instruments.extend(found.instruments);
            return Ok((end, true));
        }
        "rz" => {
            let (end, found) = ends(start, total, "/", "the roughness is missing after `rz`")?;
            return once(input, end, &mut joint.roughness, found).map(done);
        }
        "friction" => {
            let (end, found) = friction(start, total)?;
            return once(input, end, &mut joint.friction, found).map(done);
        }
        "within" => {
            let (end, found) = quantity(
                start,
                total,
                Dimension::Time,
                "the time is missing after `within`",
                "as in `assemble 20 H7/s6, hub steel od 40 long 25, shaft steel, within 30 s`",
            )?;
            return once(input, end, &mut joint.within, found).map(done);
        }
        "holds" => {
            let (end, found) = held(start, total)?;
            return once(input, end, &mut joint.holds, found).map(done);
        }
        "shrink" | "shrunk" => {
            return once(input, after, &mut joint.shrink, Spot { value: (), at }).map(done);
        }
        "blind" => {
            return once(input, after, &mut joint.blind, Spot { value: (), at }).map(done);
        }
        "warm" => {
            let (end, found) = words::temperatures::temperatures(after, total)?;
            return once(input, end, &mut joint.head.warm, Box::new(found)).map(done);
        }
        "lubricant" => {
            let (end, name) = name(start, &[CLAUSES])?;
            let at = span(total, start, end);
            return once(input, end, &mut joint.lubricant, Spot { value: name, at }).map(done);
        }
        other if LUBRICANTS.contains(&other) => {
            let said = Spot { value: typed.clone(), at };
            return once(input, after, &mut joint.lubricant, said).map(done);
        }
        _ => {}
    }
    let body = match now {
        Now::Hub => &mut joint.hub,
        Now::Shaft => &mut joint.shaft,
        Now::Sleeve => match joint.sleeves.last_mut() {
            Some(sleeve) => &mut sleeve.body,
            None => &mut joint.hub,
        },
    };
    of_body(input, after, total, body, &typed)
}

/// `on radius` or `on diameter`.
fn on<'a>(input: &'a str, start: &'a str, total: usize, joint: &mut JointText) -> Parsed<'a, ()> {
    let (end, typed) = word(start)?;
    let is_radius = match typed.to_ascii_lowercase().as_str() {
        "radius" => true,
        "diameter" | "dia" => false,
        _ => {
            return fatal(
                start,
                typed.len(),
                "the interference is on the diameter or on the radius",
                "as `assemble 20 interference 0.015 on radius, hub steel od 40 long 25`",
            );
        }
    };
    let said = Spot { value: is_radius, at: span(total, input, end) };
    once(input, end, &mut joint.on_radius, said)
}

fn feature(input: &str) -> Parsed<'_, Feature> {
    alt((value(Feature::Hole, keyword("hole")), value(Feature::Shaft, keyword("shaft"))))
        .parse(input)
}

/// `hole` or `shaft` with a reading or limits of its own: what is left, if
/// that is what stands there.
fn of_feature<'a>(
    after: &'a str,
    total: usize,
    joint: &mut JointText,
    feature: Spot<Feature>,
) -> Result<Option<&'a str>, nom::Err<crate::words::fault::Fault>> {
    let (start, _) = space(after)?;
    if let Some(read) = start.strip_prefix('=') {
        let slot = match feature.value {
            Feature::Hole => &mut joint.head.hole,
            Feature::Shaft => &mut joint.head.shaft,
        };
        let missing = "the reading is missing after =";
        return one_size(after, read, total, slot, missing, EXAMPLE).map(|(end, ())| Some(end));
    }
    // A size here is the mate's where the head is one feature alone; elsewhere
    // a material's name: `shaft 4140`.
    let is_mate = joint.head.feature.as_ref().is_some_and(|head| head.value != feature.value);
    if !(is_mate && joint.head.mate.is_none() && starts_size(start)) {
        return Ok(None);
    }
    let (rest, size) = expression(start, total)?;
    let (end, tolerance) = limits_after(rest, total)?;
    let tolerance = tolerance.unwrap_or(Tolerance::Bare);
    let mate = Box::new(Mate { feature, size: Some(size), tolerance });
    once(after, end, &mut joint.head.mate, mate).map(|(end, ())| Some(end))
}

const OTHER_GREASE: &str = "a lubricant is dry, oil, grease, moly or degreased; for another, give the friction, as `assemble 20 H7/s6, hub steel od 40 long 25, friction 0.1`";

/// Another question that these words belong to, and the first of them.
fn elsewhere(words: &str) -> Option<(&'static str, &str)> {
    let first = words.split(' ').next().unwrap_or_default();
    let advice = match first.to_ascii_lowercase().as_str() {
        "at" | "hot" => {
            "a joint at work is asked by warm: `assemble 20 H7/s6, hub aluminium od 40 long 25, shaft steel, warm 100C`"
        }
        "heat" | "heated" | "cool" | "chill" => {
            "how hot is in the answer, for the play wanted as they meet: `assemble 20 H7/s6, hub steel od 40 long 25, clearance 0.03`"
        }
        "press" if words.contains(|c: char| c.is_ascii_digit()) => {
            "what goes in so is asked of pick: `pick 20 press under 60 kN, hub steel od 40 long 25`"
        }
        "ra" => "roughness goes by Rz here: `assemble 20 H7/s6, hub steel od 40 long 25, rz 6.3um`",
        _ => return None,
    };
    Some((advice, first))
}

/// A shop's word for the fit.
fn fit_word<'a>(input: &'a str, total: usize, joint: &mut JointText) -> Parsed<'a, ()> {
    let (end, words) = name(input, &[CLAUSES])?;
    if let Some((advice, first)) = elsewhere(&words) {
        let message = format!("`{first}` does not go with `assemble`");
        return fatal(input, first.len(), message, advice);
    }
    let slip = CLAUSES.iter().find(|known| near_miss(&words.to_ascii_lowercase(), known));
    if let Some(known) = slip {
        return fatal_fix(
            input,
            words.len(),
            format!("`{}` is not understood", shortened(&words)),
            "",
            Some((words.len(), (*known).to_owned())),
        );
    }
    let is_told = joint.head.word.is_some()
        || joint.interference.is_some()
        || !matches!(joint.head.tolerance, Tolerance::Bare);
    if !words.is_empty() && is_told {
        return unknown(input, OTHER_GREASE);
    }
    if words.is_empty() || starts_size(input) {
        return unknown(input, EXAMPLE);
    }
    let said = Spot { value: words.to_lowercase(), at: span(total, input, end) };
    once(input, end, &mut joint.head.word, said)
}

pub(super) fn unknown<T>(
    input: &str,
    advice: &str,
) -> Result<T, nom::Err<crate::words::fault::Fault>> {
    let typed = input.split([' ', ',']).next().unwrap_or(input);
    let length = typed.len().max(input.chars().next().map_or(0, char::len_utf8));
    let near = CLAUSES.iter().find(|known| near_miss(&typed.to_ascii_lowercase(), known));
    let message = format!("`{}` is not understood here", shortened(typed));
    match near {
        Some(known) => fatal_fix(input, length, message, "", Some((length, (*known).to_owned()))),
        None => fatal(input, length, message, advice),
    }
}
