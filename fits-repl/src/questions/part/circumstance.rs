//! What is said of the parts beside a shop's word: what it changes, what it
//! leaves as it is, and what no word can answer.

use fits_core::{
    Length, Limits,
    shop::{
        fits_with,
        words::{Choice, Circumstance, Hub, Word},
    },
    size::Unit,
    standards::materials::{Family, Material},
};

use crate::{
    answer::{ChoiceFigures, HeldTo, Mm, NeighbourFigures},
    problem::Problem,
    query::{Part, Spot, Work},
    questions::{
        part::resolve::{Chosen, One, Pair, from_core},
        why::answered::said,
    },
    session::Session,
};

impl Session {
    pub(crate) fn circumstance(
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
        let warm = part.warm.is_some();
        if let Some(hub) = &part.hub {
            let is_bush = hub.value.contains("bush");
            match self.kind_of_material(hub) {
                Some(Hub::PlasticBushing) if !word.moves() && !is_bush && !warm => {
                    return Err(no_row(word, hub, "hub"));
                }
                // The table's rows speak of a bush that closes in; a hub opens.
                Some(Hub::BronzeBushing) if presses(word) && !is_bush && !warm => {
                    return Err(no_row(word, hub, "hub"));
                }
                Some(known) => case.hub = known,
                None if hub.value.contains("tube") => case.thin_wall = true,
                None if warm => {}
                None => return Err(unknown_material(hub)),
            }
        }
        if let Some(shaft) = &part.shaft_material {
            match self.kind_of_material(shaft) {
                // It swells and grows in any hub as a plastic hub does about it.
                Some(Hub::PlasticBushing) if word.moves() => case.hub = Hub::PlasticBushing,
                Some(Hub::PlasticBushing) if !warm => return Err(no_row(word, shaft, "shaft")),
                None if !warm => return Err(unknown_material(shaft)),
                _ => {}
            }
        }
        case.length = part.long.as_ref().map(|size| self.nominal(size)).transpose()?;
        case.turns = part.turns.as_ref().map(|_| true);
        Ok(case)
    }

    /// What a word's class depends on in a material.
    fn kind_of_material(&self, name: &Spot<String>) -> Option<Hub> {
        match name.value.as_str() {
            "iron" | "wrought iron" => return Some(Hub::Steel),
            "alu" | "alloy" => return Some(Hub::Aluminium),
            "plastic" => return Some(Hub::PlasticBushing),
            _ => {}
        }
        let bare = name.value.trim_end_matches("bushing").trim_end_matches("bush").trim_end();
        let named = Spot { value: bare.to_owned(), at: name.at.clone() };
        match self.material_kind(&named).ok()?.1 {
            Family::Steel | Family::Stainless => Some(Hub::Steel),
            Family::CastIron => Some(Hub::CastIron),
            Family::Aluminium => Some(Hub::Aluminium),
            Family::Brass | Family::Bronze | Family::Copper => Some(Hub::BronzeBushing),
            Family::Plastic => Some(Hub::PlasticBushing),
            // Of titanium, magnesium and the rest nothing is known that changes a fit.
            _ => None,
        }
    }

    pub(crate) fn choice_figures(chosen: &Chosen) -> ChoiceFigures {
        let Chosen { choice, case, is_inch } = chosen;
        let unit = if *is_inch { Unit::Inch } else { Unit::Millimetre };
        let size = fits_core::Size::new(case.nominal, unit);
        let class = |choice: &Choice| choice.classes(size).to_string();
        let own = class(choice);
        let runs_in_plastic = case.hub == Hub::PlasticBushing && choice.word.moves();
        // Words may share a class at a size: the neighbour is the next one
        // that comes to another, in the same circumstance.
        let neighbour = |mut word: Option<Word>, next: fn(Word) -> Option<Word>| {
            while let Some(found) = word {
                // A word may begin at a larger size, or not be for plastic.
                let is_for_it = found.moves() || !runs_in_plastic;
                if let Some(choice) = is_for_it.then(|| found.choose(case).ok()).flatten() {
                    let found_class = class(&choice);
                    if found_class != own {
                        return Some(NeighbourFigures { word: found.name(), class: found_class });
                    }
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
                || choice.row_of.is_none()
                    && presses(choice.word)
                    && (case.hub != Hub::Steel || case.thin_wall),
        }
    }

    /// What was said of the parts that leaves the word's choice as it is.
    pub(crate) fn no_effect(part: &Part, chosen: Option<&Chosen>) -> Vec<String> {
        let Some(Chosen { choice, case, .. }) = chosen else { return Vec::new() };
        let outcome = |choice: &Choice| (choice.iso, choice.inch, choice.row_of);
        let counts = |without: Circumstance| {
            choice.word.choose(&without).map_or(true, |other| outcome(&other) != outcome(choice))
        };
        let without = |change: fn(&mut Circumstance)| {
            let mut other = *case;
            change(&mut other);
            counts(other)
        };
        let steel = case.with_hub(Hub::Steel);
        let thin_said = part.hub.as_ref().is_some_and(|hub| hub.value.contains("tube"));
        let hub_counts = counts(steel) || thin_said && without(|it| it.thin_wall = false);
        let said = [
            part.hub.as_ref().map(|hub| (format!("hub {}", hub.value), hub_counts)),
            part.shaft_material.as_ref().map(|shaft| {
                (
                    format!("shaft {}", shaft.value),
                    case.hub == Hub::PlasticBushing && part.hub.is_none() && counts(steel),
                )
            }),
            part.long.as_ref().map(|_| ("long".to_owned(), without(|it| it.length = None))),
            part.turns.as_ref().map(|_| ("turns".to_owned(), without(|it| it.turns = None))),
            part.thin.as_ref().map(|_| ("thin".to_owned(), without(|it| it.thin_wall = false))),
        ];
        said.into_iter()
            .flatten()
            .filter(|(_, counts)| !counts)
            .map(|(what, _)| format!("`{what}` leaves the {} fit as it is", choice.word.name()))
            .collect()
    }

    /// The words that two readings could be called by.
    pub(crate) fn words_of(&self, pair: &Pair) -> Vec<&'static str> {
        let Some(actual) = reading_of_both(pair) else { return Vec::new() };
        let nominal = pair.hole.nominal;
        let all = self.clearances(Circumstance::plain(nominal), nominal);
        all.filter(|(_, range)| range.contains(actual)).map(|(word, _)| word.name()).collect()
    }

    /// Each word but `shrink` with the clearance that its own fit has.
    fn clearances(
        &self,
        case: Circumstance,
        nominal: Length,
    ) -> impl Iterator<Item = (Word, Limits)> {
        Word::all().filter(|word| word.name() != "shrink").filter_map(move |word| {
            let choice = word.choose(&case).ok()?;
            Some((word, self.pair_of(&choice, nominal).ok()?.fit.clearance()))
        })
    }

    /// The standard fits that two readings could be of.
    pub(crate) fn classes_of(pair: &Pair) -> Vec<String> {
        const MOST: usize = 8;
        let Some(actual) = reading_of_both(pair) else { return Vec::new() };
        let fits = fits_with(pair.hole.nominal, actual).unwrap_or_default();
        fits.iter().take(MOST).map(ToString::to_string).collect()
    }

    /// A pair whose limits are both given beside a word: is it that fit, and
    /// which word's is it?
    pub(crate) fn held_to(
        &self,
        part: &Part,
        pair: &Pair,
        word: Word,
        spot: &Spot<String>,
    ) -> Result<HeldTo, Problem> {
        let nominal = pair.hole.nominal;
        let case = self.circumstance(part, word, nominal)?;
        let own = word
            .choose(&case)
            .and_then(|choice| self.pair_of(&choice, nominal))
            .map_err(|error| from_core(&error, spot.at.clone()))?;
        let (range, actual) = (own.fit.clearance(), pair.fit.clearance());
        let agrees = range.contains(actual.lower()) && range.contains(actual.upper());
        let off = |limits: Limits| {
            let (aim, middle) = (limits.middle(), actual.middle());
            aim.tenth_nanometres().abs_diff(middle.tenth_nanometres())
        };
        let mut still = case;
        still.turns = None;
        let nearest = self
            .clearances(still, nominal)
            .min_by_key(|(_, range)| off(*range))
            .map_or(word, |(other, _)| other);
        Ok(HeldTo {
            word: word.name(),
            agrees,
            nearest: if agrees { word.name() } else { nearest.name() },
            min_mm: Mm(range.lower()),
            max_mm: Mm(range.upper()),
        })
    }
}

impl Session {
    /// What the spread of a part in hand does to the fit, where it varies by more
    /// than the word allows, and what one that is measured would have.
    pub(crate) fn spread_of(
        &self,
        part: &Part,
        pair: &Pair,
        in_hand: &One,
    ) -> Result<Vec<String>, Problem> {
        let (Some(held), Some(chosen), Some(kind)) = (&pair.held_to, &pair.chosen, in_hand.kind)
        else {
            return Ok(Vec::new());
        };
        let failed = |error: fits_core::Error| from_core(&error, part.size.at.clone());
        let of = |size: Length| said(self.shown, size);
        let word = chosen.choice.word;
        let mate = kind.mate();
        let actual = pair.fit.clearance();
        let mut notes = vec![format!(
            "this {kind} varies by {} and the {mate} by {}, so the play does by {}: a {} fit has {} of it",
            of(in_hand.limits.tolerance()),
            of(pair.fit.part(mate).tolerance()),
            of(actual.tolerance()),
            held.word,
            of(held.max_mm.0.checked_sub(held.min_mm.0).map_err(failed)?),
        )];
        if held.max_mm.0.is_negative() && !actual.upper().is_negative() {
            notes.push(format!(
                "the loosest of these do not hold: pin or bond them, or measure each {kind}"
            ));
        }
        // The middle one, measured: what the word would give it.
        let middle = in_hand.limits.middle();
        let own = self.pair_of(&chosen.choice, in_hand.nominal).map_err(failed)?.fit;
        let suited = Limits::new(middle, middle)
            .and_then(|one| own.suited(kind, one, word.suit_percent()))
            .map_err(failed)?;
        let wanted = suited.part(mate);
        notes.push(format!(
            "one that is measured takes the word: `{kind} {}, {}` wants a {mate} of {} to {}",
            of(middle).replace(' ', ""),
            word.name(),
            of(wanted.lower()),
            of(wanted.upper()),
        ));
        Ok(notes)
    }
}

/// Is it a fit that is pressed or shrunk together?
fn presses(word: Word) -> bool {
    let press = Word::find("light press").ok();
    core::iter::successors(Some(word), |word| word.looser()).any(|word| Some(word) == press)
}

/// A soft part and a word whose rows do not speak of it.
fn no_row(word: Word, spot: &Spot<String>, part: &str) -> Problem {
    let (name, material) = (word.name(), &spot.value);
    if presses(word) {
        let is_plastic = Material::find(material)
            .map_or_else(|_| material.contains("plastic"), |it| it.family() == Family::Plastic);
        let bushing = if is_plastic {
            "`help bushings` shows how to ask about one".to_owned()
        } else {
            format!("a bushing is said as `20 press, hub {material} bushing`")
        };
        return Problem::new(
            format!("a {name} fit is for steel, and the {part} is {material}: work it out"),
            spot.at.clone(),
        )
        .advise(format!(
            "`assemble 20 H7/p6, {part} {material}{}` does; {bushing}",
            if part == "hub" { " od 40 long 20, shaft steel" } else { ", hub steel od 40 long 20" }
        ));
    }
    Problem::new(
        format!("{material} grows with heat and damp by more than a {name} fit allows"),
        spot.at.clone(),
    )
    .advise(format!("`20 slip, {part} {material}` leaves it room; `20 H7/h6 warm 10C..35C, {part} {material}, {}` shows what is left", if part == "hub" { "shaft steel" } else { "hub steel" }))
}

fn unknown_material(spot: &Spot<String>) -> Problem {
    Problem::new(format!("`{}` is not a material that changes a fit", spot.value), spot.at.clone())
        .advise(
            "steel, cast iron, aluminium, bronze, plastic or tube, as in `20 press, hub aluminium`",
        )
}

/// What changes the choice of a word says nothing without one.
pub(crate) fn refuse_circumstance(part: &Part) -> Result<(), Problem> {
    // A pair in the warm wants to know what it is made of, and so does a
    // part that was warm when it was read.
    let read_warm = part.measuring.as_ref().is_some_and(|it| it.at.is_some());
    let counts = part.warm.is_some() || read_warm || is_cut_from(part);
    let made_of = [&part.hub, &part.shaft_material];
    let said = [
        made_of.into_iter().flatten().next().filter(|_| !counts).map(|spot| &spot.at),
        part.long.as_ref().map(|spot| &spot.at),
        part.turns.as_ref().map(|spot| &spot.at),
        part.thin.as_ref().map(|spot| &spot.at),
    ];
    match said.into_iter().flatten().next() {
        None => Ok(()),
        Some(at) if part.work.is_some() && made_of.into_iter().any(Option::is_some) => {
            Err(Problem::new(
                "what it is made of counts where a plan says where the work is",
                at.clone(),
            )
            .advise("as in `bore 20 H7 from 19.6, hole cast iron`"))
        }
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

/// The clearance of two parts that are both as they measure, and of which nothing
/// else is said.
fn reading_of_both(pair: &Pair) -> Option<Length> {
    let actual = pair.fit.clearance();
    let is_asked = pair.chosen.is_none() && pair.held_to.is_none();
    (is_asked && pair.hole.have && pair.shaft.have && actual.lower() == actual.upper())
        .then(|| actual.lower())
}
