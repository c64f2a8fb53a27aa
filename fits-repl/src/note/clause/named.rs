//! Features by how they are named: for what goes in them, by their owner, by a form.

use fits_core::job::whole::SizeKind;

use super::{
    items::{Item, Placed},
    phrases::{feature_phrase, text_of},
};
use crate::note::{
    Line,
    lexicon::{feature, inwardness, is_material, leads_to_mate, stem},
    names::is_instance,
    token::{Kind, Token},
    told::Told,
};

/// A feature that the words at a place name in one of these ways; how many tokens.
pub(super) fn named(
    told: &Told,
    tokens: &[Token],
    at: usize,
    line: &Line,
    out: &[Placed],
) -> Option<(Item, usize)> {
    let rest = &tokens[at..];
    let own =
        |name: &str, side| Item::Feature { name: name.to_owned(), side, part: None, mate: None };
    let is_num = |at: usize| matches!(rest.get(at).map(|next| &next.kind), Some(Kind::Num(_)));
    let word = rest.first()?.word()?;
    let behind_size = at > 0 && matches!(tokens[at - 1].kind, Kind::Num(_));
    match word {
        // `flat 5.5 across`, not `flat 25 x 3`.
        "flat" if is_num(1) && matches!(rest.get(2)?.word(), Some("across" | "deep" | "wide")) => {
            return Some((own("flat", SizeKind::Other), 1));
        }
        // `three on a 95 circle`
        "circle" if behind_size => return Some((own("pcd", SizeKind::Length), 1)),
        "pitch" | "bolt" | "hole" if behind_size && rest.get(1)?.word() == Some("circle") => {
            return Some((own("pcd", SizeKind::Length), 2));
        }
        // `tapered 1 in 12 over 60`: how long the taper is.
        "over" if line.tapers && is_num(1) => {
            return Some((own("taper length", SizeKind::Length), 1));
        }
        _ => {}
    }
    if let Some((name, mate, taken)) = housing_of(told, rest, line) {
        let item = Item::Feature { name, side: SizeKind::Hole, part: None, mate: Some(mate) };
        return Some((item, taken));
    }
    of_owner(told, rest, line, out)
}

/// `bearing housing 26 J7` under a frame: the frame's hole for it, where the class is a
/// hole's and the note has no part of that name.
pub(super) fn housing_of(
    told: &Told,
    rest: &[Token],
    line: &Line,
) -> Option<(String, String, usize)> {
    let words: Vec<&str> = rest.iter().take(3).map_while(Token::word).collect();
    let last = words.iter().position(|word| stem(word) == "housing").filter(|at| *at > 0)?;
    let is_hole = matches!(&rest.get(last + 1)?.kind, Kind::Num(_))
        && matches!(&rest.get(last + 2)?.kind, Kind::Class(class)
            if is_of_hole(class));
    let said = words[..=last].iter().map(|word| stem(word)).collect::<String>();
    let host = line.subject?;
    let is_host = !line.declares && told.inwardness(host) < 0;
    let is_part = told.names.exactly(&said).is_some();
    (is_hole && is_host && !is_part && inwardness(words[last - 1]).is_some())
        .then(|| (words[..=last].join(" "), words[..last].join(" "), last + 1))
}

/// `plate hook holes .6252`, `frame B housing 26.013`: behind its owner a hole for what
/// goes in it, or the last word of a longer name.
fn of_owner(told: &Told, rest: &[Token], line: &Line, out: &[Placed]) -> Option<(Item, usize)> {
    let is_mark = |item: &Item| matches!(item, Item::Loose(word) if is_instance(&stem(word)));
    let owner = match out {
        [.., (Item::Part(part), _)] => *part,
        [.., (Item::Part(part), _), (mark, _)] if is_mark(mark) => *part,
        _ => return None,
    };
    let item = |name: String, side| Item::Feature { name, side, part: Some(owner), mate: None };
    // The whole of its name.
    let words: Vec<String> =
        rest.iter().take(4).map_while(|token| token.word().map(stem)).collect();
    let whole = told.features_of(owner).find(|(at, one)| {
        let name = &told.names.features[*at];
        name.len() > 1 && one.side.surface().is_some() && words.starts_with(name)
    });
    if let Some((at, one)) = whole {
        return Some((item(one.name.clone(), one.side), told.names.features[at].len()));
    }
    if let Some((inner, taken)) = told.part_at(rest)
        && inner != owner
        && told.inwardness(inner) > told.inwardness(owner)
        && let Some((name, SizeKind::Hole, more)) = feature_phrase(&rest[taken..])
    {
        let said: Vec<String> = rest[..taken].iter().map(text_of).collect();
        let name = if line.reads { name } else { format!("{} {name}", said.join(" ")) };
        return Some((item(name, SizeKind::Hole), taken + more));
    }
    let word = rest.first()?.word().filter(|word| line.reads && feature(word).is_none())?;
    let said = stem(word);
    let (_, one) = told.features_of(owner).find(|(at, one)| {
        let name = &told.names.features[*at];
        name.len() > 1 && name.last() == Some(&said) && one.side.surface().is_some()
    })?;
    Some((item(one.name.clone(), one.side), 1))
}

/// A form that is used at the size it comes in.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum Form {
    /// `3/4 tube`, `3/16 stainless tube`.
    Tube,
    /// `3/8 silver steel`, `3/8 drill rod`.
    Rod,
}

/// The form that the words behind a size say, whatever metal stands between.
pub(super) fn form_behind(items: &[Placed], at: usize) -> Option<Form> {
    let mut behind = items[at + 1..].iter().map_while(|(item, _)| match item {
        Item::Loose(word) => Some(word.as_str()),
        _ => None,
    });
    let words: Vec<&str> = behind.by_ref().take(4).collect();
    match words.as_slice() {
        ["silver", "steel", ..] | ["drill", "rod", ..] => return Some(Form::Rod),
        _ => {}
    }
    let form = words.iter().find(|word| !is_metal(word))?;
    is_tube(form).then_some(Form::Tube)
}

pub(in crate::note) fn is_tube(word: &str) -> bool {
    matches!(word.trim().to_lowercase().as_str(), "tube" | "tubing")
}

/// Is it a metal, and not the form that it comes in?
fn is_metal(word: &str) -> bool {
    #[rustfmt::skip]
    const FORMS: &[&str] = &[
        "tube", "tubing", "plate", "sheet", "bar", "rod", "flat", "angle", "stock",
    ];
    is_material(word) && !FORMS.contains(&word)
}

/// `worm bore 16.012`, where a body has a worm bore of 22: no reading of that.
pub(super) fn is_in_reach(told: &Told, feature: usize, next: Option<&Token>, line: &Line) -> bool {
    let Some(Token { kind: Kind::Num(num), .. }) = next.filter(|_| line.reads) else { return true };
    let one = &told.job.features[feature];
    let size = num.length(line.unit.unwrap_or(one.unit)).zip(one.size());
    size.is_none_or(|(size, was)| {
        let ratio = size.millimetres() / was.millimetres();
        (0.75..1.34).contains(&ratio) || (20.0..30.0).contains(&ratio) || ratio < 0.05
    })
}

/// `bearing seat 47 J7`: the class is a hole's, so the seat is one.
pub(super) fn seats_by_class(items: &mut [Placed]) {
    for at in 0..items.len().saturating_sub(2) {
        let is_hole = matches!(&items[at + 2].0, Item::Class(class) if is_of_hole(class));
        let is_size = matches!(items[at + 1].0, Item::Size(Kind::Num(_) | Kind::Dims(_)));
        if let (Item::Feature { name, side, .. }, true, true) = (&mut items[at].0, is_size, is_hole)
            && is_seat(name)
        {
            *side = SizeKind::Hole;
        }
    }
}

/// A place for another part, in a hole or on a shaft.
pub(in crate::note) fn is_seat(name: &str) -> bool {
    let last = name.split_whitespace().last().unwrap_or_default();
    matches!(stem(&last.to_lowercase()).as_str(), "seat" | "seating" | "register")
}

/// Is it the class of a hole?
pub(in crate::note) fn is_of_hole(class: &str) -> bool {
    class.starts_with(|c: char| c.is_ascii_uppercase())
}

/// `dowels 8 m6 x 30 in reamed holes 8 H7`: behind a part's own size the feature with a
/// size of its own is what it goes in.
pub(super) fn is_led_to(items: &[Placed], size: usize, feature: usize) -> bool {
    let is_part = size.checked_sub(1).is_some_and(|at| matches!(items[at].0, Item::Part(_)));
    let is_sized = matches!(items.get(feature + 1), Some((Item::Size(_), _)));
    let mut between = items[size..feature].iter();
    is_part
        && is_sized
        && between.any(|(item, _)| matches!(item, Item::Loose(word) if leads_to_mate(word)))
}
