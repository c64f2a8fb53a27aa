//! Why a metric thread's figures are what they are.

use super::{
    Class, Series, Side, Sizes, Thread,
    metric::{Figure, crest_tolerance, deviation, listed, pitch_tolerance, pitches, provenance},
};
use crate::source::{Known, Provenance, Reason};

/// Where the size is listed.
pub(super) fn series(thread: &Thread) -> (String, Option<Provenance>) {
    let Some(row) = listed(thread.major) else {
        return ("the diameter is in no list: special".into(), None);
    };
    let kind = match thread.series {
        Series::Coarse => "the coarse pitch of its diameter",
        Series::Fine => "a fine pitch of its diameter",
        _ => return (format!("special: {}", pitches(thread.major)), None),
    };
    let choice = match row.choice {
        1 => "first choice",
        2 => "second choice",
        _ => "third choice",
    };
    let note = if row.note.is_empty() { String::new() } else { format!("; {}", row.note) };
    (format!("{kind}; {choice}{note}"), Some(provenance(row.source)))
}

/// Deviation and tolerances, each with its table or formula.
pub(super) fn reasons(thread: &Thread, sizes: &Sizes, reasons: &mut Vec<Reason>) {
    let Class::Zones { pitch, crest } = sizes.class else { return };
    let mut add = |name: &str, rule: String, figure: Figure, formula: &str| {
        let (rule, source, known) = match figure.source.map(provenance) {
            Some(from) => (rule, from.text.to_owned(), from.known),
            None => (
                format!("{rule}: {formula}"),
                "ISO 965-1, formulas of its annex".to_owned(),
                Known::Formula,
            ),
        };
        reasons.push(Reason {
            figure: name.into(),
            value: figure.length.to_string().into(),
            rule: rule.into(),
            source,
            known,
        });
    };
    let position = pitch.position;
    let off = deviation(thread.pitch, position);
    let formula = match position.to_ascii_lowercase() {
        'h' => "zero",
        'e' => "50 + 11 P um, to an R 40 number",
        'f' => "30 + 11 P um, to an R 40 number",
        _ => "15 + 11 P um, to an R 40 number",
    };
    add("fundamental deviation", format!("position {position}"), off, formula);
    let (symbol, crest_symbol, crest_name, crest_formula) = match sizes.side {
        Side::External => (
            "Td2",
            "Td",
            "major diameter tolerance",
            "180 P^(2/3) - 3.15/sqrt(P) um of grade 6, four R 40 steps a grade",
        ),
        Side::Internal => (
            "TD2",
            "TD1",
            "minor diameter tolerance",
            "433 P - 190 P^1.22 um below 1 mm, else 230 P^0.7, of grade 6, four R 40 steps a grade",
        ),
    };
    add(
        "pitch diameter tolerance",
        format!("{symbol}, grade {}", pitch.grade),
        pitch_tolerance(thread, sizes.side, pitch.grade),
        "90 P^0.4 d^0.1 um of Td2 grade 6, four R 40 steps a grade, TD2 five above",
    );
    add(
        crest_name,
        format!("{crest_symbol}, grade {}", crest.grade),
        crest_tolerance(thread.pitch, sizes.side, crest.grade),
        crest_formula,
    );
}
