//! What the cells of a column look like, taken together.

use super::alloy::Alloys;
use super::date::written;
use super::letters::{says_nothing, tidy};
use super::price::without_currency;
use super::quantity::without_pieces;
use super::size::is_likely_ring;
use crate::table::{Decimal, Row, exact, shape};
use jiff::civil::Date;
use std::collections::BTreeSet;

/// The rows that are looked at.
const SAMPLE: usize = 200;

/// Files that hold a pattern.
const PATTERN_FILES: [&str; 9] = [".stl", ".obj", ".3mf", ".ply", ".step", ".stp", ".3dm", ".igs", ".iges"];

/// What the cells of a column look like: how many are what. A cell can be several things.
#[derive(Debug, Clone, Default)]
pub(super) struct Profile {
    pub filled: usize,
    pub rows: usize,
    pub numbers: usize,
    /// Whole numbers from 1 to 999.
    pub small: usize,
    pub dates: usize,
    /// Days of the dates, with the day first where it is open.
    pub days: Vec<Date>,
    pub alloys: usize,
    pub rings: usize,
    /// Numbers with a currency or with two decimals.
    pub prices: usize,
    pub files: usize,
    /// Words with a digit and without blanks.
    pub codes: usize,
    pub distinct: usize,
    /// Letters of all cells.
    pub letters: usize,
    /// Each number is one more than the last.
    pub counts_rows: bool,
}

impl Profile {
    pub fn of(rows: &[Row], column: usize, alloys: &Alloys<'_>) -> Self {
        let mut profile = Self { counts_rows: true, ..Self::default() };
        let (mut seen, mut last) = (BTreeSet::new(), None);
        for row in rows.iter().take(SAMPLE) {
            profile.rows += 1;
            let cell = row.cell(column).trim();
            if says_nothing(cell) {
                profile.counts_rows = false;
                continue;
            }
            profile.take(cell, alloys);
            let number: Option<u32> = cell.parse().ok();
            profile.counts_rows &= number.is_some() && last.is_none_or(|last: u32| last.checked_add(1) == number);
            last = number;
            seen.insert(tidy(cell));
        }
        profile.counts_rows &= profile.filled > 2;
        profile.distinct = seen.len();
        profile
    }

    fn take(&mut self, cell: &str, alloys: &Alloys<'_>) {
        self.filled += 1;
        self.letters += cell.chars().count();
        if let Some(number) = exact(without_pieces(cell), Decimal::Point) {
            self.numbers += 1;
            self.small += usize::from(number.parse().is_ok_and(|number: u32| (1..=999).contains(&number)));
        }
        let bare = without_currency(cell);
        let cents = bare.len().checked_sub(3).and_then(|at| bare.as_bytes().get(at)).is_some_and(|b| matches!(b, b'.' | b','));
        self.prices += usize::from(shape(bare).is_some() && (cents || bare.len() < cell.len()));
        if let Some(date) = written(cell).and_then(|date| date.date(true).or_else(|| date.date(false))) {
            self.dates += 1;
            self.days.push(date);
        }
        let lower = cell.to_lowercase();
        self.alloys += usize::from(cell.len() <= 80 && alloys.is_one(cell));
        self.rings += usize::from(is_likely_ring(cell));
        self.files += usize::from(PATTERN_FILES.iter().any(|end| lower.ends_with(end)));
        let has_digit = cell.contains(|c: char| c.is_ascii_digit());
        self.codes += usize::from(has_digit && !cell.contains(char::is_whitespace) && cell.len() <= 24);
    }

    /// True where at least so many percent of the cells that say something are so.
    pub fn is_mostly(&self, count: usize, percent: usize) -> bool {
        count > 0 && 100 * count >= percent * self.filled
    }

    /// The day in the middle.
    pub fn middle_day(&self) -> Option<Date> {
        let mut days = self.days.clone();
        days.sort_unstable();
        days.get(days.len() / 2).copied()
    }

    /// True where most cells are words.
    pub fn is_words(&self) -> bool {
        self.filled > 0 && 2 * (self.numbers + self.dates) < self.filled
    }
}
