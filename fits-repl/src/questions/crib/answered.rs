//! The crib: shown, added to, taken from.

use fits_core::{
    Length,
    job::{Crib, DrillSeries, DrillSet, OwnDrill},
    size::{Decimals, Rounding, Unit},
    standards::drills::{Drill, Series},
};
use toml_edit::Value;

use crate::{
    answer::{Answer, CribAnswer, Mm, OwnDrillFigures},
    problem::Problem,
    query::{CribQuery, Expression, FigureText, MaterialFigure, Size, Spot, ToolText, Units},
    questions::{joint::answered::tidy, part::mates},
    session::Session,
};

/// Keys and values of an entry.
type Fields = Vec<(&'static str, Value)>;

/// A reamer that is sound cuts no farther from its marked size: 0.1 mm, 4 thou
/// (common practice, no source).
const REAMED_OFF: Length = Length::from_tenth_nanometres(1_000_000);

impl Session {
    /// The units that a tool's size is typed in.
    pub(crate) fn crib_in(&self, asked: &CribQuery) -> Units {
        let CribQuery::Add(tool) = asked else { return self.units };
        match &tool.value {
            ToolText::Drill(size)
            | ToolText::Pin(size)
            | ToolText::Reamer { size, .. }
            | ToolText::Bar { bore: size, .. }
            | ToolText::Instrument { repeat: size, .. }
            | ToolText::DrillSet { range: Some((size, _)), .. } => {
                mates::thought_in(size, self.units)
            }
            _ => self.units,
        }
    }

    /// The nearest drills of the crib under and over a size, where there is a
    /// crib with drills.
    pub(crate) fn own_drills_about(&self, size: Length) -> Option<Vec<OwnDrillFigures>> {
        let (under, over) = self.shop.crib().drills_about(size);
        let figure = |drill: OwnDrill| OwnDrillFigures {
            name: drill.name(),
            mm: Mm(drill.size),
            leaves_mm: Mm(drill.size.checked_sub(size).unwrap_or(Length::ZERO)),
        };
        let near: Vec<_> = under.into_iter().chain(over).map(figure).collect();
        (!near.is_empty()).then_some(near)
    }

    pub(crate) fn crib(&mut self, asked: &CribQuery) -> Result<Answer, Problem> {
        match asked {
            CribQuery::Show => Ok(self.crib_answer(None)),
            CribQuery::Add(tool) => self.add_tool(tool),
            CribQuery::Remove(number) => self.remove_tool(number),
        }
    }

    fn crib_answer(&self, changed: Option<String>) -> Answer {
        let crib = self.shop.crib();
        let list = listed(crib)
            .into_iter()
            .zip(1..)
            .map(|((_, _, text), number)| format!("{number:>3}  {text}"))
            .collect();
        let mut notes = Vec::new();
        if crib.is_empty() {
            notes.push("the crib is empty: standard sets are used".to_owned());
        }
        Answer::Crib(Box::new(CribAnswer {
            file: self.shop.crib.path(),
            changed,
            list,
            crib: crib.clone(),
            notes,
        }))
    }

    fn remove_tool(&mut self, number: &Spot<usize>) -> Result<Answer, Problem> {
        let list = listed(self.shop.crib());
        let Some((kind, at, text)) = number.value.checked_sub(1).and_then(|at| list.get(at)) else {
            return Err(Problem::new(
                format!("the crib has no number {}", number.value),
                number.at.clone(),
            )
            .advise("`crib` shows the numbers"));
        };
        let changed = format!("taken out: {text}");
        self.shop.crib.remove(kind, *at).map_err(|error| failed(&error, number.at.clone()))?;
        Ok(self.crib_answer(Some(changed)))
    }

    fn add_tool(&mut self, tool: &Spot<ToolText>) -> Result<Answer, Problem> {
        let (kind, fields) = self.fields(tool)?;
        self.shop.crib.add(kind, fields).map_err(|error| failed(&error, tool.at.clone()))?;
        let list = listed(self.shop.crib());
        let last = list.iter().rev().find(|(listed, ..)| *listed == kind);
        let changed = last.map(|(_, _, text)| format!("added: {text}"));
        Ok(self.crib_answer(changed))
    }

    /// An entry of the file, from what was typed.
    fn fields(&self, tool: &Spot<ToolText>) -> Result<(&'static str, Fields), Problem> {
        let size = |size: &Size| -> Result<Value, Problem> { Ok(self.text(self.tool_size(size)?)) };
        let mut fields = Vec::new();
        let kind = match &tool.value {
            ToolText::Drill(typed) => {
                fields.push(("size", size(typed)?));
                // 12.7 mm is a metric drill, too.
                let fraction = Drill::over(self.tool_size(typed)?, &[Series::Fraction])
                    .filter(|_| self.shown == Units::Inches)
                    .filter(|drill| Ok(drill.diameter()) == self.tool_size(typed));
                match (&typed.value, fraction) {
                    (Expression::Gauge(name), _) => fields.push(("called", name.as_str().into())),
                    (_, Some(drill)) => fields.push(("called", drill.name().into())),
                    _ => {}
                }
                "drill"
            }
            ToolText::DrillSet { series, range, step } => {
                fields.extend(self.set_fields(series, range.as_ref(), step.as_ref(), tool)?);
                "drills"
            }
            ToolText::Reamer { size: typed, cuts } => {
                fields.push(("size", size(typed)?));
                if let Some(cuts) = cuts {
                    let (marked, tried) = (self.tool_size(typed)?, self.tool_size(cuts)?);
                    let off = marked.checked_sub(tried).and_then(Length::checked_abs);
                    if off.is_ok_and(|off| off > REAMED_OFF) {
                        return Err(Problem::new(
                            "a reamer cuts near its marked size",
                            cuts.at.clone(),
                        )
                        .advise("give what the hole measured, with its unit"));
                    }
                    fields.push(("cuts", self.text(tried)));
                }
                "reamer"
            }
            ToolText::Tap(thread) => {
                fields.push(("thread", thread.value.as_str().into()));
                "tap"
            }
            ToolText::Pin(typed) => {
                fields.push(("size", size(typed)?));
                "pin"
            }
            ToolText::Bar { bore, reach } => {
                fields.push(("bore", size(bore)?));
                if let Some(reach) = reach {
                    fields.push(("reach", size(reach)?));
                }
                "bar"
            }
            ToolText::Instrument { name, repeat, bias } => {
                if self.shop.crib().instrument.iter().any(|own| own.name == name.value) {
                    return Err(Problem::new("the crib has one of that name", name.at.clone())
                        .advise("take it out first, by the number that `crib` shows"));
                }
                fields.push(("name", name.value.as_str().into()));
                fields.push(("repeat", size(repeat)?));
                if let Some(bias) = bias {
                    fields.push(("bias", self.text(self.nominal(bias)?)));
                }
                "instrument"
            }
            ToolText::Material { name, figures } => {
                fields.push(("name", name.value.as_str().into()));
                for figure in figures {
                    fields.push(self.material_figure(figure)?);
                }
                "material"
            }
        };
        Ok((kind, fields))
    }

    /// A figure of a material as the file has it, read as a joint's is.
    fn material_figure(&self, figure: &MaterialFigure) -> Result<(&'static str, Value), Problem> {
        let (number, end) = match &figure.read {
            FigureText::Ratio(ratio) => {
                let (top, bottom) = ratio.value.ratio();
                #[allow(clippy::cast_precision_loss, reason = "a ratio has few digits")]
                let number = top as f64 / bottom as f64;
                (number, ratio.at.end)
            }
            // A bare modulus would be taken for MPa, and nobody means that.
            FigureText::Amount(amount)
                if figure.name.value == "modulus" && amount.value.unit.is_none() =>
            {
                let unit = if self.shown == Units::Inches { "Mpsi" } else { "GPa" };
                return Err(Problem::new("a modulus needs its unit", amount.at.clone())
                    .advise("GPa or Mpsi")
                    .fix(amount.at.end..amount.at.end, unit));
            }
            FigureText::Amount(amount) => (self.amount(amount)?, amount.at.end),
        };
        let (key, number) = match figure.name.value.as_str() {
            "modulus" => ("modulus_gpa", tidy(number / 1e9)),
            "poisson" => ("poisson", number),
            "expansion" => ("expansion_um_per_m_k", tidy(number)),
            _ => ("yield_mpa", tidy(number / 1e6)),
        };
        let likely = match key {
            "modulus_gpa" => 0.01..=1000.0,
            "poisson" => 0.0..=0.5,
            "expansion_um_per_m_k" => 0.1..=400.0,
            _ => 0.1..=4000.0,
        };
        if !likely.contains(&number) {
            return Err(Problem::new(
                format!("no material has such a figure for its {}", figure.name.value),
                figure.name.at.start..end,
            )
            .advise("steel: modulus 206 GPa, poisson 0.3, expansion 11.5, yield 250 MPa"));
        }
        Ok((key, number.into()))
    }

    fn set_fields(
        &self,
        series: &Spot<String>,
        range: Option<&(Size, Size)>,
        step: Option<&Size>,
        tool: &Spot<ToolText>,
    ) -> Result<Fields, Problem> {
        let named = |wanted: &DrillSeries| {
            wanted.name() == series.value || format!("{}s", wanted.name()) == series.value
        };
        let Some(found) = DrillSeries::ALL.into_iter().find(named) else {
            return Err(Problem::new(
                format!("there is no drill set `{}`", series.value),
                series.at.clone(),
            )
            .advise("metric, fraction, number or letter")
            .fix(series.at.clone(), "metric"));
        };
        if let (DrillSeries::Number | DrillSeries::Letter, Some(step)) = (found, step) {
            return Err(Problem::new(
                format!("{} drills have no step", found.name()),
                step.at.clone(),
            )
            .advise("as in `crib add drill set number 1..60`"));
        }
        let sized = |typed: Option<&Size>| {
            typed.map(|typed| self.tool_size(&in_series(found, typed))).transpose()
        };
        let [mut from, mut to] =
            [sized(range.map(|ends| &ends.0))?, sized(range.map(|ends| &ends.1))?];
        // The higher the number, the smaller the drill.
        if matches!(found, DrillSeries::Number | DrillSeries::Letter) && from > to {
            (from, to) = (to, from);
        }
        let set = DrillSet { series: found, from, to, step: sized(step)? };
        if set.drills().is_empty() {
            return Err(Problem::new("that set has no drill in it", tool.at.clone())
                .advise("as in `crib add drill set metric 1mm..13mm step 0.5mm`"));
        }
        let mut fields = vec![("set", Value::from(found.name()))];
        for (key, size) in [("from", set.from), ("to", set.to), ("step", set.step)] {
            fields.extend(size.map(|size| (key, self.text(size))));
        }
        Ok(fields)
    }

    /// A size that a tool can have.
    fn tool_size(&self, size: &Size) -> Result<Length, Problem> {
        let length = self.nominal(size)?;
        let greatest = Length::MILLIMETRE.checked_mul(1000);
        if !length.is_positive() || greatest.is_ok_and(|greatest| length > greatest) {
            return Err(Problem::new(format!("no tool measures {length}"), size.at.clone())
                .advise("as in `crib add reamer 20mm cuts 20.012mm`"));
        }
        Ok(length)
    }

    /// A size as the file has it: in the units it was typed in, exactly.
    fn text(&self, size: Length) -> Value {
        let inch = size.shown(Decimals { unit: Unit::Inch, places: 9 }, Rounding::Nearest);
        let inch = inch.to_string();
        let short = format!("{} in", inch.trim_end_matches('0').trim_end_matches('.'));
        let is_exact = short.parse::<Length>().is_ok_and(|read| read == size);
        let text = if self.shown == Units::Inches && is_exact { short } else { size.to_string() };
        text.into()
    }
}

fn failed(error: &std::io::Error, at: std::ops::Range<usize>) -> Problem {
    Problem::new(format!("the crib is as it was: {error}"), at)
        .advise("mend that, then type it again")
        .failure()
}

/// Every tool in the order of its numbers: its kind, its place in that kind,
/// and its words.
fn listed(crib: &Crib) -> Vec<(&'static str, usize, String)> {
    // A tool in the units it is sold in.
    let said = |size: Length| {
        let is_inch = size.tenth_nanometres() % Length::TENTH.tenth_nanometres() == 0;
        crate::questions::why::answered::said(
            if is_inch { Units::Inches } else { Units::Millimetres },
            size,
        )
    };
    let mut list: Vec<(&'static str, usize, String)> = Vec::new();
    let mut put = |kind: &'static str, words: Vec<String>| {
        list.extend(words.into_iter().enumerate().map(|(at, words)| (kind, at, words)));
    };
    let drill = |drill: &OwnDrill| {
        let is_gauge = drill.called.as_deref().and_then(Drill::named).is_some();
        let size = if is_gauge { format!(", {}", said(drill.size)) } else { String::new() };
        format!("drill {}{size}", drill.name())
    };
    put("drill", crib.drill.iter().map(drill).collect());
    let set = |set: &DrillSet| {
        // Parts of an inch are not whole tenths.
        let in_step = |step: Length| match set.series {
            DrillSeries::Fraction => crate::questions::why::answered::said(Units::Inches, step),
            _ => said(step),
        };
        let named = |size: Length| {
            let own = set.drills().into_iter().find(|own| own.size == size);
            own.and_then(|own| own.called).unwrap_or_else(|| said(size))
        };
        let range = match (set.from, set.to) {
            // As they stand on the stand: #1 first.
            (Some(from), Some(to)) if set.series == DrillSeries::Number => {
                format!(" {} to {}", named(to), named(from))
            }
            (Some(from), Some(to)) => format!(" {} to {}", named(from), named(to)),
            _ => String::new(),
        };
        let step = set.step.map_or(String::new(), |step| format!(" by {}", in_step(step)));
        format!("drill set {}{range}{step}: {} drills", set.series.name(), set.drills().len())
    };
    put("drills", crib.drills.iter().map(set).collect());
    let reamers = crib.reamer.iter().map(|reamer| match reamer.cuts {
        Some(cuts) => format!("reamer {}, cuts {}", said(reamer.size), said(cuts)),
        None => format!("reamer {}, not tried", said(reamer.size)),
    });
    put("reamer", reamers.collect());
    put("tap", crib.tap.iter().map(|tap| format!("tap {}", tap.thread)).collect());
    put("pin", crib.pin.iter().map(|pin| format!("gauge pin {}", said(pin.size))).collect());
    let bars = crib.bar.iter().map(|bar| {
        let reach = bar.reach.map_or(String::new(), |reach| format!(", reaches {}", said(reach)));
        format!("boring bar for {} and more{reach}", said(bar.bore))
    });
    put("bar", bars.collect());
    let instruments = crib.instrument.iter().map(|own| {
        let bias = own.bias.map_or(String::new(), |bias| format!(", bias {}", said(bias)));
        format!("{}: repeats to {}{bias}", own.name, said(own.repeat))
    });
    put("instrument", instruments.collect());
    let materials = crib.material.iter().map(|own| {
        let figures = [
            own.modulus_gpa.map(|value| format!("{value} GPa")),
            own.poisson.map(|value| format!("poisson {value}")),
            own.expansion_um_per_m_k.map(|value| format!("{value} um/mK")),
            own.yield_mpa.map(|value| format!("yields at {value} MPa")),
        ];
        let figures: Vec<String> = figures.into_iter().flatten().collect();
        format!("material {}: {}", own.name, figures.join(", "))
    });
    put("material", materials.collect());
    list
}

/// A bare figure of a set is of the set's own kind: a fraction of an inch, a
/// drill's number.
fn in_series(series: DrillSeries, typed: &Size) -> Size {
    let Expression::Number(number, None) = &typed.value else { return typed.clone() };
    let value = match (series, number.ratio()) {
        (DrillSeries::Fraction, _) => Expression::Number(*number, Some(Unit::Inch)),
        (DrillSeries::Number, (whole, 1)) => Expression::Gauge(format!("#{whole}")),
        _ => return typed.clone(),
    };
    Spot { value, at: typed.at.clone() }
}
