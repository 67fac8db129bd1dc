//! One pattern on the scale: alone, or with what it stands on.

use eframe::egui::{Id, Ui};

use super::change;
use crate::app::cx::Cx;
use crate::app::widget::number::{Number, grams};
use crate::app::widget::row::row;
use crate::job::{Pattern, Weighing};
use crate::quantity::{Grams, Kind};

/// Shows both weights; without a tare the first one is the pattern alone.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>, pattern: &Pattern) {
    let (tokens, id) = (cx.tokens, pattern.id);
    let (weight, tare, gross) = match pattern.weighed {
        Some(Weighing::Net(weight)) => (Some(weight), None, false),
        Some(Weighing::Gross { weight, tare }) => (Some(weight), tare, true),
        None => (None, None, false),
    };
    let label = cx.label("patterns-on-scale");
    let field = Number::new(Id::unique(("pattern-weight", id.0)), &label, Kind::Mass).now(weight.map(Grams::to_f64));
    if let Some(weight) = row(ui, &label, &tokens, |ui| grams(ui, cx, &field)) {
        change(cx, "edit-patterns-weight", id, move |pattern| {
            pattern.weighed = weight.map(|weight| if gross { Weighing::Gross { weight, tare } } else { Weighing::Net(weight) });
        });
    }
    let label = cx.label("patterns-tare");
    let field = Number::new(Id::unique(("pattern-tare", id.0)), &label, Kind::Mass).now(tare.map(Grams::to_f64));
    if let Some(tare) = row(ui, &label, &tokens, |ui| grams(ui, cx, &field))
        && let Some(weight) = weight
    {
        change(cx, "edit-patterns-tare", id, move |pattern| {
            pattern.weighed = Some(tare.map_or(Weighing::Net(weight), |tare| Weighing::Gross { weight, tare: Some(tare) }));
        });
    }
}
