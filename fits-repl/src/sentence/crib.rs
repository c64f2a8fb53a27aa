//! A tool that is to be remembered.

use crate::sentence::{
    Said,
    token::{Num, System, Token},
    view::View,
};

/// `i own a 3/4 reamer that cuts .7504, remember it`.
pub(crate) fn crib(view: &View, system: System) -> Option<Said> {
    view.only(&["remembers", "tool", "cuts"], |token| {
        matches!(token, Token::Number(_) | Token::Gauge(_) | Token::Thread { .. })
    })?;
    let [tool] = view.words("tool").collect::<Vec<_>>()[..] else { return None };
    if !view.has("remembers") {
        return None;
    }
    let numbers: Vec<&Num> = view.numbers().map(|(_, num)| num).collect();
    let named = view.one(|token| match token {
        Token::Gauge(name) | Token::Thread { name, .. } => Some(name.clone()),
        _ => None,
    });
    let of = match (tool, &numbers[..], named, view.has("cuts")) {
        ("reamer", [size, cuts], None, true) => {
            format!("{} cuts {}", size.plain(system), cuts.plain(system))
        }
        ("reamer" | "pin" | "drill", [size], None, false) => size.plain(system),
        ("drill" | "tap", [], Some(name), false) => name,
        _ => return None,
    };
    Some(Said::plain(format!("crib add {tool} {of}")))
}
