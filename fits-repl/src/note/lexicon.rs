//! The words that notes are written in: features, parts, metals, fits.

use fits_core::{job::whole::Side, shop::words::Word};

/// A word as it is compared: short forms spelled out, the plural taken off.
pub(super) fn stem(word: &str) -> String {
    let word = word.trim_end_matches(['.', '\'']);
    let full = match word {
        "brg" | "brgs" | "brng" | "brngs" | "bearings" => "bearing",
        "bushing" | "bushings" | "bushes" | "bushs" | "bsh" | "busing" => "bush",
        "hsg" | "hsgs" | "hsng" | "housing" | "housings" => "housing",
        "whl" | "wheels" => "wheel",
        "scr" | "scrw" | "screws" => "screw",
        "sh" | "shldr" | "shld" | "shldrs" | "shoulders" => "shoulder",
        "jrnl" | "jnl" | "jrnls" | "jour" | "journals" => "journal",
        "thd" | "thrd" | "threads" | "thds" => "thread",
        "brz" => "bronze",
        "shft" | "shafts" => "shaft",
        "dwl" | "dowels" => "dowel",
        "rlr" | "rollers" => "roller",
        "dia" | "diam" | "diameter" | "diameters" => "dia",
        "i.d" | "inside" | "inner" | "ids" => "id",
        "o.d" | "outside" | "outer" | "ods" => "od",
        "lh" | "left" | "l" => "l",
        "rh" | "right" | "r" => "r",
        "bored" | "bores" => "bore",
        "hdl" | "handles" => "handle",
        "frm" => "frame",
        "spacers" => "spacer",
        other => {
            let keeps = other.len() < 4 || other.ends_with("ss") || other.ends_with("us");
            return if keeps { other } else { other.strip_suffix('s').unwrap_or(other) }.to_owned();
        }
    };
    full.to_owned()
}

/// The side of a word that names a feature.
pub(super) fn feature(word: &str) -> Option<Side> {
    // `journals both ends`: where, not what.
    if word == "ends" {
        return None;
    }
    Some(match stem(word).as_str() {
        "bore" | "id" | "hole" | "counterbore" | "cbore" | "socket" | "eye" | "drilling" => {
            Side::Hole
        }
        "journal" | "seat" | "od" | "shoulder" | "dia" | "spigot" | "stub" | "shank" | "pivot"
        | "neck" | "tenon" | "boss" | "stem" | "snout" | "register" | "land" | "nose"
        | "trunnion" | "end" | "turned" | "seating" | "diam." | "body" | "crankpin" | "gudgeon" => {
            Side::Shaft
        }
        "thread" | "tapped" | "threaded" | "tapping" => Side::Thread,
        "long" | "length" | "lg" | "width" | "wide" | "thick" | "thickness" | "thk" | "depth"
        | "deep" | "float" | "endfloat" | "play" | "endplay" | "gap" | "reach" | "face-face"
        | "projection" | "overall" | "oal" | "high" | "height" | "stickout" | "between" => {
            Side::Length
        }
        "keyway" | "keyseat" | "slot" | "flat" | "square" | "hex" | "groove" | "kway" => {
            Side::Other
        }
        _ => return None,
    })
}

/// How much a part is the inner one of two: the larger goes into the smaller.
/// Nothing for a word that is no part.
pub(super) fn inwardness(word: &str) -> Option<i32> {
    Some(match stem(word).as_str() {
        "screw" | "bolt" | "shaft" | "pin" | "dowel" | "spindle" | "axle" | "key" | "rod"
        | "stud" | "crankshaft" | "mandrel" | "arbor" | "arbour" | "tommy" | "crank" => 3,
        "plug" | "bar" | "peg" => 2,
        "bush" | "bearing" | "sleeve" | "liner" => 1,
        "roller" | "arm" | "lever" | "handle" | "gear" | "wheel" | "handwheel" | "pulley"
        | "pawl" | "ratchet" | "cam" | "collar" | "washer" | "spacer" | "nut" | "link"
        | "pinion" | "sprocket" | "knob" | "flywheel" | "coupling" => 0,
        "housing" | "frame" | "tube" | "hub" | "plate" | "block" | "bracket" | "casting"
        | "body" | "bed" | "base" | "yoke" | "cheek" | "leg" | "beam" | "pedestal" | "pillow"
        | "boss" | "standard" | "side" => -1,
        _ => return None,
    })
}

/// Is it a metal, another stuff, or the form it comes in?
pub(super) fn is_material(word: &str) -> bool {
    const STUFF: &[&str] = &[
        "steel",
        "iron",
        "cast",
        "ci",
        "bronze",
        "brass",
        "nylon",
        "acetal",
        "delrin",
        "maple",
        "oak",
        "ash",
        "beech",
        "wood",
        "crs",
        "hrs",
        "ms",
        "mild",
        "stainless",
        "ss",
        "aluminium",
        "aluminum",
        "alum",
        "ally",
        "alloy",
        "sintered",
        "oilite",
        "gunmetal",
        "plastic",
        "ptfe",
        "teflon",
        "silver",
        "drill",
        "rod",
        "gauge",
        "ground",
        "flat",
        "bar",
        "tube",
        "tubing",
        "plate",
        "sheet",
        "pgb",
        "stock",
        "round",
        "angle",
        "drawn",
        "cold",
        "rolled",
        "material",
        "polymer",
        "phosphor",
        "copper",
        "hardened",
        "leaded",
        "turned",
        "seamless",
        "uhmw",
        "hdpe",
        "tufnol",
        "hickory",
        "elm",
    ];
    STUFF.contains(&stem(word).as_str()) || STUFF.contains(&word)
}

/// Does it say what stock a size behind it is of?
pub(super) fn is_stock(word: &str) -> bool {
    const FORMS: &[&str] = &[
        "crs", "hrs", "ms", "flat", "plate", "bar", "sheet", "stock", "angle", "pgb", "round",
        "steel", "mild", "rod", "blank", "stk", "tube", "tubing", "bms", "cold", "hot", "hex",
    ];
    FORMS.contains(&word)
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
            "light push" | "pushes" | "pushed" | "push on" => "push",
            "slides" | "sliding" | "slips" | "slide" | "slp" => "sliding",
            "chase" | "chase to" | "single-point" | "to fit" | "suit" | "suits" | "mate"
            | "mates" | "loctite" | "glued" | "bonded" | "retained" | "match" | "matches"
            | "to match" | "make to match" | "follows" | "to suit" | "taper" | "tapered"
            | "close" | "fixed" | "clamped" | "bolted" | "clearance" | "matched" => "",
            _ => return None,
        };
        Some(known(name))
    };
    (1..=words.len().min(3)).rev().find_map(|count| {
        let text = words[..count].join(" ");
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
    use std::{collections::HashMap, sync::OnceLock};
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
    matches!(
        word,
        "in" | "on"
            | "with"
            | "w"
            | "to"
            | "for"
            | "into"
            | "onto"
            | "through"
            | "thru"
            | "inside"
            | "over"
            | "w/"
    )
}

/// Words after which a size was measured.
pub(super) fn says_measured(word: &str) -> bool {
    matches!(
        word,
        "mic"
            | "mics"
            | "mike"
            | "mikes"
            | "miked"
            | "micd"
            | "mic'd"
            | "measured"
            | "measures"
            | "measure"
            | "meas"
            | "got"
            | "now"
            | "reads"
            | "read"
            | "came"
            | "actual"
            | "act"
            | "is"
            | "are"
            | "was"
            | "at"
            | "comes"
            | "reading"
            | "gauged"
            | "checked"
            | "bored"
            | "turned"
            | "finished"
            | "found"
            | "worn"
    )
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
                | "was"
                | "now"
                | "finished"
                | "checked"
                | "read"
        )
}

/// Words that join, and say nothing of a size.
pub(super) fn is_small(word: &str) -> bool {
    matches!(
        word,
        "the"
            | "a"
            | "an"
            | "of"
            | "and"
            | "both"
            | "each"
            | "ends"
            | "all"
            | "is"
            | "are"
            | "be"
            | "it"
            | "its"
            | "out"
            | "at"
            | "fit"
            | "fits"
            | "as"
            | "so"
            | "my"
            | "this"
            | "that"
            | "from"
            | "by"
            | "then"
            | "dia"
            | "nominal"
            | "nom"
            | "approx"
            | "about"
            | "size"
            | "made"
            | "make"
            | "new"
            | "old"
            | "to"
            | "came"
            | "comes"
            | "up"
            | "cut"
            | "w"
            | "with"
            | "two"
            | "pair"
            | "after"
            | "before"
            | "pressing"
            | "in"
            | "on"
            | "for"
            | "or"
            | "but"
            | "one"
            | "want"
            | "wants"
            | "wanted"
            | "pressed"
            | "place"
            | "free"
            | "turn"
            | "turned"
            | "bored"
            | "ream"
            | "reamed"
            | "was"
            | "now"
            | "still"
            | "just"
            | "if"
            | "not"
            | "off"
            | "tops"
            | "max"
            | "min"
    )
}

/// Stem by stem.
pub(super) fn stems(text: &str) -> Vec<String> {
    text.to_lowercase()
        .split(|c: char| !(c.is_alphanumeric() || c == '-' || c == '.'))
        .filter(|word| !word.is_empty())
        .map(stem)
        .collect()
}
