//! What a reamer cut, in words.

use std::fmt::Write as _;

use fits_core::{
    Limits,
    shop::{Cuts, Remedy},
};

use crate::{
    answer::Ends,
    questions::reamer::ReamerCutAnswer,
    render::text::{Text, lines::wrapped},
};

fn words(remedy: Remedy, nominal: &str) -> String {
    let words = match remedy {
        Remedy::RunTrue => {
            "let it follow the hole: floating holder, tailstock on centre, no run-out at the lead"
        }
        Remedy::Slower => "half the drill's speed or less, a steady feed, never backwards",
        Remedy::Fluid => "cutting fluid, and clear the chips: what builds up on the edge cuts over",
        Remedy::HoneLead => "hone the lead lightly, all flutes alike: one high flute cuts over",
        Remedy::Stock => {
            return format!("leave only the usual stock, as `ream {nominal} H7` says");
        }
        Remedy::MicReamer => "mic the reamer over its lands, and use the size that it is",
        Remedy::Again => {
            "let the part cool and run it through again: a thin or soft wall springs back"
        }
        Remedy::Worn => "a worn one cuts under: keep it for presses, use a new one here",
    };
    words.to_owned()
}

impl Text {
    pub(crate) fn reamer_cut(&self, out: &mut String, answer: &ReamerCutAnswer) {
        let [first, second] = self.units();
        let over = answer.over_mm.0.checked_abs().unwrap_or(answer.over_mm.0);
        // What the reamer measures: the hole less what it cut over that.
        let below = answer.above_reamer_mm.and_then(|above| {
            let reamer = answer.hole_mm.0.checked_sub(above.0).ok()?;
            answer.nominal_mm.0.checked_sub(reamer).ok().filter(|it| it.is_positive())
        });
        let worn = below.map_or(String::new(), |below| {
            format!(", by a reamer {} under its size", self.one_difference(below))
        });
        let lead = match answer.cuts {
            Cuts::Under => format!("UNDER   by {}", self.difference(over)),
            Cuts::Usual => format!("USUAL   {} over{worn}", self.difference(over)),
            Cuts::Over => format!("OVER    by {}", self.difference(over)),
            Cuts::Wild => format!(
                "OVER    by {}: more than a reamer does that runs true",
                self.difference(over)
            ),
        };
        let _ = writeln!(out, "{lead}");
        let class = match (&answer.class, answer.cuts) {
            (Some(class), Cuts::Usual) => format!(": in {class}"),
            (Some(class), _) => format!(": in {class}, not in H7"),
            (None, Cuts::Under) => ": under nominal, so in no H class".to_owned(),
            (None, _) => String::new(),
        };
        let hole = answer.hole_mm.0;
        let _ = writeln!(
            out,
            "  hole    {}  {}{class}",
            Self::size(hole, first),
            Self::size(hole, second)
        );
        let range = |ends: &Ends, unit| {
            let limits = Limits::new(ends.min_mm.0, ends.max_mm.0);
            limits.map_or(String::new(), |limits| {
                if limits.lower() == limits.upper() {
                    Self::size(limits.lower(), unit)
                } else {
                    Self::range(limits, unit)
                }
            })
        };
        if let Some(new) = &answer.new_reamer {
            let _ = writeln!(
                out,
                "  a new reamer measures {}  {}",
                range(new, first),
                range(new, second)
            );
        }
        if let Some(above) = answer.above_reamer_mm {
            let off = above.0.checked_abs().unwrap_or(above.0);
            let way = if above.0.is_negative() { "under" } else { "over" };
            let _ = writeln!(out, "  it cut {} {way} what it measures", self.difference(off));
        }
        for pin in &answer.pin_fits {
            let (low, high) = (pin.clearance.min_mm.0, pin.clearance.max_mm.0);
            let play = if low == high {
                self.one_play(low)
            } else {
                format!("{} to {}", self.one_play(low), self.one_play(high))
            };
            wrapped(
                out,
                "  ",
                &format!("{} {}: {play}", pin.pin_name, range(&pin.pin_limits, first)),
            );
        }
        let size = Self::size(hole, first).replace(' ', "");
        wrapped(
            out,
            "  ",
            &format!("a pin to suit the hole: `hole {size}, press` or `hole {size}, sliding`"),
        );
        let nominal = Self::size(answer.nominal_mm.0, first).replace(' ', "");
        for remedy in &answer.remedies {
            wrapped(out, "  - ", &words(*remedy, &nominal));
        }
        if !answer.remedies.is_empty() {
            let _ = writeln!(out, "  try it on scrap (what to do is common practice, no source)");
        }
        wrapped(out, "  ", &format!("to remember it: `{}`", answer.remember));
    }
}
