//! What the note has told so far: its parts and their features, with what was said of
//! each: its size, its readings, its unit.

mod called;

use std::ops::Range;

use fits_core::{
    Length,
    job::whole::{
        Job, NominalSize, NotedReading, NotedRemark, Part, PartFeature, Question, Said, SizeKind,
        UnitFrom,
    },
    size::Unit,
};

use super::{Line, lexicon::stems, names::Names, sizes::Given, token::Num, units::Units};

/// The job as it is known so far, and what its parts and features are found by.
pub(super) struct Told {
    pub(super) job: Job,
    pub(super) names: Names,
    pub(super) units: Units,
    /// The feature that was spoken of last.
    pub(super) last: Option<usize>,
}

impl Told {
    /// Nothing yet of a note, but what its words and numbers look like.
    pub(super) fn of(text: &str) -> Self {
        let (names, units) = (Names::of_note(text), Units::of(text));
        Self { job: Job::default(), names, units, last: None }
    }

    pub(super) fn ask_unit(&mut self, line: &mut Line, given: &Given) -> Option<usize> {
        let answer = Some("write its unit beside it".to_owned());
        self.ask_of_figure(line, given.place.clone(), "is this in inches or in mm?", answer);
        None
    }

    /// Such a number that is about a size in inches, and about none in millimetres.
    pub(super) fn is_of_an_inch_size(&self, num: &Num) -> bool {
        let about = |unit: Unit| {
            num.length(unit).is_some_and(|size| {
                (0..self.job.features.len())
                    .any(|at| self.job.features[at].unit == unit && self.is_in_reach(at, size))
            })
        };
        self.units.is_open_unit(num) && about(Unit::Inch) && !about(Unit::Millimetre)
    }

    /// Can a fit lie between a size and that of a feature? A hole of 22 mm is none
    /// for a shaft of 7/8 in.
    pub(super) fn is_in_reach(&self, feature: usize, size: Length) -> bool {
        let nominal = self.job.features[feature].nominal.as_ref();
        nominal.and_then(NominalSize::size).is_some_and(|nominal| in_reach(nominal, size))
    }

    /// The feature of that name on a part, or a new one.
    pub(super) fn feature(
        &mut self,
        line: &Line,
        part: usize,
        name: &str,
        side: SizeKind,
        at: Range<usize>,
    ) -> usize {
        let said = stems(name);
        let found = self
            .features_of(part)
            .find(|(at, feature)| feature.side == side && self.names.features[*at] == said)
            .map(|(at, _)| at)
            .or_else(|| self.bore_of_listed(part, &said));
        found.unwrap_or_else(|| self.new_feature(line.number, part, name, side, at))
    }

    /// `5/8 x 13/16 x 3/4` of a bush, then `ID .6262`: its bore by the other name.
    fn bore_of_listed(&self, part: usize, said: &[String]) -> Option<usize> {
        let is = |said: &[String]| matches!(said, [one] if one == "bore" || one == "id");
        if !is(said) || !self.names.is_listed(part) {
            return None;
        }
        let mut all = self.names.of(part).iter().copied();
        all.find(|at| is(&self.names.features[*at]))
    }

    pub(super) fn new_feature(
        &mut self,
        line: usize,
        part: usize,
        name: &str,
        side: SizeKind,
        at: Range<usize>,
    ) -> usize {
        self.names.add_feature(part, name);
        let unit = self.units.of_note();
        self.job.features.push(PartFeature {
            line,
            at,
            unit_from: UnitFrom::Context,
            ..PartFeature::new(part, name.trim(), side, unit, None)
        });
        self.job.features.len() - 1
    }

    /// The features of a part; the job itself would look through all of them.
    pub(super) fn features_of(&self, part: usize) -> impl Iterator<Item = (usize, &PartFeature)> {
        self.names.of(part).iter().map(|at| (*at, &self.job.features[*at]))
    }

    /// A length that was taken for one part's belongs to another.
    pub(super) fn move_to(&mut self, feature: usize, part: usize) {
        let was = std::mem::replace(&mut self.job.features[feature].part, part);
        self.names.move_feature(feature, was, part);
    }

    /// A word more of a feature's name.
    pub(super) fn rename(&mut self, feature: usize, word: &str) {
        let name = &mut self.job.features[feature].name;
        name.push(' ');
        name.push_str(word);
        self.names.rename_feature(feature, name);
    }

    /// A size said of a feature.
    pub(super) fn size(
        &mut self,
        line: &mut Line,
        feature: usize,
        nominal: NominalSize,
        unit: (Unit, UnitFrom),
    ) {
        let was = self.job.features[feature].nominal.replace(nominal.clone());
        let one = &mut self.job.features[feature];
        if let Some(was) = was.filter(|was| *was != nominal) {
            one.earlier.push((one.line, was));
        }
        (one.unit, one.unit_from) = (
            if matches!(unit.0, Unit::Millimetre | Unit::Inch) { unit.0 } else { one.unit },
            unit.1,
        );
        one.done |= line.done;
        self.say(line, feature).nominal = Some(nominal);
    }

    /// A number said as the size of a feature; false where it is no length.
    pub(super) fn size_num(&mut self, line: &mut Line, feature: usize, num: &Num) -> bool {
        let Some(size) = self.units.length(num, line.unit) else { return false };
        let from = self.units.unit_of(num, line.unit);
        self.size(line, feature, NominalSize::Size(size), from);
        true
    }

    /// The feature of that name on a part, with its size.
    pub(super) fn sized(
        &mut self,
        line: &mut Line,
        part: usize,
        (name, side): (&str, SizeKind),
        num: &Num,
        place: &Range<usize>,
    ) -> Option<usize> {
        self.units.length(num, line.unit)?;
        let feature = self.feature(line, part, name, side, place.clone());
        self.size_num(line, feature, num).then_some(feature)
    }

    /// What this line has said of a feature already.
    pub(super) fn said_here(&self, line: &Line, feature: usize) -> Option<usize> {
        let here = self.job.said.iter().enumerate().rev();
        here.take_while(|(_, said)| said.line == line.number)
            .find(|(_, said)| said.feature == feature)
            .map(|(at, _)| at)
    }

    /// What this line says of a feature.
    pub(super) fn say(&mut self, line: &mut Line, feature: usize) -> &mut Said {
        line.found += 1;
        line.feature = Some(feature);
        self.last = Some(feature);
        self.names.touch(self.job.features[feature].part);
        let at = self.said_here(line, feature).unwrap_or_else(|| {
            self.job.said.push(Said {
                line: line.number,
                feature,
                nominal: None,
                reading: None,
                mate: None,
            });
            self.job.said.len() - 1
        });
        &mut self.job.said[at]
    }

    /// A reading of a feature; asked where its unit is in doubt.
    pub(super) fn reading(&mut self, line: &mut Line, feature: usize, num: &Num) {
        let Some(feature) = self.measurable(feature, line, num) else {
            return self.ask_measured(line, num);
        };
        let one = &self.job.features[feature];
        let own = if one.nominal.is_none() && num.is_inch_shaped() { Unit::Inch } else { one.unit };
        let bare = line.unit.unwrap_or(own);
        let Some(size) = num.length(bare) else { return };
        let is_bare = num.unit.is_none() && !num.is_inch_shaped();
        if one.nominal.is_none() && is_bare && bare == Unit::Inch && num.value() > 11.9 {
            return self.ask_measured(line, num);
        }
        if let Some(nominal) = one.size() {
            let ratio = size.millimetres() / nominal.millimetres();
            if (ratio - 25.4).abs() < 2.0 || (ratio * 25.4 - 1.0).abs() < 0.08 {
                let name = self.job.full_name(feature);
                let other = if bare == Unit::Inch { "mm" } else { "in" };
                self.ask_of_figure(
                    line,
                    num.at.clone(),
                    format!("is this reading of the {name} in {other}?"),
                    Some("write its unit beside it".into()),
                );
                return;
            }
        }
        self.put_reading(line, feature, size, num.at.clone());
    }

    /// The feature that a reading can be of: one far off the size of the feature
    /// said is of another on that side of the part, or of none.
    pub(super) fn measurable(&self, feature: usize, line: &Line, num: &Num) -> Option<usize> {
        let one = &self.job.features[feature];
        let size = num.length(line.unit.unwrap_or(one.unit));
        // Where no size was said, what was read of it before: `od 1.747 - 6.5 ok`.
        let read = one.readings.last().filter(|_| one.side.surface().is_some());
        let known = one.size().or_else(|| read.map(|reading| reading.size));
        let Some((size, nominal)) = size.zip(known) else {
            return Some(feature);
        };
        let ratio = size.millimetres() / nominal.millimetres();
        let is_unit = |ratio: f64| (ratio - 25.4).abs() < 2.0;
        let least = if one.side.surface().is_some() { 0.75 } else { 0.5 };
        if (least..1.0 / least).contains(&ratio)
            || !nominal.is_positive()
            || is_unit(ratio)
            || is_unit(1.0 / ratio)
        {
            return Some(feature);
        }
        let alike = self.names.parts[one.part]
            .last()
            .map(|last| self.names.ending(last))
            .unwrap_or_default();
        std::iter::once(one.part)
            .chain(alike)
            .filter_map(|part| self.nearest(part, Some(one.side), size))
            .find(|at| self.is_near(*at, size))
    }

    pub(super) fn put_reading(
        &mut self,
        line: &mut Line,
        feature: usize,
        size: Length,
        at: Range<usize>,
    ) {
        let (state, date) = (line.state, line.date.clone());
        let reading = NotedReading { line: line.number, at, size, state, date };
        let one = &self.job.features[feature];
        if line.date.is_some() && one.nominal.is_none() && one.line == line.number {
            let text =
                format!("nothing before says that there is a {}", self.job.full_name(feature));
            let answer = "the reading is kept; give its size on a line of its own";
            self.ask(line.number, reading.at.clone(), text, Some(answer.into()));
        }
        let one = &mut self.job.features[feature];
        one.readings.push(reading);
        one.done |= line.done;
        let index = one.readings.len() - 1;
        let said = self.say(line, feature);
        if said.reading.is_some() {
            let said = Said {
                line: line.number,
                feature,
                nominal: None,
                reading: Some(index),
                mate: None,
            };
            self.job.said.push(said);
        } else {
            said.reading = Some(index);
        }
    }

    pub(super) fn remark(&mut self, line: usize, text: &str, part: Option<usize>) {
        self.job.remarks.push(NotedRemark { line, text: text.trim().to_owned(), part });
    }

    pub(super) fn writers_question(&mut self, line: usize, raw: &str) {
        let at = raw.len() - raw.trim_start().len()..raw.trim_end().len();
        let text = raw.trim().to_owned();
        self.job.questions.push(Question { line, at, text, answer: None, by_writer: true });
    }

    pub(super) fn ask(
        &mut self,
        line: usize,
        at: Range<usize>,
        text: impl Into<String>,
        answer: Option<String>,
    ) {
        self.job.questions.push(Question { line, at, text: text.into(), answer, by_writer: false });
    }

    /// Asks about a figure of a line, which is not silent then.
    pub(super) fn ask_of_figure(
        &mut self,
        line: &mut Line,
        at: Range<usize>,
        text: impl Into<String>,
        answer: Option<String>,
    ) {
        self.ask(line.number, at, text, answer);
        line.found += 1;
    }

    /// A new part.
    pub(super) fn new_part(&mut self, name: &str, line: usize) -> usize {
        let name = name.trim().trim_matches(['-', ':', ',', '*']).trim();
        self.job.parts.push(Part { name: name.to_owned(), line, ..Part::default() });
        self.names.add_part(name);
        self.job.parts.len() - 1
    }

    pub(super) fn ask_size(&mut self, line: &mut Line, given: &Given) {
        let answer = Some("write the feature beside it".to_owned());
        self.ask(line.number, given.place.clone(), "what is this a size of?", answer);
        line.found += 1;
    }

    pub(super) fn ask_measured(&mut self, line: &mut Line, num: &Num) {
        self.ask_of_figure(
            line,
            num.at.clone(),
            "what was measured here?",
            Some("name the part and the feature before the reading".into()),
        );
    }

    /// What belongs to no one part.
    pub(super) fn assembly(&mut self, line: usize) -> usize {
        let found = self.job.parts.iter().position(|part| part.name == "assembly");
        found.unwrap_or_else(|| self.new_part("assembly", line))
    }
}

/// Can a fit lie between the two sizes?
pub(super) fn in_reach(nominal: Length, size: Length) -> bool {
    let (nominal, size) = (nominal.tenth_nanometres(), size.tenth_nanometres());
    (nominal - size).abs() <= (nominal / 100).max(1_500_000)
}
