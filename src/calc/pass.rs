//! One recompute on its way through the job: what it reads, what it has made so far, and terms it makes only once.

use std::collections::BTreeMap;

use super::book::{Book, Id};
use super::finding::{Arg, Finding, FindingKind};
use super::rule::Input;
use super::setting::{Runs, Setting};
use super::value::Cause;
use crate::job::{Job, Place, Studio};
use crate::stock::{EntryId, Shelf, Shelved, Sourced};

/// What every step of a recompute works with.
pub(super) struct Pass<'a> {
    pub job: &'a Job,
    pub studio: &'a Studio,
    pub shelf: &'a Shelf,
    pub runs: &'a Runs,
    pub setting: &'a Setting,
    pub book: &'a mut Book,
    pub findings: Vec<Finding>,
    /// Some pattern says what it costs to make.
    pub any_making: bool,
    shelf_terms: BTreeMap<(&'static str, EntryId), Id>,
    missing_entries: Vec<EntryId>,
}

impl<'a> Pass<'a> {
    pub fn new(job: &'a Job, studio: &'a Studio, shelf: &'a Shelf, runs: &'a Runs, setting: &'a Setting, book: &'a mut Book) -> Self {
        Self {
            job,
            studio,
            shelf,
            runs,
            setting,
            book,
            findings: Vec::new(),
            any_making: job.patterns.iter().any(|pattern| pattern.making.is_some()),
            shelf_terms: BTreeMap::new(),
            missing_entries: Vec::new(),
        }
    }

    /// Reports a finding without a value.
    pub fn find(&mut self, kind: &'static FindingKind, place: Place, args: Vec<Arg>) {
        self.findings.push(Finding::new(kind, place, args));
    }

    /// Reports a finding that rests on a figure.
    pub fn find_on(&mut self, kind: &'static FindingKind, place: Place, figure: Id, args: Vec<Arg>) {
        let finding = Finding::new(kind, place, args).resting_on(self.book, figure);
        self.findings.push(finding);
    }

    /// The shelf's entry of a kind; one that is named and not there is reported once.
    pub fn entry<T: Shelved>(&mut self, id: Option<&EntryId>, place: Place) -> Option<&'a T> {
        let id = id?;
        let entry = self.shelf.get::<T>(id.as_str());
        if entry.is_none() && !self.missing_entries.contains(id) {
            self.missing_entries.push(id.clone());
            // There, but as another kind of thing.
            let other = self.shelf.entry(id.as_str()).map(|entry| entry.name().to_owned());
            match other {
                Some(name) => self.find(&super::finding::ENTRY_OTHER_KIND, place, vec![Arg::Text(name)]),
                None => self.find(&super::finding::NOT_ON_SHELF, place, vec![Arg::Text(id.to_string())]),
            }
        }
        entry
    }

    /// The name of an entry, or its id where the shelf does not have it.
    pub fn name_of(&self, id: &EntryId) -> String {
        self.shelf.entry(id.as_str()).map_or_else(|| id.to_string(), |entry| entry.name().to_owned())
    }

    /// A number of a shelf entry, made once in a recompute.
    pub fn shelf_term(&mut self, input: &'static Input, entry: &EntryId, number: &Sourced) -> Id {
        if let Some(id) = self.shelf_terms.get(&(input.key, entry.clone())) {
            return *id;
        }
        let id = self.book.shelf(input, entry, number);
        self.shelf_terms.insert((input.key, entry.clone()), id);
        id
    }

    /// A number of a shelf entry that the entry may leave out.
    pub fn shelf_term_or_absent(&mut self, input: &'static Input, entry: &EntryId, number: Option<&Sourced>, place: Place) -> Id {
        match number {
            Some(number) => self.shelf_term(input, entry, number),
            None => self.book.absent(input, place, Cause::NotOnShelf),
        }
    }
}
