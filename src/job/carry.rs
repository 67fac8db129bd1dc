//! Copies of shelf entries that travel with a job, so that an old job keeps its figures when the shelf changes.

use serde::{Deserialize, Serialize};

use super::{Job, Programme, Size};
use crate::stock::{Entry, EntryHash, EntryId, Shelf};

/// A shelf entry as it was when the job took it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Copied {
    /// Hash of the entry then.
    pub hash: EntryHash,
    /// The entry.
    pub entry: Entry,
}

/// The ids of all shelf entries a job names, sorted, each once.
#[must_use]
pub fn named_entries(job: &Job) -> Vec<EntryId> {
    let mut ids: Vec<EntryId> = Vec::new();
    for (_, line) in job.lines() {
        ids.extend(line.alloy.clone());
        let sizes = line.size.iter().chain(line.exceptions.values().filter_map(|exception| exception.size.as_ref()));
        ids.extend(sizes.filter_map(|size| match size {
            Size::Ring { scale, .. } => Some(scale.clone()),
            Size::Free(_) => None,
        }));
    }
    ids.extend(job.patterns.iter().filter_map(|pattern| pattern.material.clone()));
    ids.extend(job.prints.iter().filter_map(|run| run.material.clone()));
    for tree in &job.trees {
        ids.extend(tree.base.clone());
        ids.extend(tree.weighed.iter().filter_map(|part| part.material.clone()));
        ids.extend(tree.main_sprue.iter().filter_map(|sprue| sprue.material.clone()));
        ids.extend(tree.sprues.iter().filter_map(|run| run.material.clone()));
    }
    for flask in &job.flasks {
        ids.extend([&flask.vessel, &flask.alloy, &flask.powder].into_iter().flatten().cloned());
    }
    for burnout in &job.burnouts {
        ids.extend(burnout.kiln.clone());
        if let Some(Programme::Table(table)) = &burnout.programme {
            ids.push(table.clone());
        }
    }
    ids.extend(job.melts.iter().filter_map(|melt| melt.crucible.clone()));
    ids.sort();
    ids.dedup();
    ids
}

/// Adds copies of every entry the job names and has no copy of yet, and drops copies it no longer names. Copies that stand are kept as they
/// are: a difference from the shelf is for the caster to decide.
pub fn take_copies(job: &mut Job, shelf: &Shelf) {
    let named = named_entries(job);
    job.shelf.retain(|copied| named.binary_search(copied.entry.id()).is_ok());
    for id in named {
        if job.shelf.iter().all(|copied| *copied.entry.id() != id)
            && let Some(entry) = shelf.entry(id.as_str())
        {
            job.shelf.push(Copied { hash: entry.hash(), entry: Entry::clone(entry) });
        }
    }
    job.shelf.sort_by(|a, b| a.entry.id().cmp(b.entry.id()));
}
