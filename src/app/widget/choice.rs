//! Choosing one of several: entries of the shelf, things of the job, ways of doing something. By mouse, or by keys alone: letters look through
//! the list, arrows go along it, Enter takes one and moves down, Escape leaves everything as it was.

use eframe::egui::{
    self, Button, Event, EventFilter, FontId, Id, InputState, Key, Modifiers, Popup, PopupCloseBehavior, Response, RichText, ScrollArea,
    Sense, SetOpenCommand, Shape, Stroke, StrokeKind, Ui, WidgetInfo,
    accesskit::{self, Role},
};

use super::order;
use crate::app::cx::Cx;
use crate::app::theme::{ROW, size};
use crate::stock::{EntryId, Shelved};

/// Height of an open list.
const HEIGHT: f32 = 340.0;

/// One of several: what choosing it means, its words, and whether it is the one in effect.
#[derive(Debug, Clone)]
pub struct Offered<T> {
    /// Nothing, where it takes a choice back.
    pub value: Option<T>,
    /// Its words.
    pub words: String,
    /// Is it in effect?
    pub here: bool,
}

/// Chooses one of `options`, each with its words. `Some` is a new choice; `Some(None)` chooses nothing again.
pub fn choice<T: Clone + PartialEq>(
    ui: &mut Ui,
    cx: &Cx<'_>,
    place: (Id, &str, f32),
    now: Option<&T>,
    options: &[(T, String)],
    clearable: bool,
) -> Option<Option<T>> {
    let known = |now: &T| options.iter().find(|(option, _)| option == now).map(|(_, words)| words.clone());
    let shown = now.map(|now| known(now).unwrap_or_else(|| cx.label("choice-unknown")));
    pick(ui, cx, place, shown, || {
        let none = (clearable && now.is_some()).then(|| nothing(cx));
        let one = |(value, words): &(T, String)| Offered { value: Some(value.clone()), words: words.clone(), here: now == Some(value) };
        none.into_iter().chain(options.iter().map(one)).collect()
    })
}

fn nothing<T>(cx: &Cx<'_>) -> Offered<T> {
    Offered { value: None, words: cx.label("choice-nothing"), here: false }
}

/// Chooses an entry of one kind from the shelf.
pub fn entry_of<T: Shelved>(
    ui: &mut Ui,
    cx: &Cx<'_>,
    place: (Id, &str, f32),
    now: Option<&EntryId>,
    words: impl Fn(&T) -> (EntryId, String),
) -> Option<Option<EntryId>> {
    let shelves = &cx.computed.shelves;
    let named = |id: &EntryId| {
        let entry = shelves.today.entry(id.as_str()).or_else(|| shelves.job.entry(id.as_str()));
        entry.map_or_else(|| id.to_string(), |entry| entry.name().to_owned())
    };
    pick(ui, cx, place, now.map(named), || {
        let mut all: Vec<Offered<EntryId>> = now.map(|_| nothing(cx)).into_iter().collect();
        let mut sorted: Vec<(EntryId, String)> = shelves.today.all::<T>().map(words).collect();
        // Small before large, as they stand on a shelf: 64 before 102, 9 karat before 14.
        sorted.sort_by_cached_key(|(id, _)| chunks(id.as_str()));
        all.extend(sorted.into_iter().map(|(id, words)| Offered { here: now == Some(&id), value: Some(id), words }));
        // What the job holds and the shelf no longer does stays in sight.
        if let Some(id) = now.filter(|id| all.iter().all(|one| one.value.as_ref() != Some(*id))) {
            all.push(Offered { value: Some(id.clone()), words: named(id), here: true });
        }
        all
    })
}

/// Words and numbers of an id in turn, so that numbers sort as numbers.
fn chunks(id: &str) -> Vec<(String, u64)> {
    let mut chunks: Vec<(String, u64)> = vec![(String::new(), 0)];
    for sign in id.chars() {
        let last = chunks.len() - 1;
        match sign.to_digit(10) {
            Some(digit) => chunks[last].1 = chunks[last].1.saturating_mul(10).saturating_add(u64::from(digit)),
            None if chunks[last].1 > 0 => chunks.push((sign.to_string(), 0)),
            None => chunks[last].0.push(sign),
        }
    }
    chunks
}

/// What a chooser keeps while its list is open.
#[derive(Debug, Clone, Default)]
struct Looking {
    /// What was typed to look through the list.
    typed: String,
    /// The row that Enter takes.
    at: Option<usize>,
    /// The row was moved by a key, so that it has to come into sight.
    moved: bool,
}

/// What the keys asked for.
#[derive(Debug, Default, Clone, Copy, PartialEq, Eq)]
struct Asked {
    open: bool,
    take: bool,
    leave: bool,
    step: isize,
}

/// Chooses one of what `offered` gives; that is asked only while the list is open.
pub fn pick<T: Clone>(
    ui: &mut Ui,
    cx: &Cx<'_>,
    (id, name, width): (Id, &str, f32),
    shown: Option<String>,
    offered: impl FnOnce() -> Vec<Offered<T>>,
) -> Option<Option<T>> {
    let popup = id.with("list");
    let was_open = Popup::is_id_open(ui.ctx(), popup);
    let mut looking: Looking = if was_open { ui.data(|data| data.get_temp(popup)).unwrap_or_default() } else { Looking::default() };
    let asked = keys(ui, id, was_open, &mut looking);
    let response = button(ui, cx, (id, width), shown.as_deref());
    response.widget_info(|| WidgetInfo { current_text_value: shown.clone(), ..WidgetInfo::labeled(Role::ComboBox, ui.is_enabled(), name) });
    order::register(ui, id, response.rect);
    if response.clicked() {
        response.request_focus();
    }
    if response.has_focus() {
        ui.painter().rect_stroke(response.rect, 3, Stroke::new(2.0, cx.tokens.act), StrokeKind::Outside);
        let filter = EventFilter { vertical_arrows: true, escape: was_open, ..EventFilter::default() };
        ui.memory_mut(|memory| memory.set_focus_lock_filter(id, filter));
    }
    let opens = asked.open || response.clicked();
    let mut found: Vec<Offered<T>> = Vec::new();
    if was_open || opens {
        found = looked_through(offered(), &looking.typed.to_lowercase());
        settle(&mut looking, &found, asked.step);
    }
    let mut chosen = looking.at.filter(|_| asked.take).and_then(|at| found.get(at)).cloned();
    // Where nothing is called so the list stays, to be looked through again.
    let taken = chosen.is_some();
    let list = Popup::from_toggle_button_response(&response)
        .id(popup)
        .width(width.max(260.0))
        .close_behavior(PopupCloseBehavior::CloseOnClickOutside);
    let list = if asked.open { list.open_memory(Some(SetOpenCommand::Bool(true))) } else { list };
    let shown = list.show(|ui| {
        if let Some(clicked) = rows(ui, cx, &looking, &found, width.max(260.0)) {
            chosen = Some(clicked);
            ui.close();
        }
    });
    if let Some(shown) = shown {
        let rect = shown.response.rect;
        let [x0, y0, x1, y1] = [rect.left(), rect.top(), rect.right(), rect.bottom()].map(f64::from);
        ui.ctx().accesskit_node_builder(popup, |node| {
            node.set_role(Role::ListBox);
            node.set_label(name);
            node.set_bounds(accesskit::Rect { x0, y0, x1, y1 });
        });
    }
    if taken || asked.leave {
        Popup::close_id(ui.ctx(), popup);
    }
    if taken {
        order::move_down(ui, id, response.rect);
    }
    looking.moved = false;
    ui.data_mut(|data| data.insert_temp(popup, looking));
    chosen.filter(|one| !one.here).map(|one| one.value)
}

/// What shows the choice and opens the list.
fn button(ui: &mut Ui, cx: &Cx<'_>, (id, width): (Id, f32), shown: Option<&str>) -> Response {
    let tokens = &cx.tokens;
    let height = ui.spacing().interact_size.y;
    let (_, rect) = ui.allocate_space(egui::vec2(width, height));
    let response = ui.interact(rect, id, Sense::click());
    let open = Popup::is_id_open(ui.ctx(), id.with("list"));
    let edge = if response.hovered() || open { tokens.act } else { tokens.edge };
    let fill = if open { tokens.act_ground } else { tokens.field };
    let painter = ui.painter();
    painter.rect(rect, 3, fill, Stroke::new(1.0, edge), StrokeKind::Inside);
    let none = cx.label("choice-none");
    let (words, ink) = shown.map_or((none.as_str(), tokens.ink3), |shown| (shown, tokens.ink));
    let ink = if ui.is_enabled() { ink } else { tokens.ink3 };
    let mut job = egui::text::LayoutJob::simple_singleline(words.to_owned(), FontId::proportional(size::BODY), ink);
    job.wrap = egui::text::TextWrapping::truncate_at_width(rect.width() - 32.0);
    let words = ui.fonts_mut(|fonts| fonts.layout_job(job));
    painter.galley(egui::pos2(rect.left() + 8.0, rect.center().y - words.size().y / 2.0), words, ink);
    let tip = egui::pos2(rect.right() - 13.0, rect.center().y + 2.5);
    let sign = vec![tip + egui::vec2(-4.5, -5.0), tip + egui::vec2(4.5, -5.0), tip];
    painter.add(Shape::convex_polygon(sign, ink, Stroke::NONE));
    response
}

/// What is typed while a chooser has the focus, or its list is open.
fn keys(ui: &Ui, button: Id, open: bool, looking: &mut Looking) -> Asked {
    let focused = ui.memory(|memory| memory.focused());
    if !ui.is_enabled() || focused != Some(button) {
        return Asked::default();
    }
    let mut asked = Asked::default();
    ui.input_mut(|input| {
        let typed = letters(input, open);
        if !typed.is_empty() {
            (asked.open, looking.at) = (!open, None);
            looking.typed.push_str(&typed);
        }
        let mut pressed = |key| input.consume_key(Modifiers::NONE, key);
        for (key, step) in [(Key::ArrowDown, 1), (Key::ArrowUp, -1), (Key::PageDown, 8), (Key::PageUp, -8)] {
            if pressed(key) {
                (asked.open, asked.step) = (!open, if open { step } else { 0 });
            }
        }
        if open {
            asked.take = pressed(Key::Enter);
            asked.leave = pressed(Key::Escape);
            if pressed(Key::Backspace) {
                looking.typed.pop();
                looking.at = None;
            }
            // Tab goes on to the next field, not into the list.
            asked.leave |= input.key_pressed(Key::Tab);
        }
    });
    asked
}

/// The letters that were typed. A blank opens a list, as it does any button, and is a letter only within it.
fn letters(input: &mut InputState, open: bool) -> String {
    let mut typed = String::new();
    input.events.retain(|event| match event {
        Event::Text(text) if open || !text.trim().is_empty() => {
            typed.push_str(text);
            false
        }
        _ => true,
    });
    if open && typed.contains(' ') {
        input.consume_key(Modifiers::NONE, Key::Space);
    }
    typed
}

/// What fits the letters typed: what begins with them first, then what holds them as they stand, then what holds every word of them.
fn looked_through<T>(mut offered: Vec<Offered<T>>, typed: &str) -> Vec<Offered<T>> {
    if typed.is_empty() {
        return offered;
    }
    offered.retain(|one| typed.split_whitespace().all(|part| one.words.to_lowercase().contains(part)));
    offered.sort_by_cached_key(|one| {
        let words = one.words.to_lowercase();
        if words.starts_with(typed) { 0 } else { 2 - u8::from(words.contains(typed)) }
    });
    offered
}

/// Keeps the row that Enter takes within what was found.
fn settle<T>(looking: &mut Looking, found: &[Offered<T>], step: isize) {
    if looking.at.is_none() {
        let here = found.iter().position(|one| one.here).filter(|_| looking.typed.is_empty());
        looking.at = here.or(Some(0));
        looking.moved = true;
    }
    let last = found.len().saturating_sub(1);
    looking.at = looking.at.map(|at| at.saturating_add_signed(step).min(last));
    looking.moved |= step != 0;
}

/// The open list; only the rows in sight are made.
fn rows<T: Clone>(ui: &mut Ui, cx: &Cx<'_>, looking: &Looking, found: &[Offered<T>], width: f32) -> Option<Offered<T>> {
    let tokens = &cx.tokens;
    if !looking.typed.is_empty() {
        ui.label(RichText::new(cx.say("choice-typed", &[("typed", looking.typed.as_str().into())])).size(12.0).color(tokens.ink2));
    }
    if found.is_empty() {
        ui.label(RichText::new(cx.label("choice-no-such")).color(tokens.ink2));
    }
    let mut clicked = None;
    let mut area = ScrollArea::vertical().max_height(HEIGHT).auto_shrink([false, true]);
    let step = ROW + ui.spacing().item_spacing.y;
    if looking.moved
        && let Some(at) = looking.at
    {
        #[allow(clippy::cast_precision_loss, reason = "a place on the screen")]
        let top = at as f32 * step - HEIGHT / 2.0;
        area = area.vertical_scroll_offset(top.clamp(0.0, (found.len() as f32 * step - HEIGHT).max(0.0)));
    }
    area.show_rows(ui, ROW, found.len(), |ui, range| {
        for place in range {
            let one = &found[place];
            let row = Button::selectable(one.here, &one.words).min_size(egui::vec2(width, ROW)).truncate();
            let response = ui.add(row);
            response.widget_info(|| WidgetInfo::selected(Role::ListBoxOption, true, one.here, &one.words));
            if looking.at == Some(place) {
                ui.painter().rect_stroke(response.rect, 3, Stroke::new(1.0, tokens.act), StrokeKind::Inside);
            }
            if response.clicked() {
                clicked = Some(one.clone());
            }
        }
    });
    clicked
}
