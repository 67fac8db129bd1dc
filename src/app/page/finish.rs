//! Cut off and weighed: what became of the metal of each flask, and which pieces did not come.

mod own_metal;

use eframe::egui::{Id, Label, RichText, ScrollArea, Ui};

use crate::app::action::Action;
use crate::app::cx::Cx;
use crate::app::page::Page;
use crate::app::page::burnout::caution;
use crate::app::page::pour::done::poured;
use crate::app::page::record;
use crate::app::theme::STEP;
use crate::app::widget::choice::choice;
use crate::app::widget::number::{Number, count, grams};
use crate::app::widget::row::row;
use crate::app::widget::text::text;
use crate::app::widget::{button, finding, heading};
use crate::job::{Entry, Event, Flask, LineId, MetalKind, PieceId, standing};
use crate::paper::words::moment_words;
use crate::quantity::Kind;

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
    super::choose_flask(ui, cx);
    if let Some(flask) = job.flasks.iter().find(|flask| Some(flask.id) == cx.view.flask) {
        if poured(cx, flask.id).is_none() {
            heading::says(ui, &cx.label("finish-not-poured"), &tokens);
        }
        let hands = record::hands(ui, cx);
        weigh(ui, cx, flask, &hands);
        reject(ui, cx, flask, &hands);
        so_far(ui, cx, flask);
        own_metal::show(ui, cx, &hands);
    }
    ui.add_space(2.0 * STEP);
    caution(ui, cx, "caution-silica-devest");
    caution(ui, cx, "caution-acids");
    finding::of_page(ui, cx, |found| Page::of_finding(found.kind, found.place) == Page::Finish);
}

/// A field for each kind of metal: what is committed goes into the record, and the field is empty again.
fn weigh(ui: &mut Ui, cx: &mut Cx<'_>, flask: &Flask, hands: &str) {
    let (tokens, id, melt) = (cx.tokens, flask.id, flask.melt);
    heading::group(ui, &cx.label("finish-weigh"), &tokens);
    heading::says(ui, &cx.label("finish-weigh-says"), &tokens);
    for (what, key) in KINDS {
        let label = cx.label(key);
        let field = Number::new(Id::unique((key, id.0)), &label, Kind::Mass);
        if let Some(Some(grams)) = row(ui, &label, &tokens, |ui| grams(ui, cx, &field)) {
            write(cx, "edit-finish-weigh", hands, Event::Metal { melt, flask: Some(id), what, grams });
        }
    }
}

/// The lines that hang on the flask's tree.
fn lines_of(cx: &Cx<'_>, flask: &Flask) -> Vec<LineId> {
    let trees = cx.job.trees.iter().filter(|tree| Some(tree.id) == flask.tree);
    let mut lines: Vec<LineId> = trees.flat_map(|tree| &tree.pieces).map(|hung| hung.line).collect();
    lines.sort_unstable();
    lines.dedup();
    lines
}

/// What stands in the record of this flask's metal and pieces, newest first.
fn so_far(ui: &mut Ui, cx: &mut Cx<'_>, flask: &Flask) {
    let tokens = cx.tokens;
    let (job, lines) = (cx.job, lines_of(cx, flask));
    let belongs = |entry: &&Entry| match &entry.event {
        Event::Metal { flask: of, .. } => *of == Some(flask.id),
        Event::Rejected { piece, .. } | Event::PieceWeighed { piece, .. } => lines.contains(&piece.line),
        _ => false,
    };
    let mut entries: Vec<&Entry> = standing(&job.record).filter(belongs).collect();
    entries.reverse();
    heading::group(ui, &cx.label("finish-so-far"), &tokens);
    if entries.is_empty() {
        heading::says(ui, &cx.label("finish-nothing-yet"), &tokens);
        return;
    }
    ScrollArea::vertical().id_salt("finish-so-far").max_height(200.0).auto_shrink([false, true]).show_rows(
        ui,
        20.0,
        entries.len(),
        |ui, range| {
            for entry in &entries[range] {
                let at = entry.at.map_or_else(|| cx.label("undated"), |at| moment_words(at, cx.texts));
                ui.horizontal(|ui| {
                    ui.set_height(20.0);
                    ui.label(RichText::new(at).size(12.0).color(tokens.ink2));
                    let words = record::words::event(cx, &entry.event);
                    ui.add(Label::new(RichText::new(words).color(tokens.ink)).truncate());
                });
            }
        },
    );
    if button::link(ui, &cx.label("pour-to-record"), &tokens).clicked() {
        cx.look(|view| view.page = Page::Record);
    }
}

/// A piece that did not come: which one, and what is wrong with it.
fn reject(ui: &mut Ui, cx: &mut Cx<'_>, flask: &Flask, hands: &str) {
    let tokens = cx.tokens;
    heading::group(ui, &cx.label("finish-reject"), &tokens);
    let key = Id::unique(("reject", flask.id.0));
    let mut draft: Reject = ui.data(|data| data.get_temp(key)).unwrap_or_default();
    let lines: Vec<(LineId, String)> = lines_of(cx, flask).into_iter().map(|line| (line, crate::app::names::line(cx, line))).collect();
    if lines.is_empty() {
        heading::says(ui, &cx.label("finish-no-lines"), &tokens);
        return;
    }
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
    let ready = draft.line.filter(|line| there(*line) && !draft.defect.trim().is_empty());
    if button::outlined(ui, &cx.label("finish-reject-do"), &tokens, ready.is_some()).clicked()
        && let Some(line) = ready
    {
        let piece = PieceId { line, number: draft.number.max(1) };
        write(cx, "edit-finish-reject", hands, Event::Rejected { piece, defect: draft.defect.clone() });
        draft = Reject::default();
    }
    ui.data_mut(|data| data.insert_temp(key, draft));
}

/// Appends an entry to the record.
fn write(cx: &mut Cx<'_>, key: &str, hands: &str, event: Event) {
    let entry = Entry { at: record::now(cx), hands: hands.to_owned(), event, ..Entry::default() };
    cx.edit(key, move |job| record::append(job, entry));
}
