//! What a query's feature goes with: classes, a shop word, a part in hand, a
//! bought-in part, another feature's limits, a reading.

use fits_core::{
    Length, Limits,
    shop::{
        FitClasses,
        words::{Choice, Word},
    },
    size::{Decimals, Rounding, Unit},
    standards::{b41, bought, iso286::Feature},
};

use crate::{
    problem::Problem,
    query::{Expression, Part, Size, Spot, Tolerance, Units, Work},
    questions::part::{
        answered::measured,
        circumstance::refuse_circumstance,
        resolve::{Chosen, Label, One, Pair, class, from_core, inch_class, pair},
    },
    session::Session,
};

/// What a bearing's fit goes by.
pub(super) const BY_LOAD: &str = "ask for the seat, as `seat shaft 25 turns normal`";

/// What a query's features come to.
#[derive(Clone, Debug)]
pub(crate) enum Resolved {
    /// One feature alone.
    One(One),
    /// Both features.
    Pair(Pair),
    /// One in hand, its mate to suit by the pair's clearance range.
    Suit { pair: Pair, in_hand: Box<One>, mate: One },
}

impl Session {
    pub(crate) fn resolve(&self, part: &Part) -> Result<Resolved, Problem> {
        let nominal = self.nominal(&part.size)?;
        let word = part.word.as_ref().map(|spot| {
            Word::find(&spot.value)
                .map(|word| (word, spot))
                .map_err(|error| name_one(from_core(&error, spot.at.clone()), &error, spot))
        });
        let word = word.transpose()?;
        if word.is_none() {
            refuse_circumstance(part)?;
        }
        if let Tolerance::Pair(hole, shaft) = &part.tolerance {
            refuse_before_pair(part)?;
            let pair = pair(nominal, &part.size, hole, shaft)?;
            return self.one_measured(part, pair);
        }
        if let Tolerance::Class(text) = &part.tolerance
            && let Some(class) = inch_class(text)
        {
            refuse_before_pair(part)?;
            let class = class?;
            let pair = Pair::of_inch(nominal, class)
                .map_err(|error| beyond_inch_table(&error, class, &part.size))?;
            return self.one_measured(part, pair);
        }
        let is_bare = matches!(part.tolerance, Tolerance::Bare);
        if is_bare && part.feature.is_none() && part.bought.is_none() {
            let Some((word, spot)) = word else {
                return Err(nothing_of_the_mate(part, Feature::Shaft));
            };
            if let Some(mate) = &part.mate {
                return Err(Problem::new("is this a hole or a shaft?", part.size.at.clone())
                    .advise("say it before the size")
                    .fix(
                        part.size.at.start..part.size.at.start,
                        format!("{} ", mate.feature.value.mate()),
                    ));
            }
            let pair = self.chosen(part, word, spot, nominal)?;
            return self.one_measured(part, pair);
        }
        let one = self.base(part, nominal)?;
        // Beside a word, a reading of the mate is judged by what suits.
        let is_judged = word.is_some() && part.mate.is_none();
        let other = if is_judged {
            own_reading(part, one.kind).map(|()| None)
        } else {
            self.other(part, &one)
        };
        if let Some(other) = other? {
            let (hole, shaft) = match one.kind {
                Some(Feature::Shaft) => (other, one),
                _ => (one, other),
            };
            let mut pair = Pair::unlike(hole, shaft)
                .map_err(|error| from_core(&error, part.size.at.clone()))?;
            if let Some((word, spot)) = word {
                pair.held_to = Some(self.held_to(part, &pair, word, spot)?);
            }
            return Ok(Resolved::Pair(pair));
        }
        let Some((word, spot)) = word else {
            return if is_bare && part.bought.is_none() {
                Err(nothing_of_the_mate(part, one.kind.unwrap_or(Feature::Shaft)))
            } else {
                Ok(Resolved::One(one))
            };
        };
        let Some(kind) = one.kind else {
            return Err(Problem::new(
                "is the part in hand a hole or a shaft?",
                part.size.at.clone(),
            )
            .advise("say which")
            .fix(part.size.at.start..part.size.at.start, "shaft "));
        };
        if let Label::Iso(class) = one.label {
            return Err(Problem::new(
                format!("{class} and `{}` both say the limits", word.name()),
                spot.at.clone(),
            )
            .advise("keep one of them, as `20 slip` or `20 H7/g6`"));
        }
        let pair = self.chosen(part, word, spot, one.nominal)?;
        let failed = |error: fits_core::Error| from_core(&error, part.size.at.clone());
        let beyond = pair.fit.suited_beyond(kind, one.limits).map_err(failed)?;
        let is_beyond = beyond.is_some();
        let fit = beyond.map_or_else(
            || pair.fit.suited(kind, one.limits, word.suit_percent()).map_err(failed),
            Ok,
        )?;
        let held_to = if is_beyond {
            Some(self.held_to(part, &Pair { fit, ..pair }, word, spot)?)
        } else {
            None
        };
        let pair = Pair { held_to, ..pair };
        let mate = One::to_suit(kind.mate(), one.nominal, fit.part(kind.mate()));
        Ok(Resolved::Suit { pair: Pair { fit, ..pair }, in_hand: Box::new(one), mate })
    }

    /// The first feature of the query: bought in, or by its limits.
    fn base(&self, part: &Part, nominal: Length) -> Result<One, Problem> {
        let Some(name) = &part.bought else {
            let by_work = part.work.as_ref().map(|work| Spot {
                value: if work.value == Work::Turn { Feature::Shaft } else { Feature::Hole },
                at: work.at.clone(),
            });
            let said = part
                .feature
                .as_ref()
                .or(by_work.as_ref().filter(|_| !matches!(part.tolerance, Tolerance::Class(_))));
            return self.one(&part.size, nominal, &part.tolerance, said);
        };
        // `shaft keyway` is a name of its own.
        let whole = part.feature.as_ref().map(|feature| Spot {
            value: format!("{} {}", feature.value, name.value),
            at: feature.at.start..name.at.end,
        });
        let whole = whole.filter(|whole| !bought::Family::all_called(&whole.value).is_empty());
        let name = whole.as_ref().unwrap_or(name);
        if let Some(work) = &part.work {
            return Err(Problem::new("a bought-in part is not made", work.at.clone())
                .advise("ask for its mate, as `dowel 1/4in, press`"));
        }
        if matches!(part.tolerance, Tolerance::Bare) {
            let found = self.bought(name, &part.size, nominal)?;
            return Ok(One {
                kind: Some(found.feature),
                nominal,
                limits: found.limits,
                label: Label::Bought(found),
                source: found.source,
                have: true,
            });
        }
        if let Tolerance::Class(text) = &part.tolerance {
            // A name or a size that no list has comes first.
            self.bought(name, &part.size, nominal)?;
            let message = format!("a {} comes with its own limits", name.value);
            let mate = if class(text)?.feature == Feature::Hole { "hole " } else { "shaft " };
            return Err(Problem::new(message, text.at())
                .advise("give the mate's class with the mate")
                .fix(text.at().start..text.at().start, mate));
        }
        // Measured: the name says which surface it is, the limits what it mics.
        let families = bought::Family::called(&name.value)
            .map_err(|error| from_core(&error, name.at.clone()))?;
        let features: Vec<Feature> = families.iter().map(|family| family.feature()).collect();
        match features.first() {
            Some(first) if features.iter().all(|feature| feature == first) => {
                let said = Spot { value: *first, at: name.at.clone() };
                let one = self.one(&part.size, nominal, &part.tolerance, Some(&said))?;
                Ok(One { have: true, ..one })
            }
            _ => Err(Problem::new(
                format!("`{}` has an inside and an outside", name.value),
                name.at.clone(),
            )
            .advise("say which was measured")
            .fix(name.at.clone(), "shaft")),
        }
    }

    /// The other feature, where the query gives it by limits or a reading.
    fn other(&self, part: &Part, one: &One) -> Result<Option<One>, Problem> {
        if let Some(mate) = &part.mate {
            let Some(kind) = one.kind else {
                return Err(Problem::new(
                    "is the first one a hole or a shaft?",
                    part.size.at.clone(),
                )
                .advise("say which")
                .fix(
                    part.size.at.start..part.size.at.start,
                    format!("{} ", mate.feature.value.mate()),
                ));
            };
            if mate.feature.value == kind {
                return Err(Problem::new(
                    format!("two {kind}s do not go together"),
                    mate.feature.at.clone(),
                )
                .fix(mate.feature.at.clone(), kind.mate().to_string()));
            }
            let size = mate.size.as_ref().unwrap_or(&part.size);
            let nominal = match &mate.size {
                Some(size) => self.nominal(size)?,
                None => one.nominal,
            };
            return self.one(size, nominal, &mate.tolerance, Some(&mate.feature)).map(Some);
        }
        own_reading(part, one.kind)?;
        for feature in [Feature::Hole, Feature::Shaft] {
            let Some(size) = measured(part, feature) else {
                continue;
            };
            let said = Spot { value: feature, at: size.at.clone() };
            let read = self.one(size, self.nominal(size)?, &Tolerance::Bare, Some(&said))?;
            return Ok(Some(One { label: Label::Named("measured"), ..read }));
        }
        Ok(None)
    }

    /// A pair of classes with one part measured: the mate follows it.
    fn one_measured(&self, part: &Part, pair: Pair) -> Result<Resolved, Problem> {
        let (have, size) = match (&part.hole, &part.shaft) {
            (Some(size), None) => (Feature::Hole, size),
            (None, Some(size)) => (Feature::Shaft, size),
            _ => return Ok(Resolved::Pair(pair)),
        };
        if part.reading.is_some() {
            return Ok(Resolved::Pair(pair));
        }
        let read = self.nominal(size)?;
        let percent = pair.chosen.map_or(100, |chosen| chosen.choice.word.suit_percent());
        let fit = Limits::new(read, read)
            .and_then(|read| pair.fit.suited(have, read, percent))
            .map_err(|error| from_core(&error, size.at.clone()))?;
        let limits = fit.part(have.mate());
        if !limits.lower().is_positive() || !read.is_positive() {
            return Err(Problem::new(
                format!("a {have} of {read} leaves no {}", have.mate()),
                size.at.clone(),
            )
            .advise("read it again, as `20 H7/g6, hole = 20.013`"));
        }
        let said = Spot { value: have, at: size.at.clone() };
        let in_hand = self.one(size, read, &Tolerance::Bare, Some(&said))?;
        let mate = One::to_suit(have.mate(), fit.nominal(), limits);
        Ok(Resolved::Suit { pair: Pair { fit, ..pair }, in_hand: Box::new(in_hand), mate })
    }

    /// The pair that a shop word leads to.
    fn chosen(
        &self,
        part: &Part,
        word: Word,
        spot: &Spot<String>,
        nominal: Length,
    ) -> Result<Pair, Problem> {
        if part.bought.as_ref().is_some_and(|name| name.value.contains("bearing")) {
            // A word's press would take up the bearing's own clearance.
            return Err(Problem::new(
                "a bearing's seat goes by how it is loaded, not by a word",
                spot.at.clone(),
            )
            .advise(BY_LOAD));
        }
        let case = self.circumstance(part, word, nominal)?;
        let choice = word.choose(&case).map_err(|error| {
            let problem = from_core(&error, spot.at.clone());
            if problem.advice.is_empty() { problem.advise("as in `20 slip`") } else { problem }
        })?;
        let mut pair = self
            .pair_of(&choice, nominal)
            .map_err(|error| from_core(&error, part.size.at.clone()))?;
        let is_inch = matches!(pair.hole.label, Label::Inch(_));
        pair.chosen = Some(Chosen { choice, case, is_inch });
        Ok(pair)
    }

    /// ASME B4.1 where the size is thought in inches and its table reaches it,
    /// ISO 286 elsewhere.
    pub(crate) fn pair_of(
        &self,
        choice: &Choice,
        nominal: Length,
    ) -> Result<Pair, fits_core::Error> {
        match choice.classes(fits_core::Size::new(nominal, self.shown.unit())) {
            FitClasses::B41(class) => Pair::of_inch(nominal, class),
            FitClasses::Iso286 { hole, shaft } => Pair::of_classes(nominal, hole, shaft),
        }
    }

    /// Does the bought-in part that a query names vary by maker, and has it not
    /// been measured; and what else there is to know of it.
    pub(crate) fn what_to_know(&self, part: &Part) -> (bool, Vec<String>) {
        let found = part.bought.as_ref().and_then(|name| {
            let nominal = self.nominal(&part.size).ok()?;
            self.bought(name, &part.size, nominal).ok()
        });
        let Some(found) = found else { return (false, Vec::new()) };
        let mic_yours = found.mic_yours && matches!(part.tolerance, Tolerance::Bare);
        let mut notes = Vec::new();
        if mic_yours {
            notes.push("varies by maker: mic yours, and give what it measures".to_owned());
        }
        if !found.note.is_empty() {
            notes.push(found.note.to_owned());
        }
        (mic_yours, notes)
    }
}

/// A word with several meanings: the first of them is put in its place.
pub(super) fn name_one(problem: Problem, error: &fits_core::Error, spot: &Spot<String>) -> Problem {
    match error.choices().first() {
        Some(first) => problem.advise("say which, as").fix(spot.at.clone(), first.clone()),
        None => problem,
    }
}

/// Is a size typed in inches (or millimetres)? `None` for bare numbers.
pub(crate) fn is_inch(expression: &Expression) -> Option<bool> {
    match expression {
        Expression::Number(_, unit) => unit.map(Unit::is_inch),
        Expression::Gauge(_) => Some(true),
        Expression::Negative(inner) => is_inch(&inner.value),
        Expression::Two(left, _, right) => is_inch(&left.value).or(is_inch(&right.value)),
    }
}

/// The table of a B4.1 class ends before the size: put there the nearest size
/// that it reaches.
fn beyond_inch_table(error: &fits_core::Error, class: b41::Class, size: &Size) -> Problem {
    let (over, up_to) = class.sizes();
    let end = Decimals { unit: Unit::Inch, places: 2 };
    let problem = from_core(error, size.at.clone());
    let reach = format!(
        "{class} reaches from {} to {} in",
        over.shown(end, Rounding::Nearest),
        up_to.shown(end, Rounding::Nearest)
    );
    problem.advise(reach).fix(size.at.clone(), format!("{}in", up_to.shown(end, Rounding::Nearest)))
}

/// A reading named for the very feature the query begins with.
fn own_reading(part: &Part, kind: Option<Feature>) -> Result<(), Problem> {
    let Some((feature, size)) = kind.and_then(|kind| Some((kind, measured(part, kind)?))) else {
        return Ok(());
    };
    Err(Problem::new(format!("the {feature} is the feature itself"), size.at.clone()).advise(
        "put what it measures in its place, as `shaft 0.2502in, press`, or after =, as `20 H7 = 20.013`",
    ))
}

fn refuse_before_pair(part: &Part) -> Result<(), Problem> {
    if let Some(name) = &part.bought {
        return Err(Problem::new(
            format!("a {} comes with its own limits", name.value),
            name.at.clone(),
        )
        .advise("give the mate's class with the mate, as `dowel 1/4in, hole H7`"));
    }
    if let Some(feature) = &part.feature {
        return Err(Problem::new(
            format!("`{}` stands before a pair of classes", feature.value),
            feature.at.clone(),
        )
        .advise("leave it out")
        .fix(feature.at.clone(), ""));
    }
    if let Some(mate) = &part.mate {
        return Err(Problem::new("a third feature beside a pair", mate.feature.at.clone())
            .advise("a reading of one part is written `20 H7/g6, hole = 20.013`"));
    }
    if let Some(word) = &part.word {
        return Err(Problem::new(
            format!("the classes and `{}` both say the fit", word.value),
            word.at.clone(),
        )
        .advise("keep one of them, as `20 H7/g6` or `20 slip`"));
    }
    Ok(())
}

fn nothing_of_the_mate(part: &Part, kind: Feature) -> Problem {
    let class = if kind == Feature::Shaft { "g6" } else { "H7" };
    Problem::new("a size alone says nothing of the fit", part.size.at.end..part.size.at.end)
        .advise(format!("give a word, as `{kind} 20, slip`, or a class"))
        .fix(part.size.at.end..part.size.at.end, format!(" {class}"))
}

/// Is a size one that parts are sold by: 64ths of an inch, or half millimetres
/// and, below 10 mm, tenths?
pub(super) fn is_nominal(size: Length, in_inches: bool) -> bool {
    let millimetre = Length::MILLIMETRE.tenth_nanometres();
    let step = match in_inches {
        true => Length::INCH.tenth_nanometres() / 64,
        false if size.tenth_nanometres() < 10 * millimetre => millimetre / 10,
        false => millimetre / 2,
    };
    size.tenth_nanometres() % step == 0
}

/// The units that a size is typed in; those in force for a bare one.
pub(crate) fn thought_in(size: &Size, in_force: Units) -> Units {
    match is_inch(&size.value) {
        Some(true) => Units::Inches,
        Some(false) => Units::Millimetres,
        None => in_force,
    }
}
