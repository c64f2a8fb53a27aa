//! Which parallel key goes with a shaft, how wide and deep its keyways are, and
//! what to measure across them.

use super::{BoughtPart, Family, spoken, table};
use crate::{
    error::{Error, Kind},
    size::{Length, Limits, Unit},
    source::{Known, Provenance, Reason},
    speech::say,
};

/// The standard of a parallel key.
///
/// ```
/// use fits_core::standards::bought::KeyStandard;
/// assert_eq!(KeyStandard::Din6885.name(), "DIN 6885-1");
/// assert!(KeyStandard::AnsiB171.is_from_side() && !KeyStandard::Din6885.is_from_side());
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "kebab-case"))]
#[non_exhaustive]
pub enum KeyStandard {
    /// DIN 6885-1, metric.
    Din6885,
    /// ANSI B17.1, square keys in inches.
    AnsiB171,
    /// ANSI B17.1, rectangular keys in inches.
    AnsiB171Rectangular,
}

impl KeyStandard {
    /// Its name.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Din6885 => "DIN 6885-1",
            Self::AnsiB171 | Self::AnsiB171Rectangular => "ANSI B17.1",
        }
    }

    const fn unit(self) -> Unit {
        match self {
            Self::Din6885 => Unit::Millimetre,
            Self::AnsiB171 | Self::AnsiB171Rectangular => Unit::Inch,
        }
    }

    /// Are depths given at the side of the keyway, or else from the top of the
    /// shaft?
    pub const fn is_from_side(self) -> bool {
        !matches!(self, Self::Din6885)
    }

    /// The families of the widths in the shaft and in the hub, and of the key.
    const fn families(self, fit: KeyFit) -> [&'static str; 3] {
        match (self, fit) {
            (Self::Din6885, KeyFit::Sliding) => {
                ["H9 keyway in the shaft", "D10 keyway in the hub", "metric key"]
            }
            (Self::Din6885, KeyFit::Usual) => {
                ["N9 keyway in the shaft", "JS9 keyway in the hub", "metric key"]
            }
            (Self::Din6885, KeyFit::Tight) => ["P9 keyway", "P9 keyway", "metric key"],
            (_, KeyFit::Tight) => ["inch keyseat", "inch keyseat", "inch key stock"],
            (..) => ["inch keyseat", "inch keyseat", "inch key of bar stock"],
        }
    }
}

/// How a parallel key sits in its keyways.
///
/// ```
/// use fits_core::standards::bought::KeyFit;
/// assert_eq!(KeyFit::Sliding.name(), "sliding");
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "kebab-case"))]
#[non_exhaustive]
pub enum KeyFit {
    /// It slides along in the hub.
    Sliding,
    /// The light or free fit, which most drawings have.
    #[default]
    Usual,
    /// It is pressed in, for loads that knock or turn back.
    Tight,
}

impl KeyFit {
    /// In a word.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Sliding => "sliding",
            Self::Usual => "usual",
            Self::Tight => "tight",
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
/// let depth = keyway.shaft_depth()?;
/// assert_eq!((depth.lower(), depth.upper()), ("4mm".parse()?, "4.2mm".parse()?));
/// // What a micrometer reads over the bottom of the keyway.
/// assert_eq!(keyway.across_shaft()?.upper(), "21mm".parse()?);
/// // From the bottom of the hub's keyway to the far side: 25 + 3.3 mm at the least.
/// assert_eq!(keyway.across_hub()?.lower(), "28.3mm".parse()?);
/// // N9 in the shaft, JS9 in the hub.
/// let [shaft, hub] = keyway.widths()?;
/// assert_eq!((shaft.limits.lower(), hub.limits.upper()), ("7.964mm".parse()?, "8.018mm".parse()?));
/// assert_eq!(keyway.next_width(), Some("10mm".parse()?));
/// assert_eq!(keyway.standard(), KeyStandard::Din6885);
/// assert!(keyway.note().contains("8 x 7 hub"), "two pages differ there, and it says so");
/// assert!(!keyway.known().is_unconfirmed() && !keyway.source().is_empty());
/// assert!(!keyway.reasons()?.is_empty());
/// # Ok::<(), fits_core::Error>(())
/// ```
#[derive(Clone, Copy, Debug)]
pub struct Keyway {
    row: &'static KeywayRow,
    shaft: Length,
}

/// Holds for shafts over `over` up to and including `up_to`.
#[derive(Debug)]
pub(super) struct KeywayRow {
    pub(super) standard: KeyStandard,
    pub(super) over: Length,
    pub(super) up_to: Length,
    pub(super) width: Length,
    pub(super) height: Length,
    /// Least and greatest depth.
    pub(super) shaft: [Length; 2],
    pub(super) hub: [Length; 2],
    pub(super) from: Provenance,
    pub(super) note: &'static str,
}

impl Keyway {
    /// The key that a standard gives a shaft.
    ///
    /// # Errors
    /// The rows held do not reach the shaft; the advice says how far they go.
    ///
    /// ```
    /// use fits_core::standards::bought::{KeyStandard, Keyway};
    /// // B17.1: a key of 1/4 in for shafts over 7/8 to 1-1/4 in.
    /// let keyway = Keyway::for_shaft(KeyStandard::AnsiB171, "1in".parse()?)?;
    /// assert_eq!(keyway.width(), "1/4in".parse()?);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn for_shaft(standard: KeyStandard, shaft: Length) -> Result<Self, Error> {
        let rows = || table::KEYWAYS.iter().filter(|row| row.standard == standard);
        let found = rows().find(|row| row.over < shaft && shaft <= row.up_to);
        found.map(|row| Self { row, shaft }).ok_or_else(|| {
            let over = rows().map(|row| row.over).min().unwrap_or_default();
            let up_to = rows().map(|row| row.up_to).max().unwrap_or_default();
            let said = |size| spoken(size, standard.unit());
            Error::not_listed(
                say!("no {} key is held here for a shaft of {}", standard.name(), said(shaft)),
                format!("shafts over {} up to {} are held", said(over), said(up_to)),
            )
        })
    }

    /// The standard.
    pub const fn standard(self) -> KeyStandard {
        self.row.standard
    }

    /// The key's nominal width, across the shaft.
    pub const fn width(self) -> Length {
        self.row.width
    }

    /// The key's nominal height, along the shaft's radius.
    pub const fn height(self) -> Length {
        self.row.height
    }

    /// The depth of the keyway in the shaft: from its top by DIN 6885, at the
    /// side of the keyway by ANSI B17.1.
    ///
    /// # Errors
    /// Out of range.
    pub fn shaft_depth(self) -> Result<Limits, Error> {
        let [least, most] = self.row.shaft;
        Ok(Limits::new(least, most)?.known_as(self.row.from.known))
    }

    /// The depth of the keyway in the hub, from the same places.
    ///
    /// # Errors
    /// Out of range.
    ///
    /// ```
    /// use fits_core::standards::bought::{KeyStandard, Keyway};
    /// let keyway = Keyway::for_shaft(KeyStandard::Din6885, "25mm".parse()?)?;
    /// assert_eq!(keyway.hub_depth()?.to_string(), "3.300 to 3.500 mm");
    /// assert_eq!(keyway.across_hub()?.lower(), "28.3mm".parse()?);
    /// assert_eq!(keyway.widths()?.len(), 2);
    /// assert!(keyway.reasons()?.iter().all(|reason| !reason.source.is_empty()));
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn hub_depth(self) -> Result<Limits, Error> {
        let [least, most] = self.row.hub;
        Ok(Limits::new(least, most)?.known_as(self.row.from.known))
    }

    /// From where depths are given to the far side of the shaft or the bore:
    /// `D`, or `(D + sqrt(D² - W²)) / 2` to the corner of a keyway of width `W`.
    fn across_top(self) -> Result<Length, Error> {
        if !self.row.standard.is_from_side() {
            return Ok(self.shaft);
        }
        Ok(self.shaft.checked_add(chord(self.shaft, self.row.width)?)?.half())
    }

    /// What a micrometer reads from the bottom of the shaft's keyway to the far
    /// side of the shaft (S of ANSI B17.1), for a shaft of nominal size.
    ///
    /// # Errors
    /// Out of range.
    ///
    /// ```
    /// use fits_core::{Length, standards::bought::{KeyStandard, Keyway}};
    /// let keyway = Keyway::for_shaft(KeyStandard::AnsiB171, "1in".parse()?)?;
    /// let across = keyway.across_shaft()?;
    /// assert!(across.upper() < "0.8592in".parse()?);
    /// assert_eq!(across.tolerance(), "0.015in".parse::<Length>()?);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn across_shaft(self) -> Result<Limits, Error> {
        let (top, [least, most]) = (self.across_top()?, self.row.shaft);
        let limits = Limits::new(top.checked_sub(most)?, top.checked_sub(least)?)?;
        Ok(limits.known_as(self.row.from.known))
    }

    /// What is read from the bottom of the hub's keyway to the far side of the
    /// bore (T of ANSI B17.1), for a bore of nominal size.
    ///
    /// # Errors
    /// Out of range.
    pub fn across_hub(self) -> Result<Limits, Error> {
        let (top, [least, most]) = (self.across_top()?, self.row.hub);
        let limits = Limits::new(top.checked_add(least)?, top.checked_add(most)?)?;
        Ok(limits.known_as(self.row.from.known))
    }

    /// The usual widths of the keyways in the shaft and in the hub: N9 and JS9
    /// of DIN 6885, class 1 of ANSI B17.1.
    ///
    /// # Errors
    /// No width is held for this key.
    pub fn widths(self) -> Result<[BoughtPart; 2], Error> {
        self.widths_for(KeyFit::Usual)
    }

    /// The widths of the keyways in the shaft and in the hub for a fit: H9 and D10,
    /// N9 and JS9, or P9 twice by DIN 6885; class 1, or tight class 2, by ANSI B17.1.
    ///
    /// # Errors
    /// No width is held for this key.
    ///
    /// ```
    /// use fits_core::standards::bought::{KeyFit, KeyStandard, Keyway};
    /// let keyway = Keyway::for_shaft(KeyStandard::Din6885, "25mm".parse()?)?;
    /// let [shaft, hub] = keyway.widths_for(KeyFit::Sliding)?;
    /// assert_eq!(shaft.limits.upper(), "8.036mm".parse()?);
    /// assert_eq!(hub.limits.lower(), "8.040mm".parse()?);
    /// // The key itself is h9.
    /// assert_eq!(keyway.key_for(KeyFit::Sliding)?.limits.lower(), "7.964mm".parse()?);
    /// assert_eq!(keyway.reasons_for(KeyFit::Sliding)?.len(), 6);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn widths_for(self, fit: KeyFit) -> Result<[BoughtPart; 2], Error> {
        let [shaft, hub, _] = self.row.standard.families(fit);
        let width = |name| {
            let part = Family::named(name)?.part(self.row.width)?;
            if fit != KeyFit::Tight || self.row.standard == KeyStandard::Din6885 {
                return Ok(part);
            }
            // Class 2: the nominal width to 2 thou over it.
            let most = part.nominal.checked_add(Length::THOU.checked_mul(2)?)?;
            Ok(BoughtPart {
                limits: Limits::new(part.nominal, most)?.known_as(Known::Memory),
                known: Known::Memory,
                source: "ANSI B17.1, fits of parallel keys, class 2, from memory",
                note: "class 2",
                ..part
            })
        };
        Ok([width(shaft)?, width(hub)?])
    }

    /// The key itself, its width, for a fit: cut from bar, or key stock over nominal
    /// where a tight inch key is wanted.
    ///
    /// # Errors
    /// No key is held of this width.
    ///
    /// ```
    /// use fits_core::standards::bought::{KeyFit, KeyStandard, Keyway};
    /// let keyway = Keyway::for_shaft(KeyStandard::Din6885, "25mm".parse()?)?;
    /// // h9 of 8 mm.
    /// assert_eq!(keyway.key_for(KeyFit::Usual)?.limits.to_string(), "7.964 to 8.000 mm");
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn key_for(self, fit: KeyFit) -> Result<BoughtPart, Error> {
        let [.., key] = self.row.standard.families(fit);
        Family::named(key)?.part(self.row.width)
    }

    /// The next wider key of this standard: what a keyway cut too wide is opened to.
    pub fn next_width(self) -> Option<Length> {
        let wider = table::KEYWAYS.iter().filter(|row| row.standard == self.row.standard);
        wider.map(|row| row.width).filter(|width| *width > self.row.width).min()
    }

    /// How the size of the key and its depths are known.
    pub const fn known(self) -> Known {
        self.row.from.known
    }

    /// Where they are written.
    pub const fn source(self) -> &'static str {
        self.row.from.text
    }

    /// What else to know; empty where there is nothing.
    pub const fn note(self) -> &'static str {
        self.row.note
    }

    /// Why the figures are what they are.
    ///
    /// # Errors
    /// As [`Keyway::widths`], or out of range.
    pub fn reasons(self) -> Result<Vec<Reason>, Error> {
        self.reasons_for(KeyFit::Usual)
    }

    /// The same for a fit.
    ///
    /// # Errors
    /// As [`Keyway::widths_for`], or out of range.
    ///
    /// ```
    /// use fits_core::standards::bought::{KeyFit, KeyStandard, Keyway};
    /// let keyway = Keyway::for_shaft(KeyStandard::Din6885, "25mm".parse()?)?;
    /// assert!(keyway.reasons_for(KeyFit::Tight)?.iter().all(|reason| !reason.source.is_empty()));
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn reasons_for(self, fit: KeyFit) -> Result<Vec<Reason>, Error> {
        let [shaft, hub] = self.widths_for(fit)?;
        let key = self.key_for(fit)?;
        let reason = |figure: &str, value: String, rule: String| Reason {
            figure: figure.into(),
            value: value.into(),
            rule: rule.into(),
            source: self.source().into(),
            known: self.known(),
        };
        let said = |limits: Limits| format!("{} to {}", limits.lower(), limits.upper());
        let top = if self.standard().is_from_side() { "(D + sqrt(D² - W²)) / 2" } else { "D" };
        Ok(vec![
            reason(
                "key and depths of its keyways",
                format!("{} wide, {} high", self.width(), self.height()),
                "by the shaft's diameter".into(),
            ),
            reason(
                "across the shaft's keyway",
                said(self.across_shaft()?),
                format!("{top} - depth in the shaft"),
            ),
            reason(
                "across the hub's keyway",
                said(self.across_hub()?),
                format!("{top} + depth in the hub"),
            ),
            Reason { figure: "width in the shaft".into(), ..shaft.reason() },
            Reason { figure: "width in the hub".into(), ..hub.reason() },
            Reason { figure: "width of the key".into(), ..key.reason() },
        ])
    }
}

/// The part of a shaft's diameter that stands over a slot of a width: how far its
/// corners are apart the other way.
pub(in crate::standards) fn chord(shaft: Length, width: Length) -> Result<Length, Error> {
    let square = |length: Length| i128::from(length.tenth_nanometres()).pow(2);
    let chord = (square(shaft) - square(width)).max(0).isqrt();
    // A chord is no longer than the diameter.
    i64::try_from(chord)
        .map(Length::from_tenth_nanometres)
        .map_err(|_| Error::new(Kind::OutOfRange))
}
