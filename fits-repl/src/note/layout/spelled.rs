//! A line with some of its text spelled out, and where each piece of it was written.

use std::ops::Range;

/// A line as it is read.
pub(super) struct Spelled {
    pub(super) text: String,
    /// What was put in its place, and where what it stands for was written.
    pieces: Vec<(Range<usize>, Range<usize>)>,
}

impl Spelled {
    /// A line with new text at some places, which stand one behind another.
    pub(super) fn of(raw: &str, pieces: Vec<(Range<usize>, String)>) -> Self {
        let mut out = Self { text: String::with_capacity(raw.len()), pieces: Vec::new() };
        let mut from = 0;
        for (at, text) in pieces {
            out.text.push_str(&raw[from..at.start]);
            from = at.end;
            let start = out.text.len();
            out.text.push_str(&text);
            out.pieces.push((start..out.text.len(), at));
        }
        out.text.push_str(&raw[from..]);
        out
    }

    /// Where in the line as written a place of this one is: all of `2b` for any part of
    /// the name that it stands for.
    pub(super) fn original(&self, at: &Range<usize>) -> Range<usize> {
        let start = self.place(at.start, |written| written.start);
        let end = self.place(at.end, |written| written.end);
        start..end.max(start)
    }

    fn place(&self, at: usize, inside: fn(&Range<usize>) -> usize) -> usize {
        let mut off = (0, 0);
        for (new, written) in &self.pieces {
            if at < new.start || at == new.start && inside(written) == written.end {
                break;
            }
            if at < new.end || at == new.end && inside(written) == written.end {
                return inside(written);
            }
            off = (new.end, written.end);
        }
        off.1 + at.saturating_sub(off.0)
    }
}

#[cfg(test)]
mod tests {
    use super::Spelled;

    #[test]
    fn places_are_those_of_the_line_as_written() {
        let pieces = vec![(0..2, String::new()), (10..12, "Nut bore".to_owned())];
        let line = Spelled::of("1 runs in 2a, .75", pieces);
        assert_eq!(line.text, "runs in Nut bore, .75");
        for (at, written) in [(0..4, 2..6), (8..16, 10..12), (8..11, 10..12), (12..16, 10..12)] {
            assert_eq!(line.original(&at), written, "{at:?}");
        }
        assert_eq!((line.original(&(18..21)), line.original(&(0..21))), (14..17, 2..17));
    }
}
