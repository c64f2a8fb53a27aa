//! A unit that stands apart from the figures: `40 k6 shaft metric`, `M12 thread depth in
//! thou`.

use super::{
    Said, Setting, Slip, distinct,
    line::{Line, TURNS},
    read_with_slips,
    token::System,
    unsure::replaced,
};

/// What says a unit by itself anywhere in a line.
const ANYWHERE: &[(&str, System)] = &[
    ("metric", System::Millimetres),
    ("imperial", System::Inches),
    ("inches", System::Inches),
    ("mm", System::Millimetres),
    ("millimetres", System::Millimetres),
    ("millimeters", System::Millimetres),
    ("thou", System::Inches),
    ("tenths", System::Inches),
];

/// Reads a line without the one unit that stands apart in it: bare figures are in that
/// unit, or the answer is wanted in it. Where the two differ it is asked.
pub(super) fn unit_apart(text: &str, setting: Setting) -> Option<(Said, Vec<Slip>)> {
    let mut words = Vec::new();
    let mut from = 0;
    for word in text.split(' ') {
        words.push((from, word.trim_end_matches([',', '.', '?', '!'])));
        from += word.len() + 1;
    }
    let unit = |word: &str| {
        let lower = word.to_lowercase();
        ANYWHERE.iter().find(|(said, _)| *said == lower).map(|(_, system)| *system)
    };
    let mut units = (0..words.len()).filter_map(|at| Some((at, unit(words[at].1)?)));
    let (at, system) = units.next()?;
    if units.next().is_some() {
        return None;
    }
    // `7 tenths in microns`: two units are said of each other.
    let others = ["micron", "microns", "um", "inch", "in", "mil", "mils", "foot", "feet", "cm"];
    let is_other = |word: &str| others.contains(&&*word.to_lowercase());
    let before = at.checked_sub(1).map_or("", |at| words[at].1).to_lowercase();
    let is_wanted = before == "in";
    let lead = if is_wanted { at - 1 } else { at };
    let led_by = lead.checked_sub(1).map_or("", |at| words[at].1).to_lowercase();
    // `20 mm`, `a few thou`, `per inch`: it is a figure's own, or turns it.
    let counts = ["a", "few", "some", "per", "of", "many", "half", "couple", "or", "to", "work"];
    let is_figure = |word: &str| {
        word.starts_with(|c: char| c.is_ascii_digit() || matches!(c, '.' | '#' | '-' | '+'))
    };
    // `mm 20` may be the figure's own; `metric 20` is said of all.
    let leads = |word: &str| !["metric", "imperial"].contains(&&*word.to_lowercase());
    let goes_on = words.get(at + 1).is_some_and(|(_, next)| {
        let turns = ["per", "a", "each", "under", "over", "off", "or", "is", "to"];
        leads(words[at].1) && is_figure(next) && !is_wanted
            || turns.contains(&&*next.to_lowercase())
    });
    // Thousandths alone are no system of units.
    let is_small = ["thou", "tenths"].contains(&&*words[at].1.to_lowercase());
    let has_others =
        words.iter().enumerate().any(|(it, (_, word))| it != lead && it != at && is_other(word));
    if has_others || is_small && !is_wanted {
        return None;
    }
    if counts.contains(&&*led_by)
        || TURNS.contains(&&*led_by)
        || goes_on
        || !is_wanted && is_figure(&led_by)
    {
        return None;
    }
    let end = words[at].0 + words[at].1.len();
    let start = words[lead].0;
    let rest = replaced(text, [(start..end, String::new())]);
    let rest = rest.split_whitespace().collect::<Vec<_>>().join(" ");
    let of = |units| read_with_slips(&rest, Setting { units, ..setting });
    let in_unit = of(Some(system))?;
    // A dial `in mm` says how it is marked as well.
    if matches!(&in_unit.0, Said::Plain(lines) if lines.iter().any(|line| line.starts_with("dial ")))
    {
        return None;
    }
    // It says nothing of bare figures that others have put in the other unit.
    let other = match system {
        System::Inches => System::Millimetres,
        System::Millimetres => System::Inches,
    };
    let settles = || of(Some(other)).is_none_or(|(said, _)| said != in_unit.0);
    let has_bare = || Line::new(&rest).gist().0.bare().any(|num| !num.is_fraction);
    if !is_wanted && has_bare() && !settles() {
        return None;
    }
    let as_set = if is_wanted { of(setting.units)?.0 } else { in_unit.0.clone() };
    if as_set == in_unit.0 {
        return Some(in_unit);
    }
    let (said, slips) = in_unit;
    let [said, as_set] = [said, as_set].map(Said::queries);
    let choices = distinct([as_set, said].concat());
    Some((Said::ask("what the figures are in, or the answer?", choices), slips))
}
