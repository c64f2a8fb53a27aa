//! A phrase as the tokens want it: its marks as a keyboard has them, what is written apart
//! joined, what is cut short in full.

use super::{dial, number, short};

/// Short forms in full; quotation marks, dashes and written-out fractions as a keyboard
/// has them.
pub(super) fn plain_marks(text: &str) -> String {
    let text = short::in_full(text);
    let text = dial::in_short(&text);
    let mut plain = String::with_capacity(text.len());
    for c in text.chars() {
        match c {
            '\u{2019}' | '\u{2018}' | '\u{b4}' | '`' => plain.push('\''),
            '\u{201c}' | '\u{201d}' | '\u{2033}' => plain.push('"'),
            '\u{2013}' | '\u{2014}' | '\u{2212}' | '\u{2010}' | '\u{2011}' => plain.push('-'),
            '\u{bd}' => plain.push_str(" 1/2"),
            '\u{bc}' => plain.push_str(" 1/4"),
            '\u{be}' => plain.push_str(" 3/4"),
            '\u{215b}' => plain.push_str(" 1/8"),
            '\u{215c}' => plain.push_str(" 3/8"),
            '\u{215d}' => plain.push_str(" 5/8"),
            '\u{215e}' => plain.push_str(" 7/8"),
            _ => plain.push(c),
        }
    }
    // `#606 woodruff`: a number of its own, and no drill's.
    if let Some(at) = plain.find('#')
        && plain.to_ascii_lowercase().contains("woodruff")
    {
        plain.remove(at);
    }
    // `2 tpf... 14 long`: a pause.
    while let Some(at) = plain.find("...") {
        let end = plain[at..].find(|c| c != '.').map_or(plain.len(), |more| at + more);
        plain.replace_range(at..end, ", ");
    }
    // `1" BSP`: a pipe thread's size, with the mark of its inches or without.
    if let Some(at) = plain.find("\" ") {
        let next = plain[at + 2..].split([' ', ',', '?']).next().unwrap_or_default();
        if ["bsp", "bspp", "bspt", "npt", "bsw", "bsf"].contains(&&*next.to_ascii_lowercase()) {
            plain.remove(at);
        }
    }
    // `65 per cent`, `RLS 5 seats`
    let lower = plain.to_ascii_lowercase();
    if let Some(at) = lower.find(" per cent") {
        plain.replace_range(at..at + " per cent".len(), " percent");
    } else if let Some(at) = ["rls ", "rms "].iter().find_map(|lead| lower.find(lead))
        && number::digits(&plain, at + 4) > at + 4
    {
        plain.remove(at + 3);
    }
    // `from 40 to 95 degrees f`: both are.
    if let Some(both) = short::both_degrees(&plain) {
        plain = both;
    }
    // `50 round steel 1.2m long, what does it weigh`
    let is_metre = |at: &usize| plain[..*at].ends_with(|c: char| c.is_ascii_digit());
    if (plain.contains("weigh") || plain.contains("heavy"))
        && let Some(at) = plain.match_indices("m ").map(|(at, _)| at).find(is_metre)
    {
        plain.insert(at, ' ');
    }
    // `dial on the diameter, thou a division`
    if let Some(at) = ["a", "per"].iter().find_map(|each| plain.find(&format!("thou {each} ")))
        && (at == 0 || plain[..at].trim_end().ends_with(','))
    {
        plain.insert_str(at, "1 ");
    }
    // `number 10-32`, `no. 8-32`: a screw's size and its pitch.
    let lower = plain.to_ascii_lowercase();
    for lead in ["number ", "no. ", "no "] {
        if let Some(at) = lower.find(lead).filter(|at| *at == 0 || lower.as_bytes()[at - 1] == b' ')
        {
            let end = number::digits(&plain, at + lead.len());
            let pitch = number::digits(&plain, end + 1);
            if end > at + lead.len() && number::byte(&plain, end) == Some(b'-') && pitch > end + 1 {
                plain.replace_range(at..at + lead.len(), "#");
                break;
            }
        }
    }
    plain
}
