//! Setting a document on pages of paper: marks in millimetres, the same for the printed page and for the screen.
//!
//! Start at [`lay_out`]. Blocks become strips ([`strip`]), strips fill columns ([`fill`]), and what comes of it are [`mark`]s.

mod blocks;
pub mod face;
mod fill;
mod lines;
pub mod mark;
mod sign;
mod sketch;
mod strip;
mod table;

use blocks::strips;
use face::{Face, Setter};
use fill::{Place, fill};
use lines::{Line, Span, bold, lines, plain, size_that_fits};
use mark::{Branch, Content, Grey, Leaf, Node, Tag};
pub use mark::{Format, Laid, Mark};
use strip::{Maker, Sizes, Strip, frame, rule};

use super::block::{Block, Letterhead, Page, Paper};
use crate::texts::Texts;

/// Text and figures.
const INK: Grey = 0;
/// Labels, heads of columns, units: lighter than figures, and still read in the light of a kiln.
const LABEL: Grey = 45;
/// Lines between rows.
const HAIR: Grey = 190;

/// White all around, in mm. No printer reaches the edge.
pub const MARGIN: f64 = 8.5;
/// Space between two columns.
const BETWEEN: f64 = 6.0;
/// Head and foot in points.
const RUNNING: f64 = 7.4;

/// What a client is given has room, as long as it stays on one sheet.
const ROOMY: Sizes = Sizes { body: 10.6, small: 9.2, big: 20.0, write: 7.0, weight: 11.0, above: 4.0, drawing: 1.0 };

/// From roomy to close. A page that fits on one sheet of paper at one of these is set so; one that fits at none is set roomily on several.
const SIZES: [Sizes; 7] = [
    ROOMY,
    Sizes { body: 9.4, small: 8.4, big: 19.0, write: 6.6, weight: 10.4, above: 2.2, drawing: 1.0 },
    Sizes { body: 8.9, small: 8.0, big: 17.5, write: 6.0, weight: 9.2, above: 1.7, drawing: 1.0 },
    Sizes { body: 8.4, small: 7.6, big: 16.5, write: 5.5, weight: 8.4, above: 1.3, drawing: 1.0 },
    Sizes { body: 8.1, small: 7.3, big: 16.0, write: 5.2, weight: 7.8, above: 1.0, drawing: 1.0 },
    Sizes { body: 8.1, small: 7.3, big: 16.0, write: 5.0, weight: 7.6, above: 0.8, drawing: 0.75 },
    Sizes { body: 7.8, small: 7.0, big: 15.5, write: 4.8, weight: 7.4, above: 0.7, drawing: 0.75 },
];

/// From as large as a wall wants it to as small as may be, for pages that hang there.
const LARGE: [Sizes; 8] = [large(25.0), large(23.0), large(21.0), large(19.5), large(18.0), large(16.5), large(15.0), large(13.5)];

const fn large(body: f64) -> Sizes {
    Sizes { body, small: 0.84 * body, big: 1.6 * body, write: 0.55 * body, weight: 0.9 * body, above: 0.12 * body, drawing: 1.0 }
}

/// A title on a wall and the line under it, in points; both give way where a long one would take the page.
const WALL: [f64; 2] = [48.0, 25.0];

/// Sets a document.
#[must_use]
pub fn lay_out(paper: &Paper, format: Format, texts: &Texts) -> Laid {
    let mut sheet = Sheet { paper, format, texts, setter: Setter::default(), tree: Vec::new(), leaves: Vec::new(), sections: Vec::new() };
    for page in &paper.pages {
        sheet.page(page);
    }
    sheet.numbers();
    Laid { format, title: paper.title.clone(), sections: sheet.sections, leaves: sheet.leaves, tree: sheet.tree }
}

struct Sheet<'p> {
    paper: &'p Paper,
    format: Format,
    texts: &'p Texts,
    setter: Setter,
    tree: Vec<Branch>,
    leaves: Vec<Leaf>,
    sections: Vec<(String, usize)>,
}

/// A page as it comes out at one size.
struct Attempt {
    tree: Vec<Branch>,
    leaves: Vec<Leaf>,
}

impl Sheet<'_> {
    fn width(&self) -> f64 {
        self.format.size_mm()[0] - 2.0 * MARGIN
    }

    fn page(&mut self, page: &Page) {
        let mut one_sheet = None;
        let face = self.paper.letterhead.is_some();
        let sizes: &[Sizes] = if page.large { &LARGE } else { &SIZES };
        for sizes in sizes.iter().copied().filter(|sizes| face || *sizes != ROOMY) {
            let attempt = self.attempt(page, sizes, false);
            if attempt.leaves.len() == 1 {
                one_sheet = Some(attempt);
                break;
            }
        }
        let runs_on = if page.large { LARGE[LARGE.len() - 1] } else { SIZES[2] };
        let attempt = one_sheet.unwrap_or_else(|| self.attempt(page, runs_on, true));
        self.sections.push((page.title.clone(), self.leaves.len()));
        self.tree = attempt.tree;
        self.leaves.extend(attempt.leaves);
    }

    /// A page at one size. `on` lets the right column begin where the left one ends, rather than at the top.
    fn attempt(&mut self, page: &Page, sizes: Sizes, on: bool) -> Attempt {
        let mut tree = self.tree.clone();
        let mut leaves = vec![Leaf::default()];
        let first = self.leaves.is_empty();
        let mut y = MARGIN;
        if let Some(letterhead) = self.paper.letterhead.as_ref().filter(|_| first) {
            y = self.letterhead(&mut tree, &mut leaves[0], letterhead, y);
        }
        y = self.head(&mut tree, &mut leaves[0], y, first);
        let top = self.title(&mut tree, &mut leaves[0], page, y);
        let bottom = self.format.size_mm()[1] - MARGIN - self.foot_height() - 1.0;
        let (spare, mut spare_tree) = (&mut Leaf::default(), Vec::new());
        let head_bottom = self.head(&mut spare_tree, spare, MARGIN, false);
        let follow = self.continued(spare, page, head_bottom);
        let mut next = |at: Place| Place { y: follow, top: follow, bottom, ..at };
        let start = Place { leaf: 0, x: MARGIN, y: top, top, bottom };
        let (lead, left, right) = parts(&page.blocks);
        let width = self.width();
        let half = (width - BETWEEN) / 2.0;
        let groups = self.groups(&mut tree, sizes, width, lead);
        let after = fill(&mut leaves, start, &groups, &mut next);
        if let Some(left) = left {
            let begin = |x| Place { x, top: after.y, ..after };
            let across = MARGIN + half + BETWEEN;
            let (left, right) = (self.groups(&mut tree, sizes, half, left), self.groups(&mut tree, sizes, half, right));
            if on {
                // One column after the other, then the next sheet of paper.
                let both: Vec<Vec<Strip>> = left.into_iter().chain(right).collect();
                let mut turn = |at: Place| {
                    if at.x < across - 1.0 {
                        let top = if at.leaf == after.leaf + 1 { after.y } else { follow };
                        Place { leaf: at.leaf - 1, x: across, y: top, top, bottom }
                    } else {
                        Place { x: MARGIN, y: follow, top: follow, bottom, ..at }
                    }
                };
                fill(&mut leaves, begin(MARGIN), &both, &mut turn);
            } else {
                fill(&mut leaves, begin(MARGIN), &left, &mut next);
                fill(&mut leaves, begin(across), &right, &mut next);
            }
        }
        for leaf in leaves.iter_mut().skip(1) {
            let y = self.head(&mut tree, leaf, MARGIN, false);
            self.continued(leaf, page, y);
        }
        Attempt { tree, leaves }
    }

    /// The strips of blocks, step by step.
    fn groups(&mut self, tree: &mut Vec<Branch>, sizes: Sizes, width: f64, blocks: &[Block]) -> Vec<Vec<Strip>> {
        let mut maker = Maker { setter: &mut self.setter, tree, sizes, width };
        let mut groups: Vec<Vec<Strip>> = Vec::new();
        for block in blocks {
            let strips = strips(&mut maker, block);
            match groups.last_mut().filter(|_| !matches!(block, Block::Heading(_))) {
                Some(group) => group.extend(strips),
                None => groups.push(strips),
            }
        }
        groups
    }

    fn set(&mut self, span: Span<'_>, size_pt: f64, width: f64) -> Vec<Line> {
        lines(&mut self.setter, &[span], size_pt, width)
    }

    /// The studio's face, and where it ends.
    fn letterhead(&mut self, tree: &mut Vec<Branch>, leaf: &mut Leaf, letterhead: &Letterhead, top: f64) -> f64 {
        let mut left = MARGIN;
        let mut bottom = top;
        if let Some(raster) = letterhead.picture.as_ref().filter(|raster| raster.width > 0 && raster.height > 0) {
            let (wide, high) = (f64::from(raster.width), f64::from(raster.height));
            let scale = (60.0 / wide).min(24.0 / high);
            let node = node(tree, Tag::Figure(letterhead.name.clone()));
            let size = [wide * scale, high * scale];
            let mark = Mark::Picture { at: [left, top], size, raster: std::sync::Arc::clone(raster) };
            leaf.contents.push(Content { node: Some(node), mark });
            left += size[0] + 5.0;
            bottom = top + size[1];
        }
        let width = self.width() + MARGIN - left;
        let mut y = top;
        let named = (!letterhead.name.is_empty()).then_some((bold(&letterhead.name), 15.0));
        for (span, size) in named.into_iter().chain(letterhead.address.iter().map(|line| (plain(line), 9.0))) {
            let node = node(tree, Tag::Paragraph);
            for line in self.set(span, size, width) {
                leaf.contents.extend(line.marks([left, y + Maker::base(size)], size, Some(node)));
                y += Maker::pitch(size);
            }
        }
        bottom.max(y) + 3.0
    }

    /// What runs at the head of every page, and where it ends. It is read once.
    fn head(&mut self, tree: &mut Vec<Branch>, leaf: &mut Leaf, top: f64, read: bool) -> f64 {
        let width = self.width();
        let mut y = top;
        // Under the studio's face its name need not stand again.
        let named = read && self.paper.letterhead.is_some();
        for (row, (left, right)) in self.paper.head.iter().enumerate() {
            let left = if named && row == 0 { "" } else { left.as_str() };
            let span = |words| Span { face: Face::Plain, grey: LABEL, words };
            let rights = self.set(span(right), RUNNING, width * 0.45);
            let wide = rights.iter().map(|line| line.width).fold(0.0, f64::max);
            let lefts = self.set(span(left), RUNNING, width - wide - 4.0);
            let node = (read && !(left.is_empty() && right.is_empty())).then(|| node(tree, Tag::Paragraph));
            let pitch = Maker::pitch(RUNNING);
            for number in 0..lefts.len().max(rights.len()) {
                let base = y + Maker::base(RUNNING);
                if let Some(line) = lefts.get(number) {
                    leaf.contents.extend(line.marks([MARGIN, base], RUNNING, node));
                }
                if let Some(line) = rights.get(number) {
                    leaf.contents.extend(line.marks([MARGIN + width - line.width, base], RUNNING, node));
                }
                y += pitch;
            }
        }
        y + 0.6
    }

    /// The title of a page, beside what is scratched into the flask; where it ends.
    fn title(&mut self, tree: &mut Vec<Branch>, leaf: &mut Leaf, page: &Page, top: f64) -> f64 {
        let mut left = MARGIN;
        let mut bottom = top;
        if !page.scratch.is_empty() {
            let high = 13.0;
            let wide = (self.setter.width(Face::Bold, &page.scratch, 30.0) + 6.0).clamp(high, 44.0);
            let size = size_that_fits(&mut self.setter, Face::Bold, &page.scratch, 30.0, 7.0, wide - 3.0);
            leaf.contents.push(frame([left, top + 0.4], [wide, high], 0.7, INK));
            let node = node(tree, Tag::Paragraph);
            let lines = self.set(bold(&page.scratch), size, wide - 3.0);
            for line in lines.iter().take(1) {
                let base = top + 0.4 + high / 2.0 + 0.365 * size * face::PT;
                leaf.contents.extend(line.marks([left + (wide - line.width) / 2.0, base], size, Some(node)));
            }
            left += wide + 4.0;
            bottom = top + 0.4 + high + 1.2;
        }
        let node_of_title = node(tree, Tag::Heading(1, page.title.clone()));
        let mut y = top;
        let width = self.width() + MARGIN - left;
        let (size, under) = if page.large {
            (size_that_fits(&mut self.setter, Face::Bold, &page.title, WALL[0], 0.6 * WALL[0], width), bold(&page.under))
        } else {
            (16.0, plain(&page.under))
        };
        for line in self.set(bold(&page.title), size, width) {
            leaf.contents.extend(line.marks([left, y + Maker::base(size)], size, Some(node_of_title)));
            y += Maker::pitch(size);
        }
        if !page.under.is_empty() {
            let node = node(tree, Tag::Paragraph);
            let size = if page.large { WALL[1] } else { 9.4 };
            for line in self.set(under, size, width) {
                leaf.contents.extend(line.marks([left, y + Maker::base(size)], size, Some(node)));
                y += Maker::pitch(size);
            }
        }
        bottom.max(y + 1.0)
    }

    /// The title where a page runs on; it is no part of what is read.
    fn continued(&mut self, leaf: &mut Leaf, page: &Page, top: f64) -> f64 {
        let words = self.texts.say("page-continued", &[("title", page.title.as_str().into())]);
        let mut y = top;
        for line in self.set(bold(&words), 12.0, self.width()) {
            leaf.contents.extend(line.marks([MARGIN, y + Maker::base(12.0)], 12.0, None));
            y += Maker::pitch(12.0);
        }
        y + 1.5
    }

    fn foot_width(&self) -> f64 {
        self.width() - 32.0
    }

    fn foot_height(&mut self) -> f64 {
        let width = self.foot_width();
        let paper = self.paper;
        let count = self.set(plain(&paper.foot), RUNNING, width).len().max(1);
        #[allow(clippy::cast_precision_loss, reason = "lines are few")]
        let lines = count as f64;
        Maker::pitch(RUNNING) * lines + 1.2
    }

    /// The foot of every page: what is always said, and the page's number among all.
    fn numbers(&mut self) {
        let count = self.leaves.len();
        let (width, height) = (self.width(), self.format.size_mm()[1]);
        let top = height - MARGIN - self.foot_height();
        let paper = self.paper;
        let said = self.set(Span { face: Face::Plain, grey: LABEL, words: &paper.foot }, RUNNING, self.foot_width());
        for index in 0..count {
            let words = self.texts.say("page-of", &[("page", (index + 1).into()), ("pages", count.into())]);
            let number = self.set(Span { face: Face::Plain, grey: LABEL, words: &words }, RUNNING, 30.0);
            let read = (index + 1 == count && !paper.foot.is_empty()).then(|| node(&mut self.tree, Tag::Paragraph));
            let leaf = &mut self.leaves[index];
            leaf.contents.push(rule([MARGIN, top], [MARGIN + width, top], 0.2, LABEL));
            let mut y = top + 1.0;
            for line in &said {
                leaf.contents.extend(line.marks([MARGIN, y + Maker::base(RUNNING)], RUNNING, read));
                y += Maker::pitch(RUNNING);
            }
            for line in number.iter().take(1) {
                let at = [MARGIN + width - line.width, top + 1.0 + Maker::base(RUNNING)];
                leaf.contents.extend(line.marks(at, RUNNING, None));
            }
        }
    }
}

fn node(tree: &mut Vec<Branch>, tag: Tag) -> Node {
    tree.push(Branch { tag, parent: None });
    tree.len() - 1
}

/// What goes across the page, and what stands in its left and right columns where it has them.
fn parts(blocks: &[Block]) -> (&[Block], Option<&[Block]>, &[Block]) {
    let mut parts = blocks.split(|block| *block == Block::Column);
    let (lead, left, right) = (parts.next(), parts.next(), parts.next());
    (lead.unwrap_or_default(), left, right.unwrap_or_default())
}
