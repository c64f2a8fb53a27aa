//! Generated from `data/threads/` by `tests/thread_tables.rs`; do not edit.

use super::metric::{Cell, Listed, PitchRow, Step, StepRow};
use crate::{size::Length, source::{Known, Provenance}};

const NONE: Cell = Cell { micrometres: 0, source: 0 };

pub(super) static SOURCES: [Provenance; 92] = [
    Provenance { known: Known::Seen, text: "Polish textbook table of fundamental deviations of metric threads, pitches 0.2 to 6 mm, published web page" },
    Provenance { known: Known::Memory, text: "ISO 965-1, table of tolerances, recalled" },
    Provenance { known: Known::Seen, text: "width of the 6g limits of M1x0.2: thread table of an open CAD library (BSD-3-Clause, commit 3830919), after DIN 13" },
    Provenance { known: Known::Seen, text: "ISO 965-1 table of minor diameter tolerances of internal threads, published web page" },
    Provenance { known: Known::Seen, text: "width of the 6g limits of M1x0.25: thread table of an open CAD library (BSD-3-Clause, commit 3830919), after DIN 13" },
    Provenance { known: Known::Seen, text: "width of the 5H limits of M1x0.25: Summary of GB/T 9145-2003 limits, same numbers as ISO 965-2" },
    Provenance { known: Known::Seen, text: "width of the 6g limits of M1.4x0.3: thread table of an open CAD library (BSD-3-Clause, commit 3830919), after DIN 13" },
    Provenance { known: Known::Seen, text: "width of the 6g limits of M1.6x0.35: Metric external thread chart 6g" },
    Provenance { known: Known::Seen, text: "width of the 6H limits of M1.8x0.35: thread table of an open CAD library (BSD-3-Clause, commit 3830919), after DIN 13" },
    Provenance { known: Known::Seen, text: "width of the 6g limits of M2.3x0.4: thread table of an open CAD library (BSD-3-Clause, commit 3830919), after DIN 13" },
    Provenance { known: Known::Seen, text: "width of the 6H limits of M2.3x0.4: thread table of an open CAD library (BSD-3-Clause, commit 3830919), after DIN 13" },
    Provenance { known: Known::Seen, text: "width of the 6g limits of M2.5x0.45: Metric external thread chart 6g" },
    Provenance { known: Known::Seen, text: "width of the 6g limits of M7x0.5: Metric external thread chart 6g" },
    Provenance { known: Known::Seen, text: "width of the 6H limits of M12x0.5: Internal metric thread table M9-M24 6H" },
    Provenance { known: Known::Seen, text: "width of the 6g limits of M3.5x0.6: Metric pitch diameter table for roll threads, ASME B1.13M values" },
    Provenance { known: Known::Seen, text: "width of the 6g limits of M4x0.7: Tool catalogue pages 711-712, limits after ISO 965, class 6g or 6h" },
    Provenance { known: Known::Seen, text: "width of the 6H limits of M4x0.7: thread table of an open CAD library (BSD-3-Clause, commit 3830919), after DIN 13" },
    Provenance { known: Known::Seen, text: "width of the 6g limits of M8x0.75: Metric external thread chart 6g" },
    Provenance { known: Known::Seen, text: "width of the 6H limits of M11x0.75: Internal metric thread table M9-M24 6H" },
    Provenance { known: Known::Seen, text: "width of the 6g limits of M5x0.8: Metric pitch diameter table for roll threads, ASME B1.13M values" },
    Provenance { known: Known::Seen, text: "width of the 6H limits of M6x0.8: thread table of an open CAD library (BSD-3-Clause, commit 3830919), after DIN 13" },
    Provenance { known: Known::Seen, text: "width of the 6g limits of M7x1: Metric external thread chart 6g" },
    Provenance { known: Known::Seen, text: "width of the 6H limits of M9x1: Internal metric thread table M9-M24 6H" },
    Provenance { known: Known::Seen, text: "width of the 6g limits of M8x1.25: Metric external thread chart 6g" },
    Provenance { known: Known::Seen, text: "width of the 6H limits of M10x1.25: Internal metric thread table M9-M24 6H" },
    Provenance { known: Known::Seen, text: "width of the 6g limits of M10x1.5: Metric pitch diameter table for roll threads, ASME B1.13M values" },
    Provenance { known: Known::Seen, text: "width of the 6H limits of M14x1.5: Internal metric thread table M9-M24 6H" },
    Provenance { known: Known::Seen, text: "deviation rows printed with reproductions of ISO 965-4 and ISO 965-5" },
    Provenance { known: Known::Seen, text: "width of the 6H limits of M12x1.75: Internal metric thread table M9-M24 6H" },
    Provenance { known: Known::Seen, text: "width of the 6g limits of M20x2: Tool catalogue pages 711-712, limits after ISO 965, class 6g or 6h" },
    Provenance { known: Known::Seen, text: "width of the 6H limits of M18x2.5: thread table of an open CAD library (BSD-3-Clause, commit 3830919), after DIN 13" },
    Provenance { known: Known::Seen, text: "width of the 6H limits of M24x3: thread table of an open CAD library (BSD-3-Clause, commit 3830919), after DIN 13" },
    Provenance { known: Known::Seen, text: "width of the 6H limits of M30x3.5: thread table of an open CAD library (BSD-3-Clause, commit 3830919), after DIN 13" },
    Provenance { known: Known::Seen, text: "width of the 6H limits of M42x4.5: thread table of an open CAD library (BSD-3-Clause, commit 3830919), after DIN 13" },
    Provenance { known: Known::Seen, text: "width of the 6H limits of M52x5: thread table of an open CAD library (BSD-3-Clause, commit 3830919), after DIN 13" },
    Provenance { known: Known::Seen, text: "width of the 6H limits of M60x5.5: thread table of an open CAD library (BSD-3-Clause, commit 3830919), after DIN 13" },
    Provenance { known: Known::Seen, text: "width of the 6H limits of M68x6: thread table of an open CAD library (BSD-3-Clause, commit 3830919), after DIN 13" },
    Provenance { known: Known::Memory, text: "ISO 965-1, table of fundamental deviations, recalled" },
    Provenance { known: Known::Seen, text: "thread table of a general-purpose CAD program" },
    Provenance { known: Known::Seen, text: "width of the 6h limits of M1.2x0.25: Tool catalogue pages 711-712, limits after ISO 965, class 6g or 6h" },
    Provenance { known: Known::Seen, text: "width of the 5H limits of M1.4x0.3: Yamawa tap catalogue 2021 p.645/656 pitch-diameter tolerance chart" },
    Provenance { known: Known::Seen, text: "ISO 965-1 table of pitch diameter tolerances of external threads, published web page" },
    Provenance { known: Known::Seen, text: "width of the 6g limits of M1.6x0.2: thread table of an open CAD library (BSD-3-Clause, commit 3830919), after DIN 13" },
    Provenance { known: Known::Seen, text: "width of the 4g6g limits of M1.6x0.35: Metric pitch diameter table for roll threads, ASME B1.13M values" },
    Provenance { known: Known::Seen, text: "width of the 4H limits of M1.6x0.35: Yamawa tap catalogue 2021 p.645/656 pitch-diameter tolerance chart" },
    Provenance { known: Known::Seen, text: "width of the 4H limits of M2x0.4: Yamawa tap catalogue 2021 p.645/656 pitch-diameter tolerance chart" },
    Provenance { known: Known::Seen, text: "width of the 6H limits of M2x0.4: Gauge maker standard pitch diameter chart, metric" },
    Provenance { known: Known::Seen, text: "width of the 4g6g limits of M2.5x0.45: Metric pitch diameter table for roll threads, ASME B1.13M values" },
    Provenance { known: Known::Seen, text: "width of the 4H limits of M2.2x0.45: Yamawa tap catalogue 2021 p.645/656 pitch-diameter tolerance chart" },
    Provenance { known: Known::Seen, text: "width of the 5H limits of M2.2x0.45: Yamawa tap catalogue 2021 p.645/656 pitch-diameter tolerance chart" },
    Provenance { known: Known::Seen, text: "width of the 6H limits of M2.5x0.45: Yamawa tap catalogue 2021 p.645/656 pitch-diameter tolerance chart" },
    Provenance { known: Known::Seen, text: "width of the 6g limits of M3x0.35: Metric external thread chart 6g" },
    Provenance { known: Known::Seen, text: "width of the 6H limits of M3.5x0.35: thread table of an open CAD library (BSD-3-Clause, commit 3830919), after DIN 13" },
    Provenance { known: Known::Seen, text: "width of the 4g6g limits of M3x0.5: Metric pitch diameter table for roll threads, ASME B1.13M values" },
    Provenance { known: Known::Seen, text: "width of the 4H limits of M3x0.5: Yamawa tap catalogue 2021 p.645/656 pitch-diameter tolerance chart" },
    Provenance { known: Known::Seen, text: "width of the 6H limits of M3x0.5: Yamawa tap catalogue 2021 p.645/656 pitch-diameter tolerance chart" },
    Provenance { known: Known::Seen, text: "width of the 4g6g limits of M3.5x0.6: Metric pitch diameter table for roll threads, ASME B1.13M values" },
    Provenance { known: Known::Seen, text: "width of the 4H limits of M3.5x0.6: Yamawa tap catalogue 2021 p.645/656 pitch-diameter tolerance chart" },
    Provenance { known: Known::Seen, text: "width of the 6H limits of M3.5x0.6: Yamawa tap catalogue 2021 p.645/656 pitch-diameter tolerance chart" },
    Provenance { known: Known::Seen, text: "width of the 4H limits of M4x0.7: Yamawa tap catalogue 2021 p.645/656 pitch-diameter tolerance chart" },
    Provenance { known: Known::Seen, text: "width of the 5H limits of M4x0.7: Yamawa tap catalogue 2021 p.645/656 pitch-diameter tolerance chart" },
    Provenance { known: Known::Seen, text: "width of the 6g limits of M4.5x0.75: thread table of an open CAD library (BSD-3-Clause, commit 3830919), after DIN 13" },
    Provenance { known: Known::Seen, text: "width of the 5H limits of M4.5x0.75: Yamawa tap catalogue 2021 p.645/656 pitch-diameter tolerance chart" },
    Provenance { known: Known::Seen, text: "width of the 6H limits of M4.5x0.75: Yamawa tap catalogue 2021 p.645/656 pitch-diameter tolerance chart" },
    Provenance { known: Known::Seen, text: "width of the 4H limits of M5x0.8: Yamawa tap catalogue 2021 p.645/656 pitch-diameter tolerance chart" },
    Provenance { known: Known::Seen, text: "width of the 5H limits of M5x0.8: Yamawa tap catalogue 2021 p.645/656 pitch-diameter tolerance chart" },
    Provenance { known: Known::Seen, text: "width of the 6H limits of M5x0.8: Yamawa tap catalogue 2021 p.645/656 pitch-diameter tolerance chart" },
    Provenance { known: Known::Seen, text: "width of the 4g6g limits of M10x0.75: Metric pitch diameter table for roll threads, ASME B1.13M values" },
    Provenance { known: Known::Seen, text: "width of the 4H limits of M6x1: Yamawa tap catalogue 2021 p.645/656 pitch-diameter tolerance chart" },
    Provenance { known: Known::Seen, text: "width of the 5H limits of M6x1: Yamawa tap catalogue 2021 p.645/656 pitch-diameter tolerance chart" },
    Provenance { known: Known::Seen, text: "width of the 6H limits of M10x1: Internal metric thread table M9-M24 6H" },
    Provenance { known: Known::Seen, text: "width of the 5H limits of M8x1.25: Yamawa tap catalogue 2021 p.645/656 pitch-diameter tolerance chart" },
    Provenance { known: Known::Seen, text: "width of the 4g6g limits of M10x1.5: Metric pitch diameter table for roll threads, ASME B1.13M values" },
    Provenance { known: Known::Seen, text: "width of the 6H limits of M10x1.5: Gauge maker standard pitch diameter chart, metric" },
    Provenance { known: Known::Seen, text: "width of the 6H limits of M12x1: Internal metric thread table M9-M24 6H" },
    Provenance { known: Known::Seen, text: "width of the 6g limits of M12x1.25: Tool catalogue pages 711-712, limits after ISO 965, class 6g or 6h" },
    Provenance { known: Known::Seen, text: "width of the 6g limits of M16x1.5: Tool catalogue pages 711-712, limits after ISO 965, class 6g or 6h" },
    Provenance { known: Known::Seen, text: "width of the 6g limits of M18x2: Tool catalogue pages 711-712, limits after ISO 965, class 6g or 6h" },
    Provenance { known: Known::Seen, text: "width of the 6H limits of M14x2: thread table of an open CAD library (BSD-3-Clause, commit 3830919), after DIN 13" },
    Provenance { known: Known::Seen, text: "width of the 6H limits of M25x1.5: thread table of an open CAD library (BSD-3-Clause, commit 3830919), after DIN 13" },
    Provenance { known: Known::Seen, text: "width of the 6H limits of M24x2: thread table of an open CAD library (BSD-3-Clause, commit 3830919), after DIN 13" },
    Provenance { known: Known::Seen, text: "width of the 6H limits of M39x4: thread table of an open CAD library (BSD-3-Clause, commit 3830919), after DIN 13" },
    Provenance { known: Known::Seen, text: "width of the 6H limits of M56x1.5: thread table of an open CAD library (BSD-3-Clause, commit 3830919), after DIN 13" },
    Provenance { known: Known::Seen, text: "width of the 6H limits of M48x2: thread table of an open CAD library (BSD-3-Clause, commit 3830919), after DIN 13" },
    Provenance { known: Known::Seen, text: "width of the 6H limits of M58x3: thread table of an open CAD library (BSD-3-Clause, commit 3830919), after DIN 13" },
    Provenance { known: Known::Seen, text: "width of the 6H limits of M48x4: thread table of an open CAD library (BSD-3-Clause, commit 3830919), after DIN 13" },
    Provenance { known: Known::Seen, text: "ISO 965-1 table of pitch diameter tolerances of internal threads, published web page" },
    Provenance { known: Known::Seen, text: "width of the 6H limits of M95x3: thread table of an open CAD library (BSD-3-Clause, commit 3830919), after DIN 13" },
    Provenance { known: Known::Seen, text: "width of the 6H limits of M95x4: thread table of an open CAD library (BSD-3-Clause, commit 3830919), after DIN 13" },
    Provenance { known: Known::Seen, text: "ISO 261; each pitch stands in limits or open data read" },
    Provenance { known: Known::Memory, text: "ISO 261, general plan, recalled; the coarse pitch stands in limits read" },
    Provenance { known: Known::Memory, text: "ISO 261, general plan, recalled" },
];

pub(super) static PITCHES: [PitchRow; 25] = [
    PitchRow { pitch: Length::from_tenth_nanometres(2000000), // 0.2 mm
        deviations: [NONE, Cell { micrometres: 32, source: 0 }, Cell { micrometres: 17, source: 0 }],
        major: [Cell { micrometres: 36, source: 1 }, Cell { micrometres: 56, source: 2 }, NONE],
        minor: [Cell { micrometres: 38, source: 3 }, NONE, NONE, NONE, NONE] },
    PitchRow { pitch: Length::from_tenth_nanometres(2500000), // 0.25 mm
        deviations: [NONE, Cell { micrometres: 33, source: 0 }, Cell { micrometres: 18, source: 0 }],
        major: [Cell { micrometres: 42, source: 1 }, Cell { micrometres: 67, source: 4 }, NONE],
        minor: [Cell { micrometres: 45, source: 3 }, Cell { micrometres: 56, source: 5 }, NONE, NONE, NONE] },
    PitchRow { pitch: Length::from_tenth_nanometres(3000000), // 0.3 mm
        deviations: [NONE, Cell { micrometres: 33, source: 0 }, Cell { micrometres: 18, source: 0 }],
        major: [Cell { micrometres: 48, source: 1 }, Cell { micrometres: 75, source: 6 }, NONE],
        minor: [Cell { micrometres: 53, source: 3 }, Cell { micrometres: 67, source: 3 }, Cell { micrometres: 85, source: 3 }, NONE, NONE] },
    PitchRow { pitch: Length::from_tenth_nanometres(3500000), // 0.35 mm
        deviations: [NONE, Cell { micrometres: 34, source: 0 }, Cell { micrometres: 19, source: 0 }],
        major: [Cell { micrometres: 53, source: 1 }, Cell { micrometres: 85, source: 7 }, NONE],
        minor: [Cell { micrometres: 63, source: 3 }, Cell { micrometres: 80, source: 3 }, Cell { micrometres: 100, source: 8 }, NONE, NONE] },
    PitchRow { pitch: Length::from_tenth_nanometres(4000000), // 0.4 mm
        deviations: [NONE, Cell { micrometres: 34, source: 0 }, Cell { micrometres: 19, source: 0 }],
        major: [Cell { micrometres: 60, source: 1 }, Cell { micrometres: 95, source: 9 }, NONE],
        minor: [Cell { micrometres: 71, source: 3 }, Cell { micrometres: 90, source: 3 }, Cell { micrometres: 112, source: 10 }, NONE, NONE] },
    PitchRow { pitch: Length::from_tenth_nanometres(4500000), // 0.45 mm
        deviations: [NONE, Cell { micrometres: 35, source: 0 }, Cell { micrometres: 20, source: 0 }],
        major: [Cell { micrometres: 63, source: 1 }, Cell { micrometres: 100, source: 11 }, NONE],
        minor: [Cell { micrometres: 80, source: 3 }, Cell { micrometres: 100, source: 3 }, Cell { micrometres: 125, source: 3 }, NONE, NONE] },
    PitchRow { pitch: Length::from_tenth_nanometres(5000000), // 0.5 mm
        deviations: [Cell { micrometres: 50, source: 0 }, Cell { micrometres: 36, source: 0 }, Cell { micrometres: 20, source: 0 }],
        major: [Cell { micrometres: 67, source: 1 }, Cell { micrometres: 106, source: 12 }, NONE],
        minor: [Cell { micrometres: 90, source: 3 }, Cell { micrometres: 112, source: 3 }, Cell { micrometres: 140, source: 13 }, Cell { micrometres: 180, source: 3 }, NONE] },
    PitchRow { pitch: Length::from_tenth_nanometres(6000000), // 0.6 mm
        deviations: [Cell { micrometres: 53, source: 0 }, Cell { micrometres: 36, source: 0 }, Cell { micrometres: 21, source: 0 }],
        major: [Cell { micrometres: 80, source: 1 }, Cell { micrometres: 125, source: 14 }, NONE],
        minor: [Cell { micrometres: 100, source: 3 }, Cell { micrometres: 125, source: 3 }, Cell { micrometres: 160, source: 3 }, Cell { micrometres: 200, source: 3 }, NONE] },
    PitchRow { pitch: Length::from_tenth_nanometres(7000000), // 0.7 mm
        deviations: [Cell { micrometres: 56, source: 0 }, Cell { micrometres: 38, source: 0 }, Cell { micrometres: 22, source: 0 }],
        major: [Cell { micrometres: 90, source: 1 }, Cell { micrometres: 140, source: 15 }, NONE],
        minor: [Cell { micrometres: 112, source: 3 }, Cell { micrometres: 140, source: 3 }, Cell { micrometres: 180, source: 16 }, Cell { micrometres: 224, source: 3 }, NONE] },
    PitchRow { pitch: Length::from_tenth_nanometres(7500000), // 0.75 mm
        deviations: [Cell { micrometres: 56, source: 0 }, Cell { micrometres: 38, source: 0 }, Cell { micrometres: 22, source: 0 }],
        major: [Cell { micrometres: 90, source: 1 }, Cell { micrometres: 140, source: 17 }, NONE],
        minor: [Cell { micrometres: 118, source: 1 }, Cell { micrometres: 150, source: 1 }, Cell { micrometres: 190, source: 18 }, Cell { micrometres: 236, source: 1 }, NONE] },
    PitchRow { pitch: Length::from_tenth_nanometres(8000000), // 0.8 mm
        deviations: [Cell { micrometres: 60, source: 0 }, Cell { micrometres: 38, source: 0 }, Cell { micrometres: 24, source: 0 }],
        major: [Cell { micrometres: 95, source: 1 }, Cell { micrometres: 150, source: 19 }, Cell { micrometres: 236, source: 1 }],
        minor: [Cell { micrometres: 125, source: 1 }, Cell { micrometres: 160, source: 1 }, Cell { micrometres: 200, source: 20 }, Cell { micrometres: 250, source: 1 }, Cell { micrometres: 315, source: 1 }] },
    PitchRow { pitch: Length::from_tenth_nanometres(10000000), // 1 mm
        deviations: [Cell { micrometres: 60, source: 0 }, Cell { micrometres: 40, source: 0 }, Cell { micrometres: 26, source: 0 }],
        major: [Cell { micrometres: 112, source: 1 }, Cell { micrometres: 180, source: 21 }, Cell { micrometres: 280, source: 1 }],
        minor: [Cell { micrometres: 150, source: 1 }, Cell { micrometres: 190, source: 1 }, Cell { micrometres: 236, source: 22 }, Cell { micrometres: 300, source: 1 }, Cell { micrometres: 375, source: 1 }] },
    PitchRow { pitch: Length::from_tenth_nanometres(12500000), // 1.25 mm
        deviations: [Cell { micrometres: 63, source: 0 }, Cell { micrometres: 42, source: 0 }, Cell { micrometres: 28, source: 0 }],
        major: [Cell { micrometres: 132, source: 1 }, Cell { micrometres: 212, source: 23 }, Cell { micrometres: 335, source: 1 }],
        minor: [Cell { micrometres: 170, source: 1 }, Cell { micrometres: 212, source: 1 }, Cell { micrometres: 265, source: 24 }, Cell { micrometres: 335, source: 1 }, Cell { micrometres: 425, source: 1 }] },
    PitchRow { pitch: Length::from_tenth_nanometres(15000000), // 1.5 mm
        deviations: [Cell { micrometres: 67, source: 0 }, Cell { micrometres: 45, source: 0 }, Cell { micrometres: 32, source: 0 }],
        major: [Cell { micrometres: 150, source: 1 }, Cell { micrometres: 236, source: 25 }, Cell { micrometres: 375, source: 1 }],
        minor: [Cell { micrometres: 190, source: 1 }, Cell { micrometres: 236, source: 1 }, Cell { micrometres: 300, source: 26 }, Cell { micrometres: 375, source: 1 }, Cell { micrometres: 475, source: 1 }] },
    PitchRow { pitch: Length::from_tenth_nanometres(17500000), // 1.75 mm
        deviations: [Cell { micrometres: 71, source: 0 }, Cell { micrometres: 48, source: 0 }, Cell { micrometres: 34, source: 0 }],
        major: [Cell { micrometres: 170, source: 1 }, Cell { micrometres: 265, source: 27 }, Cell { micrometres: 425, source: 1 }],
        minor: [Cell { micrometres: 212, source: 1 }, Cell { micrometres: 265, source: 1 }, Cell { micrometres: 335, source: 28 }, Cell { micrometres: 425, source: 1 }, Cell { micrometres: 530, source: 1 }] },
    PitchRow { pitch: Length::from_tenth_nanometres(20000000), // 2 mm
        deviations: [Cell { micrometres: 71, source: 0 }, Cell { micrometres: 52, source: 0 }, Cell { micrometres: 38, source: 0 }],
        major: [Cell { micrometres: 180, source: 1 }, Cell { micrometres: 280, source: 29 }, Cell { micrometres: 450, source: 1 }],
        minor: [Cell { micrometres: 236, source: 1 }, Cell { micrometres: 300, source: 1 }, Cell { micrometres: 375, source: 27 }, Cell { micrometres: 475, source: 1 }, Cell { micrometres: 600, source: 1 }] },
    PitchRow { pitch: Length::from_tenth_nanometres(25000000), // 2.5 mm
        deviations: [Cell { micrometres: 80, source: 0 }, Cell { micrometres: 58, source: 0 }, Cell { micrometres: 42, source: 0 }],
        major: [Cell { micrometres: 212, source: 1 }, Cell { micrometres: 335, source: 27 }, Cell { micrometres: 530, source: 1 }],
        minor: [Cell { micrometres: 280, source: 1 }, Cell { micrometres: 355, source: 1 }, Cell { micrometres: 450, source: 30 }, Cell { micrometres: 560, source: 1 }, Cell { micrometres: 710, source: 1 }] },
    PitchRow { pitch: Length::from_tenth_nanometres(30000000), // 3 mm
        deviations: [Cell { micrometres: 85, source: 0 }, Cell { micrometres: 63, source: 0 }, Cell { micrometres: 48, source: 0 }],
        major: [Cell { micrometres: 236, source: 1 }, Cell { micrometres: 375, source: 27 }, Cell { micrometres: 600, source: 1 }],
        minor: [Cell { micrometres: 315, source: 1 }, Cell { micrometres: 400, source: 1 }, Cell { micrometres: 500, source: 31 }, Cell { micrometres: 630, source: 1 }, Cell { micrometres: 800, source: 1 }] },
    PitchRow { pitch: Length::from_tenth_nanometres(35000000), // 3.5 mm
        deviations: [Cell { micrometres: 90, source: 0 }, Cell { micrometres: 70, source: 0 }, Cell { micrometres: 53, source: 0 }],
        major: [Cell { micrometres: 265, source: 1 }, Cell { micrometres: 425, source: 27 }, Cell { micrometres: 670, source: 1 }],
        minor: [Cell { micrometres: 355, source: 1 }, Cell { micrometres: 450, source: 1 }, Cell { micrometres: 560, source: 32 }, Cell { micrometres: 710, source: 1 }, Cell { micrometres: 900, source: 1 }] },
    PitchRow { pitch: Length::from_tenth_nanometres(40000000), // 4 mm
        deviations: [Cell { micrometres: 95, source: 0 }, Cell { micrometres: 75, source: 0 }, Cell { micrometres: 60, source: 0 }],
        major: [Cell { micrometres: 300, source: 1 }, Cell { micrometres: 475, source: 27 }, Cell { micrometres: 750, source: 1 }],
        minor: [Cell { micrometres: 375, source: 1 }, Cell { micrometres: 475, source: 1 }, Cell { micrometres: 600, source: 27 }, Cell { micrometres: 750, source: 1 }, Cell { micrometres: 950, source: 1 }] },
    PitchRow { pitch: Length::from_tenth_nanometres(45000000), // 4.5 mm
        deviations: [Cell { micrometres: 100, source: 0 }, Cell { micrometres: 80, source: 0 }, Cell { micrometres: 63, source: 0 }],
        major: [Cell { micrometres: 315, source: 1 }, Cell { micrometres: 500, source: 27 }, Cell { micrometres: 800, source: 1 }],
        minor: [Cell { micrometres: 425, source: 1 }, Cell { micrometres: 530, source: 1 }, Cell { micrometres: 670, source: 33 }, Cell { micrometres: 850, source: 1 }, Cell { micrometres: 1060, source: 1 }] },
    PitchRow { pitch: Length::from_tenth_nanometres(50000000), // 5 mm
        deviations: [Cell { micrometres: 106, source: 0 }, Cell { micrometres: 85, source: 0 }, Cell { micrometres: 71, source: 0 }],
        major: [Cell { micrometres: 335, source: 1 }, Cell { micrometres: 530, source: 27 }, Cell { micrometres: 850, source: 1 }],
        minor: [Cell { micrometres: 450, source: 1 }, Cell { micrometres: 560, source: 1 }, Cell { micrometres: 710, source: 34 }, Cell { micrometres: 900, source: 1 }, Cell { micrometres: 1120, source: 1 }] },
    PitchRow { pitch: Length::from_tenth_nanometres(55000000), // 5.5 mm
        deviations: [Cell { micrometres: 112, source: 0 }, Cell { micrometres: 90, source: 0 }, Cell { micrometres: 75, source: 0 }],
        major: [Cell { micrometres: 355, source: 1 }, Cell { micrometres: 560, source: 27 }, Cell { micrometres: 900, source: 1 }],
        minor: [Cell { micrometres: 475, source: 1 }, Cell { micrometres: 600, source: 1 }, Cell { micrometres: 750, source: 35 }, Cell { micrometres: 950, source: 1 }, Cell { micrometres: 1180, source: 1 }] },
    PitchRow { pitch: Length::from_tenth_nanometres(60000000), // 6 mm
        deviations: [Cell { micrometres: 118, source: 0 }, Cell { micrometres: 95, source: 0 }, Cell { micrometres: 80, source: 0 }],
        major: [Cell { micrometres: 375, source: 1 }, Cell { micrometres: 600, source: 27 }, Cell { micrometres: 950, source: 1 }],
        minor: [Cell { micrometres: 500, source: 1 }, Cell { micrometres: 630, source: 1 }, Cell { micrometres: 800, source: 36 }, Cell { micrometres: 1000, source: 1 }, Cell { micrometres: 1250, source: 1 }] },
    PitchRow { pitch: Length::from_tenth_nanometres(80000000), // 8 mm
        deviations: [Cell { micrometres: 140, source: 37 }, Cell { micrometres: 118, source: 37 }, Cell { micrometres: 100, source: 38 }],
        major: [Cell { micrometres: 450, source: 1 }, Cell { micrometres: 710, source: 1 }, Cell { micrometres: 1180, source: 1 }],
        minor: [Cell { micrometres: 630, source: 1 }, Cell { micrometres: 800, source: 1 }, Cell { micrometres: 1000, source: 1 }, Cell { micrometres: 1250, source: 1 }, Cell { micrometres: 1600, source: 1 }] },
];

pub(super) static STEPS: [Step; 9] = [
    Step { over: Length::from_tenth_nanometres(9900000), up_to: Length::from_tenth_nanometres(14000000), rows: &[
        StepRow { pitch: Length::from_tenth_nanometres(2000000), // 0.2 mm
            external: [Cell { micrometres: 24, source: 1 }, Cell { micrometres: 30, source: 1 }, Cell { micrometres: 38, source: 1 }, Cell { micrometres: 48, source: 2 }, NONE, NONE, NONE],
            internal: [Cell { micrometres: 40, source: 1 }, NONE, NONE, NONE, NONE],
            engagement: [0, 0] },
        StepRow { pitch: Length::from_tenth_nanometres(2500000), // 0.25 mm
            external: [Cell { micrometres: 26, source: 1 }, Cell { micrometres: 34, source: 1 }, Cell { micrometres: 42, source: 1 }, Cell { micrometres: 53, source: 39 }, NONE, NONE, NONE],
            internal: [Cell { micrometres: 45, source: 1 }, Cell { micrometres: 56, source: 5 }, NONE, NONE, NONE],
            engagement: [600, 1700] },
        StepRow { pitch: Length::from_tenth_nanometres(3000000), // 0.3 mm
            external: [Cell { micrometres: 28, source: 1 }, Cell { micrometres: 36, source: 1 }, Cell { micrometres: 45, source: 1 }, Cell { micrometres: 56, source: 1 }, NONE, NONE, NONE],
            internal: [Cell { micrometres: 48, source: 1 }, Cell { micrometres: 60, source: 40 }, Cell { micrometres: 75, source: 1 }, NONE, NONE],
            engagement: [700, 2000] },
    ] },
    Step { over: Length::from_tenth_nanometres(14000000), up_to: Length::from_tenth_nanometres(28000000), rows: &[
        StepRow { pitch: Length::from_tenth_nanometres(2000000), // 0.2 mm
            external: [Cell { micrometres: 25, source: 41 }, Cell { micrometres: 32, source: 41 }, Cell { micrometres: 40, source: 41 }, Cell { micrometres: 50, source: 42 }, NONE, NONE, NONE],
            internal: [Cell { micrometres: 42, source: 1 }, NONE, NONE, NONE, NONE],
            engagement: [0, 0] },
        StepRow { pitch: Length::from_tenth_nanometres(2500000), // 0.25 mm
            external: [Cell { micrometres: 28, source: 41 }, Cell { micrometres: 36, source: 41 }, Cell { micrometres: 45, source: 41 }, Cell { micrometres: 56, source: 41 }, NONE, NONE, NONE],
            internal: [Cell { micrometres: 48, source: 1 }, Cell { micrometres: 60, source: 1 }, NONE, NONE, NONE],
            engagement: [0, 0] },
        StepRow { pitch: Length::from_tenth_nanometres(3500000), // 0.35 mm
            external: [Cell { micrometres: 32, source: 41 }, Cell { micrometres: 40, source: 43 }, Cell { micrometres: 50, source: 41 }, Cell { micrometres: 63, source: 7 }, Cell { micrometres: 80, source: 41 }, NONE, NONE],
            internal: [Cell { micrometres: 53, source: 44 }, Cell { micrometres: 67, source: 1 }, Cell { micrometres: 85, source: 8 }, NONE, NONE],
            engagement: [800, 2600] },
        StepRow { pitch: Length::from_tenth_nanometres(4000000), // 0.4 mm
            external: [Cell { micrometres: 34, source: 41 }, Cell { micrometres: 42, source: 41 }, Cell { micrometres: 53, source: 41 }, Cell { micrometres: 67, source: 9 }, Cell { micrometres: 85, source: 41 }, NONE, NONE],
            internal: [Cell { micrometres: 56, source: 45 }, Cell { micrometres: 71, source: 1 }, Cell { micrometres: 90, source: 46 }, NONE, NONE],
            engagement: [1000, 3000] },
        StepRow { pitch: Length::from_tenth_nanometres(4500000), // 0.45 mm
            external: [Cell { micrometres: 36, source: 41 }, Cell { micrometres: 45, source: 47 }, Cell { micrometres: 56, source: 41 }, Cell { micrometres: 71, source: 11 }, Cell { micrometres: 90, source: 41 }, NONE, NONE],
            internal: [Cell { micrometres: 60, source: 48 }, Cell { micrometres: 75, source: 49 }, Cell { micrometres: 95, source: 50 }, NONE, NONE],
            engagement: [1300, 3800] },
    ] },
    Step { over: Length::from_tenth_nanometres(28000000), up_to: Length::from_tenth_nanometres(56000000), rows: &[
        StepRow { pitch: Length::from_tenth_nanometres(3500000), // 0.35 mm
            external: [Cell { micrometres: 34, source: 41 }, Cell { micrometres: 42, source: 41 }, Cell { micrometres: 53, source: 41 }, Cell { micrometres: 67, source: 51 }, Cell { micrometres: 85, source: 41 }, NONE, NONE],
            internal: [Cell { micrometres: 56, source: 1 }, Cell { micrometres: 71, source: 1 }, Cell { micrometres: 90, source: 52 }, NONE, NONE],
            engagement: [0, 0] },
        StepRow { pitch: Length::from_tenth_nanometres(5000000), // 0.5 mm
            external: [Cell { micrometres: 38, source: 41 }, Cell { micrometres: 48, source: 53 }, Cell { micrometres: 60, source: 41 }, Cell { micrometres: 75, source: 41 }, Cell { micrometres: 95, source: 41 }, NONE, NONE],
            internal: [Cell { micrometres: 63, source: 54 }, Cell { micrometres: 80, source: 1 }, Cell { micrometres: 100, source: 55 }, Cell { micrometres: 125, source: 1 }, NONE],
            engagement: [1500, 4500] },
        StepRow { pitch: Length::from_tenth_nanometres(6000000), // 0.6 mm
            external: [Cell { micrometres: 42, source: 41 }, Cell { micrometres: 53, source: 56 }, Cell { micrometres: 67, source: 41 }, Cell { micrometres: 85, source: 14 }, Cell { micrometres: 106, source: 41 }, NONE, NONE],
            internal: [Cell { micrometres: 71, source: 57 }, Cell { micrometres: 90, source: 1 }, Cell { micrometres: 112, source: 58 }, Cell { micrometres: 140, source: 1 }, NONE],
            engagement: [1700, 5000] },
        StepRow { pitch: Length::from_tenth_nanometres(7000000), // 0.7 mm
            external: [Cell { micrometres: 45, source: 41 }, Cell { micrometres: 56, source: 41 }, Cell { micrometres: 71, source: 41 }, Cell { micrometres: 90, source: 15 }, Cell { micrometres: 112, source: 41 }, NONE, NONE],
            internal: [Cell { micrometres: 75, source: 59 }, Cell { micrometres: 95, source: 60 }, Cell { micrometres: 118, source: 16 }, Cell { micrometres: 150, source: 1 }, NONE],
            engagement: [2000, 6000] },
        StepRow { pitch: Length::from_tenth_nanometres(7500000), // 0.75 mm
            external: [Cell { micrometres: 45, source: 41 }, Cell { micrometres: 56, source: 41 }, Cell { micrometres: 71, source: 41 }, Cell { micrometres: 90, source: 61 }, Cell { micrometres: 112, source: 41 }, NONE, NONE],
            internal: [Cell { micrometres: 75, source: 1 }, Cell { micrometres: 95, source: 62 }, Cell { micrometres: 118, source: 63 }, Cell { micrometres: 150, source: 1 }, NONE],
            engagement: [0, 0] },
        StepRow { pitch: Length::from_tenth_nanometres(8000000), // 0.8 mm
            external: [Cell { micrometres: 48, source: 41 }, Cell { micrometres: 60, source: 41 }, Cell { micrometres: 75, source: 41 }, Cell { micrometres: 95, source: 19 }, Cell { micrometres: 118, source: 41 }, Cell { micrometres: 150, source: 41 }, Cell { micrometres: 190, source: 41 }],
            internal: [Cell { micrometres: 80, source: 64 }, Cell { micrometres: 100, source: 65 }, Cell { micrometres: 125, source: 66 }, Cell { micrometres: 160, source: 1 }, Cell { micrometres: 200, source: 1 }],
            engagement: [2500, 7500] },
    ] },
    Step { over: Length::from_tenth_nanometres(56000000), up_to: Length::from_tenth_nanometres(112000000), rows: &[
        StepRow { pitch: Length::from_tenth_nanometres(7500000), // 0.75 mm
            external: [Cell { micrometres: 50, source: 41 }, Cell { micrometres: 63, source: 67 }, Cell { micrometres: 80, source: 41 }, Cell { micrometres: 100, source: 17 }, Cell { micrometres: 125, source: 41 }, NONE, NONE],
            internal: [Cell { micrometres: 85, source: 1 }, Cell { micrometres: 106, source: 1 }, Cell { micrometres: 132, source: 18 }, Cell { micrometres: 170, source: 1 }, NONE],
            engagement: [0, 0] },
        StepRow { pitch: Length::from_tenth_nanometres(10000000), // 1 mm
            external: [Cell { micrometres: 56, source: 41 }, Cell { micrometres: 71, source: 41 }, Cell { micrometres: 90, source: 41 }, Cell { micrometres: 112, source: 21 }, Cell { micrometres: 140, source: 41 }, Cell { micrometres: 180, source: 41 }, Cell { micrometres: 224, source: 41 }],
            internal: [Cell { micrometres: 95, source: 68 }, Cell { micrometres: 118, source: 69 }, Cell { micrometres: 150, source: 70 }, Cell { micrometres: 190, source: 1 }, Cell { micrometres: 236, source: 1 }],
            engagement: [3000, 9000] },
        StepRow { pitch: Length::from_tenth_nanometres(12500000), // 1.25 mm
            external: [Cell { micrometres: 60, source: 41 }, Cell { micrometres: 75, source: 41 }, Cell { micrometres: 95, source: 41 }, Cell { micrometres: 118, source: 23 }, Cell { micrometres: 150, source: 41 }, Cell { micrometres: 190, source: 41 }, Cell { micrometres: 236, source: 41 }],
            internal: [Cell { micrometres: 100, source: 1 }, Cell { micrometres: 125, source: 71 }, Cell { micrometres: 160, source: 24 }, Cell { micrometres: 200, source: 1 }, Cell { micrometres: 250, source: 1 }],
            engagement: [4000, 12000] },
        StepRow { pitch: Length::from_tenth_nanometres(15000000), // 1.5 mm
            external: [Cell { micrometres: 67, source: 41 }, Cell { micrometres: 85, source: 72 }, Cell { micrometres: 106, source: 41 }, Cell { micrometres: 132, source: 25 }, Cell { micrometres: 170, source: 41 }, Cell { micrometres: 212, source: 41 }, Cell { micrometres: 265, source: 41 }],
            internal: [Cell { micrometres: 112, source: 1 }, Cell { micrometres: 140, source: 1 }, Cell { micrometres: 180, source: 73 }, Cell { micrometres: 224, source: 1 }, Cell { micrometres: 280, source: 1 }],
            engagement: [5000, 15000] },
    ] },
    Step { over: Length::from_tenth_nanometres(112000000), up_to: Length::from_tenth_nanometres(224000000), rows: &[
        StepRow { pitch: Length::from_tenth_nanometres(10000000), // 1 mm
            external: [Cell { micrometres: 60, source: 41 }, Cell { micrometres: 75, source: 41 }, Cell { micrometres: 95, source: 41 }, Cell { micrometres: 118, source: 41 }, Cell { micrometres: 150, source: 41 }, Cell { micrometres: 190, source: 41 }, Cell { micrometres: 236, source: 41 }],
            internal: [Cell { micrometres: 100, source: 1 }, Cell { micrometres: 125, source: 1 }, Cell { micrometres: 160, source: 74 }, Cell { micrometres: 200, source: 1 }, Cell { micrometres: 250, source: 1 }],
            engagement: [0, 0] },
        StepRow { pitch: Length::from_tenth_nanometres(12500000), // 1.25 mm
            external: [Cell { micrometres: 67, source: 41 }, Cell { micrometres: 85, source: 41 }, Cell { micrometres: 106, source: 41 }, Cell { micrometres: 132, source: 75 }, Cell { micrometres: 170, source: 41 }, Cell { micrometres: 212, source: 41 }, Cell { micrometres: 265, source: 41 }],
            internal: [Cell { micrometres: 112, source: 1 }, Cell { micrometres: 140, source: 1 }, Cell { micrometres: 180, source: 1 }, Cell { micrometres: 224, source: 1 }, Cell { micrometres: 280, source: 1 }],
            engagement: [4500, 13000] },
        StepRow { pitch: Length::from_tenth_nanometres(15000000), // 1.5 mm
            external: [Cell { micrometres: 71, source: 41 }, Cell { micrometres: 90, source: 41 }, Cell { micrometres: 112, source: 41 }, Cell { micrometres: 140, source: 76 }, Cell { micrometres: 180, source: 41 }, Cell { micrometres: 224, source: 41 }, Cell { micrometres: 280, source: 41 }],
            internal: [Cell { micrometres: 118, source: 1 }, Cell { micrometres: 150, source: 1 }, Cell { micrometres: 190, source: 26 }, Cell { micrometres: 236, source: 1 }, Cell { micrometres: 300, source: 1 }],
            engagement: [5600, 16000] },
        StepRow { pitch: Length::from_tenth_nanometres(17500000), // 1.75 mm
            external: [Cell { micrometres: 75, source: 41 }, Cell { micrometres: 95, source: 41 }, Cell { micrometres: 118, source: 41 }, Cell { micrometres: 150, source: 27 }, Cell { micrometres: 190, source: 41 }, Cell { micrometres: 236, source: 41 }, Cell { micrometres: 300, source: 41 }],
            internal: [Cell { micrometres: 125, source: 1 }, Cell { micrometres: 160, source: 1 }, Cell { micrometres: 200, source: 28 }, Cell { micrometres: 250, source: 1 }, Cell { micrometres: 315, source: 1 }],
            engagement: [6000, 18000] },
        StepRow { pitch: Length::from_tenth_nanometres(20000000), // 2 mm
            external: [Cell { micrometres: 80, source: 41 }, Cell { micrometres: 100, source: 41 }, Cell { micrometres: 125, source: 41 }, Cell { micrometres: 160, source: 77 }, Cell { micrometres: 200, source: 41 }, Cell { micrometres: 250, source: 41 }, Cell { micrometres: 315, source: 41 }],
            internal: [Cell { micrometres: 132, source: 1 }, Cell { micrometres: 170, source: 1 }, Cell { micrometres: 212, source: 78 }, Cell { micrometres: 265, source: 1 }, Cell { micrometres: 335, source: 1 }],
            engagement: [8000, 24000] },
        StepRow { pitch: Length::from_tenth_nanometres(25000000), // 2.5 mm
            external: [Cell { micrometres: 85, source: 41 }, Cell { micrometres: 106, source: 41 }, Cell { micrometres: 132, source: 41 }, Cell { micrometres: 170, source: 27 }, Cell { micrometres: 212, source: 41 }, Cell { micrometres: 265, source: 41 }, Cell { micrometres: 335, source: 41 }],
            internal: [Cell { micrometres: 140, source: 1 }, Cell { micrometres: 180, source: 1 }, Cell { micrometres: 224, source: 27 }, Cell { micrometres: 280, source: 1 }, Cell { micrometres: 355, source: 1 }],
            engagement: [10000, 30000] },
    ] },
    Step { over: Length::from_tenth_nanometres(224000000), up_to: Length::from_tenth_nanometres(450000000), rows: &[
        StepRow { pitch: Length::from_tenth_nanometres(10000000), // 1 mm
            external: [Cell { micrometres: 63, source: 41 }, Cell { micrometres: 80, source: 41 }, Cell { micrometres: 100, source: 41 }, Cell { micrometres: 125, source: 41 }, Cell { micrometres: 160, source: 41 }, Cell { micrometres: 200, source: 41 }, Cell { micrometres: 250, source: 41 }],
            internal: [Cell { micrometres: 106, source: 1 }, Cell { micrometres: 132, source: 1 }, Cell { micrometres: 170, source: 1 }, Cell { micrometres: 212, source: 1 }, NONE],
            engagement: [0, 0] },
        StepRow { pitch: Length::from_tenth_nanometres(15000000), // 1.5 mm
            external: [Cell { micrometres: 75, source: 41 }, Cell { micrometres: 95, source: 41 }, Cell { micrometres: 118, source: 41 }, Cell { micrometres: 150, source: 41 }, Cell { micrometres: 190, source: 41 }, Cell { micrometres: 236, source: 41 }, Cell { micrometres: 300, source: 41 }],
            internal: [Cell { micrometres: 125, source: 1 }, Cell { micrometres: 160, source: 1 }, Cell { micrometres: 200, source: 79 }, Cell { micrometres: 250, source: 1 }, Cell { micrometres: 315, source: 1 }],
            engagement: [0, 0] },
        StepRow { pitch: Length::from_tenth_nanometres(20000000), // 2 mm
            external: [Cell { micrometres: 85, source: 41 }, Cell { micrometres: 106, source: 41 }, Cell { micrometres: 132, source: 41 }, Cell { micrometres: 170, source: 41 }, Cell { micrometres: 212, source: 41 }, Cell { micrometres: 265, source: 41 }, Cell { micrometres: 335, source: 41 }],
            internal: [Cell { micrometres: 140, source: 1 }, Cell { micrometres: 180, source: 1 }, Cell { micrometres: 224, source: 80 }, Cell { micrometres: 280, source: 1 }, Cell { micrometres: 355, source: 1 }],
            engagement: [0, 0] },
        StepRow { pitch: Length::from_tenth_nanometres(30000000), // 3 mm
            external: [Cell { micrometres: 100, source: 41 }, Cell { micrometres: 125, source: 41 }, Cell { micrometres: 160, source: 41 }, Cell { micrometres: 200, source: 27 }, Cell { micrometres: 250, source: 41 }, Cell { micrometres: 315, source: 41 }, Cell { micrometres: 400, source: 41 }],
            internal: [Cell { micrometres: 170, source: 1 }, Cell { micrometres: 212, source: 1 }, Cell { micrometres: 265, source: 31 }, Cell { micrometres: 335, source: 1 }, Cell { micrometres: 425, source: 1 }],
            engagement: [12000, 36000] },
        StepRow { pitch: Length::from_tenth_nanometres(35000000), // 3.5 mm
            external: [Cell { micrometres: 106, source: 1 }, Cell { micrometres: 132, source: 1 }, Cell { micrometres: 170, source: 1 }, Cell { micrometres: 212, source: 27 }, Cell { micrometres: 265, source: 1 }, Cell { micrometres: 335, source: 1 }, Cell { micrometres: 425, source: 1 }],
            internal: [Cell { micrometres: 180, source: 1 }, Cell { micrometres: 224, source: 1 }, Cell { micrometres: 280, source: 32 }, Cell { micrometres: 355, source: 1 }, Cell { micrometres: 450, source: 1 }],
            engagement: [15000, 45000] },
        StepRow { pitch: Length::from_tenth_nanometres(40000000), // 4 mm
            external: [Cell { micrometres: 112, source: 1 }, Cell { micrometres: 140, source: 1 }, Cell { micrometres: 180, source: 1 }, Cell { micrometres: 224, source: 27 }, Cell { micrometres: 280, source: 1 }, Cell { micrometres: 355, source: 1 }, Cell { micrometres: 450, source: 1 }],
            internal: [Cell { micrometres: 190, source: 1 }, Cell { micrometres: 236, source: 1 }, Cell { micrometres: 300, source: 81 }, Cell { micrometres: 375, source: 1 }, Cell { micrometres: 475, source: 1 }],
            engagement: [18000, 53000] },
        StepRow { pitch: Length::from_tenth_nanometres(45000000), // 4.5 mm
            external: [Cell { micrometres: 118, source: 1 }, Cell { micrometres: 150, source: 1 }, Cell { micrometres: 190, source: 1 }, Cell { micrometres: 236, source: 27 }, Cell { micrometres: 300, source: 1 }, Cell { micrometres: 375, source: 1 }, Cell { micrometres: 475, source: 1 }],
            internal: [Cell { micrometres: 200, source: 1 }, Cell { micrometres: 250, source: 1 }, Cell { micrometres: 315, source: 33 }, Cell { micrometres: 400, source: 1 }, Cell { micrometres: 500, source: 1 }],
            engagement: [21000, 63000] },
    ] },
    Step { over: Length::from_tenth_nanometres(450000000), up_to: Length::from_tenth_nanometres(900000000), rows: &[
        StepRow { pitch: Length::from_tenth_nanometres(15000000), // 1.5 mm
            external: [Cell { micrometres: 80, source: 1 }, Cell { micrometres: 100, source: 1 }, Cell { micrometres: 125, source: 1 }, Cell { micrometres: 160, source: 1 }, Cell { micrometres: 200, source: 1 }, Cell { micrometres: 250, source: 1 }, Cell { micrometres: 315, source: 1 }],
            internal: [Cell { micrometres: 132, source: 1 }, Cell { micrometres: 170, source: 1 }, Cell { micrometres: 212, source: 82 }, Cell { micrometres: 265, source: 1 }, Cell { micrometres: 335, source: 1 }],
            engagement: [0, 0] },
        StepRow { pitch: Length::from_tenth_nanometres(20000000), // 2 mm
            external: [Cell { micrometres: 90, source: 1 }, Cell { micrometres: 112, source: 1 }, Cell { micrometres: 140, source: 1 }, Cell { micrometres: 180, source: 1 }, Cell { micrometres: 224, source: 1 }, Cell { micrometres: 280, source: 1 }, Cell { micrometres: 355, source: 1 }],
            internal: [Cell { micrometres: 150, source: 1 }, Cell { micrometres: 190, source: 1 }, Cell { micrometres: 236, source: 83 }, Cell { micrometres: 300, source: 1 }, Cell { micrometres: 375, source: 1 }],
            engagement: [0, 0] },
        StepRow { pitch: Length::from_tenth_nanometres(30000000), // 3 mm
            external: [Cell { micrometres: 106, source: 1 }, Cell { micrometres: 132, source: 1 }, Cell { micrometres: 170, source: 1 }, Cell { micrometres: 212, source: 1 }, Cell { micrometres: 265, source: 1 }, Cell { micrometres: 335, source: 1 }, Cell { micrometres: 425, source: 1 }],
            internal: [Cell { micrometres: 180, source: 1 }, Cell { micrometres: 224, source: 1 }, Cell { micrometres: 280, source: 84 }, Cell { micrometres: 355, source: 1 }, Cell { micrometres: 450, source: 1 }],
            engagement: [0, 0] },
        StepRow { pitch: Length::from_tenth_nanometres(40000000), // 4 mm
            external: [Cell { micrometres: 118, source: 1 }, Cell { micrometres: 150, source: 1 }, Cell { micrometres: 190, source: 1 }, Cell { micrometres: 236, source: 1 }, Cell { micrometres: 300, source: 1 }, Cell { micrometres: 375, source: 1 }, Cell { micrometres: 475, source: 1 }],
            internal: [Cell { micrometres: 200, source: 1 }, Cell { micrometres: 250, source: 1 }, Cell { micrometres: 315, source: 85 }, Cell { micrometres: 400, source: 1 }, Cell { micrometres: 500, source: 1 }],
            engagement: [0, 0] },
        StepRow { pitch: Length::from_tenth_nanometres(50000000), // 5 mm
            external: [Cell { micrometres: 125, source: 1 }, Cell { micrometres: 160, source: 1 }, Cell { micrometres: 200, source: 1 }, Cell { micrometres: 250, source: 27 }, Cell { micrometres: 315, source: 1 }, Cell { micrometres: 400, source: 1 }, Cell { micrometres: 500, source: 1 }],
            internal: [Cell { micrometres: 212, source: 1 }, Cell { micrometres: 265, source: 1 }, Cell { micrometres: 335, source: 27 }, Cell { micrometres: 425, source: 1 }, Cell { micrometres: 530, source: 1 }],
            engagement: [0, 0] },
        StepRow { pitch: Length::from_tenth_nanometres(55000000), // 5.5 mm
            external: [Cell { micrometres: 132, source: 1 }, Cell { micrometres: 170, source: 1 }, Cell { micrometres: 212, source: 1 }, Cell { micrometres: 265, source: 27 }, Cell { micrometres: 335, source: 1 }, Cell { micrometres: 425, source: 1 }, Cell { micrometres: 530, source: 1 }],
            internal: [Cell { micrometres: 224, source: 1 }, Cell { micrometres: 280, source: 1 }, Cell { micrometres: 355, source: 35 }, Cell { micrometres: 450, source: 1 }, Cell { micrometres: 560, source: 1 }],
            engagement: [0, 0] },
        StepRow { pitch: Length::from_tenth_nanometres(60000000), // 6 mm
            external: [Cell { micrometres: 140, source: 1 }, Cell { micrometres: 180, source: 1 }, Cell { micrometres: 224, source: 1 }, Cell { micrometres: 280, source: 27 }, Cell { micrometres: 355, source: 1 }, Cell { micrometres: 450, source: 1 }, Cell { micrometres: 560, source: 1 }],
            internal: [Cell { micrometres: 236, source: 1 }, Cell { micrometres: 300, source: 1 }, Cell { micrometres: 375, source: 36 }, Cell { micrometres: 475, source: 1 }, Cell { micrometres: 600, source: 1 }],
            engagement: [0, 0] },
    ] },
    Step { over: Length::from_tenth_nanometres(900000000), up_to: Length::from_tenth_nanometres(1800000000), rows: &[
        StepRow { pitch: Length::from_tenth_nanometres(20000000), // 2 mm
            external: [Cell { micrometres: 95, source: 1 }, Cell { micrometres: 118, source: 1 }, Cell { micrometres: 150, source: 1 }, Cell { micrometres: 190, source: 1 }, Cell { micrometres: 236, source: 1 }, Cell { micrometres: 300, source: 1 }, Cell { micrometres: 375, source: 1 }],
            internal: [Cell { micrometres: 160, source: 86 }, Cell { micrometres: 200, source: 86 }, Cell { micrometres: 250, source: 86 }, Cell { micrometres: 315, source: 86 }, Cell { micrometres: 400, source: 86 }],
            engagement: [0, 0] },
        StepRow { pitch: Length::from_tenth_nanometres(30000000), // 3 mm
            external: [Cell { micrometres: 112, source: 1 }, Cell { micrometres: 140, source: 1 }, Cell { micrometres: 180, source: 1 }, Cell { micrometres: 224, source: 1 }, Cell { micrometres: 280, source: 1 }, Cell { micrometres: 355, source: 1 }, Cell { micrometres: 450, source: 1 }],
            internal: [Cell { micrometres: 190, source: 86 }, Cell { micrometres: 236, source: 86 }, Cell { micrometres: 300, source: 87 }, Cell { micrometres: 375, source: 86 }, Cell { micrometres: 475, source: 86 }],
            engagement: [0, 0] },
        StepRow { pitch: Length::from_tenth_nanometres(40000000), // 4 mm
            external: [Cell { micrometres: 125, source: 1 }, Cell { micrometres: 160, source: 1 }, Cell { micrometres: 200, source: 1 }, Cell { micrometres: 250, source: 1 }, Cell { micrometres: 315, source: 1 }, Cell { micrometres: 400, source: 1 }, Cell { micrometres: 500, source: 1 }],
            internal: [Cell { micrometres: 212, source: 86 }, Cell { micrometres: 265, source: 86 }, Cell { micrometres: 335, source: 88 }, Cell { micrometres: 425, source: 86 }, Cell { micrometres: 530, source: 86 }],
            engagement: [0, 0] },
        StepRow { pitch: Length::from_tenth_nanometres(60000000), // 6 mm
            external: [Cell { micrometres: 150, source: 1 }, Cell { micrometres: 190, source: 1 }, Cell { micrometres: 236, source: 1 }, Cell { micrometres: 300, source: 1 }, Cell { micrometres: 375, source: 1 }, Cell { micrometres: 475, source: 1 }, Cell { micrometres: 600, source: 1 }],
            internal: [Cell { micrometres: 250, source: 86 }, Cell { micrometres: 315, source: 86 }, Cell { micrometres: 400, source: 86 }, Cell { micrometres: 500, source: 86 }, Cell { micrometres: 630, source: 86 }],
            engagement: [0, 0] },
        StepRow { pitch: Length::from_tenth_nanometres(80000000), // 8 mm
            external: [Cell { micrometres: 170, source: 1 }, Cell { micrometres: 212, source: 1 }, Cell { micrometres: 265, source: 1 }, Cell { micrometres: 335, source: 1 }, Cell { micrometres: 425, source: 1 }, Cell { micrometres: 530, source: 1 }, Cell { micrometres: 670, source: 1 }],
            internal: [Cell { micrometres: 280, source: 86 }, Cell { micrometres: 355, source: 86 }, Cell { micrometres: 450, source: 86 }, Cell { micrometres: 560, source: 86 }, Cell { micrometres: 710, source: 86 }],
            engagement: [0, 0] },
    ] },
    Step { over: Length::from_tenth_nanometres(1800000000), up_to: Length::from_tenth_nanometres(3550000000), rows: &[
        StepRow { pitch: Length::from_tenth_nanometres(30000000), // 3 mm
            external: [Cell { micrometres: 125, source: 1 }, Cell { micrometres: 160, source: 1 }, Cell { micrometres: 200, source: 1 }, Cell { micrometres: 250, source: 1 }, Cell { micrometres: 315, source: 1 }, Cell { micrometres: 400, source: 1 }, Cell { micrometres: 500, source: 1 }],
            internal: [Cell { micrometres: 212, source: 86 }, Cell { micrometres: 265, source: 86 }, Cell { micrometres: 335, source: 86 }, Cell { micrometres: 425, source: 86 }, Cell { micrometres: 530, source: 86 }],
            engagement: [0, 0] },
        StepRow { pitch: Length::from_tenth_nanometres(40000000), // 4 mm
            external: [Cell { micrometres: 140, source: 1 }, Cell { micrometres: 180, source: 1 }, Cell { micrometres: 224, source: 1 }, Cell { micrometres: 280, source: 1 }, Cell { micrometres: 355, source: 1 }, Cell { micrometres: 450, source: 1 }, Cell { micrometres: 560, source: 1 }],
            internal: [Cell { micrometres: 236, source: 86 }, Cell { micrometres: 300, source: 86 }, Cell { micrometres: 375, source: 86 }, Cell { micrometres: 475, source: 86 }, Cell { micrometres: 600, source: 86 }],
            engagement: [0, 0] },
        StepRow { pitch: Length::from_tenth_nanometres(60000000), // 6 mm
            external: [Cell { micrometres: 160, source: 1 }, Cell { micrometres: 200, source: 1 }, Cell { micrometres: 250, source: 1 }, Cell { micrometres: 315, source: 1 }, Cell { micrometres: 400, source: 1 }, Cell { micrometres: 500, source: 1 }, Cell { micrometres: 630, source: 1 }],
            internal: [Cell { micrometres: 265, source: 86 }, Cell { micrometres: 335, source: 86 }, Cell { micrometres: 425, source: 86 }, Cell { micrometres: 530, source: 86 }, Cell { micrometres: 670, source: 86 }],
            engagement: [0, 0] },
        StepRow { pitch: Length::from_tenth_nanometres(80000000), // 8 mm
            external: [Cell { micrometres: 180, source: 1 }, Cell { micrometres: 224, source: 1 }, Cell { micrometres: 280, source: 1 }, Cell { micrometres: 355, source: 1 }, Cell { micrometres: 450, source: 1 }, Cell { micrometres: 560, source: 1 }, Cell { micrometres: 710, source: 1 }],
            internal: [Cell { micrometres: 300, source: 86 }, Cell { micrometres: 375, source: 86 }, Cell { micrometres: 475, source: 86 }, Cell { micrometres: 600, source: 86 }, Cell { micrometres: 750, source: 86 }],
            engagement: [0, 0] },
    ] },
];

pub(super) static SERIES: [Listed; 106] = [
    Listed { nominal: Length::from_tenth_nanometres(10000000), choice: 1, coarse: Some(Length::from_tenth_nanometres(2500000)), fine: &[Length::from_tenth_nanometres(2000000)], note: "", source: 89 }, // M1
    Listed { nominal: Length::from_tenth_nanometres(11000000), choice: 2, coarse: Some(Length::from_tenth_nanometres(2500000)), fine: &[Length::from_tenth_nanometres(2000000)], note: "", source: 89 }, // M1.1
    Listed { nominal: Length::from_tenth_nanometres(12000000), choice: 1, coarse: Some(Length::from_tenth_nanometres(2500000)), fine: &[Length::from_tenth_nanometres(2000000)], note: "", source: 89 }, // M1.2
    Listed { nominal: Length::from_tenth_nanometres(14000000), choice: 2, coarse: Some(Length::from_tenth_nanometres(3000000)), fine: &[Length::from_tenth_nanometres(2000000)], note: "", source: 89 }, // M1.4
    Listed { nominal: Length::from_tenth_nanometres(16000000), choice: 1, coarse: Some(Length::from_tenth_nanometres(3500000)), fine: &[Length::from_tenth_nanometres(2000000)], note: "", source: 89 }, // M1.6
    Listed { nominal: Length::from_tenth_nanometres(18000000), choice: 2, coarse: Some(Length::from_tenth_nanometres(3500000)), fine: &[Length::from_tenth_nanometres(2000000)], note: "", source: 90 }, // M1.8
    Listed { nominal: Length::from_tenth_nanometres(20000000), choice: 1, coarse: Some(Length::from_tenth_nanometres(4000000)), fine: &[Length::from_tenth_nanometres(2500000)], note: "", source: 89 }, // M2
    Listed { nominal: Length::from_tenth_nanometres(22000000), choice: 2, coarse: Some(Length::from_tenth_nanometres(4500000)), fine: &[Length::from_tenth_nanometres(2500000)], note: "", source: 90 }, // M2.2
    Listed { nominal: Length::from_tenth_nanometres(25000000), choice: 1, coarse: Some(Length::from_tenth_nanometres(4500000)), fine: &[Length::from_tenth_nanometres(3500000)], note: "", source: 90 }, // M2.5
    Listed { nominal: Length::from_tenth_nanometres(30000000), choice: 1, coarse: Some(Length::from_tenth_nanometres(5000000)), fine: &[Length::from_tenth_nanometres(3500000)], note: "", source: 89 }, // M3
    Listed { nominal: Length::from_tenth_nanometres(35000000), choice: 2, coarse: Some(Length::from_tenth_nanometres(6000000)), fine: &[Length::from_tenth_nanometres(3500000)], note: "", source: 89 }, // M3.5
    Listed { nominal: Length::from_tenth_nanometres(40000000), choice: 1, coarse: Some(Length::from_tenth_nanometres(7000000)), fine: &[Length::from_tenth_nanometres(5000000)], note: "", source: 89 }, // M4
    Listed { nominal: Length::from_tenth_nanometres(45000000), choice: 2, coarse: Some(Length::from_tenth_nanometres(7500000)), fine: &[Length::from_tenth_nanometres(5000000)], note: "", source: 89 }, // M4.5
    Listed { nominal: Length::from_tenth_nanometres(50000000), choice: 1, coarse: Some(Length::from_tenth_nanometres(8000000)), fine: &[Length::from_tenth_nanometres(5000000)], note: "", source: 89 }, // M5
    Listed { nominal: Length::from_tenth_nanometres(55000000), choice: 3, coarse: None, fine: &[Length::from_tenth_nanometres(5000000)], note: "", source: 89 }, // M5.5
    Listed { nominal: Length::from_tenth_nanometres(60000000), choice: 1, coarse: Some(Length::from_tenth_nanometres(10000000)), fine: &[Length::from_tenth_nanometres(7500000)], note: "", source: 89 }, // M6
    Listed { nominal: Length::from_tenth_nanometres(70000000), choice: 2, coarse: Some(Length::from_tenth_nanometres(10000000)), fine: &[Length::from_tenth_nanometres(7500000)], note: "", source: 89 }, // M7
    Listed { nominal: Length::from_tenth_nanometres(80000000), choice: 1, coarse: Some(Length::from_tenth_nanometres(12500000)), fine: &[Length::from_tenth_nanometres(10000000), Length::from_tenth_nanometres(7500000)], note: "", source: 89 }, // M8
    Listed { nominal: Length::from_tenth_nanometres(90000000), choice: 3, coarse: Some(Length::from_tenth_nanometres(12500000)), fine: &[Length::from_tenth_nanometres(10000000), Length::from_tenth_nanometres(7500000)], note: "", source: 89 }, // M9
    Listed { nominal: Length::from_tenth_nanometres(100000000), choice: 1, coarse: Some(Length::from_tenth_nanometres(15000000)), fine: &[Length::from_tenth_nanometres(12500000), Length::from_tenth_nanometres(10000000), Length::from_tenth_nanometres(7500000)], note: "", source: 89 }, // M10
    Listed { nominal: Length::from_tenth_nanometres(110000000), choice: 3, coarse: Some(Length::from_tenth_nanometres(15000000)), fine: &[Length::from_tenth_nanometres(10000000), Length::from_tenth_nanometres(7500000)], note: "", source: 89 }, // M11
    Listed { nominal: Length::from_tenth_nanometres(120000000), choice: 1, coarse: Some(Length::from_tenth_nanometres(17500000)), fine: &[Length::from_tenth_nanometres(15000000), Length::from_tenth_nanometres(12500000), Length::from_tenth_nanometres(10000000)], note: "", source: 89 }, // M12
    Listed { nominal: Length::from_tenth_nanometres(140000000), choice: 2, coarse: Some(Length::from_tenth_nanometres(20000000)), fine: &[Length::from_tenth_nanometres(15000000), Length::from_tenth_nanometres(12500000), Length::from_tenth_nanometres(10000000)], note: "1.25 for spark plugs only", source: 89 }, // M14
    Listed { nominal: Length::from_tenth_nanometres(150000000), choice: 3, coarse: None, fine: &[Length::from_tenth_nanometres(15000000), Length::from_tenth_nanometres(10000000)], note: "", source: 89 }, // M15
    Listed { nominal: Length::from_tenth_nanometres(160000000), choice: 1, coarse: Some(Length::from_tenth_nanometres(20000000)), fine: &[Length::from_tenth_nanometres(15000000), Length::from_tenth_nanometres(10000000)], note: "", source: 89 }, // M16
    Listed { nominal: Length::from_tenth_nanometres(170000000), choice: 3, coarse: None, fine: &[Length::from_tenth_nanometres(15000000), Length::from_tenth_nanometres(10000000)], note: "", source: 89 }, // M17
    Listed { nominal: Length::from_tenth_nanometres(180000000), choice: 2, coarse: Some(Length::from_tenth_nanometres(25000000)), fine: &[Length::from_tenth_nanometres(20000000), Length::from_tenth_nanometres(15000000), Length::from_tenth_nanometres(10000000)], note: "", source: 89 }, // M18
    Listed { nominal: Length::from_tenth_nanometres(200000000), choice: 1, coarse: Some(Length::from_tenth_nanometres(25000000)), fine: &[Length::from_tenth_nanometres(20000000), Length::from_tenth_nanometres(15000000), Length::from_tenth_nanometres(10000000)], note: "", source: 89 }, // M20
    Listed { nominal: Length::from_tenth_nanometres(220000000), choice: 2, coarse: Some(Length::from_tenth_nanometres(25000000)), fine: &[Length::from_tenth_nanometres(20000000), Length::from_tenth_nanometres(15000000), Length::from_tenth_nanometres(10000000)], note: "", source: 89 }, // M22
    Listed { nominal: Length::from_tenth_nanometres(240000000), choice: 1, coarse: Some(Length::from_tenth_nanometres(30000000)), fine: &[Length::from_tenth_nanometres(20000000), Length::from_tenth_nanometres(15000000), Length::from_tenth_nanometres(10000000)], note: "", source: 90 }, // M24
    Listed { nominal: Length::from_tenth_nanometres(250000000), choice: 3, coarse: None, fine: &[Length::from_tenth_nanometres(20000000), Length::from_tenth_nanometres(15000000), Length::from_tenth_nanometres(10000000)], note: "", source: 91 }, // M25
    Listed { nominal: Length::from_tenth_nanometres(260000000), choice: 3, coarse: None, fine: &[Length::from_tenth_nanometres(15000000)], note: "", source: 91 }, // M26
    Listed { nominal: Length::from_tenth_nanometres(270000000), choice: 2, coarse: Some(Length::from_tenth_nanometres(30000000)), fine: &[Length::from_tenth_nanometres(20000000), Length::from_tenth_nanometres(15000000), Length::from_tenth_nanometres(10000000)], note: "", source: 89 }, // M27
    Listed { nominal: Length::from_tenth_nanometres(280000000), choice: 3, coarse: None, fine: &[Length::from_tenth_nanometres(20000000), Length::from_tenth_nanometres(15000000), Length::from_tenth_nanometres(10000000)], note: "", source: 91 }, // M28
    Listed { nominal: Length::from_tenth_nanometres(300000000), choice: 1, coarse: Some(Length::from_tenth_nanometres(35000000)), fine: &[Length::from_tenth_nanometres(30000000), Length::from_tenth_nanometres(20000000), Length::from_tenth_nanometres(15000000), Length::from_tenth_nanometres(10000000)], note: "3 to be avoided", source: 90 }, // M30
    Listed { nominal: Length::from_tenth_nanometres(320000000), choice: 3, coarse: None, fine: &[Length::from_tenth_nanometres(20000000), Length::from_tenth_nanometres(15000000)], note: "", source: 91 }, // M32
    Listed { nominal: Length::from_tenth_nanometres(330000000), choice: 2, coarse: Some(Length::from_tenth_nanometres(35000000)), fine: &[Length::from_tenth_nanometres(30000000), Length::from_tenth_nanometres(20000000), Length::from_tenth_nanometres(15000000)], note: "3 to be avoided", source: 89 }, // M33
    Listed { nominal: Length::from_tenth_nanometres(350000000), choice: 3, coarse: None, fine: &[Length::from_tenth_nanometres(15000000)], note: "1.5 for locking nuts of rolling bearings only", source: 89 }, // M35
    Listed { nominal: Length::from_tenth_nanometres(360000000), choice: 1, coarse: Some(Length::from_tenth_nanometres(40000000)), fine: &[Length::from_tenth_nanometres(30000000), Length::from_tenth_nanometres(20000000), Length::from_tenth_nanometres(15000000)], note: "", source: 90 }, // M36
    Listed { nominal: Length::from_tenth_nanometres(380000000), choice: 3, coarse: None, fine: &[Length::from_tenth_nanometres(15000000)], note: "", source: 89 }, // M38
    Listed { nominal: Length::from_tenth_nanometres(390000000), choice: 2, coarse: Some(Length::from_tenth_nanometres(40000000)), fine: &[Length::from_tenth_nanometres(30000000), Length::from_tenth_nanometres(20000000), Length::from_tenth_nanometres(15000000)], note: "", source: 89 }, // M39
    Listed { nominal: Length::from_tenth_nanometres(400000000), choice: 3, coarse: None, fine: &[Length::from_tenth_nanometres(30000000), Length::from_tenth_nanometres(20000000), Length::from_tenth_nanometres(15000000)], note: "", source: 91 }, // M40
    Listed { nominal: Length::from_tenth_nanometres(420000000), choice: 1, coarse: Some(Length::from_tenth_nanometres(45000000)), fine: &[Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000), Length::from_tenth_nanometres(20000000), Length::from_tenth_nanometres(15000000)], note: "", source: 90 }, // M42
    Listed { nominal: Length::from_tenth_nanometres(450000000), choice: 2, coarse: Some(Length::from_tenth_nanometres(45000000)), fine: &[Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000), Length::from_tenth_nanometres(20000000), Length::from_tenth_nanometres(15000000)], note: "", source: 90 }, // M45
    Listed { nominal: Length::from_tenth_nanometres(480000000), choice: 1, coarse: Some(Length::from_tenth_nanometres(50000000)), fine: &[Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000), Length::from_tenth_nanometres(20000000), Length::from_tenth_nanometres(15000000)], note: "", source: 89 }, // M48
    Listed { nominal: Length::from_tenth_nanometres(500000000), choice: 3, coarse: None, fine: &[Length::from_tenth_nanometres(30000000), Length::from_tenth_nanometres(20000000), Length::from_tenth_nanometres(15000000)], note: "", source: 91 }, // M50
    Listed { nominal: Length::from_tenth_nanometres(520000000), choice: 2, coarse: Some(Length::from_tenth_nanometres(50000000)), fine: &[Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000), Length::from_tenth_nanometres(20000000), Length::from_tenth_nanometres(15000000)], note: "", source: 89 }, // M52
    Listed { nominal: Length::from_tenth_nanometres(550000000), choice: 3, coarse: None, fine: &[Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000), Length::from_tenth_nanometres(20000000), Length::from_tenth_nanometres(15000000)], note: "", source: 91 }, // M55
    Listed { nominal: Length::from_tenth_nanometres(560000000), choice: 1, coarse: Some(Length::from_tenth_nanometres(55000000)), fine: &[Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000), Length::from_tenth_nanometres(20000000), Length::from_tenth_nanometres(15000000)], note: "", source: 90 }, // M56
    Listed { nominal: Length::from_tenth_nanometres(580000000), choice: 3, coarse: None, fine: &[Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000), Length::from_tenth_nanometres(20000000), Length::from_tenth_nanometres(15000000)], note: "", source: 89 }, // M58
    Listed { nominal: Length::from_tenth_nanometres(600000000), choice: 2, coarse: Some(Length::from_tenth_nanometres(55000000)), fine: &[Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000), Length::from_tenth_nanometres(20000000), Length::from_tenth_nanometres(15000000)], note: "", source: 90 }, // M60
    Listed { nominal: Length::from_tenth_nanometres(620000000), choice: 3, coarse: None, fine: &[Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000), Length::from_tenth_nanometres(20000000), Length::from_tenth_nanometres(15000000)], note: "", source: 91 }, // M62
    Listed { nominal: Length::from_tenth_nanometres(640000000), choice: 1, coarse: Some(Length::from_tenth_nanometres(60000000)), fine: &[Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000), Length::from_tenth_nanometres(20000000), Length::from_tenth_nanometres(15000000)], note: "", source: 89 }, // M64
    Listed { nominal: Length::from_tenth_nanometres(650000000), choice: 3, coarse: None, fine: &[Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000), Length::from_tenth_nanometres(20000000), Length::from_tenth_nanometres(15000000)], note: "", source: 91 }, // M65
    Listed { nominal: Length::from_tenth_nanometres(680000000), choice: 2, coarse: Some(Length::from_tenth_nanometres(60000000)), fine: &[Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000), Length::from_tenth_nanometres(20000000), Length::from_tenth_nanometres(15000000)], note: "", source: 90 }, // M68
    Listed { nominal: Length::from_tenth_nanometres(700000000), choice: 3, coarse: None, fine: &[Length::from_tenth_nanometres(60000000), Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000), Length::from_tenth_nanometres(20000000), Length::from_tenth_nanometres(15000000)], note: "", source: 91 }, // M70
    Listed { nominal: Length::from_tenth_nanometres(720000000), choice: 1, coarse: None, fine: &[Length::from_tenth_nanometres(60000000), Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000), Length::from_tenth_nanometres(20000000), Length::from_tenth_nanometres(15000000)], note: "", source: 91 }, // M72
    Listed { nominal: Length::from_tenth_nanometres(750000000), choice: 3, coarse: None, fine: &[Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000), Length::from_tenth_nanometres(20000000), Length::from_tenth_nanometres(15000000)], note: "", source: 91 }, // M75
    Listed { nominal: Length::from_tenth_nanometres(760000000), choice: 2, coarse: None, fine: &[Length::from_tenth_nanometres(60000000), Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000), Length::from_tenth_nanometres(20000000), Length::from_tenth_nanometres(15000000)], note: "", source: 89 }, // M76
    Listed { nominal: Length::from_tenth_nanometres(780000000), choice: 3, coarse: None, fine: &[Length::from_tenth_nanometres(20000000)], note: "", source: 91 }, // M78
    Listed { nominal: Length::from_tenth_nanometres(800000000), choice: 1, coarse: None, fine: &[Length::from_tenth_nanometres(60000000), Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000), Length::from_tenth_nanometres(20000000), Length::from_tenth_nanometres(15000000)], note: "", source: 89 }, // M80
    Listed { nominal: Length::from_tenth_nanometres(820000000), choice: 3, coarse: None, fine: &[Length::from_tenth_nanometres(20000000)], note: "", source: 91 }, // M82
    Listed { nominal: Length::from_tenth_nanometres(850000000), choice: 2, coarse: None, fine: &[Length::from_tenth_nanometres(60000000), Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000), Length::from_tenth_nanometres(20000000)], note: "", source: 91 }, // M85
    Listed { nominal: Length::from_tenth_nanometres(900000000), choice: 1, coarse: None, fine: &[Length::from_tenth_nanometres(60000000), Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000), Length::from_tenth_nanometres(20000000)], note: "", source: 91 }, // M90
    Listed { nominal: Length::from_tenth_nanometres(950000000), choice: 2, coarse: None, fine: &[Length::from_tenth_nanometres(60000000), Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000), Length::from_tenth_nanometres(20000000)], note: "", source: 91 }, // M95
    Listed { nominal: Length::from_tenth_nanometres(1000000000), choice: 1, coarse: None, fine: &[Length::from_tenth_nanometres(60000000), Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000), Length::from_tenth_nanometres(20000000)], note: "", source: 91 }, // M100
    Listed { nominal: Length::from_tenth_nanometres(1050000000), choice: 2, coarse: None, fine: &[Length::from_tenth_nanometres(60000000), Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000), Length::from_tenth_nanometres(20000000)], note: "", source: 91 }, // M105
    Listed { nominal: Length::from_tenth_nanometres(1100000000), choice: 1, coarse: None, fine: &[Length::from_tenth_nanometres(60000000), Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000), Length::from_tenth_nanometres(20000000)], note: "", source: 91 }, // M110
    Listed { nominal: Length::from_tenth_nanometres(1150000000), choice: 2, coarse: None, fine: &[Length::from_tenth_nanometres(60000000), Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000), Length::from_tenth_nanometres(20000000)], note: "", source: 91 }, // M115
    Listed { nominal: Length::from_tenth_nanometres(1200000000), choice: 2, coarse: None, fine: &[Length::from_tenth_nanometres(60000000), Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000), Length::from_tenth_nanometres(20000000)], note: "", source: 91 }, // M120
    Listed { nominal: Length::from_tenth_nanometres(1250000000), choice: 1, coarse: None, fine: &[Length::from_tenth_nanometres(80000000), Length::from_tenth_nanometres(60000000), Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000), Length::from_tenth_nanometres(20000000)], note: "", source: 91 }, // M125
    Listed { nominal: Length::from_tenth_nanometres(1300000000), choice: 2, coarse: None, fine: &[Length::from_tenth_nanometres(80000000), Length::from_tenth_nanometres(60000000), Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000), Length::from_tenth_nanometres(20000000)], note: "", source: 91 }, // M130
    Listed { nominal: Length::from_tenth_nanometres(1350000000), choice: 3, coarse: None, fine: &[Length::from_tenth_nanometres(60000000), Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000), Length::from_tenth_nanometres(20000000)], note: "", source: 91 }, // M135
    Listed { nominal: Length::from_tenth_nanometres(1400000000), choice: 1, coarse: None, fine: &[Length::from_tenth_nanometres(80000000), Length::from_tenth_nanometres(60000000), Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000), Length::from_tenth_nanometres(20000000)], note: "", source: 91 }, // M140
    Listed { nominal: Length::from_tenth_nanometres(1450000000), choice: 3, coarse: None, fine: &[Length::from_tenth_nanometres(60000000), Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000), Length::from_tenth_nanometres(20000000)], note: "", source: 91 }, // M145
    Listed { nominal: Length::from_tenth_nanometres(1500000000), choice: 2, coarse: None, fine: &[Length::from_tenth_nanometres(80000000), Length::from_tenth_nanometres(60000000), Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000), Length::from_tenth_nanometres(20000000)], note: "", source: 91 }, // M150
    Listed { nominal: Length::from_tenth_nanometres(1550000000), choice: 3, coarse: None, fine: &[Length::from_tenth_nanometres(60000000), Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000)], note: "", source: 91 }, // M155
    Listed { nominal: Length::from_tenth_nanometres(1600000000), choice: 1, coarse: None, fine: &[Length::from_tenth_nanometres(80000000), Length::from_tenth_nanometres(60000000), Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000)], note: "", source: 91 }, // M160
    Listed { nominal: Length::from_tenth_nanometres(1650000000), choice: 3, coarse: None, fine: &[Length::from_tenth_nanometres(60000000), Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000)], note: "", source: 91 }, // M165
    Listed { nominal: Length::from_tenth_nanometres(1700000000), choice: 2, coarse: None, fine: &[Length::from_tenth_nanometres(80000000), Length::from_tenth_nanometres(60000000), Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000)], note: "", source: 91 }, // M170
    Listed { nominal: Length::from_tenth_nanometres(1750000000), choice: 3, coarse: None, fine: &[Length::from_tenth_nanometres(60000000), Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000)], note: "", source: 91 }, // M175
    Listed { nominal: Length::from_tenth_nanometres(1800000000), choice: 1, coarse: None, fine: &[Length::from_tenth_nanometres(80000000), Length::from_tenth_nanometres(60000000), Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000)], note: "", source: 91 }, // M180
    Listed { nominal: Length::from_tenth_nanometres(1850000000), choice: 3, coarse: None, fine: &[Length::from_tenth_nanometres(60000000), Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000)], note: "", source: 91 }, // M185
    Listed { nominal: Length::from_tenth_nanometres(1900000000), choice: 2, coarse: None, fine: &[Length::from_tenth_nanometres(80000000), Length::from_tenth_nanometres(60000000), Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000)], note: "", source: 91 }, // M190
    Listed { nominal: Length::from_tenth_nanometres(1950000000), choice: 3, coarse: None, fine: &[Length::from_tenth_nanometres(60000000), Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000)], note: "", source: 91 }, // M195
    Listed { nominal: Length::from_tenth_nanometres(2000000000), choice: 1, coarse: None, fine: &[Length::from_tenth_nanometres(80000000), Length::from_tenth_nanometres(60000000), Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000)], note: "", source: 91 }, // M200
    Listed { nominal: Length::from_tenth_nanometres(2050000000), choice: 3, coarse: None, fine: &[Length::from_tenth_nanometres(60000000), Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000)], note: "", source: 91 }, // M205
    Listed { nominal: Length::from_tenth_nanometres(2100000000), choice: 2, coarse: None, fine: &[Length::from_tenth_nanometres(80000000), Length::from_tenth_nanometres(60000000), Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000)], note: "", source: 91 }, // M210
    Listed { nominal: Length::from_tenth_nanometres(2150000000), choice: 3, coarse: None, fine: &[Length::from_tenth_nanometres(60000000), Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000)], note: "", source: 91 }, // M215
    Listed { nominal: Length::from_tenth_nanometres(2200000000), choice: 1, coarse: None, fine: &[Length::from_tenth_nanometres(80000000), Length::from_tenth_nanometres(60000000), Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000)], note: "", source: 91 }, // M220
    Listed { nominal: Length::from_tenth_nanometres(2250000000), choice: 3, coarse: None, fine: &[Length::from_tenth_nanometres(60000000), Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000)], note: "", source: 91 }, // M225
    Listed { nominal: Length::from_tenth_nanometres(2300000000), choice: 3, coarse: None, fine: &[Length::from_tenth_nanometres(80000000), Length::from_tenth_nanometres(60000000), Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000)], note: "", source: 91 }, // M230
    Listed { nominal: Length::from_tenth_nanometres(2350000000), choice: 3, coarse: None, fine: &[Length::from_tenth_nanometres(60000000), Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000)], note: "", source: 91 }, // M235
    Listed { nominal: Length::from_tenth_nanometres(2400000000), choice: 2, coarse: None, fine: &[Length::from_tenth_nanometres(80000000), Length::from_tenth_nanometres(60000000), Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000)], note: "", source: 91 }, // M240
    Listed { nominal: Length::from_tenth_nanometres(2450000000), choice: 3, coarse: None, fine: &[Length::from_tenth_nanometres(60000000), Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000)], note: "", source: 91 }, // M245
    Listed { nominal: Length::from_tenth_nanometres(2500000000), choice: 1, coarse: None, fine: &[Length::from_tenth_nanometres(80000000), Length::from_tenth_nanometres(60000000), Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000)], note: "", source: 91 }, // M250
    Listed { nominal: Length::from_tenth_nanometres(2550000000), choice: 3, coarse: None, fine: &[Length::from_tenth_nanometres(60000000), Length::from_tenth_nanometres(40000000)], note: "", source: 91 }, // M255
    Listed { nominal: Length::from_tenth_nanometres(2600000000), choice: 2, coarse: None, fine: &[Length::from_tenth_nanometres(80000000), Length::from_tenth_nanometres(60000000), Length::from_tenth_nanometres(40000000)], note: "", source: 91 }, // M260
    Listed { nominal: Length::from_tenth_nanometres(2650000000), choice: 3, coarse: None, fine: &[Length::from_tenth_nanometres(60000000), Length::from_tenth_nanometres(40000000)], note: "", source: 91 }, // M265
    Listed { nominal: Length::from_tenth_nanometres(2700000000), choice: 3, coarse: None, fine: &[Length::from_tenth_nanometres(80000000), Length::from_tenth_nanometres(60000000), Length::from_tenth_nanometres(40000000)], note: "", source: 91 }, // M270
    Listed { nominal: Length::from_tenth_nanometres(2750000000), choice: 3, coarse: None, fine: &[Length::from_tenth_nanometres(60000000), Length::from_tenth_nanometres(40000000)], note: "", source: 91 }, // M275
    Listed { nominal: Length::from_tenth_nanometres(2800000000), choice: 1, coarse: None, fine: &[Length::from_tenth_nanometres(80000000), Length::from_tenth_nanometres(60000000), Length::from_tenth_nanometres(40000000)], note: "", source: 91 }, // M280
    Listed { nominal: Length::from_tenth_nanometres(2850000000), choice: 3, coarse: None, fine: &[Length::from_tenth_nanometres(60000000), Length::from_tenth_nanometres(40000000)], note: "", source: 91 }, // M285
    Listed { nominal: Length::from_tenth_nanometres(2900000000), choice: 3, coarse: None, fine: &[Length::from_tenth_nanometres(80000000), Length::from_tenth_nanometres(60000000), Length::from_tenth_nanometres(40000000)], note: "", source: 91 }, // M290
    Listed { nominal: Length::from_tenth_nanometres(2950000000), choice: 3, coarse: None, fine: &[Length::from_tenth_nanometres(60000000), Length::from_tenth_nanometres(40000000)], note: "", source: 91 }, // M295
    Listed { nominal: Length::from_tenth_nanometres(3000000000), choice: 2, coarse: None, fine: &[Length::from_tenth_nanometres(80000000), Length::from_tenth_nanometres(60000000), Length::from_tenth_nanometres(40000000)], note: "", source: 91 }, // M300
];
