//! Reading a thread's designation: shapes only, no tables.
//!
//! The first bytes decide whether a text can be a thread at all, so that a
//! text that is none costs next to nothing. Sizes and parts that look alike
//! (`20 H7`, `1-1/2in`, `M6 dowel pin`, `#7`, `RC4`) are left alone.

mod metric_text;
use self::metric_text::{is_hand, metric_name};
use super::{
    Designation, Form, Nominal, Pitch, Series, Typed,
    named::{leading, relative, system},
    reader::{Found, Reader},
    unified_series::{self, is_screw_number},
};
use crate::{
    error::Error,
    size::{Length, Unit},
};

/// The thread that the text begins with, and the bytes it takes; `None` where
/// the text begins with something else.
///
/// Read: `M10`, `M10x1.25-6g`, `M10 6H/6g`, `M10x3P1.5 LH`, `3/8-24`,
/// `1-1/8-7 UNC-2A`, `#10-32`, `10-32 UNF`, `0.375-24`, `Tr40x14P7 LH 7H/7e`,
/// `1/2-10 Acme 2G`, `1/2-10 stub acme`, `1/2 BSW`, `1/4-26 BSF`, `2 BA`,
/// `G1/2 A`, `R1/2`, `Rp1/2`, `Rc1/2`, `1/2-14 NPT`, each with `LH` and
/// `2 starts`; a system's word may come first, as in `UNF 3/8`. A bare `3/8` is none: see [`scan_expected`].
///
/// ```
/// use fits_core::standards::thread::scan;
/// let (designation, taken) = scan("#10-32 tap").expect("a thread")?;
/// assert_eq!((designation.resolve()?.to_string().as_str(), taken), ("10-32 UNF", 6));
/// assert!(scan("20 H7").is_none() && scan("3/8in").is_none() && scan("#7").is_none());
/// let error = scan("M10x").expect("meant as one").unwrap_err();
/// assert_eq!(error.to_string(), "the pitch is missing after the x");
/// assert_eq!(error.span(), Some(4..4));
/// # Ok::<(), fits_core::Error>(())
/// ```
///
/// # Errors
/// It is a thread and broken; the span is of `text`. What only tables can
/// tell is refused by [`Designation::resolve`].
pub fn scan(text: &str) -> Option<Result<(Designation, usize), Error>> {
    begin(text, false)
}

/// As [`scan`], where the caller knows that a thread stands here: a bare `3/8`
/// or `m10` is one too.
///
/// ```
/// use fits_core::standards::thread::scan_expected;
/// let (designation, _) = scan_expected("3/8").expect("a thread")?;
/// let thread = designation.resolve()?;
/// assert_eq!(thread.to_string(), "3/8-16 UNC");
/// assert!(thread.is_pitch_assumed());
/// # Ok::<(), fits_core::Error>(())
/// ```
pub fn scan_expected(text: &str) -> Option<Result<(Designation, usize), Error>> {
    begin(text, true)
}

fn begin(text: &str, expected: bool) -> Option<Result<(Designation, usize), Error>> {
    let mut bytes = text.bytes();
    let (first, second) = (bytes.next()?, bytes.next().unwrap_or(b' '));
    let mut reader = Reader { text, at: 0 };
    let found = match first {
        b'0'..=b'9' | b'.' | b'#' => return inch(&mut reader, expected).transpose(),
        b'M' | b'm' if second.is_ascii_digit() => {
            metric_name(&mut reader, "M", Form::Metric, expected)
        }
        b'T' | b't' if second.eq_ignore_ascii_case(&b'r') => {
            metric_name(&mut reader, "Tr", Form::Trapezoidal, expected)
        }
        b'G' | b'g' => pipe(&mut reader, "G", Form::PipeParallel),
        b'R' | b'r' => match second {
            b'p' | b'P' => pipe(&mut reader, "Rp", Form::PipeRp),
            b'c' | b'C' => pipe(&mut reader, "Rc", Form::PipeRc),
            b'0'..=b'9' | b' ' => pipe(&mut reader, "R", Form::PipeR),
            _ => return None,
        },
        // UNF, NPT, Acme, BSP, stub acme, Whitworth before the size.
        b'U' | b'u' | b'N' | b'n' | b'A' | b'a' | b'B' | b'b' | b'S' | b's' | b'W' | b'w' => {
            let (form, series) = leading(&mut reader)?;
            sized(&mut reader, expected, Some((form, series)))
        }
        _ => return None,
    };
    found.transpose()
}

fn blank(form: Form, nominal: Typed<Nominal>) -> Designation {
    Designation {
        form,
        nominal,
        pitch: None,
        series: None,
        starts: 1,
        left: false,
        classes: [None, None],
    }
}

/// `G1/2 A`, `G1/2A`, `R1/2`, `Rp 3/4`.
fn pipe(reader: &mut Reader, letters: &str, form: Form) -> Found {
    let is_written = reader.text.starts_with(letters);
    reader.at += letters.len();
    let before = reader.at;
    reader.spaces();
    let is_apart = reader.at > before && form == Form::PipeR;
    let Some(nominal) = nominal(reader)? else { return Ok(None) };
    // G7 and R6 are tolerance classes: pipe sizes are fractions or whole
    // inches to 6, and only a fraction or what follows tells G6 from a class.
    let is_fraction = matches!(nominal.value, Nominal::Fraction { numerator: 1.., .. });
    let is_whole = matches!(nominal.value, Nominal::Fraction { .. }) && is_written && !is_apart;
    let is_class = form == Form::PipeParallel && matches!(reader.word(), "A" | "B");
    if !is_fraction && !is_whole || !reader.is_end() && !is_class && !is_hand(reader) {
        return Ok(None);
    }
    reader.finish(blank(form, nominal))
}

/// `3/8`, `1-1/8`, `1 1/8`, `0.375`, `#10`, `10`; a whole number is left as
/// whole inches.
fn nominal(reader: &mut Reader) -> Result<Option<Typed<Nominal>>, Error> {
    let start = reader.at;
    let typed = |reader: &Reader, value| Ok(Some(Typed { value, at: (start, reader.at) }));
    if reader.take("#") {
        let number = reader.digits().and_then(|number| u8::try_from(number).ok());
        return match number {
            Some(number) => typed(reader, Nominal::Number(number)),
            None => Ok(None),
        };
    }
    let count = reader.rest().bytes().take_while(u8::is_ascii_digit).count();
    if reader.rest().as_bytes().get(count) == Some(&b'.') {
        return Ok(reader
            .decimal(Unit::Inch)?
            .map(|length| Typed { value: Nominal::Decimal(length.value), at: length.at }));
    }
    let Some(first) = reader.digits().and_then(|first| u16::try_from(first).ok()) else {
        return Ok(None);
    };
    if let Some(denominator) = denominator(reader) {
        return typed(reader, Nominal::Fraction { whole: 0, numerator: first, denominator });
    }
    // A mixed fraction, joined by a dash or a space.
    let end = reader.at;
    if reader.take("-") || reader.take(" ") {
        if let Some(numerator) = reader.digits().and_then(|second| u16::try_from(second).ok()) {
            if let Some(denominator) = denominator(reader) {
                return typed(reader, Nominal::Fraction { whole: first, numerator, denominator });
            }
        }
        reader.at = end;
    }
    typed(reader, Nominal::Fraction { whole: first, numerator: 0, denominator: 1 })
}

fn denominator(reader: &mut Reader) -> Option<u16> {
    let start = reader.at;
    let denominator = if reader.take("/") { reader.digits() } else { None };
    let denominator = denominator.and_then(|value| u16::try_from(value).ok());
    match denominator {
        Some(value) if value > 0 => Some(value),
        _ => {
            reader.at = start;
            None
        }
    }
}

/// Everything that begins with a number.
fn inch(reader: &mut Reader, expected: bool) -> Found {
    if !may_be_inch(reader.text, expected) {
        return Ok(None);
    }
    sized(reader, expected, None)
}

/// A size, its pitch and its system, if that did not stand before.
fn sized(
    reader: &mut Reader,
    expected: bool,
    mut named: Option<(Form, Option<Typed<Series>>)>,
) -> Found {
    // A broken number is for whoever reads sizes.
    let Ok(Some(mut size)) = nominal(reader) else { return Ok(None) };
    let is_marked = inch_mark(reader, expected || named.is_some());
    let mut pitch = None;
    if reader.peek() == Some(b'-') {
        let before = reader.at;
        if named.is_none() {
            named = system(reader);
        }
        if reader.at == before {
            reader.at = before + 1;
            pitch = turns(reader);
            if pitch.is_none() {
                return Ok(None);
            }
        }
    }
    if named.is_none() {
        named = system(reader);
    }
    if named.is_none() {
        if let Some(error) = relative(reader, size.value) {
            return Err(error);
        }
    }
    let is_named = named.is_some();
    let (form, series) = named.unwrap_or((Form::Unified, None));
    size.value = whole_or_number(size.value, form, pitch, is_marked);
    if !reader.is_end() || is_size_sum(size.value, pitch, is_named || expected) {
        return Ok(None);
    }
    if pitch.is_none() && !is_named && !expected {
        return Ok(None);
    }
    let mut designation = blank(form, size);
    designation.series = series;
    if let Some(turns) = pitch {
        let (over, per) = turns.value;
        let value = Pitch::per_inch(over, per).map_err(|_| {
            let text = reader.text.get(turns.at.0..turns.at.1).unwrap_or_default();
            Error::not_a_thread(
                format!("{text} turns per inch is not a thread"),
                unified_series::pitches(size.value.length().unwrap_or_default(), size.value),
            )
            .at(turns.at.0, turns.at.1)
        })?;
        designation.pitch = Some(Typed { value, at: turns.at });
    }
    reader.finish(designation)
}

/// A cheap look: after digits, points, strokes and dashes, what stands next?
fn may_be_inch(text: &str, expected: bool) -> bool {
    if expected {
        return true;
    }
    let bytes = text.as_bytes();
    let mut at = usize::from(bytes.first() == Some(&b'#'));
    let mut has_dash = false;
    while let Some(byte) = bytes.get(at) {
        match byte {
            b'0'..=b'9' | b'.' | b'/' => {}
            b'-' => has_dash = true,
            _ => break,
        }
        at += 1;
    }
    match bytes.get(at) {
        None => has_dash,
        Some(b' ') => {
            // `1 1/8-7`, or the word of a system.
            let next = bytes.iter().skip(at).find(|byte| **byte != b' ');
            has_dash || next.is_some_and(|byte| is_system_letter(*byte) || byte.is_ascii_digit())
        }
        // A word joined: `3/8-UNF`, `2BA`; or an inch mark before a dash or a
        // word.
        Some(b'"') => is_after_mark(bytes, at + 1),
        Some(b'i' | b'I') => is_after_mark(bytes, at + 2),
        Some(byte) => has_dash || is_system_letter(*byte),
    }
}

/// A pitch or a system's word after an inch mark?
fn is_after_mark(bytes: &[u8], at: usize) -> bool {
    match bytes.get(at) {
        Some(b'-') => true,
        Some(b' ') => bytes.get(at + 1).is_some_and(|byte| is_system_letter(*byte)),
        _ => false,
    }
}

/// The first letter of a system's word.
const fn is_system_letter(byte: u8) -> bool {
    matches!(byte.to_ascii_lowercase(), b'u' | b'n' | b'a' | b's' | b'b' | b'w' | b'r')
}

/// `"` or `in` before the dash of a pitch or a space and a system; at the end
/// too where a thread is expected.
fn inch_mark(reader: &mut Reader, expected: bool) -> bool {
    let before = reader.at;
    if reader.take("\"") || reader.take("in") {
        if matches!(reader.peek(), Some(b'-' | b' ')) || expected && reader.peek().is_none() {
            return true;
        }
        reader.at = before;
    }
    false
}

/// Turns per inch: `24`, `11.5`, `11-1/2`.
fn turns(reader: &mut Reader) -> Option<Typed<(i64, i64)>> {
    let start = reader.at;
    let whole = reader.digits()?;
    // `11,5`: whoever reads sizes refuses a comma inside a number.
    if reader.is_comma_inside() {
        return None;
    }
    let typed = |reader: &Reader, value| Some(Typed { value, at: (start, reader.at) });
    let end = reader.at;
    if reader.take(".") {
        let digits = reader.rest().bytes().take_while(u8::is_ascii_digit).count();
        let places = u32::try_from(digits).ok().filter(|places| (1..=4).contains(places))?;
        let scale = 10_i64.pow(places);
        let part = reader.digits()?;
        return typed(reader, (whole.checked_mul(scale)?.checked_add(part)?, scale));
    }
    if reader.take("-") {
        if let (Some(numerator), true) = (reader.digits(), reader.take("/")) {
            let denominator = reader.digits().filter(|value| (2..=8).contains(value))?;
            let turns = whole.checked_mul(denominator)?.checked_add(numerator)?;
            return typed(reader, (turns, denominator));
        }
        reader.at = end;
    }
    typed(reader, (whole, 1))
}

/// Is a whole number before this pitch a screw number? `10-32` is number 10 and
/// `1-8` one inch: it is where that leaves a core three pitches thick or more.
pub(super) fn is_screw(number: u8, pitch: Pitch) -> bool {
    let number = Nominal::Number(number).length().ok().filter(|_| is_screw_number(number));
    number.is_some_and(|major| pitch.scaled(3, 1) <= major)
}

/// A whole number as what it is a size of.
fn whole_or_number(
    nominal: Nominal,
    form: Form,
    pitch: Option<Typed<(i64, i64)>>,
    is_marked: bool,
) -> Nominal {
    let Nominal::Fraction { whole, numerator: 0, .. } = nominal else { return nominal };
    let Ok(number) = u8::try_from(whole) else { return nominal };
    let pitch = pitch.map(|pitch| Pitch::per_inch(pitch.value.0, pitch.value.1));
    let is_number = match (form, pitch) {
        _ if is_marked => false,
        (Form::Ba, _) => true,
        (Form::Unified | Form::UnifiedRounded, Some(pitch)) => {
            pitch.is_ok_and(|pitch| is_screw(number, pitch))
        }
        // `10 UNF`: beside these numbers no whole inches are listed.
        (Form::Unified | Form::UnifiedRounded, None) => {
            matches!(number, 0 | 5..=12) && is_screw_number(number)
        }
        _ => false,
    };
    if is_number { Nominal::Number(number) } else { nominal }
}

/// `20-5` and `0.75-0.02` are sums of sizes, not threads: without a word,
/// sizes end at 6 in, turns are whole or quarters, and a decimal size has 4 an
/// inch or more.
fn is_size_sum(nominal: Nominal, pitch: Option<Typed<(i64, i64)>>, is_named: bool) -> bool {
    if is_named {
        return false;
    }
    let (turns, over) = pitch.map_or((1, 1), |pitch| pitch.value);
    let is_quarters = turns * 4 % over == 0;
    let is_plain = match nominal {
        Nominal::Decimal(_) => turns >= 4 * over,
        _ => turns >= over,
    };
    let most = Length::from_tenth_nanometres(6 * Length::INCH.tenth_nanometres());
    let is_large = nominal.length().is_ok_and(|length| length > most);
    !is_quarters || !is_plain || is_large
}
