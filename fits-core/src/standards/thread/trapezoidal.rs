//! Metric trapezoidal threads: ISO 2901 (profile), ISO 2902 and 2904 (sizes),
//! ISO 2903 (tolerances).
//!
//! Deviations and tolerances are table data where a table was read or
//! recalled; elsewhere the formulas serve, rounded to R 40 preferred numbers,
//! and [`Sizes::outside`] says so. The letter of a class is of the pitch
//! diameter alone: the crests always stand at h and H, in grade 4.

use super::{
    Class, DiameterLimits, Nominal, Pitch, Series, Side, Sizes, Thread, Zone,
    acme::no_core,
    metric::{micrometres, preferred, whole},
    trapezoidal_table as table,
};
use crate::{
    error::{Error, Kind},
    size::Length,
    source::{Known, Provenance, Reason},
};

/// A figure that depends on the pitch alone.
#[derive(Debug)]
pub(super) struct OfPitch {
    pub(super) pitch: Length,
    pub(super) micrometres: i64,
    pub(super) from: Provenance,
}

/// The pitch diameter tolerance of grade 7 for a step of diameters.
#[derive(Debug)]
pub(super) struct OfStep {
    pub(super) over: Length,
    pub(super) up_to: Length,
    pub(super) pitch: Length,
    pub(super) micrometres: i64,
    pub(super) from: Provenance,
}

/// A listed size.
#[derive(Debug)]
pub(super) struct Size {
    pub(super) diameter: Length,
    pub(super) pitch: Length,
    pub(super) from: Provenance,
}

const STANDARD: &str = "ISO 2903";
const OUTSIDE: &str =
    "outside the tables of ISO 2903: by the formulas, rounded to R 40 preferred numbers";

/// Ends of the steps of diameters of ISO 965-1 and, by the same doubling,
/// beyond, in tenths of a millimetre.
const STEPS: [i64; 11] = [14, 28, 56, 112, 224, 450, 900, 1800, 3550, 7100, 14_000];

/// The pitches listed for a diameter, finest first.
pub(super) fn listed_pitches(diameter: Length) -> impl Iterator<Item = Length> {
    table::SIZES.iter().filter(move |size| size.diameter == diameter).map(|size| size.pitch)
}

pub(super) fn series(diameter: Length, pitch: Pitch) -> Series {
    let is_listed = listed_pitches(diameter).any(|listed| Pitch::of(listed) == Ok(pitch));
    if is_listed { Series::Listed } else { Series::Special }
}

/// Where the size is listed.
pub(super) fn listed(thread: &Thread) -> Option<Provenance> {
    let mut sizes = table::SIZES.iter();
    let is_it = |size: &&Size| {
        size.diameter == thread.major() && Pitch::of(size.pitch) == Ok(thread.pitch())
    };
    sizes.find(is_it).map(|size| size.from)
}

/// The pitches listed for a diameter, in words.
pub(super) fn advice(diameter: Length) -> String {
    let pitches: Vec<String> =
        listed_pitches(diameter).map(|pitch| Nominal::Millimetres(pitch).to_string()).collect();
    let name = Nominal::Millimetres(diameter);
    match pitches.first() {
        Some(first) => {
            format!("Tr{name} is listed with pitch {}: `Tr{name}x{first}`", pitches.join(", "))
        }
        None => "give diameter and pitch in millimetres, as `Tr20x4`".to_owned(),
    }
}

/// The clearance at the crests, by the pitch (ISO 2901).
fn clearance(pitch: Pitch) -> Length {
    let finer_than = |millimetres: i64| pitch.nearest() < micrometres(1000 * millimetres);
    micrometres(if finer_than(2) {
        150
    } else if finer_than(6) {
        250
    } else if finer_than(14) {
        500
    } else {
        1000
    })
}

pub(super) const fn default_class(side: Side) -> Class {
    Class::of(
        7,
        match side {
            Side::External => 'e',
            Side::Internal => 'H',
        },
    )
}

/// A figure in micrometres, and its row; `None` is the formula.
#[derive(Clone, Copy)]
struct Figure {
    micrometres: i64,
    from: Option<&'static Provenance>,
}

fn of_pitch(rows: &'static [OfPitch], pitch: Pitch, formula: impl FnOnce(f64) -> f64) -> Figure {
    match rows.iter().find(|row| Pitch::of(row.pitch) == Ok(pitch)) {
        Some(row) => Figure { micrometres: row.micrometres, from: Some(&row.from) },
        None => Figure { micrometres: preferred(formula(pitch.millimetres()), 0), from: None },
    }
}

/// The size of the fundamental deviation of the pitch diameter.
///
/// The formula was fitted to the table: 50 + 11 P to 3 mm and 47.5 sqrt(P)
/// above, twice that for c.
fn deviation(pitch: Pitch, position: char) -> Figure {
    let e = |p: f64| if p <= 3.0 { 50.0 + 11.0 * p } else { 47.5 * libm::sqrt(p) };
    match position {
        'c' => of_pitch(&table::DEVIATION_C, pitch, |p| 2.0 * e(p)),
        _ => of_pitch(&table::DEVIATION_E, pitch, e),
    }
}

/// Of the crest, grade 4: 0.63 of grade 6 of ISO 965-1.
fn crest_tolerance(pitch: Pitch, side: Side) -> Figure {
    match side {
        Side::External => of_pitch(&table::MAJOR, pitch, |p| {
            0.63 * (180.0 * libm::cbrt(p * p) - 3.15 / libm::sqrt(p))
        }),
        Side::Internal => of_pitch(&table::MINOR, pitch, |p| 0.63 * 230.0 * libm::pow(p, 0.7)),
    }
}

/// Of the pitch diameter: grades are four R 40 steps apart, a nut's five above
/// a screw's; more starts widen it.
fn pitch_tolerance(thread: &Thread, side: Side, grade: u8) -> Result<Figure, Error> {
    let (diameter, pitch) = (thread.major(), thread.pitch());
    let row = table::PITCH_7.iter().find(|row| {
        row.over < diameter && diameter <= row.up_to && Pitch::of(row.pitch) == Ok(pitch)
    });
    let further = 4 * (i32::from(grade) - 7) + if side == Side::Internal { 5 } else { 0 };
    #[allow(clippy::cast_precision_loss, reason = "tolerances are far below 2^53")]
    let one_start = if let Some(row) = row {
        preferred(row.micrometres as f64, further)
    } else {
        let (over, up_to) = step(diameter)?;
        let mean = libm::sqrt(over.millimetres() * up_to.millimetres());
        let six = 90.0 * libm::pow(pitch.millimetres(), 0.4) * libm::pow(mean, 0.1);
        preferred(six, further + 4)
    };
    let micrometres = match thread.starts() {
        1 => one_start,
        #[allow(clippy::cast_precision_loss, reason = "tolerances are small")]
        starts => whole(one_start as f64 * starts_factor(starts)),
    };
    Ok(Figure { micrometres, from: row.map(|row| &row.from) })
}

/// How much wider the pitch diameter tolerance is with more starts.
const fn starts_factor(starts: u8) -> f64 {
    match starts {
        0 | 1 => 1.0,
        2 => 1.12,
        3 => 1.25,
        4 => 1.4,
        _ => 1.6,
    }
}

fn step(diameter: Length) -> Result<(Length, Length), Error> {
    let ends = STEPS.map(|tenths| micrometres(tenths * 100));
    let mut steps = ends.iter().zip(ends.iter().skip(1));
    match steps.find(|(over, up_to)| **over < diameter && diameter <= **up_to) {
        Some((over, up_to)) => Ok((*over, *up_to)),
        None => Err(Error::new(Kind::OutOfTable {
            nominal: diameter,
            table: "the diameter steps of trapezoidal threads",
            over: micrometres(1400),
            up_to: micrometres(1_400_000),
        })),
    }
}

fn zone(class: Class, side: Side) -> Result<Zone, Error> {
    if let Class::Zones { pitch, crest } = class {
        let has_letter = match side {
            Side::External => matches!(pitch.position, 'c' | 'e'),
            Side::Internal => pitch.position == 'H',
        };
        if has_letter && (7..=9).contains(&pitch.grade) && pitch == crest {
            return Ok(pitch);
        }
    }
    Err(Error::not_given(
        format!("ISO 2903 has no class {class} of {} trapezoidal thread", side.word()),
        match side {
            Side::External => "screws are 7e, 8e, 8c or 9c",
            Side::Internal => "nuts are 7H, 8H or 9H",
        },
    ))
}

pub(super) fn sizes(thread: &Thread, side: Side, class: Option<Class>) -> Result<Sizes, Error> {
    let class = class.unwrap_or(default_class(side));
    let zone = zone(class, side)?;
    let (major, pitch) = (thread.major(), thread.pitch());
    let crests = clearance(pitch).checked_mul(2)?;
    let core = major.checked_sub(pitch.nearest())?.checked_sub(crests)?;
    if !core.is_positive() {
        return Err(no_core(thread));
    }
    let middle = thread.basic_pitch_diameter();
    let crest = crest_tolerance(pitch, side);
    let wide = pitch_tolerance(thread, side, zone.grade)?;
    let off = match side {
        Side::External => deviation(pitch, zone.position),
        Side::Internal => Figure { micrometres: 0, from: crest.from },
    };
    let is_tabulated = crest.from.is_some() && wide.from.is_some() && off.from.is_some();
    let below = |top: Length, by: i64| {
        Ok::<_, Error>(DiameterLimits::of(top, top.checked_sub(micrometres(by))?))
    };
    let above = |bottom: Length, by: i64| {
        Ok::<_, Error>(DiameterLimits::of(bottom.checked_add(micrometres(by))?, bottom))
    };
    let (major, pitch_diameter, minor) = match side {
        Side::External => (
            below(major, crest.micrometres)?,
            below(middle.checked_sub(micrometres(off.micrometres))?, wide.micrometres)?,
            // Half a micrometre is dropped: the tighter limit.
            below(core, wide.micrometres * 5 / 4 + off.micrometres)?,
        ),
        Side::Internal => (
            DiameterLimits { max: None, min: Some(major.checked_add(crests)?) },
            above(middle, wide.micrometres)?,
            above(thread.basic_minor_diameter(), crest.micrometres)?,
        ),
    };
    Ok(Sizes {
        side,
        class,
        major,
        pitch: pitch_diameter,
        minor,
        deviation: micrometres(off.micrometres).checked_neg()?,
        pitch_tolerance: micrometres(wide.micrometres),
        crest_tolerance: micrometres(crest.micrometres),
        outside: (!is_tabulated).then_some(OUTSIDE),
    })
}

/// Why the limits are what they are.
pub(super) fn reasons(thread: &Thread, sizes: &Sizes) -> Vec<Reason> {
    let Ok(zone) = zone(sizes.class, sizes.side) else { return Vec::new() };
    let reason = |figure: String, value: Length, from: Option<&Provenance>, rule: String| Reason {
        figure,
        value: value.to_string().into(),
        rule: rule.into(),
        source: from.map_or(STANDARD, |from| from.text).to_owned(),
        known: from.map_or(Known::Formula, |from| from.known),
    };
    let pitch = thread.pitch();
    let mut reasons = Vec::new();
    if sizes.side == Side::External {
        reasons.push(reason(
            format!("deviation {}", zone.position),
            sizes.deviation,
            deviation(pitch, zone.position).from,
            format!("of pitch {pitch}; formula fitted to the table: 50 + 11 P to 3 mm, 47.5 sqrt(P) above, in um, twice that for c"),
        ));
    }
    let Ok(wide) = pitch_tolerance(thread, sizes.side, zone.grade) else { return reasons };
    let starts = match thread.starts() {
        1 => String::new(),
        starts => format!(", times {} for {starts} starts (unconfirmed)", starts_factor(starts)),
    };
    let mut pitch_reason = reason(
        format!("{} pitch diameter tolerance", sizes.class),
        sizes.pitch_tolerance,
        wide.from,
        format!(
            "grade 7 of a screw is 1.25 x 90 P^0.4 d^0.1 on R 40; a grade is 4 steps, a nut 5 steps{starts}"
        ),
    );
    if thread.starts() > 1 {
        pitch_reason.known = Known::Memory;
    }
    reasons.push(pitch_reason);
    reasons.push(reason(
        "crest tolerance".to_owned(),
        sizes.crest_tolerance,
        crest_tolerance(pitch, sizes.side).from,
        format!("grade 4, of pitch {pitch}"),
    ));
    reasons
}
