//! The limits of both sides of a joint: by the classes or the word of the
//! note, and by what was read.

use crate::{
    error::Error,
    fit::Fit,
    job::whole::{FitSaid, Job, Mate, NominalSize, SizeKind, State},
    shop::words::{Choice, Circumstance, Hub},
    size::{Length, Limits, Unit},
    source::Known,
    speech::say,
    standards::{
        b41,
        iso286::{Class, Feature as Surface},
    },
};

/// What one side of a joint is to measure.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[expect(
    clippy::exhaustive_structs,
    reason = "it is built whole: what is new must be said by whoever builds one"
)]
pub struct Cut {
    /// The limits; none where the other side must be measured first.
    pub limits: Option<Limits>,
    /// The size to aim at.
    pub aim: Length,
    /// What the limits are called: `H7`, `RC4`, `to suit`.
    pub label: String,
    /// It is there already: read, or bought.
    pub in_hand: Option<Length>,
}

/// A joint worked out.
///
/// ```
/// use fits_core::job::whole::{PartFeature, FitSaid, Job, Mate, NominalSize, Part, SizeKind};
/// use fits_core::{shop::words::Word, size::Unit};
/// let size = NominalSize::Size("20mm".parse()?);
/// let mut job = Job::default();
/// job.parts = vec![Part::default(), Part::default()];
/// job.features = vec![
///     PartFeature::new(0, "bore", SizeKind::Hole, Unit::Millimetre, size.clone()),
///     PartFeature::new(1, "journal", SizeKind::Shaft, Unit::Millimetre, size),
/// ];
/// let mut fit = FitSaid::default();
/// fit.word = Some(Word::find("slip")?);
/// let mate = Mate { line: 1, hole: 0, shaft: 1, fit, called: None };
/// let joint = job.pair(&mate).expect("both have a size")?;
/// assert_eq!(joint.wanted.to_string(), "0.007 to 0.041 mm");
/// // Neither is made yet.
/// assert_eq!(joint.is_met(), None);
/// assert!(!joint.known().is_unconfirmed());
/// # Ok::<(), fits_core::Error>(())
/// ```
#[derive(Clone, Debug)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct Paired {
    /// The size that both sides share.
    pub nominal: Length,
    /// The hole.
    pub hole: Cut,
    /// The shaft.
    pub shaft: Cut,
    /// The clearance wanted, least and most; interference is below 0.
    pub wanted: Limits,
    /// The clearance of what was read on both sides.
    pub clearance: Option<Length>,
    /// What a shop's word chose.
    pub choice: Option<Choice>,
    /// The inch class was taken, not the pair of ISO 286.
    pub is_inch: bool,
    /// The hole's size less the shaft's, where the note gives them different
    /// sizes that are apart as the fit wants: limits go by the hole's.
    pub apart: Option<Length>,
    /// The bore closes in when its bush is pressed: the hole's size is worked
    /// out from what it measured before, as common practice has it.
    pub closed_in: bool,
}

impl Paired {
    /// How well its limits are known.
    pub fn known(&self) -> Known {
        let part = |cut: &Cut| cut.limits.map_or(Known::Given, Limits::known);
        let known = part(&self.hole).worst(part(&self.shaft));
        if self.closed_in { known.worst(Known::Practice) } else { known }
    }

    /// One of the two.
    ///
    /// ```
    /// use fits_core::job::whole::{PartFeature, FitSaid, Job, Mate, NominalSize, Part, SizeKind};
    /// use fits_core::{shop::words::Word, size::Unit};
    /// use fits_core::standards::iso286::Feature as Surface;
    /// let size = NominalSize::Size("20mm".parse()?);
    /// let mut job = Job::default();
    /// job.parts = vec![Part::default(), Part::default()];
    /// job.features = vec![
    ///     PartFeature::new(0, "bore", SizeKind::Hole, Unit::Millimetre, size.clone()),
    ///     PartFeature::new(1, "journal", SizeKind::Shaft, Unit::Millimetre, size),
    /// ];
    /// let mut fit = FitSaid::default();
    /// fit.word = Some(Word::find("slip")?);
    /// let joint = job.pair(&Mate { line: 1, hole: 0, shaft: 1, fit, called: None })
    ///     .expect("both have a size")?;
    /// assert_eq!(joint.cut(Surface::Hole).label, joint.hole.label);
    /// assert_eq!(joint.cut(Surface::Shaft).limits.map(|it| it.to_string()).as_deref(), Some("19.980 to 19.993 mm"));
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub const fn cut(&self, surface: Surface) -> &Cut {
        match surface {
            Surface::Hole => &self.hole,
            Surface::Shaft => &self.shaft,
        }
    }

    /// Do the two parts read go together as wanted?
    pub fn is_met(&self) -> Option<bool> {
        self.clearance.map(|clearance| self.wanted.contains(clearance))
    }
}

/// A pair of limits, what each is called, and what a word chose.
type Chosen = (Fit, [String; 2], Option<Choice>, bool);

impl Job {
    /// What is said of a bush or of the part about it.
    fn hub(&self, mate: &Mate) -> Hub {
        let hub = |feature: usize| {
            let part = self.features.get(feature).and_then(|feature| self.parts.get(feature.part));
            part.map_or(Hub::Steel, super::Part::hub)
        };
        let (outer, inner) = (hub(mate.hole), hub(mate.shaft));
        let is_bush = |hub| matches!(hub, Hub::BronzeBushing | Hub::PlasticBushing);
        if is_bush(inner) && !is_bush(outer) { inner } else { outer }
    }

    /// Is a part of the joint a thin tube?
    fn is_thin(&self, mate: &Mate) -> bool {
        [mate.hole, mate.shaft].iter().filter_map(|at| self.features.get(*at)).any(|feature| {
            let part = self.parts.get(feature.part);
            part.is_some_and(|part| {
                let said =
                    format!("{} {}", part.name, part.material.as_deref().unwrap_or_default());
                said.to_lowercase().contains("tube")
            })
        })
    }

    /// The joint's circumstance, as a word's choice of classes goes by it.
    ///
    /// ```
    /// use fits_core::{job::whole::{PartFeature, FitSaid, Job, Mate, Part, SizeKind}, shop::words::Hub, size::Unit};
    /// let mut job = Job::default();
    /// job.parts = vec![Part::default(), Part::default()];
    /// job.parts[0].material = Some("cast iron".into());
    /// job.features = vec![
    ///     PartFeature::new(0, "bore", SizeKind::Hole, Unit::Millimetre, None),
    ///     PartFeature::new(1, "journal", SizeKind::Shaft, Unit::Millimetre, None),
    /// ];
    /// let mate = Mate { line: 1, hole: 0, shaft: 1, fit: FitSaid::default(), called: None };
    /// assert_eq!(job.circumstance(&mate, "20mm".parse()?).hub, Hub::CastIron);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn circumstance(&self, mate: &Mate, nominal: Length) -> Circumstance {
        let hub = self.hub(mate);
        Circumstance { hub, thin_wall: self.is_thin(mate), ..Circumstance::plain(nominal) }
    }

    /// A joint's limits; nothing for threads, for bearings (their seats go by
    /// their load) and where no fit or size is said.
    ///
    /// # Errors
    /// The two sizes differ, or no class is defined there.
    ///
    /// ```
    /// use fits_core::job::whole::{PartFeature, FitSaid, Job, Mate, NominalSize, Part, SizeKind};
    /// use fits_core::size::Unit;
    /// let seat = |part, side, class: &str| -> Result<PartFeature, fits_core::Error> {
    ///     let size = NominalSize::Size("20mm".parse()?);
    ///     Ok(PartFeature { class: Some(class.into()), ..PartFeature::new(part, "", side, Unit::Millimetre, size) })
    /// };
    /// let mate = Mate { line: 1, hole: 0, shaft: 1, fit: FitSaid::default(), called: None };
    /// let part = |name: &str| Part { name: name.into(), ..Part::default() };
    /// let mut job = Job::default();
    /// job.parts = ["roller tube", "pin"].map(part).into();
    /// job.features = vec![seat(0, SizeKind::Hole, "H7")?, seat(1, SizeKind::Shaft, "f7")?];
    /// job.mates = vec![mate.clone()];
    /// // ISO 286: H7 is 0 to +21, f7 -41 to -20 micrometres.
    /// let pair = job.pair(&mate).expect("a hole and a shaft")?;
    /// assert_eq!(pair.wanted.lower(), "0.020mm".parse()?);
    /// assert_eq!(pair.wanted.upper(), "0.062mm".parse()?);
    /// assert!(job.circumstance(&mate, "20mm".parse()?).thin_wall);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn pair(&self, mate: &Mate) -> Option<Result<Paired, Error>> {
        let (hole, shaft) = (self.features.get(mate.hole)?, self.features.get(mate.shaft)?);
        if hole.side != SizeKind::Hole || shaft.side != SizeKind::Shaft {
            return None;
        }
        let size =
            |feature: &super::PartFeature| feature.nominal.as_ref().and_then(NominalSize::size);
        let nominal = size(hole).or_else(|| size(shaft))?;
        let bearing = |feature: &super::PartFeature| {
            self.parts.get(feature.part).is_some_and(|part| {
                let name = part.name.to_lowercase();
                let numbered = name
                    .split([' ', '-'])
                    .any(|word| word.len() >= 3 && word.chars().all(|c| c.is_ascii_digit()));
                name.contains("ball") || numbered
            })
        };
        if bearing(hole) || bearing(shaft) {
            return None;
        }
        let sizes = size(hole).zip(size(shaft)).filter(|(hole, shaft)| hole != shaft);
        let chosen = self.chosen(mate, nominal, hole, shaft)?;
        Some(chosen.and_then(|chosen| {
            let mut pair = self.read_in(mate, nominal, chosen)?;
            if let Some((hole, shaft)) = sizes {
                let apart = hole.checked_sub(shaft)?;
                // Two sizes that are apart as the fit wants say the fit once more.
                if !pair.wanted.contains(apart) && pair.clearance.is_none() {
                    let (least, most) = (pair.wanted.lower(), pair.wanted.upper());
                    return Err(Error::not_a_pair(say!(
                            "the hole is {} and the shaft {}: {} apart, where the fit wants {} to {}; write the size that both share",
                            hole, shaft, apart, least, most
                        )));
                }
                pair.apart = Some(apart);
            }
            Ok(pair)
        }))
    }

    /// The limits before anything is read.
    fn chosen(
        &self,
        mate: &Mate,
        nominal: Length,
        hole: &super::PartFeature,
        shaft: &super::PartFeature,
    ) -> Option<Result<Chosen, Error>> {
        let class =
            |feature: &super::PartFeature| feature.class.as_deref().map(str::parse::<Class>);
        let words = mate.fit.words.as_str();
        if let (Some(Ok(above)), Some(Ok(below))) = (class(hole), class(shaft)) {
            let names = [above.to_string(), below.to_string()];
            return Some(
                Fit::of_classes(nominal, above, below).map(|fit| (fit, names, None, false)),
            );
        }
        let inch = words.split([' ', ',']).find_map(|word| word.parse::<b41::Class>().ok());
        if let Some(inch) = inch {
            let names = [inch.to_string(), inch.to_string()];
            return Some(inch.fit(nominal).map(|fit| (fit, names, None, true)));
        }
        let word = mate.fit.word.or_else(|| {
            // Only how loose or tight: the hole is made as for such a fit.
            mate.fit.clearance?;
            let name = if clearance_sign(&mate.fit) < 0 { "press" } else { "running" };
            crate::shop::words::Word::find(name).ok()
        })?;
        Some(word.choose(&self.circumstance(mate, nominal)).and_then(|choice| {
            let by_inch =
                hole.unit == Unit::Inch || shaft.unit == Unit::Inch && hole.nominal.is_none();
            let inch = by_inch
                .then(|| choice.inch.parse::<b41::Class>().and_then(|class| class.fit(nominal)));
            let one_sided = class(hole).is_some() || class(shaft).is_some();
            if let (Some(Ok(fit)), false) = (inch, one_sided) {
                return Ok((
                    fit,
                    [choice.inch.to_owned(), choice.inch.to_owned()],
                    Some(choice),
                    true,
                ));
            }
            // A class that the note gives for one side stands.
            let above = class(hole).transpose()?.unwrap_or(choice.iso.0);
            let below = class(shaft).transpose()?.unwrap_or(choice.iso.1);
            let fit = Fit::of_classes(nominal, above, below)?;
            Ok((fit, [above.to_string(), below.to_string()], Some(choice), false))
        }))
    }

    /// The limits that follow from what was read.
    fn read_in(&self, mate: &Mate, nominal: Length, chosen: Chosen) -> Result<Paired, Error> {
        let (fit, [hole_name, shaft_name], choice, is_inch) = chosen;
        let wanted = match (&mate.fit.clearance, clearance_sign(&mate.fit)) {
            (Some(said), 0..) => *said,
            (Some(said), _) => {
                Limits::new(said.upper().checked_neg()?, said.lower().checked_neg()?)?
            }
            (None, _) => fit.clearance(),
        };
        let reading =
            |feature: usize| self.features.get(feature).and_then(super::PartFeature::reading);
        let shaft_read = reading(mate.shaft).map(|reading| reading.size);
        let free = reading(mate.hole).filter(|reading| reading.state == State::Free);
        let closing = free.and_then(|reading| self.closes_in(mate.hole, reading.size));
        let hole_read = match closing {
            Some(limits) => Some(limits?),
            None => reading(mate.hole)
                .map(|reading| Limits::new(reading.size, reading.size))
                .transpose()?,
        };
        let closed_in = free.is_some_and(|reading| {
            hole_read.is_some_and(|limits| {
                limits.upper() != reading.size || limits.lower() != reading.size
            })
        });
        let cut = |limits: Limits, label: &str| Cut {
            limits: Some(limits),
            aim: limits.middle(),
            label: label.to_owned(),
            in_hand: None,
        };
        let mut hole = cut(fit.hole(), &hole_name);
        let mut shaft = cut(fit.shaft(), &shaft_name);
        let said = mate.fit.clearance.is_some();
        let percent =
            choice.as_ref().filter(|_| !said).map_or(100, |choice| choice.word.suit_percent());
        let to_suit = |limits: Option<Limits>, aim: Length| Cut {
            limits,
            aim,
            label: "to suit".into(),
            in_hand: None,
        };
        match (hole_read, shaft_read) {
            (Some(read), None) if said => {
                let (limits, aim) = shaft_for(read, wanted)?;
                shaft = to_suit(limits, aim);
            }
            (None, Some(read)) if said => {
                hole = to_suit(
                    Some(Limits::new(
                        read.checked_add(wanted.lower())?,
                        read.checked_add(wanted.upper())?,
                    )?),
                    read.checked_add(wanted.middle())?,
                );
            }
            (None, None) if said => {
                let (limits, aim) = shaft_for(fit.hole(), wanted)?;
                shaft = to_suit(limits, aim);
            }
            (Some(read), None) => {
                let suited = fit.suited(Surface::Hole, read, percent)?;
                shaft = cut(suited.shaft(), "to suit");
            }
            (None, Some(read)) => {
                let suited = fit.suited(Surface::Shaft, Limits::new(read, read)?, percent)?;
                hole = cut(suited.hole(), "to suit");
            }
            _ => {}
        }
        hole.in_hand = hole_read.map(Limits::middle);
        shaft.in_hand = shaft_read;
        let clearance = match (hole_read, shaft_read) {
            (Some(hole), Some(shaft)) => Some(hole.middle().checked_sub(shaft)?),
            _ => None,
        };
        Ok(Paired {
            nominal,
            hole,
            shaft,
            wanted,
            clearance,
            choice,
            is_inch,
            apart: None,
            closed_in,
        })
    }

    /// What the bore of a bush measures once it is pressed in, where it was
    /// measured before: it closes by 70 to 100 % of the interference of its
    /// outside (common practice, as the shop's words have it for bronze; a
    /// plastic one by all of it).
    fn closes_in(&self, bore: usize, read: Length) -> Option<Result<Limits, Error>> {
        let part = self.features.get(bore)?.part;
        let is_bush =
            matches!(self.parts.get(part)?.hub(), Hub::BronzeBushing | Hub::PlasticBushing)
                || self.parts.get(part)?.name.to_lowercase().contains("bush");
        let press = self.mates.iter().find(|mate| {
            self.features.get(mate.shaft).is_some_and(|feature| feature.part == part)
                && mate.fit.word.is_none_or(|word| !word.moves())
        })?;
        if !is_bush {
            return None;
        }
        let size =
            |feature: usize| self.features.get(feature)?.reading().map(|reading| reading.size);
        let nominal = self.features.get(press.shaft)?.nominal.as_ref()?.size()?;
        let chosen = self.chosen(
            press,
            nominal,
            self.features.get(press.hole)?,
            self.features.get(press.shaft)?,
        )?;
        Some(chosen.and_then(|(fit, ..)| {
            let outside =
                size(press.shaft).map_or(Ok(fit.shaft()), |size| Limits::new(size, size))?;
            let housing =
                size(press.hole).map_or(Ok(fit.hole()), |size| Limits::new(size, size))?;
            let least = outside.lower().checked_sub(housing.upper())?.max(Length::ZERO);
            let most = outside.upper().checked_sub(housing.lower())?.max(Length::ZERO);
            let lower = read.checked_sub(most)?;
            let upper = read.checked_sub(least.checked_scale(7, 10)?)?;
            Ok(Limits::new(lower, upper)?.known_as(Known::Practice))
        }))
    }
}

/// The shaft for a bore and a wanted clearance: its limits, where the bore does
/// not vary by more than is wanted, and its aim.
fn shaft_for(bore: Limits, wanted: Limits) -> Result<(Option<Limits>, Length), Error> {
    let aim = bore.middle().checked_sub(wanted.middle())?;
    let limits = Limits::new(
        bore.upper().checked_sub(wanted.upper())?,
        bore.lower().checked_sub(wanted.lower())?,
    );
    Ok((limits.ok(), aim))
}

/// Which way the amount of a fit goes: below 0 for an interference.
fn clearance_sign(fit: &FitSaid) -> i32 {
    let tight = ["press", "drive", "interference", "tight", "shrink"];
    match fit.word {
        Some(word) if word.moves() => 1,
        Some(_) => -1,
        None if tight.iter().any(|word| fit.words.contains(word)) => -1,
        None => 1,
    }
}
