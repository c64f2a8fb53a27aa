//! The JSON Schema is what is written: every answer on record passes it by an
//! independent validator (the `jsonschema` crate, draft 2020-12), every field of
//! them is in it, and a key has one type everywhere.

use std::collections::{BTreeMap, BTreeSet};

use fits_checks::project_file;
use fits_repl::{batch, schema, session::Session};
use serde_json::Value;

const LISTS: [&str; 6] = ["readme", "help", "joints", "threads", "shop", "phrases"];

/// Every answer and error on record.
fn recorded() -> Vec<Value> {
    let mut all = Vec::new();
    for list in LISTS {
        let file = project_file(&format!("tests/frozen/{list}.answers"));
        let text = std::fs::read_to_string(file).expect("answers");
        let objects = text.lines().filter(|line| line.starts_with("{\"query\""));
        all.extend(objects.map(|line| serde_json::from_str::<Value>(line).expect("JSON")));
    }
    all
}

fn whole() -> Value {
    schema::schema(None).expect("the schema of every answer")
}

#[track_caller]
fn passes(validator: &jsonschema::Validator, answer: &Value) {
    let errors: Vec<String> =
        validator.iter_errors(answer).take(3).map(|error| error.to_string()).collect();
    assert!(errors.is_empty(), "{}: {errors:?}", answer["query"]);
}

fn drop_nulls(value: &mut Value) {
    match value {
        Value::Object(object) => {
            object.retain(|_, value| !value.is_null());
            object.values_mut().for_each(drop_nulls);
        }
        Value::Array(list) => list.iter_mut().for_each(drop_nulls),
        _ => {}
    }
}

#[test]
fn every_answer_on_record_is_as_the_schema_says() {
    let schema = whole();
    jsonschema::draft202012::meta::validate(&schema).expect("a JSON Schema");
    let validator = jsonschema::validator_for(&schema).expect("a schema");
    let answers = recorded();
    assert!(answers.len() > 3500, "{}", answers.len());
    for answer in &answers {
        passes(&validator, answer);
        // Null says the same as absent.
        let mut without = answer.clone();
        drop_nulls(&mut without);
        passes(&validator, &without);
    }
    // It refuses what is not an answer: a field that is missing, of another type
    // or of another answer, and a word that no enumeration holds.
    let fit = answers.iter().find(|answer| answer["answer"] == "fit").expect("a fit");
    for (field, value) in [
        ("nominal_mm", Value::Null),
        ("nominal_mm", "20 mm".into()),
        ("kind", "tight".into()),
        ("answer", "fits".into()),
        ("hole", Value::Null),
        ("query", 7.into()),
    ] {
        let mut wrong = fit.clone();
        wrong[field] = value;
        assert!(!validator.is_valid(&wrong), "{field}");
        wrong.as_object_mut().expect("an object").remove(field);
        assert!(!validator.is_valid(&wrong), "without {field}");
    }
}

/// Each answer passes the schema of its own kind too, and no other.
#[test]
fn one_kind_of_answer() {
    let mut of_kind: BTreeMap<String, Value> = BTreeMap::new();
    for answer in recorded() {
        if let Some(kind) = answer["answer"].as_str() {
            of_kind.entry(kind.to_owned()).or_insert(answer);
        }
    }
    let validators: Vec<_> = of_kind
        .keys()
        .map(|kind| {
            let schema = schema::schema(Some(kind)).unwrap_or_else(|error| panic!("{error}"));
            (kind, jsonschema::validator_for(&schema).expect("a schema"))
        })
        .collect();
    assert!(validators.len() > 25, "{}", validators.len());
    for (kind, validator) in &validators {
        for (other, answer) in &of_kind {
            assert_eq!(validator.is_valid(answer), *kind == other, "{kind} {other}");
        }
    }
    let error = schema::schema(Some("fits")).expect_err("no such answer");
    assert!(error.starts_with("no answer is `fits`: there are "), "{error}");
}

/// The lines of `fits job --json`: they pass the whole schema and their own, every key
/// of theirs is in it, and no answer passes for one of them.
#[test]
fn the_lines_of_a_job_are_as_the_schema_says() {
    let of_job = schema::schema(Some("job_line")).expect("the schema of a job's lines");
    jsonschema::draft202012::meta::validate(&of_job).expect("a JSON Schema");
    let [all, own] = [&whole(), &of_job].map(|it| jsonschema::validator_for(it).expect("a schema"));
    let mut known = BTreeSet::new();
    keys(&of_job, &of_job, &mut |key, _, _| {
        known.insert(key.to_owned());
    });
    let (mut count, mut met) = (0, BTreeSet::new());
    let folder = std::fs::read_dir(project_file("tests/jobs")).expect("a folder");
    let notes = folder.map(|file| file.expect("a file").path());
    for note in notes.filter(|file| file.extension().is_some_and(|it| it == "txt" || it == "job")) {
        let text = std::fs::read_to_string(&note).expect("a note");
        for line in fits_repl::note::json_lines(&fits_repl::note::read(&text)).lines() {
            let object: Value = serde_json::from_str(line).expect("JSON");
            for validator in [&all, &own] {
                let errors: Vec<_> =
                    validator.iter_errors(&object).map(|it| it.to_string()).collect();
                assert!(errors.is_empty(), "{}: {line}: {errors:?}", note.display());
            }
            fields("", &object, &mut met);
            count += 1;
            // It refuses what is no line of a job.
            for (field, value) in [
                ("query", Value::from("20 H7")),
                ("line", "1".into()),
                ("note_line", Value::from(1.5)),
                ("side", "left".into()),
            ] {
                let mut wrong = object.clone();
                let is_own = !wrong[field].is_null();
                wrong[field] = value;
                assert!(!(is_own || field == "query") || !own.is_valid(&wrong), "{field}: {line}");
            }
        }
    }
    assert!(count > 500, "{count} lines");
    let met: BTreeSet<&str> = met.iter().flat_map(|path| path.split('.')).collect();
    let unknown: Vec<_> = met.iter().filter(|key| !known.contains(**key)).collect();
    assert!(unknown.is_empty(), "{unknown:?}");
    for wanted in ["mate", "implied", "unit", "unit_from", "asked", "remark", "feature_name"] {
        assert!(met.contains(wanted), "no note has `{wanted}`");
    }
    for answer in &recorded() {
        assert!(!own.is_valid(answer), "{answer}");
    }
    // No column of a table: a batch writes none of them.
    assert!(!schema::paths().iter().any(|path| path == "unit_from"));
}

/// What the records do not hold: batches, errors of the service, `--shown`.
#[test]
fn batches_are_as_the_schema_says() {
    let validator = jsonschema::validator_for(&whole()).expect("a schema");
    let mut input = b"3/4in H7/g6\n20 H\nunits in\nrehearse 20mm H7 from 19.6mm, runs 3\n".to_vec();
    input.extend_from_slice(b"20 \xff H7\nbore 20mm H7 from 19.6mm\ncut 0.2mm = 19.79mm\nlog\n");
    input.extend_from_slice("20 H7 ".repeat(200_000).as_bytes());
    let mut session = Session::new();
    session.tells_shown = true;
    let mut out = Vec::new();
    batch::run(&input[..], &mut out, &mut session, &["a note".to_owned()]).expect("answers");
    let text = String::from_utf8(out).expect("text");
    assert_eq!(text.lines().count(), 9);
    for line in text.lines() {
        passes(&validator, &serde_json::from_str(line).expect("JSON"));
    }
    let first: Value = serde_json::from_str(text.lines().next().expect("a line")).expect("JSON");
    // ISO 286: 20 H7 is 19.050 to 19.071 mm, 0.75000 to 0.75083 in; rounded inward.
    assert_eq!(first["shown"]["hole"]["lower"], "0.7500 in");
    assert_eq!(first["shown"]["hole"]["upper"], "0.7508 in");
    assert_eq!(first["shown"]["hole"]["aim"], "0.7504 in");
}

/// Whoever cuts in inches has each limit to cut as a person is shown it: the least
/// rounded up, the most down, so that nothing shown is outside.
#[test]
fn every_limit_to_cut_is_shown_rounded_inward() {
    let mut session = Session::new();
    session.tells_shown = true;
    let mut asked = |query: &str| {
        let mut out = Vec::new();
        batch::run(query.as_bytes(), &mut out, &mut session, &[]).expect("an answer");
        serde_json::from_slice::<Value>(&out).expect("JSON")
    };
    for (query, at, wanted) in [
        ("spring pin 1/4in", "sizes/0", ["0.2500 in", "0.2560 in"]),
        ("retaining ring 3/4in shaft", "sizes/0", ["0.7010 in", "0.7070 in"]),
        // 6.7564 to 6.9064 mm: to 0.271906 in.
        ("1/4-20 clearance", "holes/0", ["0.2660 in", "0.2719 in"]),
        // 12.38504 to 12.6619 mm: 0.487600 to 0.498500 in.
        ("1/2-13 cut", "blank", ["0.4876 in", "0.4985 in"]),
        ("woodruff 204", "sizes/5", ["0.0625 in", "0.0625 in"]),
    ] {
        let answer = asked(query);
        let shown = answer.pointer(&format!("/shown/{at}")).expect(query);
        assert_eq!([&shown["min"], &shown["max"]], wanted, "{query}");
    }
    // 12.52347 mm is 0.493050 in: a blank's aim leaves metal.
    assert_eq!(asked("1/2-13 cut")["shown"]["blank"]["aim"], "0.4931 in");
    // Each figure that is shown lies inside what it is shown for, or is it.
    let mut seen = BTreeSet::new();
    for query in [
        "M10 cut",
        "M10 cut nut",
        "20mm H7/g6 warm 80 C aluminium in steel",
        "stack 20mm ±0.05 -19.5mm ±0.05 play 0.1..0.7mm",
        "rescue hole 20.05mm should be 20..20.021mm",
    ] {
        let answer = asked(query);
        inside("", &answer["shown"], &answer, &mut seen);
    }
    for wanted in ["blank", "shaft_to_keep", "last_part.always", "last_part.usually", "ways.limits"]
    {
        assert!(seen.contains(wanted), "{wanted}: {seen:?}");
    }
    assert!(!seen.contains("worst") && !seen.contains("cold"), "a play comes about: {seen:?}");
}

/// Holds `min` and `max` that are shown to the figures; gathers where they stand.
fn inside(at: &str, shown: &Value, exact: &Value, seen: &mut BTreeSet<String>) {
    match shown {
        Value::Object(object) => {
            let mm = |text: &Value| {
                let (figure, unit) =
                    text.as_str().expect("a text").split_once(' ').expect("a unit");
                let figure: f64 = figure.parse().expect("a number");
                if unit == "in" { figure * 25.4 } else { figure }
            };
            if let (Some(min), Some(max)) = (object.get("min"), object.get("max")) {
                let ends =
                    [&exact["min_mm"], &exact["max_mm"]].map(|end| end.as_f64().expect("mm"));
                assert!(mm(min) >= ends[0] - 1e-9 && mm(max) <= ends[1] + 1e-9, "{at}: {shown}");
                assert!(mm(min) <= mm(max), "{at}: {shown}");
                seen.insert(at.to_owned());
            }
            for (key, value) in object {
                let deeper = if at.is_empty() { key.clone() } else { format!("{at}.{key}") };
                inside(&deeper, value, &exact[key], seen);
            }
        }
        Value::Array(list) => {
            for (place, value) in list.iter().enumerate() {
                inside(at, value, &exact[place], seen);
            }
        }
        _ => {}
    }
}

fn fields(at: &str, value: &Value, found: &mut BTreeSet<String>) {
    match value {
        Value::Object(object) => {
            for (key, value) in object {
                let at = if at.is_empty() { key.clone() } else { format!("{at}.{key}") };
                fields(&at, value, found);
                found.insert(at);
            }
        }
        Value::Array(list) => list.iter().for_each(|value| fields(at, value, found)),
        _ => {}
    }
}

/// A validator takes fields that a schema does not name: these are all named.
#[test]
fn no_field_is_left_out() {
    let known: BTreeSet<String> = schema::paths().into_iter().collect();
    let mut found = BTreeSet::new();
    for answer in &recorded() {
        fields("", answer, &mut found);
    }
    let missing: Vec<&String> = found.difference(&known).collect();
    assert!(missing.is_empty(), "{missing:?}");
}

/// The JSON types that a key's schema allows, `null` aside: of a list those of what it
/// holds too.
fn types(root: &Value, schema: &Value, found: &mut BTreeSet<String>) {
    let names = match &schema["type"] {
        Value::Array(names) => names.as_slice(),
        name => std::slice::from_ref(name),
    };
    found.extend(names.iter().filter_map(Value::as_str).filter_map(|name| match name {
        "null" => None,
        "integer" => Some("number".to_owned()),
        name => Some(name.to_owned()),
    }));
    if let Some(reference) = schema["$ref"].as_str() {
        let target = root.pointer(reference.trim_start_matches('#'));
        types(root, target.unwrap_or_else(|| panic!("{reference} is not there")), found);
    }
    for key in ["allOf", "anyOf", "oneOf"] {
        for one in schema[key].as_array().into_iter().flatten() {
            types(root, one, found);
        }
    }
    if schema["items"].is_object() {
        let mut items = BTreeSet::new();
        types(root, &schema["items"], &mut items);
        found.extend(items.into_iter().map(|item| format!("array of {item}")));
        found.remove("array");
    }
}

/// Each key of each object of a schema, with its types; beside it the keys of that object.
fn keys(root: &Value, at: &Value, each: &mut impl FnMut(&str, BTreeSet<String>, &Value)) {
    match at {
        Value::Object(object) => {
            if let Some(properties) = object.get("properties").and_then(Value::as_object) {
                for (key, schema) in properties {
                    let mut found = BTreeSet::new();
                    types(root, schema, &mut found);
                    each(key, found, at);
                }
            }
            object.values().for_each(|value| keys(root, value, each));
        }
        Value::Array(list) => list.iter().for_each(|value| keys(root, value, each)),
        _ => {}
    }
}

/// The schema of every answer but `crib`, whose field `crib` is the file as it is
/// written: its lengths are texts, and its tools lists.
fn without_the_crib_file() -> Vec<Value> {
    let schema = whole();
    let kinds = schema["anyOf"][0]["allOf"][1]["oneOf"].as_array().expect("kinds").clone();
    let names = kinds.iter().filter_map(|kind| kind.pointer("/properties/answer/const"));
    let names = names.filter_map(Value::as_str).filter(|name| *name != "crib");
    let found: Vec<Value> = names.map(|name| schema::schema(Some(name)).expect("it")).collect();
    assert!(found.len() > 30, "{}", found.len());
    found
}

#[test]
fn a_key_has_one_type_everywhere() {
    let mut found: BTreeMap<String, BTreeSet<String>> = BTreeMap::new();
    for schema in without_the_crib_file() {
        keys(&schema, &schema, &mut |key, types, _| {
            found.entry(key.to_owned()).or_default().extend(types);
        });
    }
    assert!(found.len() > 500, "{}", found.len());
    for (key, types) in &found {
        assert_eq!(types.len(), 1, "`{key}` is {types:?}");
        if key.ends_with("mm") {
            let is_length = types.iter().all(|it| ["number", "array of number"].contains(&&**it));
            assert!(is_length, "`{key}` is {types:?}");
        }
    }
}

/// How the names of figures end that are in a unit.
const UNITS: [&str; 15] = [
    "mm", "mm2", "c", "n", "n_m", "mpa", "deg", "arcmin", "percent", "kg", "min", "tpi", "m_per_s",
    "kg_m3", "per_c_e6",
];

/// Figures without one: counts, places, shares, chances and factors.
const PLAIN: [&str; 29] = [
    "centred",
    "count",
    "cut_factor",
    "cut_factor_sd",
    "effort",
    "entry_count",
    "found",
    "histogram",
    "learned_from",
    "length_over_bore",
    "line",
    "link",
    "margin",
    "matters_most",
    "max",
    "mean_passes",
    "mean_readings",
    "min",
    "note_line",
    "readings",
    "risk",
    "runs",
    "safety",
    "seed",
    "spread_evenly",
    "starts",
    "strength",
    "times",
    "yielded_share",
];

/// A figure in a unit says it, so that a length is never a bare number.
#[test]
fn a_number_says_its_unit() {
    let mut used = BTreeSet::new();
    for schema in without_the_crib_file() {
        keys(&schema, &schema, &mut |key, types, object| {
            if types.iter().all(|it| !it.ends_with("number")) {
                return;
            }
            let is_share = ["share", "probability"].iter().any(|it| key.starts_with(it));
            let in_unit =
                UNITS.iter().any(|unit| key == *unit || key.ends_with(&format!("_{unit}")));
            assert!(in_unit || is_share || PLAIN.contains(&key), "`{key}` of {object}");
            used.insert(key.to_owned());
        });
    }
    for plain in PLAIN {
        assert!(used.contains(plain), "no figure is `{plain}`: delete it here");
    }
}

/// The limits of a size are `lower_mm` and `upper_mm`; the ends of every other range
/// have `min` and `max` before their unit, and both are there.
#[test]
fn the_ends_of_a_range_are_spelled_one_way() {
    // A word of the trade for one figure: the least chip that a tool takes.
    const ALONE: [&str; 1] = ["least_chip_mm"];
    const ELSE: [&str; 10] = [
        "least", "most", "greatest", "smallest", "largest", "lowest", "highest", "low", "high",
        "minimum",
    ];
    let (mut ranges, mut alone) = (0, BTreeSet::new());
    for schema in without_the_crib_file() {
        keys(&schema, &schema, &mut |key, types, object| {
            if types.iter().all(|it| !it.ends_with("number")) {
                return;
            }
            let words: Vec<&str> = key.split('_').collect();
            let is_else = words.iter().any(|word| ELSE.contains(word));
            assert!(!is_else || key == "matters_most" || ALONE.contains(&key), "`{key}`");
            for (one, other) in
                [("min", "max"), ("max", "min"), ("lower", "upper"), ("upper", "lower")]
            {
                let Some(place) = words.iter().position(|word| *word == one) else { continue };
                if key == "wait_min" {
                    continue;
                }
                let mut twin = words.clone();
                twin[place] = other;
                let has_twin = !object["properties"][twin.join("_")].is_null();
                ranges += 1;
                alone.extend((!has_twin).then(|| key.to_owned()));
                let is_bare = words.len() == 2;
                assert!(is_bare || !["lower", "upper"].contains(&one), "`{key}`");
            }
        });
    }
    assert!(ranges > 100, "{ranges}");
    // The other end of these is of no use to anybody.
    let one_end = ["interference_min_mm", "major_min_mm", "minor_min_mm", "wall_min_mm"];
    assert_eq!(alone, one_end.map(str::to_owned).into(), "ranges with one end");
}
