//! What the word that is being typed may become: in a query, and on the command
//! line.

use std::{borrow::Cow, collections::BTreeSet};

use fits_core::{
    shop::words::Word,
    standards::{b41, instruments::Instrument, iso286::Grade, materials::Material},
};

use super::{COMMANDS, Command, OPTIONS, SHELLS};
use crate::{
    help::topics,
    query::Query,
    schema,
    session::Session,
    words::clause::{self, Clause},
};

/// The classes worth offering: the preferred ones of ISO 286-2 and ANSI B4.2.
const HOLES: &[&str] =
    &["H6", "H7", "H8", "H9", "H11", "C11", "D9", "F8", "G7", "JS7", "K7", "N7", "P7", "S7", "U7"];
const SHAFTS: &[&str] = &[
    "c11", "d9", "f7", "g6", "h6", "h7", "h8", "h9", "h11", "js6", "k6", "m6", "n6", "p6", "r6",
    "s6", "u6",
];

/// What `crib add` takes.
const TOOLS: [&str; 7] = ["drill", "reamer", "tap", "pin", "bar", "instrument", "material"];

/// A word that may stand there, and what it says.
#[derive(Clone, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub struct Candidate {
    /// The word.
    pub word: Cow<'static, str>,
    /// What it says, where that is known.
    pub says: &'static str,
}

impl From<&'static str> for Candidate {
    fn from(word: &'static str) -> Self {
        Self { word: word.into(), says: clause::named(word).next().map_or("", |it| it.says) }
    }
}

/// Where the word before the cursor of a query starts, and what it may become.
pub fn of_query(before: &str) -> (usize, Vec<Candidate>) {
    let start = before
        .rfind(|c: char| c.is_whitespace() || matches!(c, '/' | ',' | '='))
        .map_or(0, |at| at + before[at..].chars().next().map_or(1, char::len_utf8));
    let (typed, context) = (&before[start..], before[..start].trim_end());
    let first_word = context.split_whitespace().next().unwrap_or_default();
    // `why` is asked of any query.
    if let Some(query) = before.strip_prefix("why ") {
        let taken = before.len() - query.trim_start().len();
        let (start, offered) = of_query(query.trim_start());
        return (taken + start, offered);
    }
    let mut offered = names_at(before, start);
    let mut offer = |words: &mut dyn Iterator<Item = &'static str>| {
        offered.extend(words.map(Candidate::from));
    };
    let read = crate::read(context).ok();
    let is_sized = matches!(read, Some(Query::Size(_)));
    let is_thread = matches!(read, Some(Query::Thread(_)));
    if first_word == "help" {
        offer(&mut topics().map(|topic| topic.topic));
        offer(&mut ["walk-through"].into_iter());
        // A word that has a topic is asked by that.
        let has_topic =
            |word: &str| topics().any(|topic| topic.topic.strip_suffix('s') == Some(word));
        let words = clause::openers().map(|clause| clause.word);
        offer(&mut words.filter(|word| !has_topic(word)));
    } else if first_word == "units" {
        offer(&mut ["mm", "in"].into_iter());
    } else if first_word == "dial" {
        offer(&mut ["diameter", "radius", "graduation", "turn"].into_iter());
    } else if first_word == "machine" {
        offer(&mut ["lathe", "boring"].into_iter());
    } else if first_word == "log" {
        offer(&mut ["list", "open", "leave"].into_iter());
    } else if first_word == "crib" {
        let words = if context.contains(' ') { &TOOLS[..] } else { &["add", "remove"] };
        offer(&mut words.iter().copied());
    } else if context.ends_with('/') {
        offer(&mut SHAFTS.iter().copied());
    } else if context.is_empty() {
        offer(&mut clause::openers().map(|clause| clause.word));
    } else {
        if is_sized {
            offer(&mut HOLES.iter().chain(SHAFTS).copied());
            offer(&mut Word::all().map(Word::name));
            offer(&mut ["general"].into_iter());
        }
        if is_sized || matches!(read, Some(Query::Part(_))) {
            let words =
                ["from", "hole = ", "shaft = ", "hub", "long", "thin tube", "turns", "with", "at"];
            offer(&mut words.into_iter());
        }
        offer(&mut clause::beside(context).map(|clause| clause.word));
        let of_read = read.as_ref().map_or(&[][..], Query::clauses);
        offer(&mut of_read.iter().filter(|it| is_thread || !it.opens_lines()).map(|it| it.word));
        if is_sized {
            // Of a word's many names those that are typed, one by one.
            let names = Word::all().flat_map(|word| word.aliases().iter().copied());
            offer(&mut names.filter(|_| !typed.is_empty()));
            let classes = b41::Class::all().map(|class| class.to_string());
            offered.extend(classes.map(|word| Candidate { word: word.into(), says: "" }));
        }
    }
    offered.retain(|one| one.word.starts_with(typed) && one.word != typed);
    let mut met = BTreeSet::new();
    offered.retain(|one| met.insert(one.word.trim_end().to_owned()));
    if offered.is_empty() && (is_sized || context.ends_with('/')) {
        offered = classes(context, typed);
    } else if is_thread && typed.starts_with(|c: char| c.is_ascii_digit()) {
        offered = thread_classes(context, typed);
    }
    (start, offered)
}

/// The materials or instruments whose names go on as typed, after a word that
/// takes one; each from `start` on.
fn names_at(before: &str, start: usize) -> Vec<Candidate> {
    let takes = |clause: &&Clause| {
        [clause.word, clause.takes]
            .iter()
            .any(|it| it.contains("material") || it.contains("instrument"))
    };
    // A name has up to four words.
    let opened = before.char_indices().rev().filter(|(at, c)| c.is_whitespace() && *at < start);
    for (at, _) in opened.take(4) {
        let word = before[..at].rsplit(|c: char| c.is_whitespace() || c == ',').next();
        // `weight` has a section before its material.
        let opener = before.split_whitespace().next().filter(|first| *first == "weight");
        let clause = word.and_then(|word| clause::named(word).find(takes));
        let Some(clause) = clause.or_else(|| clause::named(opener?).find(takes)) else { continue };
        let typed = before[at..].trim_start().to_lowercase();
        let cut = typed.len().saturating_sub(before.len() - start);
        let of_material = clause.word == "material" || clause.takes.contains("material");
        let names: Vec<&'static str> = if of_material {
            let all = Material::all();
            all.flat_map(|it| [it.name()].into_iter().chain(it.aliases().iter().copied())).collect()
        } else {
            Instrument::all().map(Instrument::name).collect()
        };
        let goes_on = names.into_iter().filter(|name| name.starts_with(&typed));
        return goes_on
            .filter_map(|name| name.get(cut..))
            .map(|rest| Candidate { word: rest.into(), says: "" })
            .collect();
    }
    Vec::new()
}

/// The classes of a thread's system that go on as typed: those that have an answer.
fn thread_classes(context: &str, typed: &str) -> Vec<Candidate> {
    let letters = ["A", "B", "C", "G", "H", "e", "f", "g", "h"];
    let all = (1..=9).flat_map(|grade| letters.iter().map(move |it| format!("{grade}{it}")));
    let mut session = Session::new();
    all.filter(|class| class.starts_with(typed) && class != typed)
        .filter(|class| session.evaluate(&format!("{context} {class}")).is_ok())
        .map(|class| Candidate { word: class.into(), says: "" })
        .collect()
}

/// The grades of the letters typed that have an answer there.
fn classes(context: &str, typed: &str) -> Vec<Candidate> {
    let letters: String = typed.chars().take_while(char::is_ascii_alphabetic).collect();
    if letters.is_empty() || letters.len() > 2 {
        return Vec::new();
    }
    let mut session = Session::new();
    // A bare size in inches or millimetres has the same classes.
    session.take_units(crate::query::Units::Millimetres);
    let all = Grade::all()
        .map(|grade| format!("{letters}{}", grade.to_string().trim_start_matches("IT")));
    all.filter(|class| class.starts_with(typed) && class != typed)
        .filter(|class| session.evaluate(&format!("{context} {class}")).is_ok())
        .map(|class| Candidate { word: class.into(), says: "" })
        .collect()
}

/// What the last of the command line's words may become, whole.
pub fn of_words(words: &[String]) -> Vec<Candidate> {
    let Some((typed, before)) = words.split_last() else { return Vec::new() };
    let valued = |word: &str| {
        let name = word.strip_prefix("--")?;
        OPTIONS.iter().find(|option| option.long == name && !option.takes.is_empty())
    };
    // bash parts `--color=al` at the sign.
    let typed = if typed == "=" { "" } else { typed };
    let option = match before {
        [.., option, equals] if equals == "=" => valued(option),
        [.., option] => valued(option),
        [] => None,
    };
    if let Some(option) = option {
        if option.long == "csv" {
            return columns(typed);
        }
        return starting(typed, option.values.iter().copied());
    }
    if let Some((name, _)) = typed.split_once('=')
        && let Some(option) = valued(name)
    {
        let whole = option.values.iter().map(|value| format!("{name}={value}"));
        return whole
            .filter(|word| word.starts_with(typed) && word != typed)
            .map(|word| Candidate { word: word.into(), says: "" })
            .collect();
    }
    let mut command = Command::Answer;
    let mut query: Vec<&str> = Vec::new();
    let mut rest = before.iter().map(String::as_str);
    let mut is_over = false;
    while let Some(word) = rest.next() {
        let named = COMMANDS.iter().find(|about| !about.word.is_empty() && about.word == word);
        if is_over {
            query.push(word);
        } else if word == "--" {
            is_over = true;
        } else if valued(word).is_some() {
            let _ = rest.next();
        } else if word.starts_with("--") {
        } else if let Some(about) = named.filter(|_| query.is_empty() && command == Command::Answer)
        {
            command = about.command;
        } else {
            query.push(word);
        }
    }
    if typed.starts_with('-') && !is_over {
        let options = OPTIONS.iter().filter(|option| option.goes_with(command));
        let options = options.map(|option| (format!("--{}", option.long), option.says));
        return options
            .filter(|(word, _)| word.starts_with(typed) && word != typed && !before.contains(word))
            .map(|(word, says)| Candidate { word: word.into(), says })
            .collect();
    }
    match command {
        Command::Answer => {}
        Command::Schema if query.is_empty() => {
            let kinds = schema::kinds().into_iter();
            let kinds = kinds.filter(|kind| kind.starts_with(typed) && kind != typed);
            return kinds.map(|kind| Candidate { word: kind.into(), says: "" }).collect();
        }
        Command::Completions if query.is_empty() => return starting(typed, SHELLS.into_iter()),
        _ => return Vec::new(),
    }
    let mut line = query.join(" ");
    if !line.is_empty() {
        line.push(' ');
    }
    let first = line.len();
    line.push_str(typed);
    let (start, mut offered) = of_query(&line);
    let kept = line.get(first..start).unwrap_or_default();
    for one in &mut offered {
        one.word = format!("{kept}{}", one.word.trim_end()).into();
    }
    if first == 0 && start == 0 {
        let commands = COMMANDS.iter().filter(|about| about.command != Command::Candidates);
        let commands =
            commands.filter(|about| about.word.starts_with(typed) && about.word != typed);
        offered
            .extend(commands.map(|about| Candidate { word: about.word.into(), says: about.says }));
        offered.retain(|one| !one.word.is_empty());
    }
    offered.dedup();
    offered
}

/// The columns of a table, the last of those typed being written; a field that holds
/// others is gone into at its point.
fn columns(typed: &str) -> Vec<Candidate> {
    let last = typed.rfind(',').map_or(0, |at| at + 1);
    let (before, typed) = typed.split_at(last);
    let level = typed.matches('.').count();
    let mut names: Vec<String> = schema::paths();
    names.retain(|path| path.starts_with(typed) && path != typed);
    // Without a word typed all of them are too many to look through.
    names.retain(|path| path.matches('.').count() <= level.max(usize::from(!typed.is_empty())));
    let whole = names.into_iter().map(|path| format!("{before}{path}"));
    whole.map(|word| Candidate { word: word.into(), says: "" }).collect()
}

fn starting(typed: &str, words: impl Iterator<Item = &'static str>) -> Vec<Candidate> {
    let words = words.filter(|word| word.starts_with(typed) && *word != typed);
    words.map(|word| Candidate { word: word.into(), says: "" }).collect()
}

#[cfg(test)]
mod tests {
    use super::of_query;

    fn candidates(before: &str) -> (usize, Vec<String>) {
        let (start, offered) = of_query(before);
        (start, offered.into_iter().map(|one| one.word.into_owned()).collect())
    }

    #[test]
    fn completion_offers_what_can_stand_there() {
        for (before, start, offered) in [
            ("20 H1", 3, &["H11"][..]),
            ("20 H7/g", 6, &["g6"]),
            ("be", 0, &["bearing"]),
            ("beh", 0, &[]),
            ("bo", 0, &["bore"]),
            ("bore 20 H7 fr", 11, &["from"]),
            ("units ", 6, &["mm", "in"]),
            ("help pa", 5, &["pairs", "parts", "passes"]),
            ("3/4in RC", 6, &["RC1", "RC2", "RC3", "RC4", "RC5", "RC6", "RC7", "RC8", "RC9"]),
            (
                "20 pre",
                3,
                &["precision running", "press", "precise running", "press in", "pressed"],
            ),
            ("20 \u{2300}", 3, &[]),
            (
                "20 press, hub cast i",
                19,
                &[
                    "iron",
                    "iron class 20",
                    "iron class 25",
                    "iron class 30",
                    "iron class 35",
                    "iron class 40",
                ],
            ),
            ("20 H7 = 20.01 with bore g", 24, &["gauge"]),
            (
                "20 EF1",
                3,
                &["EF10", "EF11", "EF12", "EF13", "EF14", "EF15", "EF16", "EF17", "EF18"],
            ),
        ] {
            let (at, words) = candidates(before);
            assert_eq!(
                (at, words.iter().map(String::as_str).collect()),
                (start, offered.to_vec()),
                "{before}"
            );
        }
    }
}
