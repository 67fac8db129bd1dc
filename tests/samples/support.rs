//! Opening and computing a sample.

use std::path::{Path, PathBuf};

use jiff::civil::date;
use jiff::tz::TimeZone;
use pourbook::calc::mould_heat::answer_all;
use pourbook::calc::{Book, Report, Runs, Setting, Shelves, recompute};
use pourbook::calc::{batch, plan};
use pourbook::cores::AllCores;
use pourbook::files::batch::Batch;
use pourbook::files::disk::RealDisk;
use pourbook::files::outside::Allowed;
use pourbook::files::pattern_runs::measure_patterns;
use pourbook::job::Job;
use pourbook::mesh::Limits;

/// The jobs of the sample studio.
pub const JOBS: [&str; 8] = [
    "first-pour.ron",
    "mixed-kiln.ron",
    "order-book.ron",
    "fair.ron",
    "three-trees.ron",
    "workshop-class.ron",
    "power-cut.ron",
    "own-gold.ron",
];

/// A file of the sample studio.
pub fn path(file: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("sample-jobs").join(file)
}

/// A sample with the studio beside it.
pub fn open(file: &str) -> Batch {
    let batch = Batch::open(&RealDisk, &path(file)).unwrap_or_else(|error| panic!("{error}"));
    assert_eq!(batch.studio_error, None, "{file}: the studio beside it");
    batch
}

/// What is known of the sample's pattern files.
pub fn runs(batch: &Batch) -> Runs {
    measure_patterns(&RealDisk, batch.folder(), &batch.sound, &Allowed::None, &Limits::default())
}

/// The day and the clock all samples are looked at: everything they plan lies ahead of it.
pub fn setting(batch: &Batch) -> Setting {
    Setting { at: date(2026, 11, 25), zone: TimeZone::get(&batch.studio.site.zone).expect("the studio's zone is known") }
}

/// The book of a sample's plan, which places every open piece.
pub fn planned(file: &str) -> Book {
    let batch = open(file);
    let shelves = Shelves::new(&batch.sound, &batch.studio);
    let mut ask = batch::ask(&batch.sound, &batch.studio, &shelves, &runs(&batch), &setting(&batch), &batch::Options::default());
    let found = batch::settle(&ask.question(), plan::STEPS, &|_| true);
    plan::check(&found.wish, &found.plan).unwrap();
    let outcome = ask.read(&found, &shelves.job);
    assert!(!outcome.rows.is_empty() && outcome.left.is_empty(), "{file}: {:?}", outcome.left);
    ask.book
}

/// A job of the batch, computed.
pub fn computed(batch: &Batch, job: &Job) -> (Report, Book) {
    let mut book = <Book as Default>::default();
    let (shelves, mut runs) = (Shelves::new(job, &batch.studio), runs(batch));
    let mut report = recompute(job, &batch.studio, &shelves, &runs, &setting(batch), &mut book);
    if answer_all(&report, &mut runs, &AllCores) {
        report = recompute(job, &batch.studio, &shelves, &runs, &setting(batch), &mut book);
    }
    (report, book)
}
