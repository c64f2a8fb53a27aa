//! Looks for bytes that break a rule of `body.rs`, guided by coverage.
#![no_main]

mod body;

libfuzzer_sys::fuzz_target!(|input: &[u8]| body::check(input));
