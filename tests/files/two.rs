//! Two programs that write one job at the same time: what either wrote is in the file or beside it, and nothing is lost.

use std::collections::BTreeSet;
use std::path::{Path, PathBuf};
use std::process::{Child, Command, Stdio};
use std::time::Duration;

use jiff::Timestamp;
use pourbook::files::batch::Batch;
use pourbook::files::disk::RealDisk;
use pourbook::files::lock::{Holder, Lock, release, take};
use pourbook::job::format::{read_job, write_job};
use pourbook::job::{Entry, Job, JobId, RecordId};

/// Whose hands, and the number of the save.
type Entries = BTreeSet<(String, String)>;

/// How often each program saves.
const SAVES: u32 = 40;

/// Saves again and again as one of two. Run as a child.
#[test]
#[ignore = "a child of the tests here"]
fn child_writing_along() {
    let Ok(path) = std::env::var("POURBOOK_TEST_TWO") else { return };
    let name = std::env::var("POURBOOK_TEST_NAME").unwrap();
    let polite = std::env::var("POURBOOK_TEST_POLITE").is_ok();
    let path = Path::new(&path);
    let me = Holder { host: "bench".to_owned(), pid: std::process::id(), initials: name.clone(), time: Timestamp::now() };
    for number in 0..SAVES {
        while polite && take(&RealDisk, path, &me).unwrap() != Lock::None {
            std::thread::sleep(Duration::from_micros(500));
        }
        // Whoever finds the file changed has its own beside it, and goes on with the other's.
        let mut batch = Batch::open(&RealDisk, path).unwrap();
        let id = RecordId(batch.job.record.iter().map(|entry| entry.id.0).max().unwrap_or(0) + 1);
        batch.job.record.push(Entry { id, hands: name.clone(), notes: number.to_string(), ..Entry::default() });
        let saved = batch.save(&RealDisk);
        assert!(!polite || saved.is_ok(), "nobody else writes while the lock is held: {saved:?}");
        if polite {
            assert!(release(&RealDisk, path, &me).unwrap());
        }
    }
}

fn begin(path: &Path, name: &str, polite: bool) -> Child {
    let mut command = Command::new(std::env::current_exe().unwrap());
    command.args(["--exact", "two::child_writing_along", "--ignored", "--nocapture"]);
    command.env("POURBOOK_TEST_TWO", path).env("POURBOOK_TEST_NAME", name).stdout(Stdio::null()).stderr(Stdio::inherit());
    if polite {
        command.env("POURBOOK_TEST_POLITE", "yes");
    }
    command.spawn().unwrap()
}

/// What either program wrote: in the file, and in what lies beside it.
fn written(folder: &Path) -> (Entries, Entries) {
    let entries = |path: &PathBuf| {
        let job = read_job(&std::fs::read(path).unwrap()).unwrap_or_else(|error| panic!("{}: {error}", path.display())).document;
        job.record.into_iter().map(|entry| (entry.hands, entry.notes)).collect::<Vec<_>>()
    };
    let files =
        std::fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path()).filter(|path| path.extension().is_some_and(|e| e == "ron"));
    let (file, beside): (Vec<PathBuf>, Vec<PathBuf>) = files.partition(|path| path.file_name().unwrap() == "lilac.ron");
    let all = |paths: &[PathBuf]| paths.iter().flat_map(entries).collect();
    (all(&file), all(&beside))
}

fn fight(polite: bool) -> (Entries, Entries) {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("lilac.ron");
    std::fs::write(&path, write_job(&Job { job_id: JobId([5; 16]), name: "Lilac".to_owned(), ..Job::default() }).unwrap()).unwrap();
    let children = ["MW", "JT"].map(|name| begin(&path, name, polite));
    for mut child in children {
        assert!(child.wait().unwrap().success());
    }
    written(folder.path())
}

fn everything() -> Entries {
    ["MW", "JT"].into_iter().flat_map(|name| (0..SAVES).map(move |number| (name.to_owned(), number.to_string()))).collect()
}

#[test]
fn with_locks_every_entry_of_both_is_in_the_file() {
    let (file, beside) = fight(true);
    assert_eq!((file, beside.len()), (everything(), 0));
}

#[test]
fn without_locks_every_entry_of_both_is_in_the_file_or_beside_it() {
    let (file, beside) = fight(false);
    let all: Entries = file.union(&beside).cloned().collect();
    let lost: Vec<_> = everything().difference(&all).cloned().collect();
    assert!(lost.is_empty(), "{} of {} lost: {lost:?}", lost.len(), everything().len());
}
