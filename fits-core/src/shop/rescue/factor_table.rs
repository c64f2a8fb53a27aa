//! Generated from `data/rescue/factors.csv` by `tests/rescue_tables.rs`; do not edit.

use super::compound::Factor;
use crate::source::{Known, Provenance};

pub(super) static FACTORS: [Factor; 17] = [
    Factor { group: "gap", name: "", at: 0.05, times: 1.0, from: Provenance { known: Known::Memory, text: "steady after 24 to 72 h, unconfirmed; data sheets print falling curves at 0.05, 0.15 and 0.25 mm" } },
    Factor { group: "gap", name: "", at: 0.1, times: 0.8, from: Provenance { known: Known::Memory, text: "steady after 24 to 72 h, unconfirmed; data sheets print falling curves at 0.05, 0.15 and 0.25 mm" } },
    Factor { group: "gap", name: "", at: 0.15, times: 0.6, from: Provenance { known: Known::Memory, text: "steady after 24 to 72 h, unconfirmed; data sheets print falling curves at 0.05, 0.15 and 0.25 mm" } },
    Factor { group: "gap", name: "", at: 0.25, times: 0.4, from: Provenance { known: Known::Memory, text: "steady after 24 to 72 h, unconfirmed; data sheets print falling curves at 0.05, 0.15 and 0.25 mm" } },
    Factor { group: "metal", name: "steel", at: 0.0, times: 1.0, from: Provenance { known: Known::Memory, text: "unconfirmed: the metal that data sheets print" } },
    Factor { group: "metal", name: "stainless steel", at: 0.0, times: 0.6, from: Provenance { known: Known::Memory, text: "unconfirmed; data sheets print slower cure on stainless, aluminium and zinc" } },
    Factor { group: "metal", name: "aluminium", at: 0.0, times: 0.5, from: Provenance { known: Known::Memory, text: "unconfirmed; data sheets print slower cure on stainless, aluminium and zinc" } },
    Factor { group: "metal", name: "zinc plate", at: 0.0, times: 0.3, from: Provenance { known: Known::Memory, text: "unconfirmed; data sheets print slower cure on stainless, aluminium and zinc" } },
    Factor { group: "metal", name: "cast iron", at: 0.0, times: 0.9, from: Provenance { known: Known::Memory, text: "unconfirmed" } },
    Factor { group: "metal", name: "other", at: 0.0, times: 0.5, from: Provenance { known: Known::Practice, text: "common practice, no source: no figure read, the weaker half is taken" } },
    Factor { group: "heat", name: "", at: 23.0, times: 1.0, from: Provenance { known: Known::Memory, text: "unconfirmed" } },
    Factor { group: "heat", name: "", at: 100.0, times: 0.7, from: Provenance { known: Known::Memory, text: "unconfirmed" } },
    Factor { group: "heat", name: "", at: 120.0, times: 0.5, from: Provenance { known: Known::Memory, text: "unconfirmed" } },
    Factor { group: "heat", name: "", at: 150.0, times: 0.3, from: Provenance { known: Known::Memory, text: "unconfirmed" } },
    Factor { group: "oil", name: "", at: 0.0, times: 0.6, from: Provenance { known: Known::Seen, text: "an oil-tolerant retainer's page: as little as 60 percent is kept on oily parts" } },
    Factor { group: "safety", name: "steady", at: 0.0, times: 3.0, from: Provenance { known: Known::Memory, text: "2 to 3 for steady loads, unconfirmed: the larger is taken" } },
    Factor { group: "safety", name: "shock", at: 0.0, times: 10.0, from: Provenance { known: Known::Memory, text: "5 to 10 for shock and reversal, unconfirmed: the larger is taken" } },
];
