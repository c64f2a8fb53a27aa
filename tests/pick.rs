//! The search for a standard fit: its table of preferred fits, worked examples,
//! and what holds for any size and range, against a search by brute force.

use std::fmt::Write as _;

use fits_checks::{hold_generated, rows};
use fits_core::{
    Fit, Length, Limits,
    shop::{Candidate, FitClasses, fits_with, nearest_b41, pick},
    standards::{
        b41,
        iso286::{Class, Feature, Grade, Letter},
    },
};
use proptest::prelude::*;

fn length(text: &str) -> Length {
    text.parse().expect(text)
}

fn range(lower: &str, upper: &str) -> Limits {
    Limits::new(length(lower), length(upper)).unwrap()
}

fn names(found: &[Candidate]) -> Vec<String> {
    found.iter().map(|candidate| candidate.classes.to_string()).collect()
}

#[test]
fn the_table_of_preferred_fits_is_what_the_data_give() {
    let list = rows("data/iso286/preferred_fits.csv");
    let mut out = format!(
        "//! Generated from `data/iso286/preferred_fits.csv` by `tests/pick.rs`; do not edit.\n\nuse super::pick::Preferred;\n\npub(super) static PREFERRED: [Preferred; {}] = [\n",
        list.len()
    );
    let part = |class: Class| {
        let letter = Letter::all().position(|letter| letter == class.letter).unwrap();
        format!("({letter}, {})", class.grade)
    };
    for row in &list {
        let (hole, shaft): (Class, Class) = (row.get("hole"), row.get("shaft"));
        assert!(["SEEN", "MEMORY"].contains(&row.text("status")) && !row.text("source").is_empty());
        // A pair of one hole and one shaft, and one of them is the basis.
        assert_eq!((hole.feature, shaft.feature), (Feature::Hole, Feature::Shaft), "{row}");
        assert!(hole.letter == Letter::H || shaft.letter == Letter::H, "{row}");
        writeln!(
            out,
            "    Preferred {{ hole: {}, shaft: {} }}, // {hole}/{shaft}",
            part(hole),
            part(shaft)
        )
        .unwrap();
    }
    out += "];\n";
    hold_generated("fits-core/src/shop/pick_table.rs", &out);
}

#[test]
fn preferred_fits_are_found_and_flagged() {
    let nominal = length("20mm");
    for row in rows("data/iso286/preferred_fits.csv") {
        let (hole, shaft) = (row.get("hole"), row.get("shaft"));
        let fit = Fit::of_classes(nominal, hole, shaft).unwrap();
        let found = pick(nominal, fit.clearance()).unwrap();
        let itself = found
            .iter()
            .find(|candidate| candidate.classes == FitClasses::Iso286 { hole, shaft })
            .unwrap_or_else(|| panic!("{row}: not found"));
        assert!(itself.preferred && itself.fit == fit, "{row}");
        // Its own range exactly: nothing is easier, so it leads.
        let leader = &found[0];
        assert!(leader.preferred, "{row}: {}", leader.classes);
        assert_eq!(leader.grades, itself.grades, "{row}: {}", leader.classes);
        assert!(
            leader.fit.clearance() == fit.clearance() || !hole.to_string().starts_with('H'),
            "{row}: {}",
            leader.classes
        );
    }
    let plain = pick(nominal, range("0mm", "0.05mm")).unwrap();
    assert!(plain.iter().any(|candidate| !candidate.preferred));
}

#[test]
fn worked_examples_come_out() {
    for (nominal, lower, upper, wanted, source) in [
        ("20mm", "0.007mm", "0.041mm", "H7/g6", "ANSI B4.2-1978, sliding fit at 20 mm"),
        (
            "50mm",
            "0.025mm",
            "0.089mm",
            "H8/f7",
            "Engineering fit, an encyclopedia's article: H8/f7 at 50 mm",
        ),
        ("50mm", "-0.018mm", "0.023mm", "H7/k6", "the same article: H7/k6 at 50 mm"),
        (
            "2in",
            "0.0025in",
            "0.0055in",
            "RC5",
            "Mott, Machine Elements in Mechanical Design, 4th ed., Example Problem 13-1",
        ),
        ("2in", "0.0012in", "0.0031in", "RC3", "a homework solution: RC3 at 2 in"),
        (
            "1in",
            "-0.0019in",
            "-0.0006in",
            "FN2",
            "Machinery's Handbook 27th ed., p. 663: FN2 at 1 in",
        ),
        (
            "1.25in",
            "-0.0024in",
            "-0.0008in",
            "FN2",
            "a homework solution: FN2 at 1.25 in, 0.8 to 2.4 thou",
        ),
    ] {
        let found = pick(length(nominal), range(lower, upper)).unwrap();
        assert_eq!(names(&found)[0], wanted, "{source}");
        assert_eq!(found[0].fit.clearance(), range(lower, upper), "{source}");
    }
}

#[test]
fn preferred_classes_come_first_then_the_coarser_grade() {
    // 20 H8/f7 is 20 to 74 um: H8 and f7 stand in ANSI B4.2's list, f8 does not.
    let order = |upper: &str| names(&pick(length("20mm"), range("0.02mm", upper)).unwrap());
    let before = |list: &[String], one: &str, other: &str| {
        let at = |name: &str| {
            list.iter().position(|found| found == name).unwrap_or_else(|| panic!("no {name}"))
        };
        assert!(at(one) < at(other), "{one} after {other}");
    };
    let list = order("0.086mm");
    before(&list, "H8/f7", "H8/f8");
    before(&list, "H8/f7", "H7/f7");
    before(&list, "H7/f7", "H8/f8");
    before(&list, "H8/f8", "H7/f6");
    let list = order("0.105mm");
    before(&list, "H8/f7", "H9/f8");
    before(&list, "H9/f8", "H8/f8");
}

/// ISO 286-1 has CD, EF and FG for fine mechanisms; nobody owns reamers or gauges
/// of them, nor of the two letters after Z.
#[test]
fn two_letters_come_last_and_an_inch_class_is_named_for_an_inch_size() {
    for (nominal, lower, upper) in
        [("1in", "0.001in", "0.003in"), ("20mm", "0.01mm", "0.06mm"), ("10mm", "0.005mm", "0.05mm")]
    {
        let found = names(&pick(length(nominal), range(lower, upper)).unwrap());
        let is_double = |name: &String| {
            let letters = |part: &str| part.chars().filter(char::is_ascii_alphabetic).count();
            name.contains('/')
                && name.split('/').any(|it| letters(it) > 1 && !it.to_lowercase().starts_with("js"))
        };
        assert!(found.iter().any(is_double), "{found:?}");
        assert!(found.is_sorted_by_key(is_double), "{found:?}");
    }
    // ASME B4.1 at 1 in: RC4 0.8 to 2.8 thou, RC5 1.6 to 4.0; 1 to 3 holds neither.
    let near = nearest_b41(length("1in"), range("0.001in", "0.003in")).unwrap().unwrap();
    assert_eq!(near.classes.to_string(), "RC4");
    assert_eq!(near.outside, length("0.0002in"));
    let text = fits_checks::ask(
        &mut fits_repl::session::Session::new(),
        "pick 1in clearance 0.001in..0.003in",
    );
    assert_eq!(text["nearest_b41"]["class"], "RC4", "{text}");
}

#[test]
fn when_nothing_fits_the_nearest_are_named_as_misses() {
    let wanted = range("0.010mm", "0.012mm");
    let found = pick(length("20mm"), wanted).unwrap();
    assert_eq!(found.len(), 5);
    assert!(found.iter().all(Candidate::is_miss));
    assert!(found.is_sorted_by_key(|candidate| candidate.outside));
    for candidate in &found {
        assert_eq!(candidate.outside, sticks_out(&candidate.fit, wanted), "{}", candidate.classes);
    }
    let nearest =
        everything(length("20mm")).iter().map(|(_, fit)| sticks_out(fit, wanted)).min().unwrap();
    assert_eq!(found[0].outside, nearest);
    // A wanted range that is one point is a range too.
    assert!(pick(length("20mm"), range("0mm", "0mm")).unwrap()[0].is_miss());
    assert!(pick(length("0mm"), wanted).unwrap_err().is_out_of_table());
    assert!(pick(length("3151mm"), wanted).unwrap_err().is_out_of_table());
    // Ends of what a length can say neither panic nor wrap.
    let end = Limits::new(Length::MAX, Length::MAX).unwrap();
    assert!(pick(length("20mm"), end).unwrap()[0].is_miss());
}

/// Every fit that the search speaks of, one by one through the public face.
fn everything(nominal: Length) -> Vec<(FitClasses, Fit)> {
    let defined = |feature| -> Vec<Class> {
        (4..=13)
            .flat_map(|number| {
                Letter::all().map(move |letter| Class {
                    feature,
                    letter,
                    grade: Grade::it(number).unwrap(),
                })
            })
            .filter(|class| class.limits(nominal).is_ok())
            .collect()
    };
    let (holes, shafts) = (defined(Feature::Hole), defined(Feature::Shaft));
    let mut all = Vec::new();
    for &hole in &holes {
        for &shaft in &shafts {
            if hole.letter == Letter::H || shaft.letter == Letter::H {
                let fit = Fit::of_classes(nominal, hole, shaft).unwrap();
                all.push((FitClasses::Iso286 { hole, shaft }, fit));
            }
        }
    }
    for class in b41::Class::all() {
        if let Ok(fit) = class.fit(nominal) {
            all.push((FitClasses::B41(class), fit));
        }
    }
    all
}

/// 0 where both classes stand in the list of preferred fits, 2 with two letters.
fn rarity(classes: FitClasses) -> u8 {
    let FitClasses::Iso286 { hole, shaft } = classes else { return 0 };
    let list = rows("data/iso286/preferred_fits.csv");
    let listed =
        |class: Class, column| list.iter().any(|row| row.text(column) == class.to_string());
    if listed(hole, "hole") && listed(shaft, "shaft") {
        return 0;
    }
    let double = ["cd", "ef", "fg", "za", "zb", "zc"];
    let starts =
        |class: Class| double.iter().any(|it| class.to_string().to_lowercase().starts_with(it));
    1 + u8::from(starts(hole) || starts(shaft))
}

/// How far a fit's clearance reaches outside a range, on the worse side.
fn sticks_out(fit: &Fit, wanted: Limits) -> Length {
    let (has, wants) = (fit.clearance(), wanted);
    let below = wants.lower().checked_sub(has.lower()).unwrap();
    let above = has.upper().checked_sub(wants.upper()).unwrap();
    below.max(above).max(Length::ZERO)
}

/// What two parts of a clearance could be of. ASME B4.1-1967, Table 2 (Machinery's
/// Handbook), 0.71 to 1.19 in, in thousandths: RC4 0.8 to 2.8, RC5 1.6 to 4.0, RC6 1.6
/// to 4.8, RC7 2.5 to 5.7, RC3 0.8 to 2.1, RC8 4.5 to 9.2.
#[test]
fn classes_that_hold_a_clearance() {
    let found = fits_with(length("3/4in"), length("0.0027in")).unwrap();
    let has = |class: &str| found.iter().any(|fit| fit.to_string() == class);
    for class in ["RC4", "RC5", "RC6", "RC7"] {
        assert!(has(class), "{class} in {found:?}");
    }
    for class in ["RC3", "RC8"] {
        assert!(!has(class), "{class}");
    }
    // By brute force: those of the preferred fits whose own range holds it.
    for micrometres in -60..80_i64 {
        let clearance = Length::from_tenth_nanometres(micrometres * 10_000);
        let nominal = length("20mm");
        let found: Vec<String> =
            fits_with(nominal, clearance).unwrap().iter().map(ToString::to_string).collect();
        let point = Limits::new(clearance, clearance).unwrap();
        for class in b41::Class::all() {
            let Ok(fit) = class.fit(nominal) else { continue };
            let holds = fit.clearance().contains(clearance);
            assert_eq!(found.contains(&class.to_string()), holds, "{class} {micrometres}");
        }
        for candidate in pick(nominal, point).unwrap() {
            // Nothing of the standards is narrower than a point.
            assert!(candidate.is_miss());
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    #[test]
    fn the_search_finds_what_brute_force_finds(
        micrometres in 200_i64..2_000_000,
        lower in -300_i64..300,
        width in 0_i64..400,
    ) {
        let um = |count| Length::from_micrometres(count).unwrap();
        let nominal = um(micrometres);
        let wanted = Limits::new(um(lower), um(lower + width)).unwrap();
        let found = pick(nominal, wanted).unwrap();
        let all = everything(nominal);
        let inside: Vec<_> = all
            .iter()
            .filter(|(_, fit)| {
                wanted.contains(fit.clearance().lower()) && wanted.contains(fit.clearance().upper())
            })
            .collect();
        for candidate in &found {
            let own = all.iter().find(|(classes, _)| *classes == candidate.classes);
            prop_assert_eq!(own.map(|(_, fit)| fit), Some(&candidate.fit), "{}", candidate.classes);
            prop_assert_eq!(candidate.outside, sticks_out(&candidate.fit, wanted));
            prop_assert_eq!(candidate.is_miss(), inside.is_empty(), "{}", candidate.classes);
        }
        if inside.is_empty() {
            let nearest = all.iter().map(|(_, fit)| sticks_out(fit, wanted)).min().unwrap();
            prop_assert_eq!(found.len(), 5);
            prop_assert_eq!(found[0].outside, nearest);
            prop_assert!(found.is_sorted_by_key(|candidate| candidate.outside));
        } else {
            prop_assert_eq!(found.len(), inside.len());
            // Preferred classes, then one letter, then two; coarser first, a preferred
            // fit counting one more and first of its equals; then like grades, a shaft coarser than its hole one step
            // worse; then the middle of the range.
            let in_order = found.is_sorted_by_key(|candidate| {
                let (hole, shaft) = candidate.grades;
                let ease = hole + shaft + u8::from(candidate.preferred);
                let unlike = hole.abs_diff(shaft) + u8::from(shaft > hole);
                let clearance = candidate.fit.clearance();
                let doubled = |limits: Limits| {
                    limits.lower().tenth_nanometres() + limits.upper().tenth_nanometres()
                };
                let off_centre = doubled(clearance).abs_diff(doubled(wanted));
                let rare = rarity(candidate.classes);
                (rare, std::cmp::Reverse(ease), !candidate.preferred, unlike, off_centre)
            });
            prop_assert!(in_order);
        }
    }
}
