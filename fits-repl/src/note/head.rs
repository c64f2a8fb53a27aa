//! The part that a line opens, by its name at the margin or by a key before it.

use fits_core::{Length, job::whole::Part};

use super::{
    Line, Reader,
    lexicon::{self, feature, inwardness, is_material, stems},
    lines,
    names::is_instance,
    table::{Column, column},
    talk,
    token::{Kind, Token, tokens},
    told::Told,
};
use crate::sentence::spelled::number;

impl Reader {
    /// `Part: shaft` opens a part: what stands behind its key. `Material: CI`
    /// and `Qty 2` are of the part above: nothing is left of them.
    pub(super) fn keyed_line<'a>(&mut self, raw: &'a str) -> Option<&'a str> {
        let text = &raw[lines::bullet(raw).1..];
        let (key, said) = text.split_once(':').or_else(|| text.split_once(' '))?;
        let is_colon = text.as_bytes().get(key.len()) == Some(&b':');
        let said = said.trim();
        let part = self.place.current.map(|part| &mut self.told.job.parts[part]);
        match (column(key).filter(|_| !said.is_empty())?, part) {
            (Column::Part, _) if is_colon => Some(said),
            (Column::Material, Some(part)) if is_colon => {
                part.material.get_or_insert_with(|| said.to_owned());
                Some("")
            }
            (Column::Count, Some(part)) => {
                let (count, rest) = said.split_once(',').unwrap_or((said, ""));
                part.count = Some(count.trim().parse().ok()?);
                part.bought |= rest.contains("bought");
                Some("")
            }
            _ => None,
        }
    }

    /// The part that a line at the margin opens; where the rest begins.
    #[allow(clippy::too_many_lines, reason = "one sign of a name after another, each short")]
    pub(super) fn head(
        &mut self,
        raw: &str,
        start: usize,
        line: &mut Line,
        opens_block: bool,
    ) -> usize {
        let mut found = self.legend.spelled(&self.told, &raw[start..], start);
        // `they are 10.2`: what the line before spoke of.
        if found.first().and_then(Token::word).is_some_and(lexicon::is_pronoun) {
            line.subject = self.place.current;
            return start;
        }
        let opening = found.iter().take_while(|token| {
            matches!(
                token.word(),
                Some(
                    "couple"
                        | "pair"
                        | "of"
                        | "the"
                        | "a"
                        | "new"
                        | "two"
                        | "three"
                        | "four"
                        | "six"
                        | "eight"
                )
            )
        });
        let opening = opening.count();
        let named = found
            .get(opening)
            .and_then(Token::word)
            .is_some_and(|word| self.told.names.is_thing(word))
            || self.told.names.part_phrase(&found[opening..]).is_some();
        let start = match found.get(opening) {
            Some(name) if opening > 0 && named => name.at.start,
            _ => start,
        };
        found.retain(|token| token.at.start >= start);
        // `2 off  bushes`: how many stands first.
        let count = found.first().and_then(|token| match token.kind {
            Kind::Count(count) => Some(count),
            _ => None,
        });
        let start = match (count, found.get(1)) {
            (Some(_), Some(name)) => name.at.start,
            _ => start,
        };
        found.drain(..usize::from(count.is_some() && found.len() > 1));
        let mut end = 0;
        while let Some(token) = found.get(end) {
            let (Kind::Word(word) | Kind::Code(word)) = &token.kind else { break };
            let begins_name =
                end == 0 && self.told.names.part_phrase(&found).is_some_and(|count| count > 1);
            // `Float pulley (acetal)`, alone on its line: the first word is of the name.
            let is_titled = opens_block
                && end == 0
                && found
                    .get(1)
                    .and_then(Token::word)
                    .is_some_and(|next| inwardness(next).is_some())
                && found.get(2).is_none_or(|next| next.is_sign('(') || next.is_sign(':'));
            let stops = lexicon::leads_to_mate(word)
                || end > 0 && matches!(word.as_str(), "bought" | "boughtin" | "existing" | "old")
                || lexicon::is_small(word)
                || lexicon::says_measured(word)
                || (is_material(word)
                    // `Roller stocks (3)`: several of a form are things.
                    && !(opens_block && word.ends_with('s') && lexicon::is_stock(&lexicon::stem(word)))
                    && end > 0
                    && inwardness(word).is_none()
                    && matches!(found[end - 1].word(), Some(last) if inwardness(last).is_some()))
                || (feature(word).is_some()
                    && !self.told.names.is_thing(word)
                    && !is_titled
                    && !((lexicon::names_place(word) || lexicon::tells_apart(word))
                        && found
                            .get(end + 1)
                            .and_then(Token::word)
                            .is_some_and(|next| inwardness(next).is_some())))
                || (lexicon::fit(&[word]).is_some() && !begins_name);
            let is_code = matches!(token.kind, Kind::Code(_));
            let apart = end > 0 && token.at.start > found[end - 1].at.end + 1;
            if apart
                || stops && !begins_name
                || is_code && end > 0 && !word.starts_with("no")
                || end > 4
            {
                break;
            }
            end += 1;
        }
        if let Some(Token { kind: Kind::Num(num), .. }) = found.get(end)
            && num.is_whole()
            && num.unit.is_none()
            && num.over < 10
            && end > 0
            && !found.get(end + 1).is_some_and(|next| matches!(next.kind, Kind::Num(_)))
            && found
                .get(end + 1)
                .is_some_and(|next| matches!(next.kind, Kind::Sign(':' | '-' | '(' | ',')))
        {
            end += 1;
        }
        // The name ends with the word for the part; a seat is no part's name.
        let is_kind = |token: &Token| token.word().is_some_and(|word| inwardness(word).is_some());
        let is_mark =
            |token: &Token| token.word().is_none_or(|word| is_instance(&lexicon::stem(word)));
        // `wheel flange bore 1-3/4`: it is the flange that has a bore.
        let sized_bore = |at: usize| {
            let named = found.get(at).and_then(Token::word).map(lexicon::stem);
            matches!(named.as_deref(), Some("bore" | "id" | "od"))
                && found.get(at + 1).is_some_and(|next| matches!(next.kind, Kind::Num(_)))
        };
        if let Some(last) = (0..end).rev().find(|at| is_kind(&found[*at]))
            && !(last + 2 == end
                && found[last + 1].word().is_some_and(lexicon::is_noun)
                && sized_bore(end))
            && !found[last + 1..end].iter().any(is_mark)
            // `crank web: 3/8 bore`
            && !found.get(end).is_some_and(|next| next.is_sign(':'))
            && !(opens_block
                && found.get(end).is_none_or(|next| {
                    matches!(next.kind, Kind::Sign(_) | Kind::Count(_))
                }))
        {
            end = last + 1;
        }
        if found.get(end).and_then(Token::word).is_some_and(|word| lexicon::stem(word) == "seat") {
            return start;
        }
        // `handle end of the crank shaft`: it is the shaft's.
        let behind: Vec<&str> = found[end..].iter().take(2).filter_map(Token::word).collect();
        if matches!(behind.as_slice(), [word, "of"] if feature(word).is_some()) {
            return start;
        }
        // `housing bush hole`: the housing's hole for the bush, whose own is a bore.
        let of_hole = found.get(end).and_then(Token::word).is_some_and(|word| {
            matches!(lexicon::stem(word).as_str(), "hole" | "pocket" | "recess" | "counterbore")
        });
        let said = if end > 0 { stems(&raw[start..found[end - 1].at.end]) } else { Vec::new() };
        if end > 1 && of_hole && self.told.names.exactly(&said.concat()).is_none() {
            let inner = found[end - 1].word().and_then(inwardness);
            let outer = |count: &usize| {
                let said = stems(&raw[start..found[*count - 1].at.end]);
                let part = self.told.names.exactly(&said.concat());
                part.is_some_and(|part| Some(self.told.inwardness(part)) < inner)
            };
            end = (1..end).rev().find(outer).unwrap_or(end);
        }
        let words: Vec<&str> = found[..end].iter().filter_map(Token::word).collect();
        let next = found.get(end);
        let last = words.last().copied().unwrap_or_default();
        let said = if end > 0 { stems(&raw[start..found[end - 1].at.end]) } else { Vec::new() };
        let called = self.told.part_called(&said);
        let known = called.is_some_and(|(_, score)| score >= 62);
        // `FINGERS, 3 OFF`
        let is_counted = found[end..]
            .iter()
            .filter(|token| !token.is_sign(','))
            .all(|token| matches!(token.kind, Kind::Count(_)));
        let is_name = known
            || self.told.names.is_thing(last)
            || end > 0 && matches!(found[end - 1].kind, Kind::Code(_)) && end < 3
            || end > 0 && next.is_some_and(|next| next.is_sign(':') && end < 4)
            || end > 0
                && end < 4
                && opens_block
                && (is_counted
                    || next.is_none_or(|next| {
                        matches!(next.kind, Kind::Count(_))
                            || next.is_sign('(')
                            || next.is_sign('-')
                            || self.place.outline && next.is_sign(',')
                    }));
        if end == 0
            || !is_name
            || talk::asks(words.first().copied().unwrap_or_default())
            || words.len() == end && words.iter().all(|word| talk::heads_talk(word))
            || raw[start..].trim_end().ends_with('?') && !known && inwardness(last).is_none()
        {
            return start;
        }
        let stop = found[end - 1].at.end;
        let sizes: Vec<Length> = found[end..]
            .iter()
            .filter_map(|token| match &token.kind {
                Kind::Num(num) if num.places > 1 => self.told.units.length(num, None),
                _ => None,
            })
            .collect();
        let part = match (called, self.told.part_by_size(&said, &sizes)) {
            (Some((part, score)), _) if (85..=100).contains(&score) => part,
            (_, Some(part)) => part,
            _ => self
                .told
                .new_part(raw[start..stop].trim_start_matches(['#', '*', ' ']), line.number),
        };
        let one = &mut self.told.job.parts[part];
        one.count = one.count.or(count);
        self.begins_block(part, &found[end..], opens_block, line);
        stop
    }

    /// The lines belong to a part from here on; `rest` is what follows its name.
    fn begins_block(&mut self, part: usize, rest: &[Token], opens_block: bool, line: &mut Line) {
        self.told.names.touch(part);
        (line.subject, self.place.current, line.declares) = (Some(part), Some(part), true);
        self.told.names.heads_block();
        self.place.is_heading = opens_block
            && !rest.iter().any(|token| {
                matches!(
                    token.kind,
                    Kind::Num(_) | Kind::Dims(_) | Kind::Range(..) | Kind::Thread(_)
                )
            });
        self.told.last = None;
        describe(&mut self.told.job.parts[part], rest);
    }

    /// `2 Nut  gunmetal`: the part that an outline opens by its number; where the rest
    /// begins.
    pub(super) fn numbered_head(&mut self, raw: &str, at: usize, line: &mut Line) -> usize {
        let name = self.layout.parts[at].at.clone();
        let rest = self.legend.spelled(&self.told, &raw[name.end..], name.end);
        let part = self.told.part_named(&raw[name.clone()], line.number);
        self.place.hangs = None;
        self.begins_block(part, &rest, true, line);
        name.end
    }
}

/// A part that a line names under the part it stands under; what follows its name tells
/// more of it.
fn opens(told: &mut Told, name: &str, count: Option<u32>, rest: &[Token], line: &mut Line) {
    let part = told.part_named(name, line.number);
    let one = &mut told.job.parts[part];
    one.count = one.count.or(count);
    describe(one, rest);
    told.names.enter_block(part);
    (line.subject, line.declares) = (Some(part), true);
}

/// A part of its own under a heading, `grip: brass tube`; where the rest begins.
pub(super) fn part_within(told: &mut Told, raw: &str, start: usize, line: &mut Line) -> usize {
    let found = tokens(&raw[start..], start);
    // `Two 608 bearings, 8 x 22 x 7 mm`: a bearing goes by its number.
    let many = found.first().and_then(|first| match &first.kind {
        Kind::Count(count) => Some(*count),
        Kind::Word(word) => number(word).filter(|many| (1..=8).contains(many)),
        _ => None,
    });
    if let [_, Token { kind: Kind::Code(code), .. }, name, rest @ ..] = found.as_slice()
        && many.is_some()
        && code.starts_with(|c: char| c.is_ascii_digit())
        && name.word().is_some_and(|word| lexicon::stem(word) == "bearing")
    {
        opens(told, &code.to_uppercase(), many, rest, line);
        return name.at.end;
    }
    // `6004 (2), in the drawer`: a bearing goes by its number.
    if let [Token { kind: Kind::Code(code), at }, next, ..] = found.as_slice()
        && matches!(next.kind, Kind::Count(_) | Kind::Dims(_) | Kind::Sign(','))
        && code.starts_with(|c: char| c.is_ascii_digit())
    {
        let part = told.part_named(&code.to_uppercase(), line.number);
        describe(&mut told.job.parts[part], &found[1..]);
        (line.subject, line.declares) = (Some(part), true);
        return at.end;
    }
    // `ball weights 2 off`: what is counted is a part.
    let words: Vec<&str> = found.iter().map_while(Token::word).collect();
    if let Some(Token { kind: Kind::Count(count), at }) = found.get(words.len())
        && let Some(last) = words.last()
        && words.len() < 4
        && feature(last).is_none()
        && !words.iter().any(|word| lexicon::is_small(word) || lexicon::leads_to_mate(word))
    {
        let name = &raw[start..found[words.len() - 1].at.end];
        opens(told, name, Some(*count), &found[words.len()..], line);
        return at.end;
    }
    let dash = |at: usize, token: &Token| {
        token.is_sign('-') && raw[..token.at.start].ends_with(' ') && at > 0
    };
    let Some(colon) =
        found.iter().enumerate().position(|(at, token)| token.is_sign(':') || dash(at, token))
    else {
        return start;
    };
    let words: Vec<&str> = found[..colon].iter().map_while(Token::word).collect();
    // `sleeve then: 1.001 od`
    let (words, colon) = match words.as_slice() {
        [name @ .., "then" | "now"] if words.len() == colon => (name.to_vec(), colon - 1),
        _ => (words, colon),
    };
    let end = words.iter().position(|word| lexicon::leads_to_mate(word)).unwrap_or(words.len());
    let named = words[..end].last().is_some_and(|last| told.names.is_thing(last))
        && words.len() == colon
        && (end == 1 || feature(words[end - 1]).is_none())
        && !words[..end].iter().any(|word| lexicon::is_small(word));
    if !named {
        return start;
    }
    let stop = found[end - 1].at.end;
    opens(told, &raw[start..stop], None, &found[end..], line);
    stop
}

/// `14/9 sleeve: OD 34 s6`: a part that the note has not named yet; where the
/// rest begins.
pub(super) fn part_in_dated(told: &mut Told, raw: &str, after: usize, line: &mut Line) -> usize {
    let found = tokens(&raw[after..], after);
    let words = found.iter().map_while(Token::word).count();
    let then = usize::from(words > 1 && found[words - 1].word() == Some("then"));
    // A bore and an outside of what the note has not named: it is to be made so.
    let sides = || {
        let words = found.iter().filter_map(Token::word);
        words.filter(|word| feature(word).is_some_and(|side| side.surface().is_some())).count()
    };
    let is_new = told.names.part_phrase(&found) == Some(words - then)
        && found.get(words).is_some_and(|next| next.is_sign(':'))
        && told.part_at(&found).is_none()
        && (found.iter().any(|token| matches!(token.kind, Kind::Class(_))) || sides() > 1);
    if is_new { part_within(told, raw, after, line) } else { after }
}

/// What a line that opens a part says of it: how many, what of, bought.
pub(super) fn describe(part: &mut Part, found: &[Token]) {
    let mut material: Vec<&str> = Vec::new();
    let mut ended = false;
    for (at, token) in found.iter().enumerate() {
        match &token.kind {
            Kind::Count(count) if part.count.is_none() => part.count = Some(*count),
            Kind::Word(word) if word == "bought" || word == "boughtin" => part.bought = true,
            Kind::Word(word)
                if is_material(word)
                    && !ended
                    && (material.is_empty()
                        || found[at - 1].word() == material.last().copied()) =>
            {
                material.push(word);
            }
            Kind::Code(word) if at > 0 && found[at - 1].is_sign('(') && part.material.is_none() => {
                material.push(word);
            }
            Kind::Sign('-') | Kind::Num(_) | Kind::Dims(_) => ended = !material.is_empty(),
            Kind::Sign('.') | Kind::Thread(_) => break,
            Kind::Word(word) if matches!(word.as_str(), "w" | "with" | "on" | "in") => break,
            _ => {}
        }
    }
    let is_form = matches!(
        material.as_slice(),
        ["flat" | "plate" | "bar" | "sheet" | "round" | "stock" | "tube"]
    );
    if !material.is_empty() && !is_form && part.material.is_none() {
        part.material = Some(material.join(" "));
    }
}
