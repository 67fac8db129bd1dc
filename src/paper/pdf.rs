//! A document that is set, as a PDF: type embedded in part, text that can be searched and copied, a tree for those who hear it, and the same
//! bytes for the same document.

use std::collections::HashMap;
use std::num::NonZeroU16;
use std::sync::Arc;

use jiff::civil::Date;
use krilla::color::luma;
use krilla::configure::{Accessibility, Configuration, ConfigurationBuilder};
use krilla::destination::XyzDestination;
use krilla::geom::{Path, PathBuilder, Point, Size, Transform};
use krilla::image::Image;
use krilla::metadata::{DateTime, Metadata};
use krilla::num::NormalizedF32;
use krilla::outline::{Outline, OutlineNode};
use krilla::page::PageSettings;
use krilla::paint::{Fill, FillRule, Stroke, StrokeDash};
use krilla::surface::Surface;
use krilla::tagging::{
    Artifact, ArtifactType, ContentTag, Identifier, Node as TagNode, SpanTag, TableHeaderScope, Tag as PdfTag, TagGroup, TagKind, TagTree,
};
use krilla::text::{Font, GlyphId, KrillaGlyph};
use krilla::{Document, SerializeSettings};

use super::block::Raster;
use super::layout::face::{Face, PT, Run};
use super::layout::mark::{Branch, Content, Grey, Laid, Leaf, Mark, Spot, Tag};

/// What stands in a document beside its pages.
#[derive(Debug, Clone)]
pub struct About<'a> {
    /// Its language, as a code such as `en`.
    pub language: &'a str,
    /// Who gives it out; empty where nobody says.
    pub author: &'a str,
    /// Of which day it is.
    pub on: Date,
}

/// Why a document could not be written.
#[derive(Debug, thiserror::Error)]
#[error("this document cannot be written as a PDF ({0})")]
pub struct PdfError(String);

/// A document as a PDF.
///
/// # Errors
/// [`PdfError`] where the document holds something that no PDF may, such as a page without size.
pub fn pdf(laid: &Laid, about: &About<'_>) -> Result<Vec<u8>, PdfError> {
    write(laid, about, accessible()).or_else(|_| write(laid, about, Configuration::default()))
}

/// The rules of PDF/UA-1 (ISO 14289-1) for what can be heard as well as seen.
fn accessible() -> Configuration {
    ConfigurationBuilder::new().with_accessibility_validator(Accessibility::UA1).finish().unwrap_or_default()
}

fn write(laid: &Laid, about: &About<'_>, configuration: Configuration) -> Result<Vec<u8>, PdfError> {
    let mut document = Document::new_with(SerializeSettings { configuration, enable_tagging: true, ..SerializeSettings::default() });
    let mut writer = Writer::new(laid.tree.len())?;
    let [wide, high] = laid.format.size_mm();
    for leaf in &laid.leaves {
        let settings = PageSettings::from_wh(pt(wide), pt(high)).ok_or_else(|| PdfError("a page without size".to_owned()))?;
        let mut page = document.start_page_with(settings);
        let mut surface = page.surface();
        writer.leaf(&mut surface, leaf);
        surface.finish();
        page.finish();
    }
    document.set_tag_tree(writer.tag_tree(&laid.tree));
    document.set_outline(outline(laid));
    document.set_metadata(metadata(laid, about));
    let mut bytes = document.finish().map_err(|error| PdfError(format!("{error:?}")))?;
    without_suspects(&mut bytes);
    Ok(bytes)
}

/// `Suspects false` says what is so anyway (ISO 32000-1, table 321), and a widespread reader complains of it: blanks of the same length
/// stand in its place.
fn without_suspects(bytes: &mut [u8]) {
    let at = |bytes: &[u8], word: &[u8]| bytes.windows(word.len()).position(|window| window == word);
    let Some(from) = at(bytes, b"/MarkInfo<<") else { return };
    let word = b"/Suspects false";
    let Some(rest) = bytes.get_mut(from..) else { return };
    let end = rest.len().min(80);
    if let Some(found) = at(&rest[..end], word) {
        rest[found..found + word.len()].fill(b' ');
    }
}

fn outline(laid: &Laid) -> Outline {
    let mut outline = Outline::new();
    for (title, page) in &laid.sections {
        outline.push_child(OutlineNode::new(title.clone(), XyzDestination::new(*page, Point::from_xy(0.0, 0.0))));
    }
    outline
}

fn metadata(laid: &Laid, about: &About<'_>) -> Metadata {
    let year = u16::try_from(about.on.year()).unwrap_or(0);
    let part = |part: i8| u8::try_from(part).unwrap_or(1);
    let on = DateTime::new(year).month(part(about.on.month())).day(part(about.on.day()));
    let metadata = Metadata::new().title(laid.title.clone()).language(about.language.to_owned()).creator("Pourbook".to_owned());
    let metadata = metadata.producer("Pourbook".to_owned()).creation_date(on);
    if about.author.is_empty() { metadata } else { metadata.authors(vec![about.author.to_owned()]) }
}

#[allow(clippy::cast_possible_truncation, reason = "a page has few digits")]
fn pt(mm: f64) -> f32 {
    (mm / PT) as f32
}

fn point(spot: Spot) -> Point {
    Point::from_xy(pt(spot[0]), pt(spot[1]))
}

struct Writer {
    fonts: [Font; 2],
    /// What was drawn for each node of the tree.
    drawn: Vec<Vec<Identifier>>,
    images: HashMap<*const Raster, Image>,
}

impl Writer {
    fn new(nodes: usize) -> Result<Self, PdfError> {
        let font = |face: Face| Font::new(face.data().into(), 0).ok_or_else(|| PdfError("the font".to_owned()));
        Ok(Self { fonts: [font(Face::Plain)?, font(Face::Bold)?], drawn: vec![Vec::new(); nodes], images: HashMap::new() })
    }

    /// Marks of one node that follow each other are drawn as one.
    fn leaf(&mut self, surface: &mut Surface<'_>, leaf: &Leaf) {
        for group in leaf.contents.chunk_by(|one, other| one.node == other.node) {
            let Some(node) = group.first().map(|content| content.node) else { continue };
            let text = group.iter().all(|content| matches!(content.mark, Mark::Text { .. }));
            let tag = match node {
                None => ContentTag::Artifact(Artifact::with_kind(ArtifactType::PaginationOther)),
                Some(_) if text => ContentTag::Span(SpanTag::empty()),
                Some(_) => ContentTag::Other,
            };
            let drawn = surface.start_tagged(tag);
            group.iter().for_each(|content| self.mark(surface, content));
            surface.end_tagged();
            if let Some(of) = node.and_then(|node| self.drawn.get_mut(node)) {
                of.push(drawn);
            }
        }
    }

    fn mark(&mut self, surface: &mut Surface<'_>, content: &Content) {
        surface.set_fill(None);
        surface.set_stroke(None);
        match &content.mark {
            Mark::Text { at, run, size_pt, grey } => {
                surface.set_fill(Some(fill(*grey)));
                self.text(surface, *at, run, *size_pt);
            }
            Mark::Line { from, to, width, grey, broken } => {
                let dash = broken.then(|| StrokeDash { array: vec![pt(1.2), pt(0.9)], offset: 0.0 });
                surface.set_stroke(Some(Stroke { dash, ..stroke(*grey, *width) }));
                draw(surface, path(&[*from, *to], false));
            }
            Mark::Area { corners, grey } => {
                surface.set_fill(Some(fill(*grey)));
                draw(surface, path(corners, true));
            }
            Mark::Frame { at: [x, y], size: [wide, high], width, grey } => {
                surface.set_stroke(Some(stroke(*grey, *width)));
                draw(surface, path(&[[*x, *y], [x + wide, *y], [x + wide, y + high], [*x, y + high]], true));
            }
            Mark::Disc { centre, radius, fill: inside, edge } => {
                surface.set_fill(inside.map(fill));
                surface.set_stroke(edge.map(|grey| stroke(grey, 0.25)));
                draw(surface, circle(*centre, *radius));
            }
            Mark::Picture { at, size, raster } => self.picture(surface, *at, *size, raster),
        }
    }

    fn text(&self, surface: &mut Surface<'_>, at: Spot, run: &Run, size_pt: f64) {
        let glyph = |glyph: &super::layout::face::Glyph| {
            let [x, y] = glyph.offset;
            KrillaGlyph::new(GlyphId::new(glyph.id), glyph.advance, x, y, 0.0, glyph.of.clone(), None)
        };
        let glyphs: Vec<KrillaGlyph> = run.glyphs.iter().map(glyph).collect();
        if glyphs.is_empty() {
            return;
        }
        #[allow(clippy::cast_possible_truncation, reason = "a size of type has few digits")]
        let size = size_pt as f32;
        surface.draw_glyphs(point(at), &glyphs, self.fonts[run.face as usize].clone(), &run.words, size, false);
    }

    fn picture(&mut self, surface: &mut Surface<'_>, at: Spot, size: Spot, raster: &Arc<Raster>) {
        let whole = usize::try_from(u64::from(raster.width) * u64::from(raster.height) * 4).unwrap_or(usize::MAX);
        let Some(size) = Size::from_wh(pt(size[0]), pt(size[1])).filter(|_| raster.rgba.len() == whole && whole > 0) else { return };
        let made = || Image::from_rgba8(raster.rgba.clone(), raster.width, raster.height);
        let image = self.images.entry(Arc::as_ptr(raster)).or_insert_with(made).clone();
        surface.push_transform(&Transform::from_translate(pt(at[0]), pt(at[1])));
        surface.draw_image(image, size);
        surface.pop();
    }

    /// The tree with what was drawn for it. What nothing was drawn for is left out.
    fn tag_tree(self, tree: &[Branch]) -> TagTree {
        let mut groups: Vec<TagGroup> = tree.iter().map(|branch| TagGroup::new(kind(&branch.tag))).collect();
        for (group, drawn) in groups.iter_mut().zip(self.drawn) {
            group.children.extend(drawn.into_iter().map(TagNode::Leaf));
        }
        // A node stands after what it belongs to, so that from the last on every group is whole before it is handed on.
        let mut root: Vec<TagNode> = Vec::new();
        let mut held: Vec<Vec<TagNode>> = vec![Vec::new(); tree.len()];
        for (index, branch) in tree.iter().enumerate().rev() {
            let Some(mut group) = groups.pop() else { continue };
            let mut below = std::mem::take(&mut held[index]);
            below.reverse();
            group.children.extend(below);
            if group.children.is_empty() {
                // An empty cell keeps its place in its row.
                if !matches!(branch.tag, Tag::Cell | Tag::HeadCell) {
                    continue;
                }
            }
            match branch.parent {
                Some(parent) => held[parent].push(TagNode::Group(group)),
                None => root.push(TagNode::Group(group)),
            }
        }
        root.reverse();
        let mut tags = TagTree::new();
        root.into_iter().for_each(|node| tags.push(node));
        tags
    }
}

fn kind(tag: &Tag) -> TagKind {
    match tag {
        Tag::Heading(level, words) => PdfTag::Hn(NonZeroU16::new(*level).unwrap_or(NonZeroU16::MIN), Some(words.clone())).into(),
        Tag::Paragraph => PdfTag::P.into(),
        Tag::Table => PdfTag::Table.into(),
        Tag::Row => PdfTag::TR.into(),
        Tag::HeadCell => PdfTag::TH(TableHeaderScope::Column).into(),
        Tag::Cell => PdfTag::TD.into(),
        Tag::Figure(says) => PdfTag::Figure(Some(says.clone())).into(),
    }
}

fn fill(grey: Grey) -> Fill {
    Fill { paint: luma::Color::new(grey).into(), opacity: NormalizedF32::ONE, rule: FillRule::NonZero }
}

fn stroke(grey: Grey, width_mm: f64) -> Stroke {
    Stroke { paint: luma::Color::new(grey).into(), width: pt(width_mm), ..Stroke::default() }
}

fn draw(surface: &mut Surface<'_>, path: Option<Path>) {
    if let Some(path) = path {
        surface.draw_path(&path);
    }
}

fn path(spots: &[Spot], closed: bool) -> Option<Path> {
    let mut builder = PathBuilder::new();
    for (index, spot) in spots.iter().enumerate() {
        let [x, y] = [pt(spot[0]), pt(spot[1])];
        if index == 0 { builder.move_to(x, y) } else { builder.line_to(x, y) }
    }
    if closed {
        builder.close();
    }
    builder.finish()
}

/// Four arcs; the control points of a quarter circle stand 0.5523 of the radius off its ends.
fn circle([x, y]: Spot, radius: f64) -> Option<Path> {
    let (r, c) = (radius, radius * 0.552_284_75);
    let mut builder = PathBuilder::new();
    builder.move_to(pt(x + r), pt(y));
    let quarters = [
        [[x + r, y + c], [x + c, y + r], [x, y + r]],
        [[x - c, y + r], [x - r, y + c], [x - r, y]],
        [[x - r, y - c], [x - c, y - r], [x, y - r]],
        [[x + c, y - r], [x + r, y - c], [x + r, y]],
    ];
    for [one, other, end] in quarters {
        builder.cubic_to(pt(one[0]), pt(one[1]), pt(other[0]), pt(other[1]), pt(end[0]), pt(end[1]));
    }
    builder.close();
    builder.finish()
}
