//! A plan into the job: a tree and a flask for every new row, more pieces for a flask that stands.

use std::collections::{BTreeMap, BTreeSet};

use super::places::UsualTree;
use super::{Ask, Row, Stands};
use crate::calc::arrange::placed;
use crate::job::{BurnoutId, Drive, Flask, FlaskId, Hung, Job, LineId, MainSprue, PieceId, Placed, SprueRun, Tree, TreeId};
use crate::quantity::Finite;
use crate::stock::{Alloy, EntryId, PatternMaterial, Powder, Shelf};

/// What is copied for new trees and flasks, and where they go.
#[derive(Debug, Clone, PartialEq)]
pub struct Template {
    /// What trees are reckoned with.
    tree: UsualTree,
    /// What main sprue and feeds are made of.
    sprue: Option<EntryId>,
    /// The kiln load.
    load: Option<BurnoutId>,
    /// How the metal is driven.
    drive: Drive,
    /// The powder of each alloy, and its name.
    alloys: BTreeMap<EntryId, (Option<EntryId>, String)>,
}

impl Ask {
    /// What a plan of this wish is built with.
    #[must_use]
    pub fn template(&self, job: &Job, shelf: &Shelf) -> Template {
        let own = job.trees.iter().rev().find_map(|tree| tree.main_sprue.as_ref()?.material.clone());
        let sprue = own.or_else(|| shelf.get::<PatternMaterial>("wax-sprue").map(|material| material.id.clone()));
        let powders = job.flasks.iter().rev().filter_map(|flask| flask.powder.as_ref()).filter_map(|id| shelf.get::<Powder>(id.as_str()));
        let powders: Vec<&Powder> = powders.chain(shelf.get::<Powder>("powder-gypsum")).chain(shelf.all::<Powder>()).collect();
        let powder = |id: &EntryId| {
            let alloy = shelf.get::<Alloy>(id.as_str())?;
            powders.iter().find(|powder| alloy.refused_by(powder).is_none()).map(|powder| powder.id.clone())
        };
        let alloys = self.alloys.iter().map(|alloy| (alloy.id.clone(), (powder(&alloy.id), alloy.name.clone()))).collect();
        let drive = job.flasks.last().map(|flask| flask.drive).unwrap_or_default();
        Template { tree: self.tree, sprue, load: self.load, drive, alloys }
    }
}

/// Builds the rows of a plan: new trees with their flasks, and pieces for flasks that take more.
pub fn build(job: &mut Job, rows: &[Row], template: &Template) {
    for row in rows.iter().filter(|row| !row.pieces.is_empty()) {
        match row.flask {
            Some(flask) => add_to(job, flask, row),
            None => new_flask(job, row, template),
        }
    }
}

/// A row of a tree for every line, with the numbers of its pieces.
fn hung(pieces: &[PieceId]) -> Vec<Hung> {
    let mut lines: BTreeMap<LineId, BTreeSet<u32>> = BTreeMap::new();
    for piece in pieces {
        lines.entry(piece.line).or_default().insert(piece.number);
    }
    lines.into_iter().map(|(line, numbers)| Hung { line, numbers, ..Hung::default() }).collect()
}

fn count(pieces: &[PieceId]) -> u32 {
    u32::try_from(pieces.len()).unwrap_or(u32::MAX)
}

fn add_to(job: &mut Job, flask: FlaskId, row: &Row) {
    let Some(flask) = job.flasks.iter_mut().find(|one| one.id == flask) else { return };
    if row.mixed {
        flask.mould_c = middle(row);
    }
    let id = flask.tree;
    let Some(tree) = job.trees.iter_mut().find(|tree| Some(tree.id) == id) else { return };
    tree.pieces.extend(hung(&row.pieces));
    // A feed for each of them, like those that stand there.
    if let Some(run) = tree.sprues.first_mut() {
        run.count = run.count.saturating_add(count(&row.pieces));
    }
}

fn new_flask(job: &mut Job, row: &Row, template: &Template) {
    let next = |ids: &mut dyn Iterator<Item = u32>| ids.max().unwrap_or(0).saturating_add(1);
    let tree = TreeId(next(&mut job.trees.iter().map(|tree| tree.id.0)));
    let id = FlaskId(next(&mut job.flasks.iter().map(|flask| flask.id.0)));
    let scratch = scratch_for(job);
    let (powder, alloy) = template.alloys.get(&row.alloy).cloned().unwrap_or_default();
    let usual = &template.tree;
    let (runs, placed) = feeds(row, usual);
    let run = |angle_deg: f64, count: u32| SprueRun {
        material: template.sprue.clone(),
        count,
        diameter_mm: Finite::new(usual.feed_diameter_mm),
        length_mm: Finite::new(usual.feed_mm),
        angle_deg: Finite::new(angle_deg),
    };
    job.trees.push(Tree {
        id: tree,
        name: format!("{alloy}, {scratch}"),
        base: row.base.clone(),
        pieces: hung(&row.pieces),
        main_sprue: Some(MainSprue {
            material: template.sprue.clone(),
            diameter_mm: Finite::new(usual.main_mm),
            length_mm: Finite::new(row.main_mm.floor().max(1.0)),
        }),
        sprues: runs.iter().map(|(angle_deg, many)| run(*angle_deg, *many)).collect(),
        placed,
        ..Tree::default()
    });
    job.flasks.push(Flask {
        id,
        scratch,
        vessel: Some(row.vessel.clone()),
        tree: Some(tree),
        alloy: Some(row.alloy.clone()),
        powder,
        burnout: template.load,
        drive: template.drive,
        mould_c: if row.mixed { middle(row) } else { None },
        ..Flask::default()
    });
}

/// The feeds of a new tree, as many of each angle as there are, and the places of its pieces where they were found.
fn feeds(row: &Row, usual: &UsualTree) -> (Vec<(f64, u32)>, Vec<Placed>) {
    let Stands::All(tree) = &row.stands else { return (vec![(usual.angle_deg, count(&row.pieces))], Vec::new()) };
    let mut runs: Vec<(f64, u32)> = Vec::new();
    let mut places = Vec::new();
    for (piece, hang) in &tree.hangs {
        let known = runs.iter().position(|(angle, _)| angle.to_bits() == hang.angle_deg.to_bits());
        let at = known.unwrap_or_else(|| {
            runs.push((hang.angle_deg, 0));
            runs.len() - 1
        });
        runs[at].1 += 1;
        places.push(placed(*piece, &tree.trunk, hang, u32::try_from(at + 1).ok()));
    }
    (runs, places)
}

/// A temperature of the mould that all pieces of a row bear.
fn middle(row: &Row) -> Option<Finite> {
    Finite::new(f64::midpoint(f64::from(*row.mould_c.start()), f64::from(*row.mould_c.end())).round())
}

/// The next number that no face carries yet.
fn scratch_for(job: &Job) -> String {
    let most = job.flasks.iter().filter_map(|flask| flask.scratch.trim().parse::<u32>().ok()).max().unwrap_or(0);
    most.saturating_add(1).to_string()
}
