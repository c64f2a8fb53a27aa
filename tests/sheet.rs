//! The sheet of a job: valid HTML, readable by a screen reader, its figures those
//! of single queries, and nothing that was written taken for markup.

use fits_checks::project_file;
use fits_core::{
    Length, Limits,
    job::whole::{Job, NominalSize, NotedReading, State},
    size::{Decimals, Rounding},
};
use fits_repl::{answer::Answer, note, session::Session, sheet};
use scraper::{ElementRef, Html, Selector};

fn size(text: &str) -> Length {
    text.parse().unwrap_or_else(|_| panic!("{text}"))
}

/// Parts of a hand-cranked cider press.
fn press() -> Job {
    let note = project_file("tests/browser/press.note");
    note::read(&std::fs::read_to_string(note).expect("the note"))
}

fn page(job: &Job) -> String {
    sheet::page(job, &mut Session::new())
}

fn all<'a>(document: &'a Html, selector: &str) -> Vec<ElementRef<'a>> {
    document.select(&Selector::parse(selector).expect("a selector")).collect()
}

fn words(element: ElementRef<'_>) -> String {
    element.text().collect::<String>().replace('\u{a0}', " ")
}

/// Valid as the HTML standard parses it, one heading a page, tables with captions
/// and heads that say what they head, no script, nothing from elsewhere.
fn is_sound(html: &str) -> Html {
    let document = Html::parse_document(html);
    assert!(document.errors.is_empty(), "{:?}", document.errors);
    assert_eq!(all(&document, "html[lang]").len(), 1);
    assert_eq!(
        all(&document, "title")
            .iter()
            .filter(|it| it
                .parent()
                .is_some_and(|up| up.value().as_element().is_some_and(|up| up.name() == "head")))
            .count(),
        1
    );
    for banned in ["script", "link", "iframe", "img", "object", "[onclick]", "[href]", "[src]"] {
        assert!(all(&document, banned).is_empty(), "{banned}");
    }
    assert!(!html.contains("@import") && !html.contains("url("));
    assert!(!all(&document, "h1").is_empty());
    for table in all(&document, "table") {
        let caption = Selector::parse("caption").expect("a selector");
        assert!(table.select(&caption).all(|caption| !words(caption).trim().is_empty()));
        assert_eq!(table.select(&caption).count(), 1, "{}", words(table));
    }
    assert_eq!(all(&document, "th").len(), all(&document, "th[scope]").len());
    for picture in all(&document, "svg") {
        assert!(picture.attr("role") == Some("img") && picture.attr("aria-label").is_some());
    }
    let of = all(&document, ".page").len();
    for (at, page) in all(&document, ".page").into_iter().enumerate() {
        let wanted = format!("page {} of {of}", at + 1);
        assert!(words(page).contains(&wanted), "no `{wanted}`");
    }
    document
}

#[test]
fn the_sheet_is_valid_and_has_a_page_for_each_part_and_one_for_the_assembly() {
    let job = press();
    let html = page(&job);
    let document = is_sound(&html);
    let heads: Vec<String> = all(&document, "h1").into_iter().map(words).collect();
    // A part of which nothing is cut to a fit shares a page with its like.
    let is_cut = |part: usize| {
        job.features_of(part).any(|(at, feature)| {
            job.limits(at).is_some() || matches!(feature.nominal, Some(NominalSize::Thread(_)))
        })
    };
    let cut: Vec<usize> = (0..job.parts.len()).filter(|part| is_cut(*part)).collect();
    let shared = (cut.len() < job.parts.len()).then_some("Parts with nothing to cut to a fit");
    let wanted: Vec<&str> = cut
        .iter()
        .map(|part| job.parts[*part].name.as_str())
        .chain(shared)
        .chain(["Assembly"])
        .collect();
    assert_eq!(heads.len(), wanted.len(), "{heads:?}");
    for (head, wanted) in heads.iter().zip(wanted) {
        assert!(head.starts_with(wanted), "{head} is not {wanted}");
    }
    let said = words(document.root_element());
    for line in [
        "the gear is scarred",
        "what drill for M10x1.25?",
        "0.0050 in (0.127 mm) to 0.0100 in (0.254 mm)",
        "Play along the axis",
    ] {
        assert!(said.contains(line), "no {line}");
    }
    // Boxes to write in, on every part that is cut.
    assert!(all(&document, "td.box").len() > 20);
    for head in ["dialled", "read"] {
        assert!(all(&document, "th").into_iter().any(|th| words(th) == head), "no {head}");
    }
    for line in all(&document, ".bench") {
        assert_eq!(
            words(line).split_whitespace().collect::<Vec<_>>(),
            ["temperature", "instrument", "date"]
        );
    }
    assert_eq!(all(&document, ".bench").len(), heads.len());
}

#[test]
fn figures_are_those_of_the_single_queries() {
    let document = is_sound(&page(&press()));
    let said = words(document.root_element());
    let said = said.split_whitespace().collect::<Vec<_>>().join(" ");
    let mut session = Session::new();
    let mut fit = |query: &str| match session.evaluate(query) {
        Ok(Answer::Fit(fit)) => fit,
        other => panic!("{query}: {other:?}"),
    };
    // ASME B4.1 table 2, RC4 at 3/4 in: shaft 0.7484 to 0.7492.
    let running = fit("0.750in running, hub bronze bushing");
    assert_eq!(running.shaft.lower_mm.0, size("0.7484in"));
    for wanted in ["Cut to 0.7488 in (19.020 mm)", "0.7484 to 0.7492 in (19.010 to 19.029 mm); RC4"]
    {
        assert!(said.contains(wanted), "no `{wanted}`: {said}");
    }
    // The bushing is in hand, so the housing's bore is made to suit it.
    let suited = fit("1in press, hub bronze bushing, shaft = 1.0025in");
    // On the metal side, as a micrometer reads it.
    let aim = (suited.hole.aim_mm.0.millimetres() / 25.4 * 1e4 + 1e-6).floor() / 1e4;
    assert!(said.contains(&format!("Cut to {aim:.4} in")), "no {aim}: {said}");
    // Both parts of the gear's joint were read: 0.8762 less 0.8748.
    assert!(said.contains("As measured: 1.4 thou 0.036 mm interference"), "{said}");
    // ISO 286-2: 20 g6 is -7 to -20 um.
    assert!(said.contains("Cut to 19.987 mm (0.7869 in)"), "{said}");
    // A recalled figure is marked.
    assert!(said.contains("! unconfirmed: "), "{said}");
    // ISO 965: M10x1.25.
    assert!(said.contains("M10x1.25"), "{said}");
}

#[test]
fn what_was_read_has_no_passes_and_what_is_bought_is_not_cut() {
    let mut job = press();
    let document = is_sound(&page(&job));
    let captions = |document: &Html| -> Vec<String> {
        all(document, "caption")
            .into_iter()
            .map(words)
            .filter(|it| it.starts_with("Passes"))
            .collect()
    };
    let before = captions(&document);
    assert!(before.iter().any(|it| it.contains("journal")), "{before:?}");
    assert!(before.iter().any(|it| it.contains("bore")), "{before:?}");
    for not_cut in ["outside", "gear seat"] {
        assert!(!before.iter().any(|it| it.contains(not_cut)), "{not_cut}: {before:?}");
    }
    // A good reading ends the passes.
    let journal = job.features.iter().position(|it| it.name == "journal");
    job.features[journal.expect("a journal")].readings.push(NotedReading {
        line: 1,
        at: 0..1,
        size: size("0.7488in"),
        state: State::Free,
        date: None,
    });
    let after = captions(&is_sound(&page(&job)));
    assert_eq!(after.len(), before.len() - 1, "{after:?}");
}

#[test]
fn names_are_text_whatever_they_hold() {
    let hazards = [
        "<b>&\"'</b><script>alert(1)</script>",
        "crank\u{0}\u{7}\u{1b}[31m\u{202e}\u{2028}\u{fffe}",
        "</style></section><!-- -->]]>&lt;",
        &"w".repeat(400),
    ];
    for hazard in hazards {
        let mut job = press();
        job.title = Some(hazard.to_owned());
        for part in &mut job.parts {
            part.name = hazard.to_owned();
            part.material = Some(hazard.to_owned());
        }
        for feature in &mut job.features {
            hazard.clone_into(&mut feature.name);
        }
        for mate in &mut job.mates {
            hazard.clone_into(&mut mate.fit.words);
        }
        for remark in &mut job.remarks {
            hazard.clone_into(&mut remark.text);
        }
        let html = page(&job);
        let document = is_sound(&html);
        assert!(all(&document, "b").is_empty());
        let is_obeyed =
            |c: char| c.is_control() && c != '\n' || ('\u{202a}'..='\u{202e}').contains(&c);
        assert!(!html.contains(is_obeyed), "{hazard:?}");
        let heads: Vec<String> = all(&document, "h1").into_iter().map(words).collect();
        if !hazard.contains(is_obeyed) {
            assert!(heads.iter().any(|head| head.starts_with(hazard)), "{heads:?}");
        }
    }
}

#[test]
fn a_job_of_nothing_and_one_without_sizes_have_a_sheet() {
    is_sound(&page(&Job::default()));
    let mut job = press();
    for feature in &mut job.features {
        feature.nominal = None;
    }
    is_sound(&page(&job));
    // Sizes that no shop has.
    for text in ["0.0000001mm", "90000000mm"] {
        let mut job = press();
        for feature in &mut job.features {
            feature.nominal = Some(NominalSize::Size(size(text)));
        }
        is_sound(&page(&job));
    }
    // A mate that points at nothing.
    let mut job = press();
    for mate in &mut job.mates {
        mate.hole = 10_000;
    }
    is_sound(&page(&job));
}

/// WCAG 2.1, 1.4.3: 4.5 to 1 for words, by its own formula of relative luminance.
#[test]
fn colours_stand_out_and_type_is_large() {
    let html = page(&press());
    let css =
        html.split("<style>").nth(1).and_then(|rest| rest.split("</style>").next()).expect("style");
    let luminance = |colour: &str| -> f64 {
        let channel = |at: usize| {
            let value =
                f64::from(u8::from_str_radix(&colour[at..at + 2], 16).expect("a colour")) / 255.0;
            if value <= 0.03928 { value / 12.92 } else { ((value + 0.055) / 1.055).powf(2.4) }
        };
        0.2126 * channel(1) + 0.7152 * channel(3) + 0.0722 * channel(5)
    };
    let mut papers = 0;
    for scheme in css.split("@media screen and (prefers-color-scheme:dark)") {
        let inks = scheme
            .match_indices('#')
            .filter(|(at, _)| scheme[at + 1..].chars().take(6).all(|c| c.is_ascii_hexdigit()));
        let colours: Vec<&str> = inks.map(|(at, _)| &scheme[at..at + 7]).collect();
        let paper = scheme.find(".drawing .paper{fill:").map(|at| &scheme[at + 21..at + 28]);
        let metal = scheme.find(".drawing .metal{fill:").map(|at| &scheme[at + 21..at + 28]);
        let (Some(paper), Some(metal)) = (paper, metal) else { continue };
        papers += 1;
        for colour in colours.into_iter().filter(|colour| ![paper, metal].contains(colour)) {
            let (one, other) = (luminance(colour), luminance(paper));
            let contrast = (one.max(other) + 0.05) / (one.min(other) + 0.05);
            // Colours of the other scheme's paper stand here as the page's own.
            assert!(!(1.3..4.5).contains(&contrast), "{colour} on {paper}: {contrast}");
        }
    }
    assert_eq!(papers, 2);
    for (at, _) in css.match_indices("font-size:") {
        let pixels: f64 =
            css[at + 10..].split("px").next().and_then(|it| it.parse().ok()).expect("px");
        // 96 pixels of CSS and 72 points are an inch.
        assert!(pixels * 72.0 / 96.0 >= 14.0, "{pixels} px");
    }
}

/// The sheet has the limits that the job has, whatever they follow from.
#[test]
fn limits_are_those_of_the_job() {
    let mut job = press();
    let journal = job.features.iter().position(|it| it.name == "journal").expect("a journal");
    let mate = job.mates_of(journal).next().map(|(at, _)| at).expect("a mate");
    job.mates[mate].fit.clearance =
        Some(Limits::new(size("0.0015in"), size("0.002in")).expect("limits"));
    let bore = job.mates[mate].hole;
    job.features[bore].readings.push(NotedReading {
        line: 1,
        at: 0..1,
        size: size("0.7508in"),
        state: State::InPlace,
        date: None,
    });
    // The bore is read in its place: the journal is 1.5 to 2 thou under 0.7508.
    let said = words(is_sound(&page(&job)).root_element());
    assert!(said.contains("0.7488 to 0.7493 in (19.020 to "), "{said}");
    let mut shown = 0;
    for at in 0..job.features.len() {
        let Some(Ok((limits, _))) = job.limits(at) else { continue };
        let decimals = Decimals::for_limits(job.features[at].unit, limits);
        let lower = limits.lower().shown(decimals, Rounding::Up);
        let unit = decimals.unit.symbol();
        let upper = limits.upper().shown(decimals, Rounding::Down);
        let wanted = format!("{lower} to {upper} {unit} (");
        assert!(said.contains(&wanted), "{at}: no {wanted}");
        shown += 1;
    }
    assert!(shown > 5, "{shown}");
    // Two sizes for one joint are said, and worked out only where they are
    // apart as the fit wants.
    for (shaft, told) in [
        ("0.748in", "the note has 0.7500 in for the hole and 0.7480 in"),
        ("0.745in", "the hole is 0.75 in and the shaft 0.745 in"),
    ] {
        job.features[journal].nominal = Some(NominalSize::Size(size(shaft)));
        let said = words(is_sound(&page(&job)).root_element());
        assert!(said.contains(told), "{said}");
    }
}
