//! What an adviser is told: passes, spring passes and readings.

use super::{Adviser, Observed, slip::Pass};
use crate::{error::Error, size::Length, speech::say};

impl Adviser {
    /// The same after every entry of a log.
    ///
    /// # Errors
    /// An entry that [`Adviser::enter`] refuses.
    ///
    /// ```
    /// use fits_core::shop::adviser::{Adviser, Observed, Prior, Settings};
    /// use fits_core::standards::{instruments::Uncertainty, iso286::{Class, Feature}};
    /// let hole = "H7".parse::<Class>()?.limits("20mm".parse()?)?;
    /// let gauge = Uncertainty { repeat: "2um".parse()?, bias: "2um".parse()? };
    /// let usual = Prior::usual(Feature::Hole, None, None);
    /// let begun =
    ///     || Adviser::new(hole, Feature::Hole, "19.6mm".parse()?, usual, gauge, Settings::default());
    /// let entries = [
    ///     Observed::Cut { dialled: "0.2mm".parse()?, readings: vec!["19.79mm".parse()?] },
    ///     Observed::Spring { readings: vec!["19.792mm".parse()?] },
    ///     Observed::Read { readings: vec!["19.793mm".parse()?] },
    /// ];
    /// // The same, one after another.
    /// let mut adviser = begun()?;
    /// adviser.enter(&entries[0])?;
    /// adviser.spring(&["19.792mm".parse()?])?;
    /// adviser.read(&["19.793mm".parse()?])?;
    /// assert_eq!(begun()?.replay(&entries)?.next(), adviser.next());
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn replay(mut self, entries: &[Observed]) -> Result<Self, Error> {
        for entry in entries {
            self.enter(entry)?;
        }
        Ok(self)
    }

    /// Takes up one entry of a log.
    ///
    /// # Errors
    /// As the entry's own function.
    ///
    /// ```
    /// use fits_core::shop::adviser::{Adviser, Observed, Prior, Settings};
    /// use fits_core::standards::{instruments::Uncertainty, iso286::{Class, Feature}};
    /// let hole = "H7".parse::<Class>()?.limits("20mm".parse()?)?;
    /// let gauge = Uncertainty { repeat: "2um".parse()?, bias: "2um".parse()? };
    /// let usual = Prior::usual(Feature::Hole, None, None);
    /// let start = "19.6mm".parse()?;
    /// let mut adviser = Adviser::new(hole, Feature::Hole, start, usual, gauge, Settings::default())?;
    /// let mut other = adviser.clone();
    /// adviser.enter(&Observed::Read { readings: vec!["19.602mm".parse()?] })?;
    /// other.read(&["19.602mm".parse()?])?;
    /// assert_eq!(adviser.next(), other.next());
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn enter(&mut self, entry: &Observed) -> Result<(), Error> {
        match entry {
            Observed::Cut { dialled, readings } => self.cut(*dialled, readings),
            Observed::Spring { readings } => self.spring(readings),
            Observed::Read { readings } => self.read(readings),
        }
    }

    /// A pass with a change of diameter dialled, and what was read after it;
    /// no reading where it was not measured.
    ///
    /// # Errors
    /// Nothing dialled, or less; a reading out of range. The adviser is then
    /// as it was.
    ///
    /// ```
    /// use fits_core::shop::adviser::{Adviser, Prior, Settings};
    /// use fits_core::standards::{instruments::Uncertainty, iso286::{Class, Feature}};
    /// let hole = "H7".parse::<Class>()?.limits("20mm".parse()?)?;
    /// let gauge = Uncertainty { repeat: "2um".parse()?, bias: "2um".parse()? };
    /// let usual = Prior::usual(Feature::Hole, None, None);
    /// let start = "19.6mm".parse()?;
    /// let mut adviser = Adviser::new(hole, Feature::Hole, start, usual, gauge, Settings::default())?;
    /// adviser.cut("0.2mm".parse()?, &["19.79mm".parse()?])?;
    /// // It took 0.19 of 0.20 mm: it cuts light.
    /// assert!(adviser.estimate()?.gain < usual.gain);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn cut(&mut self, dialled: Length, readings: &[Length]) -> Result<(), Error> {
        if !dialled.is_positive() {
            return Err(Error::not_listed(
                say!("a cut of {} takes nothing off", dialled),
                "a pass without infeed is a spring pass",
            ));
        }
        let set = dialled.in_micrometres();
        self.measured(Pass::Cut(dialled), &|state, scatter| state.cut(set, scatter), readings)?;
        self.last = set;
        self.cuts += 1;
        self.unread = readings.is_empty();
        Ok(())
    }

    /// A pass without infeed, and what was read after it.
    ///
    /// # Errors
    /// A reading out of range. The adviser is then as it was.
    ///
    /// ```
    /// use fits_core::shop::adviser::{Adviser, Prior, Settings};
    /// use fits_core::standards::{instruments::Uncertainty, iso286::{Class, Feature}};
    /// let hole = "H7".parse::<Class>()?.limits("20mm".parse()?)?;
    /// let gauge = Uncertainty { repeat: "2um".parse()?, bias: "2um".parse()? };
    /// let usual = Prior::usual(Feature::Hole, None, None);
    /// let start = "19.6mm".parse()?;
    /// let mut adviser = Adviser::new(hole, Feature::Hole, start, usual, gauge, Settings::default())?;
    /// adviser.cut("0.2mm".parse()?, &["19.79mm".parse()?])?;
    /// adviser.spring(&["19.793mm".parse()?])?;
    /// assert!(adviser.next().dial.is_some_and(|dial| dial < "0.23mm".parse().unwrap()));
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn spring(&mut self, readings: &[Length]) -> Result<(), Error> {
        let last = self.last;
        self.measured(Pass::Spring, &|state, scatter| state.spring(last, scatter), readings)?;
        self.unread = readings.is_empty();
        Ok(())
    }

    /// Readings without a pass.
    ///
    /// # Errors
    /// No reading, or one out of range. The adviser is then as it was.
    ///
    /// ```
    /// use fits_core::shop::adviser::{Adviser, Prior, Settings};
    /// use fits_core::standards::{instruments::Uncertainty, iso286::{Class, Feature}};
    /// let hole = "H7".parse::<Class>()?.limits("20mm".parse()?)?;
    /// let gauge = Uncertainty { repeat: "2um".parse()?, bias: "2um".parse()? };
    /// let usual = Prior::usual(Feature::Hole, None, None);
    /// let start = "19.6mm".parse()?;
    /// let mut adviser = Adviser::new(hole, Feature::Hole, start, usual, gauge, Settings::default())?;
    /// adviser.read(&["19.601mm".parse()?, "19.603mm".parse()?])?;
    /// assert!(adviser.read(&[]).is_err());
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn read(&mut self, readings: &[Length]) -> Result<(), Error> {
        if readings.is_empty() {
            return Err(Error::not_listed("nothing was read", "give what the instrument showed"));
        }
        self.measured(Pass::None, &|state, _| state, readings)?;
        self.unread = false;
        Ok(())
    }
}
