//! A thread's pitch diameter measured over three wires, and back.
//!
//! For a symmetric thread with straight flanks: 60, 55, 47.5, 30 and 29
//! degrees and any other. Three figures of the size over the wires M with
//! pitch diameter E, wire W, half angle α, lead angle B at the pitch line:
//!
//! - plain: `M = E + W (1 + cosec α) − (P/2) cot α`;
//! - with the lead term, `+ (W/2) tan² B cos α cot α` (NBS Handbook H28, ASME
//!   B1.2), which published rules ask for where it is over 0.00015 in;
//! - exact: the straight wire on the helicoid (`seat`). The lead term
//!   overstates M: by 0.0003 of the pitch at 5 degrees on an Acme thread, by
//!   0.002 at 12.
//!
//! Roots are taken to be clear of the wires, as those of the basic forms are.
//! The answer is the plain one where the lead term does not matter and the
//! exact one where it does.

mod seat;
mod usable;

use crate::{
    error::Error,
    size::{Length, Limits},
    source::{Known, Reason},
};
use seat::{Groove, Seat};

/// The lead term below which the plain figure is used, mm (0.00015 in: NBS
/// Handbook H28, as handbooks reprint it).
const TERM_THAT_MATTERS: f64 = 0.000_15 * 25.4;

/// Beyond this a wire does not seat surely (degrees).
const MOST_LEAD_ANGLE: f64 = 20.0;

/// How a size over wires was found.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "kebab-case"))]
#[non_exhaustive]
pub enum Method {
    /// The plain formula: the lead does not matter.
    Plain,
    /// The wire on the helicoid.
    Exact,
}

/// An external thread to measure: plain figures, any symmetric form.
///
/// ```
/// use fits_core::shop::wires::WireThread;
/// // 1/2-13 with basic pitch diameter 0.4500 in.
/// let pitch = fits_core::Length::INCH.checked_scale(1, 13)?;
/// let thread = WireThread::new(pitch, pitch, 30.0, "0.45in".parse()?, "0.5in".parse()?)?;
/// use fits_core::shop::wires::Method;
/// // tan B = 1 / (13 pi 0.45).
/// assert!((thread.lead_angle_degrees() - 3.115).abs() < 0.001);
/// assert_eq!(thread.method(), Method::Plain);
/// // 0.57735 P, and from 0.56 to 0.90 P as published.
/// assert!((thread.best_wire()?.millimetres() / 25.4 - 0.044_41).abs() < 0.000_01);
/// let usable = thread.usable_wires()?;
/// assert!(usable.contains("0.0431in".parse()?) && usable.contains("0.0692in".parse()?));
/// # Ok::<(), fits_core::Error>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct WireThread {
    pitch: Length,
    lead: Length,
    half_angle_degrees: f64,
    pitch_diameter: Length,
    least_pitch_diameter: Length,
    major: Length,
    crest_radius: Length,
}

/// The size over three wires and what belongs to it.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct OverWires {
    /// The wire asked about.
    pub wire: Length,
    /// The wire that touches at the pitch line.
    pub best_wire: Length,
    /// The wires that touch the flanks and stand out of the crests.
    pub usable: Limits,
    /// Over the wires, by the method named.
    pub over: Length,
    /// How.
    pub method: Method,
    /// By the plain formula.
    pub plain: Length,
    /// What the lead term adds to the plain figure.
    pub lead_term: Length,
    /// By the wire on the helicoid.
    pub exact: Length,
    /// The diameter at which the wire touches the flanks.
    pub contact_diameter: Length,
    /// At the pitch line, degrees.
    pub lead_angle_degrees: f64,
}

impl WireThread {
    /// A thread of a pitch and a lead, the angle of one flank from square
    /// across the axis, the pitch diameter to aim at and the major diameter.
    ///
    /// # Errors
    /// Figures that are not a thread, or a lead angle over 20 degrees.
    ///
    /// ```
    /// use fits_core::{Length, shop::wires::WireThread};
    /// // 1/2-13 with basic pitch diameter 0.4500 in.
    /// let pitch = Length::INCH.checked_scale(1, 13)?;
    /// let thread = WireThread::new(pitch, pitch, 30.0, "0.45in".parse()?, "0.5in".parse()?)?;
    /// let over = thread.over("0.045in".parse()?)?;
    /// // Plain: 0.4500 + 3 x 0.045 - 0.866025/13.
    /// assert!((over.over.millimetres() / 25.4 - 0.518_38).abs() < 0.000_01);
    /// assert_eq!(thread.pitch_diameter_of(over.wire, over.over)?, "0.45in".parse()?);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn new(
        pitch: Length,
        lead: Length,
        half_angle_degrees: f64,
        pitch_diameter: Length,
        major: Length,
    ) -> Result<Self, Error> {
        if !pitch.is_positive() || lead < pitch {
            return Err(Error::out_of_reach(
                format!("a pitch of {pitch} with a lead of {lead} is not a thread"),
                "the lead is the pitch times the number of starts",
            ));
        }
        if !(5.0..=60.0).contains(&half_angle_degrees) {
            return Err(Error::out_of_reach(
                format!("a flank of {half_angle_degrees} degrees holds no wire"),
                "half angles from 5 to 60 degrees",
            ));
        }
        if pitch_diameter <= pitch || major <= pitch_diameter {
            return Err(Error::out_of_reach(
                format!(
                    "a pitch diameter of {pitch_diameter} does not go with a pitch of {pitch} and a major diameter of {major}"
                ),
                "the pitch diameter lies between the pitch and the major diameter",
            ));
        }
        let thread = Self {
            pitch,
            lead,
            half_angle_degrees,
            pitch_diameter,
            least_pitch_diameter: pitch_diameter,
            major,
            crest_radius: Length::ZERO,
        };
        if thread.lead_angle_degrees() > MOST_LEAD_ANGLE {
            return Err(Error::out_of_reach(
                format!(
                    "wires do not seat surely at a lead angle of {:.1} degrees",
                    thread.lead_angle_degrees()
                ),
                "lead angles up to 20 degrees",
            ));
        }
        Ok(thread)
    }

    /// The same with crests rounded to a radius, as Whitworth's 0.137329 P:
    /// the flanks end where the rounding begins.
    ///
    /// # Errors
    /// A rounding that leaves no flank above the pitch line.
    ///
    /// ```
    /// use fits_core::shop::wires::WireThread;
    /// // 1/2-13 with basic pitch diameter 0.4500 in.
    /// let pitch = fits_core::Length::INCH.checked_scale(1, 13)?;
    /// let thread = WireThread::new(pitch, pitch, 30.0, "0.45in".parse()?, "0.5in".parse()?)?;
    /// assert!(thread.with_crest_radius("0.1mm".parse()?).is_ok());
    /// // Rounder than the flanks are long.
    /// assert!(thread.with_crest_radius("5mm".parse()?).is_err());
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn with_crest_radius(self, radius: Length) -> Result<Self, Error> {
        let rounded = Self { crest_radius: radius, ..self };
        if radius.is_negative() || rounded.flank_end() <= self.pitch_diameter.millimetres() {
            return Err(Error::out_of_reach(
                format!("crests rounded to {radius} leave no flank above the pitch line"),
                "give the radius of the basic form",
            ));
        }
        Ok(rounded)
    }

    /// The same with the least pitch diameter that is still good: the wires must
    /// stand out of the crests there too, or the anvils rest on the crests.
    ///
    /// ```
    /// use fits_core::{Length, shop::wires::WireThread};
    /// // 1/2-10 Acme 2G, major at most 0.5 in, pitch diameter 0.4306 to 0.4443 in.
    /// let pitch = "0.1in".parse()?;
    /// let middle = "0.43745in".parse()?;
    /// let thread = WireThread::new(pitch, pitch, 14.5, middle, "0.5in".parse()?)?;
    /// let thread = thread.down_to("0.4306in".parse()?);
    /// assert!(thread.best_wire()? < thread.usable_wires()?.lower());
    /// assert_eq!(thread.nearest_usable(thread.best_wire()?)?, thread.usable_wires()?.lower());
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    #[must_use]
    pub fn down_to(self, least_pitch_diameter: Length) -> Self {
        Self { least_pitch_diameter: least_pitch_diameter.min(self.pitch_diameter), ..self }
    }

    /// At the pitch line: tan B = lead / (π E).
    pub fn lead_angle_degrees(&self) -> f64 {
        self.groove(self.pitch_diameter).lead_angle().to_degrees()
    }

    /// How this thread's size over wires is found.
    pub fn method(&self) -> Method {
        let groove = self.groove(self.pitch_diameter);
        if groove.lead_term(self.plain_best()) > TERM_THAT_MATTERS {
            Method::Exact
        } else {
            Method::Plain
        }
    }

    /// The size over three wires at the thread's pitch diameter.
    ///
    /// # Errors
    /// A wire too small or too big: the usable range is the advice.
    ///
    /// ```
    /// use fits_core::shop::wires::WireThread;
    /// // 1/2-13 with basic pitch diameter 0.4500 in.
    /// let pitch = fits_core::Length::INCH.checked_scale(1, 13)?;
    /// let thread = WireThread::new(pitch, pitch, 30.0, "0.45in".parse()?, "0.5in".parse()?)?;
    /// // 0.4500 + 3 x 0.045 - 0.866025/13.
    /// let over = thread.over("0.045in".parse()?)?.over;
    /// assert!((over.millimetres() / 25.4 - 0.518_38).abs() < 0.000_01);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn over(&self, wire: Length) -> Result<OverWires, Error> {
        let usable = self.check(wire)?;
        let groove = self.groove(self.pitch_diameter);
        let w = wire.millimetres();
        let plain = groove.plain(w);
        let exact = groove.seat(w).ok_or_else(|| self.out_of_range(wire, usable))?;
        let method = self.method();
        let taken = match method {
            Method::Plain => plain,
            Method::Exact => exact,
        };
        let length = Length::nearest_millimetres;
        Ok(OverWires {
            wire,
            best_wire: self.best_wire()?,
            usable,
            over: length(taken.over)?,
            method,
            plain: length(plain.over)?,
            lead_term: length(groove.lead_term(w))?,
            exact: length(exact.over)?,
            contact_diameter: length(taken.contact)?,
            lead_angle_degrees: groove.lead_angle().to_degrees(),
        })
    }

    /// The sizes over three wires for limits of the pitch diameter.
    ///
    /// # Errors
    /// As [`WireThread::over`].
    ///
    /// ```
    /// use fits_core::{shop::wires::WireThread, standards::thread::Thread};
    /// let thread: Thread = "M10".parse()?;
    /// let sizes = thread.external(None)?;
    /// let screw = WireThread::of_thread(&thread, &sizes)?;
    /// let wire = screw.best_wire()?;
    /// let pitch = fits_core::Limits::new("8.862mm".parse()?, "8.994mm".parse()?)?;
    /// let over = screw.over_limits(wire, pitch)?;
    /// assert!(over.tolerance() >= "0.131mm".parse()? && over.tolerance() <= "0.133mm".parse()?);
    /// let found = screw.over(wire)?;
    /// assert!(!screw.reasons(&found).is_empty());
    /// assert!(screw.with_crest_radius("5mm".parse()?).is_err());
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn over_limits(&self, wire: Length, pitch_diameter: Limits) -> Result<Limits, Error> {
        self.check(wire)?;
        let at = |diameter: Length| {
            let seat = self
                .seat_at(wire.millimetres(), diameter.millimetres())
                .ok_or_else(|| self.no_seat("the wire finds no seat at these limits"))?;
            Length::nearest_millimetres(seat.over)
        };
        Limits::new(at(pitch_diameter.lower())?, at(pitch_diameter.upper())?)
    }

    /// The pitch diameter that a size over three wires means.
    ///
    /// # Errors
    /// A wire too small or too big, or a size that this thread cannot have.
    ///
    /// ```
    /// use fits_core::shop::wires::WireThread;
    /// // 1/2-13 with basic pitch diameter 0.4500 in.
    /// let pitch = fits_core::Length::INCH.checked_scale(1, 13)?;
    /// let thread = WireThread::new(pitch, pitch, 30.0, "0.45in".parse()?, "0.5in".parse()?)?;
    /// let wire = "0.045in".parse()?;
    /// let over = thread.over(wire)?.over;
    /// assert_eq!(thread.pitch_diameter_of(wire, over)?, "0.45in".parse()?);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn pitch_diameter_of(&self, wire: Length, over: Length) -> Result<Length, Error> {
        self.check(wire)?;
        let (w, m) = (wire.millimetres(), over.millimetres());
        let pitch = self.pitch.millimetres();
        let mut e = self.pitch_diameter.millimetres();
        let cannot = || {
            Error::out_of_reach(
                format!("{over} over wires of {wire} is not a size of this thread"),
                self.over(wire)
                    .map(|over| format!("about {} is expected", over.over))
                    .unwrap_or_default(),
            )
        };
        // M grows with E one for one but for the little that the lead angle
        // turns, so each round leaves a small part of the error.
        for _ in 0..60 {
            let seat = self.seat_at(w, e).ok_or_else(cannot)?;
            let off = m - seat.over;
            if off.abs() > 2.0 * pitch {
                return Err(cannot());
            }
            e += off;
            if off.abs() < 1e-11 {
                break;
            }
        }
        let found = Length::nearest_millimetres(e)?;
        if found <= self.pitch { Err(cannot()) } else { Ok(found) }
    }

    /// Why the size over wires is what it is.
    ///
    /// ```
    /// use fits_core::shop::wires::WireThread;
    /// // 1/2-13 with basic pitch diameter 0.4500 in.
    /// let pitch = fits_core::Length::INCH.checked_scale(1, 13)?;
    /// let thread = WireThread::new(pitch, pitch, 30.0, "0.45in".parse()?, "0.5in".parse()?)?;
    /// let over = thread.over("0.045in".parse()?)?;
    /// assert!(!thread.reasons(&over).is_empty());
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn reasons(&self, found: &OverWires) -> Vec<Reason> {
        let (e, p, w) = (self.pitch_diameter, self.pitch, found.wire);
        let a = self.half_angle_degrees;
        let formula = Reason {
            figure: "over wires, plain".into(),
            value: found.plain.to_string().into(),
            rule: format!("E + W (1 + cosec a) - (P/2) cot a, E {e}, W {w}, P {p}, a {a} degrees")
                .into(),
            source: "NBS Handbook H28; ASME B1.2; Machinery's Handbook, 31st ed., p. 2129".into(),
            known: Known::Formula,
        };
        let term = Reason {
            figure: "lead term".into(),
            value: found.lead_term.to_string().into(),
            rule: format!(
                "(W/2) tan^2 B cos a cot a, B {:.2} degrees; it matters over 0.00015 in",
                found.lead_angle_degrees
            )
            .into(),
            source: "NBS Handbook H28; ASME B1.2".into(),
            known: Known::Formula,
        };
        let exact = Reason {
            figure: "over wires, exact".into(),
            value: found.exact.to_string().into(),
            rule: "a straight wire touching both helicoid flanks, solved numerically".into(),
            source: "agrees with Machinery's Handbook, 31st ed., p. 2136, to 0.0001 of the pitch"
                .into(),
            known: Known::Formula,
        };
        vec![formula, term, exact]
    }

    fn seat_at(&self, wire: f64, pitch_diameter: f64) -> Option<Seat> {
        let groove = Groove { pitch_diameter, ..self.groove(self.pitch_diameter) };
        match self.method() {
            Method::Plain => Some(groove.plain(wire)),
            Method::Exact => groove.seat(wire),
        }
    }

    fn groove(&self, pitch_diameter: Length) -> Groove {
        Groove {
            pitch: self.pitch.millimetres(),
            lead: self.lead.millimetres(),
            half_angle: self.half_angle_degrees.to_radians(),
            pitch_diameter: pitch_diameter.millimetres(),
        }
    }

    fn check(&self, wire: Length) -> Result<Limits, Error> {
        let usable = self.usable_wires()?;
        if usable.contains(wire) { Ok(usable) } else { Err(self.out_of_range(wire, usable)) }
    }

    fn out_of_range(&self, wire: Length, usable: Limits) -> Error {
        let why = if wire < usable.lower() {
            format!("a wire of {wire} sinks below the crests")
        } else {
            format!("a wire of {wire} is too big to touch both flanks below the crests")
        };
        let best = self.best_wire().map(|best| format!(", best {best}")).unwrap_or_default();
        Error::out_of_reach(
            why,
            format!("wires from {} to {}{best}", usable.lower(), usable.upper()),
        )
    }

    fn no_seat(&self, why: &str) -> Error {
        Error::out_of_reach(
            why.to_owned(),
            format!("check pitch {} and major diameter {}", self.pitch, self.major),
        )
    }
}
