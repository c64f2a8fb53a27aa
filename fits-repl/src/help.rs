//! Help, by topic: short texts and examples that work as they stand.

use crate::{answer::HelpAnswer, problem::Problem, query::Spot, words::near_miss};

/// Every topic, the overview first.
pub const TOPICS: &[HelpAnswer] = &[
    HelpAnswer {
        topic: "help",
        lines: &[
            "Type a size and how it fits; the answer says what to cut to.",
            "Topics: sizes, classes, pairs, words, inch, readings, limits, parts, ream,",
            "passes, log, crib, drills, threads, general, pick, assemble, bushings, stack,",
            "warm, measuring, temperature, rehearse, align, settings, why, program.",
        ],
        examples: &[
            ("20mm H7/g6", "what to cut both parts to, and how"),
            ("20mm H7 = 20.013mm", "a reading: cut more, good or over"),
            ("20mm H7/g6, hole = 20.013mm", "the shaft to suit a hole already measured"),
            ("bore 20mm H7 from 19.6mm", "pass by pass from where the bore is now"),
            ("help pairs", "more on a topic"),
        ],
    },
    HelpAnswer {
        topic: "sizes",
        lines: &[
            "A bare number takes the unit in the prompt. Units: mm, cm, m, um, in, \", ft,",
            "thou, tenths (of a thou), uin. Fractions as 3/4in and 1-1/2in.",
            "Drill gauges: #7, letter F.",
            "A size may be a small sum; alone on a line it is answered in both units.",
            "Kept exactly to 0.1 nm; 1/256 in and other finer fractions are rounded.",
        ],
        examples: &[
            ("3/4in", "in both units"),
            ("3/4in - 15 thou", "a sum: spaces about the sign"),
            ("(25.4 + 0.02)/2", "brackets, a plain number to divide by"),
            ("#7", "a number drill"),
        ],
    },
    HelpAnswer {
        topic: "classes",
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
    HelpAnswer {
        topic: "pairs",
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
    HelpAnswer {
        topic: "words",
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
    HelpAnswer {
        topic: "inch",
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
    HelpAnswer {
        topic: "parts",
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
            ("hole 20 H7, shaft 19.98..19.99", "unlike features"),
            ("hole 20mm H7, shaft = 19.985mm", "a class on one side, a reading on the other"),
            ("seat shaft 25mm turns normal", "the class for a bearing's seat"),
        ],
    },
    HelpAnswer {
        topic: "drills",
        lines: &["The nearest standard drills: fractions, letters, numbers, metric."],
        examples: &[("drill 0.7031in", "under and over"), ("drill #7", "one by its name")],
    },
    HelpAnswer {
        topic: "threads",
        lines: &[
            "Names: M10x1.25, 3/8-24, #10-32, Tr20x4, 1/2-10 Acme 2G, 1/2 BSW, 2BA, G1/2,",
            "1/2-14 NPT; then classes, nut and screw as 6H/6g or 2B/2A, LH, 2 starts. A size",
            "with no pitch takes the coarse series. long SIZE: the length engaged. After tap:",
            "hub MATERIAL, hand, power, form. After cut: inside, straight, compound 29, nose",
            "(or radius: a round tool), flat (its width).",
            "The question may stand first (tap M10); nut or screw asks for one side.",
        ],
        examples: &[
            ("M10x1.25", "limits, blank, tap drill, depth of cut"),
            ("3/8-24 2B/2A", "a pair and its play"),
            ("thread 3/8", "a bare fraction as a thread"),
            ("M10 tap 70%", "drills for so much thread"),
            ("#2-56 tap #50", "what a drill in hand gives"),
            ("M10 clearance close", "holes that the screw passes"),
            ("3/8-24 2A wires", "the size over three wires"),
            ("3/8-24 2A over 0.3830in", "what a reading means, what to feed"),
            ("M10x1.25 cut", "on the lathe, pass by pass"),
            ("Tr20x4 cut inside straight", "a nut, fed by the cross slide"),
        ],
    },
    HelpAnswer {
        topic: "general",
        lines: &["ISO 2768-1 for sizes that no tolerance is given to: f, m, c or v."],
        examples: &[
            ("12.5mm general m", "a length"),
            ("2 general c radius", "a radius or chamfer"),
            ("40mm general m angle", "an angle, by its shorter side"),
        ],
    },
    HelpAnswer {
        topic: "pick",
        lines: &["Standard fits that give a wanted range, the easiest to make first."],
        examples: &[
            ("pick 20mm clearance 0.01mm..0.06mm", "play"),
            ("pick 1in interference 0.5 thou..2 thou", "grip"),
            ("pick 20mm holds 30 Nm, hub steel od 40mm long 25mm", "by what it must hold"),
            ("pick 1in press under 3 tons, hub steel od 2in long 1in", "by the press"),
        ],
    },
    HelpAnswer {
        topic: "assemble",
        lines: &[
            "Parts pressed or shrunk: press force, what it holds, whether it keeps, heat.",
            "hub and shaft MATERIAL, or e, nu, yield, alpha; hub od or wall; shaft id; long.",
            "sleeve MATERIAL od SIZE CLASSES stands between. dry, oil, degreased; friction N;",
            "rz SIZE roughness; shrink; clearance SIZE, within TIME for heat; blind; warm",
            "TEMP the grip at work; with INSTRUMENT or \u{b1}SIZE after a reading. Interference",
            "is on the diameter; say `interference 0.015 on radius` if yours is not. holds of",
            "pick takes a torque, or a force along the axis.",
            "Force, pressure, torque, heat: N kN lbf tons, MPa GPa psi ksi, Nm lbf-ft, C F.",
        ],
        examples: &[
            ("assemble 20mm H7/s6, hub aluminium od 40mm long 25mm, shaft steel", "by classes"),
            ("assemble 3/4in press, hub steel od 1.5in long 1in oil", "by a word, oiled"),
            ("assemble 3/4in = 0.7500in/0.7512in, hub steel wall 1/8in", "measured: hole/shaft"),
            ("assemble 30mm interference 0.035mm, hub e 110GPa nu 0.28 od 62mm", "by figures"),
            ("assemble 20mm H7/s6, hub steel od 40mm, shaft bronze id 14mm", "a bush closes"),
        ],
    },
    HelpAnswer {
        topic: "stack",
        lines: &[
            "Parts end to end and their play. + adds, - takes away, 2x is two alike;",
            "each by limits, a class, or what it measures; a name before it if you like.",
            "play A..B wanted gives the length to make the last part to, or the one marked ?.",
            "uniform, triangular or normal after a link says how its size may lie; all normal",
            "is of every link. runs N and seed N steer the simulation.",
        ],
        examples: &[
            ("stack 12 \u{b1}0.1 -5 \u{b1}0.05 -6.8 +0/-0.1", "end play of three"),
            ("stack screw 20 +0.05/0, tube -17 \u{b1}0.05, washer -2x 1.4 \u{b1}0.05", "named"),
            ("stack 20.03, -2x 1.4 \u{b1}0.02, tube -?, play 0.1..0.3", "the tube to make"),
            ("stack 20 h9 -19.7 \u{b1}0.05, all normal, runs 1000000", "simulated longer"),
        ],
    },
    HelpAnswer {
        topic: "warm",
        lines: &[
            "Any pair away from 20 C: the clearance at both ends, and where it binds or lets",
            "go. Say what hole and shaft are made of; nylon's growth with damp is told too.",
            "Both parts free and at one temperature; both measured parts may be given.",
        ],
        examples: &[
            ("20mm H7/g6 warm 60C, hole nylon, shaft steel", "from 20 C to 60 C"),
            ("20mm H7/g6 warm -20C..60C, hole aluminium, shaft steel", "over a range"),
            ("3/4in RC4 warm 150F, hole bronze, shaft steel", "in degrees Fahrenheit"),
            ("20mm H7/s6 warm 120C, hole aluminium, shaft steel", "where a press lets go"),
        ],
    },
    HelpAnswer {
        topic: "bushings",
        lines: &[
            "A bushing pressed into a housing closes in: the play left, the shaft to turn, or",
            "the bore to ream in place. Of bronze, sintered bronze, nylon, acetal, or lined.",
            "running A..B, or a service: general, rough, motor, spindle, fast spindle or",
            "pivot, as for rough. housing CLASS, shaft CLASS or SIZE, rpm N, warm TEMP.",
            "The end play of a flange or a thrust washer is a stack: `help stack`.",
        ],
        examples: &[
            ("bushing 20mm od 26mm long 20mm, hub steel od 60mm, bronze", "the shaft to turn"),
            ("bushing 20mm od 26mm long 20mm, hub steel, bronze, running 0.03mm..0.1mm", "play"),
            ("bushing 3/4in od 1in long 1in, hub cast iron, nylon, warm 120F", "nylon, warm"),
            ("bushing 20mm od 26mm long 20mm, hub steel, bronze, shaft h6", "the bore in place"),
            ("bushing 20mm od 26mm long 20mm, hub steel, bronze, for rough", "a hand machine"),
            ("bushing 20mm lined", "a lined one by its maker's table"),
            ("stack shaft 30.2 \u{b1}0.05, flange -2x 3 \u{b1}0.05, hub -24 \u{b1}0.05", "flanges"),
        ],
    },
    HelpAnswer {
        topic: "readings",
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
    HelpAnswer {
        topic: "measuring",
        lines: &[
            "with INSTRUMENT: good, over or cut more is said where it is 95 % sure (after",
            "ISO 14253-1), else too close to call. Several readings are averaged; a slash",
            "parts two places: out of round or taper is told from the instrument's scatter.",
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
    HelpAnswer {
        topic: "temperature",
        lines: &[
            "at TEMP: the part's temperature; say what it is of. room TEMP: the gauge's, and",
            "what the part cools to. The size at 20 C is judged, and how long to wait until",
            "it is within a tenth, or within SIZE, is estimated.",
        ],
        examples: &[
            ("20mm H7 = 20.013mm at 31C, hole aluminium", "warm from boring"),
            ("3/4in h6 = 0.7505in at 113F, shaft steel", "a warm shaft"),
            ("20mm H7 = 20.013mm with bore gauge at 31\u{b1}1C, room 24C, hole brass", "all of it"),
        ],
    },
    HelpAnswer {
        topic: "rehearse",
        lines: &[
            "A simulated machinist cuts the part many times in three ways: by the adviser,",
            "by halves, and all at once. with INSTRUMENT is needed; hole or shaft MATERIAL,",
            "overhang N (free length over thickness), runs N and seed N may be given.",
            "with fault: short turn, backlash, light tool, rough or biased gauge.",
        ],
        examples: &[
            ("rehearse 20mm H7 from 19.6mm with bore gauge", "the odds before cutting"),
            ("rehearse 20mm g6 from 20.5mm with micrometer, runs 200, seed 7", "a shaft"),
            ("rehearse 20mm H7 from 19.6mm with bore gauge with fault rough", "with a fault"),
        ],
    },
    HelpAnswer {
        topic: "align",
        lines: &[
            "Two test diameters cut at one setting, headstock first, and their distance:",
            "how far and which way to move the tailstock. between SIZE: the whole distance",
            "between centres. A part with long SIZE: what the taper leaves of its tolerance.",
        ],
        examples: &[
            ("align 19.98 20.01 over 150", "to turn parallel"),
            ("align 0.7503in 0.7511in over 6in between 14in", "scaled to the centres"),
            ("align 19.98 20.01 over 150, 20 g6 long 40", "does a fit survive it?"),
            ("align taper 1:50 over 200", "a taper wanted"),
        ],
    },
    HelpAnswer {
        topic: "limits",
        lines: &["Limits without a class: by deviations or by both sizes. Say hole or shaft."],
        examples: &[
            ("hole 20mm +0.02mm/-0.01mm", "by two deviations"),
            ("shaft 20mm \u{b1}0.05mm", "either way"),
            ("hole 0.7500in..0.7505in", "by both limits"),
        ],
    },
    HelpAnswer {
        topic: "ream",
        lines: &[
            "Reamer limits by the DIN 1420 rule, and the drill that leaves the right stock.",
            "Mic the reamer you have: one inside these limits makes the hole; try on scrap.",
        ],
        examples: &[("ream 20mm H7", "reamer and pre-drill"), ("ream 3/4in H7", "on an inch size")],
    },
    HelpAnswer {
        topic: "passes",
        lines: &[
            "Rough, semi-finish, finish, spring: the size after each and what to dial.",
            "Read after the semi-finish pass: the finish cut is as deep, to a dial division.",
        ],
        examples: &[
            ("bore 20mm H7", "from the drill"),
            ("bore 20mm H7 from 19.6mm", "from where it is now"),
            ("bore 52mm N7 from 51.6mm, hole cast iron", "what it is of changes what to expect"),
            ("turn 20mm g6 from 22mm", "outside"),
        ],
    },
    HelpAnswer {
        topic: "log",
        lines: &[
            "A plan that says where the work is opens a pass log: enter what you dial and",
            "read, and it says what to dial next, and the odds. Each entry is on disk before",
            "it is answered; an entry that cannot be is asked about: `sure` after it stands.",
            "`log list` names them, `log open` and a name goes back to one, `log leave` out.",
            "Finished logs teach what to expect of your lathe. Dials as the dial is set.",
            "Of places that differ the one with most off decides; the form is told.",
        ],
        examples: &[
            ("bore 20mm H7 from 19.6mm with bore gauge", "the plan, and a log"),
            ("cut 0.2mm = 19.79mm", "dialled and read"),
            ("read 19.792mm", "read again"),
            ("read 19.790mm front 19.794mm back", "two places, or 19.790 / 19.794"),
            ("read 19.795mm at 25C steel", "a warm part, brought to 20 °C"),
            ("cut 0.1mm", "dialled, not measured"),
            ("spring = 19.888mm", "a pass without infeed, and what was read"),
            ("undo", "the last entry is taken back"),
            ("log", "the note so far"),
            ("scrap", "or `done`: it is closed"),
        ],
    },
    HelpAnswer {
        topic: "crib",
        lines: &[
            "The tools you own, in a TOML file of your configuration folder (the prompt and",
            "fits QUERY read it; batch only what --crib names). Plans use what is there and",
            "say what they would rather have. `crib remove` and a number takes one out.",
        ],
        examples: &[
            ("crib add reamer 3/4in cuts 0.7504in", "a reamer and what it really cuts"),
            ("crib add drill set metric 1..13 step 0.5", "or fraction, number, letter"),
            ("crib add drill #7", "one drill"),
            ("crib add tap M10x1.25", "a tap"),
            ("crib add pin 20", "a gauge pin: holes name those near their limits"),
            ("crib add bar 12mm reach 60mm", "a boring bar: smallest bore, reach"),
            ("crib add instrument my gauge repeat 0.003 bias 0.002", "as deviations"),
            ("crib add material odd bronze modulus 105GPa poisson 0.34", "its figures"),
            ("crib", "all of it, numbered"),
        ],
    },
    HelpAnswer {
        topic: "settings",
        lines: &[
            "Remembered in a TOML file of your configuration folder, for the prompt and fits",
            "QUERY. --json and batch begin anew, so that a line is always answered alike;",
            "--in or --mm says what bare numbers are, whatever is remembered.",
        ],
        examples: &[
            ("units in", "bare numbers are inches; `inches` does it too"),
            ("units mm", "bare numbers are millimetres; `metric` too"),
            ("dial radius", "the dial reads tool travel"),
            ("dial diameter", "the dial reads change of diameter"),
            ("dial graduation 0.02mm", "what the dial is divided in"),
            ("dial turn 2mm", "what a whole turn of the dial reads"),
            ("least chip 0.02mm", "the least cut that is no rubbing, on the diameter"),
            ("risk 2%", "may overshoot so often; or careful, usual, bold"),
            ("instrument bore gauge", "what bores are read with; shafts apart"),
            ("machine boring head", "its dials are its own; or lathe"),
            ("top slide 0.02mm", "its divisions: set over 5.7°, it takes a tenth"),
            ("settings", "all of them"),
            ("material aluminium", "what the work is made of, unless told"),
        ],
    },
    HelpAnswer {
        topic: "why",
        lines: &["Where each figure of the last answer comes from: standard, table, rule, doubts."],
        examples: &[
            ("why 20mm H7/g6", "of a query named"),
            ("why 290mm M6", "of one with an exception"),
        ],
    },
    HelpAnswer {
        topic: "program",
        lines: &[
            "fits                opens the prompt; Ctrl-C clears the line, Ctrl-D leaves",
            "fits QUERY          answers once; --json as one JSON object, --svg a picture",
            "fits batch          reads a query a line, writes a JSON object a line",
            "--in, --mm          bare numbers are inches, or millimetres, this time",
            "Exit status: 0 answered; 1 a reading is out of limits; 2 not understood;",
            "3 a file or the machine failed. NO_COLOR turns colour off.",
            "--crib FILE and --log FILE name the tools and the pass log, in any of these.",
        ],
        examples: &[("20mm H7/g6", "as fits 20mm H7/g6")],
    },
];

/// The help on a topic, or the overview.
///
/// # Errors
/// No such topic; the problem names the nearest.
pub fn about(topic: Option<&Spot<String>>) -> Result<HelpAnswer, Problem> {
    let Some(spot) = topic else { return overview() };
    let wanted = spot.value.to_ascii_lowercase();
    let found = TOPICS.iter().find(|help| {
        let singular = help.topic.strip_suffix('s').unwrap_or(help.topic);
        help.topic == wanted || singular == wanted
    });
    if let Some(found) = found {
        return Ok(*found);
    }
    let alias = match wanted.as_str() {
        "units" | "dial" | "setting" | "graduation" | "risk" | "machine" | "slide" => {
            Some("settings")
        }
        "cut" | "spring" | "read" | "undo" | "done" | "scrap" | "logs" => Some("log"),
        "tool" | "tools" => Some("crib"),
        "bore" | "turn" | "from" | "pass" => Some("passes"),
        "seat" | "keyway" | "bearing" | "dowel" => Some("parts"),
        "grade" | "b4.1" => Some("inch"),
        "assembly" | "shrink" | "material" | "materials" | "friction" | "heat" | "sleeve" => {
            Some("assemble")
        }
        "hub" | "thin" | "long" | "turns" | "press" | "slip" => Some("words"),
        "hole" | "shaft" | "fit" | "fits" => Some("pairs"),
        "tap" | "wires" | "wire" | "clearance" | "over" | "tpi" | "pitch" => Some("threads"),
        "json" | "batch" | "exit" => Some("program"),
        "class" | "grades" | "iso" => Some("classes"),
        "deviations" => Some("limits"),
        "with" | "instrument" | "instruments" | "mic" | "uncertainty" => Some("measuring"),
        "at" | "room" | "within" | "hot" => Some("temperature"),
        "tailstock" | "taper" => Some("align"),
        "odds" | "overhang" | "rehearsal" => Some("rehearse"),
        "joint" | "joints" => Some("assemble"),
        "bush" | "running" | "close-in" | "housing" => Some("bushings"),
        "cold" | "nylon" => Some("warm"),
        "play" | "washer" | "runs" | "seed" => Some("stack"),
        _ => None,
    };
    if let Some(found) = alias.and_then(|alias| TOPICS.iter().find(|help| help.topic == alias)) {
        return Ok(*found);
    }
    let near =
        TOPICS.iter().find(|help| near_miss(&wanted, help.topic)).map_or("help", |help| help.topic);
    let shown: String = wanted.chars().take(24).collect();
    let problem = Problem::new(format!("there is no help on `{shown}`"), spot.at.clone());
    Err(if near == "help" {
        problem.advise("see `help`")
    } else {
        problem.fix(spot.at.clone(), near)
    })
}

fn overview() -> Result<HelpAnswer, Problem> {
    TOPICS.first().copied().ok_or_else(|| Problem::new("there is no help", 0..0))
}
