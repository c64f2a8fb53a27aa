//! What is pressed where: the bushing, its housing and their limits.

use super::{EXAMPLE, nominal_text, one_class};
use crate::{
    problem::Problem,
    query::{BushingText, Size, Spot, Tolerance},
    questions::{
        part::resolve::{One, from_core},
        why::answered::said,
    },
    session::Session,
};
use fits_core::{
    Length,
    shop::bushing::{Bush, Bushing},
    source::Reason,
    standards::{
        iso286::{Class, Feature},
        materials::Material,
    },
};
use std::borrow::Cow;

/// What is pressed where, resolved.
#[derive(Clone, Debug)]
pub(crate) struct Found {
    pub(super) kind: Bush,
    pub(super) bore: One,
    pub(super) outside: One,
    pub(super) housing: One,
    pub(super) hub_outside: Length,
    pub(super) material: Cow<'static, Material>,
    pub(super) hub: Cow<'static, Material>,
    pub(super) length: Length,
    /// It is judged at another temperature too.
    pub(super) is_warm: bool,
    pub(super) reasons: Vec<Reason>,
    pub(super) notes: Vec<String>,
}

impl Found {
    pub(super) fn bushing(&self) -> Bushing<'_> {
        Bushing {
            bore: self.bore.limits,
            outside: self.outside.limits,
            material: &self.material,
            housing: self.housing.limits,
            housing_outside: self.hub_outside,
            hub: &self.hub,
            length: self.length,
        }
    }
}

impl Session {
    pub(super) fn found(&self, text: &BushingText, nominal: Length) -> Result<Found, Problem> {
        let end = text.bore.0.at.end..text.bore.0.at.end;
        let Some((od, od_tolerance)) = &text.od else {
            return Err(Problem::new("the bushing's outside is missing", end).advise(EXAMPLE));
        };
        let outside = self.nominal(od)?;
        for (size, tolerance, length) in
            [(od, od_tolerance, outside), (&text.bore.0, &text.bore.1, nominal)]
        {
            // Limits of its own say what it measures.
            if matches!(tolerance, Tolerance::Bare | Tolerance::Class(_)) {
                self.is_round(size, length)?;
            }
        }
        let last = [
            text.hub.as_ref().map(|spot| spot.at.end),
            text.hub_od.as_ref().map(|size| size.at.end),
            text.long.as_ref().map(|size| size.at.end),
            Some(od.at.end),
        ];
        let last = last.into_iter().flatten().max().unwrap_or(end.end);
        let missing = |what: &str, fix: &str| {
            Problem::new(what, last..last).advise("say it").fix(last..last, fix)
        };
        let mut notes = Vec::new();
        let housed_in = self.made_of(text.hub.as_ref(), "housing", &mut notes)?;
        let Some(named) = &text.material else {
            return Err(missing("what is the bushing made of?", ", bronze"));
        };
        let made_of = self.material_named(named)?;
        let Some(hub) = housed_in else {
            return Err(missing("what is the housing made of?", ", hub steel"));
        };
        let Some(long) = &text.long else {
            return Err(missing(
                "how long is the bushing?",
                &format!(" long {}", nominal_text(od)),
            ));
        };
        let length = self.nominal(long)?;
        let kind = Bush::of(&made_of);
        let hub_outside = if let Some(size) = &text.hub_od {
            self.nominal(size)?
        } else {
            notes.push("the housing is taken as twice as large as the bushing".to_owned());
            outside.checked_mul(2).map_err(|error| from_core(&error, od.at.clone()))?
        };
        let made = kind.made(nominal, outside).map_err(|error| {
            let at = if error.is_out_of_table() { text.bore.0.at.clone() } else { od.at.clone() };
            from_core(&error, at).advise(EXAMPLE)
        })?;
        let surface = |size: &Size, tolerance: &Tolerance, kind, limits, name| {
            if matches!(tolerance, Tolerance::Bare) {
                let nominal = self.nominal(size)?;
                return Ok(One::given(Some(kind), nominal, limits, name));
            }
            one_class(tolerance)?;
            let said = Spot { value: kind, at: size.at.clone() };
            self.one(size, self.nominal(size)?, tolerance, Some(&said))
        };
        let as_bought = if kind == Bush::Plastic { "as turned" } else { "as bought" };
        let bore = surface(&text.bore.0, &text.bore.1, Feature::Hole, made.bore, as_bought)?;
        let outside_one = surface(od, od_tolerance, Feature::Shaft, made.outside, as_bought)?;
        let housing = self.housing(text, od, outside)?;
        Ok(Found {
            kind,
            bore,
            outside: outside_one,
            housing,
            hub_outside,
            material: made_of,
            hub,
            length,
            is_warm: text.warm.is_some(),
            reasons: made.reasons,
            notes,
        })
    }

    /// Refuses an outside or a bore that is not a nominal size: limits of a class
    /// about it would be those of another part.
    fn is_round(&self, od: &Size, outside: Length) -> Result<(), Problem> {
        let count = outside.tenth_nanometres();
        let is_of = |step: i64| count % step == 0;
        // 64ths and hundredths of an inch, tenths of a millimetre.
        let inch = Length::INCH.tenth_nanometres();
        if is_of(inch / 64) || is_of(inch / 100) || is_of(1_000_000) {
            return Ok(());
        }
        let said = said(self.shown, outside);
        Err(Problem::new(format!("{said} is not a nominal size: was it measured?"), od.at.clone())
            .advise(format!(
                "give the nominal size here; the housing for a bushing in hand is asked as `shaft {said}, press`, the shaft for its bore as `hole {said}, running`"
            )))
    }

    /// The bore of the housing: H7 where nothing is said.
    pub(super) fn housing(
        &self,
        text: &BushingText,
        od: &Size,
        outside: Length,
    ) -> Result<One, Problem> {
        let Some((size, tolerance)) = &text.housing else {
            let failed = |error: fits_core::Error| from_core(&error, od.at.clone());
            let class: Class = "H7".parse().map_err(failed)?;
            let limits = class.limits(outside).map_err(failed)?;
            return Ok(One::of_class(class, outside, limits));
        };
        let size = size.as_ref().unwrap_or(od);
        one_class(tolerance)?;
        let said = Spot { value: Feature::Hole, at: size.at.clone() };
        self.one(size, self.nominal(size)?, tolerance, Some(&said))
    }
}
