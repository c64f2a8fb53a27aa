//! A size alone: `3/4in - 15 thou`.

pub(crate) mod answered;
