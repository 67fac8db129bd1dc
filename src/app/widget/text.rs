//! Fields for words.

use eframe::egui::{Id, Ui};

use super::entry::{Entry, entry};
use crate::app::cx::Cx;

/// A field for words. `Some` is what was committed.
pub fn text(ui: &mut Ui, cx: &Cx<'_>, id: Id, name: &str, now: &str, width: f32) -> Option<String> {
    entry(ui, &Entry { width, ..Entry::new(id, name, now.to_owned()) }, &cx.tokens, |_| Ok(()))
}

/// The same over several lines; it is committed when the focus leaves it.
pub fn notes(ui: &mut Ui, cx: &Cx<'_>, id: Id, name: &str, now: &str, width: f32) -> Option<String> {
    entry(ui, &Entry { width, lines: 3, ..Entry::new(id, name, now.to_owned()) }, &cx.tokens, |_| Ok(()))
}
