//! Words for work on a feature: what it was brought to, what was done to it.

/// Work that brings a feature to the size behind `to`.
pub(super) fn works_to(word: &str) -> bool {
    #[rustfmt::skip]
    const WORK: &[&str] = &[
        "ream", "bore", "turn", "open", "hone", "lap", "take", "bring", "grind", "polish", "finish",
        "skim",
    ];
    WORK.contains(&word)
}

/// Work that changes how long a part is.
pub(super) fn is_of_length(word: &str) -> bool {
    matches!(word, "shortened" | "lengthened" | "shorten" | "lengthen" | "cropped" | "trimmed")
}

/// Work that a part had done to it: `plug turned .902`.
pub(super) fn is_work(word: &str) -> bool {
    matches!(
        word,
        "bored" | "turned" | "reamed" | "tapped" | "threaded" | "drilled" | "cut" | "ground"
    )
}

/// Such work once it is done.
pub(super) fn worked_to(word: &str) -> bool {
    matches!(
        word,
        "opened" | "bored" | "reamed" | "honed" | "lapped" | "turned" | "ground" | "skimmed"
    )
}

/// Such work as an order: no word for a feature.
pub(super) fn orders(word: &str) -> bool {
    works_to(word) && !matches!(word, "bore" | "finish" | "polish" | "take" | "bring" | "open")
}
