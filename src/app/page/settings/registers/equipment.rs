//! Everything that wears or is checked: bases with their tares, crucibles with their family and melts, kilns with their offsets, scales,
//! gaskets, pumps and their oil.

use eframe::egui::{Id, Ui};
use jiff::civil::Date;

use super::{WIDE, due, when};
use crate::app::cx::Cx;
use crate::app::page::settings::kept::{keep, kept};
use crate::app::theme::STEP;
use crate::app::widget::choice::choice;
use crate::app::widget::moment::day;
use crate::app::widget::number::{Number, count, grams, signed};
use crate::app::widget::row::row;
use crate::app::widget::rows::{choose, rows};
use crate::app::widget::text::{notes, text};
use crate::app::widget::{button, heading};
use crate::calc::checks::{CheckOf, next_checks};
use crate::job::Equipment;
use crate::quantity::{Finite, Grams, Kind};
use crate::stock::{Base, Crucible, EntryId, Kiln};

fn chosen_id() -> Id {
    Id::unique("register-equipment-chosen")
}

/// Shows the section.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>) {
    let tokens = cx.tokens;
    heading::says(ui, &cx.label("register-equipment-says"), &tokens);
    let all = &cx.studio.equipment;
    let of = |of: CheckOf| if let CheckOf::Equipment(at) = of { Some(name(cx, &all[at])) } else { None };
    due(ui, cx, of, "register-check-due");
    let chosen = kept(ui, chosen_id()).parse().ok().filter(|at| *at < all.len()).or((!all.is_empty()).then_some(0));
    let checks = next_checks(cx.studio, cx.setting.at);
    rows(ui, "register-equipment", all.len(), |ui, at| {
        let next = checks.iter().find(|check| check.of == CheckOf::Equipment(at)).map(|check| when(cx, check.over));
        let uses = (all[at].uses > 0).then(|| cx.say("register-used", &[("count", u64::from(all[at].uses).into())]));
        let words = [all[at].kind.trim(), all[at].family.trim()].into_iter().filter(|words| !words.is_empty()).map(str::to_owned);
        let about: Vec<String> = words.chain(uses).chain(next.map(|next| cx.say("register-check", &[("when", next.into())]))).collect();
        if choose(ui, cx, chosen == Some(at), &name(cx, &all[at]), &about.join(", ")) {
            keep(ui, chosen_id(), at.to_string());
        }
    });
    if button::plain(ui, &cx.label("register-equipment-add"), &tokens).clicked() {
        keep(ui, chosen_id(), all.len().to_string());
        cx.edit_studio("edit-register-add", |studio| studio.equipment.push(Equipment::default()));
    }
    if let Some(at) = chosen {
        let item = all[at].clone();
        ui.add_space(2.0 * STEP);
        one(ui, cx, at, &item);
        ui.horizontal_wrapped(|ui| {
            if button::plain(ui, &cx.label("register-checked-today"), &tokens).clicked() {
                let today = cx.setting.at;
                edit(cx, at, move |item| checked(item, today));
            }
            if button::plain(ui, &cx.label("register-equipment-out"), &tokens).clicked() {
                cx.edit_studio("edit-register-out", move |studio| {
                    if at < studio.equipment.len() {
                        studio.equipment.remove(at);
                    }
                });
            }
        });
    }
}

/// Checked today: the next check is as far ahead as it was from the last.
fn checked(item: &mut Equipment, today: Date) {
    let apart = item.checked.zip(item.next_check).and_then(|(last, next)| last.until(next).ok()).filter(|span| span.is_positive());
    item.next_check = apart.and_then(|span| today.checked_add(span).ok());
    item.checked = Some(today);
}

fn name(cx: &Cx<'_>, item: &Equipment) -> String {
    if item.label.trim().is_empty() { cx.label("register-unnamed") } else { item.label.clone() }
}

/// Sets something of it.
type Set<T> = fn(&mut Equipment, T);
/// A field: its label, what stands there, and how it is set.
type Field<T> = (&'static str, Option<T>, Set<Option<T>>);

fn one(ui: &mut Ui, cx: &mut Cx<'_>, at: usize, item: &Equipment) {
    let tokens = cx.tokens;
    let words: [(&str, &String, f32, Set<String>); 3] = [
        ("register-label", &item.label, WIDE, |item, words| item.label = words),
        ("register-kind", &item.kind, 132.0, |item, words| item.kind = words),
        ("register-family", &item.family, 132.0, |item, words| item.family = words),
    ];
    for (key, now, width, set) in words {
        let label = cx.label(key);
        if let Some(said) = row(ui, &label, &tokens, |ui| text(ui, cx, Id::unique((key, at)), &label, now, width)) {
            edit(cx, at, move |item| set(item, said));
        }
    }
    let label = cx.label("register-entry");
    let shelf = &cx.computed.shelves.today;
    let kilns = shelf.all::<Kiln>().map(|kiln| (kiln.id.clone(), kiln.name.clone()));
    let crucibles = shelf.all::<Crucible>().map(|crucible| (crucible.id.clone(), crucible.name.clone()));
    let bases = shelf.all::<Base>().map(|base| (base.id.clone(), base.name.clone()));
    let options: Vec<(EntryId, String)> = kilns.chain(crucibles).chain(bases).collect();
    let place = (Id::unique(("register-entry", at)), label.as_str(), WIDE);
    if let Some(entry) = row(ui, &label, &tokens, |ui| choice(ui, cx, place, item.entry.as_ref(), &options, true)) {
        edit(cx, at, move |item| item.entry = entry);
    }
    numbers(ui, cx, at, item);
    let days: [Field<Date>; 2] = [
        ("register-checked", item.checked, |item, day| item.checked = day),
        ("register-next", item.next_check, |item, day| item.next_check = day),
    ];
    for (key, now, set) in days {
        let label = cx.label(key);
        if let Some(said) = row(ui, &label, &tokens, |ui| day(ui, cx, Id::unique((key, at)), &label, now, 132.0)) {
            edit(cx, at, move |item| set(item, said));
        }
    }
    let label = cx.label("register-notes");
    if let Some(said) = row(ui, &label, &tokens, |ui| notes(ui, cx, Id::unique(("register-notes", at)), &label, &item.notes, 320.0)) {
        edit(cx, at, move |item| item.notes = said);
    }
}

fn numbers(ui: &mut Ui, cx: &mut Cx<'_>, at: usize, item: &Equipment) {
    let tokens = cx.tokens;
    let weights: [Field<Grams>; 2] = [
        ("register-tare", item.tare, |item, weight| item.tare = weight),
        ("register-resolution", item.resolution, |item, weight| item.resolution = weight),
    ];
    for (key, now, set) in weights {
        let label = cx.label(key);
        let field = Number::new(Id::unique((key, at)), &label, Kind::Mass).now(now.map(Grams::to_f64));
        if let Some(weight) = row(ui, &label, &tokens, |ui| grams(ui, cx, &field)) {
            edit(cx, at, move |item| set(item, weight));
        }
    }
    let label = cx.label("register-offset");
    let field = Number::new(Id::unique(("register-offset", at)), &label, Kind::TemperatureDifference).now(item.offset_k.map(Finite::get));
    if let Some(offset) = row(ui, &label, &tokens, |ui| signed(ui, cx, &field, true)) {
        edit(cx, at, move |item| item.offset_k = offset);
    }
    let label = cx.label("register-uses");
    let field = Number::new(Id::unique(("register-uses", at)), &label, Kind::Count).now(Some(f64::from(item.uses)));
    if let Some(uses) = row(ui, &label, &tokens, |ui| count(ui, cx, &field)) {
        edit(cx, at, move |item| item.uses = uses.unwrap_or(0));
    }
}

fn edit(cx: &mut Cx<'_>, at: usize, change: impl FnOnce(&mut Equipment) + 'static) {
    cx.edit_studio("edit-register", move |studio| {
        if let Some(item) = studio.equipment.get_mut(at) {
            change(item);
        }
    });
}

#[cfg(test)]
mod tests {
    use super::*;
    use jiff::civil::date;

    #[test]
    fn the_next_check_is_as_far_ahead_as_the_last_was() {
        let mut item = Equipment { checked: Some(date(2026, 5, 1)), next_check: Some(date(2026, 8, 1)), ..Equipment::default() };
        checked(&mut item, date(2026, 11, 28));
        assert_eq!((item.checked, item.next_check), (Some(date(2026, 11, 28)), Some(date(2027, 2, 28))));
        let mut never = Equipment { next_check: Some(date(2026, 8, 1)), ..Equipment::default() };
        checked(&mut never, date(2026, 11, 28));
        assert_eq!((never.checked, never.next_check), (Some(date(2026, 11, 28)), None));
    }
}
