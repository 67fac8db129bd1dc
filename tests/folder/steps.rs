//! An index that goes along with what happens in its folder, against one that is built anew.

use std::fs::{self, File};
use std::path::Path;
use std::time::{Duration, SystemTime};

use pourbook::files::disk::RealDisk;
use pourbook::folder::{Broken, Changes, Index, Query};
use pourbook::job::format::write_job;

use super::Seed;
use super::studio::{build, make, studio};

fn text(number: u64, seed: &mut Seed) -> String {
    write_job(&make(number, seed)).unwrap()
}

/// Clocks begin here: long ago, so that nothing depends on how fast a test runs.
fn at(seconds: f64) -> SystemTime {
    SystemTime::UNIX_EPOCH + Duration::from_secs(1_700_000_000) + Duration::from_secs_f64(seconds)
}

fn put(folder: &Path, name: &str, bytes: impl AsRef<[u8]>, modified: SystemTime) {
    fs::write(folder.join(name), bytes).unwrap();
    File::options().write(true).open(folder.join(name)).unwrap().set_modified(modified).unwrap();
}

fn same(index: &Index, other: &Index) {
    assert!(index == other, "the files");
    for words in ["limpet", "kiln", "a", "silver 925", "no-fill"] {
        let query = Query { words: words.to_owned(), most: usize::MAX, ..Query::default() };
        assert_eq!(index.search(&query), other.search(&query), "{words}");
    }
}

fn step(folder: &Path, now: f64, number: u64, seed: &mut Seed) {
    // Times as coarse as the coarsest disks have them, and now and then in the future.
    let modified = at((now / 2.0).floor() * 2.0 + if seed.one_in(10) { 5.0 } else { 0.0 });
    let (one, other) = (format!("{}.ron", seed.below(12)), format!("{}.ron", seed.below(12)));
    match seed.below(7) {
        0 => drop(fs::remove_file(folder.join(one))),
        1 => drop(fs::rename(folder.join(one), folder.join(other))),
        2 => {
            // Broken, and of a length that another text may have.
            let mut broken = text(seed.below(20) as u64, seed);
            broken.truncate(broken.len() / 2);
            put(folder, &one, broken, modified);
        }
        3 => {
            // Another content of the same length: only the time can tell, or not even that.
            if let Ok(mut bytes) = fs::read(folder.join(&one)) {
                if let Some(digit) = bytes.iter_mut().rev().find(|byte| matches!(byte, b'1'..=b'8')) {
                    *digit += 1;
                }
                put(folder, &one, bytes, modified);
            }
        }
        4 => {
            put(folder, seed.of(&["studio.ron", ".hidden.ron", ".1.ron.lock", "1 (saved beside).ron", "1.ron.hand-edited"]), "x", modified)
        }
        _ => put(folder, &one, text(number, seed), modified),
    }
}

fn told(before: &Index, after: &Index, changes: &Changes) {
    let job = |index: &Index, path: &Path| index.files().iter().find(|file| *file.path == *path).map(|file| file.job.clone());
    for path in before.files().iter().chain(after.files()).map(|file| file.path.to_path_buf()) {
        let (was, is) = (job(before, &path), job(after, &path));
        assert_eq!(changes.new.contains(&path), was.is_none() && is.is_some());
        assert_eq!(changes.gone.contains(&path), was.is_some() && is.is_none());
        assert_eq!(changes.changed.contains(&path), was.is_some() && is.is_some() && was != is);
    }
}

#[test]
fn an_index_that_goes_along_is_the_one_that_is_built_anew() {
    for round in 0..6 {
        let mut seed = Seed(round);
        let folder = tempfile::tempdir().unwrap();
        let mut index = Index::build(&RealDisk, folder.path(), at(0.0)).unwrap();
        let mut now = 0.0;
        for number in 0..60 {
            for _ in 0..1 + seed.below(3) {
                now += 0.1 + seed.below(30) as f64 / 10.0;
                step(folder.path(), now, number, &mut seed);
            }
            let before = index.clone();
            let changes = index.refresh(&RealDisk, at(now)).unwrap();
            told(&before, &index, &changes);
            same(&index, &Index::build(&RealDisk, folder.path(), at(now)).unwrap());
        }
    }
}

#[test]
fn only_what_changed_is_read_again() {
    let mut seed = Seed(7);
    let folder = tempfile::tempdir().unwrap();
    for number in 0..40 {
        put(folder.path(), &format!("{number}.ron"), text(number, &mut seed), at(0.0));
    }
    let mut index = Index::build(&RealDisk, folder.path(), at(100.0)).unwrap();
    assert_eq!(index.refresh(&RealDisk, at(101.0)).unwrap().read, 0);
    put(folder.path(), "7.ron", text(200, &mut seed), at(101.5));
    fs::remove_file(folder.path().join("8.ron")).unwrap();
    let changes = index.refresh(&RealDisk, at(102.0)).unwrap();
    assert_eq!((changes.changed.len(), changes.gone.len(), changes.read), (1, 1, 1));
    // It was read half a second after it changed: for two seconds its content is looked at, then its time is enough.
    let reads = [103.0, 104.0, 105.0].map(|now| index.refresh(&RealDisk, at(now)).unwrap().read);
    assert_eq!(reads, [1, 1, 0]);
}

#[test]
fn a_change_that_its_time_does_not_show_is_seen() {
    let folder = tempfile::tempdir().unwrap();
    let old = text(1, &mut Seed(8));
    let new = old.replacen(" and ", " und ", 1);
    assert!(old != new && old.len() == new.len());
    put(folder.path(), "a.ron", old, at(10.0));
    let mut index = Index::build(&RealDisk, folder.path(), at(10.9)).unwrap();
    put(folder.path(), "a.ron", new, at(10.0));
    assert_eq!(index.refresh(&RealDisk, at(60.0)).unwrap().changed.len(), 1);
}

#[test]
fn a_folder_that_cannot_be_listed_leaves_the_index_as_it_was() {
    let (_, mut index, folder) = studio(1, 3);
    let before = index.clone();
    drop(folder);
    assert!(index.refresh(&RealDisk, SystemTime::now()).is_err());
    assert!(index == before && index.files().len() == 3);
}

#[test]
fn broken_files_are_listed_with_their_reason_and_passed_over() {
    let folder = tempfile::tempdir().unwrap();
    put(folder.path(), "a.ron", text(1, &mut Seed(1)), at(0.0));
    put(folder.path(), "b.ron", "(format: 2, readable_since: 1,\n  name: 5,\n)", at(0.0));
    put(folder.path(), "c.ron", "(format: 2, readable_since: 1,\n  studio_id: \"00000000000000000000000000000001\",\n)", at(0.0));
    fs::create_dir(folder.path().join("d.ron")).unwrap();
    let index = build(folder.path());
    let broken: Vec<(String, &Broken)> =
        index.broken().map(|(path, why)| (path.file_name().unwrap().to_string_lossy().into_owned(), why)).collect();
    assert!(matches!(broken[0], (ref name, Broken::Content(_)) if name == "b.ron"), "{broken:?}");
    assert!(broken[0].1.to_string().starts_with("line 2"), "{broken:?}");
    assert!(matches!(broken[1], (ref name, Broken::Content(_)) if name == "c.ron"), "{broken:?}");
    assert_eq!((broken.len(), index.jobs().count()), (2, 1));
}

#[test]
fn two_files_of_one_job_are_told_and_counted_once() {
    let folder = tempfile::tempdir().unwrap();
    let job = make(3, &mut Seed(3));
    for name in ["a.ron", "b copy.ron"] {
        put(folder.path(), name, write_job(&job).unwrap(), at(0.0));
    }
    let index = build(folder.path());
    let twins = index.twins();
    assert_eq!((twins.len(), twins[0].0, twins[0].1.len()), (1, job.job_id, 2));
    assert_eq!((index.jobs().count(), index.jobs_once().count()), (2, 1));
}

#[test]
fn texts_that_nobody_says_any_more_are_let_go_and_nothing_else() {
    // More than ten thousand of them, so that the rows are made anew on the way.
    let folder = tempfile::tempdir().unwrap();
    let mut index = Index::build(&RealDisk, folder.path(), at(0.0)).unwrap();
    for round in 1..=4 {
        let now = f64::from(round) * 100.0;
        for number in 0..5_000 {
            let id = format!("{:032x}", number + 1);
            let text = format!("(format: 2, readable_since: 1, job_id: \"{id}\", name: \"Limpet{round} {}\")", number + round * 5_000);
            put(folder.path(), &format!("{number}.ron"), text, at(now));
        }
        index.refresh(&RealDisk, at(now + 50.0)).unwrap();
        let found = |words: String| index.search(&Query { words, ..Query::default() }).all;
        assert_eq!((found(format!("limpet{round}")), found(format!("limpet{}", round - 1))), (5_000, 0));
    }
    same(&index, &Index::build(&RealDisk, folder.path(), at(450.0)).unwrap());
}
