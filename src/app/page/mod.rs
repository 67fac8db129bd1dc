//! The pages: one a stage of the batch, in the order they happen.

mod batch;
pub(super) mod burnout;
mod finish;
mod flasks;
mod folder;
mod gallery;
mod investment;
mod jobs;
mod metal;
mod orders;
mod paper;
pub mod patterns;
mod pieces;
mod pour;
mod quotes;
mod really;
pub mod record;
mod settings;
mod start;
mod take_out;
mod trees;

use eframe::egui::Ui;

use super::cx::Cx;
use crate::calc::finding::FindingKind;
use crate::job::{Job, Pattern, PatternFile, PatternId, Place};

/// A page.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default)]
pub enum Page {
    /// Tree on the scale: the shortest way to charge, mix and kiln start.
    #[default]
    Start,
    /// Orders and their lines.
    Orders,
    /// Waxes and prints.
    Patterns,
    /// Trees.
    Trees,
    /// Flasks.
    Flasks,
    /// Investment.
    Investment,
    /// Burnout.
    Burnout,
    /// Metal.
    Metal,
    /// Pour.
    Pour,
    /// Cut, weighed, finished.
    Finish,
    /// The board: where every piece is.
    Pieces,
    /// Every job of the folder.
    Jobs,
    /// Quotes.
    Quotes,
    /// Paper, as it is printed.
    Paper,
    /// What happened.
    Record,
    /// The studio and the window.
    Settings,
    /// Every house widget in every state, for looking at.
    Gallery,
}

impl Page {
    /// Pages that the rail shows.
    pub const RAIL: [Self; 16] = [
        Self::Start,
        Self::Orders,
        Self::Patterns,
        Self::Trees,
        Self::Flasks,
        Self::Investment,
        Self::Burnout,
        Self::Metal,
        Self::Pour,
        Self::Finish,
        Self::Pieces,
        Self::Jobs,
        Self::Quotes,
        Self::Paper,
        Self::Record,
        Self::Settings,
    ];

    /// The key of its name.
    #[must_use]
    pub fn key(self) -> &'static str {
        match self {
            Self::Start => "stage-start",
            Self::Orders => "stage-orders",
            Self::Patterns => "stage-patterns",
            Self::Trees => "stage-trees",
            Self::Flasks => "stage-flasks",
            Self::Investment => "stage-investment",
            Self::Burnout => "stage-burnout",
            Self::Metal => "stage-metal",
            Self::Pour => "stage-pour",
            Self::Finish => "stage-finish",
            Self::Pieces => "stage-pieces",
            Self::Jobs => "stage-jobs",
            Self::Quotes => "stage-quotes",
            Self::Paper => "stage-paper",
            Self::Record => "stage-record",
            Self::Settings => "stage-settings",
            Self::Gallery => "stage-gallery",
        }
    }

    /// The page a place belongs to.
    #[must_use]
    pub fn of(place: Place) -> Self {
        match place {
            Place::Order(_) | Place::Line(_) | Place::Piece(_) | Place::Job => Self::Orders,
            Place::Pattern(_) | Place::Print(_) => Self::Patterns,
            Place::Tree(_) | Place::TreeRow(..) => Self::Trees,
            Place::Flask(_) => Self::Flasks,
            Place::Mix(..) => Self::Investment,
            Place::Burnout(_) | Place::Stage(..) => Self::Burnout,
            Place::Melt(_) => Self::Metal,
            Place::Quote(_) => Self::Quotes,
            Place::Record(_) => Self::Record,
            Place::Studio => Self::Settings,
        }
    }

    /// The page a finding belongs to: some findings at a flask are about its mix or its pour.
    #[must_use]
    pub fn of_finding(kind: &FindingKind, place: Place) -> Self {
        match kind.key {
            "ratio-outside" | "several-mixes" | "mix-outruns" | "powder-lot-unknown" | "powder-old" => Self::Investment,
            "metal-outside" | "mould-outside" | "stones-no-quench" | "solidus-uncertain" | "freezes-first" | "detail-fine"
            | "spin-off-balance" | "spin-unbalanced" | "counterweight-over" | "cradle-size" | "cradle-load" | "spin-too-fast"
            | "machine-unknown" => Self::Pour,
            "rework-under-mark" | "soldered-to-clean" | "unmarked" => Self::Pieces,
            "button-over-funnel" | "button-small" => Self::Metal,
            _ => Self::of(place),
        }
    }

    /// Shows the page.
    pub fn show(self, ui: &mut Ui, cx: &mut Cx<'_>) {
        match self {
            Self::Start => start::show(ui, cx),
            Self::Orders => orders::show(ui, cx),
            Self::Patterns => patterns::show(ui, cx),
            Self::Trees => trees::show(ui, cx),
            Self::Flasks => flasks::show(ui, cx),
            Self::Investment => investment::show(ui, cx),
            Self::Burnout => burnout::show(ui, cx),
            Self::Metal => metal::show(ui, cx),
            Self::Pour => pour::show(ui, cx),
            Self::Finish => finish::show(ui, cx),
            Self::Pieces => pieces::show(ui, cx),
            Self::Jobs => jobs::show(ui, cx),
            Self::Quotes => quotes::show(ui, cx),
            Self::Paper => paper::show(ui, cx),
            Self::Record => record::show(ui, cx),
            Self::Settings => settings::show(ui, cx),
            Self::Gallery => gallery::show(ui, cx),
        }
    }
}

/// The id the next pattern gets.
#[must_use]
pub fn next_pattern(job: &Job) -> PatternId {
    PatternId(job.patterns.iter().map(|pattern| pattern.id.0).max().unwrap_or(0) + 1)
}

/// Adds a pattern to a job.
pub fn add_pattern(job: &mut Job, name: String, file: Option<PatternFile>) {
    let id = next_pattern(job);
    job.patterns.push(Pattern { id, name, file, ..Pattern::default() });
}

/// The flasks of the batch, one of them chosen.
fn choose_flask(ui: &mut Ui, cx: &mut Cx<'_>) {
    let job = cx.job;
    ui.horizontal_wrapped(|ui| {
        for flask in &job.flasks {
            if ui.selectable_label(cx.view.flask == Some(flask.id), super::names::flask(cx, flask.id)).clicked() {
                let id = flask.id;
                cx.look(move |view| view.flask = Some(id));
            }
        }
    });
}
