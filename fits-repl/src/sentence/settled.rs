//! What a word of a view is by what stands beside it: nouns and verbs, `in`, signs,
//! ranges, temperatures, metals of two words.

use std::rc::Rc;

use fits_core::standards::materials::Material;

use crate::sentence::{
    table::plain_name,
    token::{Num, Token, Unit},
    view::{Item, View},
};

impl View {
    /// `a 1.1105 rod hole`, `the wheel arbor`: the second noun is the part, the first its name.
    fn settle_compounds(&mut self) {
        const BODIES: &[&str] =
            &["hub", "hubs", "housing", "housings", "block", "plate", "casting", "frame", "boss"];
        let is_figure = |item: Option<&Item>| {
            item.is_some_and(|item| {
                !matches!(item.token, Token::Word { .. } | Token::Break)
                    || matches!(item.token, Token::Word { kind: "reads", .. })
            })
        };
        let mut at = 0;
        while at + 1 < self.items.len() {
            let second = self.said(at + 1);
            let is_name = match (self.kind_at(at), self.kind_at(at + 1)) {
                (Some("shaft" | "hub"), Some("hole")) => {
                    matches!(&*second, "hole" | "holes" | "bore" | "bores" | "eye")
                }
                // A tube's wall counts, whatever goes into it.
                (Some("hub"), Some("shaft")) => {
                    let said = self.said(at);
                    !BODIES.contains(&&*said) && !said.contains("tub") && !said.contains("pipe")
                }
                _ => false,
            };
            let before = at.checked_sub(1).and_then(|before| self.items.get(before));
            // `3/4 shaft hole .7505`: each has its own figure.
            let is_each = is_figure(before) && is_figure(self.items.get(at + 2));
            // `motor shaft 19mm coupling bore`: the figure has its noun.
            let has_noun = is_figure(before)
                && at.checked_sub(2).is_some_and(|noun| {
                    matches!(self.kind_at(noun), Some("hole" | "shaft" | "hub" | "bushing"))
                });
            if is_name && !is_each && !has_noun {
                self.items.remove(at);
            } else {
                at += 1;
            }
        }
    }

    /// `the bore` and `7/8 bore` are nouns; `mic .7505` is a verb.
    pub(super) fn settle_nouns(&mut self) {
        self.settle_compounds();
        // A boss that a shaft goes into is a hub.
        let goes_in = (0..self.items.len()).any(|at| {
            matches!(self.items[at].token, Token::Word { kind: "shaft", .. })
                && self.said(at) != "boss"
        });
        for at in 0..self.items.len() {
            if goes_in
                && matches!(self.items[at].token, Token::Word { kind: "shaft", .. })
                && self.said(at) == "boss"
            {
                self.items[at].token = Token::Word { name: "hub", kind: "hub" };
            }
        }
        for at in 0..self.items.len() {
            let Token::Word { name: "bore" | "micrometer", .. } = self.items[at].token else {
                continue;
            };
            let said = self.said(at);
            let before = at.checked_sub(1);
            let after_number = before.is_some_and(|before| {
                matches!(self.items[before].token, Token::Number(_) | Token::Hole(_))
            });
            let after_article = before.is_some_and(|before| {
                ["the", "a", "my", "its", "what's the", "whats the", "what is the", "this"]
                    .contains(&&*self.said(before))
            });
            let next_number =
                matches!(self.items.get(at + 1).map(|item| &item.token), Some(Token::Number(_)));
            let next_reads = matches!(self.kind_at(at + 1), Some("reads"));
            let token = &mut self.items[at].token;
            match token {
                Token::Word { kind: kind @ "head", name: name @ "bore" }
                    if said == "bore" && (after_number || after_article || next_reads) =>
                {
                    (*kind, *name) = ("hole", "hole");
                }
                Token::Word { kind: kind @ "instrument", name: name @ "micrometer" }
                    if next_number && matches!(&*said, "mic" | "mike") =>
                {
                    (*kind, *name) = ("reads", "reads");
                }
                _ => {}
            }
        }
    }

    /// `hole came out 25.010, shaft?`, `mics: …`: a part at the end whose
    /// figure is not said is what is asked for, when the other was measured; a
    /// verb before a colon reads nothing.
    pub(super) fn settle_asked(&mut self) {
        let small = Token::Word { name: "-", kind: "small" };
        if let [first, second, ..] = &mut self.items[..]
            && matches!(first.token, Token::Word { kind: "reads", .. })
            && second.token == Token::Break
        {
            first.token = small.clone();
        }
        let is_filler = |token: &Token| {
            matches!(token, Token::Break | Token::Word { kind: "small" | "asking", .. })
        };
        let Some(last) = self.items.iter().rposition(|item| !is_filler(&item.token)) else {
            return;
        };
        let Token::Word { kind: kind @ ("hole" | "shaft"), .. } = self.items[last].token else {
            return;
        };
        let before = &self.items[..last];
        let reads =
            before.iter().rposition(|item| matches!(item.token, Token::Word { kind: "reads", .. }));
        let Some(reads) = reads else { return };
        let (of, read) = before.split_at(reads);
        let other = if kind == "hole" { "shaft" } else { "hole" };
        let is_others = of
            .iter()
            .rfind(|item| matches!(item.token, Token::Word { kind: "hole" | "shaft", .. }))
            .is_some_and(|item| matches!(item.token, Token::Word { kind, .. } if kind == other));
        let one_figure = matches!(
            &read[1..],
            [Item { token: Token::Number(_), .. }, rest @ ..]
                if rest.iter().all(|item| is_filler(&item.token))
        );
        if is_others && one_figure {
            self.items[last].token = small;
        }
    }

    /// `3/4 press - hole and shaft`, `shaft + hole`: a sign before a word, or at
    /// the end, parts what is said; in a stack it takes a part away.
    pub(super) fn settle_signs(&mut self) {
        if self.says("head", "stack") {
            return;
        }
        for at in 0..self.items.len() {
            let before_word = matches!(
                self.items.get(at + 1).map(|item| &item.token),
                None | Some(
                    Token::Break
                        | Token::Word {
                            kind: "hole" | "shaft" | "asking" | "small" | "head" | "reads" | "fit",
                            ..
                        }
                )
            );
            if before_word && matches!(self.items[at].token, Token::Plus | Token::Minus) {
                self.items[at].token = Token::Break;
            }
        }
    }

    /// `1.000 shaft +0 -.001`: a size's deviations stand right behind it.
    pub(super) fn settle_deviations(&mut self) {
        for at in 2..self.items.len() {
            let is_named = matches!(self.kind_at(at - 1), Some("hole" | "shaft"));
            if is_named
                && matches!(self.items[at].token, Token::Deviations { .. })
                && matches!(self.items[at - 2].token, Token::Number(_))
            {
                self.items.swap(at - 2, at - 1);
            }
        }
    }

    /// `10 H7, 8 holes 10.004 10.006 …`: how many were read, where so many readings follow.
    pub(super) fn settle_count(&mut self) {
        let all = self.numbers().count();
        if all < 4 {
            return;
        }
        let is_count = |(at, num): &(usize, &Num)| {
            let is_whole = num.places == 0 && num.unit.is_none() && !num.is_fraction;
            let names = matches!(self.kind_at(at + 1), Some("hole" | "shaft"));
            let others = self.numbers().filter(|(place, num)| place > at && num.places > 0);
            is_whole
                && names
                && self.said(at + 1).ends_with('s')
                && num.text == (all - 2).to_string()
                && others.count() == all - 2
        };
        let count = self.numbers().find(is_count).map(|(at, _)| at);
        if let Some(count) = count {
            self.items[count].token = Token::Word { name: "-", kind: "small" };
        }
    }

    /// `heat to 200`, `heated it up to 150`: a temperature whose scale is not said,
    /// and no size.
    pub(super) fn settle_heat(&mut self) {
        for at in 1..self.items.len() {
            let Token::Number(Num { unit: None, text, .. }) = &self.items[at].token else {
                continue;
            };
            let before = self.items[..at].iter().enumerate().rev().find(|(_, item)| {
                !matches!(item.token, Token::Word { kind: "small" | "connector" | "asking", .. })
            });
            let is_heat = before.is_some_and(|(place, _)| {
                let said = self.said(place);
                said.starts_with("heat") || said.starts_with("freez") || said.starts_with("chill")
            });
            let leads_on = self.said(at - 1).ends_with("to") || self.said(at - 1) == "at";
            if is_heat && leads_on {
                self.items[at].token = Token::Temperature(text.clone());
            }
        }
    }

    /// `2 to 4 thou`: the unit of the second is the first's.
    pub(super) fn settle_ranges(&mut self) {
        for at in 2..self.items.len() {
            let Token::Number(Num {
                unit: unit @ Some(Unit::Thou | Unit::Tenth | Unit::Micron),
                value,
                ..
            }) = self.items[at].token
            else {
                continue;
            };
            if matches!(&*self.said(at - 1), "to" | "-")
                && let Token::Number(first) = &mut self.items[at - 2].token
                && first.unit.is_none()
                && !first.is_fraction
                && !first.leads
                && first.value < value
            {
                first.unit = unit;
            }
        }
    }

    /// `in` after a number and a space: inches, or into?
    pub(crate) fn settle_in(&mut self) {
        let mut at = 1;
        while at < self.items.len() {
            let is_in =
                matches!(self.items[at].token, Token::Word { name: "in", kind: "connector" })
                    && self.items[at].at.len() == 2;
            let before = match &self.items[at - 1].token {
                Token::Number(num) => Some(num.clone()),
                _ => None,
            };
            let deviations = matches!(self.items[at - 1].token, Token::Deviations { .. });
            if is_in
                && (before.as_ref().is_some_and(|num| num.unit.is_none() || num.is_fraction)
                    || deviations)
            {
                let is_inches = match self.items.get(at + 1).map(|item| &item.token) {
                    // `shaft 20.03 in hole 20.01`: what the one part goes into.
                    Some(Token::Word { kind: "hole" | "hub", .. })
                        if self.is_number(at + 2)
                            && at > 1
                            && matches!(self.kind_at(at - 2), Some("shaft" | "bushing")) =>
                    {
                        false
                    }
                    None
                    | Some(
                        Token::Break
                        | Token::Hole(_)
                        | Token::Shaft(_)
                        | Token::Pair(_)
                        | Token::InchClass(_)
                        | Token::Deviations { .. }
                        | Token::Minus
                        | Token::Plus,
                    ) => true,
                    Some(Token::Word { kind, name }) => {
                        matches!(
                            *kind,
                            "role"
                                | "fit"
                                | "shaft"
                                | "hole"
                                | "reads"
                                | "start"
                                | "vague"
                                | "head"
                                | "untoleranced"
                                | "gap"
                        ) || (*kind == "connector" && *name != "in")
                            || (*kind == "small"
                                && ["dia", "diameter", "diam", "thick", "long", "deep", "please"]
                                    .contains(&&*self.said(at + 1)))
                    }
                    _ => false,
                };
                if is_inches {
                    if let (Some(mut num), Some(item)) = (before, self.items.get_mut(at - 1)) {
                        num.unit = Some(Unit::Inch);
                        item.token = Token::Number(num);
                    }
                    self.items.remove(at);
                    continue;
                }
            }
            at += 1;
        }
    }
}

/// Two metals said one after the other are one: `660 bronze`.
pub(crate) fn join_materials(view: &mut View) -> Option<()> {
    let line = Rc::clone(&view.text);
    let mut at = 1;
    while at < view.items.len() {
        let is = |token: &Token| matches!(token, Token::Word { kind: "material", .. });
        // `bronze steel housing`: the second is the housing's.
        let is_hubs = matches!(view.kind_at(at + 1), Some("hub"));
        if is(&view.items[at - 1].token) && is(&view.items[at].token) {
            let range = view.items[at - 1].at.start..view.items[at].at.end;
            // `steel steel`: of both parts.
            if view.items[at - 1].token == view.items[at].token {
                at += 1;
                continue;
            }
            let said = line.get(range.clone())?;
            let one = |item: &Item| match item.token {
                Token::Word { name, .. } => name,
                _ => "",
            };
            let found = Material::named(said)
                .or_else(|| {
                    Material::named(&format!(
                        "{} {}",
                        line.get(view.items[at - 1].at.clone()).unwrap_or_default(),
                        one(&view.items[at])
                    ))
                })
                .or_else(|| {
                    Material::named(&format!(
                        "{} {}",
                        one(&view.items[at - 1]),
                        line.get(view.items[at].at.clone()).unwrap_or_default()
                    ))
                });
            let Some(found) = found else {
                if is_hubs {
                    at += 1;
                    continue;
                }
                return None;
            };
            let name = plain_name(found);
            view.items[at - 1] = Item { token: Token::Word { name, kind: "material" }, at: range };
            view.items.remove(at);
        } else {
            at += 1;
        }
    }
    Some(())
}
