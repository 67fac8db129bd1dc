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
    let position = desk.input.job.flasks.iter().find(|other| other.id == flask.id).map(|flask| one_line(&flask.kiln_position));
    let position = position.filter(|position| !position.is_empty()).map(|position| desk.field("burnout-position", position));
    let mut fields =
        vec![desk.field("burnout-load", desk.text(&document.name)), desk.field("burnout-kiln", desk.entry(document.kiln.as_ref()))];
    fields.extend(position);
    fields.extend(load_fields(desk, figures, document));
    blocks.push(Block::Fields(fields));
    if figures.stages.is_empty() {
        blocks.push(Block::Words(desk.label("sheet-no-programme")));
    } else {
        blocks.push(Block::Table(stages(desk, figures, false)));
    }
    if let (None, Some([with, without])) = (figures.hours_include_ramps, figures.both) {
        let args = [("with", desk.figure(with).into()), ("without", desk.figure(without).into())];
        blocks.push(Block::Words(desk.say("burnout-both", &args)));
    }
    blocks
}

/// What is said of a load: its programme, when it is started, how long it takes, how hot it gets.
pub(super) fn load_fields(desk: &Desk<'_>, figures: &BurnoutFigures, document: &Burnout) -> Vec<Field> {
    let mut fields = Vec::new();
    let programme = match &document.programme {
        None => desk.label("cause-not-chosen"),
        Some(Programme::Table(table)) => desk.entry(Some(table)),
        Some(Programme::Segments(_)) => desk.label("burnout-own"),
    };
    fields.push(desk.field("burnout-programme", programme));
    fields.extend(figures.dewax_start.map(|id| desk.figure_field("burnout-dewax", id)));
    fields.extend(figures.lit.map(|[lit, _]| desk.figure_field("burnout-lit", lit)));
    fields.extend([
        desk.figure_field("burnout-kiln-start", figures.kiln_start),
        desk.figure_field("burnout-pour", figures.pour),
        desk.figure_field("burnout-total", figures.total),
        desk.figure_field("burnout-top", figures.top),
        desk.figure_field("burnout-hot", figures.hot),
    ]);
    fields
}

/// The stages with their times on the clock; on the narrow column of a bench sheet without the ends, which are the next one's beginnings.
pub(super) fn stages(desk: &Desk<'_>, figures: &BurnoutFigures, ends: bool) -> Table {
    let mut table = desk.table(&[
        ("column-tick", Side::Tick),
        ("column-stage", Side::Right),
        ("column-target", Side::Right),
        ("column-ramp", Side::Right),
        ("column-hold", Side::Right),
        ("column-start", Side::Left),
        ("column-end", Side::Left),
        ("column-really", Side::Write),
    ]);
    for (number, stage) in (1..).zip(&figures.stages) {
        table.row([
            String::new(),
            u32::to_string(&number),
            desk.figure(stage.target),
            desk.figure(stage.ramp),
            desk.figure(stage.hold),
            desk.clock(stage.start, ends),
            if ends { desk.clock(stage.end, true) } else { String::new() },
            String::new(),
        ]);
    }
    if !ends {
        let none = String::new;
        table.row([none(), none(), desk.label("burnout-pour"), none(), none(), desk.clock(figures.pour, false), none(), none()]);
    }
    table
}

/// Empty rows for what the kiln really showed.
pub(super) fn readings(desk: &Desk<'_>) -> Table {
    let mut table = desk.table(&[
        ("column-clock", Side::Write),
        ("column-display", Side::Write),
        ("column-probe", Side::Write),
        ("column-remark", Side::Write),
    ]);
    table.rows = vec![vec![String::new(); 4]; 6];
    table
}
