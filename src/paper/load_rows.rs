//! The kiln loads step by step, from mixing to the pour: what tables of programmes are made of.

use super::desk::Desk;
use crate::calc::{BurnoutFigures, Id};
use crate::job::Burnout;

/// What is done.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Step {
    /// One flask is mixed for and invested; both times are the latest ones.
    Mixing,
    /// The steam, before the kiln.
    Dewaxing,
    /// The stage of this number, from 1.
    Stage(u32),
    /// The first flask is poured.
    Pour,
}

/// One step of a load.
#[derive(Debug, Clone)]
pub(super) struct LoadRow<'a> {
    pub load: &'a Burnout,
    pub step: Step,
    /// The flasks it is done with, by what is scratched into them.
    pub flasks: String,
    pub target: Option<Id>,
    pub ramp: Option<Id>,
    pub hold: Option<Id>,
    pub begins: Option<Id>,
    pub ends: Option<Id>,
}

/// The steps of every load, load by load: a mixing for each of its flasks, the steam where there is any, the stages, the pour.
pub(super) fn load_rows<'a>(desk: &Desk<'a>) -> Vec<LoadRow<'a>> {
    let input = &desk.input;
    let mut rows = Vec::new();
    for load in &input.job.burnouts {
        let Some(figures) = input.report.burnouts.iter().find(|figures| figures.id == load.id) else { continue };
        let flasks: Vec<_> = input.report.flasks.iter().filter(|flask| flask.burnout == Some(load.id)).collect();
        let row = |step, flasks: String, begins, ends| LoadRow { load, step, flasks, target: None, ramp: None, hold: None, begins, ends };
        rows.extend(flasks.iter().map(|flask| row(Step::Mixing, desk.scratch(flask.id), flask.mix_by, flask.invested_by)));
        let all = flasks.iter().map(|flask| desk.scratch(flask.id)).collect::<Vec<_>>().join(", ");
        rows.extend(figures.dewax_start.map(|start| row(Step::Dewaxing, all.clone(), Some(start), Some(figures.kiln_start))));
        rows.extend(stages(figures).map(|(step, [target, ramp, hold, begins, ends])| LoadRow {
            target: Some(target),
            ramp: Some(ramp),
            hold: Some(hold),
            ..row(step, all.clone(), Some(begins), Some(ends))
        }));
        rows.push(row(Step::Pour, all, Some(figures.pour), None));
    }
    rows
}

/// Target, ramp, hold, beginning and end of every stage.
fn stages(figures: &BurnoutFigures) -> impl Iterator<Item = (Step, [Id; 5])> + '_ {
    (1..).zip(&figures.stages).map(|(number, stage)| (Step::Stage(number), [stage.target, stage.ramp, stage.hold, stage.start, stage.end]))
}
