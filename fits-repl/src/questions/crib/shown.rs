//! The crib and the settings in words.

use std::fmt::Write as _;

use crate::{
    answer::{
        CribAnswer, CribReaming, FeatureAnswer, InForce, OwnReamer, PassFigures, ReamFigures,
    },
    query::{Dial, Machine, Units},
    render::text::{Text, lines::wrapped},
};

/// Tools that a list shows.
const LISTED: usize = 18;

impl Text {
    /// The drill of a plan: whose, and which would be better.
    pub(crate) fn whose_drill(plan: &PassFigures) -> String {
        match (plan.drill_in_crib, plan.best_drill) {
            (None, _) => String::new(),
            (Some(false), _) => "not in the crib".to_owned(),
            (Some(true), None) => "in the crib".to_owned(),
            (Some(true), Some(rather)) => format!("in the crib; rather {rather}"),
        }
    }

    /// What the crib has for a reamed hole.
    pub(crate) fn own_reamers(&self, out: &mut String, ream: &ReamFigures, crib: &CribReaming) {
        let [unit, _] = self.units();
        let said = |reamer: &OwnReamer| match reamer.cuts_mm {
            Some(cuts) => format!(
                "{} that cuts {}",
                Self::size(reamer.size_mm.0, unit),
                Self::size(cuts.0, unit)
            ),
            None => {
                format!("{}, not tried yet: on scrap first", Self::size(reamer.size_mm.0, unit))
            }
        };
        let words = match (crib.reamers.first(), &crib.nearest) {
            (Some(best), _) => {
                let more = match crib.reamers.len() {
                    1 => String::new(),
                    count => format!("; {} more land inside", count - 1),
                };
                format!("the {}{more}", said(best))
            }
            (None, Some(near)) => format!("no reamer lands inside; nearest the {}", said(near)),
            (None, None) => "no reamer near this size".to_owned(),
        };
        wrapped(out, "  crib  ", &words);
        let words = match (&crib.drill, &ream.drill) {
            (Some(own), rather) => {
                let rather = rather
                    .as_ref()
                    .filter(|rather| rather.mm != own.mm)
                    .map_or(String::new(), |rather| format!("; rather {}", rather.name));
                format!("drill {}, leaves {}{rather}", own.name, self.difference(own.leaves_mm.0))
            }
            (None, Some(_)) => "no drill that leaves fitting stock".to_owned(),
            (None, None) => return,
        };
        wrapped(out, "        ", &words);
    }

    /// The crib's gauge pins for a hole.
    pub(crate) fn pins(&self, out: &mut String, feature: &FeatureAnswer) {
        let Some(pins) = &feature.pins else { return };
        let [unit, _] = self.units();
        let words = [("must go in", pins.goes_in), ("must not", pins.stays_out)]
            .into_iter()
            .filter_map(|(what, pin)| Some(format!("{} {what}", Self::size(pin?.mm.0, unit))));
        wrapped(out, "  pins  ", &words.collect::<Vec<_>>().join("; "));
    }

    pub(crate) fn crib(out: &mut String, answer: &CribAnswer) {
        if let Some(changed) = &answer.changed {
            wrapped(out, "", changed);
        }
        for note in &answer.notes {
            wrapped(out, "", note);
        }
        // The last added stand at the end; a long list shows its end.
        let hidden = answer.list.len().saturating_sub(LISTED);
        if hidden > 0 {
            let _ = writeln!(out, "  ... {hidden} before, in the file");
        }
        for tool in answer.list.iter().skip(hidden) {
            wrapped(out, "  ", tool);
        }
        let place = answer.file.as_deref().unwrap_or("kept in memory only");
        wrapped(out, "  ", place);
    }

    pub(crate) fn in_force(&self, out: &mut String, answer: &InForce) {
        let settings = &answer.settings;
        let units = if settings.units == Units::Millimetres { "mm" } else { "in" };
        let other = answer.other_machine;
        // A shop with a lathe alone reads nothing of machines.
        let has_both = answer.machine != Machine::Lathe
            || other.dial != Dial::Diameter
            || other.graduation_mm.is_some()
            || other.dial_turn_mm.is_some();
        let machine = if has_both { format!("{}: ", answer.machine.word()) } else { String::new() };
        let mut words = format!("units {units}, {machine}dial {}", settings.dial.word());
        if let Some(division) = answer.graduation_mm {
            let _ = write!(words, ", graduation {}", self.difference(division.0));
        }
        if let Some(turn) = answer.dial_turn_mm {
            let _ = write!(words, ", turn {}", self.difference(turn.0));
        }
        if let Some(least) = answer.least_chip_mm {
            let _ = write!(words, ", least chip {}", self.difference(least.0));
        }
        if let Some(risk) = answer.risk {
            let _ = write!(words, ", risk {} %", (risk * 1000.0).round() / 10.0);
        }
        if let Some(division) = answer.top_slide_mm {
            let _ = write!(words, ", top slide {}", self.difference(division.0));
        }
        for (name, value) in [
            ("bores by", &answer.instrument_bores),
            ("shafts by", &answer.instrument_shafts),
            ("material", &answer.material),
        ] {
            if let Some(value) = value {
                let _ = write!(words, ", {name} {value}");
            }
        }
        wrapped(out, "", &words);
        let mut words = format!("{}: dial {}", other.machine.word(), other.dial.word());
        if let Some(division) = other.graduation_mm {
            let _ = write!(words, ", graduation {}", self.difference(division.0));
        }
        if let Some(turn) = other.dial_turn_mm {
            let _ = write!(words, ", turn {}", self.difference(turn.0));
        }
        if has_both {
            wrapped(out, "", &words);
        }
        if let Some(note) = &answer.note {
            wrapped(out, "  ", note);
        }
    }
}
