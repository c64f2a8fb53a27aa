//! What a material is called, in any order, and what a slip of it leads to.

use fits_core::standards::materials::{Family, Material};

#[test]
fn alloy_and_family_stand_in_either_order() {
    for (text, name) in [
        ("660 bronze", "bearing bronze C93200"),
        ("bronze 660", "bearing bronze C93200"),
        ("6061 aluminum", "aluminium 6061-T6"),
        ("aluminum 6061 bar", "aluminium 6061-T6"),
        ("304 stainless", "stainless 304"),
        ("304 stainless steel", "stainless 304"),
        ("stainless", "stainless 304"),
        ("1018 CRS", "steel 1018 cold drawn"),
        ("CRS 1018", "steel 1018 cold drawn"),
        ("4140 steel", "steel 4140"),
        ("AISI 4140", "steel 4140"),
        ("cast iron gray", "grey cast iron"),
        ("brass", "brass"),
        ("360 brass", "free-cutting brass"),
        ("oil impregnated bronze", "sintered bronze"),
        ("powder metal bronze", "sintered bronze"),
        ("aluminum tube", "aluminium 6063-T5"),
        ("aluminium pipe", "aluminium 6063-T5"),
        ("stainless pipe", "stainless 304L"),
        ("stainless steel tubing", "stainless 304L"),
        ("copper pipe", "copper"),
        ("A2", "tool steel"),
        ("A2 tool steel", "tool steel"),
        ("pla", "printed PLA"),
        ("PETG", "printed PETG"),
        ("abs", "printed ABS"),
    ] {
        let found = Material::find(text).unwrap_or_else(|e| panic!("{text}: {e}"));
        assert_eq!(found.name(), name, "{text}");
    }
    // An alloy of one family is none of another.
    for text in ["660 steel", "304 bronze", "6061 brass", "4140 aluminium", "steel bar stock x"] {
        assert!(Material::find(text).is_err(), "{text}");
    }
}

/// Makers' marks are understood and never shown.
#[test]
fn a_mark_means_the_generic_and_is_shown_nowhere() {
    let marks = [
        ("delrin", "acetal"),
        ("teflon", "PTFE"),
        ("oilite", "sintered bronze"),
        ("lexan", "polycarbonate"),
        ("plexiglas", "acrylic"),
        ("tufnol", "phenolic cotton laminate"),
        ("nylatron", "cast nylon"),
        ("stressproof", "steel 1144 stress relieved"),
    ];
    for (mark, name) in marks {
        assert_eq!(Material::find(mark).unwrap().name(), name);
        for material in Material::all() {
            let shown = material.aliases().iter().copied().chain([material.name()]);
            assert!(shown.into_iter().all(|it| !it.to_lowercase().contains(mark)), "{mark}");
        }
        // A slip of one leads to none.
        let slip = format!("{}{}x", &mark[..2], &mark[3..]);
        let error = Material::find(&slip).unwrap_err();
        assert!(!error.advice().contains(mark), "{slip}: {}", error.advice());
    }
}

/// A name with one letter wrong, missing or doubled leads to its own material
/// or family, and to none that bears more under another family's name.
#[test]
fn a_slip_leads_to_no_other_family() {
    let said = |text: &str| {
        [
            ("bronze", Family::Bronze),
            ("brass", Family::Brass),
            ("aluminium", Family::Aluminium),
            ("iron", Family::CastIron),
            ("titanium", Family::Titanium),
        ]
        .into_iter()
        .find(|(word, _)| text.split(' ').any(|it| it == *word))
        .map(|(_, family)| family)
    };
    let mut led = 0;
    for material in Material::all() {
        for name in material.aliases() {
            for at in (name.len() % 5..name.len()).step_by(5) {
                for slip in [
                    format!("{}{}", &name[..at], &name[at + 1..]),
                    format!("{}q{}", &name[..at], &name[at + 1..]),
                ] {
                    let Err(error) = Material::find(&slip) else { continue };
                    let advice = error.advice();
                    assert!(!advice.trim().is_empty() && !advice.ends_with("nearest"), "{slip}");
                    let Some(near) = advice.strip_prefix("nearest: ") else { continue };
                    let found = Material::find(near).unwrap();
                    led += 1;
                    if let Some(family) = said(&slip) {
                        assert_eq!(found.family(), family, "{slip} led to {near}");
                    }
                    // A figure is never changed.
                    let figures =
                        |text: &str| text.chars().filter(char::is_ascii_digit).collect::<String>();
                    assert_eq!(figures(&slip), figures(near), "{slip} led to {near}");
                }
            }
        }
    }
    assert!(led > 40, "{led}");
    for text in ["661 bronze", "4150", "A6", "pva", "6066 aluminium", "pb", "zinc", "wood", "tin"] {
        let error = Material::find(text).unwrap_err();
        assert!(!error.advice().starts_with("nearest"), "{text}: {}", error.advice());
    }
}
