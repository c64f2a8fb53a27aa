//! A whole job out of a note.

pub(crate) mod lines;
