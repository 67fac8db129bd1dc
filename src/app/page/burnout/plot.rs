//! The programme as a curve over the clock. Points of the studio's own programme are dragged up and down.

use eframe::egui::{Id, Ui};
use jiff::civil::DateTime;

use super::stages;
use crate::app::cx::Cx;
use crate::app::theme::STEP;
use crate::app::widget::curve::{Curve, Stage, curve};
use crate::calc::mould_heat::{CRISTOBALITE_C, QUARTZ_C};
use crate::calc::{Book, BurnoutFigures};
use crate::job::{Burnout, Programme, Segment};
use crate::quantity::{Finite, Kind, print};
use crate::stock::Powder;

/// Shows it, where every point of it is known.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>, load: &Burnout, figures: &BurnoutFigures) {
    let Some(drawn) = drawn(cx, load, figures) else { return };
    ui.add_space(2.0 * STEP);
    if let Some((place, target_c)) = curve(ui, cx, &drawn) {
        let target = Finite::new(target_c);
        stages::one(cx, "edit-burnout-target", load, place, move |segment| segment.target_c = target);
    }
    ui.add_space(STEP);
}

fn drawn(cx: &Cx<'_>, load: &Burnout, figures: &BurnoutFigures) -> Option<Curve> {
    let book = &cx.computed.book;
    let own: &[Segment] = match &load.programme {
        Some(Programme::Segments(segments)) => segments,
        _ => &[],
    };
    let mut stages = Vec::new();
    let mut begins = None;
    for (place, stage) in figures.stages.iter().enumerate() {
        let (end, hold, target) = (book.number(stage.end)?, book.number(stage.hold)?, book.number(stage.target)?);
        begins = begins.or(book.number(stage.start));
        // The last stage is the mould's own temperature, unless somebody said it.
        let said = own.get(place).is_some_and(|segment| segment.target_c.is_some());
        let handle = said.then(|| cx.say("heat-point", &[("number", (place + 1).to_string().into())]));
        stages.push(Stage { there: end - hold, end, target, handle });
    }
    let start = [begins?, book.number(figures.start_c)?];
    let id = Id::unique(("kiln curve", load.id.0));
    Some(Curve {
        id,
        name: cx.label("heat-plot"),
        start,
        stages,
        ceiling: ceiling(cx, load),
        under: super::mould::under(cx, figures),
        bands: vec![CRISTOBALITE_C, QUARTZ_C],
        real: real(load, figures, book, |at| minutes_at(at, cx)),
        height: 240.0,
    })
}

fn minutes_at(at: DateTime, cx: &Cx<'_>) -> Option<f64> {
    let zoned = cx.setting.zone.to_zoned_datetime(at).ok()?;
    Some(zoned.timestamp().as_second() as f64 / 60.0)
}

/// What the kiln really did, over the clock.
fn real(load: &Burnout, figures: &BurnoutFigures, book: &Book, minutes: impl Fn(DateTime) -> Option<f64>) -> Vec<[f64; 2]> {
    let Some(log) = &load.log else { return Vec::new() };
    let Some(start) = log.start.and_then(minutes).or_else(|| book.number(figures.kiln_start)) else { return Vec::new() };
    log.points.iter().map(|(at, c)| [start + at.get(), c.get()]).collect()
}

/// The lowest in °C of what the powders in the load bear as planned, and its words.
fn ceiling(cx: &Cx<'_>, load: &Burnout) -> Option<(f64, String)> {
    let flasks = cx.job.flasks.iter().filter(|flask| flask.burnout == Some(load.id));
    let powders = flasks.filter_map(|flask| cx.computed.shelves.job.get::<Powder>(flask.powder.as_ref()?.as_str()));
    let lowest = powders.min_by(|a, b| a.planned_ceiling_c.value.total_cmp(&b.planned_ceiling_c.value))?;
    let at = lowest.planned_ceiling_c.value;
    let words = print(at, Kind::Temperature, cx.style).to_string();
    Some((at, cx.say("heat-ceiling", &[("ceiling", words.into())])))
}
