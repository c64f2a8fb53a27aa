//! What a person writes for a pair, read: `H7/g6`, `RC4`, `press`.

use core::{fmt, str::FromStr};

use crate::{
    error::Error,
    fit::Fit,
    shop::{
        FitClasses,
        words::{Choice, Circumstance, Word},
    },
    size::{Length, Number, Size, Unit},
    source::Reason,
    standards::{b41, iso286::Class},
};

impl FitClasses {
    /// The fit of the classes at a nominal size.
    ///
    /// # Errors
    /// A class is not defined there.
    ///
    /// ```
    /// use fits_core::shop::FitClasses;
    /// let fit = "FN2".parse::<FitClasses>()?.fit("1in".parse()?)?;
    /// assert_eq!(fit.interference().upper(), "0.0019in".parse()?);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn fit(self, nominal: Length) -> Result<Fit, Error> {
        match self {
            Self::Iso286 { hole, shaft } => Fit::of_classes(nominal, hole, shaft),
            Self::B41(class) => class.fit(nominal),
        }
    }

    /// Why the limits are what they are: each figure with its rule, its source
    /// and how it is known.
    ///
    /// # Errors
    /// As [`FitClasses::fit`].
    ///
    /// ```
    /// use fits_core::shop::FitClasses;
    /// let reasons = "H7/g6".parse::<FitClasses>()?.reasons("20mm".parse()?)?;
    /// assert_eq!(reasons[0].figure, "IT7");
    /// assert_eq!(reasons[0].value, "21 um");
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn reasons(self, nominal: Length) -> Result<Vec<Reason>, Error> {
        match self {
            Self::Iso286 { hole, shaft } => {
                let mut reasons = hole.reasons(nominal)?;
                reasons.extend(shaft.reasons(nominal)?);
                Ok(reasons)
            }
            Self::B41(class) => class.reasons(nominal),
        }
    }
}

impl FromStr for FitClasses {
    type Err = Error;

    /// Reads `H7/g6`, also as `H7-g6` and `H7 g6`, and `RC4`.
    ///
    /// ```
    /// use fits_core::shop::FitClasses;
    /// for text in ["H7/g6", "H7 / g6", "H7-g6", "H7 g6"] {
    ///     assert_eq!(text.parse::<FitClasses>()?.to_string(), "H7/g6");
    /// }
    /// // What a hyphen or a space parts is two classes, or it parts nothing.
    /// assert!("H7-".parse::<FitClasses>().is_err() && "g6 H7".parse::<FitClasses>().is_err());
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    ///
    /// # Errors
    /// No such class, one class where a pair is wanted, or two of one kind.
    fn from_str(text: &str) -> Result<Self, Error> {
        let loosely = || {
            let parts = text.trim().split_once(|c: char| c == '-' || c.is_whitespace())?;
            let is_class = |part: &str| part.trim().parse::<Class>().is_ok();
            (is_class(parts.0) && is_class(parts.1)).then_some(parts)
        };
        if let Some((hole, shaft)) = loosely() {
            let (hole, shaft) = (hole.trim().parse()?, shaft.trim().parse()?);
            Fit::are_a_pair(hole, shaft).map_err(|error| error.at(0, text.len()))?;
            return Ok(Self::Iso286 { hole, shaft });
        }
        let Some((hole, shaft)) = text.split_once('/') else {
            return text.parse().map(Self::B41).map_err(|error: Error| {
                match text.trim().parse::<Class>() {
                    Ok(class) => Error::not_a_class(
                        format!("{class} is one part's class, and a pair has two"),
                        format!("name the {}, as in H7/g6", class.feature.mate().word()),
                    )
                    .at(0, text.len()),
                    Err(_) => error,
                }
            });
        };
        let after = hole.len() + 1;
        let read = |part: &str, from: usize| -> Result<Class, Error> {
            let start = from + (part.len() - part.trim_start().len());
            part.trim().parse().map_err(|error: Error| match error.span() {
                Some(span) => error.at(span.start + start, span.end + start),
                None => error.at(start, start + part.trim().len()),
            })
        };
        let (hole, shaft) = (read(hole, 0)?, read(shaft, after)?);
        Fit::are_a_pair(hole, shaft).map_err(|error| error.at(0, text.len()))?;
        Ok(Self::Iso286 { hole, shaft })
    }
}

impl Choice {
    /// The classes for a size: of ASME B4.1 where it is thought in inches and
    /// that class's table reaches it, of ISO 286 elsewhere.
    ///
    /// ```
    /// use fits_core::{Size, shop::words::{Circumstance, Word}};
    /// let size: Size = "1in".parse()?;
    /// let choice = Word::find("press")?.choose(&Circumstance::plain(size.length()))?;
    /// assert_eq!(choice.classes(size).to_string(), "FN2");
    /// assert_eq!(choice.classes("25.4mm".parse()?).to_string(), "H7/s6");
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn classes(&self, size: Size) -> FitClasses {
        let inch = self.inch.parse::<b41::Class>().ok().filter(|_| size.is_inch());
        match inch.filter(|class| class.fit(size.length()).is_ok()) {
            Some(class) => FitClasses::B41(class),
            None => FitClasses::Iso286 { hole: self.iso.0, shaft: self.iso.1 },
        }
    }
}

/// What a person writes for a pair: two classes of ISO 286, a class of ASME
/// B4.1, or a shop's word, behind it `thin tube` where the outer part is one.
///
/// ```
/// use fits_core::shop::Spec;
/// let spec: Spec = "H7/g6".parse()?;
/// assert_eq!(spec.fit("20mm".parse()?)?.clearance().lower(), "0.007mm".parse()?);
///
/// // A word goes by the unit that its size was typed in.
/// let press: Spec = "press fit".parse()?;
/// assert_eq!(press.classes("1in".parse()?)?.to_string(), "FN2");
/// assert_eq!(press.classes("25.4mm".parse()?)?.to_string(), "H7/s6");
/// assert_eq!(press.reasons("1in".parse()?)?[0].value, "H7/s6 (FN2)");
///
/// // A thin outer part takes less.
/// let thin: Spec = "press, thin tube".parse()?;
/// assert_eq!(thin.classes("1in".parse()?)?.to_string(), "FN1");
/// assert_eq!(thin.to_string(), "press, thin tube");
///
/// let error = "H7".parse::<Spec>().unwrap_err();
/// assert_eq!(error.to_string(), "H7 is one part's class, and a pair has two");
/// assert_eq!("loose".parse::<Spec>().unwrap_err().choices().len(), 2);
/// # Ok::<(), fits_core::Error>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub enum Spec {
    /// Classes of a standard.
    Classes(FitClasses),
    /// A shop's word, for solid steel with nothing else known; for other
    /// circumstances ask [`Word::choose`].
    Word(Word),
    /// The same where the outer part is a thin tube.
    ThinWord(Word),
}

/// What is written behind a word where the outer part is thin.
const THIN: [&str; 3] = ["thin tube", "thin wall", "thin"];

impl Spec {
    /// What a word's classes are chosen by.
    fn circumstance(self, size: Size) -> Circumstance {
        let plain = Circumstance::plain(size.length());
        if matches!(self, Self::ThinWord(_)) { plain.with_thin_wall() } else { plain }
    }

    /// The classes that it comes to at a size.
    ///
    /// # Errors
    /// A word has none there.
    ///
    /// ```
    /// use fits_core::{Size, shop::Spec};
    /// let press: Spec = "press".parse()?;
    /// let classes = |size: &str| -> Result<_, fits_core::Error> {
    ///     Ok(press.classes(size.parse::<Size>()?)?.to_string())
    /// };
    /// // A word goes by the unit that its size is thought in.
    /// assert_eq!((classes("1in")?.as_str(), classes("25mm")?.as_str()), ("FN2", "H7/s6"));
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn classes(self, size: Size) -> Result<FitClasses, Error> {
        match self {
            Self::Classes(classes) => Ok(classes),
            Self::Word(word) | Self::ThinWord(word) => {
                Ok(word.choose(&self.circumstance(size))?.classes(size))
            }
        }
    }

    /// The fit that it comes to at a size.
    ///
    /// # Errors
    /// A class is not defined there.
    ///
    /// ```
    /// use fits_core::shop::Spec;
    /// let fit = "H7/p6".parse::<Spec>()?.fit("20mm".parse()?)?;
    /// assert_eq!(fit.interference().to_string(), "0.001 to 0.035 mm");
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn fit(self, size: Size) -> Result<Fit, Error> {
        self.classes(size)?.fit(size.length())
    }

    /// Why the limits are what they are; of a word, why its classes are first.
    ///
    /// # Errors
    /// As [`Spec::fit`].
    ///
    /// ```
    /// use fits_core::shop::Spec;
    /// let reasons = "H7/g6".parse::<Spec>()?.reasons("20mm".parse()?)?;
    /// assert_eq!((reasons[0].figure.as_str(), reasons[0].value.to_string().as_str()), ("IT7", "21 um"));
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn reasons(self, size: Size) -> Result<Vec<Reason>, Error> {
        let mut reasons = self.classes(size)?.reasons(size.length())?;
        if let Self::Word(word) | Self::ThinWord(word) = self {
            let choice = word.choose(&self.circumstance(size))?;
            reasons.insert(0, choice.explained());
        }
        Ok(reasons)
    }
}

impl fmt::Display for Spec {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Classes(classes) => classes.fmt(f),
            Self::Word(word) => f.pad(word.name()),
            Self::ThinWord(word) => f.pad(&format!("{}, {}", word.name(), THIN[0])),
        }
    }
}

impl FromStr for Spec {
    type Err = Error;

    /// Reads `H7/g6`, `RC4`, `press` and `press, thin tube`.
    ///
    /// # Errors
    /// Neither classes of a pair nor a word of the shop, or a word that means
    /// several fits.
    fn from_str(text: &str) -> Result<Self, Error> {
        let (start, body) = (text.len() - text.trim_start().len(), text.trim());
        if body.starts_with(|c: char| !c.is_alphabetic()) {
            return Err(Error::not_a_class(
                "a fit is named by its classes or by a word",
                "write `H7/g6`, `RC4` or `press`",
            )
            .at(start, start + body.len()));
        }
        // A word has no digit, and classes have one.
        if body.contains(|c: char| c == '/' || c.is_ascii_digit()) {
            let read = body.parse().map(Self::Classes);
            return read.map_err(|error| match error.span() {
                Some(span) => error.at(span.start + start, span.end + start),
                None => error.at(start, start + body.len()),
            });
        }
        let thin = THIN.iter().find_map(|thin| body.strip_suffix(thin));
        let before =
            thin.map(|word| word.trim_end_matches(|c: char| c == ',' || c.is_whitespace()));
        if let Some(Ok(word)) = before.filter(|word| !word.is_empty()).map(Word::find) {
            return Ok(Self::ThinWord(word));
        }
        Word::find(body).map(Self::Word).map_err(|error| error.at(start, start + body.len()))
    }
}

impl From<FitClasses> for Spec {
    fn from(classes: FitClasses) -> Self {
        Self::Classes(classes)
    }
}

impl From<Word> for Spec {
    fn from(word: Word) -> Self {
        Self::Word(word)
    }
}

/// A nominal size and what is written behind it: `20mm H7/g6`, `1in press`.
///
/// ```
/// use fits_core::{Kind, shop::FitDesignation};
/// let metric: FitDesignation = "25.4mm press".parse()?;
/// let inch: FitDesignation = "1in press".parse()?;
/// assert_eq!(metric.fit()?.shaft().lower(), "25.435mm".parse()?);
/// assert_eq!(inch.fit()?.shaft().lower(), "1.0014in".parse()?);
/// assert_eq!(inch.fit()?.kind(), Kind::Interference);
/// assert_eq!(inch.to_string(), "1 in press");
///
/// let error = "20mm".parse::<FitDesignation>().unwrap_err();
/// assert_eq!(error.advice(), "write it behind the size, as `20mm H7/g6` or `1in press`");
/// assert!(!metric.reasons()?.is_empty());
/// # Ok::<(), fits_core::Error>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[expect(clippy::exhaustive_structs, reason = "a size and a fit are all")]
pub struct FitDesignation {
    /// The nominal size, in its own unit.
    pub size: Size,
    /// What was written behind it.
    pub spec: Spec,
}

impl FitDesignation {
    /// The fit.
    ///
    /// # Errors
    /// As [`Spec::fit`].
    pub fn fit(&self) -> Result<Fit, Error> {
        self.spec.fit(self.size)
    }

    /// Why its limits are what they are.
    ///
    /// # Errors
    /// As [`Spec::fit`].
    pub fn reasons(&self) -> Result<Vec<Reason>, Error> {
        self.spec.reasons(self.size)
    }
}

impl fmt::Display for FitDesignation {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(&format!("{} {}", self.size, self.spec))
    }
}

impl FromStr for FitDesignation {
    type Err = Error;

    /// Reads a size with its unit, then a [`Spec`].
    ///
    /// # Errors
    /// One of the two cannot be read, or is missing.
    fn from_str(text: &str) -> Result<Self, Error> {
        let start = text.len() - text.trim_start().len();
        let number = text.get(start..).unwrap_or_default();
        let shifted = |error: Error| match error.span() {
            Some(span) => error.at(span.start + start, span.end + start),
            None => error,
        };
        let digits = Number::scan(number).map_err(shifted)?.map_or(0, |(_, taken)| taken);
        let rest = number.get(digits..).unwrap_or_default();
        let unit_from = digits + (rest.len() - rest.trim_start().len());
        let unit = Unit::scan(rest.trim_start()).map_or(0, |(_, taken)| taken);
        let (size, spec) = number.split_at(unit_from + unit);
        let size: Size = size.parse().map_err(shifted)?;
        if spec.trim().is_empty() {
            return Err(Error::not_a_class(
                "the size stands alone, and nothing says how the pair fits",
                "write it behind the size, as `20mm H7/g6` or `1in press`",
            )
            .at(start, text.len()));
        }
        let from = text.len() - spec.len();
        let spec = spec.parse().map_err(|error: Error| match error.span() {
            Some(span) => error.at(span.start + from, span.end + from),
            None => error.at(from, text.len()),
        })?;
        Ok(Self { size, spec })
    }
}
