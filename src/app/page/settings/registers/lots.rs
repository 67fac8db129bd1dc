//! Lots of powder, resin and wax: what they are, when they were opened, until when they are good, and what was measured of them.

use eframe::egui::{Id, Ui};
use jiff::civil::Date;

use super::{WIDE, age, due};
use crate::app::cx::Cx;
use crate::app::names;
use crate::app::page::settings::kept::{keep, kept};
use crate::app::theme::STEP;
use crate::app::widget::choice::choice;
use crate::app::widget::moment::day;
use crate::app::widget::number::{Number, number};
use crate::app::widget::row::row;
use crate::app::widget::rows::{choose, rows};
use crate::app::widget::text::{notes, text};
use crate::app::widget::{button, heading};
use crate::calc::checks::CheckOf;
use crate::job::{MaterialLot, Studio};
use crate::quantity::{Finite, Kind};
use crate::stock::{EntryId, PatternMaterial, Powder};

fn chosen_id() -> Id {
    Id::unique("register-lots-chosen")
}

/// Shows the section.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>) {
    let tokens = cx.tokens;
    heading::says(ui, &cx.label("register-lots-says"), &tokens);
    let lots = &cx.studio.materials;
    let of = |of: CheckOf| if let CheckOf::Lot(at) = of { Some(name(cx, &lots[at])) } else { None };
    due(ui, cx, of, "register-lot-until");
    let chosen = kept(ui, chosen_id()).parse().ok().filter(|at| *at < lots.len()).or((!lots.is_empty()).then_some(0));
    rows(ui, "register-lots", lots.len(), |ui, at| {
        let what = lots[at].entry.as_ref().map(|id| names::entry(cx, id));
        let about: Vec<String> = what.into_iter().chain(age(cx, lots[at].opened)).collect();
        if choose(ui, cx, chosen == Some(at), &name(cx, &lots[at]), &about.join(", ")) {
            keep(ui, chosen_id(), at.to_string());
        }
    });
    if button::plain(ui, &cx.label("register-lot-add"), &tokens).clicked() {
        keep(ui, chosen_id(), lots.len().to_string());
        let label = free_label(cx.studio);
        let opened = Some(cx.setting.at);
        cx.edit_studio("edit-register-add", move |studio| studio.materials.push(MaterialLot { label, opened, ..MaterialLot::default() }));
    }
    if let Some(at) = chosen {
        let lot = lots[at].clone();
        ui.add_space(2.0 * STEP);
        one(ui, cx, at, &lot);
        if button::plain(ui, &cx.label("register-lot-out"), &tokens).clicked() {
            cx.edit_studio("edit-register-out", move |studio| {
                if at < studio.materials.len() {
                    studio.materials.remove(at);
                }
            });
        }
    }
}

fn name(cx: &Cx<'_>, lot: &MaterialLot) -> String {
    if lot.label.trim().is_empty() { cx.label("register-unnamed") } else { lot.label.clone() }
}

/// A label that no lot carries.
fn free_label(studio: &Studio) -> String {
    let taken = |name: &str| studio.materials.iter().any(|lot| lot.label.trim() == name);
    (1..u32::MAX).map(|number| format!("P-{number:02}")).find(|name| !taken(name)).unwrap_or_default()
}

/// Sets a day of it.
type Set = fn(&mut MaterialLot, Option<Date>);

fn one(ui: &mut Ui, cx: &mut Cx<'_>, at: usize, lot: &MaterialLot) {
    let tokens = cx.tokens;
    let label = cx.label("register-lot-label");
    if let Some(words) = row(ui, &label, &tokens, |ui| text(ui, cx, Id::unique(("register-lot-label", at)), &label, &lot.label, 132.0)) {
        edit(cx, at, move |lot| lot.label = words);
    }
    let label = cx.label("register-lot-of");
    let shelf = &cx.computed.shelves.today;
    let powders = shelf.all::<Powder>().map(|powder| (powder.id.clone(), powder.name.clone()));
    let options: Vec<(EntryId, String)> =
        powders.chain(shelf.all::<PatternMaterial>().map(|material| (material.id.clone(), material.name.clone()))).collect();
    let place = (Id::unique(("register-lot-of", at)), label.as_str(), WIDE);
    if let Some(entry) = row(ui, &label, &tokens, |ui| choice(ui, cx, place, lot.entry.as_ref(), &options, true)) {
        edit(cx, at, move |lot| lot.entry = entry);
    }
    let days: [(&str, Option<Date>, Set); 2] =
        [("register-opened", lot.opened, |lot, day| lot.opened = day), ("register-until", lot.until, |lot, day| lot.until = day)];
    for (key, now, set) in days {
        let label = cx.label(key);
        if let Some(said) = row(ui, &label, &tokens, |ui| day(ui, cx, Id::unique((key, at)), &label, now, 132.0)) {
            edit(cx, at, move |lot| set(lot, said));
        }
    }
    let label = cx.label("register-gloss-off");
    let field = Number::new(Id::unique(("register-gloss-off", at)), &label, Kind::Duration).now(lot.gloss_off_min.map(Finite::get));
    if let Some(minutes) = row(ui, &label, &tokens, |ui| number(ui, cx, &field)) {
        edit(cx, at, move |lot| lot.gloss_off_min = minutes);
    }
    let label = cx.label("register-lot-notes");
    if let Some(said) = row(ui, &label, &tokens, |ui| notes(ui, cx, Id::unique(("register-lot-notes", at)), &label, &lot.notes, 320.0)) {
        edit(cx, at, move |lot| lot.notes = said);
    }
}

fn edit(cx: &mut Cx<'_>, at: usize, change: impl FnOnce(&mut MaterialLot) + 'static) {
    cx.edit_studio("edit-register", move |studio| {
        if let Some(lot) = studio.materials.get_mut(at) {
            change(lot);
        }
    });
}
