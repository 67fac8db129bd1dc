//! Compares the files of patterns that belong together, so that the recompute can take what was found as inputs.

use std::path::{Path, PathBuf};

use super::disk::Disk;
use crate::calc::{PAIR_TOLERANCE_MM, PairRun, PatternRun, Runs, print_mm};
use crate::job::{Job, PatternId};
use crate::mesh::{self, Limits, Soup, Watch};

/// Two files to be compared, with the content that was measured.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub struct Question {
    /// Where they lie.
    pub paths: [PathBuf; 2],
    /// The hashes of their content as hexadecimal text.
    pub hashes: [String; 2],
    /// Bits of how many millimetres of print one unit of each is.
    scales: [u64; 2],
}

/// The pairs of a job both files of which were measured.
#[must_use]
pub fn questions(folder: &Path, job: &Job, runs: &Runs) -> Vec<(PatternId, Question)> {
    let of = |id: PatternId| {
        let file = job.patterns.iter().find(|pattern| pattern.id == id)?.file.as_ref()?;
        let Some(PatternRun::Measured(measure)) = runs.patterns.get(&id) else { return None };
        Some((folder.join(&file.path), measure.hash.clone(), print_mm(file).to_bits()))
    };
    let ask = |pattern: &crate::job::Pattern| {
        let (one, other) = (of(pattern.id)?, of(pattern.pair.as_ref()?.with)?);
        Some((pattern.id, Question { paths: [one.0, other.0], hashes: [one.1, other.1], scales: [one.2, other.2] }))
    };
    job.patterns.iter().filter_map(ask).collect()
}

/// Compares two files. Nothing where one is not to be read or is another one by now, where they cannot be compared, and when `watch` stops it.
#[must_use]
pub fn compare(disk: &dyn Disk, question: &Question, limits: &Limits, watch: &dyn Watch) -> Option<PairRun> {
    let read = |at: usize| -> Option<Soup> {
        let bytes = disk.read(&question.paths[at], limits.max_bytes).ok()?;
        let same = blake3::hash(&bytes).to_hex().as_str() == question.hashes[at];
        mesh::read(&bytes, limits).ok().filter(|_| same)?.scaled(f64::from_bits(question.scales[at]))
    };
    let twin = mesh::twin(&read(0)?, &read(1)?, PAIR_TOLERANCE_MM, watch)?;
    Some(PairRun { as_it_is_mm: twin.as_they_are_mm[0], mirrored_mm: twin.mirrored_mm[0] })
}

/// Compares every pair of a job.
pub fn compare_pairs(disk: &dyn Disk, folder: &Path, job: &Job, runs: &mut Runs, limits: &Limits) {
    for (id, question) in questions(folder, job, runs) {
        if let Some(run) = compare(disk, &question, limits, &mesh::Unwatched) {
            runs.pairs.insert(id, run);
        }
    }
}
