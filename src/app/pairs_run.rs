//! The files of pairs are compared beside the window, once both were measured.

use std::collections::BTreeMap;
use std::path::Path;
use std::sync::mpsc::{Receiver, TryRecvError, channel};
use std::sync::{Arc, OnceLock};

use crate::calc::{PairRun, Runs};
use crate::files::disk::RealDisk;
use crate::files::pair_runs::{Question, compare, questions};
use crate::job::Job;
use crate::mesh::{Limits, Unwatched};

type Wake = Box<dyn Fn() + Send + Sync>;
type Answer = (Question, Option<PairRun>);

/// Compares pairs on a thread, each once; `None` of `known` where two could not be compared.
#[derive(Default)]
pub struct PairReader {
    known: BTreeMap<Question, Option<PairRun>>,
    running: Option<(Question, Receiver<Answer>)>,
    wake: Arc<OnceLock<Wake>>,
}

impl PairReader {
    /// Who is to be woken when a pair was compared.
    pub fn on_found(&mut self, wake: impl Fn() + Send + Sync + 'static) {
        let _ = self.wake.set(Box::new(wake));
    }

    /// Is a pair being compared?
    #[must_use]
    pub fn is_running(&self) -> bool {
        self.running.is_some()
    }

    /// Sets what is known of every pair, and begins to compare the next one that is not. True where `runs` changed.
    pub fn ask(&mut self, folder: &Path, job: &Job, runs: &mut Runs) -> bool {
        let asked = questions(folder, job, runs);
        // What was compared before a file or a pair changed is of no use any more.
        self.known.retain(|question, _| asked.iter().any(|(_, other)| other == question));
        let found = asked.iter().filter_map(|(id, question)| Some((*id, (*self.known.get(question)?)?))).collect();
        let next = asked.into_iter().map(|(_, question)| question).find(|question| !self.known.contains_key(question));
        if self.running.is_none()
            && let Some(question) = next
        {
            self.begin(question);
        }
        let changed = runs.pairs != found;
        runs.pairs = found;
        changed
    }

    fn begin(&mut self, question: Question) {
        let (sender, receiver) = channel();
        let (asked, wake) = (question.clone(), Arc::clone(&self.wake));
        let thread = std::thread::Builder::new().name("pairs".to_owned()).spawn(move || {
            let found = compare(&RealDisk, &asked, &Limits::default(), &Unwatched);
            // Nobody waits any more where the batch was closed.
            if sender.send((asked, found)).is_ok()
                && let Some(wake) = wake.get()
            {
                wake();
            }
        });
        match thread {
            Ok(_) => self.running = Some((question, receiver)),
            // No thread to be had: the pair stays as if it could not be compared.
            Err(_) => drop(self.known.insert(question, None)),
        }
    }

    /// Takes in what was found. True where something was, and the next may be asked for.
    pub fn take(&mut self) -> bool {
        let Some((question, wait)) = &self.running else { return false };
        let (question, found) = match wait.try_recv() {
            Ok(answer) => answer,
            Err(TryRecvError::Empty) => return false,
            // The thread broke off.
            Err(TryRecvError::Disconnected) => (question.clone(), None),
        };
        self.running = None;
        self.known.insert(question, found);
        true
    }
}
