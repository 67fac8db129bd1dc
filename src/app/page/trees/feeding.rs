//! Feeding: what each row of pieces asks of its sprues, and whether main sprue and button stay liquid after them.

use eframe::egui::{Label, RichText, Ui, vec2};

use crate::app::cx::Cx;
use crate::app::widget::figure::{Look, figure};
use crate::app::widget::heading;
use crate::app::widget::row::{LABEL, row};
use crate::calc::FeedFigures;
use crate::job::Tree;

/// Width of a column.
const COLUMN: f32 = 120.0;

/// Rows that are shown.
const MOST: usize = 40;

/// Shows it, folded, where anything on the tree is thick enough to need it.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>, tree: &Tree, feed: &FeedFigures) {
    if feed.rows.is_empty() {
        return;
    }
    let feed = feed.clone();
    cx.folded(ui, "trees-feeding", |ui, cx| {
        let tokens = cx.tokens;
        heading::says(ui, &cx.label("trees-feeding-says"), &tokens);
        let look = Look { right: false, ..Look::ROW.width(COLUMN) };
        ui.horizontal(|ui| {
            ui.add_space(LABEL + ui.spacing().item_spacing.x);
            for key in ["trees-feeding-piece", "trees-feeding-sprue", "trees-feeding-needed"] {
                ui.allocate_ui(vec2(COLUMN, 18.0), |ui| {
                    ui.set_min_width(COLUMN);
                    ui.add(Label::new(RichText::new(cx.label(key)).size(12.0).color(tokens.ink2)).truncate());
                });
            }
        });
        for fed in feed.rows.iter().take(MOST) {
            let hung = usize::try_from(fed.row).ok().and_then(|row| tree.pieces.get(row.checked_sub(1)?));
            let line = hung.and_then(|hung| cx.job.lines().find(|(_, line)| line.id == hung.line));
            let design = line.map_or_else(String::new, |(_, line)| line.design.clone());
            row(ui, &design, &tokens, |ui| {
                figure(ui, cx, fed.modulus, look);
                figure(ui, cx, fed.feed, look);
                figure(ui, cx, fed.needed, look);
            });
        }
        if let Some(trunk) = feed.trunk {
            row(ui, &cx.label("trees-feeding-trunk"), &tokens, |ui| figure(ui, cx, trunk, look));
        }
        if let Some([button, needed]) = feed.button {
            row(ui, &cx.label("trees-feeding-button"), &tokens, |ui| {
                figure(ui, cx, button, look);
                figure(ui, cx, needed, look);
            });
        }
    });
}
