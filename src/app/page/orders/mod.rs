//! Orders: who wants what, by when, and what its metal costs.

mod back;
mod change;
mod from_table;
mod line;
mod list;
mod open;
mod pieces;
mod take_on;

use eframe::egui::{Id, Ui};

use crate::app::action::Action;
use crate::app::cx::Cx;
use crate::app::page::Page;
use crate::app::page::take_out::take_out;
use crate::app::theme::STEP;
use crate::app::widget::moment::day;
use crate::app::widget::number::{Number, number};
use crate::app::widget::row::row;
use crate::app::widget::text::{notes, text};
use crate::app::widget::{button, finding, heading, order};
use crate::job::{Order, Place};
use crate::quantity::{Finite, Kind};

/// Shows the page.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>) {
    let tokens = cx.tokens;
    heading::title(ui, &cx.label("stage-orders"), "", &tokens);
    if cx.job.orders.is_empty() {
        heading::empty(ui, &cx.label("orders-empty"), &cx.label("orders-first"), &tokens);
    } else {
        list::orders(ui, cx);
    }
    ui.add_space(STEP);
    ui.horizontal(|ui| {
        if button::main(ui, &cx.label("orders-add"), &tokens).clicked() {
            let (new, line) = (change::next_order(cx.job), change::next_line(cx.job));
            cx.look(move |view| (view.order, view.line) = (Some(new), Some(line)));
            order::focus(ui.ctx(), Id::unique(("order-client", new.0)));
            cx.edit("edit-orders-add", change::add_order);
        }
        if cx.job.orders.is_empty() && button::plain(ui, &cx.label("do-open-sample"), &tokens).clicked() {
            cx.act(Action::OpenSample);
        }
    });
    super::batch::about(ui, cx);
    cx.folded(ui, "orders-take-on", take_on::show);
    cx.folded(ui, "orders-from-table", from_table::show);
    let job = cx.job;
    if let Some(order) = job.orders.iter().find(|order| Some(order.id) == cx.view.order) {
        order_fields(ui, cx, order);
        list::lines(ui, cx, order);
        if let Some(line) = order.lines.iter().find(|line| Some(line.id) == cx.view.line) {
            line::show(ui, cx, line);
        }
    }
    ui.add_space(3.0 * STEP);
    if !(job.orders.is_empty() && job.flasks.is_empty()) {
        finding::of_page(ui, cx, |found| Page::of_finding(found.kind, found.place) == Page::Orders);
    }
}

fn order_fields(ui: &mut Ui, cx: &mut Cx<'_>, order: &Order) {
    let (tokens, id) = (cx.tokens, order.id);
    heading::group(ui, &cx.label("orders-order"), &tokens);
    let label = cx.label("orders-client");
    let client = row(ui, &label, &tokens, |ui| text(ui, cx, Id::unique(("order-client", id.0)), &label, &order.client, 132.0));
    if let Some(client) = client {
        change::order(cx, "edit-orders-client", id, move |order| order.client = client);
    }
    let label = cx.label("orders-taken");
    let taken = row(ui, &label, &tokens, |ui| day(ui, cx, Id::unique(("order-taken", id.0)), &label, order.taken, 132.0));
    if let Some(taken) = taken {
        change::order(cx, "edit-orders-taken", id, move |order| order.taken = taken);
    }
    let label = cx.label("orders-due");
    let due = row(ui, &label, &tokens, |ui| day(ui, cx, Id::unique(("order-due", id.0)), &label, order.due, 132.0));
    if let Some(due) = due {
        change::order(cx, "edit-orders-due", id, move |order| order.due = due);
    }
    // A client whose own metal is cast agrees on what is lost of it.
    let brought = cx.studio.lots.iter().any(|lot| !lot.owner.trim().is_empty() && lot.owner.trim() == order.client.trim());
    if brought || order.agreed_loss.is_some() {
        let label = cx.label("orders-agreed-loss");
        let field = Number::new(Id::unique(("order-loss", id.0)), &label, Kind::Ratio).now(order.agreed_loss.map(Finite::get));
        if let Some(said) = row(ui, &label, &tokens, |ui| number(ui, cx, &field)) {
            change::order(cx, "edit-orders-loss", id, move |order| order.agreed_loss = said);
        }
    }
    cx.folded(ui, "orders-more", |ui, cx| {
        let label = cx.label("orders-notes");
        let said = row(ui, &label, &tokens, |ui| {
            notes(ui, cx, Id::unique(("order-notes", id.0)), &cx.label("orders-order-notes"), &order.notes, 320.0)
        });
        if let Some(said) = said {
            change::order(cx, "edit-orders-notes", id, move |order| order.notes = said);
        }
        take_out(ui, cx, ("orders-remove", "edit-orders-remove"), Place::Order(id), move |job| change::remove_order(job, id));
    });
}
