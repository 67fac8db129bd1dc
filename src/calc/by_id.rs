//! Finding things of the job by their id, in constant time where ids are given one after the other, as they nearly always are.

use crate::job::{Job, Line, LineId, Order, Pattern, PatternId};

/// A line with the order it belongs to.
#[derive(Debug, Clone, Copy)]
pub(super) struct Ordered<'a> {
    pub order: &'a Order,
    pub line: &'a Line,
}

/// The lines and patterns of a job, sorted by id.
pub(super) struct ById<'a> {
    lines: Vec<Ordered<'a>>,
    patterns: Vec<&'a Pattern>,
}

impl<'a> ById<'a> {
    pub fn new(job: &'a Job) -> Self {
        let mut lines: Vec<Ordered<'a>> = job.lines().map(|(order, line)| Ordered { order, line }).collect();
        lines.sort_by_key(|ordered| ordered.line.id);
        let mut patterns: Vec<&'a Pattern> = job.patterns.iter().collect();
        patterns.sort_by_key(|pattern| pattern.id);
        Self { lines, patterns }
    }

    /// How many lines there are.
    pub fn line_count(&self) -> usize {
        self.lines.len()
    }

    /// The place of a line among all, and the line.
    pub fn line(&self, id: LineId) -> Option<(usize, Ordered<'a>)> {
        let place = place_of(&self.lines, id.0, |ordered| ordered.line.id.0)?;
        Some((place, self.lines[place]))
    }

    /// A pattern.
    pub fn pattern(&self, id: PatternId) -> Option<&'a Pattern> {
        place_of(&self.patterns, id.0, |pattern| pattern.id.0).map(|place| self.patterns[place])
    }
}

/// Where an id stands in a list sorted by ids that are given once each.
pub(super) fn place_of<T>(sorted: &[T], id: u32, id_of: impl Fn(&T) -> u32) -> Option<usize> {
    let first = id_of(sorted.first()?);
    let guess = id.checked_sub(first)? as usize;
    if sorted.get(guess).is_some_and(|item| id_of(item) == id) {
        return Some(guess);
    }
    sorted.binary_search_by_key(&id, id_of).ok()
}
