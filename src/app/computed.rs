//! Everything that follows from the two documents, computed anew after each change.

use crate::calc::{Book, Finding, Id, Report, Runs, Setting, Shelves, Weight, recompute};
use crate::job::check::{self, Fault};
use crate::job::{Job, Place, Studio};
use crate::paper::{Pictures, SheetInput};
use crate::quantity::Style;
use crate::texts::Texts;

static NO_PICTURES: Pictures = Pictures::NONE;

/// The figures of a workbook, and the documents without what is at fault in them.
#[derive(Debug)]
pub struct Computed {
    /// The job that is computed from.
    pub sound: Job,
    /// The studio that is computed from.
    pub sound_studio: Studio,
    /// What is at fault in either.
    pub faults: Vec<Fault>,
    /// The shelf.
    pub shelves: Shelves,
    /// The book of figures.
    pub book: Book,
    /// Figures by what they belong to.
    pub report: Report,
}

impl Computed {
    /// Computes both documents.
    #[must_use]
    pub fn new(job: &Job, studio: &Studio, runs: &Runs, setting: &Setting) -> Self {
        let (sound, mut faults) = check::mend(job);
        let (sound_studio, studio_faults) = check::mend_studio(studio);
        faults.extend(studio_faults);
        let shelves = Shelves::new(&sound, &sound_studio);
        let mut book = Book::default();
        let report = recompute(&sound, &sound_studio, &shelves, runs, setting, &mut book);
        Self { sound, sound_studio, faults, shelves, book, report }
    }

    /// What a drawing is made from, in the language and the units of the screen.
    #[must_use]
    pub fn sheet_input<'a>(&'a self, setting: &'a Setting, texts: &'a Texts, style: &'a Style) -> SheetInput<'a> {
        SheetInput {
            job: &self.sound,
            studio: &self.sound_studio,
            shelves: &self.shelves,
            report: &self.report,
            book: &self.book,
            setting,
            texts,
            style,
            content_hash: "",
            saved: true,
            studio_hash: "",
            pictures: &NO_PICTURES,
        }
    }

    /// Findings of a weight.
    pub fn of_weight(&self, weight: Weight) -> impl Iterator<Item = &Finding> {
        self.report.findings.iter().filter(move |finding| finding.kind.weight == weight)
    }

    /// Findings at a place.
    pub fn at(&self, place: Place) -> impl Iterator<Item = &Finding> {
        self.report.findings.iter().filter(move |finding| finding.place == place)
    }
}

/// A figure by what it is, so that it is found again after a recompute.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Chosen {
    /// The key of its rule or input.
    pub key: &'static str,
    /// Where.
    pub place: Place,
    /// The how manieth of its kind there, from 0.
    pub nth: usize,
}

impl Chosen {
    /// The choice of a line of the book.
    #[must_use]
    pub fn of(book: &Book, id: Id) -> Self {
        let figure = book.figure(id);
        let (key, place) = (figure.origin.key(), figure.place);
        let alike = |other: &crate::calc::Figure<'_>| other.origin.key() == key && other.place == place;
        let nth = book.lines().take_while(|other| other.id != id).filter(alike).count();
        Self { key, place, nth }
    }

    /// The line it is in a book, where it still is.
    #[must_use]
    pub fn find(&self, book: &Book) -> Option<Id> {
        let alike = |figure: &crate::calc::Figure<'_>| figure.origin.key() == self.key && figure.place == self.place;
        book.lines().filter(alike).nth(self.nth).map(|figure| figure.id)
    }
}
