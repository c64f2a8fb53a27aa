//! A program talking to `fits batch` line by line: it asks for the bore of a
//! cider-press bushing seat, then reports readings until one is good.
//!
//! `cargo run --locked -p fits-core --example talk_to_batch -- PATH-TO-fits`

use std::{
    error::Error,
    io::{BufRead as _, BufReader, Write as _},
    process::{Command, Stdio},
};

use serde_json::Value;

fn main() -> Result<(), Box<dyn Error>> {
    let program = std::env::args().nth(1).unwrap_or_else(|| "fits".into());
    let mut child =
        Command::new(program).arg("batch").stdin(Stdio::piped()).stdout(Stdio::piped()).spawn()?;
    let mut queries = child.stdin.take().ok_or("no way in")?;
    let mut answers = BufReader::new(child.stdout.take().ok_or("no way out")?).lines();
    let mut ask = |query: &str| -> Result<Value, Box<dyn Error>> {
        writeln!(queries, "{query}")?;
        let answer = answers.next().ok_or("it ended")??;
        Ok(serde_json::from_str(&answer)?)
    };

    let plan = ask("bore 25 H7 from 24.2")?;
    println!("aim for {} mm", plan["aim_mm"]);
    // What the bore gauge says after each pass; a real tool would read it.
    for reading in ["24.610", "24.815", "25.004"] {
        let judged = ask(&format!("25 H7 = {reading}"))?;
        println!(
            "{reading}: {}, {} mm to go",
            judged["verdict"].as_str().unwrap_or("not answered"),
            judged["to_go_mm"]
        );
        if judged["verdict"] == "good" {
            break;
        }
    }
    drop(queries);
    child.wait()?;
    Ok(())
}
