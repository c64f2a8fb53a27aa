//! The crib and the settings: what is there is used first, files are never
//! damaged, and what is damaged is said and left.

use std::{fs, path::Path, process::Stdio};

use fits_checks::{ask, fits, fits_of, takes};
use fits_repl::{
    Home,
    render::{Colour, text::Text},
    session::Session,
};
use serde_json::Value;

fn shop(tools: &[&str]) -> Session {
    let mut session = Session::new();
    for tool in tools {
        takes(&mut session, &format!("crib add {tool}"));
    }
    session
}

#[test]
fn the_reamer_in_the_drawer_by_what_it_cuts() {
    // 20 H7 is 20.000 to 20.021 mm.
    let mut own =
        shop(&["reamer 20 cuts 20.025", "reamer 20 cuts 20.012", "reamer 20", "drill 19.6"]);
    let ream = takes(&mut own, "ream 20 H7");
    let crib = &ream["crib"];
    assert_eq!(crib["reamers"].as_array().map(Vec::len), Some(2), "{crib}");
    assert_eq!(crib["reamers"][0]["cuts_mm"], 20.012);
    assert_eq!(crib["reamers"][1]["cuts_mm"], Value::Null);
    assert_eq!(crib["drill"]["name"], "19.6 mm");
    assert_eq!(crib["drill"]["leaves_mm"], 0.4);
    // 19.75 mm would leave less, and few own it.
    assert_eq!(ream["drill"], Value::Null);
    let mut larger = shop(&["drill 19.6", "drill 19.8"]);
    assert_eq!(takes(&mut larger, "ream 20 H7")["drill"]["name"], "19.75 mm");

    let mut wrong = shop(&["reamer 20 cuts 20.025", "reamer 18"]);
    let ream = takes(&mut wrong, "ream 20 H7");
    assert_eq!(ream["crib"]["reamers"], serde_json::json!([]));
    assert_eq!(ream["crib"]["nearest"]["cuts_mm"], 20.025);
    assert_eq!(ream["crib"]["drill"], Value::Null);
    assert_eq!(takes(&mut Session::new(), "ream 20 H7")["crib"], Value::Null);

    // 3/4 in H7 is 0.75 to 0.7508 in.
    let mut inch = shop(&["reamer 3/4in cuts 0.7504in", "reamer 0.7510in"]);
    let ream = takes(&mut inch, "ream 3/4in H7");
    assert_eq!(ream["crib"]["reamers"].as_array().map(Vec::len), Some(1));
    assert_eq!(ream["crib"]["reamers"][0]["size_mm"], 19.05);
}

#[test]
fn a_bore_begins_with_a_drill_of_the_crib() {
    let plain = takes(&mut Session::new(), "bore 20 H7");
    assert_eq!(plain["passes"][0]["drill_name"], "12.5 mm");
    assert_eq!(plain["drill_in_crib"], Value::Null);
    let mut own = shop(&["drill set metric 1..13 step 0.5", "drill set fraction 1/2in..3/4in"]);
    let plan = takes(&mut own, "bore 20 H7");
    assert_eq!(plan["passes"][0]["drill_name"], "47/64 in");
    assert_eq!(plan["drill_in_crib"], true);
    assert_eq!(plan["best_drill"], "18.75 mm");
    // None in reach: the standard one, and it is said.
    let plan = takes(&mut shop(&["drill 5"]), "bore 20 H7");
    assert_eq!(
        (&plan["passes"][0]["drill_name"], &plan["drill_in_crib"]),
        (&"12.5 mm".into(), &false.into())
    );
    // A bar that does not go into the bore is of no use.
    let mut stout = shop(&["bar 20 reach 80"]);
    let note = takes(&mut stout, "bore 20 H7 from 19.6")["notes"][0].clone();
    assert!(note.as_str().is_some_and(|note| note.contains("the smallest wants 20 mm")), "{note}");
    let wide = takes(&mut stout, "bore 30 H7 from 29.6");
    assert!(!wide["notes"].to_string().contains("boring bar"), "{wide}");
    // The same in a pair's own plan.
    assert_eq!(takes(&mut own, "20 H7/g6")["bore"]["passes"][0]["drill_name"], "47/64 in");
}

#[test]
fn the_drill_question_names_those_of_the_crib() {
    let mut own = shop(&["drill set metric 1..13 step 0.5", "drill #7"]);
    let near = takes(&mut own, "drill 0.2030in");
    assert_eq!(near["crib_drills"][0]["name"], "#7");
    assert_eq!(near["crib_drills"][1]["name"], "5.5 mm");
    assert_eq!(takes(&mut own, "drill 5.5")["crib_drills"].as_array().map(Vec::len), Some(1));
    assert_eq!(takes(&mut Session::new(), "drill 5.5")["crib_drills"], Value::Null);
    let text = |session: &mut Session, query: &str| {
        let answer = session.evaluate(query).expect(query);
        Text { settings: session.shown(), colour: Colour::Off }.answer(&answer)
    };
    assert!(text(&mut own, "drill 0.2030in").starts_with("  crib   #7 "));
    assert!(text(&mut own, "ream 20 H7").contains("crib  no reamer near this size"));
    // What a set holds has the set's own names.
    let mut fractions = shop(&["drill set fraction 1/4in..1/2in", "drill 1/2in"]);
    let shown = text(&mut fractions, "drill 12.7");
    assert!(shown.starts_with("  crib   1/2 in"), "{shown}");
}

#[test]
fn an_instrument_of_the_crib_measures_a_log() {
    let mut own = shop(&["instrument old faithful repeat 0.008 bias 0.004"]);
    takes(&mut own, "bore 20 H7 from 19.6 with old faithful");
    let log = takes(&mut own, "cut 0.2 = 19.79");
    assert_eq!(log["instrument"], "old faithful");
    let wide = log["size_sd_mm"].as_f64().expect("a deviation");
    let mut usual = Session::new();
    takes(&mut usual, "bore 20 H7 from 19.6 with bore gauge");
    let narrow = takes(&mut usual, "cut 0.2 = 19.79")["size_sd_mm"].as_f64().expect("a deviation");
    assert!(wide > narrow, "{wide} {narrow}");
}

#[test]
fn a_material_of_the_crib_is_pressed_as_its_figures_say() {
    let mut own = shop(&["material odd bronze modulus 105GPa poisson 0.34 yield 120MPa"]);
    let named =
        takes(&mut own, "assemble 30 interference 0.035, hub odd bronze od 62, shaft steel");
    let told =
        "assemble 30 interference 0.035, hub e 105GPa nu 0.34 yield 120MPa od 62, shaft steel";
    let figures = takes(&mut Session::new(), told);
    assert_eq!(named["pressure_mpa"], figures["pressure_mpa"]);
    assert!(named["pressure_mpa"].is_object(), "{named}");
    takes(&mut own, "material odd bronze");
    let mut bare = shop(&["material mystery yield 100MPa"]);
    let refused = ask(&mut bare, "assemble 30 interference 0.035, hub mystery od 62, shaft steel");
    assert_eq!(refused["error"]["message"], "the crib has no modulus of mystery");
}

#[test]
fn the_file_keeps_what_a_person_wrote() {
    let folder = tempfile::tempdir().expect("a folder");
    let file = folder.path().join("crib.toml");
    let text = "# my drawer\n\n[[reamer]] # the good one\nsize = \"3/4 in\"\nmaker = \"unknown\"\n\n[lathe]\nname = \"old\"\n";
    fs::write(&file, text).expect("written");
    let ask = |query: &str| {
        let output = fits().arg("--crib").arg(&file).args(["--json", query]).output();
        let output = output.expect("it runs");
        let said = String::from_utf8_lossy(&output.stderr).into_owned();
        (serde_json::from_slice::<Value>(&output.stdout).expect("JSON"), said)
    };
    let (answer, said) = ask("crib add reamer 20 cuts 20.012");
    assert!(answer["error"].is_null(), "{answer}");
    assert!(said.contains("line 3: `maker` is not understood in a reamer; it is kept"), "{said}");
    assert!(said.contains("`lathe` is not understood; it is kept"), "{said}");
    ask("crib add tap M10x1.25");
    ask("crib remove 2");
    let (answer, _) = ask("crib");
    assert_eq!(answer["list"].as_array().map(Vec::len), Some(2), "{answer}");
    assert_eq!(answer["crib"]["reamer"][0]["size"], "19.05 mm");
    let now = fs::read_to_string(&file).expect("the file");
    for kept in ["# my drawer", "# the good one", "maker = \"unknown\"", "[lathe]", "M10x1.25"] {
        assert!(now.contains(kept), "{kept}: {now}");
    }
    assert!(!now.contains("20.012"), "{now}");
    // Beside it stays only what two programs lock, and it is empty.
    let lock = folder.path().join(".crib.toml.lock");
    assert_eq!(fs::metadata(&lock).expect("the lock").len(), 0);
    assert_eq!(fs::read_dir(folder.path()).expect("the folder").count(), 2);
}

#[test]
fn tools_added_by_many_programs_at_once_are_all_kept() {
    let folder = tempfile::tempdir().expect("a folder");
    let file = folder.path().join("crib.toml");
    let adding: Vec<_> = (1..=40)
        .map(|size| {
            let mut command = fits();
            command.arg("--crib").arg(&file).args(["--json", &format!("crib add drill {size}")]);
            command.stdout(Stdio::null()).stderr(Stdio::null()).spawn().expect("it runs")
        })
        .collect();
    for mut child in adding {
        assert!(child.wait().expect("it ends").success());
    }
    let output = fits().arg("--crib").arg(&file).args(["--json", "crib"]).output();
    let answer: Value = serde_json::from_slice(&output.expect("it runs").stdout).expect("JSON");
    assert_eq!(answer["list"].as_array().map(Vec::len), Some(40), "{answer}");
}

#[test]
fn the_words_at_the_top_outlive_the_first_tool() {
    let folder = tempfile::tempdir().expect("a folder");
    let file = folder.path().join("crib.toml");
    let ask = |query: &str| {
        let output = fits().arg("--crib").arg(&file).args(["--json", query]).output();
        assert!(output.expect("it runs").status.success(), "{query}");
    };
    fs::write(&file, "# my drawer\n# in the shed\n[[drill]]\nsize = \"10 mm\"\n").expect("written");
    ask("crib add drill 12");
    ask("crib remove 1");
    let now = fs::read_to_string(&file).expect("the file");
    assert!(now.starts_with("# my drawer\n# in the shed\n"), "{now}");
    assert!(!now.contains("10 mm") && now.contains("12"), "{now}");
}

#[cfg(unix)]
#[test]
fn a_link_to_the_crib_stays_a_link() {
    let folder = tempfile::tempdir().expect("a folder");
    let (real, link) = (folder.path().join("real.toml"), folder.path().join("link.toml"));
    fs::write(&real, "# kept elsewhere\n").expect("written");
    std::os::unix::fs::symlink(&real, &link).expect("a link");
    let status = fits().arg("--crib").arg(&link).args(["crib", "add", "pin", "20mm"]).output();
    assert!(status.expect("it runs").status.success());
    assert!(fs::symlink_metadata(&link).expect("the link").is_symlink());
    let text = fs::read_to_string(&real).expect("the file");
    assert!(text.contains("# kept elsewhere") && text.contains("20 mm"), "{text}");
}

#[test]
fn a_damaged_crib_is_said_used_as_far_as_it_goes_and_left() {
    let folder = tempfile::tempdir().expect("a folder");
    let file = folder.path().join("crib.toml");
    let text = "[[reamer]]\nsize = \"20 mm\"\ncuts = \"20.012 mm\"\n\n[[drill]\nsize = \"5 mm\"\n";
    fs::write(&file, text).expect("written");
    let run = |query: &str| fits().arg("--crib").arg(&file).arg(query).output().expect("it runs");
    let output = run("ream 20 H7");
    let (out, said) =
        (String::from_utf8_lossy(&output.stdout), String::from_utf8_lossy(&output.stderr));
    assert!(out.contains("that cuts 20.012 mm"), "{out}");
    assert!(said.contains("line 5 cannot be read"), "{said}");
    let output = run("crib add pin 20");
    assert_eq!(output.status.code(), Some(3));
    let said = String::from_utf8_lossy(&output.stderr);
    assert!(said.contains("the crib is as it was:") && said.contains("is damaged"), "{said}");
    assert_eq!(fs::read_to_string(&file).expect("the file"), text);
}

/// Letter drills A to Z are 26, Q is the seventeenth (ASME B94.11M).
#[test]
fn letter_drills_are_kept_by_their_letters() {
    for (line, said) in [
        ("crib add drill set letter A..Z", "26 drills"),
        ("crib add drill set letter q .. a", "17 drills"),
        ("crib add drill set letter C…E", "3 drills"),
    ] {
        let answer = takes(&mut Session::new(), line);
        assert!(answer["changed"].as_str().is_some_and(|text| text.contains(said)), "{answer}");
    }
}

#[test]
fn bad_tools_are_refused() {
    let mut session = Session::new();
    for (query, message) in [
        ("crib add", "the kind of tool is missing"),
        ("crib add hammer", "a crib holds no `hammer`"),
        ("crib add reamer", "the size is missing"),
        ("crib add reamer 20 cuts 25", "a reamer cuts near its marked size"),
        ("crib add reamer 20 cuts 19.5", "a reamer cuts near its marked size"),
        ("crib add drill set letter A..", "the last letter of the set is missing"),
        (
            "crib add reamer 3/4in cuts 0.7504",
            "this number has no unit: the question is in inches, bare numbers are millimetres",
        ),
        ("crib add drill 0", "no tool measures 0 mm"),
        ("crib add drill set", "the series is missing after `set`"),
        ("crib add drill set imperial", "there is no drill set `imperial`"),
        ("crib add drill set metric 13..1 step 0.5", "that set has no drill in it"),
        ("crib add instrument gauge", "how its readings scatter is missing"),
        ("crib add material odd modulus 105N", "a force is not a pressure"),
        ("crib add material odd modulus 105", "a modulus needs its unit"),
        ("crib add material odd poisson 3", "no material has such a figure for its poisson"),
        ("crib remove 1", "the crib has no number 1"),
        ("crib remove reamer", "a tool is taken out by its number"),
        ("crib empty", "this is not done with a crib"),
    ] {
        assert_eq!(ask(&mut session, query)["error"]["message"], message, "{query}");
    }
    assert_eq!(takes(&mut session, "crib")["list"], serde_json::json!([]));
}

fn settings(home: &Path) -> (Session, Vec<String>) {
    let mut session = Session::new();
    let notes = session
        .use_own_settings(&Home { config: Some(home.to_owned()), data: Some(home.to_owned()) });
    (session, notes)
}

#[test]
fn settings_are_remembered_and_a_damaged_file_is_left() {
    let home = tempfile::tempdir().expect("a folder");
    let file = home.path().join("settings.toml");
    let (mut session, notes) = settings(home.path());
    assert!(notes.is_empty());
    for query in [
        "units in",
        "dial radius",
        "dial graduation 0.0005in",
        "instrument telescoping gauge",
        "material aluminium",
    ] {
        assert_eq!(takes(&mut session, query)["note"], "remembered", "{query}");
    }
    let (mut session, notes) = settings(home.path());
    assert!(notes.is_empty(), "{notes:?}");
    let kept = takes(&mut session, "units");
    for (field, value) in [
        ("units", Value::from("in")),
        ("dial", "radius".into()),
        ("graduation_mm", 0.0127.into()),
        ("instrument", "telescoping gauge".into()),
        ("material", "aluminium 6061-T6".into()),
    ] {
        assert_eq!(kept[field], value, "{field} of {kept}");
    }
    // A dial that reads the radius, divided in half thou: steps of a thou.
    takes(&mut session, "bore 1 H7 from 0.985");
    assert_eq!(takes(&mut session, "cut 0.005 = 0.9947")["step_mm"], 0.0254);

    let text = fs::read_to_string(&file).expect("the file") + "units = 3\n";
    fs::write(&file, &text).expect("damaged");
    let (mut session, notes) = settings(home.path());
    assert!(notes[0].contains("cannot be read"), "{notes:?}");
    assert!(notes[0].contains("line 7"), "{notes:?}");
    let note = takes(&mut session, "units in")["note"].clone();
    assert!(note.as_str().is_some_and(|note| note.starts_with("not remembered")), "{note}");
    assert_eq!(fs::read_to_string(&file).expect("the file"), text);
}

#[test]
fn programs_are_answered_alike_whatever_a_person_set() {
    let home = tempfile::tempdir().expect("a folder");
    let config = home.path().join("config").join("fits");
    fs::create_dir_all(&config).expect("a folder");
    fs::write(config.join("settings.toml"), "units = \"in\"\n").expect("written");
    fs::write(config.join("crib.toml"), "[[reamer]]\nsize = \"20 mm\"\ncuts = \"20.01 mm\"\n")
        .expect("written");
    let run = |arguments: &[&str]| {
        let output = fits_of(home.path()).args(arguments).output().expect("it runs");
        String::from_utf8(output.stdout).expect("text")
    };
    assert!(run(&["units"]).starts_with("units in"));
    assert!(run(&["--json", "units"]).contains("\"units\":\"mm\""));
    assert!(run(&["ream", "20mm", "H7"]).contains("that cuts 20.01"));
    assert!(run(&["--json", "ream 20 H7"]).contains("\"crib\""));
    let lines = home.path().join("lines");
    fs::write(&lines, "ream 20 H7\n").expect("written");
    let lines = lines.to_str().expect("a name");
    assert!(!run(&["batch", lines]).contains("\"crib\""));
    let crib = config.join("crib.toml");
    assert!(run(&["--crib", crib.to_str().expect("a name"), "batch", lines]).contains("\"crib\""));
}

/// 6.5 millionths per degree F is 11.7 per degree C: a bare figure at an inch
/// prompt is in inch units, as in a joint.
#[test]
fn a_material_is_read_in_the_units_in_force() {
    let mut session = Session::new();
    takes(&mut session, "units in");
    for entry in ["expansion 6.5", "expansion 6.5/F", "expansion 11.7/C"] {
        let added = takes(&mut session, &format!("crib add material odd modulus 30Mpsi {entry}"));
        assert!(added["list"].to_string().contains("11.7 um/mK"), "{entry}: {added}");
        takes(&mut session, "crib remove 1");
    }
}
