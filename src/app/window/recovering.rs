//! Taking up work that was set aside before a crash: the job of a file, or the studio of a folder.

use std::path::{Path, PathBuf};
use std::sync::Arc;

use eframe::egui::Context;

use super::Window;
use crate::app::dialog::{Dialog, Differs};
use crate::app::workbook::Workbook;
use crate::files::batch::LONGEST_DOCUMENT;
use crate::files::disk::folder_of;
use crate::files::recover::RecoveryFound;
use crate::files::save::hash_of;
use crate::job::format::{read_job, read_studio};
use crate::job::{Job, Studio};
use crate::texts::Texts;

/// What was set aside.
enum Aside {
    Job(Box<Job>),
    Studio(Box<Studio>),
}

fn aside(found: &RecoveryFound) -> Option<Aside> {
    let studio = || read_studio(&found.bytes).ok().map(|opened| Aside::Studio(Box::new(opened.document)));
    read_job(&found.bytes).ok().map(|opened| Aside::Job(Box::new(opened.document))).or_else(studio)
}

impl Window {
    /// Takes up the work that was set aside, as changes that are not saved; `apart` makes a batch of its own of it and leaves the file alone.
    pub(super) fn recover(&mut self, ctx: &Context, apart: bool) {
        let Some(Dialog::Recover { found, .. }) = self.dialog.take() else { return };
        let name = Texts::english().label("do-recover");
        match aside(&found) {
            Some(Aside::Job(job)) => {
                let there = found.key.path.as_deref().filter(|path| !apart && matches!(self.disk.exists(path), Ok(true)));
                if !self.stand_where(ctx, there) {
                    // The file is there and cannot be opened: what was set aside is left for the next time.
                    return;
                }
                if there.is_none() {
                    // It goes on under another name, so that saving does not settle what was set aside under this one.
                    self.apart.push(RecoveryFound::clone(&found));
                }
                self.workbook.edit(name, move |now| *now = Job { job_id: if apart { now.job_id } else { job.job_id }, ..*job });
                // The studio of the same folder may have been changed as well.
                let folder = found.key.path.as_deref().map(|path| folder_of(path).to_owned());
                self.wake(ctx);
                // Where the work goes on in no folder there is no studio to go with it: that is asked about at the next start.
                if self.workbook.folder().is_none() {
                    return;
                }
                self.ask(|other, kept| {
                    matches!(kept, Aside::Studio(_)) && other.key.path.as_deref().map(|path| folder_of(path).to_owned()) == folder
                });
            }
            Some(Aside::Studio(studio)) => {
                let folder = found.key.path.as_deref().map(folder_of);
                if self.workbook.folder() != folder {
                    let job = folder.and_then(|folder| self.some_job(folder));
                    if !self.stand_where(ctx, job.as_deref()) {
                        return;
                    }
                }
                self.workbook.edit_studio(name, move |now| *now = *studio);
                self.wake(ctx);
            }
            None => {}
        }
    }

    /// Opens the batch of a path, or begins an empty one. False where it cannot be opened, or where something unsaved stands in its place.
    fn stand_where(&mut self, ctx: &Context, path: Option<&Path>) -> bool {
        if self.workbook.is_changed() {
            return false;
        }
        match path {
            Some(path) => {
                self.open(ctx, path);
                return self.workbook.path() == Some(path);
            }
            None => self.begin(ctx, Workbook::new_in(Arc::clone(&self.workbook.saved.studio), self.today)),
        }
        true
    }

    /// A job of a folder: its studio is changed from within a batch.
    fn some_job(&self, folder: &Path) -> Option<PathBuf> {
        let files = self.disk.list(folder).ok()?;
        let read = |path: &PathBuf| self.disk.read(path, LONGEST_DOCUMENT).is_ok_and(|bytes| read_job(&bytes).is_ok());
        files.into_iter().filter(|path| path.extension().is_some_and(|ending| ending == "ron")).find(read)
    }

    /// What was taken up under another name is safe now.
    pub(super) fn apart_settled(&mut self) {
        for found in std::mem::take(&mut self.apart) {
            if let Some(recovery) = &self.recovery {
                recovery.discard(&found);
            }
        }
    }

    /// Leaves out for good what was set aside, and asks about the next.
    pub(super) fn leave_out(&mut self) {
        if let (Some(Dialog::Recover { found, .. }), Some(recovery)) = (self.dialog.take(), &self.recovery) {
            recovery.discard(&found);
        }
        // What was just taken up is not asked about again.
        if !self.workbook.is_changed() {
            self.ask_recovery();
        }
    }

    /// Asks about work that was set aside before and never saved: jobs first, the newest of them first.
    pub(super) fn ask_recovery(&mut self) {
        self.ask(|_, kept| matches!(kept, Aside::Job(_)));
        if self.dialog.is_none() {
            self.ask(|_, kept| matches!(kept, Aside::Studio(_)));
        }
    }

    fn ask(&mut self, wanted: impl Fn(&RecoveryFound, &Aside) -> bool) {
        let Some(recovery) = &self.recovery else { return };
        let all = recovery.found().into_iter().filter_map(|found| Some((aside(&found)?, found)));
        let Some((kept, found)) = all.into_iter().find(|(kept, found)| wanted(found, kept)) else { return };
        let on_disk = found.key.path.as_ref().and_then(|path| self.disk.read(path, LONGEST_DOCUMENT).ok());
        let now = on_disk.as_ref().map(|bytes| hash_of(bytes));
        let bytes = on_disk.unwrap_or_default();
        let (name, differs) = match &kept {
            Aside::Job(job) => (job.name.clone(), jobs(&read_job(&bytes).map(|opened| opened.document).unwrap_or_default(), job)),
            Aside::Studio(studio) => {
                (studio.name.clone(), studios(&read_studio(&bytes).map(|opened| opened.document).unwrap_or_default(), studio))
            }
        };
        // The file is not what the work began from: somebody else has saved it since.
        let changed = found.base.is_some() && now.is_some() && found.base != now;
        let studio = matches!(kept, Aside::Studio(_));
        self.dialog = Some(Dialog::Recover { name, found: Box::new(found), differs, changed, studio });
    }
}

/// The parts of a job that are not the same in two, with how many there are in each.
fn jobs(saved: &Job, aside: &Job) -> Vec<Differs> {
    let lines = |job: &Job| job.orders.iter().map(|order| order.lines.len()).sum::<usize>();
    let name = saved.name != aside.name || saved.notes != aside.notes || saved.made != aside.made || saved.site != aside.site;
    let parts = [
        ("batch-about", name, 1, 1),
        ("stage-orders", saved.orders != aside.orders, lines(saved), lines(aside)),
        ("stage-patterns", saved.patterns != aside.patterns, saved.patterns.len(), aside.patterns.len()),
        ("stage-trees", saved.trees != aside.trees, saved.trees.len(), aside.trees.len()),
        ("stage-flasks", saved.flasks != aside.flasks, saved.flasks.len(), aside.flasks.len()),
        ("stage-burnout", saved.burnouts != aside.burnouts, saved.burnouts.len(), aside.burnouts.len()),
        ("stage-metal", saved.melts != aside.melts, saved.melts.len(), aside.melts.len()),
        ("stage-quotes", saved.quotes != aside.quotes, saved.quotes.len(), aside.quotes.len()),
        ("stage-record", saved.record != aside.record, saved.record.len(), aside.record.len()),
        ("recover-signed", saved.accepted != aside.accepted, saved.accepted.len(), aside.accepted.len()),
        ("recover-copies", saved.shelf != aside.shelf, saved.shelf.len(), aside.shelf.len()),
    ];
    differing(parts)
}

/// The same for a studio.
fn studios(saved: &Studio, aside: &Studio) -> Vec<Differs> {
    let head = saved.name != aside.name || saved.address != aside.address || saved.letterhead != aside.letterhead;
    let parts = [
        ("settings-letterhead", head, 1, 1),
        ("settings-site", saved.site != aside.site, 1, 1),
        ("settings-hands", saved.hands != aside.hands, saved.hands.len(), aside.hands.len()),
        ("settings-prices", saved.prices != aside.prices, saved.prices.len(), aside.prices.len()),
        ("settings-money", saved.money != aside.money, 1, 1),
        ("settings-lots", saved.lots != aside.lots, saved.lots.len(), aside.lots.len()),
        ("settings-shelf", saved.shelf != aside.shelf, saved.shelf.len(), aside.shelf.len()),
    ];
    differing(parts)
}

fn differing<const N: usize>(parts: [(&'static str, bool, usize, usize); N]) -> Vec<Differs> {
    let differ = parts.into_iter().filter(|(_, differ, ..)| *differ);
    differ.map(|(key, _, in_file, aside)| Differs { key, in_file, aside }).collect()
}
