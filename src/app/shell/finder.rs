//! One field that finds any piece, pattern, tree, flask, figure, page or action.

use eframe::egui::{self, Id, Key, Modifiers, RichText, ScrollArea, TextEdit, Ui, vec2};

use crate::app::action::Action;
use crate::app::cx::Cx;
use crate::app::page::Page;
use crate::calc::Id as FigureId;
use crate::job::Place;
use crate::paper::what_now::Trouble;
use crate::paper::words::figure_title;

enum Hit {
    Do(Action),
    Figure(FigureId),
}

/// Shows the finder over the window while it is open.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>) {
    let Some(mut text) = cx.view.finder.clone() else { return };
    let ctx = ui.ctx().clone();
    let mut chosen = None;
    let enter = ctx.input_mut(|input| input.consume_key(Modifiers::NONE, Key::Enter));
    let modal = egui::Modal::new(Id::unique("finder")).show(&ctx, |ui| {
        ui.set_width(520.0);
        let hint = cx.label("top-find-hint");
        let field = ui.add(
            TextEdit::singleline(&mut text)
                .hint_text(RichText::new(&hint).color(cx.tokens.ink3))
                .desired_width(500.0)
                .min_size(vec2(500.0, 32.0)),
        );
        let field = field.accessible_name(hint);
        field.request_focus();
        let found = hits(cx, &text);
        if found.is_empty() && !text.trim().is_empty() {
            ui.label(RichText::new(cx.label("finder-nothing")).color(cx.tokens.ink2));
        }
        ScrollArea::vertical().max_height(380.0).min_scrolled_height(380.0).show(ui, |ui| {
            for (place, (what, words, hit)) in found.into_iter().enumerate() {
                let line = format!("{words}   ({what})");
                let response = ui.selectable_label(place == 0, line);
                if response.clicked() || (enter && place == 0) {
                    chosen = Some(hit);
                }
            }
        });
    });
    cx.view.finder = Some(text);
    match chosen {
        Some(Hit::Do(action)) => {
            cx.view.finder = None;
            cx.act(action);
        }
        Some(Hit::Figure(id)) => {
            cx.view.finder = None;
            let place = cx.computed.book.figure(id).place;
            cx.choose(id, true);
            cx.act(Action::Show(place));
        }
        None if modal.should_close() => cx.view.finder = None,
        None => {}
    }
}

/// So many are shown.
const MOST: usize = 40;
/// So many that fit are looked at, of which the closest are shown.
const LOOKED_AT: usize = 400;

/// At most so many of what is called so, the closest first.
fn hits(cx: &Cx<'_>, text: &str) -> Vec<(String, String, Hit)> {
    let wanted: Vec<String> = text.to_lowercase().split_whitespace().map(str::to_owned).collect();
    if wanted.is_empty() {
        return Vec::new();
    }
    let fits = |words: &str| {
        let lower = words.to_lowercase();
        wanted.iter().all(|part| lower.contains(part))
    };
    let mut found = Vec::new();
    let mut add = |what: &str, words: String, hit: Hit| {
        if found.len() < LOOKED_AT && fits(&words) {
            found.push((cx.label(what), words, hit));
        }
    };
    let job = cx.job;
    for page in Page::RAIL {
        add("finder-page", cx.label(page.key()), Hit::Do(Action::Go(page)));
    }
    for action in Action::PLAIN {
        add("finder-action", cx.label(action.key()), Hit::Do(action));
    }
    for trouble in Trouble::ALL {
        add("finder-card", cx.label(trouble.key()), Hit::Do(Action::Card(trouble)));
    }
    for (order, line) in job.lines() {
        add("finder-piece", format!("{}, {}", line.design, order.client), Hit::Do(Action::Show(Place::Line(line.id))));
    }
    for pattern in &job.patterns {
        add("finder-pattern", pattern.name.clone(), Hit::Do(Action::Show(Place::Pattern(pattern.id))));
    }
    for tree in &job.trees {
        add("finder-tree", tree.name.clone(), Hit::Do(Action::Show(Place::Tree(tree.id))));
    }
    for flask in &job.flasks {
        let name = crate::app::names::flask(cx, flask.id);
        add("finder-flask", name, Hit::Do(Action::Show(Place::Flask(flask.id))));
    }
    for figure in cx.computed.book.figures() {
        if found.len() >= LOOKED_AT {
            break;
        }
        let title = figure_title(&figure, cx.texts);
        let lower = title.to_lowercase();
        // A place has to be looked up; a figure that is called nothing of what was typed is not looked for by its place.
        if !wanted.iter().any(|part| lower.contains(part)) {
            continue;
        }
        let words = format!("{title}, {}", crate::app::names::place(cx, figure.place));
        if fits(&words) {
            found.push((cx.label("finder-figure"), words, Hit::Figure(figure.id)));
        }
    }
    found.sort_by_cached_key(|(_, words, _)| far(&wanted, &words.to_lowercase()));
    found.truncate(MOST);
    found
}

/// How far words are from what was typed: all of it as it stands, every part at the beginning of a word, or anywhere.
fn far(wanted: &[String], words: &str) -> u8 {
    let starts = |part: &String| words.split(|sign: char| !sign.is_alphanumeric()).any(|word| word.starts_with(part.as_str()));
    if words.starts_with(&wanted.join(" ")) { 0 } else { 2 - u8::from(wanted.iter().all(starts)) }
}
