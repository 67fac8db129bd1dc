//! Finding the table in the lines: what parts the cells, how many there are, and where the rows begin.

use super::class::{Class, class};
use super::cut::{MOST_CELLS, Separator, cut};
use super::records::Record;
use std::ops::Range;

/// Lines that are looked at from the beginning, and as many again from all over the file.
const SAMPLE: usize = 300;

/// The table.
pub(super) struct Layout {
    pub separator: Separator,
    /// What each column holds, by the greatest number of cells.
    pub classes: Vec<Class>,
    /// The first row, as an index of the records.
    pub first: usize,
    /// Rows of the sample, as indices of the records.
    pub sample: Vec<usize>,
}

impl Layout {
    /// Finds the table. `forced` is the separator that the file itself names.
    pub fn find(records: &[Record<'_>], forced: Option<Separator>) -> Option<Self> {
        let sample = sample(records);
        let (separator, width) = match forced {
            Some(separator) => (separator, fit(records, &sample, separator)?.width),
            None => separator(records, &sample)?,
        };
        let mut cells = Vec::new();
        let mut counts = vec![[0_usize; 7]; width];
        let rows: Vec<usize> = sample
            .into_iter()
            .filter(|&at| {
                let classes = classes(records[at].text, separator, &mut cells);
                let fits = classes.len() == width && is_row(&classes);
                if fits {
                    counts.iter_mut().zip(&classes).for_each(|(counts, &class)| counts[class as usize] += 1);
                }
                fits
            })
            .collect();
        let classes: Vec<Class> = counts.iter().map(most).collect();
        let first = first_row(records, separator, &classes)?;
        let first = spoiled_before(records, separator, &classes, first);
        let sample = rows.into_iter().filter(|&at| at >= first).collect();
        Some(Self { separator, classes, first, sample })
    }

    pub fn width(&self) -> usize {
        self.classes.len()
    }
}

fn sample(records: &[Record<'_>]) -> Vec<usize> {
    let lines: Range<usize> = 0..records.len();
    let mut sample: Vec<usize> = lines.clone().filter(|&at| !records[at].comment).take(SAMPLE).collect();
    let from = sample.last().map_or(0, |last| last + 1);
    let step = (records.len() - from).div_ceil(SAMPLE).max(1);
    sample.extend((from..records.len()).step_by(step).filter(|&at| !records[at].comment));
    sample
}

struct Fit {
    width: usize,
    /// Rows of that width, each weighed by the share of its cells that are values.
    weight: f64,
}

fn separator(records: &[Record<'_>], sample: &[usize]) -> Option<(Separator, usize)> {
    let fits = Separator::ALL.map(|separator| (separator, fit(records, sample, separator)));
    let best = fits.iter().filter_map(|(_, fit)| fit.as_ref()).map(|fit| fit.weight).fold(0.0, f64::max);
    let good = |fit: &Fit| fit.weight >= 0.9 * best;
    fits.into_iter().find_map(|(separator, fit)| fit.filter(good).map(|fit| (separator, fit.width)))
}

fn fit(records: &[Record<'_>], sample: &[usize], separator: Separator) -> Option<Fit> {
    let mut cells = Vec::new();
    let mut weights = [0.0_f64; MOST_CELLS + 1];
    for &at in sample {
        let classes = classes(records[at].text, separator, &mut cells);
        if is_row(&classes) {
            let filled = classes.iter().filter(|&&class| class != Class::Empty).count();
            weights[classes.len()] += values(&classes) as f64 / filled as f64;
        }
    }
    let (width, &weight) = weights.iter().enumerate().max_by(|a, b| a.1.total_cmp(b.1))?;
    (weight > 0.0).then_some(Fit { width, weight })
}

fn classes<'a>(text: &'a str, separator: Separator, cells: &mut Vec<&'a str>) -> Vec<Class> {
    cut(text, separator, cells);
    cells.iter().map(|cell| class(cell, separator)).collect()
}

fn values(classes: &[Class]) -> usize {
    classes.iter().filter(|class| class.is_value() || **class == Class::Fault).count()
}

/// Two values, or one and a fault.
fn is_row(classes: &[Class]) -> bool {
    values(classes) >= 2 && classes.iter().any(|class| class.is_value())
}

/// What most cells of a column hold. Text counts only where there is no value at all, so that nonsense in a column of numbers is noticed.
fn most(counts: &[usize; 7]) -> Class {
    let of = |class: Class| counts[class as usize];
    let values = [Class::Moment, Class::Date, Class::Clock, Class::Number];
    let best = values.into_iter().max_by_key(|&class| of(class)).unwrap_or(Class::Text);
    match of(best) {
        0 if of(Class::Text) == 0 && of(Class::Fault) > 0 => Class::Fault,
        0 if of(Class::Text) == 0 => Class::Empty,
        count if count >= of(Class::Text) && count > 0 => best,
        _ => Class::Text,
    }
}

/// The first line whose cells are what their columns hold.
fn first_row(records: &[Record<'_>], separator: Separator, columns: &[Class]) -> Option<usize> {
    let mut cells = Vec::new();
    let agrees = |(&column, &class): (&Class, &Class)| !column.is_value() || class != Class::Text;
    for (at, record) in records.iter().enumerate().filter(|(_, record)| !record.comment) {
        let found = classes(record.text, separator, &mut cells);
        if found.len() == columns.len() && is_row(&found) && columns.iter().zip(&found).all(agrees) {
            return Some(at);
        }
    }
    None
}

/// The first of the rows directly before `first` whose time is sound and something else is not, where a header stands above them.
fn spoiled_before(records: &[Record<'_>], separator: Separator, columns: &[Class], first: usize) -> usize {
    let Some(leading) = columns.iter().position(|column| column.is_value()) else { return first };
    let mut cells = Vec::new();
    let mut start = first;
    while let Some(record) = start.checked_sub(1).map(|at| records[at]) {
        let found = classes(record.text, separator, &mut cells);
        if found.len() != columns.len() || record.comment {
            break;
        }
        if found[leading] == columns[leading] {
            start -= 1;
            continue;
        }
        let is_header = found.contains(&Class::Text) && !found.iter().any(|class| class.is_value());
        return if is_header { start } else { first };
    }
    first
}
