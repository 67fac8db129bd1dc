//! Where a value comes from, in the fixed words of JSON and tables: those that a program may rely on, in no language but one.

use crate::calc::{Book, Origin};
use crate::stock::{Trust, sources};

/// Where a value comes from.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Provenance {
    /// In a word: `figure`, `entered`, `studio`, `measured`, `laid out`, `shelf`, `default`, `constant`, `missing`.
    pub word: &'static str,
    /// Its source; empty where the value is missing.
    pub source: String,
    /// How far to trust it; empty where the value is missing.
    pub trust: &'static str,
}

impl Provenance {
    /// That of a figure or term of the book.
    #[must_use]
    pub fn of(origin: Origin, book: &Book) -> Self {
        let given = |word, source: &str, trust| Self { word, source: source.to_owned(), trust: trust_key(trust) };
        match origin {
            Origin::Derived(rule) => given("figure", rule.source, rule.trust),
            Origin::Entered(_) => given("entered", "the job", Trust::Studio),
            Origin::Studio(_) => given("studio", "the studio's file", Trust::Studio),
            Origin::Measured(_) => given("measured", "the pattern's file", Trust::Computed),
            Origin::LaidOut(_) => given("laid out", "parts laid on a plate", Trust::Computed),
            Origin::Run(_) => given("heat run", "the mould's heat, computed", Trust::Computed),
            Origin::Default(default) => given("default", default.source, default.trust),
            Origin::Constant(constant) => given("constant", constant.source, constant.trust),
            Origin::Absent(_) => Self { word: "missing", source: String::new(), trust: "" },
            Origin::Shelf(_, index) => match book.shelf_term(index) {
                Some(term) => {
                    let title = sources().get(&term.source).map_or(term.source.as_str(), |source| source.title.as_str());
                    given("shelf", &format!("{}, {title}", term.entry), term.trust)
                }
                None => Self { word: "shelf", source: String::new(), trust: "" },
            },
        }
    }
}

/// How far a number is to be trusted, in a fixed word.
#[must_use]
pub fn trust_key(trust: Trust) -> &'static str {
    match trust {
        Trust::Standard => "standard",
        Trust::Published => "published",
        Trust::Article => "article",
        Trust::Computed => "computed",
        Trust::CommonPractice => "common practice, no source",
        Trust::FromMemory => "from memory",
        Trust::Studio => "studio",
    }
}
