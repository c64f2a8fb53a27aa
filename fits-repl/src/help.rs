//! Help, by topic: short texts and examples that work as they stand.

use crate::{
    answer::{HelpAnswer, HelpTopic},
    problem::Problem,
    query::Spot,
    questions::HELP,
    render::text::lines::wrapped,
    words::{
        clause::{self, Clause},
        near_miss,
    },
};

/// Every topic.
pub fn topics() -> impl Iterator<Item = &'static HelpTopic> {
    HELP.iter().flat_map(|of_one| of_one.iter())
}

/// The help on a topic, or the overview.
///
/// # Errors
/// No such topic; the problem names the nearest.
pub fn about(topic: Option<&Spot<String>>) -> Result<HelpAnswer, Problem> {
    let Some(spot) = topic else { return overview() };
    let wanted = spot.value.to_ascii_lowercase();
    if wanted == "help" {
        return overview();
    }
    if let Some(chapter) = wanted.strip_prefix("walk-through") {
        return walk_through(chapter.trim(), spot);
    }
    let named = topics().find(|help| {
        let singular = help.topic.strip_suffix('s').unwrap_or(help.topic);
        help.topic == wanted || singular == wanted
    });
    let also = || topics().find(|help| help.also.contains(&wanted.as_str()));
    if let Some(found) = named.or_else(also) {
        return Ok(found.answer());
    }
    let mut clauses = clause::named(&wanted).peekable();
    if let Some(Clause { word, .. }) = clauses.peek() {
        return Ok(HelpAnswer {
            topic: word,
            lines: clauses.map(Clause::line).collect(),
            examples: &[],
        });
    }
    let shown: String = wanted.chars().take(24).collect();
    let problem = Problem::new(format!("there is no help on `{shown}`"), spot.at.clone());
    Err(match topics().find(|help| near_miss(&wanted, help.topic)) {
        Some(near) if near.topic != "help" => problem.fix(spot.at.clone(), near.topic),
        _ => problem.advise("see `help`"),
    })
}

/// What to type, and every topic by its name.
fn overview() -> Result<HelpAnswer, Problem> {
    let mut help = topics()
        .find(|help| help.topic == "help")
        .map(HelpTopic::answer)
        .ok_or_else(|| Problem::new("there is no help", 0..0))?;
    let names: Vec<&str> =
        topics().map(|help| help.topic).filter(|topic| *topic != "help").collect();
    let mut said = String::new();
    wrapped(&mut said, "", &format!("Topics: {}.", names.join(", ")));
    wrapped(&mut said, "", "`help walk-through`: a whole machine, joint by joint.");
    help.lines.extend(said.lines().map(str::to_owned));
    Ok(help)
}

/// The walk-through: a heading opens each chapter with its name.
const GUIDE: &str = include_str!("../guide.md");

/// A chapter of the walk-through; without a name, what it is and its chapters.
fn walk_through(chapter: &str, spot: &Spot<String>) -> Result<HelpAnswer, Problem> {
    let (opening, rest) = GUIDE.split_once("\n## ").unwrap_or((GUIDE, ""));
    let chapters = rest.split("\n## ");
    let answer = |lines| Ok(HelpAnswer { topic: "walk-through", lines, examples: &[] });
    if chapter.is_empty() {
        let titles = chapters.filter_map(|text| text.lines().next()).map(str::to_owned);
        return answer(opening.lines().skip(2).map(str::to_owned).chain(titles).collect());
    }
    if let Some(text) = chapters.clone().find(|text| text.starts_with(&format!("{chapter}:"))) {
        let lines = text.lines().filter(|line| !line.starts_with("```"));
        return answer(lines.map(str::to_owned).collect());
    }
    let names = chapters.filter_map(|text| text.split(':').next());
    Err(Problem::new(format!("the walk-through has no chapter `{chapter}`"), spot.at.clone())
        .advise(format!("its chapters are {}", names.collect::<Vec<_>>().join(", "))))
}
