//! A bushing that is pressed in and measured: the shaft for it, and the ways out
//! where a shaft does not run in it as wanted.

#[cfg(feature = "serde")]
use serde::Serialize;

use super::{Bush, Suited, bore_for, shaft_for};
use crate::{
    error::Error,
    size::{Length, Limits},
    speech::say,
};

/// How a shaft runs in a bore against what is wanted.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename = "Play"))]
#[cfg_attr(feature = "serde", serde(rename_all = "lowercase"))]
#[non_exhaustive]
pub enum RunningPlay {
    /// Anywhere in the shaft's limits it has the play that is wanted.
    Good,
    /// It has less than the least that is wanted, or may have.
    Tight,
    /// It has more than the most that is wanted, or may have.
    Loose,
}

/// What to do about a bore in place, most usual first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename = "Way"))]
#[cfg_attr(feature = "serde", serde(rename_all = "kebab-case"))]
#[expect(
    clippy::exhaustive_enums,
    reason = "each is told, or acted on, in its own way: a new one must not pass unseen"
)]
pub enum BushRemedy {
    /// Ream, hone or scrape the bore in place.
    Ream,
    /// Bore or ream with a keen edge: plastic is pushed aside by a dull one.
    Bore,
    /// Burnish it with a fitting pin, pressed through: a cutting edge closes
    /// the pores.
    Burnish,
    /// Turn the shaft, or turn it down.
    Shaft,
    /// Make a larger shaft.
    LargerShaft,
    /// Press in another bushing.
    Another,
}

/// A bore in place, and the shaft that is to run in it.
#[derive(Clone, Debug)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct InPlace {
    /// The shaft that has the play wanted.
    pub shaft: Suited,
    /// The play with the shaft that is there, least and greatest.
    pub clearance: Option<Limits>,
    /// How that is.
    pub play: Option<RunningPlay>,
    /// The bore that this shaft wants.
    pub bore: Option<Suited>,
    /// How much the bore is to be opened to get there, for the aim.
    pub open_by: Option<Length>,
    /// The ways out.
    pub ways: Vec<BushRemedy>,
}

/// The most that a pin opens a porous bore: a thousandth of it, a thou at least.
/// Common practice, no source.
///
/// ```
/// use fits_core::shop::bushing::burnishes_at_most;
/// assert_eq!(burnishes_at_most("50mm".parse()?), "0.05mm".parse()?);
/// assert_eq!(burnishes_at_most("12mm".parse()?), "0.001in".parse()?);
/// # Ok::<(), fits_core::Error>(())
/// ```
pub fn burnishes_at_most(bore: Length) -> Length {
    let share = Length::from_tenth_nanometres(bore.tenth_nanometres() / 1000);
    share.max(Length::THOU)
}

/// What to do with a bushing whose bore in place was measured.
///
/// ```
/// use fits_core::{Limits, shop::bushing::{Bush, RunningPlay, BushRemedy, burnishes_at_most, in_place}};
/// let limits = |lower: &str, upper: &str| Limits::new(lower.parse()?, upper.parse()?);
/// let wanted = limits("1 thou", "2 thou")?;
/// let shaft = limits("0.7495in", "0.7500in")?;
/// let found = in_place(Bush::Bronze, "0.7500in".parse()?, Some(shaft), wanted)?;
/// assert_eq!(found.play, Some(RunningPlay::Tight));
/// assert_eq!(found.ways, [BushRemedy::Ream, BushRemedy::Shaft]);
/// assert_eq!(found.bore.and_then(|bore| bore.limits), Some(limits("0.7510in", "0.7515in")?));
/// assert_eq!(burnishes_at_most("0.7500in".parse()?), "1 thou".parse()?);
/// assert_eq!(burnishes_at_most("2in".parse()?), "2 thou".parse()?);
/// # Ok::<(), fits_core::Error>(())
/// ```
///
/// # Errors
/// No shaft is left by the play wanted, or out of range.
pub fn in_place(
    kind: Bush,
    bore: Length,
    shaft: Option<Limits>,
    wanted: Limits,
) -> Result<InPlace, Error> {
    let here = Limits::new(bore, bore)?;
    let suited = shaft_for(here, wanted)?;
    if !suited.aim.is_positive() {
        return Err(Error::no_plan(say!(
            "a clearance of {} leaves no shaft in a bore of {}",
            wanted.middle(),
            bore
        )));
    }
    let Some(shaft) = shaft else {
        return Ok(InPlace {
            shaft: suited,
            clearance: None,
            play: None,
            bore: None,
            open_by: None,
            ways: vec![BushRemedy::Shaft],
        });
    };
    let clearance =
        Limits::new(bore.checked_sub(shaft.upper())?, bore.checked_sub(shaft.lower())?)?;
    let play = if clearance.lower() < wanted.lower() {
        RunningPlay::Tight
    } else if clearance.upper() > wanted.upper() {
        RunningPlay::Loose
    } else {
        RunningPlay::Good
    };
    let fits = bore_for(shaft, wanted)?;
    let open_by = fits.aim.checked_sub(bore)?;
    let least = fits.limits.map_or(fits.aim, Limits::lower).checked_sub(bore)?;
    let ways = match (play, kind) {
        (RunningPlay::Good, _) => Vec::new(),
        (RunningPlay::Loose, _) => vec![BushRemedy::LargerShaft, BushRemedy::Another],
        (RunningPlay::Tight, Bush::Bronze) => vec![BushRemedy::Ream, BushRemedy::Shaft],
        (RunningPlay::Tight, Bush::Plastic) => vec![BushRemedy::Bore, BushRemedy::Shaft],
        (RunningPlay::Tight, Bush::Sintered) if least <= burnishes_at_most(bore) => {
            vec![BushRemedy::Burnish, BushRemedy::Shaft]
        }
        (RunningPlay::Tight, Bush::Sintered | Bush::Lined) => {
            vec![BushRemedy::Shaft, BushRemedy::Another]
        }
    };
    let open_by = (play == RunningPlay::Tight).then_some(open_by);
    Ok(InPlace {
        shaft: suited,
        clearance: Some(clearance),
        play: Some(play),
        bore: Some(fits),
        open_by,
        ways,
    })
}
