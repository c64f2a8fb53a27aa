//! The short forms that a note gives for its own words.

use std::collections::HashMap;

use fits_core::size::Unit;

use super::{
    lexicon,
    token::{Kind, Token, tokens},
    told::Told,
};

/// The note's own short forms: `PF press`.
#[derive(Default)]
pub(super) struct Legend {
    full: HashMap<String, String>,
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
        let mut found = tokens(text, from);
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
}
