//! Classes and pairs looked up, and the core's refusals put at their place.

use std::ops::Range;

use fits_core::{
    Fit, Length, Limits,
    shop::words::{Choice, Circumstance},
    size::Unit,
    source::Known,
    standards::{
        b41, bought,
        iso286::{Class, Feature, Grade, Letter, grade_within},
        processes::Process,
    },
};

use crate::{
    answer::{FeatureAnswer, HeldTo, Mm, Processes},
    problem::{Code, Problem},
    query::{ClassText, Expression, Size},
};

/// What a feature's limits are called.
#[derive(Clone, Copy, Debug)]
pub(crate) enum Label {
    Iso(Class),
    Inch(b41::Class),
    Bought(bought::BoughtPart),
    Named(&'static str),
}

impl Label {
    /// What it is written as.
    pub(crate) fn name(&self) -> &'static str {
        match self {
            Self::Iso(class) => class.name(),
            Self::Inch(class) => class.name(),
            Self::Bought(part) => part.family.name(),
            Self::Named(name) => name,
        }
    }
}

/// One feature, resolved.
#[derive(Clone, Copy, Debug)]
pub(crate) struct One {
    pub(crate) kind: Option<Feature>,
    pub(crate) nominal: Length,
    pub(crate) limits: Limits,
    pub(crate) label: Label,
    /// Where the limits come from.
    pub(crate) source: &'static str,
    /// It is there already: bought, measured or in hand.
    pub(crate) have: bool,
}

impl One {
    /// By a class of ISO 286.
    pub(crate) const fn of_class(class: Class, nominal: Length, limits: Limits) -> Self {
        Self {
            kind: Some(class.feature),
            nominal,
            limits,
            label: Label::Iso(class),
            source: "ISO 286-1:2010 and ISO 286-2:2010",
            have: false,
        }
    }

    /// By limits in the query, named by how they were given.
    pub(crate) const fn given(
        kind: Option<Feature>,
        nominal: Length,
        limits: Limits,
        name: &'static str,
    ) -> Self {
        Self {
            kind,
            nominal,
            limits,
            label: Label::Named(name),
            source: "as given in the query",
            have: false,
        }
    }

    /// The mate of a part in hand.
    pub(crate) const fn to_suit(kind: Feature, nominal: Length, limits: Limits) -> Self {
        Self {
            kind: Some(kind),
            nominal,
            limits,
            label: Label::Named("to suit"),
            source: "the fit's own clearance range about the part in hand",
            have: false,
        }
    }

    pub(crate) fn answer(&self) -> FeatureAnswer {
        let grade = match self.label {
            Label::Iso(class) => Some(class.grade),
            // The class's own grade: its inch widths are rounded, and a little
            // under the metric ones.
            Label::Inch(class) => match (class.grades(), self.kind) {
                ((_, shaft), Some(Feature::Shaft)) => Grade::it(shaft),
                ((hole, _), _) => Grade::it(hole),
            },
            Label::Bought(_) | Label::Named(_) => {
                grade_within(self.limits.tolerance(), self.nominal)
            }
        };
        let made = grade.zip(self.kind);
        let processes =
            made.map_or_else(Processes::default, |(grade, kind)| Processes::holding(grade, kind));
        FeatureAnswer {
            limits: self.limits,
            rests_on: None,
            kind: self.kind,
            nominal_mm: Mm(self.nominal),
            class: self.label.name(),
            lower_mm: Mm(self.limits.lower()),
            upper_mm: Mm(self.limits.upper()),
            aim_mm: Mm(self.limits.middle()),
            source: self.source,
            known: self.limits.known(),
            grade: grade.map(Grade::name),
            processes,
            processes_known: processes.all().map(Process::known).reduce(Known::worst),
            pins: None,
            mic_yours: None,
            notes: Vec::new(),
            ream: None,
            not_reamed: None,
            bore: None,
            turn: None,
            cautions: Vec::new(),
        }
    }
}

/// A hole and a shaft, resolved.
#[derive(Clone, Debug)]
pub(crate) struct Pair {
    pub(crate) fit: Fit,
    pub(crate) hole: One,
    pub(crate) shaft: One,
    /// The shop word's choice, where one chose the classes.
    pub(crate) chosen: Option<Chosen>,
    /// How it stands to the word beside it, where its limits were given.
    pub(crate) held_to: Option<HeldTo>,
}

/// What a shop word chose.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Chosen {
    pub(crate) choice: Choice,
    /// In what circumstance.
    pub(crate) case: Circumstance,
    /// The class taken is that of ASME B4.1, not the pair of ISO 286.
    pub(crate) is_inch: bool,
}

impl Pair {
    /// Of two features that need share no class.
    pub(crate) fn unlike(hole: One, shaft: One) -> Result<Self, fits_core::Error> {
        let fit = Fit::of_limits(hole.nominal, hole.limits, shaft.limits)?;
        Ok(Self { fit, hole, shaft, chosen: None, held_to: None })
    }

    /// Of a class of ASME B4.1.
    pub(crate) fn of_inch(nominal: Length, class: b41::Class) -> Result<Self, fits_core::Error> {
        let fit = class.fit(nominal)?;
        let source = class.source(nominal)?;
        let one = |kind, limits| One {
            kind: Some(kind),
            nominal,
            limits,
            label: Label::Inch(class),
            source,
            have: false,
        };
        let hole = one(Feature::Hole, fit.hole());
        let shaft = one(Feature::Shaft, fit.shaft());
        Ok(Self { fit, hole, shaft, chosen: None, held_to: None })
    }

    /// Of two classes of ISO 286.
    pub(crate) fn of_classes(
        nominal: Length,
        hole: Class,
        shaft: Class,
    ) -> Result<Self, fits_core::Error> {
        let fit = Fit::of_classes(nominal, hole, shaft)?;
        let hole = One::of_class(hole, nominal, fit.hole());
        let shaft = One::of_class(shaft, nominal, fit.shaft());
        Ok(Self { fit, hole, shaft, chosen: None, held_to: None })
    }

    pub(crate) const fn part(&self, feature: Feature) -> One {
        match feature {
            Feature::Hole => self.hole,
            Feature::Shaft => self.shaft,
        }
    }
}

pub(crate) fn pair(
    nominal: Length,
    size: &Size,
    hole: &ClassText,
    shaft: &ClassText,
) -> Result<Pair, Problem> {
    for part in [hole, shaft] {
        if let Some(Ok(inch)) = inch_class(part) {
            let whole = hole.at().start..shaft.at().end;
            return Err(Problem::new(
                format!("{inch} is an inch class of both parts and stands alone"),
                part.at(),
            )
            .advise("an inch class has no slash")
            .fix(whole, inch.to_string()));
        }
    }
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
            .fix(whole.clone(), format!("{as_hole}/{as_shaft}"))
            .or_else_fix(whole, format!("{shaft_class}/{hole_class}")));
        }
        (Feature::Hole, Feature::Hole) => {
            return Err(Problem::new(
                format!("{hole_class} and {shaft_class} are two holes"),
                shaft.at(),
            )
            .advise("the shaft takes the small letter")
            .fix(shaft.at(), shaft_class.mirrored().to_string())
            .or_else_fix(whole, format!("{shaft_class}/{}", hole_class.mirrored())));
        }
        (Feature::Shaft, Feature::Shaft) => {
            return Err(Problem::new(
                format!("{hole_class} and {shaft_class} are two shafts"),
                hole.at(),
            )
            .advise("the hole takes the capital")
            .fix(hole.at(), hole_class.mirrored().to_string())
            .or_else_fix(whole, format!("{}/{hole_class}", shaft_class.mirrored())));
        }
    }
    Pair::of_classes(nominal, hole_class, shaft_class).map_err(|error| {
        let at_fault = if hole_class.limits(nominal).is_err() { hole } else { shaft };
        undefined(&error, size, at_fault)
    })
}

/// A class of ASME B4.1, where the letters name one of its families.
pub(crate) fn inch_class(text: &ClassText) -> Option<Result<b41::Class, Problem>> {
    let letters = text.letters();
    let family =
        b41::Family::ALL.into_iter().find(|family| family.name().eq_ignore_ascii_case(letters))?;
    Some(text.typed.value.parse().map_err(|error: fits_core::Error| {
        from_core(&error, text.at()).fix(text.at(), format!("{}{}", family.name(), family.last()))
    }))
}

/// A class from its text: the letters, then the grade.
pub(crate) fn class(text: &ClassText) -> Result<Class, Problem> {
    let letters = text.letters();
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
        let at = text.at().start..text.parted_at();
        from_core(&error, at.clone()).fix(at, nearest.name(feature))
    })?;
    let grade: Grade = text.grade().parse().map_err(|error: fits_core::Error| {
        let nearest = match text.grade().trim_start_matches('0').parse::<u32>() {
            Ok(number) if number > 18 => "18".to_owned(),
            Ok(number) => number.to_string(),
            Err(_) => "7".to_owned(),
        };
        let at = text.parted_at()..text.at().end;
        from_core(&error, at.clone()).fix(at, nearest)
    })?;
    Ok(Class { feature, letter, grade })
}

/// The core's refusal of a class at a size: at the size where the table ends,
/// at the class where the standard has none.
pub(crate) fn undefined(error: &fits_core::Error, size: &Size, class: &ClassText) -> Problem {
    if error.is_out_of_table() {
        let problem = from_core(error, size.at.clone());
        let inch = matches!(size.value, Expression::Number(_, Some(Unit::Inch)));
        return problem.fix(size.at.clone(), if inch { "3/4in" } else { "20mm" });
    }
    let problem = from_core(error, class.at());
    match error.instead() {
        Some(instead) => {
            problem.advise("the nearest that exists").fix(class.at(), instead.to_string())
        }
        None => problem,
    }
}

pub(crate) fn from_core(error: &fits_core::Error, at: Range<usize>) -> Problem {
    let kind = if error.is_out_of_table() { Code::OutOfTable } else { Code::NotAnswered };
    Problem::new(error.to_string(), at)
        .kind(kind)
        .advise(error.advice())
        .or_in_inches(error.said_in(Unit::Inch))
}
