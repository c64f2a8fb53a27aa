//! The groove for an O-ring.

use super::{GlandUse, is_called, limits, not_listed, orings::GlandRow, table};
use crate::{
    error::Error,
    size::{Length, Limits, Unit},
    source::{Known, Reason},
    speech::say,
};

/// The groove for an O-ring of one section, without backup rings.
///
/// ```
/// use fits_core::standards::hardware::{Gland, GlandUse};
/// let gland = Gland::find(GlandUse::Moving, "0.139in".parse()?)?;
/// let groove = gland.in_piston("1in".parse()?)?;
/// assert_eq!(groove.lower(), "0.754in".parse()?);
/// assert_eq!(groove.upper(), "0.762in".parse()?);
/// assert_eq!(gland.depth()?.lower(), "0.119in".parse()?);
/// assert_eq!(gland.width()?.upper(), "0.190in".parse()?);
/// assert_eq!(gland.about_rod("1in".parse()?)?.upper(), "1.246in".parse()?);
/// assert_eq!(gland.reasons()?[0].figure, "depth of the gland");
/// assert_eq!((gland.used(), gland.section()), (GlandUse::Moving, "0.139in".parse()?));
/// // 0.139 in pressed to 0.123 and 0.119 in.
/// assert_eq!(gland.squeeze().map(f64::round), [12.0, 14.0]);
/// assert!((60.0..85.0).contains(&gland.filled()));
/// assert_eq!(gland.play(), Some("0.006in".parse()?));
/// assert!(!gland.known().is_unconfirmed());
/// # Ok::<(), fits_core::Error>(())
/// ```
#[derive(Clone, Copy, Debug)]
pub struct Gland(&'static GlandRow);

impl Gland {
    /// The groove for a use and a section: the section itself, or the fraction
    /// that it is sold by (1/16, 3/32, 1/8, 3/16, 1/4 in).
    ///
    /// # Errors
    /// The section is not listed; the advice offers its neighbours.
    ///
    /// ```
    /// use fits_core::standards::hardware::{Gland, GlandUse};
    /// // A ring sold as 1/8 in has a section of 0.139 in.
    /// let gland = Gland::find(GlandUse::Static, "1/8in".parse()?)?;
    /// assert_eq!(gland.section(), "0.139in".parse()?);
    /// assert!(Gland::find(GlandUse::Static, "1in".parse()?).is_err());
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn find(used: GlandUse, section: Length) -> Result<Self, Error> {
        let rows = || table::ORING_GLANDS.iter().filter(move |row| row.used == used);
        let named = section_named(section);
        rows()
            .find(|row| is_called(row.section, section) || Some(row.section) == named)
            .map(Self)
            .ok_or_else(|| {
                let why = say!("no O-ring groove is listed for a section of {}", section);
                not_listed(why, rows().map(|row| row.section), section, Unit::Inch)
            })
    }

    /// Its use.
    pub const fn used(self) -> GlandUse {
        self.0.used
    }

    /// The ring's section.
    pub const fn section(self) -> Length {
        self.0.section
    }

    /// The depth of the gland: of a face groove itself; for a piston or a rod from
    /// the bottom of the groove to the far wall.
    ///
    /// # Errors
    /// Out of range.
    pub fn depth(self) -> Result<Limits, Error> {
        limits(self.0.depth, self.0.from.known)
    }

    /// The width of the groove.
    ///
    /// # Errors
    /// Out of range.
    pub fn width(self) -> Result<Limits, Error> {
        limits(self.0.width, self.0.from.known)
    }

    /// The greatest play between piston and bore or rod and bore, on the diameter.
    pub const fn play(self) -> Option<Length> {
        self.0.play
    }

    /// By how much of its section the ring is squeezed, in percent, least and greatest;
    /// the ring's own tolerance not counted.
    pub fn squeeze(self) -> [f64; 2] {
        let section = self.section().millimetres();
        let [shallow, deep] = self.0.depth;
        [deep, shallow].map(|depth| 100.0 * (1.0 - depth.millimetres() / section))
    }

    /// How much of the smallest gland the ring fills, in percent.
    pub fn filled(self) -> f64 {
        let section = self.section().millimetres();
        let room = self.0.depth[0].millimetres() * self.0.width[0].millimetres();
        100.0 * std::f64::consts::FRAC_PI_4 * section * section / room
    }

    /// The diameter of the groove on a piston or plug in a bore of this size.
    ///
    /// # Errors
    /// The bore is no larger than two grooves are deep.
    ///
    /// ```
    /// use fits_core::standards::hardware::{Gland, GlandUse};
    /// let gland = Gland::find(GlandUse::Moving, "0.139in".parse()?)?;
    /// // 1 in less twice 0.119 to 0.123 in.
    /// let groove = gland.in_piston("1in".parse()?)?;
    /// assert_eq!((groove.lower(), groove.upper()), ("0.754in".parse()?, "0.762in".parse()?));
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn in_piston(self, bore: Length) -> Result<Limits, Error> {
        let [shallow, deep] = self.0.depth;
        let least = bore.checked_sub(deep.checked_mul(2)?)?;
        if !least.is_positive() {
            return Err(Error::out_of_reach(
                say!("grooves {} deep leave nothing of a piston in {}", deep, bore),
                "a smaller section",
            ));
        }
        limits([least, bore.checked_sub(shallow.checked_mul(2)?)?], self.0.from.known)
    }

    /// The diameter of the groove in the bore about a rod of this size.
    ///
    /// # Errors
    /// Out of range.
    ///
    /// ```
    /// use fits_core::standards::hardware::{Gland, GlandUse};
    /// let gland = Gland::find(GlandUse::Moving, "0.139in".parse()?)?;
    /// assert_eq!(gland.about_rod("1in".parse()?)?.upper(), "1.246in".parse()?);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn about_rod(self, rod: Length) -> Result<Limits, Error> {
        let [shallow, deep] = self.0.depth;
        limits(
            [rod.checked_add(shallow.checked_mul(2)?)?, rod.checked_add(deep.checked_mul(2)?)?],
            self.0.from.known,
        )
    }

    /// How its figures are known.
    pub const fn known(self) -> Known {
        self.0.from.known
    }

    /// Why its figures are what they are.
    ///
    /// # Errors
    /// Out of range.
    pub fn reasons(self) -> Result<Vec<Reason>, Error> {
        let said = |limits: Limits| format!("{} to {}", limits.lower(), limits.upper());
        let known = self.known();
        let reason = |figure, value, rule| self.0.from.reason(figure, value, rule, known);
        let [least, most] = self.squeeze();
        Ok(vec![
            reason("depth of the gland", said(self.depth()?), "by section and use"),
            reason("width of the groove", said(self.width()?), "by section and use"),
            reason(
                "squeeze",
                format!("{least:.0} to {most:.0} percent"),
                "1 - depth / section, the ring's own tolerance not counted",
            ),
        ])
    }
}

/// The section that a ring sold by a fraction has.
fn section_named(fraction: Length) -> Option<Length> {
    const SOLD: [(i64, i64); 5] = [(4, 70), (6, 103), (8, 139), (12, 210), (16, 275)];
    SOLD.iter().find_map(|(sixty_fourths, thou)| {
        let named = Length::INCH.checked_scale((*sixty_fourths).into(), 64).ok()?;
        (named == fraction).then(|| Length::THOU.checked_mul(*thou).ok()).flatten()
    })
}
