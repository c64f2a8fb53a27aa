//! Words inside SVG and HTML.

use crate::render::printable::is_obeyed;

/// Words as the text of an element or inside the quotes of an attribute. What
/// XML may not hold, and what would turn the order of a line, shows as its
/// number: `\u{7}`.
pub(crate) fn escaped(words: &str) -> String {
    let mut out = String::with_capacity(words.len());
    for c in words.chars() {
        match c {
            '&' => out.push_str("&amp;"),
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '"' => out.push_str("&quot;"),
            '\'' => out.push_str("&#39;"),
            '\t' | '\n' | '\r' => out.push(' '),
            c if is_obeyed(c) || is_no_character(c) => out.extend(c.escape_unicode()),
            c => out.push(c),
        }
    }
    out
}

/// A code point that Unicode keeps from ever being a character.
fn is_no_character(c: char) -> bool {
    let code = u32::from(c);
    code & 0xfffe == 0xfffe || (0xfdd0..=0xfdef).contains(&code)
}
