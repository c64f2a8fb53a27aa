//! The best wire for a groove, and the thinnest and thickest that can measure it.

use super::seat::{Groove, root};
use super::{Method, WireThread};
use crate::{
    error::Error,
    size::{Length, Limits},
};

impl WireThread {
    /// The usable wire nearest to one: itself where it can be used.
    ///
    /// # Errors
    /// As [`WireThread::usable_wires`].
    ///
    /// ```
    /// use fits_core::shop::wires::WireThread;
    /// // 1/2-13 with basic pitch diameter 0.4500 in.
    /// let pitch = fits_core::Length::INCH.checked_scale(1, 13)?;
    /// let thread = WireThread::new(pitch, pitch, 30.0, "0.45in".parse()?, "0.5in".parse()?)?;
    /// let best = thread.best_wire()?;
    /// assert_eq!(thread.nearest_usable(best)?, best);
    /// assert_eq!(thread.nearest_usable("0.01in".parse()?)?, thread.usable_wires()?.lower());
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn nearest_usable(&self, wire: Length) -> Result<Length, Error> {
        let usable = self.usable_wires()?;
        Ok(wire.clamp(usable.lower(), usable.upper()))
    }

    /// The wire that touches the flanks at the pitch line: `P / (2 cos α)`,
    /// less where the lead angle matters.
    ///
    /// # Errors
    /// No wire seats in the thread.
    pub fn best_wire(&self) -> Result<Length, Error> {
        let plain = self.plain_best();
        if self.method() == Method::Plain {
            return Length::nearest_millimetres(plain);
        }
        let groove = self.groove(self.pitch_diameter);
        let best = root(
            |wire| groove.seat(wire).map_or(f64::NAN, |seat| seat.contact - groove.pitch_diameter),
            0.85 * plain,
            1.02 * plain,
        )
        .ok_or_else(|| self.no_seat("no wire touches the flanks at the pitch line"))?;
        Length::nearest_millimetres(best)
    }

    /// The wires that can be used: the least stands level with the highest
    /// crests at the least pitch diameter, the greatest touches the flanks where
    /// they end.
    ///
    /// The published range for 60 degrees, 0.56 P to 0.90 P, lies inside.
    ///
    /// # Errors
    /// No wire does both.
    pub fn usable_wires(&self) -> Result<Limits, Error> {
        let groove = self.groove(self.pitch_diameter);
        let (best, major, end) = (self.plain_best(), self.major.millimetres(), self.flank_end());
        let none = || {
            Error::out_of_reach(
                "no wire both touches the flanks and stands out of the crests".to_owned(),
                "measure it with a thread micrometer, or try it in its nut",
            )
        };
        let (sine, cosine) = libm::sincos(groove.half_angle);
        let thin = self.groove(self.least_pitch_diameter);
        // Without lead both are closed formulas, and with it they start the search.
        let least = (major - thin.plain(0.0).over) / (1.0 + 1.0 / sine);
        let up = 0.5 * (end - groove.pitch_diameter);
        let greatest = 2.0 * (0.25 * groove.pitch + up * sine / cosine) / cosine;
        let (least, greatest) = match self.method() {
            Method::Plain => (least, greatest),
            Method::Exact => {
                let stands = |wire: f64| thin.seat(wire).map_or(f64::NAN, |seat| seat.over - major);
                let lower = root(stands, 0.85 * least, 1.02 * least).ok_or_else(none)?;
                (lower, self.greatest_seated(&groove, best, 1.02 * greatest).ok_or_else(none)?)
            }
        };
        if least >= greatest {
            return Err(none());
        }
        // Inwards, so that both ends are usable.
        Limits::new(
            Length::nearest_millimetres(libm::ceil(least * 1e5) / 1e5)?,
            Length::nearest_millimetres(libm::floor(greatest * 1e5) / 1e5)?,
        )
        .map_err(|_| none())
    }

    /// The greatest wire that seats and touches below the flanks' end, to a
    /// hundred-thousandth of the pitch, by halving.
    fn greatest_seated(&self, groove: &Groove, best: f64, most: f64) -> Option<f64> {
        let end = self.flank_end();
        let good = |wire: f64| groove.seat(wire).is_some_and(|seat| seat.contact <= end);
        let (mut low, mut high) = (0.95 * best, most);
        if !good(low) {
            return None;
        }
        while high - low > 1e-5 * groove.pitch {
            let middle = 0.5 * (low + high);
            if good(middle) {
                low = middle;
            } else {
                high = middle;
            }
        }
        Some(low)
    }

    pub(super) fn plain_best(&self) -> f64 {
        0.5 * self.pitch.millimetres() / libm::cos(self.half_angle_degrees.to_radians())
    }

    /// The diameter at which the flanks end, mm: a rounding of radius r begins
    /// r (1 − sin α) below the crest.
    pub(super) fn flank_end(&self) -> f64 {
        let sine = libm::sin(self.half_angle_degrees.to_radians());
        self.major.millimetres() - 2.0 * self.crest_radius.millimetres() * (1.0 - sine)
    }
}
