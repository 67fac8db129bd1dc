//! Undo and redo, by name.

use std::sync::Arc;

use crate::job::{Job, Studio};

/// Both documents at one moment. They are shared, so a step costs two pointers and what changed.
#[derive(Debug, Clone, PartialEq)]
pub struct Moment {
    /// The job.
    pub job: Arc<Job>,
    /// The studio.
    pub studio: Arc<Studio>,
}

/// A change and what stood before it.
#[derive(Debug, Clone)]
struct Step {
    name: String,
    before: Moment,
}

/// What was done and can be taken back, and what was taken back and can be done again.
#[derive(Debug, Clone, Default)]
pub struct History {
    done: Vec<Step>,
    undone: Vec<Step>,
}

/// Steps that are kept; the oldest go first.
const MOST: usize = 500;

impl History {
    /// Notes a change; what was taken back before is gone.
    pub fn did(&mut self, name: String, before: Moment) {
        self.undone.clear();
        if self.done.len() == MOST {
            self.done.remove(0);
        }
        self.done.push(Step { name, before });
    }

    /// Makes the last two steps one where they have one name.
    pub fn join(&mut self) {
        if let [.., before, last] = self.done.as_slice()
            && before.name == last.name
        {
            self.done.pop();
        }
    }

    /// What undo would take back.
    #[must_use]
    pub fn undo_name(&self) -> Option<&str> {
        self.done.last().map(|step| step.name.as_str())
    }

    /// What redo would do again.
    #[must_use]
    pub fn redo_name(&self) -> Option<&str> {
        self.undone.last().map(|step| step.name.as_str())
    }

    /// The moment before the last change.
    pub fn undo(&mut self, now: Moment) -> Option<Moment> {
        let step = self.done.pop()?;
        self.undone.push(Step { name: step.name, before: now });
        Some(step.before)
    }

    /// The moment after the change that was last taken back.
    pub fn redo(&mut self, now: Moment) -> Option<Moment> {
        let step = self.undone.pop()?;
        self.done.push(Step { name: step.name, before: now });
        Some(step.before)
    }
}
