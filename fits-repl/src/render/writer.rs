//! JSON text, byte by byte what `serde_json` writes: but names of fields and plain
//! text are copied, not looked through byte by byte, and what a terminal would obey is
//! escaped.

use std::io::Write as _;

use serde::{
    Serialize, Serializer,
    ser::{
        SerializeMap, SerializeSeq, SerializeStruct, SerializeStructVariant, SerializeTuple,
        SerializeTupleStruct, SerializeTupleVariant,
    },
};
use serde_json::Error;

use crate::render::printable::is_obeyed;

/// Appends a value as JSON. The maps of our types have text for keys, and their fields
/// plain names.
pub(crate) fn append<T: Serialize + ?Sized>(out: &mut Vec<u8>, value: &T) -> Result<(), Error> {
    value.serialize(Writer(out))
}

struct Writer<'a>(&'a mut Vec<u8>);

/// An object or a list that was begun.
struct Begun<'a> {
    out: &'a mut Vec<u8>,
    is_first: bool,
    end: &'static str,
}

impl<'a> Writer<'a> {
    fn begin(self, start: &str, end: &'static str) -> Begun<'a> {
        self.0.extend_from_slice(start.as_bytes());
        Begun { out: self.0, is_first: true, end }
    }

    /// `{"name":`, and what ends it.
    fn begin_named(self, name: &str, start: &str, end: &'static str) -> Begun<'a> {
        self.0.push(b'{');
        named(self.0, name);
        self.begin(start, end)
    }
}

impl Begun<'_> {
    fn comma(&mut self) {
        if !std::mem::take(&mut self.is_first) {
            self.out.push(b',');
        }
    }

    fn element<T: Serialize + ?Sized>(&mut self, value: &T) -> Result<(), Error> {
        self.comma();
        append(self.out, value)
    }

    fn field<T: Serialize + ?Sized>(&mut self, name: &str, value: &T) -> Result<(), Error> {
        self.comma();
        named(self.out, name);
        append(self.out, value)
    }

    fn finish(self) {
        self.out.extend_from_slice(self.end.as_bytes());
    }
}

fn named(out: &mut Vec<u8>, name: &str) {
    out.push(b'"');
    out.extend_from_slice(name.as_bytes());
    out.extend_from_slice(b"\":");
}

fn text(out: &mut Vec<u8>, text: &str) {
    out.push(b'"');
    // A run of bytes without an early end is looked at many at once.
    let is_plain = text
        .bytes()
        .fold(true, |plain, byte| plain & matches!(byte, b' ' | b'!' | b'#'..=b'[' | b']'..=b'~'));
    if is_plain {
        out.extend_from_slice(text.as_bytes());
    } else {
        for c in text.chars() {
            // Writing to bytes in memory does not fail.
            let _ = match c {
                '"' | '\\' => write!(out, "\\{c}"),
                '\n' => out.write_all(b"\\n"),
                '\r' => out.write_all(b"\\r"),
                '\t' => out.write_all(b"\\t"),
                '\u{8}' => out.write_all(b"\\b"),
                '\u{c}' => out.write_all(b"\\f"),
                c if is_obeyed(c) => write!(out, "\\u{:04x}", u32::from(c)),
                c => write!(out, "{c}"),
            };
        }
    }
    out.push(b'"');
}

macro_rules! whole_numbers {
    ($($name:ident($typed:ty)),+) => {
        $(fn $name(self, value: $typed) -> Result<(), Error> {
            write!(self.0, "{value}").map_err(Error::io)
        })+
    };
}

impl<'a> Serializer for Writer<'a> {
    type Ok = ();
    type Error = Error;
    type SerializeSeq = Begun<'a>;
    type SerializeTuple = Begun<'a>;
    type SerializeTupleStruct = Begun<'a>;
    type SerializeTupleVariant = Begun<'a>;
    type SerializeMap = Begun<'a>;
    type SerializeStruct = Begun<'a>;
    type SerializeStructVariant = Begun<'a>;

    whole_numbers! {
        serialize_bool(bool), serialize_i8(i8), serialize_i16(i16), serialize_i32(i32),
        serialize_i64(i64), serialize_u8(u8), serialize_u16(u16), serialize_u32(u32),
        serialize_u64(u64)
    }

    fn serialize_f32(self, value: f32) -> Result<(), Error> {
        serde_json::to_writer(self.0, &value)
    }
    fn serialize_f64(self, value: f64) -> Result<(), Error> {
        serde_json::to_writer(self.0, &value)
    }
    fn serialize_char(self, value: char) -> Result<(), Error> {
        self.serialize_str(value.encode_utf8(&mut [0; 4]))
    }
    fn serialize_str(self, value: &str) -> Result<(), Error> {
        text(self.0, value);
        Ok(())
    }
    fn serialize_bytes(self, value: &[u8]) -> Result<(), Error> {
        value.serialize(self)
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
    fn serialize_unit_variant(self, _: &str, _: u32, variant: &'static str) -> Result<(), Error> {
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
        let begun = self.begin_named(variant, "", "}");
        append(begun.out, value)?;
        begun.finish();
        Ok(())
    }
    fn serialize_seq(self, _: Option<usize>) -> Result<Begun<'a>, Error> {
        Ok(self.begin("[", "]"))
    }
    fn serialize_tuple(self, _: usize) -> Result<Begun<'a>, Error> {
        Ok(self.begin("[", "]"))
    }
    fn serialize_tuple_struct(self, _: &'static str, _: usize) -> Result<Begun<'a>, Error> {
        Ok(self.begin("[", "]"))
    }
    fn serialize_tuple_variant(
        self,
        _: &'static str,
        _: u32,
        variant: &'static str,
        _: usize,
    ) -> Result<Begun<'a>, Error> {
        Ok(self.begin_named(variant, "[", "]}"))
    }
    fn serialize_map(self, _: Option<usize>) -> Result<Begun<'a>, Error> {
        Ok(self.begin("{", "}"))
    }
    fn serialize_struct(self, _: &'static str, _: usize) -> Result<Begun<'a>, Error> {
        Ok(self.begin("{", "}"))
    }
    fn serialize_struct_variant(
        self,
        _: &'static str,
        _: u32,
        variant: &'static str,
        _: usize,
    ) -> Result<Begun<'a>, Error> {
        Ok(self.begin_named(variant, "{", "}}"))
    }
}

macro_rules! begun {
    ($($kind:ident $name:ident($($key:ident: &'static str)?) => $does:ident),+ $(,)?) => {
        $(impl $kind for Begun<'_> {
            type Ok = ();
            type Error = Error;
            fn $name<T: Serialize + ?Sized>(
                &mut self,
                $($key: &'static str,)?
                value: &T,
            ) -> Result<(), Error> {
                self.$does($($key,)? value)
            }
            fn end(self) -> Result<(), Error> {
                self.finish();
                Ok(())
            }
        })+
    };
}

begun! {
    SerializeSeq serialize_element() => element,
    SerializeTuple serialize_element() => element,
    SerializeTupleStruct serialize_field() => element,
    SerializeTupleVariant serialize_field() => element,
    SerializeStruct serialize_field(key: &'static str) => field,
    SerializeStructVariant serialize_field(key: &'static str) => field,
}

impl SerializeMap for Begun<'_> {
    type Ok = ();
    type Error = Error;
    fn serialize_key<T: Serialize + ?Sized>(&mut self, key: &T) -> Result<(), Error> {
        self.element(key)
    }
    fn serialize_value<T: Serialize + ?Sized>(&mut self, value: &T) -> Result<(), Error> {
        self.out.push(b':');
        append(self.out, value)
    }
    fn end(self) -> Result<(), Error> {
        self.finish();
        Ok(())
    }
}
