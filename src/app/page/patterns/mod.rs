//! Waxes and prints: what each pattern weighs or measures, and what that makes of it in metal.

mod fields;
mod file;
pub mod form;
mod heavy;
mod key;
mod mending;
mod pair;
mod prints;
mod scale;
mod walls;

use eframe::egui::{Atom, Button, Id, Label, RichText, ScrollArea, Ui, vec2};

use crate::app::action::Action;
use crate::app::cx::Cx;
use crate::app::page::{Page, add_pattern, next_pattern};
use crate::app::theme::{ROW, STEP};
use crate::app::widget::figure::{Look, figure};
use crate::app::widget::row::row;
use crate::app::widget::{button, finding, heading, order};
use crate::job::{Job, Pattern, PatternId, Place};

/// Width of what is said of a pattern.
const FIELDS: f32 = 476.0;
/// Sides of its form, at most and at least.
const FORM: f32 = 520.0;
const LEAST_FORM: f32 = 260.0;
/// Its height where it stands under the list.
const LOW_FORM: f32 = 240.0;

/// Rows in sight at once.
const ROWS: usize = 8;
/// Under this name the list keeps which pattern was chosen when it was shown last.
const LIST_SHOWN: &str = "patterns-shown";

/// Shows the page: the patterns and what is said of the chosen one, its form beside them where there is room.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>) {
    let tokens = cx.tokens;
    heading::title(ui, &cx.label("stage-patterns"), "", &tokens);
    let job = cx.job;
    let chosen = job.patterns.iter().find(|pattern| Some(pattern.id) == cx.view.pattern);
    let wide = ui.available_width();
    let beside = (wide - FIELDS - 4.0 * STEP).min(FORM);
    let seen = cx.inspection.is_some();
    if seen && beside >= LEAST_FORM {
        ui.horizontal_top(|ui| {
            ui.vertical(|ui| {
                ui.set_width(FIELDS);
                patterns(ui, cx);
                chosen.inspect(|pattern| said(ui, cx, pattern));
            });
            ui.add_space(2.0 * STEP);
            chosen.inspect(|pattern| form::show(ui, cx, pattern, vec2(beside, beside)));
        });
    } else {
        patterns(ui, cx);
        if seen {
            ui.add_space(2.0 * STEP);
            chosen.inspect(|pattern| form::show(ui, cx, pattern, vec2(wide.min(FORM), LOW_FORM)));
        }
        chosen.inspect(|pattern| said(ui, cx, pattern));
    }
    if let Some(pattern) = chosen {
        cx.folded(ui, "patterns-more", |ui, cx| fields::more(ui, cx, pattern));
    }
    ui.add_space(2.0 * STEP);
    cx.folded(ui, "prints-runs", prints::show);
    ui.add_space(3.0 * STEP);
    // Those of the chosen pattern stand with it.
    let chosen = chosen.map(|pattern| Place::Pattern(pattern.id));
    finding::of_page(ui, cx, |found| Page::of_finding(found.kind, found.place) == Page::Patterns && Some(found.place) != chosen);
}

/// The list, and what adds to it.
fn patterns(ui: &mut Ui, cx: &mut Cx<'_>) {
    let (tokens, job) = (cx.tokens, cx.job);
    if job.patterns.is_empty() {
        heading::empty(ui, &cx.label("patterns-empty"), &cx.label("patterns-first"), &tokens);
    } else {
        list(ui, cx);
    }
    ui.add_space(STEP);
    ui.horizontal(|ui| {
        if button::main(ui, &cx.label("patterns-add"), &tokens).clicked() {
            let next = next_pattern(job);
            cx.look(move |view| view.pattern = Some(next));
            order::focus(ui.ctx(), eframe::egui::Id::unique(("pattern-name", next.0)));
            cx.edit("edit-patterns-add", |job| add_pattern(job, String::new(), None));
        }
        if button::plain(ui, &cx.label("do-ask-patterns"), &tokens).clicked() {
            cx.act(Action::AddPatterns);
        }
        if job.patterns.is_empty() && button::plain(ui, &cx.label("do-open-sample"), &tokens).clicked() {
            cx.act(Action::OpenSample);
        }
    });
}

/// What is said of the chosen pattern, and what follows from it.
fn said(ui: &mut Ui, cx: &mut Cx<'_>, pattern: &Pattern) {
    heading::group(ui, &cx.label("patterns-pattern"), &cx.tokens);
    finding::of_page(ui, cx, |found| found.place == Place::Pattern(pattern.id));
    fields::what(ui, cx, pattern);
    scale::show(ui, cx, pattern);
    file::show(ui, cx, pattern);
    figures(ui, cx, pattern.id);
    pair::show(ui, cx, pattern);
    walls::show(ui, cx, pattern);
    heavy::show(ui, cx, pattern);
    mending::show(ui, cx, pattern);
}

fn list(ui: &mut Ui, cx: &mut Cx<'_>) {
    let job = cx.job;
    let many = job.patterns.len();
    if many <= ROWS {
        (0..many).for_each(|place| one(ui, cx, &job.patterns[place]));
    } else {
        let height = (ROW + STEP) * ROWS as f32;
        let mut area = ScrollArea::vertical().id_salt("patterns").max_height(height);
        if let Some(place) = newly_chosen(ui, cx) {
            area = area.vertical_scroll_offset((place as f32 - ROWS as f32 / 2.0).max(0.0) * (ROW + ui.spacing().item_spacing.y));
        }
        area.show_rows(ui, ROW, many, |ui, range| {
            range.for_each(|place| one(ui, cx, &job.patterns[place]));
        });
    }
}

/// The place of the chosen pattern in the list, where it was chosen elsewhere since the list was shown last.
fn newly_chosen(ui: &Ui, cx: &Cx<'_>) -> Option<usize> {
    let key = Id::unique(LIST_SHOWN);
    let shown: Option<Option<PatternId>> = ui.data(|data| data.get_temp(key));
    ui.data_mut(|data| data.insert_temp(key, cx.view.pattern));
    cx.job.patterns.iter().position(|pattern| Some(pattern.id) == cx.view.pattern).filter(|_| shown != Some(cx.view.pattern))
}

/// One pattern: its name, and what is known of it.
fn one(ui: &mut Ui, cx: &mut Cx<'_>, pattern: &Pattern) {
    let tokens = cx.tokens;
    let here = cx.view.pattern == Some(pattern.id);
    let worst = cx.computed.at(Place::Pattern(pattern.id)).map(|found| found.kind.weight).min();
    ui.horizontal(|ui| {
        let name = crate::app::names::pattern(cx, pattern.id);
        let ink = if here { tokens.act } else { tokens.ink };
        let fill = if here { tokens.act_ground } else { tokens.paper };
        let button = Button::selectable(here, (RichText::new(name).color(ink), Atom::grow())).fill(fill).truncate();
        if ui.add_sized(vec2(220.0, ROW), button).clicked() {
            let id = pattern.id;
            // It is in sight already: the list stays as it is.
            ui.data_mut(|data| data.insert_temp(Id::unique(LIST_SHOWN), Some(id)));
            cx.look(move |view| view.pattern = Some(id));
        }
        if let Some(weight) = worst {
            let words = crate::paper::words::weight_words(weight, cx.texts);
            crate::app::widget::mark::mark(ui, weight, 13.0, &words, &tokens);
        }
        ui.add(Label::new(RichText::new(cx.label(state(cx, pattern))).color(tokens.ink2)).truncate());
    });
}

/// The key of what is known of a pattern.
fn state(cx: &Cx<'_>, pattern: &Pattern) -> &'static str {
    let file = pattern.file.as_ref().is_some_and(|file| !file.path.trim().is_empty());
    // The volume off the file waits as long as the file does; looking through the whole book would be slow in a large batch.
    let found = cx.computed.report.patterns.iter().find(|figures| figures.id == pattern.id);
    let pending =
        file && found.is_some_and(|found| cx.computed.book.figure(found.quote_volume).value.cause() == Some(crate::calc::Cause::Pending));
    match (pattern.weighed.is_some(), file) {
        (_, true) if pending => "patterns-waits",
        (true, true) => "patterns-both",
        (true, false) => "patterns-weighed",
        (false, true) => "patterns-file",
        (false, false) => "patterns-neither",
    }
}

fn figures(ui: &mut Ui, cx: &mut Cx<'_>, id: PatternId) {
    let tokens = cx.tokens;
    let Some(found) = cx.computed.report.patterns.iter().find(|figures| figures.id == id).cloned() else { return };
    heading::group(ui, &cx.label("patterns-figures"), &tokens);
    let mut rows = vec![
        ("patterns-weight", found.weight),
        ("patterns-charge-volume", found.charge_volume),
        ("patterns-quote-volume", found.quote_volume),
        ("patterns-density", found.density),
    ];
    rows.extend(found.implied_density.map(|id| ("patterns-implied-density", id)));
    if let Some(mould) = found.mould {
        rows.extend([("patterns-pieces", mould.pieces), ("patterns-shots", mould.shots), ("patterns-shrink", found.shrink)]);
        rows.extend(mould.wax.map(|id| ("patterns-wax", id)));
        rows.extend(mould.wax_at.map(|id| ("patterns-wax-at", id)));
        rows.extend(mould.pressure.map(|id| ("patterns-pressure", id)));
    }
    rows.extend(found.area.map(|id| ("patterns-area", id)));
    rows.extend(found.modulus.map(|id| ("patterns-modulus", id)));
    if let Some([along, across, deep]) = found.extents {
        rows.extend([("patterns-along", along), ("patterns-across", across), ("patterns-deep", deep)]);
    }
    for (key, figure_id) in rows {
        row(ui, &cx.label(key), &tokens, |ui| figure(ui, cx, figure_id, Look::ROW.width(190.0)));
    }
}

/// Changes a pattern.
fn change(cx: &mut Cx<'_>, key: &str, id: PatternId, change: impl FnOnce(&mut Pattern) + 'static) {
    cx.edit(key, move |job| {
        if let Some(pattern) = job.patterns.iter_mut().find(|pattern| pattern.id == id) {
            change(pattern);
        }
    });
}

/// Takes a pattern out; what it was chosen for has none then.
fn remove(job: &mut Job, id: PatternId) {
    job.patterns.retain(|pattern| pattern.id != id);
    for other in &mut job.patterns {
        other.pair = other.pair.take().filter(|pair| pair.with != id);
    }
    job.prints.iter_mut().for_each(|run| run.rows.retain(|row| row.pattern != id));
    for line in job.orders.iter_mut().flat_map(|order| &mut order.lines) {
        line.pattern = line.pattern.filter(|pattern| *pattern != id);
        for exception in line.exceptions.values_mut() {
            exception.pattern = exception.pattern.filter(|pattern| *pattern != id);
        }
    }
}
