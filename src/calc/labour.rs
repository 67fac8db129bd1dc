//! How a long computation is carried out. What computes knows no threads: whoever asks lends the cores.

use std::sync::Mutex;
use std::sync::atomic::{AtomicBool, Ordering};

/// Carries out pieces of work that need nothing of each other, in any order or at once.
pub trait Cores: Sync {
    /// Does `task` for every number below `count`, and returns once all are done.
    fn each(&self, count: usize, task: &(dyn Fn(usize) + Sync));
}

/// One piece after the other, where it is asked.
#[derive(Debug, Clone, Copy)]
pub struct OneCore;

impl Cores for OneCore {
    fn each(&self, count: usize, task: &(dyn Fn(usize) + Sync)) {
        (0..count).for_each(task);
    }
}

/// With what a long computation goes on, and how it is ended.
#[derive(Clone, Copy)]
pub struct Labour<'a> {
    /// What it may use.
    pub cores: &'a dyn Cores,
    /// Told how far it is, from 0 to 1, and answers whether to go on. Asked often, from every core.
    pub go_on: &'a (dyn Fn(f64) -> bool + Sync),
}

impl Labour<'static> {
    /// On one core, to the end.
    pub const ALONE: Self = Self { cores: &OneCore, go_on: &|_| true };
}

impl Labour<'_> {
    /// Does `task` for all, and gives the answers in their order.
    ///
    /// # Errors
    /// The first in that order of those that were met: nothing more is begun once one was.
    pub fn each<T: Sync, R: Send, E: Send>(&self, all: &[T], task: impl Fn(&T) -> Result<R, E> + Sync) -> Result<Vec<R>, E> {
        let failed = AtomicBool::new(false);
        let answers: Vec<Mutex<Option<Result<R, E>>>> = all.iter().map(|_| Mutex::new(None)).collect();
        self.cores.each(all.len(), &|at| {
            if failed.load(Ordering::Relaxed) {
                return;
            }
            let answer = task(&all[at]);
            failed.fetch_or(answer.is_err(), Ordering::Relaxed);
            if let Ok(mut place) = answers[at].lock() {
                *place = Some(answer);
            }
        });
        answers.into_iter().filter_map(|place| place.into_inner().ok().flatten()).collect()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The last piece first.
    struct Backwards;

    impl Cores for Backwards {
        fn each(&self, count: usize, task: &(dyn Fn(usize) + Sync)) {
            (0..count).rev().for_each(task);
        }
    }

    #[test]
    fn answers_come_in_the_order_of_the_questions() {
        let labour = Labour { cores: &Backwards, ..Labour::ALONE };
        assert_eq!(labour.each(&[1, 2, 3], |n| Ok::<_, ()>(n * n)), Ok(vec![1, 4, 9]));
        assert_eq!(labour.each::<u8, u8, ()>(&[], |n| Ok(*n)), Ok(vec![]));
    }

    #[test]
    fn nothing_is_begun_after_a_failure() {
        let begun = Mutex::new(Vec::new());
        let task = |n: &i32| {
            begun.lock().map_err(|_| 0)?.push(*n);
            if *n == 2 { Err(*n) } else { Ok(*n) }
        };
        assert_eq!(Labour::ALONE.each(&[1, 2, 3], task), Err(2));
        assert_eq!(begun.lock().map(|seen| seen.clone()).unwrap_or_default(), [1, 2]);
    }
}
