//! The phrases that are known: `known.csv`, one a line, made from the lists of the
//! tests by `made`.

use std::{collections::HashMap, sync::LazyLock};

use super::slot::needs;

/// A slot of a phrase that is known.
#[derive(Debug)]
pub(super) struct KnownSlot {
    pub(super) kind: &'static str,
    pub(super) mm: Option<f64>,
    pub(super) beside: [&'static str; 2],
}

/// A phrase that is known, and what it means.
#[derive(Debug)]
pub(super) struct Known {
    /// Its plain query, with the number of a slot between braces for what fills it.
    pub(super) plain: &'static str,
    pub(super) slots: Vec<KnownSlot>,
    /// Is the slot in the plain query?
    pub(super) is_used: Vec<bool>,
    /// The kinds of what it takes.
    pub(super) needs: Vec<&'static str>,
    pub(super) words: Vec<&'static str>,
    /// How much its words say together.
    pub(super) length: f64,
}

/// All of them, and how much each word says.
#[derive(Debug)]
pub(super) struct Bank {
    pub(super) all: Vec<Known>,
    weights: HashMap<&'static str, f64>,
    /// Of a word that no phrase has.
    new: f64,
}

impl Bank {
    pub(super) fn get() -> &'static Self {
        static BANK: LazyLock<Bank> = LazyLock::new(|| Bank::read(include_str!("known.csv")));
        &BANK
    }

    fn read(text: &'static str) -> Self {
        let mut all: Vec<Known> = text.lines().filter_map(Known::read).collect();
        let mut counts: HashMap<&'static str, f64> = HashMap::new();
        for word in all.iter().flat_map(|known| &known.words) {
            *counts.entry(word).or_default() += 1.0;
        }
        #[allow(clippy::cast_precision_loss, reason = "some thousands")]
        let phrases = all.len() as f64;
        let says = |count: f64| ((phrases + 1.0) / (count + 1.0)).ln() + 0.3;
        let weights = counts.into_iter().map(|(word, count)| (word, says(count))).collect();
        let mut bank = Self { all: Vec::new(), weights, new: says(0.0) };
        for known in &mut all {
            known.length = bank.length(known.words.iter().copied());
        }
        bank.all = all;
        bank
    }

    /// How much a word says: the rarer, the more.
    pub(super) fn weight(&self, word: &str) -> f64 {
        self.weights.get(word).copied().unwrap_or(self.new)
    }

    pub(super) fn length<'a>(&self, words: impl Iterator<Item = &'a str>) -> f64 {
        words.map(|word| self.weight(word).powi(2)).sum::<f64>().sqrt()
    }
}

impl Known {
    fn read(line: &'static str) -> Option<Self> {
        let mut cells = line.splitn(3, ',');
        let (slots, words, plain) = (cells.next()?, cells.next()?, cells.next()?);
        let slots: Vec<KnownSlot> = slots.split_whitespace().filter_map(KnownSlot::read).collect();
        let is_used: Vec<bool> =
            (0..slots.len()).map(|slot| plain.contains(&format!("{{{slot}}}"))).collect();
        let used = slots.iter().zip(&is_used).filter(|(_, is_used)| **is_used);
        let needs = needs(used.map(|(slot, _)| slot.kind));
        let words = words.split_whitespace().collect();
        Some(Self { plain, slots, is_used, needs, words, length: 0.0 })
    }
}

impl KnownSlot {
    fn read(text: &'static str) -> Option<Self> {
        let mut parts = text.split('|');
        let (kind, mm) = (parts.next()?, parts.next()?);
        let beside = [parts.next()?, parts.next()?];
        Some(Self { kind, mm: mm.parse().ok(), beside })
    }
}
