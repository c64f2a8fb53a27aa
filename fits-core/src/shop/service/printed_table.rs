//! Generated from `data/service/printed.csv` by `tests/rescue_tables.rs`; do not edit.

use super::printed::Row;
use crate::{size::Length, source::{Known, Provenance}};

pub(super) static PRINTED: [Row; 3] = [
    Row { name: "PLA", small: Length::from_tenth_nanometres(2000000), slip_least: Length::from_tenth_nanometres(3000000), slip_most: Length::from_tenth_nanometres(5000000), press_least: Length::from_tenth_nanometres(500000), press_most: Length::from_tenth_nanometres(1500000), hot_c: 50.0, note: "stiff and brittle: splits under a press; creeps at room heat under steady load", from: Provenance { known: Known::Practice, text: "common practice, no source" } },
    Row { name: "PETG", small: Length::from_tenth_nanometres(2500000), slip_least: Length::from_tenth_nanometres(3000000), slip_most: Length::from_tenth_nanometres(5000000), press_least: Length::from_tenth_nanometres(500000), press_most: Length::from_tenth_nanometres(1500000), hot_c: 65.0, note: "tougher; takes a press better than PLA; creeps", from: Provenance { known: Known::Practice, text: "common practice, no source" } },
    Row { name: "ABS", small: Length::from_tenth_nanometres(3000000), slip_least: Length::from_tenth_nanometres(3500000), slip_most: Length::from_tenth_nanometres(6000000), press_least: Length::from_tenth_nanometres(1000000), press_most: Length::from_tenth_nanometres(2000000), hot_c: 85.0, note: "shrinks as it cools: measure it cold; no retaining compound, it crazes", from: Provenance { known: Known::Practice, text: "common practice, no source" } },
];
