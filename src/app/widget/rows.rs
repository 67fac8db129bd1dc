//! Rows of which one is chosen: words at the left, more of them behind. Long lists build only what is in sight.

use eframe::egui::{Atom, Button, Label, RichText, ScrollArea, Ui, vec2};

use crate::app::cx::Cx;
use crate::app::theme::{ROW, STEP};

/// Rows in sight at once.
const ROWS: usize = 6;

/// Shows so many rows, all of them where they are few.
pub fn rows(ui: &mut Ui, key: &str, many: usize, mut row: impl FnMut(&mut Ui, usize)) {
    if many <= ROWS {
        (0..many).for_each(|place| row(ui, place));
    } else {
        let height = (ROW + STEP) * ROWS as f32;
        ScrollArea::vertical().id_salt(key).max_height(height).show_rows(ui, ROW, many, |ui, range| {
            range.for_each(|place| row(ui, place));
        });
    }
}

/// One row to choose: words at the left, more of them in lighter ink behind.
pub fn choose(ui: &mut Ui, cx: &Cx<'_>, here: bool, words: &str, about: &str) -> bool {
    let tokens = cx.tokens;
    ui.horizontal(|ui| {
        let ink = if here { tokens.act } else { tokens.ink };
        let fill = if here { tokens.act_ground } else { tokens.paper };
        let name =
            Button::selectable(here, (RichText::new(words).color(ink), Atom::grow())).fill(fill).truncate().min_size(vec2(200.0, ROW));
        let clicked = ui.add_sized(vec2(200.0, ROW), name).clicked();
        ui.add(Label::new(RichText::new(about).color(tokens.ink2)).truncate());
        clicked
    })
    .inner
}

/// A field's name with the number of its row, where several rows have fields of one label.
#[must_use]
pub fn numbered(label: &str, place: usize) -> String {
    format!("{label} {}", place + 1)
}
