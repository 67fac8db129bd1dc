//! What is done with the ticked pieces: moved on, rejected, made again, sent out, taken back; and what happened to one.

use eframe::egui::{Id, Label, RichText, Ui};

use super::{after, out, remake};
use crate::app::cx::Cx;
use crate::app::page::record;
use crate::app::theme::size;
use crate::app::widget::choice::choice;
use crate::app::widget::row::row;
use crate::app::widget::text::text;
use crate::app::widget::{button, heading};
use crate::calc::board::BoardRow;
use crate::job::check::points_at;
use crate::job::{Entry, Event, Job, PieceId, PieceStage, Place, standing};
use crate::paper::words::{moment_words, one_line, stage_words};

/// Shows it. True where something was written and nothing need stay ticked.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>, rows: &[&BoardRow<'_>], hands: &str) -> bool {
    let tokens = cx.tokens;
    let title = match rows {
        [one] => super::list::named(cx, one),
        _ => cx.say("pieces-chosen", &[("count", rows.len().into())]),
    };
    heading::group(ui, &title, &tokens);
    let mut done = moved(ui, cx, rows, hands);
    done |= rejected(ui, cx, rows, hands);
    done |= out::send(ui, cx, rows, hands);
    done |= out::back(ui, cx, rows, hands);
    if let [one] = rows {
        done |= after::show(ui, cx, one, hands);
        remake::show(ui, cx, one);
        history(ui, cx, one.followed.piece);
    }
    done
}

/// Appends an entry to the record.
pub fn write(cx: &mut Cx<'_>, key: &str, hands: &str, event: Event) {
    let entry = Entry { at: record::now(cx), hands: hands.to_owned(), event, ..Entry::default() };
    cx.edit(key, move |job| record::append(job, entry));
}

/// The pieces of the rows.
pub fn pieces(rows: &[&BoardRow<'_>]) -> Vec<PieceId> {
    rows.iter().map(|row| row.followed.piece).collect()
}

fn moved(ui: &mut Ui, cx: &mut Cx<'_>, rows: &[&BoardRow<'_>], hands: &str) -> bool {
    let tokens = cx.tokens;
    // What comes next after the one that is furthest behind is offered first.
    let least = rows.iter().map(|row| row.followed.stage).min().flatten();
    let next = PieceStage::ALL.into_iter().find(|stage| least.is_none_or(|least| *stage > least && *stage != PieceStage::Out));
    let options: Vec<(PieceStage, String)> = PieceStage::ALL.into_iter().map(|stage| (stage, stage_words(stage, cx.texts))).collect();
    let label = cx.label("pieces-reached");
    let place = Id::unique("pieces-stage");
    let said: Option<PieceStage> = ui.data(|data| data.get_temp::<Option<PieceStage>>(place)).flatten();
    let now = said.or(next);
    let mut done = false;
    row(ui, &label, &tokens, |ui| {
        if let Some(stage) = choice(ui, cx, (place.with("choice"), label.as_str(), 170.0), now.as_ref(), &options, false) {
            ui.data_mut(|data| data.insert_temp(place, stage));
        }
        if button::outlined(ui, &cx.label("pieces-reached-do"), &tokens, now.is_some()).clicked()
            && let Some(stage) = now
        {
            write(cx, "edit-pieces-reached", hands, Event::Reached { pieces: pieces(rows), stage });
            ui.data_mut(|data| data.insert_temp::<Option<PieceStage>>(place, None));
            done = true;
        }
    });
    done
}

fn rejected(ui: &mut Ui, cx: &mut Cx<'_>, rows: &[&BoardRow<'_>], hands: &str) -> bool {
    let tokens = cx.tokens;
    let open: Vec<PieceId> = rows.iter().filter(|row| row.followed.rejected.is_none()).map(|row| row.followed.piece).collect();
    if open.is_empty() {
        return false;
    }
    let place = Id::unique("pieces-defect");
    let now: String = ui.data(|data| data.get_temp(place)).unwrap_or_default();
    let label = cx.label("pieces-defect");
    let mut done = false;
    row(ui, &label, &tokens, |ui| {
        if let Some(defect) = text(ui, cx, place.with("field"), &label, &now, 170.0) {
            ui.data_mut(|data| data.insert_temp(place, defect));
        }
        if button::outlined(ui, &cx.label("pieces-reject-do"), &tokens, !now.trim().is_empty()).clicked() {
            let (at, hands, defect) = (record::now(cx), hands.to_owned(), now.clone());
            cx.edit("edit-finish-reject", move |job| {
                for piece in open {
                    let event = Event::Rejected { piece, defect: defect.clone() };
                    record::append(job, Entry { at, hands: hands.clone(), event, ..Entry::default() });
                }
            });
            ui.data_mut(|data| data.remove::<String>(place));
            done = true;
        }
    });
    done
}

/// Everything the record tells of a piece, what was withdrawn left out.
fn history(ui: &mut Ui, cx: &Cx<'_>, piece: PieceId) {
    let tokens = cx.tokens;
    heading::group(ui, &cx.label("pieces-history"), &tokens);
    let entries: Vec<&Entry> = standing(&cx.job.record).filter(|entry| tells_of(cx.job, entry, piece)).collect();
    if entries.is_empty() {
        heading::says(ui, &cx.label("pieces-no-history"), &tokens);
    }
    for entry in entries {
        let at = entry.at.map_or_else(|| cx.label("undated"), |at| moment_words(at, cx.texts));
        let mut parts = vec![record::words::event(cx, &entry.event), entry.hands.clone(), one_line(&entry.notes)];
        parts.retain(|part| !part.is_empty());
        ui.horizontal(|ui| {
            ui.label(RichText::new(at).size(size::SMALL).color(tokens.ink2));
            ui.add(Label::new(RichText::new(parts.join(", ")).color(tokens.ink)).truncate());
        });
    }
}

/// Is the entry about the piece, its tree, its flask or its kiln load?
fn tells_of(job: &Job, entry: &Entry, piece: PieceId) -> bool {
    let trees = job.trees.iter().filter(|tree| {
        tree.pieces.iter().any(|hung| hung.line == piece.line && (hung.numbers.is_empty() || hung.numbers.contains(&piece.number)))
    });
    let trees: Vec<_> = trees.map(|tree| tree.id).collect();
    let flasks = || job.flasks.iter().filter(|flask| flask.tree.is_some_and(|tree| trees.contains(&tree)));
    points_at(&entry.event).into_iter().any(|place| match place {
        Place::Piece(of) => of == piece,
        Place::Tree(id) => trees.contains(&id),
        Place::Flask(id) => flasks().any(|flask| flask.id == id),
        Place::Burnout(id) => flasks().any(|flask| flask.burnout == Some(id)),
        _ => false,
    })
}
