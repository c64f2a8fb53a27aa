//! Every example in the help is answered, and every page fits the screen.

use fits_repl::{
    answer::{Answer, SettingsAnswer},
    help::{self, topics},
    query::{Dial, Units},
    render::{Colour, text::Text},
    session::Session,
};

const PLAIN: Text = Text {
    settings: SettingsAnswer { units: Units::Millimetres, dial: Dial::Diameter },
    colour: Colour::Off,
};

#[test]
fn every_example_is_answered() {
    let mut count = 0;
    for topic in topics() {
        assert!(!topic.examples.is_empty(), "help {}: no example", topic.topic);
        for units in ["", "units mm", "units in"] {
            // A topic's examples may build on one another.
            let mut session = Session::new();
            if !units.is_empty() {
                session.evaluate(units).expect("units");
            }
            for (query, gives) in topic.examples {
                let answer = session.evaluate(query);
                let topic = topic.topic;
                assert!(answer.is_ok(), "{units}, help {topic}: `{query}`: {answer:?}");
                assert!(!gives.is_empty());
                count += 1;
            }
        }
    }
    assert!(count >= 90, "only {count} examples");
}

#[test]
fn every_topic_is_found_and_named_in_the_overview() {
    let overview = help::about(None).expect("an overview").lines.join(" ");
    for topic in topics() {
        let answer = Session::new().evaluate(&format!("help {}", topic.topic));
        let Ok(Answer::Help(help)) = answer else { panic!("help {}: {answer:?}", topic.topic) };
        assert_eq!(help.topic, topic.topic);
        assert!(
            topic.topic == "help" || overview.contains(topic.topic),
            "{} is not named",
            topic.topic
        );
    }
}

#[test]
fn a_word_of_a_question_is_explained() {
    let lines = |word: &str| match Session::new().evaluate(&format!("help {word}")) {
        Ok(Answer::Help(help)) => help.lines,
        other => panic!("{word}: {other:?}"),
    };
    assert_eq!(lines("rpm"), ["rpm N: how fast the shaft turns"]);
    assert_eq!(lines("safe"), ["safe: nothing may yield"]);
    assert_eq!(lines("play"), lines("stack"), "a topic's own word goes before");
    let of_two = lines("interference");
    assert_eq!(of_two.len(), 2, "{of_two:?}");
}

#[test]
fn the_walk_through_is_shown_by_chapters() {
    let help = |topic: &str| match Session::new().evaluate(&format!("help walk-through{topic}")) {
        Ok(Answer::Help(help)) => help,
        other => panic!("{topic}: {other:?}"),
    };
    let contents = help("").lines;
    let chapters: Vec<&str> = contents
        .iter()
        .filter(|line| !line.starts_with('-'))
        .filter_map(|line| line.split_once(": "))
        .map(|it| it.0)
        .collect();
    assert_eq!(chapters, ["journal", "inches", "log", "threads", "joints", "pipe"], "{contents:?}");
    for chapter in chapters {
        let text = help(&format!(" {chapter}")).lines.join("\n");
        assert!(text.contains("$ fits ") && !text.contains("```"), "{chapter}");
    }
    let problem = Session::new().evaluate("help walk-through bearings").unwrap_err();
    assert_eq!(problem.at, 5..26);
    assert!(problem.advice.contains("journal, inches, log"), "{}", problem.advice);
}

#[track_caller]
fn fits_the_screen(what: &str, text: &str) {
    assert!(
        text.lines().count() <= 23,
        "{what}: {} lines and the prompt\n{text}",
        text.lines().count()
    );
    for line in text.lines() {
        assert!(line.chars().count() <= 80, "{what}: {} columns: {line}", line.chars().count());
    }
}

#[test]
fn answers_fit_eighty_columns_and_twenty_four_lines() {
    for topic in topics() {
        fits_the_screen(topic.topic, &PLAIN.answer(&Answer::Help(topic.answer())));
        // Where a figure comes from may take more than a screen.
        for (query, _) in topic.examples.iter().filter(|(query, _)| !query.starts_with("why")) {
            for setting in ["units mm", "units in", "dial radius"] {
                let mut session = Session::new();
                session.evaluate(setting).expect("a setting");
                if let Ok(answer) = session.evaluate(query) {
                    let text = Text { settings: session.shown(), colour: Colour::Off };
                    fits_the_screen(&format!("{setting}, {query}"), &text.answer(&answer));
                }
            }
        }
    }
    for query in [
        "0.5 H7/g6",
        "3150 H11/d11",
        "7.003in JS13/js13",
        "400 ZC7/zc7",
        "1 H01/h01",
        "250 A13/a13",
        "90 H7/k6",
        "bore 100 H11 from 40",
    ] {
        let answer = Session::new()
            .evaluate(query)
            .unwrap_or_else(|problem| panic!("{query}: {}", problem.message));
        fits_the_screen(query, &PLAIN.answer(&answer));
    }
}
