//! Tree on the scale: six entries to charge, mix and kiln start. Everything else can wait.

mod first;

use eframe::egui::{Id, RichText, Ui, vec2};

use crate::app::action::Action;
use crate::app::cx::Cx;
use crate::app::page::Page;
use crate::app::theme::{STEP, Tokens, size};
use crate::app::widget::choice::entry_of;
use crate::app::widget::figure::{Look, figure, printed};
use crate::app::widget::moment::moment;
use crate::app::widget::number::{Number, grams};
use crate::app::widget::{button, finding, heading};
use crate::calc::FlaskFigures;
use crate::job::{Job, Weighing};
use crate::paper::Sort;
use crate::quantity::{Grams, Kind};
use crate::stock::{Alloy, Base, EntryId, Flask as Vessel, PatternMaterial, Powder};
use first::{first_flask, first_load, first_part, first_tree};

/// Width of one of the six: three stand side by side.
fn wide(ui: &Ui) -> f32 {
    let gaps = 2.0 * ui.spacing().item_spacing.x;
    ((ui.max_rect().width() - gaps) / 3.0).clamp(140.0, 240.0)
}

/// Shows the page.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>) {
    let tokens = cx.tokens;
    let flasks = cx.job.flasks.len();
    if flasks > 1 {
        several(ui, cx);
        return;
    }
    heading::title(ui, &cx.label("stage-start"), "", &tokens);
    heading::says(ui, &cx.label("start-says"), &tokens);
    ui.add_space(2.0 * STEP);
    let wide = wide(ui);
    ui.horizontal_top(|ui| {
        alloy(ui, cx, wide);
        vessel(ui, cx, wide);
        base(ui, cx, wide);
    });
    ui.add_space(2.0 * STEP);
    ui.horizontal_top(|ui| {
        weight(ui, cx, wide);
        tare(ui, cx, wide);
        material(ui, cx, wide);
    });
    ui.add_space(2.0 * STEP);
    ui.horizontal_top(|ui| {
        pour_at(ui, cx, wide);
        powder(ui, cx, wide);
        more_parts(ui, cx, wide);
    });
    ui.add_space(4.0 * STEP);
    if let Some(figures) = cx.computed.report.flasks.first().cloned() {
        results(ui, cx, &figures);
    }
    ui.add_space(3.0 * STEP);
    // An empty batch has nothing yet that a finding could help with.
    if flasks > 0 {
        finding::of_page(ui, cx, |_| true);
    }
    ui.add_space(3.0 * STEP);
    super::batch::about(ui, cx);
    ui.horizontal_wrapped(|ui| {
        if button::main(ui, &cx.label("do-sheet"), &tokens).clicked() {
            cx.act(Action::Paper(Sort::Bench));
        }
        if button::plain(ui, &cx.label("do-bench"), &tokens).clicked() {
            cx.act(Action::Bench);
        }
        for action in [Action::OpenLast, Action::OpenSample] {
            if flasks == 0 && button::plain(ui, &cx.label(action.key()), &tokens).clicked() {
                cx.act(action);
            }
        }
    });
}

/// A batch of several flasks: each with its four figures.
fn several(ui: &mut Ui, cx: &mut Cx<'_>) {
    let tokens = cx.tokens;
    heading::title(ui, &cx.label("start-several"), "", &tokens);
    let all = cx.computed.report.flasks.clone();
    for figures in &all {
        let name = crate::app::names::flask(cx, figures.id);
        let alloy = figures.alloy.as_ref().map(|id| crate::app::names::entry(cx, id)).unwrap_or_default();
        ui.horizontal(|ui| {
            if button::link(ui, &name, &tokens).clicked() {
                let id = figures.id;
                cx.look(move |view| (view.flask, view.page) = (Some(id), Page::Flasks));
            }
            ui.label(RichText::new(alloy).color(tokens.ink2));
        });
        results(ui, cx, figures);
        ui.add_space(3.0 * STEP);
    }
    super::batch::about(ui, cx);
    ui.horizontal(|ui| {
        if button::main(ui, &cx.label("do-sheet"), &tokens).clicked() {
            cx.act(Action::Paper(Sort::Bench));
        }
        if button::plain(ui, &cx.label("do-bench"), &tokens).clicked() {
            cx.act(Action::Bench);
        }
    });
}

/// Charge, powder, water, kiln start, large.
fn results(ui: &mut Ui, cx: &mut Cx<'_>, flask: &FlaskFigures) {
    let start = cx
        .computed
        .report
        .burnouts
        .iter()
        .find(|load| Some(load.id) == flask.burnout)
        .map(|load| load.dewax_start.unwrap_or(load.kiln_start));
    let small = |cx: &Cx<'_>, key: &str, id| {
        let (number, unit, known) = printed(cx, id, false);
        if known { cx.say(key, &[("what", format!("{number} {unit}").trim_end().into())]) } else { String::new() }
    };
    let width = ((ui.available_width() - 4.0 * ui.spacing().item_spacing.x) / 4.0).clamp(110.0, 240.0);
    ui.horizontal_top(|ui| {
        let charge = small(cx, "start-button", flask.metal.button);
        large(ui, cx, ("start-charge", charge), flask.metal.on_balance, false, width);
        let finish = small(cx, "start-finish", flask.mix.finish_by);
        large(ui, cx, ("start-powder", finish), flask.mix.powder, true, width);
        let water = small(cx, "start-water-at", flask.mix.water_c);
        large(ui, cx, ("start-water", water), flask.mix.water, true, width);
        if let Some(start) = start {
            let by = flask.invested_by.map(|id| small(cx, "start-invested", id)).unwrap_or_default();
            large(ui, cx, ("start-kiln", by), start, false, width);
        }
    });
}

fn large(ui: &mut Ui, cx: &mut Cx<'_>, (key, under): (&str, String), id: crate::calc::Id, powder: bool, width: f32) {
    let tokens = cx.tokens;
    ui.vertical(|ui| {
        ui.set_width(width);
        ui.label(RichText::new(cx.label(key)).size(12.5).color(tokens.ink2));
        let look = Look { size: large_size(cx, id, width), powder, ..Look::LARGE.width(width) };
        figure(ui, cx, id, look);
        ui.label(RichText::new(under).size(12.0).color(tokens.ink2));
    });
}

/// A label over a field.
fn above<R>(ui: &mut Ui, label: &str, (tokens, wide): (&Tokens, f32), add: impl FnOnce(&mut Ui) -> R) -> R {
    ui.vertical(|ui| {
        ui.set_width(wide);
        ui.label(RichText::new(label).size(12.5).color(tokens.ink2));
        add(ui)
    })
    .inner
}

/// One of the six that is chosen from the shelf; the keys are those of its label and of the step's name.
fn from_shelf<T: crate::stock::Shelved>(
    ui: &mut Ui,
    cx: &mut Cx<'_>,
    (key, edit, wide): (&'static str, &str, f32),
    now: Option<&EntryId>,
    words: impl Fn(&T) -> (EntryId, String),
    set: impl FnOnce(&mut Job, Option<EntryId>) + 'static,
) {
    let label = cx.label(key);
    let tokens = cx.tokens;
    let chosen = above(ui, &label, (&tokens, wide), |ui| {
        ui.spacing_mut().interact_size = vec2(24.0, 40.0);
        entry_of(ui, cx, (Id::unique(key), &label, wide), now, words)
    });
    if let Some(chosen) = chosen {
        cx.edit(edit, move |job| set(job, chosen));
    }
}

fn alloy(ui: &mut Ui, cx: &mut Cx<'_>, wide: f32) {
    let now = cx.computed.report.flasks.first().and_then(|flask| flask.alloy.clone());
    // The pieces on the tree say it, where there are any.
    let open = cx.job.lines().next().is_none();
    let words = |alloy: &Alloy| (alloy.id.clone(), alloy.name.clone());
    ui.add_enabled_ui(open, |ui| {
        from_shelf(ui, cx, ("start-alloy", "edit-alloy", wide), now.as_ref(), words, |job, chosen| first_flask(job).alloy = chosen);
    });
}

fn vessel(ui: &mut Ui, cx: &mut Cx<'_>, wide: f32) {
    let now = cx.job.flasks.first().and_then(|flask| flask.vessel.clone());
    let words = |vessel: &Vessel| (vessel.id.clone(), vessel.name.clone());
    from_shelf(ui, cx, ("start-vessel", "edit-vessel", wide), now.as_ref(), words, |job, chosen| first_flask(job).vessel = chosen);
}

fn base(ui: &mut Ui, cx: &mut Cx<'_>, wide: f32) {
    let now = cx.job.trees.first().and_then(|tree| tree.base.clone());
    let words = |base: &Base| (base.id.clone(), base.name.clone());
    from_shelf(ui, cx, ("start-base", "edit-base", wide), now.as_ref(), words, |job, chosen| first_tree(job).base = chosen);
}

/// What the scale shows, and what the base weighs alone.
fn weighing(job: &Job) -> (Option<Grams>, Option<Grams>) {
    match job.trees.first().and_then(|tree| tree.weighed.first()).and_then(|part| part.weight) {
        Some(Weighing::Gross { weight, tare }) => (Some(weight), tare),
        Some(Weighing::Net(weight)) => (Some(weight), Some(Grams::ZERO)),
        None => (None, None),
    }
}

/// The base's weight, where it was typed before there is a tree to take it off.
fn waiting_tare(ui: &Ui) -> Option<Grams> {
    ui.data(|data| data.get_temp::<Option<Grams>>(Id::unique("start-tare-waits"))).flatten()
}

fn weight(ui: &mut Ui, cx: &mut Cx<'_>, wide: f32) {
    let label = cx.label("start-weight");
    let (now, _) = weighing(cx.job);
    let waiting = waiting_tare(ui);
    above(ui, &label, (&cx.tokens.clone(), wide), |ui| {
        let field = Number::new(Id::unique("start-weight"), &label, Kind::Mass).now(now.map(Grams::to_f64)).width(wide).large();
        if let Some(weight) = grams(ui, cx, &field) {
            cx.edit("edit-tree-weight", move |job| {
                let (before, tare) = weighing(job);
                // What waited for the first weight is not brought back by another.
                let tare = if before.is_none() { waiting } else { tare };
                first_part(job).weight = weight.map(|weight| Weighing::Gross { weight, tare });
            });
        }
    });
}

fn tare(ui: &mut Ui, cx: &mut Cx<'_>, wide: f32) {
    let label = cx.label("start-tare");
    let (weight, tare) = weighing(cx.job);
    let now = tare.or(waiting_tare(ui).filter(|_| weight.is_none()));
    above(ui, &label, (&cx.tokens.clone(), wide), |ui| {
        let field = Number::new(Id::unique("start-tare"), &label, Kind::Mass).now(now.map(Grams::to_f64)).width(wide).large();
        let Some(tare) = grams(ui, cx, &field) else { return };
        ui.data_mut(|data| data.insert_temp(Id::unique("start-tare-waits"), tare));
        if let Some(weight) = weight {
            cx.edit("edit-tare", move |job| first_part(job).weight = Some(Weighing::Gross { weight, tare }));
        }
    });
}

fn material(ui: &mut Ui, cx: &mut Cx<'_>, wide: f32) {
    let now = cx.job.trees.first().and_then(|tree| tree.weighed.first()).and_then(|part| part.material.clone());
    let words = |material: &PatternMaterial| (material.id.clone(), material.name.clone());
    from_shelf(ui, cx, ("start-material", "edit-material", wide), now.as_ref(), words, |job, chosen| first_part(job).material = chosen);
}

fn pour_at(ui: &mut Ui, cx: &mut Cx<'_>, wide: f32) {
    let label = cx.label("start-pour-at");
    let now = cx.job.burnouts.first().and_then(|load| load.pour_at);
    above(ui, &label, (&cx.tokens.clone(), wide), |ui| {
        if let Some(at) = moment(ui, cx, Id::unique("start-pour-at"), &label, now, (wide, true)) {
            cx.edit("edit-pour-at", move |job| first_load(job).pour_at = at);
        }
    });
}

/// The powder has a default, so that six entries are enough: it is put in with the first of them, and stands here to be changed.
fn powder(ui: &mut Ui, cx: &mut Cx<'_>, wide: f32) {
    let now = cx.job.flasks.first().and_then(|flask| flask.powder.clone());
    let words = |powder: &Powder| (powder.id.clone(), powder.name.clone());
    from_shelf(ui, cx, ("start-investment", "edit-powder", wide), now.as_ref(), words, |job, chosen| first_flask(job).powder = chosen);
}

/// Type as large as the place bears.
fn large_size(cx: &Cx<'_>, id: crate::calc::Id, width: f32) -> f32 {
    let moment = cx.computed.book.kind(id) == Kind::Moment;
    // A clock time is some sixteen signs, a weight some six with its unit.
    let fits = width / if moment { 9.4 } else { 4.6 };
    fits.clamp(size::BODY, size::LARGE - 4.0)
}

/// Materials weighed beside the first: they stand on the page of trees.
fn more_parts(ui: &mut Ui, cx: &mut Cx<'_>, wide: f32) {
    let more = cx.job.trees.first().map_or(0, |tree| tree.weighed.len().saturating_sub(1));
    if more == 0 {
        return;
    }
    let label = cx.label("start-more");
    above(ui, &label, (&cx.tokens.clone(), wide), |ui| {
        let words = cx.say("start-more-parts", &[("count", more.into())]);
        if button::link(ui, &words, &cx.tokens).clicked() {
            cx.act(Action::Go(Page::Trees));
        }
    });
}
