//! Words as they are cut short in a hurry: `trn`, `frm`, `btwn`, `meas`. A slip of typing
//! is no short form: it is mended elsewhere, and told.

use std::borrow::Cow;

use super::replaced;

/// The word that a short form stands for, where it can stand for one only.
fn full(word: &str) -> Option<&'static str> {
    Some(match word {
        "trn" => "turn",
        "trnd" | "trned" => "turned",
        "trng" => "turning",
        "frm" => "from",
        "strt" => "start",
        "strtd" => "started",
        "btwn" | "betw" => "between",
        "meas" => "measures",
        "measd" | "meas'd" => "measured",
        "shfts" => "shafts",
        "brgs" => "bearings",
        "bshng" => "bushing",
        "nom" | "nomnl" | "noml" => "nominal",
        "lmt" => "limit",
        "lmts" | "lims" => "limits",
        "clr" | "clrnc" | "clrnce" | "clrance" | "clnc" => "clearance",
        "intrf" | "intf" | "intrfr" | "intfr" => "interference",
        "toler" => "tolerance",
        "thd" | "thr'd" | "thrd" => "thread",
        "thds" | "thrds" => "threads",
        "drl" => "drill",
        "drls" => "drills",
        "predrl" => "predrill",
        "rmr" => "reamer",
        "cntrs" | "ctrs" | "cntr" => "centers",
        "ltr" | "lttr" => "letter",
        "sml" => "small",
        "lgth" | "lngth" => "length",
        "wdth" => "width",
        "rd" => "round",
        "wt" => "weight",
        "torq" | "trq" => "torque",
        "infd" => "infeed",
        "xfeed" | "crsfeed" => "crossfeed",
        "rechk" | "rechkd" => "recheck",
        "chk" => "check",
        "nxt" => "next",
        "wht" | "wat" => "what",
        "whts" | "wats" => "what's",
        "whch" => "which",
        "grad" | "grads" => "graduation",
        "grv" => "groove",
        "grvs" => "grooves",
        "ext" => "external",
        "int" => "internal",
        "td" => "tap drill",
        "dwl" | "dwls" => "dowel",
        "a/f" => "across flats",
        "s/b" => "should be",
        "gov" => "governor",
        "tailstk" | "tailstck" => "tailstock",
        "setovr" => "setover",
        "prss" => "press",
        "prssd" => "pressed",
        "shldr" => "shoulder",
        "spose" | "sposed" | "supposd" | "sposta" => "supposed",
        "decml" => "decimal",
        "w/in" => "within",
        "hrdnd" => "hardened",
        "cplg" | "cplng" => "coupling",
        "flg" | "flng" => "flange",
        "shd" => "should",
        "kwy" | "kyway" => "keyway",
        "kwys" => "keyways",
        "chkd" => "checked",
        "thd'd" | "thdd" => "threaded",
        "clrs" => "clears",
        "smth" => "smooth",
        _ => return None,
    })
}

/// A phrase with its short forms in full.
pub(super) fn in_full(text: &str) -> Cow<'_, str> {
    let known = |(at, word): (usize, &str)| {
        Some((at..at + word.len(), full(&word.to_ascii_lowercase())?.to_owned()))
    };
    let mut found = words(text).filter_map(known).peekable();
    if found.peek().is_none() {
        return Cow::Borrowed(text);
    }
    Cow::Owned(replaced(text, found))
}

/// `from 40 to 95 degrees f` as `from 40F to 95F`.
pub(super) fn both_degrees(text: &str) -> Option<String> {
    let words: Vec<(usize, &str)> = words(text).collect();
    let is_number = |word: &str| word.trim_start_matches('-').parse::<u32>().is_ok();
    words.windows(5).find_map(|five| {
        let [(from, low), (_, to), (_, high), (_, degrees), (at, scale)] = five else {
            return None;
        };
        let letter = match &*scale.to_ascii_lowercase() {
            "f" | "fahrenheit" => "F",
            "c" | "celsius" => "C",
            _ => return None,
        };
        let is_range = is_number(low)
            && is_number(high)
            && matches!(&*to.to_ascii_lowercase(), "to" | "and")
            && matches!(&*degrees.to_ascii_lowercase(), "degrees" | "degree" | "deg" | "degs");
        let range = from..&(at + scale.len());
        is_range.then(|| {
            replaced(
                text,
                [(*range.start..*range.end, format!("{low}{letter} {to} {high}{letter}"))],
            )
        })
    })
}

/// The words between blanks, without the signs about them; each with its place.
pub(super) fn words(text: &str) -> impl Iterator<Item = (usize, &str)> {
    text.split(' ').scan(0, |next, piece| {
        let start = *next;
        *next += piece.len() + 1;
        let lead = piece.len() - piece.trim_start_matches(['(', ',', ';', ':']).len();
        let word = piece[lead..].trim_end_matches([')', ',', ';', ':', '.', '?', '!']);
        Some((start + lead, word))
    })
}

#[cfg(test)]
mod tests {
    use super::in_full;

    #[test]
    fn short_forms_are_put_in_full_and_the_rest_stays() {
        for (said, full) in [
            ("trn 20 h7 frm 22, nxt?", "turn 20 h7 from 22, next?"),
            ("LMTS for 3/4 RC4", "limits for 3/4 RC4"),
            ("bushng 3/4 press", "bushng 3/4 press"),
            ("turn 20 h7 from 22", "turn 20 h7 from 22"),
            ("", ""),
        ] {
            assert_eq!(in_full(said), full, "{said}");
        }
    }
}
