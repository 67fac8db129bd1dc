//! What a sheet is made of, apart from how it is set: headings, fields, weights to tick and write in, tables, marked lines, drawings.

use std::sync::Arc;

use crate::drawing::primitive::Picture;

/// One document of paper: a bench sheet, or one client's quote.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Paper {
    /// What the document is called.
    pub title: String,
    /// The studio's face at the head of the first page, on what goes to a client.
    pub letterhead: Option<Letterhead>,
    /// Stands at the head of every page, left and right.
    pub head: Vec<(String, String)>,
    /// The pages. One that does not fit runs on to the next sheet of paper.
    pub pages: Vec<Page>,
    /// Stands in the foot of every page, above its number.
    pub foot: String,
}

/// The studio's face: a picture, its name, its address.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Letterhead {
    /// The picture, where the studio has one.
    pub picture: Option<Arc<Raster>>,
    /// The studio's name.
    pub name: String,
    /// Address lines.
    pub address: Vec<String>,
}

/// A picture in pixels.
#[derive(Clone, PartialEq, Eq)]
pub struct Raster {
    /// Pixels across.
    pub width: u32,
    /// Pixels down.
    pub height: u32,
    /// Red, green, blue and cover of every pixel, row by row from the top.
    pub rgba: Vec<u8>,
}

impl std::fmt::Debug for Raster {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "Raster({}×{})", self.width, self.height)
    }
}

/// A page.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Page {
    /// What it is about; it stands at its top, and again where it runs on.
    pub title: String,
    /// What is scratched into the flask's face; it stands large beside the title.
    pub scratch: String,
    /// A line under the title.
    pub under: String,
    /// What stands on it.
    pub blocks: Vec<Block>,
    /// It hangs on a wall: set as large as one sheet of paper lets it be.
    pub large: bool,
}

/// A part of a page.
#[derive(Debug, Clone, PartialEq)]
pub enum Block {
    /// The first of these begins the left of two columns, the second the right one. What stands before them goes across both. Text has one
    /// column and passes over them.
    Column,
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
    /// What is done one after the other, numbered.
    Steps(Vec<String>),
    /// What is to be written in by hand: labels, each with the unit of its place.
    WriteIn(Vec<WriteIn>),
    /// A drawing.
    Drawing(Box<Drawing>),
    /// Small pictures with their names, side by side.
    Thumbnails(Vec<Thumbnail>),
    /// Lines to sign on, each with what is to be written there.
    Sign(Vec<String>),
}

/// A place to write in.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct WriteIn {
    /// What is asked for.
    pub label: String,
    /// Its unit, where it has one.
    pub unit: &'static str,
}

/// A drawing on paper.
#[derive(Debug, Clone, PartialEq)]
pub struct Drawing {
    /// What is drawn, in millimetres.
    pub picture: Picture,
    /// To one of the usual scales, as large as its place allows; otherwise its millimetres are those of the paper.
    pub to_scale: bool,
    /// The drawing in a sentence, for those who hear the page.
    pub says: String,
    /// The line under it; the scale follows it where there is one.
    pub caption: String,
    /// How high it may be, in millimetres of the paper.
    pub most_mm: f64,
    /// Small pictures that stand beside it.
    pub beside: Vec<Thumbnail>,
}

/// A small picture with its name.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Thumbnail {
    /// The picture; an empty frame where there is none.
    pub picture: Option<Arc<Raster>>,
    /// What it is.
    pub label: String,
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
    /// What belongs to it, such as the range it must be in.
    pub note: String,
    /// The unit of the line to write on.
    pub unit: &'static str,
    /// A part of a weight above it: less large.
    pub part: bool,
}

/// The sign painted before a marked line.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Sign {
    /// None: it goes on from the line before.
    None,
    /// A full octagon: someone may be hurt, or metal or flask is lost.
    Stop,
    /// A full triangle: a likely defect or loss.
    Caution,
    /// A ring.
    Note,
    /// An open triangle: a usual danger of the step.
    Care,
}

/// A line that begins with a word in capitals.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Marked {
    /// Its sign.
    pub sign: Sign,
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
    /// A box to tick in every row; its cells are empty.
    Tick,
    /// A place to write in, in every row; its cells are empty.
    Write,
}

/// A table.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Table {
    /// Column heads, each with the side of its cells.
    pub columns: Vec<(String, Side)>,
    /// Rows, each as long as the heads.
    pub rows: Vec<Vec<String>>,
    /// How many rows at the end are sums, and stand out.
    pub sums: usize,
    /// It goes across its column; what is left over widens its words.
    pub across: bool,
}

impl Table {
    /// A table without rows.
    #[must_use]
    pub fn new(columns: Vec<(String, Side)>) -> Self {
        Self { columns, rows: Vec::new(), sums: 0, across: false }
    }

    /// The same across the whole of its column.
    #[must_use]
    pub fn across(self) -> Self {
        Self { across: true, ..self }
    }

    /// Adds a row.
    pub fn row<const N: usize>(&mut self, cells: [String; N]) {
        debug_assert_eq!(N, self.columns.len(), "a row as long as its table");
        self.rows.push(cells.into());
    }
}
