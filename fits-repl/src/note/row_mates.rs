//! The mate in a row of a table, and rows that say `as` another.

use fits_core::job::whole::{FitSaid, Side};

use super::{
    Line, Reader,
    cell::is_mark,
    lexicon::{self, stem, stems},
    names::is_instance,
    phrases::text_of,
    table::Row,
    token::{Kind, Token, tokens},
};

impl Reader {
    /// A length in its own column: the feature's own, or how long the feature is.
    pub(super) fn length_of_row(&mut self, row: &Row, line: &mut Line, feature: usize) {
        let Some(Token { kind: Kind::Num(num), at }) =
            tokens(row.length.1, row.length.0).into_iter().next()
        else {
            return;
        };
        let one = &self.job.features[feature];
        let own = one.side == Side::Length && one.nominal.is_none();
        let (part, name) = (one.part, format!("{} length", one.name));
        let long = if own { feature } else { self.feature(line, part, &name, Side::Length, at) };
        self.size_num(line, long, &num);
    }

    pub(super) fn mate_of_row(&mut self, row: &Row, line: &mut Line, feature: usize, part: usize) {
        let mut fit = fit_of_cell(row.fit.1);
        let text = row.mate.1.trim_end_matches('?');
        if text.is_empty() || text == "-" {
            self.fit_alone(line, feature, fit);
            return;
        }
        let found = tokens(text, row.mate.0);
        let Some(name_end) = found.iter().position(|token| {
            matches!(token.kind, Kind::Num(_) | Kind::Dims(_)) && !is_mark(token)
        }) else {
            let subject = line.subject;
            let place = row.mate.0..row.mate.0 + text.len();
            // `P,CS`: it goes through both; `base, lever` with `press, run`.
            let several = text.split(',').all(|name| {
                let last = name.split_whitespace().last().unwrap_or_default().to_lowercase();
                self.exact.contains_key(&stems(name).concat()) || self.is_thing(&last)
            });
            let names: Vec<&str> = if several { text.split(',').collect() } else { vec![text] };
            let fits: Vec<&str> = row.fit.1.split(',').map(str::trim).collect();
            for (at, name) in names.iter().enumerate() {
                if names.len() > 1 && fits.len() == names.len() {
                    fit = fit_of_cell(fits[at]);
                }
                let mut mate = Some((name.trim().to_owned(), None, place.clone(), true));
                self.finish_mate(line, &mut mate, Some(feature), &mut fit.clone(), None);
            }
            line.subject = subject;
            return;
        };
        let name = found[..name_end].iter().map(text_of).collect::<Vec<_>>().join(" ");
        if name.is_empty() {
            return;
        }
        // `shoulders 209.7`: a length that stands in the mate's cell.
        let is_length = self.job.features[feature].side == Side::Length;
        if is_length {
            let shafts = (0..self.job.parts.len()).find(|part| {
                self.features_of(*part).any(|(_, one)| {
                    stems(&one.name)
                        .iter()
                        .any(|word| word == "journal" || word == "dia" || word == "seat")
                })
            });
            let on = shafts.unwrap_or(part);
            let made =
                self.feature(line, on, &name, Side::Length, row.mate.0..row.mate.0 + text.len());
            if let Kind::Num(num) = &found[name_end].kind {
                self.size_num(line, made, num);
            }
            return;
        }
        let other = self.part_named(&name, line.number);
        line.mate_part = Some(other);
        let to = self.of_mate(line, other, &found[name_end].kind, &found[name_end].at, None);
        self.finish_mate(
            line,
            &mut Some((name, Some(other), row.mate.0..row.mate.0 + text.len(), true)),
            Some(feature),
            &mut fit,
            to,
        );
    }

    /// `as Bush 1`: sizes and fits are the same, readings are not.
    pub(super) fn like(&mut self, line: &mut Line, part: usize, other: usize, row: &Row) {
        let theirs: Vec<usize> = self.features_of(other).map(|(at, _)| at).collect();
        let mut made = Vec::new();
        for at in theirs {
            let one = self.job.features[at].clone();
            let feature = self.feature(
                line,
                part,
                &one.name,
                one.side,
                row.feature.0..row.feature.0 + row.feature.1.len(),
            );
            if let Some(nominal) = one.nominal {
                self.size(line, feature, nominal, (one.unit, one.unit_from));
            }
            self.job.features[feature].class = one.class;
            let marks = |text: &str| stems(text).into_iter().find(|word| is_instance(word));
            let want = self
                .wanted
                .iter()
                .find(|want| want.feature == at)
                .map(|want| (want.name.clone(), want.fit.clone()));
            if let Some((name, fit)) = want {
                // `jrnl A` of bearing A is `jrnl B` of bearing B.
                let name =
                    match (marks(&self.job.parts[other].name), marks(&self.job.parts[part].name)) {
                        (Some(old), Some(new)) => name
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
                        _ => name,
                    };
                let mut fit = fit;
                self.finish_mate(
                    line,
                    &mut Some((name, None, 0..0, true)),
                    Some(feature),
                    &mut fit,
                    None,
                );
            }
            made.push(feature);
        }
        if self.job.parts[part].material.is_none() {
            let material = self.job.parts[other].material.clone();
            self.job.parts[part].material = material;
        }
        for token in tokens(row.reading.1, row.reading.0) {
            if let Kind::Num(num) = token.kind {
                let near = made.iter().copied().find(|at| {
                    num.length(self.job.features[*at].unit)
                        .is_some_and(|size| self.is_near(*at, size))
                });
                match near {
                    Some(feature) => self.reading(line, feature, &num),
                    None => self.ask(
                        line.number,
                        num.at.clone(),
                        "which feature was measured here?",
                        Some("name it before the reading".into()),
                    ),
                }
            }
        }
    }
}

/// The fit that a cell says.
fn fit_of_cell(cell: &str) -> FitSaid {
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
