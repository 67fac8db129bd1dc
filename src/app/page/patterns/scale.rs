//! One pattern on the scale: alone, or with what it stands on.

use eframe::egui::{Id, Ui};

use super::change;
use crate::app::cx::Cx;
use crate::app::widget::weighing::{Weighed, weighing};
use crate::job::Pattern;

/// Shows its weighing.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>, pattern: &Pattern) {
    let id = pattern.id;
    let [weight, way, tare] = ["patterns-on-scale", "patterns-way", "patterns-tare"].map(|key| cx.label(key));
    let [alone, under] = ["patterns-alone", "patterns-with-under"].map(|key| cx.label(key));
    let of = Weighed {
        id: Id::unique(("pattern-weighed", id.0)),
        labels: [&weight, &way, &tare],
        which: "",
        ways: [&alone, &under],
        now: pattern.weighed,
        alone: true,
    };
    if let Some(weighed) = weighing(ui, cx, &of) {
        change(cx, "edit-patterns-weight", id, move |pattern| pattern.weighed = weighed);
    }
}
