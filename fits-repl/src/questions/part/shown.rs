//! A feature or a pair, in words.

use std::fmt::Write as _;

use fits_core::{
    Basis, Kind, Limits,
    shop::Verdict,
    size::{Decimals, Rounding, Unit},
    standards::iso286::Feature,
};

use crate::{
    answer::{DrillFigures, FeatureAnswer, FitAnswer, PassFigures, PassesAnswer, ReamFigures},
    query::Dial,
    questions::part::plan_shape::PlanShape,
    render::text::{Style, Text, lines::wrapped},
};

/// What stands before a zone of the picture: the class where there is room.
pub(crate) fn zone_name(feature: &FeatureAnswer) -> String {
    let kind = feature.kind.map_or("size", Feature::word);
    let named = format!("{kind} {}", feature.class);
    if named.len() < 12 { named } else { kind.to_owned() }
}

impl Text {
    pub(crate) fn headline(&self, out: &mut String, feature: &FeatureAnswer) {
        let lead = if feature.mic_yours.is_some() { "IN HAND" } else { "CUT" };
        self.cut_line(out, lead, feature.kind.map_or("size", Feature::word), feature);
        self.limits_line(out, feature.class, feature.limits);
    }

    /// A name and its limits in both units; a long name on a line of its own.
    pub(crate) fn limits_line(&self, out: &mut String, name: &str, limits: Limits) {
        let [one, other] = self.units().map(|unit| Self::range(limits, unit));
        if name.chars().count() <= 13 {
            let _ = writeln!(out, "  {name:<13} {one:<28}{other}");
        } else {
            let _ = writeln!(out, "  {name}\n  {:<13} {one:<28}{other}", "");
        }
    }

    pub(crate) fn cut_line(
        &self,
        out: &mut String,
        lead: &str,
        name: &str,
        feature: &FeatureAnswer,
    ) {
        let [first, second] = self.units();
        let aim = format!("{:<14}", Self::aim(feature, first));
        let _ = writeln!(
            out,
            "{lead:<7} {name:<8}{}{}",
            self.style(Style::Strong, &aim),
            Self::aim(feature, second)
        );
    }

    pub(crate) fn feature(&self, out: &mut String, feature: &FeatureAnswer) {
        self.headline(out, feature);
        if feature.mic_yours.is_some() {
            wrapped(out, "  ", feature.source);
            for note in &feature.notes {
                wrapped(out, "  ", note);
            }
        } else {
            Self::held(out, feature);
        }
        if feature.kind == Some(Feature::Hole) {
            self.ream(out, feature.ream.as_deref(), feature.not_reamed.as_ref());
            self.pins(out, feature);
        }
        if feature.kind.is_none() {
            let _ = writeln!(out, "  say `hole` or `shaft` before the size for tools and passes");
        }
        if let Some(plan) = &feature.bore {
            self.plan(out, "bore", plan, feature);
        }
        if let Some(plan) = &feature.turn {
            self.plan(out, "turn", plan, feature);
        }
        Self::cautions(out, &feature.cautions);
        let zone = (zone_name(feature), feature.limits, None);
        Self::zones(out, feature.nominal_mm.0, &[zone]);
    }

    pub(crate) fn fit(&self, out: &mut String, fit: &FitAnswer) {
        let [first, second] = self.units();
        let measured = fit.measured.as_ref();
        let size_in_hand = |part: &FeatureAnswer| match measured {
            Some(measured) if Some(measured.part) == part.kind => Some(measured.size_mm.0),
            _ if part.lower_mm == part.upper_mm => Some(part.lower_mm.0),
            _ => None,
        };
        let have = |part: &FeatureAnswer| {
            size_in_hand(part).is_some() || (fit.in_hand.is_some() && fit.in_hand == part.kind)
        };
        for part in [&fit.hole, &fit.shaft] {
            let name = part.kind.map_or("", Feature::word);
            let Some(size) = size_in_hand(part) else {
                let lead = if have(part) { "IN HAND" } else { "CUT" };
                self.cut_line(out, lead, name, part);
                continue;
            };
            let verdict = match measured {
                Some(measured) if measured.verdict != Verdict::Good => {
                    let side = if measured.verdict == Verdict::Over { "past" } else { "short of" };
                    format!("   ({side} its own limits)")
                }
                _ => String::new(),
            };
            let (one, other) = (Self::size(size, first), Self::size(size, second));
            let _ = writeln!(out, "IN HAND {name:<8}{one:<14}{other}{verdict}");
        }
        for part in [&fit.hole, &fit.shaft] {
            if part.lower_mm == part.upper_mm {
                continue;
            }
            let name = format!("{:<5} {}", part.kind.map_or("", Feature::word), part.class);
            self.limits_line(out, &name, part.limits);
        }
        self.how_it_fits(out, fit);
        if let Some(held) = &fit.held_to {
            let to = if held.agrees {
                format!("it is a {} fit", held.word)
            } else {
                format!("NOT a {} fit: nearest to a {} fit", held.word, held.nearest)
            };
            let range = Limits::new(held.min_mm.0, held.max_mm.0);
            let range = range.map_or(String::new(), |range| {
                let [low, high] = [range.lower(), range.upper()].map(|end| self.play(end));
                format!(" (a {} fit has {low} to {high})", held.word)
            });
            wrapped(out, "  ", &format!("{to}{range}"));
        }
        let could_be = [fit.fit_words.join(", "), fit.fit_classes.join(", ")];
        let could_be: Vec<&str> =
            could_be.iter().map(String::as_str).filter(|all| !all.is_empty()).collect();
        if !could_be.is_empty() {
            wrapped(out, "  it could be: ", &could_be.join("; "));
        }
        for note in &fit.notes {
            wrapped(out, "  ", note);
        }
        self.ream(out, fit.ream.as_deref(), fit.not_reamed.as_ref());
        self.pins(out, &fit.hole);
        if let Some(plan) = &fit.bore {
            self.plan(out, "bore", plan, &fit.hole);
        }
        // A word's own lines take the room of these.
        for part in [&fit.hole, &fit.shaft] {
            if !have(part) && fit.choice.is_none() {
                Self::held(out, part);
            }
        }
        Self::cautions(out, &fit.cautions);
        let zone = |part: &FeatureAnswer| (zone_name(part), part.limits, size_in_hand(part));
        Self::zones(out, fit.nominal_mm.0, &[zone(&fit.hole), zone(&fit.shaft)]);
    }

    /// The kind of fit, its range, and the word that chose it.
    pub(crate) fn how_it_fits(&self, out: &mut String, fit: &FitAnswer) {
        let basis = match fit.basis {
            Basis::Hole => ", hole-basis",
            Basis::Shaft => ", shaft-basis",
            Basis::Both => ", hole- and shaft-basis",
            Basis::Neither => "",
        };
        let clearance = &fit.clearance;
        let (low, high) = (clearance.min_mm.0, clearance.max_mm.0);
        if low == high {
            // Two parts as they measure.
            let fits = if low == fits_core::Length::ZERO {
                "line to line: neither clearance nor interference".to_owned()
            } else {
                format!("{} fit: {}", fit.kind.word(), self.play(low))
            };
            let _ = writeln!(out, "  {fits}");
            return;
        }
        let _ = writeln!(out, "  {} fit{basis}", fit.kind.word());
        let lines = match fit.kind {
            Kind::Clearance => [("least", low), ("greatest", high)],
            Kind::Interference => [("least", high), ("greatest", low)],
            Kind::Transition => [("loosest", high), ("tightest", low)],
        };
        for (name, length) in lines {
            let _ = writeln!(out, "    {name:<12}{}", self.play(length));
        }
        let is_cut = fit.measured.is_none() && fit.in_hand.is_none();
        let at_aims = if is_cut {
            self.play_at_aims(&fit.hole, &fit.shaft)
        } else {
            self.play(clearance.aim_mm.0)
        };
        let _ = writeln!(out, "    cut so      {at_aims}");
        if let Some(chance) = &fit.chance_of_clearance {
            let (even, normal) = (chance.spread_evenly * 100.0, chance.centred * 100.0);
            let _ = writeln!(
                out,
                "    chance of clearance {even:.0} % (sizes spread evenly), {normal:.0} % (centred)"
            );
        }
        let Some(choice) = &fit.choice else { return };
        let changed = choice.changed_by.map_or(String::new(), |why| format!(" ({why})"));
        wrapped(
            out,
            "  ",
            &format!("{} is {}{changed}: {}", choice.word, choice.class, choice.reason),
        );
        let neighbours: Vec<String> = [("looser", &choice.looser), ("tighter", &choice.tighter)]
            .into_iter()
            .filter_map(|(way, found)| {
                found.as_ref().map(|found| format!("{way}: {} {}", found.word, found.class))
            })
            .collect();
        if !neighbours.is_empty() {
            wrapped(out, "  ", &neighbours.join("; "));
        }
        if choice.work_it_out {
            let what = if fit.kind == Kind::Clearance {
                "heat growth and close-in first"
            } else {
                "pressure and stress before it is pressed"
            };
            let _ = writeln!(out, "  a starting point: work out {what}");
        }
    }

    pub(crate) fn ream(
        &self,
        out: &mut String,
        ream: Option<&ReamFigures>,
        not_reamed: Option<&String>,
    ) {
        if let Some(why) = not_reamed {
            wrapped(out, "  ream  ", &format!("no: {why}"));
        }
        let Some(ream) = ream else { return };
        let Ok(limits) = Limits::new(ream.reamer_min_mm.0, ream.reamer_max_mm.0) else {
            return;
        };
        let [first, second] = self.units();
        let (one, other) = (Self::range(limits, first), Self::range(limits, second));
        let _ = writeln!(out, "  ream  with {one:<25}{other}");
        if let Some(crib) = &ream.crib {
            self.own_reamers(out, ream, crib);
        }
        if let Some(reamer) = ream.inch_reamers.first().filter(|_| first == Unit::Inch)
            && let Ok(new) = Limits::new(reamer.min_mm.0, reamer.max_mm.0)
        {
            // In the hole's limits, and yet not in what the rule asks of a reamer.
            let off = match (new.lower() < limits.lower(), new.upper() > limits.upper()) {
                (false, false) => "",
                (true, _) => "; below what is asked above: the hole comes out near its least",
                (_, true) => "; above what is asked above: no room to cut over",
            };
            let said = format!(
                "off the shelf: {}, new {} unconfirmed; mic yours{off}",
                reamer.name,
                Self::range(new, Unit::Inch)
            );
            wrapped(out, "        ", &said);
        }
        let own = ream.crib.as_ref().and_then(|crib| crib.drill.as_ref());
        if let Some(drill) = &ream.drill {
            let leaves = |drill: &DrillFigures| {
                let leaves = drill.leaves_mm.0;
                if leaves > ream.stock_max_mm.0 {
                    let usual = self.one_difference(ream.stock_max_mm.0);
                    format!("{} (usual to {usual})", self.one_difference(leaves))
                } else {
                    self.difference(leaves)
                }
            };
            let other = ream.other_drill.as_ref().map_or(String::new(), |other| {
                format!("; or {}, leaves {}", other.name, self.one_difference(other.leaves_mm.0))
            });
            let words = format!("drill {}, leaves {}{other}", drill.name, leaves(drill));
            wrapped(out, "        ", &words);
        } else if own.is_none() {
            let to = ream.before_mm.0;
            let [one, other] = [first, second].map(|unit| {
                let places = if unit == Unit::Inch { 3 } else { 2 };
                let shown = to.shown(Decimals { unit, places }, Rounding::Nearest);
                format!("{shown} {}", unit.symbol())
            });
            let drill =
                ream.first_drill.as_ref().map_or(String::new(), |it| format!("drill {it}, "));
            let words = if ream.bore_first == Some(true) {
                format!("{drill}bore to {one} ({other}), then ream")
            } else {
                format!(
                    "it needs a drill of about {one} ({other}): no usual one leaves the right stock"
                )
            };
            wrapped(out, "        ", &words);
        }
    }

    /// Passes in short, for an answer about something else.
    pub(crate) fn plan(
        &self,
        out: &mut String,
        work: &str,
        plan: &PassFigures,
        feature: &FeatureAnswer,
    ) {
        let [unit, _] = self.units();
        let shape = PlanShape::of(plan, unit, feature);
        let mut words: Vec<String> = Vec::new();
        for run in plan.passes.chunk_by(|one, next| one.name == next.name) {
            let [.., last] = run else { continue };
            let to = shape.size(last.to_mm.0);
            let deepest = run.iter().filter_map(|pass| Some(pass.dial_mm?.0)).max();
            words.push(match (last.name, &last.drill, deepest) {
                ("drill", Some(drill), _) => format!("drill {drill}"),
                ("spring", ..) => "spring".to_owned(),
                (name, _, Some(deepest)) if run.len() > 1 => {
                    let most = shape.cut(deepest);
                    format!("{} {name} of at most {most}, to {to}", run.len())
                }
                (name, ..) => format!("{name} {to}"),
            });
        }
        let drill = Self::whose_drill(plan);
        if let (Some(first), false) = (words.first_mut(), drill.is_empty()) {
            let _ = write!(first, " ({drill})");
        }
        wrapped(out, &format!("  {work:<6}"), &words.join(" > "));
    }

    pub(crate) fn passes(&self, out: &mut String, answer: &PassesAnswer) {
        self.headline(out, &answer.feature);
        let is_logged = self.first_step(out, answer);
        if !is_logged {
            self.plan_table(out, answer);
        }
        let drill = Self::whose_drill(&answer.plan);
        if !drill.is_empty() {
            wrapped(out, "  drill: ", &drill);
        }
        if !is_logged {
            let _ = writeln!(
                out,
                "  measure after the semi-finish and the spring pass, then judge the reading"
            );
        }
        self.pins(out, &answer.feature);
        Self::plan_log(out, answer);
        Self::cautions(out, &answer.cautions);
    }

    /// Every pass of a plan, with what to dial by rule.
    pub(crate) fn plan_table(&self, out: &mut String, answer: &PassesAnswer) {
        let dial = match answer.dial {
            Dial::Diameter => "dial (reads diameter)",
            Dial::Radius => "dial (reads radius)",
        };
        let shapes = self.units().map(|unit| PlanShape::of(&answer.plan, unit, &answer.feature));
        if let Some(start) = &answer.plan.start_mm {
            let [one, other] = shapes.map(|shape| shape.size(start.0));
            let _ = writeln!(out, "  start       {one:<16}{other}");
        }
        let _ = writeln!(
            out,
            "{}",
            self.style(Style::Faint, &format!("  {:<12}{:<32}{dial}", "pass", "to"))
        );
        let mut at = answer.plan.start_mm;
        // Equal roughing cuts stand in one row.
        for run in answer.plan.passes.chunk_by(|one, next| {
            one.name == "rough" && next.name == "rough" && one.dial_mm == next.dial_mm
        }) {
            let [.., last] = run else { continue };
            let before = at.replace(last.to_mm);
            let dialled = match (last.dial_mm, last.name, &last.drill, before) {
                (_, _, Some(drill), _) => drill.clone(),
                (_, "spring", ..) => "leave it; then measure".to_owned(),
                (Some(dial), _, _, Some(before)) => {
                    let each =
                        shapes.map(|it| it.each(before.0, last.to_mm.0, run.len(), answer.dial));
                    match (each, run.len()) {
                        ([Some(one), Some(other)], 1) => format!("{one}  {other}"),
                        ([Some(one), _], 1) => one,
                        ([Some(one), _], _) => format!("{one} each"),
                        // A dial of the other system: no round figure here.
                        _ => format!("about {} each", shapes[0].cut(dial.0)),
                    }
                }
                _ => "from what it measures now".to_owned(),
            };
            let name = match run.len() {
                1 => last.name.to_owned(),
                count => format!("{count} {}", last.name),
            };
            let [one, other] = shapes.map(|shape| shape.size(last.to_mm.0));
            let _ = writeln!(out, "  {name:<12}{one:<16}{other:<16}{dialled}");
        }
    }

    pub(crate) fn held(out: &mut String, feature: &FeatureAnswer) {
        let (Some(grade), Some(kind)) = (feature.grade, feature.kind) else {
            return;
        };
        // The first two are what a small shop reaches for.
        let few: Vec<&str> = feature.processes.names().take(2).collect();
        let how = if few.is_empty() {
            "no common shop process holds it".to_owned()
        } else {
            few.join(", ")
        };
        wrapped(out, &format!("  {kind} {grade}: "), &how);
    }
}
