//! The kiln sheet: a page a load, for the door of the kiln.

use std::collections::{BTreeMap, BTreeSet};

use super::block::{Block, Drawing, Page, Side};
use super::burnout::{load_fields, readings, stages};
use super::cautions::Hazards;
use super::desk::Desk;
use super::findings::of_load;
use super::keyed::{keyed_in, third_key};
use super::moulds::{moulds, slowest_core};
use super::words::{moment_of, one_line};
use super::work::work;
use crate::calc::floor::{flasks_of, floor_of};
use crate::calc::kiln_floor::arrange;
use crate::calc::{BurnoutFigures, FlaskFigures};
use crate::drawing::kiln_curve::{Curve, kiln_curve};
use crate::job::{Burnout, Flask, FlaskId};
use crate::quantity::{Kind, print};

/// The pages of all loads.
pub(super) fn kiln_pages(desk: &Desk<'_>) -> Vec<Page> {
    let all = desk.input.job.burnouts.iter();
    all.filter_map(|load| Some((load, desk.input.report.burnouts.iter().find(|figures| figures.id == load.id)?)))
        .map(|(load, figures)| page(desk, load, figures))
        .collect()
}

fn page(desk: &Desk<'_>, load: &Burnout, figures: &BurnoutFigures) -> Page {
    let flasks: Vec<&FlaskFigures> = desk.input.report.flasks.iter().filter(|flask| flask.burnout == Some(load.id)).collect();
    let title = desk.say("kiln-title", &[("load", desk.text(&load.name).into()), ("kiln", desk.entry(load.kiln.as_ref()).into())]);
    let mut blocks = of_load(desk, load.id);
    blocks.extend([desk.heading("kiln-flasks"), flasks_table(desk, &flasks, &thirds(desk, load, figures))]);
    blocks.push(desk.heading("sheet-burnout"));
    let hazards = Hazards::of_flasks(desk, &flasks);
    blocks.extend(hazards.at_burnout(desk));
    blocks.extend(hazards.at_kiln(desk));
    blocks.push(Block::Fields(load_fields(desk, figures, load)));
    if figures.stages.is_empty() {
        blocks.push(Block::Words(desk.label("sheet-no-programme")));
    } else {
        blocks.push(Block::Table(stages(desk, figures, true)));
        blocks.extend(keyed_in(desk, load, figures));
        blocks.extend(curve(desk, figures));
        blocks.extend(moulds(desk, figures));
    }
    if let Some(found) = desk.input.report.work.iter().find(|work| work.load == load.id) {
        blocks.extend(work(desk, found, desk.figure(figures.pour)));
    }
    blocks.extend([desk.heading("kiln-readings"), Block::Table(readings(desk))]);
    Page { title, blocks, ..Page::default() }
}

/// The flasks in the order they are poured, with the mould each is wanted at.
fn flasks_table(desk: &Desk<'_>, flasks: &[&FlaskFigures], thirds: &BTreeMap<FlaskId, String>) -> Block {
    if flasks.is_empty() {
        return Block::Words(desk.label("kiln-no-flasks"));
    }
    let mut table = desk.table(&[
        ("column-in", Side::Tick),
        ("column-scratched", Side::Left),
        ("column-flask", Side::Left),
        ("column-alloy", Side::Left),
        ("column-position", Side::Left),
        ("column-invested-by", Side::Left),
        ("column-mould", Side::Right),
        ("column-turn", Side::Right),
        ("column-poured-at", Side::Write),
    ]);
    let document = |flask: &FlaskFigures| desk.input.job.flasks.iter().find(|other| other.id == flask.id);
    let mut ordered: Vec<(&FlaskFigures, Option<&Flask>)> = flasks.iter().map(|flask| (*flask, document(flask))).collect();
    ordered.sort_by_key(|(_, flask)| flask.map_or(u32::MAX, |flask| flask.turn.unwrap_or(u32::MAX)));
    for (figures, flask) in ordered {
        table.row([
            String::new(),
            desk.scratch(figures.id),
            desk.vessel(flask.and_then(|flask| flask.vessel.as_ref())),
            desk.entry(figures.alloy.as_ref()),
            position(figures.id, flask, thirds),
            figures.invested_by.map_or_else(String::new, |id| desk.figure(id)),
            desk.figure(figures.pour.mould),
            flask.and_then(|flask| flask.turn).map_or_else(String::new, |turn| turn.to_string()),
            String::new(),
        ]);
    }
    Block::Table(table)
}

/// Where a flask stands, as somebody said, or as the floor was arranged.
fn position(id: FlaskId, flask: Option<&Flask>, thirds: &BTreeMap<FlaskId, String>) -> String {
    let said = flask.map(|flask| one_line(&flask.kiln_position)).filter(|said| !said.is_empty());
    said.or_else(|| thirds.get(&id).cloned()).unwrap_or_default()
}

/// The third of the kiln's floor that every flask of a load stands in; empty where the floor is not known.
fn thirds(desk: &Desk<'_>, load: &Burnout, figures: &BurnoutFigures) -> BTreeMap<FlaskId, String> {
    let input = desk.input;
    let Some(floor) = floor_of(load, &input.shelves.job) else { return BTreeMap::new() };
    let flasks = flasks_of(load, figures, input.job, input.report, &input.shelves.job);
    let standing = arrange(&floor, &flasks).map(|found| found.standing).unwrap_or_default();
    standing.into_iter().map(|one| (FlaskId(one.key), desk.label(third_key(one.row, one.column)))).collect()
}

/// The programme over the clock; none where a time of it is not known.
fn curve(desk: &Desk<'_>, figures: &BurnoutFigures) -> Option<Block> {
    let number = |id| desk.number(id);
    let start = number(figures.kiln_start)?;
    let from_c = desk.number(figures.start_c)?;
    let mut points = vec![(start, from_c)];
    for stage in &figures.stages {
        let (target, end, hold) = (number(stage.target)?, number(stage.end)?, number(stage.hold)?);
        points.extend([(end - hold, target), (end, target)]);
    }
    let last = points.last().map(|(time, _)| *time)?;
    let c = |c: f64| print(c, Kind::Temperature, desk.words.style).to_string();
    let top = points.iter().map(|(_, c)| *c).fold(0.0, f64::max);
    let temperatures = [200.0, 400.0, 600.0, 800.0, 1000.0].into_iter().filter(|mark| *mark < top + 80.0).map(|mark| (mark, c(mark)));
    let core = slowest_core(desk, figures, start);
    let picture = kiln_curve(&Curve {
        hours: hours(desk, start, last),
        temperatures: temperatures.collect(),
        points,
        ceiling: None,
        under: core.as_ref().map(|(_, points)| points.clone()).unwrap_or_default(),
        size_mm: [190.0, 58.0],
    });
    let caption = core.map(|(flask, _)| desk.say("kiln-curve-core", &[("flask", desk.scratch(flask).into())])).unwrap_or_default();
    let says =
        desk.say("kiln-curve-says", &[("start", desk.figure(figures.kiln_start).into()), ("pour", desk.figure(figures.pour).into())]);
    Some(Block::Drawing(Box::new(Drawing { picture, to_scale: false, says, caption, most_mm: 60.0, beside: Vec::new() })))
}

/// Full hours by the clock on the wall, so many that they can be told apart.
fn hours(desk: &Desk<'_>, from: f64, to: f64) -> Vec<(f64, String)> {
    let apart = [1_i32, 2, 3, 4, 6, 12].into_iter().find(|hours| (to - from) / 60.0 / f64::from(*hours) <= 12.0).unwrap_or(24);
    let apart = i64::from(apart);
    let mut marks = Vec::new();
    let mut seen = BTreeSet::new();
    let mut time = from;
    while time <= to && marks.len() < 60 {
        if let Some(at) = moment_of(time, desk.words.zone) {
            let whole = at.minute() == 0;
            if whole && i64::from(at.hour()) % apart.min(24) == 0 && seen.insert(at) {
                marks.push((time, format!("{:02}:00", at.hour())));
            }
            time += if whole { 60.0 } else { 60.0 - f64::from(at.minute()) };
        } else {
            break;
        }
    }
    marks
}
