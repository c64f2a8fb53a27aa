//! What a shop's words for fits mean: `press`, `slip`, `running`.
//!
//! From `data/shop_words.csv`, whose rows say how each is known. The inch
//! class is named here; its limits are ANSI B4.1's business.

mod circumstance;
#[rustfmt::skip]
#[allow(clippy::unreadable_literal, reason = "generated")]
#[path = "words_table.rs"]
mod table;

pub use self::circumstance::{Circumstance, Hub};
use crate::{
    error::{Error, Kind},
    fit::Fit,
    nearest::{nearest, plain},
    size::Length,
    source::{Known, Provenance, Reason},
    standards::iso286::Class,
};

/// A shop's word for a fit.
///
/// ```
/// use fits_core::shop::words::{Circumstance, Hub, Word};
/// let press = Word::find("press-fit")?;
/// let choice = press.choose(&Circumstance::plain("1in".parse()?))?;
/// assert_eq!(choice.iso.0.to_string(), "H7");
/// assert_eq!(choice.iso.1.to_string(), "s6");
/// assert_eq!(choice.inch, "FN2");
/// assert_eq!(choice.looser.map(Word::name), Some("drive"));
///
/// let thin = Circumstance::plain("1in".parse()?).with_thin_wall();
/// let choice = press.choose(&thin)?;
/// assert_eq!((choice.inch, choice.changed_by), ("FN1", Some("thin wall")));
/// assert!(choice.work_it_out);
/// assert_eq!((press.name(), press.moves()), ("press", false));
/// assert_eq!(press.looser().map(Word::name), Some("drive"));
/// assert_eq!(press.tighter().map(Word::name), Some("heavy drive"));
/// assert!(!press.aliases().is_empty());
/// // A push fit is cut to the tight part of its range, a press to all of it.
/// assert!(Word::find("push")?.suit_percent() < press.suit_percent());
/// # Ok::<(), fits_core::Error>(())
/// ```
#[derive(Clone, Copy, Debug)]
pub struct Word(&'static Entry);

#[derive(Debug)]
struct Entry {
    name: &'static str,
    aliases: &'static [&'static str],
    looser: &'static str,
    tighter: &'static str,
    suit_percent: u8,
    moves: bool,
    rows: &'static [Row],
}

/// Holds for sizes over `over` up to and including `up_to`.
#[derive(Debug)]
struct Row {
    when: Option<When>,
    over: Length,
    up_to: Length,
    hole: &'static str,
    shaft: &'static str,
    inch: &'static str,
    work_it_out: bool,
    reason: &'static str,
    from: Provenance,
}

/// A case that changes the choice. Where several hold the first one counts.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum When {
    PlasticBushing,
    BronzeBushing,
    ThinWall,
    Aluminium,
    CastIron,
    Long,
    Turns,
}

impl When {
    const ALL: [Self; 7] = [
        Self::PlasticBushing,
        Self::BronzeBushing,
        Self::ThinWall,
        Self::Aluminium,
        Self::CastIron,
        Self::Long,
        Self::Turns,
    ];

    const fn words(self) -> &'static str {
        match self {
            Self::PlasticBushing => "plastic",
            Self::BronzeBushing => "bronze bushing",
            Self::ThinWall => "thin wall",
            Self::Aluminium => "aluminium",
            Self::CastIron => "cast iron",
            Self::Long => "long",
            Self::Turns => "turns",
        }
    }

    fn holds(self, case: &Circumstance) -> bool {
        match self {
            Self::PlasticBushing => case.hub == Hub::PlasticBushing,
            Self::BronzeBushing => case.hub == Hub::BronzeBushing,
            Self::ThinWall => case.thin_wall,
            Self::Aluminium => case.hub == Hub::Aluminium,
            Self::CastIron => case.hub == Hub::CastIron,
            // More than 1.5 diameters.
            Self::Long => case.length.is_some_and(|length| {
                let (length, nominal) =
                    (length.tenth_nanometres(), case.nominal.tenth_nanometres());
                i128::from(length) * 2 > i128::from(nominal) * 3
            }),
            Self::Turns => case.turns == Some(true),
        }
    }
}

/// The class that a word leads to.
///
/// ```
/// use fits_core::shop::words::{Circumstance, Word};
/// let choice = Word::find("press")?.choose(&Circumstance::plain("1in".parse()?))?;
/// assert_eq!(choice.explained().source, choice.source);
/// # Ok::<(), fits_core::Error>(())
/// ```
#[derive(Clone, Copy, Debug)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct Choice {
    /// The word it was chosen for.
    pub word: Word,
    /// The classes of the hole and the shaft, ISO 286.
    pub iso: (Class, Class),
    /// The class of ANSI B4.1.
    pub inch: &'static str,
    /// Why.
    pub reason: &'static str,
    /// How that is known.
    pub known: Known,
    /// Where it is written.
    pub source: &'static str,
    /// The circumstance that changed the classes from the word's usual ones.
    pub changed_by: Option<&'static str>,
    /// The circumstance whose row was taken, whether it changed the classes or
    /// only what is to be known of them.
    pub row_of: Option<&'static str>,
    /// The next looser word.
    pub looser: Option<Word>,
    /// The next tighter word.
    pub tighter: Option<Word>,
    /// The class is a start: work out pressure, stress, what heat leaves of
    /// the grip, and how far a bore closes in.
    pub work_it_out: bool,
}

impl Choice {
    /// Why the classes are what they are.
    pub fn explained(&self) -> Reason {
        Reason {
            figure: format!("{} fit", self.word.name()),
            value: format!("{}/{} ({})", self.iso.0, self.iso.1, self.inch).into(),
            rule: self.reason.into(),
            source: self.source.into(),
            known: self.known,
        }
    }
}

/// A word as it is said before `fit`, in the letters of the tables.
fn without_fit(said: &str) -> &str {
    ["fits", "fit", "fitting"]
        .iter()
        .find_map(|end| said.strip_suffix(end).and_then(|rest| rest.strip_suffix(' ')))
        .unwrap_or(said)
}

impl PartialEq for Word {
    /// Names are unique.
    fn eq(&self, other: &Self) -> bool {
        self.0.name == other.0.name
    }
}

impl Eq for Word {}

impl Word {
    /// Every word, from the loosest to the tightest, `shrink` last.
    ///
    /// ```
    /// use fits_core::shop::words::Word;
    /// assert_eq!(Word::all().next_back().map(Word::name), Some("shrink"));
    /// ```
    pub fn all() -> impl DoubleEndedIterator<Item = Self> {
        table::WORDS.iter().map(Self)
    }

    /// The word that a text means. Letter case, hyphens and a closing `fit`
    /// are not regarded.
    ///
    /// # Errors
    /// No such word (the advice offers the nearest one), or one that a shop
    /// uses for several fits (the choices name them).
    ///
    /// ```
    /// use fits_core::shop::words::Word;
    /// assert_eq!(Word::find("Slip fit")?.name(), "sliding");
    /// let error = Word::find("slidding").unwrap_err();
    /// assert_eq!(error.advice(), "nearest: sliding");
    /// let error = Word::find("loose").unwrap_err();
    /// assert_eq!(error.choices(), ["free running", "loose running"]);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn find(text: &str) -> Result<Self, Error> {
        if let Some(word) = Self::named(text) {
            return Ok(word);
        }
        let said = plain(text);
        let bare = without_fit(&said);
        if let Some((_, means)) = table::AMBIGUOUS.iter().find(|(known, _)| *known == bare) {
            return Err(Error::new(Kind::Ambiguous {
                why: format!("`{bare}` can mean {}", means.join(" or ")).into(),
                choices: means.iter().map(|word| (*word).to_owned()).collect(),
            }));
        }
        #[cfg(feature = "uom")]
        if crate::standards::materials::Material::named(bare).is_some() {
            return Err(Error::not_listed(
                format!("`{}` is a material, and no word for a fit is said", text.trim()),
                "say the fit first, then hub and what it is made of",
            ));
        }
        let known = Self::all()
            .flat_map(|word| core::iter::once(word.name()).chain(word.aliases().iter().copied()));
        Err(Error::not_listed(
            format!("`{}` is not a word for a fit here", text.trim()),
            nearest(bare, known).map_or_else(
                || {
                    let names: Vec<_> = Self::all().map(Self::name).collect();
                    format!("words: {}", names.join(", "))
                },
                |word| format!("nearest: {word}"),
            ),
        ))
    }

    /// The word that a text means, where it is one: [`Word::find`] says why it is none.
    ///
    /// ```
    /// use fits_core::shop::words::Word;
    /// assert_eq!(Word::named("slip fit"), Word::find("slip fit").ok());
    /// assert!(Word::named("slidding").is_none());
    /// ```
    pub fn named(text: &str) -> Option<Self> {
        let said = plain(text);
        let bare = without_fit(&said);
        Self::all().find(|word| word.is_called(bare))
    }

    /// What a shop says of more than one fit, as `tight`: [`Word::find`] names
    /// the words that each could mean.
    ///
    /// ```
    /// use fits_core::shop::words::Word;
    /// assert!(Word::ambiguous().all(|said| Word::find(said).is_err_and(|error| error.is_ambiguous())));
    /// ```
    pub fn ambiguous() -> impl Iterator<Item = &'static str> {
        table::AMBIGUOUS.iter().map(|(said, _)| *said)
    }

    fn is_called(self, text: &str) -> bool {
        self.name() == text || self.aliases().contains(&text)
    }

    fn with_name(name: &str) -> Option<Self> {
        Self::all().find(|word| word.name() == name)
    }

    /// The word itself.
    pub const fn name(self) -> &'static str {
        self.0.name
    }

    /// Other ways to say it; no two words share one.
    pub const fn aliases(self) -> &'static [&'static str] {
        self.0.aliases
    }

    /// The next looser word.
    pub fn looser(self) -> Option<Self> {
        Self::with_name(self.0.looser)
    }

    /// The next tighter word.
    pub fn tighter(self) -> Option<Self> {
        Self::with_name(self.0.tighter)
    }

    /// Does one part move in the other with this fit?
    pub const fn moves(self) -> bool {
        self.0.moves
    }

    /// With one part in hand, the share of the clearance range, counted from
    /// its tight end, that the other one is cut to, in percent.
    pub const fn suit_percent(self) -> u8 {
        self.0.suit_percent
    }

    /// The classes for this word in a circumstance.
    ///
    /// # Errors
    /// A part that turns in a fit that holds it still, a length below
    /// nothing, or a size that ISO 286 does not reach.
    ///
    /// ```
    /// use fits_core::shop::words::{Circumstance, Word};
    /// let press = Word::find("press")?.choose(&Circumstance::plain("1in".parse()?))?;
    /// assert_eq!((press.iso.1.to_string().as_str(), press.inch), ("s6", "FN2"));
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn choose(self, case: &Circumstance) -> Result<Choice, Error> {
        let row_for = |when| {
            self.0.rows.iter().find(|row| {
                row.when == when && row.over < case.nominal && case.nominal <= row.up_to
            })
        };
        let usual = row_for(None).ok_or_else(|| self.none_at())?;
        if case.turns == Some(true) && !self.0.moves && row_for(Some(When::Turns)).is_none() {
            return Err(Error::not_listed(
                format!("a {} fit holds the shaft still: it cannot turn", self.name()),
                "for a part that turns: sliding, running, medium running",
            ));
        }
        if case.length.is_some_and(|length| !length.is_positive()) {
            return Err(Error::not_defined("the length of engagement must be above 0"));
        }
        let special = When::ALL
            .into_iter()
            .filter(|when| when.holds(case))
            .find_map(|when| row_for(Some(when)).map(|row| (when, row)));
        let row = special.map_or(usual, |(_, row)| row);
        let differs = (row.hole, row.shaft, row.inch) != (usual.hole, usual.shaft, usual.inch);
        let iso: (Class, Class) = (row.hole.parse()?, row.shaft.parse()?);
        // A choice that cannot be cut is not a choice.
        Fit::of_classes(case.nominal, iso.0, iso.1)?;
        Ok(Choice {
            word: self,
            iso,
            inch: row.inch,
            reason: row.reason,
            known: row.from.known,
            source: row.from.text,
            changed_by: special.filter(|_| differs).map(|(when, _)| when.words()),
            row_of: special.map(|(when, _)| when.words()),
            looser: self.looser(),
            tighter: self.tighter(),
            work_it_out: row.work_it_out,
        })
    }

    /// Every word reaches every size above 0.
    fn none_at(self) -> Error {
        Error::not_defined(format!("a {} fit needs a size above 0", self.name()))
    }
}
