//! The record: what really happened, newest first. Entries are never taken out; one that no longer counts is withdrawn by a later one.

pub mod words;

use eframe::egui::{Id, Label, RichText, ScrollArea, Ui};
use jiff::ZonedDateTime;
use jiff::civil::DateTime;

use super::Page;
use super::settings::kept::{keep, kept};
use crate::app::action::Action;
use crate::app::cx::Cx;
use crate::app::theme::{STEP, size};
use crate::app::widget::choice::choice;
use crate::app::widget::row::row;
use crate::app::widget::rows::numbered;
use crate::app::widget::text::text;
use crate::app::widget::{button, finding, heading};
use crate::job::{Entry, Event, Job, RecordId};
use crate::paper::words::{moment_words, one_line};

/// Height of an entry in the list: its sentence, and its moment and remark.
const HEIGHT: f32 = 44.0;

/// Shows the page.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>) {
    let tokens = cx.tokens;
    heading::title(ui, &cx.label("stage-record"), "", &tokens);
    if cx.job.record.is_empty() {
        heading::empty(ui, &cx.label("record-empty"), &cx.label("record-first"), &tokens);
    } else {
        heading::says(ui, &cx.label("record-says"), &tokens);
    }
    remark(ui, cx);
    if !cx.job.record.is_empty() {
        ui.add_space(3.0 * STEP);
        list(ui, cx);
        withdraw(ui, cx);
    } else if cx.job.orders.is_empty() && cx.job.flasks.is_empty() && button::plain(ui, &cx.label("do-open-sample"), &tokens).clicked() {
        cx.act(Action::OpenSample);
    }
    ui.add_space(3.0 * STEP);
    finding::of_page(ui, cx, |found| Page::of_finding(found.kind, found.place) == Page::Record);
}

/// Now, by the clock on the studio's wall, to the minute: nobody writes a record by the second.
pub fn now(cx: &Cx<'_>) -> Option<DateTime> {
    let now = ZonedDateTime::now().with_time_zone(cx.setting.zone.clone()).datetime();
    now.with().second(0).subsec_nanosecond(0).build().ok()
}

/// Writes an entry at the end of the record.
pub fn append(job: &mut Job, entry: Entry) {
    let id = RecordId(job.record.iter().map(|entry| entry.id.0).max().unwrap_or(0) + 1);
    job.record.push(Entry { id, ..entry });
}

fn hands_id() -> Id {
    Id::unique("record-hands")
}

/// Who wrote last.
pub fn hands_now(ui: &Ui) -> String {
    kept(ui, hands_id())
}

/// Who writes: it stays from one entry to the next.
pub fn hands(ui: &mut Ui, cx: &Cx<'_>) -> String {
    let tokens = cx.tokens;
    let now = kept(ui, hands_id());
    let label = cx.label("record-hands");
    let options: Vec<(String, String)> = cx
        .studio
        .hands
        .iter()
        .map(|hand| hand.initials.trim())
        .filter(|initials| !initials.is_empty())
        .map(|one| (one.to_owned(), one.to_owned()))
        .collect();
    row(ui, &label, &tokens, |ui| {
        let place = (hands_id().with("choice"), label.as_str(), 132.0);
        if let Some(hands) = choice(ui, cx, place, Some(&now).filter(|now| !now.is_empty()), &options, true) {
            keep(ui, hands_id(), hands.unwrap_or_default());
        }
        if options.is_empty() {
            heading::says(ui, &cx.label("record-no-hands"), &tokens);
        }
    });
    now
}

fn remark(ui: &mut Ui, cx: &mut Cx<'_>) {
    let tokens = cx.tokens;
    let hands = hands(ui, cx);
    let picture = kept(ui, picture_id());
    picture_field(ui, cx, picture_id(), &picture);
    let place = Id::unique("record-remark");
    let words = kept(ui, place);
    let label = cx.label("record-remark");
    let width = (ui.available_width() - 300.0).clamp(180.0, 420.0);
    row(ui, &label, &tokens, |ui| {
        if let Some(words) = text(ui, cx, place.with("field"), &label, &words, width) {
            keep(ui, place, words);
        }
        if button::outlined(ui, &cx.label("record-add"), &tokens, !words.is_empty() || !picture.trim().is_empty()).clicked() {
            keep(ui, place, String::new());
            keep(ui, picture_id(), String::new());
            let entry = Entry { at: now(cx), hands, notes: words, photos: pictures(&picture), ..Entry::default() };
            cx.edit("edit-record-remark", move |job| append(job, entry));
        }
    });
}

fn picture_id() -> Id {
    Id::unique("record-picture")
}

/// A field for the path of a picture, from the batch's folder; several stand side by side with semicolons between.
pub fn picture_field(ui: &mut Ui, cx: &Cx<'_>, place: Id, now: &str) {
    let (tokens, label) = (cx.tokens, cx.label("record-picture"));
    let width = (ui.available_width() - 300.0).clamp(180.0, 320.0);
    row(ui, &label, &tokens, |ui| {
        if let Some(said) = text(ui, cx, place.with("field"), &label, now, width) {
            keep(ui, place, said);
        }
    });
}

/// The paths of a field of pictures.
pub fn pictures(field: &str) -> Vec<String> {
    field.split(';').map(str::trim).filter(|path| !path.is_empty()).map(str::to_owned).collect()
}

fn chosen_id() -> Id {
    Id::unique("record-chosen")
}

fn chosen(ui: &Ui) -> Option<RecordId> {
    ui.data(|data| data.get_temp(chosen_id())).map(RecordId)
}

fn list(ui: &mut Ui, cx: &Cx<'_>) {
    let record = &cx.job.record;
    let height = (ui.ctx().content_rect().height() - 420.0).max(4.0 * HEIGHT);
    let scroll = ScrollArea::vertical().id_salt("record-list").max_height(height).auto_shrink([false, true]);
    scroll.show_rows(ui, HEIGHT, record.len(), |ui, range| {
        for from_end in range {
            let entry = &record[record.len() - 1 - from_end];
            ui.push_id(entry.id.0, |ui| one(ui, cx, entry));
        }
    });
}

fn one(ui: &mut Ui, cx: &Cx<'_>, entry: &Entry) {
    let tokens = cx.tokens;
    let gone = withdrawn_by(cx, entry.id).is_some();
    ui.vertical(|ui| {
        ui.set_height(HEIGHT);
        ui.spacing_mut().item_spacing.y = 0.0;
        let sentence = words::event(cx, &entry.event);
        let words = RichText::new(&sentence).color(if gone { tokens.ink3 } else { tokens.ink });
        let words = if gone { words.strikethrough() } else { words };
        let spoken = if gone { format!("{sentence}, {}", cx.label("record-withdrawn")) } else { sentence };
        if ui.selectable_label(chosen(ui) == Some(entry.id), words).accessible_name(spoken).clicked() {
            ui.data_mut(|data| data.insert_temp(chosen_id(), entry.id.0));
        }
        let at = entry.at.map_or_else(|| cx.label("undated"), |at| moment_words(at, cx.texts));
        let mut parts = vec![at, entry.hands.clone(), one_line(&entry.notes)];
        parts.extend((!entry.photos.is_empty()).then(|| cx.say("record-pictures", &[("count", entry.photos.len().into())])));
        parts.extend(gone.then(|| cx.label("record-withdrawn")));
        let about = parts.into_iter().filter(|part| !part.is_empty()).collect::<Vec<_>>().join(", ");
        ui.horizontal(|ui| {
            ui.add_space(6.0);
            ui.add(Label::new(RichText::new(about).size(size::SMALL).color(tokens.ink2)).truncate());
        });
    });
}

fn withdrawn_by(cx: &Cx<'_>, id: RecordId) -> Option<RecordId> {
    let by = |entry: &&Entry| matches!(&entry.event, Event::Withdrawn { entry: of, .. } if *of == id);
    cx.job.record.iter().find(by).map(|entry| entry.id)
}

/// The chosen entry can be withdrawn, with a reason.
fn withdraw(ui: &mut Ui, cx: &mut Cx<'_>) {
    let tokens = cx.tokens;
    let Some(entry) = chosen(ui).and_then(|id| cx.job.record.iter().find(|entry| entry.id == id)) else {
        heading::says(ui, &cx.label("record-choose"), &tokens);
        return;
    };
    let id = entry.id;
    heading::group(ui, &words::event(cx, &entry.event), &tokens);
    if !entry.notes.is_empty() {
        ui.add(Label::new(RichText::new(&entry.notes).color(tokens.ink)).wrap());
    }
    for (at, picture) in entry.photos.iter().enumerate() {
        let name = numbered(&cx.say("record-picture-show", &[("path", one_line(picture).into())]), at);
        if button::link(ui, &cx.say("record-picture-show", &[("path", one_line(picture).into())]), &tokens).accessible_name(name).clicked()
        {
            cx.act(Action::Picture(picture.clone()));
        }
    }
    if withdrawn_by(cx, id).is_some() {
        heading::says(ui, &cx.label("record-is-withdrawn"), &tokens);
        return;
    }
    let place = Id::unique(("record-reason", id.0));
    let reason = kept(ui, place);
    let label = cx.label("record-reason");
    let width = (ui.available_width() - 300.0).clamp(180.0, 380.0);
    row(ui, &label, &tokens, |ui| {
        if let Some(reason) = text(ui, cx, place.with("field"), &label, &reason, width) {
            keep(ui, place, reason);
        }
        if button::outlined(ui, &cx.label("record-withdraw"), &tokens, !reason.is_empty()).clicked() {
            let event = Event::Withdrawn { entry: id, reason };
            let entry = Entry { at: now(cx), hands: kept(ui, hands_id()), event, ..Entry::default() };
            cx.edit("edit-record-withdraw", move |job| append(job, entry));
        }
    });
    heading::says(ui, &cx.label("record-withdraw-says"), &tokens);
}
