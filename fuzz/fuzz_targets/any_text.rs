//! Any bytes as lines typed at the program. `fuzz/run` builds and runs it.
#![no_main]

#[path = "../../tests/support/any_text.rs"]
mod any_text;

libfuzzer_sys::fuzz_target!(|data: &[u8]| {
    if let Err(fault) = any_text::holds(data) {
        panic!("{fault}");
    }
});
