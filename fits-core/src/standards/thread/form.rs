//! The forms of thread: names, angles, standards.

use super::Side;
use crate::size::Decimals;

/// A form of thread: the system it belongs to.
///
/// ```
/// use fits_core::standards::thread::Form;
/// assert_eq!(Form::Acme.included_angle_degrees(), 29.0);
/// assert_eq!(Form::Whitworth.flank_half_angle_degrees(), 27.5);
/// assert_eq!((Form::Acme.name(), Form::Acme.is_inch()), ("Acme", true));
/// assert!(Form::Acme.source().contains("B1.5"));
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "kebab-case"))]
#[non_exhaustive]
pub enum Form {
    /// ISO metric, M.
    Metric,
    /// Unified, UN.
    Unified,
    /// Unified with a rounded root, UNR: external threads only.
    UnifiedRounded,
    /// Metric trapezoidal, Tr.
    Trapezoidal,
    /// Acme, general purpose.
    Acme,
    /// Stub Acme.
    StubAcme,
    /// Whitworth: BSW, BSF and special pitches.
    Whitworth,
    /// British Association, BA.
    Ba,
    /// Parallel pipe thread that does not seal in the thread, G.
    PipeParallel,
    /// External taper pipe thread, R.
    PipeR,
    /// Internal parallel pipe thread that an R goes into, Rp.
    PipeRp,
    /// Internal taper pipe thread, Rc.
    PipeRc,
    /// American taper pipe thread, NPT.
    Npt,
}

impl Form {
    /// Every form.
    pub const ALL: [Self; 13] = [
        Self::Metric,
        Self::Unified,
        Self::UnifiedRounded,
        Self::Trapezoidal,
        Self::Acme,
        Self::StubAcme,
        Self::Whitworth,
        Self::Ba,
        Self::PipeParallel,
        Self::PipeR,
        Self::PipeRp,
        Self::PipeRc,
        Self::Npt,
    ];

    /// The name in a sentence.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Metric => "ISO metric",
            Self::Unified => "Unified",
            Self::UnifiedRounded => "Unified with a rounded root",
            Self::Trapezoidal => "metric trapezoidal",
            Self::Acme => "Acme",
            Self::StubAcme => "stub Acme",
            Self::Whitworth => "Whitworth",
            Self::Ba => "BA",
            Self::PipeParallel => "parallel pipe G",
            Self::PipeR => "taper pipe R",
            Self::PipeRp => "parallel pipe Rp",
            Self::PipeRc => "taper pipe Rc",
            Self::Npt => "taper pipe NPT",
        }
    }

    /// The angle between the flanks, in degrees.
    pub const fn included_angle_degrees(self) -> f64 {
        match self {
            Self::Metric | Self::Unified | Self::UnifiedRounded | Self::Npt => 60.0,
            Self::Trapezoidal => 30.0,
            Self::Acme | Self::StubAcme => 29.0,
            Self::Whitworth | Self::PipeParallel | Self::PipeR | Self::PipeRp | Self::PipeRc => {
                55.0
            }
            Self::Ba => 47.5,
        }
    }

    /// The angle between a flank and the perpendicular to the axis, in
    /// degrees.
    pub const fn flank_half_angle_degrees(self) -> f64 {
        self.included_angle_degrees() / 2.0
    }

    /// Does the form have a thread on this side? UNR and R are outside only,
    /// Rp and Rc inside only.
    ///
    /// ```
    /// use fits_core::standards::thread::{Form, Side};
    /// assert!(Form::Metric.has_side(Side::Internal));
    /// ```
    pub const fn has_side(self, side: Side) -> bool {
        match self {
            Self::UnifiedRounded | Self::PipeR => matches!(side, Side::External),
            Self::PipeRp | Self::PipeRc => matches!(side, Side::Internal),
            _ => true,
        }
    }

    /// The standard that lays down the form.
    pub const fn source(self) -> &'static str {
        match self {
            Self::Metric => "ISO 68-1",
            Self::Unified | Self::UnifiedRounded => "ASME B1.1",
            Self::Trapezoidal => "ISO 2901",
            Self::Acme => "ASME B1.5",
            Self::StubAcme => "ASME B1.8",
            Self::Whitworth => "BS 84",
            Self::Ba => "BS 93",
            Self::PipeParallel => "ISO 228-1",
            Self::PipeR | Self::PipeRp | Self::PipeRc => "ISO 7-1",
            Self::Npt => "ASME B1.20.1",
        }
    }

    /// Are its sizes said in inches?
    pub const fn is_inch(self) -> bool {
        !matches!(self, Self::Metric | Self::Trapezoidal | Self::Ba)
    }

    /// The last place of its tables. British pipe threads have sizes in inches
    /// and diameters in millimetres.
    pub(crate) const fn last_place(self) -> Decimals {
        match self {
            Self::Npt => Decimals { places: 5, ..Decimals::INCHES },
            Self::Metric
            | Self::Trapezoidal
            | Self::Ba
            | Self::PipeParallel
            | Self::PipeR
            | Self::PipeRp
            | Self::PipeRc => Decimals::MILLIMETRES,
            _ => Decimals::INCHES,
        }
    }

    /// Height of the fundamental triangle in trillionths of the pitch: half
    /// the cotangent of the flank half angle.
    pub(crate) const fn triangle(self) -> i64 {
        match self {
            Self::Metric | Self::Unified | Self::UnifiedRounded | Self::Npt => 866_025_403_784,
            Self::Trapezoidal => 1_866_025_403_784,
            Self::Acme | Self::StubAcme => 1_933_356_547_449,
            Self::Whitworth | Self::PipeParallel | Self::PipeR | Self::PipeRp | Self::PipeRc => {
                960_491_063_486
            }
            Self::Ba => 1_136_336_439_463,
        }
    }

    /// Major less pitch diameter of the basic profile, in trillionths of the
    /// pitch.
    pub(crate) const fn to_pitch_line(self) -> i64 {
        match self {
            // 3/4 of the triangle.
            Self::Metric | Self::Unified | Self::UnifiedRounded => 649_519_052_838,
            Self::Trapezoidal | Self::Acme => 500_000_000_000,
            Self::StubAcme => 300_000_000_000,
            // 2/3 of the triangle.
            Self::Whitworth | Self::PipeParallel | Self::PipeR | Self::PipeRp | Self::PipeRc => {
                640_327_375_657
            }
            Self::Ba => 600_000_000_000,
            Self::Npt => 800_000_000_000,
        }
    }

    /// Major less minor diameter of the basic profile, in trillionths of the
    /// pitch.
    pub(crate) const fn to_minor(self) -> i64 {
        match self {
            // 5/4 of the triangle.
            Self::Metric | Self::Unified | Self::UnifiedRounded => 1_082_531_754_731,
            other => 2 * other.to_pitch_line(),
        }
    }
}
