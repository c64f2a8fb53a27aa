//! Which parallel key goes with a shaft, and how deep its keyways are.

use super::{spoken, table};
use crate::{
    error::{Error, Kind},
    size::{Length, Unit},
    source::{Known, Provenance},
};

/// The standard of a parallel key.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum KeyStandard {
    /// DIN 6885-1, metric.
    Din6885,
    /// ANSI B17.1, square keys in inches.
    AnsiB171,
}

impl KeyStandard {
    /// Its name.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Din6885 => "DIN 6885-1",
            Self::AnsiB171 => "ANSI B17.1",
        }
    }
}

/// A parallel key and its keyways, by shaft diameter.
///
/// ```
/// use fits_core::standards::bought::{KeyStandard, Keyway};
/// let keyway = Keyway::for_shaft(KeyStandard::Din6885, "25mm".parse()?)?;
/// assert_eq!(keyway.width().to_string(), "8 mm");
/// assert_eq!(keyway.height().to_string(), "7 mm");
/// let (least, most) = keyway.shaft_depth();
/// assert_eq!(least.to_string(), "4 mm");
/// assert_eq!(most.map(|most| most.to_string()).as_deref(), Some("4.2 mm"));
/// # Ok::<(), fits_core::Error>(())
/// ```
#[derive(Clone, Copy, Debug)]
pub struct Keyway(&'static KeywayRow);

/// Holds for shafts over `over` up to and including `up_to`.
#[derive(Debug)]
pub(super) struct KeywayRow {
    pub(super) standard: KeyStandard,
    pub(super) over: Length,
    pub(super) up_to: Length,
    pub(super) width: Length,
    pub(super) height: Length,
    pub(super) shaft: (Length, Option<Length>),
    pub(super) hub: Option<(Length, Length)>,
    pub(super) from: Provenance,
    pub(super) note: &'static str,
}

impl Keyway {
    /// The key that a standard gives a shaft.
    ///
    /// # Errors
    /// The table does not reach the shaft; the advice says how far it goes.
    pub fn for_shaft(standard: KeyStandard, shaft: Length) -> Result<Self, Error> {
        let rows = || table::KEYWAYS.iter().filter(|row| row.standard == standard);
        let unit = match standard {
            KeyStandard::Din6885 => Unit::Millimetre,
            KeyStandard::AnsiB171 => Unit::Inch,
        };
        rows().find(|row| row.over < shaft && shaft <= row.up_to).map(Self).ok_or_else(|| {
            let over = rows().map(|row| row.over).min().unwrap_or_default();
            let up_to = rows().map(|row| row.up_to).max().unwrap_or_default();
            Error::new(Kind::NotListed {
                why: format!(
                    "{} lists no key for a shaft of {}",
                    standard.name(),
                    spoken(shaft, unit)
                ),
                advice: format!(
                    "shafts over {} up to {} are listed",
                    spoken(over, unit),
                    spoken(up_to, unit)
                ),
            })
        })
    }

    /// The standard.
    pub const fn standard(self) -> KeyStandard {
        self.0.standard
    }

    /// The key's nominal width, across the shaft.
    pub const fn width(self) -> Length {
        self.0.width
    }

    /// The key's nominal height, along the shaft's radius.
    pub const fn height(self) -> Length {
        self.0.height
    }

    /// Least and greatest depth of the keyway in the shaft; one depth alone is
    /// nominal. DIN 6885 measures it from the top of the shaft, ANSI B17.1 at
    /// the side of the keyway.
    pub const fn shaft_depth(self) -> (Length, Option<Length>) {
        self.0.shaft
    }

    /// Least and greatest depth of the keyway in the hub, where it was read.
    pub const fn hub_depth(self) -> Option<(Length, Length)> {
        self.0.hub
    }

    /// How that is known.
    pub const fn known(self) -> Known {
        self.0.from.known
    }

    /// Where it is written.
    pub const fn source(self) -> &'static str {
        self.0.from.text
    }

    /// What else to know; empty where there is nothing.
    pub const fn note(self) -> &'static str {
        self.0.note
    }
}
