//! What a pattern is.

use eframe::egui::{Checkbox, Id, Ui};

use super::{change, pair, remove};
use crate::app::cx::Cx;
use crate::app::page::take_out::take_out;
use crate::app::widget::choice::{choice, entry_of};
use crate::app::widget::heading;
use crate::app::widget::number::{Number, number};
use crate::app::widget::row::row;
use crate::app::widget::text::{notes, text};
use crate::job::{Extents, Making, Pattern, Place};
use crate::quantity::{Finite, Kind};
use crate::stock::{PatternMaterial, Section};

/// Width of a choice.
const WIDE: f32 = 240.0;

/// Sets what a tick says of a pattern.
type Tick = fn(&mut Pattern, bool);

/// Name and material.
pub fn what(ui: &mut Ui, cx: &mut Cx<'_>, pattern: &Pattern) {
    let (tokens, id) = (cx.tokens, pattern.id);
    let label = cx.label("patterns-name");
    if let Some(name) = row(ui, &label, &tokens, |ui| text(ui, cx, Id::unique(("pattern-name", id.0)), &label, &pattern.name, WIDE)) {
        change(cx, "edit-patterns-name", id, move |pattern| pattern.name = name);
    }
    let label = cx.label("patterns-material");
    let words = |material: &PatternMaterial| (material.id.clone(), material.name.clone());
    let place = (Id::unique(("pattern-material", id.0)), label.as_str(), WIDE);
    if let Some(material) = row(ui, &label, &tokens, |ui| entry_of(ui, cx, place, pattern.material.as_ref(), words)) {
        change(cx, "edit-patterns-material", id, move |pattern| pattern.material = material);
    }
}

/// What most patterns do not need.
pub fn more(ui: &mut Ui, cx: &mut Cx<'_>, pattern: &Pattern) {
    let (tokens, id) = (cx.tokens, pattern.id);
    let label = cx.label("patterns-section");
    let options: Vec<(Section, String)> = [
        (Section::Filigree, "section-filigree"),
        (Section::Thin, "section-thin"),
        (Section::Medium, "section-medium"),
        (Section::Heavy, "section-heavy"),
    ]
    .map(|(section, key)| (section, cx.label(key)))
    .into();
    let place = (Id::unique(("pattern-section", id.0)), label.as_str(), WIDE);
    if let Some(section) = row(ui, &label, &tokens, |ui| choice(ui, cx, place, pattern.section.as_ref(), &options, true)) {
        change(cx, "edit-patterns-section", id, move |pattern| pattern.section = section);
    }
    let label = cx.label("patterns-thinnest");
    let field = Number::new(Id::unique(("pattern-thinnest", id.0)), &label, Kind::Length).now(pattern.thinnest_mm.map(Finite::get));
    if let Some(thinnest) = row(ui, &label, &tokens, |ui| number(ui, cx, &field)) {
        change(cx, "edit-patterns-thinnest", id, move |pattern| pattern.thinnest_mm = thinnest);
    }
    extents(ui, cx, pattern);
    ticks(ui, cx, pattern);
    making(ui, cx, pattern);
    let label = cx.label("patterns-mould");
    if let Some(mould) = row(ui, &label, &tokens, |ui| text(ui, cx, Id::unique(("pattern-mould", id.0)), &label, &pattern.mould, 132.0)) {
        change(cx, "edit-patterns-mould", id, move |pattern| pattern.mould = mould);
    }
    pair::choose(ui, cx, pattern);
    let label = cx.label("patterns-notes");
    if let Some(said) = row(ui, &label, &tokens, |ui| notes(ui, cx, Id::unique(("pattern-notes", id.0)), &label, &pattern.notes, 320.0)) {
        change(cx, "edit-patterns-notes", id, move |pattern| pattern.notes = said);
    }
    take_out(ui, cx, ("patterns-remove", "edit-patterns-remove"), Place::Pattern(id), move |job| remove(job, id));
}

/// Length along the sprue, across it, and the third way: they count once all three are there, and until then wait here.
fn extents(ui: &mut Ui, cx: &mut Cx<'_>, pattern: &Pattern) {
    let (tokens, id) = (cx.tokens, pattern.id);
    let key = Id::unique(("pattern-sides", id.0));
    let waiting: [Option<Finite>; 3] = ui.data(|data| data.get_temp(key)).unwrap_or_default();
    let now = pattern.extents_mm.map_or(waiting, |sides| [sides.along, sides.across, sides.deep].map(Some));
    for (place, words) in ["patterns-along-typed", "patterns-across-typed", "patterns-deep-typed"].into_iter().enumerate() {
        let label = cx.label(words);
        let field = Number::new(Id::unique((words, id.0)), &label, Kind::Length).now(now[place].map(Finite::get));
        let Some(side) = row(ui, &label, &tokens, |ui| number(ui, cx, &field)) else { continue };
        let mut sides = now;
        sides[place] = side;
        let [along, across, deep] = sides;
        let all = along.zip(across).zip(deep).map(|((along, across), deep)| Extents { along, across, deep });
        // What is in the document waits no more: undo must show.
        let waits = if all.is_some() { [None; 3] } else { sides };
        ui.data_mut(|data| data.insert_temp(key, waits));
        change(cx, "edit-patterns-extents", id, move |pattern| pattern.extents_mm = all);
    }
    let said = now.iter().flatten().count();
    if (1..3).contains(&said) {
        heading::says(ui, &cx.label("patterns-sides-wait"), &tokens);
    }
}

fn ticks(ui: &mut Ui, cx: &mut Cx<'_>, pattern: &Pattern) {
    let id = pattern.id;
    let ticks: [(&str, bool, Tick); 3] = [
        ("patterns-irreplaceable", pattern.irreplaceable, |pattern, on| pattern.irreplaceable = on),
        ("patterns-stones", pattern.stones, |pattern, on| pattern.stones = on),
        ("patterns-drained", pattern.void_drained, |pattern, on| pattern.void_drained = on),
    ];
    for (key, now, set) in ticks {
        let mut on = now;
        if ui.add(Checkbox::new(&mut on, cx.label(key))).changed() {
            change(cx, key, id, move |pattern| set(pattern, on));
        }
    }
}

fn making(ui: &mut Ui, cx: &mut Cx<'_>, pattern: &Pattern) {
    let (tokens, id) = (cx.tokens, pattern.id);
    let now = pattern.making.clone().unwrap_or_default();
    let label = cx.label("patterns-labour");
    let field = Number::new(Id::unique(("pattern-labour", id.0)), &label, Kind::Duration).now(now.labour_min.map(Finite::get));
    if let Some(minutes) = row(ui, &label, &tokens, |ui| number(ui, cx, &field)) {
        change(cx, "edit-patterns-making", id, move |pattern| {
            let making = Making { labour_min: minutes, ..pattern.making.clone().unwrap_or_default() };
            pattern.making = Some(making).filter(|making| *making != Making::default());
        });
    }
    let label = cx.label("patterns-waste");
    let field = Number::new(Id::unique(("pattern-waste", id.0)), &label, Kind::Ratio).now(now.waste_share.map(Finite::get));
    if let Some(share) = row(ui, &label, &tokens, |ui| number(ui, cx, &field)) {
        change(cx, "edit-patterns-making", id, move |pattern| {
            let making = Making { waste_share: share, ..pattern.making.clone().unwrap_or_default() };
            pattern.making = Some(making).filter(|making| *making != Making::default());
        });
    }
}
