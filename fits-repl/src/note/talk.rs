//! Words that speak of the note, not of a part: questions, corrections, headings
//! over what is still open.

use super::lexicon::stem;

/// Does a line begin so that puts an earlier one right?
pub(super) fn amends(word: &str) -> bool {
    #[rustfmt::skip]
    const WORDS: &[&str] = &[
        "fix", "correction", "corrected", "wrong", "change", "changed", "amend", "oops", "sorry",
        "update", "revised",
    ];
    WORDS.contains(&word)
}

/// Words that open a question or a thing to do, not a part.
pub(super) fn asks(word: &str) -> bool {
    is_question(word) || matches!(word, "note" | "todo")
}

/// Words that open a question.
pub(super) fn is_question(word: &str) -> bool {
    #[rustfmt::skip]
    const WORDS: &[&str] = &[
        "what", "which", "how", "is", "do", "does", "can", "should", "where", "who", "why", "when",
        "will",
    ];
    WORDS.contains(&word)
}

/// Words of a heading over what is still open, which names no part.
pub(super) fn heads_talk(word: &str) -> bool {
    #[rustfmt::skip]
    const WORDS: &[&str] = &[
        "question", "query", "querie", "note", "remark", "comment", "problem", "job", "todo", "to-do",
        "thought", "doubt", "worry", "worrie", "idea", "reminder", "order", "sequence", "general",
        "misc", "tool", "tooling", "shopping", "list", "later", "plan", "trouble", "snag", "other",
        "still", "open", "and", "to", "do",
    ];
    WORDS.contains(&stem(word).as_str())
}
