//! The filter against brute force: everything unknown of one cut and its reading
//! is summed over a grid, kind of machine by kind, with the definition of a
//! conditional mean and nothing else (any text on probability).

use fits_core::{
    Length, Limits,
    shop::adviser::{Adviser, Prior, Settings},
    standards::{instruments::Uncertainty, iso286::Feature},
};

fn um(count: f64) -> Length {
    #[allow(clippy::cast_possible_truncation, reason = "a few millimetres")]
    Length::from_tenth_nanometres((count * 1e4).round() as i64)
}

/// Places of a standard normal quantity and their weights: evenly, from -5 to 5.
fn even(count: i32) -> Vec<(f64, f64)> {
    let step = 10.0 / f64::from(count - 1);
    let places = (0..count).map(|at| -5.0 + f64::from(at) * step);
    places.map(|z| (z, (-z * z / 2.0).exp())).collect()
}

const REPEAT: f64 = 2.5;
const BIAS: f64 = 1.5;
const OFFSET: f64 = 6.0;
const SCATTER: f64 = 2.0;

/// What is believed: mean and standard deviation of size, cut factor and offset.
type Believed = [(f64, f64); 3];

/// Start and reading in micrometres, as `fits-core/src/shop/adviser/kinds.rs`
/// states the kinds: share, scatter, spread of the cut factor.
fn summed(start: f64, dial: f64, read: f64) -> Believed {
    const KINDS: [(f64, f64, f64); 4] =
        [(0.798, 1.0, 1.0), (0.115, 2.0, 1.0), (0.042, 4.0, 1.0), (0.045, 1.0, 3.0)];
    let (fine, few) = (even(81), even(11));
    let (mut sum, mut first, mut second) = (0.0, [0.0; 3], [0.0; 3]);
    for (share, times_scatter, times_gain) in KINDS {
        // The weights of a kind sum to its share.
        let all: f64 = fine.iter().map(|it| it.1).sum::<f64>()
            * few.iter().map(|it| it.1).sum::<f64>().powi(4);
        for (gain, of_gain) in &fine {
            let gain = 0.97 + 0.04 * times_gain * gain;
            for (offset, of_offset) in &few {
                let offset = OFFSET * offset;
                for (pass, of_pass) in &few {
                    let took = gain * dial + offset + SCATTER * times_scatter * pass;
                    for (bias, of_bias) in &few {
                        let bias = BIAS * bias;
                        for (first_off, of_first) in &few {
                            let size = start - bias - REPEAT * first_off + took;
                            let off = (read - size - bias) / REPEAT;
                            let weight = share / all
                                * of_gain
                                * of_offset
                                * of_pass
                                * of_bias
                                * of_first
                                * (-off * off / 2.0).exp();
                            sum += weight;
                            for (at, value) in [size, gain, offset].into_iter().enumerate() {
                                first[at] += weight * value;
                                second[at] += weight * value * value;
                            }
                        }
                    }
                }
            }
        }
    }
    let of = |at: usize| {
        let mean = first[at] / sum;
        (mean, (second[at] / sum - mean * mean).max(0.0).sqrt())
    };
    [of(0), of(1), of(2)]
}

#[test]
fn a_cut_and_its_reading_agree_with_a_sum_over_everything() {
    // Light by a twentieth, and heavy.
    for (dial, read) in [(300.0, 19_876.0), (80.0, 19_684.0)] {
        let prior = Prior {
            gain: 0.97,
            gain_sd: 0.04,
            offset: Length::ZERO,
            offset_sd: um(OFFSET),
            scatter: um(SCATTER),
        };
        let limits = Limits::new(um(20_000.0), um(20_021.0)).expect("limits");
        let gauge = Uncertainty { repeat: um(REPEAT), bias: um(BIAS) };
        let start = um(19_600.0);
        let mut adviser =
            Adviser::new(limits, Feature::Hole, start, prior, gauge, Settings::default())
                .expect("sensible");
        adviser.cut(um(dial), &[um(read)]).expect("in range");
        let known = adviser.estimate().expect("in range");
        let [size, gain, offset] = summed(19_600.0, dial, read);
        let near = |what: &str, ours: f64, wanted: f64, within: f64| {
            assert!((ours - wanted).abs() < within, "{dial}, {read}: {what} {ours}, {wanted}");
        };
        near("size", known.size.millimetres() * 1e3, size.0, 0.01);
        near("its deviation", known.size_sd.millimetres() * 1e3, size.1, 0.01);
        near("cut factor", known.gain, gain.0, 1e-4);
        near("its deviation", known.gain_sd, gain.1, 1e-4);
        near("offset", known.offset.millimetres() * 1e3, offset.0, 0.02);
        near("its deviation", known.offset_sd.millimetres() * 1e3, offset.1, 0.02);
    }
}
