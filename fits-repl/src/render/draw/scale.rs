//! Sizes along a picture.

use fits_core::Length;

/// A stretch of sizes across a stretch of the picture.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Scale {
    least: f64,
    most: f64,
    left: f64,
    right: f64,
}

/// On which side of the picture a size lies that is not in it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Side {
    Below,
    Above,
}

impl Scale {
    /// Of the sizes that must be seen, and of those that should be where the
    /// former stay large enough: a reading far away is marked at the edge.
    pub(crate) fn of(
        must: impl Iterator<Item = Length>,
        should: impl Iterator<Item = Length>,
        (left, right): (f64, f64),
    ) -> Option<Self> {
        /// What must be seen keeps this share of the picture.
        const SHARE: f64 = 0.3;
        let (least, most) = must.fold((f64::MAX, f64::MIN), |(least, most), size| {
            let size = size.millimetres();
            (least.min(size), most.max(size))
        });
        if least > most {
            return None;
        }
        // A tenth of a micron where all are alike.
        let width = (most - least).max(1e-4);
        let room = width / SHARE;
        let (mut from, mut to) = (least, most);
        let mut should: Vec<f64> = should.map(Length::millimetres).collect();
        should.sort_by(|one, other| {
            let off = |size: f64| (least - size).max(size - most);
            off(*one).total_cmp(&off(*other))
        });
        for size in should {
            if to.max(size) - from.min(size) <= room {
                (from, to) = (from.min(size), to.max(size));
            }
        }
        let margin = ((to - from) * 0.02).max(width * 0.05);
        Some(Self { least: from - margin, most: to + margin, left, right })
    }

    /// Where a size lies, and on which side if it is not in the picture.
    pub(crate) fn at(&self, size: Length) -> (f64, Option<Side>) {
        let size = size.millimetres();
        if size < self.least {
            (self.left, Some(Side::Below))
        } else if size > self.most {
            (self.right, Some(Side::Above))
        } else {
            (self.across(size), None)
        }
    }

    /// Where so many millimetres lie, at the edge if they are outside.
    pub(crate) fn across(&self, mm: f64) -> f64 {
        let share = (mm - self.least) / (self.most - self.least);
        self.left + (self.right - self.left) * share.clamp(0.0, 1.0)
    }
}
