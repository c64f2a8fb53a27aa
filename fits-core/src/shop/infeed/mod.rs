//! Cutting a thread with a single point, outside and inside, pass by pass.
//!
//! The tool cuts until the groove is half a pitch wide at the pitch diameter
//! aimed at: from a blank of diameter b, with a nose that stands s above the
//! sharp point, the radial depth is `|b − E|/2 + (P/4) cot α − s`. A flat f
//! gives `s = (f/2) cot α`, a radius R gives `s = R (cosec α − 1)`.
//!
//! The cuts shrink so that each takes the same area: after cut k of n the
//! depth is `depth √(k/n)`, n from the first cut asked for; where none is, the
//! tool maker's `depth √(q/(n − 1))` with q 0.3, 1, 2 … n − 1, whose first cut
//! is gentle (Widia 2017, p. 685). None is less than 0.05 mm (the same page), and on the dial's divisions none
//! takes more than the one before. A power thread's groove (flanks under 20
//! degrees) is a trapezium: a tool of flat f at half angle α has cut the area
//! `f d + d² tan α` at depth d, and the cuts take equal shares of it. A last cut of that least or less, not under
//! half of it, and spring passes without infeed, are common practice, no source.

mod cut;
mod depths;
mod how;
mod runout;
#[rustfmt::skip]
#[allow(clippy::unreadable_literal, reason = "generated")]
mod table;

pub use cut::{Nose, ThreadCut};
pub use runout::{Groove, Overrun, Relief, Runout};

use std::borrow::Cow;

use self::depths::{PassCount, Trapezium, cuts_for, is_trapezoid, takes};
pub use self::how::{DialReads, How, Slide};
use crate::{
    error::Error,
    size::{Length, Limits},
    source::{Known, Reason},
    standards::iso286::Feature,
};

/// The least cut that still cuts (Widia 2017, p. 685).
const LEAST: Length = Length::from_tenth_nanometres(500_000);

/// One pass.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct ThreadPass {
    /// `1`, `2`, … `finish`, `spring`.
    pub name: Cow<'static, str>,
    /// Radial depth after it, from the blank.
    pub depth: Length,
    /// What it adds to the radial depth.
    pub takes: Length,
    /// The compound's travel from the start, where the compound feeds.
    pub compound: Option<Length>,
    /// What the feeding slide's dial reads, from zero at the touch.
    pub dial: Length,
}

/// A plan to cut a thread.
///
/// ```
/// use fits_core::shop::infeed::{DialReads, How, Infeed, Slide, ThreadCut};
/// use fits_core::standards::thread::Thread;
/// let thread: Thread = "M10x1.5".parse()?;
/// let cut = ThreadCut::of_thread(&thread, &thread.external(None)?, None)?;
/// let how = How::new(Slide::Cross, DialReads::Diameter, "0.02mm".parse()?);
/// let plan = Infeed::plan(cut, how)?;
/// assert_eq!(plan.list.last().map(|pass| pass.depth), Some(plan.depth));
/// assert!(!plan.reasons().is_empty());
/// # Ok::<(), fits_core::Error>(())
/// ```
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct Infeed {
    /// What is cut.
    pub cut: ThreadCut,
    /// How.
    pub how: How,
    /// Radial depth in all.
    pub depth: Length,
    /// The diameter that the tool's tip ends at.
    pub root: Length,
    /// The flat that a tool reaching that diameter needs; nothing where it
    /// must be sharper than sharp.
    pub flat: Length,
    /// The passes in order.
    pub list: Vec<ThreadPass>,
    /// Lead-in, 45 degrees, to this diameter: the root outside, the major
    /// inside (common practice, no source).
    pub chamfer_to: Length,
    known: Known,
    source: &'static str,
}

/// What is left to feed after a reading.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct ToGo {
    /// To the middle of the pitch diameter's limits.
    pub pitch_diameter: Length,
    /// Radially.
    pub radial: Length,
    /// Along the compound, where it feeds.
    pub compound: Option<Length>,
    /// On the feeding slide's dial.
    pub dial: Length,
    /// Is it inside the limits already?
    pub good: bool,
}

/// What to try the thread with (common practice, no source).
///
/// ```
/// use fits_core::{shop::infeed::try_with, standards::iso286::Feature};
/// assert_ne!(try_with(Feature::Shaft), try_with(Feature::Hole));
/// ```
pub const fn try_with(feature: Feature) -> &'static str {
    match feature {
        Feature::Shaft => "three wires or a thread mic; else its nut, on by hand without shake",
        Feature::Hole => "a plug gauge or its screw, in by hand without shake",
    }
}

impl Infeed {
    /// Plans the passes.
    ///
    /// # Errors
    /// As [`ThreadCut::depth`]; a compound angle beyond the flank's; a first
    /// cut out of range, which the advice gives.
    ///
    /// ```
    /// use fits_core::{Length, shop::infeed::{DialReads, How, Infeed, Slide, ThreadCut}};
    /// use fits_core::standards::iso286::Feature;
    /// let pitch: Length = "1.5mm".parse()?;
    /// let cut = ThreadCut {
    ///     feature: Feature::Shaft,
    ///     pitch,
    ///     half_angle_degrees: 30.0,
    ///     blank: "10mm".parse()?,
    ///     pitch_diameter: "9.026mm".parse()?,
    ///     nose: ThreadCut::common_nose(pitch, 30.0)?,
    /// };
    /// let compound = Slide::Compound { degrees: 29.5 };
    /// let how = How::new(compound, DialReads::Diameter, "0.02mm".parse()?);
    /// let plan = Infeed::plan(cut, how)?;
    /// // 0.6495 P from a basic blank.
    /// assert!((plan.depth.millimetres() - 0.9743).abs() < 0.0005);
    /// assert_eq!(plan.list.last().map(|pass| pass.name.as_ref()), Some("spring"));
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn plan(cut: ThreadCut, how: How) -> Result<Self, Error> {
        let depth = cut.depth()?;
        if let Slide::Compound { degrees } = how.slide {
            if !(0.0..=cut.half_angle_degrees).contains(&degrees) {
                return Err(Error::out_of_reach(
                    format!(
                        "with the compound at {degrees} degrees the trailing flank is cut wrong"
                    ),
                    format!("from 0 to {} degrees", cut.half_angle_degrees),
                ));
            }
        }
        let rough = if depth > LEAST.checked_mul(4)? { depth.checked_sub(LEAST)? } else { depth };
        let row = PassCount::of(cut.pitch, cut.half_angle_degrees);
        let reach = depth.checked_mul(2)?;
        let root = match cut.feature {
            Feature::Shaft => cut.blank.checked_sub(reach)?,
            Feature::Hole => cut.blank.checked_add(reach)?,
        };
        let flat = cut.flat_at(root)?;
        let usual = row.high.saturating_sub(1).max(2);
        let shares: Vec<f64> = if is_trapezoid(cut.half_angle_degrees) {
            let groove = Trapezium::new(flat, cut.half_angle_degrees);
            let cuts = how.first.map_or(Ok(usual), |first| groove.cuts_for(first, rough))?;
            groove.shares(rough, cuts)
        } else {
            // The tool maker's first cut is gentle: q is 0.3, 1, 2 … of n − 1 areas.
            let (cuts, areas, first) = match how.first {
                None => (usual, f64::from(usual - 1), 0.3),
                Some(first) => {
                    let cuts = cuts_for(first, rough)?;
                    (cuts, f64::from(cuts), 1.0)
                }
            };
            let before = f64::from(cuts) - areas;
            let area = |number: u32| (f64::from(number) - before).max(first);
            (1..=cuts).map(|number| libm::sqrt(area(number) / areas)).collect()
        };
        let mut list: Vec<ThreadPass> = Vec::new();
        let (mut at, mut steps) = (Length::ZERO, 0);
        for takes in takes(&how, depth, &shares)? {
            steps += takes;
            let feed = how.travel(steps)?;
            let to = how.radial(feed)?;
            list.push(pass(&how, (list.len() + 1).to_string().into(), at, to, feed)?);
            at = to;
        }
        let feed = how.feed(depth)?;
        list.push(pass(&how, "finish".into(), at, depth, feed)?);
        for _ in 0..how.springs {
            list.push(pass(&how, "spring".into(), depth, depth, feed)?);
        }
        Ok(Self {
            chamfer_to: root,
            flat,
            cut,
            how,
            depth,
            root,
            list,
            known: row.from.known,
            source: row.from.text,
        })
    }

    /// What to feed after a reading of the pitch diameter, over wires or by a
    /// thread micrometer.
    ///
    /// # Errors
    /// Past the limits already.
    ///
    /// ```
    /// use fits_core::{Length, Limits, shop::infeed::{DialReads, How, Infeed, Slide}};
    /// use fits_core::standards::iso286::Feature;
    /// let how = How::new(Slide::Cross, DialReads::Diameter, "0.02mm".parse()?);
    /// let limits = Limits::new("8.862mm".parse()?, "8.994mm".parse()?)?;
    /// let left = Infeed::to_go(Feature::Shaft, "9.1mm".parse()?, limits, how)?;
    /// assert_eq!(left.dial, "0.172mm".parse()?);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn to_go(
        feature: Feature,
        pitch_diameter: Length,
        limits: Limits,
        how: How,
    ) -> Result<ToGo, Error> {
        let aim = limits.middle();
        let (left, past) = match feature {
            Feature::Shaft => (pitch_diameter.checked_sub(aim)?, pitch_diameter < limits.lower()),
            Feature::Hole => (aim.checked_sub(pitch_diameter)?, pitch_diameter > limits.upper()),
        };
        if past {
            let (word, end) = match feature {
                Feature::Shaft => ("under the lower", limits.lower()),
                Feature::Hole => ("over the upper", limits.upper()),
            };
            return Err(Error::no_plan(format!(
                "a pitch diameter of {pitch_diameter} is {word} limit {end} already"
            )));
        }
        // Past the middle but good: nothing more to feed.
        let left = left.max(Length::ZERO);
        let radial = left.half();
        let feed = how.feed(radial)?;
        Ok(ToGo {
            pitch_diameter: left,
            radial,
            compound: how.compound(feed),
            dial: feed.checked_mul(how.times())?,
            good: limits.contains(pitch_diameter),
        })
    }

    /// Why the plan is as it is.
    pub fn reasons(&self) -> Vec<Reason> {
        let nose = match self.cut.nose {
            Nose::Flat(flat) => format!("a flat of {flat}"),
            Nose::Radius(radius) => format!("a radius of {radius}"),
            Nose::Reaches(root) => format!("reaching {root}"),
        };
        vec![
            Reason {
                figure: "depth".into(),
                value: self.depth.to_string().into(),
                rule: format!(
                    "blank {}, pitch diameter {}, nose {nose}: the groove is half a pitch wide at the pitch diameter",
                    self.cut.blank, self.cut.pitch_diameter
                ).into(),
                source: "geometry of the form".into(),
                known: Known::Formula,
            },
            Reason {
                figure: "passes".into(),
                value: self.list.len().to_string().into(),
                rule: format!(
                    "equal chip areas{}; none under 0.05 mm, none over the one before; a finish cut of 0.025 to 0.05 mm and spring passes are common practice, no source",
                    if is_trapezoid(self.cut.half_angle_degrees) {
                        " of a trapezium, flat x depth + depth² x tan of the flank's half angle"
                    } else {
                        ", depth x sqrt(k/n), a gentle first cut (q 0.3) where none is asked for"
                    }
                ).into(),
                source: self.source.into(),
                known: self.known,
            },
        ]
    }
}

fn pass(
    how: &How,
    name: Cow<'static, str>,
    from: Length,
    to: Length,
    feed: Length,
) -> Result<ThreadPass, Error> {
    Ok(ThreadPass {
        name,
        depth: to,
        takes: to.checked_sub(from)?,
        compound: how.compound(feed),
        dial: feed.checked_mul(how.times())?,
    })
}
