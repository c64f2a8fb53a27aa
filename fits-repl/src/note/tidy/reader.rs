//! The tidy form, read back.

use fits_core::{
    Length, Limits,
    job::whole::{
        FitSaid, Job, Mate, NominalSize, NotedReading, NotedRemark, Part, PartFeature, Question,
        Said, State,
    },
    shop::words::Word,
    size::{Deviations, Unit},
};

use crate::note::{
    dates,
    tidy::{SIDES, bare, calls, pieces},
    token::{Kind, tokens},
};

/// What is read before all names are known.
#[derive(Default)]
struct Reader {
    job: Job,
    /// Each mate behind its number, with what its hole is called, and its place.
    goes: Vec<(usize, Mate, String, std::ops::Range<usize>)>,
    /// The feature that stands for each, by what it is called.
    ones: Vec<(usize, String)>,
}

/// A tidy note; a line that is none is asked about and kept as a remark.
pub(in crate::note) fn read(text: &str) -> Job {
    let mut reader = Reader::default();
    for (at, line) in text.lines().enumerate().skip(1) {
        let number = at + 1;
        if line.trim().is_empty() || line.starts_with('|') {
            continue;
        }
        if let Err((place, why)) = reader.line(number, line) {
            reader.ask(number, place, why);
            let part = reader.job.parts.len().checked_sub(1);
            reader.job.remarks.push(NotedRemark {
                line: number,
                text: line.trim().to_owned(),
                part,
            });
        }
    }
    reader.settle()
}

type Fault = (std::ops::Range<usize>, String);

impl Reader {
    fn ask(&mut self, line: usize, at: std::ops::Range<usize>, why: String) {
        let answer = Some("as `fits job FILE --tidy` writes it".to_owned());
        self.job.questions.push(Question { line, at, text: why, answer, by_writer: false });
    }

    fn line(&mut self, number: usize, line: &str) -> Result<(), Fault> {
        let text = line.trim();
        let indented = line.starts_with([' ', '\t']);
        let place = |piece: &str| {
            let start = piece.as_ptr() as usize - line.as_ptr() as usize;
            start..start + piece.len()
        };
        if let Some(title) = text.strip_prefix("title ").filter(|_| !indented) {
            self.job.title = Some(bare(title));
        } else if let Some(remark) = text.strip_prefix('>') {
            let named = pieces(remark, ':');
            let (part, text) = match named.as_slice() {
                [_] if indented => (self.job.parts.len().checked_sub(1), remark),
                [part, text] => (self.part_called(part), *text),
                _ => (None, remark),
            };
            self.job.remarks.push(NotedRemark { line: number, text: bare(text), part });
        } else if let Some(asked) = text.strip_prefix('?') {
            let (by_writer, asked) = match asked.strip_prefix('?') {
                Some(asked) => (true, asked),
                None => (false, asked),
            };
            let all = pieces(asked, ';');
            self.job.questions.push(Question {
                line: number,
                at: place(text),
                text: bare(all[0]),
                answer: all.get(1).map(|answer| bare(answer)),
                by_writer,
            });
        } else if let Some(part) = text.strip_prefix("part ").filter(|_| !indented) {
            self.part(number, part).map_err(|piece| (place(piece), NOT_OF_PART.to_owned()))?;
        } else if indented {
            let (name, said) = text
                .char_indices()
                .find(|(at, c)| *c == ':' && !text[..*at].ends_with('\\'))
                .map(|(at, _)| (&text[..at], &text[at + 1..]))
                .ok_or_else(|| (place(text), "a feature's name and `:` are missing".to_owned()))?;
            self.feature(number, line, name, said)?;
        } else {
            self.measured(number, line).ok_or_else(|| (place(text), NO_LINE.to_owned()))?;
        }
        Ok(())
    }

    fn part<'a>(&mut self, line: usize, text: &'a str) -> Result<(), &'a str> {
        let mut all = pieces(text, ';').into_iter();
        let mut wrong = None;
        // `bush ~2` is the second part of that name.
        let name = all.next().unwrap_or(text);
        let name = pieces(name, '~').first().copied().unwrap_or(name);
        let mut part = Part { line, name: bare(name), ..Part::default() };
        for piece in all {
            if let Some(material) = piece.strip_prefix("of ") {
                part.material = Some(bare(material));
            } else if let Some(count) = piece.strip_suffix(" off") {
                part.count = Some(count.parse().map_err(|_| piece)?);
            } else if piece == "bought" {
                part.bought = true;
            } else {
                wrong = Some(piece);
            }
        }
        self.job.parts.push(part);
        wrong.map_or(Ok(()), Err)
    }

    fn feature(&mut self, number: usize, line: &str, name: &str, said: &str) -> Result<(), Fault> {
        let place = |piece: &str| {
            let start = piece.as_ptr() as usize - line.as_ptr() as usize;
            start..start + piece.len()
        };
        let fault = |piece: &str| (place(piece), NOT_OF_FEATURE.to_owned());
        let part = self.job.parts.len().checked_sub(1).ok_or_else(|| {
            (place(name), "no part stands above this: `part NAME` at the margin".to_owned())
        })?;
        let mut all = pieces(said, ';').into_iter();
        let what = all.next().unwrap_or_default();
        let (word, size) = what.split_once(' ').unwrap_or((what, ""));
        let side = SIDES.into_iter().find(|side| side.word() == word).ok_or_else(|| fault(what))?;
        let nominal = sizes(size).map_err(|()| fault(what))?;
        let unit = if size.ends_with("in") { Unit::Inch } else { Unit::Millimetre };
        let mut one = PartFeature::new(part, &bare(name), side, unit, nominal);
        (one.line, one.at) = (number, place(name));
        let at = self.job.features.len();
        let mut wrong = None;
        let mut orders: Vec<usize> = Vec::new();
        let mut mates: Vec<(Mate, String, std::ops::Range<usize>)> = Vec::new();
        for piece in all {
            let (word, rest) = piece.split_once(' ').unwrap_or((piece, ""));
            let fit = mates.last_mut().map(|(mate, ..)| mate);
            match (word, fit) {
                ("inches", _) => one.unit = Unit::Inch,
                ("millimetres", _) => one.unit = Unit::Millimetre,
                ("class", _) => one.class = Some(bare(rest)),
                ("done", _) => one.done = true,
                ("not", _) if rest == "listed" => one.implied = true,
                ("off", _) => {
                    let (low, high) = range(rest).ok_or_else(|| fault(piece))?;
                    one.deviations = Deviations::new(low, high).ok();
                }
                ("was", _) => {
                    let was = sizes(rest).map_err(|()| fault(piece))?;
                    one.earlier.extend(was.map(|was| (number, was)));
                }
                ("read", _) => {
                    let reading = reading(rest).ok_or_else(|| fault(piece))?;
                    one.readings.push(NotedReading { line: number, at: place(piece), ..reading });
                }
                ("one", _) if rest.starts_with("of ") => {
                    self.ones.push((at, rest[3..].trim().to_owned()));
                }
                ("goes", _) if rest.starts_with("in ") => {
                    let mate = Mate {
                        line: number,
                        hole: 0,
                        shaft: at,
                        fit: FitSaid::default(),
                        called: None,
                    };
                    mates.push((mate, rest[3..].trim().to_owned(), place(piece)));
                    orders.push(usize::MAX);
                }
                ("fit", Some(mate)) => {
                    mate.fit.words = bare(rest);
                    mate.fit.word = Word::all().find(|word| word.name() == mate.fit.words);
                }
                ("as", Some(mate)) => {
                    mate.fit.word = Word::all().find(|word| word.name() == rest);
                }
                ("clearance", Some(mate)) => {
                    let (low, high) = range(rest).ok_or_else(|| fault(piece))?;
                    mate.fit.clearance = Limits::new(low, high).ok();
                }
                ("joint", Some(_)) => {
                    let number = rest.parse::<usize>().map_err(|_| fault(piece))?;
                    if let Some(last) = orders.last_mut() {
                        *last = number;
                    }
                }
                ("called", Some(mate)) => mate.called = Some(bare(rest)),
                _ => wrong = Some(fault(piece)),
            }
        }
        for ((mate, hole, place), order) in mates.into_iter().zip(orders) {
            self.goes.push((order, mate, hole, place));
        }
        self.job.features.push(one);
        wrong.map_or(Ok(()), Err)
    }

    /// `bush ~2`: the second part of that name.
    fn part_called(&self, call: &str) -> Option<usize> {
        let (name, which) = match pieces(call, '~')[..] {
            [name, which] => (bare(name), which.parse::<usize>().ok()?.checked_sub(1)?),
            _ => (bare(call), 0),
        };
        let parts = self.job.parts.iter().enumerate();
        parts.filter(|(_, one)| one.name == name).nth(which).map(|(at, _)| at)
    }

    /// `10/11 crank shaft journal = .7498`, as it is written at the prompt.
    fn measured(&mut self, number: usize, line: &str) -> Option<()> {
        let (date, from) = dates::date(line, true)?;
        let (name, size) = line[from..].split_once('=')?;
        let name = name.trim().to_lowercase();
        let mut all = 0..self.job.features.len();
        let by_name = all.find(|at| self.job.full_name(*at).to_lowercase() == name);
        // `bush ~2 bore` where two parts have one name.
        let by_call = || {
            let is_it = |call: &String| bare(&pieces(call, ':').join(" ")).to_lowercase() == name;
            calls(&self.job).iter().position(is_it)
        };
        let at = by_name.or_else(by_call)?;
        let Kind::Num(num) = tokens(size, 0).into_iter().next()?.kind else { return None };
        let size = num.length(self.job.features[at].unit)?;
        let date = date.contains(|c: char| c.is_ascii_digit()).then_some(date);
        let place = from..line.len();
        let reading = NotedReading { line: number, at: place, size, state: State::Free, date };
        self.job.features[at].readings.push(reading);
        Some(())
    }

    /// Finds what is called by its name, and says of each line what it says.
    fn settle(mut self) -> Job {
        let calls = calls(&self.job);
        let find = |call: &str| {
            let [part, feature] = pieces(call, ':')[..] else { return None };
            let call = format!("{part}: {feature}");
            calls.iter().position(|one| *one == call)
        };
        let mut goes = std::mem::take(&mut self.goes);
        goes.sort_by_key(|(number, ..)| *number);
        for (_, mut mate, hole, place) in goes {
            match find(&hole) {
                Some(at) => {
                    mate.hole = at;
                    self.job.mates.push(mate);
                }
                None => self.ask(mate.line, place, "no feature is called so".to_owned()),
            }
        }
        for (one, all) in std::mem::take(&mut self.ones) {
            if let Some(all) = find(&all) {
                self.job.features[all].instances.push(one);
            }
        }
        let mut mate_of = vec![None; self.job.features.len()];
        for (at, mate) in self.job.mates.iter().enumerate() {
            for feature in [mate.hole, mate.shaft] {
                mate_of[feature] = mate_of[feature].or(Some(at));
            }
        }
        for (feature, one) in self.job.features.iter().enumerate() {
            let mate = mate_of[feature];
            let nominal = one.nominal.clone();
            self.job.said.push(Said { line: one.line, feature, nominal, reading: None, mate });
            self.job.said.extend(one.readings.iter().enumerate().map(|(index, reading)| Said {
                line: reading.line,
                feature,
                nominal: None,
                reading: Some(index),
                mate,
            }));
        }
        self.job.said.sort_by_key(|said| said.line);
        self.job
    }
}

const NOT_OF_PART: &str = "a part is `of` a stuff, so many `off`, or `bought`";

const NOT_OF_FEATURE: &str = "this says nothing of a feature in the tidy form";

const NO_LINE: &str = "a line of the tidy form begins with `part`, `>`, `?`, `|` or two blanks";

/// Two sizes with `to` between.
fn range(text: &str) -> Option<(Length, Length)> {
    let (low, high) = text.split_once(" to ")?;
    Some((low.parse().ok()?, high.parse().ok()?))
}

/// A size, two, a thread's name, or nothing.
fn sizes(text: &str) -> Result<Option<NominalSize>, ()> {
    if text.is_empty() {
        return Ok(None);
    }
    if let Some(name) = text.strip_prefix("of ") {
        return Ok(Some(NominalSize::Thread(bare(name))));
    }
    if let Some((low, high)) = range(text) {
        return Ok(Some(NominalSize::Between(low, high)));
    }
    text.parse().map(|size| Some(NominalSize::Size(size))).map_err(|_| ())
}

/// `0.7493in in place on 10/11`.
pub(super) fn reading(text: &str) -> Option<NotedReading> {
    let (size, rest) = text.split_once(' ').unwrap_or((text, ""));
    let (state, rest) = [(State::InPlace, "in place"), (State::OldPart, "old part")]
        .into_iter()
        .find_map(|(state, words)| Some((state, rest.strip_prefix(words)?.trim())))
        .unwrap_or((State::Free, rest));
    let date = rest.strip_prefix("on ").map(bare);
    (rest.is_empty() || date.is_some()).then_some(())?;
    Some(NotedReading { line: 0, at: 0..0, size: size.parse().ok()?, state, date })
}
