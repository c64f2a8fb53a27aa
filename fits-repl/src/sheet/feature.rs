//! A feature that is cut to limits: the size to work to, its limits, where both
//! parts' limits lie, and the passes with boxes to write in.

use fits_core::{
    Length,
    job::whole::{Feature, Job},
    shop::Verdict,
    size::{Decimals, Rounding},
    standards::iso286::Feature as Surface,
};

use crate::{
    answer::{Answer, FeatureAnswer, PassFigures, ReadingFigures, ReamFigures},
    questions::Answered as _,
    render::{
        draw::Drawing,
        svg::{passes, zones},
        text::Text,
    },
    session::Session,
    sheet::{
        asked::{self, Pair},
        html::{Block, Cell},
        part::text_of,
    },
};

/// What is known of one feature.
#[derive(Default)]
struct Known {
    figures: Option<FeatureAnswer>,
    reading: Option<ReadingFigures>,
    /// Read, and its mate is still to be made.
    in_hand: Option<String>,
    picture: Option<Drawing>,
    fit: Option<String>,
    ream: Option<ReamFigures>,
    not_reamed: Option<String>,
    plan: Option<PassFigures>,
    cautions: Vec<&'static str>,
    unconfirmed: Option<String>,
    notes: Vec<String>,
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
    let known =
        of_pair(job, at, side, session, &text).or_else(|| by_itself(feature, session, &text))?;
    let figures = known.figures.as_ref()?;
    let mut top = Block::default();
    top.heading(2, &format!("{name}, {}", side.word()));
    if let Some(fit) = &known.fit {
        top.say(fit);
    }
    let is_bought = job.parts.get(feature.part).is_some_and(|part| part.bought);
    match (&known.reading, &known.in_hand) {
        (Some(reading), _) => read(&mut top, reading, &text),
        (None, Some(in_hand)) => top.say(in_hand),
        (None, None) if is_bought => top.say("Bought: measure it before its mate is cut."),
        (None, None) => {
            let lead = if feature.done { "Said to be done; cut to" } else { "Cut to" };
            top.cut_to(lead, &text.units().map(|unit| Text::aim(figures, unit)));
        }
    }
    if figures.lower_mm != figures.upper_mm {
        limits(&mut top, figures, &text);
    }
    if let Some(picture) = &known.picture {
        top.drawing(picture);
    }
    for note in &known.notes {
        top.say(note);
    }
    let mut all = vec![top];
    let is_to_cut = known.in_hand.is_none()
        && !is_bought
        && known.reading.as_ref().is_none_or(|reading| reading.verdict == Verdict::CutMore);
    if is_to_cut {
        all.extend(worked(name, &known, figures, session, &text));
    }
    let mut last = Block::default();
    for caution in &known.cautions {
        last.care(caution);
    }
    if let Some(what) = &known.unconfirmed {
        last.care(&format!("unconfirmed: {what}, from memory; check before you cut"));
    }
    if last.tall > 0.0 {
        all.push(last);
    }
    Some(all)
}

fn read(block: &mut Block, reading: &ReadingFigures, text: &Text) {
    let size = reading.at_20();
    let lead = format!("Read ({})", reading.verdict.word());
    block.cut_to(&lead, &text.units().map(|unit| Text::size(size, unit)));
}

/// The two limits in both units.
fn limits(block: &mut Block, figures: &FeatureAnswer, text: &Text) {
    let both = |size: Length, toward| {
        let [one, other] = text.units().map(|unit| {
            let decimals = Decimals::for_limits(unit, figures.limits);
            format!("{} {}", size.shown(decimals, toward), unit.symbol())
        });
        format!("{one} ({other})")
    };
    let lower = both(figures.lower_mm.0, Rounding::Up);
    let upper = both(figures.upper_mm.0, Rounding::Down);
    block.say(&format!("Not under {lower}, not over {upper}; {}", figures.class));
}

/// The tool, and the passes with boxes for what was dialled and read.
fn worked(
    name: &str,
    known: &Known,
    figures: &FeatureAnswer,
    session: &Session,
    text: &Text,
) -> Vec<Block> {
    let mut blocks = Vec::new();
    let mut out = String::new();
    text.ream(&mut out, known.ream.as_ref(), known.not_reamed.as_ref());
    let tools = out.split_whitespace().collect::<Vec<_>>().join(" ");
    if !tools.is_empty() {
        let mut block = Block::default();
        block.say(&format!("Tool: {tools}"));
        blocks.push(block);
    }
    let Some(plan) = &known.plan else { return blocks };
    let mut block = Block::default();
    let rows: Vec<Vec<Cell>> = passes::steps(plan, figures, session.dial, text)
        .into_iter()
        .map(|step| {
            let [one, other] = step.figures;
            vec![
                Cell::from(format!("{}: {}", step.name, step.dial)),
                format!("{one} ({other})").into(),
                Cell::Box,
                Cell::Box,
            ]
        })
        .collect();
    let caption = format!("Passes of {name}; the dial reads {}", session.dial.word());
    block.table(&caption, &["pass", "to", "dialled", "read"], &rows);
    blocks.push(block);
    blocks
}

/// A feature with the mate that settles its limits.
fn of_pair(
    job: &Job,
    at: usize,
    side: Surface,
    session: &mut Session,
    text: &Text,
) -> Option<Known> {
    let mates: Vec<_> = job.mates_of(at).collect();
    let (mate, (query, pair)) = mates
        .iter()
        .find_map(|(_, mate)| Some((*mate, asked::pair(session, &asked::of_pair(job, mate))?)))?;
    let mut known = Known::default();
    let other = job.full_name(mate.other(at));
    let goes = if side == Surface::Hole { "Takes" } else { "Goes into" };
    let said = mate.fit.words.trim();
    let said = if said.is_empty() { String::new() } else { format!(": {said}") };
    known.fit = Some(format!("{goes} {other}{said}. Worked out as `{query}`."));
    match pair {
        Pair::Fit(fit) => {
            known.unconfirmed = fit.unconfirmed();
            known.picture = zones::of_fit(&fit, text);
            known.cautions.clone_from(&fit.cautions);
            known.notes.clone_from(&fit.notes);
            let figures = if side == Surface::Hole { &fit.hole } else { &fit.shaft };
            let measured = fit.measured.as_ref().filter(|it| it.part == side);
            if let Some(measured) = measured {
                let shown =
                    text.units().map(|unit| Text::size(measured.size_mm.0, unit)).join("  ");
                known.in_hand = Some(format!("Measured {shown}: {}.", measured.verdict.word()));
            } else if fit.in_hand == Some(side) {
                known.in_hand = Some("In hand; its mate is made to suit.".into());
            }
            match side {
                Surface::Hole => {
                    known.ream.clone_from(&fit.ream);
                    known.not_reamed.clone_from(&fit.not_reamed);
                    known.plan.clone_from(&fit.bore);
                }
                Surface::Shaft => known.plan = turned(figures, session),
            }
            known.figures = Some(figures.clone());
        }
        Pair::Read(pair) => {
            known.picture = zones::pair_reading(&pair, text);
            known.cautions.clone_from(&pair.cautions);
            let part = if side == Surface::Hole { &pair.hole } else { &pair.shaft };
            known.figures = Some(part.feature.clone());
            known.reading = Some(part.reading.clone());
            known.unconfirmed = pair.unconfirmed();
        }
    }
    Some(known)
}

/// The passes to a shaft's limits: those of the shaft asked for by itself.
fn turned(figures: &FeatureAnswer, session: &mut Session) -> Option<PassFigures> {
    let [low, high] = [figures.lower_mm.0, figures.upper_mm.0].map(|end| end.to_string());
    let query = format!("shaft {}..{}", low.replace(' ', ""), high.replace(' ', ""));
    match session.evaluate(&query).ok()? {
        Answer::Feature(shaft) => shaft.turn,
        _ => None,
    }
}

/// A feature whose own class or deviations settle its limits.
fn by_itself(feature: &Feature, session: &mut Session, text: &Text) -> Option<Known> {
    let mut known = Known::default();
    let query = asked::of_feature(feature, true)?;
    let answer = session.evaluate(&query).ok()?;
    known.unconfirmed = answer.unconfirmed();
    known.fit = Some(format!("Worked out as `{query}`."));
    match answer {
        Answer::Feature(figures) => {
            known.picture = zones::of_feature(&figures, None, text);
            known.ream.clone_from(&figures.ream);
            known.not_reamed.clone_from(&figures.not_reamed);
            known.plan = figures.bore.clone().or_else(|| figures.turn.clone());
            known.cautions.clone_from(&figures.cautions);
            known.notes.clone_from(&figures.notes);
            known.figures = Some(*figures);
        }
        Answer::Reading(reading) => {
            known.picture = zones::of_feature(&reading.feature, Some(&reading.reading), text);
            known.figures = Some(reading.feature);
            known.reading = Some(reading.reading);
        }
        _ => return None,
    }
    Some(known)
}
