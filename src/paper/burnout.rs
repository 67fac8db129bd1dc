//! The kiln: where the flask stands, when steam and kiln are started, and every stage with its times on the clock.

use super::block::{Block, Field, Side, Table};
use super::desk::Desk;
use super::words::one_line;
use crate::calc::{BurnoutFigures, FlaskFigures};
use crate::job::{Burnout, Programme};

/// The programme of the flask's load.
pub(super) fn burnout(desk: &Desk<'_>, flask: &FlaskFigures) -> Vec<Block> {
    let mut blocks = vec![desk.heading("sheet-burnout")];
    let figures = desk.input.report.burnouts.iter().find(|load| Some(load.id) == flask.burnout);
    let document = desk.input.job.burnouts.iter().find(|load| Some(load.id) == flask.burnout);
    let (Some(figures), Some(document)) = (figures, document) else {
        blocks.push(Block::Words(desk.label("sheet-no-burnout")));
        return blocks;
    };
    blocks.push(Block::Fields(fields(desk, flask, figures, document)));
    if figures.stages.is_empty() {
        blocks.push(Block::Words(desk.label("sheet-no-programme")));
    } else {
        blocks.push(Block::Table(stages(desk, figures)));
    }
    if let (None, Some([with, without])) = (figures.hours_include_ramps, figures.both) {
        let args = [("with", desk.figure(with).into()), ("without", desk.figure(without).into())];
        blocks.push(Block::Words(desk.say("burnout-both", &args)));
    }
    blocks
}

fn fields(desk: &Desk<'_>, flask: &FlaskFigures, figures: &BurnoutFigures, document: &Burnout) -> Vec<Field> {
    let position = desk.input.job.flasks.iter().find(|other| other.id == flask.id).map(|flask| one_line(&flask.kiln_position));
    let mut fields =
        vec![desk.field("burnout-load", desk.text(&document.name)), desk.field("burnout-kiln", desk.entry(document.kiln.as_ref()))];
    fields.extend(position.filter(|position| !position.is_empty()).map(|position| desk.field("burnout-position", position)));
    let programme = match &document.programme {
        None => desk.label("cause-not-chosen"),
        Some(Programme::Table(table)) => desk.entry(Some(table)),
        Some(Programme::Segments(_)) => desk.label("burnout-own"),
    };
    fields.push(desk.field("burnout-programme", programme));
    fields.extend(flask.mix_by.map(|id| desk.figure_field("mix-by", id)));
    fields.extend(flask.invested_by.map(|id| desk.figure_field("mix-invested-by", id)));
    fields.extend(figures.dewax_start.map(|id| desk.figure_field("burnout-dewax", id)));
    fields.extend([
        desk.figure_field("burnout-kiln-start", figures.kiln_start),
        desk.figure_field("burnout-pour", figures.pour),
        desk.figure_field("burnout-total", figures.total),
        desk.figure_field("burnout-top", figures.top),
        desk.figure_field("burnout-hot", figures.hot),
    ]);
    fields
}

fn stages(desk: &Desk<'_>, figures: &BurnoutFigures) -> Table {
    let head = |key, side| (desk.label(key), side);
    let mut table = Table::new(vec![
        head("column-tick", Side::Left),
        head("column-stage", Side::Right),
        head("column-target", Side::Right),
        head("column-ramp", Side::Right),
        head("column-hold", Side::Right),
        head("column-start", Side::Left),
        head("column-end", Side::Left),
        head("column-really", Side::Left),
    ]);
    for (number, stage) in (1..).zip(&figures.stages) {
        table.row([
            "[ ]".to_owned(),
            u32::to_string(&number),
            desk.figure(stage.target),
            desk.figure(stage.ramp),
            desk.figure(stage.hold),
            desk.figure(stage.start),
            desk.figure(stage.end),
            "__________".to_owned(),
        ]);
    }
    table
}
