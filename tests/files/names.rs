//! Second files, kept originals, temporaries: their names, and that nothing is ever written over.

use std::{
    path::{Path, PathBuf},
    sync::atomic::{AtomicUsize, Ordering},
    time::{Duration, SystemTime},
};

use pourbook::files::{
    disk::{
        Act, Disk, SimulatedDisk,
        beside::{TEMPORARY_PREFIX, after_ending, before_ending, is_temporary, sweep},
    },
    save::{Original, SaveError, Theirs, hash_of, save},
};

use crate::{
    around::{Around, When},
    crash::job,
    document::{check, document, plain},
};

fn ours_at(result: Result<pourbook::files::save::Saved, SaveError>) -> (PathBuf, Theirs) {
    match result {
        Err(SaveError::ChangedOnDisk { ours_at, theirs, .. }) => (ours_at, theirs),
        other => panic!("{other:?}"),
    }
}

#[test]
fn second_files_are_numbered_and_the_same_work_twice_is_one_file() {
    let (base, theirs) = (document(1, 300), document(2, 300));
    let disk = SimulatedDisk::default();
    disk.put_file(job(), &theirs, 0o600);
    let base = hash_of(&base);
    let at = |number, path: &str| {
        let (ours_at, theirs) = ours_at(plain(&disk, job(), &document(number, 300), Some(&base)));
        assert_eq!((ours_at, theirs), (PathBuf::from(path), Theirs::Different));
        assert_eq!(disk.read(Path::new(path), 1000).unwrap(), document(number, 300));
        assert_eq!(disk.metadata(Path::new(path)).unwrap().mode, Some(0o600), "a private file's second is private");
    };
    at(5, "/bench/lilac (saved beside).ron");
    at(6, "/bench/lilac (saved beside 2).ron");
    at(7, "/bench/lilac (saved beside 3).ron");
    at(6, "/bench/lilac (saved beside 2).ron");
    assert_eq!(disk.read(job(), 1000).unwrap(), theirs);
    assert_eq!(disk.list(Path::new("/bench")).unwrap().len(), 4);
}

#[test]
fn a_file_that_went_away_or_was_not_expected_is_told_apart() {
    let disk = SimulatedDisk::default();
    disk.put_folder(Path::new("/bench"));
    let base = hash_of(&document(1, 300));
    let gone = plain(&disk, job(), &document(2, 300), Some(&base));
    assert!(gone.as_ref().unwrap_err().to_string().starts_with("The file was removed or renamed since you opened it, so nothing"));
    assert_eq!(ours_at(gone).1, Theirs::Gone);
    assert!(!disk.exists(job()).unwrap(), "a file that was moved away does not come back by itself");
    disk.put_file(job(), &document(3, 300), 0o644);
    assert_eq!(ours_at(plain(&disk, job(), &document(4, 300), None)).1, Theirs::InTheWay);
}

#[test]
fn a_file_that_appears_during_a_first_save_is_not_replaced() {
    let disk = SimulatedDisk::default();
    disk.put_folder(Path::new("/bench"));
    let looks = AtomicUsize::new(0);
    // Another program's file comes right after the second look, the last before the rename.
    let watch = |act, path: &Path, when| {
        if (act, path, when) == (Act::Read, job(), When::After) && looks.fetch_add(1, Ordering::SeqCst) == 1 {
            disk.put_file(job(), &document(99, 300), 0o644);
        }
        true
    };
    let intruder = Around { inner: disk.clone(), watch };
    let (beside, theirs) = ours_at(plain(&intruder, job(), &document(1, 300), None));
    assert_eq!(theirs, Theirs::InTheWay);
    assert_eq!(disk.read(job(), 1000).unwrap(), document(99, 300));
    assert_eq!(disk.read(&beside, 1000).unwrap(), document(1, 300));
}

#[test]
fn a_file_that_changes_while_we_save_is_not_replaced() {
    let (old, ours, theirs) = (document(1, 300), document(2, 300), document(3, 300));
    let disk = SimulatedDisk::default();
    disk.put_file(job(), &old, 0o644);
    let syncs = AtomicUsize::new(0);
    let watch = |act, _: &Path, when| {
        if (act, when) == (Act::Sync, When::After) && syncs.fetch_add(1, Ordering::SeqCst) == 0 {
            disk.put_file(job(), &theirs, 0o644);
        }
        true
    };
    let (beside, what) = ours_at(plain(&Around { inner: disk.clone(), watch }, job(), &ours, Some(&hash_of(&old))));
    assert_eq!(what, Theirs::Different);
    assert_eq!(disk.read(job(), 1000).unwrap(), theirs);
    assert_eq!(disk.read(&beside, 1000).unwrap(), ours);
}

#[test]
fn an_earlier_original_is_never_written_over() {
    let disk = SimulatedDisk::default();
    disk.put_file(job(), &document(1, 300), 0o640);
    let mut base = document(1, 300);
    let mut kept = Vec::new();
    for number in 2..5 {
        let next = document(number, 300);
        let saved = save(&disk, job(), &next, Some(&hash_of(&base)), Original::KeepBeside, check).unwrap();
        kept.push(saved.original_at.unwrap());
        base = next;
    }
    let names: Vec<String> = kept.iter().map(|path| path.display().to_string()).collect();
    assert_eq!(names, ["/bench/lilac.ron.hand-edited", "/bench/lilac.ron.hand-edited-2", "/bench/lilac.ron.hand-edited-3"]);
    for (number, path) in (1..).zip(&kept) {
        assert_eq!(disk.read(path, 1000).unwrap(), document(number, 300));
        assert_eq!(disk.metadata(path).unwrap().mode, Some(0o640));
    }
}

#[test]
fn old_temporaries_are_swept_and_nothing_else() {
    let day = Duration::from_secs(86_400);
    let path = |name: &str| PathBuf::from("/bench").join(name);
    let disk = SimulatedDisk::default();
    disk.put_file(&path(&format!("{TEMPORARY_PREFIX}old.tmp")), b"half", 0o644);
    disk.put_file(&path("lilac.ron"), b"job", 0o644);
    disk.put_file(&path("saving.tmp"), b"not ours", 0o644);
    disk.put_folder(&path(&format!("{TEMPORARY_PREFIX}folder")));
    disk.put_link(&path(&format!("{TEMPORARY_PREFIX}link")), &path("lilac.ron"));
    disk.set_time(10 * day);
    disk.put_file(&path(&format!("{TEMPORARY_PREFIX}young.tmp")), b"going on", 0o644);
    disk.set_time(30 * day);
    disk.put_file(&path(&format!("{TEMPORARY_PREFIX}tomorrow.tmp")), b"a clock that is wrong", 0o644);
    let now = SystemTime::UNIX_EPOCH + 10 * day + Duration::from_secs(60);
    let swept = sweep(&disk, Path::new("/bench"), now, day).unwrap();
    assert_eq!(swept.removed, [path(&format!("{TEMPORARY_PREFIX}old.tmp"))]);
    assert!(swept.kept.is_empty());
    assert_eq!(disk.list(Path::new("/bench")).unwrap().len(), 6);
}

#[test]
fn names_stay_within_what_file_systems_take() {
    let long = Path::new("/bench").join(format!("{}.ron", "ä".repeat(125)));
    for path in [before_ending(&long, " (saved beside 12)"), after_ending(&long, ".hand-edited-12")] {
        let name = path.file_name().unwrap().to_str().unwrap();
        assert!(name.len() <= 255 && name.len() > 250, "{} {name}", name.len());
    }
    assert!(before_ending(&long, " (saved beside)").to_str().unwrap().ends_with(" (saved beside).ron"));
    assert_eq!(before_ending(Path::new("a/plain"), " (2)"), Path::new("a/plain (2)"));
    assert!(is_temporary(Path::new("/x/.pourbook-saving-1234-1.tmp")) && !is_temporary(Path::new("/x/.pourbook.ron")));
}
