//! One part as it is bought: its limits, and how it is found by its words.

use super::{Family, spoken};
use crate::{
    error::{Error, Kind},
    size::{Length, Limits, Unit},
    source::{Known, Reason},
    speech::say,
    standards::iso286::Feature,
};

/// A bought-in part's limits at one nominal size.
///
/// ```
/// use fits_core::{Fit, Kind, standards::{bought::Family, iso286::{Class, Feature}}};
/// // A bearing of 25 mm bore on a j6 shaft: from 4 um loose to 19 um tight.
/// let nominal = "25mm".parse()?;
/// let bore = Family::named("bearing bore")?.part(nominal)?;
/// assert_eq!(bore.feature, Feature::Hole);
/// let seat: Class = "j6".parse()?;
/// let fit = Fit::of_limits(nominal, bore.limits, seat.limits(nominal)?)?;
/// assert_eq!(fit.clearance().upper().to_string(), "0.004 mm");
/// assert_eq!(fit.clearance().lower().to_string(), "-0.019 mm");
/// assert!(!bore.reason().source.is_empty());
/// # Ok::<(), fits_core::Error>(())
/// ```
#[derive(Clone, Copy, Debug)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct BoughtPart {
    /// The family it belongs to.
    pub family: Family,
    /// The size it is sold by.
    pub nominal: Length,
    /// The surface offered to the mate: a pin is a shaft, a bushing's bore a
    /// hole.
    pub feature: Feature,
    /// The limits it comes with.
    pub limits: Limits,
    /// What the standard or the maker gives for the mate, where it does.
    pub mate: Option<Limits>,
    /// It varies by maker or by lot: measure the one in hand.
    pub mic_yours: bool,
    /// How the limits are known.
    pub known: Known,
    /// Where they are written.
    pub source: &'static str,
    /// What else to know, empty where there is nothing.
    pub note: &'static str,
}

impl PartialEq for Family {
    /// Names are unique.
    fn eq(&self, other: &Self) -> bool {
        self.0.name == other.0.name
    }
}

impl BoughtPart {
    /// The one part that a shop's word and a nominal size mean: a word that
    /// several families share is settled by which of them list the size.
    ///
    /// # Errors
    /// No such word, a size that none of the families lists, or several that
    /// list it (the choices name them).
    ///
    /// ```
    /// use fits_core::standards::bought::BoughtPart;
    /// let pin = BoughtPart::find("dowel", "1/4in".parse()?)?;
    /// assert_eq!(pin.family.name(), "inch dowel pin");
    /// // Two standards list 6 mm, and their pins differ.
    /// let error = BoughtPart::find("dowel", "6mm".parse()?).unwrap_err();
    /// assert_eq!(error.choices(), ["m6 dowel pin", "ASME metric dowel pin"]);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn find(text: &str, nominal: Length) -> Result<Self, Error> {
        Self::found(text, nominal, None)
    }

    /// As [`BoughtPart::find`], of a size thought in a unit: the families that are
    /// listed in it come before the others.
    ///
    /// # Errors
    /// As [`BoughtPart::find`].
    ///
    /// ```
    /// use fits_core::{size::Unit, standards::bought::BoughtPart};
    /// let rod = BoughtPart::find_in("drill rod", "3/8in".parse()?, Unit::Inch)?;
    /// assert_eq!(rod.family.name(), "inch drill rod");
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn find_in(text: &str, nominal: Length, unit: Unit) -> Result<Self, Error> {
        Self::found(text, nominal, Some(unit))
    }

    fn found(text: &str, nominal: Length, unit: Option<Unit>) -> Result<Self, Error> {
        let mut parts: Vec<Self> = Vec::new();
        let mut refused = None;
        for family in Family::called(text)? {
            match family.part(nominal) {
                Ok(part) => parts.push(part),
                // The first family's own neighbours serve as the advice.
                Err(error) => refused = refused.or(Some(error)),
            }
        }
        let is_own = |part: &Self| Some(part.family.unit()) == unit;
        if parts.iter().any(is_own) {
            parts.retain(is_own);
        }
        match (parts.as_slice(), refused) {
            ([only], _) => Ok(*only),
            ([], Some(error)) => Err(error),
            (several, _) => {
                let families: Vec<_> = several.iter().map(|part| part.family).collect();
                Err(ambiguous(text, &families))
            }
        }
    }

    /// Why the limits are what they are.
    pub fn reason(&self) -> Reason {
        Reason {
            figure: format!("{} {}", self.family.0.noun, spoken(self.nominal, self.family.0.unit)),
            value: say!("{} to {}", self.limits.lower(), self.limits.upper()),
            rule: self.note.into(),
            source: self.source.into(),
            known: self.known,
        }
    }
}

pub(super) fn ambiguous(text: &str, families: &[Family]) -> Error {
    let kinds: Vec<_> =
        families.iter().map(|family| format!("{} ({})", family.name(), family.differs())).collect();
    Error::new(Kind::Ambiguous {
        why: say!("{} can mean: {}", text.trim(), kinds.join("; ")),
        choices: families.iter().map(|family| family.name().to_owned()).collect(),
    })
}
