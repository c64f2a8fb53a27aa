//! The generated tables of rescue, service clearances, printed parts and model
//! engineers' threads hold what `data/` says, and what is recalled is marked.

use std::fmt::Write as _;

use fits_checks::{code, hold_generated, rows};
use fits_core::size::Unit;

/// How a column is written in Rust.
#[derive(Clone, Copy)]
enum As {
    Text,
    Number,
    Millimetres,
    /// Nothing where the cell is empty.
    MaybeMillimetres,
    Inches,
    Yes,
    Count,
}

struct Table {
    data: &'static str,
    code: &'static str,
    uses: &'static str,
    name: &'static str,
    row: &'static str,
    columns: &'static [(&'static str, &'static str, As)],
}

const TABLES: &[Table] = &[
    Table {
        data: "data/rescue/compounds.csv",
        code: "fits-core/src/shop/rescue/compound_table.rs",
        uses: "use super::compound::Row;\nuse crate::{size::Length, source::{Known, Provenance}};\n",
        name: "KINDS",
        row: "Row",
        columns: &[
            ("name", "kind", As::Text),
            ("shear_mpa", "shear_mpa", As::Number),
            ("gap_most", "gap_most_mm", As::Millimetres),
            ("hot_c", "hot_c", As::Number),
            ("note", "note", As::Text),
        ],
    },
    Table {
        data: "data/rescue/factors.csv",
        code: "fits-core/src/shop/rescue/factor_table.rs",
        uses: "use super::compound::Factor;\nuse crate::source::{Known, Provenance};\n",
        name: "FACTORS",
        row: "Factor",
        columns: &[
            ("group", "group", As::Text),
            ("name", "name", As::Text),
            ("at", "at", As::Number),
            ("times", "factor", As::Number),
        ],
    },
    Table {
        data: "data/rescue/ways.csv",
        code: "fits-core/src/shop/rescue/way_table.rs",
        uses: "use super::WayRow;\nuse crate::{size::Length, source::{Known, Provenance}};\n",
        name: "WAYS",
        row: "WayRow",
        columns: &[
            ("name", "way", As::Text),
            ("part", "part", As::Text),
            ("strength", "strength", As::Count),
            ("effort", "effort", As::Count),
            ("least", "least_mm", As::MaybeMillimetres),
            ("most", "most_mm", As::MaybeMillimetres),
            ("people", "people", As::Yes),
            ("bearing", "bearing", As::Yes),
            ("who", "who", As::Text),
            ("note", "note", As::Text),
        ],
    },
    Table {
        data: "data/rescue/walls.csv",
        code: "fits-core/src/shop/rescue/wall_table.rs",
        uses: "use super::sleeve::Wall;\nuse crate::{size::Length, source::{Known, Provenance}};\n",
        name: "WALLS",
        row: "Wall",
        columns: &[
            ("kind", "kind", As::Text),
            ("share", "share", As::Number),
            ("plus", "plus_mm", As::Millimetres),
            ("is_sum", "is_sum", As::Yes),
        ],
    },
    Table {
        data: "data/service/clearances.csv",
        code: "fits-core/src/shop/service/table.rs",
        uses: "use super::Row;\nuse crate::{size::Length, source::{Known, Provenance}};\n",
        name: "CLEARANCES",
        row: "Row",
        columns: &[
            ("head", "head", As::Text),
            ("kind", "kind", As::Text),
            ("pair", "pair", As::Text),
            ("least_a", "least_a", As::Number),
            ("least_b", "least_b", As::Number),
            ("most_a", "most_a", As::Number),
            ("most_b", "most_b", As::Number),
            ("starts", "from_in", As::Inches),
            ("to", "to_in", As::Inches),
            ("note", "note", As::Text),
        ],
    },
    Table {
        data: "data/service/printed.csv",
        code: "fits-core/src/shop/service/printed_table.rs",
        uses: "use super::printed::Row;\nuse crate::{size::Length, source::{Known, Provenance}};\n",
        name: "PRINTED",
        row: "Row",
        columns: &[
            ("name", "material", As::Text),
            ("small", "small_mm", As::Millimetres),
            ("slip_least", "slip_least_mm", As::Millimetres),
            ("slip_most", "slip_most_mm", As::Millimetres),
            ("press_least", "press_least_mm", As::Millimetres),
            ("press_most", "press_most_mm", As::Millimetres),
            ("hot_c", "hot_c", As::Number),
            ("note", "note", As::Text),
        ],
    },
    Table {
        data: "data/threads/model_engineer.csv",
        code: "fits-core/src/standards/thread/model_table.rs",
        uses: "use super::by_mic::Model;\nuse crate::{size::Length, source::{Known, Provenance}};\n",
        name: "MODEL",
        row: "Model",
        columns: &[
            ("size", "size", As::Text),
            ("major", "size", As::Inches),
            ("tpi", "tpi", As::Count),
            ("tap", "tap_mm", As::Millimetres),
            ("second_tap", "second_tap_in", As::Inches),
        ],
    },
];

fn generate(table: &Table) -> String {
    let list = rows(table.data);
    let mut out = format!(
        "//! Generated from `{}` by `tests/rescue_tables.rs`; do not edit.\n\n{}\npub(super) static {}: [{}; {}] = [\n",
        table.data,
        table.uses,
        table.name,
        table.row,
        list.len()
    );
    for row in &list {
        let mut fields = String::new();
        for (field, column, kind) in table.columns {
            let text = row.text(column);
            let value = match kind {
                As::Text => format!("{text:?}"),
                As::Number if text.is_empty() => "0.0".to_owned(),
                As::Number => format!("{:?}", row.get::<f64>(column)),
                As::Millimetres => code(row.length(text, Unit::Millimetre)),
                As::MaybeMillimetres if text.is_empty() => "None".to_owned(),
                As::MaybeMillimetres => {
                    format!("Some({})", code(row.length(text, Unit::Millimetre)))
                }
                As::Inches => code(row.length(text, Unit::Inch)),
                As::Yes => match text {
                    "yes" => "true".to_owned(),
                    "no" => "false".to_owned(),
                    other => panic!("{row}: {column} is {other}, neither yes nor no"),
                },
                As::Count => row.get::<u32>(column).to_string(),
            };
            write!(fields, "{field}: {value}, ").unwrap();
        }
        writeln!(out, "    {} {{ {fields}from: {} }},", table.row, row.provenance()).unwrap();
    }
    out + "];\n"
}

#[test]
fn the_generated_tables_are_what_the_data_give() {
    for table in TABLES {
        hold_generated(table.code, &generate(table));
    }
}

#[test]
fn what_is_recalled_says_so() {
    for table in TABLES {
        for row in rows(table.data) {
            let (status, source) = (row.text("status"), row.text("source"));
            let says = match status {
                "MEMORY" => {
                    ["unconfirmed", "data sheets print"].iter().any(|it| source.contains(it))
                }
                "COMMON" => source.contains("common practice, no source"),
                _ => !source.contains("unconfirmed"),
            };
            assert!(says, "{row}: {status} from {source}");
        }
    }
}
