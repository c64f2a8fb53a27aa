//! The names of all parts and features of a note, and what finds them by a word.

use std::collections::{HashMap, HashSet};

use super::{
    lexicon::{
        feature, inwardness, is_material, is_small, leads_to_mate, names_place, stem, stems,
        tells_apart,
    },
    look::things,
    token::Token,
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
pub(super) fn likeness(said: &[String], name: &[String]) -> u32 {
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

/// The names of all parts and features, and what finds them by a word.
#[derive(Default)]
pub(super) struct Names {
    /// The parts' names as they are compared.
    pub(super) parts: Vec<Vec<String>>,
    /// The features' names as they are compared, and the first of each name.
    pub(super) features: Vec<Vec<String>>,
    of_part: Vec<Vec<usize>>,
    /// Parts by their whole names, and by pieces of them.
    exact: HashMap<String, usize>,
    keyed: HashMap<String, Vec<usize>>,
    by_name: HashMap<String, usize>,
    /// Words for parts that this note's own lines begin with.
    things: HashSet<String>,
    /// When each part was spoken of last, by the tick of a clock of its own.
    recent: Vec<usize>,
    tick: usize,
    /// The parts first named under the part that the lines belong to.
    block: Vec<usize>,
}

impl Names {
    /// None yet, of a note whose lines begin with such words.
    pub(super) fn of_note(text: &str) -> Self {
        Self { things: things(text), ..Self::default() }
    }

    /// The parts whose names end so.
    pub(super) fn ending(&self, last: &str) -> Vec<usize> {
        let ends = |part: &usize| self.parts[*part].last().is_some_and(|end| end == last);
        self.holding(last).iter().copied().filter(ends).collect()
    }

    /// The parts that a phrase may name: those that hold its rarest word, and
    /// the one that has a word less; by beginning and end where there are none.
    pub(super) fn alike(&self, said: &[String]) -> Vec<usize> {
        let plain: Vec<String> = said.iter().filter(|word| !is_instance(word)).cloned().collect();
        let lists = plain.iter().map(|word| self.holding(word));
        let mut alike = lists.min_by_key(|list| list.len()).unwrap_or_default().to_vec();
        if plain.len() > 1 {
            alike.extend(self.exact.get(&plain[1..].concat()));
        }
        alike.extend(self.exact.get(&plain.concat()));
        if alike.is_empty() && said.len() < 3 {
            let edges = edges(said).into_iter().flatten();
            alike.extend(edges.flat_map(|key| self.holding(&key).to_vec()));
        }
        alike.sort_unstable();
        alike.dedup();
        alike
    }

    /// One or two letters that a table's first column gives a part for its name.
    pub(super) fn is_code(&self, tokens: &[Token]) -> bool {
        let Some(word) = tokens.first().and_then(Token::word) else { return false };
        let before_feature =
            tokens.get(1).and_then(Token::word).is_some_and(|next| feature(next).is_some());
        self.exact.contains_key(word) && (before_feature || !is_small(word) && !leads_to_mate(word))
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
            is_material(word)
                || word.len() > 2
                || matches!(word.as_str(), "lh" | "rh")
                || tells_apart(word)
        }) && !words[..last].iter().any(|word| {
            leads_to_mate(word)
                || is_small(word)
                || is_verb(word)
                || feature(word).is_some() && !names_place(word) && !tells_apart(word)
        });
        usable.then_some(last + 1)
    }

    /// Is it a word for a part: one of the trade's, or a name that this note
    /// gives at a line's beginning?
    pub(super) fn is_thing(&self, word: &str) -> bool {
        inwardness(word).is_some() || self.things.contains(&stem(word))
    }

    /// The part of exactly such a name.
    pub(super) fn exactly(&self, said: &str) -> Option<usize> {
        self.exact.get(said).copied()
    }

    /// The first feature of exactly such a name, the words parted by spaces.
    pub(super) fn feature_exactly(&self, said: &str) -> Option<usize> {
        self.by_name.get(said).copied()
    }

    /// The only part whose name begins so.
    pub(super) fn beginning(&self, first: &String) -> Option<usize> {
        let begins = |part: &usize| self.parts[*part].first() == Some(first);
        let mut all = self.holding(first).iter().copied().filter(begins);
        all.next().filter(|one| all.all(|other| other == *one))
    }

    /// The parts whose names hold a word.
    fn holding(&self, word: &str) -> &[usize] {
        self.keyed.get(word).map_or(&[], Vec::as_slice)
    }

    /// Is it a part first named under the one that the lines belong to?
    pub(super) fn is_in_block(&self, part: usize) -> bool {
        self.block.contains(&part)
    }

    /// Is one of those called so?
    pub(super) fn is_said_in_block(&self, said: &[String]) -> bool {
        self.block.iter().any(|part| likeness(said, &self.parts[*part]) >= 62)
    }

    /// The lines belong to another part from here on.
    pub(super) fn heads_block(&mut self) {
        self.block.clear();
    }

    /// A part first named, or spoken of, under the one that the lines belong to.
    pub(super) fn enter_block(&mut self, part: usize) {
        self.touch(part);
        self.block.push(part);
    }

    /// When a part was spoken of last.
    pub(super) fn spoken(&self, part: usize) -> usize {
        self.recent[part]
    }

    /// The features of a part.
    pub(super) fn of(&self, part: usize) -> &[usize] {
        &self.of_part[part]
    }

    /// A new part's name.
    pub(super) fn add_part(&mut self, name: &str) {
        self.parts.push(stems(name));
        self.of_part.push(Vec::new());
        self.recent.push(0);
        self.key(self.parts.len() - 1);
    }

    /// A part by another name.
    pub(super) fn rename_part(&mut self, part: usize, name: &str) {
        self.parts[part] = stems(name);
        self.key(part);
    }

    /// A new feature's name.
    pub(super) fn add_feature(&mut self, part: usize, name: &str) {
        let said = stems(name);
        self.by_name.entry(said.join(" ")).or_insert(self.features.len());
        self.of_part[part].push(self.features.len());
        self.features.push(said);
    }

    /// A feature by another name.
    pub(super) fn rename_feature(&mut self, feature: usize, name: &str) {
        self.features[feature] = stems(name);
        self.by_name.entry(self.features[feature].join(" ")).or_insert(feature);
    }

    /// A feature belongs to another part.
    pub(super) fn move_feature(&mut self, feature: usize, was: usize, part: usize) {
        self.of_part[was].retain(|at| *at != feature);
        self.of_part[part].push(feature);
    }

    /// Makes a part's name known.
    fn key(&mut self, part: usize) {
        let name = &self.parts[part];
        self.exact.entry(name.concat()).or_insert(part);
        for key in keys(name) {
            self.keyed.entry(key).or_default().push(part);
        }
    }

    pub(super) fn touch(&mut self, part: usize) {
        self.tick += 1;
        self.recent[part] = self.tick;
    }

    /// Is a part of a kind that is listed by bore, outside and length?
    pub(super) fn is_listed(&self, part: usize) -> bool {
        self.parts[part].iter().any(|word| {
            matches!(
                word.as_str(),
                "bush"
                    | "bearing"
                    | "seal"
                    | "sleeve"
                    | "liner"
                    | "washer"
                    | "collar"
                    | "spacer"
                    | "key"
            )
        })
    }
}
