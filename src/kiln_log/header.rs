//! The header: the line above the rows, if there is one, or two lines where the second names the units.

use super::class::{Class, class};
use super::cut::{Separator, cut, cut_header};
use super::layout::Layout;
use super::log_error::shortened;
use super::meaning::{Meaning, is_unit_alone, meaning};
use super::records::Record;

/// What stands over the columns.
pub(super) struct Header {
    /// Records it takes up, directly above the rows.
    pub records: usize,
    pub line: Option<u32>,
    /// One a column, empty where nothing stands there.
    pub names: Vec<String>,
    pub meanings: Vec<Meaning>,
    /// True where there are half as many names as columns: decimal commas cut the numbers in two.
    pub is_half: bool,
}

impl Header {
    pub fn find(records: &[Record<'_>], layout: &Layout) -> Self {
        let above = |back: usize| layout.first.checked_sub(back).map(|at| &records[at]);
        let mut header = Self { records: 0, line: None, names: vec![String::new(); layout.width()], meanings: Vec::new(), is_half: false };
        if let Some(record) = above(1) {
            if let Some(names) = names(record, layout) {
                header.take(record, names);
                let only_units = header.names.iter().all(|name| is_unit_alone(name));
                if only_units
                    && let Some(record) = above(2)
                    && let Some(names) = self::names(record, layout)
                {
                    let units = std::mem::take(&mut header.names);
                    header.take(
                        record,
                        names.into_iter().zip(units).map(|(name, unit)| format!("{name} {unit}").trim().to_owned()).collect(),
                    );
                }
            } else {
                header.is_half = is_half(record, layout);
            }
        }
        header.meanings = header.names.iter().map(|name| meaning(name)).collect();
        header
    }

    fn take(&mut self, record: &Record<'_>, names: Vec<String>) {
        self.records += 1;
        self.line = Some(record.line);
        self.names = names;
    }
}

/// The text of a line without the sign of a comment; a `#` in a cell of its own is the name of a running number.
fn bare<'a>(record: &Record<'a>, layout: &Layout) -> &'a str {
    let text = record.text.trim_start();
    let behind = text.trim_start_matches(['#', '/']);
    let is_name =
        layout.separator != Separator::Blanks && behind.trim_start_matches(' ').as_bytes().first() == Some(&layout.separator.byte());
    if record.comment && !is_name { behind.trim_start() } else { record.text }
}

/// The cells of a line as names of the columns; `None` where they cannot be.
fn names(record: &Record<'_>, layout: &Layout) -> Option<Vec<String>> {
    let width = layout.width();
    let mut cells = Vec::new();
    if layout.separator == Separator::Blanks {
        cells = cut_header(bare(record, layout), width);
    } else {
        cut(bare(record, layout), layout.separator, &mut cells);
    }
    // A column of date and time that blanks part has one name.
    if let Some(at) = layout.classes.windows(2).position(|pair| pair == [Class::Date, Class::Clock])
        && cells.len() + 1 == width
        && at < cells.len()
    {
        cells.insert(at, cells[at]);
    }
    let about_right = cells.len() >= 2 && cells.len() + 1 >= width && cells.len() <= width + 1;
    // Names are words: at most one number may stand among them, as in a name that is a channel's number.
    let numbers = cells.iter().filter(|cell| class(cell, layout.separator).is_value()).count();
    let words = cells.iter().filter(|cell| class(cell, layout.separator) == Class::Text).count();
    if !about_right || words == 0 || numbers >= words {
        return None;
    }
    cells.resize(width, "");
    Some(cells.into_iter().map(|cell| shortened(&cell.replace("\"\"", "\"")).trim().to_owned()).collect())
}

fn is_half(record: &Record<'_>, layout: &Layout) -> bool {
    let mut cells = Vec::new();
    cut(bare(record, layout), layout.separator, &mut cells);
    let is_name = |cell: &&str| class(cell, layout.separator) == Class::Text;
    layout.separator == Separator::Comma && cells.len() >= 2 && 2 * cells.len() == layout.width() && cells.iter().all(is_name)
}
