//! A ball bearing by its number, answered.

use fits_core::{
    Fit, Length, Limits,
    shop::{
        Reading, Verdict,
        warm::{Warm, stands},
    },
    source::{Known, Reason},
    speech::Speech,
    standards::{
        bought::{Ball, BallSeat, Turning, ball_seats},
        iso286::Feature,
        materials::{Family, Material},
        processes::Process,
    },
};

use crate::{
    answer::{ClearanceFigures, Mm},
    problem::Problem,
    query::Size,
    questions::{
        bearing::{
            BearingAnswer, BearingOf,
            figures::{BearingSeat, SeatReading},
        },
        part::{resolve::from_core, warm::celsius},
        recalled_names,
        why::answered::{between, said},
    },
    session::Session,
};

/// Bearing rings are of through-hardened steel.
const RINGS: &str = "hardened steel";

/// Further off its seat than this share of it, a reading is of something else.
const OFF: i64 = 50;

impl Session {
    /// A ball bearing and the seats of its rings.
    pub(crate) fn bearing(&self, of: &BearingOf) -> Result<BearingAnswer, Problem> {
        let (ball, is_closed) = Self::ball(of)?;
        let housing = of.housing.as_ref().map(|spot| self.material_named(spot)).transpose()?;
        let in_light_alloy = housing.as_ref().is_some_and(|it| is_light(it.family()));
        let turning = of.turning.as_ref().map(|spot| spot.value);
        let duty = of.duty.as_ref().map(|spot| spot.value);
        let found = ball_seats(ball, turning, duty, in_light_alloy)
            .map_err(|error| from_core(&error, of.number.at.clone()))?;
        let readings = [(Feature::Shaft, &of.shaft), (Feature::Hole, &of.bore)];
        let mut read = Vec::new();
        for (feature, size) in readings {
            if let Some(size) = size {
                read.push((feature, self.seat_reading(ball, feature, size)?, size));
            }
        }
        let at_c = self.bearing_at(of, housing.as_deref())?;
        let mut seats = Vec::new();
        for seat in &found {
            let reading = match read.iter().find(|(feature, ..)| *feature == seat.feature) {
                Some((_, reading, size)) => Some(
                    judged(ball, seat, *reading)
                        .map_err(|error| from_core(&error, size.at.clone()))?,
                ),
                None => None,
            };
            let warm = match (at_c, &housing, seat.feature) {
                (Some(at), Some(housing), Feature::Hole) => Some(
                    at_temperature(seat.fit, housing, at)
                        .map_err(|error| from_core(&error, of.number.at.clone()))?,
                ),
                _ => None,
            };
            seats.push(BearingSeat {
                kind: seat.feature,
                turns: seat.turning,
                case: seat.case,
                class: seat.class.to_string(),
                lower_mm: Mm(seat.limits().lower()),
                upper_mm: Mm(seat.limits().upper()),
                clearance: play_of(seat.fit.clearance()),
                warm,
                lathe: seat.lathe().map(Process::name),
                reading,
                reason: seat.reason,
                source: seat.source,
                known: seat.known.worst(seat.fit.known()),
            });
        }
        let (known, recalled) = how_known(ball, &seats);
        let closed = ball.width(true);
        Ok(BearingAnswer {
            number: ball.number(),
            bore_mm: Mm(ball.bore()),
            outside_mm: Mm(ball.outside()),
            width_mm: Mm(ball.width(is_closed == Some(true))),
            closed_width_mm: (is_closed.is_none() && closed != ball.width(false))
                .then_some(Mm(closed)),
            corner_mm: ball.corner().map(|(corner, _)| Mm(corner)),
            fillet_under_mm: ball.fillet_under().map(Mm),
            housing_material: housing.as_ref().map(|it| it.name().to_owned()),
            at_c,
            opens_in_ten_degrees_mm: housing
                .as_deref()
                .and_then(|it| opens_in_ten_degrees(ball, it))
                .map(Mm),
            notes: notes(ball, housing.as_deref(), &seats),
            seats,
            source: ball.source(),
            known,
            recalled,
        })
    }

    /// The bearing of the number typed, and whether it is closed, where that is
    /// said.
    fn ball(of: &BearingOf) -> Result<(Ball, Option<bool>), Problem> {
        let (ball, is_closed) = Ball::named(&of.number.value).map_err(|error| {
            let near = Ball::near(&of.number.value);
            let ways: Vec<_> =
                near.iter().map(|ball| format!("`bearing {}`", ball.number())).collect();
            from_core(&error, of.number.at.clone()).advise(format!("near it: {}", ways.join(", ")))
        })?;
        match (&of.is_closed, is_closed) {
            (Some(said), true) if !said.value => Err(Problem::new(
                format!("{} has shields or seals: it is not open", of.number.value),
                said.at.clone(),
            )
            .advise(format!("an open one is `bearing {}, open`", ball.number()))),
            (Some(said), _) => Ok((ball, Some(said.value))),
            (None, is_closed) => Ok((ball, is_closed.then_some(true))),
        }
    }

    /// A reading of a seat: one far off it was read of something else, or in the
    /// other unit.
    fn seat_reading(&self, ball: Ball, feature: Feature, size: &Size) -> Result<Length, Problem> {
        let read = self.nominal(size)?;
        let nominal = ball.seat_size(feature);
        let off = read.checked_sub(nominal).and_then(Length::checked_abs);
        if off.and_then(|off| off.checked_mul(OFF)).is_ok_and(|off| off <= nominal) {
            return Ok(read);
        }
        let (what, ring) = match feature {
            Feature::Shaft => ("shaft", "bore"),
            Feature::Hole => ("housing", "outside"),
        };
        let seat = said(self.shown, nominal);
        Err(Problem::new(
            format!(
                "{} is not a seat for a {}: its {ring} is {seat}",
                said(self.shown, read),
                ball.number()
            ),
            size.at.clone(),
        )
        .advise(format!("a reading has its unit, as `bearing {}, {what} {seat}`", ball.number())))
    }

    /// The one temperature of the housing and the ring.
    fn bearing_at(
        &self,
        of: &BearingOf,
        housing: Option<&Material>,
    ) -> Result<Option<f64>, Problem> {
        let Some(warm) = &of.warm else { return Ok(None) };
        let (first, second) = &warm.value;
        if let Some(second) = second {
            return Err(Problem::new("a housing takes one temperature", second.at.clone())
                .advise("as in `bearing 6204, housing aluminium, warm 60C`"));
        }
        let at = self.amount(first)?;
        let Some(housing) = housing else {
            return Err(Problem::new("what the housing is made of is not said", warm.at.clone())
                .advise("as in `bearing 6204, housing aluminium, warm 60C`"));
        };
        for material in [housing, rings().map_err(|error| from_core(&error, warm.at.clone()))?] {
            stands(material, celsius(at)).map_err(|error| from_core(&error, first.at.clone()))?;
        }
        Ok(Some(at))
    }
}

/// Why a bearing's figures are what they are.
pub(crate) fn reasons(answer: &BearingAnswer) -> Vec<Reason> {
    let reason = |seat: &BearingSeat| Reason {
        figure: format!(
            "{} {}, {}",
            if seat.kind == Feature::Hole { "housing" } else { "shaft" },
            seat.class,
            seat.case
        ),
        value: between(seat.lower_mm.0, seat.upper_mm.0),
        rule: seat.reason.into(),
        source: seat.source.into(),
        known: seat.known,
    };
    let sizes = Reason {
        figure: format!("bearing {}", answer.number),
        value: Speech::of(
            "{} x {} x {}",
            [answer.bore_mm.0, answer.outside_mm.0, answer.width_mm.0],
        ),
        rule: "boundary sizes by number".into(),
        source: answer.source.into(),
        known: Ball::named(answer.number).map_or(answer.known, |(ball, _)| ball.known()),
    };
    [sizes].into_iter().chain(answer.seats.iter().map(reason)).collect()
}

fn notes(ball: Ball, housing: Option<&Material>, seats: &[BearingSeat]) -> Vec<String> {
    let mut notes = Vec::new();
    let mut finer: Vec<&str> =
        seats.iter().filter(|seat| seat.lathe.is_none()).map(|seat| &*seat.class).collect();
    finer.dedup();
    if !finer.is_empty() {
        notes.push(format!(
            "{}: finer than a lathe holds: turn a few tenths over, polish and mic",
            finer.join(" and ")
        ));
    }
    if housing.is_some_and(|it| is_light(it.family())) {
        notes.push(
            "light alloy: the housing one step tighter than the table (common practice)".to_owned(),
        );
    }
    let turns = |seat: &BearingSeat| seat.turns == Turning::Shaft;
    if seats.iter().any(turns)
        && !seats.iter().any(|seat| turns(seat) && seat.kind == Feature::Shaft)
    {
        notes.push(
            "no shaft seat is tabulated for a heavy load on so small a shaft: ask the maker, or take a larger bearing".to_owned(),
        );
    }
    notes.push(
        "press the tight ring, never through the balls; the maker's table comes first".to_owned(),
    );
    if !ball.note().is_empty() {
        notes.push(ball.note().to_owned());
    }
    notes
}

fn is_light(family: Family) -> bool {
    matches!(family, Family::Aluminium | Family::Magnesium)
}

fn rings() -> Result<&'static Material, fits_core::Error> {
    Material::find(RINGS)
}

/// What a housing opens by on a ring that warms with it by ten degrees; below 0
/// it closes. None where that is too little to matter.
fn opens_in_ten_degrees(ball: Ball, housing: &Material) -> Option<Length> {
    let limits = Limits::new(ball.outside(), ball.outside()).ok()?;
    let fit = Fit::of_limits(ball.outside(), limits, limits).ok()?;
    let play = at_temperature(fit, housing, 30.0).ok()?.aim_mm.0;
    play.checked_abs().is_ok_and(|size| size > Length::MICROMETRE).then_some(play)
}

fn play_of(clearance: Limits) -> ClearanceFigures {
    ClearanceFigures {
        min_mm: Mm(clearance.lower()),
        max_mm: Mm(clearance.upper()),
        aim_mm: Mm(clearance.middle()),
    }
}

/// The seat on the ring with both at a temperature.
fn at_temperature(
    fit: Fit,
    housing: &Material,
    at: f64,
) -> Result<ClearanceFigures, fits_core::Error> {
    Warm::of(fit, housing, rings()?)?.clearance_at(celsius(at)).map(play_of)
}

/// A reading against the seat's limits and on the ring.
fn judged(ball: Ball, seat: &BallSeat, read: Length) -> Result<SeatReading, fits_core::Error> {
    let ring = ball.ring(seat.feature)?;
    let (min, max) = match seat.feature {
        Feature::Shaft => (ring.lower().checked_sub(read)?, ring.upper().checked_sub(read)?),
        Feature::Hole => (read.checked_sub(ring.upper())?, read.checked_sub(ring.lower())?),
    };
    let verdict = Reading::judge(seat.feature, seat.limits(), read)?.verdict;
    Ok(SeatReading { reading_mm: Mm(read), verdict, min_mm: Mm(min), max_mm: Mm(max) })
}

impl BearingAnswer {
    /// Is a reading good for no seat of its ring?
    pub(crate) fn is_out_of_limits(&self) -> bool {
        [Feature::Shaft, Feature::Hole].into_iter().any(|feature| {
            let mut read = self.seats.iter().filter(|seat| seat.kind == feature);
            let mut judged = read.by_ref().filter_map(|seat| seat.reading).peekable();
            judged.peek().is_some() && judged.all(|reading| reading.verdict != Verdict::Good)
        })
    }
}

/// How the least known figure is known, and what of them is recalled.
fn how_known(ball: Ball, seats: &[BearingSeat]) -> (Known, String) {
    let mut went_in = vec![(format!("the sizes of a {}", ball.number()), ball.known())];
    if ball.corner().is_some() {
        went_in.push((format!("the corner of a {}", ball.number()), ball.corner_known()));
    }
    went_in.extend(seats.iter().map(|seat| (format!("the seat {}", seat.class), seat.known)));
    let known = went_in.iter().map(|(_, known)| *known).fold(Known::Given, Known::worst);
    (known, recalled_names(went_in).join(", "))
}
