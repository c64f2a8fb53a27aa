//! Dates at the beginning of a line.

const MONTHS: &[&str] =
    &["jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec"];
const DAYS: &[&str] = &["mon", "tue", "wed", "thu", "fri", "sat", "sun"];

/// The date at a line's beginning, and where the rest begins; `dated` where
/// the note has dates elsewhere, so that `11/16` may be one.
#[allow(clippy::too_many_lines, reason = "one kind of words after another, each short")]
pub(super) fn date(line: &str, dated: bool) -> Option<(String, usize)> {
    let trimmed = line.trim_start();
    let mut at = line.len() - trimmed.len();
    let mut rest = trimmed;
    let word = |text: &str| -> String {
        text.chars().take_while(char::is_ascii_alphabetic).collect::<String>().to_lowercase()
    };
    let first = word(rest);
    let is_head = matches!(
        first.as_str(),
        "meas" | "measured" | "readings" | "reading" | "actual" | "actuals"
    );
    let is_day = first.len() >= 3
        && DAYS.iter().any(|day| first.starts_with(day))
        && (first.len() == 3 || first.ends_with("day"))
        // `Sun gear, 48 teeth`: the one that the planets go round.
        && !matches!((first.as_str(), word(rest[first.len()..].trim_start()).as_str()),
            ("sun", "gear" | "wheel" | "pinion" | "shaft"));
    if is_head || is_day {
        let skip = rest[first.len()..].len()
            - rest[first.len()..].trim_start_matches(['.', ',', ':', ' ']).len();
        at += first.len() + skip;
        rest = &line[at..];
        if !rest.starts_with(|c: char| c.is_ascii_digit())
            && (is_day || line[..at].trim_end().ends_with(':'))
        {
            return Some((line[..at].trim().to_owned(), at));
        }
    }
    let digits = |text: &str| text.bytes().take_while(u8::is_ascii_digit).count();
    let one = digits(rest);
    let finish = |length: usize| {
        let end = at + length;
        let tail = &line[end..];
        let skip = tail.len() - tail.trim_start_matches([' ', '\t', ':', ',', '.', '-']).len();
        let tail_is_word = skip > 0 || tail.is_empty();
        tail_is_word.then(|| (line[at..end].trim_end_matches('.').to_owned(), end + skip))
    };
    let month = |text: &str| {
        let word = word(text);
        (word.len() >= 3 && MONTHS.iter().any(|month| word.starts_with(month)) && word.len() != 4
            || word == "sept"
            || word == "june"
            || word == "july")
            .then_some(word.len())
    };
    if one == 0 {
        // `Oct 14`, `March 12th`.
        let length = month(rest)?;
        let after = rest[length..].trim_start_matches(['.', ' ']);
        let day = digits(after);
        if !(1..=2).contains(&day) {
            return None;
        }
        let suffix = ["st", "nd", "rd", "th"].iter().any(|end| after[day..].starts_with(end));
        return finish(rest.len() - after.len() + day + 2 * usize::from(suffix));
    }
    let value =
        |from: usize, length: usize| rest[from..from + length].parse::<u32>().unwrap_or(999);
    if one == 4
        && rest[4..].starts_with('-')
        && digits(&rest[5..]) == 2
        && rest[7..].starts_with('-')
    {
        return finish(10.min(rest.len()));
    }
    if one > 2 {
        return None;
    }
    let after = &rest[one..];
    for sign in ['/', '.', '-'] {
        let Some(next) = after.strip_prefix(sign) else { continue };
        let two = digits(next);
        if !(1..=2).contains(&two) {
            return None;
        }
        let (top, bottom) = (value(0, one), value(one + 1, two));
        if top > 31 || bottom > 31 || top == 0 || bottom == 0 {
            return None;
        }
        let more = next[two..].strip_prefix(sign);
        let year = more.map_or(0, digits);
        match sign {
            '/' => {
                let fraction = matches!(bottom, 2 | 4 | 8 | 16) && top < bottom && top % 2 == 1;
                if year == 0
                    && (fraction && !dated || next[two..].starts_with(['"', '-', 'm', 'i', 'x']))
                {
                    return None;
                }
                return finish(one + 1 + two + if year > 0 { year + 1 } else { 0 });
            }
            '.' if more.is_some() => return finish(one + 1 + two + 1 + year),
            '-' if year >= 2 => return finish(one + 1 + two + 1 + year),
            // `11-2  BORES`, but not `1-5 acme`.
            '-' if year == 0 && next[two..].starts_with([' ', ':']) => {
                let word = word(next[two..].trim_start_matches([' ', ':']));
                let form = [
                    "acme", "unc", "unf", "nc", "nf", "whit", "bsw", "tpi", "x", "in", "mm", "inch",
                ]
                .contains(&word.as_str());
                return if form || word.is_empty() { None } else { finish(one + 1 + two) };
            }
            _ => return None,
        }
    }
    let spaced = after.trim_start_matches([' ', '.']).trim_start();
    let suffix = ["st", "nd", "rd", "th"].iter().any(|end| after.starts_with(end));
    // `Mon 6th - bored`
    if suffix && is_day {
        return finish(one + 2);
    }
    // `12th. Pins 11.995`
    if suffix && after[2..].starts_with(['.', ':']) {
        return finish(one + 3);
    }
    let spaced = if suffix { after[2..].trim_start() } else { spaced };
    let length = month(spaced)?;
    finish(rest.len() - spaced.len() + length)
}

/// How long a date with its year is that stands at the beginning of a text:
/// `30-9-24`, `2026-10-04`. `12/18/20` may be the sizes of a bush.
pub(super) fn calendar(text: &str) -> Option<usize> {
    let sign = text.trim_start_matches(|c: char| c.is_ascii_digit()).chars().next()?;
    if !matches!(sign, '-' | '/' | '.') {
        return None;
    }
    let end = text
        .find(|c: char| !(c.is_ascii_digit() || c == sign))
        .map_or(text.len(), |end| text[..end].trim_end_matches(sign).len());
    let parts: Vec<(usize, u32)> = text[..end]
        .split(sign)
        .map(|part| part.parse().ok().map(|value| (part.len(), value)))
        .collect::<Option<_>>()?;
    let day = |(long, value): (usize, u32)| long < 3 && (1..=31).contains(&value);
    let is_date = match *parts.as_slice() {
        [(4, _), month, last] => sign == '-' && day(month) && day(last),
        [one, other, year] => {
            let is_year = year.0 == 4 && (1900..2100).contains(&year.1)
                || year.0 == 2 && (20..40).contains(&year.1) && (sign != '/' || one.1 > other.1);
            day(one) && day(other) && (one.1 < 13 || other.1 < 13) && is_year
        }
        _ => false,
    };
    (is_date && !text[end..].starts_with(char::is_alphanumeric)).then_some(end)
}
