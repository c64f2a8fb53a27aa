//! The words that notes are written in: features, parts, metals, fits.

use std::{
    collections::{HashMap, HashSet},
    sync::OnceLock,
};

use fits_core::{job::whole::SizeKind, shop::words::Word};

/// The words that notes shorten by their vowels: `jrnl`, `hsg`, `kwy`.
#[rustfmt::skip]
const SHORTENED: &[&str] = &[
    "bearing", "bush", "housing", "wheel", "screw", "shoulder", "journal", "thread", "shaft",
    "dowel", "roller", "frame", "handle", "spindle", "pulley", "bracket", "plate", "keyway",
    "shank", "sprocket", "collar", "flange", "coupling", "washer", "gear", "bolt", "lever",
    "spacer", "sleeve", "length", "thick", "width", "centre", "block", "press", "push", "slip",
    "drive", "tight", "running", "loose", "sliding", "clearance", "interference", "bronze",
    "brass", "steel", "nylon", "pivot", "upright", "crank", "groove",
];

/// The word that letters with no vowel among them stand for.
pub(super) fn spelled(word: &str) -> Option<&'static str> {
    let letters = word.strip_suffix('s').unwrap_or(word);
    let short = letters.len() >= 3
        && letters.len() <= 5
        && letters.chars().all(|c| c.is_ascii_alphabetic())
        && !letters[1..].contains(['a', 'e', 'i', 'o', 'u']);
    if !short {
        return None;
    }
    // No collar: notes write it beside a fit.
    if letters == "clr" {
        return Some("clearance");
    }
    SHORTENED.iter().find(|full| is_short_of(letters, full)).copied()
}

/// Do the letters of a short form stand in a word in their order, the first first?
pub(super) fn is_short_of(short: &str, full: &str) -> bool {
    let mut rest = full.chars();
    short.len() < full.len()
        && full.chars().next() == short.chars().next()
        && short.chars().all(|c| rest.any(|one| one == c))
}

/// A word as it is compared: short forms spelled out, the plural taken off.
pub(super) fn stem(word: &str) -> String {
    // As the tokens give it where it is cut short.
    if word == "pin." {
        return "pinion".to_owned();
    }
    let word = word.trim_end_matches(['.', '\'']);
    let word = word.strip_suffix("'s").unwrap_or(word);
    let full = match word {
        "bushing" | "bushings" | "bushes" | "bushs" | "busing" | "oilites" => "bush",
        "bearings" | "brng" | "brngs" => "bearing",
        "sscr" | "sscrs" => "setscrew",
        "sh" | "shldr" | "shld" | "shldrs" => "shoulder",
        "jour" => "journal",
        "dia" | "diam" | "diameter" | "diameters" => "dia",
        "i.d" | "inside" | "inner" | "ids" => "id",
        "o.d" | "outside" | "outer" | "ods" => "od",
        "lh" | "left" | "l" => "l",
        "rh" | "right" | "r" => "r",
        "bored" | "bores" => "bore",
        "feet" => "foot",
        "dp" => "deep",
        "sq" => "square",
        "center" | "centers" | "centres" => "centre",
        other => {
            let keeps =
                other.len() < 4 || ["ss", "us", "is"].iter().any(|end| other.ends_with(end));
            let bare = if keeps { other } else { other.strip_suffix('s').unwrap_or(other) };
            // `x-shft`: a cross shaft, cut short.
            if let Some((before, full)) =
                other.split_once('-').and_then(|(before, last)| Some((before, spelled(last)?)))
            {
                return format!("{before}-{full}");
            }
            spelled(other).unwrap_or(bare)
        }
    };
    full.to_owned()
}

/// The side of a word that names a feature.
pub(super) fn feature(word: &str) -> Option<SizeKind> {
    // `journals both ends`: where, not what.
    if word == "ends" {
        return None;
    }
    // Several shoulders: how far apart they are.
    if word.ends_with('s') && stem(word) == "shoulder" && word.len() > 2 {
        return Some(SizeKind::Length);
    }
    Some(match stem(word).as_str() {
        "bore" | "id" | "hole" | "counterbore" | "cbore" | "socket" | "eye" | "drilling"
        | "pocket" | "recess" => SizeKind::Hole,
        "journal" | "seat" | "od" | "shoulder" | "dia" | "spigot" | "stub" | "shank" | "pivot"
        | "neck" | "tenon" | "boss" | "stem" | "snout" | "register" | "land" | "nose"
        | "trunnion" | "end" | "turned" | "seating" | "diam." | "body" | "crankpin" | "gudgeon" => {
            SizeKind::Shaft
        }
        "thread" | "tapped" | "threaded" | "tapping" => SizeKind::Thread,
        "long" | "length" | "lg" | "width" | "wide" | "thick" | "thickness" | "thk" | "depth"
        | "deep" | "float" | "endfloat" | "play" | "endplay" | "gap" | "reach" | "face-face"
        | "projection" | "overall" | "oal" | "high" | "height" | "stickout" | "between"
        | "wall" | "face" | "centre" | "apart" | "shake" | "throw" | "stroke" | "spacing"
        | "pcd" | "bcd" | "backlash" => SizeKind::Length,
        "keyway" | "keyseat" | "slot" | "flat" | "square" | "hex" | "groove" | "kway" => {
            SizeKind::Other
        }
        _ => return None,
    })
}

/// Parts by how much they are the inner one of two: the larger goes into the
/// smaller.
#[rustfmt::skip]
const THINGS: &[(i32, &[&str])] = &[
    (3, &[
        "screw", "bolt", "shaft", "pin", "dowel", "spindle", "axle", "key", "rod", "stud",
        "mandrel", "arbor", "arbour", "tommy", "crank", "clip", "circlip", "spoke", "rivet",
        "post", "tang", "piston", "cotter", "ball",
    ]),
    (2, &["plug", "bar", "peg", "insert"]),
    (1, &["bush", "bearing", "sleeve", "liner", "ferrule", "seal"]),
    (0, &[
        "roller", "arm", "lever", "handle", "gear", "wheel", "pulley", "pawl", "ratchet", "cam",
        "collar", "washer", "spacer", "shim", "nut", "link", "pinion", "sprocket", "knob",
        "coupling", "pad", "foot", "follower", "disc", "disk", "ring", "drum", "grip", "spring",
        "gib", "wedge", "piece", "web", "fork", "clevis", "gasket",
    ]),
    (-1, &[
        "housing", "frame", "tube", "pipe", "hub", "plate", "block", "bracket", "casting", "body",
        "bed", "base", "yoke", "cheek", "leg", "beam", "pedestal", "pillow", "boss", "standard",
        "side", "crosshead", "cover", "cap", "lid", "guard", "rail", "guide", "carriage", "jaw",
        "column", "pillar", "platen", "tray", "cylinder",
    ]),
];

/// Words that end others: `setscrew`, `handwheel`, `crankpin`, `pushrod`.
#[rustfmt::skip]
const ENDS_OTHERS: &[&str] = &[
    "screw", "bolt", "shaft", "pin", "rod", "wheel", "plate", "gear", "bush", "bearing", "block",
    "washer", "clip", "nut",
];

/// How much a part is the inner one of two; nothing for a word that is no part.
pub(super) fn inwardness(word: &str) -> Option<i32> {
    static RANKS: OnceLock<HashMap<&'static str, i32>> = OnceLock::new();
    let word = stem(word);
    let ranks = RANKS.get_or_init(|| {
        let all = THINGS.iter().flat_map(|(rank, all)| all.iter().map(move |word| (*word, *rank)));
        // The first row that has a word counts.
        all.rev().collect()
    });
    let of = |word: &str| ranks.get(word).copied();
    // `spins free`: no kind of pin.
    if word == "spin" {
        return None;
    }
    of(&word)
        .or_else(|| ENDS_OTHERS.iter().find(|end| word.ends_with(**end)).and_then(|end| of(end)))
}

/// Is it a metal, another stuff, or the form it comes in?
pub(super) fn is_material(word: &str) -> bool {
    #[rustfmt::skip]
    const STUFF: &[&str] = &[
        "steel", "iron", "cast", "ci", "bronze", "brass", "nylon", "acetal", "delrin", "maple",
        "oak", "ash", "beech", "wood", "crs", "hrs", "ms", "mild", "stainless", "ss", "aluminium",
        "aluminum", "alum", "ally", "alloy", "sintered", "oilite", "gunmetal", "plastic", "ptfe",
        "teflon", "silver", "drill", "rod", "gauge", "ground", "flat", "bar", "tube", "tubing",
        "plate", "sheet", "pgb", "stock", "round", "angle", "drawn", "cold", "rolled", "material",
        "polymer", "phosphor", "copper", "hardened", "leaded", "turned", "seamless", "uhmw",
        "hdpe", "tufnol", "hickory", "elm", "rubber", "leather", "pine", "birch", "cherry",
        "walnut", "alu", "ali", "brz", "stl", "babbitt", "peek", "pom", "titanium", "zinc", "felt", "ply",
    ];
    static SET: OnceLock<HashSet<&'static str>> = OnceLock::new();
    let stuff = SET.get_or_init(|| STUFF.iter().copied().collect());
    stuff.contains(word) || stuff.contains(stem(word).as_str())
}

/// Does it say what stock a size behind it is of?
pub(super) fn is_stock(word: &str) -> bool {
    const FORMS: &[&str] = &[
        "crs", "hrs", "ms", "flat", "plate", "bar", "sheet", "stock", "angle", "pgb", "round",
        "steel", "mild", "rod", "blank", "stk", "tube", "tubing", "pipe", "bms", "cold", "hot",
        "hex", "bright", "tgp",
    ];
    FORMS.contains(&word)
}

/// Does it say how stock comes, or its grade: `black plate`, `EN3 bar`?
pub(super) fn is_finish(word: &str) -> bool {
    #[rustfmt::skip]
    const WORDS: &[&str] = &[
        "black", "bright", "blue", "galvanised", "galvanized", "boiler", "chequer", "scrap", "old",
        "offcut", "thick", "rusty", "plain", "clean", "pickled", "annealed", "structural",
    ];
    WORDS.contains(&word) || word.chars().any(|c| c.is_ascii_digit())
}

/// The fit that words at a place say: how many words, the shop's word if it is one.
pub(super) fn fit(words: &[&str]) -> Option<(usize, Option<Word>)> {
    let own = |text: &str| -> Option<Option<Word>> {
        let name = match text {
            "runs" | "run" | "run in" | "runs on" | "runs in" | "turns" | "turns on"
            | "turns in" | "swings" | "swings on" | "pivots" | "pivots on" | "spins"
            | "rotates" | "revolves" | "close but swings" | "swing" => "running",
            "stays" | "interference" | "p.f" | "pf" | "press fit" | "presses" | "pressed in" => {
                "press"
            }
            "knock in" | "knocked in" | "drives" | "drv" => "drive",
            "shrinks" | "shrinks on" => "shrink",
            "light push" | "pushes" | "pushed" | "push on" => "push",
            "slides" | "sliding" | "slips" | "slide" | "slp" => "sliding",
            "chase" | "chase to" | "single-point" | "to fit" | "suit" | "suits" | "mate"
            | "mates" | "loctite" | "loctited" | "keyed" | "glued" | "bonded" | "retained"
            | "match" | "matches" | "to match" | "make to match" | "follows" | "to suit"
            | "taper" | "tapered" | "clear" | "clears" | "close" | "fixed" | "clamped"
            | "bolted" | "clearance" | "matched" => "",
            _ => return None,
        };
        Some(known(name))
    };
    // `pr in plate`, not `1 pr bearings`.
    if let ["pr", next, ..] = words
        && leads_to_mate(next)
    {
        return Some((1, known("press")));
    }
    (1..=words.len().min(3)).rev().find_map(|count| {
        let full = |word: &&str| spelled(word).map_or_else(|| (*word).to_owned(), str::to_owned);
        let text = words[..count].iter().map(full).collect::<Vec<_>>().join(" ");
        // `press in housing`: the preposition leads to the mate.
        if count > 1 && leads_to_mate(words[count - 1]) && !matches!(words[count - 2], "chase") {
            return None;
        }
        if let Some(word) = own(&text) {
            return Some((count, word));
        }
        match known(&text) {
            Some(word) if text != "fine" && text != "tap" => Some((count, Some(word))),
            _ if Word::ambiguous().any(|said| said == text) => Some((count, None)),
            _ => None,
        }
    })
}

/// The shop's word of that name; one that is none costs no search for the nearest.
fn known(text: &str) -> Option<Word> {
    static WORDS: OnceLock<HashMap<&'static str, Word>> = OnceLock::new();
    let words = WORDS.get_or_init(|| {
        let all = |word: Word| {
            std::iter::once(word.name())
                .chain(word.aliases().iter().copied())
                .map(move |name| (name, word))
        };
        Word::all().flat_map(all).collect()
    });
    let bare =
        ["fit", "fits", "fitting"].iter().find_map(|end| text.strip_suffix(end)?.strip_suffix(' '));
    words.get(bare.unwrap_or(text)).copied()
}

/// Is it cut to match its mate, as a nut is?
pub(super) fn matches_mate(fit: &str) -> bool {
    ["match", "follow", "suit", "chase"].iter().any(|word| fit.contains(word))
}

/// Words that lead to the other part.
pub(super) fn leads_to_mate(word: &str) -> bool {
    #[rustfmt::skip]
    const WORDS: &[&str] = &[
        "in", "on", "with", "w", "to", "for", "into", "onto", "through", "thru", "thro", "inside",
        "over", "w/",
    ];
    WORDS.contains(&word)
}

/// Verbs before the other part's name.
pub(super) fn meets_mate(word: &str) -> bool {
    matches!(word, "fits" | "fit" | "takes" | "carries" | "holds" | "accepts" | "enters" | "suits")
}

/// Words after which a size was measured.
pub(super) fn says_measured(word: &str) -> bool {
    #[rustfmt::skip]
    const WORDS: &[&str] = &[
        "mic", "mics", "mike", "mikes", "miked", "micd", "mic'd", "measured", "measures",
        "measure", "meas", "got", "now", "reads", "read", "came", "come", "actual", "act", "is", "are",
        "was", "were", "at", "comes", "reading", "gauged", "checked", "bored", "turned", "finished",
        "found", "worn", "get", "skimmed", "honed", "lapped",
    ];
    WORDS.contains(&word)
}

/// The strong ones of those: they say it without a date.
pub(super) fn surely_measured(word: &str) -> bool {
    says_measured(word)
        && !matches!(
            word,
            "is" | "are"
                | "at"
                | "bored"
                | "turned"
                | "skimmed"
                | "honed"
                | "lapped"
                | "was"
                | "were"
                | "now"
                | "finished"
                | "checked"
                | "read"
        )
}

/// Words that stand over readings.
pub(super) fn heads_readings(word: &str) -> bool {
    surely_measured(word)
        || matches!(
            stem(word).as_str(),
            "check"
                | "checked"
                | "inspection"
                | "result"
                | "reading"
                | "measurement"
                | "actual"
                | "size"
        )
}

/// Features that tell one part from another: `end frame`, `pivot pin`.
pub(super) fn names_place(word: &str) -> bool {
    matches!(
        stem(word).as_str(),
        "end" | "face" | "pivot" | "stub" | "neck" | "nose" | "shoulder" | "centre"
    )
}

/// Short words that tell one part from another: `lg bush`, `thr washer`. Behind a
/// size they are its length and a thread.
pub(super) fn tells_apart(word: &str) -> bool {
    matches!(word, "lg" | "sm" | "thr")
}

/// Words for what was spoken of before.
pub(super) fn is_pronoun(word: &str) -> bool {
    let bare = word.split('\'').next().unwrap_or(word);
    matches!(bare, "it" | "they" | "this" | "that" | "these" | "those" | "which" | "them" | "its")
}

/// Words that join, and say nothing of a size.
pub(super) fn is_small(word: &str) -> bool {
    #[rustfmt::skip]
    const WORDS: &[&str] = &[
        "the", "a", "an", "of", "and", "both", "each", "ends", "all", "is", "are", "be", "it",
        "its", "out", "at", "fit", "fits", "as", "so", "my", "this", "that", "from", "by", "then",
        "dia", "nominal", "nom", "approx", "about", "size", "made", "make", "new", "old", "to",
        "came", "comes", "up", "cut", "w", "with", "two", "pair", "after", "before", "pressing",
        "in", "on", "for", "or", "but", "one", "want", "wants", "wanted", "pressed", "place",
        "free", "turn", "turned", "bored", "ream", "reamed", "was", "now", "still", "just", "if",
        "not", "off", "tops", "max", "min", "skimmed", "honed", "lapped",
    ];
    WORDS.contains(&word) || super::counts::is_ratio(word)
}

/// Words before a feature's own that tell it from others, and name no part.
pub(super) fn is_adjective(word: &str) -> bool {
    #[rustfmt::skip]
    const WORDS: &[&str] = &[
        "big", "little", "small", "large", "short", "long", "first", "second", "third", "upper",
        "lower", "top", "bottom", "left", "right", "front", "rear", "back", "main", "other", "same",
        "drive", "free", "plain", "centre", "center", "white", "red",
    ];
    WORDS.contains(&word)
}

/// May a word that names no part and no feature say what a size is of?
pub(super) fn is_noun(word: &str) -> bool {
    #[rustfmt::skip]
    const OTHERS: &[&str] = &[
        "say", "call", "maybe", "just", "bare", "full", "scant", "nominal", "nearly", "almost",
        "over", "under", "need", "have", "use", "like", "only", "drill", "cut", "about", "roughly",
        "set", "leave", "went", "gave", "same", "plus", "minus", "less", "more", "then", "there",
        "here", "will", "would", "must", "could", "can", "may", "true", "final", "rough", "total",
        "clear", "tight", "loose", "left", "per", "no", "did", "do", "had", "has", "been", "using",
        "what", "how", "which", "where", "thats", "whats", "theres", "i", "we", "you", "they", "needs", "goes", "gets",
    ];
    (word.len() > 2 || word == "hd")
        && !["ly", "ed"].iter().any(|end| word.ends_with(end))
        && !is_small(word)
        && !is_material(word)
        && !is_stock(word)
        && !is_adjective(word)
        && !is_pronoun(word)
        && !says_measured(word)
        && !super::work::works_to(word)
        && !leads_to_mate(word)
        && inwardness(word).is_none()
        && feature(word).is_none()
        && fit(&[word]).is_none()
        && !OTHERS.contains(&word)
}

/// Stem by stem.
pub(super) fn stems(text: &str) -> Vec<String> {
    text.to_lowercase()
        .split(|c: char| !(c.is_alphanumeric() || c == '-' || c == '.'))
        .filter(|word| !word.is_empty())
        .map(stem)
        .collect()
}
