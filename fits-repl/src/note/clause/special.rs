//! Clauses of one form: a bare size, a mark or a size in brackets, each of what
//! was spoken of right before.

use fits_core::{
    job::whole::{FitSaid, SizeKind},
    size::Unit,
};

use super::whose::lone_size;
use crate::note::{
    Line, kinds, lexicon,
    names::is_instance,
    sizes::{self, Given},
    token::{Kind, Token},
    told::Told,
    wants::Wants,
    work,
};

/// Was it a clause of one of these forms?
pub(super) fn special(
    told: &mut Told,
    wants: &mut Wants,
    tokens: &[Token],
    line: &mut Line,
    sign: char,
) -> bool {
    sign == '(' && in_brackets(told, wants, tokens, line)
        || which_of_several(told, tokens, line)
        || size_that_waits(told, tokens, line)
        || in_other_unit(told, tokens, line)
        || came_out_at(told, tokens, line)
        || cut_to_length(told, tokens, line)
}

/// `spokes shortened to 116`: their length, whatever it was before.
fn cut_to_length(told: &mut Told, tokens: &[Token], line: &mut Line) -> bool {
    let is_size = |token: &&Token| !matches!(token.kind, Kind::Word(_) | Kind::Count(_));
    let work = tokens.iter().position(|token| token.word().is_some_and(work::is_of_length));
    // `lever hits the treadle, cut to 360`: said of the part alone.
    let is_cut = tokens[0].word() == Some("cut") && line.feature.is_none() && line.date.is_some();
    let Some(at) = work.or(is_cut.then_some(0)) else { return false };
    let [to, size, ..] = &tokens[at + 1..] else { return false };
    let (Some("to"), Kind::Num(num)) = (to.word(), &size.kind) else { return false };
    if tokens.iter().filter(is_size).count() > 1 {
        return false;
    }
    let named = told.part_at(tokens).map(|(part, _)| part);
    let Some(part) = named.or(line.subject) else { return false };
    let lengths: Vec<usize> = told
        .features_of(part)
        .filter(|(_, one)| one.side == SizeKind::Length && one.nominal.is_some())
        .map(|(at, _)| at)
        .collect();
    let is_length = |at: &&usize| {
        let name = told.names.features[**at].concat();
        matches!(name.as_str(), "length" | "overalllength" | "overall" | "long")
    };
    let only = match lengths.as_slice() {
        [only] => Some(*only),
        several => several.iter().find(is_length).copied(),
    };
    let length = told.units.length(num, line.unit);
    let is_about = |at: usize| length.is_some_and(|size| sizes::is_about(&told.job, at, size));
    if work.is_none() && !only.is_some_and(is_about) {
        return false;
    }
    match only {
        Some(only) => {
            told.size_num(line, only, num);
        }
        None => told.ask_size(line, &Given::plain(&size.kind, &size.at)),
    }
    true
}

/// `(17x35x10)` behind a bought part, or `(6003)` behind its seat.
fn in_brackets(told: &mut Told, wants: &mut Wants, tokens: &[Token], line: &mut Line) -> bool {
    let [Token { kind, at }] = tokens else { return false };
    let named = line.mate_name.take();
    if let Kind::Dims(_) = kind {
        let part = line.mate_part.or_else(|| named.map(|name| told.part_named(&name, line.number)));
        line.mate_part = part;
        if let Some(part) = part {
            kinds::of_mate(told, wants, line, part, kind, at, None);
        }
        return part.is_some();
    }
    let (Kind::Code(code), Some(feature)) = (kind, line.feature) else { return false };
    let is_seat = lexicon::stems(&told.job.features[feature].name)
        .iter()
        .any(|word| matches!(word.as_str(), "bearing" | "seat"));
    if code.len() < 3 || !is_seat {
        return false;
    }
    let name = code.to_uppercase();
    let part = told.part_named(&name, line.number);
    line.mate_part = Some(part);
    let here = wants.wanted_on_mut(line.number).find(|want| want.feature == feature);
    if let Some(want) = here {
        (want.name, want.part) = (name, Some(part));
    } else {
        let mut mate = Some((name, Some(part), at.clone(), true));
        wants.finish_mate(told, line, &mut mate, Some(feature), &mut FitSaid::default(), None);
    }
    true
}

/// `journal, outboard: 3/4`: which of several, then its size.
fn which_of_several(told: &mut Told, tokens: &[Token], line: &Line) -> bool {
    let ([Token { kind: Kind::Word(word), .. }], Some(feature)) = (tokens, line.feature) else {
        return false;
    };
    let one = &told.job.features[feature];
    let is_one =
        is_instance(&lexicon::stem(word)) && one.line == line.number && one.nominal.is_none();
    if is_one {
        told.rename(feature, word);
    }
    is_one
}

/// `keyway, 3/16`: the feature of this line has no size yet.
fn size_that_waits(told: &mut Told, tokens: &[Token], line: &mut Line) -> bool {
    let ([Token { kind: Kind::Num(num), .. }, rest @ ..], Some(feature)) = (tokens, line.feature)
    else {
        return false;
    };
    let one = &told.job.features[feature];
    let waits = (!line.prose || line.reads)
        && one.side != SizeKind::Thread
        && one.nominal.is_none()
        && one.readings.is_empty()
        && one.line == line.number
        && rest.iter().all(|token| matches!(token.kind, Kind::Class(_) | Kind::Off(..)));
    // `4-12 tail turned, .9998`: of a day, and finer than a size is.
    if waits && line.date.is_some() && rest.is_empty() && told.units.is_fine(num, line) {
        told.reading(line, feature, num);
        return true;
    }
    if !waits || !told.size_num(line, feature, num) {
        return false;
    }
    if let Some(Token { kind: Kind::Class(class), .. }) = rest.first() {
        told.job.features[feature].class = Some(class.clone());
    }
    true
}

/// `1.3780 (35mm)`: the same size in the other unit.
fn in_other_unit(told: &Told, tokens: &[Token], line: &Line) -> bool {
    let ([Token { kind: Kind::Num(num), .. }], Some(feature)) = (tokens, line.feature) else {
        return false;
    };
    let size = told.units.length(num, None).filter(|_| num.unit.is_some());
    told.job.features[feature].unit != num.unit.unwrap_or(Unit::Inch)
        && size.is_some_and(|size| told.is_near(feature, size))
}

/// `(bought, .3117)`, `other .7530`: nearly a size of this line, so what it
/// came out at.
fn came_out_at(told: &mut Told, tokens: &[Token], line: &mut Line) -> bool {
    let (Some(num), Some(feature)) = (lone_size(tokens), line.feature) else { return false };
    let Some(size) = told
        .units
        .length(num, line.unit)
        .filter(|_| num.places >= 3 || line.reads && num.places > 1)
    else {
        return false;
    };
    let part = told.job.features[feature].part;
    let near = told.features_of(part).map(|(at, _)| at).find(|at| {
        let one = &told.job.features[*at];
        let read = one.readings.last().map(|reading| reading.size);
        one.side.surface().is_some()
            && (told.is_near(*at, size) && one.size() != Some(size)
                || read.is_some_and(|read| (read.millimetres() - size.millimetres()).abs() < 0.3))
    });
    if let Some(near) = near {
        told.reading(line, near, num);
    }
    near.is_some()
}
