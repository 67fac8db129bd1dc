//! Each line of this batch: when its design was cast in its alloy before, and what became of it.

use std::path::PathBuf;
use std::sync::Arc;

use eframe::egui::{Id, Label, RichText, Ui};

use super::compared;
use crate::app::cx::Cx;
use crate::app::names;
use crate::app::widget::{button, heading};
use crate::folder::{Casting, Index, LastTime, last_time};
use crate::job::{FlaskId, LineId};
use crate::paper::words::{date_words, one_line};
use crate::stock::EntryId;

/// What was found, by what was asked.
type Answers = Vec<(LineId, Option<LastTime>)>;

/// What the section keeps from one frame to the next.
#[derive(Clone, Default)]
struct Kept {
    asked: Vec<(LineId, String, EntryId)>,
    looked: Option<Arc<Index>>,
    found: Arc<Answers>,
    /// The casting that is held against this batch, and the line it is of.
    chosen: Option<(LineId, PathBuf, FlaskId)>,
}

/// Shows the lines.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>, index: &Arc<Index>) {
    let tokens = cx.tokens;
    let key = Id::unique("jobs-last-time");
    let mut kept: Kept = ui.data(|data| data.get_temp(key)).unwrap_or_default();
    let asked = asked(cx);
    if asked.is_empty() {
        heading::says(ui, &cx.label("jobs-last-none"), &tokens);
        return;
    }
    if kept.asked != asked || !kept.looked.as_ref().is_some_and(|looked| Arc::ptr_eq(looked, index)) {
        let here = cx.job.job_id;
        let find = |(line, design, alloy): &(LineId, String, EntryId)| (*line, last_time(index, design, alloy.as_str(), Some(here)));
        kept.found = Arc::new(asked.iter().map(find).collect());
        (kept.asked, kept.looked) = (asked, Some(Arc::clone(index)));
    }
    for (line, last) in kept.found.iter() {
        ui.push_id(line, |ui| one(ui, cx, *line, last.as_ref(), &mut kept.chosen));
    }
    if let Some((line, path, then)) = &kept.chosen {
        match flask_of(cx, *line) {
            Some(now) => {
                heading::group(ui, &cx.say("jobs-beside", &[("flask", names::flask(cx, now).into())]), &tokens);
                compared::show(ui, cx, (path, *then), now);
            }
            None => {
                heading::says(ui, &cx.label("jobs-no-flask"), &tokens);
            }
        }
    }
    ui.data_mut(|data| data.insert_temp(key, kept));
}

/// The lines of this batch whose alloy is known, by their own word or their flask's.
fn asked(cx: &Cx<'_>) -> Vec<(LineId, String, EntryId)> {
    let of_flask = |line: LineId| {
        let flask = flask_of(cx, line)?;
        cx.computed.report.flasks.iter().find(|figures| figures.id == flask)?.alloy.clone()
    };
    let lines = cx.job.lines().map(|(_, line)| line).filter(|line| !line.design.trim().is_empty());
    lines.filter_map(|line| Some((line.id, line.design.clone(), line.alloy.clone().or_else(|| of_flask(line.id))?))).collect()
}

/// The flask of this batch that a line hangs in.
fn flask_of(cx: &Cx<'_>, line: LineId) -> Option<FlaskId> {
    let holds = |tree: &&crate::job::Tree| tree.pieces.iter().any(|row| row.line == line);
    let tree = cx.job.trees.iter().find(holds)?.id;
    cx.job.flasks.iter().find(|flask| flask.tree == Some(tree)).map(|flask| flask.id)
}

fn one(ui: &mut Ui, cx: &Cx<'_>, line: LineId, last: Option<&LastTime>, chosen: &mut Option<(LineId, PathBuf, FlaskId)>) {
    let tokens = cx.tokens;
    let name = names::line(cx, line);
    let Some(last) = last else {
        heading::says(ui, &cx.say("jobs-never", &[("line", name.into())]), &tokens);
        return;
    };
    ui.horizontal_wrapped(|ui| {
        let before = if last.before.is_empty() { String::new() } else { cx.say("jobs-before", &[("count", last.before.len().into())]) };
        let words = format!("{} {before}", said(cx, &name, &last.newest));
        ui.add(Label::new(RichText::new(words.trim())).wrap());
        if let Some((flask, _)) = &last.newest.flask {
            let link = button::link(ui, &cx.label("jobs-what-differed"), &tokens);
            if link.accessible_name(cx.say("jobs-what-differed-of", &[("line", (&name).into())])).clicked() {
                *chosen = Some((line, last.newest.path.to_path_buf(), *flask));
            }
        }
    });
}

/// `Limpet ring: last cast 3 Nov in flask 17 of first-pour, nothing rejected.`
fn said(cx: &Cx<'_>, line: &str, casting: &Casting) -> String {
    let on = casting.at.map_or_else(|| cx.label("jobs-some-day"), |at| date_words(at.date(), cx.texts));
    let job = casting.path.file_stem().map(|name| name.to_string_lossy().into_owned()).unwrap_or_default();
    let flask = casting.flask.as_ref().map_or_else(|| "–".to_owned(), |(_, scratch)| one_line(scratch));
    let mut defects = casting.defects.clone();
    defects.sort();
    defects.dedup();
    let args = [
        ("line", line.into()),
        ("on", on.into()),
        ("job", job.into()),
        ("flask", flask.into()),
        ("count", casting.defects.len().into()),
        ("defects", one_line(&defects.join(", ")).into()),
    ];
    cx.say("jobs-last-cast", &args)
}
