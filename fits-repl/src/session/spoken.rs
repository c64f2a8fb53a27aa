//! The reasons that the core gives in millimetres and degrees Celsius, said in the
//! units of the question.

use std::fmt::Write as _;

use fits_core::{Length, source::Reason};

use crate::{query::Units, questions::why::answered::said, session::Session};

impl Session {
    /// A figure's reason in the units of the question.
    pub(crate) fn spoken_reason(&self, mut reason: Reason) -> Reason {
        if self.shown == Units::Inches {
            reason.value = spoken(&reason.value);
            reason.rule = spoken(&reason.rule);
        }
        reason
    }
}

fn exactly(length: Length) -> String {
    said(Units::Inches, length)
}

/// Millimetres as inches, degrees Celsius as Fahrenheit, and an expansion from
/// 20 C as one from 68 F.
fn spoken(text: &str) -> String {
    let text = text.strip_prefix("20 + ").map_or(text.to_owned(), |rest| format!("68 + {rest}"));
    let mut out = String::new();
    let mut rest = text.as_str();
    while let Some(at) = rest.find(|c: char| c.is_ascii_digit()) {
        let (before, from) = rest.split_at(at);
        out.push_str(before);
        let end = from.find(|c: char| !(c.is_ascii_digit() || c == '.')).unwrap_or(from.len());
        let (number, after) = from.split_at(end);
        // A letter before it makes it a name: `H7`.
        let is_name = out.ends_with(|c: char| c.is_alphanumeric());
        let minus = out.ends_with('-') && !out.ends_with("--");
        let value = number.parse::<f64>().ok().filter(|_| !is_name);
        if let (Some(after), Ok(size)) =
            (unit(after, " mm"), format!("{number}mm").parse::<Length>())
            && !is_name
        {
            out.push_str(&exactly(size));
            rest = after;
        } else if let (Some(after), Some(value)) = (unit(after, " \u{b0}C"), value) {
            let value = if minus { -value } else { value };
            if minus {
                out.pop();
            }
            let _ = write!(out, "{:.0} \u{b0}F", value * 1.8 + 32.0);
            rest = after;
        } else if let (Some(after), Some(value)) = (unit(after, " millionths"), value) {
            let each = format!("{:.2}", value / 1.8);
            out.push_str(each.trim_end_matches('0').trim_end_matches('.'));
            out.push_str(" millionths");
            rest = after.strip_prefix(" per \u{b0}C").map_or(after, |after| {
                out.push_str(" per \u{b0}F");
                after
            });
        } else {
            out.push_str(number);
            rest = after;
        }
    }
    out + rest
}

/// What follows a unit, where it stands there whole.
fn unit<'a>(text: &'a str, unit: &str) -> Option<&'a str> {
    text.strip_prefix(unit).filter(|rest| !rest.starts_with(char::is_alphanumeric))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lengths_and_temperatures_are_said_in_inches() {
        for (text, wanted) in [
            ("no wall about a bore of 25.4 mm", "no wall about a bore of 1 in"),
            ("loose by 0.00762 mm to 0.03048 mm", "loose by 0.0003 in to 0.0012 in"),
            ("its limit is 100 \u{b0}C", "its limit is 212 \u{b0}F"),
            ("not known at -150 \u{b0}C", "not known at -238 \u{b0}F"),
            ("H7 of 3 mmm", "H7 of 3 mmm"),
            ("steel 4140", "steel 4140"),
            ("11.7 millionths per \u{b0}C", "6.5 millionths per \u{b0}F"),
        ] {
            assert_eq!(spoken(text), wanted);
        }
        let rule = "20 + 0.06731 mm / (11.7 millionths x 19.05 mm)";
        assert_eq!(spoken(rule), "68 + 0.00265 in / (6.5 millionths x 0.75 in)");
    }
}
