//! How a file is known to be the one that was read.

use std::time::{Duration, SystemTime};

use crate::files::disk::{Kind, Metadata};

/// A file that changed less than this before it was read may change again without its time showing it: some file systems keep time in
/// steps of two seconds.
const COARSEST: Duration = Duration::from_secs(2);

/// When a file last changed and how long it is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct Stamp {
    /// When it last changed.
    pub modified: SystemTime,
    /// Length in bytes.
    pub len_bytes: u64,
}

impl Stamp {
    /// `None` where the file system keeps no times, or where a link stands, whose own time tells nothing: then only reading tells.
    pub(super) fn of(about: &Metadata) -> Option<Self> {
        if about.kind == Kind::Link {
            return None;
        }
        Some(Self { modified: about.modified?, len_bytes: about.len_bytes })
    }

    /// True where the file may have changed since `now` without its stamp telling. A time in the future never settles.
    pub(super) fn is_young(&self, now: SystemTime) -> bool {
        self.modified.checked_add(COARSEST).is_none_or(|settled| settled >= now)
    }
}

/// The content's hash, kept while the stamp alone does not tell.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Proof([u8; 16]);

impl Proof {
    pub(super) fn of(bytes: &[u8]) -> Self {
        let mut first = [0; 16];
        blake3::Hasher::new().update(bytes).finalize_xof().fill(&mut first);
        Self(first)
    }
}
