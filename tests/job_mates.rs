//! What goes into what in a note: the part and the feature that a mate's name
//! means, each rule on a note of its own.

use fits_checks::notes::{mate, mm, size};
use fits_repl::note;

/// A fit lies within a hundredth of the size: 22 mm and 7/8 in are 1 % apart and
/// no pair, where no name says that they are.
#[test]
fn no_mate_is_found_by_a_size_out_of_reach() {
    let text = |hole: &str| {
        format!("all inches\nsaddle\n  pocket {hole}, press fit\nroller\n  body 7/8 diameter\n")
    };
    assert_eq!(mate(&text("7/8"), "saddle pocket").0, "roller body");
    assert!(note::read(&text("22 mm")).mates.is_empty());
}

#[test]
fn the_outside_of_a_listed_part_goes_in_and_its_bore_goes_on() {
    for (text, name, other) in [
        ("all mm\nseal 22x40x7 in cover\n", "seal od", "cover bore"),
        (
            "all inches\nbush 1 1/8 x 1 3/8 x 1 1/4 lg, press in housing\nhousing\n  bore 52 mm\nhousing bush hole 1 3/8\n",
            "bush od",
            "housing bush hole",
        ),
        ("all mm\nbush 8 x 12 x 15, running on axle\naxle\n  od 8\n", "bush bore", "axle od"),
    ] {
        assert_eq!(mate(text, name).0, other, "{text}");
    }
}

#[test]
fn a_mate_is_found_by_the_name_that_the_note_gives_it() {
    for (text, name, other) in [
        // Opened further down: not the other bushes.
        (
            "all inches\nbushes\n  bore 1.000\npinion shaft\n  journal .750, running fit in pinion bush\npinion bush\n  bore .7515\n",
            "pinion shaft journal",
            "pinion bush bore",
        ),
        (
            "all inches\nside plates\n  pawl pin hole 1/2\npawl\n  hole .502\npawl pin\n  1/2 dia, press in LH plate\n",
            "pawl pin dia",
            "side plates pawl pin hole",
        ),
        (
            "all inches\narms\n - Fork slots are 1/2 wide.\nroller stocks (3)\n - Ends turned to .498 for the fork slots.\n",
            "roller stocks diameter",
            "arms Fork slots",
        ),
        (
            "all inches\nbevel wheel\n  bore 1 1/8\nshear pin 5/16 thro bevel boss\n",
            "shear pin od",
            "bevel wheel hole",
        ),
        (
            "all inches\nrail bearings\n - Two 608 bearings, 8 x 22 x 7 mm, bought. They press into the saddle.\n - Saddle pocket is 22 mm, N7.\n",
            "608 od",
            "saddle pocket",
        ),
    ] {
        assert_eq!(mate(text, name).0.to_lowercase(), other.to_lowercase(), "{text}");
    }
}

/// A shaft is tapped for a screw, or has a flat for it: no screw is bored for a shaft.
#[test]
fn a_screw_goes_in_the_thread_of_its_line() {
    let text = "all inches\nshaft\n  journal 5/8\n  end tapped 5/16-18, 3/4 deep, for the retaining screw\n  one flat, 3/8 wide, for the setscrew\n";
    assert_eq!(mate(text, "shaft thread").0, "retaining screw thread");
    let job = note::read(text);
    assert_eq!(size(&job, "shaft flat"), Some(mm("0.375in")));
    assert_eq!(job.mates.len(), 1, "{:#?}", job.mates);
    assert!(job.remarks.iter().any(|remark| remark.text == "setscrew"), "{:?}", job.remarks);
}

#[test]
fn a_mate_is_found_by_a_short_form_or_where_it_is_told_of_later() {
    for (text, name, other) in [
        (
            "all inches\nBx pls  2 off 3/16 ms\n hole 1/2\nbush\n od .5015 pr in pl\n",
            "bush od",
            "Bx pls hole",
        ),
        (
            "all inches\nlink\n    big end 1.127 goes on the eccentric\nshaft\n    eccentric 1.125 dia\n",
            "link big end",
            "shaft eccentric",
        ),
        (
            "all mm\nspindle\n - gear seat is 9 mm and the small gear is pressed on it.\nsmall gear\n - bore 8.98\nbig gear\n - bore 12\n",
            "spindle gear seat",
            "small gear bore",
        ),
        (
            "all mm\nspindle\n - end 7.8, an easy fit in the reel (the hole is 5/16 inch)\n",
            "spindle end",
            "reel hole",
        ),
        (
            "all mm\nspindle\n - A 2 mm cross hole takes the drive peg. Peg pressed in.\n",
            "spindle cross hole",
            "drive peg od",
        ),
        (
            "all inches\nHdl   grip pin 3/8, grip bore 25/64 on pin\n",
            "Hdl grip bore",
            "grip pin od",
        ),
        ("all inches\nCrk sft 5/8 bms\n sq for hdl 1/2 a/f\n", "Crk sft square", "hdl mate"),
    ] {
        assert_eq!(mate(text, name).0, other, "{text}");
    }
    // Two plates: not guessed which.
    let text = "all inches\nside pls 2 off\n hole 1/2\ntop pls 2 off\n hole 1/2\nbush\n od .5015 pr in pl\n";
    assert!(!note::read(text).mates.iter().any(|mate| mate.called.as_deref() == Some("pl")));
}

/// A nut goes on the thread beside it, and what a hole or a groove is for goes there.
#[test]
fn what_stands_beside_a_thread_or_a_hole_goes_with_it() {
    let text = "all mm\n\nshaft\n   thread: M12 x 12 long, nut and washer\nspindle\n   tail M20x1.5 + locknut\n\
                drum\n   foot holes: 8.5 clearance for M8\n   anchor hole: 3.5 for the 3 mm cable\n   groove for 6 mm leather cord\n\
                arm\n   clamp bore: 16 H8, on the far end of the shaft\n";
    let with = |name: &str| mate(text, name).0;
    assert_eq!(with("shaft thread"), "nut thread");
    assert_eq!(with("spindle thread"), "locknut thread");
    assert_eq!(with("drum foot holes"), "M8 thread");
    assert_eq!(with("drum anchor hole"), "cable od");
    assert!(with("drum groove").starts_with("leather cord "));
    let job = note::read(text);
    for (name, is) in [("cable od", "3mm"), ("drum groove", "6mm"), ("arm clamp bore", "16mm")] {
        assert_eq!(size(&job, name), Some(mm(is)), "{name}");
    }
}

/// A sleeve that is made for a worn joint stands between the two.
#[test]
fn a_sleeve_goes_between_the_two_of_a_worn_joint() {
    let text = "all inch\n\nflywheel bore 7/8\nshaft 7/8 drill rod, flywheel goes on it, snug\n\n\
                4 Apr flywheel bore .878, bored out to 1.000\n5 Apr sleeve then: 1.001 od, .875 bore\n";
    assert_eq!(mate(text, "sleeve od").0, "flywheel bore");
    assert_eq!(mate(text, "sleeve bore").0, "shaft od");
}

/// `spins` is no kind of pin, and `w/` leads to what goes in, as `with` does.
#[test]
fn a_verb_is_no_mate_and_a_letter_for_with_leads_to_one() {
    let text = "all inches\n\ntie rod 3/8 CRS thru 2 cheeks, spins free\ncheeks ash w/ brass bush 3/8 x 5/8 x 7/8\n";
    assert_eq!(mate(text, "tie rod od").0, "cheeks bore");
    assert_eq!(mate(text, "brass bush od").0, "cheeks bore for brass bush");
    let job = note::read(text);
    assert!(!job.parts.iter().any(|part| part.name.contains("spin")), "{:#?}", job.parts);
    // A washer lies beside.
    let job = note::read("all mm\n\nscrew - tail M16, locknut w/ tab washer\n");
    assert!(!job.mates.iter().any(|mate| {
        [mate.hole, mate.shaft].iter().any(|at| job.full_name(*at).contains("washer"))
    }));
    // The id in brackets is that of what goes into the hole.
    let text = "all inches\n\nyoke\n  3 holes 1/2 for acetal liners (3/8 id)\nrods\n  body 3/8 runs in liners\n";
    assert_eq!(mate(text, "rods body").0, "acetal liners id");
    assert_eq!(size(&note::read(text), "acetal liners id"), Some(mm("3/8in")));
}
