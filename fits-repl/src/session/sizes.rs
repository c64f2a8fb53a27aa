//! What a size comes to: one number, a drill gauge or a small sum.

use std::ops::Range;

use fits_core::{
    Length,
    size::{Number, Unit},
    standards::drills::Drill,
};

use crate::{
    problem::Problem,
    query::{Expression, Operator, Size, Units},
    questions::part::resolve::from_core,
    session::Session,
};

impl Session {
    /// What a size comes to, bare numbers in the units in force.
    pub(crate) fn length(&self, size: &Size) -> Result<Length, Problem> {
        // Most sizes are one number: no detour.
        if let Expression::Number(number, unit) = size.value {
            if unit.is_none() {
                self.bare(number, size)?;
            }
            return number
                .of(unit.unwrap_or(self.units.unit()))
                .map_err(|error| unreadable(&error, size, unit.unwrap_or(self.units.unit())));
        }
        self.value(size).and_then(|value| self.measured(value, size))
    }

    /// A value as a length, a bare number in the units in force.
    fn measured(&self, value: Value, size: &Size) -> Result<Length, Problem> {
        match value {
            Value::Length(length) => Ok(length),
            Value::Bare(number) => {
                self.bare(number, size)?;
                number.of(self.units.unit()).map_err(|error| from_core(&error, size.at.clone()))
            }
        }
    }

    fn value(&self, size: &Size) -> Result<Value, Problem> {
        let failed = |error: fits_core::Error| from_core(&error, size.at.clone());
        Ok(match &size.value {
            Expression::Number(number, None) => Value::Bare(*number),
            Expression::Number(number, Some(unit)) => {
                Value::Length(number.of(*unit).map_err(|error| unreadable(&error, size, *unit))?)
            }
            Expression::Gauge(name) => Value::Length(gauge(name, &size.at)?.diameter()),
            Expression::Negative(inner) => match self.value(inner)? {
                Value::Length(length) => Value::Length(length.checked_neg().map_err(failed)?),
                Value::Bare(number) => Value::Bare(scaled(number, -1, 1, &size.at)?),
            },
            Expression::Two(..) => {
                // Along the sum, not down into it: a long one is as deep as
                // it has terms.
                let (mut first, mut sums) = (size, Vec::new());
                while let Expression::Two(left, operator, right) = &first.value {
                    sums.push((first, left, *operator, right));
                    first = left;
                }
                let mut value = self.value(first)?;
                while let Some((sum, left, operator, right)) = sums.pop() {
                    let right_value = self.value(right)?;
                    value = self.joined(sum, (left, value), operator, (right, right_value))?;
                }
                value
            }
        })
    }

    /// Two sides of a sum or product.
    fn joined(
        &self,
        size: &Size,
        (left, left_value): (&Size, Value),
        operator: Operator,
        (right, right_value): (&Size, Value),
    ) -> Result<Value, Problem> {
        let failed = |error: fits_core::Error| from_core(&error, size.at.clone());
        Ok(match (operator, left_value, right_value) {
            (Operator::Plus | Operator::Minus, Value::Bare(a), Value::Bare(b)) => {
                let sign = if operator == Operator::Plus { 1 } else { -1 };
                Value::Bare(bare_sum(a, b, sign, &size.at)?)
            }
            (Operator::Plus | Operator::Minus, a, b) => {
                // What was worked out once is not again: a long sum
                // would take twice as long with each term.
                let (a, b) = (self.measured(a, left)?, self.measured(b, right)?);
                Value::Length(
                    if operator == Operator::Plus { a.checked_add(b) } else { a.checked_sub(b) }
                        .map_err(failed)?,
                )
            }
            (Operator::Times, Value::Bare(a), Value::Bare(b)) => {
                let (top, bottom) = b.ratio();
                Value::Bare(scaled(a, top, bottom, &size.at)?)
            }
            (Operator::Times, Value::Length(length), Value::Bare(times))
            | (Operator::Times, Value::Bare(times), Value::Length(length)) => {
                let (top, bottom) = times.ratio();
                Value::Length(length.checked_scale(top, bottom).map_err(failed)?)
            }
            (Operator::Over, _, Value::Bare(by)) => {
                let (top, bottom) = by.ratio();
                if top == 0 {
                    return Err(Problem::new("a division by zero is not a size", right.at.clone())
                        .advise("as in `(25.4 + 0.02)/2`"));
                }
                match left_value {
                    Value::Length(length) => {
                        Value::Length(length.checked_scale(bottom, top).map_err(failed)?)
                    }
                    Value::Bare(number) => Value::Bare(scaled(number, bottom, top, &size.at)?),
                }
            }
            (Operator::Times, Value::Length(_), Value::Length(_)) => {
                return Err(Problem::new(
                    "a length times a length is not a size",
                    right.at.clone(),
                )
                .advise("one side is a plain number, as in `2 * 0.0045in`"));
            }
            (Operator::Over, _, Value::Length(_)) => {
                return Err(Problem::new("a size is not divided by a length", right.at.clone())
                    .advise("divide by a plain number, as in `(25.4 + 0.02)/2`"));
            }
        })
    }

    /// Refuses a bare number beside a size in the other system: a guess at its
    /// unit costs a part. Nought is the same in both.
    fn bare(&self, number: Number, size: &Size) -> Result<(), Problem> {
        if self.shown == self.units || number.ratio().0 == 0 {
            return Ok(());
        }
        let (unit, [asked, in_force]) = match self.shown {
            Units::Inches => ("in", ["inches", "millimetres"]),
            Units::Millimetres => ("mm", ["millimetres", "inches"]),
        };
        Err(Problem::new(
            format!(
                "this number has no unit: the question is in {asked}, bare numbers are {in_force}"
            ),
            size.at.clone(),
        )
        .advise("give its unit")
        .fix(size.at.end..size.at.end, unit))
    }

    /// A size that a feature can have.
    pub(crate) fn nominal(&self, size: &Size) -> Result<Length, Problem> {
        let length = self.length(size)?;
        if length.is_negative() {
            let sign = size.at.start..size.at.start + 1;
            let problem =
                Problem::new(format!("a size of {length} is less than nothing"), size.at.clone());
            return Err(if matches!(size.value, Expression::Negative(_)) {
                problem.advise("without the sign").fix(sign, "")
            } else {
                problem.advise("as in `20 H7`")
            });
        }
        Ok(length)
    }
}

/// A number alone, or a length.
#[derive(Clone, Copy)]
enum Value {
    Bare(Number),
    Length(Length),
}

fn scaled(number: Number, top: i128, bottom: i128, at: &Range<usize>) -> Result<Number, Problem> {
    let (a, b) = number.ratio();
    let ratio = a.checked_mul(top).zip(b.checked_mul(bottom));
    ratio_number(ratio, at)
}

fn bare_sum(one: Number, other: Number, sign: i128, at: &Range<usize>) -> Result<Number, Problem> {
    let ((a, b), (c, d)) = (one.ratio(), other.ratio());
    let top = a
        .checked_mul(d)
        .zip(c.checked_mul(b))
        .and_then(|(left, right)| left.checked_add(right.checked_mul(sign)?));
    ratio_number(top.zip(b.checked_mul(d)), at)
}

fn ratio_number(ratio: Option<(i128, i128)>, at: &Range<usize>) -> Result<Number, Problem> {
    let Some((top, bottom)) = ratio else {
        return Err(Problem::new("the sum has too many digits", at.clone())
            .advise("as in `3/4in - 15 thou`"));
    };
    Number::from_ratio(top, bottom).map_err(|error| from_core(&error, at.clone()))
}

fn gauge(name: &str, at: &Range<usize>) -> Result<Drill, Problem> {
    Drill::named(name).ok_or_else(|| {
        Problem::new(format!("there is no drill {name}"), at.clone()).advise(
            "number drills run from `#1` to `#107`, letter drills from `letter A` to `letter Z`",
        )
    })
}

/// A number that the core refuses, with the size it would take.
fn unreadable(error: &fits_core::Error, size: &Size, unit: Unit) -> Problem {
    let problem = from_core(error, size.at.clone());
    let Expression::Number(number, typed) = size.value else {
        return problem;
    };
    let (top, bottom) = number.ratio();
    let places = if matches!(unit, Unit::Inch) { 1_000_000 } else { 10_000_000 };
    let rounded = Number::from_ratio(top, bottom).and_then(|number| number.of(unit));
    match (error.is_unreadable(), rounded, top.checked_mul(places)) {
        (true, Ok(_), Some(scaled)) => {
            let nearest = (scaled + bottom / 2) / bottom;
            let digits = places.to_string().len() - 1;
            let text = format!(
                "{}.{:0digits$}{}",
                nearest / places,
                nearest % places,
                typed.map_or("", Unit::symbol)
            );
            problem.fix(size.at.clone(), text)
        }
        _ => problem,
    }
}
