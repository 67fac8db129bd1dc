//! The keys of the cards: figures choose, arrows turn and scroll, Escape leads back.

use eframe::egui::{Event, Key, Modifiers, Ui};

use super::Cards;
use crate::paper::what_now::Trouble;

/// What the keys or a press asked for.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Asked {
    /// To the list, or to what was looked at before.
    Back,
    /// A card.
    Card(Trouble),
    /// So many cards further on.
    Turn(isize),
    /// So much further down, in points.
    Down(f32),
}

/// What the keys ask for.
pub fn asked(ui: &Ui, cards: Cards) -> Option<Asked> {
    const FIGURES: [Key; 9] = [Key::Num1, Key::Num2, Key::Num3, Key::Num4, Key::Num5, Key::Num6, Key::Num7, Key::Num8, Key::Num9];
    let page = 0.8 * ui.available_height();
    ui.input_mut(|input| {
        if input.consume_key(Modifiers::NONE, Key::Escape) {
            return Some(Asked::Back);
        }
        // On some keyboards a figure is typed with Shift: then only its text tells.
        let typed = input.events.iter().find_map(|event| match event {
            Event::Text(text) => text.parse::<usize>().ok(),
            _ => None,
        });
        let pressed = FIGURES.into_iter().position(|key| input.consume_key(Modifiers::NONE, key)).map(|place| place + 1);
        if let Some(card) = pressed.or(typed).and_then(|number| Trouble::ALL.get(number.wrapping_sub(1))) {
            return Some(Asked::Card(*card));
        }
        if cards == Cards::List {
            // There the arrows go from button to button.
            return None;
        }
        let moves = [
            (Key::ArrowRight, Asked::Turn(1)),
            (Key::ArrowLeft, Asked::Turn(-1)),
            (Key::ArrowDown, Asked::Down(80.0)),
            (Key::ArrowUp, Asked::Down(-80.0)),
            (Key::PageDown, Asked::Down(page)),
            (Key::PageUp, Asked::Down(-page)),
        ];
        moves.into_iter().find(|(key, _)| input.consume_key(Modifiers::NONE, *key)).map(|(_, asked)| asked)
    })
}
