//! Tap drills: the percent of thread that a hole leaves, and the drill for it.
//!
//! Percent of thread is the handbooks' `100 (D − hole) / (2 h)` with h the
//! full height each side (Machinery's Handbook, 31st ed., p. 2155, table 2): 0.75 H =
//! 0.649519 P for 60 degrees, so that the basic minor diameter of a unified or
//! metric thread (5/8 H) is 83.3 percent, not 100. The other forms have their
//! own basic height: 0.640327 P (55 degrees), 0.6 P (47.5), P/2 (30 and 29).
//!
//! What to advise stands in `data/threads/tap_percent.csv`, what a drill cuts
//! over its size in `data/drills/oversize.csv`.

mod advice;
mod bit;
mod bore;
mod chart;
mod choice;
#[rustfmt::skip]
#[allow(clippy::unreadable_literal, reason = "generated")]
mod chart_table;
#[rustfmt::skip]
#[allow(clippy::unreadable_literal, reason = "generated")]
mod chart_hole_table;
mod clearance;
#[rustfmt::skip]
#[allow(clippy::unreadable_literal, reason = "generated")]
mod clearance_table;
mod depth;
#[rustfmt::skip]
#[allow(clippy::unreadable_literal, reason = "generated")]
mod table;


pub use advice::{Advice, Drive, Oversize, Work};
pub use bit::Bit;
pub use bore::Bore;
pub use chart::ChartDrill;
pub use clearance::{ChartHole, ClearanceHole, Clearances, Screws};
pub use depth::{HandTap, TapDepth};

pub use self::choice::{TapDrills, Wanted};
use crate::{
    error::Error,
    size::{Length, Limits},
    source::{Known, Reason},
};

/// A percent that can be asked for (common practice, no source; published
/// tables print 51 to 79).
const ASKED: core::ops::RangeInclusive<f64> = 40.0..=100.0;

/// The most thread that a tap is made to cut (Army Ordnance OD 1621, task 2: at
/// most 83); the basic minor diameter of a 60-degree thread is at 83.3.
pub const MOST_CUT: f64 = 83.4;

/// Of a formed thread: 65 is recommended, down to 60 possible (Machinery's
/// Handbook, cold form tapping); above 75 the crests overfill (common
/// practice, no source).
const FORMED: core::ops::RangeInclusive<f64> = 50.0..=75.0;

/// How far beyond that the nearest drill may come (common practice, no source).
const NEARLY: f64 = 5.0;

/// What one percent of formed thread takes off the diameter, in pitches
/// (Machinery's Handbook, cold form tapping).
const FORMING: f64 = 0.0068;

/// A drill that keeps the limits goes before one that is nearer by this to the
/// percent asked for (common practice, no source).
const ABOUT: f64 = 3.0;

/// Drills as near as this to what is wanted are equals (common practice, no
/// source).
const SAME: f64 = 1.0;

/// A hole to be tapped: plain figures, any form.
///
/// ```
/// use fits_core::shop::tap::TapHole;
/// let hole = TapHole::of_thread(&"M10".parse()?, None)?;
/// // 8.676 and 8.376 mm, by the height of 0.6495 P.
/// let (least, most) = hole.kept().expect("6H has limits");
/// assert_eq!((least.round(), most.round()), (68.0, 83.0));
/// # Ok::<(), fits_core::Error>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct TapHole {
    major: Length,
    pitch: Length,
    /// Twice the full height.
    full: Length,
    minor: Option<Limits>,
}

/// How a hole stands to the minor diameter's limits.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "kebab-case"))]
#[non_exhaustive]
pub enum Minor {
    /// Inside the limits.
    Kept,
    /// Under the lower limit: more thread than the class has, hard on the tap.
    Under,
    /// Over the upper limit: less thread than the class asks for.
    Over,
}

/// What one drill gives.
///
/// ```
/// use fits_core::shop::tap::{Bit, TapHole};
/// let hole = TapHole::of_thread(&"M10".parse()?, None)?;
/// // The nut's minor diameter is 8.376 to 8.676 mm.
/// assert!(hole.with(&Bit::sized("8.5mm".parse()?))?.keeps());
/// assert!(!hole.with(&Bit::sized("8.3mm".parse()?))?.keeps());
/// # Ok::<(), fits_core::Error>(())
/// ```
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct TapDrill {
    /// The drill.
    pub bit: Bit,
    /// Percent of thread, the hole as large as the drill.
    pub percent: f64,
    /// The hole as the drill commonly cuts it.
    pub drilled: Length,
    /// Percent of thread of that hole.
    pub percent_drilled: f64,
    /// Against the class's minor diameter, the hole as large as the drill;
    /// nothing where no limits are known.
    pub minor: Option<Minor>,
    /// The same, of the hole as the drill commonly cuts it.
    pub minor_drilled: Option<Minor>,
}

impl TapDrill {
    /// Does the hole keep the limits, as large as the drill? So it does where
    /// none are known.
    pub fn keeps(&self) -> bool {
        matches!(self.minor, None | Some(Minor::Kept))
    }

    /// As it is drilled, as large as the drill, or not at all. More thread than
    /// a tap stands is not a gain: what the drill commonly cuts over its size is
    /// no reason for it.
    fn rank(&self, most: f64) -> u8 {
        match (self.keeps(), self.minor_drilled) {
            (true, None | Some(Minor::Kept)) if self.percent <= most => 0,
            (true, _) => 1,
            (false, _) => 2,
        }
    }
}

/// A drill for a thread-forming tap.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct Forming {
    /// The hole by the rule.
    pub hole: Length,
    /// The drill nearest to it.
    pub bit: Bit,
    /// What that drill forms, in percent of thread.
    pub percent: f64,
}

/// The full height each side of a symmetric form by its half angle, as the
/// percent of thread counts it.
///
/// # Errors
/// A form whose height no source here gives, or out of range.
///
/// ```
/// use fits_core::{Length, shop::tap::full_height};
/// assert_eq!(full_height(Length::MILLIMETRE, 30.0)?, "0.6495191mm".parse()?);
/// # Ok::<(), fits_core::Error>(())
/// ```
pub fn full_height(pitch: Length, half_angle_degrees: f64) -> Result<Length, Error> {
    // 3/8 of the square root of 3; BS 84; BS 93; ISO 2904 and ASME B1.5.
    const HEIGHTS: [(f64, i128); 5] = [
        (30.0, 649_519_053),
        (27.5, 640_327_000),
        (23.75, 600_000_000),
        (15.0, 500_000_000),
        (14.5, 500_000_000),
    ];
    let found = HEIGHTS.iter().find(|(angle, _)| (angle - half_angle_degrees).abs() < 1e-6);
    match found {
        Some((_, billionths)) => pitch.checked_scale(*billionths, 1_000_000_000),
        None => Err(Error::out_of_reach(
            format!("no full height is known for flanks at {half_angle_degrees} degrees"),
            "half angles 30, 27.5, 23.75, 15 and 14.5 degrees",
        )),
    }
}

impl TapHole {
    /// A hole for a thread of a major diameter, pitch, full height each side
    /// ([`full_height`]) and, where known, its class's minor diameter.
    ///
    /// # Errors
    /// Figures that are not a thread, or out of range.
    ///
    /// ```
    /// use fits_core::{Length, shop::tap::{Bit, TapHole, Wanted, full_height}};
    /// let pitch: Length = "1.5mm".parse()?;
    /// let hole = TapHole::new("10mm".parse()?, pitch, full_height(pitch, 30.0)?, None)?;
    /// let drill = hole.with(&Bit::sized("8.5mm".parse()?))?;
    /// assert_eq!(drill.percent.round(), 77.0);
    /// let refused = hole.choose(&[], Wanted::Percent(130.0)).unwrap_err();
    /// assert_eq!(refused.to_string(), "130 % of thread cannot be tapped");
    /// assert_eq!(refused.advice(), "from 40 % to 100 %");
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn new(
        major: Length,
        pitch: Length,
        full_height: Length,
        minor: Option<Limits>,
    ) -> Result<Self, Error> {
        let full = full_height.checked_mul(2)?;
        if !pitch.is_positive() || !full.is_positive() || major <= full {
            return Err(Error::out_of_reach(
                format!("a major diameter of {major} has no room for a pitch of {pitch}"),
                format!("a major diameter over {full}"),
            ));
        }
        Ok(Self { major, pitch, full, minor })
    }

    /// Percent of thread that a hole leaves.
    ///
    /// ```
    /// use fits_core::shop::tap::{TapHole, full_height};
    /// let pitch = "1.5mm".parse()?;
    /// let hole = TapHole::new("10mm".parse()?, pitch, full_height(pitch, 30.0)?, None)?;
    /// // 1.5 mm less of 2 x 0.9743.
    /// assert_eq!(hole.percent("8.5mm".parse()?).round(), 77.0);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    #[allow(clippy::cast_precision_loss, reason = "percent, to a few places")]
    pub fn percent(&self, hole: Length) -> f64 {
        let left = self.major.tenth_nanometres().saturating_sub(hole.tenth_nanometres());
        100.0 * left as f64 / self.full.tenth_nanometres() as f64
    }

    /// The hole that leaves so many percent of thread.
    ///
    /// # Errors
    /// A percent that cannot be tapped.
    ///
    /// ```
    /// use fits_core::shop::tap::{TapHole, full_height};
    /// let pitch = "1.5mm".parse()?;
    /// let hole = TapHole::new("10mm".parse()?, pitch, full_height(pitch, 30.0)?, None)?;
    /// let three_quarters = hole.hole(75.0)?;
    /// assert!((hole.percent(three_quarters) - 75.0).abs() < 0.001);
    /// assert!(hole.hole(130.0).is_err());
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn hole(&self, percent: f64) -> Result<Length, Error> {
        within(percent, &ASKED, "% of thread cannot be tapped")?;
        self.hole_of(self.full.millimetres() * percent / 100.0)
    }

    /// The hole for a thread-forming tap: `D − 0.0068 · percent · P`
    /// (Machinery's Handbook, cold form tapping; 60 degrees only).
    ///
    /// # Errors
    /// A percent that cannot be formed, or another form than 60 degrees.
    ///
    /// ```
    /// use fits_core::{Length, shop::tap::{TapHole, full_height}};
    /// let pitch = Length::INCH.checked_scale(1, 13)?;
    /// let hole = TapHole::new("1/2in".parse()?, pitch, full_height(pitch, 30.0)?, None)?;
    /// // 0.5 - 0.0068 x 65 / 13.
    /// assert_eq!(hole.forming_hole(65.0)?, "0.466in".parse()?);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn forming_hole(&self, percent: f64) -> Result<Length, Error> {
        if full_height(self.pitch, 30.0)?.checked_mul(2)? != self.full {
            return Err(Error::out_of_reach(
                "the rule for forming taps holds for 60-degree threads only".to_owned(),
                "cut this thread",
            ));
        }
        within(percent, &FORMED, "% of thread cannot be formed")?;
        self.hole_of(FORMING * percent * self.pitch.millimetres())
    }

    /// The drill of a list nearest to a forming tap's hole.
    ///
    /// # Errors
    /// As [`TapHole::forming_hole`]; no drill that forms what can be formed.
    ///
    /// ```
    /// use fits_core::shop::tap::{Bit, TapHole, Wanted};
    /// use fits_core::standards::drills::Series;
    /// let hole = TapHole::of_thread(&"M8".parse()?, None)?;
    /// let drills = Bit::standard(&[Series::Metric]);
    /// // A forming tap wants the larger hole: it takes nothing off.
    /// let formed = hole.forming(&drills, 65.0)?;
    /// let cut = hole.choose_from(&[Bit::sized("6.8mm".parse()?)], &drills, Wanted::Percent(75.0))?;
    /// assert!(formed.bit.diameter > cut.best.bit.diameter);
    /// assert!(hole.hole(75.0)? > hole.hole(80.0)?);
    /// assert!((hole.percent(hole.hole(75.0)?) - 75.0).abs() < 0.01);
    /// assert_eq!(hole.reasons(&cut.best)?[0].figure, "percent of thread");
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn forming(&self, drills: &[Bit], percent: f64) -> Result<Forming, Error> {
        let hole = self.forming_hole(percent)?;
        let off = |bit: &&Bit| bit.diameter.tenth_nanometres().abs_diff(hole.tenth_nanometres());
        let bit = drills.iter().min_by_key(off).ok_or_else(|| no_drill(hole))?.clone();
        let left = self.major.checked_sub(bit.diameter)?.millimetres();
        let formed = left / (FORMING * self.pitch.millimetres());
        if formed < FORMED.start() - NEARLY || formed > FORMED.end() + NEARLY {
            return Err(Error::out_of_reach(
                "no drill in the list comes near the hole for a forming tap".to_owned(),
                format!("bore to {hole}"),
            ));
        }
        Ok(Forming { hole, percent: formed, bit })
    }

    fn hole_of(&self, off: f64) -> Result<Length, Error> {
        self.major.checked_sub(Length::nearest_millimetres(off)?)
    }

    /// What a drill in hand gives.
    ///
    /// # Errors
    /// A drill that leaves no thread, or less than the full height's hole.
    ///
    /// ```
    /// use fits_core::shop::tap::{Bit, TapHole, full_height};
    /// let pitch = "1.5mm".parse()?;
    /// let hole = TapHole::new("10mm".parse()?, pitch, full_height(pitch, 30.0)?, None)?;
    /// assert_eq!(hole.with(&Bit::sized("8.5mm".parse()?))?.percent.round(), 77.0);
    /// // It leaves no thread.
    /// assert!(hole.with(&Bit::sized("10.5mm".parse()?)).is_err());
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn with(&self, bit: &Bit) -> Result<TapDrill, Error> {
        if !self.leaves_thread(bit.diameter) {
            let smallest = self.major.checked_sub(self.full)?;
            let end = if bit.diameter >= self.major { "leaves no thread" } else { "is too small" };
            return Err(Error::out_of_reach(
                format!("a drill of {} {end}", bit.diameter),
                format!("from {smallest} (100 %) to under {} (0 %)", self.major),
            ));
        }
        let drilled = bit.diameter.checked_add(Oversize::of(bit.diameter)?.commonly)?;
        Ok(TapDrill {
            percent: self.percent(bit.diameter),
            percent_drilled: self.percent(drilled),
            minor: self.against(bit.diameter),
            minor_drilled: self.against(drilled),
            drilled,
            bit: bit.clone(),
        })
    }

    /// More than no thread, and no more than all of it?
    fn leaves_thread(&self, hole: Length) -> bool {
        hole < self.major && self.major.checked_sub(self.full).is_ok_and(|least| hole >= least)
    }

    fn against(&self, hole: Length) -> Option<Minor> {
        let limits = self.minor?;
        Some(if limits.contains(hole) {
            Minor::Kept
        } else if hole < limits.lower() {
            Minor::Under
        } else {
            Minor::Over
        })
    }

    /// What percent of thread the class's limits keep, least and most; nothing
    /// where none are known.
    pub fn kept(&self) -> Option<(f64, f64)> {
        self.minor.map(|limits| (self.percent(limits.upper()), self.percent(limits.lower())))
    }

    /// Why a drill gives what it gives.
    ///
    /// # Errors
    /// Out of range.
    ///
    /// ```
    /// use fits_core::shop::tap::{Bit, TapHole, full_height};
    /// let pitch = "1.5mm".parse()?;
    /// let hole = TapHole::new("10mm".parse()?, pitch, full_height(pitch, 30.0)?, None)?;
    /// let drill = hole.with(&Bit::sized("8.5mm".parse()?))?;
    /// assert_eq!(hole.reasons(&drill)?[0].figure, "percent of thread");
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn reasons(&self, drill: &TapDrill) -> Result<Vec<Reason>, Error> {
        let oversize = Oversize::of(drill.bit.diameter)?;
        Ok(vec![
            Reason {
                figure: "percent of thread".into(),
                value: format!("{:.0} %", drill.percent).into(),
                rule: format!(
                    "100 (D - hole) / {}: D {}, hole {}",
                    self.full, self.major, drill.bit.diameter
                )
                .into(),
                source: "Machinery's Handbook, 31st ed., p. 2155, table 2: twice the full height"
                    .into(),
                known: Known::Formula,
            },
            oversize.reason(),
        ])
    }
}

fn within(percent: f64, range: &core::ops::RangeInclusive<f64>, cannot: &str) -> Result<(), Error> {
    if range.contains(&percent) {
        return Ok(());
    }
    Err(Error::out_of_reach(
        format!("{percent} {cannot}"),
        format!("from {} % to {} %", range.start(), range.end()),
    ))
}

fn no_drill(hole: Length) -> Error {
    Error::out_of_reach(
        "no drill in the list leaves a thread".to_owned(),
        format!("the hole wanted is {hole}"),
    )
}
