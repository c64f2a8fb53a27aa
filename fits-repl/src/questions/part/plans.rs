//! Getting there: reamers, boring and turning passes, what to dial.

use std::ops::Range;

use fits_core::{
    Length, Limits,
    job::Reamer,
    shop::{
        CutRules, InchReamer, PreDrill, Ream, Stage, Start,
        adviser::Settings,
        machining::{self, Edge},
    },
    standards::{drills::Drill, iso286::Feature, materials::Family},
};

use crate::{
    answer::{
        Answer, CribReaming, DrillFigures, Mm, OwnDrillFigures, OwnReamer, PassFigure, PassFigures,
        PassesAnswer, ReamAnswer, ReamFigures, ReamerFigures,
    },
    problem::Problem,
    query::{Machine, Part, Spot, Tolerance, Units, Work},
    questions::{
        part::resolve::{One, class},
        rehearse::answered::{overhang, work_cautions},
        why::answered::said,
    },
    session::Session,
};

impl Session {
    pub(crate) fn work(
        &self,
        part: &Part,
        work: &Spot<Work>,
        feature: &One,
    ) -> Result<Answer, Problem> {
        let wants = match work.value {
            Work::Ream | Work::Bore => Feature::Hole,
            Work::Turn => Feature::Shaft,
        };
        if feature.kind.is_some_and(|kind| kind != wants) {
            let other = if wants == Feature::Hole { Work::Turn } else { Work::Bore };
            let problem = Problem::new(
                format!("`{}` makes a {wants}, and this is a {}", work.value.word(), wants.mate()),
                work.at.clone(),
            )
            .fix(work.at.clone(), other.word());
            // `bore 20 h7`: typed in small letters, or the other work?
            return Err(match &part.tolerance {
                Tolerance::Class(text) if part.feature.is_none() => {
                    let class = class(text)?;
                    problem.or_else_fix(text.at(), class.mirrored().to_string())
                }
                _ => problem,
            });
        }
        if wants == Feature::Shaft && self.kept.machine == Machine::BoringHead {
            return Err(Problem::new("a boring head turns no shaft", work.at.clone())
                .advise("set the machine first, as `machine lathe`"));
        }
        if let Some(size) = &part.reading {
            return Err(Problem::new("a plan takes no reading", size.at.clone()).advise(format!(
                "say where the work is, as `{}`, or read it, as `{}`",
                if wants == Feature::Hole { "bore 20 H7 from 19.6" } else { "turn 20 g6 from 22" },
                if wants == Feature::Hole { "20 H7 = 19.6" } else { "20 g6 = 22" }
            )));
        }
        if work.value == Work::Ream {
            if let Some(from) = &part.from {
                return Err(Problem::new("a reamer starts from its pre-drill", from.at.clone())
                    .advise("leave from out, or `bore 20 H7 from 19.6`"));
            }
            let ream = Ream::of(feature.limits).map_err(|error| {
                self.refused(&error, part.size.at.clone())
                    .advise("boring is planned as `bore 20 H7 from 19.6`")
            })?;
            return Ok(Answer::Ream(Box::new(ReamAnswer {
                hole: self.featured(feature),
                ream: self.ream_figures(&ream),
            })));
        }
        let start = match &part.from {
            Some(size) => Start::From(self.nominal(size)?),
            None => Start::Open,
        };
        let plan = self.passes(part, wants, feature.limits, start).map_err(|error| {
            let at = part.from.as_ref().map_or(part.size.at.clone(), |from| from.at.clone());
            self.refused(&error, at).advise(match wants {
                Feature::Hole => "a bore starts smaller, as `bore 20 H7 from 19.6`",
                Feature::Shaft => "turning starts larger, as `turn 20 g6 from 22`",
            })
        })?;
        let notes = self.no_bar_for(wants, plan.start_mm).into_iter().collect();
        let overhang = overhang(part.measuring.as_deref())?;
        Ok(Answer::Passes(Box::new(PassesAnswer {
            work: work.value.word(),
            dial: self.dial,
            plan,
            feature: self.featured(feature),
            next: None,
            log: None,
            is_not_logged: false,
            notes,
            cautions: work_cautions(wants, overhang),
        })))
    }

    /// A refusal of a plan, its sizes in the asker's units.
    fn refused(&self, error: &fits_core::Error, at: Range<usize>) -> Problem {
        let text = error.to_string();
        let mut words: Vec<String> = Vec::new();
        for word in text.split(' ') {
            let (unit, after) = word.split_at(if word.starts_with("mm") { 2 } else { 0 });
            let size = words.last().filter(|_| unit == "mm" && self.shown == Units::Inches);
            match size.and_then(|size| format!("{size} mm").parse::<Length>().ok()) {
                Some(size) => {
                    words.pop();
                    words.push(said(self.shown, size) + after);
                }
                None => words.push(word.to_owned()),
            }
        }
        Problem::new(words.join(" "), at)
    }

    /// Says so where the crib has boring bars and none goes into the bore.
    fn no_bar_for(&self, wants: Feature, start: Option<Mm>) -> Option<String> {
        let Mm(start) = start.filter(|_| wants == Feature::Hole)?;
        let least = self.shop.crib().smallest_bar()?;
        (least > start).then(|| {
            let least = said(self.shown, least);
            format!("no boring bar of the crib goes into it: the smallest wants {least}")
        })
    }

    /// The passes to a feature, where they are wanted and there are any.
    pub(crate) fn planned(
        &self,
        part: &Part,
        feature: Feature,
        limits: Limits,
    ) -> Option<Box<PassFigures>> {
        let plan = || self.passes(part, feature, limits, Start::Open).ok().map(Box::new);
        self.plans.then(plan).flatten()
    }

    /// The reamer for a hole, or why there is none.
    pub(crate) fn reamed(&self, hole: Limits) -> (Option<Box<ReamFigures>>, Option<String>) {
        if !self.plans {
            return (None, None);
        }
        match Ream::of(hole) {
            Ok(ream) => (Some(Box::new(self.ream_figures(&ream))), None),
            Err(error) => (None, Some(error.to_string())),
        }
    }

    fn passes(
        &self,
        part: &Part,
        feature: Feature,
        limits: Limits,
        start: Start,
    ) -> Result<PassFigures, fits_core::Error> {
        let material = self.cut_of(part, feature, &mut Vec::new()).ok().flatten();
        let rules = self.cut_rules(material.map(|(_, family)| family));
        let unit = self.shown.unit();
        let found = self.shop.crib().plan(feature, limits, start, rules, unit)?;
        let (plan, first_drill) = (found.passes, found.first_drill);
        let list = plan.list.iter().map(|pass| PassFigure {
            name: pass.stage.name(),
            to_mm: Mm(pass.to),
            dial_mm: pass.takes.map(|takes| Mm(self.dialled(takes))),
            drill: first_drill
                .as_ref()
                .filter(|_| pass.stage == Stage::Drill)
                .map(|first| first.drill.name()),
        });
        Ok(PassFigures {
            passes: list.collect(),
            start_mm: plan.start.map(Mm),
            aim_mm: Mm(limits.middle()),
            least_chip_mm: Mm(rules.least_chip),
            drill_in_crib: first_drill
                .as_ref()
                .filter(|_| !self.shop.crib().is_empty())
                .map(|first| first.is_own),
            best_drill: first_drill.and_then(|first| first.rather).map(Drill::name),
        })
    }

    /// What cuts keep to: the dial, the least chip of the owner or the material,
    /// and what the boring bars of the crib go into.
    pub(crate) fn cut_rules(&self, family: Option<Family>) -> CutRules {
        let usual = CutRules::stepping(self.step());
        self.shop.crib().cut_rules(usual.with_least_chip(self.least_chip(family)))
    }

    /// The least cut that does not rub: as the owner set it, otherwise a sharp
    /// edge's in the material.
    fn least_chip(&self, family: Option<Family>) -> Length {
        self.kept.least_chip.unwrap_or_else(|| machining::least_chip(family, Edge::Sharp))
    }

    /// What the dial shows for a change of diameter.
    pub(crate) fn dialled(&self, change: Length) -> Length {
        self.dial.reads().dialled(change)
    }

    /// The dial's division, usually 0.01 mm or a thou, as a change of diameter.
    pub(crate) fn step(&self) -> Length {
        self.on_diameter(self.dial_division())
    }

    /// The dial's division as it stands on the dial.
    pub(crate) fn dial_division(&self) -> Length {
        match (self.kept.graduation, self.shown) {
            (Some(told), _) => told,
            (None, Units::Millimetres) => Length::from_tenth_nanometres(100_000),
            (None, Units::Inches) => Length::THOU,
        }
    }

    /// A dial's figure as a change of diameter.
    fn on_diameter(&self, dialled: Length) -> Length {
        // A division is far below the range of a length.
        self.dial.reads().on_diameter(dialled).unwrap_or(dialled)
    }

    /// What the advice of a log keeps to, as the owner has set it.
    pub(crate) fn advice(&self, family: Option<Family>) -> Settings {
        let usual = Settings::default();
        let kept = &self.kept;
        usual
            .risk(kept.risk.unwrap_or(usual.risk))
            .least_chip(self.least_chip(family))
            .dial_turn(kept.dial_turn.map(|turn| self.on_diameter(turn)))
            // A boring head has no top slide.
            .top_slide(kept.top_slide.filter(|_| kept.machine == Machine::Lathe))
    }
}

impl Session {
    fn ream_figures(&self, ream: &Ream) -> ReamFigures {
        let crib = self.shop.crib();
        let figure = |found: PreDrill| DrillFigures {
            name: found.drill.name(),
            mm: Mm(found.drill.diameter()),
            leaves_mm: Mm(found.leaves),
        };
        let found = crib.reaming(ream, self.cut_rules(None), self.shown.unit());
        let own_reamer =
            |reamer: Reamer| OwnReamer { size_mm: Mm(reamer.size), cuts_mm: reamer.cuts.map(Mm) };
        let crib = (!crib.is_empty()).then(|| {
            let reamers = found.reamers.iter().copied().map(own_reamer).collect();
            let nearest = found.nearest.map(own_reamer);
            let drill = found.own_drill.map(|(drill, leaves)| OwnDrillFigures {
                name: drill.name(),
                mm: Mm(drill.size),
                leaves_mm: Mm(leaves),
            });
            Box::new(CribReaming { reamers, nearest, drill })
        });
        ReamFigures {
            reamer_min_mm: Mm(ream.reamer.lower()),
            reamer_max_mm: Mm(ream.reamer.upper()),
            stock_min_mm: Mm(ream.stock.lower()),
            stock_max_mm: Mm(ream.stock.upper()),
            before_mm: Mm(ream.before()),
            bore_first: found.bore_to.map(|_| true),
            first_drill: found.first_drill.map(|first| first.drill.name()),
            drill: found.drill.map(figure),
            other_drill: found.other_drill.map(figure),
            crib,
            inch_reamers: InchReamer::for_hole(ream)
                .into_iter()
                .map(|reamer| ReamerFigures {
                    name: reamer.name,
                    min_mm: Mm(reamer.limits.lower()),
                    max_mm: Mm(reamer.limits.upper()),
                    source: reamer.source,
                    known: reamer.known,
                })
                .collect(),
        }
    }
}
