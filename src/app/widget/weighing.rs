//! What the scale says, and what stood on it: the thing alone, or with what is under it, whose own weight is taken off.

use eframe::egui::{Id, Ui};

use super::choice::choice;
use super::number::{Number, grams};
use super::row::row;
use crate::app::cx::Cx;
use crate::job::Weighing;
use crate::quantity::{Grams, Kind};

/// A weighing to be entered.
#[derive(Debug, Clone, Copy)]
pub struct Weighed<'a> {
    /// From a stable key of the document.
    pub id: Id,
    /// Labels of the weight, of what was on the scale, and of what stood under it.
    pub labels: [&'a str; 3],
    /// What is behind a label in its field's name, where several weighings stand on one page.
    pub which: &'a str,
    /// Words for weighed alone, and for weighed with what is under it.
    pub ways: [&'a str; 2],
    /// What stands there.
    pub now: Option<Weighing>,
    /// Weighed alone unless somebody says otherwise?
    pub alone: bool,
}

/// What was said before there is a weight to say it of.
#[derive(Debug, Clone, Copy, Default)]
struct Waiting {
    alone: Option<bool>,
    tare: Option<Grams>,
}

const fn made(weight: Grams, tare: Option<Grams>, alone: bool) -> Weighing {
    if alone { Weighing::Net(weight) } else { Weighing::Gross { weight, tare } }
}

/// Shows its rows. `Some(None)` takes the weighing out.
pub fn weighing(ui: &mut Ui, cx: &Cx<'_>, of: &Weighed<'_>) -> Option<Option<Weighing>> {
    let tokens = cx.tokens;
    let mut waiting: Waiting = ui.data(|data| data.get_temp(of.id)).unwrap_or_default();
    let (now, tare, alone) = match of.now {
        Some(Weighing::Gross { weight, tare }) => (Some(weight), tare, false),
        Some(Weighing::Net(weight)) => (Some(weight), None, true),
        None => (None, waiting.tare, waiting.alone.unwrap_or(of.alone)),
    };
    let name = |label: &str| if of.which.is_empty() { label.to_owned() } else { format!("{label} {}", of.which) };
    let mut result = None;
    row(ui, of.labels[0], &tokens, |ui| {
        let name_of = name(of.labels[0]);
        let field = Number::new(of.id.with("weight"), &name_of, Kind::Mass).now(now.map(Grams::to_f64));
        if let Some(weight) = grams(ui, cx, &field) {
            // What was said of an emptied weighing is kept for the next one.
            waiting = Waiting { alone: Some(alone), tare };
            result = Some(weight.map(|weight| made(weight, tare, alone)));
        }
        let ways = [(true, of.ways[0].to_owned()), (false, of.ways[1].to_owned())];
        if let Some(Some(said)) = choice(ui, cx, (of.id.with("way"), &name(of.labels[1]), 170.0), Some(&alone), &ways, false) {
            waiting = Waiting { alone: Some(said), tare };
            result = now.map(|weight| Some(made(weight, tare, said)));
        }
    });
    if !alone {
        let name_of = name(of.labels[2]);
        let field = Number::new(of.id.with("tare"), &name_of, Kind::Mass).now(tare.map(Grams::to_f64));
        if let Some(tare) = row(ui, of.labels[2], &tokens, |ui| grams(ui, cx, &field)) {
            waiting = Waiting { alone: Some(false), tare };
            result = now.map(|weight| Some(made(weight, tare, false)));
        }
    }
    // What is in the document waits no more, so that neither undo nor the next thing in this place finds it.
    let waiting = if matches!(result, Some(Some(_))) || of.now.is_some() && result.is_none() { Waiting::default() } else { waiting };
    ui.data_mut(|data| data.insert_temp(of.id, waiting));
    result
}
