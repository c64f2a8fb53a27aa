//! Rows of a table: under a header, or a joint a row with dots between.

use fits_core::job::whole::Side;

use super::{
    Line, Reader,
    cell::{at_columns, each_of, has_words, is_aside, is_ditto, is_state, listed_as, one_sided},
    header::{self, Column},
    items::{Item, Placed},
    lexicon::{self, feature, inwardness, is_material, stem, stems},
    lines,
    owner::role,
    sizes::Given,
    token::{Kind, Num, Token, tokens},
};

/// A row's cells by what they hold.
#[derive(Default)]
pub(super) struct Row<'a> {
    pub(super) part: (usize, &'a str),
    pub(super) feature: (usize, &'a str),
    pub(super) size: (usize, &'a str),
    pub(super) unit: &'a str,
    pub(super) limits: (usize, &'a str),
    pub(super) length: (usize, &'a str),
    pub(super) fit: (usize, &'a str),
    pub(super) mate: (usize, &'a str),
    pub(super) reading: (usize, &'a str),
    pub(super) done: &'a str,
    pub(super) material: &'a str,
    pub(super) count: &'a str,
    pub(super) notes: Vec<&'a str>,
}

impl Reader {
    /// A row under a header; false where the line is no such row.
    pub(super) fn row(&mut self, number: usize, raw: &str, columns: &header::Columns) -> bool {
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
        let cells = [&mut row.feature, &mut row.mate, &mut row.size, &mut row.fit];
        for (cell, above) in cells.into_iter().zip(&above) {
            if is_ditto(cell.1) && !above.is_empty() {
                cell.1 = above;
            }
        }
        self.above = [row.feature.1, row.mate.1, row.size.1, row.fit.1].map(str::to_owned);
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
    pub(super) fn parts_of_row(&mut self, row: &Row, line: &mut Line) -> Vec<usize> {
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
        let mut bracketed = false;
        for (at, token) in found.iter().enumerate() {
            if token.is_sign('(') {
                bracketed = is_aside(&found[at + 1..]);
            }
            match &token.kind {
                _ if bracketed => bracketed = !token.is_sign(')'),
                Kind::Word(word)
                    if is_material(word)
                        && !name.is_empty()
                        // `lever flat bar`
                        && (material.is_some() || inwardness(word).is_none()) =>
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
            // `(old)`
            for word in found.iter().filter_map(Token::word).filter(|word| is_state(word)) {
                self.remark(line.number, word, Some(*part));
            }
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

    pub(super) fn features_of_row(&mut self, row: &Row, line: &mut Line, part: usize) {
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
    pub(super) fn feature_of_row(
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
        let is_feature = |(item, _): &&Placed| matches!(item, Item::Feature { .. });
        let item = items.iter().find(is_feature).cloned();
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
        if let (Some((Kind::Dims(all), at)), None) = (&kind, &item)
            && let is_key = self.stems[part].iter().any(|word| word == "key")
            && let Some(sides) = listed_as(name, is_key, all.len())
        {
            let sides: Vec<(&str, Side)> =
                sides.iter().map(|(name, side)| (name.as_str(), *side)).collect();
            return self.list(line, part, all, &sides, at, class.as_deref());
        }
        // Deviations stand behind a size.
        let limits = tokens(&format!("0 {}", row.limits.1), 0);
        let off = one_sided(size).or_else(|| {
            size.iter().chain(&limits).find_map(|token| match &token.kind {
                Kind::Off(low, high) => Some((low.clone(), high.clone())),
                _ => None,
            })
        });
        // A feature word of a part's own, as `bush od` in the roller's row.
        let mut owner = None;
        if let Some((Item::Feature { name: word, side, part: other, mate }, _)) = &item {
            let on = other.unwrap_or(part);
            // `bore depth`, `pin spacing`: the last word says what is measured. A
            // keyway is as wide as its size says.
            let last = name.split_whitespace().last().unwrap_or_default().to_lowercase();
            let is_length = feature(&last) == Some(Side::Length) && role(&stem(&last)) != "width";
            let side = match kind {
                Some((Kind::Thread(_), _)) => Side::Thread,
                _ if is_length && other.is_none() => Side::Length,
                _ => *side,
            };
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
            // `wire 3` of a spring that goes with nothing: neither hole nor shaft.
            let alone = row.mate.1.is_empty() && row.fit.1.is_empty() && class.is_none();
            let side = if alone && side == Side::Hole { Side::Other } else { side };
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
        let found = self.give(line, &given);
        // `1/4-20 x 1`: so long.
        let long = size.windows(2).find(|pair| pair[1].word() == Some("long"));
        if let (Kind::Thread(_), Some([Token { kind: Kind::Num(long), at }, _])) = (&kind, long) {
            self.sized(line, part, ("thread length", Side::Length), long, at);
        }
        found
    }
}
