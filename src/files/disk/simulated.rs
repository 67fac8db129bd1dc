//! A disk in memory that knows what has reached the medium and what has not, for tests and fault drills.
//!
//! Every call is remembered as a [`Moment`]; from each, [`Moment::crash_states`] gives all that a power cut may leave (see [`super::crash`]).

use std::{
    collections::BTreeMap,
    io::ErrorKind,
    path::{Path, PathBuf},
    sync::{Arc, Mutex, MutexGuard, PoisonError},
    time::{Duration, SystemTime},
};

use super::{Act, Disk, DiskError, Kind, Metadata, folder_of, world::World};

/// The disk right after one call.
#[derive(Debug, Clone)]
pub struct Moment {
    /// What was called, with its path; "start" for the first.
    pub call: String,
    pub(super) world: Arc<World>,
}

#[derive(Debug)]
struct Inside {
    world: World,
    moments: Vec<Moment>,
}

/// A disk in memory. Clones are handles to the same disk. For tests and fault drills.
#[derive(Debug, Clone)]
pub struct SimulatedDisk {
    inside: Arc<Mutex<Inside>>,
}

impl Default for SimulatedDisk {
    fn default() -> Self {
        let mut world = World {
            nodes: Vec::new(),
            names: BTreeMap::new(),
            kept_names: BTreeMap::new(),
            pending: Vec::new(),
            now: SystemTime::UNIX_EPOCH,
            capacity_bytes: u64::MAX,
        };
        world.put("/".into(), Kind::Folder, PathBuf::new(), Arc::default(), 0o755);
        Self::from_world(world)
    }
}

impl SimulatedDisk {
    fn from_world(world: World) -> Self {
        let start = Moment { call: "start".to_owned(), world: Arc::new(world.clone()) };
        Self { inside: Arc::new(Mutex::new(Inside { world, moments: vec![start] })) }
    }

    /// A disk holding what survived a power cut, all of it on the medium. Hard links come back as separate files.
    #[must_use]
    pub fn restarted(state: &super::crash::CrashState) -> Self {
        let disk = Self::default();
        disk.arrange(|world| {
            for (path, survivor) in &state.files {
                world.put(path.clone(), survivor.kind, survivor.leads_to.clone(), survivor.bytes.clone(), survivor.mode);
            }
        });
        disk
    }

    /// Puts a file on the medium with its folders, before the drill begins.
    pub fn put_file(&self, path: &Path, bytes: &[u8], mode: u32) {
        self.arrange(|world| {
            world.put_folders(folder_of(path));
            world.put(path.to_path_buf(), Kind::File, PathBuf::new(), bytes.into(), mode);
        });
    }

    /// Puts a symbolic link on the medium.
    pub fn put_link(&self, path: &Path, leads_to: &Path) {
        self.arrange(|world| world.put(path.to_path_buf(), Kind::Link, leads_to.to_path_buf(), Arc::default(), 0o777));
    }

    /// Puts a second name for a file on the medium. Does nothing when the file is not there.
    pub fn put_hard_link(&self, path: &Path, file: &Path) {
        self.arrange(|world| {
            if let Some(&node) = world.names.get(file) {
                world.names.insert(path.to_path_buf(), node);
                world.kept_names.insert(path.to_path_buf(), node);
            }
        });
    }

    /// Puts a folder and those above it on the medium.
    pub fn put_folder(&self, folder: &Path) {
        self.arrange(|world| world.put_folders(folder));
    }

    /// The time that files written from now on carry.
    pub fn set_time(&self, since_epoch: Duration) {
        self.arrange(|world| world.now = SystemTime::UNIX_EPOCH + since_epoch);
    }

    /// How much the files together may hold; a write beyond it stops short with `StorageFull`.
    pub fn set_capacity(&self, capacity_bytes: u64) {
        self.arrange(|world| world.capacity_bytes = capacity_bytes);
    }

    /// The disk after each call so far, the first moment being the start.
    #[must_use]
    pub fn moments(&self) -> Vec<Moment> {
        self.lock().moments.clone()
    }

    fn lock(&self) -> MutexGuard<'_, Inside> {
        self.inside.lock().unwrap_or_else(PoisonError::into_inner)
    }

    /// Changes the start itself, not a call: the last moment becomes what now stands.
    fn arrange(&self, change: impl FnOnce(&mut World)) {
        let mut inside = self.lock();
        change(&mut inside.world);
        let world = Arc::new(inside.world.clone());
        if let Some(last) = inside.moments.last_mut() {
            last.world = world;
        }
    }

    fn call<T>(&self, act: Act, path: &Path, run: impl FnOnce(&mut World) -> Result<T, ErrorKind>) -> Result<T, DiskError> {
        let mut inside = self.lock();
        let result = run(&mut inside.world);
        let moment = Moment { call: format!("{act:?} {}", path.display()), world: Arc::new(inside.world.clone()) };
        inside.moments.push(moment);
        result.map_err(|kind| DiskError::own(act, path, kind, "the simulated disk refused"))
    }
}

impl Disk for SimulatedDisk {
    fn read(&self, path: &Path, limit_bytes: u64) -> Result<Vec<u8>, DiskError> {
        self.call(Act::Read, path, |world| {
            let bytes = &world.nodes[world.find_file(path)?].bytes;
            if bytes.len() as u64 > limit_bytes { Err(ErrorKind::FileTooLarge) } else { Ok(bytes.to_vec()) }
        })
    }

    fn write_new(&self, path: &Path, bytes: &[u8]) -> Result<(), DiskError> {
        self.call(Act::Write, path, |world| world.write_new(path, bytes))
    }

    fn sync_file(&self, path: &Path) -> Result<(), DiskError> {
        self.call(Act::Sync, path, |world| {
            let node = world.find_file(path)?;
            let node = &mut world.nodes[node];
            node.kept_bytes = node.bytes.clone();
            node.kept_mode = node.mode;
            Ok(())
        })
    }

    fn rename(&self, from: &Path, to: &Path) -> Result<(), DiskError> {
        self.call(Act::Rename, to, |world| world.rename(from, to, true))
    }

    fn rename_new(&self, from: &Path, to: &Path) -> Result<(), DiskError> {
        self.call(Act::Rename, to, |world| world.rename(from, to, false))
    }

    fn sync_folder(&self, folder: &Path) -> Result<(), DiskError> {
        self.call(Act::SyncFolder, folder, |world| world.sync_folder(folder))
    }

    fn metadata(&self, path: &Path) -> Result<Metadata, DiskError> {
        self.call(Act::Look, path, |world| world.metadata(path))
    }

    fn copy_permissions(&self, like: &Path, to: &Path) -> Result<(), DiskError> {
        self.call(Act::Permissions, to, |world| {
            let mode = world.nodes[world.find_file(like)?].mode;
            let to = world.find_file(to)?;
            world.nodes[to].mode = mode;
            Ok(())
        })
    }

    fn remove(&self, path: &Path) -> Result<(), DiskError> {
        self.call(Act::Remove, path, |world| {
            let name = world.walk(path, false)?;
            let node = *world.names.get(&name).ok_or(ErrorKind::NotFound)?;
            if world.nodes[node].kind == Kind::Folder {
                return Err(ErrorKind::IsADirectory);
            }
            world.change_names(vec![(name, None)]);
            Ok(())
        })
    }

    fn list(&self, folder: &Path) -> Result<Vec<PathBuf>, DiskError> {
        self.call(Act::List, folder, |world| {
            let real = world.walk(folder, true)?;
            match world.names.get(&real) {
                Some(&node) if world.nodes[node].kind == Kind::Folder => {}
                Some(_) => return Err(ErrorKind::NotADirectory),
                None => return Err(ErrorKind::NotFound),
            }
            let inside = |name: &&PathBuf| name.parent() == Some(&real);
            Ok(world.names.keys().filter(inside).filter_map(|name| name.file_name()).map(|name| folder.join(name)).collect())
        })
    }

    fn create_folders(&self, folder: &Path) -> Result<(), DiskError> {
        self.call(Act::CreateFolder, folder, |world| world.create_folders(folder))
    }

    fn resolve(&self, path: &Path) -> Result<PathBuf, DiskError> {
        self.call(Act::Resolve, path, |world| {
            let name = world.walk(path, true)?;
            if world.names.contains_key(&name) { Ok(name) } else { Err(ErrorKind::NotFound) }
        })
    }
}
