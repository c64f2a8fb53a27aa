//! The nearest known word to one that is not known.

use std::borrow::Cow;

/// The known word fewest keystrokes away, where that is few for its length.
pub(crate) fn nearest<'a>(text: &str, known: impl Iterator<Item = &'a str>) -> Option<&'a str> {
    let letters = text.chars().count();
    let mut allowed = 1 + letters / 4;
    let mut found = None;
    for word in known {
        let Some(distance) = keystrokes_within(text, word, allowed) else { continue };
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
pub(crate) fn plain(text: &str) -> Cow<'_, str> {
    // Nearly every name of a table is so already.
    let is_letter = |byte: u8| {
        byte.is_ascii_graphic() && !byte.is_ascii_uppercase() && !matches!(byte, b'-' | b'_')
    };
    let mut before = b' ';
    let is_plain = text.bytes().all(|byte| {
        let goes_on = is_letter(byte) || byte == b' ' && before != b' ';
        before = byte;
        goes_on
    });
    if is_plain && (before != b' ' || text.is_empty()) {
        return text.into();
    }
    let spaced: String = if text.is_ascii() {
        text.to_ascii_lowercase().replace(['-', '_'], " ")
    } else {
        plain_letters(text).collect()
    };
    spaced.split_whitespace().collect::<Vec<_>>().join(" ").into()
}

/// Does a name of a table come to this plain word? Most are told apart by a letter.
pub(crate) fn comes_to(name: &str, plain: &str) -> bool {
    if !name.is_ascii() {
        return plain_letters(name).eq(plain.chars());
    }
    let letter = |byte: u8| if matches!(byte, b'-' | b'_') { b' ' } else { byte };
    let letters = name.bytes().map(|byte| letter(byte).to_ascii_lowercase());
    name.len() == plain.len() && letters.eq(plain.bytes())
}

/// The letters of [`plain`], their spaces as they are: all of it for a name of a table.
fn plain_letters(text: &str) -> impl Iterator<Item = char> {
    text.chars().map(|c| if c == '-' || c == '_' { ' ' } else { c }).flat_map(char::to_lowercase)
}

/// Letters to insert, delete or replace to turn one word into the other.
pub(crate) fn keystrokes(from: &str, to: &str) -> usize {
    keystrokes_within(from, to, usize::MAX).unwrap_or_default()
}

/// The same, where they are no more than so many.
pub(crate) fn keystrokes_within(from: &str, to: &str, most: usize) -> Option<usize> {
    if from.is_ascii() && to.is_ascii() {
        counted(from.as_bytes(), to.as_bytes(), most)
    } else {
        let letters = |text: &str| text.chars().collect::<Vec<char>>();
        counted(&letters(from), &letters(to), most)
    }
}

fn counted<T: PartialEq>(from: &[T], to: &[T], most: usize) -> Option<usize> {
    const USUAL: usize = 48;
    // Each letter more or less is a keystroke.
    if from.len().abs_diff(to.len()) > most {
        return None;
    }
    let (mut usual, mut long) = ([0; USUAL], Vec::new());
    let row = if let Some(row) = usual.get_mut(..=to.len()) {
        row
    } else {
        long.resize(to.len() + 1, 0);
        &mut long[..]
    };
    for (at, place) in row.iter_mut().enumerate() {
        *place = at;
    }
    for (at, letter) in from.iter().enumerate() {
        let mut left = at + 1;
        let Some((first, rest)) = row.split_first_mut() else { break };
        let mut diagonal = std::mem::replace(first, left);
        let mut least = left;
        // Each place held the row above; it takes its own.
        for (place, other) in rest.iter_mut().zip(to) {
            let above = *place;
            left = (diagonal + usize::from(letter != other)).min(above.min(left) + 1);
            least = least.min(left);
            (*place, diagonal) = (left, above);
        }
        // No row goes below the one above it.
        if least > most {
            return None;
        }
    }
    row.last().copied().filter(|count| *count <= most)
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
            ("kitt\u{e9}n", "sitting", 3),
            ("a long word of more letters than are usual in any name", "a", 53),
            ("a", "a long word of more letters than are usual in any name", 53),
        ] {
            assert_eq!(keystrokes(from, to), count, "{from:?} to {to:?}");
            assert_eq!(keystrokes_within(from, to, count), Some(count));
            if let Some(fewer) = count.checked_sub(1) {
                assert_eq!(keystrokes_within(from, to, fewer), None, "{from:?} to {to:?}");
            }
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
        for text in [
            "press fit",
            "press  fit",
            " press",
            "press ",
            "Press",
            "\u{c9}tau",
            "a_b",
            "",
            " ",
            "a\tb",
        ] {
            let letters: String = plain_letters(text).collect();
            assert_eq!(plain(text), letters.split_whitespace().collect::<Vec<_>>().join(" "));
            assert!(comes_to(text, &letters) && !comes_to(text, &(letters + "s")));
        }
    }
}
