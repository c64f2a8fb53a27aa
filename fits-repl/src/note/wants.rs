//! The mates that the lines of a note ask for, each by its name, its part or its fit.

use std::ops::Range;

use fits_core::job::whole::{FitSaid, SizeKind};

use super::{
    Line,
    kinds::is_numbered,
    lexicon::{inwardness, matches_mate, stem, stems},
    told::Told,
};

/// A mate as it is said: its name, the part, the place, and whether it surely is one.
pub(super) type Named = Option<(String, Option<usize>, Range<usize>, bool)>;

/// A mate by its name alone: found when the whole note is read.
#[derive(Clone, Default)]
pub(super) struct Wanted {
    pub(super) line: usize,
    pub(super) at: Range<usize>,
    pub(super) feature: usize,
    pub(super) name: String,
    pub(super) part: Option<usize>,
    /// The feature itself, where the note sizes it in the same breath.
    pub(super) to: Option<usize>,
    pub(super) fit: FitSaid,
    pub(super) said: usize,
    pub(super) matches: bool,
    /// Only the feature's own name says it: `gear seat`.
    pub(super) hinted: bool,
}

/// The mates that the note asks for, in its order.
#[derive(Default)]
pub(super) struct Wants {
    all: Vec<Wanted>,
}

impl Wants {
    /// All of them.
    pub(super) fn all(self) -> Vec<Wanted> {
        self.all
    }

    /// What the note asked for first of a feature.
    pub(super) fn of(&self, feature: usize) -> Option<&Wanted> {
        self.all.iter().find(|want| want.feature == feature)
    }

    /// The mates that a line asks for, the last first, to say more of them.
    pub(super) fn wanted_on_mut(&mut self, line: usize) -> impl Iterator<Item = &mut Wanted> {
        self.all.iter_mut().rev().take_while(move |want| want.line == line)
    }

    /// The mates that a line asks for, the last first.
    pub(super) fn wanted_on(&self, line: usize) -> impl Iterator<Item = &Wanted> {
        self.all.iter().rev().take_while(move |want| want.line == line)
    }

    /// A feature called by its mate: `gear seat`, `dowel hole`.
    pub(super) fn hint(
        &mut self,
        told: &mut Told,
        line: &mut Line,
        feature: usize,
        mate: &str,
        at: &Range<usize>,
    ) {
        if self.of(feature).is_some() {
            return;
        }
        let (name, at) = (mate.to_owned(), at.clone());
        self.want(told, line, Wanted { feature, name, at, hinted: true, ..Wanted::default() });
    }

    /// A mate that a line asks for, with what the line says of its feature.
    fn want(&mut self, told: &mut Told, line: &mut Line, want: Wanted) {
        told.say(line, want.feature);
        let said = told.said_here(line, want.feature).unwrap_or(0);
        let matches = matches_mate(&want.fit.words);
        self.all.push(Wanted { line: line.number, said, matches, ..want });
    }

    pub(super) fn finish_mate(
        &mut self,
        told: &mut Told,
        line: &mut Line,
        mate: &mut Named,
        from: Option<usize>,
        fit: &mut FitSaid,
        to: Option<usize>,
    ) {
        let Some((name, part, at, is_sure)) = mate.take() else { return };
        let fit = std::mem::take(fit);
        let is_sure = is_sure
            || !fit.words.is_empty()
            || from.is_some_and(|at| told.job.features[at].side != SizeKind::Length);
        if is_sure
            && part.is_some()
            && part == line.subject
            && !fit.words.is_empty()
            && told.names.exactly(&stems(&name).concat()) == part
        {
            let text = format!("the {name} cannot go into itself");
            told.ask(line.number, at, text, Some("name the other part".into()));
            return;
        }
        if !is_sure || part.is_some() && part == line.subject {
            return;
        }
        if to.is_none()
            && let Some(part) = part
        {
            line.mate_part = Some(part);
        }
        let from = from
            .filter(|from| !matches!(told.job.features[*from].side, SizeKind::Length))
            .map(|from| side_towards(told, from, part, &name, line))
            .or_else(|| {
                let subject = line.subject?;
                let inner = part.map_or_else(
                    || stems(&name).iter().rev().find_map(|word| inwardness(word)).unwrap_or(0),
                    |part| told.inwardness(part),
                );
                let own = told.inwardness(subject);
                let side = if own > inner || own == inner && own > 1 {
                    SizeKind::Shaft
                } else {
                    SizeKind::Hole
                };
                let matches = fit.words.contains("match") || fit.words.contains("follow");
                let side = if matches { SizeKind::Thread } else { side };
                let word = match side {
                    SizeKind::Shaft => "od",
                    SizeKind::Thread => "thread",
                    _ => "hole",
                };
                let found =
                    told.features_of(subject).find(|(_, one)| one.side == side).map(|(at, _)| at);
                let own = told.feature_called(subject, word, Some(side)).or(found);
                Some(own.unwrap_or_else(|| told.feature(line, subject, word, side, at.clone())))
            });
        let Some(from) = from else { return };
        // `tapped 5/16-18, for the retaining screws`: the thread takes them. A screw is
        // not bored for the shaft that it holds.
        let is_screw =
            |word: &String| ["screw", "bolt", "stud"].iter().any(|end| word.ends_with(end));
        let mut from = from;
        let one = &told.job.features[from];
        let is_held = one.side == SizeKind::Shaft && told.inwardness(one.part) > 1;
        if (is_held || one.side == SizeKind::Other)
            && fit.words.is_empty()
            && stems(&name).last().is_some_and(is_screw)
        {
            let thread = told.features_of(one.part).find(|(at, other)| {
                other.side == SizeKind::Thread && told.said_here(line, *at).is_some()
            });
            let Some((thread, _)) = thread else {
                return told.remark(line.number, &name, line.subject);
            };
            from = thread;
        }
        let is_short = |wanted: &Wanted| {
            let (long, short) = (stems(&wanted.name), stems(&name));
            part.is_none() && short.len() < long.len() && long.ends_with(&short)
        };
        if let Some(wanted) = self.wanted_on_mut(line.number).find(|wanted| {
            let same = wanted.name.is_empty()
                || wanted.part.is_some() && wanted.part == part
                || stems(&wanted.name) == stems(&name)
                || !wanted.hinted && is_short(wanted);
            wanted.feature == from && wanted.fit.words.is_empty() && (wanted.hinted || same)
        }) {
            // `takes the drive peg. Peg pressed in`
            if !wanted.hinted && is_short(wanted) {
                wanted.fit = fit;
                return;
            }
            // A fit said here, or a name better than the hint.
            (wanted.name, wanted.part, wanted.to, wanted.fit) = (name, part, to, fit);
            return;
        }
        let want = Wanted { feature: from, name, part, to, fit, at, ..Wanted::default() };
        self.want(told, line, want);
    }

    /// A fit with no mate beside it: the feature's, whoever its mate is.
    pub(super) fn fit_alone(
        &mut self,
        told: &mut Told,
        line: &mut Line,
        feature: usize,
        fit: FitSaid,
    ) {
        if let Some(wanted) =
            self.wanted_on_mut(line.number).find(|wanted| wanted.feature == feature)
        {
            if wanted.fit.words.is_empty() {
                wanted.fit = fit;
            } else {
                wanted.fit.clearance = wanted.fit.clearance.or(fit.clearance);
                wanted.fit.word = wanted.fit.word.or(fit.word);
                if !fit.words.is_empty() {
                    wanted.fit.words = format!("{}, {}", wanted.fit.words, fit.words);
                }
            }
        } else if !fit.words.is_empty() && told.job.features[feature].side != SizeKind::Length {
            // A bush under its roller is pressed into it.
            let one = &told.job.features[feature];
            let holds = told.names.is_in_block(one.part)
                && one.side == SizeKind::Shaft
                && fit.word.is_some_and(|word| !word.moves());
            let current = line.under.filter(|current| holds && *current != one.part);
            let name = current.map(|part| told.job.parts[part].name.clone()).unwrap_or_default();
            let want = Wanted { feature, name, part: current, fit, ..Wanted::default() };
            self.want(told, line, want);
        }
    }

    /// Has the note said that something goes in a part of that name, and not opened it?
    pub(super) fn is_awaited(&self, word: &str) -> bool {
        let said = [stem(word)];
        self.all.iter().any(|want| want.part.is_none() && stems(&want.name) == said)
    }
}

/// `seal 22 x 40 x 7 in cover`: of all that a line lists it is the outside that
/// goes in a housing.
fn side_towards(told: &Told, from: usize, mate: Option<usize>, name: &str, line: &Line) -> usize {
    let one = &told.job.features[from];
    let inner = mate.map_or_else(
        || stems(name).iter().rev().find_map(|word| inwardness(word)).unwrap_or(0),
        |mate| told.inwardness(mate),
    );
    let is_here = one.line == line.number && one.side == SizeKind::Hole;
    let outside = || {
        let all = told.features_of(one.part);
        all.filter(|(_, other)| other.line == one.line && other.side == SizeKind::Shaft)
            .find(|(_, other)| other.at == one.at)
    };
    let is_listed = told.names.is_listed(one.part) || is_numbered(&told.names.parts[one.part]);
    let goes_in = is_here && is_listed && inner < told.inwardness(one.part);
    match outside().filter(|_| goes_in) {
        Some((outside, _)) => outside,
        None => from,
    }
}
