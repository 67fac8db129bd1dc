//! Who is poured first: the hottest moulds, then the kiln falls for the others; and how long each may stand out of it.

use eframe::egui::Ui;

use crate::app::cx::Cx;
use crate::app::widget::figure::{Look, figure};
use crate::app::widget::row::cell;
use crate::app::widget::{button, heading};
use crate::calc::{BurnoutFigures, Id};
use crate::job::FlaskId;

/// Widths of turn, flask, kiln, pour, and out.
const COLUMNS: [f32; 5] = [26.0, 128.0, 84.0, 122.0, 104.0];

/// Shows the order, where there is more than one flask or one that may stand out so long.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>, figures: &BurnoutFigures) {
    let tokens = cx.tokens;
    let ordered: Vec<FlaskId> = figures.rounds.iter().flat_map(|round| round.flasks.clone()).collect();
    if ordered.is_empty() {
        return;
    }
    heading::group(ui, &cx.label("rounds-heading"), &tokens);
    ui.horizontal(|ui| {
        for (key, width) in ["rounds-turn", "rounds-flask", "rounds-kiln", "rounds-at", "rounds-out"].into_iter().zip(COLUMNS) {
            cell(ui, &cx.label(key), width, 12.0, tokens.ink2);
        }
    });
    let mut turn = 0;
    for round in &figures.rounds {
        for flask in &round.flasks {
            turn += 1;
            let out = cx.computed.report.heat.iter().find(|one| one.flask == *flask && one.load == figures.id);
            let out = out.and_then(|one| one.mould.as_ref()?.out_for).map(|spread| spread[1]);
            one(ui, cx, (turn, *flask), (round.target, round.at), out);
        }
    }
    let given = |id: FlaskId| cx.job.flasks.iter().find(|flask| flask.id == id).and_then(|flask| flask.turn);
    let asked: Vec<Option<u32>> = (1..).take(ordered.len()).map(Some).collect();
    let now: Vec<Option<u32>> = ordered.iter().map(|id| given(*id)).collect();
    if now != asked && ordered.len() > 1 && button::plain(ui, &cx.label("rounds-take"), &tokens).clicked() {
        cx.edit("edit-rounds", move |job| {
            for (turn, id) in (1..).zip(&ordered) {
                if let Some(flask) = job.flasks.iter_mut().find(|flask| flask.id == *id) {
                    flask.turn = Some(turn);
                }
            }
        });
    }
}

fn one(ui: &mut Ui, cx: &mut Cx<'_>, (turn, flask): (u32, FlaskId), (kiln, at): (Id, Id), out: Option<Id>) {
    let tokens = cx.tokens;
    ui.horizontal(|ui| {
        cell(ui, &turn.to_string(), COLUMNS[0], 14.0, tokens.ink);
        cell(ui, &crate::app::names::flask(cx, flask), COLUMNS[1], 14.0, tokens.ink);
        figure(ui, cx, kiln, Look { right: false, ..Look::ROW.width(COLUMNS[2]) });
        figure(ui, cx, at, Look { right: false, size: 13.0, ..Look::ROW.width(COLUMNS[3]) });
        match out {
            Some(out) if cx.computed.book.number(out).is_some() => {
                figure(ui, cx, out, Look { right: false, ..Look::ROW.width(COLUMNS[4]) });
            }
            Some(_) => cell(ui, &cx.label("heat-longer"), COLUMNS[4], 14.0, tokens.ink2),
            None => cell(ui, "", COLUMNS[4], 14.0, tokens.ink2),
        }
    });
}
