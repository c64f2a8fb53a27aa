//! Cutting a thread on the lathe.

use fits_core::{
    Error, Length,
    shop::{
        Hazard,
        infeed::{DialReads, How, Infeed, Nose, Relief, Runout, Slide, ThreadCut, try_with},
    },
    source::{Known, Reason},
    standards::{
        iso286::Feature,
        thread::{Form, Side, Thread},
    },
};

use crate::{
    answer::{Answer, BlankFigures, Mm, ReliefFigures, ThreadPassFigures, ThreadPassesAnswer},
    problem::Problem,
    query::{Feed, Place, Units},
    questions::{
        part::resolve::from_core,
        thread::answered::{
            Found,
            figures::{as_f64, blank_of, class_text, degrees, name},
        },
        why::answered::said,
    },
    session::Session,
};

impl Session {
    /// The slide that feeds, and what its dial counts.
    pub(crate) fn how(&self, found: &Found) -> Result<How, Problem> {
        let half = found.thread.form().flank_half_angle_degrees();
        let usual = Slide::usual_compound(half);
        let slide = match &found.query.feed {
            None => usual,
            Some(spot) => match spot.value {
                Feed::Straight => Slide::Cross,
                Feed::Compound(None) => usual,
                Feed::Compound(Some(angle)) => {
                    let typed = as_f64(angle.ratio());
                    if !(0.0..=half).contains(&typed) {
                        let problem = Problem::new(
                            format!(
                                "the compound at {typed} degrees cuts into the other flank, which stands at {half}"
                            ),
                            spot.at.clone(),
                        );
                        let other = 90.0 - typed;
                        let problem = if (0.0..=half).contains(&other) {
                            problem.advise(format!(
                                "the angle is counted from the cross slide: {typed} from the bed is {other} here; try"
                            ))
                        } else {
                            problem
                        };
                        return Err(problem.fix(
                            spot.at.clone(),
                            format!("compound {}", degrees(usual).unwrap_or_default()),
                        ));
                    }
                    Slide::Compound { degrees: typed }
                }
            },
        };
        Ok(How::new(slide, self.dial.reads(), self.division()))
    }

    pub(crate) fn cut_thread(&self, found: &Found) -> Result<Answer, Problem> {
        let (query, thread) = (found.query, &found.thread);
        let side = wanted_side(found);
        if !thread.form().has_side(side) {
            let at = query.place.as_ref().map_or(query.ask.at.clone(), |place| place.at.clone());
            return Err(Problem::new(
                format!("{} has no {} thread", thread.form().name(), side.word()),
                at,
            )
            .advise("see `help threads`"));
        }
        if matches!(thread.form(), Form::PipeR | Form::PipeRc | Form::Npt) {
            return Err(Problem::new(
                "a taper thread is not cut by a parallel infeed",
                query.ask.at.clone(),
            )
            .advise(format!("set the taper over first; its limits are `{thread}`")));
        }
        let sizes = found.sizes(side, self.engaged(query)?)?;
        let tip = match (&query.nose, &query.flat) {
            (Some(_), Some(flat)) => {
                return Err(Problem::new(
                    "a tool's end is round or flat, not both",
                    flat.at.clone(),
                )
                .advise("keep the radius or the flat"));
            }
            (Some(size), None) => Some((Nose::Radius(self.nominal(size)?), size.at.clone())),
            (None, Some(size)) => Some((Nose::Flat(self.nominal(size)?), size.at.clone())),
            (None, None) => None,
        };
        let failed = |error: fits_core::Error| {
            let at = tip.as_ref().map_or(found.at(), |(_, at)| at.clone());
            from_core(&error, at)
        };
        let cut = ThreadCut::of_thread(thread, &sizes, tip.as_ref().map(|(tip, _)| *tip))
            .map_err(failed)?;
        let how = self.how(found)?;
        let plan = Infeed::plan(cut, how).map_err(failed)?;
        let feature = if side == Side::External { Feature::Shaft } else { Feature::Hole };
        let crest = if side == Side::External { sizes.major } else { sizes.minor };
        let blank = blank_of(crest).unwrap_or(BlankFigures {
            max_mm: Mm(cut.blank),
            min_mm: Mm(cut.blank),
            aim_mm: Mm(cut.blank),
        });
        let last = match side {
            Side::External => sizes.minor.min.map_or(plan.root, |least| least.min(plan.root)),
            Side::Internal => {
                sizes.major.max.or(sizes.major.min).map_or(plan.root, |most| most.max(plan.root))
            }
        };
        let (relief, why_relief) = self.relief(thread, side, last).map_err(failed)?;
        let mut reasons = found.why(&sizes, self.engaged(query)?);
        reasons.extend(plan.reasons());
        reasons.extend(why_relief);
        let list = plan.list.iter().map(|pass| ThreadPassFigures {
            name: pass.name.to_string(),
            depth_mm: Mm(pass.depth),
            takes_mm: Mm(pass.takes),
            compound_mm: pass.compound.map(Mm),
            dial_mm: Mm(pass.dial),
        });
        Ok(Answer::ThreadPasses(Box::new(ThreadPassesAnswer {
            name: match side {
                Side::External => name(found, Some(&sizes), None),
                Side::Internal => name(found, None, Some(&sizes)),
            },
            side: side.word(),
            class: class_text(&sizes),
            blank,
            depth_mm: Mm(plan.depth),
            root_mm: Mm(plan.root),
            flat_mm: Mm(plan.flat),
            nose_radius_mm: match cut.nose {
                Nose::Radius(radius) => Some(Mm(radius)),
                Nose::Flat(_) | Nose::Reaches(_) => None,
            },
            feed: if matches!(how.slide, Slide::Cross) { "straight" } else { "compound" },
            compound_deg: degrees(how.slide),
            dial: self.dial,
            dial_reads: match (how.slide, how.dial) {
                (Slide::Compound { .. }, _) => "compound travel",
                (Slide::Cross, DialReads::Diameter) => "diameter",
                (Slide::Cross, DialReads::Radius) => "radius",
            },
            passes: list.collect(),
            chamfer_to_mm: Mm(plan.chamfer_to),
            relief,
            try_with: try_with(feature),
            notes: notes(thread).into_iter().chain(setting(side, how.slide)).collect(),
            cautions: vec![Hazard::Threading.caution()],
            reasons,
        })))
    }

    /// Where a thread runs out, the groove that it may run into, and why: as a
    /// table of 60-degree threads has it, else by rule from the root's last
    /// diameter.
    fn relief(
        &self,
        thread: &Thread,
        side: Side,
        last: Length,
    ) -> Result<(ReliefFigures, Vec<Reason>), Error> {
        let feature = if side == Side::External { Feature::Shaft } else { Feature::Hole };
        let is_sixty = (thread.form().included_angle_degrees() - 60.0).abs() < 1e-9;
        let run = is_sixty.then(|| Runout::of(feature, thread.pitch().nearest())).flatten();
        if let Some(run) = run
            && let Some(figures) = listed_relief(thread, side, run)
        {
            let reason = Reason {
                figure: "run-out".into(),
                value: said(self.shown, run.runout()).into(),
                rule: format!("by the pitch, the row of {}", said(self.shown, run.pitch())).into(),
                source: run.source().into(),
                known: run.known(),
            };
            return Ok((figures, vec![reason]));
        }
        let by_rule = Relief::by_rule(feature, thread.pitch().nearest(), last)?;
        let figures = ReliefFigures {
            run_out_mm: Mm(by_rule.runout),
            shoulder_mm: Mm(by_rule.shoulder),
            groove_diameter_mm: Mm(by_rule.diameter),
            groove_width_mm: Mm(by_rule.width),
            known: Known::Practice,
        };
        Ok((figures, by_rule.reasons()))
    }

    /// The dial's usual division: 0.01 mm or a thou.
    fn division(&self) -> Length {
        match self.shown {
            Units::Millimetres => Length::from_tenth_nanometres(100_000),
            Units::Inches => Length::THOU,
        }
    }
}

/// The side that is cut: as said, else as the class or the form says.
fn wanted_side(found: &Found) -> Side {
    let is_nut = match &found.query.place {
        Some(place) => place.value == Place::Inside,
        None => {
            found.has_class(Side::Internal) && !found.has_class(Side::External)
                || !found.thread.form().has_side(Side::External)
        }
    };
    if is_nut { Side::Internal } else { Side::External }
}

/// Where a thread runs out, and the groove that it may run into, where a table
/// has it.
fn listed_relief(thread: &Thread, side: Side, run: Runout) -> Option<ReliefFigures> {
    let groove = run.groove()?;
    let diameter = match side {
        Side::External => thread.major().checked_sub(groove.off_major),
        Side::Internal => thread.major().checked_add(groove.off_major),
    };
    Some(ReliefFigures {
        run_out_mm: Mm(run.runout()),
        shoulder_mm: Mm(run.shoulder()),
        groove_diameter_mm: Mm(diameter.ok()?),
        groove_width_mm: Mm(groove.width),
        known: run.known(),
    })
}

/// What to know of more starts and of the left hand.
fn notes(thread: &Thread) -> Vec<String> {
    let mut notes = Vec::new();
    if thread.starts() > 1 {
        notes.push(format!(
            "{} starts: set the lathe to the lead, and shift one pitch from start to start",
            thread.starts()
        ));
    }
    if thread.is_left_hand() {
        notes.push("left hand: cut away from the chuck, or turn the tool over".to_owned());
    }
    notes
}

/// How the slides are set before the first pass (common practice, no source).
fn setting(side: Side, slide: Slide) -> Vec<String> {
    let mut notes = Vec::new();
    let returns = if let Some(angle) = degrees(slide) {
        notes.push(format!(
            "compound: {angle} deg from the cross slide, {} from the bed, fed along the cut",
            90.0 - angle
        ));
        "both dials to zero; pull out and return by the cross slide"
    } else {
        "the dial to zero"
    };
    notes.push(match side {
        Side::External => format!("touch the blank, {returns}"),
        Side::Internal => {
            format!("touch the bore, {returns}; inside it feeds toward you, the dial counts back")
        }
    });
    notes
}
