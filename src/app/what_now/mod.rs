//! What to do when something goes wrong: cards in large type over whatever was looked at. Nothing behind them is touched: Escape leads back to it
//! as it was left.

mod keys;
mod large;
mod list;
mod one;

use eframe::egui::{Response, Ui};

use super::cx::Cx;
use crate::paper::what_now::Trouble;
use keys::Asked;
use large::Large;

/// What is shown of the cards.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Cards {
    /// All of them, to choose from.
    List,
    /// One.
    One(Trouble),
}

/// Shows the cards.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>) {
    let Some(cards) = cx.view.cards else { return };
    let asked = keys::asked(ui, cards);
    let now = after(cards, asked);
    cx.view.cards = now;
    if now != Some(cards) {
        ui.ctx().request_repaint();
    }
    let large = Large::of(ui, cx.tokens);
    let pressed = match now {
        Some(Cards::List) => list::show(ui, cx, &large),
        Some(Cards::One(trouble)) => one::show(ui, cx, &large, trouble, &asked),
        None => None,
    };
    if let Some(pressed) = pressed {
        cx.view.cards = now.and_then(|now| after(now, Some(pressed)));
        ui.ctx().request_repaint();
    }
}

/// Keeps the focus among what is shown, beginning with the first: whoever came by keys goes on by keys.
fn hold(ui: &Ui, all: &[Response]) {
    let focused = ui.memory(|memory| memory.focused());
    let here = all.iter().any(|response| Some(response.id) == focused);
    if let Some(first) = all.first().filter(|_| !here) {
        first.request_focus();
        ui.ctx().request_repaint();
    }
}

/// Where a wish leads.
fn after(now: Cards, asked: Option<Asked>) -> Option<Cards> {
    match (now, asked) {
        (Cards::List, Some(Asked::Back)) => None,
        (Cards::One(_), Some(Asked::Back)) => Some(Cards::List),
        (_, Some(Asked::Card(trouble))) => Some(Cards::One(trouble)),
        (Cards::One(trouble), Some(Asked::Turn(by))) => Some(Cards::One(turned(trouble, by))),
        (now, _) => Some(now),
    }
}

/// The card so many further on, round from the last to the first.
fn turned(trouble: Trouble, by: isize) -> Trouble {
    let all = Trouble::ALL;
    let place = all.iter().position(|other| *other == trouble).unwrap_or(0);
    all[(place + all.len()).saturating_add_signed(by) % all.len()]
}
