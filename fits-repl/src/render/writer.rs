//! The same bytes as `serde_json`'s, written with fewer steps: an answer has some forty
//! figures and eighty names, and a batch has many answers. What is not plain is left
//! to `serde_json`.

use serde::{
    Serialize, Serializer,
    ser::{self, Error as _},
};
use serde_json::Error;

use crate::render::json::ForTerminal;

/// Writes one value.
pub(super) struct Writer<'a>(pub(super) &'a mut Vec<u8>);

/// The fields of an object, or the elements of a list.
pub(super) struct Inside<'a> {
    out: &'a mut Vec<u8>,
    has_any: bool,
    end: &'static [u8],
}

/// As `serde_json` has it.
fn as_it_is<T: Serialize + ?Sized>(out: &mut Vec<u8>, value: &T) -> Result<(), Error> {
    value.serialize(&mut serde_json::Serializer::with_formatter(out, ForTerminal))
}

/// What a millimetre has of the smallest steps of a length.
const STEPS: f64 = 1e7;

/// A number that is a count of ten-millionths, as nearly every one is. Of fifteen digits
/// none are lost in a floating number, so the count's digits are the fewest that tell it.
fn counted(out: &mut Vec<u8>, value: f64) -> bool {
    if value.to_bits() == 0 {
        out.extend_from_slice(b"0.0");
        return true;
    }
    let size = value.abs();
    // Less is written with an exponent, and no length has more.
    if !(1e-5..1e7).contains(&size) {
        return false;
    }
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "held above")]
    let count = (size * STEPS + 0.5) as u64;
    #[allow(clippy::cast_precision_loss, reason = "held above")]
    let is_count = (count as f64 / STEPS).to_bits() == size.to_bits();
    if is_count {
        write_count(out, count, value < 0.0);
    }
    is_count
}

/// A count of ten-millionths below ten million, without the noughts behind it.
fn write_count(out: &mut Vec<u8>, count: u64, is_negative: bool) {
    const POINT: usize = 8;
    const STEPS: u64 = 10_000_000;
    // As long again, so that as many bytes can be copied from any digit on.
    const ROOM: usize = 16;
    let mut text = *b"-0000000.0000000                ";
    #[allow(clippy::cast_possible_truncation, reason = "eight digits at most")]
    let (mut whole, mut part) = ((count / STEPS) as u32, (count % STEPS) as u32);
    let last_digit = |number: &mut u32| {
        #[allow(clippy::cast_possible_truncation, reason = "a digit")]
        let digit = b'0' + (*number % 10) as u8;
        *number /= 10;
        digit
    };
    // Most have whole thousandths.
    let mut end = POINT + 8;
    if part % 10_000 == 0 {
        part /= 10_000;
        end -= 4;
    }
    for place in text[POINT + 1..end].iter_mut().rev() {
        *place = last_digit(&mut part);
    }
    while end > POINT + 2 && text[end - 1] == b'0' {
        end -= 1;
    }
    let mut from = POINT;
    while from == POINT || whole > 0 {
        from -= 1;
        text[from] = last_digit(&mut whole);
    }
    if is_negative {
        from -= 1;
        text[from] = b'-';
    }
    // A copy of a length that is known takes one step; what is behind is cut off.
    let length = out.len() + end - from;
    let copied: [u8; ROOM] = std::array::from_fn(|at| text[from + at]);
    out.extend_from_slice(&copied);
    out.truncate(length);
}

/// Are all bytes written as they are: printable, and neither a quote nor a backslash?
fn is_plain(text: &[u8]) -> bool {
    const ONES: u64 = 0x0101_0101_0101_0101;
    const HIGH: u64 = ONES << 7;
    // Eight bytes at once; each test sets the high bit of a byte that is not plain, and
    // perhaps of others if there is one.
    let is_odd = |bytes: u64| {
        let is = |byte: u64| {
            let differs = bytes ^ (ONES * byte);
            differs.wrapping_sub(ONES) & !differs
        };
        let is_control = bytes.wrapping_sub(ONES * 0x20) & !bytes;
        (bytes | is_control | is(0x22) | is(0x5c) | is(0x7f)) & HIGH != 0
    };
    let (eights, _) = text.as_chunks::<8>();
    let is_long = eights.iter().any(|eight| is_odd(u64::from_le_bytes(*eight)));
    // The last eight once more, where there are so many.
    let last = text.last_chunk::<8>().copied().unwrap_or_else(|| {
        let mut padded = [b' '; 8];
        padded[..text.len()].copy_from_slice(text);
        padded
    });
    !is_long && !is_odd(u64::from_le_bytes(last))
}

impl<'a> Writer<'a> {
    fn opened(self, open: &'static [u8], end: &'static [u8]) -> Inside<'a> {
        self.0.extend_from_slice(open);
        Inside { out: self.0, has_any: false, end }
    }

    /// An object of one field, whose value comes next.
    fn variant(self, name: &str) -> Result<Self, Error> {
        self.0.push(b'{');
        Writer(self.0).serialize_str(name)?;
        self.0.push(b':');
        Ok(self)
    }
}

macro_rules! rare {
    ($($name:ident($typed:ty)),+) => {
        $(fn $name(self, value: $typed) -> Result<(), Error> {
            as_it_is(self.0, &value)
        })+
    };
}

impl<'a> Serializer for Writer<'a> {
    type Ok = ();
    type Error = Error;
    type SerializeSeq = Inside<'a>;
    type SerializeTuple = Inside<'a>;
    type SerializeTupleStruct = Inside<'a>;
    type SerializeTupleVariant = Inside<'a>;
    type SerializeMap = Inside<'a>;
    type SerializeStruct = Inside<'a>;
    type SerializeStructVariant = Inside<'a>;

    rare! {
        serialize_u8(u8), serialize_u16(u16), serialize_u32(u32), serialize_u64(u64),
        serialize_i8(i8), serialize_i16(i16), serialize_i32(i32), serialize_i64(i64),
        serialize_i128(i128), serialize_u128(u128), serialize_f32(f32), serialize_char(char),
        serialize_bytes(&[u8])
    }

    fn serialize_bool(self, value: bool) -> Result<(), Error> {
        self.0.extend_from_slice(if value { b"true" } else { b"false" });
        Ok(())
    }
    fn serialize_f64(self, value: f64) -> Result<(), Error> {
        if counted(self.0, value) { Ok(()) } else { as_it_is(self.0, &value) }
    }
    fn serialize_str(self, value: &str) -> Result<(), Error> {
        if !is_plain(value.as_bytes()) {
            return as_it_is(self.0, value);
        }
        self.0.reserve(value.len() + 2);
        self.0.push(b'"');
        self.0.extend_from_slice(value.as_bytes());
        self.0.push(b'"');
        Ok(())
    }
    fn serialize_none(self) -> Result<(), Error> {
        self.serialize_unit()
    }
    fn serialize_some<T: Serialize + ?Sized>(self, value: &T) -> Result<(), Error> {
        value.serialize(self)
    }
    fn serialize_unit(self) -> Result<(), Error> {
        self.0.extend_from_slice(b"null");
        Ok(())
    }
    fn serialize_unit_struct(self, _: &'static str) -> Result<(), Error> {
        self.serialize_unit()
    }
    fn serialize_unit_variant(
        self,
        _: &'static str,
        _: u32,
        variant: &'static str,
    ) -> Result<(), Error> {
        self.serialize_str(variant)
    }
    fn serialize_newtype_struct<T: Serialize + ?Sized>(
        self,
        _: &'static str,
        value: &T,
    ) -> Result<(), Error> {
        value.serialize(self)
    }
    fn serialize_newtype_variant<T: Serialize + ?Sized>(
        self,
        _: &'static str,
        _: u32,
        variant: &'static str,
        value: &T,
    ) -> Result<(), Error> {
        let Writer(out) = self.variant(variant)?;
        value.serialize(Writer(out))?;
        out.push(b'}');
        Ok(())
    }
    fn serialize_seq(self, _: Option<usize>) -> Result<Inside<'a>, Error> {
        Ok(self.opened(b"[", b"]"))
    }
    fn serialize_tuple(self, _: usize) -> Result<Inside<'a>, Error> {
        Ok(self.opened(b"[", b"]"))
    }
    fn serialize_tuple_struct(self, _: &'static str, _: usize) -> Result<Inside<'a>, Error> {
        Ok(self.opened(b"[", b"]"))
    }
    fn serialize_tuple_variant(
        self,
        _: &'static str,
        _: u32,
        variant: &'static str,
        _: usize,
    ) -> Result<Inside<'a>, Error> {
        Ok(self.variant(variant)?.opened(b"[", b"]}"))
    }
    fn serialize_map(self, _: Option<usize>) -> Result<Inside<'a>, Error> {
        Ok(self.opened(b"{", b"}"))
    }
    fn serialize_struct(self, _: &'static str, _: usize) -> Result<Inside<'a>, Error> {
        Ok(self.opened(b"{", b"}"))
    }
    fn serialize_struct_variant(
        self,
        _: &'static str,
        _: u32,
        variant: &'static str,
        _: usize,
    ) -> Result<Inside<'a>, Error> {
        Ok(self.variant(variant)?.opened(b"{", b"}}"))
    }
}

impl Inside<'_> {
    fn part(&mut self) {
        if self.has_any {
            self.out.push(b',');
        }
        self.has_any = true;
    }

    fn close(self) {
        self.out.extend_from_slice(self.end);
    }

    fn element<T: Serialize + ?Sized>(&mut self, value: &T) -> Result<(), Error> {
        self.part();
        value.serialize(Writer(self.out))
    }

    /// A field of a type of ours: there is nothing in its name to look at.
    fn field<T: Serialize + ?Sized>(&mut self, name: &str, value: &T) -> Result<(), Error> {
        // Enough for most values, too.
        self.out.reserve(name.len() + 32);
        if self.has_any {
            self.out.push(b',');
        }
        self.out.push(b'"');
        self.has_any = true;
        self.out.extend_from_slice(name.as_bytes());
        self.out.extend_from_slice(b"\":");
        value.serialize(Writer(self.out))
    }
}

macro_rules! inside {
    ($($kind:ident $name:ident($($key:ident)?) $with:ident),+) => {
        $(impl ser::$kind for Inside<'_> {
            type Ok = ();
            type Error = Error;
            fn $name<T: Serialize + ?Sized>(
                &mut self,
                $($key: &'static str,)?
                value: &T,
            ) -> Result<(), Error> {
                self.$with($($key,)? value)
            }
            fn end(self) -> Result<(), Error> {
                self.close();
                Ok(())
            }
        })+
    };
}

inside! {
    SerializeSeq serialize_element() element, SerializeTuple serialize_element() element,
    SerializeTupleStruct serialize_field() element,
    SerializeTupleVariant serialize_field() element,
    SerializeStruct serialize_field(key) field, SerializeStructVariant serialize_field(key) field
}

impl ser::SerializeMap for Inside<'_> {
    type Ok = ();
    type Error = Error;
    fn serialize_key<T: Serialize + ?Sized>(&mut self, key: &T) -> Result<(), Error> {
        self.part();
        let start = self.out.len();
        key.serialize(Writer(self.out))?;
        let is_text = self.out.get(start) == Some(&b'"');
        is_text.then_some(()).ok_or_else(|| Error::custom("a key is text"))
    }
    fn serialize_value<T: Serialize + ?Sized>(&mut self, value: &T) -> Result<(), Error> {
        self.out.push(b':');
        value.serialize(Writer(self.out))
    }
    fn end(self) -> Result<(), Error> {
        self.close();
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn same<T: Serialize + ?Sized>(value: &T) {
        let (mut ours, mut theirs) = (Vec::new(), Vec::new());
        value.serialize(Writer(&mut ours)).expect("it is written");
        as_it_is(&mut theirs, value).expect("it is written");
        assert_eq!(String::from_utf8(ours), String::from_utf8(theirs));
    }

    #[test]
    fn numbers_are_written_as_before() {
        let ends =
            [0.0_f64, -0.0, 1e-5, 9.999_999e-6, 1e-7, 1e7, 9_999_999.999_999_9, 1e8, 1e15, 1e16];
        for value in ends {
            same(&value);
            same(&-value);
            same(&f64::from_bits(value.to_bits() + 1));
            same(&f64::from_bits(value.to_bits().saturating_sub(1)));
        }
        same(&[f64::NAN, f64::INFINITY, f64::MIN, f64::MIN_POSITIVE, 0.1 + 0.2, 1.0 / 3.0]);
        // Counts of every length, and the numbers beside them, drawn the same every time.
        let mut drawn = 0x9e37_79b9_7f4a_7c15_u64;
        for round in 0..400_000_u32 {
            drawn ^= drawn << 13;
            drawn ^= drawn >> 7;
            drawn ^= drawn << 17;
            let zeros = 10_u64.pow(round % 8);
            #[allow(clippy::cast_precision_loss, reason = "as a length does it")]
            let value = ((drawn >> (round % 64)) / zeros * zeros) as f64 / STEPS;
            same(&value);
            same(&-value);
            same(&f64::from_bits(value.to_bits() ^ 1));
            same(&f64::from_bits(drawn));
            same(&drawn);
        }
        for count in 0..100_000_u32 {
            same(&(f64::from(count) / STEPS));
        }
    }

    #[test]
    fn texts_and_shapes_are_written_as_before() {
        #[derive(Serialize)]
        #[serde(tag = "answer", rename_all = "snake_case")]
        enum Tagged {
            One(Whole),
        }
        #[derive(Serialize)]
        struct Whole {
            first: Option<u8>,
            #[serde(flatten)]
            rest: std::collections::BTreeMap<String, [i64; 2]>,
            #[serde(skip_serializing_if = "Vec::is_empty")]
            none: Vec<u8>,
            shapes: Vec<Shape>,
        }
        #[derive(Serialize)]
        enum Shape {
            Unit,
            New(f64),
            Two(bool, char),
            Fields { at: (), text: &'static str },
        }
        for c in (0..=0x2fff).filter_map(char::from_u32) {
            same(&format!("a{c}\"b\\{c}"));
            same(&c);
        }
        // A byte that is not plain, or is, at every place of texts of every length.
        for length in 1..=24 {
            for at in 0..length {
                for c in (0..=0xff).filter_map(char::from_u32) {
                    let text: String = (0..length).map(|i| if i == at { c } else { '~' }).collect();
                    same(&*text);
                }
            }
        }
        let fields = Shape::Fields { at: (), text: "\u{7f}\u{9b}\u{202e}\n\u{b5}" };
        let shapes = vec![Shape::Unit, Shape::New(0.25), Shape::Two(true, '"'), fields];
        let rest = [("a\"b".to_owned(), [-1, i64::MIN])].into();
        same(&Tagged::One(Whole { first: None, rest, none: Vec::new(), shapes }));
        same(&Vec::<u8>::new());
        same(&std::collections::BTreeMap::<String, u8>::new());
        same("");
    }
}
