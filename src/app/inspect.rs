//! The file of the chosen pattern, looked at closely beside the window: its form to be turned, its faulty edges, its walls, and what could be
//! mended. One file at a time, the newest wins; what was found of the last few is kept.

use std::collections::VecDeque;
use std::path::{Path, PathBuf};
use std::sync::atomic::{AtomicBool, AtomicU32, Ordering};
use std::sync::mpsc::{Receiver, Sender, TryRecvError, channel};
use std::sync::{Arc, OnceLock};

use crate::files::disk::{Disk, RealDisk};
use crate::files::save::hash_of;
use crate::mesh::look::Model;
use crate::mesh::{FaultyEdges, Heavy, Limits, Mended, Soup, Walls, Watch, clear_of, faulty_edges, heaviest, mend, read, thickness};

/// A file and its content.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Key {
    /// Where it lies.
    pub path: PathBuf,
    /// Hash of its bytes as hexadecimal text.
    pub hash: String,
}

/// What was found of a file. Parts come one after another.
#[derive(Debug, Clone, Default)]
pub struct Inspection {
    /// Its triangles.
    pub soup: Option<Arc<Soup>>,
    /// Its form to be drawn; none where it has no extent.
    pub model: Option<Arc<Model>>,
    /// Its edges at fault.
    pub edges: Arc<FaultyEdges>,
    /// Its walls.
    pub walls: Option<Arc<Walls>>,
    /// Where it is heaviest, away from the places where no sprue may stand.
    pub heavy: Option<Arc<Heaviest>>,
    /// What mending makes of it, where something can be mended.
    pub mended: Option<Arc<Mended>>,
    /// Everything was looked at.
    pub whole: bool,
}

/// Places where a ball of metal is largest.
#[derive(Debug, Clone, PartialEq)]
pub struct Heaviest {
    /// The balls on the surface that were kept clear of, each a middle and a radius in mm.
    pub clear_of: Vec<NoSprue>,
    /// The places, the heaviest first.
    pub places: Vec<Heavy>,
}

/// A ball on the surface where no sprue may stand: middle and radius in mm.
pub type NoSprue = ([f64; 3], f64);

/// Files that are kept, and the most triangles they may have together.
const KEPT: usize = 4;
const KEPT_TRIANGLES: usize = 6_000_000;

type Wake = Box<dyn Fn() + Send + Sync>;

/// Looks closely at one file after another.
#[derive(Default)]
pub struct Inspector {
    found: VecDeque<(Key, Inspection)>,
    running: Option<Running>,
    wake: Arc<OnceLock<Wake>>,
}

struct Running {
    key: Key,
    parts: Receiver<Inspection>,
    ward: Arc<Ward>,
}

/// Carries how far the work is to the window, and the wish to stop to the work.
#[derive(Debug, Default)]
struct Ward {
    stopped: AtomicBool,
    thousandths: AtomicU32,
}

impl Watch for Ward {
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a share within 0 and 1")]
    fn go_on(&self, share: f64) -> bool {
        self.thousandths.store((share.clamp(0.0, 1.0) * 1000.0) as u32, Ordering::Relaxed);
        !self.stopped.load(Ordering::Relaxed)
    }
}

impl Inspector {
    /// Who is to be woken when a part was found.
    pub fn on_found(&mut self, wake: impl Fn() + Send + Sync + 'static) {
        let _ = self.wake.set(Box::new(wake));
    }

    /// Looks at a file, in place of the one that is being looked at; nothing where it was looked at already.
    pub fn look_at(&mut self, key: &Key, no_sprue: &[NoSprue]) {
        if self.running.as_ref().is_some_and(|running| running.key == *key) {
            return;
        }
        let known = self.of(&key.path, &key.hash).filter(|found| found.whole).cloned();
        let current = |found: &Inspection| found.heavy.as_ref().is_none_or(|heavy| heavy.clear_of == no_sprue);
        if known.as_ref().is_some_and(current) {
            return;
        }
        self.stop();
        let (sender, parts) = channel();
        let ward = Arc::new(Ward::default());
        let (work, of, wake, no_sprue) = (Arc::clone(&ward), key.clone(), Arc::clone(&self.wake), no_sprue.to_vec());
        let thread = std::thread::Builder::new().name("look".to_owned()).spawn(move || {
            let tell = |found: &Inspection| tell(&sender, &wake, found);
            let _ = match known {
                // Only what is kept clear of has changed.
                Some(mut found) => find_heavy(&mut found, &no_sprue, &work).and_then(|()| tell(&found)),
                None => inspect(&of, &no_sprue, &work, &tell),
            };
        });
        if thread.is_ok() {
            self.running = Some(Running { key: key.clone(), parts, ward });
        }
    }

    /// Stops looking.
    pub fn stop(&mut self) {
        if let Some(running) = self.running.take() {
            running.ward.stopped.store(true, Ordering::Relaxed);
        }
    }

    /// Takes in what was found. True where something was.
    pub fn take(&mut self) -> bool {
        let Some(running) = &self.running else { return false };
        let (mut came, mut over) = (None, false);
        loop {
            match running.parts.try_recv() {
                Ok(found) => came = Some(found),
                Err(TryRecvError::Empty) => break,
                Err(TryRecvError::Disconnected) => {
                    over = true;
                    break;
                }
            }
        }
        let changed = came.is_some() || over;
        if let Some(mut found) = came {
            let key = running.key.clone();
            found.whole |= over;
            self.keep(key, found);
        } else if over {
            // It ended without another part: what came is all there is.
            let key = running.key.clone();
            match self.found.iter_mut().find(|(other, _)| *other == key) {
                Some((_, found)) => found.whole = true,
                None => self.keep(key, Inspection { whole: true, ..Inspection::default() }),
            }
        }
        if over {
            self.running = None;
        }
        changed
    }

    fn keep(&mut self, key: Key, found: Inspection) {
        self.found.retain(|(other, _)| *other != key);
        self.found.push_front((key, found));
        let size = |found: &Inspection| found.soup.as_ref().map_or(0, |soup| soup.triangles().len());
        while self.found.len() > 1
            && (self.found.len() > KEPT || self.found.iter().map(|(_, found)| size(found)).sum::<usize>() > KEPT_TRIANGLES)
        {
            self.found.pop_back();
        }
    }

    /// What was found of a file so far.
    #[must_use]
    pub fn of(&self, path: &Path, hash: &str) -> Option<&Inspection> {
        self.found.iter().find(|(key, _)| key.path == path && key.hash == hash).map(|(_, found)| found)
    }

    /// How far the running work is, from 0 to 1.
    #[must_use]
    pub fn progress(&self) -> Option<f64> {
        self.running.as_ref().map(|running| f64::from(running.ward.thousandths.load(Ordering::Relaxed)) / 1000.0)
    }
}

fn tell(sender: &Sender<Inspection>, wake: &OnceLock<Wake>, found: &Inspection) -> Option<()> {
    sender.send(found.clone()).ok()?;
    if let Some(wake) = wake.get() {
        wake();
    }
    Some(())
}

/// Finds one part after another and tells of each; ends early where nobody listens any more or the work was stopped.
fn inspect(key: &Key, no_sprue: &[NoSprue], ward: &Ward, tell: &dyn Fn(&Inspection) -> Option<()>) -> Option<()> {
    let limits = Limits::default();
    let bytes = RealDisk.read(&key.path, limits.max_bytes).ok()?;
    // Another content than the one that was measured is another file: it is told of when it is measured.
    if hash_of(&bytes).to_hex().as_str() != key.hash {
        return None;
    }
    let soup = Arc::new(read(&bytes, &limits).ok()?);
    drop(bytes);
    let mut found = Inspection { soup: Some(Arc::clone(&soup)), ..Inspection::default() };
    found.model = Model::of(Arc::clone(&soup), ward).map(Arc::new);
    tell(&found)?;
    found.edges = Arc::new(faulty_edges(&soup));
    tell(&found)?;
    found.walls = thickness(&soup, ward).map(Arc::new);
    tell(&found)?;
    find_heavy(&mut found, no_sprue, ward)?;
    tell(&found)?;
    found.mended = mend(&soup).map(Arc::new);
    found.whole = true;
    tell(&found)
}

/// Finds the heaviest places, where the walls are known. Nothing when the work was stopped.
fn find_heavy(found: &mut Inspection, no_sprue: &[NoSprue], ward: &Ward) -> Option<()> {
    if let (Some(soup), Some(walls)) = (&found.soup, &found.walls) {
        let places = heaviest(soup, walls, &clear_of(no_sprue), ward)?;
        found.heavy = Some(Arc::new(Heaviest { clear_of: no_sprue.to_vec(), places }));
    }
    Some(())
}
