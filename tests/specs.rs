//! What a person writes for a pair, read by the library: against the classes
//! and words themselves, and against the answers of the prompt.

use fits_checks::ask;
use fits_core::{
    Size,
    shop::{FitClasses, FitDesignation, Spec, words::Word},
    standards::{b41, iso286::Feature},
};
use fits_repl::session::Session;
use serde_json::Value;

#[track_caller]
fn refused(text: &str) -> (String, String, Option<std::ops::Range<usize>>) {
    let error = text.parse::<FitDesignation>().expect_err(text);
    (error.to_string(), error.advice(), error.span())
}

/// The prompt and the library agree on every word and on every inch class, in
/// inches and in millimetres.
#[test]
fn words_and_classes_come_to_what_the_prompt_says() {
    let specs: Vec<String> = Word::all()
        .map(|word| word.name().to_owned())
        .chain(b41::Class::all().map(|class| class.to_string()))
        .chain(["H7/g6", "H8/f7", "F8/h6", "JS7/h6"].map(String::from))
        .collect();
    let mut compared = 0;
    for size in ["25.4mm", "1in", "3/8in", "60mm"] {
        for spec in &specs {
            let query = format!("{size} {spec}");
            let answer = ask(&mut Session::new(), &query);
            let Value::Object(clearance) = &answer["clearance"] else { continue };
            let fit = query.parse::<FitDesignation>().expect(&query).fit().expect(&query);
            let said = [&clearance["min_mm"], &clearance["max_mm"]].map(Value::as_f64);
            let found = [fit.clearance().lower(), fit.clearance().upper()];
            assert_eq!(said, found.map(|length| Some(length.millimetres())), "{query}");
            compared += 1;
        }
    }
    assert!(compared > 150, "{compared} compared");
}

#[test]
fn what_is_written_is_read_back() {
    for text in
        ["20 mm H7/g6", "1 in press", "0.375 in RC4", "25.4 mm free running", "15 thou H7/h6"]
    {
        let read: FitDesignation = text.parse().expect(text);
        assert_eq!(read.to_string(), text);
        assert_eq!(read.to_string().parse(), Ok(read));
    }
    for word in Word::all() {
        for said in word.aliases().iter().chain([&word.name()]) {
            assert_eq!(said.parse(), Ok(Spec::Word(word)), "{said}");
        }
    }
    for class in b41::Class::all() {
        let classes: FitClasses = class.to_string().parse().expect("a class");
        assert_eq!(classes, FitClasses::B41(class));
    }
}

/// The unit decides where a word is meant, and nowhere else.
#[test]
fn a_word_goes_by_the_unit_of_its_size() {
    let [metric, inch]: [Size; 2] = ["25.4mm", "1in"].map(|text| text.parse().expect(text));
    assert_eq!(metric.length(), inch.length());
    for word in Word::all() {
        let spec = Spec::Word(word);
        let (one, other) = (spec.classes(metric), spec.classes(inch));
        assert!(matches!(one, Ok(FitClasses::Iso286 { .. })), "{spec}");
        assert!(matches!(other, Ok(FitClasses::B41(_))), "{spec}");
    }
    let pair: Spec = "H7/g6".parse().expect("a pair");
    assert_eq!(pair.fit(metric), pair.fit(inch));
}

#[test]
fn refusals_point_at_the_spot() {
    assert_eq!(refused("20mm H7/H6").0, "H7 and H6 are two holes");
    assert_eq!(refused("20mm g6/H7").0, "the hole comes first: H7 is the hole, g6 the shaft");
    let (why, advice, span) = refused("20mm H7");
    assert_eq!(why, "H7 is one part's class, and a pair has two");
    assert_eq!((advice.as_str(), span), ("name the shaft, as in H7/g6", Some(5..7)));
    assert_eq!(refused("20 H7/g6").0, "the size has no unit");
    let (_, advice, span) = refused("1in slidding");
    assert_eq!((advice.as_str(), span), ("nearest: sliding", Some(4..12)));
    let (why, _, span) = refused("1in RC10");
    assert_eq!(why, "there is no RC10: RC runs from RC1 to RC9");
    assert_eq!(span, Some(4..8));
    let (why, _, span) = refused("25mm 0.02..0.05mm");
    assert_eq!(why, "a fit is named by its classes or by a word");
    assert_eq!(span, Some(5..17));
    let (_, _, span) = refused("20mm H7/q6");
    assert_eq!(span.map(|span| span.start), Some(8));
    for text in ["", " ", "mm", "20mm", "20mm /", "20mm H7/", "press", "é", "20mm é/é", "1in 7"]
    {
        assert!(text.parse::<FitDesignation>().is_err(), "{text}");
    }
}

/// Interference is the clearance seen from the other side.
#[test]
fn interference_is_clearance_below_nothing() {
    let fit = "H7/k6".parse::<Spec>().and_then(|spec| spec.fit("20mm".parse()?)).expect("a fit");
    let opposite = [fit.clearance().upper(), fit.clearance().lower()]
        .map(|length| length.checked_neg().expect("small"));
    assert_eq!([fit.interference().lower(), fit.interference().upper()], opposite);
    assert_eq!(fit.interference().known(), fit.part(Feature::Hole).known().worst(fit.known()));
}
