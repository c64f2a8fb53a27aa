//! The words that name a system, after the size or before it.

use super::{Form, Nominal, Series, Typed, pipe, reader::Reader};
use crate::error::Error;

/// Words that name a system, and the series some of them say.
const SYSTEMS: [(&str, Form, Option<Series>); 24] = [
    ("UNC", Form::Unified, Some(Series::Coarse)),
    ("UNF", Form::Unified, Some(Series::Fine)),
    ("UNEF", Form::Unified, Some(Series::ExtraFine)),
    ("UN", Form::Unified, Some(Series::Constant)),
    ("UNS", Form::Unified, Some(Series::Special)),
    ("UNRC", Form::UnifiedRounded, Some(Series::Coarse)),
    ("UNRF", Form::UnifiedRounded, Some(Series::Fine)),
    ("UNREF", Form::UnifiedRounded, Some(Series::ExtraFine)),
    ("UNR", Form::UnifiedRounded, Some(Series::Constant)),
    ("UNRS", Form::UnifiedRounded, Some(Series::Special)),
    ("NC", Form::Unified, Some(Series::Coarse)),
    ("NF", Form::Unified, Some(Series::Fine)),
    ("NEF", Form::Unified, Some(Series::ExtraFine)),
    ("Acme", Form::Acme, None),
    ("BSW", Form::Whitworth, Some(Series::Coarse)),
    ("BSF", Form::Whitworth, Some(Series::Fine)),
    ("Whitworth", Form::Whitworth, None),
    ("Whit", Form::Whitworth, None),
    ("BSP", Form::PipeParallel, None),
    ("BSPP", Form::PipeParallel, None),
    ("BA", Form::Ba, None),
    ("NPT", Form::Npt, None),
    ("Rc", Form::PipeRc, None),
    ("Rp", Form::PipeRp, None),
];

/// The system named here, after spaces or a dash.
pub(super) fn system(reader: &mut Reader) -> Option<(Form, Option<Typed<Series>>)> {
    let before = reader.at;
    if !reader.take("-") {
        reader.spaces();
    }
    let start = reader.at;
    let word = reader.word();
    let named = SYSTEMS.iter().find(|(name, ..)| name.eq_ignore_ascii_case(word));
    if let Some((_, form, series)) = named {
        reader.at += word.len();
        let at = (start, reader.at);
        return Some((*form, series.map(|value| Typed { value, at })));
    }
    if word.eq_ignore_ascii_case("stub") {
        reader.at += word.len();
        reader.spaces();
        if reader.word().eq_ignore_ascii_case("acme") {
            reader.at += 4;
            return Some((Form::StubAcme, None));
        }
    }
    reader.at = before;
    None
}

/// A system's word before its size: `UNF 3/8`, `NPT 1/2`, `BA2`, `stub acme
/// 1/2-10`. What was read and where is left to what follows the word.
pub(super) fn leading(reader: &mut Reader) -> Option<(Form, Option<Typed<Series>>)> {
    let count = reader.rest().bytes().take_while(u8::is_ascii_alphabetic).count();
    let word = reader.rest().get(..count).unwrap_or_default();
    let is_stub = word.eq_ignore_ascii_case("stub");
    let named = SYSTEMS.iter().find(|(name, ..)| name.eq_ignore_ascii_case(word));
    let (form, series) = match named {
        Some((_, form, series)) => (*form, *series),
        None if is_stub => (Form::StubAcme, None),
        None => return None,
    };
    let at = (reader.at, reader.at + count);
    reader.at += count;
    if is_stub {
        reader.spaces();
        if !reader.take("acme") {
            return None;
        }
    }
    reader.spaces();
    let is_size =
        reader.peek().is_some_and(|byte| byte.is_ascii_digit() || matches!(byte, b'.' | b'#'));
    is_size.then_some((form, series.map(|value| Typed { value, at })))
}

/// Pipe threads of other names: `BSPT` and the dry-seal `NPTF`.
pub(super) fn relative(reader: &mut Reader, size: Nominal) -> Option<Error> {
    let before = reader.at;
    if !reader.take("-") {
        reader.spaces();
    }
    let (start, word) = (reader.at, reader.word());
    // Only a size that there is can be offered.
    let size = |form| match pipe::named(form, size) {
        Ok(_) => size,
        Err(_) => Nominal::Fraction { whole: 0, numerator: 1, denominator: 2 },
    };
    let (why, advice) = if word.eq_ignore_ascii_case("bspt") {
        let size = size(Form::PipeR);
        (
            "BSPT is written R outside and Rc inside (ISO 7-1)",
            format!("ask as `R{size}`, `Rc{size}`, or the parallel nut `Rp{size}`"),
        )
    } else if word.eq_ignore_ascii_case("nptf") {
        let size = size(Form::Npt);
        (
            "the dry-seal thread NPTF (ASME B1.20.3) is not held here",
            format!("the thread that seals with tape or paste is asked as `{size} NPT`"),
        )
    } else {
        reader.at = before;
        return None;
    };
    Some(Error::not_a_thread(why, advice).at(start, start + word.len()))
}
