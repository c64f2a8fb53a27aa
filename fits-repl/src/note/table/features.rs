//! The features of a row: their sizes, lengths and readings.

use fits_core::job::whole::SizeKind;

use super::{
    Row,
    cell::{each_of, has_words, listed_as, one_sided},
    mates,
};
use crate::note::{
    Line,
    clause::{
        self,
        items::{self, Item, Placed},
        named::{self, is_tube},
        owner::role,
        parted::has_size,
    },
    counts::is_gauge,
    kinds,
    lexicon::{self, feature, inwardness, stem, stems},
    sizes::{self, Given},
    token::{Kind, Num, Token, tokens},
    told::Told,
    wants::Wants,
};

pub(super) fn features_of_row(
    told: &mut Told,
    wants: &mut Wants,
    row: &Row,
    line: &mut Line,
    part: usize,
) {
    let said = row.feature.1.to_lowercase();
    let alike = said
        .strip_prefix("as ")
        .or_else(|| said.strip_prefix("same as "))
        .or_else(|| (said == "same" || said == "ditto").then_some(""));
    if let Some(other) = alike {
        let other: Option<usize> = told
            .part_called(&stems(other))
            .map(|(part, _)| part)
            .filter(|_| !other.is_empty())
            .or_else(|| part.checked_sub(1).filter(|_| other.is_empty()));
        if other.is_none() {
            let at = row.feature.0..row.feature.0 + row.feature.1.len();
            let text = format!("no part before this row is called so: `{}`", row.feature.1);
            told.ask_of_figure(line, at, text, Some("name a part of a row above".into()));
        }
        if let Some(other) = other {
            mates::like(told, wants, line, part, other, row);
        }
        return;
    }
    let mut readings: Vec<Num> = tokens(row.reading.1, row.reading.0)
        .into_iter()
        .filter_map(|token| match token.kind {
            Kind::Num(num) => Some(num),
            _ => None,
        })
        .collect();
    if row.reading.1.split_whitespace().any(has_words) && readings.iter().all(|num| num.places == 0)
    {
        readings.clear();
    }
    // What the part is made from is no size of it.
    let said_of = row.feature.1.to_lowercase();
    let is_stock = lexicon::is_stock(&said_of) && !is_tube(&said_of);
    let size = if is_stock { Vec::new() } else { tokens(row.size.1, row.size.0) };
    if size.iter().any(is_gauge) {
        told.remark(line.number, row.size.1, Some(part));
    }
    // `bought 6002` says how it is bought: the kind of the part says what its sizes are.
    let is_bought = said.split_whitespace().next() == Some("bought");
    if is_bought {
        told.job.parts[part].bought = true;
        told.remark(line.number, row.feature.1, Some(part));
    }
    let mut names = each_of(if is_bought { "" } else { row.feature.1 });
    let mut sizes = vec![size; names.len()];
    if let Some((both, each)) = paired(row) {
        (names, sizes) = (both, each);
    }
    let count = names.len();
    for (at, (name, size)) in names.iter().zip(&sizes).enumerate() {
        let feature = feature_of_row(told, wants, row, line, part, name, size);
        let Some(feature) = feature else { continue };
        let mine: Vec<Num> = if count > 1 {
            readings.get(at).cloned().into_iter().collect()
        } else {
            readings.clone()
        };
        for num in mine {
            told.reading(line, feature, &num);
        }
        told.job.features[feature].done |= line.done;
        length_of_row(told, row, line, feature);
        mates::mate_of_row(told, wants, row, line, feature, (at, count));
    }
}

/// `bore / thickness` over `30 H8 / 8`: several features with a size each.
fn paired(row: &Row) -> Option<(Vec<String>, Vec<Vec<Token>>)> {
    let names: Vec<String> =
        row.feature.1.split(" / ").map(|name| name.trim().to_owned()).collect();
    let mut at = row.size.0;
    let mut sizes = Vec::new();
    for size in row.size.1.split(" / ") {
        sizes.push(tokens(size, at));
        at += size.len() + 3;
    }
    let is_pair = names.len() > 1
        && names.len() == sizes.len()
        && names.iter().all(|name| has_words(name))
        && sizes.iter().all(|size| has_size(size));
    is_pair.then_some((names, sizes))
}

#[allow(clippy::too_many_lines, reason = "one kind of words after another, each short")]
fn feature_of_row(
    told: &mut Told,
    wants: &mut Wants,
    row: &Row,
    line: &mut Line,
    part: usize,
    name: &str,
    size: &[Token],
) -> Option<usize> {
    let place = row.feature.0..row.feature.0 + row.feature.1.len();
    let head = tokens(name, row.feature.0);
    let items = items::items(told, &head, line);
    let is_feature = |(item, _): &&Placed| matches!(item, Item::Feature { .. });
    let item = items.iter().find(is_feature).cloned();
    let kind = size
        .iter()
        .find(|token| {
            matches!(token.kind, Kind::Num(_) | Kind::Dims(_) | Kind::Range(..) | Kind::Thread(_))
        })
        .map(|token| (token.kind.clone(), token.at.clone()));
    let class = size
        .iter()
        .find_map(|token| match &token.kind {
            Kind::Class(class) => Some(class.clone()),
            _ => None,
        })
        .or_else(|| {
            let beside = format!("{} {}", row.fit.1, row.limits.1);
            tokens(&beside, 0).into_iter().find_map(|token| match token.kind {
                Kind::Class(class) if !class.contains('/') => Some(class),
                _ => None,
            })
        });
    if let (Some((Kind::Dims(all), at)), None) = (&kind, &item)
        && let Some(sides) = listed_as(name, is_key(told, part), all.len())
    {
        let sides: Vec<(&str, SizeKind)> =
            sides.iter().map(|(name, side)| (name.as_str(), *side)).collect();
        return kinds::list(told, line, part, all, &sides, at, class.as_deref());
    }
    // Deviations stand behind a size.
    let limits = tokens(&format!("0 {}", row.limits.1), 0);
    let off = one_sided(size).or_else(|| {
        size.iter().chain(&limits).find_map(|token| match &token.kind {
            Kind::Off(low, high) => Some((low.clone(), high.clone())),
            _ => None,
        })
    });
    // A feature word of a part's own, as `bush od` in the roller's row.
    let mut owner = None;
    if let Some((Item::Feature { name: word, side, part: other, mate }, _)) = &item {
        let on = other.unwrap_or(part);
        // `bore depth`, `pin spacing`: the last word says what is measured. A
        // keyway is as wide as its size says.
        let last = name.split_whitespace().last().unwrap_or_default().to_lowercase();
        let is_length = feature(&last) == Some(SizeKind::Length) && role(&stem(&last)) != "width";
        let side = match kind {
            Some((Kind::Thread(_), _)) => SizeKind::Thread,
            // `bearing seat` over 47 J7
            _ if named::is_seat(name) && class.as_deref().is_some_and(named::is_of_hole) => {
                SizeKind::Hole
            }
            // `1/2 sq` of an end: it is not round.
            Some((Kind::Num(_), _)) if side.surface().is_some() && is_square(size) => {
                SizeKind::Other
            }
            // A key is as wide and as high as its ways are.
            _ if is_key(told, part) && matches!(last.as_str(), "width" | "height") => {
                SizeKind::Other
            }
            _ if is_length && other.is_none() => SizeKind::Length,
            _ => *side,
        };
        let named = if other.is_some() { word.clone() } else { name.trim().to_owned() };
        let inner = named
            .split_whitespace()
            .next()
            .and_then(inwardness)
            .filter(|_| feature(named.split_whitespace().next().unwrap_or_default()).is_none());
        let last = stem(named.split_whitespace().last().unwrap_or_default());
        if other.is_none() && inner.is_some() && matches!(last.as_str(), "od" | "id") {
            let first = named.split_whitespace().next().unwrap_or_default().to_owned();
            let whole = format!("{} {first}", told.job.parts[part].name);
            let inner = told.part_named(&whole, line.number);
            line.subject = Some(inner);
            owner = Some(told.feature(
                line,
                inner,
                named.split_whitespace().last().unwrap_or_default(),
                side,
                place.clone(),
            ));
        } else {
            let feature = told.feature(line, on, &named, side, place.clone());
            if let (Some(mate), true) = (mate, row.mate.1.is_empty()) {
                wants.hint(told, line, feature, mate, &place);
            }
            owner = Some(feature);
        }
    } else if !name.trim().is_empty() {
        let is_thread = matches!(kind, Some((Kind::Thread(_), _)));
        let own = told.inwardness(part);
        let by_class = class.as_ref().map(|class| class.starts_with(char::is_uppercase));
        let side = match by_class {
            _ if is_thread => SizeKind::Thread,
            Some(false) => SizeKind::Shaft,
            None if own >= 2 => SizeKind::Shaft,
            Some(true) | None => SizeKind::Hole,
        };
        let side = if kind.is_none() { SizeKind::Length } else { side };
        // `wire 3` of a spring that goes with nothing: neither hole nor shaft.
        let alone = row.mate.1.is_empty() && row.fit.1.is_empty() && class.is_none();
        let side = if alone && side == SizeKind::Hole { SizeKind::Other } else { side };
        // A tube goes by its outside.
        let side = if is_tube(name) { SizeKind::Shaft } else { side };
        if kind.is_some() || !row.length.1.is_empty() {
            owner = Some(told.feature(line, part, name.trim(), side, place.clone()));
        }
    } else if let Some((Kind::Range(..) | Kind::Num(_), _)) = &kind
        && told.job.parts[part].name == "assembly"
    {
        owner = Some(told.feature(
            line,
            part,
            row.part.1,
            SizeKind::Length,
            row.part.0..row.part.0 + row.part.1.len(),
        ));
    }
    let Some((kind, at)) = kind else {
        let thread = owner.or_else(|| {
            row.fit
                .1
                .contains("match")
                .then(|| told.feature(line, part, "thread", SizeKind::Thread, place.clone()))
        });
        if let Some(feature) = thread {
            told.say(line, feature);
        }
        return thread;
    };
    line.feature = None;
    let mate = (!row.mate.1.is_empty()).then_some(row.mate.1);
    let given = Given {
        kind: &kind,
        place: &at,
        owner,
        owner_said: owner.is_some(),
        class,
        reads: false,
        works_to: false,
        most: false,
        mate,
        has_fit: !row.fit.1.is_empty() || mate.is_some(),
        off,
        is_plain: true,
        second: None,
    };
    let found = sizes::give(told, wants, line, &given);
    let first = size.iter().position(|token| token.at == at);
    let is_limits = one_sided(size).is_some();
    let rest = first.filter(|_| !is_limits).map_or(&[][..], |first| &size[first + 1..]);
    more_sizes(told, wants, row, line, (part, found), rest);
    found
}

/// Does the cell say that its size is across flats?
fn is_square(size: &[Token]) -> bool {
    let words = size.iter().filter_map(Token::word);
    words.map(stem).any(|word| matches!(word.as_str(), "square" | "hex"))
}

pub(super) fn is_key(told: &Told, part: usize) -> bool {
    told.names.parts[part].iter().any(|word| word == "key")
}

/// What stands behind the first size in its cell: `90 dia x 60`, `6 wide, 2.8 deep`.
fn more_sizes(
    told: &mut Told,
    wants: &mut Wants,
    row: &Row,
    line: &mut Line,
    (part, feature): (usize, Option<usize>),
    rest: &[Token],
) {
    let is_taken = |token: &&Token| matches!(token.kind, Kind::Class(_) | Kind::Off(..));
    let rest = &rest[rest.iter().take_while(is_taken).count()..];
    // `14 wide 30 deep` of a slot: the word behind the first size is that size's.
    let is_flat = feature.is_some_and(|at| told.job.features[at].side == SizeKind::Other);
    let rest = match rest {
        [wide, next, ..]
            if is_flat
                && wide.word().is_some_and(|word| role(&stem(word)) == "width")
                && matches!(next.kind, Kind::Num(_)) =>
        {
            &rest[1..]
        }
        _ => rest,
    };
    if !has_size(rest) {
        return;
    }
    let before = (line.is_row, line.subject, line.feature);
    (line.is_row, line.subject, line.feature) = (false, Some(part), feature);
    clause::text(told, wants, row.size.1, rest, line);
    (line.is_row, line.subject, line.feature) = before;
}

/// A length in its own column: the feature's own, or how long the feature is.
fn length_of_row(told: &mut Told, row: &Row, line: &mut Line, feature: usize) {
    let Some(Token { kind: Kind::Num(num), at }) =
        tokens(row.length.1, row.length.0).into_iter().next()
    else {
        return;
    };
    let one = &told.job.features[feature];
    let own = one.side == SizeKind::Length && one.nominal.is_none();
    let (part, name) = (one.part, format!("{} length", one.name));
    let long = if own { feature } else { told.feature(line, part, &name, SizeKind::Length, at) };
    told.size_num(line, long, &num);
}
