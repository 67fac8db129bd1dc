//! The simulated disk answers as the machine's own does: the same calls on both, compared. Without this the crash states could be those of
//! a disk that does not exist.

use std::path::{Path, PathBuf};

use pourbook::files::disk::{Disk, DiskError, RealDisk, SimulatedDisk};

/// A small random sequence that can be repeated (splitmix64, from memory).
pub struct Random(pub u64);

impl Random {
    pub fn below(&mut self, bound: u64) -> u64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut mixed = self.0;
        mixed = (mixed ^ (mixed >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        (mixed ^ (mixed >> 31)) % bound
    }
}

/// One call and its answer in words that both disks can give alike.
fn answer(disk: &dyn Disk, choice: u64, one: &Path, other: &Path, bytes: &[u8]) -> String {
    fn words<T: std::fmt::Debug>(result: Result<T, DiskError>) -> String {
        match result {
            Ok(value) => format!("{value:?}"),
            Err(error) => {
                // The library's word for links going round in a circle is not settled yet, so the simulator cannot say it.
                let kind = format!("{:?}", error.kind).replace("FilesystemLoop", "Other");
                format!("{:?} {kind} {}", error.act, error.path.display())
            }
        }
    }
    match choice {
        0 | 1 => words(disk.write_new(one, bytes)),
        2 => words(disk.rename(one, other)),
        3 => words(disk.rename_new(one, other)),
        4 => words(disk.remove(one)),
        5 => words(disk.read(one, 40)),
        6 => words(disk.sync_file(one)),
        7 => words(disk.copy_permissions(one, other)),
        8 => words(disk.resolve(one)),
        9 => words(disk.create_folders(one)),
        10 => words(disk.list(one)),
        11 => words(disk.sync_folder(one)),
        _ => words(disk.metadata(one).map(|about| {
            let is_file = about.kind == pourbook::files::disk::Kind::File;
            (about.kind, is_file.then_some((about.len_bytes, about.read_only, about.links, about.mode)))
        })),
    }
}

#[test]
#[cfg(unix)]
fn the_simulated_disk_answers_like_the_real_one() {
    use std::os::unix::fs::PermissionsExt as _;
    let mut calls = 0;
    let mut refused = 0;
    for seed in 0..150 {
        let folder = tempfile::tempdir().unwrap();
        let root = folder.path().canonicalize().unwrap();
        let simulated = SimulatedDisk::default();
        for (name, mode) in [("a", 0o644), ("b", 0o600), ("c", 0o444)] {
            std::fs::write(root.join(name), name).unwrap();
            std::fs::set_permissions(root.join(name), std::fs::Permissions::from_mode(mode)).unwrap();
            simulated.put_file(&root.join(name), name.as_bytes(), mode);
        }
        std::fs::create_dir(root.join("inner")).unwrap();
        simulated.put_folder(&root.join("inner"));
        for (name, leads_to) in [("link", "a"), ("broken", "nothing"), ("round", "round"), ("through", "inner")] {
            std::os::unix::fs::symlink(leads_to, root.join(name)).unwrap();
            simulated.put_link(&root.join(name), Path::new(leads_to));
        }
        std::fs::hard_link(root.join("b"), root.join("second")).unwrap();
        simulated.put_hard_link(&root.join("second"), &root.join("b"));
        let names =
            ["a", "b", "c", "d", "link", "broken", "round", "second", "inner/e", "through/e", "inner", "missing/f", "a/g", "new/folder"];
        let mut random = Random(seed);
        let pick = |random: &mut Random| -> PathBuf { root.join(names[usize::try_from(random.below(names.len() as u64)).unwrap()]) };
        let mut history = Vec::new();
        for _ in 0..30 {
            let (choice, one, other) = (random.below(14), pick(&mut random), pick(&mut random));
            let bytes = vec![b'x'; usize::try_from(random.below(60)).unwrap()];
            // What this program never does, the simulator refuses or does not settle: renaming a folder, giving it permissions or syncing it
            // as a file; and renaming one name of a file onto another of its names, which POSIX leaves both standing.
            let leads_to_folder = |path: &Path| path.is_dir();
            let is_folder = |path: &Path| RealDisk.metadata(path).is_ok_and(|about| about.kind == pourbook::files::disk::Kind::Folder);
            let both_linked = [&one, &other].iter().all(|path| RealDisk.metadata(path).is_ok_and(|about| about.links > 1));
            let left_out = match choice {
                2 | 3 => is_folder(&one) || both_linked,
                6 => leads_to_folder(&one),
                7 => leads_to_folder(&one) || leads_to_folder(&other),
                _ => false,
            };
            if left_out {
                continue;
            }
            let (real, ours) = (answer(&RealDisk, choice, &one, &other, &bytes), answer(&simulated, choice, &one, &other, &bytes));
            history.push(format!("{choice} {} {}: {real}", one.display(), other.display()));
            assert_eq!(real, ours, "seed {seed}\n{}", history.join("\n"));
            calls += 1;
            refused += usize::from(real.contains(root.to_str().unwrap()));
        }
    }
    println!("{calls} calls alike, {refused} of them naming a path");
    assert!(calls > 4_000 && refused > 2_000, "{calls} {refused}");
}
