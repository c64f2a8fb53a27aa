//! `…, will it bind?`, `…, how much play is that`: the end of a line that only says which
//! of an answer's figures is wanted.

use crate::{answer::Answer, sentence::short::words};

/// What is wanted to be told.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Wanted {
    Play,
    Force,
    Verdict,
    Binding,
    Sizes,
    Weight,
}

impl Wanted {
    /// Does an answer tell it?
    pub(crate) fn is_told_by(self, answer: &Answer) -> bool {
        use Answer as A;
        match self {
            Self::Play => matches!(
                answer,
                A::Fit(_)
                    | A::PairReading(_)
                    | A::BushingFit(_)
                    | A::FitWarm(_)
                    | A::Assembly(_)
                    | A::Stack(_)
                    | A::Runs(_)
                    | A::ReamerCut(_)
            ),
            Self::Force => matches!(answer, A::Assembly(_)),
            Self::Verdict => matches!(
                answer,
                A::Reading(_) | A::PairReading(_) | A::OverWires(_) | A::ReamerCut(_)
            ),
            Self::Binding => matches!(answer, A::FitWarm(_)),
            Self::Sizes => matches!(
                answer,
                A::Feature(_)
                    | A::Fit(_)
                    | A::BushingFit(_)
                    | A::Keyway(_)
                    | A::Hardware(_)
                    | A::Bearing(_)
                    | A::Tap(_)
                    | A::ClearanceHole(_)
                    | A::Pick(_)
            ),
            Self::Weight => matches!(answer, A::Weight(_)),
        }
    }
}

/// The words of which one at least says what is wanted.
const WANTED: &[(Wanted, &[&str])] = &[
    (Wanted::Binding, &["bind", "binds", "seize", "seizes", "jam", "jams", "stick", "sticks"]),
    (Wanted::Binding, &["turn", "turns", "spin", "spins", "free", "freely", "easy", "run", "runs"]),
    (Wanted::Force, &["force", "ton", "tons", "tonne", "tonnes", "tonnage", "hard", "pounds"]),
    (Wanted::Force, &["split", "splits", "crack", "cracks", "burst", "bursts", "break", "breaks"]),
    (Wanted::Force, &["survive", "yield", "yields", "hold", "holds", "grip", "keep"]),
    (Wanted::Play, &["play", "slop", "slack", "shake", "clearance", "clr", "wobble", "rattle"]),
    (Wanted::Play, &["float", "squeeze", "nip", "interference", "pinch", "tight", "loose", "room"]),
    (Wanted::Play, &["grip", "gap", "clearances", "crush"]),
    (Wanted::Verdict, &["good", "ok", "okay", "fine", "pass", "passes", "in", "out", "scrap"]),
    (
        Wanted::Verdict,
        &["within", "spec", "right", "fit", "fits", "go", "goes", "usable", "alright"],
    ),
    (Wanted::Verdict, &["start", "redo", "keep", "tolerance", "limits", "close"]),
    (Wanted::Sizes, &["size", "sizes", "limits", "numbers", "figures", "dimensions", "tolerance"]),
    (Wanted::Sizes, &["tolerances", "dims", "dimension"]),
    (Wanted::Weight, &["weigh", "weighs", "weight", "heavy"]),
];

/// With which such an end begins.
const OPENS: &[&str] = &[
    "what", "what's", "whats", "how", "how's", "hows", "is", "are", "will", "would", "does", "do",
    "any", "still", "can", "could", "should", "which", "good", "ok", "okay", "pass", "in", "fine",
    "usable", "am", "did", "and", "so", "then", "have", "has", "within", "right", "that",
];

/// Of those, the ones that only open: elsewhere they judge.
const JUDGES: &[&str] = &["good", "ok", "okay", "pass", "in", "fine", "usable", "within", "right"];

/// What else may stand in it.
const ELSE: &[&str] = &[
    "it", "its", "it's", "the", "a", "an", "much", "many", "i", "we", "they", "them", "get",
    "gets", "have", "has", "left", "there", "of", "for", "me", "to", "be", "would", "should",
    "need", "want", "on", "that", "that's", "thats", "this", "these", "come", "comes", "give",
    "gives", "got", "leave", "leaves", "now", "or", "over", "at", "all", "too", "my", "you", "say",
    "says", "make", "makes", "up", "work", "both", "parts", "together", "he", "wall", "then",
    "apart", "please", "mate", "thanks", "think", "reckon",
];

/// The line without its end, and what the end asks for: the longest first.
pub(crate) fn ends(text: &str) -> Vec<(String, Wanted)> {
    let line = text.trim_end().trim_end_matches(['?', '.', '!', ' ']);
    let places: Vec<(usize, &str)> = words(line).filter(|(_, word)| !word.is_empty()).collect();
    let last_figure =
        places.iter().rposition(|(_, word)| word.bytes().any(|byte| byte.is_ascii_digit()));
    let Some(last_figure) = last_figure else { return Vec::new() };
    let words: Vec<String> = places.iter().map(|(_, word)| word.to_lowercase()).collect();
    let is_of = |wanted: Wanted, word: &String| {
        WANTED.iter().any(|(of, words)| *of == wanted && words.contains(&&**word))
    };
    let mut found = Vec::new();
    for first in last_figure + 1..words.len() {
        let end = &words[first..];
        if !OPENS.contains(&&*end[0]) {
            continue;
        }
        for (wanted, _) in WANTED {
            if JUDGES.contains(&&*end[0]) && *wanted != Wanted::Verdict {
                continue;
            }
            let fits = end.iter().any(|word| is_of(*wanted, word))
                && end.iter().all(|word| {
                    is_of(*wanted, word)
                        || ELSE.contains(&&**word)
                        || OPENS.contains(&&**word) && !JUDGES.contains(&&**word)
                });
            if !fits || found.iter().any(|(_, known)| known == wanted) {
                continue;
            }
            let rest =
                line[..places[first].0].trim_end().trim_end_matches([',', ';', '.', '?', '-']);
            found.push((rest.trim_end().to_owned(), *wanted));
        }
    }
    found
}

#[cfg(test)]
mod tests {
    use super::{Wanted, ends};

    #[test]
    fn an_end_that_asks_is_told_from_one_that_says() {
        let wanted =
            |text: &str| ends(text).into_iter().map(|(_, wanted)| wanted).collect::<Vec<_>>();
        for (said, rest, asks) in [
            ("3/4 RC4 at 130F. Does it bind?", "3/4 RC4 at 130F", Wanted::Binding),
            ("20 H7/p6, whats the squeeze", "20 H7/p6", Wanted::Play),
            ("12 h6 mics 11.996, okay or start over", "12 h6 mics 11.996", Wanted::Verdict),
        ] {
            assert!(ends(said).contains(&(rest.to_owned(), asks)), "{said}");
        }
        // What says how it is to fit, or with a figure, is no such end.
        for said in ["3/8 dowel, tight", "3/4 pin, press", "20 H7/p6", "bind at 20C", "is it"] {
            assert_eq!(wanted(said), [], "{said}");
        }
    }
}
