//! The steps of a batch at the bench, in the order they are done: every flask is invested, every load goes into the kiln, every melt is
//! charged, and its flasks are poured and quenched by turn.

use crate::app::cx::Cx;
use crate::calc::{FlaskFigures, MeltFigures};

/// What is done in a step.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum What {
    /// Powder and water are weighed.
    Weigh,
    /// They are mixed.
    Mix,
    /// The bowl stands under vacuum.
    Bowl,
    /// The slurry is poured.
    Fill,
    /// The flask stands under vacuum.
    Vacuum,
    /// The flask stands still.
    Rest,
    /// The steam is started.
    Steam,
    /// The kiln is started.
    Kiln,
    /// The crucible is charged.
    Charge,
    /// The metal is poured.
    Pour,
    /// The flask is quenched, or left to cool.
    Quench,
}

/// One step.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Step {
    /// What is done.
    pub what: What,
    /// The how manieth flask, load or melt of the report it is done with, from 0.
    pub of: usize,
    /// The mix and how many there are, where one bowl does not hold it all.
    pub mix: Option<(u32, u32)>,
    /// Its number among the steps that belong together, from 1, and how many they are.
    pub number: (usize, usize),
}

/// More mixes than a bench takes for one flask are not gone through one by one.
const MOST_MIXES: u32 = 8;

/// All steps of the batch.
pub fn all(cx: &Cx<'_>) -> Vec<Step> {
    let report = &cx.computed.report;
    let mut steps = Vec::new();
    for (of, flask) in report.flasks.iter().enumerate() {
        group(&mut steps, of, &investing(cx, flask));
    }
    for (of, load) in report.burnouts.iter().enumerate() {
        let whats = if load.dewax_start.is_some() { vec![(What::Steam, None), (What::Kiln, None)] } else { vec![(What::Kiln, None)] };
        group(&mut steps, of, &whats);
    }
    let mut melts: Vec<(usize, &MeltFigures)> = report.melts.iter().enumerate().filter(|(_, melt)| !melt.flasks.is_empty()).collect();
    melts.sort_by_key(|(_, melt)| by_turn(cx, melt).first().map(|(turn, _)| *turn));
    for (of, melt) in melts {
        group(&mut steps, of, &[(What::Charge, None)]);
        for (_, flask) in by_turn(cx, melt) {
            group(&mut steps, flask, &[(What::Pour, None), (What::Quench, None)]);
        }
    }
    steps
}

fn group(steps: &mut Vec<Step>, of: usize, whats: &[(What, Option<(u32, u32)>)]) {
    steps.extend((1..).zip(whats).map(|(number, (what, mix))| Step { what: *what, of, mix: *mix, number: (number, whats.len()) }));
}

/// Investing one flask, mix by mix.
fn investing(cx: &Cx<'_>, flask: &FlaskFigures) -> Vec<(What, Option<(u32, u32)>)> {
    let mixes = cx.computed.book.number(flask.mix.mixes).unwrap_or(1.0);
    let all = (1..=MOST_MIXES).take_while(|number| f64::from(*number) <= mixes).last().unwrap_or(1);
    let mut whats = Vec::new();
    for number in 1..=all {
        let mix = Some((number, all)).filter(|_| all > 1);
        whats.extend([What::Weigh, What::Mix, What::Bowl, What::Fill].map(|what| (what, mix)));
    }
    whats.extend([(What::Vacuum, None), (What::Rest, None)]);
    whats
}

/// The flasks of a melt, as places in the report, in the order they are poured.
fn by_turn(cx: &Cx<'_>, melt: &MeltFigures) -> Vec<(u32, usize)> {
    let turn = |id| cx.job.flasks.iter().find(|flask| flask.id == id).and_then(|flask| flask.turn).unwrap_or(u32::MAX);
    let place = |id| cx.computed.report.flasks.iter().position(|flask| flask.id == id);
    let mut flasks: Vec<(u32, usize)> = melt.flasks.iter().filter_map(|id| Some((turn(*id), place(*id)?))).collect();
    flasks.sort_unstable();
    flasks
}
