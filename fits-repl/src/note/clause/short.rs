//! Parts called by a short form of their names: `pl` for the side plates.

use fits_core::job::whole::Part;

use crate::note::{
    lexicon::{feature, fit, is_material, is_short_of, is_small, leads_to_mate, stem},
    token::Token,
};

/// The only part whose name ends with what the words at a place are short for, and
/// how many words.
pub(super) fn part_in_short(parts: &[Part], tokens: &[Token]) -> Option<(usize, usize)> {
    let words: Vec<&str> =
        tokens.iter().take(3).map_while(Token::word).take_while(|word| !stops(word)).collect();
    (1..=words.len()).rev().find_map(|count| {
        let said = &words[..count];
        said.iter().any(|word| is_short(word)).then_some(())?;
        let is_called = |part: &usize| {
            let name = parts[*part].name.to_lowercase();
            let name: Vec<&str> = name.split_whitespace().collect();
            let behind = name.len().checked_sub(count).map(|from| &name[from..]);
            behind.is_some_and(|name| said.iter().zip(name).all(|(said, full)| means(said, full)))
        };
        let mut all = (0..parts.len()).filter(is_called);
        all.next().filter(|_| all.next().is_none()).map(|part| (part, count))
    })
}

/// Letters with no vowel behind the first, as no word has.
fn is_short(word: &str) -> bool {
    word.len() > 1
        && word.chars().all(|c| c.is_ascii_alphabetic())
        && !word[1..].contains(['a', 'e', 'i', 'o', 'u', 'y'])
}

fn stops(word: &str) -> bool {
    is_small(word)
        || leads_to_mate(word)
        || is_material(word)
        || feature(word).is_some()
        || fit(&[word]).is_some()
}

fn means(said: &str, full: &str) -> bool {
    let bare = |word: &str| word.strip_suffix('s').unwrap_or(word).to_owned();
    let (one, all) = (bare(said), bare(full));
    one == all
        || stem(said) == stem(full)
        || is_short(said) && one.len() > 1 && (is_short_of(&one, &all) || is_short_of(said, full))
}
