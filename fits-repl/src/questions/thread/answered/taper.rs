//! The straight hole before the tap of a taper thread, Rc or NPT.

use std::ops::Range;

use fits_core::{
    Error,
    shop::tap::{Bit, TapDrill, TapHole},
    source::{Known, Reason},
    standards::thread::{Form, Thread},
};

use crate::{
    problem::Problem,
    query::{ThreadQuery, Units},
    questions::{
        thread::answered::{
            figures::{Choice, bit_of, drawer, hundredths, published_drill, with_neighbours},
            tap::EVERY,
        },
        why::answered::said,
    },
};

/// A looser drill than the list's is named where it leaves this much thread, in
/// percent (common practice, no source; one chart's drill for 2 NPT leaves 52).
const LEAST: f64 = 50.0;

/// Is its nut a taper, drilled straight?
pub(crate) fn is_taper_nut(thread: &Thread) -> bool {
    matches!(thread.form(), Form::Npt | Form::PipeRc)
}

/// The list's drill, else the next at or above the minor diameter of the small
/// end; beside it a tighter and a looser one, as far as thread is left, and the
/// hole that leaves full thread to the end. Nothing for a parallel thread.
pub(crate) fn taper_drills(thread: &Thread, hole: &TapHole) -> Option<Result<Choice, Error>> {
    if !is_taper_nut(thread) {
        return None;
    }
    let least = TapHole::small_end(thread)?;
    let by_rule = || {
        let all = Bit::standard(&EVERY);
        let own = Bit::standard(drawer(thread));
        let above = |bits: &[Bit]| {
            bits.iter().filter(|bit| bit.diameter >= least).min_by_key(|bit| bit.diameter).cloned()
        };
        above(&own).or_else(|| above(&all))
    };
    let Some(bit) = published_drill(thread).map(bit_of).or_else(by_rule) else {
        let bore = hole.bore(&Bit::standard(&EVERY), Some(least));
        return Some(bore.map(|bore| Choice {
            wanted_percent: hundredths(hole.percent(least)),
            bore: Some(bore),
            drills: Vec::new(),
        }));
    };
    let first = match hole.with(&bit) {
        Ok(first) => first,
        Err(error) => return Some(Err(error)),
    };
    let full = thread.full_thread_hole().and_then(|size| hole.with(&bit_of(size)).ok());
    let mut drills = with_neighbours(first, full.into_iter().collect(), thread, hole);
    let size = bit.diameter;
    let near = |drill: &TapDrill| drill.bit.diameter <= size || drill.percent >= LEAST;
    drills.retain(near);
    Some(Ok(Choice { wanted_percent: hundredths(hole.percent(size)), bore: None, drills }))
}

/// Refuses what a taper thread's hole does not go by.
pub(crate) fn goes_with_a_taper(query: &ThreadQuery, thread: &Thread) -> Result<(), Problem> {
    let refused = |what: &str, at: Range<usize>, advice: String| {
        Err(Problem::new(format!("a taper thread {what}"), at).advise(advice))
    };
    if let Some(percent) = &query.percent {
        let advice = format!("its drill comes from a list: `{thread} tap`");
        return refused("keeps no one percent", percent.at.clone(), advice);
    }
    if let Some(form) = &query.form {
        let advice = format!("no rule for a forming tap was read: `{thread} tap`");
        return refused("is cut", form.at.clone(), advice);
    }
    Ok(())
}

/// What to know of the hole.
pub(crate) fn taper_notes(query: &ThreadQuery, thread: &Thread) -> Vec<String> {
    let mut notes = vec![
        "a straight hole for a taper thread: percents where the small end of a made-up screw comes, the least there is"
            .to_owned(),
    ];
    match thread.full_thread_hole() {
        Some(full) => notes.push(format!(
            "for full thread to the end a tap's maker drills {} at most",
            bit_of(full).name
        )),
        None if published_drill(thread).is_some() => notes.push(
            "charts differ by one drill size; a taper reamer after a smaller drill spares the tap"
                .to_owned(),
        ),
        None => {}
    }
    if query.hub.is_some() || query.driven.is_some() {
        notes.push("no list has another drill by material, by hand or by power".to_owned());
    }
    notes
}

/// Why, where no list has the drill or another source has another.
pub(crate) fn taper_reasons(thread: &Thread, units: Units) -> Vec<Reason> {
    let (rule, source) = match thread.form() {
        Form::Npt => ("L1 and L3 into the nut", "ASME B1.20.1"),
        _ => ("the useful thread of R into the nut", "ISO 7-1"),
    };
    let mut reasons = vec![Reason {
        figure: "percents of thread".into(),
        value: "where the small end of a made-up screw comes".into(),
        rule: rule.into(),
        source: source.into(),
        known: Known::Formula,
    }];
    if let (None, Some(least)) = (published_drill(thread), TapHole::small_end(thread)) {
        let (source, known) = match thread.form() {
            Form::Npt => (
                "North American Tool, tap drill sizes for NPT and NPTF: close to K0",
                Known::Formula,
            ),
            _ => ("common practice, no source", Known::Practice),
        };
        reasons.push(Reason {
            figure: "least hole".into(),
            value: said(units, least).into(),
            rule: "the minor diameter at the screw's small end, hand tight: no list was read"
                .into(),
            source: source.into(),
            known,
        });
    }
    if let Some(full) = thread.full_thread_hole() {
        reasons.push(Reason {
            figure: "greatest straight hole for full thread".into(),
            value: bit_of(full).name.into_owned().into(),
            rule: "tabulated".into(),
            source: "Yamawa catalogue 2021, p. 720, after JIS B 0203".into(),
            known: Known::Seen,
        });
    }
    reasons
}
