//! Entries of the log that are asked about before they are taken, and what
//! probably happened where one misses.

use std::ops::Range;

use fits_core::{
    Length,
    job::{Doubt, Entry},
    shop::adviser::Story,
    size::{Decimals, Rounding},
    standards::iso286::Feature,
};

use crate::{
    problem::Problem,
    query::{Size, Units},
    questions::{
        log::answered::{no_log, shown_in},
        part::{mates::is_inch, resolve::from_core},
    },
    session::Session,
};

impl Session {
    /// Where the size was typed for the dial: what was dialled is the way to it.
    pub(crate) fn size_for_dial(
        &self,
        dial: &Size,
        read: Option<&Size>,
        sure: bool,
    ) -> Option<Problem> {
        let typed = self.nominal(dial).ok()?;
        if sure || !self.is_near_log(typed) {
            return None;
        }
        let log = self.shop.log.as_ref()?.log.as_ref()?;
        let to = read.map_or(Some(typed), |read| self.nominal(read).ok())?;
        let way = match log.opening.feature {
            Feature::Hole => to.checked_sub(log.last_reading()),
            Feature::Shaft => log.last_reading().checked_sub(to),
        }
        .ok()?;
        let problem = Problem::new(
            format!("{} is a size, and a cut takes what was dialled", shown_in(self.shown, typed)),
            dial.at.clone(),
        );
        if !way.is_positive() {
            return Some(problem.advise("nothing is entered; a size is entered as `read 19.792`"));
        }
        let decimals = match self.shown {
            Units::Millimetres => Decimals::MILLIMETRES,
            Units::Inches => Decimals::INCHES,
        };
        let unit = is_inch(&dial.value).map_or("", |_| decimals.unit.symbol());
        let figure = |size: Length| size.shown(decimals, Rounding::Nearest);
        let dialled = figure(self.dialled(way)).to_string();
        let dialled = dialled.trim_end_matches('0');
        let with = match read {
            None => format!("{dialled}{unit} = {}{unit}", figure(typed)),
            Some(_) => format!("{dialled}{unit}"),
        };
        Some(
            problem
                .advise("nothing is entered; if that is what it measured and this was dialled")
                .fix(dial.at.clone(), with),
        )
    }

    /// What makes an entry doubtful, as a question.
    pub(crate) fn doubt(
        &self,
        entry: &Entry,
        whole: &Range<usize>,
        place: &Range<usize>,
    ) -> Result<Option<Problem>, Problem> {
        let Some(open) = &self.shop.log else { return Err(no_log(whole)) };
        let Some(log) = &open.log else { return Err(no_log(whole)) };
        let failed = |error: fits_core::Error| from_core(&error, place.clone());
        let Some(doubt) = log.doubt(open.prior, self.advice_of(log), entry).map_err(failed)? else {
            return Ok(None);
        };
        Ok(Some(self.asked(&doubt, entry, whole, place)))
    }

    fn asked(
        &self,
        doubt: &Doubt,
        entry: &Entry,
        whole: &Range<usize>,
        place: &Range<usize>,
    ) -> Problem {
        let said = |size: Length| shown_in(self.shown, size);
        let read = entry.reading().map(said).unwrap_or_default();
        let gauge = Story::Gauge { by: Length::ZERO };
        let advice = match doubt {
            Doubt::Jump { story: Some(story), .. } => {
                let told = story_in(self.shown, *story);
                let is_read = matches!(entry, Entry::Read { .. });
                match other_dial(*story).filter(|_| is_read) {
                    // The cut stands in the log already, as the dial was taken to count.
                    Some(dial) => format!(
                        "probably {told}; if so say `dial {dial}`, then `undo`, and enter the \
                         cut again"
                    ),
                    None => format!("probably {told}; {}", story.check()),
                }
            }
            Doubt::Jump { story: None, .. } => {
                "no slip of dial or gauge explains it; measure again".to_owned()
            }
            Doubt::NoPass { .. } | Doubt::WrongWay { .. } => gauge.check().to_owned(),
            Doubt::Scatters { .. } => {
                "measure again, and put a slash between the readings of two places".to_owned()
            }
            _ => String::new(),
        };
        let message = match doubt {
            Doubt::Unit { expected, is_inch } => {
                let (unit, units) = if *is_inch { ("in", "inches") } else { ("mm", "millimetres") };
                let problem = Problem::new(
                    format!("{read} was read, and about {} is expected", said(*expected)),
                    place.clone(),
                );
                // The unit that was typed gives way to the one meant.
                return problem
                    .advise(format!("nothing is entered; if {units} were meant, say so"))
                    .fix(place.end..place.end, unit);
            }
            Doubt::NoPass { before, .. } => {
                format!("{read} after {} with no cut between", said(*before))
            }
            Doubt::WrongWay { before, .. } => {
                format!("{read} after {}: the wrong way, metal does not grow", said(*before))
            }
            Doubt::Jump { expected, .. } => {
                format!("{read} was read, and about {} is expected", said(*expected))
            }
            Doubt::PastLimit { by } => {
                format!("that cut goes {} past the last limit", said(*by))
            }
            Doubt::NotInLimits { size, .. } => {
                format!("it is not inside its limits: about {}", said(*size))
            }
            Doubt::NotRead => "it was not measured after the last pass".to_owned(),
            Doubt::Short { place, size } => {
                let place = place.as_ref().map_or("one place", |name| name.as_str());
                format!("{place} is not inside the limits yet: {}", said(*size))
            }
            Doubt::Scatters { by } => {
                format!("readings of one place differ by {}: no gauge does that", said(*by))
            }
        };
        Problem::new(message, place.clone())
            .advise(match advice.as_str() {
                "" => "nothing is entered; check it, and if it stands say so".to_owned(),
                advice => format!("nothing is entered; {advice}; if it stands say so"),
            })
            .fix(whole.end..whole.end, " sure")
    }
}

/// How the dial counts, where it counts in another way than it was taken to.
const fn other_dial(story: Story) -> Option<&'static str> {
    match story {
        Story::ReadsRadius { .. } => Some("radius"),
        Story::ReadsDiameter { .. } => Some("diameter"),
        _ => None,
    }
}

/// What probably happened, in words.
pub(crate) fn story_in(units: Units, story: Story) -> String {
    let said = |size: Length| shown_in(units, size);
    let off = |size: Length| said(size.checked_abs().unwrap_or(size));
    match story {
        Story::OtherUnit { meant, .. } => {
            format!("it was read in the other unit: {} was meant", said(meant))
        }
        Story::Point { meant } => format!("the decimal point is off: {} was meant", said(meant)),
        Story::WholeTurn { turns, turn } => {
            let way = if turns < 0 { "short" } else { "too far" };
            let count = match turns.unsigned_abs() {
                1 => "one whole turn".to_owned(),
                count => format!("{count} whole turns"),
            };
            format!("the dial stood {count} {way} (a turn is {} on the diameter)", said(turn))
        }
        Story::ReadsRadius { ratio } => {
            format!("the dial counts the radius: {ratio:.1} times as much came off")
        }
        Story::ReadsDiameter { ratio } => {
            format!("the dial counts the diameter: {:.0} % of it came off", ratio * 100.0)
        }
        Story::HardlyMoved { took } => {
            format!("the slide hardly moved, or the tool did not reach: {} came off", off(took))
        }
        Story::Backlash { short } => {
            format!("backlash: {} less came off than was expected", said(short))
        }
        Story::Gauge { by } => {
            format!("the gauge, or how it was held: {} from what was expected", off(by))
        }
    }
}
