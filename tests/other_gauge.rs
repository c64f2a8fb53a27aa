//! An entry that was read with another gauge than the log's: its uncertainty
//! counts for that entry, what it is off by is its own, and the log goes on with
//! the gauge it began with.

use fits_checks::{ask, fits};
use fits_core::{
    Length, Limits,
    shop::adviser::{Adviser, Prior, Settings},
    standards::{instruments::Uncertainty, iso286::Feature},
};
use fits_repl::{
    render::{Colour, text::Text},
    session::Session,
};
use nalgebra::{DMatrix, DVector};
use serde_json::Value;

const BORE: &str = "bore 20 H7 from 19.6 with bore gauge";

fn um(count: f64) -> Length {
    #[allow(clippy::cast_possible_truncation, reason = "a few millimetres")]
    Length::from_tenth_nanometres((count * 1e4).round() as i64)
}

/// Generalised least squares (A. C. Aitken, Proc. R. Soc. Edinb. 55, 1935) of one
/// size from readings that share what their instrument is off by: the mean and its
/// standard deviation.
fn least_squares(readings: &[(f64, usize)], gauges: &[(f64, f64)]) -> (f64, f64) {
    let count = readings.len();
    let shared = DMatrix::from_fn(count, count, |row, column| {
        let ((_, one), (_, other)) = (readings[row], readings[column]);
        let (repeat, bias) = gauges[one];
        let same = if one == other { bias * bias } else { 0.0 };
        same + if row == column { repeat * repeat } else { 0.0 }
    });
    let weights = shared.try_inverse().expect("it has an inverse") * DVector::repeat(count, 1.0);
    let read = DVector::from_iterator(count, readings.iter().map(|one| one.0));
    (weights.dot(&read) / weights.sum(), (1.0 / weights.sum()).sqrt())
}

#[test]
fn readings_of_two_gauges_weigh_as_least_squares_has_it() {
    let limits = Limits::new(um(20_000.0), um(20_021.0)).expect("limits");
    let gauges = [(2.0, 3.0), (4.0, 1.0)];
    let [own, other] =
        gauges.map(|(repeat, bias)| Uncertainty { repeat: um(repeat), bias: um(bias) });
    let prior = Prior {
        gain: 0.97,
        gain_sd: 0.04,
        offset: Length::ZERO,
        offset_sd: um(6.0),
        scatter: um(2.0),
    };
    // The first is the start; back to the first gauge, and to the second once more.
    let readings =
        [(19_600.0, 0), (19_607.0, 1), (19_603.0, 1), (19_598.0, 0), (19_604.0, 1), (19_601.0, 0)];
    let mut adviser =
        Adviser::new(limits, Feature::Hole, um(readings[0].0), prior, own, Settings::default())
            .expect("sensible");
    for upto in 1..readings.len() {
        let (size, gauge) = readings[upto];
        adviser.take_up([own, other][gauge]).expect("sensible");
        adviser.read(&[um(size)]).expect("in range");
        let known = adviser.estimate().expect("in range");
        let (mean, sd) = least_squares(&readings[..=upto], &gauges);
        assert!((known.size.in_um() - mean).abs() < 1e-3, "{upto}: {known:?}, {mean}");
        assert!((known.size_sd.in_um() - sd).abs() < 1e-3, "{upto}: {known:?}, {sd}");
    }
    assert!(adviser.take_up(Uncertainty { repeat: um(-1.0), bias: um(0.0) }).is_err());
}

trait Micrometres {
    fn in_um(self) -> f64;
}

impl Micrometres for Length {
    fn in_um(self) -> f64 {
        self.millimetres() * 1e3
    }
}

fn after(lines: &[&str]) -> (Session, Value) {
    let mut session = Session::new();
    let mut last = Value::Null;
    for line in lines {
        last = ask(&mut session, line);
        assert_eq!(last.get("error"), None, "{line}: {last}");
    }
    (session, last)
}

#[test]
fn the_gauge_of_an_entry_counts_for_that_entry() {
    const PASS: &str = "cut 0.25 = 19.842";
    let sd = |log: &Value| log["size_sd_mm"].as_f64().expect("known");
    let (_, own) = after(&[BORE, PASS]);
    let (mut session, poor) = after(&[BORE, "cut 0.25 = 19.842 with telescoping gauge"]);
    assert!(sd(&poor) > sd(&own) * 1.2, "{poor}");
    assert_eq!(poor["entries"][0]["instrument"], "telescoping gauge");
    assert_eq!(own["entries"][0].get("instrument"), None, "{own}");
    // The log keeps its own: the next entry is read with it.
    assert_eq!(poor["instrument"], "bore gauge");
    let next = ask(&mut session, "read 19.842");
    assert_eq!(next["entries"][1].get("instrument"), None, "{next}");
    assert!(sd(&next) < sd(&poor), "{next}");
    let answer = session.evaluate("log").expect("the log");
    let text = Text { settings: session.shown(), colour: Colour::Off }.answer(&answer);
    assert!(text.contains("\n             read with telescoping gauge\n"), "{text}");
    // Its own gauge named is no other.
    let (_, same) = after(&[BORE, "cut 0.25 = 19.842 with bore gauge"]);
    assert_eq!((&same["entries"], &same["next"]), (&own["entries"], &own["next"]));
}

#[test]
fn it_is_said_in_any_order_and_in_the_words_of_the_shop() {
    let told = |line: &str| after(&[BORE, line]).1["entries"].clone();
    let want = told("cut 0.25 = 19.842 with telescoping gauge");
    for line in [
        "cut 0.25 = 19.842 with telescoping gauge sure",
        "cut 0.25 = 19.842, with telescoping gauge",
        "took 0.25, now 19.842 with the telescoping gauge",
        "cut 0.25 and it measures 19.842 by telescoping gauge",
    ] {
        assert_eq!(told(line), want, "{line}");
    }
    let warm = told("cut 0.25 = 19.842 at 20C steel with telescoping gauge");
    assert_eq!(warm, told("cut 0.25 = 19.842 with telescoping gauge at 20C steel"));
    assert_eq!(warm[0]["instrument"], "telescoping gauge");
    let places = told("cut 0.25 = 19.842 front 19.844 back with telescoping gauge");
    assert_eq!(places[0]["instrument"], "telescoping gauge", "{places}");
    let again = after(&[BORE, "cut 0.25", "read 19.842 with telescoping gauge"]).1;
    // It stands in the row of its cut.
    assert_eq!(again["entries"][0]["instrument"], "telescoping gauge", "{again}");
}

#[test]
fn what_cannot_be_read_so_is_refused_at_its_place() {
    for (line, message, at) in [
        ("cut 0.25 with bore gauge", "an instrument belongs to a reading, and there is none", 9),
        ("read 19.6 with", "the instrument is missing after `with`", 14),
        (
            "read 19.6 with bore gauge and telescoping gauge",
            "one entry is read with one instrument",
            10,
        ),
        (
            "read 19.6 with bore gauge with telescoping gauge",
            "one entry is read with one instrument",
            26,
        ),
    ] {
        let (mut session, _) = after(&[BORE]);
        let problem = session.evaluate(line).expect_err(line);
        assert_eq!((problem.message.as_str(), problem.at.start), (message, at), "{line}");
        assert_eq!(ask(&mut session, "log")["entries"].as_array().map(Vec::len), Some(0));
    }
    // No micrometer goes into a bore.
    let (mut session, _) = after(&[BORE]);
    let line = "cut 0.25 = 19.842 with mic";
    let problem = session.evaluate(line).expect_err(line);
    assert_eq!(problem.at, 23..26, "{problem:?}");
    assert_eq!(ask(&mut session, "log")["entries"].as_array().map(Vec::len), Some(0));
}

#[test]
fn it_stands_in_the_file() {
    let folder = tempfile::tempdir().expect("a folder");
    let file = folder.path().join("bore.log");
    let run = |query: &str| -> Value {
        let mut command = fits();
        let out =
            command.arg("--json").arg("--log").arg(&file).arg(query).output().expect("it runs");
        serde_json::from_slice(&out.stdout).unwrap_or_else(|error| {
            panic!("{query}: {error}: {}", String::from_utf8_lossy(&out.stderr))
        })
    };
    run(BORE);
    let told = run("cut 0.25 = 19.842 with telescoping gauge");
    let again = run("log");
    assert_eq!(again["entries"][0]["instrument"], "telescoping gauge", "{again}");
    assert_eq!(again["size_sd_mm"], told["size_sd_mm"]);
    assert_eq!(again["entries"], told["entries"]);
}
