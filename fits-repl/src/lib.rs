//! Text to answer to rendering, for people at the prompt and for programs.
//!
//! ```text
//! text ──grammar──▶ Query ──session──▶ Answer ──render──▶ text | JSON
//! ```
//!
//! One path for every way in: the prompt, `fits QUERY`, `fits --json QUERY`
//! and `fits batch` differ only in who reads the lines.
//!
//! Without the feature `command` there is no line editor, no signal and no file
//! on disk: [`session::Session::evaluate`] and [`render`] are the whole of it,
//! and they build for `wasm32-unknown-unknown`.

pub mod answer;
pub mod batch;
#[cfg(feature = "command")]
pub mod command;
mod files;
pub mod help;
#[cfg(feature = "command")]
pub mod line_editor;
pub mod note;
pub mod problem;
pub mod query;
pub(crate) mod questions;
pub mod render;
pub mod schema;
mod sentence;
pub mod session;
pub mod sheet;
#[cfg(feature = "command")]
pub mod signals;
pub mod table;
pub(crate) mod words;

pub use files::Home;
pub use sentence::Slip;
pub use words::{LONGEST_LINE, read};
