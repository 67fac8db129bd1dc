//! The papers of the open batch as they would be printed now, made anew only when something they rest on has changed.

use super::workbook::Workbook;
use crate::files::disk::{Disk, RealDisk};
use crate::files::pictures::letterhead;
use crate::files::save::hash_of;
use crate::job::format::{write_job, write_studio};
use crate::paper::layout::Laid;
use crate::paper::pdf::PdfError;
use crate::paper::{Dress, Listed, Pictures, Printed, SheetInput, Sort, as_pages, as_pdf, as_text, papers};

/// Which paper is looked at.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct PaperView {
    /// Its sort.
    pub sort: Sort,
    /// Which document of the sort, by its name; the first where there is none of that name.
    pub name: String,
    /// Which page of it, from 0.
    pub leaf: usize,
    /// As wide as the window lets it be, rather than whole.
    pub wide: bool,
}

/// What a paper was made from.
#[derive(Debug, Clone, PartialEq, Eq)]
struct Key {
    revision: u64,
    looked: u64,
    changed: bool,
    sort: Sort,
    name: String,
    dress: Dress,
}

/// A sort's documents, and one of them set on pages.
#[derive(Debug, Clone)]
pub struct Shown {
    key: Key,
    /// How they are dressed.
    pub dress: Dress,
    /// All documents of the sort.
    pub printed: Vec<Printed>,
    /// Which of them is set.
    pub at: usize,
    /// That one; nothing where there is none.
    pub laid: Option<Laid>,
    /// What could not be read for it, a sentence each.
    pub complaints: Vec<String>,
}

impl Shown {
    /// The document that is shown.
    #[must_use]
    pub fn document(&self) -> Option<&Printed> {
        self.printed.get(self.at)
    }
}

/// What a paper is made from, and owns of it.
struct Ground {
    pictures: Pictures,
    content: String,
    studio: String,
    saved: bool,
}

impl Ground {
    fn of(workbook: &Workbook) -> Self {
        let folder = workbook.folder().map(std::path::Path::to_path_buf).unwrap_or_default();
        let mut pictures = letterhead(&RealDisk, &folder, &workbook.computed.sound_studio);
        pictures.patterns = workbook.pictures();
        let saved = workbook.batch.is_some() && !workbook.is_changed();
        let hex = |text: Option<String>| text.map_or_else(String::new, |text| hash_of(text.as_bytes()).to_hex().to_string());
        let (content, studio) = match &workbook.batch {
            Some(batch) if saved => (batch.hash_text.clone(), batch.studio_hash.map_or_else(String::new, |hash| hash.to_hex().to_string())),
            _ => (hex(write_job(&workbook.job).ok()), hex(write_studio(&workbook.studio).ok())),
        };
        Self { pictures, content, studio, saved }
    }

    fn with<T>(&self, workbook: &Workbook, dress: Dress, make: impl FnOnce(&SheetInput<'_>) -> T) -> T {
        let style = dress.style();
        let input = SheetInput {
            content_hash: &self.content,
            saved: self.saved,
            studio_hash: &self.studio,
            pictures: &self.pictures,
            ..workbook.computed.sheet_input(&workbook.setting, dress.texts(), &style)
        };
        make(&input)
    }
}

impl Workbook {
    /// Sets the paper that is looked at, where it is not set so already.
    pub fn set_paper(&mut self, dress: Dress) {
        let view = &self.view.paper;
        let key = Key {
            revision: self.revision,
            looked: self.looked,
            changed: self.is_changed(),
            sort: view.sort,
            name: view.name.clone(),
            dress,
        };
        if self.shown.as_ref().is_some_and(|shown| shown.key == key) {
            return;
        }
        let ground = Ground::of(self);
        let (printed, at, laid) = ground.with(self, dress, |input| {
            let printed = papers(input, key.sort);
            let at = printed.iter().position(|one| one.name == key.name).unwrap_or(0);
            let laid = printed.get(at).map(|one| as_pages(one, dress.format, input.texts));
            (printed, at, laid)
        });
        let leaves = laid.as_ref().map_or(0, |laid| laid.leaves.len());
        self.view.paper.leaf = self.view.paper.leaf.min(leaves.saturating_sub(1));
        self.shown = Some(Shown { key, dress, printed, at, laid, complaints: ground.pictures.complaints });
    }

    /// The documents of the sort that is looked at as PDFs, each with its name: the one that is shown, or all.
    ///
    /// # Errors
    /// A sentence where one cannot be written so.
    pub fn paper_as_pdf(&mut self, dress: Dress, all: bool) -> Result<Vec<(String, Vec<u8>)>, PdfError> {
        self.set_paper(dress);
        let Some(shown) = &self.shown else { return Ok(Vec::new()) };
        let wanted = |index: &usize| all || *index == shown.at;
        let ground = Ground::of(self);
        ground.with(self, dress, |input| {
            let chosen = (0..shown.printed.len()).filter(wanted).map(|index| &shown.printed[index]);
            chosen.map(|one| Ok((one.name.clone(), as_pdf(one, dress.format, input)?))).collect()
        })
    }

    /// The batch as a table for spreadsheets.
    pub fn table_as_csv(&self, listed: Listed) -> String {
        Ground::of(self).with(self, Dress::default(), |input| listed.csv(input))
    }

    /// The document that is looked at as plain text; none where there is none.
    pub fn paper_as_text(&mut self, dress: Dress) -> Option<(String, String)> {
        self.set_paper(dress);
        let shown = self.shown.as_ref()?;
        let one = shown.document()?;
        Some((one.name.clone(), as_text(std::slice::from_ref(one), self.view.paper.sort, dress.texts())))
    }
}

/// A name in a folder that nothing stands under yet: `stem-sort-name.pdf`, with a number where that is taken.
pub fn free_name(disk: &dyn Disk, beside: &std::path::Path, parts: &[&str], extension: &str) -> Option<std::path::PathBuf> {
    let stem = parts.iter().filter(|part| !part.is_empty()).copied().collect::<Vec<_>>().join("-");
    let named = |number: u32| {
        let name = if number == 1 { format!("{stem}.{extension}") } else { format!("{stem}-{number}.{extension}") };
        beside.join(name)
    };
    (1..1000).map(named).find(|path| matches!(disk.exists(path), Ok(false)))
}
