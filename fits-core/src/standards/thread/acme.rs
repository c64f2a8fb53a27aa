//! Acme (ASME B1.5, general purpose 2G, 3G, 4G) and stub Acme (ASME B1.8).
//!
//! Limits are in inches to 0.0001. A stub thread is 0.3 of the pitch high and
//! takes the allowances and tolerances of 2G, or of 3G and 4G where less play
//! is wanted. Centralizing classes (2C to 4C) are not covered.

use super::{
    Class, DiameterLimits, Form, Pitch, Series, Side, Sizes, Thread, Zone, acme_table as table,
    inch::{Listed, inches, to_tenth},
};
use crate::{
    error::Error,
    size::Length,
    source::{Known, Provenance, Reason},
};

/// Pitch diameter allowances of one range of diameters, in 0.0001 in.
#[derive(Debug)]
pub(super) struct Allowance {
    pub(super) up_to: Length,
    /// Of 2G, 3G and 4G.
    pub(super) of: [Length; 3],
    pub(super) from: Provenance,
}

/// What a class is made of: factors of the root of the diameter and of the
/// pitch, all in inches.
struct Rule {
    column: usize,
    allowance: f64,
    by_diameter: f64,
    by_pitch: f64,
}

const RULES: [Rule; 3] = [
    Rule { column: 0, allowance: 0.008, by_diameter: 0.006, by_pitch: 0.030 },
    Rule { column: 1, allowance: 0.006, by_diameter: 0.0028, by_pitch: 0.014 },
    Rule { column: 2, allowance: 0.004, by_diameter: 0.002, by_pitch: 0.010 },
];

/// The pitch of a listed diameter.
pub(super) fn listed_pitch(major: Length) -> Option<Pitch> {
    table::SIZES.iter().find(|entry| entry.major == major)?.pitch().ok()
}

pub(super) fn series(major: Length, pitch: Pitch) -> Series {
    Listed::find(&table::SIZES, major, pitch).map_or(Series::Special, |entry| entry.series)
}

/// Where the size is listed.
pub(super) fn listed(thread: &Thread) -> Option<Provenance> {
    Listed::find(&table::SIZES, thread.major(), thread.pitch()).map(|size| size.from)
}

pub(super) const fn default_class() -> Class {
    Class::of(2, 'G')
}

fn rule(class: Class) -> Result<&'static Rule, Error> {
    let Class::Zones { pitch: Zone { grade, position }, crest } = class else {
        return Err(no_class(class, ""));
    };
    let column = usize::from(grade).checked_sub(2).filter(|_| position == 'G');
    match column.and_then(|column| RULES.get(column)) {
        Some(rule) if (crest.grade, crest.position) == (grade, position) => Ok(rule),
        _ if position == 'C' => Err(no_class(class, ": centralizing classes are not covered")),
        _ => Err(no_class(class, "")),
    }
}

fn no_class(class: Class, more: &str) -> Error {
    Error::not_given(
        format!("Acme threads have no class {class} here{more}"),
        "general purpose classes are 2G, 3G and 4G",
    )
}

/// The allowance of the range that holds a diameter; beyond the table by the
/// formula.
fn allowance(major: Length, rule: &Rule) -> (Length, Option<&'static Provenance>) {
    let range = table::ALLOWANCES.iter().find(|range| major <= range.up_to);
    match range.and_then(|range| Some((*range.of.get(rule.column)?, &range.from))) {
        Some((allowance, from)) => (allowance, Some(from)),
        None => (to_tenth(rule.allowance * libm::sqrt(inches(major))), None),
    }
}

/// The crest's tolerance: 0.05 of the pitch, at least 0.005 in.
fn crest_tolerance(pitch: f64) -> f64 {
    libm::fmax(0.05 * pitch, 0.005)
}

/// Clearance at the root: 0.020 in to 10 turns per inch, 0.010 in finer.
fn clearance(pitch: Pitch) -> f64 {
    if Pitch::per_inch(10, 1).is_ok_and(|ten| pitch >= ten) { 0.020 } else { 0.010 }
}

fn tolerance(rule: &Rule, major: f64, pitch: f64) -> f64 {
    rule.by_diameter * libm::sqrt(major) + rule.by_pitch * libm::sqrt(pitch)
}

pub(super) fn sizes(thread: &Thread, side: Side, class: Option<Class>) -> Result<Sizes, Error> {
    let class = class.unwrap_or(default_class());
    let rule = rule(class)?;
    let is_stub = thread.form() == Form::StubAcme;
    let (major, pitch) = (inches(thread.major()), thread.pitch().inches());
    let height = if is_stub { 0.3 } else { 0.5 } * pitch;
    let root = clearance(thread.pitch());
    let minor = major - 2.0 * height;
    if minor - root <= 0.0 {
        return Err(no_core(thread));
    }
    let crest = crest_tolerance(pitch);
    let tolerance = tolerance(rule, major, pitch);
    let (allowance, _) = allowance(thread.major(), rule);
    let below = |top: Length, by: f64| DiameterLimits::of(top, to_tenth(inches(top) - by));
    let above = |bottom: Length, by: f64| DiameterLimits::of(to_tenth(inches(bottom) + by), bottom);
    let (deviation, spreads) = match side {
        Side::External => {
            // B1.8 takes the pitch tolerance at the minor diameter once.
            let times = if is_stub { 1.0 } else { 1.5 };
            let pitch_max = to_tenth(major - height - inches(allowance));
            let minor_max = to_tenth(minor - root);
            (
                allowance.checked_neg()?,
                [
                    below(thread.major(), crest),
                    below(pitch_max, tolerance),
                    below(minor_max, times * tolerance),
                ],
            )
        }
        Side::Internal => {
            let major_min = to_tenth(major + root);
            (
                Length::ZERO,
                [
                    above(major_min, if is_stub { tolerance } else { root }),
                    above(to_tenth(major - height), tolerance),
                    // The table rounds the sum, not the smaller limit first.
                    DiameterLimits::of(to_tenth(minor + crest), to_tenth(minor)),
                ],
            )
        }
    };
    Ok(Sizes { outside: outside(thread), ..Sizes::of(side, class, spreads, deviation) })
}

pub(super) fn no_core(thread: &Thread) -> Error {
    Error::not_given(
        format!("a pitch of {} leaves no core in {}", thread.pitch(), thread.nominal()),
        "give a finer pitch",
    )
}

/// What the standard's tables do not hold.
fn outside(thread: &Thread) -> Option<&'static str> {
    if thread.starts() > 1 {
        return Some("the tables are of one start: allowance and tolerance of one start are given");
    }
    (thread.series() == Series::Special)
        .then_some("no listed size of ASME B1.5: by the same formulas")
}

/// Why the limits are what they are.
pub(super) fn reasons(thread: &Thread, sizes: &Sizes) -> Vec<Reason> {
    let Ok(rule) = rule(sizes.class) else { return Vec::new() };
    let (major, pitch) = (inches(thread.major()), thread.pitch().inches());
    let is_stub = thread.form() == Form::StubAcme;
    let standard = if is_stub { "ASME B1.8 with ASME B1.5" } else { "ASME B1.5" };
    // Checked against makers' tables for Acme; a stub's are recalled.
    let known = if is_stub { Known::Memory } else { Known::Formula };
    let mut reasons = Vec::new();
    if sizes.side == Side::External {
        let (value, from) = allowance(thread.major(), rule);
        reasons.push(Reason {
            figure: format!("{} allowance", sizes.class),
            value: format!("{} in", crate::size::inches(value)).into(),
            rule: format!("{} times the root of the middle diameter of its range", rule.allowance)
                .into(),
            source: from.map_or(standard, |from| from.text).to_owned(),
            known: from.map_or(Known::Formula, |from| from.known),
        });
    }
    reasons.push(Reason {
        figure: format!("{} pitch diameter tolerance", sizes.class),
        value: format!("{} in", crate::size::inches(sizes.pitch_tolerance)).into(),
        rule: format!(
            "{} sqrt(D) + {} sqrt(P) = {:.5} in, D {} in, P {pitch:.5} in",
            rule.by_diameter,
            rule.by_pitch,
            tolerance(rule, major, pitch),
            crate::size::inches(thread.major())
        )
        .into(),
        source: standard.to_owned(),
        known,
    });
    reasons.push(Reason {
        figure: "crest tolerance".to_owned(),
        value: format!("{} in", crate::size::inches(sizes.crest_tolerance)).into(),
        rule: "0.05 P, at least 0.005 in".into(),
        source: standard.to_owned(),
        known,
    });
    reasons
}
