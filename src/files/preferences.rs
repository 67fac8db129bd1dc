//! What the window remembers from one day to the next. Never part of a document.

use std::collections::{BTreeMap, BTreeSet};
use std::path::{Path, PathBuf};

use serde::{Deserialize, Serialize};

use super::clocks::Running;
use super::disk::Disk;
use super::order_table::Mapping;
use super::save::{Original, hash_of, save};
use crate::paper::{Dress, Sort};
use crate::quantity::{Style, Units};

/// The preferences.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct Preferences {
    /// Dark, light, or as the system has it.
    pub theme: Theme,
    /// Trade units instead of metric ones.
    pub trade_units: bool,
    /// Comma for the decimal mark.
    pub comma: bool,
    /// In percent.
    pub zoom: u32,
    /// How sheets were dressed last, by their sort.
    pub papers: BTreeMap<Sort, Dress>,
    /// Batches opened lately, the last one first.
    pub recent: Vec<PathBuf>,
    /// How tables of orders were read, for the next one like them.
    pub mappings: Vec<Mapping>,
    /// Clocks that run at the bench.
    pub clocks: Vec<Running>,
    /// Folders outside a batch's own whose pattern files may be read.
    pub allowed: BTreeSet<PathBuf>,
}

/// Day or evening.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
pub enum Theme {
    /// By day.
    #[default]
    Light,
    /// For the evening.
    Dark,
    /// As the system has it.
    System,
}

impl Default for Preferences {
    fn default() -> Self {
        Self {
            theme: Theme::Light,
            trade_units: false,
            comma: false,
            zoom: 100,
            papers: BTreeMap::new(),
            recent: Vec::new(),
            mappings: Vec::new(),
            clocks: Vec::new(),
            allowed: BTreeSet::new(),
        }
    }
}

/// Batches that are remembered.
const RECENT: usize = 9;

/// Folders that are remembered.
const ALLOWED: usize = 500;

impl Preferences {
    /// How figures are printed.
    #[must_use]
    pub fn style(&self) -> Style {
        Style { units: if self.trade_units { Units::TRADE } else { Units::METRIC }, comma: self.comma, ..Style::METRIC }
    }

    /// How sheets of a sort are dressed: as they were last, or as the window is.
    #[must_use]
    pub fn dress(&self, sort: Sort) -> Dress {
        let plain = Dress { trade_units: self.trade_units, comma: self.comma, ..Dress::default() };
        self.papers.get(&sort).copied().unwrap_or(plain)
    }

    /// A batch was opened.
    pub fn opened(&mut self, path: &Path) {
        self.recent.retain(|other| other != path);
        self.recent.insert(0, path.to_owned());
        self.recent.truncate(RECENT);
    }

    /// The pattern files of a folder may be read from now on.
    pub fn allow(&mut self, folder: PathBuf) {
        if self.allowed.len() < ALLOWED {
            self.allowed.insert(folder);
        }
    }

    /// Another zoom, within what fits.
    pub fn zoom_by(&mut self, steps: i32) {
        self.zoom = self.zoom.saturating_add_signed(steps * 25).clamp(75, 200);
    }

    /// Reads them; what cannot be read is as it is on the first day.
    #[must_use]
    pub fn load(disk: &dyn Disk, path: &Path) -> Self {
        let bytes = disk.read(path, 1 << 20).unwrap_or_default();
        let mut read: Self = std::str::from_utf8(&bytes).ok().and_then(|text| ron::from_str(text).ok()).unwrap_or_default();
        read.zoom = read.zoom.clamp(75, 200);
        read
    }

    /// Keeps them. A disk that does not take them costs nothing but their memory.
    pub fn keep(&self, disk: &dyn Disk, path: &Path) -> Option<String> {
        let text = ron::ser::to_string_pretty(self, ron::ser::PrettyConfig::default()).ok()?;
        let base = disk.read(path, 1 << 20).ok().map(|bytes| hash_of(&bytes));
        if let Some(folder) = path.parent() {
            let _ = disk.create_folders(folder);
        }
        save(disk, path, text.as_bytes(), base.as_ref(), Original::Replace, |_| Ok(())).err().map(|error| error.to_string())
    }
}
