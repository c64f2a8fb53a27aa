//! How wide words are drawn, and words in lines of a width.

/// How high letters stand over their line, and how far they hang under it, in
/// sizes of the type.
pub(crate) const OVER: f64 = 0.80;
pub(crate) const UNDER: f64 = 0.25;

/// The width of words in a sans-serif face, in sizes of the type: no face that a
/// browser takes for one is wider, or nearly so.
pub(crate) fn width(words: &str) -> f64 {
    words.chars().map(of).sum()
}

fn of(c: char) -> f64 {
    match c {
        ' ' | '\u{a0}' | '.' | ',' | ':' | ';' | '\'' | '|' | '!' | 'i' | 'j' | 'l' | 'I' => 0.34,
        '(' | ')' | '/' | '-' | 't' | 'f' | 'r' | '"' => 0.42,
        '0'..='9' | 'a'..='z' if c != 'm' && c != 'w' => 0.64,
        'm' | 'w' | 'M' | 'W' | '%' | '@' => 1.0,
        'A'..='Z' => 0.76,
        _ if c.is_ascii() => 0.85,
        // Han, Kana and Hangul fill a square; pictures more.
        _ if u32::from(c) >= 0x1_0000 => 1.4,
        _ if u32::from(c) >= 0x1100 => 1.1,
        _ => 0.8,
    }
}

/// Words in lines that are no wider than so many sizes of the type. A word that
/// is wider alone is parted.
pub(crate) fn lines(words: &str, most: f64) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    let mut line = String::new();
    for word in words.split_whitespace() {
        if !line.is_empty() && width(&line) + of(' ') + width(word) > most {
            lines.push(std::mem::take(&mut line));
        }
        if !line.is_empty() {
            line.push(' ');
        }
        for c in word.chars() {
            if !line.is_empty() && width(&line) + of(c) > most {
                lines.push(std::mem::take(&mut line));
            }
            line.push(c);
        }
    }
    if !line.is_empty() {
        lines.push(line);
    }
    lines
}
