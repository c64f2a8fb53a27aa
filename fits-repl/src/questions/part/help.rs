//! Help on features and pairs.

use crate::questions::help::answered::HelpTopic;

/// Its help.
pub(crate) const HELP: &[HelpTopic] = &[
    HelpTopic {
        topic: "classes",
        also: &["class", "grades", "iso"],
        lines: &[
            "An ISO 286 class is a letter and a grade: capitals for holes, small for shafts.",
            "Letters A to ZC without I, L, O, Q, W; grades 01, 0, 1 to 18; sizes to 3150 mm.",
        ],
        examples: &[
            ("20mm H7", "a hole"),
            ("3/4in h6", "a shaft on an inch size"),
            ("20mm js6", "symmetrical about nominal"),
        ],
    },
    HelpTopic {
        topic: "pairs",
        also: &["hole", "shaft", "fit", "fits"],
        lines: &[
            "Hole first, then shaft. The usual ones, hole-basis (ANSI B4.2 descriptions):",
            "H11/c11 loose running   H9/d9 free running   H8/f7 close running",
            "H7/g6 sliding   H7/h6 locational clearance   H7/k6, H7/n6 locational transition",
            "H7/p6 locational interference   H7/s6 medium drive   H7/u6 force",
        ],
        examples: &[
            ("20mm H7/g6", "the pair"),
            ("20mm H7/g6, hole = 20.013mm", "the hole is cut: the shaft to suit it"),
            ("20mm H7/g6, shaft = 19.985mm", "the shaft is there: the hole to suit it"),
            ("3/4in H7/s6", "inch size, ISO classes"),
        ],
    },
    HelpTopic {
        topic: "words",
        also: &["hub", "thin", "long", "turns", "press", "slip"],
        lines: &[
            "Loosest to tightest: loose running, free running, running, close running,",
            "precision running, sliding, snug, wringing, push, tight keying, light press,",
            "drive, press, heavy drive, heavy press; and shrink. Other wordings work too.",
            "hub MATERIAL, long SIZE, turns and thin (tube or wall) change the choice.",
        ],
        examples: &[
            ("3/4in press", "the class it takes, why, and its neighbours"),
            ("20mm slip", "in ISO 286 where the size is metric"),
            ("20mm press, hub aluminium", "what a soft hub changes"),
            ("3/4in press, thin tube", "and a thin one"),
            ("shaft 0.7490in, slip", "a part in hand: the hole to suit it"),
            ("hole 0.7503in, press", "the shaft to suit a hole"),
        ],
    },
    HelpTopic {
        topic: "inch",
        also: &["grade", "b4.1"],
        lines: &[
            "ASME B4.1: RC1-RC9 running, LC1-LC11 locational clearance, LT1-LT6 transition,",
            "LN1-LN3 interference, FN1-FN5 force. A size typed in inches is answered in",
            "inches first; `units in` makes bare numbers inches.",
        ],
        examples: &[
            ("3/4in RC4", "close running"),
            ("1.5in FN2", "medium drive"),
            ("3/4in H7/g6", "ISO classes on an inch size"),
            ("3/4in RC4, hole = 0.7506in", "the shaft to suit a hole measured"),
            ("3/4in grade 8", "a standard tolerance"),
        ],
    },
    HelpTopic {
        topic: "parts",
        also: &["seat", "keyway", "bearing", "dowel"],
        lines: &[
            "Bought-in parts by name: dowel, shoulder screw, drill rod, cold drawn, bushing,",
            "bearing bore, key, tube. Give a word for the fit and the mate is answered.",
            "Both features may be given, too, or what the part in hand measures.",
        ],
        examples: &[
            ("dowel 1/4in, press", "the hole for a dowel pin"),
            ("dowel 1/4in", "what it comes as"),
            ("dowel 0.2502in..0.2503in, press", "what it measures"),
            ("bearing od 52mm", "a rolling bearing's outside"),
            ("keyway for 25mm", "the key and keyways of a shaft"),
            ("hole 20mm H7, shaft 19.98mm..19.99mm", "unlike features"),
            ("hole 20mm H7, shaft = 19.985mm", "a class on one side, a reading on the other"),
            ("seat shaft 25mm turns normal", "the class for a bearing's seat"),
        ],
    },
    HelpTopic {
        topic: "warm",
        also: &["cold", "nylon"],
        lines: &[
            "Any pair away from 20 C: the clearance at both ends, and where it binds or lets",
            "go. Say what hole and shaft are made of; nylon's growth with damp is shown too.",
            "Both parts free and at one temperature; both measured parts may be given.",
        ],
        examples: &[
            ("20mm H7/g6 warm 60C, hole nylon, shaft steel", "from 20 C to 60 C"),
            ("20mm H7/g6 warm -20C..60C, hole aluminium, shaft steel", "over a range"),
            ("3/4in RC4 warm 150F, hole bronze, shaft steel", "in degrees Fahrenheit"),
            ("20mm H7/s6 warm 120C, hole aluminium, shaft steel", "where a press lets go"),
        ],
    },
    HelpTopic {
        topic: "readings",
        also: &[],
        lines: &[
            "Give what the spring pass measures after =. Figures are changes of diameter.",
            "It is taken as it stands unless an instrument is named: see help measuring.",
        ],
        examples: &[
            ("20mm H7 = 19.982mm", "cut more, and how much"),
            ("20mm g6 = 19.985mm", "a shaft"),
            ("20mm H7/g6 = 20.013mm/19.985mm", "a measured pair and its clearance"),
        ],
    },
    HelpTopic {
        topic: "measuring",
        also: &["with", "instrument", "instruments", "mic", "uncertainty"],
        lines: &[
            "with INSTRUMENT: good, over or cut more is said where it is 95 % sure (after",
            "ISO 14253-1), else too close to call. Several readings are averaged; a slash",
            "parts two places: out of round or taper is judged by the instrument's scatter.",
            "micrometer, calliper, bore gauge, telescoping gauge, inside micrometer, small-",
            "hole gauge, three-point micrometer, plug gauge, test indicator and more.",
        ],
        examples: &[
            ("20mm H7 = 20.019mm with bore gauge", "how sure it is"),
            ("20mm H7 = 20.012mm 20.014mm 20.013mm", "several readings, averaged"),
            ("20mm H7 = 20.012mm/20.018mm", "two places or angles of one hole"),
            ("3/4in h6 = 0.7498in with mic", "a shaft"),
        ],
    },
    HelpTopic {
        topic: "temperature",
        also: &["at", "room", "within", "hot"],
        lines: &[
            "at TEMP: the part's temperature; say its material. room TEMP: the gauge's, and",
            "what the part cools to. The size at 20 C is judged, and how long to wait until",
            "it is within a tenth, or within SIZE, is estimated.",
        ],
        examples: &[
            ("20mm H7 = 20.013mm at 31C, hole aluminium", "warm from boring"),
            ("3/4in h6 = 0.7505in at 113F, shaft steel", "a warm shaft"),
            ("20mm H7 = 20.013mm with bore gauge at 31\u{b1}1C, room 24C, hole brass", "all of it"),
        ],
    },
    HelpTopic {
        topic: "limits",
        also: &["deviations"],
        lines: &["Limits without a class: by deviations or by both sizes. Say hole or shaft."],
        examples: &[
            ("hole 20mm +0.02mm/-0.01mm", "by two deviations"),
            ("shaft 20mm \u{b1}0.05mm", "either way"),
            ("hole 0.7500in..0.7505in", "by both limits"),
        ],
    },
    HelpTopic {
        topic: "ream",
        also: &[],
        lines: &[
            "Reamer limits by the DIN 1420 rule, and the drill that leaves the right stock.",
            "Mic the reamer you have: one inside these limits makes the hole; try on scrap.",
        ],
        examples: &[("ream 20mm H7", "reamer and pre-drill"), ("ream 3/4in H7", "on an inch size")],
    },
    HelpTopic {
        topic: "passes",
        also: &["bore", "turn", "from", "pass"],
        lines: &[
            "Rough, semi-finish, finish, spring: the size after each and what to dial.",
            "Read after the semi-finish pass: the finish cut is as deep, to a dial division.",
        ],
        examples: &[
            ("bore 20mm H7", "from the drill"),
            ("bore 20mm H7 from 19.6mm", "from where it is now"),
            ("bore 52mm N7 from 51.6mm, hole cast iron", "its material changes what to expect"),
            ("turn 20mm g6 from 22mm", "outside"),
        ],
    },
];
