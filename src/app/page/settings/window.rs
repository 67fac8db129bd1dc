//! How the window looks: it belongs to the person before it, and to no document.

use eframe::egui::{Id, ThemePreference, Ui};

use crate::app::action::Action;
use crate::app::cx::Cx;
use crate::app::theme::STEP;
use crate::app::widget::choice::choice;
use crate::app::widget::heading;
use crate::app::widget::row::row;
use crate::files::preferences::Theme;
use crate::quantity::Units;

/// Sizes of type to choose from, in percent.
const SIZES: [u32; 6] = [75, 100, 125, 150, 175, 200];

/// Shows the section; it is short, and stands open.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>) {
    heading::group(ui, &cx.label("settings-window"), &cx.tokens.clone());
    let now = match ui.ctx().options(|options| options.theme_preference) {
        ThemePreference::Light => Theme::Light,
        ThemePreference::Dark => Theme::Dark,
        ThemePreference::System => Theme::System,
    };
    let themes = [(Theme::Light, "settings-day"), (Theme::Dark, "settings-evening"), (Theme::System, "settings-system")];
    if let Some(theme) = one(ui, cx, "settings-theme", &now, themes) {
        cx.act(Action::Dress(theme));
    }
    let trade = cx.style.units == Units::TRADE;
    if one(ui, cx, "settings-units", &trade, [(false, "settings-metric"), (true, "settings-trade")]).is_some() {
        cx.act(Action::Units);
    }
    let comma = cx.style.comma;
    if one(ui, cx, "settings-mark", &comma, [(false, "settings-point"), (true, "settings-comma")]).is_some() {
        cx.act(Action::Comma);
    }
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a percentage between 75 and 200")]
    let percent = (ui.ctx().zoom_factor() * 100.0).round() as u32;
    let label = cx.label("settings-zoom");
    let sizes = SIZES.map(|size| (size, cx.say("settings-percent", &[("percent", size.to_string().into())])));
    let place = (Id::unique("settings-zoom"), label.as_str(), WIDE);
    if let Some(Some(size)) = row(ui, &label, &cx.tokens.clone(), |ui| choice(ui, cx, place, Some(&percent), &sizes, false)) {
        cx.act(Action::Zoom(size));
    }
    ui.add_space(2.0 * STEP);
}

/// Width of a choice.
const WIDE: f32 = 200.0;

/// One of several ways, by the keys of their names.
fn one<T: Clone + PartialEq, const N: usize>(ui: &mut Ui, cx: &Cx<'_>, key: &'static str, now: &T, ways: [(T, &str); N]) -> Option<T> {
    let label = cx.label(key);
    let ways = ways.map(|(way, key)| (way, cx.label(key)));
    let place = (Id::unique(key), label.as_str(), WIDE);
    row(ui, &label, &cx.tokens.clone(), |ui| choice(ui, cx, place, Some(now), &ways, false)).flatten()
}
