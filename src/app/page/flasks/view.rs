//! The drawing of a flask on its page: in section and from above, with its key; in words what is missing.

use eframe::egui::{RichText, Sense, Ui, vec2};

use crate::app::cx::Cx;
use crate::app::names;
use crate::app::theme::STEP;
use crate::app::widget::drawing::{colour, drawing};
use crate::app::widget::heading;
use crate::calc::FlaskFigures;
use crate::drawing::flask::{from_above, section};
use crate::drawing::primitive::Role;
use crate::job::Flask;
use crate::paper::{Drawn, plan};

/// Shows it.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>, flask: &Flask, width: f32) {
    let tokens = cx.tokens;
    let Some(figures) = super::figures_of(cx, flask.id) else { return };
    let Some(drawn) = plan(&cx.sheet_input(), flask, figures) else {
        ui.add_space(2.0 * STEP);
        heading::says(ui, &cx.label("flasks-drawing-no-vessel"), &tokens);
        return;
    };
    let says = sentence(cx, flask, &drawn);
    ui.label(RichText::new(cx.label("flasks-section-to-scale")).size(12.0).color(tokens.ink2));
    let wide = width.clamp(200.0, 460.0);
    drawing(ui, &section(&drawn.plan), vec2(wide, 420.0), &says, &tokens);
    ui.add_space(STEP);
    ui.label(RichText::new(cx.label("flasks-above-to-scale")).size(12.0).color(tokens.ink2));
    let above = cx.say("flasks-drawing-above", &[("flask", names::flask(cx, flask.id).into())]);
    drawing(ui, &from_above(&drawn.plan), vec2(wide, 200.0), &above, &tokens);
    key(ui, cx, &drawn);
    if drawn.plan.tree_diameter_mm.is_none() || drawn.plan.tree_height_mm.is_none() {
        heading::says(ui, &missing(cx, flask, figures), &tokens);
    } else if drawn.plan.trunk.is_none() {
        heading::says(ui, &cx.label("flasks-drawing-outline"), &tokens);
    } else if !drawn.known {
        heading::says(ui, &cx.label("trees-standing-guessed"), &tokens);
    } else if !drawn.said {
        heading::says(ui, &cx.label("flasks-drawing-spread"), &tokens);
    }
    if drawn.more > 0 {
        heading::says(ui, &cx.say("flasks-drawing-more", &[("count", drawn.more.into())]), &tokens);
    }
}

/// The colours of the orders.
fn key(ui: &mut Ui, cx: &Cx<'_>, drawn: &Drawn) {
    let tokens = cx.tokens;
    ui.horizontal_wrapped(|ui| {
        for (place, id) in drawn.orders.iter().enumerate() {
            let client = cx.job.orders.iter().find(|order| order.id == *id).map(|order| order.client.clone()).unwrap_or_default();
            let words = cx.say("flasks-key", &[("place", (place + 1).into()), ("order", id.to_string().into()), ("client", client.into())]);
            ui.horizontal(|ui| {
                let (rect, _) = ui.allocate_exact_size(vec2(12.0, 12.0), Sense::hover());
                ui.painter().rect_filled(rect, 2, colour(Role::Piece(place), &tokens));
                ui.label(RichText::new(words).size(12.0).color(tokens.ink2));
            });
        }
    });
}

/// The drawing in a sentence, for those who hear the window.
fn sentence(cx: &Cx<'_>, flask: &Flask, drawn: &Drawn) -> String {
    let unknown = cx.label("flasks-drawing-unknown");
    let (wall, above) = (drawn.plan.wall.as_ref(), drawn.plan.above.as_ref());
    cx.say(
        "flasks-drawing-says",
        &[
            ("flask", names::flask(cx, flask.id).into()),
            ("size", drawn.plan.labels.size.clone().into()),
            ("wall", wall.map_or_else(|| unknown.clone(), |room| room.words.clone()).into()),
            ("above", above.map_or_else(|| unknown.clone(), |room| room.words.clone()).into()),
            ("count", drawn.plan.pieces.len().into()),
        ],
    )
}

/// What has to be known before the room around the tree is.
#[must_use]
pub fn missing(cx: &Cx<'_>, flask: &Flask, figures: &FlaskFigures) -> String {
    if figures.size_mm.is_none() {
        return cx.label("flasks-missing-vessel");
    }
    let Some(tree) = flask.tree.and_then(|id| cx.computed.report.trees.iter().find(|tree| tree.id == id)) else {
        return cx.label("flasks-missing-tree");
    };
    cx.label(match (tree.outline.diameter, tree.outline.height) {
        (None, None) => "flasks-missing-both",
        (None, Some(_)) => "flasks-missing-diameter",
        (Some(_), None) => "flasks-missing-height",
        (Some(_), Some(_)) => "flasks-missing-number",
    })
}
