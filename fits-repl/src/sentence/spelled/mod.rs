//! Numbers in words, as figures: `three quarter inch`, `twenty point oh two
//! five`, `one and a half thou`, `a thou under 5/8`.

mod ranges;
mod reader;
mod words;

use crate::sentence::spelled::{
    ranges::{about_a_size, ranges},
    reader::Reader,
    words::{LEADS, SIZED, digit, tens, words},
};

/// The number that one word says: `seven`, `forty`.
pub(crate) fn number(word: &str) -> Option<u32> {
    digit(word).or_else(|| tens(word))
}

/// The line with its numbers in words as figures.
pub(super) fn figures(line: &str) -> String {
    let words = words(line);
    let reader = Reader { words: &words };
    let mut text = String::with_capacity(line.len());
    let (mut at, mut from) = (0, 0);
    while at < words.len() {
        if let Some((thread, after)) = reader.class(at).or_else(|| reader.thread(at)) {
            text.push_str(&line[from..words[at].from]);
            text.push_str(&thread);
            from = words[after - 1].to;
            at = after;
            continue;
        }
        let is_inch = words[at].text == "inch"
            && (at == 0 || !words[at].follows || LEADS.contains(&&*words[at - 1].text))
            && (matches!(
                reader.next(at + 1),
                "od" | "long"
                    | "id"
                    | "dia"
                    | "thick"
                    | "press"
                    | "outside"
                    | "inside"
                    | "tube"
                    | "across"
            ) || SIZED.contains(&reader.next(at + 1)))
            && !line[..words[at].from].trim_end().ends_with(|c: char| c.is_ascii_digit());
        let found = if is_inch { Some(("1 inch".into(), at + 1)) } else { reader.number(at) };
        match found {
            // `a half` after a number of its own kind is left to the reader of figures.
            Some((number, after))
                if !line[..words[at].from].trim_end().ends_with(|c: char| c.is_ascii_digit())
                    || number.len() > 3 =>
            {
                text.push_str(&line[from..words[at].from]);
                text.push_str(&number);
                from = words[after - 1].to;
                at = after;
            }
            _ => at += 1,
        }
    }
    text.push_str(&line[from..]);
    ranges(&about_a_size(&text))
}

/// Threads that may have any pitch.
pub(super) const PITCHED: &[&str] =
    &["acme", "stub", "bsw", "bsf", "whitworth", "whit", "un", "uns", "me"];

/// The line with `seven fifty` as the figures it says, in thousandths of an inch or
/// as millimetres; none where none is said.
pub(super) fn hundreds(line: &str, system: super::System) -> Option<String> {
    let words = words(line);
    let reader = Reader { words: &words };
    let mut text = String::new();
    let (mut from, mut at) = (0, 0);
    while at < words.len() {
        let found = reader.hundred(at).filter(|_| {
            let before = line[..words[at].from].trim_end();
            reader.thread(at).is_none()
                && reader.fraction(at).is_none()
                && !before.ends_with(|c: char| c.is_ascii_digit())
                && !at.checked_sub(1).is_some_and(|before| {
                    matches!(reader.text(before), "point" | "oh" | "number" | "and")
                        || digit(reader.text(before)).is_some()
                })
        });
        let Some((value, is_half, after)) = found else {
            at += 1;
            continue;
        };
        text.push_str(&line[from..words[at].from]);
        let half = if is_half { "5" } else { "" };
        let figures = match system {
            super::System::Inches => format!(".{value}{half}"),
            super::System::Millimetres => format!("{}.{}{half}mm", value / 100, value % 100),
        };
        text.push_str(&figures);
        from = words[after - 1].to;
        at = after;
    }
    (from > 0).then(|| text + &line[from..])
}

#[cfg(test)]
mod tests {
    use super::figures;

    #[test]
    fn numbers_in_words() {
        for (said, figure) in [
            ("a three quarter inch hole", "a 3/4 inch hole"),
            ("inch and a quarter shaft", "1-1/4 inch shaft"),
            ("an inch and three eighths", "1-3/8 inch"),
            ("three quarters of an inch", "3/4 inch"),
            ("twenty point oh two five millimetres", "20.025 millimetres"),
            ("nought point seven five inch", "0.75 inch"),
            ("point seven fifty", ".750"),
            ("one and a half thou", "1.5 thou"),
            ("a thou and a half clear", "1.5 thou clear"),
            ("one and a quarter", "1-1/4"),
            ("half a thou", "0.5 thou"),
            ("half an inch", "1/2 inch"),
            ("twenty three thirty-seconds", "23/32"),
            ("forty millimetre bar", "40 millimetre bar"),
            ("sixty five percent", "65 percent"),
            ("six BA", "6 BA"),
            ("one to three thou", "1 to 3 thou"),
            ("quarter whitworth", "1/4 whitworth"),
            ("two thou over 5/8", "0.627in"),
            ("three tenths under half an inch", "0.4997in"),
            ("one thou under three quarter, what", "0.749in, what"),
            ("by an inch long, inch od", "by an inch long, 1 inch od"),
            ("a hundred and fifty mm", "150 mm"),
            ("between .7503 and .7505 deep", ".7503...7505 deep"),
            ("hole .7500 to .7505, now .7", "hole .7500...7505, now .7"),
            ("the collar's 20 and the tube's bore", "the collar is 20 and the tube bore"),
            ("a half inch BSP", "a 1/2 BSP"),
            ("quarter twenty tap", "1/4-20 tap"),
            ("five eights eleven", "5/8-11"),
            ("ten thirty two tap", "#10-32 tap"),
            ("5/16 18 tapped", "5/16-18 tapped"),
            ("bar 5/16 18 long", "bar 5/16 18 long"),
            // Words that are not numbers, counts, sums and tapers stay.
            ("two washers and one hub", "two washers and one hub"),
            ("half of .750", "half of .750"),
            ("test bar 3 thou over 6 in", "test bar 3 thou over 6 in"),
            ("the point is one of them", "the point is one of them"),
        ] {
            assert_eq!(figures(said), figure, "{said}");
        }
    }
}
