//! ASME B4.1 as published: limits read in reprints and worked examples against
//! the library, misprints in a ledger, wrong pages refused.

use std::collections::BTreeSet;

use fits_checks::{Row, named, rows};
use fits_core::{
    Basis, Error, Fit, Kind, Length,
    source::Known,
    standards::b41::{Class, Family, grade_reason, grade_tolerance},
};

/// A cell in a unit; nothing where it is blank.
fn cell(row: &Row, column: &str, unit: &str) -> Option<Length> {
    let text = row.text(column);
    let length = || format!("{text}{unit}").parse();
    (!text.is_empty()).then(|| length().unwrap_or_else(|error| panic!("{row}: {column}: {error}")))
}

fn inches(text: &str) -> Length {
    format!("{text}in").parse().unwrap()
}

/// What the library gives in a column of the published rows.
fn given(fit: &Fit, column: &str) -> Length {
    let from_nominal = |size: Length| size.checked_sub(fit.nominal()).unwrap();
    match column {
        "hole_hi_thou" => from_nominal(fit.hole().upper()),
        "shaft_lo_thou" => from_nominal(fit.shaft().lower()),
        "shaft_hi_thou" => from_nominal(fit.shaft().upper()),
        "clr_min_thou" => fit.clearance().lower(),
        "clr_max_thou" => fit.clearance().upper(),
        _ => panic!("{column}"),
    }
}

const COLUMNS: [&str; 5] =
    ["hole_hi_thou", "shaft_lo_thou", "shaft_hi_thou", "clr_min_thou", "clr_max_thou"];

/// Published cells that the library does not give: class, over, column, the
/// value printed, why.
#[rustfmt::skip]
const DEPARTURES: [(&str, &str, &str, &str, &str); 15] = [
    ("RC2", "9.85", "shaft_hi_thou", "-0.7", OTHER_LINEAGE),
    ("RC2", "9.85", "shaft_lo_thou", "-1.6", OTHER_LINEAGE),
    ("RC2", "12.41", "shaft_hi_thou", "-0.7", OTHER_LINEAGE),
    ("RC2", "12.41", "shaft_lo_thou", "-1.7", OTHER_LINEAGE),
    ("RC2", "15.75", "shaft_hi_thou", "-0.8", OTHER_LINEAGE),
    ("RC2", "15.75", "shaft_lo_thou", "-1.8", OTHER_LINEAGE),
    ("RC4", "9.85", "shaft_hi_thou", "-2.2", OTHER_LINEAGE),
    ("RC4", "9.85", "shaft_lo_thou", "-4.2", OTHER_LINEAGE),
    ("RC4", "12.41", "shaft_hi_thou", "-2.5", OTHER_LINEAGE),
    ("RC4", "12.41", "shaft_lo_thou", "-4.7", OTHER_LINEAGE),
    ("RC4", "15.75", "shaft_hi_thou", "-2.8", OTHER_LINEAGE),
    ("RC4", "15.75", "shaft_lo_thou", "-5.3", OTHER_LINEAGE),
    ("RC3", "0.12", "clr_max_thou", "1.12", "0.5 + 0.7 is 1.2: a digit too many"),
    ("LC8", "0", "clr_max_thou", "2", "1.6 + 2.0 is 3.6: the shaft's figure repeated"),
    ("LC8", "1.19", "clr_min_thou", "3.6", "the shaft beside it begins at -3.0"),
];
const OTHER_LINEAGE: &str = "the course handout gives ISO g and f converted; two handbook editions \
    give the deviations of RC1 and RC3, which are kept and carry the doubt";

#[test]
fn published_limits_are_given_or_stand_in_the_ledger() {
    let rows = rows("tests/published/b41_limits.csv");
    let mut left: BTreeSet<_> = DEPARTURES.into_iter().collect();
    let mut cells = 0;
    for row in &rows {
        let class: Class = row.get("class");
        let (over, up_to) = (inches(row.text("over_in")), inches(row.text("upto_in")));
        // Just above the range's beginning, in it, and at its end, included.
        let first = over.checked_add(Length::from_tenth_nanometres(1)).unwrap();
        let middle = over.checked_add(up_to).unwrap().half();
        for nominal in [first, middle, up_to] {
            let fit = class.fit(nominal).unwrap_or_else(|error| panic!("{row}: {error}"));
            assert_eq!(fit.hole().lower(), nominal, "{row}");
            for column in COLUMNS {
                let Some(printed) = cell(row, column, "thou") else {
                    continue;
                };
                cells += usize::from(!row.is_unconfirmed());
                let same = given(&fit, column) == printed;
                let listed = DEPARTURES.into_iter().find(|entry| {
                    (entry.0, entry.1, entry.2, entry.3)
                        == (row.text("class"), row.text("over_in"), column, row.text(column))
                });
                match listed {
                    Some(entry) => {
                        assert!(!same, "{row}: {column} agrees: delete its entry");
                        left.remove(&entry);
                    }
                    None => assert!(same, "{row}: {column}: {} given", given(&fit, column)),
                }
            }
        }
    }
    assert!(left.is_empty(), "entries that name no published cell: {left:?}");
    let named = named(&rows);
    assert!(named >= 355 && cells >= 3 * 1400, "{named} rows name their text, {cells} cells");
}

#[test]
fn pages_known_to_be_wrong_are_not_followed() {
    for row in rows("tests/published/b41_wrong.csv") {
        let class: Class = row.get("class");
        let fit = class.fit(cell(&row, "nominal_in", "in").unwrap()).unwrap();
        assert!(!row.text("reason").is_empty(), "{row}");
        assert!(
            COLUMNS.iter().any(|column| {
                cell(&row, column, "thou").is_some_and(|printed| printed != given(&fit, column))
            }),
            "{row}: the library gives exactly that"
        );
    }
}

#[test]
fn a_border_belongs_to_the_range_below_it() {
    // Ranges are "over … to", B4.1 table heads.
    let hole = |class: &str, nominal: &str| {
        let nominal = inches(nominal);
        let hole = class.parse::<Class>().unwrap().hole(nominal).unwrap();
        hole.upper().checked_sub(nominal).unwrap()
    };
    for (class, at, upper, above, next) in [
        ("RC4", "0.12", "0.0006", "0.12001", "0.0007"),
        ("RC4", "0.71", "0.001", "0.7101", "0.0012"),
        ("RC4", "1.19", "0.0012", "1.1901", "0.0016"),
        ("FN2", "1.19", "0.0008", "1.1901", "0.001"),
        ("FN5", "3.15", "0.0018", "3.1501", "0.0022"),
        ("LN3", "15.75", "0.0022", "15.7501", "0.0025"),
    ] {
        assert_eq!(hole(class, at), inches(upper), "{class} at {at}");
        assert_eq!(hole(class, above), inches(next), "{class} at {above}");
    }
    assert_eq!(grade_tolerance(7, inches("0.71")).unwrap(), inches("0.0007"));
    assert_eq!(grade_tolerance(7, inches("0.7101")).unwrap(), inches("0.0008"));
    assert_eq!(grade_tolerance(13, inches("200")).unwrap(), inches("0.25"));
}

#[track_caller]
fn refused<T: std::fmt::Debug>(answer: Result<T, Error>) -> (String, String) {
    let error = answer.unwrap_err();
    (error.to_string(), error.advice())
}

#[test]
fn what_the_standard_does_not_give_is_refused_with_what_it_does() {
    let class = |text: &str| refused(text.parse::<Class>());
    for (text, why) in [
        ("RC10", "there is no RC10: RC runs from RC1 to RC9"),
        ("FN6", "there is no FN6: FN runs from FN1 to FN5"),
        ("lc0", "there is no LC0: LC runs from LC1 to LC11"),
        ("LT007", "there is no LT007: LT runs from LT1 to LT6"),
        ("LN+1", "there is no LN+1: LN runs from LN1 to LN3"),
        ("RC999", "there is no RC999: RC runs from RC1 to RC9"),
        ("RC", "RC is a family: its class is missing"),
        ("H7", "there is no family of inch fits \"H\""),
        ("", "there is no family of inch fits \"\""),
    ] {
        assert_eq!(class(text).0, why);
        assert!(
            "rc4".parse::<Class>().is_ok() && text.parse::<Class>().unwrap_err().is_unreadable()
        );
    }
    let fit = |class: &str, nominal: &str| class.parse::<Class>().unwrap().fit(inches(nominal));
    assert_eq!(
        refused(fit("RC4", "19.7")),
        (
            "nominal size 19.7 in is outside the table of RC4 in ASME B4.1 (over 0 in, up to 19.69 in)".into(),
            "sizes over 0 in up to 19.69 in are tabulated".into()
        )
    );
    for (class, nominal) in
        [("RC4", "0"), ("FN3", "0.95"), ("LT3", "0.24"), ("LC11", "-1"), ("FN1", "20")]
    {
        assert!(fit(class, nominal).unwrap_err().is_out_of_table(), "{class} at {nominal}");
    }
    assert!(fit("FN3", "0.9501").is_ok() && fit("LT4", "0.2401").is_ok());
    assert!(grade_tolerance(14, Length::INCH).unwrap_err().is_not_defined());
    assert!(grade_tolerance(0, Length::INCH).is_err());
    assert!(grade_tolerance(7, inches("200.01")).unwrap_err().is_out_of_table());
    assert!(grade_tolerance(7, Length::ZERO).unwrap_err().is_out_of_table());
}

#[test]
fn families_are_what_their_names_say_at_every_size() {
    for class in Class::all() {
        let (over, up_to) = class.sizes();
        for hundredth in 1..=1970 {
            let nominal = inches(&format!("{}.{:02}", hundredth / 100, hundredth % 100));
            if nominal <= over || nominal > up_to {
                assert!(class.fit(nominal).is_err(), "{class} at {nominal}");
                continue;
            }
            let fit = class.fit(nominal).unwrap();
            let wanted = match class.family() {
                Family::Running | Family::LocationalClearance => Kind::Clearance,
                Family::LocationalTransition => Kind::Transition,
                Family::LocationalInterference | Family::Force => Kind::Interference,
            };
            assert_eq!(fit.kind(), wanted, "{class} at {nominal}");
            let slides = fit.shaft().upper() == nominal;
            assert_eq!(fit.basis(), if slides { Basis::Both } else { Basis::Hole });
            assert_eq!(slides, class.symbols().1.is_some_and(|symbol| symbol.starts_with('h')));
            assert_eq!(
                (fit.hole(), fit.shaft()),
                (class.hole(nominal).unwrap(), class.shaft(nominal).unwrap())
            );
        }
    }
}

#[test]
fn neighbours_lead_through_the_family_and_back() {
    for class in Class::all() {
        for next in [class.looser(), class.tighter()].into_iter().flatten() {
            assert_eq!(next.family(), class.family());
            assert!(next.looser() == Some(class) || next.tighter() == Some(class));
        }
        let text = class.to_string();
        assert_eq!(text.to_lowercase().parse::<Class>().unwrap(), class);
        assert_eq!(
            format!("{} {}", class.family().name(), class.number()).parse::<Class>().unwrap(),
            class
        );
        let json = serde_json::to_string(&class).unwrap();
        assert_eq!(serde_json::from_str::<Class>(&json).unwrap(), class);
    }
    for (family, looser, tighter) in [
        (Family::Running, "RC9", "RC1"),
        (Family::LocationalClearance, "LC11", "LC1"),
        (Family::LocationalTransition, "LT1", "LT6"),
        (Family::LocationalInterference, "LN1", "LN3"),
        (Family::Force, "FN1", "FN5"),
    ] {
        let of_family = || Class::all().filter(|class| class.family() == family);
        assert_eq!(of_family().find(|class| class.looser().is_none()).unwrap().to_string(), looser);
        assert_eq!(
            of_family().find(|class| class.tighter().is_none()).unwrap().to_string(),
            tighter
        );
    }
}

#[test]
fn reasons_pass_on_how_each_cell_is_known() {
    let reasons = |class: &str, nominal: &str| {
        class.parse::<Class>().unwrap().reasons(inches(nominal)).unwrap()
    };
    // Every row of the data: its status and its doubt reach the answer.
    for family in ["rc", "lc", "lt", "ln", "fn"] {
        for row in rows(&format!("data/b41/{family}.csv")) {
            let reasons = reasons(row.text("class"), row.text("upto_in"));
            let known = match row.text("status") {
                "SEEN" => Known::Seen,
                "FORMULA" => Known::Formula,
                _ => Known::Memory,
            };
            assert!(reasons.iter().all(|reason| reason.known == known), "{row}");
            assert!(
                reasons.iter().all(|reason| reason.source.contains(row.text("source"))),
                "{row}"
            );
            assert_eq!(reasons.len(), if row.text("doubt").is_empty() { 2 } else { 3 }, "{row}");
            assert!(reasons.get(2).is_none_or(|reason| reason.rule == row.text("doubt")), "{row}");
        }
    }
    let rc4 = reasons("RC4", "10");
    assert_eq!(rc4[1].figure, "shaft of RC4");
    assert_eq!(rc4[1].value, "-0.0045 to -0.0025 in");
    assert_eq!(rc4[1].rule, "column f7");
    assert!(rc4[2].rule.to_string().starts_with("a course handout"));
    assert_eq!(reasons("FN1", "4")[0].known, Known::Memory);
    assert_eq!(reasons("RC9", "1")[1].rule, "the standard has no symbol for it");
    assert_eq!(grade_reason(10, inches("1")).unwrap().known, Known::Seen);
}
