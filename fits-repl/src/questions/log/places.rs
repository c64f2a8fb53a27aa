//! What was read at several places of a part whose log is open, or of a warm
//! one: the reading that decides, what the places tell of its form, and what
//! to do about that.

use std::{fmt::Write as _, ops::Range};

use fits_core::{
    Length,
    job::{Entry, Gauge, PassLog, Place, Seen},
    shop::cooling::{self, Body},
    standards::{iso286::Feature, materials::Material},
};
use uom::si::{f64::ThermodynamicTemperature, thermodynamic_temperature::degree_celsius};

use crate::{
    answer::{EntryPlace, FormOfPlaces, Mm},
    problem::Problem,
    query::{Readings, Size, Units},
    questions::{
        log::{
            answered::{no_log, shown_in},
            readings_reader::{ABOUT, ALONG},
        },
        part::{mates::is_inch, resolve::from_core},
    },
    session::Session,
};

/// What was read, at 20 °C.
#[derive(Default)]
pub(crate) struct WasRead {
    /// The place that decides.
    pub(crate) size: Option<Length>,
    pub(crate) seen: Seen,
    /// What was corrected.
    pub(crate) notes: Vec<String>,
}

/// Places of one part are no further apart than so many tenths of its size;
/// more is another unit or a slip. Common practice, no source.
const APART: i128 = 1;

impl Session {
    /// Readings as typed, at 20 °C, and the one that decides.
    pub(crate) fn was_read(&self, read: Option<&Readings>) -> Result<WasRead, Problem> {
        let Some(read) = read else { return Ok(WasRead::default()) };
        one_unit(read)?;
        let Some(log) = self.shop.log.as_ref().and_then(|open| open.log.as_ref()) else {
            return Err(no_log(&read.at()));
        };
        let mut shown = Vec::with_capacity(read.places.len());
        let mut first = None;
        for place in &read.places {
            let mut sizes = Vec::with_capacity(place.sizes.len());
            for size in &place.sizes {
                let length = self.nominal(size)?;
                if !length.is_positive() {
                    return Err(Problem::new("nothing is not a size of a part", size.at.clone())
                        .advise("give what the instrument showed"));
                }
                far_apart(*first.get_or_insert(length), length, size)?;
                sizes.push(length);
            }
            shown.push(sizes);
        }
        let warm = self.warm_part(read, log)?;
        let gauge = self.read_with(read, log)?;
        let mut notes: Vec<String> = gauge
            .iter()
            .map(|Gauge { name, .. }| {
                let own = &log.opening.instrument;
                format!("read with {name}, for this entry: the log goes on with {own}")
            })
            .collect();
        if warm.is_none()
            && let ([place], [size]) = (&read.places[..], &shown.concat()[..])
            && place.name.is_none()
        {
            let mut seen = Seen::default();
            seen.gauge = gauge;
            return Ok(WasRead { size: Some(*size), seen, notes });
        }
        let mut seen = Seen::default();
        seen.gauge = gauge;
        for (typed, shown) in read.places.iter().zip(shown) {
            let mut at_20 = Vec::with_capacity(shown.len());
            for (size, typed) in shown.iter().zip(&typed.sizes) {
                at_20.push(match &warm {
                    Some((part, ..)) => cooling::size_at_20(*size, *part, steel_gauge(*part))
                        .map_err(|error| from_core(&error, typed.at.clone()))?,
                    None => *size,
                });
            }
            seen.places.push(Place {
                place: typed.name.as_ref().map(|name| name.value.clone()),
                read: at_20,
                shown: if warm.is_some() { shown } else { Vec::new() },
            });
        }
        let decides = seen.decides(log.opening.feature);
        let size = decides.map(|(_, size)| size);
        if let Some((part, celsius, material)) = warm {
            seen.at_c = Some(celsius);
            seen.material = Some(material.clone());
            notes.extend(self.warm_note(log, size, (part, celsius), &material));
        }
        Ok(WasRead { size, seen, notes })
    }

    /// What it was read with, where that is not the log's own instrument.
    fn read_with(&self, read: &Readings, log: &PassLog) -> Result<Option<Gauge>, Problem> {
        let Some(name) = &read.with else { return Ok(None) };
        let opening = &log.opening;
        let named = self.instrument_named(name)?;
        if named == opening.instrument {
            return Ok(None);
        }
        let gauge = self
            .gauge_called(&named, opening.feature, opening.nominal)
            .map_err(|error| from_core(&error, name.at.clone()))?;
        Ok(Some(Gauge { name: gauge.name, repeat: gauge.off.repeat, bias: gauge.off.bias }))
    }

    /// How warm the part was, and what it is made of: as typed, as the log
    /// began, or as the setting says.
    fn warm_part(
        &self,
        read: &Readings,
        log: &PassLog,
    ) -> Result<Option<(Body, f64, String)>, Problem> {
        let Some(at) = &read.at else { return Ok(None) };
        let celsius = self.amount(&at.temperature)?;
        let place = &at.temperature.at;
        let of_log = log
            .opening
            .material
            .as_ref()
            .map(|name| crate::query::Spot { value: name.clone(), at: place.clone() });
        let named = read.material.clone().or(of_log).or_else(|| self.usual_material());
        let Some(named) = named else {
            return Err(Problem::new(
                "what a warm part is of decides how much it grows",
                place.clone(),
            )
            .advise("name it, for instance")
            .fix(place.end..place.end, " steel"));
        };
        let material = self.material_named(&named)?;
        let Some(expansion) = material.expansion() else {
            return Err(Problem::new(format!("how much {material} grows is not known"), named.at)
                .advise("let it cool to 20 °C, or name its like"));
        };
        let temperature = ThermodynamicTemperature::new::<degree_celsius>(celsius);
        let part = Body { expansion, temperature };
        cooling::growth(Length::ZERO, part).map_err(|error| from_core(&error, place.clone()))?;
        Ok(Some((part, celsius, material.name().to_owned())))
    }

    fn warm_note(
        &self,
        log: &PassLog,
        size: Option<Length>,
        (part, celsius): (Body, f64),
        material: &str,
    ) -> Option<String> {
        let growth = cooling::growth(size?, part).ok()?;
        let degrees = match self.shown {
            Units::Millimetres => format!("{celsius:.0} °C"),
            Units::Inches => format!("{:.0} °F", celsius * 1.8 + 32.0),
        };
        let way = if growth.is_negative() { "smaller" } else { "larger" };
        let by = shown_in(self.shown, growth.checked_abs().ok()?);
        let tolerance = log.opening.limits().ok()?.tolerance();
        let cool = if growth.checked_abs().ok()? > tolerance.half() {
            "; let it cool before the last cut: that is more than half of the tolerance"
        } else {
            ""
        };
        Some(format!(
            "{material} at {degrees} is {by} {way} than at 20 °C: that is taken out, with the \
             gauge taken to be at 20 °C{cool}"
        ))
    }

    /// What the last readings tell of the part's form, and what to do.
    pub(crate) fn form_told(&self, log: &PassLog) -> Option<FormOfPlaces> {
        let form = log.form().ok()??;
        let seen = log.last_places()?;
        let feature = log.opening.feature;
        let (decides, _) = seen.decides(feature)?;
        let (behind, short) = seen.behind(feature)?;
        let shape = Shape::of(&seen, feature);
        let said = |size: Length| shown_in(self.shown, size);
        let name = |place: &Place| {
            let at = seen.places.iter().position(|other| other == place).unwrap_or(0);
            place.place.clone().unwrap_or_else(|| {
                ["the first place", "the second place", "the third place"]
                    .get(at)
                    .map_or_else(|| format!("place {}", at + 1), |name| (*name).to_owned())
            })
        };
        let decider = if feature == Feature::Hole { "larger" } else { "smaller" };
        let by = said(form.difference);
        if !form.is_real() {
            return Some(FormOfPlaces {
                shape: "none",
                difference_mm: Mm(form.difference),
                real: false,
                decides: name(decides),
                says: format!(
                    "the places differ by {by}, no more than a {} scatters",
                    seen.gauge.as_ref().map_or(&log.opening.instrument, |gauge| &gauge.name)
                ),
                to_do: String::new(),
            });
        }
        let limits = log.opening.limits().ok()?;
        let mut says = format!("{} {by}; {} decides, the {decider}", shape.says(), name(decides));
        let is_too_much = form.difference > limits.tolerance();
        let left = match feature {
            Feature::Hole => limits.lower().checked_sub(short),
            Feature::Shaft => short.checked_sub(limits.upper()),
        };
        if is_too_much {
            let _ = write!(
                says,
                ". That is more than the tolerance, {}: no cut brings all of it inside before \
                 it is mended",
                said(limits.tolerance())
            );
        } else if let Some(left) = left.ok().filter(|left| left.is_positive()) {
            let _ = write!(says, "; {} is {} short of the limits", name(behind), said(left));
        }
        Some(FormOfPlaces {
            shape: shape.word(),
            difference_mm: Mm(form.difference),
            real: true,
            decides: name(decides),
            says,
            to_do: shape.to_do(self, feature, &seen, form.difference),
        })
    }

    /// A form shown earlier, where the last readings say nothing about it.
    pub(crate) fn form_before(&self, log: &PassLog) -> Option<String> {
        if log.last_places().is_some() {
            return None;
        }
        let mut standing: Vec<Entry> = log.standing().collect();
        while let Some(last) = standing.pop() {
            if last.seen().is_some_and(|seen| seen.places.len() > 1) {
                standing.push(last);
                break;
            }
        }
        let before = PassLog { opening: log.opening.clone(), entries: standing };
        let form = before.form().ok()?.filter(|form| form.is_real())?;
        let by = shown_in(self.shown, form.difference);
        let number = before.entries.len();
        Some(format!(
            "the places differed by {by} at entry {number}: read them all again before the last cut"
        ))
    }
}

/// What the places of an entry were, for JSON.
pub(crate) fn places(entry: &Entry) -> Vec<EntryPlace> {
    let lengths = |sizes: &[Length]| sizes.iter().copied().map(Mm).collect();
    let places = entry.seen().map_or(&[][..], |seen| &seen.places);
    places
        .iter()
        .map(|place| EntryPlace {
            place: place.place.clone(),
            readings_mm: lengths(&place.read),
            shown_mm: lengths(&place.shown),
        })
        .collect()
}

/// Gauges are of steel and at 20 °C; the table holds it.
fn steel_gauge(part: Body) -> Body {
    let steel = Material::find("steel").ok().and_then(Material::expansion);
    let temperature = ThermodynamicTemperature::new::<degree_celsius>(cooling::REFERENCE_C);
    Body { expansion: steel.unwrap_or(part.expansion), temperature }
}

/// Refuses readings in unlike units, where the second one stands.
fn one_unit(read: &Readings) -> Result<(), Problem> {
    let mut first = None;
    for size in read.sizes() {
        let Some(inch) = is_inch(&size.value) else { continue };
        if *first.get_or_insert(inch) != inch {
            let (this, others) =
                if inch { ("inches", "millimetres") } else { ("millimetres", "inches") };
            return Err(Problem::new(
                format!("this reading is in {this}, and those before are in {others}"),
                size.at.clone(),
            )
            .advise("nothing is entered; give all places in one unit"));
        }
    }
    Ok(())
}

fn far_apart(first: Length, this: Length, size: &Size) -> Result<(), Problem> {
    let Range { start, end } = size.at.clone();
    let off = first.checked_sub(this).and_then(Length::checked_abs);
    let most = first.checked_scale(APART, 10);
    if off.is_ok_and(|off| most.is_ok_and(|most| off <= most)) {
        return Ok(());
    }
    Err(Problem::new("this is not a size of the same part", start..end)
        .advise("nothing is entered; places and readings of one entry lie close together"))
}

/// What places that differ make of a part.
#[derive(Clone, Copy, PartialEq)]
enum Shape {
    /// Along the part; the name of the place that is largest.
    Taper,
    /// The mouth of a bore is the largest.
    BellMouth,
    /// The middle is the largest or the smallest.
    Barrel,
    /// About the part.
    OutOfRound,
    /// Nobody said where the places are.
    Unsaid,
}

impl Shape {
    fn of(seen: &Seen, feature: Feature) -> Self {
        let is = |place: &Place, names: &[&str]| {
            place.place.as_ref().is_some_and(|name| names.contains(&name.as_str()))
        };
        let all = |names: &[&str]| seen.places.iter().all(|place| is(place, names));
        let (Some((largest, _)), Some((smallest, _))) =
            (seen.decides(Feature::Hole), seen.decides(Feature::Shaft))
        else {
            return Self::Unsaid;
        };
        if all(&ABOUT) {
            Self::OutOfRound
        } else if !all(&ALONG) {
            Self::Unsaid
        } else if seen.places.len() > 2 && [largest, smallest].iter().any(|it| is(it, &["middle"]))
        {
            Self::Barrel
        } else if feature == Feature::Hole && is(largest, &["front", "mouth", "top"]) {
            Self::BellMouth
        } else {
            Self::Taper
        }
    }

    const fn word(self) -> &'static str {
        match self {
            Self::Taper => "taper",
            Self::BellMouth => "bell mouth",
            Self::Barrel => "barrel",
            Self::OutOfRound => "out of round",
            Self::Unsaid => "unlike",
        }
    }

    const fn says(self) -> &'static str {
        match self {
            Self::Taper => "it tapers by",
            Self::BellMouth => "a bell mouth: it opens by",
            Self::Barrel => "the middle differs from the ends by",
            Self::OutOfRound => "it is out of round by",
            Self::Unsaid => "the two places differ by",
        }
    }

    /// What the trade does about it; common practice, no source. The set-over
    /// of a tailstock is half the difference of the diameters at its ends
    /// (`align`, which names its source).
    fn to_do(self, session: &Session, feature: Feature, seen: &Seen, by: Length) -> String {
        let half = shown_in(session.shown, by.half());
        let tailstock = || {
            let ends: Vec<String> = seen
                .places
                .iter()
                .filter_map(Place::mean)
                .map(|size| shown_in(session.shown, size).replace(' ', ""))
                .collect();
            let long = if session.shown == Units::Inches { "6in" } else { "150mm" };
            let align = match &ends[..] {
                [one, other] => format!(
                    "; `align {one} {other} over {long}` reckons it for \
                     places so far apart, the headstock's first"
                ),
                _ => String::new(),
            };
            format!(
                "between centres move the tailstock by half of it, {half}, where these are the \
                 ends: towards the tool if its end is the larger, away if the smaller{align}. \
                 In a chuck take a spring pass, or hold the free end"
            )
        };
        let bore = "a spring pass or two with a sharp tool, a stiffer bar, the slides locked; \
                    what is left is honed or lapped";
        let round = "ease the jaws and measure it out of them; then a spring pass, and look at \
                     the spindle's bearings and at how it is held";
        match (self, feature) {
            (Self::Taper, Feature::Shaft) => tailstock(),
            (Self::Taper, Feature::Hole) => {
                format!("the headstock or the slide points off: align it; {bore}")
            }
            (Self::BellMouth, _) => format!("the bar springs as it enters: {bore}"),
            (Self::Barrel, _) => {
                "the work springs in the middle: a steady or a follower, lighter cuts, a spring \
                 pass"
                    .to_owned()
            }
            (Self::OutOfRound, _) => round.to_owned(),
            (Self::Unsaid, Feature::Shaft) => format!(
                "if they lie along it, it tapers: {}. If they lie about it, it is out of round: \
                 {round}",
                tailstock()
            ),
            (Self::Unsaid, Feature::Hole) => format!(
                "if they lie along it, it tapers or has a bell mouth: {bore}. If they lie about \
                 it, it is out of round: {round}"
            ),
        }
    }
}
