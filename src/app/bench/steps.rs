//! The steps of a batch at the bench, in the order they are done: every flask is invested, every load goes into the kiln, every melt is
//! charged, and its flasks are poured and quenched by turn.

use crate::app::cx::Cx;
use crate::calc::{FlaskFigures, MeltFigures};
use crate::job::{BenchStep, Place};

/// One step.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Step {
    /// What is done.
    pub what: BenchStep,
    /// The how manieth flask, load or melt of the report it is done with, from 0.
    pub of: usize,
    /// The mix and how many there are, where one bowl does not hold it all.
    pub mix: Option<(u32, u32)>,
    /// Its number among the steps that belong together, from 1, and how many they are.
    pub number: (usize, usize),
}

impl Step {
    /// The flask, the kiln load or the melt it is done with; the first flask of a melt that is a flask's own.
    pub fn place(&self, cx: &Cx<'_>) -> Option<Place> {
        let report = &cx.computed.report;
        match self.what {
            BenchStep::Steam | BenchStep::Kiln => report.burnouts.get(self.of).map(|load| Place::Burnout(load.id)),
            BenchStep::Charge => {
                let melt = report.melts.get(self.of)?;
                melt.id.map(Place::Melt).or_else(|| melt.flasks.first().map(|flask| Place::Flask(*flask)))
            }
            _ => report.flasks.get(self.of).map(|flask| Place::Flask(flask.id)),
        }
    }

    /// Its name among the running clocks, the same from one day to the next.
    pub fn name(&self, cx: &Cx<'_>) -> String {
        let place = self.place(cx).map_or_else(String::new, |place| place.to_string());
        let mix = self.mix.map_or_else(String::new, |(number, _)| number.to_string());
        format!("{:?} {place} {mix}", self.what)
    }
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
        let whats = if load.dewax_start.is_some() {
            vec![(BenchStep::Steam, None), (BenchStep::Kiln, None)]
        } else {
            vec![(BenchStep::Kiln, None)]
        };
        group(&mut steps, of, &whats);
    }
    let mut melts: Vec<(usize, &MeltFigures)> = report.melts.iter().enumerate().filter(|(_, melt)| !melt.flasks.is_empty()).collect();
    melts.sort_by_key(|(_, melt)| by_turn(cx, melt).first().map(|(turn, _)| *turn));
    for (of, melt) in melts {
        group(&mut steps, of, &[(BenchStep::Charge, None)]);
        for (_, flask) in by_turn(cx, melt) {
            group(&mut steps, flask, &[(BenchStep::Pour, None), (BenchStep::Quench, None)]);
        }
    }
    steps
}

fn group(steps: &mut Vec<Step>, of: usize, whats: &[(BenchStep, Option<(u32, u32)>)]) {
    steps.extend((1..).zip(whats).map(|(number, (what, mix))| Step { what: *what, of, mix: *mix, number: (number, whats.len()) }));
}

/// Investing one flask, mix by mix.
fn investing(cx: &Cx<'_>, flask: &FlaskFigures) -> Vec<(BenchStep, Option<(u32, u32)>)> {
    let mixes = cx.computed.book.number(flask.mix.mixes).unwrap_or(1.0);
    let all = (1..=MOST_MIXES).take_while(|number| f64::from(*number) <= mixes).last().unwrap_or(1);
    let mut whats = Vec::new();
    for number in 1..=all {
        let mix = Some((number, all)).filter(|_| all > 1);
        whats.extend([BenchStep::Weigh, BenchStep::Mix, BenchStep::Bowl, BenchStep::Fill].map(|what| (what, mix)));
    }
    whats.extend([(BenchStep::Vacuum, None), (BenchStep::Rest, None)]);
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
