//! The generated tables of rings, pins, Woodruff keys, O-rings and square tube hold
//! what `data/hardware/` says; sizes run upwards and limits the right way round.

use std::fmt::Write as _;

use fits_checks::{Row, code, hold_generated, rows};
use fits_core::{Length, size::Unit};

/// How a cell of the data is written in Rust.
#[derive(Clone, Copy)]
enum Cell {
    /// A length: its field and its column.
    Size(&'static str, &'static str),
    /// The same, where a blank is none.
    Maybe(&'static str, &'static str),
    /// Two lengths, the lower first.
    Pair(&'static str, &'static str, &'static str),
    /// Words.
    Text(&'static str, &'static str),
    /// One of an enum's names, by what the data say.
    Named(&'static str, &'static str, &'static str, &'static [(&'static str, &'static str)]),
    /// How a figure is known.
    Known(&'static str, &'static str),
    /// Is the row in inches?
    IsInch(&'static str),
}
use Cell::{IsInch, Known, Maybe, Named, Pair, Size, Text};

const TABLES: &[(&str, &str, &str, &[Cell])] = &[
    (
        "rings",
        "RINGS",
        "rings::RingRow",
        &[
            Named(
                "kind",
                "kind",
                "RingKind",
                &[
                    ("din471", "Din471"),
                    ("din472", "Din472"),
                    ("external", "External"),
                    ("internal", "Internal"),
                    ("heavy", "Heavy"),
                    ("crescent", "Crescent"),
                    ("e-ring", "ERing"),
                ],
            ),
            Size("on", "on"),
            Pair("groove", "groove_low", "groove_high"),
            Pair("width", "width_low", "width_high"),
            Maybe("edge", "edge"),
            Pair("thick", "thick_low", "thick_high"),
            Known("thick_known", "status_thick"),
            Text("note", "note"),
        ],
    ),
    (
        "spring_pins",
        "SPRING_PINS",
        "pins::SpringRow",
        &[
            Named(
                "kind",
                "kind",
                "SpringPinKind",
                &[("slotted", "Slotted"), ("coiled", "Coiled"), ("iso8752", "Iso8752")],
            ),
            Size("size", "size"),
            Pair("pin", "pin_low", "pin_high"),
            Pair("hole", "hole_low", "hole_high"),
        ],
    ),
    (
        "taper_pins",
        "TAPER_PINS",
        "pins::TaperRow",
        &[
            Text("name", "name"),
            IsInch("is_inch"),
            Size("size", "size"),
            Pair("limits", "low", "high"),
            Known("limits_known", "status_limits"),
        ],
    ),
    (
        "taper_pin_drills",
        "TAPER_DRILLS",
        "pins::TaperDrillRow",
        &[
            Text("pin", "pin"),
            Size("length", "length"),
            Text("drill", "drill"),
            Size("size", "size"),
        ],
    ),
    (
        "clevis_pins",
        "CLEVIS_PINS",
        "pins::ClevisRow",
        &[
            Size("size", "size"),
            Pair("shank", "low", "high"),
            Size("cotter", "cotter"),
            Pair("cotter_hole", "cotter_low", "cotter_high"),
            Size("length", "length"),
            Pair("centre", "centre_low", "centre_high"),
        ],
    ),
    (
        "cotter_pins",
        "COTTER_PINS",
        "pins::CotterRow",
        &[Size("size", "size"), Pair("shank", "low", "high"), Size("hole", "hole")],
    ),
    (
        "woodruff",
        "WOODRUFF",
        "woodruff::WoodruffRow",
        &[
            Text("number", "number"),
            Size("width", "width"),
            Size("diameter", "diameter"),
            Pair("height", "height_low", "height_high"),
            Pair("shaft", "shaft_low", "shaft_high"),
            Pair("hub", "hub_low", "hub_high"),
            Pair("shaft_width", "shaft_width_low", "shaft_width_high"),
            Pair("hub_width", "hub_width_low", "hub_width_high"),
            Known("width_known", "status_width"),
        ],
    ),
    (
        "woodruff_shafts",
        "WOODRUFF_SHAFTS",
        "woodruff::WoodruffShaftRow",
        &[Size("width", "width"), Pair("shaft", "low", "high")],
    ),
    (
        "square_tube",
        "SQUARE_TUBE",
        "square_tube::TubeRow",
        &[
            Named(
                "standard",
                "standard",
                "TubeStandard",
                &[("a513", "A513"), ("a500", "A500"), ("en10219", "En10219")],
            ),
            Named(
                "what",
                "what",
                "TubeFigure",
                &[
                    ("outside", "Outside"),
                    ("outside_share", "OutsideShare"),
                    ("flat", "Flat"),
                    ("wall_share", "WallShare"),
                    ("corner", "Corner"),
                    ("corner_times", "CornerTimes"),
                ],
            ),
            Size("over", "over"),
            Size("up_to", "up_to"),
            Maybe("wall", "wall"),
            Maybe("low", "low"),
            Size("value", "value"),
        ],
    ),
    (
        "oring_glands",
        "ORING_GLANDS",
        "orings::GlandRow",
        &[
            Named(
                "used",
                "use",
                "GlandUse",
                &[("moving", "Moving"), ("static", "Static"), ("face", "Face")],
            ),
            Size("section", "section"),
            Pair("depth", "depth_low", "depth_high"),
            Pair("width", "width_low", "width_high"),
            Maybe("play", "play"),
        ],
    ),
    (
        "orings",
        "ORINGS",
        "orings::ORingRow",
        &[Text("dash", "dash"), Size("inside", "inside"), Size("section", "section")],
    ),
];

fn unit(row: &Row) -> Unit {
    match row.text("unit") {
        "mm" => Unit::Millimetre,
        "in" => Unit::Inch,
        other => panic!("{row}: unknown unit {other}"),
    }
}

fn size(row: &Row, column: &str) -> Length {
    row.length(row.text(column), unit(row))
}

fn cell(row: &Row, cell: Cell) -> String {
    match cell {
        Size(field, column) => format!("{field}: {}", code(size(row, column))),
        Maybe(field, column) if row.text(column).is_empty() => format!("{field}: None"),
        Maybe(field, column) => format!("{field}: Some({})", code(size(row, column))),
        Pair(field, low, high) => {
            let [low, high] = [low, high].map(|column| size(row, column));
            assert!(low <= high, "{row}: {field} runs the wrong way");
            assert!(low.is_positive(), "{row}: {field} is nothing");
            format!("{field}: [{}, {}]", code(low), code(high))
        }
        Text(field, column) => format!("{field}: {:?}", row.text(column)),
        Named(field, column, kind, names) => {
            let said = row.text(column);
            let name = names.iter().find(|(known, _)| *known == said);
            let (_, name) = name.unwrap_or_else(|| panic!("{row}: unknown {column} {said}"));
            format!("{field}: {kind}::{name}")
        }
        Known(field, column) => {
            let known = match row.text(column) {
                "SEEN" => "Seen",
                "FORMULA" => "Formula",
                "MEMORY" => "Memory",
                "COMMON" => "Practice",
                other => panic!("{row}: unknown status {other}"),
            };
            format!("{field}: Known::{known}")
        }
        IsInch(field) => format!("{field}: {}", unit(row) == Unit::Inch),
    }
}

#[test]
fn the_tables_are_what_the_data_say() {
    let mut out = String::from(
        "//! Generated from `data/hardware/` by `tests/hardware_tables.rs`; do not edit.\n\n\
         use super::{\n    orings::{self, GlandUse},\n    pins::{self, SpringPinKind},\n    \
         rings::{self, RingKind},\n    square_tube::{self, TubeFigure, TubeStandard},\n    \
         woodruff,\n};\n\
         use crate::{\n    size::Length,\n    source::{Known, Provenance},\n};\n",
    );
    for (file, name, kind, cells) in TABLES {
        let list = rows(&format!("data/hardware/{file}.csv"));
        let _ = writeln!(out, "\npub(super) static {name}: [{kind}; {}] = [", list.len());
        for row in &list {
            let cells: Vec<String> = cells.iter().map(|found| cell(row, *found)).collect();
            let _ =
                writeln!(out, "    {kind} {{ {}, from: {} }},", cells.join(", "), row.provenance());
        }
        out.push_str("];\n");
    }
    hold_generated("fits-core/src/standards/hardware/table.rs", &out);
}

#[test]
fn sizes_of_a_kind_run_upwards() {
    for (file, by, column) in [
        ("rings", "kind", "on"),
        ("spring_pins", "kind", "size"),
        ("taper_pins", "unit", "size"),
        ("clevis_pins", "unit", "size"),
        ("cotter_pins", "unit", "size"),
        ("oring_glands", "use", "section"),
    ] {
        let list = rows(&format!("data/hardware/{file}.csv"));
        for pair in list.windows(2) {
            let [first, second] = pair else { unreachable!() };
            if first.text(by) == second.text(by) {
                assert!(size(first, column) <= size(second, column), "{second}: out of order");
            }
        }
    }
}
