//! The rows of the board: which piece, whose, when, where.

use std::collections::BTreeSet;

use eframe::egui::{Checkbox, ScrollArea, Ui};

use crate::app::cx::Cx;
use crate::app::names;
use crate::app::theme::{ROW, size};
use crate::app::widget::row::{cell, fitted};
use crate::app::widget::{button, heading};
use crate::calc::board::{BoardRow, Timely};
use crate::job::PieceId;
use crate::paper::words::{date_words, one_line, out_for_words, stage_words};

/// Rows in sight at once.
const ROWS: usize = 12;
/// Widths of the columns: the piece, its client, when it is due, how far it is, where it is.
const WIDE: [f32; 5] = [200.0, 60.0, 130.0, 120.0, 170.0];
/// Room for the tick before them.
const TICK: f32 = 36.0;

/// Shows the rows, each to be ticked; what is chosen is moved on below.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>, rows: &[&BoardRow<'_>], ticked: &mut BTreeSet<PieceId>) {
    let tokens = cx.tokens;
    if rows.is_empty() {
        heading::says(ui, &cx.label("pieces-none"), &tokens);
        return;
    }
    ui.horizontal(|ui| {
        ui.add_space(TICK);
        let heads = ["pieces-piece", "pieces-client", "pieces-due", "pieces-stage", "pieces-where"];
        for (key, width) in heads.into_iter().zip(fitted(ui, WIDE, 0.0)) {
            cell(ui, &cx.label(key), width, size::SMALL, tokens.ink2);
        }
    });
    let height = (ROW + ui.spacing().item_spacing.y) * rows.len().min(ROWS) as f32;
    ScrollArea::vertical().id_salt("pieces").max_height(height).auto_shrink([false, true]).show_rows(ui, ROW, rows.len(), |ui, range| {
        for row in &rows[range] {
            ui.push_id(row.followed.piece, |ui| one(ui, cx, row, ticked));
        }
    });
    let all = rows.iter().all(|row| ticked.contains(&row.followed.piece));
    let key = if all { "pieces-tick-none" } else { "pieces-tick-all" };
    if button::link(ui, &cx.label(key), &tokens).clicked() {
        let pieces = rows.iter().map(|row| row.followed.piece);
        if all {
            ticked.clear();
        } else {
            ticked.extend(pieces);
        }
    }
}

fn one(ui: &mut Ui, cx: &Cx<'_>, row: &BoardRow<'_>, ticked: &mut BTreeSet<PieceId>) {
    ui.horizontal(|ui| {
        ui.set_height(ROW);
        let piece = row.followed.piece;
        let mut on = ticked.contains(&piece);
        if ui.add(Checkbox::without_text(&mut on)).accessible_name(spoken(cx, row)).changed() {
            if on {
                ticked.insert(piece)
            } else {
                ticked.remove(&piece)
            };
        }
        columns(ui, cx, row, 0.0);
    });
}

/// Late, or going to be.
pub fn is_late(row: &BoardRow<'_>) -> bool {
    matches!(row.timely, Timely::Late(_) | Timely::CastTooLate(_)) || row.out_over.is_some()
}

/// The columns of a row: which, whose, when, how far, where; with room besides for what comes after them.
pub fn columns(ui: &mut Ui, cx: &Cx<'_>, row: &BoardRow<'_>, besides: f32) {
    let tokens = cx.tokens;
    let wide = fitted(ui, WIDE, besides);
    cell(ui, &named(cx, row), wide[0], size::BODY, tokens.ink);
    cell(ui, &client(cx, row), wide[1], size::BODY, tokens.ink);
    let ink = match row.timely {
        Timely::Late(_) => tokens.stop,
        Timely::CastTooLate(_) => tokens.caution,
        _ => tokens.ink2,
    };
    cell(ui, &due(cx, row), wide[2], size::SMALL, ink);
    cell(ui, &stage(cx, row), wide[3], size::BODY, if row.followed.rejected.is_some() { tokens.stop } else { tokens.ink });
    let ink = if row.out_over.is_some() { tokens.caution } else { tokens.ink2 };
    cell(ui, &place(cx, row), wide[4], size::SMALL, ink);
}

/// Everything a row says, for who hears it and for who searches.
pub fn spoken(cx: &Cx<'_>, row: &BoardRow<'_>) -> String {
    let alloy = row.line.alloy.as_ref().map_or_else(String::new, |id| names::entry(cx, id));
    let parts = [named(cx, row), client(cx, row), due(cx, row), stage(cx, row), place(cx, row), alloy, one_line(&row.order.notes)];
    parts.into_iter().filter(|part| !part.is_empty()).collect::<Vec<_>>().join(", ")
}

/// `Limpet ring 3, 17½`.
pub fn named(cx: &Cx<'_>, row: &BoardRow<'_>) -> String {
    let design = one_line(&row.line.design);
    let design = if design.is_empty() { cx.label("orders-no-design") } else { design };
    let mut words = format!("{design} {}", row.followed.piece.number);
    if let Some(size) = row.size {
        words = format!("{words}, {}", names::size(size));
    }
    words
}

fn client(cx: &Cx<'_>, row: &BoardRow<'_>) -> String {
    let client = one_line(&row.order.client);
    if client.is_empty() { cx.label("orders-no-client") } else { client }
}

fn due(cx: &Cx<'_>, row: &BoardRow<'_>) -> String {
    let on = row.due.map_or_else(String::new, |due| date_words(due, cx.texts));
    match row.timely {
        // What is wrong comes first: a narrow column cuts the date.
        Timely::Late(days) => format!("{}, {on}", cx.say("pieces-late-by", &[("days", days.unsigned_abs().into())])),
        Timely::CastTooLate(_) => format!("{}, {on}", cx.label("pieces-cast-late")),
        _ => on,
    }
}

/// How far it is, or that it was rejected.
pub fn stage(cx: &Cx<'_>, row: &BoardRow<'_>) -> String {
    let one = &row.followed;
    match (&one.rejected, one.stage) {
        (Some(_), _) if one.remade_by.is_some() => cx.label("pieces-remade"),
        (Some(defect), _) => cx.say("pieces-rejected", &[("defect", one_line(defect).into())]),
        (None, Some(stage)) => stage_words(stage, cx.texts),
        (None, None) => cx.label("pieces-ordered"),
    }
}

/// In which flask, on which tree, or to whom it went.
fn place(cx: &Cx<'_>, row: &BoardRow<'_>) -> String {
    let one = &row.followed;
    let mut words = Vec::new();
    if let Some(out) = &one.out {
        let to = if out.to.trim().is_empty() { cx.label("pieces-somebody") } else { one_line(&out.to) };
        words.push(cx.say("pieces-out-to", &[("to", to.into())]));
        words.extend(out.promised.map(|day| cx.say("pieces-promised", &[("on", date_words(day, cx.texts).into())])));
    } else {
        let here = one.flask.map(|flask| names::flask(cx, flask)).or_else(|| one.tree.map(|tree| names::tree(cx, tree)));
        words.extend(here);
    }
    words.extend(one.failed.map(|what| cx.say("pieces-failed-at", &[("purpose", out_for_words(what, cx.texts).into())])));
    words.extend(one.remake_of.map(|of| cx.say("pieces-remake-of", &[("number", of.number.to_string().into())])));
    words.extend(one.from.is_some().then(|| cx.label("orders-piece-from")));
    words.join(", ")
}
