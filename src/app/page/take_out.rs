//! Taking something out of a batch. What the record tells of stays: an entry that tells of nothing would be worth nothing.

use eframe::egui::Ui;

use crate::app::cx::Cx;
use crate::app::widget::{button, heading};
use crate::job::check::{let_go, points_at};
use crate::job::{Job, LineId, Place, QuoteState, standing};

/// Does the record tell of it, or of a part of it, or was a client told of it?
#[must_use]
pub fn recorded(job: &Job, place: Place) -> bool {
    let lines: Vec<LineId> = match place {
        Place::Order(id) => job.orders.iter().filter(|order| order.id == id).flat_map(|order| &order.lines).map(|line| line.id).collect(),
        Place::Line(id) => vec![id],
        _ => Vec::new(),
    };
    let about = |told: Place| match told {
        Place::Piece(piece) => lines.contains(&piece.line),
        Place::Line(line) => lines.contains(&line),
        _ => told == place,
    };
    let names = |quote: &crate::job::Quote| quote.orders.iter().any(|id| Place::Order(*id) == place);
    // A draft that named no order any more would stand for all of them.
    let sent = |quote: &crate::job::Quote| names(quote) && (quote.state != QuoteState::Draft || quote.orders.len() == 1);
    standing(&job.record).any(|entry| points_at(&entry.event).into_iter().any(about)) || job.quotes.iter().any(sent)
}

/// The highest number of a line's piece that the record tells of.
#[must_use]
pub fn highest_recorded(job: &Job, line: LineId) -> u32 {
    let told = standing(&job.record).flat_map(|entry| points_at(&entry.event));
    let numbers = told.filter_map(|place| match place {
        Place::Piece(piece) if piece.line == line => Some(piece.number),
        _ => None,
    });
    numbers.max().unwrap_or(0)
}

/// The button that takes it out; where the record tells of it, it says why it stays.
pub fn take_out(ui: &mut Ui, cx: &mut Cx<'_>, (key, edit): (&str, &str), place: Place, remove: impl FnOnce(&mut Job) + 'static) {
    let stays = recorded(cx.job, place);
    if button::outlined(ui, &cx.label(key), &cx.tokens.clone(), !stays).clicked() {
        cx.edit(edit, move |job| {
            remove(job);
            let_go(job);
        });
    }
    if stays {
        heading::says(ui, &cx.label("recorded-stays"), &cx.tokens.clone());
    }
}
