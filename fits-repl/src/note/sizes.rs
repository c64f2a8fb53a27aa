//! What a size means once its words are known: by the kind of part, by its
//! shape, and whether it was measured.

use std::ops::Range;

use fits_core::{
    Length,
    job::whole::{FitSaid, Nominal, Side},
    size::Deviations,
};

use super::{
    Line, Reader,
    items::Item,
    lexicon::{inwardness, stem, stems},
    names::is_instance,
    token::{Kind, Num},
};

/// A size and what stands about it.
#[allow(clippy::struct_excessive_bools, reason = "each is something a line may say")]
pub(super) struct Given<'a> {
    pub(super) kind: &'a Kind,
    pub(super) place: &'a Range<usize>,
    pub(super) owner: Option<usize>,
    pub(super) owner_said: bool,
    pub(super) class: Option<String>,
    pub(super) reads: bool,
    /// `ream to`: what is wanted now, whatever was read.
    pub(super) works_to: bool,
    pub(super) most: bool,
    pub(super) mate: Option<&'a str>,
    pub(super) has_fit: bool,
    pub(super) off: Option<(Num, Num)>,
    /// The part alone says whose size it is.
    pub(super) is_plain: bool,
}

impl<'a> Given<'a> {
    /// A size of which nothing more is said.
    pub(super) const fn plain(kind: &'a Kind, place: &'a Range<usize>) -> Self {
        Self {
            kind,
            place,
            owner: None,
            owner_said: false,
            class: None,
            reads: false,
            works_to: false,
            most: false,
            mate: None,
            has_fit: false,
            off: None,
            is_plain: true,
        }
    }
}

impl Reader {
    /// The feature that an item of a clause names. `only_known` makes none.
    #[allow(clippy::too_many_lines, reason = "one kind of words after another, each short")]
    pub(super) fn item_feature(
        &mut self,
        item: &Item,
        place: &Range<usize>,
        line: &mut Line,
        size: Option<&Kind>,
        only_known: bool,
    ) -> Option<usize> {
        let Item::Feature { name, side, part, mate } = item else { return None };
        // `on a shoulder screw, 5/16 shoulder`: the word is in the mate's name.
        if let Some(other) = &line.mate_name
            && part.is_none()
            && stems(name).len() == 1
            && stems(other).len() > 1
            && stems(other).contains(&stem(name))
        {
            let other = other.clone();
            line.subject = Some(self.part_named(&other, line.number));
            line.feature = None;
        }
        if let Some(part) = part {
            line.subject = Some(*part);
        }
        let head = stem(name.split_whitespace().last().unwrap_or_default());
        let is_role = matches!(
            head.as_str(),
            "long"
                | "lg"
                | "length"
                | "wide"
                | "width"
                | "thick"
                | "thickness"
                | "thk"
                | "deep"
                | "depth"
                | "high"
                | "height"
                | "overall"
                | "oal"
        ) && stems(name).len() == 1;
        let subject = part.or(line.subject);
        // `3/16 wide, 3/32 deep, 7/8 long`: all of the keyway.
        if is_role && line.feature.is_some_and(|at| self.job.features[at].side == Side::Length) {
            line.feature = line.role_of.or(line.feature);
        }
        if is_role {
            line.role_of = line.feature;
        }
        // A keyway is as wide as its size says.
        let is_flat = |last: &usize| {
            self.job.features[*last].side == Side::Other
                && Some(self.job.features[*last].part) == subject
        };
        if is_role
            && role(&head) == "width"
            && let Some(last) = line.feature.filter(is_flat)
        {
            return Some(last);
        }
        if is_role
            && let Some(last) = line.feature.filter(|last| {
                self.job.features[*last].side != Side::Length
                    && Some(self.job.features[*last].part) == subject
                    && !(line.is_row)
            })
        {
            let name = format!("{} {}", self.job.features[last].name, role(&head));
            let part = self.job.features[last].part;
            return Some(self.feature(line, part, &name, Side::Length, place.clone()));
        }
        let near = match size {
            Some(Kind::Num(num)) => self.length(num, line.unit),
            _ => None,
        };
        // A reading, or a line that names no part, speaks of what is there.
        let known =
            subject.and_then(|subject| self.feature_called(subject, name, None)).filter(|found| {
                let one = &self.job.features[*found];
                let marks = |words: &[String]| {
                    words.iter().filter(|word| is_instance(word)).cloned().collect::<Vec<_>>()
                };
                let same_marks = marks(&stems(name)) == marks(&stems(&one.name))
                    || marks(&stems(name)).is_empty();
                let is_thread =
                    one.side == Side::Thread && matches!(size, Some(Kind::Thread(_)) | None);
                same_marks
                    && (line.reads
                        || only_known
                        || one.line != line.number && line.date.is_some()
                        || is_thread
                        || one.nominal.is_none()
                        || stems(&one.name) == stems(name)
                        || one.side == *side
                            && one.nominal.as_ref().and_then(Nominal::size) == near
                        || line.declares
                            && one.line == line.number
                            && (one.nominal.is_none() || size.is_none()))
            });
        if let Some(known) = known {
            return Some(known);
        }
        // `R .9980` under `journals 1`: one of those, as it came out.
        let marks: Vec<String> = stems(name).into_iter().filter(|word| is_instance(word)).collect();
        if let (Some(part), Some(size), false) = (subject, near, marks.is_empty()) {
            let plain = stems(name).into_iter().filter(|word| !is_instance(word));
            let base = self.feature_called(part, &plain.collect::<Vec<_>>().join(" "), Some(*side));
            let base = base.filter(|at| {
                let one = &self.job.features[*at];
                let was = one.nominal.as_ref().and_then(Nominal::size);
                one.line != line.number
                    && self.is_near(*at, size)
                    && was != Some(size)
                    && !self.names[*at].iter().any(|word| is_instance(word))
            });
            if let Some(base) = base {
                return Some(self.instance_of(line.number, base, name, place));
            }
        }
        let everywhere = |reader: &Self| {
            let called = |name: &str| -> Vec<usize> {
                (0..reader.job.parts.len())
                    .rev()
                    .filter_map(|part| reader.feature_called(part, name, Some(*side)))
                    .collect()
            };
            let mut all = called(name);
            // `jrnl l` of the journals.
            if all.is_empty() {
                let plain: Vec<String> =
                    stems(name).into_iter().filter(|word| !is_instance(word)).collect();
                all = called(&plain.join(" "));
            }
            let fits = |at: &usize| near.is_some_and(|size| reader.is_near(*at, size));
            // A size that is a tenth off is of something else.
            let about = |at: &usize| {
                let nominal = reader.job.features[*at].nominal.as_ref().and_then(Nominal::size);
                near.zip(nominal).is_none_or(|(size, nominal)| {
                    (size.millimetres() / nominal.millimetres() - 1.0).abs() < 0.1
                        || (size.millimetres() / nominal.millimetres() - 25.4).abs() < 3.0
                        || (nominal.millimetres() / size.millimetres() - 25.4).abs() < 3.0
                })
            };
            all.iter().copied().find(fits).or(all.first().copied().filter(about))
        };
        if (subject.is_none() || part.is_none() && line.date.is_some())
            && *side != Side::Length
            && let Some(found) = everywhere(self)
        {
            let one = self.job.features[found].clone();
            let marks: Vec<String> =
                stems(name).into_iter().filter(|word| is_instance(word)).collect();
            if marks.is_empty() || marks.iter().all(|mark| stems(&one.name).contains(mark)) {
                return Some(found);
            }
            // One of several alike: `journal L` of the journals.
            line.subject = Some(one.part);
            return Some(self.instance_of(line.number, found, name, place));
        }
        if only_known
            && *side == Side::Length
            && !matches!(head.as_str(), "play" | "float" | "shake")
        {
            return None;
        }
        // A feature with no part in its line is of the part spoken of last.
        let before = self.current.filter(|_| {
            line.date.is_none()
                && !line.reads
                && matches!(side, Side::Shaft | Side::Hole | Side::Other)
        });
        // The hole that a pin goes in is its mate's.
        let is_pin = |part: usize| {
            self.stems[part]
                .last()
                .is_some_and(|word| matches!(word.as_str(), "pin" | "dowel" | "rivet"))
        };
        let subject = line
            .mate_part
            .filter(|_| *side == Side::Hole && part.is_none() && subject.is_some_and(is_pin))
            .or(subject);
        let part = subject.or(before).unwrap_or_else(|| self.assembly(line.number));
        let name = match head.as_str() {
            "long" | "lg" => "overall length".to_owned(),
            _ if name == "bored" => "bore".to_owned(),
            _ if name == "turned" => "diameter".to_owned(),
            "tapped" | "threaded" | "tapping" => "thread".to_owned(),
            _ => name.clone(),
        };
        let made = self.feature(line, part, &name, *side, place.clone());
        if let Some(mate) = mate {
            self.hint(line, made, mate, place);
        }
        Some(made)
    }

    /// One of several alike: `journal L` of the journals.
    fn instance_of(&mut self, line: usize, of: usize, name: &str, place: &Range<usize>) -> usize {
        let one = self.job.features[of].clone();
        let new = self.new_feature(line, one.part, name, one.side, place.clone());
        let made = &mut self.job.features[new];
        (made.nominal, made.unit, made.unit_from, made.class) =
            (one.nominal, one.unit, one.unit_from, one.class);
        self.job.features[of].instances.push(new);
        new
    }

    /// What belongs to no one part.
    pub(super) fn assembly(&mut self, line: usize) -> usize {
        let found = self.job.parts.iter().position(|part| part.name == "assembly");
        found.unwrap_or_else(|| self.new_part("assembly", line))
    }

    /// Gives a size to its feature.
    #[allow(clippy::too_many_lines, reason = "one kind of words after another, each short")]
    pub(super) fn give(&mut self, line: &mut Line, given: &Given) -> Option<usize> {
        let sure = match given.kind {
            Kind::Num(num) => num.unit.is_some() || num.vulgar,
            Kind::Thread(_) => true,
            _ => false,
        };
        // A bare number of a text in both units may be either.
        let known = match given.kind {
            Kind::Num(num) => {
                self.unit_of(num, line.unit).1 != fits_core::job::whole::UnitFrom::Context
            }
            _ => false,
        };
        let said = given.owner.is_some() && (sure || given.owner_said && known);
        if self.prose && !(said && line.subject.is_some()) {
            self.ask(
                line.number,
                given.place.clone(),
                "whose size is this? The sentence leaves it open",
                Some(
                    "write it on a line of its own: the part, the feature, the size and its unit"
                        .into(),
                ),
            );
            line.found += 1;
            return None;
        }
        if let Kind::Num(num) = given.kind
            && line.mixed
            && num.unit.is_none()
            && !num.is_inch_shaped()
            && num.places < 3
        {
            self.ask(
                line.number,
                given.place.clone(),
                "this line has inches and millimetres: which is this?",
                Some("write its unit beside it".into()),
            );
            line.found += 1;
            return None;
        }
        // Nobody turns 20 in on a bench lathe: was it millimetres?
        let huge = |num: &Num| {
            self.unit_of(num, line.unit)
                == (fits_core::size::Unit::Inch, fits_core::job::whole::UnitFrom::Context)
                && !num.is_inch_shaped()
                && num.value() > 11.9
        };
        let is_huge = match given.kind {
            Kind::Num(num) => huge(num),
            Kind::Dims(all) => {
                let is_bearing = line.subject.is_some_and(|part| self.is_bearing(part, all));
                !is_bearing && all.iter().take(2).any(huge)
            }
            _ => false,
        };
        if is_huge
            && !(given.reads || line.reads)
            && given.owner.is_none_or(|owner| self.job.features[owner].side.surface().is_some())
        {
            self.ask(
                line.number,
                given.place.clone(),
                "is this in inches or in mm?",
                Some("write its unit beside it".into()),
            );
            line.found += 1;
            return None;
        }
        match given.kind {
            // A number alone is no thread: its pitch is missing, or it is a drill.
            Kind::Num(_)
                if given.owner.is_some_and(|at| self.job.features[at].side == Side::Thread) =>
            {
                self.ask(
                    line.number,
                    given.place.clone(),
                    "is this a thread? Its pitch is missing",
                    Some("write it as 5/16-18 or M8".into()),
                );
                line.found += 1;
                given.owner
            }
            Kind::Num(num) => self.number(line, num, given),
            Kind::Range(low, high) if given.reads || line.reads => {
                let Some(owner) = given.owner.or(line.feature.filter(|at| {
                    line.subject.is_none_or(|part| part == self.job.features[*at].part)
                })) else {
                    for num in [low, high] {
                        let size = self.length(num, line.unit)?;
                        self.reading_by_size(line, num, size);
                    }
                    return line.feature;
                };
                for num in [low, high] {
                    let size = self.length(num, line.unit)?;
                    let owner = self.next_alike(line, owner, size);
                    self.reading(line, owner, num);
                }
                Some(owner)
            }
            Kind::Range(low, high) => {
                let feature = given.owner.or(line
                    .feature
                    .filter(|at| self.job.features[*at].side == Side::Length && line.is_row))?;
                let (low, from) = (self.length(low, line.unit)?, self.unit_of(high, line.unit));
                let high = self.length(high, line.unit)?;
                // `holes .3752/.3751`, of a size that is there: limits, or what was read?
                let one = &self.job.features[feature];
                if one.line != line.number
                    && one.side.surface().is_some()
                    && self.is_near(feature, low)
                    && self.is_near(feature, high)
                {
                    let text = format!(
                        "are these limits of the {} or readings?",
                        self.job.full_name(feature)
                    );
                    let answer = "write `measured` before readings, or each limit in full";
                    self.ask(line.number, given.place.clone(), text, Some(answer.into()));
                    line.found += 1;
                    return Some(feature);
                }
                self.size(line, feature, Nominal::Between(low.min(high), low.max(high)), from);
                Some(feature)
            }
            Kind::Thread(name) => {
                let owner =
                    given.owner.filter(|owner| self.job.features[*owner].side == Side::Thread);
                let part = owner.map(|owner| self.job.features[owner].part).or_else(|| {
                    // `on shoulder screw 10, M8`: the screw's own.
                    let screw = line.mate_part.filter(|part| {
                        self.stems[*part]
                            .iter()
                            .any(|word| matches!(word.as_str(), "screw" | "bolt"))
                    });
                    screw
                        .filter(|_| {
                            !given.owner_said
                                && line.subject.is_none_or(|part| {
                                    !self.stems[part].iter().any(|word| word == "screw")
                                })
                                && line
                                    .feature
                                    .is_some_and(|at| Some(self.job.features[at].part) == screw)
                        })
                        .or(line.subject)
                });
                let part = part.unwrap_or_else(|| self.new_part("tapped hole", line.number));
                let feature = owner.unwrap_or_else(|| {
                    self.feature(line, part, "thread", Side::Thread, given.place.clone())
                });
                self.size(
                    line,
                    feature,
                    Nominal::Thread(name.clone()),
                    (self.job.features[feature].unit, fits_core::job::whole::UnitFrom::Written),
                );
                self.job.features[feature].class.clone_from(&given.class);
                Some(feature)
            }
            Kind::Dims(all) => {
                let found = self.dims(line, all, given);
                // A line of which nothing was taken is echoed as it is.
                if found.is_none() && line.found > 0 {
                    self.ask_size(line, given);
                }
                found
            }
            _ => None,
        }
    }

    fn number(&mut self, line: &mut Line, num: &Num, given: &Given) -> Option<usize> {
        let size = self.length(num, line.unit)?;
        let worked = || {
            let part = line.subject?;
            let waits = line.feature.filter(|at| self.job.features[*at].part == part);
            waits.or_else(|| self.nearest(part, None, size)).filter(|at| self.is_near(*at, size))
        };
        if given.works_to
            && let Some(owner) = given.owner.or_else(worked)
        {
            let from = self.unit_of(num, line.unit);
            self.size(line, owner, Nominal::Size(size), from);
            return Some(owner);
        }
        if let Some(owner) = given.owner {
            if self.is_read(line, owner, num, size, given.reads) {
                let owner = self.next_alike(line, owner, size);
                self.reading(line, owner, num);
                return Some(owner);
            }
            if given.most {
                let from = self.unit_of(num, line.unit);
                self.size(line, owner, Nominal::Between(Length::ZERO, size), from);
                return Some(owner);
            }
            return Some(self.nominal(line, owner, size, num, given));
        }
        // A size named by itself: `Ø17 = 17.004`.
        let exact = |reader: &Self| {
            reader
                .job
                .features
                .iter()
                .position(|one| one.nominal.as_ref().and_then(Nominal::size) == Some(size))
        };
        if line.date.is_none()
            && line.subject.is_none_or(|_| !line.declares)
            && given.reads
            && line.feature.is_none()
        {
            line.feature = exact(self);
        }
        if given.reads || line.reads {
            return self.reading_by_size(line, num, size);
        }
        let part = line.subject?;
        if !given.is_plain {
            self.ask_size(line, given);
            return None;
        }
        // A number much like a size that is there was read.
        let near = self
            .nearest(part, None, size)
            .filter(|at| self.job.features[*at].line != line.number && self.is_near(*at, size));
        if let Some(near) = near.filter(|near| {
            let was = self.job.features[*near].nominal.as_ref().and_then(Nominal::size);
            (was != Some(size) || self.is_fine(num, line)) && num.places >= 3
                || num.places == 2
                    && !num.leading_point
                    && !num.unit.is_some_and(|unit| unit == fits_core::size::Unit::Inch)
        }) {
            self.reading(line, near, num);
            return Some(near);
        }
        let default =
            self.default_feature(part, given).filter(|_| !line.asks || line.declares || line.named);
        let Some((name, side)) = default else {
            self.ask_size(line, given);
            return None;
        };
        if self.features_of(part).any(|(_, one)| {
            one.line == line.number && one.side == side && one.nominal.is_some() && one.name == name
        }) {
            return None;
        }
        let feature = self.feature(line, part, &name, side, given.place.clone());
        Some(self.nominal(line, feature, size, num, given))
    }

    fn nominal(
        &mut self,
        line: &mut Line,
        feature: usize,
        size: Length,
        num: &Num,
        given: &Given,
    ) -> usize {
        // A second bore of the same part is another feature.
        let one = &self.job.features[feature];
        let other = one.nominal.as_ref().and_then(Nominal::size).is_some_and(|was| was != size)
            && one.line != line.number
            && line.date.is_none()
            && !line.amends
            && !self.is_near(feature, size);
        let feature = if other && one.side.surface().is_some() {
            let name = format!("{} 2", one.name);
            let (part, side) = (one.part, one.side);
            let text = format!(
                "line {} gives the {} another size: is this a second one?",
                one.line,
                self.job.full_name(feature)
            );
            let answer = format!(
                "it is read as `{name}`; name it by its place, or write `not` and the old size"
            );
            self.ask(line.number, given.place.clone(), text, Some(answer));
            self.feature(line, part, &name, side, given.place.clone())
        } else {
            feature
        };
        let from = self.unit_of(num, line.unit);
        self.size(line, feature, Nominal::Size(size), from);
        if given.class.is_some() {
            self.job.features[feature].class.clone_from(&given.class);
        }
        if let Some((low, high)) = &given.off {
            let off = self.length(low, line.unit).zip(self.length(high, line.unit));
            self.job.features[feature].deviations =
                off.and_then(|(low, high)| Deviations::new(low, high).ok());
        }
        feature
    }

    /// Was it measured: said so, dated, or nearly the size that is wanted?
    fn is_read(&self, line: &Line, owner: usize, num: &Num, size: Length, reads: bool) -> bool {
        let one = &self.job.features[owner];
        if matches!(one.side, Side::Thread) || num.vulgar {
            return false;
        }
        let has_nominal = one.nominal.as_ref().is_some_and(|nominal| nominal.size().is_some());
        if (reads || line.reads)
            && (has_nominal
                || line.date.is_some()
                || line.by_word
                || line.reads
                || self.is_fine(num, line))
        {
            return true;
        }
        let is_instance = || self.job.features.iter().any(|of| of.instances.contains(&owner));
        has_nominal
            && (one.line != line.number || is_instance())
            && self.is_near(owner, size)
            && one.nominal.as_ref().and_then(Nominal::size) != Some(size)
            && num.places >= 2
            && !line.is_row
    }

    /// Of `journals 19.974 / 19.968` the second reading is the second journal's.
    fn next_alike(&mut self, line: &Line, owner: usize, size: Length) -> usize {
        let taken = |reader: &Self, at: usize| {
            reader.job.features[at].readings.iter().any(|reading| reading.line == line.number)
        };
        let one = &self.job.features[owner];
        let head = |name: &str| stems(name).into_iter().find(|word| !is_instance(word));
        let (part, word) = (one.part, head(&one.name));
        let alike: Vec<usize> = self
            .features_of(part)
            .filter(|(_, other)| {
                head(&other.name) == word && other.side == self.job.features[owner].side
            })
            .map(|(at, _)| at)
            .collect();
        if !taken(self, owner) || alike.len() < 2 {
            return owner;
        }
        alike.into_iter().find(|at| !taken(self, *at) && self.is_near(*at, size)).unwrap_or(owner)
    }

    /// A reading that names its part only, or nothing.
    #[allow(clippy::too_many_lines, reason = "one kind of words after another, each short")]
    fn reading_by_size(&mut self, line: &mut Line, num: &Num, size: Length) -> Option<usize> {
        // `end play, I get .4 mm`: of what this line spoke of last.
        let waits = |at: &usize| {
            let one = &self.job.features[*at];
            let is_play = stems(&one.name)
                .last()
                .is_some_and(|word| matches!(word.as_str(), "play" | "float" | "shake" | "gap"));
            one.side == Side::Length
                && one.readings.is_empty()
                && one.line == line.number
                && (is_play || one.nominal.is_none())
        };
        if let Some(feature) = line.feature.filter(|at| {
            (self.is_near(*at, size) || waits(at))
                && line.subject.is_none_or(|part| part == self.job.features[*at].part)
        }) {
            if self.job.features[feature].nominal.as_ref().and_then(Nominal::size) == Some(size)
                && !num.leading_point
                && num.places == 0
            {
                return Some(feature);
            }
            self.reading(line, feature, num);
            return Some(feature);
        }
        let parts: Vec<usize> =
            line.subject.map_or_else(|| (0..self.job.parts.len()).collect(), |part| vec![part]);
        let off = |reader: &Self, at: usize| {
            let nominal = reader.job.features[at]
                .nominal
                .as_ref()
                .and_then(Nominal::size)
                .unwrap_or(Length::ZERO);
            (nominal.tenth_nanometres() - size.tenth_nanometres()).abs()
        };
        let mut near: Vec<usize> = parts
            .into_iter()
            .flat_map(|part| self.features_of(part).map(|(at, _)| at).collect::<Vec<_>>())
            .filter(|at| self.is_near(*at, size) && self.job.features[*at].side.surface().is_some())
            .collect();
        near.sort_by_key(|at| off(self, *at));
        let kind = Kind::Num(num.clone());
        match near.as_slice() {
            [] => {
                // A first size may stand in a dated line.
                let Some(part) = line.subject else {
                    if num.places > 1 {
                        self.ask_measured(line, num);
                    }
                    return None;
                };
                if num.is_inch_shaped() && num.vulgar || num.places < 2 {
                    let given = Given::plain(&kind, &num.at);
                    let (name, side) = self.default_feature(part, &given)?;
                    let feature = self.feature(line, part, &name, side, num.at.clone());
                    return Some(self.nominal(line, feature, size, num, &given));
                }
                if let Some(feature) = self.other_side(line, part, size, &num.at) {
                    self.reading(line, feature, num);
                    return Some(feature);
                }
                // A bought part may have been measured before its size was written.
                let given = Given::plain(&kind, &num.at);
                if line.date.is_none()
                    && let Some((name, side)) = self.default_feature(part, &given)
                    && !self.features_of(part).any(|(_, one)| one.side == side)
                {
                    let feature = self.feature(line, part, &name, side, num.at.clone());
                    self.reading(line, feature, num);
                    return Some(feature);
                }
                self.ask_measured(line, num);
                None
            }
            [first, second, ..]
                if line.subject.is_none() && off(self, *first) == off(self, *second) =>
            {
                let names = format!(
                    "is this the {} or the {}?",
                    self.job.full_name(*first),
                    self.job.full_name(*second)
                );
                self.ask(
                    line.number,
                    num.at.clone(),
                    names,
                    Some("name it before the reading".into()),
                );
                line.found += 1;
                None
            }
            [first, ..] => {
                let first = *first;
                self.reading(line, first, num);
                Some(first)
            }
        }
    }

    pub(super) fn ask_size(&mut self, line: &mut Line, given: &Given) {
        let answer = Some("write the feature beside it".to_owned());
        self.ask(line.number, given.place.clone(), "what is this a size of?", answer);
        line.found += 1;
    }

    pub(super) fn ask_measured(&mut self, line: &mut Line, num: &Num) {
        self.ask(
            line.number,
            num.at.clone(),
            "what was measured here?",
            Some("name the part and the feature before the reading".into()),
        );
        line.found += 1;
    }

    /// `bush od is 1.2525 and the housing 1.2510`: the part's side of the joint
    /// that the line speaks of.
    fn other_side(
        &mut self,
        line: &mut Line,
        part: usize,
        size: Length,
        at: &Range<usize>,
    ) -> Option<usize> {
        let before = line
            .feature
            .or(self.last_feature)
            .filter(|before| self.job.features[*before].part != part)?;
        let one = self.job.features[before].clone();
        let read = one.readings.last().filter(|reading| reading.line == line.number)?;
        if (read.size.millimetres() / size.millimetres() - 1.0).abs() > 0.01 {
            return None;
        }
        let (name, side) = match one.side {
            Side::Shaft if self.inwardness(part) < 0 => ("bore", Side::Hole),
            Side::Shaft => ("hole", Side::Hole),
            Side::Hole => ("od", Side::Shaft),
            _ => return None,
        };
        let taken =
            self.features_of(part).any(|(_, other)| other.side == side && other.name == name);
        let name = if taken { format!("{name} 2") } else { name.to_owned() };
        let made = self.feature(line, part, &name, side, at.clone());
        let other = self.job.parts[one.part].name.clone();
        let mut mate = Some((other, Some(one.part), at.clone(), true));
        self.finish_mate(line, &mut mate, Some(made), &mut FitSaid::default(), Some(before));
        Some(made)
    }

    /// What a bare size is on a part of that kind.
    fn default_feature(&self, part: usize, given: &Given) -> Option<(String, Side)> {
        let own = self.inwardness(part);
        let name = |name: &str, side| Some((name.to_owned(), side));
        if let Some(class) = &given.class {
            let is_hole = class.starts_with(|c: char| c.is_ascii_uppercase());
            return if is_hole {
                name(if own < 0 { "bore" } else { "hole" }, Side::Hole)
            } else {
                name("od", Side::Shaft)
            };
        }
        let words = &self.stems[part];
        let is = |list: &[&str]| words.iter().any(|word| list.contains(&word.as_str()));
        if is(&["washer", "spacer", "shim"]) {
            return name("thickness", Side::Length);
        }
        if is(&["key"]) {
            return name("width", Side::Other);
        }
        if is(&["screw", "bolt"]) && is(&["shoulder"]) {
            return name("shoulder", Side::Shaft);
        }
        // A bare size beside a thread is of something else.
        let has_thread = self.features_of(part).any(|(_, one)| one.side == Side::Thread);
        if is(&["screw", "bolt", "nut", "stud"]) && has_thread {
            return None;
        }
        if let Some(mate) = given.mate {
            let other = stems(mate).iter().rev().find_map(|word| inwardness(word)).unwrap_or(0);
            return if own >= other { name("od", Side::Shaft) } else { name("bore", Side::Hole) };
        }
        match own {
            2.. => name("od", Side::Shaft),
            ..=0 if given.has_fit => name("hole", Side::Hole),
            ..=-1 | 1 => name("bore", Side::Hole),
            _ => None,
        }
    }

    /// `3/4 x 1 x 1` by the kind of the part, or by the feature that it is of.
    fn dims(&mut self, line: &mut Line, all: &[Num], given: &Given) -> Option<usize> {
        let place = given.place;
        if let Some(owner) = given.owner {
            let one = self.job.features[owner].clone();
            // `1 1/4 x 4` of a thread is its pitch.
            if one.side == Side::Thread && all.len() == 2 {
                return self.thread_of(line, owner, all);
            }
            let [first, second, rest @ ..] = all else { return None };
            let number = Given {
                kind: given.kind,
                place,
                owner: Some(owner),
                owner_said: true,
                class: given.class.clone(),
                off: given.off.clone(),
                mate: None,
                ..*given
            };
            let feature = self.number(line, first, &number)?;
            let what = if one.side == Side::Other { "depth" } else { "length" };
            let more = self.feature(
                line,
                one.part,
                &format!("{} {what}", one.name),
                Side::Length,
                place.clone(),
            );
            let size = self.length(second, line.unit)?;
            let from = self.unit_of(second, line.unit);
            self.size(line, more, Nominal::Size(size), from);
            if let Some(third) = rest.first()
                && let Some(size) = self.length(third, line.unit)
            {
                let long = self.feature(
                    line,
                    one.part,
                    &format!("{} length", one.name),
                    Side::Length,
                    place.clone(),
                );
                self.size(line, long, Nominal::Size(size), from);
            }
            line.feature = Some(feature);
            return Some(feature);
        }
        let part = line.subject?;
        let words = self.stems[part].clone();
        let is = |list: &[&str]| words.iter().any(|word| list.contains(&word.as_str()));
        let threaded = is(&["screw", "nut"])
            && !is(&["shoulder"])
            && all.len() == 2
            && all[1].is_whole()
            && all[0].vulgar
            && all[1].over < 20;
        if threaded {
            let feature = self.feature(line, part, "thread", Side::Thread, place.clone());
            return self.thread_of(line, feature, all);
        }
        let numbered = is_numbered(&words);
        if self.is_bearing(part, all) {
            line.unit = line.unit.or(Some(fits_core::size::Unit::Millimetre));
        }
        let sides: &[(&str, Side)] = if is(&["bush", "bearing", "sleeve", "liner"]) || numbered {
            &[("bore", Side::Hole), ("od", Side::Shaft), ("length", Side::Length)]
        } else if is(&["key"]) {
            &[("width", Side::Other), ("height", Side::Other), ("length", Side::Length)]
        } else if is(&["tube", "handle", "pipe"]) && all.len() == 2 {
            return self.tube(line, part, all, place);
        } else if is(&["washer", "collar", "spacer"]) && all.len() == 3 {
            &[("bore", Side::Hole), ("od", Side::Shaft), ("thickness", Side::Length)]
        } else if is(&["screw", "bolt"]) {
            &[("shoulder", Side::Shaft), ("shoulder length", Side::Length)]
        } else if self.inwardness(part) >= 2 {
            &[("od", Side::Shaft), ("length", Side::Length)]
        } else {
            return None;
        };
        self.list(line, part, all, sides, place, given.class.as_deref())
    }

    /// Are these the sizes of a bearing? It is listed in millimetres, whatever the
    /// rest of the note is in.
    fn is_bearing(&self, part: usize, all: &[Num]) -> bool {
        let words = &self.stems[part];
        (is_numbered(words) || words.iter().any(|word| word == "bearing"))
            && all.iter().all(|num| num.is_whole() && num.unit.is_none())
            && all[0].over > 2
            && all.get(1).is_some_and(|outside| outside.over > all[0].over)
    }

    fn list(
        &mut self,
        line: &mut Line,
        part: usize,
        all: &[Num],
        sides: &[(&str, Side)],
        place: &Range<usize>,
        class: Option<&str>,
    ) -> Option<usize> {
        let mut first = None;
        for (num, (name, side)) in all.iter().zip(sides) {
            let size = self.length(num, line.unit)?;
            let from = self.unit_of(num, line.unit);
            let called = self.feature_called(part, name, Some(*side));
            let feature =
                called.unwrap_or_else(|| self.feature(line, part, name, *side, place.clone()));
            self.size(line, feature, Nominal::Size(size), from);
            if first.is_none() {
                self.job.features[feature].class = class.map(str::to_owned);
            }
            first = first.or(Some(feature));
        }
        line.feature = first;
        first
    }

    /// `7/8 x .035 wall`: the bore is the outside less twice the wall.
    fn tube(
        &mut self,
        line: &mut Line,
        part: usize,
        all: &[Num],
        place: &Range<usize>,
    ) -> Option<usize> {
        let (outside, wall) = (self.length(&all[0], line.unit)?, self.length(&all[1], line.unit)?);
        let from = self.unit_of(&all[0], line.unit);
        let od = self.feature(line, part, "od", Side::Shaft, place.clone());
        self.size(line, od, Nominal::Size(outside), from);
        // `x 20 s.w.g.`: a gauge is no wall.
        let twice = wall.checked_mul(2).ok()?;
        let Some(bore) = outside.checked_sub(twice).ok().filter(|bore| bore.is_positive()) else {
            return Some(od);
        };
        let inside = self.feature(line, part, "bore", Side::Hole, place.clone());
        self.size(line, inside, Nominal::Size(bore), from);
        Some(inside)
    }

    pub(super) fn thread_of(
        &mut self,
        line: &mut Line,
        feature: usize,
        all: &[Num],
    ) -> Option<usize> {
        let [size, pitch] = all else { return None };
        let written = |num: &Num| {
            if num.vulgar && num.over > num.under {
                format!("{}-{}/{}", num.over / num.under, num.over % num.under, num.under)
            } else if num.vulgar {
                format!("{}/{}", num.over, num.under)
            } else {
                format!("{}", num.value())
            }
        };
        let name = format!("{}-{} tpi", written(size), written(pitch));
        let from = self.unit_of(size, line.unit);
        self.size(line, feature, Nominal::Thread(name), from);
        Some(feature)
    }

    /// The size of a part that another goes on or in: `on 1/4 dowel`.
    pub(super) fn of_mate(
        &mut self,
        line: &mut Line,
        part: usize,
        kind: &Kind,
        place: &Range<usize>,
        class: Option<&str>,
    ) -> Option<usize> {
        let subject = line.subject;
        let declared = std::mem::replace(&mut line.declares, false);
        line.subject = Some(part);
        let kept = line.feature.take();
        let class = class.map(str::to_owned);
        let given = Given { class, reads: line.reads, has_fit: true, ..Given::plain(kind, place) };
        let found = self.give(line, &given);
        // What is said next may still be of it: `on shoulder screw 10 f9, M8`.
        line.feature = found.or(kept);
        (line.subject, line.declares) = (subject, declared);
        found
    }
}

/// Does a part go by its number, as a bearing does?
fn is_numbered(words: &[String]) -> bool {
    words.iter().any(|word| word.len() > 2 && word.starts_with(|c: char| c.is_ascii_digit()))
}

fn role(head: &str) -> &'static str {
    match head {
        "wide" | "width" => "width",
        "thick" | "thickness" | "thk" => "thickness",
        "deep" | "depth" => "depth",
        "high" | "height" => "height",
        _ => "length",
    }
}
