//! A clause of a note: which size is whose, and what goes into what.

pub(super) mod items;
mod led;
pub(super) mod named;
mod opened;
pub(super) mod owner;
pub(super) mod parted;
pub(super) mod phrases;
mod short;
mod size;
mod special;
mod walk;
mod whose;

use std::ops::Range;

use fits_core::job::whole::{FitSaid, Job, SizeKind, State};

use items::{Item, Placed};
use parted::{asks_for_work, clauses, has_size, is_bare_size, is_measured_behind, is_tick};
use whose::positions;

use super::{
    Line, counts, lexicon,
    token::{Kind, Token},
    told::Told,
    units::Units,
    wants::{Named, Wants},
    work,
};

/// A clause while its items are gone through, one after another.
#[allow(clippy::struct_excessive_bools, reason = "each is something a clause may say")]
struct Clause<'a> {
    items: &'a [Placed],
    sign: char,
    features: Vec<usize>,
    sizes: Vec<usize>,
    /// The item of the feature that each size is of, and the feature once it is known.
    of: Vec<Option<usize>>,
    seen: Vec<Option<usize>>,
    /// Sizes of something else: `bolt holes .281 on 3.000`.
    others: Vec<usize>,
    reads: bool,
    works_to: bool,
    negated: bool,
    has_fit: bool,
    most: bool,
    /// The part alone says whose its sizes are.
    is_plain: bool,
    fit: FitSaid,
    twice: bool,
    skip_material: bool,
    last: Option<usize>,
    mate: Named,
    mate_to: Option<usize>,
    own_of_mate: Option<usize>,
}

/// The clauses of a text, one after another.
pub(super) fn text(
    told: &mut Told,
    wants: &mut Wants,
    raw: &str,
    found: &[Token],
    line: &mut Line,
) {
    if line.number > 0 && is_tick(found) {
        line.done = true;
    }
    if raw.trim_end().ends_with('?') || raw.contains("? ") {
        told.writers_question(line.number, raw);
    }
    let says_fit = |token: &Token| {
        // How a taper goes together is no fit of a bar.
        let fit = token.word().and_then(|word| lexicon::fit(&[word]));
        fit.is_some() && !matches!(token.word(), Some("taper" | "tapered"))
    };
    line.fit_ahead = found.iter().any(says_fit);
    line.geared = found.iter().any(|token| counts::is_teeth(token, raw));
    line.tapers =
        found.iter().any(|token| matches!(token.word(), Some("taper" | "tapers" | "tapered")));
    // `tube 1 x 16 swg`: its gauge is kept as it was said.
    if let Some(gauge) = found.iter().position(counts::is_gauge).filter(|at| *at > 1)
        && matches!(found[gauge - 1].kind, Kind::Count(_))
        && matches!(found[gauge - 2].kind, Kind::Num(_))
    {
        let said = raw.get(found[gauge - 2].at.start..found[gauge].at.end).unwrap_or(raw);
        told.remark(line.number, said, line.subject);
    }
    let clauses = clauses(found, line.date.is_some());
    let (mut at, mut keeps) = (0, false);
    while at < clauses.len() {
        let mut clause = clauses[at].1.to_vec();
        while let Some((sign, next)) = clauses.get(at + 1)
            && is_one_with(told, &clause, *sign, next, line)
        {
            clause.extend(next.iter().cloned());
            at += 1;
        }
        let sign = clauses[at].0;
        at += 1;
        let reads = line.reads;
        line.reads |= keeps && sign == ' ';
        if asks_for_work(raw, &clause, line)
            || is_count(&mut told.job, &clause, line, sign)
            || matches!(sign, ',' | '-') && opened::names_mate(told, wants, &clause, line)
            || matches!(sign, ',' | '+') && opened::nut_of_thread(told, wants, &clause, line)
        {
            continue;
        }
        keeps = one_clause(told, wants, &clause, line, sign);
        line.reads = reads;
    }
    opened::sits_in_host(told, wants, line);
    if let Some((_, first)) = clauses.first() {
        opened::made_for(told, wants, first, line);
    }
}

/// Does a clause go on behind the sign that parts it from the next?
fn is_one_with(told: &Told, clause: &[Token], sign: char, next: &[Token], line: &Line) -> bool {
    let names_feature = || {
        let items = items::items(told, next, line);
        let first = items.iter().find(|(item, _)| !matches!(item, Item::Loose(_)));
        matches!(first, Some((Item::Feature { .. }, _)))
    };
    let last = clause.last().and_then(Token::word).and_then(lexicon::feature);
    match sign {
        // `is 5, not 6`
        ',' if has_size(next) => has_size(clause) && next[0].word() == Some("not"),
        // `Ø18 k6, gear seat`: the size waits for its feature.
        ',' => {
            is_bare_size(clause)
                // `bore: 16 H8, on the far end`: where, not what.
                && next[0].word().is_some_and(|word| !lexicon::leads_to_mate(word))
                && !matches!(clause[0].kind, Kind::Thread(_))
                && names_feature()
        }
        // `Length: 9-3/4`: a feature and its size.
        ':' => !has_size(clause) && has_size(&next[..1]) && last == Some(SizeKind::Length),
        // A name and its size in columns under no header.
        '\t' => !has_size(clause) && has_size(&next[..1]) && last.is_some(),
        _ => false,
    }
}

/// `end frames - 3/4 plate, 2`: how many.
fn is_count(job: &mut Job, clause: &[Token], line: &Line, sign: char) -> bool {
    let ([Token { kind: Kind::Num(num), .. }], Some(part), None, true, ',') =
        (clause, line.subject, line.feature, line.declares, sign)
    else {
        return false;
    };
    let count = &mut job.parts[part].count;
    let is_count = num.is_whole() && num.unit.is_none() && num.over <= 24 && count.is_none();
    if is_count {
        *count = u32::try_from(num.over).ok();
    }
    is_count
}

/// One clause; does it say that what follows was measured?
fn one_clause(
    told: &mut Told,
    wants: &mut Wants,
    tokens: &[Token],
    line: &mut Line,
    sign: char,
) -> bool {
    if special::special(told, wants, tokens, line, sign) {
        return false;
    }
    let mut items = items::items(told, tokens, line);
    parted::lend_unit(&mut items);
    named_by_size(told, &items, line);
    let mut reads = is_measured(&told.units, tokens, &items, line);
    let same = items.iter().position(|(item, _)| matches!(item, Item::Same));
    if same.is_some() {
        opened::same_as_before(told, wants, line, None);
    }
    let negated = items.iter().find_map(|(item, _)| match item {
        Item::Not => Some(true),
        Item::Size(_) => Some(false),
        _ => None,
    }) == Some(true);
    if items.iter().any(|(item, _)| matches!(item, Item::InPlace)) {
        line.state = State::InPlace;
    }
    if opened::goes_here(told, wants, tokens, &items, line) {
        return false;
    }
    if sign == '(' {
        opened::of_the_mate(told, wants, &mut items, line);
    }
    let opened = subject(told, wants, tokens, &mut items, line, sign);
    // `grip pin 3/8, grip bore on pin`: the handle's bore, whose line it is.
    let on_itself = items.iter().any(|(item, _)| {
        matches!(item, Item::Mate { part: Some(part), .. } if Some(*part) == line.subject)
    });
    let is_bare = matches!(items.first(), Some((Item::Feature { part: None, .. }, _)));
    if on_itself && is_bare && !opened && line.before.is_some() {
        (line.subject, line.feature) = (line.before.take(), None);
    }
    // `-> rod thickness 13.9`, not `-> shaft 20.031`, which somebody measured.
    let is_fine = |(item, _): &Placed| matches!(item, Item::Size(Kind::Num(num)) if told.units.is_fine(num, line));
    let is_next = sign == '>' && !items.iter().any(is_fine);
    let works_to = is_next || is_wished(told, tokens, &items, line);
    reads &= !works_to;
    whose::nouns(told, &mut items, tokens, line, reads);
    let has = |is: fn(&Item) -> bool| items.iter().any(|(item, _)| is(item));
    let is_plain = opened
        || matches!(sign, '^' | ':')
        || line.declares && line.found == 0
        || has(|item| matches!(item, Item::Part(_) | Item::Mate { .. } | Item::Fit(..)));
    let mut clause = Clause {
        items: &items,
        sign,
        features: positions(&items, |item| matches!(item, Item::Feature { .. })),
        sizes: positions(&items, |item| matches!(item, Item::Size(_))),
        of: vec![None; items.len()],
        seen: vec![None; items.len()],
        others: Vec::new(),
        reads,
        works_to,
        negated,
        has_fit: has(|item| matches!(item, Item::Fit(..))),
        most: has(|item| matches!(item, Item::Most)),
        is_plain,
        fit: FitSaid::default(),
        twice: has(|item| matches!(item, Item::AllRound)),
        skip_material: false,
        last: None,
        mate: None,
        mate_to: None,
        own_of_mate: None,
    };
    clause.find_owners();
    line.fits |= clause.has_fit;
    for (at, (item, place)) in items.iter().enumerate() {
        walk::one(told, wants, &mut clause, line, at, item, place);
    }
    // `journal same as bottom roll`.
    let as_of = same.and_then(|at| {
        items[at..].iter().find_map(|(item, _)| match item {
            Item::Part(part) if Some(*part) != line.subject => Some(*part),
            _ => None,
        })
    });
    let from = joint_end(told, wants, &clause, line);
    if as_of.is_some() {
        opened::same_as_before(told, wants, line, as_of);
    }
    if clause.mate.is_some() {
        wants.finish_mate(told, line, &mut clause.mate, from, &mut clause.fit, clause.mate_to);
    } else if (clause.has_fit || clause.fit.clearance.is_some())
        && let Some(feature) = from
    {
        wants.fit_alone(told, line, feature, clause.fit);
    }
    reads
}

/// Is the size what is wanted now, whatever was read before?
fn is_wished(told: &Told, tokens: &[Token], items: &[Placed], line: &Line) -> bool {
    // `ream to 1.001` is what is wanted.
    let works_to = tokens.windows(3).any(|found| {
        found[0].word().is_some_and(work::works_to)
            && found[1].word() == Some("to")
            && matches!(found[2].kind, Kind::Num(_))
    }) || tokens.windows(4).any(|found| {
        let words = (found[0].word(), found[1].word(), found[2].word());
        matches!(words, (Some(work), Some("again"), Some("to")) if work::works_to(work))
            && matches!(found[3].kind, Kind::Num(_))
    }) || opened::opened_up(told, tokens, line);
    // `make bush id .752`, whatever it was before.
    // `seat wants 28.025 not h6`, `should be 1.2535`: so it is to be.
    let is_wish = tokens.windows(3).any(|found| {
        let words = (found[0].word(), found[1].word());
        matches!(found[2].kind, Kind::Num(_))
            && matches!(words, (Some("should" | "must" | "to"), Some("be")))
            || matches!(found[1].kind, Kind::Num(_)) && matches!(words.0, Some("wants" | "needs"))
    });
    // `turn .627 od`, `ream .3755`: an order, where work that was done is turned and reamed.
    let is_order_of = line.date.is_some()
        && tokens.windows(2).any(|found| {
            found[0].word().is_some_and(work::orders) && matches!(found[1].kind, Kind::Num(_))
        });
    // `turn the end 24.02 instead of 24`: what is to be done now.
    let is_order = tokens.iter().find_map(Token::word).is_some_and(work::works_to)
        && items.iter().any(|(item, _)| matches!(item, Item::Not));
    // `has to be reamed 28.02`, and at the end of a clause `15.875 then`.
    let is_to_be = tokens.windows(4).any(|found| {
        matches!((found[0].word(), found[1].word()), (Some("to" | "must" | "should"), Some("be")))
            && found[2].word().is_some_and(work::is_work)
            && matches!(found[3].kind, Kind::Num(_))
    }) || matches!(tokens, [.., size, then]
        if matches!(size.kind, Kind::Num(_)) && then.word() == Some("then"));
    works_to || is_to_be || is_wish || is_order || is_order_of || tokens[0].word() == Some("make")
}

/// `Ø17 = 17.004`: a feature named by its size.
fn named_by_size(told: &Told, items: &[Placed], line: &mut Line) {
    let [(Item::Size(Kind::Num(num)), _), (Item::Reads(true), _), (Item::Size(_), _), ..] = items
    else {
        return;
    };
    let size = told.units.length(num, line.unit);
    let named = |one: &fits_core::job::whole::PartFeature| one.size() == size;
    if size.is_some() {
        line.feature = told.job.features.iter().position(named).or(line.feature);
    }
}

/// Does it say by a word, or by how fine a figure is, that it was measured?
fn is_measured(units: &Units, tokens: &[Token], items: &[Placed], line: &mut Line) -> bool {
    // `is 1.2525`, `bored in place, 25.02 mm`: to a figure that nobody wishes for.
    let says_so = line.state == State::InPlace
        || line.under_date
        || items.iter().any(|(item, _)| matches!(item, Item::Reads(_) | Item::InPlace));
    // `t1 = 3.5` may be what is wanted, `mikes 3.5` is not.
    line.by_word =
        items.iter().any(|(item, place)| matches!(item, Item::Reads(true)) && place.len() > 1);
    line.reads
        || is_measured_behind(tokens)
        || says_so
            && items.iter().any(
                |(item, _)| matches!(item, Item::Size(Kind::Num(num)) if units.is_fine(num, line)),
            )
}

/// The part that the clause speaks of; does it open one?
fn subject(
    told: &mut Told,
    wants: &Wants,
    tokens: &[Token],
    items: &mut Vec<Placed>,
    line: &mut Line,
    sign: char,
) -> bool {
    let is_loose = |(item, _): &&Placed| matches!(item, Item::Loose(_));
    let known = items.iter().find(|item| !is_loose(item));
    let led = items
        .iter()
        .take_while(is_loose)
        .any(|(item, _)| matches!(item, Item::Loose(word) if lexicon::leads_to_mate(word)));
    if let (Some((Item::Part(part), _)), false) = (known, led) {
        if line.subject != Some(*part) {
            line.feature = None;
        }
        (line.subject, line.named) = (Some(*part), true);
        return false;
    }
    let part = items.iter().find_map(|(item, _)| match item {
        Item::Part(part) => Some(*part),
        _ => None,
    });
    if part.is_some() && (line.subject.is_none() || sign == '.') {
        line.subject = part;
        return false;
    }
    // `crank journals .9992`: a feature that is known is of its part.
    let of_known = matches!(known, Some((Item::Feature { part: Some(_), .. }, _)));
    let before = line.subject;
    let opened = !of_known && opened::opens_part(told, wants, tokens, line, sign);
    // `grip spins on it`: on what was spoken of before.
    line.named |= opened;
    if opened && before != line.subject {
        line.before = before;
        *items = items::items(told, tokens, line);
    }
    opened
}

/// The feature that a joint said in the clause begins at.
fn joint_end(told: &Told, wants: &Wants, clause: &Clause, line: &Line) -> Option<usize> {
    let is_length = |at: usize| told.job.features[at].side == SizeKind::Length;
    let is_own = |at: usize| Some(told.job.features[at].part) == line.subject;
    // `thread 1.5 long in the base`: it is the thread that goes in.
    let whole = clause.last.filter(|at| clause.mate.is_some() && is_length(*at)).and_then(|_| {
        let seen = clause.seen.iter().flatten().rev().copied();
        seen.chain(line.role_of).find(|at| !is_length(*at) && is_own(*at))
    });
    // `press in drum, running on shaft`, of a bush: its bore is what runs.
    let other_side = |at: usize| {
        let other = clause.mate.as_ref().and_then(|(_, part, _, _)| *part);
        let one = &told.job.features[at];
        let own = told.inwardness(one.part);
        clause.last.is_none()
            && wants.wanted_on(line.number).any(|want| want.feature == at)
            && other.is_some_and(|other| match one.side {
                SizeKind::Shaft => told.inwardness(other) > own,
                SizeKind::Hole => told.inwardness(other) < own,
                _ => false,
            })
    };
    // `journals 25 x 15 long, in the bearings`: a clause of its own behind the length.
    let sized = opened::spoken_of(&told.job, line)
        .filter(|at| clause.mate.is_some() && Some(*at) != line.feature);
    whole.or(clause.last).or(sized).or_else(|| {
        line.feature.filter(|at| (is_own(*at) || line.subject.is_none()) && !other_side(*at))
    })
}

impl Clause<'_> {
    /// Finds the feature that each size is of: the one before it, or the next.
    fn find_owners(&mut self) {
        let items = self.items;
        for &size in &self.sizes {
            let before = self.features.iter().rev().find(|feature| **feature < size).copied();
            let next = self.features.iter().find(|feature| **feature > size).copied();
            let next =
                next.filter(|next| !self.sizes.iter().any(|other| *other > size && other < next));
            // `dowels 8 m6 in reamed holes 8 H7`: each has its own.
            let next = next.filter(|next| !named::is_led_to(items, size, *next));
            let taken = |feature: usize| self.of.contains(&Some(feature));
            // `.5 thick` reads from the size on, whatever stands before it.
            let is_length =
                |at: usize| matches!(items[at].0, Item::Feature { side: SizeKind::Length, .. });
            // `tapped 3/8 BSF deep 5/8`: no length is a thread.
            let is_thread = matches!(items[size].0, Item::Size(Kind::Thread(_)));
            // `47 H8 x 7 deep`: the class of the first stands between.
            let is_classed = matches!(items[size].0, Item::Size(Kind::Dims(_)))
                && matches!(items.get(size + 1), Some((Item::Class(_), _)));
            let is_next_length =
                |at: usize| at == size + 1 + usize::from(is_classed) && is_length(at) && !is_thread;
            let follows_size = |at: usize| at > 0 && matches!(items[at - 1].0, Item::Size(_));
            self.of[size] = match (before, next) {
                (Some(before), Some(next))
                    if taken(before)
                        || is_next_length(next) && (follows_size(before) || !is_length(before)) =>
                {
                    Some(next)
                }
                (Some(before), _) if taken(before) && !self.reads => {
                    self.others.push(size);
                    None
                }
                (Some(before), _) => Some(before),
                (None, next) => next,
            };
        }
    }

    fn place(&self, at: usize) -> Range<usize> {
        self.items[at].1.clone()
    }
}
