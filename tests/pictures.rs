//! Pictures of answers: read by an XML parser, nothing outside of the sheet, no
//! words upon others, and what was typed shown as text.

use std::collections::HashMap;

use fits_checks::{Row, rows};
use fits_repl::{
    answer::{Answer, SettingsAnswer},
    query::Units,
    render::svg,
    session::Session,
};
use roxmltree::{Document, Node};

/// Widths of Helvetica in thousandths of its size, from the space to the tilde.
/// Adobe Core 14 font metrics, Helvetica (recalled; the browser check measures
/// the words themselves).
const HELVETICA: [u16; 95] = [
    278, 278, 355, 556, 556, 889, 667, 191, 333, 333, 389, 584, 278, 333, 278, 278, 556, 556, 556,
    556, 556, 556, 556, 556, 556, 556, 278, 278, 584, 584, 584, 556, 1015, 667, 667, 722, 722, 667,
    611, 778, 722, 278, 500, 667, 556, 833, 722, 778, 667, 778, 722, 667, 611, 722, 667, 944, 667,
    667, 611, 278, 278, 278, 469, 556, 333, 556, 556, 500, 556, 556, 278, 556, 556, 222, 222, 500,
    222, 833, 556, 556, 556, 556, 333, 500, 278, 556, 500, 722, 500, 500, 500, 334, 260, 334, 584,
];
/// The size of the type, and a bold face over a plain one.
const TYPE: f64 = 19.0;
const BOLD: f64 = 1.1;

const PICTURED: &[&str] = &[
    "20 H7/g6",
    "20 H7/s6",
    "20 H7/k6",
    "20 P7/h6",
    "3/4in RC4",
    "3/4in press",
    "20 H7",
    "shaft 0.7490in..0.7495in",
    "250 a11",
    "20 H7 = 20.013",
    "20 H7 = 19.6",
    "20 H7 = 20.0209 with bore gauge",
    "20 H7/g6 = 20.013/19.985",
    "20 H7/g6 = 20.5/19.0",
    "20 H7/g6, hole = 20.013",
    "shaft 0.7490in, slip",
    "hole 0.7503in, press",
    "bore 20 H7 from 19.6",
    "turn 3/4in h6 from 0.900in",
    "assemble 20 H7/s6, shaft steel, sleeve bronze od 26 H7/p6, hub aluminium od 50",
    "assemble 20 H7/s6, hub 7075 od 23 long 25, shaft steel id 19",
    "stack tube 12 ±0.1, washer -2x 2 ±0.05",
    "stack 20 +0.05/0 -17 ±0.05 -2x 1.4 ±0.05, play 0.1..0.3",
    "stack 20 -19.9",
];

fn pictured(session: &mut Session, query: &str) -> String {
    let answer = session.evaluate(query).unwrap_or_else(|problem| panic!("{query}: {problem:?}"));
    svg::picture(&answer, session.shown()).unwrap_or_else(|| panic!("{query}: no picture"))
}

/// A number of an attribute.
fn number(node: Node<'_, '_>, name: &str, place: &str) -> f64 {
    let text = node.attribute(name).unwrap_or_else(|| panic!("{place}: no {name}"));
    let number: f64 = text.parse().unwrap_or_else(|_| panic!("{place}: {name} is {text}"));
    assert!(number.is_finite(), "{place}: {name} is {text}");
    number
}

/// Left, right, top and bottom of a line of words.
fn area(node: Node<'_, '_>, place: &str) -> [f64; 4] {
    let words = node.text().unwrap_or_default();
    let thousandths: u32 = words
        .chars()
        .map(|c| {
            let at = u32::from(c).checked_sub(32).and_then(|at| usize::try_from(at).ok());
            // What is not in the table is as wide as a square.
            u32::from(at.and_then(|at| HELVETICA.get(at)).copied().unwrap_or(1000))
        })
        .sum();
    let is_bold = node.attribute("class").is_some_and(|class| class.contains("strong"));
    let width = f64::from(thousandths) / 1000.0 * TYPE * if is_bold { BOLD } else { 1.0 };
    let (x, y) = (number(node, "x", place), number(node, "y", place));
    let left = match node.attribute("text-anchor") {
        Some("start") => x,
        Some("middle") => x - width / 2.0,
        Some("end") => x - width,
        other => panic!("{place}: anchored at {other:?}"),
    };
    // Capitals stand 0.72 over the line, tails hang 0.21 under it.
    [left, left + width, y - 0.72 * TYPE, y + 0.21 * TYPE]
}

/// Every shape and word is inside the sheet, and no words stand upon others.
fn is_sound(picture: &str, place: &str) {
    let document = Document::parse(picture).unwrap_or_else(|error| panic!("{place}: {error}"));
    let root = document.root_element();
    assert_eq!(root.tag_name().name(), "svg", "{place}");
    assert_eq!(root.tag_name().namespace(), Some("http://www.w3.org/2000/svg"), "{place}");
    assert_eq!(root.attribute("role"), Some("img"), "{place}");
    let title =
        root.children().find(|node| node.has_tag_name(("http://www.w3.org/2000/svg", "title")));
    assert_eq!(title.and_then(|node| node.text()), root.attribute("aria-label"), "{place}");
    let (wide, tall) = (number(root, "width", place), number(root, "height", place));
    assert_eq!(root.attribute("viewBox"), Some(format!("0 0 {wide} {tall}").as_str()), "{place}");
    let inside = |x: f64, y: f64, what: &str| {
        assert!((-0.1..=wide + 0.1).contains(&x), "{place}: {what} at x = {x}");
        assert!((-0.1..=tall + 0.1).contains(&y), "{place}: {what} at y = {y}");
    };
    let mut words: Vec<([f64; 4], String)> = Vec::new();
    for node in root.descendants().filter(Node::is_element) {
        let name = node.tag_name().name();
        match name {
            "text" => {
                let at = area(node, place);
                let said = node.text().unwrap_or_default().to_owned();
                inside(at[0], at[2], &said);
                inside(at[1], at[3], &said);
                for (other, before) in &words {
                    let apart = at[0] >= other[1]
                        || other[0] >= at[1]
                        || at[2] >= other[3]
                        || other[2] >= at[3];
                    assert!(apart, "{place}: {said:?} stands upon {before:?}");
                }
                words.push((at, said));
            }
            "line" => {
                for (x, y) in [("x1", "y1"), ("x2", "y2")] {
                    inside(number(node, x, place), number(node, y, place), name);
                }
            }
            "rect" => {
                let (x, y) = match node.attribute("class") {
                    Some("paper") => (0.0, 0.0),
                    _ => (number(node, "x", place), number(node, "y", place)),
                };
                let (width, height) = (number(node, "width", place), number(node, "height", place));
                assert!(width >= 0.0 && height >= 0.0, "{place}: a rectangle inside out");
                inside(x, y, name);
                inside(x + width, y + height, name);
            }
            "polyline" | "polygon" => {
                let points = node.attribute("points").unwrap_or_default();
                for point in points.split_whitespace() {
                    let (x, y) = point.split_once(',').expect("a point");
                    inside(x.parse().expect("a number"), y.parse().expect("a number"), name);
                }
            }
            "path" => {
                let data = node.attribute("d").unwrap_or_default().replace(['M', 'L'], " ");
                let numbers: Vec<f64> = data
                    .split_whitespace()
                    .map(|number| number.parse().expect("a number"))
                    .collect();
                for point in numbers.chunks(2) {
                    inside(point[0], point[1], name);
                }
            }
            "svg" | "title" | "style" => {}
            other => panic!("{place}: an element {other}"),
        }
    }
    assert!(words.len() > 2, "{place}: hardly any words");
}

#[test]
fn pictures_are_whole_and_their_words_lie_apart() {
    for query in PICTURED {
        let mut session = Session::new();
        let answer =
            session.evaluate(query).unwrap_or_else(|problem| panic!("{query}: {problem:?}"));
        for units in [Units::Millimetres, Units::Inches] {
            let settings = SettingsAnswer { units, ..session.settings() };
            let picture = svg::picture(&answer, settings);
            let picture = picture.unwrap_or_else(|| panic!("{query}: no picture"));
            is_sound(&picture, &format!("{query} ({units:?})"));
        }
    }
}

/// What the picture shows is what the answer says in words.
#[test]
fn limits_and_readings_stand_in_the_picture() {
    let mut session = Session::new();
    let words_of = |picture: &str| -> Vec<String> {
        let document = Document::parse(picture).expect("XML");
        let texts = document.descendants().filter(|node| node.tag_name().name() == "text");
        texts.map(|node| node.text().unwrap_or_default().replace('\u{a0}', " ")).collect()
    };
    let said = words_of(&pictured(&mut session, "20 H7/g6"));
    // ISO 286-2:2010, tables 6 and 21: 20 H7 is 0 to +21 um, 20 g6 -20 to -7.
    for wanted in ["20.000 mm", "20.021 mm", "19.980 mm", "19.993 mm"] {
        assert!(said.iter().any(|words| words == wanted), "no {wanted} in {said:?}");
    }
    assert!(said.iter().any(|words| words.starts_with("at its tightest 0.007 mm")), "{said:?}");
    assert!(said.iter().any(|words| words.starts_with("at its loosest 0.041 mm")), "{said:?}");
    let said = words_of(&pictured(&mut session, "20 H7 = 19.6"));
    let far = said.iter().find(|words| words.contains("read 19.600 mm")).expect("the reading");
    assert!(far.contains("cut more") && far.contains("smaller than is drawn"), "{far}");
    let said = words_of(&pictured(&mut session, "20 K6"));
    assert!(said.iter().all(|words| !words.contains("unconfirmed")), "{said:?}");
    let recalled = words_of(&pictured(&mut session, "30 CD6"));
    assert!(recalled.iter().any(|words| words.contains("unconfirmed")), "{recalled:?}");
}

/// On the scale of the picture the zones lie as the limits do: the widths of two
/// rectangles are as the two tolerances.
#[test]
fn zones_are_to_scale() {
    let mut session = Session::new();
    let picture = pictured(&mut session, "20 H7/g6");
    let document = Document::parse(&picture).expect("XML");
    let zone = |class: &str| {
        let found = document.descendants().find(|node| {
            node.tag_name().name() == "rect" && node.attribute("class") == Some(class)
        });
        let node = found.unwrap_or_else(|| panic!("no {class}"));
        (number(node, "x", class), number(node, "width", class))
    };
    let (hole, shaft) = (zone("line hole"), zone("line shaft"));
    // 21 um and 13 um, 20 um apart at their lower limits.
    approx::assert_abs_diff_eq!(hole.1 / shaft.1, 21.0 / 13.0, epsilon = 0.005);
    approx::assert_abs_diff_eq!((hole.0 - shaft.0) / shaft.1, 20.0 / 13.0, epsilon = 0.005);
}

#[test]
fn a_log_shows_every_pass_with_its_uncertainty() {
    let mut session = Session::new();
    for line in
        ["bore 20 H7 from 19.6 with bore gauge", "cut 0.2 = 19.79", "cut 0.15 = 19.94", "cut 0.02"]
    {
        session.evaluate(line).unwrap_or_else(|problem| panic!("{line}: {problem:?}"));
    }
    let answer = session.evaluate("cut 0.03 = 20.001").expect("an entry");
    let Answer::PassLog(log) = &answer else { panic!("a log") };
    // data/instruments.csv: what a bore gauge repeats and what it may be off by.
    let is_ours = |row: &&Row| {
        row.text("instrument") == "bore gauge"
            && row.get::<f64>("over_mm") < 20.0
            && row.get::<f64>("upto_mm") >= 20.0
    };
    let gauges = rows("data/instruments.csv");
    let gauge = gauges.iter().find(is_ours).expect("a row");
    let by = 2.0 * gauge.get::<f64>("repeat_um").hypot(gauge.get("bias_um")) / 1000.0;
    approx::assert_abs_diff_eq!(log.reading_uncertainty_mm.0.millimetres(), by, epsilon = 1e-4);
    let picture = svg::picture(&answer, session.shown()).expect("a picture");
    is_sound(&picture, "log");
    for words in
        ["start", "1 cut", "2 cut", "3 cut", "4 cut", "not read", "best estimate", "20.001 mm"]
    {
        assert!(picture.contains(&format!(">{words}<")), "no {words}");
    }
    let long: Vec<String> = (0..40).map(|at| format!("read 20.00{}", at % 3)).collect();
    for line in &long {
        let _ = session.evaluate(&format!("{line} sure"));
    }
    let answer = session.evaluate("log").expect("the log");
    is_sound(&svg::picture(&answer, session.shown()).expect("a picture"), "a long log");
}

#[test]
fn words_from_elsewhere_are_text() {
    let mut session = Session::new();
    let hazard = "<b>&\"'</b><script>\u{7}\u{202e}\u{0}\u{fffe}]]>";
    let mut answer = session.evaluate("20 H7").expect("a hole");
    if let Answer::Feature(feature) = &mut answer {
        feature.class = hazard;
    }
    let picture = svg::picture(&answer, session.shown()).expect("a picture");
    let document = Document::parse(&picture).expect("XML");
    let elements: HashMap<&str, usize> =
        document.descendants().fold(HashMap::new(), |mut all, node| {
            *all.entry(node.tag_name().name()).or_default() += 1;
            all
        });
    assert!(!elements.contains_key("b") && !elements.contains_key("script"), "{elements:?}");
    let said: String = document
        .descendants()
        .filter(|node| node.tag_name().name() == "text")
        .filter_map(|node| node.text())
        .collect();
    let shown = "<b>&\"'</b><script>\\u{7}\\u{202e}\\u{0}\\u{fffe}]]>";
    assert!(said.contains(shown), "{said}");
    is_sound(&picture, "hazard");
    // A very long name is wrapped, not cut off.
    if let Answer::Feature(feature) = &mut answer {
        feature.class = ("spindle ".repeat(40) + &"x".repeat(300)).leak();
    }
    is_sound(&svg::picture(&answer, session.shown()).expect("a picture"), "a long name");
}
