//! The name an entry is called by in files, and the hash that tells whether it is still the same entry.

use std::borrow::Borrow;
use std::fmt;
use std::sync::Arc;

use serde::{Deserialize, Deserializer, Serialize, Serializer};

/// A slug such as `silver-925`: small letters, digits and single dashes, 1 to 64 characters. Unique over the whole shelf.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct EntryId(Arc<str>);

impl EntryId {
    /// `None` where `text` is not such a slug.
    #[must_use]
    pub fn new(text: &str) -> Option<Self> {
        let sound = !text.is_empty()
            && text.len() <= 64
            && text.bytes().all(|byte| byte.is_ascii_lowercase() || byte.is_ascii_digit() || byte == b'-')
            && !text.starts_with('-')
            && !text.ends_with('-')
            && !text.contains("--");
        sound.then(|| Self(text.into()))
    }

    /// The slug.
    #[must_use]
    pub fn as_str(&self) -> &str {
        &self.0
    }
}

impl Borrow<str> for EntryId {
    fn borrow(&self) -> &str {
        &self.0
    }
}

impl fmt::Display for EntryId {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}

impl Serialize for EntryId {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.serialize_str(&self.0)
    }
}

impl<'de> Deserialize<'de> for EntryId {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let text = String::deserialize(deserializer)?;
        Self::new(&text).ok_or_else(|| {
            serde::de::Error::custom(format!(
                "\"{text}\" cannot name a shelf entry: use small letters, digits and single dashes, at most 64"
            ))
        })
    }
}

/// The first 16 bytes of the BLAKE3 hash of an entry's canonical text; 32 hexadecimal digits in files.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct EntryHash([u8; 16]);

impl EntryHash {
    /// The hash of canonical text.
    pub(super) fn of(text: &str) -> Self {
        let mut first = [0; 16];
        first.copy_from_slice(&blake3::hash(text.as_bytes()).as_bytes()[..16]);
        Self(first)
    }

    /// `None` where `text` is not 32 small hexadecimal digits.
    #[must_use]
    pub fn parse(text: &str) -> Option<Self> {
        if text.len() != 32 || !text.bytes().all(|byte| matches!(byte, b'0'..=b'9' | b'a'..=b'f')) {
            return None;
        }
        u128::from_str_radix(text, 16).ok().map(|number| Self(number.to_be_bytes()))
    }
}

impl fmt::Display for EntryHash {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{:032x}", u128::from_be_bytes(self.0))
    }
}

impl fmt::Debug for EntryHash {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        fmt::Display::fmt(self, f)
    }
}

impl Serialize for EntryHash {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(self)
    }
}

impl<'de> Deserialize<'de> for EntryHash {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let text = String::deserialize(deserializer)?;
        Self::parse(&text).ok_or_else(|| serde::de::Error::custom("an entry's hash is 32 hexadecimal digits"))
    }
}
