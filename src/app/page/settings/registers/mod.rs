//! The studio's registers: lots of powder, resin and wax with their age, and everything that wears or is checked, with what is next.

mod equipment;
mod lots;

pub use equipment::show as equipment;
pub use lots::show as lots;

use eframe::egui::{Label, RichText, Ui};
use jiff::civil::Date;

use crate::app::cx::Cx;
use crate::calc::checks::{CheckOf, next_checks};
use crate::paper::words::date_words;

/// Width of a choice.
const WIDE: f32 = 240.0;
/// What lies farther ahead is not told yet, in days.
const AHEAD_DAYS: i64 = 60;

/// `3 days ago`, `today`, `in 12 days`.
fn when(cx: &Cx<'_>, over: i64) -> String {
    let args = [("days", over.unsigned_abs().into())];
    match over {
        0 => cx.label("register-today"),
        1.. => cx.say("register-ago", &args),
        _ => cx.say("register-in", &args),
    }
}

/// What is due of one of the registers, the first to come first.
fn due(ui: &mut Ui, cx: &Cx<'_>, wanted: impl Fn(CheckOf) -> Option<String>, key: &str) {
    for check in next_checks(cx.studio, cx.setting.at).into_iter().filter(|check| -check.over <= AHEAD_DAYS) {
        let Some(name) = wanted(check.of) else { continue };
        let args = [("name", name.into()), ("on", date_words(check.on, cx.texts).into()), ("when", when(cx, check.over).into())];
        let ink = if check.over > 0 { cx.tokens.caution } else { cx.tokens.ink2 };
        ui.add(Label::new(RichText::new(cx.say(key, &args)).color(ink)).wrap());
    }
}

/// How long something has been open.
fn age(cx: &Cx<'_>, opened: Option<Date>) -> Option<String> {
    let days = opened?.until(cx.setting.at).ok()?.get_days();
    (days >= 0).then(|| cx.say("register-open-for", &[("days", u64::from(days.unsigned_abs()).into())]))
}
