//! How tight the parts of a joint are: by class, by word, given, or as they measure.

use crate::{
    answer::FeatureAnswer,
    problem::Problem,
    query::{ClassText, Ends, JointText, Part, Size, Spot, Tolerance},
    questions::{
        part::{
            mates::Resolved,
            resolve::{Pair, from_core, inch_class, pair},
        },
        why::answered::said_range,
    },
    session::Session,
};
use fits_core::{
    Length, Limits,
    shop::words::Word,
    size::{Decimals, Rounding, Unit},
    standards::{
        iso286::Feature,
        materials::{Family, Material},
    },
};
use uom::si::length::millimeter;

/// How tight the parts are, and by what.
pub(super) struct Tightness {
    pub(super) range: Limits,
    pub(super) class: String,
    pub(super) bore: Length,
    pub(super) to_cut: [Option<Box<FeatureAnswer>>; 2],
}

impl Tightness {
    pub(super) const fn given(range: Limits, class: String, bore: Length) -> Self {
        Self { range, class, bore, to_cut: [None, None] }
    }
}

fn interference_of(pair: &Pair) -> Result<Limits, fits_core::Error> {
    let range = pair.fit.clearance();
    let interference = Limits::new(range.upper().checked_neg()?, range.lower().checked_neg()?)?;
    Ok(interference.known_as(range.known()))
}

fn inch_pair(text: &ClassText, outside: Length, size: &Size) -> Option<Result<Pair, Problem>> {
    inch_class(text).map(|class| {
        Pair::of_inch(outside, class?).map_err(|error| from_core(&error, size.at.clone()))
    })
}

impl Session {
    /// The interference, how it was given, the bore at its least, and what to cut.
    pub(super) fn interference(
        &self,
        text: &JointText,
        diameter: Length,
        hub: &Material,
        outside: Length,
        notes: &mut Vec<String>,
    ) -> Result<Tightness, Problem> {
        let head = &text.head;
        let at = head.size.at.clone();
        let failed = |error: fits_core::Error| from_core(&error, at.clone());
        if let Some(ends) = &text.interference {
            let range = self.ends(ends)?;
            if text.on_radius.as_ref().is_some_and(|it| it.value) {
                notes.push(
                    "the interference was given on the radius: twice that on the diameter".into(),
                );
                let twice = |end: Length| end.checked_mul(2).map_err(failed);
                let twice = Limits::new(twice(range.lower())?, twice(range.upper())?);
                let twice = twice.map_err(failed)?;
                return Ok(Tightness::given(twice, "as given".into(), diameter));
            }
            return Ok(Tightness::given(range, "as given".into(), diameter));
        }
        let hole = head.reading.as_ref().or(head.hole.as_ref());
        let shaft = head.second_reading.as_ref().or(head.shaft.as_ref());
        if let (Some(hole), Some(shaft)) = (hole, shaft) {
            if let Some(word) = head.word.as_ref().filter(|_| text.shrink.is_none()) {
                // Both readings say how tight it is: a word beside them is checked, and noted as not used.
                Word::find(&word.value).map_err(|error| from_core(&error, word.at.clone()))?;
                notes.push(format!("both parts were read: `{}` is not counted", word.value));
            }
            let (hole, shaft) = (self.nominal(hole)?, self.nominal(shaft)?);
            let tight = shaft.checked_sub(hole).map_err(failed)?;
            let off = self.readings_off(text, diameter, notes)?;
            let range = Limits::new(
                tight.checked_sub(off).map_err(failed)?,
                tight.checked_add(off).map_err(failed)?,
            );
            return Ok(Tightness::given(range.map_err(failed)?, "measured".into(), hole));
        }
        let by_class = head.word.is_some() || !matches!(head.tolerance, Tolerance::Bare);
        if let Some(reading) = hole.or(shaft).filter(|_| head.reading.is_some() || !by_class) {
            return Err(Problem::new("the other part's reading is missing", reading.at.clone())
                .advise(
                    "both are wanted, as `assemble 20 H7/s6 = 20.010/20.040, hub steel od 40`",
                ));
        }
        // A word's class goes by material and wall.
        let thin = outside
            .checked_sub(diameter)
            .is_ok_and(|walls| walls.checked_mul(4).is_ok_and(|walls| walls < diameter));
        let hub = match hub.family() {
            Family::Aluminium => Some("aluminium"),
            Family::CastIron => Some("cast iron"),
            _ => None,
        };
        let spot = |value: String| Spot { value, at: at.clone() };
        let part = Part {
            hub: hub.filter(|_| head.word.is_some()).map(|name| spot(name.to_owned())),
            thin: (thin && head.word.is_some()).then(|| Spot { value: (), at: at.clone() }),
            long: head.long.clone().filter(|_| head.word.is_some()),
            ..head.clone()
        };
        let found = self.resolve(&part)?;
        let pair = match found {
            Resolved::Pair(pair) => pair,
            Resolved::Suit { pair: told, in_hand, mate } => {
                let kind = in_hand.kind;
                let limits = said_range(self.shown, mate.limits);
                let (hole, shaft) = match kind {
                    Some(Feature::Hole) => (*in_hand, mate),
                    _ => (mate, *in_hand),
                };
                let made = kind.map_or("mate", |kind| kind.mate().word());
                notes.push(format!("the {made} to suit: {limits}"));
                Pair { chosen: told.chosen, ..Pair::unlike(hole, shaft).map_err(failed)? }
            }
            Resolved::One(_) => {
                return Err(Problem::new(
                    "one part alone is not assembled",
                    head.size.at.end..head.size.at.end,
                )
                .advise("give both classes, as `assemble 20 H7/s6, hub steel od 40`"));
            }
        };
        let label = match &pair.chosen {
            Some(chosen) => {
                let figures = Self::choice_figures(chosen);
                format!("{} {}", figures.word, figures.class)
            }
            None if pair.hole.label.name() == pair.shaft.label.name() => {
                pair.hole.label.name().to_owned()
            }
            None => format!("{}/{}", pair.hole.label.name(), pair.shaft.label.name()),
        };
        let to_cut =
            [&pair.hole, &pair.shaft].map(|one| (!one.have).then(|| Box::new(one.answer())));
        let range = interference_of(&pair).map_err(failed)?;
        Ok(Tightness { range, class: label, bore: pair.fit.hole().lower(), to_cut })
    }

    /// How far off a measured interference may be: both parts' `±` summed, and
    /// twice the standard uncertainty of the instruments on each other's top.
    fn readings_off(
        &self,
        text: &JointText,
        diameter: Length,
        notes: &mut Vec<String>,
    ) -> Result<Length, Problem> {
        let at = text.head.size.at.clone();
        let [hole, shaft] = &text.either;
        let mut off = Length::ZERO;
        // One `±` is for both: a reading is never better than its fellow.
        for one in [hole.as_ref().or(shaft.as_ref()), shaft.as_ref().or(hole.as_ref())] {
            let Some(size) = one else { continue };
            let either = self.nominal(size)?;
            if either.is_negative() {
                return Err(Problem::new("an uncertainty has no sign", size.at.clone()).advise(
                    "as `assemble 20 = 20.010 \u{b1}0.005/20.040 \u{b1}0.005, hub steel od 40`",
                ));
            }
            off = off.checked_add(either).map_err(|error| from_core(&error, at.clone()))?;
        }
        if let [Some(_), None] | [None, Some(_)] = text.either {
            notes.push("one \u{b1} was given: taken for both readings".into());
        }
        let mut squares = 0.0;
        let mut names = Vec::new();
        for kind in [Feature::Hole, Feature::Shaft] {
            let can_measure = |name| self.can_measure(name, kind).unwrap_or(true);
            let gauge = self.gauge(&text.instruments, kind, diameter, &mut Vec::new());
            if let Some(gauge) = gauge.map_err(|problem| {
                if text.instruments.iter().any(can_measure) {
                    return problem;
                }
                problem.advise("name one for each, as `assemble 20 H7/s6 = 20.010/20.040, hub steel od 40 long 25, with bore gauge and mic`")
            })? {
                let (repeat, bias) = (gauge.off.repeat.millimetres(), gauge.off.bias.millimetres());
                squares += repeat * repeat + bias * bias;
                names.push(gauge.name);
            }
        }
        if !names.is_empty() {
            names.dedup();
            let unit = self.shown.unit();
            let places = if unit == Unit::Inch { 5 } else { 4 };
            let twice = uom::si::f64::Length::new::<millimeter>(2.0 * squares.sqrt());
            let twice = Length::nearest(twice).map_err(|error| from_core(&error, at.clone()))?;
            notes.push(format!(
                "read with {}: the interference is good to \u{b1}{} {} (95 %)",
                names.join(" and "),
                twice.shown(Decimals { unit, places }, Rounding::Up),
                unit.symbol()
            ));
            off = off.checked_add(twice).map_err(|error| from_core(&error, at))?;
        }
        Ok(off)
    }

    /// The joint on a sleeve's outside.
    pub(super) fn outer_joint(
        &self,
        sleeve: &crate::query::SleeveText,
        outside: Length,
    ) -> Result<Limits, Problem> {
        if let Some(ends) = &sleeve.interference {
            return self.ends(ends);
        }
        let size = sleeve.body.od.as_ref();
        let missing = || {
            Problem::new("nothing says how the sleeve sits outside", sleeve.at.clone()).advise(
                "as `assemble 20 H7/s6, shaft steel, sleeve bronze od 26 H7/p6, hub steel od 50`",
            )
        };
        let (Some(tolerance), Some(size)) = (&sleeve.classes, size) else { return Err(missing()) };
        let found = match tolerance {
            Tolerance::Pair(hole, shaft) => pair(outside, size, hole, shaft)?,
            Tolerance::Class(text) => inch_pair(text, outside, size).ok_or_else(missing)??,
            _ => return Err(missing()),
        };
        interference_of(&found).map_err(|error| from_core(&error, size.at.clone()))
    }

    pub(super) fn ends(&self, ends: &Ends) -> Result<Limits, Problem> {
        let from = self.length(&ends.from)?;
        let to = ends.to.as_ref().map_or(Ok(from), |to| self.length(to))?;
        Limits::new(from, to).map_err(|error| {
            let at = ends.from.at.start..ends.to.as_ref().unwrap_or(&ends.from).at.end;
            from_core(&error, at).advise("the smaller comes first, as interference 0.02..0.04")
        })
    }
}
