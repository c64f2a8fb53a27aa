//! What a name means: the words of it in any order, and the nearest one where
//! it is a slip.

use std::borrow::Cow;

use super::{Family, Material};
use crate::{
    error::Error,
    nearest::{keystrokes_within, plain},
};

/// Words of form and of numbering: they say nothing of the metal.
const IDLE: [&str; 15] = [
    "bar", "rod", "round", "stock", "tube", "alloy", "aisi", "sae", "astm", "uns", "cda", "asa",
    "type", "grade", "of",
];

/// A word as the table spells it.
fn respelled(word: &str) -> &str {
    match word {
        "aluminum" | "alu" | "alum" | "ali" => "aluminium",
        "gray" => "grey",
        "galvanized" => "galvanised",
        "normalized" => "normalised",
        "pipe" | "tubing" => "tube",
        other => other,
    }
}

/// A name as the table spells it.
fn spelled(name: &str) -> Cow<'_, str> {
    let name = plain(name);
    if name.split(' ').all(|word| respelled(word) == word) {
        return name;
    }
    name.split(' ').map(respelled).collect::<Vec<_>>().join(" ").into()
}

impl Family {
    /// Every one in the table.
    const LISTED: [Self; 10] = [
        Self::Steel,
        Self::Stainless,
        Self::CastIron,
        Self::Aluminium,
        Self::Brass,
        Self::Bronze,
        Self::Copper,
        Self::Titanium,
        Self::Magnesium,
        Self::Plastic,
    ];

    /// The words that say the family and no more.
    const fn says(self) -> &'static [&'static str] {
        match self {
            Self::Steel => &["steel"],
            Self::Stainless => &["stainless", "steel", "ss"],
            Self::CastIron => &["cast", "iron"],
            Self::Aluminium => &["aluminium"],
            Self::Brass => &["brass"],
            Self::Bronze => &["bronze"],
            Self::Copper => &["copper"],
            Self::Titanium => &["titanium"],
            Self::Magnesium => &["magnesium"],
            Self::Plastic => &["plastic"],
            Self::Other => &[],
        }
    }

    /// The word that no other family has.
    fn noun(self) -> Option<&'static str> {
        match self {
            Self::CastIron => Some("iron"),
            other => other.says().first().copied(),
        }
    }
}

fn sorted(text: &str) -> Vec<&str> {
    let mut words: Vec<&str> = text.split(' ').collect();
    words.sort_unstable();
    words
}

/// The words that tell materials of a family apart, in order.
fn telling(text: &str, family: Family) -> Vec<&str> {
    let mut words = sorted(text);
    words.retain(|word| !family.says().contains(word) && !IDLE.contains(word));
    words
}

/// The names that may be shown, as they are spelled here.
fn shown(material: &Material) -> impl Iterator<Item = Cow<'_, str>> {
    core::iter::once(material.name()).chain(material.aliases.iter().copied()).map(spelled)
}

/// Every name, as it is spelled here.
fn names(material: &Material) -> impl Iterator<Item = Cow<'_, str>> {
    shown(material).chain(material.silent.iter().copied().map(spelled))
}

pub(super) fn find(name: &str) -> Result<&'static Material, Error> {
    let wanted = spelled(name);
    known(&wanted).ok_or_else(|| {
        Error::not_listed(
            format!("no material is called {}", name.trim()),
            nearest(&wanted).map_or_else(|| others(&wanted), |word| format!("nearest: {word}")),
        )
    })
}

/// Words that a name may spell in another way than they are spelled here.
const RESPELLED: [&str; 4] = ["aluminium", "grey", "galvanised", "normalised"];

/// A name's letters stand in this text, whatever their case.
fn holds(text: &str, word: &str) -> bool {
    let Some(first) = word.as_bytes().first() else { return true };
    let begins = |part: &[u8]| part.first().is_some_and(|byte| byte.eq_ignore_ascii_case(first));
    let mut parts = text.as_bytes().windows(word.len());
    parts.any(|part| begins(part) && part.eq_ignore_ascii_case(word.as_bytes()))
}

pub(super) fn named(name: &str) -> Option<&'static Material> {
    known(&spelled(name))
}

/// The material of a name as it is spelled here.
fn known(wanted: &str) -> Option<&'static Material> {
    // Brass and stainless are one as they stand.
    let singular =
        wanted.strip_suffix('s').filter(|singular| !singular.ends_with('s')).unwrap_or(wanted);
    let is = |known: &str| known == wanted || known == singular;
    let words = sorted(singular);
    let tells = |material: &Material, known: &str| {
        // Tin is not a bronze: the family is left out of neither, or said.
        let family = if words.iter().any(|word| material.family.says().contains(word)) {
            material.family
        } else {
            Family::Other
        };
        let wanted = telling(singular, family);
        !wanted.is_empty() && wanted == telling(known, family)
    };
    // Each word stands in the name that is meant, or says its family: most are passed over by it.
    let may_mean = |material: &&Material| {
        let (aliases, silent) = (material.aliases.iter(), material.silent.iter());
        words.iter().all(|word| {
            IDLE.contains(word)
                || RESPELLED.contains(word)
                || material.family.says().contains(word)
                || holds(&material.name, word)
                || aliases.clone().chain(silent.clone()).any(|name| holds(name, word))
        })
    };
    let candidates: Vec<&'static Material> = Material::all().filter(may_mean).collect();
    let all = || candidates.iter().copied();
    all()
        .find(|material| is(&spelled(&material.name)))
        .or_else(|| all().find(|material| names(material).any(|known| is(&known))))
        .or_else(|| all().find(|material| names(material).any(|known| sorted(&known) == words)))
        .or_else(|| all().find(|material| names(material).any(|known| tells(material, &known))))
}

/// The family whose own word is said.
fn family_said(wanted: &str) -> Option<Family> {
    let said = |family: &Family| {
        family.noun().is_some_and(|noun| wanted.split(' ').any(|word| word == noun))
    };
    // Stainless steel is stainless.
    Family::LISTED.into_iter().rev().find(said)
}

/// The name that a slip of the finger made, of the family said; a word with
/// figures in it or of three letters is not a slip of another.
fn nearest(wanted: &str) -> Option<Cow<'static, str>> {
    let family = family_said(wanted);
    let typed: String = wanted.replace(' ', "");
    Material::all()
        .filter(|material| family.is_none_or(|family| family == material.family))
        .flat_map(shown)
        .filter_map(|known| slips(wanted, &typed, &known).map(|count| (count, known)))
        .min_by_key(|(count, _)| *count)
        .map(|(_, known)| known)
}

/// How many keystrokes a name is from another, where it may be a slip of it.
fn slips(wanted: &str, typed: &str, known: &str) -> Option<usize> {
    let has_figures = |text: &str| text.contains(|c: char| c.is_ascii_digit());
    // A space forgotten, or one too many.
    if known.replace(' ', "") == typed {
        return Some(1);
    }
    let (wanted, known) = (wanted.split(' '), known.split(' '));
    if wanted.clone().count() != known.clone().count() {
        return None;
    }
    wanted.zip(known).try_fold(0, |sum, (word, known)| {
        if word == known {
            return Some(sum);
        }
        let letters = word.chars().count();
        let slip = letters > 3 && !has_figures(word) && !has_figures(known);
        let count = slip.then(|| keystrokes_within(word, known, 1 + letters / 6)).flatten();
        count.map(|count| sum + count)
    })
}

/// What is listed instead: of the family said, or some of every.
fn others(wanted: &str) -> String {
    match family_said(wanted) {
        Some(family) => {
            let names: Vec<&str> = Material::all()
                .filter(|material| material.family == family)
                .map(Material::name)
                .take(8)
                .collect();
            format!("some of those listed: {}", names.join(", "))
        }
        None => "some of those listed: steel, stainless, cast iron, aluminium, brass, bronze, nylon, acetal".into(),
    }
}
