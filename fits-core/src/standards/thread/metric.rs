//! ISO metric threads: ISO 68-1 (profile), ISO 261 and 262 (sizes), ISO 965-1
//! (tolerances).
//!
//! The tolerances and deviations are table data: rounding the formulas to R 40
//! preferred numbers misses some cells by a step. Outside the tables the
//! formulas serve, and [`Sizes::outside`] says so. Positions a to d are not
//! given: their figures could not be read.

mod classes;
mod tolerances;
pub(super) use self::classes::{check, default_class, nearest, unified_side, usual};
use self::classes::{class_for, zones};
pub(super) use self::tolerances::{
    Figure, crest_tolerance, deviation, pitch_tolerance, preferred, whole,
};
use super::{
    Class, Designation, DiameterLimits, Form, Nominal, Pitch, Series, Side, Sizes, Thread,
    metric_table::{SERIES, SOURCES, STEPS},
};
use crate::{
    error::Error,
    size::Length,
    source::{Known, Provenance},
};

/// A tabulated figure.
#[derive(Clone, Copy, Debug)]
pub(super) struct Cell {
    /// Nought where the table has none.
    pub(super) micrometres: u16,
    /// Index into the sources.
    pub(super) source: u8,
}

/// What depends on the pitch alone.
#[derive(Debug)]
pub(super) struct PitchRow {
    pub(super) pitch: Length,
    /// Fundamental deviations e, f, and g or G.
    pub(super) deviations: [Cell; 3],
    /// Tolerance of the screw's major diameter, grades 4, 6 and 8.
    pub(super) major: [Cell; 3],
    /// Tolerance of the nut's minor diameter, grades 4 to 8.
    pub(super) minor: [Cell; 5],
}

/// What depends on the pitch and a step of diameters.
#[derive(Debug)]
pub(super) struct Step {
    pub(super) over: Length,
    pub(super) up_to: Length,
    pub(super) rows: &'static [StepRow],
}

/// Tolerances of pitch diameters.
#[derive(Debug)]
pub(super) struct StepRow {
    pub(super) pitch: Length,
    /// Screw, grades 3 to 9.
    pub(super) external: [Cell; 7],
    /// Nut, grades 4 to 8.
    pub(super) internal: [Cell; 5],
    /// Length of engagement N: from and to, in micrometres; zero where not
    /// read.
    pub(super) engagement: [u32; 2],
}

/// A listed size.
#[derive(Debug)]
pub(super) struct Listed {
    pub(super) nominal: Length,
    /// 1 is to be preferred.
    pub(super) choice: u8,
    pub(super) coarse: Option<Length>,
    pub(super) fine: &'static [Length],
    pub(super) source: u8,
    /// What the size is kept for; empty for any use.
    pub(super) note: &'static str,
}

const OUTSIDE: &str =
    "outside the tables of ISO 965-1: by the formulas, rounded to R 40 preferred numbers";

/// The listed row of a nominal size.
pub(super) fn listed(nominal: Length) -> Option<&'static Listed> {
    let at = SERIES.partition_point(|row| row.nominal < nominal);
    SERIES.get(at).filter(|row| row.nominal == nominal)
}

pub(super) fn provenance(source: u8) -> Provenance {
    const NOTHING: Provenance = Provenance { known: Known::Memory, text: "" };
    SOURCES.get(usize::from(source)).copied().unwrap_or(NOTHING)
}

/// The pitches listed for a size, the coarse one first, in words.
pub(super) fn pitches(nominal: Length) -> String {
    let Some(row) = listed(nominal) else {
        return "give the pitch in millimetres, as `M10x1.25`".into();
    };
    let name = |pitch: &Length| Nominal::Millimetres(*pitch).to_string();
    let coarse = row.coarse.iter().map(|pitch| format!("{} (coarse)", name(pitch)));
    let all: Vec<String> = coarse.chain(row.fine.iter().map(name)).collect();
    format!("M{} is listed with pitch {}", Nominal::Millimetres(nominal), all.join(", "))
}

impl Thread {
    /// An ISO metric thread of any size and pitch.
    ///
    /// ```
    /// use fits_core::{Length, standards::thread::{Pitch, Series, Thread}};
    /// let pitch = Pitch::of("1.1mm".parse()?)?;
    /// let thread = Thread::metric("19.5mm".parse()?, pitch)?;
    /// assert_eq!(thread.series(), Series::Special);
    /// assert!(thread.external(None)?.outside.is_some());
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    ///
    /// # Errors
    /// The pitch is above half the diameter or below 0.1 mm, or the diameter
    /// above 1 m.
    pub fn metric(nominal: Length, pitch: Pitch) -> Result<Self, Error> {
        let refuse = |why: String| Err(Error::not_given(why, pitches(nominal)));
        let name = Nominal::Millimetres(nominal);
        // To 0.1 nm, however it was said.
        let pitch = Pitch::of(pitch.nearest())?;
        if !nominal.is_positive() || nominal > micrometres(1_000_000) {
            return refuse(format!("M{name} is not a metric thread: they end at 1000 mm"));
        }
        if pitch.scaled(2, 1) > nominal {
            return refuse(format!("a pitch of {pitch} leaves no core in M{name}"));
        }
        if pitch.nearest() < micrometres(100) {
            return refuse(format!("a pitch of {pitch} is finer than any metric thread"));
        }
        let length = pitch.nearest();
        let series = match listed(nominal) {
            Some(row) if row.coarse == Some(length) => Series::Coarse,
            Some(row) if row.fine.contains(&length) => Series::Fine,
            _ => Series::Special,
        };
        Ok(Self {
            form: Form::Metric,
            nominal: name,
            major: nominal,
            pitch,
            starts: 1,
            left: false,
            series,
            is_pitch_assumed: false,
        })
    }
}

/// The thread that a metric designation names.
pub(super) fn resolve(designation: &Designation) -> Result<Thread, Error> {
    let nominal = designation.nominal.value.length()?;
    let at = |error: Error, part: &(usize, usize)| error.at(part.0, part.1);
    if let Some(pitch) = designation.pitch {
        return Thread::metric(nominal, pitch.value).map_err(|error| at(error, &pitch.at));
    }
    let Some(coarse) = listed(nominal).and_then(|row| row.coarse) else {
        let why = format!("M{} has no coarse pitch", Nominal::Millimetres(nominal));
        let advice = pitches(nominal);
        return Err(at(Error::not_given(why, advice), &designation.nominal.at));
    };
    let thread = Thread::metric(nominal, Pitch::of(coarse)?)?;
    Ok(Thread { is_pitch_assumed: true, ..thread })
}

/// A pitch of a size that has no coarse one: the first of its fine.
pub(super) fn first_pitch(major: Length) -> Option<Pitch> {
    Pitch::of(*listed(major)?.fine.first()?).ok()
}

/// How long the threads are engaged.
///
/// ```
/// use fits_core::standards::thread::Engagement;
/// assert_eq!(Engagement::Long.letter(), "L");
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "kebab-case"))]
#[non_exhaustive]
pub enum Engagement {
    /// S.
    Short,
    /// N.
    Normal,
    /// L.
    Long,
}

/// The lengths of engagement of group N (ISO 965-1): from the first, up to and
/// including the second; shorter is S, longer L. The flag says whether they
/// were read in a table or computed (2.24 and 6.7 P d^0.2, d the least
/// diameter of the step) and not yet rounded as the table is.
///
/// ```
/// use fits_core::standards::thread::engagement;
/// let (from, to, is_tabulated) = engagement(&"M10".parse()?);
/// assert_eq!((from.to_string(), to.to_string()), ("5 mm".into(), "15 mm".into()));
/// assert!(is_tabulated);
/// # Ok::<(), fits_core::Error>(())
/// ```
pub fn engagement(thread: &Thread) -> (Length, Length, bool) {
    let step = step(thread.major);
    let row = step.and_then(|step| row(step, thread.pitch));
    match row.map(|row| row.engagement) {
        Some([from, to]) if from > 0 => (micrometres(from.into()), micrometres(to.into()), true),
        _ => {
            let least = step.map_or(thread.major, |step| step.over).millimetres();
            let by = thread.pitch.millimetres() * libm::pow(least, 0.2);
            (micrometres(whole(2240.0 * by)), micrometres(whole(6700.0 * by)), false)
        }
    }
}

impl Engagement {
    /// The group of a length.
    ///
    /// ```
    /// use fits_core::standards::thread::{Engagement, Thread};
    /// let thread: Thread = "M10".parse()?;
    /// // ISO 965-1: normal over 5 up to 15 mm.
    /// assert_eq!(Engagement::of(&thread, "15mm".parse()?), Engagement::Normal);
    /// assert_eq!(Engagement::of(&thread, "16mm".parse()?), Engagement::Long);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn of(thread: &Thread, engaged: Length) -> Self {
        let (from, to, _) = engagement(thread);
        if engaged < from {
            Self::Short
        } else if engaged > to {
            Self::Long
        } else {
            Self::Normal
        }
    }

    /// Its letter.
    pub const fn letter(self) -> &'static str {
        match self {
            Self::Short => "S",
            Self::Normal => "N",
            Self::Long => "L",
        }
    }
}

pub(super) fn step(major: Length) -> Option<&'static Step> {
    let at = STEPS.partition_point(|step| step.up_to < major);
    STEPS.get(at).filter(|step| step.over < major)
}

fn row(step: &'static Step, pitch: Pitch) -> Option<&'static StepRow> {
    let length = pitch.nearest();
    step.rows.iter().find(|row| row.pitch == length)
}

pub(super) fn micrometres(count: i64) -> Length {
    // Tolerances and engagements are below 2^32 um.
    Length::from_tenth_nanometres(count.saturating_mul(10_000))
}

/// Root of the least radius, 0.125 P: the triangle less a quarter of a pitch
/// lies below the pitch line.
const ROUNDED_ROOT: i64 = 616_025_403_784;

pub(super) fn sizes(
    thread: &Thread,
    side: Side,
    class: Option<Class>,
    engaged: Option<Length>,
) -> Result<Sizes, Error> {
    let class = class.unwrap_or_else(|| match engaged {
        Some(engaged) => class_for(thread, side, engaged),
        None => default_class(thread, side),
    });
    let (pitch, crest) = zones(side, class)?;
    let deviation = deviation(thread.pitch, pitch.position);
    let pitch_tolerance = pitch_tolerance(thread, side, pitch.grade);
    let crest_tolerance = crest_tolerance(thread.pitch, side, crest.grade);
    let is_tabulated = pitch_tolerance.source.is_some()
        && crest_tolerance.source.is_some()
        && (deviation.source.is_some() || deviation.length == Length::ZERO);
    let off = deviation.length;
    let (major, middle, minor, off) = match side {
        Side::External => {
            let major = thread.major.checked_sub(off)?;
            let middle = thread.basic_pitch_diameter().checked_sub(off)?;
            let least = middle.checked_sub(pitch_tolerance.length)?;
            let root = thread.rounded(least.checked_sub(thread.pitch.part(ROUNDED_ROOT))?);
            (
                DiameterLimits::of(major, major.checked_sub(crest_tolerance.length)?),
                DiameterLimits::of(middle, least),
                DiameterLimits::of(thread.basic_minor_diameter().checked_sub(off)?, root),
                off.checked_neg()?,
            )
        }
        Side::Internal => {
            let middle = thread.basic_pitch_diameter().checked_add(off)?;
            let minor = thread.basic_minor_diameter().checked_add(off)?;
            (
                DiameterLimits { max: None, min: Some(thread.major.checked_add(off)?) },
                DiameterLimits::of(middle.checked_add(pitch_tolerance.length)?, middle),
                DiameterLimits::of(minor.checked_add(crest_tolerance.length)?, minor),
                off,
            )
        }
    };
    Ok(Sizes {
        side,
        class,
        major,
        pitch: middle,
        minor,
        deviation: off,
        pitch_tolerance: pitch_tolerance.length,
        crest_tolerance: crest_tolerance.length,
        outside: (!is_tabulated).then_some(OUTSIDE),
    })
}
