//! A named thread's figures for tapping, wires and single-point cutting.
//!
//! The rooms themselves take plain figures; taper threads are not measured or
//! cut here, for a taper goes by its gauge plane. Their hole is drilled straight.

use super::{
    infeed::{Nose, ThreadCut},
    tap::{Advice, TapHole, Wanted, full_height},
    wires::WireThread,
};
use crate::{
    error::Error,
    size::{Length, Limits},
    standards::{
        iso286::Feature,
        thread::{Class, DiameterLimits, Form, PipeTaper, Side, Sizes, Thread},
    },
};

impl TapHole {
    /// The hole of a thread, with its class's minor diameter where the system
    /// gives limits.
    ///
    /// # Errors
    /// A taper thread; a class that the thread has not.
    ///
    /// ```
    /// use fits_core::{shop::tap::{Bit, TapHole, Wanted}, standards::drills::Series};
    /// let hole = TapHole::of_thread(&"3/8-24".parse()?, None)?;
    /// let drills = Bit::standard(&[Series::Number, Series::Letter, Series::Fraction]);
    /// assert_eq!(hole.choose(&drills, Wanted::Percent(75.0))?.best.bit.name, "Q");
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn of_thread(thread: &Thread, class: Option<Class>) -> Result<Self, Error> {
        if let (Form::Npt | Form::PipeRc, Some(taper)) = (thread.form(), thread.taper()) {
            return Self::straight(thread, taper);
        }
        let form = parallel(thread).map_err(|_| {
            Error::out_of_reach(
                format!("no tap drill is known here for {} threads", thread.form().name()),
                "no published one was read: ask the tap's maker",
            )
        })?;
        let pitch = thread.pitch().nearest();
        let height = match form {
            // Its own low height.
            Form::StubAcme => thread.height(),
            _ => full_height(pitch, form.flank_half_angle_degrees())?,
        };
        let minor = match (thread.internal(class), class) {
            (Ok(sizes), _) => both(sizes.minor).transpose()?,
            // A system without limits has a hole all the same.
            (Err(_), None) => None,
            (Err(error), Some(_)) => return Err(error),
        };
        Self::new(thread.major(), pitch, height, minor)
    }

    /// A straight hole for a taper thread, where the small end of the screw
    /// comes when it is made up: no thread beyond is shallower. No limits hold
    /// it there.
    fn straight(thread: &Thread, taper: PipeTaper) -> Result<Self, Error> {
        let height = match thread.form() {
            Form::Npt => thread.height(),
            form => full_height(thread.pitch().nearest(), form.flank_half_angle_degrees())?,
        };
        // Of the pitch diameter: NPT by wrench, R by its useful thread.
        let in_the_nut = match taper.wrench_length {
            Some(wrench) => taper.gauge_length.checked_add(wrench)?,
            None => taper.useful_length,
        };
        let face = taper.small_end.checked_add(taper.gauge_length.checked_scale(1, 16)?)?;
        let there = face.checked_sub(in_the_nut.checked_scale(1, 16)?)?;
        Self::new(there.checked_add(height)?, thread.pitch().nearest(), height, None)
    }

    /// The minor diameter of a taper thread at the screw's small end, hand
    /// tight: a maker of taps wants the hole for NPT close to it (North American
    /// Tool, tap drill sizes for NPT and NPTF: K0).
    ///
    /// ```
    /// use fits_core::{shop::tap::TapHole, standards::thread::Thread};
    /// let least = TapHole::small_end(&"1/2 NPT".parse()?).expect("a taper");
    /// assert!((least.millimetres() / 25.4 - 0.7013).abs() < 0.000_1);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn small_end(thread: &Thread) -> Option<Length> {
        let height =
            thread.basic_pitch_diameter().checked_sub(thread.basic_minor_diameter()).ok()?;
        thread.taper()?.small_end.checked_sub(height).ok()
    }
}

impl Wanted {
    /// What to look for where nothing is asked: the percent advised for a
    /// fastening thread, the middle of the limits for a power thread.
    ///
    /// ```
    /// use fits_core::{shop::tap::{Advice, Drive, Wanted, Work}, standards::thread::Form};
    /// let advice = Advice::of(Work::General, Drive::Hand);
    /// assert_eq!(Wanted::usual(Form::Metric, advice), Wanted::Advised(advice));
    /// assert_eq!(Wanted::usual(Form::Acme, advice), Wanted::Middle);
    /// ```
    pub const fn usual(form: Form, advice: Advice) -> Self {
        match form {
            Form::Trapezoidal | Form::Acme | Form::StubAcme => Self::Middle,
            _ => Self::Advised(advice),
        }
    }
}

impl WireThread {
    /// A screw to measure, at the middle of its pitch diameter's limits.
    ///
    /// # Errors
    /// A taper thread; limits of a nut, or none of the pitch diameter; figures
    /// that wires do not measure.
    ///
    /// ```
    /// use fits_core::{shop::wires::WireThread, standards::thread::Thread};
    /// let thread: Thread = "3/8-24".parse()?;
    /// let screw = WireThread::of_thread(&thread, &thread.external(None)?)?;
    /// assert!((screw.best_wire()?.millimetres() / 25.4 - 0.024_06).abs() < 0.000_01);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn of_thread(thread: &Thread, sizes: &Sizes) -> Result<Self, Error> {
        let form = parallel(thread)?;
        if sizes.side == Side::Internal {
            return Err(Error::out_of_reach(
                "wires measure the screw, not the nut".to_owned(),
                "try the nut with its screw or a gauge",
            ));
        }
        let pitch = thread.pitch();
        let plain = Self::new(
            pitch.nearest(),
            thread.lead().nearest(),
            form.flank_half_angle_degrees(),
            middle(sizes.pitch, "pitch")?,
            sizes.major.max.unwrap_or(thread.major()),
        )?;
        let plain = sizes.pitch.min.map_or(plain, |least| plain.down_to(least));
        match ThreadCut::common_nose(pitch.nearest(), form.flank_half_angle_degrees()) {
            // Whitworth and BA crests have the root's radius.
            Ok(Nose::Radius(radius)) => plain.with_crest_radius(radius),
            _ => Ok(plain),
        }
    }
}

impl ThreadCut {
    /// A thread to cut to the middle of its limits, with its usual nose where
    /// none is given: a power thread's reaches its root.
    ///
    /// # Errors
    /// A taper thread; limits that leave the pitch diameter or the blank open.
    ///
    /// ```
    /// use fits_core::{shop::infeed::{Nose, ThreadCut}, standards::thread::Thread};
    /// let thread: Thread = "M10x1.5".parse()?;
    /// let cut = ThreadCut::of_thread(&thread, &thread.external(None)?, None)?;
    /// assert_eq!(cut.nose, Nose::Flat("0.1875mm".parse()?));
    /// assert_eq!(cut.blank, "9.85mm".parse()?);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn of_thread(thread: &Thread, sizes: &Sizes, nose: Option<Nose>) -> Result<Self, Error> {
        let form = parallel(thread)?;
        let half_angle_degrees = form.flank_half_angle_degrees();
        let pitch = thread.pitch().nearest();
        let (feature, blank, root) = match sizes.side {
            Side::External => (Feature::Shaft, middle(sizes.major, "major")?, sizes.minor),
            Side::Internal => (Feature::Hole, middle(sizes.minor, "minor")?, sizes.major),
        };
        let nose = match (nose, form) {
            (Some(nose), _) => nose,
            (None, Form::Trapezoidal | Form::Acme | Form::StubAcme) => {
                Nose::Reaches(middle(root, "root")?)
            }
            (None, _) => Self::common_nose(pitch, half_angle_degrees)?,
        };
        let pitch_diameter = middle(sizes.pitch, "pitch")?;
        Ok(Self { feature, pitch, half_angle_degrees, blank, pitch_diameter, nose })
    }
}

fn parallel(thread: &Thread) -> Result<Form, Error> {
    match thread.form() {
        form @ (Form::Npt | Form::PipeR | Form::PipeRc) => Err(Error::out_of_reach(
            format!("{} is a taper thread", form.name()),
            "taper threads go by their gauge plane: try the mating gauge",
        )),
        form => Ok(form),
    }
}

fn both(spread: DiameterLimits) -> Option<Result<Limits, Error>> {
    Some(Limits::new(spread.min?, spread.max?))
}

/// The middle of the limits, or the one there is.
fn middle(spread: DiameterLimits, diameter: &str) -> Result<Length, Error> {
    match both(spread) {
        Some(limits) => Ok(limits?.middle()),
        None => spread.max.or(spread.min).ok_or_else(|| {
            Error::out_of_reach(
                format!("the standard gives no limits of the {diameter} diameter"),
                "give the diameters in figures",
            )
        }),
    }
}
