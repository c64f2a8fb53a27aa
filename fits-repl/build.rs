//! Links the command at a fixed place where the linker is known to do so.
//!
//! Its tables hold some eighteen thousand addresses. In a position-independent
//! program each is put right at every start, which is a third of the time that one
//! answer takes. Libraries, stack and heap stay at random addresses. Who wants the
//! program there too says so: `RUSTFLAGS="-C relocation-model=pie"`.

use std::env;

fn main() {
    println!("cargo::rerun-if-changed=build.rs");
    let is = |name: &str, value: &str| env::var(name).is_ok_and(|found| found == value);
    let flags = env::var("CARGO_ENCODED_RUSTFLAGS").unwrap_or_default();
    let is_chosen = flags.contains("relocation-model") || flags.contains("linker-flavor");
    if is("CARGO_CFG_TARGET_OS", "linux")
        && is("CARGO_CFG_TARGET_ENV", "gnu")
        && !is_chosen
        && env::var_os("CARGO_FEATURE_COMMAND").is_some()
    {
        println!("cargo::rustc-link-arg-bin=fits=-no-pie");
    }
}
