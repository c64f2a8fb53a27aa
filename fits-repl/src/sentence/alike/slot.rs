//! What a line is told apart by: its words, and what stands in it that another line
//! would have otherwise.

use std::ops::Range;

use crate::sentence::{
    line::Line,
    sizes::{deviations_text, span_text},
    token::{Num, System, Token},
    view::{Item, View},
};

/// What one line has and another of the same meaning has otherwise: a size, a class,
/// a fit word.
#[derive(Debug)]
pub(super) struct Slot {
    pub(super) kind: &'static str,
    /// As a plain query has it.
    pub(super) plain: String,
    /// Its length, where it is one.
    pub(super) mm: Option<f64>,
    /// Where it stands.
    pub(super) at: Range<usize>,
    /// The words on its two sides.
    pub(super) beside: [String; 2],
}

impl Slot {
    /// What it says where a query does not take it.
    pub(super) fn as_word(&self) -> String {
        format!("{}.{}", self.kind, joined(&self.plain))
    }
}

/// A line, taken apart.
#[derive(Debug)]
pub(super) struct Parted {
    pub(super) slots: Vec<Slot>,
    /// Its words, and what is known of them, each once.
    pub(super) words: Vec<String>,
}

/// Kinds of slots that a query may leave out: they are words as well.
pub(super) const MAY_BE_WORDS: &[&str] = &["fit", "material", "bought", "instrument"];

/// The kinds of slots that a query may not leave out, in one order.
pub(super) fn needs<'a>(kinds: impl Iterator<Item = &'a str>) -> Vec<&'a str> {
    let mut needs: Vec<&str> = kinds.filter(|kind| !MAY_BE_WORDS.contains(kind)).collect();
    needs.sort_unstable();
    needs
}

/// What stands at a place of a line.
enum Place {
    Slot(usize),
    Word(usize, String),
}

pub(super) fn parted(line: &Line, view: &View, unknown: &[Range<usize>], system: System) -> Parted {
    let mut slots: Vec<Slot> = Vec::new();
    let mut row: Vec<Place> = Vec::new();
    for (place, item) in view.items.iter().enumerate() {
        let before = place.checked_sub(1).and_then(|place| view.items.get(place));
        let Some((kind, plain, mm)) = filled(item, before, system) else {
            row.extend(word(view, place, item).map(|word| Place::Word(item.at.start, word)));
            continue;
        };
        let mut at = item.at.clone();
        // Limits take in the size that they are of.
        if kind == "limits"
            && let Some(size) = slots.pop()
        {
            row.pop();
            at.start = size.at.start;
        }
        row.push(Place::Slot(slots.len()));
        slots.push(Slot { kind, plain, mm, at, beside: Default::default() });
    }
    for at in unknown {
        let said = line.text().get(at.clone()).unwrap_or_default();
        if said.bytes().any(|byte| byte.is_ascii_alphanumeric()) {
            row.push(Place::Word(at.start, joined(said)));
        }
    }
    row.sort_by_key(|place| match place {
        Place::Slot(slot) => slots[*slot].at.start,
        Place::Word(at, _) => *at,
    });
    let beside = |place: Option<usize>| match place.and_then(|place| row.get(place)) {
        Some(Place::Slot(_)) => "#".to_owned(),
        Some(Place::Word(_, word)) => word.clone(),
        None => String::new(),
    };
    let mut words = Vec::new();
    for (at, place) in row.iter().enumerate() {
        match place {
            Place::Word(_, word) => words.push(word.clone()),
            Place::Slot(slot) => {
                let slot = &mut slots[*slot];
                slot.beside = [beside(at.checked_sub(1)), beside(Some(at + 1))];
                if MAY_BE_WORDS.contains(&slot.kind) {
                    words.push(slot.as_word());
                }
                words.push(format!("#{}", slot.kind));
            }
        }
    }
    words.sort();
    words.dedup();
    Parted { slots, words }
}

fn joined(said: &str) -> String {
    said.to_lowercase().replace([' ', ',', '"'], "_")
}

/// A word as it is told apart: by what it is, a small one as it was typed.
fn word(view: &View, place: usize, item: &Item) -> Option<String> {
    match &item.token {
        Token::Word { kind: "small" | "asking", .. } => Some(joined(&view.said(place))),
        Token::Word { name, kind } => Some(format!("{kind}.{}", joined(name))),
        Token::Plus => Some("+".to_owned()),
        Token::Minus => Some("-".to_owned()),
        Token::Cross => Some("x".to_owned()),
        _ => None,
    }
}

/// What fills a slot: its kind, how a plain query has it, its length.
fn filled(
    item: &Item,
    before: Option<&Item>,
    system: System,
) -> Option<(&'static str, String, Option<f64>)> {
    let given = |num: &Num| Some(num.mm(system));
    let own = |kind: &'static str, text: &str| Some((kind, text.to_owned(), None));
    match &item.token {
        Token::Number(num) => Some(("size", num.plain(system), given(num))),
        Token::Deviations { upper, lower, is_both } => {
            let Token::Number(num) = &before?.token else { return None };
            let text = deviations_text(num, upper, lower, *is_both, system);
            Some(("limits", text, given(num)))
        }
        Token::Span(low, high) => Some(("span", span_text(low, high, system), given(low))),
        Token::Thread { name, .. } => own("thread", name),
        Token::ThreadClass(text) => own("thread-class", text),
        Token::Hole(text) => own("hole-class", text),
        Token::Shaft(text) => own("shaft-class", text),
        Token::Pair(text) => own("pair", text),
        Token::InchClass(text) => own("inch-class", text),
        Token::Gauge(text) => own("gauge", text),
        Token::Percent(text) => Some(("percent", format!("{text}%"), None)),
        Token::Temperature(text) => own("temperature", text),
        Token::Torque(text) => own("torque", text),
        Token::Force(text) => own("force", text),
        Token::PerInch(text) => Some(("pitch", format!("{text} tpi"), None)),
        Token::Times(count) => Some(("times", format!("{count}x"), None)),
        Token::Angle(text) => Some(("angle", format!("{text} deg"), None)),
        Token::Bearing(ball) => Some(("bearing", ball.number().to_owned(), None)),
        Token::General(letter) => Some(("general", letter.to_string(), None)),
        Token::Grade(grade) => Some(("grade", format!("IT{grade}"), None)),
        Token::Word { name, kind: kind @ ("fit" | "material" | "bought" | "instrument") } => {
            Some((kind, (*name).to_owned(), None))
        }
        _ => None,
    }
}
