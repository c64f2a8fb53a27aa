//! Lines of text: wrapped words, and the part of a long line about a place.

use crate::render::printable::is_obeyed;

use std::sync::atomic::{AtomicUsize, Ordering};

/// The widest line: of a page, and of a terminal where it is known.
static COLUMNS: AtomicUsize = AtomicUsize::new(80);

/// Wraps words to the terminal's width from here on, within what can be read:
/// 40 to 100 columns. `COLUMNS` of the environment goes before what it says.
pub fn follow_terminal() {
    let told: Option<usize> =
        std::env::var("COLUMNS").ok().and_then(|columns| columns.parse().ok());
    #[cfg(feature = "command")]
    let seen = || terminal_size::terminal_size().map(|(width, _)| usize::from(width.0));
    #[cfg(not(feature = "command"))]
    let seen = || None;
    if let Some(columns) = told.or_else(seen) {
        COLUMNS.store(columns.clamp(40, 100), Ordering::Relaxed);
    }
}

/// Appends words in lines no wider than that, the first after `lead`, the
/// others indented under it. What stands between backquotes is never broken.
pub(crate) fn wrapped(out: &mut String, lead: &str, words: &str) {
    let most = COLUMNS.load(Ordering::Relaxed);
    let indent = columns(lead);
    let mut line = lead.to_owned();
    let mut width = indent;
    let mut quoted = false;
    let spaces = words.split(|c: char| {
        quoted ^= c == '`';
        c == ' ' && !quoted
    });
    for word in spaces {
        let length = columns(word);
        if width + 1 + length > most && width > indent {
            out.push_str(line.trim_end());
            out.push('\n');
            line = " ".repeat(indent);
            width = indent;
        }
        if width > indent {
            line.push(' ');
            width += 1;
        }
        line.push_str(word);
        width += length;
    }
    out.push_str(line.trim_end());
    out.push('\n');
}

/// The columns that a text takes: a terminal's codes for colour take none.
fn columns(text: &str) -> usize {
    let mut in_code = false;
    let seen = text.chars().filter(|c| {
        let is_shown = !in_code && *c != '\x1b';
        in_code = (in_code || *c == '\x1b') && *c != 'm';
        is_shown
    });
    seen.count()
}

/// The part of a line about a place, how many columns stand before the place
/// and how many it takes. What a
/// terminal would obey shows as a space: the place stays under its column.
pub(crate) fn excerpt(line: &str, start: usize, end: usize) -> (String, usize, usize) {
    const AROUND: usize = 36;
    let before: Vec<char> = line.get(..start).unwrap_or(line).chars().collect();
    let under = line.get(start..end).unwrap_or_default().chars().count();
    let after: Vec<char> = line.get(start..).unwrap_or_default().chars().collect();
    let cut = before.len().saturating_sub(AROUND);
    let lead = if cut > 0 { "..." } else { "" };
    let tail = if after.len() > AROUND { "..." } else { "" };
    let shown: String = before
        .iter()
        .skip(cut)
        .chain(after.iter().take(AROUND))
        .map(|c| if is_obeyed(*c) { ' ' } else { *c })
        .collect();
    (format!("{lead}{shown}{tail}"), lead.len() + before.len() - cut, under.min(AROUND))
}
