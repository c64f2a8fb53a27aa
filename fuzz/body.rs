//! What must hold for any bytes typed: no panic, one valid object a line,
//! limits in order, and an answer to every query in a hint.

use fits_repl::{batch, session::Session};
use serde_json::Value;

/// Lines of one input; more of them only take longer.
const MOST_LINES: usize = 12;

/// Answers the lines of an input in one session and checks every answer.
///
/// # Panics
/// A rule is broken.
pub(crate) fn check(input: &[u8]) {
    let mut session = Session::new();
    for line in input.split(|byte| *byte == b'\n').take(MOST_LINES) {
        // Long work is other checks' matter.
        let mut out = Vec::new();
        let mut line = line.to_vec();
        if String::from_utf8_lossy(&line).contains("rehearse") {
            continue;
        }
        line.push(b'\n');
        batch::run(&line[..], &mut out, &mut session).expect("memory takes it");
        let out = String::from_utf8(out).expect("text");
        let object = out.strip_suffix('\n').expect("a whole line");
        assert!(!object.contains('\n'), "more than one line: {out}");
        let answer: Value = serde_json::from_str(object).expect("valid JSON");
        assert!(answer.is_object(), "{answer}");
        in_order(&answer, &answer);
        let Some(hint) = answer["error"]["hint"].as_str() else { continue };
        // A backquote that was typed itself leaves no telling where one ends.
        if answer["query"].as_str().is_some_and(|query| query.contains('`')) {
            continue;
        }
        for query in hint.split('`').skip(1).step_by(2) {
            let mut answered = session.trial().evaluate(query);
            if answered.as_ref().is_err_and(|problem| problem.message == "no pass log is open") {
                // An entry is shown as it is typed once work is under way.
                let mut at_work = Session::new();
                at_work.evaluate("bore 20 H7 from 19.6").expect("it opens a log");
                if query.starts_with("read ") {
                    at_work.evaluate("cut 0.2 = 19.79").expect("a first cut");
                }
                answered = at_work.evaluate(query);
            }
            if let Err(problem) = answered {
                panic!("{answer}: `{query}` is not answered: {}", problem.message);
            }
        }
    }
}

/// Lower limits are at or below upper ones, wherever both stand.
fn in_order(value: &Value, whole: &Value) {
    for (low, high) in [("lower_mm", "upper_mm"), ("min_mm", "max_mm")] {
        if let (Some(low), Some(high)) =
            (value.get(low).and_then(Value::as_f64), value.get(high).and_then(Value::as_f64))
        {
            assert!(low <= high, "{low} is above {high}: {whole}");
        }
    }
    match value {
        Value::Array(values) => values.iter().for_each(|value| in_order(value, whole)),
        Value::Object(fields) => fields.values().for_each(|value| in_order(value, whole)),
        _ => {}
    }
}
