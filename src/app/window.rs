//! The window itself: one open batch, what may be asked, and what was said last.

mod deeds;
mod input;
mod printing;
mod reading_log;
mod recovering;
mod taking_in;

use std::collections::BTreeSet;
use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::sync::mpsc::Receiver;
use std::time::Instant;

use eframe::egui::{self, CentralPanel, Context, Frame, Margin, Panel, RichText, ScrollArea, Ui, ViewportCommand};
use jiff::ZonedDateTime;
use jiff::civil::Date;

use super::cx::{Cx, Wish};
use super::dialog::{self, Answer, Dialog, Then};
use super::locks::Locks;
use super::page::Page;
use super::recovery::Recovery;
use super::shell::{finder, findings_line, focus, lock, rail, top, working};
use super::theme::Tokens;
use super::widget::button;
use super::workbook::Workbook;
use crate::calc::{Report, Weight};
use crate::files::again::write_again;
use crate::files::batch::LONGEST_DOCUMENT;
use crate::files::disk::Disk;
use crate::files::host::{runs, this_program};
use crate::files::preferences::{Preferences, Theme};
use crate::files::recover::RecoveryFound;
use crate::job::JobId;
use crate::job::format::read_job;
use crate::texts::Texts;

/// Where the window keeps what is its own.
#[derive(Debug, Clone)]
pub struct Home {
    /// Preferences.
    pub preferences: PathBuf,
    /// Work that was not saved.
    pub recovery: PathBuf,
}

impl Home {
    /// The places the system has for a program's own files.
    #[must_use]
    pub fn of_user() -> Option<Self> {
        let folders = directories::ProjectDirs::from("", "", "pourbook")?;
        Some(Self { preferences: folders.config_dir().join("window.ron"), recovery: folders.data_local_dir().join("recovery") })
    }
}

/// The window.
pub struct Window {
    /// The open batch.
    pub workbook: Workbook,
    /// What is remembered.
    pub preferences: Preferences,
    /// The question that stands.
    pub dialog: Option<Dialog>,
    /// What was said last.
    pub message: Option<String>,
    disk: Arc<dyn Disk>,
    home: Option<Home>,
    recovery: Option<Recovery>,
    /// Work that was taken up under another name than it was set aside under, and is not saved yet.
    apart: Vec<RecoveryFound>,
    kept: Preferences,
    may_close: bool,
    /// To be closed once the field that was written in has taken what stands there.
    closing: bool,
    browsing: Option<Receiver<Option<Vec<PathBuf>>>>,
    /// Folders outside the batch's own that are not to be read for now.
    refused: BTreeSet<PathBuf>,
    /// Had the window the focus of the desktop?
    focused: bool,
    today: Date,
    dressed: bool,
    seen: focus::Seen,
    /// Who has the open batch, where this is a program among others.
    locks: Option<Locks>,
    /// Somebody else has the batch, and it is only read here.
    only_reads: bool,
}

impl Window {
    /// The window of the program: on a job, or on an empty batch.
    #[must_use]
    pub fn start(ctx: &Context, disk: Arc<dyn Disk>, home: Option<Home>, job: Option<&Path>) -> Self {
        let preferences = home.as_ref().map(|home| Preferences::load(&*disk, &home.preferences)).unwrap_or_default();
        let recovery = home.as_ref().map(|home| Recovery::start(Arc::clone(&disk), &home.recovery, ctx));
        let mut window = Self::on(disk, ZonedDateTime::now().date(), preferences);
        window.keep_locks(Locks::new(Arc::clone(&window.disk), this_program(), runs));
        window.recovery = recovery;
        window.home = home;
        if let Some(job) = job {
            window.open(ctx, job);
        }
        window.wake(ctx);
        if window.dialog.is_none() {
            window.ask_recovery();
        }
        window
    }

    /// A window on an empty batch, on a day, with nothing of its own on the disk.
    #[must_use]
    pub fn on(disk: Arc<dyn Disk>, today: Date, preferences: Preferences) -> Self {
        Self {
            workbook: Workbook::empty(today),
            kept: preferences.clone(),
            preferences,
            dialog: None,
            message: None,
            disk,
            home: None,
            recovery: None,
            apart: Vec::new(),
            may_close: false,
            closing: false,
            browsing: None,
            refused: BTreeSet::new(),
            focused: true,
            today,
            dressed: false,
            seen: focus::Seen::default(),
            locks: None,
            only_reads: false,
        }
    }

    /// Says beside every batch that it is open here, and tells who else has it.
    pub fn keep_locks(&mut self, locks: Locks) {
        self.locks = Some(locks);
    }

    fn wake(&mut self, ctx: &Context) {
        let ctx = ctx.clone();
        self.workbook.on_read(move || ctx.request_repaint());
    }

    /// Goes on with another batch. What was typed and not taken, chosen or waiting belongs to the one before: ids of documents begin at one in
    /// every batch, so that it would turn up in this one.
    pub(crate) fn begin(&mut self, ctx: &Context, workbook: Workbook) {
        ctx.data_mut(egui::util::IdTypeMap::clear);
        ctx.memory_mut(|memory| memory.stop_text_input());
        self.apart.clear();
        // Its page begins at the top.
        self.seen = focus::Seen::default();
        self.workbook = workbook;
        self.refused.clear();
        let allowed = self.allowed();
        self.workbook.allow(&allowed);
    }

    /// Opens a batch in place of the one that is open.
    pub fn open(&mut self, ctx: &Context, path: &Path) {
        // A path that stands alone means the same wherever the program was started.
        let path = std::path::absolute(path).unwrap_or_else(|_| path.to_owned());
        match Workbook::open(&*self.disk, &path, self.today) {
            Ok(workbook) => {
                self.begin(ctx, workbook);
                self.preferences.opened(&path);
                self.dialog = None;
                self.message = self.workbook.batch.as_ref().and_then(|batch| batch.studio_error.as_ref()).map(ToString::to_string);
                self.wake(ctx);
            }
            Err(error) => {
                let failed = Texts::english().say("open-failed", &[("why", error.to_string().into())]);
                self.dialog = Some(Dialog::Open { path: path.display().to_string(), failed: Some(failed) });
            }
        }
    }

    /// Begins a batch once more, in a file of its own beside it, and opens that.
    pub fn again(&mut self, ctx: &Context, path: &Path) {
        let read = self.disk.read(path, LONGEST_DOCUMENT).map_err(|error| error.to_string());
        let made = read.and_then(|bytes| {
            let job = read_job(&bytes).map_err(|error| error.to_string())?.document;
            let id = JobId::random().map_err(|error| error.to_string())?;
            write_again(&*self.disk, path, &job.again(id, self.today))
        });
        match made {
            Ok(made) => {
                self.open(ctx, &made);
                let file = made.file_name().map(|name| name.to_string_lossy().into_owned()).unwrap_or_default();
                self.message = Some(Texts::english().say("jobs-again-done", &[("file", file.into())]));
            }
            Err(why) => self.message = Some(Texts::english().say("jobs-again-failed", &[("why", why.into())])),
        }
    }

    /// Polls what runs beside the window, and guards the close; also called while the window is hidden.
    pub fn logic(&mut self, ctx: &Context) {
        self.dress(ctx);
        self.workbook.poll();
        if let Some(locks) = &mut self.locks {
            if locks.follow(self.workbook.path(), Instant::now()) {
                self.only_reads = false;
            }
            // A window that nobody touches still says that it is open, and sees when the other is closed.
            ctx.request_repaint_after(locks.looks_again());
        }
        if self.workbook.view.page == Page::Patterns {
            self.workbook.inspect();
        }
        self.workbook.take_arrangement();
        if self.workbook.is_planning() {
            self.workbook.look_at_plan();
        }
        if let Some(recovery) = &mut self.recovery {
            recovery.offer(&self.workbook);
            if let Some(failed) = recovery.failed() {
                self.message = Some(failed);
            }
        }
        // Whoever comes back from another program may have drawn a file anew there.
        let focused = ctx.input(|input| input.focused);
        if focused && !self.focused {
            self.workbook.look_at_stale();
        }
        self.focused = focused;
        self.take_browsed(ctx);
        self.ask_outside(ctx);
        if ctx.input(|input| input.viewport().close_requested()) && !self.may_close {
            let writing = ctx.text_edit_focused() && self.dialog.is_none();
            if writing || self.workbook.is_changed() {
                ctx.send_viewport_cmd(ViewportCommand::CancelClose);
                // A window that was closed from the task bar comes back to ask.
                ctx.send_viewport_cmd(ViewportCommand::Minimized(false));
                ctx.send_viewport_cmd(ViewportCommand::Focus);
                if writing {
                    // The field takes what is written in it first, and then the window is closed again.
                    ctx.memory_mut(|memory| memory.stop_text_input());
                    self.closing = true;
                } else {
                    self.dialog = Some(Dialog::Close(Then::Quit));
                    // The question has to be seen.
                    self.workbook.view.cards = None;
                }
                ctx.request_repaint();
            } else {
                self.may_close = true;
            }
        }
        if self.preferences != self.kept {
            self.kept = self.preferences.clone();
            if let Some(home) = &self.home
                && let Some(failed) = self.preferences.keep(&*self.disk, &home.preferences)
            {
                self.message = Some(failed);
            }
        }
    }

    /// Theme and zoom as they are preferred.
    fn dress(&mut self, ctx: &Context) {
        if self.dressed && self.preferences == self.kept {
            return;
        }
        self.dressed = true;
        ctx.set_theme(match self.preferences.theme {
            Theme::Light => egui::ThemePreference::Light,
            Theme::Dark => egui::ThemePreference::Dark,
            Theme::System => egui::ThemePreference::System,
        });
        #[allow(clippy::cast_precision_loss, reason = "a percentage")]
        ctx.set_zoom_factor(self.preferences.zoom as f32 / 100.0);
    }

    /// Draws the window.
    pub fn ui(&mut self, ui: &mut Ui) {
        let actions = self.keys(ui.ctx());
        // What is written in a field is taken before a key does something with the batch.
        let written_in = ui.ctx().memory(|memory| memory.focused()).filter(|_| !actions.is_empty() && ui.ctx().text_edit_focused());
        if written_in.is_some() {
            ui.ctx().memory_mut(|memory| memory.stop_text_input());
        }
        let mut wishes: Vec<Wish> = Vec::new();
        self.drops(ui.ctx(), &mut wishes);
        let answer = self.draw(ui, &mut wishes);
        wishes.extend(actions.into_iter().map(Wish::Do));
        // A press and a click in one frame: what the field took comes before what the click does.
        wishes.sort_by_key(|wish| matches!(wish, Wish::Do(_) | Wish::Look(_)));
        for wish in wishes {
            self.grant(ui.ctx(), wish);
        }
        if let Some(answer) = answer {
            self.answer(ui.ctx(), answer);
        }
        if let Some(field) = written_in {
            ui.ctx().memory_mut(|memory| memory.request_focus(field));
        }
        if std::mem::take(&mut self.closing) {
            ui.ctx().send_viewport_cmd(ViewportCommand::Close);
        }
        if self.seen.is_stale(self.asking()) {
            ui.ctx().request_repaint();
        }
    }

    /// Does a question, the finder or a card stand before the page?
    fn asking(&self) -> bool {
        self.dialog.is_some() || self.workbook.view.finder.is_some() || self.workbook.view.cards.is_some()
    }

    fn draw(&mut self, ui: &mut Ui, wishes: &mut Vec<Wish>) -> Option<Answer> {
        let tokens = Tokens::of(ui.ctx());
        let style = self.preferences.style();
        let (title, state) = (self.workbook.title(), self.state());
        let (undo, redo) = (self.workbook.history.undo_name().map(str::to_owned), self.workbook.history.redo_name().map(str::to_owned));
        let reading = self.workbook.reading();
        let folder = self.workbook.folder().map(Path::to_path_buf);
        let asking = self.asking();
        let workbook = &mut self.workbook;
        let looked = if workbook.view.page == Page::Patterns { workbook.inspection() } else { None };
        let (inspection, inspecting) = looked.map_or((None, None), |(found, share)| (Some(found), share));
        if workbook.view.page == Page::Paper {
            workbook.set_paper(self.preferences.dress(workbook.view.paper.sort));
        }
        let mut cx = Cx {
            folder,
            shown: workbook.shown.as_ref(),
            planner: &workbook.planner,
            arranger: &workbook.arranger,
            nights: &workbook.nights,
            folder_jobs: &workbook.folder_jobs,
            indexer: &workbook.indexer,
            runs: &workbook.runs,
            inspection,
            inspecting,
            reading: reading.is_some(),
            job: &workbook.job,
            studio: &workbook.studio,
            computed: &workbook.computed,
            setting: &workbook.setting,
            style: &style,
            texts: Texts::english(),
            tokens,
            mappings: &mut self.preferences.mappings,
            clocks: &mut self.preferences.clocks,
            view: &mut workbook.view,
            drawn: std::collections::HashMap::new(),
            wishes,
        };
        self.seen.begin(ui.ctx(), asking);
        if cx.view.cards.is_some() {
            // Over page, bench view and question alike; each is there again as it was.
            CentralPanel::default()
                .frame(Frame::new().fill(tokens.paper).inner_margin(32))
                .show(ui, |ui| super::what_now::show(ui, &mut cx));
            focus::ring(ui.ctx(), &tokens);
            return None;
        }
        if cx.view.bench.is_some() {
            self.seen.away();
            CentralPanel::default().frame(Frame::new().fill(tokens.paper).inner_margin(48)).show(ui, |ui| super::bench::show(ui, &mut cx));
        } else {
            let panel = |margin| Frame::new().fill(tokens.panel).inner_margin(margin);
            // Large type on a small screen: the rail gives way, and the working pane goes under the page.
            let narrow = ui.max_rect().width() < NARROW;
            let top = top::Top { title, state, undo: undo.as_deref(), redo: redo.as_deref() };
            Panel::top("top").exact_size(46.0).resizable(false).frame(panel(Margin::ZERO)).show(ui, |ui| top::show(ui, &mut cx, &top));
            Panel::bottom("line")
                .exact_size(34.0)
                .resizable(false)
                .frame(panel(Margin::ZERO))
                .show(ui, |ui| findings_line::show(ui, &mut cx, reading));
            Panel::left("rail").exact_size(if narrow { 148.0 } else { 176.0 }).resizable(false).frame(panel(Margin::ZERO)).show(ui, |ui| {
                ScrollArea::vertical().show(ui, |ui| rail::show(ui, &mut cx));
            });
            if cx.view.findings {
                Panel::bottom("findings")
                    .exact_size(230.0)
                    .resizable(false)
                    .frame(panel(Margin::symmetric(16, 4)))
                    .show(ui, |ui| findings_line::list(ui, &mut cx));
            }
            if cx.view.working && narrow && cx.view.chosen.is_some() {
                let frame = panel(Margin::symmetric(14, 0));
                Panel::bottom("working below").exact_size(170.0).resizable(false).frame(frame).show(ui, |ui| working::show(ui, &mut cx));
            }
            // A page of paper wants the room, and one without figures has nothing to show there.
            if cx.view.working && !narrow && !matches!(cx.view.page, Page::Paper | Page::Jobs) {
                Panel::right("working")
                    .exact_size(288.0)
                    .resizable(false)
                    .frame(panel(Margin::symmetric(14, 0)))
                    .show(ui, |ui| working::show(ui, &mut cx));
            }
            let message = &mut self.message;
            let told = self.locks.as_ref().and_then(|locks| locks.theirs(Instant::now()));
            let only_reads = self.only_reads;
            let seen = &mut self.seen;
            CentralPanel::default().frame(Frame::new().fill(tokens.paper).inner_margin(Margin::symmetric(20, 12))).show(ui, |ui| {
                say(ui, &cx, message);
                if let Some(told) = &told {
                    lock::show(ui, &mut cx, told, only_reads);
                }
                let page = cx.view.page;
                let shown = std::mem::take(&mut cx.view.shown);
                let came = seen.comes_to(page, shown);
                // Type so large that rows find no room is gone along sideways, rather than cut.
                let tight = ui.available_width() < LEAST;
                ScrollArea::new([tight, true]).id_salt(page).auto_shrink([false, false]).show(ui, |ui| {
                    if tight {
                        ui.set_width(LEAST);
                    }
                    focus::top(ui, &cx.label(page.key()), came, shown);
                    page.show(ui, &mut cx);
                    focus::follow(ui, seen);
                });
            });
            focus::ring(ui.ctx(), &tokens);
            finder::show(ui, &mut cx);
        }
        let dialog = self.dialog.as_mut()?;
        dialog::show(ui, &mut cx, dialog, &self.preferences.recent)
    }

    /// The key of how the batch lies on the disk.
    fn state(&self) -> &'static str {
        match &self.workbook.batch {
            Some(batch) if batch.read_only => "top-read-only",
            Some(_) if self.workbook.is_changed() => "top-changed",
            Some(_) => "top-saved",
            None => "top-never-saved",
        }
    }

    fn grant(&mut self, ctx: &Context, wish: Wish) {
        match wish {
            Wish::Edit(name, change) => self.workbook.edit(name, change),
            Wish::EditOn(name, change) => self.workbook.edit_on(name, change),
            Wish::EditStudio(name, change) => self.workbook.edit_studio(name, change),
            Wish::EditBoth(name, change) => self.workbook.edit_both(name, change),
            Wish::Look(at) => at(&mut self.workbook.view),
            Wish::Do(action) => self.perform(ctx, action),
        }
    }

    /// The figures on the screen.
    #[must_use]
    pub fn report(&self) -> &Report {
        &self.workbook.computed.report
    }

    /// Stops that nobody answers for.
    #[must_use]
    pub fn stops(&self) -> usize {
        self.workbook.computed.of_weight(Weight::Stop).filter(|finding| finding.accepted.is_none()).count()
    }
}

/// Below this width of the window in points there is no room for the working pane beside a page.
const NARROW: f32 = 860.0;

/// No page is laid out narrower than this.
const LEAST: f32 = 480.0;

/// What was said last, until it is put away.
fn say(ui: &mut Ui, cx: &Cx<'_>, message: &mut Option<String>) {
    let Some(words) = message.clone() else { return };
    let tokens = cx.tokens;
    Frame::new().fill(tokens.act_ground).corner_radius(3).inner_margin(8).show(ui, |ui| {
        ui.horizontal_wrapped(|ui| {
            ui.label(RichText::new(words).color(tokens.ink));
            if button::link(ui, &cx.label("message-close"), &tokens).clicked() {
                *message = None;
            }
        });
    });
    ui.add_space(8.0);
}

impl eframe::App for Window {
    fn logic(&mut self, ctx: &Context, _frame: &mut eframe::Frame) {
        Self::logic(self, ctx);
    }

    fn ui(&mut self, ui: &mut Ui, _frame: &mut eframe::Frame) {
        Self::ui(self, ui);
    }
}
