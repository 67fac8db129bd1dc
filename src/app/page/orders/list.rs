//! The orders, and the lines of the chosen one.

use eframe::egui::Ui;

use super::change;
use crate::app::cx::Cx;
use crate::app::widget::rows::{choose, rows};
use crate::app::widget::{button, heading, order};
use crate::job::{Job, Order};
use crate::paper::words::date_words;

/// Every order: client, pieces, due.
pub fn orders(ui: &mut Ui, cx: &mut Cx<'_>) {
    let job = cx.job;
    rows(ui, "orders", job.orders.len(), |ui, place| {
        let order = &job.orders[place];
        let pieces: u64 = order.lines.iter().map(|line| u64::from(Job::pieces_of(line))).sum();
        let due =
            order.due.map_or_else(|| cx.label("orders-no-due"), |due| cx.say("orders-due-on", &[("on", date_words(due, cx.texts).into())]));
        let about = format!("{}   {due}", cx.say("orders-pieces", &[("count", pieces.into())]));
        let client = if order.client.trim().is_empty() { cx.label("orders-no-client") } else { order.client.clone() };
        if choose(ui, cx, cx.view.order == Some(order.id), &client, &about) {
            let (id, line) = (order.id, order.lines.first().map(|line| line.id));
            cx.look(move |view| (view.order, view.line) = (Some(id), line));
        }
    });
}

/// The lines of an order: design, pieces, alloy.
pub fn lines(ui: &mut Ui, cx: &mut Cx<'_>, order: &Order) {
    let (tokens, id) = (cx.tokens, order.id);
    heading::group(ui, &cx.label("orders-lines"), &tokens);
    rows(ui, "lines", order.lines.len(), |ui, place| {
        let line = &order.lines[place];
        let alloy = line.alloy.as_ref().map_or_else(|| cx.label("orders-no-alloy"), |id| crate::app::names::entry(cx, id));
        let about = format!("{}   {alloy}", cx.say("orders-pieces", &[("count", u64::from(Job::pieces_of(line)).into())]));
        let design = if line.design.trim().is_empty() { cx.label("orders-no-design") } else { line.design.clone() };
        if choose(ui, cx, cx.view.line == Some(line.id), &design, &about) {
            let id = line.id;
            cx.look(move |view| view.line = Some(id));
        }
    });
    ui.horizontal(|ui| {
        if button::plain(ui, &cx.label("orders-add-line"), &tokens).clicked() {
            chosen_next(ui, cx);
            cx.edit("edit-orders-add-line", move |job| change::add_line(job, id, None));
        }
        let like = cx.view.line.filter(|line| order.lines.iter().any(|other| other.id == *line));
        if like.is_some() && button::plain(ui, &cx.label("orders-like-line"), &tokens).clicked() {
            chosen_next(ui, cx);
            cx.edit("edit-orders-add-line", move |job| change::add_line(job, id, like));
        }
    });
}

/// The line that is about to be added is looked at, and written in first.
fn chosen_next(ui: &Ui, cx: &mut Cx<'_>) {
    let next = change::next_line(cx.job);
    cx.look(move |view| view.line = Some(next));
    order::focus(ui.ctx(), eframe::egui::Id::unique(("line-design", next.0)));
}
