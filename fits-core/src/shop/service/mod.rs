//! Running clearance by service: piston, tube in tube, hinge, crank, roller and
//! slide, from `data/service/`; and printed plastics on metal pins (`printed`).

mod printed;
#[rustfmt::skip]
#[allow(clippy::unreadable_literal, reason = "generated")]
mod printed_table;
#[rustfmt::skip]
#[allow(clippy::unreadable_literal, reason = "generated")]
mod table;

pub use printed::{Printed, PrintedGrip};

use uom::si::temperature_coefficient::per_kelvin;

use self::table::CLEARANCES;
use super::cooling::REFERENCE_C;
use crate::{
    error::{Error, Kind},
    size::{Length, Limits},
    source::{Known, Provenance, Reason},
    speech::{Figure, say},
    standards::materials::{Material, Property},
};

#[derive(Debug)]
struct Row {
    head: &'static str,
    kind: &'static str,
    /// Inner over outer family, or empty for any.
    pair: &'static str,
    least_a: f64,
    least_b: f64,
    most_a: f64,
    most_b: f64,
    from: Provenance,
    note: &'static str,
    /// The sizes that the source speaks of.
    starts: Length,
    to: Length,
}

/// What runs in what.
#[derive(Clone, Copy, Debug)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct Asked<'a> {
    /// `piston`, `tube`, `hinge`, `crank`, `roller` or `slide`.
    pub service: &'a str,
    /// Which kind of it: `ringed`, `lapped`, `soft ring`, `rough`, `thin`, `gib`; plain where none.
    pub kind: &'a str,
    /// The size that both share.
    pub size: Length,
    /// What the inner part is made of.
    pub inner: Option<&'a Material>,
    /// What the outer part is made of.
    pub outer: Option<&'a Material>,
    /// How hot it works in degrees Celsius.
    pub celsius: Option<f64>,
}

/// The clearance to machine at 20 °C.
#[derive(Clone, Debug)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct RunningFit {
    /// The clearance to machine, on the diameter.
    pub clearance: Limits,
    /// What the rule for the service and the pair says by itself.
    pub rule: Limits,
    /// The clearance when both are hot, and when the inner one is hot in a cold outer
    /// one; none where nothing is said of heat.
    pub hot: Option<Limits>,
    /// The same with the outer one still cold.
    pub starting: Option<Limits>,
    /// The size is outside those that the source speaks of.
    pub is_beyond: bool,
    /// What is to be known of it.
    pub note: &'static str,
    /// Where the figures come from.
    pub reasons: Vec<Reason>,
    /// How they are known: the worst of them.
    pub known: Known,
}

/// The services that are known.
///
/// ```
/// use fits_core::shop::service::services;
/// assert!(services().contains(&"piston"));
/// ```
pub fn services() -> Vec<&'static str> {
    let mut names: Vec<&'static str> = Vec::new();
    for row in &CLEARANCES {
        if !names.contains(&row.head) {
            names.push(row.head);
        }
    }
    names
}

/// The kinds of a service.
///
/// ```
/// use fits_core::shop::service::kinds;
/// assert_eq!(kinds("piston"), ["plain", "ringed", "lapped", "soft ring"]);
/// assert!(kinds("no such service").is_empty());
/// ```
pub fn kinds(service: &str) -> Vec<&'static str> {
    let mut names: Vec<&'static str> = Vec::new();
    for row in CLEARANCES.iter().filter(|row| row.head == service) {
        if !names.contains(&row.kind) {
            names.push(row.kind);
        }
    }
    names
}

impl Row {
    fn at(&self, size: Length) -> Result<Limits, Error> {
        let inches = size.millimetres() / 25.4;
        let thou = |a: f64, b: f64| Length::nearest_millimetres((a + b * inches) * 0.0254);
        let (least, most) = (thou(self.least_a, self.least_b)?, thou(self.most_a, self.most_b)?);
        Ok(Limits::new(least.min(most), most)?.known_as(self.from.known))
    }

    fn is_beyond(&self, size: Length) -> bool {
        size < self.starts || size > self.to
    }
}

impl<'a> Asked<'a> {
    /// A service of such a kind and size, cold, of parts that nothing is known of.
    ///
    /// ```
    /// use fits_core::shop::service::Asked;
    /// let asked = Asked::new("piston", "lapped", "1in".parse()?);
    /// assert_eq!((asked.inner, asked.outer, asked.celsius), (None, None, None));
    /// assert!(asked.runs()?.clearance.lower().is_positive());
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub const fn new(service: &'a str, kind: &'a str, size: Length) -> Self {
        Self { service, kind, size, inner: None, outer: None, celsius: None }
    }

    /// The clearance to machine.
    ///
    /// With a temperature the plain rule is widened by what the inner part grows in a
    /// cold outer one; of that and the rule for the pair the larger counts.
    ///
    /// # Errors
    /// No such service or kind, no size, or an expansion that is not known.
    ///
    /// ```
    /// use fits_core::{shop::service::{Asked, kinds, services}, standards::materials::Material};
    /// let mut piston = Asked::new("piston", "plain", "1in".parse()?);
    /// piston.inner = Some(Material::find("aluminium")?);
    /// piston.outer = Some(Material::find("cast iron")?);
    /// piston.celsius = Some(150.0);
    /// let runs = piston.runs()?;
    /// // The rule for aluminium in iron: 3 to 5 thou an inch; heat asks for no less.
    /// assert_eq!(runs.rule.lower(), "0.003in".parse()?);
    /// assert!(runs.clearance.lower() > runs.rule.lower());
    /// assert!(runs.starting.unwrap().lower().is_positive());
    /// assert!(services().contains(&"piston"));
    /// assert_eq!(kinds("piston"), ["plain", "ringed", "lapped", "soft ring"]);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn runs(&self) -> Result<RunningFit, Error> {
        if !self.size.is_positive() {
            return Err(Error::not_defined(say!("a size cannot be {}", self.size)));
        }
        let of_kind =
            || CLEARANCES.iter().filter(|row| row.head == self.service && row.kind == self.kind);
        if of_kind().next().is_none() {
            let kinds = kinds(self.service);
            return Err(Error::not_listed(
                say!("no clearance of a {} {} is known here", self.kind, self.service),
                if kinds.is_empty() {
                    format!("known are {}", services().join(", "))
                } else {
                    format!("of a {} are known: {}", self.service, kinds.join(", "))
                },
            ));
        }
        let pair = match (self.inner, self.outer) {
            (Some(inner), Some(outer)) => {
                format!("{}/{}", inner.family().words(), outer.family().words())
            }
            _ => String::new(),
        };
        let any = of_kind().find(|row| row.pair.is_empty()).or_else(|| of_kind().next());
        let own = of_kind().find(|row| !pair.is_empty() && row.pair == pair).or(any);
        let (Some(own), Some(any)) = (own, any) else {
            return Err(Error::new(Kind::OutOfRange));
        };
        let rule = own.at(self.size)?;
        let mut reasons = vec![reason(own, rule, self)];
        let mut known = own.from.known;
        let Some(celsius) = self.celsius else {
            return Ok(RunningFit {
                clearance: rule,
                rule,
                hot: None,
                starting: None,
                is_beyond: own.is_beyond(self.size),
                note: own.note,
                reasons,
                known,
            });
        };
        let warmer = celsius - REFERENCE_C;
        let mut grows = |material: Option<&Material>, part: &str| -> Result<Length, Error> {
            let material = material.ok_or_else(|| {
                Error::out_of_reach(
                    say!("how the {} grows is not known: what it is made of is not said", part),
                    "say both, as `piston 1in aluminium in cast iron at 150C`",
                )
            })?;
            let expansion = material.expansion().ok_or_else(|| {
                Error::out_of_reach(
                    say!("the expansion of {} is not known", material.name()),
                    "name a material of the tables",
                )
            })?;
            if let Some(reason) = material.reason(Property::Expansion) {
                known = known.worst(reason.known);
                reasons.push(reason);
            }
            Length::nearest_millimetres(
                self.size.millimetres() * expansion.get::<per_kelvin>() * warmer,
            )
        };
        let (inner, outer) = (grows(self.inner, "inner part")?, grows(self.outer, "outer part")?);
        // A hot inner part in a cold outer one, or chilled the other way about.
        let worst = inner.max(inner.checked_sub(outer)?);
        let base = any.at(self.size)?;
        let summed = [base.lower().checked_add(worst)?, base.upper().checked_add(worst)?];
        let clearance = Limits::new(rule.lower().max(summed[0]), rule.upper().max(summed[1]))?;
        let less = |by: Length| -> Result<Limits, Error> {
            Limits::new(clearance.lower().checked_sub(by)?, clearance.upper().checked_sub(by)?)
        };
        known = known.worst(any.from.known);
        reasons.push(Reason {
            figure: "growth".into(),
            value: format!("{inner} inside, {outer} outside").into(),
            rule: format!(
                "expansion x size x {warmer:.0} K; the outer part is taken as still cold"
            )
            .into(),
            source: "thermal expansion".into(),
            known: Known::Formula,
        });
        Ok(RunningFit {
            clearance: clearance.known_as(known),
            rule,
            hot: Some(less(inner.checked_sub(outer)?)?),
            starting: Some(less(inner)?),
            is_beyond: own.is_beyond(self.size),
            note: own.note,
            reasons,
            known,
        })
    }
}

fn reason(row: &Row, rule: Limits, asked: &Asked) -> Reason {
    let thou = |a: f64, b: f64| match (a, b) {
        (a, 0.0) => format!("{a} thou"),
        (0.0, b) => format!("{b} thou an inch"),
        (a, b) => format!("{a} thou and {b} an inch"),
    };
    Reason {
        figure: format!("clearance, {} {}", asked.kind, asked.service),
        value: format!(
            "{} to {}",
            Figure::Length(rule.lower()).said_in(crate::size::Unit::Millimetre),
            Figure::Length(rule.upper()).said_in(crate::size::Unit::Millimetre)
        )
        .into(),
        rule: format!(
            "{} to {}; {}",
            thou(row.least_a, row.least_b),
            thou(row.most_a, row.most_b),
            row.note
        )
        .into(),
        source: row.from.text.into(),
        known: row.from.known,
    }
}
