//! A feature that is cut to limits: the size to work to, its limits, where both
//! parts' limits lie, and the passes with boxes to write in. The limits are the
//! job's own.

use fits_core::{
    Limits,
    job::whole::{Cut, Job, Mate, NominalSize, Paired, PartFeature},
    shop::{Reading, Verdict},
    standards::iso286::Feature as Surface,
};

use crate::{
    answer::FeatureAnswer,
    render::{
        svg::{passes, zones},
        text::Text,
    },
    session::Session,
    sheet::{
        asked,
        html::{Block, Cell},
        part::text_of,
    },
};

/// What the job knows of one feature.
struct Known<'a> {
    feature: &'a PartFeature,
    side: Surface,
    limits: Limits,
    mate: Option<&'a Mate>,
    pair: Option<Paired>,
    verdict: Option<Verdict>,
}

/// Its blocks; nothing where no limits follow for it.
pub(super) fn blocks(
    job: &Job,
    at: usize,
    name: &str,
    session: &mut Session,
) -> Option<Vec<Block>> {
    let feature = job.features.get(at)?;
    let side = feature.side.surface()?;
    let text = text_of(session, Some(feature));
    let mut top = Block::default();
    let word = side.word();
    // `1 hole` says so already.
    let is_said = name.split(' ').any(|said| said == word);
    top.heading(2, &if is_said { name.to_owned() } else { format!("{name}, {word}") });
    let (limits, by) = match job.limits(at)? {
        Ok(found) => found,
        Err(error) => {
            top.care(&error.said_in(feature.unit));
            return Some(vec![top]);
        }
    };
    let mate = job.mates.get(by);
    let pair = mate.and_then(|mate| job.pair(mate)?.ok());
    let verdict = feature
        .reading()
        .and_then(|read| Reading::judge(side, limits, read.size).ok())
        .map(|judged| judged.verdict);
    let drawn = pair.as_ref().map(|_| by);
    let known = Known { feature, side, limits, mate, pair, verdict };
    goes_with(&mut top, job, at, &known);
    let figures = asked::feature(session, side, limits, feature.unit);
    let is_bought = job.parts.get(feature.part).is_some_and(|part| part.bought);
    head(&mut top, &known, figures.as_deref(), is_bought, &text);
    let nominal = feature.nominal.as_ref().and_then(NominalSize::size);
    let picture = match &known.pair {
        Some(pair) => zones::of_joint(pair, &text),
        None => {
            zones::of_cut(nominal.unwrap_or_else(|| limits.middle()), side, &known.cut(), &text)
        }
    };
    // One that came out good is compared with nothing more.
    if let Some(picture) = picture.filter(|_| known.verdict != Some(Verdict::Good)) {
        top.spare_drawing(&picture, drawn);
    }
    notes(&mut top, &known);
    let mut all = vec![top];
    let is_done = is_bought || (feature.done && verdict.is_none());
    let is_to_cut = !is_done && verdict.is_none_or(|verdict| verdict == Verdict::CutMore);
    if let (true, Some(figures)) = (is_to_cut, &figures) {
        all.extend(worked(name, figures, session, &text));
    }
    Some(all)
}

impl Known<'_> {
    /// The feature by itself as one side of a joint.
    fn cut(&self) -> Cut {
        Cut {
            limits: Some(self.limits),
            aim: self.limits.middle(),
            label: self.label(),
            in_hand: self.feature.reading().map(|read| read.size),
        }
    }

    /// What the limits are called.
    fn label(&self) -> String {
        match (&self.pair, &self.feature.class) {
            (Some(pair), _) => pair.cut(self.side).label.clone(),
            (None, Some(class)) => class.clone(),
            (None, None) => "as the note says".into(),
        }
    }
}

/// Every part that it goes with, and which of the two comes first.
fn goes_with(block: &mut Block, job: &Job, at: usize, known: &Known<'_>) {
    for (_, mate) in job.mates_of(at) {
        let goes = if known.side == Surface::Hole { "Takes" } else { "Goes into" };
        let said = mate.fit.words.trim();
        let said = if said.is_empty() { String::new() } else { format!(": {said}") };
        block.say(&format!("{goes} {}{said}.", job.full_name(mate.other(at))));
    }
    let Some(mate) = known.mate else { return };
    let (first, why) = job.first(mate);
    let is_read = job.features.get(first).is_some_and(|first| first.reading().is_some());
    if first != at && !is_read {
        block.say(&format!("First {}: {}.", job.full_name(first), why.words()));
    }
    // Two sizes in the note, and one joint is worked out.
    let size = |at: usize| job.features.get(at)?.nominal.as_ref()?.size();
    if let (Some(hole), Some(shaft)) = (size(mate.hole), size(mate.shaft))
        && hole != shaft
    {
        let [hole, shaft] = [hole, shaft].map(|size| Text::size(size, known.feature.unit));
        block.care(&format!(
            "the note has {hole} for the hole and {shaft} for the shaft: the limits go by the hole's"
        ));
    }
}

/// What to cut to, or what was read; then the limits.
fn head(
    block: &mut Block,
    known: &Known<'_>,
    figures: Option<&FeatureAnswer>,
    is_bought: bool,
    text: &Text,
) {
    let read = known.feature.reading();
    match (read, known.verdict, figures) {
        (Some(read), Some(verdict), _) => {
            let lead = format!("Read ({})", verdict.word());
            block.cut_to(&lead, &text.units().map(|unit| Text::size(read.size, unit)));
        }
        _ if is_bought => block.say("Bought: measure it before its mate is cut."),
        (_, _, Some(figures)) => {
            let lead = if known.feature.done { "Said to be done; cut to" } else { "Cut to" };
            block.cut_to(lead, &text.units().map(|unit| Text::aim(figures, unit)));
        }
        (_, _, None) => {}
    }
    let [one, other] = text.units().map(|unit| Text::range(known.limits, unit));
    block.say(&format!("{one} ({other}); {}", known.label()));
}

/// What else to know, and what to be careful of.
fn notes(block: &mut Block, known: &Known<'_>) {
    let Some(pair) = &known.pair else {
        if known.limits.known().is_unconfirmed() {
            block.care("unconfirmed: the limits, from memory; check before you cut");
        }
        return;
    };
    if pair.closed_in {
        block.care(
            "the bore was measured before pressing: counted as closed in by 70 to 100 % of the \
             interference (common practice, no source); mic it in place",
        );
    }
    if pair.choice.as_ref().is_some_and(|choice| choice.work_it_out) {
        block.say("A starting point: work out pressure and stress before it is pressed.");
    }
    if pair.known().is_unconfirmed() || known.limits.known().is_unconfirmed() {
        block.care("unconfirmed: the limits, from memory; check before you cut");
    }
}

/// The tool, and the passes with boxes for what was dialled and read.
fn worked(name: &str, figures: &FeatureAnswer, session: &Session, text: &Text) -> Vec<Block> {
    let mut blocks = Vec::new();
    let mut out = String::new();
    text.ream(&mut out, figures.ream.as_deref(), figures.not_reamed.as_ref());
    if !out.is_empty() {
        let mut block = Block::default();
        for line in out.lines() {
            block.say(&line.split_whitespace().collect::<Vec<_>>().join(" "));
        }
        blocks.push(block);
    }
    let Some(plan) = figures.bore.as_ref().or(figures.turn.as_ref()) else { return blocks };
    let mut block = Block::default();
    let rows: Vec<Vec<Cell>> = passes::steps(plan, figures, session.dial, text)
        .into_iter()
        .map(|step| {
            let [one, _] = step.figures;
            vec![
                Cell::from(format!("{}: {}", step.name, step.dial)),
                one.into(),
                Cell::Box,
                Cell::Box,
            ]
        })
        .collect();
    let caption = format!("Passes of {name}; the dial reads {}", session.dial.word());
    block.table(&caption, &["pass", "to", "dialled", "read"], &rows);
    for caution in &figures.cautions {
        block.care(caution);
    }
    blocks.push(block);
    blocks
}
