//! What a part near its size is worth if the rest is played as well as can
//! be: a dynamic programme over three figures.
//!
//! The figures: how far the best estimate of the size is from the middle of
//! the limits, how well the readings know it, and how well the next cut is
//! known. A Gaussian model keeps the last two the same whatever is read, so
//! each cut and reading moves the first alone. Every sweep looks one step
//! further ahead. The cut factor is taken for known here; the step that is
//! weighed exactly, in [`next`](super::next), knows better.
//!
//! Source: R. E. Bellman, Dynamic Programming (Princeton, 1957).

use std::sync::{Arc, OnceLock};

use crate::shop::chance::Normal;

/// What a pass costs, as a chance of a good part.
pub(super) const PASS: f64 = 0.0165;
/// What a reading costs.
pub(super) const READING: f64 = 0.003;
/// How often to read after a pass, or instead of one.
pub(super) const READINGS: [u32; 3] = [1, 2, 4];
/// Readings are weighed at so many places, with Gauss and Hermite's weights
/// for the normal distribution (Abramowitz and Stegun, table 25.10, n = 7).
pub(super) const NODES: [(f64, f64); 7] = [
    (-3.750_439_717_725_742, 0.000_548_268_855_972_218),
    (-2.366_759_410_734_541, 0.030_757_123_967_586_5),
    (-1.154_405_394_739_968, 0.240_123_178_605_012_7),
    (0.0, 0.457_142_857_142_857_1),
    (1.154_405_394_739_968, 0.240_123_178_605_012_7),
    (2.366_759_410_734_541, 0.030_757_123_967_586_5),
    (3.750_439_717_725_742, 0.000_548_268_855_972_218),
];
/// Figures of one half tolerance.
const FINE: f64 = 10.0;
/// Looked at from so many half tolerances before the middle, to two past it.
const FROM: f64 = 7.0;
const PAST: f64 = 1.5;
/// How well readings know the size, as parts of one reading's scatter.
const KNOWN: [f64; 3] = [1.0, 0.6, 0.35];
/// How well a cut is known, as parts of what is known before any.
const TOOL: [f64; 5] = [0.0, 0.2, 0.4, 0.7, 1.0];
const SWEEPS: u32 = 8;
/// A sweep that changes no value by more is the last.
const SETTLED: f64 = 5e-4;

/// The figures of a job that its worth depends on, in micrometres.
#[derive(Clone, Copy, Debug)]
pub(super) struct Terms {
    pub(super) half: f64,
    pub(super) scatter: f64,
    pub(super) repeat: f64,
    pub(super) bias: f64,
    /// What can be dialled near size: whole counts of this, from the least.
    pub(super) part: f64,
    pub(super) least: f64,
    /// What the setting of such a part is off by.
    pub(super) setting: f64,
    /// Known of a small cut before the first.
    pub(super) tool: f64,
    pub(super) risk: f64,
    /// How much worse a part with too much off is than one with metal left.
    pub(super) scrap: f64,
}

impl Terms {
    /// How far off a size may be after a cut, squared.
    fn after_cut(&self, known: f64, tool: f64) -> f64 {
        known * known + tool * tool + self.scatter * self.scatter + self.setting * self.setting
    }
}

/// A figure of a row, and how near to the next one.
#[derive(Clone, Copy, Debug)]
struct Near {
    low: usize,
    share: f64,
}

impl Near {
    fn of(self, row: &[Worth]) -> Worth {
        let (near, far) = (row[self.low], row[self.low + 1]);
        Worth {
            value: near.value + self.share * (far.value - near.value),
            good: near.good + self.share * (far.good - near.good),
        }
    }
}

/// The chance of too much off at each figure of a row, now and after a cut to there.
struct Over {
    now: Vec<f64>,
    after_cut: Vec<f64>,
}

/// Reading so often, after a cut or instead of one.
struct Way {
    is_cut: bool,
    cost: f64,
    place: Between,
    /// Of each figure of the row those that may be read next.
    next: Vec<[Near; NODES.len()]>,
}

/// What no sweep changes of a row.
struct Moves {
    ways: Vec<Way>,
    over: Over,
}

/// Value, and the chance of a good part, of playing on.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Worth {
    pub(super) value: f64,
    pub(super) good: f64,
}

impl Worth {
    pub(super) fn add(&mut self, weight: f64, other: Self) {
        self.value += weight * other.value;
        self.good += weight * other.good;
    }
}

/// The table, made when it is first asked, and shared by every adviser that
/// was copied from the first.
#[derive(Clone, Debug, Default)]
pub(super) struct Shared(Arc<OnceLock<Ahead>>);

impl PartialEq for Shared {
    /// It follows from the other figures of an adviser.
    fn eq(&self, _: &Self) -> bool {
        true
    }
}

impl Shared {
    pub(super) fn of(&self, terms: impl FnOnce() -> Terms) -> &Ahead {
        self.0.get_or_init(|| Ahead::new(terms()))
    }
}

#[derive(Debug)]
pub(super) struct Ahead {
    terms: Terms,
    first: f64,
    step: f64,
    /// Figures of a row.
    count: usize,
    /// One row for each pair of how well size and tool are known.
    rows: Vec<Vec<Worth>>,
}

/// Between which rows, and how near to each.
#[derive(Clone, Copy, Debug)]
pub(super) struct Between([(usize, f64); 4]);

/// Where a figure lies among falling or rising marks.
fn among(marks: &[f64], value: f64) -> (usize, f64) {
    let rising = marks[0] < marks[marks.len() - 1];
    for at in 0..marks.len() - 1 {
        let (from, to) = (marks[at], marks[at + 1]);
        let inside = if rising { value <= to } else { value >= to };
        if inside || at + 2 == marks.len() {
            return (at, ((value - from) / (to - from)).clamp(0.0, 1.0));
        }
    }
    (0, 0.0)
}

impl Ahead {
    fn new(terms: Terms) -> Self {
        let step = (terms.half / FINE).max(1e-3);
        let first = -FROM * terms.half.max(1e-3 * FINE);
        #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "72 or so")]
        let count = ((FROM + PAST) * FINE) as usize + 1;
        let mut table = Self { terms, first, step, count, rows: Vec::new() };
        let (mut stops, mut moves) = (Vec::new(), Vec::new());
        for known in KNOWN {
            for tool in TOOL {
                let sd = libm::hypot(known * terms.repeat, terms.bias);
                stops.push(
                    (0..count)
                        .map(|index| table.stop(Normal { mean: table.mean(index), sd }))
                        .collect::<Vec<_>>(),
                );
                moves.push(table.moves(known * terms.repeat, tool * terms.tool));
            }
        }
        let cuts: Vec<Vec<Near>> = (0..count).map(|index| table.cuts(index)).collect();
        table.rows.clone_from(&stops);
        for _ in 0..SWEEPS {
            let mut rows = stops.clone();
            for (row, moves) in rows.iter_mut().zip(&moves) {
                table.sweep(row, moves, &cuts);
            }
            let moved = rows.iter().flatten().zip(table.rows.iter().flatten());
            let most = moved.fold(0.0, |most: f64, (new, old)| most.max(new.value - old.value));
            table.rows = rows;
            if most < SETTLED {
                break;
            }
        }
        table
    }

    /// The figure at a place of a row.
    fn mean(&self, index: usize) -> f64 {
        #[allow(clippy::cast_precision_loss, reason = "72 or so")]
        let index = index as f64;
        self.first + index * self.step
    }

    /// What can be done where size and tool are known so well.
    fn moves(&self, known: f64, tool: f64) -> Moves {
        let mut ways = Vec::with_capacity(2 * READINGS.len());
        for is_cut in [true, false] {
            ways.extend(READINGS.iter().filter_map(|times| self.way(known, tool, is_cut, *times)));
        }
        let after_cut = self.over(self.terms.after_cut(known, tool));
        Moves { ways, over: Over { now: self.over(known * known), after_cut } }
    }

    fn way(&self, known: f64, tool: f64, is_cut: bool, readings: u32) -> Option<Way> {
        let terms = &self.terms;
        let before = if is_cut { terms.after_cut(known, tool) } else { known * known };
        let noise = terms.repeat * terms.repeat / f64::from(readings);
        let read = before + noise;
        if read <= 0.0 {
            return None;
        }
        let moves = before / libm::sqrt(read);
        let size = libm::sqrt((before * noise / read).max(0.0));
        let taught =
            if is_cut { libm::sqrt(tool * tool * (1.0 - tool * tool / read)) } else { tool };
        let cost = READING * f64::from(readings) + if is_cut { PASS } else { 0.0 };
        let next = |index| NODES.map(|(z, _)| self.near(self.mean(index) + z * moves));
        let next = (0..self.count).map(next).collect();
        Some(Way { is_cut, cost, place: self.place(size, taught), next })
    }

    /// The chance of too much off where the size is known so well.
    fn over(&self, variance: f64) -> Vec<f64> {
        let sd = libm::sqrt(variance + self.terms.bias * self.terms.bias);
        let of = |index| Normal { mean: self.mean(index), sd }.above(self.terms.half);
        (0..self.count).map(of).collect()
    }

    /// Where the cuts lead to that can be dialled at a figure, the least first.
    fn cuts(&self, index: usize) -> Vec<Near> {
        let terms = &self.terms;
        let mut cut = libm::ceil(terms.least / terms.part - 1e-9).max(1.0) * terms.part;
        let reach = -self.mean(index) + 0.75 * terms.half;
        // Cuts that leave far more than the table needs to compare.
        let short = reach - 5.0 * terms.half;
        if short > cut {
            cut = libm::ceil(short / terms.part) * terms.part;
        }
        let mut cuts = Vec::new();
        while cut <= reach {
            cuts.push(self.near(self.mean(index) + cut));
            cut += terms.part;
        }
        cuts
    }

    /// Leave the part as it is.
    pub(super) fn stop(&self, size: Normal) -> Worth {
        let good = size.between(-self.terms.half, self.terms.half);
        Worth { value: good - self.terms.scrap * size.above(self.terms.half), good }
    }

    /// One more step before what the table knows.
    fn sweep(&self, row: &mut [Worth], moves: &Moves, cuts: &[Vec<Near>]) {
        let (Moves { ways, over }, terms) = (moves, &self.terms);
        for way in ways {
            let there = self.blended(&way.place);
            let after = way.next.iter().map(|next| {
                let mut sum = Worth { value: -way.cost, good: 0.0 };
                for (Near { low, share }, (_, weight)) in next.iter().zip(NODES) {
                    sum.add(weight * (1.0 - share), there[*low]);
                    sum.add(weight * share, there[*low + 1]);
                }
                sum
            });
            if !way.is_cut {
                for (best, found) in row.iter_mut().zip(after) {
                    if found.value > best.value {
                        *best = found;
                    }
                }
                continue;
            }
            let after: Vec<Worth> = after.collect();
            for ((best, cuts), now) in row.iter_mut().zip(cuts).zip(&over.now) {
                if *now > terms.risk {
                    break;
                }
                for cut in cuts {
                    let (near, far) = (over.after_cut[cut.low], over.after_cut[cut.low + 1]);
                    let risk = near + cut.share * (far - near);
                    if risk > terms.risk {
                        break;
                    }
                    let mut found = cut.of(&after);
                    // Metal does not come back.
                    let more = (now - risk).max(0.0).min(found.good);
                    found.value -= more * (1.0 + terms.scrap);
                    found.good -= more;
                    if found.value > best.value {
                        *best = found;
                    }
                }
            }
        }
    }

    fn near(&self, mean: f64) -> Near {
        let last = self.count - 1;
        #[allow(clippy::cast_precision_loss, reason = "72 or so")]
        let place = ((mean - self.first) / self.step).clamp(0.0, last as f64);
        #[allow(
            clippy::cast_possible_truncation,
            clippy::cast_sign_loss,
            reason = "within the row"
        )]
        let low = (place as usize).min(last - 1);
        #[allow(clippy::cast_precision_loss, reason = "72 or so")]
        let share = place - low as f64;
        Near { low, share }
    }

    /// Where size and tool are known so well, in micrometres.
    pub(super) fn place(&self, known: f64, tool: f64) -> Between {
        let share = |value: f64, of: f64| if of > 0.0 { value / of } else { 0.0 };
        let (known, k) = among(&KNOWN, share(known, self.terms.repeat));
        let (tool, t) = among(&TOOL, share(tool, self.terms.tool));
        let row = |known: usize, tool: usize| known * TOOL.len() + tool;
        Between([
            (row(known, tool), (1.0 - k) * (1.0 - t)),
            (row(known + 1, tool), k * (1.0 - t)),
            (row(known, tool + 1), (1.0 - k) * t),
            (row(known + 1, tool + 1), k * t),
        ])
    }

    /// The row between rows.
    fn blended(&self, place: &Between) -> Vec<Worth> {
        let mut row = vec![Worth::default(); self.count];
        for (from, weight) in place.0 {
            if weight > 0.0 {
                for (sum, worth) in row.iter_mut().zip(&self.rows[from]) {
                    sum.add(weight, *worth);
                }
            }
        }
        row
    }

    /// What a part is worth whose best estimate is so far past the middle.
    pub(super) fn at(&self, place: &Between, mean: f64) -> Worth {
        let Near { low, share } = self.near(mean);
        let mut sum = Worth::default();
        for (row, weight) in place.0 {
            if weight > 0.0 {
                sum.add(weight * (1.0 - share), self.rows[row][low]);
                sum.add(weight * share, self.rows[row][low + 1]);
            }
        }
        sum
    }
}
