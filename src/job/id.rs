//! Typed ids. An id is given once in a job and never used again, so that a record that names it stays true.

use std::fmt;
use std::str::FromStr;

use serde::{Deserialize, Deserializer, Serialize, Serializer};

macro_rules! ids {
    ($($(#[$doc:meta])* $name:ident)+) => {$(
        $(#[$doc])*
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default, Serialize, Deserialize)]
        #[serde(transparent)]
        pub struct $name(pub u32);

        impl fmt::Display for $name {
            fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                self.0.fmt(f)
            }
        }
    )+};
}

ids! {
    /// An order of one client.
    OrderId
    /// A line of an order: so many pieces of one design. Unique in the whole job, not only in its order.
    LineId
    /// A pattern: the wax or print a piece is cast from.
    PatternId
    /// A print run.
    PrintId
    /// A tree.
    TreeId
    /// A filled flask of this batch (not the steel cylinder on the shelf).
    FlaskId
    /// A kiln load with its burnout programme.
    BurnoutId
    /// A melt: one crucible of metal, poured into one or several flasks.
    MeltId
    /// A quote to one client.
    QuoteId
    /// An entry of the record.
    RecordId
}

/// A metal lot of the studio, named as the caster labels it ("S-14").
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash, Default, Serialize, Deserialize)]
#[serde(transparent)]
pub struct LotId(pub String);

impl fmt::Display for LotId {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.fmt(f)
    }
}

/// 128 random bits that name a document for good: renaming or moving its file does not change them.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default)]
pub struct JobId(pub [u8; 16]);

impl JobId {
    /// A new id from the system's source of randomness.
    ///
    /// # Errors
    /// Where the system has no randomness to give.
    pub fn random() -> Result<Self, getrandom::Error> {
        let mut bits = [0; 16];
        getrandom::fill(&mut bits)?;
        Ok(Self(bits))
    }
}

impl fmt::Display for JobId {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.iter().try_for_each(|byte| write!(f, "{byte:02x}"))
    }
}

/// What a `job_id` must look like, said where it does not.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
#[error("a document id is 32 digits and letters from a to f, like 5f0c…")]
pub struct NoJobId;

impl FromStr for JobId {
    type Err = NoJobId;

    fn from_str(text: &str) -> Result<Self, NoJobId> {
        if text.len() != 32 || !text.bytes().all(|byte| matches!(byte, b'0'..=b'9' | b'a'..=b'f')) {
            return Err(NoJobId);
        }
        u128::from_str_radix(text, 16).map(|bits| Self(bits.to_be_bytes())).map_err(|_| NoJobId)
    }
}

impl Serialize for JobId {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(self)
    }
}

impl<'de> Deserialize<'de> for JobId {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        String::deserialize(deserializer)?.parse().map_err(serde::de::Error::custom)
    }
}

/// One piece: the `number`-th (from 1) of a line.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PieceId {
    /// The line.
    pub line: LineId,
    /// From 1 to the line's quantity.
    pub number: u32,
}

/// The code of a piece, `3.2`: its line and its number in it. It is no decimal number: `3.1` and `3.10` are two pieces.
impl fmt::Display for PieceId {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}.{}", self.line, self.number)
    }
}
