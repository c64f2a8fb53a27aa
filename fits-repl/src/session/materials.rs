//! What work is made of: the crib's materials, the tables', and the setting.

use std::borrow::Cow;

use fits_core::{
    job::OwnMaterial,
    standards::{
        iso286::Feature,
        materials::{Family, Figures, Material},
    },
};
use uom::si::{
    f64::{Pressure, TemperatureCoefficient},
    pressure::{gigapascal, megapascal},
    temperature_coefficient::per_kelvin,
};

use crate::{
    problem::Problem,
    query::{Part, Spot},
    questions::part::resolve::from_core,
    session::Session,
    words::near_miss,
};

impl Session {
    fn own(&self, name: &str) -> Option<&OwnMaterial> {
        self.shop.crib().material.iter().find(|own| own.name.eq_ignore_ascii_case(name))
    }

    /// A material of the crib by its name.
    fn own_material(&self, name: &Spot<String>) -> Result<Option<Material>, Problem> {
        let Some(own) = self.own(&name.value) else { return Ok(None) };
        let Some(modulus) = own.modulus_gpa else {
            return Err(Problem::new(
                format!("the crib has no modulus of {}", own.name),
                name.at.clone(),
            )
            .advise(
                "take it out and add it with one, as `crib add material odd bronze modulus 105GPa`",
            ));
        };
        // As for any metal that nothing else is known of.
        let poisson = own.poisson.unwrap_or(0.3);
        let mut figures = Figures::elastic(Pressure::new::<gigapascal>(modulus), poisson);
        figures.expansion =
            own.expansion_um_per_m_k.map(|it| TemperatureCoefficient::new::<per_kelvin>(it * 1e-6));
        figures.yield_strength = own.yield_mpa.map(Pressure::new::<megapascal>);
        Material::custom(&own.name, figures)
            .map(Some)
            .map_err(|error| from_core(&error, name.at.clone()))
    }

    /// A material of the tables; the nearest name of them or of the crib is
    /// offered.
    fn listed_material(&self, name: &Spot<String>) -> Result<&'static Material, Problem> {
        Material::find(&name.value).map_err(|error| {
            let mut own = self.shop.crib().material.iter().map(|own| own.name.as_str());
            match own.find(|own| near_miss(&name.value.to_lowercase(), &own.to_lowercase())) {
                Some(own) => from_core(&error, name.at.clone())
                    .advise("nearest in the crib")
                    .fix(name.at.clone(), own),
                None => nearest(&error, name),
            }
        })
    }

    /// A material of the crib or of the tables.
    pub(crate) fn material_named(
        &self,
        name: &Spot<String>,
    ) -> Result<Cow<'static, Material>, Problem> {
        match self.own_material(name)? {
            Some(own) => Ok(Cow::Owned(own)),
            None => self.listed_material(name).map(Cow::Borrowed),
        }
    }

    /// Its name alone, and what it belongs to.
    pub(crate) fn material_kind(&self, name: &Spot<String>) -> Result<(String, Family), Problem> {
        match self.own(&name.value) {
            Some(own) => Ok((own.name.clone(), Family::Other)),
            None => {
                self.listed_material(name).map(|found| (found.name().to_owned(), found.family()))
            }
        }
    }

    /// The setting's material, where there is one.
    pub(crate) fn usual_material(&self) -> Option<Spot<String>> {
        self.kept.material.clone().map(|value| Spot { value, at: 0..0 })
    }

    /// The material named; where none is the setting's, which is then said.
    pub(crate) fn made_of(
        &self,
        named: Option<&Spot<String>>,
        what: &str,
        assumed: &mut Vec<String>,
    ) -> Result<Option<Cow<'static, Material>>, Problem> {
        if let Some(name) = named {
            return self.material_named(name).map(Some);
        }
        let usual = self.usual_material().and_then(|name| self.material_named(&name).ok());
        assumed.extend(usual.as_ref().map(|usual| taken(what, usual.name())));
        Ok(usual)
    }

    /// What is cut, by its name and what it belongs to: as the query says, or
    /// the setting, which is then said.
    pub(crate) fn cut_of(
        &self,
        part: &Part,
        kind: Feature,
        assumed: &mut Vec<String>,
    ) -> Result<Option<(String, Family)>, Problem> {
        let (own, other) = match kind {
            Feature::Hole => (&part.hub, &part.shaft_material),
            Feature::Shaft => (&part.shaft_material, &part.hub),
        };
        match (own, other) {
            // Beside a word it may be what changes the word's class alone.
            (Some(name), _) if part.word.is_some() => Ok(self.material_kind(name).ok()),
            (Some(name), _) => self.material_kind(name).map(Some),
            (None, Some(name)) if part.word.is_none() => Err(Problem::new(
                format!("a {kind} is cut, and what the {} is of was said", kind.mate()),
                name.at.clone(),
            )
            .advise(match kind {
                Feature::Hole => "as in `bore 20 H7 from 19.6, hole cast iron`",
                Feature::Shaft => "as in `turn 20 g6 from 22, shaft brass`",
            })),
            _ => {
                let usual = self.usual_material();
                let found = usual.and_then(|name| self.material_kind(&name).ok());
                assumed.extend(found.as_ref().map(|(name, _)| taken(kind.word(), name)));
                Ok(found)
            }
        }
    }
}

fn taken(what: &str, name: &str) -> String {
    format!("{what} taken as {name}, the setting")
}

/// A name that no list holds, with the nearest one in its place.
pub(crate) fn nearest(error: &fits_core::Error, name: &Spot<String>) -> Problem {
    let problem = from_core(error, name.at.clone());
    match error.advice().strip_prefix("nearest: ") {
        Some(near) => problem.advise("nearest").fix(name.at.clone(), near),
        None => problem,
    }
}
