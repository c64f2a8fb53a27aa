//! Which tool of the crib serves: the drill that a bore begins with, the plan
//! that it leads to, and what a hole is drilled and reamed with.

use crate::{
    error::Error,
    job::{Crib, OwnDrill, Reamer},
    shop::{CutRules, Passes, PreDrill, Ream, Start},
    size::{Length, Limits, Unit},
    standards::{
        drills::{Drill, Series},
        iso286::Feature,
    },
};

/// The drill that a bore begins with.
#[derive(Clone, Debug)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct FirstDrill {
    /// The drill.
    pub drill: OwnDrill,
    /// It is one of the crib; otherwise one that most shops have.
    pub is_own: bool,
    /// The standard drill that would leave less to bore, where the crib's is
    /// smaller.
    pub rather: Option<Drill>,
}

/// A plan of passes, and the drill that it begins with.
#[derive(Clone, Debug)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct CribPlan {
    /// The drill, of a bore whose start was not said.
    pub first_drill: Option<FirstDrill>,
    /// The passes.
    pub passes: Passes,
}

/// What a hole is drilled and reamed with.
#[derive(Clone, Debug)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct Reaming {
    /// The standard drill before the reamer, of the asker's own system.
    pub drill: Option<PreDrill>,
    /// A number or letter drill, where the fraction leaves more than the most
    /// stock.
    pub other_drill: Option<PreDrill>,
    /// The drill of the crib before the reamer, and what it leaves.
    pub own_drill: Option<(OwnDrill, Length)>,
    /// No drill leaves fitting stock: bore to this first.
    pub bore_to: Option<Length>,
    /// The drill that this bore begins with.
    pub first_drill: Option<FirstDrill>,
    /// The reamers of the crib that land inside the limits, the best first.
    pub reamers: Vec<Reamer>,
    /// The one that comes nearest, where none lands.
    pub nearest: Option<Reamer>,
}

impl Crib {
    /// What cuts keep to with these tools: a bore that the smallest boring bar
    /// goes into, where the crib has bars.
    ///
    /// ```
    /// use fits_core::{job::{Bar, Crib}, shop::CutRules};
    /// let mut crib = Crib::default();
    /// crib.bar.push(Bar { bore: "6mm".parse()?, reach: None });
    /// let rules = crib.cut_rules(CutRules::stepping("0.01mm".parse()?));
    /// assert_eq!(rules.smallest_bore, "6mm".parse()?);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    #[must_use]
    pub fn cut_rules(&self, rules: CutRules) -> CutRules {
        CutRules { smallest_bore: self.smallest_bar().unwrap_or(rules.smallest_bore), ..rules }
    }

    /// The smallest bore that a boring bar of the crib goes into, where it has
    /// bars.
    ///
    /// ```
    /// use fits_core::job::{Bar, Crib};
    /// let mut crib = Crib::default();
    /// assert_eq!(crib.smallest_bar(), None);
    /// for bore in ["12mm", "6mm"] {
    ///     crib.bar.push(Bar { bore: bore.parse()?, reach: None });
    /// }
    /// assert_eq!(crib.smallest_bar(), Some("6mm".parse()?));
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn smallest_bar(&self) -> Option<Length> {
        self.bar.iter().map(|bar| bar.bore).min()
    }

    /// Few small shops own a larger drill than 1/2 in or 12.5 mm, whichever
    /// system they think in (common practice, no source).
    ///
    /// ```
    /// use fits_core::{job::Crib, size::Unit};
    /// assert_eq!(Crib::usual_largest_drill(Unit::Inch), "1/2in".parse()?);
    /// assert_eq!(Crib::usual_largest_drill(Unit::Millimetre), "12.5mm".parse()?);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub const fn usual_largest_drill(unit: Unit) -> Length {
        Length::from_tenth_nanometres(if unit.is_inch() { 127_000_000 } else { 125_000_000 })
    }

    /// No larger drill is asked for: what few small shops go beyond, or the
    /// largest of the crib.
    ///
    /// ```
    /// use fits_core::{job::{Bar, Crib}, shop::CutRules, size::Unit};
    /// let bar = Bar { bore: "6mm".parse()?, reach: None };
    /// let mut crib = Crib::default();
    /// crib.bar = vec![bar];
    /// assert_eq!(crib.largest_drill(Unit::Inch), Crib::usual_largest_drill(Unit::Inch));
    /// assert_eq!(crib.largest_drill(Unit::Inch), "1/2in".parse()?);
    /// let rules = crib.cut_rules(CutRules::stepping("0.01mm".parse()?));
    /// assert_eq!(Some(rules.smallest_bore), crib.smallest_bar());
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn largest_drill(&self, unit: Unit) -> Length {
        let own = self.each_drill().map(|drill| drill.size).max();
        let usual = Self::usual_largest_drill(unit);
        own.unwrap_or(usual).max(usual)
    }

    /// The drill that a bore begins with: one of the crib, where it has one in
    /// reach, otherwise a standard one of the asker's own system.
    ///
    /// ```
    /// use fits_core::{job::Crib, shop::CutRules, size::Unit, standards::iso286::Class};
    /// let hole = "H7".parse::<Class>()?.limits("20mm".parse()?)?;
    /// let rules = CutRules::stepping("0.01mm".parse()?);
    /// let first = Crib::default().first_drill(hole, &rules, Unit::Millimetre).expect("in reach");
    /// assert_eq!((first.drill.name().as_str(), first.is_own), ("12.5 mm", false));
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn first_drill(&self, bore: Limits, rules: &CutRules, unit: Unit) -> Option<FirstDrill> {
        let range = Passes::drill_range(bore, rules).ok()?;
        let series = if unit.is_inch() { Series::Fraction } else { Series::Metric };
        let largest = range.upper().min(self.largest_drill(unit));
        let usual = Drill::largest(range.lower(), largest, &[series]);
        if let Some(drill) = self.drill_between(range.lower(), range.upper()) {
            let rather = usual.filter(|usual| usual.diameter() > drill.size);
            return Some(FirstDrill { drill, is_own: true, rather });
        }
        usual.filter(|drill| drill.diameter() <= Self::usual_largest_drill(unit)).map(|drill| {
            let called = Some(drill.name().to_owned());
            let drill = OwnDrill { size: drill.diameter(), called };
            FirstDrill { drill, is_own: false, rather: None }
        })
    }

    /// The passes to a part's limits with these tools: a bore whose start is
    /// not said begins with a drill of the crib, or one that most shops have.
    ///
    /// From a size that was measured it is not asked whether a bar goes in:
    /// compare [`Crib::smallest_bar`] with it.
    ///
    /// # Errors
    /// As [`Passes::plan`].
    ///
    /// ```
    /// use fits_core::{
    ///     job::{Crib, OwnDrill},
    ///     shop::{CutRules, Start},
    ///     size::Unit,
    ///     standards::iso286::{Class, Feature},
    /// };
    /// let own = OwnDrill { size: "18mm".parse()?, called: None };
    /// let mut crib = Crib::default();
    /// crib.drill = vec![own];
    /// let hole = "H7".parse::<Class>()?.limits("20mm".parse()?)?;
    /// let rules = CutRules::stepping("0.01mm".parse()?);
    /// let plan = crib.plan(Feature::Hole, hole, Start::Open, rules, Unit::Millimetre)?;
    /// assert!(plan.first_drill.is_some_and(|first| first.is_own));
    /// assert_eq!(plan.passes.start, Some("18mm".parse()?));
    /// assert_eq!(plan.passes.list.last().map(|pass| pass.to), Some(hole.middle()));
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn plan(
        &self,
        feature: Feature,
        limits: Limits,
        start: Start,
        rules: CutRules,
        unit: Unit,
    ) -> Result<CribPlan, Error> {
        let mut rules = self.cut_rules(rules);
        if matches!(start, Start::From(_)) {
            rules.smallest_bore = rules.smallest_bore.min(CutRules::SMALLEST_BORE);
        }
        let first_drill = match (feature, start) {
            (Feature::Hole, Start::Open) => self.first_drill(limits, &rules, unit),
            _ => None,
        };
        let start = first_drill.as_ref().map_or(start, |first| Start::Drilled(first.drill.size));
        Ok(CribPlan { passes: Passes::plan(feature, limits, start, &rules)?, first_drill })
    }

    /// What a hole is drilled and reamed with.
    ///
    /// ```
    /// use fits_core::{
    ///     job::{Crib, Reamer},
    ///     shop::{CutRules, Ream},
    ///     size::Unit,
    ///     standards::iso286::Class,
    /// };
    /// let ten = Reamer { size: "10mm".parse()?, cuts: Some("10.008mm".parse()?) };
    /// let mut crib = Crib::default();
    /// crib.reamer = vec![ten];
    /// let ream = Ream::of("H7".parse::<Class>()?.limits("10mm".parse()?)?)?;
    /// let rules = CutRules::stepping("0.01mm".parse()?);
    /// let reaming = crib.reaming(&ream, rules, Unit::Millimetre);
    /// assert_eq!(reaming.reamers, [ten]);
    /// assert_eq!(reaming.drill.map(|found| found.drill.name()), Some("9.7 mm"));
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn reaming(&self, ream: &Ream, rules: CutRules, unit: Unit) -> Reaming {
        // A number or letter drill where the fraction leaves too much.
        let (drill, other) = if unit.is_inch() {
            let fits = ream.fraction.is_some_and(|it| it.leaves <= ream.stock.upper());
            let nearer = |it: &PreDrill| ream.fraction.is_none_or(|first| it.leaves < first.leaves);
            (ream.fraction, ream.number.filter(|it| !fits && nearer(it)))
        } else {
            (ream.metric, None)
        };
        let largest = self.largest_drill(unit);
        let owned = |found: &PreDrill| found.drill.diameter() <= largest;
        let (drill, other) = (drill.filter(owned), other.filter(owned));
        let own_drill = self.pre_drill(ream).ok().flatten();
        let rules = self.cut_rules(rules);
        let is_bored = drill.or(other).is_none() && own_drill.is_none();
        let bored = (is_bored && ream.before() >= rules.smallest_bore)
            .then(|| Limits::new(ream.before(), ream.before()).ok())
            .flatten();
        let reamers: Vec<Reamer> =
            self.reamers_for(ream).into_iter().map(|found| found.reamer).collect();
        Reaming {
            drill: drill.or(other),
            other_drill: drill.and(other),
            own_drill,
            bore_to: bored.map(Limits::lower),
            first_drill: bored.and_then(|before| self.first_drill(before, &rules, unit)),
            nearest: if reamers.is_empty() { self.nearest_reamer(ream.hole) } else { None },
            reamers,
        }
    }

    /// The nearest drills of the crib about a size: under it and over it, or
    /// one of that very size alone.
    ///
    /// ```
    /// use fits_core::job::{Crib, OwnDrill};
    /// let own = |text: &str| Ok::<_, fits_core::Error>(OwnDrill { size: text.parse()?, called: None });
    /// let mut crib = Crib::default();
    /// crib.drill = vec![own("6mm")?, own("8mm")?];
    /// let (under, over) = crib.drills_about("6.5mm".parse()?);
    /// assert_eq!((under, over), (Some(own("6mm")?), Some(own("8mm")?)));
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn drills_about(&self, size: Length) -> (Option<OwnDrill>, Option<OwnDrill>) {
        let drills = self.drills();
        let under = drills.iter().rfind(|drill| drill.size <= size);
        let is_exact = under.is_some_and(|drill| drill.size == size);
        let over = drills.iter().find(|drill| drill.size > size && !is_exact);
        (under.cloned(), over.cloned())
    }
}
