//! Stacks put together at random, many times over.
//!
//! The same seed gives the same figures for any number of threads: the runs
//! are cut into pieces of fixed size, each with a stream of its own (xoshiro
//! 256++, 2^128 draws apart), and the pieces are added up in their order.

use std::thread;

use rand_xoshiro::{
    Xoshiro256PlusPlus,
    rand_core::{Rng as _, SeedableRng as _},
};

use super::{
    Link, Stack, counts, nearest,
    spread::{CELLS, Quantiles, Spread},
};
use crate::{
    error::Error,
    size::{Length, Limits},
    speech::say,
};

/// Runs that draw from one stream.
const PIECE: u64 = 1 << 16;
/// Runs worked through together, so that one table of a spread stays at hand.
const BLOCK: usize = 1024;
/// Steps of the worst case in which the runs are counted.
const BINS: usize = 1 << 13;
/// The most draws: what a machine does in some seconds.
const MOST_DRAWS: u64 = 1_000_000_000;

/// How to simulate.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[expect(
    clippy::exhaustive_structs,
    reason = "it is built whole: what is new must be said by whoever builds one"
)]
pub struct Runs {
    /// How many stacks are put together.
    pub runs: u64,
    /// Where the random numbers start: the same seed, the same figures.
    pub seed: u64,
    /// How many threads share the work. The figures do not depend on it.
    pub threads: usize,
}

/// What simulated stacks came to.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct Simulated {
    /// How many there were.
    pub runs: u64,
    /// Where the random numbers started.
    pub seed: u64,
    /// The mean play.
    pub mean: Length,
    /// The play's standard deviation.
    pub deviation: Length,
    /// The least play met.
    pub least: Length,
    /// The greatest play met.
    pub greatest: Length,
    /// The share of stacks without play: they bind.
    pub below_nought: f64,
    /// The share inside the wanted play, where one was wanted.
    pub inside: Option<f64>,
    #[cfg_attr(feature = "serde", serde(skip))]
    worst: Limits,
    #[cfg_attr(feature = "serde", serde(skip))]
    bins: Vec<u64>,
}

impl Stack {
    /// Puts the stack together at random, every part on its own anywhere in
    /// its limits by its spread.
    ///
    /// A size is taken linearly between 2049 quantiles of its spread: the
    /// variance is off by less than a ten-thousandth part.
    ///
    /// ```
    /// use fits_core::{Limits, shop::stack::{Direction, Link, Runs, Stack}};
    /// let limits = Limits::new("9.9mm".parse()?, "10.1mm".parse()?)?;
    /// let link = |direction| Link::new(direction, limits);
    /// let stack = Stack::new(vec![link(Direction::Adds), link(Direction::TakesAway)])?;
    /// let found = stack.simulate(Runs { runs: 100_000, seed: 1, threads: 2 }, None)?;
    /// assert!((found.below_nought - 0.5).abs() < 0.01);
    /// assert_eq!(found, stack.simulate(Runs { runs: 100_000, seed: 1, threads: 1 }, None)?);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    ///
    /// # Errors
    /// No runs, or more draws than some seconds take.
    pub fn simulate(&self, how: Runs, wanted: Option<Limits>) -> Result<Simulated, Error> {
        let parts: u64 = self.links.iter().map(|link| u64::from(link.count)).sum();
        let most = MOST_DRAWS / parts.max(1);
        if how.runs == 0 || how.runs > most {
            return Err(Error::no_plan(say!(
                "{} runs of {} parts: give 1 to {} runs",
                how.runs,
                parts,
                most
            )));
        }
        let work = Work::new(self, how, wanted);
        let mut pieces = work.shared(how.threads);
        // Sums of floating-point numbers keep their order.
        pieces.sort_by_key(|piece| piece.number);
        Ok(work.summed_up(&pieces, how))
    }
}

impl Simulated {
    /// The play that this share of the stacks stays at or below.
    ///
    /// ```
    /// use fits_core::{Limits, shop::stack::{Direction, Link, Runs, Stack}};
    /// let link = |direction, lower: &str, upper: &str| {
    ///     let limits = Limits::new(lower.parse()?, upper.parse()?)?;
    ///     Ok::<_, fits_core::Error>(Link::new(direction, limits))
    /// };
    /// let stack = Stack::new(vec![
    ///     link(Direction::Adds, "20mm", "20.05mm")?,
    ///     link(Direction::TakesAway, "19.75mm", "19.9mm")?,
    /// ])?;
    /// let found = stack.simulate(Runs { runs: 10_000, seed: 1, threads: 1 }, None)?;
    /// let inside = Limits::new(found.quantile(0.01), found.quantile(0.99))?;
    /// assert!(stack.worst().contains(inside.lower()) && stack.root_sum_square()?.contains(stack.aim()));
    /// assert_eq!(found.histogram(10).iter().sum::<u64>(), 10_000);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn quantile(&self, share: f64) -> Length {
        let wanted = share.clamp(0.0, 1.0) * whole(self.runs);
        let mut below = 0.0;
        for (at, &count) in self.bins.iter().enumerate() {
            let here = whole(count);
            if count > 0 && below + here >= wanted {
                let inside = ((wanted - below) / here).clamp(0.0, 1.0);
                return self.edge(at, inside).clamp(self.least, self.greatest);
            }
            below += here;
        }
        self.greatest
    }

    /// The runs in so many equal steps from the least play met to the
    /// greatest.
    ///
    /// ```
    /// use fits_core::{Limits, shop::stack::{Direction, Link, Runs, Stack}};
    /// let limits = Limits::new("1.35mm".parse()?, "1.45mm".parse()?)?;
    /// let stack = Stack::new(vec![Link::new(Direction::Adds, limits).times(4)])?;
    /// let found = stack.simulate(Runs { runs: 10_000, seed: 1, threads: 1 }, None)?;
    /// let bars = found.histogram(5);
    /// assert_eq!((bars.len(), bars.iter().sum::<u64>()), (5, 10_000));
    /// assert!(bars[2] > bars[0], "the middle is likelier than an end");
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn histogram(&self, steps: usize) -> Vec<u64> {
        let mut out = vec![0; steps];
        let (from, to) = (counts(self.least), counts(self.greatest));
        for (at, &count) in self.bins.iter().enumerate() {
            let place = (counts(self.edge(at, 0.5)) - from) / (to - from);
            // Not a number where all runs are alike: the first step.
            #[allow(
                clippy::cast_possible_truncation,
                clippy::cast_sign_loss,
                reason = "a cast saturates"
            )]
            let step = (place * whole_of(steps)) as usize;
            if let Some(slot) = out.get_mut(step.min(steps.saturating_sub(1))) {
                *slot += count;
            }
        }
        out
    }

    /// A place inside a bin, as play.
    fn edge(&self, bin: usize, inside: f64) -> Length {
        let width = counts(self.worst.tolerance()) / whole_of(BINS);
        nearest(counts(self.worst.lower()) + (whole_of(bin) + inside) * width)
    }
}

/// What every piece needs to know.
struct Work {
    runs: u64,
    /// One part each: its table, and its tolerance in counts of 0.1 nm.
    parts: Vec<(usize, f64)>,
    tables: [Quantiles; 3],
    streams: Vec<Xoshiro256PlusPlus>,
    worst: Limits,
    /// Bins a count of 0.1 nm; zero where nothing varies.
    bins_a_count: f64,
    wanted: Option<(f64, f64)>,
}

/// What one piece comes to. Play is counted from the least worst case up.
struct Piece {
    number: u64,
    sum: f64,
    squares: f64,
    least: f64,
    greatest: f64,
    below: u64,
    inside: u64,
    /// Of all pieces of one thread, with the first of them.
    bins: Vec<u64>,
}

impl Work {
    fn new(stack: &Stack, how: Runs, wanted: Option<Limits>) -> Self {
        let table = |link: &Link| Spread::ALL.iter().position(|spread| *spread == link.spread);
        let parts = stack
            .links
            .iter()
            .filter(|link| link.limits.tolerance() != Length::ZERO)
            .flat_map(|link| {
                let part = (table(link).unwrap_or(0), counts(link.limits.tolerance()));
                (0..link.count).map(move |_| part)
            })
            .collect();
        let mut stream = Xoshiro256PlusPlus::seed_from_u64(how.seed);
        let streams = (0..how.runs.div_ceil(PIECE))
            .map(|_| {
                let this = stream.clone();
                stream.jump();
                this
            })
            .collect();
        let width = counts(stack.worst.tolerance());
        let lower = counts(stack.worst.lower());
        Self {
            runs: how.runs,
            parts,
            tables: Spread::ALL.map(Spread::quantiles),
            streams,
            worst: stack.worst,
            bins_a_count: if width > 0.0 { whole_of(BINS) / width } else { 0.0 },
            wanted: wanted
                .map(|wanted| (counts(wanted.lower()) - lower, counts(wanted.upper()) - lower)),
        }
    }

    /// All pieces, shared out among threads.
    fn shared(&self, threads: usize) -> Vec<Piece> {
        let threads = threads.clamp(1, 64).min(self.streams.len());
        thread::scope(|scope| {
            let started: Vec<_> = (1..threads)
                .map(|first| {
                    let run = move || self.every(first, threads);
                    (first, thread::Builder::new().spawn_scoped(scope, run))
                })
                .collect();
            let mut pieces = self.every(0, threads);
            for (first, handle) in started {
                // What no thread could be had for is done here.
                let done = handle.ok().and_then(|handle| handle.join().ok());
                pieces.extend(done.unwrap_or_else(|| self.every(first, threads)));
            }
            pieces
        })
    }

    /// Every so many-th piece.
    fn every(&self, first: usize, step: usize) -> Vec<Piece> {
        let mut bins = vec![0; BINS];
        let mut pieces: Vec<Piece> = Vec::new();
        for (number, stream) in (0_u64..).zip(&self.streams).skip(first).step_by(step) {
            let runs = (self.runs - number * PIECE).min(PIECE);
            pieces.push(self.piece(number, runs, stream.clone(), &mut bins));
        }
        if let Some(piece) = pieces.first_mut() {
            piece.bins = bins;
        }
        pieces
    }

    fn piece(
        &self,
        number: u64,
        runs: u64,
        mut stream: Xoshiro256PlusPlus,
        bins: &mut [u64],
    ) -> Piece {
        let middle = counts(self.worst.tolerance()) / 2.0;
        let nought = -counts(self.worst.lower());
        let mut piece = Piece {
            number,
            sum: 0.0,
            squares: 0.0,
            least: f64::INFINITY,
            greatest: 0.0,
            below: 0,
            inside: 0,
            bins: Vec::new(),
        };
        let mut block = [0.0; BLOCK];
        let mut left = usize::try_from(runs).unwrap_or(0);
        while left > 0 {
            let take = left.min(BLOCK);
            left -= take;
            block.fill(0.0);
            for &(table, tolerance) in &self.parts {
                // A part that takes away is counted down from its upper limit:
                // the spreads are alike from either side.
                if let Some(Ok(table)) = self.tables.get(table).map(|it| it.as_slice().try_into()) {
                    add_part(&mut block, table, tolerance, &mut stream);
                }
            }
            for &play in block.iter().take(take) {
                let off = play - middle;
                piece.sum += off;
                piece.squares += off * off;
                piece.least = piece.least.min(play);
                piece.greatest = piece.greatest.max(play);
                piece.below += u64::from(play < nought);
                if let Some((least, most)) = self.wanted {
                    piece.inside += u64::from(least <= play && play <= most);
                }
                #[allow(
                    clippy::cast_possible_truncation,
                    clippy::cast_sign_loss,
                    reason = "play is not below 0, and a cast saturates"
                )]
                let bin = (play * self.bins_a_count) as usize;
                if let Some(count) = bins.get_mut(bin.min(BINS - 1)) {
                    *count += 1;
                }
            }
        }
        piece
    }

    fn summed_up(&self, pieces: &[Piece], how: Runs) -> Simulated {
        let runs = whole(self.runs);
        let mut bins = vec![0; BINS];
        for piece in pieces {
            for (all, count) in bins.iter_mut().zip(&piece.bins) {
                *all += count;
            }
        }
        let sum = |of: fn(&Piece) -> f64| pieces.iter().map(of).sum::<f64>();
        let total = |of: fn(&Piece) -> u64| whole(pieces.iter().map(of).sum());
        let off = sum(|piece| piece.sum) / runs;
        let variance = (sum(|piece| piece.squares) / runs - off * off).max(0.0);
        let lower = counts(self.worst.lower());
        let least = pieces.iter().map(|piece| piece.least).fold(f64::INFINITY, f64::min);
        let greatest = pieces.iter().map(|piece| piece.greatest).fold(0.0, f64::max);
        Simulated {
            runs: self.runs,
            seed: how.seed,
            mean: nearest(lower + counts(self.worst.tolerance()) / 2.0 + off),
            deviation: nearest(libm::sqrt(variance)),
            least: nearest(lower + least),
            greatest: nearest(lower + greatest),
            below_nought: total(|piece| piece.below) / runs,
            inside: self.wanted.map(|_| total(|piece| piece.inside) / runs),
            worst: self.worst,
            bins,
        }
    }
}

/// Adds one part, drawn anew for each run, to the play of a block.
fn add_part(
    block: &mut [f64; BLOCK],
    table: &[f64; CELLS + 1],
    tolerance: f64,
    stream: &mut Xoshiro256PlusPlus,
) {
    const STEP: f64 = 1.0 / (1_u32 << 21) as f64;
    for two in block.chunks_exact_mut(2) {
        let bits = stream.next_u64();
        for (play, bits) in two.iter_mut().zip([bits >> 32, bits & 0xFFFF_FFFF]) {
            // Eleven bits choose a cell, the other twenty-one a place in it.
            #[allow(clippy::cast_possible_truncation, reason = "eleven bits")]
            let cell = (bits >> 21) as usize % CELLS;
            #[allow(clippy::cast_precision_loss, reason = "twenty-one bits")]
            let inside = (bits & 0x001F_FFFF) as f64 * STEP;
            // `cell` is below CELLS, and the table is one longer.
            let (from, to) = (table[cell], table[cell + 1]);
            *play += tolerance * (from + inside * (to - from));
        }
    }
}

#[allow(clippy::cast_precision_loss, reason = "numbers of runs and bins, below 2^53")]
const fn whole(count: u64) -> f64 {
    count as f64
}

#[allow(clippy::cast_precision_loss, reason = "numbers of bins and steps")]
const fn whole_of(count: usize) -> f64 {
    count as f64
}
