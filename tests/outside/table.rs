//! Figures beside what they must be, printed as a table and then judged.

use std::path::Path;

/// How far a figure may be off.
#[derive(Debug, Clone, Copy)]
pub enum Within {
    /// The expected number was rounded to this many decimals.
    Printed(i32),
    /// A share of the expected number.
    Share(f64),
    /// An amount.
    Amount(f64),
}

struct Row {
    figure: String,
    source: String,
    expected: f64,
    ours: f64,
    good: bool,
}

/// Rows of one subject.
#[derive(Default)]
pub struct Table(Vec<Row>);

impl Table {
    /// A figure that must be what its source says.
    pub fn row(&mut self, figure: impl Into<String>, source: &str, expected: f64, ours: f64, within: Within) {
        let off = (ours - expected).abs();
        let allowed = match within {
            // Half a unit of the last printed digit, and a hair for its binary neighbour.
            Within::Printed(decimals) => 0.5 * 10_f64.powi(-decimals) * (1.0 + 1e-9),
            Within::Share(share) => share * expected.abs(),
            Within::Amount(amount) => amount,
        };
        let good = off <= allowed;
        self.0.push(Row { figure: figure.into(), source: source.to_owned(), expected, ours, good });
    }

    /// A published figure that is known to be wrong: ours must not be it.
    pub fn rejected(&mut self, figure: impl Into<String>, source: &str, misprint: f64, ours: f64, apart: f64) {
        let good = (ours - misprint).abs() > apart;
        let figure = format!("{} (misprint, rejected)", figure.into());
        self.0.push(Row { figure, source: source.to_owned(), expected: misprint, ours, good });
    }

    /// Prints all rows, or with `every` the first, each `every`-th and the wrong ones, and fails where one is wrong.
    #[allow(clippy::print_stdout, reason = "the table is for whoever runs the test with --nocapture")]
    pub fn judge(self, every: usize) {
        println!("figure | source | expected | ours | difference");
        for (index, row) in self.0.iter().enumerate() {
            if index % every == 0 || !row.good {
                let sign = if row.good { "" } else { "  <-- WRONG" };
                let Row { figure, source, expected, ours, .. } = row;
                println!("{figure} | {source} | {expected} | {ours:.9} | {:.3e}{sign}", ours - expected);
            }
        }
        println!("{} figures", self.0.len());
        let wrong: Vec<&str> = self.0.iter().filter(|row| !row.good).map(|row| row.figure.as_str()).collect();
        assert!(wrong.is_empty(), "{wrong:?}");
        assert!(!self.0.is_empty());
    }
}

/// The rows of a table of numbers and words beside the tests, as named columns.
pub struct Csv {
    head: Vec<String>,
    rows: Vec<Vec<String>>,
}

impl Csv {
    pub fn read(path: &str) -> Self {
        let text = std::fs::read_to_string(Path::new("tests/outside").join(path)).unwrap();
        let mut lines = text.lines().map(|line| line.split(',').map(str::to_owned).collect::<Vec<_>>());
        Self { head: lines.next().unwrap(), rows: lines.collect() }
    }

    pub fn rows(&self) -> impl Iterator<Item = Record<'_>> {
        self.rows.iter().map(|row| Record { head: &self.head, row })
    }
}

pub struct Record<'a> {
    head: &'a [String],
    row: &'a [String],
}

impl Record<'_> {
    pub fn text(&self, column: &str) -> &str {
        &self.row[self.head.iter().position(|name| name == column).unwrap_or_else(|| panic!("no column {column}"))]
    }

    pub fn number(&self, column: &str) -> f64 {
        self.text(column).parse().unwrap()
    }
}
