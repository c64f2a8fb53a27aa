//! Threads known by a micrometer and a pitch gauge: which they may be.
//!
//! Every listed size whose pitch a gauge could take for the one read, and whose
//! crest comes near the size read, with what a new one measures. A turned or worn
//! screw is smaller than new; a pitch gauge of 20 turns an inch lies in a pitch of
//! 1.25 mm nearly as well.

use super::{
    Form, Nominal, Pitch, Series, Side, Thread, acme_table, ba_table, metric_table, model_table,
    pipe_table, trapezoidal_table, unified_series, unified_table, whitworth_table,
};
use crate::{
    error::Error,
    size::{Length, Limits},
    source::{Known, Provenance},
    speech::say,
};

/// A size of the model engineers' series.
#[derive(Debug)]
pub(super) struct Model {
    pub(super) size: &'static str,
    pub(super) major: Length,
    pub(super) tpi: u32,
    pub(super) tap: Length,
    pub(super) second_tap: Length,
    pub(super) from: Provenance,
}

/// How far a pitch may lie from the one read: 20 turns an inch lie 1.6 % from
/// 1.25 mm, and a gauge of few leaves does not tell them apart.
const PITCH_SHARE: f64 = 0.02;

/// A thread that a reading may be of.
#[derive(Clone, Debug)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct LikelyThread {
    /// Its designation.
    pub name: String,
    /// What kind of thread it is, in a few words.
    pub system: &'static str,
    /// Its pitch.
    pub pitch: Pitch,
    /// The angle between its flanks in degrees.
    pub angle_degrees: f64,
    /// What the crest of a new one measures: the outside of a screw, the bore of a
    /// nut. Of a taper thread, from its small end to a few turns past the gauge plane.
    pub crest: Limits,
    /// How far the size read lies outside that; below it is negative.
    pub outside: Length,
    /// Its pitch less the one read, as a share of it.
    pub pitch_off: f64,
    /// Is it on a taper?
    pub tapers: bool,
    /// The drill for a model engineers' tap, from the first of its two sources.
    pub tap_drill: Option<Length>,
    /// The second source's, tighter.
    pub second_tap_drill: Option<Length>,
    /// How its figures are known.
    pub known: Known,
}

/// The threads that a crest of a size and a pitch may be of, the likeliest first.
///
/// # Errors
/// Nothing listed comes near; the advice says what to read again.
///
/// ```
/// use fits_core::standards::thread::{Pitch, Side, by_mic};
/// let found = by_mic("0.308in".parse()?, Pitch::per_inch(18, 1)?, Side::External)?;
/// assert_eq!(found[0].name, "5/16-18 UNC");
/// assert_eq!(found[1].name, "5/16-18 BSW");
/// let found = by_mic("7.85mm".parse()?, Pitch::of("1.25mm".parse()?)?, Side::External)?;
/// assert_eq!(found[0].name, "M8x1.25");
/// # Ok::<(), fits_core::Error>(())
/// ```
pub fn by_mic(size: Length, pitch: Pitch, side: Side) -> Result<Vec<LikelyThread>, Error> {
    let mut found: Vec<(u8, LikelyThread)> = names(size, pitch)?
        .into_iter()
        .filter_map(|(rank, name)| {
            let thread: Thread = name.parse().ok()?;
            Some((rank, candidate(&thread, size, pitch, side)?))
        })
        .collect();
    found.extend(models(size, pitch, side));
    // What a pitch gauge tells apart comes first, then what the size is inside of,
    // then the commoner series.
    found.sort_by(|(rank, one), (other_rank, other)| {
        let key = |rank: u8, it: &LikelyThread| {
            let is_far = it.pitch_off.abs() > 0.004;
            (
                is_far,
                it.outside != Length::ZERO,
                it.outside.tenth_nanometres().abs() / 100_000,
                rank,
            )
        };
        key(*rank, one).cmp(&key(*other_rank, other))
    });
    found.dedup_by(|(_, one), (_, other)| one.name == other.name);
    if found.is_empty() {
        let side = match side {
            Side::External => "outside",
            Side::Internal => "bore",
        };
        return Err(Error::not_listed(
            say!("no listed thread has {} of pitch and about {} {}", pitch.in_words(), size, side),
            "read the pitch over ten threads, and the outside across the crests",
        ));
    }
    Ok(found.into_iter().map(|(_, candidate)| candidate).collect())
}

/// Is a pitch near the one read?
fn is_near(pitch: Pitch, read: Pitch) -> bool {
    off(pitch, read).abs() <= PITCH_SHARE
}

fn off(pitch: Pitch, read: Pitch) -> f64 {
    pitch.millimetres() / read.millimetres() - 1.0
}

/// May a basic diameter be worth a look: within a pitch and a half of the size?
fn is_about(major: Length, size: Length, pitch: Pitch) -> bool {
    (major.millimetres() - size.millimetres()).abs() <= 1.5 * pitch.millimetres()
}

/// What a length is called in an inch thread's name.
fn inch_name(major: Length) -> String {
    let count = major.tenth_nanometres();
    let sixty_fourth = Length::INCH.tenth_nanometres() / 64;
    if count % sixty_fourth == 0 {
        let (mut above, mut below) = (count / sixty_fourth, 64);
        while above % 2 == 0 && below > 1 {
            (above, below) = (above / 2, below / 2);
        }
        let (whole, part) = (above / below, above % below);
        return match (whole, part) {
            (whole, 0) => whole.to_string(),
            (0, part) => format!("{part}/{below}"),
            (whole, part) => format!("{whole}-{part}/{below}"),
        };
    }
    crate::size::inches(major)
}

/// The same of a Unified size: a screw number goes before a fraction, as #5 for 1/8.
fn unified_name(major: Length) -> String {
    let number = (0..=12_u8).find(|number| Nominal::Number(*number).length() == Ok(major));
    number.map_or_else(|| inch_name(major), |number| format!("#{number}"))
}

fn turns((over, under): (i64, i64)) -> Option<Pitch> {
    Pitch::per_inch(over, under).ok()
}

/// The names of the listed threads of a pitch about a size, each with how common
/// its series is; the least is the commonest.
fn names(size: Length, read: Pitch) -> Result<Vec<(u8, String)>, Error> {
    let mut names = Vec::new();
    let mut add = |rank: u8, major: Length, pitch: Option<Pitch>, name: &dyn Fn() -> String| {
        if pitch.is_some_and(|pitch| is_near(pitch, read) && is_about(major, size, pitch)) {
            names.push((rank, name()));
        }
    };
    for row in &metric_table::SERIES {
        let plain = Nominal::Millimetres(row.nominal);
        for (rank, pitch) in row
            .coarse
            .iter()
            .map(|pitch| (0, *pitch))
            .chain(row.fine.iter().map(|pitch| (2 + row.choice, *pitch)))
        {
            add(rank, row.nominal, Pitch::of(pitch).ok(), &|| {
                format!("M{plain}x{}", Nominal::Millimetres(pitch))
            });
        }
    }
    for row in &unified_table::SERIES {
        let rank = match row.series {
            Series::Coarse => 0,
            Series::Fine => 1,
            _ => 4,
        };
        let pitch = turns((row.half_turns.into(), 2));
        add(rank, row.major, pitch, &|| {
            format!("{}-{}", unified_name(row.major), pitch.map_or_else(String::new, Pitch::figure))
        });
    }
    // One pitch for many diameters: the sixteenths about the size.
    let sixteenth = Length::INCH.checked_scale(1, 16)?;
    let steps = size.tenth_nanometres() / sixteenth.tenth_nanometres();
    for row in &unified_table::CONSTANT {
        let pitch = turns((row.turns.into(), 1));
        for step in steps - 1..=steps + 2 {
            let major = sixteenth.checked_mul(step)?;
            let is_listed = pitch.is_some_and(|it| {
                unified_series::constant(major, it).is_some()
                    && unified_series::listed(major, it).is_none()
            });
            if is_listed {
                add(6, major, pitch, &|| format!("{}-{}", inch_name(major), row.turns));
            }
        }
    }
    for row in &whitworth_table::SIZES {
        let (rank, series) = if row.series == Series::Coarse { (3, "BSW") } else { (4, "BSF") };
        add(rank, row.major, row.pitch().ok(), &|| format!("{} {series}", inch_name(row.major)));
    }
    for number in 0..ba_table::SIZES.len() {
        let number = u8::try_from(number).unwrap_or(u8::MAX);
        if let Ok(thread) = Thread::ba(number) {
            add(3, thread.major(), Some(thread.pitch()), &|| format!("{number}BA"));
        }
    }
    for row in &pipe_table::PARALLEL {
        let size = inch_name(row.size);
        let pitch = turns((row.tpi, 1));
        add(3, row.major, pitch, &|| format!("G{size}"));
        if pipe_table::SEALING.iter().any(|sealing| sealing.size == row.size) {
            add(4, row.major, pitch, &|| format!("R{size}"));
        }
    }
    for row in &pipe_table::AMERICAN {
        add(3, row.outside, turns(row.turns), &|| format!("{} NPT", inch_name(row.size)));
    }
    for row in &trapezoidal_table::SIZES {
        let (d, p) = (Nominal::Millimetres(row.diameter), Nominal::Millimetres(row.pitch));
        add(7, row.diameter, Pitch::of(row.pitch).ok(), &|| format!("Tr{d}x{p}"));
    }
    for row in &acme_table::SIZES {
        let pitch = row.pitch().ok();
        let figure = pitch.map_or_else(String::new, Pitch::figure);
        add(7, row.major, pitch, &|| format!("{}-{figure} Acme", inch_name(row.major)));
    }
    Ok(names)
}

/// A thread against what was read; none where it is too far off to be it.
fn candidate(thread: &Thread, size: Length, read: Pitch, side: Side) -> Option<LikelyThread> {
    let taper = thread.taper();
    let crest = match (side, &taper) {
        (Side::External, Some(taper)) => {
            // Small end to some turns past the gauge plane, a sixteenth on the diameter.
            let rise = taper.gauge_length.checked_scale(1, 16).ok()?;
            let past = thread.pitch().scaled(5, 16);
            Limits::new(
                thread.major().checked_sub(rise).ok()?,
                thread.major().checked_add(past).ok()?,
            )
            .ok()?
        }
        (Side::External, None) => {
            let major = thread.external(None).ok()?.major;
            Limits::new(major.min?, major.max?).ok()?
        }
        (Side::Internal, Some(_)) => return None,
        (Side::Internal, None) => {
            let minor = thread.internal(None).ok()?.minor;
            Limits::new(minor.min?, minor.max?).ok()?
        }
    };
    let known =
        thread.reasons().iter().fold(Known::Seen, |worst, reason| worst.worst(reason.known));
    found(
        LikelyThread {
            name: thread.to_string(),
            system: system(thread.form()),
            pitch: thread.pitch(),
            angle_degrees: thread.form().included_angle_degrees(),
            crest,
            outside: Length::ZERO,
            pitch_off: off(thread.pitch(), read),
            tapers: taper.is_some(),
            tap_drill: None,
            second_tap_drill: None,
            known,
        },
        size,
        side,
    )
}

/// With how far the size lies outside; none where it lies too far.
fn found(candidate: LikelyThread, size: Length, side: Side) -> Option<LikelyThread> {
    let outside = if size < candidate.crest.lower() {
        size.checked_sub(candidate.crest.lower()).ok()?
    } else if size > candidate.crest.upper() {
        size.checked_sub(candidate.crest.upper()).ok()?
    } else {
        Length::ZERO
    };
    // A worn screw or a nut bored out may be off by a third of a pitch the one way;
    // the other way only by what readings miss.
    let (pitch, off) = (candidate.pitch.millimetres(), outside.millimetres());
    let worn = match side {
        Side::External => -off,
        Side::Internal => off,
    };
    (worn <= pitch / 3.0 && -worn <= pitch / 20.0 + 0.01)
        .then_some(LikelyThread { outside, ..candidate })
}

const fn system(form: Form) -> &'static str {
    match form {
        Form::Metric => "ISO metric",
        Form::Unified | Form::UnifiedRounded => "Unified",
        Form::Trapezoidal => "trapezoidal",
        Form::Acme | Form::StubAcme => "Acme",
        Form::Whitworth => "Whitworth",
        Form::Ba => "British Association",
        Form::PipeParallel => "parallel pipe",
        Form::PipeR | Form::PipeRp | Form::PipeRc => "taper pipe",
        Form::Npt => "American taper pipe",
    }
}

/// The model engineers' series, Whitworth form.
fn models(size: Length, read: Pitch, side: Side) -> Vec<(u8, LikelyThread)> {
    let near = |row: &&Model| {
        turns((row.tpi.into(), 1))
            .is_some_and(|pitch| is_near(pitch, read) && is_about(row.major, size, pitch))
    };
    let made = |row: &Model| {
        let pitch = turns((row.tpi.into(), 1))?;
        let thread = Thread::whitworth(row.major, pitch).ok()?;
        let mut it = candidate(&thread, size, read, side)?;
        it.name = format!("{} x {} ME", row.size, row.tpi);
        it.system = "model engineers'";
        it.tap_drill = Some(row.tap);
        it.second_tap_drill = Some(row.second_tap);
        it.known = row.from.known.worst(Known::Memory);
        Some((3, it))
    };
    model_table::MODEL.iter().filter(near).filter_map(made).collect()
}
