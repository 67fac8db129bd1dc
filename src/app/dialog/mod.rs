//! Questions that stand before the window until they are answered. Each says what happened, what is safe, and what can be done.

mod close;
mod file;
mod help;
mod log;
mod patterns;
mod recover;
mod sign;

use std::path::PathBuf;

use eframe::egui::{self, Id, Ui};

use super::cx::Cx;
use crate::files::recover::RecoveryFound;
use crate::job::Place;
use crate::kiln_log::Unit;

/// A question.
#[derive(Debug, Clone, PartialEq)]
pub enum Dialog {
    /// Close with changes that are not saved, and then?
    Close(Then),
    /// Which batch to open.
    Open {
        /// The path as it is typed.
        path: String,
        /// Why the last try failed.
        failed: Option<String>,
    },
    /// Under which name to save.
    SaveAs {
        /// The path as it is typed.
        path: String,
        /// Why the last try failed.
        failed: Option<String>,
        /// What follows.
        then: Option<Then>,
    },
    /// Which pattern files to add.
    AddPatterns {
        /// The path as it is typed.
        path: String,
        /// Why the last try failed.
        failed: Option<String>,
    },
    /// Which kiln log to read.
    ReadLog {
        /// The path as it is typed.
        path: String,
        /// Its unit, where the caster says it.
        unit: Option<Unit>,
        /// Why the last try failed.
        failed: Option<String>,
    },
    /// Pattern files outside the batch's folder.
    Outside {
        /// Their folder.
        folder: PathBuf,
        /// Their names.
        files: Vec<String>,
        /// Those that are to be added; none where the batch names them already.
        add: Vec<PathBuf>,
    },
    /// What can be done, and the keys for it.
    Help,
    /// Work that was set aside and never saved.
    Recover {
        /// What the batch is called.
        name: String,
        /// The work.
        found: Box<RecoveryFound>,
        /// What differs from the file.
        differs: Vec<Differs>,
        /// The file was saved by somebody else since.
        changed: bool,
        /// It is a studio, not a job.
        studio: bool,
    },
    /// Sign for a finding.
    Sign {
        /// Its kind.
        kind: &'static str,
        /// Where.
        place: Place,
        /// Who.
        hands: String,
        /// Why.
        reason: String,
        /// Said to be wrong.
        failed: Option<String>,
    },
}

/// A part of a document that is not the same in the file and in what was set aside.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Differs {
    /// The key of its name.
    pub key: &'static str,
    /// How many of it there are in the file.
    pub in_file: usize,
    /// How many there are in what was set aside.
    pub aside: usize,
}

/// What follows when a batch is out of the way.
#[derive(Debug, Clone, PartialEq)]
pub enum Then {
    /// The window closes.
    Quit,
    /// An empty batch.
    New,
    /// The dialog that opens another.
    AskOpen,
    /// Another batch.
    Open(PathBuf),
    /// A batch once more, as a new one.
    Again(PathBuf),
    /// The sample.
    Sample,
}

/// What to do with files outside the batch's folder.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Outside {
    /// Copied beside the batch.
    Copy,
    /// Read where they lie, now and later.
    Allow,
    /// Not read.
    Refuse,
}

/// What was answered.
#[derive(Debug, Clone, PartialEq)]
pub enum Answer {
    /// Nothing is to happen.
    Cancel,
    /// Save, then go on.
    SaveThen(Then),
    /// Go on without saving.
    Anyway(Then),
    /// Open this one.
    Open(PathBuf),
    /// Save under this name, then go on.
    SaveAs(PathBuf, Option<Then>),
    /// Signed.
    Sign(&'static str, Place, String, String),
    /// Ask the system for a file.
    Browse,
    /// Add these pattern files.
    AddPatterns(Vec<PathBuf>),
    /// Read this log, in this unit.
    ReadLog(PathBuf, Option<Unit>),
    /// About the folder outside that was asked about.
    Outside(Outside),
    /// Take up the work that was set aside.
    Recover,
    /// Take it up as a batch of its own.
    RecoverApart,
    /// Leave it out for good.
    LeaveOut,
}

/// Shows the question that stands, and gives the answer once there is one.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>, dialog: &mut Dialog, recent: &[PathBuf]) -> Option<Answer> {
    let mut answer = None;
    let modal = egui::Modal::new(Id::unique("dialog")).show(ui.ctx(), |ui| {
        ui.set_width(500.0);
        match dialog {
            Dialog::Close(then) => close::show(ui, cx, then, &mut answer),
            Dialog::Open { path, failed } => file::open(ui, cx, (path, failed.as_deref()), recent, &mut answer),
            Dialog::SaveAs { path, failed, then } => file::save_as(ui, cx, (path, failed.as_deref()), then.as_ref(), &mut answer),
            Dialog::AddPatterns { path, failed } => patterns::add(ui, cx, (path, failed.as_deref()), &mut answer),
            Dialog::ReadLog { path, unit, failed } => log::ask(ui, cx, (path, unit, failed.as_deref()), &mut answer),
            Dialog::Outside { folder, files, add } => patterns::outside(ui, cx, (folder, files, !add.is_empty()), &mut answer),
            Dialog::Help => help::show(ui, cx, &mut answer),
            Dialog::Recover { name, found, differs, changed, studio } => {
                recover::show(ui, cx, (name, found, differs), (*changed, *studio), &mut answer);
            }
            Dialog::Sign { kind, place, hands, reason, failed } => {
                sign::show(ui, cx, (kind, *place), (hands, reason, failed), &mut answer);
            }
        }
    });
    answer.or_else(|| modal.should_close().then_some(Answer::Cancel))
}
