//! The pass log as a shop note with a small picture.

use std::fmt::Write as _;

use fits_core::{
    Length, Limits,
    job::LogState,
    shop::adviser::Because,
    size::{Rounding, Unit},
    standards::iso286::Feature,
};

use crate::{
    answer::{EntryFigures, EntryPlace, LogsAnswer, Mm, NextFigures, PassLogAnswer, PassesAnswer},
    query::{Dial, Units},
    questions::part::plan_shape::PlanShape,
    render::text::{Style, Text, lines::wrapped},
};

/// Entries that a note shows: the last ones.
const SHOWN: usize = 8;
/// Logs that a list shows.
const LISTED: usize = 18;
/// Columns of a log's name in the list, at most.
const NAME: usize = 45;
/// What a tool takes more or less than it is set to, at most, as a part of it;
/// more is a slip of dial or reading. Common practice, no source.
const MOST_OF_A_TOOL: f64 = 0.25;
/// Columns of the picture, tolerances across it, and those before the limits.
const WIDTH: i64 = 36;
const ACROSS: i64 = 9;
const METAL: i64 = 6;

impl Text {
    pub(crate) fn pass_log(&self, out: &mut String, log: &PassLogAnswer) {
        let step = log.step_mm.0;
        if let Some(story) = &log.story {
            wrapped(out, "", &format!("probably {}", story.says));
            wrapped(out, "  ", story.check);
        }
        self.advice(out, log);
        if let Some(form) = &log.form {
            wrapped(out, "  ", &form.says);
            if !form.to_do.is_empty() {
                wrapped(out, "  ", &form.to_do);
            }
        }
        if let Some(remark) =
            log.remark.filter(|remark| remark.share_over_dial.abs() > MOST_OF_A_TOOL)
        {
            let less = if remark.share_over_dial < 0.0 { "less" } else { "more" };
            wrapped(
                out,
                "  ",
                &format!(
                    "the passes took far {less} than was dialled: no tool does that. Read it \
                     again, and check the dial (a whole turn, backlash, radius or diameter) and \
                     the gauge before the next cut"
                ),
            );
        } else if let Some(remark) = log.remark {
            let way = if remark.share_over_dial < 0.0 { "light" } else { "heavy" };
            let percent = (remark.share_over_dial * 100.0).abs();
            let places = usize::from(percent < 0.95);
            let dial = |length: Length| self.on_dial(length, step);
            wrapped(
                out,
                "  ",
                &format!(
                    "your tool is cutting {percent:.places$} % {way}: dial {}, not {}",
                    dial(remark.dial_mm.0),
                    dial(remark.plain_dial_mm.0)
                ),
            );
        }
        let [first, second] = self.units();
        if let (Some(size), Some(sd)) = (log.size_mm, log.size_sd_mm) {
            let give = sd.0.checked_mul(2).unwrap_or(sd.0);
            let _ = writeln!(
                out,
                "  size {:<14}{:<14}+/- {}, {}",
                Self::as_read(size.0, first),
                Self::as_read(size.0, second),
                self.one_difference(give),
                log.instrument
            );
        } else {
            let _ = writeln!(out, "  the size is not known since a line was lost: read it");
        }
        let kind = log.kind;
        self.limits_line(out, &format!("{kind:<5} {}", log.class), log.limits);
        self.entries(out, log);
        let mut state = match (&log.log, log.state) {
            (Some(name), LogState::Open) => format!("log {name}"),
            (Some(name), LogState::Done) => format!("log {name}, done"),
            (Some(name), LogState::Scrap) => format!("log {name}, scrap"),
            (None, _) => "kept in memory only".to_owned(),
        };
        if log.learned_from > 0 {
            let count = log.learned_from;
            let logs = if count == 1 { "log" } else { "logs" };
            let _ = write!(state, "; what to expect comes from {count} finished {logs}");
        }
        wrapped(out, "  ", &state);
        for note in &log.notes {
            wrapped(out, "  ", note);
        }
        Self::cautions(out, &log.cautions);
    }

    /// What to do next, first and largest.
    fn advice(&self, out: &mut String, log: &PassLogAnswer) {
        let Some(next) = &log.next else {
            let (lead, style) = match log.state {
                LogState::Scrap => ("SCRAP", Style::Bad),
                _ => ("DONE", Style::Good),
            };
            let _ = writeln!(out, "{}", self.style(style, lead));
            return;
        };
        self.next_step(out, next, log.kind, log.step_mm.0);
        let short = log.size_mm.and_then(|size| match log.kind {
            Feature::Hole => log.limits.lower().checked_sub(size.0).ok(),
            Feature::Shaft => size.0.checked_sub(log.limits.upper()).ok(),
        });
        let is_stuck = next.reason == Some(Because::CoarseDial.word());
        if let Some(short) = short.filter(|short| is_stuck && short.is_positive()) {
            let by = match log.kind {
                Feature::Hole => "hone or lap it",
                Feature::Shaft => "take it with emery cloth or a file",
            };
            wrapped(
                out,
                "  ",
                &format!(
                    "{} is left to the first limit: {by}, measure often, and `read` it",
                    self.one_difference(short)
                ),
            );
        }
    }

    /// The step to take, and how it is likely to end.
    fn next_step(&self, out: &mut String, next: &NextFigures, kind: Feature, step: Length) {
        let [first, _] = self.units();
        let good = next.probability_good.map_or(String::new(), |good| {
            let over = next.probability_over.unwrap_or(0.0);
            // Where nothing is cut, how it stands now.
            if next.action == "stop" || next.action == "scrap" {
                return format!("{} inside, {} over", percent(good), percent(over));
            }
            if next.action == "read again" {
                let over = percent(over);
                return format!("{} to end inside, {over} too much is off now", percent(good));
            }
            format!("{} to end inside, {} to overshoot", percent(good), percent(over))
        });
        let (lead, words) = match (next.action, next.dial_mm) {
            ("cut", Some(dial)) if dial.0 == Length::ZERO => {
                ("SPRING", "leave the dial, pass again, then measure".to_owned())
            }
            ("cut", Some(dial)) => {
                let to = next.expect_mm.map_or(String::new(), |size| {
                    format!(
                        ", to about {}",
                        Self::target(size.0, first, Self::metal_side(Some(kind)))
                    )
                });
                let measure = match next.readings {
                    0 | 1 => "measure".to_owned(),
                    2 => "measure twice".to_owned(),
                    times => format!("measure {times} times"),
                };
                let then = if next.measuring {
                    format!("{measure}, then cut again")
                } else {
                    format!("the last cut: then {measure}")
                };
                let dial = match next.top_slide_mm {
                    Some(travel) => Self::dialled(travel.0, step),
                    None => self.on_dial(dial.0, step),
                };
                ("DIAL", format!("{}{to}   {then}", self.style(Style::Strong, &dial)))
            }
            ("read again", _) => {
                let times = match next.readings {
                    0 | 1 => String::new(),
                    2 => " twice".to_owned(),
                    times => format!(" {times} times"),
                };
                let again = if next.reason == Some(Because::NotMeasured.word()) {
                    "it"
                } else {
                    "it again"
                };
                ("READ", format!("{again}{times} before anything else"))
            }
            ("scrap", _) => ("OVER", "too much is off: suit the mate to it, or `scrap`".to_owned()),
            _ if next.reason == Some(Because::TooClose.word()) => {
                ("STOP", "it is as good as it gets: too close to call".to_owned())
            }
            _ if next.reason.is_some() => ("STOP", "do not cut it as things are".to_owned()),
            _ => ("STOP", "it is as good as it gets: `done`".to_owned()),
        };
        let style = match lead {
            "STOP" if next.reason.is_none() => Style::Good,
            "OVER" => Style::Bad,
            _ => Style::Strong,
        };
        let _ = writeln!(out, "{}", format!("{}  {words}", self.style(style, lead)).trim_end());
        if let (Some(_), Some(dial)) = (next.top_slide_mm, next.dial_mm) {
            let change = match self.settings.dial {
                Dial::Diameter => dial.0,
                Dial::Radius => dial.0.half(),
            };
            let entered = Self::dialled(change, step).replace(' ', "");
            wrapped(
                out,
                "  ",
                &format!(
                    "on the top slide, set over 5.7\u{b0} from the lathe's axis: it takes a tenth. \
                     Enter it as `cut {entered}`"
                ),
            );
        }
        if let Some(reason) = next.reason {
            wrapped(out, "  ", reason);
        }
        if !good.is_empty() {
            let _ = writeln!(out, "  {good}");
        }
    }

    /// A size as an instrument shows it.
    fn as_read(size: Length, unit: Unit) -> String {
        let decimals = Self::usual(unit);
        format!("{} {}", size.shown(decimals, Rounding::Nearest), unit.symbol())
    }

    fn entries(&self, out: &mut String, log: &PassLogAnswer) {
        let [unit, _] = self.units();
        let standing: Vec<&EntryFigures> =
            log.entries.iter().filter(|entry| !entry.undone && entry.entry != "undo").collect();
        let head = format!("  {:<11}{:<12}{:<13}", "pass", "dial", "read");
        let dial = if self.settings.dial == Dial::Radius { "   dial: radius" } else { "" };
        let _ = writeln!(out, "{}", self.style(Style::Faint, &format!("{head}[ limits ]{dial}")));
        // An entry with places takes two lines, and so does one of another gauge.
        let mut lines = 0;
        let shown = standing.iter().rev().take_while(|entry| {
            lines +=
                1 + usize::from(!entry.places.is_empty()) + usize::from(entry.instrument.is_some());
            lines <= SHOWN
        });
        let hidden = standing.len() - shown.count();
        let start = Self::as_read(log.start_mm.0, unit);
        if hidden == 0 {
            let line = format!(
                "  {:<11}{:<12}{start:<13}{}",
                "start",
                "",
                picture(log.limits, Some(log.start_mm.0))
            );
            let _ = writeln!(out, "{}", line.trim_end());
        } else {
            let _ = writeln!(out, "  ...        {hidden} before");
        }
        for (number, entry) in standing.iter().enumerate().skip(hidden) {
            let dial = entry.dial_mm.map_or(String::new(), |dial| {
                let shown = if self.settings.dial == Dial::Radius { dial.0.half() } else { dial.0 };
                Self::dialled(shown, log.step_mm.0)
            });
            let read = entry.reading_mm.map_or(String::new(), |size| Self::as_read(size.0, unit));
            let name = format!("{} {}", number + 1, entry.entry);
            let picture = match entry.entry {
                "done" | "scrap" | "lost" => String::new(),
                _ => picture(log.limits, entry.reading_mm.map(|size| size.0)),
            };
            let line = format!("  {name:<11}{dial:<12}{read:<13}{picture}");
            let _ = writeln!(out, "{}", line.trim_end());
            let with = entry.instrument.as_ref().map(|name| format!("read with {name}"));
            for line in self.places(entry).into_iter().chain(with) {
                wrapped(out, "             ", &line);
            }
        }
    }

    /// The places of an entry, and how warm the part was.
    fn places(&self, entry: &EntryFigures) -> Option<String> {
        let [unit, _] = self.units();
        let figures = |sizes: &[Mm]| {
            let shown = sizes.iter().map(|size| Self::as_read(size.0, unit));
            shown.collect::<Vec<_>>().join(" ")
        };
        let named = |place: &EntryPlace, sizes: &[Mm]| {
            let name = place.place.as_ref().map_or(String::new(), |name| format!("{name} "));
            format!("{name}{}", figures(sizes))
        };
        let places = entry.places.iter().map(|place| named(place, &place.readings_mm));
        let places = places.collect::<Vec<_>>().join(" / ");
        let Some(celsius) = entry.at_c else { return (!places.is_empty()).then_some(places) };
        let degrees = match self.settings.units {
            Units::Millimetres => format!("{celsius:.0} °C"),
            Units::Inches => format!("{:.0} °F", celsius * 1.8 + 32.0),
        };
        let shown = entry.places.iter().map(|place| figures(&place.shown_mm));
        let shown = shown.collect::<Vec<_>>().join(" / ");
        let material = entry.material.as_deref().unwrap_or("the part");
        Some(format!("{places} at 20 °C; it read {shown}, {material} at {degrees}"))
    }

    pub(crate) fn logs(&self, out: &mut String, answer: &LogsAnswer) {
        let [unit, _] = self.units();
        for note in &answer.notes {
            wrapped(out, "", note);
        }
        if let Some(open) = &answer.open {
            wrapped(out, "", &format!("open here: {open}; `log` shows it"));
        } else if answer.notes.is_empty() {
            let _ = writeln!(out, "no pass log is open here");
        }
        let width = |name: &str| name.chars().count();
        let listed = || answer.logs.iter().take(LISTED);
        let names = listed().map(|log| width(&log.name)).max().unwrap_or(0).min(NAME);
        for log in listed() {
            let state = match log.state {
                LogState::Open => "open",
                LogState::Done => "done",
                LogState::Scrap => "scrap",
            };
            let entries = if log.entries == 1 { "entry" } else { "entries" };
            let told = format!(
                "{state:<6}{:>3} {entries:<7}  {}",
                log.entries,
                Self::as_read(log.reading_mm.0, unit)
            );
            // A long name has a line of its own.
            if width(&log.name) <= names {
                let _ = writeln!(out, "  {:<names$}  {told}", log.name);
            } else {
                let _ = writeln!(out, "  {}\n  {:<names$}  {told}", log.name, "");
            }
        }
        if answer.logs.len() > LISTED {
            let _ = writeln!(out, "  and {} older ones", answer.logs.len() - LISTED);
        }
        if let Some(first) = answer.logs.first() {
            wrapped(out, "  ", &format!("back to one with `log open {}`", first.name));
        }
    }

    /// What a log that was just opened says first: what to dial, and the plan
    /// in one line. The table's figures are the plan by rule; the log goes by
    /// the machine, and two figures for one cut would contradict each other.
    pub(crate) fn first_step(&self, out: &mut String, answer: &PassesAnswer) -> bool {
        let (Some(log), Some(next), Some(kind)) = (&answer.log, &answer.next, answer.feature.kind)
        else {
            return false;
        };
        let [first, second] = self.units();
        if let Some(start) = &answer.plan.start_mm {
            let (one, other) = (Self::size(start.0, first), Self::size(start.0, second));
            let _ = writeln!(out, "  start       {one:<16}{other}");
        }
        self.next_step(out, next, kind, log.step_mm.0);
        let mut names: Vec<(&str, usize)> = Vec::new();
        for pass in &answer.plan.passes {
            match names.last_mut() {
                Some((name, count)) if *name == pass.name => *count += 1,
                _ => names.push((pass.name, 1)),
            }
        }
        let named = |(name, count): (&str, usize)| match count {
            1 => name.to_owned(),
            count => format!("{count} {name}"),
        };
        let names: Vec<String> = names.into_iter().map(named).collect();
        let last = answer.plan.passes.last().map_or(answer.plan.aim_mm, |pass| pass.to_mm);
        let last = PlanShape::of(&answer.plan, first, &answer.feature).size(last.0);
        wrapped(out, "  ", &format!("plan: {}, to {last}", names.join(", ")));
        true
    }

    /// Under a plan: the log that was opened for it.
    pub(crate) fn plan_log(out: &mut String, answer: &PassesAnswer) {
        for note in &answer.notes {
            wrapped(out, "  ", note);
        }
        let Some(log) = &answer.log else { return };
        let Some(name) = &log.name else { return };
        let learned = match log.learned_from {
            0 => String::new(),
            1 => ", as one finished log taught".to_owned(),
            count => format!(", as {count} finished logs taught"),
        };
        wrapped(out, "  ", &format!("pass log {name} is open{learned}; then `cut ... = ...`"));
    }
}

/// A chance in a hundred, never rounded to a certainty.
fn percent(chance: f64) -> String {
    let hundredfold = chance * 100.0;
    if hundredfold > 99.5 {
        "over 99 %".to_owned()
    } else if hundredfold < 0.5 {
        "under 1 %".to_owned()
    } else {
        format!("{hundredfold:.0} %")
    }
}

/// The limits as a band and a size on it; `<` and `>` where it is off the
/// picture. The metal side is wide: a hole's is small, a shaft's large.
fn picture(limits: Limits, size: Option<Length>) -> String {
    let tolerance = limits.tolerance().tenth_nanometres().max(1);
    let column = |length: Length| {
        let off = length.tenth_nanometres().saturating_sub(limits.lower().tenth_nanometres());
        METAL * WIDTH / ACROSS + off.saturating_mul(WIDTH / ACROSS).div_euclid(tolerance)
    };
    let mut cells = vec![b' '; usize::try_from(WIDTH).unwrap_or(0)];
    let mut put = |at: i64, mark: u8| {
        if let Some(cell) = usize::try_from(at).ok().and_then(|at| cells.get_mut(at)) {
            *cell = mark;
        }
    };
    put(column(limits.lower()) - 1, b'[');
    put(column(limits.upper()) + 1, b']');
    if let Some(size) = size {
        // A size past a limit stands outside its bracket, however little.
        let [lower, upper] = [limits.lower(), limits.upper()].map(column);
        let at = if size < limits.lower() {
            column(size).min(lower - 2)
        } else if size > limits.upper() {
            column(size).max(upper + 2)
        } else {
            column(size)
        };
        if at < 0 {
            put(0, b'<');
        } else if at >= WIDTH {
            put(WIDTH - 1, b'>');
        } else {
            put(at, b'o');
        }
    }
    String::from_utf8_lossy(&cells).trim_end().to_owned()
}
