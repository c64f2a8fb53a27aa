//! Which pitches a standard lists a size with.

/// Which list of its system a size stands in.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "kebab-case"))]
#[expect(
    clippy::exhaustive_enums,
    reason = "each is told, or acted on, in its own way: a new one must not pass unseen"
)]
pub enum Series {
    /// Coarse: metric coarse, UNC, BSW.
    Coarse,
    /// Fine: metric fine, UNF, BSF.
    Fine,
    /// Extra fine: UNEF.
    ExtraFine,
    /// Unified with one pitch for many diameters: UN.
    Constant,
    /// The one list of a system that has no coarse and fine.
    Listed,
    /// In no list: computed by the formulas.
    Special,
}
