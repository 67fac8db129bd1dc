//! What the scale says of a tree, each material apart.

use eframe::egui::{Id, Ui};

use super::change;
use crate::app::cx::Cx;
use crate::app::widget::choice::entry_of;
use crate::app::widget::figure::{Look, figure};
use crate::app::widget::row::row;
use crate::app::widget::rows::numbered;
use crate::app::widget::text::text;
use crate::app::widget::weighing::{Weighed, weighing};
use crate::app::widget::{button, heading};
use crate::job::{Place, Tree, TreeId, WeighedPart};
use crate::stock::PatternMaterial;

/// Shows them.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>, tree: &Tree) {
    let (tokens, id) = (cx.tokens, tree.id);
    heading::group(ui, &cx.label("trees-weighed"), &tokens);
    if tree.weighed.is_empty() {
        heading::says(ui, &cx.label("trees-weighed-none"), &tokens);
    }
    for place in 0..tree.weighed.len() {
        part(ui, cx, tree, place);
        ui.add_space(4.0);
    }
    if button::plain(ui, &cx.label("trees-weigh"), &tokens).clicked() {
        change(cx, "edit-trees-weigh", id, |tree| tree.weighed.push(WeighedPart::default()));
    }
}

fn edit(cx: &mut Cx<'_>, key: &str, (id, place): (TreeId, usize), with: impl FnOnce(&mut WeighedPart) + 'static) {
    change(cx, key, id, move |tree| {
        if let Some(part) = tree.weighed.get_mut(place) {
            with(part);
        }
    });
}

fn part(ui: &mut Ui, cx: &mut Cx<'_>, tree: &Tree, place: usize) {
    let (tokens, id, part) = (cx.tokens, tree.id, &tree.weighed[place]);
    let at = (id, place);
    let label = cx.label("trees-material");
    let words = |material: &PatternMaterial| (material.id.clone(), material.name.clone());
    row(ui, &label, &tokens, |ui| {
        let name = numbered(&label, place);
        let field = (Id::unique(("part-material", id.0, place)), name.as_str(), 200.0);
        if let Some(material) = entry_of(ui, cx, field, part.material.as_ref(), words) {
            edit(cx, "edit-trees-material", at, move |part| part.material = material);
        }
        let remove = button::link(ui, &cx.label("trees-part-remove"), &tokens);
        if remove.accessible_name(numbered(&cx.label("trees-part-take-out"), place)).clicked() {
            change(cx, "edit-trees-part-remove", id, move |tree| {
                if place < tree.weighed.len() {
                    tree.weighed.remove(place);
                }
            });
        }
    });
    weight(ui, cx, part, at);
    let label = cx.label("trees-scale");
    let field = Id::unique(("part-scale", id.0, place));
    if let Some(scale) = row(ui, &label, &tokens, |ui| text(ui, cx, field, &numbered(&label, place), &part.scale, 132.0)) {
        edit(cx, "edit-trees-scale", at, move |part| part.scale = scale);
    }
    let row_number = u32::try_from(place).unwrap_or(u32::MAX).saturating_add(1);
    let figures = cx.computed.report.trees.iter().find(|figures| figures.id == id && figures.weighed);
    let here = figures.and_then(|figures| figures.parts.iter().find(|part| part.place == Place::TreeRow(id, row_number)));
    if let Some((net, volume)) = here.map(|part| (part.weight, part.volume)) {
        if let Some(net) = net {
            row(ui, &cx.label("trees-part-net"), &tokens, |ui| figure(ui, cx, net, Look::ROW));
        }
        row(ui, &cx.label("trees-part-volume"), &tokens, |ui| figure(ui, cx, volume, Look::ROW));
    }
}

/// The weight with its tare, or alone.
fn weight(ui: &mut Ui, cx: &mut Cx<'_>, part: &WeighedPart, at: (TreeId, usize)) {
    let (id, place) = at;
    let [weight, way, tare] = ["trees-weight", "trees-way", "trees-tare"].map(|key| cx.label(key));
    let [alone, under] = ["trees-net", "trees-gross"].map(|key| cx.label(key));
    let which = (place + 1).to_string();
    // A tree is weighed on its base; a material weighed apart from the others has none under it.
    let of = Weighed {
        id: Id::unique(("part-weighed", id.0, place)),
        labels: [&weight, &way, &tare],
        which: &which,
        ways: [&alone, &under],
        now: part.weight,
        alone: place > 0,
    };
    if let Some(weighed) = weighing(ui, cx, &of) {
        edit(cx, "edit-trees-part-weight", at, move |part| part.weight = weighed);
    }
}
