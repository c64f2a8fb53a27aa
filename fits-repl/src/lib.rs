//! Text to answer to rendering, for people at the prompt and for programs.
//!
//! ```text
//! text ──grammar──▶ Query ──session──▶ Answer ──render──▶ text | JSON
//! ```
//!
//! One path for every way in: the prompt, `fits QUERY`, `fits --json QUERY`
//! and `fits batch` differ only in who reads the lines.

pub mod answer;
pub mod batch;
pub mod command;
mod files;
pub mod help;
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
pub mod signals;
pub mod table;
pub(crate) mod words;

pub use files::Home;
pub use sentence::Slip;
pub use words::{LONGEST_LINE, read};
