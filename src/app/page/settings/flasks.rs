//! The flasks the studio has, and how its trees are usually built: what a batch plan is reckoned with.

use eframe::egui::{Id, Ui};

use crate::app::cx::Cx;
use crate::app::theme::STEP;
use crate::app::widget::choice::entry_of;
use crate::app::widget::number::{Number, count, number};
use crate::app::widget::row::row;
use crate::app::widget::rows::numbered;
use crate::app::widget::{button, heading};
use crate::calc::batch::{FEED_ANGLE_DEFAULT, FEED_DIAMETER_DEFAULT, FEED_LENGTH_DEFAULT, GAP_DEFAULT, MAIN_DIAMETER_DEFAULT};
use crate::calc::rule::Given;
use crate::job::{FlaskStock, UsualTree};
use crate::quantity::{Finite, Kind};
use crate::stock::Flask;

/// Width of a choice.
const WIDE: f32 = 200.0;
/// Width of a count.
const COUNT: f32 = 72.0;

/// Shows the section.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>) {
    let tokens = cx.tokens;
    heading::says(ui, &cx.label("stock-says"), &tokens);
    let stock = cx.studio.flasks.clone();
    for (place, one) in stock.iter().enumerate() {
        ui.horizontal_wrapped(|ui| stock_row(ui, cx, place, one));
    }
    if button::plain(ui, &cx.label("stock-add"), &tokens).clicked() {
        cx.edit_studio("edit-stock-add", |studio| studio.flasks.push(FlaskStock::default()));
    }
    ui.add_space(STEP);
    heading::group(ui, &cx.label("usual-tree"), &tokens);
    usual_tree(ui, cx);
}

fn stock_row(ui: &mut Ui, cx: &mut Cx<'_>, place: usize, one: &FlaskStock) {
    let tokens = cx.tokens;
    let label = numbered(&cx.label("stock-flask"), place);
    let words = |flask: &Flask| (flask.id.clone(), flask.name.clone());
    let field = (Id::unique(("stock-flask", place)), label.as_str(), WIDE);
    if let Some(entry) = entry_of(ui, cx, field, one.entry.as_ref(), words) {
        edit(cx, place, move |stock| stock.entry = entry);
    }
    let label = numbered(&cx.label("stock-count"), place);
    let field = Number::new(Id::unique(("stock-count", place)), &label, Kind::Count).now(one.count.map(f64::from)).width(COUNT);
    if let Some(many) = count(ui, cx, &field) {
        edit(cx, place, move |stock| stock.count = many);
    }
    let name = numbered(&cx.label("stock-out"), place);
    if button::link(ui, &cx.label("row-take-out"), &tokens).accessible_name(name).clicked() {
        cx.edit_studio("edit-stock-out", move |studio| {
            if place < studio.flasks.len() {
                studio.flasks.remove(place);
            }
        });
    }
}

fn edit(cx: &mut Cx<'_>, place: usize, change: impl FnOnce(&mut FlaskStock) + 'static) {
    cx.edit_studio("edit-stock", move |studio| {
        if let Some(stock) = studio.flasks.get_mut(place) {
            change(stock);
        }
    });
}

/// Sets a number of the usual tree.
type Set = fn(&mut UsualTree, Option<Finite>);

fn usual_tree(ui: &mut Ui, cx: &mut Cx<'_>) {
    let tokens = cx.tokens;
    let now = cx.studio.usual_tree.clone();
    let fields: [(&str, Kind, Option<Finite>, &Given, Set); 5] = [
        ("usual-main", Kind::Length, now.main_diameter_mm, &MAIN_DIAMETER_DEFAULT, |tree, mm| tree.main_diameter_mm = mm),
        ("usual-feed-width", Kind::Length, now.feed_diameter_mm, &FEED_DIAMETER_DEFAULT, |tree, mm| tree.feed_diameter_mm = mm),
        ("usual-feed", Kind::Length, now.feed_length_mm, &FEED_LENGTH_DEFAULT, |tree, mm| tree.feed_length_mm = mm),
        ("usual-angle", Kind::Angle, now.feed_angle_deg, &FEED_ANGLE_DEFAULT, |tree, deg| tree.feed_angle_deg = deg),
        ("usual-gap", Kind::Length, now.gap_mm, &GAP_DEFAULT, |tree, mm| tree.gap_mm = mm),
    ];
    for (key, kind, now, given, set) in fields {
        let label = cx.label(key);
        let field = Number::new(Id::unique(key), &label, kind).now(now.map(Finite::get)).default(Some(given.value));
        if let Some(value) = row(ui, &label, &tokens, |ui| number(ui, cx, &field)) {
            cx.edit_studio("edit-usual-tree", move |studio| set(&mut studio.usual_tree, value));
        }
    }
    heading::says(ui, &cx.label("usual-says"), &tokens);
}
