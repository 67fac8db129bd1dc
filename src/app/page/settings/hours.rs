//! When somebody is there: hours by the day of the week, and days off.

use eframe::egui::{Id, Ui};
use jiff::civil::{Date, Time};

use crate::app::cx::Cx;
use crate::app::theme::STEP;
use crate::app::widget::choice::choice;
use crate::app::widget::entry::{Entry, entry};
use crate::app::widget::moment::day as day_field;
use crate::app::widget::rows::numbered;
use crate::app::widget::{button, heading};
use crate::job::{Day, WorkingHours};

/// Shows them.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>) {
    let tokens = cx.tokens;
    heading::says(ui, &cx.label("hours-says"), &tokens);
    let studio = cx.studio;
    for (place, hours) in studio.hours.iter().enumerate() {
        one(ui, cx, place, hours);
    }
    ui.horizontal(|ui| {
        if button::plain(ui, &cx.label("hours-add"), &tokens).clicked() {
            cx.edit_studio("edit-hours", |studio| studio.hours.push(next(&studio.hours)));
        }
        if studio.hours.is_empty() && button::plain(ui, &cx.label("hours-week"), &tokens).clicked() {
            cx.edit_studio("edit-hours", |studio| {
                studio.hours = Day::ALL[..5].iter().map(|day| WorkingHours { day: *day, ..usual() }).collect();
            });
        }
    });
    ui.add_space(STEP);
    for (place, day) in studio.days_off.iter().enumerate() {
        let name = numbered(&cx.label("hours-day-off"), place);
        ui.horizontal(|ui| {
            if let Some(said) = day_field(ui, cx, Id::unique(("day-off", place)), &name, Some(*day), 130.0) {
                cx.edit_studio("edit-days-off", move |studio| set_day(&mut studio.days_off, place, said));
            }
            let words = cx.label("hours-drop");
            if button::link(ui, &words, &tokens).accessible_name(format!("{words} {name}")).clicked() {
                cx.edit_studio("edit-days-off", move |studio| set_day(&mut studio.days_off, place, None));
            }
        });
    }
    if button::plain(ui, &cx.label("hours-add-day-off"), &tokens).clicked() {
        let today = cx.setting.at;
        cx.edit_studio("edit-days-off", move |studio| studio.days_off.push(today));
    }
}

fn set_day(days: &mut Vec<Date>, place: usize, said: Option<Date>) {
    match (said, days.get_mut(place)) {
        (Some(day), Some(now)) => *now = day,
        (None, Some(_)) => drop(days.remove(place)),
        _ => {}
    }
}

/// Nine to six.
fn usual() -> WorkingHours {
    let at = |hour| Time::new(hour, 0, 0, 0).ok();
    WorkingHours { day: Day::Monday, from: at(9), to: at(18) }
}

/// The next row is the day after the last one, at the same hours.
fn next(hours: &[WorkingHours]) -> WorkingHours {
    hours.last().map_or_else(usual, |last| {
        let at = Day::ALL.iter().position(|day| *day == last.day).unwrap_or(0);
        WorkingHours { day: Day::ALL[(at + 1) % Day::ALL.len()], ..last.clone() }
    })
}

fn one(ui: &mut Ui, cx: &mut Cx<'_>, place: usize, hours: &WorkingHours) {
    let tokens = cx.tokens;
    ui.horizontal(|ui| {
        let name = numbered(&cx.label("hours-day"), place);
        let days: Vec<(Day, String)> = (1..).zip(Day::ALL).map(|(number, day)| (day, cx.label(&format!("day-{number}")))).collect();
        let at = (Id::unique(("hours-day", place)), name.as_str(), 140.0);
        if let Some(Some(day)) = choice(ui, cx, at, Some(&hours.day), &days, false) {
            edit(cx, place, move |hours| hours.day = day);
        }
        let name = numbered(&cx.label("hours-from"), place);
        if let Some(from) = clock(ui, cx, Id::unique(("hours-from", place)), &name, hours.from) {
            edit(cx, place, move |hours| hours.from = from);
        }
        let name = numbered(&cx.label("hours-to"), place);
        if let Some(to) = clock(ui, cx, Id::unique(("hours-to", place)), &name, hours.to) {
            edit(cx, place, move |hours| hours.to = to);
        }
        let words = cx.label("hours-drop");
        if button::link(ui, &words, &tokens).accessible_name(numbered(&words, place)).clicked() {
            cx.edit_studio("edit-hours", move |studio| {
                if place < studio.hours.len() {
                    studio.hours.remove(place);
                }
            });
        }
    });
}

fn edit(cx: &mut Cx<'_>, place: usize, with: impl FnOnce(&mut WorkingHours) + 'static) {
    cx.edit_studio("edit-hours", move |studio| {
        if let Some(hours) = studio.hours.get_mut(place) {
            with(hours);
        }
    });
}

/// A time of the clock on the wall, written `09:30`.
fn clock(ui: &mut Ui, cx: &Cx<'_>, id: Id, name: &str, now: Option<Time>) -> Option<Option<Time>> {
    let form = cx.label("hours-form");
    let shown = now.map(|at| at.strftime("%H:%M").to_string()).unwrap_or_default();
    let field = Entry { width: 70.0, ..Entry::new(id, name, shown) };
    let read = |text: &str| Time::strptime("%H:%M", text.trim()).ok();
    let text =
        entry(ui, &field, &cx.tokens, |text| if text.is_empty() || read(text).is_some() { Ok(()) } else { Err(form.clone().into()) })?;
    Some(read(&text))
}
