//! Pieces that were taken on from one job into another. That a piece left a job is written only in the job that took it on.

use std::collections::BTreeMap;
use std::path::Path;
use std::sync::Arc;

use super::brief::Brief;
use super::index::Index;
use crate::job::{From, JobId, LineId, PieceId};

/// A piece that took another's place in a job.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub struct Taken {
    /// The file of the job that took it on.
    pub path: Arc<Path>,
    /// That job.
    pub job: JobId,
    /// The piece as it is numbered there.
    pub piece: PieceId,
}

/// A piece that was taken on more than once. A finding: which of them really has it is for the caster to say.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Twice {
    /// The piece in the job it came from.
    pub from: From,
    /// Everyone who took it on, two at least, as they stand in the files, these by path.
    pub by: Vec<Taken>,
}

/// Why a piece that was taken on cannot be found where it came from.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Missing {
    /// No file of the folder is that job. Where some could not be read, it may be one of them.
    Job,
    /// The job has no such line.
    Line,
    /// The line has fewer pieces.
    Piece,
    /// It is said to come from its own job.
    Itself,
}

/// A piece that was taken on from where it is not.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Dangling {
    /// Who took it on.
    pub by: Taken,
    /// What it says it took on.
    pub from: From,
    /// What is missing.
    pub missing: Missing,
}

/// Every piece that was taken on.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Claims {
    /// Taken on more than once, by job and piece.
    pub twice: Vec<Twice>,
    /// Taken on from where it is not, as they stand in the files, these by path.
    pub dangling: Vec<Dangling>,
    /// Files that could not be read: pieces may have left for these, or come from them.
    pub unread: usize,
    left: BTreeMap<JobId, BTreeMap<PieceId, Vec<Taken>>>,
}

impl Claims {
    /// The pieces that left a job, each with who took it on. Pieces the job itself does not know are among them.
    pub fn left(&self, job: JobId) -> impl Iterator<Item = (PieceId, &[Taken])> {
        self.left.get(&job).into_iter().flatten().map(|(piece, by)| (*piece, by.as_slice()))
    }
}

/// Looks through all jobs for pieces that were taken on. Cancelled pieces claim nothing; of several files that are the same job the first
/// counts ([`Index::twins`]).
#[must_use]
pub fn claims(index: &Index) -> Claims {
    let mut claims = Claims { unread: index.broken().count(), ..Claims::default() };
    // Of each job the pieces of each line.
    let jobs: BTreeMap<JobId, BTreeMap<LineId, u32>> = index.jobs_once().map(|(_, job)| (job.job_id, quantities(job))).collect();
    for (path, job) in index.jobs_once() {
        for (piece, from) in taken_on(job) {
            let by = Taken { path: Arc::clone(path), job: job.job_id, piece };
            if let Some(missing) = missing(&jobs, job.job_id, &from) {
                claims.dangling.push(Dangling { by: by.clone(), from, missing });
            }
            if from.job != job.job_id {
                claims.left.entry(from.job).or_default().entry(from.piece).or_default().push(by);
            }
        }
    }
    for (job, pieces) in &claims.left {
        for (piece, by) in pieces {
            if by.len() > 1 {
                claims.twice.push(Twice { from: From { job: *job, piece: *piece }, by: by.clone() });
            }
        }
    }
    claims
}

/// Pieces that jobs other than this took on, by where these are from, with the names of their files.
#[must_use]
pub fn taken_by_others(index: &Index, but: JobId) -> BTreeMap<From, Vec<String>> {
    let mut taken: BTreeMap<From, Vec<String>> = BTreeMap::new();
    for (path, job) in index.jobs_once().filter(|(_, job)| job.job_id != but) {
        let name = || path.file_stem().map(|name| name.to_string_lossy().into_owned()).unwrap_or_default();
        let from_elsewhere = taken_on(job).filter(|(_, from)| from.job != job.job_id);
        from_elsewhere.for_each(|(_, from)| taken.entry(from).or_default().push(name()));
    }
    taken
}

fn quantities(job: &Brief) -> BTreeMap<LineId, u32> {
    job.orders.iter().flat_map(|order| &order.lines).map(|line| (line.id, line.quantity)).collect()
}

fn taken_on(job: &Brief) -> impl Iterator<Item = (PieceId, From)> {
    job.orders.iter().flat_map(|order| &order.lines).flat_map(|line| {
        let claiming = line.exceptions.iter().filter(|(_, exception)| !exception.cancelled);
        claiming.filter_map(|(number, exception)| Some((PieceId { line: line.id, number: *number }, exception.from?)))
    })
}

fn missing(jobs: &BTreeMap<JobId, BTreeMap<LineId, u32>>, taker: JobId, from: &From) -> Option<Missing> {
    if from.job == taker {
        return Some(Missing::Itself);
    }
    let Some(lines) = jobs.get(&from.job).filter(|_| from.job != JobId::default()) else { return Some(Missing::Job) };
    let Some(quantity) = lines.get(&from.piece.line) else { return Some(Missing::Line) };
    (!(1..=*quantity).contains(&from.piece.number)).then_some(Missing::Piece)
}
