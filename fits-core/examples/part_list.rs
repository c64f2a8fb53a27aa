//! Another shop tool calling the library: a part list in, limits out.
//!
//! The joints of a cider press, one a line: name, size with unit, hole class,
//! shaft class. Run it with `cargo run --locked -p fits-core --example part_list`.

use fits_core::{Error, Fit, Length};

const JOINTS: &str = "\
crank journal,    20mm,    H7, g6
frame bushing,    3/4in,   H7, s6
screw thrust pin, 10mm,    H7, m6
spindle,          3/4in,   H8, f7
tube handle plug, 22mm,    H8, h9
";

/// One line of the list, answered.
fn limits_of(line: &str) -> Result<String, Error> {
    let mut fields = line.split(',').map(str::trim);
    let mut next = || fields.next().unwrap_or_default();
    let name = next();
    let nominal: Length = next().parse()?;
    let fit = Fit::of_classes(nominal, next().parse()?, next().parse()?)?;
    Ok(format!(
        "{name}: hole {} to {}, shaft {} to {}, {} fit",
        fit.hole().lower(),
        fit.hole().upper(),
        fit.shaft().lower(),
        fit.shaft().upper(),
        fit.kind().word(),
    ))
}

fn main() {
    for line in JOINTS.lines() {
        match limits_of(line) {
            Ok(answer) => println!("{answer}"),
            Err(error) => println!("{line}: {error}"),
        }
    }
}
