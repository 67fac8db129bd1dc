//! A batch is planned beside the window: how far the search is, the best plan once it ends or is stopped, and whether it still answers what is
//! asked now.

use std::time::Duration;

use super::computed::Computed;
use super::search::{Came, Search};
use crate::calc::batch::{Ask, Asked, Options, Outcome, Settled, Template, ask, settle};
use crate::calc::plan::STEPS;
use crate::calc::{Runs, Setting};

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
    asked: Option<Ask>,
    search: Search<Settled>,
    found: Option<Found>,
}

impl Planner {
    /// Who is to be woken when a plan was found.
    pub fn on_found(&mut self, wake: impl Fn() + Send + Sync + 'static) {
        self.search.on_found(wake);
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
        self.search.progress()
    }

    /// Begins to search for a plan of what is asked for now, in place of a search that goes on.
    pub fn begin(&mut self) {
        let Some((_, ask)) = self.now.take() else { return };
        let question = ask.question();
        self.search.begin("plan", move |go_on| settle(&question, STEPS, go_on));
        self.asked = Some(ask);
    }

    /// Ends the search with the best plan it has.
    pub fn stop(&self) {
        self.search.stop();
    }

    /// Forgets the last plan.
    pub fn forget(&mut self) {
        self.found = None;
    }

    /// Takes in a plan that was found. True where one was.
    pub fn take(&mut self, computed: &Computed) -> bool {
        let plan = match self.search.take() {
            Came::Nothing => return false,
            Came::Found(plan) => Some(plan),
            Came::Broke => None,
        };
        if let Some((plan, mut asked)) = plan.zip(self.asked.take()) {
            let shelf = &computed.shelves.job;
            let outcome = asked.read(&plan, shelf);
            self.found = Some(Found { asked: asked.asked(), outcome, template: asked.template(&computed.sound, shelf) });
        }
        true
    }
}
