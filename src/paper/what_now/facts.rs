//! What the batch knows of a trouble: the load in a kiln that went off, the ceilings of its powders, the range of a metal that stands liquid.

use super::Trouble;
use crate::job::{Burnout, BurnoutId, Drive};
use crate::paper::block::Field;
use crate::paper::cut::CutWords;
use crate::paper::desk::Desk;
use crate::paper::words::one_line;
use crate::quantity::{Kind, print};
use crate::stock::Powder;

/// So many stand on a card; it stays one page.
const MOST: usize = 4;
/// So many flasks are named.
const NAMED: usize = 8;

/// The facts of a card, at most a few.
pub(super) fn facts(desk: &Desk<'_>, trouble: Trouble) -> Vec<Field> {
    let mut all = match trouble {
        Trouble::KilnOff => loads(desk),
        Trouble::KilnOver => ceilings(desk),
        Trouble::PumpDead => metals(desk),
        _ => Vec::new(),
    };
    let more = all.len().saturating_sub(MOST);
    if more > 0 {
        all.truncate(MOST);
        all.push(Field { label: String::new(), value: desk.say("card-more-facts", &[("count", more.into())]) });
    }
    all
}

/// Every load by its kiln, with its flasks, and what a power cut did to it.
fn loads(desk: &Desk<'_>) -> Vec<Field> {
    let of = |load: &Burnout| {
        let name = desk.text(&load.name);
        let flasks: Vec<String> =
            desk.input.report.flasks.iter().filter(|flask| flask.burnout == Some(load.id)).map(|flask| desk.scratch(flask.id)).collect();
        let value = if flasks.is_empty() {
            desk.say("card-load-empty", &[("load", name.into())])
        } else {
            desk.say("card-load", &[("load", name.into()), ("flasks", listed(desk, &flasks).into())])
        };
        let first = Field { label: desk.entry(load.kiln.as_ref()), value };
        let lines = kiln_off_lines(desk, load.id).into_iter().map(|value| Field { label: String::new(), value });
        std::iter::once(first).chain(lines).collect::<Vec<_>>()
    };
    desk.input.job.burnouts.iter().flat_map(of).collect()
}

/// What the kiln's log makes of each mould of a load, a sentence each; none where no log was read.
fn kiln_off_lines(desk: &Desk<'_>, load: BurnoutId) -> Vec<String> {
    let words = CutWords { job: desk.input.job, words: desk.words };
    let moulds = desk.input.report.heat.iter().filter(|one| one.load == load);
    let moulds: Vec<_> = moulds.filter_map(|one| Some((one.flask, one.log.as_ref()?.by.as_ref()?))).collect();
    words.moulds(&moulds)
}

fn listed(desk: &Desk<'_>, names: &[String]) -> String {
    let list = names.iter().take(NAMED).cloned().collect::<Vec<_>>().join(", ");
    match names.len().saturating_sub(NAMED) {
        0 => list,
        more => desk.say("card-more", &[("list", list.into()), ("count", more.into())]),
    }
}

/// What every powder of the batch's flasks bears, with stones less.
fn ceilings(desk: &Desk<'_>) -> Vec<Field> {
    let mut all: Vec<Field> = Vec::new();
    let c = |c: f64| print(c, Kind::Temperature, desk.words.style).to_string();
    for flask in &desk.input.report.flasks {
        let Some(powder) = flask.powder.as_ref().and_then(|id| desk.input.shelves.job.get::<Powder>(id.as_str())) else { continue };
        let name = desk.entry(Some(&powder.id));
        let bears = match powder.stones_ceiling_c.as_ref().filter(|_| flask.stones) {
            Some(stones) => Field { label: desk.say("card-ceiling-stones", &[("powder", name.into())]), value: c(stones.value) },
            None => {
                let args = [("stop", c(powder.stop_ceiling_c.value).into()), ("planned", c(powder.planned_ceiling_c.value).into())];
                Field { label: desk.say("card-ceiling", &[("powder", name.into())]), value: desk.say("card-ceiling-value", &args) }
            }
        };
        if !all.contains(&bears) {
            all.push(bears);
        }
    }
    all
}

/// What every metal of the batch is poured at, and the flasks that need no pump.
fn metals(desk: &Desk<'_>) -> Vec<Field> {
    let mut all: Vec<Field> = Vec::new();
    for flask in desk.input.report.flasks.iter().filter(|flask| flask.alloy.is_some()) {
        let alloy = desk.entry(flask.alloy.as_ref());
        let value = flask.pour.metal_range.map_or_else(|| desk.figure(flask.pour.metal), |range| desk.range(range));
        let poured = Field { label: desk.say("card-metal", &[("alloy", alloy.into())]), value };
        if !all.contains(&poured) {
            all.push(poured);
        }
    }
    let by_weight = desk.input.job.flasks.iter().filter(|flask| flask.drive == Drive::Gravity);
    let names: Vec<String> = by_weight.map(|flask| one_line(&desk.scratch(flask.id))).collect();
    if !names.is_empty() {
        // Before the metals: it is what one looks for.
        all.insert(0, Field { label: desk.label("card-by-weight"), value: listed(desk, &names) });
    }
    all
}
