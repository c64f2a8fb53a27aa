//! Reasons, in words.

use std::fmt::Write as _;

use crate::{
    answer::WhyAnswer,
    render::text::{Text, lines::wrapped},
};

impl Text {
    pub(crate) fn why(out: &mut String, why: &WhyAnswer) {
        let _ = writeln!(out, "{}", why.of);
        for reason in &why.figures {
            let rule =
                if reason.rule.is_empty() { String::new() } else { format!(" ({})", reason.rule) };
            wrapped(out, "  ", &format!("{} = {}{rule}", reason.figure, reason.value));
            let known = reason.known.words();
            let known = if reason.source == known { String::new() } else { format!(": {known}") };
            wrapped(out, "      ", &format!("{}{known}", reason.source));
        }
    }
}
