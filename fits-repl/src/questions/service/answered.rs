//! A service and its size, answered.

use fits_core::{
    Limits,
    shop::service::{Asked, Printed, PrintedGrip},
    source::{Known, Reason},
};
use serde::Serialize;

use crate::{
    answer::Mm,
    problem::Problem,
    questions::{
        part::resolve::from_core,
        service::asked::{KINDS, ServiceOf, example},
    },
    session::Session,
    words::said::{Said, Value},
};

/// The clearance of a service.
#[derive(Clone, Debug, Serialize, schemars::JsonSchema)]
pub struct RunsAnswer {
    /// What it is.
    pub service: &'static str,
    /// Which kind of it.
    pub kind: &'static str,
    /// The size that both share.
    pub size_mm: Mm,
    /// What the inner part is made of, where it was said.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub inner: Option<String>,
    /// What the outer part is made of, where it was said.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub outer: Option<String>,
    /// How hot it works, where it was said.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub at_c: Option<f64>,
    /// The clearance to machine at 20 °C, at the least.
    pub clearance_min_mm: Mm,
    /// And at the most.
    pub clearance_max_mm: Mm,
    /// The inner part in a hole of the size, at the least.
    pub inner_min_mm: Mm,
    /// And at the most.
    pub inner_max_mm: Mm,
    /// The hole about an inner part of the size, at the least.
    pub hole_min_mm: Mm,
    /// And at the most.
    pub hole_max_mm: Mm,
    /// What the rule for the service and the pair says by itself, at the least.
    pub rule_min_mm: Mm,
    /// And at the most.
    pub rule_max_mm: Mm,
    /// What is left when both are hot, at the least.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub hot_min_mm: Option<Mm>,
    /// And at the most.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub hot_max_mm: Option<Mm>,
    /// What is left when the inner one is hot and the outer one still cold, at the least.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub starting_min_mm: Option<Mm>,
    /// And at the most.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub starting_max_mm: Option<Mm>,
    /// The size is outside those that the source speaks of.
    pub beyond_source: bool,
    /// What is to be known of it.
    pub note: &'static str,
    /// How it is known.
    pub known: Known,
    /// Why.
    #[serde(skip)]
    pub reasons: Vec<Reason>,
}

/// A printed hole for a pin.
#[derive(Clone, Debug, Serialize, schemars::JsonSchema)]
pub struct PrintedAnswer {
    /// The plastic.
    pub material: &'static str,
    /// The pin.
    pub pin_mm: Mm,
    /// `slip` or `press`.
    pub grip: PrintedGrip,
    /// The hole to draw, at the least.
    pub draw_min_mm: Mm,
    /// And at the most.
    pub draw_max_mm: Mm,
    /// How much a hole commonly comes out small.
    pub comes_out_small_mm: Mm,
    /// Hole less pin as it commonly comes out, at the least; below 0 it grips.
    pub left_min_mm: Mm,
    /// And at the most.
    pub left_max_mm: Mm,
    /// Above this it creeps.
    pub creeps_above_c: f64,
    /// What is to be known of it.
    pub note: &'static str,
    /// How it is known.
    pub known: Known,
    /// Why.
    #[serde(skip)]
    pub reason: Reason,
}

impl Session {
    /// The clearance of a service.
    pub(crate) fn runs(&self, of: &ServiceOf) -> Result<RunsAnswer, Problem> {
        let (said, example) = (&of.said, example(of.service));
        let Some(typed) = said.sizes.first() else {
            return Err(Problem::new("the size is missing", said.end..said.end).advise(example));
        };
        let size = self.nominal(typed)?;
        let said_kinds: Vec<_> = KINDS.iter().filter(|(word, _)| said.has(word)).collect();
        let kind = match said_kinds[..] {
            [] => "plain",
            [(_, kind)] => kind,
            _ => {
                let both = said_kinds.iter().filter_map(|(word, _)| said.all(word).next());
                let last = both.max_by_key(|clause| clause.at.start);
                let at = last.map_or(of.at.clone(), |clause| clause.at.clone());
                return Err(Problem::new("say one kind, not two", at).advise(example));
            }
        };
        if let [_, extra, ..] = &said.words[..] {
            return Err(
                Problem::new("this is not understood here", extra.at.clone()).advise(example)
            );
        }
        if let Some(clause) = said.all("in").find(|clause| matches!(clause.value, Value::Nothing)) {
            return Err(Problem::new("what it runs in is missing after `in`", clause.at.clone())
                .advise(example));
        }
        let inner = said.words.first().map(|name| self.material_named(name)).transpose()?;
        let outer = said.name("in").map(|name| self.material_named(name)).transpose()?;
        let celsius = said.amount("at").map(|heat| self.amount(heat)).transpose()?;
        let mut asked = Asked::new(of.service, kind, size);
        (asked.inner, asked.outer) = (inner.as_deref(), outer.as_deref());
        asked.celsius = celsius;
        let failed = |error: fits_core::Error| {
            let at = said.all(kind).next().map_or(typed.at.clone(), |clause| clause.at.clone());
            let advice = format!("{}; {example}", error.advice());
            from_core(&error, at).advise(advice)
        };
        let runs = asked.runs().map_err(failed)?;
        let (least, most) = (runs.clearance.lower(), runs.clearance.upper());
        let below = |by| size.checked_sub(by).map_err(failed);
        let above = |by| size.checked_add(by).map_err(failed);
        if !below(most)?.is_positive() {
            return Err(Problem::new("the clearance is more than the size", typed.at.clone())
                .advise(example));
        }
        let ends = |limits: Option<Limits>| {
            (limits.map(|it| Mm(it.lower())), limits.map(|it| Mm(it.upper())))
        };
        let ((hot_min_mm, hot_max_mm), (starting_min_mm, starting_max_mm)) =
            (ends(runs.hot), ends(runs.starting));
        Ok(RunsAnswer {
            service: of.service,
            kind,
            size_mm: Mm(size),
            inner: inner.map(|it| it.name().to_owned()),
            outer: outer.map(|it| it.name().to_owned()),
            at_c: celsius,
            clearance_min_mm: Mm(least),
            clearance_max_mm: Mm(most),
            inner_min_mm: Mm(below(most)?),
            inner_max_mm: Mm(below(least)?),
            hole_min_mm: Mm(above(least)?),
            hole_max_mm: Mm(above(most)?),
            rule_min_mm: Mm(runs.rule.lower()),
            rule_max_mm: Mm(runs.rule.upper()),
            hot_min_mm,
            hot_max_mm,
            starting_min_mm,
            starting_max_mm,
            beyond_source: runs.is_beyond,
            note: runs.note,
            known: runs.known,
            reasons: runs.reasons,
        })
    }

    /// A printed hole for a pin.
    pub(crate) fn printed(&self, said: &Said) -> Result<PrintedAnswer, Problem> {
        let example = example("printed");
        let Some(typed) = said.sizes.first() else {
            return Err(
                Problem::new("the pin's size is missing", said.end..said.end).advise(example)
            );
        };
        if let Some(clause) = said.clauses.first() {
            return Err(Problem::new(
                format!("`{}` does not go with a printed part", clause.word),
                clause.at.clone(),
            )
            .advise("no heat on a printed part: press it cold, or use a slip fit"));
        }
        let mut material = None;
        let mut grip = None;
        for word in &said.words {
            // `petg` and `slip` may stand in one phrase: `petg press`.
            for one in word.value.split(' ') {
                let found = match one {
                    "slip" | "sliding" | "slides" | "running" | "turns" => Some(PrintedGrip::Slip),
                    "press" | "pressed" | "tight" => Some(PrintedGrip::Press),
                    _ => None,
                };
                if let Some(found) = found {
                    if grip.is_some_and(|other| other != found) {
                        return Err(Problem::new("slip or press is said both", word.at.clone())
                            .advise(example));
                    }
                    grip = Some(found);
                } else {
                    let found = Printed::named(one).map_err(|error| {
                        let advice = format!("{}; {example}", error.advice());
                        from_core(&error, word.at.clone()).advise(advice)
                    })?;
                    if material.is_some() {
                        return Err(
                            Problem::new("two plastics are said", word.at.clone()).advise(example)
                        );
                    }
                    material = Some(found);
                }
            }
        }
        let missing = |what: &str| Problem::new(what, said.end..said.end).advise(example);
        let material =
            material.ok_or_else(|| missing("the plastic is not said: PLA, PETG or ABS"))?;
        let grip = grip.ok_or_else(|| missing("slip or press is not said"))?;
        let pin = self.nominal(typed)?;
        if !pin.is_positive() {
            return Err(Problem::new("a pin's size is above 0", typed.at.clone()).advise(example));
        }
        let failed = |error: fits_core::Error| from_core(&error, typed.at.clone());
        let (drawn, left) =
            (material.drawn(pin, grip).map_err(failed)?, material.left(pin, grip).map_err(failed)?);
        Ok(PrintedAnswer {
            material: material.name(),
            pin_mm: Mm(pin),
            grip,
            draw_min_mm: Mm(drawn.lower()),
            draw_max_mm: Mm(drawn.upper()),
            comes_out_small_mm: Mm(material.comes_out_small()),
            left_min_mm: Mm(left.lower()),
            left_max_mm: Mm(left.upper()),
            creeps_above_c: material.creeps_above_c(),
            note: material.note(),
            known: drawn.known(),
            reason: material.reason(),
        })
    }
}
