//! Recovery files: never offered when torn, newest wins, gone after a clean save.

use std::{
    path::{Path, PathBuf},
    sync::{
        Arc, Condvar, Mutex,
        atomic::{AtomicUsize, Ordering},
        mpsc,
    },
};

use jiff::Timestamp;
use pourbook::files::{
    disk::{
        Act, Disk, FailingDisk, RealDisk, SimulatedDisk,
        failing::{Effect, Failure},
    },
    recover::{Contents, RecoveryKey, RecoveryWriter, Snapshot, discard, find, write},
    save::hash_of,
};

use crate::{
    around::{Around, When},
    crash::{job, walk},
    document::{document, number},
};

fn folder() -> &'static Path {
    Path::new("/home/ab/recovery")
}

fn key(name: &str) -> RecoveryKey {
    RecoveryKey { path: Some(PathBuf::from("/bench").join(name)), job_id: format!("id of {name}") }
}

fn at(second: i64) -> Timestamp {
    Timestamp::from_second(1_700_000_000 + second).expect("in range")
}

#[test]
fn what_is_set_aside_is_found_newest_first_with_all_it_needs() {
    let disk = SimulatedDisk::default();
    assert_eq!(find(&disk, folder()).unwrap().found, [], "no folder, nothing to recover");
    let base = hash_of(b"as it was loaded");
    write(&disk, folder(), &key("lilac.ron"), Some(&base), at(0), b"line one\nline two\n").unwrap();
    let unsaved = RecoveryKey { path: None, job_id: "id of a new one".into() };
    write(&disk, folder(), &unsaved, None, at(60), b"").unwrap();
    let listed = find(&disk, folder()).unwrap();
    assert!(listed.not_good.is_empty());
    assert_eq!(listed.found.iter().map(|found| &found.key).collect::<Vec<_>>(), [&unsaved, &key("lilac.ron")]);
    let lilac = &listed.found[1];
    assert_eq!((lilac.base, lilac.time, lilac.bytes.as_slice()), (Some(base), at(0), b"line one\nline two\n".as_slice()));
    assert_eq!((listed.found[0].base, listed.found[0].bytes.as_slice()), (None, b"".as_slice()));
    // A later writing takes the place of the earlier one.
    write(&disk, folder(), &key("lilac.ron"), Some(&base), at(90), b"newer").unwrap();
    assert_eq!(find(&disk, folder()).unwrap().found[0].bytes, b"newer");
    discard(&disk, folder(), &key("lilac.ron")).unwrap();
    discard(&disk, folder(), &key("lilac.ron")).unwrap();
    assert_eq!(find(&disk, folder()).unwrap().found.len(), 1);
}

#[test]
#[cfg(unix)]
fn a_path_that_is_not_unicode_comes_back_as_it_was() {
    use std::os::unix::ffi::OsStrExt as _;
    let disk = SimulatedDisk::default();
    let odd = RecoveryKey { path: Some(PathBuf::from(std::ffi::OsStr::from_bytes(b"/bench/l\xFFlac.ron"))), job_id: "id".into() };
    write(&disk, folder(), &odd, None, at(0), b"x").unwrap();
    assert_eq!(find(&disk, folder()).unwrap().found[0].key, odd);
}

#[test]
fn a_torn_recovery_file_is_never_offered() {
    let disk = SimulatedDisk::default();
    write(&disk, folder(), &key("lilac.ron"), Some(&hash_of(b"base")), at(0), &document(4, 400)).unwrap();
    let file = key("lilac.ron").file_in(folder());
    let whole = disk.read(&file, 10_000).unwrap();
    let mut torn: Vec<Vec<u8>> = (0..whole.len()).map(|end| whole[..end].to_vec()).collect();
    torn.extend((0..whole.len()).map(|at| {
        let mut flipped = whole.clone();
        flipped[at] ^= 0x20;
        flipped
    }));
    torn.extend((0..whole.len()).map(|end| {
        let mut filled = whole.clone();
        filled[end..].fill(0);
        filled
    }));
    torn.push([whole.as_slice(), b"more"].concat());
    for bytes in &torn {
        disk.put_file(&file, bytes, 0o644);
        let listed = find(&disk, folder()).unwrap();
        // Upper-case digits in the seal say the same: only then may a flipped bit still be whole.
        if let Some(found) = listed.found.first() {
            assert!(number(&found.bytes) == Ok(4) && bytes.eq_ignore_ascii_case(&whole), "offered");
        } else {
            assert_eq!(listed.not_good.len(), 1, "not offered, and not hidden");
        }
    }
    println!("{} torn recovery files", torn.len());
    assert!(torn.len() > 1_000);
}

#[test]
fn a_power_cut_leaves_the_last_recovery_or_the_new_one() {
    let disk = SimulatedDisk::default();
    let file = key("lilac.ron").file_in(folder());
    write(&disk, folder(), &key("lilac.ron"), None, at(0), &document(1, 300)).unwrap();
    let good = |state: &pourbook::files::disk::crash::CrashState| {
        let listed = find(&SimulatedDisk::restarted(state), folder()).unwrap();
        assert!(listed.not_good.is_empty());
        listed.found.first().map(|found| number(&found.bytes).unwrap())
    };
    // The first writing makes its folders too: after it they must all survive.
    let mut count =
        walk(&disk, 0, |state, last| (last && good(state) != Some(1)).then(|| "the first recovery is lost".to_owned())).unwrap();
    let from = disk.moments().len();
    write(&disk, folder(), &key("lilac.ron"), None, at(5), &document(2, 300)).unwrap();
    count += walk(&disk, from, |state, last| {
        let there = good(state);
        (there != Some(2) && (last || there != Some(1))).then(|| format!("there is {there:?}"))
    })
    .unwrap();
    assert!(disk.exists(&file).unwrap());
    println!("{count} states while setting aside");
    assert!(count > 100, "{count}");
}

/// A gate that writing waits for: a disk as slow as the test wishes.
#[derive(Default)]
struct Gate {
    open: Mutex<bool>,
    opened: Condvar,
    begun: AtomicUsize,
}

impl Gate {
    fn open(&self) {
        *self.open.lock().expect("no panic holds it") = true;
        self.opened.notify_all();
    }

    fn wait_until_begun(&self) {
        while self.begun.load(Ordering::SeqCst) == 0 {
            std::thread::yield_now();
        }
    }

    fn pass(&self) {
        self.begun.fetch_add(1, Ordering::SeqCst);
        let gate = self.open.lock().expect("no panic holds it");
        drop(self.opened.wait_while(gate, |open| !*open).expect("no panic holds it"));
    }
}

/// A writer on a disk behind a gate.
fn slow() -> (SimulatedDisk, Arc<Gate>, RecoveryWriter) {
    let (disk, gate) = (SimulatedDisk::default(), Arc::new(Gate::default()));
    let theirs = Arc::clone(&gate);
    let watch = move |act, _: &Path, when| {
        if (act, when) == (Act::Write, When::Before) {
            theirs.pass();
        }
        true
    };
    let slow = Around { inner: disk.clone(), watch };
    let writer = RecoveryWriter::start(Arc::new(slow), folder().into(), || ()).expect("a thread is to be had");
    (disk, gate, writer)
}

fn snapshot(name: &str, revision: u64, contents: Contents) -> Snapshot {
    Snapshot { key: key(name), base: None, time: at(i64::try_from(revision).expect("small")), revision, contents }
}

fn ready(revision: u64) -> Contents {
    Contents::Bytes(document(revision, 200).into())
}

fn numbers(disk: &dyn Disk) -> Vec<u64> {
    find(disk, folder()).expect("the folder can be listed").found.iter().map(|found| number(&found.bytes).expect("whole")).collect()
}

#[test]
fn on_a_slow_disk_the_newest_wins_and_nothing_queues_up() {
    let (disk, gate, writer) = slow();
    writer.offer(snapshot("lilac.ron", 1, ready(1)));
    gate.wait_until_begun();
    let made = Arc::new(AtomicUsize::new(0));
    for revision in 2..=1000 {
        let made = Arc::clone(&made);
        let make = move || {
            made.fetch_add(1, Ordering::SeqCst);
            Ok(document(revision, 200))
        };
        writer.offer(snapshot("lilac.ron", revision, Contents::Make(Box::new(make))));
    }
    // One that comes late and is older does not push the newer one out.
    writer.offer(snapshot("lilac.ron", 500, ready(500)));
    gate.open();
    drop(writer);
    assert_eq!(numbers(&disk), [1000]);
    assert_eq!(gate.begun.load(Ordering::SeqCst), 2, "the first and the newest, no others");
    assert_eq!(made.load(Ordering::SeqCst), 1, "those in between were never even made");
}

#[test]
fn a_clean_save_removes_it_even_while_it_is_being_written() {
    let (disk, gate, writer) = slow();
    writer.offer(snapshot("lilac.ron", 1, ready(1)));
    gate.wait_until_begun();
    writer.offer(snapshot("rose.ron", 7, ready(7)));
    writer.saved(&key("lilac.ron"), 1);
    gate.open();
    drop(writer);
    assert_eq!(numbers(&disk), [7], "the other document's stays");
}

#[test]
fn a_save_does_not_remove_what_is_newer_than_it() {
    // Still waiting when the save ends.
    let (disk, gate, writer) = slow();
    writer.offer(snapshot("lilac.ron", 1, ready(1)));
    gate.wait_until_begun();
    writer.offer(snapshot("lilac.ron", 3, ready(3)));
    writer.saved(&key("lilac.ron"), 2);
    gate.open();
    drop(writer);
    assert_eq!(numbers(&disk), [3]);
    // On the disk already.
    let disk = SimulatedDisk::default();
    let (told, done) = mpsc::channel();
    let writer = RecoveryWriter::start(Arc::new(disk.clone()), folder().into(), move || told.send(()).expect("the test listens")).unwrap();
    writer.offer(snapshot("lilac.ron", 3, ready(3)));
    done.recv().unwrap();
    writer.saved(&key("lilac.ron"), 2);
    writer.offer(snapshot("rose.ron", 1, ready(1)));
    done.recv().unwrap();
    assert_eq!(numbers(&disk), [3, 1]);
    writer.saved(&key("lilac.ron"), 3);
    done.recv().unwrap();
    assert_eq!(numbers(&disk), [1]);
    drop(writer);
}

#[test]
fn a_failure_is_reported_and_the_writer_goes_on() {
    let failure = Failure { call: 1, kind: std::io::ErrorKind::StorageFull, effect: Effect::NotDone, for_good: false };
    let disk = Arc::new(FailingDisk::new(SimulatedDisk::default(), Some(failure)));
    let (told, done) = mpsc::channel();
    let writer =
        RecoveryWriter::start(Arc::clone(&disk) as Arc<dyn Disk>, folder().into(), move || told.send(()).expect("the test listens"))
            .unwrap();
    writer.offer(snapshot("lilac.ron", 1, ready(1)));
    done.recv().unwrap();
    let reports = writer.take_reports();
    assert!(
        reports.len() == 1 && reports[0].revision == 1 && reports[0].result.as_ref().is_err_and(|what| what.contains("the disk is full")),
        "{reports:?}"
    );
    writer.offer(snapshot("rose.ron", 2, Contents::Make(Box::new(|| Err("it cannot be written down".into())))));
    done.recv().unwrap();
    assert!(writer.take_reports()[0].result.is_err());
    writer.offer(snapshot("rose.ron", 3, ready(3)));
    done.recv().unwrap();
    assert!(writer.take_reports()[0].result.is_ok());
    assert!(writer.take_reports().is_empty());
    assert_eq!(numbers(disk.inner()), [3]);
    drop(writer);
}

#[test]
fn on_the_real_disk_too() {
    let place = tempfile::tempdir().unwrap();
    let folder = place.path().join("deep/recovery");
    let writer = RecoveryWriter::start(Arc::new(RealDisk), folder.clone(), || ()).unwrap();
    writer.offer(Snapshot {
        key: RecoveryKey { path: Some(job().into()), job_id: "id".into() },
        base: None,
        time: at(1),
        revision: 1,
        contents: ready(9),
    });
    drop(writer);
    let listed = find(&RealDisk, &folder).unwrap();
    assert_eq!(number(&listed.found[0].bytes), Ok(9));
    assert_eq!(RealDisk.list(&folder).unwrap(), [listed.found[0].recovery_path.clone()], "no temporary left");
}
