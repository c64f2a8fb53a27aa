//! Generated from `data/iso2768/` by `tests/iso2768_tables.rs`; do not edit.

use super::Row;
use crate::{size::Length, source::{Known, Provenance}};

pub(super) static SOURCES: [Provenance; 3] = [
    Provenance { known: Known::Seen, text: "ISO 2768-1:1989, Table 1, reprint (handfest.engineer)" },
    Provenance { known: Known::Seen, text: "ISO 2768-1:1989, Table 2, reprint (handfest.engineer)" },
    Provenance { known: Known::Seen, text: "ISO 2768-1:1989, Table 3, reprint (handfest.engineer)" },
];

pub(super) static DOUBTS: [&str; 5] = [
    "",
    "one reprint of DIN ISO 2768-1 prints 0.15; the value kept is in two others",
    "one reprint of DIN ISO 2768-1 prints 0.2; the value kept is in two others",
    "one reprint heads this range 2000 to 3000; it is 2000 to 4000",
    "one reprint prints 20 minutes; 15 is in the others",
];

pub(super) static LINEAR: [Row; 8] = [
    Row { up_to: Length::from_tenth_nanometres(30000000), values: [500000, 1000000, 2000000, 0], sources: [0, 0, 0, 0], doubts: [0, 0, 1, 0] },
    Row { up_to: Length::from_tenth_nanometres(60000000), values: [500000, 1000000, 3000000, 5000000], sources: [0, 0, 0, 0], doubts: [0, 0, 2, 0] },
    Row { up_to: Length::from_tenth_nanometres(300000000), values: [1000000, 2000000, 5000000, 10000000], sources: [0, 0, 0, 0], doubts: [0, 0, 0, 0] },
    Row { up_to: Length::from_tenth_nanometres(1200000000), values: [1500000, 3000000, 8000000, 15000000], sources: [0, 0, 0, 0], doubts: [0, 0, 0, 0] },
    Row { up_to: Length::from_tenth_nanometres(4000000000), values: [2000000, 5000000, 12000000, 25000000], sources: [0, 0, 0, 0], doubts: [0, 0, 0, 0] },
    Row { up_to: Length::from_tenth_nanometres(10000000000), values: [3000000, 8000000, 20000000, 40000000], sources: [0, 0, 0, 0], doubts: [0, 0, 0, 0] },
    Row { up_to: Length::from_tenth_nanometres(20000000000), values: [5000000, 12000000, 30000000, 60000000], sources: [0, 0, 0, 0], doubts: [0, 0, 0, 0] },
    Row { up_to: Length::from_tenth_nanometres(40000000000), values: [0, 20000000, 40000000, 80000000], sources: [0, 0, 0, 0], doubts: [0, 3, 3, 3] },
];

pub(super) static EDGE: [Row; 3] = [
    Row { up_to: Length::from_tenth_nanometres(30000000), values: [2000000, 2000000, 4000000, 4000000], sources: [1, 1, 1, 1], doubts: [0, 0, 0, 0] },
    Row { up_to: Length::from_tenth_nanometres(60000000), values: [5000000, 5000000, 10000000, 10000000], sources: [1, 1, 1, 1], doubts: [0, 0, 0, 0] },
    Row { up_to: Length::MAX, values: [10000000, 10000000, 20000000, 20000000], sources: [1, 1, 1, 1], doubts: [0, 0, 0, 0] },
];

pub(super) static ANGULAR: [Row; 5] = [
    Row { up_to: Length::from_tenth_nanometres(100000000), values: [60, 60, 90, 180], sources: [2, 2, 2, 2], doubts: [0, 0, 0, 0] },
    Row { up_to: Length::from_tenth_nanometres(500000000), values: [30, 30, 60, 120], sources: [2, 2, 2, 2], doubts: [0, 0, 0, 0] },
    Row { up_to: Length::from_tenth_nanometres(1200000000), values: [20, 20, 30, 60], sources: [2, 2, 2, 2], doubts: [0, 0, 0, 0] },
    Row { up_to: Length::from_tenth_nanometres(4000000000), values: [10, 10, 15, 30], sources: [2, 2, 2, 2], doubts: [0, 0, 4, 0] },
    Row { up_to: Length::MAX, values: [5, 5, 10, 20], sources: [2, 2, 2, 2], doubts: [0, 0, 0, 0] },
];
