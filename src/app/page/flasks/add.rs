//! A new flask, with what it needs around it: a tree that stands in no flask, a kiln load, a powder.

use crate::app::cx::Cx;
use crate::job::{Burnout, BurnoutId, Flask, FlaskId, Job, Programme, Tree, TreeId};
use crate::stock::{EntryId, Kiln, Powder, Shelf, Shelved, StageTable};

fn next(job: &Job) -> FlaskId {
    FlaskId(job.flasks.iter().map(|flask| flask.id.0).max().unwrap_or(0).saturating_add(1))
}

/// Wants a flask more.
pub fn add(cx: &mut Cx<'_>) {
    let id = next(cx.job);
    cx.look(move |view| view.flask = Some(id));
    cx.edit("edit-flasks-add", new_flask);
}

fn shipped<T: Shelved>(wanted: &str) -> Option<EntryId> {
    let id = EntryId::new(wanted)?;
    Shelf::shipped().get::<T>(id.as_str()).map(|_| id)
}

fn new_flask(job: &mut Job) {
    let tree = tree_for(job);
    let burnout = load_for(job);
    let like = job.flasks.last();
    let flask = Flask {
        id: next(job),
        scratch: scratch_for(job),
        vessel: like.and_then(|flask| flask.vessel.clone()),
        powder: like.map_or_else(|| shipped::<Powder>("powder-gypsum"), |flask| flask.powder.clone()),
        tree: Some(tree),
        burnout: Some(burnout),
        ..Flask::default()
    };
    job.flasks.push(flask);
}

/// A tree that stands in no flask, or a new one.
fn tree_for(job: &mut Job) -> TreeId {
    let free = job.trees.iter().find(|tree| job.flasks.iter().all(|flask| flask.tree != Some(tree.id)));
    if let Some(tree) = free {
        return tree.id;
    }
    let id = TreeId(job.trees.iter().map(|tree| tree.id.0).max().unwrap_or(0).saturating_add(1));
    job.trees.push(Tree { id, ..Tree::default() });
    id
}

/// The load of the last flask, or the first there is, or a new one.
fn load_for(job: &mut Job) -> BurnoutId {
    let like = job.flasks.last().and_then(|flask| flask.burnout);
    if let Some(load) = like.or_else(|| job.burnouts.first().map(|load| load.id)) {
        return load;
    }
    let kiln = shipped::<Kiln>("kiln-studio");
    let programme = shipped::<StageTable>("stages-wax").map(Programme::Table);
    job.burnouts.push(Burnout { id: BurnoutId(1), kiln, programme, ..Burnout::default() });
    BurnoutId(1)
}

/// The next number that no face carries yet.
fn scratch_for(job: &Job) -> String {
    let most = job.flasks.iter().filter_map(|flask| flask.scratch.trim().parse::<u32>().ok()).max().unwrap_or(0);
    most.saturating_add(1).to_string()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_new_flask_has_what_it_needs() {
        let mut job = Job::default();
        new_flask(&mut job);
        new_flask(&mut job);
        assert_eq!((job.flasks.len(), job.trees.len(), job.burnouts.len()), (2, 2, 1));
        assert_ne!(job.flasks[0].tree, job.flasks[1].tree);
        assert_eq!(job.flasks[1].scratch, "2");
        assert!(job.flasks.iter().all(|flask| flask.powder.is_some() && flask.burnout.is_some()));
    }
}
