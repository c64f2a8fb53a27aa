//! Classes and pairs looked up, and the core's refusals put at their place.

use std::ops::Range;

use fits_core::{
    Fit, Length, Limits,
    size::Unit,
    standards::{
        iso286::{Class, Feature, Grade, Letter, grade_within},
        processes::Process,
    },
};

use crate::{
    answer::{FeatureAnswer, Mm},
    problem::Problem,
    query::{ClassText, Expression, Size},
};

/// One feature, resolved.
#[derive(Clone, Copy)]
pub(super) struct One {
    pub(super) kind: Option<Feature>,
    pub(super) nominal: Length,
    pub(super) limits: Limits,
    pub(super) class: Option<Class>,
    pub(super) how: Given,
}

/// How its limits were given.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum Given {
    Class,
    Deviations,
    Limits,
    Suited,
}

impl One {
    pub(super) fn answer(&self) -> FeatureAnswer {
        let grade = self
            .class
            .map(|class| class.grade)
            .or_else(|| grade_within(self.limits.tolerance(), self.nominal));
        let processes = match (grade, self.kind) {
            (Some(grade), Some(kind)) => Process::holding(grade, kind).map(Process::name).collect(),
            _ => Vec::new(),
        };
        FeatureAnswer {
            limits: self.limits,
            kind: self.kind,
            nominal_mm: Mm(self.nominal),
            class: match (self.class, self.how) {
                (Some(class), _) => class.to_string(),
                (None, Given::Suited) => "to suit".into(),
                (None, Given::Limits) => "limits".into(),
                (None, _) => "deviations".into(),
            },
            lower_mm: Mm(self.limits.lower()),
            upper_mm: Mm(self.limits.upper()),
            aim_mm: Mm(self.limits.middle()),
            source: match self.how {
                Given::Class => "ISO 286-1:2010 and ISO 286-2:2010",
                Given::Suited => "the fit's own clearance range about the measured mate",
                Given::Limits | Given::Deviations => "as given in the query",
            },
            grade: grade.map(|grade| format!("IT{grade}")),
            processes,
            ream: None,
            not_reamed: None,
            bore: None,
            turn: None,
            cautions: Vec::new(),
        }
    }
}

/// A pair of classes, resolved.
pub(super) struct Pair {
    pub(super) fit: Fit,
    pub(super) hole_class: Class,
    pub(super) shaft_class: Class,
}

impl Pair {
    pub(super) fn hole(&self) -> One {
        One {
            kind: Some(Feature::Hole),
            nominal: self.fit.nominal(),
            limits: self.fit.hole(),
            class: Some(self.hole_class),
            how: Given::Class,
        }
    }

    pub(super) fn shaft(&self) -> One {
        One {
            kind: Some(Feature::Shaft),
            nominal: self.fit.nominal(),
            limits: self.fit.shaft(),
            class: Some(self.shaft_class),
            how: Given::Class,
        }
    }
}

pub(super) fn pair(
    nominal: Length,
    size: &Size,
    hole: &ClassText,
    shaft: &ClassText,
) -> Result<Pair, Problem> {
    let (hole_class, shaft_class) = (class(hole)?, class(shaft)?);
    let whole = hole.at().start..shaft.at().end;
    match (hole_class.feature, shaft_class.feature) {
        (Feature::Hole, Feature::Shaft) => {}
        (Feature::Shaft, Feature::Hole) => {
            let (as_hole, as_shaft) = (hole_class.mirrored(), shaft_class.mirrored());
            return Err(Problem::new(
                format!("{hole_class} is a shaft's class, and the hole's comes first"),
                hole.at(),
            )
            .advise("the hole takes the capital")
            .fix(whole, format!("{as_hole}/{as_shaft}")));
        }
        (Feature::Hole, Feature::Hole) => {
            return Err(Problem::new(
                format!("{hole_class} and {shaft_class} are two holes"),
                shaft.at(),
            )
            .advise("the shaft takes the small letter")
            .fix(shaft.at(), shaft_class.mirrored().to_string()));
        }
        (Feature::Shaft, Feature::Shaft) => {
            return Err(Problem::new(
                format!("{hole_class} and {shaft_class} are two shafts"),
                hole.at(),
            )
            .advise("the hole takes the capital")
            .fix(hole.at(), hole_class.mirrored().to_string()));
        }
    }
    let fit = Fit::of_classes(nominal, hole_class, shaft_class).map_err(|error| {
        let at_fault = if hole_class.limits(nominal).is_err() {
            hole
        } else {
            shaft
        };
        undefined(&error, size, at_fault)
    })?;
    Ok(Pair {
        fit,
        hole_class,
        shaft_class,
    })
}

/// A class from its text: the letters, then the grade.
pub(super) fn class(text: &ClassText) -> Result<Class, Problem> {
    let letters = text.letters.value.as_str();
    let feature = if letters.starts_with(|c: char| c.is_ascii_uppercase()) {
        Feature::Hole
    } else {
        Feature::Shaft
    };
    let letter = Letter::named(letters, feature).map_err(|error| {
        let written_right = if feature == Feature::Hole {
            letters.to_ascii_uppercase()
        } else {
            letters.to_ascii_lowercase()
        };
        let nearest =
            Letter::named(&written_right, feature).unwrap_or_else(|_| Letter::nearest(letters));
        from_core(&error, text.letters.at.clone())
            .fix(text.letters.at.clone(), nearest.name(feature))
    })?;
    let grade: Grade = text
        .grade
        .value
        .parse()
        .map_err(|error: fits_core::Error| {
            let nearest = match text.grade.value.trim_start_matches('0').parse::<u32>() {
                Ok(number) if number > 18 => "18".to_owned(),
                Ok(number) => number.to_string(),
                Err(_) => "7".to_owned(),
            };
            from_core(&error, text.grade.at.clone()).fix(text.grade.at.clone(), nearest)
        })?;
    Ok(Class {
        feature,
        letter,
        grade,
    })
}

/// The core's refusal of a class at a size: at the size where the table ends,
/// at the class where the standard has none.
pub(super) fn undefined(error: &fits_core::Error, size: &Size, class: &ClassText) -> Problem {
    if error.is_out_of_table() {
        let problem = from_core(error, size.at.clone());
        let inch = matches!(size.value, Expression::Number(_, Some(Unit::Inch)));
        return problem.fix(size.at.clone(), if inch { "3/4in" } else { "20mm" });
    }
    let problem = from_core(error, class.at());
    match error.instead() {
        Some(instead) => problem
            .advise("the nearest that exists")
            .fix(class.at(), instead.to_string()),
        None => problem,
    }
}

pub(super) fn from_core(error: &fits_core::Error, at: Range<usize>) -> Problem {
    Problem::new(error.to_string(), at).advise(error.advice())
}
