//! Readings with their uncertainty: the size at 20 °C, and whether the part is
//! good, wants more cutting, is overcut, or is too close to call.
//!
//! ISO 14253-1: conformity and non-conformity are to be proven, and the
//! uncertainty counts against whoever proves it. Its text was not read; the
//! rules here are as secondary texts give them.

use uom::si::{
    f64::{TemperatureCoefficient, TemperatureInterval},
    temperature_coefficient::per_kelvin,
    temperature_interval::kelvin,
};

mod chances;

use self::chances::Chances;
use super::{
    Verdict,
    chance::scatter_tail,
    cooling::{Body, size_at_20},
};
use crate::{
    error::{Error, Kind},
    size::{Length, Limits, divide_half_even},
    speech::say,
    standards::{instruments::Uncertainty, iso286::Feature},
};

/// How warm part and gauge were, and how well that is known.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[expect(
    clippy::exhaustive_structs,
    reason = "it is built whole: what is new must be said by whoever builds one"
)]
pub struct Thermal {
    /// The part.
    pub part: Body,
    /// The gauge.
    pub gauge: Body,
    /// Standard uncertainty of the part's temperature.
    pub part_sd: TemperatureInterval,
    /// Standard uncertainty of the gauge's temperature.
    pub gauge_sd: TemperatureInterval,
    /// Standard uncertainty of the part's expansion.
    pub part_expansion_sd: TemperatureCoefficient,
    /// Standard uncertainty of the gauge's expansion.
    pub gauge_expansion_sd: TemperatureCoefficient,
}

impl Thermal {
    /// Temperatures and expansions taken as they are.
    ///
    /// ```
    /// use fits_core::shop::{celsius, cooling::Body, verdict::{Measured, Thermal}};
    /// use fits_core::standards::materials::Material;
    /// let brass = Material::find("brass")?.expansion().expect("known");
    /// let warm = Body { expansion: brass, temperature: celsius(30.0) };
    /// let thermal = Thermal::exact(warm, Body::at_reference());
    /// let read = ["20.010mm".parse()?];
    /// let measured = Measured::of(&[&read], None, Some(&thermal))?;
    /// assert!(measured.size() < measured.read());
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn exact(part: Body, gauge: Body) -> Self {
        let (none, nothing) = (
            TemperatureInterval::new::<kelvin>(0.0),
            TemperatureCoefficient::new::<per_kelvin>(0.0),
        );
        Self {
            part,
            gauge,
            part_sd: none,
            gauge_sd: none,
            part_expansion_sd: nothing,
            gauge_expansion_sd: nothing,
        }
    }

    /// What a reading's own uncertainty comes to at 20 °C.
    fn scale(&self) -> Result<f64, Error> {
        Ok(self.gauge.factor()? / self.part.factor()?)
    }

    /// Standard uncertainty of the correction at a size, in micrometres: each
    /// input by its partial derivative, in the first order.
    fn uncertainty(&self, size: f64) -> Result<f64, Error> {
        let (part, gauge) = (self.part.factor()?, self.gauge.factor()?);
        let terms = [
            self.gauge.per_degree() * self.gauge_sd.get::<kelvin>() / part,
            self.gauge.above() * self.gauge_expansion_sd.get::<per_kelvin>() / part,
            self.part.per_degree() * self.part_sd.get::<kelvin>() * gauge / (part * part),
            self.part.above() * self.part_expansion_sd.get::<per_kelvin>() * gauge / (part * part),
        ];
        Ok(size.abs() * libm::sqrt(terms.iter().map(|term| term * term).sum()))
    }
}

/// One place on the part, or one angle, and what was read there.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct MeasuredPlace {
    /// The mean of the readings there.
    pub read: Length,
    /// Its size at 20 °C.
    pub size: Length,
    /// How many readings.
    pub count: u32,
}

/// The difference between places, against what the instrument scatters.
///
/// ```
/// use fits_core::shop::verdict::Measured;
/// let places: [&[_]; 2] = [&["20.01mm".parse()?], &["20.03mm".parse()?]];
/// let form = Measured::of(&places, None, None)?.form().expect("two places");
/// assert_eq!(form.difference, "0.02mm".parse()?);
/// assert!(form.is_real(), "without an instrument it is taken as it stands");
/// # Ok::<(), fits_core::Error>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct FormDeviation {
    /// Between the largest and the smallest place: out of round, or taper.
    pub difference: Length,
    /// What the instrument's scatter alone exceeds once in twenty times, for
    /// two places; nothing where its scatter is not known.
    pub explained: Option<Length>,
}

impl FormDeviation {
    /// Is it the part, not the instrument? Where the instrument is not known,
    /// what was read is taken as it stands.
    pub fn is_real(self) -> bool {
        self.difference.is_positive()
            && self.explained.is_none_or(|explained| self.difference > explained)
    }
}

/// Readings of one feature, put together.
///
/// ```
/// use fits_core::shop::verdict::Measured;
/// let measured = Measured::of(&[&["20.012mm".parse()?, "20.014mm".parse()?]], None, None)?;
/// assert_eq!((measured.read(), measured.size()), ("20.013mm".parse()?, "20.013mm".parse()?));
/// assert_eq!((measured.count(), measured.places().len()), (2, 1));
/// assert_eq!(measured.spread(), Some("0.002mm".parse()?));
/// assert_eq!((measured.form(), measured.uncertainty(), measured.scatters()), (None, None, false));
/// # Ok::<(), fits_core::Error>(())
/// ```
#[derive(Clone, Debug, PartialEq)]
pub struct Measured {
    places: Vec<MeasuredPlace>,
    mean: Length,
    size: Length,
    form: Option<FormDeviation>,
    /// In micrometres: of one place's mean, of the mean of all, and what is
    /// the same in all; nothing where no instrument was named.
    uncertain: Option<Parts>,
    /// The chance that the instrument scatters so much by itself.
    tail: Option<f64>,
    spread: Option<Length>,
}

#[derive(Clone, Debug, PartialEq)]
struct Parts {
    of_places: Vec<f64>,
    of_mean: f64,
    fixed: f64,
}

/// Scatter that the instrument shows less often than this is not its own.
const NOT_ITS_OWN: f64 = 0.01;
/// Exceeded once in twenty, both ways, by a standard normal quantity.
const TWENTIETH: f64 = 1.959_964;

impl Measured {
    /// Puts together the readings at each place; several at one place are
    /// repeats. Without an uncertainty they are taken as they stand.
    ///
    /// Where the readings at one place scatter more than the instrument does,
    /// their own scatter counts instead.
    ///
    /// # Errors
    /// No reading, a place without one, one that is not a size, or a temperature
    /// that has no sense.
    ///
    /// ```
    /// use fits_core::{Length, shop::verdict::Measured};
    /// use fits_core::standards::{instruments::Instrument, iso286::Feature};
    /// let gauge = Instrument::find("bore gauge")?;
    /// let off = gauge.uncertainty(Feature::Hole, Length::from_millimetres(20)?)?;
    /// let read: [Length; 3] = ["20.012mm".parse()?, "20.014mm".parse()?, "20.013mm".parse()?];
    /// let measured = Measured::of(&[&read], Some(off), None)?;
    /// assert_eq!(measured.size().to_string(), "20.013 mm");
    /// // sqrt(1.5² + 2²/3) µm
    /// let standard = measured.uncertainty().expect("an instrument was named");
    /// assert_eq!(standard.to_string(), "0.001893 mm");
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn of(
        readings: &[&[Length]],
        instrument: Option<Uncertainty>,
        thermal: Option<&Thermal>,
    ) -> Result<Self, Error> {
        let mut places = Vec::with_capacity(readings.len());
        let (mut all, mut total) = (0_u32, 0_i128);
        let (mut squares, mut free, mut spread) = (0.0, 0_u32, None::<Length>);
        for place in readings {
            let count = u32::try_from(place.len()).unwrap_or(u32::MAX);
            let (Some(least), Some(most)) = (place.iter().min(), place.iter().max()) else {
                return Err(nothing());
            };
            if !least.is_positive() {
                return Err(Error::not_listed(
                    say!("{} is not a size of a part", least),
                    "give what the instrument showed",
                ));
            }
            let sum: i128 = place.iter().map(|length| i128::from(length.tenth_nanometres())).sum();
            let read = mean(sum, count)?;
            for reading in *place {
                let off = reading.checked_sub(read)?.in_micrometres();
                squares += off * off;
            }
            free += count - 1;
            if count > 1 {
                let here = most.checked_sub(*least)?;
                spread = Some(spread.map_or(here, |before| before.max(here)));
            }
            places.push(MeasuredPlace { read, size: corrected(read, thermal)?, count });
            (all, total) = (all.saturating_add(count), total + sum);
        }
        let (Some(least), Some(most)) = (
            places.iter().map(|place| place.size).min(),
            places.iter().map(|place| place.size).max(),
        ) else {
            return Err(nothing());
        };
        let mean = mean(total, all)?;
        let fixed =
            thermal.map_or(Ok(0.0), |thermal| thermal.uncertainty(mean.in_micrometres()))?;
        let root = |count: u32| libm::sqrt(f64::from(count));
        let (mut tail, mut uncertain, mut explained) = (None, None, None);
        if let Some(instrument) = instrument {
            let scale = thermal.map_or(Ok(1.0), Thermal::scale)?;
            let mut repeat = instrument.repeat.in_micrometres();
            if free > 0 && repeat > 0.0 {
                let chance = scatter_tail(free, squares / (repeat * repeat));
                tail = Some(chance);
                if chance < NOT_ITS_OWN {
                    repeat = libm::sqrt(squares / f64::from(free));
                }
            }
            repeat *= scale;
            let of_places: Vec<f64> =
                places.iter().map(|place| repeat / root(place.count)).collect();
            let fewest = places.iter().map(|place| place.count).min().unwrap_or(1);
            let two = core::f64::consts::SQRT_2 * TWENTIETH * repeat / root(fewest);
            explained = Some(Length::nearest_micrometres(two)?);
            let bias = instrument.bias.in_micrometres() * scale;
            uncertain = Some(Parts {
                of_places,
                of_mean: repeat / root(all),
                fixed: libm::hypot(bias, fixed),
            });
        }
        let difference = most.checked_sub(least)?;
        let form = (places.len() > 1).then_some(FormDeviation { difference, explained });
        Ok(Self { size: corrected(mean, thermal)?, places, mean, form, uncertain, tail, spread })
    }

    /// Each place, in the order given.
    pub fn places(&self) -> &[MeasuredPlace] {
        &self.places
    }

    /// The mean of all readings.
    pub const fn read(&self) -> Length {
        self.mean
    }

    /// The same at 20 °C.
    pub const fn size(&self) -> Length {
        self.size
    }

    /// How many readings there were.
    pub fn count(&self) -> u32 {
        self.places.iter().map(|place| place.count).sum()
    }

    /// How places differ, where there are two or more.
    pub const fn form(&self) -> Option<FormDeviation> {
        self.form
    }

    /// From the least to the most read at one place, where any was read twice.
    pub const fn spread(&self) -> Option<Length> {
        self.spread
    }

    /// Do repeats scatter more than the instrument does by itself?
    pub fn scatters(&self) -> bool {
        self.tail.is_some_and(|tail| tail < NOT_ITS_OWN)
    }

    /// Standard uncertainty of the size, or, where places really differ, of
    /// the place read least often: what the judgement goes by. Nothing where
    /// no instrument was named. Twice this is the expanded uncertainty (k = 2).
    pub fn uncertainty(&self) -> Option<Length> {
        let parts = self.uncertain.as_ref()?;
        let own = if self.form.is_some_and(FormDeviation::is_real) {
            parts.of_places.iter().copied().fold(0.0, f64::max)
        } else {
            parts.of_mean
        };
        Length::nearest_micrometres(libm::hypot(own, parts.fixed)).ok()
    }

    /// Judges the part by a rule. Every place has to be inside the limits
    /// where they really differ; else their mean has.
    ///
    /// # Errors
    /// Out of range.
    ///
    /// ```
    /// use fits_core::{shop::{Verdict, verdict::{Measured, Rule}}, standards::iso286::{Class, Feature}};
    /// let hole = "H7".parse::<Class>()?.limits("20mm".parse()?)?;
    /// let measured = Measured::of(&[&["20.03mm".parse()?]], None, None)?;
    /// let judged = measured.judge(Feature::Hole, hole, Rule::Edition2017)?;
    /// assert_eq!(judged.verdict, Verdict::Over);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn judge(&self, feature: Feature, limits: Limits, rule: Rule) -> Result<Judged, Error> {
        let toward = |size: Length| -> Result<f64, Error> {
            let off = size.checked_sub(limits.middle())?.in_micrometres();
            Ok(if feature == Feature::Hole { off } else { -off })
        };
        let half = limits.tolerance().in_micrometres() / 2.0;
        let apart = self.form.is_some_and(FormDeviation::is_real);
        let sizes: Vec<Length> = if apart {
            self.places.iter().map(|place| place.size).collect()
        } else {
            vec![self.size]
        };
        // How far along each is, in the way the tool moves it.
        let mut along = Vec::with_capacity(sizes.len());
        for size in &sizes {
            along.push(toward(*size)?);
        }
        let nothing = Parts { of_places: vec![0.0; sizes.len()], of_mean: 0.0, fixed: 0.0 };
        let parts = self.uncertain.as_ref().unwrap_or(&nothing);
        let own = if apart { parts.of_places.clone() } else { vec![parts.of_mean] };
        let chances = Chances::of(&along, &own, parts.fixed, half);
        let (least, most) = match (sizes.iter().min(), sizes.iter().max()) {
            (Some(least), Some(most)) => (*least, *most),
            _ => (self.size, self.size),
        };
        let widest = own.iter().copied().fold(0.0, f64::max);
        let standard = libm::hypot(widest, parts.fixed);
        let guard = match rule {
            Rule::Edition2013 => 2.0 * standard,
            Rule::Edition2017 => ONE_SIDED * standard,
        };
        let guard = Length::nearest_micrometres(guard)?;
        let lower = limits.lower();
        let upper = limits.upper();
        // Exact where nothing is uncertain.
        let beyond = |by: Length| -> Result<(bool, bool), Error> {
            Ok((least < lower.checked_sub(by)?, most > upper.checked_add(by)?))
        };
        let within = least >= lower.checked_add(guard)? && most <= upper.checked_sub(guard)?;
        let (small, large) = beyond(guard)?;
        let (under, over) = match feature {
            Feature::Hole => (small, large),
            Feature::Shaft => (large, small),
        };
        let proven = |chance: f64| chance >= 0.95;
        let verdict = match (rule, self.uncertain.is_some()) {
            (Rule::Edition2017, true) => {
                if proven(chances.over) {
                    Verdict::Over
                } else if proven(chances.under) {
                    Verdict::CutMore
                } else if proven(chances.good) {
                    Verdict::Good
                } else {
                    Verdict::TooClose
                }
            }
            _ if over => Verdict::Over,
            _ if under => Verdict::CutMore,
            _ if within => Verdict::Good,
            _ => Verdict::TooClose,
        };
        // Readings that scatter so are of something else than the part: dirt,
        // a burr, a slip. Nothing is proven by them.
        let verdict = if self.scatters() { Verdict::TooClose } else { verdict };
        Ok(Judged { verdict, guard, good: chances.good, over: chances.over, under: chances.under })
    }
}

/// How sure is sure enough (ISO 14253-1).
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "kebab-case"))]
#[non_exhaustive]
pub enum Rule {
    /// The expanded uncertainty, k = 2, off each limit.
    Edition2013,
    /// A probability of 95 %: near one limit 1.645 standard uncertainties.
    Edition2017,
}

/// Exceeded once in twenty, one way, by a standard normal quantity.
const ONE_SIDED: f64 = 1.644_854;

/// A part judged.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct Judged {
    /// What to do.
    pub verdict: Verdict,
    /// The guard band at each limit: inside it nothing is proven.
    pub guard: Length,
    /// The chance that the part is inside its limits everywhere.
    pub good: f64,
    /// The chance that too much is off somewhere.
    pub over: f64,
    /// The chance that there is metal to take off somewhere.
    pub under: f64,
}

fn corrected(read: Length, thermal: Option<&Thermal>) -> Result<Length, Error> {
    thermal.map_or(Ok(read), |thermal| size_at_20(read, thermal.part, thermal.gauge))
}

fn mean(sum: i128, count: u32) -> Result<Length, Error> {
    divide_half_even(sum, i128::from(count))
        .and_then(|mean| i64::try_from(mean).ok())
        .map(Length::from_tenth_nanometres)
        .ok_or_else(|| Error::new(Kind::OutOfRange))
}

fn nothing() -> Error {
    Error::not_listed("nothing was read", "give what the instrument showed")
}
