//! Words and numbers of a note that are easily taken for another's size: each
//! rule on a note of its own, with the feature that is to come out of it.

use fits_core::{
    Length,
    job::whole::{Job, Nominal},
};
use fits_repl::note;

/// The feature of that full name.
#[track_caller]
fn feature(job: &Job, name: &str) -> usize {
    let names: Vec<String> = (0..job.features.len()).map(|at| job.full_name(at)).collect();
    let at = names.iter().position(|one| one == name);
    at.unwrap_or_else(|| panic!("no {name}: {names:?}"))
}

/// The size of a feature.
#[track_caller]
fn size(job: &Job, name: &str) -> Option<Length> {
    job.features[feature(job, name)].nominal.as_ref().and_then(Nominal::size)
}

fn mm(text: &str) -> Length {
    text.parse().expect("a size")
}

/// Each feature of a note with its size, and no other size in it.
#[track_caller]
fn sizes(text: &str, want: &[(&str, &str)]) -> Job {
    let job = note::read(text);
    for (name, said) in want {
        assert_eq!(size(&job, name), Some(mm(said)), "{name}: {:#?}", job.features);
    }
    let sized = job.features.iter().filter(|one| {
        !one.implied && one.nominal.as_ref().is_some_and(|nominal| nominal.size().is_some())
    });
    let names: Vec<&str> = sized.map(|one| one.name.as_str()).collect();
    assert_eq!(names.len(), want.len(), "{names:?}");
    job
}

/// A full stop, a comma or a bracket ends no number.
#[test]
fn a_sign_behind_a_number_is_no_part_of_it() {
    for sign in ["", ".", ",", ";", ")", " .", ". Then paint."] {
        for (said, is) in [
            ("5/8", "0.625in"),
            ("1-3/8", "1.375in"),
            ("1 3/8", "1.375in"),
            (".625", "0.625in"),
            ("1.375", "1.375in"),
            ("3/4\"", "0.75in"),
            ("2 in", "2in"),
            ("16 mm", "16mm"),
        ] {
            let text = format!("all inches\nwheels acetal\n - Width {said}{sign}\n");
            let job = note::read(&text);
            assert_eq!(size(&job, "wheels width"), Some(mm(is)), "{text}");
            assert!(job.questions.is_empty(), "{text}{:?}", job.questions);
        }
        let text = format!("all inches\narm\n - Post hole is tapped 1/4-20{sign}\n");
        let job = note::read(&text);
        let thread = job.features.iter().find_map(|one| match &one.nominal {
            Some(Nominal::Thread(name)) => Some(name.as_str()),
            _ => None,
        });
        assert_eq!(thread, Some("1/4-20"), "{text}");
    }
}

/// What a plate is cut from is no bore of it, whatever its finish.
#[test]
fn the_stock_of_a_part_is_no_size_of_it() {
    for stock in ["3/8 plate", "3/8 black plate", "3/8 bright bar", "1/4 scrap steel plate"] {
        let text = format!("all inches\nside plates   {stock}, 2 off\n  bush holes 1-1/4 bored\n");
        sizes(&text, &[("side plates bush holes", "1.25in")]);
    }
}

#[test]
fn a_count_of_teeth_is_no_size_and_no_count_of_parts() {
    for teeth in ["15T", "15t", "15 tooth", "15-tooth", "15 teeth"] {
        let text = format!("all mm\npinion {teeth} bore 28 H7\n");
        let job = sizes(&text, &[("pinion bore", "28mm")]);
        assert_eq!(job.parts[0].count, None, "{text}");
        assert!(job.questions.is_empty(), "{text}{:?}", job.questions);
    }
}
