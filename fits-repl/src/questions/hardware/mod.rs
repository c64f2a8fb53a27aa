//! Small parts out of the drawer and what is cut for them: retaining rings, pins,
//! Woodruff keys, plugs of square tube, O-rings: `retaining ring 20mm shaft`.

mod asked;
mod figures;
mod keys;
mod orings;
mod pins;
mod plugs;
mod rings;
mod shown;

use crate::questions::prelude::*;

use self::{asked::Part, figures::said};
pub(crate) use self::{
    asked::{HardwareText, read},
    figures::HardwareAnswer,
};
use crate::{query::Size, questions::part::resolve::from_core};

/// Its clauses.
pub(crate) const CLAUSES: &[Clause] = &[
    Clause::free("retaining", "ring SIZE shaft or bore", "the groove of a retaining ring").opens(),
    Clause::free("circlip", "SIZE shaft or bore", "the same").opens(),
    Clause::free("snap", "ring SIZE shaft or bore", "the same").opens(),
    Clause::free("woodruff", "NUMBER, or shaft SIZE", "a Woodruff key and its keyseat").opens(),
    Clause::free("taper", "pin NUMBER long SIZE", "a taper pin, its drill and its reamer").opens(),
    Clause::free("spring", "pin SIZE", "a spring pin and its hole").opens(),
    Clause::free("cross", "pin shaft SIZE", "a pin across a shaft, and what it carries").opens(),
    Clause::free("roll", "pin SIZE", "a spring pin").opens(),
    Clause::free("clevis", "pin SIZE", "a clevis pin and its hole").opens(),
    Clause::free("cotter", "pin SIZE", "a split pin and its hole").opens(),
    Clause::free("o-ring", "SIZE, bore or rod", "an O-ring and its groove").opens(),
];

/// Its help.
pub(crate) const HELP: &[HelpTopic] = &[
    HelpTopic {
        topic: "rings",
        also: &["ring", "retaining ring", "circlip", "snap ring", "groove", "e-ring"],
        lines: &[
            "The groove of a retaining ring by its shaft or bore: DIN 471 and 472 in",
            "millimetres, the basic ring in inches; heavy, crescent and e-ring are others.",
        ],
        examples: &[
            ("retaining ring 20mm shaft", "DIN 471"),
            ("circlip 47mm bore", "DIN 472"),
            ("snap ring 3/4in shaft", "the inch basic ring"),
            ("e-ring 1/4in", "put on from the side"),
        ],
    },
    HelpTopic {
        topic: "pins",
        also: &["pin", "spring pin", "roll pin", "taper pin", "clevis pin", "cotter pin"],
        lines: &[
            "The hole that a pin wants, and what a pin across a shaft carries. A taper pin",
            "goes by its number in inches (1:48), by its small end in millimetres (1:50).",
        ],
        examples: &[
            ("spring pin 1/4in", "the hole by its standard"),
            ("taper pin 4 long 2in", "drill, reamer and how far it moves"),
            ("taper pin 5mm long 40mm", "metric"),
            ("clevis pin 1/2in", "shank, cotter and room"),
            ("cross pin shaft 1in torque 20 Nm", "a collar's pin"),
        ],
    },
    HelpTopic {
        topic: "woodruff",
        also: &["woodruff key", "keyseat"],
        lines: &["A Woodruff key by its number; with a shaft also what a mic reads."],
        examples: &[
            ("woodruff 606 shaft 3/4in", "the keyseat, and over it"),
            ("woodruff for 3/4in", "the numbers that suit"),
        ],
    },
    HelpTopic {
        topic: "plugs",
        also: &["plug", "tube plug", "square tube", "square plug"],
        lines: &[
            "A plug for the end of square or rectangular tube: the outside, the wall, what",
            "it is made of, and the inside as measured; snug, slide or drive.",
        ],
        examples: &[
            ("square plug 1in wall 0.065in nylon", "the inside's spread"),
            ("square plug 1in wall 0.065in inside 0.868in drive", "to the tube in hand"),
            ("rectangular plug 2in x 1in wall 0.083in", "both ways"),
        ],
    },
    HelpTopic {
        topic: "o-rings",
        also: &["o-ring", "oring", "gland"],
        lines: &[
            "The groove of an O-ring by dash number or section: piston, rod or face;",
            "static or moving; with the bore or the rod, its diameter.",
        ],
        examples: &[
            ("o-ring 210 piston moving bore 1in", "the groove's diameter"),
            ("o-ring 1/8in rod static 3/4in", "by its section"),
            ("o-ring 112 face", "in a flat face"),
        ],
    },
];

impl Question for HardwareText {
    fn typed_in(&self, session: &Session) -> Units {
        let units = self.sizes.first().map(|(_, size)| thought_in(size, session.units));
        let is_inch_name =
            self.name.is_some() && matches!(self.part.value, Part::Woodruff | Part::ORing);
        match units {
            Some(units) => units,
            None if is_inch_name => Units::Inches,
            None => session.units,
        }
    }

    fn answer(&self, session: &Session) -> Result<Answer, Problem> {
        session.hardware(self).map(|answer| Answer::Hardware(Box::new(answer)))
    }
}

impl Answered for HardwareAnswer {
    fn show(&self, text: &Text, out: &mut String) {
        text.hardware(out, self);
    }

    fn reasons(&self, _: Units) -> Vec<Reason> {
        self.reasons.clone()
    }

    fn unconfirmed(&self) -> Option<String> {
        let named = self.sizes.iter().map(|size| (size.name, size.known));
        let names = super::recalled_names(named);
        (!names.is_empty()).then(|| names.join(", "))
    }
}

impl Session {
    fn hardware(&self, text: &HardwareText) -> Result<HardwareAnswer, Problem> {
        if let Some(size) = text.too_many() {
            return Err(Problem::new(
                "a word is missing that says what this size is",
                size.at.clone(),
            )
            .advise(text.example()));
        }
        match text.part.value {
            Part::Ring => self.ring(text),
            Part::SpringPin => self.spring_pin(text),
            Part::TaperPin => self.taper_pin(text),
            Part::ClevisPin => self.clevis_pin(text),
            Part::CotterPin => self.cotter_pin(text),
            Part::CrossPin => self.cross_pin(text),
            Part::Woodruff => self.woodruff(text),
            Part::TubePlug => self.tube_plug(text),
            Part::ORing => self.o_ring(text),
        }
    }

    /// The one size that no word takes, which must be there.
    fn only_size<'a>(&self, text: &'a HardwareText) -> Result<&'a Size, Problem> {
        let _ = self;
        text.free().next().ok_or_else(|| missing(text, "the size is missing"))
    }
}

/// What is missing, after the part's name.
fn missing(text: &HardwareText, what: &str) -> Problem {
    Problem::new(what, text.part.at.clone()).advise(text.example())
}

/// A refusal of the core, at the place of a size.
fn at(size: &Size) -> impl Fn(fits_core::Error) -> Problem + '_ {
    move |error| from_core(&error, size.at.clone())
}
