//! Cut off and weighed: what became of the metal of each flask, and which pieces did not come.

use eframe::egui::{Id, RichText, Ui};

use crate::app::action::Action;
use crate::app::cx::Cx;
use crate::app::page::Page;
use crate::app::page::burnout::caution;
use crate::app::widget::choice::choice;
use crate::app::widget::number::{Number, count, grams};
use crate::app::widget::row::row;
use crate::app::widget::text::text;
use crate::app::widget::{button, finding, heading};
use crate::job::{Entry, Event, Flask, FlaskId, Job, LineId, MetalKind, PieceId, RecordId, standing};
use crate::quantity::{Grams, Kind};

/// What is weighed after a pour, with the key of its name.
const KINDS: [(MetalKind, &str); 5] = [
    (MetalKind::GoodPieces, "finish-good"),
    (MetalKind::SpruesAndButton, "finish-sprues"),
    (MetalKind::NoFill, "finish-no-fill"),
    (MetalKind::Beads, "finish-beads"),
    (MetalKind::Sweeps, "finish-sweeps"),
];

/// A piece that is being rejected, until it is.
#[derive(Debug, Clone, Default)]
struct Reject {
    line: Option<LineId>,
    number: u32,
    defect: String,
}

/// Shows the page.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>) {
    let tokens = cx.tokens;
    heading::title(ui, &cx.label("stage-finish"), "", &tokens);
    let job = cx.job;
    if job.flasks.is_empty() {
        heading::empty(ui, &cx.label("finish-empty"), &cx.label("pour-first"), &tokens);
        if button::plain(ui, &cx.label("do-open-sample"), &tokens).clicked() {
            cx.act(Action::OpenSample);
        }
        return;
    }
    ui.horizontal_wrapped(|ui| {
        for flask in &job.flasks {
            if ui.selectable_label(cx.view.flask == Some(flask.id), crate::app::names::flask(cx, flask.id)).clicked() {
                cx.view.flask = Some(flask.id);
            }
        }
    });
    if let Some(flask) = job.flasks.iter().find(|flask| Some(flask.id) == cx.view.flask) {
        weigh(ui, cx, flask);
        weighed(ui, cx, flask.id);
        reject(ui, cx, flask);
    }
    ui.add_space(8.0);
    caution(ui, cx, "caution-silica-devest");
    caution(ui, cx, "caution-acids");
    finding::of_page(ui, cx, |found| Page::of_finding(found.kind, found.place) == Page::Finish);
}

/// A field for each kind of metal: what is committed goes into the record, and the field is empty again.
fn weigh(ui: &mut Ui, cx: &mut Cx<'_>, flask: &Flask) {
    let (tokens, id, melt) = (cx.tokens, flask.id, flask.melt);
    heading::group(ui, &cx.label("finish-weigh"), &tokens);
    heading::says(ui, &cx.label("finish-weigh-says"), &tokens);
    for (what, key) in KINDS {
        let label = cx.label(key);
        let field = Number::new(Id::unique((key, id.0)), &label, Kind::Mass);
        if let Some(Some(grams)) = row(ui, &label, &tokens, |ui| grams(ui, cx, &field)) {
            record(cx, "edit-finish-weigh", Event::Metal { melt, flask: Some(id), what, grams });
        }
    }
}

/// What was weighed so far.
fn weighed(ui: &mut Ui, cx: &Cx<'_>, id: FlaskId) {
    let tokens = cx.tokens;
    for entry in standing(&cx.job.record) {
        let Event::Metal { flask: Some(flask), what, grams, .. } = &entry.event else { continue };
        if *flask != id {
            continue;
        }
        let name = KINDS.iter().find(|(kind, _)| kind == what).map_or_else(String::new, |(_, key)| cx.label(key));
        ui.label(RichText::new(format!("{name}  {}", shown(cx, *grams))).color(tokens.ink2));
    }
}

fn shown(cx: &Cx<'_>, grams: Grams) -> String {
    crate::quantity::print(grams.to_f64(), Kind::Mass, cx.style).to_string()
}

/// A piece that did not come: which one, and what is wrong with it.
fn reject(ui: &mut Ui, cx: &mut Cx<'_>, flask: &Flask) {
    let tokens = cx.tokens;
    heading::group(ui, &cx.label("finish-reject"), &tokens);
    let key = Id::unique(("reject", flask.id.0));
    let mut draft: Reject = ui.data(|data| data.get_temp(key)).unwrap_or_default();
    let hung: Vec<LineId> =
        cx.job.trees.iter().filter(|tree| Some(tree.id) == flask.tree).flat_map(|tree| &tree.pieces).map(|hung| hung.line).collect();
    let lines: Vec<(LineId, String)> = hung.iter().map(|line| (*line, crate::app::names::line(cx, *line))).collect();
    let label = cx.label("finish-line");
    let place = (Id::unique(("reject-line", flask.id.0)), label.as_str(), 240.0);
    if let Some(line) = row(ui, &label, &tokens, |ui| choice(ui, cx, place, draft.line.as_ref(), &lines, false)) {
        draft.line = line;
    }
    let label = cx.label("finish-number");
    let field =
        Number::new(Id::unique(("reject-number", flask.id.0)), &label, Kind::Count).now(Some(f64::from(draft.number.max(1)))).width(70.0);
    if let Some(Some(number)) = row(ui, &label, &tokens, |ui| count(ui, cx, &field)) {
        draft.number = number;
    }
    let label = cx.label("finish-defect");
    if let Some(defect) =
        row(ui, &label, &tokens, |ui| text(ui, cx, Id::unique(("reject-defect", flask.id.0)), &label, &draft.defect, 240.0))
    {
        draft.defect = defect;
    }
    let there = |line: LineId| cx.job.lines().any(|(_, other)| other.id == line && draft.number.max(1) <= other.quantity);
    let ready = draft.line.filter(|line| there(*line));
    if button::outlined(ui, &cx.label("finish-reject-do"), &tokens, ready.is_some()).clicked()
        && let Some(line) = ready
    {
        let piece = PieceId { line, number: draft.number.max(1) };
        record(cx, "edit-finish-reject", Event::Rejected { piece, defect: draft.defect.clone() });
        draft = Reject::default();
    }
    ui.data_mut(|data| data.insert_temp(key, draft));
}

/// Appends an entry to the record.
fn record(cx: &mut Cx<'_>, key: &str, event: Event) {
    let at = Some(jiff::ZonedDateTime::now().with_time_zone(cx.setting.zone.clone()).datetime());
    cx.edit(key, move |job: &mut Job| {
        let id = RecordId(job.record.iter().map(|entry| entry.id.0).max().unwrap_or(0) + 1);
        job.record.push(Entry { id, at, event, ..Entry::default() });
    });
}
