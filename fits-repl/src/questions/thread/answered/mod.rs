//! Screw threads: limits, tap drills, sizes over wires, cutting passes.

mod clearance;
mod cut;
mod figures;
mod own;
mod tap;
mod taper;
mod wires;

use std::ops::Range;

use fits_core::{
    Length, Limits,
    shop::{Hazard, infeed::ThreadCut, tap::TapHole},
    source::{Known, Reason},
    standards::thread::{
        Engagement, Form, PipeTaper, Side, Sizes, Thread, ThreadPair, engagement, scan_expected,
    },
};
use uom::si::area::square_millimeter;

use crate::{
    answer::{Answer, Mm, PlayFigures, ThreadAnswer},
    problem::Problem,
    query::{Expression, Place, Size, Spot, ThreadAsk, ThreadQuery},
    questions::{
        part::resolve::from_core,
        thread::answered::{
            clearance::clearance,
            figures::{
                blank_of, bore_figures, is_other_letters, name, published, said_in_both,
                side_figures, tap_drills, tap_figures, taper_figures, usual,
            },
            taper::{is_taper_nut, taper_notes, taper_reasons},
        },
        why::answered::{said, said_range},
    },
    session::Session,
};

/// A thread looked up, with the classes that were typed.
pub(crate) struct Found<'a> {
    query: &'a ThreadQuery,
    thread: Thread,
}

impl Found<'_> {
    fn at(&self) -> Range<usize> {
        self.query.thread.at.clone()
    }

    /// An error of the designation, at its place in the line.
    fn failed(&self, error: &fits_core::Error) -> Problem {
        in_designation(self.query, error)
    }

    /// The limits of a side, in the class typed or the usual one.
    fn sizes(&self, side: Side, engaged: Option<Length>) -> Result<Sizes, Problem> {
        let class = self.query.thread.value.class(side);
        self.thread.sizes(side, class.map(|class| class.value), engaged).map_err(|error| {
            let start = self.query.thread.at.start;
            let at = class.map_or(self.at(), |class| start + class.at.0..start + class.at.1);
            with_class(self.query, &error, from_core(&error, at))
        })
    }

    /// Why the limits of a side are what they are.
    fn why(&self, sizes: &Sizes, engaged: Option<Length>) -> Vec<Reason> {
        let class = self.query.thread.value.class(sizes.side).map(|class| class.value);
        // The limits stand, so their reasons do.
        self.thread.why(sizes.side, class, engaged).unwrap_or_default()
    }

    fn has_class(&self, side: Side) -> bool {
        self.query.thread.value.class(side).is_some()
    }
}

/// An error of a designation, at its place in the line.
fn in_designation(query: &ThreadQuery, error: &fits_core::Error) -> Problem {
    let start = query.thread.at.start;
    let at = error.span().map_or(query.thread.at.clone(), |at| start + at.start..start + at.end);
    let problem = with_class(query, error, from_core(error, at));
    if problem.advice.is_empty() { problem.advise("see `help threads`") } else { problem }
}

/// With the nearest class that the thread has, where the fault is the class.
fn with_class(query: &ThreadQuery, error: &fits_core::Error, problem: Problem) -> Problem {
    let designation = &query.thread.value;
    let wrong = designation.classes.iter().flatten().find(|class| {
        error.span().is_none_or(|at| (at.start, at.end) == class.at)
            && problem.at.end == query.thread.at.start + class.at.1
    });
    let near = wrong.and_then(|class| designation.nearest_class(class.value));
    match near {
        Some(near) if !problem.advice.contains('`') => {
            let at = problem.at.clone();
            problem.fix(at, near.to_string())
        }
        _ => problem,
    }
}

/// The thread that a bare fraction of an inch may mean, as a query.
pub(crate) fn of_size(size: &Size) -> Option<String> {
    let Expression::Number(number, None | Some(fits_core::size::Unit::Inch)) = size.value else {
        return None;
    };
    let (top, bottom) = number.ratio();
    if !number.is_fraction() || top < 0 {
        return None;
    }
    let (whole, rest) = (top / bottom, top % bottom);
    let name =
        if whole == 0 { format!("{rest}/{bottom}") } else { format!("{whole}-{rest}/{bottom}") };
    // With a unit it is a length.
    if size.at.len() > name.len() {
        return None;
    }
    let (designation, _) = scan_expected(&name)?.ok()?;
    designation.resolve().ok().map(|thread| thread.to_string())
}

impl Session {
    pub(crate) fn thread(&self, query: &ThreadQuery) -> Result<Answer, Problem> {
        let designation = &query.thread.value;
        // A screw passes its hole whatever its pitch.
        let thread = match query.ask.value {
            ThreadAsk::Clearance => designation.resolve_diameter(),
            _ => designation.resolve(),
        }
        .map_err(|error| in_designation(query, &error))?;
        belong(query)?;
        of_that_side(query)?;
        let found = Found { query, thread };
        let mut answer = match query.ask.value {
            ThreadAsk::Limits => self.thread_limits(&found),
            ThreadAsk::Tap => self.tap(&found).map_err(|problem| self.drill_meant(&found, problem)),
            ThreadAsk::Clearance => clearance(&found),
            ThreadAsk::Wires => self.wires(&found).map(|wires| Answer::Wires(Box::new(wires))),
            ThreadAsk::Over => self.over_wires(&found),
            ThreadAsk::Cut => self.cut_thread(&found),
        }?;
        if let Some((name, reasons)) = answer.thread_mut() {
            if is_other_letters(&found) {
                reasons.insert(0, one_set(&found.thread));
            }
            name.known_by(reasons);
        }
        Ok(answer)
    }

    /// The length of engagement, where one was typed.
    fn engaged(&self, query: &ThreadQuery) -> Result<Option<Length>, Problem> {
        let Some(long) = &query.long else { return Ok(None) };
        let length = self.nominal(long)?;
        if length == Length::ZERO {
            return Err(Problem::new("a length of 0 engages nothing", long.at.clone())
                .advise("as in `M10, long 12`"));
        }
        Ok(Some(length))
    }

    /// Where a taper thread's diameters are taken.
    fn taper_note(&self, form: Form, taper: PipeTaper) -> String {
        let shown = |size| said_in_both(self.shown, size);
        let figures = taper_figures(form, taper);
        let (plane, useful) = match (figures.gauge_length_mm, figures.useful_length_mm) {
            (Some(gauge), Some(useful)) => (
                format!("{} from the screw's small end", shown(gauge.0)),
                format!("; useful thread {}", shown(useful.0)),
            ),
            _ => ("at the open, large end".to_owned(), String::new()),
        };
        let nut = if form == Form::Npt { ", at the open, large end of the nut" } else { "" };
        format!(
            "taper 1 in 16: diameters at the gauge plane, {plane}{nut}{useful}; the plane may lie ±{}",
            shown(figures.plane_tolerance_mm.0)
        )
    }

    /// Why a metric thread's class is another at this length.
    fn length_group(
        &self,
        found: &Found,
        engaged: Length,
        external: Option<&Sizes>,
        internal: Option<&Sizes>,
    ) -> Option<String> {
        let thread = &found.thread;
        let group = Engagement::of(thread, engaged);
        if thread.form() != Form::Metric || group == Engagement::Normal {
            return None;
        }
        let mut changes = Vec::new();
        for sizes in [internal, external].into_iter().flatten() {
            if found.has_class(sizes.side) {
                continue;
            }
            if let Some(usual) =
                thread.default_class(sizes.side).filter(|usual| *usual != sizes.class)
            {
                changes.push(format!("{} in place of {usual}", sizes.class));
            }
        }
        if changes.is_empty() {
            return None;
        }
        let (from, to, _) = engagement(thread);
        Some(format!(
            "ISO 965-1 length group {}: {} is outside {} (N), so {}",
            group.letter(),
            said(self.shown, engaged),
            said_range(self.shown, Limits::new(from, to).ok()?),
            changes.join(" and ")
        ))
    }

    /// With the number drill that a bare figure most likely means.
    fn drill_meant(&self, found: &Found, problem: Problem) -> Problem {
        let Some(Spot { value: Expression::Number(number, None), at }) = &found.query.drill else {
            return problem;
        };
        let (top, bottom) = number.ratio();
        if bottom != 1 || !found.thread.form().is_inch() {
            return problem;
        }
        let written = format!("#{top}");
        let drill = Some(Spot { value: Expression::Gauge(written.clone()), at: at.clone() });
        let query = ThreadQuery { drill, ..found.query.clone() };
        match self.tap(&Found { query: &query, thread: found.thread }) {
            Ok(_) => Problem::new(problem.message, problem.at)
                .advise("a number drill has its sign")
                .fix(at.clone(), written),
            Err(_) => problem,
        }
    }

    fn thread_limits(&self, found: &Found) -> Result<Answer, Problem> {
        let thread = &found.thread;
        let engaged = self.engaged(found.query)?;
        let (screw, nut) = (found.has_class(Side::External), found.has_class(Side::Internal));
        // A word or one class asks for one side; none or two for both.
        let place = found.query.place.as_ref().map(|place| place.value);
        let wants = |side: Side| {
            let (typed, other, asked) = match side {
                Side::External => (screw, nut, Place::Outside),
                Side::Internal => (nut, screw, Place::Inside),
            };
            thread.form().has_side(side) && place.map_or(typed || !other, |place| place == asked)
        };
        let sizes = |side| wants(side).then(|| found.sizes(side, engaged)).transpose();
        let (external, internal) = (sizes(Side::External)?, sizes(Side::Internal)?);
        let mut notes: Vec<String> = Vec::new();
        for side in external.iter().chain(&internal) {
            if let Some(outside) = side.outside
                && !notes.iter().any(|note| note == outside)
            {
                notes.push(outside.to_owned());
            }
        }
        if let Some(engaged) = engaged {
            notes.extend(self.length_group(found, engaged, external.as_ref(), internal.as_ref()));
        }
        // Taper threads meet where they meet: there is no play to speak of.
        let play = external
            .zip(internal)
            .filter(|_| thread.taper().is_none())
            .map(|(screw, nut)| ThreadPair::new(screw, nut));
        notes.extend(play.and_then(|pair| pair.interference()));
        // An Rp is parallel; the taper is that of its screw.
        let taper = thread.taper().filter(|_| thread.form() != Form::PipeRp);
        notes.extend(taper.map(|taper| self.taper_note(thread.form(), taper)));
        let mut reasons = thread.reasons();
        for side in external.iter().chain(&internal) {
            reasons.extend(found.why(side, engaged));
        }
        let blank = external.as_ref().and_then(|sizes| blank_of(sizes.major));
        let depth = |sizes: &Option<Sizes>| {
            let cut = ThreadCut::of_thread(thread, sizes.as_ref()?, None).ok()?;
            cut.depth().ok().map(Mm)
        };
        let (mut tap, mut bore) = (None, None);
        if let Some(nut) = &internal
            && let Ok(hole) = TapHole::of_thread(thread, Some(nut.class))
            && let Ok(mut choice) = tap_drills(thread, &hole, usual(thread))
        {
            let own = self.own_tap_drill(thread, &hole, usual(thread), &mut choice);
            if let Some(bored) = &choice.bore {
                bore = Some(bore_figures(bored, &hole));
                reasons.extend(bored.reasons());
            } else if let Some(drill) = choice.drills.first() {
                tap = Some(tap_figures(drill, thread, own.as_ref()));
                reasons.extend(hole.reasons(drill).unwrap_or_default());
                reasons.extend(published(thread, drill));
                reasons.extend(own.and_then(|own| own.reason));
            }
            if is_taper_nut(thread) {
                notes.extend(taper_notes(found.query, thread));
                reasons.extend(taper_reasons(thread, self.shown));
            }
            notes.extend(self.own_tap_note(thread));
        }
        Ok(Answer::Thread(Box::new(ThreadAnswer {
            name: name(found, external.as_ref(), internal.as_ref()),
            external: external.as_ref().map(side_figures),
            internal: internal.as_ref().map(side_figures),
            play: play.map(|pair| PlayFigures {
                pitch_min_mm: pair.pitch().least.map(Mm),
                pitch_max_mm: pair.pitch().greatest.map(Mm),
                major_min_mm: pair.major().least.map(Mm),
                minor_min_mm: pair.minor().least.map(Mm),
            }),
            blank,
            tap,
            bore,
            taper: taper.map(|taper| taper_figures(thread.form(), taper)),
            external_depth_mm: depth(&external),
            internal_depth_mm: depth(&internal),
            stress_area_mm2: thread.stress_area().map(|area| area.get::<square_millimeter>()),
            notes,
            cautions: hazard(thread).map(Hazard::caution).into_iter().collect(),
            source: thread.form().source().to_owned(),
            reasons,
        })))
    }
}

/// Why a thread called UN has the limits of its own letters.
fn one_set(thread: &Thread) -> Reason {
    Reason {
        figure: "limits".into(),
        value: format!("those of {thread}").into(),
        rule: "one size and pitch stands in the tables once, by its own letters".into(),
        source: "ASME B1.1, as Machinery's Handbook, 31st ed., table 3, prints it".into(),
        known: Known::Formula,
    }
}

/// A pipe thread holds pressure; a stress area tempts to load by it alone.
fn hazard(thread: &Thread) -> Option<Hazard> {
    if matches!(
        thread.form(),
        Form::PipeParallel | Form::PipeR | Form::PipeRp | Form::PipeRc | Form::Npt
    ) {
        Some(Hazard::PressureThread)
    } else {
        thread.stress_area().map(|_| Hazard::Load)
    }
}

/// Refuses a side that has not what is asked, or whose class is the other's.
fn of_that_side(query: &ThreadQuery) -> Result<(), Problem> {
    use ThreadAsk::{Clearance, Over, Tap, Wires};
    let Some(place) = &query.place else { return Ok(()) };
    let (side, part, other, partner) = match place.value {
        Place::Outside => (Side::External, "screw", Side::Internal, "nut"),
        Place::Inside => (Side::Internal, "nut", Side::External, "screw"),
    };
    let wrong = match (place.value, query.ask.value) {
        (Place::Outside, Tap) => Some("a screw is not tapped: its nut is"),
        (Place::Inside, Wires | Over) => Some("wires go over the screw, not the nut"),
        (Place::Inside, Clearance) => Some("it is the screw that passes a clearance hole"),
        _ => None,
    };
    if let Some(wrong) = wrong {
        return Err(Problem::new(wrong, place.at.clone())
            .advise(format!("leave it out, or say {partner}"))
            .fix(place.at.clone(), partner));
    }
    let designation = &query.thread.value;
    if designation.class(side).is_none()
        && let Some(class) = designation.class(other)
    {
        let start = query.thread.at.start;
        return Err(Problem::new(
            format!("{} is a class of the {partner}, and the {part} is asked for", class.value),
            start + class.at.0..start + class.at.1,
        )
        .advise(format!("leave the class out, or say {partner}"))
        .fix(place.at.clone(), partner));
    }
    if !designation.form.has_side(side) {
        return Err(Problem::new(
            format!("{} is not a thread of the {part}", designation.form.name()),
            place.at.clone(),
        )
        .advise("its mate has a letter of its own; see `help threads`"));
    }
    Ok(())
}

/// Refuses a clause that does not go with what is asked.
fn belong(query: &ThreadQuery) -> Result<(), Problem> {
    use ThreadAsk::{Cut, Over, Tap, Wires};
    fn at<T>(spot: Option<&Spot<T>>) -> Option<Range<usize>> {
        spot.map(|spot| spot.at.clone())
    }
    let clauses = [
        ("a material", at(query.hub.as_ref()), &[Tap][..]),
        ("`hand` or `power`", at(query.driven.as_ref()), &[Tap]),
        ("`form`", at(query.form.as_ref()), &[Tap]),
        ("a wire", at(query.wire.as_ref()), &[Wires, Over]),
        ("how the tool is fed", at(query.feed.as_ref()), &[Cut, Over]),
        ("the tool's nose", at(query.nose.as_ref()), &[Cut]),
        ("the tool's flat", at(query.flat.as_ref()), &[Cut]),
        (
            "the length engaged",
            at(query.long.as_ref()),
            &[ThreadAsk::Limits, Tap, Wires, Over, Cut],
        ),
    ];
    for (what, place, goes_with) in clauses {
        if let Some(place) = place
            && !goes_with.contains(&query.ask.value)
        {
            let words: Vec<String> = goes_with
                .iter()
                .filter(|ask| **ask != ThreadAsk::Limits)
                .map(|ask| format!("`{}`", ask.word()))
                .collect();
            return Err(Problem::new(format!("{what} goes with {}", words.join(" or ")), place)
                .advise("as in `M10 tap, hub steel`, `M10 wires 1mm` or `M10 cut straight`"));
        }
    }
    Ok(())
}
