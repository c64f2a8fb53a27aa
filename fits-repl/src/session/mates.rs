//! What a query's feature goes with: classes, a shop word, a part in hand, a
//! bought-in part, another feature's limits, a reading.

use fits_core::{
    Length,
    shop::words::{Choice, Circumstance, Hub, Word},
    size::{Decimals, Rounding, Unit},
    standards::{b41, bought, iso286::Feature},
};

use super::{
    Session,
    features::measured,
    resolve::{Chosen, Label, One, Pair, class, from_core, inch_class, pair},
};
use crate::{
    answer::{ChoiceFigures, NeighbourFigures},
    problem::Problem,
    query::{Expression, Part, Size, Spot, Tolerance, Units, Work},
};

/// What a query's features come to.
pub(super) enum Resolved {
    /// One feature alone.
    One(One),
    /// Both features.
    Pair(Pair),
    /// One in hand, its mate to suit by the pair's clearance range.
    Suit { pair: Pair, in_hand: One, mate: One },
}

impl Session {
    pub(super) fn resolve(&self, part: &Part) -> Result<Resolved, Problem> {
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
            let pair = Pair::unlike(hole, shaft)
                .map_err(|error| from_core(&error, part.size.at.clone()))?;
            if let Some((word, spot)) = word {
                agrees(&pair, word, spot)?;
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
        let limits = pair.fit.suit_limits(kind, one.limits).map_err(|error| {
            from_core(&error, part.size.at.clone())
                .advise("measure the part in hand, as `shaft 19.985, slip`")
        })?;
        let mate = One::to_suit(kind.mate(), one.nominal, limits);
        Ok(Resolved::Suit { pair, in_hand: one, mate })
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
                label: Label::Named(found.family.name()),
                source: found.source,
                have: true,
            });
        }
        if let Tolerance::Class(text) = &part.tolerance {
            let message = format!("a {} comes with its own limits", name.value);
            let mate = if class(text)?.feature == Feature::Hole { "hole " } else { "shaft " };
            return Err(Problem::new(message, text.at())
                .advise("a class of its mate is said with the mate")
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

    pub(super) fn bought(
        &self,
        name: &Spot<String>,
        size: &Size,
        nominal: Length,
    ) -> Result<bought::Part, Problem> {
        // A size in inches means the inch one of two families that share a word.
        let inch = is_inch(&size.value).unwrap_or(self.shown == Units::Inches);
        let system = if inch { "inch " } else { "metric " };
        let found = bought::Part::find(&name.value, nominal).or_else(|error| {
            let mut same = error.choices().iter().filter(|choice| choice.starts_with(system));
            match (same.next(), same.next()) {
                (Some(only), None) => bought::Part::find(only, nominal),
                _ => Err(error),
            }
        });
        found.map_err(|error| {
            let at = if error.is_not_listed() && bought::Family::called(&name.value).is_ok() {
                size.at.clone()
            } else {
                name.at.clone()
            };
            let problem = from_core(&error, at);
            if Word::find(&name.value).is_ok() {
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
        let limits =
            pair.fit.suit(have, read).map_err(|error| from_core(&error, size.at.clone()))?;
        if !limits.lower().is_positive() || !read.is_positive() {
            return Err(Problem::new(
                format!("a {have} of {read} leaves no {}", have.mate()),
                size.at.clone(),
            )
            .advise("read it again, as `20 H7/g6, hole = 20.013`"));
        }
        let said = Spot { value: have, at: size.at.clone() };
        let in_hand = self.one(size, read, &Tolerance::Bare, Some(&said))?;
        let mate = One::to_suit(have.mate(), pair.fit.nominal(), limits);
        Ok(Resolved::Suit { pair, in_hand, mate })
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
            .advise("ask for the seat, as `seat shaft 25 turns normal`"));
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
    fn pair_of(&self, choice: &Choice, nominal: Length) -> Result<Pair, fits_core::Error> {
        if self.shown == Units::Inches
            && let Ok(pair) = choice.inch.parse().and_then(|class| Pair::of_inch(nominal, class))
        {
            return Ok(pair);
        }
        Pair::of_classes(nominal, choice.iso.0, choice.iso.1)
    }

    fn circumstance(
        &self,
        part: &Part,
        word: Word,
        nominal: Length,
    ) -> Result<Circumstance, Problem> {
        let mut case = Circumstance::plain(nominal);
        let bought = part.bought.as_ref().map_or("", |name| name.value.as_str());
        if bought.contains("bushing") {
            case.hub = if bought.contains("plastic") || bought.contains("nylon") {
                Hub::PlasticBushing
            } else {
                Hub::BronzeBushing
            };
        }
        case.thin_wall = part.thin.is_some() || bought.contains("tube");
        if let Some(hub) = &part.hub {
            let is_bush = hub.value.contains("bush");
            match material(&hub.value) {
                Some(Hub::BronzeBushing | Hub::PlasticBushing) if !word.moves() && !is_bush => {
                    if part.warm.is_some() {
                        return Ok(case);
                    }
                    // The table's rows speak of a bush that closes in; a hub opens.
                    return Err(Problem::new(
                        format!("a hub of {} has no row: work the press out", hub.value),
                        hub.at.clone(),
                    )
                    .advise(
                        "`assemble 20 H7/s6, hub bronze od 40` does; or `20 press, hub bronze bushing` if the bushing is pressed",
                    ));
                }
                Some(known) => case.hub = known,
                None if hub.value.contains("tube") => case.thin_wall = true,
                None if part.warm.is_some() => {}
                None => {
                    return Err(Problem::new(format!("`{}` is no material that changes a fit", hub.value), hub.at.clone())
                        .advise("steel, cast iron, aluminium, bronze, plastic or tube, as in `20 press, hub aluminium`"));
                }
            }
        }
        case.length = part.long.as_ref().map(|size| self.nominal(size)).transpose()?;
        case.turns = part.turns.as_ref().map(|_| true);
        Ok(case)
    }

    pub(super) fn choice_figures(chosen: &Chosen) -> ChoiceFigures {
        let Chosen { choice, case, is_inch } = chosen;
        let class = |choice: &Choice| {
            if *is_inch {
                choice.inch.to_owned()
            } else {
                format!("{}/{}", choice.iso.0, choice.iso.1)
            }
        };
        let own = class(choice);
        // Words may share a class at a size: the neighbour is the next one
        // that comes to another, in the same circumstance.
        let neighbour = |mut word: Option<Word>, next: fn(Word) -> Option<Word>| {
            while let Some(found) = word {
                let found_class = class(&found.choose(case).ok()?);
                if found_class != own {
                    return Some(NeighbourFigures { word: found.name(), class: found_class });
                }
                word = next(found);
            }
            None
        };
        ChoiceFigures {
            word: choice.word.name(),
            looser: neighbour(choice.looser, Word::looser),
            tighter: neighbour(choice.tighter, Word::tighter),
            class: own,
            reason: choice.reason,
            source: choice.source,
            known: choice.known,
            changed_by: choice.changed_by,
            // Soft or thin parts without a row of their own want it, too.
            work_it_out: choice.work_it_out
                || choice.changed_by.is_none() && (case.hub != Hub::Steel || case.thin_wall),
        }
    }

    /// Does the bought-in part that a query names vary by maker, and has it not
    /// been measured; and what else there is to know of it.
    pub(super) fn what_to_know(&self, part: &Part) -> (bool, Vec<String>) {
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
fn name_one(problem: Problem, error: &fits_core::Error, spot: &Spot<String>) -> Problem {
    match error.choices().first() {
        Some(first) => problem.advise("say which, as").fix(spot.at.clone(), first.clone()),
        None => problem,
    }
}

/// What a shop calls a material, as far as a word's class depends on it.
fn material(name: &str) -> Option<Hub> {
    Some(match name {
        "steel" | "mild steel" | "iron" | "wrought iron" => Hub::Steel,
        "cast iron" | "grey iron" | "gray iron" => Hub::CastIron,
        "aluminium" | "aluminum" | "alu" | "alloy" => Hub::Aluminium,
        "bronze" | "brass" | "bronze bushing" | "sintered bronze" => Hub::BronzeBushing,
        "plastic" | "nylon" | "acetal" | "ptfe" | "plastic bushing" | "nylon bushing" => {
            Hub::PlasticBushing
        }
        _ => return None,
    })
}

/// Is a size typed in inches (or millimetres)? `None` for bare numbers.
pub(super) fn is_inch(expression: &Expression) -> Option<bool> {
    match expression {
        Expression::Number(_, unit) => unit.map(|unit| {
            matches!(unit, Unit::Inch | Unit::Foot | Unit::Thou | Unit::Tenth | Unit::Microinch)
        }),
        Expression::Gauge(_) => None,
        Expression::Negative(inner) => is_inch(&inner.value),
        Expression::Two(left, _, right) => is_inch(&left.value).or(is_inch(&right.value)),
    }
}

/// Does a pair whose limits are both given agree with the word for it?
fn agrees(pair: &Pair, word: Word, spot: &Spot<String>) -> Result<(), Problem> {
    let range = pair.fit.clearance();
    if word.moves() && range.lower().is_negative() {
        let over = range.lower().checked_neg().unwrap_or(Length::ZERO);
        return Err(Problem::new(
            format!("the shaft may be {over} larger than the hole: that is no {} fit", word.name()),
            spot.at.clone(),
        )
        .advise("leave the word out to see the pair, or give one part and the word, as `shaft 19.985, slip`"));
    }
    Ok(())
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

/// What changes the choice of a word says nothing without one.
fn refuse_circumstance(part: &Part) -> Result<(), Problem> {
    let said = [
        // A pair in the warm wants to know what it is made of, and so does a
        // part that was warm when it was read.
        part.hub
            .as_ref()
            .filter(|_| {
                let read_warm = part.measuring.as_ref().is_some_and(|it| it.at.is_some());
                part.warm.is_none() && !read_warm && !is_cut_from(part)
            })
            .map(|spot| &spot.at),
        part.long.as_ref().map(|spot| &spot.at),
        part.turns.as_ref().map(|spot| &spot.at),
        part.thin.as_ref().map(|spot| &spot.at),
    ];
    match said.into_iter().flatten().next() {
        None => Ok(()),
        Some(at) if part.work.is_some() && part.hub.is_some() => Err(Problem::new(
            "what it is made of counts where a plan says where the work is",
            at.clone(),
        )
        .advise("as in `bore 20 H7 from 19.6, hole cast iron`")),
        Some(at) => Err(Problem::new(
            "this changes what a shop word chooses, and none was said",
            at.clone(),
        )
        .advise("say how the parts fit, as `20 press, hub aluminium`")),
    }
}

/// A plan that says where the work is learns from what it is made of.
fn is_cut_from(part: &Part) -> bool {
    part.from.is_some() && part.work.as_ref().is_none_or(|work| work.value != Work::Ream)
}

fn refuse_before_pair(part: &Part) -> Result<(), Problem> {
    if let Some(name) = &part.bought {
        return Err(Problem::new(
            format!("a {} comes with its own limits", name.value),
            name.at.clone(),
        )
        .advise("a class of its mate is said with the mate, as `dowel 1/4in, hole H7`"));
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

/// The units that a size is typed in; those in force for a bare one.
pub(super) fn thought_in(size: &Size, in_force: Units) -> Units {
    match is_inch(&size.value) {
        Some(true) => Units::Inches,
        Some(false) => Units::Millimetres,
        None => in_force,
    }
}
