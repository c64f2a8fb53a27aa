//! An O-ring and its groove.

use fits_core::{
    Length,
    standards::hardware::{Gland, GlandUse, ORing},
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
    let groove = match (place, on) {
        (Place::Piston, Some(bore)) => Some(gland.in_piston(bore)?),
        (Place::Rod, Some(rod)) => Some(gland.about_rod(rod)?),
        _ => None,
    };
    if let Some(groove) = groove {
        answer.limits("groove", groove);
    }
    answer.limits("width", gland.width()?).limits("gland depth", gland.depth()?);
    if let Some(play) = gland.play() {
        answer.size("play, at most", play, gland.known());
    }
    if let (Place::Face, Some(ring)) = (place, ring) {
        if pressure != Some("outside") {
            answer.size("groove od", ring.outside()?, ring.known());
            answer.note("pressure inside: the ring lies against the outer wall, groove od");
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
    fit_of_ring(&mut answer, gland, place, ring, groove);
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

/// How the ring itself sits: stretched by a piston's groove, squeezed into a rod's.
fn fit_of_ring(
    answer: &mut HardwareAnswer,
    gland: Gland,
    place: Place,
    ring: Option<ORing>,
    groove: Option<fits_core::Limits>,
) {
    let Some(groove) = groove else { return };
    match (place, ring) {
        (Place::Piston, Some(ring)) => {
            let stretch =
                100.0 * (groove.middle().millimetres() / ring.inside().millimetres() - 1.0);
            let judged = if (0.0..=5.0).contains(&stretch) {
                "within the usual 0 to 5"
            } else if stretch < 0.0 {
                "! it lies loose in the groove: a smaller ring"
            } else {
                "! more than the usual 5: a larger ring"
            };
            answer.note(said!(
                "the groove stretches it by {} percent: {}",
                format!("{stretch:.1}"),
                judged
            ));
        }
        (Place::Rod, Some(ring)) => {
            let Ok(outside) = ring.outside() else { return };
            let over = 100.0 * (outside.millimetres() / groove.middle().millimetres() - 1.0);
            let judged = if (0.0..=3.0).contains(&over) {
                "as it should"
            } else if over < 0.0 {
                "! it does not reach the groove's wall: a larger ring"
            } else {
                "! it would buckle: a smaller ring"
            };
            answer.note(said!(
                "its outside is {} percent over the groove: {}",
                format!("{over:.1}"),
                judged
            ));
        }
        (Place::Piston, None) => {
            let found = ORing::for_groove(gland.section(), groove.middle());
            let names: Vec<&str> = found.iter().take(3).map(|ring| ring.number()).collect();
            if !names.is_empty() {
                answer
                    .note(said!("rings that it stretches by 0 to 5 percent: {}", names.join(", ")));
            }
        }
        _ => {}
    }
}
