//! What the keys of sources stand for.

use std::collections::BTreeMap;
use std::sync::OnceLock;

use serde::{Deserialize, Serialize};

use super::read::read;

/// A work or a habit that numbers come from.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Source {
    /// What it is, as printed beside a figure.
    pub title: String,
    /// True where its text was read.
    pub read: bool,
}

/// Every source of the shipped shelf, by key.
///
/// # Panics
/// Never: the shipped text is read by a test.
#[must_use]
pub fn sources() -> &'static BTreeMap<String, Source> {
    static SOURCES: OnceLock<BTreeMap<String, Source>> = OnceLock::new();
    SOURCES.get_or_init(|| {
        read("sources.ron", include_str!("../../resources/stock/sources.ron")).expect("the shipped list of sources is sound")
    })
}
