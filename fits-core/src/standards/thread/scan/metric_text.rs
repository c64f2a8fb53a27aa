//! Metric designations as they are written: size, pitch, lead.

use super::super::{
    Designation, Form, Nominal, Pitch, Typed, metric,
    reader::{Found, Reader},
    trapezoidal,
};
use super::blank;
use crate::{
    error::Error,
    size::{Length, Unit},
};

/// `M10x1.25`, `Tr40x14P7`.
pub(super) fn metric_name(reader: &mut Reader, letters: &str, form: Form, expected: bool) -> Found {
    let is_capital = reader.text.starts_with(|c: char| c.is_ascii_uppercase());
    reader.take(letters);
    if form == Form::Trapezoidal {
        // No class or size begins with Tr: a space may follow, as ISO 2903 writes.
        reader.spaces();
    }
    let Some(nominal) = reader.decimal(Unit::Millimetre)? else { return Ok(None) };
    let nominal = Typed { value: Nominal::Millimetres(nominal.value), at: nominal.at };
    let mut designation = blank(form, nominal);
    let before = reader.at;
    reader.spaces();
    let is_times = reader.take("x") || reader.take("\u{d7}");
    if is_times {
        reader.spaces();
        lead_and_pitch(reader, &mut designation)?;
    } else {
        reader.at = before;
        // `M10-1.5`, but not `M10-6g`.
        if reader.peek() == Some(b'-') {
            let class = Reader { text: reader.text, at: before + 1 }.word();
            let is_number = class.bytes().next().is_some_and(|byte| byte.is_ascii_digit())
                && class.bytes().all(|byte| byte.is_ascii_digit());
            if is_number && !is_starts_after(reader.text, before + 1 + class.len()) {
                reader.at += 1;
                lead_and_pitch(reader, &mut designation)?;
            }
        }
    }
    if !reader.is_end() && !is_hand(reader) {
        // `M10mm`, `m6something`: no thread's name goes on like this.
        return if designation.pitch.is_some() { Err(goes_on(reader)) } else { Ok(None) };
    }
    if designation.pitch.is_none() {
        // m6 and M7 are tolerance classes and "m6 dowel pin" a part's name.
        if !is_capital && !expected || is_part_name(reader.rest()) {
            return Ok(None);
        }
    }
    reader.finish(designation)
}

/// `M10x1.25LH`: the hand joined to the pitch.
pub(super) fn is_hand(reader: &Reader) -> bool {
    reader.word().eq_ignore_ascii_case("lh")
}

fn is_starts_after(text: &str, at: usize) -> bool {
    let rest = text.get(at..).unwrap_or_default();
    let rest = rest.trim_start_matches([' ', '-']);
    rest.get(..5).is_some_and(|word| word.eq_ignore_ascii_case("start"))
}

/// A pin that goes by a size of thread-like name.
fn is_part_name(rest: &str) -> bool {
    let word = rest.trim_start();
    ["dowel", "pin"]
        .iter()
        .any(|part| word.get(..part.len()).is_some_and(|start| start.eq_ignore_ascii_case(part)))
}

fn goes_on(reader: &Reader) -> Error {
    let rest = reader.rest();
    let count = rest.find([' ', ',']).unwrap_or(rest.len());
    let extra = rest.get(..count).unwrap_or_default();
    Error::not_a_thread(
        format!("`{extra}` does not belong to a thread's pitch"),
        "put a space between the pitch and what follows",
    )
    .at(reader.at, reader.at + count)
}

/// `1.25`, `3P1.5`, `Ph3P1.5`, `14(P7)`.
fn lead_and_pitch(reader: &mut Reader, designation: &mut Designation) -> Result<(), Error> {
    let is_lead = reader.take("Ph");
    let start = reader.at;
    let missing = |reader: &Reader, what: &'static str, designation: &Designation| {
        let advice = metric_pitches(designation);
        Err(Error::not_a_thread(what, advice).at(reader.at, reader.at + reader.word().len()))
    };
    let Some(first) = reader.decimal(Unit::Millimetre)? else {
        return missing(reader, "the pitch is missing after the x", designation);
    };
    let before = reader.at;
    reader.spaces();
    let bracket = reader.take("(");
    if !bracket {
        reader.at = before;
    }
    if !reader.take("P") {
        if is_lead || bracket {
            return missing(reader, "the pitch is missing after the lead", designation);
        }
        let value =
            pitch_of(first.value, designation).map_err(|error| error.at(start, reader.at))?;
        designation.pitch = Some(Typed { value, at: first.at });
        return Ok(());
    }
    let Some(second) = reader.decimal(Unit::Millimetre)? else {
        return missing(reader, "the pitch is missing after the P", designation);
    };
    if bracket {
        reader.take(")");
    }
    let value = pitch_of(second.value, designation).map_err(|error| error.at(start, reader.at))?;
    designation.pitch = Some(Typed { value, at: second.at });
    let (lead, pitch) = (first.value.tenth_nanometres(), second.value.tenth_nanometres());
    // A pitch is more than 0.
    match u8::try_from(lead / pitch) {
        Ok(starts @ 1..=20) if lead % pitch == 0 => {
            designation.starts = starts;
            Ok(())
        }
        _ => Err(Error::not_a_thread(
            format!(
                "a lead of {} is not a whole number of pitches of {}",
                first.value, second.value
            ),
            "the lead is the pitch times the starts, from 1 to 20",
        )
        .at(start, reader.at)),
    }
}

/// What pitches there are, in words.
fn metric_pitches(designation: &Designation) -> String {
    match (designation.form, designation.nominal.value) {
        (Form::Metric, Nominal::Millimetres(nominal)) => metric::pitches(nominal),
        (Form::Trapezoidal, Nominal::Millimetres(nominal)) => trapezoidal::advice(nominal),
        _ => "give it in millimetres".into(),
    }
}

/// A pitch in millimetres, refused in millimetres.
fn pitch_of(length: Length, designation: &Designation) -> Result<Pitch, Error> {
    Pitch::of(length).map_err(|_| {
        Error::not_a_thread(
            format!("a pitch of {length} is not a thread's"),
            metric_pitches(designation),
        )
    })
}
