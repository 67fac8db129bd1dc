//! What differs for single pieces of a line: a size or a pattern of its own, no longer wanted, not to be made again.

use eframe::egui::{Checkbox, Id, Ui};

use super::{change, line};
use crate::app::cx::Cx;
use crate::app::widget::choice::choice;
use crate::app::widget::number::{Number, count};
use crate::app::widget::row::row;
use crate::app::widget::rows::{choose, rows};
use crate::app::widget::text::notes;
use crate::app::widget::{button, heading};
use crate::job::{Line, PieceException, Size};
use crate::quantity::Kind;

/// Width of a choice.
const WIDE: f32 = 240.0;

/// Sets what a tick says of a piece.
type Tick = fn(&mut PieceException, bool);

/// Shows the pieces that differ, and the chosen one.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>, of: &Line) {
    let tokens = cx.tokens;
    heading::says(ui, &cx.label("orders-pieces-says"), &tokens);
    // Which piece is looked at is no part of any document, and no other page asks for it.
    let key = Id::unique(("line-piece", of.id.0));
    let mut chosen: Option<u32> = ui.data(|data| data.get_temp::<Option<u32>>(key)).flatten();
    let numbers: Vec<u32> = of.exceptions.keys().copied().collect();
    rows(ui, "pieces", numbers.len(), |ui, place| {
        let number = numbers[place];
        let words = cx.say("orders-piece-name", &[("number", u64::from(number).into())]);
        if choose(ui, cx, chosen == Some(number), &words, &about(cx, &of.exceptions[&number])) {
            chosen = Some(number);
        }
    });
    let label = cx.label("orders-piece");
    let field = Number::new(Id::unique(("line-piece-number", of.id.0)), &label, Kind::Count).now(chosen.map(f64::from));
    if let Some(asked) = row(ui, &label, &tokens, |ui| count(ui, cx, &field)) {
        chosen = asked.map(|number| number.clamp(1, of.quantity.max(1)));
    }
    if let Some(number) = chosen {
        let own = of.exceptions.get(&number).cloned().unwrap_or_default();
        piece(ui, cx, (of, number), &own);
    }
    ui.data_mut(|data| data.insert_temp(key, chosen));
}

/// What is different about a piece, in a few words.
fn about(cx: &Cx<'_>, own: &PieceException) -> String {
    let mut words = Vec::new();
    match &own.size {
        Some(Size::Ring { size, .. }) => words.push(size.clone()),
        Some(Size::Free(said)) => words.push(said.clone()),
        None => {}
    }
    words.extend(own.pattern.map(|id| crate::app::names::pattern(cx, id)));
    let signs = [
        (own.cancelled, "orders-piece-cancelled"),
        (own.irreplaceable, "orders-piece-irreplaceable"),
        (own.from.is_some(), "orders-piece-from"),
        (own.remake_of.is_some(), "orders-piece-remake"),
    ];
    words.extend(signs.into_iter().filter(|(on, _)| *on).map(|(_, key)| cx.label(key)));
    words.join(", ")
}

/// The fields of one piece.
fn piece(ui: &mut Ui, cx: &mut Cx<'_>, (of, number): (&Line, u32), own: &PieceException) {
    let (tokens, id) = (cx.tokens, of.id);
    if let Some(size) = line::size_of(ui, cx, (id.0, number), own.size.as_ref()) {
        change::piece(cx, "edit-orders-piece-size", (id, number), move |own| own.size = size);
    }
    let label = cx.label("orders-pattern");
    let options = line::patterns(cx);
    let name = line::piece_named(cx, &label, number);
    let place = (Id::unique(("piece-pattern", id.0, number)), name.as_str(), WIDE);
    if let Some(pattern) = row(ui, &label, &tokens, |ui| choice(ui, cx, place, own.pattern.as_ref(), &options, true)) {
        change::piece(cx, "edit-orders-piece-pattern", (id, number), move |own| own.pattern = pattern);
    }
    let ticks: [(&str, &str, bool, Tick); 2] = [
        ("orders-piece-cancelled", "edit-orders-piece-cancelled", own.cancelled, |own, on| own.cancelled = on),
        ("orders-piece-irreplaceable", "edit-orders-piece-irreplaceable", own.irreplaceable, |own, on| own.irreplaceable = on),
    ];
    for (key, edit, now, set) in ticks {
        let mut on = now;
        if ui.add(Checkbox::new(&mut on, cx.label(key))).changed() {
            change::piece(cx, edit, (id, number), move |own| set(own, on));
        }
    }
    let label = cx.label("orders-notes");
    let place = Id::unique(("piece-notes", id.0, number));
    if let Some(said) = row(ui, &label, &tokens, |ui| notes(ui, cx, place, &line::piece_named(cx, &label, number), &own.notes, 320.0)) {
        change::piece(cx, "edit-orders-piece-notes", (id, number), move |own| own.notes = said);
    }
    // Where a piece came from is kept: without it the other job would offer the piece again.
    if *own != PieceException::default() && button::plain(ui, &cx.label("orders-piece-like-others"), &tokens).clicked() {
        change::piece(cx, "edit-orders-piece-like-others", (id, number), |own| {
            *own = PieceException { from: own.from, remake_of: own.remake_of, ..PieceException::default() };
        });
    }
}
