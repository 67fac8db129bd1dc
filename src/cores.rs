//! All cores of the machine, lent to what computes for long.

use std::num::NonZero;
use std::sync::atomic::{AtomicUsize, Ordering};

use crate::calc::labour::Cores;

/// More would wait for each other.
const MOST_THREADS: usize = 8;

/// Every core of the machine, this thread among them.
#[derive(Debug, Clone, Copy)]
pub struct AllCores;

impl Cores for AllCores {
    fn each(&self, count: usize, task: &(dyn Fn(usize) + Sync)) {
        let threads = std::thread::available_parallelism().map_or(1, NonZero::get).min(MOST_THREADS).min(count);
        let next = AtomicUsize::new(0);
        let work = || {
            loop {
                let at = next.fetch_add(1, Ordering::Relaxed);
                if at >= count {
                    return;
                }
                task(at);
            }
        };
        std::thread::scope(|scope| {
            for _ in 1..threads {
                // Where the system has no thread left, this one does it all.
                if std::thread::Builder::new().name("beside".to_owned()).spawn_scoped(scope, work).is_err() {
                    break;
                }
            }
            work();
        });
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_piece_is_done_once() {
        for count in [0, 1, 2, 7, 1000] {
            let done: Vec<AtomicUsize> = (0..count).map(|_| AtomicUsize::new(0)).collect();
            AllCores.each(count, &|at| {
                done[at].fetch_add(1, Ordering::Relaxed);
            });
            assert!(done.iter().all(|times| times.load(Ordering::Relaxed) == 1), "{count}");
        }
    }
}
