//! Every call of a save × every error × every way to fail: the file is whole, the sentence names it, nothing is left lying unsaid.

use std::{
    collections::BTreeMap,
    io::ErrorKind,
    path::{Path, PathBuf},
};

use pourbook::files::{
    disk::{
        Act, Disk, FailingDisk, SimulatedDisk,
        beside::is_temporary,
        failing::{Effect, Failure},
    },
    save::{Hash, Original, SaveError, Saved, hash_of, save},
};

use crate::{
    crash::job,
    document::{check, document, plain},
};

const KINDS: [ErrorKind; 11] = [
    ErrorKind::NotFound,
    ErrorKind::PermissionDenied,
    ErrorKind::StorageFull,
    ErrorKind::QuotaExceeded,
    ErrorKind::Interrupted,
    ErrorKind::TimedOut,
    ErrorKind::ReadOnlyFilesystem,
    ErrorKind::StaleNetworkFileHandle,
    ErrorKind::InvalidInput,
    ErrorKind::AlreadyExists,
    ErrorKind::Other,
];

const EFFECTS: [Effect; 6] =
    [Effect::NotDone, Effect::DoneAnyway, Effect::Short(0), Effect::Short(200), Effect::ShortUnsaid(0), Effect::ShortUnsaid(200)];

/// One kind of save: what stands before, and what is asked.
struct Scene {
    name: &'static str,
    there: Option<Vec<u8>>,
    base: Option<Hash>,
    original: Original,
    by_link: bool,
}

fn scenes() -> Vec<Scene> {
    let old = document(1, 400);
    let base = Some(hash_of(&old));
    let scene = |name, there, base| Scene { name, there, base, original: Original::Replace, by_link: false };
    vec![
        scene("over a file", Some(old.clone()), base),
        scene("first save", None, None),
        scene("the name is taken", Some(old.clone()), None),
        scene("changed on disk", Some(document(9, 500)), base),
        scene("gone from disk", None, base),
        scene("saved already", Some(new()), base),
        Scene { original: Original::KeepBeside, ..scene("hand-edited", Some(old.clone()), base) },
        Scene { by_link: true, ..scene("by a link", Some(old), base) },
    ]
}

fn new() -> Vec<u8> {
    document(2, 700)
}

impl Scene {
    fn set(&self) -> SimulatedDisk {
        let disk = SimulatedDisk::default();
        disk.put_folder(Path::new("/bench"));
        disk.put_folder(Path::new("/desk"));
        if let Some(there) = &self.there {
            disk.put_file(job(), there, 0o640);
        }
        disk.put_link(Path::new("/desk/today.ron"), job());
        disk
    }

    fn path(&self) -> &Path {
        if self.by_link { Path::new("/desk/today.ron") } else { job() }
    }

    fn play(&self, disk: &dyn Disk) -> Result<Saved, SaveError> {
        save(disk, self.path(), &new(), self.base.as_ref(), self.original, check)
    }
}

/// The error's own words of where anything lies.
fn left(error: &SaveError) -> Vec<PathBuf> {
    match error {
        SaveError::NotWritten { left, .. } | SaveError::NotSure { left, .. } | SaveError::ChangedNotKept { left, .. } => left.clone(),
        _ => Vec::new(),
    }
}

/// Everything that must hold after one failure.
fn judge(scene: &Scene, disk: &FailingDisk<SimulatedDisk>, failure: Failure, result: &Result<Saved, SaveError>) {
    let about = format!("{}, {failure:?}, {result:?}\n{:?}", scene.name, disk.calls());
    let plain_disk = disk.inner();
    let now = plain_disk.read(scene.path(), 10_000).ok();
    let new = Some(new());
    assert!(now == scene.there || now == new, "old or new, whole: {about}");
    let lying: Vec<PathBuf> = ["/bench", "/desk"]
        .iter()
        .flat_map(|folder| plain_disk.list(Path::new(folder)).expect("the folder stands"))
        .filter(|path| is_temporary(path))
        .collect();
    match result {
        Ok(saved) => {
            assert!(now == new && saved.hash == hash_of(&crate::faults::new()), "{about}");
            if let Some(kept) = &saved.original_at {
                assert_eq!(plain_disk.read(kept, 10_000).ok(), scene.there, "{about}");
            }
        }
        Err(error) => {
            let sentence = error.to_string();
            let named = [scene.path(), job()].iter().any(|path| sentence.ends_with(&path.display().to_string()));
            assert!(named, "the path comes last: {sentence}");
            assert!(!sentence.contains("ErrorKind") && !sentence.contains(".."), "{sentence}");
            match error {
                SaveError::ChangedOnDisk { ours_at, .. } => {
                    assert_eq!(plain_disk.read(ours_at, 10_000).ok(), new, "{about}");
                    assert!(now == scene.there, "{about}");
                }
                SaveError::NotSure { now: Some(hash), .. } => assert_eq!(now.as_deref().map(hash_of), Some(*hash), "{about}"),
                SaveError::NotSure { .. } => {}
                _ => assert!(now == scene.there, "said to be as it was: {about}"),
            }
        }
    }
    // Whatever lies there is named; and where removing works, only ours that is worth keeping.
    let said = result.as_ref().err().map(left).unwrap_or_default();
    // A disk that swears the temporary is not there is believed.
    let sworn_gone = failure.kind == ErrorKind::NotFound;
    assert!(sworn_gone || lying.iter().all(|path| said.contains(path)), "lying unsaid {lying:?}: {about}");
    let removing_failed = failure.for_good || disk.calls().get(failure.call - 1).is_some_and(|(act, _)| *act == Act::Remove);
    if !removing_failed {
        let worth_keeping = matches!(result, Err(SaveError::ChangedNotKept { .. } | SaveError::NotSure { .. }));
        assert!(lying.is_empty() || worth_keeping, "left lying {lying:?}: {about}");
    }
}

#[test]
fn every_call_with_every_error_leaves_a_whole_file() {
    let mut outcomes: BTreeMap<&str, usize> = BTreeMap::new();
    let mut runs = 0;
    for scene in scenes() {
        let counting = FailingDisk::new(scene.set(), None);
        let _ = scene.play(&counting);
        let calls = counting.calls().len();
        println!("{}: {:?}", scene.name, counting.calls().iter().map(|(act, _)| *act).collect::<Vec<_>>());
        assert!(calls >= 4, "{}: {calls}", scene.name);
        for call in 1..=calls {
            for kind in KINDS {
                for (effect, for_good) in EFFECTS.iter().flat_map(|effect| [(*effect, false), (*effect, true)]) {
                    // A name that is taken is a call that did nothing.
                    if kind == ErrorKind::AlreadyExists && effect != Effect::NotDone {
                        continue;
                    }
                    let failure = Failure { call, kind, effect, for_good };
                    let disk = FailingDisk::new(scene.set(), Some(failure));
                    let result = scene.play(&disk);
                    judge(&scene, &disk, failure, &result);
                    runs += 1;
                    *outcomes.entry(outcome(&result)).or_default() += 1;
                }
            }
        }
    }
    println!("{runs} failures walked: {outcomes:?}");
    assert!(runs >= 4_000, "{runs}");
    for name in ["saved", "not written", "not sure", "changed on disk", "changed, not kept"] {
        assert!(outcomes.get(name).is_some_and(|&count| count > 0), "no failure ended as {name}: {outcomes:?}");
    }
}

fn outcome(result: &Result<Saved, SaveError>) -> &'static str {
    match result {
        Ok(_) => "saved",
        Err(SaveError::NotWritten { .. }) => "not written",
        Err(SaveError::NotSure { .. }) => "not sure",
        Err(SaveError::ChangedOnDisk { .. }) => "changed on disk",
        Err(SaveError::ChangedNotKept { .. }) => "changed, not kept",
        Err(_) => "refused",
    }
}

#[test]
fn after_a_save_that_was_not_sure_the_next_one_goes_through() {
    let (old, new, later) = (document(1, 400), document(2, 500), document(3, 500));
    let simulated = SimulatedDisk::default();
    simulated.put_file(job(), &old, 0o644);
    let counting = FailingDisk::new(
        SimulatedDisk::restarted(&simulated.moments()[0].crash_states(&crate::crash::LISTING).states.pop_first().unwrap()),
        None,
    );
    plain(&counting, job(), &new, Some(&hash_of(&old))).unwrap();
    let call = counting.calls().iter().position(|(act, _)| *act == Act::SyncFolder).unwrap() + 1;
    let failure = Failure { call, kind: ErrorKind::Other, effect: Effect::NotDone, for_good: false };
    let disk = FailingDisk::new(simulated, Some(failure));
    let Err(SaveError::NotSure { now: Some(now), .. }) = plain(&disk, job(), &new, Some(&hash_of(&old))) else { panic!("not sure") };
    // The same bytes again, even with the old base: made sure, nothing written, no second file.
    assert!(!plain(&disk, job(), &new, Some(&hash_of(&old))).unwrap().wrote);
    // Later work, with the base that the error gave.
    assert!(plain(&disk, job(), &later, Some(&now)).unwrap().wrote);
    assert_eq!(disk.inner().list(Path::new("/bench")).unwrap(), [job()]);
}

#[test]
fn a_full_disk_keeps_the_old_file_and_leaves_nothing() {
    let (old, new) = (document(1, 400), document(2, 5_000));
    let disk = SimulatedDisk::default();
    disk.put_file(job(), &old, 0o644);
    disk.set_capacity(2_000);
    let error = plain(&disk, job(), &new, Some(&hash_of(&old))).unwrap_err();
    assert!(
        matches!(&error, SaveError::NotWritten { error, left, .. } if error.kind == ErrorKind::StorageFull && left.is_empty()),
        "{error:?}"
    );
    assert!(error.to_string().contains("because the disk is full"), "{error}");
    assert_eq!(disk.read(job(), 10_000).unwrap(), old);
    assert_eq!(disk.list(Path::new("/bench")).unwrap(), [job()]);
}

#[test]
fn a_check_that_fails_touches_nothing() {
    let disk = FailingDisk::new(SimulatedDisk::default(), None);
    let error = save(&disk, job(), b"x", None, Original::Replace, |_| Err("the tree is missing".to_owned())).unwrap_err();
    assert!(matches!(error, SaveError::NotTheSame { .. }) && disk.calls().is_empty());
    assert!(error.to_string().contains("the tree is missing"), "{error}");
}
