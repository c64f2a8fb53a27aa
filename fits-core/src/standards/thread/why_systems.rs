//! Why the figures of the systems beyond metric and Unified are what they are.

use super::{
    Class, DiameterLimits, Form, Quality, Series, Side, Sizes, Thread, acme, ba, pipe, trapezoidal,
    whitworth,
};
use crate::{
    size::Length,
    source::{Known, Provenance, Reason},
};

/// The list that has the size, and where it is read.
pub(super) fn series(thread: &Thread) -> (String, Option<Provenance>) {
    let from = match thread.form {
        Form::Trapezoidal => trapezoidal::listed(thread),
        Form::Acme | Form::StubAcme => acme::listed(thread),
        Form::Whitworth => whitworth::listed(thread),
        Form::Ba => ba::listed(thread),
        _ => pipe::listed(thread),
    };
    let rule = match (thread.series, from) {
        (Series::Special, _) | (_, None) => "in no list: by the formulas",
        _ => "a listed size",
    };
    (rule.to_owned(), from)
}

/// Where the basic diameters are read; `None` where they follow by formula.
pub(super) fn basic(thread: &Thread) -> Option<Provenance> {
    match thread.form {
        Form::Ba => ba::listed(thread),
        Form::PipeParallel | Form::PipeR | Form::PipeRp | Form::PipeRc => pipe::basic_from(thread),
        _ => None,
    }
}

/// Allowance or deviation, tolerances and limits.
pub(super) fn reasons(
    thread: &Thread,
    sizes: &Sizes,
    engaged: Option<Length>,
    reasons: &mut Vec<Reason>,
) {
    reasons.extend(match thread.form {
        Form::Trapezoidal => trapezoidal::reasons(thread, sizes),
        Form::Acme | Form::StubAcme => acme::reasons(thread, sizes),
        Form::Whitworth => whitworth::reasons(thread, sizes, engaged),
        Form::Ba => ba::reasons(thread, sizes),
        _ => pipe::reasons(thread, sizes),
    });
    let known = known(thread);
    let rules = rules(thread, sizes);
    let spreads = [("major", sizes.major), ("pitch", sizes.pitch), ("minor", sizes.minor)];
    for ((name, spread), rule) in spreads.into_iter().zip(rules) {
        if spread == DiameterLimits::default() {
            continue;
        }
        reasons.push(Reason {
            figure: format!("{name} diameter"),
            value: thread.spread(spread).into(),
            rule: rule.to_owned().into(),
            source: thread.form.source().to_owned(),
            known,
        });
    }
}

/// How the rules of a system are known as a whole.
fn known(thread: &Thread) -> Known {
    match thread.form {
        // Rows of limits were checked against them.
        Form::Trapezoidal | Form::Acme => Known::Formula,
        Form::Ba | Form::PipeParallel => Known::Seen,
        Form::Npt => thread.taper().map_or(Known::Memory, |taper| taper.known),
        _ => Known::Memory,
    }
}

/// How the limits of the major, pitch and minor diameters follow.
fn rules(thread: &Thread, sizes: &Sizes) -> [&'static str; 3] {
    let is_close = sizes.class == Class::Word(Quality::Close);
    match (thread.form, sizes.side) {
        (Form::Trapezoidal, Side::External) => [
            "d, less the crest tolerance",
            "d - 0.5 P less the deviation, less the tolerance",
            "d - P - 2 ac, less 1.25 pitch diameter tolerances and the deviation",
        ],
        (Form::Trapezoidal, Side::Internal) => [
            "d + 2 ac or more; ac 0.15 mm below pitch 2, 0.25 below 6, 0.5 below 14, then 1",
            "d - 0.5 P, and the tolerance",
            "d - P, and the crest tolerance",
        ],
        (Form::Acme, Side::External) => [
            "D, less the crest tolerance",
            "D - 0.5 P less the allowance, less the tolerance",
            "D - P less 0.020 in (0.010 above 10 tpi), less 1.5 pitch diameter tolerances",
        ],
        (Form::Acme, Side::Internal) => [
            "D and 0.020 in (0.010 above 10 tpi), and as much again",
            "D - 0.5 P, and the tolerance",
            "D - P, and the crest tolerance",
        ],
        (Form::StubAcme, Side::External) => [
            "D, less the crest tolerance",
            "D - 0.3 P less the allowance, less the tolerance",
            "D - 0.6 P less 0.020 in (0.010 above 10 tpi), less the pitch diameter tolerance",
        ],
        (Form::StubAcme, Side::Internal) => [
            "D and 0.020 in (0.010 above 10 tpi), and the pitch diameter tolerance",
            "D - 0.3 P, and the tolerance",
            "D - 0.6 P, and the crest tolerance",
        ],
        (Form::Whitworth, Side::External) => [
            "D less the allowance, less the tolerance and 0.01 sqrt(P)",
            "D - 0.640327 P less the allowance, less the tolerance",
            if is_close {
                "D - 1.280655 P, less the tolerance and 0.013 sqrt(P)"
            } else {
                "D - 1.280655 P less the allowance, less the tolerance and 0.02 sqrt(P)"
            },
        ],
        (Form::Whitworth, Side::Internal) => [
            "D or more",
            "D - 0.640327 P, and the tolerance",
            "D - 1.280655 P, and 0.2 P + 0.004 in from 26 tpi, 0.005 from 22, else 0.007",
        ],
        (Form::Ba, Side::External) if is_close => {
            ["basic, less 0.15 P", "basic, less 0.08 P + 0.02 mm", "basic, less 0.16 P + 0.04 mm"]
        }
        (Form::Ba, Side::External) => [
            "basic less the allowance, less 0.20 P (0.25 P from 11 BA)",
            "basic less the allowance, less 0.10 P + 0.025 mm",
            "basic less the allowance, less 0.20 P + 0.05 mm",
        ],
        (Form::Ba, Side::Internal) => {
            ["basic or more", "basic, and 0.12 P + 0.03 mm", "basic, and 0.375 P"]
        }
        (Form::PipeParallel, Side::External) => [
            "basic, less twice the tolerance of class A",
            "basic, less the tolerance",
            "basic or less",
        ],
        (Form::PipeParallel, Side::Internal) => {
            ["basic or more", "basic, and the tolerance", "basic, and the tolerance tabulated"]
        }
        _ => ["at the gauge plane, either way"; 3],
    }
}
