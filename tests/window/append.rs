//! The record only grows: whatever is written, withdrawn, taken back, done again, saved and opened anew, what a file once said it says for good.

use std::path::Path;

use jiff::civil::date;
use pourbook::app::workbook::Workbook;
use pourbook::files::disk::RealDisk;
use pourbook::job::format::{read_job, write_job};
use pourbook::job::{Entry, Event, Job, JobId, RecordId, standing};

/// Numbers that look random and are the same for the same seed: a 64-bit linear congruence (Knuth's MMIX constants, from memory).
struct Lot(u64);

impl Lot {
    fn below(&mut self, end: usize) -> usize {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        usize::try_from((self.0 >> 33) % end as u64).unwrap()
    }
}

fn on_disk(path: &Path) -> Vec<Entry> {
    read_job(&std::fs::read(path).unwrap()).unwrap().document.record
}

/// Withdrawals that taking back wrote.
fn taken_back(record: &[Entry]) -> usize {
    record.iter().filter(|entry| matches!(&entry.event, Event::Withdrawn { reason, .. } if reason == "taken back")).count()
}

fn next_id(job: &Job) -> RecordId {
    RecordId(job.record.iter().map(|entry| entry.id.0).max().unwrap_or(0) + 1)
}

/// What a history came through, so that none of it goes untried.
#[derive(Default)]
struct Seen {
    saves: usize,
    undone: usize,
    withdrawn: usize,
}

fn live_through(seed: u64, seen: &mut Seen) {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("lilac.ron");
    std::fs::write(&path, write_job(&Job { job_id: JobId([5; 16]), ..Job::default() }).unwrap()).unwrap();
    let open = || Workbook::open(&RealDisk, &path, date(2026, 3, 2)).unwrap();
    let (mut lot, mut workbook, mut before) = (Lot(seed), open(), Vec::new());
    for step in 0..60 {
        match lot.below(10) {
            0..=2 => workbook.edit("written", |job| {
                let id = next_id(job);
                job.record.push(Entry { id, notes: format!("{step}"), ..Entry::default() });
            }),
            3 if !workbook.job.record.is_empty() => {
                let entry = workbook.job.record[lot.below(workbook.job.record.len())].id;
                seen.withdrawn += 1;
                workbook.edit("withdrawn", move |job| {
                    let event = Event::Withdrawn { entry, reason: "the wrong ring".to_owned() };
                    job.record.push(Entry { id: next_id(job), event, ..Entry::default() });
                });
            }
            4 => workbook.edit("named", |job| job.name = format!("Lilac {step}")),
            5 | 6 => workbook.undo(),
            7 => workbook.redo(),
            8 => {
                let was = on_disk(&path);
                // What was saved and is taken back is withdrawn, so that it can be saved.
                workbook.save(&RealDisk).unwrap_or_else(|error| panic!("after step {step} of {seed}: {error}"));
                seen.saves += 1;
                seen.undone += usize::from(taken_back(&workbook.job.record) > taken_back(&was));
            }
            _ if !workbook.is_changed() => workbook = open(),
            _ => {}
        }
        let now = on_disk(&path);
        assert!(now.starts_with(&before), "after step {step} of {seed}: {before:?} became {now:?}");
        assert!(now.is_sorted_by(|a, b| a.id < b.id));
        // A withdrawal takes nothing out: what it is of still stands there, and no longer counts.
        for entry in &now {
            if let Event::Withdrawn { entry: of, .. } = &entry.event {
                assert!(now.iter().any(|other| other.id == *of) && standing(&now).all(|other| other.id != *of));
            }
        }
        before = now;
    }
}

#[test]
fn nothing_that_was_saved_ever_vanishes() {
    let mut seen = Seen::default();
    for seed in 0..40 {
        live_through(seed, &mut seen);
    }
    assert!(seen.saves > 100 && seen.undone > 5 && seen.withdrawn > 50, "{} {} {}", seen.saves, seen.undone, seen.withdrawn);
}
