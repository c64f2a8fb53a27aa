//! What is said at a lathe reaches the answer that its plain query gives, is
//! asked back, or is refused: never read as something else.
//!
//! The phrases are lists written by several people, `tests/phrases/`: seen and
//! more are those the words were chosen by; american and british were written
//! afresh by people who had seen neither them nor the words, and were measured
//! before any word was chosen by them: 54 of 100 reached, 2 of 100 wrong. The
//! second pair of lists was measured so as well: american 58 of 100 reached and
//! 61 served, british 46 and 48; after the words of the british list the american
//! one stood at 63 and 69.
//!
//! What a phrase like one of these lists means is offered where nothing reads it
//! (`known.csv` is made from them), so how many of them are served is no measure of
//! phrases to come: that is what each list gave before it was added.

use fits_checks::project_file;
use fits_repl::{render::json, session::Session};
use proptest::prelude::*;
use serde_json::Value;

/// The figures that matter of each kind of answer.
fn key(answer: &str) -> &'static [&'static str] {
    match answer {
        "feature" => &["kind", "lower_mm", "upper_mm"],
        "fit" => {
            &["hole.lower_mm", "hole.upper_mm", "shaft.lower_mm", "shaft.upper_mm", "clearance"]
        }
        "reading" => &["reading_mm", "verdict", "lower_mm", "upper_mm"],
        "pair_reading" => &["actual_clearance_mm", "within"],
        "passes" => &["work", "start_mm", "feature.lower_mm", "feature.upper_mm"],
        "pass_log" => &["entries", "kind", "upper_mm", "lower_mm", "next.action"],
        "rehearsal" => &["strategies"],
        "ream" => &["reamer_min_mm", "reamer_max_mm"],
        "size" => &["size_mm"],
        "settings" => &["units", "dial", "instrument", "material", "graduation_mm"],
        "thread" => &["designation", "external", "internal"],
        "tap" => &["designation", "drill.mm", "percent"],
        "clearance_hole" => &["holes"],
        "wires" => &["wire_mm", "over_max_mm", "over_min_mm"],
        "over_wires" => &["over_mm", "pitch_diameter_mm"],
        "thread_passes" => &["side", "depth_mm"],
        "assembly" => &["interference_min_mm", "interference_max_mm", "pressure_mpa", "torque_n_m"],
        "bushing_fit" => &["shaft.lower_mm", "shaft.upper_mm", "bore_in_place", "clearance"],
        "fit_warm" => &["cold.min_mm", "cold.max_mm", "warm.min_mm", "warm.max_mm"],
        "stack" => &["worst", "last_part.aim_mm"],
        "pick" => &["wanted_min_mm", "wanted_max_mm"],
        "pick_grip" => &["candidates"],
        "general" | "seat_limits" => &["lower_mm", "upper_mm"],
        "drill" => &["exact", "under", "over"],
        "align" => &["set_over_mm", "toward"],
        "keyway" => &["width_mm", "shaft_mm"],
        "seat" | "bearing" => &["seats"],
        "grade" => &["grade", "tolerance_mm"],
        _ => &[],
    }
}

fn at<'a>(answer: &'a Value, path: &str) -> Option<&'a Value> {
    path.split('.').try_fold(answer, |value, key| {
        key.parse::<usize>().map_or_else(|_| value.get(key), |index| value.get(index))
    })
}

fn same(a: Option<&Value>, b: Option<&Value>) -> bool {
    match (a, b) {
        (Some(Value::Number(a)), Some(Value::Number(b))) => {
            let (a, b) = (a.as_f64().unwrap_or(f64::NAN), b.as_f64().unwrap_or(f64::NAN));
            (a - b).abs() <= 2e-5 + 1e-6 * b.abs()
        }
        (Some(Value::Array(a)), Some(Value::Array(b))) => {
            a.len() == b.len() && a.iter().zip(b).all(|(a, b)| same(Some(a), Some(b)))
        }
        (Some(Value::Object(a)), Some(Value::Object(b))) => a.keys().chain(b.keys()).all(|key| {
            ["query", "line", "names", "name", "label"].contains(&&**key)
                || same(a.get(key), b.get(key))
        }),
        (a, b) => a == b,
    }
}

/// The last answer of lines parted by ` ; `.
fn ask(units: &str, text: &str) -> Value {
    let mut session = Session::new();
    if units != "unset" {
        session.evaluate(&format!("units {units}")).expect("units");
    }
    let mut out = Vec::new();
    for line in text.split(" ; ") {
        out.clear();
        let answer = session.evaluate(line.trim());
        let mut beside = json::Beside::default();
        beside.read_as = session.read_as();
        json::object_with(&mut out, None, line, beside, &answer);
    }
    serde_json::from_slice(&out).expect("one object")
}

fn choices(answer: &Value) -> Vec<String> {
    let list = answer.pointer("/error/choices").and_then(Value::as_array);
    list.into_iter().flatten().filter_map(|choice| choice.as_str().map(str::to_owned)).collect()
}

fn alike(got: &Value, want: &Value) -> bool {
    let kind = want.get("answer").and_then(Value::as_str).unwrap_or_default();
    got.get("error").is_none()
        && got.get("answer") == want.get("answer")
        && key(kind).iter().all(|path| same(at(got, path), at(want, path)))
}

#[derive(Default, Debug)]
struct Count {
    all: u32,
    reached: u32,
    served: u32,
    wrong: Vec<String>,
}

fn rows(name: &str) -> Vec<csv::StringRecord> {
    let path = project_file(&format!("tests/phrases/{name}"));
    csv::ReaderBuilder::new()
        .flexible(true)
        .from_path(path)
        .expect(name)
        .records()
        .map(|row| row.expect(name))
        .collect()
}

fn count(name: &str) -> Count {
    let mut count = Count::default();
    for row in rows(name) {
        let (phrase, units, canonical) = (&row[0], &row[1], &row[2]);
        if canonical == "NONE" {
            continue;
        }
        let got = ask(units, phrase);
        let asked = choices(&got);
        if canonical == "ASK" {
            count.all += 1;
            if got.get("error").is_none() {
                count.wrong.push(format!("{phrase} [{units}]"));
            } else if asked.len() >= 2 {
                count.reached += 1;
                count.served += 1;
            }
            continue;
        }
        let want = ask(units, canonical);
        if want.get("error").is_some() {
            continue;
        }
        count.all += 1;
        if got.get("error").is_some() {
            let is_there = asked.iter().any(|choice| alike(&ask(units, choice), &want));
            count.served += u32::from(is_there);
        } else if alike(&got, &want) {
            count.reached += 1;
            count.served += 1;
        } else {
            count.wrong.push(format!("{phrase} [{units}]: {}", got["read_as"]));
        }
    }
    count
}

/// So many of a hundred are reached, and served, and at most so many are wrong.
#[track_caller]
fn holds(name: &str, reached: u32, served: u32, wrong: usize) {
    let count = count(name);
    assert!(count.wrong.len() <= wrong, "{name}: {:#?}", count.wrong);
    let share = |of: u32| 100 * of / count.all;
    assert!(share(count.reached) >= reached && share(count.served) >= served, "{name}: {count:?}");
}

#[test]
fn phrases_that_the_words_were_chosen_by() {
    holds("seen.csv", 93, 96, 0);
    // EN8 is a steel of its own here; the list takes 1045 for it.
    holds("more.csv", 93, 96, 1);
}

#[test]
fn phrases_written_afresh() {
    holds("american.csv", 75, 78, 3);
    holds("british.csv", 75, 76, 3);
    holds("american_2.csv", 84, 85, 0);
    holds("british_2.csv", 77, 80, 0);
    // A letter's or a number's drill is answered as a drill, not as its size; a joint
    // whose metal is not said is taken as steel.
    holds("spoken.csv", 40, 44, 3);
    holds("typed.csv", 62, 70, 5);
    // Before any word was chosen by it: 57 reached, 65 served, 3 wrong.
    holds("mixed.csv", 74, 78, 3);
    // The same of these two: 46 and 56 with 3 wrong, 45 and 60 with 3 wrong.
    holds("bench.csv", 92, 95, 0);
    holds("yard.csv", 62, 76, 1);
    // The same: 42 and 60 with 7 wrong, 67 and 76 with 5 wrong.
    holds("chatty.csv", 62, 78, 0);
    holds("american_3.csv", 68, 76, 3);
    // The same: 59 and 75 with 1 wrong.
    holds("mixed_2.csv", 64, 78, 1);
    // The same: 72 and 78 with 4 wrong, 72 and 83 with 1 wrong; of the last 76 and 88 with
    // 2 wrong before the words of the two before it, 82 and 94 with 1 wrong after them.
    // `tap drill 3/8` and `press fit 20` where no units were chosen are answered.
    holds("hurried.csv", 78, 84, 2);
    holds("toolroom.csv", 77, 84, 0);
    holds("millwright.csv", 84, 93, 1);
    // The same: 78 and 88 with 3 wrong. `bore 55 +0.03/-0` is a plan by its plain words.
    holds("fitter.csv", 81, 90, 2);
    // The same: 53 and 67 with 1 wrong (its writer takes a class that was turned to for
    // that part's limits), 65 and 76 with 2 wrong and 1 hazard (`20 push fit` is answered
    // in the millimetres that nothing denies). Two logs of the restorer's end as they are
    // meant, with each reading in a line of its own.
    holds("boatyard.csv", 66, 81, 1);
    holds("restorer.csv", 80, 88, 3);
    // The same: 56 and 61 with 1 wrong (a bearing's load was taken as normal), and of many
    // a bare sum is wanted; 76 and 80 with 1 wrong (a bush's bore was taken for its press).
    holds("toolmaker.csv", 63, 68, 0);
    holds("modeller.csv", 81, 87, 0);
    // The same: 63 and 71 with 4 wrong, 60 and 76 with 3 wrong; with what phrases alike
    // mean offered, which these lists were not among, 64 and 75 with 3, 60 and 79 with 3.
    // `1/2 g6 shaft`, then bare figures, are sizes; a bolt's thread is shown cut.
    holds("clockmaker.csv", 73, 86, 1);
    holds("farmer.csv", 66, 83, 2);
    // The same: 64 and 78 with 1 wrong and 1 hazard (a pipe's nominal size as its outside).
    // A hub whose metal is not said is taken as steel.
    holds("welder.csv", 68, 80, 1);
    // The same: 67 and 77 with 1 wrong (what is left, asked beside a log, shows the log).
    holds("instrument.csv", 67, 79, 1);
    // The same: 68 and 81 with 2 wrong, 51 and 64, 57 and 71 with 5 wrong, 54 and 66 with 1
    // wrong, 55 and 73 with 2 wrong. Dials that count the radius are taken for granted in
    // some logs, and of many a bare sum is wanted.
    holds("motorbike.csv", 71, 83, 2);
    holds("teacher.csv", 60, 75, 0);
    holds("printer.csv", 71, 86, 1);
    holds("hydraulic.csv", 62, 79, 0);
    holds("sawmill.csv", 61, 80, 1);
    // The same: 72 and 80 with 3 wrong, 56 and 81 with 1 wrong and 1 hazard (half a
    // millimetre for half an inch). A bush whose metal is not said is taken as bronze.
    holds("liftman.csv", 71, 79, 1);
    holds("framebuilder.csv", 57, 83, 0);
    // Nine hands who had seen the shared list and wrote of the same topics in their own
    // words, measured before any word was chosen by them: 87 and 95 with 1 wrong, 82 and
    // 89 with 2, 76 and 89, 82 and 89 with 4, 81 and 93 with 2, 91 and 96 with 1; and three
    // who cut their words short: 68 and 78 with 3, 38 and 72, 59 and 80 with 2. Most of the
    // wrong were advice of a log after a line that was refused: such advice waits now.
    holds("brewer.csv", 88, 97, 0);
    holds("garage.csv", 88, 93, 0);
    holds("orchard.csv", 77, 91, 1);
    holds("quarry.csv", 88, 92, 0);
    holds("tannery.csv", 80, 91, 0);
    holds("ferry.csv", 88, 93, 0);
    holds("smithy.csv", 73, 85, 1);
    holds("apprentice.csv", 76, 85, 1);
    holds("pumphouse.csv", 69, 84, 2);
    // Three more after words were chosen by those: 68 and 81 with 3 wrong and 2 hazards (a
    // press that aint one, and one that is to spin), 73 and 82 with 2 and 1, 77 and 89 with 1.
    holds("foundry.csv", 68, 81, 3);
    holds("canal.csv", 71, 80, 2);
    holds("joinery.csv", 74, 86, 1);
    // Eight more: 67 and 90, 76 and 86 with 3 wrong, 78 and 94 with 1 hazard (a rusty bore's
    // reading), 73 and 81 with 3; after words were chosen by these, 74 and 83 with 1 and 2
    // hazards, 84 and 89 with 4 and 2, 79 and 91 with 2 and 1, 81 and 91 with 1 and 1. `how
    // hot` is a shrink fit's question here. A letter alone is a size, `easy running` a free
    // running fit, and a bar of steel is weighed as steel.
    holds("locksmith.csv", 82, 96, 0);
    holds("organ.csv", 91, 96, 2);
    holds("tractor.csv", 93, 100, 0);
    holds("tram.csv", 91, 93, 3);
    holds("glider.csv", 83, 89, 1);
    holds("fairground.csv", 87, 92, 3);
    holds("dairy.csv", 89, 97, 0);
    holds("piano.csv", 89, 97, 0);
    // Four more: 88 and 92 with 1 wrong, 82 and 92, 72 and 90 with 1 hazard (a bore worn to
    // about so much), 79 and 85 with 1 hazard (a press class that must come apart by hand).
    holds("station.csv", 92, 97, 1);
    holds("letterpress.csv", 90, 98, 0);
    holds("telescope.csv", 83, 96, 0);
    holds("windmill.csv", 87, 88, 0);
    // After words were chosen by most of these: 92 and 97, 83 and 92 with 1 wrong, 74 and 81
    // with 1 wrong (both: a hub that is heated is shrunk on here).
    holds("bellhanger.csv", 93, 97, 0);
    holds("labtech.csv", 87, 92, 1);
    holds("papermill.csv", 84, 91, 1);
}

/// Phrases of many topics whose answers were each looked at.
#[test]
fn phrases_of_our_own() {
    holds("own.csv", 100, 100, 0);
    // Idle talk, machines by name, other tongues' English; before it 45 and 74.
    holds("talk.csv", 82, 90, 0);
    // Four machinists' words for what they want; only what is answered.
    holds("four_hands.csv", 100, 100, 0);
}

/// Words turned round, sides and radii, numbers that are not sizes: asked or
/// refused, or read as what they mean.
#[test]
fn hazards_are_not_fallen_for() {
    let mut held = 0;
    let lists = [
        "hazards",
        "more_hazards",
        "hazards_american_2",
        "hazards_british_2",
        "hazards_spoken",
        "hazards_typed",
        "hazards_mixed",
        "hazards_bench",
        "hazards_yard",
        "hazards_chatty",
        "hazards_american_3",
        "hazards_talk",
        "hazards_mixed_2",
        "hazards_hurried",
        "hazards_toolroom",
        "hazards_millwright",
        "hazards_fitter",
        "hazards_boatyard",
        "hazards_restorer",
        "hazards_toolmaker",
        "hazards_modeller",
        "hazards_clockmaker",
        "hazards_farmer",
        "hazards_welder",
        "hazards_instrument",
        "hazards_motorbike",
        "hazards_teacher",
        "hazards_printer",
        "hazards_hydraulic",
        "hazards_sawmill",
        "hazards_liftman",
        "hazards_framebuilder",
        "hazards_brewer",
        "hazards_garage",
        "hazards_orchard",
        "hazards_quarry",
        "hazards_tannery",
        "hazards_ferry",
        "hazards_smithy",
        "hazards_apprentice",
        "hazards_pumphouse",
        "hazards_foundry",
        "hazards_canal",
        "hazards_joinery",
        "hazards_organ",
        "hazards_tractor",
        "hazards_locksmith",
        "hazards_tram",
        "hazards_glider",
        "hazards_fairground",
        "hazards_dairy",
        "hazards_piano",
        "hazards_station",
        "hazards_letterpress",
        "hazards_telescope",
        "hazards_windmill",
        "hazards_bellhanger",
        "hazards_labtech",
        "hazards_papermill",
    ];
    for row in lists.iter().flat_map(|name| rows(&format!("{name}.csv"))) {
        let (phrase, units, never) = (&row[0], &row[1], &row[2]);
        let got = ask(units, phrase);
        if got.get("error").is_none() {
            assert_ne!(never, "any", "{phrase}: {got}");
            let (path, value) = never.split_once(':').expect("a field and a value");
            let have = at(&got, path);
            let hit = match (have.and_then(Value::as_f64), value.parse::<f64>()) {
                (Some(have), Ok(value)) => (have - value).abs() < 0.005,
                _ => have.and_then(Value::as_str) == Some(value),
            };
            assert!(!hit, "{phrase}: {got}");
        }
        held += 1;
    }
    assert!(held > 450, "{held}");
}

/// How a phrase was read gives the same answer when it is typed.
#[test]
fn what_it_was_read_as_gives_the_same_answer() {
    let mut read = 0;
    for name in [
        "seen.csv",
        "more.csv",
        "american.csv",
        "british.csv",
        "american_2.csv",
        "british_2.csv",
        "spoken.csv",
        "typed.csv",
        "mixed.csv",
        "bench.csv",
        "yard.csv",
        "chatty.csv",
        "american_3.csv",
        "hurried.csv",
        "toolroom.csv",
        "millwright.csv",
        "fitter.csv",
        "boatyard.csv",
        "restorer.csv",
        "toolmaker.csv",
        "modeller.csv",
        "clockmaker.csv",
        "farmer.csv",
        "welder.csv",
        "instrument.csv",
        "motorbike.csv",
        "teacher.csv",
        "printer.csv",
        "hydraulic.csv",
        "sawmill.csv",
        "liftman.csv",
        "framebuilder.csv",
        "brewer.csv",
        "garage.csv",
        "orchard.csv",
        "quarry.csv",
        "tannery.csv",
        "ferry.csv",
        "smithy.csv",
        "apprentice.csv",
        "pumphouse.csv",
        "foundry.csv",
        "canal.csv",
        "joinery.csv",
        "organ.csv",
        "tractor.csv",
        "locksmith.csv",
        "tram.csv",
        "glider.csv",
        "fairground.csv",
        "dairy.csv",
        "piano.csv",
        "station.csv",
        "letterpress.csv",
        "telescope.csv",
        "windmill.csv",
        "bellhanger.csv",
        "labtech.csv",
        "papermill.csv",
        "four_hands.csv",
        "talk.csv",
        "own.csv",
    ] {
        for row in rows(name) {
            let (phrase, units) = (&row[0], &row[1]);
            if phrase.contains(" ; ") {
                continue;
            }
            let got = ask(units, phrase);
            if let Some(plain) = got.get("read_as").and_then(Value::as_str) {
                read += 1;
                let mut again = ask(units, plain);
                assert!(again.get("read_as").is_none(), "{phrase}: `{plain}` is not a plain query");
                let mut got = got.clone();
                for answer in [&mut got, &mut again] {
                    let fields = answer.as_object_mut().expect("an object");
                    fields.remove("query");
                    fields.remove("read_as");
                }
                assert_eq!(got, again, "{phrase}: `{plain}`");
            }
            for choice in choices(&got) {
                assert!(ask(units, &choice).get("error").is_none(), "{phrase}: `{choice}`");
            }
        }
    }
    assert!(read > 500, "{read}");
}

/// A word that nobody knows is refused wherever it stands.
#[test]
fn a_stray_word_is_never_dropped() {
    for phrase in [
        "press fit for a .750 pin",
        "3/4 H7 reads .7505",
        "what drill for a 10-32 tap",
        "bore 3/4 H7 from .735",
        "hole came out .7515, slip shaft",
        "reamer for 3/4 H7",
        "close clearance drill for 10-32",
    ] {
        assert!(ask("in", phrase).get("error").is_none(), "{phrase}");
        let words: Vec<_> = phrase.split(' ').collect();
        for at in 0..=words.len() {
            let mut with = words.clone();
            with.insert(at, "zorgle");
            let with = with.join(" ");
            assert!(ask("in", &with).get("error").is_some(), "{with}");
        }
    }
}

/// The order of what is said changes nothing.
#[test]
fn any_order() {
    for (phrases, plain) in [
        (
            &["press 3/4", "3/4 press fit", "a press fit at 3/4", "fit press, 3/4"][..],
            "3/4in press",
        ),
        (&["H7/g6 20mm", "20mm H7 g6", "g6/H7 20mm", "fit of 20mm to H7/g6"][..], "20mm H7/g6"),
        (&["RC3 3/4", "3/4 RC3", "rc 3 on 3/4"][..], "3/4in RC3"),
        (&["#7 drill", "drill #7", "no 7 drill", "what size is a number 7 drill"][..], "drill #7"),
        (&["reamer for 3/4 H7", "3/4 H7 reamer", "H7 reamer 3/4"][..], "ream 3/4in H7"),
    ] {
        for phrase in phrases {
            let (got, want) = (ask("unset", phrase), ask("unset", plain));
            assert!(alike(&got, &want), "{phrase}: {got}");
        }
    }
}

/// A written unit, a fraction, an inch class: the bare numbers beside them.
#[test]
fn units_by_what_stands_beside() {
    for (units, phrase, plain) in [
        ("mm", "3/4 press", "3/4in press"),
        ("mm", "3/4 RC4", "3/4in RC4"),
        ("mm", ".750 RC4", "0.750in RC4"),
        ("unset", "1-1/4", "1-1/4in"),
        ("mm", "7/8 + 3/32", "7/8in + 3/32in"),
        ("in", "hole 20.013mm to suit, slip", "hole 20.013mm, slip"),
        ("unset", "M8 tap drill", "M8 tap"),
    ] {
        let (got, want) = (ask(units, phrase), ask(units, plain));
        assert!(alike(&got, &want), "{phrase}: {got}");
    }
    for (units, phrase) in [
        ("in", "30 H7"),
        ("in", "bore 30 H7 from 29.2"),
        ("unset", "2 press"),
        ("unset", "drill 6"),
    ] {
        assert!(choices(&ask(units, phrase)).len() >= 2, "{phrase}: {}", ask(units, phrase));
    }
}

/// The end of a line that asks for one of the answer's figures is no more than that; what
/// says how tight, or how warm, is.
#[test]
fn what_a_line_asks_at_its_end() {
    for (units, phrase, plain) in [
        ("mm", "10 H7/p6, whats the squeeze", "10 H7/p6"),
        ("mm", "12 h6 arbor mics 11.996, okay or start over", "12mm h6 = 11.996mm"),
        ("in", "3/8 H7 mics .3753 is it in", "3/8in H7 = 0.3753in"),
        (
            "in",
            "3/4 RC4 spindle, steel in bronze, at 130 F. Does it bind?",
            "3/4in RC4 warm 130F, hole bronze, shaft steel",
        ),
    ] {
        let got = ask(units, phrase);
        assert_eq!(got["read_as"], plain, "{phrase}: {got}");
    }
    // No answer tells what these ask, or their end says more than it asks.
    for phrase in ["20 H7, will it bind", "20 H7/g6, any play when hot", "20 H7 pin, how many tons"]
    {
        assert!(ask("mm", phrase).get("error").is_some(), "{phrase}: {}", ask("mm", phrase));
    }
}

/// What a word leaves open, or turns round, is asked.
#[test]
fn what_a_part_is_of_and_does_is_asked() {
    for (units, phrase) in [
        ("mm", "30 shaft 0.03 over in split hub 60 od 35 long steel, force"),
        ("in", "30mm shaft .0012 over in hub 60mm od 35mm long steel, force"),
        ("mm", "30 shaft in 60 od cast hub 40 long, 0.025 tight, force"),
        ("mm", "press 12mm but it must come out again by hand"),
        ("mm", "25 H7/p6 but must come apart by hand"),
        ("in", "1/2 pin"),
        ("in", "single pt 1-12 shaft nut thread"),
    ] {
        assert!(choices(&ask(units, phrase)).len() >= 2, "{phrase}: {}", ask(units, phrase));
    }
    // A bush's outside is never its hub's.
    let got = ask("in", "oilite 1-1/2 bore 2 od 2 long, pressed in steel");
    assert_eq!(got["read_as"], "bushing 1-1/2in od 2in long 2in, hub steel, sintered bronze");
    let got = ask("in", "old bush is .5018 in the bore, journal to run in it");
    assert_eq!(got["read_as"], "hole 0.5018in, running", "{got}");
    let got = ask("in", "2-24 thread, single pointed with compound at 29.5 deg, total infeed");
    assert_eq!(got["read_as"], "2-24 cut compound 29.5", "{got}");
}

/// A slip of typing is understood and shown; two that it could be are not.
#[test]
fn slips_of_typing() {
    let got = ask("unset", "20mm slidng fit");
    assert_eq!(got["read_as"], "20mm sliding", "{got}");
    assert!(ask("unset", "20mm slag fit").get("error").is_some());
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(300))]

    /// Whatever words of the shop stand together, nothing fails but by a message.
    #[test]
    fn words_in_any_mixture_are_answered_or_refused(
        words in proptest::collection::vec(prop_oneof![
            "press", "slip", "fit", "hole", "shaft", "hub", "bushing", "od", "id", "long", "wall",
            "steel", "brass", "in", "for", "a", "with", "mic", "reads", "now", "from", "bore", "turn",
            "tap", "drill", "H7", "g6", "RC4", "3/4", ".7505", "20", "20.013", "1/4-20", "M8", "tight",
            "\\.001", "\\+\\.001 -0", "washer", "end play", "took", "not", "per side", ",", "thou", "mm",
        ], 1..9),
    ) {
        let line = words.join(" ");
        for units in ["unset", "in", "mm"] {
            let got = ask(units, &line);
            prop_assert!(got.get("answer").is_some() || got.get("error").is_some());
            if let Some(plain) = got.get("read_as").and_then(Value::as_str) {
                prop_assert!(ask(units, plain).get("error").is_none(), "{}: `{}`", line, plain);
            }
        }
    }
}
