//! The shelf: what is shipped, what is the studio's own, what is hidden; found by a few letters.

use std::collections::BTreeMap;

use eframe::egui::{Id, Label, RichText, ScrollArea, Ui};

use super::kept::{keep, kept, search};
use super::shelf_entry;
use crate::app::cx::Cx;
use crate::app::theme::{ROW, STEP, size};
use crate::app::widget::heading;
use crate::stock::{EntryId, EntryKind, OverlayItem, Shelf};

/// Where an entry of the list comes from.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Whence {
    /// As shipped.
    Shipped,
    /// Added or replaced by the studio.
    Own,
    /// Taken off the shelf by the studio.
    Hidden,
    /// The studio's, and not fit to be used.
    Unfit,
}

impl Whence {
    fn key(self) -> &'static str {
        match self {
            Self::Shipped => "shelf-shipped",
            Self::Own => "shelf-own",
            Self::Hidden => "shelf-hidden",
            Self::Unfit => "shelf-unfit",
        }
    }
}

/// One line of the list.
#[derive(Debug, Clone)]
pub struct Listed {
    /// Its id.
    pub id: EntryId,
    /// Its kind.
    pub kind: EntryKind,
    /// Its name.
    pub name: String,
    /// Where it comes from.
    pub whence: Whence,
}

/// Under which the chosen entry's id is kept.
pub fn chosen_id() -> Id {
    Id::unique("shelf-chosen")
}

/// The key of a kind's name.
#[must_use]
pub fn kind_key(kind: EntryKind) -> &'static str {
    match kind {
        EntryKind::Alloy => "shelf-kind-alloy",
        EntryKind::Powder => "shelf-kind-powder",
        EntryKind::PatternMaterial => "shelf-kind-material",
        EntryKind::Flask => "shelf-kind-flask",
        EntryKind::Base => "shelf-kind-base",
        EntryKind::Crucible => "shelf-kind-crucible",
        EntryKind::Kiln => "shelf-kind-kiln",
        EntryKind::RingScale => "shelf-kind-rings",
        EntryKind::StageTable => "shelf-kind-stages",
        EntryKind::MarkingLaw => "shelf-kind-marking",
    }
}

/// Everything on the shelf, and what the studio took off it, sorted by kind and name.
fn listed(cx: &Cx<'_>) -> Vec<Listed> {
    let today = &cx.computed.shelves.today;
    let mut all: BTreeMap<EntryId, Listed> = BTreeMap::new();
    let mut put = |entry: &crate::stock::Entry, whence| {
        let id = entry.id().clone();
        all.insert(id.clone(), Listed { id, kind: entry.kind(), name: entry.name().to_owned(), whence });
    };
    Shelf::shipped().entries().for_each(|entry| put(entry, Whence::Hidden));
    for item in &cx.studio.shelf {
        if let OverlayItem::Add(entry) | OverlayItem::Replace { entry, .. } = item {
            put(entry, Whence::Unfit);
        }
    }
    for entry in today.entries() {
        put(entry, if today.is_own(entry.id().as_str()) { Whence::Own } else { Whence::Shipped });
    }
    let hidden = |id: &EntryId| cx.studio.shelf.iter().any(|item| matches!(item, OverlayItem::Hide(hidden) if hidden == id));
    let mut all: Vec<Listed> = all.into_values().collect();
    for one in all.iter_mut().filter(|one| today.entry(one.id.as_str()).is_none() && hidden(&one.id)) {
        one.whence = Whence::Hidden;
    }
    all.sort_by(|one, other| (one.kind, &one.name).cmp(&(other.kind, &other.name)));
    all
}

/// Shows the section.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>) {
    let tokens = cx.tokens;
    heading::says(ui, &cx.label("shelf-says"), &tokens);
    let wanted = search(ui, Id::unique("shelf-search"), &cx.label("shelf-search"), 320.0).to_lowercase();
    let fits = |one: &Listed| {
        let line = format!("{} {} {} {}", cx.label(kind_key(one.kind)), one.name, one.id, cx.label(one.whence.key())).to_lowercase();
        wanted.split_whitespace().all(|part| line.contains(part))
    };
    let all = listed(cx);
    let found: Vec<&Listed> = all.iter().filter(|one| fits(one)).collect();
    if found.is_empty() {
        heading::says(ui, &cx.label("shelf-nothing"), &tokens);
    }
    let chosen = kept(ui, chosen_id());
    ui.add_space(STEP);
    ScrollArea::vertical().id_salt("shelf-list").max_height(10.0 * ROW).auto_shrink([false, true]).show_rows(
        ui,
        ROW,
        found.len(),
        |ui, range| {
            for one in &found[range] {
                line(ui, cx, one, one.id.as_str() == chosen);
            }
        },
    );
    if let Some(one) = all.iter().find(|one| one.id.as_str() == chosen) {
        ui.add_space(2.0 * STEP);
        shelf_entry::show(ui, cx, one);
    }
}

fn line(ui: &mut Ui, cx: &Cx<'_>, one: &Listed, chosen: bool) {
    let tokens = cx.tokens;
    ui.horizontal(|ui| {
        ui.set_height(ROW);
        let (kind, whence) = (cx.label(kind_key(one.kind)), cx.label(one.whence.key()));
        let name = if one.name.is_empty() { one.id.to_string() } else { one.name.clone() };
        let spoken = format!("{name}, {kind}, {whence}");
        if ui.selectable_label(chosen, RichText::new(name).color(tokens.ink)).accessible_name(spoken).clicked() {
            keep(ui, chosen_id(), one.id.to_string());
        }
        ui.add(Label::new(RichText::new(kind).size(size::SMALL).color(tokens.ink2)).truncate());
        let ink = if one.whence == Whence::Own { tokens.act } else { tokens.ink3 };
        ui.label(RichText::new(whence).size(size::SMALL).color(ink));
    });
}
