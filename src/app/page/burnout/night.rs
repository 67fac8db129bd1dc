//! The shortest night by heat alone, beside the programme as it stands: hours saved, what binds each segment, and that a finer run bears it out.

use eframe::egui::{Id, Label, ProgressBar, RichText, Ui};

use super::change;
use crate::app::action::Action;
use crate::app::cx::Cx;
use crate::app::theme::STEP;
use crate::app::widget::number::{Number, number};
use crate::app::widget::row::cell;
use crate::app::widget::rows::numbered;
use crate::app::widget::{button, heading};
use crate::calc::mould_heat::Conductivity;
use crate::calc::night::{Night, NightFound, night};
use crate::calc::shortest::{Bind, Bound, Held, Judged, Outcome, Programme, Segment, total_min};
use crate::job::{Burnout, Programme as JobProgramme, Segment as JobSegment, SheetHours};
use crate::quantity::{Finite, Kind, print};

/// A search shows how far it is once it goes on for so long.
const SHOWN_AFTER_S: f64 = 0.5;
/// Widths of number, target, ramp, hold, and what binds.
const COLUMNS: [f32; 4] = [24.0, 78.0, 84.0, 84.0];

/// Shows the section.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>, load: &Burnout) {
    let tokens = cx.tokens;
    heading::says(ui, &cx.label("night-says"), &tokens);
    let computed = cx.computed;
    let asked = night(&computed.sound, &computed.sound_studio, &computed.shelves.job, &computed.report, &computed.book, load.id);
    let Some(asked) = asked else {
        heading::says(ui, &cx.label("night-unknown"), &tokens);
        return;
    };
    sheet(ui, cx, load);
    limits(ui, cx, &asked);
    match cx.nights.progress() {
        Some((share, since)) => running(ui, cx, share, since.as_secs_f64()),
        None => {
            if button::outlined(ui, &cx.label("night-do"), &tokens, true).clicked() {
                cx.act(Action::ShortestNight);
            }
        }
    }
    let nights = cx.nights;
    let Some((of, found)) = nights.found().filter(|(of, _)| of.load == load.id) else { return };
    if *of != asked {
        heading::says(ui, &cx.label("night-stale"), &tokens);
    }
    match found {
        Ok(found) => result(ui, cx, load, found, *of == asked),
        Err(error) => drop(heading::says(ui, &error.to_string(), &tokens)),
    }
    ui.add_space(STEP);
}

/// The hours of the pattern's data sheet, line by line.
fn sheet(ui: &mut Ui, cx: &mut Cx<'_>, load: &Burnout) {
    let (tokens, id) = (cx.tokens, load.id);
    for (place, line) in load.sheet.iter().enumerate() {
        ui.horizontal(|ui| {
            for (part, key) in ["night-sheet-from", "night-sheet-to", "night-sheet-time"].into_iter().enumerate() {
                let kind = if part == 2 { Kind::Duration } else { Kind::Temperature };
                let name = numbered(&cx.label(key), place);
                let now = [line.from_c, line.to_c, line.minutes][part].get();
                cell(ui, &cx.label(key), 40.0, 12.0, tokens.ink2);
                let field = Number::new(Id::unique(("night-sheet", id.0, place, part)), &name, kind).now(Some(now)).width(84.0);
                if let Some(number) = number(ui, cx, &field) {
                    change(cx, "edit-burnout-sheet", id, move |load| set_sheet(load, (place, part), number));
                }
            }
            let words = cx.label("night-sheet-drop");
            if button::link(ui, &words, &tokens).accessible_name(numbered(&words, place)).clicked() {
                change(cx, "edit-burnout-sheet", id, move |load| {
                    if place < load.sheet.len() {
                        load.sheet.remove(place);
                    }
                });
            }
        });
    }
    if button::plain(ui, &cx.label("night-sheet-add"), &tokens).clicked() {
        let number = |number: f64| Finite::new(number).unwrap_or_default();
        let line = SheetHours { from_c: number(120.0), to_c: number(320.0), minutes: number(180.0) };
        change(cx, "edit-burnout-sheet", id, move |load| load.sheet.push(line));
    }
}

fn set_sheet(load: &mut Burnout, (place, part): (usize, usize), number: Option<Finite>) {
    let (Some(line), Some(number)) = (load.sheet.get_mut(place), number) else { return };
    match part {
        0 => line.from_c = number,
        1 => line.to_c = number,
        _ => line.minutes = number,
    }
}

fn running(ui: &mut Ui, cx: &mut Cx<'_>, share: f64, since_s: f64) {
    let tokens = cx.tokens;
    if since_s >= SHOWN_AFTER_S {
        let width = ui.available_width().min(400.0);
        #[allow(clippy::cast_possible_truncation, reason = "a bar has few points")]
        ui.add(ProgressBar::new(share as f32).desired_width(width).desired_height(6.0).fill(tokens.act));
    }
    if button::plain(ui, &cx.label("night-stop"), &tokens).clicked() {
        cx.act(Action::StopNight);
    }
    // Often enough for the bar, and rarely enough that the window rests between.
    ui.ctx().request_repaint_after(std::time::Duration::from_millis(300));
}

/// What it is held to.
fn limits(ui: &mut Ui, cx: &Cx<'_>, night: &Night) {
    let tokens = cx.tokens;
    let mut says = |words: String| drop(heading::says(ui, &words, &tokens));
    for least in &night.limits.least {
        let args = [
            ("from", c(cx, least.within_c[0]).into()),
            ("to", c(cx, least.within_c[1]).into()),
            ("time", minutes(cx, least.minutes).into()),
        ];
        says(cx.say(if night.no_sheet { "night-least-usual" } else { "night-least" }, &args));
    }
    let carbon = night.moulds.moulds.iter().map(|mould| mould.needs.above_min).fold(0.0, f64::max);
    let args = [
        ("ceiling", c(cx, night.limits.ceiling_c).into()),
        ("carbon", minutes(cx, carbon).into()),
        ("soak", minutes(cx, night.limits.soak.least_min).into()),
    ];
    says(cx.say("night-limits", &args));
}

fn result(ui: &mut Ui, cx: &mut Cx<'_>, load: &Burnout, found: &NightFound, fresh: bool) {
    let tokens = cx.tokens;
    let now = total_min(&found.night.now);
    if !found.now.sound() {
        let broken: Vec<String> = found.now.breaches.iter().map(|breach| cx.label(bind_key(breach.limit))).collect();
        heading::says(ui, &cx.say("night-now-breaks", &[("limits", broken.join(", ").into())]), &tokens);
    }
    match &found.outcome {
        Outcome::Found(programme) => {
            let args = [
                ("hours", minutes(cx, programme.total_min).into()),
                ("now", minutes(cx, now).into()),
                ("saved", minutes(cx, now - programme.total_min).into()),
            ];
            let key = if programme.total_min < now - 0.5 { "night-found" } else { "night-no-shorter" };
            ui.add(Label::new(RichText::new(cx.say(key, &args)).size(16.0).color(tokens.ink)).wrap());
            segments(ui, cx, programme);
            if let Some(checked) = &found.checked {
                verified(ui, cx, checked);
            }
            heading::says(ui, &cx.label("night-trial"), &tokens);
            if fresh && button::plain(ui, &cx.label("night-take"), &tokens).clicked() {
                take(cx, load, &programme.segments);
            }
        }
        Outcome::Impossible { limit, certain, .. } => {
            let key = if *certain { "night-impossible" } else { "night-none" };
            heading::says(ui, &cx.say(key, &[("limit", cx.label(bind_key(*limit)).into())]), &tokens);
        }
        Outcome::Stopped => drop(heading::says(ui, &cx.label("night-stopped"), &tokens)),
        Outcome::Refused(error) => drop(heading::says(ui, &error.to_string(), &tokens)),
    }
}

fn segments(ui: &mut Ui, cx: &Cx<'_>, programme: &Programme) {
    let ink = cx.tokens.ink2;
    ui.horizontal(|ui| {
        for (words, width) in ["", "heat-to", "heat-ramp", "heat-hold"].into_iter().zip(COLUMNS) {
            cell(ui, &if words.is_empty() { String::new() } else { cx.label(words) }, width, 12.0, ink);
        }
        ui.label(RichText::new(cx.label("night-binds")).size(12.0).color(ink));
    });
    let none = Bound::default();
    for (place, segment) in programme.segments.iter().enumerate() {
        let bound = programme.bound.get(place).unwrap_or(&none);
        ui.horizontal(|ui| {
            cell(ui, &format!("{}", place + 1), COLUMNS[0], 14.0, ink);
            cell(ui, &c(cx, segment.target_c), COLUMNS[1], 14.0, cx.tokens.ink);
            cell(ui, &minutes(cx, segment.ramp_min), COLUMNS[2], 14.0, cx.tokens.ink);
            cell(ui, &minutes(cx, segment.hold_min), COLUMNS[3], 14.0, cx.tokens.ink);
            ui.add(Label::new(RichText::new(binds(cx, bound)).size(13.0).color(ink)).wrap());
        });
    }
}

/// What holds a ramp and a hold, each limit once.
fn binds(cx: &Cx<'_>, bound: &Bound) -> String {
    let mut words: Vec<String> = Vec::new();
    for Held { limit, .. } in [bound.ramp, bound.hold].into_iter().flatten() {
        let one = cx.label(bind_key(limit));
        if !words.contains(&one) {
            words.push(one);
        }
    }
    words.join("; ")
}

/// What the fine run found at worst.
fn verified(ui: &mut Ui, cx: &Cx<'_>, checked: &Judged) {
    let values = &checked.values;
    let least = |of: fn(&crate::calc::shortest::Values) -> f64| values.iter().map(of).fold(f64::INFINITY, f64::min);
    let carbon = least(|values| values.above_min);
    let far = values
        .iter()
        .map(|values| values.core_at_pour_c)
        .fold([f64::INFINITY, f64::NEG_INFINITY], |[low, high], c| [low.min(c), high.max(c)]);
    let low = values.iter().filter(|values| values.of == Conductivity::Low);
    let apart = low.flat_map(|values| &values.apart).map(|apart| apart.up_k.max(apart.down_k)).fold(0.0, f64::max);
    let apart = print(apart, Kind::TemperatureDifference, cx.style).to_string();
    let args =
        [("carbon", minutes(cx, carbon).into()), ("low", c(cx, far[0]).into()), ("high", c(cx, far[1]).into()), ("apart", apart.into())];
    let key = if checked.sound() { "night-verified" } else { "night-not-verified" };
    heading::says(ui, &cx.say(key, &args), &cx.tokens);
}

fn take(cx: &mut Cx<'_>, load: &Burnout, segments: &[Segment]) {
    let last = segments.len();
    let own = (1..).zip(segments).map(|(number, segment)| JobSegment {
        // The last stage is the mould's own temperature, which follows from metal and section.
        target_c: (number < last).then(|| Finite::new(segment.target_c)).flatten(),
        ramp_min: Finite::new(segment.ramp_min),
        hold_min: Finite::new(segment.hold_min).unwrap_or_default(),
        ..JobSegment::default()
    });
    let own: Vec<JobSegment> = own.collect();
    change(cx, "edit-burnout-night", load.id, move |load| load.programme = Some(JobProgramme::Segments(own)));
}

const fn bind_key(limit: Bind) -> &'static str {
    match limit {
        Bind::KilnRise => "night-bind-rise",
        Bind::KilnFall => "night-bind-fall",
        Bind::RampCap { .. } => "night-bind-cap",
        Bind::Ceiling => "night-bind-ceiling",
        Bind::Floor => "night-bind-floor",
        Bind::SheetLeast { .. } => "night-bind-sheet",
        Bind::SoakHold => "night-bind-soak",
        Bind::SoakTarget => "night-bind-target",
        Bind::Segments => "night-bind-segments",
        Bind::Apart { inversion: 0, .. } => "night-bind-cristobalite",
        Bind::Apart { .. } => "night-bind-quartz",
        Bind::Carbon { .. } => "night-bind-carbon",
        Bind::CoreAtPour { .. } => "night-bind-core",
        Bind::Dry { .. } => "night-bind-dry",
    }
}

fn c(cx: &Cx<'_>, c: f64) -> String {
    print(c, Kind::Temperature, cx.style).to_string()
}

fn minutes(cx: &Cx<'_>, minutes: f64) -> String {
    print(minutes, Kind::Duration, cx.style).to_string()
}
