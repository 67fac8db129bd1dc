//! What a simulated disk holds at one moment: what programs see, and what the medium is sure to hold.

use std::{
    collections::BTreeMap,
    ffi::OsString,
    io::ErrorKind,
    path::{Component, Path, PathBuf},
    sync::Arc,
    time::SystemTime,
};

use super::{Kind, Metadata, folder_of};

/// A file, folder or link, whatever names lead to it.
#[derive(Debug, Clone)]
pub(super) struct Node {
    pub(super) kind: Kind,
    /// Where a link leads; empty for all else.
    pub(super) leads_to: PathBuf,
    pub(super) bytes: Arc<[u8]>,
    pub(super) mode: u32,
    /// What the medium is sure to hold.
    pub(super) kept_bytes: Arc<[u8]>,
    pub(super) kept_mode: u32,
    pub(super) modified: SystemTime,
}

/// One change of names, all of it or nothing: each name with the node it now leads to, or none.
pub(super) type NameChange = Vec<(PathBuf, Option<usize>)>;

/// The whole disk at one moment.
#[derive(Debug, Clone)]
pub(super) struct World {
    pub(super) nodes: Vec<Node>,
    pub(super) names: BTreeMap<PathBuf, usize>,
    /// The names the medium is sure to hold.
    pub(super) kept_names: BTreeMap<PathBuf, usize>,
    /// The changes of names since, in order, that may or may not have reached it.
    pub(super) pending: Vec<NameChange>,
    pub(super) now: SystemTime,
    pub(super) capacity_bytes: u64,
}

impl World {
    pub(super) fn put(&mut self, path: PathBuf, kind: Kind, leads_to: PathBuf, bytes: Arc<[u8]>, mode: u32) {
        self.nodes.push(Node { kind, leads_to, kept_bytes: bytes.clone(), bytes, mode, kept_mode: mode, modified: self.now });
        self.names.insert(path.clone(), self.nodes.len() - 1);
        self.kept_names.insert(path, self.nodes.len() - 1);
    }

    pub(super) fn put_folders(&mut self, folder: &Path) {
        for above in folder.ancestors().collect::<Vec<_>>().into_iter().rev() {
            if !above.as_os_str().is_empty() && !self.names.contains_key(above) {
                self.put(above.to_path_buf(), Kind::Folder, PathBuf::new(), Arc::default(), 0o755);
            }
        }
    }

    pub(super) fn add(&mut self, kind: Kind, bytes: &[u8], mode: u32) -> usize {
        let (bytes, modified) = (Arc::from(bytes), self.now);
        self.nodes.push(Node { kind, leads_to: PathBuf::new(), bytes, mode, kept_bytes: Arc::default(), kept_mode: mode, modified });
        self.nodes.len() - 1
    }

    /// Changes names now; the medium may or may not follow until the folder is synced.
    pub(super) fn change_names(&mut self, change: NameChange) {
        apply(&mut self.names, &change);
        self.pending.push(change);
    }

    /// The path with all links followed, the last part only when asked; the last part need not exist.
    pub(super) fn walk(&self, path: &Path, follow_last: bool) -> Result<PathBuf, ErrorKind> {
        let mut parts: Vec<OsString> = parts_reversed(path);
        let mut reached = PathBuf::from("/");
        let mut hops = 0;
        while let Some(part) = parts.pop() {
            if part == ".." {
                reached.pop();
                continue;
            }
            reached.push(part);
            let node = self.names.get(&reached).map(|&node| &self.nodes[node]);
            match node {
                Some(node) if node.kind == Kind::Link && (follow_last || !parts.is_empty()) => {
                    hops += 1;
                    if hops > 40 {
                        return Err(ErrorKind::Other);
                    }
                    reached.pop();
                    if node.leads_to.is_absolute() {
                        reached = PathBuf::from("/");
                    }
                    parts.extend(parts_reversed(&node.leads_to));
                }
                Some(node) if node.kind != Kind::Folder && !parts.is_empty() => return Err(ErrorKind::NotADirectory),
                None if !parts.is_empty() => return Err(ErrorKind::NotFound),
                _ => {}
            }
        }
        Ok(reached)
    }

    /// The node a path leads to.
    pub(super) fn find(&self, path: &Path, follow_last: bool) -> Result<usize, ErrorKind> {
        self.names.get(&self.walk(path, follow_last)?).copied().ok_or(ErrorKind::NotFound)
    }

    pub(super) fn find_file(&self, path: &Path) -> Result<usize, ErrorKind> {
        let node = self.find(path, true)?;
        if self.nodes[node].kind == Kind::File { Ok(node) } else { Err(ErrorKind::InvalidInput) }
    }

    pub(super) fn write_new(&mut self, path: &Path, bytes: &[u8]) -> Result<(), ErrorKind> {
        let name = self.walk(path, false)?;
        if self.names.contains_key(&name) {
            return Err(ErrorKind::AlreadyExists);
        }
        let mut held: Vec<usize> = self.names.values().copied().collect();
        held.sort_unstable();
        held.dedup();
        let used_bytes: u64 = held.iter().map(|&node| self.nodes[node].bytes.len() as u64).sum();
        let room = usize::try_from(self.capacity_bytes.saturating_sub(used_bytes)).unwrap_or(usize::MAX);
        let node = self.add(Kind::File, &bytes[..bytes.len().min(room)], 0o644);
        self.change_names(vec![(name, Some(node))]);
        if bytes.len() > room { Err(ErrorKind::StorageFull) } else { Ok(()) }
    }

    pub(super) fn rename(&mut self, from: &Path, to: &Path, may_replace: bool) -> Result<(), ErrorKind> {
        let (from, to) = (self.walk(from, false)?, self.walk(to, false)?);
        let node = *self.names.get(&from).ok_or(ErrorKind::NotFound)?;
        if self.nodes[node].kind == Kind::Folder {
            return Err(ErrorKind::Unsupported);
        }
        match self.names.get(&to) {
            Some(_) if !may_replace => return Err(ErrorKind::AlreadyExists),
            // A file onto the folder it stands in.
            Some(_) if from != to && from.starts_with(&to) => return Err(ErrorKind::DirectoryNotEmpty),
            Some(&there) if self.nodes[there].kind == Kind::Folder => return Err(ErrorKind::IsADirectory),
            _ => {}
        }
        if from != to {
            self.change_names(vec![(from, None), (to, Some(node))]);
        }
        Ok(())
    }

    pub(super) fn sync_folder(&mut self, folder: &Path) -> Result<(), ErrorKind> {
        let folder = self.walk(folder, true)?;
        match self.names.get(&folder) {
            Some(&node) if self.nodes[node].kind == Kind::Folder => {}
            Some(_) => return Err(ErrorKind::NotADirectory),
            None => return Err(ErrorKind::NotFound),
        }
        let (now_kept, still_pending) = std::mem::take(&mut self.pending)
            .into_iter()
            .partition(|change: &NameChange| change.iter().any(|(name, _)| folder_of(name) == folder));
        self.pending = still_pending;
        for change in &now_kept {
            apply(&mut self.kept_names, change);
        }
        Ok(())
    }

    pub(super) fn create_folders(&mut self, folder: &Path) -> Result<(), ErrorKind> {
        for above in folder.ancestors().collect::<Vec<_>>().into_iter().rev().filter(|above| !above.as_os_str().is_empty()) {
            let name = self.walk(above, false)?;
            if !self.names.contains_key(&name) {
                let node = self.add(Kind::Folder, &[], 0o755);
                self.change_names(vec![(name, Some(node))]);
                continue;
            }
            match self.find(above, true).map(|node| self.nodes[node].kind) {
                Ok(Kind::Folder) => {}
                Ok(_) if above != folder => return Err(ErrorKind::NotADirectory),
                _ => return Err(ErrorKind::AlreadyExists),
            }
        }
        Ok(())
    }

    pub(super) fn metadata(&self, path: &Path) -> Result<Metadata, ErrorKind> {
        let number = self.find(path, false)?;
        let node = &self.nodes[number];
        Ok(Metadata {
            kind: node.kind,
            len_bytes: node.bytes.len() as u64,
            modified: Some(node.modified),
            read_only: node.kind == Kind::File && node.mode & 0o222 == 0,
            links: self.names.values().filter(|&&other| other == number).count() as u64,
            mode: Some(node.mode),
        })
    }
}

/// Applies one change of names.
pub(super) fn apply(names: &mut BTreeMap<PathBuf, usize>, change: &NameChange) {
    for (name, node) in change {
        match node {
            Some(node) => names.insert(name.clone(), *node),
            None => names.remove(name),
        };
    }
}

fn parts_reversed(path: &Path) -> Vec<OsString> {
    let wanted = |part: &Component<'_>| matches!(part, Component::Normal(_) | Component::ParentDir);
    path.components().filter(wanted).map(|part| part.as_os_str().to_owned()).rev().collect()
}
