//! Rows read in published tables of trapezoidal, Acme, Whitworth, BA and pipe
//! threads, against the library. Rows that a source prints wrong stand in one
//! ledger a table, with the reason; one that no longer disagrees fails.

use fits_checks::{Row, rows};
use fits_core::{
    Length,
    size::{Decimals, Rounding, Unit},
    standards::thread::{Class, DiameterLimits, Form, Series, Thread},
};

/// A figure that a source prints otherwise than the library gives it.
struct Wrong {
    row: &'static str,
    column: &'static str,
    printed: &'static str,
    reason: &'static str,
}

const fn wrong(
    row: &'static str,
    column: &'static str,
    printed: &'static str,
    reason: &'static str,
) -> Wrong {
    Wrong { row, column, printed, reason }
}

/// Compares printed figures with ours and keeps the ledger honest.
struct Check {
    ledger: &'static [Wrong],
    reached: Vec<bool>,
    bad: Vec<String>,
    compared: usize,
}

impl Check {
    fn against(ledger: &'static [Wrong]) -> Self {
        Self { ledger, reached: vec![false; ledger.len()], bad: Vec::new(), compared: 0 }
    }

    /// The figure in a column of a row, to the last place printed.
    fn figure(&mut self, row: &Row, name: &str, column: &str, unit: Unit, ours: Option<Length>) {
        let text = row.text(column);
        if text.is_empty() {
            return;
        }
        self.compared += usize::from(!row.is_unconfirmed());
        let places = text.split_once('.').map_or(0, |(_, places)| places.len());
        let printed = row.length(text, unit);
        // A figure printed to fewer places than ours is ours, rounded; a half
        // either way.
        let decimals = Decimals { unit, places: u8::try_from(places.min(5)).unwrap() };
        let nudge = Length::from_tenth_nanometres(2);
        let agrees = ours.is_some_and(|ours| {
            [ours.checked_add(nudge), ours.checked_sub(nudge)].into_iter().any(|near| {
                decimals.round(near.unwrap(), Rounding::Nearest)
                    == decimals.round(printed, Rounding::Nearest)
            })
        });
        let entry = self
            .ledger
            .iter()
            .position(|entry| (entry.row, entry.column, entry.printed) == (name, column, text));
        let shown = ours.map(|ours| ours.shown(decimals, Rounding::Nearest).to_string());
        match (agrees, entry) {
            (true, None) => {}
            (true, Some(_)) => {
                self.bad.push(format!("{row}: {name} {column} {text} agrees: delete its entry"));
            }
            (false, Some(at)) => self.reached[at] = true,
            (false, None) => {
                self.bad.push(format!("{row}: {name} {column} {text}, ours {shown:?}"));
            }
        }
    }

    fn spread(&mut self, row: &Row, name: &str, diameter: &str, unit: Unit, ours: DiameterLimits) {
        self.figure(row, name, &format!("{diameter}_max"), unit, ours.max);
        self.figure(row, name, &format!("{diameter}_min"), unit, ours.min);
    }

    #[track_caller]
    fn done(self, at_least: usize) {
        assert!(self.bad.is_empty(), "{} disagree:\n{}", self.bad.len(), self.bad.join("\n"));
        for (entry, reached) in self.ledger.iter().zip(&self.reached) {
            assert!(!entry.reason.is_empty());
            assert!(*reached, "{} {} {}: no such row", entry.row, entry.column, entry.printed);
        }
        assert!(self.compared >= at_least, "only {} figures compared", self.compared);
    }
}

#[track_caller]
fn thread(row: &Row, name: &str) -> Thread {
    name.parse().unwrap_or_else(|error| panic!("{row}: {name}: {error}"))
}

const HALF_MICROMETRE: &str =
    "the tolerance ends in half a micrometre, which the table keeps and ours drops";

const WRONG_TRAPEZOIDAL: &[Wrong] = &[
    wrong("Tr42x10 basic", "minor_max", "41.000", "misprint of 31.000: 42 - 10 - 1"),
    wrong("Tr9x2 7e", "minor_min", "6.191", HALF_MICROMETRE),
    wrong("Tr10x2 7e", "minor_min", "7.191", HALF_MICROMETRE),
    wrong("Tr11x2 7e", "minor_min", "8.191", HALF_MICROMETRE),
];

#[test]
fn trapezoidal_rows() {
    let mut check = Check::against(WRONG_TRAPEZOIDAL);
    let mm = Unit::Millimetre;
    for row in rows("tests/published/thread_trapezoidal.csv") {
        let ours = thread(&row, row.text("thread"));
        let name = format!("{} {}", row.text("thread"), row.text("class"));
        let (screw, nut) = (ours.external(None).unwrap(), ours.internal(None).unwrap());
        check.figure(&row, &name, "d4", mm, nut.major.min);
        check.figure(&row, &name, "d1", mm, nut.minor.min);
        if row.text("class") == "basic" {
            check.figure(&row, &name, "major_max", mm, Some(ours.major()));
            check.figure(&row, &name, "pitch_max", mm, Some(ours.basic_pitch_diameter()));
            check.figure(&row, &name, "minor_max", mm, screw.minor.max);
        } else {
            assert_eq!(screw.class.to_string(), row.text("class"));
            check.spread(&row, &name, "major", mm, screw.major);
            check.spread(&row, &name, "pitch", mm, screw.pitch);
            check.spread(&row, &name, "minor", mm, screw.minor);
        }
    }
    check.done(160);
}

/// The maker gives each diameter of a pitch the allowance and tolerance of
/// the standard size of that pitch; ASME B1.5 takes them by the diameter.
const BY_PITCH: &str = "the maker's allowance and tolerance are of the standard size of that pitch";

const STUB: &str =
    "no rule of B1.8 read gives it: 0.05 P is 0.0125, 0.008 sqrt(D) 0.0063; a maker's own figures";

const WRONG_ACME: &[Wrong] = &[
    wrong("5/8-4 stub Acme 2G", "major_min", "0.6190", STUB),
    wrong("5/8-4 stub Acme 2G", "pitch_max", "0.5421", STUB),
    wrong("5/8-4 stub Acme 2G", "minor_min", "0.4327", STUB),
    wrong("5/8-6 Acme 2G", "pitch_max", "0.5348", BY_PITCH),
    wrong("5/8-6 Acme 2G", "pitch_min", "0.5174", BY_PITCH),
    wrong("5/8-10 Acme 2G", "pitch_max", "0.5693", BY_PITCH),
    wrong("5/8-10 Acme 2G", "pitch_min", "0.5556", BY_PITCH),
    wrong("5/8-10 Acme 2G", "minor_min", "0.4844", BY_PITCH),
    wrong("3/4-5 Acme 2G", "pitch_max", "0.6420", BY_PITCH),
    wrong("3/4-5 Acme 2G", "pitch_min", "0.6226", BY_PITCH),
    wrong("3/4-5 Acme 2G", "minor_min", "0.5009", BY_PITCH),
    wrong("3/4-8 Acme 2G", "pitch_max", "0.6812", BY_PITCH),
    wrong("3/4-8 Acme 2G", "pitch_min", "0.6658", BY_PITCH),
    wrong("3/4-8 Acme 2G", "minor_min", "0.5820", BY_PITCH),
    wrong("7/8-5 Acme 2G", "pitch_max", "0.7670", BY_PITCH),
    wrong("7/8-5 Acme 2G", "pitch_min", "0.7476", BY_PITCH),
    wrong("7/8-5 Acme 2G", "minor_min", "0.6259", BY_PITCH),
    wrong("7/8-8 Acme 2G", "pitch_max", "0.8062", BY_PITCH),
    wrong("7/8-8 Acme 2G", "pitch_min", "0.7908", BY_PITCH),
    wrong("7/8-8 Acme 2G", "minor_min", "0.7070", BY_PITCH),
    wrong("1-4 Acme 2G", "pitch_max", "0.8652", BY_PITCH),
    wrong("1-4 Acme 2G", "pitch_min", "0.8429", BY_PITCH),
    wrong("1-4 Acme 2G", "minor_min", "0.6965", BY_PITCH),
    wrong("1-6 Acme 2G", "pitch_max", "0.9098", BY_PITCH),
    wrong("1-6 Acme 2G", "pitch_min", "0.8929", "misprint of 0.8924 by the maker's own rule"),
    wrong("1-6 Acme 2G", "minor_min", "0.7871", BY_PITCH),
    wrong("1-8 Acme 2G", "pitch_max", "0.9312", BY_PITCH),
    wrong("1-8 Acme 2G", "pitch_min", "0.9158", BY_PITCH),
    wrong("1-8 Acme 2G", "minor_min", "0.8320", BY_PITCH),
    wrong(
        "1-10 Acme 2G",
        "pitch_min",
        "0.9264",
        "the tolerance is 0.0155: 0.006 + 0.030 sqrt(0.1)",
    ),
    wrong("1-1/8-4 Acme 2G", "pitch_max", "0.9902", BY_PITCH),
    wrong("1-1/8-4 Acme 2G", "pitch_min", "0.9679", BY_PITCH),
    wrong("1-1/8-4 Acme 2G", "minor_min", "0.8219", BY_PITCH),
    wrong(
        "1-1/8-6 Acme 2G",
        "pitch_max",
        "1.0312",
        "neither rule gives it; 1.0417 - 0.0085 is 1.0332",
    ),
    wrong("1-1/8-6 Acme 2G", "pitch_min", "1.0163", "neither rule gives it"),
    wrong("1-1/8-6 Acme 2G", "minor_min", "0.9115", BY_PITCH),
    wrong("1/4-16 Acme 4G", "minor_min", "0.1722", "0.17225, rounded down there"),
    wrong(
        "3/8-12 Acme 3G",
        "minor_min",
        "0.2730",
        "0.27307 from the rounded maximum, 0.27303 from the unrounded",
    ),
];

#[test]
fn acme_rows() {
    let mut check = Check::against(WRONG_ACME);
    for row in rows("tests/published/thread_acme_limits.csv") {
        let name = format!("{} {} {}", row.text("size"), row.text("form"), row.text("class"));
        let ours = thread(&row, &format!("{} {}", row.text("size"), row.text("form")));
        let wanted = Some(Class::read(row.text("class")).unwrap_or_else(|| panic!("{row}: class")));
        let sizes = match row.text("side") {
            "external" => ours.external(wanted),
            _ => ours.internal(wanted),
        };
        let sizes = sizes.unwrap_or_else(|error| panic!("{row}: {error}"));
        check.spread(&row, &name, "major", Unit::Inch, sizes.major);
        check.spread(&row, &name, "pitch", Unit::Inch, sizes.pitch);
        check.spread(&row, &name, "minor", Unit::Inch, sizes.minor);
    }
    for row in rows("tests/published/thread_acme_basic.csv") {
        let name = format!("{} {}", row.text("size"), row.text("form"));
        let ours = thread(&row, &name);
        check.figure(&row, &name, "major", Unit::Inch, Some(ours.major()));
        check.figure(&row, &name, "pitch", Unit::Inch, Some(ours.basic_pitch_diameter()));
        check.figure(&row, &name, "minor", Unit::Inch, Some(ours.basic_minor_diameter()));
    }
    check.done(250);
}

const HIGH: &str = "the sheet stands 0.0001 high: its 2 in is 2.0001";

#[test]
fn a_size_alone_takes_the_pitch_of_the_published_table() {
    let list = rows("tests/published/thread_acme_basic.csv");
    assert!(list.len() >= 30, "{}", list.len());
    for row in list {
        let (size, _) = row.text("size").rsplit_once('-').unwrap();
        let ours = thread(&row, &format!("{size} {}", row.text("form")));
        let listed = thread(&row, &format!("{} {}", row.text("size"), row.text("form")));
        assert_eq!(ours.pitch(), listed.pitch(), "{row}");
        assert_eq!(listed.series(), Series::Listed, "{row}");
        assert!(ours.is_pitch_assumed() && !listed.is_pitch_assumed(), "{row}");
    }
}

#[test]
fn the_makers_other_acme_figures_are_by_the_pitch() {
    let listed = rows("data/threads/acme_sizes.csv");
    let limits = rows("tests/published/thread_acme_limits.csv");
    let mut explained = 0;
    for entry in WRONG_ACME.iter().filter(|entry| entry.reason == BY_PITCH) {
        let row = limits
            .iter()
            .find(|row| entry.row == format!("{} Acme {}", row.text("size"), row.text("class")))
            .unwrap_or_else(|| panic!("{}", entry.row));
        let (_, tpi) = row.text("size").rsplit_once('-').unwrap();
        let figure = |column: &str| row.length(row.text(column), Unit::Inch);
        let basic = thread(row, &format!("{} Acme", row.text("size"))).basic_pitch_diameter();
        let by_pitch = listed.iter().filter(|size| size.text("tpi") == tpi).any(|size| {
            let standard = thread(size, &format!("{}-{tpi} Acme", size.text("size")));
            let screw = standard.external(None).unwrap();
            let wide = screw.pitch_tolerance;
            let (from, off) = match entry.column {
                "pitch_max" => (basic, screw.deviation.checked_abs().unwrap()),
                "pitch_min" => (figure("pitch_max"), wide),
                _ => (figure("minor_max"), wide.checked_scale(3, 2).unwrap()),
            };
            let predicted = from.checked_sub(off).unwrap().tenth_nanometres();
            let printed = figure(entry.column).tenth_nanometres();
            predicted.abs_diff(printed) <= Length::TENTH.tenth_nanometres().unsigned_abs()
        });
        assert!(by_pitch, "{row}: {} {}", entry.column, entry.printed);
        explained += 1;
    }
    assert!(explained >= 25);
}

const WRONG_WHITWORTH_BA: &[Wrong] = &[
    wrong("1/16 BSW", "minor", "0.0413", HIGH),
    wrong("1-1/8 BSW", "effective", "1.0336", HIGH),
    wrong("1-1/8 BSW", "minor", "0.9421", HIGH),
    wrong("1-3/4 BSW", "major", "1.7501", HIGH),
    wrong("1-3/4 BSW", "effective", "1.6220", HIGH),
    wrong("1-7/8 BSW", "major", "1.8751", HIGH),
    wrong("1-7/8 BSW", "effective", "1.7328", HIGH),
    wrong("1-7/8 BSW", "minor", "1.5905", HIGH),
    wrong("2 BSW", "major", "2.0001", HIGH),
    wrong("2 BSW", "effective", "1.8578", HIGH),
    wrong("2 BSW", "minor", "1.7155", HIGH),
    wrong("5 BA", "tpi", "43.0", "43.05, rounded down there"),
    wrong("11 BA", "tpi", "82.0", "81.94: printed to a whole turn"),
];

#[test]
fn whitworth_and_ba_rows() {
    let mut check = Check::against(WRONG_WHITWORTH_BA);
    for row in rows("tests/published/thread_whitworth_ba.csv") {
        let (series, size) = (row.text("series"), row.text("size"));
        let name = format!("{size} {series}");
        let ours = thread(&row, &name);
        // Turns per inch, as so many inches, to the places printed; one source
        // takes the pitch to 0.0001 in.
        let pitch = ours.pitch().nearest();
        let pitch = if row.text("source").starts_with("encyclopedia") {
            Decimals::INCHES.round(pitch, Rounding::Nearest)
        } else {
            pitch
        };
        let turns = Length::INCH.checked_scale(
            i128::from(Length::INCH.tenth_nanometres()),
            i128::from(pitch.tenth_nanometres()),
        );
        check.figure(&row, &name, "tpi", Unit::Inch, turns.ok());
        check.figure(&row, &name, "major", Unit::Inch, Some(ours.major()));
        check.figure(&row, &name, "effective", Unit::Inch, Some(ours.basic_pitch_diameter()));
        check.figure(&row, &name, "minor", Unit::Inch, Some(ours.basic_minor_diameter()));
    }
    check.done(90);
}

const WRONG_PIPE: &[Wrong] = &[
    wrong("R4", "gauge_length", "25.5", "eleven turns are 25.4"),
    wrong("NPT3/8", "l2", "0.0478", "two digits change places: 0.4078"),
    wrong("NPT1-1/2", "l1", "0.402", "misprint of 0.420: E1 - E0 is 0.02625 = 0.420/16"),
    wrong("NPT2-1/2", "pitch_diameter", "2.76215", "2.762156, cut after the fifth place"),
];

#[test]
fn pipe_rows() {
    let mut check = Check::against(WRONG_PIPE);
    for row in rows("tests/published/thread_pipe.csv") {
        let (series, size) = (row.text("series"), row.text("size"));
        let name = format!("{series}{size}");
        let form = match series {
            "G" => Form::PipeParallel,
            "R" => Form::PipeR,
            "NPT" => Form::Npt,
            other => panic!("{row}: {other}"),
        };
        let ours = Thread::pipe(form, row.length(size, Unit::Inch))
            .unwrap_or_else(|error| panic!("{row}: {error}"));
        let unit = if form == Form::Npt { Unit::Inch } else { Unit::Millimetre };
        if !row.text("tpi").is_empty() {
            assert!((ours.pitch().turns_per_inch() - row.get::<f64>("tpi")).abs() < 1e-9, "{row}");
        }
        if form != Form::Npt {
            check.figure(&row, &name, "major", unit, Some(ours.major()));
        }
        check.figure(&row, &name, "pitch_diameter", unit, Some(ours.basic_pitch_diameter()));
        check.figure(&row, &name, "minor", unit, Some(ours.basic_minor_diameter()));
        if form == Form::PipeParallel {
            let (a, b) = (Class::read("A"), Class::read("B"));
            let (a, b) = (ours.external(a).unwrap(), ours.external(b).unwrap());
            let nut = ours.internal(None).unwrap();
            assert_eq!(a.pitch_tolerance, nut.pitch_tolerance);
            check.figure(&row, &name, "pitch_tolerance", unit, Some(a.pitch_tolerance));
            check.figure(&row, &name, "pitch_tolerance_b", unit, Some(b.pitch_tolerance));
            check.figure(&row, &name, "minor_tolerance", unit, Some(nut.crest_tolerance));
            check.figure(&row, &name, "major_tolerance", unit, Some(b.crest_tolerance));
        }
        if let Some(taper) = ours.taper() {
            check.figure(&row, &name, "gauge_length", unit, Some(taper.gauge_length));
            check.figure(&row, &name, "e0", unit, Some(taper.small_end));
            check.figure(&row, &name, "l1", unit, Some(taper.gauge_length));
            check.figure(&row, &name, "l2", unit, Some(taper.useful_length));
            check.figure(&row, &name, "l3", unit, taper.wrench_length);
            let sixteenth = |length: Length| length.checked_scale(1, 16).unwrap();
            let e3 = taper
                .wrench_length
                .map(|length| taper.small_end.checked_sub(sixteenth(length)).unwrap());
            check.figure(&row, &name, "e3", unit, e3);
        }
    }
    check.done(200);
}
