//! The marks that an outline opens its lines with: `1`, `2.`, `Item 3`; `a)`, `(b)`.

/// How the numbers of the parts are written.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum Style {
    Bare,
    Stop,
    Bracket,
    Hash,
    Item,
}

/// The number that a line at the margin begins with, how it is written, and where the
/// name behind it begins: `1 Screw`, `1) Screw`, `#1 Screw`, `Item 1: Screw`.
pub(super) fn number(raw: &str) -> Option<(Style, usize, usize)> {
    let lower = raw.get(..5).map(str::to_ascii_lowercase);
    let (lead, at) = if raw.starts_with('#') {
        (Some(Style::Hash), 1)
    } else if lower.as_deref() == Some("item ") {
        (Some(Style::Item), 5)
    } else {
        (None, 0)
    };
    let digits = raw[at..].bytes().take_while(u8::is_ascii_digit).count();
    let number = raw[at..at + digits].parse().ok().filter(|number| *number > 0)?;
    let rest = &raw[at + digits..];
    let (sign, style) = match rest.chars().next()? {
        '.' => (1, Style::Stop),
        ')' => (1, Style::Bracket),
        ':' => (1, Style::Bare),
        ' ' | '\t' => (0, Style::Bare),
        _ => return None,
    };
    let name = rest[sign..].trim_start_matches([' ', '\t', '-']);
    let is_parted = rest[sign..].starts_with([' ', '\t']);
    // `2 6203 2RS`: a bearing goes by its number.
    let is_bearing = name.bytes().take_while(u8::is_ascii_digit).count() > 3;
    (is_parted && digits < 3 && (name.starts_with(char::is_alphabetic) || is_bearing))
        .then(|| (lead.unwrap_or(style), number, raw.len() - name.len()))
}

/// The letter of a feature of a part with that number, counted from 0, and where its
/// text begins: `a) journal`, `b. seat`, `(c) bore`, `d - end`, `2a journal`.
pub(super) fn letter(raw: &str, part: usize) -> Option<(usize, usize)> {
    let text = raw.trim_start();
    let own = part.to_string();
    let numbered = text.strip_prefix(own.as_str());
    let rest = numbered.unwrap_or(text);
    let (opened, rest) = rest.strip_prefix('(').map_or((false, rest), |rest| (true, rest));
    let first = rest.chars().next().filter(char::is_ascii_alphabetic)?;
    let rest = &rest[1..];
    let behind = if opened {
        rest.strip_prefix(')')
    } else {
        let signs = [")", ".", ":", " -"].iter().find_map(|sign| rest.strip_prefix(sign));
        signs.or_else(|| numbered.map(|_| rest))
    }?;
    let name = behind.trim_start();
    (behind.starts_with([' ', '\t']) && !name.is_empty())
        .then(|| (place(first), raw.len() - name.len()))
}

/// The place of a letter: `a` is 0.
pub(super) const fn place(letter: char) -> usize {
    (letter.to_ascii_lowercase() as usize).wrapping_sub('a' as usize)
}
