//! Why a Unified thread's figures are what they are.

use super::{
    Class, Series, Side, Sizes, Thread, Zone,
    unified::{Odd, exception, is_engaged_by_diameter, length, parts, share, usual_engagement},
    unified_series::{constant, inch_parts, listed, pitches, provenance, tolerance_diameter},
};
use crate::{
    size::{Decimals, Length, Rounding, inches},
    source::{Known, Provenance, Reason},
};

/// Where the size is listed.
pub(super) fn series(thread: &Thread) -> (String, Option<Provenance>) {
    let graded = listed(thread.major, thread.pitch).filter(|row| row.series == thread.series);
    if let Some(row) = graded {
        return ("a size of the series".into(), Some(provenance(row.source)));
    }
    match constant(thread.major, thread.pitch) {
        Some(row) if thread.series == Series::Constant => (
            format!("{}-UN: from {} to {} in", row.turns, inches(row.from), inches(row.up_to)),
            Some(provenance(row.source)),
        ),
        _ => (format!("special; {}", pitches(thread.major, thread.nominal)), None),
    }
}

/// Tolerance of 2A, share of the class, allowance and crest tolerance.
pub(super) fn reasons(
    thread: &Thread,
    sizes: &Sizes,
    engaged: Option<Length>,
    reasons: &mut Vec<Reason>,
) {
    let Class::Zones { pitch: Zone { grade: class, .. }, .. } = sizes.class else { return };
    let usual = usual_engagement(thread);
    let length_engaged = engaged.unwrap_or(usual);
    let parts = parts(thread, sizes.side, class, length_engaged);
    let mut add = |figure: &str, value: i64, rule: String, source: &str| {
        reasons.push(Reason {
            figure: figure.into(),
            value: format!("{} in", inches(length(value))).into(),
            rule: rule.into(),
            source: source.into(),
            known: Known::Formula,
        });
    };
    let tolerated = tolerance_diameter(thread.major);
    let by = if engaged.is_some() {
        "as given"
    } else if is_engaged_by_diameter(thread) {
        "the diameter"
    } else {
        "nine pitches"
    };
    let next = if tolerated == thread.major {
        ""
    } else {
        "; the diameter is that of the next primary size, found by fitting published limits"
    };
    add(
        "tolerance of class 2A",
        parts.class_2a,
        format!(
            "0.0015 D^(1/3) + 0.0015 LE^(1/2) + 0.015 P^(2/3) with D {}, LE {} ({by}), P {:.8}{next}",
            inches(tolerated),
            inches(Decimals::INCHES.round(length_engaged, Rounding::Nearest)),
            thread.pitch.inches(),
        ),
        "ASME B1.1, formulas of pitch diameter tolerance",
    );
    if sizes.side == Side::External {
        let rule = if class == 3 {
            "class 3A has none".to_owned()
        } else {
            format!("0.300 x {}", inches(length(parts.class_2a)))
        };
        add("allowance", parts.allowance, rule, "ASME B1.1, allowances");
    }
    #[allow(clippy::cast_precision_loss, reason = "below 2^53")]
    let share = share(sizes.side, class) as f64 / 1000.0;
    add(
        "pitch diameter tolerance",
        parts.pitch,
        format!("{share} x {}", inches(length(parts.class_2a))),
        "ASME B1.1, formulas of pitch diameter tolerance",
    );
    let rule = match (sizes.side, class) {
        (Side::External, 1) => "0.090 P^(2/3)",
        (Side::External, _) => "0.060 P^(2/3)",
        (Side::Internal, 3) => {
            "0.05 P^(2/3) + 0.03 P/D - 0.002, at most 0.394 P, at least 0.23 P - 1.5 P² (0.120 P from 12 tpi on)"
        }
        (Side::Internal, _) if thread.major < inch_parts(1, 4) => {
            "0.05 P^(2/3) + 0.03 P/D - 0.002, at most 0.394 P, at least 0.25 P - 0.4 P²"
        }
        (Side::Internal, _) => "0.25 P - 0.4 P² (0.15 P coarser than 4 tpi)",
    };
    let name = match sizes.side {
        Side::External => "major diameter tolerance",
        Side::Internal => "minor diameter tolerance",
    };
    add(
        name,
        parts.crest,
        rule.into(),
        "ASME B1.1, formulas of major and minor diameter tolerance",
    );
    for (figure, name) in
        [(Odd::Allowance, "printed allowance"), (Odd::PitchTolerance, "printed pitch tolerance")]
    {
        let is_usual = length_engaged == usual;
        if let Some(row) = exception(thread, sizes.side, class, figure).filter(|_| is_usual) {
            let from = provenance(row.source);
            reasons.push(Reason {
                figure: name.into(),
                value: format!("{} in", inches(length(row.microinches))).into(),
                rule: "the tables print this, 0.0001 in off the formula: the tables are followed"
                    .into(),
                source: from.text.into(),
                known: from.known,
            });
        }
    }
}
