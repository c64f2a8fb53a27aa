//! Which part, and which of its features, a word of the note means.

use fits_core::{
    Length,
    job::whole::{Feature, Side},
};

use super::{
    Reader,
    lexicon::{feature, inwardness, is_material, stem, stems},
    token::{Kind, Token},
};

/// Marks that tell one of several alike: `L`, `A`, `2`.
pub(super) fn is_instance(stem: &str) -> bool {
    matches!(
        stem,
        "l" | "r"
            | "a"
            | "b"
            | "c"
            | "d"
            | "1"
            | "2"
            | "3"
            | "4"
            | "front"
            | "rear"
            | "back"
            | "outboard"
            | "inboard"
            | "near"
            | "far"
            | "top"
            | "bottom"
            | "upper"
            | "lower"
    )
}

/// `clears`, `accepts`: no first word of a name ends so.
fn is_verb(word: &str) -> bool {
    word.len() > 3 && word.ends_with('s') && !word.ends_with("ss") && !word.ends_with("us")
}

/// What names are looked up by: their words, how they begin and how they end.
fn keys(words: &[String]) -> Vec<String> {
    let mut keys = words.to_vec();
    keys.extend(edges(words).into_iter().flatten());
    // `6003` of 6003-2RS.
    keys.extend(
        words.iter().filter_map(|word| word.split_once('-').map(|(head, _)| head.to_owned())),
    );
    keys
}

/// How the first word begins, and how the last ends.
fn edges(words: &[String]) -> Option<[String; 2]> {
    let (first, last) = words.first().zip(words.last())?;
    let count = last.chars().count();
    let begin = std::iter::once('^').chain(first.chars().take(3)).collect();
    let end = std::iter::once('$').chain(last.chars().skip(count.saturating_sub(4))).collect();
    Some([begin, end])
}

/// How well the words of a phrase name a thing of that name; 0 not at all.
fn likeness(said: &[String], name: &[String]) -> u32 {
    if said.is_empty() || name.is_empty() {
        return 0;
    }
    // Most names share no word and no beginning: nothing is made of them.
    let begin = |words: &[String]| words[0].as_bytes().first().copied();
    let shares = said.iter().any(|word| name.contains(word));
    let ends_alike = name
        .last()
        .is_some_and(|last| said.last().is_some_and(|word| last.ends_with(word.as_str())));
    if !shares && begin(said) != begin(name) && !ends_alike {
        return 0;
    }
    if said == name || !shares && said.concat() == name.concat() {
        return 100;
    }
    // A word on each side that the other lacks: two things.
    let all_in = |one: &[String], other: &[String]| {
        one.iter().all(|word| is_instance(word) || other.contains(word))
    };
    let dashed = said.len() == 1 && said[0].starts_with(|c: char| c.is_ascii_digit());
    if shares
        && !dashed
        && !all_in(said, name)
        && !all_in(name, said)
        && said.concat() != name.concat()
    {
        return 0;
    }
    let plain = |words: &[String]| -> Vec<String> {
        words.iter().filter(|word| !is_instance(word)).cloned().collect()
    };
    let marks = |words: &[String]| -> Vec<String> {
        words.iter().filter(|word| is_instance(word)).cloned().collect()
    };
    let (said_marks, name_marks) = (marks(said), marks(name));
    if !said_marks.is_empty() && said_marks != name_marks {
        // `outboard bushing`, of bushings that are not told apart.
        let place = said_marks.iter().all(|mark| mark.len() > 1) && name_marks.is_empty();
        return if place && plain(said) == name { 61 } else { 0 };
    }
    let (said, name) = (plain(said), plain(name));
    if said.is_empty() || name.is_empty() {
        return 0;
    }
    if said == name || said.concat() == name.concat() {
        return 90;
    }
    // `6003` is 6003-2RS.
    if said.len() == 1
        && name.iter().any(|word| {
            word.starts_with(&format!("{}-", said[0]))
                || *word == said[0] && word.starts_with(|c: char| c.is_ascii_digit())
        })
    {
        return 85;
    }
    // `bush` is the nylon bush, `shaft` the crank shaft.
    let is_part_of = said.iter().all(|word| name.contains(word));
    let holds = name.iter().all(|word| said.contains(word));
    if is_part_of && said.last() == name.iter().rfind(|word| inwardness(word).is_some()) {
        return 70;
    }
    if is_part_of && said.last() == name.last() {
        return 65;
    }
    // `pawl dowel`, `sintered bushing`: one more word than the part's name.
    if holds
        && said.last() == name.last()
        && said.len() == name.len() + 1
        && (is_material(&said[0]) || said[0] != "crank" && inwardness(&said[0]).is_some())
    {
        return 62;
    }
    let (said, name) = (said.concat(), name.concat());
    if said.len() > 4
        && name.len() > 3
        && (said == format!("{name}shaft")
            || name.ends_with(&said)
            || name == format!("{said}shaft"))
    {
        return 60;
    }
    0
}

impl Reader {
    /// The part that a phrase names; the latest of equals.
    pub(super) fn part_called(&self, said: &[String]) -> Option<(usize, u32)> {
        let in_block = self.block.iter().any(|part| likeness(said, &self.stems[*part]) >= 62);
        if !in_block && let Some(exact) = self.exact.get(&said.concat()) {
            return Some((*exact, 100));
        }
        let plural = |part: usize| self.job.parts[part].name.to_lowercase().ends_with('s');
        let alike = self.alike(said);
        alike
            .into_iter()
            .map(|part| {
                let mut score = likeness(said, &self.stems[part]);
                // `LH plate` is one of the side plates.
                if score == 0 && matches!(said[0].as_str(), "l" | "r") && said.len() > 1 {
                    score = if likeness(&said[1..], &self.stems[part]) >= 65 { 60 } else { 0 };
                }
                // Nylon bushes are not the bronze ones.
                if score == 62 && is_material(&said[0]) {
                    let stuff = self.job.parts[part].material.as_deref().unwrap_or_default();
                    if !stuff.is_empty() && !stuff.to_lowercase().contains(&said[0]) {
                        score = 0;
                    }
                }
                // Under its own part `bush` is the bush named there.
                let boost = if score >= 62 && self.block.contains(&part) { 40 } else { 0 };
                (part, score + boost)
            })
            .filter(|(_, score)| *score > 0)
            .max_by_key(|(part, score)| (*score, self.recent[*part], plural(*part)))
    }

    /// The parts that a phrase may name: those that hold its rarest word, and
    /// the one that has a word less; by beginning and end where there are none.
    pub(super) fn alike(&self, said: &[String]) -> Vec<usize> {
        let plain: Vec<String> = said.iter().filter(|word| !is_instance(word)).cloned().collect();
        let lists = plain.iter().map(|word| self.keyed.get(word).map_or(&[][..], Vec::as_slice));
        let mut alike = lists.min_by_key(|list| list.len()).unwrap_or_default().to_vec();
        if plain.len() > 1 {
            alike.extend(self.exact.get(&plain[1..].concat()));
        }
        alike.extend(self.exact.get(&plain.concat()));
        if alike.is_empty() && said.len() < 3 {
            let edges = edges(said).into_iter().flatten();
            alike.extend(edges.filter_map(|key| self.keyed.get(&key)).flatten());
        }
        alike.sort_unstable();
        alike.dedup();
        alike
    }

    /// Of several that a short name could mean, the one with such a size.
    pub(super) fn part_by_size(&self, said: &[String], sizes: &[Length]) -> Option<usize> {
        if sizes.is_empty() {
            return None;
        }
        let near = |part: &usize| {
            sizes.iter().any(|size| {
                self.nearest(*part, None, *size).is_some_and(|at| self.is_near(at, *size))
            })
        };
        let alike = self.alike(said).into_iter();
        alike.filter(|part| likeness(said, &self.stems[*part]) >= 62).find(near)
    }

    /// The part named by the tokens at a place, the longest name first.
    pub(super) fn part_at(&self, tokens: &[Token]) -> Option<(usize, usize)> {
        let small =
            |word: &str| super::lexicon::is_small(word) || super::lexicon::leads_to_mate(word);
        if self.job.parts.is_empty()
            || tokens
                .first()?
                .word()
                .is_some_and(|word| small(word) && !self.exact.contains_key(word))
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
                    && (is_instance(&said[0]) || said[0].len() < 3 && !self.is_code(tokens))
            {
                return None;
            }
            let (part, score) = self.part_called(said)?;
            // `base post holes`, of a base that has post holes.
            let has = |name: &[String]| name.len() > 1 && words[count..].starts_with(name);
            if goes_on && !self.of_part[part].iter().any(|at| has(&self.names[*at])) {
                return None;
            }
            // One word of a longer name counts only where it names a thing.
            (score >= 65 || self.is_thing(&said[count - 1]) || score >= 60 && count > 1)
                .then_some((part, count))
        })
    }

    /// One or two letters that a table's first column gives a part for its name.
    pub(super) fn is_code(&self, tokens: &[Token]) -> bool {
        let Some(word) = tokens.first().and_then(Token::word) else { return false };
        let before_feature =
            tokens.get(1).and_then(Token::word).is_some_and(|next| feature(next).is_some());
        self.exact.contains_key(word)
            && (before_feature
                || !super::lexicon::is_small(word) && !super::lexicon::leads_to_mate(word))
    }

    /// A phrase that is the name of a part by its last word: how many tokens.
    pub(super) fn part_phrase(&self, tokens: &[Token]) -> Option<usize> {
        let word_of = |token: &Token| token.word().map(str::to_owned);
        let words: Vec<String> = tokens.iter().take(4).map_while(word_of).collect();
        let last = (0..words.len()).find(|&at| {
            self.is_thing(&words[at])
                && !words
                    .get(at + 1)
                    .is_some_and(|next| self.is_thing(next) && feature(next).is_none())
        })?;
        let usable = words[..last].iter().all(|word| {
            super::lexicon::is_material(word)
                || word.len() > 2
                || matches!(word.as_str(), "lh" | "rh")
                || super::lexicon::tells_apart(word)
        }) && !words[..last].iter().any(|word| {
            super::lexicon::leads_to_mate(word)
                || super::lexicon::is_small(word)
                || is_verb(word)
                || feature(word).is_some()
                    && !super::lexicon::names_place(word)
                    && !super::lexicon::tells_apart(word)
        });
        usable.then_some(last + 1)
    }

    /// Is it a word for a part: one of the trade's, or a name that this note
    /// gives at a line's beginning?
    pub(super) fn is_thing(&self, word: &str) -> bool {
        inwardness(word).is_some() || self.things.contains(&stem(word))
    }

    /// A new part.
    pub(super) fn new_part(&mut self, name: &str, line: usize) -> usize {
        let name = name.trim().trim_matches(['-', ':', ',', '*']).trim();
        self.job.parts.push(fits_core::job::whole::Part {
            name: name.to_owned(),
            line,
            ..Default::default()
        });
        self.stems.push(stems(name));
        self.of_part.push(Vec::new());
        self.recent.push(0);
        self.key(self.job.parts.len() - 1);
        self.job.parts.len() - 1
    }

    /// Makes a part's name known.
    pub(super) fn key(&mut self, part: usize) {
        let name = &self.stems[part];
        self.exact.entry(name.concat()).or_insert(part);
        for key in keys(name) {
            self.keyed.entry(key).or_default().push(part);
        }
    }

    /// The part of exactly that name, or a new one.
    pub(super) fn part_named(&mut self, name: &str, line: usize) -> usize {
        let said = stems(name);
        match self.part_called(&said) {
            Some((part, score)) if score >= 100 => part,
            _ => self.new_part(name, line),
        }
    }

    pub(super) fn touch(&mut self, part: usize) {
        self.tick += 1;
        self.recent[part] = self.tick;
    }

    /// How much a part is the inner one.
    pub(super) fn inwardness(&self, part: usize) -> i32 {
        let by_name = self.stems[part].iter().rev().find_map(|word| inwardness(word));
        let has = |side| self.features_of(part).any(|(_, feature)| feature.side == side);
        match by_name {
            Some(rank @ 0..) => rank,
            // A column with an outside and no bore goes into something.
            by_name if has(Side::Shaft) && !has(Side::Hole) => 3 + by_name.unwrap_or(0),
            Some(rank) => rank,
            None => i32::from(
                self.stems[part].iter().any(|w| w.starts_with(|c: char| c.is_ascii_digit())),
            ),
        }
    }

    /// The feature of a part that a name means, on a side.
    pub(super) fn feature_called(
        &self,
        part: usize,
        name: &str,
        side: Option<Side>,
    ) -> Option<usize> {
        let said = stems(name);
        self.features_of(part)
            .filter(|(_, feature)| side.is_none_or(|side| feature.side == side))
            .map(|(at, _)| {
                let own = &self.names[at];
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
    pub(super) fn feature_anywhere(&self, tokens: &[Token]) -> Option<(usize, usize)> {
        let words: Vec<String> = tokens
            .iter()
            .take(4)
            .map_while(|token| match &token.kind {
                Kind::Word(word) => Some(stem(word)),
                _ => None,
            })
            .collect();
        // One word counts where only this note has it: `tail = .4985`.
        let own = |word: &String| super::lexicon::is_noun(word) && !self.is_thing(word);
        let least = if words.first().is_some_and(own) { 1 } else { 2 };
        (least..=words.len()).rev().find_map(|count| {
            let said = &words[..count];
            self.by_name.get(&said.join(" ")).map(|at| (*at, count))
        })
    }

    /// The size that is looked for, nearest first.
    pub(super) fn nearest(&self, part: usize, side: Option<Side>, size: Length) -> Option<usize> {
        let off = |feature: &Feature| {
            let nominal = feature.nominal.as_ref()?.size()?;
            Some((nominal.tenth_nanometres() - size.tenth_nanometres()).abs())
        };
        self.features_of(part)
            .filter(|(_, feature)| side.is_none_or(|side| feature.side == side))
            .filter_map(|(at, feature)| off(feature).map(|off| (at, off)))
            .min_by_key(|(_, off)| *off)
            .map(|(at, _)| at)
    }

    /// Is a size about that of a feature, as a reading is?
    pub(super) fn is_near(&self, feature: usize, size: Length) -> bool {
        let Some(nominal) = self.job.features[feature]
            .nominal
            .as_ref()
            .and_then(fits_core::job::whole::Nominal::size)
        else {
            return false;
        };
        let (nominal, size) = (nominal.tenth_nanometres(), size.tenth_nanometres());
        let off = (nominal - size).abs();
        off.saturating_mul(100) <= nominal.saturating_mul(3).max(0) && off < 10_000_000
    }
}
