//! One line: so many pieces of a design in an alloy, and what its metal weighs and costs.

use eframe::egui::{Id, Ui};

use super::change;
use crate::app::cx::Cx;
use crate::app::page::take_out::{highest_recorded, take_out};
use crate::app::widget::choice::{choice, entry_of};
use crate::app::widget::figure::{Look, figure};
use crate::app::widget::heading;
use crate::app::widget::moment::day;
use crate::app::widget::number::{Number, count, number};
use crate::app::widget::row::row;
use crate::app::widget::text::{notes, text};
use crate::job::{Line, PatternId, Place, Size};
use crate::quantity::Kind;
use crate::stock::{Alloy, EntryId, RingScale};

/// Width of a choice.
const WIDE: f32 = 240.0;

/// Shows it.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>, line: &Line) {
    let tokens = cx.tokens;
    heading::group(ui, &cx.label("orders-line"), &tokens);
    what(ui, cx, line);
    size(ui, cx, line);
    pattern(ui, cx, line);
    figures(ui, cx, line);
    cx.folded(ui, "orders-back", |ui, cx| super::back::show(ui, cx, line));
    cx.folded(ui, "orders-single-pieces", |ui, cx| super::pieces::show(ui, cx, line));
    cx.folded(ui, "orders-line-more", |ui, cx| more(ui, cx, line));
}

fn what(ui: &mut Ui, cx: &mut Cx<'_>, line: &Line) {
    let (tokens, id) = (cx.tokens, line.id);
    let label = cx.label("orders-design");
    let design = row(ui, &label, &tokens, |ui| text(ui, cx, Id::unique(("line-design", id.0)), &label, &line.design, WIDE));
    if let Some(design) = design {
        change::line(cx, "edit-orders-design", id, move |line| line.design = design);
    }
    let label = cx.label("orders-quantity");
    let field = Number::new(Id::unique(("line-quantity", id.0)), &label, Kind::Count).now(Some(f64::from(line.quantity)));
    if let Some(Some(pieces)) = row(ui, &label, &tokens, |ui| count(ui, cx, &field)) {
        // Pieces that the record tells of stay.
        let least = highest_recorded(cx.job, id).max(1);
        cx.edit("edit-orders-quantity", move |job| change::quantity(job, id, pieces.max(least)));
    }
    let label = cx.label("orders-alloy");
    let words = |alloy: &Alloy| (alloy.id.clone(), alloy.name.clone());
    let place = (Id::unique(("line-alloy", id.0)), label.as_str(), WIDE);
    if let Some(alloy) = row(ui, &label, &tokens, |ui| entry_of(ui, cx, place, line.alloy.as_ref(), words)) {
        change::line(cx, "edit-orders-alloy", id, move |line| line.alloy = alloy);
    }
}

fn size(ui: &mut Ui, cx: &mut Cx<'_>, line: &Line) {
    // No piece has the number nought: it stands for the line.
    if let Some(size) = size_of(ui, cx, (line.id.0, 0), line.size.as_ref()) {
        change::line(cx, "edit-orders-size", line.id, move |line| line.size = size);
    }
}

/// A ring size on a scale of the shelf, or anything else in words.
pub fn size_of(ui: &mut Ui, cx: &Cx<'_>, key: (u32, u32), now: Option<&Size>) -> Option<Option<Size>> {
    let tokens = cx.tokens;
    let named = |label: &str| if key.1 == 0 { label.to_owned() } else { piece_named(cx, label, key.1) };
    let (scale, said) = match now {
        Some(Size::Ring { scale, size }) => (Some(scale.clone()), size.clone()),
        Some(Size::Free(words)) => (None, words.clone()),
        None => (None, String::new()),
    };
    let made = |scale: Option<EntryId>, said: String| match scale {
        Some(scale) => Some(Size::Ring { scale, size: said }),
        None if said.is_empty() => None,
        None => Some(Size::Free(said)),
    };
    let label = cx.label("orders-scale");
    let words = |scale: &RingScale| (scale.id.clone(), scale.name.clone());
    let name = named(&label);
    let place = (Id::unique(("line-scale", key)), name.as_str(), WIDE);
    let other = row(ui, &label, &tokens, |ui| entry_of(ui, cx, place, scale.as_ref(), words));
    let label = cx.label("orders-size");
    let typed = row(ui, &label, &tokens, |ui| text(ui, cx, Id::unique(("line-size", key)), &named(&label), &said, 132.0));
    match (other, typed) {
        (None, None) => None,
        (other, typed) => Some(made(other.unwrap_or(scale), typed.unwrap_or(said))),
    }
}

/// A field of one piece, whose line has a field of the same label.
#[must_use]
pub fn piece_named(cx: &Cx<'_>, label: &str, number: u32) -> String {
    format!("{label}, {}", cx.say("orders-piece-name", &[("number", u64::from(number).into())]))
}

/// The patterns to choose from.
pub fn patterns(cx: &Cx<'_>) -> Vec<(PatternId, String)> {
    // Named here and not by id, which would look through all patterns for each of them.
    let named = |pattern: &crate::job::Pattern| match pattern.name.trim() {
        "" => cx.say("name-pattern", &[("name", pattern.id.to_string().into())]),
        name => name.to_owned(),
    };
    cx.job.patterns.iter().map(|pattern| (pattern.id, named(pattern))).collect()
}

fn pattern(ui: &mut Ui, cx: &mut Cx<'_>, line: &Line) {
    let (tokens, id) = (cx.tokens, line.id);
    let label = cx.label("orders-pattern");
    let options = patterns(cx);
    let place = (Id::unique(("line-pattern", id.0)), label.as_str(), WIDE);
    if let Some(pattern) = row(ui, &label, &tokens, |ui| choice(ui, cx, place, line.pattern.as_ref(), &options, true)) {
        change::line(cx, "edit-orders-pattern", id, move |line| line.pattern = pattern);
    }
}

fn figures(ui: &mut Ui, cx: &mut Cx<'_>, line: &Line) {
    let tokens = cx.tokens;
    let Some(found) = cx.computed.report.lines.iter().find(|figures| figures.line == line.id).cloned() else { return };
    heading::group(ui, &cx.label("orders-metal"), &tokens);
    let mut rows = vec![
        ("orders-metal-each", found.metal),
        ("orders-rough", found.rough),
        ("orders-rough-all", found.rough_all),
        ("orders-per-gram", found.per_gram),
        ("orders-cost", found.cost),
    ];
    rows.extend(found.bore().map(|id| ("orders-bore", id)));
    // Where the axes of the printer differ there is no one measure: they stand with the way back.
    if let Some([x, y, z]) = found.ring.and_then(|ring| ring.typed).map(|typed| typed.map(|along| along.measure))
        && x == y
        && y == z
    {
        rows.push(("orders-typed", x));
    }
    for (key, figure_id) in rows {
        row(ui, &cx.label(key), &tokens, |ui| figure(ui, cx, figure_id, Look::ROW.width(190.0)));
    }
}

/// What most lines do not need.
fn more(ui: &mut Ui, cx: &mut Cx<'_>, line: &Line) {
    let (tokens, id) = (cx.tokens, line.id);
    let label = cx.label("orders-line-due");
    if let Some(due) = row(ui, &label, &tokens, |ui| day(ui, cx, Id::unique(("line-due", id.0)), &label, line.due, 132.0)) {
        change::line(cx, "edit-orders-due", id, move |line| line.due = due);
    }
    let label = cx.label("orders-mark");
    let field =
        Number::new(Id::unique(("line-mark", id.0)), &label, Kind::Fineness).now(line.mark_permille.map(crate::quantity::Finite::get));
    if let Some(mark) = row(ui, &label, &tokens, |ui| number(ui, cx, &field)) {
        change::line(cx, "edit-orders-mark", id, move |line| line.mark_permille = mark);
    }
    let label = cx.label("orders-finishing");
    let field =
        Number::new(Id::unique(("line-finishing", id.0)), &label, Kind::Duration).now(line.finishing_min.map(crate::quantity::Finite::get));
    if let Some(minutes) = row(ui, &label, &tokens, |ui| number(ui, cx, &field)) {
        change::line(cx, "edit-orders-finishing", id, move |line| line.finishing_min = minutes);
    }
    for (key, edit, now, set) in [
        ("orders-finish", "edit-orders-finish", &line.finish, (|line, words| line.finish = words) as fn(&mut Line, String)),
        ("orders-set", "edit-orders-set", &line.set, |line, words| line.set = words),
    ] {
        let label = cx.label(key);
        if let Some(words) = row(ui, &label, &tokens, |ui| text(ui, cx, Id::unique((key, id.0)), &label, now, WIDE)) {
            change::line(cx, edit, id, move |line| set(line, words));
        }
    }
    let label = cx.label("orders-notes");
    if let Some(said) =
        row(ui, &label, &tokens, |ui| notes(ui, cx, Id::unique(("line-notes", id.0)), &cx.label("orders-line-notes"), &line.notes, 320.0))
    {
        change::line(cx, "edit-orders-notes", id, move |line| line.notes = said);
    }
    take_out(ui, cx, ("orders-remove-line", "edit-orders-remove-line"), Place::Line(id), move |job| change::remove_line(job, id));
}
