//! A part that a clause opens or goes with, and sizes said to be as others.

use fits_core::job::whole::{FitSaid, Job, SizeKind};

use super::{
    items::{Item, Placed},
    parted::has_size,
    phrases,
};
use crate::note::{
    Line, head,
    lexicon::{is_material, is_stock, stem, stems},
    token::{Kind, Token},
    told::Told,
    wants::Wants,
};

/// The feature that a line speaks of; behind its length it is the feature still.
pub(super) fn spoken_of(job: &Job, line: &Line) -> Option<usize> {
    let last = line.feature?;
    let one = &job.features[last];
    let of = line.role_of.filter(|at| {
        let base = &job.features[*at];
        one.side == SizeKind::Length
            && base.side != SizeKind::Length
            && base.part == one.part
            && one.name.starts_with(&base.name)
    });
    of.or(Some(last))
}

/// `7/8 hole, top roll`, `bore 22, 608 each side`: a part alone in its clause
/// is the mate of the feature before it.
pub(super) fn names_mate(
    told: &mut Told,
    wants: &mut Wants,
    clause: &[Token],
    line: &mut Line,
) -> bool {
    let Some(feature) = spoken_of(&told.job, line) else { return false };
    let one = &told.job.features[feature];
    let goes = one.line == line.number
        && one.nominal.is_some()
        && (one.side.surface().is_some() || one.side == SizeKind::Thread);
    let code = || {
        let is_number = |code: &str| code.len() > 2 && code.starts_with(char::is_numeric);
        matches!(&clause[0].kind, Kind::Code(code) if is_number(code)).then_some(1)
    };
    let numbered = super::led::bearing_code(clause);
    let (part, taken) = match (&numbered, told.part_at(clause)) {
        (Some(code), _) => (told.names.exactly(&code.to_lowercase()), 2),
        (None, Some((part, taken))) => (Some(part), taken),
        (None, None) => match code().or_else(|| told.names.part_phrase(clause)) {
            Some(taken) => (None, taken),
            None => return false,
        },
    };
    let says_more = |token: &Token| match &token.kind {
        Kind::Word(word) => {
            !matches!(word.as_str(), "each" | "both" | "side" | "sides" | "end" | "ends")
        }
        kind => !matches!(kind, Kind::Count(_)),
    };
    if !goes
        || clause[taken..].iter().any(says_more)
        || part == Some(one.part)
        || wants.wanted_on(line.number).any(|want| want.feature == feature)
    {
        return false;
    }
    let at = clause[0].at.start..clause[taken - 1].at.end;
    let said: Vec<String> =
        clause[..taken].iter().map(crate::note::clause::phrases::text_of).collect();
    let named = part.map(|part| told.job.parts[part].name.clone());
    let name = numbered.or(named).unwrap_or_else(|| said.join(" "));
    let mut mate = Some((name, part, at, true));
    wants.finish_mate(told, line, &mut mate, Some(feature), &mut FitSaid::default(), None);
    true
}

/// `an easy fit in the reel (the hole is 5/16)`: the other side is the mate's; so is the
/// bore of what goes into a hole, `for nylon liners (5/16 id)`.
pub(super) fn of_the_mate(told: &mut Told, wants: &mut Wants, items: &mut [Placed], line: &Line) {
    let size = items.iter().find_map(|(item, _)| match item {
        Item::Size(Kind::Num(num)) => told.units.length(num, line.unit),
        _ => None,
    });
    let leads = matches!(
        items.iter().find(|(item, _)| !matches!(item, Item::Loose(_))),
        Some((Item::Size(_), _))
    );
    let is_before = |item: &Item| matches!(item, Item::Loose(_) | Item::Size(Kind::Num(_)));
    let first = items.iter_mut().find(|(item, _)| !is_before(item));
    let Some((Item::Feature { side, name, part: part @ None, .. }, _)) = first else { return };
    let is_other = |feature: usize| {
        let own = told.job.features[feature].side;
        own != *side && own.surface().is_some() && side.surface().is_some()
    };
    let is_within = |feature: usize, mate: &str| {
        let own = &told.job.features[feature];
        let is_smaller = own.size().zip(size).is_some_and(|(own, size)| size < own);
        let is_hollow = stems(mate)
            .last()
            .is_some_and(|last| matches!(last.as_str(), "bush" | "liner" | "sleeve" | "ferrule"));
        own.side == SizeKind::Hole
            && is_smaller
            && is_hollow
            && matches!(name.as_str(), "id" | "bore")
    };
    let want = wants.wanted_on_mut(line.number).next().filter(|want| !want.hinted);
    let is = |feature: usize, mate: &str| {
        !mate.is_empty() && (!leads && is_other(feature) || is_within(feature, mate))
    };
    let Some(want) = want.filter(|want| is(want.feature, &want.name)) else { return };
    let id = want.part.unwrap_or_else(|| told.part_named(&want.name, line.number));
    want.part = Some(id);
    *part = Some(id);
}

/// `bore was 8, opened up to 8.98`: the feature that this line has sized is of
/// another size now.
pub(super) fn opened_up(told: &Told, tokens: &[Token], line: &Line) -> bool {
    let [work, rest @ ..] = tokens else { return false };
    let way = usize::from(
        rest.first().and_then(Token::word).is_some_and(|way| matches!(way, "up" | "out" | "down")),
    );
    let to = rest.get(way).and_then(Token::word) == Some("to");
    let size = rest.get(way + 1).is_some_and(|size| matches!(size.kind, Kind::Num(_)));
    let sized = line.feature.and_then(|at| told.said_here(line, at));
    work.word().is_some_and(crate::note::work::worked_to)
        && to
        && size
        && sized.is_some_and(|at| told.job.said[at].nominal.is_some())
}

/// `bore 36 H7, bush pressed in`: another part with its fit, and no size.
pub(super) fn goes_here(
    told: &mut Told,
    wants: &mut Wants,
    tokens: &[Token],
    items: &[Placed],
    line: &mut Line,
) -> bool {
    let own = |item: &Item| {
        matches!(item, Item::Size(_) | Item::Mate { .. } | Item::OfMate(_) | Item::Feature { .. })
    };
    let (Some(feature), false) =
        (spoken_of(&told.job, line), items.iter().any(|(item, _)| own(item)))
    else {
        return false;
    };
    // `and the small gear is pressed on it`
    let article = usize::from(tokens[0].word().is_some_and(|word| matches!(word, "the" | "a")));
    let tokens = &tokens[article..];
    let known = told.part_at(tokens).map(|(part, taken)| (Some(part), taken));
    let Some((part, taken)) =
        known.or_else(|| told.names.part_phrase(tokens).map(|taken| (None, taken)))
    else {
        return false;
    };
    let one = &told.job.features[feature];
    let fit = items.iter().find_map(|(item, _)| match item {
        Item::Fit(words, word) => Some((words.clone(), *word)),
        Item::InPlace => Some(("press".to_owned(), crate::note::lexicon::fit(&["press"])?.1)),
        _ => None,
    });
    let goes = one.line == line.number
        && one.nominal.is_some()
        && part != Some(one.part)
        && Some(one.part) == line.subject
        && (one.side.surface().is_some() || one.side == SizeKind::Thread);
    let (true, Some((words, word))) = (goes, fit) else { return false };
    let mut fit = FitSaid { words, word, clearance: None };
    let said: Vec<String> =
        tokens[..taken].iter().map(crate::note::clause::phrases::text_of).collect();
    let at = tokens[0].at.start..tokens[taken - 1].at.end;
    let mut mate = Some((said.join(" "), part, at, true));
    wants.finish_mate(told, line, &mut mate, Some(feature), &mut fit, None);
    true
}

/// `journal, inboard: same`: the size of the one before it, or of another part's.
pub(super) fn same_as_before(
    told: &mut Told,
    wants: &mut Wants,
    line: &mut Line,
    of: Option<usize>,
) {
    let Some(feature) = line.feature.filter(|at| told.job.features[*at].nominal.is_none()) else {
        return;
    };
    let one = &told.job.features[feature];
    let (part, side) = (of.unwrap_or(one.part), one.side);
    let head = told.names.features[feature].first().cloned().unwrap_or_default();
    let called = of.and_then(|of| told.feature_called(of, &head, Some(side)));
    let before = called.or_else(|| {
        told.job.features[..feature]
            .iter()
            .rposition(|other| other.part == part && other.side == side && other.nominal.is_some())
    });
    if let Some(before) = before {
        let before_one = told.job.features[before].clone();
        if let Some(nominal) = before_one.nominal {
            told.size(line, feature, nominal, (before_one.unit, before_one.unit_from));
        }
        told.job.features[feature].class = before_one.class;
        if let Some(mut want) = wants.of(before).cloned() {
            let mut mate = Some((want.name, want.part, want.at, true));
            wants.finish_mate(told, line, &mut mate, Some(feature), &mut want.fit, None);
        }
    }
}

/// A clause may begin with a part that the note has not named yet: `nut bronze`.
pub(super) fn opens_part(
    told: &mut Told,
    wants: &Wants,
    tokens: &[Token],
    line: &mut Line,
    sign: char,
) -> bool {
    let leads = |word: &str| matches!(word, "w" | "with" | "the" | "new" | "make" | "and");
    let stuff = tokens
        .iter()
        .take_while(|token| line.declares && token.word().is_some_and(is_material))
        .count();
    let stuff = if tokens.get(stuff).and_then(Token::word).is_some_and(leads) { stuff } else { 0 };
    let skip = stuff
        + tokens[stuff..]
            .iter()
            .take_while(|token| {
                token.word().is_some_and(leads) || matches!(token.kind, Kind::Count(_))
            })
            .count();
    let rest = &tokens[skip..];
    let Some(mut taken) = told.names.part_phrase(rest) else { return false };
    // `other side 1.2512`: of what was spoken of.
    if matches!(rest[0].word(), Some("other" | "same" | "another")) {
        return false;
    }
    if super::named::housing_of(told, rest, line).is_some() {
        return false;
    }
    if crate::note::lexicon::fit(&[rest[0].word().unwrap_or_default()]).is_some() && taken == 1 {
        return false;
    }
    let named = || rest[..taken].iter().filter_map(Token::word);
    let is_form = rest[..taken].iter().rev().find_map(Token::word).is_some_and(is_stock);
    if line.declares && (is_form || named().all(is_material)) {
        return false;
    }
    if let Some((name, side, _)) = crate::note::clause::phrases::feature_phrase(&rest[taken..]) {
        let known = told.part_at(&rest[..taken]).map(|(part, _)| part);
        if phrases::is_modifier(told, line, known, rest, taken, &name, side) {
            return false;
        }
    }
    let next = rest.get(taken);
    // `hub hole .625` under the arm: which of its holes.
    if taken == 1
        && line.subject.is_some()
        && !line.reads
        && next.and_then(Token::word).is_some_and(|word| {
            crate::note::lexicon::feature(word).is_some()
                && !crate::note::work::is_work(word)
                && !matches!(crate::note::lexicon::stem(word).as_str(), "od" | "id")
        })
        && told.part_at(&rest[..taken]).is_none()
        && !wants.is_awaited(rest[0].word().unwrap_or_default())
    {
        return false;
    }
    // `screw: leadscrew stock 3/8-10`
    if next.and_then(Token::word) == Some("stock") {
        return false;
    }
    let begins = matches!(sign, '^' | '.') && has_size(tokens);
    let opens = begins
        || next.is_some_and(|token| {
            matches!(token.kind, Kind::Num(_) | Kind::Thread(_) | Kind::Dims(_) | Kind::Count(_))
                || token.word().is_some_and(|word| {
                    matches!(word, "is" | "are")
                        || is_material(word)
                        || crate::note::lexicon::fit(&[word]).is_some()
                        || crate::note::lexicon::feature(word).is_some()
                        || crate::note::work::is_work(word)
                })
        })
        || skip > 0
            && tokens[skip - 1].word() != Some("the")
            && is_material(rest[0].word().unwrap_or_default());
    let is_feature =
        crate::note::lexicon::feature(rest[taken - 1].word().unwrap_or_default()).is_some();
    if !opens || is_feature || sign == '(' {
        return false;
    }
    let name: Vec<String> =
        rest[..taken].iter().map(crate::note::clause::phrases::text_of).collect();
    taken = taken.min(rest.len());
    // On a day `plate` is the one that is there, whatever its name in full.
    let said = name.join(" ");
    let there = line.date.as_ref().and_then(|_| told.part_in_full(&stems(&said)));
    let part = there.unwrap_or_else(|| told.part_named(&said, line.number));
    head::describe(&mut told.job.parts[part], &rest[taken..]);
    let stuff = rest[0].word().unwrap_or_default().to_owned();
    if taken > 1 && is_material(&stuff) && told.job.parts[part].material.is_none() {
        told.job.parts[part].material = Some(stuff);
    }
    told.names.enter_block(part);
    line.subject = Some(part);
    line.feature = None;
    true
}

/// `rod, 480 centres, brass bush 16 od 12 bore`: a bush that the line of another part
/// opens, and of which nothing says where it goes, sits in that part.
pub(super) fn sits_in_host(told: &mut Told, wants: &mut Wants, line: &mut Line) {
    let (Some(part), Some(host)) = (line.subject, line.before) else { return };
    let is_bush = told.names.parts[part].last().is_some_and(|word| word == "bush");
    let is_new = told.job.parts[part].line == line.number && line.date.is_none();
    let is_round = told.features_of(host).any(|(_, one)| one.side == SizeKind::Shaft);
    let od = told
        .features_of(part)
        .find(|(at, one)| one.side == SizeKind::Shaft && wants.of(*at).is_none())
        .map(|(at, one)| (at, one.at.clone()));
    if let (true, Some((od, at))) = (is_bush && is_new && !is_round, od) {
        let (name, spoken) = (told.job.parts[host].name.clone(), line.feature);
        wants.hint(told, line, od, &name, &at);
        line.feature = spoken;
    }
}

/// `castings for the bearings, bore 42 H7`: what the part is for goes with the first hole
/// or shaft that its line gives.
pub(super) fn made_for(told: &mut Told, wants: &mut Wants, first: &[Token], line: &mut Line) {
    let ([word, rest @ ..], Some(part), true) = (first, line.subject, line.declares) else {
        return;
    };
    let article = usize::from(rest.first().and_then(Token::word) == Some("the"));
    let rest = &rest[article..];
    let Some((other, taken)) = told.part_at(rest) else { return };
    let waits = |at: &usize| wants.of(*at).is_none();
    let found = told
        .features_of(part)
        .find(|(at, one)| one.line == line.number && one.side.surface().is_some() && waits(at))
        .map(|(at, one)| (at, one.at.clone()));
    if let (Some("for"), true, Some((feature, at))) = (word.word(), taken == rest.len(), found)
        && other != part
    {
        let (name, spoken) = (told.job.parts[other].name.clone(), line.feature);
        wants.hint(told, line, feature, &name, &at);
        line.feature = spoken;
    }
}

/// `end thread M12 x 12 long, nut and washer`: the nut goes on the thread of the line.
pub(super) fn nut_of_thread(
    told: &mut Told,
    wants: &mut Wants,
    clause: &[Token],
    line: &mut Line,
) -> bool {
    let known = told.part_at(clause).map(|(part, taken)| (Some(part), taken));
    let Some((part, taken)) =
        known.or_else(|| told.names.part_phrase(clause).map(|taken| (None, taken)))
    else {
        return false;
    };
    let is_nut = clause[taken - 1].word().is_some_and(|word| stem(word).ends_with("nut"));
    let is_alone = clause[taken..]
        .iter()
        .all(|token| matches!(token.word(), Some("and" | "washer" | "washers" | "bought")));
    let thread = (0..told.job.features.len()).rev().find(|at| {
        let one = &told.job.features[*at];
        one.line == line.number
            && one.side == SizeKind::Thread
            && one.nominal.is_some()
            && wants.of(*at).is_none()
    });
    let (true, true, Some(thread)) = (is_nut, is_alone, thread) else { return false };
    let said: Vec<String> = clause[..taken].iter().map(phrases::text_of).collect();
    let mut mate = Some((said.join(" "), part, clause[0].at.start..clause[taken - 1].at.end, true));
    let spoken = line.feature;
    wants.finish_mate(told, line, &mut mate, Some(thread), &mut FitSaid::default(), None);
    line.feature = spoken;
    true
}
