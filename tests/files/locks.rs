//! Locks are courtesy: they tell, they never keep anyone out.

use std::{io::ErrorKind, path::Path};

use jiff::Timestamp;
use pourbook::files::{
    disk::{
        Disk, FailingDisk, SimulatedDisk,
        failing::{Effect, Failure},
    },
    lock::{Holder, Lock, Standing, lock_path, look, release, take, take_over},
    save::hash_of,
};

use crate::{
    crash::job,
    document::{document, plain},
};

const LOCK: &str = "/bench/.lilac.ron.lock";

fn holder(host: &str, pid: u32, minute: i64) -> Holder {
    Holder { host: host.into(), pid, initials: "AB".into(), time: Timestamp::from_second(1_700_000_000 + minute * 60).expect("in range") }
}

fn bench() -> SimulatedDisk {
    let disk = SimulatedDisk::default();
    disk.put_file(job(), &document(1, 300), 0o644);
    disk
}

#[test]
fn the_first_takes_it_the_second_is_told_and_saves_all_the_same() {
    let disk = bench();
    let (first, second) = (holder("bench", 10, 0), holder("desk", 20, 5));
    assert_eq!(look(&disk, job()).unwrap(), Lock::None);
    assert_eq!(take(&disk, job(), &first).unwrap(), Lock::None);
    assert_eq!(take(&disk, job(), &second).unwrap(), Lock::Held(first.clone()));
    assert!(plain(&disk, job(), &document(2, 300), Some(&hash_of(&document(1, 300)))).is_ok());
    assert!(!release(&disk, job(), &second).unwrap(), "another's lock is left alone");
    assert_eq!(look(&disk, job()).unwrap(), Lock::Held(first.clone()));
    assert!(release(&disk, job(), &first).unwrap());
    assert_eq!(look(&disk, job()).unwrap(), Lock::None);
    assert!(!disk.exists(Path::new(LOCK)).unwrap());
}

#[test]
fn what_a_lock_is_worth() {
    let me = holder("bench", 10, 100);
    let worth = |other: &Holder, alive| other.standing(&me, |_| alive);
    assert_eq!(worth(&holder("bench", 10, 3), false), Standing::Mine);
    assert_eq!(worth(&holder("bench", 11, 3), true), Standing::OpenHere);
    assert_eq!(worth(&holder("bench", 11, 99), false), Standing::LeftBehind);
    for minute in [-1_000_000, 39, 500] {
        assert_eq!(worth(&holder("desk", 11, minute), false), Standing::OpenElsewhere, "what another's clock says is no reason to doubt");
    }
}

#[test]
fn one_left_behind_is_taken_over() {
    let disk = bench();
    let me = holder("bench", 10, 100);
    take(&disk, job(), &holder("bench", 9, 0)).unwrap();
    take_over(&disk, job(), &me).unwrap();
    assert_eq!(look(&disk, job()).unwrap(), Lock::Held(me.clone()));
    let later = holder("bench", 10, 130);
    take_over(&disk, job(), &later).unwrap();
    assert_eq!(look(&disk, job()).unwrap(), Lock::Held(later));
    assert!(release(&disk, job(), &me).unwrap(), "the time does not matter for whose it is");
}

#[test]
fn a_torn_or_foreign_lock_is_told_and_left() {
    for text in ["", "(host: \"bench\", pid", "locked by somebody's other program", &"x".repeat(10_000)] {
        let disk = bench();
        disk.put_file(Path::new(LOCK), text.as_bytes(), 0o644);
        let me = holder("bench", 10, 0);
        assert_eq!(take(&disk, job(), &me).unwrap(), Lock::Unreadable);
        assert!(!release(&disk, job(), &me).unwrap());
        assert!(disk.exists(Path::new(LOCK)).unwrap());
    }
}

#[test]
fn two_links_to_one_file_meet_the_same_lock() {
    let disk = bench();
    disk.put_link(Path::new("/bench/today.ron"), job());
    assert_eq!(lock_path(&disk, Path::new("/bench/today.ron")), Path::new(LOCK));
    take(&disk, Path::new("/bench/today.ron"), &holder("bench", 1, 0)).unwrap();
    assert!(matches!(take(&disk, job(), &holder("bench", 2, 0)).unwrap(), Lock::Held(_)));
}

#[test]
fn a_disk_that_fails_leaves_no_half_lock() {
    for (call, kind) in
        (1..=3).flat_map(|call| [ErrorKind::StorageFull, ErrorKind::PermissionDenied, ErrorKind::Other].map(|kind| (call, kind)))
    {
        let effect = if kind == ErrorKind::PermissionDenied { Effect::NotDone } else { Effect::Short(5) };
        let disk = FailingDisk::new(bench(), Some(Failure { call, kind, effect, for_good: false }));
        let result = take(&disk, job(), &holder("bench", 1, 0));
        let there = look(disk.inner(), job()).unwrap();
        assert!(matches!((&result, &there), (Ok(_), Lock::Held(_)) | (Err(_), Lock::None)), "{call} {kind:?} {result:?} {there:?}");
    }
}
