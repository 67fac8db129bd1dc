//! Something is searched for on a thread beside the window: how far it is, what is found, and an end with the best until then.

use std::sync::atomic::{AtomicBool, AtomicU32, Ordering};
use std::sync::mpsc::{Receiver, TryRecvError, channel};
use std::sync::{Arc, OnceLock};
use std::time::{Duration, Instant};

type Wake = Box<dyn Fn() + Send + Sync>;

/// One search at a time. Letting go of it ends it.
pub struct Search<T> {
    running: Option<Running<T>>,
    wake: Arc<OnceLock<Wake>>,
}

struct Running<T> {
    since: Instant,
    ward: Arc<Ward>,
    answer: Receiver<T>,
}

/// Stops a search, and is told how far it is.
#[derive(Default)]
struct Ward {
    stopped: AtomicBool,
    thousandths: AtomicU32,
}

impl<T> Default for Search<T> {
    fn default() -> Self {
        Self { running: None, wake: Arc::default() }
    }
}

impl<T> Drop for Running<T> {
    fn drop(&mut self) {
        self.ward.stopped.store(true, Ordering::Relaxed);
    }
}

/// What came of looking after a search.
#[derive(Debug, PartialEq, Eq)]
pub enum Came<T> {
    /// Nothing yet, or nothing is searched for.
    Nothing,
    /// It was found.
    Found(T),
    /// The thread broke off.
    Broke,
}

impl<T: Send + 'static> Search<T> {
    /// Who is to be woken when something was found.
    pub fn on_found(&mut self, wake: impl Fn() + Send + Sync + 'static) {
        let _ = self.wake.set(Box::new(wake));
    }

    /// Begins a search, in place of one that goes on. It is given what to tell how far it is, which answers whether to go on.
    pub fn begin(&mut self, name: &str, search: impl FnOnce(&(dyn Fn(f64) -> bool + Sync)) -> T + Send + 'static) {
        let (sender, answer) = channel();
        let ward = Arc::new(Ward::default());
        let (watch, wake) = (Arc::clone(&ward), Arc::clone(&self.wake));
        let thread = std::thread::Builder::new().name(name.to_owned()).spawn(move || {
            #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a share within 0 and 1")]
            let go_on = |share: f64| {
                watch.thousandths.store((share.clamp(0.0, 1.0) * 1000.0) as u32, Ordering::Relaxed);
                !watch.stopped.load(Ordering::Relaxed)
            };
            // Nobody waits any more where the batch was closed.
            if sender.send(search(&go_on)).is_ok()
                && let Some(wake) = wake.get()
            {
                wake();
            }
        });
        self.running = thread.is_ok().then(|| Running { since: Instant::now(), ward, answer });
    }

    /// How far the search is, from 0 to 1, and how long it has gone on.
    #[must_use]
    pub fn progress(&self) -> Option<(f64, Duration)> {
        let running = self.running.as_ref()?;
        Some((f64::from(running.ward.thousandths.load(Ordering::Relaxed)) / 1000.0, running.since.elapsed()))
    }

    /// Ends the search with the best it has.
    pub fn stop(&self) {
        if let Some(running) = &self.running {
            running.ward.stopped.store(true, Ordering::Relaxed);
        }
    }

    /// Takes what was found.
    pub fn take(&mut self) -> Came<T> {
        let Some(running) = &self.running else { return Came::Nothing };
        let came = match running.answer.try_recv() {
            Ok(found) => Came::Found(found),
            Err(TryRecvError::Empty) => return Came::Nothing,
            Err(TryRecvError::Disconnected) => Came::Broke,
        };
        self.running = None;
        came
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_search_tells_how_far_it_is_and_ends_when_asked_to() {
        let mut search = Search::default();
        search.begin("test", |go_on| {
            let mut rounds = 0_u32;
            while go_on(0.25) {
                rounds += 1;
                std::thread::sleep(Duration::from_millis(1));
            }
            rounds
        });
        while search.progress().is_some_and(|(share, _)| share < 0.25) {
            std::thread::sleep(Duration::from_millis(1));
        }
        assert_eq!(search.take(), Came::Nothing);
        search.stop();
        let rounds = loop {
            match search.take() {
                Came::Nothing => std::thread::sleep(Duration::from_millis(1)),
                came => break came,
            }
        };
        assert!(matches!(rounds, Came::Found(_)));
        assert!(search.progress().is_none() && search.take() == Came::Nothing);
    }

    #[test]
    fn a_thread_that_breaks_off_is_told() {
        let mut search: Search<u32> = Search::default();
        search.begin("test", |_| std::panic::resume_unwind(Box::new("broken")));
        loop {
            match search.take() {
                Came::Nothing => std::thread::sleep(Duration::from_millis(1)),
                came => break assert_eq!(came, Came::Broke),
            }
        }
    }
}
