//! What a size means once its words are known: by the kind of part, by its
//! shape, and whether it was measured.

use std::ops::Range;

use fits_core::{
    Length,
    job::whole::{Job, NominalSize, PartFeature, SizeKind},
    size::{Deviations, Unit},
    standards::iso286::Class,
};

use super::{
    Line, kinds, readings,
    token::{Kind, Num},
    told::Told,
    wants::Wants,
};

/// A size and what stands about it.
#[allow(clippy::struct_excessive_bools, reason = "each is something a line may say")]
pub(super) struct Given<'a> {
    pub(super) kind: &'a Kind,
    pub(super) place: &'a Range<usize>,
    pub(super) owner: Option<usize>,
    pub(super) owner_said: bool,
    pub(super) class: Option<String>,
    pub(super) reads: bool,
    /// `ream to`: what is wanted now, whatever was read.
    pub(super) works_to: bool,
    pub(super) most: bool,
    pub(super) mate: Option<&'a str>,
    pub(super) has_fit: bool,
    pub(super) off: Option<(Num, Num)>,
    /// The part alone says whose size it is.
    pub(super) is_plain: bool,
    /// `8 x 20 deep`: what the second of two sizes is.
    pub(super) second: Option<&'static str>,
}

impl<'a> Given<'a> {
    /// A size of which nothing more is said.
    pub(super) const fn plain(kind: &'a Kind, place: &'a Range<usize>) -> Self {
        Self {
            kind,
            place,
            owner: None,
            owner_said: false,
            class: None,
            reads: false,
            works_to: false,
            most: false,
            mate: None,
            has_fit: false,
            off: None,
            is_plain: true,
            second: None,
        }
    }
}

/// Gives a size to its feature.
#[allow(clippy::too_many_lines, reason = "one kind of words after another, each short")]
pub(super) fn give(
    told: &mut Told,
    wants: &mut Wants,
    line: &mut Line,
    given: &Given,
) -> Option<usize> {
    let sure = match given.kind {
        Kind::Num(num) => num.unit.is_some() || num.vulgar,
        Kind::Thread(_) => true,
        _ => false,
    };
    // A bare number of a text in both units may be either.
    let known = match given.kind {
        Kind::Num(num) => {
            told.units.unit_of(num, line.unit).1 != fits_core::job::whole::UnitFrom::Context
        }
        _ => false,
    };
    let said = given.owner.is_some() && (sure || given.owner_said && known);
    if line.prose && !(said && line.subject.is_some()) {
        told.ask_of_figure(
            line,
            given.place.clone(),
            "whose size is this? The sentence leaves it open",
            Some(
                "write it on a line of its own: the part, the feature, the size and its unit"
                    .into(),
            ),
        );
        return None;
    }
    // `30 k6` beside inches: a whole number with a class of ISO 286 is in millimetres.
    let is_iso = || given.class.as_ref().is_some_and(|class| class.parse::<Class>().is_ok());
    let metric = |num: &Num| num.unit.is_none() && num.is_whole();
    let as_metric = match given.kind {
        Kind::Num(num) if line.mixed && metric(num) => Some(vec![num.clone()]),
        // `47 H8 x 7 dp`, where nobody bores 47 in.
        Kind::Dims(all) if all.iter().all(metric) && (line.mixed || all[0].over > 11) => {
            Some(all.clone())
        }
        _ => None,
    };
    let is_inch = line.unit.or(told.units.said.map(|(unit, _)| unit)) == Some(Unit::Inch);
    if let Some(mut all) = as_metric.filter(|_| is_iso() && !is_inch) {
        for num in &mut all {
            num.unit = Some(Unit::Millimetre);
        }
        let kind = match all.as_slice() {
            [one] => Kind::Num(one.clone()),
            _ => Kind::Dims(all),
        };
        let (class, off) = (given.class.clone(), given.off.clone());
        return give(told, wants, line, &Given { kind: &kind, class, off, ..*given });
    }
    if let Kind::Num(num) = given.kind
        && line.mixed
        && num.unit.is_none()
        && !num.is_inch_shaped()
        && num.places < 3
    {
        // `3 mm ply, 256 dia, a 1-1/4" hole`: nobody has 100 inches and more on a bench.
        if num.is_whole() && num.over >= 100 {
            let metric = Kind::Num(Num { unit: Some(Unit::Millimetre), ..num.clone() });
            let (class, off) = (given.class.clone(), given.off.clone());
            return give(told, wants, line, &Given { kind: &metric, class, off, ..*given });
        }
        told.ask_of_figure(
            line,
            given.place.clone(),
            "this line has inches and millimetres: which is this?",
            Some("write its unit beside it".into()),
        );
        return None;
    }
    if let Kind::Num(num) = given.kind
        && told.units.is_open_unit(num)
        && line.unit.is_none()
        && told.units.said.is_none()
    {
        let sized = |one: &&PartFeature| one.nominal.is_some() && one.side != SizeKind::Thread;
        let in_inches = |one: &PartFeature| one.unit == Unit::Inch;
        let of_part = |part| told.features_of(part).map(|(_, one)| one).find(sized);
        let own = line.subject.and_then(of_part).is_some_and(in_inches);
        let is_mixed = told.job.features.iter().filter(sized).any(in_inches);
        if own {
            let inches = Kind::Num(Num { unit: Some(Unit::Inch), ..num.clone() });
            let (class, off) = (given.class.clone(), given.off.clone());
            return give(told, wants, line, &Given { kind: &inches, class, off, ..*given });
        }
        if is_mixed {
            return told.ask_unit(line, given);
        }
    }
    // Nobody turns 20 in on a bench lathe, or bores a whole 8: was it millimetres?
    let is_hole = given.owner.is_some_and(|at| told.job.features[at].side == SizeKind::Hole);
    let huge = |num: &Num| {
        told.units.unit_of(num, line.unit)
            == (fits_core::size::Unit::Inch, fits_core::job::whole::UnitFrom::Context)
            && !num.is_inch_shaped()
            && (num.value() > 11.9 || is_hole && num.is_whole() && num.value() > 5.9)
    };
    let is_huge = match given.kind {
        Kind::Num(num) => huge(num),
        Kind::Dims(all) => {
            let is_bearing =
                line.subject.is_some_and(|part| kinds::is_bearing(&told.names, part, all));
            !is_bearing && all.iter().take(2).any(huge)
        }
        _ => false,
    };
    // `post hole 19 H7`: what is so large and has a class of ISO 286 is metric.
    if let Kind::Num(num) = given.kind
        && is_huge
        && is_iso()
    {
        let metric = Kind::Num(Num { unit: Some(Unit::Millimetre), ..num.clone() });
        let (class, off) = (given.class.clone(), given.off.clone());
        return give(told, wants, line, &Given { kind: &metric, class, off, ..*given });
    }
    if is_huge
        && !(given.reads || line.reads)
        && given.owner.is_none_or(|owner| {
            let one = &told.job.features[owner];
            one.side.surface().is_some() || one.name.ends_with("pcd")
        })
    {
        return told.ask_unit(line, given);
    }
    match given.kind {
        Kind::Num(num) if readings::is_beside(told, line, given, num) => {
            told.ask_measured(line, num);
            None
        }
        // A number alone is no thread: its pitch is missing, or it is a drill.
        Kind::Num(_)
            if given.owner.is_some_and(|at| told.job.features[at].side == SizeKind::Thread) =>
        {
            told.ask_of_figure(
                line,
                given.place.clone(),
                "is this a thread? Its pitch is missing",
                Some("write it as 5/16-18 or M8".into()),
            );
            given.owner
        }
        Kind::Num(num) => number(told, wants, line, num, given),
        Kind::Range(low, high) if given.reads || line.reads => {
            let Some(owner) = given.owner.or(line
                .feature
                .filter(|at| line.subject.is_none_or(|part| part == told.job.features[*at].part)))
            else {
                for num in [low, high] {
                    let size = told.units.length(num, line.unit)?;
                    readings::reading_by_size(told, wants, line, num, size);
                }
                return line.feature;
            };
            for num in [low, high] {
                let size = told.units.length(num, line.unit)?;
                let owner = readings::next_alike(told, line, owner, size);
                told.reading(line, owner, num);
            }
            Some(owner)
        }
        Kind::Range(low, high) => {
            let feature = given.owner.or(line
                .feature
                .filter(|at| told.job.features[*at].side == SizeKind::Length && line.is_row))?;
            let (low, from) =
                (told.units.length(low, line.unit)?, told.units.unit_of(high, line.unit));
            let high = told.units.length(high, line.unit)?;
            // `holes .3752/.3751`, of a size that is there: limits, or what was read?
            let one = &told.job.features[feature];
            if one.line != line.number
                && one.side.surface().is_some()
                && told.is_near(feature, low)
                && told.is_near(feature, high)
            {
                let text =
                    format!("are these limits of the {} or readings?", told.job.full_name(feature));
                let answer = "write `measured` before readings, or each limit in full";
                told.ask_of_figure(line, given.place.clone(), text, Some(answer.into()));
                return Some(feature);
            }
            told.size(line, feature, NominalSize::Between(low.min(high), low.max(high)), from);
            Some(feature)
        }
        Kind::Thread(name) => {
            let owner =
                given.owner.filter(|owner| told.job.features[*owner].side == SizeKind::Thread);
            let part = owner.map(|owner| told.job.features[owner].part).or_else(|| {
                // `on shoulder screw 10, M8`: the screw's own.
                let screw = line.mate_part.filter(|part| {
                    told.names.parts[*part]
                        .iter()
                        .any(|word| matches!(word.as_str(), "screw" | "bolt"))
                });
                screw
                    .filter(|_| {
                        !given.owner_said
                            && line.subject.is_none_or(|part| {
                                !told.names.parts[part].iter().any(|word| word == "screw")
                            })
                            && line
                                .feature
                                .is_some_and(|at| Some(told.job.features[at].part) == screw)
                    })
                    .or(line.subject)
            });
            let part = part.unwrap_or_else(|| told.new_part("tapped hole", line.number));
            let feature = owner.unwrap_or_else(|| {
                told.feature(line, part, "thread", SizeKind::Thread, given.place.clone())
            });
            // `is M10, M8 looked silly`: which of the two is it?
            let nominal = NominalSize::Thread(name.clone());
            let said = told.said_here(line, feature).map(|at| &told.job.said[at]);
            if said.is_some_and(|said| said.nominal.as_ref().is_some_and(|one| *one != nominal)) {
                told.ask_size(line, given);
                return Some(feature);
            }
            told.size(
                line,
                feature,
                nominal,
                (told.job.features[feature].unit, fits_core::job::whole::UnitFrom::Written),
            );
            told.job.features[feature].class.clone_from(&given.class);
            Some(feature)
        }
        Kind::Dims(all) => {
            let found = kinds::dims(told, wants, line, all, given);
            // A line of which nothing was taken is echoed as it is.
            if found.is_none() && line.found > 0 {
                told.ask_size(line, given);
            }
            found
        }
        _ => None,
    }
}

pub(super) fn number(
    told: &mut Told,
    wants: &mut Wants,
    line: &mut Line,
    num: &Num,
    given: &Given,
) -> Option<usize> {
    let size = told.units.length(num, line.unit)?;
    let worked = || {
        let part = line.subject?;
        let waits = line.feature.filter(|at| told.job.features[*at].part == part);
        // `bore was 8, opened up to 8.98`
        let opened = waits.filter(|at| {
            is_sized_here(told, line, *at) && is_about(&told.job, *at, size) && line.date.is_none()
        });
        let near = || waits.or_else(|| told.nearest(part, None, size));
        opened.or_else(|| near().filter(|at| told.is_near(*at, size)))
    };
    if given.works_to
        && let Some(owner) = given.owner.or_else(worked)
    {
        told.size_num(line, owner, num);
        return Some(owner);
    }
    if let Some(owner) = given.owner {
        if readings::is_read(told, line, owner, num, size, (given.reads, given.class.is_some())) {
            let owner = readings::next_alike(told, line, owner, size);
            told.reading(line, owner, num);
            return Some(owner);
        }
        if given.most {
            let from = told.units.unit_of(num, line.unit);
            told.size(line, owner, NominalSize::Between(Length::ZERO, size), from);
            return Some(owner);
        }
        return Some(nominal(told, line, owner, size, num, given));
    }
    // A size named by itself: `Ø17 = 17.004`.
    let exact = |told: &Told| told.job.features.iter().position(|one| one.size() == Some(size));
    if line.date.is_none()
        && line.subject.is_none_or(|_| !line.declares)
        && given.reads
        && line.feature.is_none()
    {
        line.feature = exact(told);
    }
    if given.reads || line.reads {
        return readings::reading_by_size(told, wants, line, num, size);
    }
    let part = line.subject?;
    if !given.is_plain {
        told.ask_size(line, given);
        return None;
    }
    // A number much like a size that is there was read.
    let near = told
        .nearest(part, None, size)
        .filter(|at| told.job.features[*at].line != line.number && told.is_near(*at, size));
    if let Some(near) = near.filter(|near| {
        let was = told.job.features[*near].size();
        (was != Some(size) || told.units.is_fine(num, line)) && num.places >= 3
            || num.places == 2
                && !num.leading_point
                && !num.unit.is_some_and(|unit| unit == fits_core::size::Unit::Inch)
    }) {
        told.reading(line, near, num);
        return Some(near);
    }
    let default = kinds::default_feature(told, part, given)
        .filter(|_| !line.asks || line.declares || line.named);
    let Some((name, side)) = default else {
        told.ask_size(line, given);
        return None;
    };
    let before = told.features_of(part).map(|(_, one)| one).find(|one| {
        one.line == line.number && one.side == side && one.nominal.is_some() && one.name == name
    });
    if let Some(before) = before {
        // `shims .010 & .005`: the second is no slip of the first.
        if before.size() != Some(size) {
            told.ask_size(line, given);
        }
        return None;
    }
    let feature = told.feature(line, part, &name, side, given.place.clone());
    Some(nominal(told, line, feature, size, num, given))
}

/// Could work bring the feature to that size? A ring of 6 in has another hole
/// where one is reamed 5/16.
pub(super) fn is_about(job: &Job, feature: usize, size: Length) -> bool {
    let was = job.features[feature].size();
    was.is_none_or(|was| (0.7..1.43).contains(&(size.millimetres() / was.millimetres())))
}

/// `12.1 hole runs on the pin, 15 hole for the axle`: this line has sized it.
fn is_sized_here(told: &Told, line: &Line, feature: usize) -> bool {
    !line.is_row
        && told.said_here(line, feature).is_some_and(|at| told.job.said[at].nominal.is_some())
}

pub(super) fn nominal(
    told: &mut Told,
    line: &mut Line,
    feature: usize,
    size: Length,
    num: &Num,
    given: &Given,
) -> usize {
    // A second bore of the same part is another feature.
    let one = &told.job.features[feature];
    let other = one.size().is_some_and(|was| was != size)
        && (one.line != line.number || is_sized_here(told, line, feature))
        && (line.date.is_none() || !is_about(&told.job, feature, size))
        && !line.amends
        && !told.is_near(feature, size);
    let feature = if other && one.side.surface().is_some() {
        let name = format!("{} 2", one.name);
        let (part, side) = (one.part, one.side);
        let text = format!(
            "line {} gives the {} another size: is this a second one?",
            one.line,
            told.job.full_name(feature)
        );
        let answer = format!(
            "it is read as `{name}`; name it by its place, or write `not` and the old size"
        );
        told.ask(line.number, given.place.clone(), text, Some(answer));
        told.feature(line, part, &name, side, given.place.clone())
    } else {
        feature
    };
    let from = told.units.unit_of(num, line.unit);
    told.size(line, feature, NominalSize::Size(size), from);
    if given.class.is_some() {
        told.job.features[feature].class.clone_from(&given.class);
    }
    if let Some((low, high)) = &given.off {
        let off = told.units.length(low, line.unit).zip(told.units.length(high, line.unit));
        told.job.features[feature].deviations =
            off.and_then(|(low, high)| Deviations::new(low, high).ok());
    }
    feature
}
