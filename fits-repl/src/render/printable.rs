//! What a terminal may be sent.

use std::borrow::Cow;

use crate::render::Colour;

/// The codes of our own colours; see [`printable`].
pub(crate) const STRONG: &str = "\x1b[1m";
pub(crate) const GOOD: &str = "\x1b[1;32m";
pub(crate) const BAD: &str = "\x1b[1;31m";
pub(crate) const FAINT: &str = "\x1b[2m";
pub(crate) const PLAIN: &str = "\x1b[0m";

/// Would a terminal obey the character rather than show it? The control
/// characters, and those that turn the order of a line around or end it
/// (Unicode Standard Annex #9, table 4: explicit directional formatting; and
/// the line and paragraph separators).
pub(crate) fn is_obeyed(c: char) -> bool {
    c.is_control()
        || matches!(c, '\u{61c}' | '\u{200e}' | '\u{200f}' | '\u{2028}'..='\u{202e}' | '\u{2066}'..='\u{2069}')
}

/// A text as a terminal may be sent it: what came from a file or a query and
/// would be obeyed shows as its number, as `\u{202e}`; a tab as a space. Line
/// feeds stay, and where colour is on the five codes of our own colours.
pub fn printable(text: &str, colour: Colour) -> Cow<'_, str> {
    // Of plain letters no character is looked at by itself.
    let is_plain = text.bytes().fold(true, |all, byte| all & matches!(byte, b'\n' | b' '..=b'~'));
    if is_plain || !text.chars().any(|c| is_obeyed(c) && c != '\n') {
        return Cow::Borrowed(text);
    }
    let mut out = String::with_capacity(text.len() + 16);
    let mut rest = text;
    while let Some(c) = rest.chars().next() {
        let own = [STRONG, GOOD, BAD, FAINT, PLAIN].into_iter().find(|code| rest.starts_with(code));
        if let Some(code) = own.filter(|_| colour == Colour::On) {
            out.push_str(code);
            rest = rest.get(code.len()..).unwrap_or_default();
            continue;
        }
        match c {
            '\t' => out.push(' '),
            c if is_obeyed(c) && c != '\n' => out.extend(c.escape_unicode()),
            c => out.push(c),
        }
        rest = rest.get(c.len_utf8()..).unwrap_or_default();
    }
    Cow::Owned(out)
}
