//! Fits and tolerances for one-off machine work.
//!
//! Exact [`Length`]s, the limits that published standards give, how two parts
//! go together ([`Fit`]), and what a shop does about it: reamers, pre-drills,
//! boring and turning passes, verdicts on readings ([`shop`]).
//!
//! The crate knows no terminal, no file system, no clock and no global state.
//! A question that has no answer is an [`Error`] that says why and what would
//! work; nothing panics.
//!
//! # Which call answers which question
//!
//! | question | call | example |
//! | --- | --- | --- |
//! | What are the limits of `20 H7`? | [`Class::limits`](standards::iso286::Class::limits) | [limits](#limits) |
//! | How do hole and shaft go together? | [`Spec::fit`](shop::Spec::fit), [`Fit`] | [pair](#pair) |
//! | The bore measures 20.013: what shaft? | [`Fit::suit`], [`Fit::suited`] | [suit](#suit-a-reading) |
//! | What does a press fit come to here? | [`Word::choose`](shop::words::Word::choose) | [words](#words) |
//! | Which classes give this clearance? | [`pick`](shop::pick) | [pick](#pick) |
//! | Which reamer, which drill before it? | [`Ream::of`](shop::Ream::of), [`Crib::reaming`](job::Crib::reaming) | [ream](#ream) |
//! | Which cuts, in whole divisions? | [`Crib::plan`](job::Crib::plan), [`Passes::plan`](shop::Passes::plan) | [passes](#passes) |
//! | What do I dial next? | [`Adviser`](shop::adviser::Adviser) | [adviser](#adviser) |
//! | Is the part good, and how sure is that? | [`Measured::judge`](shop::verdict::Measured::judge) | [verdict](#verdict) |
//! | What are a thread's limits? | [`Thread`](standards::thread::Thread) | [thread](#thread) |
//! | Which drill before the tap? | [`TapHole::choose`](shop::tap::TapHole::choose) | [tap](#tap) |
//! | What does it measure over wires? | [`WireThread::over`](shop::wires::WireThread::over) | [wires](#wires) |
//! | Does the joint hold, and does it go together? | [`Joint::solve`](shop::assemble::Joint::solve), [`Heat::plan`](shop::assemble::Heat::plan) | [assemble](#assemble) |
//! | How far does the bushing close in? | [`Bushing::press`](shop::bushing::Bushing::press) | [bushing](#bushing) |
//! | Does it bind or let go when warm? | [`Warm::between`](shop::warm::Warm::between) | [warm](#warm) |
//! | How much play do these parts leave? | [`Stack`](shop::stack::Stack) | [stack](#stack) |
//! | How far do I set the tailstock over? | [`Taper::set_over`](shop::align::Taper::set_over) | [align](#align) |
//! | What is each part of a job cut to, and which first? | [`Job::worked`](job::whole::Job::worked), [`Job::next`](job::whole::Job::next) | [job](#job) |
//!
//! Most answers explain themselves: `reasons` gives each figure with its rule,
//! its source and how it is known ([`source::Reason`]), and `known` the least
//! certain of what went in. A figure that is only recalled is
//! [`Known::Memory`](source::Known::Memory): say so to whoever cuts by it.
//!
//! A type's name says one thing in the whole crate, but for three that several
//! standards use: write those with the module, as [`iso286::Class`] and
//! [`thread::Class`], [`b41::Family`] and [`materials::Family`], [`drills::Series`]
//! and [`thread::Series`].
//!
//! [`iso286::Class`]: standards::iso286::Class
//! [`thread::Class`]: standards::thread::Class
//! [`b41::Family`]: standards::b41::Family
//! [`materials::Family`]: standards::materials::Family
//! [`drills::Series`]: standards::drills::Series
//! [`thread::Series`]: standards::thread::Series
//!
//! ## Limits
//! ```
//! use fits_core::{size::Unit, standards::iso286::Class};
//! let hole = "H7".parse::<Class>()?.limits("20mm".parse()?)?;
//! assert_eq!(hole.to_string(), "20.000 to 20.021 mm");
//! // Rounded inward in any unit: a part inside what is shown is a good one.
//! assert_eq!(hole.shown(Unit::Inch).to_string(), "0.78741 to 0.78822 in");
//! # Ok::<(), fits_core::Error>(())
//! ```
//!
//! ## Pair
//! ```
//! use fits_core::{Kind, shop::{FitDesignation, Spec}};
//! let fit = "H7/g6".parse::<Spec>()?.fit("20mm".parse()?)?;
//! assert_eq!((fit.kind(), fit.clearance().to_string().as_str()), (Kind::Clearance, "0.007 to 0.041 mm"));
//! // Size and spec in one text; a word goes by the unit of its size.
//! let press: FitDesignation = "1in press".parse()?;
//! assert_eq!(press.fit()?.interference().upper(), "0.0019in".parse()?);
//! # Ok::<(), fits_core::Error>(())
//! ```
//!
//! ## Suit a reading
//! ```
//! use fits_core::{shop::Spec, standards::iso286::Feature};
//! let fit = "H7/g6".parse::<Spec>()?.fit("20mm".parse()?)?;
//! let shaft = fit.suit(Feature::Hole, "20.013mm".parse()?)?;
//! assert_eq!(shaft.to_string(), "19.972 to 20.006 mm");
//! # Ok::<(), fits_core::Error>(())
//! ```
//!
//! ## Words
//! ```
//! use fits_core::{Size, shop::words::{Circumstance, Word}};
//! let size: Size = "1in".parse()?;
//! let thin = Circumstance::plain(size.length()).with_thin_wall();
//! let choice = Word::find("press fit")?.choose(&thin)?;
//! assert_eq!(choice.classes(size).to_string(), "FN1");
//! assert_eq!(choice.changed_by, Some("thin wall"));
//! # Ok::<(), fits_core::Error>(())
//! ```
//!
//! ## Pick
//! ```
//! use fits_core::{Limits, shop::pick};
//! let wanted = Limits::new("0.007mm".parse()?, "0.041mm".parse()?)?;
//! let found = pick("20mm".parse()?, wanted)?;
//! assert_eq!(found[0].classes.to_string(), "H7/g6");
//! # Ok::<(), fits_core::Error>(())
//! ```
//!
//! ## Ream
//! ```
//! use fits_core::{job::Crib, shop::{CutRules, Ream}, size::Unit, standards::iso286::Class};
//! let ream = Ream::of("H7".parse::<Class>()?.limits("10mm".parse()?)?)?;
//! assert_eq!(ream.reamer.to_string(), "10.006 to 10.012 mm");
//! // With the tools in hand; an empty crib is any small shop.
//! let rules = CutRules::stepping("0.01mm".parse()?);
//! let reaming = Crib::default().reaming(&ream, rules, Unit::Millimetre);
//! assert_eq!(reaming.drill.map(|found| found.drill.name()), Some("9.7 mm"));
//! # Ok::<(), fits_core::Error>(())
//! ```
//!
//! ## Passes
//! ```
//! use fits_core::{
//!     job::Crib,
//!     shop::{CutRules, Start, infeed::DialReads},
//!     size::Unit,
//!     standards::iso286::{Class, Feature},
//! };
//! let hole = "H7".parse::<Class>()?.limits("20mm".parse()?)?;
//! // A dial of 0.01 mm that counts the slide's travel: 0.02 mm on the diameter.
//! let dial = DialReads::Radius;
//! let rules = CutRules::stepping(dial.on_diameter("0.01mm".parse()?)?);
//! let start = Start::From("19.61mm".parse()?);
//! let plan = Crib::default().plan(Feature::Hole, hole, start, rules, Unit::Millimetre)?;
//! let cuts: Vec<_> = plan.passes.list.iter().filter_map(|pass| pass.takes).collect();
//! assert!(cuts.iter().all(|cut| cut.tenth_nanometres() % 200_000 == 0));
//! assert_eq!(dial.dialled(cuts[0]), "0.1mm".parse()?);
//! assert_eq!(plan.passes.aim, "20.01mm".parse()?);
//! # Ok::<(), fits_core::Error>(())
//! ```
//!
//! ## Adviser
//! ```
//! use fits_core::{
//!     shop::adviser::{Action, Adviser, Prior, Settings},
//!     standards::{instruments::Instrument, iso286::{Class, Feature}},
//! };
//! let bore = Feature::Hole;
//! let hole = "H7".parse::<Class>()?.limits("20mm".parse()?)?;
//! let gauge = Instrument::find("bore gauge")?.uncertainty(bore, "20mm".parse()?)?;
//! // What such a bar usually does, until the passes show what this one does.
//! let usual = Prior::usual(bore, None, None);
//! let start = "19.6mm".parse()?;
//! let mut adviser = Adviser::new(hole, bore, start, usual, gauge, Settings::default())?;
//! assert_eq!(adviser.next().action, Action::Cut);
//! adviser.cut("0.30mm".parse()?, &["19.885mm".parse()?])?;
//! // It takes less than it is set to.
//! assert!(adviser.estimate()?.gain < usual.gain);
//! # Ok::<(), fits_core::Error>(())
//! ```
//!
//! ## Verdict
//! ```
//! use fits_core::{
//!     shop::{Verdict, verdict::{Measured, Rule}},
//!     standards::{instruments::Instrument, iso286::{Class, Feature}},
//! };
//! let hole = "H7".parse::<Class>()?.limits("20mm".parse()?)?;
//! let gauge = Instrument::find("bore gauge")?.uncertainty(Feature::Hole, hole.middle())?;
//! let read = ["20.012mm".parse()?, "20.010mm".parse()?];
//! let judged = Measured::of(&[&read], Some(gauge), None)?
//!     .judge(Feature::Hole, hole, Rule::Edition2017)?;
//! assert_eq!(judged.verdict, Verdict::Good);
//! assert!(judged.good > 0.99);
//! # Ok::<(), fits_core::Error>(())
//! ```
//!
//! ## Thread
//! ```
//! use fits_core::standards::thread::{Thread, ThreadPair};
//! let thread: Thread = "3/8-24".parse()?;
//! let pair = ThreadPair::new(thread.external(None)?, thread.internal(None)?);
//! assert_eq!(pair.pitch().least, Some("0.0011in".parse()?));
//! # Ok::<(), fits_core::Error>(())
//! ```
//!
//! ## Tap
//! ```
//! use fits_core::{
//!     shop::tap::{Bit, TapHole, Wanted},
//!     standards::drills::Series,
//! };
//! let hole = TapHole::of_thread(&"3/8-24".parse()?, None)?;
//! let drills = Bit::standard(&[Series::Number, Series::Letter, Series::Fraction]);
//! assert_eq!(hole.choose(&drills, Wanted::Percent(75.0))?.best.bit.name, "Q");
//! # Ok::<(), fits_core::Error>(())
//! ```
//!
//! ## Wires
//! ```
//! use fits_core::{shop::wires::WireThread, standards::thread::Thread};
//! let thread: Thread = "M10".parse()?;
//! let screw = WireThread::of_thread(&thread, &thread.external(None)?)?;
//! let wire = screw.best_wire()?;
//! let over = screw.over(wire)?.over;
//! // And back from what the micrometer shows.
//! let back = screw.pitch_diameter_of(wire, over)?;
//! assert!((over > thread.major()) && back < thread.major());
//! # Ok::<(), fits_core::Error>(())
//! ```
//!
//! ## Assemble
//! ```
//! use fits_core::{
//!     shop::{Spec, assemble::{Heat, Joint}},
//!     standards::materials::Material,
//! };
//! let fit = "H7/u6".parse::<Spec>()?.fit("40mm".parse()?)?;
//! let steel = Material::find("steel 4140")?;
//! let mut joint = Joint::new(fit.nominal(), fit.interference(), "80mm".parse()?, steel, steel)?;
//! joint.length = Some("30mm".parse()?);
//! let assembly = joint.solve()?;
//! assert!(assembly.keeps() && assembly.torque_nm().is_some_and(|torque| torque > 400.0));
//! // Or warm the hub: it drops on.
//! let heat = Heat::plan(&joint, None, None)?;
//! assert!(heat.hub_to.is_some() && heat.hub_stands_it());
//! # Ok::<(), fits_core::Error>(())
//! ```
//!
//! ## Bushing
//! ```
//! use fits_core::{Limits, shop::bushing::Bushing, standards::materials::Material};
//! let limits = |lower: &str, upper: &str| Limits::new(lower.parse()?, upper.parse()?);
//! let pressed = Bushing {
//!     bore: limits("20.04mm", "20.053mm")?,
//!     outside: limits("26.035mm", "26.048mm")?,
//!     material: Material::find("bronze")?,
//!     housing: limits("26mm", "26.021mm")?,
//!     housing_outside: "60mm".parse()?,
//!     hub: Material::find("steel")?,
//!     length: "20mm".parse()?,
//! }
//! .press()?;
//! assert!(pressed.bore.upper() < "20.053mm".parse()?);
//! // A shaft that runs in it with 0.03 to 0.09 mm.
//! assert!(pressed.shaft_for(limits("0.03mm", "0.09mm")?)?.limits.is_some());
//! # Ok::<(), fits_core::Error>(())
//! ```
//!
//! ## Warm
//! ```
//! use fits_core::{
//!     shop::{Spec, celsius, warm::Warm},
//!     standards::materials::Material,
//! };
//! let fit = "H7/g6".parse::<Spec>()?.fit("20mm".parse()?)?;
//! let warm = Warm::of(fit, Material::find("aluminium")?, Material::find("steel")?)?;
//! let between = warm.between(celsius(-20.0), celsius(60.0))?;
//! assert!(between.binds, "a steel shaft binds in cold aluminium");
//! # Ok::<(), fits_core::Error>(())
//! ```
//!
//! ## Stack
//! ```
//! use fits_core::{Limits, shop::stack::{Direction, Link, Stack}};
//! let shoulder = Limits::new("20mm".parse()?, "20.05mm".parse()?)?;
//! let tube = Limits::new("19.75mm".parse()?, "19.9mm".parse()?)?;
//! let stack = Stack::new(vec![
//!     Link::new(Direction::Adds, shoulder),
//!     Link::new(Direction::TakesAway, tube),
//! ])?;
//! assert_eq!(stack.worst().to_string(), "0.100 to 0.300 mm");
//! # Ok::<(), fits_core::Error>(())
//! ```
//!
//! ## Align
//! ```
//! use fits_core::shop::align::{Taper, Toward};
//! // The tailstock end is 8 tenths larger over 6 in.
//! let left = Taper::between("0.7503in".parse()?, "0.7511in".parse()?, "6in".parse()?)?;
//! assert_eq!((left.set_over("6in".parse()?)?, left.toward()), ("0.0004in".parse()?, Toward::Tool));
//! # Ok::<(), fits_core::Error>(())
//! ```
//!
//! ## Job
//! ```
//! use fits_core::{
//!     job::whole::{PartFeature, FitSaid, First, Job, Mate, NominalSize, Part, SizeKind},
//!     shop::words::Word,
//!     size::Unit,
//! };
//! let size = NominalSize::Size("20mm".parse()?);
//! let mut job = Job::default();
//! job.parts = ["block", "pin"].map(|name| Part { name: name.into(), ..Part::default() }).into();
//! job.features = vec![
//!     PartFeature::new(0, "bore", SizeKind::Hole, Unit::Millimetre, size.clone()),
//!     PartFeature::new(1, "journal", SizeKind::Shaft, Unit::Millimetre, size),
//! ];
//! let mut fit = FitSaid::default();
//! fit.word = Some(Word::find("slip")?);
//! job.mates = vec![Mate { line: 1, hole: 0, shaft: 1, fit, called: None }];
//! // What to cut both to: each joint is worked out once.
//! let worked = job.worked();
//! let limits = worked.limits(1).expect("the pin goes into the block")?.0;
//! assert_eq!(limits.to_string(), "19.980 to 19.993 mm");
//! // The hole first: the shaft is turned to suit what it comes out at.
//! assert_eq!(job.first(&job.mates[0]), (0, First::Hole));
//! assert_eq!(job.next(), Some(0));
//! # Ok::<(), fits_core::Error>(())
//! ```
//!
//! # Features
//! Both are on by default; without them the crate reads sizes and classes,
//! gives limits, fits, drills, reamers, passes, threads, taps and stacks.
//!
//! - `serde`: values are written by serde, and the plain ones read. A length is
//!   its exact text, `"19.05 mm"`; what stands for a row of a table, or for a
//!   text, is that text; a typed figure is a number in its SI unit (Pa, N, N m,
//!   K). This is the crate's own form: the contract of `fits --json`, with its
//!   units in every name, is the command's.
//! - `uom`: typed figures ([`uom`]) at the boundary, and with them materials,
//!   joints, bushings, temperatures and verdicts. Plain numbers beside them name
//!   their unit: `torque_nm`, `pressure_mpa`, [`celsius`](shop::celsius) and
//!   [`in_celsius`](shop::in_celsius).
//!
//! # What is not covered
//! Geometry (roundness, straightness, position), surface texture beyond what a
//! process commonly leaves, and any certificate: the standards' own text
//! outranks the tables here.

mod error;
mod fit;
pub mod job;
mod nearest;
pub mod shop;
pub mod size;
pub mod source;
pub mod speech;
pub mod standards;
#[cfg(feature = "serde")]
mod written;

pub use error::{Error, Subject};
pub use fit::{Basis, Chance, Fit, Kind};
pub use size::{Deviations, Length, Limits, Size};
#[cfg(feature = "uom")]
pub use uom;
