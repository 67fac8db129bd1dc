//! The field that every entry is made in. What is typed stays until it is committed: Enter commits and moves down, Tab commits and moves on,
//! Escape restores, and text that cannot be read stays, marked, with its reason. Going through a field without typing changes nothing. Where
//! a default stands in lighter ink, Space takes it.

use eframe::egui::{
    self, Area, Context, Event, FontId, Frame, Id, Key, Label, Margin, Modifiers, Rect, RichText, Stroke, TextEdit, Ui, vec2,
};

use super::{button, order};
use crate::app::theme::{Tokens, size};

/// Why an entry is not taken, and what it may have meant.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Refusal {
    /// In words.
    pub says: String,
    /// What could be meant: what it would come to, and the text that says so.
    pub readings: Vec<(String, String)>,
}

impl From<String> for Refusal {
    fn from(says: String) -> Self {
        Self { says, readings: Vec::new() }
    }
}

/// A field.
#[derive(Debug, Clone)]
pub struct Entry<'a> {
    /// Its id, from a stable key of the document.
    pub id: Id,
    /// Its name.
    pub name: &'a str,
    /// What stands in it.
    pub shown: String,
    /// The default in effect where nothing stands in it, and the text that takes it.
    pub default: Option<String>,
    /// The unit behind it.
    pub unit: &'a str,
    /// Its width.
    pub width: f32,
    /// Numbers stand at the right.
    pub right: bool,
    /// For hands with gloves.
    pub large: bool,
    /// Several lines.
    pub lines: usize,
}

impl<'a> Entry<'a> {
    /// A field of one line.
    #[must_use]
    pub fn new(id: Id, name: &'a str, shown: String) -> Self {
        Self { id, name, shown, default: None, unit: "", width: super::row::FIELD, right: false, large: false, lines: 1 }
    }
}

/// What a field keeps between frames.
#[derive(Debug, Clone, Default)]
struct Draft {
    text: String,
    edited: bool,
    focused: bool,
    wrong: Option<Refusal>,
}

/// Shows a field. `Some` is text that was committed and that `check` lets pass; empty text is a wish for the default.
pub fn entry(ui: &mut Ui, field: &Entry<'_>, tokens: &Tokens, check: impl Fn(&str) -> Result<(), Refusal>) -> Option<String> {
    let id = field.id;
    let mut draft: Draft = ui.data(|data| data.get_temp(id)).unwrap_or_default();
    let mut focused = ui.memory(|memory| memory.has_focus(id));
    if !focused && !draft.focused && draft.wrong.is_none() {
        draft.text.clone_from(&field.shown);
        draft.edited = false;
    }
    // The framework takes the focus away on Escape before anything is drawn.
    let escaped = (focused || draft.focused) && ui.input(|input| input.key_pressed(Key::Escape));
    if escaped {
        ui.memory_mut(|memory| memory.surrender_focus(id));
        draft = Draft { text: field.shown.clone(), ..Draft::default() };
        focused = false;
    }
    let enter = focused && field.lines == 1 && ui.input_mut(|input| input.consume_key(Modifiers::NONE, Key::Enter));
    let takes = field.default.as_ref().filter(|_| focused && draft.text.is_empty());
    let taken = takes.filter(|_| ui.input_mut(take_space)).cloned();
    let rect = draw(ui, field, tokens, &mut draft);
    order::register(ui, id, rect);
    let now = ui.memory(|memory| memory.has_focus(id));
    if now && !draft.focused && !escaped {
        select_all(ui.ctx(), id, &draft.text);
    }
    let left = draft.focused && !now && !escaped;
    let mut committed = None;
    if let Some(default) = taken {
        draft.text = default;
        draft.edited = true;
        committed = commit(&mut draft, &check);
    } else if (enter || left) && draft.edited {
        committed = commit(&mut draft, &check);
    }
    if enter && draft.wrong.is_none() {
        order::move_down(ui, id, rect);
    }
    draft.focused = now;
    if let Some(text) = refused(ui, field, tokens, &draft, rect) {
        draft.text = text;
        committed = commit(&mut draft, &check);
    }
    ui.data_mut(|data| data.insert_temp(id, draft));
    committed
}

/// True where Space was pressed; nobody else sees it then.
fn take_space(input: &mut egui::InputState) -> bool {
    let before = input.events.len();
    input.events.retain(|event| !matches!(event, Event::Text(text) if text == " "));
    let typed = input.events.len() < before;
    input.consume_key(Modifiers::NONE, Key::Space) || typed
}

fn commit(draft: &mut Draft, check: &impl Fn(&str) -> Result<(), Refusal>) -> Option<String> {
    let text = draft.text.trim().to_owned();
    match check(&text) {
        Ok(()) => {
            draft.edited = false;
            draft.wrong = None;
            Some(text)
        }
        Err(refusal) => {
            draft.wrong = Some(refusal);
            None
        }
    }
}

fn draw(ui: &mut Ui, field: &Entry<'_>, tokens: &Tokens, draft: &mut Draft) -> Rect {
    let size = if field.large { 18.0 } else { size::BODY };
    let height = if field.large { 40.0 } else { 26.0 };
    let edge = if draft.wrong.is_some() { Stroke::new(1.8, tokens.stop) } else { Stroke::new(1.0, tokens.edge) };
    let unit = ui.fonts_mut(|fonts| fonts.layout_no_wrap(field.unit.to_owned(), FontId::proportional(12.0), tokens.ink3)).size().x;
    let unit_width = if field.unit.is_empty() { 0.0 } else { unit + 4.0 };
    let frame = Frame::new().fill(tokens.field).stroke(edge).corner_radius(3).inner_margin(Margin::symmetric(6, 0));
    let shown = frame.show(ui, |ui| {
        ui.spacing_mut().item_spacing.x = 4.0;
        let inside = |ui: &mut Ui| {
            let width = field.width - 12.0 - unit_width;
            let mut edit = if field.lines > 1 {
                TextEdit::multiline(&mut draft.text).desired_rows(field.lines)
            } else {
                TextEdit::singleline(&mut draft.text).align(egui::Align2::LEFT_CENTER).min_size(vec2(width, height))
            };
            edit = edit.id(field.id).frame(Frame::NONE).margin(Margin::ZERO).desired_width(width).font(FontId::proportional(size));
            if field.right {
                edit = edit.align(egui::Align2::RIGHT_CENTER);
            }
            if let Some(default) = &field.default {
                edit = edit.hint_text(RichText::new(default).color(tokens.ink3));
            }
            let response = edit.show(ui).response.response;
            if response.changed() {
                draft.edited = true;
                draft.wrong = None;
            }
            response.accessible_name(field.name);
            if !field.unit.is_empty() {
                ui.add_sized(vec2(unit, height), Label::new(RichText::new(field.unit).size(12.0).color(tokens.ink3)));
            }
        };
        if field.lines > 1 { ui.vertical(inside) } else { ui.horizontal(inside) }
    });
    let rect = shown.response.rect;
    if ui.memory(|memory| memory.has_focus(field.id)) {
        ui.painter().rect_stroke(rect, 3, Stroke::new(2.0, tokens.act), egui::StrokeKind::Outside);
    }
    rect
}

/// The reason an entry is not taken, with what it may have meant. It lies under its field and over what follows, so that nothing moves away
/// from under the hand.
fn refused(ui: &Ui, field: &Entry<'_>, tokens: &Tokens, draft: &Draft, rect: Rect) -> Option<String> {
    let wrong = draft.wrong.as_ref().filter(|_| ui.clip_rect().contains(rect.center()))?;
    let mut chosen = None;
    let area = Area::new(field.id.with("why")).order(egui::Order::Foreground).fixed_pos(rect.left_bottom() + vec2(0.0, 3.0));
    area.constrain_to(ui.ctx().content_rect()).show(ui.ctx(), |ui| {
        let edge = Stroke::new(1.0, tokens.stop);
        Frame::new().fill(tokens.field).stroke(edge).corner_radius(3).inner_margin(Margin::symmetric(8, 5)).show(ui, |ui| {
            ui.set_max_width(300.0);
            ui.add(Label::new(RichText::new(&wrong.says).size(12.5).color(tokens.stop)).wrap());
            for (says, text) in &wrong.readings {
                if button::link(ui, says, tokens).clicked() {
                    chosen = Some(text.clone());
                }
            }
        });
    });
    chosen
}

fn select_all(ctx: &Context, id: Id, text: &str) {
    if let Some(mut state) = TextEdit::load_state(ctx, id) {
        let end = egui::text::CCursor::new(text.chars().count());
        state.cursor.set_char_range(Some(egui::text::CCursorRange::two(egui::text::CCursor::new(0), end)));
        TextEdit::store_state(ctx, id, state);
    }
}
