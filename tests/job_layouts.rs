//! Notes laid out by marks: parts by number with features by letter, and lines that
//! begin with a letter for open or done. Each rule on a small note of its own.

use fits_checks::notes::{feature, mate, mm, size};
use fits_core::job::whole::{Job, NominalSize};
use fits_repl::note;

/// A press for cider, by numbers and letters, as one writes them.
fn press([one, two, three]: [&str; 3], [a, b]: [&str; 2]) -> String {
    format!(
        "cider press, all inches\n\n\
         {one} PRESS SCREW  steel\n  {a} journal 7/8, runs in 2b\n  {b} tail end 5/8, light press in 3\n\
         {two} TOP NUT  gunmetal\n  {a} od 1-1/2, press in 3b\n  {b} bore 7/8\n\
         {three} YOKE  cast iron, bore 5/8\n  {a} width 4\n  {b} socket 1-1/2\n\n\
         4-11  1a .8742   2b .8761\n"
    )
}

/// The readings of a feature, and the place of the last in its line.
#[track_caller]
fn read(job: &Job, name: &str) -> (Vec<String>, (usize, usize)) {
    let one = &job.features[feature(job, name)];
    let last = one.readings.last().expect("a reading");
    let sizes = one.readings.iter().map(|one| format!("{:.4}", one.size.millimetres() / 25.4));
    (sizes.collect(), (last.at.start, last.at.end))
}

#[test]
fn a_number_and_a_letter_name_a_feature_wherever_they_stand() {
    let numbers = [
        ["1", "2", "3"],
        ["1.", "2.", "3."],
        ["1)", "2)", "3)"],
        ["#1", "#2", "#3"],
        ["Item 1", "Item 2", "Item 3"],
    ];
    for numbers in numbers {
        for letters in [["a)", "b)"], ["a.", "b."], ["(a)", "(b)"], ["a -", "b -"], ["A)", "B)"]] {
            let text = press(numbers, letters);
            let job = note::read(&text);
            let names: Vec<&str> = job.parts.iter().map(|part| part.name.as_str()).collect();
            assert_eq!(names, ["PRESS SCREW", "TOP NUT", "YOKE"], "{text}");
            for (name, said) in [
                ("PRESS SCREW journal", "7/8in"),
                ("PRESS SCREW tail end", "5/8in"),
                ("TOP NUT bore", "7/8in"),
                ("YOKE bore", "5/8in"),
                ("YOKE width", "4in"),
                ("YOKE socket", "1-1/2in"),
            ] {
                assert_eq!(size(&job, name), Some(mm(said)), "{name} of {text}");
            }
            assert_eq!(
                job.features.iter().filter(|one| !one.implied).count(),
                7,
                "no size of 2 or 3 in: {text}{:#?}",
                job.features
            );
            assert!(job.questions.is_empty(), "{text}{:?}", job.questions);
        }
    }
}

/// Forwards too: `2b` is not read yet where the screw names it.
#[test]
fn a_reference_is_the_mate_that_it_names() {
    let text = press(["1", "2", "3"], ["a)", "b)"]);
    for (name, with, fit) in [
        ("PRESS SCREW journal", "TOP NUT bore", "runs"),
        ("PRESS SCREW tail end", "YOKE bore", "light press"),
        ("TOP NUT od", "YOKE socket", "press"),
    ] {
        assert_eq!(mate(&text, name), (with.to_owned(), fit.to_owned()), "{name}");
    }
}

#[test]
fn what_is_read_stands_at_its_place_in_the_line_as_written() {
    let text = press(["1", "2", "3"], ["a)", "b)"]);
    let job = note::read(&text);
    let line = text.lines().last().expect("a line");
    for (name, said) in [("PRESS SCREW journal", ".8742"), ("TOP NUT bore", ".8761")] {
        let (sizes, (start, end)) = read(&job, name);
        assert_eq!(sizes, [format!("0{said}")]);
        assert_eq!(&line[start..end], said);
    }
    for one in &job.features {
        let line = text.lines().nth(one.line - 1).expect("its line");
        assert!(line.get(one.at.clone()).is_some(), "{} at {:?} of {line}", one.name, one.at);
    }
    let text = text.replace("4-11  1a .8742", "4-11  turn 1a down to .8735?");
    let job = note::read(&text);
    let asked: Vec<&str> = job.questions.iter().map(|one| one.text.as_str()).collect();
    assert_eq!(asked, ["4-11  turn 1a down to .8735?   2b .8761"]);
}

/// The tidy form keeps the lines as written, and says the names in full.
#[test]
fn the_tidy_form_of_an_outline_is_read_back_to_the_same_job() {
    let text = press(["1", "2", "3"], ["a)", "b)"]);
    let job = note::read(&text);
    let tidy = note::tidy(&job, &text);
    let written: Vec<&str> = tidy.lines().filter_map(|line| line.strip_prefix("| ")).collect();
    assert!(written.contains(&"  a) journal 7/8, runs in 2b"), "{tidy}");
    let again = note::read(&tidy);
    let sizes = |job: &Job| -> Vec<_> {
        let mut all: Vec<_> = (0..job.features.len())
            .map(|at| (job.full_name(at), job.features[at].nominal.clone()))
            .collect();
        all.sort_by(|one, other| one.0.cmp(&other.0));
        all
    };
    assert_eq!(sizes(&job), sizes(&again));
    assert_eq!(job.mates.len(), again.mates.len());
}

/// The number alone speaks of the part, at the beginning of a later line and behind a
/// word for a fit.
#[test]
fn a_number_alone_is_a_part_where_no_size_can_be_meant() {
    let press = press(["1", "2", "3"], ["a)", "b)"]);
    let job = note::read(&format!("{press}4-12  3 make the width 4-1/4\n"));
    assert_eq!(size(&job, "YOKE width"), Some(mm("4-1/4in")));
    let job = note::read(&format!("{press}4-12  3: bore .6241\n"));
    assert_eq!(read(&job, "YOKE bore").0, ["0.6241"]);
    // How many, how far down, how wide: sizes and counts stay what they are.
    for said in ["key slot 3 long", "collar turned down to 2", "4 holes on 3", "groove cut in 2"] {
        let text = press.replace("tail end 5/8, light press in 3", said);
        let job = note::read(&text);
        let on_line = job.mates.iter().filter(|mate| mate.line == 5).count();
        assert_eq!(on_line, 0, "{said}: {:#?}", job.mates);
        let named = |at: usize| job.features[at].name.contains("YOKE");
        assert!(!(0..job.features.len()).any(named), "{said}: {:#?}", job.features);
    }
}

/// A thread's class is no feature, and an order no part.
#[test]
fn what_only_looks_like_an_outline_is_read_as_it_was() {
    let text =
        press(["1", "2", "3"], ["a)", "b)"]).replace("tail end 5/8", "tail end 5/8-18 UNF 2A");
    let job = note::read(&text);
    let thread = job.features.iter().find_map(|one| match &one.nominal {
        Some(NominalSize::Thread(name)) => Some(name.as_str()),
        _ => None,
    });
    assert!(thread.is_some_and(|name| name.starts_with("5/8-18")), "{:#?}", job.features);
    for text in [
        "all inches\n1) Turn the screw\n  a) journal 7/8\n2) Bore the nut\n  a) bore 7/8\n3) Paint\n",
        "all inches\n2 collars  steel\n  a) bore 7/8\n4 pins 1/4\n  b) length 2\n",
        "all inches\n1 screw  steel\n  journal 7/8\n2 nuts  steel\n  bore 7/8\n3 pins 1/4\n",
    ] {
        let job = note::read(text);
        let names: Vec<&str> = job.parts.iter().map(|part| part.name.as_str()).collect();
        assert!(!names.contains(&"Turn the screw") && !names.contains(&"Paint"), "{names:?}");
        assert!(job.mates.is_empty(), "{:#?}", job.mates);
    }
}

/// Two features of one name are two, and so is a ream beside a bore without a size.
#[test]
fn the_letter_tells_features_of_one_name_apart() {
    let text = press(["1", "2", "3"], ["a)", "b)"])
        .replace("a) width 4", "a) socket for 2a")
        .replace("press in 3b", "press in 3a")
        .replace("b) socket 1-1/2", "b) 9/16 ream for 1b")
        + "4-12  3b .5631\n";
    let text = text.replace("a) socket for 2a", "a) bore for 2a").replace(", bore 5/8", "");
    let job = note::read(&text);
    assert_eq!(size(&job, "YOKE bore a"), None, "{:#?}", job.features);
    assert_eq!(size(&job, "YOKE bore b"), Some(mm("9/16in")));
    assert_eq!(read(&job, "YOKE bore b").0, ["0.5631"]);
    assert_eq!(mate(&text, "TOP NUT od").0, "YOKE bore a");
}

/// Whatever the parts are called, and wherever the letters stand.
#[test]
fn a_name_may_be_a_word_for_a_feature_and_letters_may_stand_at_the_margin() {
    let text = "cider mill, mm\n\n1. TOP END  steel plate, 15 thk\na. bore 32 H7 for 3a\n\
                2. Feed roller, beech\na. bore 22 H7, keyed on 4a\n\
                3. Flanged bush x2 bronze\na. outside 32 p6, press into 1a\nb. inside 26 H7\n\
                4. Roller shaft (EN1A) 230 long\na. roller seat 22 h6\nb. journal 26 f7, runs in 3b\n\
                10 May  4b 25.974, 3b 26.012 after pressing into 1\n11 May  bore of 2 came out 22.015\n\
                12 May  3a/1a 32.028/32.006\n";
    let job = note::read(text);
    let names: Vec<&str> = job.parts.iter().map(|part| part.name.as_str()).collect();
    assert_eq!(names, ["TOP END", "Feed roller", "Flanged bush", "Roller shaft"]);
    for (name, with) in [
        ("Feed roller bore", "Roller shaft roller seat"),
        ("Flanged bush outside", "TOP END bore"),
        ("Roller shaft journal", "Flanged bush hole"),
    ] {
        assert_eq!(mate(text, name).0, with, "{name}");
    }
    assert_eq!(job.mates.len(), 3, "{:#?}", job.mates);
    let sizes = |name: &str| -> Vec<_> {
        job.features[feature(&job, name)].readings.iter().map(|one| one.size).collect()
    };
    assert_eq!(sizes("Roller shaft journal"), [mm("25.974mm")]);
    assert_eq!(sizes("Flanged bush hole"), [mm("26.012mm")]);
    assert_eq!(sizes("Feed roller bore"), [mm("22.015mm")]);
    // Which of two figures is whose is asked.
    assert!(sizes("TOP END bore").is_empty() && sizes("Flanged bush outside").is_empty());
    assert_eq!(job.questions.iter().filter(|one| one.line == 15).count(), 2);
}

const TICKS: &str = "CIDER PRESS\n\n\
    screw end\n\
    x guide post 7/8 in yoke, press\n\
    o press screw od 1-1/8 in top nut, slides\n\
    o thrust cup bored 1-1/4\n\n\
    basket\n\
    x tie rod 3/8 long 9\n\
    o basket hoop bore 11-1/2\n\
    o handwheel flange bore 1-1/4 on sleeve od\n";

#[test]
fn a_letter_at_the_margin_ticks_what_is_done() {
    let job = note::read(TICKS);
    let names: Vec<&str> = job.parts.iter().map(|part| part.name.as_str()).collect();
    for part in
        ["guide post", "press screw", "thrust cup", "tie rod", "basket hoop", "handwheel flange"]
    {
        assert!(names.contains(&part), "{part}: {names:?}");
    }
    assert!(!names.iter().any(|name| name.starts_with("x ") || *name == "basket"), "{names:?}");
    for (name, done) in
        [("guide post od", true), ("press screw od", false), ("thrust cup bore", false)]
    {
        assert_eq!(job.features[feature(&job, name)].done, done, "{name}");
    }
    assert_eq!(size(&job, "press screw od"), Some(mm("1-1/8in")));
    let headings: Vec<&str> = job.remarks.iter().map(|one| one.text.as_str()).collect();
    assert!(headings.contains(&"screw end") && headings.contains(&"basket"), "{headings:?}");
    assert_eq!(job.title.as_deref(), Some("CIDER PRESS"));
}

/// One such line, or a size behind the letter, is no tick.
#[test]
fn an_x_is_a_tick_only_among_others() {
    for text in ["all inches\nx shaft 1-1/4\n", "all inches\nplate 3\nx 3/4 x 6\no ring 7/8 bore\n"]
    {
        let job = note::read(text);
        assert!(!job.features.iter().any(|one| one.done), "{text}{:#?}", job.features);
    }
}

/// A table with a joint a row: the part and size of its hole, those of its shaft, the
/// fit, what was measured of either.
#[test]
fn a_table_may_have_a_joint_a_row() {
    let note = "cider press, mm\n\n\
        | joint | hole in | dia hole | shaft | dia shaft | fit | measured h/s |\n\
        |---|---|---|---|---|---|---|\n\
        | 1 | frame | 35 H7 | bush | 35 p6 | press | 35.012 / 35.031 |\n\
        | 2 | bush | 25 F7 | crank shaft | 25 h6 | running | - / 24.992 |\n\
        | 3 | gear | 22 H7 | crank shaft | 22 k6 | press | |\n\
        | 4 | frame | 8 H7 | dowel 8 m6 x 30 | 8 | press | |\n\n\
        4 May: joint 2 bush after pressing 25.021, shaft 24.99\n";
    let job = note::read(note);
    for (name, is) in [
        ("frame bore", "35mm"),
        ("bush od", "35mm"),
        ("bush bore", "25mm"),
        ("gear hole", "22mm"),
        ("dowel od", "8mm"),
        ("dowel length", "30mm"),
    ] {
        assert_eq!(size(&job, name), Some(mm(is)), "{name}");
    }
    let class = |name: &str| job.features[feature(&job, name)].class.clone();
    assert_eq!(class("frame bore").as_deref(), Some("H7"));
    assert_eq!(class("dowel od").as_deref(), Some("m6"), "it stands beside its name");
    // The shaft has two seats of its own, each with the part that goes on it.
    let seats: Vec<_> = (job.features.iter())
        .filter(|one| job.parts[one.part].name == "crank shaft")
        .map(|one| (one.size(), one.readings.len()))
        .collect();
    assert_eq!(seats, [(Some(mm("25mm")), 2), (Some(mm("22mm")), 0)]);
    let mates = |name: &str| {
        let own = feature(&job, name);
        let others = job.mates_of(own).map(|(_, mate)| {
            let other = &job.features[mate.other(own)];
            (job.parts[other.part].name.as_str(), mate.fit.words.as_str())
        });
        others.collect::<Vec<_>>()
    };
    assert_eq!(mates("frame bore"), [("bush", "press")]);
    assert_eq!(mates("bush bore"), [("crank shaft", "running")]);
    // `joint 2` numbers the row, and is no size of 2 mm.
    let last = |name: &str| job.features[feature(&job, name)].readings.last().map(|one| one.size);
    assert_eq!(last("bush bore"), Some(mm("25.021mm")));
    assert_eq!(last("bush od"), Some(mm("35.031mm")));
}

/// One size for both sides, and both parts in one cell.
#[test]
fn a_table_of_joints_may_have_one_size_for_both() {
    let note = "cider press, inches\n\n\
        joint\tsize\tfit\tremark\n\
        pin in lever\t3/8\tpress\tgreen stuff\n\
        lever on crank\t5/8\tslide\t\n\
        roller on pin\t3/8\trunning\t\n";
    let job = note::read(note);
    for (name, is) in [
        ("pin od", "0.375in"),
        ("lever hole", "0.375in"),
        ("crank lever seat", "0.625in"),
        ("lever crank hole", "0.625in"),
        ("roller hole", "0.375in"),
    ] {
        assert_eq!(size(&job, name), Some(mm(is)), "{name}");
    }
    assert_eq!(job.mates.len(), 3, "{:?}", job.mates);
    assert!(job.remarks.iter().any(|one| one.text == "green stuff"), "{:?}", job.remarks);
}
