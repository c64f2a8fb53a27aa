//! Bought-in parts: the limits that pins, screws, bar, bushings, bearings,
//! keys and tube come with.
//!
//! From `data/bought/`, whose rows say how each figure is known. What varies
//! by maker or by lot says so ([`BoughtPart::mic_yours`]): the one in hand decides.
//! Flat ground stock is not covered.

mod ball;
mod ball_seat;
mod part;
#[rustfmt::skip]
#[allow(clippy::unreadable_literal, reason = "generated")]
mod ball_table;
mod keyway;
mod seat;
#[rustfmt::skip]
#[allow(clippy::unreadable_literal, reason = "generated")]
mod table;

pub use ball::Ball;
pub use ball_seat::{BallSeat, Duty, Turning, ball_seats};
pub(super) use keyway::chord;
pub use keyway::{KeyFit, KeyStandard, Keyway};
pub use seat::{Load, Seat, seat};

pub use self::part::BoughtPart;
use self::part::ambiguous;
use crate::{
    error::Error,
    nearest::{comes_to, nearest, plain},
    size::{Length, Limits, Unit},
    source::Provenance,
    speech::say,
    standards::iso286::{Class, Feature},
};

/// A family of bought-in parts: one kind of part, to one standard, and the one
/// surface of it that its mate meets.
///
/// ```
/// use fits_core::standards::bought::Family;
/// let pins = Family::named("inch dowel pin")?;
/// let pin = pins.part("1/4in".parse()?)?;
/// assert_eq!(pin.limits.lower(), "0.2501in".parse()?);
/// assert_eq!(pin.limits.upper(), "0.2503in".parse()?);
///
/// let error = pins.part("0.3in".parse()?).unwrap_err();
/// assert_eq!(error.to_string(), "dowel pin 7.62 mm is not listed (ASME B18.8.2)");
/// assert_eq!(error.advice(), "listed near it: 1/4 in, 5/16 in");
/// use fits_core::{size::Unit, standards::iso286::Feature};
/// assert_eq!((pins.name(), pins.feature(), pins.unit()), ("inch dowel pin", Feature::Shaft, Unit::Inch));
/// assert_eq!(pins.standard(), "ASME B18.8.2");
/// assert!(pins.words().contains(&"dowel pin") && !pins.differs().is_empty());
/// assert!(pins.sizes().any(|size| size == fits_core::Length::INCH.half().half()));
/// assert!(!pins.goes_by_outside() && !pins.mic_yours());
/// # Ok::<(), fits_core::Error>(())
/// ```
#[derive(Clone, Copy, Debug)]
pub struct Family(&'static Entry);

#[derive(Debug)]
struct Entry {
    name: &'static str,
    noun: &'static str,
    words: &'static [&'static str],
    /// Understood and never shown.
    silent: &'static [&'static str],
    feature: Feature,
    by_outside: bool,
    mic_yours: bool,
    standard: &'static str,
    ask: &'static str,
    unit: Unit,
    rows: &'static [Row],
}

/// Holds for nominal sizes from `start` to `end`, both included.
#[derive(Debug)]
struct Row {
    start: Length,
    end: Length,
    gives: Gives,
    mate: Mate,
    from: Provenance,
    note: &'static str,
}

/// How a row gives its limits.
#[derive(Debug)]
enum Gives {
    /// Deviations from the nominal size.
    Deviations(Length, Length),
    /// The lower limit of one class and the upper limit of another.
    Classes(&'static str, &'static str),
}

/// What the standard or the maker gives for the part that goes with it.
#[derive(Debug)]
enum Mate {
    Nothing,
    Deviations(Length, Length),
    Class(&'static str),
}

impl Eq for Family {}

impl Family {
    /// Every family, by trade: pins, screws, bar, bushings, bearings, keys,
    /// tube.
    ///
    /// ```
    /// use fits_core::standards::bought::Family;
    /// assert!(Family::all().any(|family| family.name() == "inch drill rod"));
    /// ```
    pub fn all() -> impl DoubleEndedIterator<Item = Self> {
        table::FAMILIES.iter().map(Self)
    }

    /// The one family that a name or a shop's word means. Letter case,
    /// hyphens and a plural `s` are not regarded.
    ///
    /// # Errors
    /// No such word (the advice offers the nearest one), or a word that
    /// several families share (the choices name them).
    ///
    /// ```
    /// use fits_core::standards::bought::Family;
    /// assert_eq!(Family::named("Stripper-bolts").unwrap_err().choices().len(), 3);
    /// assert_eq!(Family::named("class L")?.name(), "class L ground shafting");
    /// let error = Family::named("drill rood").unwrap_err();
    /// assert_eq!(error.to_string(), "no bought-in part is called drill rood");
    /// assert_eq!(error.advice(), "nearest: drill rod");
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn named(text: &str) -> Result<Self, Error> {
        match *Self::called(text)?.as_slice() {
            [only] => Ok(only),
            ref several => Err(ambiguous(text, several)),
        }
    }

    /// Every family that a name or a shop's word can mean; never empty.
    ///
    /// # Errors
    /// No such word; the advice offers the nearest one.
    ///
    /// ```
    /// use fits_core::standards::bought::Family;
    /// let found = Family::called("dowel pin")?;
    /// assert!(found.iter().any(|family| family.name().contains("dowel pin")));
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn called(text: &str) -> Result<Vec<Self>, Error> {
        let found = Self::all_called(text);
        if !found.is_empty() {
            return Ok(found);
        }
        let words =
            Self::all().flat_map(|family| family.words().iter().copied().chain([family.name()]));
        Err(Error::not_listed(say!("no bought-in part is called {}", text.trim()), nearest(&plain(text), words).map_or_else(
                || "kinds: dowel, shoulder screw, drill rod, cold drawn, bushing, bearing, key, keyway, tube".into(),
                |word| format!("nearest: {word}"),
            )))
    }

    /// Every family that a name or a shop's word can mean, if any:
    /// [`Family::called`] says what is meant instead.
    ///
    /// ```
    /// use fits_core::standards::bought::Family;
    /// assert_eq!(Family::all_called("dowel pin"), Family::called("dowel pin")?);
    /// assert!(Family::all_called("dowle").is_empty());
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn all_called(text: &str) -> Vec<Self> {
        let wanted = plain(text);
        let singular = wanted.strip_suffix('s').unwrap_or(&wanted);
        let is = |known: &str| known == wanted || known == singular;
        // A family's own name is always clear.
        let is_own = |name: &str| comes_to(name, &wanted) || comes_to(name, singular);
        if let Some(own) = Self::all().find(|family| is_own(family.name())) {
            return vec![own];
        }
        let says =
            |family: &Self| family.words().iter().chain(family.0.silent).any(|word| is(word));
        Self::all().filter(says).collect()
    }

    /// Its name, as `inch dowel pin`: unique among the families.
    pub const fn name(self) -> &'static str {
        self.0.name
    }

    /// The words a shop says for it; others may share them.
    pub const fn words(self) -> &'static [&'static str] {
        self.0.words
    }

    /// The surface that meets the mate.
    pub const fn feature(self) -> Feature {
        self.0.feature
    }

    /// The standard it is made to; empty where none is named.
    pub const fn standard(self) -> &'static str {
        self.0.standard
    }

    /// What tells it from the families that share its words.
    pub const fn differs(self) -> &'static str {
        self.0.ask
    }

    /// The unit its sizes are listed in.
    pub const fn unit(self) -> Unit {
        self.0.unit
    }

    /// Does it vary by maker or by lot?
    pub const fn mic_yours(self) -> bool {
        self.0.mic_yours
    }

    /// Do the limits go by the part's outside diameter rather than by the
    /// size of the surface itself? Then [`Family::part_of`] is the sharper
    /// question.
    pub const fn goes_by_outside(self) -> bool {
        self.0.by_outside
    }

    /// The sizes listed one by one, in the order of the table; empty for a
    /// family whose limits hold for ranges of size.
    pub fn sizes(self) -> impl Iterator<Item = Length> {
        self.0.rows.iter().filter(|row| row.start == row.end).map(|row| row.start)
    }

    /// The part of a nominal size.
    ///
    /// Where limits go by an outside diameter that is not known, they are the
    /// widest of the rows that the size leaves open.
    ///
    /// # Errors
    /// The size is not listed (the advice offers its neighbours), or ISO 286
    /// does not reach it.
    ///
    /// ```
    /// use fits_core::standards::bought::Family;
    /// let pin = Family::named("m6 dowel pin")?.part("6mm".parse()?)?;
    /// // m6 at 6 mm: 4 to 12 micrometres over.
    /// assert_eq!(pin.limits.to_string(), "6.004 to 6.012 mm");
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn part(self, nominal: Length) -> Result<BoughtPart, Error> {
        if !self.0.by_outside {
            let row = self
                .0
                .rows
                .iter()
                .find(|row| row.start <= nominal && nominal <= row.end)
                .ok_or_else(|| self.not_listed(nominal))?;
            return self.at(row, nominal);
        }
        // The outside is larger than the bore.
        let mut widest: Option<BoughtPart> = None;
        for row in self.0.rows.iter().filter(|row| row.end > nominal) {
            let part = self.at(row, nominal)?;
            widest = Some(match widest {
                None => part,
                Some(before) => BoughtPart {
                    limits: Limits::new(
                        before.limits.lower().min(part.limits.lower()),
                        before.limits.upper().max(part.limits.upper()),
                    )?
                    .known_as(before.known.worst(part.known)),
                    known: before.known.worst(part.known),
                    note: "widest for any outside diameter: give that for closer limits",
                    ..before
                },
            });
        }
        widest.filter(|_| nominal.is_positive()).ok_or_else(|| self.not_listed(nominal))
    }

    /// The part of a nominal size and an outside diameter, for the families
    /// whose limits go by it; for the others the outside is not regarded.
    ///
    /// # Errors
    /// As [`Family::part`], or an outside diameter that is not larger than
    /// the bore.
    ///
    /// ```
    /// use fits_core::standards::bought::Family;
    /// let bores = Family::named("dom tube bore")?;
    /// let bore = bores.part_of("1.25in".parse()?, "1.5in".parse()?)?;
    /// assert_eq!(bore.limits.lower(), "1.245in".parse()?);
    /// // Without the outside diameter the answer is wider, and still true.
    /// assert_eq!(bores.part("1.25in".parse()?)?.limits.lower(), "1.235in".parse()?);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn part_of(self, nominal: Length, outside: Length) -> Result<BoughtPart, Error> {
        if !self.0.by_outside {
            return self.part(nominal);
        }
        if outside <= nominal || !nominal.is_positive() {
            return Err(Error::not_a_pair(say!(
                "an outside diameter of {} leaves no wall about a bore of {}",
                outside,
                nominal
            )));
        }
        let row = self
            .0
            .rows
            .iter()
            .find(|row| row.start <= outside && outside <= row.end)
            .ok_or_else(|| self.not_listed_as("outside diameter of a", outside))?;
        self.at(row, nominal)
    }

    fn at(self, row: &Row, nominal: Length) -> Result<BoughtPart, Error> {
        let about = |low, high| Limits::new(nominal.checked_add(low)?, nominal.checked_add(high)?);
        let class = |name: &str| name.parse::<Class>()?.limits(nominal);
        let limits = match row.gives {
            Gives::Deviations(low, high) => about(low, high)?,
            Gives::Classes(low, high) => Limits::new(class(low)?.lower(), class(high)?.upper())?,
        }
        .known_as(row.from.known);
        let mate = match row.mate {
            Mate::Nothing => None,
            Mate::Deviations(low, high) => Some(about(low, high)?),
            Mate::Class(name) => Some(class(name)?),
        };
        Ok(BoughtPart {
            family: self,
            nominal,
            feature: self.0.feature,
            limits,
            mate,
            mic_yours: self.0.mic_yours,
            known: row.from.known,
            source: row.from.text,
            note: row.note,
        })
    }

    fn not_listed(self, asked: Length) -> Error {
        self.not_listed_as("", asked)
    }

    fn not_listed_as(self, what: &str, asked: Length) -> Error {
        let below = self.0.rows.iter().map(|row| row.end);
        let below = below.filter(|end| *end < asked).max();
        let above = self.0.rows.iter().map(|row| row.start);
        let above = above.filter(|start| *start > asked).min();
        let near: Vec<_> =
            [below, above].into_iter().flatten().map(|size| spoken(size, self.0.unit)).collect();
        let standard = match self.0.standard {
            "" => String::new(),
            named => format!(" ({named})"),
        };
        Error::not_listed(
            say!(
                "{}{}{} {} is not listed{}",
                what,
                if what.is_empty() { "" } else { " " },
                self.0.noun,
                asked,
                standard
            ),
            format!("listed near it: {}", near.join(", ")),
        )
    }
}

/// A nominal size as a list prints it: `1-1/4 in`, `0.3 in`, `6.5 mm`.
///
/// ```
/// use fits_core::{size::Unit, standards::bought::spoken};
/// assert_eq!(spoken("31.75mm".parse()?, Unit::Inch), "1-1/4 in");
/// # Ok::<(), fits_core::Error>(())
/// ```
pub fn spoken(size: Length, unit: Unit) -> String {
    if unit != Unit::Inch {
        return size.to_string();
    }
    let count = size.tenth_nanometres();
    let inch = Length::INCH.tenth_nanometres();
    let (whole, rest) = (count.div_euclid(inch), count.rem_euclid(inch));
    // 1/64 in is a whole number of counts.
    if rest % (inch / 64) == 0 {
        let mut sixty_fourths = rest / (inch / 64);
        let mut under = 64;
        while sixty_fourths % 2 == 0 && under > 1 {
            sixty_fourths /= 2;
            under /= 2;
        }
        return match (whole, sixty_fourths) {
            (whole, 0) => format!("{whole} in"),
            (0, part) => format!("{part}/{under} in"),
            (whole, part) => format!("{whole}-{part}/{under} in"),
        };
    }
    let decimals = crate::size::Decimals { unit: Unit::Inch, places: 6 };
    let text = size.shown(decimals, crate::size::Rounding::Nearest).to_string();
    format!("{} in", text.trim_end_matches('0').trim_end_matches('.'))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn sizes_are_spoken_as_lists_print_them() {
        for (text, unit, said) in [
            ("1/4in", Unit::Inch, "1/4 in"),
            ("1-1/4in", Unit::Inch, "1-1/4 in"),
            ("2in", Unit::Inch, "2 in"),
            ("0.3in", Unit::Inch, "0.3 in"),
            ("61/64in", Unit::Inch, "61/64 in"),
            ("6.5mm", Unit::Millimetre, "6.5 mm"),
        ] {
            let size: Length = text.parse().expect(text);
            assert_eq!(spoken(size, unit), said);
        }
    }
}
