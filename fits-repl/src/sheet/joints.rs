//! The last page: putting the parts together.

use fits_core::{
    Error, Length, Limits,
    job::whole::{Cut, Job, Mate, NominalSize, Paired, Question, SizeKind},
    shop::{Hazard, assemble::lead_in},
    size::Unit,
};

use crate::{
    answer::{Answer, AssemblyAnswer},
    questions::Answered as _,
    render::{svg::zones, text::Text},
    session::Session,
    sheet::{
        asked::typed,
        html::{Block, Cell, Page, pages as paged},
        part::text_of,
        picture::length_of,
    },
};

/// A joint, and what the job knows of it.
struct Joint<'a> {
    mate: &'a Mate,
    /// No page of a part shows where its limits lie.
    is_drawn: bool,
    pair: Option<Result<Paired, Error>>,
}

impl Joint<'_> {
    /// The least and the greatest clearance to expect; interference is below 0.
    fn least_and_most(&self) -> Option<(Length, Length)> {
        let pair = self.pair.as_ref()?.as_ref().ok()?;
        if let Some(measured) = pair.clearance {
            return Some((measured, measured));
        }
        let ends = |cut: &Cut| match (cut.in_hand, cut.limits) {
            (Some(size), _) => Some((size, size)),
            (None, limits) => limits.map(|limits| (limits.lower(), limits.upper())),
        };
        let (hole, shaft) = (ends(&pair.hole)?, ends(&pair.shaft)?);
        Some((hole.0.checked_sub(shaft.1).ok()?, hole.1.checked_sub(shaft.0).ok()?))
    }

    /// Pressed joints come first, then those of either kind, then those that slide
    /// or run; what is not known, last. Common practice, no source.
    fn turn(&self) -> u8 {
        match self.least_and_most() {
            Some((_, high)) if high.is_negative() => 0,
            Some((low, _)) if low.is_negative() => 1,
            Some(_) => 2,
            None => 3,
        }
    }
}

/// Of every lead-in on the page.
const CHAMFER: &str = "unconfirmed: the chamfers of lead-ins, from memory; check before you cut";

/// The assembly; `shown` has the joints that a part's page draws.
pub(super) fn pages(job: &Job, session: &mut Session, shown: &[usize]) -> Vec<Page> {
    let mut joints: Vec<Joint<'_>> = job
        .mates
        .iter()
        .enumerate()
        .filter(|(_, mate)| !job.is_split(mate.hole) && !job.is_split(mate.shaft))
        .map(|(at, mate)| {
            let pair = job.pair(mate);
            // One that is measured on both sides is compared with nothing more.
            let is_open = matches!(&pair, Some(Ok(pair)) if pair.clearance.is_none());
            Joint { mate, is_drawn: is_open && !shown.contains(&at), pair }
        })
        .collect();
    joints.sort_by_key(Joint::turn);
    let mut head = Block::default();
    head.heading(1, "Assembly");
    if joints.is_empty() {
        head.say("The note names no joint.");
    } else {
        head.say(
            "In this order: pressed joints first, then those that slide or run (common practice, \
             no source).",
        );
    }
    let is_pressed =
        |joint: &Joint<'_>| joint.least_and_most().is_some_and(|(low, _)| low.is_negative());
    if joints.iter().any(is_pressed) {
        for hazard in [Hazard::Pressing, Hazard::People] {
            head.care(hazard.caution());
        }
        head.care(CHAMFER);
    }
    in_the_way(&mut head, job);
    head.bench();
    let mut blocks = vec![head];
    for (number, joint) in joints.iter().enumerate() {
        blocks.push(block(job, number + 1, joint, session));
    }
    blocks.extend(end_play(job, session));
    blocks.extend(loose_ends(job));
    paged("Assembly", blocks)
}

fn block(job: &Job, number: usize, joint: &Joint<'_>, session: &mut Session) -> Block {
    let mate = joint.mate;
    let text = text_of(session, job.features.get(mate.hole));
    let mut block = Block::default();
    let (shaft, hole) = (job.full_name(mate.shaft), job.full_name(mate.hole));
    block.heading(2, &format!("{number} {shaft} into {hole}"));
    let said = mate.fit.words.trim();
    if !said.is_empty() {
        block.say(&format!("Fit: {said}"));
    }
    if let Some(Err(error)) = &joint.pair {
        block.care(
            &error.said_in(job.features.get(mate.hole).map_or(Unit::Millimetre, |it| it.unit)),
        );
    }
    let Some((low, high)) = joint.least_and_most() else {
        block.say("No figures: the note gives no size, or no fit that has figures.");
        return block;
    };
    if low == high {
        block.say(&format!("As measured: {}", text.play(low)));
    } else {
        block.say(&format!("Expect {}", between(&text, low, high)));
    }
    if let Some(Ok(pair)) = &joint.pair {
        if pair.is_met() == Some(false) {
            let wanted = between(&text, pair.wanted.lower(), pair.wanted.upper());
            block.care(&format!("NOT as wanted: {wanted}"));
        }
        if let (true, Some(drawing)) = (joint.is_drawn, zones::of_joint(pair, &text)) {
            block.drawing(&drawing);
        }
    }
    if low.is_negative() {
        pressed(job, joint, session, &text, &mut block);
    }
    block.lines("marks", &["found", "done"]);
    block
}

/// What cannot reach its seat, and what cannot suit two mates.
fn in_the_way(block: &mut Block, job: &Job) {
    for blocked in job.blocked() {
        let Some(mate) = job.mates.get(blocked.mate) else { continue };
        block.care(&format!(
            "{} does not pass over {} nor over {} on its way to {}, as the note has them in order",
            job.full_name(mate.hole),
            job.full_name(blocked.before),
            job.full_name(blocked.behind),
            job.full_name(mate.shaft)
        ));
    }
    for conflict in job.conflicts() {
        let others = conflict.mates.map(|at| {
            let mate = job.mates.get(at);
            mate.map_or(String::new(), |mate| job.full_name(mate.other(conflict.feature)))
        });
        block.care(&format!(
            "{} cannot suit both {} as they were read",
            job.full_name(conflict.feature),
            others.join(" and ")
        ));
    }
}

/// Force, heat and lead-in of a joint that is tight.
fn pressed(job: &Job, joint: &Joint<'_>, session: &mut Session, text: &Text, block: &mut Block) {
    match force_query(job, joint) {
        Err(missing) => block.say(&format!("Force and heat: {missing} is not given.")),
        Ok(query) => match session.evaluate(&query) {
            Ok(Answer::Assembly(answer)) => force(&query, &answer, text, block),
            Ok(_) => {}
            Err(problem) => {
                block.say(&format!("Force and heat are not worked out: {}.", problem.message));
            }
        },
    }
    let pair = joint.pair.as_ref().and_then(|pair| pair.as_ref().ok());
    let size = pair.map(|pair| pair.nominal);
    let bore =
        pair.and_then(|pair| pair.hole.in_hand.or_else(|| pair.hole.limits.map(Limits::lower)));
    if let (Some(size), Some(bore)) = (size, bore)
        && let Ok(entry) = lead_in(size, bore)
    {
        let [one, _] = text.units();
        let (least, most) = entry.pilot;
        block.say(&format!(
            "Lead-in: a chamfer of {}\u{b0}, {} long; or a pilot {} to {}",
            entry.angle,
            text.one_difference(entry.length),
            Text::size(least, one),
            Text::size(most, one)
        ));
    }
}

fn force(query: &str, answer: &AssemblyAnswer, text: &Text, block: &mut Block) {
    block.say(&format!("Worked out as `{query}`."));
    if answer.yields {
        block.care("a part yields or cracks at the tightest: ask before it is pressed");
    }
    if let Some(force) = answer.press_force_n {
        block.say(&format!("Press with up to {}", text.force(force)));
    }
    let degrees = |celsius: f64| text.temperature(celsius);
    match (answer.heat_to_c, answer.heat_limit_c) {
        (Some(heat), Some(limit)) if answer.heat_alone == Some(false) => block.care(&format!(
            "heat alone would be {}, and the parts stand no more than {}",
            degrees(heat),
            degrees(limit)
        )),
        (Some(heat), limit) => {
            let limit = limit.map_or(String::new(), |it| format!("; no part over {}", degrees(it)));
            block.say(&format!("Or heat the outer part to {}{limit}", degrees(heat)));
        }
        (None, _) => {}
    }
    if let Some(both) = &answer.heat_and_cold {
        block.say(&format!(
            "Or chill the inner part to {} ({}) and heat the outer to {}",
            degrees(both.cool_to_c),
            both.coolant,
            degrees(both.heat_to_c)
        ));
    }
    if let Some(what) = answer.unconfirmed() {
        block.care(&format!("unconfirmed: {what}, from memory; check before you cut"));
    }
}

/// The query for a pressed joint's force, or what it wants that is not given.
fn force_query(job: &Job, joint: &Joint<'_>) -> Result<String, &'static str> {
    let mate = joint.mate;
    let pair = joint.pair.as_ref().and_then(|pair| pair.as_ref().ok()).ok_or("the fit")?;
    let size = pair.nominal;
    let (Some(hole), Some(shaft)) = (job.features.get(mate.hole), job.features.get(mate.shaft))
    else {
        return Err("the joint");
    };
    let sizes = |part: usize, side: SizeKind| {
        job.features_of(part)
            .filter(move |(_, feature)| feature.side == side)
            .filter_map(|(_, feature)| Some((feature, feature.nominal.as_ref()?.size()?)))
    };
    let material = |part: usize| job.parts.get(part).and_then(|part| part.material.as_deref());
    let unit = hole.unit;
    let outside = sizes(hole.part, SizeKind::Shaft)
        .filter(|(_, outside)| *outside > size)
        .map(|(_, outside)| outside)
        .min()
        .ok_or("the outside of the outer part")?;
    let length = length_of(job, shaft.part, shaft)
        .or_else(|| length_of(job, hole.part, hole))
        .ok_or("the length of the joint")?;
    let (hub, inner) = (
        material(hole.part).ok_or("what the outer part is made of")?,
        material(shaft.part).ok_or("what the inner part is made of")?,
    );
    let bore =
        sizes(shaft.part, SizeKind::Hole).map(|(_, bore)| bore).filter(|bore| *bore < size).max();
    let bore = bore.map_or(String::new(), |bore| format!(" id {}", typed(bore, unit)));
    let (above, below) = (&pair.hole.label, &pair.shaft.label);
    let is_read = pair.hole.in_hand.is_some() || pair.shaft.in_hand.is_some();
    let tight = match (is_read || [above, below].iter().any(|it| it.contains(' ')), above == below)
    {
        (false, true) => above.clone(),
        (false, false) => format!("{above}/{below}"),
        (true, _) => {
            let (low, _) = joint.least_and_most().ok_or("the interference")?;
            let most = low.checked_neg().map_err(|_| "the interference")?;
            format!("interference {}", typed(most, unit))
        }
    };
    Ok(format!(
        "assemble {} {tight}, hub {hub} od {} long {}, shaft {inner}{bore}",
        typed(size, unit),
        typed(outside, unit),
        typed(length, unit)
    ))
}

/// The play along the axis that the note asks for.
fn end_play(job: &Job, session: &Session) -> Option<Block> {
    let is_play = |name: &str| {
        let name = name.to_lowercase();
        ["play", "float", "shake"].iter().any(|word| name.contains(word))
    };
    let wanted: Vec<Vec<Cell>> = job
        .features
        .iter()
        .enumerate()
        .filter(|(_, feature)| feature.side.surface().is_none() && is_play(&feature.name))
        .filter_map(|(at, feature)| {
            let units = text_of(session, Some(feature)).units();
            let both = |size: Length| units.map(|unit| Text::size(size, unit)).join(" or ");
            let words = match feature.nominal.as_ref()? {
                NominalSize::Size(size) => both(*size),
                NominalSize::Between(low, high) => format!("{} to {}", both(*low), both(*high)),
                NominalSize::Thread(_) => return None,
            };
            let read = match feature.reading() {
                Some(reading) => Cell::from(both(reading.size)),
                None => Cell::Box,
            };
            Some(vec![job.full_name(at).into(), words.into(), read])
        })
        .collect();
    let found = job.end_play();
    if wanted.is_empty() && found.is_none() {
        return None;
    }
    let mut block = Block::default();
    block.heading(2, "End play");
    if let Some(play) = found {
        let judged = match play.is_met {
            Some(true) => ", as wanted",
            Some(false) => ", NOT what is wanted",
            None => "",
        };
        let text = text_of(session, job.features.get(play.between));
        let left = text.units().map(|unit| Text::size(play.left, unit)).join(" or ");
        block.say(&format!(
            "{left} by {} and {}{judged}",
            job.full_name(play.between),
            job.full_name(play.shoulders)
        ));
    }
    block.table("Play along the axis", &["where", "wanted", "read"], &wanted);
    Some(block)
}

/// Remarks and questions that no part's page has.
fn loose_ends(job: &Job) -> Option<Block> {
    let on_a_page = |line: usize| job.features.iter().any(|feature| feature.line == line);
    let said: Vec<&str> = job
        .remarks
        .iter()
        .filter(|remark| remark.part.is_none() && Some(&remark.text) != job.title.as_ref())
        .map(|remark| remark.text.as_str())
        .collect();
    let asked: Vec<_> = job.questions.iter().filter(|it| !on_a_page(it.line)).collect();
    notes(&said, &asked)
}

/// What a note says besides, and what is still to be asked.
pub(super) fn notes(said: &[&str], asked: &[&Question]) -> Option<Block> {
    if said.is_empty() && asked.is_empty() {
        return None;
    }
    let mut block = Block::default();
    block.heading(2, "Notes and questions");
    for words in said {
        block.say(words);
    }
    for question in asked {
        let answer = question.answer.as_ref().map_or(String::new(), |it| format!(" {it}"));
        block.say(&format!("? {}{answer}", question.text));
    }
    Some(block)
}

/// From the one play to the other, the smaller figure first where both are alike.
fn between(text: &Text, low: Length, high: Length) -> String {
    let sizes = |least: Length, most: Length, word: &str| {
        let [own, other] = text.units().map(|unit| {
            let [least, most] = [least, most].map(|end| Text::difference_in(end, unit));
            format!("{least} to {most}")
        });
        format!("{own} {word} ({other})")
    };
    match (low.checked_neg(), high.checked_neg()) {
        (Ok(most), Ok(least)) if least.is_positive() => sizes(least, most, "interference"),
        _ if !low.is_negative() => sizes(low, high, "clearance"),
        _ => format!("{} to {}", text.play(low), text.play(high)),
    }
}
