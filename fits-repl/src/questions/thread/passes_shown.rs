//! The passes of a thread, in words.

use crate::{
    answer::{ThreadPassFigures, ThreadPassesAnswer},
    query::Dial,
    render::text::{LINES, Style, Text, lines::wrapped},
};
use fits_core::{
    Length,
    size::{Rounding, Unit},
    source::Known,
};
use std::fmt::Write as _;

/// Name, depth, dial and dial of each pass; spring passes in one.
fn pass_cells(passes: &[ThreadPassFigures], units: [Unit; 2]) -> Vec<[String; 4]> {
    let is_spring = |pass: &&ThreadPassFigures| pass.name == "spring";
    let mut cells: Vec<[String; 4]> = Vec::new();
    for pass in passes.iter().filter(|pass| !is_spring(pass)) {
        let [one, other] = units.map(|unit| Text::dial_size(pass.dial_mm.0, unit));
        cells.push([pass.name.clone(), Text::dial_size(pass.depth_mm.0, units[0]), one, other]);
    }
    let springs: Vec<_> = passes.iter().filter(is_spring).collect();
    if let Some(spring) = springs.last() {
        let times = match springs.len() {
            1 => String::new(),
            2 => ", twice".to_owned(),
            count => format!(", {count} times"),
        };
        cells.push([
            spring.name.clone(),
            Text::dial_size(spring.depth_mm.0, units[0]),
            format!("leave it{times}"),
            String::new(),
        ]);
    }
    cells
}

/// The passes one a line, else two, else four with the first dial only.
fn laid_out(cells: &[[String; 4]], room: usize, slide: &str) -> (String, Vec<String>) {
    let lines = |written: Vec<String>, across: usize, width: usize| {
        let down = written.len().div_ceil(across);
        let line = |at: usize| {
            let row = written.iter().skip(at).step_by(down.max(1));
            row.fold("  ".to_owned(), |line, cell| format!("{line}{cell:<width$}"))
        };
        (0..down).map(line).collect::<Vec<_>>()
    };
    let write = |cell: &[String; 4], [name_width, depth_width, dial_width]: [usize; 3]| {
        let [name, depth, one, other] = cell;
        format!("{name:<name_width$}{depth:<depth_width$}{one:<dial_width$}{other}")
    };
    let every = |widths| cells.iter().map(|cell| write(cell, widths)).collect::<Vec<_>>();
    if cells.len() <= room {
        let heads = format!("  {:<9}{:<22}{slide}", "pass", "depth so far");
        (heads, lines(every([9, 22, 14]), 1, 0))
    } else if cells.len().div_ceil(2) <= room {
        let heads = format!("  pass   depth so far; {slide}");
        (heads, lines(every([7, 10, 10]), 2, 39))
    } else {
        // A column has room for `twice`, not for the whole of it.
        let brief = |[name, _, one, _]: &[String; 4]| {
            format!("{name:<8}{}", one.trim_start_matches("leave it, "))
        };
        let heads = format!("  pass    {slide}");
        (heads, lines(cells.iter().map(brief).collect(), 4, 19))
    }
}

impl Text {
    pub(crate) fn thread_passes(&self, out: &mut String, answer: &ThreadPassesAnswer) {
        self.thread_name(out, &answer.name);
        let outside = answer.side == "external";
        let (work, toward) =
            if outside { ("blank", Rounding::Up) } else { ("bore", Rounding::Down) };
        self.aim_line(out, "CUT", work, answer.blank.aim_mm.0, toward);
        if let Some([one, other]) =
            self.spread(Some(answer.blank.min_mm), Some(answer.blank.max_mm))
        {
            let _ = writeln!(out, "  {:<14}{one:<28}{other}", "within");
        }
        let [first, second] = self.units();
        let (tip, size) = match answer.nose_radius_mm {
            Some(radius) => ("nose radius", radius.0),
            None => ("flat", answer.flat_mm.0),
        };
        let depth = self.difference(answer.depth_mm.0);
        let _ = writeln!(out, "  depth {depth}, tool {tip} {}", self.difference(size));
        let slide = match answer.compound_deg {
            Some(angle) => format!("compound at {angle} deg reads"),
            None if answer.dial == Dial::Diameter => "cross slide (diameter) reads".to_owned(),
            None => "cross slide (radius) reads".to_owned(),
        };
        // The tail and the passes must leave the headline in sight.
        let tail = self.pass_tail(answer);
        // What comes from memory takes up to two lines more.
        let mark = if answer.name.known.is_unconfirmed() { 2 } else { 0 };
        let room = LINES.saturating_sub(out.lines().count() + 1 + tail.lines().count() + mark);
        let cells = pass_cells(&answer.passes, [first, second]);
        let (heads, rows) = laid_out(&cells, room, &slide);
        let _ = writeln!(out, "{}", self.style(Style::Faint, &heads));
        for row in rows {
            let _ = writeln!(out, "{}", row.trim_end());
        }
        out.push_str(&tail);
    }

    /// A dial figure: 0.001 mm, 0.0001 in.
    fn dial_size(size: Length, unit: Unit) -> String {
        Self::target(size, unit, Rounding::Nearest)
    }

    fn pass_tail(&self, answer: &ThreadPassesAnswer) -> String {
        let mut out = String::new();
        let [first, _] = self.units();
        let size = |size: Length| Self::target(size, first, Rounding::Nearest);
        let chamfer = format!("chamfer the start 45 degrees to {}", size(answer.chamfer_to_mm.0));
        let left = answer.name.hand == "left";
        let relief = answer.relief;
        let (diameter, width) = (size(relief.groove_diameter_mm.0), size(relief.groove_width_mm.0));
        // Inside, the table gives the groove's width, not its least.
        let least = if answer.side == "external" { "at least " } else { "" };
        let by_rule = if relief.known == Known::Practice { " by rule" } else { "" };
        let groove = format!("relief groove{by_rule} to {diameter} diameter, {least}{width} wide");
        let end = if left {
            ": cut away from the chuck the thread starts in it".to_owned()
        } else {
            format!("; without one the run-out takes {}", size(relief.run_out_mm.0))
        };
        wrapped(&mut out, "  ", &format!("{chamfer}; {groove}{end}"));
        let wrapped_try = format!("try it with {}", answer.try_with);
        wrapped(&mut out, "  ", &wrapped_try);
        Self::notes(&mut out, &answer.name, &answer.notes);
        Self::cautions(&mut out, &answer.cautions);
        out
    }
}
