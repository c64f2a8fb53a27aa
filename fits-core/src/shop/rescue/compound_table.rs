//! Generated from `data/rescue/compounds.csv` by `tests/rescue_tables.rs`; do not edit.

use super::compound::Row;
use crate::{size::Length, source::{Known, Provenance}};

pub(super) static KINDS: [Row; 4] = [
    Row { name: "medium strength", shear_mpa: 8.0, gap_most: Length::from_tenth_nanometres(2500000), hot_c: 150.0, note: "for bearings that must come off again", from: Provenance { known: Known::Memory, text: "gap: a medium-strength retainer's data sheet of October 1995 has curves to 0.25 mm; shear to design with unconfirmed" } },
    Row { name: "high strength thin", shear_mpa: 17.0, gap_most: Length::from_tenth_nanometres(1500000), hot_c: 150.0, note: "runs into close fits", from: Provenance { known: Known::Memory, text: "two thirds of what sheets print, unconfirmed; gap unconfirmed" } },
    Row { name: "high strength thick", shear_mpa: 17.0, gap_most: Length::from_tenth_nanometres(2500000), hot_c: 150.0, note: "for worn seats", from: Provenance { known: Known::Memory, text: "gap: a thick high-strength retainer's data sheet of June 2022 has curves to 0.25 mm; shear to design with unconfirmed" } },
    Row { name: "high temperature", shear_mpa: 8.0, gap_most: Length::from_tenth_nanometres(1500000), hot_c: 180.0, note: "some go to 230 C", from: Provenance { known: Known::Memory, text: "gap: a high-temperature anaerobic's data sheet; shear taken as the medium kind's, unconfirmed" } },
];
