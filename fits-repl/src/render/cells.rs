//! Fields of an answer by their path, without the rest of it.

use std::fmt;

use serde::{
    Serialize, Serializer,
    ser::{self, Impossible},
};

use crate::render::json;

/// What is wanted of an object or a list: its fields by their names, of a list by
/// their places, from 0.
#[derive(Clone, Debug, Default)]
pub(crate) struct Wanted {
    /// The cells that this very field is written into.
    cells: Vec<usize>,
    fields: Vec<(String, Self)>,
}

impl Wanted {
    /// Wants the field at a path for a cell.
    pub(crate) fn add(&mut self, path: &str, cell: usize) {
        let field = path.split('.').fold(self, |inside, name| {
            let known = inside.fields.iter().position(|(known, _)| known == name);
            let at = known.unwrap_or_else(|| {
                inside.fields.push((name.to_owned(), Self::default()));
                inside.fields.len() - 1
            });
            &mut inside.fields[at].1
        });
        field.cells.push(cell);
    }

    /// Writes each field that is wanted into its cells: text as it is, `null` and
    /// what is not there as nothing, all else as JSON. Says whether every one was
    /// found.
    pub(crate) fn pick<T: Serialize>(&self, value: &T, cells: &mut [Vec<u8>]) -> bool {
        self.fields.is_empty() || self.walk(value, cells)
    }

    fn walk<T: Serialize + ?Sized>(&self, value: &T, cells: &mut [Vec<u8>]) -> bool {
        let mut missing = self.fields.len();
        let walk = Walk {
            wanted: self,
            cells,
            missing: &mut missing,
            met: 0,
            place: 0,
            key: String::new(),
        };
        // It ends early where all is found.
        let _ = value.serialize(walk);
        missing == 0
    }
}

/// The walk ends early: all that is wanted was come by. Nothing of ours
/// fails to be written.
#[derive(Debug)]
struct Error;

impl fmt::Display for Error {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("all is found")
    }
}

impl std::error::Error for Error {}

impl ser::Error for Error {
    fn custom<T: fmt::Display>(_: T) -> Self {
        Self
    }
}

/// At one object or list.
struct Walk<'a, 'c> {
    wanted: &'a Wanted,
    cells: &'c mut [Vec<u8>],
    /// How many fields are not found yet, or not all that is wanted inside them.
    missing: &'c mut usize,
    /// How many were come by.
    met: usize,
    /// The next place of a list.
    place: usize,
    /// The key of a map's next value.
    key: String,
}

impl Walk<'_, '_> {
    fn field<T: Serialize + ?Sized>(&mut self, key: &str, value: &T) -> Result<(), Error> {
        let Some((_, found)) = self.wanted.fields.iter().find(|(name, _)| name == key) else {
            return Ok(());
        };
        for cell in &found.cells {
            if let Some(cell) = self.cells.get_mut(*cell) {
                write(cell, value);
            }
        }
        if found.fields.is_empty() || found.walk(value, self.cells) {
            *self.missing = self.missing.saturating_sub(1);
        }
        self.met += 1;
        if self.met < self.wanted.fields.len() { Ok(()) } else { Err(Error) }
    }

    fn next<T: Serialize + ?Sized>(&mut self, value: &T) -> Result<(), Error> {
        let place = self.place.to_string();
        self.place += 1;
        self.field(&place, value)
    }
}

fn write<T: Serialize + ?Sized>(cell: &mut Vec<u8>, value: &T) {
    cell.clear();
    if json::write(cell, value).is_err() || cell == b"null" {
        cell.clear();
    }
    if cell.first() != Some(&b'"') {
        return;
    }
    if !cell.contains(&b'\\') {
        // Between its quotation marks it stands as it is.
        cell.pop();
        cell.remove(0);
    } else if let Ok(text) = serde_json::from_slice::<String>(cell) {
        *cell = text.into_bytes();
    }
}

macro_rules! scalars {
    ($($name:ident($typed:ty)),+) => {
        $(fn $name(self, _: $typed) -> Result<(), Error> {
            Ok(())
        })+
    };
}

impl Serializer for Walk<'_, '_> {
    type Ok = ();
    type Error = Error;
    type SerializeSeq = Self;
    type SerializeTuple = Self;
    type SerializeTupleStruct = Self;
    type SerializeTupleVariant = Impossible<(), Error>;
    type SerializeMap = Self;
    type SerializeStruct = Self;
    type SerializeStructVariant = Impossible<(), Error>;

    scalars! {
        serialize_bool(bool), serialize_i8(i8), serialize_i16(i16), serialize_i32(i32),
        serialize_i64(i64), serialize_u8(u8), serialize_u16(u16), serialize_u32(u32),
        serialize_u64(u64), serialize_f32(f32), serialize_f64(f64), serialize_char(char),
        serialize_str(&str), serialize_bytes(&[u8]), serialize_unit_struct(&'static str)
    }

    fn serialize_none(self) -> Result<(), Error> {
        Ok(())
    }
    fn serialize_some<T: Serialize + ?Sized>(self, value: &T) -> Result<(), Error> {
        value.serialize(self)
    }
    fn serialize_unit(self) -> Result<(), Error> {
        Ok(())
    }
    fn serialize_unit_variant(self, _: &'static str, _: u32, _: &'static str) -> Result<(), Error> {
        Ok(())
    }
    fn serialize_newtype_struct<T: Serialize + ?Sized>(
        self,
        _: &'static str,
        value: &T,
    ) -> Result<(), Error> {
        value.serialize(self)
    }
    fn serialize_newtype_variant<T: Serialize + ?Sized>(
        mut self,
        _: &'static str,
        _: u32,
        variant: &'static str,
        value: &T,
    ) -> Result<(), Error> {
        self.field(variant, value)
    }
    fn serialize_seq(self, _: Option<usize>) -> Result<Self, Error> {
        Ok(self)
    }
    fn serialize_tuple(self, _: usize) -> Result<Self, Error> {
        Ok(self)
    }
    fn serialize_tuple_struct(self, _: &'static str, _: usize) -> Result<Self, Error> {
        Ok(self)
    }
    fn serialize_tuple_variant(
        self,
        _: &'static str,
        _: u32,
        _: &'static str,
        _: usize,
    ) -> Result<Impossible<(), Error>, Error> {
        Err(Error)
    }
    fn serialize_map(self, _: Option<usize>) -> Result<Self, Error> {
        Ok(self)
    }
    fn serialize_struct(self, _: &'static str, _: usize) -> Result<Self, Error> {
        Ok(self)
    }
    fn serialize_struct_variant(
        self,
        _: &'static str,
        _: u32,
        _: &'static str,
        _: usize,
    ) -> Result<Impossible<(), Error>, Error> {
        Err(Error)
    }
}

macro_rules! lists {
    ($($list:ident $name:ident),+) => {
        $(impl ser::$list for Walk<'_, '_> {
            type Ok = ();
            type Error = Error;
            fn $name<T: Serialize + ?Sized>(&mut self, value: &T) -> Result<(), Error> {
                self.next(value)
            }
            fn end(self) -> Result<(), Error> {
                Ok(())
            }
        })+
    };
}

lists! {
    SerializeSeq serialize_element, SerializeTuple serialize_element,
    SerializeTupleStruct serialize_field
}

impl ser::SerializeMap for Walk<'_, '_> {
    type Ok = ();
    type Error = Error;
    fn serialize_key<T: Serialize + ?Sized>(&mut self, key: &T) -> Result<(), Error> {
        let key = serde_json::to_value(key).ok();
        self.key = key.and_then(|key| key.as_str().map(str::to_owned)).unwrap_or_default();
        Ok(())
    }
    fn serialize_value<T: Serialize + ?Sized>(&mut self, value: &T) -> Result<(), Error> {
        let key = std::mem::take(&mut self.key);
        self.field(&key, value)
    }
    fn end(self) -> Result<(), Error> {
        Ok(())
    }
}

impl ser::SerializeStruct for Walk<'_, '_> {
    type Ok = ();
    type Error = Error;
    fn serialize_field<T: Serialize + ?Sized>(
        &mut self,
        key: &'static str,
        value: &T,
    ) -> Result<(), Error> {
        self.field(key, value)
    }
    fn end(self) -> Result<(), Error> {
        Ok(())
    }
}
