//! Which pieces of another job are still open: wanted there, not under way there, and taken on by no job of the folder.

use std::collections::BTreeSet;
use std::path::Path;

use crate::files::batch::{LONGEST_DOCUMENT, job_files};
use crate::files::disk::Disk;
use crate::job::format::read_job;
use crate::job::{Event, Job, JobId, Line, PieceId, PieceStage, standing};

/// More files than this are not looked through.
const MOST: usize = 2000;

/// Pieces of `from` that jobs in a folder have taken on, as far as those can be read.
pub fn taken_in_folder(disk: &dyn Disk, folder: &Path, from: JobId, besides: JobId) -> BTreeSet<PieceId> {
    let jobs = job_files(disk, folder).unwrap_or_default().into_iter().take(MOST);
    let read = jobs.filter_map(|path| read_job(&disk.read(&path, LONGEST_DOCUMENT).ok()?).ok());
    // What this batch has taken on is what stands on the screen, not what it was when it was saved.
    read.filter(|opened| opened.document.job_id != besides).flat_map(|opened| taken_by(&opened.document, from)).collect()
}

/// Pieces of `from` that a job has taken on.
pub fn taken_by(job: &Job, from: JobId) -> BTreeSet<PieceId> {
    let exceptions = job.lines().flat_map(|(_, line)| line.exceptions.values());
    exceptions.filter_map(|exception| exception.from).filter(|origin| origin.job == from).map(|origin| origin.piece).collect()
}

/// The numbers of a line's pieces that can still be taken on.
#[must_use]
pub fn open_pieces(from: &Job, line: &Line, taken: &BTreeSet<PieceId>) -> Vec<u32> {
    let on_trees = from.trees.iter().flat_map(|tree| &tree.pieces).filter(|hung| hung.line == line.id);
    let (mut all, mut under_way) = (false, BTreeSet::new());
    for hung in on_trees {
        all |= hung.numbers.is_empty();
        under_way.extend(&hung.numbers);
    }
    for entry in standing(&from.record) {
        match &entry.event {
            Event::Reached { pieces, stage } if *stage >= PieceStage::OnTree => {
                under_way.extend(pieces.iter().filter(|piece| piece.line == line.id).map(|piece| piece.number));
            }
            _ => {}
        }
    }
    let wanted = |number: u32| !line.exceptions.get(&number).is_some_and(|exception| exception.cancelled);
    let free = |number: u32| !all && !under_way.contains(&number) && !taken.contains(&PieceId { line: line.id, number });
    (1..=line.quantity).filter(|number| wanted(*number) && free(*number)).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::job::{Entry, Hung, LineId, PieceException, RecordId, Tree};

    fn line() -> Line {
        let cancelled = PieceException { cancelled: true, ..PieceException::default() };
        Line { id: LineId(7), quantity: 6, exceptions: [(5, cancelled)].into(), ..Line::default() }
    }

    #[test]
    fn only_open_pieces_are_offered() {
        let piece = |number| PieceId { line: LineId(7), number };
        let mut from = Job::default();
        assert_eq!(open_pieces(&from, &line(), &BTreeSet::new()), [1, 2, 3, 4, 6]);
        assert_eq!(open_pieces(&from, &line(), &BTreeSet::from([piece(2)])), [1, 3, 4, 6]);
        from.trees.push(Tree { pieces: vec![Hung { line: LineId(7), numbers: [3].into(), ..Hung::default() }], ..Tree::default() });
        let event = Event::Reached { pieces: vec![piece(1)], stage: PieceStage::Delivered };
        from.record.push(Entry { id: RecordId(1), event, ..Entry::default() });
        assert_eq!(open_pieces(&from, &line(), &BTreeSet::from([piece(2)])), [4, 6]);
        from.trees[0].pieces[0].numbers.clear();
        assert!(open_pieces(&from, &line(), &BTreeSet::new()).is_empty(), "a row without numbers hangs the whole line");
    }
}
