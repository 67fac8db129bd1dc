//! What mending would make of a faulty file, with its volume beside the old one's.

use eframe::egui::{Label, RichText, Ui};

use super::walls::mm_of;
use crate::app::action::Action;
use crate::app::cx::Cx;
use crate::app::widget::{button, heading};
use crate::job::Pattern;
use crate::mesh::Change;
use crate::quantity::{Kind, print};

/// Shows the offer, where there is something to mend.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>, pattern: &Pattern) {
    let tokens = cx.tokens;
    let Some(mended) = cx.inspection.as_ref().and_then(|found| found.mended.clone()) else { return };
    heading::group(ui, &cx.label("mend-title"), &tokens);
    let mm = mm_of(pattern);
    for change in &mended.changes {
        let words = change_words(cx, change, mm);
        ui.add(Label::new(RichText::new(words).color(tokens.ink)).wrap());
    }
    let volume = |mm3: f64| print(mm3 / 1000.0 * mm.powi(3), Kind::Volume, cx.style).to_string();
    let after = mended.measure.fills_mm3.map_or_else(String::new, volume);
    let words = match cx.measure_of(pattern.id).and_then(|measure| measure.fills) {
        Some(before) => {
            let moved = mended.measure.fills_mm3.unwrap_or(before) - before;
            cx.say("mend-moves", &[("before", volume(before).into()), ("after", after.into()), ("by", volume(moved).into())])
        }
        None => cx.say("mend-gives", &[("after", after.into())]),
    };
    heading::says(ui, &words, &tokens);
    if button::plain(ui, &cx.label("mend-do"), &tokens).clicked() {
        cx.act(Action::Mend(pattern.id));
    }
}

fn change_words(cx: &Cx<'_>, change: &Change, mm: f64) -> String {
    let length = |length_mm: f64| print(length_mm * mm, Kind::Length, &cx.style.finer()).to_string();
    let count = |count: u32| ("count", u64::from(count).into());
    match *change {
        Change::Repeats { triangles } => cx.say("mend-repeats", &[count(triangles)]),
        Change::NoArea { triangles } => cx.say("mend-no-area", &[count(triangles)]),
        Change::Seams { corners, widest_gap_mm } => cx.say("mend-seams", &[count(corners), ("gap", length(widest_gap_mm).into())]),
        Change::Turned { triangles } => cx.say("mend-turned", &[count(triangles)]),
        Change::InsideOut { triangles } => cx.say("mend-inside-out", &[count(triangles)]),
        Change::Closed { holes, triangles, area_mm2 } => {
            let area = print(area_mm2 * mm * mm, Kind::Area, cx.style).to_string();
            cx.say("mend-closed", &[count(holes), ("triangles", u64::from(triangles).into()), ("area", area.into())])
        }
    }
}
