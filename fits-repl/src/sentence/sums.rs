//! A size said as so much over or under another, or as a sum.

use crate::sentence::{
    roles::Roles,
    token::{Num, System, Token, Unit},
    tools::trimmed_to,
    view::View,
};

impl View {
    /// `2 tenths over on 0.5000 h6`, `bored 2 thou over 1-1/4`, `gauges 3/8 plus half a
    /// thou`: what it measures, and the size that it is told from.
    pub(super) fn settle_sums(&mut self) {
        let mut sums = Vec::new();
        for at in 0..self.items.len() {
            let Token::Number(amount) = &self.items[at].token else { continue };
            let beyond = match self.items.get(at + 1).map(|item| &item.token) {
                Some(Token::Word { kind: "beyond", name }) => *name,
                // `am I over?` of an amount says how much.
                Some(Token::Word { kind: "head", name: "ok" })
                    if ["over", "under"].contains(&&*self.said(at + 1)) =>
                {
                    if self.said(at + 1) == "over" { "over" } else { "under" }
                }
                _ => continue,
            };
            let number = |at: &usize| matches!(self.items[*at].token, Token::Number(_));
            let idle =
                |at: &usize| matches!(self.kind_at(*at), Some("small" | "connector" | "asking"));
            let after = (at + 2..self.items.len()).find(|at| !idle(at)).filter(number);
            // `over an inch, … under`: of the inch again, not of the first sum.
            let before = || (0..at).rev().find(|at| number(at) && !sums.contains(at));
            let Some(of) = after.or_else(before) else { continue };
            let Token::Number(base) = &self.items[of].token else { continue };
            let Some(sum) = moved(base, amount, beyond == "over") else { continue };
            self.items[at].token = Token::Number(sum);
            self.items[at + 1].token = Token::Word { name: "beyond", kind: "reads" };
            // The verb stands before what it reads.
            self.items.swap(at, at + 1);
            let (first, second) = (self.items[at].at.clone(), self.items[at + 1].at.clone());
            self.items[at].at = second;
            self.items[at + 1].at = first;
            sums.push(at + 1);
        }
        self.settle_measured_sums();
    }

    /// `gauges 3/8 plus half a thou`, `big end is 7/8 plus 2 thou`: what is read is no size
    /// with a deviation.
    fn settle_measured_sums(&mut self) {
        let mut at = 2;
        while at < self.items.len() {
            let sign = match self.items[at - 1].token {
                Token::Plus => Some(true),
                Token::Minus => Some(false),
                _ => None,
            };
            let is_measured = at > 2
                && (matches!(self.kind_at(at - 3), Some("reads"))
                    || ["is", "came to", "at", "now"].contains(&&*self.said(at - 3)));
            if let (Some(is_more), true) = (sign, is_measured)
                && let (Token::Number(base), Token::Number(amount)) =
                    (&self.items[at - 2].token, &self.items[at].token)
                && matches!(amount.unit, Some(Unit::Thou | Unit::Tenth | Unit::Micron))
                && let Some(sum) = moved(base, amount, is_more)
            {
                self.items[at - 2].token = Token::Number(sum);
                self.items[at - 2].at.end = self.items[at].at.end;
                self.items.drain(at - 1..=at);
            } else {
                at += 1;
            }
        }
    }
}

/// A size and so much more or less: none where the amount is no small part of it.
fn moved(base: &Num, amount: &Num, is_more: bool) -> Option<Num> {
    let is_inch = matches!(base.unit, Some(Unit::Inch | Unit::Thou | Unit::Tenth))
        || base.unit.is_none() && matches!(amount.unit, Some(Unit::Thou | Unit::Tenth));
    let system = if is_inch { System::Inches } else { System::Millimetres };
    let scale = match base.unit {
        None | Some(Unit::Inch | Unit::Millimetre) => {
            if is_inch {
                25.4
            } else {
                1.0
            }
        }
        _ => return None,
    };
    // Bare figures are in one unit, whichever it is.
    let (of, by) = match (base.unit, amount.unit) {
        (None, None) => (base.value, amount.value),
        _ => (base.mm(system) / scale, amount.mm(system) / scale),
    };
    if by > 0.03 * of {
        return None;
    }
    let value = if is_more { of + by } else { of - by };
    // Every 64th of an inch is whole.
    let text = trimmed_to(6, value);
    let places = text.split_once('.').map_or(0, |(_, places)| places.len());
    // A size that is told by a thousandth is in inches.
    let unit = base.unit.or(match amount.unit {
        Some(Unit::Thou | Unit::Tenth) => Some(Unit::Inch),
        Some(Unit::Micron) => Some(Unit::Millimetre),
        _ => None,
    });
    Some(Num { text, value, unit, is_fraction: false, places, leads: false, is_negative: false })
}

/// `wrist pin .8664, half a thou clearance in the rod`: the other part by the play or the
/// grip that is said.
pub(super) fn by_amount(view: &View, roles: &Roles, system: System) -> Option<String> {
    let numbers: Vec<(usize, &Num)> = view.numbers().collect();
    let [a, b] = numbers[..] else { return None };
    let ((at, size), (_, amount)) = if a.1.mm(system) > b.1.mm(system) { (a, b) } else { (b, a) };
    if amount.mm(system) > 0.01 * size.mm(system) || size.is_fraction || size.places < 2 {
        return None;
    }
    // No bare 41.29 is inches, though it is told by thousandths.
    if system == System::Inches && size.unit.is_none() && size.value >= 12.0 {
        return None;
    }
    let grips = match (view.says("head", "clearance"), view.says("head", "interf")) {
        (true, false) => false,
        (false, true) => true,
        _ => return None,
    };
    let lead = view.lead(at, &["small", "reads", "start"]);
    let is_others = lead.is_some_and(|at| {
        ["for", "to suit", "to fit", "in", "into", "on", "onto"].contains(&&*view.said(at))
    });
    let is_hole = match lead.map(|at| &view.items[at].token) {
        Some(Token::Word { kind: "role", name: "id" }) => true,
        Some(Token::Word { kind: "role", name: "od" }) => false,
        _ => {
            let taken = roles.taken.iter().find(|taken| taken.at == at)?;
            let is_hole = match taken.by {
                "hole" | "hub" => true,
                "shaft" => false,
                _ => return None,
            };
            // `shaft for 30.015`: the hole's figure.
            is_hole != (taken.word < at && is_others)
        }
    };
    let sign = if is_hole == grips { "+" } else { "-" };
    Some(format!("{} {sign} {}", size.plain(system), amount.plain(system)))
}
