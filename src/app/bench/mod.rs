//! The bench view: the running step in type that is read at two metres. Space goes on, ↓ goes on while its clock runs, ← goes back, Escape
//! leaves; nothing needs a mouse.

mod clock;
mod large;
mod now;
mod others;
mod steps;
pub mod words;

use eframe::egui::{Align, Key, Layout, Modifiers, Ui};
use jiff::ZonedDateTime;

use super::action::Action;
use super::cx::Cx;
use super::page::record;
use crate::job::{Entry, Event};
use clock::Clock;
use large::Large;
use steps::Step;

/// Begins at the step that was opened last.
pub const WHERE_IT_WAS: usize = usize::MAX;

/// Between links that stand side by side.
const APART: f32 = 28.0;

/// Leafed through, and not done: no step at the bench is over so soon, in seconds.
const LEAFED_S: f64 = 30.0;

/// What the keys asked for.
enum Asked {
    On,
    /// On, while the clock of this step runs.
    Meanwhile,
    Back,
    Leave,
    WhatNow,
}

/// Shows the step.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>) {
    let steps = steps::all(cx);
    let mut asked = keys(ui);
    let asked_for = cx.view.bench.unwrap_or_default();
    let asked_for = if asked_for == WHERE_IT_WAS { Clock::last(cx, &steps).unwrap_or(0) } else { asked_for };
    let place = asked_for.min(steps.len().saturating_sub(1));
    let running = others::running(cx, &steps, place);
    let large = Large::of(ui, cx.tokens, others::height(&running));
    ui.spacing_mut().item_spacing.y = 6.0 * large.scale;
    match steps.get(place) {
        Some(step) => one(ui, cx, &large, step, steps.get(place + 1)),
        None => nothing(ui, cx, &large),
    }
    let chosen = others::show(ui, cx, &large, &steps, &running);
    let pressed = foot(ui, cx, &large, steps.is_empty());
    if matches!(pressed, Some(Asked::WhatNow)) {
        return cx.act(Action::WhatNow);
    }
    asked = asked.or(pressed);
    match asked {
        Some(Asked::Leave) => cx.view.bench = None,
        Some(Asked::On) => {
            if let Some(step) = steps.get(place) {
                log(ui, cx, step);
            }
            cx.view.bench = match steps.get(place + 1) {
                Some(next) => {
                    open(cx, next);
                    Some(place + 1)
                }
                None => {
                    Clock::forget(cx);
                    None
                }
            };
        }
        Some(Asked::Meanwhile) => {
            if let Some(next) = steps.get(place + 1) {
                open(cx, next);
                cx.view.bench = Some(place + 1);
            }
        }
        Some(Asked::Back) => cx.view.bench = Some(place.saturating_sub(1)),
        Some(Asked::WhatNow) | None => cx.view.bench = Some(place),
    }
    if chosen.is_some() {
        cx.view.bench = chosen;
    }
    if asked.is_some() || chosen.is_some() {
        ui.ctx().request_repaint();
    }
}

/// Opens the next step. A clock that runs on purpose, beside another, goes on.
fn open(cx: &mut Cx<'_>, next: &Step) {
    if Clock::running(cx, next).is_none() {
        let minutes = words::minutes(cx, next).flatten();
        Clock::go_on(cx, next, minutes);
    }
}

/// A step that runs by the clock and was done goes into the record with the time it took.
fn log(ui: &Ui, cx: &mut Cx<'_>, step: &Step) {
    let Some(seconds) = Clock::done(cx, step).filter(|seconds| *seconds >= LEAFED_S) else { return };
    let Some(of) = step.place(cx) else { return };
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "within a day")]
    let seconds = seconds.round() as u32;
    let event = Event::Timed { step: step.what, of, seconds };
    let entry = Entry { at: record::now(cx), hands: record::hands_now(ui), event, ..Entry::default() };
    cx.edit("edit-bench-timed", move |job| record::append(job, entry));
}

/// Keys, unless a dialog is open over the step. A button that has the focus keeps Space and Enter for itself.
fn keys(ui: &Ui) -> Option<Asked> {
    let (dialog, focused) = ui.memory(|memory| (memory.top_modal_layer().is_some(), memory.focused().is_some()));
    if dialog {
        return None;
    }
    ui.input_mut(|input| {
        let mut pressed = |keys: &[Key]| keys.iter().any(|key| input.consume_key(Modifiers::NONE, *key));
        if pressed(&[Key::Escape]) {
            Some(Asked::Leave)
        } else if pressed(&[Key::ArrowRight]) || (!focused && pressed(&[Key::Space, Key::Enter])) {
            Some(Asked::On)
        } else if pressed(&[Key::ArrowDown]) {
            Some(Asked::Meanwhile)
        } else if pressed(&[Key::ArrowLeft, Key::Backspace]) {
            Some(Asked::Back)
        } else {
            None
        }
    })
}

fn one(ui: &mut Ui, cx: &mut Cx<'_>, large: &Large, step: &Step, next: Option<&Step>) {
    let clock = Clock::of(ui, cx, step);
    let cx = &*cx;
    head(ui, cx, large, &words::head(cx, step));
    large.bold(ui, &words::title(cx, step), 64.0, large.tokens.ink);
    large.wrapped(ui, &words::line(cx, step), 27.0, large.tokens.ink2);
    ui.add_space(10.0 * large.scale);
    let mut columns: Vec<(String, String)> = words::numbers(cx, step)
        .into_iter()
        .map(|shown| {
            let (number, unit, _) = super::widget::figure::printed(cx, shown.id, shown.powder);
            (cx.label(shown.key), format!("{number} {unit}").trim_end().to_owned())
        })
        .collect();
    if let Some(since) = clock.as_ref().and_then(|clock| clock.since_powder.clone()) {
        columns.push((cx.label("bench-since-powder"), since));
    }
    large.band(ui, clock.as_ref().map(|clock| clock.runs.as_str()), &columns);
    if let Some(clock) = clock.as_ref().filter(|clock| clock.is_over()) {
        large.alarm(ui, &cx.label("bench-over"), clock.flashes());
    }
    if let Some((share, words)) = clock.as_ref().and_then(|clock| clock.share(cx)) {
        large.bar(ui, share, &words);
    }
    if let Some(key) = words::caution(step) {
        large.caution(ui, cx, &cx.label(key));
    }
    ui.add_space(8.0 * large.scale);
    large.plain(ui, &cx.label("bench-next"), 22.0, large.tokens.ink2);
    let next = next.map_or_else(|| cx.label("bench-no-more"), |next| words::next(cx, next));
    large.bold(ui, &next, 36.0, large.tokens.ink);
}

/// What step it is at the left, the time of day at the right.
fn head(ui: &mut Ui, cx: &Cx<'_>, large: &Large, words: &str) {
    let now = ZonedDateTime::now().with_time_zone(cx.setting.zone.clone()).datetime();
    ui.horizontal(|ui| {
        let room = ui.available_width() - 90.0 * large.scale;
        large.within(ui, words, 24.0, large.tokens.ink2, room);
        ui.with_layout(Layout::right_to_left(Align::Center), |ui| {
            large.plain(ui, &format!("{:02}:{:02}", now.hour(), now.minute()), 24.0, large.tokens.ink2);
        });
    });
}

/// A batch without a step says what to do first.
fn nothing(ui: &mut Ui, cx: &Cx<'_>, large: &Large) {
    large.bold(ui, &cx.label("bench-nothing"), 64.0, large.tokens.ink);
    large.wrapped(ui, &cx.label("bench-nothing-first"), 22.0, large.tokens.ink2);
}

/// The keys, which may be clicked as well.
fn foot(ui: &mut Ui, cx: &Cx<'_>, large: &Large, empty: bool) -> Option<Asked> {
    let mut asked = None;
    ui.add_space(4.0 * large.scale);
    ui.horizontal_wrapped(|ui| {
        ui.spacing_mut().item_spacing.x = APART * large.scale;
        let keys = [
            ("bench-key-done", Asked::On),
            ("bench-key-meanwhile", Asked::Meanwhile),
            ("bench-key-back", Asked::Back),
            ("bench-key-leave", Asked::Leave),
        ];
        let keys = keys.into_iter().filter(|(key, _)| !empty || *key == "bench-key-leave");
        for (key, does) in keys.chain([("bench-key-what-now", Asked::WhatNow)]) {
            if large.link(ui, &cx.label(key), 20.0).clicked() {
                asked = Some(does);
            }
        }
    });
    asked
}
