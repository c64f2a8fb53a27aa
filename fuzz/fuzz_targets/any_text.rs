//! Any bytes as lines typed at the program. `fuzz/run` builds and runs it.
#![no_main]

#[path = "../../tests/support/any_text.rs"]
mod any_text;

use std::{
    process,
    sync::{
        LazyLock,
        atomic::{AtomicU64, Ordering},
    },
};

/// Bytes tried so far.
static TRIED: AtomicU64 = AtomicU64::new(0);

/// After how many bytes it ends; without it the engine's own limit holds.
static ENOUGH: LazyLock<Option<u64>> =
    LazyLock::new(|| std::env::var("FITS_FUZZ_BYTES").ok()?.parse().ok());

libfuzzer_sys::fuzz_target!(|data: &[u8]| {
    if let Err(fault) = any_text::holds(data) {
        panic!("{fault}");
    }
    let before = TRIED.fetch_add(data.len() as u64, Ordering::Relaxed);
    let tried = before + data.len() as u64;
    if before / 10_000_000 < tried / 10_000_000 {
        eprintln!("{tried} bytes tried");
    }
    if ENOUGH.is_some_and(|enough| before < enough && tried >= enough) {
        // The engine ends in order at this signal.
        let own = process::id().to_string();
        let _ = process::Command::new("kill").args(["-USR1", &own]).status();
    }
});
