//! Fields for days and times of the clock on the wall.

use eframe::egui::{Id, Ui};
use jiff::civil::{Date, DateTime};

use super::entry::{Entry, entry};
use super::number::refusal;
use crate::app::cx::Cx;
use crate::paper::words::moment_of;
use crate::quantity::{Kind, parse};

/// A field for a day, written `2026-12-20`. `Some(None)` takes it out.
pub fn day(ui: &mut Ui, cx: &Cx<'_>, id: Id, name: &str, now: Option<Date>, width: f32) -> Option<Option<Date>> {
    let form = cx.label("entry-day-form");
    let field = Entry { width, ..Entry::new(id, name, now.map(|day| day.to_string()).unwrap_or_default()) };
    let text = entry(ui, &field, &cx.tokens, |text| match text.parse::<Date>() {
        Ok(_) => Ok(()),
        Err(_) if text.is_empty() => Ok(()),
        Err(_) => Err(form.clone().into()),
    })?;
    Some(text.parse().ok())
}

/// A field for a time of the clock, written `2026-12-20 09:30`.
pub fn moment(
    ui: &mut Ui,
    cx: &Cx<'_>,
    id: Id,
    name: &str,
    now: Option<DateTime>,
    (width, large): (f32, bool),
) -> Option<Option<DateTime>> {
    let habits = cx.habits();
    let shown = now.map(|at| at.strftime("%Y-%m-%d %H:%M").to_string()).unwrap_or_default();
    let field = Entry { width, large, ..Entry::new(id, name, shown) };
    let read = |text: &str| parse(text, Kind::Moment, &habits);
    let text = entry(ui, &field, &cx.tokens, |text| if text.is_empty() { Ok(()) } else { read(text).map(drop).map_err(refusal) })?;
    Some(read(&text).ok().and_then(|parsed| moment_of(parsed.value, &cx.setting.zone)))
}
