//! The log as it stands: the figures of the note, what to do next, and where
//! they come from.

use std::ops::Range;

use fits_core::{
    Length,
    job::{Entry, LogState, PassLog},
    shop::adviser::{Action, Adviser, Because, Estimate, Prior},
    source::{Known, Reason},
    standards::instruments::Instrument,
};

use crate::{
    answer::{Answer, EntryFigures, Mm, NextFigures, PassLogAnswer, RemarkFigures, StoryFigures},
    problem::Problem,
    questions::{
        log::{
            answered::no_log,
            doubts::story_in,
            opened::{OpenLog, family},
            places::places,
        },
        part::resolve::from_core,
        rehearse::answered::work_cautions,
    },
    session::Session,
};

const ONE_PLACE_SHORT: &str = "one place is inside the limits and another is not yet: mend the \
                               form, not the size";

/// No tool takes a smaller part of what is dialled. Common practice, no source.
const LEAST_FACTOR: f64 = 0.75;
const MAY_COME_FREE: &str = "what is left to dial would pass the last limit if the slide came \
                             free: find out what held it, then take a light cut, and measure it";

impl Session {
    /// Where the figures of the advice come from.
    fn why_log(&self, log: &PassLog, open: &OpenLog) -> Vec<Reason> {
        let OpenLog { learned_from, prior, .. } = open;
        let opening = &log.opening;
        let family = family(opening.material.as_deref());
        let mut figures = Prior::reasons(opening.feature, family, opening.overhang);
        if *learned_from > 0 {
            figures.push(Reason {
                figure: "cut factor learned".into(),
                value: format!("{:.3} ± {:.3}", prior.gain, prior.gain_sd).into(),
                rule: format!("from {learned_from} finished logs; the usual counts as three")
                    .into(),
                source: "the pass logs kept".into(),
                known: Known::Seen,
            });
        }
        let off = format!(
            "repeat {}, bias {}",
            crate::questions::why::answered::said(self.shown, opening.repeat),
            crate::questions::why::answered::said(self.shown, opening.bias)
        );
        let instrument = Instrument::find(&opening.instrument).ok();
        match instrument.and_then(|it| it.reasons(opening.feature, opening.nominal).ok()) {
            Some(reasons) => figures.extend(reasons),
            None => figures.push(Reason {
                figure: opening.instrument.clone(),
                value: off.into(),
                rule: "standard deviations".into(),
                source: "the crib".into(),
                known: Known::Seen,
            }),
        }
        figures.push(Reason {
            figure: "the size, and what to dial".into(),
            value: "the best estimate".into(),
            rule: format!(
                "each pass changes the size by cut factor x dialled + offset, and by what \
                 passes scatter; each reading weighs by its uncertainty; the dial that ends \
                 inside most often, at most {} % to overshoot",
                (self.advice(None).risk * 1000.0).round() / 10.0
            )
            .into(),
            source: "R. E. Kalman, J. Basic Engineering 82 (1960)".into(),
            known: Known::Formula,
        });
        figures
    }

    /// What to do next, where anybody sees it.
    pub(super) fn next_figures(
        &self,
        adviser: Option<&Adviser>,
    ) -> Result<Option<NextFigures>, Problem> {
        (!self.only_whether).then(|| next_figures(adviser)).transpose()
    }

    /// The log as it stands, with what to do next.
    pub(crate) fn shown_log(
        &self,
        at: &Range<usize>,
        mut notes: Vec<String>,
    ) -> Result<Answer, Problem> {
        let Some(open) = &self.shop.log else { return Err(no_log(at)) };
        let Some(log) = &open.log else { return Err(no_log(at)) };
        let failed = |error: fits_core::Error| from_core(&error, at.clone());
        let adviser = log.adviser(open.prior, self.advice_of(log)).map_err(failed)?;
        let known = adviser.as_ref().map(Adviser::estimate).transpose().map_err(failed)?;
        let opening = &log.opening;
        if open.stored.is_read_only() && notes.is_empty() {
            notes.push("this log is only read here: another fits has it, or the file is".into());
        }
        notes.extend(self.other_machine().map(|machine| {
            let machine = machine.word();
            format!("this log is on the {machine}: `machine {machine}` before the next cut")
        }));
        let stands = log.stands();
        let entries = log.entries.iter().zip(stands).map(|(entry, stands)| EntryFigures {
            entry: entry.name(),
            dial_mm: match entry {
                Entry::Cut { dial, .. } => Some(Mm(*dial)),
                _ => None,
            },
            reading_mm: entry.reading().map(Mm),
            places: places(entry),
            at_c: entry.seen().and_then(|seen| seen.at_c),
            material: entry.seen().and_then(|seen| seen.material.clone()),
            instrument: entry
                .seen()
                .and_then(|seen| seen.gauge.as_ref())
                .map(|gauge| gauge.name.clone()),
            undone: !stands && *entry != Entry::Undo,
        });
        let story = adviser.as_ref().and_then(Adviser::story).map(|story| StoryFigures {
            story: story.word(),
            says: story_in(self.shown, story),
            check: story.check(),
        });
        let remark = adviser.as_ref().and_then(Adviser::remark).map(|remark| RemarkFigures {
            share_over_dial: remark.by,
            dial_mm: Mm(remark.dial),
            plain_dial_mm: Mm(remark.not),
        });
        let state = log.state();
        let next = match state {
            LogState::Open => self.next_figures(adviser.as_ref())?.map(|next| with_form(log, next)),
            LogState::Done | LogState::Scrap => None,
        };
        let form = self.form_told(log).filter(|_| state == LogState::Open);
        notes.extend(self.form_before(log).filter(|_| state == LogState::Open));
        Ok(Answer::PassLog(Box::new(PassLogAnswer {
            limits: opening.limits().map_err(failed)?,
            log: open.stored.name(),
            state,
            kind: opening.feature,
            nominal_mm: Mm(opening.nominal),
            class: opening.class.clone(),
            lower_mm: Mm(opening.lower),
            upper_mm: Mm(opening.upper),
            start_mm: Mm(opening.start),
            step_mm: Mm(opening.step),
            instrument: opening.instrument.clone(),
            reading_uncertainty_mm: Mm(opening.uncertainty().map_err(failed)?),
            entries: with_their_cuts(entries),
            size_mm: known.map(|known| Mm(known.size)),
            size_sd_mm: known.map(|known| Mm(known.size_sd)),
            probability_good: known.map(|known| known.good),
            cut_factor: known.map(|known| known.gain),
            story: story.filter(|_| state == LogState::Open),
            remark: remark.filter(|_| state == LogState::Open),
            form,
            learned_from: open.learned_from,
            // Once: what follows the first entry has been said with the plan.
            cautions: if log.entries.is_empty() {
                work_cautions(opening.feature, opening.overhang)
            } else {
                Vec::new()
            },
            next,
            notes,
            reasons: self.why_log(log, open),
        })))
    }
}

/// No stop is good where one place is short of the limits.
fn with_form(log: &PassLog, next: NextFigures) -> NextFigures {
    let is_done = next.action == Action::Stop.word() && next.reason.is_none();
    match log.short() {
        Ok(Some(_)) if is_done => {
            NextFigures { reason: Some(ONE_PLACE_SHORT), probability_good: Some(0.0), ..next }
        }
        _ => next,
    }
}

/// What to do next, as figures.
fn next_figures(adviser: Option<&Adviser>) -> Result<NextFigures, Problem> {
    let Some(adviser) = adviser else {
        return Ok(NextFigures {
            action: Action::ReadAgain.word(),
            dial_mm: None,
            top_slide_mm: None,
            expect_mm: None,
            measuring: true,
            readings: 1,
            reason: Some("the size is not known"),
            probability_good: None,
            probability_over: None,
        });
    };
    let next = adviser.next();
    let known = adviser.estimate().map_err(|error| from_core(&error, 0..0))?;
    if next.dial.is_some_and(|dial| trusts_a_slip(adviser, &known, dial)) {
        return Ok(NextFigures {
            action: Action::Stop.word(),
            dial_mm: None,
            top_slide_mm: None,
            expect_mm: None,
            measuring: false,
            readings: 0,
            reason: Some(MAY_COME_FREE),
            probability_good: Some(known.good),
            probability_over: Some(known.over),
        });
    }
    let expect = next
        .dial
        .filter(|dial| dial.is_positive())
        .map(|dial| {
            let mut trial = adviser.clone();
            trial.cut(dial, &[])?;
            trial.estimate().map(|known| Mm(known.size))
        })
        .transpose()
        .map_err(|error| from_core(&error, 0..0))?;
    Ok(NextFigures {
        action: next.action.word(),
        dial_mm: next.dial.map(Mm),
        top_slide_mm: next.dial.and_then(|dial| adviser.settings().on_top_slide(dial)).map(Mm),
        expect_mm: expect,
        measuring: next.measuring,
        readings: next.readings,
        reason: next.because.map(Because::word),
        probability_good: Some(next.good),
        probability_over: Some(next.over),
    })
}

/// Is an order past the last limit by what is dialled, and short of it only
/// because the passes took less than any tool does? Two slips alike look like
/// such a tool.
fn trusts_a_slip(adviser: &Adviser, known: &Estimate, dial: Length) -> bool {
    let far = |limit: Length| {
        limit.checked_sub(known.size).and_then(Length::checked_abs).unwrap_or(Length::ZERO)
    };
    let limits = adviser.limits();
    known.gain < LEAST_FACTOR && dial > far(limits.lower()).max(far(limits.upper()))
}

/// A reading typed in a line of its own stands with the cut that it was taken after.
fn with_their_cuts(entries: impl Iterator<Item = EntryFigures>) -> Vec<EntryFigures> {
    let mut all: Vec<EntryFigures> = Vec::new();
    for entry in entries {
        let is_unread = |cut: &&mut EntryFigures| {
            matches!(cut.entry, "cut" | "spring") && !cut.undone && cut.reading_mm.is_none()
        };
        match all.last_mut().filter(is_unread) {
            Some(cut) if entry.entry == "read" && !entry.undone => {
                let (name, dial_mm) = (cut.entry, cut.dial_mm);
                *cut = EntryFigures { entry: name, dial_mm, ..entry };
            }
            _ => all.push(entry),
        }
    }
    all
}
