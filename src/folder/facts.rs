//! What a job's own links say: which entries of its record stand, what was poured when, and which flasks a line hangs in.

use std::collections::{BTreeMap, BTreeSet};

use jiff::civil::DateTime;

use super::brief::{Brief, BriefEntry, BriefEvent, BriefFlask};
use crate::job::{FlaskId, LineId, RecordId};

/// Entries of the record that no other entry withdraws, in order; withdrawals themselves are left out.
pub fn standing(job: &Brief) -> impl Iterator<Item = &BriefEntry> {
    let withdrawn: BTreeSet<RecordId> = job
        .record
        .iter()
        .filter_map(|entry| match entry.event {
            BriefEvent::Withdrawn { entry } => Some(entry),
            _ => None,
        })
        .collect();
    job.record.iter().filter(move |entry| !matches!(entry.event, BriefEvent::Withdrawn { .. }) && !withdrawn.contains(&entry.id))
}

/// A flask that was poured.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct Pour {
    /// When, by the record.
    pub at: Option<DateTime>,
    /// The flask.
    pub flask: FlaskId,
}

/// Every flask the record says was poured, each once, with the latest time that is told of it.
#[must_use]
pub fn pours(job: &Brief) -> Vec<Pour> {
    let mut pours: BTreeMap<FlaskId, Option<DateTime>> = BTreeMap::new();
    for entry in standing(job) {
        if let BriefEvent::Poured { flask } = entry.event {
            let at = pours.entry(flask).or_default();
            *at = entry.at.max(*at);
        }
    }
    pours.into_iter().map(|(flask, at)| Pour { at, flask }).collect()
}

/// The flasks in which pieces of each line hang, in the order of the flasks.
pub(crate) fn flasks_of_lines(job: &Brief) -> BTreeMap<LineId, Vec<&BriefFlask>> {
    let mut of_lines: BTreeMap<LineId, Vec<&BriefFlask>> = BTreeMap::new();
    for flask in &job.flasks {
        let trees = job.trees.iter().filter(|tree| Some(tree.id) == flask.tree);
        let lines: BTreeSet<LineId> = trees.flat_map(|tree| &tree.pieces).map(|hung| hung.line).collect();
        for line in lines {
            of_lines.entry(line).or_default().push(flask);
        }
    }
    of_lines
}
