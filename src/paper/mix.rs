//! Investment: powder, water, mixes, the clock, the gauge.

use super::block::{BigWeight, Block, Side, Table, WriteIn};
use super::desk::Desk;
use super::words::one_line;
use crate::calc::FlaskFigures;
use crate::job::Flask;
use crate::quantity::{Finite, Kind, print};
use crate::stock::{Flask as Vessel, FlaskWall, Liquid, Powder};

/// Weights to weigh out, what the powder is mixed with, and the minutes from first powder to rest.
pub(super) fn mix(desk: &Desk<'_>, flask: &FlaskFigures) -> Vec<Block> {
    let mix = &flask.mix;
    let job_flask = desk.input.job.flasks.iter().find(|other| other.id == flask.id);
    let lot = job_flask.map_or_else(String::new, |flask| one_line(&flask.powder_lot));
    let mut fields = vec![desk.field("mix-powder-name", desk.entry(flask.powder.as_ref()))];
    if !lot.is_empty() {
        fields.push(desk.field("mix-lot", lot));
    }
    if desk.number(mix.mixes).is_some_and(|mixes| mixes > 1.0) {
        let args = [("powder", desk.powder(mix.powder).into()), ("water", desk.powder(mix.water).into())];
        fields.push(desk.field("mix-in-all", desk.say("mix-in-all-of", &args)));
    }
    fields.extend([
        desk.figure_field("mix-ratio", mix.ratio),
        desk.figure_field("mix-slurry", mix.slurry),
        desk.figure_field("mix-slurry-density", mix.slurry_density),
        desk.figure_field("mix-water-c", mix.water_c),
        desk.field("mix-gauge", gauge(desk, flask)),
    ]);
    fields.extend(flask.mix_by.map(|id| desk.figure_field("mix-by", id)));
    fields.extend(flask.invested_by.map(|id| desk.figure_field("mix-invested-by", id)));
    let mut blocks = vec![desk.heading("sheet-mix"), Block::Weights(weights(desk, flask)), Block::Words(String::new())];
    blocks.extend([Block::Fields(fields), Block::Table(clock(desk, flask))]);
    blocks.extend(job_flask.and_then(|flask| care(desk, flask)).map(Block::Words));
    blocks.push(Block::WriteIn(really(desk)));
    blocks
}

/// What a wall with holes and a collar ask for. A plain steel asks for nothing.
fn care(desk: &Desk<'_>, flask: &Flask) -> Option<String> {
    let vessel = flask.vessel.as_ref().and_then(|id| desk.input.shelves.job.get::<Vessel>(id.as_str()))?;
    let perforated = (vessel.wall == FlaskWall::Perforated).then(|| desk.label("mix-wrap"));
    let collar = flask.collar_mm.map(Finite::get).filter(|collar| *collar > 0.0);
    let collar = collar.map(|collar| {
        let collar = print(collar, Kind::Length, desk.words.style).to_string();
        desk.say("mix-collar", &[("collar", collar.into())])
    });
    let said: Vec<String> = perforated.into_iter().chain(collar).collect();
    (!said.is_empty()).then(|| format!("{} {}", said.join(" "), desk.label("mix-top-up")))
}

fn liquid_key(desk: &Desk<'_>, flask: &FlaskFigures) -> &'static str {
    let powder = flask.powder.as_ref().and_then(|id| desk.input.shelves.job.get::<Powder>(id.as_str()));
    match powder.map(|powder| powder.liquid) {
        Some(Liquid::SpecialLiquid) => "mix-liquid",
        _ => "mix-water",
    }
}

fn weights(desk: &Desk<'_>, flask: &FlaskFigures) -> Vec<BigWeight> {
    let mix = &flask.mix;
    let liquid = desk.label(liquid_key(desk, flask));
    let mixes = desk.number(mix.mixes).filter(|mixes| *mixes > 1.0);
    let Some(mixes) = mixes else {
        return vec![desk.powder_weight(desk.label("mix-powder"), mix.powder), desk.powder_weight(liquid, mix.water)];
    };
    let mut weights = Vec::new();
    let all = print(mixes, Kind::Count, desk.words.style).number;
    // A bench takes a handful of mixes; beyond that one row tells it as well as a hundred.
    for number in (1..=8_u32).take_while(|number| f64::from(*number) <= mixes) {
        let named = |what: String| {
            desk.say("mix-of", &[("what", what.into()), ("number", number.to_string().into()), ("mixes", all.clone().into())])
        };
        weights.push(desk.powder_weight(named(desk.label("mix-powder")), mix.powder_of_mix));
        weights.push(desk.powder_weight(named(liquid.clone()), mix.water_of_mix));
    }
    weights
}

/// The gauge's reading in kPa and in inches of mercury: gauges are marked in either.
fn gauge(desk: &Desk<'_>, flask: &FlaskFigures) -> String {
    let gauge = flask.mix.gauge;
    if !desk.known(gauge) {
        return desk.figure(gauge);
    }
    let in_unit = |unit| desk.in_unit(gauge, Kind::Vacuum, unit);
    desk.say("gauge-both", &[("kpa", in_unit("kPa").into()), ("inhg", in_unit("inHg").into())])
}

/// The steps with the minutes on the clock when each is over, counted from the first powder in the water.
fn clock(desk: &Desk<'_>, flask: &FlaskFigures) -> Table {
    let mut table = desk.table(&[
        ("column-step", Side::Left),
        ("column-takes", Side::Right),
        ("column-over-at", Side::Right),
        ("column-really", Side::Write),
    ]);
    let steps = ["mix-step-mix", "mix-step-bowl", "mix-step-pour", "mix-step-flask"];
    for ((key, takes), over) in steps.iter().zip(flask.mix.steps).zip(flask.mix.over) {
        table.row([desk.label(key), desk.figure(takes), desk.figure(over), String::new()]);
    }
    table.row([desk.label("mix-finish-by"), String::new(), desk.figure(flask.mix.finish_by), String::new()]);
    table
}

fn really(desk: &Desk<'_>) -> Vec<WriteIn> {
    let unit = |kind| desk.words.style.units.of(kind).symbol;
    let asked = [("really-gloss-off", Kind::Duration), ("really-vacuum", Kind::Vacuum), ("really-water-c", Kind::Temperature)];
    asked.map(|(key, kind)| WriteIn { label: desk.label(key), unit: unit(kind) }).into()
}
