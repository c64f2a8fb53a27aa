//! Words for a person at arm's length, inside 80 columns and 24 lines.
//!
//! What to cut to comes first and largest; then limits in both units; then
//! the fit; then tools. Upper limits are rounded down and lower limits up.

pub(crate) mod figures;
pub(crate) mod lines;
pub(crate) mod quantities;

use std::{borrow::Cow, fmt::Write as _};

use fits_core::{Length, Limits};

use crate::{
    answer::{Answer, SettingsAnswer},
    problem::Problem,
    render::{
        Colour, bar,
        printable::{BAD, FAINT, GOOD, PLAIN, STRONG, printable},
        text::lines::{excerpt, wrapped},
    },
    sentence::Slip,
};

/// Renders under the settings in force.
#[derive(Clone, Copy, Debug)]
#[expect(clippy::exhaustive_structs, reason = "what is in force and colour are all")]
pub struct Text {
    /// Units (they come first in each line) and dial.
    pub settings: SettingsAnswer,
    /// Whether colour may be used.
    pub colour: Colour,
}

/// Lines of an answer, so that the prompt stays in sight.
pub(crate) const LINES: usize = 23;

#[derive(Clone, Copy)]
pub(crate) enum Style {
    Strong,
    Good,
    Bad,
    Faint,
}

impl Text {
    /// An answer, as lines.
    pub fn answer(&self, answer: &Answer) -> String {
        let mut out = String::new();
        answer.show(self, &mut out);
        if let Some(what) = answer.unconfirmed() {
            unconfirmed(&mut out, &what);
        }
        self.printable(out)
    }

    /// How a phrase was read, the first lines of its answer; nothing for a plain query.
    pub fn read_as(&self, read_as: Option<&str>, slips: &[Slip]) -> String {
        let mut out = String::new();
        for slip in slips {
            wrapped(&mut out, "", &slip.to_string());
        }
        if let Some(read_as) = read_as {
            wrapped(&mut out, "", &format!("read as: {read_as}"));
        }
        self.printable(out)
    }

    /// A problem: the line, a caret under the place, what and what next.
    pub fn problem(&self, line: &str, problem: &Problem) -> String {
        let mut out = String::new();
        let mut message = String::new();
        wrapped(&mut message, "", &problem.message);
        for line in message.lines() {
            let _ = writeln!(out, "{}", self.style(Style::Bad, line));
        }
        let (shown, before, under) = excerpt(line, problem.at.start, problem.at.end);
        if !shown.is_empty() {
            let _ = writeln!(out, "  {shown}");
            let _ = writeln!(out, "  {}{}", " ".repeat(before), "^".repeat(under.max(1)));
        }
        wrapped(&mut out, "", &problem.hint(line));
        self.printable(out)
    }

    /// Names come out of files and queries.
    pub(crate) fn printable(&self, text: String) -> String {
        match printable(&text, self.colour) {
            Cow::Borrowed(_) => text,
            Cow::Owned(escaped) => escaped,
        }
    }

    pub(crate) fn style(&self, style: Style, text: &str) -> String {
        if self.colour == Colour::Off {
            return text.to_owned();
        }
        let code = match style {
            Style::Strong => STRONG,
            Style::Good => GOOD,
            Style::Bad => BAD,
            Style::Faint => FAINT,
        };
        format!("{code}{text}{PLAIN}")
    }

    pub(crate) fn zones(
        out: &mut String,
        nominal: Length,
        zones: &[(String, Limits, Option<Length>)],
    ) {
        let zones: Vec<_> = zones
            .iter()
            .map(|(name, limits, reading)| bar::Zone {
                name,
                is_shaft: name.starts_with("shaft"),
                limits: *limits,
                reading: *reading,
            })
            .collect();
        let before = out.len();
        bar::draw(out, nominal, &zones);
        // The picture is the first to go where the screen is full.
        if out.lines().count() > LINES {
            out.truncate(before);
        }
    }

    pub(crate) fn cautions(out: &mut String, cautions: &[&'static str]) {
        for caution in cautions {
            let _ = writeln!(out, "! {caution}");
        }
    }
}

/// The line for what is known from memory alone.
pub(crate) fn unconfirmed(out: &mut String, what: &str) {
    wrapped(out, "! ", &format!("unconfirmed: {what}, from memory; check before you cut"));
}
