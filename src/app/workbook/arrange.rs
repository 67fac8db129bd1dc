//! Trees of the open batch are arranged.

use super::Workbook;
use crate::calc::arrange::{Lacks, Task, task_of, write_down};
use crate::job::{Tree, TreeId};
use crate::texts::Texts;

impl Workbook {
    /// What is asked for where a tree is to be arranged.
    ///
    /// # Errors
    /// What must be said first.
    pub fn arranging(&self, tree: &Tree, hold: bool) -> Result<Task, Lacks> {
        let computed = &self.computed;
        task_of(&computed.sound, tree, &computed.report, &computed.book, &computed.shelves, hold)
    }

    /// Begins to arrange the pieces of a tree.
    pub fn arrange(&mut self, id: TreeId) {
        let Some(tree) = self.job.trees.iter().find(|tree| tree.id == id).cloned() else { return };
        let Ok(task) = self.arranging(&tree, self.view.hold_placed) else { return };
        let figures = self.computed.report.trees.iter().find(|figures| figures.id == id);
        let spots = figures.map(|figures| figures.outline.spots.clone()).unwrap_or_default();
        self.arranger.begin(tree, spots, task);
    }

    /// Writes an arrangement down that was found, in one step; a tree that is another one by now stays as it is. True where one was found.
    pub fn take_arrangement(&mut self) -> bool {
        let Some(found) = self.arranger.take() else { return false };
        let same = self.job.trees.contains(&found.tree);
        if same {
            self.edit(Texts::english().label("edit-trees-arrange"), move |job| {
                for tree in job.trees.iter_mut().filter(|tree| tree.id == found.tree.id) {
                    write_down(tree, &found.task.trunk, &found.spots, &found.arrangement.hangs);
                }
            });
        }
        true
    }
}
