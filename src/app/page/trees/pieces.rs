//! The pieces on a tree: a row for pieces of one line.

use std::collections::BTreeMap;

use eframe::egui::{Id, Label, RichText, ScrollArea, Ui, vec2};

use super::{change, hang, numbers};
use crate::app::cx::Cx;
use crate::app::theme::{ROW, STEP, Tokens};
use crate::app::widget::choice::{Offered, pick};
use crate::app::widget::entry::{Entry, entry};
use crate::app::widget::number::{Number, count, number};
use crate::app::widget::rows::numbered;
use crate::app::widget::{button, heading};
use crate::job::{Hung, LineId, Order, Tree};
use crate::quantity::{Finite, Kind};

/// Widths of the columns: line, numbers, tier, direction.
const COLUMNS: [f32; 4] = [180.0, 90.0, 60.0, 76.0];
/// Rows in sight at once.
const ROWS: usize = 10;

type Lines<'a> = BTreeMap<LineId, (&'a Order, &'a crate::job::Line)>;

/// Shows them.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>, tree: &Tree) {
    let (tokens, id) = (cx.tokens, tree.id);
    heading::group(ui, &cx.label("trees-pieces"), &tokens);
    let wanted: std::collections::BTreeSet<LineId> = tree.pieces.iter().map(|hung| hung.line).collect();
    let lines: Lines<'_> =
        cx.job.lines().filter(|(_, line)| wanted.contains(&line.id)).map(|(order, line)| (line.id, (order, line))).collect();
    if tree.pieces.is_empty() {
        heading::says(ui, &cx.label("trees-pieces-none"), &tokens);
    } else {
        heads(ui, cx, &tokens);
        if tree.pieces.len() > ROWS {
            let height = (ROW + STEP) * ROWS as f32;
            ScrollArea::vertical().id_salt(("hung", id.0)).max_height(height).show_rows(ui, ROW, tree.pieces.len(), |ui, range| {
                for place in range {
                    hung(ui, cx, tree, place, &lines);
                }
            });
        } else {
            for place in 0..tree.pieces.len() {
                hung(ui, cx, tree, place, &lines);
            }
        }
    }
    ui.horizontal_wrapped(|ui| {
        let first = cx.job.lines().next().map(|(_, line)| line.id);
        let taken = cx.view.line.or(first);
        if button::outlined(ui, &cx.label("trees-hang"), &tokens, first.is_some()).clicked()
            && let Some(line) = taken
        {
            change(cx, "edit-trees-hang", id, move |tree| tree.pieces.push(Hung { line, ..Hung::default() }));
        }
        // The calculation counts what hangs nowhere.
        let left = cx.computed.report.findings.iter().any(|found| found.kind.key == "pieces-on-no-tree");
        if button::outlined(ui, &cx.label("trees-hang-rest"), &tokens, left).clicked() {
            cx.edit("edit-trees-hang-rest", move |job| hang::hang_rest(job, id));
        }
    });
    if cx.job.orders.is_empty() {
        heading::says(ui, &cx.label("trees-no-lines"), &tokens);
    }
}

fn heads(ui: &mut Ui, cx: &Cx<'_>, tokens: &Tokens) {
    ui.horizontal(|ui| {
        for (key, width) in ["trees-line", "trees-numbers", "trees-tier", "trees-around"].into_iter().zip(COLUMNS) {
            let label = Label::new(RichText::new(cx.label(key)).size(12.0).color(tokens.ink2)).truncate();
            ui.allocate_ui(vec2(width, 16.0), |ui| {
                ui.set_min_width(width);
                ui.add(label);
            });
        }
    });
}

fn hung(ui: &mut Ui, cx: &mut Cx<'_>, tree: &Tree, place: usize, lines: &Lines<'_>) {
    let (tokens, id, row) = (cx.tokens, tree.id, &tree.pieces[place]);
    let edit = |cx: &mut Cx<'_>, key: &str, with: Box<dyn FnOnce(&mut Hung)>| {
        change(cx, key, id, move |tree| {
            if let Some(row) = tree.pieces.get_mut(place) {
                with(row);
            }
        });
    };
    let named = |cx: &Cx<'_>, key: &str| numbered(&cx.label(key), place);
    ui.horizontal(|ui| {
        let name = named(cx, "trees-line");
        let choosing = |ui: &mut Ui| {
            ui.set_min_width(COLUMNS[0]);
            line_choice(ui, cx, (Id::unique(("hung-line", id.0, place)), &name), row, lines)
        };
        if let Some(line) = ui.allocate_ui(vec2(COLUMNS[0], ROW), choosing).inner {
            edit(
                cx,
                "edit-trees-line",
                Box::new(move |row| {
                    row.line = line;
                    row.numbers.clear();
                }),
            );
        }
        let most = lines.get(&row.line).map_or(0, |(_, line)| line.quantity);
        if let Some(numbers) = numbers_field(ui, cx, (Id::unique(("hung-numbers", id.0, place)), &named(cx, "trees-numbers")), row, most) {
            edit(cx, "edit-trees-numbers", Box::new(move |row| row.numbers = numbers));
        }
        let label = named(cx, "trees-tier");
        let field = Number::new(Id::unique(("hung-tier", id.0, place)), &label, Kind::Count);
        if let Some(tier) = count(ui, cx, &field.now(row.tier.map(f64::from)).width(COLUMNS[2])) {
            edit(cx, "edit-trees-tier", Box::new(move |row| row.tier = tier.filter(|tier| *tier > 0)));
        }
        let label = named(cx, "trees-around");
        let field = Number::new(Id::unique(("hung-around", id.0, place)), &label, Kind::Angle);
        if let Some(around) = number(ui, cx, &field.now(row.around_deg.map(Finite::get)).width(COLUMNS[3])) {
            edit(cx, "edit-trees-around", Box::new(move |row| row.around_deg = around));
        }
        let name = lines.get(&row.line).map_or_else(|| row.line.to_string(), |(_, line)| line.design.clone());
        let off = button::link(ui, &cx.label("trees-take-off"), &tokens);
        let what = cx.say("trees-take-off-what", &[("what", name.into())]);
        if off.on_hover_text(&what).accessible_name(what).clicked() {
            change(cx, "edit-trees-take-off", id, move |tree| {
                if place < tree.pieces.len() {
                    tree.pieces.remove(place);
                    tree.placed.retain(|placed| tree.pieces.iter().any(|hung| hung.line == placed.line));
                }
            });
        }
    });
}

/// Chooses a line. The list is made only while it is open.
fn line_choice(ui: &mut Ui, cx: &Cx<'_>, (id, name): (Id, &str), row: &Hung, lines: &Lines<'_>) -> Option<LineId> {
    let words = |order: &Order, line: &crate::job::Line| {
        let args =
            [("design", line.design.clone().into()), ("client", order.client.clone().into()), ("count", u64::from(line.quantity).into())];
        cx.say("trees-line-words", &args)
    };
    let shown = lines.get(&row.line).map_or_else(|| cx.label("choice-unknown"), |(order, line)| words(order, line));
    let offered =
        |(order, line): (&Order, &crate::job::Line)| Offered { value: Some(line.id), words: words(order, line), here: line.id == row.line };
    pick(ui, cx, (id, name, COLUMNS[0]), Some(shown), || cx.job.lines().map(offered).collect()).flatten()
}

fn numbers_field(ui: &mut Ui, cx: &Cx<'_>, (id, label): (Id, &str), row: &Hung, most: u32) -> Option<std::collections::BTreeSet<u32>> {
    let field =
        Entry { width: COLUMNS[1], default: Some(cx.label("trees-numbers-all")), ..Entry::new(id, label, numbers::written(&row.numbers)) };
    let form = cx.say("trees-numbers-form", &[("most", u64::from(most).into())]);
    // Space takes the default in lighter ink, which is the word for all of them.
    let all = cx.label("trees-numbers-all");
    let read = |text: &str| if text == all { Some(std::collections::BTreeSet::new()) } else { numbers::read(text, most) };
    let text = entry(ui, &field, &cx.tokens, |text| read(text).map(drop).ok_or_else(|| form.clone().into()))?;
    read(&text)
}
