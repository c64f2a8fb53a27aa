//! Pipe threads: G (ISO 228-1), R, Rp and Rc (ISO 7-1), NPT (ASME B1.20.1).
//!
//! A taper thread's diameters are given at its gauge plane: the plane that
//! lies [`PipeTaper::gauge_length`] from the small end of the screw, or at the
//! face of the nut. Its limits there are those of the plane's place, a
//! sixteenth of them on the diameter.

use super::pipe_table as table;
use super::{Class, DiameterLimits, Form, Nominal, Pitch, Side, Sizes, Thread, Zone};
use crate::{
    error::Error,
    size::{Decimals, Length, Rounding},
    source::{Known, Provenance, Reason},
};

/// A size of ISO 228-1; R, Rp and Rc have the same diameters.
#[derive(Debug)]
pub(super) struct Parallel {
    pub(super) size: Length,
    pub(super) tpi: i64,
    pub(super) major: Length,
    pub(super) pitch_diameter: Length,
    pub(super) minor: Length,
    pub(super) pitch_tolerance: Length,
    pub(super) minor_tolerance: Length,
    pub(super) major_tolerance: Length,
    pub(super) tap_drill: Option<Length>,
    pub(super) from: Provenance,
}

/// A size of ISO 7-1; turns are in quarters.
#[derive(Debug)]
pub(super) struct Sealing {
    pub(super) size: Length,
    pub(super) gauge_length: Length,
    pub(super) external_quarters: i64,
    pub(super) fitting_quarters: i64,
    pub(super) internal_quarters: i64,
    pub(super) tap_drill: Option<Length>,
    pub(super) full_thread: Option<Length>,
    pub(super) from: Provenance,
}

/// A size of ASME B1.20.1.
#[derive(Debug)]
pub(super) struct American {
    pub(super) size: Length,
    pub(super) outside: Length,
    /// Turns per inch: the first over the second.
    pub(super) turns: (i64, i64),
    /// Length of hand-tight engagement.
    pub(super) l1: Length,
    pub(super) tap_drill: Option<Length>,
    pub(super) from: Provenance,
}

/// What a taper pipe thread has besides its diameters: 1 in 16 on the
/// diameter.
///
/// ```
/// use fits_core::standards::thread::Thread;
/// let thread: Thread = "R1/2".parse()?;
/// let taper = thread.taper().expect("a taper thread");
/// assert_eq!(taper.gauge_length, "8.2mm".parse()?);
/// # Ok::<(), fits_core::Error>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct PipeTaper {
    /// From the small end of the screw to the gauge plane; L1 of NPT.
    pub gauge_length: Length,
    /// How far the screw's gauge plane may lie either way.
    pub external_tolerance: Length,
    /// How far the nut's gauge plane may lie either way.
    pub internal_tolerance: Length,
    /// Useful thread of the screw; L2 of NPT.
    pub useful_length: Length,
    /// Pitch diameter at the small end of the screw; E0 of NPT.
    pub small_end: Length,
    /// How far NPT goes in by wrench, L3; `None` for others.
    pub wrench_length: Option<Length>,
    /// How its figures are known.
    pub known: Known,
}

fn parallel(size: Length) -> Option<&'static Parallel> {
    table::PARALLEL.iter().find(|row| row.size == size)
}

fn sealing(size: Length) -> Option<&'static Sealing> {
    table::SEALING.iter().find(|row| row.size == size)
}

fn american(size: Length) -> Option<&'static American> {
    table::AMERICAN.iter().find(|row| row.size == size)
}

fn not_listed(form: Form, nominal: Nominal) -> Error {
    let (letter, sizes) = match form {
        Form::PipeParallel => ("G", "1/16 to 6"),
        Form::Npt => ("NPT", "1/16 to 24"),
        Form::PipeRp => ("Rp", "1/16 to 6"),
        Form::PipeRc => ("Rc", "1/16 to 6"),
        _ => ("R", "1/16 to 6"),
    };
    Error::not_listed(
        format!("{letter} has no size {nominal}"),
        format!("{letter} has the pipe sizes {sizes}: 1/8, 1/4, 3/8, 1/2, 3/4, 1 ..."),
    )
}

/// The major diameter (at the gauge plane) and pitch of a pipe size.
pub(super) fn named(form: Form, nominal: Nominal) -> Result<(Length, Pitch), Error> {
    let size = nominal.length()?;
    let refuse = || not_listed(form, nominal);
    if form == Form::Npt {
        let row = american(size).ok_or_else(refuse)?;
        let pitch = row.pitch()?;
        let major = row.gauge_pitch_diameter()?.checked_add(pitch.scaled(8, 10))?;
        return Ok((major, pitch));
    }
    let row = parallel(size).ok_or_else(refuse)?;
    if form != Form::PipeParallel && sealing(size).is_none() {
        return Err(refuse());
    }
    Ok((row.major, Pitch::per_inch(row.tpi, 1)?))
}

/// Where the size is listed.
pub(super) fn listed(thread: &Thread) -> Option<Provenance> {
    let size = thread.nominal().length().ok()?;
    match thread.form() {
        Form::Npt => american(size).map(|row| row.from),
        Form::PipeParallel => parallel(size).map(|row| row.from),
        _ => sealing(size).map(|row| row.from),
    }
}

/// Where the basic diameters are read; `None` where they follow by formula.
pub(super) fn basic_from(thread: &Thread) -> Option<Provenance> {
    let size = thread.nominal().length().ok()?;
    (thread.form() != Form::Npt).then(|| parallel(size).map(|row| row.from))?
}

/// The pitch and minor diameters of the tables.
pub(super) fn basic(thread: &Thread) -> Option<(Length, Length)> {
    let row = parallel(thread.nominal().length().ok()?)?;
    Some((row.pitch_diameter, row.minor))
}

impl American {
    fn pitch(&self) -> Result<Pitch, Error> {
        Pitch::per_inch(self.turns.0, self.turns.1)
    }

    /// E0 = D - (0.05 D + 1.1) P, in inches; exact, then to 0.1 nm.
    fn small_end(&self) -> Result<Length, Error> {
        let (turns, over) = (i128::from(self.turns.0), i128::from(self.turns.1));
        let part =
            self.outside.checked_scale(5, 100)?.checked_add(Length::INCH.checked_scale(11, 10)?)?;
        self.outside.checked_sub(part.checked_scale(over, turns)?)
    }

    /// E1 = E0 + L1 / 16.
    fn gauge_pitch_diameter(&self) -> Result<Length, Error> {
        self.small_end()?.checked_add(self.l1.checked_scale(1, 16)?)
    }

    /// L2 = (0.80 D + 6.8) P.
    fn useful_length(&self) -> Result<Length, Error> {
        let (turns, over) = (i128::from(self.turns.0), i128::from(self.turns.1));
        self.outside
            .checked_scale(8, 10)?
            .checked_add(Length::INCH.checked_scale(68, 10)?)?
            .checked_scale(over, turns)
    }
}

impl Thread {
    /// The taper of an R, Rc, Rp or NPT thread; `None` of any other. Of Rp it
    /// is that of the R that goes into it.
    ///
    /// ```
    /// use fits_core::standards::thread::Thread;
    /// assert!("1/2 NPT".parse::<Thread>()?.taper().is_some());
    /// assert_eq!("G1/2".parse::<Thread>()?.taper(), None);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn taper(&self) -> Option<PipeTaper> {
        self.try_taper().ok().flatten()
    }

    /// The drill before the tap of a G, Rp or Rc thread, as a published table
    /// of British Standard pipe sizes has it, or of NPT by the trade's chart;
    /// `None` where none was read. Those of Rc and NPT are drilled straight; that
    /// of Rc is the table's drill for Rp too.
    ///
    /// ```
    /// use fits_core::standards::thread::Thread;
    /// assert_eq!("G1/2".parse::<Thread>()?.pipe_tap_drill(), Some("19mm".parse()?));
    /// assert_eq!("Rp1/2".parse::<Thread>()?.pipe_tap_drill(), Some("18.75mm".parse()?));
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn pipe_tap_drill(&self) -> Option<Length> {
        let size = self.nominal().length().ok()?;
        match self.form() {
            Form::PipeParallel => parallel(size)?.tap_drill,
            Form::PipeRp | Form::PipeRc => sealing(size)?.tap_drill,
            Form::Npt => american(size)?.tap_drill,
            _ => None,
        }
    }

    /// The greatest straight hole that leaves full thread to the end of an Rc,
    /// as a maker of taps prints it; `None` where none was read.
    ///
    /// ```
    /// use fits_core::standards::thread::Thread;
    /// assert_eq!("Rc1/2".parse::<Thread>()?.full_thread_hole(), Some("17.9mm".parse()?));
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn full_thread_hole(&self) -> Option<Length> {
        let size = self.nominal().length().ok()?;
        (self.form() == Form::PipeRc).then(|| sealing(size)?.full_thread)?
    }

    fn try_taper(&self) -> Result<Option<PipeTaper>, Error> {
        let size = self.nominal().length()?;
        let pitch = self.pitch();
        match self.form() {
            Form::Npt => {
                let row = american(size).ok_or_else(|| not_listed(self.form(), self.nominal()))?;
                // Three turns by wrench to 2 in, two above.
                let turns = if size > Length::INCH.checked_mul(2)? { 2 } else { 3 };
                Ok(Some(PipeTaper {
                    gauge_length: row.l1,
                    external_tolerance: pitch.nearest(),
                    internal_tolerance: pitch.nearest(),
                    useful_length: row.useful_length()?,
                    small_end: row.small_end()?,
                    wrench_length: Some(pitch.scaled(turns, 1)),
                    known: row.from.known,
                }))
            }
            Form::PipeR | Form::PipeRp | Form::PipeRc => {
                let row = sealing(size).ok_or_else(|| not_listed(self.form(), self.nominal()))?;
                // The table prints tenths of a millimetre.
                let quarters = |count: i64| tenth_millimetre(pitch.scaled(count, 4));
                let small_end = self
                    .basic_pitch_diameter()
                    .checked_sub(row.gauge_length.checked_scale(1, 16)?)?;
                Ok(Some(PipeTaper {
                    gauge_length: row.gauge_length,
                    external_tolerance: quarters(row.external_quarters),
                    internal_tolerance: quarters(row.internal_quarters),
                    useful_length: row.gauge_length.checked_add(quarters(row.fitting_quarters))?,
                    small_end,
                    wrench_length: None,
                    known: row.from.known,
                }))
            }
            _ => Ok(None),
        }
    }
}

fn tenth_millimetre(length: Length) -> Length {
    let tenths = Decimals { places: 1, ..Decimals::MILLIMETRES };
    tenths.round(length, Rounding::Nearest)
}

pub(super) const fn default_class(form: Form, side: Side) -> Class {
    match (form, side) {
        (Form::PipeParallel, Side::External) => Class::of(0, 'A'),
        _ => Class::Sole,
    }
}

/// Does the form have this side?
fn check_side(thread: &Thread, side: Side) -> Result<(), Error> {
    let (why, advice) = match (thread.form(), side) {
        (Form::PipeR, Side::Internal) => (
            "R is the screw: its nut is Rp or Rc",
            format!("ask for `Rp{0}` or `Rc{0}`", thread.nominal()),
        ),
        (Form::PipeRp | Form::PipeRc, Side::External) => {
            ("Rp and Rc are nuts: their screw is R", format!("ask for `R{}`", thread.nominal()))
        }
        _ => return Ok(()),
    };
    Err(Error::not_given(why, advice))
}

/// Is external class A or B, or the one class there is; how many times the
/// tolerance.
fn times(thread: &Thread, side: Side, class: Class) -> Result<i64, Error> {
    const A: Zone = Zone { grade: 0, position: 'A' };
    const B: Zone = Zone { grade: 0, position: 'B' };
    let is_g_screw = thread.form() == Form::PipeParallel && side == Side::External;
    match class {
        Class::Zones { pitch: A, crest: A } if is_g_screw => Ok(1),
        Class::Zones { pitch: B, crest: B } if is_g_screw => Ok(2),
        Class::Sole if !is_g_screw => Ok(1),
        _ => Err(Error::not_given(
            format!(
                "{} threads have no class {class} of {} thread",
                thread.form().name(),
                side.word()
            ),
            if is_g_screw {
                format!("screws are class A or B: `{thread} A`")
            } else {
                format!("there is one class: `{thread}`")
            },
        )),
    }
}

pub(super) fn sizes(thread: &Thread, side: Side, class: Option<Class>) -> Result<Sizes, Error> {
    check_side(thread, side)?;
    let class = class.unwrap_or(default_class(thread.form(), side));
    let times = times(thread, side, class)?;
    if thread.form() == Form::PipeParallel {
        parallel_sizes(thread, side, class, times)
    } else {
        taper_sizes(thread, side, class)
    }
}

fn parallel_sizes(thread: &Thread, side: Side, class: Class, times: i64) -> Result<Sizes, Error> {
    let row = parallel(thread.nominal().length()?)
        .ok_or_else(|| not_listed(thread.form(), thread.nominal()))?;
    let basic = row.pitch_diameter;
    let pitch_tolerance = row.pitch_tolerance.checked_mul(times)?;
    let (major, pitch, minor, crest_tolerance) = match side {
        Side::External => (
            DiameterLimits::of(row.major, row.major.checked_sub(row.major_tolerance)?),
            DiameterLimits::of(basic, basic.checked_sub(pitch_tolerance)?),
            DiameterLimits { max: Some(row.minor), min: None },
            row.major_tolerance,
        ),
        Side::Internal => (
            DiameterLimits { max: None, min: Some(row.major) },
            DiameterLimits::of(basic.checked_add(pitch_tolerance)?, basic),
            DiameterLimits::of(row.minor.checked_add(row.minor_tolerance)?, row.minor),
            row.minor_tolerance,
        ),
    };
    Ok(Sizes {
        side,
        class,
        major,
        pitch,
        minor,
        deviation: Length::ZERO,
        pitch_tolerance,
        crest_tolerance,
        outside: None,
    })
}

/// At the gauge plane: a plane that lies further along is a sixteenth of the
/// way larger or smaller.
fn taper_sizes(thread: &Thread, side: Side, class: Class) -> Result<Sizes, Error> {
    // On the exact turns, not on their millimetres as printed.
    let quarters = match sealing(thread.nominal().length()?) {
        _ if thread.form() == Form::Npt => 4,
        Some(row) if side == Side::External => row.external_quarters,
        Some(row) => row.internal_quarters,
        None => return Err(not_listed(thread.form(), thread.nominal())),
    };
    let off = thread.rounded(thread.pitch().scaled(quarters, 4 * 16));
    let around = |basic: Length| {
        Ok::<_, Error>(DiameterLimits::of(basic.checked_add(off)?, basic.checked_sub(off)?))
    };
    let both = off.checked_mul(2)?;
    Ok(Sizes {
        side,
        class,
        major: around(thread.rounded(thread.major()))?,
        pitch: around(thread.basic_pitch_diameter())?,
        minor: around(thread.basic_minor_diameter())?,
        deviation: Length::ZERO,
        pitch_tolerance: both,
        crest_tolerance: both,
        outside: None,
    })
}

/// Why the limits are what they are.
pub(super) fn reasons(thread: &Thread, sizes: &Sizes) -> Vec<Reason> {
    let Ok(size) = thread.nominal().length() else { return Vec::new() };
    let mut reasons = Vec::new();
    let mut add = |figure: &str, value: String, rule: String, from: &Provenance| {
        reasons.push(Reason {
            figure: figure.to_owned(),
            value: value.into(),
            rule: rule.into(),
            source: from.text.to_owned(),
            known: from.known,
        });
    };
    let diameters = format!(
        "major {}, pitch {}",
        thread.written(thread.rounded(thread.major())),
        thread.written(thread.basic_pitch_diameter())
    );
    if let Some(row) = american(size).filter(|_| thread.form() == Form::Npt) {
        add(
            "at L1",
            diameters,
            "E0 = D - (0.05 D + 1.1) P, E1 = E0 + L1/16, height 0.8 P".to_owned(),
            &row.from,
        );
        add(
            "limits",
            "one turn either way".to_owned(),
            "a sixteenth of P on the diameter".to_owned(),
            &row.from,
        );
    } else if let Some(row) = parallel(size) {
        add("basic diameters", diameters, "tabulated; Whitworth form".to_owned(), &row.from);
        if thread.form() == Form::PipeParallel {
            let rule = if sizes.class == Class::of(0, 'B') {
                "class B is twice class A"
            } else {
                "tabulated"
            };
            add(
                "pitch diameter tolerance",
                sizes.pitch_tolerance.to_string(),
                rule.to_owned(),
                &row.from,
            );
        } else if let Some(row) = sealing(size) {
            let quarters = match sizes.side {
                Side::External => row.external_quarters,
                Side::Internal => row.internal_quarters,
            };
            add(
                "limits at the gauge plane",
                sizes.pitch_tolerance.to_string(),
                format!("{quarters}/4 turns either way, a sixteenth of it on the diameter"),
                &row.from,
            );
        }
    }
    reasons
}
