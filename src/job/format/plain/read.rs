//! The plain part of RON as a source for serde, so that the fast reader and `ron` fill the same structs through the same code.

use std::fmt;

use serde::de::{self, DeserializeSeed, IntoDeserializer as _, Visitor};

use super::text::Plain;

/// The fast reader does not know. Nothing more is said: the slow one will be asked.
#[derive(Debug)]
pub(super) struct Unsure;

impl fmt::Display for Unsure {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("unsure")
    }
}

impl std::error::Error for Unsure {}

impl de::Error for Unsure {
    fn custom<T: fmt::Display>(_: T) -> Self {
        Self
    }
}

type Read<T> = Result<T, Unsure>;

macro_rules! unsure {
    ($($method:ident)+) => {$(
        fn $method<V: Visitor<'de>>(self, _: V) -> Read<V::Value> {
            Err(Unsure)
        }
    )+};
}

impl<'de> de::Deserializer<'de> for &mut Plain<'de> {
    type Error = Unsure;

    unsure! {
        deserialize_any deserialize_i8 deserialize_i16 deserialize_i32 deserialize_i64 deserialize_u8 deserialize_u16 deserialize_u64
        deserialize_f32 deserialize_char deserialize_bytes deserialize_byte_buf deserialize_unit
    }

    fn deserialize_bool<V: Visitor<'de>>(self, visitor: V) -> Read<V::Value> {
        match self.name().ok_or(Unsure)? {
            "true" => visitor.visit_bool(true),
            "false" => visitor.visit_bool(false),
            _ => Err(Unsure),
        }
    }

    fn deserialize_u32<V: Visitor<'de>>(self, visitor: V) -> Read<V::Value> {
        let (number, point) = self.number().ok_or(Unsure)?;
        if point || number.starts_with('-') {
            return Err(Unsure);
        }
        visitor.visit_u32(number.parse().map_err(|_| Unsure)?)
    }

    fn deserialize_f64<V: Visitor<'de>>(self, visitor: V) -> Read<V::Value> {
        let (number, _) = self.number().ok_or(Unsure)?;
        visitor.visit_f64(number.parse().map_err(|_| Unsure)?)
    }

    fn deserialize_str<V: Visitor<'de>>(self, visitor: V) -> Read<V::Value> {
        match self.quoted().ok_or(Unsure)? {
            std::borrow::Cow::Borrowed(text) => visitor.visit_borrowed_str(text),
            std::borrow::Cow::Owned(text) => visitor.visit_string(text),
        }
    }

    fn deserialize_string<V: Visitor<'de>>(self, visitor: V) -> Read<V::Value> {
        self.deserialize_str(visitor)
    }

    fn deserialize_option<V: Visitor<'de>>(self, visitor: V) -> Read<V::Value> {
        // `None` and `Some` begin with a letter; of all values that stand in an option here only words of an enum do too.
        if matches!(self.peek(), Some(b'N' | b'S')) {
            let start = self.place();
            match self.name().ok_or(Unsure)? {
                "None" if self.peek() != Some(b'(') => return visitor.visit_none(),
                "None" | "Some" => return Err(Unsure),
                _ => self.back_to(start),
            }
        }
        visitor.visit_some(self)
    }

    fn deserialize_unit_struct<V: Visitor<'de>>(self, _: &'static str, _: V) -> Read<V::Value> {
        Err(Unsure)
    }

    fn deserialize_newtype_struct<V: Visitor<'de>>(self, _: &'static str, _: V) -> Read<V::Value> {
        Err(Unsure)
    }

    fn deserialize_tuple<V: Visitor<'de>>(self, _: usize, _: V) -> Read<V::Value> {
        Err(Unsure)
    }

    fn deserialize_tuple_struct<V: Visitor<'de>>(self, _: &'static str, _: usize, _: V) -> Read<V::Value> {
        Err(Unsure)
    }

    fn deserialize_seq<V: Visitor<'de>>(self, visitor: V) -> Read<V::Value> {
        self.open(b'[').ok_or(Unsure)?;
        inside(self, b']', |list| visitor.visit_seq(list))
    }

    fn deserialize_map<V: Visitor<'de>>(self, visitor: V) -> Read<V::Value> {
        self.open(b'{').ok_or(Unsure)?;
        inside(self, b'}', |list| visitor.visit_map(list))
    }

    fn deserialize_struct<V: Visitor<'de>>(self, _: &'static str, _: &'static [&'static str], visitor: V) -> Read<V::Value> {
        if std::mem::take(&mut self.opened) {
            self.white().ok_or(Unsure)?;
        } else {
            self.open(b'(').ok_or(Unsure)?;
        }
        inside(self, b')', |list| visitor.visit_map(list))
    }

    fn deserialize_enum<V: Visitor<'de>>(self, _: &'static str, _: &'static [&'static str], visitor: V) -> Read<V::Value> {
        visitor.visit_enum(Word(self))
    }

    fn deserialize_identifier<V: Visitor<'de>>(self, visitor: V) -> Read<V::Value> {
        visitor.visit_borrowed_str(self.name().ok_or(Unsure)?)
    }

    fn deserialize_ignored_any<V: Visitor<'de>>(self, visitor: V) -> Read<V::Value> {
        self.pass().ok_or(Unsure)?;
        visitor.visit_unit()
    }
}

/// What stands between two brackets.
struct Inside<'r, 'de> {
    reader: &'r mut Plain<'de>,
    close: u8,
    closed: bool,
}

/// Reads what stands between two brackets, of which the opening one is behind us, and makes sure that the closing one was reached.
fn inside<'r, 'de, T>(reader: &'r mut Plain<'de>, close: u8, read: impl FnOnce(&mut Inside<'r, 'de>) -> Read<T>) -> Read<T> {
    let closed = reader.close(close);
    let mut list = Inside { reader, close, closed };
    let value = read(&mut list)?;
    if list.closed { Ok(value) } else { Err(Unsure) }
}

impl Inside<'_, '_> {
    fn behind_value(&mut self) -> Read<()> {
        self.closed = self.reader.comma_or_close(self.close).ok_or(Unsure)?;
        Ok(())
    }
}

impl<'de> de::SeqAccess<'de> for &mut Inside<'_, 'de> {
    type Error = Unsure;

    fn next_element_seed<T: DeserializeSeed<'de>>(&mut self, seed: T) -> Read<Option<T::Value>> {
        if self.closed {
            return Ok(None);
        }
        let value = seed.deserialize(&mut *self.reader)?;
        self.behind_value()?;
        Ok(Some(value))
    }
}

impl<'de> de::MapAccess<'de> for &mut Inside<'_, 'de> {
    type Error = Unsure;

    fn next_key_seed<K: DeserializeSeed<'de>>(&mut self, seed: K) -> Read<Option<K::Value>> {
        if self.closed {
            return Ok(None);
        }
        seed.deserialize(&mut *self.reader).map(Some)
    }

    fn next_value_seed<T: DeserializeSeed<'de>>(&mut self, seed: T) -> Read<T::Value> {
        self.reader.colon().ok_or(Unsure)?;
        let value = seed.deserialize(&mut *self.reader)?;
        self.behind_value()?;
        Ok(value)
    }
}

/// A word of an enum, with what it holds.
struct Word<'r, 'de>(&'r mut Plain<'de>);

impl<'de> de::EnumAccess<'de> for Word<'_, 'de> {
    type Error = Unsure;
    type Variant = Self;

    fn variant_seed<T: DeserializeSeed<'de>>(self, seed: T) -> Read<(T::Value, Self)> {
        let name = self.0.name().ok_or(Unsure)?;
        let word: de::value::StrDeserializer<'_, Unsure> = name.into_deserializer();
        Ok((seed.deserialize(word)?, self))
    }
}

impl<'de> de::VariantAccess<'de> for Word<'_, 'de> {
    type Error = Unsure;

    fn unit_variant(self) -> Read<()> {
        if self.0.peek() == Some(b'(') { Err(Unsure) } else { Ok(()) }
    }

    fn newtype_variant_seed<T: DeserializeSeed<'de>>(self, seed: T) -> Read<T::Value> {
        self.0.open(b'(').ok_or(Unsure)?;
        let value = seed.deserialize(&mut *self.0)?;
        // A second value would be a tuple, which is none of ours.
        if self.0.comma_or_close(b')') == Some(true) { Ok(value) } else { Err(Unsure) }
    }

    fn tuple_variant<V: Visitor<'de>>(self, _: usize, _: V) -> Read<V::Value> {
        Err(Unsure)
    }

    fn struct_variant<V: Visitor<'de>>(self, _: &'static [&'static str], visitor: V) -> Read<V::Value> {
        self.0.open(b'(').ok_or(Unsure)?;
        inside(self.0, b')', |list| visitor.visit_map(list))
    }
}
