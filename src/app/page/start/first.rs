//! The one flask of a quick batch, with its tree and its kiln load: made with the first of the six entries.

use crate::job::{Burnout, BurnoutId, Flask, FlaskId, Job, Programme, Tree, TreeId, WeighedPart};
use crate::stock::{EntryId, Powder, StageTable};

fn id_of<T: crate::stock::Shelved>(wanted: &str) -> Option<EntryId> {
    let id = EntryId::new(wanted)?;
    crate::stock::Shelf::shipped().get::<T>(id.as_str()).map(|_| id)
}

/// The one flask of a quick batch, with what it needs around it.
pub fn first_flask(job: &mut Job) -> &mut Flask {
    first_tree(job);
    first_load(job);
    let (tree, load) = (job.trees[0].id, job.burnouts[0].id);
    if job.flasks.is_empty() {
        let powder = id_of::<Powder>("powder-gypsum");
        job.flasks.push(Flask {
            id: FlaskId(1),
            scratch: "1".to_owned(),
            powder,
            tree: Some(tree),
            burnout: Some(load),
            ..Flask::default()
        });
    }
    &mut job.flasks[0]
}

/// The tree of that flask.
pub fn first_tree(job: &mut Job) -> &mut Tree {
    if job.trees.is_empty() {
        job.trees.push(Tree { id: TreeId(1), ..Tree::default() });
    }
    &mut job.trees[0]
}

/// What of that tree was weighed first.
pub fn first_part(job: &mut Job) -> &mut WeighedPart {
    first_flask(job);
    let tree = first_tree(job);
    if tree.weighed.is_empty() {
        tree.weighed.push(WeighedPart::default());
    }
    &mut tree.weighed[0]
}

/// The kiln load of that flask.
pub fn first_load(job: &mut Job) -> &mut Burnout {
    if job.burnouts.is_empty() {
        let kiln = id_of::<crate::stock::Kiln>("kiln-studio");
        let programme = id_of::<StageTable>("stages-wax").map(Programme::Table);
        job.burnouts.push(Burnout { id: BurnoutId(1), kiln, programme, ..Burnout::default() });
    }
    &mut job.burnouts[0]
}
