//! The pattern's file: where it lies, what unit it is drawn in, how it is scaled.

use eframe::egui::{Id, Ui};

use super::change;
use crate::app::cx::Cx;
use crate::app::widget::choice::choice;
use crate::app::widget::number::{Number, number};
use crate::app::widget::row::row;
use crate::app::widget::text::text;
use crate::job::{FileUnit, Pattern, PatternFile};
use crate::quantity::{Finite, Kind};

/// Shows it.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>, pattern: &Pattern) {
    let (tokens, id) = (cx.tokens, pattern.id);
    let now = pattern.file.clone().unwrap_or_default();
    let label = cx.label("patterns-path");
    if let Some(path) = row(ui, &label, &tokens, |ui| text(ui, cx, Id::unique(("pattern-path", id.0)), &label, &now.path, 320.0)) {
        change(cx, "edit-patterns-path", id, move |pattern| {
            // Another file was never looked at: the hash of the old one says nothing of it.
            let file = PatternFile { path, hash: None, kept: None, ..pattern.file.clone().unwrap_or_default() };
            pattern.file = Some(file).filter(|file| !file.path.is_empty());
        });
    }
    if pattern.file.is_none() {
        return;
    }
    let label = cx.label("patterns-unit");
    let options: Vec<(FileUnit, String)> =
        [(FileUnit::Millimetre, "patterns-mm"), (FileUnit::Centimetre, "patterns-cm"), (FileUnit::Inch, "patterns-inch")]
            .map(|(unit, key)| (unit, cx.label(key)))
            .into();
    let place = (Id::unique(("pattern-unit", id.0)), label.as_str(), 132.0);
    if let Some(Some(unit)) = row(ui, &label, &tokens, |ui| choice(ui, cx, place, Some(&now.unit), &options, false)) {
        change(cx, "edit-patterns-unit", id, move |pattern| {
            if let Some(file) = &mut pattern.file {
                file.unit = unit;
            }
        });
    }
    let label = cx.label("patterns-scale");
    let field = Number::new(Id::unique(("pattern-scale", id.0)), &label, Kind::Ratio).now(now.scale.map(Finite::get)).default(Some(1.0));
    if let Some(scale) = row(ui, &label, &tokens, |ui| number(ui, cx, &field)) {
        change(cx, "edit-patterns-scale", id, move |pattern| {
            if let Some(file) = &mut pattern.file {
                file.scale = scale;
            }
        });
    }
    let label = cx.label("patterns-file-bore");
    let field = Number::new(Id::unique(("pattern-file-bore", id.0)), &label, Kind::Length).now(now.bore_mm.map(Finite::get));
    if let Some(bore) = row(ui, &label, &tokens, |ui| number(ui, cx, &field)) {
        change(cx, "edit-patterns-file-bore", id, move |pattern| {
            if let Some(file) = &mut pattern.file {
                file.bore_mm = bore;
            }
        });
    }
}
