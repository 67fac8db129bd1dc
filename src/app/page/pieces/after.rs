//! What becomes of one piece after it was cut off: weighed from step to step of its finishing, measured, repaired, sized.

use eframe::egui::{Id, Ui};

use super::chosen::write;
use crate::app::cx::Cx;
use crate::app::names;
use crate::app::page::record::words::{finish_key, rework_key};
use crate::app::widget::button;
use crate::app::widget::choice::choice;
use crate::app::widget::number::{Number, grams, number};
use crate::app::widget::row::row;
use crate::app::widget::text::text;
use crate::calc::board::BoardRow;
use crate::job::{Event, FinishStep, Measures, PieceId, Rework, ReworkBy, Size};
use crate::quantity::{Finite, Grams, Kind};

const WIDE: f32 = 170.0;

/// Shows the forms, folded away. True where something was written.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>, one: &BoardRow<'_>, hands: &str) -> bool {
    let (piece, mut done) = (one.followed.piece, false);
    cx.folded(ui, "pieces-weigh", |ui, cx| done |= weigh(ui, cx, piece, hands));
    cx.folded(ui, "pieces-measure", |ui, cx| done |= measure(ui, cx, piece, hands));
    cx.folded(ui, "pieces-rework", |ui, cx| done |= rework(ui, cx, one, hands));
    done
}

/// What it weighs after a step of its finishing: what a step takes is what it weighed before, less this.
fn weigh(ui: &mut Ui, cx: &mut Cx<'_>, piece: PieceId, hands: &str) -> bool {
    let tokens = cx.tokens;
    let key = Id::unique("pieces-weigh-step");
    let step: FinishStep = ui.data(|data| data.get_temp(key)).unwrap_or(FinishStep::CutOff);
    let label = cx.label("pieces-weigh-after");
    let options: Vec<(FinishStep, String)> = FinishStep::ALL.into_iter().map(|one| (one, cx.label(finish_key(one)))).collect();
    let place = (key.with("choice"), label.as_str(), WIDE);
    if let Some(Some(said)) = row(ui, &label, &tokens, |ui| choice(ui, cx, place, Some(&step), &options, false)) {
        ui.data_mut(|data| data.insert_temp(key, said));
    }
    let label = cx.label("pieces-weighs");
    let field = Number::new(Id::unique(("pieces-weighs", piece.line.0, piece.number)), &label, Kind::Mass);
    let Some(Some(grams)) = row(ui, &label, &tokens, |ui| grams(ui, cx, &field)) else { return false };
    let finished = step == FinishStep::Polished;
    write(cx, "edit-pieces-weigh", hands, Event::PieceWeighed { piece, finished, grams, after: Some(step) });
    true
}

/// A distance that is measured, until it is written down.
#[derive(Debug, Clone, Default)]
struct Measured {
    what: String,
    measures: Measures,
}

/// Sets one of the distances.
type Set = fn(&mut Measures, Option<Finite>);

fn measure(ui: &mut Ui, cx: &mut Cx<'_>, piece: PieceId, hands: &str) -> bool {
    let tokens = cx.tokens;
    let key = Id::unique(("pieces-measure-draft", cx.job.job_id.to_string(), piece.line.0, piece.number));
    let mut draft: Measured = ui.data(|data| data.get_temp(key)).unwrap_or_default();
    let label = cx.label("pieces-measure-what");
    if let Some(said) = row(ui, &label, &tokens, |ui| text(ui, cx, key.with("what"), &label, &draft.what, WIDE)) {
        draft.what = said;
    }
    let of = draft.measures.clone();
    let fields: [(&str, Option<Finite>, Set); 4] = [
        ("pieces-measure-model", of.model_mm, |of, mm| of.model_mm = mm),
        ("pieces-measure-pattern", of.pattern_mm, |of, mm| of.pattern_mm = mm),
        ("pieces-measure-cast", of.cast_mm, |of, mm| of.cast_mm = mm),
        ("pieces-measure-finished", of.finished_mm, |of, mm| of.finished_mm = mm),
    ];
    for (name, now, set) in fields {
        let label = cx.label(name);
        let field = Number::new(key.with(name), &label, Kind::Length).now(now.map(Finite::get));
        if let Some(said) = row(ui, &label, &tokens, |ui| number(ui, cx, &field)) {
            set(&mut draft.measures, said);
        }
    }
    let measures = &draft.measures;
    let said = [measures.model_mm, measures.pattern_mm, measures.cast_mm, measures.finished_mm].into_iter().flatten().count();
    let done = button::outlined(ui, &cx.label("pieces-measure-do"), &tokens, said > 0 && !draft.what.trim().is_empty()).clicked();
    if done {
        let Measured { what, measures } = std::mem::take(&mut draft);
        write(cx, "edit-pieces-measure", hands, Event::Measured { piece, what, measures });
    }
    ui.data_mut(|data| data.insert_temp(key, draft));
    done
}

fn rework(ui: &mut Ui, cx: &mut Cx<'_>, one: &BoardRow<'_>, hands: &str) -> bool {
    let (tokens, piece) = (cx.tokens, one.followed.piece);
    let key = Id::unique(("pieces-rework-draft", cx.job.job_id.to_string(), piece.line.0, piece.number));
    let mut draft: Rework = ui.data(|data| data.get_temp(key)).unwrap_or_default();
    let label = cx.label("pieces-rework-by");
    let options: Vec<(ReworkBy, String)> = ReworkBy::ALL.into_iter().map(|one| (one, cx.label(rework_key(one)))).collect();
    let place = (key.with("by"), label.as_str(), WIDE);
    if let Some(Some(by)) = row(ui, &label, &tokens, |ui| choice(ui, cx, place, Some(&draft.by), &options, false)) {
        draft.by = by;
    }
    for (name, of) in [("pieces-rework-taken", &mut draft.taken), ("pieces-rework-added", &mut draft.added)] {
        let label = cx.label(name);
        let field = Number::new(key.with(name), &label, Kind::Mass).now(of.map(Grams::to_f64));
        if let Some(said) = row(ui, &label, &tokens, |ui| grams(ui, cx, &field)) {
            *of = said;
        }
    }
    let label = cx.label("pieces-rework-fineness");
    let field = Number::new(key.with("fineness"), &label, Kind::Fineness).now(draft.added_permille.map(Finite::get));
    if let Some(said) = row(ui, &label, &tokens, |ui| number(ui, cx, &field)) {
        draft.added_permille = said;
    }
    let label = cx.label("pieces-rework-size");
    let now = draft.size.as_ref().map(names::size).unwrap_or_default();
    if let Some(said) = row(ui, &label, &tokens, |ui| text(ui, cx, key.with("size"), &label, &now, WIDE)) {
        // On the scale it was ordered by.
        let words = said.trim().to_owned();
        draft.size = match one.size {
            _ if words.is_empty() => None,
            Some(Size::Ring { scale, .. }) => Some(Size::Ring { scale: scale.clone(), size: words }),
            _ => Some(Size::Free(words)),
        };
    }
    let ready = draft != Rework { by: draft.by, ..Rework::default() } || draft.by == ReworkBy::Laser;
    let done = button::outlined(ui, &cx.label("pieces-rework-do"), &tokens, ready).clicked();
    if done {
        write(cx, "edit-pieces-rework", hands, Event::Reworked { piece, rework: std::mem::take(&mut draft) });
    }
    ui.data_mut(|data| data.insert_temp(key, draft));
    done
}
