//! The pieces of a tree are arranged beside the window, and what came of it.

use std::time::Duration;

use super::search::{Came, Search};
use crate::calc::arrange::{Arrangement, CannotArrange, STEPS, Task, arrange};
use crate::calc::places::Spot;
use crate::job::{Tree, TreeId};

/// What came of arranging a tree.
#[derive(Debug)]
pub struct Outcome {
    /// The tree.
    pub tree: TreeId,
    /// Its pieces hang, so many; or why they do not.
    pub came: Result<usize, CannotArrange>,
    /// It was stopped: the best until then.
    pub stopped: bool,
}

/// A tree that is being arranged.
struct Asked {
    tree: Tree,
    spots: Vec<Spot>,
    task: Task,
}

/// Arranges one tree at a time.
#[derive(Default)]
pub struct Arranger {
    search: Search<Result<Arrangement, CannotArrange>>,
    asked: Option<Asked>,
    outcome: Option<Outcome>,
}

/// An arrangement to be written into the job.
pub struct Arranged {
    /// The tree as it was asked for.
    pub tree: Tree,
    /// Its pieces.
    pub spots: Vec<Spot>,
    /// The task.
    pub task: Task,
    /// Where they hang now.
    pub arrangement: Arrangement,
}

impl Arranger {
    /// Who is to be woken when it ends.
    pub fn on_found(&mut self, wake: impl Fn() + Send + Sync + 'static) {
        self.search.on_found(wake);
    }

    /// Begins to arrange a tree.
    pub fn begin(&mut self, tree: Tree, spots: Vec<Spot>, task: Task) {
        let ours = task.clone();
        self.search.begin("arrange", move |go_on| arrange(&ours, STEPS, go_on));
        (self.asked, self.outcome) = (Some(Asked { tree, spots, task }), None);
    }

    /// How far it is, and for how long it has gone on, where this tree is being arranged.
    #[must_use]
    pub fn progress(&self, tree: TreeId) -> Option<(f64, Duration)> {
        self.search.progress().filter(|_| self.asked.as_ref().is_some_and(|asked| asked.tree.id == tree))
    }

    /// Ends with the best it has.
    pub fn stop(&self) {
        self.search.stop();
    }

    /// What came of it the last time, where that was this tree.
    #[must_use]
    pub fn outcome(&self, tree: TreeId) -> Option<&Outcome> {
        self.outcome.as_ref().filter(|outcome| outcome.tree == tree)
    }

    /// Takes in what was found; an arrangement is given to be written down.
    pub fn take(&mut self) -> Option<Arranged> {
        match self.search.take() {
            Came::Nothing => return None,
            Came::Broke => self.asked = None,
            Came::Found(found) => {
                let Asked { tree, spots, task } = self.asked.take()?;
                let stopped = match &found {
                    Ok(arrangement) => arrangement.stopped,
                    Err(CannotArrange::RoomFor { stopped, .. }) => *stopped,
                    Err(_) => false,
                };
                let came = found.as_ref().map(|arrangement| arrangement.hangs.len()).map_err(CannotArrange::clone);
                self.outcome = Some(Outcome { tree: tree.id, came, stopped });
                return found.ok().map(|arrangement| Arranged { tree, spots, task, arrangement });
            }
        }
        None
    }
}
