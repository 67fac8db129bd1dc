//! When a design was cast before in an alloy, and what became of it.

use std::cmp::Reverse;
use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;
use std::sync::Arc;

use jiff::civil::DateTime;

use super::brief::{Brief, BriefEvent, BriefLine};
use super::facts::{flasks_of_lines, pours, standing};
use super::find::fold;
use super::index::Index;
use crate::job::{FlaskId, JobId, LineId, PieceId, PieceStage};

/// One time a design was cast.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Casting {
    /// When it was poured, by the record; `None` where the record says no time.
    pub at: Option<DateTime>,
    /// The job's file.
    pub path: Arc<Path>,
    /// The job.
    pub job: JobId,
    /// The line.
    pub line: LineId,
    /// The flask, and what is scratched into it; `None` where the record only says that pieces are cast.
    pub flask: Option<(FlaskId, String)>,
    /// Defects for which pieces of the line were rejected in that job, each as often as it was said.
    pub defects: Vec<String>,
}

/// The castings of a design in an alloy; there is one at least.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct LastTime {
    /// The newest.
    pub newest: Casting,
    /// Those before it, newest first.
    pub before: Vec<Casting>,
}

/// Every casting of a design in an alloy that the record of some job tells of, newest first; those without a time come last. Names are held
/// against each other folded. `but` leaves out a job: the one that asks.
#[must_use]
pub fn last_time(index: &Index, design: &str, alloy: &str, but: Option<JobId>) -> Option<LastTime> {
    let (design, alloy) = (fold(design), fold(alloy));
    if design.is_empty() {
        return None;
    }
    // Each text is folded once at most.
    let mut same: BTreeMap<u32, bool> = BTreeMap::new();
    let mut castings: Vec<Casting> = Vec::new();
    let mut seen: BTreeSet<JobId> = BTreeSet::new();
    for (number, file) in index.files().iter().enumerate() {
        let (Ok(job), Some(rows)) = (&file.job, index.rows(number)) else { continue };
        // Of several files that are the same job the first counts.
        if but == Some(job.job_id) || !(job.job_id == JobId::default() || seen.insert(job.job_id)) {
            continue;
        }
        let is_same = |text: u32| index.texts().text(text).is_some_and(|text| fold(text) == design);
        let lines: BTreeSet<LineId> =
            rows.designs().filter(|(_, text)| *same.entry(*text).or_insert_with(|| is_same(*text))).map(|(line, _)| line).collect();
        if !lines.is_empty() {
            castings.extend(castings_of(job, &file.path, &lines, &alloy));
        }
    }
    castings.sort_by(|a, b| (Reverse(a.at), &a.path, a.line, &a.flask).cmp(&(Reverse(b.at), &b.path, b.line, &b.flask)));
    let mut castings = castings.into_iter();
    Some(LastTime { newest: castings.next()?, before: castings.collect() })
}

fn castings_of(job: &Brief, path: &Arc<Path>, lines: &BTreeSet<LineId>, alloy: &str) -> Vec<Casting> {
    let poured: BTreeMap<FlaskId, Option<DateTime>> = pours(job).into_iter().map(|pour| (pour.flask, pour.at)).collect();
    let flasks = flasks_of_lines(job);
    let mut castings = Vec::new();
    for line in job.orders.iter().flat_map(|order| &order.lines).filter(|line| lines.contains(&line.id)) {
        let before = castings.len();
        let casting =
            |at, flask| Casting { at, path: Arc::clone(path), job: job.job_id, line: line.id, flask, defects: defects_of(job, line.id) };
        for flask in flasks.get(&line.id).into_iter().flatten() {
            let of = line.alloy.as_ref().or(flask.alloy.as_ref());
            if let Some(at) = poured.get(&flask.id)
                && of.is_some_and(|of| fold(of.as_str()) == alloy)
            {
                castings.push(casting(*at, Some((flask.id, flask.scratch.clone()))));
            }
        }
        let told = line.alloy.as_ref().is_some_and(|of| fold(of.as_str()) == alloy);
        if castings.len() == before
            && told
            && let Some(at) = said_cast(job, line)
        {
            castings.push(casting(at, None));
        }
    }
    castings
}

/// When the record says of pieces of a line that they are cast, where it does: the latest time.
#[expect(clippy::option_option, reason = "outer: is it said at all; inner: is a time said")]
fn said_cast(job: &Brief, line: &BriefLine) -> Option<Option<DateTime>> {
    let of_line = |pieces: &[PieceId]| pieces.iter().any(|piece| piece.line == line.id);
    let says = |event: &BriefEvent| matches!(event, BriefEvent::Reached { pieces, stage: PieceStage::Cast } if of_line(pieces));
    standing(job).filter(|entry| says(&entry.event)).map(|entry| entry.at).max()
}

fn defects_of(job: &Brief, line: LineId) -> Vec<String> {
    let defect = |event: &BriefEvent| match event {
        BriefEvent::Rejected { piece, defect } if piece.line == line => Some(defect.clone()),
        _ => None,
    };
    standing(job).filter_map(|entry| defect(&entry.event)).collect()
}
