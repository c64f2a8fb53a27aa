//! From the core's threads to what the other rooms and the answers take.

use fits_core::{
    Error, Length,
    shop::{
        infeed::Slide,
        tap::{
            Advice, Bit, Bore, ChartDrill, Drive, MOST_CUT, Minor, TapDrill, TapHole, Wanted, Work,
        },
    },
    size::{Decimals, Rounding, Unit},
    source::{Known, Reason},
    standards::{
        drills::{Drill, Series as DrillSeries},
        materials::Family,
        thread::{Class, DiameterLimits as Spread, Form, PipeTaper, Series, Side, Sizes, Thread},
    },
};
use uom::si::angle::degree;

use crate::{
    answer::{
        BlankFigures, BoreFigures, DrillName, Mm, SideFigures, TapFigures, TaperFigures, ThreadName,
    },
    query::Units,
    questions::thread::answered::{Found, own::OwnTapDrill, taper::taper_drills},
};

/// The drills of a drawer in inches, and of one in millimetres.
const INCH: &[DrillSeries] = &[DrillSeries::Number, DrillSeries::Letter, DrillSeries::Fraction];
const METRIC: &[DrillSeries] = &[DrillSeries::Metric];

/// The drills of the thread's own system.
pub(crate) const fn drawer(thread: &Thread) -> &'static [DrillSeries] {
    if thread.form().is_inch() { INCH } else { METRIC }
}

pub(crate) fn name(
    found: &Found,
    external: Option<&Sizes>,
    internal: Option<&Sizes>,
) -> ThreadName {
    let thread = &found.thread;
    let mut assumed = Vec::new();
    if thread.is_pitch_assumed() {
        assumed.push(format!("no pitch given: {}", series(thread)));
    }
    if is_other_letters(found) {
        assumed.push(format!("UN of this size and pitch is {}: one set of limits", series(thread)));
    }
    for (side, sizes) in [(Side::External, external), (Side::Internal, internal)] {
        if let Some(sizes) = sizes
            && !found.has_class(side)
            && !class_text(sizes).is_empty()
        {
            assumed.push(format!("no {} class given: {}", side.word(), sizes.class));
        }
    }
    ThreadName {
        designation: thread
            .designation(external.map(|sizes| sizes.class), internal.map(|sizes| sizes.class)),
        form: thread.form().name(),
        series: series(thread),
        assumed,
        nominal_mm: Mm(thread.major()),
        pitch_mm: Mm(thread.pitch().nearest()),
        tpi: thread.pitch().is_per_inch().then(|| thread.pitch().turns_per_inch()),
        starts: thread.starts(),
        lead_mm: Mm(thread.lead().nearest()),
        hand: if thread.is_left_hand() { "left" } else { "right" },
        lead_angle_deg: hundredths(thread.lead_angle().get::<degree>()),
        // Until the figures are in.
        known: Known::Given,
    }
}

/// Was it called UN, and has it letters of its own?
pub(crate) fn is_other_letters(found: &Found) -> bool {
    let said = found.query.thread.value.series.map(|series| series.value);
    let is_graded =
        matches!(found.thread.series(), Series::Coarse | Series::Fine | Series::ExtraFine);
    said == Some(Series::Constant) && is_graded
}

/// The list a thread stands in, in words.
fn series(thread: &Thread) -> String {
    let word = match (thread.form(), thread.series()) {
        (_, Series::Special) => return "in no list: computed by the formulas".to_owned(),
        (Form::Unified, Series::Coarse) => "coarse, UNC",
        (Form::Unified, Series::Fine) => "fine, UNF",
        (Form::Unified, Series::ExtraFine) => "extra fine, UNEF",
        (Form::Unified | Form::UnifiedRounded, Series::Constant) => "constant pitch",
        (Form::Whitworth, Series::Coarse) => "coarse, BSW",
        (Form::Whitworth, Series::Fine) => "fine, BSF",
        (_, Series::Coarse) => "coarse",
        (_, Series::Fine) => "fine",
        (_, Series::ExtraFine) => "extra fine",
        (_, Series::Constant | Series::Listed) => "listed",
    };
    word.to_owned()
}

/// The class as it is said; empty where the system has only one.
pub(crate) fn class_text(sizes: &Sizes) -> String {
    if sizes.class == Class::Sole { String::new() } else { sizes.class.to_string() }
}

pub(crate) fn side_figures(sizes: &Sizes) -> SideFigures {
    SideFigures {
        class: class_text(sizes),
        major_max_mm: sizes.major.max.map(Mm),
        major_min_mm: sizes.major.min.map(Mm),
        pitch_max_mm: sizes.pitch.max.map(Mm),
        pitch_min_mm: sizes.pitch.min.map(Mm),
        minor_max_mm: sizes.minor.max.map(Mm),
        minor_min_mm: sizes.minor.min.map(Mm),
    }
}

/// The middle of a diameter's limits, where both are given.
fn middle(spread: Spread) -> Option<Length> {
    fits_core::Limits::new(spread.min?, spread.max?).ok().map(fits_core::Limits::middle)
}

/// What to turn or bore a blank to.
pub(crate) fn blank_of(crest: Spread) -> Option<BlankFigures> {
    let (min, max) = (crest.min?, crest.max?);
    Some(BlankFigures { max_mm: Mm(max), min_mm: Mm(min), aim_mm: Mm(middle(crest)?) })
}

/// How many other drills an answer names.
pub(crate) const OTHERS: usize = 4;

/// What to look for where nothing is said.
pub(crate) fn usual(thread: &Thread) -> Wanted {
    Wanted::usual(thread.form(), Advice::of(Work::General, Drive::Hand))
}

/// By hand or by power, in words.
pub(crate) const fn driven_by(drive: Drive) -> &'static str {
    match drive {
        Drive::Hand => "by hand",
        Drive::Power => "by power",
    }
}

/// What makes the hole: drills, the choice first, or a boring bar.
pub(crate) struct Choice {
    /// The share of a full thread wanted.
    pub(crate) wanted_percent: f64,
    /// Where it is bored; then no drill is named.
    pub(crate) bore: Option<Bore>,
    /// The choice first.
    pub(crate) drills: Vec<TapDrill>,
}

/// As much of a full thread as tap charts give everyday metals.
const EVERYDAY_PERCENT: f64 = 75.0;

/// The drills of both systems, the thread's own first among equals; a bore
/// where it is a power thread or no drill itself keeps the limits.
pub(crate) fn tap_drills(thread: &Thread, hole: &TapHole, wanted: Wanted) -> Result<Choice, Error> {
    if let Some(choice) = taper_drills(thread, hole) {
        return choice;
    }
    let own = Bit::standard(drawer(thread));
    let is_inch = thread.form().is_inch();
    // Tough metal wants less thread than a chart gives it, by whatever drill.
    let is_tough = matches!(wanted, Wanted::Advised(advice) if advice.work == Work::ToughSteel);
    // A shop of inch threads need not own metric drills: only where no other keeps the limits,
    // or each leaves more thread than a tap stands, of tough metal than the everyday three
    // quarters.
    let most = match wanted {
        Wanted::Advised(_) if is_tough => EVERYDAY_PERCENT,
        Wanted::Advised(_) => MOST_CUT,
        Wanted::Percent(_) | Wanted::Middle => f64::INFINITY,
    };
    let has_own = is_inch
        && hole
            .choose(&own, wanted)
            .is_ok_and(|found| found.best.keeps() && found.best.percent <= most);
    let other = match (has_own, is_inch) {
        (true, _) => Vec::new(),
        (false, true) => Bit::standard(METRIC),
        (false, false) => Bit::standard(INCH),
    };
    let found = hole.choose_from(&own, &other, wanted);
    let every = || Bit::standard(&[INCH, METRIC].concat());
    // A percent that cannot be tapped, and no limits, are refused.
    let (to, wanted_percent) = match wanted {
        Wanted::Percent(percent) => (Some(hole.hole(percent)?), percent),
        Wanted::Advised(advice) => {
            let to = hole.kept().is_none().then(|| hole.hole(advice.middle())).transpose()?;
            (to, advice.middle())
        }
        Wanted::Middle => {
            let bore = hole.bore(&every(), None)?;
            let wanted_percent = hole.percent(bore.aim);
            return Ok(Choice { wanted_percent, bore: Some(bore), drills: Vec::new() });
        }
    };
    let goes_by_list =
        matches!(wanted, Wanted::Advised(_)) && (!is_tough || thread.pipe_tap_drill().is_some());
    let listed = published_drill(thread).filter(|_| goes_by_list);
    let listed = listed.and_then(|size| hole.with(&bit_of(size)).ok()).filter(TapDrill::keeps);
    let (first, others) = match (listed, found) {
        (Some(first), Ok(found)) => {
            (first, std::iter::once(found.best).chain(found.others).collect())
        }
        (Some(first), Err(_)) => (first, Vec::new()),
        (None, Ok(found)) if found.best.keeps() || matches!(wanted, Wanted::Percent(_)) => {
            (found.best, found.others)
        }
        _ => {
            let bore = Some(hole.bore(&every(), to)?);
            return Ok(Choice { wanted_percent, bore, drills: Vec::new() });
        }
    };
    Ok(Choice { wanted_percent, bore: None, drills: with_neighbours(first, others, thread, hole) })
}

/// A drill, the next looser and the next tighter one, then others: of the
/// thread's own system, of the other where that has none.
pub(crate) fn with_neighbours(
    first: TapDrill,
    others: Vec<TapDrill>,
    thread: &Thread,
    hole: &TapHole,
) -> Vec<TapDrill> {
    let size = first.bit.diameter;
    let series = [drawer(thread), &[INCH, METRIC].concat()];
    let leaves = |drill: Drill| hole.with(&drill.into()).ok();
    let looser = series.iter().find_map(|series| {
        let mut drills = Drill::all().filter(|drill| series.contains(&drill.series()));
        drills.find(|drill| drill.diameter() > size).and_then(leaves)
    });
    let tighter = series.iter().find_map(|series| {
        let mut drills = Drill::all().rev().filter(|drill| series.contains(&drill.series()));
        drills.find(|drill| drill.diameter() < size).and_then(leaves)
    });
    let mut drills = vec![first];
    for drill in looser.into_iter().chain(tighter).chain(others) {
        if drills.iter().all(|known| known.bit.diameter != drill.bit.diameter) {
            drills.push(drill);
        }
    }
    drills.truncate(OTHERS + 1);
    drills
}

/// The drill that a published table gives for a thread.
pub(crate) fn published_drill(thread: &Thread) -> Option<Length> {
    let chart = || ChartDrill::of(thread)?.drill().map(Drill::diameter);
    thread.pipe_tap_drill().or_else(chart)
}

pub(crate) fn bore_figures(bore: &Bore, hole: &TapHole) -> BoreFigures {
    BoreFigures {
        aim_mm: Mm(bore.aim),
        percent: hundredths(hole.percent(bore.aim)),
        first_drill: bore.first.as_ref().map(drill_name),
    }
}

/// Why a thread's drill is the one it is, where a table gives it.
pub(crate) fn published(thread: &Thread, drill: &TapDrill) -> Option<Reason> {
    let size = published_drill(thread).filter(|size| *size == drill.bit.diameter)?;
    let pipe = match thread.form() {
        Form::Npt => "toolsnz.com, US standard taper pipe thread NPT",
        _ => "a published web table of British Standard pipe sizes",
    };
    let (source, known) =
        ChartDrill::of(thread).map_or((pipe, Known::Seen), |chart| (chart.source(), chart.known()));
    Some(Reason {
        figure: "published tap drill".into(),
        value: size.to_string().into(),
        rule: match thread.form() {
            Form::PipeRp => {
                "tabulated: the list's taper column, drilled straight; inside the limits of Rp"
                    .into()
            }
            Form::PipeRc | Form::Npt => "tabulated, drilled straight".into(),
            _ => "tabulated".into(),
        },
        source: source.into(),
        known,
    })
}

/// Of an Rc the useful thread is the nut's own, which no source here gives.
pub(crate) fn taper_figures(form: Form, taper: PipeTaper) -> TaperFigures {
    let is_nut = form == Form::PipeRc;
    TaperFigures {
        per_length: "1:16",
        gauge_length_mm: (!is_nut).then_some(Mm(taper.gauge_length)),
        useful_length_mm: (!is_nut).then_some(Mm(taper.useful_length)),
        plane_tolerance_mm: Mm(if is_nut {
            taper.internal_tolerance
        } else {
            taper.external_tolerance
        }),
    }
}

/// A length of pipe work, to 0.01 mm and 0.001 in, its own unit first.
pub(crate) fn said_in_both(units: Units, length: Length) -> String {
    let [mm, inch] = [(Unit::Millimetre, 2), (Unit::Inch, 3)].map(|(unit, places)| {
        let shown = length.shown(Decimals { unit, places }, Rounding::Nearest);
        format!("{shown} {}", unit.symbol())
    });
    match units {
        Units::Millimetres => format!("{mm} ({inch})"),
        Units::Inches => format!("{inch} ({mm})"),
    }
}

fn drill_name(bit: &Bit) -> DrillName {
    DrillName { name: bit.name.to_string(), mm: Mm(bit.diameter) }
}

/// The listed drill of a size, or the size alone.
pub(crate) fn bit_of(diameter: Length) -> Bit {
    let listed = Drill::all().find(|drill| drill.diameter() == diameter).map(Bit::from);
    listed.or_else(|| in_sixty_fourths(diameter)).unwrap_or_else(|| Bit::sized(diameter))
}

/// `3-1/4 in`: a fraction beyond the lists.
fn in_sixty_fourths(diameter: Length) -> Option<Bit> {
    let (count, inch) = (diameter.checked_mul(64).ok()?, Length::INCH.tenth_nanometres());
    let count = (count.tenth_nanometres() % inch == 0).then(|| count.tenth_nanometres() / inch)?;
    let (whole, part) = (count / 64, count % 64);
    let common = 1_i64 << part.trailing_zeros().min(6);
    let name = format!("{whole}-{}/{} in", part / common, 64 / common);
    (whole > 0 && part > 0).then(|| Bit { name: name.into(), diameter })
}

/// `own` is the crib's word on it, where it is the choice.
pub(crate) fn tap_figures(
    drill: &TapDrill,
    thread: &Thread,
    own: Option<&OwnTapDrill>,
) -> TapFigures {
    TapFigures {
        drill: drill_name(&drill.bit),
        percent: hundredths(drill.percent),
        cuts_mm: Mm(drill.drilled),
        cut_percent: hundredths(drill.percent_drilled.max(0.0)),
        drill_within_limits: drill.minor.map(|minor| minor == Minor::Kept),
        within_limits: drill.minor_drilled.map(|minor| minor == Minor::Kept),
        drill_in_crib: own.map(|own| own.in_crib),
        best_drill: own.and_then(|own| own.rather.clone()),
        nearest_in_crib: own.and_then(|own| own.nearest.clone()),
        published: published_drill(thread) == Some(drill.bit.diameter),
    }
}

/// The row of advice that a material's name belongs to.
pub(crate) fn tapped(name: &str, family: Family) -> Work {
    match family {
        Family::Steel if name.contains("hard") || name.contains("tool") => Work::ToughSteel,
        Family::Steel => Work::Steel,
        Family::Stainless => Work::ToughSteel,
        Family::CastIron => Work::CastIron,
        Family::Aluminium => Work::Aluminium,
        Family::Brass | Family::Bronze => Work::Brass,
        Family::Plastic => Work::Plastic,
        _ => Work::General,
    }
}

/// The compound's angle, where it feeds.
pub(crate) const fn degrees(slide: Slide) -> Option<f64> {
    match slide {
        Slide::Cross => None,
        Slide::Compound { degrees } => Some(degrees),
    }
}

/// To two places: no figure of these is known better.
pub(crate) fn hundredths(value: f64) -> f64 {
    (value * 100.0).round() / 100.0
}

/// A typed number as a percent or an angle.
#[allow(clippy::cast_precision_loss, reason = "a percent or an angle, to many places")]
pub(crate) fn as_f64((top, bottom): (i128, i128)) -> f64 {
    top as f64 / bottom as f64
}
