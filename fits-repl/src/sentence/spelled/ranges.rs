//! Ranges, threads and offsets from a size as people speak them, as figures.

use crate::sentence::{
    number::{byte, fraction_value},
    spelled::{
        PITCHED,
        words::{THREADED, Word, words},
    },
};

const SERIES: &[&str] = &["bsp", "bspp", "bsw", "bsf", "whitworth", "whit", "npt", "unc", "unf"];

/// `between .7503 and .7505` as `.7503..7505`; `the collar's 20` as `the collar
/// is 20`; `1/2 inch BSP` as `1/2 BSP`.
pub(super) fn ranges(line: &str) -> String {
    let words = words(line);
    let value = |word: &Word| {
        let number = word.text.trim_end_matches(|c: char| c.is_ascii_alphabetic());
        let unit = &word.text[number.len()..];
        let places = number.split_once('.').map_or(0, |(_, places)| places.len());
        (matches!(unit, "" | "in" | "mm") && places > 1)
            .then(|| number.parse::<f64>().ok().map(|value| (value, number.len())))
            .flatten()
    };
    let is_threaded = words.iter().any(|word| THREADED.contains(&&*word.text));
    let text_of = |at: usize| words.get(at).map_or("", |word| &*word.text);
    let mut text = String::with_capacity(line.len());
    let (mut from, mut at) = (0, 0);
    while let Some(word) = words.get(at) {
        let before = at.checked_sub(1).map_or("", text_of);
        // `m8 tap drill`: a thread, where a thread is spoken of.
        if is_threaded
            && line[word.from..word.to].starts_with('m')
            && word.text.len() > 1
            && word.text[1..].bytes().all(|byte| byte.is_ascii_digit())
        {
            text.push_str(&line[from..word.from]);
            text.push('M');
            from = word.from + 1;
        }
        // `1/2 inch 10 tpi acme`: size and pitch of one thread.
        let pitch = if matches!(text_of(at + 1), "inch" | "in") { at + 2 } else { at + 1 };
        let is_tpi = matches!(text_of(pitch + 1), "tpi")
            && PITCHED.iter().chain(SERIES).any(|series| text_of(pitch + 2) == *series);
        let is_number = |word: &str| {
            word.starts_with(|c: char| c.is_ascii_digit())
                && word.bytes().all(|byte| byte.is_ascii_digit() || byte == b'/')
        };
        if is_tpi && is_number(&word.text) && is_number(text_of(pitch)) {
            text.push_str(&line[from..word.to]);
            text.push('-');
            text.push_str(text_of(pitch));
            from = words[pitch + 1].to;
            at = pitch + 2;
            continue;
        }
        // `065 wall`, `65 wall`: gauge stock is called by its thou.
        let is_thin = text_of(at + 1) == "wall" && (2..=3).contains(&word.text.len());
        if is_thin && word.text.bytes().all(|byte| byte.is_ascii_digit()) {
            let shows_inches = line.contains('/') || line.contains("inch") || line.contains(" in ");
            let goes_on = line[..word.from].ends_with(['.', '/', '-']);
            if !goes_on && (word.text.starts_with('0') && word.text.len() == 3) {
                text.push_str(&line[from..word.from]);
                text.push('.');
                from = word.from;
            } else if !goes_on
                && shows_inches
                && word.text.parse().is_ok_and(|wall: u32| wall >= 20)
            {
                text.push_str(&line[from..word.to]);
                text.push_str(" thou");
                from = word.to;
            }
        }
        let bare = word.text.strip_suffix("'s");
        if let (Some((low, _)), "to" | "and", Some(next)) =
            (value(word), text_of(at + 1), words.get(at + 2))
            && let Some((high, _)) = value(next)
            && (text_of(at + 1) == "to" || before == "between")
            && before != "from"
            && low < high
            && high < 1.004 * low
            && words[at + 1].follows
            && next.follows
        {
            let start = if before == "between" { words[at - 1].from } else { word.from };
            text.push_str(&line[from..start]);
            text.push_str(&line[word.from..word.to]);
            text.push_str("..");
            text.push_str(&line[next.from..next.to]);
            from = next.to;
            at += 3;
            continue;
        }
        if let Some(bare) = bare
            && !["it", "what", "that", "there", "he", "she", "let", "where", "who", "here", "how"]
                .contains(&bare)
        {
            let is_number = text_of(at + 1).starts_with(|c: char| c.is_ascii_digit() || c == '.');
            text.push_str(&line[from..word.to - 2]);
            text.push_str(if is_number { " is" } else { "" });
            from = word.to;
        } else if word.text == "inch"
            && SERIES.contains(&text_of(at + 1))
            && before.contains(|c: char| c.is_ascii_digit())
        {
            text.push_str(&line[from..word.from]);
            from = words[at + 1].from;
        }
        at += 1;
    }
    text.push_str(&line[from..]);
    text
}

/// `2 thou over 5/8`, `a tenth under 1/2`: the size itself, in decimals.
pub(super) fn about_a_size(line: &str) -> String {
    let words = words(line);
    let is_taper = words.iter().any(|word| {
        ["taper", "tail", "collar", "align", "bar", "chuck", "headstock"]
            .iter()
            .any(|lead| word.text.starts_with(lead))
    });
    let mut text = String::with_capacity(line.len());
    let (mut from, mut at) = (0, 0);
    while let Some(word) = words.get(at) {
        if let Some((size, after)) = offset(&words, at).filter(|_| !is_taper)
            && words[at + 1..after].iter().all(|word| word.follows)
            // `half a thou over 7/8 h6`: over the size, or over its limit.
            && !words.get(after).is_some_and(|next| next.follows && is_class(&next.text))
            && byte(line, words[after - 1].to) != Some(b'-')
        {
            text.push_str(&line[from..word.from]);
            text.push_str(&size);
            from = words[after - 1].to;
            at = after;
        } else {
            at += 1;
        }
    }
    text.push_str(&line[from..]);
    text
}

/// `h6`, `H7/g6`, `RC5`
fn is_class(word: &str) -> bool {
    let letters = word.bytes().take_while(u8::is_ascii_alphabetic).count();
    (1..=2).contains(&letters)
        && word.len() <= 7
        && word.as_bytes().get(letters).is_some_and(u8::is_ascii_digit)
}

fn offset(words: &[Word], at: usize) -> Option<(String, usize)> {
    let text = |at: usize| words.get(at).map_or("", |word| &*word.text);
    // In ten-millionths of an inch: every 64th is whole.
    let amount = match text(at) {
        "a" | "an" | "one" => 1.0,
        number if number.bytes().all(|byte| byte.is_ascii_digit() || byte == b'.') => {
            number.parse::<f64>().ok()?
        }
        _ => return None,
    };
    let step = match text(at + 1) {
        "thou" => 10_000.0,
        "tenth" | "tenths" => 1_000.0,
        _ => return None,
    };
    let (sign, next) = match (text(at + 2), text(at + 3)) {
        ("over" | "above" | "under" | "below", "size") => return None,
        ("over" | "above", _) => (1.0, at + 3),
        ("under" | "below", _) => (-1.0, at + 3),
        ("bigger" | "larger", "than") => (1.0, at + 4),
        ("smaller" | "less", "than") | ("shy", "of") => (-1.0, at + 4),
        _ => return None,
    };
    // `under a 7/16`, but not an inch.
    let is_article = matches!(text(next), "a" | "an" | "the") && text(next + 1) != "inch";
    let next = next + usize::from(is_article);
    let base = text(next);
    let is_size = base.contains('/') && base.bytes().all(|b| b.is_ascii_digit() || b == b'/');
    // `.500`, `1.0000`: nobody writes so many places of a millimetre and adds thousandths
    // of an inch.
    let is_fine =
        base.starts_with('.') || base.split_once('.').is_some_and(|(_, end)| end.len() > 2);
    let mut after = next + 1;
    let value = if is_size {
        fraction_value(base)
    } else if matches!(base, "a" | "an") && text(after) == "inch" {
        1.0
    } else {
        let whole: f64 = base.parse().ok()?;
        if !is_fine && !matches!(text(after), "inch" | "in") || whole >= 4.0 {
            return None;
        }
        whole
    };
    if matches!(text(after), "inch" | "in") {
        after += 1;
    }
    let size = value * 1e7 + sign * amount * step;
    (value > 0.0 && value < 64.0 && amount < 100.0 && size > 0.0).then(|| {
        let text = format!("{:.7}", size / 1e7);
        (format!("{}in", text.trim_end_matches('0')), after)
    })
}
