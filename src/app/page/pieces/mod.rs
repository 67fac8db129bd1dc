//! The board: where every piece is, of this batch or of every job of the folder; moved on, rejected and made again, sent out and taken back.

mod after;
mod chosen;
mod list;
mod others;
mod out;
mod remake;

use std::collections::BTreeSet;

use eframe::egui::{Checkbox, Id, Ui};

use crate::app::action::Action;
use crate::app::cx::Cx;
use crate::app::page::record;
use crate::app::page::settings::kept::search;
use crate::app::theme::STEP;
use crate::app::widget::{button, heading};
use crate::calc::board::{BoardRow, Timely, board};
use crate::job::PieceId;

/// What the page keeps from one frame to the next; no part of any document.
#[derive(Debug, Clone, Default)]
struct Kept {
    /// The pieces of this batch that are ticked.
    ticked: BTreeSet<PieceId>,
    /// Only what is late, or will be.
    late: bool,
    /// Delivered and settled ones too.
    settled: bool,
    /// Every job of the folder.
    everywhere: bool,
}

fn key() -> Id {
    Id::unique("pieces page")
}

/// Shows the page.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>) {
    let tokens = cx.tokens;
    heading::title(ui, &cx.label("stage-pieces"), "", &tokens);
    if cx.job.orders.is_empty() {
        heading::empty(ui, &cx.label("pieces-empty"), &cx.label("pieces-first"), &tokens);
        if button::plain(ui, &cx.label("do-open-sample"), &tokens).clicked() {
            cx.act(Action::OpenSample);
        }
        return;
    }
    let mut kept: Kept = ui.data(|data| data.get_temp(key())).unwrap_or_default();
    let words = filter(ui, cx, &mut kept);
    let computed = cx.computed;
    let rows = board(&computed.sound, cx.setting.at);
    kept.ticked.retain(|piece| rows.iter().any(|row| row.followed.piece == *piece));
    let shown: Vec<&BoardRow<'_>> = rows.iter().filter(|row| wanted(cx, &kept, &words, row)).collect();
    heading::says(ui, &counted(cx, &rows, shown.len()), &tokens);
    list::show(ui, cx, &shown, &mut kept.ticked);
    let hands = record::hands(ui, cx);
    let ticked: Vec<&BoardRow<'_>> = rows.iter().filter(|row| kept.ticked.contains(&row.followed.piece)).collect();
    if ticked.is_empty() {
        heading::says(ui, &cx.label("pieces-tick"), &tokens);
    } else if chosen::show(ui, cx, &ticked, &hands) {
        kept.ticked.clear();
    }
    if kept.everywhere {
        others::show(ui, cx, &words, kept.late);
    }
    ui.add_space(2.0 * STEP);
    ui.data_mut(|data| data.insert_temp(key(), kept));
}

/// What is searched for, and what is shown of it.
fn filter(ui: &mut Ui, cx: &mut Cx<'_>, kept: &mut Kept) -> String {
    let words = search(ui, Id::unique("pieces-search"), &cx.label("pieces-search"), 320.0).to_lowercase();
    ui.horizontal_wrapped(|ui| {
        for (key, on) in
            [("pieces-late", &mut kept.late), ("pieces-settled", &mut kept.settled), ("pieces-everywhere", &mut kept.everywhere)]
        {
            ui.add(Checkbox::new(on, cx.label(key)));
        }
    });
    words
}

fn wanted(cx: &Cx<'_>, kept: &Kept, words: &str, row: &BoardRow<'_>) -> bool {
    if (kept.late && !list::is_late(row)) || (!kept.settled && row.timely == Timely::Settled) {
        return false;
    }
    let line = list::spoken(cx, row).to_lowercase();
    words.split_whitespace().all(|word| line.contains(word))
}

/// How many pieces there are, how many are shown, and how many are late.
fn counted(cx: &Cx<'_>, rows: &[BoardRow<'_>], shown: usize) -> String {
    let late = rows.iter().filter(|row| matches!(row.timely, Timely::Late(_) | Timely::CastTooLate(_))).count();
    let done = rows.iter().filter(|row| row.timely == Timely::Settled).count();
    cx.say("pieces-count", &[("all", rows.len().into()), ("shown", shown.into()), ("late", late.into()), ("done", done.into())])
}
