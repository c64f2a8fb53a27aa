//! What diameters are measured with, and how far a reading may be off.
//!
//! From `data/instruments.csv` and `data/instrument_names.csv`: limits of error
//! where one is published, judgement where none is. Each uncertainty is split
//! into what changes from reading to reading and what is the same in each.

#[rustfmt::skip]
#[allow(clippy::unreadable_literal, reason = "generated")]
mod table;

use super::iso286::Feature;
use crate::{
    error::Error,
    nearest::{nearest, plain},
    size::Length,
    source::{Known, Provenance, Reason},
    speech::say,
};

/// How far a reading is off, as standard uncertainties.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[expect(
    clippy::exhaustive_structs,
    reason = "it is built whole: what is new must be said by whoever builds one"
)]
pub struct Uncertainty {
    /// What changes from reading to reading: averages out.
    pub repeat: Length,
    /// What is the same in each reading: does not.
    pub bias: Length,
}

/// An instrument.
///
/// ```
/// use fits_core::{Length, standards::{instruments::Instrument, iso286::Feature}};
/// let gauge = Instrument::find("bore gage")?;
/// assert_eq!(gauge.name(), "bore gauge");
/// let off = gauge.uncertainty(Feature::Hole, Length::from_millimetres(20)?)?;
/// assert_eq!(off.repeat, Length::from_micrometres(2)?);
///
/// let error = Instrument::find("micrometr").unwrap_err();
/// assert_eq!(error.to_string(), "no instrument is called micrometr");
/// assert_eq!(error.advice(), "nearest: micrometer");
/// assert!(gauge.aliases().any(|name| name == "bore gage"));
/// # Ok::<(), fits_core::Error>(())
/// ```
#[derive(Clone, Copy, Debug)]
pub struct Instrument(&'static Entry);

#[derive(Debug)]
struct Entry {
    name: &'static str,
    aliases: &'static [&'static str],
    rows: &'static [Row],
}

#[derive(Debug)]
struct Row {
    holes: bool,
    shafts: bool,
    over: Length,
    up_to: Length,
    /// Limit of error, where one is published.
    limit: Option<Length>,
    bias: Length,
    repeat: Length,
    from: Provenance,
}

impl Row {
    const fn measures(&self, feature: Feature) -> bool {
        match feature {
            Feature::Hole => self.holes,
            Feature::Shaft => self.shafts,
        }
    }
}

impl PartialEq for Instrument {
    fn eq(&self, other: &Self) -> bool {
        self.name() == other.name()
    }
}

impl Instrument {
    /// Every instrument listed.
    ///
    /// ```
    /// use fits_core::standards::instruments::Instrument;
    /// assert!(Instrument::all().any(|it| it.name() == "micrometer"));
    /// ```
    pub fn all() -> impl Iterator<Item = Self> {
        table::INSTRUMENTS.iter().map(Self)
    }

    /// The instrument that a name or one of its other names means; letter case
    /// and hyphens are not regarded.
    ///
    /// # Errors
    /// No such name; the advice offers the nearest one.
    ///
    /// ```
    /// use fits_core::standards::instruments::Instrument;
    /// assert_eq!(Instrument::find("Mic")?.name(), "micrometer");
    /// assert!(Instrument::find("eyeball").is_err());
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn find(name: &str) -> Result<Self, Error> {
        let wanted = plain(name);
        let is = |known: &&str| plain(known) == wanted;
        Self::all().find(|entry| is(&entry.name()) || entry.0.aliases.iter().any(&is)).ok_or_else(
            || {
                let words: Vec<_> = Self::all()
                    .flat_map(|entry| core::iter::once(entry.name()).chain(entry.aliases()))
                    .map(plain)
                    .collect();
                let advice = nearest(&wanted, words.iter().map(|word| &**word)).map_or_else(
                    || {
                        let names: Vec<&str> = Self::all().map(Self::name).collect();
                        format!("those listed: {}", names.join(", "))
                    },
                    |word| format!("nearest: {word}"),
                );
                Error::not_listed(say!("no instrument is called {}", name.trim()), advice)
            },
        )
    }

    /// Its name.
    pub const fn name(self) -> &'static str {
        self.0.name
    }

    /// Its other names.
    pub fn aliases(self) -> impl Iterator<Item = &'static str> {
        self.0.aliases.iter().copied()
    }

    /// Does it measure such features at all?
    ///
    /// ```
    /// use fits_core::standards::{instruments::Instrument, iso286::Feature};
    /// let gauge = Instrument::find("bore gauge")?;
    /// assert!(gauge.measures(Feature::Hole) && !gauge.measures(Feature::Shaft));
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn measures(self, feature: Feature) -> bool {
        self.0.rows.iter().any(|row| row.measures(feature))
    }

    /// How far its readings of such a feature are off at a size.
    ///
    /// # Errors
    /// It does not measure such a feature, or none of that size.
    ///
    /// ```
    /// use fits_core::standards::{instruments::Instrument, iso286::Feature};
    /// let gauge = Instrument::find("bore gauge")?;
    /// assert_eq!(gauge.uncertainty(Feature::Hole, "20mm".parse()?)?.repeat, "0.002mm".parse()?);
    /// assert!(gauge.uncertainty(Feature::Shaft, "20mm".parse()?).is_err());
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn uncertainty(self, feature: Feature, size: Length) -> Result<Uncertainty, Error> {
        let row = self.row(feature, size)?;
        Ok(Uncertainty { repeat: row.repeat, bias: row.bias })
    }

    /// Why its uncertainty is what it is.
    ///
    /// # Errors
    /// As [`Instrument::uncertainty`].
    ///
    /// ```
    /// use fits_core::standards::{instruments::Instrument, iso286::Feature};
    /// let micrometer = Instrument::find("micrometer")?;
    /// assert!(micrometer.measures(Feature::Shaft));
    /// let [repeat, bias] = micrometer.reasons(Feature::Shaft, "20mm".parse()?)?;
    /// assert!(!repeat.source.is_empty() && !bias.source.is_empty());
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn reasons(self, feature: Feature, size: Length) -> Result<[Reason; 2], Error> {
        let row = self.row(feature, size)?;
        let rule = match row.limit {
            Some(limit) => format!("limit of error {limit}, evenly spread: {limit} / sqrt(3)"),
            None => "judgement: no limit of error is published".to_owned(),
        };
        Ok([
            Reason {
                figure: format!("{}, the same in each reading", self.name()),
                value: row.bias.to_string().into(),
                rule: rule.into(),
                source: row.from.text.into(),
                known: row.from.known,
            },
            Reason {
                figure: format!("{}, from reading to reading", self.name()),
                value: row.repeat.to_string().into(),
                rule: "standard uncertainty of one reading; of the mean of n, over sqrt(n)".into(),
                source: Known::Practice.words().into(),
                known: Known::Practice,
            },
        ])
    }

    fn row(self, feature: Feature, size: Length) -> Result<&'static Row, Error> {
        let rows = || self.0.rows.iter().filter(|row| row.measures(feature));
        if let Some(row) = rows().find(|row| row.over < size && size <= row.up_to) {
            return Ok(row);
        }
        let others = |at: Length| {
            let names: Vec<&str> = Self::all()
                .filter(|other| {
                    other
                        .0
                        .rows
                        .iter()
                        .any(|row| row.measures(feature) && row.over < at && at <= row.up_to)
                })
                .map(Self::name)
                .collect();
            names.join(", ")
        };
        let (first, last) = (rows().next(), rows().next_back());
        let (why, advice) = match first.zip(last) {
            None => (
                format!("a {} does not measure {}s", self.name(), feature.word()),
                format!("what does: {}", others(size)),
            ),
            Some((first, last)) => (
                format!(
                    "a {} measures {}s over {} up to {}, not {size}",
                    self.name(),
                    feature.word(),
                    first.over,
                    last.up_to
                ),
                match others(size) {
                    none if none.is_empty() => "no instrument listed measures that".to_owned(),
                    names => format!("what does: {names}"),
                },
            ),
        };
        Err(Error::not_listed(why, advice))
    }
}
