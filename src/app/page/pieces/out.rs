//! Sending pieces out of the house, and taking them back.

use std::collections::BTreeMap;

use eframe::egui::{Checkbox, Id, Ui};

use super::chosen::{pieces, write};
use crate::app::cx::Cx;
use crate::app::page::record;
use crate::app::page::settings::kept::{keep, kept};
use crate::app::widget::choice::choice;
use crate::app::widget::moment::day;
use crate::app::widget::number::{Number, grams};
use crate::app::widget::row::row;
use crate::app::widget::text::text;
use crate::app::widget::{button, heading};
use crate::calc::board::BoardRow;
use crate::job::{CameBack, Entry, Event, OutFor, PieceId, PieceStage, RecordId, SentOut};
use crate::paper::words::out_for_words;
use crate::quantity::{Grams, Kind};

const WIDE: f32 = 200.0;

/// Sends the ticked pieces out.
pub fn send(ui: &mut Ui, cx: &mut Cx<'_>, rows: &[&BoardRow<'_>], hands: &str) -> bool {
    let house = |row: &&&BoardRow<'_>| row.followed.out.is_none() && row.followed.stage != Some(PieceStage::Delivered);
    if rows.iter().filter(house).count() < rows.len() {
        return false;
    }
    let mut done = false;
    cx.folded(ui, "pieces-send", |ui, cx| done = fields(ui, cx, rows, hands));
    done
}

fn fields(ui: &mut Ui, cx: &mut Cx<'_>, rows: &[&BoardRow<'_>], hands: &str) -> bool {
    let tokens = cx.tokens;
    let key = Id::unique("pieces-send-draft");
    let mut draft: SentOut = ui.data(|data| data.get_temp(key)).unwrap_or_default();
    let label = cx.label("pieces-out-for");
    let options: Vec<(OutFor, String)> = OutFor::ALL.into_iter().map(|one| (one, out_for_words(one, cx.texts))).collect();
    let place = (key.with("for"), label.as_str(), WIDE);
    if let Some(Some(what_for)) = row(ui, &label, &tokens, |ui| choice(ui, cx, place, Some(&draft.what_for), &options, false)) {
        draft.what_for = what_for;
    }
    for (name, of) in [("pieces-out-whom", &mut draft.to), ("pieces-carrier", &mut draft.carrier)] {
        let label = cx.label(name);
        if let Some(said) = row(ui, &label, &tokens, |ui| text(ui, cx, key.with(name), &label, of, WIDE)) {
            *of = said;
        }
    }
    let label = cx.label("pieces-promised-on");
    if let Some(said) = row(ui, &label, &tokens, |ui| day(ui, cx, key.with("promised"), &label, draft.promised, 130.0)) {
        draft.promised = said;
    }
    let label = cx.label("pieces-weight");
    let field = Number::new(key.with("weight"), &label, Kind::Mass).now(draft.weight.map(Grams::to_f64));
    if let Some(said) = row(ui, &label, &tokens, |ui| grams(ui, cx, &field)) {
        draft.weight = said;
    }
    let place = key.with("picture");
    let picture = kept(ui, place);
    record::picture_field(ui, cx, place, &picture);
    let ready = !draft.to.trim().is_empty();
    let done = button::outlined(ui, &cx.label("pieces-send-do"), &tokens, ready).clicked();
    if done {
        let event = Event::SentOut { pieces: pieces(rows), sent: draft.clone() };
        let photos = record::pictures(&picture);
        let entry = Entry { at: record::now(cx), hands: hands.to_owned(), event, photos, ..Entry::default() };
        cx.edit("edit-pieces-send", move |job| record::append(job, entry));
        keep(ui, place, String::new());
        // Carrier and purpose stay for the next parcel.
        draft = SentOut { what_for: draft.what_for, to: draft.to, ..SentOut::default() };
    }
    ui.data_mut(|data| data.insert_temp(key, draft));
    done
}

/// Takes the ticked pieces back that are out, entry by entry that sent them.
pub fn back(ui: &mut Ui, cx: &mut Cx<'_>, rows: &[&BoardRow<'_>], hands: &str) -> bool {
    let mut out: BTreeMap<RecordId, Vec<PieceId>> = BTreeMap::new();
    for row in rows {
        if let Some(is_out) = &row.followed.out {
            out.entry(is_out.sent).or_default().push(row.followed.piece);
        }
    }
    let Some((sent, pieces)) = out.into_iter().next() else { return false };
    let tokens = cx.tokens;
    let key = Id::unique(("pieces-back-draft", sent.0));
    let mut draft: CameBack = ui.data(|data| data.get_temp(key)).unwrap_or_default();
    heading::group(ui, &cx.say("pieces-back", &[("count", pieces.len().into())]), &tokens);
    let label = cx.label("pieces-weight-back");
    let field = Number::new(key.with("weight"), &label, Kind::Mass).now(draft.weight.map(Grams::to_f64));
    if let Some(said) = row(ui, &label, &tokens, |ui| grams(ui, cx, &field)) {
        draft.weight = said;
    }
    for piece in &pieces {
        let mut failed = draft.failed.contains(piece);
        let name = cx.say("pieces-failed", &[("piece", crate::app::names::place(cx, crate::job::Place::Piece(*piece)).into())]);
        if ui.add(Checkbox::new(&mut failed, name)).changed() {
            draft.failed.retain(|other| other != piece);
            draft.failed.extend(failed.then_some(*piece));
        }
    }
    let done = button::outlined(ui, &cx.label("pieces-back-do"), &tokens, true).clicked();
    if done {
        draft.failed.retain(|piece| pieces.contains(piece));
        write(cx, "edit-pieces-back", hands, Event::CameBack { sent, pieces, back: draft.clone() });
        draft = CameBack::default();
    }
    ui.data_mut(|data| data.insert_temp(key, draft));
    done
}
