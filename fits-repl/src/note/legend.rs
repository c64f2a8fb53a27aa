//! The short forms that a note gives for its own words.

use std::collections::HashMap;

use fits_core::size::Unit;

use super::{
    lexicon,
    table::Numbered,
    token::{Kind, Token, tokens},
    told::Told,
};

/// The note's own short forms: `PF press`.
#[derive(Default)]
pub(super) struct Legend {
    full: HashMap<String, String>,
    /// The parts of a table by their item numbers.
    pub(super) items: Numbered,
    /// The joints of a table go by their numbers: `joint 6`.
    pub(super) has_joints: bool,
}

impl Legend {
    /// Short forms with what each stands for: `PF press  SL slide`.
    pub(super) fn reads(&mut self, found: &[Token]) -> bool {
        let signs = |token: &&Token| {
            matches!(token.kind, Kind::Sign('=' | ',' | '-' | ':' | ';' | '.' | '(' | ')'))
        };
        let words: Vec<Option<&str>> =
            found.iter().filter(|token| !signs(token)).map(Token::word).collect();
        let (pairs, rest) = words.as_chunks::<2>();
        let is_pair = |pair: &[Option<&str>; 2]| {
            matches!(pair, [Some(short), Some(full)]
                if short.len() < 4 && lexicon::is_short_of(short, full))
        };
        let says_fit =
            |pair: &&[Option<&str>; 2]| pair[1].is_some_and(|full| lexicon::fit(&[full]).is_some());
        let is = rest.is_empty()
            && pairs.iter().filter(says_fit).count() > 1
            && pairs.iter().all(is_pair);
        if is {
            let all = pairs.iter().map(|pair| pair.map(|word| word.unwrap_or_default().to_owned()));
            self.full.extend(all.map(|[short, full]| (short, full)));
        }
        is
    }

    /// The tokens of a text, the note's own short forms spelled out.
    pub(super) fn spelled(&self, told: &Told, text: &str, from: usize) -> Vec<Token> {
        let mut found = self.items_named(tokens(text, from));
        for token in &mut found {
            if let Kind::Word(word) = &mut token.kind
                && let Some(full) = self.full.get(word.as_str())
            {
                word.clone_from(full);
            }
            match &mut token.kind {
                Kind::Num(num) if told.is_of_an_inch_size(num) => num.unit = Some(Unit::Inch),
                Kind::Range(low, high) if told.is_of_an_inch_size(high) => {
                    (low.unit, high.unit) = (Some(Unit::Inch), Some(Unit::Inch));
                }
                _ => {}
            }
        }
        found
    }

    /// `item 7 pivot hole`: the part of that number by its name.
    fn items_named(&self, found: Vec<Token>) -> Vec<Token> {
        let mut out = Vec::with_capacity(found.len());
        let mut found = found.into_iter().peekable();
        while let Some(token) = found.next() {
            // The names behind it say whose the figures are.
            let is_number = |next: &Token| match &next.kind {
                Kind::Count(_) => true,
                Kind::Num(num) => num.is_whole() && num.unit.is_none(),
                _ => false,
            };
            if self.has_joints
                && token.word() == Some("joint")
                && found.next_if(is_number).is_some()
            {
                continue;
            }
            let number = match found.peek().map(|next| &next.kind) {
                Some(Kind::Count(count)) if token.word() == Some("item") => *count as usize,
                _ => 0,
            };
            let Some(name) = self.items.name(number) else {
                out.push(token);
                continue;
            };
            let end = found.next().map_or(token.at.end, |number| number.at.end);
            let words = tokens(name, 0).into_iter();
            out.extend(words.map(|word| Token { at: token.at.start..end, ..word }));
        }
        out
    }
}
