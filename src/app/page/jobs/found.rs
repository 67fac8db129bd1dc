//! A word looked for in every job, narrowed by days.

use std::path::PathBuf;
use std::sync::Arc;

use eframe::egui::{Id, ScrollArea, Ui};
use jiff::civil::Date;

use super::again;
use crate::app::cx::Cx;
use crate::app::names;
use crate::app::page::settings::kept::search;
use crate::app::theme::{ROW, size};
use crate::app::widget::moment::day;
use crate::app::widget::row::{cell, fitted, row};
use crate::app::widget::{button, heading};
use crate::folder::{Brief, DateOf, Field, Found, Hit, Index, Query};
use crate::job::LineId;
use crate::paper::words::{date_words, one_line};

/// Rows in sight at once.
const ROWS: usize = 10;
/// Lines that are shown; the count says how many there are.
const MOST: usize = 500;
/// Widths of the columns: the day, what it is, whose, in what, and where else a word stands.
const WIDE: [f32; 5] = [150.0, 170.0, 60.0, 130.0, 150.0];
/// Room for the name of the job.
const LINK: f32 = 130.0;

/// What the section keeps from one frame to the next; no part of any document.
#[derive(Clone, Default)]
struct Kept {
    from: Option<Date>,
    to: Option<Date>,
    /// The job and the line that are looked at.
    chosen: Option<(PathBuf, Option<LineId>)>,
    /// What was found last, with what was asked and where it was looked for.
    found: Option<(Query, Arc<Index>, Arc<Found>)>,
}

/// Shows the search and what it finds.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>, index: &Arc<Index>) {
    let tokens = cx.tokens;
    let key = Id::unique("jobs-found");
    let mut kept: Kept = ui.data(|data| data.get_temp(key)).unwrap_or_default();
    let words = search(ui, Id::unique("jobs-search"), &cx.label("jobs-search"), 420.0);
    for (name, of) in [("jobs-from", &mut kept.from), ("jobs-to", &mut kept.to)] {
        let label = cx.label(name);
        if let Some(said) = row(ui, &label, &tokens, |ui| day(ui, cx, key.with(name), &label, *of, 130.0)) {
            *of = said;
        }
    }
    let found = answer(&mut kept, words, index);
    let jobs = index.jobs().count();
    let args = [("jobs", jobs.into()), ("all", found.all.into()), ("shown", found.hits.len().into())];
    heading::says(ui, &cx.say("jobs-count", &args), &tokens);
    list(ui, cx, index, &found, &mut kept);
    if let Some((path, line)) = &kept.chosen
        && let Some(job) = index.job_at(path)
    {
        let close = again::show(ui, cx, (path, job), *line);
        if close {
            kept.chosen = None;
        }
    }
    ui.data_mut(|data| data.insert_temp(key, kept));
}

/// Looks once for each question and each state of the folder. Without any word everything is listed, the newest first.
fn answer(kept: &mut Kept, words: String, index: &Arc<Index>) -> Arc<Found> {
    let mut query = Query { words, from: kept.from, to: kept.to, most: MOST, ..Query::default() };
    if query.words.trim().is_empty() && query.from.is_none() && query.to.is_none() {
        query.from = Some(Date::MIN);
    }
    match &kept.found {
        Some((asked, looked, found)) if *asked == query && Arc::ptr_eq(looked, index) => Arc::clone(found),
        _ => {
            let found = Arc::new(index.search(&query));
            kept.found = Some((query, Arc::clone(index), Arc::clone(&found)));
            found
        }
    }
}

fn list(ui: &mut Ui, cx: &Cx<'_>, index: &Index, found: &Found, kept: &mut Kept) {
    let tokens = cx.tokens;
    if found.hits.is_empty() {
        return;
    }
    ui.horizontal(|ui| {
        let heads = ["jobs-day", "jobs-design", "jobs-client", "jobs-alloy", "jobs-why"];
        for (key, width) in heads.into_iter().zip(fitted(ui, WIDE, LINK)) {
            cell(ui, &cx.label(key), width, size::SMALL, tokens.ink2);
        }
        cell(ui, &cx.label("jobs-job"), LINK, size::SMALL, tokens.ink2);
    });
    let height = (ROW + ui.spacing().item_spacing.y) * found.hits.len().min(ROWS) as f32;
    ScrollArea::vertical().id_salt("jobs").max_height(height).auto_shrink([false, true]).show_rows(
        ui,
        ROW,
        found.hits.len(),
        |ui, range| {
            for place in range {
                let hit = &found.hits[place];
                let Some(job) = index.job_at(&hit.path) else { continue };
                ui.push_id(place, |ui| one(ui, cx, hit, job, kept));
            }
        },
    );
}

fn one(ui: &mut Ui, cx: &Cx<'_>, hit: &Hit, job: &Brief, kept: &mut Kept) {
    let tokens = cx.tokens;
    let line = hit.line.and_then(|id| job.orders.iter().flat_map(|order| &order.lines).find(|line| line.id == id));
    let client =
        job.orders.iter().find(|order| order.lines.iter().any(|line| Some(line.id) == hit.line)).map(|order| order.client.as_str());
    ui.horizontal(|ui| {
        ui.set_height(ROW);
        let wide = fitted(ui, WIDE, LINK);
        cell(ui, &dated(cx, hit.date), wide[0], size::SMALL, tokens.ink2);
        let design = line.map_or_else(|| one_line(&job.name), |line| format!("{} × {}", line.quantity, one_line(&line.design)));
        cell(ui, &design, wide[1], size::BODY, tokens.ink);
        cell(ui, &one_line(client.unwrap_or_default()), wide[2], size::BODY, tokens.ink);
        let alloy = hit.why.iter().find(|why| why.field == Field::Alloy).map(|why| why.text.to_string());
        let alloy = line.and_then(|line| line.alloy.as_ref()).map(|id| names::entry(cx, id)).or(alloy).unwrap_or_default();
        cell(ui, &alloy, wide[3], size::SMALL, tokens.ink2);
        cell(ui, &why(cx, hit), wide[4], size::SMALL, tokens.ink2);
        let name = hit.path.file_stem().map(|name| name.to_string_lossy().into_owned()).unwrap_or_default();
        let link =
            button::link(ui, &name, &tokens).accessible_name(cx.say("jobs-look", &[("job", (&name).into()), ("what", design.into())]));
        if link.clicked() {
            kept.chosen = Some((hit.path.to_path_buf(), hit.line));
        }
    });
}

/// `cast 3 Nov 2026`.
fn dated(cx: &Cx<'_>, date: Option<(Date, DateOf)>) -> String {
    let Some((day, of)) = date else { return String::new() };
    let key = match of {
        DateOf::Begun => "jobs-begun",
        DateOf::Ordered => "jobs-ordered",
        DateOf::Planned => "jobs-planned",
        DateOf::Poured => "jobs-poured",
    };
    cx.say(key, &[("on", date_words(day, cx.texts).into())])
}

/// Where the words stand that no other column shows.
fn why(cx: &Cx<'_>, hit: &Hit) -> String {
    let key = |field: Field| match field {
        Field::Client | Field::Design | Field::Alloy => None,
        Field::Defect => Some("jobs-why-defect"),
        Field::Size => Some("jobs-why-size"),
        Field::Flask => Some("jobs-why-flask"),
        Field::Tree => Some("jobs-why-tree"),
        Field::Job => Some("jobs-why-job"),
        Field::Powder => Some("jobs-why-powder"),
        Field::Kiln => Some("jobs-why-kiln"),
        Field::Lot => Some("jobs-why-lot"),
    };
    let said = hit.why.iter().filter_map(|why| Some(cx.say(key(why.field)?, &[("what", one_line(&why.text).into())])));
    // Two words may stand in one place.
    let mut once: Vec<String> = Vec::new();
    said.for_each(|words| {
        if !once.contains(&words) {
            once.push(words)
        }
    });
    once.join(", ")
}
