//! Sizes and differences of size as words: both units, the one in force first.

use fits_core::{
    Length, Limits,
    size::{Decimals, Rounding, Unit},
    standards::iso286::Feature,
};

use crate::{answer::FeatureAnswer, query::Units, render::text::Text};

impl Text {
    /// Both units, the one in force first.
    pub(crate) fn units(&self) -> [Unit; 2] {
        match self.settings.units {
            Units::Millimetres => [Unit::Millimetre, Unit::Inch],
            Units::Inches => [Unit::Inch, Unit::Millimetre],
        }
    }

    /// A size alone: every place it needs, marked `about` where it was rounded.
    pub(crate) fn both_exact(&self, size: Length) -> String {
        let one = |unit: Unit| {
            let most = if unit == Unit::Inch { 6 } else { 7 };
            let least = if unit == Unit::Inch { 4 } else { 3 };
            let exact = (least..=most).map(|places| Decimals { unit, places }).find(|decimals| {
                decimals.round(size, Rounding::Nearest) == size && is_exact(size, *decimals)
            });
            let (about, decimals) = exact
                .map_or(("about ", Decimals { unit, places: most }), |decimals| ("", decimals));
            format!("{about}{} {}", size.shown(decimals, Rounding::Nearest), unit.symbol())
        };
        let fraction = fraction(size).map_or(String::new(), |text| format!("   {text}"));
        self.units().map(one).join("   ") + &fraction
    }

    /// The places a size is shown to: 0.001 mm, 0.0001 in.
    pub(crate) const fn usual(unit: Unit) -> Decimals {
        match unit {
            Unit::Inch => Decimals::INCHES,
            _ => Decimals::MILLIMETRES,
        }
    }

    /// A size in one unit, to the nearest; one place more where it has one.
    pub(crate) fn size(size: Length, unit: Unit) -> String {
        let usual = Self::usual(unit);
        let decimals = if is_exact(size, usual) {
            usual
        } else {
            Decimals { places: usual.places + 1, ..usual }
        };
        format!("{} {}", size.shown(decimals, Rounding::Nearest), unit.symbol())
    }

    /// A limit pair in one unit, rounded inward.
    pub(crate) fn range(limits: Limits, unit: Unit) -> String {
        let decimals = Decimals::for_limits(unit, limits);
        format!(
            "{} to {} {}",
            limits.lower().shown(decimals, Rounding::Up),
            limits.upper().shown(decimals, Rounding::Down),
            unit.symbol()
        )
    }

    /// A difference of sizes: 0.001 mm and, in inches, thou to a tenth.
    pub(crate) fn difference(&self, length: Length) -> String {
        self.units().map(|unit| Self::difference_in(length, unit)).join("  ")
    }

    /// The same in the unit in force alone.
    pub(crate) fn one_difference(&self, length: Length) -> String {
        let [unit, _] = self.units();
        Self::difference_in(length, unit)
    }

    pub(crate) fn difference_in(length: Length, unit: Unit) -> String {
        // What rounds to ten tenths is a thou.
        let below_a_thou = length.tenth_nanometres().unsigned_abs().saturating_mul(100)
            < Length::THOU.tenth_nanometres().unsigned_abs() * 95;
        let usual = match unit {
            // A shop says four tenths, not 0.4 thou.
            Unit::Inch if below_a_thou && length != Length::ZERO => {
                Decimals { unit: Unit::Tenth, places: 0 }
            }
            Unit::Inch => Decimals { unit: Unit::Thou, places: 1 },
            _ => Decimals::MILLIMETRES,
        };
        // What would show as 0, or nearly, takes one place more.
        let is_small = length.tenth_nanometres().unsigned_abs() < 50_000;
        let extra = u8::from(is_small && !is_exact(length, usual));
        let decimals = Decimals { places: usual.places + extra, ..usual };
        let shown = length.shown(decimals, Rounding::Nearest).to_string();
        let unit = match decimals.unit {
            Unit::Tenth if shown == "1" => "tenth",
            unit => unit.symbol(),
        };
        format!("{shown} {unit}")
    }

    /// The rounding that leaves metal for a further cut.
    pub(crate) const fn metal_side(kind: Option<Feature>) -> Rounding {
        match kind {
            Some(Feature::Shaft) => Rounding::Up,
            _ => Rounding::Down,
        }
    }

    /// A size to reach, in one unit.
    pub(crate) fn target(size: Length, unit: Unit, toward: Rounding) -> String {
        format!("{} {}", size.shown(Self::usual(unit), toward), unit.symbol())
    }

    /// The aim as a micrometer reads it: on the metal side, where a further
    /// cut can still mend it, unless that leaves the limits.
    pub(crate) fn aim(feature: &FeatureAnswer, unit: Unit) -> String {
        Self::aim_in(feature.kind, feature.limits, feature.aim_mm.0, unit)
    }

    /// The same of an aim between limits.
    pub(crate) fn aim_in(kind: Option<Feature>, limits: Limits, aim: Length, unit: Unit) -> String {
        let (decimals, rounding) = Self::aim_rounding(kind, limits, aim, unit);
        format!("{} {}", aim.shown(decimals, rounding), unit.symbol())
    }

    /// The clearance that two aims as shown leave: what is cut to them has it.
    pub(crate) fn play_at_aims(&self, hole: &FeatureAnswer, shaft: &FeatureAnswer) -> String {
        let shown = |unit| {
            let [hole, shaft] = [hole, shaft].map(|part| {
                let aim = part.aim_mm.0;
                let (decimals, rounding) = Self::aim_rounding(part.kind, part.limits, aim, unit);
                decimals.round(aim, rounding)
            });
            hole.checked_sub(shaft).unwrap_or(Length::ZERO)
        };
        let words = match shown(self.units()[0]) {
            Length::ZERO => ", neither",
            play if play.is_negative() => " interference",
            _ => " clearance",
        };
        let sizes = self.units().map(|unit| {
            Self::difference_in(shown(unit).checked_abs().unwrap_or(Length::ZERO), unit)
        });
        format!("{}{words}", sizes.join("  "))
    }

    fn aim_rounding(
        kind: Option<Feature>,
        limits: Limits,
        aim: Length,
        unit: Unit,
    ) -> (Decimals, Rounding) {
        let decimals = Self::usual(unit);
        let rounding = Self::metal_side(kind);
        let shown = [rounding, Rounding::Nearest]
            .into_iter()
            .find(|rounding| limits.contains(decimals.round(aim, *rounding)));
        match shown {
            Some(rounding) => (decimals, rounding),
            None => (Decimals { places: decimals.places + 1, ..decimals }, Rounding::Nearest),
        }
    }

    /// The same in the unit in force alone, in short.
    pub(crate) fn one_play(&self, length: Length) -> String {
        let size = length.checked_abs().unwrap_or(length);
        let word = if length.is_negative() { "tight" } else { "loose" };
        format!("{} {word}", self.one_difference(size))
    }

    /// Clearance or interference in words.
    pub(crate) fn play(&self, length: Length) -> String {
        if length == Length::ZERO {
            return format!("{}, neither", self.difference(length));
        }
        if length.is_negative() {
            let size = length.checked_neg().unwrap_or(length);
            format!("{} interference", self.difference(size))
        } else {
            format!("{} clearance", self.difference(length))
        }
    }
}

/// Is a length a whole number of last-place steps?
pub(crate) fn is_exact(size: Length, decimals: Decimals) -> bool {
    let scale = 10_i128.pow(u32::from(decimals.places));
    i128::from(size.tenth_nanometres()) * scale
        % i128::from(decimals.unit.length().tenth_nanometres())
        == 0
}

/// A size as a fraction of an inch, where it is one by 64ths and not whole.
fn fraction(size: Length) -> Option<String> {
    let counts = size.tenth_nanometres();
    let (inch, sixty_fourth) =
        (Length::INCH.tenth_nanometres(), Length::INCH.tenth_nanometres() / 64);
    if counts <= 0 || counts % sixty_fourth != 0 || counts % inch == 0 {
        return None;
    }
    let (whole, part) = (counts / inch, counts % inch / sixty_fourth);
    let twos = part.trailing_zeros();
    let (top, bottom) = (part >> twos, 64 >> twos);
    Some(if whole == 0 {
        format!("{top}/{bottom} in")
    } else {
        format!("{whole}-{top}/{bottom} in")
    })
}
