//! Getting there: reamers, boring and turning passes, what to dial.

use std::borrow::Cow;

use fits_core::{
    Length, Limits,
    job::{OwnDrill, Reamer},
    shop::{Hazard, InchReamer, Pass, Passes, PreDrill, Ream, Stage, Start, adviser::Settings},
    standards::{
        drills::{Drill, Series},
        iso286::Feature,
    },
};

use super::{
    Session,
    resolve::{One, from_core},
};
use crate::{
    answer::{
        Answer, CribReaming, DrillFigures, Mm, OwnDrillFigures, OwnReamer, PassFigure, PassFigures,
        PassesAnswer, ReamAnswer, ReamFigures, ReamerFigures,
    },
    problem::Problem,
    query::{Dial, Machine, Part, Spot, Units, Work},
};

impl Session {
    pub(super) fn work(
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
            return Err(Problem::new(
                format!("`{}` makes a {wants}, and this is a {}", work.value.word(), wants.mate()),
                work.at.clone(),
            )
            .fix(work.at.clone(), other.word()));
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
                from_core(&error, part.size.at.clone())
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
        let plan = self.passes(wants, feature.limits, start).map_err(|error| {
            let at = part.from.as_ref().map_or(part.size.at.clone(), |from| from.at.clone());
            from_core(&error, at).advise(match wants {
                Feature::Hole => "a bore starts smaller, as `bore 20 H7 from 19.6`",
                Feature::Shaft => "turning starts larger, as `turn 20 g6 from 22`",
            })
        })?;
        let notes = self.no_bar_for(wants, plan.start_mm).into_iter().collect();
        let caution = if wants == Feature::Hole { Hazard::OverhungBoring } else { Hazard::Turning };
        Ok(Answer::Passes(Box::new(PassesAnswer {
            work: work.value.word(),
            dial: self.dial,
            plan,
            feature: self.featured(feature),
            next: None,
            log: None,
            is_not_logged: false,
            notes,
            cautions: vec![caution.caution()],
        })))
    }

    /// Says so where the crib has boring bars and none goes into the bore.
    fn no_bar_for(&self, wants: Feature, start: Option<Mm>) -> Option<String> {
        let Mm(start) = start.filter(|_| wants == Feature::Hole)?;
        let least = self.shop.crib().bar.iter().map(|bar| bar.bore).min()?;
        (least > start).then(|| {
            let least = super::why::said(self.shown, least);
            format!("no boring bar of the crib goes into it: the smallest wants {least}")
        })
    }

    /// The reamer for a hole, or why there is none.
    pub(super) fn reamed(&self, hole: Limits) -> (Option<ReamFigures>, Option<String>) {
        match Ream::of(hole) {
            Ok(ream) => (Some(self.ream_figures(&ream)), None),
            Err(error) => (None, Some(error.to_string())),
        }
    }

    pub(super) fn passes(
        &self,
        feature: Feature,
        limits: Limits,
        start: Start,
    ) -> Result<PassFigures, fits_core::Error> {
        let own = self.drilled(feature, limits, start);
        let usual = if own.is_none() { self.usual_drill(feature, limits, start) } else { None };
        let begun = own.as_ref().map(|(own, _)| own.size).or(usual.map(Drill::diameter));
        let start = begun.map_or(start, Start::Drilled);
        let plan = Passes::plan(feature, limits, start, self.step())?;
        let is_drilled = plan.list.first().is_some_and(|pass| pass.stage == Stage::Drill);
        let settable = on_divisions(&plan, self.step());
        let list = plan.list.iter().zip(settable).map(|(pass, takes)| PassFigure {
            name: pass.stage.name(),
            to_mm: Mm(pass.to),
            dial_mm: takes.map(|takes| Mm(self.dialled(takes))),
            drill: match (pass.drill, &own) {
                (Some(drill), _) => Some(Cow::Borrowed(drill.name())),
                (None, Some(own)) if pass.stage == Stage::Drill => Some(Cow::Owned(own.0.name())),
                (None, None) if pass.stage == Stage::Drill => {
                    usual.map(|drill| Cow::Borrowed(drill.name()))
                }
                _ => None,
            },
        });
        Ok(PassFigures {
            passes: list.collect(),
            start_mm: plan.start.map(Mm),
            aim_mm: Mm(plan.aim),
            drill_in_crib: (is_drilled && !self.shop.crib().is_empty()).then_some(own.is_some()),
            rather_drill: own.and_then(|(_, rather)| rather).map(Drill::name),
        })
    }

    /// The drill of the asker's own system that a bore begins with, where the
    /// crib has none.
    fn usual_drill(&self, feature: Feature, limits: Limits, start: Start) -> Option<Drill> {
        if start != Start::Open || feature == Feature::Shaft {
            return None;
        }
        let range = Passes::drill_range(limits, self.step()).ok()?;
        // What few small shops go beyond: 1/2 in, or 12.5 mm.
        let (series, largest) = match self.shown {
            Units::Inches => (Series::Fraction, 127_000_000),
            Units::Millimetres => (Series::Metric, 125_000_000),
        };
        let largest = range.upper().min(Length::from_tenth_nanometres(largest));
        Drill::under(largest, &[series]).filter(|drill| drill.diameter() >= range.lower())
    }

    /// A bore that begins with a drill begins with one of the crib, where it
    /// has one that does; the one of all drills beside it, if that is another.
    fn drilled(
        &self,
        feature: Feature,
        limits: Limits,
        start: Start,
    ) -> Option<(OwnDrill, Option<Drill>)> {
        let crib = self.shop.crib();
        if start != Start::Open || feature == Feature::Shaft || crib.is_empty() {
            return None;
        }
        let range = Passes::drill_range(limits, self.step()).ok()?;
        let own = crib.drill_between(range.lower(), range.upper())?;
        let usual = Drill::under(range.upper(), &[Series::Metric, Series::Fraction]);
        let rather = usual.filter(|drill| drill.diameter() != own.size);
        Some((own, rather))
    }

    /// What the dial shows for a change of diameter.
    pub(super) fn dialled(&self, change: Length) -> Length {
        match self.dial {
            Dial::Diameter => change,
            Dial::Radius => change.half(),
        }
    }

    /// The dial's division, usually 0.01 mm or a thou, as a change of diameter.
    pub(super) fn step(&self) -> Length {
        self.on_diameter(self.dial_division())
    }

    /// The dial's division as it stands on the dial.
    pub(super) fn dial_division(&self) -> Length {
        match (self.kept.graduation, self.shown) {
            (Some(told), _) => told,
            (None, Units::Millimetres) => Length::from_tenth_nanometres(100_000),
            (None, Units::Inches) => Length::THOU,
        }
    }

    /// A dial's figure as a change of diameter.
    fn on_diameter(&self, dialled: Length) -> Length {
        Length::from_tenth_nanometres(match self.dial {
            Dial::Diameter => dialled.tenth_nanometres(),
            Dial::Radius => 2 * dialled.tenth_nanometres(),
        })
    }

    /// What the advice of a log keeps to, as the owner has set it.
    pub(super) fn advice(&self) -> Settings {
        let usual = Settings::default();
        let kept = &self.kept;
        usual
            .risk(kept.risk.unwrap_or(usual.risk))
            .least_chip(kept.least_chip.unwrap_or(usual.least_cut))
            .dial_turn(kept.dial_turn.map(|turn| self.on_diameter(turn)))
            // A boring head has no top slide.
            .top_slide(kept.top_slide.filter(|_| kept.machine == Machine::Lathe))
    }
}

impl Session {
    fn ream_figures(&self, ream: &Ream) -> ReamFigures {
        let crib = self.shop.crib();
        let figures = ream_figures(ream, self.shown);
        if crib.is_empty() {
            return figures;
        }
        let figure =
            |reamer: Reamer| OwnReamer { size_mm: Mm(reamer.size), cuts_mm: reamer.cuts.map(Mm) };
        let reamers: Vec<OwnReamer> =
            crib.reamers_for(ream).into_iter().map(|found| figure(found.reamer)).collect();
        let nearest =
            if reamers.is_empty() { crib.nearest_reamer(ream.hole).map(figure) } else { None };
        let drill = crib.pre_drill(ream).ok().flatten().map(|(drill, leaves)| OwnDrillFigures {
            name: drill.name(),
            mm: Mm(drill.size),
            leaves_mm: Mm(leaves),
        });
        ReamFigures { crib: Some(Box::new(CribReaming { reamers, nearest, drill })), ..figures }
    }
}

/// What each pass takes, in whole divisions of the dial: the nearest to what
/// is left to its size, but none that would end past the last limit, and none
/// of nothing.
fn on_divisions(plan: &Passes, step: Length) -> Vec<Option<Length>> {
    let division = step.tenth_nanometres().max(1);
    let metal = |from: Length, to: Length| match plan.feature {
        Feature::Hole => to.tenth_nanometres() - from.tenth_nanometres(),
        Feature::Shaft => from.tenth_nanometres() - to.tenth_nanometres(),
    };
    let last_limit = match plan.feature {
        Feature::Hole => plan.limits.upper(),
        Feature::Shaft => plan.limits.lower(),
    };
    let mut at = plan.start;
    let dial = |pass: &Pass| {
        let from = at.replace(pass.to);
        let takes = pass.takes.filter(|takes| *takes != Length::ZERO);
        let (Some(from), Some(takes)) = (from, takes) else { return pass.takes };
        let wanted = metal(from, pass.to);
        let fewest = wanted.div_euclid(division);
        let nearest = fewest + i64::from(2 * wanted.rem_euclid(division) > division);
        let most = metal(from, last_limit).div_euclid(division);
        let count = nearest.min(most);
        if count <= 0 {
            return Some(takes);
        }
        let dialled = Length::from_tenth_nanometres(count * division);
        at = match plan.feature {
            Feature::Hole => from.checked_add(dialled).ok(),
            Feature::Shaft => from.checked_sub(dialled).ok(),
        };
        Some(dialled)
    };
    plan.list.iter().map(dial).collect()
}

fn ream_figures(ream: &Ream, units: Units) -> ReamFigures {
    let figure = |found: PreDrill| DrillFigures {
        name: found.drill.name(),
        mm: Mm(found.drill.diameter()),
        leaves_mm: Mm(found.leaves),
    };
    // The drawer's own system first.
    let (first, second) = match units {
        Units::Millimetres => (ream.metric, ream.fraction),
        Units::Inches => (ream.fraction, ream.metric),
    };
    ReamFigures {
        reamer_min_mm: Mm(ream.reamer.lower()),
        reamer_max_mm: Mm(ream.reamer.upper()),
        stock_min_mm: Mm(ream.stock.lower()),
        stock_max_mm: Mm(ream.stock.upper()),
        before_mm: Mm(ream.before()),
        drill: first.or(second).map(figure),
        other_drill: first.and(second).map(figure),
        crib: None,
        inch_reamers: InchReamer::for_hole(ream)
            .into_iter()
            .map(|reamer| ReamerFigures {
                name: reamer.name,
                min_mm: Mm(reamer.limits.lower()),
                max_mm: Mm(reamer.limits.upper()),
            })
            .collect(),
    }
}
