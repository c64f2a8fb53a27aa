//! Fields of an answer by their path, without the rest of it.

use std::fmt;

use serde::{
    Serialize, Serializer,
    ser::{self, Impossible},
};

/// Writes the field at each path into its cell: text as it is, `null` and what is
/// not there as nothing, all else as JSON. Of a list a path names one by its
/// place, from 0. Says whether every one was found; an empty path is none.
pub(crate) fn pick<T: Serialize>(paths: &[Vec<String>], value: &T, cells: &mut [Vec<u8>]) -> bool {
    let named = paths.iter().enumerate().filter(|(_, path)| !path.is_empty());
    let wanted: Vec<_> = named.map(|(at, path)| (at, path.as_slice())).collect();
    let mut left = wanted.len();
    left == 0
        || value
            .serialize(Walk { wanted, cells, left: &mut left, place: 0, key: String::new() })
            .is_err()
}

/// The walk ends early: all that is wanted was found. Nothing of ours fails to
/// be written.
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

/// At one object or list: what is wanted of it.
struct Walk<'a, 'c> {
    wanted: Vec<(usize, &'a [String])>,
    cells: &'c mut [Vec<u8>],
    /// How many are not found yet.
    left: &'c mut usize,
    /// The next place of a list.
    place: usize,
    /// The key of a map's next value.
    key: String,
}

impl Walk<'_, '_> {
    fn field<T: Serialize + ?Sized>(&mut self, key: &str, value: &T) -> Result<(), Error> {
        let mut deeper = Vec::new();
        for (at, path) in &self.wanted {
            match path {
                [last] if last == key => {
                    if let Some(cell) = self.cells.get_mut(*at) {
                        write(cell, value);
                    }
                    *self.left = self.left.saturating_sub(1);
                }
                [first, rest @ ..] if first == key && !rest.is_empty() => deeper.push((*at, rest)),
                _ => {}
            }
        }
        if *self.left == 0 {
            return Err(Error);
        }
        if deeper.is_empty() {
            return Ok(());
        }
        let (cells, left) = (&mut *self.cells, &mut *self.left);
        value.serialize(Walk { wanted: deeper, cells, left, place: 0, key: String::new() })
    }

    fn next<T: Serialize + ?Sized>(&mut self, value: &T) -> Result<(), Error> {
        let place = self.place.to_string();
        self.place += 1;
        self.field(&place, value)
    }
}

fn write<T: Serialize + ?Sized>(cell: &mut Vec<u8>, value: &T) {
    cell.clear();
    if serde_json::to_writer(&mut *cell, value).is_err() || cell == b"null" {
        cell.clear();
    }
    if cell.first() == Some(&b'"')
        && let Ok(text) = serde_json::from_slice::<String>(cell)
    {
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
