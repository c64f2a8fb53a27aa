//! Rows of a table: under a header, or a joint a row with dots between.

use fits_core::{
    job::whole::{FitSaid, Nominal, Side},
    size::Unit,
};

use super::{
    Line, Reader,
    clause::has_size,
    items::{Item, text_of},
    lexicon::{self, feature, inwardness, is_material, stem, stems},
    lines::{self, Column},
    names::is_instance,
    sizes::Given,
    token::{Kind, Num, Token, tokens},
};

/// A row's cells by what they hold.
#[derive(Default)]
struct Row<'a> {
    part: (usize, &'a str),
    feature: (usize, &'a str),
    size: (usize, &'a str),
    unit: &'a str,
    limits: (usize, &'a str),
    length: (usize, &'a str),
    fit: (usize, &'a str),
    mate: (usize, &'a str),
    reading: (usize, &'a str),
    done: &'a str,
    material: &'a str,
    count: &'a str,
    notes: Vec<&'a str>,
}

impl Reader {
    /// A row under a header; false where the line is no such row.
    pub(super) fn row(&mut self, number: usize, raw: &str, columns: &lines::Columns) -> bool {
        let (sign, cells) = lines::cells_under(raw, columns.1.first().map(|(at, _)| *at));
        let padded = columns.0 == ' ';
        if sign != columns.0 && !(padded && cells.len() > 1) || cells.len() < 2 {
            return false;
        }
        let cells = if padded { at_columns(&cells, &columns.1) } else { cells };
        let above = self.above.clone();
        let mut row = Row::default();
        for (index, (at, cell)) in cells.iter().enumerate() {
            let column = if padded {
                columns
                    .1
                    .iter()
                    .min_by_key(|(start, _)| start.abs_diff(*at))
                    .map(|(_, column)| *column)
            } else {
                columns.1.get(index).map(|(_, column)| *column)
            };
            let cell = (*at, cell.trim());
            match column.unwrap_or(Column::Notes) {
                Column::Part => row.part = cell,
                Column::Feature => row.feature = cell,
                Column::Size => row.size = cell,
                Column::Unit => row.unit = cell.1,
                Column::Limits => row.limits = cell,
                Column::Length => row.length = cell,
                Column::Fit => row.fit = cell,
                Column::Mate => row.mate = cell,
                Column::Reading => row.reading = cell,
                Column::Done => row.done = cell.1,
                Column::Material => row.material = cell.1,
                Column::Count => row.count = cell.1,
                Column::Notes => row.notes.push(cell.1),
            }
        }
        for (cell, above) in [(&mut row.feature, &above.0), (&mut row.mate, &above.1)] {
            if is_ditto(cell.1) && !above.is_empty() {
                cell.1 = above;
            }
        }
        self.above = (row.feature.1.to_owned(), row.mate.1.to_owned());
        if row.fit.1.is_empty() && !row.limits.1.contains(|c: char| c.is_ascii_digit()) {
            row.fit = row.limits;
        }
        let own_size = |text: &str| {
            tokens(text, 0)
                .iter()
                .any(|token| matches!(&token.kind, Kind::Num(num) if num.places > 0 || num.vulgar))
        };
        if own_size(row.part.1) {
            return false;
        }
        if row.feature.1.starts_with(|c: char| c.is_ascii_digit() || c == '.')
            && !has_words(row.feature.1)
        {
            row.size = row.feature;
            row.feature = (0, "");
        }
        let mut line = Line { number, is_row: true, ..Line::default() };
        line.unit =
            tokens(&format!("1 {}", row.unit), 0).first().and_then(|token| match &token.kind {
                Kind::Num(num) => num.unit,
                _ => None,
            });
        line.done = matches!(
            row.done.to_lowercase().as_str(),
            "y" | "yes" | "x" | "ok" | "done" | "\u{2713}"
        );
        let before = line.found;
        let declared = self.parts_of_row(&row, &mut line);
        for part in declared {
            line.subject = Some(part);
            line.feature = None;
            self.features_of_row(&row, &mut line, part);
        }
        let notes: Vec<&str> =
            row.notes.iter().copied().filter(|note| !note.is_empty() && *note != "-").collect();
        if line.found == before {
            self.remark(number, raw, line.subject);
        } else {
            for note in notes {
                self.remark(number, note, line.subject);
            }
        }
        if let Some(cell) = [row.mate.1, row.size.1, row.feature.1, row.fit.1]
            .iter()
            .find(|cell| cell.ends_with('?'))
        {
            let at = raw.find(cell).unwrap_or(0);
            self.job.questions.push(fits_core::job::whole::Question {
                line: number,
                at: at..at + cell.len(),
                text: (*cell).to_owned(),
                answer: None,
                by_writer: true,
            });
        }
        true
    }

    /// The part, or the parts, that a row is of.
    fn parts_of_row(&mut self, row: &Row, line: &mut Line) -> Vec<usize> {
        let text = row.part.1;
        if text.is_empty() || text == "-" || is_ditto(text) {
            return self.current.into_iter().collect();
        }
        // A length of the whole has no part: `Endfloat`.
        if row.feature.1.is_empty()
            && feature(&text.split_whitespace().next().unwrap_or_default().to_lowercase())
                == Some(Side::Length)
            || matches!(text.to_lowercase().as_str(), "end play" | "end float" | "axial play")
        {
            return vec![self.assembly(line.number)];
        }
        let found = tokens(text, row.part.0);
        let mut name = String::new();
        let mut material = None;
        for token in &found {
            match &token.kind {
                Kind::Word(word)
                    if is_material(word) && !name.is_empty() && inwardness(word).is_none() =>
                {
                    material = Some(word.clone());
                }
                Kind::Count(_) | Kind::Sign('(' | ')') => {}
                _ => {
                    let piece = &text[token.at.start - row.part.0..token.at.end - row.part.0];
                    if !name.is_empty() && !matches!(piece, "," | ".") && !name.ends_with(',') {
                        name.push(' ');
                    }
                    name.push_str(piece);
                }
            }
        }
        // `arm L,R` are two.
        let names = each_of(&name);
        let parts: Vec<usize> =
            names.iter().map(|name| self.part_named(name, line.number)).collect();
        for part in &parts {
            self.describe(*part, &found);
            let part = &mut self.job.parts[*part];
            if material.is_some() && part.material.is_none() {
                part.material.clone_from(&material);
            }
            part.bought |= row.material.to_lowercase().contains("bought");
            if part.material.is_none() && !row.material.is_empty() && !part.bought {
                part.material = Some(row.material.to_owned());
            }
            part.count = part.count.or_else(|| row.count.trim().parse().ok());
        }
        self.current = parts.last().copied();
        parts
    }

    fn features_of_row(&mut self, row: &Row, line: &mut Line, part: usize) {
        let said = row.feature.1.to_lowercase();
        let alike = said
            .strip_prefix("as ")
            .or_else(|| said.strip_prefix("same as "))
            .or_else(|| (said == "same" || said == "ditto").then_some(""));
        if let Some(other) = alike {
            let other: Option<usize> = self
                .part_called(&stems(other))
                .map(|(part, _)| part)
                .filter(|_| !other.is_empty())
                .or_else(|| part.checked_sub(1).filter(|_| other.is_empty()));
            if other.is_none() {
                let at = row.feature.0..row.feature.0 + row.feature.1.len();
                let text = format!("no part before this row is called so: `{}`", row.feature.1);
                self.ask(line.number, at, text, Some("name a part of a row above".into()));
                line.found += 1;
            }
            if let Some(other) = other {
                self.like(line, part, other, row);
            }
            return;
        }
        let mut readings: Vec<Num> = tokens(row.reading.1, row.reading.0)
            .into_iter()
            .filter_map(|token| match token.kind {
                Kind::Num(num) => Some(num),
                _ => None,
            })
            .collect();
        if row.reading.1.split_whitespace().any(has_words)
            && readings.iter().all(|num| num.places == 0)
        {
            readings.clear();
        }
        // What the part is made from is no size of it.
        let is_stock = lexicon::is_stock(&row.feature.1.to_lowercase());
        let size = if is_stock { Vec::new() } else { tokens(row.size.1, row.size.0) };
        let names = each_of(row.feature.1);
        let count = names.len();
        for (at, name) in names.iter().enumerate() {
            let feature = self.feature_of_row(row, line, part, name, &size);
            let Some(feature) = feature else { continue };
            let mine: Vec<Num> = if count > 1 {
                readings.get(at).cloned().into_iter().collect()
            } else {
                readings.clone()
            };
            for num in mine {
                self.reading(line, feature, &num);
            }
            self.job.features[feature].done |= line.done;
            self.length_of_row(row, line, feature);
            self.mate_of_row(row, line, feature, part);
        }
    }

    #[allow(clippy::too_many_lines, reason = "one kind of words after another, each short")]
    fn feature_of_row(
        &mut self,
        row: &Row,
        line: &mut Line,
        part: usize,
        name: &str,
        size: &[Token],
    ) -> Option<usize> {
        let place = row.feature.0..row.feature.0 + row.feature.1.len();
        let head = tokens(name, row.feature.0);
        let items = self.items(&head, line);
        let item = items.iter().find(|(item, _)| matches!(item, Item::Feature { .. })).cloned();
        let kind = size
            .iter()
            .find(|token| {
                matches!(
                    token.kind,
                    Kind::Num(_) | Kind::Dims(_) | Kind::Range(..) | Kind::Thread(_)
                )
            })
            .map(|token| (token.kind.clone(), token.at.clone()));
        let class = size
            .iter()
            .find_map(|token| match &token.kind {
                Kind::Class(class) => Some(class.clone()),
                _ => None,
            })
            .or_else(|| {
                let beside = format!("{} {}", row.fit.1, row.limits.1);
                tokens(&beside, 0).into_iter().find_map(|token| match token.kind {
                    Kind::Class(class) if !class.contains('/') => Some(class),
                    _ => None,
                })
            });
        // Deviations stand behind a size.
        let limits = tokens(&format!("0 {}", row.limits.1), 0);
        let off = size.iter().chain(&limits).find_map(|token| match &token.kind {
            Kind::Off(low, high) => Some((low.clone(), high.clone())),
            _ => None,
        });
        // A feature word of a part's own, as `bush od` in the roller's row.
        let mut owner = None;
        if let Some((Item::Feature { name: word, side, part: other, mate }, _)) = &item {
            let on = other.unwrap_or(part);
            let side =
                if matches!(kind, Some((Kind::Thread(_), _))) { Side::Thread } else { *side };
            let named = if other.is_some() { word.clone() } else { name.trim().to_owned() };
            let inner =
                named.split_whitespace().next().and_then(inwardness).filter(|_| {
                    feature(named.split_whitespace().next().unwrap_or_default()).is_none()
                });
            let last = stem(named.split_whitespace().last().unwrap_or_default());
            if other.is_none() && inner.is_some() && matches!(last.as_str(), "od" | "id") {
                let first = named.split_whitespace().next().unwrap_or_default().to_owned();
                let whole = format!("{} {first}", self.job.parts[part].name);
                let inner = self.part_named(&whole, line.number);
                line.subject = Some(inner);
                owner = Some(self.feature(
                    line,
                    inner,
                    named.split_whitespace().last().unwrap_or_default(),
                    side,
                    place.clone(),
                ));
            } else {
                let feature = self.feature(line, on, &named, side, place.clone());
                if let (Some(mate), true) = (mate, row.mate.1.is_empty()) {
                    self.hint(line, feature, mate, &place);
                }
                owner = Some(feature);
            }
        } else if !name.trim().is_empty() {
            let is_thread = matches!(kind, Some((Kind::Thread(_), _)));
            let own = self.inwardness(part);
            let side = if is_thread {
                Side::Thread
            } else if own >= 2 {
                Side::Shaft
            } else {
                Side::Hole
            };
            let side = if kind.is_none() { Side::Length } else { side };
            if kind.is_some() || !row.length.1.is_empty() {
                owner = Some(self.feature(line, part, name.trim(), side, place.clone()));
            }
        } else if let Some((Kind::Range(..) | Kind::Num(_), _)) = &kind
            && self.job.parts[part].name == "assembly"
        {
            owner = Some(self.feature(
                line,
                part,
                row.part.1,
                Side::Length,
                row.part.0..row.part.0 + row.part.1.len(),
            ));
        }
        let Some((kind, at)) = kind else {
            let thread = owner.or_else(|| {
                row.fit
                    .1
                    .contains("match")
                    .then(|| self.feature(line, part, "thread", Side::Thread, place.clone()))
            });
            if let Some(feature) = thread {
                self.say(line, feature);
            }
            return thread;
        };
        line.feature = None;
        let mate = (!row.mate.1.is_empty()).then_some(row.mate.1);
        let given = Given {
            kind: &kind,
            place: &at,
            owner,
            owner_said: owner.is_some(),
            class,
            reads: false,
            works_to: false,
            most: false,
            mate,
            has_fit: !row.fit.1.is_empty() || mate.is_some(),
            off,
            is_plain: true,
        };
        self.give(line, &given)
    }

    /// A length in its own column: the feature's own, or how long the feature is.
    fn length_of_row(&mut self, row: &Row, line: &mut Line, feature: usize) {
        let Some(Token { kind: Kind::Num(num), at }) =
            tokens(row.length.1, row.length.0).into_iter().next()
        else {
            return;
        };
        let Some(size) = self.length(&num, line.unit) else { return };
        let one = &self.job.features[feature];
        let own = one.side == Side::Length && one.nominal.is_none();
        let (part, name) = (one.part, format!("{} length", one.name));
        let long = if own { feature } else { self.feature(line, part, &name, Side::Length, at) };
        let from = self.unit_of(&num, line.unit);
        self.size(line, long, Nominal::Size(size), from);
    }

    fn mate_of_row(&mut self, row: &Row, line: &mut Line, feature: usize, part: usize) {
        let mut fit = FitSaid::default();
        let words: Vec<String> =
            tokens(row.fit.1, 0).iter().map(text_of).filter(|word| !word.is_empty()).collect();
        if !words.is_empty() && row.fit.1 != "-" {
            row.fit.1.clone_into(&mut fit.words);
            let words: Vec<&str> = words.iter().map(String::as_str).collect();
            fit.word = (0..words.len())
                .find_map(|at| lexicon::fit(&words[at..]).and_then(|(_, word)| word));
        }
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
            // `P,CS`: it goes through both.
            let several =
                text.split(',').all(|name| self.exact.contains_key(&stems(name).concat()));
            for name in text.split(',').filter(|_| several).chain((!several).then_some(text)) {
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
            if let Kind::Num(num) = &found[name_end].kind
                && let Some(size) = self.length(num, line.unit)
            {
                let from = self.unit_of(num, line.unit);
                self.size(line, made, Nominal::Size(size), from);
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
    fn like(&mut self, line: &mut Line, part: usize, other: usize, row: &Row) {
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

    /// `pin / frame ..... 3/8 ..... drive`: a joint a row.
    pub(super) fn joint_row(&mut self, number: usize, raw: &str) {
        let mut cells: Vec<(usize, &str)> = Vec::new();
        let mut start = 0;
        for piece in raw.split("...") {
            let text = piece.trim_matches(['.', ' ', '\u{2026}']);
            if !text.is_empty() {
                cells.push((start + piece.find(text).unwrap_or(0), text));
            }
            start += piece.len() + 3;
        }
        let mut line = Line { number, is_row: true, ..Line::default() };
        let Some((at, first)) = cells.first().copied() else { return };
        let names = joint_names(first);
        let Some((one, other)) = names else {
            // No joint: a size of one thing.
            line.is_row = false;
            let from = self.head(raw, at, &mut line, false);
            let text = raw.replace("...", "   ");
            self.text(&text, from, &mut line);
            if line.found == 0 {
                self.remark(number, raw, line.subject);
            }
            return;
        };
        let (one, other) = (self.joint_side(one, number), self.joint_side(other, number));
        let inner = |reader: &Self, side: &(usize, Option<(String, Side)>)| match &side.1 {
            Some((_, Side::Shaft)) => 4,
            Some((_, Side::Hole)) => -2,
            _ => reader.inwardness(side.0),
        };
        let (shaft, hole) =
            if inner(self, &one) >= inner(self, &other) { (one, other) } else { (other, one) };
        let rest: String =
            raw[at + first.len()..].chars().map(|c| if c == '.' { ' ' } else { c }).collect();
        // Points within numbers are kept.
        let rest: String = rest
            .char_indices()
            .map(|(place, c)| {
                let place = place + at + first.len();
                let near = raw.as_bytes();
                let is_point = near.get(place) == Some(&b'.')
                    && near.get(place + 1).is_some_and(u8::is_ascii_digit)
                    && near.get(place.wrapping_sub(1)) != Some(&b'.');
                let is_stop = near.get(place) == Some(&b'.')
                    && near.get(place + 1) == Some(&b' ')
                    && near.get(place.wrapping_sub(1)).is_some_and(u8::is_ascii_alphanumeric);
                if is_point {
                    '.'
                } else if is_stop {
                    ','
                } else {
                    c
                }
            })
            .collect();
        let found = tokens(&rest, at + first.len());
        self.joint(&mut line, &found, &shaft, &hole);
        if raw.contains('(') || raw.contains('!') {
            let from = raw.find('(').unwrap_or(0);
            self.remark(number, &raw[from..], Some(hole.0));
        }
    }

    #[allow(clippy::too_many_lines, reason = "one kind of words after another, each short")]
    fn joint(
        &mut self,
        line: &mut Line,
        found: &[Token],
        shaft: &(usize, Option<(String, Side)>),
        hole: &(usize, Option<(String, Side)>),
    ) {
        let place = found.first().map_or(0..0, |token| token.at.clone());
        let size = found
            .iter()
            .find(|token| matches!(token.kind, Kind::Num(_) | Kind::Dims(_) | Kind::Thread(_)));
        let threaded = matches!(size.map(|token| &token.kind), Some(Kind::Thread(_)));
        let name = |reader: &Self,
                    side: &(usize, Option<(String, Side)>),
                    default: &str,
                    other: usize| match &side.1 {
            Some((name, _)) => name.clone(),
            None if threaded => "thread".to_owned(),
            None if default == "seat" => {
                let what = &reader.job.parts[other].name;
                let last =
                    what.split_whitespace().find(|word| inwardness(word).is_some()).unwrap_or(what);
                format!("{last} seat")
            }
            None => default.to_owned(),
        };
        let is_shaft = self.stems[shaft.0]
            .iter()
            .any(|word| matches!(word.as_str(), "shaft" | "crank" | "crankshaft"));
        let shaft_name = name(self, shaft, if is_shaft { "seat" } else { "od" }, hole.0);
        let is_body = self.inwardness(hole.0) < 0;
        let taken = self.feature_called(hole.0, "bore", Some(Side::Hole)).is_some();
        let mut hole_name = name(self, hole, if is_body { "bore" } else { "hole" }, shaft.0);
        if hole_name == "hole" && self.inwardness(hole.0) == 1 {
            "bore".clone_into(&mut hole_name);
        }
        if hole.1.is_none() && is_body && taken && !threaded {
            let what = self.job.parts[shaft.0].name.clone();
            hole_name = format!("{} hole", what.split_whitespace().next().unwrap_or_default());
        }
        let side = |side| if threaded { Side::Thread } else { side };
        let outer = self.feature(line, shaft.0, &shaft_name, side(Side::Shaft), place.clone());
        let inner = self.feature(line, hole.0, &hole_name, side(Side::Hole), place.clone());
        let mut fit = FitSaid::default();
        let mut sized = false;
        for (at, token) in found.iter().enumerate() {
            match &token.kind {
                Kind::Dims(all) if !sized => {
                    sized = true;
                    if found.get(at + 1).and_then(Token::word) == Some("wall") {
                        line.subject = Some(hole.0);
                        if let Some(bore) = self.give(line, &Given::plain(&token.kind, &token.at)) {
                            let nominal = self.job.features[bore].nominal.clone();
                            if let Some(nominal) = nominal {
                                let from = (
                                    self.job.features[bore].unit,
                                    self.job.features[bore].unit_from,
                                );
                                self.size(line, outer, nominal, from);
                            }
                        }
                    } else {
                        // The whole of a bought part: a bearing on its shaft.
                        let bought = if self.inwardness(hole.0) == 1 { hole.0 } else { shaft.0 };
                        if let Some(Kind::Code(code)) =
                            at.checked_sub(1).map(|before| &found[before].kind)
                        {
                            let part = &mut self.job.parts[bought];
                            part.name = format!("{} {}", part.name, code.to_uppercase());
                            self.stems[bought] = stems(&part.name);
                            self.key(bought);
                        }
                        line.subject = Some(bought);
                        let own = if bought == hole.0 { inner } else { outer };
                        let given = Given::plain(&token.kind, &token.at);
                        self.give(line, &Given { has_fit: true, ..given });
                        let other = if own == inner { outer } else { inner };
                        let side = self.job.features[own].side;
                        let nominal = self
                            .features_of(bought)
                            .find(|(_, one)| one.side == side && one.nominal.is_some())
                            .and_then(|(_, one)| one.nominal.clone());
                        if let Some(nominal) = nominal {
                            let from = self.unit_of(&all[0], line.unit);
                            self.size(line, other, nominal, from);
                        }
                        self.job.parts[bought].bought = true;
                    }
                }
                Kind::Num(num) if !sized => {
                    sized = true;
                    if let Some(size) = self.length(num, line.unit) {
                        let from = self.unit_of(num, line.unit);
                        self.size(line, outer, Nominal::Size(size), from);
                        self.size(line, inner, Nominal::Size(size), from);
                    }
                }
                Kind::Thread(name) if !sized => {
                    sized = true;
                    let from = (Unit::Inch, fits_core::job::whole::UnitFrom::Written);
                    for feature in [outer, inner] {
                        self.size(line, feature, Nominal::Thread(name.clone()), from);
                    }
                }
                Kind::Thread(name) => {
                    let thread =
                        self.feature(line, shaft.0, "thread", Side::Thread, token.at.clone());
                    self.size(
                        line,
                        thread,
                        Nominal::Thread(name.clone()),
                        (Unit::Inch, fits_core::job::whole::UnitFrom::Written),
                    );
                }
                Kind::Num(_) | Kind::Range(..) => {
                    self.joint_amount(line, &token.kind, found, at, &mut fit);
                }
                Kind::Class(class) if sized => {
                    let (first, second) = class.split_once('/').unwrap_or((class, ""));
                    for one in [first, second].into_iter().filter(|one| !one.is_empty()) {
                        let is_hole = one.starts_with(|c: char| c.is_ascii_uppercase());
                        self.job.features[if is_hole { inner } else { outer }].class =
                            Some(one.to_owned());
                    }
                }
                Kind::Word(word) if word == "same" => {
                    // As the row above of either part.
                    let of = [outer, inner].into_iter().find_map(|at| {
                        self.job.features[at].nominal.clone().map(|nominal| (at, nominal))
                    });
                    let of = of.or_else(|| {
                        let last = self.last_feature?;
                        Some((last, self.job.features[last].nominal.clone()?))
                    });
                    if let Some((from, nominal)) = of {
                        sized = true;
                        let from =
                            (self.job.features[from].unit, self.job.features[from].unit_from);
                        self.size(line, outer, nominal.clone(), from);
                        self.size(line, inner, nominal, from);
                    }
                }
                _ => {}
            }
        }
        let words: Vec<&str> = found.iter().filter_map(Token::word).collect();
        let mut at = 0;
        while at < words.len() {
            match lexicon::fit(&words[at..]) {
                Some((taken, word)) => {
                    if !fit.words.is_empty() {
                        fit.words.push_str(", ");
                    }
                    fit.words.push_str(&words[at..at + taken].join(" "));
                    fit.word = fit.word.or(word);
                    at += taken;
                }
                None => at += 1,
            }
        }
        for (feature, other) in [(outer, hole.0), (inner, shaft.0)] {
            let name = self.job.parts[other].name.clone();
            let to = if feature == outer { inner } else { outer };
            self.say(line, feature);
            self.finish_mate(
                line,
                &mut Some((name, Some(other), place.clone(), true)),
                Some(feature),
                &mut fit.clone(),
                Some(to),
            );
        }
    }

    fn joint_amount(
        &self,
        line: &Line,
        kind: &Kind,
        found: &[Token],
        at: usize,
        fit: &mut FitSaid,
    ) {
        let (low, high) = match kind {
            Kind::Num(num) => (num, num),
            Kind::Range(low, high) => (low, high),
            _ => return,
        };
        let around = found[at + 1..].iter().take(2).filter_map(Token::word).collect::<Vec<_>>();
        let times = if matches!(around.as_slice(), ["all" | "per" | "each", ..]) { 2 } else { 1 };
        let size = |num: &Num| self.length(num, line.unit)?.checked_mul(times).ok();
        if let (Some(low), Some(high), None) = (size(low), size(high), fit.clearance)
            && high.millimetres() < 2.0
        {
            fit.clearance = fits_core::Limits::new(low.min(high), low.max(high)).ok();
        }
    }

    /// `crank journal`: the part, and its feature where the words name one.
    fn joint_side(&mut self, text: &str, line: usize) -> (usize, Option<(String, Side)>) {
        let words: Vec<&str> = text.split_whitespace().collect();
        let split = words
            .iter()
            .position(|word| feature(&word.to_lowercase()).is_some())
            .filter(|at| *at > 0 && !(words.len() > at + 1 && inwardness(words[at + 1]).is_some()));
        let (name, own) = match split {
            Some(at) => (words[..at].join(" "), Some(words[at..].join(" "))),
            None => (text.to_owned(), None),
        };
        let found =
            self.part_called(&stems(&name)).filter(|(_, score)| *score >= 60).map(|(part, _)| part);
        let generic = || {
            let is_shaft = matches!(stem(name.trim()).as_str(), "shaft" | "crankshaft");
            is_shaft
                .then(|| {
                    self.job
                        .features
                        .iter()
                        .find(|one| {
                            one.side == Side::Shaft
                                && stems(&one.name).iter().any(|word| word == "journal")
                        })
                        .map(|one| one.part)
                })
                .flatten()
        };
        let part = found.or_else(generic);
        let part = part.unwrap_or_else(|| self.new_part(&name, line));
        let material =
            stems(&name).into_iter().find(|word| is_material(word) && inwardness(word).is_none());
        if self.job.parts[part].material.is_none() {
            self.job.parts[part].material = material;
        }
        self.touch(part);
        let own = own.map(|own| {
            let side = feature(&own.split_whitespace().next().unwrap_or_default().to_lowercase())
                .unwrap_or(Side::Other);
            (own, side)
        });
        (part, own)
    }
}

/// As the cell above.
fn is_ditto(cell: &str) -> bool {
    matches!(cell, "\"" | "''" | "do" | "ditto" | "\u{3003}" | "\u{201d}" | ",,")
}

/// Cells that run into the next column with one blank between: `hnd end 1`.
fn at_columns<'a>(
    cells: &[(usize, &'a str)],
    columns: &[(usize, Column)],
) -> Vec<(usize, &'a str)> {
    let mut out = Vec::new();
    for &(at, cell) in cells {
        let inside = columns.iter().map(|(start, _)| start.wrapping_sub(at)).find(|within| {
            (1..cell.len()).contains(within)
                && cell.as_bytes()[within - 1] == b' '
                && cell[*within..]
                    .starts_with(|c: char| c.is_ascii_digit() || matches!(c, '.' | '+' | '-'))
        });
        match inside {
            Some(within) => out.extend([(at, &cell[..within]), (at + within, &cell[within..])]),
            None => out.push((at, cell)),
        }
    }
    out
}

/// Both sides of a joint: `pin / frame`, `handwheel on shaft`.
fn joint_names(text: &str) -> Option<(&str, &str)> {
    for sign in [" / ", " on ", " in ", " into ", " to ", " -> ", " with ", "/"] {
        if let Some((one, other)) = text.split_once(sign) {
            let (one, other) = (one.trim(), other.trim());
            let words = |text: &str| {
                !text.is_empty()
                    && text.split_whitespace().count() < 5
                    && !text.contains(|c: char| c.is_ascii_digit())
            };
            return (words(one) && words(other)).then_some((one, other));
        }
    }
    None
}

/// `bore A,B` is two names; `arm L,R` too.
fn each_of(name: &str) -> Vec<String> {
    let name = name.trim();
    let Some((head, marks)) = name.rsplit_once(' ') else { return vec![name.to_owned()] };
    let marks: Vec<&str> = marks.split([',', '&', '/', '+']).map(str::trim).collect();
    let all = marks.len() > 1 && marks.iter().all(|mark| is_instance(&stem(&mark.to_lowercase())));
    if all {
        marks.iter().map(|mark| format!("{head} {mark}")).collect()
    } else {
        vec![name.to_owned()]
    }
}

fn has_words(text: &str) -> bool {
    text.split_whitespace().any(|word| feature(&word.to_lowercase()).is_some())
        || !has_size(&tokens(text, 0))
}

fn is_mark(token: &Token) -> bool {
    matches!(&token.kind, Kind::Num(num) if num.is_whole() && num.unit.is_none() && num.over < 5)
}
