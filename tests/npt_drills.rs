//! The straight drill before an NPT tap lies near K0, the basic minor diameter
//! at the small end of the screw: ASME B1.20.1, E0 - 0.8 P. A maker of taps has
//! the hole close to it.

use fits_checks::rows;
use fits_core::standards::thread::Thread;

#[test]
fn the_drill_is_near_the_minor_diameter_at_the_small_end() {
    let mut seen = 0;
    for row in rows("data/threads/npt.csv") {
        let thread: Thread = format!("{} NPT", row.text("size")).parse().unwrap();
        let Some(drill) = thread.pipe_tap_drill() else { continue };
        let small = thread.taper().unwrap().small_end.millimetres() / 25.4;
        let over = drill.millimetres() / 25.4 - (small - 0.8 * thread.pitch().inches());
        assert!((-0.010..=0.020).contains(&over), "{row}: {over}");
        seen += 1;
    }
    assert_eq!(seen, 15);
}
