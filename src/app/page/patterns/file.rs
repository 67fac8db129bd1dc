//! The pattern's file: where it lies, what unit it is drawn in, how it is scaled.

use eframe::egui::{Id, Ui};

use super::change;
use crate::app::action::Action;
use crate::app::cx::Cx;
use crate::app::widget::choice::choice;
use crate::app::widget::number::{Number, number};
use crate::app::widget::row::row;
use crate::app::widget::text::text;
use crate::app::widget::{button, order};
use crate::calc::{Arg, unit_key};
use crate::job::{FileUnit, InnerSolids, Pattern, PatternFile, PatternId, Place};
use crate::quantity::{Finite, Kind};

/// Units a file may be drawn in, the usual ones first.
const UNITS: [FileUnit; 6] =
    [FileUnit::Millimetre, FileUnit::Inch, FileUnit::Centimetre, FileUnit::Metre, FileUnit::Mil, FileUnit::Micrometre];

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
    corrections(ui, cx, pattern);
    let label = cx.label("patterns-unit");
    let options: Vec<(FileUnit, String)> = UNITS.map(|unit| (unit, cx.label(unit_key(unit)))).into();
    let place = (Id::unique(("pattern-unit", id.0)), label.as_str(), 132.0);
    if let Some(Some(unit)) = row(ui, &label, &tokens, |ui| choice(ui, cx, place, Some(&now.unit), &options, false)) {
        change(cx, "edit-patterns-unit", id, move |pattern| {
            if let Some(file) = &mut pattern.file {
                file.unit = unit;
            }
        });
    }
    inner(ui, cx, pattern);
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

/// What a solid inside another one was meant to be, once that was said; until then the question stands above.
fn inner(ui: &mut Ui, cx: &mut Cx<'_>, pattern: &Pattern) {
    let now = pattern.file.as_ref().map(|file| file.inner).unwrap_or_default();
    if now == InnerSolids::NotSaid {
        return;
    }
    let tokens = cx.tokens;
    let label = cx.label("patterns-inner");
    let options: Vec<(InnerSolids, String)> = [
        (InnerSolids::NotSaid, "patterns-inner-not-said"),
        (InnerSolids::Solid, "patterns-inner-solid"),
        (InnerSolids::Hollow, "patterns-inner-hollow"),
    ]
    .map(|(inner, key)| (inner, cx.label(key)))
    .into();
    let place = (Id::unique(("pattern-inner", pattern.id.0)), label.as_str(), 190.0);
    if let Some(Some(inner)) = row(ui, &label, &tokens, |ui| choice(ui, cx, place, Some(&now), &options, false)) {
        set_inner(cx, pattern.id, inner);
    }
}

fn set_inner(cx: &mut Cx<'_>, id: PatternId, inner: InnerSolids) {
    change(cx, "edit-patterns-inner", id, move |pattern| {
        if let Some(file) = &mut pattern.file {
            file.inner = inner;
        }
    });
}

/// What a finding about the file can be answered with at once.
fn corrections(ui: &mut Ui, cx: &mut Cx<'_>, pattern: &Pattern) {
    let (tokens, id) = (cx.tokens, pattern.id);
    let found: Vec<_> = cx.computed.at(Place::Pattern(id)).map(|found| (found.kind.key, found.args.clone())).collect();
    for (key, args) in found {
        match (key, args.last()) {
            ("file-changed", _) if button::plain(ui, &cx.label("patterns-take-file"), &tokens).clicked() => {
                cx.act(Action::TakeFile(id));
            }
            ("shells-nested", _) => {
                let answers = [("patterns-inner-is-solid", InnerSolids::Solid), ("patterns-inner-is-hollow", InnerSolids::Hollow)];
                ui.horizontal_wrapped(|ui| {
                    for (key, inner) in answers {
                        if button::plain(ui, &cx.label(key), &tokens).clicked() {
                            set_inner(cx, id, inner);
                            // The question goes; its answer takes the keys over.
                            order::focus(ui.ctx(), Id::unique(("pattern-inner", id.0)));
                        }
                    }
                });
            }
            ("sealed-void", _) if button::plain(ui, &cx.label("patterns-drained-do"), &tokens).clicked() => {
                change(cx, "patterns-drained", id, |pattern| pattern.void_drained = true);
            }
            ("file-unit", Some(Arg::Words(keys))) => {
                let Some(unit) = UNITS.into_iter().find(|unit| keys.first() == Some(&unit_key(*unit))) else { continue };
                let words = cx.say("patterns-set-unit", &[("unit", cx.label(unit_key(unit)).into())]);
                if button::plain(ui, &words, &tokens).clicked() {
                    change(cx, "edit-patterns-unit", id, move |pattern| {
                        if let Some(file) = &mut pattern.file {
                            file.unit = unit;
                        }
                    });
                }
            }
            _ => {}
        }
    }
}
