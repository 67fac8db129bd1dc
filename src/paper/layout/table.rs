//! Setting a table: columns as wide as they need, words wrapped where the line is too short, decimal marks below each other.

use std::rc::Rc;

use super::face::Face;
use super::lines::{Line, Span};
use super::mark::{Content, Node, Tag};
use super::strip::{Maker, Strip, frame, rule};
use super::{HAIR, INK, LABEL};
use crate::paper::block::{Side, Table};
use crate::paper::set_table::{is_number, mark_at};

/// Space between columns in mm.
const GAP: f64 = 2.0;
/// A column is never narrower, in mm.
const LEAST: f64 = 5.0;
/// Side of a box to tick in mm.
pub(super) const BOX: f64 = 3.4;
/// A place to write in is at least so wide, in mm.
const WRITE: f64 = 11.0;
/// A row of more lines than this may be parted.
const LONG_ROW: usize = 16;

/// A table with the columns that hold something, and their places.
struct Grid<'t> {
    table: &'t Table,
    /// Indices of the columns that are shown.
    shown: Vec<usize>,
    /// Left ends and widths, as `shown`.
    places: Vec<(f64, f64)>,
    /// How far right of a column's left end its decimal marks stand, as `shown`.
    marks: Vec<f64>,
    size_pt: f64,
}

/// The strips of a table.
pub(super) fn table(maker: &mut Maker<'_>, table: &Table) -> Vec<Strip> {
    let node = maker.node(Tag::Table, None);
    let grid = Grid::new(maker, table);
    let heads = heads(maker, &grid, node);
    let again = Rc::new(heads.again());
    let mut strips = vec![heads.kept()];
    for (index, row) in table.rows.iter().enumerate() {
        let sum = index + table.sums >= table.rows.len();
        let mut made = grid.row(maker, row, node, sum);
        for strip in &mut made {
            strip.heads = Some(Rc::clone(&again));
        }
        strips.extend(made);
    }
    // A single row does not begin a column alone.
    if let Some(first) = strips.get_mut(1).filter(|_| table.rows.len() > 2) {
        first.keep = true;
    }
    strips
}

fn is_written(side: Side) -> bool {
    matches!(side, Side::Tick | Side::Write)
}

impl<'t> Grid<'t> {
    fn new(maker: &mut Maker<'_>, table: &'t Table) -> Self {
        let filled = |index: &usize| {
            is_written(table.columns[*index].1) || table.rows.iter().any(|row| row.get(*index).is_some_and(|cell| !cell.is_empty()))
        };
        let shown: Vec<usize> = (0..table.columns.len()).filter(filled).collect();
        // Where even the narrowest columns do not fit, smaller type has to do.
        let mut size_pt = maker.sizes.body;
        loop {
            let grid = Self::at_size(maker, table, &shown, size_pt);
            let right = grid.places.last().map_or(0.0, |(x, width)| x + width);
            if right <= maker.width + 1e-6 || size_pt < 4.0 {
                return grid;
            }
            size_pt *= 0.93;
        }
    }

    fn at_size(maker: &mut Maker<'_>, table: &'t Table, shown: &[usize], size_pt: f64) -> Self {
        let mut widths = Vec::with_capacity(shown.len());
        let mut marks = Vec::with_capacity(shown.len());
        let face = if table.sums > 0 { Face::Bold } else { Face::Plain };
        for index in shown {
            let (head, side) = &table.columns[*index];
            let words = head.split(' ').map(|word| maker.setter.width(Face::Plain, word, maker.sizes.small)).fold(0.0, f64::max);
            let cells = table.rows.iter().filter_map(|row| row.get(*index));
            let (wide, mark) = match side {
                Side::Tick => (BOX, 0.0),
                Side::Write => (WRITE, 0.0),
                Side::Decimal => decimal_width(maker, cells, face, size_pt),
                Side::Left | Side::Right => (cells.map(|cell| maker.setter.width(face, cell, size_pt)).fold(0.0, f64::max), 0.0),
            };
            widths.push(wide.max(words).max(LEAST));
            marks.push(mark);
        }
        give_way(&mut widths, table, shown, maker.width);
        widen_for_heads(maker, &mut widths, table, shown);
        spread(&mut widths, table, shown, maker.width);
        for ((width, mark), index) in widths.iter().zip(&mut marks).zip(shown) {
            if table.columns[*index].1 == Side::Decimal {
                // The widest number stands at the right end of its column.
                *mark += width - decimal_width(maker, table.rows.iter().filter_map(|row| row.get(*index)), face, size_pt).0;
            }
        }
        let mut x = 0.0;
        let places = widths.iter().map(|width| {
            let place = (x, *width);
            x += width + GAP;
            place
        });
        let places = places.collect();
        Self { table, shown: shown.to_vec(), places, marks, size_pt }
    }

    /// A row: one strip, or one a line where it is very long.
    fn row(&self, maker: &mut Maker<'_>, row: &[String], table: Node, sum: bool) -> Vec<Strip> {
        let node = maker.node(Tag::Row, Some(table));
        let size_pt = self.size_pt;
        let face = if sum { Face::Bold } else { Face::Plain };
        let mut cells: Vec<(usize, Node, Vec<Line>)> = Vec::new();
        for (place, index) in self.shown.iter().enumerate() {
            let Some(words) = row.get(*index).filter(|_| !is_written(self.table.columns[*index].1)) else { continue };
            let cell = maker.node(Tag::Cell, Some(node));
            let lines = maker.lines(&[Span { face, grey: INK, words }], size_pt, self.places[place].1);
            cells.push((place, cell, lines));
        }
        let count = cells.iter().map(|(_, _, lines)| lines.len()).max().unwrap_or(1);
        let (pitch, base) = (Maker::pitch(size_pt), Maker::base(size_pt));
        let written = self.shown.iter().any(|index| is_written(self.table.columns[*index].1));
        #[allow(clippy::cast_precision_loss, reason = "lines are few")]
        let text = pitch * count as f64;
        let least = if written { maker.sizes.write } else { 0.0 };
        let height = (text + 0.7).max(least);
        let top = (height - text) / 2.0;
        let line_at = |number: usize, top: f64| -> Vec<Content> {
            let of = cells.iter().filter_map(|(place, cell, lines)| {
                let line = lines.get(number)?;
                let x = self.start(*place, row, line);
                Some(line.marks([x, top + base], size_pt, Some(*cell)).collect::<Vec<_>>())
            });
            of.flatten().collect()
        };
        let under = |height: f64, grey| rule([0.0, height], [self.right(), height], 0.1, grey);
        if count > LONG_ROW {
            let strip = |number| Strip { height: pitch, contents: line_at(number, 0.0), ..Strip::default() };
            return (0..count).map(strip).collect();
        }
        #[allow(clippy::cast_precision_loss, reason = "lines are few")]
        let mut contents: Vec<Content> = (0..count).flat_map(|number| line_at(number, top + pitch * number as f64)).collect();
        contents.extend(self.boxes(height));
        contents.push(under(height, HAIR));
        vec![Strip { height, contents, ..Strip::default() }]
    }

    /// Where a line of a cell begins.
    fn start(&self, place: usize, row: &[String], line: &Line) -> f64 {
        let ((x, width), index) = (self.places[place], self.shown[place]);
        match self.table.columns[index].1 {
            Side::Left | Side::Tick | Side::Write => x,
            Side::Decimal if row.get(index).is_some_and(|cell| is_number(cell)) => {
                let before = line.parts.first().map_or(0.0, |part| before_mark(part.run.as_ref(), self.size_pt));
                (x + self.marks[place] - before).clamp(x, (x + width - line.width).max(x))
            }
            Side::Right | Side::Decimal => x + (width - line.width).max(0.0),
        }
    }

    /// What is ticked and written in.
    fn boxes(&self, height: f64) -> Vec<Content> {
        let one = |(place, index): (usize, &usize)| {
            let (x, width) = self.places[place];
            match self.table.columns[*index].1 {
                Side::Tick => Some(frame([x, (height - BOX) / 2.0], [BOX, BOX], 0.3, INK)),
                Side::Write => Some(frame([x, 0.5], [width, height - 1.0], 0.15, LABEL)),
                _ => None,
            }
        };
        self.shown.iter().enumerate().filter_map(one).collect()
    }

    fn right(&self) -> f64 {
        self.places.last().map_or(0.0, |(x, width)| x + width)
    }
}

/// The heads of the columns, their last lines on one height.
fn heads(maker: &mut Maker<'_>, grid: &Grid<'_>, table: Node) -> Strip {
    let node = maker.node(Tag::Row, Some(table));
    let size_pt = maker.sizes.small.min(grid.size_pt);
    let mut cells = Vec::new();
    for (place, index) in grid.shown.iter().enumerate() {
        let (words, side) = &grid.table.columns[*index];
        let cell = maker.node(Tag::HeadCell, Some(node));
        cells.push((place, *side, cell, maker.lines(&[Span { face: Face::Plain, grey: LABEL, words }], size_pt, grid.places[place].1)));
    }
    let count = cells.iter().map(|(.., lines)| lines.len()).max().unwrap_or(1);
    let (pitch, base) = (Maker::pitch(size_pt), Maker::base(size_pt));
    #[allow(clippy::cast_precision_loss, reason = "lines are few")]
    let height = pitch * count as f64 + 0.6;
    let mut contents = Vec::new();
    for (place, side, cell, lines) in &cells {
        let (x, width) = grid.places[*place];
        for (number, line) in lines.iter().enumerate() {
            #[allow(clippy::cast_precision_loss, reason = "lines are few")]
            let y = pitch * (count - lines.len() + number) as f64 + base;
            let left = if matches!(side, Side::Right | Side::Decimal) { x + (width - line.width).max(0.0) } else { x };
            contents.extend(line.marks([left, y], size_pt, Some(*cell)));
        }
    }
    contents.push(rule([0.0, height], [grid.right(), height], 0.2, LABEL));
    Strip { height, contents, ..Strip::default() }
}

/// Width of a column of numbers, and how far from its left end their marks stand. What is no number counts with its whole width.
fn decimal_width<'c>(maker: &mut Maker<'_>, cells: impl Iterator<Item = &'c String>, face: Face, size_pt: f64) -> (f64, f64) {
    let (mut before, mut after, mut words) = (0.0_f64, 0.0_f64, 0.0_f64);
    for cell in cells {
        let wide = maker.setter.width(face, cell, size_pt);
        if is_number(cell) {
            let left = before_mark(maker.setter.run(face, cell).as_ref(), size_pt);
            before = before.max(left);
            after = after.max(wide - left);
        } else {
            words = words.max(wide);
        }
    }
    let width = (before + after).max(words);
    (width, before + (width - before - after))
}

/// How far from the left end of a number its decimal mark stands, in mm.
fn before_mark(run: &super::face::Run, size_pt: f64) -> f64 {
    let signs = mark_at(&run.words);
    let byte = run.words.char_indices().nth(signs).map_or(run.words.len(), |(byte, _)| byte);
    let em: f64 = run.glyphs.iter().filter(|glyph| glyph.of.start < byte).map(|glyph| f64::from(glyph.advance)).sum();
    em * size_pt * super::face::PT
}

/// Where there is room left, a head of several words stands on one line.
fn widen_for_heads(maker: &mut Maker<'_>, widths: &mut [f64], table: &Table, shown: &[usize]) {
    let mut spare = spare(widths, maker.width);
    for (place, index) in shown.iter().enumerate() {
        let (head, _) = &table.columns[*index];
        let more = maker.setter.width(Face::Plain, head, maker.sizes.small) - widths[place];
        if more > 0.0 && more <= spare {
            widths[place] += more;
            spare -= more;
        }
    }
}

/// Where the columns are too wide together, the widest of words give way first, then the widest of all.
fn give_way(widths: &mut [f64], table: &Table, shown: &[usize], width: f64) {
    let room = widths.iter().sum::<f64>() + spare(widths, width);
    let step = 0.4;
    while widths.iter().sum::<f64>() > room {
        let giving = |left: bool| {
            let able =
                |place: &usize| (!left || table.columns[shown[*place]].1 == Side::Left) && widths[*place] > if left { 14.0 } else { LEAST };
            (0..widths.len()).filter(able).max_by(|one, other| widths[*one].total_cmp(&widths[*other]).then(other.cmp(one)))
        };
        match giving(true).or_else(|| giving(false)) {
            Some(place) => widths[place] -= step,
            None => break,
        }
    }
}

/// What is left of a width beside the columns and the space between them; less than none where they are too wide.
fn spare(widths: &[f64], width: f64) -> f64 {
    #[allow(clippy::cast_precision_loss, reason = "columns are few")]
    let gaps = GAP * widths.len().saturating_sub(1) as f64;
    width - gaps - widths.iter().sum::<f64>()
}

/// Places to write in take what is left; without any, the widest column of words does where the table goes across.
fn spread(widths: &mut [f64], table: &Table, shown: &[usize], width: f64) {
    let spare = spare(widths, width).max(0.0);
    let of = |wanted: Side| (0..shown.len()).filter(move |place| table.columns[shown[*place]].1 == wanted);
    let written: Vec<usize> = of(Side::Write).collect();
    let most = if table.across { f64::INFINITY } else { 30.0 };
    #[allow(clippy::cast_precision_loss, reason = "columns are few")]
    for place in &written {
        widths[*place] += (spare / written.len() as f64).min(most);
    }
    let widest = of(Side::Left).max_by(|one, other| widths[*one].total_cmp(&widths[*other]).then(other.cmp(one)));
    if let Some(place) = widest.filter(|_| table.across && written.is_empty()) {
        widths[place] += spare;
    }
}
