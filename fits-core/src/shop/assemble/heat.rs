//! Putting parts together by heat or cold: how hot, how cold, and both where
//! one is not enough.

use uom::si::{
    f64::{ThermodynamicTemperature, Time},
    mass_density::kilogram_per_cubic_meter,
    specific_heat_capacity::joule_per_kilogram_kelvin,
    temperature_coefficient::per_kelvin,
    thermodynamic_temperature::degree_celsius,
    time::second,
};

use super::{Joint, heat_table as table};
use crate::{
    error::Error,
    shop::Hazard,
    shop::celsius,
    size::Length,
    source::{Known, Provenance, Reason},
    speech::{Figure, say},
    standards::materials::{Care, Fume, Material, Property},
};

/// The temperature that sizes are given at (ISO 1), in degrees Celsius.
const ROOM: f64 = 20.0;
/// Steel melts here: a hotter answer is not one.
const MELTS: f64 = 1500.0;
/// Below what a freezer gives, cold burns and the coolants choke.
const BURNS: f64 = -25.0;
/// Parts that meet with less play stick half way: a thou, in round figures.
/// Common practice, no source.
const LEAST_PLAY: Length = Length::from_tenth_nanometres(250_000);
/// What still air and radiation take from a hot part, in watts per square
/// metre and kelvin: common practice, no source.
const COOLING: f64 = 20.0;

/// A row of the expansion of steel as it gets colder, in degrees Celsius and
/// millionths per kelvin.
#[derive(Debug)]
pub(super) struct Cold {
    pub(super) celsius: f64,
    pub(super) expansion: f64,
    pub(super) from: Provenance,
}

/// What parts are chilled in.
#[derive(Debug)]
pub(super) struct Coolant {
    pub(super) name: &'static str,
    pub(super) celsius: f64,
    pub(super) from: Provenance,
    pub(super) note: &'static str,
}

/// How a joint goes together by heat or cold.
///
/// Temperatures are those the parts must still have as they meet; the hub's
/// allows for what it loses on the way where a time was given.
///
/// ```
/// use fits_core::{Limits, shop::assemble::Joint, standards::materials::Material};
/// // 40H7/u6 in a hub of 80 mm (Shigley, 8th ed., Problem 3-66), 30 mm long.
/// let steel = Material::find("steel 4140")?;
/// let interference = Limits::new("0.035mm".parse()?, "0.076mm".parse()?)?;
/// let mut joint = Joint::new("40mm".parse()?, interference, "80mm".parse()?, steel, steel)?;
/// joint.length = Some("30mm".parse()?);
/// use fits_core::shop::assemble::Heat;
/// let heat = Heat::plan(&joint, None, None)?;
/// assert!(heat.hub_stands_it() && !heat.reasons().is_empty());
/// # Ok::<(), fits_core::Error>(())
/// ```
#[derive(Clone, Debug)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct Heat {
    /// The clearance wanted between the parts as they meet.
    pub clearance: Length,
    /// The interference and the clearance: what heat or cold must open.
    pub opens: Length,
    /// Heat the hub alone to this, taken out of the oven; none where its
    /// expansion is not known, and where it would melt first.
    pub hub_to: Option<ThermodynamicTemperature>,
    /// The most heat that both parts stand, where it is known of one: the
    /// shaft is as hot as the hub about it.
    pub heat_limit: Option<Bound>,
    /// Chill the shaft alone to this; none where no usual coolant is cold
    /// enough, or its expansion is not known.
    pub shaft_to: Option<ThermodynamicTemperature>,
    /// The most cold that both parts stand, where it is known of one.
    pub cold_limit: Option<Bound>,
    /// Where one is not enough, or not allowed: both.
    pub both: Option<Both>,
    /// What to be careful of.
    pub hazards: Vec<Hazard>,
    reasons: Vec<Reason>,
}

/// A temperature that both parts stand, and the part that stands no more.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct Bound {
    /// `hub` or `shaft`.
    pub part: &'static str,
    /// The temperature.
    pub at: ThermodynamicTemperature,
}

/// The shaft chilled in a coolant and the hub heated for the rest.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct Both {
    /// The coolant.
    pub coolant: &'static str,
    /// Its temperature.
    pub shaft_to: ThermodynamicTemperature,
    /// What the hub is heated to.
    pub hub_to: ThermodynamicTemperature,
}

impl Heat {
    /// How a joint of two goes together, for the clearance wanted between the
    /// parts as they meet (a thousandth of the diameter unless it is given)
    /// and the time the hub is out of the oven before they do.
    ///
    /// # Errors
    /// More than two parts, a clearance below 0, or a time that is no
    /// time.
    ///
    /// ```
    /// use fits_core::{Limits, shop::assemble::{Heat, Joint}, standards::materials::Material};
    /// use uom::si::thermodynamic_temperature::degree_celsius;
    /// // 0.002 in of interference and as much clearance on a 2 in steel hub.
    /// let steel = Material::find("steel")?;
    /// let two_thou = "2 thou".parse()?;
    /// let joint =
    ///     Joint::new("2in".parse()?, Limits::new(two_thou, two_thou)?, "4in".parse()?, steel, steel)?;
    /// let heat = Heat::plan(&joint, Some(two_thou), None)?;
    /// // A rise of 308 F by 6.5 millionths per F.
    /// let to = heat.hub_to.expect("known").get::<degree_celsius>();
    /// assert!((to - (20.0 + 308.0 / 1.8)).abs() < 1.0);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn plan(
        joint: &Joint,
        clearance: Option<Length>,
        out_of_the_oven: Option<Time>,
    ) -> Result<Self, Error> {
        if !joint.sleeves.is_empty() {
            return Err(Error::no_joint(
                "heat is worked out for one joint at a time",
                "ask for each joint by itself",
            ));
        }
        let usual = super::millimetres(joint.diameter.millimetres() / 1e3)?.max(LEAST_PLAY);
        let clearance = clearance.unwrap_or(usual);
        if clearance.is_negative() {
            return Err(Error::no_joint(
                say!("a clearance of {} does not let the parts together", clearance),
                "give the play wanted as they meet, as clearance 0.02",
            ));
        }
        let seconds = out_of_the_oven.map_or(0.0, |time| time.get::<second>());
        if !(0.0..=86_400.0).contains(&seconds) {
            return Err(Error::no_joint(
                say!("{} seconds is not a time between oven and press", seconds),
                "as within 30 s",
            ));
        }
        let opens = joint.interference.upper().max(Length::ZERO).checked_add(clearance)?;
        let strain = opens.millimetres() / joint.diameter.millimetres();
        let keeps = warmth_kept(joint, seconds);
        let heated = |strain: f64| {
            Some(ROOM + strain / expansion(&joint.hub)? / keeps?).filter(|to| *to < MELTS)
        };
        let heat_limit =
            bounds(joint, Material::heat_limit).min_by(|a, b| degrees(a).total_cmp(&degrees(b)));
        let cold_limit =
            bounds(joint, Material::cold_limit).max_by(|a, b| degrees(a).total_cmp(&degrees(b)));
        let hub_to = heated(strain);
        let coldest = table::COOLANTS.last().map_or(ROOM, |coolant| coolant.celsius);
        let lowest = cold_limit.map_or(coldest, |limit| degrees(&limit).max(coldest));
        let shaft_to = chilled(&joint.shaft, strain, lowest);
        let allowed = |to: &f64| heat_limit.is_none_or(|limit| *to <= degrees(&limit));
        let both = if hub_to.is_some_and(|to| allowed(&to)) {
            None
        } else {
            table::COOLANTS.iter().filter(|coolant| coolant.celsius >= lowest).find_map(|coolant| {
                let shrinks = shrink(&joint.shaft, coolant.celsius)?;
                let hub_to = heated((strain - shrinks).max(0.0)).filter(allowed)?;
                Some(Both {
                    coolant: coolant.name,
                    shaft_to: celsius(coolant.celsius),
                    hub_to: celsius(hub_to),
                })
            })
        };
        let mut heat = Self {
            clearance,
            opens,
            hub_to: hub_to.map(celsius),
            heat_limit,
            shaft_to: shaft_to.map(celsius),
            cold_limit,
            both,
            hazards: vec![Hazard::Heating],
            reasons: Vec::new(),
        };
        for part in [&joint.hub, &joint.shaft] {
            let limit = part.heat_limit().map(|limit| limit.get::<degree_celsius>());
            let over = limit.is_some_and(|limit| hub_to.is_none_or(|to| to > limit));
            let fume = part.fume().filter(|_| over).map(fumes);
            for hazard in part.care().and_then(near_heat).into_iter().chain(fume) {
                if !heat.hazards.contains(&hazard) {
                    heat.hazards.push(hazard);
                }
            }
        }
        let coldest =
            shaft_to.into_iter().chain(heat.both.map(|both| both.shaft_to.get::<degree_celsius>()));
        if coldest.fold(ROOM, f64::min) < BURNS {
            heat.hazards.push(Hazard::Cold);
        }
        heat.reasons = heat.explained(joint, seconds, keeps);
        Ok(heat)
    }

    /// Do both parts stand the heat that the hub needs alone?
    pub fn hub_stands_it(&self) -> bool {
        self.hub_to.is_some_and(|to| {
            self.heat_limit.is_none_or(|limit| to.get::<degree_celsius>() <= degrees(&limit))
        })
    }

    /// Where the temperatures come from.
    pub fn reasons(&self) -> &[Reason] {
        &self.reasons
    }

    fn explained(&self, joint: &Joint, seconds: f64, keeps: Option<f64>) -> Vec<Reason> {
        let mut found = vec![Reason {
            figure: "clearance as they meet".into(),
            value: say!("{}", self.clearance),
            rule: "a thousandth of the diameter, unless it is given".into(),
            source: Known::Practice.words().into(),
            known: Known::Practice,
        }];
        if let (Some(to), Some(alpha)) = (self.hub_to, expansion(&joint.hub)) {
            let kept = match keeps {
                Some(keeps) if seconds > 0.0 => format!(" / {keeps:.3} kept after {seconds} s"),
                _ => String::new(),
            };
            found.push(Reason {
                figure: "hub alone to".into(),
                value: say!("{}", Figure::Celsius(to.get::<degree_celsius>())),
                rule: say!(
                    "{} + {} / ({} x {}){}",
                    Figure::Either(["20", "68"].map(str::to_owned)),
                    self.opens,
                    Figure::Millionths(libm::round(alpha * 1e7) / 10.0),
                    joint.diameter,
                    kept
                ),
                source: "linear expansion".into(),
                known: Known::Formula,
            });
        }
        for (figure, limit, property) in [
            ("heat limit", self.heat_limit, Property::HeatLimit),
            ("cold limit", self.cold_limit, Property::ColdLimit),
        ] {
            let of = limit.map(|limit| if limit.part == "hub" { &joint.hub } else { &joint.shaft });
            let reason = of.and_then(|material| material.reason(property));
            found.extend(reason.map(|reason| Reason {
                figure: format!(
                    "{figure} of both parts, by the {}",
                    limit.map_or("", |it| it.part)
                ),
                ..reason
            }));
        }
        if let Some(to) = self.shaft_to {
            let from = table::STEEL.first().map_or("", |row| row.from.text);
            found.push(Reason {
                figure: "shaft alone to".into(),
                value: say!("{}", Figure::Celsius(to.get::<degree_celsius>())),
                rule: "steel's expansion summed as it falls with cold; other materials by the same fall".into(),
                source: from.into(),
                known: Known::Formula,
            });
        }
        let coolant = self
            .both
            .and_then(|both| table::COOLANTS.iter().find(|coolant| coolant.name == both.coolant));
        if let Some(coolant) = coolant {
            found.push(Reason {
                figure: coolant.name.into(),
                value: say!("{}", Figure::Celsius(coolant.celsius)),
                rule: coolant.note.into(),
                source: coolant.from.text.into(),
                known: coolant.from.known,
            });
        }
        found
    }
}

/// The expansion of a material, per kelvin.
fn expansion(material: &Material) -> Option<f64> {
    material.expansion().map(|it| it.get::<per_kelvin>()).filter(|it| *it > 0.0)
}

/// What each part whose limit is known stands.
fn bounds(
    joint: &Joint,
    limit: impl Fn(&Material) -> Option<ThermodynamicTemperature>,
) -> impl Iterator<Item = Bound> {
    [("hub", &joint.hub), ("shaft", &joint.shaft)]
        .into_iter()
        .filter_map(move |(part, of)| limit(of).map(|at| Bound { part, at }))
}

fn degrees(bound: &Bound) -> f64 {
    bound.at.get::<degree_celsius>()
}

const fn fumes(fume: Fume) -> Hazard {
    match fume {
        Fume::Lead => Hazard::Lead,
        Fume::Plastic => Hazard::PlasticFume,
    }
}

const fn near_heat(care: Care) -> Option<Hazard> {
    match care {
        Care::Brittle => None,
        Care::Temper => Some(Hazard::Temper),
        Care::Zinc => Some(Hazard::Zinc),
        Care::Oil => Some(Hazard::OilSmoke),
        Care::Magnesium => Some(Hazard::Magnesium),
        Care::Plastic => Some(Hazard::Softening),
        Care::Seals => Some(Hazard::Seals),
    }
}

/// How much a material shrinks from room temperature, as a share of its size.
fn shrink(material: &Material, to: f64) -> Option<f64> {
    Some(expansion(material)? * fallen(to))
}

/// Kelvins at the expansion of room temperature that do what cooling to a
/// temperature does: steel's expansion falls as it gets colder.
fn fallen(to: f64) -> f64 {
    let at = |celsius: f64| {
        table::STEEL
            .windows(2)
            .find_map(|pair| match pair {
                [low, high] if celsius <= high.celsius => {
                    let share = (celsius - low.celsius) / (high.celsius - low.celsius);
                    Some(low.expansion + share * (high.expansion - low.expansion))
                }
                _ => None,
            })
            .unwrap_or(0.0)
    };
    let room = at(ROOM);
    let inner = table::STEEL.iter().map(|row| row.celsius).filter(|row| *row > to && *row < ROOM);
    let mut sum = 0.0;
    let mut before = to;
    for next in inner.chain([ROOM]) {
        sum += (next - before) * f64::midpoint(at(before), at(next));
        before = next;
    }
    if room > 0.0 { sum / room } else { 0.0 }
}

/// The temperature at which a material has shrunk by a share of its size.
fn chilled(material: &Material, strain: f64, lowest: f64) -> Option<f64> {
    if shrink(material, lowest)? < strain {
        return None;
    }
    let (mut cold, mut warm) = (lowest, ROOM);
    for _ in 0..40 {
        let middle = f64::midpoint(cold, warm);
        if shrink(material, middle)? < strain {
            warm = middle;
        } else {
            cold = middle;
        }
    }
    Some(cold)
}

/// The share of its warmth above the room that a hub keeps for a time.
fn warmth_kept(joint: &Joint, seconds: f64) -> Option<f64> {
    if seconds == 0.0 {
        return Some(1.0);
    }
    let density = joint.hub.density()?.get::<kilogram_per_cubic_meter>();
    let heat = joint.hub.specific_heat()?.get::<joule_per_kilogram_kelvin>();
    let (inner, outer) = (joint.diameter.millimetres() / 1e3, joint.outside.millimetres() / 1e3);
    // Without its length, a disc as thick as its wall.
    let long = joint.length.map_or((outer - inner) / 2.0, |length| length.millimetres() / 1e3);
    let section = core::f64::consts::FRAC_PI_4 * (outer * outer - inner * inner);
    let surface = core::f64::consts::PI * (outer + inner) * long + 2.0 * section;
    let time_constant = density * heat * section * long / (COOLING * surface);
    Some(libm::exp(-seconds / time_constant))
}
