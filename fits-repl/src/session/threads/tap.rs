//! Drills for a tap.

use fits_core::{
    Length,
    shop::{
        Hazard,
        tap::{Advice, Bit, Drive, TapDepth, TapHole, Wanted},
    },
    source::{Known, Reason},
    standards::thread::{Side, Thread},
};

use super::{
    Found,
    figures::{
        OTHERS, as_f64, bit_of, class_text, drawer, driven_by, hundredths, name, tap_drills,
        tap_figures,
    },
};
use crate::{
    answer::{AdvisedFigures, Answer, DrillName, FormTapFigures, Mm, TapAnswer},
    problem::Problem,
    query::{Driven, Size},
    session::{Session, resolve::from_core, why::said},
};

/// The share of a formed thread that is recommended.
const FORMED_PERCENT: f64 = 65.0;

impl Session {
    pub(super) fn tap(&self, found: &Found) -> Result<Answer, Problem> {
        let (query, thread) = (found.query, &found.thread);
        if !thread.form().has_side(Side::Internal) {
            return Err(Problem::new(
                format!("{} is an external thread: nothing is tapped", thread.form().name()),
                query.ask.at.clone(),
            )
            .advise("its mates are Rp and Rc, as `Rp1/2 tap`"));
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
                let usual = if query.form.is_some() { "65%" } else { "75%" };
                from_core(&error, percent.at.clone()).fix(percent.at.clone(), usual)
            }
            (None, Some(drill)) => from_core(&error, drill.at.clone()),
            (None, None) => found.failed(&error),
        };
        let formed = percent.filter(|_| query.form.is_some()).unwrap_or(FORMED_PERCENT);
        let form_tap = match (hole.forming(&Bit::standard(drawer(thread)), formed), &query.form) {
            (Ok(found), _) => Some(FormTapFigures {
                hole_mm: Mm(found.hole),
                percent: hundredths(found.percent),
                drill: DrillName { name: found.bit.name.to_string(), mm: Mm(found.bit.diameter) },
            }),
            (Err(error), Some(_)) if query.percent.is_some() => return Err(failed(error)),
            (Err(error), Some(form)) => return Err(from_core(&error, form.at.clone())),
            (Err(_), None) => None,
        };
        let wanted = match percent.filter(|_| query.form.is_none()) {
            Some(percent) => Wanted::Percent(percent),
            None => Wanted::usual(thread.form(), advice),
        };
        let (wanted_percent, mut drills) = tap_drills(thread, &hole, wanted).map_err(failed)?;
        let mut own = None;
        let mut own_reasons = Vec::new();
        if query.drill.is_none() {
            let asked = (wanted, wanted_percent);
            own = self.own_tap_drill(&hole, asked, &mut drills, &mut own_reasons);
            drills.truncate(OTHERS + 1);
        }
        if let Some(size) = &query.drill {
            let bit = bit_of(self.nominal(size)?);
            let drill =
                hole.with(&bit).map_err(|_| self.no_thread(size, bit.diameter, thread, &hole))?;
            drills.retain(|other| other.bit.diameter != bit.diameter);
            drills.truncate(OTHERS);
            drills.insert(0, drill);
        }
        let mut drills = drills.into_iter();
        let Some(first) = drills.next() else {
            return Err(Problem::new("no drill leaves a thread here", found.at())
                .advise("see `help threads`"));
        };
        let fastens = matches!(wanted, Wanted::Advised(_) | Wanted::Percent(_));
        let depth =
            TapDepth::of(thread.major(), thread.pitch().nearest(), work).ok().filter(|_| fastens);
        let mut reasons = found.why(&nut, engaged);
        reasons.extend(hole.reasons(&first).unwrap_or_default());
        reasons.extend(own_reasons);
        reasons.extend(fastens.then(|| advised(advice)));
        reasons.extend(form_tap.as_ref().map(|form| self.formed(form)));
        Ok(Answer::Tap(Box::new(TapAnswer {
            name,
            class: class_text(&nut),
            first: match own {
                Some(own) => own.put(tap_figures(&first)),
                None => tap_figures(&first),
            },
            tap_in_crib: self.own_tap(thread),
            notes: self.own_tap_note(thread).into_iter().collect(),
            in_hand: query.drill.is_some(),
            forms: query.form.is_some(),
            wanted_percent,
            advised: fastens.then(|| AdvisedFigures {
                min_percent: f64::from(advice.low),
                max_percent: f64::from(advice.high),
                of: format!("{}, {}", work.name(), driven_by(drive)),
                known: advice.known,
            }),
            minor_min_mm: nut.minor.min.map(Mm),
            minor_max_mm: nut.minor.max.map(Mm),
            alternatives: drills.map(|drill| tap_figures(&drill)).collect(),
            form_tap,
            engage_mm: depth.map(|depth| Mm(depth.engage)),
            blind_drill_mm: depth.and_then(|depth| depth.drill).map(Mm),
            cautions: vec![Hazard::Tapping.caution()],
            reasons,
        })))
    }

    fn formed(&self, form: &FormTapFigures) -> Reason {
        Reason {
            figure: "hole for a forming tap".into(),
            value: said(self.shown, form.hole_mm.0),
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

fn advised(advice: Advice) -> Reason {
    Reason {
        figure: "percent of thread advised".into(),
        value: format!("{} to {} %", advice.low, advice.high),
        rule: format!("{}, {}", advice.work.name(), driven_by(advice.drive)),
        source: advice.source.into(),
        known: advice.known,
    }
}
