//! One entry of the shelf: hidden, made the studio's own, edited as text, copied, taken back.

use eframe::egui::{Id, Label, RichText, Ui};

use super::kept::{keep, kept};
use super::shelf::{Listed, Whence, chosen_id, kind_key};
use crate::app::cx::Cx;
use crate::app::theme::{STEP, bold, size};
use crate::app::widget::entry::{Entry as Field, Refusal, entry as field};
use crate::app::widget::row::row;
use crate::app::widget::text::text;
use crate::app::widget::{button, heading};
use crate::stock::{Entry, EntryId, Fault, OverlayItem, OverlayProblem, Shelf, ron_options};

/// Shows the chosen entry with what can be done with it.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>, one: &Listed) {
    let tokens = cx.tokens;
    ui.horizontal_wrapped(|ui| {
        ui.label(RichText::new(&one.name).family(bold()).color(tokens.ink));
        ui.label(RichText::new(format!("{}, {}", cx.label(kind_key(one.kind)), one.id)).size(size::SMALL).color(tokens.ink2));
    });
    for problem in problems(cx, &one.id) {
        ui.add(Label::new(RichText::new(problem).color(tokens.caution)).wrap());
    }
    buttons(ui, cx, one);
    in_this_batch(ui, cx, &one.id);
    let own = own_entry(cx, &one.id).cloned();
    if let Some(own) = own {
        editor(ui, cx, &own);
    }
    copy(ui, cx, one);
    ui.add_space(2.0 * STEP);
}

/// The studio's own text of an entry.
fn own_entry<'a>(cx: &Cx<'a>, id: &EntryId) -> Option<&'a Entry> {
    cx.studio.shelf.iter().rev().find_map(|item| match item {
        OverlayItem::Add(entry) | OverlayItem::Replace { entry, .. } if entry.id() == id => Some(entry),
        _ => None,
    })
}

fn buttons(ui: &mut Ui, cx: &mut Cx<'_>, one: &Listed) {
    let tokens = cx.tokens;
    let id = one.id.clone();
    let changed = cx.studio.shelf.iter().any(|item| *item.id() == id);
    let on_shelf = cx.computed.shelves.today.entry(id.as_str()).cloned();
    ui.horizontal_wrapped(|ui| {
        if one.whence == Whence::Shipped
            && let Some(entry) = &on_shelf
        {
            if button::plain(ui, &cx.label("shelf-make-own"), &tokens).clicked() {
                let item = OverlayItem::Replace { base_hash: entry.hash(), entry: Entry::clone(entry) };
                cx.edit_studio("edit-shelf-own", move |studio| studio.shelf.push(item));
            }
            let id = id.clone();
            if button::plain(ui, &cx.label("shelf-hide"), &tokens).clicked() {
                cx.edit_studio("edit-shelf-hide", move |studio| studio.shelf.push(OverlayItem::Hide(id)));
            }
        }
        let key = if one.whence == Whence::Hidden { "shelf-show-again" } else { "shelf-take-back" };
        if changed && button::plain(ui, &cx.label(key), &tokens).clicked() {
            cx.edit_studio("edit-shelf-back", move |studio| studio.shelf.retain(|item| *item.id() != id));
        }
    });
    if changed && one.whence != Whence::Hidden {
        heading::says(ui, &cx.label(take_back_says(&one.id)), &tokens);
    }
}

/// The batch keeps an entry as it was when it was chosen; where the shelf says something else by now, it may take that.
fn in_this_batch(ui: &mut Ui, cx: &mut Cx<'_>, id: &EntryId) {
    let tokens = cx.tokens;
    let Some(copied) = cx.job.shelf.iter().find(|copied| copied.entry.id() == id) else { return };
    let today = cx.computed.shelves.today.hash_of(id.as_str());
    if today.is_none_or(|today| today == copied.hash) {
        return;
    }
    heading::says(ui, &cx.label("shelf-batch-keeps"), &tokens);
    if button::plain(ui, &cx.label("shelf-batch-takes"), &tokens).clicked() {
        let id = id.clone();
        // A copy that is let go is taken anew, as the shelf is today.
        cx.edit("edit-shelf-batch", move |job| job.shelf.retain(|copied| *copied.entry.id() != id));
    }
}

fn take_back_says(id: &EntryId) -> &'static str {
    if Shelf::shipped().entry(id.as_str()).is_some() { "shelf-take-back-says" } else { "shelf-take-out-says" }
}

/// The entry's text, to be changed number by number; text that is not an entry stays, marked, with its reason.
fn editor(ui: &mut Ui, cx: &mut Cx<'_>, own: &Entry) {
    let Some(shown) = text_of(own) else { return };
    let label = cx.label("shelf-text");
    heading::group(ui, &label, &cx.tokens.clone());
    let width = (ui.available_width() - 8.0).clamp(300.0, 640.0);
    let lines = shown.lines().count().clamp(6, 24);
    let place = Field { width, lines, ..Field::new(Id::unique(("shelf-text", own.id().as_str())), &label, shown) };
    let committed = field(ui, &place, &cx.tokens, |text| check(cx, own, text).map(drop));
    if let Some(text) = committed
        && let Ok(entry) = check(cx, own, &text)
    {
        cx.edit_studio("edit-shelf-text", move |studio| {
            for item in studio.shelf.iter_mut().rev() {
                if let OverlayItem::Add(stands) | OverlayItem::Replace { entry: stands, .. } = item
                    && stands.id() == entry.id()
                {
                    *stands = entry;
                    return;
                }
            }
        });
    }
    heading::says(ui, &cx.label("shelf-text-says"), &cx.tokens.clone());
}

fn text_of(entry: &Entry) -> Option<String> {
    crate::stock::entry_text(entry)
}

/// The entry a text says, or why it is not taken.
fn check(cx: &Cx<'_>, own: &Entry, text: &str) -> Result<Entry, Refusal> {
    let entry: Entry = ron_options().from_str(text).map_err(|error| {
        let (line, column) = (error.span.end.line, error.span.end.col);
        let args = [("line", line.to_string().into()), ("column", column.to_string().into()), ("why", error.code.to_string().into())];
        cx.say("shelf-text-unreadable", &args)
    })?;
    if entry.id() != own.id() || entry.kind() != own.kind() {
        return Err(cx.label("shelf-text-other").into());
    }
    match entry.faults().first() {
        Some(fault) => Err(fault_words(cx, fault).into()),
        None => Ok(entry),
    }
}

fn fault_words(cx: &Cx<'_>, fault: &Fault) -> String {
    let of = |key: &str, what: &str| cx.say(key, &[("what", what.into())]);
    match fault {
        Fault::NotPositive(what) => of("shelf-fault-positive", what),
        Fault::TooLarge(what) => of("shelf-fault-large", what),
        Fault::Negative(what) => of("shelf-fault-negative", what),
        Fault::NotAShare(what) => of("shelf-fault-share", what),
        Fault::OutOfOrder(low, high) => cx.say("shelf-fault-order", &[("low", (*low).into()), ("high", (*high).into())]),
        Fault::Empty(what) => of("shelf-fault-empty", what),
        Fault::SectionTwice => cx.label("shelf-fault-section"),
        Fault::UnderItsMark => cx.label("shelf-fault-mark"),
        Fault::KaratAbove24 => cx.label("shelf-fault-karat"),
    }
}

/// What is the matter with the studio's changes to this entry.
fn problems(cx: &Cx<'_>, id: &EntryId) -> Vec<String> {
    let notes = cx.computed.shelves.notes.iter().filter(|note| note.id == *id);
    notes
        .flat_map(|note| match &note.problem {
            OverlayProblem::BaseChanged { .. } => vec![cx.label("shelf-base-changed")],
            OverlayProblem::IdTaken(_) => vec![cx.label("shelf-id-taken")],
            OverlayProblem::UnknownId => vec![cx.label("shelf-unknown-id")],
            OverlayProblem::OtherKind { .. } => vec![cx.label("shelf-other-kind")],
            OverlayProblem::Faulty(faults) => faults.iter().map(|fault| fault_words(cx, fault)).collect(),
        })
        .collect()
}

/// A copy under a new name becomes an entry of its own.
fn copy(ui: &mut Ui, cx: &mut Cx<'_>, one: &Listed) {
    let tokens = cx.tokens;
    let place = Id::unique(("shelf-copy-name", one.id.as_str()));
    let label = cx.label("shelf-copy-name");
    let name = kept(ui, place);
    row(ui, &label, &tokens, |ui| {
        if let Some(name) = text(ui, cx, place.with("field"), &label, &name, 200.0) {
            keep(ui, place, name);
        }
        let new = new_id(cx, &name);
        let ready = !name.trim().is_empty() && new.is_some();
        if button::outlined(ui, &cx.label("shelf-copy"), &tokens, ready).clicked()
            && let Some(id) = new
            && let Some(entry) = source(cx, &one.id).and_then(|entry| renamed(entry, &id, name.trim()))
        {
            keep(ui, place, String::new());
            keep(ui, chosen_id(), id.to_string());
            cx.edit_studio("edit-shelf-copy", move |studio| studio.shelf.push(OverlayItem::Add(entry)));
        }
    });
}

fn source(cx: &Cx<'_>, id: &EntryId) -> Option<Entry> {
    let shelf = &cx.computed.shelves.today;
    let stands = shelf.entry(id.as_str()).or_else(|| Shelf::shipped().entry(id.as_str()));
    own_entry(cx, id).cloned().or_else(|| stands.map(|entry| Entry::clone(entry)))
}

fn renamed(mut entry: Entry, id: &EntryId, name: &str) -> Option<Entry> {
    macro_rules! rename {
        ($($kind:ident),+) => {
            match &mut entry {
                $(Entry::$kind(inner) => {
                    inner.id = id.clone();
                    inner.name = name.to_owned();
                })+
            }
        };
    }
    rename!(Alloy, Powder, PatternMaterial, Flask, Base, Crucible, Kiln, RingScale, StageTable, MarkingLaw);
    Some(entry)
}

/// An id made from a name, free on the shelf.
fn new_id(cx: &Cx<'_>, name: &str) -> Option<EntryId> {
    let plain: String = name.to_lowercase().chars().map(|sign| if sign.is_ascii_alphanumeric() { sign } else { ' ' }).collect();
    let slug: String = plain.split_whitespace().collect::<Vec<_>>().join("-").chars().take(56).collect();
    let slug = if slug.is_empty() { "own" } else { slug.trim_end_matches('-') };
    let taken = |id: &EntryId| {
        let shelf = &cx.computed.shelves.today;
        shelf.entry(id.as_str()).is_some()
            || Shelf::shipped().entry(id.as_str()).is_some()
            || cx.studio.shelf.iter().any(|item| item.id() == id)
    };
    let names = std::iter::once(slug.to_owned()).chain((2..1000).map(|number| format!("{slug}-{number}")));
    names.filter_map(|name| EntryId::new(&name)).find(|id| !taken(id))
}
