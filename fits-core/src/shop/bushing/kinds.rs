//! Kinds of bushing: what they come as, how fast and how long they may be.

use super::table::KINDS;
use crate::{
    error::Error,
    shop::assemble::no_wall,
    size::{Length, Limits},
    source::{Known, Reason},
    standards::{
        bought,
        iso286::Class,
        materials::{Care, Family, Material},
    },
};

/// Is a size one of those that inch bushes are sold by: 64ths of an inch, to the
/// end of the recalled table?
fn is_of_inches(size: Length) -> bool {
    let inch = Length::INCH.tenth_nanometres();
    size.tenth_nanometres() % (inch / 64) == 0 && size.tenth_nanometres() <= 3 * inch
}

/// A kind of bushing.
///
/// ```
/// use fits_core::shop::bushing::Bush;
/// assert_eq!(Bush::Sintered.words(), "sintered bronze");
/// assert_eq!(Bush::Bronze.usual_length(), (0.5, 2.0));
/// assert_eq!(Bush::Bronze.greatest_speed(), None);
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "kebab-case"))]
#[expect(
    clippy::exhaustive_enums,
    reason = "each is told, or acted on, in its own way: a new one must not pass unseen"
)]
pub enum Bush {
    /// Solid metal: bronze, brass, iron.
    Bronze,
    /// Porous bronze with oil in its pores.
    Sintered,
    /// Nylon, acetal and the like, solid.
    Plastic,
    /// A thin wrapped shell with a lining of PTFE or acetal.
    Lined,
}

/// What a bushing is made to before it is pressed in.
#[derive(Clone, Debug)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct Made {
    /// Its bore.
    pub bore: Limits,
    /// Its outside.
    pub outside: Limits,
    /// Where the two come from.
    pub reasons: Vec<Reason>,
}

impl Bush {
    /// The kind that a material makes.
    ///
    /// ```
    /// use fits_core::{shop::bushing::Bush, standards::materials::Material};
    /// assert_eq!(Bush::of(Material::find("oil bronze")?), Bush::Sintered);
    /// assert_eq!(Bush::of(Material::find("acetal")?), Bush::Plastic);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn of(material: &Material) -> Self {
        match (material.family(), material.care()) {
            (Family::Plastic, _) => Self::Plastic,
            (_, Some(Care::Oil)) => Self::Sintered,
            _ => Self::Bronze,
        }
    }

    /// In words.
    pub const fn words(self) -> &'static str {
        match self {
            Self::Bronze => "solid bronze",
            Self::Sintered => "sintered bronze",
            Self::Plastic => "plastic",
            Self::Lined => "lined",
        }
    }

    /// What one of this size is made to: as bought ones are, where a standard
    /// says so.
    ///
    /// # Errors
    /// No wall, or beyond the tables.
    ///
    /// ```
    /// use fits_core::shop::bushing::Bush;
    /// let made = Bush::Plastic.made("20mm".parse()?, "26mm".parse()?)?;
    /// assert!(made.outside.lower() > made.bore.upper());
    /// assert!(Bush::lined("20mm".parse()?).is_ok());
    /// assert!(Bush::Plastic.reason("bore_class").is_some());
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn made(self, bore: Length, outside: Length) -> Result<Made, Error> {
        if outside <= bore {
            return Err(no_wall(0, bore, outside));
        }
        let bought = |within: &str, about: &str| -> Result<Made, Error> {
            let inside = bought::Family::named(within)?.part_of(bore, outside)?;
            let around = bought::Family::named(about)?.part(outside)?;
            Ok(Made {
                bore: inside.limits,
                outside: around.limits,
                reasons: vec![inside.reason(), around.reason()],
            })
        };
        match self {
            Self::Bronze => bought("cast bronze bushing bore", "cast bronze bushing outside"),
            Self::Sintered if is_of_inches(bore) && is_of_inches(outside) => {
                self.made_in_inches(bore, outside)
            }
            Self::Sintered => {
                bought("metric sintered bushing bore", "metric sintered bushing outside")
            }
            Self::Plastic | Self::Lined => {
                let of = |figure: &str, size: Length| -> Result<(Limits, Vec<Reason>), Error> {
                    // Both rows are there: the table's test says so.
                    let class: Class = self.text(figure).unwrap_or("H9").parse()?;
                    let limits = class.limits(size)?;
                    Ok((limits, self.reason(figure).into_iter().collect()))
                };
                let (inside, mut reasons) = of("bore_class", bore)?;
                let (around, more) = of("outside_class", outside)?;
                reasons.extend(more);
                Ok(Made { bore: inside, outside: around, reasons })
            }
        }
    }

    /// What an inch one is sold as. No standard for them was read: both are over
    /// their nominal sizes, so that a hole reamed to nominal holds it and its bore
    /// comes near nominal.
    fn made_in_inches(self, bore: Length, outside: Length) -> Result<Made, Error> {
        let thou = |figure: &str| -> Result<Length, Error> {
            // The rows are there: the table's test says so.
            format!("{} thou", self.text(figure).unwrap_or("1")).parse()
        };
        let half_inch = Length::INCH.tenth_nanometres() / 2;
        let halves_above = (outside.tenth_nanometres() - 1) / half_inch - 1;
        let more = Length::THOU.half().checked_mul(halves_above.max(0))?;
        let width = thou("inch_width_thou")?.checked_add(more)?;
        let of = |size: Length, figure: &str| -> Result<Limits, Error> {
            let least = size.checked_add(thou(figure)?)?;
            Ok(Limits::new(least, least.checked_add(width)?)?.known_as(Known::Memory))
        };
        let reasons = ["inch_outside_thou", "inch_bore_thou", "inch_width_thou"];
        Ok(Made {
            bore: of(bore, "inch_bore_thou")?,
            outside: of(outside, "inch_outside_thou")?,
            reasons: reasons.into_iter().filter_map(|figure| self.reason(figure)).collect(),
        })
    }

    /// What a lined bushing of a listed size comes as: its bore in place in
    /// the housing its maker gives, and the shaft for it.
    ///
    /// # Errors
    /// The size is not listed; the advice offers its neighbours.
    ///
    /// ```
    /// use fits_core::shop::bushing::Bush;
    /// assert!(Bush::lined("20mm".parse()?)?.mate.is_some(), "the shaft for it is given too");
    /// assert!(Bush::lined("20.5mm".parse()?).unwrap_err().is_not_listed());
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn lined(bore: Length) -> Result<bought::BoughtPart, Error> {
        bought::Family::named("lined wrapped bushing bore")?.part(bore)
    }

    /// The greatest sliding speed in m/s, where one is known.
    pub fn greatest_speed(self) -> Option<f64> {
        self.number("greatest_m_per_s")
    }

    /// The usual range of length over bore.
    pub fn usual_length(self) -> (f64, f64) {
        (self.number("shortest").unwrap_or(0.5), self.number("longest").unwrap_or(2.0))
    }

    /// Where a figure of the table comes from, by its name there.
    ///
    /// ```
    /// use fits_core::shop::bushing::Bush;
    /// assert!(Bush::Plastic.reason("bore_class").is_some());
    /// assert!(Bush::Plastic.reason("no such figure").is_none());
    /// ```
    pub fn reason(self, figure: &str) -> Option<Reason> {
        let row = KINDS.iter().find(|row| row.kind == self && row.figure == figure)?;
        Some(Reason {
            figure: format!("{}, {} bushing", figure.replace('_', " "), self.words()),
            value: row.value.to_owned().into(),
            rule: row.note.to_owned().into(),
            source: row.from.text.to_owned(),
            known: row.from.known,
        })
    }

    fn text(self, figure: &str) -> Option<&'static str> {
        KINDS.iter().find(|row| row.kind == self && row.figure == figure).map(|row| row.value)
    }

    pub(super) fn number(self, figure: &str) -> Option<f64> {
        self.text(figure)?.parse().ok()
    }
}
