//! Ball bearings by number: the table is what the data give, its sizes follow
//! the rules that the numbers are made by, and the seats are those of bearing
//! makers' tables.

use std::fmt::Write as _;

use fits_checks::{Row, ask, code, hold_generated, rows, takes};
use fits_core::{
    Length, Limits,
    size::Unit,
    standards::{
        bought::{Ball, Duty, Turning, ball_seats},
        iso286::Feature,
    },
};
use fits_repl::session::Session;

fn unit(row: &Row) -> Unit {
    match row.text("unit") {
        "mm" => Unit::Millimetre,
        "in" => Unit::Inch,
        other => panic!("{row}: unknown unit {other}"),
    }
}

fn optional(row: &Row, column: &str) -> Option<Length> {
    let text = row.text(column);
    (!text.is_empty()).then(|| row.length(text, unit(row)))
}

#[test]
fn the_table_is_what_the_data_give() {
    let list = rows("data/bought/ball_bearings.csv");
    let mut out = String::from(
        "//! Generated from `data/bought/ball_bearings.csv` by `tests/ball_bearings.rs`; do not edit.\n\nuse super::ball::BallRow;\nuse crate::{size::{Length, Unit}, source::{Known, Provenance}};\n\n",
    );
    writeln!(out, "pub(super) static BALLS: [BallRow; {}] = [", list.len()).unwrap();
    for row in &list {
        let size = |column: &str| row.length(row.text(column), unit(row));
        assert!(size("bore") < size("outside"), "{row}");
        assert!(size("width") < size("outside"), "{row}");
        let shielded = optional(row, "shielded");
        assert!(shielded.is_none_or(|wide| wide >= size("width")), "{row}: narrower with shields");
        let corner = optional(row, "corner");
        assert!(corner.is_none_or(|corner| corner < size("width").half()), "{row}");
        let some = |size: Option<Length>| {
            size.map_or("None".to_owned(), |size| format!("Some({})", code(size)))
        };
        let known = match row.text("corner_status") {
            "" | "SEEN" => "Seen",
            "MEMORY" => "Memory",
            other => panic!("{row}: unknown status {other}"),
        };
        writeln!(
            out,
            "    BallRow {{ number: {:?}, unit: Unit::{}, bore: {}, outside: {}, width: {}, shielded: {}, corner: {}, is_nominal: {}, corner_known: Known::{known}, from: {}, note: {:?} }},",
            row.text("number"),
            if row.text("unit") == "mm" { "Millimetre" } else { "Inch" },
            code(size("bore")),
            code(size("outside")),
            code(size("width")),
            some(shielded),
            some(corner),
            row.text("corner_kind") == "nominal",
            row.provenance(),
            row.text("note")
        )
        .unwrap();
    }
    out += "];\n";
    hold_generated("fits-core/src/standards/bought/ball_table.rs", &out);
}

/// ISO 15: the last two figures give the bore, 00 to 03 by list, then a fifth of
/// it; 6 and a figure of the series; 623 to 629 give it in millimetres. R goes by
/// sixteenths, RLS and RMS by eighths of an inch.
#[test]
fn the_bore_follows_from_the_number() {
    for ball in Ball::all() {
        let figures: String = ball.number().chars().filter(char::is_ascii_digit).collect();
        let figures: i64 = figures.parse().unwrap();
        let eighth = Length::INCH.tenth_nanometres() / 8;
        let bore = match ball.number() {
            number if number.starts_with("RLS") || number.starts_with("RMS") => figures * eighth,
            number if number.starts_with('R') => figures * eighth / 2,
            number if number.len() == 3 => figures % 10 * Length::MILLIMETRE.tenth_nanometres(),
            _ => {
                let code = figures % 100;
                let bore = [10, 12, 15, 17];
                let bore = usize::try_from(code).ok().and_then(|at| bore.get(at).copied());
                bore.unwrap_or(code * 5) * Length::MILLIMETRE.tenth_nanometres()
            }
        };
        assert_eq!(ball.bore().tenth_nanometres(), bore, "{}", ball.number());
    }
}

/// Within a series a larger bearing is no smaller in any way.
#[test]
fn sizes_grow_along_a_series() {
    let series = |ball: Ball| {
        let letters: String = ball.number().chars().filter(char::is_ascii_alphabetic).collect();
        match letters.as_str() {
            "" => ball.number().get(..2).unwrap().to_owned() + &ball.number().len().to_string(),
            letters => letters.to_owned(),
        }
    };
    let all: Vec<Ball> = Ball::all().collect();
    let mut compared = 0;
    for pair in all.windows(2).filter(|pair| series(pair[0]) == series(pair[1])) {
        let (small, large) = (pair[0], pair[1]);
        assert!(small.outside() <= large.outside(), "{}", large.number());
        assert!(small.width(false) <= large.width(false), "{}", large.number());
        assert!(small.width(true) <= large.width(true), "{}", large.number());
        assert!(small.fillet_under() <= large.fillet_under(), "{}", large.number());
        compared += 1;
    }
    assert!(compared > 80, "{compared}");
}

#[track_caller]
fn seat(number: &str, turning: Turning, duty: Duty, feature: Feature) -> (String, Limits, Limits) {
    let (ball, _) = Ball::named(number).unwrap();
    let seats = ball_seats(ball, Some(turning), Some(duty), false).unwrap();
    let seat = seats.iter().find(|seat| seat.feature == feature).unwrap();
    (seat.class.to_string(), seat.limits(), seat.fit.clearance())
}

fn um(length: Length) -> i64 {
    length.tenth_nanometres() / Length::MICROMETRE.tenth_nanometres()
}

/// Shaft and housing fits for metric radial bearings, ABMA 7 style, as General
/// Bearing Corporation prints them (Engineering information: light h5 to 18 mm and
/// j6 above, normal j5 and k5, heavy k5 from 18 mm, stationary g6 and h6), and
/// SKF, Housing tolerances and resultant fits: 52 mm in H7 is 0 to 43 um loose, in
/// N7 from 4 loose to 39 tight; a 25 mm bore on j6 from 4 loose to 19 tight.
#[test]
fn seats_are_those_of_bearing_makers() {
    use Duty::{Heavy, Light, Normal};
    for (number, turning, duty, feature, class, loosest, tightest) in [
        ("6203", Turning::Shaft, Light, Feature::Shaft, "h5", 8, -8),
        ("6203", Turning::Shaft, Normal, Feature::Shaft, "j5", 3, -13),
        ("6205", Turning::Shaft, Light, Feature::Shaft, "j6", 4, -19),
        ("6205", Turning::Shaft, Normal, Feature::Shaft, "k5", -2, -21),
        ("6205", Turning::Shaft, Heavy, Feature::Shaft, "k5", -2, -21),
        ("6205", Turning::Shaft, Normal, Feature::Hole, "H7", 43, 0),
        ("6205", Turning::Housing, Normal, Feature::Hole, "N7", 4, -39),
        ("6205", Turning::Housing, Light, Feature::Hole, "M7", 13, -30),
        ("6205", Turning::Housing, Normal, Feature::Shaft, "g6", 20, -3),
    ] {
        let (found, _, clearance) = seat(number, turning, duty, feature);
        assert_eq!(found, class, "{number} {turning:?} {duty:?}");
        assert_eq!(
            (um(clearance.upper()), um(clearance.lower())),
            (loosest, tightest),
            "{number} {class}"
        );
    }
}

/// A shaft below 18 mm has no row for heavy loads: nothing is made up for it.
#[test]
fn no_seat_is_made_up() {
    let (ball, _) = Ball::named("6203").unwrap();
    let seats = ball_seats(ball, Some(Turning::Shaft), Some(Duty::Heavy), false).unwrap();
    assert!(seats.iter().all(|seat| seat.feature == Feature::Hole), "{seats:?}");
    let answer = takes(&mut Session::new(), "bearing 6203, shaft turns, heavy");
    assert!(answer["notes"].to_string().contains("no shaft seat is tabulated"), "{answer}");
}

/// Handbooks print 23.4 to 24 millionths a degree for aluminium and 11.5 to 12.5 for
/// bearing steel: 47 mm over 40 degrees opens by 10.9 to 12.5 of them, worked out
/// here.
#[test]
fn a_warm_aluminium_housing_opens() {
    let answer =
        takes(&mut Session::new(), "bearing 6204, shaft turns, housing aluminium, warm 60C");
    let seats = answer["seats"].as_array().unwrap();
    let housing = seats.iter().find(|seat| seat["kind"] == "hole").unwrap();
    assert_eq!(housing["class"], "J7", "one step tighter than H7");
    let opened = housing["warm"]["aim_mm"].as_f64().unwrap()
        - housing["clearance"]["aim_mm"].as_f64().unwrap();
    assert!((47.0 * 40.0 * 10.9e-6..47.0 * 40.0 * 12.5e-6).contains(&opened), "{opened}");
    let steel = takes(&mut Session::new(), "bearing 6204, shaft turns, housing steel");
    assert!(steel["seats"].to_string().contains("\"class\":\"H7\""), "{steel}");
}

#[test]
fn a_number_is_read_with_what_makers_add() {
    for (typed, number, is_closed) in [
        ("6203", "6203", false),
        ("6203-2RS", "6203", true),
        ("6203ZZ", "6203", true),
        ("6203-2Z/C3", "6203", true),
        ("608-2RSH", "608", true),
        ("r8zz", "R8", true),
        ("R16", "R16", false),
        ("R2", "R2", false),
        ("RLS6", "RLS6", false),
        ("6203DDU", "6203", true),
        ("6203C3", "6203", false),
    ] {
        let (ball, closed) = Ball::named(typed).unwrap_or_else(|error| panic!("{typed}: {error}"));
        assert_eq!((ball.number(), closed), (number, is_closed), "{typed}");
    }
    for (typed, near) in [
        ("6213", "6212, 6211"),
        ("6311", "6310, 6309"),
        ("622", "623, 624"),
        ("R7", "R6, R8"),
        ("RLS17", "RLS16, RLS18"),
        ("6999", "629, 6309"),
    ] {
        let error = Ball::named(typed).unwrap_err();
        assert!(error.is_not_listed());
        if typed != "6999" {
            assert_eq!(error.advice(), format!("near it: {near}"), "{typed}");
        }
    }
}

/// What is refused offers a line that works.
#[test]
fn refusals_lead_on() {
    let mut session = Session::new();
    for query in [
        "bearing 6213",
        "bearing 62203",
        "bearing R7",
        "bearing 6204, turns",
        "bearing 6204, shaft aluminium",
        "bearing 6204, shaft 0.75in",
        "bearing 6204, warm 60C",
        "bearing 6204, housing aluminium, warm 20C..60C",
        "bearing 6204, wobbly",
        "bearing 6203ZZ, open",
        "bearing 6204, light, heavy",
    ] {
        let refused = ask(&mut session, query);
        let error = &refused["error"];
        assert!(error.is_object(), "{query}: {refused}");
        let hint = error["hint"].as_str().unwrap_or_default().to_owned();
        assert!(!hint.is_empty(), "{query}: {refused}");
        for works in hint.split('`').skip(1).step_by(2) {
            takes(&mut session, works);
        }
    }
}
