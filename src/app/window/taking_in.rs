//! Pattern files on their way into the batch: dropped on the window, chosen, or typed.

use std::collections::BTreeSet;
use std::path::{Path, PathBuf};
use std::sync::Arc;

use eframe::egui::Context;

use super::Window;
use crate::app::dialog::{Dialog, Outside};
use crate::app::page::{add_pattern, next_pattern};
use crate::files::disk::folder_of;
use crate::files::outside::{Allowed, folder_to_ask};
use crate::files::take_in::{PATTERNS, copy_beside, looks_like_pattern, named_in, put, stem_of};
use crate::job::{PatternFile, PatternId, Place};
use crate::mesh::{Limits, as_stl};
use crate::texts::Texts;

impl Window {
    /// Folders outside a batch's own that may be read.
    pub(super) fn allowed(&self) -> Allowed {
        Allowed::Folders(self.preferences.allowed.clone())
    }

    /// Takes files in as patterns. For those outside the batch's folder it asks first, once a folder.
    pub(super) fn take_in(&mut self, paths: Vec<PathBuf>) {
        let (patterns, others): (Vec<PathBuf>, Vec<PathBuf>) = paths.into_iter().partition(|path| looks_like_pattern(path));
        if let Some(other) = others.first() {
            let name = other.display().to_string();
            self.message = Some(Texts::english().say("add-patterns-not", &[("file", name.into())]));
        }
        let Some(folder) = self.workbook.folder().map(Path::to_path_buf) else { return self.add_files(&patterns) };
        let allowed = self.allowed();
        let (asked, inside): (Vec<PathBuf>, Vec<PathBuf>) =
            patterns.into_iter().partition(|path| folder_to_ask(&*self.disk, &folder, path, &allowed).is_some());
        self.add_files(&inside);
        if let Some(first) = asked.first() {
            self.dialog = Some(Dialog::Outside { folder: folder_of(first).to_owned(), files: names(&asked), add: asked });
        }
    }

    /// Adds files where they lie, as one step. One that the batch names already is looked at again: it may be a new state of it.
    fn add_files(&mut self, paths: &[PathBuf]) {
        let folder = self.workbook.folder().map(Path::to_path_buf).unwrap_or_default();
        let mut seen = BTreeSet::new();
        let fresh: Vec<(String, String)> =
            paths.iter().map(|path| (named_in(&folder, path), stem_of(path))).filter(|(named, _)| seen.insert(named.clone())).collect();
        for (named, _) in &fresh {
            self.workbook.look_anew(Path::new(named));
        }
        if !fresh.is_empty() {
            let shown = next_pattern(&self.workbook.job);
            self.workbook.edit(Texts::english().label("edit-drop-pattern"), move |job| {
                // What is printed is mostly printed of what was printed last.
                let material =
                    job.patterns.iter().rev().find(|pattern| pattern.file.is_some()).and_then(|pattern| pattern.material.clone());
                for (path, name) in fresh {
                    add_pattern(job, name, Some(PatternFile { path, ..PatternFile::default() }));
                    if let Some(pattern) = job.patterns.last_mut() {
                        pattern.material.clone_from(&material);
                    }
                }
            });
            self.workbook.view.go_to(Place::Pattern(shown), &self.workbook.job);
        }
    }

    /// Writes the chosen pattern's mended file and goes on with it: beside the old one where that lies in the batch's folder, else among the
    /// batch's own.
    pub(super) fn mend(&mut self, id: PatternId) {
        let Some(mended) = self.workbook.inspection().and_then(|(found, _)| found.mended) else { return };
        let job = Arc::clone(&self.workbook.job);
        let Some(file) = job.patterns.iter().find(|pattern| pattern.id == id).and_then(|pattern| pattern.file.as_ref()) else { return };
        let home = self.workbook.folder().map(Path::to_path_buf).unwrap_or_default();
        let old = home.join(&file.path);
        let inside = home.as_os_str().is_empty() || old.starts_with(&home);
        let folder = if inside { folder_of(&old).to_owned() } else { home.join(PATTERNS) };
        let texts = Texts::english();
        match put(&*self.disk, &folder, (&format!("{}-mended", stem_of(&old)), "stl"), &as_stl(mended.soup.triangles())) {
            Ok(path) => {
                let named = named_in(&home, &path);
                self.message = Some(texts.say("mend-done", &[("file", named.clone().into())]));
                self.workbook.edit(texts.label("edit-mend"), move |job| {
                    if let Some(file) = job.patterns.iter_mut().find(|pattern| pattern.id == id).and_then(|pattern| pattern.file.as_mut()) {
                        (file.path, file.hash, file.kept) = (named, None, None);
                    }
                });
            }
            Err(error) => self.message = Some(texts.say("mend-failed", &[("why", error.to_string().into())])),
        }
    }

    /// What was answered about a folder outside.
    pub(super) fn outside(&mut self, what: Outside) {
        let Some(Dialog::Outside { folder, add, .. }) = self.dialog.take() else { return };
        match what {
            Outside::Copy => self.copy_in(&add),
            Outside::Allow => {
                // The folder with its links followed is the one that is compared.
                let real = self.disk.resolve(&folder).unwrap_or(folder);
                self.preferences.allow(real);
                let allowed = self.allowed();
                self.workbook.allow(&allowed);
                self.take_in(add);
            }
            Outside::Refuse => {
                self.refused.insert(folder);
            }
        }
    }

    fn copy_in(&mut self, paths: &[PathBuf]) {
        let Some(folder) = self.workbook.folder().map(Path::to_path_buf) else { return };
        let (mut copied, mut failed) = (Vec::new(), None);
        for path in paths {
            match copy_beside(&*self.disk, path, &folder, Limits::default().max_bytes) {
                Ok(copy) => copied.push(copy),
                Err(error) => failed = Some(error.to_string()),
            }
        }
        if let Some(why) = failed {
            self.message = Some(Texts::english().say("add-patterns-failed", &[("why", why.into())]));
        }
        self.add_files(&copied);
    }

    /// Asks about folders outside that the open batch names files in, one after another.
    pub(super) fn ask_outside(&mut self, ctx: &Context) {
        if self.dialog.is_some() {
            return;
        }
        let apart = self.workbook.apart();
        let Some(folder) = apart.into_iter().find(|folder| !self.refused.contains(folder)) else { return };
        let files = self.workbook.files_in(&folder);
        self.dialog = Some(Dialog::Outside { folder, files, add: Vec::new() });
        ctx.request_repaint();
    }
}

fn names(paths: &[PathBuf]) -> Vec<String> {
    paths.iter().map(|path| path.file_name().map_or_else(String::new, |name| name.to_string_lossy().into_owned())).collect()
}
