//! Saves with a known fault, which the simulator must catch: otherwise its silence about the right one means nothing.

use std::path::{Path, PathBuf};

use pourbook::files::{
    disk::{Act, Disk, DiskError, SimulatedDisk, beside::TEMPORARY_PREFIX},
    save::hash_of,
};

use crate::{
    around::Around,
    crash::{job, old_or_new, walk},
    document::{document, plain},
};

/// The verdict on the real save with one step left out, over an old file or as a first save.
fn verdict(left_out: Option<Act>, over_old: bool) -> Result<usize, String> {
    let (old, new) = (document(1, 600), document(2, 900));
    let simulated = SimulatedDisk::default();
    simulated.put_folder(Path::new("/bench"));
    if over_old {
        simulated.put_file(job(), &old, 0o640);
    }
    let old = over_old.then_some(old);
    let disk = Around { inner: simulated.clone(), watch: |act, _: &Path, _| left_out != Some(act) };
    plain(&disk, job(), &new, old.as_deref().map(hash_of).as_ref()).expect("the save ends well");
    let rule = old_or_new(old.as_deref(), &new, true);
    walk(&simulated, 0, |state, last| {
        let mode = state.files.get(job()).map(|survivor| survivor.mode);
        rule(state, last).or_else(|| (over_old && mode != Some(0o640)).then(|| "the permissions are others".to_owned()))
    })
}

/// The verdict on a save written out by hand.
fn by_hand(steps: impl FnOnce(&SimulatedDisk, &[u8]) -> Result<(), DiskError>) -> Result<usize, String> {
    let (old, new) = (document(1, 600), document(2, 900));
    let disk = SimulatedDisk::default();
    disk.put_file(job(), &old, 0o640);
    steps(&disk, &new).expect("the steps end well");
    walk(&disk, 0, old_or_new(Some(&old), &new, true))
}

#[test]
fn the_right_save_passes() {
    assert!(verdict(None, true).is_ok_and(|count| count > 100));
    assert!(verdict(None, false).is_ok_and(|count| count > 100));
}

#[test]
fn a_save_without_syncing_the_file_is_caught() {
    for over_old in [true, false] {
        let what = verdict(Some(Act::Sync), over_old).unwrap_err();
        assert!(what.contains("the file is torn") || what.contains("the file is empty"), "{what}");
    }
}

#[test]
fn a_save_without_syncing_the_folder_is_caught() {
    let what = verdict(Some(Act::SyncFolder), true).unwrap_err();
    assert!(what.contains("the old one although the save ended well"), "{what}");
    let what = verdict(Some(Act::SyncFolder), false).unwrap_err();
    assert!(what.contains("the file is absent"), "{what}");
}

#[test]
fn a_save_without_keeping_permissions_is_caught() {
    let what = verdict(Some(Act::Permissions), true).unwrap_err();
    assert!(what.contains("the permissions are others"), "{what}");
}

#[test]
fn a_save_in_place_without_a_temporary_is_caught() {
    let what = by_hand(|disk, new| {
        disk.remove(job())?;
        disk.write_new(job(), new)?;
        disk.sync_file(job())?;
        disk.sync_folder(Path::new("/bench"))
    })
    .unwrap_err();
    assert!(what.contains("the file is absent"), "{what}");
}

#[test]
fn a_save_that_syncs_only_after_the_rename_is_caught() {
    let temporary = PathBuf::from(format!("/bench/{TEMPORARY_PREFIX}1.tmp"));
    let what = by_hand(|disk, new| {
        disk.write_new(&temporary, new)?;
        disk.rename(&temporary, job())?;
        disk.sync_file(job())?;
        disk.sync_folder(Path::new("/bench"))
    })
    .unwrap_err();
    assert!(what.contains("the file is torn") || what.contains("the file is empty"), "{what}");
}

#[test]
fn a_save_that_removes_the_old_one_first_is_caught() {
    let temporary = PathBuf::from(format!("/bench/{TEMPORARY_PREFIX}1.tmp"));
    let what = by_hand(|disk, new| {
        disk.write_new(&temporary, new)?;
        disk.sync_file(&temporary)?;
        disk.remove(job())?;
        disk.rename(&temporary, job())?;
        disk.sync_folder(Path::new("/bench"))
    })
    .unwrap_err();
    assert!(what.contains("the file is absent"), "{what}");
}
