//! The board over every other job of the folder.

use std::path::Path;

use eframe::egui::{Label, RichText, ScrollArea, Ui};

use super::list;
use crate::app::action::Action;
use crate::app::cx::Cx;
use crate::app::page::folder;
use crate::app::theme::ROW;
use crate::app::widget::{button, heading};
use crate::calc::board::{BoardRow, Timely, board};
use crate::paper::words::one_line;

/// Rows in sight at once.
const ROWS: usize = 10;
/// Room for the name of a job.
const LINK: f32 = 110.0;

/// Shows the open pieces of the other jobs that answer the words.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>, words: &str, only_late: bool) {
    let tokens = cx.tokens;
    heading::group(ui, &cx.label("pieces-others"), &tokens);
    let Some(found) = folder::read(ui, cx) else { return };
    let mut rows: Vec<(&Path, BoardRow<'_>)> = Vec::new();
    for other in &found.open {
        let all = board(&other.job, cx.setting.at).into_iter();
        let open = all.filter(|row| row.timely != Timely::Settled && (!only_late || list::is_late(row)));
        rows.extend(open.map(|row| (other.path.as_path(), row)));
    }
    rows.retain(|(path, row)| {
        let line = format!("{} {}", list::spoken(cx, row), path.display()).to_lowercase();
        words.split_whitespace().all(|word| line.contains(word))
    });
    // What is late first, and what was due longest ago first of all.
    rows.sort_by_key(|(_, row)| (!list::is_late(row), row.due.is_none(), row.due));
    let args = [("open", rows.len().into()), ("jobs", found.open.len().into()), ("settled", found.settled.into())];
    heading::says(ui, &cx.say("pieces-others-count", &args), &tokens);
    let height = (ROW + ui.spacing().item_spacing.y) * rows.len().min(ROWS) as f32;
    ScrollArea::vertical().id_salt("other-pieces").max_height(height).auto_shrink([false, true]).show_rows(
        ui,
        ROW,
        rows.len(),
        |ui, range| {
            for place in range {
                let (path, row) = &rows[place];
                ui.push_id(place, |ui| one(ui, cx, path, row));
            }
        },
    );
    for (path, why) in &found.broken {
        let name = path.file_name().map(|name| name.to_string_lossy().into_owned()).unwrap_or_default();
        let words = cx.say("pieces-broken", &[("file", name.into()), ("why", one_line(why).into())]);
        ui.add(Label::new(RichText::new(words).color(tokens.caution)).wrap());
    }
    if button::link(ui, &cx.label("pieces-look-again"), &tokens).clicked() {
        cx.act(Action::ReadFolder);
    }
}

fn one(ui: &mut Ui, cx: &mut Cx<'_>, path: &Path, row: &BoardRow<'_>) {
    let tokens = cx.tokens;
    ui.horizontal(|ui| {
        ui.set_height(ROW);
        list::columns(ui, cx, row, LINK);
        let name = path.file_stem().map(|name| name.to_string_lossy().into_owned()).unwrap_or_default();
        let open = button::link(ui, &name, &tokens).accessible_name(cx.say("pieces-open-job", &[("job", (&name).into())]));
        if open.clicked() {
            cx.act(Action::OpenThis(path.to_path_buf()));
        }
    });
}
