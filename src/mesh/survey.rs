//! The quick way for a file without faults: one pass over all triangles, then every region on its own.
//!
//! An edge belongs to the lower of the regions of its two ends. Each region gets every triangle that has an edge of its own, so it sees all uses
//! of its edges and can tell for certain whether each is used once in either direction. Triangles that two regions got tie their shells together.
//! Whatever is not found sound here is looked at again, slowly, by the modules that name faults.

use super::bins::{Sorted, sort};
use super::patch::Patch;
use super::regions::Regions;
use super::source::{Source, Stop};
use super::sums::Sums;
use super::union_find::UnionFind;
use std::sync::atomic::{AtomicBool, AtomicUsize, Ordering};

/// Triangles a region is drawn for: its tables then stay in a core's own cache.
pub(super) const REGION_TRIANGLES: usize = 4096;
/// Threads at most. More gain little: the memory is then the limit.
const MOST_THREADS: usize = 8;
/// Files smaller than this are not worth a second thread.
const THREAD_TRIANGLES: usize = 16_384;

/// What a quick look gives.
pub(super) struct Survey {
    /// Sums over all triangles, about the middle of a sample of them.
    pub sums: Sums,
    /// The number of shells when every edge is used once in either direction; nothing when some edge or triangle is not like that.
    pub shells: Option<usize>,
}

/// Looks at all triangles. Stops at the first whose corners are not all finite.
pub(super) fn survey<S: Source + ?Sized>(source: &S, region_triangles: usize) -> Result<Survey, Stop> {
    let regions = Regions::new(source, region_triangles)?;
    let cores = std::thread::available_parallelism().map_or(1, usize::from).min(MOST_THREADS);
    let threads = cores.min(source.count() / THREAD_TRIANGLES + 1);
    let share = source.count().div_ceil(threads);
    let ranges = (0..threads).map(|t| (t * share).min(source.count())..((t + 1) * share).min(source.count()));
    let sorted = on_threads(ranges.map(|range| || sort(source, &regions, range)));
    let mut sums = Sums::NOTHING;
    let mut parts = Vec::new();
    for part in sorted {
        let part = part?;
        sums.join(&part.sums);
        parts.push(part);
    }
    Ok(Survey { sums, shells: shells(source.count(), &regions, &parts, threads) })
}

/// Runs the tasks at once and gives their answers in order. The last runs on this thread.
fn on_threads<T: Send, F: FnOnce() -> T + Send>(tasks: impl Iterator<Item = F>) -> Vec<T> {
    let mut tasks: Vec<F> = tasks.collect();
    let last = tasks.pop();
    std::thread::scope(|scope| {
        let running: Vec<_> = tasks.into_iter().map(|task| scope.spawn(task)).collect();
        let answer = last.map(|task| task());
        let join = |task: std::thread::ScopedJoinHandle<'_, T>| task.join().unwrap_or_else(|panic| std::panic::resume_unwind(panic));
        running.into_iter().map(join).collect::<Vec<T>>().into_iter().chain(answer).collect()
    })
}

/// Matches the edges of every region and counts the shells of the whole; nothing when a fault was met.
fn shells(triangles: usize, regions: &Regions, parts: &[Sorted], threads: usize) -> Option<usize> {
    let next = AtomicUsize::new(0);
    let faulty = AtomicBool::new(false);
    let work = || {
        let mut patch = Patch::default();
        let mut done = Vec::new();
        loop {
            let region = next.fetch_add(1, Ordering::Relaxed);
            if region >= regions.count() || faulty.load(Ordering::Relaxed) {
                return done;
            }
            let bins = parts.iter().map(|part| &part.bins[region]);
            match patch.look(regions, region as u16, bins) {
                Some(found) => done.push(found),
                None => faulty.store(true, Ordering::Relaxed),
            }
        }
    };
    let found: Vec<Found> = on_threads((0..threads).map(|_| work)).into_iter().flatten().collect();
    if faulty.into_inner() {
        return None;
    }
    Some(tie(triangles, &found))
}

/// What a region found when all its edges were sound.
pub(super) struct Found {
    /// How many sets of triangles hang together within the region.
    pub sets: u32,
    /// Triangles another region got too, with their set.
    pub shared: Vec<(u32, u32)>,
}

/// Ties the sets of all regions together by the triangles they share, and counts what is left.
fn tie(triangles: usize, found: &[Found]) -> usize {
    let mut sets = UnionFind::new(found.iter().map(|f| f.sets as usize).sum());
    let mut set_of = vec![0_u32; triangles];
    let mut first = 0;
    for region in found {
        for &(triangle, set) in &region.shared {
            let other = &mut set_of[triangle as usize];
            if *other == 0 {
                *other = first + set + 1;
            } else {
                sets.unite(*other - 1, first + set);
            }
        }
        first += region.sets;
    }
    sets.numbered().1
}
