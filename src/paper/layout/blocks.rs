//! From the blocks of a page to strips of its column.

use super::face::Face;
use super::lines::{Line, Span, bold, plain, size_that_fits};
use super::mark::{Content, Mark, Tag};
use super::sign::sign;
use super::sketch::drawing;
use super::strip::{Maker, Strip, beside, frame, rule};
use super::table::{BOX, table};
use super::{INK, LABEL};
use crate::paper::block::{BigWeight, Block, Field, Marked, Sign, Thumbnail, WriteIn};

/// Space between the halves of a column, in mm.
const BETWEEN: f64 = 2.4;
/// Side of a thumbnail in mm.
const THUMB: f64 = 13.0;
/// Width a thumbnail takes with its name, in mm.
pub(super) const CELL: f64 = THUMB + 6.0;

/// The strips of a block.
pub(super) fn strips(maker: &mut Maker<'_>, block: &Block) -> Vec<Strip> {
    let mut strips = match block {
        Block::Column => return Vec::new(),
        Block::Heading(words) => return heading(maker, words),
        Block::Fields(list) => fields(maker, list),
        Block::Weights(weights) => weights.iter().map(|one| weight(maker, one)).collect(),
        Block::Table(of) => table(maker, of),
        Block::Marked(lines) => lines.iter().flat_map(|line| marked(maker, line)).collect(),
        Block::Words(words) if words.is_empty() => return Vec::new(),
        Block::Words(words) => maker.paragraph(&[plain(words)], maker.sizes.body, 0.0, Tag::Paragraph),
        Block::Steps(list) => steps(maker, list),
        Block::WriteIn(asked) => write_in(maker, asked),
        Block::Drawing(of) => drawing(maker, of),
        Block::Thumbnails(list) => thumbnails(maker, list),
        Block::Sign(asked) => vec![to_sign(maker, asked)],
    };
    strips.push(Strip { keep: false, ..Strip::space(1.0) });
    strips
}

fn heading(maker: &mut Maker<'_>, words: &str) -> Vec<Strip> {
    let size_pt = maker.sizes.body * 1.14;
    let mut strips = vec![Strip::space(maker.sizes.above)];
    let mut set = maker.paragraph(&[bold(words)], size_pt, 0.0, Tag::Heading(2, words.to_owned()));
    if let Some(first) = set.first_mut() {
        first.height += 0.8;
        first.contents.iter_mut().for_each(|content| content.mark = content.mark.moved([0.0, 0.8]));
        first.contents.push(rule([0.0, 0.2], [maker.width, 0.2], 0.4, INK));
    }
    strips.extend(set);
    strips.into_iter().map(Strip::kept).collect()
}

/// Short fields stand side by side; a long one has a line of its own.
fn fields(maker: &mut Maker<'_>, fields: &[Field]) -> Vec<Strip> {
    let size = maker.sizes.body;
    let half = (maker.width - BETWEEN) / 2.0;
    let label_mm = |maker: &mut Maker<'_>, field: &Field| maker.setter.width(Face::Plain, &field.label, maker.sizes.small) + 1.6;
    let measured: Vec<[f64; 2]> =
        fields.iter().map(|field| [label_mm(maker, field), maker.setter.width(Face::Plain, &field.value, size)]).collect();
    // Values begin below each other, there where the most fields find room in half a column.
    let fits = |at: f64, [label, value]: [f64; 2]| label <= at + 1e-9 && at + value <= half;
    let count = |at: f64| measured.iter().filter(|field| fits(at, **field)).count();
    let offered = measured.iter().map(|[label, _]| *label).filter(|label| *label < half * 0.75);
    let widest = offered.max_by(|one, other| count(*one).cmp(&count(*other)).then(other.total_cmp(one))).unwrap_or(0.0);
    let short: Vec<bool> = measured.iter().map(|field| fits(widest, *field)).collect();
    let mut strips = Vec::new();
    let mut done = vec![false; fields.len()];
    for (index, field) in fields.iter().enumerate() {
        if std::mem::replace(&mut done[index], true) {
            continue;
        }
        if !short[index] {
            let label = label_mm(maker, field);
            strips.extend(long_field(maker, field, widest.max(if label < maker.width * 0.4 { label } else { 0.0 })));
            continue;
        }
        let mut strip = field_cell(maker, field, widest);
        // The next short one stands beside it, even where a long one comes between.
        if let Some(next) = (index + 1..fields.len()).find(|next| short[*next] && !done[*next]) {
            done[next] = true;
            let cell = field_cell(maker, &fields[next], widest);
            strip.contents.extend(moved(cell.contents, half + BETWEEN));
        }
        strips.push(strip);
    }
    strips
}

fn moved(contents: Vec<Content>, by: f64) -> impl Iterator<Item = Content> {
    contents.into_iter().map(move |content| Content { mark: content.mark.moved([by, 0.0]), ..content })
}

fn label(words: &str) -> Span<'_> {
    Span { face: Face::Plain, grey: LABEL, words }
}

/// A label and its value on one line.
fn field_cell(maker: &mut Maker<'_>, field: &Field, at: f64) -> Strip {
    let node = maker.node(Tag::Paragraph, None);
    let (size, small) = (maker.sizes.body, maker.sizes.small);
    let mut contents = Vec::new();
    let base = Maker::base(size);
    for line in maker.lines(&[label(&field.label)], small, at) {
        contents.extend(line.marks([0.0, base], small, Some(node)));
    }
    for line in maker.lines(&[plain(&field.value)], size, f64::INFINITY) {
        contents.extend(line.marks([at, base], size, Some(node)));
    }
    Strip { height: Maker::pitch(size), contents, ..Strip::default() }
}

/// A value that needs lines of its own, beside its label or below it.
fn long_field(maker: &mut Maker<'_>, field: &Field, at: f64) -> Vec<Strip> {
    let (size, small) = (maker.sizes.body, maker.sizes.small);
    let node = maker.node(Tag::Paragraph, None);
    let labels = maker.lines(&[label(&field.label)], small, if at > 0.0 { at } else { maker.width });
    let values = maker.lines(&[plain(&field.value)], size, maker.width - at);
    let marks = |line: &Line, x: f64, size_pt: f64| line.marks([x, Maker::base(size)], size_pt, Some(node)).collect::<Vec<_>>();
    let strip = |contents| Strip { height: Maker::pitch(size), contents, ..Strip::default() };
    if at > 0.0 {
        let count = labels.len().max(values.len());
        let row = |number: usize| {
            let mut contents = labels.get(number).map(|line| marks(line, 0.0, small)).unwrap_or_default();
            contents.extend(values.get(number).map(|line| marks(line, at, size)).unwrap_or_default());
            strip(contents)
        };
        return (0..count).map(row).collect();
    }
    let above = labels.iter().map(|line| strip(marks(line, 0.0, small)).kept());
    above.chain(values.iter().map(|line| strip(marks(line, 3.0_f64.min(at + 3.0), size)))).collect()
}

/// A box, what to weigh, how much, and a place for what was really weighed.
fn weight(maker: &mut Maker<'_>, weight: &BigWeight) -> Strip {
    let node = maker.node(Tag::Paragraph, None);
    let sizes = maker.sizes;
    let written = (maker.width * 0.27).clamp(22.0, 38.0);
    let left = 6.0;
    let right = maker.width - written - 2.5;
    let bare = right - left;
    let known = weight.value.starts_with(|sign: char| sign.is_ascii_digit() || sign == '−');
    let less = if weight.part { 0.78 } else { 1.0 };
    let asked = if known { sizes.big * less } else { sizes.body };
    let size = size_that_fits(maker.setter, Face::Bold, &weight.value, asked, 5.0, bare * 0.62);
    let values = maker.lines(&[bold(&weight.value)], size, bare * 0.62);
    let wide = values.iter().map(|line| line.width).fold(0.0, f64::max);
    let labels = maker.lines(&[bold(&weight.label)], sizes.body, bare - wide - 2.5);
    let notes = if weight.note.is_empty() { Vec::new() } else { maker.lines(&[plain(&weight.note)], sizes.small, bare - wide - 2.5) };
    let (line, note) = (Maker::pitch(sizes.body), Maker::pitch(sizes.small));
    #[allow(clippy::cast_precision_loss, reason = "lines are few")]
    let (text, shown) = (line * labels.len() as f64 + note * notes.len() as f64, Maker::pitch(size) * values.len() as f64);
    let height = (sizes.weight * less).max(text + 1.0).max(shown + 0.6);
    let mut contents = vec![frame([0.3, (height - BOX * 1.2) / 2.0], [BOX * 1.2, BOX * 1.2], 0.4, INK)];
    let mut y = (height - text) / 2.0;
    for one in &labels {
        contents.extend(one.marks([left, y + Maker::base(sizes.body)], sizes.body, Some(node)));
        y += line;
    }
    for one in &notes {
        contents.extend(one.marks([left, y + Maker::base(sizes.small)], sizes.small, Some(node)));
        y += note;
    }
    let mut y = (height - shown) / 2.0;
    for one in &values {
        contents.extend(one.marks([right - one.width, y + Maker::base(size)], size, Some(node)));
        y += Maker::pitch(size);
    }
    contents.extend(place(maker, [maker.width - written, 0.6], [written, height - 1.2], weight.unit));
    Strip { height, contents, ..Strip::default() }
}

/// A frame to write in, its unit at its right end.
fn place(maker: &mut Maker<'_>, at: [f64; 2], size: [f64; 2], unit: &str) -> Vec<Content> {
    let mut contents = vec![frame(at, size, 0.25, INK)];
    if !unit.is_empty() {
        let small = maker.sizes.small;
        let wide = maker.setter.width(Face::Plain, unit, small);
        let run = maker.setter.run(Face::Plain, unit);
        let base = at[1] + size[1] - 1.2;
        contents.push(beside(Mark::Text { at: [at[0] + size[0] - wide - 1.0, base], run, size_pt: small, grey: LABEL }));
    }
    contents
}

/// What is asked for, with a frame to write in: two side by side.
fn write_in(maker: &mut Maker<'_>, asked: &[WriteIn]) -> Vec<Strip> {
    let small = maker.sizes.small;
    let widest = asked.iter().map(|one| maker.setter.width(Face::Plain, &one.label, small)).fold(0.0, f64::max);
    // Three stand side by side where that leaves room to write.
    let across = if asked.len() > 2 && (maker.width - 2.0 * BETWEEN) / 3.0 - widest > 15.0 { 3 } else { 2 };
    #[allow(clippy::cast_precision_loss, reason = "two or three")]
    let half = (maker.width - BETWEEN * (across - 1) as f64) / across as f64;
    let mut strips = vec![Strip::space(0.6)];
    for pair in asked.chunks(across) {
        let mut strip = Strip { height: maker.sizes.write + 0.8, ..Strip::default() };
        for (number, one) in pair.iter().enumerate() {
            #[allow(clippy::cast_precision_loss, reason = "two or three")]
            let x = (half + BETWEEN) * number as f64;
            let node = maker.node(Tag::Paragraph, None);
            let lines = maker.lines(&[label(&one.label)], small, half * 0.5);
            let wide = lines.iter().map(|line| line.width).fold(0.0, f64::max) + 1.5;
            #[allow(clippy::cast_precision_loss, reason = "lines are few")]
            let text = Maker::pitch(small) * lines.len() as f64;
            strip.height = strip.height.max(text + 0.4);
            let mut y = (strip.height - text) / 2.0;
            for line in &lines {
                strip.contents.extend(line.marks([x, y + Maker::base(small)], small, Some(node)));
                y += Maker::pitch(small);
            }
            let height = maker.sizes.write;
            strip.contents.extend(place(maker, [x + wide, (strip.height - height) / 2.0], [half - wide, height], one.unit));
        }
        strips.push(strip);
    }
    strips
}

/// A sign, a word in capitals, and the sentence.
fn marked(maker: &mut Maker<'_>, line: &Marked) -> Vec<Strip> {
    let size = maker.sizes.small;
    // On what hangs on a wall the signs grow with their words.
    let grown = (size / 10.0).max(1.0);
    let left = if line.sign == Sign::None && grown > 1.0 { 0.0 } else { 4.6 * grown };
    let words = plain(&line.text);
    let mut strips = if line.mark.is_empty() {
        maker.paragraph(&[words], size, left, Tag::Paragraph)
    } else {
        maker.paragraph(&[bold(&line.mark), words], size, left, Tag::Paragraph)
    };
    if let Some(first) = strips.first_mut() {
        let middle = Maker::base(size) - 0.36 * size * super::face::PT;
        first.contents.extend(sign(line.sign, [1.9 * grown, middle], 1.45 * grown).into_iter().map(beside));
    }
    strips
}

/// Sentences one below the other, each beside its number.
fn steps(maker: &mut Maker<'_>, list: &[String]) -> Vec<Strip> {
    let size = maker.sizes.body;
    let left = maker.setter.width(Face::Bold, "0", size) + 0.6 * size * super::face::PT;
    let mut all = Vec::new();
    for (number, words) in (1..).zip(list) {
        let mut strips = maker.paragraph(&[plain(words)], size, left, Tag::Paragraph);
        if let Some(first) = strips.first_mut() {
            let node = first.contents.first().and_then(|content| content.node);
            let run = maker.setter.run(Face::Bold, &format!("{number} "));
            let mark = Mark::Text { at: [0.0, Maker::base(size)], run, size_pt: size, grey: INK };
            first.contents.insert(0, Content { node, mark });
        }
        all.extend(strips);
        all.push(Strip::space(0.2 * size * super::face::PT));
    }
    all
}

/// Small pictures, as many beside each other as there is room for.
fn thumbnails(maker: &mut Maker<'_>, list: &[Thumbnail]) -> Vec<Strip> {
    let across = per_row(maker.width);
    list.chunks(across).map(|row| thumbnail_row(maker, row)).collect()
}

/// How many thumbnails stand in a width.
pub(super) fn per_row(width: f64) -> usize {
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a page is narrow")]
    let across = ((width + 2.0) / CELL).floor().max(1.0) as usize;
    across
}

/// Thumbnails beside each other, their names under them.
pub(super) fn thumbnail_row(maker: &mut Maker<'_>, row: &[Thumbnail]) -> Strip {
    let small = maker.sizes.small * 0.94;
    let mut strip = Strip { height: THUMB, ..Strip::default() };
    for (number, one) in row.iter().enumerate() {
        #[allow(clippy::cast_precision_loss, reason = "a row is short")]
        let x = CELL * number as f64;
        let node = Some(maker.node(Tag::Figure(one.label.clone()), None));
        let (at, size) = ([x + (CELL - 2.0 - THUMB) / 2.0, 0.3], [THUMB, THUMB]);
        let mark = match &one.picture {
            Some(raster) => Mark::Picture { at, size, raster: std::sync::Arc::clone(raster) },
            None => Mark::Frame { at, size, width: 0.15, grey: LABEL },
        };
        strip.contents.push(Content { node, mark });
        let says = maker.node(Tag::Paragraph, None);
        let mut y = THUMB + 0.6;
        for line in maker.lines(&[plain(&one.label)], small, CELL - 2.0).iter().take(3) {
            let left = x + (CELL - 2.0 - line.width) / 2.0;
            strip.contents.extend(line.marks([left, y + Maker::base(small)], small, Some(says)));
            y += Maker::pitch(small);
        }
        strip.height = strip.height.max(y);
    }
    strip.height += 0.6;
    strip
}

/// Lines to sign on, side by side, each with what is to be written under it.
fn to_sign(maker: &mut Maker<'_>, asked: &[String]) -> Strip {
    let small = maker.sizes.small;
    let high = 12.0;
    let mut strip = Strip { height: high, ..Strip::default() };
    #[allow(clippy::cast_precision_loss, reason = "a few places")]
    let cell = maker.width / asked.len().max(1) as f64;
    for (number, words) in asked.iter().enumerate() {
        #[allow(clippy::cast_precision_loss, reason = "a few places")]
        let x = cell * number as f64;
        strip.contents.push(rule([x, high], [x + cell - 8.0, high], 0.25, INK));
        let node = maker.node(Tag::Paragraph, None);
        let mut y = high + 0.6;
        for line in maker.lines(&[label(words)], small, cell - 8.0) {
            strip.contents.extend(line.marks([x, y + Maker::base(small)], small, Some(node)));
            y += Maker::pitch(small);
        }
        strip.height = strip.height.max(y);
    }
    strip
}
