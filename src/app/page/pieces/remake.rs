//! A rejected piece is made again: another piece of its line that knows in whose stead it is made. The client pays for the first alone.

use eframe::egui::Ui;

use crate::app::cx::Cx;
use crate::app::widget::{button, heading};
use crate::calc::board::BoardRow;
use crate::job::{Job, PieceException, PieceId};

/// Offers it where the piece was rejected and no other is made in its stead.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>, row: &BoardRow<'_>) {
    let tokens = cx.tokens;
    let one = &row.followed;
    if one.rejected.is_none() || one.remade_by.is_some() {
        return;
    }
    let lost = row.line.exceptions.get(&one.piece.number).is_some_and(|own| own.irreplaceable);
    if lost {
        heading::says(ui, &cx.label("pieces-irreplaceable"), &tokens);
        return;
    }
    let piece = one.piece;
    if button::outlined(ui, &cx.label("pieces-remake-do"), &tokens, true).clicked() {
        cx.edit("edit-pieces-remake", move |job| {
            remake(job, piece);
        });
    }
    heading::says(ui, &cx.label("pieces-remake-says"), &tokens);
}

/// Adds a piece to the line that is made in the stead of `of`, of its size and its pattern.
pub fn remake(job: &mut Job, of: PieceId) -> Option<PieceId> {
    let line = job.orders.iter_mut().flat_map(|order| &mut order.lines).find(|line| line.id == of.line)?;
    let before = line.quantity;
    let number = before.checked_add(1)?;
    let own = line.exceptions.get(&of.number).cloned().unwrap_or_default();
    line.quantity = number;
    let made = PieceException { remake_of: Some(of), size: own.size, pattern: own.pattern, ..PieceException::default() };
    line.exceptions.insert(number, made);
    // A row that names no piece hangs all of its line: the new one hangs nowhere yet, and was not cast with the others.
    let rows = job.trees.iter_mut().flat_map(|tree| &mut tree.pieces).filter(|row| row.line == of.line && row.numbers.is_empty());
    rows.for_each(|row| row.numbers = (1..=before).collect());
    Some(PieceId { line: of.line, number })
}
