//! A size alone, answered.

use schemars::JsonSchema;
use serde::Serialize;

use crate::answer::Mm;

/// A size alone.
#[derive(Clone, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
pub struct SizeAnswer {
    /// The size, exactly.
    pub size_mm: Mm,
    /// The thread that a bare fraction may mean, as a query.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub thread: Option<String>,
    /// Where it is near the size of the part whose log is open: the entry that
    /// it may be meant for. Nothing is entered.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub log_entry: Option<String>,
}
