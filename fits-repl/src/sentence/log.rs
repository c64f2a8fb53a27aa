//! Entries of the pass log as they are spoken.

use crate::sentence::{
    Said, Setting, log_words,
    token::{Num, System, Token, Unit},
    view::View,
};

/// An entry of the log as it is being said.
#[derive(Default)]
pub(crate) struct Spoken {
    mode: &'static str,
    dialled: Option<Num>,
    readings: Vec<Reading>,
    /// A place that was named before its reading.
    place: Option<&'static str>,
    /// The readings are of places without names.
    is_slashed: bool,
    /// Numbers before any verb.
    loose: Vec<Num>,
    is_off: bool,
    /// `on radius`, `on dia`: what was dialled came off each side, or off the diameter.
    each_side: Option<bool>,
    is_sure: bool,
    /// What the readings were taken with.
    with: Option<&'static str>,
}

/// An instrument that is said as a part of the verb: `calipers say 19.8`.
fn in_verb(said: &str) -> Option<&'static str> {
    [("bore gauge", "bore gauge"), ("calipers", "calliper")]
        .into_iter()
        .find_map(|(opens, name)| said.starts_with(opens).then_some(name))
}

/// What was read, and where on the part if that was said.
struct Reading {
    num: Num,
    place: Option<&'static str>,
}

/// Nobody dials whole inches: two and more are thou.
pub(crate) fn is_thou(num: &Num, system: System) -> bool {
    num.unit.is_none()
        && system == System::Inches
        && num.value >= 2.0
        && num.places == 0
        && !num.is_fraction
}

pub(crate) fn dialled(num: &Num, system: System) -> String {
    if is_thou(num, system) {
        Num { unit: Some(Unit::Thou), ..num.clone() }.plain(system)
    } else {
        num.plain(system)
    }
}

pub(crate) fn dialled_mm(num: &Num, system: System) -> f64 {
    if is_thou(num, system) { num.value * 0.0254 } else { num.mm(system) }
}

/// What the dial counts where so much came off each side, or off the diameter.
fn counted(dial: &Num, each_side: bool, setting: Setting, system: System) -> Num {
    let times = match (each_side, setting.dial_is_radius) {
        (true, false) => 2.0,
        (false, true) => 0.5,
        _ => return dial.clone(),
    };
    let thou = is_thou(dial, system).then_some(Unit::Thou);
    Num { unit: thou.or(dial.unit), ..dial.times(times) }
}

impl Spoken {
    /// A pass with its reading: what comes next is another.
    fn is_whole(&self) -> bool {
        !self.readings.is_empty()
    }

    /// `took 0.2 off`: the diameter, or each side?
    fn which_side(&self, setting: Setting, system: System) -> Option<Vec<String>> {
        let is_open = self.mode == "cut"
            && self.is_off
            && self.readings.is_empty()
            && self.each_side.is_none();
        let dial = self.dialled.as_ref().filter(|_| is_open)?;
        let cut = |each_side| {
            format!("cut {}", dialled(&counted(dial, each_side, setting, system), system))
        };
        Some(vec![cut(false), cut(true)])
    }

    /// A name of a place: of the reading before it, or of the one that comes.
    fn name_place(&mut self, name: &'static str) -> Option<()> {
        if name == "/" {
            self.is_slashed = true;
            return Some(());
        }
        match self.readings.last_mut() {
            Some(last) if last.place.is_none() && self.place.is_none() => last.place = Some(name),
            _ if self.place.is_some() => return None,
            _ => self.place = Some(name),
        }
        Some(())
    }

    /// The readings as plain entries have them: those of several places are one
    /// entry, those of one place one after the other.
    fn read(&self, system: System) -> Option<Vec<String>> {
        let plain = |reading: &Reading| reading.num.plain(system);
        let placed = self.readings.iter().filter(|reading| reading.place.is_some()).count();
        let is_alone = self.readings.len() < 2;
        if self.place.is_some() || (self.is_slashed && (placed > 0 || is_alone)) {
            return None;
        }
        if self.is_slashed {
            return Some(vec![self.readings.iter().map(plain).collect::<Vec<_>>().join(" / ")]);
        }
        if placed == 0 {
            return Some(self.readings.iter().map(plain).collect());
        }
        let named = |reading: &Reading| Some(format!("{} {}", plain(reading), reading.place?));
        let all: Option<Vec<_>> = self.readings.iter().map(named).collect();
        Some(vec![all?.join(" ")])
    }

    /// The plain entries of what was said so far.
    fn flush(
        &mut self,
        (setting, system): (Setting, System),
        lines: &mut Vec<String>,
        first: &mut Option<(Num, Num)>,
    ) -> Option<()> {
        let mut said = std::mem::take(self);
        if let Some(each_side) = said.each_side {
            let dial = said.dialled.as_ref().filter(|_| said.mode == "cut")?;
            said.dialled = Some(counted(dial, each_side, setting, system));
        }
        if said.dialled.is_none() && matches!(said.mode, "again" | "spring" | "reads") {
            let loose = std::mem::take(&mut said.loose);
            let of_no_place = |num| Reading { num, place: None };
            said.readings.splice(0..0, loose.into_iter().map(of_no_place));
        }
        if !said.loose.is_empty() {
            return None;
        }
        // `gave 20 thou, measured 1.4695`: what it gave is no size beside the other.
        if let ("reads", None, [first, second]) = (said.mode, &said.dialled, &said.readings[..])
            && first.place.is_none()
            && second.num.mm(system) > 4.0 * dialled_mm(&first.num, system)
        {
            said.dialled = Some(said.readings.remove(0).num);
            said.mode = "cut";
        }
        let with = said.with.map_or(String::new(), |name| format!(" with {name}"));
        if said.with.is_some() && said.readings.is_empty() {
            return None;
        }
        let mut readings = said.read(system)?.into_iter();
        let sure = if said.is_sure { " sure" } else { "" };
        match (said.mode, &said.dialled) {
            ("cut", Some(dial)) => match readings.next() {
                Some(reading) => {
                    let num = &said.readings.first()?.num;
                    if num.mm(system) < 4.0 * dialled_mm(dial, system) {
                        return None;
                    }
                    first.get_or_insert_with(|| (dial.clone(), num.clone()));
                    lines.push(format!("cut {} = {reading}{with}{sure}", dialled(dial, system)));
                }
                None => lines.push(format!("cut {}{sure}", dialled(dial, system))),
            },
            ("spring", None) => match readings.next() {
                Some(reading) => lines.push(format!("spring = {reading}{with}{sure}")),
                None => lines.push(format!("spring{sure}")),
            },
            ("again" | "reads", None) => {
                if said.readings.is_empty() {
                    return None;
                }
            }
            ("", None) => {}
            _ => return None,
        }
        let sizes: Vec<f64> = said.readings.iter().map(|reading| reading.num.mm(system)).collect();
        let is_near = |size: &f64| (size - sizes[0]).abs() <= 0.02 * sizes[0];
        if !sizes.iter().all(is_near) {
            return None;
        }
        lines.extend(readings.map(|reading| format!("read {reading}{with}{sure}")));
        Some(())
    }
}

/// Spoken entries of the open log.
#[allow(clippy::too_many_lines, reason = "one rule after another, each short")]
pub(crate) fn log(view: &View, system: System, setting: Setting) -> Option<Said> {
    let is_open = setting.log_is_open;
    view.only(&["entry", "instrument", "place"], |token| matches!(token, Token::Number(_)))?;
    let entries: Vec<&str> = view.words("entry").collect();
    if entries.is_empty() {
        return None;
    }
    let mut lines: Vec<String> = Vec::new();
    let mut said = Spoken::default();
    let mut first: Option<(Num, Num)> = None;
    let (mut next, mut mistake, mut undo) = (false, false, false);
    let mut closing: Option<&str> = None;
    for (at, item) in view.items.iter().enumerate() {
        match &item.token {
            Token::Word { kind: "entry", name } => match *name {
                "cut" => {
                    if said.is_whole() {
                        said.flush((setting, system), &mut lines, &mut first)?;
                    }
                    if !matches!(said.mode, "") && said.mode != "cut" {
                        return None;
                    }
                    if let Some(num) = said.loose.pop() {
                        said.dialled = Some(num);
                    }
                    said.mode = "cut";
                }
                "reads" => {
                    said.with = in_verb(&view.said(at)).or(said.with);
                    match said.mode {
                        "cut" if said.dialled.is_none() => return None,
                        "" if !said.loose.is_empty() => {
                            // `20 thou, mics 1.2285`
                            said.dialled = said.loose.pop();
                            said.mode = "cut";
                        }
                        "" => said.mode = "reads",
                        _ => {}
                    }
                }
                "spring" | "again" => {
                    if said.is_whole() {
                        said.flush((setting, system), &mut lines, &mut first)?;
                    }
                    // `ran it again, same number`
                    let repeats = said.mode == "spring" && !said.is_whole();
                    if !said.mode.is_empty() && !repeats {
                        return None;
                    }
                    // `10 thou again, 1.2391`: as much was dialled again.
                    let next = view.items[at + 1..].iter().find_map(|item| match &item.token {
                        Token::Number(num) => Some(num),
                        _ => None,
                    });
                    if let ("again", "", [loose], Some(next)) =
                        (*name, said.mode, &said.loose[..], next)
                        && next.mm(system) > 4.0 * dialled_mm(loose, system)
                    {
                        said.dialled = said.loose.pop();
                        said.mode = "cut";
                    }
                    if said.mode.is_empty() {
                        said.mode = name;
                    }
                }
                "in" => said.is_off |= view.said(at) == "off",
                "no reading" => {}
                side @ ("each side" | "diameter") => {
                    let is_each = side == "each side";
                    if said.each_side.is_some_and(|before| before != is_each) {
                        return None;
                    }
                    said.each_side = Some(is_each);
                }
                "sure" => said.is_sure = true,
                "what next" => next = true,
                "undo" => undo = true,
                "mistake" => mistake = true,
                "done" => closing = Some("done"),
                "scrap" => closing = Some("scrap"),
                _ => return None,
            },
            Token::Number(num) => match said.mode {
                // `10 thou 1.2397`: dialled and read.
                "" if said.loose.len() == 1
                    && is_open
                    && num.mm(system) > 4.0 * dialled_mm(&said.loose[0], system) =>
                {
                    said.dialled = said.loose.pop();
                    said.mode = "cut";
                    said.readings.push(Reading { num: num.clone(), place: said.place.take() });
                }
                "" => said.loose.push(num.clone()),
                "cut" if said.dialled.is_none() => said.dialled = Some(num.clone()),
                _ => said.readings.push(Reading { num: num.clone(), place: said.place.take() }),
            },
            Token::Word { kind: "place", name } => said.name_place(name)?,
            Token::Word { kind: "instrument", name } => {
                let is_same = said.with.is_none_or(|before| before == *name);
                said.with = Some(is_same.then_some(*name)?);
            }
            _ => {}
        }
    }
    if let Some(both) = said.which_side(setting, system) {
        return lines
            .is_empty()
            .then(|| Said::ask("off the diameter or off each side is not said", both));
    }
    said.flush((setting, system), &mut lines, &mut first)?;
    if !is_open && lines.iter().any(|line| line.starts_with("read")) && first.is_none() {
        return None;
    }
    // `was that wrong?` takes nothing back.
    if mistake && !undo && log_words::asks(&view.text) {
        return None;
    }
    if undo || (mistake && lines.is_empty()) {
        if !lines.is_empty() || closing.is_some() {
            return None;
        }
        lines.push("undo".into());
    }
    if mistake && !undo && lines.first().is_some_and(|line| line != "undo") {
        return None;
    }
    // `is it done?`
    let asks = || log_words::asks(&view.text);
    if closing == Some("done") && lines.is_empty() && asks() {
        (closing, next) = (None, true);
    }
    if let Some(closing) = closing {
        lines.push(closing.into());
    }
    if next && closing.is_none() {
        lines.push("log".into());
    }
    if lines.is_empty() {
        return None;
    }
    if is_open {
        return Some(Said::Plain(lines));
    }
    // No job is open: which work is it? A plan for each that can be.
    let (dial, reading) = first?;
    let (unit, step) = match system {
        System::Inches => ("in", 25.4),
        System::Millimetres => ("mm", 1.0),
    };
    let (size, cut) = (reading.mm(system) / step, dialled_mm(&dial, system) / step);
    let places = if system == System::Inches { 4 } else { 3 };
    let outside = size + cut;
    let inside = size - cut;
    let room = 2.0 * cut;
    Some(Said::ask(
        "no job is open, so inside or outside is not known",
        vec![
            format!(
                "turn shaft {:.places$}{unit}..{:.places$}{unit} from {outside:.places$}{unit}",
                size - room,
                size - room + 0.001_f64.max(cut / 30.0)
            ),
            format!(
                "bore hole {:.places$}{unit}..{:.places$}{unit} from {inside:.places$}{unit}",
                size + room,
                size + room + 0.001_f64.max(cut / 30.0)
            ),
        ],
    ))
}
