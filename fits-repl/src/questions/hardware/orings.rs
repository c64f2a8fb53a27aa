//! An O-ring and its groove.

use fits_core::{
    Error, Length,
    speech::Speech,
    standards::hardware::{Gland, GlandUse, ORing, RingOn},
};

use super::{
    HardwareAnswer, HardwareText,
    figures::{Made, SqueezeFigures, said, small},
    missing,
};
use crate::{problem::Problem, questions::part::resolve::from_core, session::Session};

/// What the groove is cut in.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Place {
    Piston,
    Rod,
    Face,
}

impl Session {
    pub(super) fn o_ring(&self, text: &HardwareText) -> Result<HardwareAnswer, Problem> {
        let refused = |message: &str, at: &std::ops::Range<usize>| {
            Problem::new(message, at.clone()).advise(text.example())
        };
        let place = match (text.choice("place"), text.role("rod"), text.role("bore")) {
            (Some("face"), None, None) => Place::Face,
            (Some("piston") | None, None, Some(_)) | (Some("piston"), None, None) => Place::Piston,
            (Some("rod") | None, Some(_), None) | (Some("rod"), None, None) => Place::Rod,
            (_, Some(size), _) | (_, _, Some(size)) => {
                return Err(refused("this size does not go with what is sealed", &size.at));
            }
            _ => return Err(missing(text, "piston, rod or face is not said")),
        };
        let used = match (place, text.choice("use")) {
            (Place::Face, None | Some("static")) => GlandUse::Face,
            (Place::Face, Some(_)) => {
                return Err(missing(text, "a face seal stands still"));
            }
            (_, Some("static")) => GlandUse::Static,
            (_, Some(_)) => GlandUse::Moving,
            (_, None) => {
                return Err(missing(text, "static or moving is not said: the depths differ"));
            }
        };
        if place != Place::Face
            && let Some(chosen) = text.chosen.iter().find(|it| it.value.0 == "pressure")
        {
            return Err(refused("the side of the pressure counts for a face alone", &chosen.at));
        }
        let (ring, section, section_at) = self.o_ring_section(text)?;
        let gland = Gland::find(used, section).map_err(|error| from_core(&error, section_at))?;
        // The one size left is the bore, or the rod.
        let own = match place {
            Place::Piston => text.role("bore"),
            Place::Rod => text.role("rod"),
            Place::Face => None,
        };
        let of_ring = usize::from(ring.is_none() && text.role("section").is_none());
        let spare = text.free().nth(of_ring);
        if let Some(extra) = text.free().nth(of_ring + 1) {
            return Err(refused("a word is missing that says what this size is", &extra.at));
        }
        let (on, on_at) = match (own, spare) {
            (Some(_), Some(extra)) => {
                return Err(refused("a word is missing that says what this size is", &extra.at));
            }
            (None, Some(extra)) if place == Place::Face => {
                return Err(refused("a face groove goes by the ring alone", &extra.at));
            }
            (Some(size), None) | (None, Some(size)) => (Some(self.nominal(size)?), size.at.clone()),
            (None, None) => (None, text.part.at.clone()),
        };
        groove(gland, place, ring, on, text.choice("pressure"))
            .map_err(|error| from_core(&error, on_at))
    }

    /// The ring by its number, or its section alone, and where that stands.
    fn o_ring_section(
        &self,
        text: &HardwareText,
    ) -> Result<(Option<ORing>, Length, std::ops::Range<usize>), Problem> {
        if let Some(name) = &text.name {
            if let Some(size) = text.role("section") {
                return Err(Problem::new("the number says the section", size.at.clone())
                    .advise("leave one out"));
            }
            let ring =
                ORing::dash(&name.value).map_err(|error| from_core(&error, name.at.clone()))?;
            return Ok((Some(ring), ring.section(), name.at.clone()));
        }
        let size = text
            .role("section")
            .or_else(|| text.free().next())
            .ok_or_else(|| missing(text, "the ring's number or its section is missing"))?;
        Ok((None, self.nominal(size)?, size.at.clone()))
    }
}

fn groove(
    gland: Gland,
    place: Place,
    ring: Option<ORing>,
    on: Option<Length>,
    pressure: Option<&str>,
) -> Made {
    let used = match gland.used() {
        GlandUse::Face => "static",
        used => used.name(),
    };
    let what = match place {
        Place::Piston => "on a piston or plug",
        Place::Rod => "in a bore about a rod",
        Place::Face => "in a flat face",
    };
    let title = match ring {
        Some(ring) => {
            said!("O-ring {} (section {}) {}, {}", ring.number(), gland.section(), what, used)
        }
        None => said!("O-ring of section {} {}, {}", gland.section(), what, used),
    };
    let mut answer = HardwareAnswer::new("o-ring", title);
    match (place, on) {
        (Place::Piston, Some(bore)) => answer.limits("groove", gland.in_piston(bore)?),
        (Place::Rod, Some(rod)) => answer.limits("groove", gland.about_rod(rod)?),
        _ => &mut answer,
    };
    answer.limits("width", gland.width()?).limits("gland depth", gland.depth()?);
    if let Some(play) = gland.play() {
        answer.size("play, at most", play, gland.known());
    }
    if let (Place::Face, Some(ring)) = (place, ring) {
        if pressure != Some("outside") {
            answer.size("groove od", ring.outside()?, ring.known());
            answer.note("pressure inside: the ring lies against the outer wall, groove od");
            let left = ring.outside()?.checked_sub(gland.width()?.upper().checked_mul(2)?)?;
            if !left.is_positive() {
                answer.note("! that groove leaves nothing in its middle: a plain counterbore");
            }
        }
        if pressure != Some("inside") {
            answer.size("groove id", ring.inside(), ring.known());
            answer.note("pressure outside: the ring lies on the inner wall, groove id");
        }
    }
    if let Some(ring) = ring {
        answer.size("ring's id", ring.inside(), ring.known());
    }
    let [min_percent, max_percent] = gland.squeeze();
    answer.squeeze =
        Some(SqueezeFigures { min_percent, max_percent, filled_percent: gland.filled() });
    let on = match place {
        Place::Piston => on.map(RingOn::Piston),
        Place::Rod => on.map(RingOn::Rod),
        Place::Face => None,
    };
    match (ring, on) {
        (Some(ring), Some(on)) => fit_of_ring(&mut answer, ring, gland.used(), on)?,
        (None, Some(on)) => {
            answer.note(rings_that_go(gland, on));
        }
        (_, None) => {}
    }
    answer.note(match place {
        Place::Face => "gland depth: of the groove itself",
        _ => "gland depth: from the bottom of the groove to the wall opposite",
    });
    answer.note(said!(
        "no backup ring; finish the groove smooth, break its edges {} and no more, lead the part \
         in with a chamfer (common practice)",
        small(Length::THOU.checked_mul(5)?)
    ));
    answer.reasons = gland.reasons()?;
    Ok(answer)
}

/// How the ring itself sits: stretched by a piston's groove, held by a rod's.
fn fit_of_ring(
    answer: &mut HardwareAnswer,
    ring: ORing,
    used: GlandUse,
    on: RingOn,
) -> Result<(), Error> {
    let fit = ring.fit(used, on)?;
    let by = format!("{:.1}", fit.stretch);
    answer.note(match on {
        RingOn::Piston(_) => said!("the groove stretches it by {} percent: 1 to 5 is usual", by),
        RingOn::Rod(_) => said!(
            "the rod stretches it by {} percent; its outside is {} percent over the groove",
            by,
            format!("{:.1}", fit.over)
        ),
    });
    if fit.is_sold_by_size {
        answer.note(
            "! more stretch than the usual 5 percent: it is sold by this size, and ages sooner",
        );
    }
    Ok(())
}

/// The rings of a section that go there.
fn rings_that_go(gland: Gland, on: RingOn) -> Speech {
    let all = ORing::that_go(gland.used(), on);
    let of_section = |of: bool| {
        let rings = all.iter().filter(|ring| (ring.section() == gland.section()) == of);
        rings.map(|ring| ring.number()).collect::<Vec<_>>().join(", ")
    };
    match (of_section(true), of_section(false)) {
        (own, _) if !own.is_empty() => said!("rings of this section that go there: {}", own),
        (_, other) if other.is_empty() => "! no ring that is listed here goes there".into(),
        (_, other) => said!("! no listed ring of this section goes there; of others: {}", other),
    }
}
