//! Lines without figures beside an open log: the advice asked for, an entry taken back, the
//! job closed, each in whatever words; and a spring pass told at length.

use crate::sentence::Said;

/// The words of which a line is made, and those of which one at least is said.
struct Told {
    plain: &'static str,
    /// One of these is said.
    anchors: &'static [&'static str],
    /// The others may be.
    rest: &'static [&'static str],
}

/// Said in any of them, and nothing told.
const POLITE: &[&str] = &[
    "please", "thanks", "thank", "you", "ta", "mate", "cheers", "ok", "okay", "so", "right",
    "well", "and", "ah", "oh", "sorry", "just", "then", "now",
];

const TOLD: [Told; 3] = [
    Told {
        plain: "undo",
        anchors: &[
            "undo",
            "scratch",
            "scrub",
            "strike",
            "cancel",
            "delete",
            "forget",
            "ignore",
            "disregard",
            "wrong",
            "oops",
            "whoops",
            "mistake",
            "misread",
            "mistyped",
            "typo",
        ],
        rest: &[
            "that", "that's", "thats", "this", "was", "is", "it", "i", "the", "my", "a", "last",
            "one", "entry", "reading", "line", "number", "figure", "again", "mike", "mic", "no",
            "take", "took", "back", "off", "out", "need", "to", "want", "let", "me", "can",
            "typed", "put", "in", "made", "had", "got", "read", "bad",
        ],
    },
    Told {
        plain: "log",
        anchors: &["what", "what's", "whats", "next", "how", "how's", "where"],
        rest: &[
            "do",
            "i",
            "we",
            "should",
            "shall",
            "must",
            "can",
            "could",
            "to",
            "on",
            "in",
            "it",
            "is",
            "the",
            "a",
            "put",
            "dial",
            "crank",
            "wind",
            "feed",
            "set",
            "take",
            "cut",
            "go",
            "get",
            "come",
            "comes",
            "off",
            "much",
            "more",
            "many",
            "left",
            "far",
            "am",
            "are",
            "make",
            "say",
            "says",
            "think",
            "reckon",
            "from",
            "here",
            "for",
            "of",
            "my",
            "last",
            "final",
            "pass",
            "passes",
            "number",
            "still",
            "need",
            "want",
            "does",
            "give",
            "it's",
            "its",
            "move",
            "out",
            "be",
            "looking",
            "doing",
            "standing",
            "have",
            "has",
            "got",
            "remaining",
            "needed",
            "wanted",
            "finish",
            "size",
            "up",
            "odds",
            "chance",
            "chances",
            "one",
            "deep",
            "another",
            "time",
            "dialled",
            "yet",
        ],
    },
    Told {
        plain: "done",
        anchors: &["done", "finished", "complete", "completed", "happy", "ready"],
        rest: &[
            "that's", "thats", "it's", "its", "it", "is", "that", "this", "one", "all", "i'm",
            "im", "i", "am", "with", "we're", "were", "job", "the", "there", "at", "last", "to",
            "size", "on", "bore", "shaft", "got", "me",
        ],
    },
];

/// The passes of a tool that is not moved, told at length.
const GOES: &[&str] = &["ran", "run", "went", "passed", "sent", "dragged", "took", "brought"];
const AGAIN: &[&str] = &["again", "over", "through", "thru", "past", "back", "second", "once"];
const STILL: &[&str] = &["nothing", "without", "untouched", "same", "no", "alone"];
const PASS: &[&str] = &[
    "it", "the", "tool", "cut", "dial", "setting", "with", "on", "more", "touching", "moving",
    "changing", "adding", "any", "feed", "infeed", "and", "it's", "its", "is", "now", "reads", "i",
    "a", "time", "left", "at", "that", "mikes", "mics", "measures", "got", "extra", "new", "came",
    "to",
];

/// Its words in small letters.
fn words(text: &str) -> Vec<String> {
    text.split(|c: char| !c.is_alphanumeric() && c != '\'')
        .filter(|word| !word.is_empty())
        .map(str::to_lowercase)
        .collect()
}

/// Is it a question: `is it done?`
pub(super) fn asks(text: &str) -> bool {
    let first = text.split_whitespace().next().unwrap_or_default().to_lowercase();
    text.trim_end().ends_with('?') || matches!(&*first, "is" | "am" | "are")
}

/// What a line beside an open log comes to, where its words leave no doubt.
pub(super) fn told(text: &str) -> Option<Said> {
    let words = words(text);
    if words.iter().any(|word| word.bytes().any(|byte| byte.is_ascii_digit())) {
        return spring(text);
    }
    let is_in = |list: &[&str], word: &String| list.contains(&&**word);
    let found = TOLD.iter().find(|told| {
        words.iter().any(|word| is_in(told.anchors, word))
            && words.iter().all(|word| {
                is_in(told.anchors, word) || is_in(told.rest, word) || is_in(POLITE, word)
            })
    })?;
    let asks = asks(text);
    let plain = if found.plain == "done" && asks { "log" } else { found.plain };
    (!(found.plain == "undo" && asks)).then(|| Said::plain(plain))
}

/// `ran it through again without touching the dial and it's 20.49`
fn spring(text: &str) -> Option<Said> {
    let at = text.find(|c: char| c.is_ascii_digit())?;
    let at = if text[..at].ends_with('.') { at - 1 } else { at };
    let (head, reading) = text.split_at(at);
    let reading = reading.trim().trim_end_matches(['.', '?', '!']);
    let is_figure = |c: char| c.is_ascii_digit() || c == '.';
    let words = words(head);
    let says = |list: &[&str]| words.iter().any(|word| list.contains(&&**word));
    let is_whole = words
        .iter()
        .all(|word| [GOES, AGAIN, STILL, PASS, POLITE].iter().any(|list| list.contains(&&**word)));
    let ends = words.last().is_some_and(|last| matches!(&**last, "with" | "more" | "extra" | "no"));
    (is_whole
        && !ends
        && says(GOES)
        && says(AGAIN)
        && says(STILL)
        && !reading.is_empty()
        && reading.chars().all(is_figure))
    .then(|| Said::plain(format!("spring = {reading}")))
}
