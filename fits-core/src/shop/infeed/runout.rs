//! Where a thread runs out: run-out, relief grooves, blind holes, from
//! `data/threads/runout.csv` (GB/T 3, which adopts ISO 3508 and ISO 4755; DIN
//! 76-1 for blind holes). DIN 76-1's own groove rows were not read.

use super::table;
use crate::{
    error::Error,
    size::Length,
    source::{Known, Provenance, Reason},
    standards::iso286::Feature,
};

/// Where a thread of one pitch runs out.
///
/// ```
/// use fits_core::{shop::infeed::Runout, standards::iso286::Feature};
/// // ISO 3508: 2.5 P of a pitch of 1.5 mm, half of it where it must be short.
/// let runout = Runout::of(Feature::Shaft, "1.5mm".parse()?).expect("listed");
/// assert_eq!((runout.runout(), runout.runout_short()), ("3.8mm".parse()?, "1.9mm".parse()?));
/// assert_eq!((runout.pitch(), runout.shoulder()), ("1.5mm".parse()?, "4.5mm".parse()?));
/// assert!(runout.groove().is_some());
/// assert!(!runout.known().is_unconfirmed() && runout.source().starts_with("GB/T 3-1997"));
/// # Ok::<(), fits_core::Error>(())
/// ```
#[derive(Clone, Copy, Debug)]
pub struct Runout(&'static Row);

/// A relief groove.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct Groove {
    /// Outside: least width at the bottom. Inside: the normal groove's width.
    pub width: Length,
    /// Outside: greatest width at the top. Inside: the short groove's width.
    pub other_width: Length,
    /// Under the major diameter outside, over it inside.
    pub off_major: Length,
    /// About.
    pub fillet: Length,
}

#[derive(Debug)]
pub(super) struct Row {
    pub(super) pitch: Length,
    pub(super) runout: Length,
    pub(super) runout_short: Length,
    pub(super) shoulder: Length,
    pub(super) groove: Option<Groove>,
    pub(super) from: Provenance,
}

#[derive(Debug)]
pub(super) struct OverrunRow {
    pub(super) pitch: Length,
    pub(super) overrun: Length,
    pub(super) from: Provenance,
}

impl Runout {
    /// For a pitch, or the next coarser one listed; nothing for a pitch over
    /// 6 mm. The tables are for 60-degree threads.
    ///
    /// ```
    /// use fits_core::{shop::infeed::Runout, standards::iso286::Feature};
    /// let runout = Runout::of(Feature::Shaft, "1.5mm".parse()?).expect("listed");
    /// let groove = runout.groove().expect("listed");
    /// assert_eq!(groove.off_major, "2.3mm".parse()?);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn of(feature: Feature, pitch: Length) -> Option<Self> {
        let rows: &[Row] = match feature {
            Feature::Shaft => &table::EXTERNAL,
            Feature::Hole => &table::INTERNAL,
        };
        rows.iter().find(|row| pitch <= row.pitch).map(Self)
    }

    /// The listed pitch whose row it is.
    pub const fn pitch(self) -> Length {
        self.0.pitch
    }

    /// Greatest run-out x: incomplete thread at the end.
    pub const fn runout(self) -> Length {
        self.0.runout
    }

    /// Greatest run-out where it must be short.
    pub const fn runout_short(self) -> Length {
        self.0.runout_short
    }

    /// Greatest distance from a shoulder to the first full thread.
    pub const fn shoulder(self) -> Length {
        self.0.shoulder
    }

    /// The groove to run out into, where one is listed.
    pub const fn groove(self) -> Option<Groove> {
        self.0.groove
    }

    /// How it is known.
    pub const fn known(self) -> Known {
        self.0.from.known
    }

    /// Where it is written.
    pub const fn source(self) -> &'static str {
        self.0.from.text
    }
}

/// A relief groove and a run-out by rule, where no table was read: other forms
/// than 60 degrees, and pitches over 6 mm.
///
/// Outside the run-out is 2.5 P, the shoulder 3 P and the groove at least 2 P
/// wide; inside 4 P, 5 P and 4 P. The groove clears the root by a tenth of the
/// pitch on the diameter. Common practice, no source: the shares of the pitch
/// are those of GB/T 3.
///
/// ```
/// use fits_core::{shop::infeed::Relief, standards::iso286::Feature};
/// let relief = Relief::by_rule(Feature::Hole, "4mm".parse()?, "20mm".parse()?)?;
/// assert_eq!(relief.reasons()[1].value, "20.4 mm");
/// # Ok::<(), fits_core::Error>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct Relief {
    /// Incomplete thread at the end without a groove.
    pub runout: Length,
    /// From a shoulder to the first full thread.
    pub shoulder: Length,
    /// The groove's diameter.
    pub diameter: Length,
    /// The groove's width: outside at least this.
    pub width: Length,
}

impl Relief {
    /// For a pitch and the root's last diameter: the least outside, the
    /// greatest inside.
    ///
    /// # Errors
    /// Out of range.
    ///
    /// ```
    /// use fits_core::{shop::infeed::Relief, standards::iso286::Feature};
    /// let relief = Relief::by_rule(Feature::Shaft, "4mm".parse()?, "15.1mm".parse()?)?;
    /// assert_eq!((relief.diameter, relief.width), ("14.7mm".parse()?, "8mm".parse()?));
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn by_rule(feature: Feature, pitch: Length, root: Length) -> Result<Self, Error> {
        let clear = pitch.checked_scale(1, 10)?;
        let tenths = |count: i128| pitch.checked_scale(count, 10);
        Ok(match feature {
            Feature::Shaft => Self {
                runout: tenths(25)?,
                shoulder: tenths(30)?,
                diameter: root.checked_sub(clear)?,
                width: tenths(20)?,
            },
            Feature::Hole => Self {
                runout: tenths(40)?,
                shoulder: tenths(50)?,
                diameter: root.checked_add(clear)?,
                width: tenths(40)?,
            },
        })
    }

    /// Why.
    pub fn reasons(&self) -> Vec<Reason> {
        let reason = |figure: &str, value: Length, rule: &'static str| Reason {
            figure: figure.into(),
            value: value.to_string().into(),
            rule: rule.into(),
            source: "common practice, no source; the shares of the pitch as GB/T 3-1997 has them"
                .into(),
            known: Known::Practice,
        };
        vec![
            reason("run-out", self.runout, "2.5 P outside, 4 P inside"),
            reason("relief groove", self.diameter, "a tenth of P beyond the root, on the diameter"),
            reason("width of the groove", self.width, "2 P or more outside, 4 P inside"),
        ]
    }
}

/// What a tapped blind hole is drilled beyond its full thread (DIN 76-1 e1,
/// normal).
///
/// ```
/// use fits_core::shop::infeed::Overrun;
/// // The next coarser pitch listed.
/// let overrun = Overrun::of("1.4mm".parse()?).expect("listed");
/// assert_eq!((overrun.pitch(), overrun.length()), ("1.5mm".parse()?, "7.3mm".parse()?));
/// assert!(overrun.source().contains("DIN 76"));
/// assert!(overrun.known().is_unconfirmed());
/// # Ok::<(), fits_core::Error>(())
/// ```
#[derive(Clone, Copy, Debug)]
pub struct Overrun(&'static OverrunRow);

impl Overrun {
    /// For a pitch, or the next coarser one listed; nothing for a pitch over
    /// 6 mm.
    ///
    /// ```
    /// use fits_core::shop::infeed::Overrun;
    /// let overrun = Overrun::of("1.5mm".parse()?).expect("listed");
    /// assert_eq!(overrun.length(), "7.3mm".parse()?);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn of(pitch: Length) -> Option<Self> {
        table::BLIND.iter().find(|row| pitch <= row.pitch).map(Self)
    }

    /// How much deeper.
    pub const fn length(self) -> Length {
        self.0.overrun
    }

    /// The listed pitch whose row it is.
    pub const fn pitch(self) -> Length {
        self.0.pitch
    }

    /// How it is known.
    pub const fn known(self) -> Known {
        self.0.from.known
    }

    /// Where it is written.
    pub const fn source(self) -> &'static str {
        self.0.from.text
    }
}
