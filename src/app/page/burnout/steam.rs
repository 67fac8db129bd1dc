//! Steam before the kiln: each flask on the scale before and after it, wax out against wax in.

use eframe::egui::{Id, Ui};

use super::caution;
use crate::app::cx::Cx;
use crate::app::page::flasks;
use crate::app::widget::figure::{Look, figure};
use crate::app::widget::heading;
use crate::app::widget::number::{Number, grams};
use crate::app::widget::row::row;
use crate::calc::BurnoutFigures;
use crate::job::Burnout;
use crate::quantity::{Grams, Kind};

/// Shows it where the load is steamed.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>, load: &Burnout, figures: &BurnoutFigures) {
    if load.dewax_min.is_none() {
        return;
    }
    let tokens = cx.tokens;
    heading::group(ui, &cx.label("steam-heading"), &tokens);
    heading::says(ui, &cx.label("steam-says"), &tokens);
    caution(ui, cx, "caution-dewax-steam");
    let job = cx.job;
    for flask in job.flasks.iter().filter(|flask| flask.burnout == Some(load.id)) {
        let (name, id) = (crate::app::names::flask(cx, flask.id), flask.id);
        let [before, after] = ["steam-before", "steam-after"].map(|key| format!("{name}, {}", cx.label(key)));
        let field = Number::new(Id::unique(("steam-before", id.0)), &before, Kind::Mass).now(flask.before_dewax.map(Grams::to_f64));
        if let Some(weight) = row(ui, &before, &tokens, |ui| grams(ui, cx, &field)) {
            flasks::change(cx, "edit-steam-before", id, move |flask| flask.before_dewax = weight);
        }
        let field = Number::new(Id::unique(("steam-after", id.0)), &after, Kind::Mass).now(flask.after_dewax.map(Grams::to_f64));
        if let Some(weight) = row(ui, &after, &tokens, |ui| grams(ui, cx, &field)) {
            flasks::change(cx, "edit-steam-after", id, move |flask| flask.after_dewax = weight);
        }
        let Some((_, steam)) = figures.dewax.iter().find(|(of, _)| *of == id) else { continue };
        let rows =
            [Some(("steam-wax", steam.wax)), steam.out.map(|out| ("steam-out", out)), steam.share.map(|share| ("steam-share", share))];
        for (key, figure_id) in rows.into_iter().flatten() {
            row(ui, &cx.label(key), &tokens, |ui| figure(ui, cx, figure_id, Look::ROW));
        }
    }
}
