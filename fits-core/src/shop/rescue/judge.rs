//! Each way judged for one part: can it be gone, what does it take, what holds it.

use super::{
    Bond, Bonded, CleanUp, Left, Prospect, RepairSleeve, RetainingCompound, Trouble, Way, WayRow,
    sleeve::fit_of,
};
use crate::{
    error::Error,
    shop::words::{Circumstance, Word},
    size::{Length, Limits, Unit},
    speech::{Figure, Speech, say},
    standards::iso286::Feature,
};

/// Heat that lets a bond go, in degrees Celsius: unconfirmed, as the compounds' rows.
const APART_C: f64 = 250.0;

/// A part in trouble with what was worked out of it.
pub(super) struct Case<'a> {
    pub(super) trouble: &'a Trouble<'a>,
    /// Metal missing to the nearest good size.
    pub(super) missing: Length,
    /// Hole less shaft.
    pub(super) gap: Limits,
}

impl Case<'_> {
    /// The way of a row.
    pub(super) fn judged(&self, row: &'static WayRow) -> Result<Way, Error> {
        let mut way = Way {
            name: row.name,
            verdict: Prospect::Good,
            strength: row.strength,
            effort: row.effort,
            who: row.who,
            limits: Vec::new(),
            figures: Vec::new(),
            says: Vec::new(),
            ask: None,
            known: row.from.known,
            source: row.from.text,
        };
        match row.name {
            "cut to size" => self.cut(&mut way)?,
            "suit the mate" => self.suit(&mut way)?,
            "another fit" => self.another(&mut way),
            "retaining compound" => self.compound(&mut way)?,
            "bush" | "sleeve" => self.sleeve(&mut way),
            "next size" => self.next_size(&mut way)?,
            "shim" => self.shim(&mut way, row),
            "centre-punch" => way.verdict = Prospect::No,
            "new part" => {}
            _ => self.builds(&mut way, row)?,
        }
        let moves = self.trouble.word.is_some_and(Word::moves);
        let holds_still = ["retaining compound", "knurl", "shim", "centre-punch"];
        let forbidden = if self.trouble.duty.people && !row.people {
            Some(say!("it carries people: not this way"))
        } else if self.trouble.duty.bearing && !row.bearing {
            Some(say!("not under a rolling bearing"))
        } else if moves && holds_still.contains(&row.name) {
            Some(say!("the parts move in one another: it would hold them still, or wear off"))
        } else {
            None
        };
        if let Some(why) = forbidden {
            way.verdict = Prospect::No;
            way.says = vec![why];
            way.limits.clear();
            way.figures.clear();
            way.ask = None;
        } else {
            way.says.push(row.note.into());
        }
        Ok(way)
    }

    /// The part's size as it is: the one that its mate is suited to.
    fn size(&self) -> Length {
        self.trouble.is.middle()
    }

    fn cut(&self, way: &mut Way) -> Result<(), Error> {
        let wanted = self.trouble.wanted;
        way.limits.push(("cut to", wanted));
        way.says.push(say!(
            "there is {} of metal to spare",
            Figure::Small(self.missing.checked_neg()?)
        ));
        Ok(())
    }

    fn suit(&self, way: &mut Way) -> Result<(), Error> {
        let Trouble { part, is, word, mate, unit, .. } = *self.trouble;
        let other = part.mate().word();
        if mate.is_some_and(|mate| mate.is_bought) {
            way.verdict = Prospect::No;
            way.says.push(say!("the {} is bought: it is not cut to suit", other));
            return Ok(());
        }
        let Some(word) = word else {
            way.verdict = Prospect::Care;
            way.effort += 1;
            way.says.push(say!("say the fit, and the {} to suit is worked out", other));
            return Ok(());
        };
        let (choice, fit) = fit_of(word, &Circumstance::plain(self.size()), unit)?;
        let Ok(suited) = fit.suited(part, is, word.suit_percent()) else {
            way.verdict = Prospect::No;
            way.says.push(say!(
                "it varies by {}, more than a {} fit allows ({})",
                Figure::Small(is.tolerance()),
                word.name(),
                Figure::Small(fit.clearance().tolerance())
            ));
            return Ok(());
        };
        let suited = suited.part(part.mate());
        way.known = way.known.worst(suited.known()).worst(choice.known);
        way.limits.push((other, suited));
        if is.tolerance() == Length::ZERO {
            way.ask = Some(say!("{} {}, {}", part.word(), is.lower(), word.name()));
        }
        if let Some(mate) = mate {
            let inside =
                suited.contains(mate.limits.lower()) && suited.contains(mate.limits.upper());
            let can_be_cut = match part {
                Feature::Hole => mate.limits.lower() > suited.upper(),
                Feature::Shaft => mate.limits.upper() < suited.lower(),
            };
            way.says.push(if inside {
                say!("the {} as it is suits already", other)
            } else if can_be_cut {
                say!("cut the {} that is there", other)
            } else {
                way.effort += 2;
                say!("the {} that is there is past it: make another", other)
            });
        } else {
            way.says.push(say!("if the {} is not cut yet, it costs nothing", other));
        }
        Ok(())
    }

    /// What fit the parts are as they stand.
    fn another(&self, way: &mut Way) {
        way.verdict = Prospect::Care;
        let nominal = self.trouble.wanted.middle();
        let (clear, unit) = (self.gap, self.trouble.unit);
        let found = Word::all().rev().filter(|word| word.name() != "shrink").find_map(|word| {
            let (choice, fit) = fit_of(word, &Circumstance::plain(nominal), unit).ok()?;
            let range = fit.clearance();
            (range.contains(clear.lower()) && range.contains(clear.upper()))
                .then_some((word, choice))
        });
        way.figures.push(("clearance_min_mm", clear.lower().millimetres()));
        way.figures.push(("clearance_max_mm", clear.upper().millimetres()));
        way.says.push(match found {
            Some((word, choice)) => {
                way.known = way.known.worst(choice.known);
                if word.moves() && self.trouble.word.is_some_and(|wanted| !wanted.moves()) {
                    way.strength = 1;
                }
                say!("as they are the parts are a {} fit", word.name())
            }
            None => say!(
                "as they are the parts have {} to {} of clearance: no single word covers that",
                Figure::Small(clear.lower()),
                Figure::Small(clear.upper())
            ),
        });
    }

    fn compound(&self, way: &mut Way) -> Result<(), Error> {
        let Trouble { duty, long, metals, wanted, .. } = *self.trouble;
        let joint = Bonded {
            diameter: wanted.middle(),
            gap: self.gap,
            metals,
            celsius: duty.celsius,
            shock: duty.shock,
            oily: duty.oily,
        };
        let (kind, bond) = match RetainingCompound::best(&joint) {
            Ok(best) => best,
            Err(error) => {
                way.verdict = Prospect::No;
                way.says.push(error.why());
                return Ok(());
            }
        };
        way.known = way.known.worst(bond.known);
        let diameter = joint.diameter;
        // Longer than one and a half diameters gains little: none of it is counted.
        let most = diameter.checked_scale(3, 2)?;
        let counted = long.map(|long| long.min(most));
        let each = if self.trouble.unit == Unit::Inch {
            Length::INCH
        } else {
            Length::from_millimetres(10)?
        };
        let over = counted.unwrap_or(each);
        let (torque, push) = (bond.torque_n_m(diameter, over), bond.push_n(diameter, over));
        way.figures.extend([
            ("gap_max_mm", self.gap.upper().millimetres()),
            ("gap_most_mm", kind.gap_most().millimetres()),
            ("over_length_mm", over.millimetres()),
            ("area_mm2", Bond::area_mm2(diameter, over)),
            ("shear_mpa", bond.shear_mpa),
            ("kept", bond.kept),
            ("safety", bond.safety),
            ("allowed_mpa", bond.allowed_mpa),
            ("torque_n_m", torque),
            ("push_n", push),
            ("apart_c", APART_C),
        ]);
        way.says.push(say!(
            "{}: closes {} of its {} gap; {} long it may carry {} or a push of {} (factor {})",
            kind.name(),
            Figure::Small(self.gap.upper()),
            Figure::Small(kind.gap_most()),
            over,
            Figure::NewtonMetres(torque),
            Figure::Newtons(push),
            bond.safety
        ));
        way.says.push(say!("apart again: heat to {} and press hot", Figure::Celsius(APART_C)));
        match (duty.torque_n_m, counted) {
            (Some(asked), Some(_)) if asked > torque => {
                way.verdict = Prospect::No;
                way.says.insert(
                    0,
                    say!(
                        "it may carry {} of the {} asked",
                        Figure::NewtonMetres(torque),
                        Figure::NewtonMetres(asked)
                    ),
                );
            }
            (Some(_), None) => {
                way.verdict = Prospect::Care;
                way.says.push("give the length, as long 1in, to hold it against the torque".into());
            }
            _ if self.gap.lower().is_negative() => {
                way.verdict = Prospect::Care;
                way.says.push("where the parts still grip, pressing wipes the film off".into());
            }
            _ => {}
        }
        Ok(())
    }

    fn sleeve(&self, way: &mut Way) {
        let Trouble { part, wanted, is, bush, wall, around, unit, .. } = *self.trouble;
        let cleaned = match part {
            Feature::Hole => is.upper(),
            Feature::Shaft => is.lower(),
        };
        let sleeve =
            match RepairSleeve::plan(part, wanted.middle(), cleaned, bush, wall, around, unit) {
                Ok(sleeve) => sleeve,
                Err(error) => {
                    way.verdict = Prospect::No;
                    way.says.push(error.why());
                    return;
                }
            };
        way.known =
            way.known.worst(sleeve.known).worst(sleeve.fit.known()).worst(sleeve.choice.known);
        let (hole, shaft) = (sleeve.fit.hole(), sleeve.fit.shaft());
        way.limits.extend(match part {
            Feature::Hole => {
                [("bore to", hole), ("bush outside", shaft), ("bore in place", wanted)]
            }
            Feature::Shaft => {
                [("turn to", shaft), ("sleeve bore", hole), ("turn in place", wanted)]
            }
        });
        way.figures.extend([
            ("joint_mm", sleeve.joint.millimetres()),
            ("wall_mm", sleeve.wall.millimetres()),
            ("wall_least_mm", sleeve.wall_least.millimetres()),
        ]);
        let thin = if sleeve.is_thin { ", thin tube" } else { "" };
        way.ask = Some(say!("{} press{}", sleeve.joint, thin));
        way.says.push(say!("a wall of {}", Figure::About(sleeve.wall)));
        match sleeve.left {
            Left::Unknown if part == Feature::Hole => {
                way.says.push(
                    "give the outside of the part, as od 2in, to see what wall it leaves".into(),
                );
            }
            Left::Unknown => {}
            Left::Wall(left) => {
                way.figures.push(("left_wall_mm", left.millimetres()));
                way.says.push(say!("it leaves {} of wall about it", Figure::About(left)));
            }
            Left::Torque(share) => {
                way.figures.push(("torque_left", share));
                way.says.push(say!(
                    "the shaft under it stands {} % of its torque",
                    format!("{:.0}", share * 100.0)
                ));
                if share < 0.5 {
                    way.verdict = Prospect::Care;
                }
            }
        }
    }

    fn next_size(&self, way: &mut Way) -> Result<(), Error> {
        let Trouble { is, unit, around, word, .. } = *self.trouble;
        let bore = CleanUp::of(&[is.lower(), is.upper()], None, None)?;
        let next = bore.next(unit)?;
        if let Some(outside) = around.filter(|outside| *outside <= next) {
            way.verdict = Prospect::No;
            way.says.push(say!("the next size, {}, leaves nothing of {}", next, outside));
            return Ok(());
        }
        let limits = match word {
            Some(word) => {
                let (choice, fit) = fit_of(word, &Circumstance::plain(next), unit)?;
                way.known = way.known.worst(choice.known).worst(fit.known());
                way.ask = Some(say!("{} {}", next, word.name()));
                vec![("bore to", fit.hole()), ("pin", fit.shaft())]
            }
            None => vec![("bore to", Limits::new(next, next)?)],
        };
        way.limits.extend(limits);
        way.figures.extend([
            ("cleans_up_mm", bore.on_its_middle.millimetres()),
            ("cleans_up_on_old_middle_mm", bore.on_the_old_middle.millimetres()),
            ("next_mm", next.millimetres()),
            ("next_on_old_middle_mm", bore.next_on_old(unit)?.millimetres()),
        ]);
        if is.tolerance() == Length::ZERO {
            way.says.push(say!("cleans up at {}", bore.on_its_middle));
        } else {
            way.says.push(say!(
                "cleans up at {} about its middle as it is; {} if the wear is to one side and the old middle is kept: then {}",
                bore.on_its_middle,
                bore.on_the_old_middle,
                bore.next_on_old(unit)?
            ));
        }
        Ok(())
    }

    fn shim(&self, way: &mut Way, row: &WayRow) {
        let foil = self.gap.middle().half();
        way.verdict = Prospect::Care;
        way.figures.push(("foil_mm", foil.millimetres()));
        let least = row.least.unwrap_or_default();
        if self.trouble.duty.turns || self.trouble.duty.torque_n_m.is_some() {
            way.verdict = Prospect::No;
            way.says.push("not where the load goes round or a torque is held: it rolls out".into());
        } else if foil < least {
            way.verdict = Prospect::No;
            way.says.push(say!(
                "half the gap is {}: the thinnest foil is about {}",
                Figure::Small(foil.max(Length::ZERO)),
                Figure::Small(least)
            ));
        } else {
            way.says.push(say!("foil of {}, one wrap", Figure::Small(foil)));
        }
    }

    /// What builds the part up: is it in the reach of the way?
    fn builds(&self, way: &mut Way, row: &WayRow) -> Result<(), Error> {
        let wanted = self.trouble.wanted.middle();
        let build = match self.trouble.part {
            Feature::Hole => self.trouble.is.upper().checked_sub(wanted)?,
            Feature::Shaft => wanted.checked_sub(self.trouble.is.lower())?,
        };
        way.figures.push(("build_mm", build.millimetres()));
        way.verdict = if row.who == "you" { Prospect::Care } else { Prospect::Good };
        if matches!(row.name, "metal spray" | "weld and turn") {
            way.verdict = Prospect::Care;
        }
        if row.name == "metal-filled epoxy" {
            let half = Length::INCH.half();
            if wanted < half || wanted > Length::INCH.checked_mul(3)? {
                way.verdict = Prospect::No;
                way.says.push(say!(
                    "its maker gives undercuts for {} to {} alone",
                    half,
                    Length::INCH.checked_mul(3)?
                ));
            }
            return Ok(());
        }
        if let Some(most) = row.most.filter(|most| build > *most) {
            way.verdict = Prospect::No;
            way.says.push(say!(
                "{} to build up, and it raises {} at the most",
                Figure::About(build),
                Figure::About(most)
            ));
            return Ok(());
        }
        let built: Speech = say!(
            "{} to build up on the diameter, and what is turned or ground off",
            Figure::About(build)
        );
        way.says.push(built);
        Ok(())
    }
}
