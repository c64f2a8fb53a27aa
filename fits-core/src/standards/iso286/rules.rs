//! The rules of ISO 286-1:2010 that turn a class at a size into deviations.
//!
//! Clause numbers follow ISO 286-1:2010; the doubtful points are named where
//! they are decided.

mod why;
use self::why::reason;
use super::{Class, Feature, Grade, Letter, tables};
use crate::{
    error::{Error, Kind},
    size::{Deviations, Length, Limits},
    source::{Known, Reason},
    speech::say,
};

/// The tables begin above this size.
pub const NOMINAL_OVER: Length = Length::ZERO;
/// The tables end at this size, included.
pub const NOMINAL_UP_TO: Length = Length::from_tenth_nanometres(31_500_000_000);

const ONE_MM: Length = Length::MILLIMETRE;
const THREE_MM: Length = Length::from_tenth_nanometres(30_000_000);
const FIVE_HUNDRED_MM: Length = Length::from_tenth_nanometres(5_000_000_000);

/// Absent from a table.
pub(super) const NONE: i32 = i32::MIN;

/// A micrometre in counts.
const MICROMETRE: i64 = Length::MICROMETRE.tenth_nanometres();

/// Where a nominal size falls in the tables.
#[derive(Clone, Copy)]
struct Place {
    nominal: Length,
    /// Index into the sub-ranges, below 41.
    step: usize,
    /// Index into the main ranges, below 21.
    main: usize,
}

impl Place {
    fn of(nominal: Length) -> Result<Self, Error> {
        if nominal <= NOMINAL_OVER || nominal > NOMINAL_UP_TO {
            return Err(Error::new(Kind::OutOfTable {
                nominal,
                table: "the tables of ISO 286",
                over: NOMINAL_OVER,
                up_to: NOMINAL_UP_TO,
            }));
        }
        let step = tables::STEP_UP_TO.partition_point(|&up_to| up_to < nominal.tenth_nanometres());
        Ok(Self { nominal, step, main: usize::from(tables::STEP_MAIN[step]) })
    }

    fn has_delta(self) -> bool {
        self.nominal > THREE_MM && self.nominal <= FIVE_HUNDRED_MM
    }
}

/// A table value in tenths of a micrometre, as a length.
const fn tenths_um(value: i32) -> Length {
    // Widening, and below 2^31 · 1000.
    Length::from_tenth_nanometres(value as i64 * (MICROMETRE / 10))
}

/// A table value in micrometres, as a length.
const fn um(value: i32) -> Length {
    Length::from_tenth_nanometres(value as i64 * MICROMETRE)
}

/// Sums of table values cannot leave the range of a length.
const fn plus(one: Length, other: Length) -> Length {
    Length::from_tenth_nanometres(one.tenth_nanometres() + other.tenth_nanometres())
}

const fn minus(one: Length, other: Length) -> Length {
    Length::from_tenth_nanometres(one.tenth_nanometres() - other.tenth_nanometres())
}

/// The standard tolerance of a grade at a nominal size (ISO 286-1, Table 1).
///
/// # Errors
/// The size is outside the tables, or the grade is not given there (IT01 and
/// IT0 over 500 mm; IT14 to IT18 up to 1 mm).
///
/// ```
/// use fits_core::{Length, standards::iso286::{Grade, standard_tolerance}};
/// let it7 = standard_tolerance("7".parse()?, Length::from_millimetres(20)?)?;
/// assert_eq!(it7, Length::from_micrometres(21)?);
/// # Ok::<(), fits_core::Error>(())
/// ```
pub fn standard_tolerance(grade: Grade, nominal: Length) -> Result<Length, Error> {
    tolerance_at(grade, Place::of(nominal)?)
}

impl Grade {
    /// Why its standard tolerance is what it is.
    ///
    /// # Errors
    /// As [`standard_tolerance`].
    ///
    /// ```
    /// use fits_core::{Length, source::Known, standards::iso286::Grade};
    /// let it4: Grade = "4".parse()?;
    /// assert_eq!(it4.reason(Length::from_millimetres(20)?)?.known, Known::Seen);
    /// assert_eq!(it4.reason(Length::from_millimetres(1100)?)?.known, Known::Memory);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn reason(self, nominal: Length) -> Result<Reason, Error> {
        let place = Place::of(nominal)?;
        Ok(reason(
            format!("IT{self}"),
            tolerance_at(self, place)?,
            String::new(),
            "ISO 286-1:2010, Table 1",
            tables::SOURCES[usize::from(tables::GRADE_SOURCES[place.main][self.index()])],
        ))
    }
}

fn tolerance_at(grade: Grade, place: Place) -> Result<Length, Error> {
    let value = tables::GRADES[place.main][grade.index()];
    if value == NONE {
        return Err(Error::not_defined(say!("IT{} is not given above 500 mm", grade.to_string())));
    }
    if !grade.up_to(13) && place.nominal <= ONE_MM {
        return Err(Error::not_defined(say!(
            "IT{} is not used up to 1 mm: IT14 to IT18 start above it",
            grade.to_string()
        )));
    }
    Ok(tenths_um(value))
}

/// The coarsest grade whose standard tolerance at this size is within a
/// tolerance, if any is.
///
/// ```
/// use fits_core::standards::iso286::{Class, Grade, grade_within};
/// assert_eq!(grade_within("21um".parse()?, "20mm".parse()?), Grade::it(7));
/// let h7: Class = "H7".parse()?;
/// assert_eq!(h7.deviations("20mm".parse()?)?.upper(), "21um".parse()?);
/// assert_eq!(h7.reasons("20mm".parse()?)?[0].value, "21 um");
/// # Ok::<(), fits_core::Error>(())
/// ```
pub fn grade_within(tolerance: Length, nominal: Length) -> Option<Grade> {
    let place = Place::of(nominal).ok()?;
    Grade::all().rev().find(|&grade| tolerance_at(grade, place).is_ok_and(|it| it <= tolerance))
}

/// The cell that gives a fundamental deviation, and what it says.
#[derive(Clone, Copy)]
struct Cell {
    /// The deviation in micrometres, [`NONE`] where the table has none.
    value: i32,
    source: u8,
}

/// How the source of this index is known.
fn known(source: u8) -> Known {
    tables::SOURCES[usize::from(source)].known
}

fn cell(rows: &[tables::Row], row: usize, step: usize) -> Cell {
    Cell { value: rows[row].0[step], source: rows[row].1[step] }
}

/// The shaft row for a letter and grade; `None` where the table has none for
/// the grade.
fn shaft_row(letter: Letter, grade: Grade) -> Option<usize> {
    match letter {
        Letter::J => match grade {
            _ if grade == Grade::IT5 || grade == Grade::IT6 => Some(Letter::J.index()),
            _ if grade == Grade::IT7 => Some(tables::ROW_J7),
            _ if grade == Grade::IT8 => Some(tables::ROW_J8),
            _ => None,
        },
        Letter::K if grade.up_to(3) || !grade.up_to(7) => Some(tables::ROW_K_COARSE),
        _ => Some(letter.index()),
    }
}

impl Class {
    /// The limit deviations of this class at a nominal size.
    ///
    /// # Errors
    /// The size is outside the tables, or the standard defines no such class
    /// there; [`Error::instead`] names the nearest class that it does define.
    ///
    /// ```
    /// use fits_core::standards::iso286::Class;
    /// let g6 = "g6".parse::<Class>()?.deviations("20mm".parse()?)?;
    /// assert_eq!((g6.lower(), g6.upper()), ("-0.020mm".parse()?, "-0.007mm".parse()?));
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn deviations(self, nominal: Length) -> Result<Deviations, Error> {
        let found = Place::of(nominal).and_then(|place| self.ends(place));
        match found {
            Ok((lower, upper, known)) => Ok(Deviations::new(lower, upper)?.known_as(known)),
            Err(error) if error.is_not_defined() => {
                Err(error.or_instead(self.nearest_defined(nominal)))
            }
            Err(error) => Err(error),
        }
    }

    /// The limits of size of this class at a nominal size.
    ///
    /// # Errors
    /// As [`Class::deviations`].
    ///
    /// ```
    /// use fits_core::standards::iso286::Class;
    /// let shaft = "g6".parse::<Class>()?.limits("20mm".parse()?)?;
    /// assert_eq!(shaft.to_string(), "19.980 to 19.993 mm");
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn limits(self, nominal: Length) -> Result<Limits, Error> {
        self.deviations(nominal)?.about(nominal)
    }

    /// The deviations where the class is defined, nothing where it is not.
    ///
    /// # Errors
    /// The size is outside the tables.
    pub(crate) fn ends_if_defined(
        self,
        nominal: Length,
    ) -> Result<Option<(Length, Length)>, Error> {
        let place = Place::of(nominal)?;
        Ok(self.ends(place).ok().map(|(lower, upper, _)| (lower, upper)))
    }

    /// The deviations, and how they are known.
    fn ends(self, place: Place) -> Result<(Length, Length, Known), Error> {
        let it = tolerance_at(self.grade, place)?;
        let it_known = known(tables::GRADE_SOURCES[place.main][self.grade.index()]);
        if self.letter == Letter::JS {
            let half = it.half();
            return Ok((minus(Length::ZERO, half), half, it_known.worst(Known::Formula)));
        }
        let (deviation, how) = match self.feature {
            Feature::Shaft => {
                let cell = self.shaft_cell(place)?;
                (um(cell.value), known(cell.source))
            }
            Feature::Hole => self.hole_deviation(place)?,
        };
        let how = how.worst(it_known);
        // The deviation is the upper one of shafts up to h and of holes above H.
        Ok(if (self.letter <= Letter::H) == (self.feature == Feature::Shaft) {
            (minus(deviation, it), deviation, how)
        } else {
            (deviation, plus(deviation, it), how)
        })
    }

    /// Sizes at which the letter itself is not used, whatever its value.
    fn letter_is_used(self, place: Place) -> Result<(), Error> {
        if self.letter <= Letter::B && place.nominal <= ONE_MM {
            return Err(self.undefined(place, "letters A and B start above 1 mm"));
        }
        Ok(())
    }

    fn shaft_cell(self, place: Place) -> Result<Cell, Error> {
        self.letter_is_used(place)?;
        let found =
            shaft_row(self.letter, self.grade).map(|row| cell(&tables::SHAFTS, row, place.step));
        found.filter(|cell| cell.value != NONE).ok_or_else(|| self.no_cell(place))
    }

    /// ES of letters above H, EI of letters up to H, and how it is known.
    fn hole_deviation(self, place: Place) -> Result<(Length, Known), Error> {
        if let Some(exception) = self.hole_exception(place) {
            return if exception.value == NONE {
                Err(self.no_cell(place))
            } else {
                Ok((um(exception.value), known(exception.source)))
            };
        }
        if self.letter == Letter::J {
            return Err(self.no_cell(place));
        }
        self.letter_is_used(place)?;
        let Cell { value: mirrored, source } =
            cell(&tables::SHAFTS, self.letter.index(), place.step);
        if mirrored == NONE {
            return Err(self.no_cell(place));
        }
        let by_rule = known(source).worst(Known::Formula);
        if !self.takes_delta(place) {
            return Ok((um(-mirrored), by_rule));
        }
        let (delta, delta_source) = self.delta(place).ok_or_else(|| {
            self.undefined(place, "no delta is tabulated for grades finer than IT3")
        })?;
        Ok((plus(um(-mirrored), delta), by_rule.worst(known(delta_source))))
    }

    /// The holes whose ES no rule gives (ISO 286-1, Tables 2 and 3 and their
    /// footnotes): J, M6 over 250 to 315 mm, K and N above IT8.
    fn hole_exception(self, place: Place) -> Option<Cell> {
        let row = match self.letter {
            Letter::J if self.grade == Grade::IT6 => tables::ROW_HOLE_J6,
            Letter::J if self.grade == Grade::IT7 => tables::ROW_HOLE_J7,
            Letter::J if self.grade == Grade::IT8 => tables::ROW_HOLE_J8,
            Letter::M if self.grade == Grade::IT6 => {
                let exception = cell(&tables::HOLES, tables::ROW_HOLE_M6, place.step);
                return (exception.value != NONE).then_some(exception);
            }
            Letter::K if !self.grade.up_to(8) && place.nominal <= FIVE_HUNDRED_MM => {
                tables::ROW_HOLE_K_COARSE
            }
            Letter::N if !self.grade.up_to(8) && place.nominal <= ONE_MM => {
                return Some(Cell { value: NONE, source: 0 });
            }
            Letter::N if !self.grade.up_to(8) && place.nominal <= FIVE_HUNDRED_MM => {
                tables::ROW_HOLE_N_COARSE
            }
            _ => return None,
        };
        Some(cell(&tables::HOLES, row, place.step))
    }

    /// K, M, N up to IT8 and P to ZC up to IT7, over 3 up to 500 mm.
    fn takes_delta(self, place: Place) -> bool {
        self.letter >= Letter::K
            && place.has_delta()
            && self.grade.up_to(if self.letter <= Letter::N { 8 } else { 7 })
    }

    /// The delta and the index of its source.
    fn delta(self, place: Place) -> Option<(Length, u8)> {
        let from_it3 = self.grade.index().checked_sub(Grade::IT3.index())?;
        let delta = tables::DELTAS[place.main].get(from_it3).copied().map(tenths_um)?;
        Some((delta, tables::DELTA_SOURCES[place.main][from_it3]))
    }

    #[cold]
    fn undefined(self, place: Place, because: &str) -> Error {
        let plural = match self.feature {
            Feature::Hole => "holes",
            Feature::Shaft => "shafts",
        };
        Error::not_defined(say!(
            "{} {} are not defined at {}: {}",
            plural,
            self.letter.name(self.feature),
            place.nominal,
            because
        ))
    }

    #[cold]
    fn no_cell(self, place: Place) -> Error {
        let name = self.letter.name(self.feature);
        let because = match self.letter {
            Letter::J if self.feature == Feature::Hole => {
                "J exists as J6, J7 and J8 up to 500 mm".to_owned()
            }
            Letter::J => "j exists as j5, j6 and j7 up to 500 mm, and j8 up to 3 mm".to_owned(),
            Letter::K => "K is tabulated up to K8 from 3 to 500 mm".to_owned(),
            Letter::N => "N9 and coarser start above 1 mm".to_owned(),
            _ => {
                let steps: Vec<usize> = (0..tables::STEP_UP_TO.len())
                    .filter(|&step| tables::SHAFTS[self.letter.index()].0[step] != NONE)
                    .collect();
                // Every letter has at least one range.
                let (first, last) =
                    (steps.first().copied().unwrap_or(0), steps.last().copied().unwrap_or(0));
                let over = first.checked_sub(1).map_or(Length::ZERO, |before| {
                    Length::from_tenth_nanometres(tables::STEP_UP_TO[before])
                });
                let up_to = Length::from_tenth_nanometres(tables::STEP_UP_TO[last]);
                format!("{name} is tabulated over {over}, up to {up_to}")
            }
        };
        self.undefined(place, &because)
    }

    /// The defined class nearest to one that is not: the symmetrical letter
    /// for j, then the same letter in the nearest grade, then the nearest
    /// letter in the same grade.
    #[cold]
    fn nearest_defined(self, nominal: Length) -> Option<Self> {
        let place = Place::of(nominal).ok()?;
        let grade_distance = |grade: Grade| grade.index().abs_diff(self.grade.index());
        let letter_distance = |letter: Letter| letter.index().abs_diff(self.letter.index());
        let symmetrical = (self.letter == Letter::J).then_some(Self { letter: Letter::JS, ..self });
        let mut grades: Vec<Grade> = Grade::all().collect();
        grades.sort_by_key(|&grade| grade_distance(grade));
        let mut letters: Vec<Letter> = Letter::all().collect();
        letters.sort_by_key(|&letter| letter_distance(letter));
        symmetrical
            .into_iter()
            .chain(grades.iter().map(|&grade| Self { grade, ..self }))
            .chain(letters.iter().map(|&letter| Self { letter, ..self }))
            .chain(grades.iter().flat_map(|&grade| {
                letters.iter().map(move |&letter| Self { letter, grade, ..self })
            }))
            .find(|class| class.ends(place).is_ok())
    }
}
