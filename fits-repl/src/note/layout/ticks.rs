//! Ticks by letters: `o` before what is open, `x` before what is done.

use super::spelled::Spelled;
use crate::note::dates;

/// How many open lines make the letters ticks.
const OPEN: usize = 2;

/// The most words of a heading.
const HEADING: usize = 4;

/// A note whose lines begin with ticks.
#[derive(Default)]
pub(super) struct Ticks {
    /// The lines that stand over others with ticks: `top end`.
    pub(super) headings: Vec<usize>,
}

impl Ticks {
    /// The ticks of a note; none where it has not both of them at the margin.
    pub(super) fn of(lines: &[&str]) -> Option<Self> {
        let count = |done| lines.iter().filter(|line| tick(line) == Some(done)).count();
        if count(false) < OPEN || count(true) == 0 {
            return None;
        }
        let first = lines.iter().position(|line| !line.is_empty());
        let headings = lines.windows(2).enumerate().filter(|(at, pair)| {
            first != Some(*at) && is_heading(pair[0]) && tick(pair[1]).is_some()
        });
        Some(Self { headings: headings.map(|(at, _)| at + 1).collect() })
    }

    /// `x pin 3/8` is `[x] pin 3/8`.
    #[allow(clippy::unused_self, reason = "only a note with ticks has lines with them")]
    pub(super) fn spelled(&self, raw: &str) -> Spelled {
        let pieces = tick(raw).map(|done| {
            let text = if done { "[x]" } else { "[ ]" };
            (0..1, text.to_owned())
        });
        Spelled::of(raw, pieces.into_iter().collect())
    }
}

/// The tick at the margin: is it done? `x 3/4` goes on with a size.
fn tick(raw: &str) -> Option<bool> {
    let (mark, rest) = raw.split_at_checked(2)?;
    let done = match mark {
        "o " => false,
        "x " | "X " => true,
        _ => return None,
    };
    (!rest.trim_start().is_empty() && (!done || !rest.trim_start().starts_with(is_figure)))
        .then_some(done)
}

const fn is_figure(c: char) -> bool {
    c.is_ascii_digit() || c == '.'
}

/// A few words at the margin, none of them a figure.
fn is_heading(raw: &str) -> bool {
    !raw.is_empty()
        && raw.starts_with(char::is_alphabetic)
        && tick(raw).is_none()
        && !raw.contains(|c: char| c.is_ascii_digit())
        && raw.split_whitespace().count() <= HEADING
        && dates::date(raw, true).is_none()
}
