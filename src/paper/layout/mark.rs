//! What a page is made of once it is set: marks in millimetres from the page's upper left corner, and the tree of what they belong to.

use std::sync::Arc;

use super::face::{ASCENT, DESCENT, PT, Run};
use crate::paper::block::Raster;

/// The size of the paper.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, serde::Serialize, serde::Deserialize)]
pub enum Format {
    /// 210 × 297 mm.
    #[default]
    A4,
    /// 8½ × 11 in.
    Letter,
}

impl Format {
    /// Width and height in mm.
    #[must_use]
    pub const fn size_mm(self) -> [f64; 2] {
        match self {
            Self::A4 => [210.0, 297.0],
            Self::Letter => [215.9, 279.4],
        }
    }
}

/// A place on the page, in mm to the right and down.
pub type Spot = [f64; 2];

/// Grey: 0 is black, 255 the paper.
pub type Grey = u8;

/// Something on a page.
#[derive(Debug, Clone, PartialEq)]
pub enum Mark {
    /// Words, from the left end of their base line.
    Text {
        /// Where.
        at: Spot,
        /// The words.
        run: Arc<Run>,
        /// Their size in points.
        size_pt: f64,
        /// How dark.
        grey: Grey,
    },
    /// A line.
    Line {
        /// From here.
        from: Spot,
        /// To here.
        to: Spot,
        /// Its width in mm.
        width: f64,
        /// How dark.
        grey: Grey,
        /// Broken.
        broken: bool,
    },
    /// An area whose corners turn one way.
    Area {
        /// The corners.
        corners: Vec<Spot>,
        /// What fills it.
        grey: Grey,
    },
    /// An upright frame.
    Frame {
        /// Its upper left corner.
        at: Spot,
        /// Its width and height.
        size: Spot,
        /// The width of its line, in mm.
        width: f64,
        /// How dark.
        grey: Grey,
    },
    /// A disc or a ring.
    Disc {
        /// Its centre.
        centre: Spot,
        /// Its radius.
        radius: f64,
        /// What fills it.
        fill: Option<Grey>,
        /// What goes round it.
        edge: Option<Grey>,
    },
    /// A picture.
    Picture {
        /// Its upper left corner.
        at: Spot,
        /// Its width and height.
        size: Spot,
        /// Its pixels.
        raster: Arc<Raster>,
    },
}

/// An upright rectangle: left, top, right, bottom in mm.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Bounds {
    /// Left side.
    pub left: f64,
    /// Upper side.
    pub top: f64,
    /// Right side.
    pub right: f64,
    /// Lower side.
    pub bottom: f64,
}

impl Mark {
    /// The same mark further to the right and down.
    #[must_use]
    pub fn moved(&self, by: Spot) -> Self {
        let to = |spot: &Spot| [spot[0] + by[0], spot[1] + by[1]];
        let mut moved = self.clone();
        match &mut moved {
            Self::Text { at, .. } | Self::Frame { at, .. } | Self::Picture { at, .. } => *at = to(at),
            Self::Line { from, to: end, .. } => (*from, *end) = (to(from), to(end)),
            Self::Area { corners, .. } => corners.iter_mut().for_each(|corner| *corner = to(corner)),
            Self::Disc { centre, .. } => *centre = to(centre),
        }
        moved
    }

    /// What it covers.
    #[must_use]
    pub fn bounds(&self) -> Bounds {
        let around = |spots: &[Spot], by: f64| Bounds {
            left: spots.iter().map(|spot| spot[0]).fold(f64::INFINITY, f64::min) - by,
            top: spots.iter().map(|spot| spot[1]).fold(f64::INFINITY, f64::min) - by,
            right: spots.iter().map(|spot| spot[0]).fold(f64::NEG_INFINITY, f64::max) + by,
            bottom: spots.iter().map(|spot| spot[1]).fold(f64::NEG_INFINITY, f64::max) + by,
        };
        match self {
            Self::Text { at: [x, y], run, size_pt, .. } => {
                let em = size_pt * PT;
                Bounds { left: *x, top: y - ASCENT * em, right: x + run.width * em, bottom: y + DESCENT * em }
            }
            Self::Line { from, to, width, .. } => around(&[*from, *to], width / 2.0),
            Self::Area { corners, .. } => around(corners, 0.0),
            Self::Frame { at, size, width, .. } => around(&[*at, [at[0] + size[0], at[1] + size[1]]], width / 2.0),
            Self::Disc { centre, radius, .. } => around(&[*centre], *radius),
            Self::Picture { at, size, .. } => around(&[*at, [at[0] + size[0], at[1] + size[1]]], 0.0),
        }
    }
}

/// What a mark belongs to, for those who hear the page.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Tag {
    /// A heading of a level from 1, with its words.
    Heading(u16, String),
    /// A paragraph.
    Paragraph,
    /// A table.
    Table,
    /// A row of a table.
    Row,
    /// The head of a column.
    HeadCell,
    /// A cell.
    Cell,
    /// A drawing or a picture, with its sentence.
    Figure(String),
}

/// The number of a node.
pub type Node = usize;

/// A node of the tree: what it is, and what it belongs to; the document itself where that is nothing.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Branch {
    /// What it is.
    pub tag: Tag,
    /// What it belongs to.
    pub parent: Option<Node>,
}

/// Marks that belong together. Without a node they are no part of what is read: rules, boxes, repeated heads, page numbers.
#[derive(Debug, Clone, PartialEq)]
pub struct Content {
    /// What they belong to.
    pub node: Option<Node>,
    /// A mark.
    pub mark: Mark,
}

/// A page that is set.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Leaf {
    /// What stands on it, from the back to the front.
    pub contents: Vec<Content>,
}

/// A document that is set.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Laid {
    /// The paper.
    pub format: Format,
    /// What the document is called.
    pub title: String,
    /// Where each of its sections begins: what it is called, and on which page, from 0.
    pub sections: Vec<(String, usize)>,
    /// Its pages.
    pub leaves: Vec<Leaf>,
    /// The tree of what stands on them; a node stands after what it belongs to.
    pub tree: Vec<Branch>,
}

impl Bounds {
    /// Do the two share more than an edge?
    #[must_use]
    pub fn meets(&self, other: &Self) -> bool {
        self.left < other.right && other.left < self.right && self.top < other.bottom && other.top < self.bottom
    }
}
