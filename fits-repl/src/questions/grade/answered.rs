//! Standard tolerances, answered.

use fits_core::{
    source::{Known, Reason},
    standards::{b41, iso286},
};
use schemars::JsonSchema;
use serde::Serialize;

use crate::{
    answer::{Answer, Mm},
    problem::Problem,
    query::{Size, Spot, Units},
    questions::part::resolve::from_core,
    session::Session,
};

impl Session {
    /// A standard tolerance: of ASME B4.1 for a size in inches, of ISO 286-1
    /// for one in millimetres.
    pub(crate) fn grade(&self, size: &Size, text: &Spot<String>) -> Result<Answer, Problem> {
        let nominal = self.nominal(size)?;
        let at_fault = |error: &fits_core::Error| {
            if error.is_out_of_table() { size.at.clone() } else { text.at.clone() }
        };
        let number = text.value.trim_start_matches(|c: char| c.is_ascii_alphabetic());
        if self.shown == Units::Inches && number.len() == text.value.len() {
            let failed = |error: fits_core::Error| {
                from_core(&error, at_fault(&error)).advise(
                    "B4.1 has grades 4 to 13, as `3/4in grade 8`; `3/4in grade IT8` is ISO's",
                )
            };
            let grade: u8 = number.parse().map_err(|_| {
                Problem::new(format!("there is no grade {}", text.value), text.at.clone())
                    .advise("as in `3/4in grade 8`")
            })?;
            let tolerance = b41::grade_tolerance(grade, nominal).map_err(failed)?;
            let reason = b41::grade_reason(grade, nominal).map_err(failed)?;
            return Ok(Answer::Grade(GradeAnswer {
                nominal_mm: Mm(nominal),
                grade: grade.to_string(),
                tolerance_mm: Mm(tolerance),
                source: reason.source.clone(),
                known: reason.known,
                reason,
            }));
        }
        let failed = |error: fits_core::Error| from_core(&error, at_fault(&error));
        let grade: iso286::Grade = number
            .parse()
            .map_err(|error: fits_core::Error| failed(error).fix(text.at.clone(), "7"))?;
        let tolerance = iso286::standard_tolerance(grade, nominal).map_err(failed)?;
        let reason = grade.reason(nominal).map_err(failed)?;
        Ok(Answer::Grade(GradeAnswer {
            nominal_mm: Mm(nominal),
            grade: format!("IT{grade}"),
            tolerance_mm: Mm(tolerance),
            source: reason.source.clone(),
            known: reason.known,
            reason,
        }))
    }
}

/// A standard tolerance: an IT grade, or a grade of ASME B4.1 for a size in
/// inches.
#[derive(Clone, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
pub struct GradeAnswer {
    /// The nominal size.
    pub nominal_mm: Mm,
    /// The grade: `IT7`, or `7` of ASME B4.1.
    pub grade: String,
    /// The tolerance.
    pub tolerance_mm: Mm,
    /// The standard and its table.
    pub source: String,
    /// How it is known.
    pub known: Known,
    /// Why it is what it is.
    #[serde(skip)]
    pub reason: Reason,
}
