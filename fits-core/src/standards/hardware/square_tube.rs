//! Square and rectangular tube, and the plug that goes into its end.

use super::{limits, table};
use crate::{
    error::Error,
    size::{Length, Limits, Unit},
    source::{Known, Provenance, Reason},
    speech::say,
};

/// What a square or rectangular tube is made to.
///
/// ```
/// use fits_core::{size::Unit, standards::hardware::TubeStandard};
/// assert_eq!((TubeStandard::En10219.unit(), TubeStandard::A513.unit()), (Unit::Millimetre, Unit::Inch));
/// assert_eq!(TubeStandard::A500.name(), "ASTM A500");
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "kebab-case"))]
#[non_exhaustive]
pub enum TubeStandard {
    /// ASTM A513, mechanical tube.
    A513,
    /// ASTM A500, structural tube.
    A500,
    /// EN 10219, cold formed, metric.
    En10219,
}

impl TubeStandard {
    /// Its name.
    pub const fn name(self) -> &'static str {
        match self {
            Self::A513 => "ASTM A513",
            Self::A500 => "ASTM A500",
            Self::En10219 => "EN 10219",
        }
    }

    /// The unit of its tables.
    pub const fn unit(self) -> Unit {
        match self {
            Self::A513 | Self::A500 => Unit::Inch,
            Self::En10219 => Unit::Millimetre,
        }
    }
}

/// What a row of the tube's table gives.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum TubeFigure {
    /// A side, plus or minus, at the corners.
    Outside,
    /// The same in percent of the side.
    OutsideShare,
    /// Bulge or hollow of a flat beyond that.
    Flat,
    /// The wall, plus or minus percent.
    WallShare,
    /// The outside corner radius.
    Corner,
    /// The same as multiples of the wall.
    CornerTimes,
}

/// Holds over `over` up to `up_to`. Shares and multiples are in thousandths of
/// the row's unit of length: 10 percent is 10 units.
#[derive(Debug)]
pub(super) struct TubeRow {
    pub(super) standard: TubeStandard,
    pub(super) what: TubeFigure,
    pub(super) over: Length,
    pub(super) up_to: Length,
    pub(super) wall: Option<Length>,
    pub(super) low: Option<Length>,
    pub(super) value: Length,
    pub(super) from: Provenance,
}

/// A square or rectangular tube by its nominal sides and wall.
///
/// ```
/// use fits_core::standards::hardware::{SquareTube, TubeStandard};
/// let inch = "1in".parse()?;
/// let tube = SquareTube::new(TubeStandard::A513, [inch, inch], "0.065in".parse()?)?;
/// let [inside, _] = tube.inside()?;
/// assert_eq!(inside.lower(), "0.842in".parse()?);
/// assert_eq!(inside.upper(), "0.898in".parse()?);
/// assert_eq!(tube.inside_corner()?.upper(), "0.044375in".parse()?);
/// assert_eq!(tube.outside_corner()?.upper(), "7/64in".parse()?);
/// assert_eq!(tube.wall()?.upper(), "0.0715in".parse()?);
/// assert!(tube.holds_inside("0.870in".parse()?, 0).is_ok());
/// assert!(tube.holds_inside("0.900in".parse()?, 0).is_err());
/// assert_eq!(tube.reasons()?[0].figure, "wall");
/// assert_eq!((tube.standard(), tube.sides()), (TubeStandard::A513, [inch, inch]));
/// assert_eq!(tube.nominal_wall(), "0.065in".parse()?);
/// # Ok::<(), fits_core::Error>(())
/// ```
#[derive(Clone, Copy, Debug)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct SquareTube {
    standard: TubeStandard,
    sides: [Length; 2],
    wall: Length,
}

impl SquareTube {
    /// A tube of these sides and this wall.
    ///
    /// # Errors
    /// The wall leaves no bore, or the standard's table does not reach a side.
    ///
    /// ```
    /// use fits_core::standards::hardware::{SquareTube, TubeStandard};
    /// let side = "40mm".parse()?;
    /// assert!(SquareTube::new(TubeStandard::En10219, [side, side], "3mm".parse()?).is_ok());
    /// // The walls leave no bore.
    /// assert!(SquareTube::new(TubeStandard::En10219, [side, side], "20mm".parse()?).is_err());
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn new(standard: TubeStandard, sides: [Length; 2], wall: Length) -> Result<Self, Error> {
        let tube = Self { standard, sides, wall };
        let least = sides[0].min(sides[1]);
        if !wall.is_positive() || wall.checked_mul(2)? >= least {
            return Err(Error::out_of_reach(
                say!("a wall of {} leaves no bore in a tube of {}", wall, least),
                "the outside first, then the wall",
            ));
        }
        for side in sides {
            tube.outside(side)?;
        }
        Ok(tube)
    }

    /// What it is made to.
    pub const fn standard(self) -> TubeStandard {
        self.standard
    }

    /// Its nominal sides.
    pub const fn sides(self) -> [Length; 2] {
        self.sides
    }

    /// Its nominal wall.
    pub const fn nominal_wall(self) -> Length {
        self.wall
    }

    fn rows(self, what: TubeFigure) -> impl Iterator<Item = &'static TubeRow> {
        let is_own = move |row: &&TubeRow| row.standard == self.standard && row.what == what;
        table::SQUARE_TUBE.iter().filter(is_own)
    }

    fn row(self, what: TubeFigure, size: Length) -> Option<&'static TubeRow> {
        self.rows(what).find(|row| row.over < size && size <= row.up_to)
    }

    /// A share of a size: a row's value counts percent in its unit of length.
    fn share(self, of: Length, percent: Length) -> Result<Length, Error> {
        let unit = match self.standard.unit() {
            Unit::Millimetre => Length::MILLIMETRE,
            _ => Length::INCH,
        };
        of.checked_scale(
            percent.tenth_nanometres().into(),
            i128::from(unit.tenth_nanometres()) * 100,
        )
    }

    /// By how much a side may be off at its corners, and by how much a flat may
    /// bulge or sink beyond that.
    fn outside(self, side: Length) -> Result<[Length; 2], Error> {
        let corners =
            match (self.row(TubeFigure::Outside, side), self.row(TubeFigure::OutsideShare, side)) {
                (Some(row), _) => row.value,
                (None, Some(row)) => {
                    let share = self.share(side, row.value)?;
                    // EN 10219: never less than half a millimetre.
                    match self.standard {
                        TubeStandard::En10219 => share.max(Length::MILLIMETRE.half()),
                        _ => share,
                    }
                }
                (None, None) => {
                    let reach = || {
                        self.rows(TubeFigure::Outside).chain(self.rows(TubeFigure::OutsideShare))
                    };
                    let over = reach().map(|row| row.over).min().unwrap_or_default();
                    let up_to = reach().map(|row| row.up_to).max().unwrap_or_default();
                    let said = |size| crate::standards::bought::spoken(size, self.standard.unit());
                    return Err(Error::not_listed(
                        say!("{} lists no tube with a side of {}", self.standard.name(), side),
                        format!("sides over {} up to {} are listed", said(over), said(up_to)),
                    ));
                }
            };
        let flat = self.row(TubeFigure::Flat, side).map_or(Length::ZERO, |row| row.value);
        Ok([corners, flat])
    }

    /// The limits of its wall.
    ///
    /// # Errors
    /// Out of range.
    pub fn wall(self) -> Result<Limits, Error> {
        let row = self.row(TubeFigure::WallShare, self.wall);
        let spread = row.map_or(Ok(Length::ZERO), |row| self.share(self.wall, row.value))?;
        let known = row.map_or(Known::Practice, |row| row.from.known);
        limits([self.wall.checked_sub(spread)?, self.wall.checked_add(spread)?], known)
    }

    /// The least and the greatest inside, across each pair of flats: the outside
    /// with its bulge or hollow, less two walls.
    ///
    /// # Errors
    /// Out of range.
    pub fn inside(self) -> Result<[Limits; 2], Error> {
        let wall = self.wall()?;
        let of = |side: Length| {
            let [corners, flat] = self.outside(side)?;
            let spread = corners.checked_add(flat)?;
            let low = side.checked_sub(spread)?.checked_sub(wall.upper().checked_mul(2)?)?;
            let high = side.checked_add(spread)?.checked_sub(wall.lower().checked_mul(2)?)?;
            limits([low, high], Known::Formula)
        };
        Ok([of(self.sides[0])?, of(self.sides[1])?])
    }

    /// The limits of its outside corner radius.
    ///
    /// Where the wall is not listed, those of the nearest one.
    ///
    /// # Errors
    /// Out of range.
    pub fn outside_corner(self) -> Result<Limits, Error> {
        let times = match self.standard {
            TubeStandard::En10219 => self.row(TubeFigure::CornerTimes, self.wall),
            _ => self.rows(TubeFigure::CornerTimes).next(),
        };
        if let Some(row) = times {
            // A multiple counts in the unit of length: a hundredth of it is a percent.
            let of = |times: Length| self.share(self.wall.checked_mul(100)?, times);
            let low = row.low.map_or(Ok(Length::ZERO), of)?;
            return limits([low, of(row.value)?], row.from.known);
        }
        let off = |row: &&TubeRow| {
            let wall = row.wall.unwrap_or_default();
            wall.tenth_nanometres().abs_diff(self.wall.tenth_nanometres())
        };
        let nearest = self.rows(TubeFigure::Corner).min_by_key(off);
        let Some(nearest) = nearest else {
            return limits([Length::ZERO, self.wall.checked_mul(3)?], Known::Practice);
        };
        let known = if off(&nearest) == 0 { nearest.from.known } else { Known::Practice };
        // The round tube it is made from goes about as far round.
        let round = self.sides[0].checked_add(self.sides[1])?.checked_scale(200_000, 314_159)?;
        let same = || self.rows(TubeFigure::Corner).filter(|row| row.wall == nearest.wall);
        let own = same().find(|row| row.over <= round && round <= row.up_to);
        let rows = || same().filter(|row| own.is_none_or(|own| std::ptr::eq(*row, own)));
        let low = rows().filter_map(|row| row.low).min().unwrap_or_default();
        let high = rows().map(|row| row.value).max().unwrap_or_default();
        limits([low, high], known)
    }

    /// The limits of its inside corner radius: the outside one less the wall.
    ///
    /// # Errors
    /// Out of range.
    pub fn inside_corner(self) -> Result<Limits, Error> {
        let outside = self.outside_corner()?;
        let less = |radius: Length| Ok(radius.checked_sub(self.wall)?.max(Length::ZERO));
        limits(
            [less(outside.lower())?, less(outside.upper())?],
            Known::Formula.worst(outside.known()),
        )
    }

    /// Refuses an inside that this tube cannot have.
    ///
    /// # Errors
    /// The inside is beyond what the standard lets the outside and the wall be.
    ///
    /// ```
    /// use fits_core::standards::hardware::{SquareTube, TubeStandard};
    /// let inch = "1in".parse()?;
    /// let tube = SquareTube::new(TubeStandard::A513, [inch, inch], "0.065in".parse()?)?;
    /// assert!(tube.holds_inside("0.870in".parse()?, 0).is_ok());
    /// assert!(tube.holds_inside("0.900in".parse()?, 0).is_err());
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn holds_inside(self, inside: Length, of_side: usize) -> Result<(), Error> {
        let limits = self.inside()?[of_side.min(1)];
        if limits.contains(inside) {
            return Ok(());
        }
        Err(Error::out_of_reach(
            say!(
                "a tube of {} with a wall of {} is {} to {} inside, not {}",
                self.sides[of_side.min(1)],
                self.wall,
                limits.lower(),
                limits.upper(),
                inside
            ),
            "mic the wall and the inside again",
        ))
    }

    /// Why its figures are what they are.
    ///
    /// # Errors
    /// Out of range.
    pub fn reasons(self) -> Result<Vec<Reason>, Error> {
        let said = |limits: Limits| format!("{} to {}", limits.lower(), limits.upper());
        let source = self.rows(TubeFigure::WallShare).next().map_or("", |row| row.from.text);
        let reason = |figure: &str, limits: Limits, rule: &'static str| Reason {
            figure: figure.into(),
            value: said(limits).into(),
            rule: rule.into(),
            source: source.into(),
            known: limits.known(),
        };
        Ok(vec![
            reason("wall", self.wall()?, "nominal, plus or minus 10 percent"),
            reason(
                "inside",
                self.inside()?[0],
                "outside with its tolerance and bulge - 2 x wall with its own",
            ),
            reason("inside corner", self.inside_corner()?, "outside corner radius - wall"),
        ])
    }
}
