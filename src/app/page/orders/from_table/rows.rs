//! The rows of a table as they would be taken in, each with what is wrong with it.

use eframe::egui::{Label, RichText, ScrollArea, Ui};

use super::words::{caution, reason};
use crate::app::cx::Cx;
use crate::app::names;
use crate::app::theme::{ROW, size};
use crate::app::widget::row::cell;
use crate::files::order_table::{OrderRow, Preview, PreviewRow};
use crate::paper::words::{date_words, one_line};
use crate::stock::EntryId;

/// Rows in sight at once.
const ROWS: usize = 10;
/// The column of the line in the file.
const NUMBER: f32 = 50.0;

/// Shows them, those that cannot be read first: they are what somebody has to look at.
pub fn show(ui: &mut Ui, cx: &Cx<'_>, found: &Preview) {
    let mut rows: Vec<&PreviewRow> = found.rows.iter().collect();
    rows.sort_by_key(|row| matches!(row, PreviewRow::Ready(_)));
    let height = (ROW + ui.spacing().item_spacing.y) * rows.len().min(ROWS) as f32;
    ScrollArea::vertical().id_salt("from-table-rows").max_height(height).auto_shrink([false, true]).show_rows(
        ui,
        ROW,
        rows.len(),
        |ui, range| {
            for row in &rows[range] {
                one(ui, cx, row);
            }
        },
    );
}

fn one(ui: &mut Ui, cx: &Cx<'_>, row: &PreviewRow) {
    let tokens = cx.tokens;
    let (words, ink) = match row {
        PreviewRow::Ready(row) => {
            let mut words = vec![ready(cx, row)];
            words.extend(row.cautions.iter().map(|one| caution(cx, one)));
            (words.join(" "), if row.cautions.is_empty() { tokens.ink } else { tokens.caution })
        }
        PreviewRow::Bad { reasons, .. } => (reasons.iter().map(|one| reason(cx, one)).collect::<Vec<_>>().join(" "), tokens.stop),
    };
    ui.horizontal(|ui| {
        ui.set_height(ROW);
        let line = cx.say("from-table-line", &[("line", row.line().to_string().into())]);
        cell(ui, &line, NUMBER, size::SMALL, tokens.ink2);
        ui.add(Label::new(RichText::new(words).color(ink)).truncate());
    });
}

/// A row in a line: client, how many of what, in which alloy, which size, when.
fn ready(cx: &Cx<'_>, row: &OrderRow) -> String {
    let alloy = row.alloy.as_ref().and_then(|id| EntryId::new(id)).map(|id| {
        let shelf = &cx.computed.shelves.today;
        shelf.entry(id.as_str()).map_or_else(|| names::entry(cx, &id), |entry| entry.name().to_owned())
    });
    let due = row.due.map(|due| date_words(due, cx.texts));
    let parts = [
        Some(one_line(&row.client)),
        Some(format!("{} × {}", row.quantity, one_line(&row.design))),
        alloy,
        row.size.as_deref().map(one_line),
        due,
        row.reference.as_deref().map(one_line),
    ];
    parts.into_iter().flatten().filter(|part| !part.is_empty()).collect::<Vec<_>>().join(", ")
}
