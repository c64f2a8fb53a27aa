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

/// A mate's cell names a feature by its whole name, by a part and the beginning of one,
/// or several parts.
#[test]
fn a_cell_names_its_mates_in_full_in_part_or_several() {
    let rows = "body | worm bore | 22 H7 | worm bush OD |\n\
                body | lid screws | M5 | |\n\
                worm bush | OD | 22 r6 | worm bore |\n\
                worm | bore | 16 H7 | worm seat |\n\
                shaft | worm seat | 16 h6 | worm |\n\
                shaft | sector seat | 20 k6 | sector hub |\n\
                sector | hub bore | 20 H7 | |\n\
                lid | holes | 5.5 | lid screws |\n\
                clevis pin | dia | 10 | clevis, lever |\n\
                lever | rod hole | 10.2 | |\n\
                clevis | hole | 10 H9 | |\n\
                worm | keyway | 5 JS9 | key |\n\
                key | width | 5 h9 | keyway, both |\n\
                arm | drive end | 12 sq | |\n\
                arm | bearing seat | 26 J7 | |\n";
    let text = format!("{HEAD}{rows}");
    let with = |name: &str| mate(&text, name).0;
    assert_eq!(with("worm bush OD"), "body worm bore");
    assert_eq!(with("shaft sector seat"), "sector hub bore");
    assert_eq!(with("lid holes"), "body lid screws");
    assert_eq!(with("lever rod hole"), "clevis pin dia");
    assert_eq!(with("clevis hole"), "clevis pin dia");
    assert_eq!(with("key width"), "worm keyway");
    let job = note::read(&text);
    assert_eq!(job.features[feature(&job, "arm drive end")].side, SizeKind::Other);
    assert_eq!(job.features[feature(&job, "arm bearing seat")].side, SizeKind::Hole);
}

/// Words of a remark that say of themselves what its size is of, and whose.
#[test]
fn a_remark_says_by_its_words_what_its_size_is_of() {
    let rows = "part | feature | size | goes with | remarks\n---|---|---|---|---\n\
                bush | bore | 22 | shaft | flanged 36 x 4\n\
                body | cross bore | 28 H7 | | 41.0 from worm bore\n\
                worm | bore | 16 H7 | | keyed 5\n\
                shaft | seat | 22 k6 | | taper pin 6, 1:50\n\
                clevis | hole | 10 H9 | | fork gap 12.5\n\
                rod | thread | M12 | | 75 of thread\n\
                lid | holes | 5.5 | | gasket 0.5\n\
                tie | tube | 1\" x 16 swg | |\n";
    let job = note::read(&format!("all mm\n\n{rows}"));
    for (name, is, side) in [
        ("bush flange", "36mm", SizeKind::Shaft),
        ("bush flange thickness", "4mm", SizeKind::Length),
        ("body cross bore from worm bore", "41mm", SizeKind::Length),
        ("worm keyway", "5mm", SizeKind::Other),
        ("taper pin od", "6mm", SizeKind::Shaft),
        ("clevis fork gap", "12.5mm", SizeKind::Length),
        ("rod thread length", "75mm", SizeKind::Length),
        ("gasket thickness", "0.5mm", SizeKind::Length),
        ("tie tube", "25.4mm", SizeKind::Shaft),
    ] {
        assert_eq!(size(&job, name), Some(mm(is)), "{name}");
        assert_eq!(job.features[feature(&job, name)].side, side, "{name}");
    }
    assert!(job.features.iter().all(|one| one.size() != Some(mm("16mm")) || one.name == "bore"));
    assert!(job.remarks.iter().any(|one| one.text == "1\" x 16 swg"));
    let job = note::read("all inch\n\ntie - tube 1 x 16 swg, 9 long\n");
    assert!(job.remarks.iter().any(|one| one.text == "1 x 16 swg"), "{:?}", job.remarks);
}

/// A feature that is named after what goes in it, or stands behind its owner.
#[test]
fn a_feature_named_after_a_part_goes_with_it() {
    let text = "all mm\n\n1. Frame (aluminium, 2 off)\n   Bearing housing 26 J7, 8 deep. Pillar holes 8 H7, three on a 95 circle.\n\
                \x20  Foot holes 6.6 for M6, vent hole 9 for 5/16 bsf hex hd.\n\
                2. Bearings (bought)\n   10 bore, 26 outside, 8 wide.\n\
                3. Pillars (3 off)\n   spigot ends 8 g6 by 11.\n\
                4. Spindle\n   Pinion end 6 g6 x 18, flat 5.5 across for grub screw.\n\
                5. Pinion\n   bore 6 H7 on pinion end of the spindle.\n\
                6. Float pulley (acetal)\n   bore 12 H7.\n\n\
                10 May   Frame A housing 26.004, frame B housing 26.013.\n11 May frame pillar holes 8.01 8.012\n";
    let job = note::read(text);
    let with = |name: &str| mate(text, name).0;
    assert_eq!(with("Frame bearing housing"), "Bearings outside");
    assert_eq!(with("Frame pillar holes"), "Pillars spigot");
    assert_eq!(with("Pinion bore"), "Spindle pinion end");
    assert!(with("Frame foot holes").starts_with("M6 "));
    assert!(with("Frame vent hole").starts_with("hex hd "));
    assert_eq!(size(&job, "Float pulley bore"), Some(mm("12mm")));
    assert_eq!(size(&job, "Frame pillar holes pcd"), Some(mm("95mm")));
    assert_eq!(size(&job, "Spindle flat"), Some(mm("5.5mm")));
    for (name, is) in [("bearing housing", "26.013mm"), ("pillar holes", "8.012mm")] {
        let read = &job.features[feature(&job, &format!("Frame {name}"))].readings;
        assert_eq!((read.len(), read[1].size), (2, mm(is)), "{name}");
    }
}

/// Where a bush goes of which its line says nothing, and what a part is made for.
#[test]
fn what_a_line_leaves_unsaid_goes_with_its_part() {
    let text = "all mm\n\nbearings 2x 6004 (20 x 42 x 12)\ncastings for the bearings, 2, bore 42 H7\n\
                rod ash, 480 centres, brass bush 16 od 12 bore 25 long\n\
                spindle 10 dia\nbushes 2 off 14 x 10 x 15 sintered, press into block, spindle runs in them\nblock bored 14 H7\n\
                guide bar 8 dia, held in two posts, posts reamed 8.02\n";
    let with = |name: &str| mate(text, name).0;
    assert!(with("castings bore").starts_with("bearings "), "{}", with("castings bore"));
    assert!(with("brass bush od").starts_with("rod "));
    assert_eq!(with("bushes od"), "block bore");
    assert_eq!(with("bushes bore"), "spindle dia");
    assert!(with("guide bar dia").starts_with("posts "));
}

/// Forms that are used as they come, and how a taper, a gauge or a weight is no length of it.
#[test]
fn what_comes_at_its_size_is_as_large_outside() {
    let text = "all inch\n\nhooks - 3/8 silver steel 5 1/2 lg, run in bush 1 1/2 thou clr\nbush - 3/8 rm thru, 3/4 lg, od 5/8\n\
                sleeve - 3/16 stainless tube, 2 lg\nspindle - nose tapered 1 in 12 over 2 1/2 (big end .394)\n";
    let job = note::read(text);
    for (name, is) in [
        ("hooks od", "0.375in"),
        ("bush hole", "0.375in"),
        ("sleeve od", "0.1875in"),
        ("spindle taper length", "2.5in"),
        ("spindle taper big end", "0.394in"),
    ] {
        assert_eq!(size(&job, name), Some(mm(is)), "{name}");
    }
    // How loose it runs is no size of the bush.
    assert!(job.features.iter().all(|one| one.size() != Some(mm("0.0015in"))));
    let job =
        note::read("all mm\n\n1. Pen arm (alu tube 5 x 0.5)\n   length 85. pen weight 4 g.\n");
    assert_eq!(size(&job, "Pen arm od"), Some(mm("5mm")));
    assert_eq!(size(&job, "Pen arm wall"), Some(mm("0.5mm")));
    assert!(job.features.iter().all(|one| one.size() != Some(mm("4mm"))));
    let job = note::read(
        "all mm\n\nhousing\n - recess 47 H8 x 7 dp\nplate\n - dowels 8 m6 x 30 in reamed holes 8 H7\n",
    );
    assert_eq!(size(&job, "housing recess depth"), Some(mm("7mm")));
}

/// On a day: what is ordered is a size, what was found is a reading, each of its own part.
#[test]
fn a_day_tells_an_order_from_a_reading() {
    let text = "all mm\n\nbush - od 16, bore 12\nlever - rod hole 10.2\nworm - bore 16\nbody - worm bore 22\nkey - 5 sq\n\n\
                2 May turn 16.1 od of the bush to suit\n3 May lever hole left at 10.22\n4 May worm bore 16.012\n\
                5 May key 5.02 nice fit\n6 May lever 10.21 \u{221a}  bush bore 12.01 \u{2713} worm bore 16.02\n\
                7 May sleeve then: 22.02 od, 18.01 bore\n8 May backlash 0.15 all round\n";
    let job = note::read(text);
    assert_eq!(size(&job, "bush od"), Some(mm("16.1mm")));
    assert_eq!(size(&job, "sleeve od"), Some(mm("22.02mm")));
    assert_eq!(size(&job, "sleeve bore"), Some(mm("18.01mm")));
    let read = |name: &str| -> Vec<_> {
        job.features[feature(&job, name)].readings.iter().map(|one| one.size).collect()
    };
    assert_eq!(read("lever rod hole"), [mm("10.22mm"), mm("10.21mm")]);
    assert_eq!(read("worm bore"), [mm("16.012mm"), mm("16.02mm")]);
    assert_eq!(read("bush bore"), [mm("12.01mm")]);
    assert_eq!(read("key sq"), [mm("5.02mm")]);
    assert_eq!(read("assembly backlash"), [mm("0.15mm")]);
    // Decimals of an inch in a note that is in millimetres.
    let job = note::read("all mm\n\nplate - hole 20\n\n9 May sleeve then: 1.001 od, .875 bore\n");
    assert_eq!(size(&job, "sleeve od"), Some(mm("1.001in")));
}

/// What is asked changes nothing, and a number far off what was read beside it is none.
#[test]
fn an_order_that_is_asked_and_a_gap_are_no_readings() {
    let text = "all inches\n\nscrew - journal 7/8\nliner 7/8 x 1-1/8 x 1\nnut - bore 7/8\n\n\
                2 May liner ID .8762\n3 May screw journal .8751. turn journal down to .8735?\n\
                4 May nut socket 1.1252, thats 1.9 ok\n5 May nut collar turned, 1.4988\n";
    let job = note::read(text);
    let read = |name: &str| -> Vec<_> {
        job.features[feature(&job, name)].readings.iter().map(|one| one.size).collect()
    };
    assert_eq!(read("screw journal"), [mm("0.8751in")]);
    assert_eq!(size(&job, "screw journal"), Some(mm("7/8in")));
    assert_eq!(read("nut socket"), [mm("1.1252in")]);
    assert!(job.features.iter().all(|one| one.size() != Some(mm("1.9in"))));
    // The bore of a liner by its other name, and an outside that no line gives.
    assert_eq!(read("liner bore"), [mm("0.8762in")]);
    assert!(job.features.iter().all(|one| one.size() != Some(mm("1.4988in"))));
}
