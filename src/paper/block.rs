//! What a sheet is made of, apart from how it is set: headings, fields, weights to tick and write in, tables, marked lines.

/// One document of paper: a bench sheet, or one client's quote.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Paper {
    /// Stands at the head of every page, left and right.
    pub head: Vec<(String, String)>,
    /// The pages. One that does not fit runs on to the next sheet of paper.
    pub pages: Vec<Page>,
    /// Stands in the foot of every page, above its number.
    pub foot: String,
}

/// A page.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Page {
    /// What it is about; it stands at its top, and again where it runs on.
    pub title: String,
    /// What stands on it.
    pub blocks: Vec<Block>,
}

/// A part of a page.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Block {
    /// The heading of a step. A step stays on one sheet of paper where that holds it.
    Heading(String),
    /// Labels with their values, side by side where they are short.
    Fields(Vec<Field>),
    /// Weights, large, each with a box to tick and a line for what was really weighed.
    Weights(Vec<BigWeight>),
    /// A table.
    Table(Table),
    /// Lines that begin with a word in capitals.
    Marked(Vec<Marked>),
    /// A paragraph.
    Words(String),
}

/// A label and its value.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Field {
    /// What it is.
    pub label: String,
    /// What it says.
    pub value: String,
}

/// A weight to be weighed out.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct BigWeight {
    /// What is weighed.
    pub label: String,
    /// How much.
    pub value: String,
    /// The unit of the line to write on.
    pub unit: &'static str,
}

/// A line that begins with a word in capitals.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Marked {
    /// The word.
    pub mark: String,
    /// The rest.
    pub text: String,
}

/// On which side the cells of a column stand.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Side {
    /// Words.
    Left,
    /// Times and counts.
    Right,
    /// Numbers, their decimal marks below each other.
    Decimal,
}

/// A table.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Table {
    /// Column heads, each with the side of its cells.
    pub columns: Vec<(String, Side)>,
    /// Rows, each as long as the heads.
    pub rows: Vec<Vec<String>>,
}

impl Table {
    /// A table without rows.
    #[must_use]
    pub fn new(columns: Vec<(String, Side)>) -> Self {
        Self { columns, rows: Vec::new() }
    }

    /// Adds a row.
    pub fn row<const N: usize>(&mut self, cells: [String; N]) {
        debug_assert_eq!(N, self.columns.len(), "a row as long as its table");
        self.rows.push(cells.into());
    }
}
