//! A job at the bench: its figures against those of the single queries, what a
//! reading changes, order and passing over, and its note on disk.
//!
//! Order of making, passing over and what a pressed bush closes in are worked
//! by hand from common practice, no source.

use std::{fs, path::Path};

use fits_core::job::whole::{First, Job};
use fits_repl::{
    note,
    render::{Colour, text::Text},
    session::Session,
};
use serde_json::Value;

fn feature(job: &Job, name: &str) -> usize {
    (0..job.features.len()).find(|at| job.full_name(*at) == name).unwrap_or_else(|| {
        panic!(
            "no {name}: {:?}",
            (0..job.features.len()).map(|at| job.full_name(at)).collect::<Vec<_>>()
        )
    })
}

/// The limits of a feature in millimetres, as text.
fn cut(job: &Job, name: &str) -> (String, String) {
    let (limits, _) = job.limits(feature(job, name)).expect("limits").expect("no error");
    (limits.lower().to_string(), limits.upper().to_string())
}

/// The limits that a plain query gives for one side of a pair.
fn alone(query: &str, side: &str) -> (String, String) {
    let mut session = Session::new();
    let answer = session.evaluate(query).unwrap_or_else(|error| panic!("{query}: {error:?}"));
    let answer: Value = serde_json::to_value(&answer).expect("JSON");
    let one = &answer[side];
    let text = |key: &str| {
        let mm = one[key].as_f64().unwrap_or_else(|| panic!("{query}: {answer}"));
        fits_checks::mm(mm).to_string()
    };
    (text("lower_mm"), text("upper_mm"))
}

/// A note, the feature, and the plain query with its side.
#[test]
fn the_figures_of_a_job_are_those_of_the_single_queries() {
    for (text, name, query, side) in [
        (
            "all inches\nshaft\n  journal .750 running in bush\nbush bronze\n  bore .750",
            "shaft journal",
            "3/4in running, hub bronze bushing",
            "shaft",
        ),
        (
            "all inches\nshaft\n  seat .875 press in gear\ngear cast iron\n  bore .875",
            "gear bore",
            "7/8in press, hub cast iron",
            "hole",
        ),
        (
            "all mm\nshaft\n- seat 20 f7 -> gear\ngear\n- bore 20 H7",
            "shaft seat",
            "20 H7/f7",
            "shaft",
        ),
        (
            "all mm\nshaft\n- seat 20 g6 -> gear\ngear\n- bore 20 H7\nReadings: gear bore = 20.013",
            "shaft seat",
            "20 H7/g6, hole = 20.013",
            "shaft",
        ),
        (
            "all inches\nshaft\n  journal .750 running in bush\nbush\n  bore .750\n10/4 bush bore in place .7508",
            "shaft journal",
            "3/4in running, hole = .7508in",
            "shaft",
        ),
        (
            "all inches\npin\n  od 3/8 press in frame\n10/4 pin od .3752",
            "frame bore",
            "3/8in press, shaft = .3752in",
            "hole",
        ),
        (
            "all mm\nplug\n- od 22 push in tube\ntube\n- bore 22",
            "plug od",
            "22mm push, thin tube",
            "shaft",
        ),
    ] {
        let job = note::read(text);
        assert_eq!(cut(&job, name), alone(query, side), "{text}\n{query}");
    }
}

/// 1 thou of interference on a hole of 0.9993 in: 1.0003 in.
#[test]
fn an_amount_said_is_kept_to() {
    let job = note::read(
        "all inches\nhousing\n  bore 1.000 press 1 thou on bush\nbush bronze\n  od 1.000\n10/4 housing bore .9993",
    );
    assert_eq!(cut(&job, "bush od"), ("25.40762 mm".into(), "25.40762 mm".into()));
}

/// Outside 1.0020 in a bore of 1.0000: 2 thou of interference, of which the
/// bore of .7515 closes in by 1.4 to 2 thou: .7495 to .7501 in; a shaft with 0.8
/// to 2.8 thou of clearance there is .7473 to .7487 in.
#[test]
fn a_bush_measured_before_pressing_is_counted_as_closed_in() {
    let job = note::read(
        "all inches\nshaft\n  journal .750 running in bush\nbush bronze\n  bore .750\n  od 1.000 press in housing\nhousing\n  bore 1.000\n10/4 bush od 1.0020\n10/4 housing bore 1.0000\n10/4 bush bore .7515",
    );
    let mate = job.mates_of(feature(&job, "shaft journal")).next().expect("a mate").1;
    let pair = job.pair(mate).expect("a pair").expect("no error");
    assert!(pair.closed_in, "{pair:?}");
    let limits = pair.shaft.limits.expect("limits");
    let (low, high) = (limits.lower().millimetres() / 25.4, limits.upper().millimetres() / 25.4);
    assert!((low - 0.7473).abs() < 1e-6 && (high - 0.7487).abs() < 1e-6, "{low} {high}");
}

#[test]
fn the_side_that_is_harder_to_hold_or_there_already_comes_first() {
    let first = |text: &str| {
        let job = note::read(text);
        let (at, why) = job.first(&job.mates[0]);
        (job.full_name(at), why)
    };
    let plain = "all inches\nshaft\n  seat .875 press in gear\ngear\n  bore .875";
    assert_eq!(first(plain), ("gear bore".into(), First::Hole));
    assert_eq!(
        first(&format!("{plain}\n10/4 shaft seat .8762")),
        ("shaft seat".into(), First::Measured)
    );
    let bought = "all mm\nscrew bought\n- shoulder 10, sliding in arm\narm\n- hole 10";
    assert_eq!(first(bought), ("screw shoulder".into(), First::Bought));
    let screw = "all inches\nscrew 1-1/4-5 acme\nnut bronze, make to match screw";
    assert_eq!(first(screw), ("screw thread".into(), First::Screw));
}

/// A gear of 3/4 in between a journal of 7/8 and a collar of 1 in reaches its
/// seat from neither end; with a plain end it does.
#[test]
fn a_part_must_pass_over_what_stands_before_its_seat() {
    let blocked = "all inches\nshaft\n  journal .875\n  gear seat .750 press in gear\n  boss 1.000\ngear\n  bore .750";
    assert_eq!(note::read(blocked).blocked().len(), 1);
    let free = "all inches\nshaft\n  journal .875\n  gear seat .750 press in gear\n  end .625\ngear\n  bore .750";
    assert!(note::read(free).blocked().is_empty());
    // The crests of a thread stand in the way too: 1 in over a bore of 3/4.
    let crests = "all inches\nshaft\n  journal .875\n  gear seat .750 press in gear\n  thread 1-8 UNC\ngear\n  bore .750";
    assert_eq!(note::read(crests).blocked().len(), 1);
}

#[test]
fn lengths_leave_the_end_play_that_is_wanted_or_not() {
    let note_of = |shoulders: &str| {
        format!(
            "all inches\nhousing\n  inside to inside 9.375\nshaft\n  between shoulders {shoulders}\nend play .005 to .015"
        )
    };
    let play = |text: &str| note::read(text).end_play().expect("both lengths");
    let good = play(&note_of("9.365"));
    assert_eq!((good.left.to_string(), good.is_met), ("0.254 mm".into(), Some(true)));
    assert_eq!(play(&note_of("9.340")).is_met, Some(false));
}

/// A pin between a hole of .3752 and one of .3738 cannot run in one and press
/// in the other as a pin of one size.
#[test]
fn joints_that_cannot_both_be_met_are_named() {
    let text = "all inches\npin\n  od .375 press in frame\nroller\n  hole .375 running on pin\nframe\n  bore .375\n10/4 frame bore .3762\n10/4 roller hole .3751";
    let job = note::read(text);
    let conflicts = job.conflicts();
    assert_eq!(conflicts.len(), 1, "{conflicts:?}");
    assert_eq!(job.full_name(conflicts[0].feature), "pin od");
}

fn open(session: &mut Session, path: &Path) {
    session.today = Some(|| "2026-10-04".to_owned());
    session.evaluate(&format!("job open {}", path.display())).expect("it opens");
}

const SMALL: &str = "all inches\nshaft\n  journal .750 running in bush\nbush bronze\n  bore .750\n";

fn written(folder: &Path) -> std::path::PathBuf {
    let path = folder.join("small.job");
    fs::write(&path, SMALL).expect("written");
    path
}

#[test]
fn a_reading_at_the_prompt_is_appended_and_changes_its_mate() {
    let folder = tempfile::tempdir().expect("a folder");
    let path = written(folder.path());
    let mut session = Session::new();
    open(&mut session, &path);
    let answer = session.evaluate("bush bore = .7508").expect("it is taken");
    assert_eq!(
        fs::read_to_string(&path).expect("it"),
        format!("{SMALL}2026-10-04 bush bore = .7508\n")
    );
    let answer = serde_json::to_value(&answer).expect("JSON");
    let notes = answer["notes"].to_string();
    assert!(notes.contains("the shaft journal is now cut to 0.7480 to 0.7500 in"), "{notes}");
    assert_eq!(answer["next_feature"], "shaft journal");
    // A name that the job lacks and one typed wrong leave the note alone.
    for refused in ["bush outside = .75", "journal = 19.0 mmm"] {
        assert!(session.evaluate(refused).is_err(), "{refused}");
    }
    assert_eq!(fs::read_to_string(&path).expect("it").lines().count(), SMALL.lines().count() + 1);
}

#[test]
fn a_note_changed_in_the_editor_is_read_again_and_not_overwritten() {
    let folder = tempfile::tempdir().expect("a folder");
    let path = written(folder.path());
    let mut session = Session::new();
    open(&mut session, &path);
    let changed = format!("{SMALL}  od 1.000 press in housing\nhousing\n  bore 1.000");
    fs::write(&path, &changed).expect("written");
    let answer = serde_json::to_value(session.evaluate("housing bore = .9998").expect("taken"))
        .expect("JSON");
    assert!(answer["notes"].to_string().contains("was changed: read again"), "{answer}");
    assert_eq!(
        fs::read_to_string(&path).expect("it"),
        format!("{changed}\n2026-10-04 housing bore = .9998\n")
    );
}

#[test]
fn two_programs_write_to_one_note_and_no_reading_is_lost() {
    let folder = tempfile::tempdir().expect("a folder");
    let path = written(folder.path());
    std::thread::scope(|scope| {
        for _ in 0..2 {
            scope.spawn(|| {
                let mut session = Session::new();
                open(&mut session, &path);
                for count in 0..20 {
                    // Another may have read in between: then it is told, and typed again.
                    let entry = format!("bush bore = .75{:02}", count + 1);
                    while session.evaluate(&entry).is_err() {}
                }
            });
        }
    });
    let text = fs::read_to_string(&path).expect("it");
    assert!(text.starts_with(SMALL));
    assert_eq!(
        text.lines().filter(|line| line.starts_with("2026-10-04 bush bore = .75")).count(),
        40
    );
}

#[test]
fn a_note_that_cannot_be_read_or_written_is_said() {
    let folder = tempfile::tempdir().expect("a folder");
    let mut session = Session::new();
    let pipe = session.evaluate(&format!("job open {}/none.job", folder.path().display()));
    assert!(pipe.expect_err("a pipe").message.contains("at the prompt"));
    session.today = Some(|| "2026-10-04".to_owned());
    let missing = session.evaluate(&format!("job open {}/none.job", folder.path().display()));
    assert!(missing.expect_err("none").is_failure);
    assert!(session.evaluate("next").expect_err("none is open").advice.contains("job open"));
    let path = written(folder.path());
    open(&mut session, &path);
    fs::remove_file(&path).expect("removed");
    assert!(session.evaluate("bush bore = .7508").expect_err("gone").is_failure);
    assert!(!path.exists(), "nothing is put in its place");
}

/// The whole cider press is read, settled but for what its writer asks, and its
/// record is a table.
#[test]
fn the_cider_press_is_read_as_a_whole() {
    let path = fits_checks::project_file("fits-repl/examples/cider_press.job");
    let text = fs::read_to_string(path).expect("the example");
    let job = note::read(&text);
    assert!(job.questions.iter().all(|question| question.by_writer), "{:?}", job.questions);
    assert_eq!(job.parts.iter().filter(|part| part.count == Some(4)).count(), 3);
    let play = job.end_play().expect("its lengths");
    assert_eq!(play.is_met, Some(true));
    assert!(job.blocked().is_empty() && job.conflicts().is_empty());
    let page = note::page(&job, &text, "press.job");
    for said in [
        "FN2, press in housing bore",
        "LT1, push in handle tube bore",
        "READ 0.7503 in",
        "as wanted",
        "(`5/16-18 tap`)",
    ] {
        assert!(page.contains(said), "{said}: {page}");
    }
    let csv = note::csv(&job);
    let mut table = csv::Reader::from_reader(csv.as_bytes());
    assert_eq!(table.headers().expect("a header").len(), 15);
    assert!(table.records().all(|row| row.expect("a row").len() == 15));
}

/// The pass log of a feature: its end is the feature's reading, dated by the
/// clock passed in.
#[test]
fn the_end_of_a_pass_log_is_written_into_the_job() {
    let folder = tempfile::tempdir().expect("a folder");
    let path = written(folder.path());
    let mut session = Session::new();
    open(&mut session, &path);
    session.evaluate("units in").expect("inches");
    session.evaluate("bush bore = .7508").expect("the bush is there");
    let next = session.evaluate("next").expect("the journal");
    let page = {
        let settings = session.shown();
        Text { settings, colour: Colour::Off }.answer(&next)
    };
    // What it says to type is answered, and opens the log of that feature.
    let query = page.split("passes: `").nth(1).and_then(|rest| rest.split('`').next());
    let query = query.unwrap_or_else(|| panic!("no passes: {page}")).replace("\n  ", " ");
    let plan = serde_json::to_value(session.evaluate(&query).expect("a plan")).expect("JSON");
    assert!(plan.to_string().contains("it is the shaft journal"), "{plan}");
    session.evaluate("cut 0.75in = 0.7490in sure").expect("a pass");
    assert!(fs::read_to_string(&path).expect("it").ends_with(".7508\n"), "nothing before `done`");
    let done = serde_json::to_value(session.evaluate("done sure").expect("done")).expect("JSON");
    assert!(done["notes"].to_string().contains("written to"), "{done}");
    let text = fs::read_to_string(&path).expect("it");
    assert!(text.ends_with("2026-10-04 shaft journal = 0.749in\n"), "{text}");
    let job = note::read(&text);
    let journal = &job.features[feature(&job, "shaft journal")];
    assert_eq!(journal.reading().expect("read").size, "0.749in".parse().expect("a size"));
}

/// Two features wait for the same size: which it was is asked, nothing is written.
#[test]
fn a_log_that_may_be_of_two_features_is_asked_about() {
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("two.job");
    let text = "all inches\nshaft\n  journal L .750\n  journal R .750\n";
    fs::write(&path, text).expect("written");
    let mut session = Session::new();
    open(&mut session, &path);
    session.evaluate("units in").expect("inches");
    session.evaluate("shaft 0.7484in..0.7492in from 0.8in").expect("a plan");
    session.evaluate("cut 0.75in = 0.7490in sure").expect("a pass");
    let done = serde_json::to_value(session.evaluate("done sure").expect("done")).expect("JSON");
    let notes = done["notes"].to_string();
    assert!(notes.contains("`shaft journal l = 0.749in` or `shaft journal r"), "{notes}");
    assert_eq!(fs::read_to_string(&path).expect("it"), text);
}
