//! A part's pages: its picture, each feature that is cut, and all other sizes.

use fits_core::{
    Length, Limits,
    job::whole::{Job, NominalSize, PartFeature},
    size::Unit,
};

use crate::{
    answer::{Answer, Mm, SettingsAnswer, SideFigures, ThreadAnswer},
    query::Units,
    questions::Answered as _,
    render::{Colour, text::Text},
    session::Session,
    sheet::{
        asked, feature,
        html::{Block, Cell, Page, overflows, pages as paged},
        picture,
    },
};

/// The pages of a part. Where its pictures of joints do not fit on one, the
/// assembly page has them; `shown` takes those that stand here.
pub(super) fn pages(
    job: &Job,
    part: usize,
    session: &mut Session,
    shown: &mut Vec<usize>,
) -> Vec<Page> {
    let Some(this) = job.parts.get(part) else { return Vec::new() };
    // One that was told apart into several stands for none by itself.
    let features: Vec<(usize, &PartFeature)> =
        job.features_of(part).filter(|(at, _)| !job.is_split(*at)).collect();
    let text = text_of(session, features.first().map(|(_, feature)| *feature));
    let mut head = Block::default();
    let count = this.count.filter(|count| *count > 1);
    let count = count.map_or(String::new(), |count| format!(", {count} of them"));
    let material = this.material.as_ref().map_or(String::new(), |of| format!(", {of}"));
    head.heading(1, &format!("{}{material}{count}", this.name));
    if this.bought {
        head.say("Bought: mic it, it is not cut.");
    }
    // One diameter and no length: the picture of its limits says as much.
    let says_more = features.len() > 1;
    if let Some(drawing) = picture::part(job, part, &text).filter(|_| says_more) {
        head.drawing(&drawing);
    }
    head.bench();
    let mut blocks = vec![head];
    let mut others = Vec::new();
    for (number, (at, this)) in features.iter().enumerate() {
        let name = format!("{} {}", number + 1, this.name);
        match feature::blocks(job, *at, &name, session) {
            Some(found) => blocks.extend(found),
            None => match asked::of_thread(this).and_then(|query| thread(session, query)) {
                Some(answer) => blocks.push(threaded(&name, &answer, this, session)),
                None => others.push(other(job, *at, &name, &text_of(session, Some(this)))),
            },
        }
    }
    if !others.is_empty() {
        let mut block = Block::default();
        block.heading(2, "Other sizes");
        block.table("As the note has them", &["size", "wanted", "read", "done"], &others);
        blocks.push(block);
    }
    blocks.extend(remarks(job, part));
    if overflows(&blocks) {
        blocks.iter_mut().for_each(Block::slim);
    }
    shown.extend(blocks.iter().filter_map(Block::joint));
    paged(&this.name, blocks)
}

/// Is anything of a part cut to limits?
pub(super) fn is_cut(job: &Job, part: usize) -> bool {
    job.features_of(part).any(|(at, feature)| {
        !job.is_split(at) && (job.limits(at).is_some() || asked::of_thread(feature).is_some())
    })
}

/// The parts that need no page of their own: what the note says of each.
pub(super) fn uncut(job: &Job, session: &Session) -> Vec<Page> {
    let mut blocks = Vec::new();
    for (part, this) in job.parts.iter().enumerate().filter(|(part, _)| !is_cut(job, *part)) {
        let mut block = Block::default();
        let about = [this.material.clone(), this.count.map(|count| format!("{count} of them"))];
        let about: Vec<String> =
            std::iter::once(this.name.clone()).chain(about.into_iter().flatten()).collect();
        block.heading(2, &about.join(", "));
        let rows: Vec<Vec<Cell>> = job
            .features_of(part)
            .filter(|(at, _)| !job.is_split(*at))
            .map(|(at, feature)| other(job, at, &feature.name, &text_of(session, Some(feature))))
            .collect();
        block.table("As the note has them", &["size", "wanted", "read", "done"], &rows);
        blocks.push(block);
        blocks.extend(remarks(job, part));
    }
    if let Some(first) = blocks.first_mut() {
        let mut head = Block::default();
        head.heading(1, UNCUT);
        head.bench();
        head.append(first);
        *first = head;
    }
    paged(UNCUT, blocks)
}

/// The heading of the parts that need no page.
const UNCUT: &str = "Parts with nothing to cut to a fit";

/// How figures are written: in the unit of the feature first.
pub(super) fn text_of(session: &Session, feature: Option<&PartFeature>) -> Text {
    let units = match feature.map(|feature| feature.unit) {
        None => session.units,
        Some(Unit::Inch | Unit::Thou | Unit::Tenth) => Units::Inches,
        Some(_) => Units::Millimetres,
    };
    let settings = SettingsAnswer { units, dial: session.dial };
    Text { settings, colour: Colour::Off }
}

fn thread(session: &mut Session, query: &str) -> Option<Box<ThreadAnswer>> {
    match session.evaluate(query).ok()? {
        Answer::Thread(thread) => Some(thread),
        _ => None,
    }
}

/// A thread's limits, and the tap drill where it is a nut.
fn threaded(name: &str, answer: &ThreadAnswer, feature: &PartFeature, session: &Session) -> Block {
    let text = text_of(session, Some(feature));
    let mut block = Block::default();
    block.heading(2, &format!("{name}: {}", answer.name.designation));
    let sizes = |side: &SideFigures| -> Vec<Vec<Cell>> {
        let rows = [
            ("outside", side.major_min_mm, side.major_max_mm),
            ("pitch diameter", side.pitch_min_mm, side.pitch_max_mm),
            ("core", side.minor_min_mm, side.minor_max_mm),
        ];
        let shown = |row: (&str, Option<Mm>, Option<Mm>)| {
            let (name, low, high) = row;
            let cells = text.units().map(|unit| match (low, high) {
                (Some(low), Some(high)) => {
                    Limits::new(low.0, high.0).map_or(String::new(), |it| Text::range(it, unit))
                }
                (Some(low), None) => format!("{} and up", Text::size(low.0, unit)),
                (None, Some(high)) => format!("at most {}", Text::size(high.0, unit)),
                (None, None) => String::new(),
            });
            let [one, other] = cells;
            (!one.is_empty()).then(|| vec![Cell::from(name), one.into(), other.into()])
        };
        rows.into_iter().filter_map(shown).collect()
    };
    for (word, side) in [("screw", &answer.external), ("nut", &answer.internal)] {
        if let Some(side) = side {
            let caption = format!("{word} {}", side.class);
            block.table(caption.trim(), &[], &sizes(side));
        }
    }
    if let Some(tap) = &answer.tap {
        let percent = tap.percent;
        block.say(&format!("tap drill {}: {percent:.0} % of thread", tap.drill.name));
    }
    for caution in &answer.cautions {
        block.care(caution);
    }
    if let Some(what) = answer.unconfirmed() {
        block.care(&format!("unconfirmed: {what}, from memory; check before you cut"));
    }
    block
}

/// A size that is no fit: a length, a keyway, a diameter without a tolerance.
fn other(job: &Job, at: usize, name: &str, text: &Text) -> Vec<Cell> {
    let Some(feature) = job.features.get(at) else { return vec![name.into()] };
    let units = text.units();
    let both = |size: Length| {
        let [one, other] = units.map(|unit| Text::size(size, unit));
        format!("{one} ({other})")
    };
    let mut wanted = match &feature.nominal {
        None => "not said".to_owned(),
        Some(NominalSize::Size(size)) => match feature.deviations.map(|by| by.about(*size)) {
            Some(Ok(limits)) => {
                let [one, other] = units.map(|unit| Text::range(limits, unit));
                format!("{one} ({other})")
            }
            _ => both(*size),
        },
        Some(NominalSize::Between(low, high)) => format!("{} to {}", both(*low), both(*high)),
        Some(NominalSize::Thread(name)) => name.clone(),
    };
    // What is said of its fit and gives no limits yet.
    let fits: Vec<String> = job
        .mates_of(at)
        .filter(|(_, mate)| !mate.fit.words.trim().is_empty())
        .map(|(_, mate)| {
            format!("; {} with {}", mate.fit.words.trim(), job.full_name(mate.other(at)))
        })
        .collect();
    if feature.side.surface().is_some() && feature.deviations.is_none() {
        wanted.push_str("; no limits follow");
    }
    wanted.extend(fits);
    let read = match feature.reading() {
        Some(reading) => Cell::from(both(reading.size)),
        None => Cell::Box,
    };
    let done = if feature.done { Cell::from("done") } else { Cell::Box };
    vec![name.into(), wanted.into(), read, done]
}

/// What the note says besides, and what is still to be asked.
fn remarks(job: &Job, part: usize) -> Option<Block> {
    let lines: Vec<usize> = job.features_of(part).map(|(_, feature)| feature.line).collect();
    let said: Vec<&str> = job
        .remarks
        .iter()
        // The line that names the part is its heading.
        .filter(|it| {
            it.part == Some(part) && job.parts.get(part).is_none_or(|part| part.line != it.line)
        })
        .map(|remark| remark.text.as_str())
        .collect();
    let asked: Vec<_> = job.questions.iter().filter(|it| lines.contains(&it.line)).collect();
    super::joints::notes(&said, &asked)
}
