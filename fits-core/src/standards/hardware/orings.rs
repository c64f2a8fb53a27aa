//! O-rings in the inch sections, and what they go on.

use super::{Gland, table};
use crate::{
    error::Error,
    size::{Length, Unit},
    source::{Known, Provenance},
    speech::{Speech, say},
    standards::bought::spoken,
};

/// How an O-ring seals.
///
/// ```
/// use fits_core::standards::hardware::GlandUse;
/// assert_eq!(GlandUse::Moving.name(), "moving");
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "kebab-case"))]
#[non_exhaustive]
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
/// // Its inside is from memory.
/// assert_eq!((ring.number(), ring.known().is_unconfirmed()), ("210", true));
/// # Ok::<(), fits_core::Error>(())
/// ```
#[derive(Clone, Copy, Debug)]
pub struct ORing(&'static ORingRow);

impl ORing {
    /// The ring of a dash number: `010`, `112`, `210`.
    ///
    /// # Errors
    /// The number is not listed here.
    ///
    /// ```
    /// use fits_core::standards::hardware::ORing;
    /// assert_eq!(ORing::dash("112")?.section(), "0.103in".parse()?);
    /// assert!(ORing::dash("999").is_err());
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn dash(number: &str) -> Result<Self, Error> {
        Self::all().find(|ring| ring.number() == number).ok_or_else(|| {
            Error::not_listed(
                say!("no O-ring number {} is listed here", number),
                "listed: 004 to 028, 110 to 129 and 201 to 222; others by section",
            )
        })
    }

    /// Every ring.
    ///
    /// ```
    /// use fits_core::standards::hardware::ORing;
    /// assert!(ORing::all().any(|ring| ring.number() == "210"));
    /// ```
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

    /// Is it sold by this bore or rod? AS568's insides and outsides lie a little off
    /// the 1/32 in that they are called by: 012 is 3/8 by 1/2 in.
    fn is_sold_by(self, on: RingOn) -> Result<bool, Error> {
        let own = match on {
            RingOn::Piston(_) => self.outside()?,
            RingOn::Rod(_) => self.inside(),
        };
        let step = Length::INCH.tenth_nanometres() / 32;
        let called = (own.tenth_nanometres() + step / 2).div_euclid(step) * step;
        let off = called.abs_diff(on.size().tenth_nanometres());
        Ok(off <= Length::THOU.checked_mul(5)?.tenth_nanometres().unsigned_abs())
    }

    /// How a ring sits on a piston or about a rod.
    ///
    /// ```
    /// use fits_core::standards::hardware::{GlandUse, ORing, RingOn};
    /// let ring = ORing::dash("210")?;
    /// let fit = ring.fit(GlandUse::Moving, RingOn::Piston("1in".parse()?))?;
    /// assert!((3.0..3.5).contains(&fit.stretch));
    /// let refused = ring.fit(GlandUse::Moving, RingOn::Piston("1/2in".parse()?)).unwrap_err();
    /// assert!(refused.to_string().contains("lies loose"));
    /// // Rings of every section that do go.
    /// let rings = ORing::that_go(GlandUse::Moving, RingOn::Piston("1in".parse()?));
    /// assert_eq!(rings.iter().map(|ring| ring.number()).collect::<Vec<_>>(), ["020", "117", "210"]);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    ///
    /// # Errors
    /// The ring does not go there; the advice names those that do, and the sizes
    /// that it goes with.
    pub fn fit(self, used: GlandUse, on: RingOn) -> Result<RingFit, Error> {
        self.judged(used, on)?.map_err(|why| Error::out_of_reach(why, self.instead(used, on)))
    }

    /// The fit, or why the ring does not go there.
    fn judged(self, used: GlandUse, on: RingOn) -> Result<Result<RingFit, Speech>, Error> {
        let percent = |by: f64| format!("{by:.1} percent");
        let gland = Gland::find(used, self.section())?;
        let groove = match on {
            RingOn::Piston(bore) => gland.in_piston(bore)?.middle(),
            RingOn::Rod(rod) => gland.about_rod(rod)?.middle(),
        };
        let (inside, outside) = (self.inside(), self.outside()?);
        let (about, closed, over) = match on {
            RingOn::Piston(_) => (groove, 0.0, 0.0),
            RingOn::Rod(rod) => (
                rod,
                // Centre lines: twice of each.
                under(rod.checked_add(groove)?, inside.checked_add(outside)?),
                -under(outside, groove),
            ),
        };
        let stretch = -under(about, inside);
        let is_sold_by_size = stretch > STRETCH && self.is_sold_by(on)?;
        let most = if is_sold_by_size { STRETCH_SOLD } else { STRETCH };
        let most_closed = CLOSED[usize::from(inside <= Length::THOU.checked_mul(250)?)];
        let number = self.number();
        Ok(Err(if matches!(on, RingOn::Piston(_)) && stretch < 0.0 {
            say!(
                "ring {} lies loose on the groove, {}: its inside is {}, {} over it, and a groove stretches a ring",
                number,
                groove,
                inside,
                percent(-under(inside, groove))
            )
        } else if stretch > most {
            say!(
                "{} stretches ring {}, {} inside, by {}: {} is the most",
                about,
                number,
                inside,
                percent(stretch),
                most
            )
        } else if over < 0.0 {
            say!(
                "ring {} does not reach the wall of its groove: it is {} outside, the groove {}",
                number,
                outside,
                groove
            )
        } else if closed > most_closed {
            say!(
                "ring {}, {} outside, buckles in a groove of {}: that closes it by {}, {} is the most",
                number,
                outside,
                groove,
                percent(closed),
                most_closed
            )
        } else {
            return Ok(Ok(RingFit { stretch, closed, over, is_sold_by_size }));
        }))
    }

    fn goes(self, used: GlandUse, on: RingOn) -> bool {
        matches!(self.judged(used, on), Ok(Ok(_)))
    }

    /// The rings that go on a piston or about a rod, of every section, the thinnest first.
    ///
    /// ```
    /// use fits_core::standards::hardware::{GlandUse, ORing, RingOn};
    /// let rings = ORing::that_go(GlandUse::Moving, RingOn::Piston("1in".parse()?));
    /// let numbers: Vec<_> = rings.into_iter().map(ORing::number).collect();
    /// assert_eq!(numbers, ["020", "117", "210"]);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn that_go(used: GlandUse, on: RingOn) -> Vec<Self> {
        Self::all().filter(|ring| ring.goes(used, on)).collect()
    }

    /// Which rings go there instead, and where this one goes.
    fn instead(self, used: GlandUse, on: RingOn) -> String {
        let rings = Self::that_go(used, on);
        let numbers: Vec<&str> = rings.iter().map(|ring| ring.number()).collect();
        let size = spoken(on.size(), Unit::Inch);
        let rings = match numbers[..] {
            [] => format!("no listed ring suits a {size} {}", on.name()),
            _ => format!("for a {size} {}: {}", on.name(), numbers.join(", ")),
        };
        // Every 1/64 in that it goes with.
        let goes = |sixty_fourths: i64| {
            let size = Length::INCH.checked_scale(sixty_fourths.into(), 64).ok()?;
            let on = match on {
                RingOn::Piston(_) => RingOn::Piston(size),
                RingOn::Rod(_) => RingOn::Rod(size),
            };
            self.goes(used, on).then(|| spoken(size, Unit::Inch))
        };
        let mut sizes = (1..256).filter_map(goes);
        match (sizes.next(), sizes.next_back()) {
            (Some(first), Some(last)) => {
                format!("{rings}; {} goes with {first} to {last}", self.number())
            }
            (Some(only), None) => format!("{rings}; {} goes with {only}", self.number()),
            _ => rings,
        }
    }

    /// How its inside is known.
    pub const fn known(self) -> Known {
        self.0.from.known
    }
}

/// The part that a ring's size is chosen by.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "kebab-case"))]
#[expect(clippy::exhaustive_enums, reason = "a groove is outside or inside")]
pub enum RingOn {
    /// A piston or plug in a bore of this size: the groove stretches the ring.
    Piston(Length),
    /// A rod of this size: the groove in the bore about it holds the ring's outside.
    Rod(Length),
}

impl RingOn {
    /// The bore or the rod.
    const fn size(self) -> Length {
        let (Self::Piston(size) | Self::Rod(size)) = self;
        size
    }

    /// Its name.
    const fn name(self) -> &'static str {
        match self {
            Self::Piston(_) => "bore",
            Self::Rod(_) => "rod",
        }
    }
}

/// How a ring sits, in percent.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct RingFit {
    /// How far the piston's groove, or the rod, stretches its inside.
    pub stretch: f64,
    /// How far the groove about a rod closes its centre line.
    pub closed: f64,
    /// How far its outside stands over the groove about a rod.
    pub over: f64,
    /// More stretch than is usual, by a size that the ring is sold for.
    pub is_sold_by_size: bool,
}

/// The most that a ring is stretched (makers' guides, 1 to 5 percent with 2 as the
/// best; Parker, up to 5 on a piston).
const STRETCH: f64 = 5.0;
/// The most on the size that a small ring is sold by: common practice, no source.
const STRETCH_SOLD: f64 = 12.0;
/// The most that a groove about a rod closes a ring, and one of a quarter inch or
/// less: common practice, no source; tables of grooves by dash number reach 4.3.
const CLOSED: [f64; 2] = [3.0, 5.0];

/// By how many percent one length is under another.
fn under(length: Length, other: Length) -> f64 {
    100.0 * (1.0 - length.millimetres() / other.millimetres())
}
