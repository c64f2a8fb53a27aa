//! The small picture: tolerance zones hatched about the line of nominal size, as
//! the standard's figure draws them lying down, and where a reading lies.

use std::fmt::Write as _;

use fits_core::{Length, Limits};

/// Columns of the picture itself.
const WIDTH: i128 = 52;

/// One line of the picture: a name, a zone, a reading.
pub(crate) struct Zone<'a> {
    pub(crate) name: &'a str,
    /// A shaft's is hatched the other way.
    pub(crate) is_shaft: bool,
    pub(crate) limits: Limits,
    pub(crate) reading: Option<Length>,
}

/// Draws the zones on one scale with the nominal size. Empty where the sizes
/// are too far apart for a picture to help.
pub(crate) fn draw(out: &mut String, nominal: Length, zones: &[Zone<'_>]) {
    let sizes = || {
        zones.iter().flat_map(|zone| {
            [Some(zone.limits.lower()), Some(zone.limits.upper()), zone.reading]
                .into_iter()
                .flatten()
        })
    };
    let (Some(low), Some(high)) = (sizes().chain([nominal]).min(), sizes().chain([nominal]).max())
    else {
        return;
    };
    let (low, high) = (i128::from(low.tenth_nanometres()), i128::from(high.tenth_nanometres()));
    let widest =
        zones.iter().map(|zone| zone.limits.tolerance().tenth_nanometres()).max().unwrap_or(0);
    // A zone narrower than one column shows nothing.
    if high == low || i128::from(widest) * WIDTH < high - low {
        return;
    }
    let column = |size: Length| -> usize {
        let offset = (i128::from(size.tenth_nanometres()) - low) * (WIDTH - 1);
        usize::try_from((2 * offset + (high - low)) / (2 * (high - low))).unwrap_or(0)
    };
    let zero = column(nominal);
    let _ = writeln!(out, "  {:<12}{}: nominal", "", " ".repeat(zero));
    for zone in zones {
        let (from, to) = (column(zone.limits.lower()), column(zone.limits.upper()));
        let mut cells: Vec<u8> = vec![b' '; usize::try_from(WIDTH).unwrap_or(0)];
        if let Some(cell) = cells.get_mut(zero) {
            *cell = b':';
        }
        for cell in cells.iter_mut().take(to + 1).skip(from) {
            *cell = if zone.is_shaft { b'\\' } else { b'/' };
        }
        for at in [from, to] {
            if let Some(cell) = cells.get_mut(at) {
                *cell = if from == to { b'#' } else { b'|' };
            }
        }
        let cells = String::from_utf8_lossy(&cells).into_owned();
        let _ = writeln!(out, "  {:<12}{}", zone.name, cells.trim_end());
        if let Some(reading) = zone.reading {
            let _ = writeln!(out, "  {:<12}{}^ read", "", " ".repeat(column(reading)));
        }
    }
}
