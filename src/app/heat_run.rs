//! The heat of moulds is computed beside the window. What is asked last goes first: a point that is dragged asks many times a second.

use std::collections::BTreeMap;
use std::sync::Arc;

use super::search::{Came, Search};
use crate::calc::labour::Labour;
use crate::calc::mould_heat::{HeatAnswer, HeatAsk, answers, unknown};
use crate::calc::{HeatFigures, Report, Runs};
use crate::cores::AllCores;

/// Answers that are kept beside those in use, so that a step taken back finds them at once.
const MOST_KEPT: usize = 400;

/// Computes the heat of moulds on threads, one load after the other.
#[derive(Default)]
pub struct Heater {
    search: Search<Vec<(u128, Arc<HeatAnswer>)>>,
    asked: Vec<u128>,
}

impl Heater {
    /// Who is to be woken when moulds were computed.
    pub fn on_found(&mut self, wake: impl Fn() + Send + Sync + 'static) {
        self.search.on_found(wake);
    }

    /// Begins to compute what is asked for and not known, unless just that is being computed.
    pub fn look(&mut self, report: &Report, runs: &mut Runs) {
        let asks: BTreeMap<u128, HeatAsk> = unknown(report, runs).into_iter().map(|(key, ask)| (key, ask.clone())).collect();
        let keys: Vec<u128> = asks.keys().copied().collect();
        if asks.is_empty() || (keys == self.asked && self.is_running()) {
            return;
        }
        prune(report, runs);
        self.asked = keys;
        self.search.begin("heat", move |go_on| {
            let questions: Vec<&HeatAsk> = asks.values().collect();
            let found = answers(&questions, &Labour { cores: &AllCores, go_on }).unwrap_or_default();
            asks.keys().copied().zip(found.into_iter().map(Arc::new)).collect()
        });
    }

    /// Is anything being computed?
    #[must_use]
    pub fn is_running(&self) -> bool {
        self.search.progress().is_some()
    }

    /// Takes in what was computed. True where anything was.
    pub fn take(&mut self, runs: &mut Runs) -> bool {
        match self.search.take() {
            Came::Found(found) => {
                let any = !found.is_empty();
                runs.heat.extend(found);
                any
            }
            Came::Nothing | Came::Broke => false,
        }
    }
}

/// Lets go of answers that nobody asks for any more, once there are many.
fn prune(report: &Report, runs: &mut Runs) {
    if runs.heat.len() > MOST_KEPT {
        let used: Vec<u128> = report.heat.iter().flat_map(HeatFigures::keys).collect();
        runs.heat.retain(|key, _| used.contains(key));
    }
}
