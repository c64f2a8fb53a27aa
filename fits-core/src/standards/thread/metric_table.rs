//! Generated from `data/threads/` by `tests/thread_tables.rs`; do not edit.

use super::metric::{Cell, Listed, PitchRow, Step, StepRow};
use crate::{size::Length, source::{Known, Provenance}};

const NONE: Cell = Cell { micrometres: 0, source: 0 };

pub(super) static SOURCES: [Provenance; 50] = [
    Provenance { known: Known::Seen, text: "ISO 965-1, table of fundamental deviations, pitches 0.2 to 6 mm, as a Polish textbook prints it" },
    Provenance { known: Known::Memory, text: "ISO 965-1, table of tolerances, unconfirmed" },
    Provenance { known: Known::Seen, text: "ISO 965-1, table of minor diameter tolerances of internal threads, reprint" },
    Provenance { known: Known::Formula, text: "Machinery's Handbook 27th ed., p. 1797: ratio of the grades, from a figure read, to the R 40 number" },
    Provenance { known: Known::Seen, text: "width of the 6h limits of M1.2x0.25: a tool maker's catalogue, p. 711 and 712, limits after ISO 965" },
    Provenance { known: Known::Seen, text: "width of the 5H limits of M1x0.25: GB/T 9145-2003" },
    Provenance { known: Known::Seen, text: "width of the 6g limits of M1.6x0.35: Metric External Thread Chart, ASME B1.13M limits, class 6g (Moonlight Brass)" },
    Provenance { known: Known::Seen, text: "width of the 6g limits of M2x0.4: a tool maker's catalogue, p. 711 and 712, limits after ISO 965" },
    Provenance { known: Known::Seen, text: "width of the 6g limits of M2.5x0.45: Metric External Thread Chart, ASME B1.13M limits, class 6g (Moonlight Brass)" },
    Provenance { known: Known::Seen, text: "width of the 6g limits of M7x0.5: Metric External Thread Chart, ASME B1.13M limits, class 6g (Moonlight Brass)" },
    Provenance { known: Known::Seen, text: "width of the 6H limits of M12x0.5: Internal Metric Thread Table M9 to M24, ASME B1.13M, class 6H (Engineers Edge)" },
    Provenance { known: Known::Seen, text: "width of the 6g limits of M3.5x0.6: ASME B1.13M, table of pitch diameters for rolled threads" },
    Provenance { known: Known::Seen, text: "width of the 6g limits of M4x0.7: a tool maker's catalogue, p. 711 and 712, limits after ISO 965" },
    Provenance { known: Known::Seen, text: "width of the 6g limits of M8x0.75: Metric External Thread Chart, ASME B1.13M limits, class 6g (Moonlight Brass)" },
    Provenance { known: Known::Seen, text: "width of the 6H limits of M11x0.75: Internal Metric Thread Table M9 to M24, ASME B1.13M, class 6H (Engineers Edge)" },
    Provenance { known: Known::Seen, text: "width of the 6g limits of M5x0.8: ASME B1.13M, table of pitch diameters for rolled threads" },
    Provenance { known: Known::Seen, text: "width of the 6H limits of M5x0.8: greatest minor diameter 4.334 in a fastener dealer's core hole table (Fedor Gross)" },
    Provenance { known: Known::Seen, text: "width of the 6g limits of M7x1: Metric External Thread Chart, ASME B1.13M limits, class 6g (Moonlight Brass)" },
    Provenance { known: Known::Seen, text: "width of the 6H limits of M9x1: Internal Metric Thread Table M9 to M24, ASME B1.13M, class 6H (Engineers Edge)" },
    Provenance { known: Known::Seen, text: "width of the 6g limits of M8x1.25: Metric External Thread Chart, ASME B1.13M limits, class 6g (Moonlight Brass)" },
    Provenance { known: Known::Seen, text: "width of the 6H limits of M10x1.25: Internal Metric Thread Table M9 to M24, ASME B1.13M, class 6H (Engineers Edge)" },
    Provenance { known: Known::Seen, text: "width of the 6g limits of M10x1.5: ASME B1.13M, table of pitch diameters for rolled threads" },
    Provenance { known: Known::Seen, text: "width of the 6H limits of M14x1.5: Internal Metric Thread Table M9 to M24, ASME B1.13M, class 6H (Engineers Edge)" },
    Provenance { known: Known::Seen, text: "deviation rows printed with ISO 965-4 and ISO 965-5, reprints" },
    Provenance { known: Known::Seen, text: "width of the 6H limits of M12x1.75: Internal Metric Thread Table M9 to M24, ASME B1.13M, class 6H (Engineers Edge)" },
    Provenance { known: Known::Seen, text: "width of the 6g limits of M20x2: a tool maker's catalogue, p. 711 and 712, limits after ISO 965" },
    Provenance { known: Known::Seen, text: "deviation rows printed with ISO 965-5, reprint" },
    Provenance { known: Known::Memory, text: "ISO 965-1, table of fundamental deviations, unconfirmed" },
    Provenance { known: Known::Seen, text: "Yamawa tap catalogue 2021, p. 645 and 656, pitch diameter tolerances" },
    Provenance { known: Known::Seen, text: "ISO 965-1, table of pitch diameter tolerances of external threads, reprint" },
    Provenance { known: Known::Seen, text: "width of the 4g6g limits of M1.6x0.35: ASME B1.13M, table of pitch diameters for rolled threads" },
    Provenance { known: Known::Seen, text: "width of the 6H limits of M2x0.4: a gauge maker's chart of metric pitch diameters" },
    Provenance { known: Known::Seen, text: "width of the 4g6g limits of M2.5x0.45: ASME B1.13M, table of pitch diameters for rolled threads" },
    Provenance { known: Known::Seen, text: "width of the 6g limits of M3x0.35: Metric External Thread Chart, ASME B1.13M limits, class 6g (Moonlight Brass)" },
    Provenance { known: Known::Seen, text: "width of the 4g6g limits of M3x0.5: ASME B1.13M, table of pitch diameters for rolled threads" },
    Provenance { known: Known::Seen, text: "width of the 4g6g limits of M3.5x0.6: ASME B1.13M, table of pitch diameters for rolled threads" },
    Provenance { known: Known::Seen, text: "width of the 4g6g limits of M10x0.75: ASME B1.13M, table of pitch diameters for rolled threads" },
    Provenance { known: Known::Seen, text: "width of the 6H limits of M10x1: Internal Metric Thread Table M9 to M24, ASME B1.13M, class 6H (Engineers Edge)" },
    Provenance { known: Known::Seen, text: "width of the 4g6g limits of M10x1.5: ASME B1.13M, table of pitch diameters for rolled threads" },
    Provenance { known: Known::Seen, text: "width of the 6H limits of M10x1.5: a gauge maker's chart of metric pitch diameters" },
    Provenance { known: Known::Seen, text: "width of the 6H limits of M12x1: Internal Metric Thread Table M9 to M24, ASME B1.13M, class 6H (Engineers Edge)" },
    Provenance { known: Known::Seen, text: "width of the 6g limits of M12x1.25: a tool maker's catalogue, p. 711 and 712, limits after ISO 965" },
    Provenance { known: Known::Seen, text: "width of the 6g limits of M16x1.5: a tool maker's catalogue, p. 711 and 712, limits after ISO 965" },
    Provenance { known: Known::Seen, text: "width of the 6g limits of M18x2: a tool maker's catalogue, p. 711 and 712, limits after ISO 965" },
    Provenance { known: Known::Seen, text: "Machinery's Handbook 27th ed., p. 1802, Table 13: width of 4g limits" },
    Provenance { known: Known::Seen, text: "Machinery's Handbook 27th ed., p. 1802, Table 13: width of 6g limits" },
    Provenance { known: Known::Seen, text: "ISO 965-1, table of pitch diameter tolerances of internal threads, reprint" },
    Provenance { known: Known::Seen, text: "ISO 261; each pitch stands in limits or in a tap maker's table read" },
    Provenance { known: Known::Memory, text: "ISO 261, general plan, unconfirmed; the coarse pitch stands in a tap maker's table read" },
    Provenance { known: Known::Memory, text: "ISO 261, general plan, unconfirmed" },
];

pub(super) static PITCHES: [PitchRow; 25] = [
    PitchRow { pitch: Length::from_tenth_nanometres(2000000), // 0.2 mm
        deviations: [NONE, Cell { micrometres: 32, source: 0 }, Cell { micrometres: 17, source: 0 }],
        major: [Cell { micrometres: 36, source: 1 }, Cell { micrometres: 56, source: 1 }, NONE],
        minor: [Cell { micrometres: 38, source: 2 }, NONE, NONE, NONE, NONE] },
    PitchRow { pitch: Length::from_tenth_nanometres(2500000), // 0.25 mm
        deviations: [NONE, Cell { micrometres: 33, source: 0 }, Cell { micrometres: 18, source: 0 }],
        major: [Cell { micrometres: 42, source: 3 }, Cell { micrometres: 67, source: 4 }, NONE],
        minor: [Cell { micrometres: 45, source: 2 }, Cell { micrometres: 56, source: 5 }, NONE, NONE, NONE] },
    PitchRow { pitch: Length::from_tenth_nanometres(3000000), // 0.3 mm
        deviations: [NONE, Cell { micrometres: 33, source: 0 }, Cell { micrometres: 18, source: 0 }],
        major: [Cell { micrometres: 48, source: 1 }, Cell { micrometres: 75, source: 1 }, NONE],
        minor: [Cell { micrometres: 53, source: 2 }, Cell { micrometres: 67, source: 2 }, Cell { micrometres: 85, source: 2 }, NONE, NONE] },
    PitchRow { pitch: Length::from_tenth_nanometres(3500000), // 0.35 mm
        deviations: [NONE, Cell { micrometres: 34, source: 0 }, Cell { micrometres: 19, source: 0 }],
        major: [Cell { micrometres: 53, source: 3 }, Cell { micrometres: 85, source: 6 }, NONE],
        minor: [Cell { micrometres: 63, source: 2 }, Cell { micrometres: 80, source: 2 }, Cell { micrometres: 100, source: 3 }, NONE, NONE] },
    PitchRow { pitch: Length::from_tenth_nanometres(4000000), // 0.4 mm
        deviations: [NONE, Cell { micrometres: 34, source: 0 }, Cell { micrometres: 19, source: 0 }],
        major: [Cell { micrometres: 60, source: 3 }, Cell { micrometres: 95, source: 7 }, NONE],
        minor: [Cell { micrometres: 71, source: 2 }, Cell { micrometres: 90, source: 2 }, Cell { micrometres: 112, source: 3 }, NONE, NONE] },
    PitchRow { pitch: Length::from_tenth_nanometres(4500000), // 0.45 mm
        deviations: [NONE, Cell { micrometres: 35, source: 0 }, Cell { micrometres: 20, source: 0 }],
        major: [Cell { micrometres: 63, source: 3 }, Cell { micrometres: 100, source: 8 }, NONE],
        minor: [Cell { micrometres: 80, source: 2 }, Cell { micrometres: 100, source: 2 }, Cell { micrometres: 125, source: 2 }, NONE, NONE] },
    PitchRow { pitch: Length::from_tenth_nanometres(5000000), // 0.5 mm
        deviations: [Cell { micrometres: 50, source: 0 }, Cell { micrometres: 36, source: 0 }, Cell { micrometres: 20, source: 0 }],
        major: [Cell { micrometres: 67, source: 3 }, Cell { micrometres: 106, source: 9 }, NONE],
        minor: [Cell { micrometres: 90, source: 2 }, Cell { micrometres: 112, source: 2 }, Cell { micrometres: 140, source: 10 }, Cell { micrometres: 180, source: 2 }, NONE] },
    PitchRow { pitch: Length::from_tenth_nanometres(6000000), // 0.6 mm
        deviations: [Cell { micrometres: 53, source: 0 }, Cell { micrometres: 36, source: 0 }, Cell { micrometres: 21, source: 0 }],
        major: [Cell { micrometres: 80, source: 3 }, Cell { micrometres: 125, source: 11 }, NONE],
        minor: [Cell { micrometres: 100, source: 2 }, Cell { micrometres: 125, source: 2 }, Cell { micrometres: 160, source: 2 }, Cell { micrometres: 200, source: 2 }, NONE] },
    PitchRow { pitch: Length::from_tenth_nanometres(7000000), // 0.7 mm
        deviations: [Cell { micrometres: 56, source: 0 }, Cell { micrometres: 38, source: 0 }, Cell { micrometres: 22, source: 0 }],
        major: [Cell { micrometres: 90, source: 3 }, Cell { micrometres: 140, source: 12 }, NONE],
        minor: [Cell { micrometres: 112, source: 2 }, Cell { micrometres: 140, source: 2 }, Cell { micrometres: 180, source: 3 }, Cell { micrometres: 224, source: 2 }, NONE] },
    PitchRow { pitch: Length::from_tenth_nanometres(7500000), // 0.75 mm
        deviations: [Cell { micrometres: 56, source: 0 }, Cell { micrometres: 38, source: 0 }, Cell { micrometres: 22, source: 0 }],
        major: [Cell { micrometres: 90, source: 3 }, Cell { micrometres: 140, source: 13 }, NONE],
        minor: [Cell { micrometres: 118, source: 3 }, Cell { micrometres: 150, source: 3 }, Cell { micrometres: 190, source: 14 }, Cell { micrometres: 236, source: 3 }, NONE] },
    PitchRow { pitch: Length::from_tenth_nanometres(8000000), // 0.8 mm
        deviations: [Cell { micrometres: 60, source: 0 }, Cell { micrometres: 38, source: 0 }, Cell { micrometres: 24, source: 0 }],
        major: [Cell { micrometres: 95, source: 3 }, Cell { micrometres: 150, source: 15 }, Cell { micrometres: 236, source: 3 }],
        minor: [Cell { micrometres: 125, source: 3 }, Cell { micrometres: 160, source: 3 }, Cell { micrometres: 200, source: 16 }, Cell { micrometres: 250, source: 3 }, Cell { micrometres: 315, source: 3 }] },
    PitchRow { pitch: Length::from_tenth_nanometres(10000000), // 1 mm
        deviations: [Cell { micrometres: 60, source: 0 }, Cell { micrometres: 40, source: 0 }, Cell { micrometres: 26, source: 0 }],
        major: [Cell { micrometres: 112, source: 3 }, Cell { micrometres: 180, source: 17 }, Cell { micrometres: 280, source: 3 }],
        minor: [Cell { micrometres: 150, source: 3 }, Cell { micrometres: 190, source: 3 }, Cell { micrometres: 236, source: 18 }, Cell { micrometres: 300, source: 3 }, Cell { micrometres: 375, source: 3 }] },
    PitchRow { pitch: Length::from_tenth_nanometres(12500000), // 1.25 mm
        deviations: [Cell { micrometres: 63, source: 0 }, Cell { micrometres: 42, source: 0 }, Cell { micrometres: 28, source: 0 }],
        major: [Cell { micrometres: 132, source: 3 }, Cell { micrometres: 212, source: 19 }, Cell { micrometres: 335, source: 3 }],
        minor: [Cell { micrometres: 170, source: 3 }, Cell { micrometres: 212, source: 3 }, Cell { micrometres: 265, source: 20 }, Cell { micrometres: 335, source: 3 }, Cell { micrometres: 425, source: 3 }] },
    PitchRow { pitch: Length::from_tenth_nanometres(15000000), // 1.5 mm
        deviations: [Cell { micrometres: 67, source: 0 }, Cell { micrometres: 45, source: 0 }, Cell { micrometres: 32, source: 0 }],
        major: [Cell { micrometres: 150, source: 3 }, Cell { micrometres: 236, source: 21 }, Cell { micrometres: 375, source: 3 }],
        minor: [Cell { micrometres: 190, source: 3 }, Cell { micrometres: 236, source: 3 }, Cell { micrometres: 300, source: 22 }, Cell { micrometres: 375, source: 3 }, Cell { micrometres: 475, source: 3 }] },
    PitchRow { pitch: Length::from_tenth_nanometres(17500000), // 1.75 mm
        deviations: [Cell { micrometres: 71, source: 0 }, Cell { micrometres: 48, source: 0 }, Cell { micrometres: 34, source: 0 }],
        major: [Cell { micrometres: 170, source: 3 }, Cell { micrometres: 265, source: 23 }, Cell { micrometres: 425, source: 3 }],
        minor: [Cell { micrometres: 212, source: 3 }, Cell { micrometres: 265, source: 3 }, Cell { micrometres: 335, source: 24 }, Cell { micrometres: 425, source: 3 }, Cell { micrometres: 530, source: 3 }] },
    PitchRow { pitch: Length::from_tenth_nanometres(20000000), // 2 mm
        deviations: [Cell { micrometres: 71, source: 0 }, Cell { micrometres: 52, source: 0 }, Cell { micrometres: 38, source: 0 }],
        major: [Cell { micrometres: 180, source: 3 }, Cell { micrometres: 280, source: 25 }, Cell { micrometres: 450, source: 3 }],
        minor: [Cell { micrometres: 236, source: 3 }, Cell { micrometres: 300, source: 3 }, Cell { micrometres: 375, source: 23 }, Cell { micrometres: 475, source: 3 }, Cell { micrometres: 600, source: 3 }] },
    PitchRow { pitch: Length::from_tenth_nanometres(25000000), // 2.5 mm
        deviations: [Cell { micrometres: 80, source: 0 }, Cell { micrometres: 58, source: 0 }, Cell { micrometres: 42, source: 0 }],
        major: [Cell { micrometres: 212, source: 3 }, Cell { micrometres: 335, source: 23 }, Cell { micrometres: 530, source: 3 }],
        minor: [Cell { micrometres: 280, source: 3 }, Cell { micrometres: 355, source: 3 }, Cell { micrometres: 450, source: 26 }, Cell { micrometres: 560, source: 3 }, Cell { micrometres: 710, source: 3 }] },
    PitchRow { pitch: Length::from_tenth_nanometres(30000000), // 3 mm
        deviations: [Cell { micrometres: 85, source: 0 }, Cell { micrometres: 63, source: 0 }, Cell { micrometres: 48, source: 0 }],
        major: [Cell { micrometres: 236, source: 3 }, Cell { micrometres: 375, source: 23 }, Cell { micrometres: 600, source: 3 }],
        minor: [Cell { micrometres: 315, source: 3 }, Cell { micrometres: 400, source: 3 }, Cell { micrometres: 500, source: 26 }, Cell { micrometres: 630, source: 3 }, Cell { micrometres: 800, source: 3 }] },
    PitchRow { pitch: Length::from_tenth_nanometres(35000000), // 3.5 mm
        deviations: [Cell { micrometres: 90, source: 0 }, Cell { micrometres: 70, source: 0 }, Cell { micrometres: 53, source: 0 }],
        major: [Cell { micrometres: 265, source: 3 }, Cell { micrometres: 425, source: 23 }, Cell { micrometres: 670, source: 3 }],
        minor: [Cell { micrometres: 355, source: 3 }, Cell { micrometres: 450, source: 3 }, Cell { micrometres: 560, source: 26 }, Cell { micrometres: 710, source: 3 }, Cell { micrometres: 900, source: 3 }] },
    PitchRow { pitch: Length::from_tenth_nanometres(40000000), // 4 mm
        deviations: [Cell { micrometres: 95, source: 0 }, Cell { micrometres: 75, source: 0 }, Cell { micrometres: 60, source: 0 }],
        major: [Cell { micrometres: 300, source: 3 }, Cell { micrometres: 475, source: 23 }, Cell { micrometres: 750, source: 3 }],
        minor: [Cell { micrometres: 375, source: 3 }, Cell { micrometres: 475, source: 3 }, Cell { micrometres: 600, source: 23 }, Cell { micrometres: 750, source: 3 }, Cell { micrometres: 950, source: 3 }] },
    PitchRow { pitch: Length::from_tenth_nanometres(45000000), // 4.5 mm
        deviations: [Cell { micrometres: 100, source: 0 }, Cell { micrometres: 80, source: 0 }, Cell { micrometres: 63, source: 0 }],
        major: [Cell { micrometres: 315, source: 3 }, Cell { micrometres: 500, source: 23 }, Cell { micrometres: 800, source: 3 }],
        minor: [Cell { micrometres: 425, source: 3 }, Cell { micrometres: 530, source: 3 }, Cell { micrometres: 670, source: 26 }, Cell { micrometres: 850, source: 3 }, Cell { micrometres: 1060, source: 3 }] },
    PitchRow { pitch: Length::from_tenth_nanometres(50000000), // 5 mm
        deviations: [Cell { micrometres: 106, source: 0 }, Cell { micrometres: 85, source: 0 }, Cell { micrometres: 71, source: 0 }],
        major: [Cell { micrometres: 335, source: 3 }, Cell { micrometres: 530, source: 23 }, Cell { micrometres: 850, source: 3 }],
        minor: [Cell { micrometres: 450, source: 3 }, Cell { micrometres: 560, source: 3 }, Cell { micrometres: 710, source: 26 }, Cell { micrometres: 900, source: 3 }, Cell { micrometres: 1120, source: 3 }] },
    PitchRow { pitch: Length::from_tenth_nanometres(55000000), // 5.5 mm
        deviations: [Cell { micrometres: 112, source: 0 }, Cell { micrometres: 90, source: 0 }, Cell { micrometres: 75, source: 0 }],
        major: [Cell { micrometres: 355, source: 3 }, Cell { micrometres: 560, source: 23 }, Cell { micrometres: 900, source: 3 }],
        minor: [Cell { micrometres: 475, source: 3 }, Cell { micrometres: 600, source: 3 }, Cell { micrometres: 750, source: 26 }, Cell { micrometres: 950, source: 3 }, Cell { micrometres: 1180, source: 3 }] },
    PitchRow { pitch: Length::from_tenth_nanometres(60000000), // 6 mm
        deviations: [Cell { micrometres: 118, source: 0 }, Cell { micrometres: 95, source: 0 }, Cell { micrometres: 80, source: 0 }],
        major: [Cell { micrometres: 375, source: 3 }, Cell { micrometres: 600, source: 23 }, Cell { micrometres: 950, source: 3 }],
        minor: [Cell { micrometres: 500, source: 3 }, Cell { micrometres: 630, source: 3 }, Cell { micrometres: 800, source: 26 }, Cell { micrometres: 1000, source: 3 }, Cell { micrometres: 1250, source: 3 }] },
    PitchRow { pitch: Length::from_tenth_nanometres(80000000), // 8 mm
        deviations: [Cell { micrometres: 140, source: 27 }, Cell { micrometres: 118, source: 27 }, Cell { micrometres: 100, source: 27 }],
        major: [Cell { micrometres: 450, source: 1 }, Cell { micrometres: 710, source: 1 }, Cell { micrometres: 1180, source: 1 }],
        minor: [Cell { micrometres: 630, source: 1 }, Cell { micrometres: 800, source: 1 }, Cell { micrometres: 1000, source: 1 }, Cell { micrometres: 1250, source: 1 }, Cell { micrometres: 1600, source: 1 }] },
];

pub(super) static STEPS: [Step; 9] = [
    Step { over: Length::from_tenth_nanometres(9900000), up_to: Length::from_tenth_nanometres(14000000), rows: &[
        StepRow { pitch: Length::from_tenth_nanometres(2000000), // 0.2 mm
            external: [Cell { micrometres: 24, source: 1 }, Cell { micrometres: 30, source: 1 }, Cell { micrometres: 38, source: 1 }, Cell { micrometres: 48, source: 1 }, NONE, NONE, NONE],
            internal: [Cell { micrometres: 40, source: 1 }, NONE, NONE, NONE, NONE],
            engagement: [0, 0] },
        StepRow { pitch: Length::from_tenth_nanometres(2500000), // 0.25 mm
            external: [Cell { micrometres: 26, source: 3 }, Cell { micrometres: 34, source: 3 }, Cell { micrometres: 42, source: 3 }, Cell { micrometres: 53, source: 4 }, NONE, NONE, NONE],
            internal: [Cell { micrometres: 45, source: 28 }, Cell { micrometres: 56, source: 5 }, NONE, NONE, NONE],
            engagement: [600, 1700] },
        StepRow { pitch: Length::from_tenth_nanometres(3000000), // 0.3 mm
            external: [Cell { micrometres: 28, source: 1 }, Cell { micrometres: 36, source: 1 }, Cell { micrometres: 45, source: 1 }, Cell { micrometres: 56, source: 1 }, NONE, NONE, NONE],
            internal: [Cell { micrometres: 48, source: 28 }, Cell { micrometres: 60, source: 28 }, Cell { micrometres: 75, source: 28 }, NONE, NONE],
            engagement: [700, 2000] },
    ] },
    Step { over: Length::from_tenth_nanometres(14000000), up_to: Length::from_tenth_nanometres(28000000), rows: &[
        StepRow { pitch: Length::from_tenth_nanometres(2000000), // 0.2 mm
            external: [Cell { micrometres: 25, source: 29 }, Cell { micrometres: 32, source: 29 }, Cell { micrometres: 40, source: 29 }, Cell { micrometres: 50, source: 3 }, NONE, NONE, NONE],
            internal: [Cell { micrometres: 42, source: 3 }, NONE, NONE, NONE, NONE],
            engagement: [0, 0] },
        StepRow { pitch: Length::from_tenth_nanometres(2500000), // 0.25 mm
            external: [Cell { micrometres: 28, source: 29 }, Cell { micrometres: 36, source: 29 }, Cell { micrometres: 45, source: 29 }, Cell { micrometres: 56, source: 29 }, NONE, NONE, NONE],
            internal: [Cell { micrometres: 48, source: 3 }, Cell { micrometres: 60, source: 3 }, NONE, NONE, NONE],
            engagement: [0, 0] },
        StepRow { pitch: Length::from_tenth_nanometres(3500000), // 0.35 mm
            external: [Cell { micrometres: 32, source: 29 }, Cell { micrometres: 40, source: 30 }, Cell { micrometres: 50, source: 29 }, Cell { micrometres: 63, source: 6 }, Cell { micrometres: 80, source: 29 }, NONE, NONE],
            internal: [Cell { micrometres: 53, source: 28 }, Cell { micrometres: 67, source: 28 }, Cell { micrometres: 85, source: 28 }, NONE, NONE],
            engagement: [800, 2600] },
        StepRow { pitch: Length::from_tenth_nanometres(4000000), // 0.4 mm
            external: [Cell { micrometres: 34, source: 29 }, Cell { micrometres: 42, source: 29 }, Cell { micrometres: 53, source: 29 }, Cell { micrometres: 67, source: 3 }, Cell { micrometres: 85, source: 29 }, NONE, NONE],
            internal: [Cell { micrometres: 56, source: 28 }, Cell { micrometres: 71, source: 28 }, Cell { micrometres: 90, source: 31 }, NONE, NONE],
            engagement: [1000, 3000] },
        StepRow { pitch: Length::from_tenth_nanometres(4500000), // 0.45 mm
            external: [Cell { micrometres: 36, source: 29 }, Cell { micrometres: 45, source: 32 }, Cell { micrometres: 56, source: 29 }, Cell { micrometres: 71, source: 8 }, Cell { micrometres: 90, source: 29 }, NONE, NONE],
            internal: [Cell { micrometres: 60, source: 28 }, Cell { micrometres: 75, source: 28 }, Cell { micrometres: 95, source: 28 }, NONE, NONE],
            engagement: [1300, 3800] },
    ] },
    Step { over: Length::from_tenth_nanometres(28000000), up_to: Length::from_tenth_nanometres(56000000), rows: &[
        StepRow { pitch: Length::from_tenth_nanometres(3500000), // 0.35 mm
            external: [Cell { micrometres: 34, source: 29 }, Cell { micrometres: 42, source: 29 }, Cell { micrometres: 53, source: 29 }, Cell { micrometres: 67, source: 33 }, Cell { micrometres: 85, source: 29 }, NONE, NONE],
            internal: [Cell { micrometres: 56, source: 3 }, Cell { micrometres: 71, source: 3 }, Cell { micrometres: 90, source: 3 }, NONE, NONE],
            engagement: [0, 0] },
        StepRow { pitch: Length::from_tenth_nanometres(5000000), // 0.5 mm
            external: [Cell { micrometres: 38, source: 29 }, Cell { micrometres: 48, source: 34 }, Cell { micrometres: 60, source: 29 }, Cell { micrometres: 75, source: 29 }, Cell { micrometres: 95, source: 29 }, NONE, NONE],
            internal: [Cell { micrometres: 63, source: 28 }, Cell { micrometres: 80, source: 28 }, Cell { micrometres: 100, source: 28 }, Cell { micrometres: 125, source: 3 }, NONE],
            engagement: [1500, 4500] },
        StepRow { pitch: Length::from_tenth_nanometres(6000000), // 0.6 mm
            external: [Cell { micrometres: 42, source: 29 }, Cell { micrometres: 53, source: 35 }, Cell { micrometres: 67, source: 29 }, Cell { micrometres: 85, source: 11 }, Cell { micrometres: 106, source: 29 }, NONE, NONE],
            internal: [Cell { micrometres: 71, source: 28 }, Cell { micrometres: 90, source: 28 }, Cell { micrometres: 112, source: 28 }, Cell { micrometres: 140, source: 3 }, NONE],
            engagement: [1700, 5000] },
        StepRow { pitch: Length::from_tenth_nanometres(7000000), // 0.7 mm
            external: [Cell { micrometres: 45, source: 29 }, Cell { micrometres: 56, source: 29 }, Cell { micrometres: 71, source: 29 }, Cell { micrometres: 90, source: 12 }, Cell { micrometres: 112, source: 29 }, NONE, NONE],
            internal: [Cell { micrometres: 75, source: 28 }, Cell { micrometres: 95, source: 28 }, Cell { micrometres: 118, source: 28 }, Cell { micrometres: 150, source: 3 }, NONE],
            engagement: [2000, 6000] },
        StepRow { pitch: Length::from_tenth_nanometres(7500000), // 0.75 mm
            external: [Cell { micrometres: 45, source: 29 }, Cell { micrometres: 56, source: 29 }, Cell { micrometres: 71, source: 29 }, Cell { micrometres: 90, source: 3 }, Cell { micrometres: 112, source: 29 }, NONE, NONE],
            internal: [Cell { micrometres: 75, source: 28 }, Cell { micrometres: 95, source: 28 }, Cell { micrometres: 118, source: 28 }, Cell { micrometres: 150, source: 3 }, NONE],
            engagement: [0, 0] },
        StepRow { pitch: Length::from_tenth_nanometres(8000000), // 0.8 mm
            external: [Cell { micrometres: 48, source: 29 }, Cell { micrometres: 60, source: 29 }, Cell { micrometres: 75, source: 29 }, Cell { micrometres: 95, source: 15 }, Cell { micrometres: 118, source: 29 }, Cell { micrometres: 150, source: 29 }, Cell { micrometres: 190, source: 29 }],
            internal: [Cell { micrometres: 80, source: 28 }, Cell { micrometres: 100, source: 28 }, Cell { micrometres: 125, source: 28 }, Cell { micrometres: 160, source: 3 }, Cell { micrometres: 200, source: 3 }],
            engagement: [2500, 7500] },
    ] },
    Step { over: Length::from_tenth_nanometres(56000000), up_to: Length::from_tenth_nanometres(112000000), rows: &[
        StepRow { pitch: Length::from_tenth_nanometres(7500000), // 0.75 mm
            external: [Cell { micrometres: 50, source: 29 }, Cell { micrometres: 63, source: 36 }, Cell { micrometres: 80, source: 29 }, Cell { micrometres: 100, source: 13 }, Cell { micrometres: 125, source: 29 }, NONE, NONE],
            internal: [Cell { micrometres: 85, source: 3 }, Cell { micrometres: 106, source: 3 }, Cell { micrometres: 132, source: 14 }, Cell { micrometres: 170, source: 3 }, NONE],
            engagement: [0, 0] },
        StepRow { pitch: Length::from_tenth_nanometres(10000000), // 1 mm
            external: [Cell { micrometres: 56, source: 29 }, Cell { micrometres: 71, source: 29 }, Cell { micrometres: 90, source: 29 }, Cell { micrometres: 112, source: 17 }, Cell { micrometres: 140, source: 29 }, Cell { micrometres: 180, source: 29 }, Cell { micrometres: 224, source: 29 }],
            internal: [Cell { micrometres: 95, source: 28 }, Cell { micrometres: 118, source: 28 }, Cell { micrometres: 150, source: 37 }, Cell { micrometres: 190, source: 3 }, Cell { micrometres: 236, source: 3 }],
            engagement: [3000, 9000] },
        StepRow { pitch: Length::from_tenth_nanometres(12500000), // 1.25 mm
            external: [Cell { micrometres: 60, source: 29 }, Cell { micrometres: 75, source: 29 }, Cell { micrometres: 95, source: 29 }, Cell { micrometres: 118, source: 19 }, Cell { micrometres: 150, source: 29 }, Cell { micrometres: 190, source: 29 }, Cell { micrometres: 236, source: 29 }],
            internal: [Cell { micrometres: 100, source: 28 }, Cell { micrometres: 125, source: 28 }, Cell { micrometres: 160, source: 20 }, Cell { micrometres: 200, source: 3 }, Cell { micrometres: 250, source: 3 }],
            engagement: [4000, 12000] },
        StepRow { pitch: Length::from_tenth_nanometres(15000000), // 1.5 mm
            external: [Cell { micrometres: 67, source: 29 }, Cell { micrometres: 85, source: 38 }, Cell { micrometres: 106, source: 29 }, Cell { micrometres: 132, source: 21 }, Cell { micrometres: 170, source: 29 }, Cell { micrometres: 212, source: 29 }, Cell { micrometres: 265, source: 29 }],
            internal: [Cell { micrometres: 112, source: 3 }, Cell { micrometres: 140, source: 3 }, Cell { micrometres: 180, source: 39 }, Cell { micrometres: 224, source: 3 }, Cell { micrometres: 280, source: 3 }],
            engagement: [5000, 15000] },
    ] },
    Step { over: Length::from_tenth_nanometres(112000000), up_to: Length::from_tenth_nanometres(224000000), rows: &[
        StepRow { pitch: Length::from_tenth_nanometres(10000000), // 1 mm
            external: [Cell { micrometres: 60, source: 29 }, Cell { micrometres: 75, source: 29 }, Cell { micrometres: 95, source: 29 }, Cell { micrometres: 118, source: 29 }, Cell { micrometres: 150, source: 29 }, Cell { micrometres: 190, source: 29 }, Cell { micrometres: 236, source: 29 }],
            internal: [Cell { micrometres: 100, source: 3 }, Cell { micrometres: 125, source: 3 }, Cell { micrometres: 160, source: 40 }, Cell { micrometres: 200, source: 3 }, Cell { micrometres: 250, source: 3 }],
            engagement: [0, 0] },
        StepRow { pitch: Length::from_tenth_nanometres(12500000), // 1.25 mm
            external: [Cell { micrometres: 67, source: 29 }, Cell { micrometres: 85, source: 29 }, Cell { micrometres: 106, source: 29 }, Cell { micrometres: 132, source: 41 }, Cell { micrometres: 170, source: 29 }, Cell { micrometres: 212, source: 29 }, Cell { micrometres: 265, source: 29 }],
            internal: [Cell { micrometres: 112, source: 3 }, Cell { micrometres: 140, source: 3 }, Cell { micrometres: 180, source: 1 }, Cell { micrometres: 224, source: 3 }, Cell { micrometres: 280, source: 3 }],
            engagement: [4500, 13000] },
        StepRow { pitch: Length::from_tenth_nanometres(15000000), // 1.5 mm
            external: [Cell { micrometres: 71, source: 29 }, Cell { micrometres: 90, source: 29 }, Cell { micrometres: 112, source: 29 }, Cell { micrometres: 140, source: 42 }, Cell { micrometres: 180, source: 29 }, Cell { micrometres: 224, source: 29 }, Cell { micrometres: 280, source: 29 }],
            internal: [Cell { micrometres: 118, source: 3 }, Cell { micrometres: 150, source: 3 }, Cell { micrometres: 190, source: 22 }, Cell { micrometres: 236, source: 3 }, Cell { micrometres: 300, source: 3 }],
            engagement: [5600, 16000] },
        StepRow { pitch: Length::from_tenth_nanometres(17500000), // 1.75 mm
            external: [Cell { micrometres: 75, source: 29 }, Cell { micrometres: 95, source: 29 }, Cell { micrometres: 118, source: 29 }, Cell { micrometres: 150, source: 23 }, Cell { micrometres: 190, source: 29 }, Cell { micrometres: 236, source: 29 }, Cell { micrometres: 300, source: 29 }],
            internal: [Cell { micrometres: 125, source: 3 }, Cell { micrometres: 160, source: 3 }, Cell { micrometres: 200, source: 24 }, Cell { micrometres: 250, source: 3 }, Cell { micrometres: 315, source: 3 }],
            engagement: [6000, 18000] },
        StepRow { pitch: Length::from_tenth_nanometres(20000000), // 2 mm
            external: [Cell { micrometres: 80, source: 29 }, Cell { micrometres: 100, source: 29 }, Cell { micrometres: 125, source: 29 }, Cell { micrometres: 160, source: 43 }, Cell { micrometres: 200, source: 29 }, Cell { micrometres: 250, source: 29 }, Cell { micrometres: 315, source: 29 }],
            internal: [Cell { micrometres: 132, source: 1 }, Cell { micrometres: 170, source: 3 }, Cell { micrometres: 212, source: 26 }, Cell { micrometres: 265, source: 3 }, Cell { micrometres: 335, source: 3 }],
            engagement: [8000, 24000] },
        StepRow { pitch: Length::from_tenth_nanometres(25000000), // 2.5 mm
            external: [Cell { micrometres: 85, source: 29 }, Cell { micrometres: 106, source: 29 }, Cell { micrometres: 132, source: 29 }, Cell { micrometres: 170, source: 23 }, Cell { micrometres: 212, source: 29 }, Cell { micrometres: 265, source: 29 }, Cell { micrometres: 335, source: 29 }],
            internal: [Cell { micrometres: 140, source: 3 }, Cell { micrometres: 180, source: 3 }, Cell { micrometres: 224, source: 23 }, Cell { micrometres: 280, source: 3 }, Cell { micrometres: 355, source: 3 }],
            engagement: [10000, 30000] },
    ] },
    Step { over: Length::from_tenth_nanometres(224000000), up_to: Length::from_tenth_nanometres(450000000), rows: &[
        StepRow { pitch: Length::from_tenth_nanometres(10000000), // 1 mm
            external: [Cell { micrometres: 63, source: 29 }, Cell { micrometres: 80, source: 29 }, Cell { micrometres: 100, source: 29 }, Cell { micrometres: 125, source: 29 }, Cell { micrometres: 160, source: 29 }, Cell { micrometres: 200, source: 29 }, Cell { micrometres: 250, source: 29 }],
            internal: [Cell { micrometres: 106, source: 3 }, Cell { micrometres: 132, source: 3 }, Cell { micrometres: 170, source: 3 }, Cell { micrometres: 212, source: 3 }, NONE],
            engagement: [0, 0] },
        StepRow { pitch: Length::from_tenth_nanometres(15000000), // 1.5 mm
            external: [Cell { micrometres: 75, source: 29 }, Cell { micrometres: 95, source: 29 }, Cell { micrometres: 118, source: 29 }, Cell { micrometres: 150, source: 29 }, Cell { micrometres: 190, source: 29 }, Cell { micrometres: 236, source: 29 }, Cell { micrometres: 300, source: 29 }],
            internal: [Cell { micrometres: 125, source: 3 }, Cell { micrometres: 160, source: 3 }, Cell { micrometres: 200, source: 3 }, Cell { micrometres: 250, source: 3 }, Cell { micrometres: 315, source: 3 }],
            engagement: [0, 0] },
        StepRow { pitch: Length::from_tenth_nanometres(20000000), // 2 mm
            external: [Cell { micrometres: 85, source: 29 }, Cell { micrometres: 106, source: 29 }, Cell { micrometres: 132, source: 29 }, Cell { micrometres: 170, source: 29 }, Cell { micrometres: 212, source: 29 }, Cell { micrometres: 265, source: 29 }, Cell { micrometres: 335, source: 29 }],
            internal: [Cell { micrometres: 140, source: 3 }, Cell { micrometres: 180, source: 3 }, Cell { micrometres: 224, source: 3 }, Cell { micrometres: 280, source: 3 }, Cell { micrometres: 355, source: 3 }],
            engagement: [0, 0] },
        StepRow { pitch: Length::from_tenth_nanometres(30000000), // 3 mm
            external: [Cell { micrometres: 100, source: 29 }, Cell { micrometres: 125, source: 29 }, Cell { micrometres: 160, source: 29 }, Cell { micrometres: 200, source: 23 }, Cell { micrometres: 250, source: 29 }, Cell { micrometres: 315, source: 29 }, Cell { micrometres: 400, source: 29 }],
            internal: [Cell { micrometres: 170, source: 3 }, Cell { micrometres: 212, source: 3 }, Cell { micrometres: 265, source: 26 }, Cell { micrometres: 335, source: 3 }, Cell { micrometres: 425, source: 3 }],
            engagement: [12000, 36000] },
        StepRow { pitch: Length::from_tenth_nanometres(35000000), // 3.5 mm
            external: [Cell { micrometres: 106, source: 3 }, Cell { micrometres: 132, source: 3 }, Cell { micrometres: 170, source: 3 }, Cell { micrometres: 212, source: 23 }, Cell { micrometres: 265, source: 3 }, Cell { micrometres: 335, source: 3 }, Cell { micrometres: 425, source: 3 }],
            internal: [Cell { micrometres: 180, source: 3 }, Cell { micrometres: 224, source: 3 }, Cell { micrometres: 280, source: 26 }, Cell { micrometres: 355, source: 3 }, Cell { micrometres: 450, source: 3 }],
            engagement: [15000, 45000] },
        StepRow { pitch: Length::from_tenth_nanometres(40000000), // 4 mm
            external: [Cell { micrometres: 112, source: 3 }, Cell { micrometres: 140, source: 3 }, Cell { micrometres: 180, source: 3 }, Cell { micrometres: 224, source: 23 }, Cell { micrometres: 280, source: 3 }, Cell { micrometres: 355, source: 3 }, Cell { micrometres: 450, source: 3 }],
            internal: [Cell { micrometres: 190, source: 3 }, Cell { micrometres: 236, source: 3 }, Cell { micrometres: 300, source: 26 }, Cell { micrometres: 375, source: 3 }, Cell { micrometres: 475, source: 3 }],
            engagement: [18000, 53000] },
        StepRow { pitch: Length::from_tenth_nanometres(45000000), // 4.5 mm
            external: [Cell { micrometres: 118, source: 3 }, Cell { micrometres: 150, source: 3 }, Cell { micrometres: 190, source: 3 }, Cell { micrometres: 236, source: 23 }, Cell { micrometres: 300, source: 3 }, Cell { micrometres: 375, source: 3 }, Cell { micrometres: 475, source: 3 }],
            internal: [Cell { micrometres: 200, source: 3 }, Cell { micrometres: 250, source: 3 }, Cell { micrometres: 315, source: 26 }, Cell { micrometres: 400, source: 3 }, Cell { micrometres: 500, source: 3 }],
            engagement: [21000, 63000] },
    ] },
    Step { over: Length::from_tenth_nanometres(450000000), up_to: Length::from_tenth_nanometres(900000000), rows: &[
        StepRow { pitch: Length::from_tenth_nanometres(15000000), // 1.5 mm
            external: [Cell { micrometres: 80, source: 1 }, Cell { micrometres: 100, source: 44 }, Cell { micrometres: 125, source: 1 }, Cell { micrometres: 160, source: 45 }, Cell { micrometres: 200, source: 1 }, Cell { micrometres: 250, source: 1 }, Cell { micrometres: 315, source: 1 }],
            internal: [Cell { micrometres: 132, source: 1 }, Cell { micrometres: 170, source: 1 }, Cell { micrometres: 212, source: 3 }, Cell { micrometres: 265, source: 1 }, Cell { micrometres: 335, source: 1 }],
            engagement: [0, 0] },
        StepRow { pitch: Length::from_tenth_nanometres(20000000), // 2 mm
            external: [Cell { micrometres: 90, source: 1 }, Cell { micrometres: 112, source: 44 }, Cell { micrometres: 140, source: 1 }, Cell { micrometres: 180, source: 45 }, Cell { micrometres: 224, source: 1 }, Cell { micrometres: 280, source: 1 }, Cell { micrometres: 355, source: 1 }],
            internal: [Cell { micrometres: 150, source: 1 }, Cell { micrometres: 190, source: 1 }, Cell { micrometres: 236, source: 3 }, Cell { micrometres: 300, source: 1 }, Cell { micrometres: 375, source: 1 }],
            engagement: [0, 0] },
        StepRow { pitch: Length::from_tenth_nanometres(30000000), // 3 mm
            external: [Cell { micrometres: 106, source: 1 }, Cell { micrometres: 132, source: 1 }, Cell { micrometres: 170, source: 1 }, Cell { micrometres: 212, source: 1 }, Cell { micrometres: 265, source: 1 }, Cell { micrometres: 335, source: 1 }, Cell { micrometres: 425, source: 1 }],
            internal: [Cell { micrometres: 180, source: 1 }, Cell { micrometres: 224, source: 1 }, Cell { micrometres: 280, source: 1 }, Cell { micrometres: 355, source: 1 }, Cell { micrometres: 450, source: 1 }],
            engagement: [0, 0] },
        StepRow { pitch: Length::from_tenth_nanometres(40000000), // 4 mm
            external: [Cell { micrometres: 118, source: 1 }, Cell { micrometres: 150, source: 1 }, Cell { micrometres: 190, source: 1 }, Cell { micrometres: 236, source: 1 }, Cell { micrometres: 300, source: 1 }, Cell { micrometres: 375, source: 1 }, Cell { micrometres: 475, source: 1 }],
            internal: [Cell { micrometres: 200, source: 1 }, Cell { micrometres: 250, source: 1 }, Cell { micrometres: 315, source: 1 }, Cell { micrometres: 400, source: 1 }, Cell { micrometres: 500, source: 1 }],
            engagement: [0, 0] },
        StepRow { pitch: Length::from_tenth_nanometres(50000000), // 5 mm
            external: [Cell { micrometres: 125, source: 3 }, Cell { micrometres: 160, source: 3 }, Cell { micrometres: 200, source: 3 }, Cell { micrometres: 250, source: 23 }, Cell { micrometres: 315, source: 3 }, Cell { micrometres: 400, source: 3 }, Cell { micrometres: 500, source: 3 }],
            internal: [Cell { micrometres: 212, source: 3 }, Cell { micrometres: 265, source: 3 }, Cell { micrometres: 335, source: 23 }, Cell { micrometres: 425, source: 3 }, Cell { micrometres: 530, source: 3 }],
            engagement: [0, 0] },
        StepRow { pitch: Length::from_tenth_nanometres(55000000), // 5.5 mm
            external: [Cell { micrometres: 132, source: 3 }, Cell { micrometres: 170, source: 3 }, Cell { micrometres: 212, source: 3 }, Cell { micrometres: 265, source: 23 }, Cell { micrometres: 335, source: 3 }, Cell { micrometres: 425, source: 3 }, Cell { micrometres: 530, source: 3 }],
            internal: [Cell { micrometres: 224, source: 3 }, Cell { micrometres: 280, source: 3 }, Cell { micrometres: 355, source: 26 }, Cell { micrometres: 450, source: 3 }, Cell { micrometres: 560, source: 3 }],
            engagement: [0, 0] },
        StepRow { pitch: Length::from_tenth_nanometres(60000000), // 6 mm
            external: [Cell { micrometres: 140, source: 3 }, Cell { micrometres: 180, source: 44 }, Cell { micrometres: 224, source: 3 }, Cell { micrometres: 280, source: 23 }, Cell { micrometres: 355, source: 3 }, Cell { micrometres: 450, source: 3 }, Cell { micrometres: 560, source: 3 }],
            internal: [Cell { micrometres: 236, source: 3 }, Cell { micrometres: 300, source: 3 }, Cell { micrometres: 375, source: 26 }, Cell { micrometres: 475, source: 3 }, Cell { micrometres: 600, source: 3 }],
            engagement: [0, 0] },
    ] },
    Step { over: Length::from_tenth_nanometres(900000000), up_to: Length::from_tenth_nanometres(1800000000), rows: &[
        StepRow { pitch: Length::from_tenth_nanometres(20000000), // 2 mm
            external: [Cell { micrometres: 95, source: 1 }, Cell { micrometres: 118, source: 1 }, Cell { micrometres: 150, source: 1 }, Cell { micrometres: 190, source: 45 }, Cell { micrometres: 236, source: 1 }, Cell { micrometres: 300, source: 1 }, Cell { micrometres: 375, source: 1 }],
            internal: [Cell { micrometres: 160, source: 46 }, Cell { micrometres: 200, source: 46 }, Cell { micrometres: 250, source: 46 }, Cell { micrometres: 315, source: 46 }, Cell { micrometres: 400, source: 46 }],
            engagement: [0, 0] },
        StepRow { pitch: Length::from_tenth_nanometres(30000000), // 3 mm
            external: [Cell { micrometres: 112, source: 1 }, Cell { micrometres: 140, source: 1 }, Cell { micrometres: 180, source: 1 }, Cell { micrometres: 224, source: 1 }, Cell { micrometres: 280, source: 1 }, Cell { micrometres: 355, source: 1 }, Cell { micrometres: 450, source: 1 }],
            internal: [Cell { micrometres: 190, source: 46 }, Cell { micrometres: 236, source: 46 }, Cell { micrometres: 300, source: 3 }, Cell { micrometres: 375, source: 46 }, Cell { micrometres: 475, source: 46 }],
            engagement: [0, 0] },
        StepRow { pitch: Length::from_tenth_nanometres(40000000), // 4 mm
            external: [Cell { micrometres: 125, source: 1 }, Cell { micrometres: 160, source: 1 }, Cell { micrometres: 200, source: 1 }, Cell { micrometres: 250, source: 1 }, Cell { micrometres: 315, source: 1 }, Cell { micrometres: 400, source: 1 }, Cell { micrometres: 500, source: 1 }],
            internal: [Cell { micrometres: 212, source: 46 }, Cell { micrometres: 265, source: 46 }, Cell { micrometres: 335, source: 3 }, Cell { micrometres: 425, source: 46 }, Cell { micrometres: 530, source: 46 }],
            engagement: [0, 0] },
        StepRow { pitch: Length::from_tenth_nanometres(60000000), // 6 mm
            external: [Cell { micrometres: 150, source: 1 }, Cell { micrometres: 190, source: 1 }, Cell { micrometres: 236, source: 1 }, Cell { micrometres: 300, source: 1 }, Cell { micrometres: 375, source: 1 }, Cell { micrometres: 475, source: 1 }, Cell { micrometres: 600, source: 1 }],
            internal: [Cell { micrometres: 250, source: 46 }, Cell { micrometres: 315, source: 46 }, Cell { micrometres: 400, source: 46 }, Cell { micrometres: 500, source: 46 }, Cell { micrometres: 630, source: 46 }],
            engagement: [0, 0] },
        StepRow { pitch: Length::from_tenth_nanometres(80000000), // 8 mm
            external: [Cell { micrometres: 170, source: 1 }, Cell { micrometres: 212, source: 1 }, Cell { micrometres: 265, source: 1 }, Cell { micrometres: 335, source: 1 }, Cell { micrometres: 425, source: 1 }, Cell { micrometres: 530, source: 1 }, Cell { micrometres: 670, source: 1 }],
            internal: [Cell { micrometres: 280, source: 46 }, Cell { micrometres: 355, source: 46 }, Cell { micrometres: 450, source: 46 }, Cell { micrometres: 560, source: 46 }, Cell { micrometres: 710, source: 46 }],
            engagement: [0, 0] },
    ] },
    Step { over: Length::from_tenth_nanometres(1800000000), up_to: Length::from_tenth_nanometres(3550000000), rows: &[
        StepRow { pitch: Length::from_tenth_nanometres(30000000), // 3 mm
            external: [Cell { micrometres: 125, source: 1 }, Cell { micrometres: 160, source: 1 }, Cell { micrometres: 200, source: 1 }, Cell { micrometres: 250, source: 1 }, Cell { micrometres: 315, source: 1 }, Cell { micrometres: 400, source: 1 }, Cell { micrometres: 500, source: 1 }],
            internal: [Cell { micrometres: 212, source: 46 }, Cell { micrometres: 265, source: 46 }, Cell { micrometres: 335, source: 46 }, Cell { micrometres: 425, source: 46 }, Cell { micrometres: 530, source: 46 }],
            engagement: [0, 0] },
        StepRow { pitch: Length::from_tenth_nanometres(40000000), // 4 mm
            external: [Cell { micrometres: 140, source: 1 }, Cell { micrometres: 180, source: 1 }, Cell { micrometres: 224, source: 1 }, Cell { micrometres: 280, source: 1 }, Cell { micrometres: 355, source: 1 }, Cell { micrometres: 450, source: 1 }, Cell { micrometres: 560, source: 1 }],
            internal: [Cell { micrometres: 236, source: 46 }, Cell { micrometres: 300, source: 46 }, Cell { micrometres: 375, source: 46 }, Cell { micrometres: 475, source: 46 }, Cell { micrometres: 600, source: 46 }],
            engagement: [0, 0] },
        StepRow { pitch: Length::from_tenth_nanometres(60000000), // 6 mm
            external: [Cell { micrometres: 160, source: 1 }, Cell { micrometres: 200, source: 1 }, Cell { micrometres: 250, source: 1 }, Cell { micrometres: 315, source: 1 }, Cell { micrometres: 400, source: 1 }, Cell { micrometres: 500, source: 1 }, Cell { micrometres: 630, source: 1 }],
            internal: [Cell { micrometres: 265, source: 46 }, Cell { micrometres: 335, source: 46 }, Cell { micrometres: 425, source: 46 }, Cell { micrometres: 530, source: 46 }, Cell { micrometres: 670, source: 46 }],
            engagement: [0, 0] },
        StepRow { pitch: Length::from_tenth_nanometres(80000000), // 8 mm
            external: [Cell { micrometres: 180, source: 1 }, Cell { micrometres: 224, source: 1 }, Cell { micrometres: 280, source: 1 }, Cell { micrometres: 355, source: 1 }, Cell { micrometres: 450, source: 1 }, Cell { micrometres: 560, source: 1 }, Cell { micrometres: 710, source: 1 }],
            internal: [Cell { micrometres: 300, source: 46 }, Cell { micrometres: 375, source: 46 }, Cell { micrometres: 475, source: 46 }, Cell { micrometres: 600, source: 46 }, Cell { micrometres: 750, source: 46 }],
            engagement: [0, 0] },
    ] },
];

pub(super) static SERIES: [Listed; 106] = [
    Listed { nominal: Length::from_tenth_nanometres(10000000), choice: 1, coarse: Some(Length::from_tenth_nanometres(2500000)), fine: &[Length::from_tenth_nanometres(2000000)], note: "", source: 47 }, // M1
    Listed { nominal: Length::from_tenth_nanometres(11000000), choice: 2, coarse: Some(Length::from_tenth_nanometres(2500000)), fine: &[Length::from_tenth_nanometres(2000000)], note: "", source: 47 }, // M1.1
    Listed { nominal: Length::from_tenth_nanometres(12000000), choice: 1, coarse: Some(Length::from_tenth_nanometres(2500000)), fine: &[Length::from_tenth_nanometres(2000000)], note: "", source: 48 }, // M1.2
    Listed { nominal: Length::from_tenth_nanometres(14000000), choice: 2, coarse: Some(Length::from_tenth_nanometres(3000000)), fine: &[Length::from_tenth_nanometres(2000000)], note: "", source: 48 }, // M1.4
    Listed { nominal: Length::from_tenth_nanometres(16000000), choice: 1, coarse: Some(Length::from_tenth_nanometres(3500000)), fine: &[Length::from_tenth_nanometres(2000000)], note: "", source: 48 }, // M1.6
    Listed { nominal: Length::from_tenth_nanometres(18000000), choice: 2, coarse: Some(Length::from_tenth_nanometres(3500000)), fine: &[Length::from_tenth_nanometres(2000000)], note: "", source: 48 }, // M1.8
    Listed { nominal: Length::from_tenth_nanometres(20000000), choice: 1, coarse: Some(Length::from_tenth_nanometres(4000000)), fine: &[Length::from_tenth_nanometres(2500000)], note: "", source: 47 }, // M2
    Listed { nominal: Length::from_tenth_nanometres(22000000), choice: 2, coarse: Some(Length::from_tenth_nanometres(4500000)), fine: &[Length::from_tenth_nanometres(2500000)], note: "", source: 48 }, // M2.2
    Listed { nominal: Length::from_tenth_nanometres(25000000), choice: 1, coarse: Some(Length::from_tenth_nanometres(4500000)), fine: &[Length::from_tenth_nanometres(3500000)], note: "", source: 47 }, // M2.5
    Listed { nominal: Length::from_tenth_nanometres(30000000), choice: 1, coarse: Some(Length::from_tenth_nanometres(5000000)), fine: &[Length::from_tenth_nanometres(3500000)], note: "", source: 47 }, // M3
    Listed { nominal: Length::from_tenth_nanometres(35000000), choice: 2, coarse: Some(Length::from_tenth_nanometres(6000000)), fine: &[Length::from_tenth_nanometres(3500000)], note: "", source: 48 }, // M3.5
    Listed { nominal: Length::from_tenth_nanometres(40000000), choice: 1, coarse: Some(Length::from_tenth_nanometres(7000000)), fine: &[Length::from_tenth_nanometres(5000000)], note: "", source: 47 }, // M4
    Listed { nominal: Length::from_tenth_nanometres(45000000), choice: 2, coarse: Some(Length::from_tenth_nanometres(7500000)), fine: &[Length::from_tenth_nanometres(5000000)], note: "", source: 48 }, // M4.5
    Listed { nominal: Length::from_tenth_nanometres(50000000), choice: 1, coarse: Some(Length::from_tenth_nanometres(8000000)), fine: &[Length::from_tenth_nanometres(5000000)], note: "", source: 47 }, // M5
    Listed { nominal: Length::from_tenth_nanometres(55000000), choice: 3, coarse: None, fine: &[Length::from_tenth_nanometres(5000000)], note: "", source: 49 }, // M5.5
    Listed { nominal: Length::from_tenth_nanometres(60000000), choice: 1, coarse: Some(Length::from_tenth_nanometres(10000000)), fine: &[Length::from_tenth_nanometres(7500000)], note: "", source: 47 }, // M6
    Listed { nominal: Length::from_tenth_nanometres(70000000), choice: 2, coarse: Some(Length::from_tenth_nanometres(10000000)), fine: &[Length::from_tenth_nanometres(7500000)], note: "", source: 48 }, // M7
    Listed { nominal: Length::from_tenth_nanometres(80000000), choice: 1, coarse: Some(Length::from_tenth_nanometres(12500000)), fine: &[Length::from_tenth_nanometres(10000000), Length::from_tenth_nanometres(7500000)], note: "", source: 47 }, // M8
    Listed { nominal: Length::from_tenth_nanometres(90000000), choice: 3, coarse: Some(Length::from_tenth_nanometres(12500000)), fine: &[Length::from_tenth_nanometres(10000000), Length::from_tenth_nanometres(7500000)], note: "", source: 48 }, // M9
    Listed { nominal: Length::from_tenth_nanometres(100000000), choice: 1, coarse: Some(Length::from_tenth_nanometres(15000000)), fine: &[Length::from_tenth_nanometres(12500000), Length::from_tenth_nanometres(10000000), Length::from_tenth_nanometres(7500000)], note: "", source: 47 }, // M10
    Listed { nominal: Length::from_tenth_nanometres(110000000), choice: 3, coarse: Some(Length::from_tenth_nanometres(15000000)), fine: &[Length::from_tenth_nanometres(10000000), Length::from_tenth_nanometres(7500000)], note: "", source: 47 }, // M11
    Listed { nominal: Length::from_tenth_nanometres(120000000), choice: 1, coarse: Some(Length::from_tenth_nanometres(17500000)), fine: &[Length::from_tenth_nanometres(15000000), Length::from_tenth_nanometres(12500000), Length::from_tenth_nanometres(10000000)], note: "", source: 48 }, // M12
    Listed { nominal: Length::from_tenth_nanometres(140000000), choice: 2, coarse: Some(Length::from_tenth_nanometres(20000000)), fine: &[Length::from_tenth_nanometres(15000000), Length::from_tenth_nanometres(12500000), Length::from_tenth_nanometres(10000000)], note: "1.25 for spark plugs only", source: 48 }, // M14
    Listed { nominal: Length::from_tenth_nanometres(150000000), choice: 3, coarse: None, fine: &[Length::from_tenth_nanometres(15000000), Length::from_tenth_nanometres(10000000)], note: "", source: 49 }, // M15
    Listed { nominal: Length::from_tenth_nanometres(160000000), choice: 1, coarse: Some(Length::from_tenth_nanometres(20000000)), fine: &[Length::from_tenth_nanometres(15000000), Length::from_tenth_nanometres(10000000)], note: "", source: 48 }, // M16
    Listed { nominal: Length::from_tenth_nanometres(170000000), choice: 3, coarse: None, fine: &[Length::from_tenth_nanometres(15000000), Length::from_tenth_nanometres(10000000)], note: "", source: 49 }, // M17
    Listed { nominal: Length::from_tenth_nanometres(180000000), choice: 2, coarse: Some(Length::from_tenth_nanometres(25000000)), fine: &[Length::from_tenth_nanometres(20000000), Length::from_tenth_nanometres(15000000), Length::from_tenth_nanometres(10000000)], note: "", source: 48 }, // M18
    Listed { nominal: Length::from_tenth_nanometres(200000000), choice: 1, coarse: Some(Length::from_tenth_nanometres(25000000)), fine: &[Length::from_tenth_nanometres(20000000), Length::from_tenth_nanometres(15000000), Length::from_tenth_nanometres(10000000)], note: "", source: 48 }, // M20
    Listed { nominal: Length::from_tenth_nanometres(220000000), choice: 2, coarse: Some(Length::from_tenth_nanometres(25000000)), fine: &[Length::from_tenth_nanometres(20000000), Length::from_tenth_nanometres(15000000), Length::from_tenth_nanometres(10000000)], note: "", source: 48 }, // M22
    Listed { nominal: Length::from_tenth_nanometres(240000000), choice: 1, coarse: Some(Length::from_tenth_nanometres(30000000)), fine: &[Length::from_tenth_nanometres(20000000), Length::from_tenth_nanometres(15000000), Length::from_tenth_nanometres(10000000)], note: "", source: 48 }, // M24
    Listed { nominal: Length::from_tenth_nanometres(250000000), choice: 3, coarse: None, fine: &[Length::from_tenth_nanometres(20000000), Length::from_tenth_nanometres(15000000), Length::from_tenth_nanometres(10000000)], note: "", source: 49 }, // M25
    Listed { nominal: Length::from_tenth_nanometres(260000000), choice: 3, coarse: None, fine: &[Length::from_tenth_nanometres(15000000)], note: "", source: 49 }, // M26
    Listed { nominal: Length::from_tenth_nanometres(270000000), choice: 2, coarse: Some(Length::from_tenth_nanometres(30000000)), fine: &[Length::from_tenth_nanometres(20000000), Length::from_tenth_nanometres(15000000), Length::from_tenth_nanometres(10000000)], note: "", source: 48 }, // M27
    Listed { nominal: Length::from_tenth_nanometres(280000000), choice: 3, coarse: None, fine: &[Length::from_tenth_nanometres(20000000), Length::from_tenth_nanometres(15000000), Length::from_tenth_nanometres(10000000)], note: "", source: 49 }, // M28
    Listed { nominal: Length::from_tenth_nanometres(300000000), choice: 1, coarse: Some(Length::from_tenth_nanometres(35000000)), fine: &[Length::from_tenth_nanometres(30000000), Length::from_tenth_nanometres(20000000), Length::from_tenth_nanometres(15000000), Length::from_tenth_nanometres(10000000)], note: "3 to be avoided", source: 48 }, // M30
    Listed { nominal: Length::from_tenth_nanometres(320000000), choice: 3, coarse: None, fine: &[Length::from_tenth_nanometres(20000000), Length::from_tenth_nanometres(15000000)], note: "", source: 49 }, // M32
    Listed { nominal: Length::from_tenth_nanometres(330000000), choice: 2, coarse: Some(Length::from_tenth_nanometres(35000000)), fine: &[Length::from_tenth_nanometres(30000000), Length::from_tenth_nanometres(20000000), Length::from_tenth_nanometres(15000000)], note: "3 to be avoided", source: 48 }, // M33
    Listed { nominal: Length::from_tenth_nanometres(350000000), choice: 3, coarse: None, fine: &[Length::from_tenth_nanometres(15000000)], note: "1.5 for locking nuts of rolling bearings only", source: 49 }, // M35
    Listed { nominal: Length::from_tenth_nanometres(360000000), choice: 1, coarse: Some(Length::from_tenth_nanometres(40000000)), fine: &[Length::from_tenth_nanometres(30000000), Length::from_tenth_nanometres(20000000), Length::from_tenth_nanometres(15000000)], note: "", source: 48 }, // M36
    Listed { nominal: Length::from_tenth_nanometres(380000000), choice: 3, coarse: None, fine: &[Length::from_tenth_nanometres(15000000)], note: "", source: 49 }, // M38
    Listed { nominal: Length::from_tenth_nanometres(390000000), choice: 2, coarse: Some(Length::from_tenth_nanometres(40000000)), fine: &[Length::from_tenth_nanometres(30000000), Length::from_tenth_nanometres(20000000), Length::from_tenth_nanometres(15000000)], note: "", source: 48 }, // M39
    Listed { nominal: Length::from_tenth_nanometres(400000000), choice: 3, coarse: None, fine: &[Length::from_tenth_nanometres(30000000), Length::from_tenth_nanometres(20000000), Length::from_tenth_nanometres(15000000)], note: "", source: 49 }, // M40
    Listed { nominal: Length::from_tenth_nanometres(420000000), choice: 1, coarse: Some(Length::from_tenth_nanometres(45000000)), fine: &[Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000), Length::from_tenth_nanometres(20000000), Length::from_tenth_nanometres(15000000)], note: "", source: 48 }, // M42
    Listed { nominal: Length::from_tenth_nanometres(450000000), choice: 2, coarse: Some(Length::from_tenth_nanometres(45000000)), fine: &[Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000), Length::from_tenth_nanometres(20000000), Length::from_tenth_nanometres(15000000)], note: "", source: 48 }, // M45
    Listed { nominal: Length::from_tenth_nanometres(480000000), choice: 1, coarse: Some(Length::from_tenth_nanometres(50000000)), fine: &[Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000), Length::from_tenth_nanometres(20000000), Length::from_tenth_nanometres(15000000)], note: "", source: 48 }, // M48
    Listed { nominal: Length::from_tenth_nanometres(500000000), choice: 3, coarse: None, fine: &[Length::from_tenth_nanometres(30000000), Length::from_tenth_nanometres(20000000), Length::from_tenth_nanometres(15000000)], note: "", source: 49 }, // M50
    Listed { nominal: Length::from_tenth_nanometres(520000000), choice: 2, coarse: Some(Length::from_tenth_nanometres(50000000)), fine: &[Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000), Length::from_tenth_nanometres(20000000), Length::from_tenth_nanometres(15000000)], note: "", source: 49 }, // M52
    Listed { nominal: Length::from_tenth_nanometres(550000000), choice: 3, coarse: None, fine: &[Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000), Length::from_tenth_nanometres(20000000), Length::from_tenth_nanometres(15000000)], note: "", source: 49 }, // M55
    Listed { nominal: Length::from_tenth_nanometres(560000000), choice: 1, coarse: Some(Length::from_tenth_nanometres(55000000)), fine: &[Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000), Length::from_tenth_nanometres(20000000), Length::from_tenth_nanometres(15000000)], note: "", source: 49 }, // M56
    Listed { nominal: Length::from_tenth_nanometres(580000000), choice: 3, coarse: None, fine: &[Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000), Length::from_tenth_nanometres(20000000), Length::from_tenth_nanometres(15000000)], note: "", source: 49 }, // M58
    Listed { nominal: Length::from_tenth_nanometres(600000000), choice: 2, coarse: Some(Length::from_tenth_nanometres(55000000)), fine: &[Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000), Length::from_tenth_nanometres(20000000), Length::from_tenth_nanometres(15000000)], note: "", source: 49 }, // M60
    Listed { nominal: Length::from_tenth_nanometres(620000000), choice: 3, coarse: None, fine: &[Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000), Length::from_tenth_nanometres(20000000), Length::from_tenth_nanometres(15000000)], note: "", source: 49 }, // M62
    Listed { nominal: Length::from_tenth_nanometres(640000000), choice: 1, coarse: Some(Length::from_tenth_nanometres(60000000)), fine: &[Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000), Length::from_tenth_nanometres(20000000), Length::from_tenth_nanometres(15000000)], note: "", source: 49 }, // M64
    Listed { nominal: Length::from_tenth_nanometres(650000000), choice: 3, coarse: None, fine: &[Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000), Length::from_tenth_nanometres(20000000), Length::from_tenth_nanometres(15000000)], note: "", source: 49 }, // M65
    Listed { nominal: Length::from_tenth_nanometres(680000000), choice: 2, coarse: Some(Length::from_tenth_nanometres(60000000)), fine: &[Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000), Length::from_tenth_nanometres(20000000), Length::from_tenth_nanometres(15000000)], note: "", source: 49 }, // M68
    Listed { nominal: Length::from_tenth_nanometres(700000000), choice: 3, coarse: None, fine: &[Length::from_tenth_nanometres(60000000), Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000), Length::from_tenth_nanometres(20000000), Length::from_tenth_nanometres(15000000)], note: "", source: 49 }, // M70
    Listed { nominal: Length::from_tenth_nanometres(720000000), choice: 1, coarse: None, fine: &[Length::from_tenth_nanometres(60000000), Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000), Length::from_tenth_nanometres(20000000), Length::from_tenth_nanometres(15000000)], note: "", source: 49 }, // M72
    Listed { nominal: Length::from_tenth_nanometres(750000000), choice: 3, coarse: None, fine: &[Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000), Length::from_tenth_nanometres(20000000), Length::from_tenth_nanometres(15000000)], note: "", source: 49 }, // M75
    Listed { nominal: Length::from_tenth_nanometres(760000000), choice: 2, coarse: None, fine: &[Length::from_tenth_nanometres(60000000), Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000), Length::from_tenth_nanometres(20000000), Length::from_tenth_nanometres(15000000)], note: "", source: 49 }, // M76
    Listed { nominal: Length::from_tenth_nanometres(780000000), choice: 3, coarse: None, fine: &[Length::from_tenth_nanometres(20000000)], note: "", source: 49 }, // M78
    Listed { nominal: Length::from_tenth_nanometres(800000000), choice: 1, coarse: None, fine: &[Length::from_tenth_nanometres(60000000), Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000), Length::from_tenth_nanometres(20000000), Length::from_tenth_nanometres(15000000)], note: "", source: 49 }, // M80
    Listed { nominal: Length::from_tenth_nanometres(820000000), choice: 3, coarse: None, fine: &[Length::from_tenth_nanometres(20000000)], note: "", source: 49 }, // M82
    Listed { nominal: Length::from_tenth_nanometres(850000000), choice: 2, coarse: None, fine: &[Length::from_tenth_nanometres(60000000), Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000), Length::from_tenth_nanometres(20000000)], note: "", source: 49 }, // M85
    Listed { nominal: Length::from_tenth_nanometres(900000000), choice: 1, coarse: None, fine: &[Length::from_tenth_nanometres(60000000), Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000), Length::from_tenth_nanometres(20000000)], note: "", source: 49 }, // M90
    Listed { nominal: Length::from_tenth_nanometres(950000000), choice: 2, coarse: None, fine: &[Length::from_tenth_nanometres(60000000), Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000), Length::from_tenth_nanometres(20000000)], note: "", source: 49 }, // M95
    Listed { nominal: Length::from_tenth_nanometres(1000000000), choice: 1, coarse: None, fine: &[Length::from_tenth_nanometres(60000000), Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000), Length::from_tenth_nanometres(20000000)], note: "", source: 49 }, // M100
    Listed { nominal: Length::from_tenth_nanometres(1050000000), choice: 2, coarse: None, fine: &[Length::from_tenth_nanometres(60000000), Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000), Length::from_tenth_nanometres(20000000)], note: "", source: 49 }, // M105
    Listed { nominal: Length::from_tenth_nanometres(1100000000), choice: 1, coarse: None, fine: &[Length::from_tenth_nanometres(60000000), Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000), Length::from_tenth_nanometres(20000000)], note: "", source: 49 }, // M110
    Listed { nominal: Length::from_tenth_nanometres(1150000000), choice: 2, coarse: None, fine: &[Length::from_tenth_nanometres(60000000), Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000), Length::from_tenth_nanometres(20000000)], note: "", source: 49 }, // M115
    Listed { nominal: Length::from_tenth_nanometres(1200000000), choice: 2, coarse: None, fine: &[Length::from_tenth_nanometres(60000000), Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000), Length::from_tenth_nanometres(20000000)], note: "", source: 49 }, // M120
    Listed { nominal: Length::from_tenth_nanometres(1250000000), choice: 1, coarse: None, fine: &[Length::from_tenth_nanometres(80000000), Length::from_tenth_nanometres(60000000), Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000), Length::from_tenth_nanometres(20000000)], note: "", source: 49 }, // M125
    Listed { nominal: Length::from_tenth_nanometres(1300000000), choice: 2, coarse: None, fine: &[Length::from_tenth_nanometres(80000000), Length::from_tenth_nanometres(60000000), Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000), Length::from_tenth_nanometres(20000000)], note: "", source: 49 }, // M130
    Listed { nominal: Length::from_tenth_nanometres(1350000000), choice: 3, coarse: None, fine: &[Length::from_tenth_nanometres(60000000), Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000), Length::from_tenth_nanometres(20000000)], note: "", source: 49 }, // M135
    Listed { nominal: Length::from_tenth_nanometres(1400000000), choice: 1, coarse: None, fine: &[Length::from_tenth_nanometres(80000000), Length::from_tenth_nanometres(60000000), Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000), Length::from_tenth_nanometres(20000000)], note: "", source: 49 }, // M140
    Listed { nominal: Length::from_tenth_nanometres(1450000000), choice: 3, coarse: None, fine: &[Length::from_tenth_nanometres(60000000), Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000), Length::from_tenth_nanometres(20000000)], note: "", source: 49 }, // M145
    Listed { nominal: Length::from_tenth_nanometres(1500000000), choice: 2, coarse: None, fine: &[Length::from_tenth_nanometres(80000000), Length::from_tenth_nanometres(60000000), Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000), Length::from_tenth_nanometres(20000000)], note: "", source: 49 }, // M150
    Listed { nominal: Length::from_tenth_nanometres(1550000000), choice: 3, coarse: None, fine: &[Length::from_tenth_nanometres(60000000), Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000)], note: "", source: 49 }, // M155
    Listed { nominal: Length::from_tenth_nanometres(1600000000), choice: 1, coarse: None, fine: &[Length::from_tenth_nanometres(80000000), Length::from_tenth_nanometres(60000000), Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000)], note: "", source: 49 }, // M160
    Listed { nominal: Length::from_tenth_nanometres(1650000000), choice: 3, coarse: None, fine: &[Length::from_tenth_nanometres(60000000), Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000)], note: "", source: 49 }, // M165
    Listed { nominal: Length::from_tenth_nanometres(1700000000), choice: 2, coarse: None, fine: &[Length::from_tenth_nanometres(80000000), Length::from_tenth_nanometres(60000000), Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000)], note: "", source: 49 }, // M170
    Listed { nominal: Length::from_tenth_nanometres(1750000000), choice: 3, coarse: None, fine: &[Length::from_tenth_nanometres(60000000), Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000)], note: "", source: 49 }, // M175
    Listed { nominal: Length::from_tenth_nanometres(1800000000), choice: 1, coarse: None, fine: &[Length::from_tenth_nanometres(80000000), Length::from_tenth_nanometres(60000000), Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000)], note: "", source: 49 }, // M180
    Listed { nominal: Length::from_tenth_nanometres(1850000000), choice: 3, coarse: None, fine: &[Length::from_tenth_nanometres(60000000), Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000)], note: "", source: 49 }, // M185
    Listed { nominal: Length::from_tenth_nanometres(1900000000), choice: 2, coarse: None, fine: &[Length::from_tenth_nanometres(80000000), Length::from_tenth_nanometres(60000000), Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000)], note: "", source: 49 }, // M190
    Listed { nominal: Length::from_tenth_nanometres(1950000000), choice: 3, coarse: None, fine: &[Length::from_tenth_nanometres(60000000), Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000)], note: "", source: 49 }, // M195
    Listed { nominal: Length::from_tenth_nanometres(2000000000), choice: 1, coarse: None, fine: &[Length::from_tenth_nanometres(80000000), Length::from_tenth_nanometres(60000000), Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000)], note: "", source: 49 }, // M200
    Listed { nominal: Length::from_tenth_nanometres(2050000000), choice: 3, coarse: None, fine: &[Length::from_tenth_nanometres(60000000), Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000)], note: "", source: 49 }, // M205
    Listed { nominal: Length::from_tenth_nanometres(2100000000), choice: 2, coarse: None, fine: &[Length::from_tenth_nanometres(80000000), Length::from_tenth_nanometres(60000000), Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000)], note: "", source: 49 }, // M210
    Listed { nominal: Length::from_tenth_nanometres(2150000000), choice: 3, coarse: None, fine: &[Length::from_tenth_nanometres(60000000), Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000)], note: "", source: 49 }, // M215
    Listed { nominal: Length::from_tenth_nanometres(2200000000), choice: 1, coarse: None, fine: &[Length::from_tenth_nanometres(80000000), Length::from_tenth_nanometres(60000000), Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000)], note: "", source: 49 }, // M220
    Listed { nominal: Length::from_tenth_nanometres(2250000000), choice: 3, coarse: None, fine: &[Length::from_tenth_nanometres(60000000), Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000)], note: "", source: 49 }, // M225
    Listed { nominal: Length::from_tenth_nanometres(2300000000), choice: 3, coarse: None, fine: &[Length::from_tenth_nanometres(80000000), Length::from_tenth_nanometres(60000000), Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000)], note: "", source: 49 }, // M230
    Listed { nominal: Length::from_tenth_nanometres(2350000000), choice: 3, coarse: None, fine: &[Length::from_tenth_nanometres(60000000), Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000)], note: "", source: 49 }, // M235
    Listed { nominal: Length::from_tenth_nanometres(2400000000), choice: 2, coarse: None, fine: &[Length::from_tenth_nanometres(80000000), Length::from_tenth_nanometres(60000000), Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000)], note: "", source: 49 }, // M240
    Listed { nominal: Length::from_tenth_nanometres(2450000000), choice: 3, coarse: None, fine: &[Length::from_tenth_nanometres(60000000), Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000)], note: "", source: 49 }, // M245
    Listed { nominal: Length::from_tenth_nanometres(2500000000), choice: 1, coarse: None, fine: &[Length::from_tenth_nanometres(80000000), Length::from_tenth_nanometres(60000000), Length::from_tenth_nanometres(40000000), Length::from_tenth_nanometres(30000000)], note: "", source: 49 }, // M250
    Listed { nominal: Length::from_tenth_nanometres(2550000000), choice: 3, coarse: None, fine: &[Length::from_tenth_nanometres(60000000), Length::from_tenth_nanometres(40000000)], note: "", source: 49 }, // M255
    Listed { nominal: Length::from_tenth_nanometres(2600000000), choice: 2, coarse: None, fine: &[Length::from_tenth_nanometres(80000000), Length::from_tenth_nanometres(60000000), Length::from_tenth_nanometres(40000000)], note: "", source: 49 }, // M260
    Listed { nominal: Length::from_tenth_nanometres(2650000000), choice: 3, coarse: None, fine: &[Length::from_tenth_nanometres(60000000), Length::from_tenth_nanometres(40000000)], note: "", source: 49 }, // M265
    Listed { nominal: Length::from_tenth_nanometres(2700000000), choice: 3, coarse: None, fine: &[Length::from_tenth_nanometres(80000000), Length::from_tenth_nanometres(60000000), Length::from_tenth_nanometres(40000000)], note: "", source: 49 }, // M270
    Listed { nominal: Length::from_tenth_nanometres(2750000000), choice: 3, coarse: None, fine: &[Length::from_tenth_nanometres(60000000), Length::from_tenth_nanometres(40000000)], note: "", source: 49 }, // M275
    Listed { nominal: Length::from_tenth_nanometres(2800000000), choice: 1, coarse: None, fine: &[Length::from_tenth_nanometres(80000000), Length::from_tenth_nanometres(60000000), Length::from_tenth_nanometres(40000000)], note: "", source: 49 }, // M280
    Listed { nominal: Length::from_tenth_nanometres(2850000000), choice: 3, coarse: None, fine: &[Length::from_tenth_nanometres(60000000), Length::from_tenth_nanometres(40000000)], note: "", source: 49 }, // M285
    Listed { nominal: Length::from_tenth_nanometres(2900000000), choice: 3, coarse: None, fine: &[Length::from_tenth_nanometres(80000000), Length::from_tenth_nanometres(60000000), Length::from_tenth_nanometres(40000000)], note: "", source: 49 }, // M290
    Listed { nominal: Length::from_tenth_nanometres(2950000000), choice: 3, coarse: None, fine: &[Length::from_tenth_nanometres(60000000), Length::from_tenth_nanometres(40000000)], note: "", source: 49 }, // M295
    Listed { nominal: Length::from_tenth_nanometres(3000000000), choice: 2, coarse: None, fine: &[Length::from_tenth_nanometres(80000000), Length::from_tenth_nanometres(60000000), Length::from_tenth_nanometres(40000000)], note: "", source: 49 }, // M300
];
