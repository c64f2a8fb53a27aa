//! The limits of one feature: by a class, by deviations, from one size to another,
//! or as it measures.

use fits_core::{
    Deviations, Length, Limits,
    standards::iso286::{Class, Feature},
};

use crate::{
    problem::Problem,
    query::{ClassText, Expression, Size, Spot, Tolerance, Units},
    questions::part::{
        mates::is_inch,
        resolve::{One, class, from_core, undefined},
    },
    session::Session,
};

impl Session {
    /// The one feature that a size and its limits give.
    pub(crate) fn one(
        &self,
        size: &Size,
        nominal: Length,
        tolerance: &Tolerance,
        said: Option<&Spot<Feature>>,
    ) -> Result<One, Problem> {
        let kind = said.map(|spot| spot.value);
        match tolerance {
            Tolerance::Class(text) => {
                let class = class(text)?;
                if let Some(said) = said.filter(|said| said.value != class.feature) {
                    return Err(wrong_case(class, text, said));
                }
                let limits =
                    class.limits(nominal).map_err(|error| undefined(&error, size, text))?;
                Ok(One::of_class(class, nominal, limits))
            }
            Tolerance::Deviations(first, second) => {
                one_system(self.units, [size, first, second])?;
                let (a, b) = (self.length(first)?, self.length(second)?);
                // Both orders are written in shops: `+0.02/-0.01`, `-0.01/+0.02`.
                let limits = Deviations::new(a.min(b), a.max(b))
                    .and_then(|deviations| deviations.about(nominal))
                    .map_err(|error| from_core(&error, first.at.clone()))?;
                positive(limits, size)?;
                Ok(One::given(kind, nominal, limits, "deviations"))
            }
            Tolerance::Either(by) => {
                one_system(self.units, [size, by, by])?;
                let either = self.length(by)?;
                if either.is_negative() {
                    return Err(Problem::new(
                        "a tolerance either way has no sign of its own",
                        by.at.clone(),
                    )
                    .advise("as in `hole 20 ±0.02`"));
                }
                let limits = either
                    .checked_neg()
                    .and_then(|lower| Deviations::new(lower, either))
                    .and_then(|deviations| deviations.about(nominal))
                    .map_err(|error| from_core(&error, by.at.clone()))?;
                positive(limits, size)?;
                Ok(One::given(kind, nominal, limits, "deviations"))
            }
            Tolerance::UpTo(upper) => {
                one_system(self.units, [size, upper, upper])?;
                let limits = Limits::new(nominal, self.length(upper)?).map_err(|error| {
                    from_core(&error, size.at.start..upper.at.end)
                        .advise("the smaller limit comes first, as in `hole 20.00..20.02`")
                })?;
                positive(limits, size)?;
                Ok(One::given(kind, limits.middle(), limits, "limits"))
            }
            Tolerance::Bare => {
                let limits = Limits::new(nominal, nominal)
                    .map_err(|error| from_core(&error, size.at.clone()))?;
                positive(limits, size)?;
                Ok(One { have: true, ..One::given(kind, nominal, limits, "in hand") })
            }
            // A pair is resolved by its own branch.
            Tolerance::Pair(hole, _) => Err(Problem::new("one feature was expected", hole.at())
                .advise("as in `hole 20mm H7, shaft 19.98mm..19.99mm`")),
        }
    }
}

fn wrong_case(class: Class, text: &ClassText, said: &Spot<Feature>) -> Problem {
    let message = format!("{class} is a {}'s class, and {} was said", class.feature, said.value);
    Problem::new(message, text.at())
        .advise(match said.value {
            Feature::Hole => "the hole takes the capital",
            Feature::Shaft => "the shaft takes the small letter",
        })
        .fix(text.at(), class.mirrored().to_string())
        .or_else_fix(said.at.clone(), class.feature.to_string())
}

fn positive(limits: Limits, size: &Size) -> Result<(), Problem> {
    if limits.lower().is_positive() {
        return Ok(());
    }
    let message = format!("the lower limit is {}: nothing is left of the part", limits.lower());
    Err(Problem::new(message, size.at.clone()).advise("as in `hole 20 +0.02/-0.01`"))
}

/// Refuses one feature given partly in inches and partly in millimetres: the
/// slip that makes a thou of a hundredth.
fn one_system(in_force: Units, sizes: [&Size; 3]) -> Result<(), Problem> {
    let mut first: Option<(bool, &Size)> = None;
    for size in sizes {
        // Nought is the same in both.
        let is_nought =
            matches!(size.value, Expression::Number(number, None) if number.ratio().0 == 0);
        if is_nought || matches!(size.value, Expression::Gauge(_)) {
            continue;
        }
        let inch = is_inch(&size.value).unwrap_or(in_force == Units::Inches);
        match first {
            None => first = Some((inch, size)),
            Some((before, other)) if before != inch => {
                return Err(Problem::new(
                    "inches and millimetres are mixed in one feature",
                    size.at.start.max(other.at.start)..size.at.end.max(other.at.end),
                )
                .advise("give it in one, as `hole 0.7500in..0.7505in` or `hole 20.00..20.02`"));
            }
            Some(_) => {}
        }
    }
    Ok(())
}
