//! The tidy form that the program writes of a note: it reads back to the same
//! job, and nothing that a person wrote is lost or out of its order.

use std::{fs, path::PathBuf};

use fits_core::job::whole::{Job, State};
use fits_repl::note;

fn notes() -> Vec<(String, String)> {
    let folder = PathBuf::from(env!("CARGO_MANIFEST_DIR"));
    let entries = ["tests/jobs", "tests/jobs/later"].map(|name| fs::read_dir(folder.join(name)));
    let mut all: Vec<PathBuf> = entries
        .into_iter()
        .flat_map(|entries| entries.expect("the notes"))
        .map(|entry| entry.expect("an entry").path())
        .filter(|path| path.extension().is_some_and(|end| end == "txt"))
        .collect();
    all.push(folder.join("fits-repl/examples/cider_press.job"));
    all.sort();
    let read = |path: PathBuf| {
        let text = fs::read_to_string(&path).expect("text");
        (path.display().to_string(), text)
    };
    all.into_iter().map(read).collect()
}

/// All that a job says, without the lines and places it was said at.
fn said(job: &Job) -> Vec<String> {
    let name = |at: usize| format!("{} {:?}", job.full_name(at), job.features[at].side);
    let mut all: Vec<String> = Vec::new();
    all.extend(
        job.parts.iter().map(|part| {
            format!("{} {:?} {:?} {}", part.name, part.material, part.count, part.bought)
        }),
    );
    all.push(format!("{:?}", job.title));
    let mut features = Vec::new();
    for (at, one) in job.features.iter().enumerate() {
        let readings: Vec<(_, State, _)> =
            one.readings.iter().map(|read| (read.size, read.state, read.date.clone())).collect();
        let earlier: Vec<_> = one.earlier.iter().map(|(_, was)| was).collect();
        let instances: Vec<String> = one.instances.iter().map(|at| name(*at)).collect();
        features.push(format!(
            "{} {:?} {:?} {:?} {:?} {readings:?} {} {} {earlier:?} {instances:?}",
            name(at),
            one.nominal,
            one.unit,
            one.class,
            one.deviations,
            one.done,
            one.implied,
        ));
    }
    features.sort();
    all.extend(features);
    let mut mates: Vec<String> = job
        .mates
        .iter()
        .map(|mate| {
            format!("{} in {} {:?} {:?}", name(mate.shaft), name(mate.hole), mate.fit, mate.called)
        })
        .collect();
    mates.sort();
    all.extend(mates);
    let blanks = |text: &str| text.replace('\t', " ").trim().to_owned();
    let mut questions: Vec<String> = job
        .questions
        .iter()
        .map(|one| format!("{} {:?} {}", blanks(&one.text), one.answer, one.by_writer))
        .collect();
    questions.sort();
    all.extend(questions);
    all.extend(job.remarks.iter().map(|remark| {
        let part = remark.part.and_then(|part| job.parts.get(part)).map(|part| &part.name);
        format!("{} {part:?}", blanks(&remark.text))
    }));
    all
}

#[test]
fn a_tidy_note_is_read_back_to_the_same_job() {
    for (file, text) in notes() {
        let job = note::read(&text);
        let tidy = note::tidy(&job, &text);
        let written: Vec<&str> = tidy.lines().filter_map(|line| line.strip_prefix('|')).collect();
        let wrote: Vec<&str> = text.lines().map(str::trim_end).collect();
        let written: Vec<&str> =
            written.iter().map(|line| line.strip_prefix(' ').unwrap_or(line)).collect();
        assert_eq!(written, wrote, "{file}: every line, in its order");
        let again = note::read(&tidy);
        let (was, is) = (said(&job), said(&again));
        for (was, is) in was.iter().zip(&is) {
            assert_eq!(was, is, "{file}:\n{tidy}");
        }
        assert_eq!(was.len(), is.len(), "{file}:\n{tidy}");
        // The tidy form of a tidy note is that note.
        assert_eq!(note::tidy(&again, &tidy), tidy, "{file}");
    }
}

/// Sides without their limits are cut to the same figures.
#[test]
fn a_tidy_note_asks_for_the_same_cuts() {
    for (file, text) in notes() {
        let job = note::read(&text);
        let again = note::read(&note::tidy(&job, &text));
        let cuts = |job: &Job| -> Vec<String> {
            let mut all: Vec<String> = (0..job.features.len())
                .filter_map(|at| {
                    let (limits, _) = job.limits(at)?.ok()?;
                    Some(format!("{} {limits:?}", job.full_name(at)))
                })
                .collect();
            all.sort();
            all
        };
        assert_eq!(cuts(&job), cuts(&again), "{file}");
    }
}

/// Names that hold the signs of the form, and one name twice.
#[test]
fn any_name_comes_back() {
    let text = "all mm\n| part | feature | size | fit | with | actual |\n|---|---|---|---|---|---|\n| a;b: c\\d | bore ~2 | 20 | run | > pin? | 20.01 |\n| > pin? | od | 20 | | | |\nweird; line: \\ ~ > ?\n";
    let job = note::read(text);
    assert!(job.features.len() > 1, "{job:?}");
    let tidy = note::tidy(&job, text);
    assert_eq!(said(&job), said(&note::read(&tidy)), "{tidy}");
}

#[test]
fn a_reading_typed_at_the_prompt_is_read_in_a_tidy_note() {
    let text = "all inches\ncrank\n  journal .750 running in bush\nbush\n  bore .750\n";
    let tidy = note::tidy(&note::read(text), text);
    let then = note::read(&format!("{tidy}2026-01-02 crank journal = .7491\n"));
    let read: Vec<_> = then.features.iter().flat_map(|one| &one.readings).collect();
    assert_eq!(read.len(), 1);
    assert_eq!(read[0].size, "0.7491in".parse().expect("a size"));
    assert_eq!(read[0].date.as_deref(), Some("2026-01-02"));
}

#[test]
fn a_line_that_is_not_tidy_is_asked_about_and_kept() {
    let text = "# tidy job\npart crank; big\n  journal: shaft 20mm; polish\n";
    let job = note::read(text);
    assert_eq!(job.questions.len(), 2, "{:?}", job.questions);
    assert_eq!((job.remarks.len(), job.features.len()), (2, 1), "kept, and read as far as it goes");
    let place = &text.lines().nth(1).expect("a line")[job.questions[0].at.clone()];
    assert_eq!(place, "big");
}

/// Two parts of one name keep their own features, and each can be measured.
#[test]
fn two_parts_of_one_name_are_told_apart() {
    let tidy = "# tidy job\npart bush\n  bore: hole 16mm\npart bush ~2\n  bore: hole 25mm\npart axle\n  end: shaft 25mm; goes in bush ~2: bore; fit running\n> bush ~2: the long one\n12/4 bush ~2 bore = 25.01\n";
    let job = note::read(tidy);
    assert!(job.questions.is_empty(), "{:?}", job.questions);
    let names: Vec<&str> = job.parts.iter().map(|part| part.name.as_str()).collect();
    assert_eq!(names, ["bush", "bush", "axle"]);
    assert_eq!((job.mates[0].hole, job.features[1].readings.len()), (1, 1));
    assert_eq!(job.remarks[0].part, Some(1));
    let again = note::tidy(&job, tidy);
    assert!(again.contains("part bush ~2\n") && again.contains("goes in bush ~2: bore"), "{again}");
    assert_eq!(said(&note::read(&again)), said(&job));
}
