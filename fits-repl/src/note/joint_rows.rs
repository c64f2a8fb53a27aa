//! A joint a row, with dots between: `pin / frame ..... 3/8 ..... drive`.

use fits_core::{
    job::whole::{FitSaid, Nominal, Side},
    size::Unit,
};

use super::{
    Line, Reader,
    lexicon::{self, feature, inwardness, is_material, stem, stems},
    sizes::Given,
    token::{Kind, Num, Token, tokens},
};

impl Reader {
    /// `pin / frame ..... 3/8 ..... drive`: a joint a row.
    pub(super) fn joint_row(&mut self, number: usize, raw: &str) {
        let mut cells: Vec<(usize, &str)> = Vec::new();
        let mut start = 0;
        for piece in raw.split("...") {
            let text = piece.trim_matches(['.', ' ', '\u{2026}']);
            if !text.is_empty() {
                cells.push((start + piece.find(text).unwrap_or(0), text));
            }
            start += piece.len() + 3;
        }
        let mut line = Line { number, is_row: true, ..Line::default() };
        let Some((at, first)) = cells.first().copied() else { return };
        let names = joint_names(first);
        let Some((one, other)) = names else {
            // No joint: a size of one thing.
            line.is_row = false;
            let text = with_colon(raw, at + first.len());
            let from = self.head(&text, at, &mut line, false);
            self.text(&text, from, &mut line);
            if line.found == 0 {
                self.remark(number, raw, line.subject);
            }
            return;
        };
        let (one, other) = (self.joint_side(one, number), self.joint_side(other, number));
        let inner = |reader: &Self, side: &(usize, Option<(String, Side)>)| match &side.1 {
            Some((_, Side::Shaft)) => 4,
            Some((_, Side::Hole)) => -2,
            _ => reader.inwardness(side.0),
        };
        let (shaft, hole) =
            if inner(self, &one) >= inner(self, &other) { (one, other) } else { (other, one) };
        let rest: String =
            raw[at + first.len()..].chars().map(|c| if c == '.' { ' ' } else { c }).collect();
        // Points within numbers are kept.
        let rest: String = rest
            .char_indices()
            .map(|(place, c)| {
                let place = place + at + first.len();
                let near = raw.as_bytes();
                let is_point = near.get(place) == Some(&b'.')
                    && near.get(place + 1).is_some_and(u8::is_ascii_digit)
                    && near.get(place.wrapping_sub(1)) != Some(&b'.');
                let is_stop = near.get(place) == Some(&b'.')
                    && near.get(place + 1) == Some(&b' ')
                    && near.get(place.wrapping_sub(1)).is_some_and(u8::is_ascii_alphanumeric);
                if is_point {
                    '.'
                } else if is_stop {
                    ','
                } else {
                    c
                }
            })
            .collect();
        let found = tokens(&rest, at + first.len());
        self.joint(&mut line, &found, &shaft, &hole);
        if raw.contains('(') || raw.contains('!') {
            let from = raw.find('(').unwrap_or(0);
            self.remark(number, &raw[from..], Some(hole.0));
        }
    }

    #[allow(clippy::too_many_lines, reason = "one kind of words after another, each short")]
    pub(super) fn joint(
        &mut self,
        line: &mut Line,
        found: &[Token],
        shaft: &(usize, Option<(String, Side)>),
        hole: &(usize, Option<(String, Side)>),
    ) {
        let place = found.first().map_or(0..0, |token| token.at.clone());
        let size = found
            .iter()
            .find(|token| matches!(token.kind, Kind::Num(_) | Kind::Dims(_) | Kind::Thread(_)));
        let threaded = matches!(size.map(|token| &token.kind), Some(Kind::Thread(_)));
        let name = |reader: &Self,
                    side: &(usize, Option<(String, Side)>),
                    default: &str,
                    other: usize| match &side.1 {
            Some((name, _)) => name.clone(),
            None if threaded => "thread".to_owned(),
            None if default == "seat" => {
                let what = &reader.job.parts[other].name;
                let last =
                    what.split_whitespace().find(|word| inwardness(word).is_some()).unwrap_or(what);
                format!("{last} seat")
            }
            None => default.to_owned(),
        };
        let is_shaft = self.stems[shaft.0]
            .iter()
            .any(|word| matches!(word.as_str(), "shaft" | "crank" | "crankshaft"));
        let shaft_name = name(self, shaft, if is_shaft { "seat" } else { "od" }, hole.0);
        let is_body = self.inwardness(hole.0) < 0;
        let taken = self.feature_called(hole.0, "bore", Some(Side::Hole)).is_some();
        let mut hole_name = name(self, hole, if is_body { "bore" } else { "hole" }, shaft.0);
        if hole_name == "hole" && self.inwardness(hole.0) == 1 {
            "bore".clone_into(&mut hole_name);
        }
        if hole.1.is_none() && is_body && taken && !threaded {
            let what = self.job.parts[shaft.0].name.clone();
            hole_name = format!("{} hole", what.split_whitespace().next().unwrap_or_default());
        }
        let side = |side| if threaded { Side::Thread } else { side };
        let outer = self.feature(line, shaft.0, &shaft_name, side(Side::Shaft), place.clone());
        let inner = self.feature(line, hole.0, &hole_name, side(Side::Hole), place.clone());
        let mut fit = FitSaid::default();
        let mut sized = false;
        for (at, token) in found.iter().enumerate() {
            match &token.kind {
                Kind::Dims(all) if !sized => {
                    sized = true;
                    if found.get(at + 1).and_then(Token::word) == Some("wall") {
                        line.subject = Some(hole.0);
                        if let Some(bore) = self.give(line, &Given::plain(&token.kind, &token.at)) {
                            let nominal = self.job.features[bore].nominal.clone();
                            if let Some(nominal) = nominal {
                                let from = (
                                    self.job.features[bore].unit,
                                    self.job.features[bore].unit_from,
                                );
                                self.size(line, outer, nominal, from);
                            }
                        }
                    } else {
                        // The whole of a bought part: a bearing on its shaft.
                        let bought = if self.inwardness(hole.0) == 1 { hole.0 } else { shaft.0 };
                        if let Some(Kind::Code(code)) =
                            at.checked_sub(1).map(|before| &found[before].kind)
                        {
                            let part = &mut self.job.parts[bought];
                            part.name = format!("{} {}", part.name, code.to_uppercase());
                            self.stems[bought] = stems(&part.name);
                            self.key(bought);
                        }
                        line.subject = Some(bought);
                        let own = if bought == hole.0 { inner } else { outer };
                        let given = Given::plain(&token.kind, &token.at);
                        self.give(line, &Given { has_fit: true, ..given });
                        let other = if own == inner { outer } else { inner };
                        let side = self.job.features[own].side;
                        let nominal = self
                            .features_of(bought)
                            .find(|(_, one)| one.side == side && one.nominal.is_some())
                            .and_then(|(_, one)| one.nominal.clone());
                        if let Some(nominal) = nominal {
                            let from = self.unit_of(&all[0], line.unit);
                            self.size(line, other, nominal, from);
                        }
                        self.job.parts[bought].bought = true;
                    }
                }
                Kind::Num(num) if !sized => {
                    sized = true;
                    if let Some(size) = self.length(num, line.unit) {
                        let from = self.unit_of(num, line.unit);
                        self.size(line, outer, Nominal::Size(size), from);
                        self.size(line, inner, Nominal::Size(size), from);
                    }
                }
                Kind::Thread(name) if !sized => {
                    sized = true;
                    let from = (Unit::Inch, fits_core::job::whole::UnitFrom::Written);
                    for feature in [outer, inner] {
                        self.size(line, feature, Nominal::Thread(name.clone()), from);
                    }
                }
                Kind::Thread(name) => {
                    let thread =
                        self.feature(line, shaft.0, "thread", Side::Thread, token.at.clone());
                    self.size(
                        line,
                        thread,
                        Nominal::Thread(name.clone()),
                        (Unit::Inch, fits_core::job::whole::UnitFrom::Written),
                    );
                }
                Kind::Num(_) | Kind::Range(..) => {
                    self.joint_amount(line, &token.kind, found, at, &mut fit);
                }
                Kind::Class(class) if sized => {
                    let (first, second) = class.split_once('/').unwrap_or((class, ""));
                    for one in [first, second].into_iter().filter(|one| !one.is_empty()) {
                        let is_hole = one.starts_with(|c: char| c.is_ascii_uppercase());
                        self.job.features[if is_hole { inner } else { outer }].class =
                            Some(one.to_owned());
                    }
                }
                Kind::Word(word) if word == "same" => {
                    // As the row above of either part.
                    let of = [outer, inner].into_iter().find_map(|at| {
                        self.job.features[at].nominal.clone().map(|nominal| (at, nominal))
                    });
                    let of = of.or_else(|| {
                        let last = self.last_feature?;
                        Some((last, self.job.features[last].nominal.clone()?))
                    });
                    if let Some((from, nominal)) = of {
                        sized = true;
                        let from =
                            (self.job.features[from].unit, self.job.features[from].unit_from);
                        self.size(line, outer, nominal.clone(), from);
                        self.size(line, inner, nominal, from);
                    }
                }
                _ => {}
            }
        }
        let words: Vec<&str> = found.iter().filter_map(Token::word).collect();
        let mut at = 0;
        while at < words.len() {
            match lexicon::fit(&words[at..]) {
                Some((taken, word)) => {
                    if !fit.words.is_empty() {
                        fit.words.push_str(", ");
                    }
                    fit.words.push_str(&words[at..at + taken].join(" "));
                    fit.word = fit.word.or(word);
                    at += taken;
                }
                None => at += 1,
            }
        }
        for (feature, other) in [(outer, hole.0), (inner, shaft.0)] {
            let name = self.job.parts[other].name.clone();
            let to = if feature == outer { inner } else { outer };
            self.say(line, feature);
            self.finish_mate(
                line,
                &mut Some((name, Some(other), place.clone(), true)),
                Some(feature),
                &mut fit.clone(),
                Some(to),
            );
        }
    }

    pub(super) fn joint_amount(
        &self,
        line: &Line,
        kind: &Kind,
        found: &[Token],
        at: usize,
        fit: &mut FitSaid,
    ) {
        let (low, high) = match kind {
            Kind::Num(num) => (num, num),
            Kind::Range(low, high) => (low, high),
            _ => return,
        };
        let around = found[at + 1..].iter().take(2).filter_map(Token::word).collect::<Vec<_>>();
        let times = if matches!(around.as_slice(), ["all" | "per" | "each", ..]) { 2 } else { 1 };
        let size = |num: &Num| self.length(num, line.unit)?.checked_mul(times).ok();
        if let (Some(low), Some(high), None) = (size(low), size(high), fit.clearance)
            && high.millimetres() < 2.0
        {
            fit.clearance = fits_core::Limits::new(low.min(high), low.max(high)).ok();
        }
    }

    /// `crank journal`: the part, and its feature where the words name one.
    pub(super) fn joint_side(
        &mut self,
        text: &str,
        line: usize,
    ) -> (usize, Option<(String, Side)>) {
        let words: Vec<&str> = text.split_whitespace().collect();
        let split = words
            .iter()
            .position(|word| feature(&word.to_lowercase()).is_some())
            .filter(|at| *at > 0 && !(words.len() > at + 1 && inwardness(words[at + 1]).is_some()));
        let (name, own) = match split {
            Some(at) => (words[..at].join(" "), Some(words[at..].join(" "))),
            None => (text.to_owned(), None),
        };
        let found =
            self.part_called(&stems(&name)).filter(|(_, score)| *score >= 60).map(|(part, _)| part);
        let generic = || {
            let is_shaft = matches!(stem(name.trim()).as_str(), "shaft" | "crankshaft");
            is_shaft
                .then(|| {
                    self.job
                        .features
                        .iter()
                        .find(|one| {
                            one.side == Side::Shaft
                                && stems(&one.name).iter().any(|word| word == "journal")
                        })
                        .map(|one| one.part)
                })
                .flatten()
        };
        let part = found.or_else(generic);
        let part = part.unwrap_or_else(|| self.new_part(&name, line));
        let material =
            stems(&name).into_iter().find(|word| is_material(word) && inwardness(word).is_none());
        if self.job.parts[part].material.is_none() {
            self.job.parts[part].material = material;
        }
        self.touch(part);
        let own = own.map(|own| {
            let side = feature(&own.split_whitespace().next().unwrap_or_default().to_lowercase())
                .unwrap_or(Side::Other);
            (own, side)
        });
        (part, own)
    }
}

/// Both sides of a joint: `pin / frame`, `handwheel on shaft`.
pub(super) fn joint_names(text: &str) -> Option<(&str, &str)> {
    for sign in [" / ", " on ", " in ", " into ", " to ", " -> ", " with ", "/"] {
        if let Some((one, other)) = text.split_once(sign) {
            let (one, other) = (one.trim(), other.trim());
            let words = |text: &str| {
                !text.is_empty()
                    && text.split_whitespace().count() < 5
                    && !text.contains(|c: char| c.is_ascii_digit())
            };
            return (words(one) && words(other)).then_some((one, other));
        }
    }
    None
}

/// The dots behind a name as a colon and blanks, each byte in its place; the
/// point of `.500` stays.
fn with_colon(raw: &str, from: usize) -> String {
    let is_dot = |c: char| matches!(c, '.' | ' ' | '\u{2026}');
    let rest = raw[from..].trim_start_matches(is_dot);
    let mut end = raw.len() - rest.len();
    if rest.starts_with(|c: char| c.is_ascii_digit()) && raw[..end].ends_with(" .") {
        end -= 1;
    }
    if end == from {
        return raw.to_owned();
    }
    let blanks = " ".repeat(end - from - 1);
    format!("{}:{blanks}{}", &raw[..from], raw[end..].replace("...", "   "))
}
