//! What a country asks of articles of precious metal: whether they must be marked, from which weight on, and which finenesses are legal.

use serde::{Deserialize, Serialize};

use super::element::Element;
use super::id::EntryId;
use super::sourced::{Origin, Sourced, finite_list};

/// Who sees to it that articles are marked.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub enum MarkingSystem {
    /// Nothing may be sold as precious metal unmarked, but for what is exempt.
    Compulsory,
    /// Marks of an assay office are struck for whoever asks.
    Voluntary,
}

/// Articles so light that they need no mark.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Exemption {
    /// The precious metal.
    pub metal: Element,
    /// Weight below which no mark is asked for, g.
    pub below_g: Sourced,
    /// A piece of just this weight is exempt too.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub up_to: bool,
}

/// The finenesses an article of a metal may be sold by.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct LegalFinenesses {
    /// The precious metal.
    pub metal: Element,
    /// Thousandths, the highest first.
    #[serde(deserialize_with = "finite_list")]
    pub permille: Vec<f64>,
}

/// What a country asks.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct MarkingLaw {
    /// Slug.
    pub id: EntryId,
    /// The country.
    pub name: String,
    /// Who sees to it.
    pub system: MarkingSystem,
    /// Source of the system and the finenesses.
    pub origin: Origin,
    /// What is exempt, metal by metal; a metal that is not here has no exemption.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub exempt: Vec<Exemption>,
    /// Metals of which nothing is asked, or nothing is known that would be.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub not_asked: Vec<Element>,
    /// What may be sold, metal by metal; a metal that is not here may be sold by any fineness, as far as the shelf knows.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub legal: Vec<LegalFinenesses>,
    /// Anything else worth reading.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub notes: String,
}

impl MarkingLaw {
    /// Must articles of the metal be marked at all, as far as the shelf knows?
    #[must_use]
    pub fn asks(&self, metal: Element) -> bool {
        self.system == MarkingSystem::Compulsory && !self.not_asked.contains(&metal)
    }

    /// The exemption of a metal; nothing where every article needs a mark.
    #[must_use]
    pub fn exemption(&self, metal: Element) -> Option<&Exemption> {
        self.exempt.iter().find(|one| one.metal == metal)
    }

    /// May an article be sold by this fineness? A mark of four figures is read without its tenth: 958.4 is 958.
    #[must_use]
    pub fn is_legal(&self, metal: Element, permille: f64) -> bool {
        let same = |one: &f64| one.floor().total_cmp(&permille.floor()).is_eq();
        self.legal.iter().find(|one| one.metal == metal).is_none_or(|one| one.permille.iter().any(same))
    }
}
