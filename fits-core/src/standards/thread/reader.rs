//! A place in a text, and what may stand after any thread: classes, hand,
//! starts.

use super::{Class, Designation, Form, Quality, Typed};
use crate::{
    error::Error,
    size::{Length, Number, Unit},
};

pub(super) type Found = Result<Option<(Designation, usize)>, Error>;

pub(super) struct Reader<'a> {
    pub(super) text: &'a str,
    pub(super) at: usize,
}

impl<'a> Reader<'a> {
    pub(super) fn rest(&self) -> &'a str {
        self.text.get(self.at..).unwrap_or_default()
    }

    pub(super) fn peek(&self) -> Option<u8> {
        self.rest().bytes().next()
    }

    pub(super) fn take(&mut self, wanted: &str) -> bool {
        let matched = self
            .rest()
            .as_bytes()
            .get(..wanted.len())
            .is_some_and(|start| start.eq_ignore_ascii_case(wanted.as_bytes()));
        // A match of ASCII ends between characters.
        self.at += if matched { wanted.len() } else { 0 };
        matched
    }

    pub(super) fn spaces(&mut self) {
        self.at += self.rest().bytes().take_while(|byte| *byte == b' ').count();
    }

    pub(super) fn digits(&mut self) -> Option<i64> {
        let count = self.rest().bytes().take_while(u8::is_ascii_digit).count();
        let digits = self.rest().get(..count).filter(|digits| (1..=9).contains(&digits.len()))?;
        self.at += count;
        digits.parse().ok()
    }

    /// Letters and digits up to the next other byte.
    pub(super) fn word(&self) -> &'a str {
        let rest = self.rest();
        let count = rest.bytes().take_while(u8::is_ascii_alphanumeric).count();
        rest.get(..count).unwrap_or_default()
    }

    /// Does a name end here?
    pub(super) fn is_end(&self) -> bool {
        !self.peek().is_some_and(|byte| {
            byte.is_ascii_alphanumeric()
                || matches!(byte, b'.' | b'/' | b'%' | b'"' | b'\'')
                || !byte.is_ascii()
        })
    }

    /// A comma and a digit: `1,25` is never guessed at.
    pub(super) fn is_comma_inside(&self) -> bool {
        matches!(self.rest().as_bytes(), [b',', b'0'..=b'9', ..])
    }

    /// A plain decimal.
    pub(super) fn decimal(&mut self, unit: Unit) -> Result<Option<Typed<Length>>, Error> {
        let start = self.at;
        let whole = self.rest().bytes().take_while(u8::is_ascii_digit).count();
        let point = self.rest().as_bytes().get(whole) == Some(&b'.');
        let places = self.rest().bytes().skip(whole + 1).take_while(u8::is_ascii_digit).count();
        let taken = whole + if point && places > 0 { 1 + places } else { 0 };
        // ASCII only, so it ends between characters.
        let text = self.rest().get(..taken).unwrap_or_default();
        if text.is_empty() {
            return Ok(None);
        }
        if (Reader { text: self.text, at: start + taken }).is_comma_inside() {
            return Err(Error::not_a_thread(
                "a comma inside a number can mean a decimal point or thousands",
                "write a point, as `M10x1.25`, or a space after the comma",
            )
            .at(start + taken, start + taken + 1));
        }
        let place = |error: Error| error.at(start, start + taken);
        let number = Number::scan(text).map_err(place)?;
        let Some((number, _)) = number else { return Ok(None) };
        let value = number.of(unit).map_err(place)?;
        self.at += taken;
        Ok(Some(Typed { value, at: (start, self.at) }))
    }

    pub(super) fn finish(&mut self, mut designation: Designation) -> Found {
        self.tail(&mut designation)?;
        Ok(Some((designation, self.at)))
    }

    /// Classes, hand and starts, in any order.
    fn tail(&mut self, designation: &mut Designation) -> Result<(), Error> {
        loop {
            let start = self.at;
            let mut is_dash = self.take("-");
            self.spaces();
            // `M10 - 6g`
            if !is_dash && self.at > start {
                is_dash = self.take("-");
                self.spaces();
            }
            let begin = self.at;
            if self.class(designation)? || self.hand(designation) || self.starts(designation)? {
                continue;
            }
            if is_dash && start + 1 == begin {
                return Err(Error::not_a_thread(
                    "a class, `LH` or `2 starts` belongs after the dash",
                    "put a space before what is not part of the thread",
                )
                .at(begin, begin + self.word().len()));
            }
            self.at = start;
            return Ok(());
        }
    }

    fn class(&mut self, designation: &mut Designation) -> Result<bool, Error> {
        let Some(first) = self.one_class(designation.form) else { return Ok(false) };
        let mut classes = [Some(first), None];
        if self.peek() == Some(b'/') {
            self.at += 1;
            let Some(second) = self.one_class(designation.form) else {
                return Err(Error::not_a_thread(
                    "a class is missing after the /",
                    "write the nut's class and the screw's, as `M10 6H/6g`",
                )
                .at(self.at, self.at + self.word().len()));
            };
            classes[1] = Some(second);
        }
        if let Some(earlier) = designation.classes[0] {
            return Err(Error::not_a_thread(
                format!("the class was given already: {}", earlier.value),
                "write a pair with a stroke, as `M10 6H/6g`",
            )
            .at(first.at.0, self.at));
        }
        designation.classes = classes;
        Ok(true)
    }

    fn one_class(&mut self, form: Form) -> Option<Typed<Class>> {
        let word = self.word();
        let class = Class::read(word)?.capital(form);
        let is_of = match class {
            Class::Word(Quality::Normal | Quality::Close) if form == Form::Ba => true,
            Class::Word(_) => form == Form::Whitworth,
            Class::Zones { pitch, .. } => pitch.grade > 0 || form == Form::PipeParallel,
            Class::Sole => false,
        };
        let start = self.at;
        let end = start + word.len();
        let next = self.text.as_bytes().get(end);
        if !is_of || next.is_some_and(|byte| matches!(byte, b'.' | b'%' | b'"' | b'\'')) {
            return None;
        }
        self.at = end;
        Some(Typed { value: class, at: (start, end) })
    }

    fn hand(&mut self, designation: &mut Designation) -> bool {
        let word = self.word();
        if word.eq_ignore_ascii_case("lh") {
            self.at += word.len();
        } else if word.eq_ignore_ascii_case("left") {
            self.at += word.len();
            let before = self.at;
            if !self.take("-") {
                self.spaces();
            }
            if self.word().eq_ignore_ascii_case("hand") {
                self.at += 4;
            } else {
                self.at = before;
            }
        } else {
            return false;
        }
        designation.left = true;
        true
    }

    fn starts(&mut self, designation: &mut Designation) -> Result<bool, Error> {
        let start = self.at;
        let count = self.digits();
        if !self.take("-") {
            self.spaces();
        }
        let word = self.word();
        let is_starts = word.eq_ignore_ascii_case("starts") || word.eq_ignore_ascii_case("start");
        let Some(count) = count.filter(|_| is_starts) else {
            self.at = start;
            return Ok(false);
        };
        self.at += word.len();
        match u8::try_from(count) {
            Ok(count @ 1..=20) if designation.starts == 1 || designation.starts == count => {
                designation.starts = count;
                Ok(true)
            }
            Ok(1..=20) => Err(Error::not_a_thread(
                format!("lead and pitch make {} starts, not {count}", designation.starts),
                "give either lead and pitch or the starts",
            )
            .at(start, self.at)),
            _ => Err(Error::not_a_thread(
                format!("a thread of {count} starts"),
                "from 1 to 20 starts are read",
            )
            .at(start, self.at)),
        }
    }
}
