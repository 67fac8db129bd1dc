//! Burnout: the kiln's load, its programme and the clock backwards from the pour.

mod floor;
mod keyed;
mod load;
mod log;
mod mould;
mod night;
mod plot;
mod rounds;
mod stages;
mod steam;
mod work;

use eframe::egui::Ui;

use crate::app::action::Action;
use crate::app::cx::Cx;
use crate::app::page::{Page, record};
use crate::app::theme::STEP;
use crate::app::widget::figure::{Look, figure};
use crate::app::widget::row::row;
use crate::app::widget::{button, finding, heading};
use crate::calc::{BurnoutFigures, Weight};
use crate::job::{Burnout, BurnoutId, Entry, Event, Job, KilnDid, Programme, standing};
use crate::paper::words::moment_words;
use crate::stock::{EntryId, StageTable};

/// Shows the page.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>) {
    let tokens = cx.tokens;
    heading::title(ui, &cx.label("stage-burnout"), "", &tokens);
    let job = cx.job;
    if job.burnouts.is_empty() {
        heading::empty(ui, &cx.label("heat-empty"), &cx.label("heat-first"), &tokens);
    }
    ui.horizontal_wrapped(|ui| {
        for load in &job.burnouts {
            let name = crate::app::names::load(cx, load.id);
            if ui.selectable_label(cx.view.burnout == Some(load.id), name).clicked() {
                let id = load.id;
                cx.look(move |view| view.burnout = Some(id));
            }
        }
        if button::plain(ui, &cx.label("heat-add"), &tokens).clicked() {
            let id = next(job);
            cx.look(move |view| view.burnout = Some(id));
            cx.edit("edit-burnout-add", add);
        }
        if job.burnouts.is_empty() && button::plain(ui, &cx.label("do-open-sample"), &tokens).clicked() {
            cx.act(Action::OpenSample);
        }
    });
    if let Some(load) = job.burnouts.iter().find(|load| Some(load.id) == cx.view.burnout) {
        load::show(ui, cx, load);
        let figures = cx.computed.report.burnouts.iter().find(|figures| figures.id == load.id).cloned();
        if let Some(figures) = figures {
            plot::show(ui, cx, load, &figures);
            log::show(ui, cx, load);
            mould::show(ui, cx, load.id);
            stages::show(ui, cx, load, &figures);
            rounds::show(ui, cx, &figures);
            totals(ui, cx, &figures);
            steam::show(ui, cx, load, &figures);
            work::show(ui, cx, load);
            cx.folded(ui, "energy-heading", |ui, cx| energy(ui, cx, figures.id));
            cx.folded(ui, "floor-heading", |ui, cx| floor::show(ui, cx, load, &figures));
            cx.folded(ui, "keyed-heading", |ui, cx| keyed::show(ui, cx, load, &figures));
            cx.folded(ui, "night-heading", |ui, cx| night::show(ui, cx, load));
        }
        load::flasks(ui, cx, load);
        kiln(ui, cx, load);
        cx.folded(ui, "heat-more", |ui, cx| load::more(ui, cx, load));
    }
    ui.add_space(2.0 * STEP);
    for key in ["caution-burnout-fume", "caution-kiln-codes"] {
        caution(ui, cx, key);
    }
    finding::of_page(ui, cx, |found| Page::of_finding(found.kind, found.place) == Page::Burnout);
}

/// A caution of the trade as a quiet line.
pub fn caution(ui: &mut Ui, cx: &Cx<'_>, key: &str) {
    let tokens = cx.tokens;
    ui.horizontal_top(|ui| {
        ui.add_space(2.0);
        crate::app::widget::mark::mark(ui, Weight::Caution, 13.0, &crate::paper::words::weight_words(Weight::Caution, cx.texts), &tokens);
        heading::says(ui, &cx.label(key), &tokens);
    });
}

fn totals(ui: &mut Ui, cx: &mut Cx<'_>, figures: &BurnoutFigures) {
    let tokens = cx.tokens;
    let mut rows = vec![("heat-takes", figures.total)];
    if let Some([including, besides]) = figures.both {
        rows.extend([("heat-if-in", including), ("heat-if-besides", besides)]);
    }
    rows.extend(figures.dewax_start.map(|id| ("heat-dewax-at", id)));
    if let Some([lit, hot]) = figures.lit {
        rows.extend([("heat-lit", lit), ("heat-hot-kiln", hot)]);
    }
    rows.extend([("heat-kiln-on", figures.kiln_start), ("heat-highest", figures.top), ("heat-hot", figures.hot)]);
    heading::group(ui, &cx.label("heat-in-all"), &tokens);
    for (key, id) in rows {
        row(ui, &cx.label(key), &tokens, |ui| figure(ui, cx, id, Look::ROW.width(210.0)));
    }
}

/// The load went into the kiln, or came out of it: that goes into the record, and its pieces move with it.
fn kiln(ui: &mut Ui, cx: &mut Cx<'_>, load: &Burnout) {
    let tokens = cx.tokens;
    heading::group(ui, &cx.label("heat-record"), &tokens);
    let did = |did: KilnDid| {
        let mut told = standing(&cx.job.record).filter_map(move |entry| match &entry.event {
            Event::Kiln { burnout, did: told, .. } if *burnout == load.id && *told == did => Some(entry.at),
            _ => None,
        });
        told.next()
    };
    let told = [(KilnDid::WentIn, "heat-went-in", "heat-is-in"), (KilnDid::CameOut, "heat-came-out", "heat-is-out")];
    let told = told.map(|(which, do_key, done_key)| (which, do_key, done_key, did(which)));
    ui.horizontal_wrapped(|ui| {
        for (did, do_key, done_key, at) in told {
            match at {
                Some(at) => {
                    let at = at.map_or_else(|| cx.label("undated"), |at| moment_words(at, cx.texts));
                    heading::says(ui, &cx.say(done_key, &[("at", at.into())]), &tokens);
                }
                None if button::plain(ui, &cx.label(do_key), &tokens).clicked() => {
                    let event = Event::Kiln { burnout: load.id, temperature_c: None, did };
                    let entry = Entry { at: record::now(cx), hands: record::hands_now(ui), event, ..Entry::default() };
                    cx.edit("edit-heat-kiln", move |job| record::append(job, entry));
                }
                None => {}
            }
        }
    });
}

/// What the night takes of electricity or gas, and what that costs.
fn energy(ui: &mut Ui, cx: &mut Cx<'_>, load: BurnoutId) {
    let tokens = cx.tokens;
    let report = &cx.computed.report;
    let in_moulds = report.heat_of_loads.iter().find(|(of, _)| *of == load).map(|(_, heat)| ("heat-in-moulds", *heat));
    let mut rows: Vec<_> = in_moulds.into_iter().collect();
    if let Some((_, energy)) = report.energy.iter().find(|(of, _)| *of == load) {
        rows.extend([("heat-in-lining", energy.lining), ("heat-lost", energy.lost), ("heat-energy", energy.energy)]);
        rows.extend(energy.cost.map(|cost| ("heat-cost", cost)));
    }
    for (key, id) in rows {
        row(ui, &cx.label(key), &tokens, |ui| figure(ui, cx, id, Look::ROW.width(210.0)));
    }
}

/// The id the next load gets.
fn next(job: &Job) -> BurnoutId {
    BurnoutId(job.burnouts.iter().map(|load| load.id.0).max().unwrap_or(0) + 1)
}

/// A new load with the studio's kiln and the table for wax, to be changed.
fn add(job: &mut Job) {
    let id = next(job);
    let known = |id: &str| EntryId::new(id).filter(|id| crate::stock::Shelf::shipped().entry(id.as_str()).is_some());
    let programme = known("stages-wax").filter(|id| crate::stock::Shelf::shipped().get::<StageTable>(id.as_str()).is_some());
    job.burnouts.push(Burnout { id, kiln: known("kiln-studio"), programme: programme.map(Programme::Table), ..Burnout::default() });
}

/// Changes a load.
fn change(cx: &mut Cx<'_>, key: &str, id: BurnoutId, change: impl FnOnce(&mut Burnout) + 'static) {
    cx.edit(key, move |job| {
        if let Some(load) = job.burnouts.iter_mut().find(|load| load.id == id) {
            change(load);
        }
    });
}
