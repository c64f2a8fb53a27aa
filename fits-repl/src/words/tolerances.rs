//! Tolerances: classes by their shape, signed deviations.

use nom::{Err, bytes::complete::take_while};

use crate::{
    query::{ClassText, Spot, Tolerance},
    words::{
        clause::reserved,
        fault::{Fault, Parsed, fatal, fatal_fix},
        keywords::{space, span, word},
        sizes::{factor, size_after},
    },
};

pub(crate) fn tolerance(input: &str, total: usize) -> Parsed<'_, Option<Tolerance>> {
    if let Some(rest) = input
        .strip_prefix('\u{b1}')
        .or_else(|| input.strip_prefix("+-"))
        .or_else(|| input.strip_prefix("+/-"))
    {
        let (rest, _) = space(rest)?;
        let (rest, either) = size_after(
            rest,
            total,
            "the tolerance is missing after the sign",
            "as in `hole 20 ±0.02`",
        )?;
        return Ok((rest, Some(Tolerance::Either(either))));
    }
    if input.starts_with(['+', '-', '\u{2212}']) {
        let (rest, first) = factor(input, total)?;
        let (rest, _) = space(rest)?;
        let Some(rest) = rest.strip_prefix('/') else {
            return fatal(
                rest,
                0,
                "one deviation stands alone",
                "give both, as `hole 20 +0.02/-0.01`; for a sum put spaces about the sign, as `20 + 0.02`",
            );
        };
        let (rest, _) = space(rest)?;
        let (rest, second) = size_after(
            rest,
            total,
            "the second deviation is missing after the slash",
            "as in `hole 20 +0.02/-0.01`",
        )?;
        return Ok((rest, Some(Tolerance::Deviations(first, second))));
    }
    let Some((rest, first)) = class(input, total)? else {
        return Ok((input, None));
    };
    let (slash, _) = space(rest)?;
    let Some(after) = slash.strip_prefix('/') else {
        return Ok((rest, Some(Tolerance::Class(first))));
    };
    let (second, _) = space(after)?;
    match class(second, total)? {
        Some((rest, second)) => Ok((rest, Some(Tolerance::Pair(first, second)))),
        None => fatal_fix(
            second,
            0,
            "the shaft's class is missing after the slash",
            "give both",
            Some((0, "g6".into())),
        ),
    }
}

/// A class by its shape: one to three letters and digits. `None` where a
/// keyword or no letter stands.
pub(crate) fn class(input: &str, total: usize) -> Result<Option<(&str, ClassText)>, Err<Fault>> {
    let Ok((rest, letters)) = word(input) else {
        return Ok(None);
    };
    // `IT7` is a grade, and no class.
    if letters == "IT" {
        return Ok(None);
    }
    let (end, grade) = take_while(|c: char| c.is_ascii_alphanumeric())(rest)?;
    if grade.is_empty() {
        let two = ["cd", "ef", "fg", "js", "za", "zb", "zc"];
        let is_class = letters.len() == 1 || two.contains(&&*letters.to_ascii_lowercase());
        if !is_class || reserved().any(|known| known.eq_ignore_ascii_case(letters)) {
            return Ok(None);
        }
        let usual = if letters.starts_with(|c: char| c.is_ascii_uppercase()) { "7" } else { "6" };
        return fatal_fix(
            rest,
            0,
            format!("the tolerance grade is missing after {letters}"),
            "give the grade",
            Some((0, usual.into())),
        );
    }
    if letters.len() > 3 {
        return Ok(None);
    }
    let letters = letters.len();
    let value = input[..letters + grade.len()].to_owned();
    let typed = Spot { value, at: span(total, input, end) };
    Ok(Some((end, ClassText { typed, letters })))
}
