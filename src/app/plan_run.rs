//! A batch is planned beside the window: how far the search is, the best plan once it ends or is stopped, and whether it still answers what is
//! asked now.

use std::sync::atomic::{AtomicBool, AtomicU32, Ordering};
use std::sync::mpsc::{Receiver, TryRecvError, channel};
use std::sync::{Arc, OnceLock};
use std::time::{Duration, Instant};

use super::computed::Computed;
use crate::calc::batch::{Ask, Asked, Options, Outcome, Template, ask};
use crate::calc::plan::{Plan, STEPS, plan};
use crate::calc::{Runs, Setting};

type Wake = Box<dyn Fn() + Send + Sync>;

/// A plan, what it answers, and what it is built with.
#[derive(Debug)]
pub struct Found {
    /// What was asked.
    pub asked: Asked,
    /// What came of it.
    pub outcome: Outcome,
    /// What new trees and flasks are built with.
    pub template: Template,
}

/// What was asked for, told by what changes it.
#[derive(Debug, Clone, PartialEq)]
struct Key {
    revision: u64,
    looked: u64,
    options: Options,
}

/// Plans on a thread, one batch at a time.
#[derive(Default)]
pub struct Planner {
    now: Option<(Key, Ask)>,
    running: Option<Running>,
    found: Option<Found>,
    wake: Arc<OnceLock<Wake>>,
}

struct Running {
    ask: Ask,
    since: Instant,
    ward: Arc<Ward>,
    answer: Receiver<Plan>,
}

/// Stops a search, and is told how far it is.
#[derive(Default)]
struct Ward {
    stopped: AtomicBool,
    thousandths: AtomicU32,
}

impl Drop for Running {
    fn drop(&mut self) {
        self.ward.stopped.store(true, Ordering::Relaxed);
    }
}

impl Planner {
    /// Who is to be woken when a plan was found.
    pub fn on_found(&mut self, wake: impl Fn() + Send + Sync + 'static) {
        let _ = self.wake.set(Box::new(wake));
    }

    /// Asks anew where a document, a pattern's file or a wish changed. Nothing is searched for yet.
    pub fn look(&mut self, (revision, looked): (u64, u64), options: &Options, computed: &Computed, runs: &Runs, setting: &Setting) {
        let key = Key { revision, looked, options: options.clone() };
        if self.now.as_ref().is_none_or(|(now, _)| *now != key) {
            let (job, studio) = (&computed.sound, &computed.sound_studio);
            self.now = Some((key, ask(job, studio, &computed.shelves, runs, setting, options)));
        }
    }

    /// What is asked for now.
    #[must_use]
    pub fn ask(&self) -> Option<&Ask> {
        self.now.as_ref().map(|(_, ask)| ask)
    }

    /// The last plan.
    #[must_use]
    pub fn found(&self) -> Option<&Found> {
        self.found.as_ref()
    }

    /// Does the last plan answer something else than is asked for now?
    #[must_use]
    pub fn is_stale(&self) -> bool {
        self.found.as_ref().zip(self.ask()).is_some_and(|(found, ask)| !ask.is_like(&found.asked))
    }

    /// How far the search is, from 0 to 1, and how long it has gone on.
    #[must_use]
    pub fn progress(&self) -> Option<(f64, Duration)> {
        let running = self.running.as_ref()?;
        Some((f64::from(running.ward.thousandths.load(Ordering::Relaxed)) / 1000.0, running.since.elapsed()))
    }

    /// Begins to search for a plan of what is asked for now, in place of a search that goes on.
    pub fn begin(&mut self) {
        self.running = None;
        let Some((_, ask)) = self.now.take() else { return };
        let (sender, answer) = channel();
        let ward = Arc::new(Ward::default());
        let (wish, watch, wake) = (ask.wish.clone(), Arc::clone(&ward), Arc::clone(&self.wake));
        let thread = std::thread::Builder::new().name("plan".to_owned()).spawn(move || {
            #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a share within 0 and 1")]
            let go_on = |share: f64| {
                watch.thousandths.store((share.clamp(0.0, 1.0) * 1000.0) as u32, Ordering::Relaxed);
                !watch.stopped.load(Ordering::Relaxed)
            };
            let found = plan(&wish, STEPS, &go_on);
            // Nobody waits any more where the batch was closed.
            if sender.send(found).is_ok()
                && let Some(wake) = wake.get()
            {
                wake();
            }
        });
        if thread.is_ok() {
            self.running = Some(Running { ask, since: Instant::now(), ward, answer });
        }
    }

    /// Ends the search with the best plan it has.
    pub fn stop(&self) {
        if let Some(running) = &self.running {
            running.ward.stopped.store(true, Ordering::Relaxed);
        }
    }

    /// Forgets the last plan.
    pub fn forget(&mut self) {
        self.found = None;
    }

    /// Takes in a plan that was found. True where one was.
    pub fn take(&mut self, computed: &Computed) -> bool {
        let Some(running) = &mut self.running else { return false };
        match running.answer.try_recv() {
            Ok(plan) => {
                let shelf = &computed.shelves.job;
                let (asked, outcome) = (running.ask.asked(), running.ask.read(&plan, shelf));
                self.found = Some(Found { asked, outcome, template: running.ask.template(&computed.sound, shelf) });
                self.running = None;
                true
            }
            Err(TryRecvError::Empty) => false,
            // The thread broke off.
            Err(TryRecvError::Disconnected) => {
                self.running = None;
                true
            }
        }
    }
}
