//! A part as it is bought, by its name and size.

use super::mates::{BY_LOAD, is_nominal, name_one, thought_in};
use crate::{
    problem::Problem,
    query::{Size, Spot, Units},
    questions::part::resolve::from_core,
    session::Session,
};
use fits_core::{Length, shop::words::Word, size::Unit, standards::bought};

impl Session {
    /// The bought-in part of a name and a nominal size.
    ///
    /// A size that its standard does not list was measured, most likely: the
    /// limits of a class about it would be those of another part.
    pub(crate) fn bought(
        &self,
        name: &Spot<String>,
        size: &Size,
        nominal: Length,
    ) -> Result<bought::BoughtPart, Problem> {
        let in_inches = thought_in(size, self.units) == Units::Inches;
        let families = bought::Family::all_called(&name.value);
        let listed = families.iter().any(|family| family.sizes().any(|size| size == nominal));
        // No standard for inch bushings was read: their sizes are listed singly.
        let is_inch_bush = in_inches && name.value.contains("bush");
        // No bought part is so large; its refusal names the sizes there are.
        let too_large = nominal > Length::from_tenth_nanometres(4_000_000_000);
        let known = listed || too_large || is_nominal(nominal, in_inches) && !is_inch_bush;
        let Some(kind) = families.first().map(|family| family.feature()).filter(|_| !known) else {
            return self.bought_of_any_size(name, size, nominal);
        };
        let typed = crate::questions::why::answered::said(self.shown, nominal);
        let problem = Problem::new(
            format!("{typed} is not listed as the size of a {}: was it measured?", name.value),
            size.at.clone(),
        );
        if name.value.contains("bearing") {
            // As a plain shaft a word's press would be offered for it.
            return Err(problem.advise(BY_LOAD));
        }
        Err(problem
            .advise(format!("then give it as the {kind} in hand, as `{kind} {typed}, press`")))
    }

    fn bought_of_any_size(
        &self,
        name: &Spot<String>,
        size: &Size,
        nominal: Length,
    ) -> Result<bought::BoughtPart, Problem> {
        // A size in inches means the inch one of two families that share a word.
        let (unit, system) = match thought_in(size, self.units) {
            Units::Inches => (Unit::Inch, "inch "),
            Units::Millimetres => (Unit::Millimetre, "metric "),
        };
        let found = bought::BoughtPart::find_in(&name.value, nominal, unit).or_else(|error| {
            let mut same = error.choices().iter().filter(|choice| choice.starts_with(system));
            match (same.next(), same.next()) {
                (Some(only), None) => bought::BoughtPart::find(only, nominal),
                _ => Err(error),
            }
        });
        found.map_err(|error| {
            let at = if error.is_not_listed() && !bought::Family::all_called(&name.value).is_empty()
            {
                size.at.clone()
            } else {
                name.at.clone()
            };
            let problem = from_core(&error, at);
            if Word::named(&name.value).is_some() {
                // `slip 20`: the size comes first.
                return problem
                    .advise(format!("the size comes before the word, as `20 {}`", name.value));
            }
            let problem = name_one(problem, &error, name);
            // The query offered is of the system that the size is thought in.
            match error.choices().iter().find(|choice| choice.starts_with(system)) {
                Some(own) => problem.fix(name.at.clone(), own.clone()),
                None => problem,
            }
        })
    }
}
