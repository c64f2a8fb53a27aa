//! Help, in words.

use std::fmt::Write as _;

use crate::{
    answer::HelpAnswer,
    render::text::{Style, Text},
};

impl Text {
    pub(crate) fn help(&self, out: &mut String, help: &HelpAnswer) {
        for line in &help.lines {
            let _ = writeln!(out, "{line}");
        }
        for (query, gives) in help.examples {
            // Padded before it is styled: escapes have no width.
            let query = self.style(Style::Strong, &format!("{query:<26}"));
            let _ = writeln!(out, "  {query}  {gives}");
        }
    }
}
