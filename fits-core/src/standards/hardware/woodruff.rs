//! Woodruff keys and their keyseats.

use super::{limits, table};
use crate::{
    error::Error,
    size::{Length, Limits},
    source::{Known, Provenance, Reason},
    speech::say,
    standards::bought::chord,
};

#[derive(Debug)]
pub(super) struct WoodruffRow {
    pub(super) number: &'static str,
    pub(super) width: Length,
    pub(super) diameter: Length,
    pub(super) height: [Length; 2],
    pub(super) shaft: [Length; 2],
    pub(super) hub: [Length; 2],
    pub(super) shaft_width: [Length; 2],
    pub(super) hub_width: [Length; 2],
    pub(super) width_known: Known,
    pub(super) from: Provenance,
}

#[derive(Debug)]
pub(super) struct WoodruffShaftRow {
    pub(super) width: Length,
    pub(super) shaft: [Length; 2],
    pub(super) from: Provenance,
}

/// A Woodruff key by its number, ANSI/ASME B17.2.
///
/// ```
/// use fits_core::standards::hardware::Woodruff;
/// let key = Woodruff::numbered("606")?;
/// assert_eq!(key.width(), "3/16in".parse()?);
/// assert_eq!(key.diameter(), "3/4in".parse()?);
/// assert_eq!(key.shaft_depth()?.lower(), "0.2143in".parse()?);
/// assert_eq!(key.hub_depth()?.upper(), "0.1047in".parse()?);
/// assert_eq!(key.height()?.lower(), "0.308in".parse()?);
/// assert_eq!(key.widths()?[0].lower(), "0.1863in".parse()?);
/// assert_eq!(key.reasons()?[0].figure, "depth in the shaft");
///
/// let shaft = "3/4in".parse()?;
/// assert!(key.suits(shaft));
/// assert_eq!(Woodruff::for_shaft(shaft)?[0].number(), "606");
/// // On 1 in: (1 + sqrt(1 - 0.1875²)) / 2 - 0.2143 in to the far side.
/// let (_, across) = key.in_shaft("1in".parse()?)?;
/// assert!(across.upper() > "0.7768in".parse()? && across.upper() < "0.7769in".parse()?);
/// assert_eq!(key.shaft_range(), Some(("9/16in".parse()?, "2in".parse()?)));
/// assert!(!key.known().is_unconfirmed() && key.width_known().is_unconfirmed());
/// # Ok::<(), fits_core::Error>(())
/// ```
#[derive(Clone, Copy, Debug)]
pub struct Woodruff(&'static WoodruffRow);

impl Woodruff {
    /// The key of a number.
    ///
    /// # Errors
    /// No such number; the advice says what a number is made of.
    ///
    /// ```
    /// use fits_core::standards::hardware::Woodruff;
    /// // 4/32 in wide and 4/8 in across.
    /// let key = Woodruff::numbered("404")?;
    /// assert_eq!((key.width(), key.diameter()), ("1/8in".parse()?, "1/2in".parse()?));
    /// assert!(Woodruff::numbered("999").is_err());
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn numbered(number: &str) -> Result<Self, Error> {
        Self::all().find(|key| key.number() == number).ok_or_else(|| {
            let value = |text: &str| text.parse::<f64>().unwrap_or_default();
            let asked = value(number);
            let mut near: Vec<Self> = Self::all().collect();
            near.sort_by(|a, b| {
                let far = |key: &Self| (value(key.number()) - asked).abs();
                far(a).total_cmp(&far(b))
            });
            let near: Vec<&str> = near.iter().take(3).map(|key| key.number()).collect();
            Error::not_listed(
                say!("no Woodruff key number {} is listed (ANSI B17.2)", number),
                format!(
                    "the last two figures are its diameter in eighths, before them its width in \
                     32nds; near it: {}",
                    near.join(", ")
                ),
            )
        })
    }

    /// Every key.
    ///
    /// ```
    /// use fits_core::standards::hardware::Woodruff;
    /// assert!(Woodruff::all().any(|key| key.number() == "606"));
    /// ```
    pub fn all() -> impl Iterator<Item = Self> {
        table::WOODRUFF.iter().map(Self)
    }

    /// The keys whose width suits a shaft, those first whose width is nearest a
    /// quarter of it and whose diameter is nearest the shaft's.
    ///
    /// # Errors
    /// No width suits the shaft.
    ///
    /// ```
    /// use fits_core::standards::hardware::Woodruff;
    /// let shaft = "3/4in".parse()?;
    /// assert!(Woodruff::for_shaft(shaft)?.iter().all(|key| key.suits(shaft)));
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn for_shaft(shaft: Length) -> Result<Vec<Self>, Error> {
        let mut found: Vec<Self> = Self::all().filter(|key| key.suits(shaft)).collect();
        let off = |a: Length, b: Length| a.tenth_nanometres().abs_diff(b.tenth_nanometres());
        let quarter = shaft.half().half();
        found.sort_by_key(|key| (off(key.width(), quarter), off(key.diameter(), shaft)));
        if found.is_empty() {
            return Err(Error::not_listed(
                say!("no Woodruff key is listed for a shaft of {}", shaft),
                "shafts from 5/16 in to 2-5/8 in have one",
            ));
        }
        Ok(found)
    }

    fn shafts(self) -> Option<&'static WoodruffShaftRow> {
        table::WOODRUFF_SHAFTS.iter().find(|row| row.width == self.width())
    }

    /// The shafts that its width suits, where they are listed.
    pub fn shaft_range(self) -> Option<(Length, Length)> {
        self.shafts().map(|row| (row.shaft[0], row.shaft[1]))
    }

    /// Does its width suit a shaft? Widths that are not listed suit none.
    ///
    /// ```
    /// use fits_core::standards::hardware::Woodruff;
    /// let key = Woodruff::numbered("606")?;
    /// assert!(key.suits("3/4in".parse()?) && !key.suits("1/4in".parse()?));
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn suits(self, shaft: Length) -> bool {
        self.shaft_range().is_some_and(|(least, most)| least <= shaft && shaft <= most)
    }

    /// Its number.
    pub const fn number(self) -> &'static str {
        self.0.number
    }

    /// Its width: the key is this to 0.001 in over it.
    pub const fn width(self) -> Length {
        self.0.width
    }

    /// The diameter of the cutter and of the disc that it is a part of.
    pub const fn diameter(self) -> Length {
        self.0.diameter
    }

    /// The limits of the key's height.
    ///
    /// # Errors
    /// Out of range.
    pub fn height(self) -> Result<Limits, Error> {
        limits(self.0.height, Known::Seen)
    }

    /// The depth of the shaft's keyseat, at its side.
    ///
    /// # Errors
    /// Out of range.
    pub fn shaft_depth(self) -> Result<Limits, Error> {
        limits(self.0.shaft, self.0.from.known)
    }

    /// The depth of the hub's keyway, at its side.
    ///
    /// # Errors
    /// Out of range.
    pub fn hub_depth(self) -> Result<Limits, Error> {
        limits(self.0.hub, self.0.from.known)
    }

    /// The widths of the keyseat in the shaft and of the keyway in the hub.
    ///
    /// # Errors
    /// Out of range.
    pub fn widths(self) -> Result<[Limits; 2], Error> {
        let of = |row| limits(row, self.0.width_known);
        Ok([of(self.0.shaft_width)?, of(self.0.hub_width)?])
    }

    /// How far the corner of the keyseat lies under the top of the shaft, and what
    /// a micrometer reads from the bottom of the keyseat to the far side of a shaft
    /// of nominal size.
    ///
    /// # Errors
    /// The key is as wide as the shaft.
    ///
    /// ```
    /// use fits_core::standards::hardware::Woodruff;
    /// // (1 + sqrt(1 - 0.1875²)) / 2 - 0.2143 in at the most.
    /// let (_, across) = Woodruff::numbered("606")?.in_shaft("1in".parse()?)?;
    /// assert!(across.upper() > "0.7768in".parse()? && across.upper() < "0.7769in".parse()?);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn in_shaft(self, shaft: Length) -> Result<(Length, Limits), Error> {
        if shaft <= self.width() {
            return Err(Error::not_a_pair(say!(
                "a key {} wide leaves nothing of a shaft of {}",
                self.width(),
                shaft
            )));
        }
        let corner = shaft.checked_add(chord(shaft, self.width())?)?.half();
        let [least, most] = self.0.shaft;
        if corner <= most {
            return Err(Error::not_a_pair(say!(
                "a keyseat {} deep goes through a shaft of {}",
                most,
                shaft
            )));
        }
        let across = Limits::new(corner.checked_sub(most)?, corner.checked_sub(least)?)?;
        Ok((shaft.checked_sub(corner)?, across.known_as(self.0.from.known)))
    }

    /// How the depths are known.
    pub const fn known(self) -> Known {
        self.0.from.known
    }

    /// How the widths, and how far a depth may go over, are known.
    pub const fn width_known(self) -> Known {
        self.0.width_known
    }

    /// Why its figures are what they are.
    ///
    /// # Errors
    /// Out of range.
    pub fn reasons(self) -> Result<Vec<Reason>, Error> {
        let said = |limits: Limits| format!("{} to {}", limits.lower(), limits.upper());
        let reason = |figure, value, rule, known| self.0.from.reason(figure, value, rule, known);
        let [shaft, hub] = self.widths()?;
        let mut reasons = vec![
            reason(
                "depth in the shaft",
                said(self.shaft_depth()?),
                "greatest height of the key - half its width - 0.005 in, at the side",
                self.0.from.known,
            ),
            reason(
                "depth in the hub",
                said(self.hub_depth()?),
                "half the key's width + 0.006 in, at the side",
                self.0.from.known,
            ),
            reason("width in the shaft", said(shaft), "", self.0.width_known),
            reason("width in the hub", said(hub), "", self.0.width_known),
        ];
        if let Some(row) = self.shafts() {
            reasons.push(Reason {
                figure: "shafts that it suits".into(),
                value: format!("{} to {}", row.shaft[0], row.shaft[1]).into(),
                rule: "by the key's width".into(),
                source: row.from.text.into(),
                known: row.from.known,
            });
        }
        Ok(reasons)
    }
}
