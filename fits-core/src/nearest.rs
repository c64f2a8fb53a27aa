//! The nearest known word to one that is not known.

/// The known word fewest keystrokes away, where that is few for its length.
pub(crate) fn nearest<'a>(text: &str, known: impl Iterator<Item = &'a str>) -> Option<&'a str> {
    let allowed = 1 + text.chars().count() / 4;
    known
        .map(|word| (keystrokes(text, word), word))
        .filter(|&(distance, _)| distance <= allowed)
        // The first of equals: the tables' own order.
        .min_by_key(|&(distance, _)| distance)
        .map(|(_, word)| word)
}

/// A word as the tables hold it: small letters, hyphens as spaces, single spaces.
pub(crate) fn plain(text: &str) -> String {
    let spaced: String = text
        .chars()
        .map(|c| if c == '-' || c == '_' { ' ' } else { c })
        .flat_map(char::to_lowercase)
        .collect();
    spaced.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// Letters to insert, delete or replace to turn one word into the other.
pub(crate) fn keystrokes(from: &str, to: &str) -> usize {
    let to: Vec<char> = to.chars().collect();
    let mut row: Vec<usize> = (0..=to.len()).collect();
    for (at, letter) in from.chars().enumerate() {
        let mut next = Vec::with_capacity(row.len());
        let mut left = at + 1;
        next.push(left);
        // Each step looks at the row above in pairs: (diagonal, above).
        for (pair, other) in row.windows(2).zip(&to) {
            if let [diagonal, above] = *pair {
                left = (diagonal + usize::from(letter != *other)).min(above.min(left) + 1);
                next.push(left);
            }
        }
        row = next;
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
