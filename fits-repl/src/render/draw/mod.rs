//! The one drawing module: lines, areas, hatching and words on a sheet of a
//! width, as tall as what is put on it. It writes SVG, alone or inside a page.

pub(crate) mod measure;
pub(crate) mod scale;
pub(crate) mod style;

use std::fmt::Write as _;

use crate::render::markup::escaped;

pub(crate) use scale::{Scale, Side};

/// The width of a picture: on paper 180 mm, as much as A4 and Letter both hold
/// between margins.
pub(crate) const WIDTH: f64 = 680.0;
/// The size of its type: 14 points on paper.
pub(crate) const TYPE: f64 = 19.0;
/// From one line of words to the next.
pub(crate) const LINE: f64 = 24.0;
/// The blank edge.
pub(crate) const EDGE: f64 = 12.0;

/// What something is drawn in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Ink {
    Plain,
    Faint,
    Hole,
    Shaft,
    Good,
    Bad,
}

impl Ink {
    const fn class(self) -> &'static str {
        match self {
            Self::Plain => "ink",
            Self::Faint => "faint",
            Self::Hole => "hole",
            Self::Shaft => "shaft",
            Self::Good => "good",
            Self::Bad => "bad",
        }
    }
}

/// How a line is drawn.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Stroke {
    Thin,
    Heavy,
    Dash,
    Dots,
    /// The line of an axis.
    Chain,
}

impl Stroke {
    const fn class(self) -> &'static str {
        match self {
            Self::Thin => "line",
            Self::Heavy => "heavy",
            Self::Dash => "line dash",
            Self::Dots => "line dots",
            Self::Chain => "line chain",
        }
    }
}

/// Which end of words stands at their place.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Anchor {
    Start,
    Middle,
    End,
}

impl Anchor {
    const fn word(self) -> &'static str {
        match self {
            Self::Start => "start",
            Self::Middle => "middle",
            Self::End => "end",
        }
    }
}

/// Which way an area is hatched.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Lean {
    /// As `/`: a hole.
    Up,
    /// As `\`: a shaft.
    Down,
}

/// A rectangle: its left and right, its top and bottom.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Area {
    pub(crate) left: f64,
    pub(crate) right: f64,
    pub(crate) top: f64,
    pub(crate) bottom: f64,
}

impl Area {
    fn meets(&self, other: &Self) -> bool {
        self.left < other.right
            && other.left < self.right
            && self.top < other.bottom
            && other.top < self.bottom
    }
}

/// A picture in the making.
#[derive(Debug)]
pub(crate) struct Drawing {
    title: String,
    body: String,
    /// Where the next thing goes: below all that is there.
    pub(crate) below: f64,
    lowest: f64,
    /// Where words stand.
    words: Vec<Area>,
}

impl Drawing {
    /// Nothing yet. The title is what a screen reader says; it is written on top
    /// too.
    pub(crate) fn new(title: &str) -> Self {
        let mut drawing = Self::untitled(title);
        drawing.paragraph(EDGE, WIDTH - 2.0 * EDGE, title, true);
        drawing
    }

    /// The same where the page around it has the title already.
    pub(crate) fn untitled(title: &str) -> Self {
        let title = title.to_owned();
        Self { title, body: String::new(), below: EDGE, lowest: EDGE, words: Vec::new() }
    }

    /// Words at a place on the line `y`, kept inside the edges.
    pub(crate) fn words(&mut self, x: f64, y: f64, anchor: Anchor, ink: Ink, words: &str) {
        self.written(x, y, anchor, &format!("{} ", ink.class()), words);
    }

    fn written(&mut self, x: f64, y: f64, anchor: Anchor, class: &str, words: &str) {
        let area = area_of(x, y, anchor, words);
        let inward = (EDGE - area.left).max(0.0) - (area.right - (WIDTH - EDGE)).max(0.0);
        let area = Area { left: area.left + inward, right: area.right + inward, ..area };
        let _ = writeln!(
            self.body,
            "<text x=\"{:.1}\" y=\"{y:.1}\" text-anchor=\"{}\" class=\"{}\">{}</text>",
            x + inward,
            anchor.word(),
            class.trim_end(),
            // Two spaces between a figure in both units stay two.
            escaped(words).replace("  ", "\u{a0}\u{a0}")
        );
        self.reach(area.bottom);
        self.words.push(area);
    }

    /// Words as near to their place as no other words stand, below it.
    pub(crate) fn free_words(&mut self, x: f64, y: f64, anchor: Anchor, ink: Ink, words: &str) {
        let mut y = y;
        while self.words.iter().any(|area| area.meets(&area_of(x, y, anchor, words))) {
            y += LINE / 4.0;
        }
        self.words(x, y, anchor, ink, words);
    }

    /// Words in lines of a width below all that is there.
    pub(crate) fn paragraph(&mut self, x: f64, width: f64, words: &str, is_strong: bool) {
        // Bold type is a tenth wider.
        let most = if is_strong { width / TYPE / 1.1 } else { width / TYPE };
        for line in measure::lines(words, most) {
            let y = self.below + TYPE;
            self.written(x, y, Anchor::Start, if is_strong { "ink strong" } else { "ink" }, &line);
            self.below = y + LINE - TYPE;
        }
        self.reach(self.below);
    }

    /// A straight line.
    pub(crate) fn line(&mut self, from: (f64, f64), to: (f64, f64), stroke: Stroke, ink: Ink) {
        let _ = writeln!(
            self.body,
            "<line x1=\"{:.1}\" y1=\"{:.1}\" x2=\"{:.1}\" y2=\"{:.1}\" class=\"{} {}\"/>",
            from.0,
            from.1,
            to.0,
            to.1,
            stroke.class(),
            ink.class()
        );
        self.reach(from.1.max(to.1));
    }

    /// A line from point to point.
    pub(crate) fn curve(&mut self, points: &[(f64, f64)], stroke: Stroke, ink: Ink) {
        let at: Vec<String> = points.iter().map(|(x, y)| format!("{x:.1},{y:.1}")).collect();
        let _ = writeln!(
            self.body,
            "<polyline points=\"{}\" class=\"{} {}\"/>",
            at.join(" "),
            stroke.class(),
            ink.class()
        );
        self.reach(points.iter().map(|point| point.1).fold(0.0, f64::max));
    }

    /// A filled shape from point to point.
    pub(crate) fn shape(&mut self, points: &[(f64, f64)], ink: Ink) {
        let at: Vec<String> = points.iter().map(|(x, y)| format!("{x:.1},{y:.1}")).collect();
        let _ = writeln!(
            self.body,
            "<polygon points=\"{}\" class=\"full {}\"/>",
            at.join(" "),
            ink.class()
        );
        self.reach(points.iter().map(|point| point.1).fold(0.0, f64::max));
    }

    /// A piece of metal, cut or seen.
    pub(crate) fn metal(&mut self, area: Area) {
        let Area { left, right, top, bottom } = area;
        let _ = writeln!(
            self.body,
            "<rect x=\"{left:.1}\" y=\"{top:.1}\" width=\"{:.1}\" height=\"{:.1}\" class=\"metal ink\"/>",
            right - left,
            bottom - top
        );
        self.reach(bottom);
    }

    /// An area with an outline, hatched.
    pub(crate) fn zone(&mut self, area: Area, lean: Lean, ink: Ink) {
        let Area { left, right, top, bottom } = area;
        let _ = writeln!(
            self.body,
            "<rect x=\"{left:.1}\" y=\"{top:.1}\" width=\"{:.1}\" height=\"{:.1}\" class=\"line {}\"/>",
            right - left,
            bottom - top,
            ink.class()
        );
        self.hatch(area, lean, ink);
        self.reach(bottom);
    }

    /// Lines at 45 degrees through an area.
    pub(crate) fn hatch(&mut self, area: Area, lean: Lean, ink: Ink) {
        const APART: f64 = 9.0;
        let Area { left, right, top, bottom } = area;
        let height = bottom - top;
        let mut path = String::new();
        let mut foot = left - height + APART / 2.0;
        while foot < right {
            // The line rises from (foot, bottom) to (foot + height, top).
            let (from, to) = (foot.max(left), (foot + height).min(right));
            if to > from {
                let up = |x: f64| match lean {
                    Lean::Up => bottom - (x - foot),
                    Lean::Down => top + (x - foot),
                };
                let _ = write!(path, "M{from:.1} {:.1}L{to:.1} {:.1}", up(from), up(to));
            }
            foot += APART;
        }
        if !path.is_empty() {
            let _ = writeln!(self.body, "<path d=\"{path}\" class=\"line {}\"/>", ink.class());
        }
    }

    fn reach(&mut self, y: f64) {
        self.lowest = self.lowest.max(y);
    }

    /// Puts the next thing below all that is there, so far away.
    pub(crate) fn gap(&mut self, by: f64) {
        self.below = self.lowest + by;
    }

    /// The picture as a file of its own.
    pub(crate) fn alone(&self) -> String {
        self.svg(&format!("<style>{}</style>\n", style::rules(TYPE)))
    }

    /// The picture inside a page that has the rules of [`style`], and how tall it
    /// is.
    pub(crate) fn inside(&self) -> (String, f64) {
        (self.svg(""), self.lowest + EDGE)
    }

    fn svg(&self, style: &str) -> String {
        let height = self.lowest + EDGE;
        format!(
            "<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"drawing\" viewBox=\"0 0 {WIDTH} {height:.0}\" \
             width=\"{WIDTH}\" height=\"{height:.0}\" role=\"img\" aria-label=\"{title}\">\n\
             <title>{title}</title>\n{style}\
             <rect width=\"{WIDTH}\" height=\"{height:.0}\" class=\"paper\"/>\n{}</svg>\n",
            self.body,
            title = escaped(&self.title),
        )
    }
}

/// Where words stand.
fn area_of(x: f64, y: f64, anchor: Anchor, words: &str) -> Area {
    let width = measure::width(words) * TYPE;
    let left = match anchor {
        Anchor::Start => x,
        Anchor::Middle => x - width / 2.0,
        Anchor::End => x - width,
    };
    Area {
        left,
        right: left + width,
        top: y - measure::OVER * TYPE,
        bottom: y + measure::UNDER * TYPE,
    }
}
