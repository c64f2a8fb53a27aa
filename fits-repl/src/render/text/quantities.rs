//! Forces, pressures, torques and temperatures as words: both systems, the one
//! in force first.

use crate::{query::Units, render::text::Text};

/// How a quantity is said in one system and in the other: unit, what one of
/// it is in the SI unit, and where its zero lies.
pub(crate) type Said = [(&'static str, f64, f64); 2];

const FORCE: Said = [("N", 1.0, 0.0), ("lbf", 4.448_221_615, 0.0)];
const BIG_FORCE: Said = [("kN", 1e3, 0.0), ("lbf", 4.448_221_615, 0.0)];
const PRESSURE: Said = [("MPa", 1e6, 0.0), ("psi", 6_894.757_293, 0.0)];
const TORQUE: Said = [("N\u{b7}m", 1.0, 0.0), ("lbf\u{b7}ft", 1.355_817_948, 0.0)];
const TEMPERATURE: Said = [("\u{b0}C", 1.0, 0.0), ("\u{b0}F", 1.0 / 1.8, -32.0 / 1.8)];

impl Text {
    /// A force in newtons.
    pub(crate) fn force(&self, newtons: f64) -> String {
        self.said(newtons, if newtons.abs() >= 1e4 { BIG_FORCE } else { FORCE })
    }

    /// A pressure or a stress in pascals.
    pub(crate) fn pressure(&self, pascals: f64) -> String {
        self.said(pascals, PRESSURE)
    }

    /// The same in the system in force alone.
    pub(crate) fn one_pressure(&self, pascals: f64) -> String {
        self.first(pascals, PRESSURE)
    }

    /// A range of pressures, each system in turn.
    pub(crate) fn pressures(&self, least: f64, most: f64) -> String {
        self.order(PRESSURE)
            .map(|(unit, scale, _)| {
                format!("{} to {} {unit}", figures(least / scale), figures(most / scale))
            })
            .join("   ")
    }

    /// A force in the system in force alone.
    pub(crate) fn one_force(&self, newtons: f64) -> String {
        self.first(newtons, if newtons.abs() >= 1e4 { BIG_FORCE } else { FORCE })
    }

    /// A torque in the system in force alone.
    pub(crate) fn one_torque(&self, newton_metres: f64) -> String {
        self.first(newton_metres, TORQUE)
    }

    /// A torque in newton metres.
    pub(crate) fn torque(&self, newton_metres: f64) -> String {
        self.said(newton_metres, TORQUE)
    }

    /// A temperature in degrees Celsius.
    pub(crate) fn temperature(&self, celsius: f64) -> String {
        let [first, second] = self.order(TEMPERATURE);
        let one = |(unit, scale, offset): (&str, f64, f64)| {
            // Nought has no sign.
            format!("{:.0} {unit}", ((celsius - offset) / scale).round() + 0.0)
        };
        format!("{} ({})", one(first), one(second))
    }

    /// The same in the system in force alone.
    pub(crate) fn one_temperature(&self, celsius: f64) -> String {
        let [(unit, scale, offset), _] = self.order(TEMPERATURE);
        format!("{:.0} {unit}", (celsius - offset) / scale)
    }

    pub(crate) fn said(&self, value: f64, units: Said) -> String {
        self.order(units)
            .map(|(unit, scale, _)| format!("{} {unit}", figures(value / scale)))
            .join("  ")
    }

    fn first(&self, value: f64, units: Said) -> String {
        let [(unit, scale, _), _] = self.order(units);
        format!("{} {unit}", figures(value / scale))
    }

    const fn order(&self, [metric, inch]: Said) -> Said {
        match self.settings.units {
            Units::Millimetres => [metric, inch],
            Units::Inches => [inch, metric],
        }
    }
}

/// Three figures: friction and strength are not known to more.
pub(crate) fn figures(value: f64) -> String {
    if value == 0.0 {
        return "0".into();
    }
    let size = value.abs().log10().floor();
    if size >= 3.0 {
        let step = 10_f64.powf(size - 2.0);
        return format!("{:.0}", (value / step).round() * step);
    }
    // From hundreds to thousandths: at most five places.
    let places = if size >= 2.0 {
        0
    } else if size >= 1.0 {
        1
    } else if size >= 0.0 {
        2
    } else if size >= -1.0 {
        3
    } else {
        4
    };
    format!("{value:.places$}")
}
