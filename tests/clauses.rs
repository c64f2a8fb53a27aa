//! Nothing typed is ignored in silence: every clause of the queries in the help and
//! the README changes the answer or is refused, and a clause of another question is
//! refused at its place or changes the answer.

use std::collections::BTreeSet;

use fits_checks::project_file;
use fits_repl::{
    help::topics,
    problem::Problem,
    render::{Colour, text::Text},
    session::Session,
};

/// Words that open a clause.
const OPENS: [&str; 40] = [
    "with",
    "from",
    "long",
    "hub",
    "shaft",
    "hole",
    "od",
    "wall",
    "oil",
    "dry",
    "degreased",
    "shrink",
    "blind",
    "warm",
    "at",
    "room",
    "within",
    "runs",
    "seed",
    "overhang",
    "for",
    "running",
    "rpm",
    "housing",
    "play",
    "between",
    "over",
    "rz",
    "friction",
    "clearance",
    "sleeve",
    "id",
    "thin",
    "reach",
    "compound",
    "nose",
    "hand",
    "power",
    "all",
    "straight",
];

/// Clauses that may change nothing, each with what the line
/// must hold and the reason.
const IDLE: [(&str, &str, &str); 13] = [
    ("long 25mm", " cut", "the same: a thread's length picks its class alone"),
    ("shrink", "press under", "the press that parts a shrunk joint is the same"),
    ("hole brass", "shaft steel", "the metal of the part that was not read is not asked for"),
    ("hub steel", "", "steel is what a part is taken as where none is named, or the same again"),
    ("shaft steel", "", "the same; the metal of the part that was not read is not asked for"),
    (
        "with bore gauge",
        "",
        "a bore is read with one unless told; the log's own gauge named is no other",
    ),
    ("hand", "tap", "a tap is turned by hand unless told"),
    ("for rough", " from ", "in a plan to cut, `rough` is the first of its stages"),
    ("all normal", "seat", "a seat's load is normal already"),
    ("thin", "thin", "it was said to be thin"),
    ("blind", "tap", "a size of drill is the same for a blind hole"),
    (
        "long 25mm",
        " ta",
        "a length picks the class of a thread: where one is named, nothing is left to pick",
    ),
    ("warm 60C", "warm 60C", "the same again where the joint was asked about at that"),
];

/// Clauses refused where they clash with what stood first, and the place is that.
const CLASHES: [&str; 5] =
    ["warm 60C", "from 19mm", "running 0.03mm..0.1mm", "shrink", "hub steel"];

fn is_idle(clause: &str, line: &str) -> bool {
    let clause = clause.trim_start_matches([',', ' ']);
    IDLE.iter().any(|(idle, of, _)| *idle == clause && line.contains(of))
}

/// A query with those that stand before it in its session.
struct Typed {
    before: Vec<String>,
    line: String,
}

/// The examples of the help, and the commands and prompts of the README and the
/// walk-through.
fn harvested() -> Vec<Typed> {
    let mut all = Vec::new();
    let mut take = |lines: Vec<String>| {
        for at in 0..lines.len() {
            all.push(Typed { before: lines[..at].to_vec(), line: lines[at].clone() });
        }
    };
    for topic in topics() {
        take(topic.examples.iter().map(|(query, _)| (*query).to_owned()).collect());
    }
    let page = |name: &str| std::fs::read_to_string(project_file(name)).expect(name);
    let readme = page("README.md") + &page("fits-repl/guide.md");
    let mut prompt: Option<Vec<String>> = None;
    for line in readme.lines() {
        if line == "```text" {
            prompt = Some(Vec::new());
        } else if line == "```" {
            take(prompt.take().unwrap_or_default());
        } else if let Some(lines) = &mut prompt {
            let query = line.strip_prefix("fits ").and_then(|rest| rest.split_once("> "));
            lines.extend(query.map(|(_, query)| query.to_owned()));
        } else if let Some(query) = line.strip_prefix("$ fits '")
            && let Some((query, "")) = query.split_once('\'')
        {
            take(vec![query.to_owned()]);
        }
    }
    // Long simulations and files are not clauses; `why` repeats its query.
    let skipped = [
        "rehearse",
        "crib",
        "why",
        "help",
        "log",
        "units",
        "dial",
        "instrument",
        "material",
        "risk",
        "least",
    ];
    all.retain(|typed| !skipped.iter().any(|word| typed.line.starts_with(word)));
    all.retain(|typed| !is_phrase(&typed.before, &typed.line));
    all
}

/// Is it a phrase, read by its words? Those have lists of their own.
fn is_phrase(before: &[String], line: &str) -> bool {
    let mut session = Session::new();
    for line in before {
        let _ = session.evaluate(line);
    }
    session.evaluate(line).is_ok() && session.read_as().is_some()
}

fn answered(before: &[String], line: &str) -> Result<String, Problem> {
    let mut session = Session::new();
    for line in before {
        let _ = session.evaluate(line);
    }
    let answer = session.evaluate(line)?;
    let text = Text { settings: session.shown(), colour: Colour::Off }.answer(&answer);
    Ok(format!("{}{text}", serde_json::to_string(&answer).expect("JSON")))
}

/// The places of a line's clauses: from an opening word or a comma to the next.
fn clauses(line: &str) -> Vec<std::ops::Range<usize>> {
    let mut starts: BTreeSet<usize> = line.match_indices(',').map(|(at, _)| at).collect();
    let mut at = 0;
    for word in line.split(' ') {
        let bare = word.trim_end_matches(',');
        if at > 0 && OPENS.contains(&bare) && !line[..at].ends_with(", ") {
            starts.insert(at - 1);
        }
        at += word.len() + 1;
    }
    let starts: Vec<usize> = starts.into_iter().collect();
    let ends = starts.iter().skip(1).copied().chain([line.len()]);
    starts.iter().copied().zip(ends).map(|(from, to)| from..to).collect()
}

#[test]
fn every_clause_changes_the_answer_or_is_refused() {
    let (mut tried, mut idle) = (0, Vec::new());
    for Typed { before, line } in harvested() {
        let Ok(whole) = answered(&before, &line) else { continue };
        for clause in clauses(&line) {
            let mut less = line.clone();
            less.replace_range(clause.clone(), "");
            if less.trim().is_empty() {
                continue;
            }
            tried += 1;
            if answered(&before, &less).is_ok_and(|rest| rest == whole)
                && !is_idle(&line[clause.clone()], &line)
            {
                idle.push(format!("`{}` of `{line}`", &line[clause]));
            }
        }
    }
    assert!(tried > 120, "only {tried} clauses");
    assert!(idle.is_empty(), "{}", idle.join("\n"));
}

#[test]
fn a_clause_of_another_question_is_refused_at_its_place_or_used() {
    const OTHERS: [&str; 26] = [
        "rpm 300",
        "play 0.1mm..0.3mm",
        "blind",
        "seed 7",
        "runs 500",
        "running 0.03mm..0.1mm",
        "between 400mm",
        "rz 6um",
        "warm 60C",
        "overhang 5",
        "with bore gauge",
        "long 25mm",
        "hub steel",
        "shaft steel",
        "hole brass",
        "within 2um",
        "room 24C",
        "friction 0.1",
        "compound 29",
        "shrink",
        "all normal",
        "oil",
        "thin",
        "from 19mm",
        "for rough",
        "wibble",
    ];
    let (mut tried, mut ignored) = (0, Vec::new());
    for Typed { before, line } in harvested() {
        let Ok(whole) = answered(&before, &line) else { continue };
        for other in OTHERS {
            let more = format!("{line}, {other}");
            tried += 1;
            match answered(&before, &more) {
                Ok(answer) if answer == whole && !is_idle(other, &line) => {
                    ignored.push(format!("ignored: `{more}`"));
                }
                Err(problem)
                    if problem.choices.is_empty()
                        && problem.at.end <= line.len()
                        && !CLASHES.contains(&other) =>
                {
                    ignored.push(format!(
                        "elsewhere: `{more}`: {} at {:?}",
                        problem.message,
                        more.get(problem.at.clone())
                    ));
                }
                Ok(_) | Err(_) => {}
            }
        }
    }
    assert!(tried > 1000, "only {tried}");
    assert!(ignored.is_empty(), "{} of {tried}\n{}", ignored.len(), ignored.join("\n"));
}
