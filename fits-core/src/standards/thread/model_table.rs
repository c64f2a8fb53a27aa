//! Generated from `data/threads/model_engineer.csv` by `tests/rescue_tables.rs`; do not edit.

use super::by_mic::Model;
use crate::{size::Length, source::{Known, Provenance}};

pub(super) static MODEL: [Model; 6] = [
    Model { size: "5/32", major: Length::from_tenth_nanometres(39687500), tpi: 40, tap: Length::from_tenth_nanometres(33000000), second_tap: Length::from_tenth_nanometres(32639000), from: Provenance { known: Known::Seen, text: "tapping drills of ministeam.net, page 30; British threads of ibls.org, Standard Screw Threads and Tap Drill Sizes" } },
    Model { size: "3/16", major: Length::from_tenth_nanometres(47625000), tpi: 40, tap: Length::from_tenth_nanometres(41000000), second_tap: Length::from_tenth_nanometres(39687500), from: Provenance { known: Known::Seen, text: "tapping drills of ministeam.net, page 30; British threads of ibls.org, Standard Screw Threads and Tap Drill Sizes" } },
    Model { size: "7/32", major: Length::from_tenth_nanometres(55562500), tpi: 40, tap: Length::from_tenth_nanometres(50000000), second_tap: Length::from_tenth_nanometres(47625000), from: Provenance { known: Known::Seen, text: "tapping drills of ministeam.net, page 30; British threads of ibls.org, Standard Screw Threads and Tap Drill Sizes" } },
    Model { size: "1/4", major: Length::from_tenth_nanometres(63500000), tpi: 40, tap: Length::from_tenth_nanometres(58000000), second_tap: Length::from_tenth_nanometres(55562500), from: Provenance { known: Known::Seen, text: "tapping drills of ministeam.net, page 30; British threads of ibls.org, Standard Screw Threads and Tap Drill Sizes" } },
    Model { size: "5/16", major: Length::from_tenth_nanometres(79375000), tpi: 32, tap: Length::from_tenth_nanometres(71500000), second_tap: Length::from_tenth_nanometres(70358000), from: Provenance { known: Known::Seen, text: "tapping drills of ministeam.net, page 30; British threads of ibls.org, Standard Screw Threads and Tap Drill Sizes" } },
    Model { size: "3/8", major: Length::from_tenth_nanometres(95250000), tpi: 32, tap: Length::from_tenth_nanometres(87500000), second_tap: Length::from_tenth_nanometres(84328000), from: Provenance { known: Known::Seen, text: "tapping drills of ministeam.net, page 30; British threads of ibls.org, Standard Screw Threads and Tap Drill Sizes" } },
];
