//! Screw threads: names, profiles and limits.
//!
//! [`scan`] reads a designation without tables, [`Designation::resolve`] finds
//! the [`Thread`] it names, and [`Thread::external`] and [`Thread::internal`]
//! give its limits. Each system has its room; listed sizes and tabulated
//! tolerances live in `data/threads/`. Sizes outside the tables are computed by
//! the standard's formulas and say so.
//!
//! ```
//! use fits_core::standards::thread::Thread;
//! let thread: Thread = "M10x1.25".parse()?;
//! let screw = thread.external(None)?;
//! assert_eq!(screw.class.to_string(), "6g");
//! assert_eq!(screw.pitch.max, Some("9.16mm".parse()?));
//! assert_eq!(screw.pitch.min, Some("9.042mm".parse()?));
//! # Ok::<(), fits_core::Error>(())
//! ```

mod acme;
mod series;
mod sizes;
#[rustfmt::skip]
#[allow(clippy::unreadable_literal, reason = "generated")]
mod acme_table;
mod ba;
#[rustfmt::skip]
#[allow(clippy::unreadable_literal, reason = "generated")]
mod ba_table;
mod by_mic;
mod class;
mod designation;
mod form;
mod inch;
mod insert;
mod metric;
#[rustfmt::skip]
#[allow(clippy::unreadable_literal, reason = "generated")]
mod metric_table;
#[rustfmt::skip]
#[allow(clippy::unreadable_literal, reason = "generated")]
mod model_table;
mod named;
mod nominal;
mod pair;
mod pipe;
#[rustfmt::skip]
#[allow(clippy::unreadable_literal, reason = "generated")]
mod pipe_table;
mod pitch;
mod reader;
mod scan;
mod systems;
mod trapezoidal;
#[rustfmt::skip]
#[allow(clippy::unreadable_literal, reason = "generated")]
mod trapezoidal_table;
mod unified;
mod unified_series;
#[rustfmt::skip]
#[allow(clippy::unreadable_literal, reason = "generated")]
mod unified_table;
mod whitworth;
#[rustfmt::skip]
#[allow(clippy::unreadable_literal, reason = "generated")]
mod whitworth_table;
mod why;
mod why_metric;
mod why_systems;
mod why_unified;

use core::{fmt, str::FromStr};

pub use by_mic::{LikelyThread, by_mic};
pub use class::{Class, Quality, Side, Zone};
pub use designation::{Designation, Typed};
pub use form::Form;
pub use insert::{InsertHole, SquareThread};
pub use metric::{Engagement, engagement};
pub use nominal::Nominal;
pub use pair::{Play, ThreadPair};
pub use pipe::PipeTaper;
pub use pitch::Pitch;
pub use scan::{scan, scan_expected};
pub use series::Series;

pub use self::sizes::{DiameterLimits, Sizes};
use crate::{error::Error, size::Length};

/// A thread: its form, size, pitch, starts and hand.
///
/// ```
/// use fits_core::standards::thread::{Form, Series, Thread};
/// let thread: Thread = "3/8-24".parse()?;
/// assert_eq!((thread.form(), thread.series()), (Form::Unified, Series::Fine));
/// assert_eq!(thread.to_string(), "3/8-24 UNF");
/// use fits_core::standards::thread::Nominal;
/// assert_eq!(thread.nominal(), Nominal::Fraction { whole: 0, numerator: 3, denominator: 8 });
/// assert_eq!((thread.major(), thread.pitch().turns_per_inch()), ("3/8in".parse()?, 24.0));
/// assert_eq!((thread.starts(), thread.is_left_hand(), thread.left_hand().is_left_hand()), (1, false, true));
/// assert!(!thread.is_pitch_assumed() && "M10".parse::<Thread>()?.is_pitch_assumed());
/// // As ASME B1.1 rounds them: 0.3479 and 0.3299 in; H is 0.0361 in.
/// assert_eq!(thread.basic_pitch_diameter(), "0.3479in".parse()?);
/// assert_eq!(thread.basic_minor_diameter(), "0.3299in".parse()?);
/// assert!((thread.triangle_height().millimetres() / 25.4 - 0.0361).abs() < 0.0001);
/// // 5/8 H.
/// assert!((thread.height().millimetres() / thread.triangle_height().millimetres() - 0.625).abs() < 1e-5);
/// # Ok::<(), fits_core::Error>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Thread {
    form: Form,
    nominal: Nominal,
    major: Length,
    pitch: Pitch,
    starts: u8,
    left: bool,
    series: Series,
    /// The designation named no pitch: the coarse series was taken.
    is_pitch_assumed: bool,
}

impl Thread {
    /// The form.
    pub const fn form(&self) -> Form {
        self.form
    }

    /// The size as the name says it.
    pub const fn nominal(&self) -> Nominal {
        self.nominal
    }

    /// The basic major diameter; of a taper thread, at the gauge plane.
    pub const fn major(&self) -> Length {
        self.major
    }

    /// The pitch, from one thread to the next.
    pub const fn pitch(&self) -> Pitch {
        self.pitch
    }

    /// How many starts.
    pub const fn starts(&self) -> u8 {
        self.starts
    }

    /// Is it left-hand?
    pub const fn is_left_hand(&self) -> bool {
        self.left
    }

    /// The list it stands in.
    pub const fn series(&self) -> Series {
        self.series
    }

    /// Did the designation name no pitch, so that the coarse one was taken?
    pub const fn is_pitch_assumed(&self) -> bool {
        self.is_pitch_assumed
    }

    /// The lead: how far one turn goes.
    ///
    /// ```
    /// use fits_core::standards::thread::Thread;
    /// let thread: Thread = "M10x3P1.5".parse()?;
    /// assert_eq!((thread.starts(), thread.lead().to_string().as_str()), (2, "3 mm"));
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn lead(&self) -> Pitch {
        self.pitch.times(self.starts)
    }

    /// The basic pitch diameter as the standard rounds it.
    pub fn basic_pitch_diameter(&self) -> Length {
        let computed = || self.rounded(self.less(self.form.to_pitch_line()));
        systems::tabulated_basic(self).map_or_else(computed, |(pitch, _)| pitch)
    }

    /// The basic minor diameter (of the nut) as the standard rounds it.
    pub fn basic_minor_diameter(&self) -> Length {
        let computed = || self.rounded(self.less(self.form.to_minor()));
        systems::tabulated_basic(self).map_or_else(computed, |(_, minor)| minor)
    }

    /// The major diameter less so many trillionths of the pitch.
    fn less(&self, trillionths: i64) -> Length {
        let part = self.pitch.part(trillionths);
        // Both are bounded: a pitch is at most 10 in.
        self.major.checked_sub(part).unwrap_or(self.major)
    }

    /// On the last place of its standard: 0.001 mm, 0.0001 in, or 0.00001 in
    /// of NPT.
    fn rounded(&self, length: Length) -> Length {
        self.form.last_place().round(length, crate::size::Rounding::Nearest)
    }

    /// The height of the fundamental triangle, H.
    pub fn triangle_height(&self) -> Length {
        self.pitch.part(self.form.triangle())
    }

    /// The basic height of the thread in engagement: half of major less minor
    /// diameter, unrounded.
    pub fn height(&self) -> Length {
        self.pitch.part(self.form.to_minor() / 2)
    }

    /// The lead angle at the basic pitch diameter, in degrees.
    fn lead_angle_degrees(&self) -> f64 {
        let round = core::f64::consts::PI * self.basic_pitch_diameter().millimetres();
        libm::atan2(self.lead().millimetres(), round).to_degrees()
    }

    /// The lead (helix) angle at the basic pitch diameter.
    ///
    /// ```
    /// use fits_core::standards::thread::Thread;
    /// use uom::si::angle::degree;
    /// // Machinery's Handbook, table of UNC threads: 1/4-20 has 4 deg 11 min.
    /// let thread: Thread = "1/4-20".parse()?;
    /// assert!((thread.lead_angle().get::<degree>() - (4.0 + 11.0 / 60.0)).abs() < 0.01);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    #[cfg(feature = "uom")]
    pub fn lead_angle(&self) -> uom::si::f64::Angle {
        uom::si::f64::Angle::new::<uom::si::angle::degree>(self.lead_angle_degrees())
    }

    /// In square millimetres.
    fn stress_area_mm2(&self) -> Option<f64> {
        let factor = match self.form {
            Form::Metric => 0.938_194_3,
            Form::Unified | Form::UnifiedRounded => 0.974_3,
            _ => return None,
        };
        let diameter = self.major.millimetres() - factor * self.pitch.millimetres();
        Some(core::f64::consts::FRAC_PI_4 * diameter * diameter)
    }

    /// The tensile stress area: pi/4 (d - 0.9382 P)² of a metric thread
    /// (ISO 898-1), pi/4 (D - 0.9743 P)² of a Unified one (ASME B1.1); `None`
    /// where the form has none.
    ///
    /// ```
    /// use fits_core::standards::thread::Thread;
    /// use uom::si::area::square_millimeter;
    /// // ISO 898-1:2013, table 4: M10, 58.0 mm².
    /// let area = "M10".parse::<Thread>()?.stress_area().expect("metric");
    /// assert!((area.get::<square_millimeter>() - 58.0).abs() < 0.05);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    #[cfg(feature = "uom")]
    pub fn stress_area(&self) -> Option<uom::si::f64::Area> {
        self.stress_area_mm2().map(uom::si::f64::Area::new::<uom::si::area::square_millimeter>)
    }

    /// The class where none is given: 6g and 6H, 2A and 2B; `None` where the
    /// system has only one or the side does not exist.
    ///
    /// ```
    /// use fits_core::standards::thread::{Class, Side, Thread};
    /// let metric: Thread = "M10".parse()?;
    /// assert_eq!(metric.default_class(Side::External), Some(Class::of(6, 'g')));
    /// let unified: Thread = "3/8-24".parse()?;
    /// assert_eq!(unified.default_class(Side::Internal), Some(Class::of(2, 'B')));
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn default_class(&self, side: Side) -> Option<Class> {
        match (self.form, side) {
            (Form::Metric, _) => Some(metric::default_class(self, side)),
            (Form::Unified | Form::UnifiedRounded, Side::External) => Some(Class::of(2, 'A')),
            (Form::Unified, Side::Internal) => Some(Class::of(2, 'B')),
            (Form::UnifiedRounded, Side::Internal) => None,
            _ => systems::default_class(self, side),
        }
    }

    /// The limits of the screw.
    ///
    /// # Errors
    /// No such class, or the system gives no limits.
    ///
    /// ```
    /// use fits_core::standards::thread::Thread;
    /// // M10 6g: pitch diameter 8.862 to 8.994 mm, major 9.732 to 9.968 mm.
    /// let screw = "M10".parse::<Thread>()?.external(None)?;
    /// assert_eq!((screw.pitch.min, screw.pitch.max), (Some("8.862mm".parse()?), Some("8.994mm".parse()?)));
    /// assert_eq!(screw.major.max, Some("9.968mm".parse()?));
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn external(&self, class: Option<Class>) -> Result<Sizes, Error> {
        self.sizes(Side::External, class, None)
    }

    /// The limits of the nut.
    ///
    /// # Errors
    /// As [`Thread::external`].
    ///
    /// ```
    /// use fits_core::standards::thread::Thread;
    /// // M10 6H: pitch diameter 9.026 to 9.206 mm, minor 8.376 to 8.676 mm.
    /// let nut = "M10".parse::<Thread>()?.internal(None)?;
    /// assert_eq!((nut.pitch.min, nut.pitch.max), (Some("9.026mm".parse()?), Some("9.206mm".parse()?)));
    /// assert_eq!(nut.minor.max, Some("8.676mm".parse()?));
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn internal(&self, class: Option<Class>) -> Result<Sizes, Error> {
        self.sizes(Side::Internal, class, None)
    }

    /// The limits of one side, where a length of engagement counts.
    ///
    /// `None` is the usual length: group N of ISO 965-1; the diameter or nine
    /// pitches of ASME B1.1, by the series. A Unified tolerance grows with the
    /// length; a metric length picks the class where none is given.
    ///
    /// ```
    /// use fits_core::standards::thread::{Side, Thread};
    /// let thread: Thread = "3/8-24".parse()?;
    /// let usual = thread.sizes(Side::External, None, None)?;
    /// let long = thread.sizes(Side::External, None, Some("3/4in".parse()?))?;
    /// assert!(long.pitch.min < usual.pitch.min);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    ///
    /// # Errors
    /// As [`Thread::external`].
    pub fn sizes(
        &self,
        side: Side,
        class: Option<Class>,
        engaged: Option<Length>,
    ) -> Result<Sizes, Error> {
        match self.form {
            Form::Metric => metric::sizes(self, side, class, engaged),
            Form::Unified | Form::UnifiedRounded => unified::sizes(self, side, class, engaged),
            _ => systems::sizes(self, side, class, engaged),
        }
    }

    /// A second start and more.
    ///
    /// # Errors
    /// No start, or more than one of a system that has one (BA and pipe
    /// threads).
    ///
    /// ```
    /// use fits_core::standards::thread::{Side, Thread};
    /// let screw: Thread = "Tr20x4".parse()?;
    /// let fast = screw.with_starts(2)?;
    /// assert_eq!(fast.lead().nearest(), "8mm".parse()?);
    /// assert!(screw.default_class(Side::External).is_some());
    /// assert!(screw.external(None)?.pitch.contains("17.9mm".parse()?));
    /// assert!(screw.with_starts(0).is_err());
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn with_starts(self, starts: u8) -> Result<Self, Error> {
        if starts == 0 {
            return Err(Error::not_given(
                "a thread has one start or more",
                "leave the starts out for one",
            ));
        }
        if starts > 1 {
            systems::check_starts(&self)?;
        }
        Ok(Self { starts, ..self })
    }

    /// The same, left-hand.
    #[must_use]
    pub const fn left_hand(self) -> Self {
        Self { left: true, ..self }
    }

    /// The designation in the standard's style, with classes where given.
    ///
    /// ```
    /// use fits_core::standards::thread::{Class, Thread};
    /// let thread: Thread = "M10 LH".parse()?;
    /// let class = Some(Class::of(6, 'g'));
    /// assert_eq!(thread.designation(class, None), "M10x1.5-6g-LH");
    /// let thread: Thread = "3/8-24".parse()?;
    /// let (screw, nut) = (Some(Class::of(2, 'A')), Some(Class::of(2, 'B')));
    /// assert_eq!(thread.designation(screw, nut), "3/8-24 UNF-2B/2A");
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn designation(&self, external: Option<Class>, internal: Option<Class>) -> String {
        designation::written(self, external, internal)
    }
}

impl fmt::Display for Thread {
    /// The designation without a class.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.designation(None, None))
    }
}

impl FromStr for Thread {
    type Err = Error;

    /// The thread that the whole text names; classes are checked and dropped.
    fn from_str(text: &str) -> Result<Self, Error> {
        match scan_expected(text) {
            Some(found) => {
                let (designation, taken) = found?;
                if taken == text.len() {
                    designation.resolve()
                } else {
                    Err(left_over(text, taken))
                }
            }
            None => Err(Error::not_a_thread(
                format!("`{text}` is not a thread"),
                "name one as `M10x1.25`, `3/8-24 UNF` or `Tr20x4`",
            )
            .at(0, text.len())),
        }
    }
}

fn left_over(text: &str, taken: usize) -> Error {
    let rest = text.get(taken..).unwrap_or_default();
    let start = taken + (rest.len() - rest.trim_start().len());
    Error::not_a_thread(
        format!("`{}` does not belong to a thread's name", rest.trim()),
        "a class, `LH` or `2 starts` may follow",
    )
    .at(start, text.len())
}
