//! Which standard fits give a wanted clearance or interference.
//!
//! The search goes through every hole H with every shaft and every hole with
//! every shaft h of ISO 286 in the grades IT4 to IT13, and through every class
//! of ASME B4.1. The order of the answers is common practice, no source: what
//! there are reamers and gauges for, then what is easier to make.

use core::{cmp::Reverse, fmt};

use crate::{
    error::Error,
    fit::{Basis, Fit},
    shop::pick_table,
    size::{Length, Limits},
    standards::{
        b41,
        iso286::{Class, Feature, Grade, Letter},
    },
};

/// How many near misses are named when nothing fits.
const MISSES: usize = 5;

/// The classes of a fit, in one system or the other.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[expect(
    clippy::exhaustive_enums,
    reason = "each is told, or acted on, in its own way: a new one must not pass unseen"
)]
pub enum FitClasses {
    /// A hole and a shaft of ISO 286, as H7/g6.
    Iso286 {
        /// The hole's class.
        hole: Class,
        /// The shaft's class.
        shaft: Class,
    },
    /// A class of ASME B4.1, as RC4.
    B41(b41::Class),
}

impl fmt::Display for FitClasses {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Iso286 { hole, shaft } => f.pad(&format!("{hole}/{shaft}")),
            Self::B41(class) => class.fmt(f),
        }
    }
}

/// A standard fit that gives, or nearly gives, the clearance wanted.
///
/// ```
/// use fits_core::{Limits, shop::pick};
/// let wanted = Limits::new("0.005mm".parse()?, "0.045mm".parse()?)?;
/// let found = pick("20mm".parse()?, wanted)?;
/// // H7/g6 gives 0.007 to 0.041 mm.
/// assert!(!found[0].is_miss());
/// # Ok::<(), fits_core::Error>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct Candidate {
    /// Its classes.
    pub classes: FitClasses,
    /// Its limits at the nominal size.
    pub fit: Fit,
    /// Is it one of the preferred fits of ANSI B4.2, or a class of ASME B4.1,
    /// which are all preferred fits?
    pub preferred: bool,
    /// How far its clearance range reaches outside the wanted one, on the
    /// worse side; nothing where it lies inside.
    pub outside: Length,
    /// The grades' numbers of hole and shaft: the greater, the easier.
    pub grades: (u8, u8),
}

impl Candidate {
    /// Does its clearance range reach outside the wanted one?
    pub fn is_miss(&self) -> bool {
        self.outside.is_positive()
    }
}

/// A part of a fit before any pairing.
#[derive(Clone, Copy)]
struct Part {
    class: Class,
    grade: u8,
    lower: i64,
    upper: i64,
}

impl Part {
    /// A class at a size; none where the standard does not define it there.
    fn of(class: Class, grade: u8, nominal: Length) -> Result<Option<Self>, Error> {
        let ends = class.ends_if_defined(nominal)?;
        Ok(ends.map(|(lower, upper)| Self {
            class,
            grade,
            lower: lower.tenth_nanometres(),
            upper: upper.tenth_nanometres(),
        }))
    }
}

/// A pair weighed, before anything is built of it. Everything in counts of
/// 0.1 nm.
struct Weighed {
    classes: FitClasses,
    basis: Basis,
    grades: (u8, u8),
    preferred: bool,
    outside: i64,
    /// All that is wanted lies inside.
    holds: bool,
    off_centre: i64,
}

impl Weighed {
    /// Preferred classes first and letters of fine mechanisms last; coarser
    /// grades, where a preferred fit counts one grade coarser than it is; a
    /// preferred fit before its equals; grades that suit each other; then what
    /// lies nearest to the middle of the wanted range.
    fn ease(&self) -> impl Ord + use<> {
        let (hole, shaft) = self.grades;
        let sum = u16::from(hole) + u16::from(shaft);
        // A shaft coarser than its hole is one step worse: holes are harder.
        let unlike = hole.abs_diff(shaft) + u8::from(shaft > hole);
        (
            rarity(self.classes),
            Reverse(sum + u16::from(self.preferred)),
            !self.preferred,
            unlike,
            self.off_centre,
            !matches!(self.basis, Basis::Hole | Basis::Both),
        )
    }
}

/// The standard fits whose whole clearance range lies inside a wanted one at a
/// nominal size, preferred classes and the easiest to make first. Interference is
/// clearance below zero. When none lies inside, up to five nearest misses, the
/// nearest first.
///
/// Two classes that each stand in a preferred fit come first, letters such as EF
/// last. Then coarser grades come first; a preferred fit counts as one grade coarser and
/// stands before its equals; then grades that suit each other, then the middle
/// of the wanted range.
///
/// # Errors
/// The nominal size is outside the tables of ISO 286.
///
/// ```
/// use fits_core::{Length, Limits, shop::pick};
/// let wanted = Limits::new("0.007mm".parse()?, "0.041mm".parse()?)?;
/// let found = pick(Length::from_millimetres(20)?, wanted)?;
/// assert_eq!(found[0].classes.to_string(), "H7/g6");
/// assert!(found.iter().all(|candidate| !candidate.is_miss()));
///
/// let press = Limits::new("-0.0019in".parse()?, "-0.0006in".parse()?)?;
/// let found = pick("1in".parse()?, press)?;
/// assert!(found.iter().any(|candidate| candidate.classes.to_string() == "FN2"));
///
/// let hopeless = Limits::new("0.010mm".parse()?, "0.012mm".parse()?)?;
/// assert!(pick(Length::from_millimetres(20)?, hopeless)?[0].is_miss());
/// # Ok::<(), fits_core::Error>(())
/// ```
pub fn pick(nominal: Length, wanted: Limits) -> Result<Vec<Candidate>, Error> {
    let holes = parts(Feature::Hole, nominal)?;
    let shafts = parts(Feature::Shaft, nominal)?;
    let is_h = |part: &&Part| part.class.letter == Letter::H;
    let mut all = Vec::new();
    for hole in &holes {
        for shaft in &shafts {
            if is_h(&hole) || is_h(&shaft) {
                all.push(pair(hole, shaft, wanted));
            }
        }
    }
    all.extend(b41::Class::all().filter_map(|class| inch(class, nominal, wanted)));
    let any_inside = all.iter().any(|weighed| weighed.outside == 0);
    if any_inside {
        all.retain(|weighed| weighed.outside == 0);
        all.sort_by_cached_key(Weighed::ease);
    } else {
        all.sort_by_cached_key(|weighed| (weighed.outside, weighed.ease()));
        all.truncate(MISSES);
    }
    all.into_iter().map(|weighed| build(nominal, &weighed)).collect()
}

/// The class of ASME B4.1 that reaches the least outside a wanted clearance; none
/// where its tables do not reach the size.
///
/// ```
/// use fits_core::{Limits, shop::nearest_b41};
/// let wanted = Limits::new("0.001in".parse()?, "0.003in".parse()?)?;
/// let near = nearest_b41("1in".parse()?, wanted)?.expect("an inch size");
/// assert_eq!((near.classes.to_string().as_str(), near.is_miss()), ("RC4", true));
/// # Ok::<(), fits_core::Error>(())
/// ```
///
/// # Errors
/// Out of range.
pub fn nearest_b41(nominal: Length, wanted: Limits) -> Result<Option<Candidate>, Error> {
    let all = b41::Class::all().filter_map(|class| inch(class, nominal, wanted));
    let nearest = all.min_by_key(|weighed| (weighed.outside, weighed.off_centre));
    nearest.map(|weighed| build(nominal, &weighed)).transpose()
}

/// The preferred fits of ISO 286 and the classes of ASME B4.1 that two parts of
/// this clearance could be of, the one whose middle is nearest first. Interference
/// is clearance below zero.
///
/// ```
/// use fits_core::{Length, shop::fits_with};
/// let clearance: Length = "0.0027in".parse()?;
/// let fits = fits_with("3/4in".parse()?, clearance)?;
/// assert!(fits.iter().any(|fit| fit.to_string() == "RC5"));
/// # Ok::<(), fits_core::Error>(())
/// ```
///
/// # Errors
/// The nominal size is outside the tables of ISO 286.
pub fn fits_with(nominal: Length, clearance: Length) -> Result<Vec<FitClasses>, Error> {
    let point = Limits::new(clearance, clearance)?;
    let of = |feature, (letter, number): (usize, u8)| -> Result<Option<Part>, Error> {
        let (Some(letter), Some(grade)) = (Letter::all().nth(letter), Grade::it(number)) else {
            return Ok(None);
        };
        Part::of(Class { feature, letter, grade }, number, nominal)
    };
    let mut found: Vec<Weighed> = Vec::new();
    for fit in &pick_table::PREFERRED {
        let (hole, shaft) = (of(Feature::Hole, fit.hole)?, of(Feature::Shaft, fit.shaft)?);
        found.extend(hole.zip(shaft).map(|(hole, shaft)| pair(&hole, &shaft, point)));
    }
    found.extend(b41::Class::all().filter_map(|class| inch(class, nominal, point)));
    found.retain(|weighed| weighed.holds);
    found.sort_by_key(|weighed| weighed.off_centre);
    Ok(found.into_iter().map(|weighed| weighed.classes).collect())
}

/// Every class of a feature that is defined at the size, IT4 to IT13.
fn parts(feature: Feature, nominal: Length) -> Result<Vec<Part>, Error> {
    let mut found = Vec::with_capacity(280);
    for number in 4..=13 {
        let Some(grade) = Grade::it(number) else {
            continue;
        };
        for letter in Letter::all() {
            found.extend(Part::of(Class { feature, letter, grade }, number, nominal)?);
        }
    }
    Ok(found)
}

fn pair(hole: &Part, shaft: &Part, wanted: Limits) -> Weighed {
    let basis = match (hole.class.letter == Letter::H, shaft.class.letter == Letter::H) {
        (true, true) => Basis::Both,
        (true, false) => Basis::Hole,
        _ => Basis::Shaft,
    };
    weigh(
        FitClasses::Iso286 { hole: hole.class, shaft: shaft.class },
        basis,
        (hole.grade, shaft.grade),
        (hole.lower, hole.upper),
        (shaft.lower, shaft.upper),
        wanted,
    )
}

/// A class of B4.1, where its table reaches the size.
fn inch(class: b41::Class, nominal: Length, wanted: Limits) -> Option<Weighed> {
    let fit = class.fit(nominal).ok()?;
    let from_nominal = |limits: Limits| {
        // Limits stand within an inch of their nominal size.
        (
            limits.lower().tenth_nanometres() - nominal.tenth_nanometres(),
            limits.upper().tenth_nanometres() - nominal.tenth_nanometres(),
        )
    };
    Some(weigh(
        FitClasses::B41(class),
        fit.basis(),
        class.grades(),
        from_nominal(fit.hole()),
        from_nominal(fit.shaft()),
        wanted,
    ))
}

fn weigh(
    classes: FitClasses,
    basis: Basis,
    grades: (u8, u8),
    hole: (i64, i64),
    shaft: (i64, i64),
    wanted: Limits,
) -> Weighed {
    // Table deviations: far below the range of a length.
    let (least, most) = (hole.0 - shaft.1, hole.1 - shaft.0);
    let (lower, upper) = (wanted.lower().tenth_nanometres(), wanted.upper().tenth_nanometres());
    let outside = lower.saturating_sub(least).max(most.saturating_sub(upper)).max(0);
    // Twice the distance between the middles.
    let off_centre =
        (i128::from(least) + i128::from(most) - i128::from(lower) - i128::from(upper)).abs();
    Weighed {
        classes,
        basis,
        grades,
        preferred: is_preferred(classes),
        outside,
        holds: least <= lower && upper <= most,
        off_centre: i64::try_from(off_centre).unwrap_or(i64::MAX),
    }
}

/// How rare reamers and gauges of two classes are: 0 where each stands in a
/// preferred fit; 2 for letters such as EF, which ISO 286-1 has for fine
/// mechanisms.
fn rarity(classes: FitClasses) -> u8 {
    let FitClasses::Iso286 { hole, shaft } = classes else { return 0 };
    let listed = |class: Class, of: fn(&Preferred) -> (usize, u8)| {
        pick_table::PREFERRED.iter().map(of).any(|(letter, grade)| {
            letter == class.letter.index() && Grade::it(grade) == Some(class.grade)
        })
    };
    let is_double = |letter: Letter| letter != Letter::JS && letter.name(Feature::Shaft).len() > 1;
    if listed(hole, |fit| fit.hole) && listed(shaft, |fit| fit.shaft) {
        0
    } else {
        1 + u8::from(is_double(hole.letter) || is_double(shaft.letter))
    }
}

fn is_preferred(classes: FitClasses) -> bool {
    match classes {
        FitClasses::Iso286 { hole, shaft } => pick_table::PREFERRED.iter().any(|fit| {
            (fit.hole.0, fit.shaft.0) == (hole.letter.index(), shaft.letter.index())
                && Grade::it(fit.hole.1) == Some(hole.grade)
                && Grade::it(fit.shaft.1) == Some(shaft.grade)
        }),
        FitClasses::B41(_) => true,
    }
}

fn build(nominal: Length, weighed: &Weighed) -> Result<Candidate, Error> {
    // Of the classes again: their limits know where they come from.
    let (hole, shaft) = match weighed.classes {
        FitClasses::Iso286 { hole, shaft } => (hole.limits(nominal)?, shaft.limits(nominal)?),
        FitClasses::B41(class) => (class.hole(nominal)?, class.shaft(nominal)?),
    };
    Ok(Candidate {
        classes: weighed.classes,
        fit: Fit::build(nominal, hole, shaft, weighed.basis)?,
        preferred: weighed.preferred,
        outside: Length::from_tenth_nanometres(weighed.outside),
        grades: weighed.grades,
    })
}

/// A preferred fit: letter by its position among the 28, and grade number, of
/// hole and of shaft.
#[derive(Debug)]
pub(super) struct Preferred {
    pub(super) hole: (usize, u8),
    pub(super) shaft: (usize, u8),
}
