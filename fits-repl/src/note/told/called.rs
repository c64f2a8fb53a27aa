//! Which part, and which of its features, a word of the note means.

use fits_core::{
    Length,
    job::whole::{PartFeature, SizeKind},
};

use super::Told;
use crate::note::{
    lexicon::{feature, inwardness, is_material, is_noun, is_small, leads_to_mate, stem, stems},
    names::{is_instance, likeness},
    token::{Kind, Token},
};

impl Told {
    /// The part that a phrase names; the latest of equals.
    pub(in crate::note) fn part_called(&self, said: &[String]) -> Option<(usize, u32)> {
        let in_block = self.names.is_said_in_block(said);
        if !in_block && let Some(exact) = self.names.exactly(&said.concat()) {
            return Some((exact, 100));
        }
        let plural = |part: usize| self.job.parts[part].name.to_lowercase().ends_with('s');
        let alike = self.names.alike(said);
        alike
            .into_iter()
            .map(|part| {
                let mut score = likeness(said, &self.names.parts[part]);
                // `LH plate` is one of the side plates.
                if score == 0 && matches!(said[0].as_str(), "l" | "r") && said.len() > 1 {
                    score =
                        if likeness(&said[1..], &self.names.parts[part]) >= 65 { 60 } else { 0 };
                }
                // Nylon bushes are not the bronze ones.
                if score == 62 && is_material(&said[0]) {
                    let stuff = self.job.parts[part].material.as_deref().unwrap_or_default();
                    if !stuff.is_empty() && !stuff.to_lowercase().contains(&said[0]) {
                        score = 0;
                    }
                }
                // Under its own part `bush` is the bush named there.
                let boost = if score >= 62 && self.names.is_in_block(part) { 40 } else { 0 };
                (part, score + boost)
            })
            .filter(|(_, score)| *score > 0)
            .max_by_key(|(part, score)| (*score, self.names.spoken(*part), plural(*part)))
    }

    /// The part that one word of its name means: `plate`, `frame` of the frame top plate.
    pub(in crate::note) fn part_in_full(&self, said: &[String]) -> Option<usize> {
        let [word] = said else { return None };
        let called = self.part_called(said).filter(|(_, score)| *score >= 65);
        called.map(|(part, _)| part).or_else(|| self.names.beginning(word))
    }

    /// Of several that a short name could mean, the one with such a size.
    pub(in crate::note) fn part_by_size(&self, said: &[String], sizes: &[Length]) -> Option<usize> {
        if sizes.is_empty() {
            return None;
        }
        let near = |part: &usize| {
            sizes.iter().any(|size| {
                self.nearest(*part, None, *size).is_some_and(|at| self.is_near(at, *size))
            })
        };
        let alike = self.names.alike(said).into_iter();
        alike.filter(|part| likeness(said, &self.names.parts[*part]) >= 62).find(near)
    }

    /// The part named by the tokens at a place, the longest name first.
    pub(in crate::note) fn part_at(&self, tokens: &[Token]) -> Option<(usize, usize)> {
        let small = |word: &str| is_small(word) || leads_to_mate(word);
        if self.job.parts.is_empty()
            || tokens
                .first()?
                .word()
                .is_some_and(|word| small(word) && self.names.exactly(word).is_none())
        {
            return None;
        }
        let words: Vec<String> = tokens
            .iter()
            .take(4)
            .map_while(|token| match &token.kind {
                Kind::Word(word) | Kind::Code(word) => Some(stem(word)),
                Kind::Num(num) if num.is_whole() && num.unit.is_none() && num.over < 10 => {
                    Some(num.over.to_string())
                }
                _ => None,
            })
            .collect();
        (1..=words.len()).rev().find_map(|count| {
            let said = &words[..count];
            let first_is_word =
                !said[0].starts_with(|c: char| c.is_ascii_digit()) || said[0].len() > 2;
            // `crank arm` is not the crank.
            let goes_on = words
                .get(count)
                .is_some_and(|next| inwardness(next).is_some() && feature(next).is_none());
            if !first_is_word
                || count == 1
                    && (is_instance(&said[0]) || said[0].len() < 3 && !self.names.is_code(tokens))
            {
                return None;
            }
            let (part, score) = self.part_called(said)?;
            // `base post holes`, of a base that has post holes.
            let has = |part: usize, from: usize| {
                let mut of = self.names.of(part).iter().map(|at| &self.names.features[*at]);
                of.any(|name| name.len() > 1 && words[from..].starts_with(name))
            };
            if goes_on && !has(part, count) {
                return None;
            }
            // `frame pillar holes` are the frame's: the pillar is no frame pillar.
            let is_of_first = |less: usize| {
                let first = self.names.exactly(&words[..less].concat());
                first.is_some_and(|first| has(first, less))
            };
            if score < 85 && (1..count).any(is_of_first) {
                return None;
            }
            // One word of a longer name counts only where it names a thing.
            (score >= 65 || self.names.is_thing(&said[count - 1]) || score >= 60 && count > 1)
                .then_some((part, count))
        })
    }

    /// The part of exactly that name, or a new one.
    pub(in crate::note) fn part_named(&mut self, name: &str, line: usize) -> usize {
        let said = stems(name);
        match self.part_called(&said) {
            Some((part, score)) if score >= 100 => part,
            _ => self.new_part(name, line),
        }
    }

    /// How much a part is the inner one.
    pub(in crate::note) fn inwardness(&self, part: usize) -> i32 {
        let by_name = self.names.parts[part].iter().rev().find_map(|word| inwardness(word));
        let has = |side| self.features_of(part).any(|(_, feature)| feature.side == side);
        match by_name {
            Some(rank @ 0..) => rank,
            // A column with an outside and no bore goes into something.
            by_name if has(SizeKind::Shaft) && !has(SizeKind::Hole) => 3 + by_name.unwrap_or(0),
            Some(rank) => rank,
            None => i32::from(
                self.names.parts[part].iter().any(|w| w.starts_with(|c: char| c.is_ascii_digit())),
            ),
        }
    }

    /// The feature of a part that a name means, on a side.
    pub(in crate::note) fn feature_called(
        &self,
        part: usize,
        name: &str,
        side: Option<SizeKind>,
    ) -> Option<usize> {
        let said = stems(name);
        self.features_of(part)
            .filter(|(_, feature)| side.is_none_or(|side| feature.side == side))
            .map(|(at, _)| {
                let own = &self.names.features[at];
                let head = |words: &[String]| words.iter().rfind(|w| !is_instance(w)).cloned();
                let mut score = likeness(&said, own);
                if score == 0 && said.len() == 1 && own.first() == said.first() {
                    score = 50;
                }
                if score == 0 && head(&said) == head(own) && said.len() == 1 {
                    score = 40;
                }
                // `bores` of a bush are its id.
                let alike = |a: &str| matches!(a, "bore" | "id" | "hole");
                let outs = |a: &str| matches!(a, "od" | "dia");
                if score == 0
                    && said.len() == 1
                    && own.len() == 1
                    && (alike(&said[0]) && alike(&own[0]) || outs(&said[0]) && outs(&own[0]))
                {
                    score = 60;
                }
                (at, score)
            })
            .filter(|(_, score)| *score > 0)
            .max_by_key(|(at, score)| (*score, core::cmp::Reverse(*at)))
            .map(|(at, _)| at)
    }

    /// A feature by its whole name among all parts: `gear seat`.
    pub(in crate::note) fn feature_anywhere(&self, tokens: &[Token]) -> Option<(usize, usize)> {
        let words: Vec<String> = tokens
            .iter()
            .take(4)
            .map_while(|token| match &token.kind {
                Kind::Word(word) => Some(stem(word)),
                _ => None,
            })
            .collect();
        // One word counts where only this note has it: `tail = .4985`.
        let own = |word: &String| is_noun(word) && !self.names.is_thing(word);
        let least = if words.first().is_some_and(own) { 1 } else { 2 };
        (least..=words.len()).rev().find_map(|count| {
            let said = &words[..count];
            self.names.feature_exactly(&said.join(" ")).map(|at| (at, count))
        })
    }

    /// The size that is looked for, nearest first.
    pub(in crate::note) fn nearest(
        &self,
        part: usize,
        side: Option<SizeKind>,
        size: Length,
    ) -> Option<usize> {
        let off = |feature: &PartFeature| {
            let nominal = feature.size()?;
            Some((nominal.tenth_nanometres() - size.tenth_nanometres()).abs())
        };
        self.features_of(part)
            .filter(|(_, feature)| side.is_none_or(|side| feature.side == side))
            .filter_map(|(at, feature)| off(feature).map(|off| (at, off)))
            .min_by_key(|(_, off)| *off)
            .map(|(at, _)| at)
    }

    /// Is a size about that of a feature, as a reading is?
    pub(in crate::note) fn is_near(&self, feature: usize, size: Length) -> bool {
        let Some(nominal) = self.job.features[feature].size() else {
            return false;
        };
        let (nominal, size) = (nominal.tenth_nanometres(), size.tenth_nanometres());
        let off = (nominal - size).abs();
        off.saturating_mul(100) <= nominal.saturating_mul(3).max(0) && off < 10_000_000
    }
}
