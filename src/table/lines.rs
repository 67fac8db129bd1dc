//! Lines that have something in common, told shortly.

use std::fmt;

/// The ranges that are kept by number; more are only counted.
const KEPT: usize = 20;

/// A set of lines of the file, counted from 1: all are counted, the first are kept by number.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Lines {
    /// How many.
    pub count: usize,
    /// The first of them as ranges, both ends in it.
    pub ranges: Vec<[u32; 2]>,
    left_over: usize,
}

impl Lines {
    /// Takes one more line.
    pub fn push(&mut self, line: u32) {
        self.count += 1;
        let room = self.ranges.len() < KEPT;
        match self.ranges.last_mut() {
            Some(last) if self.left_over == 0 && last[1].checked_add(1) == Some(line) => last[1] = line,
            _ if room => self.ranges.push([line, line]),
            _ => self.left_over += 1,
        }
    }

    /// The same lines, with some counted that are not known by number.
    #[must_use]
    pub fn counted(mut self, count: usize) -> Self {
        self.left_over += count.saturating_sub(self.count);
        self.count = self.count.max(count);
        self
    }

    /// True when there are none.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.count == 0
    }

    /// The first of them.
    #[must_use]
    pub fn first(&self) -> Option<u32> {
        self.ranges.first().map(|range| range[0])
    }
}

impl FromIterator<u32> for Lines {
    fn from_iter<I: IntoIterator<Item = u32>>(lines: I) -> Self {
        let mut all = Self::default();
        lines.into_iter().for_each(|line| all.push(line));
        all
    }
}

impl fmt::Display for Lines {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(if self.count == 1 { "line" } else { "lines" })?;
        for (at, [first, last]) in self.ranges.iter().enumerate() {
            f.write_str(if at == 0 { " " } else { ", " })?;
            if first == last { write!(f, "{first}") } else { write!(f, "{first}–{last}") }?;
        }
        if self.left_over > 0 { write!(f, " and {} more", self.left_over) } else { Ok(()) }
    }
}
