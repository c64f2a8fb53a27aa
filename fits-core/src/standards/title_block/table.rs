//! Generated from `data/title_block/title_block.csv` by `tests/title_blocks.rs`; do not edit.

use super::Row;
use crate::{size::Length, source::{Known, Provenance}};

pub(super) static ROWS: [Row; 12] = [
    Row { trade: "machined parts", decimals: Some(1), plus_minus: Length::from_tenth_nanometres(7620000), from: Provenance { known: Known::Memory, text: "from memory" }, note: "0.020 in some" },
    Row { trade: "machined parts", decimals: Some(2), plus_minus: Length::from_tenth_nanometres(2540000), from: Provenance { known: Known::Practice, text: "common practice, no source" }, note: "the most common" },
    Row { trade: "machined parts", decimals: Some(3), plus_minus: Length::from_tenth_nanometres(1270000), from: Provenance { known: Known::Practice, text: "common practice, no source" }, note: "the most common" },
    Row { trade: "machined parts", decimals: Some(4), plus_minus: Length::from_tenth_nanometres(127000), from: Provenance { known: Known::Memory, text: "from memory" }, note: "0.0001 or 0.0002 in some" },
    Row { trade: "looser shops", decimals: Some(1), plus_minus: Length::from_tenth_nanometres(25400000), from: Provenance { known: Known::Practice, text: "common practice, no source" }, note: "" },
    Row { trade: "looser shops", decimals: Some(2), plus_minus: Length::from_tenth_nanometres(7620000), from: Provenance { known: Known::Practice, text: "common practice, no source" }, note: "sheet metal too" },
    Row { trade: "looser shops", decimals: Some(3), plus_minus: Length::from_tenth_nanometres(2540000), from: Provenance { known: Known::Practice, text: "common practice, no source" }, note: "" },
    Row { trade: "a tight block", decimals: Some(1), plus_minus: Length::from_tenth_nanometres(2540000), from: Provenance { known: Known::Practice, text: "common practice, no source" }, note: "" },
    Row { trade: "a tight block", decimals: Some(2), plus_minus: Length::from_tenth_nanometres(1270000), from: Provenance { known: Known::Practice, text: "common practice, no source" }, note: "" },
    Row { trade: "a tight block", decimals: Some(3), plus_minus: Length::from_tenth_nanometres(508000), from: Provenance { known: Known::Practice, text: "common practice, no source" }, note: "" },
    Row { trade: "a common block", decimals: None, plus_minus: Length::from_tenth_nanometres(7937500), from: Provenance { known: Known::Practice, text: "common practice, no source" }, note: "as one block prints it beside 0.005 for two decimals" },
    Row { trade: "a closer block", decimals: None, plus_minus: Length::from_tenth_nanometres(3968750), from: Provenance { known: Known::Memory, text: "from memory" }, note: "" },
];
