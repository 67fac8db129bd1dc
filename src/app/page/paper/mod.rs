//! Paper: what stands on the bench and what goes to the client, page by page as it is printed.

mod dress;

use eframe::egui::{self, RichText, Ui, vec2};

use crate::app::action::{Action, Put};
use crate::app::cx::Cx;
use crate::app::paper_desk::Shown;
use crate::app::theme::STEP;
use crate::app::widget::leaf::leaf;
use crate::app::widget::{button, heading};
use crate::paper::{Listed, Sort};

/// Width of what stands beside the page.
const BESIDE: f32 = 256.0;
/// Less than this has no room for both.
const LEAST: f32 = 600.0;

/// Shows the page.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>) {
    let tokens = cx.tokens;
    heading::title(ui, &cx.label("stage-paper"), &cx.label("paper-under"), &tokens);
    let room = ui.available_width();
    let top = ui.cursor().top();
    let high = ui.clip_rect().bottom() - top - 3.0 * STEP;
    if room < LEAST {
        // No room beside each other: the page goes below.
        beside(ui, cx);
        ui.add_space(3.0 * STEP);
        preview(ui, cx, vec2(room - 2.0 * STEP, high));
        return;
    }
    ui.horizontal_top(|ui| {
        ui.vertical(|ui| {
            ui.set_width(BESIDE);
            beside(ui, cx);
        });
        ui.add_space(4.0 * STEP);
        ui.vertical(|ui| preview(ui, cx, vec2(room - BESIDE - 8.0 * STEP, high)));
    });
}

fn beside(ui: &mut Ui, cx: &mut Cx<'_>) {
    sorts(ui, cx);
    documents(ui, cx);
    ui.add_space(2.0 * STEP);
    dress::show(ui, cx);
    ui.add_space(2.0 * STEP);
    ways_out(ui, cx);
    cx.folded(ui, "paper-tables", tables);
    remarks(ui, cx);
}

fn sorts(ui: &mut Ui, cx: &mut Cx<'_>) {
    heading::group(ui, &cx.label("paper-sort"), &cx.tokens.clone());
    for sort in Sort::ALL {
        let here = cx.view.paper.sort == sort;
        if ui.selectable_label(here, cx.label(sort.key())).clicked() && !here {
            cx.look(move |view| {
                view.paper.sort = sort;
                view.paper.name.clear();
                view.paper.leaf = 0;
            });
        }
    }
}

/// Which of several documents: one a client, or one an order.
fn documents(ui: &mut Ui, cx: &mut Cx<'_>) {
    let Some(shown) = cx.shown.filter(|shown| shown.printed.len() > 1) else { return };
    heading::group(ui, &cx.label("paper-for"), &cx.tokens.clone());
    ui.horizontal_wrapped(|ui| {
        for (index, one) in shown.printed.iter().enumerate() {
            let name = one.name.clone();
            if ui.selectable_label(index == shown.at, name.replace('-', " ")).clicked() {
                cx.look(move |view| (view.paper.name, view.paper.leaf) = (name, 0));
            }
        }
    });
}

fn ways_out(ui: &mut Ui, cx: &mut Cx<'_>) {
    let tokens = cx.tokens;
    let Some(shown) = cx.shown.filter(|shown| shown.laid.is_some()) else { return };
    if button::main(ui, &cx.label("paper-print"), &tokens).clicked() {
        cx.act(Action::Put(Put::Printer));
    }
    ui.horizontal_wrapped(|ui| {
        for (key, put) in [("paper-viewer", Put::Viewer), ("paper-pdf", Put::Pdf), ("paper-text", Put::Text)] {
            if button::plain(ui, &cx.label(key), &tokens).clicked() {
                cx.act(Action::Put(put));
            }
        }
        let count = shown.printed.len();
        if count > 1 && button::plain(ui, &cx.say("paper-all", &[("count", count.into())]), &tokens).clicked() {
            cx.act(Action::Put(Put::AllPdfs));
        }
    });
}

/// The batch as tables for spreadsheets.
fn tables(ui: &mut Ui, cx: &mut Cx<'_>) {
    let tokens = cx.tokens;
    heading::says(ui, &cx.label("paper-tables-says"), &tokens);
    ui.horizontal_wrapped(|ui| {
        for listed in Listed::ALL {
            if button::plain(ui, &cx.label(listed.key()), &tokens).clicked() {
                cx.act(Action::Put(Put::Table(listed)));
            }
        }
    });
}

/// What has to be known before it is printed.
fn remarks(ui: &mut Ui, cx: &mut Cx<'_>) {
    let tokens = cx.tokens;
    if cx.reading {
        heading::says(ui, &cx.label("paper-pending"), &tokens);
    }
    if cx.view.paper.sort.goes_out() {
        heading::says(ui, &cx.label("paper-goes-out"), &tokens);
    }
    for complaint in cx.shown.iter().flat_map(|shown| &shown.complaints) {
        heading::says(ui, complaint, &tokens);
    }
}

fn preview(ui: &mut Ui, cx: &mut Cx<'_>, room: egui::Vec2) {
    let tokens = cx.tokens;
    let Some(Shown { laid: Some(laid), .. }) = cx.shown else {
        heading::empty(ui, &cx.label(cx.view.paper.sort.none_key()), &cx.label("paper-first"), &tokens);
        if button::plain(ui, &cx.label("do-open-sample"), &tokens).clicked() {
            cx.act(Action::OpenSample);
        }
        return;
    };
    let (at, count) = (cx.view.paper.leaf.min(laid.leaves.len().saturating_sub(1)), laid.leaves.len());
    turn(ui, cx, at, count);
    let [wide, high] = laid.format.size_mm();
    #[allow(clippy::cast_possible_truncation, reason = "a screen has few digits")]
    let fits = (room.y - 32.0) * (wide / high) as f32;
    let width = if cx.view.paper.wide { room.x } else { fits.min(room.x).max(180.0) };
    let says = cx.say("paper-says", &[("title", (&laid.title).into()), ("page", (at + 1).into()), ("pages", count.into())]);
    leaf(ui, laid, at, width, &says, &tokens);
}

/// From page to page, and how large.
fn turn(ui: &mut Ui, cx: &mut Cx<'_>, at: usize, count: usize) {
    let tokens = cx.tokens;
    ui.horizontal_wrapped(|ui| {
        if button::outlined(ui, &cx.label("paper-before"), &tokens, at > 0).clicked() {
            cx.look(move |view| view.paper.leaf = at.saturating_sub(1));
        }
        if button::outlined(ui, &cx.label("paper-next"), &tokens, at + 1 < count).clicked() {
            cx.look(move |view| view.paper.leaf = at + 1);
        }
        let words = cx.say("page-of", &[("page", (at + 1).into()), ("pages", count.into())]);
        ui.label(RichText::new(words).color(tokens.ink2));
        let wide = cx.view.paper.wide;
        if button::plain(ui, &cx.label(if wide { "paper-whole" } else { "paper-wide" }), &tokens).clicked() {
            cx.look(move |view| view.paper.wide = !wide);
        }
    });
}
