//! Taking orders in from a table that a spreadsheet wrote: which column is what, every row with what is wrong with it, and only then the orders.

mod columns;
mod rows;
mod take;
mod words;

use std::path::PathBuf;
use std::sync::Arc;

use eframe::egui::{Checkbox, Id, Label, RichText, Ui};

use crate::app::cx::Cx;
use crate::app::theme::STEP;
use crate::app::widget::row::row;
use crate::app::widget::text::text;
use crate::app::widget::{button, heading};
use crate::files::disk::{Disk, RealDisk};
use crate::files::order_table::{Known, Mapping, Preview, guess, preview};
use crate::stock::Alloy;
use crate::table::{Limits, Table, read};

/// The table while it is looked at; kept by the window, not by any document.
#[derive(Debug, Clone, Default)]
struct Looked {
    path: String,
    table: Option<Arc<Table>>,
    mapping: Option<Mapping>,
    preview: Option<Arc<Preview>>,
    failed: Option<String>,
    /// Rows that cannot be read are left out.
    without_bad: bool,
    /// Rows that stand there twice are taken twice.
    with_repeats: bool,
}

/// Shows the section.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>) {
    let tokens = cx.tokens;
    let key = Id::unique("orders from table");
    let mut looked: Looked = ui.data(|data| data.get_temp(key)).unwrap_or_default();
    heading::says(ui, &cx.label("from-table-says"), &tokens);
    let label = cx.label("from-table-path");
    if let Some(path) = row(ui, &label, &tokens, |ui| text(ui, cx, key.with("path"), &label, &looked.path, 280.0)) {
        looked = look(cx, path);
    }
    if let Some(failed) = &looked.failed {
        ui.add(Label::new(RichText::new(failed).color(tokens.stop)).wrap());
    }
    if let (Some(table), Some(mut mapping)) = (looked.table.clone(), looked.mapping.clone()) {
        let before = mapping.clone();
        columns::show(ui, cx, &table, &mut mapping);
        if let Some(found) = &looked.preview {
            columns::questions(ui, cx, &table, &found.questions, &mut mapping);
        }
        if mapping != before || looked.preview.is_none() {
            looked.preview = Some(Arc::new(preview(&table, &mapping, &known(cx))));
            looked.mapping = Some(mapping.clone());
        }
        if let Some(found) = looked.preview.clone()
            && result(ui, cx, &found, &mut looked)
        {
            remember(cx.mappings, mapping);
            looked = Looked::default();
        }
    }
    ui.data_mut(|data| data.insert_temp(key, looked));
}

/// Reads a file by a path as it is seen from the batch's folder.
fn look(cx: &Cx<'_>, path: String) -> Looked {
    let looked = Looked { path: path.clone(), ..Looked::default() };
    if path.trim().is_empty() {
        return looked;
    }
    let full = cx.folder.clone().unwrap_or_default().join(PathBuf::from(path.trim()));
    let limits = Limits::default();
    let bytes = match RealDisk.read(&full, limits.max_bytes as u64) {
        Ok(bytes) => bytes,
        Err(error) => return Looked { failed: Some(error.to_string()), ..looked },
    };
    match read(&bytes, &limits) {
        Ok(table) => {
            let kept = cx.mappings.iter().rev().find(|mapping| mapping.fits(&table)).cloned();
            let mapping = kept.unwrap_or_else(|| guess(&table, &known(cx)));
            Looked { table: Some(Arc::new(table)), mapping: Some(mapping), ..looked }
        }
        Err(error) => Looked { failed: Some(error.to_string()), ..looked },
    }
}

/// The alloys of the shelf, and the day.
fn known(cx: &Cx<'_>) -> Known {
    let shelf = &cx.computed.shelves.today;
    let alloys = shelf.entries().filter(|entry| shelf.get::<Alloy>(entry.id().as_str()).is_some());
    Known { alloys: alloys.map(|entry| (entry.id().to_string(), entry.name().to_owned())).collect(), today: cx.setting.at }
}

/// So many ways to read a table are remembered.
const MOST: usize = 30;

/// The way a table was read stays for the next one like it.
fn remember(mappings: &mut Vec<Mapping>, mapping: Mapping) {
    mappings.retain(|other| other.fingerprint != mapping.fingerprint);
    let over = (mappings.len() + 1).saturating_sub(MOST);
    mappings.drain(..over);
    mappings.push(mapping);
}

/// Every row, what is wrong with some, and the way to take the others in. True where they were.
fn result(ui: &mut Ui, cx: &mut Cx<'_>, found: &Preview, looked: &mut Looked) -> bool {
    let tokens = cx.tokens;
    let (ready, bad) = (found.ready().count(), found.rows.len() - found.ready().count());
    let repeats = found.ready().filter(|row| take::is_repeat(row)).count();
    heading::says(ui, &cx.say("from-table-count", &[("ready", ready.into()), ("bad", bad.into())]), &tokens);
    rows::show(ui, cx, found);
    if bad > 0 {
        ui.add(Checkbox::new(&mut looked.without_bad, cx.say("from-table-without-bad", &[("count", bad.into())])));
    }
    if repeats > 0 {
        ui.add(Checkbox::new(&mut looked.with_repeats, cx.say("from-table-with-repeats", &[("count", repeats.into())])));
    }
    let orders = take::orders(found, looked.with_repeats);
    let lines: usize = orders.iter().map(|order| order.lines.len()).sum();
    let may = lines > 0 && (bad == 0 || looked.without_bad);
    ui.add_space(STEP);
    let words = cx.say("from-table-take", &[("lines", lines.into()), ("orders", orders.len().into())]);
    let taken = button::outlined(ui, &words, &tokens, may).clicked();
    if taken {
        cx.edit("edit-orders-from-table", move |job| take::take_in(job, &orders));
    }
    taken
}
