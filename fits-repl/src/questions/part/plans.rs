//! Getting there: reamers, boring and turning passes, what to dial.

use std::ops::Range;

use fits_core::{
    Length, Limits,
    job::{OwnDrill, Reamer},
    shop::{
        CutRules, InchReamer, Passes, PreDrill, Ream, Stage, Start,
        adviser::Settings,
        machining::{self, Edge},
    },
    standards::{
        drills::{Drill, Series},
        iso286::Feature,
        materials::Family,
    },
};

use crate::{
    answer::{
        Answer, CribReaming, DrillFigures, Mm, OwnDrillFigures, OwnReamer, PassFigure, PassFigures,
        PassesAnswer, ReamAnswer, ReamFigures, ReamerFigures,
    },
    problem::Problem,
    query::{Dial, Machine, Part, Spot, Units, Work},
    questions::{
        part::resolve::One,
        rehearse::answered::{overhang, work_cautions},
        why::answered::said,
    },
    session::Session,
};

/// The drill that a bore begins with.
struct Begins {
    drill: OwnDrill,
    is_own: bool,
    /// The one that would leave less to bore, where the crib has another.
    rather: Option<Drill>,
}

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
        let least = self.shop.crib().bar.iter().map(|bar| bar.bore).min()?;
        (least > start).then(|| {
            let least = said(self.shown, least);
            format!("no boring bar of the crib goes into it: the smallest wants {least}")
        })
    }

    /// The reamer for a hole, or why there is none.
    pub(crate) fn reamed(&self, hole: Limits) -> (Option<ReamFigures>, Option<String>) {
        match Ream::of(hole) {
            Ok(ream) => (Some(self.ream_figures(&ream)), None),
            Err(error) => (None, Some(error.to_string())),
        }
    }

    pub(crate) fn passes(
        &self,
        part: &Part,
        feature: Feature,
        limits: Limits,
        start: Start,
    ) -> Result<PassFigures, fits_core::Error> {
        let material = self.cut_of(part, feature, &mut Vec::new()).ok().flatten();
        let mut rules = self.cut_rules(material.map(|(_, family)| family));
        if matches!(start, Start::From(_)) {
            // A note says where the crib's bars do not go in.
            rules.smallest_bore = rules.smallest_bore.min(CutRules::SMALLEST_BORE);
        }
        let begins = match (feature, start) {
            (Feature::Hole, Start::Open) => self.begins(limits, &rules),
            _ => None,
        };
        let start = begins.as_ref().map_or(start, |begins| Start::Drilled(begins.drill.size));
        let plan = Passes::plan(feature, limits, start, &rules)?;
        let list = plan.list.iter().map(|pass| PassFigure {
            name: pass.stage.name(),
            to_mm: Mm(pass.to),
            dial_mm: pass.takes.map(|takes| Mm(self.dialled(takes))),
            drill: begins
                .as_ref()
                .filter(|_| pass.stage == Stage::Drill)
                .map(|begins| begins.drill.name()),
        });
        Ok(PassFigures {
            passes: list.collect(),
            start_mm: plan.start.map(Mm),
            aim_mm: Mm(limits.middle()),
            least_chip_mm: Mm(rules.least_chip),
            drill_in_crib: begins
                .as_ref()
                .filter(|_| !self.shop.crib().is_empty())
                .map(|begins| begins.is_own),
            rather_drill: begins.and_then(|begins| begins.rather).map(Drill::name),
        })
    }

    /// What cuts keep to: the dial, the least chip of the owner or the material,
    /// and what the boring bars of the crib go into.
    pub(crate) fn cut_rules(&self, family: Option<Family>) -> CutRules {
        let usual = CutRules::stepping(self.step());
        let bars = self.shop.crib().bar.iter().map(|bar| bar.bore);
        CutRules {
            least_chip: self.least_chip(family),
            smallest_bore: bars.min().unwrap_or(usual.smallest_bore),
            ..usual
        }
    }

    /// The least cut that does not rub: as the owner set it, otherwise a sharp
    /// edge's in the material.
    fn least_chip(&self, family: Option<Family>) -> Length {
        self.kept.least_chip.unwrap_or_else(|| machining::least_chip(family, Edge::Sharp))
    }

    /// The drill that a bore begins with: one of the crib, where it has one in
    /// reach, otherwise one of the asker's own system.
    fn begins(&self, limits: Limits, rules: &CutRules) -> Option<Begins> {
        let range = Passes::drill_range(limits, rules).ok()?;
        let series = match self.shown {
            Units::Inches => Series::Fraction,
            Units::Millimetres => Series::Metric,
        };
        let usual = Drill::under(range.upper().min(self.largest_drill()), &[series])
            .filter(|drill| drill.diameter() >= range.lower());
        match self.shop.crib().drill_between(range.lower(), range.upper()) {
            Some(drill) => {
                let rather = usual.filter(|usual| usual.diameter() > drill.size);
                Some(Begins { drill, is_own: true, rather })
            }
            None => {
                usual.filter(|drill| drill.diameter() <= self.usual_largest_drill()).map(|drill| {
                    let called = Some(drill.name().to_owned());
                    let drill = OwnDrill { size: drill.diameter(), called };
                    Begins { drill, is_own: false, rather: None }
                })
            }
        }
    }

    /// No larger drill is asked for: what few small shops go beyond, or the
    /// largest of the crib.
    fn largest_drill(&self) -> Length {
        let own = self.shop.crib().drills().last().map(|drill| drill.size);
        let usual = self.usual_largest_drill();
        own.unwrap_or(usual).max(usual)
    }

    /// Few small shops own a larger drill: 1/2 in or 12.5 mm (common practice,
    /// no source).
    const fn usual_largest_drill(&self) -> Length {
        Length::from_tenth_nanometres(match self.shown {
            Units::Inches => 127_000_000,
            Units::Millimetres => 125_000_000,
        })
    }

    /// What the dial shows for a change of diameter.
    pub(crate) fn dialled(&self, change: Length) -> Length {
        match self.dial {
            Dial::Diameter => change,
            Dial::Radius => change.half(),
        }
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
        Length::from_tenth_nanometres(match self.dial {
            Dial::Diameter => dialled.tenth_nanometres(),
            Dial::Radius => 2 * dialled.tenth_nanometres(),
        })
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
        let largest = self.largest_drill();
        let figure = |found: PreDrill| DrillFigures {
            name: found.drill.name(),
            mm: Mm(found.drill.diameter()),
            leaves_mm: Mm(found.leaves),
        };
        // Drills of the asker's own system: a number or letter drill where the
        // fraction leaves too much.
        let (drill, other) = match self.shown {
            Units::Millimetres => (ream.metric, None),
            Units::Inches => {
                let fits = ream.fraction.is_some_and(|it| it.leaves <= ream.stock.upper());
                let nearer =
                    |it: &PreDrill| ream.fraction.is_none_or(|first| it.leaves < first.leaves);
                (ream.fraction, ream.number.filter(|it| !fits && nearer(it)))
            }
        };
        let owned = |found: &PreDrill| found.drill.diameter() <= largest;
        let (drill, other) = (drill.filter(owned), other.filter(owned));
        let own = crib.pre_drill(ream).ok().flatten();
        let rules = self.cut_rules(None);
        let is_bored = drill.or(other).is_none() && own.is_none();
        let bored = (is_bored && ream.before() >= rules.smallest_bore)
            .then(|| Limits::new(ream.before(), ream.before()).ok())
            .flatten();
        let first_drill = bored.and_then(|before| self.begins(before, &rules));
        let own_reamer =
            |reamer: Reamer| OwnReamer { size_mm: Mm(reamer.size), cuts_mm: reamer.cuts.map(Mm) };
        let crib = (!crib.is_empty()).then(|| {
            let reamers: Vec<OwnReamer> =
                crib.reamers_for(ream).into_iter().map(|found| own_reamer(found.reamer)).collect();
            let nearest = if reamers.is_empty() {
                crib.nearest_reamer(ream.hole).map(own_reamer)
            } else {
                None
            };
            let drill = own.map(|(drill, leaves)| OwnDrillFigures {
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
            bore_first: bored.is_some().then_some(true),
            first_drill: first_drill.map(|begins| begins.drill.name()),
            drill: drill.or(other).map(figure),
            other_drill: drill.and(other).map(figure),
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
