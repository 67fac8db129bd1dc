//! Everything that can be done from a menu, a key, a button or the finder, in one place.

use eframe::egui::{Key, KeyboardShortcut, Modifiers};

use super::page::Page;
use crate::files::preferences::Theme;
use crate::job::Place;
use crate::paper::what_now::Trouble;
use crate::paper::{Dress, Listed, Sort};

/// Where a paper goes.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Put {
    /// To the system's printer.
    Printer,
    /// Into the system's viewer.
    Viewer,
    /// As a PDF beside the batch.
    Pdf,
    /// Every document of its sort, each as a PDF.
    AllPdfs,
    /// As text beside the batch.
    Text,
    /// A table for spreadsheets beside the batch.
    Table(Listed),
}

/// Something to be done.
#[derive(Debug, Clone, PartialEq)]
pub enum Action {
    /// An empty batch.
    New,
    /// A picture of the record, in the system's viewer.
    Picture(String),
    /// Another batch from its file.
    Open,
    /// This batch.
    OpenThis(std::path::PathBuf),
    /// The sample batch.
    OpenSample,
    /// The batch that was opened last.
    OpenLast,
    /// Asks which pattern files to add.
    AddPatterns,
    /// These pattern files.
    TakeIn(Vec<std::path::PathBuf>),
    /// The shortest night of the chosen load is sought.
    ShortestNight,
    /// That search ends.
    StopNight,
    /// The other jobs of the folder are read.
    ReadFolder,
    /// The folder is looked through for what changed.
    IndexFolder,
    /// The batch of this file once more, as a new one.
    Again(std::path::PathBuf),
    /// The open batch, which somebody else has, is only read.
    OnlyRead,
    /// It is worked on here too.
    WorkToo,
    /// Asks which kiln log to read.
    ReadLog,
    /// A mended file in place of a pattern's faulty one.
    Mend(crate::job::PatternId),
    /// A pattern's file as it is now: its measures are kept from here on.
    TakeFile(crate::job::PatternId),
    /// Pattern files that were not there or could not be read, once more.
    LookAgain,
    /// The pieces of the chosen tree are arranged.
    Arrange,
    /// The arrangement ends with the best it has.
    StopArranging,
    /// The open pieces are planned.
    Plan,
    /// The search for a plan ends with the best it has.
    StopPlan,
    /// The trees and flasks of the plan.
    BuildPlan,
    /// No more pattern files are read for now.
    StopReading,
    /// What can be done, and the keys for it.
    Help,
    /// To the disk.
    Save,
    /// Under another name.
    SaveAs,
    /// The last change back.
    Undo,
    /// The last undone change again.
    Redo,
    /// The field that finds pieces, figures and actions.
    Find,
    /// The running step in large type, and back.
    Bench,
    /// The cards for when something goes wrong, and back.
    WhatNow,
    /// One of those cards.
    Card(Trouble),
    /// The working pane, in and out.
    Working,
    /// The list of findings, in and out.
    Findings,
    /// The papers of a sort, to be looked at and printed.
    Paper(Sort),
    /// The paper that is looked at goes somewhere.
    Put(Put),
    /// Papers of a sort are dressed otherwise.
    DressPaper(Sort, Dress),
    /// The next page of the rail.
    NextPage,
    /// The page before.
    PageBefore,
    /// A page.
    Go(Page),
    /// The page of a place.
    Show(Place),
    /// Signs for a finding of this kind at this place.
    Answer(&'static str, Place),
    /// Day and evening.
    Theme,
    /// Day, evening, or as the system has it.
    Dress(Theme),
    /// Type of a size, in percent.
    Zoom(u32),
    /// Metric and trade units.
    Units,
    /// Comma or point for the decimal mark.
    Comma,
    /// Larger type.
    Larger,
    /// Smaller type.
    Smaller,
    /// Closes the window.
    Quit,
}

impl Action {
    /// Those that need nothing to be said with them, in the order of a menu.
    pub const PLAIN: [Self; 33] = [
        Self::New,
        Self::Open,
        Self::OpenLast,
        Self::OpenSample,
        Self::Save,
        Self::SaveAs,
        Self::Undo,
        Self::Redo,
        Self::Find,
        Self::NextPage,
        Self::PageBefore,
        Self::Bench,
        Self::WhatNow,
        Self::Working,
        Self::Findings,
        Self::AddPatterns,
        Self::ReadLog,
        Self::LookAgain,
        Self::Paper(Sort::Bench),
        Self::Paper(Sort::Kiln),
        Self::Paper(Sort::Quote),
        Self::Paper(Sort::Slip),
        Self::Paper(Sort::Receipt),
        Self::Paper(Sort::Account),
        Self::Paper(Sort::Parcel),
        Self::Paper(Sort::WhatNow),
        Self::Theme,
        Self::Units,
        Self::Comma,
        Self::Larger,
        Self::Smaller,
        Self::Help,
        Self::Quit,
    ];

    /// The key of its name.
    #[must_use]
    pub fn key(&self) -> &'static str {
        match self {
            Self::New => "do-new",
            Self::Open => "do-open",
            Self::OpenThis(_) => "do-open",
            Self::OpenSample => "do-open-sample",
            Self::OpenLast => "do-open-last",
            Self::AddPatterns | Self::TakeIn(_) => "do-ask-patterns",
            Self::ShortestNight => "night-do",
            Self::StopNight => "night-stop",
            Self::ReadFolder | Self::IndexFolder => "pieces-look-again",
            Self::Again(_) => "jobs-again",
            Self::OnlyRead => "lock-read",
            Self::WorkToo => "lock-too",
            Self::ReadLog => "do-read-log",
            Self::TakeFile(_) => "patterns-take-file",
            Self::Mend(_) => "mend-do",
            Self::LookAgain => "do-look-again",
            Self::StopReading => "do-stop-reading",
            Self::Arrange => "trees-arrange",
            Self::StopArranging => "trees-arrange-stop",
            Self::Plan => "plan-do",
            Self::StopPlan => "plan-stop",
            Self::BuildPlan => "plan-build",
            Self::Help => "do-help",
            Self::Save => "do-save",
            Self::SaveAs => "do-save-as",
            Self::Undo => "do-undo",
            Self::Redo => "do-redo",
            Self::Find => "do-find",
            Self::Bench => "do-bench",
            Self::WhatNow => "do-what-now",
            Self::Card(trouble) => trouble.key(),
            Self::Working => "do-working",
            Self::Findings => "do-findings",
            Self::Paper(Sort::Bench) => "do-sheet",
            Self::Paper(Sort::Kiln) => "do-kiln-sheet",
            Self::Paper(Sort::Quote) => "do-quote",
            Self::Paper(Sort::Slip) => "do-slip",
            Self::Paper(Sort::Receipt) => "do-receipt",
            Self::Paper(Sort::Account) => "do-account",
            Self::Paper(Sort::Parcel) => "do-parcel",
            Self::Paper(Sort::WhatNow) => "do-what-now-paper",
            Self::Picture(_) => "record-picture-open",
            Self::Put(_) => "paper-print",
            Self::DressPaper(..) => "paper-dress",
            Self::NextPage => "do-next-page",
            Self::PageBefore => "do-page-before",
            Self::Go(page) => page.key(),
            Self::Show(_) => "do-show",
            Self::Answer(..) => "do-answer",
            Self::Theme | Self::Dress(_) => "do-theme",
            Self::Zoom(_) => "settings-zoom",
            Self::Units => "do-units",
            Self::Comma => "do-comma",
            Self::Larger => "do-larger",
            Self::Smaller => "do-smaller",
            Self::Quit => "do-quit",
        }
    }

    /// The key that does it.
    #[must_use]
    pub fn shortcut(&self) -> Option<KeyboardShortcut> {
        let command = |key| Some(KeyboardShortcut::new(Modifiers::COMMAND, key));
        let shifted = |key| Some(KeyboardShortcut::new(Modifiers::COMMAND | Modifiers::SHIFT, key));
        let plain = |key| Some(KeyboardShortcut::new(Modifiers::NONE, key));
        match self {
            Self::New => command(Key::N),
            Self::Open => command(Key::O),
            Self::Save => command(Key::S),
            Self::SaveAs => shifted(Key::S),
            Self::AddPatterns => shifted(Key::O),
            Self::Undo => command(Key::Z),
            Self::Redo => shifted(Key::Z),
            Self::Find => command(Key::K),
            Self::NextPage => command(Key::PageDown),
            Self::PageBefore => command(Key::PageUp),
            Self::Help => plain(Key::F1),
            Self::WhatNow => plain(Key::F2),
            Self::Bench => plain(Key::F5),
            Self::Working => plain(Key::F6),
            Self::Findings => plain(Key::F7),
            Self::Paper(Sort::Bench) => command(Key::P),
            Self::Theme => plain(Key::F9),
            Self::Units => plain(Key::F8),
            Self::Larger => command(Key::Plus),
            Self::Smaller => command(Key::Minus),
            Self::Quit => command(Key::Q),
            _ => None,
        }
    }
}
