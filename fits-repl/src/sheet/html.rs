//! A page in HTML, written piece by piece; each piece knows about how tall it is.

use std::{fmt::Write as _, ops::Range};

use crate::render::{
    draw::{Drawing, LINE, TYPE, WIDTH, measure, style},
    markup::escaped,
};

/// A line of words, with the style sheet's height of a line.
const ROW: f64 = TYPE * 1.2 + 0.5;

const SHEET: &str = include_str!("sheet.css");

/// A piece of a page that is not parted.
#[derive(Debug, Default)]
pub(super) struct Block {
    html: String,
    /// In pixels of CSS, rather too much than too little.
    pub(super) tall: f64,
    /// A picture that the assembly page may have instead: its place, how tall it
    /// is, and the joint that it is of.
    spare: Option<(Range<usize>, f64, Option<usize>)>,
}

/// A cell of a table.
#[derive(Clone, Debug)]
pub(super) enum Cell {
    Words(String),
    /// To be written in by hand.
    Box,
}

impl From<String> for Cell {
    fn from(words: String) -> Self {
        Self::Words(words)
    }
}

impl From<&str> for Cell {
    fn from(words: &str) -> Self {
        Self::Words(words.to_owned())
    }
}

impl Block {
    /// A heading: the first level is the page's.
    pub(super) fn heading(&mut self, level: u8, words: &str) {
        let size = if level == 1 { 28.0 } else { 22.0 };
        self.tall += lines(words, size) * size * 1.2 + if level == 1 { 8.0 } else { 14.0 };
        let _ = writeln!(self.html, "<h{level}>{}</h{level}>", escaped(words));
    }

    /// Goes on with another block on the same page.
    pub(super) fn append(&mut self, other: &Self) {
        self.html.push_str(&other.html);
        self.tall += other.tall;
    }

    /// A line, or a few.
    pub(super) fn say(&mut self, words: &str) {
        self.said("", words);
    }

    /// What to be careful of. The mark says so where the type cannot.
    pub(super) fn care(&mut self, words: &str) {
        self.said(" class=\"care\"", &format!("! {words}"));
    }

    fn said(&mut self, class: &str, words: &str) {
        self.tall += lines(words, TYPE) * ROW + 3.0;
        let _ = writeln!(self.html, "<p{class}>{}</p>", escaped(words));
    }

    /// The one size to work to, in both units.
    pub(super) fn cut_to(&mut self, lead: &str, [size, other]: &[String; 2]) {
        self.tall += 48.0 * lines(&format!("{lead} {size} {other}"), 30.0);
        let _ = writeln!(
            self.html,
            "<p class=\"cut\">{} <strong>{}</strong> ({})</p>",
            escaped(lead),
            escaped(size),
            escaped(other)
        );
    }

    pub(super) fn drawing(&mut self, drawing: &Drawing) {
        let (svg, tall) = drawing.inside();
        self.tall += tall + 1.0;
        self.html.push_str(&svg);
    }

    /// A drawing of a joint, which the assembly page may have instead.
    pub(super) fn spare_drawing(&mut self, drawing: &Drawing, mate: Option<usize>) {
        let (from, before) = (self.html.len(), self.tall);
        self.drawing(drawing);
        self.spare = Some((from..self.html.len(), self.tall - before, mate));
    }

    /// The joint of the drawing that it may leave to the assembly page.
    pub(super) fn joint(&self) -> Option<usize> {
        self.spare.as_ref()?.2
    }

    /// Leaves the drawing of a joint to the assembly page.
    pub(super) fn slim(&mut self) {
        if let Some((place, tall, _)) = self.spare.take_if(|(_, _, mate)| mate.is_some()) {
            self.html.replace_range(place, "");
            self.tall -= tall;
        }
    }

    /// Room to write how and when it was measured.
    pub(super) fn bench(&mut self) {
        self.lines("bench", &["temperature", "instrument", "date"]);
    }

    /// Words with a line to write on behind each.
    pub(super) fn lines(&mut self, class: &str, words: &[&str]) {
        self.tall += LINE + 20.0;
        let lines: Vec<String> = words.iter().map(|it| format!("{it} <span></span>")).collect();
        let _ = writeln!(self.html, "<p class=\"{class}\">{}</p>", lines.join(" "));
    }

    /// A table: its caption, the heads of its columns (none where each row has
    /// its own head), and its rows, the first cell of which is the row's head.
    pub(super) fn table(&mut self, caption: &str, heads: &[&str], rows: &[Vec<Cell>]) {
        if rows.is_empty() {
            return;
        }
        let wide = widths(heads, rows);
        let row_of = |words: &mut dyn Iterator<Item = &str>| {
            let counts = words.zip(&wide).map(|(words, wide)| measure::lines(words, *wide).len());
            let most = counts.max().unwrap_or(1);
            (f64::from(u32::try_from(most).unwrap_or(1)) * ROW + 4.0).max(28.0)
        };
        self.tall += lines(caption, TYPE) * ROW + 12.0;
        let _ = writeln!(self.html, "<table><caption>{}</caption>", escaped(caption));
        if !heads.is_empty() {
            self.tall += row_of(&mut heads.iter().copied());
            self.html.push_str("<thead><tr>");
            for head in heads {
                let _ = write!(self.html, "<th scope=\"col\">{}</th>", escaped(head));
            }
            self.html.push_str("</tr></thead>\n");
        }
        self.html.push_str("<tbody>\n");
        for row in rows {
            self.tall += row_of(&mut row.iter().map(|cell| match cell {
                Cell::Words(words) => words.as_str(),
                Cell::Box => "",
            }));
            self.html.push_str("<tr>");
            for (at, cell) in row.iter().enumerate() {
                let _ = match cell {
                    Cell::Words(words) if at == 0 => {
                        write!(self.html, "<th scope=\"row\">{}</th>", escaped(words))
                    }
                    Cell::Words(words) => write!(self.html, "<td>{}</td>", escaped(words)),
                    Cell::Box => write!(self.html, "<td class=\"box\"></td>"),
                };
            }
            self.html.push_str("</tr>\n");
        }
        self.html.push_str("</tbody></table>\n");
    }
}

/// How wide the words of each column may be, in sizes of the type: each has room
/// by its longest cell, as a browser shares it out, a box by its least width.
fn widths(heads: &[&str], rows: &[Vec<Cell>]) -> Vec<f64> {
    const EDGES: f64 = 18.0;
    const BOX: f64 = 80.0;
    let columns = rows.iter().map(Vec::len).max().unwrap_or(1).max(1);
    let mut wanted: Vec<f64> = (0..columns)
        .map(|at| heads.get(at).map_or(0.0, |head| measure::width(head) * TYPE * 1.1))
        .collect();
    let mut is_box = vec![false; columns];
    for row in rows {
        for (at, cell) in row.iter().enumerate() {
            let bold = if at == 0 { 1.1 } else { 1.0 };
            match cell {
                Cell::Words(words) => {
                    wanted[at] = wanted[at].max(measure::width(words) * TYPE * bold);
                }
                Cell::Box => is_box[at] = true,
            }
        }
    }
    let boxes: f64 = is_box.iter().map(|is| if *is { BOX } else { 0.0 }).sum();
    let edges = EDGES * f64::from(u32::try_from(columns).unwrap_or(1));
    let room = WIDTH - edges - boxes;
    // A box takes no less than its width; its words have it too.
    let over: Vec<f64> = wanted
        .iter()
        .zip(&is_box)
        .map(|(wanted, is)| (wanted - if *is { BOX } else { 0.0 }).max(0.0))
        .collect();
    let all: f64 = over.iter().sum();
    let share = if all > room { room * 0.95 / all } else { 1.0 };
    over.iter()
        .zip(&is_box)
        .map(|(over, is)| (over * share + if *is { BOX } else { 0.0 }) / TYPE + 0.1)
        .collect()
}

fn lines(words: &str, size: f64) -> f64 {
    let count = measure::lines(words, WIDTH / size).len();
    f64::from(u32::try_from(count).unwrap_or(u32::MAX))
}

/// One sheet of paper.
#[derive(Debug)]
pub(super) struct Page {
    /// What all of its blocks are about: the part.
    pub(super) name: String,
    pub(super) blocks: Vec<Block>,
}

/// What fits on a page: Letter between margins of 8 mm is 995 pixels of CSS
/// tall, A4 more; the line on top and some air come off.
const ROOM: f64 = 955.0;

/// Are there too many for one page?
pub(super) fn overflows(blocks: &[Block]) -> bool {
    blocks.iter().map(|block| block.tall).sum::<f64>() > ROOM
}

/// Blocks on as few pages as hold them, in order.
pub(super) fn pages(name: &str, blocks: Vec<Block>) -> Vec<Page> {
    let mut pages: Vec<Page> = Vec::new();
    let mut room = 0.0;
    for block in blocks {
        if let Some(page) = pages.last_mut().filter(|_| block.tall <= room) {
            room -= block.tall;
            page.blocks.push(block);
        } else {
            room = ROOM - block.tall;
            pages.push(Page { name: name.to_owned(), blocks: vec![block] });
        }
    }
    pages
}

/// The whole document.
pub(super) fn document(title: &str, pages: &[Page]) -> String {
    let (day, night) = (&style::DAY, &style::NIGHT);
    let mut out = format!(
        "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n\
         <meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n\
         <title>{title}</title>\n<style>\n{SHEET}\
         body{{font-family:{faces};background:{};color:{}}}\n\
         {dark}{{body{{background:{};color:{}}}}}\n{}</style>\n</head>\n<body>\n<main>\n",
        day.paper,
        day.ink,
        night.paper,
        night.ink,
        style::rules(TYPE),
        title = escaped(title),
        faces = style::FACES,
        dark = style::DARK,
    );
    let of = pages.len();
    for (number, page) in pages.iter().enumerate() {
        let number = number + 1;
        // The first block opens with the heading of the page.
        let _ = writeln!(
            out,
            "<section class=\"page\" aria-label=\"{}, page {number}\">\n\
             <div class=\"where\"><span>{}</span><span>page {number} of {of}</span></div>",
            escaped(&page.name),
            escaped(title),
        );
        for block in &page.blocks {
            let _ = writeln!(out, "<div class=\"block\">\n{}</div>", block.html);
        }
        out.push_str("</section>\n");
    }
    out.push_str("</main>\n</body>\n</html>\n");
    out
}
