//! A plug for the end of a square or rectangular tube.

use fits_core::{
    Error, Length, Limits,
    shop::{Damp, swelling_reason},
    source::Known,
    standards::{
        hardware::{SquareTube, TubeStandard},
        materials::Material,
    },
};
use uom::si::pressure::pascal;

use super::{
    HardwareAnswer, HardwareText, at,
    figures::{Made, said, small},
    missing,
};
use crate::{
    problem::Problem,
    query::{Size, Units},
    questions::part::resolve::from_core,
    session::Session,
};

/// How a plug goes into its tube.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Fitted {
    Slide,
    Snug,
    Drive,
}

impl Fitted {
    const fn word(self) -> &'static str {
        match self {
            Self::Slide => "slide",
            Self::Snug => "snug",
            Self::Drive => "drive",
        }
    }

    /// What a metal plug is under the inside of the tube in hand, in thou: common
    /// practice, no source.
    const fn under(self) -> [i64; 2] {
        match self {
            Self::Slide => [5, 10],
            Self::Snug => [1, 3],
            Self::Drive => [-1, 0],
        }
    }
}

impl Session {
    pub(super) fn tube_plug(&self, text: &HardwareText) -> Result<HardwareAnswer, Problem> {
        let mut free = text.free();
        let first =
            free.next().ok_or_else(|| missing(text, "the outside of the tube is missing"))?;
        let second = free.next();
        let wall =
            text.role("wall").ok_or_else(|| missing(text, "the wall of the tube is missing"))?;
        let standard = match (text.choice("standard"), self.shown) {
            (Some("a500"), _) => TubeStandard::A500,
            (Some("en10219"), _) | (None, Units::Millimetres) => TubeStandard::En10219,
            _ => TubeStandard::A513,
        };
        let one = self.nominal(first)?;
        let other = second.map_or(Ok(one), |size| self.nominal(size))?;
        let tube =
            SquareTube::new(standard, [one, other], self.nominal(wall)?).map_err(|error| {
                // A side that no table holds, or a wall that leaves no bore.
                let size = if error.is_not_listed() { first } else { wall };
                at(size)(error)
            })?;
        let material = match &text.material {
            Some(name) => Some(self.material_named(name)?),
            None => None,
        };
        let inside = text.role("inside").map(|size| Ok((size, self.nominal(size)?))).transpose()?;
        if let Some((size, inside)) = inside {
            if second.is_some() {
                return Err(Problem::new(
                    "a rectangular tube has two insides: ask for each side on its own",
                    size.at.clone(),
                )
                .advise("as in `square plug 1in wall 0.065in inside 0.868in`"));
            }
            self.could_be_inside(tube, size, inside)?;
        }
        let fitted = match text.choice("fit") {
            Some("slide") => Fitted::Slide,
            Some("drive") => Fitted::Drive,
            _ => Fitted::Snug,
        };
        plug(tube, inside.map(|(_, inside)| inside), fitted, material.as_deref())
            .map_err(|error| from_core(&error, first.at.clone()))
    }

    /// An inside that the tube cannot have is refused with the wall that it would need.
    fn could_be_inside(
        &self,
        tube: SquareTube,
        at_size: &Size,
        inside: Length,
    ) -> Result<(), Problem> {
        let _ = self;
        let failed = at(at_size);
        tube.holds_inside(inside, 0).map_err(|error| {
            let needs = tube.sides()[0].checked_sub(inside).map(Length::half);
            let Ok(needs) = needs else { return failed(error) };
            let problem = failed(error);
            let advice =
                said!("that inside needs a wall of {}; mic the wall and the inside again", needs);
            problem.advise(advice.said_in(match self.shown {
                Units::Inches => fits_core::size::Unit::Inch,
                Units::Millimetres => fits_core::size::Unit::Millimetre,
            }))
        })
    }
}

fn plug(
    tube: SquareTube,
    inside: Option<Length>,
    fitted: Fitted,
    material: Option<&Material>,
) -> Made {
    let [one, other] = tube.sides();
    let title = if one == other {
        said!(
            "{} plug for square steel tube {} x {} wall, {}",
            fitted.word(),
            one,
            tube.nominal_wall(),
            tube.standard().name()
        )
    } else {
        said!(
            "{} plug for steel tube {} x {} x {} wall, {}",
            fitted.word(),
            one,
            other,
            tube.nominal_wall(),
            tube.standard().name()
        )
    };
    let mut answer = HardwareAnswer::new("tube plug", title);
    let [first, second] = tube.inside()?;
    let corner = tube.inside_corner()?;
    if let Some(inside) = inside {
        answer.limits("plug, flats", plug_size(inside, fitted)?);
        answer.size("inside, yours", inside, Known::Given);
    }
    answer.limits("inside", first);
    if one != other {
        answer.limits("inside, other", second);
    }
    answer.limits("wall", tube.wall()?).limits("inside corner", corner);
    let side = inside.unwrap_or_else(|| first.middle());
    if inside.is_none() {
        answer.size("start at", first.upper(), first.known());
        answer.note(
            "start at: flats that fill the widest such tube; take them down to the tube in hand",
        );
        answer.note(
            "no fit covers that spread: mic the inside both ways, clear of the seam, and say it: \
             inside SIZE",
        );
    }
    answer.note(said!(
        "round or chamfer the plug's corners by the greatest inside corner; file the weld seam \
         inside first: it may stand {} high, or the whole wall",
        small(Length::THOU.checked_mul(10)?)
    ));
    let across = side.checked_sub(corner.upper())?.checked_scale(1_414_214, 1_000_000)?;
    if one == other {
        answer.size("from round", across.max(side), Known::Formula);
    }
    of_material(&mut answer, side, fitted, material)?;
    what_a_drive_does(&mut answer, side)?;
    answer.note(
        "a hole across both: drill the walls and the plug in one setting, two diameters or more \
         from the end (common practice)",
    );
    answer.reasons = tube.reasons()?;
    answer.why(
        "plug",
        fitted.word(),
        "snug 1 to 3 thou under the inside in hand, slide 5 to 10 under, drive up to 1 thou over",
        "common practice, no source",
        Known::Practice,
    );
    if let Some(reason) = material.and_then(swelling_reason) {
        answer.known = answer.known.worst(reason.known);
        answer.reasons.push(reason);
    }
    Ok(answer)
}

/// The size across flats of a metal plug for an inside.
fn plug_size(inside: Length, fitted: Fitted) -> Result<Limits, Error> {
    let [least, most] = fitted.under();
    let less = |thou| inside.checked_sub(Length::THOU.checked_mul(thou)?);
    // In a small tube a thou over is more than its wall stands.
    let upper = less(least)?.min(inside.checked_add(drive_most(inside)?)?);
    Ok(Limits::new(less(most)?, upper)?.known_as(Known::Practice))
}

/// What the plug is made of changes it: plastics grow with damp.
fn of_material(
    answer: &mut HardwareAnswer,
    side: Length,
    fitted: Fitted,
    material: Option<&Material>,
) -> Result<(), Error> {
    let Some(material) = material else {
        answer.note("nylon grows with damp: say what it is made of");
        return Ok(());
    };
    let grows = |damp: Damp| {
        #[allow(clippy::cast_possible_truncation, reason = "a share of a length")]
        let millionths = (damp.growth(material) * 1e6).round() as i64;
        side.checked_scale(millionths.into(), 1_000_000)
    };
    let (room, soaked) = (grows(Damp::RoomAir)?, grows(Damp::Soaked)?);
    if !room.is_positive() {
        return Ok(());
    }
    if let Some(plug) = answer.sizes.iter().find(|size| size.name == "plug, flats") {
        let dry = Limits::new(plug.min_mm.0.checked_sub(room)?, plug.max_mm.0.checked_sub(room)?)?;
        answer.limits("plug if dry", dry.known_as(Known::Memory));
    }
    answer.size("grows, air", room, Known::Memory).size("grows, wet", soaked, Known::Memory);
    answer.note(said!(
        "{} grows by that from dry, in room air and in water: make a {} plug of dry stock so \
         much smaller, or let the blank settle; driven, it gives way before the wall does",
        material.name(),
        fitted.word()
    ));
    Ok(())
}

/// How far a metal plug may be over the inside of a tube of the softest common
/// steel before its walls, as strips that the plug pulls, reach their yield.
fn drive_most(side: Length) -> Result<Length, Error> {
    let steel = Material::find("steel")?;
    let yields = steel.yield_strength().map_or(0.0, |it| it.get::<pascal>());
    let share = yields / steel.modulus().get::<pascal>();
    #[allow(clippy::cast_possible_truncation, reason = "a strain")]
    let billionths = (share * 1e9).round() as i128;
    side.checked_scale(billionths, 1_000_000_000)
}

/// A plug over its tube stretches the walls.
fn what_a_drive_does(answer: &mut HardwareAnswer, side: Length) -> Result<(), Error> {
    let over = drive_most(side)?;
    answer.size("drive, most", over, Known::Formula);
    answer.note(
        "drive, most: a metal plug further over the inside stretches the softest steel past its \
         yield: the flats stay bulged and the seam may split",
    );
    answer.why(
        "drive, most",
        over.to_string(),
        "inside x yield / modulus: the wall as a strip pulled by the plug",
        "geometry; yield of the softest common steel",
        Known::Formula,
    );
    Ok(())
}
