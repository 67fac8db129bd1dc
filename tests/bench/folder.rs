//! How long a studio's folder takes to look through: ten thousand jobs of some forty kilobytes, read for the first time, refreshed and searched,
//! beside `ron` reading the same files.
//!
//! `cargo bench --bench folder` prints it; any other run does two hundred jobs. The files come from the page cache: they were written just
//! before. What a disk adds is not measured here.
#![allow(
    missing_docs,
    dead_code,
    clippy::unwrap_used,
    clippy::print_stdout,
    clippy::cast_possible_truncation,
    clippy::cast_possible_wrap,
    reason = "a bench prints, and may stop where it stands"
)]

#[path = "../folder/seed.rs"]
mod seed;
#[path = "../folder/studio.rs"]
mod studio;

use std::path::Path;
use std::time::{Duration, Instant, SystemTime};

use jiff::civil::date;
use pourbook::files::disk::RealDisk;
use pourbook::folder::{Index, Query, claims, last_time};
use pourbook::job::Job;
use pourbook::job::format::{read_job, write_job};
use seed::Seed;

fn timed<T>(name: &str, task: impl FnOnce() -> T) -> T {
    let begun = Instant::now();
    let done = task();
    println!("{name}: {:.1} ms", begun.elapsed().as_secs_f64() * 1e3);
    done
}

/// A sample whose shelf and patterns give the invented jobs the bulk of real ones.
fn bulk() -> Job {
    let file = Path::new(env!("CARGO_MANIFEST_DIR")).join("sample-jobs/mixed-kiln.ron");
    read_job(&std::fs::read(file).unwrap()).unwrap().document
}

fn write(folder: &Path, many: u64) -> usize {
    let (sample, mut seed) = (bulk(), Seed(1));
    let mut bytes = 0;
    for number in 0..many {
        let job = studio::make(number, &mut seed);
        let job = Job { shelf: sample.shelf.clone(), patterns: sample.patterns.clone(), quotes: sample.quotes.clone(), ..job };
        let text = write_job(&job).unwrap();
        bytes += text.len();
        std::fs::write(folder.join(studio::file_of(number)), text).unwrap();
    }
    bytes
}

/// Both readers on one thread, over the same files.
fn readers(folder: &Path, many: u64) {
    let texts: Vec<Vec<u8>> = (0..many.min(300)).map(|number| std::fs::read(folder.join(studio::file_of(number))).unwrap()).collect();
    let bytes: usize = texts.iter().map(Vec::len).sum();
    let speed = |name: &str, read: &dyn Fn(&[u8])| {
        let begun = Instant::now();
        (0..3).for_each(|_| texts.iter().for_each(|text| read(text)));
        println!("{name}: {:.0} MB a second on a core", 3.0 * bytes as f64 / 1e6 / begun.elapsed().as_secs_f64());
    };
    let options = ron::Options::default().with_default_extension(ron::extensions::Extensions::IMPLICIT_SOME);
    let by_ron = |text: &[u8]| {
        let text = std::str::from_utf8(text).unwrap().replacen("format: 2,", "", 1).replacen("readable_since: 1,", "", 1);
        options.from_str::<pourbook::folder::Brief>(&text).unwrap()
    };
    speed("briefly, by the quick reader", &|text| drop(pourbook::folder::Brief::read(text).unwrap()));
    speed("briefly, by ron", &|text| drop(by_ron(text)));
}

fn searches(index: &Index) {
    let words =
        ["", "limpet", "l", "limpet ring silver", "écume no-fill", "aa", "s", "54 periwinkle", "kiln-studio", "nothing of the kind"];
    let mut queries: Vec<Query> = words.iter().map(|words| Query { words: (*words).to_owned(), ..Query::default() }).collect();
    queries.push(Query { words: "a b c d e f s r".to_owned(), ..Query::default() });
    queries.push(Query { alloy: "silver-925".to_owned(), defect: "no-fill".to_owned(), ..Query::default() });
    queries[0].from = Some(date(1900, 1, 1));
    let mut worst = Duration::ZERO;
    for query in &queries {
        let mut times: Vec<Duration> = Vec::new();
        for _ in 0..21 {
            let begun = Instant::now();
            std::hint::black_box(index.search(query));
            times.push(begun.elapsed());
        }
        times.sort_unstable();
        worst = worst.max(times[10]);
        println!("search “{}”: {:.1} ms, at worst {:.1}", query.words, times[10].as_secs_f64() * 1e3, times[20].as_secs_f64() * 1e3);
    }
    println!("the slowest search: {:.1} ms", worst.as_secs_f64() * 1e3);
}

fn main() {
    let many = if std::env::args().any(|argument| argument == "--bench") { 10_000 } else { 200 };
    let folder = tempfile::tempdir().unwrap();
    let bytes = write(folder.path(), many);
    println!("{many} jobs of {:.1} kB", bytes as f64 / many as f64 / 1e3);
    readers(folder.path(), many);
    let later = || SystemTime::now() + Duration::from_secs(10);
    let mut index = timed("looked through for the first time", || Index::build(&RealDisk, folder.path(), later()).unwrap());
    assert_eq!(index.jobs().count() as u64, many);
    timed("again, nothing changed", || assert!(index.refresh(&RealDisk, later()).unwrap().is_empty()));
    searches(&index);
    timed("the last time a design was cast", || last_time(&index, "limpet ring", "silver-925", None));
    timed("pieces taken on by several", || claims(&index).twice.len());
}
