//! The running clearance that a service asks for, from `data/bushings/`.

use super::{
    Bush,
    table::{KINDS, RUNNING},
};
use crate::{
    error::Error,
    nearest::{nearest, plain},
    shop::assemble::millimetres,
    size::{Length, Limits, inches},
    source::{Provenance, Reason},
    speech::say,
};

/// A service's clearance at one shaft diameter.
#[derive(Debug)]
pub(super) struct Row {
    pub(super) service: Service,
    pub(super) diameter: Length,
    pub(super) least: Length,
    pub(super) most: Length,
    pub(super) from: Provenance,
}

/// One figure of a kind of bushing; lengths are an inch's share, in inches.
#[derive(Debug)]
pub(super) struct KindRow {
    pub(super) kind: Bush,
    pub(super) figure: &'static str,
    pub(super) value: &'static str,
    pub(super) from: Provenance,
    pub(super) note: &'static str,
}

/// What a shaft does in its bushing.
///
/// ```
/// use fits_core::shop::bushing::Service;
/// assert_eq!(Service::FastSpindle.words(), "fast spindle");
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "kebab-case"))]
#[non_exhaustive]
pub enum Service {
    /// A ground spindle under 500 ft/min.
    Spindle,
    /// The same above it.
    FastSpindle,
    /// An electric motor and the like.
    Motor,
    /// A turned shaft that goes on turning.
    #[default]
    General,
    /// Farm and hand machines.
    Rough,
    /// A greased pin that rocks under load.
    Pivot,
}

impl Service {
    /// Every service.
    pub const ALL: [Self; 6] =
        [Self::Spindle, Self::FastSpindle, Self::Motor, Self::General, Self::Rough, Self::Pivot];

    /// In words.
    pub const fn words(self) -> &'static str {
        match self {
            Self::Spindle => "spindle",
            Self::FastSpindle => "fast spindle",
            Self::Motor => "motor",
            Self::General => "general",
            Self::Rough => "rough",
            Self::Pivot => "pivot",
        }
    }

    /// The service that a word means.
    ///
    /// # Errors
    /// No such word; the advice offers the nearest.
    ///
    /// ```
    /// use fits_core::shop::bushing::{Bush, Running, Service};
    /// let service = Service::named("spindle")?;
    /// let wanted = Running::wanted(Bush::Bronze, Some(service), "20mm".parse()?)?;
    /// assert!(wanted.clearance.lower().is_positive());
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn named(text: &str) -> Result<Self, Error> {
        let wanted = plain(text);
        Self::ALL.into_iter().find(|service| service.words() == wanted).ok_or_else(|| {
            let all = Self::ALL.map(Self::words);
            Error::not_listed(
                say!("no service is called {}", text.trim()),
                nearest(&wanted, all.into_iter()).map_or_else(
                    || format!("those known: {}", all.join(", ")),
                    |word| format!("nearest: {word}"),
                ),
            )
        })
    }
}

/// A running clearance and where it comes from.
#[derive(Clone, Debug)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct Running {
    /// Least and greatest.
    pub clearance: Limits,
    /// Why.
    pub reason: Reason,
}

impl Running {
    /// What this kind of bushing wants at a shaft in a service.
    ///
    /// Solid bronze goes by the service's table, in a straight line between
    /// its diameters; below the smallest that one holds. Porous bronze does so
    /// where a service is named, and by the bore where none is; plastic goes
    /// by the bore alone.
    ///
    /// ```
    /// use fits_core::shop::bushing::{Bush, Running, Service};
    /// let inch = "1in".parse()?;
    /// let found = Running::wanted(Bush::Bronze, None, inch)?;
    /// assert_eq!(found.clearance.lower(), "1.5 thou".parse()?);
    /// let found = Running::wanted(Bush::Plastic, None, inch)?;
    /// assert_eq!(found.clearance.upper(), "6 thou".parse()?);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    ///
    /// # Errors
    /// The table ends below this diameter, or the kind has a clearance of its
    /// own by its listed sizes ([`Bush::Lined`]).
    pub fn wanted(kind: Bush, service: Option<Service>, shaft: Length) -> Result<Self, Error> {
        match (kind, service) {
            (Bush::Bronze, service) => by_service(service.unwrap_or_default(), shaft),
            (Bush::Sintered, Some(service)) => by_service(service, shaft),
            (Bush::Sintered | Bush::Plastic, _) => by_bore(kind, shaft),
            (Bush::Lined, _) => Err(Error::not_listed(
                "a lined bushing's clearance goes by its listed size".to_owned(),
                "give the clearance wanted, as running 0.02..0.08",
            )),
        }
    }
}

fn by_service(service: Service, shaft: Length) -> Result<Running, Error> {
    let rows = || RUNNING.iter().filter(|row| row.service == service);
    let above = rows().find(|row| row.diameter >= shaft);
    let below = rows().take_while(|row| row.diameter <= shaft).last();
    let Some(above) = above else {
        let end = rows().next_back().map_or(String::new(), |row| inches(row.diameter));
        return Err(Error::not_listed(
            say!("the table of running clearances ends at {} in for {}", end, service.words()),
            "give the clearance wanted, as running 0.05..0.1",
        ));
    };
    let below = below.unwrap_or(above);
    let between = |low: Length, high: Length| -> Result<Length, Error> {
        let run = above.diameter.checked_sub(below.diameter)?.tenth_nanometres();
        if run == 0 {
            return Ok(high);
        }
        let part = shaft.checked_sub(below.diameter)?.tenth_nanometres();
        low.checked_add(high.checked_sub(low)?.checked_scale(part.into(), run.into())?)
    };
    let clearance =
        Limits::new(between(below.least, above.least)?, between(below.most, above.most)?)?
            .known_as(below.from.known.worst(above.from.known));
    Ok(Running {
        reason: Reason {
            figure: format!("running clearance, {}", service.words()),
            value: say!("{} to {}", clearance.lower(), clearance.upper()),
            rule: format!(
                "between the rows of {} in and {} in",
                inches(below.diameter),
                inches(above.diameter)
            )
            .into(),
            source: above.from.text.to_owned(),
            known: clearance.known(),
        },
        clearance,
    })
}

fn by_bore(kind: Bush, shaft: Length) -> Result<Running, Error> {
    let thou = |figure: &str| kind.number(figure).unwrap_or(0.0);
    let one = |rate: &str, least: &str| -> Result<Length, Error> {
        let by_size = thou(rate) * shaft.millimetres() / 25.4;
        millimetres(by_size.max(thou(least)) * 0.0254)
    };
    let clearance = Limits::new(
        one("least_per_inch_thou", "least_thou")?,
        one("most_per_inch_thou", "most_thou")?,
    )?;
    let from = KINDS.iter().find(|row| row.kind == kind && row.figure == "least_per_inch_thou");
    let Some(from) = from else {
        return Err(Error::not_listed(
            "this kind of bushing has no clearance by its bore".to_owned(),
            "give the clearance wanted, as running 0.05..0.1",
        ));
    };
    Ok(Running {
        reason: Reason {
            figure: format!("running clearance, {} bushing", kind.words()),
            value: say!("{} to {}", clearance.lower(), clearance.upper()),
            rule: format!(
                "{} to {} thou an inch of bore, never under {} and {} thou; {}",
                thou("least_per_inch_thou"),
                thou("most_per_inch_thou"),
                thou("least_thou"),
                thou("most_thou"),
                from.note
            )
            .into(),
            source: from.from.text.to_owned(),
            known: from.from.known,
        },
        clearance: clearance.known_as(from.from.known),
    })
}
