//! Setting a document as plain text for a fixed pitch: at most 100 columns, sheets of 72 lines, form feeds between them.

use super::block::{BigWeight, Block, Field, Marked, Page, Paper, Sign, Table, WriteIn};
use super::set_table::table_lines;
use super::wrap::{columns, fill, wrap};
use crate::texts::Texts;

/// Columns of a line at most.
pub const WIDTH: usize = 100;
/// Lines of a sheet of paper, head and foot included: A4 in a fixed pitch of 9 points.
pub const LINES: usize = 72;

const HALF: usize = 49;
const LABEL: usize = 22;
const MARK: usize = 9;
const WEIGHED: usize = 38;

/// A document as text.
#[must_use]
pub fn set(paper: &Paper, texts: &Texts) -> String {
    let head = head_lines(paper);
    let foot = wrap(&paper.foot, WIDTH);
    let room = LINES.saturating_sub(head.len() + foot.len() + 4).max(10);
    let sheets: Vec<Vec<String>> = paper.pages.iter().flat_map(|page| sheets_of(page, room, texts)).collect();
    let mut text = String::new();
    for (index, sheet) in sheets.iter().enumerate() {
        if index > 0 {
            text.push('\u{c}');
        }
        for line in head.iter().chain(sheet) {
            push(&mut text, line);
        }
        push(&mut text, "");
        foot.iter().for_each(|line| push(&mut text, line));
        let number = texts.say("page-of", &[("page", (index + 1).into()), ("pages", sheets.len().into())]);
        push(&mut text, &format!("{number:>WIDTH$}"));
    }
    text
}

/// A table alone as text, without sheets of paper: lines of at most `width` columns.
#[must_use]
pub fn set_table(table: &Table, width: usize) -> String {
    let mut text = String::new();
    table_lines(table, width).iter().for_each(|line| push(&mut text, line));
    text
}

/// Spaces of special widths serve setting; a plain one is in every printer's type.
fn push(text: &mut String, line: &str) {
    text.extend(line.trim_end().chars().map(|sign| if sign.is_whitespace() { ' ' } else { sign }));
    text.push('\n');
}

fn head_lines(paper: &Paper) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    for (left, right) in &paper.head {
        let room = WIDTH.saturating_sub(columns(right) + 2).max(20);
        for (index, part) in wrap(left, room).iter().enumerate() {
            let right = if index == 0 { right.as_str() } else { "" };
            lines.push(format!("{part}{right:>rest$}", rest = WIDTH.saturating_sub(columns(part))));
        }
    }
    for line in paper.letterhead.iter().flat_map(|letterhead| &letterhead.address) {
        lines.extend(wrap(line, WIDTH));
    }
    lines.push("═".repeat(WIDTH));
    lines
}

/// The sheets of paper a page takes. A step stays whole where a sheet holds it.
fn sheets_of(page: &Page, room: usize, texts: &Texts) -> Vec<Vec<String>> {
    let mut sheets = vec![wrap(&page.title, WIDTH)];
    if let Some(sheet) = sheets.last_mut().filter(|_| !page.under.is_empty()) {
        sheet.extend(wrap(&page.under, WIDTH));
    }
    for group in groups(&page.blocks) {
        let used = sheets.last().map_or(0, Vec::len);
        let title = || wrap(&texts.say("page-continued", &[("title", page.title.as_str().into())]), WIDTH);
        if used + group.len() > room && used > 2 {
            sheets.push(title());
        }
        for line in group {
            if sheets.last().is_some_and(|sheet| sheet.len() >= room) {
                sheets.push(title());
            }
            if let Some(sheet) = sheets.last_mut() {
                sheet.push(line);
            }
        }
    }
    sheets
}

/// What stays together: a step with all that stands under its heading.
fn groups(blocks: &[Block]) -> Vec<Vec<String>> {
    let mut groups: Vec<Vec<String>> = Vec::new();
    for block in blocks {
        let lines = block_lines(block);
        match groups.last_mut().filter(|_| !matches!(block, Block::Heading(_))) {
            Some(group) => group.extend(lines),
            None => groups.push(lines),
        }
    }
    groups
}

fn block_lines(block: &Block) -> Vec<String> {
    match block {
        Block::Heading(words) => {
            let rule = "─".repeat(WIDTH.saturating_sub(columns(words) + 4));
            vec![String::new(), format!("── {words} {rule}").chars().take(WIDTH).collect()]
        }
        Block::Fields(fields) => field_lines(fields),
        Block::Weights(weights) => weights.iter().flat_map(weight_lines).collect(),
        Block::Table(table) => table_lines(table, WIDTH),
        Block::Marked(lines) => lines.iter().flat_map(marked_lines).collect(),
        Block::Words(words) => wrap(words, WIDTH),
        Block::Steps(steps) => (1..).zip(steps).flat_map(|(number, step)| hanging(&format!("{number:>2}."), step)).collect(),
        Block::WriteIn(asked) => field_lines(&asked.iter().map(to_write).collect::<Vec<_>>()),
        Block::Sign(asked) => {
            let places = asked.iter().map(|asked| format!("{asked} {}", "_".repeat(24)));
            vec![String::new(), places.collect::<Vec<_>>().join("  ")]
        }
        // What is to be looked at says its sentence where there is nothing but text.
        Block::Drawing(drawing) => wrap(&drawing.says, WIDTH),
        Block::Column | Block::Thumbnails(_) => Vec::new(),
    }
}

/// Two short fields stand side by side; a long one has a line of its own.
fn field_lines(fields: &[Field]) -> Vec<String> {
    let mut lines = Vec::new();
    let mut left: Option<String> = None;
    for field in fields {
        let label = fill(&field.label, LABEL);
        let short = columns(&label) + 1 + columns(&field.value) <= HALF;
        if short {
            let cell = format!("{label} {}", field.value);
            match left.take() {
                Some(first) => lines.push(format!("{}  {cell}", fill(&first, HALF))),
                None => left = Some(cell),
            }
        } else {
            lines.extend(left.take());
            lines.extend(hanging(&label, &field.value));
        }
    }
    lines.extend(left);
    lines
}

fn to_write(asked: &WriteIn) -> Field {
    Field { label: asked.label.clone(), value: format!("____________ {}", asked.unit).trim_end().to_owned() }
}

/// `first` and a space, then the text wrapped beside it.
fn hanging(first: &str, text: &str) -> Vec<String> {
    let indent = columns(first) + 1;
    let parts = wrap(text, WIDTH.saturating_sub(indent).max(20));
    let line =
        |(index, part): (usize, String)| if index == 0 { format!("{first} {part}") } else { format!("{}{part}", " ".repeat(indent)) };
    parts.into_iter().enumerate().map(line).collect()
}

/// A box, what to weigh, how much, and a line for what the balance really showed.
fn weight_lines(weight: &BigWeight) -> Vec<String> {
    let mut lines = vec![String::new()];
    let labels = wrap(&weight.label, WEIGHED);
    for (index, label) in labels.iter().enumerate() {
        let tick = if index == 0 { "[ ]" } else { "   " };
        let mut line = format!("  {tick}  {}", fill(label, WEIGHED));
        if index + 1 == labels.len() {
            line.push_str(&format!(" {:>20}      ______________ {}", weight.value, weight.unit));
        }
        lines.push(line);
    }
    if !weight.note.is_empty() {
        lines.push(format!("       {}", weight.note));
    }
    lines
}

fn marked_lines(line: &Marked) -> Vec<String> {
    // What has no word before it keeps its sign, as far as there is one in every printer's type.
    if line.mark.is_empty() && line.sign == Sign::Stop {
        return hanging(" ×", &line.text);
    }
    hanging(&fill(&line.mark, MARK), &line.text)
}
