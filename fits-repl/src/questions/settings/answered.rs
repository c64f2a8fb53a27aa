//! The settings: units, dials, instrument, material.

use std::sync::Arc;

use fits_core::{Length, standards::iso286::Feature};
use schemars::JsonSchema;
use serde::Serialize;

use crate::{
    answer::{Answer, Mm, OtherMachine},
    problem::Problem,
    query::{Dial, Machine, Size, Spot, Units},
    questions::{settings::asked::Setting, why::answered::said},
    session::Session,
};

/// The settings in force.
#[derive(Clone, Copy, Debug, PartialEq, Eq, JsonSchema, Serialize)]
#[expect(clippy::exhaustive_structs, reason = "what changes how figures are shown is these two")]
pub struct SettingsAnswer {
    /// What bare numbers are.
    pub units: Units,
    /// How the dials read.
    pub dial: Dial,
}

impl Session {
    /// Sets it, where a new value is given, and says what is in force.
    pub(crate) fn set(&mut self, setting: &Setting) -> Result<Answer, Problem> {
        match setting {
            Setting::Units(units) => {
                self.units = units.unwrap_or(self.units);
                self.units_chosen |= units.is_some();
                self.shown = self.units;
                Ok(self.in_force(units.is_some().then_some("units")))
            }
            Setting::Dial(dial) => {
                self.dial = dial.unwrap_or(self.dial);
                Ok(self.in_force(dial.is_some().then_some("dial")))
            }
            Setting::Graduation(size) => self.set_graduation(size),
            Setting::DialTurn(size) => self.set_turn(size),
            Setting::LeastChip(size) => self.set_least_chip(size),
            Setting::TopSlide(size) => self.set_top_slide(size.as_ref()),
            Setting::Machine(name) => self.set_machine(name.clone()),
            Setting::Risk(typed) => self.set_risk(typed.clone()),
            Setting::Instrument(name) => self.set_instrument(name.clone()),
            Setting::Material(name) => self.set_material(name.clone()),
        }
    }

    /// The settings in force; one of them was just set and is remembered.
    pub(crate) fn in_force(&self, set: Option<&str>) -> Answer {
        let on_head = self.kept.machine == Machine::BoringHead;
        let note = set.zip(self.shop.settings.as_ref()).map(|(key, file)| {
            let value = |key: &str| match key {
                "units" => Some(if self.units == Units::Inches { "in" } else { "mm" }.to_owned()),
                "dial" => Some(self.dial.word().to_owned()),
                "graduation" => self.kept.graduation.map(|length| length.to_string()),
                "dial_turn" => self.kept.dial_turn.map(|length| length.to_string()),
                "least_chip" => self.kept.least_chip.map(|length| length.to_string()),
                "risk" => self.kept.risk.map(|risk| risk.to_string()),
                "top_slide" => self.kept.top_slide.map(|length| length.to_string()),
                "machine" => Some(self.kept.machine.word().to_owned()),
                "instrument_bores" => self.kept.instrument[0].clone(),
                "instrument_shafts" => self.kept.instrument[1].clone(),
                _ => self.kept.material.clone(),
            };
            let keys: &[&str] = match key {
                "instrument" => &["instrument_bores", "instrument_shafts"],
                _ => &[key],
            };
            let kept = keys.iter().try_for_each(|key| {
                // Each machine has dials of its own.
                let is_dial = matches!(*key, "dial" | "graduation" | "dial_turn");
                let name =
                    if is_dial && on_head { format!("boring_head_{key}") } else { (*key).into() };
                file.keep(&name, value(key).as_deref())
            });
            match kept {
                Ok(()) => "remembered".to_owned(),
                Err(error) => format!("not remembered: {error}"),
            }
        });
        Answer::Settings(Box::new(InForce {
            settings: self.settings(),
            graduation_mm: self.kept.graduation.map(Mm),
            dial_turn_mm: self.kept.dial_turn.map(Mm),
            least_chip_mm: self.kept.least_chip.map(Mm),
            risk: self.kept.risk,
            machine: self.kept.machine,
            other_machine: OtherMachine {
                machine: if on_head { Machine::Lathe } else { Machine::BoringHead },
                dial: self.kept.other.dial.unwrap_or(Dial::Diameter),
                graduation_mm: self.kept.other.graduation.map(Mm),
                dial_turn_mm: self.kept.other.dial_turn.map(Mm),
            },
            top_slide_mm: self.kept.top_slide.map(Mm),
            instrument: self.kept.instrument.iter().flatten().next().cloned(),
            instrument_bores: self.kept.instrument[0].clone(),
            instrument_shafts: self.kept.instrument[1].clone(),
            material: self.kept.material.clone(),
            note,
        }))
    }

    pub(crate) fn set_graduation(&mut self, size: &Size) -> Result<Answer, Problem> {
        let division = self.nominal(size)?;
        if !(Length::MICROMETRE..=Length::MILLIMETRE).contains(&division) {
            return Err(Problem::new("no dial is divided so", size.at.clone())
                .advise("as in `dial graduation 0.02mm` or `dial graduation 0.001in`"));
        }
        if let Some(turn) = self.kept.dial_turn.filter(|turn| *turn < division) {
            let turn = said(self.shown, turn);
            return Err(Problem::new(
                format!("a turn of the dial is {turn}, which is smaller"),
                size.at.clone(),
            )
            .advise("set the turn first, as `dial turn 2mm` or `dial turn 0.1in`"));
        }
        Arc::make_mut(&mut self.kept).graduation = Some(division);
        Ok(self.in_force(Some("graduation")))
    }

    pub(crate) fn set_turn(&mut self, size: &Size) -> Result<Answer, Problem> {
        let turn = self.nominal(size)?;
        let division = self.dial_division();
        if turn < division || turn > Length::INCH {
            let message = if turn < division {
                format!(
                    "a turn of the dial is at least one division, {}",
                    said(self.shown, division)
                )
            } else {
                "no dial turns so far".to_owned()
            };
            return Err(Problem::new(message, size.at.clone())
                .advise("as the dial shows it, `dial turn 2mm` or `dial turn 0.1in`"));
        }
        Arc::make_mut(&mut self.kept).dial_turn = Some(turn);
        Ok(self.in_force(Some("dial_turn")))
    }

    pub(crate) fn set_least_chip(&mut self, size: &Size) -> Result<Answer, Problem> {
        let least = self.nominal(size)?;
        if !(Length::MICROMETRE..=Length::MILLIMETRE).contains(&least) {
            return Err(Problem::new("no tool rubs at such a cut", size.at.clone())
                .advise("on the diameter, as `least chip 0.02mm` or `least chip 0.001in`"));
        }
        Arc::make_mut(&mut self.kept).least_chip = Some(least);
        Ok(self.in_force(Some("least_chip")))
    }

    /// The divisions of the lathe's top slide; nothing where it has none.
    pub(crate) fn set_top_slide(&mut self, size: Option<&Size>) -> Result<Answer, Problem> {
        let division = size.map(|size| self.nominal(size)).transpose()?;
        if let (Some(size), Some(division)) = (size, division)
            && !(Length::MICROMETRE..=Length::MILLIMETRE).contains(&division)
        {
            return Err(Problem::new("no top slide is divided so", size.at.clone())
                .advise("its travel, as `top slide 0.02mm` or `top slide 0.001in`"));
        }
        Arc::make_mut(&mut self.kept).top_slide = division;
        Ok(self.in_force(Some("top_slide")))
    }

    pub(crate) fn set_machine(&mut self, name: Option<Spot<String>>) -> Result<Answer, Problem> {
        let Some(name) = name else { return Ok(self.in_force(None)) };
        let Some(machine) = Machine::named(&name.value.to_lowercase()) else {
            return Err(Problem::new(format!("no machine is called {}", name.value), name.at)
                .advise("`machine lathe` or `machine boring head`"));
        };
        self.work_on(machine);
        Ok(self.in_force(Some("machine")))
    }

    /// The chance of overshooting that a cut may have: a word, a percentage or
    /// a number from 0 to 1. The words are common practice, no source.
    pub(crate) fn set_risk(&mut self, typed: Option<Spot<String>>) -> Result<Answer, Problem> {
        let Some(typed) = typed else { return Ok(self.in_force(None)) };
        let text = typed.value.to_lowercase();
        let percentage = text.strip_suffix('%').or_else(|| text.strip_suffix("percent"));
        let number = percentage.unwrap_or(&text).trim().parse::<f64>().ok();
        let risk = match (text.as_str(), number, percentage) {
            ("careful", ..) => Some(0.01),
            ("usual", ..) => None,
            ("bold", ..) => Some(0.1),
            (_, Some(number), Some(_)) => Some(number / 100.0),
            (_, Some(number), None) => Some(number),
            (_, None, _) => {
                return Err(Problem::new("this is not a chance of overshooting", typed.at)
                    .advise("`risk careful`, `risk usual`, `risk bold`, or as `risk 5%`"));
            }
        };
        if risk.is_some_and(|risk| !(risk > 0.0 && risk < 1.0)) {
            let problem = Problem::new("a risk lies between 0 and 1", typed.at.clone());
            return Err(
                match number.filter(|it| percentage.is_none() && *it > 0.0 && *it < 100.0) {
                    Some(_) => problem
                        .advise("if a percentage was meant")
                        .fix(typed.at.end..typed.at.end, "%"),
                    None => {
                        problem.advise("how many of a hundred cuts may overshoot, as `risk 5%`")
                    }
                },
            );
        }
        Arc::make_mut(&mut self.kept).risk = risk;
        Ok(self.in_force(Some("risk")))
    }

    pub(crate) fn set_instrument(&mut self, name: Option<Spot<String>>) -> Result<Answer, Problem> {
        let Some(name) = name else { return Ok(self.in_force(None)) };
        let mut name = name;
        let mut only = None;
        for (words, kind) in [
            ("for bores", Feature::Hole),
            ("for holes", Feature::Hole),
            ("for shafts", Feature::Shaft),
        ] {
            let typed = name.value.to_lowercase();
            if let Some(rest) = typed.strip_prefix(words) {
                let from = name.value.len() - rest.trim_start().len();
                name.value.drain(..from);
                name.at.start += from;
                only = Some(kind);
            }
        }
        let found = self.instrument_named(&name)?;
        let measures = |kind| match self.listed_kinds(&found) {
            Some(listed) => listed.measures(kind),
            None => true,
        };
        if let Some(kind) = only.filter(|kind| !measures(*kind)) {
            return Err(Problem::new(format!("a {found} measures no {kind}"), name.at)
                .advise("as in `instrument for bores telescoping gauge`"));
        }
        let kinds = [Feature::Hole, Feature::Shaft]
            .map(|kind| measures(kind) && only.is_none_or(|only| only == kind));
        let kept = Arc::make_mut(&mut self.kept);
        for (place, is_set) in kept.instrument.iter_mut().zip(kinds) {
            if is_set {
                *place = Some(found.clone());
            }
        }
        Ok(self.in_force(Some("instrument")))
    }

    pub(crate) fn set_material(&mut self, name: Option<Spot<String>>) -> Result<Answer, Problem> {
        let Some(name) = name else { return Ok(self.in_force(None)) };
        let (found, _) = self.material_kind(&name)?;
        Arc::make_mut(&mut self.kept).material = Some(found);
        Ok(self.in_force(Some("material")))
    }
}

/// The settings in force.
#[derive(Clone, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
pub struct InForce {
    /// Units and dial.
    #[serde(flatten)]
    pub settings: SettingsAnswer,
    /// The division of the dials.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub graduation_mm: Option<Mm>,
    /// What a whole turn of them reads.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub dial_turn_mm: Option<Mm>,
    /// The least that the tools cut rather than rub, on the diameter.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub least_chip_mm: Option<Mm>,
    /// The chance of overshooting that a cut may have, where it was set.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub risk: Option<f64>,
    /// The machine whose dials these are.
    pub machine: Machine,
    /// The dials of the other one.
    pub other_machine: OtherMachine,
    /// What the lathe's top slide is divided in, where it has one.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub top_slide_mm: Option<Mm>,
    /// The instrument of bores, or of shafts where those have none.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub instrument: Option<String>,
    /// What bores are measured with.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub instrument_bores: Option<String>,
    /// What shafts are measured with.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub instrument_shafts: Option<String>,
    /// What the work is made of.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub material: Option<String>,
    /// They are remembered, or why not.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub note: Option<String>,
}
