//! From the finished measure back to the slicer: what is asked of it, and each step on the way.

use eframe::egui::{Checkbox, Id, Ui};

use super::change;
use crate::app::cx::Cx;
use crate::app::widget::figure::{Look, figure};
use crate::app::widget::heading;
use crate::app::widget::number::{Number, number};
use crate::app::widget::row::row;
use crate::calc::size::{COMFORT, OPENS_NOTHING, TAKES_NOTHING};
use crate::calc::{Id as Figure, LineFigures, RingFigures, SideFigures, Typed, WayBack};
use crate::job::{Line, Size};
use crate::quantity::{Finite, Kind};

/// The axes of a file, as a slicer names them.
const AXES: [&str; 3] = ["x", "y", "z"];

/// Sets a length of a line.
type Set = fn(&mut Line, Option<Finite>);

/// A length of a line: its label, what it is, what rules where it is not said, and how it is set.
type Field = (&'static str, Option<Finite>, Option<f64>, Set);

/// Shows it.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>, line: &Line) {
    if matches!(line.size, Some(Size::Ring { .. })) {
        bore_fields(ui, cx, line);
    } else {
        side_fields(ui, cx, line);
    }
    let Some(found) = cx.computed.report.lines.iter().find(|figures| figures.line == line.id).cloned() else { return };
    figures(ui, cx, &found);
}

fn bore_fields(ui: &mut Ui, cx: &mut Cx<'_>, line: &Line) {
    let id = line.id;
    length(ui, cx, line, ("orders-band", line.band_mm, None, |line, mm| line.band_mm = mm));
    let mut comfort = line.comfort_fit;
    if ui.add(Checkbox::new(&mut comfort, cx.label("orders-comfort"))).changed() {
        change::line(cx, "edit-orders-fit", id, move |line| line.comfort_fit = comfort);
    }
    if line.comfort_fit {
        length(ui, cx, line, ("orders-comfort-larger", line.comfort_mm, Some(COMFORT.value), |line, mm| line.comfort_mm = mm));
    }
    let opens: Field = ("orders-opens", line.finishing_opens_mm, Some(OPENS_NOTHING.value), |line, mm| line.finishing_opens_mm = mm);
    length(ui, cx, line, opens);
}

fn side_fields(ui: &mut Ui, cx: &mut Cx<'_>, line: &Line) {
    heading::says(ui, &cx.label("orders-finished-says"), &cx.tokens.clone());
    let sides: [Field; 3] = [
        ("orders-finished-x", line.finished.x_mm, None, |line, mm| line.finished.x_mm = mm),
        ("orders-finished-y", line.finished.y_mm, None, |line, mm| line.finished.y_mm = mm),
        ("orders-finished-z", line.finished.z_mm, None, |line, mm| line.finished.z_mm = mm),
    ];
    for side in sides {
        length(ui, cx, line, side);
    }
    let takes: Field = ("orders-takes", line.finishing_takes_mm, Some(TAKES_NOTHING.value), |line, mm| line.finishing_takes_mm = mm);
    length(ui, cx, line, takes);
}

fn length(ui: &mut Ui, cx: &mut Cx<'_>, line: &Line, (key, now, default, set): Field) {
    let (tokens, id) = (cx.tokens, line.id);
    let label = cx.label(key);
    let field = Number::new(Id::unique((key, id.0)), &label, Kind::Length).now(now.map(Finite::get)).default(default);
    if let Some(mm) = row(ui, &label, &tokens, |ui| number(ui, cx, &field)) {
        change::line(cx, "edit-orders-fit", id, move |line| set(line, mm));
    }
}

fn figures(ui: &mut Ui, cx: &mut Cx<'_>, found: &LineFigures) {
    if let Some(ring) = found.ring {
        heading::group(ui, &cx.label("orders-back-bore"), &cx.tokens.clone());
        bore(ui, cx, &ring);
    }
    for (number, ring) in &found.own_rings {
        let words = cx.say("orders-piece-name", &[("number", u64::from(*number).into())]);
        heading::group(ui, &words, &cx.tokens.clone());
        bore(ui, cx, ring);
    }
    for (axis, side) in AXES.iter().zip(&found.sides) {
        if let Some(SideFigures { finished, back, typed }) = side {
            let words = cx.say("orders-back-along", &[("axis", (*axis).into())]);
            heading::group(ui, &words, &cx.tokens.clone());
            let wished = [("orders-finished", *finished)];
            steps(ui, cx, &wished, Some(*back));
            typed_rows(ui, cx, typed, "");
        }
    }
}

fn bore(ui: &mut Ui, cx: &mut Cx<'_>, ring: &RingFigures) {
    let sure = [("orders-finished-bore", ring.finished), ("orders-within", ring.within), ("orders-within-sizes", ring.within_sizes)];
    steps(ui, cx, &sure, ring.back);
    let Some(typed) = &ring.typed else {
        heading::says(ui, &cx.label("orders-back-needs"), &cx.tokens.clone());
        return;
    };
    if typed.iter().all(|along| along.measure == typed[0].measure) {
        typed_rows(ui, cx, &typed[0], "");
        return;
    }
    for (axis, along) in AXES.iter().zip(typed) {
        typed_rows(ui, cx, along, axis);
    }
}

fn steps(ui: &mut Ui, cx: &mut Cx<'_>, first: &[(&str, Figure)], back: Option<WayBack>) {
    for (key, id) in first {
        let label = cx.label(key);
        one(ui, cx, &label, *id);
    }
    let Some(WayBack { cast, on_pattern, on_print }) = back else { return };
    for (key, id) in [("orders-as-cast", cast), ("orders-on-pattern", on_pattern), ("orders-on-print", on_print)] {
        let label = cx.label(key);
        one(ui, cx, &label, id);
    }
}

fn typed_rows(ui: &mut Ui, cx: &mut Cx<'_>, typed: &Typed, axis: &str) {
    let rows = [("orders-typed", Some(typed.measure)), ("orders-typed-within", typed.within), ("orders-file-scale", typed.scale)];
    for (key, id) in rows {
        if let Some(id) = id {
            let label = format!("{} {axis}", cx.label(key));
            one(ui, cx, label.trim_end(), id);
        }
    }
}

fn one(ui: &mut Ui, cx: &mut Cx<'_>, label: &str, id: Figure) {
    let tokens = cx.tokens;
    row(ui, label, &tokens, |ui| figure(ui, cx, id, Look::ROW.width(190.0)));
}
