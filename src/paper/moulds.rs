//! What the moulds of a load feel, from low to high conductivity, and how long each may stand out.

use super::block::{Block, Side};
use super::desk::Desk;
use crate::calc::mould_heat::{Conductivity, Mould, Spread};
use crate::calc::{BurnoutFigures, HeatFigures, MouldHeat};
use crate::job::FlaskId;

/// A table of the load's moulds, as far as they are computed.
pub(super) fn moulds(desk: &Desk<'_>, figures: &BurnoutFigures) -> Vec<Block> {
    let known: Vec<(&HeatFigures, &MouldHeat)> =
        of_load(desk, figures).filter_map(|one| one.mould.as_ref().map(|mould| (one, mould))).collect();
    if known.is_empty() {
        return Vec::new();
    }
    let mut table = desk.table(&[
        ("column-scratched", Side::Left),
        ("column-dry", Side::Left),
        ("column-hot", Side::Right),
        ("column-core", Side::Right),
        ("column-cavity", Side::Right),
        ("column-out", Side::Right),
    ]);
    for (one, mould) in &known {
        table.row([
            desk.scratch(one.flask),
            if desk.known(mould.dry[1]) { desk.clock(mould.dry[1], true) } else { desk.label("moulds-never") },
            spread(desk, mould.carbon),
            spread(desk, mould.core_at_pour),
            spread(desk, mould.cavity_at_pour),
            mould.out_for.map(|out| out_for(desk, out)).unwrap_or_default(),
        ]);
    }
    let says = if known.iter().any(|(one, _)| one.is_by_log()) { "moulds-by-log" } else { "moulds-computed" };
    vec![desk.heading("moulds-title"), Block::Table(table), Block::Words(desk.label(says))]
}

/// The core of the load's slowest mould over the clock: it begins at `start`.
pub(super) fn slowest_core(desk: &Desk<'_>, figures: &BurnoutFigures, start: f64) -> Option<(FlaskId, Vec<(f64, f64)>)> {
    let known = of_load(desk, figures).filter_map(|one| {
        let mould = one.mould.as_ref().filter(|_| !one.is_by_log())?.answer.mould(Conductivity::Likely)?;
        Some((one.flask, mould, mould.core_at(600.0).or_else(|| mould.core_at(100.0)).unwrap_or(f64::INFINITY)))
    });
    let (flask, mould, _): (FlaskId, &Mould, f64) = known.max_by(|a, b| a.2.total_cmp(&b.2))?;
    Some((flask, mould.times_min.iter().zip(&mould.core_c).step_by(5).map(|(minutes, c)| (start + minutes, *c)).collect()))
}

fn of_load<'a>(desk: &Desk<'a>, figures: &BurnoutFigures) -> impl Iterator<Item = &'a HeatFigures> {
    let load = figures.id;
    desk.input.report.heat.iter().filter(move |one| one.load == load)
}

/// From the least to the most of a spread, or the likely one where that is all there is.
fn spread(desk: &Desk<'_>, [low, likely, high]: Spread) -> String {
    let number = |id| desk.number(id);
    match (number(low), number(high)) {
        _ if desk.figure(low) == desk.figure(high) => desk.figure(likely),
        (Some(a), Some(b)) if a <= b => desk.range([low, high]),
        (Some(_), Some(_)) => desk.range([high, low]),
        _ => desk.figure(likely),
    }
}

fn out_for(desk: &Desk<'_>, [low, likely, high]: Spread) -> String {
    let shortest = [low, likely, high].into_iter().filter(|id| desk.known(*id)).min_by(|a, b| {
        let of = |id| desk.number(id).unwrap_or(f64::INFINITY);
        of(*a).total_cmp(&of(*b))
    });
    shortest.map_or_else(|| desk.label("moulds-longer"), |shortest| desk.figure(shortest))
}
