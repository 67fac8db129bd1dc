//! Chemical elements, parts per thousand, and compositions that sum to exactly 1000.

use std::fmt;

use serde::de::{MapAccess, Visitor};
use serde::ser::SerializeMap;
use serde::{Deserialize, Deserializer, Serialize, Serializer};

use crate::quantity::Finite;

/// An element met in casting alloys, by its symbol.
#[allow(missing_docs, reason = "the symbols are their own description")]
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
pub enum Element {
    Au,
    Ag,
    Pt,
    Pd,
    Rh,
    Ru,
    Ir,
    Cu,
    Zn,
    Ni,
    Co,
    Fe,
    Mn,
    Sn,
    Sb,
    Bi,
    Pb,
    Cd,
    Al,
    Si,
    Mg,
    Be,
    Ge,
    Ga,
    In,
    W,
    P,
}

/// Parts per thousand by mass, kept exactly to a thousandth of a part (parts per million of mass), 0 to 1000.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default)]
pub struct Permille(u32);

impl Permille {
    /// The whole: 1000 ‰.
    pub const WHOLE: Self = Self(1_000_000);

    /// `None` outside 0 to 1000 and where there are more than three decimals.
    #[must_use]
    pub fn new(permille: f64) -> Option<Self> {
        let millionths = (permille * 1000.0).round();
        let sound = (0.0..=1_000_000.0).contains(&millionths) && (permille * 1000.0 - millionths).abs() < 1e-6;
        // In range and whole by the line above.
        #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
        sound.then_some(Self(millionths as u32))
    }

    /// Parts per million of mass, exact: 925 ‰ is 925 000.
    #[must_use]
    pub fn per_million(self) -> u32 {
        self.0
    }

    /// Parts per thousand.
    #[must_use]
    pub fn get(self) -> f64 {
        f64::from(self.0) / 1000.0
    }

    /// The share of the mass, 0 to 1.
    #[must_use]
    pub fn share(self) -> f64 {
        f64::from(self.0) / 1_000_000.0
    }
}

impl Serialize for Permille {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.serialize_f64(self.get())
    }
}

impl<'de> Deserialize<'de> for Permille {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let number = Finite::deserialize(deserializer)?.get();
        Self::new(number).ok_or_else(|| serde::de::Error::custom("parts per thousand run from 0 to 1000 with at most three decimals"))
    }
}

/// What an alloy is made of, in ‰ by mass, sorted by element; the parts sum to exactly 1000 and none is zero.
/// In RON: `{Ag: 925, Cu: 75}`.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Composition(Vec<(Element, Permille)>);

impl Composition {
    /// `None` where the parts do not sum to exactly 1000, one of them is zero or an element stands twice.
    #[must_use]
    pub fn new(mut parts: Vec<(Element, Permille)>) -> Option<Self> {
        parts.sort_by_key(|part| part.0);
        let single = parts.windows(2).all(|pair| pair[0].0 != pair[1].0) && parts.iter().all(|part| part.1.0 > 0);
        let sum: u64 = parts.iter().map(|part| u64::from(part.1.0)).sum();
        (single && sum == u64::from(Permille::WHOLE.0)).then_some(Self(parts))
    }

    /// The part of `element`, zero where it is absent.
    #[must_use]
    pub fn of(&self, element: Element) -> Permille {
        self.0.binary_search_by_key(&element, |part| part.0).map_or(Permille(0), |at| self.0[at].1)
    }

    /// The parts, sorted by element.
    #[must_use]
    pub fn parts(&self) -> &[(Element, Permille)] {
        &self.0
    }
}

impl Serialize for Composition {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let mut map = serializer.serialize_map(Some(self.0.len()))?;
        for (element, part) in &self.0 {
            map.serialize_entry(element, part)?;
        }
        map.end()
    }
}

impl<'de> Deserialize<'de> for Composition {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_map(CompositionVisitor)
    }
}

struct CompositionVisitor;

impl<'de> Visitor<'de> for CompositionVisitor {
    type Value = Composition;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("a map of elements to parts per thousand, such as {Ag: 925, Cu: 75}")
    }

    fn visit_map<A: MapAccess<'de>>(self, mut map: A) -> Result<Composition, A::Error> {
        let mut parts = Vec::new();
        while let Some(part) = map.next_entry::<Element, Permille>()? {
            parts.push(part);
        }
        Composition::new(parts).ok_or_else(|| {
            serde::de::Error::custom("a composition must sum to exactly 1000 parts per thousand, each element once and none zero")
        })
    }
}
