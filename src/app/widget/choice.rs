//! Choosing one of several: entries of the shelf, things of the job, ways of doing something.

use eframe::egui::{ComboBox, Id, RichText, Ui};

use crate::app::cx::Cx;
use crate::stock::{EntryId, Shelved};

/// Chooses one of `options`, each with its words. `Some` is a new choice; `Some(None)` chooses nothing again.
pub fn choice<T: Clone + PartialEq>(
    ui: &mut Ui,
    cx: &Cx<'_>,
    (id, name, width): (Id, &str, f32),
    now: Option<&T>,
    options: &[(T, String)],
    clearable: bool,
) -> Option<Option<T>> {
    let shown = now
        .map(|now| options.iter().find(|(option, _)| option == now).map_or_else(|| cx.label("choice-unknown"), |(_, words)| words.clone()));
    let words = match &shown {
        Some(words) => RichText::new(words).color(cx.tokens.ink),
        None => RichText::new(cx.label("choice-none")).color(cx.tokens.ink3),
    };
    let mut chosen = None;
    let combo = ComboBox::from_id_salt(id).width(width - 16.0).height(360.0).selected_text(words).truncate().show_ui(ui, |ui| {
        ui.set_min_width(width.max(220.0));
        if clearable && now.is_some() && ui.selectable_label(false, cx.label("choice-nothing")).clicked() {
            chosen = Some(None);
        }
        for (option, words) in options {
            if ui.selectable_label(now == Some(option), words).clicked() && now != Some(option) {
                chosen = Some(Some(option.clone()));
            }
        }
    });
    let spoken = shown.map_or_else(|| name.to_owned(), |shown| format!("{name}, {shown}"));
    combo.response.accessible_name(spoken);
    chosen
}

/// Chooses an entry of one kind from the shelf.
pub fn entry_of<T: Shelved>(
    ui: &mut Ui,
    cx: &Cx<'_>,
    place: (Id, &str, f32),
    now: Option<&EntryId>,
    words: impl Fn(&T) -> (EntryId, String),
) -> Option<Option<EntryId>> {
    let mut options: Vec<(EntryId, String)> = cx.computed.shelves.today.all::<T>().map(words).collect();
    if let Some(id) = now.filter(|id| options.iter().all(|(other, _)| other != *id)) {
        let name = cx.computed.shelves.job.entry(id.as_str()).map_or_else(|| id.to_string(), |entry| entry.name().to_owned());
        options.push((id.clone(), name));
    }
    choice(ui, cx, place, now, &options, true)
}
