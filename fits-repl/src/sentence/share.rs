//! A torque that a press alone does not hold, and what takes the rest.

use std::fmt::Write as _;

use crate::sentence::{
    Said,
    roles::assign,
    token::{System, Token},
    view::View,
};

/// `want 60 Nm on 25 shaft, press only holds 35, 6 mm cross pin for the rest`.
pub(crate) fn share(view: &View, system: System) -> Option<Said> {
    view.only(
        &["head", "shaft", "sharer", "role", "holds", "compound", "gap", "shock"],
        |token| matches!(token, Token::Number(_) | Token::Torque(_)),
    )?;
    if !view.has("head") || view.words("sharer").count() > 1 {
        return None;
    }
    let mut view = View { items: view.items.clone(), text: view.text.clone() };
    // What stands after `press holds` is a torque, in the unit of the other.
    let torques: Vec<(usize, String)> = (0..view.items.len())
        .filter_map(|at| match &view.items[at].token {
            Token::Torque(text) => Some((at, text.clone())),
            _ => None,
        })
        .collect();
    let holds =
        view.items.iter().position(|item| matches!(item.token, Token::Word { kind: "holds", .. }));
    let (all, press) = match (&torques[..], holds) {
        ([(_, all)], None) => (all.clone(), None),
        ([(first, all), (second, other)], Some(holds)) => {
            // The torque nearest after the words is what the press holds.
            if holds < *first {
                (other.clone(), Some(all.clone()))
            } else if *second > holds {
                (all.clone(), Some(other.clone()))
            } else {
                return None;
            }
        }
        ([(_, all)], Some(holds)) => {
            let at = (holds + 1..view.items.len()).find(|at| {
                !matches!(view.items[*at].token, Token::Word { kind: "small" | "connector", .. })
            })?;
            let Token::Number(num) = view.items[at].token.clone() else { return None };
            if num.unit.is_some() || num.is_fraction {
                return None;
            }
            view.items.remove(at);
            let unit = all.trim_start_matches(|c: char| c.is_ascii_digit() || c == '.');
            (all.clone(), Some(format!("{}{unit}", num.text)))
        }
        _ => return None,
    };
    let roles = assign(&view, &["shaft", "sharer", "role", "gap"], &[], system)?;
    if !roles.free.is_empty() || roles.taken.len() > 4 || roles.count("long") > 1 {
        return None;
    }
    let mut plain = format!("share {all}, shaft {}", roles.num("shaft")?.plain(system));
    if let Some(press) = press {
        let _ = write!(plain, ", press {press}");
    }
    if view.has("compound") {
        let _ = write!(plain, ", compound, gap {}", roles.num("gap")?.plain(system));
    }
    if let Some(name) = view.word("sharer") {
        let _ = write!(plain, ", {name} {}", roles.num("sharer")?.plain(system));
    } else if !view.has("compound") {
        return None;
    }
    if let Some(long) = roles.num("long") {
        let _ = write!(plain, ", long {}", long.plain(system));
    }
    if view.has("shock") {
        plain.push_str(", shock");
    }
    Some(Said::plain(plain))
}
