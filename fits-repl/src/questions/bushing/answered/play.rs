//! The play that a bushing is wanted to have, and what to know of it.

use fits_core::{
    Length, Limits,
    shop::{
        Hazard,
        bushing::{Bush, Pressed, Running, Service},
    },
    source::{Known, Reason},
    standards::materials::Care,
};

use crate::{
    problem::Problem,
    query::{BushingText, Units},
    questions::{
        bushing::answered::Found,
        part::{mates::is_inch, resolve::from_core},
        why::answered::said,
    },
    session::Session,
};

/// The clearance wanted.
pub(crate) struct Wanted {
    pub(crate) running: Limits,
    /// What it goes by.
    pub(crate) by: String,
    /// Why, where it goes by a table or a rule.
    pub(crate) reason: Option<Reason>,
    /// What to know of it.
    pub(crate) notes: Vec<String>,
}

impl Session {
    /// The clearance wanted, as given or by the service.
    pub(crate) fn wanted(
        &self,
        text: &BushingText,
        kind: Bush,
        nominal: Length,
    ) -> Result<Wanted, Problem> {
        let mut notes = Vec::new();
        if let Some(found) = self.given_running(text)? {
            fast(text, kind, nominal, &mut notes);
            return Ok(Wanted { running: found, by: "as given".to_owned(), reason: None, notes });
        }
        let service = service(text, nominal)?;
        if let (Bush::Plastic, Some(_)) = (kind, service) {
            notes.push("plastic's play goes by its bore, whatever the service".to_owned());
        }
        let found = Running::wanted(kind, service, nominal).map_err(|error| {
            let at = text.service.as_ref().map_or(text.bore.0.at.clone(), |spot| spot.at.clone());
            from_core(&error, at).advise(
                "give the clearance wanted, as in `bushing 20 od 26 long 20, hub steel, bronze, running 0.03..0.06`",
            )
        })?;
        fast(text, kind, nominal, &mut notes);
        let by = match (kind, service) {
            (Bush::Bronze, service) => {
                format!("for {} service", service.unwrap_or_default().words())
            }
            (Bush::Sintered, Some(service)) => format!("for {} service", service.words()),
            _ => format!("by the rule for {}", kind.words()),
        };
        let by = match found.reason.known {
            Known::Memory => format!("{by}, unconfirmed"),
            Known::Practice => format!("{by}, common practice"),
            _ => by,
        };
        Ok(Wanted { running: found.clearance, by, reason: Some(found.reason), notes })
    }
}

pub(crate) fn service(text: &BushingText, nominal: Length) -> Result<Option<Service>, Problem> {
    let Some(spot) = &text.service else { return Ok(None) };
    let found = Service::named(&spot.value).map_err(|error| {
        let problem = from_core(&error, spot.at.clone());
        match error.advice().strip_prefix("nearest: ") {
            Some(nearest) => problem.advise("").fix(spot.at.clone(), nearest),
            None => problem,
        }
    })?;
    // 500 ft/min parts the two.
    let is_fast = speed(text, nominal).is_some_and(|speed| speed > 2.54);
    let is_spindle = found == Service::Spindle;
    Ok(Some(if is_spindle && is_fast { Service::FastSpindle } else { found }))
}

/// Sliding speed in m/s.
pub(crate) fn speed(text: &BushingText, nominal: Length) -> Option<f64> {
    let rpm = text.rpm.as_ref()?;
    Some(std::f64::consts::PI * nominal.millimetres() / 1000.0 * rpm.value / 60.0)
}

pub(crate) fn fast(text: &BushingText, kind: Bush, nominal: Length, notes: &mut Vec<String>) {
    let (Some(speed), Some(most)) = (speed(text, nominal), kind.greatest_speed()) else { return };
    if speed > most {
        notes.push(format!(
            "it slides at {speed:.1} m/s, and {} stands about {most} m/s",
            kind.words()
        ));
    }
}

/// What to know of these sizes.
pub(crate) fn remarks(
    text: &BushingText,
    units: Units,
    found: &Found,
    pressed: &Pressed,
    notes: &mut Vec<String>,
) {
    if pressed.interference.lower().is_negative() {
        notes.push("the loosest of these do not hold in the housing: pin or glue them".to_owned());
    }
    if pressed.yields {
        let share = pressed.yielded_share * 100.0;
        let bound = pressed.closes_in_bound.map_or(String::new(), |most| {
            format!("; whatever the metal does, by no more than {}", said(units, most))
        });
        notes.push(if share > 99.9 {
            format!("at the tightest it yields right through: the bore closes in more{bound}")
        } else if share > 0.0 {
            format!(
                "at the tightest up to {} % of a wall's section yields: the bore closes in more",
                share.ceil()
            )
        } else {
            "at the tightest the housing may crack: take a lighter fit".to_owned()
        });
    }
    let ratio = length_over_bore(found);
    let (shortest, longest) = found.kind.usual_length();
    if ratio < shortest || ratio > longest {
        notes.push(format!(
            "{ratio:.1} times as long as its bore: {shortest} to {longest} is usual"
        ));
    }
    match found.kind {
        Bush::Sintered => notes.insert(
            0,
            "do not ream porous bronze, burnish it with a fitting pin: some say reaming closes the pores".to_owned(),
        ),
        Bush::Plastic => {
            notes.push("plastic creeps: pin or flange it where heat comes and goes".to_owned());
        }
        Bush::Bronze | Bush::Lined => {}
    }
    if matches!(found.kind, Bush::Sintered | Bush::Bronze)
        && is_inch(&text.bore.0.value) == Some(true)
    {
        notes.push(format!(
            "inch {} ones differ by maker: mic yours, and give what it measures",
            found.kind.words()
        ));
    }
}

pub(crate) fn cautions(found: &Found) -> Vec<&'static str> {
    let mut cautions = vec![Hazard::Pressing.caution()];
    if found.hub.care() == Some(Care::Brittle) {
        cautions.push(Hazard::Brittle.caution());
    }
    match found.kind {
        Bush::Sintered => cautions.push(Hazard::OilSmoke.caution()),
        Bush::Plastic => cautions.push(Hazard::Softening.caution()),
        Bush::Bronze | Bush::Lined => {}
    }
    cautions.push(Hazard::People.caution());
    cautions
}

pub(crate) fn length_over_bore(found: &Found) -> f64 {
    let ratio = found.length.millimetres() / found.bore.limits.middle().millimetres();
    (ratio * 100.0).round() / 100.0
}
