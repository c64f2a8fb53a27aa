//! Forces, pressures, torques, temperatures, expansions and times: a number
//! and a unit. What a bare number is, the settings decide, not the grammar.

use fits_core::size::Number;

use crate::{
    query::{Amount, Dimension, Quantity, QuantityUnit, Spot},
    words::{
        fault::{Parsed, fatal, fatal_fix},
        keywords::{shortened, space, span},
        sizes::{minus, number_fault},
    },
};

const fn unit(dimension: Dimension, symbol: &'static str, scale: f64) -> QuantityUnit {
    QuantityUnit { dimension, symbol, scale, offset: 0.0 }
}

const fn degrees(symbol: &'static str, scale: f64, offset: f64) -> QuantityUnit {
    QuantityUnit { dimension: Dimension::Temperature, symbol, scale, offset }
}

/// One pound-force in newtons: 0.453 592 37 kg at 9.806 65 m/s².
const POUND_FORCE: f64 = 4.448_221_615_260_5;
/// One pound-force per square inch in pascals.
const PSI: f64 = POUND_FORCE / (0.0254 * 0.0254);
const KILOGRAM_FORCE: f64 = 9.806_65;

pub(crate) const NEWTON: QuantityUnit = unit(Dimension::Force, "N", 1.0);
pub(crate) const POUNDS: QuantityUnit = unit(Dimension::Force, "lbf", POUND_FORCE);
pub(crate) const MEGAPASCAL: QuantityUnit = unit(Dimension::Pressure, "MPa", 1e6);
pub(crate) const POUNDS_PER_SQUARE_INCH: QuantityUnit = unit(Dimension::Pressure, "psi", PSI);
pub(crate) const NEWTON_METRE: QuantityUnit = unit(Dimension::Torque, "Nm", 1.0);
pub(crate) const POUND_FEET: QuantityUnit = unit(Dimension::Torque, "lbf-ft", POUND_FORCE * 0.3048);
pub(crate) const CELSIUS: QuantityUnit = degrees("C", 1.0, 0.0);
pub(crate) const FAHRENHEIT: QuantityUnit = degrees("F", 1.0 / 1.8, -32.0 / 1.8);
pub(crate) const PER_CELSIUS: QuantityUnit = unit(Dimension::Expansion, "/C", 1.0);
pub(crate) const PER_FAHRENHEIT: QuantityUnit = unit(Dimension::Expansion, "/F", 1.8);
pub(crate) const SECOND: QuantityUnit = unit(Dimension::Time, "s", 1.0);

/// Spellings in small letters without hyphens, points and dots between words.
const SPELLINGS: &[(&str, QuantityUnit)] = &[
    ("n", NEWTON),
    ("kn", unit(Dimension::Force, "kN", 1e3)),
    ("lbf", POUNDS),
    ("lb", POUNDS),
    ("lbs", POUNDS),
    ("ton", unit(Dimension::Force, "tons", 2000.0 * POUND_FORCE)),
    ("tons", unit(Dimension::Force, "tons", 2000.0 * POUND_FORCE)),
    ("tonf", unit(Dimension::Force, "tons", 2000.0 * POUND_FORCE)),
    ("t", unit(Dimension::Force, "tonnes", 1000.0 * KILOGRAM_FORCE)),
    ("tonne", unit(Dimension::Force, "tonnes", 1000.0 * KILOGRAM_FORCE)),
    ("tonnes", unit(Dimension::Force, "tonnes", 1000.0 * KILOGRAM_FORCE)),
    ("kgf", unit(Dimension::Force, "kgf", KILOGRAM_FORCE)),
    ("pa", unit(Dimension::Pressure, "Pa", 1.0)),
    ("kpa", unit(Dimension::Pressure, "kPa", 1e3)),
    ("mpa", MEGAPASCAL),
    ("gpa", unit(Dimension::Pressure, "GPa", 1e9)),
    ("n/mm2", MEGAPASCAL),
    ("n/mm\u{b2}", MEGAPASCAL),
    ("bar", unit(Dimension::Pressure, "bar", 1e5)),
    ("psi", POUNDS_PER_SQUARE_INCH),
    ("ksi", unit(Dimension::Pressure, "ksi", 1e3 * PSI)),
    ("mpsi", unit(Dimension::Pressure, "Mpsi", 1e6 * PSI)),
    ("nm", NEWTON_METRE),
    ("knm", unit(Dimension::Torque, "kNm", 1e3)),
    ("lbfft", POUND_FEET),
    ("lbft", POUND_FEET),
    ("ftlb", POUND_FEET),
    ("ftlbs", POUND_FEET),
    ("ftlbf", POUND_FEET),
    ("lbfin", unit(Dimension::Torque, "lbf-in", POUND_FORCE * 0.0254)),
    ("lbin", unit(Dimension::Torque, "lbf-in", POUND_FORCE * 0.0254)),
    ("inlb", unit(Dimension::Torque, "lbf-in", POUND_FORCE * 0.0254)),
    ("inlbs", unit(Dimension::Torque, "lbf-in", POUND_FORCE * 0.0254)),
    ("inlbf", unit(Dimension::Torque, "lbf-in", POUND_FORCE * 0.0254)),
    ("c", CELSIUS),
    ("degc", CELSIUS),
    ("celsius", CELSIUS),
    ("f", FAHRENHEIT),
    ("degf", FAHRENHEIT),
    ("fahrenheit", FAHRENHEIT),
    ("k", degrees("K", 1.0, -273.15)),
    ("/c", PER_CELSIUS),
    ("/k", PER_CELSIUS),
    ("/f", PER_FAHRENHEIT),
    ("ppm/c", PER_CELSIUS),
    ("ppm/k", PER_CELSIUS),
    ("um/mk", PER_CELSIUS),
    ("ppm/f", PER_FAHRENHEIT),
    ("s", SECOND),
    ("sec", SECOND),
    ("seconds", SECOND),
    ("min", unit(Dimension::Time, "min", 60.0)),
    ("minutes", unit(Dimension::Time, "min", 60.0)),
    ("h", unit(Dimension::Time, "h", 3600.0)),
];

/// A quantity where one must stand.
pub(crate) fn quantity<'a>(
    input: &'a str,
    total: usize,
    dimension: Dimension,
    missing: &str,
    advice: &str,
) -> Parsed<'a, Amount> {
    let (unsigned, sign) = match minus(input) {
        Ok((rest, _)) => (rest, -1.0),
        Err(_) => (input.strip_prefix('+').unwrap_or(input), 1.0),
    };
    let (number, taken) = match Number::scan(unsigned) {
        Ok(Some((number, taken))) => {
            let (top, bottom) = number.ratio();
            #[allow(clippy::cast_precision_loss, reason = "a measured figure: 53 bits are plenty")]
            let number = top as f64 / bottom as f64;
            (number, taken)
        }
        Ok(None) => return fatal(input, 0, missing, advice),
        Err(error) => match with_exponent(unsigned) {
            // So written, an expansion is whole, not in millionths.
            Some((number, taken)) if dimension == Dimension::Expansion => (number * 1e6, taken),
            Some(found) => found,
            None => return number_fault(unsigned, &error),
        },
    };
    let number = sign * number;
    let rest = unsigned.get(taken..).unwrap_or_default();
    let (spaced, _) = space(rest)?;
    let (end, unit) = match scan(spaced, dimension) {
        Some((unit, length)) => (spaced.get(length..).unwrap_or_default(), Some(unit)),
        None => (rest, None),
    };
    // A word that touches the number is meant as its unit, and so is a unit of
    // something else after a space.
    let touching = end.starts_with(|c: char| c.is_alphabetic() || matches!(c, '\u{b0}' | '%'));
    let other = Dimension::ALL.into_iter().find(|other| scan(spaced, *other).is_some());
    let is_mass = dimension == Dimension::Force
        && ["kg", "kgs", "kilos"].contains(&spaced.split([' ', ',']).next().unwrap_or_default());
    if unit.is_none() && (touching || is_mass || other.is_some()) {
        let end = spaced;
        let word = end.split([' ', ',']).next().unwrap_or(end);
        if is_mass {
            let kilonewtons = (number * KILOGRAM_FORCE).round() / 1e3;
            let typed = input.len() - end.len() + word.len();
            let fix = Some((typed, format!("{kilonewtons} kN")));
            return fatal_fix(input, typed, "kilograms are a mass, not a force", "its weight", fix);
        }
        let message = match other {
            Some(other) => {
                format!("{} is not {}", other.words(), dimension.words())
            }
            None => format!("`{}` is not a unit of {}", shortened(word), dimension.words()),
        };
        return fatal(end, word.len(), message, format!("{}; {advice}", dimension.units()));
    }
    let value = Quantity { number, unit, dimension };
    Ok((end, Spot { value, at: span(total, input, end) }))
}

/// A number with an exponent, `30e6`, and the bytes it takes.
fn with_exponent(text: &str) -> Option<(f64, usize)> {
    let mantissa = text.find(|c: char| !(c.is_ascii_digit() || c == '.'))?;
    let after = text.get(mantissa..)?.strip_prefix(['e', 'E'])?;
    let digits = after.strip_prefix(['+', '-']).unwrap_or(after);
    let end = digits.find(|c: char| !c.is_ascii_digit()).unwrap_or(digits.len());
    let taken = text.len() - digits.len() + end;
    let number: f64 = text.get(..taken)?.parse().ok()?;
    number.is_finite().then_some((number, taken))
}

/// The unit that a text begins with and the bytes it takes: the longest one of
/// those that measure this. Words of a unit may stand apart: `40 ft lb`.
fn scan(text: &str, dimension: Dimension) -> Option<(QuantityUnit, usize)> {
    let mut found = None;
    let mut spelled = String::new();
    let mut words = 1;
    for (at, c) in text.char_indices().take(16) {
        match c {
            ' ' if words == 1 && !spelled.is_empty() => words = 2,
            '-' | '.' | '*' | '\u{b7}' | '\u{22c5}' if !spelled.is_empty() => {}
            '\u{b0}' | '\u{ba}' if spelled.is_empty() => {}
            _ if c.is_alphabetic() || matches!(c, '/' | '2' | '\u{b2}') => {
                spelled.extend(c.to_lowercase());
                let end = at + c.len_utf8();
                let goes_on = text
                    .get(end..)
                    .is_some_and(|rest| rest.starts_with(|c: char| c.is_alphanumeric()));
                if !goes_on {
                    found = SPELLINGS
                        .iter()
                        .find(|(text, unit)| unit.dimension == dimension && *text == spelled)
                        .map(|(_, unit)| (*unit, end))
                        .or(found);
                }
            }
            _ => break,
        }
    }
    found
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn read(text: &str, dimension: Dimension) -> (f64, &str) {
        let (rest, amount) =
            quantity(text, text.len(), dimension, "missing", "as in `x`").expect(text);
        let unit = amount.value.unit.expect("a unit");
        (amount.value.number * unit.scale + unit.offset, rest)
    }

    #[test]
    fn units_are_read_with_what_follows_them() {
        for (text, dimension, value, rest) in [
            ("20kN, hub", Dimension::Force, 20_000.0, ", hub"),
            ("1 ton", Dimension::Force, 8896.443, ""),
            ("1t", Dimension::Force, 9806.65, ""),
            ("110GPa nu 0.28", Dimension::Pressure, 110e9, " nu 0.28"),
            ("30 Mpsi", Dimension::Pressure, 206.843e9, ""),
            ("250 N/mm2 od", Dimension::Pressure, 250e6, " od"),
            ("50 Nm", Dimension::Torque, 50.0, ""),
            ("50 N\u{b7}m long", Dimension::Torque, 50.0, " long"),
            ("40 ft-lb", Dimension::Torque, 54.233, ""),
            ("40 lbf\u{b7}ft, hub", Dimension::Torque, 54.233, ", hub"),
            ("40 ft lb", Dimension::Torque, 54.233, ""),
            ("12 in-lb", Dimension::Torque, 1.355_82, ""),
            ("60C", Dimension::Temperature, 60.0, ""),
            ("140 \u{b0}F hole", Dimension::Temperature, 60.0, " hole"),
            ("-196C", Dimension::Temperature, -196.0, ""),
            ("\u{2212}109F", Dimension::Temperature, -78.333, ""),
            ("293.15 K", Dimension::Temperature, 20.0, ""),
            ("6.5/F", Dimension::Expansion, 11.7, ""),
            ("2 min", Dimension::Time, 120.0, ""),
        ] {
            let (got, left) = read(text, dimension);
            assert!((got - value).abs() <= 1e-5 * value.abs(), "{text}: {got}");
            assert_eq!(left, rest, "{text}");
        }
    }

    #[test]
    fn a_bare_number_keeps_what_follows() {
        let (rest, amount) =
            quantity("60 long 20", 10, Dimension::Temperature, "missing", "x").unwrap();
        assert_eq!((rest, amount.value.unit), (" long 20", None));
        assert_eq!(amount.at, 0..2);
    }

    #[test]
    fn other_units_are_refused() {
        for (text, dimension) in [
            ("20MPa", Dimension::Force),
            ("20xyz", Dimension::Force),
            ("60mm", Dimension::Temperature),
            ("1,5kN", Dimension::Force),
            ("kN", Dimension::Force),
        ] {
            assert!(quantity(text, text.len(), dimension, "missing", "x").is_err(), "{text}");
        }
    }
}
