//! The nearest known word to one that is not known.

/// The known word fewest keystrokes away, where that is few for its length.
pub(crate) fn nearest<'a>(text: &str, known: impl Iterator<Item = &'a str>) -> Option<&'a str> {
    let letters = text.chars().count();
    let mut allowed = 1 + letters / 4;
    let mut found = None;
    for word in known {
        // Each letter more or less is a keystroke.
        if word.chars().count().abs_diff(letters) > allowed {
            continue;
        }
        let distance = keystrokes(text, word);
        if distance > allowed {
            continue;
        }
        found = Some(word);
        // The first of equals: the tables' own order.
        match distance.checked_sub(1) {
            Some(fewer) => allowed = fewer,
            None => break,
        }
    }
    found
}

/// A word as the tables hold it: small letters, hyphens as spaces, single spaces.
pub(crate) fn plain(text: &str) -> String {
    let spaced: String = plain_letters(text).collect();
    spaced.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// The letters of [`plain`], their spaces as they are: all of it for a name of a table.
pub(crate) fn plain_letters(text: &str) -> impl Iterator<Item = char> {
    text.chars().map(|c| if c == '-' || c == '_' { ' ' } else { c }).flat_map(char::to_lowercase)
}

/// Letters to insert, delete or replace to turn one word into the other.
pub(crate) fn keystrokes(from: &str, to: &str) -> usize {
    let to: Vec<char> = to.chars().collect();
    let mut row: Vec<usize> = (0..=to.len()).collect();
    for (at, letter) in from.chars().enumerate() {
        let mut left = at + 1;
        let Some((first, rest)) = row.split_first_mut() else { break };
        let mut diagonal = std::mem::replace(first, left);
        // Each place held the row above; it takes its own.
        for (place, other) in rest.iter_mut().zip(&to) {
            let above = *place;
            left = (diagonal + usize::from(letter != *other)).min(above.min(left) + 1);
            (*place, diagonal) = (left, above);
        }
    }
    row.last().copied().unwrap_or_default()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn keystrokes_are_counted() {
        for (from, to, count) in [
            ("", "", 0),
            ("press", "press", 0),
            ("pres", "press", 1),
            ("dowle", "dowel", 2),
            ("", "slip", 4),
            ("slip", "", 4),
            ("kitten", "sitting", 3),
        ] {
            assert_eq!(keystrokes(from, to), count, "{from:?} to {to:?}");
        }
    }

    #[test]
    fn far_words_are_no_suggestion() {
        let known = ["press", "sliding"];
        assert_eq!(nearest("presss", known.into_iter()), Some("press"));
        assert_eq!(nearest("slidding", known.into_iter()), Some("sliding"));
        assert_eq!(nearest("wobbly", known.into_iter()), None);
    }

    #[test]
    fn words_are_made_plain() {
        assert_eq!(plain(" Press-Fit  "), "press fit");
    }
}
