//! O-rings and their grooves, in the inch sections.

use super::{is_called, limits, not_listed, table};
use crate::{
    error::{Error, Kind},
    size::{Length, Limits, Unit},
    source::{Known, Provenance, Reason},
    speech::say,
};

/// How an O-ring seals.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "kebab-case"))]
pub enum GlandUse {
    /// On a piston or about a rod that moves along.
    Moving,
    /// On a plug or about a rod that stands still.
    Static,
    /// In a groove in a flat face.
    Face,
}

impl GlandUse {
    /// In words.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Moving => "moving",
            Self::Static => "static",
            Self::Face => "face",
        }
    }
}

#[derive(Debug)]
pub(super) struct GlandRow {
    pub(super) used: GlandUse,
    pub(super) section: Length,
    pub(super) depth: [Length; 2],
    pub(super) width: [Length; 2],
    pub(super) play: Option<Length>,
    pub(super) from: Provenance,
}

#[derive(Debug)]
pub(super) struct ORingRow {
    pub(super) dash: &'static str,
    pub(super) inside: Length,
    pub(super) section: Length,
    pub(super) from: Provenance,
}

/// An O-ring by its AS568 dash number.
///
/// ```
/// use fits_core::standards::hardware::ORing;
/// let ring = ORing::dash("210")?;
/// assert_eq!(ring.section(), "0.139in".parse()?);
/// assert_eq!(ring.inside(), "0.734in".parse()?);
/// assert_eq!(ring.outside()?, "1.012in".parse()?);
/// // A groove of 0.758 in stretches it by 3 percent, and no other ring by 1 to 5.
/// let rings = ORing::for_groove("0.139in".parse()?, "0.758in".parse()?);
/// assert_eq!(rings.iter().map(|ring| ring.number()).collect::<Vec<_>>(), ["210"]);
/// # Ok::<(), fits_core::Error>(())
/// ```
#[derive(Clone, Copy, Debug)]
pub struct ORing(&'static ORingRow);

impl ORing {
    /// The ring of a dash number: `010`, `112`, `210`.
    ///
    /// # Errors
    /// The number is not listed here.
    pub fn dash(number: &str) -> Result<Self, Error> {
        Self::all().find(|ring| ring.number() == number).ok_or_else(|| {
            Error::new(Kind::NotListed {
                why: say!("no O-ring number {} is listed here", number),
                advice: "listed: 004 to 028, 110 to 129 and 201 to 222; others by section".into(),
            })
        })
    }

    /// Every ring.
    pub fn all() -> impl Iterator<Item = Self> {
        table::ORINGS.iter().map(Self)
    }

    /// Its dash number.
    pub const fn number(self) -> &'static str {
        self.0.dash
    }

    /// Its inside diameter.
    pub const fn inside(self) -> Length {
        self.0.inside
    }

    /// Its section.
    pub const fn section(self) -> Length {
        self.0.section
    }

    /// Its outside diameter.
    ///
    /// # Errors
    /// Out of range.
    pub fn outside(self) -> Result<Length, Error> {
        self.inside().checked_add(self.section().checked_mul(2)?)
    }

    /// How its inside is known.
    pub const fn known(self) -> Known {
        self.0.from.known
    }

    /// The rings of a section that suit a groove about this diameter: the groove
    /// stretches the ring by 1 to 5 percent, the least stretch first.
    pub fn for_groove(section: Length, groove: Length) -> Vec<Self> {
        let stretch = |ring: &Self| groove.millimetres() / ring.inside().millimetres() - 1.0;
        let mut found: Vec<Self> = Self::all()
            .filter(|ring| ring.section() == section && (0.0..=0.05).contains(&stretch(ring)))
            .collect();
        found.sort_by(|a, b| stretch(a).total_cmp(&stretch(b)));
        found
    }
}

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
    pub fn in_piston(self, bore: Length) -> Result<Limits, Error> {
        let [shallow, deep] = self.0.depth;
        let least = bore.checked_sub(deep.checked_mul(2)?)?;
        if !least.is_positive() {
            return Err(Error::new(Kind::OutOfReach {
                why: say!("grooves {} deep leave nothing of a piston in {}", deep, bore),
                advice: "a smaller section".into(),
            }));
        }
        limits([least, bore.checked_sub(shallow.checked_mul(2)?)?], self.0.from.known)
    }

    /// The diameter of the groove in the bore about a rod of this size.
    ///
    /// # Errors
    /// Out of range.
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
