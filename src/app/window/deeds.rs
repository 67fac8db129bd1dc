//! What the window does when it is told to: opening, saving, leaving, signing, writing paper.

use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::sync::mpsc::{Receiver, channel};
use std::time::Instant;

use eframe::egui::{self, Context, ViewportCommand};
use jiff::ZonedDateTime;

use super::Window;
use super::reading_log::LOGS;
use crate::app::action::Action;
use crate::app::dialog::{Answer, Dialog, Then};
use crate::app::page::Page;
use crate::app::recovery::Recovery;
use crate::app::what_now::Cards;
use crate::app::workbook::Workbook;
use crate::files::preferences::Theme;
use crate::files::take_in::ENDINGS;
use crate::job::{Accepted, Place};
use crate::texts::Texts;

impl Window {
    /// Does an action.
    pub fn perform(&mut self, ctx: &Context, action: Action) {
        let workbook = &mut self.workbook;
        match action {
            Action::New => self.leave(ctx, Then::New),
            Action::Open => self.leave(ctx, Then::AskOpen),
            Action::OpenThis(path) => self.leave(ctx, Then::Open(path)),
            Action::OpenSample => self.leave(ctx, Then::Sample),
            Action::OpenLast => match self.preferences.recent.first().cloned() {
                Some(path) => self.leave(ctx, Then::Open(path)),
                None => self.leave(ctx, Then::AskOpen),
            },
            Action::AddPatterns => self.dialog = Some(Dialog::AddPatterns { path: String::new(), failed: None }),
            Action::TakeIn(paths) => {
                let others = self.take_logs(paths);
                if !others.is_empty() {
                    self.take_in(others);
                }
            }
            Action::ShortestNight => workbook.seek_night(),
            Action::StopNight => workbook.nights.stop(),
            Action::ReadFolder => workbook.read_folder(),
            Action::IndexFolder => workbook.index_folder(),
            Action::Again(path) => self.leave(ctx, Then::Again(path)),
            Action::ReadLog => self.ask_log(),
            Action::Mend(pattern) => self.mend(pattern),
            Action::TakeFile(pattern) => workbook.take_file(pattern),
            Action::LookAgain => workbook.look_again(),
            Action::StopReading => workbook.stop_reading(),
            Action::Arrange => {
                if let Some(tree) = workbook.view.tree {
                    workbook.arrange(tree);
                }
            }
            Action::StopArranging => workbook.arranger.stop(),
            Action::Plan => workbook.plan(),
            Action::StopPlan => workbook.stop_plan(),
            Action::BuildPlan => workbook.build_plan(),
            Action::OnlyRead => self.only_reads = true,
            Action::WorkToo => {
                self.only_reads = false;
                if let Some(locks) = &mut self.locks {
                    locks.take_over(Instant::now());
                }
            }
            Action::Help => self.dialog = Some(Dialog::Help),
            Action::Save => self.save(ctx, None),
            Action::SaveAs => self.ask_save_as(None),
            Action::Undo => workbook.undo(),
            Action::Redo => workbook.redo(),
            Action::Find => workbook.view.finder = Some(String::new()),
            Action::Bench => {
                workbook.view.bench = if workbook.view.bench.is_some() { None } else { Some(super::super::bench::WHERE_IT_WAS) }
            }
            Action::WhatNow => workbook.view.cards = if workbook.view.cards.is_some() { None } else { Some(Cards::List) },
            Action::Card(trouble) => workbook.view.cards = Some(Cards::One(trouble)),
            Action::Working => workbook.view.working = !workbook.view.working,
            Action::Findings => workbook.view.findings = !workbook.view.findings,
            Action::Paper(sort) => {
                let paper = &mut workbook.view.paper;
                if paper.sort != sort {
                    (paper.sort, paper.leaf) = (sort, 0);
                    paper.name.clear();
                }
                (workbook.view.page, workbook.view.bench) = (Page::Paper, None);
            }
            Action::Put(put) => self.put_paper(put),
            Action::Picture(path) => self.show_picture(&path),
            Action::DressPaper(sort, dress) => {
                self.preferences.papers.insert(sort, dress);
            }
            Action::NextPage => workbook.view.turn(1),
            Action::PageBefore => workbook.view.turn(-1),
            Action::Go(page) => (workbook.view.page, workbook.view.bench) = (page, None),
            Action::Show(place) => workbook.view.go_to(place, &workbook.job),
            Action::Answer(kind, place) => {
                self.dialog = Some(Dialog::Sign { kind, place, hands: String::new(), reason: String::new(), failed: None });
            }
            Action::Theme => self.preferences.theme = if ctx.theme() == egui::Theme::Dark { Theme::Light } else { Theme::Dark },
            Action::Dress(theme) => self.preferences.theme = theme,
            Action::Zoom(percent) => self.preferences.zoom = percent.clamp(75, 200),
            Action::Units => self.preferences.trade_units = !self.preferences.trade_units,
            Action::Comma => self.preferences.comma = !self.preferences.comma,
            Action::Larger => self.preferences.zoom_by(1),
            Action::Smaller => self.preferences.zoom_by(-1),
            Action::Quit => ctx.send_viewport_cmd(ViewportCommand::Close),
        }
    }

    /// Leaves the open batch, after asking where something would be lost.
    fn leave(&mut self, ctx: &Context, then: Then) {
        if self.workbook.is_changed() {
            self.dialog = Some(Dialog::Close(then));
        } else {
            self.go_on(ctx, then);
        }
    }

    fn go_on(&mut self, ctx: &Context, then: Then) {
        if let Some(recovery) = &mut self.recovery {
            recovery.settled(&self.workbook);
        }
        self.dialog = None;
        match then {
            Then::Quit => {
                self.may_close = true;
                ctx.send_viewport_cmd(ViewportCommand::Close);
            }
            Then::New => {
                self.begin(ctx, Workbook::new_in(Arc::clone(&self.workbook.saved.studio), self.today));
                self.wake(ctx);
            }
            Then::AskOpen => self.dialog = Some(Dialog::Open { path: String::new(), failed: None }),
            Then::Open(path) => self.open(ctx, &path),
            Then::Again(path) => self.again(ctx, &path),
            Then::Sample => self.open(ctx, &sample_path()),
        }
    }

    fn ask_save_as(&mut self, then: Option<Then>) {
        let name = if self.workbook.title().is_empty() { "batch".to_owned() } else { self.workbook.title() };
        let file: String = name.chars().map(|sign| if sign.is_alphanumeric() { sign.to_ascii_lowercase() } else { '-' }).collect();
        let folder = self.workbook.folder().map(Path::to_path_buf).or_else(|| std::env::current_dir().ok()).unwrap_or_default();
        let path = folder.join(format!("{}.ron", file.trim_matches('-'))).display().to_string();
        self.dialog = Some(Dialog::SaveAs { path, failed: None, then });
    }

    fn save(&mut self, ctx: &Context, then: Option<Then>) {
        // Who only reads writes under another name, if at all.
        if self.workbook.batch.is_none() || self.only_reads {
            return self.ask_save_as(then);
        }
        match self.workbook.save(&*self.disk) {
            Ok(()) => {
                if let Some(recovery) = &mut self.recovery {
                    recovery.settled(&self.workbook);
                }
                self.message = None;
                if let Some(then) = then {
                    self.go_on(ctx, then);
                }
            }
            Err(error) => {
                self.dialog = None;
                self.message = Some(Texts::english().say("save-failed", &[("why", error.to_string().into())]));
            }
        }
    }

    fn save_as(&mut self, ctx: &Context, path: PathBuf, then: Option<Then>) {
        let shown = path.display().to_string();
        let (was, revision) = (Recovery::keys(&self.workbook), self.workbook.revision);
        match self.workbook.save_as(&*self.disk, path.clone()) {
            Ok(()) => {
                if let Some(recovery) = &mut self.recovery {
                    // What was set aside under the old name is safe under the new one.
                    recovery.settled_as(was, revision);
                }
                self.apart_settled();
                self.preferences.opened(&path);
                self.dialog = None;
                self.wake(ctx);
                if let Some(then) = then {
                    self.go_on(ctx, then);
                }
            }
            Err(error) => self.dialog = Some(Dialog::SaveAs { path: shown, failed: Some(error.to_string()), then }),
        }
    }

    /// Goes on with what was answered.
    pub fn answer(&mut self, ctx: &Context, answer: Answer) {
        match answer {
            Answer::Cancel => self.dialog = None,
            Answer::SaveThen(then) => self.save(ctx, Some(then)),
            Answer::Anyway(then) => self.go_on(ctx, then),
            Answer::Open(path) => self.open(ctx, &path),
            Answer::SaveAs(path, then) => self.save_as(ctx, path, then),
            Answer::Sign(kind, place, hands, reason) => {
                self.sign(kind, place, hands, reason);
                self.dialog = None;
            }
            Answer::AddPatterns(paths) => {
                self.dialog = None;
                self.take_in(paths);
            }
            Answer::ReadLog(path, unit) => self.read_log(&path, unit),
            Answer::Outside(what) => self.outside(what),
            Answer::Browse => self.browse(ctx),
            Answer::Recover => self.recover(ctx, false),
            Answer::RecoverApart => self.recover(ctx, true),
            Answer::LeaveOut => self.leave_out(),
        }
    }

    fn sign(&mut self, kind: &'static str, place: Place, hands: String, reason: String) {
        let value = self.workbook.computed.at(place).find(|found| found.kind.key == kind).and_then(|found| found.value);
        let value = value.and_then(crate::quantity::Finite::new);
        let at = Some(ZonedDateTime::now().with_time_zone(self.workbook.setting.zone.clone()).datetime());
        let accepted = Accepted { finding: kind.to_owned(), place, value, hands, reason, at };
        let name = Texts::english().label("edit-sign");
        self.workbook.edit(name, move |job| job.accepted.push(accepted));
    }

    /// The system's own window for files, on a thread of its own, so that this one goes on.
    fn browse(&mut self, ctx: &Context) {
        if self.browsing.is_some() {
            return;
        }
        let saving = matches!(self.dialog, Some(Dialog::SaveAs { .. }));
        let adding = matches!(self.dialog, Some(Dialog::AddPatterns { .. }));
        let dialog = if matches!(self.dialog, Some(Dialog::ReadLog { .. })) {
            let words = Texts::english().label("log-filter");
            rfd::FileDialog::new().add_filter(words, &LOGS)
        } else if adding {
            let words = Texts::english().label("add-patterns-filter");
            rfd::FileDialog::new().add_filter(words, &ENDINGS)
        } else {
            rfd::FileDialog::new().add_filter("Pourbook", &["ron"])
        };
        let (sender, receiver) = channel();
        let ctx = ctx.clone();
        let asked = std::thread::Builder::new().name("files".to_owned()).spawn(move || {
            let path = match (saving, adding) {
                (true, _) => dialog.save_file().map(|path| vec![path]),
                (_, true) => dialog.pick_files(),
                _ => dialog.pick_file().map(|path| vec![path]),
            };
            // The window may be gone by now.
            let _ = sender.send(path);
            ctx.request_repaint();
        });
        if asked.is_ok() {
            self.browsing = Some(receiver);
        }
    }

    pub(super) fn take_browsed(&mut self, ctx: &Context) {
        let Some(Ok(found)) = self.browsing.as_ref().map(Receiver::try_recv) else { return };
        self.browsing = None;
        let Some(paths) = found else { return };
        let Some(path) = paths.first().cloned() else { return };
        match self.dialog.take() {
            Some(Dialog::AddPatterns { .. }) => self.take_in(paths),
            Some(Dialog::ReadLog { unit, .. }) => self.read_log(&path, unit),
            Some(Dialog::SaveAs { then, .. }) => self.save_as(ctx, path.with_extension("ron"), then),
            _ => self.open(ctx, &path),
        }
    }
}

/// The sample that comes with the program: beside the program, or where it was built.
fn sample_path() -> PathBuf {
    let beside = std::env::current_exe().ok().and_then(|exe| Some(exe.parent()?.join("sample-jobs/mixed-kiln.ron")));
    let candidates = [
        beside,
        Some(PathBuf::from("sample-jobs/mixed-kiln.ron")),
        Some(Path::new(env!("CARGO_MANIFEST_DIR")).join("sample-jobs/mixed-kiln.ron")),
    ];
    candidates.into_iter().flatten().find(|path| path.exists()).unwrap_or_else(|| PathBuf::from("sample-jobs/mixed-kiln.ron"))
}
