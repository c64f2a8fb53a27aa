//! Tolerances and deviations of ISO 965-1: the table's cell, and the formula where it has none.

use super::super::{Pitch, Side, Thread, metric_table::PITCHES};
use super::{Cell, PitchRow, micrometres, row, step};
use crate::size::Length;

fn pitch_row(pitch: Pitch) -> Option<&'static PitchRow> {
    let length = pitch.nearest();
    let at = PITCHES.partition_point(|row| row.pitch < length);
    PITCHES.get(at).filter(|row| row.pitch == length)
}

/// A figure and where it comes from; `None` is the formula.
#[derive(Clone, Copy)]
pub(crate) struct Figure {
    pub(crate) length: Length,
    pub(crate) source: Option<u8>,
}

/// The cell, or the formula where the table has none.
fn figure(cell: Option<&Cell>, formula: impl FnOnce() -> i64) -> Figure {
    match cell {
        Some(cell) if cell.micrometres > 0 => {
            Figure { length: micrometres(cell.micrometres.into()), source: Some(cell.source) }
        }
        _ => Figure { length: micrometres(formula()), source: None },
    }
}

/// The tolerance of the pitch diameter.
pub(crate) fn pitch_tolerance(thread: &Thread, side: Side, grade: u8) -> Figure {
    let step = step(thread.major);
    let row = step.and_then(|step| row(step, thread.pitch));
    let (cell, steps) = match side {
        Side::External => {
            (row.and_then(|row| row.external.get(usize::from(grade).wrapping_sub(3))), 0)
        }
        // A nut's tolerance is five preferred numbers above a screw's.
        Side::Internal => {
            (row.and_then(|row| row.internal.get(usize::from(grade).wrapping_sub(4))), 5)
        }
    };
    figure(cell, || {
        let mean = step.map_or(thread.major.millimetres(), |step| {
            libm::sqrt(step.over.millimetres() * step.up_to.millimetres())
        });
        let base = 90.0 * libm::pow(thread.pitch.millimetres(), 0.4) * libm::pow(mean, 0.1);
        preferred(base, steps + 4 * (i32::from(grade) - 6))
    })
}

/// The tolerance of the crest diameter.
pub(crate) fn crest_tolerance(pitch: Pitch, side: Side, grade: u8) -> Figure {
    let row = pitch_row(pitch);
    let p = pitch.millimetres();
    let (cell, base) = match side {
        Side::External => (
            row.and_then(|row| row.major.get(usize::from(grade / 2).wrapping_sub(2))),
            180.0 * libm::cbrt(p * p) - 3.15 / libm::sqrt(p),
        ),
        Side::Internal => (
            row.and_then(|row| row.minor.get(usize::from(grade).wrapping_sub(4))),
            if p < 1.0 {
                433.0 * p - 190.0 * libm::pow(p, 1.22)
            } else {
                230.0 * libm::pow(p, 0.7)
            },
        ),
    };
    figure(cell, || preferred(base, 4 * (i32::from(grade) - 6)))
}

/// The size of the fundamental deviation.
pub(crate) fn deviation(pitch: Pitch, position: char) -> Figure {
    let (column, base) = match position.to_ascii_lowercase() {
        'e' => (0, 50.0),
        'f' => (1, 30.0),
        'g' => (2, 15.0),
        _ => return Figure { length: Length::ZERO, source: None },
    };
    let cell = pitch_row(pitch).and_then(|row| row.deviations.get(column));
    figure(cell, || preferred(base + 11.0 * pitch.millimetres(), 0))
}

/// The preferred numbers of the series R 40 from 1 to below 10.
const R40: [f64; 40] = [
    1.00, 1.06, 1.12, 1.18, 1.25, 1.32, 1.40, 1.50, 1.60, 1.70, 1.80, 1.90, 2.00, 2.12, 2.24, 2.36,
    2.50, 2.65, 2.80, 3.00, 3.15, 3.35, 3.55, 3.75, 4.00, 4.25, 4.50, 4.75, 5.00, 5.30, 5.60, 6.00,
    6.30, 6.70, 7.10, 7.50, 8.00, 8.50, 9.00, 9.50,
];

/// So many R 40 steps from the preferred number nearest to a figure, in whole
/// micrometres, halves to even.
pub(crate) fn preferred(micrometres: f64, steps: i32) -> i64 {
    let exact = 40.0 * libm::log10(micrometres);
    let near = libm::rint(exact);
    // The rounded numbers differ from the exact powers: look at the neighbours.
    let value = |index: f64| {
        let decade = libm::floor(index / 40.0);
        // Between 0 and 39 by the line before.
        let at = whole(index - 40.0 * decade);
        let number = usize::try_from(at).ok().and_then(|at| R40.get(at)).copied();
        number.unwrap_or(1.0) * libm::pow(10.0, decade)
    };
    let nearest = [near - 1.0, near, near + 1.0]
        .into_iter()
        .min_by(|one, two| {
            (value(*one) - micrometres).abs().total_cmp(&(value(*two) - micrometres).abs())
        })
        .unwrap_or(near);
    whole(value(nearest + f64::from(steps)))
}

/// To the nearest whole number, halves to even.
#[allow(clippy::cast_possible_truncation, reason = "tolerances are far below 2^53")]
pub(crate) fn whole(figure: f64) -> i64 {
    libm::rint(figure) as i64
}
