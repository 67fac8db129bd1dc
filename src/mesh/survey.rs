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
pub(super) const REGION_TRIANGLES: usize = 2048;
/// Threads at most. More gain little: the memory is then the limit.
const MOST_THREADS: usize = 8;
/// Triangles that are worth a thread of their own.
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
pub(super) fn on_threads<T: Send, F: FnOnce() -> T + Send>(tasks: impl Iterator<Item = F>) -> Vec<T> {
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

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test may stop where it stands")]
mod tests {
    use super::super::edges::link;
    use super::super::soup::Triangle;
    use super::super::weld::weld;
    use super::*;
    use proptest::prelude::*;
    use std::f32::consts::TAU;

    /// A ring of round wire at a place along x.
    fn ring(n: usize, m: usize, x: f32) -> Vec<Triangle> {
        let at = |i: usize, j: usize| {
            let (u, v) = (TAU * (i % n) as f32 / n as f32, TAU * (j % m) as f32 / m as f32);
            [x + (5.0 + v.cos()) * u.cos(), (5.0 + v.cos()) * u.sin(), v.sin()]
        };
        let quads = (0..n * m).map(|k| (k / m, k % m));
        quads.flat_map(|(i, j)| [[at(i, j), at(i + 1, j), at(i + 1, j + 1)], [at(i, j), at(i + 1, j + 1), at(i, j + 1)]]).collect()
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(200))]

        /// However finely space is parted, the quick way agrees with matching all edges at once: on what is sound, and on how many shells.
        #[test]
        fn regions_change_nothing(
            sides in (3_usize..20, 3_usize..20), parts in 1_usize..4, wanted in 1_usize..200, harm in 0_u8..5, pick: prop::sample::Index, other: prop::sample::Index,
        ) {
            // Neighbours at 4 mm run through each other without sharing a point; the last lies far off.
            let mut triangles: Vec<Triangle> = (0..parts).flat_map(|k| ring(sides.0, sides.1, [0.0, 4.0, 60.0][k])).collect();
            let at = pick.index(triangles.len());
            match harm {
                1 => { triangles.remove(at); }
                2 => triangles[at].swap(0, 1),
                3 => triangles.push(triangles[at]),
                4 => { let corner = triangles[other.index(triangles.len())][0]; triangles[at][1] = corner; }
                _ => {}
            }
            let quick = survey(&triangles[..], wanted).unwrap();
            let links = link(&weld(&triangles));
            let sound = links.encloses() && links.non_manifold == 0 && !triangles.iter().any(|[a, b, c]| a == b || b == c || c == a);
            prop_assert_eq!(quick.shells, sound.then_some(links.shells));
            prop_assert_eq!(quick.sums.triangles as usize, triangles.len());
        }
    }

    #[test]
    fn the_first_corner_that_is_no_number_is_found() {
        let mut triangles = ring(200, 100, 0.0);
        for at in [39_000, 20_001, 700] {
            triangles[at][2][1] = f32::INFINITY;
            let Err(Stop::NotFinite(found)) = survey(&triangles[..], 100) else { panic!("{at} was not found") };
            assert_eq!(found, at);
        }
    }

    #[test]
    fn small_regions_are_many() {
        let triangles = ring(100, 50, 0.0);
        assert!(Regions::new(&triangles[..], 100).unwrap().count() > 20);
        assert_eq!(survey(&triangles[..], 100).unwrap().shells, Some(1));
    }
}
