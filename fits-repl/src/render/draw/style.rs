//! The colours and lines of every picture and of the sheet, by day and by night.
//! No colour carries meaning alone: a hole is hatched one way and a shaft the
//! other, and each mark has its words.

use std::fmt::Write as _;

/// One set of colours. Against its paper each stands out by 4.5 to 1 or more
/// (WCAG 2.1, 1.4.3).
pub(crate) struct Colours {
    /// What all is drawn on.
    pub(crate) paper: &'static str,
    /// Words and outlines.
    pub(crate) ink: &'static str,
    /// Helping lines and small print.
    pub(crate) faint: &'static str,
    /// A hole and what is cut in it.
    pub(crate) hole: &'static str,
    /// A shaft.
    pub(crate) shaft: &'static str,
    /// As it should be.
    pub(crate) good: &'static str,
    /// Not as it should be.
    pub(crate) bad: &'static str,
    /// The fill of cut metal, under hatching and words.
    pub(crate) metal: &'static str,
}

/// On white paper, and in print.
pub(crate) const DAY: Colours = Colours {
    paper: "#ffffff",
    ink: "#1b1b1b",
    faint: "#5c5c5c",
    hole: "#1a5494",
    shaft: "#8f3f0a",
    good: "#1c6430",
    bad: "#a8001c",
    metal: "#eceef1",
};

/// On a dark screen.
pub(crate) const NIGHT: Colours = Colours {
    paper: "#15171a",
    ink: "#f1f1f1",
    faint: "#b4b4b4",
    hole: "#86bbf5",
    shaft: "#f3b07a",
    good: "#86d39a",
    bad: "#ffa0a8",
    metal: "#2b2f35",
};

/// The type of the pictures, as CSS names faces.
pub(crate) const FACES: &str = "Arial,'Liberation Sans','DejaVu Sans',sans-serif";

/// How dark screens are asked for.
pub(crate) const DARK: &str = "@media screen and (prefers-color-scheme:dark)";

/// The rules of all pictures. `size` is that of the type.
pub(crate) fn rules(size: f64) -> String {
    let mut out = format!(
        ".drawing text{{font-family:{FACES};font-size:{size}px;stroke-width:5px;paint-order:stroke}}\
         .drawing text.strong{{font-weight:bold}}\
         .drawing .line,.drawing .curve{{fill:none;stroke-width:1.6px}}.drawing .heavy{{fill:none;stroke-width:3px}}\
         .drawing .dash{{stroke-dasharray:7 4}}.drawing .dots{{stroke-dasharray:2 4}}\
         .drawing .chain{{stroke-dasharray:16 4 3 4}}\n"
    );
    out.push_str(&coloured(&DAY));
    let _ = writeln!(out, "{DARK}{{{}}}", coloured(&NIGHT));
    out
}

fn coloured(colours: &Colours) -> String {
    let Colours { paper, ink, faint, hole, shaft, good, bad, metal } = colours;
    let mut out = format!(
        ".drawing .paper{{fill:{paper}}}.drawing text{{fill:{ink};stroke:{paper}}}.drawing .metal{{fill:{metal}}}"
    );
    let inks = [
        ("ink", ink),
        ("faint", faint),
        ("hole", hole),
        ("shaft", shaft),
        ("good", good),
        ("bad", bad),
    ];
    for (name, colour) in inks {
        let _ = write!(
            out,
            ".drawing .{name}{{stroke:{colour}}}.drawing .{name}.full{{fill:{colour}}}.drawing text.{name}{{fill:{colour};stroke:{paper}}}"
        );
    }
    out.push('\n');
    out
}
