//! Rows of a table under its header.

mod cell;
mod features;
mod header;
mod joint_table;
mod mates;
mod numbered;
mod remarks;

use fits_core::job::whole::SizeKind;

use cell::{at_columns, each_of, has_words, is_aside, is_ditto, is_state};
use header::Columns;
use joint_table::JointTable;

use super::{
    Line, head,
    lexicon::{feature, inwardness, is_material},
    lines,
    place::Place,
    token::{Kind, Token, tokens},
    told::Told,
    wants::Wants,
};

pub(super) use header::{Column, column};
pub(super) use numbered::Numbered;

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
    pub(super) notes: Vec<(usize, &'a str)>,
    /// The mates of a cell that names them by their item numbers.
    pub(super) mates: Option<Vec<String>>,
}

/// A table while its rows are read.
#[derive(Default)]
pub(super) struct Table {
    columns: Option<Columns>,
    /// The columns of a table with a joint a row.
    joints: Option<JointTable>,
    /// The parts by their item numbers.
    items: Numbered,
    /// The feature, the mate, the size and the fit of the row above.
    above: [String; 4],
    /// A ruled line here stands under the header.
    ruled: bool,
    /// The line above is a row of it.
    in_rows: bool,
}

impl Table {
    /// Is it a ruled line, or a header? A ruled line under rows ends their table.
    pub(super) fn is_frame(&mut self, raw: &str, below: &[&str]) -> bool {
        if !raw.contains(|c: char| c.is_alphanumeric()) {
            if !std::mem::take(&mut self.ruled) {
                (self.columns, self.joints) = (None, None);
            }
            return true;
        }
        let below = &below[..below.len().min(40)];
        let joints = JointTable::of_header(raw, below);
        let columns = if joints.is_some() { None } else { header::header(raw, below) };
        self.ruled = columns.is_some() || joints.is_some();
        if joints.is_some() {
            (self.columns, self.joints) = (None, joints);
            return true;
        }
        if let Some(columns) = &columns {
            self.items = Numbered::of(header::column_of(Column::Part, below, columns));
        }
        self.columns = columns.or_else(|| self.columns.take());
        self.ruled
    }

    /// The parts by their item numbers.
    pub(super) const fn items(&self) -> &Numbered {
        &self.items
    }

    /// Is it a table with a joint a row?
    pub(super) const fn has_joints(&self) -> bool {
        self.joints.is_some()
    }

    /// Did the line above end its rows?
    pub(super) fn ends(&mut self) -> bool {
        std::mem::take(&mut self.in_rows)
    }

    /// A row under a header; false where the line is no such row.
    pub(super) fn row(
        &mut self,
        told: &mut Told,
        wants: &mut Wants,
        place: &mut Place,
        number: usize,
        raw: &str,
    ) -> bool {
        if let Some(joints) = &mut self.joints {
            let mut line = Line { is_row: true, ..place.line(number) };
            if joints.row(told, wants, &mut line, raw) {
                self.in_rows = true;
                return true;
            }
            self.joints = None;
        }
        let above = self.above.clone();
        let Some(mut row) = self.columns.as_ref().and_then(|columns| row_of(raw, columns, &above))
        else {
            return false;
        };
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
        let mut line = Line { is_row: true, ..place.line(number) };
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
        let item = self.items.own(row.part.1);
        if let Some((_, name)) = item {
            row.part = (row.part.0 + row.part.1.len() - name.len(), name);
        }
        row.mates = self.items.named(row.mate.1);
        let declared = parts_of_row(told, place, &row, &line);
        line.under = place.current;
        for part in declared {
            line.subject = Some(part);
            line.feature = None;
            if let Some((item, _)) = item {
                told.remark(number, &format!("item {item}"), Some(part));
            }
            features::features_of_row(told, wants, &row, &mut line, part);
        }
        let notes: Vec<(usize, &str)> = row
            .notes
            .iter()
            .copied()
            .filter(|(_, note)| !note.is_empty() && *note != "-")
            .collect();
        if line.found == before {
            told.remark(number, raw, line.subject);
        } else {
            let of = line.subject.map(|part| (part, line.feature));
            for note in notes {
                told.remark(number, note.1, line.subject);
                if let Some(of) = of {
                    remarks::sizes_of_remark(told, wants, note, raw, &mut line, of);
                }
            }
        }
        if let Some(cell) = [row.mate.1, row.size.1, row.feature.1, row.fit.1]
            .iter()
            .find(|cell| cell.ends_with('?'))
        {
            let at = raw.find(cell).unwrap_or(0);
            told.job.questions.push(fits_core::job::whole::Question {
                line: number,
                at: at..at + cell.len(),
                text: (*cell).to_owned(),
                answer: None,
                by_writer: true,
            });
        }
        self.in_rows = true;
        true
    }
}

/// The cells of a row under its columns; one that says `ditto` is as the cell above.
fn row_of<'a>(raw: &'a str, columns: &Columns, above: &'a [String; 4]) -> Option<Row<'a>> {
    let (sign, cells) = lines::cells_under(raw, columns.1.first().map(|(at, _)| *at));
    let padded = columns.0 == ' ';
    if sign != columns.0 && !(padded && cells.len() > 1) || cells.len() < 2 {
        return None;
    }
    let cells = if padded { at_columns(&cells, &columns.1) } else { cells };
    let mut row = Row::default();
    for (index, (at, cell)) in cells.iter().enumerate() {
        let column = if padded {
            columns.1.iter().min_by_key(|(start, _)| start.abs_diff(*at)).map(|(_, column)| *column)
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
            Column::Notes => row.notes.push(cell),
        }
    }
    let cells = [&mut row.feature, &mut row.mate, &mut row.size, &mut row.fit];
    for (cell, above) in cells.into_iter().zip(above) {
        if is_ditto(cell.1) && !above.is_empty() {
            cell.1 = above;
        }
    }
    Some(row)
}

/// The part, or the parts, that a row is of.
fn parts_of_row(told: &mut Told, place: &mut Place, row: &Row, line: &Line) -> Vec<usize> {
    let text = row.part.1;
    if text.is_empty() || text == "-" || is_ditto(text) {
        return place.current.into_iter().collect();
    }
    // A length of the whole has no part: `Endfloat`.
    if row.feature.1.is_empty()
        && feature(&text.split_whitespace().next().unwrap_or_default().to_lowercase())
            == Some(SizeKind::Length)
        || matches!(text.to_lowercase().as_str(), "end play" | "end float" | "axial play")
    {
        return vec![told.assembly(line.number)];
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
    let parts: Vec<usize> = names.iter().map(|name| told.part_named(name, line.number)).collect();
    for part in &parts {
        head::describe(&mut told.job.parts[*part], &found);
        // `(old)`
        for word in found.iter().filter_map(Token::word).filter(|word| is_state(word)) {
            told.remark(line.number, word, Some(*part));
        }
        let part = &mut told.job.parts[*part];
        if material.is_some() && part.material.is_none() {
            part.material.clone_from(&material);
        }
        part.bought |= row.material.to_lowercase().contains("bought");
        if part.material.is_none() && !row.material.is_empty() && !part.bought {
            part.material = Some(row.material.to_owned());
        }
        part.count = part.count.or_else(|| row.count.trim().parse().ok());
    }
    place.current = parts.last().copied();
    parts
}
