//! What a joint refuses: figures given twice, out of place or not at all; and where
//! the core's refusals belong.

use fits_core::Subject;

use super::resolved::head_end;
use crate::{
    problem::Problem,
    query::{JointText, Size, Tolerance},
    questions::part::resolve::from_core,
};

/// Is neither a class, a word, an interference nor a reading given?
pub(super) fn says_nothing(text: &JointText) -> bool {
    let head = &text.head;
    head.word.is_none()
        && head.reading.is_none()
        && head.hole.is_none()
        && head.shaft.is_none()
        && head.mate.is_none()
        && text.interference.is_none()
        && matches!(head.tolerance, Tolerance::Bare)
}

/// Refuses what is said of an interference or of readings where there are none.
pub(super) fn said_in_place(text: &JointText) -> Result<(), Problem> {
    if let Some(on) = text.on_radius.as_ref().filter(|_| text.interference.is_none()) {
        return Err(Problem::new("no interference is given here", on.at.clone())
            .advise("as `assemble 20 interference 0.015 on radius, hub steel od 40 long 25`"));
    }
    let head = &text.head;
    let is_read = [&head.reading, &head.second_reading, &head.hole, &head.shaft];
    let both = is_read.iter().filter(|it| it.is_some()).count() == 2;
    let at = text.instruments.first().map(|it| &it.at);
    let at = at.or(text.either.iter().flatten().next().map(|it| &it.at));
    match at.filter(|_| !both || text.interference.is_some()) {
        Some(at) => Err(Problem::new("both parts' readings are wanted for this", at.clone())
            .advise("as `assemble 20 H7/s6 = 20.010/20.040, hub steel od 40 long 25, with bore gauge and mic`")),
        None => Ok(()),
    }
}

/// Refuses what is given in two ways: one of them would be passed over.
pub(super) fn said_once(text: &JointText) -> Result<(), Problem> {
    let bodies = [("hub", &text.hub), ("shaft", &text.shaft)].into_iter();
    let sleeves = text.sleeves.iter().map(|sleeve| ("sleeve", &sleeve.body));
    for (part, body) in bodies.chain(sleeves) {
        if let (Some(_), Some(wall), "shaft") = (&body.id, &body.wall, part) {
            return Err(Problem::new("the shaft's wall is said in two ways", wall.at.clone())
                .advise("keep one of them"));
        }
        if let Some(id) = body.id.as_ref().filter(|_| part != "shaft") {
            return Err(Problem::new(
                format!("the {part}'s bore is the size of the joint"),
                id.at.clone(),
            )
            .advise("give a bored shaft as a shaft and its id"));
        }
        if let (Some(_), Some(figure)) = (&body.material, &body.expansion) {
            return Err(own_figures(part, figure.at.clone()));
        }
    }
    let head = &text.head;
    let by_class = head.word.is_some() || !matches!(head.tolerance, Tolerance::Bare);
    let is_read = head.reading.is_some() || head.hole.is_some() || head.shaft.is_some();
    if let Some(ends) = text.interference.as_ref().filter(|_| by_class || is_read) {
        return Err(Problem::new("the interference is said in two ways", ends.from.at.clone())
            .advise("keep one, as `assemble 20 interference 0.03, hub steel od 40`"));
    }
    for sleeve in &text.sleeves {
        if let (Some(_), Some(ends)) = (&sleeve.classes, &sleeve.interference) {
            return Err(Problem::new(
                "the sleeve's interference is said in two ways",
                ends.from.at.clone(),
            )
            .advise("keep one of them"));
        }
    }
    Ok(())
}

pub(super) fn own_figures(part: &str, at: std::ops::Range<usize>) -> Problem {
    Problem::new(format!("the {part} has a material and figures of its own"), at)
        .advise("keep the name or the figures; a yield of its own goes with either")
}

/// Where a refusal of the core belongs.
pub(super) fn place(text: &JointText, error: &fits_core::Error) -> Problem {
    let head = &text.head;
    let spanned = |first: &Size, last: &Size| {
        first.at.start.min(last.at.start)..first.at.end.max(last.at.end)
    };
    let bore = text.shaft.id.as_ref();
    let at = match error.subject() {
        Some(Subject::Diameter) => Some(&head.size),
        Some(Subject::Length) => head.long.as_ref(),
        // A wall is as thick as the size that was given with its part.
        Some(Subject::Wall(0)) => bore.or(text.shaft.wall.as_ref()),
        Some(Subject::Wall(part)) => {
            let body = text.sleeves.get(part - 1).map_or(&text.hub, |sleeve| &sleeve.body);
            body.od.as_ref().or(body.wall.as_ref())
        }
        _ => None,
    };
    let read = head.reading.as_ref().or(head.hole.as_ref()).map(|first| {
        spanned(first, head.second_reading.as_ref().or(head.shaft.as_ref()).unwrap_or(first))
    });
    let given = text
        .interference
        .as_ref()
        .map(|ends| spanned(&ends.from, ends.to.as_ref().unwrap_or(&ends.from)));
    let whole = head.size.at.start..head_end(head);
    let at = at.map(|size| size.at.clone()).or(read).or(given).unwrap_or(whole);
    let problem = from_core(error, at);
    match (error.subject(), bore) {
        (Some(Subject::Wall(0)), Some(_)) => problem.advise("a smaller id"),
        _ => problem,
    }
}
