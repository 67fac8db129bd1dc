//! Saving on the machine's own disk: links, permissions, refusals, a disk that is really full.
#![cfg(unix)]

use std::{
    fs,
    io::ErrorKind,
    os::unix::{
        fs::{MetadataExt as _, PermissionsExt as _},
        process::CommandExt as _,
    },
    path::Path,
    process::Command,
};

use pourbook::files::{
    disk::{Disk, RealDisk, beside::is_temporary},
    save::{SaveError, hash_of},
};

use crate::document::{document, plain};

fn set_mode(path: &Path, mode: u32) {
    fs::set_permissions(path, fs::Permissions::from_mode(mode)).expect("permissions can be set on a file of our own");
}

fn temporaries(folder: &Path) -> usize {
    RealDisk.list(folder).expect("the folder stands").iter().filter(|path| is_temporary(path)).count()
}

#[test]
fn a_first_save_then_more_leave_one_file() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("lilac.ron");
    let mut base = None;
    for number in 0..5 {
        base = Some(plain(&RealDisk, &path, &document(number, 5_000), base.as_ref()).unwrap().hash);
        assert_eq!(fs::read(&path).unwrap(), document(number, 5_000));
    }
    assert!(!plain(&RealDisk, &path, &document(4, 5_000), base.as_ref()).unwrap().wrote, "the same again writes nothing");
    assert_eq!(RealDisk.list(folder.path()).unwrap(), [path]);
}

#[test]
fn a_link_is_kept_and_its_file_is_saved() {
    let folder = tempfile::tempdir().unwrap();
    let (file, link) = (folder.path().join("real/lilac.ron"), folder.path().join("today.ron"));
    fs::create_dir(folder.path().join("real")).unwrap();
    fs::write(&file, document(1, 300)).unwrap();
    std::os::unix::fs::symlink("real/lilac.ron", &link).unwrap();
    let saved = plain(&RealDisk, &link, &document(2, 300), Some(&hash_of(&document(1, 300)))).unwrap();
    assert_eq!(saved.path, file.canonicalize().unwrap());
    assert_eq!(fs::read_link(&link).unwrap(), Path::new("real/lilac.ron"));
    assert!(fs::symlink_metadata(&file).unwrap().is_file());
    assert_eq!(fs::read(&file).unwrap(), document(2, 300));
    assert_eq!((temporaries(folder.path()), temporaries(&folder.path().join("real"))), (0, 0));
}

#[test]
fn a_link_to_nothing_and_a_folder_are_refused() {
    let folder = tempfile::tempdir().unwrap();
    let link = folder.path().join("today.ron");
    std::os::unix::fs::symlink("unplugged/lilac.ron", &link).unwrap();
    let error = plain(&RealDisk, &link, &document(1, 300), None).unwrap_err();
    assert_eq!(error, SaveError::LinkToNothing { path: link.clone() });
    assert!(fs::symlink_metadata(&link).unwrap().is_symlink());
    let error = plain(&RealDisk, folder.path(), &document(1, 300), None).unwrap_err();
    assert_eq!(error, SaveError::NotAFile { path: folder.path().into() });
    let error = plain(&RealDisk, &folder.path().join("missing/lilac.ron"), &document(1, 300), None).unwrap_err();
    assert!(
        matches!(&error, SaveError::NotWritten { error, left, .. } if error.kind == ErrorKind::NotFound && left.is_empty()),
        "{error:?}"
    );
    assert!(!folder.path().join("missing").exists(), "a folder that is not there is not made up");
}

#[test]
fn permissions_are_kept() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("lilac.ron");
    let mut old = document(0, 300);
    fs::write(&path, &old).unwrap();
    for (number, mode) in [(1, 0o600), (2, 0o640), (3, 0o664), (4, 0o755)] {
        set_mode(&path, mode);
        let new = document(number, 300);
        plain(&RealDisk, &path, &new, Some(&hash_of(&old))).unwrap();
        assert_eq!(fs::metadata(&path).unwrap().mode() & 0o7777, mode);
        old = new;
    }
}

#[test]
fn a_file_without_write_permission_is_refused_even_to_the_superuser() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("lilac.ron");
    fs::write(&path, document(1, 300)).unwrap();
    set_mode(&path, 0o444);
    let error = plain(&RealDisk, &path, &document(2, 300), Some(&hash_of(&document(1, 300)))).unwrap_err();
    assert_eq!(error, SaveError::ReadOnly { path: path.clone() });
    assert_eq!(
        error.to_string(),
        format!("Not saved: the file may only be read. It is as it was. Save under another name, or allow writing to {}", path.display())
    );
    assert_eq!(fs::read(&path).unwrap(), document(1, 300));
}

#[test]
fn a_hard_link_is_parted_and_said_so() {
    let folder = tempfile::tempdir().unwrap();
    let (path, second) = (folder.path().join("lilac.ron"), folder.path().join("copy.ron"));
    fs::write(&path, document(1, 300)).unwrap();
    fs::hard_link(&path, &second).unwrap();
    let saved = plain(&RealDisk, &path, &document(2, 300), Some(&hash_of(&document(1, 300)))).unwrap();
    assert_eq!(saved.parted_names, 1);
    assert_eq!(fs::read(&second).unwrap(), document(1, 300));
}

#[test]
fn a_very_long_name_can_be_saved_and_have_a_second_file() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join(format!("{}.ron", "n".repeat(251)));
    plain(&RealDisk, &path, &document(1, 300), None).unwrap();
    let error = plain(&RealDisk, &path, &document(2, 300), Some(&hash_of(b"another"))).unwrap_err();
    assert!(matches!(&error, SaveError::ChangedOnDisk { ours_at, .. } if fs::read(ours_at).unwrap() == document(2, 300)), "{error:?}");
}

#[test]
fn a_pipe_or_a_device_is_not_read() {
    let error = RealDisk.read(Path::new("/dev/zero"), 10).unwrap_err();
    assert_eq!(error.kind, ErrorKind::InvalidInput);
    assert_eq!(error.to_string(), "Could not read the file because it is not a file: /dev/zero");
}

/// What a person without special rights meets. Run as a child by the test below, since the superuser may do anything.
#[test]
#[ignore = "a child of a_person_without_rights_is_refused"]
fn child_without_rights() {
    let Ok(folder) = std::env::var("POURBOOK_TEST_NO_RIGHTS") else { return };
    let folder = Path::new(&folder);
    let old = hash_of(&document(1, 300));
    let save_to = |name: &str| plain(&RealDisk, &folder.join(name), &document(2, 300), Some(&old)).unwrap_err();
    // Another's file in a folder open to all: a rename would succeed, so it must be asked.
    let error = save_to("open/lilac.ron");
    assert_eq!(error, SaveError::ReadOnly { path: folder.join("open/lilac.ron") });
    // A file open to all in a folder that is not.
    let error = save_to("closed/lilac.ron");
    assert!(
        matches!(&error, SaveError::NotWritten { error, left, .. } if error.kind == ErrorKind::PermissionDenied && left.is_empty()),
        "{error:?}"
    );
    assert!(error.to_string().contains("because you do not have permission"), "{error}");
    // A file that cannot even be read.
    let error = save_to("open/secret.ron");
    assert!(matches!(error, SaveError::ReadOnly { .. }), "{error:?}");
    println!("the child was refused three times");
}

#[test]
fn a_person_without_rights_is_refused() {
    let folder = tempfile::tempdir().unwrap();
    // The one who runs this must own the files and be somebody else than the child: only the superuser can arrange that.
    if fs::metadata(folder.path()).unwrap().uid() != 0 {
        println!("skipped: not run as the superuser, so no other person can be played");
        return;
    }
    set_mode(folder.path(), 0o755);
    for (inner, folder_mode) in [("open", 0o777), ("closed", 0o755)] {
        fs::create_dir(folder.path().join(inner)).unwrap();
        fs::write(folder.path().join(inner).join("lilac.ron"), document(1, 300)).unwrap();
        set_mode(&folder.path().join(inner).join("lilac.ron"), if inner == "open" { 0o644 } else { 0o666 });
        set_mode(&folder.path().join(inner), folder_mode);
    }
    fs::write(folder.path().join("open/secret.ron"), document(1, 300)).unwrap();
    set_mode(&folder.path().join("open/secret.ron"), 0o600);
    // The build folder may be closed to others: a copy that they may run.
    let program = folder.path().join("program");
    fs::copy(std::env::current_exe().unwrap(), &program).unwrap();
    set_mode(&program, 0o755);
    let child = Command::new(&program)
        .args(["--exact", "real::child_without_rights", "--ignored", "--nocapture"])
        .env("POURBOOK_TEST_NO_RIGHTS", folder.path())
        .current_dir("/")
        .uid(65_534)
        .gid(65_534)
        .output()
        .unwrap();
    let said = String::from_utf8_lossy(&child.stdout);
    assert!(child.status.success() && said.contains("refused three times"), "{said}{}", String::from_utf8_lossy(&child.stderr));
    for file in ["open/lilac.ron", "closed/lilac.ron", "open/secret.ron"] {
        assert_eq!(fs::read(folder.path().join(file)).unwrap(), document(1, 300), "{file}");
    }
    assert_eq!(temporaries(&folder.path().join("open")) + temporaries(&folder.path().join("closed")), 0);
}

/// A mounted small disk, unmounted again whatever happens.
struct Mounted(tempfile::TempDir);

impl Mounted {
    fn small() -> Option<Self> {
        let folder = tempfile::tempdir().ok()?;
        let mounted = Command::new("mount").args(["-t", "tmpfs", "-o", "size=64k", "tmpfs"]).arg(folder.path()).output().ok()?;
        mounted.status.success().then_some(Self(folder))
    }
}

impl Drop for Mounted {
    fn drop(&mut self) {
        let _ = Command::new("umount").arg(self.0.path()).output();
    }
}

#[test]
fn a_disk_that_is_really_full_keeps_the_old_file() {
    let Some(small) = Mounted::small() else {
        println!("skipped: no small disk can be mounted here; the simulated full disk stands in for it");
        return;
    };
    let path = small.0.path().join("lilac.ron");
    let base = plain(&RealDisk, &path, &document(1, 20_000), None).unwrap().hash;
    let error = plain(&RealDisk, &path, &document(2, 60_000), Some(&base)).unwrap_err();
    assert!(
        matches!(&error, SaveError::NotWritten { error, left, .. } if error.kind == ErrorKind::StorageFull && left.is_empty()),
        "{error:?}"
    );
    assert_eq!(fs::read(&path).unwrap(), document(1, 20_000));
    assert_eq!(RealDisk.list(small.0.path()).unwrap(), std::slice::from_ref(&path));
    plain(&RealDisk, &path, &document(3, 20_000), Some(&base)).unwrap();
    println!("a full disk of 64 kB was met");
}
