//! Where a thread runs out: run-out, relief grooves, blind holes, from
//! `data/threads/runout.csv` (GB/T 3, which adopts ISO 3508 and ISO 4755; DIN
//! 76-1 for blind holes). DIN 76-1's own groove rows were not read.

use super::table;
use crate::{
    size::Length,
    source::{Known, Provenance},
    standards::iso286::Feature,
};

/// Where a thread of one pitch runs out.
#[derive(Clone, Copy, Debug)]
pub struct Runout(&'static Row);

/// A relief groove.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
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

/// What a tapped blind hole is drilled beyond its full thread (DIN 76-1 e1,
/// normal).
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
