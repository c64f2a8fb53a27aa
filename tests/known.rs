//! A figure that comes from memory says so wherever it is used.

use fits_core::{
    Length,
    source::Known,
    standards::{b41, iso286::Class, materials::Material},
};

fn inch(class: &str, size: &str) -> Known {
    let class: b41::Class = class.parse().unwrap();
    class.fit(size.parse().unwrap()).unwrap().known()
}

// data/b41: FN2 from 3.94 to 4.73 in, LC7 and LC8 above 9.85 in, LC10 and LC11 from
// 1.19 in are recalled; data/iso286: cd from 10 to 50 mm.
#[test]
fn recalled_cells_mark_their_fits() {
    for (class, size) in
        [("FN2", "4in"), ("LC7", "10in"), ("LC8", "10in"), ("LC10", "2in"), ("LC11", "2in")]
    {
        assert_eq!(inch(class, size), Known::Memory, "{class} at {size}");
    }
    assert_eq!(inch("FN2", "1in"), Known::Seen);
    let twenty = Length::from_millimetres(20).unwrap();
    for (class, known) in [("cd1", Known::Memory), ("g6", Known::Seen), ("H7", Known::Formula)] {
        let class: Class = class.parse().unwrap();
        assert_eq!(class.limits(twenty).unwrap().known(), known, "{class}");
        // No better than any of the reasons.
        let worst = class.reasons(twenty).unwrap().iter().fold(known, |w, it| w.worst(it.known));
        assert_eq!(worst, known, "{class}");
    }
}

// What a joint is worked out from, of the metals and plastics on most benches, was
// read in a text that data/materials.csv names; of free-machining 303 its own
// standard states no yield.
#[test]
fn figures_of_everyday_materials_are_confirmed() {
    for name in [
        "steel",
        "mild steel",
        "1018",
        "12L14",
        "1045",
        "4140",
        "6061",
        "brass",
        "brass 360",
        "bronze 660",
        "cast iron",
        "304",
        "316",
        "acetal",
        "nylon",
    ] {
        assert!(!Material::find(name).unwrap().known().is_unconfirmed(), "{name}");
    }
    for name in ["303", "PEEK", "EN8"] {
        assert!(Material::find(name).unwrap().known().is_unconfirmed(), "{name}");
    }
}
