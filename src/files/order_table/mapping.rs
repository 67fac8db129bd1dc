//! What the columns of a table are.

use super::letters::key;
use super::{Fingerprint, Role};
use crate::table::{Decimal, Table};
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// The most columns that can be named.
const MOST_COLUMNS: usize = 256;

/// What the columns of a table are, and what was said about its cells. Plain data that can be kept and used again for the next table with
/// the same headings.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Mapping {
    /// By what the table is known again.
    pub fingerprint: Fingerprint,
    /// What each column is, from the left. Of two columns with one role the first counts, but for remarks; columns beyond are ignored.
    pub columns: Vec<Role>,
    /// Whether dates such as 03/04/2026 have the day first, where their column leaves it open.
    #[serde(default)]
    pub day_first: Option<bool>,
    /// The decimal sign, where numbers such as 1,250 and their column leave it open.
    #[serde(default)]
    pub decimal: Option<Decimal>,
    /// The client of rows that name none.
    #[serde(default)]
    pub client: Option<String>,
    /// The quantity of rows that tell none.
    #[serde(default)]
    pub quantity: Option<u32>,
    /// What words for an alloy mean: shelf ids by words in small letters, as [`Self::name_alloy`] writes them.
    #[serde(default)]
    pub alloys: BTreeMap<String, String>,
}

impl Mapping {
    /// A mapping that ignores every column.
    pub(super) fn blank(fingerprint: Fingerprint, width: usize) -> Self {
        Self {
            fingerprint,
            columns: vec![Role::Ignored; width],
            day_first: None,
            decimal: None,
            client: None,
            quantity: None,
            alloys: BTreeMap::new(),
        }
    }

    /// True where a table has the same headings in the same order or, without headings, columns that hold the same.
    #[must_use]
    pub fn fits(&self, table: &Table) -> bool {
        self.fingerprint.first_row(table).is_some()
    }

    /// Says what a column is. Another column that was it becomes ignored, but for remarks. A column behind those with headings can be named
    /// as well, up to the 256th; what stands in it is then no surplus cell.
    pub fn set(&mut self, column: usize, role: Role) {
        if !role.is_shared() {
            self.columns.iter_mut().filter(|other| **other == role).for_each(|other| *other = Role::Ignored);
        }
        if column >= self.columns.len() && column < MOST_COLUMNS {
            self.columns.resize(column + 1, Role::Ignored);
        }
        if let Some(at) = self.columns.get_mut(column) {
            *at = role;
        }
    }

    /// The first column with a role.
    #[must_use]
    pub fn column(&self, role: Role) -> Option<usize> {
        self.columns.iter().position(|other| *other == role)
    }

    /// Says which alloy words mean, by shelf id.
    pub fn name_alloy(&mut self, words: &str, id: &str) {
        self.alloys.insert(key(words), id.to_owned());
    }
}
