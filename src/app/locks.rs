//! Who else has the open batch. It is told, and never in anybody's way: what guards the file is what a save compares.

use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::sync::mpsc::{Receiver, TryRecvError, channel};
use std::time::{Duration, Instant};

use crate::files::disk::Disk;
use crate::files::lock::{Holder, Lock, Standing, look, release, take, take_over};
use jiff::Timestamp;

/// So often a lock of ours says that it is still held.
const BEAT: Duration = Duration::from_secs(60);
/// So often another's is looked at.
const LOOK: Duration = Duration::from_secs(5);
/// So often is asked what was seen of it.
const SOON: Duration = Duration::from_millis(200);
/// A lock that says nothing new for so long, by the clock of this program alone, was left behind. No two clocks are ever compared.
const SILENT: Duration = Duration::from_secs(200);

/// Keeps the lock of the open batch.
pub struct Locks {
    disk: Arc<dyn Disk>,
    me: Holder,
    runs: fn(u32) -> bool,
    at: Option<PathBuf>,
    stands: Stands,
    aside: Aside,
    seen: Option<Receiver<Option<Lock>>>,
}

/// Does something beside the window: a disk that is slow, or a share that hangs, is not to be felt.
type Aside = fn(Box<dyn FnOnce() + Send>);

fn on_a_thread(task: Box<dyn FnOnce() + Send>) {
    // Where no thread can be had nothing is looked at this time.
    drop(std::thread::Builder::new().name("lock".to_owned()).spawn(task));
}

#[derive(Debug, Clone)]
enum Stands {
    /// No batch, or no lock can be put there.
    None,
    /// Ours, said anew at that time.
    Ours(Instant),
    /// Another's.
    Theirs(Theirs),
}

#[derive(Debug, Clone)]
struct Theirs {
    /// What it says; nothing where it cannot be read.
    holder: Option<Holder>,
    /// Since when it says so.
    since: Instant,
    looked: Instant,
}

/// Who has the batch open.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Told {
    /// The computer and whose hands, as far as it is said.
    pub who: String,
    /// It was not seen for long.
    pub silent: bool,
}

impl Locks {
    /// For a program: on a computer, with a process number; `runs` tells whether a process is alive on it.
    #[must_use]
    pub fn new(disk: Arc<dyn Disk>, me: Holder, runs: fn(u32) -> bool) -> Self {
        Self { disk, me, runs, at: None, stands: Stands::None, aside: on_a_thread, seen: None }
    }

    /// Goes along with the open batch. True where another is looked at now.
    pub fn follow(&mut self, path: Option<&Path>, now: Instant) -> bool {
        if self.at.as_deref() != path {
            self.leave();
            self.at = path.map(Path::to_path_buf);
            self.take(now);
            return true;
        }
        self.go_on(now);
        false
    }

    /// Who else has it open.
    #[must_use]
    pub fn theirs(&self, now: Instant) -> Option<Told> {
        let Stands::Theirs(theirs) = &self.stands else { return None };
        let said = theirs.holder.as_ref().map(|holder| [holder.initials.trim(), holder.host.trim()]);
        let who = said.map(|said| said.into_iter().filter(|words| !words.is_empty()).collect::<Vec<_>>().join(", ")).unwrap_or_default();
        Some(Told { who, silent: now.duration_since(theirs.since) >= SILENT })
    }

    /// When it has to be followed again at the latest.
    #[must_use]
    pub fn looks_again(&self) -> Duration {
        match (&self.seen, &self.stands) {
            (Some(_), _) => SOON,
            (None, Stands::Theirs(_)) => LOOK,
            _ => BEAT,
        }
    }

    /// Puts our lock in place of the other's.
    pub fn take_over(&mut self, now: Instant) {
        // What was seen before says nothing any more.
        self.seen = None;
        let Some(path) = &self.at else { return };
        self.stands = if take_over(&*self.disk, path, &self.said()).is_ok() { Stands::Ours(now) } else { Stands::None };
    }

    fn said(&self) -> Holder {
        Holder { time: Timestamp::now(), ..self.me.clone() }
    }

    fn take(&mut self, now: Instant) {
        self.stands = Stands::None;
        let Some(path) = &self.at else { return };
        let holder = match take(&*self.disk, path, &self.said()) {
            Ok(Lock::None) => {
                self.stands = Stands::Ours(now);
                return;
            }
            Ok(Lock::Held(holder)) => Some(holder),
            Ok(Lock::Unreadable) => None,
            Err(_) => return,
        };
        match holder.as_ref().map(|holder| holder.standing(&self.me, self.runs)) {
            Some(Standing::Mine | Standing::LeftBehind) => self.take_over(now),
            _ => self.stands = Stands::Theirs(Theirs { holder, since: now, looked: now }),
        }
    }

    fn go_on(&mut self, now: Instant) {
        let due = match &self.stands {
            Stands::Ours(said) => now.duration_since(*said) >= BEAT,
            Stands::Theirs(theirs) => now.duration_since(theirs.looked) >= LOOK,
            Stands::None => false,
        };
        if due && self.seen.is_none() {
            self.look_aside(now);
        }
        match self.seen.as_ref().map(Receiver::try_recv) {
            Some(Ok(found)) => {
                self.seen = None;
                self.heed(found, now);
            }
            Some(Err(TryRecvError::Disconnected)) => self.seen = None,
            _ => {}
        }
    }

    /// Looks at the lock; says anew that it is ours where it is. One that was taken over meanwhile is left alone.
    fn look_aside(&mut self, now: Instant) {
        let Some(path) = self.at.clone() else { return };
        match &mut self.stands {
            Stands::Ours(at) | Stands::Theirs(Theirs { looked: at, .. }) => *at = now,
            Stands::None => return,
        }
        let (disk, me) = (Arc::clone(&self.disk), self.said());
        let ours = matches!(self.stands, Stands::Ours(_));
        let (tell, seen) = channel();
        self.seen = Some(seen);
        (self.aside)(Box::new(move || {
            let found = look(&*disk, &path).ok();
            if ours && matches!(&found, Some(Lock::Held(holder)) if holder.is_same_program(&me)) {
                let _ = take_over(&*disk, &path, &me);
            }
            let _ = tell.send(found);
        }));
    }

    fn heed(&mut self, found: Option<Lock>, now: Instant) {
        match (&mut self.stands, found) {
            // Somebody works on it too, or put ours away.
            (Stands::Ours(_), Some(Lock::Held(holder))) if !holder.is_same_program(&self.me) => {
                self.stands = Stands::Theirs(Theirs { holder: Some(holder), since: now, looked: now });
            }
            (Stands::Ours(_) | Stands::Theirs(_), Some(Lock::None)) => self.take(now),
            (Stands::Theirs(_), Some(Lock::Held(holder))) if holder.is_same_program(&self.me) => self.stands = Stands::Ours(now),
            (Stands::Theirs(theirs), Some(Lock::Held(holder))) if theirs.holder.as_ref() != Some(&holder) => {
                (theirs.holder, theirs.since) = (Some(holder), now);
            }
            _ => {}
        }
    }

    fn leave(&mut self) {
        if let (Stands::Ours(_), Some(path)) = (&self.stands, &self.at) {
            let _ = release(&*self.disk, path, &self.me);
        }
        (self.stands, self.seen) = (Stands::None, None);
    }
}

impl Drop for Locks {
    fn drop(&mut self) {
        self.leave();
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::files::disk::RealDisk;

    fn holder(host: &str, pid: u32) -> Holder {
        Holder { host: host.to_owned(), pid, initials: "MW".to_owned(), time: Timestamp::UNIX_EPOCH }
    }

    fn locks(host: &str, pid: u32, runs: fn(u32) -> bool) -> Locks {
        let mut locks = Locks::new(Arc::new(RealDisk), holder(host, pid), runs);
        locks.aside = |task| task();
        locks
    }

    fn on(locks: &mut Locks, path: &Path, now: Instant) -> Option<Told> {
        locks.follow(Some(path), now);
        locks.theirs(now)
    }

    #[test]
    fn the_second_is_told_and_has_it_once_the_first_is_gone() {
        let folder = tempfile::tempdir().unwrap_or_else(|error| panic!("{error}"));
        let (path, begun) = (folder.path().join("lilac.ron"), Instant::now());
        let (mut first, mut second) = (locks("bench", 1, |_| true), locks("desk", 2, |_| true));
        assert_eq!(on(&mut first, &path, begun), None);
        assert_eq!(on(&mut second, &path, begun), Some(Told { who: "MW, bench".to_owned(), silent: false }));
        drop(first);
        assert_eq!(on(&mut second, &path, begun + LOOK), None);
        assert!(matches!(look(&RealDisk, &path), Ok(Lock::Held(holder)) if holder.host == "desk"));
        drop(second);
        assert_eq!(look(&RealDisk, &path).ok(), Some(Lock::None));
    }

    #[test]
    fn who_had_it_first_is_told_when_another_works_on_it_too() {
        let folder = tempfile::tempdir().unwrap_or_else(|error| panic!("{error}"));
        let (path, begun) = (folder.path().join("lilac.ron"), Instant::now());
        let (mut first, mut second) = (locks("bench", 1, |_| true), locks("desk", 2, |_| true));
        assert_eq!(on(&mut first, &path, begun), None);
        assert!(on(&mut second, &path, begun).is_some());
        second.take_over(begun);
        assert_eq!(on(&mut first, &path, begun + BEAT), Some(Told { who: "MW, desk".to_owned(), silent: false }));
        drop(second);
        assert_eq!(on(&mut first, &path, begun + BEAT + LOOK), None, "it is the first one's again");
        assert!(matches!(look(&RealDisk, &path), Ok(Lock::Held(holder)) if holder.host == "bench"));
    }

    #[test]
    fn silence_is_told_by_our_own_clock_alone() {
        let folder = tempfile::tempdir().unwrap_or_else(|error| panic!("{error}"));
        let (path, begun) = (folder.path().join("lilac.ron"), Instant::now());
        // Its clock stands at the beginning of time: that says nothing.
        assert_eq!(take(&RealDisk, &path, &holder("bench", 1)).ok(), Some(Lock::None));
        let mut second = locks("desk", 2, |_| true);
        let silent = |second: &mut Locks, after: Duration| on(second, &path, begun + after).map(|told| told.silent);
        assert_eq!(silent(&mut second, Duration::ZERO), Some(false));
        assert_eq!(silent(&mut second, SILENT - LOOK), Some(false));
        // It says something new: it is alive.
        let again = Holder { time: Timestamp::MAX, ..holder("bench", 1) };
        assert!(take_over(&RealDisk, &path, &again).is_ok());
        assert_eq!(silent(&mut second, SILENT + LOOK), Some(false));
        assert_eq!(silent(&mut second, SILENT * 2 + LOOK), Some(true));
        second.take_over(begun);
        assert_eq!(second.theirs(begun), None);
    }

    #[test]
    fn one_of_a_program_that_is_gone_is_taken_over_at_once() {
        let folder = tempfile::tempdir().unwrap_or_else(|error| panic!("{error}"));
        let (path, now) = (folder.path().join("lilac.ron"), Instant::now());
        assert_eq!(take(&RealDisk, &path, &holder("bench", 1)).ok(), Some(Lock::None));
        assert!(on(&mut locks("bench", 2, |_| true), &path, now).is_some(), "it runs");
        assert_eq!(on(&mut locks("bench", 3, |_| false), &path, now), None, "it runs no more");
    }

    #[test]
    fn another_batch_is_another_lock() {
        let folder = tempfile::tempdir().unwrap_or_else(|error| panic!("{error}"));
        let (one, other) = (folder.path().join("lilac.ron"), folder.path().join("sloe.ron"));
        let mut locks = locks("bench", 1, |_| true);
        let now = Instant::now();
        on(&mut locks, &one, now);
        on(&mut locks, &other, now);
        assert_eq!(look(&RealDisk, &one).ok(), Some(Lock::None));
        assert!(matches!(look(&RealDisk, &other), Ok(Lock::Held(_))));
        locks.follow(None, now);
        assert_eq!(look(&RealDisk, &other).ok(), Some(Lock::None));
    }
}
