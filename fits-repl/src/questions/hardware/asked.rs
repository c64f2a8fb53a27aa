//! Rings, pins, Woodruff keys, plugs and O-rings, read: the part, then what is
//! known of it in any order.

use crate::{
    query::{Amount, Dimension, Query, Size, Spot},
    words::{
        fault::{Parsed, fatal, fatal_fix},
        keywords::{name_with_figures, near_miss, separator, shortened, space, span, word},
        quantities::quantity,
        sizes::{expression, starts_size},
    },
};

/// What is asked about.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Part {
    /// A retaining ring and its groove.
    Ring,
    /// A spring pin and its hole.
    SpringPin,
    /// A taper pin, its drill and its reamer.
    TaperPin,
    /// A clevis pin.
    ClevisPin,
    /// A cotter pin.
    CotterPin,
    /// A pin across a shaft and a collar.
    CrossPin,
    /// A Woodruff key and its keyseat.
    Woodruff,
    /// A plug for the end of a square or rectangular tube.
    TubePlug,
    /// An O-ring and its groove.
    ORing,
}

/// How a part is asked about.
struct Form {
    part: Part,
    /// What a line begins with, the longest first.
    leads: &'static [&'static str],
    /// Words that take a size, each with what the size is.
    roles: &'static [(&'static str, &'static str)],
    /// Words that choose, each with what it chooses; words of one choice share
    /// what stands before the slash.
    words: &'static [(&'static str, &'static str)],
    /// Sizes that no word takes, at most.
    free: usize,
    example: &'static str,
}

/// Words that say nothing here.
const SMALL: &[&str] = &[
    "for", "a", "an", "the", "on", "in", "of", "and", "with", "to", "at", "groove", "key", "ring",
    "tube", "number", "dash", "into", "across", "x", "by", "hole", "size", "both", "keyseat",
];

const FORMS: &[Form] = &[
    Form {
        part: Part::Ring,
        leads: &[
            "retaining ring",
            "snap ring",
            "snapring",
            "circlip",
            "e-ring",
            "e ring",
            "e-clip",
            "e clip",
        ],
        roles: &[("shaft", "shaft"), ("bore", "bore"), ("housing", "bore"), ("hole", "bore")],
        words: &[
            ("heavy", "kind/heavy"),
            ("crescent", "kind/crescent"),
            ("basic", "kind/basic"),
            ("external", "place/shaft"),
            ("internal", "place/bore"),
        ],
        free: 1,
        example: "as in `retaining ring 20mm shaft`",
    },
    Form {
        part: Part::SpringPin,
        leads: &["slotted spring pin", "coiled spring pin", "coiled pin", "spring pin", "roll pin"],
        roles: &[],
        words: &[("slotted", "kind/slotted"), ("coiled", "kind/coiled")],
        free: 1,
        example: "as in `spring pin 1/4in`",
    },
    Form {
        part: Part::TaperPin,
        leads: &["taper pin"],
        roles: &[("long", "long"), ("length", "long"), ("shaft", "shaft"), ("out", "out")],
        words: &[],
        free: 1,
        example: "as in `taper pin 4 long 2in`",
    },
    Form {
        part: Part::ClevisPin,
        leads: &["clevis pin"],
        roles: &[],
        words: &[],
        free: 1,
        example: "as in `clevis pin 1/2in`",
    },
    Form {
        part: Part::CotterPin,
        leads: &["cotter pin", "split pin"],
        roles: &[],
        words: &[],
        free: 1,
        example: "as in `cotter pin 1/8in`",
    },
    Form {
        part: Part::CrossPin,
        leads: &["cross pin"],
        roles: &[("shaft", "shaft"), ("collar", "collar"), ("hub", "collar"), ("pin", "pin")],
        words: &[],
        free: 0,
        example: "as in `cross pin shaft 1in pin 1/4in torque 20 Nm`",
    },
    Form {
        part: Part::Woodruff,
        leads: &["woodruff"],
        roles: &[("shaft", "shaft")],
        words: &[],
        free: 1,
        example: "as in `woodruff 606 shaft 3/4in`",
    },
    Form {
        part: Part::TubePlug,
        leads: &["square plug", "rectangular plug", "tube plug"],
        roles: &[("wall", "wall"), ("inside", "inside")],
        words: &[
            ("snug", "fit/snug"),
            ("drive", "fit/drive"),
            ("slide", "fit/slide"),
            ("A513", "standard/a513"),
            ("A500", "standard/a500"),
            ("EN10219", "standard/en10219"),
        ],
        free: 2,
        example: "as in `square plug 1in wall 0.065in nylon`",
    },
    Form {
        part: Part::ORing,
        leads: &["o-ring", "o ring", "oring"],
        roles: &[("bore", "bore"), ("rod", "rod"), ("section", "section")],
        words: &[
            ("piston", "place/piston"),
            ("rod", "place/rod"),
            ("face", "place/face"),
            ("static", "use/static"),
            ("moving", "use/moving"),
            ("dynamic", "use/moving"),
            ("inside", "pressure/inside"),
            ("outside", "pressure/outside"),
        ],
        free: 2,
        example: "as in `o-ring 210 piston moving bore 1in`",
    },
];

/// A part and what was said of it.
#[derive(Clone, Debug)]
pub struct HardwareText {
    /// What it is, and where that stands.
    pub part: Spot<Part>,
    /// The words it was called by.
    pub lead: &'static str,
    /// A number that is a name: `606`, `2/0`, `210`.
    pub name: Option<Spot<String>>,
    /// The sizes, each with what it is where a word says so.
    pub sizes: Vec<(Option<&'static str>, Size)>,
    /// What was chosen: choice and value.
    pub chosen: Vec<Spot<(&'static str, &'static str)>>,
    /// What it is made of.
    pub material: Option<Spot<String>>,
    /// What it must carry.
    pub torque: Option<Amount>,
}

impl HardwareText {
    /// The size that a word takes.
    pub(crate) fn role(&self, role: &str) -> Option<&Size> {
        self.sizes.iter().find(|(known, _)| *known == Some(role)).map(|(_, size)| size)
    }

    /// The sizes that no word takes.
    pub(crate) fn free(&self) -> impl Iterator<Item = &Size> {
        self.sizes.iter().filter(|(role, _)| role.is_none()).map(|(_, size)| size)
    }

    /// What was chosen.
    pub(crate) fn choice(&self, choice: &str) -> Option<&'static str> {
        self.chosen.iter().map(|chosen| chosen.value).find(|it| it.0 == choice).map(|it| it.1)
    }

    /// The first size that nothing says the meaning of.
    pub(crate) fn too_many(&self) -> Option<&Size> {
        let free = FORMS.iter().find(|form| form.part == self.part.value).map_or(0, |it| it.free);
        self.free().nth(free)
    }

    /// How it is asked, as a hint says it.
    pub(crate) fn example(&self) -> &'static str {
        FORMS.iter().find(|form| form.part == self.part.value).map_or("", |form| form.example)
    }
}

/// The rest of a line that begins with words, which may stand in the plural.
fn after_lead<'a>(input: &'a str, lead: &str) -> Option<&'a str> {
    let start = input.get(..lead.len())?;
    let rest = input.get(lead.len()..)?;
    let rest = rest.strip_prefix(['s', 'S']).unwrap_or(rest);
    (start.eq_ignore_ascii_case(lead) && !rest.starts_with(|c: char| c.is_alphanumeric()))
        .then_some(rest)
}

/// A line that begins with one of the parts.
pub(crate) fn read(input: &str, total: usize) -> Option<Parsed<'_, Query>> {
    FORMS.iter().find_map(|form| {
        form.leads.iter().find_map(|lead| {
            let rest = after_lead(input, lead)?;
            let part = Spot { value: form.part, at: span(total, input, rest) };
            Some(hardware(rest, total, form, part, lead))
        })
    })
}

/// A number that is a name, where this part has names and it looks like one.
fn named(input: &str, part: Part) -> Option<(&str, String)> {
    let end = input
        .find(|c: char| !(c.is_ascii_alphanumeric() || matches!(c, '/' | '-' | '.' | '#' | '"')))
        .unwrap_or(input.len());
    let (typed, rest) = input.split_at(end);
    let is_digits = |text: &str| !text.is_empty() && text.bytes().all(|b| b.is_ascii_digit());
    let name = match part {
        Part::TaperPin => {
            let name = typed.strip_prefix('#').unwrap_or(typed);
            let digits = name.strip_suffix("/0").unwrap_or(name);
            (is_digits(digits) && digits.len() <= 2).then_some(typed)
        }
        Part::Woodruff => {
            let whole = typed.strip_suffix(".5").unwrap_or(typed);
            (is_digits(whole) && whole.len() >= 3).then_some(typed)
        }
        Part::ORing => {
            let name = typed.strip_prefix("2-").unwrap_or(typed).trim_start_matches('-');
            (is_digits(name) && name.len() == 3).then_some(name)
        }
        _ => None,
    }?;
    // A unit after a space makes it a size: `5 mm`, but `210 in a bore`.
    let (spaced, _) = space(rest).ok()?;
    let is_size = part == Part::TaperPin && fits_core::size::Unit::scan(spaced).is_some();
    (!is_size).then(|| (rest, name.to_owned()))
}

fn hardware<'a>(
    input: &'a str,
    total: usize,
    form: &'static Form,
    part: Spot<Part>,
    lead: &'static str,
) -> Parsed<'a, Query> {
    let mut text = HardwareText {
        part,
        lead,
        name: None,
        sizes: Vec::new(),
        chosen: Vec::new(),
        material: None,
        torque: None,
    };
    let mut rest = input;
    loop {
        let (next, _) = separator(rest)?;
        if next.is_empty() {
            return Ok((next, Query::Hardware(Box::new(text))));
        }
        if text.name.is_none()
            && let Some((after, name)) = named(next, form.part)
        {
            text.name = Some(Spot { value: name, at: span(total, next, after) });
            rest = after;
        } else if let Some((after, torque)) = torqued(next, total, form)
            && text.torque.is_none()
        {
            text.torque = Some(torque);
            rest = after;
        } else if starts_size(next) {
            let (after, size) = expression(next, total)?;
            text.sizes.push((None, size));
            rest = after;
        } else if let Some(after) = crossed(next).filter(|_| !text.sizes.is_empty()) {
            rest = after;
        } else {
            rest = worded(next, total, form, &mut text)?.0;
        }
    }
}

/// A number with a unit of torque, where a torque can be meant.
fn torqued<'a>(input: &'a str, total: usize, form: &Form) -> Option<(&'a str, Amount)> {
    let may_be = form.part == Part::CrossPin && starts_size(input);
    let read = may_be.then(|| quantity(input, total, Dimension::Torque, "", form.example))?;
    read.ok().filter(|(_, torque)| torque.value.unit.is_some())
}

/// What follows the cross of `1 x 2`.
fn crossed(input: &str) -> Option<&str> {
    let rest = input.strip_prefix(['x', 'X', '\u{d7}'])?.trim_start();
    starts_size(rest).then_some(rest)
}

/// A word and what it takes.
fn worded<'a>(
    next: &'a str,
    total: usize,
    form: &'static Form,
    text: &mut HardwareText,
) -> Parsed<'a, ()> {
    let Ok((after_word, typed)) = alphanumeric(next) else {
        let length = next.chars().next().map_or(0, char::len_utf8);
        return fatal(next, length, "this is not understood here", form.example);
    };
    let is = |known: &str| known.eq_ignore_ascii_case(typed);
    let (after, _) = space(after_word)?;
    // `rod 1in` is a size, `rod` alone a choice.
    let role = form.roles.iter().find(|(known, _)| is(known));
    let choice = form.words.iter().find(|(known, _)| is(known));
    if let Some((_, role)) = role
        && (starts_size(after) || choice.is_none())
    {
        if text.role(role).is_some() {
            return fatal(next, typed.len(), format!("`{typed}` stands twice"), form.example);
        }
        if starts_size(after) {
            let (rest, size) = expression(after, total)?;
            text.sizes.push((Some(role), size));
            return Ok((rest, ()));
        }
        // `20 shaft`: the size before it.
        if let Some(free) = text.sizes.iter_mut().rev().find(|(known, _)| known.is_none()) {
            free.0 = Some(role);
            return Ok((after_word, ()));
        }
        // A ring's place may be said before its size: `shaft ring 20`.
        return fatal(after, 0, format!("the size is missing after `{typed}`"), form.example);
    }
    if let Some((_, choice)) = choice {
        let (choice, value) = choice.split_once('/').unwrap_or((choice, ""));
        if text.choice(choice).is_some_and(|chosen| chosen != value) {
            return fatal(
                next,
                typed.len(),
                format!("`{typed}` does not go with what was said before it"),
                form.example,
            );
        }
        text.chosen.push(Spot { value: (choice, value), at: span(total, next, after_word) });
        return Ok((after_word, ()));
    }
    if is("torque") && form.part == Part::CrossPin {
        let (rest, torque) =
            quantity(after, total, Dimension::Torque, "the torque is missing", form.example)?;
        if text.torque.replace(torque).is_some() {
            return fatal(next, typed.len(), "`torque` stands twice", form.example);
        }
        return Ok((rest, ()));
    }
    // `no 606` is a number; no alone turns a meaning round.
    let is_number = after.trim_start_matches(['.', '#']).starts_with(|c: char| c.is_ascii_digit());
    if SMALL.iter().any(|small| is(small)) || is("no") && is_number {
        return Ok((after_word, ()));
    }
    if matches!(form.part, Part::CrossPin | Part::TubePlug) && text.material.is_none() {
        let ends = |typed: &str| {
            let known = |words: &[(&str, &str)]| {
                words.iter().any(|(known, _)| known.eq_ignore_ascii_case(typed))
            };
            known(form.roles) || known(form.words) || typed.eq_ignore_ascii_case("torque")
        };
        let (rest, value) = name_with_figures(next, ends)?;
        if !value.is_empty() {
            text.material = Some(Spot { value, at: span(total, next, rest) });
            return Ok((rest, ()));
        }
    }
    let near = form
        .roles
        .iter()
        .chain(form.words)
        .map(|(known, _)| *known)
        .find(|known| near_miss(&typed.to_ascii_lowercase(), known));
    fatal_fix(
        next,
        typed.len(),
        format!("`{}` is not understood here", shortened(typed)),
        if near.is_some() { "" } else { form.example },
        near.map(|known| (typed.len(), known.to_owned())),
    )
}

/// A word with figures in it: `A513`.
fn alphanumeric(input: &str) -> Parsed<'_, &str> {
    let (_, letters) = word(input)?;
    let tail = input.get(letters.len()..).unwrap_or_default();
    let digits = tail.find(|c: char| !c.is_ascii_digit()).unwrap_or(tail.len());
    let end = letters.len() + digits;
    Ok((input.get(end..).unwrap_or_default(), input.get(..end).unwrap_or_default()))
}
