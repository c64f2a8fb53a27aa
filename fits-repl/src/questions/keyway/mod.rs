//! The key and keyways of a shaft: `keyway for 25`.

pub(crate) mod answered;
pub(crate) mod asked;
pub(crate) mod shown;
