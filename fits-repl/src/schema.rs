//! The JSON Schema of what is written, made from the types that are written.

use std::collections::BTreeSet;

use schemars::{JsonSchema, generate::SchemaSettings};
use serde_json::{Map, Value, json};

use crate::{
    answer::Answer,
    render::json::{Head, Refusal},
};

/// The version of the contract.
const CONTRACT: &str = "fits JSON contract, version 1";

fn of<T: JsonSchema>() -> Map<String, Value> {
    let schema =
        SchemaSettings::draft2020_12().for_serialize().into_generator().into_root_schema_for::<T>();
    match schema.to_value() {
        Value::Object(object) => object,
        _ => Map::new(),
    }
}

/// The name that an answer has in its field `answer`.
fn name_of(kind: &Value) -> Option<&str> {
    kind.pointer("/properties/answer/const").and_then(Value::as_str)
}

/// The schema of every answer and of errors, or of one kind of answer.
///
/// # Errors
/// There is no such kind: the text names those there are.
pub fn schema(kind: Option<&str>) -> Result<Value, String> {
    let mut whole = of::<Answer>();
    let kinds = match whole.remove("oneOf") {
        Some(Value::Array(kinds)) => kinds,
        _ => Vec::new(),
    };
    let mut chosen: Vec<Value> = match kind {
        None => kinds,
        Some(kind) => {
            let found: Vec<Value> =
                kinds.iter().filter(|one| name_of(one) == Some(kind)).cloned().collect();
            if found.is_empty() {
                let names: Vec<&str> = kinds.iter().filter_map(name_of).collect();
                return Err(format!("no answer is `{kind}`: there are {}", names.join(", ")));
            }
            found
        }
    };
    let mut defs = match whole.remove("$defs") {
        Some(Value::Object(defs)) => defs,
        _ => Map::new(),
    };
    let mut part = |mut part: Map<String, Value>| {
        if let Some(Value::Object(more)) = part.remove("$defs") {
            defs.extend(more);
        }
        part.remove("$schema");
        part.remove("title");
        part
    };
    let beside = part(of::<Head<'_>>());
    if kind.is_none() {
        let mut refusal = part(of::<Refusal<'_>>());
        refusal.insert("title".into(), "error".into());
        chosen.push(Value::Object(refusal));
    }
    let mut schema = json!({
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "title": "What fits --json and fits batch write on each line",
        "description": format!("{CONTRACT}. Fields may be added; a field is never renamed or \
            given another type or meaning. Names that end mm are millimetres. The limits of a \
            size are lower_mm and upper_mm, the ends of any other range have min and max. A \
            field that is null says the same as one that is not there; a list or a text that is \
            not there is empty, and a yes or no is no."),
        "allOf": [beside, { "oneOf": chosen }],
    });
    keep_needed(&mut defs, &schema);
    if let Some(object) = schema.as_object_mut() {
        object.insert("$defs".into(), Value::Object(defs));
    }
    null_is_absent(&mut schema);
    Ok(schema)
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

/// The path of every field, its parts joined by points; places in lists are left out.
pub fn paths() -> Vec<String> {
    let Ok(schema) = schema(None) else { return Vec::new() };
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
