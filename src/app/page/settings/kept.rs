//! Words a page keeps from one frame to the next that are part of no document: a search, a reason before it is written down.

use eframe::egui::{Id, Response, TextEdit, Ui};

/// The words kept under an id.
#[must_use]
pub fn kept(ui: &Ui, id: Id) -> String {
    ui.data(|data| data.get_temp(id)).unwrap_or_default()
}

/// Keeps words.
pub fn keep(ui: &Ui, id: Id, words: String) {
    ui.data_mut(|data| data.insert_temp(id, words));
}

/// A field that searches while it is written in.
pub fn search(ui: &mut Ui, id: Id, name: &str, width: f32) -> String {
    let mut words = kept(ui, id);
    let field = TextEdit::singleline(&mut words).id(id.with("field")).hint_text(name).desired_width(width);
    let response: Response = ui.add(field).accessible_name(name);
    if response.changed() {
        keep(ui, id, words.clone());
    }
    words
}
