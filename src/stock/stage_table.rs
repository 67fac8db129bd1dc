//! Published and customary burnout stages by flask size.

use serde::{Deserialize, Serialize};

use super::id::EntryId;
use super::pattern_material::PatternClass;
use super::powder::PowderClass;
use super::sourced::{Origin, finite};

/// One stage: a target and its hours. In RON: `(149, 2)`.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Stage(
    /// Target, °C.
    #[serde(deserialize_with = "finite")]
    pub f64,
    /// Hours, as printed.
    #[serde(deserialize_with = "finite")]
    pub f64,
);

impl Stage {
    /// Target, °C.
    #[must_use]
    pub fn target_c(self) -> f64 {
        self.0
    }

    /// Hours, as printed; whether they include the way there is the table's [`StageTable::hours_include_ramps`].
    #[must_use]
    pub fn hours(self) -> f64 {
        self.1
    }
}

/// The stages for flasks up to a size.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct StageRow {
    /// Inner diameter up to and including, mm.
    #[serde(deserialize_with = "finite")]
    pub up_to_diameter_mm: f64,
    /// Height up to and including, mm.
    #[serde(deserialize_with = "finite")]
    pub up_to_height_mm: f64,
    /// Stages in order, before the soak.
    pub stages: Vec<Stage>,
    /// Hours at the casting temperature.
    #[serde(deserialize_with = "finite")]
    pub soak_h: f64,
}

/// Loading a hot kiln.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct HotLoading {
    /// The kiln before the flasks go in, °C.
    #[serde(deserialize_with = "finite")]
    pub kiln_c: f64,
    /// To where the open door and the wet load take it, °C.
    #[serde(deserialize_with = "finite")]
    pub loaded_c: f64,
}

/// A table of stages.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct StageTable {
    /// Slug.
    pub id: EntryId,
    /// Name in the trade's words.
    pub name: String,
    /// The pattern materials it is for.
    pub patterns: Vec<PatternClass>,
    /// The powders it is for.
    pub powders: Vec<PowderClass>,
    /// For stones cast in place.
    pub stones: bool,
    /// A fast schedule: the kiln is hot when the flasks go in.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub fast: Option<HotLoading>,
    /// Rows from the smallest flask to the largest.
    pub rows: Vec<StageRow>,
    /// Whether a stage's hours include the way there; absent where the source does not say: then it is asked.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub hours_include_ramps: Option<bool>,
    /// The hours are a floor under which the powder's or resin's data sheet never lets them fall.
    pub never_under_data_sheet: bool,
    /// Source of all its numbers.
    pub origin: Origin,
    /// Anything else worth reading.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub notes: String,
}

impl StageTable {
    /// The first row that covers a flask; `None` where the flask is larger than the table goes.
    #[must_use]
    pub fn row_for(&self, inner_diameter_mm: f64, height_mm: f64) -> Option<&StageRow> {
        // Half a millimetre of slack: flasks are sold in inches and written in whole millimetres.
        self.rows.iter().find(|row| inner_diameter_mm <= row.up_to_diameter_mm + 0.5 && height_mm <= row.up_to_height_mm + 0.5)
    }
}
