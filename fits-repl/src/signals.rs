//! Signals at the prompt: Ctrl-C stops long work, and whatever ends the
//! program from outside leaves the terminal as it was found.

use std::{
    io,
    sync::atomic::{AtomicBool, Ordering},
    sync::{Arc, LazyLock},
};

static STOP: LazyLock<Arc<AtomicBool>> = LazyLock::new(Arc::default);

/// Whether Ctrl-C was pressed since [`begin`].
pub fn stopped() -> bool {
    STOP.load(Ordering::Relaxed)
}

/// Forgets an earlier Ctrl-C: new work begins.
pub fn begin() {
    STOP.store(false, Ordering::Relaxed);
}

/// Takes Ctrl-C as a wish to stop, and has the terminal put back as it is now
/// before SIGTERM or SIGHUP ends the program. Call it before the terminal is
/// changed.
///
/// # Errors
/// The system refuses a handler.
pub fn watch() -> io::Result<()> {
    signal_hook::flag::register(signal_hook::consts::SIGINT, Arc::clone(&STOP))?;
    #[cfg(unix)]
    put_back_at_the_end()?;
    Ok(())
}

#[cfg(unix)]
fn put_back_at_the_end() -> io::Result<()> {
    use rustix::termios::{OptionalActions, tcgetattr, tcsetattr};
    use signal_hook::{
        consts::{SIGHUP, SIGTERM},
        iterator::Signals,
        low_level::emulate_default_handler,
    };
    use std::io::Write as _;

    /// Ends bracketed paste, which the line editor turns on.
    const PLAIN_PASTE: &[u8] = b"\x1b[?2004l\r\n";

    let found = tcgetattr(io::stdin())?;
    let mut signals = Signals::new([SIGHUP, SIGTERM])?;
    std::thread::spawn(move || {
        for signal in signals.forever() {
            // A terminal that is gone needs nothing.
            let _ = tcsetattr(io::stdin(), OptionalActions::Now, &found);
            // Standard output may be locked by what is being written; the
            // same terminal is behind standard error as a rule.
            let _ = io::stderr().write_all(PLAIN_PASTE);
            let _ = emulate_default_handler(signal);
        }
    });
    Ok(())
}
