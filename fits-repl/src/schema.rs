//! The JSON Schema of what is written, made from the types that are written.

use std::collections::BTreeSet;

use schemars::{JsonSchema, SchemaGenerator, generate::SchemaSettings};
use serde_json::{Map, Value, json};

use crate::{
    answer::Answer,
    questions::job::{
        figures::CutFigures,
        lines::{Asked, SaidFigures, Written},
    },
    render::json::{Head, Refusal},
};

/// The version of the contract.
const CONTRACT: &str = "fits JSON contract, version 1";

/// One for all parts, so that two types of one name are two definitions.
fn generator() -> SchemaGenerator {
    SchemaSettings::draft2020_12().for_serialize().into_generator()
}

/// A part of the schema; the generator keeps what it refers to.
fn part<T: JsonSchema>(generator: &mut SchemaGenerator) -> Map<String, Value> {
    match T::json_schema(generator).to_value() {
        Value::Object(object) => object,
        _ => Map::new(),
    }
}

/// The name that an answer has in its field `answer`.
fn name_of(kind: &Value) -> Option<&str> {
    kind.pointer("/properties/answer/const").and_then(Value::as_str)
}

/// What `fits schema` calls a line of `fits job --json`.
const JOB_LINE: &str = "job_line";

/// Each kind of answer.
fn kinds_of(generator: &mut SchemaGenerator) -> Vec<Value> {
    match part::<Answer>(generator).remove("oneOf") {
        Some(Value::Array(kinds)) => kinds,
        _ => Vec::new(),
    }
}

/// What [`schema`] may be asked for.
pub fn kinds() -> Vec<String> {
    let kinds = kinds_of(&mut generator());
    kinds.iter().filter_map(name_of).chain([JOB_LINE]).map(str::to_owned).collect()
}

/// What is written of every query, or of one kind of answer.
fn answers(kind: Option<&str>, generator: &mut SchemaGenerator) -> Result<Value, String> {
    let kinds = kinds_of(generator);
    let mut chosen: Vec<Value> = match kind {
        None => kinds,
        Some(kind) => {
            let found: Vec<Value> =
                kinds.iter().filter(|one| name_of(one) == Some(kind)).cloned().collect();
            if found.is_empty() {
                let names: Vec<&str> = kinds.iter().filter_map(name_of).chain([JOB_LINE]).collect();
                return Err(format!("no answer is `{kind}`: there are {}", names.join(", ")));
            }
            found
        }
    };
    let beside = part::<Head<'_>>(generator);
    if kind.is_none() {
        let mut refusal = part::<Refusal<'_>>(generator);
        refusal.insert("title".into(), "error".into());
        chosen.push(Value::Object(refusal));
    }
    Ok(json!({ "allOf": [beside, { "oneOf": chosen }] }))
}

/// The objects of a job: they answer no query, and are told by their keys.
fn job_lines(generator: &mut SchemaGenerator) -> Value {
    let kinds = [
        ("what a line says of a feature", part::<SaidFigures<'_>>(generator)),
        ("what is to be asked of a line", part::<Asked<'_>>(generator)),
        ("what a line says beside", part::<Written<'_>>(generator)),
        ("what to cut a feature to", part::<CutFigures>(generator)),
    ];
    let kinds = kinds.map(|(title, mut kind)| {
        kind.insert("title".into(), title.into());
        Value::Object(kind)
    });
    json!({
        "title": JOB_LINE,
        "description": "A line of fits job --json. Its keys are its own: `feature` is a name here, \
            where an answer has an object.",
        "not": { "required": ["query"] },
        "oneOf": kinds,
    })
}

/// The schema of every answer, of errors and of the lines of a job; or of one kind of
/// answer, or of the lines of a job alone, which are called `job_line`.
///
/// # Errors
/// There is no such kind: the text names those there are.
pub fn schema(kind: Option<&str>) -> Result<Value, String> {
    let mut generator = generator();
    let body = match kind {
        None => json!({ "anyOf": [answers(None, &mut generator)?, job_lines(&mut generator)] }),
        Some(JOB_LINE) => job_lines(&mut generator),
        Some(kind) => answers(Some(kind), &mut generator)?,
    };
    Ok(finished(body, generator))
}

/// The schema with what it says of itself and what it refers to.
fn finished(body: Value, mut generator: SchemaGenerator) -> Value {
    let mut defs = generator.take_definitions(true);
    let mut schema = json!({
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "title": "What fits --json, fits batch and fits job --json write on each line",
        "description": format!("{CONTRACT}. Fields may be added; a field is never renamed or \
            given another type or meaning. Names that end mm are millimetres. The limits of a \
            size are lower_mm and upper_mm, the ends of any other range have min and max. A \
            field that is null says the same as one that is not there; a list or a text that is \
            not there is empty, and a yes or no is no."),
    });
    keep_needed(&mut defs, &body);
    if let (Some(object), Value::Object(body)) = (schema.as_object_mut(), body) {
        for (key, value) in body {
            object.entry(key).or_insert(value);
        }
        object.insert("$defs".into(), Value::Object(defs));
    }
    null_is_absent(&mut schema);
    schema
}

/// What may be null need not be there.
fn null_is_absent(schema: &mut Value) {
    match schema {
        Value::Object(object) => {
            let may_be_null = |schema: &Value| {
                let is_null = |one: &Value| one == "null" || one["type"] == "null";
                ["type", "anyOf"].iter().any(|key| {
                    schema[key].as_array().is_some_and(|several| several.iter().any(is_null))
                })
            };
            if let Some(properties) = object.get("properties").cloned()
                && let Some(Value::Array(required)) = object.get_mut("required")
            {
                required
                    .retain(|name| !name.as_str().is_some_and(|it| may_be_null(&properties[it])));
            }
            object.values_mut().for_each(null_is_absent);
        }
        Value::Array(list) => list.iter_mut().for_each(null_is_absent),
        _ => {}
    }
}

/// Drops definitions that nothing refers to.
fn keep_needed(defs: &mut Map<String, Value>, schema: &Value) {
    let mut needed = BTreeSet::new();
    let mut open = Vec::new();
    refers(schema, &mut open);
    while let Some(name) = open.pop() {
        if let Some(found) = defs.get(&name).filter(|_| needed.insert(name.clone())) {
            refers(found, &mut open);
        }
    }
    defs.retain(|name, _| needed.contains(name));
}

fn refers(value: &Value, names: &mut Vec<String>) {
    match value {
        Value::Object(object) => {
            if let Some(Value::String(reference)) = object.get("$ref") {
                names.extend(reference.strip_prefix("#/$defs/").map(str::to_owned));
            }
            object.values().for_each(|value| refers(value, names));
        }
        Value::Array(list) => list.iter().for_each(|value| refers(value, names)),
        _ => {}
    }
}

/// The same as indented text.
///
/// # Errors
/// There is no such kind of answer.
pub fn text(kind: Option<&str>) -> Result<String, String> {
    let schema = schema(kind)?;
    Ok(serde_json::to_string_pretty(&schema).unwrap_or_default() + "\n")
}

/// The path of every field of an answer, its parts joined by points; places in lists are left out.
pub fn paths() -> Vec<String> {
    let mut generator = generator();
    let Ok(body) = answers(None, &mut generator) else { return Vec::new() };
    let schema = finished(body, generator);
    let mut found = BTreeSet::new();
    walk(&schema, &schema, "", 0, &mut found);
    found.into_iter().collect()
}

/// No answer is deeper.
const DEEPEST: usize = 40;

fn walk(root: &Value, at: &Value, path: &str, depth: usize, found: &mut BTreeSet<String>) {
    let Some(object) = at.as_object().filter(|_| depth < DEEPEST) else { return };
    if let Some(reference) = object.get("$ref").and_then(Value::as_str)
        && let Some(target) = reference.strip_prefix('#').and_then(|at| root.pointer(at))
    {
        walk(root, target, path, depth + 1, found);
    }
    for key in ["allOf", "anyOf", "oneOf", "prefixItems"] {
        for one in object.get(key).and_then(Value::as_array).into_iter().flatten() {
            walk(root, one, path, depth + 1, found);
        }
    }
    if let Some(items) = object.get("items") {
        walk(root, items, path, depth + 1, found);
    }
    for (name, value) in object.get("properties").and_then(Value::as_object).into_iter().flatten() {
        let deeper = if path.is_empty() { name.clone() } else { format!("{path}.{name}") };
        walk(root, value, &deeper, depth + 1, found);
        found.insert(deeper);
    }
}
