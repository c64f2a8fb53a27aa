//! A pass log: what stands, what is doubted, what it teaches, and its lines.

use fits_core::{
    Length,
    job::{Doubt, Entry, LogState, Opening, PassLog, Seen},
    shop::adviser::{Prior, Settings, story::Story},
    standards::iso286::Feature,
};

fn size(text: &str) -> Length {
    text.parse().expect(text)
}

fn prior() -> Prior {
    Prior {
        gain: 0.97,
        gain_sd: 0.04,
        offset: Length::ZERO,
        offset_sd: size("6um"),
        scatter: size("2um"),
    }
}

fn log(feature: Feature, start: &str) -> PassLog {
    PassLog::new(Opening {
        version: 1,
        feature,
        nominal: size("20mm"),
        class: "H7".into(),
        lower: size("20mm"),
        upper: size("20.021mm"),
        start: size(start),
        step: size("0.01mm"),
        instrument: "bore gauge".into(),
        repeat: size("2um"),
        bias: size("2um"),
        material: None,
        overhang: None,
        machine: None,
    })
}

fn cut(dial: &str, read: Option<&str>) -> Entry {
    Entry::Cut { dial: size(dial), read: read.map(size), sure: false, seen: Seen::default() }
}

fn read(text: &str, sure: bool) -> Entry {
    Entry::Read { size: size(text), sure, seen: Seen::default() }
}

#[test]
fn doubtful_entries_are_asked_about() {
    let mut log = log(Feature::Hole, "19.6mm");
    log.entries.push(cut("0.2mm", Some("19.79mm")));
    let doubt = |entry: Entry| log.doubt(prior(), Settings::default(), &entry).expect("an entry");
    assert_eq!(doubt(read("19.792mm", false)), None);
    assert!(matches!(doubt(read("19.83mm", false)), Some(Doubt::NoPass { .. })));
    assert!(matches!(doubt(read("19.7mm", false)), Some(Doubt::WrongWay { .. })));
    assert!(matches!(doubt(read("0.779mm", false)), Some(Doubt::Unit { is_inch: true, .. })));
    assert!(matches!(doubt(read("503mm", false)), Some(Doubt::Unit { is_inch: false, .. })));
    assert_eq!(doubt(cut("0.1mm", Some("19.888mm"))), None);
    let told = |entry| match doubt(entry) {
        Some(Doubt::Jump { story, .. }) => story,
        other => panic!("{other:?}"),
    };
    // A point left out is said before the wrong way that the figure means.
    assert!(matches!(told(cut("0.1mm", Some("1.9888mm"))), Some(Story::Point { .. })));
    assert!(matches!(told(read("197.92mm", false)), Some(Story::Point { .. })));
    assert!(matches!(told(cut("0.1mm", Some("19.985mm"))), Some(Story::ReadsRadius { .. })));
    assert!(matches!(doubt(cut("0.1mm", Some("20.01mm"))), Some(Doubt::Jump { .. })));
    assert!(matches!(doubt(cut("0.5mm", None)), Some(Doubt::PastLimit { .. })));
    assert_eq!(doubt(cut("0.2mm", None)), None);
    assert!(matches!(doubt(Entry::Done), Some(Doubt::NotInLimits { .. })));
    assert!(log.doubt(prior(), Settings::default(), &cut("0mm", None)).is_err());
    log.entries.push(cut("0.2mm", None));
    assert_eq!(
        log.doubt(prior(), Settings::default(), &Entry::Done).expect("an entry"),
        Some(Doubt::NotRead)
    );
}

#[test]
fn a_confirmed_reading_stands_and_a_lost_line_waits_for_one() {
    let mut log = log(Feature::Hole, "19.6mm");
    log.entries.push(cut("0.2mm", Some("19.79mm")));
    log.entries.push(read("19.83mm", true));
    let known = |log: &PassLog| {
        log.adviser(prior(), Settings::default())
            .expect("entries")
            .map(|adviser| adviser.estimate().expect("in range").size)
    };
    assert_eq!(known(&log), Some(size("19.83mm")));
    log.entries.push(Entry::Lost);
    assert_eq!(known(&log), None);
    log.entries.push(read("19.9mm", false));
    assert_eq!(known(&log), Some(size("19.9mm")));
}

#[test]
fn only_passes_read_on_both_sides_teach() {
    let mut log = log(Feature::Hole, "19.6mm");
    for entry in [
        cut("0.2mm", Some("19.79mm")),
        cut("0.1mm", None),
        Entry::Spring { read: Some(size("19.885mm")), sure: false, seen: Seen::default() },
        read("19.886mm", false),
        cut("0.05mm", Some("19.934mm")),
        Entry::Done,
    ] {
        log.entries.push(entry);
    }
    let passes = log.finished_passes().expect("in range");
    let took: Vec<_> = passes.iter().map(|pass| (pass.dialled, pass.took)).collect();
    assert_eq!(took, [(size("0.2mm"), size("0.19mm")), (size("0.05mm"), size("0.048mm"))]);
}

#[test]
fn an_undo_takes_back_the_last_that_stands() {
    let one = || cut("0.2mm", Some("19.79mm"));
    let two = || cut("0.2mm", Some("19.99mm"));
    let log = |entries: &[Entry]| {
        let mut log = log(Feature::Hole, "19.6mm");
        log.entries = entries.to_vec();
        log
    };
    let standing = |entries: &[Entry]| log(entries).standing().collect::<Vec<_>>();
    assert_eq!(standing(&[one(), two(), Entry::Undo]), [one()]);
    assert_eq!(standing(&[one(), two(), Entry::Undo, Entry::Undo]), []);
    assert_eq!(standing(&[one(), Entry::Undo, two()]), [two()]);
    assert_eq!(standing(&[Entry::Undo, one()]), [one()]);
    assert_eq!(standing(&[one(), Entry::Done, Entry::Undo]), [one()]);
    assert_eq!(log(&[one(), Entry::Done]).state(), LogState::Done);
    assert_eq!(log(&[one(), Entry::Done, Entry::Undo]).state(), LogState::Open);
    // What was lost stays lost.
    assert_eq!(standing(&[Entry::Lost, Entry::Undo]), [Entry::Lost]);
}

#[test]
fn lines_are_read_back_as_written() {
    let entries = [
        cut("0.2mm", Some("19.79mm")),
        cut("0.2mm", None),
        Entry::Spring { read: None, sure: true, seen: Seen::default() },
    ];
    for entry in entries.clone().into_iter().chain([Entry::Undo, Entry::Done, Entry::Scrap]) {
        let line = serde_json::to_string(&entry).expect("it writes");
        assert_eq!(serde_json::from_str::<Entry>(&line).expect("it reads"), entry, "{line}");
    }
    assert_eq!(
        serde_json::to_string(&entries[0]).expect("it writes"),
        r#"{"entry":"cut","dial":"0.2 mm","read":"19.79 mm"}"#
    );
    assert!(serde_json::from_str::<Entry>(r#"{"entry":"cut"}"#).is_err());
    assert!(serde_json::from_str::<Entry>(r#"{"entry":"lost"}"#).is_err());
}
