//! Words and classes that leave open what is meant.

use crate::sentence::{Said, fit::circumstances, sizes::Fit, view::View};

/// A bushing's figure with a word: bought, or turned at home.
pub(crate) fn bushing_outside(size: &str, fit: &Fit, view: &View) -> Option<Said> {
    let Fit::Word(word) = fit else { return None };
    if view.has("material")
        || !matches!(*word, "press" | "light press" | "push" | "sliding" | "running")
    {
        return None;
    }
    Some(Said::ask(
        "a bushing's bore or outside, and whether it is bought, is not said",
        vec![
            format!("cast bronze bushing outside {size}, {word}"),
            format!("{size} {word}"),
            format!("bushing {size}..{size}, {word}"),
        ],
    ))
}

/// `H7` for `h7` and the other way.
pub(crate) fn turned_class(fit: &Fit) -> Option<String> {
    match fit {
        Fit::Hole(class) => Some(class.to_ascii_lowercase()),
        Fit::Shaft(class) => Some(class.to_ascii_uppercase()),
        _ => None,
    }
}

/// What is tapped in with a mallet may be one of these.
pub(super) const TAPPED: &[&str] = &["tight keying", "light press", "drive"];

pub(crate) fn vague_fit(vague: &'static str, size: &str, view: &View) -> Option<Said> {
    let words: &[&str] = match vague {
        "tight" => &["push", "light press", "press"],
        "loose" => &["free running", "loose running", "running"],
        "interference" => &["light press", "press", "heavy press"],
        "close" | "close fit" => &["snug", "running"],
        "hand" | "hand fit" => &["sliding", "push"],
        "light fit" => &["light press", "drive"],
        "heavy fit" => &["heavy press", "press"],
        "easy" | "easy fit" => &["sliding", "free running"],
        "medium" | "medium fit" => &["medium running", "press"],
        "clearance" => &["sliding", "running", "free running"],
        "tapped" => TAPPED,
        _ => &["snug", "push", "light press"],
    };
    let more = circumstances(view, &Fit::Word(words.first()?))?;
    let or = words.join(" or ");
    Some(Said::ask(
        format!("`{vague}` can mean {or}"),
        words.iter().map(|word| format!("{size} {word}{more}")).collect(),
    ))
}

/// `1 in press but must turn freely`: the two contradict.
pub(crate) fn turns_though_tight(
    view: &View,
    fit: &Fit,
    size: &str,
    tight: &[&str],
) -> Option<Said> {
    const FREE: [&str; 12] = [
        "spin",
        "spins",
        "spin free",
        "spins free",
        "spin freely",
        "freely",
        "turn freely",
        "turns freely",
        "turn free",
        "turns",
        "must turn",
        "should turn",
    ];
    let is_tight = matches!(fit, Fit::Word(word) if tight.iter().any(|tight| word.contains(tight)));
    let turns = || view.says("head", "spin") || view.types(&FREE);
    // `press but it must come out again by hand`
    let comes_out = || {
        let text = view.text.to_lowercase();
        text.contains("by hand")
            && ["come out", "comes out", "come apart", "comes apart", "get it out", "come off"]
                .iter()
                .any(|out| text.contains(out))
            || text.contains("out again by hand")
    };
    let is_pressed = match fit {
        Fit::Pair(class) => class
            .split('/')
            .nth(1)
            .is_some_and(|shaft| shaft.starts_with(|c| ('p'..='z').contains(&c))),
        Fit::Inch(class) => class.starts_with("FN"),
        _ => is_tight,
    };
    if is_pressed && comes_out() {
        let word = fit.text();
        return Some(Said::ask(
            format!("a {word} fit does not come apart by hand"),
            vec![format!("{size} {word}"), format!("{size} push"), format!("{size} sliding")],
        ));
    }
    (is_tight && turns()).then(|| {
        let word = fit.text();
        Said::ask(
            format!("a {word} fit does not turn by itself"),
            vec![format!("{size} {word}"), format!("{size} running")],
        )
    })
}
