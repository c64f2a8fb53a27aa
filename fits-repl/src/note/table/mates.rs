//! The mate in a row of a table, and rows that say `as` another.

use fits_core::job::whole::{FitSaid, SizeKind};

use super::{
    Row,
    cell::{is_aside, is_mark},
};
use crate::note::{
    Line,
    clause::phrases::text_of,
    kinds,
    lexicon::{self, stem, stems},
    names::is_instance,
    token::{Kind, tokens},
    told::Told,
    wants::Wants,
};

pub(super) fn mate_of_row(
    told: &mut Told,
    wants: &mut Wants,
    row: &Row,
    line: &mut Line,
    feature: usize,
    (at, count): (usize, usize),
) {
    let mut fit = fit_of_cell(row.fit.1);
    // `same gudgeon seat`: the one named above once more.
    let text = row.mate.1.trim_end_matches('?');
    let text = text.strip_prefix("same ").map_or(text, str::trim_start);
    // `6003, slide`: the fit stands behind the name.
    let (text, said) = match text.rsplit_once(',') {
        Some((name, said)) if row.fit.1.is_empty() && is_fit(said.trim()) => {
            (name.trim(), Some(said.trim()))
        }
        _ => (text, None),
    };
    // `keyway, both`: all that are called so.
    let text =
        [", both", " both", ", each"].iter().find_map(|end| text.strip_suffix(end)).unwrap_or(text);
    let text = without_aside(told, line, text);
    if let Some(said) = said {
        fit = fit_of_cell(said);
    }
    // `1 + 2`: each by its item number; `od / bore` with `7 / pivot pin` one each.
    let paired = || row.mate.1.split(" / ").map(|name| name.trim().to_owned()).collect();
    let is_paired = count > 1 && row.mate.1.split(" / ").count() == count;
    if let Some(names) = row.mates.clone().or_else(|| is_paired.then(paired)) {
        let own = (count == names.len()).then(|| names.get(at).cloned()).flatten();
        let place = row.mate.0..row.mate.0 + row.mate.1.len();
        for name in own.map_or_else(|| names.clone(), |own| vec![own]) {
            let mut mate = Some((name, None, place.clone(), true));
            wants.finish_mate(told, line, &mut mate, Some(feature), &mut fit.clone(), None);
        }
        return;
    }
    if text.is_empty() || text == "-" {
        wants.fit_alone(told, line, feature, fit);
        return;
    }
    let found = tokens(text, row.mate.0);
    let Some(name_end) = found
        .iter()
        .position(|token| matches!(token.kind, Kind::Num(_) | Kind::Dims(_)) && !is_mark(token))
    else {
        let subject = line.subject;
        let place = row.mate.0..row.mate.0 + text.len();
        // `P,CS`: it goes through both; `base, lever` with `press, run`.
        let several = text.split(',').all(|name| {
            let last = name.split_whitespace().last().unwrap_or_default().to_lowercase();
            told.names.exactly(&stems(name).concat()).is_some() || told.names.is_thing(&last)
        });
        let names: Vec<&str> = if several { text.split(',').collect() } else { vec![text] };
        let fits: Vec<&str> = row.fit.1.split(',').map(str::trim).collect();
        for (at, name) in names.iter().enumerate() {
            if names.len() > 1 && fits.len() == names.len() {
                fit = fit_of_cell(fits[at]);
            }
            let mut mate = Some((name.trim().to_owned(), None, place.clone(), true));
            wants.finish_mate(told, line, &mut mate, Some(feature), &mut fit.clone(), None);
        }
        line.subject = subject;
        return;
    };
    let name = found[..name_end].iter().map(text_of).collect::<Vec<_>>().join(" ");
    if name.is_empty() {
        return;
    }
    // `shoulders 209.7`: a length that stands in the mate's cell.
    let is_length = told.job.features[feature].side == SizeKind::Length;
    if is_length {
        let shafts = (0..told.job.parts.len()).find(|part| {
            told.features_of(*part).any(|(_, one)| {
                stems(&one.name)
                    .iter()
                    .any(|word| word == "journal" || word == "dia" || word == "seat")
            })
        });
        let on = shafts.unwrap_or(told.job.features[feature].part);
        let made =
            told.feature(line, on, &name, SizeKind::Length, row.mate.0..row.mate.0 + text.len());
        if let Kind::Num(num) = &found[name_end].kind {
            told.size_num(line, made, num);
        }
        return;
    }
    let other = told.part_named(&name, line.number);
    line.mate_part = Some(other);
    let to =
        kinds::of_mate(told, wants, line, other, &found[name_end].kind, &found[name_end].at, None);
    wants.finish_mate(
        told,
        line,
        &mut Some((name, Some(other), row.mate.0..row.mate.0 + text.len(), true)),
        Some(feature),
        &mut fit,
        to,
    );
}

/// `as Bush 1`: sizes and fits are the same, readings are not.
pub(super) fn like(
    told: &mut Told,
    wants: &mut Wants,
    line: &mut Line,
    part: usize,
    other: usize,
    row: &Row,
) {
    let theirs: Vec<usize> = told.features_of(other).map(|(at, _)| at).collect();
    let mut made = Vec::new();
    for at in theirs {
        let one = told.job.features[at].clone();
        let feature = told.feature(
            line,
            part,
            &one.name,
            one.side,
            row.feature.0..row.feature.0 + row.feature.1.len(),
        );
        if let Some(nominal) = one.nominal {
            told.size(line, feature, nominal, (one.unit, one.unit_from));
        }
        told.job.features[feature].class = one.class;
        let marks = |text: &str| stems(text).into_iter().find(|word| is_instance(word));
        if let Some(mut want) = wants.of(at).cloned() {
            // `jrnl A` of bearing A is `jrnl B` of bearing B.
            let name = match (marks(&told.job.parts[other].name), marks(&told.job.parts[part].name))
            {
                (Some(old), Some(new)) => want
                    .name
                    .split_whitespace()
                    .map(|word| {
                        if stem(&word.to_lowercase()) == old {
                            new.to_uppercase()
                        } else {
                            word.to_owned()
                        }
                    })
                    .collect::<Vec<_>>()
                    .join(" "),
                _ => want.name,
            };
            let mut mate = Some((name, None, 0..0, true));
            wants.finish_mate(told, line, &mut mate, Some(feature), &mut want.fit, None);
        }
        made.push(feature);
    }
    if told.job.parts[part].material.is_none() {
        let material = told.job.parts[other].material.clone();
        told.job.parts[part].material = material;
    }
    for token in tokens(row.reading.1, row.reading.0) {
        if let Kind::Num(num) = token.kind {
            let near = made.iter().copied().find(|at| {
                num.length(told.job.features[*at].unit).is_some_and(|size| told.is_near(*at, size))
            });
            match near {
                Some(feature) => told.reading(line, feature, &num),
                None => told.ask(
                    line.number,
                    num.at.clone(),
                    "which feature was measured here?",
                    Some("name it before the reading".into()),
                ),
            }
        }
    }
}

/// `nut (bought)`: what the brackets say of it is no part of its name.
fn without_aside<'a>(told: &mut Told, line: &Line, text: &'a str) -> &'a str {
    let Some((name, inside)) = text.strip_suffix(')').and_then(|text| text.rsplit_once('(')) else {
        return text;
    };
    if name.trim().is_empty() || !is_aside(&tokens(inside, 0)) {
        return text;
    }
    told.remark(line.number, text, line.subject);
    name.trim()
}

/// Is the whole text a fit?
fn is_fit(text: &str) -> bool {
    let words: Vec<&str> = text.split_whitespace().collect();
    lexicon::fit(&words).is_some_and(|(taken, _)| taken == words.len())
}

/// The fit that a cell says.
pub(super) fn fit_of_cell(cell: &str) -> FitSaid {
    let words: Vec<String> =
        tokens(cell, 0).iter().map(text_of).filter(|word| !word.is_empty()).collect();
    if words.is_empty() || cell == "-" {
        return FitSaid::default();
    }
    let words: Vec<&str> = words.iter().map(String::as_str).collect();
    let word =
        (0..words.len()).find_map(|at| lexicon::fit(&words[at..]).and_then(|(_, word)| word));
    FitSaid { words: cell.to_owned(), word, clearance: None }
}
