//! The shortest night of a load is sought beside the window.

use std::time::Duration;

use super::search::{Came, Search};
use crate::calc::heat::HeatError;
use crate::calc::labour::Labour;
use crate::calc::night::{Night, NightFound, answer};
use crate::cores::AllCores;

/// Seeks on a thread, one load at a time.
#[derive(Default)]
pub struct Nights {
    search: Search<Result<NightFound, HeatError>>,
    asked: Option<Night>,
    found: Option<(Night, Result<NightFound, HeatError>)>,
}

impl Nights {
    /// Who is to be woken when one was found.
    pub fn on_found(&mut self, wake: impl Fn() + Send + Sync + 'static) {
        self.search.on_found(wake);
    }

    /// Begins to seek, in place of a search that goes on.
    pub fn begin(&mut self, night: Night) {
        self.asked = Some(night.clone());
        self.search.begin("night", move |go_on| answer(night, &Labour { cores: &AllCores, go_on }));
    }

    /// Ends the search.
    pub fn stop(&self) {
        self.search.stop();
    }

    /// How far the search is, from 0 to 1, and how long it has gone on.
    #[must_use]
    pub fn progress(&self) -> Option<(f64, Duration)> {
        self.search.progress()
    }

    /// What was found last, and what was asked then.
    #[must_use]
    pub fn found(&self) -> Option<&(Night, Result<NightFound, HeatError>)> {
        self.found.as_ref()
    }

    /// Takes in what was found. True where anything was.
    pub fn take(&mut self) -> bool {
        match self.search.take() {
            Came::Nothing => return false,
            Came::Found(found) => self.found = self.asked.take().map(|asked| (asked, found)),
            Came::Broke => self.asked = None,
        }
        true
    }
}
