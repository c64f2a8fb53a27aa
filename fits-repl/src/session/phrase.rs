//! What a plain query leaves open that a phrase may have meant.

use std::ops::Range;

use fits_core::{
    shop::words::Word,
    standards::{
        bought::Family,
        instruments::Instrument,
        materials::Material,
        thread::{Form, Series, Thread},
    },
};

use crate::{
    problem::{Code, Problem},
    query::{Expression, LinkText, Part, Query, Spot, StackText, Tolerance},
    questions::{rehearse::reader::Rehearse, thread::asked::ThreadQuery},
    sentence, words,
};

/// What a phrase lacks, or the word of it that is known to no question.
pub(super) fn lacking(line: &str, refused: &Problem) -> Option<Problem> {
    // What is wrong with a material or an instrument is said by its own list.
    if refused.kind != Code::NotUnderstood {
        return None;
    }
    match sentence::lacks(line)? {
        // Where the plain grammar got further, it knows better.
        sentence::Lack::Word(at) if refused.at.start > at.start => None,
        sentence::Lack::Word(at) => {
            let word = line.get(at.clone())?;
            let message = format!("`{word}` is not known here");
            Some(
                Problem::new(message, at)
                    .advise("leave it out, or say it in other words: `help words`")
                    .kind(Code::NotUnderstood),
            )
        }
        sentence::Lack::Heated => Some(
            Problem::new(
                "what is heated is not said: its size, its fit and its hub",
                0..line.len(),
            )
            .advise("as in `assemble 2in shrink, hub steel od 3in`"),
        ),
        sentence::Lack::Size if refused.at.start >= line.trim_end().len() => None,
        sentence::Lack::Size => Some(
            Problem::new("no size is said", 0..line.len())
                .advise("a size and a fit, as in `3/4in press`"),
        ),
    }
}

/// A figure with its unit stands in the query.
pub(super) fn has_length(plain: &str) -> bool {
    plain.split_whitespace().any(|word| {
        let unit = word.trim_start_matches(|c: char| !c.is_ascii_alphabetic());
        unit.len() < word.len() && matches!(unit, "in" | "mm" | "thou")
    })
}

/// A keyword and figures alone.
pub(super) fn is_terse(line: &str) -> bool {
    let units = ["in", "mm", "thou", "sure", "tenths", "um"];
    line.split_whitespace().skip(1).all(|word| {
        let bare = word.trim_start_matches(|c: char| !c.is_alphabetic());
        bare.is_empty() || units.contains(&bare)
    })
}

/// A part by its form that is to fit by no word, or whose name no list has.
pub(super) fn names_nothing(part: &Part) -> bool {
    let is_listed = |name: &str| !Family::all_called(name).is_empty();
    let is_bought = part.bought.as_ref().is_none_or(|name| {
        let whole = part.feature.as_ref().map(|said| format!("{} {}", said.value, name.value));
        is_listed(&name.value) || whole.is_some_and(|whole| is_listed(&whole))
    });
    !(is_by_word(part) && is_bought)
}

/// Is a line a plain query, and of names that there are?
pub(super) fn is_plain_query(line: &str) -> bool {
    match words::read(line) {
        Ok(Query::Part(part)) => !names_nothing(&part),
        read => read.is_ok(),
    }
}

/// A part that is to fit by a word there is, or by none.
fn is_by_word(part: &Part) -> bool {
    part.word.as_ref().is_none_or(|word| Word::named(&word.value).is_some())
}

/// A plain query by its form, with a name that nothing here is called: the
/// words may be a phrase.
pub(super) fn may_be_phrase(query: &Query) -> bool {
    let is_metal = |spot: &Option<Spot<String>>| {
        spot.as_ref().is_none_or(|name| Material::named(&name.value).is_some())
    };
    match query {
        Query::Log(_)
        | Query::Crib(_)
        | Query::Assemble(_)
        | Query::PickGrip(_)
        | Query::Bushing(_)
        | Query::Stack(_)
        | Query::Align(_) => false,
        Query::Part(part) | Query::Rehearse(Rehearse(part)) => {
            let is_instrument = part.measuring.as_ref().is_none_or(|how| {
                how.instruments.iter().all(|name| Instrument::find(&name.value).is_ok())
            });
            part.bought.is_some()
                || !(is_by_word(part)
                    && is_instrument
                    && is_metal(&part.hub)
                    && is_metal(&part.shaft_material))
        }
        _ => true,
    }
}

/// Whether a part is to fit by an ISO class; none of what is no part.
pub(super) fn has_fit(query: &Query) -> Option<bool> {
    let (Query::Part(part) | Query::Rehearse(Rehearse(part))) = query else {
        return matches!(query, Query::Drill(_)).then_some(false);
    };
    Some(matches!(&part.tolerance, Tolerance::Class(class) | Tolerance::Pair(class, _)
        if class.letters().len() < 2 || class.letters().chars().all(char::is_lowercase)))
}

/// `.750`, `1.2505`: a bare size with a leading point, or with ten-thousandths on
/// what is no long part.
pub(super) fn looks_like_inches(line: &str, query: &Query) -> bool {
    let Some(size) =
        query.question().size().filter(|size| matches!(size.value, Expression::Number(_, None)))
    else {
        return false;
    };
    let typed = line.get(size.at.clone()).unwrap_or_default();
    let (whole, places) = typed.split_once('.').unwrap_or((typed, ""));
    whole.is_empty() || (places.len() == 4 && whole.parse().is_ok_and(|whole: u32| whole < 12))
}

/// `3/8-18` is in no list of Unified threads, and a pipe's pitch: which is meant?
pub(super) fn pipe_or_not(line: &str, query: &ThreadQuery) -> Option<Problem> {
    let named = &query.thread.value;
    if named.form != Form::Unified || named.series.is_some() {
        return None;
    }
    let end = query.thread.at.start + named.pitch?.at.1;
    let thread = named.resolve().ok().filter(|it| it.series() == Series::Special)?;
    let with = |system: &str| format!("{} {system}{}", &line[..end], &line[end..]);
    let typed = line.get(query.thread.at.start..end)?;
    let pipe: Thread = format!("{typed} NPT").parse().ok()?;
    (pipe.pitch() == thread.pitch()).then(|| {
        Problem::new("a pipe's pitch, in no list of Unified threads", query.thread.at.clone())
            .choose(vec![with("NPT"), with("UNS")])
    })
}

/// `stack 1.000 ±.005 .750 ±.003`: a part without a sign adds or takes away. The line
/// with all of them taken away, and with all of them added.
pub(super) fn signed_both_ways(
    line: &str,
    stack: &StackText,
) -> Option<(Range<usize>, Vec<String>)> {
    let places: Vec<Range<usize>> = unsigned(stack).map(|link| link.at.clone()).collect();
    let with = |sign: &str| {
        let mut line = line.to_owned();
        for at in places.iter().rev() {
            line.insert_str(at.start, sign);
        }
        line
    };
    Some((places.first()?.clone(), vec![with("-"), with("+")]))
}

/// `stack 20 minus 8 minus 11.5`: signs in words, as signs.
pub(super) fn with_signs(line: &str, stack: &StackText) -> Option<String> {
    let mut signed = line.to_owned();
    for link in unsigned(stack).collect::<Vec<_>>().into_iter().rev() {
        let name = link.name.as_ref()?;
        let sign = match &*name.value.to_lowercase() {
            "minus" | "less" => "-",
            "plus" | "add" => "+",
            _ => return None,
        };
        signed.replace_range(name.at.start..link.at.start, sign);
    }
    (signed != line).then_some(signed)
}

fn unsigned(stack: &StackText) -> impl Iterator<Item = &LinkText> {
    stack.links.iter().skip(1).filter(|link| link.direction.is_none())
}

/// `25.00 +0.02`: a line with deviations that stand alone, each with nought on the other
/// side, and each to both sides.
pub(super) fn lone_deviations(line: &str) -> Option<[String; 2]> {
    let words: Vec<&str> = line.split(' ').collect();
    let bare = |word: &str| word.trim_end_matches([',', ';', '?', ':']).to_owned();
    let is_figure = |text: &str| {
        let text = text.trim_end_matches(|c: char| c.is_ascii_alphabetic());
        text.starts_with(|c: char| c.is_ascii_digit() || c == '.') && text.parse::<f64>().is_ok()
    };
    let signed = |at: usize| {
        let word = bare(words.get(at)?);
        let rest = word.strip_prefix(['+', '-'])?;
        is_figure(rest).then(|| (word[..1].to_owned(), rest.to_owned()))
    };
    let is_lone = |at: usize| {
        let behind_a_size = at > 0 && is_figure(words[at - 1]);
        behind_a_size && signed(at).is_some() && signed(at + 1).is_none()
    };
    let places: Vec<usize> = (1..words.len()).filter(|at| is_lone(*at)).collect();
    if places.is_empty() {
        return None;
    }
    let with = |written: fn(&str, &str) -> String| {
        let word = |(at, word): (usize, &&str)| {
            let Some((sign, rest)) = signed(at).filter(|_| places.contains(&at)) else {
                return (*word).to_owned();
            };
            written(&sign, &rest) + &word[bare(word).len()..]
        };
        words.iter().enumerate().map(word).collect::<Vec<_>>().join(" ")
    };
    let one_sided = |sign: &str, rest: &str| match sign {
        "+" => format!("+{rest}/-0"),
        _ => format!("+0/-{rest}"),
    };
    Some([with(one_sided), with(|_, rest| format!("\u{b1}{rest}"))])
}
