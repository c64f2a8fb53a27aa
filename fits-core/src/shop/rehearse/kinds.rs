//! How a machinist goes about it, and what goes wrong.

/// How a machinist goes about it.
///
/// ```
/// use fits_core::shop::rehearse::Strategy;
/// assert_eq!(Strategy::Halve.word(), "half, then the rest");
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "kebab-case"))]
#[non_exhaustive]
pub enum Strategy {
    /// Dial all that is left to the aim, each time.
    Whole,
    /// Dial half of it, measure, then all that is left, each time.
    Halve,
    /// Do what the adviser says.
    Adviser,
}

impl Strategy {
    /// All three.
    pub const ALL: [Self; 3] = [Self::Whole, Self::Halve, Self::Adviser];

    /// In words, as JSON has it.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Whole => "dial it all",
            Self::Halve => "half, then the rest",
            Self::Adviser => "adviser",
        }
    }
}

/// What goes wrong in a rehearsal; the adviser does not know of it. The figures are
/// common practice, no source.
///
/// ```
/// use fits_core::shop::rehearse::Fault;
/// assert_eq!((Fault::Backlash.word(), Fault::Backlash.says()), ("backlash", "the first pass takes up 0.08 mm of backlash"));
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "kebab-case"))]
#[non_exhaustive]
pub enum Fault {
    /// The first pass comes out a turn of the dial short; 0.1 mm where the turn
    /// is not known.
    ShortTurn,
    /// The first pass takes up 0.08 mm of backlash before it cuts.
    Backlash,
    /// The tool takes 80 % of what is dialled.
    LightTool,
    /// Passes scatter four times as much.
    Rough,
    /// The gauge is off by three times its bias and two times its repeat.
    BiasedGauge,
}

impl Fault {
    /// All of them.
    pub const ALL: [Self; 5] =
        [Self::ShortTurn, Self::Backlash, Self::LightTool, Self::Rough, Self::BiasedGauge];

    /// Its name, as typed and as JSON has it.
    pub const fn word(self) -> &'static str {
        match self {
            Self::ShortTurn => "short turn",
            Self::Backlash => "backlash",
            Self::LightTool => "light tool",
            Self::Rough => "rough",
            Self::BiasedGauge => "biased gauge",
        }
    }

    /// What happens.
    pub const fn says(self) -> &'static str {
        match self {
            Self::ShortTurn => "the first pass is a turn of the dial short",
            Self::Backlash => "the first pass takes up 0.08 mm of backlash",
            Self::LightTool => "the tool takes 80 % of what is dialled",
            Self::Rough => "passes scatter four times as much",
            Self::BiasedGauge => "the gauge is off by three times its bias and twice its repeat",
        }
    }
}
