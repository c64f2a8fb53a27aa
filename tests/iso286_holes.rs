//! Hole deviations against the published hole tables, and the refusals.
//!
//! The library derives holes from the shaft table by the rules of
//! ISO 286-1:2010, Tables 2 and 3. `tests/published/iso286_holes.csv` holds
//! the hole tables themselves, read in Machinery's Handbook (31st ed., Table
//! 6a), Machine Drawing (Narayana et al., Table 15.3) and the others that
//! each row names; rows with the status MEMORY or FORMULA are not an outside check
//! and are counted apart.

use std::collections::BTreeMap;

use fits_checks::{Row, rows};
use fits_core::{
    Length,
    standards::iso286::{Class, Feature, Grade, Letter, standard_tolerance},
};

/// The place of a grade among the twenty: IT01, IT0, IT1 and so on.
fn number(grade: Grade) -> i32 {
    match grade.to_string().as_str() {
        "01" => -1,
        text => text.parse().unwrap(),
    }
}

/// The grades that a row of the hole table holds for.
fn grades(row: &Row) -> Vec<Grade> {
    let text = row.text("grades");
    let bound = |digits: &str| digits.parse::<i32>().unwrap_or_else(|_| panic!("{row}"));
    Grade::all()
        .filter(|&grade| {
            let number = number(grade);
            match text {
                "all" => true,
                _ if text.starts_with("<=") => number <= bound(&text[2..]),
                _ if text.starts_with('>') => number > bound(&text[1..]),
                _ => number == bound(text),
            }
        })
        .collect()
}

fn millimetres(text: &str) -> Length {
    format!("{text}mm").parse().unwrap_or_else(|error| panic!("{text}: {error}"))
}

fn micrometres(row: &Row, text: &str) -> Length {
    format!("{text}um").parse().unwrap_or_else(|error| panic!("{row}: {text}: {error}"))
}

/// Just over the range and at its end.
fn both_ends(row: &Row) -> [Length; 2] {
    let over = millimetres(row.text("over_mm"));
    [over.checked_add(Length::from_tenth_nanometres(1)).unwrap(), millimetres(row.text("upto_mm"))]
}

/// Delta: the tolerance of the grade less that of the next finer one, over 3
/// up to 500 mm; nothing up to 3 mm (ISO 286-1, Tables 2 and 3). `None` for
/// grades finer than IT3, which the tables give no delta for.
fn delta(grade: Grade, nominal: Length) -> Option<Length> {
    if nominal <= millimetres("3") {
        return Some(Length::ZERO);
    }
    if number(grade) < 3 {
        return None;
    }
    let finer = Grade::it(u8::try_from(number(grade) - 1).unwrap()).unwrap();
    let tolerance = |grade| standard_tolerance(grade, nominal).unwrap();
    Some(tolerance(grade).checked_sub(tolerance(finer)).unwrap())
}

/// Classes inside a row's grades that the standard does not define there,
/// by rules that stand outside the hole table.
fn is_outside(class: Class, letter: &str, nominal: Length, has_delta: bool) -> bool {
    let one = millimetres("1");
    standard_tolerance(class.grade, nominal).is_err()
        || (["A", "B"].contains(&letter) && nominal <= one)
        || (letter == "N" && number(class.grade) > 8 && nominal <= one)
        || (has_delta && delta(class.grade, nominal).is_none())
}

#[test]
fn every_row_of_the_hole_table_is_what_the_rules_give() {
    let table = rows("tests/published/iso286_holes.csv");
    let m6: Vec<&Row> =
        table.iter().filter(|row| row.text("letter") == "M" && row.text("grades") == "6").collect();
    assert_eq!(m6.len(), 1, "the one exception of M6, 250 to 315 mm");
    let (mut checked, mut refused) = (0, 0);
    let mut statuses = BTreeMap::new();
    for row in &table {
        let name = row.text("letter");
        let letter = Letter::named(name, Feature::Hole).unwrap_or_else(|_| panic!("{row}"));
        let rule = row.text("value_um_or_rule");
        let mut agreed = 0;
        for grade in grades(row) {
            for nominal in both_ends(row) {
                let class = Class { feature: Feature::Hole, letter, grade };
                // The exception has a row of its own.
                let is_m6 = name == "M"
                    && row.text("grades") != "6"
                    && number(grade) == 6
                    && (row.text("over_mm"), row.text("upto_mm"))
                        == (m6[0].text("over_mm"), m6[0].text("upto_mm"));
                if is_m6 {
                    continue;
                }
                let found = class.deviations(nominal);
                let has_delta = rule.ends_with("+delta");
                if rule == "undefined" || is_outside(class, name, nominal, has_delta) {
                    let error = found.expect_err(&format!("{row}: {class} at {nominal}"));
                    assert!(error.is_not_defined(), "{row}: {class} at {nominal}: {error}");
                    refused += 1;
                    agreed += 1;
                    continue;
                }
                let found =
                    found.unwrap_or_else(|error| panic!("{row}: {class} at {nominal}: {error}"));
                let wanted = match rule {
                    "IT/2" => standard_tolerance(grade, nominal).unwrap().half(),
                    _ => match rule.strip_suffix("+delta") {
                        Some(value) => micrometres(row, value)
                            .checked_add(delta(grade, nominal).unwrap())
                            .unwrap(),
                        None => micrometres(row, rule),
                    },
                };
                let (given, other) = match row.text("which") {
                    "EI" => (found.lower(), found.upper()),
                    "ES" => (found.upper(), found.lower()),
                    "ES=-EI" => {
                        assert_eq!(found.lower().checked_neg(), Ok(found.upper()), "{row}");
                        (found.upper(), found.lower())
                    }
                    which => panic!("{row}: {which}"),
                };
                assert_eq!(given, wanted, "{row}: {class} at {nominal}");
                let width = given.checked_sub(other).unwrap().checked_abs().unwrap();
                assert_eq!(
                    Ok(width),
                    standard_tolerance(grade, nominal),
                    "{row}: {class} at {nominal}"
                );
                checked += usize::from(!row.is_unconfirmed());
                agreed += 1;
            }
        }
        assert!(agreed > 0, "{row}: no class was checked");
        *statuses.entry(row.text("status").to_owned()).or_insert(0) +=
            i32::from(!row.is_unconfirmed());
    }
    assert!(checked > 15_000 && refused > 500, "{checked} {refused}");
    assert!(statuses["SEEN"] > 800, "rows by status: {statuses:?}; too few were read in a text");
}

/// The sentence and the class to take instead.
#[track_caller]
fn refused(nominal: &str, class: &str) -> (String, Option<String>) {
    let nominal = millimetres(nominal);
    let class: Class = class.parse().expect(class);
    let error = class.limits(nominal).expect_err("refused");
    let instead = error.instead();
    assert_eq!(error.is_not_defined(), instead.is_some(), "{error}");
    if let Some(instead) = instead {
        assert_eq!(instead.feature, class.feature);
        assert!(instead.limits(nominal).is_ok(), "{instead} at {nominal}");
    }
    (error.to_string(), instead.map(|class| class.to_string()))
}

#[test]
fn what_the_standard_does_not_define_is_refused_in_so_many_words() {
    for (nominal, class, sentence, instead) in [
        (
            "0.8",
            "A11",
            "holes A are not defined at 0.8 mm: letters A and B start above 1 mm",
            "C11",
        ),
        // Over 1 mm is meant, not from it.
        ("1", "A11", "holes A are not defined at 1 mm: letters A and B start above 1 mm", "C11"),
        ("1", "B9", "holes B are not defined at 1 mm: letters A and B start above 1 mm", "C9"),
        ("1", "b9", "shafts b are not defined at 1 mm: letters A and B start above 1 mm", "c9"),
        ("1", "N9", "holes N are not defined at 1 mm: N9 and coarser start above 1 mm", "N8"),
        ("1", "h14", "IT14 is not used up to 1 mm: IT14 to IT18 start above it", "h13"),
        ("0.8", "h14", "IT14 is not used up to 1 mm: IT14 to IT18 start above it", "h13"),
        ("0.8", "N9", "holes N are not defined at 0.8 mm: N9 and coarser start above 1 mm", "N8"),
        (
            "20",
            "j9",
            "shafts j are not defined at 20 mm: j exists as j5, j6 and j7 up to 500 mm, and j8 up to 3 mm",
            "js9",
        ),
        (
            "20",
            "J9",
            "holes J are not defined at 20 mm: J exists as J6, J7 and J8 up to 500 mm",
            "JS9",
        ),
        (
            "20",
            "K9",
            "holes K are not defined at 20 mm: K is tabulated up to K8 from 3 to 500 mm",
            "K8",
        ),
        (
            "20",
            "K2",
            "holes K are not defined at 20 mm: no delta is tabulated for grades finer than IT3",
            "K3",
        ),
        (
            "20",
            "t6",
            "shafts t are not defined at 20 mm: t is tabulated over 24 mm, up to 3150 mm",
            "s6",
        ),
        (
            "10",
            "v6",
            "shafts v are not defined at 10 mm: v is tabulated over 14 mm, up to 500 mm",
            "u6",
        ),
        (
            "600",
            "a11",
            "shafts a are not defined at 600 mm: a is tabulated over 0 mm, up to 500 mm",
            "d11",
        ),
        ("600", "h01", "IT01 is not given above 500 mm", "h1"),
        ("600", "H0", "IT0 is not given above 500 mm", "H1"),
        (
            "60",
            "cd8",
            "shafts cd are not defined at 60 mm: cd is tabulated over 0 mm, up to 50 mm",
            "c8",
        ),
        (
            "5",
            "j8",
            "shafts j are not defined at 5 mm: j exists as j5, j6 and j7 up to 500 mm, and j8 up to 3 mm",
            "js8",
        ),
        (
            "600",
            "j6",
            "shafts j are not defined at 600 mm: j exists as j5, j6 and j7 up to 500 mm, and j8 up to 3 mm",
            "js6",
        ),
        (
            "600",
            "J6",
            "holes J are not defined at 600 mm: J exists as J6, J7 and J8 up to 500 mm",
            "JS6",
        ),
        (
            "600",
            "zc9",
            "shafts zc are not defined at 600 mm: zc is tabulated over 0 mm, up to 500 mm",
            "u9",
        ),
    ] {
        assert_eq!(
            refused(nominal, class),
            (sentence.to_owned(), Some(instead.to_owned())),
            "{nominal} {class}"
        );
    }
}

#[test]
fn sizes_beyond_the_tables_are_refused() {
    for nominal in ["0", "-1", "3150.0001", "3151", "900000000"] {
        for class in ["H7", "h6", "js6", "A11", "zc9"] {
            assert_eq!(
                refused(nominal, class),
                (
                    format!(
                        "nominal size {nominal} mm is outside the tables of ISO 286 (over 0 mm, up to 3150 mm)"
                    ),
                    None
                )
            );
        }
    }
    let h7: Class = "H7".parse().unwrap();
    for nominal in ["0.0000001", "3150"] {
        assert!(h7.limits(millimetres(nominal)).is_ok(), "{nominal}");
    }
}

#[test]
fn every_refusal_in_the_tables_names_a_class_that_is_defined() {
    let mut refusals = 0;
    for nominal in ["0.5", "1", "2", "3", "5", "10", "12", "20", "50", "60", "500", "600", "3150"] {
        let nominal = millimetres(nominal);
        for feature in [Feature::Hole, Feature::Shaft] {
            for letter in Letter::all() {
                for grade in Grade::all() {
                    let class = Class { feature, letter, grade };
                    let Err(error) = class.limits(nominal) else {
                        continue;
                    };
                    refusals += 1;
                    let instead = error
                        .instead()
                        .unwrap_or_else(|| panic!("{class} at {nominal}: nothing instead"));
                    assert_eq!(instead.feature, feature, "{class} at {nominal}");
                    assert!(
                        instead.limits(nominal).is_ok(),
                        "{class} at {nominal}: {instead} is not defined either"
                    );
                }
            }
        }
    }
    assert!(refusals > 1000, "{refusals}");
}
