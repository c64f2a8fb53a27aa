//! Drills for a tap.

use std::ops::Range;

use fits_core::{
    Length,
    shop::{
        Hazard,
        tap::{Advice, Bit, Bore, Drive, TapDepth, TapDrill, TapHole, Wanted},
    },
    source::{Known, Reason},
    standards::{
        drills::Series,
        materials::Care,
        thread::{Side, Thread},
    },
};

use crate::{
    answer::{AdvisedFigures, Answer, DrillName, FormTapFigures, KeptFigures, Mm, TapAnswer},
    problem::Problem,
    query::{Driven, Size},
    questions::{
        part::resolve::from_core,
        thread::answered::{
            Found,
            figures::{
                Choice, as_f64, bit_of, bore_figures, class_text, drawer, driven_by, hundredths,
                name, published, tap_drills, tap_figures, with_neighbours,
            },
            taper::{goes_with_a_taper, is_taper_nut, taper_notes, taper_reasons},
        },
        why::answered::said,
    },
    session::Session,
};

/// The drills of both systems.
pub(crate) const EVERY: [Series; 4] =
    [Series::Number, Series::Letter, Series::Fraction, Series::Metric];

/// The share of a formed thread that is recommended.
const FORMED_PERCENT: f64 = 65.0;

impl Session {
    pub(crate) fn tap(&self, found: &Found) -> Result<Answer, Problem> {
        let (query, thread) = (found.query, &found.thread);
        is_tapped(found)?;
        let is_taper = is_taper_nut(thread);
        if is_taper {
            goes_with_a_taper(query, thread)?;
        }
        let engaged = self.engaged(query)?;
        let nut = found.sizes(Side::Internal, engaged)?;
        let hole = TapHole::of_thread(thread, Some(nut.class))
            .map_err(|error| from_core(&error, query.ask.at.clone()))?;
        let mut name = name(found, None, Some(&nut));
        let work = self.tapped(query.hub.as_ref(), &mut name.assumed)?;
        let drive = match &query.driven {
            Some(driven) if driven.value == Driven::Power => Drive::Power,
            _ => Drive::Hand,
        };
        let advice = Advice::of(work, drive);
        let percent = query.percent.as_ref().map(|percent| as_f64(percent.value.ratio()));
        let failed = |error: fits_core::Error| match (&query.percent, &query.drill) {
            (Some(percent), _) => {
                from_core(&error, percent.at.clone()).fix(percent.at.clone(), "75%")
            }
            (None, Some(drill)) => from_core(&error, drill.at.clone()),
            (None, None) => found.failed(&error),
        };
        let formed = percent.filter(|_| query.form.is_some()).unwrap_or(FORMED_PERCENT);
        let form_tap = match (self.form_tap(found, &hole, formed), &query.form) {
            (Ok(found), _) => Some(found),
            (Err(problem), Some(_)) => return Err(problem),
            (Err(_), None) => None,
        };
        let wanted = match percent.filter(|_| query.form.is_none()) {
            Some(percent) => Wanted::Percent(percent),
            None => Wanted::usual(thread.form(), advice),
        };
        let mut choice = tap_drills(thread, &hole, wanted).map_err(failed)?;
        let is_open = query.drill.is_none();
        let own = is_open.then(|| self.own_tap_drill(thread, &hole, wanted, &mut choice)).flatten();
        let Choice { wanted_percent, mut bore, mut drills } = choice;
        if let Some(size) = &query.drill {
            self.put_in_hand(size, thread, &hole, &mut drills)?;
            bore = None;
        }
        let fastens = !is_taper && Wanted::usual(thread.form(), advice) != Wanted::Middle;
        let depth =
            TapDepth::of(thread.major(), thread.pitch().nearest(), work).ok().filter(|_| fastens);
        let mut reasons = found.why(&nut, engaged);
        if let Some(first) = drills.first() {
            reasons.extend(hole.reasons(first).unwrap_or_default());
            reasons.extend(published(thread, first));
        }
        let mut notes: Vec<String> = self.own_tap_note(thread).into_iter().collect();
        if is_taper {
            reasons.extend(taper_reasons(thread, self.shown));
            notes.splice(..0, taper_notes(query, thread));
        }
        notes.extend(other_pipe(thread));
        reasons.extend(own.as_ref().and_then(|own| own.reason.clone()));
        reasons.extend(bore.iter().flat_map(Bore::reasons));
        let mut drills = drills
            .iter()
            .enumerate()
            .map(|(at, drill)| tap_figures(drill, thread, own.as_ref().filter(|_| at == 0)));
        reasons.extend(fastens.then(|| advised(advice)));
        reasons.extend(form_tap.as_ref().map(|form| self.formed(form)));
        Ok(Answer::Tap(Box::new(TapAnswer {
            name,
            class: class_text(&nut),
            first: drills.next(),
            bore: bore.as_ref().map(|bore| bore_figures(bore, &hole)),
            tap_in_crib: self.own_tap(thread),
            notes,
            in_hand: query.drill.is_some(),
            forms: query.form.is_some(),
            wanted_percent,
            advised: fastens.then(|| AdvisedFigures {
                min_percent: f64::from(advice.low),
                max_percent: f64::from(advice.high),
                of: format!("{}, {}", work.name(), driven_by(drive)),
                known: advice.known,
            }),
            // A taper's limits hold at its gauge plane, not for a straight hole.
            minor_min_mm: nut.minor.min.filter(|_| !is_taper).map(Mm),
            minor_max_mm: nut.minor.max.filter(|_| !is_taper).map(Mm),
            limits_keep: hole.kept().filter(|_| fastens).map(|(least, most)| KeptFigures {
                min_percent: hundredths(least),
                max_percent: hundredths(most),
            }),
            alternatives: drills.collect(),
            form_tap,
            engage_mm: depth.map(|depth| Mm(depth.engage)),
            blind_drill_mm: depth.and_then(|depth| depth.drill).map(Mm),
            cautions: vec![Hazard::Tapping.caution()],
            reasons,
        })))
    }

    /// Puts a drill in hand first.
    fn put_in_hand(
        &self,
        size: &Size,
        thread: &Thread,
        hole: &TapHole,
        drills: &mut Vec<TapDrill>,
    ) -> Result<(), Problem> {
        let bit = bit_of(self.nominal(size)?);
        let drill =
            hole.with(&bit).map_err(|_| self.no_thread(size, bit.diameter, thread, hole))?;
        *drills = with_neighbours(drill, std::mem::take(drills), thread, hole);
        Ok(())
    }

    /// The drill for a tap that forms. Only a ductile material takes one
    /// (common practice, no source).
    fn form_tap(
        &self,
        found: &Found,
        hole: &TapHole,
        percent: f64,
    ) -> Result<FormTapFigures, Problem> {
        let query = found.query;
        let place = |spot: Option<Range<usize>>| spot.unwrap_or_else(|| found.at());
        let word = place(query.form.as_ref().map(|form| form.at.clone()));
        if let Some(hub) = query.hub.clone().or_else(|| self.usual_material())
            && let Ok(material) = self.material_named(&hub)
            && material.care() == Some(Care::Brittle)
        {
            return Err(Problem::new(
                format!("{} is brittle: a forming tap needs a ductile material", material.name()),
                word,
            )
            .advise(format!("cut it: `{} tap, hub {}`", found.thread, hub.value)));
        }
        let own = Bit::standard(drawer(&found.thread));
        let formed = hole.forming(&own, percent);
        let formed = formed.or_else(|_| hole.forming(&Bit::standard(&EVERY), percent));
        let formed = formed.map_err(|error| match &query.percent {
            Some(asked) => {
                let at = asked.at.clone();
                let problem = from_core(&error, at.clone());
                if hole.forming_hole(percent).is_err() { problem.fix(at, "65%") } else { problem }
            }
            None => from_core(&error, word),
        })?;
        Ok(FormTapFigures {
            hole_mm: Mm(formed.hole),
            percent: hundredths(formed.percent),
            drill: DrillName { name: formed.bit.name.to_string(), mm: Mm(formed.bit.diameter) },
        })
    }

    fn formed(&self, form: &FormTapFigures) -> Reason {
        Reason {
            figure: "hole for a forming tap".into(),
            value: said(self.shown, form.hole_mm.0).into(),
            rule: "D - 0.0068 x percent x P, 65 % where none is asked".into(),
            source: "Machinery's Handbook, cold form tapping".into(),
            known: Known::Formula,
        }
    }

    /// A drill in hand that makes no hole for the thread.
    fn no_thread(&self, size: &Size, drill: Length, thread: &Thread, hole: &TapHole) -> Problem {
        let end = if drill < thread.major() { "is too small" } else { "leaves no thread" };
        let problem =
            Problem::new(format!("a drill of {} {end}", said(self.shown, drill)), size.at.clone());
        match hole.hole(100.0) {
            Ok(least) => problem.advise(format!(
                "from {} (100 %) to under {} (0 %)",
                said(self.shown, least),
                said(self.shown, thread.major())
            )),
            Err(_) => problem,
        }
    }
}

/// Refuses a thread that is not tapped.
fn is_tapped(found: &Found) -> Result<(), Problem> {
    let (query, thread) = (found.query, &found.thread);
    if !thread.form().has_side(Side::Internal) {
        return Err(Problem::new(
            format!("{} is an external thread: nothing is tapped", thread.form().name()),
            query.ask.at.clone(),
        )
        .advise("its mates are Rp and Rc, as `Rp1/2 tap`"));
    }
    Ok(())
}

/// A pipe's size alone does not say which: the taper has its own drill.
fn other_pipe(thread: &Thread) -> Option<String> {
    let name = thread.to_string();
    let taper: Thread = name.strip_prefix('G').map(|size| format!("Rc{size}"))?.parse().ok()?;
    Some(format!("the parallel thread; the taper takes another drill: `{taper} tap`"))
}

fn advised(advice: Advice) -> Reason {
    Reason {
        figure: "percent of thread advised".into(),
        value: format!("{} to {} %", advice.low, advice.high).into(),
        rule: format!("{}, {}", advice.work.name(), driven_by(advice.drive)).into(),
        source: advice.source.into(),
        known: advice.known,
    }
}
