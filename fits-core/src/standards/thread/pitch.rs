//! [`Pitch`]: an exact ratio until the last step.

use core::fmt;

use crate::{
    error::Error,
    size::{Length, divide_half_even, inches},
};

/// The pitch of a thread, exact: millimetres, or turns per inch as a ratio.
///
/// 13 turns per inch is not a whole number of 0.1 nm, and a multiple of it is
/// rounded once, at the end ([`Pitch::scaled`]).
///
/// ```
/// use fits_core::{Length, standards::thread::Pitch};
/// let pitch = Pitch::per_inch(23, 2)?;
/// assert_eq!(pitch.to_string(), "11.5 tpi");
/// assert_eq!(pitch.nearest(), "2.2086957mm".parse()?);
/// assert_eq!(pitch.scaled(23, 2), Length::INCH);
/// let metric = Pitch::of("1.25mm".parse()?)?;
/// assert_eq!((metric.millimetres(), metric.figure().as_str(), metric.is_per_inch()), (1.25, "1.25", false));
/// let pipe = Pitch::per_inch(23, 2)?;
/// assert_eq!((pipe.turns_per_inch(), pipe.figure().as_str(), pipe.is_per_inch()), (11.5, "11.5", true));
/// assert_eq!(Pitch::per_inch(20, 1)?.inches(), 0.05);
/// # Ok::<(), fits_core::Error>(())
/// ```
#[derive(Clone, Copy, Debug)]
pub struct Pitch {
    /// In 0.1 nm; positive, at most [`MOST`].
    counts: i64,
    /// Positive.
    per: i64,
    is_per_inch: bool,
}

/// No screw is coarser: 10 in.
const MOST: i64 = 10 * Length::INCH.tenth_nanometres();
/// A millionth of a millionth, the unit of [`Pitch::part`].
const TRILLION: i128 = 1_000_000_000_000;

impl Pitch {
    /// A pitch given as a length.
    ///
    /// # Errors
    /// Nought, negative or above 254 mm.
    ///
    /// ```
    /// use fits_core::standards::thread::Pitch;
    /// assert_eq!(Pitch::of("1.5mm".parse()?)?.millimetres(), 1.5);
    /// assert!(Pitch::of("0mm".parse()?).is_err());
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn of(length: Length) -> Result<Self, Error> {
        if !length.is_positive() || length.tenth_nanometres() > MOST {
            return Err(no_pitch());
        }
        Ok(Self { counts: length.tenth_nanometres(), per: 1, is_per_inch: false })
    }

    /// A pitch of `turns / over` turns per inch: 23/2 is 11-1/2.
    ///
    /// # Errors
    /// Nought or negative, coarser than a turn in 10 in, finer than 10 000
    /// turns an inch, or `over` above 10 000.
    ///
    /// ```
    /// use fits_core::standards::thread::Pitch;
    /// assert_eq!(Pitch::per_inch(23, 2)?.turns_per_inch(), 11.5);
    /// assert!(Pitch::per_inch(0, 1).is_err());
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn per_inch(turns: i64, over: i64) -> Result<Self, Error> {
        let fine = over.checked_mul(10_000).is_some_and(|most| turns > most);
        let coarse = turns.checked_mul(10).is_some_and(|least| least < over);
        if turns <= 0 || !(1..=10_000).contains(&over) || fine || coarse {
            return Err(no_pitch());
        }
        let counts = Length::INCH.checked_mul(over)?.tenth_nanometres();
        Ok(Self { counts, per: turns, is_per_inch: true })
    }

    /// Is it said in turns per inch?
    pub const fn is_per_inch(self) -> bool {
        self.is_per_inch
    }

    /// The pitch to the nearest 0.1 nm, halves to even.
    pub fn nearest(self) -> Length {
        self.scaled(1, 1)
    }

    /// `numerator / denominator` of the pitch to the nearest 0.1 nm, halves to
    /// even; the greatest length where that is out of range.
    ///
    /// ```
    /// use fits_core::standards::thread::Pitch;
    /// // Thirteen turns are an inch again.
    /// assert_eq!(Pitch::per_inch(13, 1)?.scaled(13, 1), "1in".parse()?);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn scaled(self, numerator: i64, denominator: i64) -> Length {
        self.round(i128::from(numerator), i128::from(denominator))
    }

    /// So many millionths of a millionth of the pitch: the profile's factors.
    pub(crate) fn part(self, trillionths: i64) -> Length {
        self.round(i128::from(trillionths), TRILLION)
    }

    fn round(self, numerator: i128, denominator: i128) -> Length {
        let product = i128::from(self.counts) * numerator;
        divide_half_even(product, i128::from(self.per) * denominator)
            .and_then(|count| i64::try_from(count).ok())
            .map_or(Length::MAX, Length::from_tenth_nanometres)
    }

    /// So many pitches: the lead of a thread with so many starts.
    ///
    /// ```
    /// use fits_core::standards::thread::Pitch;
    /// let pitch = Pitch::of("4mm".parse()?)?;
    /// assert_eq!(pitch.times(2).nearest(), "8mm".parse()?);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    #[must_use]
    pub fn times(self, starts: u8) -> Self {
        // `counts` is at most 10 000 in, so this stays below 2^53.
        Self { counts: self.counts * i64::from(starts), ..self }
    }

    /// In millimetres, the nearest floating-point number.
    #[allow(clippy::cast_precision_loss, reason = "both are below 2^53")]
    pub fn millimetres(self) -> f64 {
        self.counts as f64 / 1e7 / self.per as f64
    }

    /// In inches, the nearest floating-point number.
    #[allow(clippy::cast_precision_loss, reason = "both are below 2^53")]
    pub fn inches(self) -> f64 {
        self.counts as f64 / 254e6 / self.per as f64
    }

    /// Turns per inch.
    pub fn turns_per_inch(self) -> f64 {
        1.0 / self.inches()
    }

    /// The figure alone: `1.25` of a metric pitch, `24` or `11.5` turns per
    /// inch.
    pub fn figure(self) -> String {
        if self.is_per_inch {
            // The exact ratio of turns, as a length of so many inches.
            let turns = divide_half_even(
                i128::from(self.per) * 254_000_000 * 254_000_000,
                i128::from(self.counts),
            )
            .and_then(|count| i64::try_from(count).ok())
            .map_or(Length::MAX, Length::from_tenth_nanometres);
            inches(turns)
        } else {
            self.nearest().to_string().trim_end_matches(" mm").to_owned()
        }
    }

    /// The same pitch, said in turns per inch.
    pub(crate) const fn said_per_inch(self) -> Self {
        Self { is_per_inch: true, ..self }
    }

    /// Is it `turns / over` turns per inch?
    pub(crate) fn is_turns(self, turns: i64, over: i64) -> bool {
        let inch = i128::from(Length::INCH.tenth_nanometres());
        i128::from(self.counts) * i128::from(turns)
            == inch * i128::from(over) * i128::from(self.per)
    }

    /// `1.25 mm`, `1/24 in`: no rounded decimal where the pitch is none.
    pub(crate) fn in_words(self) -> String {
        if self.is_per_inch { format!("1/{} in", self.figure()) } else { self.to_string() }
    }

    fn ratio(self, other: Self) -> (i128, i128) {
        (
            i128::from(self.counts) * i128::from(other.per),
            i128::from(other.counts) * i128::from(self.per),
        )
    }
}

/// Pitches are equal where the lengths are, however they are said.
impl PartialEq for Pitch {
    fn eq(&self, other: &Self) -> bool {
        let (one, two) = self.ratio(*other);
        one == two
    }
}

impl Eq for Pitch {}

impl PartialOrd for Pitch {
    fn partial_cmp(&self, other: &Self) -> Option<core::cmp::Ordering> {
        Some(self.cmp(other))
    }
}

impl Ord for Pitch {
    /// The coarser is the greater.
    fn cmp(&self, other: &Self) -> core::cmp::Ordering {
        let (one, two) = self.ratio(*other);
        one.cmp(&two)
    }
}

impl fmt::Display for Pitch {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} {}", self.figure(), if self.is_per_inch { "tpi" } else { "mm" })
    }
}

fn no_pitch() -> Error {
    Error::not_given(
        "a thread's pitch is more than 0 and at most 10 in",
        "give the distance from thread to thread, or the turns per inch",
    )
}
