//! What a bar or a tube weighs, answered.

use fits_core::{
    source::{Known, Reason},
    standards::materials::Property,
};
use schemars::JsonSchema;
use serde::Serialize;
use uom::si::mass_density::kilogram_per_cubic_meter;

use crate::{
    answer::Mm,
    problem::Problem,
    query::Size,
    questions::weight::{Section, WeightOf},
    session::Session,
};

/// What a piece of stock weighs.
#[derive(Clone, Debug, JsonSchema, Serialize)]
pub struct WeightAnswer {
    /// `round`, `square`, `hex`, `flat` or `tube`.
    pub section: &'static str,
    /// Its sizes: the diameter, side or size across flats; then the second side or the wall.
    pub sizes_mm: Vec<Mm>,
    /// Its length.
    pub long_mm: Mm,
    /// What it is made of.
    pub material: String,
    /// Its density, in kilograms per cubic metre.
    pub density_kg_m3: f64,
    /// What it weighs, in kilograms.
    pub weight_kg: f64,
    /// How the density is known.
    pub known: Known,
    /// Why it weighs so much.
    #[serde(skip)]
    pub reasons: Vec<Reason>,
}

impl Session {
    /// What a piece of stock weighs.
    pub(crate) fn weight(&self, of: &WeightOf) -> Result<WeightAnswer, Problem> {
        let metres = |size: &Size| -> Result<(f64, Mm), Problem> {
            let length = self.nominal(size)?;
            Ok((length.millimetres() / 1000.0, Mm(length)))
        };
        let material = self.material_named(&of.material)?;
        let density = material.density().ok_or_else(|| {
            Problem::new(
                format!("the density of {} is not known here", material.name()),
                of.material.at.clone(),
            )
            .advise("a material of the tables has one, as `weight 1in steel long 12in`")
        })?;
        let density = density.get::<kilogram_per_cubic_meter>();
        let (section, area, sizes_mm) = match &of.section {
            Section::Round(size) => {
                let (d, mm) = metres(size)?;
                ("round", std::f64::consts::FRAC_PI_4 * d * d, vec![mm])
            }
            Section::Square(size) => {
                let (side, mm) = metres(size)?;
                ("square", side * side, vec![mm])
            }
            Section::Hex(size) => {
                let (flats, mm) = metres(size)?;
                ("hex", 3_f64.sqrt() / 2.0 * flats * flats, vec![mm])
            }
            Section::Flat(first, second) => {
                let ((a, one), (b, two)) = (metres(first)?, metres(second)?);
                ("flat", a * b, vec![one, two])
            }
            Section::Tube(outside, wall) => {
                let ((od, one), (thick, two)) = (metres(outside)?, metres(wall)?);
                if 2.0 * thick >= od {
                    return Err(Problem::new(
                        "the wall leaves no bore in the tube",
                        wall.at.clone(),
                    )
                    .advise("outside first, as `weight tube 1in wall 0.05in aluminium long 9in`"));
                }
                ("tube", std::f64::consts::PI * thick * (od - thick), vec![one, two])
            }
        };
        let (long, long_mm) = metres(&of.long)?;
        let reason = material.reason(Property::Density);
        let known = reason.as_ref().map_or(Known::Given, |reason| reason.known);
        let geometry = Reason {
            figure: "weight".into(),
            value: "section x length x density".into(),
            rule: of.section.rule().into(),
            source: "geometry".into(),
            known: Known::Formula,
        };
        Ok(WeightAnswer {
            section,
            sizes_mm,
            long_mm,
            material: material.name().to_owned(),
            density_kg_m3: density,
            weight_kg: area * long * density,
            known,
            reasons: reason.into_iter().chain([geometry]).collect(),
        })
    }
}
