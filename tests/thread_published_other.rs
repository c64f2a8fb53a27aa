//! Rows read in published tables of trapezoidal, Acme, Whitworth, BA and pipe
//! threads, against the library. Rows that a source prints wrong stand in one
//! ledger a table, with the reason; one that no longer disagrees fails.

use fits_checks::{Row, rows};
use fits_core::{
    Length,
    size::{Decimals, Rounding, Unit},
    source::Known,
    standards::thread::{Class, Form, Series, Side, Spread, Thread},
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
        self.compared += 1;
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
                self.bad.push(format!("{row}: {name} {column} {text} agrees: delete its entry"))
            }
            (false, Some(at)) => self.reached[at] = true,
            (false, None) => {
                self.bad.push(format!("{row}: {name} {column} {text}, ours {shown:?}"))
            }
        }
    }

    fn spread(&mut self, row: &Row, name: &str, diameter: &str, unit: Unit, ours: Spread) {
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

/// The class that a text is; none where it is empty.
#[track_caller]
fn class(text: &str) -> Option<Class> {
    (!text.is_empty()).then(|| Class::read(text).unwrap_or_else(|| panic!("{text} is no class")))
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
    check.done(110);
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
        let wanted = class(row.text("class"));
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
fn acme_sizes_agree_with_an_open_parts_library() {
    let list = rows("tests/published/thread_acme_open_data.csv");
    assert_eq!(list.len(), 14);
    for row in list {
        let ours = thread(&row, &format!("{} Acme", row.text("size")));
        let listed = thread(&row, &format!("{}-{} Acme", row.text("size"), row.text("tpi")));
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
        let pitch = match row.text("source").starts_with("encyclopedia") {
            true => Decimals::INCHES.round(ours.pitch().nearest(), Rounding::Nearest),
            false => ours.pitch().nearest(),
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
    wrong("NPT1-1/2", "l1", "0.402", "misprint of 0.420: E1 - E0 is 0.02625 = 0.420/16"),
    wrong("NPT2-1/2", "pitch_diameter", "2.76215", "2.762156, cut after the fifth place"),
    wrong("NPT3", "e0", "3.34052", "misprint of 3.34062: 3.5 - (0.175 + 1.1)/8"),
    wrong("NPT3", "l2", "1.2500", "the figure of 3-1/2; (0.8 x 3.5 + 6.8)/8 is 1.2"),
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
            let (a, b) = (class("A"), class("B"));
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
    check.done(330);
}

/// The screws and nuts of a thread in every pair of classes that the system
/// has.
fn classes(form: Form) -> (Vec<&'static str>, Vec<&'static str>) {
    match form {
        Form::Trapezoidal => (vec!["7e", "8e", "8c", "9c"], vec!["7H", "8H", "9H"]),
        Form::Acme | Form::StubAcme => (vec!["4G", "3G", "2G"], vec!["4G", "3G", "2G"]),
        Form::Whitworth => (vec!["close", "medium", "free"], vec!["medium", "normal"]),
        Form::Ba => (vec!["close", "normal"], vec!["normal"]),
        Form::PipeParallel => (vec!["A", "B"], vec![""]),
        other => panic!("{other:?}"),
    }
}

/// Every listed thread of a data file, by its name.
fn names() -> Vec<String> {
    let mut names = Vec::new();
    for row in rows("data/threads/trapezoidal_sizes.csv") {
        names.push(format!("Tr{}x{}", row.text("diameter_mm"), row.text("pitch_mm")));
    }
    for row in rows("data/threads/acme_sizes.csv") {
        names.push(format!("{}-{} Acme", row.text("size"), row.text("tpi")));
        names.push(format!("{}-{} Stub Acme", row.text("size"), row.text("tpi")));
    }
    for row in rows("data/threads/whitworth_sizes.csv") {
        names.push(format!("{}-{} {}", row.text("size"), row.text("tpi"), row.text("series")));
    }
    names.extend((0..=16).map(|number| format!("{number} BA")));
    for row in rows("data/threads/pipe_g.csv") {
        names.push(format!("G{}", row.text("size")));
    }
    for row in rows("data/threads/pipe_r.csv") {
        names.extend(["R", "Rp", "Rc"].map(|letter| format!("{letter}{}", row.text("size"))));
    }
    for row in rows("data/threads/npt.csv") {
        names.push(format!("{} NPT", row.text("size")));
    }
    names
}

#[test]
fn every_listed_thread_is_found_by_name_and_written_back() {
    let names = names();
    assert!(names.len() > 450, "{}", names.len());
    for name in &names {
        let thread: Thread = name.parse().unwrap_or_else(|error| panic!("{name}: {error}"));
        assert_eq!(thread.to_string(), *name);
        let left = thread.left_hand().to_string();
        let read: Thread = left.parse().unwrap_or_else(|error| panic!("{left}: {error}"));
        assert!(read.is_left_hand(), "{left}");
        let Ok(two) = thread.with_starts(2) else {
            assert!(
                thread.taper().is_some() || matches!(thread.form(), Form::Ba | Form::PipeParallel),
                "{name}"
            );
            continue;
        };
        let two = two.to_string();
        let read: Thread = two.parse().unwrap_or_else(|error| panic!("{two}: {error}"));
        assert_eq!((read.starts(), read.pitch()), (2, thread.pitch()), "{two}");
    }
}

#[test]
fn no_good_screw_is_too_large_for_a_good_nut_and_classes_nest() {
    for name in names() {
        let thread: Thread = name.parse().unwrap();
        if thread.taper().is_some() {
            continue;
        }
        let (screws, nuts) = classes(thread.form());
        let mut widest: Option<Length> = None;
        for screw in screws {
            let Ok(screw_sizes) = thread.external(class(screw)) else {
                // BS 93 has one class from 11 BA.
                assert!(thread.form() == Form::Ba && screw == "close", "{name} {screw}");
                continue;
            };
            let tolerance = screw_sizes.pitch_tolerance;
            assert!(widest.is_none_or(|widest| widest <= tolerance), "{name} {screw} is finer");
            widest = Some(tolerance);
            for spread in [screw_sizes.major, screw_sizes.pitch, screw_sizes.minor] {
                assert!(
                    spread.max.zip(spread.min).is_none_or(|(max, min)| min < max),
                    "{name} {screw}"
                );
            }
            let order = [screw_sizes.minor.max, screw_sizes.pitch.max, screw_sizes.major.max];
            assert!(order.is_sorted() && order[0] < order[2], "{name} {screw}: {order:?}");
            for nut in &nuts {
                let nut_sizes = thread.internal(class(nut)).unwrap();
                for (screw_spread, nut_spread) in [
                    (screw_sizes.major, nut_sizes.major),
                    (screw_sizes.pitch, nut_sizes.pitch),
                    (screw_sizes.minor, nut_sizes.minor),
                ] {
                    let largest = screw_spread.max.expect("a largest screw");
                    let smallest = nut_spread.min.expect("a smallest nut");
                    assert!(largest <= smallest, "{name} {nut}/{screw}: {largest} in {smallest}");
                }
            }
        }
    }
}

#[test]
fn acme_classes_lie_inside_one_another() {
    for row in rows("data/threads/acme_sizes.csv") {
        let thread = thread(&row, &format!("{}-{} Acme", row.text("size"), row.text("tpi")));
        let sizes = |side, name| thread.sizes(side, class(name), None).unwrap();
        for (tight, loose) in [("4G", "3G"), ("3G", "2G")] {
            let nut = (sizes(Side::Internal, tight), sizes(Side::Internal, loose));
            assert_eq!(nut.0.pitch.min, nut.1.pitch.min, "{row}");
            assert!(nut.0.pitch.max < nut.1.pitch.max, "{row}: {tight} nut not inside {loose}");
            // A tighter screw comes nearer the basic size and spreads less.
            let screw = (sizes(Side::External, tight), sizes(Side::External, loose));
            assert!(screw.0.pitch.max > screw.1.pitch.max, "{row}");
            assert!(screw.0.pitch.min > screw.1.pitch.min, "{row}");
            assert!(screw.0.pitch_tolerance < screw.1.pitch_tolerance, "{row}");
        }
    }
}

#[test]
fn more_starts_widen_the_trapezoidal_tolerance() {
    let mut before = Length::ZERO;
    for (starts, micrometres) in [(1, 300), (2, 336), (3, 375), (4, 420), (5, 480), (6, 480)] {
        let thread: Thread = "Tr24x5".parse().unwrap();
        let sizes = thread.with_starts(starts).unwrap().external(None).unwrap();
        assert_eq!(sizes.pitch_tolerance, Length::from_micrometres(micrometres).unwrap());
        assert!(sizes.pitch_tolerance >= before);
        before = sizes.pitch_tolerance;
    }
}

#[track_caller]
fn refused(name: &str) -> (String, String) {
    let error = name.parse::<Thread>().unwrap_err();
    (error.to_string(), error.advice())
}

#[test]
fn refusals_say_what_would_work() {
    for (name, why, advice) in [
        ("Tr20", "Tr20 needs its pitch", "Tr20 is listed with pitch 2, 3, 4: `Tr20x2`"),
        (
            "G1/2 6g",
            "parallel pipe G threads have no class 6g of external thread",
            "screws are class A or B: `G1/2 A`",
        ),
        (
            "1/2 NPT 6H",
            "taper pipe NPT threads have no class 6H of external thread",
            "there is one class: `1/2 NPT`",
        ),
        (
            "Tr20x4 6g",
            "ISO 2903 has no class 6g of external trapezoidal thread",
            "screws are 7e, 8e, 8c or 9c",
        ),
        (
            "1/2-10 Acme 3C",
            "Acme threads have no class 3C here: centralizing classes are not covered",
            "general purpose classes are 2G, 3G and 4G",
        ),
        ("2 BA 2 starts", "BA threads have one start", "leave the starts out: `2 BA`"),
        ("17 BA", "there is no 17 BA", "BS 93 lists 0 to 16 BA"),
        (
            "1/2-13 BSW",
            "1/2 BSW has 12 tpi",
            "ask for `1/2 BSW`, or for another pitch with `Whitworth`",
        ),
        (
            "G1/3",
            "G has no size 1/3",
            "G has the pipe sizes 1/16 to 6: 1/8, 1/4, 3/8, 1/2, 3/4, 1 ...",
        ),
        ("Tr8x8", "a pitch of 8 mm leaves no core in 8", "give a finer pitch"),
        ("1/2-3 Acme 9 starts 2G", "", ""),
    ] {
        if why.is_empty() {
            assert!(name.parse::<Thread>().is_ok(), "{name}");
        } else {
            assert_eq!(refused(name), (why.to_owned(), advice.to_owned()), "{name}");
        }
    }
    let nut = "Rp1/2".parse::<Thread>().unwrap().external(None).unwrap_err();
    assert_eq!(nut.advice(), "ask for `R1/2`");
}

/// Formulas with numbers put in by hand, where no table of limits was read.
#[test]
fn worked_by_hand() {
    let mm = |text: &str| Some(format!("{text}mm").parse::<Length>().unwrap());
    let inch = |text: &str| Some(format!("{text}in").parse::<Length>().unwrap());
    // Machinery's Handbook 31st ed., p. 2115: P 0.81; 0.20 P, 0.10 P + 0.025,
    // 0.20 P + 0.05 and room 0.025; the nut 0.12 P + 0.03 and 0.375 P.
    let thread: Thread = "2 BA".parse().unwrap();
    let screw = thread.external(None).unwrap();
    assert_eq!(screw.major, Spread { max: mm("4.675"), min: mm("4.513") });
    assert_eq!(screw.pitch, Spread { max: mm("4.190"), min: mm("4.084") });
    assert_eq!(screw.minor, Spread { max: mm("3.705"), min: mm("3.493") });
    let close = thread.external(class("close")).unwrap();
    // 0.08 P + 0.02 = 0.0848.
    assert_eq!(close.pitch, Spread { max: mm("4.215"), min: mm("4.130") });
    let nut = thread.internal(None).unwrap();
    assert_eq!(nut.pitch, Spread { max: mm("4.342"), min: mm("4.215") });
    assert_eq!(nut.minor, Spread { max: mm("4.034"), min: mm("3.73") });
    // From 11 BA on there is no room.
    let thread: Thread = "12 BA".parse().unwrap();
    assert_eq!(thread.external(None).unwrap().major, Spread { max: mm("1.3"), min: mm("1.23") });
    // BS 84, recalled: T = 0.002 cbrt(0.25) + 0.003 sqrt(0.25) + 0.005
    // sqrt(0.05) = 0.00388; room 0.3 T.
    let thread: Thread = "1/4 BSW".parse().unwrap();
    let screw = thread.external(class("medium")).unwrap();
    assert_eq!(screw.major, Spread { max: inch("0.2488"), min: inch("0.2427") });
    assert_eq!(screw.pitch, Spread { max: inch("0.2168"), min: inch("0.2129") });
    let nut = thread.internal(class("normal")).unwrap();
    assert_eq!(nut.pitch, Spread { max: inch("0.2238"), min: inch("0.2180") });
    // 0.2 P + 0.007.
    assert_eq!(nut.minor, Spread { max: inch("0.2030"), min: inch("0.1860") });
    // A longer engagement widens the tolerance.
    let long = thread.sizes(Side::External, class("medium"), inch("1")).unwrap();
    assert!(long.pitch.min < screw.pitch.min && long.pitch.max < screw.pitch.max);
    // ISO 7-1, recalled: a turn of 14 to the inch either way, 1.8 mm along
    // and 0.113 mm across; the nut a turn and a quarter, 0.142 mm across.
    let thread: Thread = "R1/2".parse().unwrap();
    let taper = thread.taper().unwrap();
    assert_eq!(
        (Some(taper.external_tolerance), Some(taper.internal_tolerance)),
        (mm("1.8"), mm("2.3"))
    );
    assert_eq!((Some(taper.useful_length), taper.wrench_length), (mm("13.2"), None));
    let screw = thread.external(None).unwrap();
    assert_eq!(screw.pitch, Spread { max: mm("19.906"), min: mm("19.680") });
    let nut = "Rp1/2".parse::<Thread>().unwrap().internal(None).unwrap();
    assert_eq!(nut.pitch, Spread { max: mm("19.935"), min: mm("19.651") });
}

#[test]
fn every_figure_says_why_and_what_is_recalled() {
    let recalled = |name: &str, side| {
        let thread: Thread = name.parse().unwrap();
        let why = thread.why(side, None, None).unwrap_or_else(|error| panic!("{name}: {error}"));
        assert!(why.len() >= 4, "{name}: {} reasons", why.len());
        for reason in thread.reasons().iter().chain(&why) {
            let texts = [&reason.figure, &reason.value, &reason.source];
            assert!(texts.iter().all(|text| !text.is_empty()), "{name}: {reason:?}");
            assert!(!reason.value.contains("00000"), "{name}: noise in {reason:?}");
        }
        why.iter().any(|reason| reason.known == Known::Memory)
    };
    for (name, side, is_recalled) in [
        ("Tr10x2", Side::External, false),
        ("Tr20x4", Side::External, true),
        ("Tr10x2", Side::Internal, false),
        ("Tr40x7", Side::Internal, true),
        ("1/2-10 Acme", Side::External, false),
        ("1/2-10 Stub Acme", Side::External, true),
        ("1/2 BSW", Side::External, true),
        ("1/2 BSW", Side::Internal, true),
        ("2 BA", Side::External, false),
        ("G1/2", Side::Internal, false),
        ("R1/2", Side::External, true),
        ("Rc1/2", Side::Internal, true),
        ("1/2 NPT", Side::External, false),
        ("10 NPT", Side::External, true),
    ] {
        assert_eq!(recalled(name, side), is_recalled, "{name}");
    }
    for name in names() {
        let side = if name.starts_with("Rp") || name.starts_with("Rc") {
            Side::Internal
        } else {
            Side::External
        };
        recalled(&name, side);
    }
}
