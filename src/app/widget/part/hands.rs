//! Turning, moving, zooming and cutting by mouse and by keys.

use eframe::egui::{self, EventFilter, Key, Modifiers, PointerButton, Response, Ui};

use super::sight::Sight;
use crate::mesh::look::{Axis, Model, StandardView};

/// Degrees that an arrow key turns.
const KEY_DEG: f64 = 15.0;
/// What one press of a key zooms by.
const KEY_ZOOM: f64 = 1.25;
/// The share of the picture's shorter side that an arrow key with Shift moves.
const KEY_MOVE: f64 = 0.1;
/// The share of the pattern that a key moves the cut by.
pub(super) const KEY_CUT: f64 = 0.02;
/// Points of the wheel that zoom to e times the size.
const WHEEL: f64 = 240.0;

/// What the pointer does.
pub(super) fn pointer(ui: &Ui, response: &Response, model: &Model, size_px: [u32; 2], sight: &mut Sight) {
    let pixels = f64::from(ui.pixels_per_point());
    let middle = [f64::from(size_px[0]) / 2.0, f64::from(size_px[1]) / 2.0];
    if response.clicked() || response.drag_started() {
        response.request_focus();
    }
    if response.dragged() {
        let by = response.drag_delta();
        let by = [f64::from(by.x) * pixels, f64::from(by.y) * pixels];
        let moves = !response.dragged_by(PointerButton::Primary) || ui.input(|input| input.modifiers.shift);
        sight.camera = if moves { sight.camera.panned(by, model, size_px) } else { sight.camera.dragged(by, size_px) };
    }
    if response.double_clicked() {
        sight.camera = sight.camera.fitted();
    }
    if response.hovered() {
        // Once it was clicked the wheel is used up here and the page stays where it is; before that a wheel that comes by turns the page.
        let held = response.has_focus();
        let taken = |input: &mut egui::InputState| if held { std::mem::take(&mut input.smooth_scroll_delta.y) } else { 0.0 };
        let (wheel, pinch) = ui.input_mut(|input| (taken(input), input.zoom_delta()));
        let factor = (f64::from(wheel) / WHEEL).exp() * f64::from(pinch);
        if (factor - 1.0).abs() > 1e-6 {
            let at = response.hover_pos().map_or(middle, |at| {
                let off = at - response.rect.min;
                [f64::from(off.x) * pixels, f64::from(off.y) * pixels]
            });
            sight.camera = sight.camera.zoomed(factor, at, model, size_px);
        }
    }
}

/// What keys do while the picture has the focus. True where the middle of the picture was picked.
pub(super) fn keys(ui: &Ui, response: &Response, model: &Model, size_px: [u32; 2], sight: &mut Sight) -> bool {
    if !response.has_focus() {
        return false;
    }
    let filter = EventFilter { horizontal_arrows: true, vertical_arrows: true, ..EventFilter::default() };
    ui.memory_mut(|memory| memory.set_focus_lock_filter(response.id, filter));
    let pressed = |modifiers: Modifiers, key: Key| ui.input_mut(|input| input.consume_key(modifiers, key));
    let plain = |key: Key| pressed(Modifiers::NONE, key);
    let middle = [f64::from(size_px[0]) / 2.0, f64::from(size_px[1]) / 2.0];
    let step = KEY_MOVE * f64::from(size_px[0].min(size_px[1]));
    for (key, right, down) in
        [(Key::ArrowLeft, -1.0, 0.0), (Key::ArrowRight, 1.0, 0.0), (Key::ArrowUp, 0.0, -1.0), (Key::ArrowDown, 0.0, 1.0)]
    {
        // With Shift first: without it, Shift would not be looked at.
        if pressed(Modifiers::SHIFT, key) {
            sight.camera = sight.camera.panned([step * right, step * down], model, size_px);
        } else if plain(key) {
            sight.camera = sight.camera.turned(-KEY_DEG * right, KEY_DEG * down);
        }
    }
    if plain(Key::Plus) || plain(Key::Equals) {
        sight.camera = sight.camera.zoomed(KEY_ZOOM, middle, model, size_px);
    }
    if plain(Key::Minus) {
        sight.camera = sight.camera.zoomed(1.0 / KEY_ZOOM, middle, model, size_px);
    }
    if plain(Key::Num0) {
        sight.camera = sight.camera.fitted();
    }
    let numbers = [Key::Num1, Key::Num2, Key::Num3, Key::Num4, Key::Num5, Key::Num6, Key::Num7];
    for (key, view) in numbers.into_iter().zip(StandardView::ALL) {
        if plain(key) {
            sight.camera = sight.camera.seen_from(view);
        }
    }
    cut_keys(&plain, sight);
    plain(Key::Space)
}

fn cut_keys(plain: &impl Fn(Key) -> bool, sight: &mut Sight) {
    if plain(Key::C) {
        if sight.is_cut {
            sight.is_cut = false;
        } else {
            sight.cut_across(sight.cut.axis);
        }
    }
    for (key, axis) in [Key::X, Key::Y, Key::Z].into_iter().zip(Axis::ALL) {
        if plain(key) {
            sight.cut_across(axis);
        }
    }
    if sight.is_cut {
        for (key, by) in [(Key::PageUp, KEY_CUT), (Key::Period, KEY_CUT), (Key::PageDown, -KEY_CUT), (Key::Comma, -KEY_CUT)] {
            if plain(key) {
                sight.move_cut(by);
            }
        }
        if plain(Key::R) {
            sight.turn_cut_round();
        }
    }
}
