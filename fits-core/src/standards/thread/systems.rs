//! One door to the systems beyond metric and Unified: from a designation to a
//! thread, from a thread to its limits, and back to its name.

use super::{
    Class, Designation, Form, Nominal, Pitch, Series, Side, Sizes, Thread, acme, ba, pipe,
    trapezoidal, whitworth,
};
use crate::{error::Error, size::Length};

/// Larger inch threads are in no list and no formula was checked so far out.
const LARGEST_INCHES: i64 = 40;

impl Thread {
    /// A metric trapezoidal thread of any diameter and pitch.
    ///
    /// ```
    /// use fits_core::standards::thread::{Pitch, Thread};
    /// let thread = Thread::trapezoidal("21mm".parse()?, Pitch::of("4mm".parse()?)?)?;
    /// assert_eq!(thread.to_string(), "Tr21x4");
    /// assert_eq!(thread.internal(None)?.major.min, Some("21.5mm".parse()?));
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    ///
    /// # Errors
    /// The pitch leaves no core, or the diameter is beyond the formulas.
    pub fn trapezoidal(diameter: Length, pitch: Pitch) -> Result<Self, Error> {
        let name = Nominal::Millimetres(diameter);
        let series = trapezoidal::series(diameter, pitch);
        Self::checked(Form::Trapezoidal, name, diameter, pitch, series)
    }

    /// A general purpose Acme thread of any diameter and pitch.
    ///
    /// ```
    /// use fits_core::standards::thread::{Pitch, Thread};
    /// let thread = Thread::acme("1/2in".parse()?, Pitch::per_inch(10, 1)?)?;
    /// // ASME B1.5, class 2G.
    /// assert_eq!(thread.external(None)?.pitch.max, Some("0.4443in".parse()?));
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    ///
    /// # Errors
    /// The pitch leaves no core, or the diameter is above 40 in.
    pub fn acme(diameter: Length, pitch: Pitch) -> Result<Self, Error> {
        Self::inch(Form::Acme, Nominal::Decimal(diameter), pitch)
    }

    /// A stub Acme thread of any diameter and pitch.
    ///
    /// # Errors
    /// As [`Thread::acme`].
    ///
    /// ```
    /// use fits_core::standards::thread::{Pitch, Thread};
    /// let thread = Thread::stub_acme("1/2in".parse()?, Pitch::per_inch(10, 1)?)?;
    /// assert_eq!(thread.to_string(), "0.500-10 Stub Acme");
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn stub_acme(diameter: Length, pitch: Pitch) -> Result<Self, Error> {
        Self::inch(Form::StubAcme, Nominal::Decimal(diameter), pitch)
    }

    /// A thread of Whitworth form of any diameter and pitch.
    ///
    /// ```
    /// use fits_core::standards::thread::{Pitch, Series, Thread};
    /// let thread = Thread::whitworth("1/2in".parse()?, Pitch::per_inch(12, 1)?)?;
    /// assert_eq!(thread.series(), Series::Coarse);
    /// assert_eq!(thread.basic_pitch_diameter(), "0.4466in".parse()?);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    ///
    /// # Errors
    /// As [`Thread::acme`].
    pub fn whitworth(diameter: Length, pitch: Pitch) -> Result<Self, Error> {
        Self::inch(Form::Whitworth, Nominal::Decimal(diameter), pitch)
    }

    /// A British Association thread by its number.
    ///
    /// ```
    /// use fits_core::standards::thread::Thread;
    /// assert_eq!(Thread::ba(2)?.major(), "4.7mm".parse()?);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    ///
    /// # Errors
    /// Above 16.
    pub fn ba(number: u8) -> Result<Self, Error> {
        let (major, pitch) = ba::named(number)?;
        Self::checked(Form::Ba, Nominal::Number(number), major, pitch, Series::Listed)
    }

    /// A pipe thread by its nominal size.
    ///
    /// ```
    /// use fits_core::standards::thread::{Form, Thread};
    /// let thread = Thread::pipe(Form::PipeParallel, "1/2in".parse()?)?;
    /// assert_eq!(thread.major(), "20.955mm".parse()?);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    ///
    /// # Errors
    /// The form is not a pipe thread or has no such size.
    pub fn pipe(form: Form, size: Length) -> Result<Self, Error> {
        Self::named_pipe(form, Nominal::Decimal(size))
    }

    fn named_pipe(form: Form, nominal: Nominal) -> Result<Self, Error> {
        let (major, pitch) = pipe::named(form, nominal)?;
        Self::checked(form, nominal, major, pitch, Series::Listed)
    }

    fn inch(form: Form, nominal: Nominal, pitch: Pitch) -> Result<Self, Error> {
        let major = nominal.length()?;
        if major > Length::INCH.checked_mul(LARGEST_INCHES)? {
            return Err(Error::not_given(
                format!("no {} thread is above {LARGEST_INCHES} in", form.name()),
                "give the diameter in inches, as `1-1/2-4 Acme`",
            ));
        }
        let series = match form {
            Form::Whitworth => whitworth::series(major, pitch),
            _ => acme::series(major, pitch),
        };
        Self::checked(form, nominal, major, pitch, series)
    }

    /// One start, right-hand, with a core, and tolerances that leave a thread.
    fn checked(
        form: Form,
        nominal: Nominal,
        major: Length,
        pitch: Pitch,
        series: Series,
    ) -> Result<Self, Error> {
        let thread = Self {
            form,
            nominal,
            major,
            pitch,
            starts: 1,
            left: false,
            series,
            is_pitch_assumed: false,
        };
        let side = if is_nut(form) { Side::Internal } else { Side::External };
        let sizes = sizes(&thread, side, None, None)?;
        let height = thread.height();
        if sizes.pitch_tolerance >= height || sizes.crest_tolerance >= height {
            return Err(Error::not_given(
                format!("the tolerances are wider than a thread of {pitch} is high"),
                "give a coarser pitch",
            ));
        }
        Ok(thread)
    }
}

const fn is_nut(form: Form) -> bool {
    matches!(form, Form::PipeRp | Form::PipeRc)
}

/// The thread that a designation names.
pub(super) fn resolve(designation: &Designation) -> Result<Thread, Error> {
    let nominal = designation.nominal.value;
    let at_size = |error: Error| error.at(designation.nominal.at.0, designation.nominal.at.1);
    let at_pitch = |error: Error| match designation.pitch {
        Some(pitch) => error.at(pitch.at.0, pitch.at.1),
        None => at_size(error),
    };
    let form = designation.form;
    let typed = designation.pitch.map(|pitch| pitch.value);
    let thread = match form {
        Form::Trapezoidal => {
            let diameter = nominal.length().map_err(at_size)?;
            let Some(pitch) = typed else {
                return Err(at_size(Error::not_given(
                    format!("Tr{nominal} needs its pitch"),
                    trapezoidal::advice(diameter),
                )));
            };
            Thread::trapezoidal(diameter, pitch).map_err(at_pitch)?
        }
        Form::Acme | Form::StubAcme | Form::Whitworth => {
            let major = nominal.length().map_err(at_size)?;
            let series = designation.series.map(|series| series.value);
            let listed = match form {
                Form::Whitworth => whitworth::listed_pitch(major, series.unwrap_or(Series::Coarse)),
                _ => acme::listed_pitch(major),
            };
            let Some(pitch) = typed.or(listed) else {
                return Err(at_size(no_listed_pitch(form, nominal, series)));
            };
            if series.is_some() && listed != Some(pitch) {
                return Err(at_pitch(wrong_series(nominal, series, listed)));
            }
            let thread = Thread::inch(form, nominal, pitch).map_err(at_pitch)?;
            Thread { is_pitch_assumed: typed.is_none() && series.is_none(), ..thread }
        }
        Form::Ba => match nominal {
            Nominal::Number(number) => Thread::ba(number).map_err(at_size)?,
            _ => {
                return Err(at_size(Error::not_given(
                    format!("{nominal} is not a BA number"),
                    "BA sizes are 0 to 16: `2 BA`",
                )));
            }
        },
        _ => Thread::named_pipe(form, nominal).map_err(at_size)?,
    };
    match typed {
        Some(pitch) if pitch != thread.pitch => Err(at_pitch(Error::not_given(
            format!("{thread} has {}, not {pitch}", thread.pitch),
            format!("leave the pitch out: `{thread}`"),
        ))),
        _ => Ok(thread),
    }
}

fn no_listed_pitch(form: Form, nominal: Nominal, series: Option<Series>) -> Error {
    let list = match (form, series) {
        (Form::Whitworth, Some(Series::Fine)) => "BSF",
        (Form::Whitworth, _) => "BSW",
        _ => "Acme",
    };
    // Turns that this size can have.
    let example = [10, 20, 4, 2, 16, 40, 1].into_iter().find_map(|turns| {
        let pitch = Pitch::per_inch(turns, 1).ok()?;
        Thread::inch(form, nominal, pitch).ok()
    });
    Error::not_listed(
        format!("{nominal} in is not a listed {list} size"),
        match example {
            Some(example) => format!("give the turns per inch, as `{example}`"),
            None => format!("sizes are written in inches, as `1/2 {list}`"),
        },
    )
}

fn wrong_series(nominal: Nominal, series: Option<Series>, listed: Option<Pitch>) -> Error {
    let word = if series == Some(Series::Fine) { "BSF" } else { "BSW" };
    match listed {
        Some(pitch) => Error::not_given(
            format!("{nominal} {word} has {pitch}"),
            format!("ask for `{nominal} {word}`; another pitch is said with Whitworth"),
        ),
        None => no_listed_pitch(Form::Whitworth, nominal, series),
    }
}

/// The class where none is given.
pub(super) fn default_class(thread: &Thread, side: Side) -> Option<Class> {
    match (thread.form, side) {
        (Form::Trapezoidal, _) => Some(trapezoidal::default_class(side)),
        (Form::Acme | Form::StubAcme, _) => Some(acme::default_class()),
        (Form::Whitworth, _) => Some(whitworth::default_class(side)),
        (Form::Ba, _) => Some(ba::default_class()),
        (Form::PipeR, Side::Internal) | (Form::PipeRp | Form::PipeRc, Side::External) => None,
        (form, _) => Some(pipe::default_class(form, side)),
    }
}

/// The limits of one side.
pub(super) fn sizes(
    thread: &Thread,
    side: Side,
    class: Option<Class>,
    engaged: Option<Length>,
) -> Result<Sizes, Error> {
    match thread.form {
        Form::Trapezoidal => trapezoidal::sizes(thread, side, class),
        Form::Acme | Form::StubAcme => acme::sizes(thread, side, class),
        Form::Whitworth => whitworth::sizes(thread, side, class, engaged),
        Form::Ba => ba::sizes(thread, side, class),
        _ => pipe::sizes(thread, side, class),
    }
}

/// Is it a class of this thread's system, on one side or the other?
pub(super) fn check(thread: &Thread, class: Class) -> Result<(), Error> {
    let first = match class.side(thread.form) {
        Some(side) => side,
        None if is_nut(thread.form) => Side::Internal,
        None => Side::External,
    };
    let other = if first == Side::External { Side::Internal } else { Side::External };
    sizes(thread, first, Some(class), None)
        .or_else(|error| sizes(thread, other, Some(class), None).map_err(|_| error))
        .map(|_| ())
}

/// BS 93 is of single-start threads, and so are the pipe threads.
pub(super) fn check_starts(thread: &Thread) -> Result<(), Error> {
    match thread.form {
        Form::Metric
        | Form::Unified
        | Form::UnifiedRounded
        | Form::Trapezoidal
        | Form::Acme
        | Form::StubAcme
        | Form::Whitworth => Ok(()),
        form => Err(Error::not_given(
            format!("{} threads have one start", form.name()),
            format!("leave the starts out: `{thread}`"),
        )),
    }
}

/// The basic pitch and minor diameters where a table prints them.
pub(super) fn tabulated_basic(thread: &Thread) -> Option<(Length, Length)> {
    match thread.form {
        Form::Ba => ba::basic(thread.major),
        Form::PipeParallel | Form::PipeR | Form::PipeRp | Form::PipeRc => pipe::basic(thread),
        _ => None,
    }
}

/// The designation, without class and hand.
pub(super) fn name(thread: &Thread) -> String {
    let nominal = thread.nominal;
    let pitch = thread.pitch.figure();
    let word = match thread.form {
        Form::Trapezoidal if thread.starts > 1 => {
            return format!("Tr{nominal}x{}P{pitch}", thread.lead().figure());
        }
        Form::Trapezoidal => return format!("Tr{nominal}x{pitch}"),
        Form::Ba => return format!("{nominal} BA"),
        Form::PipeParallel => return format!("G{nominal}"),
        Form::PipeR => return format!("R{nominal}"),
        Form::PipeRp => return format!("Rp{nominal}"),
        Form::PipeRc => return format!("Rc{nominal}"),
        Form::Npt => return format!("{nominal} NPT"),
        Form::StubAcme => "Stub Acme",
        Form::Acme => "Acme",
        _ => match thread.series {
            Series::Coarse => "BSW",
            Series::Fine => "BSF",
            _ => "Whitworth",
        },
    };
    format!("{nominal}-{pitch} {word}")
}
