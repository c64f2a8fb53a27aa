//! Borders of the thread tables of the other systems, on both sides: a count of
//! 0.1 nm below the border, the border itself and a count above.

use fits_checks::rows;
use fits_core::{
    Length,
    shop::{
        infeed::{Overrun, Runout},
        tap::{Clearances, Oversize, Screws},
    },
    size::Unit,
    standards::{
        iso286::Feature,
        thread::{Class, Engagement, Form, Nominal, Pitch, Side, Thread},
    },
};

const COUNT: Length = Length::from_tenth_nanometres(1);

fn inches(text: &str) -> Length {
    format!("{text}in").parse().unwrap()
}

fn around(border: Length) -> [Length; 3] {
    [border.checked_sub(COUNT).unwrap(), border, border.checked_add(COUNT).unwrap()]
}

#[allow(clippy::unnecessary_wraps, reason = "an option is what limits are asked with")]
fn class(text: &str) -> Option<Class> {
    Some(Class::read(text).unwrap())
}

#[test]
fn the_allowances_of_acme_end_with_the_diameter_that_they_name() {
    // ASME B1.5: a row holds above its first diameter, up to and with its last.
    let list = rows("data/threads/acme_allowances.csv");
    for (at, row) in list.iter().enumerate() {
        let border = inches(row.text("upto_in"));
        // A whole range above one inch is coarse enough for 4 turns.
        let turns = if border > Length::INCH { 4 } else { 20 };
        for name in ["2G", "3G", "4G"] {
            let printed = |row: &fits_checks::Row| inches(row.text(name));
            let above = list.get(at + 1).map(printed);
            let below = Some(printed(row));
            for (size, wanted) in around(border).into_iter().zip([below, below, above]) {
                let pitch = Pitch::per_inch(turns, 1).unwrap();
                let screw = Thread::acme(size, pitch).unwrap().external(class(name)).unwrap();
                let got = screw.deviation.checked_neg().unwrap();
                // Beyond the table: 0.008, 0.006 or 0.004 times the root of the diameter.
                let factor = [("2G", 0.008), ("3G", 0.006), ("4G", 0.004)];
                let factor = factor.iter().find(|(it, _)| *it == name).unwrap().1;
                let formula = factor * (size.millimetres() / 25.4).sqrt();
                let wanted = wanted.map_or(formula, |it| it.millimetres() / 25.4);
                let gap = got.millimetres() / 25.4 - wanted;
                assert!(gap.abs() < 0.000_051, "{size} {name}: {got} for {wanted}");
            }
        }
    }
}

#[test]
fn the_root_of_acme_changes_finer_than_ten_turns() {
    // ASME B1.5: 0.020 in to 10 turns, 0.010 in finer; the crest's tolerance 0.05 P, at
    // least 0.005 in, meets itself there.
    for (turns, over, root) in
        [(999, 100, 0.020), (10, 1, 0.020), (1001, 100, 0.010), (12, 1, 0.010)]
    {
        let thread = Thread::acme(inches("2"), Pitch::per_inch(turns, over).unwrap()).unwrap();
        let pitch = thread.pitch().inches();
        for name in ["2G", "3G", "4G"] {
            let nut = thread.internal(class(name)).unwrap();
            let got = nut.major.min.unwrap().millimetres() / 25.4 - 2.0;
            assert!((got - root).abs() < 1e-6, "{thread} {name}: {got}");
            let screw = thread.external(class(name)).unwrap();
            let deep = 2.0 - pitch - screw.minor.max.unwrap().millimetres() / 25.4;
            assert!((deep - root).abs() < 0.000_051, "{thread} {name}: {deep}");
            let crest = screw.crest_tolerance.millimetres() / 25.4;
            assert!((crest - (0.05 * pitch).max(0.005)).abs() < 0.000_052, "{thread}: {crest}");
        }
    }
}

#[test]
fn the_two_classes_of_ba_end_with_10_ba() {
    // BS 93: close and normal screws to 10 BA, a normal one 0.025 mm below basic; from
    // 11 BA on one class, at basic, with 0.25 P on the major diameter in place of 0.20 P.
    for number in 0..=16 {
        let thread = Thread::ba(number).unwrap();
        let screw = thread.external(class("normal")).unwrap();
        let has_two = number <= 10;
        let room = thread.major().checked_sub(screw.major.max.unwrap()).unwrap().millimetres();
        assert!((room - if has_two { 0.025 } else { 0.0 }).abs() < 1e-9, "{thread}: {room}");
        let pitch = thread.pitch().millimetres();
        let part = if has_two { 0.20 } else { 0.25 };
        let crest = screw.crest_tolerance.millimetres();
        assert!((crest - part * pitch).abs() < 0.000_51, "{thread}: {crest}");
        assert_eq!(thread.external(class("close")).is_ok(), has_two, "{thread}");
        assert!(thread.internal(class("close")).is_err(), "{thread}");
    }
    assert!(Thread::ba(17).is_err());
}

#[test]
fn a_pipe_size_is_a_name_and_no_neighbour_of_it_is_one() {
    for (form, table) in [
        (Form::PipeParallel, "pipe_g"),
        (Form::PipeR, "pipe_r"),
        (Form::PipeRp, "pipe_r"),
        (Form::PipeRc, "pipe_r"),
        (Form::Npt, "npt"),
    ] {
        let list = rows(&format!("data/threads/{table}.csv"));
        for row in &list {
            let size = row.length(row.text("size"), Unit::Inch);
            let is_one = around(size).map(|size| Thread::pipe(form, size).is_ok());
            assert_eq!(is_one, [false, true, false], "{form:?} {row}");
        }
        let sizes = || list.iter().map(|row| row.length(row.text("size"), Unit::Inch));
        let beyond = sizes().max().unwrap().checked_add(Length::INCH).unwrap();
        assert!(Thread::pipe(form, beyond).is_err(), "{form:?} {beyond}");
    }
    // R, Rp and Rc have not the sizes that ISO 228-1 alone lists.
    for size in ["5/8", "7/8", "1-1/8", "1-3/4", "2-1/4", "2-3/4", "3-1/2"] {
        assert!(Thread::pipe(Form::PipeParallel, inches(size)).is_ok(), "{size}");
        assert!(Thread::pipe(Form::PipeR, inches(size)).is_err(), "{size}");
    }
}

#[test]
fn turns_of_pipe_threads_change_above_two_inches() {
    // ASME B1.20.1: three turns by wrench to 2 in, two above. ISO 7-1: the plane of a screw
    // a turn either way to 2 in, a turn and a half above; of a nut 5/4 and 3/2.
    let turns =
        |length: Length, thread: &Thread| length.millimetres() / thread.pitch().millimetres();
    for (size, npt, screw, nut) in [
        ("1-1/2", 3.0, 1.0, 1.25),
        ("2", 3.0, 1.0, 1.25),
        ("2-1/2", 2.0, 1.5, 1.5),
        ("3", 2.0, 1.5, 1.5),
    ] {
        let thread = Thread::pipe(Form::Npt, inches(size)).unwrap();
        let wrench = thread.taper().unwrap().wrench_length.unwrap();
        assert!((turns(wrench, &thread) - npt).abs() < 1e-5, "{thread}");
        let thread = Thread::pipe(Form::PipeR, inches(size)).unwrap();
        let taper = thread.taper().unwrap();
        // The standard prints tenths of a millimetre.
        for (length, wanted) in [(taper.external_tolerance, screw), (taper.internal_tolerance, nut)]
        {
            let gap = (turns(length, &thread) - wanted) * thread.pitch().millimetres();
            assert!(gap.abs() <= 0.0501, "{thread}: {length}");
        }
    }
}

#[test]
fn the_crest_clearance_of_trapezoidal_threads_changes_at_2_6_and_14() {
    // ISO 2901, table 1: 0.15 mm at a pitch of 1.5, 0.25 at 2 to 5, 0.5 at 6 to 12, 1 from 14.
    for (border, below, from) in [("2", 0.15, 0.25), ("6", 0.25, 0.5), ("14", 0.5, 1.0)] {
        let border: Length = format!("{border}mm").parse().unwrap();
        for (pitch, wanted) in around(border).into_iter().zip([below, from, from]) {
            let hundred = "100mm".parse().unwrap();
            let thread = Thread::trapezoidal(hundred, Pitch::of(pitch).unwrap()).unwrap();
            let nut = thread.internal(None).unwrap();
            let clear = (nut.major.min.unwrap().millimetres() - 100.0) / 2.0;
            assert!((clear - wanted).abs() < 0.000_51, "{thread}: {clear}");
        }
    }
}

#[test]
fn the_lengths_of_engagement_hold_their_own_ends() {
    // ISO 965-1: group N from its first length up to and with its last.
    let mut seen = 0;
    for row in rows("data/threads/engagement.csv") {
        let mm = |column: &str| row.length(row.text(column), Unit::Millimetre);
        let pitch = Pitch::of(mm("pitch_mm")).unwrap();
        for size in [mm("over_mm").checked_add(COUNT).unwrap(), mm("upto_mm")] {
            let Ok(thread) = Thread::metric(size, pitch) else { continue };
            let groups = |border| around(border).map(|engaged| Engagement::of(&thread, engaged));
            let [short, normal, long] = [Engagement::Short, Engagement::Normal, Engagement::Long];
            assert_eq!(groups(mm("from_mm")), [short, normal, normal], "{row}");
            assert_eq!(groups(mm("to_mm")), [normal, normal, long], "{row}");
            seen += 1;
        }
    }
    assert!(seen > 40, "{seen}");
}

#[test]
fn unified_tolerances_change_at_8_turns_and_above_two_inches() {
    // ASME B1.1: 2A is 0.0015 D^(1/3) + 0.0015 LE^(1/2) + 0.015 P^(2/3); LE is the diameter of a
    // constant pitch of 8 turns or coarser, nine pitches of a finer one. Above 2 in a size
    // between takes the next primary one's diameter, as published limits have it.
    for (size, turns, of, by_diameter) in [
        ("2", 6, 2.0, true),
        ("2", 8, 2.0, true),
        ("2", 12, 2.0, false),
        ("1-15/16", 12, 1.9375, false),
        ("2-1/8", 12, 2.25, false),
        ("2-1/4", 12, 2.25, false),
        ("2-1/8", 8, 2.25, true),
        ("2-3/8", 12, 2.5, false),
        ("3-1/8", 12, 3.25, false),
    ] {
        let [nominal, pitch] = [inches(size), Length::INCH.checked_scale(1, turns).unwrap()];
        let turns = i64::try_from(turns).unwrap();
        let pitch_of = Pitch::per_inch(turns, 1).unwrap();
        let thread = Thread::unified(Nominal::Decimal(nominal), pitch_of).unwrap();
        let p = pitch.millimetres() / 25.4;
        let engaged: f64 = if by_diameter { of } else { 9.0 * p };
        let wanted = 0.0015 * f64::cbrt(of) + 0.0015 * engaged.sqrt() + 0.015 * f64::cbrt(p * p);
        let got = thread.sizes(Side::External, class("2A"), None).unwrap().pitch_tolerance;
        let gap = got.millimetres() / 25.4 - wanted;
        assert!(gap.abs() < 0.000_052, "{thread}: {got} for {wanted}");
    }
}

#[test]
fn run_outs_and_drills_hold_up_to_and_with_their_own_row() {
    // GB/T 3 and DIN 76-1 by pitch: a pitch between takes the next coarser row.
    let list = rows("data/threads/runout.csv");
    let of = |thread: &str| -> Vec<Length> {
        let mine = list.iter().filter(|row| row.text("thread") == thread);
        mine.map(|row| row.length(row.text("pitch"), Unit::Millimetre)).collect()
    };
    let check = |pitches: &[Length], find: &dyn Fn(Length) -> Option<Length>| {
        for (at, pitch) in pitches.iter().enumerate() {
            let next = pitches.get(at + 1).copied();
            let found = around(*pitch).map(find);
            assert_eq!(found, [Some(*pitch), Some(*pitch), next], "{pitch}");
        }
        assert_eq!(pitches.last().map(|it| it.millimetres()), Some(6.0));
    };
    check(&of("external"), &|pitch| Runout::of(Feature::Shaft, pitch).map(Runout::pitch));
    check(&of("internal"), &|pitch| Runout::of(Feature::Hole, pitch).map(Runout::pitch));
    check(&of("blind hole"), &|pitch| Overrun::of(pitch).map(Overrun::pitch));
    // AND10387: the tolerance of a drilled hole, up to and with a diameter.
    let most: Vec<(Length, Length)> = rows("data/drills/oversize.csv")
        .iter()
        .filter(|row| row.text("kind") == "most")
        .map(|row| (inches(row.text("diameter")), inches(row.text("oversize"))))
        .collect();
    for pair in most.windows(2) {
        let found = around(pair[0].0).map(|drill| Oversize::of(drill).unwrap().most);
        assert_eq!(found, [pair[0].1, pair[0].1, pair[1].1], "{}", pair[0].0);
    }
}

#[test]
fn a_screw_a_hair_thicker_takes_the_room_of_the_next() {
    for (screws, standard) in [(Screws::Metric, "ISO 273"), (Screws::Inch, "ASME B18.2.8")] {
        let mut sizes: Vec<Length> = rows("data/threads/clearance_holes.csv")
            .iter()
            .filter(|row| row.text("standard") == standard)
            .map(|row| {
                let size = row.text("size").replace("No. ", "#");
                let name = if screws == Screws::Inch { format!("{size} UN") } else { size };
                let designation = fits_core::standards::thread::scan_expected(&name);
                let designation = designation.unwrap_or_else(|| panic!("{name}")).unwrap().0;
                designation.nominal.value.length().unwrap()
            })
            .collect();
        sizes.sort_unstable();
        sizes.dedup();
        assert!(sizes.len() > 20, "{standard}");
        for pair in sizes.windows(2) {
            let found = around(pair[0]).map(|size| {
                let (table, holes) = Clearances::from(screws, size).unwrap();
                (table, holes.normal.major())
            });
            let [own, next] = [pair[0], pair[1]].map(|size| (screws, size));
            assert_eq!(found, [own, own, next], "{}", pair[0]);
        }
        // The inch table ends at 1-1/2 in: above it the metric one goes on.
        let last = *sizes.last().unwrap();
        let above = Clearances::from(screws, last.checked_add(COUNT).unwrap());
        assert_eq!(
            above.map(|(table, _)| table),
            match screws {
                Screws::Inch => Some(Screws::Metric),
                Screws::Metric => None,
            }
        );
    }
}
