//! What holds for any text that is typed, whatever it is. The fuzzer and the
//! test that replays its findings share it.

use fits_repl::{
    batch,
    render::{Colour, json, svg, text::Text},
    session::Session,
};
use serde_json::Value;

/// Lines of one input that are looked at.
const LINES: usize = 20;

/// Types each line into one session: nothing panics, the answer is one JSON
/// object on one line, a refusal's place lies in the line, each query that a
/// hint offers is answered, and no lower limit stands above its upper one.
///
/// # Errors
/// What does not hold, with the line.
pub(crate) fn holds(data: &[u8]) -> Result<(), String> {
    let mut session = Session::new();
    for line in data.split(|byte| *byte == b'\n').take(LINES) {
        let unread;
        let (line, refused) = match std::str::from_utf8(line) {
            Ok(line) => (line, None),
            Err(error) => {
                let (problem, text) = batch::not_text(line, error);
                unread = text;
                (unread.as_str(), Some(problem))
            }
        };
        // A rehearsal takes as long as it is asked to.
        if line.to_lowercase().contains("rehearse") {
            continue;
        }
        let before = session.trial();
        let answer = refused.map_or_else(|| session.evaluate(line), Err);
        let mut out = Vec::new();
        json::object(&mut out, None, line, &answer);
        let fault = |what: String| Err(format!("{line:?}: {what}"));
        if out.contains(&b'\n') {
            return fault("the JSON has two lines".to_owned());
        }
        match serde_json::from_slice(&out) {
            Ok(Value::Object(fields)) => {
                in_order(&Value::Object(fields)).map_err(|what| format!("{line:?}: {what}"))?;
            }
            Ok(other) => return fault(format!("not an object: {other}")),
            Err(error) => return fault(format!("not JSON: {error}")),
        }
        let text = Text { settings: session.shown(), colour: Colour::Off };
        match &answer {
            Ok(answer) => {
                let _ = text.answer(answer);
                let _ = svg::picture(answer, session.shown());
            }
            Err(problem) => {
                let _ = text.problem(line, problem);
                if line.get(problem.at.clone()).is_none() {
                    return fault(format!("{:?} is not a place in it", problem.at));
                }
                // A backquote that was typed leaves no telling where one ends.
                let hint = if line.contains('`') { String::new() } else { problem.hint(line) };
                for query in hint.split('`').skip(1).step_by(2) {
                    let Err(again) = before.trial().evaluate(query) else { continue };
                    // An example of an entry needs a log that it fits, and one of
                    // a removal a crib that holds something.
                    let entries = ["cut ", "read ", "spring ", "undo", "log ", "crib remove "];
                    if !entries.iter().any(|entry| query.starts_with(entry)) {
                        return fault(format!("its hint offers `{query}`: {}", again.message));
                    }
                }
            }
        }
    }
    Ok(())
}

/// Each pair of limits in an answer, by their names.
fn in_order(value: &Value) -> Result<(), String> {
    match value {
        Value::Object(fields) => {
            for (name, low) in fields {
                let high = if let Some(stem) = name.strip_suffix("lower_mm") {
                    fields.get(&format!("{stem}upper_mm"))
                } else if let Some(stem) = name.strip_suffix("min_mm") {
                    fields.get(&format!("{stem}max_mm"))
                } else {
                    None
                };
                if let (Some(low), Some(high)) = (low.as_f64(), high.and_then(Value::as_f64))
                    && low > high
                {
                    return Err(format!("{name} is {low}, over {high}"));
                }
            }
            fields.values().try_for_each(in_order)
        }
        Value::Array(items) => items.iter().try_for_each(in_order),
        _ => Ok(()),
    }
}
