//! What a page is given to draw from, and what it may wish for. Wishes are carried out after the frame, so that a page never sees a document
//! that changes under it.

use eframe::egui::Ui;

use super::action::Action;
use super::arrange_run::Arranger;
use super::computed::{Chosen, Computed};
use super::folder_run::FolderReader;
use super::index_run::Indexer;
use super::inspect::Inspection;
use super::night_run::Nights;
use super::paper_desk::Shown;
use super::plan_run::Planner;
use super::theme::Tokens;
use super::view::View;
use crate::calc::{Id, PatternMeasure, PatternRun, Runs, Setting};
use crate::files::clocks::Running;
use crate::files::order_table::Mapping;
use crate::job::{Job, PatternId, Studio};
use crate::paper::SheetInput;
use crate::paper::words::Words;
use crate::quantity::{Habits, Style};
use crate::texts::{Texts, Word};

/// A change of both documents.
pub type BothChange = Box<dyn FnOnce(&mut Job, &mut Studio)>;

/// Something a page wants done.
pub enum Wish {
    /// The job changed, under a name.
    Edit(String, Box<dyn FnOnce(&mut Job)>),
    /// The job changed further, in the same step as before where that has the same name.
    EditOn(String, Box<dyn FnOnce(&mut Job)>),
    /// The studio changed, under a name.
    EditStudio(String, Box<dyn FnOnce(&mut Studio)>),
    /// Both changed, in one step.
    EditBoth(String, BothChange),
    /// Another thing is looked at.
    Look(Box<dyn FnOnce(&mut View)>),
    /// An action.
    Do(Action),
}

/// Everything a page draws from.
pub struct Cx<'a> {
    /// The job as it stands.
    pub job: &'a Job,
    /// The studio as it stands.
    pub studio: &'a Studio,
    /// What follows from them.
    pub computed: &'a Computed,
    /// Day and zone.
    pub setting: &'a Setting,
    /// Units and digits.
    pub style: &'a Style,
    /// Sentences.
    pub texts: &'static Texts,
    /// Colours.
    pub tokens: Tokens,
    /// The folder of the batch, once it has one.
    pub folder: Option<std::path::PathBuf>,
    /// What is known of each pattern's file.
    pub runs: &'a Runs,
    /// What was found of the chosen pattern's file, on its page.
    pub inspection: Option<Inspection>,
    /// How far the looking at it is, from 0 to 1, while it goes on.
    pub inspecting: Option<f64>,
    /// The batch plan.
    pub planner: &'a Planner,
    /// Trees that are arranged.
    pub arranger: &'a Arranger,
    /// Shortest nights.
    pub nights: &'a Nights,
    /// The other jobs of the folder, once they were asked for.
    pub folder_jobs: &'a FolderReader,
    /// The index of every job of the folder.
    pub indexer: &'a Indexer,
    /// The paper that is looked at, where one is.
    pub shown: Option<&'a Shown>,
    /// Are pattern files being read?
    pub reading: bool,
    /// How tables of orders were read, for the next one like them.
    pub mappings: &'a mut Vec<Mapping>,
    /// Clocks that run at the bench, of every batch.
    pub clocks: &'a mut Vec<Running>,
    /// Where the caster looks; a page may change it at once.
    pub view: &'a mut View,
    /// How often each figure was drawn in this frame: one may stand on a page more than once.
    pub drawn: std::collections::HashMap<Id, u32>,
    /// What the page wants done.
    pub wishes: &'a mut Vec<Wish>,
}

impl Cx<'_> {
    /// A text without arguments.
    #[must_use]
    pub fn label(&self, key: &str) -> String {
        self.texts.label(key)
    }

    /// A text.
    #[must_use]
    pub fn say(&self, key: &str, args: &[(&str, Word<'_>)]) -> String {
        self.texts.say(key, args)
    }

    /// Wants the job changed; `key` is the text that names the step.
    pub fn edit(&mut self, key: &str, change: impl FnOnce(&mut Job) + 'static) {
        let name = self.label(key);
        self.wishes.push(Wish::Edit(name, Box::new(change)));
    }

    /// Goes on with a change of the same name: undo takes both back at once, as where something is drawn along by hand.
    pub fn edit_on(&mut self, key: &str, change: impl FnOnce(&mut Job) + 'static) {
        let name = self.label(key);
        self.wishes.push(Wish::EditOn(name, Box::new(change)));
    }

    /// Wants the studio changed.
    pub fn edit_studio(&mut self, key: &str, change: impl FnOnce(&mut Studio) + 'static) {
        let name = self.label(key);
        self.wishes.push(Wish::EditStudio(name, Box::new(change)));
    }

    /// Wants both changed, in one step.
    pub fn edit_both(&mut self, key: &str, change: impl FnOnce(&mut Job, &mut Studio) + 'static) {
        let name = self.label(key);
        self.wishes.push(Wish::EditBoth(name, Box::new(change)));
    }

    /// Wants to look at something else. Not at once: the field that was written in has to be drawn once more to take what stands there.
    pub fn look(&mut self, at: impl FnOnce(&mut View) + 'static) {
        self.wishes.push(Wish::Look(Box::new(at)));
    }

    /// Wants something done.
    pub fn act(&mut self, action: Action) {
        self.wishes.push(Wish::Do(action));
    }

    /// How figures become words.
    #[must_use]
    pub fn words(&self) -> Words<'_> {
        let currency = &self.computed.sound_studio.money.currency;
        Words { texts: self.texts, style: self.style, zone: &self.setting.zone, currency }
    }

    /// What a drawing or a paper is made from, as the screen shows it.
    #[must_use]
    pub fn sheet_input(&self) -> SheetInput<'_> {
        self.computed.sheet_input(self.setting, self.texts, self.style)
    }

    /// What a field takes for granted.
    #[must_use]
    pub fn habits(&self) -> Habits {
        Habits { units: self.style.units, zone: self.setting.zone.clone(), signed: false }
    }

    /// What a pattern's file measures, where it was measured.
    #[must_use]
    pub fn measure_of(&self, id: PatternId) -> Option<&PatternMeasure> {
        match self.runs.patterns.get(&id) {
            Some(PatternRun::Measured(measure)) => Some(measure),
            _ => None,
        }
    }

    /// Is this figure the one whose working is shown?
    #[must_use]
    pub fn is_chosen(&self, id: Id) -> bool {
        let figure = self.computed.book.figure(id);
        // The place and key rule most of them out before anything is counted.
        self.view.chosen.is_some_and(|chosen| {
            chosen.key == figure.origin.key() && chosen.place == figure.place && chosen == Chosen::of(&self.computed.book, id)
        })
    }

    /// Shows this figure's working; `open` opens the pane for it.
    pub fn choose(&mut self, id: Id, open: bool) {
        let chosen = Some(Chosen::of(&self.computed.book, id));
        if self.view.chosen != chosen {
            self.view.chosen = chosen;
            self.view.what_if.clear();
        }
        self.view.working |= open;
    }

    /// A section that folds away; folded until it is asked for.
    pub fn folded(&mut self, ui: &mut Ui, key: &'static str, add: impl FnOnce(&mut Ui, &mut Self)) {
        let open = self.view.unfolded.contains(key);
        if super::widget::button::fold(ui, &self.label(key), open, &self.tokens).clicked() {
            if open {
                self.view.unfolded.remove(key);
            } else {
                self.view.unfolded.insert(key);
            }
        }
        if open {
            add(ui, self);
        }
    }
}
