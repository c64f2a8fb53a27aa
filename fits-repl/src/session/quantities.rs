//! What a force, a pressure, a torque, a temperature, an expansion or a time
//! comes to, bare numbers in the system in force.

use crate::{
    problem::Problem,
    query::{Amount, Dimension, QuantityUnit, Units},
    session::Session,
    words::quantities::{
        CELSIUS, FAHRENHEIT, MEGAPASCAL, NEWTON, NEWTON_METRE, PER_CELSIUS, PER_FAHRENHEIT,
        POUND_FEET, POUNDS, POUNDS_PER_SQUARE_INCH, SECOND,
    },
};

impl Session {
    /// In newtons, pascals, newton metres, degrees Celsius, millionths per
    /// kelvin or seconds, as the quantity's dimension says.
    ///
    /// A bare number beside a size typed in the other system is refused.
    pub(crate) fn amount(&self, amount: &Amount) -> Result<f64, Problem> {
        let quantity = amount.value;
        let in_force = own_unit(quantity.dimension, self.units);
        let shown = own_unit(quantity.dimension, self.shown);
        if quantity.unit.is_none() && in_force != shown {
            return Err(Problem::new(
                format!(
                    "this number has no unit: {} is in {} or {}",
                    quantity.dimension.words(),
                    shown.symbol,
                    in_force.symbol
                ),
                amount.at.clone(),
            )
            .advise("give its unit")
            .fix(amount.at.end..amount.at.end, shown.symbol));
        }
        let unit = quantity.unit.unwrap_or(in_force);
        Ok(quantity.number * unit.scale + unit.offset)
    }
}

const fn own_unit(dimension: Dimension, units: Units) -> QuantityUnit {
    match (dimension, units) {
        (Dimension::Force, Units::Millimetres) => NEWTON,
        (Dimension::Force, Units::Inches) => POUNDS,
        (Dimension::Pressure, Units::Millimetres) => MEGAPASCAL,
        (Dimension::Pressure, Units::Inches) => POUNDS_PER_SQUARE_INCH,
        (Dimension::Torque, Units::Millimetres) => NEWTON_METRE,
        (Dimension::Torque, Units::Inches) => POUND_FEET,
        (Dimension::Temperature, Units::Millimetres) => CELSIUS,
        (Dimension::Temperature, Units::Inches) => FAHRENHEIT,
        (Dimension::Expansion, Units::Millimetres) => PER_CELSIUS,
        (Dimension::Expansion, Units::Inches) => PER_FAHRENHEIT,
        (Dimension::Time, _) => SECOND,
    }
}
