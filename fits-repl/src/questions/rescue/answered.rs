//! A part that came out wrong, answered.

use fits_core::{
    Fit, Length, Limits,
    shop::{
        rescue::{Counterpart as Mate, RetainingCompound, Trouble, Way},
        words::{Circumstance, Word},
    },
    size::Unit,
    standards::{
        b41,
        bought::{self, Load, seat},
        iso286::Feature,
    },
};

use crate::{
    answer::Mm,
    problem::Problem,
    query::{Spot, Units},
    questions::{
        part::resolve::from_core,
        rescue::{
            asked::EXAMPLE,
            figures::{NamedLimits, RescueAnswer, WayFigures},
        },
    },
    session::Session,
    words::said::{Said, Value},
};

impl Session {
    /// The ways out for a part in trouble.
    #[allow(clippy::too_many_lines, reason = "one clause after another, each short")]
    pub(crate) fn rescue(&self, said: &Said) -> Result<RescueAnswer, Problem> {
        let unit = self.shown.unit();
        let mut notes = Vec::new();
        let part = part_of(said)?;
        let word = match &said.words[..] {
            [] => None,
            [one] => {
                Some(Word::find(&one.value).map_err(|error| from_core(&error, one.at.clone()))?)
            }
            [_, again, ..] => {
                return Err(Problem::new("two fits are said", again.at.clone()).advise(EXAMPLE));
            }
        };
        // Nothing that is said is ignored.
        let idle = [
            ("od", part == Feature::Shaft, "it is of the part about a hole"),
            ("bush", part == Feature::Shaft, "a bush goes into a hole; a sleeve is of steel"),
            ("stands", !said.has("bearing"), "it is of a bearing's ring"),
        ];
        if let Some((word, _, why)) =
            idle.iter().find(|(word, is_idle, _)| *is_idle && said.has(word))
        {
            let at = said.all(word).next().map_or(0..said.end, |clause| clause.at.clone());
            return Err(
                Problem::new(format!("`{word}` does not go here: {why}"), at).advise(EXAMPLE)
            );
        }
        let is = self.readings(said, part)?;
        let bearing = self.ring_of(said, part)?;
        let mate = if let Some(ring) = &bearing {
            if let Some((other, _)) = said.sizes_of("mate") {
                return Err(Problem::new("the bearing is the mate already", other.at.clone())
                    .advise(EXAMPLE));
            }
            let family = if part == Feature::Hole { "bearing outside" } else { "bearing bore" };
            let limits = bought::Family::named(family)
                .and_then(|family| family.part(ring.value))
                .map_err(|error| from_core(&error, ring.at.clone()))?
                .limits;
            Some(Mate { limits, is_bought: true })
        } else {
            self.span_of(said, "mate")?.map(|limits| Mate { limits, is_bought: false })
        };
        let wanted = self.should_be(said, part, word, mate, &mut notes)?;
        let size = |name: &str| said.size(name).map(|size| self.nominal(size)).transpose();
        let metal = |name: &str| said.name(name).map(|name| self.material_named(name)).transpose();
        let holes = ["hub", "hole", "bore"].into_iter().filter_map(|word| said.name(word));
        let holes: Vec<_> = holes.collect();
        if let [_, again, ..] = holes[..] {
            let message = "what the hole is in is said twice";
            return Err(Problem::new(message, again.at.clone()).advise(EXAMPLE));
        }
        let hub = holes.first().map(|name| self.material_named(name)).transpose()?;
        let (shaft, bush) = (metal("shaft")?, metal("bush")?);
        let mut trouble = Trouble::new(part, is, wanted, unit);
        (trouble.word, trouble.mate) = (word, mate);
        trouble.metals = [hub.as_deref(), shaft.as_deref()];
        trouble.bush = bush.as_deref();
        (trouble.wall, trouble.around, trouble.long) = (size("wall")?, size("od")?, size("long")?);
        let duty = &mut trouble.duty;
        duty.bearing = bearing.is_some();
        duty.turns =
            said.has("turns") || bearing.is_some() && part == Feature::Shaft && !said.has("stands");
        duty.people = said.has("people");
        duty.shock = said.has("shock");
        duty.oily = said.has("oily");
        duty.torque_n_m = said.amount("torque").map(|torque| self.amount(torque)).transpose()?;
        duty.celsius = said.amount("at").map(|heat| self.amount(heat)).transpose()?;
        let found = trouble.ways().map_err(|error| {
            let at = said.sizes.first().map_or(0..said.end, |size| size.at.clone());
            from_core(&error, at).advise(EXAMPLE)
        })?;
        let mut reasons: Vec<_> = found.ways.iter().map(Way::reason).collect();
        reasons.extend(RetainingCompound::all().map(RetainingCompound::reason));
        let ways = found.ways.into_iter().map(|way| figures_of(way, unit)).collect();
        Ok(RescueAnswer {
            part,
            is_min_mm: Mm(is.lower()),
            is_max_mm: Mm(is.upper()),
            should_be_min_mm: Mm(wanted.lower()),
            should_be_max_mm: Mm(wanted.upper()),
            missing_mm: Mm(found.missing),
            mate_min_mm: Mm(found.mate.lower()),
            mate_max_mm: Mm(found.mate.upper()),
            mate_taken: found.is_mate_taken,
            gap_min_mm: Mm(found.gap.lower()),
            gap_max_mm: Mm(found.gap.upper()),
            long_mm: trouble.long.map(Mm),
            torque_n_m: trouble.duty.torque_n_m,
            at_c: trouble.duty.celsius,
            hub_material: hub.as_ref().map(|it| it.name().to_owned()),
            shaft_material: shaft.as_ref().map(|it| it.name().to_owned()),
            bush_material: bush.as_ref().map(|it| it.name().to_owned()),
            duty: ["turns", "shock", "oily", "people"]
                .into_iter()
                .filter(|word| said.has(word))
                .collect(),
            ways,
            notes,
            cautions: found.cautions.iter().map(|hazard| hazard.caution()).collect(),
            reasons,
            is,
            wanted,
            mate: found.mate,
            is_ring: bearing.is_some(),
        })
    }

    /// What was read: bare sizes, or a size and how far it is over or under.
    fn readings(&self, said: &Said, part: Feature) -> Result<Limits, Problem> {
        let mut read = Vec::new();
        for size in &said.sizes {
            read.push(self.nominal(size)?);
        }
        for (word, sign) in [("over", 1), ("under", -1)] {
            let Some(off) = said.size(word) else { continue };
            let nominal = match (&said.sizes[..], said.sizes_of("should be")) {
                ([only], None) => self.nominal(only)?,
                ([], Some((wanted, None))) => self.nominal(wanted)?,
                ([], None) => {
                    let ring = self.ring_of(said, part)?.ok_or_else(|| {
                        Problem::new("what size it should be is not said", off.at.clone())
                            .advise(format!("as in `rescue {} 3 thou {word} 3/4in`", part.word()))
                    })?;
                    ring.value
                }
                _ => {
                    return Err(Problem::new(
                        "either what it measures, or how far it is off: not both",
                        off.at.clone(),
                    )
                    .advise(EXAMPLE));
                }
            };
            let off = self.length(off)?.checked_mul(sign).and_then(|off| nominal.checked_add(off));
            read = vec![off.map_err(|error| from_core(&error, 0..said.end))?];
        }
        let (Some(least), Some(most)) = (read.iter().min(), read.iter().max()) else {
            return Err(Problem::new("what the part measures is missing", said.end..said.end)
                .advise(EXAMPLE));
        };
        Limits::new(*least, *most).map_err(|error| from_core(&error, 0..said.end))
    }

    /// The size of the bearing's ring on this part, said or by the bearing's number.
    fn ring_of(&self, said: &Said, part: Feature) -> Result<Option<Spot<Length>>, Problem> {
        if let Some(number) = said.name("bearing") {
            let (ball, _) = bought::Ball::named(&number.value)
                .map_err(|error| from_core(&error, number.at.clone()))?;
            return Ok(Some(Spot { value: ball.seat_size(part), at: number.at.clone() }));
        }
        let Some(size) = said.size("bearing") else { return Ok(None) };
        Ok(Some(Spot { value: self.nominal(size)?, at: size.at.clone() }))
    }

    /// A clause's size or range.
    fn span_of(&self, said: &Said, word: &str) -> Result<Option<Limits>, Problem> {
        let Some((one, other)) = said.sizes_of(word) else { return Ok(None) };
        let lower = self.nominal(one)?;
        let upper = other.map_or(Ok(lower), |other| self.nominal(other))?;
        let limits = Limits::new(lower, upper);
        limits.map(Some).map_err(|error| from_core(&error, one.at.clone()))
    }

    /// What it should be: as said, by the bearing's seat, or what goes with the mate.
    fn should_be(
        &self,
        said: &Said,
        part: Feature,
        word: Option<Word>,
        mate: Option<Mate>,
        notes: &mut Vec<String>,
    ) -> Result<Limits, Problem> {
        let whole = |error: fits_core::Error| from_core(&error, 0..said.end);
        if let Some(limits) = self.span_of(said, "should be")? {
            return Ok(limits);
        }
        if let Some(ring) = self.ring_of(said, part)? {
            let nominal = ring.value;
            let turns = said.has("turns") || part == Feature::Shaft && !said.has("stands");
            let load = if turns { Load::TurnsNormal } else { Load::StandsSlides };
            let failed = |error: fits_core::Error| from_core(&error, ring.at.clone());
            let seats = seat(part, load, nominal).map_err(failed)?;
            let class = seats
                .first()
                .ok_or_else(|| Problem::new("no seat is listed", ring.at.clone()))?
                .class;
            let other = if turns { "stands" } else { "turns" };
            notes.push(format!(
                "seat taken as {class}, load {}; say `{other}` for the other",
                load.words()
            ));
            return class.limits(nominal).map_err(failed);
        }
        if (said.has("over") || said.has("under"))
            && let Some(size) = said.sizes.first()
        {
            let size = self.nominal(size)?;
            return Limits::new(size, size).map_err(whole);
        }
        let Some(mate) = mate else {
            return Err(
                Problem::new("what it should be is not said", said.end..said.end).advise(EXAMPLE)
            );
        };
        let middle = mate.limits.middle();
        let Some(word) = word else {
            notes.push("no fit is said: it should be the mate's size".into());
            return Limits::new(middle, middle).map_err(whole);
        };
        let choice = word.choose(&Circumstance::plain(middle)).map_err(whole)?;
        let inch = |class: b41::Class| class.fit(middle);
        let fit = (self.shown == Units::Inches)
            .then(|| choice.inch.parse().and_then(inch).ok())
            .flatten()
            .map_or_else(|| Fit::of_classes(middle, choice.iso.0, choice.iso.1), Ok)
            .map_err(whole)?;
        let suited = fit.suited(part.mate(), mate.limits, word.suit_percent()).map_err(whole)?;
        Ok(suited.part(part))
    }
}

/// Which part is wrong.
fn part_of(said: &Said) -> Result<Feature, Problem> {
    let flag = |word: &str| said.all(word).find(|clause| matches!(clause.value, Value::Nothing));
    match (flag("hole").or_else(|| flag("bore")), flag("shaft")) {
        (Some(_), None) => Ok(Feature::Hole),
        (None, Some(_)) => Ok(Feature::Shaft),
        (Some(_), Some(shaft)) => {
            Err(Problem::new("is the hole or the shaft wrong?", shaft.at.clone()).advise(EXAMPLE))
        }
        (None, None) => {
            let at = said.sizes.first().map_or(0..said.end, |size| size.at.clone());
            Err(Problem::new("`hole` or `shaft` is not said", at).advise(EXAMPLE))
        }
    }
}

fn figures_of(way: Way, unit: Unit) -> WayFigures {
    WayFigures {
        way: way.name,
        verdict: way.verdict,
        strength: way.strength,
        effort: way.effort,
        who: way.who,
        limits: way.limits.into_iter().map(|(of, limits)| NamedLimits::of(of, limits)).collect(),
        figures: way.figures.into_iter().collect(),
        notes: way.says,
        ask: way.ask.map(|ask| ask.said_in(unit)),
        known: way.known,
        source: way.source,
    }
}
