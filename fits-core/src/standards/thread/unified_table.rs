//! Generated from `data/threads/` by `tests/thread_tables.rs`; do not edit.

use super::{Series, Side, unified::{Exception, Odd, Root}, unified_series::{Constant, Listed}};
use crate::{size::Length, source::{Known, Provenance}};

pub(super) static SOURCES: [Provenance; 7] = [
    Provenance { known: Known::Seen, text: "UNF basic dimensions, a fastener dealer's table" },
    Provenance { known: Known::Seen, text: "Machinery's Handbook 31st ed., p. 1978, table 4a" },
    Provenance { known: Known::Seen, text: "Machinery's Handbook 31st ed., p. 1980, Table 4c" },
    Provenance { known: Known::Memory, text: "ASME B1.1, table of standard series, unconfirmed" },
    Provenance { known: Known::Seen, text: "Machinery's Handbook 31st ed., Table 3 (the formula gives 0.00165)" },
    Provenance { known: Known::Seen, text: "Machinery's Handbook 31st ed., Table 3; thread ring gauge list; screw size chart (the formula gives 0.00165)" },
    Provenance { known: Known::Seen, text: "two lists of class 2A and 3A limits after ASME B1.1: the tolerance of a 1/2 in diameter" },
];

pub(super) static SERIES: [Listed; 82] = [
    Listed { major: Length::from_tenth_nanometres(15240000), half_turns: 160, series: Series::Fine, source: 0 }, // No. 0-80
    Listed { major: Length::from_tenth_nanometres(18542000), half_turns: 128, series: Series::Coarse, source: 1 }, // No. 1-64
    Listed { major: Length::from_tenth_nanometres(18542000), half_turns: 144, series: Series::Fine, source: 0 }, // No. 1-72
    Listed { major: Length::from_tenth_nanometres(21844000), half_turns: 112, series: Series::Coarse, source: 1 }, // No. 2-56
    Listed { major: Length::from_tenth_nanometres(21844000), half_turns: 128, series: Series::Fine, source: 0 }, // No. 2-64
    Listed { major: Length::from_tenth_nanometres(25146000), half_turns: 96, series: Series::Coarse, source: 1 }, // No. 3-48
    Listed { major: Length::from_tenth_nanometres(25146000), half_turns: 112, series: Series::Fine, source: 0 }, // No. 3-56
    Listed { major: Length::from_tenth_nanometres(28448000), half_turns: 80, series: Series::Coarse, source: 1 }, // No. 4-40
    Listed { major: Length::from_tenth_nanometres(28448000), half_turns: 96, series: Series::Fine, source: 0 }, // No. 4-48
    Listed { major: Length::from_tenth_nanometres(31750000), half_turns: 80, series: Series::Coarse, source: 1 }, // No. 5-40
    Listed { major: Length::from_tenth_nanometres(31750000), half_turns: 88, series: Series::Fine, source: 0 }, // No. 5-44
    Listed { major: Length::from_tenth_nanometres(35052000), half_turns: 64, series: Series::Coarse, source: 1 }, // No. 6-32
    Listed { major: Length::from_tenth_nanometres(35052000), half_turns: 80, series: Series::Fine, source: 0 }, // No. 6-40
    Listed { major: Length::from_tenth_nanometres(41656000), half_turns: 64, series: Series::Coarse, source: 1 }, // No. 8-32
    Listed { major: Length::from_tenth_nanometres(41656000), half_turns: 72, series: Series::Fine, source: 0 }, // No. 8-36
    Listed { major: Length::from_tenth_nanometres(48260000), half_turns: 48, series: Series::Coarse, source: 1 }, // No. 10-24
    Listed { major: Length::from_tenth_nanometres(48260000), half_turns: 64, series: Series::Fine, source: 0 }, // No. 10-32
    Listed { major: Length::from_tenth_nanometres(54864000), half_turns: 48, series: Series::Coarse, source: 1 }, // No. 12-24
    Listed { major: Length::from_tenth_nanometres(54864000), half_turns: 56, series: Series::Fine, source: 0 }, // No. 12-28
    Listed { major: Length::from_tenth_nanometres(54864000), half_turns: 64, series: Series::ExtraFine, source: 2 }, // No. 12-32
    Listed { major: Length::from_tenth_nanometres(63500000), half_turns: 40, series: Series::Coarse, source: 1 }, // 1/4-20
    Listed { major: Length::from_tenth_nanometres(63500000), half_turns: 56, series: Series::Fine, source: 0 }, // 1/4-28
    Listed { major: Length::from_tenth_nanometres(63500000), half_turns: 64, series: Series::ExtraFine, source: 2 }, // 1/4-32
    Listed { major: Length::from_tenth_nanometres(79375000), half_turns: 36, series: Series::Coarse, source: 1 }, // 5/16-18
    Listed { major: Length::from_tenth_nanometres(79375000), half_turns: 48, series: Series::Fine, source: 0 }, // 5/16-24
    Listed { major: Length::from_tenth_nanometres(79375000), half_turns: 64, series: Series::ExtraFine, source: 2 }, // 5/16-32
    Listed { major: Length::from_tenth_nanometres(95250000), half_turns: 32, series: Series::Coarse, source: 1 }, // 3/8-16
    Listed { major: Length::from_tenth_nanometres(95250000), half_turns: 48, series: Series::Fine, source: 0 }, // 3/8-24
    Listed { major: Length::from_tenth_nanometres(95250000), half_turns: 64, series: Series::ExtraFine, source: 2 }, // 3/8-32
    Listed { major: Length::from_tenth_nanometres(111125000), half_turns: 28, series: Series::Coarse, source: 1 }, // 7/16-14
    Listed { major: Length::from_tenth_nanometres(111125000), half_turns: 40, series: Series::Fine, source: 0 }, // 7/16-20
    Listed { major: Length::from_tenth_nanometres(111125000), half_turns: 56, series: Series::ExtraFine, source: 2 }, // 7/16-28
    Listed { major: Length::from_tenth_nanometres(127000000), half_turns: 26, series: Series::Coarse, source: 1 }, // 1/2-13
    Listed { major: Length::from_tenth_nanometres(127000000), half_turns: 40, series: Series::Fine, source: 0 }, // 1/2-20
    Listed { major: Length::from_tenth_nanometres(127000000), half_turns: 56, series: Series::ExtraFine, source: 2 }, // 1/2-28
    Listed { major: Length::from_tenth_nanometres(142875000), half_turns: 24, series: Series::Coarse, source: 1 }, // 9/16-12
    Listed { major: Length::from_tenth_nanometres(142875000), half_turns: 36, series: Series::Fine, source: 0 }, // 9/16-18
    Listed { major: Length::from_tenth_nanometres(142875000), half_turns: 48, series: Series::ExtraFine, source: 2 }, // 9/16-24
    Listed { major: Length::from_tenth_nanometres(158750000), half_turns: 22, series: Series::Coarse, source: 1 }, // 5/8-11
    Listed { major: Length::from_tenth_nanometres(158750000), half_turns: 36, series: Series::Fine, source: 0 }, // 5/8-18
    Listed { major: Length::from_tenth_nanometres(158750000), half_turns: 48, series: Series::ExtraFine, source: 2 }, // 5/8-24
    Listed { major: Length::from_tenth_nanometres(174625000), half_turns: 48, series: Series::ExtraFine, source: 2 }, // 11/16-24
    Listed { major: Length::from_tenth_nanometres(190500000), half_turns: 20, series: Series::Coarse, source: 1 }, // 3/4-10
    Listed { major: Length::from_tenth_nanometres(190500000), half_turns: 32, series: Series::Fine, source: 0 }, // 3/4-16
    Listed { major: Length::from_tenth_nanometres(190500000), half_turns: 40, series: Series::ExtraFine, source: 2 }, // 3/4-20
    Listed { major: Length::from_tenth_nanometres(206375000), half_turns: 40, series: Series::ExtraFine, source: 2 }, // 13/16-20
    Listed { major: Length::from_tenth_nanometres(222250000), half_turns: 18, series: Series::Coarse, source: 1 }, // 7/8-9
    Listed { major: Length::from_tenth_nanometres(222250000), half_turns: 28, series: Series::Fine, source: 0 }, // 7/8-14
    Listed { major: Length::from_tenth_nanometres(222250000), half_turns: 40, series: Series::ExtraFine, source: 2 }, // 7/8-20
    Listed { major: Length::from_tenth_nanometres(238125000), half_turns: 40, series: Series::ExtraFine, source: 2 }, // 15/16-20
    Listed { major: Length::from_tenth_nanometres(254000000), half_turns: 16, series: Series::Coarse, source: 1 }, // 1-8
    Listed { major: Length::from_tenth_nanometres(254000000), half_turns: 24, series: Series::Fine, source: 0 }, // 1-12
    Listed { major: Length::from_tenth_nanometres(254000000), half_turns: 40, series: Series::ExtraFine, source: 2 }, // 1-20
    Listed { major: Length::from_tenth_nanometres(269875000), half_turns: 36, series: Series::ExtraFine, source: 2 }, // 1-1/16-18
    Listed { major: Length::from_tenth_nanometres(285750000), half_turns: 14, series: Series::Coarse, source: 1 }, // 1-1/8-7
    Listed { major: Length::from_tenth_nanometres(285750000), half_turns: 24, series: Series::Fine, source: 0 }, // 1-1/8-12
    Listed { major: Length::from_tenth_nanometres(285750000), half_turns: 36, series: Series::ExtraFine, source: 2 }, // 1-1/8-18
    Listed { major: Length::from_tenth_nanometres(301625000), half_turns: 36, series: Series::ExtraFine, source: 2 }, // 1-3/16-18
    Listed { major: Length::from_tenth_nanometres(317500000), half_turns: 14, series: Series::Coarse, source: 1 }, // 1-1/4-7
    Listed { major: Length::from_tenth_nanometres(317500000), half_turns: 24, series: Series::Fine, source: 0 }, // 1-1/4-12
    Listed { major: Length::from_tenth_nanometres(317500000), half_turns: 36, series: Series::ExtraFine, source: 2 }, // 1-1/4-18
    Listed { major: Length::from_tenth_nanometres(333375000), half_turns: 36, series: Series::ExtraFine, source: 2 }, // 1-5/16-18
    Listed { major: Length::from_tenth_nanometres(349250000), half_turns: 12, series: Series::Coarse, source: 1 }, // 1-3/8-6
    Listed { major: Length::from_tenth_nanometres(349250000), half_turns: 24, series: Series::Fine, source: 0 }, // 1-3/8-12
    Listed { major: Length::from_tenth_nanometres(349250000), half_turns: 36, series: Series::ExtraFine, source: 2 }, // 1-3/8-18
    Listed { major: Length::from_tenth_nanometres(365125000), half_turns: 36, series: Series::ExtraFine, source: 2 }, // 1-7/16-18
    Listed { major: Length::from_tenth_nanometres(381000000), half_turns: 12, series: Series::Coarse, source: 1 }, // 1-1/2-6
    Listed { major: Length::from_tenth_nanometres(381000000), half_turns: 24, series: Series::Fine, source: 0 }, // 1-1/2-12
    Listed { major: Length::from_tenth_nanometres(381000000), half_turns: 36, series: Series::ExtraFine, source: 2 }, // 1-1/2-18
    Listed { major: Length::from_tenth_nanometres(396875000), half_turns: 36, series: Series::ExtraFine, source: 2 }, // 1-9/16-18
    Listed { major: Length::from_tenth_nanometres(412750000), half_turns: 36, series: Series::ExtraFine, source: 2 }, // 1-5/8-18
    Listed { major: Length::from_tenth_nanometres(428625000), half_turns: 36, series: Series::ExtraFine, source: 2 }, // 1-11/16-18
    Listed { major: Length::from_tenth_nanometres(444500000), half_turns: 10, series: Series::Coarse, source: 1 }, // 1-3/4-5
    Listed { major: Length::from_tenth_nanometres(508000000), half_turns: 9, series: Series::Coarse, source: 1 }, // 2-4.5
    Listed { major: Length::from_tenth_nanometres(571500000), half_turns: 9, series: Series::Coarse, source: 1 }, // 2-1/4-4.5
    Listed { major: Length::from_tenth_nanometres(635000000), half_turns: 8, series: Series::Coarse, source: 1 }, // 2-1/2-4
    Listed { major: Length::from_tenth_nanometres(698500000), half_turns: 8, series: Series::Coarse, source: 1 }, // 2-3/4-4
    Listed { major: Length::from_tenth_nanometres(762000000), half_turns: 8, series: Series::Coarse, source: 1 }, // 3-4
    Listed { major: Length::from_tenth_nanometres(825500000), half_turns: 8, series: Series::Coarse, source: 1 }, // 3-1/4-4
    Listed { major: Length::from_tenth_nanometres(889000000), half_turns: 8, series: Series::Coarse, source: 1 }, // 3-1/2-4
    Listed { major: Length::from_tenth_nanometres(952500000), half_turns: 8, series: Series::Coarse, source: 1 }, // 3-3/4-4
    Listed { major: Length::from_tenth_nanometres(1016000000), half_turns: 8, series: Series::Coarse, source: 1 }, // 4-4
];

pub(super) static CONSTANT: [Constant; 8] = [
    Constant { turns: 4, from: Length::from_tenth_nanometres(635000000), up_to: Length::from_tenth_nanometres(1524000000), source: 3 },
    Constant { turns: 6, from: Length::from_tenth_nanometres(349250000), up_to: Length::from_tenth_nanometres(1524000000), source: 3 },
    Constant { turns: 8, from: Length::from_tenth_nanometres(254000000), up_to: Length::from_tenth_nanometres(1524000000), source: 3 },
    Constant { turns: 12, from: Length::from_tenth_nanometres(142875000), up_to: Length::from_tenth_nanometres(1524000000), source: 3 },
    Constant { turns: 16, from: Length::from_tenth_nanometres(95250000), up_to: Length::from_tenth_nanometres(1524000000), source: 3 },
    Constant { turns: 20, from: Length::from_tenth_nanometres(63500000), up_to: Length::from_tenth_nanometres(762000000), source: 3 },
    Constant { turns: 28, from: Length::from_tenth_nanometres(54864000), up_to: Length::from_tenth_nanometres(381000000), source: 3 },
    Constant { turns: 32, from: Length::from_tenth_nanometres(35052000), up_to: Length::from_tenth_nanometres(254000000), source: 3 },
];

pub(super) static EXCEPTIONS: [Exception; 4] = [
    Exception { major: Length::from_tenth_nanometres(158750000), half_turns: 22, side: Side::External, class: 1, figure: Odd::Allowance, microinches: 1600, source: 4 }, // 5/8-11
    Exception { major: Length::from_tenth_nanometres(158750000), half_turns: 22, side: Side::External, class: 2, figure: Odd::Allowance, microinches: 1600, source: 5 }, // 5/8-11
    Exception { major: Length::from_tenth_nanometres(142875000), half_turns: 48, side: Side::External, class: 2, figure: Odd::PitchTolerance, microinches: 3900, source: 6 }, // 9/16-24
    Exception { major: Length::from_tenth_nanometres(142875000), half_turns: 48, side: Side::External, class: 3, figure: Odd::PitchTolerance, microinches: 2900, source: 6 }, // 9/16-24
];

pub(super) static ROOTS: [Root; 26] = [
    Root { half_turns: 160, microinches: 14900 }, // 80
    Root { half_turns: 144, microinches: 16500 }, // 72
    Root { half_turns: 128, microinches: 18600 }, // 64
    Root { half_turns: 112, microinches: 21200 }, // 56
    Root { half_turns: 96, microinches: 24900 }, // 48
    Root { half_turns: 88, microinches: 27100 }, // 44
    Root { half_turns: 80, microinches: 29800 }, // 40
    Root { half_turns: 72, microinches: 33100 }, // 36
    Root { half_turns: 64, microinches: 37200 }, // 32
    Root { half_turns: 56, microinches: 42600 }, // 28
    Root { half_turns: 48, microinches: 49600 }, // 24
    Root { half_turns: 40, microinches: 59500 }, // 20
    Root { half_turns: 36, microinches: 66100 }, // 18
    Root { half_turns: 32, microinches: 74500 }, // 16
    Root { half_turns: 28, microinches: 85000 }, // 14
    Root { half_turns: 26, microinches: 91600 }, // 13
    Root { half_turns: 24, microinches: 99200 }, // 12
    Root { half_turns: 22, microinches: 108200 }, // 11
    Root { half_turns: 20, microinches: 119100 }, // 10
    Root { half_turns: 18, microinches: 132300 }, // 9
    Root { half_turns: 16, microinches: 148800 }, // 8
    Root { half_turns: 14, microinches: 170100 }, // 7
    Root { half_turns: 12, microinches: 198400 }, // 6
    Root { half_turns: 10, microinches: 238100 }, // 5
    Root { half_turns: 9, microinches: 264700 }, // 4.5
    Root { half_turns: 8, microinches: 297700 }, // 4
];
