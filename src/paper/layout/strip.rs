//! Strips: what a page is filled with from above to below. A strip is never parted.

use std::rc::Rc;

use super::face::{ASCENT, DESCENT, PT, Setter};
use super::lines::{Line, Span, lines};
use super::mark::{Branch, Content, Mark, Node, Spot, Tag};

/// Something as wide as its column.
#[derive(Debug, Clone, Default)]
pub(super) struct Strip {
    /// In mm.
    pub height: f64,
    /// Its marks, from its upper left corner.
    pub contents: Vec<Content>,
    /// It stays with the strip below it.
    pub keep: bool,
    /// Space only: left out where a column begins.
    pub space: bool,
    /// Stands above it again where it begins a column: the heads of its table.
    pub heads: Option<Rc<Strip>>,
}

impl Strip {
    pub fn space(height: f64) -> Self {
        Self { height, space: true, keep: true, ..Self::default() }
    }

    pub fn kept(self) -> Self {
        Self { keep: true, ..self }
    }

    /// The same without a place in the tree, to be printed once more.
    pub fn again(&self) -> Self {
        let mut strip = self.clone();
        strip.contents.iter_mut().for_each(|content| content.node = None);
        strip
    }
}

/// Sizes of type and of places to write in.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Sizes {
    /// Running text in points.
    pub body: f64,
    /// Cautions, labels and heads of columns in points.
    pub small: f64,
    /// Weights in points.
    pub big: f64,
    /// Height of a place to write in, in mm.
    pub write: f64,
    /// Height of a weight's row, in mm.
    pub weight: f64,
    /// Space above a heading, in mm.
    pub above: f64,
    /// How high a drawing may be, as a share of what it asks for.
    pub drawing: f64,
}

/// Distance of base lines, in em.
pub(super) const LEADING: f64 = 1.22;

/// What strips are made with.
pub(super) struct Maker<'m> {
    pub setter: &'m mut Setter,
    pub tree: &'m mut Vec<Branch>,
    pub sizes: Sizes,
    /// Width of the column in mm.
    pub width: f64,
}

impl Maker<'_> {
    pub fn node(&mut self, tag: Tag, parent: Option<Node>) -> Node {
        self.tree.push(Branch { tag, parent });
        self.tree.len() - 1
    }

    pub fn pitch(size_pt: f64) -> f64 {
        size_pt * PT * LEADING
    }

    /// Where the base line of a line of type lies in a strip of its pitch.
    pub fn base(size_pt: f64) -> f64 {
        let em = size_pt * PT;
        (em * LEADING - em * (ASCENT + DESCENT)) / 2.0 + em * ASCENT
    }

    pub fn lines(&mut self, spans: &[Span<'_>], size_pt: f64, width: f64) -> Vec<Line> {
        lines(self.setter, spans, size_pt, width)
    }

    /// A paragraph, a strip a line, `left` mm from the column's side. Its first lines and its last stay together.
    pub fn paragraph(&mut self, spans: &[Span<'_>], size_pt: f64, left: f64, tag: Tag) -> Vec<Strip> {
        let node = self.node(tag, None);
        let width = self.width - left;
        let set = self.lines(spans, size_pt, width);
        let count = set.len();
        let strip = |(index, line): (usize, &Line)| Strip {
            height: Self::pitch(size_pt),
            contents: line.marks([left, Self::base(size_pt)], size_pt, Some(node)).collect(),
            keep: index == 0 && count > 1 || index + 2 == count,
            ..Strip::default()
        };
        set.iter().enumerate().map(strip).collect()
    }
}

/// A mark that is no part of what is read.
pub(super) fn beside(mark: Mark) -> Content {
    Content { node: None, mark }
}

/// A line across.
pub(super) fn rule(from: Spot, to: Spot, width: f64, grey: u8) -> Content {
    beside(Mark::Line { from, to, width, grey, broken: false })
}

/// A box to tick or to write in.
pub(super) fn frame(at: Spot, size: Spot, width: f64, grey: u8) -> Content {
    beside(Mark::Frame { at, size, width, grey })
}
