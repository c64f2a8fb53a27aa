//! What is wrong with a note is said at its line and place, and nothing of the
//! note is lost.

use fits_core::job::whole::Job;
use fits_repl::note;

/// The question about a note that holds the words: its line and what it points at.
#[track_caller]
fn asked(text: &str, words: &str) -> (usize, String) {
    let job = note::read(text);
    nothing_is_lost(text, &job);
    let question = job
        .questions
        .iter()
        .find(|question| question.text.contains(words))
        .unwrap_or_else(|| panic!("no `{words}` in {:#?}", job.questions));
    let line = text.lines().nth(question.line - 1).expect("its line");
    // The page shows the line and a caret under the place.
    let page = note::page(&job, text, "press.job");
    assert!(page.contains(line.split('\t').next().unwrap_or_default().trim()), "{page}");
    assert!(page.contains('^'), "{page}");
    (question.line, line[question.at.clone()].to_owned())
}

#[track_caller]
fn nothing_is_lost(text: &str, job: &Job) {
    for (at, line) in text.lines().enumerate() {
        let number = at + 1;
        let heard = job.said.iter().any(|said| said.line == number)
            || job.remarks.iter().any(|remark| remark.line == number)
            || job.questions.iter().any(|question| question.line == number)
            || job.parts.iter().any(|part| part.line == number);
        assert!(line.trim().is_empty() || heard, "line {number} is lost: {line}");
    }
}

#[test]
fn a_name_used_twice_with_two_sizes_is_asked_about() {
    let text = "all inches\nhousing\n  bore 1.000\nhousing\n  bore 1.575\n";
    assert_eq!(asked(text, "is this a second one?"), (5, "1.575".into()));
}

#[test]
fn a_part_that_goes_into_itself_is_asked_about() {
    let text = "all inches\ncrank 1144\n  journal .750 running in crank\n";
    assert_eq!(asked(text, "cannot go into itself"), (3, "in crank".into()));
}

#[test]
fn mates_that_follow_each_other_in_a_circle_are_asked_about() {
    let text = "all inches\nnut bronze, make to match screw\nscrew steel, make to match nut\n";
    assert_eq!(asked(text, "the nut thread is to match the screw thread").0, 2);
    assert_eq!(asked(text, "the screw thread is to match the nut thread").0, 3);
}

#[test]
fn a_reading_of_what_does_not_exist_is_asked_about() {
    let text = "all inches\ngear cast iron\n  bore .875\n10/4 sprocket bore = .7498\n";
    assert_eq!(asked(text, "nothing before says that there is a"), (4, ".7498".into()));
    let text = "all inches\ngear cast iron\n  bore .875\n10/4 flange came out .999\n";
    assert_eq!(asked(text, "what was measured here?"), (4, ".999".into()));
}

#[test]
fn a_bare_number_beside_both_units_is_asked_about() {
    let text = "crank 1144\n  journal 20 mm, stub 1 in, seat 12 press in gear\n";
    assert_eq!(asked(text, "inches and millimetres"), (2, "12".into()));
    // A line for the whole note settles it.
    let settled = note::read(&format!("all mm\n{text}"));
    assert!(!settled.questions.iter().any(|question| question.text.contains("inches and")));
}

#[test]
fn a_row_like_one_that_is_not_there_is_asked_about() {
    let text = "part\tfeature\tsize\tfit\tmates\nBush 1\tas Bush 9\t\t\t\n";
    assert_eq!(asked(text, "no part before this row"), (2, "as Bush 9".into()));
}

/// 5 thou between a hole and its pin is no running fit of either size: neither
/// is cut by the other's. ASME B4.1, RC4 at 3/8 in: 0.5 to 2 thou.
#[test]
fn unlike_sizes_are_told_and_not_cut_as_one_joint() {
    let text = "all inches\nroller maple\n  hole .380 running on pin\npin 3/8 drill rod\n";
    let job = note::read(text);
    assert!(job.pair(&job.mates[0]).expect("a joint").is_err());
    let page = note::page(&job, text, "press.job");
    assert!(page.contains("the hole is 0.38 in and the shaft 0.375 in: 0.005 in apart"), "{page}");
    assert!(!page.contains("CUT"), "{page}");
    // A thou apart is what the fit makes: the limits stand, and it is told.
    let text = "all inches\nroller maple\n  hole .376 running on pin\npin 3/8 drill rod\n";
    let job = note::read(text);
    let pair = job.pair(&job.mates[0]).expect("a joint").expect("limits");
    assert_eq!(pair.apart, Some("0.001in".parse().expect("a size")));
    assert!(
        note::page(&job, text, "press.job").contains("their sizes differ by 0.0010 in clearance")
    );
}

#[test]
fn a_seat_with_its_length_takes_no_other() {
    let text = "all inches\nspindle 1144\n  gear seat 7/8 x 1-1/4 long, press in gear\ngear cast iron\n  bore 7/8\n";
    let job = note::read(text);
    let names: Vec<String> = (0..job.features.len()).map(|at| job.full_name(at)).collect();
    assert_eq!(names, ["spindle gear seat", "spindle gear seat length", "gear bore"]);
    assert_eq!(job.mates.len(), 1);
}

/// Rules that are not of one note: a column goes by what stands in it, a short
/// form by the note's own list, work to a size is no reading.
#[test]
fn general_rules_hold_alone() {
    let said = |text: &str, name: &str| {
        let job = note::read(text);
        let at = (0..job.features.len()).find(|at| job.full_name(*at) == name);
        let at = at.unwrap_or_else(|| panic!("no {name}: {:#?}", job.features));
        (job.clone(), at)
    };
    let sized = |text: &str, name: &str, mm: f64| {
        let (job, at) = said(text, name);
        let size =
            job.features[at].nominal.as_ref().and_then(fits_core::job::whole::NominalSize::size);
        assert!(size.is_some_and(|size| (size.millimetres() - mm).abs() < 1e-6), "{size:?}");
        (job, at)
    };
    // The third column's name is no word for a fit.
    let table = "all mm\n part    surface  manner  size  goes in\n axle    journal  press   20    wheel\n wheel   bore     press   20    axle\n";
    let (job, at) = sized(table, "axle journal", 20.0);
    let (_, mate) = job.mates_of(at).next().expect("a mate");
    assert_eq!((mate.fit.words.as_str(), mate.other(at)), ("press", 1));
    // Bullets within bullets, and a list of short forms.
    let outline = "all mm\nPF press  SL slide\n- block\n   - bore 16, PF ring pin\n- ring pin 16\n   - SL in lever\n- lever\n   - hole 16\n";
    let (job, at) = sized(outline, "block bore", 16.0);
    let (_, mate) = job.mates_of(at).next().expect("a mate");
    assert_eq!(job.full_name(mate.other(at)), "ring pin od");
    // What is to come is no reading, what is dated is.
    let (job, at) =
        sized("all inches\nbush\n  bore .750\n  ream to .7515\n", "bush bore", 0.7515 * 25.4);
    assert!(job.features[at].readings.is_empty() && job.features[at].earlier.len() == 1);
    // A pair of sizes near a size that is there may be either.
    let job = note::read("all inches\narm\n  hole 3/8\nbush\n  od 1/2\narm hole .3752/.3751\n");
    assert!(job.questions.iter().any(|one| one.text.contains("limits")), "{:?}", job.questions);
    let (job, at) = sized("all inches\nbush 1/2 bore 5/8 o.d.\n", "bush bore", 12.7);
    assert_eq!(job.features[at].line, 2);
    sized("all inches\nbush 1/2 bore 5/8 o.d.\n", "bush od", 15.875);
}

/// A message names the note, the line, and has a caret under the place.
#[test]
fn every_message_has_file_line_and_caret() {
    let text =
        "all mm\ncrank\n  journal 20, running in bushing\nframe\n  bore 26 x\n10/4 what 31.275\n";
    let job = note::read(text);
    let page = note::page(&job, text, "press.job");
    let told: Vec<&str> = page.lines().filter(|line| line.contains("press.job:")).collect();
    assert!(told.len() > 1, "{page}");
    assert_eq!(
        page.lines().filter(|line| line.trim_start().starts_with('^')).count(),
        told.len(),
        "{page}"
    );
    // A part that is named only as a mate is made, and said so.
    assert!(page.contains("press.job:3: this part is named only as a mate"), "{page}");
}

#[test]
fn nothing_of_a_note_that_a_terminal_would_obey_is_left_in_json() {
    let text = "housing\n  bore 1.000 H7\n  \u{1b}[Jkeep \u{202e}dry\u{7f}\n";
    let lines = note::json_lines(&note::read(text));
    assert!(!lines.contains(|c: char| c.is_control() && c != '\n' || c == '\u{202e}'), "{lines:?}");
    let remark = lines.lines().find(|line| line.contains("remark")).expect("the remark");
    let remark: serde_json::Value = serde_json::from_str(remark).expect("JSON");
    assert_eq!(remark["remark"], "\u{1b}[Jkeep \u{202e}dry\u{7f}");
}
