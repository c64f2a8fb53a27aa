//! References to the parts and features of an outline: `2b`, `4a`, `press in 7`.

use std::ops::Range;

use super::{labels, outline::Outline};
use crate::note::{
    dates, lexicon,
    token::{Kind, tokens},
    work,
};

/// A word between spaces, without the signs about it.
struct Word<'a> {
    text: &'a str,
    at: Range<usize>,
    /// What stands right behind it: `,` of `2b,`.
    sign: Option<char>,
}

/// The references of a line from a place on, each with the names it stands for; `under`
/// is the part whose line it is.
pub(super) fn of(
    outline: &Outline,
    raw: &str,
    from: usize,
    under: Option<usize>,
) -> Vec<(Range<usize>, String)> {
    let day = if from == 0 { day(raw) } else { from };
    let words = words(raw, day);
    let threads = threads(raw, day);
    let mut out = Vec::new();
    for (at, word) in words.iter().enumerate() {
        let is_of_thread =
            threads.iter().any(|it| it.start < word.at.end && word.at.start <= it.end);
        let before = at.checked_sub(1).map(|at| &words[at]);
        let next = words.get(at + 1);
        if is_of_thread {
            continue;
        }
        if let Some(labels) = feature_labels(outline, word, next) {
            let spelled = labels.into_iter().map(|(part, letter, place)| {
                (place, full_name(outline, part, Some(letter), under))
            });
            out.extend(spelled);
        } else if let Some(part) = part_label(outline, word.text, under) {
            let is_led = at == 0 && under.is_none() && opens_talk(outline, part, word, next);
            if let Some(before) = before.filter(|before| is_key(before.text)) {
                out.push((before.at.start..word.at.end, outline.parts[part].name.clone()));
            } else if is_led || is_mate(&words, at) {
                out.push((word.at.clone(), outline.parts[part].name.clone()));
            }
        }
    }
    out
}

/// Where the text behind the date of a line begins: `3-22  6: bored` has one as well as
/// `3-22 bored`.
fn day(raw: &str) -> usize {
    let first = raw.find([' ', '\t']).filter(|end| *end > 0).map(|end| raw.split_at(end));
    let alone = || {
        let (date, rest) = first?;
        dates::date(&format!("{date} part"), true)?;
        Some(raw.len() - rest.trim_start().len())
    };
    dates::date(raw, true).map(|(_, end)| end).or_else(alone).unwrap_or(0)
}

/// The words of a line from a place on.
fn words(raw: &str, from: usize) -> Vec<Word<'_>> {
    let mut out = Vec::new();
    let mut at = from;
    for text in raw[from..].split([' ', '\t']) {
        let lead = text.len() - text.trim_start_matches(['(', '[', '=', '~']).len();
        let core = text[lead..].trim_end_matches([',', ';', ':', '.', ')', ']', '?', '!']);
        let core = core.strip_suffix("'s").unwrap_or(core);
        let start = at + lead;
        if !core.is_empty() {
            let sign = text[lead + core.len()..].chars().next();
            out.push(Word { text: core, at: start..start + core.len(), sign });
        }
        at += text.len() + 1;
    }
    out
}

/// The places of threads with the class behind them: `1/2-13 UNC 2A`.
fn threads(raw: &str, from: usize) -> Vec<Range<usize>> {
    let found = tokens(&raw[from..], from);
    let is_series = |word: &str| matches!(word, "unc" | "unf" | "unef" | "un" | "class");
    let threads = found.iter().enumerate().filter_map(|(at, token)| {
        let is_thread =
            matches!(token.kind, Kind::Thread(_)) || token.word().is_some_and(is_series);
        let next = found.get(at + 1).map_or(token.at.end, |next| next.at.start);
        is_thread.then_some(token.at.start..next)
    });
    threads.collect()
}

/// The features that a word means: `2b`, `2b/3b`.
fn feature_labels(
    outline: &Outline,
    word: &Word<'_>,
    next: Option<&Word<'_>>,
) -> Option<Vec<(usize, usize, Range<usize>)>> {
    // `3d printed`; and which of `2a/3b .7502/.7498` is whose is asked.
    let is_pair = word.text.contains(['/', '+', '&']);
    let figures = |text: &str| text.contains('/') && text.starts_with(is_figure);
    if next.is_some_and(|next| next.text.starts_with("print") || is_pair && figures(next.text)) {
        return None;
    }
    let mut at = word.at.start;
    let labels = word.text.split_inclusive(['/', '+', '&']).map(|piece| {
        let label = piece.trim_end_matches(['/', '+', '&']);
        let place = at..at + label.len();
        at += piece.len();
        feature_label(outline, label).map(|(part, letter)| (part, letter, place))
    });
    labels.collect()
}

const fn is_figure(c: char) -> bool {
    c.is_ascii_digit() || c == '.'
}

/// The part and the letter of `2b`, where the outline has them.
fn feature_label(outline: &Outline, label: &str) -> Option<(usize, usize)> {
    let digits = label.bytes().take_while(u8::is_ascii_digit).count();
    let mut letters = label[digits..].chars();
    let letter = labels::place(letters.next()?);
    let part: usize = label[..digits].parse().ok()?;
    let part = part.checked_sub(1)?;
    let is = letters.next().is_none() && letter < outline.parts.get(part)?.features.len();
    is.then_some((part, letter))
}

/// The other part of the outline that has such a number: `7`, `#7`.
fn part_label(outline: &Outline, text: &str, under: Option<usize>) -> Option<usize> {
    let is_number =
        !text.is_empty() && text.len() < 3 && text.bytes().all(|it| it.is_ascii_digit());
    let part = text.parse::<usize>().ok().filter(|_| is_number)?.checked_sub(1)?;
    (part < outline.parts.len() && Some(part) != under).then_some(part)
}

/// The part's name and the feature's; the feature's alone on a line of the part.
fn full_name(
    outline: &Outline,
    part: usize,
    letter: Option<usize>,
    under: Option<usize>,
) -> String {
    let one = &outline.parts[part];
    let feature = letter.map(|letter| one.features[letter].full()).unwrap_or_default();
    if under == Some(part) && !feature.is_empty() {
        return feature;
    }
    format!("{} {feature}", one.name).trim_end().to_owned()
}

/// `item 7`, `part 7`.
fn is_key(word: &str) -> bool {
    matches!(word.to_ascii_lowercase().as_str(), "item" | "part" | "pt" | "no" | "no.")
}

/// `press in 7`: is the number at a place that of a mate? No unit, size or thing that is
/// counted stands behind it, and no word before it that wants a size.
fn is_mate(words: &[Word<'_>], at: usize) -> bool {
    let Some((lead, led)) = words[..at].split_last() else { return false };
    let stops =
        words[at].sign.is_some_and(|sign| matches!(sign, ',' | ';' | '.' | ')' | '?' | ':'));
    let next = words.get(at + 1).map(|next| next.text);
    // `bore of 2 came out 1.0035`
    let of_feature = lead.text == "of"
        && led.last().is_some_and(|word| lexicon::feature(&word.text.to_lowercase()).is_some())
        && next.is_some_and(lexicon::says_measured);
    let ends = stops
        || next.is_none_or(|next| {
            matches!(
                next,
                "and" | "when" | "with" | "after" | "before" | "but" | "so" | "once" | "at"
            )
        });
    let verb = led.last().filter(|word| word.sign.is_none()).map_or("", |word| word.text);
    of_feature
        || ends && lead.sign.is_none() && leads(&lead.text.to_lowercase(), &verb.to_lowercase())
}

/// Does a word lead to a mate behind another: `runs in`, `key for`? `turned down for 2`
/// says how far, `holes on 3` on which circle, `cut in 2` in how many.
fn leads(lead: &str, verb: &str) -> bool {
    let is_fit = lexicon::fit(&[verb]).is_some() || joins(verb);
    let is_figure = verb.contains(|c: char| c.is_ascii_digit());
    let has_work = work::is_work(verb)
        || work::works_to(verb)
        || work::worked_to(verb)
        || matches!(verb, "down" | "up" | "back" | "out" | "holes" | "split" | "made" | "one");
    match lead {
        "to" | "of" => is_fit || lead == "of" && matches!(verb, "end" | "side" | "face" | "top"),
        "in" | "into" | "on" | "onto" | "for" | "with" | "through" | "thru" | "over" => {
            is_fit || !(has_work || is_figure || verb.is_empty())
        }
        _ => false,
    }
}

/// Words for how two parts are held together.
fn joins(word: &str) -> bool {
    matches!(
        word,
        "bolted"
            | "bolts"
            | "screwed"
            | "screws"
            | "welded"
            | "brazed"
            | "soldered"
            | "glued"
            | "keyed"
            | "pinned"
            | "fixed"
            | "attached"
            | "fits"
            | "goes"
            | "sits"
            | "matches"
    )
}

/// `6: three bored .2495`, `5 make them longer`: a part at the beginning of a later line;
/// `5 pins done` counts.
fn opens_talk(outline: &Outline, part: usize, word: &Word<'_>, next: Option<&Word<'_>>) -> bool {
    if word.sign.is_some() {
        return word.sign == Some(':');
    }
    let Some(next) = next else { return false };
    let said = next.text.to_lowercase();
    let is_verb =
        matches!(said.as_str(), "is" | "was" | "has" | "needs" | "wants" | "fits" | "runs");
    let is_thing = || {
        let own = lexicon::stems(&outline.parts[part].name);
        lexicon::inwardness(&said).is_some() || own.contains(&lexicon::stem(&said))
    };
    is_verb
        || said.chars().all(char::is_alphabetic)
            && !said.ends_with('s')
            && !is_thing()
            && !is_unit(&said)
}

/// What a number counts or measures.
fn is_unit(word: &str) -> bool {
    matches!(
        word,
        "in" | "inch"
            | "mm"
            | "cm"
            | "thou"
            | "tenth"
            | "deg"
            | "ft"
            | "off"
            | "x"
            | "of"
            | "tpi"
            | "t"
            | "hr"
            | "min"
            | "more"
            | "left"
            | "pl"
            | "at"
            | "to"
            | "from"
            | "and"
            | "or"
            | "microns"
            | "um"
            | "mic"
            | "per"
            | "on"
            | "by"
    )
}
