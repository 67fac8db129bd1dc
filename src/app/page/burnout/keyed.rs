//! What is keyed into the kiln's controller, and what its display stands for at the probe, the hottest and the coldest place.

use eframe::egui::Ui;

use crate::app::cx::Cx;
use crate::app::theme::STEP;
use crate::app::widget::heading;
use crate::app::widget::row::cell;
use crate::calc::BurnoutFigures;
use crate::calc::controller::Table;
use crate::calc::floor::keyed;
use crate::job::Burnout;
use crate::paper::keyed::{KeyedWords, notes};
use crate::stock::Kiln;

/// Widths of number, set point, ramp, hold, at the probe, hottest, coldest.
const COLUMNS: [f32; 7] = [22.0, 70.0, 84.0, 66.0, 78.0, 84.0, 84.0];

/// Shows it, where the kiln has a controller that is known.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>, load: &Burnout, figures: &BurnoutFigures) {
    let tokens = cx.tokens;
    let computed = cx.computed;
    let shelf = &computed.shelves.job;
    let kiln = load.kiln.as_ref().and_then(|id| shelf.get::<Kiln>(id.as_str()));
    let table = keyed(load, figures, &computed.sound_studio, shelf, &computed.book);
    let Some((kiln, table)) = kiln.zip(table) else {
        heading::says(ui, &cx.label("keyed-unknown"), &tokens);
        return;
    };
    let words = KeyedWords { texts: cx.texts, style: cx.style, kiln };
    rows(ui, cx, &table, &words);
    for note in notes(&table, &words) {
        heading::says(ui, &note, &tokens);
    }
    ui.add_space(STEP);
}

fn rows(ui: &mut Ui, cx: &Cx<'_>, table: &Table, words: &KeyedWords<'_>) {
    let tokens = cx.tokens;
    let heads = ["", "keyed-set", "keyed-ramp", "keyed-hold", "keyed-true", "keyed-hottest", "keyed-coldest"];
    ui.horizontal(|ui| {
        for (key, width) in heads.into_iter().zip(COLUMNS) {
            cell(ui, &if key.is_empty() { String::new() } else { cx.label(key) }, width, 12.0, tokens.ink2);
        }
    });
    for (number, row) in (1_usize..).zip(&table.rows) {
        ui.horizontal(|ui| {
            cell(ui, &number.to_string(), COLUMNS[0], 14.0, tokens.ink2);
            for (text, width) in words.row(row).into_iter().zip(&COLUMNS[1..]) {
                cell(ui, &text, *width, 14.0, tokens.ink);
            }
        });
    }
}
