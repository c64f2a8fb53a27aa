//! Readings with their uncertainty against a general library of uncertain
//! numbers, a general statistics crate, the decision rule of ISO 14253-1 and
//! worked examples of thermal growth.

use fits_checks::{Row, named, rows};
use fits_core::{
    Length, Limits,
    shop::{
        Verdict,
        cooling::{Air, Body, growth, size_at_20, wait},
        verdict::{Measured, Rule, Thermal},
    },
    size::Unit,
    standards::{
        instruments::{Instrument, Uncertainty},
        iso286::Feature,
        materials::{Family, Material},
    },
};
use proptest::prelude::*;
use statrs::distribution::{ChiSquared, ContinuousCDF, Normal};
use uom::si::{
    f64::{TemperatureCoefficient, TemperatureInterval, ThermodynamicTemperature},
    temperature_coefficient::per_kelvin,
    temperature_interval::kelvin,
    thermodynamic_temperature::{degree_celsius, degree_fahrenheit},
    time::second,
};

fn mm(text: &str) -> Length {
    format!("{text}mm").parse().expect(text)
}

fn um(count: f64) -> Length {
    #[allow(clippy::cast_possible_truncation, reason = "a few millimetres")]
    Length::from_tenth_nanometres((count * 1e4).round() as i64)
}

fn body(row: &Row, expansion: &str, temperature: &str) -> Body {
    Body {
        expansion: TemperatureCoefficient::new::<per_kelvin>(row.get::<f64>(expansion) * 1e-6),
        temperature: ThermodynamicTemperature::new::<degree_celsius>(row.get(temperature)),
    }
}

#[test]
fn sizes_and_uncertainties_as_a_general_library_has_them() {
    let list = rows("tests/published/uncertain_sizes.csv");
    assert_eq!(list.len(), 8);
    for row in list {
        let sd = |column: &str| TemperatureInterval::new::<kelvin>(row.get(column));
        let each =
            |column: &str| TemperatureCoefficient::new::<per_kelvin>(row.get::<f64>(column) * 1e-6);
        let thermal = Thermal {
            part: body(&row, "part_e6", "part_c"),
            gauge: body(&row, "gauge_e6", "gauge_c"),
            part_sd: sd("part_c_u"),
            gauge_sd: sd("gauge_c_u"),
            part_expansion_sd: each("part_e6_u"),
            gauge_expansion_sd: each("gauge_e6_u"),
        };
        let instrument = Uncertainty {
            repeat: row.length(row.text("repeat_um"), Unit::Micrometre),
            bias: row.length(row.text("bias_um"), Unit::Micrometre),
        };
        let readings: Vec<Length> = row.text("readings_mm").split('|').map(mm).collect();
        let measured =
            Measured::of(&[&readings], Some(instrument), Some(&thermal)).expect("sensible");
        let near = |what: &str, ours: Length, wanted: f64, within: f64| {
            let ours = ours.millimetres();
            assert!((ours - wanted).abs() <= within, "{row}: {what} {ours}, not {wanted}");
        };
        near("size", measured.size(), row.get("size_mm"), 1.5e-7);
        let wanted: f64 = row.get("standard_mm");
        let standard = measured.uncertainty().expect("an instrument");
        near("standard uncertainty", standard, wanted, 1e-4 * wanted);
    }
}

#[test]
fn the_decision_rule_as_printed() {
    let list = rows("tests/published/decisions.csv");
    assert_eq!(named(&list), 11);
    for row in list {
        let limits = Limits::new(mm(row.text("lower")), mm(row.text("upper"))).expect("limits");
        let standard = mm(row.text("expanded")).half();
        let instrument = Uncertainty { repeat: Length::ZERO, bias: standard };
        let reading = mm(row.text("reading"));
        let measured = Measured::of(&[&[reading]], Some(instrument), None).expect("a reading");
        for feature in [Feature::Hole, Feature::Shaft] {
            let judged = measured.judge(feature, limits, Rule::Edition2013).expect("in range");
            assert_eq!(judged.guard, mm(row.text("expanded")), "{row}");
            let verdict = match judged.verdict {
                Verdict::Good => "good",
                Verdict::TooClose => "neither",
                Verdict::Over | Verdict::CutMore => "bad",
            };
            assert_eq!(verdict, row.text("verdict"), "{row}");
            if !row.text("chance").is_empty() {
                let (wanted, within): (f64, f64) = (row.get("chance"), row.get("within"));
                assert!((judged.good - wanted).abs() <= within, "{row}: {}", judged.good);
            }
        }
    }
}

/// The chances of one reading, by a general statistics crate; the 2017 rule
/// says good, over or to cut where one of them comes to 95 %.
#[test]
fn chances_as_a_statistics_crate_has_them() {
    let limits = Limits::new(mm("20"), mm("20.021")).expect("limits");
    let mut seen = [0; 4];
    for repeat in [1.0, 2.5, 6.0] {
        for bias in [0.0, 1.5, 4.0] {
            for reading in (19_980..20_045).step_by(1) {
                let read = um(f64::from(reading));
                let instrument = Uncertainty { repeat: um(repeat), bias: um(bias) };
                let measured = Measured::of(&[&[read, read, read, read]], Some(instrument), None)
                    .expect("readings");
                let judged =
                    measured.judge(Feature::Hole, limits, Rule::Edition2017).expect("in range");
                let sd = f64::hypot(repeat / 2.0, bias);
                let normal = Normal::new(f64::from(reading), sd).expect("a spread");
                let (under, over) = (normal.cdf(20_000.0), 1.0 - normal.cdf(20_021.0));
                let good = 1.0 - under - over;
                for (ours, wanted) in
                    [(judged.good, good), (judged.over, over), (judged.under, under)]
                {
                    assert!((ours - wanted).abs() < 1e-9, "{reading}: {ours}, not {wanted}");
                }
                let near = |chance: f64| (chance - 0.95).abs() < 1e-6;
                if near(good) || near(over) || near(under) {
                    continue;
                }
                let (at, verdict) = if over >= 0.95 {
                    (0, Verdict::Over)
                } else if under >= 0.95 {
                    (1, Verdict::CutMore)
                } else if good >= 0.95 {
                    (2, Verdict::Good)
                } else {
                    (3, Verdict::TooClose)
                };
                seen[at] += 1;
                assert_eq!(judged.verdict, verdict, "{reading} {sd}");
            }
        }
    }
    assert!(seen.iter().all(|count| *count > 20), "{seen:?}");
}

/// Readings that scatter more than the instrument does, by the upper tail of
/// chi-square at one in a hundred.
#[test]
fn scatter_is_judged_as_a_statistics_crate_judges_it() {
    let instrument = Uncertainty { repeat: um(2.0), bias: um(1.5) };
    let (mut wide, mut narrow) = (0, 0);
    for count in 2_u32..12 {
        for apart in 1..14 {
            // Half of them here, half of them there.
            let readings: Vec<Length> =
                (0..count).map(|at| um(20_010.0 + f64::from(at % 2) * f64::from(apart))).collect();
            let measured = Measured::of(&[&readings], Some(instrument), None).expect("readings");
            let sizes: Vec<f64> = readings.iter().map(|size| size.millimetres() * 1e3).collect();
            let mean = sizes.iter().sum::<f64>() / f64::from(count);
            let squares: f64 = sizes.iter().map(|size| (size - mean).powi(2)).sum();
            let free = f64::from(count - 1);
            let chi = ChiSquared::new(free).expect("free");
            let tail = chi.sf(squares / 4.0);
            assert_eq!(measured.scatters(), tail < 0.01, "{count} readings {apart} apart: {tail}");
            let limits = Limits::new(mm("19"), mm("21")).expect("limits");
            let verdict =
                measured.judge(Feature::Hole, limits, Rule::Edition2017).expect("in range").verdict;
            // Far inside the limits, and still nothing is proven by such readings.
            let wanted = if tail < 0.01 { Verdict::TooClose } else { Verdict::Good };
            assert_eq!(verdict, wanted, "{count} readings {apart} apart");
            // The scatter seen counts instead of the instrument's.
            let repeat = if tail < 0.01 { (squares / free).sqrt() } else { 2.0 };
            let wanted = f64::hypot(repeat / f64::from(count).sqrt(), 1.5);
            let ours = measured.uncertainty().expect("an instrument").millimetres() * 1e3;
            assert!((ours - wanted).abs() < 1e-3, "{count} readings {apart} apart: {ours}");
            if tail < 0.01 { wide += 1 } else { narrow += 1 }
        }
    }
    assert!(wide > 20 && narrow > 20, "{wide} {narrow}");
}

/// 20.012 and 20.018 with a bore gauge of 2 and 1.5: each place by itself is
/// uncertain by sqrt(2² + 1.5²) = 2.5, and 3 short of the limit is 1.2 of it.
#[test]
fn the_uncertainty_shown_is_the_one_judged_by() {
    let limits = Limits::new(mm("20"), mm("20.021")).expect("limits");
    let instrument = Uncertainty { repeat: um(2.0), bias: um(1.5) };
    let places: [&[Length]; 2] = [&[mm("20.012")], &[mm("20.018")]];
    let measured = Measured::of(&places, Some(instrument), None).expect("readings");
    assert_eq!(measured.uncertainty(), Some(um(2.5)));
    let judged = measured.judge(Feature::Hole, limits, Rule::Edition2017).expect("in range");
    // The table of the normal distribution: 0.8849 below 1.2.
    assert!((judged.good - 0.8849).abs() < 1e-3, "{}", judged.good);
}

/// Places that differ by more than the instrument's scatter explains, once in
/// twenty: every one of them has to be inside.
#[test]
fn out_of_round_is_told_from_scatter() {
    let limits = Limits::new(mm("20"), mm("20.021")).expect("limits");
    let instrument = Uncertainty { repeat: um(1.0), bias: um(0.5) };
    let judged = |one: &str, other: &str| {
        let (one, other) = ([mm(one)], [mm(other)]);
        let measured = Measured::of(&[&one, &other], Some(instrument), None).expect("readings");
        let judged = measured.judge(Feature::Hole, limits, Rule::Edition2017).expect("in range");
        (measured.form().expect("two places"), judged)
    };
    let (form, good) = judged("20.012", "20.014");
    // 1.96 × √2 × 1 µm
    assert_eq!(form.explained, Some(um(2.7718)));
    assert!(!form.is_real());
    assert_eq!(good.verdict, Verdict::Good);
    let (form, oval) = judged("20.008", "20.016");
    assert!(form.is_real());
    assert_eq!(oval.verdict, Verdict::Good);
    let (_, over) = judged("20.006", "20.026");
    assert_eq!(over.verdict, Verdict::Over, "the mean is good, and one place is not");
    let (_, under) = judged("19.994", "20.008");
    assert_eq!(under.verdict, Verdict::CutMore);
    // Both chances at once, worked out by summing over the bias.
    let mut wanted = (0.0, 0.0);
    let normal = Normal::new(0.0, 1.0).expect("standard");
    for step in -4000..4000 {
        let z = (f64::from(step) + 0.5) / 500.0;
        let weight = normal.cdf(z + 0.001) - normal.cdf(z - 0.001);
        let inside = |size: f64| {
            let at = size + 0.5 * z;
            normal.cdf(20_021.0 - at) - normal.cdf(20_000.0 - at)
        };
        wanted.0 += weight * inside(20_001.5) * inside(20_018.5);
        wanted.1 += weight;
    }
    let (_, both) = judged("20.0015", "20.0185");
    assert!((both.good - wanted.0 / wanted.1).abs() < 1e-4, "{} {wanted:?}", both.good);
}

/// Cutting Tool Engineering, September 2012: an aluminium part 5 ft long grows
/// by 0.022 in from 60 to 90 °F, with 12.3 millionths per °F.
#[test]
fn growth_as_a_trade_magazine_works_it_out() {
    let expansion = TemperatureCoefficient::new::<per_kelvin>(12.3e-6 * 1.8);
    let at = |fahrenheit: f64| Body {
        expansion,
        temperature: ThermodynamicTemperature::new::<degree_fahrenheit>(fahrenheit),
    };
    let five_feet: Length = "60in".parse().expect("a size");
    let (cold, hot) = (
        growth(five_feet, at(60.0)).expect("sensible"),
        growth(five_feet, at(90.0)).expect("sensible"),
    );
    let grown = hot.checked_sub(cold).expect("in range").millimetres() / 25.4;
    assert!((grown - 0.022).abs() < 0.0005, "{grown}");
}

/// Growth for 1 in and 10 °F by material, in millionths of an inch, as shop
/// practice counts it; and 20 °F on a 2 in aluminium bore is half a thou.
#[test]
fn growth_as_a_shop_counts_it() {
    let inch = Length::INCH;
    let grown = |name: &str, size: Length, fahrenheit: f64| {
        let expansion = Material::find(name).expect(name).expansion().expect(name);
        let temperature = ThermodynamicTemperature::new::<degree_fahrenheit>(68.0 + fahrenheit);
        growth(size, Body { expansion, temperature }).expect("sensible").millimetres() / 25.4e-6
    };
    for (name, low, high) in [
        ("steel", 60.0, 70.0),
        ("stainless 304", 92.0, 100.0),
        ("brass", 105.0, 115.0),
        ("aluminium", 125.0, 136.0),
        ("grey iron", 55.0, 70.0),
    ] {
        let found = grown(name, inch, 10.0);
        assert!((low..=high).contains(&found), "{name}: {found} millionths");
    }
    let bore = grown("aluminium", inch.checked_mul(2).expect("in range"), 20.0);
    assert!((480.0..550.0).contains(&bore), "{bore} millionths: half a thou");
}

/// A bar cooling by Newton's law, stepped through second by second.
#[test]
fn waiting_as_a_stepped_bar_cools() {
    let expansion = TemperatureCoefficient::new::<per_kelvin>(11.7e-6);
    let at = |celsius: f64| ThermodynamicTemperature::new::<degree_celsius>(celsius);
    for (diameter, start, room, within) in [(20.0, 45.0, 20.0, 1.0), (60.0, 80.0, 24.0, 2.5)] {
        let part = Body { expansion, temperature: at(start) };
        let told = wait(um(diameter * 1e3), Family::Steel, part, at(room), um(within), Air::Still)
            .expect("sensible")
            .get::<second>();
        // 10 W/m²K over the skin, 3.8 MJ/m³K inside, for a metre of bar.
        let metres: f64 = diameter / 1e3;
        let skin = std::f64::consts::PI * metres;
        let inside = std::f64::consts::PI * metres * metres / 4.0;
        let (mut celsius, mut seconds) = (start, 0.0_f64);
        while diameter * 1e3 * 11.7e-6 * (celsius - room) > within {
            celsius -= 10.0 * skin * (celsius - room) / (inside * 3.8e6);
            seconds += 1.0;
        }
        assert!((told - seconds).abs() <= 0.002 * seconds + 2.0, "{told} {seconds}");
        let none = wait(um(diameter * 1e3), Family::Steel, part, at(start), um(1.0), Air::Still);
        assert!(none.expect("sensible").get::<second>().abs() < 1e-12);
    }
}

#[test]
fn nonsense_is_refused() {
    let steel = TemperatureCoefficient::new::<per_kelvin>(11.7e-6);
    for celsius in [-273.15, -100.0, 900.0, f64::NAN, f64::INFINITY] {
        let hot = Body {
            expansion: steel,
            temperature: ThermodynamicTemperature::new::<degree_celsius>(celsius),
        };
        assert!(size_at_20(mm("20"), hot, Body::at_reference()).is_err(), "{celsius}");
    }
    assert!(Measured::of(&[], None, None).is_err());
    assert!(Measured::of(&[&[]], None, None).is_err());
    assert!(Measured::of(&[&[Length::ZERO]], None, None).is_err());
    let micrometer = Instrument::find("mic").expect("listed");
    let error = micrometer.uncertainty(Feature::Hole, mm("20")).expect_err("it measures shafts");
    assert_eq!(error.to_string(), "a micrometer does not measure holes");
    assert!(error.advice().contains("bore gauge"), "{}", error.advice());
}

proptest! {
    /// What is read at 20 °C stands; what is warm and of what the gauge is of,
    /// beside the gauge, stands too.
    #[test]
    fn alike_and_alike_warm_reads_true(size in 1_000_i64..900_000, celsius in -40.0..120.0_f64) {
        let read = um(f64::from(i32::try_from(size).unwrap()));
        let steel = TemperatureCoefficient::new::<per_kelvin>(11.7e-6);
        let warm = Body { expansion: steel, temperature: ThermodynamicTemperature::new::<degree_celsius>(celsius) };
        prop_assert_eq!(size_at_20(read, warm, warm).unwrap(), read);
        prop_assert_eq!(size_at_20(read, Body::at_reference(), Body::at_reference()).unwrap(), read);
        let back = size_at_20(read, warm, Body::at_reference()).unwrap();
        let grown = back.checked_add(growth(back, warm).unwrap()).unwrap();
        prop_assert!(grown.tenth_nanometres().abs_diff(read.tenth_nanometres()) <= 2);
    }

    /// Good, over and to cut are all there is, for one place; a hole turned
    /// inside out is a shaft.
    #[test]
    fn a_shaft_is_a_hole_the_other_way(
        reading in 19_970_i32..20_050,
        repeat in 1_u32..90,
        bias in 0_u32..60,
    ) {
        let limits = Limits::new(mm("20"), mm("20.021")).unwrap();
        let instrument = Uncertainty {
            repeat: um(f64::from(repeat) / 10.0),
            bias: um(f64::from(bias) / 10.0),
        };
        let measured = Measured::of(&[&[um(f64::from(reading))]], Some(instrument), None).unwrap();
        let hole = measured.judge(Feature::Hole, limits, Rule::Edition2017).unwrap();
        prop_assert!((hole.good + hole.over + hole.under - 1.0).abs() < 1e-12);
        let mirror = um(40_021.0 - f64::from(reading));
        let other = Measured::of(&[&[mirror]], Some(instrument), None).unwrap();
        let shaft = other.judge(Feature::Shaft, limits, Rule::Edition2017).unwrap();
        prop_assert_eq!(hole.verdict, shaft.verdict);
        prop_assert!((hole.over - shaft.over).abs() < 1e-12);
    }
}
