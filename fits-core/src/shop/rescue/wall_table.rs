//! Generated from `data/rescue/walls.csv` by `tests/rescue_tables.rs`; do not edit.

use super::sleeve::Wall;
use crate::{size::Length, source::{Known, Provenance}};

pub(super) static WALLS: [Wall; 4] = [
    Wall { kind: "sleeve on a shaft", share: 0.1, plus: Length::from_tenth_nanometres(30000000), is_sum: false, from: Provenance { known: Known::Memory, text: "unconfirmed: 3 mm and more, a tenth of the diameter" } },
    Wall { kind: "steel or iron bush", share: 0.0, plus: Length::from_tenth_nanometres(31750000), is_sum: false, from: Provenance { known: Known::Memory, text: "unconfirmed: 6 to 10 mm, 1/8 in at the least" } },
    Wall { kind: "bronze bush", share: 0.075, plus: Length::from_tenth_nanometres(25000000), is_sum: true, from: Provenance { known: Known::Memory, text: "unconfirmed: 0.075 D + 2.5 mm" } },
    Wall { kind: "wall left about a bush", share: 0.1, plus: Length::from_tenth_nanometres(20000000), is_sum: false, from: Provenance { known: Known::Practice, text: "common practice, no source" } },
];
