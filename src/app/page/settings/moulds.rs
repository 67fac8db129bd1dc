//! The register of rubber moulds, by their numbers.

use eframe::egui::{Id, Ui};

use super::kept::{keep, kept};
use crate::app::cx::Cx;
use crate::app::theme::STEP;
use crate::app::widget::choice::entry_of;
use crate::app::widget::number::{Number, grams, number};
use crate::app::widget::row::row;
use crate::app::widget::rows::{choose, rows};
use crate::app::widget::text::{notes, text};
use crate::app::widget::{button, heading};
use crate::calc::mould::REJECTS_NONE;
use crate::job::{Mould, Studio};
use crate::quantity::{Finite, Grams, Kind};
use crate::stock::PatternMaterial;

/// Width of a choice.
const WIDE: f32 = 240.0;

fn chosen_id() -> Id {
    Id::unique("moulds-chosen")
}

/// Shows the section.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>) {
    let tokens = cx.tokens;
    heading::says(ui, &cx.label("moulds-says"), &tokens);
    let moulds = &cx.studio.moulds;
    let mut sorted: Vec<usize> = (0..moulds.len()).collect();
    sorted.sort_by_key(|at| by_number(&moulds[*at].number));
    let chosen = kept(ui, chosen_id()).parse().ok().filter(|at| *at < moulds.len()).or(sorted.first().copied());
    rows(ui, "moulds", sorted.len(), |ui, place| {
        let at = sorted[place];
        let about = [&moulds[at].design, &moulds[at].drawer].map(|words| words.trim()).into_iter().filter(|words| !words.is_empty());
        let name = match moulds[at].number.trim() {
            "" => cx.label("mould-unnumbered"),
            number => number.to_owned(),
        };
        if choose(ui, cx, chosen == Some(at), &name, &about.collect::<Vec<_>>().join(", ")) {
            keep(ui, chosen_id(), at.to_string());
        }
    });
    if button::plain(ui, &cx.label("mould-add"), &tokens).clicked() {
        keep(ui, chosen_id(), moulds.len().to_string());
        let number = free_number(cx.studio);
        cx.edit_studio("edit-mould-add", |studio| studio.moulds.push(Mould { number, ..Mould::default() }));
    }
    if let Some(at) = chosen {
        let mould = moulds[at].clone();
        ui.add_space(2.0 * STEP);
        one(ui, cx, at, &mould);
        if button::plain(ui, &cx.label("mould-take-out"), &tokens).clicked() {
            cx.edit_studio("edit-mould-out", move |studio| {
                if at < studio.moulds.len() {
                    studio.moulds.remove(at);
                }
            });
        }
    }
}

/// M-9 stands before M-12.
fn by_number(number: &str) -> (String, u64, String) {
    let digits_at = number.find(|sign: char| sign.is_ascii_digit()).unwrap_or(number.len());
    let (word, rest) = number.split_at(digits_at);
    let end = rest.find(|sign: char| !sign.is_ascii_digit()).unwrap_or(rest.len());
    (word.to_lowercase(), rest[..end].parse().unwrap_or(u64::MAX), rest[end..].to_lowercase())
}

/// A number that no mould carries.
fn free_number(studio: &Studio) -> String {
    let taken = |name: &str| studio.moulds.iter().any(|mould| mould.number.trim() == name);
    (1..u32::MAX).map(|number| format!("M-{number}")).find(|name| !taken(name)).unwrap_or_default()
}

/// Sets words of a mould.
type Words = fn(&mut Mould, String);
/// Sets a number of a mould.
type Set = fn(&mut Mould, Option<Finite>);
/// A number of a mould: its label, kind, what stands there, what rules where nothing does, and how it is set.
type Field = (&'static str, Kind, Option<Finite>, Option<f64>, Set);

fn one(ui: &mut Ui, cx: &mut Cx<'_>, at: usize, mould: &Mould) {
    let tokens = cx.tokens;
    let texts: [(&str, &String, f32, Words); 4] = [
        ("mould-number", &mould.number, 132.0, |mould, words| mould.number = words),
        ("mould-drawer", &mould.drawer, 132.0, |mould, words| mould.drawer = words),
        ("mould-design", &mould.design, WIDE, |mould, words| mould.design = words),
        ("mould-master", &mould.master, WIDE, |mould, words| mould.master = words),
    ];
    for (key, now, width, set) in texts {
        let label = cx.label(key);
        if let Some(words) = row(ui, &label, &tokens, |ui| text(ui, cx, Id::unique((key, at)), &label, now, width)) {
            edit(cx, at, move |mould| set(mould, words));
        }
    }
    let label = cx.label("mould-wax");
    let words = |material: &PatternMaterial| (material.id.clone(), material.name.clone());
    let place = (Id::unique(("mould-wax", at)), label.as_str(), WIDE);
    if let Some(wax) = row(ui, &label, &tokens, |ui| entry_of(ui, cx, place, mould.wax.as_ref(), words)) {
        edit(cx, at, move |mould| mould.wax = wax);
    }
    let numbers: [Field; 4] = [
        ("mould-rubber", Kind::Ratio, mould.rubber_shrink, None, |mould, share| mould.rubber_shrink = share),
        ("mould-wax-at", Kind::Temperature, mould.wax_c, None, |mould, c| mould.wax_c = c),
        ("mould-pressure", Kind::Vacuum, mould.pressure_kpa, None, |mould, kpa| mould.pressure_kpa = kpa),
        ("mould-rejects", Kind::Ratio, mould.reject_share, Some(REJECTS_NONE.value), |mould, share| mould.reject_share = share),
    ];
    for (key, kind, now, default, set) in numbers {
        let label = cx.label(key);
        let field = Number::new(Id::unique((key, at)), &label, kind).now(now.map(Finite::get)).default(default);
        if let Some(value) = row(ui, &label, &tokens, |ui| number(ui, cx, &field)) {
            edit(cx, at, move |mould| set(mould, value));
        }
    }
    let label = cx.label("mould-shot");
    let field = Number::new(Id::unique(("mould-shot", at)), &label, Kind::Mass).now(mould.shot.map(Grams::to_f64));
    if let Some(shot) = row(ui, &label, &tokens, |ui| grams(ui, cx, &field)) {
        edit(cx, at, move |mould| mould.shot = shot);
    }
    let label = cx.label("mould-notes");
    if let Some(said) = row(ui, &label, &tokens, |ui| notes(ui, cx, Id::unique(("mould-notes", at)), &label, &mould.notes, 320.0)) {
        edit(cx, at, move |mould| mould.notes = said);
    }
}

fn edit(cx: &mut Cx<'_>, at: usize, change: impl FnOnce(&mut Mould) + 'static) {
    cx.edit_studio("edit-mould", move |studio| {
        if let Some(mould) = studio.moulds.get_mut(at) {
            change(mould);
        }
    });
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_stand_in_the_order_of_counting() {
        let mut numbers = ["M-12", "m-9", "", "M-12b", "K", "7"];
        numbers.sort_by_key(|number| by_number(number));
        assert_eq!(numbers, ["7", "", "K", "m-9", "M-12", "M-12b"]);
    }
}
