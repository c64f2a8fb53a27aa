//! What a note says of a size in other words than a drawing's: each rule on a note
//! of its own, with the feature that is to come out of it.

use fits_checks::notes::{asked, feature, mate, mm, size};
use fits_core::job::whole::{NominalSize, SizeKind};
use fits_repl::note;

const HEAD: &str = "all mm\n\npart | feature | size | goes with | fit\n---|---|---|---|---\n";

#[test]
fn a_cell_that_says_how_a_part_is_bought_is_no_feature() {
    let job = note::read(&format!("{HEAD}brg | bought 6002 | 15 x 32 x 9 | |\n"));
    assert_eq!(size(&job, "brg bore"), Some(mm("15mm")));
    assert_eq!(size(&job, "brg od"), Some(mm("32mm")));
    assert!(job.parts[0].bought);
    // What the brackets say of a mate is no part of its name; a fit may stand behind it.
    let text =
        format!("{HEAD}shaft | end | 20 h6 | hub (bought), slide |\nhub | bore | 20 H7 | |\n");
    assert_eq!(mate(&text, "shaft end"), ("hub bore".to_owned(), "slide".to_owned()));
}

#[test]
fn a_word_that_names_no_side_goes_by_the_class() {
    let job = note::read(&format!("{HEAD}gearmotor | shaft | 18 h6 | |\n"));
    assert_eq!(job.features[feature(&job, "gearmotor shaft")].side, SizeKind::Shaft);
}

/// Millimetres written once hold for both sizes; a bare 250 beside inches is none.
#[test]
fn a_unit_holds_for_the_size_behind_it() {
    let job = note::read("plate\n - spigot 80mm x 6\n - bore 1-1/4\n - pin 3/8\n");
    assert_eq!(size(&job, "plate spigot length"), Some(mm("6mm")));
    let job = note::read("plate\n - boss 10mm, od 250, hole 1-1/8\"\n - bore 1-1/4\n - pin 3/8\n");
    assert_eq!(size(&job, "plate od"), Some(mm("250mm")));
}

#[test]
fn paired_cells_are_several_features() {
    let job = note::read(&format!("{HEAD}gear | bore / thickness | 30 H8 / 8 | shaft | slide\n"));
    assert_eq!(size(&job, "gear bore"), Some(mm("30mm")));
    assert_eq!(size(&job, "gear thickness"), Some(mm("8mm")));
    assert_eq!(job.features[feature(&job, "gear thickness")].side, SizeKind::Length);
}

/// The unit beside a size that is denied holds for the one that is meant.
#[test]
fn a_denied_size_lends_its_unit() {
    let job = note::read("plate\n - od 56, not 54 mm, hole 1-1/4\"\n - bore 1-1/4\n - pin 3/8\n");
    assert_eq!(size(&job, "plate od"), Some(mm("56mm")));
}

/// In a dated line work that is to be done gives a size, and what was done a reading.
#[test]
fn work_to_be_done_gives_a_size_on_any_day() {
    for (said, is) in [
        ("bush bore 27.98 - has to be reamed 28.02", "28.02mm"),
        ("bush bore turn to 28.02 then, not 28", "28.02mm"),
        ("bush bore ream again to 28.02", "28.02mm"),
        ("bush bore 28.02 then", "28.02mm"),
        ("bush bore reamed again to 28.02", "28mm"),
        ("bush bore 28.02", "28mm"),
        ("bush bore is ok, not 30", "28mm"),
    ] {
        let job = note::read(&format!("all mm\nbush\n - bore 28\n\n5/6 {said}\n"));
        assert_eq!(size(&job, "bush bore"), Some(mm(is)), "{said}");
        let read = &job.features[feature(&job, "bush bore")].readings;
        assert!(read.iter().all(|one| one.size != mm("30mm")), "{said}");
    }
    let text = "all mm\narm\n - fork slot 14\nrod\n - thickness 13.7\n\n9/6 arm fork slot came out 14.2 -> rod thickness 13.9\n";
    let job = note::read(text);
    assert_eq!(size(&job, "rod thickness"), Some(mm("13.9mm")));
    let job = note::read(&text.replace("13.9", "13.91"));
    assert_eq!(size(&job, "rod thickness"), Some(mm("13.7mm")));
    assert_eq!(job.features[feature(&job, "arm fork slot")].readings[0].size, mm("14.2mm"));
}

#[test]
fn a_day_that_names_no_part_gives_the_whole_no_size() {
    let text = "all mm\ntube\n - bore 89\n\n9/2 tube runs out 0.3 over 610\n16/2 first slab rolled, 8 mm thick, 450 wide\n";
    let job = note::read(text);
    assert_eq!(job.features.len(), 1, "{:#?}", job.features);
    assert!(asked(text).is_some());
    // `Sun gear` is no Sunday.
    let job = note::read("all inches\nSun gear: 48 teeth 16DP, bore .875, 1/4 keyway\n");
    assert_eq!(size(&job, "Sun gear bore"), Some(mm("0.875in")));
}

#[test]
fn a_number_in_words_is_a_count_or_a_size() {
    let job = note::read(
        "all mm\nplate\n - three tie bar holes, 20 H7\nrod\n - dia 20 in two brass bushes\n",
    );
    assert_eq!(size(&job, "plate tie bar holes"), Some(mm("20mm")));
    let job = note::read("all mm\nbolt\n - thread half inch Whit\ngear\n - half inch bore\n");
    assert_eq!(size(&job, "gear bore"), Some(mm("0.5in")));
    assert_eq!(
        job.features[feature(&job, "bolt thread")].nominal,
        Some(NominalSize::Thread("1/2 WHIT".into()))
    );
}

/// A key lies in a joint and is none itself; `on 2 hooks` counts them.
#[test]
fn a_key_is_no_mate_of_what_is_round() {
    let text =
        "all mm\ngear\n - bore 20 H7\nshaft\n - gear seat 20 with a 6 key, gear a good push fit\n";
    assert_eq!(mate(text, "shaft gear seat"), ("gear bore".to_owned(), "push fit".to_owned()));
    let job = note::read("all mm\nhooks\n - dia 10\ngear\n - bore 12\n5/6 gears on 2 hooks\n");
    assert!(job.features.iter().all(|one| one.size() != Some(mm("2mm"))), "{:#?}", job.features);
}

/// A verb before a feature's name is no part of it.
#[test]
fn what_was_skimmed_honed_or_lapped_is_the_feature_that_is_there() {
    for verb in ["skimmed", "honed", "lapped", "turned"] {
        let job =
            note::read(&format!("all mm\nshaft\n - seat 25 h6\n\n5/6 {verb} seat to 24.965\n"));
        assert_eq!(job.features.len(), 1, "{verb}: {:#?}", job.features);
        assert_eq!(job.features[0].readings[0].size, mm("24.965mm"), "{verb}");
    }
}

/// A number that runs down the parts is no part of their names, and names them.
#[test]
fn item_numbers_of_a_table_name_its_parts() {
    let rows = "1 Brake drum | bore | 30 H8 | 2 seat |\n\
                | keyway | 8 P9 | key |\n\
                2 Beam gudgeon | drum seat | 30 h7 | 1 bore |\n\
                | journal | 25 f7 | 3 |\n\
                | keyway | 8 N9 | key |\n\
                3 Plummer bush | od / bore | 32 s6 / 25 H8 | block / gudgeon journal |\n\
                4 Block | bore | 32 H7 | bush |\n\
                5 Key | width | 8 h9 | 1 + 2 |\n\
                6 Ratchet | bore | 30 H8 | same gudgeon seat |\n";
    let text = format!("{HEAD}{rows}");
    let job = note::read(&text);
    assert_eq!(job.parts[0].name, "Brake drum");
    assert!(job.remarks.iter().any(|remark| remark.text == "item 1"));
    let with = |name: &str| mate(&text, name).0;
    assert_eq!(with("Brake drum bore"), "Beam gudgeon drum seat");
    assert_eq!(with("Beam gudgeon journal"), "Plummer bush bore");
    assert_eq!(with("Plummer bush od"), "Block bore");
    assert_eq!(with("Ratchet bore"), "Beam gudgeon drum seat");
    assert_eq!(with("Brake drum keyway"), "Key width");
    assert_eq!(job.features[feature(&job, "Key width")].side, SizeKind::Other);
    let job = note::read(&format!("{text}\n5/6 item 4 bore shd be 34 H7\n"));
    assert_eq!(size(&job, "Block bore"), Some(mm("34mm")));
    // Numbers that do not run are no item numbers.
    let job = note::read(&format!("{HEAD}2 Chuck | bore | 30 H8 | |\nNut | bore | 8 H8 | |\n"));
    assert_eq!(job.parts[0].name, "2 Chuck");
}

/// `1 in 8` is how steep a taper is; its ends are no connecting rod's.
#[test]
fn a_taper_is_a_ratio_and_no_size() {
    let text = "all mm\nspindle\n - nose taper 1 in 8, 28 big end\nhub\n - taper bore 1 in 8, 28\n";
    let job = note::read(text);
    let end = &job.features[feature(&job, "spindle nose big end")];
    assert_eq!((end.side, size(&job, "spindle nose big end")), (SizeKind::Shaft, Some(mm("28mm"))));
    assert_eq!(size(&job, "hub bore"), Some(mm("28mm")));
    assert!(job.remarks.iter().any(|remark| remark.text == "1 in 8"));
    let job = note::read("pin\n - dia 1/2\n - 1 in long\n");
    assert_eq!(size(&job, "pin overall length"), Some(mm("25.4mm")));
}

/// What has a class of ISO 286 or a metric thread is in millimetres beside inches.
#[test]
fn a_class_or_a_thread_tells_millimetres_from_inches() {
    let text = "shaft\n  1 1/4\" dia, top seat 30 k6, low seat 25mm k6\n\
                housing\n  bore 62 H7, recess 47 H8 x 7 dp, flange 5 1/2\" dia\n\
                nut - M20x1.5, 30 A/F, 14 thick\nplate - 3/8 thick, 4 1/2\" wide\n";
    let job = note::read(text);
    for (name, is) in [
        ("shaft top seat", "30mm"),
        ("shaft low seat", "25mm"),
        ("housing recess", "47mm"),
        ("nut flats", "30mm"),
        ("plate thick", "9.525mm"),
    ] {
        assert_eq!(size(&job, name), Some(mm(is)), "{name}");
    }
    assert!(job.questions.is_empty(), "{:?}", job.questions);
}

/// Remarks of a row say sizes where a plain word stands beside each.
#[test]
fn a_remark_of_a_row_gives_the_sizes_that_it_names() {
    let rows = "part | feature | size | goes with | remarks\n---|---|---|---|---\n\
                tube | bore | 38 | | 44.5 od x 3.2 wall, from stock\n\
                shaft | keyway | 8 P9 | key | 4 deep\n\
                pin | dia | 8 g6 | | M8 x 15 end in post\n\
                block | bolt holes | 11 | | M10 coach bolts, 110 ctrs\n\
                bush | bore | 8 H8 | | was 12 long, 20 rpm, 2 off\n\
                key | width | 8 h9 | | 8x7x35 bought\n";
    let job = note::read(&format!("all mm\n\n{rows}"));
    for (name, is) in [
        ("tube od", "44.5mm"),
        ("tube wall", "3.2mm"),
        ("shaft keyway depth", "4mm"),
        ("key height", "7mm"),
        ("key length", "35mm"),
    ] {
        assert_eq!(size(&job, name), Some(mm(is)), "{name}");
    }
    let thread = &job.features[feature(&job, "pin thread")];
    assert_eq!(thread.nominal, Some(NominalSize::Thread("M8".into())));
    let all = |part: &str| {
        (0..job.features.len()).filter(|at| job.full_name(*at).starts_with(part)).count()
    };
    assert_eq!((all("bush "), all("block ")), (1, 2));
    assert!(job.remarks.iter().any(|one| one.text == "44.5 od x 3.2 wall, from stock"));
}

/// A short name means the part that is there, whatever its name in full.
#[test]
fn a_short_name_means_the_part_that_is_there() {
    let text = "all inches\n\nframe top plate - 1/2 thick, hole 3.5\nbush bronze - od 3/4 press in plate, bore 1/2\n\
                housing - spigot 3.5 into frame\n\n5/6 plate no 2. hole 3.501\n";
    let job = note::read(text);
    assert_eq!(job.parts.iter().filter(|part| part.name.contains("plate")).count(), 1);
    assert_eq!(mate(text, "housing spigot").0, "frame top plate hole");
    let text =
        "all mm\n\nhousing\n - worm bores 26 H7, for the worm bearings\nbearings - 10 x 26 x 8\n";
    assert_eq!(mate(text, "housing worm bores").0, "bearings od");
    // The whole name of a feature that the mate has.
    let text = "all mm\n\nwheel shaft\n - drum end 14 h7\ndrum\n - bore 14 H8, sliding on the wheel shaft drum end. flanges 70\n";
    assert_eq!(mate(text, "drum bore").0, "wheel shaft drum end");
    assert_eq!(size(&note::read(text), "drum flanges"), Some(mm("70mm")));
}

/// The pitch circle of teeth is neither a hole's nor a shaft's, and is not as wide as its gear.
#[test]
fn the_pitch_of_a_gear_is_no_circle_of_holes() {
    let text = "all mm\npinion - 18T, pcd 20, boss 9 w. 3 cross hole\nwheel - 30 teeth, pitch diameter 45, width 16\n\
                worm - module 1.5, od 21\nplate - 4 holes 6 on 50 pcd\n";
    let job = note::read(text);
    assert_eq!(job.features[feature(&job, "pinion pitch diameter")].side, SizeKind::Other);
    assert_eq!(job.features[feature(&job, "pinion boss")].side, SizeKind::Shaft);
    assert_eq!(size(&job, "wheel pitch diameter"), Some(mm("45mm")));
    assert_eq!(size(&job, "wheel width"), Some(mm("16mm")));
    assert!(job.features.iter().all(|one| one.size() != Some(mm("1.5mm"))));
    assert_eq!(job.features[feature(&job, "plate holes pcd")].side, SizeKind::Length);
}

/// What stands about a size tells a count, a stock, a reading or a length from it.
#[test]
fn words_about_a_size_tell_what_it_is() {
    let job =
        note::read("inch\n\nbush (3 + 1 spare) bronze, bore 1/2\nshaft from my 1 1/4\" bar\n");
    assert_eq!((job.parts[0].count, size(&job, "bush bore")), (Some(4), Some(mm("12.7mm"))));
    assert!(job.features.iter().all(|one| one.size() != Some(mm("31.75mm"))));
    let text = "all mm\nspindle - body 10, hd 18, tail 8 x 22 long\nlever - length 420\nplate - window 38, slot 1/4\n\n\
                5/6 lever 420 hits the treadle, cut to 360\n6/6 slot in plate came out 5/16\n";
    let job = note::read(text);
    for (name, side) in [
        ("spindle hd", SizeKind::Shaft),
        ("spindle tail", SizeKind::Shaft),
        ("plate window", SizeKind::Hole),
    ] {
        assert_eq!(job.features[feature(&job, name)].side, side, "{name}");
    }
    assert_eq!(size(&job, "lever length"), Some(mm("360mm")));
    let slot = &job.features[feature(&job, "plate slot")];
    assert_eq!(slot.readings[0].size, mm("7.9375mm"));
    assert_eq!(slot.size(), Some(mm("6.35mm")));
}
